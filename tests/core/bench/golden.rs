//! Golden runs: the reference technician's jobs end in exactly these states, in any profile and on
//! any machine. A changed number means that old records no longer replay: raise the version in
//! `Cargo.toml`, say why in the commit, and write the new number here.

use quarterturn::bench::Bench;
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::drive::Nobody;
use quarterturn::technician::{Technician, play};

/// Scenario, seed, last tick and digest.
const GOLDEN: &[(&str, u64, u64, u64)] = &[
    ("propane-cold-morning", 1, 78396, 0x1e5046cf14dde21f),
    ("propane-cold-morning", 2, 78396, 0x4e8ea5a765bc7e4d),
    ("propane-cold-morning", 3, 78396, 0x0b8b245ec1d92040),
    ("natural-gas-busy-kitchen", 1, 101456, 0xbbe6a80cbf528ed0),
    ("natural-gas-busy-kitchen", 2, 101456, 0xc6b9bea1049981b4),
    ("natural-gas-busy-kitchen", 3, 101606, 0x44666f778974a611),
    ("healthy-natural", 1, 70886, 0xf411a7a37e02a176),
    ("healthy-natural", 2, 70886, 0xf411a7a37e02a176),
    ("healthy-natural", 3, 70886, 0xf411a7a37e02a176),
    ("healthy-propane", 1, 71906, 0x5b61826e03774a08),
    ("healthy-propane", 2, 71906, 0x5b61826e03774a08),
    ("healthy-propane", 3, 71906, 0x5b61826e03774a08),
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
