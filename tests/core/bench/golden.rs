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
    ("one-screw-one-number", 1, 91509, 0x33dfacbe4d7b6dda),
    ("one-screw-one-number", 2, 99409, 0x3328500d290e34c7),
    ("healthy-natural", 1, 107506, 0xc8ca81ee1cc613bc),
    ("healthy-natural", 2, 107506, 0xc8ca81ee1cc613bc),
    ("healthy-propane", 1, 115026, 0xb3e43ff66019b230),
    ("healthy-propane", 2, 115026, 0xb3e43ff66019b230),
    ("borrowed-bag", 1, 111106, 0xa12931552ff07953),
    ("borrowed-bag", 2, 107646, 0xd58d6a73906411b0),
    ("first-call-of-the-day", 1, 168526, 0xff7c56850749a97a),
    ("first-call-of-the-day", 2, 159906, 0xd5dee63750e1779f),
    ("after-the-painters", 1, 105006, 0x6687ef64705aa5c9),
    ("after-the-painters", 2, 112906, 0x568339354058dd5d),
    ("no-heat-after-cleaning", 1, 106546, 0xfa8b326c29882992),
    ("no-heat-after-cleaning", 2, 120426, 0x2235153adb89edf5),
    ("propane-cold-morning", 1, 116536, 0xb0614d7172afe0a3),
    ("propane-cold-morning", 2, 130196, 0x0b56c46dddd7184a),
    ("natural-gas-busy-kitchen", 1, 139866, 0xa3cf22326898764f),
    ("natural-gas-busy-kitchen", 2, 147766, 0x1f497814976e431d),
    ("an-order-without-a-fuel", 1, 120476, 0x5ca9778b126cbb8e),
    ("an-order-without-a-fuel", 2, 129186, 0x0a7d87f93c2b9e79),
    ("short-spells", 1, 119786, 0x66505cee225fdeef),
    ("short-spells", 2, 128936, 0x9f1bac9c0bd01c38),
    ("a-label-of-its-own", 1, 117766, 0x433c29900525642c),
    ("a-label-of-its-own", 2, 131446, 0x377dca7f1ef5465d),
    ("a-roar-at-night", 1, 118586, 0x758d1aa8f7a1829c),
    ("a-roar-at-night", 2, 126486, 0x1dd9b4f6d2187690),
    ("slow-half-of-winter", 1, 121576, 0xabe15f011977fa8b),
    ("slow-half-of-winter", 2, 134006, 0x873057e09511356b),
    ("a-hard-light", 1, 134366, 0x79d8c520c926882d),
    ("a-hard-light", 2, 141066, 0x5979db65b47fb9df),
    ("two-meters-two-numbers", 1, 114326, 0x1952e4373896dc6a),
    ("two-meters-two-numbers", 2, 121896, 0xb72d7d900d8b18ea),
    ("needle-in-no-hurry", 1, 141226, 0xbe8d044c8b2f0f8a),
    ("needle-in-no-hurry", 2, 149106, 0x400ad4d37036eef2),
    ("behind-the-cupboard", 1, 106206, 0x7838f795f57a577e),
    ("behind-the-cupboard", 2, 114106, 0xc774a0fc512e0d5e),
    ("the-new-dial", 1, 148276, 0x959014b5e423b3f2),
    ("the-new-dial", 2, 161686, 0x54fb79c91b597c2d),
    ("lukewarm-at-dawn", 1, 135486, 0x2ee1174c0818eb6f),
    ("lukewarm-at-dawn", 2, 143386, 0x5bf5e13c9e454dc6),
    ("stops-when-warm", 1, 105006, 0x25755f56adec6334),
    ("stops-when-warm", 2, 112906, 0xcdcce00522939272),
    ("lights-and-quits", 1, 106746, 0xfb23e4d2eadef814),
    ("lights-and-quits", 2, 120426, 0x4b8d2e5ccc965a28),
    ("hums-and-clicks", 1, 98446, 0x1629c66cbbc07efe),
    ("hums-and-clicks", 2, 112906, 0xf37c510c9e09ab56),
    ("no-bite-on-high", 1, 170646, 0x0b3fd35955019a5f),
    ("no-bite-on-high", 2, 184326, 0x5e1e208832dcc260),
    ("after-a-quiet-summer", 1, 106746, 0x367955475b1e2379),
    ("after-a-quiet-summer", 2, 120426, 0xce3adf18b147dcaa),
    ("leaves-on-the-lawn", 1, 105006, 0xc6a493157143c7f8),
    ("leaves-on-the-lawn", 2, 112906, 0x77d72e861ed9aa7f),
    ("first-monday-of-frost", 1, 170846, 0xe02914f5c7339147),
    ("first-monday-of-frost", 2, 114306, 0xc1714d7711e562c1),
    ("house-on-the-pass", 1, 122336, 0xc5c92fe5031faf35),
    ("house-on-the-pass", 2, 128986, 0x02581520d17415aa),
    ("thaw-week", 1, 117966, 0x5559820c2e8f5c03),
    ("thaw-week", 2, 131446, 0x9f661f6f4343a8d6),
    ("the-helpful-cousin", 1, 122286, 0x26dfed648866bcdd),
    ("the-helpful-cousin", 2, 130186, 0x4a7997cc6e5bfee4),
    ("the-second-kitchen", 1, 105006, 0x1bfb23af2324e287),
    ("the-second-kitchen", 2, 112906, 0xb134ca29a2e43887),
    ("while-dinner-cooks", 1, 127836, 0x81986ea5314257f7),
    ("while-dinner-cooks", 2, 122686, 0x477943d5c54a9e49),
    ("wet-and-windy", 1, 164266, 0x310867bf818a9335),
    ("wet-and-windy", 2, 142866, 0xc07cd11afe0ab80c),
    ("a-letter-about-the-yard", 1, 100391, 0x08ddcd224aca65f9),
    ("a-letter-about-the-yard", 2, 95211, 0xe573e3df63f56a5b),
    ("end-of-the-month", 1, 54516, 0x1d55a4e45d678d9b),
    ("end-of-the-month", 2, 68186, 0xd75912fbd428a9b4),
    ("a-trace-by-the-door", 1, 155426, 0x8e34ae7bfc71bbe9),
    ("a-trace-by-the-door", 2, 163326, 0xabd5186f81633805),
    ("moved-with-the-house", 1, 2350, 0xe4573a32de994f9f),
    ("moved-with-the-house", 2, 2350, 0x2f1723db8586b003),
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
