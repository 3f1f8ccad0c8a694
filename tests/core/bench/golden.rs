//! Golden runs: the reference technician's jobs, every shipped one on two seeds, end in exactly these states, in any profile and on
//! any machine (`tests/wasm/run` plays them in WebAssembly).
//!
//! When a number changes, look at the kept records (`record::kept`). If they come out differently
//! too, the model has changed: `docs/model-versions.md` says what to do. If not, the technician or a
//! scenario has changed: say why in the commit. Then write the new numbers here.

use quarterturn::bench::Bench;
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::drive::Nobody;
use quarterturn::technician::proof::LIMIT_S;
use quarterturn::technician::{Technician, play};

/// Scenario, seed, last tick and digest.
pub const GOLDEN: &[(&str, u64, u64, u64)] = &[
    ("healthy-natural", 1, 107506, 0x6fac0bf08f221cd8),
    ("healthy-natural", 2, 107506, 0x6fac0bf08f221cd8),
    ("healthy-propane", 1, 115026, 0x57610a2c03663d99),
    ("healthy-propane", 2, 115026, 0x57610a2c03663d99),
    ("borrowed-bag", 1, 111106, 0x3a61b342f42292ad),
    ("borrowed-bag", 2, 107646, 0x48a1639dbc4a5dc2),
    ("first-call-of-the-day", 1, 168526, 0xbede843c6f19150a),
    ("first-call-of-the-day", 2, 159906, 0xdf8945007ea6446d),
    ("after-the-painters", 1, 105006, 0xe5d881572dc3e5d4),
    ("after-the-painters", 2, 112906, 0x03cad1fec92ea058),
    ("no-heat-after-cleaning", 1, 106546, 0x55266151dfc4f594),
    ("no-heat-after-cleaning", 2, 120426, 0x761996e03ff2ca12),
    ("propane-cold-morning", 1, 116536, 0x827994eddfd6ebaf),
    ("propane-cold-morning", 2, 130196, 0x62009307403b7eb2),
    ("natural-gas-busy-kitchen", 1, 139866, 0xf483dc8812733b0e),
    ("natural-gas-busy-kitchen", 2, 147766, 0xa60f8cc55cf7edbd),
    ("an-order-without-a-fuel", 1, 120476, 0xf6b85788d37fec13),
    ("an-order-without-a-fuel", 2, 129186, 0x8eb485e164c2c23e),
    ("short-spells", 1, 119786, 0xac90ab7093322bca),
    ("short-spells", 2, 128936, 0xa695c0fea4753934),
    ("a-label-of-its-own", 1, 117766, 0x9b4996854b081bb5),
    ("a-label-of-its-own", 2, 131446, 0x5d39d486e1447f76),
    ("a-roar-at-night", 1, 118586, 0xbc49e5769416e8b6),
    ("a-roar-at-night", 2, 126486, 0x4f4a53b8f8d04bc0),
    ("slow-half-of-winter", 1, 121576, 0xb697d5f594636145),
    ("slow-half-of-winter", 2, 134006, 0xbb1d58d784b96275),
    ("a-hard-light", 1, 134366, 0xe81d72674c90ef7b),
    ("a-hard-light", 2, 141066, 0x4f7c95946dcf6cca),
    ("two-meters-two-numbers", 1, 114326, 0x65a197fb3564010b),
    ("two-meters-two-numbers", 2, 121896, 0x0b3a2cfeefb3c19c),
    ("needle-in-no-hurry", 1, 141226, 0xb36db7af9e07f4fa),
    ("needle-in-no-hurry", 2, 149106, 0x6c92bcd13096b5cb),
    ("behind-the-cupboard", 1, 106206, 0x090dc38a32fa6a3e),
    ("behind-the-cupboard", 2, 114106, 0x69c9fa644790c389),
    ("the-new-dial", 1, 148276, 0x3b9d05fb8b85c843),
    ("the-new-dial", 2, 161686, 0x904b3746be7da56e),
    ("lukewarm-at-dawn", 1, 135486, 0x30590f4aef2b417c),
    ("lukewarm-at-dawn", 2, 143386, 0x875c30fa42ae650d),
    ("stops-when-warm", 1, 105006, 0x2c7a0fdf606ba72d),
    ("stops-when-warm", 2, 112906, 0xbc84cd9924629f94),
    ("lights-and-quits", 1, 106746, 0x615d09509ff8d5f8),
    ("lights-and-quits", 2, 120426, 0xaf12f7904cdab29e),
    ("hums-and-clicks", 1, 98446, 0x647ddff2a919a128),
    ("hums-and-clicks", 2, 112906, 0xd7a83ad000d09f48),
    ("no-bite-on-high", 1, 170646, 0x1562e3ed5279af11),
    ("no-bite-on-high", 2, 184326, 0xdf4177180d694368),
    ("after-a-quiet-summer", 1, 106746, 0x76cb6dbfacb5cf91),
    ("after-a-quiet-summer", 2, 120426, 0x2a21c9850ce6ad01),
    ("leaves-on-the-lawn", 1, 105006, 0xca5452b285ac520d),
    ("leaves-on-the-lawn", 2, 112906, 0x978ae24014f3c502),
    ("first-monday-of-frost", 1, 170846, 0x3b4cf8c053ade356),
    ("first-monday-of-frost", 2, 114306, 0x7cf170b5fabb287d),
    ("house-on-the-pass", 1, 122336, 0xf7e0582e5afabb6d),
    ("house-on-the-pass", 2, 128986, 0x15495a35372ecfc0),
    ("thaw-week", 1, 117966, 0x15f025db31885568),
    ("thaw-week", 2, 131446, 0x7df5ad45a3715d99),
    ("the-helpful-cousin", 1, 122286, 0xa83fddac3a7a1a4d),
    ("the-helpful-cousin", 2, 130186, 0x8525e53f778e9cc5),
    ("the-second-kitchen", 1, 105006, 0xeaf14716b42339b7),
    ("the-second-kitchen", 2, 112906, 0x4d46ccd613f7cdd7),
    ("while-dinner-cooks", 1, 127836, 0x7a28be167804cac3),
    ("while-dinner-cooks", 2, 122686, 0x03e2799625a6ffe6),
    ("wet-and-windy", 1, 164266, 0x08981573358e2c79),
    ("wet-and-windy", 2, 142866, 0x2b9d2355d0cf4610),
    ("a-letter-about-the-yard", 1, 100391, 0xb793dec076ee21be),
    ("a-letter-about-the-yard", 2, 95211, 0xe4d655cb6d943abb),
    ("end-of-the-month", 1, 54516, 0xb010964a496ed3bf),
    ("end-of-the-month", 2, 68186, 0x7210e27824e1ebcf),
    ("a-trace-by-the-door", 1, 155426, 0x1fee856e7dc09ef8),
    ("a-trace-by-the-door", 2, 163326, 0x3babe91b0f4e71b6),
    ("moved-with-the-house", 1, 2350, 0x10acba57bb0a8d26),
    ("moved-with-the-house", 2, 2350, 0x5509b00243f1e918),
];

#[test]
fn slow_golden_runs_end_in_the_same_state() {
    let mut found = Vec::new();
    for job in &builtin::LADDER {
        let scenario = load(job.text).unwrap();
        for seed in [1, 2] {
            let setup = scenario.draw(seed);
            let mut technician = Technician::new(&setup.card);
            let mut bench = Bench::new(setup);
            play(&mut bench, &mut technician, LIMIT_S, &mut Nobody);
            found.push((job.id, seed, bench.tick(), bench.digest()));
        }
    }
    let list: String = found
        .iter()
        .map(|(id, seed, tick, digest)| {
            format!("    (\"{id}\", {seed}, {tick}, {digest:#018x}),\n")
        })
        .collect();
    assert!(found == GOLDEN, "the runs end so now:\n{list}");
}
