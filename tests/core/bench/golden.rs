//! Golden runs: the reference technician's jobs end in exactly these states, in any profile and on
//! any machine (`tests/wasm/run` plays them in WebAssembly).
//!
//! When a number changes, look at the kept records (`record::kept`). If they come out differently
//! too, the model has changed: `docs/model-versions.md` says what to do. If not, the technician or a
//! scenario has changed: say why in the commit. Then write the new numbers here.

use quarterturn::bench::Bench;
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::drive::Nobody;
use quarterturn::technician::{Technician, play};

/// Scenario, seed, last tick and digest.
pub const GOLDEN: &[(&str, u64, u64, u64)] = &[
    ("propane-cold-morning", 1, 78396, 0xdc57_be87_4f95_28fb),
    ("propane-cold-morning", 2, 78396, 0xd4d7_9886_ffa2_e54f),
    ("propane-cold-morning", 3, 78396, 0x2eac_ce18_f27e_885f),
    ("natural-gas-busy-kitchen", 1, 101456, 0x48b3_b66a_d646_db39),
    ("natural-gas-busy-kitchen", 2, 101456, 0x8d53_8906_5422_9300),
    ("natural-gas-busy-kitchen", 3, 101606, 0x1f76_ce5a_7594_2f61),
    ("healthy-natural", 1, 70886, 0x94fa_3ed7_bbe0_64f2),
    ("healthy-natural", 2, 70886, 0x94fa_3ed7_bbe0_64f2),
    ("healthy-natural", 3, 70886, 0x94fa_3ed7_bbe0_64f2),
    ("healthy-propane", 1, 71906, 0xae92_8b3d_4119_0058),
    ("healthy-propane", 2, 71906, 0xae92_8b3d_4119_0058),
    ("healthy-propane", 3, 71906, 0xae92_8b3d_4119_0058),
];

#[test]
fn golden_runs_end_in_the_same_state() {
    let mut found = Vec::new();
    for job in builtin::JOBS.iter().chain(&builtin::HEALTHY) {
        let scenario = load(job.text).unwrap();
        for seed in [1, 2, 3] {
            let setup = scenario.draw(seed);
            let mut technician = Technician::new(&setup.card);
            let mut bench = Bench::new(setup);
            play(&mut bench, &mut technician, 3 * 3600, &mut Nobody);
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
