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
    ("one-screw-one-number", 1, 91309, 0x047882f601f727c2),
    ("one-screw-one-number", 2, 99209, 0xcd91fb6ae3255003),
    ("healthy-natural", 1, 107306, 0x157538ecd662ef2e),
    ("healthy-natural", 2, 107306, 0x157538ecd662ef2e),
    ("healthy-propane", 1, 114826, 0xa3be2ea0fd2e62fa),
    ("healthy-propane", 2, 114826, 0xa3be2ea0fd2e62fa),
    ("borrowed-bag", 1, 110906, 0xba26671e20ad758e),
    ("borrowed-bag", 2, 107446, 0x58ae09e5fa5d7675),
    ("first-call-of-the-day", 1, 168326, 0x1f999fb80a947d10),
    ("first-call-of-the-day", 2, 159706, 0x4823d3f95fa54fec),
    ("after-the-painters", 1, 104806, 0x7b38a1cf3e6edf4b),
    ("after-the-painters", 2, 112706, 0x591ba26a40eb73bb),
    ("no-heat-after-cleaning", 1, 106346, 0x992377c584544366),
    ("no-heat-after-cleaning", 2, 120226, 0xe438cde24c93ffe6),
    ("propane-cold-morning", 1, 116336, 0x9df4da68d3756b3f),
    ("propane-cold-morning", 2, 129996, 0x2d840320ae879f79),
    ("natural-gas-busy-kitchen", 1, 139666, 0x66830906885b6754),
    ("natural-gas-busy-kitchen", 2, 147566, 0xa8a917ab85cf86aa),
    ("an-order-without-a-fuel", 1, 120276, 0xba83d2679251ee84),
    ("an-order-without-a-fuel", 2, 128986, 0xffaa8734a158670b),
    ("short-spells", 1, 119586, 0xff58c9ed82b4ee0e),
    ("short-spells", 2, 128736, 0x007e84d42e221670),
    ("a-label-of-its-own", 1, 117566, 0x9968328e7f5dcba6),
    ("a-label-of-its-own", 2, 131246, 0x0c9973cfe4a6861e),
    ("a-roar-at-night", 1, 118386, 0x8e1e7e40f7851238),
    ("a-roar-at-night", 2, 126286, 0xf2f00d190037b916),
    ("slow-half-of-winter", 1, 121376, 0x099a32dde779a063),
    ("slow-half-of-winter", 2, 133806, 0x0ad71c610736bb02),
    ("a-hard-light", 1, 134166, 0x8be499dd708d89f4),
    ("a-hard-light", 2, 140866, 0xcd8c27960d483554),
    ("two-meters-two-numbers", 1, 114126, 0x5886e1218342019d),
    ("two-meters-two-numbers", 2, 121696, 0x1ee57fad36d6f83f),
    ("needle-in-no-hurry", 1, 140826, 0xc2a87fb213701d55),
    ("needle-in-no-hurry", 2, 148706, 0x8b06475b29a315e3),
    ("behind-the-cupboard", 1, 106006, 0x465ebfaed9d10848),
    ("behind-the-cupboard", 2, 113906, 0x285952bd1657a95a),
    ("the-new-dial", 1, 148276, 0x0b615cbd986f8724),
    ("the-new-dial", 2, 161546, 0x17625c6729c2ff1c),
    ("lukewarm-at-dawn", 1, 135286, 0x6a0dcd9fc4da7a45),
    ("lukewarm-at-dawn", 2, 143186, 0xcc130fb8347efea6),
    ("stops-when-warm", 1, 104806, 0xe215fd52dc2d32b7),
    ("stops-when-warm", 2, 112706, 0x45a1e42c2736bd4a),
    ("lights-and-quits", 1, 106546, 0xd297b6f5fb0ba1ee),
    ("lights-and-quits", 2, 120226, 0x9bb46707f7e4a8a9),
    ("hums-and-clicks", 1, 98246, 0xc324a127d4ba2b82),
    ("hums-and-clicks", 2, 112706, 0xd3875a6c61cc0bd6),
    ("no-bite-on-high", 1, 170246, 0x7b9651be2deb66c7),
    ("no-bite-on-high", 2, 183926, 0x5aeaaa3914e173fa),
    ("after-a-quiet-summer", 1, 106546, 0xbfe050cc0bf5479a),
    ("after-a-quiet-summer", 2, 120226, 0x4076d34afc7f48e4),
    ("leaves-on-the-lawn", 1, 104806, 0x418de752375b73d1),
    ("leaves-on-the-lawn", 2, 112706, 0x5425f97350806972),
    ("first-monday-of-frost", 1, 170446, 0xdd41a8fbf27c3f11),
    ("first-monday-of-frost", 2, 114106, 0x5bed4e700ebbe581),
    ("house-on-the-pass", 1, 122136, 0x09c719fcf19f0d78),
    ("house-on-the-pass", 2, 128786, 0xd08f7ac1ff548442),
    ("thaw-week", 1, 117766, 0xcda85b97dd603c6f),
    ("thaw-week", 2, 131246, 0x4e7f452abd917a10),
    ("the-helpful-cousin", 1, 122086, 0xdea45cf2ca3ca653),
    ("the-helpful-cousin", 2, 129986, 0x17cb0aa2cac94a75),
    ("the-second-kitchen", 1, 104806, 0x1595313e62cd2616),
    ("the-second-kitchen", 2, 112706, 0x74e76aff365b154b),
    ("while-dinner-cooks", 1, 127636, 0xe36bc973cb1475c3),
    ("while-dinner-cooks", 2, 122486, 0x650bd27493d5160e),
    ("wet-and-windy", 1, 163866, 0xc2e2ee89198c06f0),
    ("wet-and-windy", 2, 142466, 0x0d4653d7431d9e67),
    ("a-letter-about-the-yard", 1, 100391, 0x3ceabc00ba2bc123),
    ("a-letter-about-the-yard", 2, 95211, 0xf9e5c884fa1a3db9),
    ("end-of-the-month", 1, 54516, 0x1813e82f9f1e4ba3),
    ("end-of-the-month", 2, 68186, 0x3ea444fba60abcc3),
    ("a-trace-by-the-door", 1, 155026, 0x5ab4941432456854),
    ("a-trace-by-the-door", 2, 162926, 0x29f42488a2b08659),
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
