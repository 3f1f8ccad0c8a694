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
    ("one-screw-one-number", 1, 119699, 0x4449645b10bd1db7),
    ("one-screw-one-number", 2, 127599, 0x12f3d1ef58d7cd1a),
    ("healthy-natural", 1, 151546, 0xc9a4527c693ca5e5),
    ("healthy-natural", 2, 151546, 0xc9a4527c693ca5e5),
    ("healthy-propane", 1, 156646, 0x62bd0a01992e92ed),
    ("healthy-propane", 2, 156646, 0x62bd0a01992e92ed),
    ("borrowed-bag", 1, 155156, 0x14f13742e1f8d2ec),
    ("borrowed-bag", 2, 151696, 0xeb984edfb7b86297),
    ("first-call-of-the-day", 1, 210146, 0x3819d6cc0632a2c2),
    ("first-call-of-the-day", 2, 201526, 0xad365e5aec33690b),
    ("after-the-painters", 1, 149056, 0x3a68d10a49dfed79),
    ("after-the-painters", 2, 156956, 0xb1fbbd1e72ab19ca),
    ("no-heat-after-cleaning", 1, 148166, 0x4781f5c36c2809e9),
    ("no-heat-after-cleaning", 2, 162046, 0x442b0e079a116429),
    ("propane-cold-morning", 1, 158156, 0x3ee2f505e24f8e0b),
    ("propane-cold-morning", 2, 171816, 0xbf6b2df50d61f356),
    ("natural-gas-busy-kitchen", 1, 183886, 0x4e4e4fbcc1d94b96),
    ("natural-gas-busy-kitchen", 2, 191786, 0x91266c25c698aae3),
    ("an-order-without-a-fuel", 1, 162096, 0x72016671c5c95773),
    ("an-order-without-a-fuel", 2, 173276, 0xd132b035805ee69d),
    ("short-spells", 1, 163066, 0x4d8b0a5623015cc6),
    ("short-spells", 2, 172216, 0x5461b0cc8a73f636),
    ("a-label-of-its-own", 1, 159386, 0x5dc98d0bd2e35b41),
    ("a-label-of-its-own", 2, 173066, 0x94b727e894852671),
    ("a-roar-at-night", 1, 162146, 0xbb45e37c9d61c85e),
    ("a-roar-at-night", 2, 170066, 0x55eafc2ba257a42d),
    ("slow-half-of-winter", 1, 163196, 0xea91df87a340ba01),
    ("slow-half-of-winter", 2, 175626, 0x0ea0d786d2eec782),
    ("a-hard-light", 1, 178416, 0x97b27f25ac1ffe97),
    ("a-hard-light", 2, 185116, 0xef8539cb6ba8af87),
    ("two-meters-two-numbers", 1, 158396, 0xd80ef3e660cca173),
    ("two-meters-two-numbers", 2, 165986, 0x4bf833bf92f4aeb7),
    ("needle-in-no-hurry", 1, 185266, 0x267d99919799ebf6),
    ("needle-in-no-hurry", 2, 193146, 0xa2fcf4189913fc3e),
    ("behind-the-cupboard", 1, 150256, 0xc02d3d73a6a1cd0e),
    ("behind-the-cupboard", 2, 158156, 0x52989cca6183a4f2),
    ("the-new-dial", 1, 233776, 0x9fa3246ff4a382ba),
    ("the-new-dial", 2, 248086, 0xa21684b7b500cf43),
    ("lukewarm-at-dawn", 1, 179536, 0x31c565caf8b66361),
    ("lukewarm-at-dawn", 2, 187436, 0x2a7416982ad25b4e),
    ("stops-when-warm", 1, 149056, 0x231f706f6129d6fd),
    ("stops-when-warm", 2, 156956, 0x5ccd34833bcaecc0),
    ("lights-and-quits", 1, 148366, 0xb50e09d8c15a2ebe),
    ("lights-and-quits", 2, 162046, 0x7c4911f0b6075c29),
    ("hums-and-clicks", 1, 142496, 0x192a79a851cc4fa3),
    ("hums-and-clicks", 2, 156956, 0x578a888b71cbaa7b),
    ("no-bite-on-high", 1, 212266, 0x14140db023ab9254),
    ("no-bite-on-high", 2, 225946, 0xad30d7ce59ed30a3),
    ("after-a-quiet-summer", 1, 148366, 0xf97e7df7bf49cf01),
    ("after-a-quiet-summer", 2, 162046, 0xa6d40b512f5d1e8a),
    ("leaves-on-the-lawn", 1, 149056, 0x2960d9bfa4ee21d1),
    ("leaves-on-the-lawn", 2, 156956, 0xab3f2be72b224d9f),
    ("first-monday-of-frost", 1, 212466, 0x745ffd9b45397aa3),
    ("first-monday-of-frost", 2, 158366, 0xb148538146d078f4),
    ("house-on-the-pass", 1, 166956, 0xbf59c868dc221e64),
    ("house-on-the-pass", 2, 173616, 0xc318518dee29a361),
    ("thaw-week", 1, 159586, 0xb0dbaa49ae8e8109),
    ("thaw-week", 2, 173066, 0x6d2638c542a4735c),
    ("the-helpful-cousin", 1, 166316, 0x04c8de50d94522a6),
    ("the-helpful-cousin", 2, 174216, 0x69cdb25717933a89),
    ("the-second-kitchen", 1, 149046, 0x8918fa59966955a9),
    ("the-second-kitchen", 2, 156946, 0x3e3d1cb936f4052b),
    ("while-dinner-cooks", 1, 171106, 0x4fdba1d735d77f30),
    ("while-dinner-cooks", 2, 165956, 0x6d7839ed23a9ce66),
    ("wet-and-windy", 1, 205886, 0xbcaa34bcd800d661),
    ("wet-and-windy", 2, 186486, 0x1f4b9b1d1abaf8c4),
    ("a-letter-about-the-yard", 1, 100391, 0x3ceabc00ba2bc123),
    ("a-letter-about-the-yard", 2, 95211, 0xf9e5c884fa1a3db9),
    ("end-of-the-month", 1, 54516, 0x1813e82f9f1e4ba3),
    ("end-of-the-month", 2, 68186, 0x3ea444fba60abcc3),
    ("a-trace-by-the-door", 1, 199476, 0x3406f8a0797a4961),
    ("a-trace-by-the-door", 2, 207376, 0xe0ca1d72776bc00b),
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
