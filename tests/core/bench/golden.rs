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
    ("one-screw-one-number", 1, 119699, 0xf82b802c8037b520),
    ("one-screw-one-number", 2, 127599, 0xca45d0f52102e4f4),
    ("healthy-natural", 1, 151346, 0xf50b12bc219c70de),
    ("healthy-natural", 2, 151346, 0xf50b12bc219c70de),
    ("healthy-propane", 1, 156446, 0xaeb765ff5956d306),
    ("healthy-propane", 2, 156446, 0xaeb765ff5956d306),
    ("borrowed-bag", 1, 154956, 0xbf09846434e4ea7d),
    ("borrowed-bag", 2, 151496, 0xfabccc9e497b9ffe),
    ("first-call-of-the-day", 1, 209946, 0xb18f28c0a09d3d3f),
    ("first-call-of-the-day", 2, 201326, 0x2c0df9ac3c97a264),
    ("after-the-painters", 1, 148856, 0x98f2c17692e6a4a0),
    ("after-the-painters", 2, 156756, 0xb52f5edf75b8768b),
    ("no-heat-after-cleaning", 1, 147966, 0x9382ed1bbe402f46),
    ("no-heat-after-cleaning", 2, 161846, 0xb7c040f2f6877d51),
    ("propane-cold-morning", 1, 157956, 0x7c58b51d62270ee5),
    ("propane-cold-morning", 2, 171616, 0x2f2bd495a75fb22e),
    ("natural-gas-busy-kitchen", 1, 184986, 0x0fb5e6e91d3ed5fa),
    ("natural-gas-busy-kitchen", 2, 192886, 0x06a9d485bd526fed),
    ("an-order-without-a-fuel", 1, 161896, 0x06db4fe1b785ad25),
    ("an-order-without-a-fuel", 2, 173276, 0xca580b9f5d8eb01e),
    ("short-spells", 1, 162866, 0x7a5555149b2f290a),
    ("short-spells", 2, 172016, 0x7a937fa31efd66b2),
    ("a-label-of-its-own", 1, 159186, 0x98fad3e3d6efa34a),
    ("a-label-of-its-own", 2, 172866, 0x7388217593a759d6),
    ("a-roar-at-night", 1, 162346, 0x0670ab44a69a9033),
    ("a-roar-at-night", 2, 170266, 0x795c985935a858b9),
    ("slow-half-of-winter", 1, 163196, 0x974994410b55b70b),
    ("slow-half-of-winter", 2, 175626, 0xae14a360730c13d6),
    ("a-hard-light", 1, 180916, 0x00906143399005f6),
    ("a-hard-light", 2, 187216, 0xa13f002f2c9bc5e6),
    ("two-meters-two-numbers", 1, 158396, 0x774a9030ec4d9936),
    ("two-meters-two-numbers", 2, 165986, 0x7d96c98ce466195b),
    ("needle-in-no-hurry", 1, 184866, 0x98cb6b8da4f4ef7f),
    ("needle-in-no-hurry", 2, 192746, 0xa6d2934ef145fdbc),
    ("behind-the-cupboard", 1, 160116, 0xa7f8ac941896d3ca),
    ("behind-the-cupboard", 2, 168016, 0x1c969b9fe07ee008),
    ("the-new-dial", 1, 233256, 0xf3ccf454379042cf),
    ("the-new-dial", 2, 247566, 0x0c787ee49f8055dc),
    ("lukewarm-at-dawn", 1, 179536, 0x213ad75e97f8ff92),
    ("lukewarm-at-dawn", 2, 187436, 0x20cf4d549b54cc8b),
    ("stops-when-warm", 1, 148856, 0x283483719879626f),
    ("stops-when-warm", 2, 156756, 0x95aa42f907198eb6),
    ("lights-and-quits", 1, 148166, 0x378ebe35d7b2f3e8),
    ("lights-and-quits", 2, 161846, 0x0070e4aef47974f5),
    ("hums-and-clicks", 1, 142296, 0x3699be345780b39d),
    ("hums-and-clicks", 2, 156756, 0x907f3545b2fdd67b),
    ("no-bite-on-high", 1, 211866, 0x4e0f64953f1392d2),
    ("no-bite-on-high", 2, 225546, 0x522a591f791e829d),
    ("after-a-quiet-summer", 1, 148166, 0x77fd59aee89b37f0),
    ("after-a-quiet-summer", 2, 161846, 0xacf45a571094af10),
    ("leaves-on-the-lawn", 1, 148856, 0x7e30c2648fe9742d),
    ("leaves-on-the-lawn", 2, 156756, 0x68bfffce2dc201d4),
    ("first-monday-of-frost", 1, 212066, 0x8551c42ea241ac59),
    ("first-monday-of-frost", 2, 168226, 0xa92f6c9ddc71656f),
    ("house-on-the-pass", 1, 166956, 0xae85e7579692c41b),
    ("house-on-the-pass", 2, 173616, 0x51d71bde12368277),
    ("thaw-week", 1, 159386, 0x63933b1dafb31b02),
    ("thaw-week", 2, 172866, 0x3223eabc4055e3aa),
    ("the-helpful-cousin", 1, 176376, 0xbfb6854b5bf19836),
    ("the-helpful-cousin", 2, 184276, 0x13025f70244a007c),
    ("the-second-kitchen", 1, 148846, 0x47b46b4e3de87f4a),
    ("the-second-kitchen", 2, 156746, 0x6d5a43ba24c1c33a),
    ("while-dinner-cooks", 1, 171106, 0xeec7839b89b363df),
    ("while-dinner-cooks", 2, 165956, 0x14e0d981cf40c7de),
    ("wet-and-windy", 1, 205486, 0xe243439fd9ea7d4a),
    ("wet-and-windy", 2, 186086, 0x54b8b105aaba230a),
    ("a-letter-about-the-yard", 1, 100391, 0xb39ce856672387c0),
    ("a-letter-about-the-yard", 2, 95211, 0x0ae2ee6d0b0457fc),
    ("end-of-the-month", 1, 54516, 0xe780263e22fdd9de),
    ("end-of-the-month", 2, 68186, 0xa216c9072fe861ba),
    ("a-trace-by-the-door", 1, 199076, 0xd6b38e1ce5118e3d),
    ("a-trace-by-the-door", 2, 206976, 0x4d734498b7fa932f),
    ("moved-with-the-house", 1, 2350, 0x89a583f61d2e5457),
    ("moved-with-the-house", 2, 2350, 0xc13ff995b11568b4),
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
