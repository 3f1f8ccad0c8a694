//! x
use quarterturn::fidelity::Verdict;
#[test]
fn temp() {
    let all = quarterturn::fidelity::tables::own().unwrap();
    for c in all.checks {
        let devs: Vec<f64> =
            c.rows.iter().map(|r| 100.0 * (r.judged() / r.reference - 1.0)).collect();
        let lo = devs.iter().copied().fold(9e9, f64::min);
        let hi = devs.iter().copied().fold(-9e9, f64::max);
        println!(
            "{:60} n {:4} {:+.4} {:+.4} {:?} {:?}",
            c.id,
            c.rows.len(),
            lo,
            hi,
            c.verdict(),
            c.truth
        );
        for r in &c.rows {
            if c.verdict() == Verdict::Fail && !c.holds(r) {
                println!(
                    "      {} ref {} got {} dev {:+.4}",
                    r.label,
                    r.reference,
                    r.result,
                    100.0 * (r.judged() / r.reference - 1.0)
                );
            }
        }
    }
    for s in all.set_aside {
        println!("{s:?}");
    }
}
