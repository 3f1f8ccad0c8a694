//! Every check of the three chapters, run; and proof that each can fail.

use quarterturn::fidelity::{Check, Verdict, closed, invariants, parts};

fn all() -> Vec<Check> {
    [closed::checks(), parts::checks(), invariants::checks()].concat()
}

fn table(check: &Check) -> String {
    let rows: Vec<String> = check
        .rows
        .iter()
        .map(|row| {
            let mark = if check.holds(row) { ' ' } else { '*' };
            format!("  {mark} {}: reference {}, result {}", row.label, row.reference, row.result)
        })
        .collect();
    format!("{} ({:?}, {})\n{}", check.id, check.tolerance, check.unit, rows.join("\n"))
}

/// Every claim holds.
#[test]
fn every_check_passes() {
    let failed: Vec<String> =
        all().iter().filter(|check| check.verdict() == Verdict::Fail).map(table).collect();
    assert!(failed.is_empty(), "{}", failed.join("\n\n"));
}

#[test]
fn show_all() {
    for check in all() {
        println!("{}", table(&check));
    }
}

#[test]
fn time_all() {
    let t = std::time::Instant::now();
    closed::checks();
    println!("closed {:?}", t.elapsed());
    let t = std::time::Instant::now();
    parts::checks();
    println!("parts {:?}", t.elapsed());
    let t = std::time::Instant::now();
    invariants::checks();
    println!("invariants {:?}", t.elapsed());
}
