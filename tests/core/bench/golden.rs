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
    ("one-screw-one-number", 1, 119699, 0x58f1c5075512eae7),
    ("one-screw-one-number", 2, 127599, 0x1903e5251db2a0c9),
    ("healthy-natural", 1, 151346, 0xf130f001945cafa0),
    ("healthy-natural", 2, 151346, 0xf130f001945cafa0),
    ("healthy-propane", 1, 156446, 0x4a7ca0032ea96f1f),
    ("healthy-propane", 2, 156446, 0x4a7ca0032ea96f1f),
    ("borrowed-bag", 1, 154956, 0x2c2cd21d9fc678a2),
    ("borrowed-bag", 2, 151496, 0xda4e87017d8c5694),
    ("first-call-of-the-day", 1, 209946, 0x021fde3367cb6dad),
    ("first-call-of-the-day", 2, 201326, 0x27318f3d2b183886),
    ("after-the-painters", 1, 148856, 0x312117fbb528c691),
    ("after-the-painters", 2, 156756, 0x48ca12f26f2aebac),
    ("no-heat-after-cleaning", 1, 147966, 0xfd4bdbc5699e8569),
    ("no-heat-after-cleaning", 2, 161846, 0x529b1bf18c40c7f0),
    ("propane-cold-morning", 1, 157956, 0xc9ca0be73b0e1602),
    ("propane-cold-morning", 2, 171616, 0xc38ca5f5efd79430),
    ("natural-gas-busy-kitchen", 1, 184986, 0xcc2f44be119b27d0),
    ("natural-gas-busy-kitchen", 2, 192886, 0xd0921b7449c0e124),
    ("an-order-without-a-fuel", 1, 161896, 0xeff1d871b7685d6a),
    ("an-order-without-a-fuel", 2, 173276, 0xa3cd7f9b0ef02331),
    ("short-spells", 1, 162866, 0x48708844ddf3502e),
    ("short-spells", 2, 172016, 0xf3c4db211bf21aed),
    ("a-label-of-its-own", 1, 159186, 0x1446746a8d53ca9a),
    ("a-label-of-its-own", 2, 172866, 0x6ce4163a2a4de280),
    ("a-roar-at-night", 1, 162346, 0x645cb779acee7a33),
    ("a-roar-at-night", 2, 170266, 0x0863360217bde816),
    ("slow-half-of-winter", 1, 163196, 0xa862ec9d49e2f058),
    ("slow-half-of-winter", 2, 175626, 0xac71bf65aa976ef8),
    ("a-hard-light", 1, 180916, 0x3e2f4ee5d804a6f1),
    ("a-hard-light", 2, 187216, 0x195cc7d3219d3fc1),
    ("two-meters-two-numbers", 1, 158396, 0x175eaa6b991228a2),
    ("two-meters-two-numbers", 2, 165986, 0x38e093fcaa12f34b),
    ("needle-in-no-hurry", 1, 184866, 0x9e7d9bf44b2471a9),
    ("needle-in-no-hurry", 2, 192746, 0xc9d84a5e588d0300),
    ("behind-the-cupboard", 1, 160116, 0x9ecb550e1a481c52),
    ("behind-the-cupboard", 2, 168016, 0xda4275d0efca9bad),
    ("the-new-dial", 1, 233256, 0x6107cdf48b82fdfe),
    ("the-new-dial", 2, 247566, 0x163d5487ba7f7b80),
    ("lukewarm-at-dawn", 1, 179536, 0xab5f5522bc3fe329),
    ("lukewarm-at-dawn", 2, 187436, 0x3f1bf45dcedc58d7),
    ("stops-when-warm", 1, 148856, 0xf9243ca2d975007d),
    ("stops-when-warm", 2, 156756, 0xb8b28b98c23cc212),
    ("lights-and-quits", 1, 148166, 0x0e02a21909c5c173),
    ("lights-and-quits", 2, 161846, 0x5f302b05a32d1847),
    ("hums-and-clicks", 1, 142296, 0x9da309e5d819020d),
    ("hums-and-clicks", 2, 156756, 0xec67502caff587b3),
    ("no-bite-on-high", 1, 211866, 0xf262220e42af642b),
    ("no-bite-on-high", 2, 225546, 0xc102fe2d4a40fa7a),
    ("after-a-quiet-summer", 1, 148166, 0x63c67d0403545e6e),
    ("after-a-quiet-summer", 2, 161846, 0xeb5bb9f27bf1abb6),
    ("leaves-on-the-lawn", 1, 148856, 0x9bd67ead1f90fec7),
    ("leaves-on-the-lawn", 2, 156756, 0x6bf648afc6102899),
    ("first-monday-of-frost", 1, 212066, 0x85621f36f2d5388d),
    ("first-monday-of-frost", 2, 168226, 0xa76a941679249205),
    ("house-on-the-pass", 1, 166956, 0xffb51925b2941a50),
    ("house-on-the-pass", 2, 173616, 0xc40fdfa9860012ee),
    ("thaw-week", 1, 159386, 0x925d2152457df2a2),
    ("thaw-week", 2, 172866, 0xcb972d9642ea98d1),
    ("the-helpful-cousin", 1, 176376, 0x3f03e58b27202dcb),
    ("the-helpful-cousin", 2, 184276, 0x2ec7e5c0f27124f0),
    ("the-second-kitchen", 1, 148846, 0xb09278aa33a06a4f),
    ("the-second-kitchen", 2, 156746, 0x355cf8c0228e282f),
    ("while-dinner-cooks", 1, 171106, 0x886a9c28cd3bf07d),
    ("while-dinner-cooks", 2, 165956, 0xc63cac5bab8781db),
    ("wet-and-windy", 1, 205486, 0x66d291ca6c47b984),
    ("wet-and-windy", 2, 186086, 0xea947c5c2ef2d19d),
    ("a-letter-about-the-yard", 1, 100391, 0x1bf324d638ccb650),
    ("a-letter-about-the-yard", 2, 95211, 0x4571466dbf334f43),
    ("end-of-the-month", 1, 54516, 0x1120b7aad042018a),
    ("end-of-the-month", 2, 68186, 0xebf04af22ccb1a4a),
    ("a-trace-by-the-door", 1, 199076, 0x84c8e7eb50b62669),
    ("a-trace-by-the-door", 2, 206976, 0x109ff400382cb985),
    ("moved-with-the-house", 1, 2350, 0x9ad8cda72ca5be66),
    ("moved-with-the-house", 2, 2350, 0xe3f7f0c68fe44d9a),
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
