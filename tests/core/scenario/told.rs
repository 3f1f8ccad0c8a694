//! What is said after a job of what was in it.

use quarterturn::scenario::{builtin, in_this_job, load};

fn told(id: &str, seed: u64) -> Vec<String> {
    in_this_job(&load(builtin::find(id).unwrap().text).unwrap().draw(seed))
}

/// Every drawn fault is told with its cause, on every job that ships; nothing is told of a bench
/// whose manometer's zero alone is off but that zero.
#[test]
fn every_fault_is_told() {
    for one in &builtin::LADDER {
        let setup = load(one.text).unwrap().draw(3);
        let lines = in_this_job(&setup);
        for (fault, _) in &setup.faults {
            let cause = fault.entry().cause;
            assert!(lines.iter().any(|line| line.contains(cause)), "{}: {lines:?}", one.id);
        }
    }
    assert_eq!(
        told("healthy-natural", 1),
        ["The manometer showed 0.10 in. w.c. before it was zeroed."]
    );
}

/// Settings that are out of their limits as found are told with numbers, those inside are not.
#[test]
fn found_settings_are_told() {
    let lines = told("propane-cold-morning", 2);
    let about = |word: &str| lines.iter().filter(|line| line.contains(word)).count();
    assert_eq!((about("supply regulator"), about("low stage"), about("high stage")), (1, 1, 0));
    assert!(lines[0].contains("11.00 in. w.c. to 13.00 in. w.c."), "{}", lines[0]);
    let severity = told("stops-when-warm", 2);
    assert!(severity[0].contains("Here: share of the filter blocked, 0."), "{}", severity[0]);
}
