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
    ("propane-cold-morning", 1, 78396, 0x3312_a656_2a80_280a),
    ("propane-cold-morning", 2, 78396, 0x2473_3a2a_abec_9dd5),
    ("propane-cold-morning", 3, 78396, 0x7ccc_1c39_ca4d_1b00),
    ("natural-gas-busy-kitchen", 1, 101456, 0x3863_5c78_24df_2dcc),
    ("natural-gas-busy-kitchen", 2, 101456, 0xfb5f_35c4_3c01_1d58),
    ("natural-gas-busy-kitchen", 3, 101606, 0x0a36_1f8f_a878_dddb),
    ("healthy-natural", 1, 70886, 0x8753_9cc7_bb84_a645),
    ("healthy-natural", 2, 70886, 0x8753_9cc7_bb84_a645),
    ("healthy-natural", 3, 70886, 0x8753_9cc7_bb84_a645),
    ("healthy-propane", 1, 71906, 0x531b_424a_057f_ba0b),
    ("healthy-propane", 2, 71906, 0x531b_424a_057f_ba0b),
    ("healthy-propane", 3, 71906, 0x531b_424a_057f_ba0b),
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
