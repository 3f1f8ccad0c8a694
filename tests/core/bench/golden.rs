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
    ("one-screw-one-number", 1, 91509, 0xa5c26c15ae7d11e5),
    ("one-screw-one-number", 2, 99409, 0x8ec5f3a4bde8fab5),
    ("healthy-natural", 1, 107506, 0x28e658d44a9e62fe),
    ("healthy-natural", 2, 107506, 0x28e658d44a9e62fe),
    ("healthy-propane", 1, 115026, 0xe0625635ac8558d8),
    ("healthy-propane", 2, 115026, 0xe0625635ac8558d8),
    ("borrowed-bag", 1, 111106, 0xd146f94a5aaf01f3),
    ("borrowed-bag", 2, 107646, 0xc6f7a8d5afd439bf),
    ("first-call-of-the-day", 1, 168526, 0xcb4d53f849b9cb9b),
    ("first-call-of-the-day", 2, 159906, 0x03cb08b343b3ba00),
    ("after-the-painters", 1, 105006, 0xdd262247f0299460),
    ("after-the-painters", 2, 112906, 0x47fbc5e431c1e80e),
    ("no-heat-after-cleaning", 1, 106546, 0x7e418fccbf17924e),
    ("no-heat-after-cleaning", 2, 120426, 0x0d07ef32118131a4),
    ("propane-cold-morning", 1, 116536, 0x88ec1a475307be13),
    ("propane-cold-morning", 2, 130196, 0xb751825da869d0dc),
    ("natural-gas-busy-kitchen", 1, 139866, 0x6e290cad683acab1),
    ("natural-gas-busy-kitchen", 2, 147766, 0x16241f809aef9d19),
    ("an-order-without-a-fuel", 1, 120476, 0x923471e491c36709),
    ("an-order-without-a-fuel", 2, 129186, 0x913f48ba408484d5),
    ("short-spells", 1, 119786, 0xac1d4b2f5d35b9e0),
    ("short-spells", 2, 128936, 0xef65ba5116326b44),
    ("a-label-of-its-own", 1, 117766, 0xe12c9d2a6d916d9a),
    ("a-label-of-its-own", 2, 131446, 0x88680829bfd988b0),
    ("a-roar-at-night", 1, 118586, 0x037dd1b12dbe2cf3),
    ("a-roar-at-night", 2, 126486, 0x52333fefbcf8faf1),
    ("slow-half-of-winter", 1, 121576, 0xdc7e9c2d73485158),
    ("slow-half-of-winter", 2, 134006, 0xed8d42c0dfb6c716),
    ("a-hard-light", 1, 134366, 0x98d01e022e6ecb8a),
    ("a-hard-light", 2, 141066, 0x5c3a8c78d59ba78b),
    ("two-meters-two-numbers", 1, 114326, 0xd781c400488c8250),
    ("two-meters-two-numbers", 2, 121896, 0x6c7cb91b48001050),
    ("needle-in-no-hurry", 1, 141226, 0xe9d216f361b93cf9),
    ("needle-in-no-hurry", 2, 149106, 0x8b6edc4615297baf),
    ("behind-the-cupboard", 1, 106206, 0xf2745ab6a741b144),
    ("behind-the-cupboard", 2, 114106, 0xd1b51412b8bee59d),
    ("the-new-dial", 1, 148276, 0x101c341a8528cfd9),
    ("the-new-dial", 2, 161686, 0xd6ef112201bc3fba),
    ("lukewarm-at-dawn", 1, 135486, 0xfa5c39f422a523c5),
    ("lukewarm-at-dawn", 2, 143386, 0xfa78b5f4033a7780),
    ("stops-when-warm", 1, 105006, 0x703d3a5fce19e78c),
    ("stops-when-warm", 2, 112906, 0x6dab2ddaf4f3d2ec),
    ("lights-and-quits", 1, 106746, 0xd71b445d63ca9869),
    ("lights-and-quits", 2, 120426, 0xdce957f079f041ad),
    ("hums-and-clicks", 1, 98446, 0x14ad756d77e13cb4),
    ("hums-and-clicks", 2, 112906, 0x855c0d1cfbff76a1),
    ("no-bite-on-high", 1, 170646, 0xdf3a2b185c4e18d8),
    ("no-bite-on-high", 2, 184326, 0x831c22ca262aacfd),
    ("after-a-quiet-summer", 1, 106746, 0x3f49b33658aefc9f),
    ("after-a-quiet-summer", 2, 120426, 0xe4741701120b59c5),
    ("leaves-on-the-lawn", 1, 105006, 0xad843dbf2ed2e07a),
    ("leaves-on-the-lawn", 2, 112906, 0xcfb10accb140cd30),
    ("first-monday-of-frost", 1, 170846, 0x5d3b8d6ad83260f5),
    ("first-monday-of-frost", 2, 114306, 0x97bafb35a55abaf2),
    ("house-on-the-pass", 1, 122336, 0x13e6a66b067db3e4),
    ("house-on-the-pass", 2, 128986, 0xed75102243034097),
    ("thaw-week", 1, 117966, 0xce96187dada498be),
    ("thaw-week", 2, 131446, 0x08b6e62ecce2ed1d),
    ("the-helpful-cousin", 1, 122286, 0x41df89112dda69ec),
    ("the-helpful-cousin", 2, 130186, 0x028126b594131116),
    ("the-second-kitchen", 1, 105006, 0xe563a85e94282fb6),
    ("the-second-kitchen", 2, 112906, 0xf943e28446e896ec),
    ("while-dinner-cooks", 1, 127836, 0x2051831be205c946),
    ("while-dinner-cooks", 2, 122686, 0x9e4e54d424b74084),
    ("wet-and-windy", 1, 164266, 0x8a6161cee7a28f57),
    ("wet-and-windy", 2, 142866, 0xc86570fac281d987),
    ("a-letter-about-the-yard", 1, 100391, 0x3ceabc00ba2bc123),
    ("a-letter-about-the-yard", 2, 95211, 0xf9e5c884fa1a3db9),
    ("end-of-the-month", 1, 54516, 0x1813e82f9f1e4ba3),
    ("end-of-the-month", 2, 68186, 0x3ea444fba60abcc3),
    ("a-trace-by-the-door", 1, 155426, 0x50e16b116d425652),
    ("a-trace-by-the-door", 2, 163326, 0x88018e6474764948),
    ("moved-with-the-house", 1, 2350, 0xb83d7fb2e0e324d5),
    ("moved-with-the-house", 2, 2350, 0xba3803367c2b70a4),
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
