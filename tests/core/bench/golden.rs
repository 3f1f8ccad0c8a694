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
    ("one-screw-one-number", 1, 119499, 0xd3760bdcebfd9380),
    ("one-screw-one-number", 2, 127399, 0xfad3071fcc355a05),
    ("healthy-natural", 1, 151346, 0xe4466c39850cb649),
    ("healthy-natural", 2, 151346, 0xe4466c39850cb649),
    ("healthy-propane", 1, 156446, 0x3f1f0c15c22b9978),
    ("healthy-propane", 2, 156446, 0x3f1f0c15c22b9978),
    ("borrowed-bag", 1, 154956, 0x50186284ba234f2c),
    ("borrowed-bag", 2, 151496, 0xb3e55fb3e5da2a03),
    ("first-call-of-the-day", 1, 209946, 0x4112055e91651796),
    ("first-call-of-the-day", 2, 201326, 0xdcd3cd22637bbaca),
    ("after-the-painters", 1, 148856, 0xe860e0c382e67a69),
    ("after-the-painters", 2, 156756, 0xa186c40c8c530590),
    ("no-heat-after-cleaning", 1, 147966, 0x0779002468e2a4e5),
    ("no-heat-after-cleaning", 2, 161846, 0x2bcb31ff50ed4fa5),
    ("propane-cold-morning", 1, 157956, 0x6e9825e93e3cc786),
    ("propane-cold-morning", 2, 171616, 0x4ad1d30194059e5d),
    ("natural-gas-busy-kitchen", 1, 183686, 0x932896e025d970cd),
    ("natural-gas-busy-kitchen", 2, 191586, 0x57c0ce0e667d66f8),
    ("an-order-without-a-fuel", 1, 161896, 0xc7e70aaf68334aa7),
    ("an-order-without-a-fuel", 2, 173076, 0x99b083c5ec921a9e),
    ("short-spells", 1, 162866, 0x3237283a8dc18289),
    ("short-spells", 2, 172016, 0xd114e2b964f4c289),
    ("a-label-of-its-own", 1, 159186, 0xbf8b85088987918c),
    ("a-label-of-its-own", 2, 172866, 0x6a95ce420d546a51),
    ("a-roar-at-night", 1, 161946, 0x142d5da666abf51e),
    ("a-roar-at-night", 2, 169866, 0x04c5d349efe194a5),
    ("slow-half-of-winter", 1, 162996, 0x9c8f0671fe68f968),
    ("slow-half-of-winter", 2, 175426, 0xb4c77ecc76976aea),
    ("a-hard-light", 1, 178216, 0x46b9bf4207c84ae3),
    ("a-hard-light", 2, 184916, 0x35d5bd054fd9dba2),
    ("two-meters-two-numbers", 1, 158196, 0xdf25ba0343fda2d5),
    ("two-meters-two-numbers", 2, 165786, 0x83d5f56bdca92010),
    ("needle-in-no-hurry", 1, 184866, 0x6e626ea9b0c0e5ff),
    ("needle-in-no-hurry", 2, 192746, 0xe8fa9bf2fc2190e8),
    ("behind-the-cupboard", 1, 159916, 0xa8f5041210060afe),
    ("behind-the-cupboard", 2, 167816, 0x160f7cc2d323556a),
    ("the-new-dial", 1, 233256, 0xf87217e4fbe3fac2),
    ("the-new-dial", 2, 247566, 0x7def575b3263a69c),
    ("lukewarm-at-dawn", 1, 179336, 0xfff62af100e4d618),
    ("lukewarm-at-dawn", 2, 187236, 0x59a7b92b8c682fcf),
    ("stops-when-warm", 1, 148856, 0xac6a7f8f458f7658),
    ("stops-when-warm", 2, 156756, 0x5928b51f7278ccae),
    ("lights-and-quits", 1, 148166, 0x62e68bceb84c3b3b),
    ("lights-and-quits", 2, 161846, 0x257310432fbdb796),
    ("hums-and-clicks", 1, 142296, 0xc64d6c507f60d706),
    ("hums-and-clicks", 2, 156756, 0x250c5df565484357),
    ("no-bite-on-high", 1, 211866, 0xb7647bd31caedd50),
    ("no-bite-on-high", 2, 225546, 0xd22f36e585ac9a45),
    ("after-a-quiet-summer", 1, 148166, 0xa874f16384da1f7c),
    ("after-a-quiet-summer", 2, 161846, 0xc466d79a894adaac),
    ("leaves-on-the-lawn", 1, 148856, 0x7212217443237b73),
    ("leaves-on-the-lawn", 2, 156756, 0x4007faf13b4f688b),
    ("first-monday-of-frost", 1, 212066, 0x3cd2bd04f3fb6bc5),
    ("first-monday-of-frost", 2, 168026, 0xe980bb586b4d3dec),
    ("house-on-the-pass", 1, 166756, 0x7492c89a4ca0ad24),
    ("house-on-the-pass", 2, 173416, 0x16f0420dc60cf5cc),
    ("thaw-week", 1, 159386, 0xec670d8082f28d0e),
    ("thaw-week", 2, 172866, 0x1ffb4d04473b2e73),
    ("the-helpful-cousin", 1, 175976, 0xb5b31faf627f1d63),
    ("the-helpful-cousin", 2, 183876, 0x1e3ecf5a6be6a75f),
    ("the-second-kitchen", 1, 148846, 0x90d4ab1a86faa599),
    ("the-second-kitchen", 2, 156746, 0x040bea06942ac801),
    ("while-dinner-cooks", 1, 170906, 0x8a9b8a37615aabb9),
    ("while-dinner-cooks", 2, 165756, 0xa1ad66495419a1b0),
    ("wet-and-windy", 1, 205486, 0x8b6e0412cd7cab83),
    ("wet-and-windy", 2, 186086, 0x485d603284335998),
    ("a-letter-about-the-yard", 1, 100391, 0x3ceabc00ba2bc123),
    ("a-letter-about-the-yard", 2, 95211, 0xf9e5c884fa1a3db9),
    ("end-of-the-month", 1, 54516, 0x1813e82f9f1e4ba3),
    ("end-of-the-month", 2, 68186, 0x3ea444fba60abcc3),
    ("a-trace-by-the-door", 1, 199076, 0xe458bacdd6f6216c),
    ("a-trace-by-the-door", 2, 206976, 0x9fb237f209b60d66),
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
