//! Golden runs: the reference technician's jobs end in exactly these states, in any profile and on
//! any machine. A changed number means that old records no longer replay: raise the version in
//! `Cargo.toml`, say why in the commit, and write the new number here.

use quarterturn::bench::Bench;
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::drive::Nobody;
use quarterturn::technician::{Technician, play};

/// Scenario, seed, last tick and digest.
const GOLDEN: &[(&str, u64, u64, u64)] = &[
    ("propane-cold-morning", 1, 78396, 0x8b7f_4d76_077c_01fe),
    ("propane-cold-morning", 2, 78396, 0x742c_f7c9_014e_3de4),
    ("propane-cold-morning", 3, 78396, 0x1f5d_d3eb_474a_8d7f),
    ("natural-gas-busy-kitchen", 1, 101456, 0xc8c1_b5ed_44bd_ee01),
    ("natural-gas-busy-kitchen", 2, 101456, 0x1069_8635_d923_3df7),
    ("natural-gas-busy-kitchen", 3, 101606, 0x15b8_1cfa_94fa_ba97),
    ("healthy-natural", 1, 70886, 0x6668_4d27_303e_f9ec),
    ("healthy-natural", 2, 70886, 0x6668_4d27_303e_f9ec),
    ("healthy-natural", 3, 70886, 0x6668_4d27_303e_f9ec),
    ("healthy-propane", 1, 71906, 0x7fba_d1ac_d2de_d96f),
    ("healthy-propane", 2, 71906, 0x7fba_d1ac_d2de_d96f),
    ("healthy-propane", 3, 71906, 0x7fba_d1ac_d2de_d96f),
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
