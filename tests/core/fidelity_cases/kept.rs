//! The kept cases against the model.

use quarterturn::fidelity::cases::checks;
use quarterturn::fidelity::{Check, Verdict};

/// Every kept check passes, or is listed as a known miss with its reason.
#[test]
fn kept_cases_hold() {
    let checks = checks();
    for check in &checks {
        if let Some(worst) = check.worst() {
            println!(
                "{:44} {:4} rows, worst {:.6} for {:.6} {} ({}) {:?}",
                check.id,
                check.rows.len(),
                worst.result,
                worst.reference,
                check.unit,
                worst.label,
                check.verdict()
            );
        }
    }
    let wrong: Vec<&Check> = checks.iter().filter(|c| c.verdict() == Verdict::Fail).collect();
    let ids: Vec<&str> = wrong.iter().map(|check| check.id.as_str()).collect();
    assert!(wrong.is_empty(), "{ids:?}");
}
