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
    assert_eq!(told("healthy-natural", 1), ["The manometer's zero was off by 0.10 in. w.c."]);
}

/// Settings that are out of their limits as found are told with numbers, those inside are not.
#[test]
fn found_settings_are_told() {
    let lines = told("propane-cold-morning", 2);
    let about = |word: &str| lines.iter().filter(|line| line.contains(word)).count();
    assert_eq!((about("supply regulator"), about("low stage"), about("high stage")), (1, 1, 0));
    assert!(lines[0].contains("11.00 in. w.c. to 13.00 in. w.c."), "{}", lines[0]);
    let severity = told("stops-when-warm", 2);
    assert!(severity[0].contains("Here: share of the filter blocked, "), "{}", severity[0]);
    assert!(severity[0].ends_with(" %."), "{}", severity[0]);
}

/// On every job that ships: one full stop after a unit that has its own, no zero with a sign, no
/// number with more than three decimals.
#[test]
fn numbers_are_told_as_people_write_them() {
    for (one, seed) in builtin::LADDER.iter().flat_map(|one| (1..6).map(move |seed| (one, seed))) {
        for line in told(one.id, seed) {
            assert!(!line.contains("..") && !line.contains("-0.00"), "{}: {line}", one.id);
            let fine = |word: &str| {
                let word = word.trim_end_matches(['.', ',', ';']);
                let digits = word.split_once('.').map_or("", |(_, digits)| digits);
                word.parse::<f64>().is_err() || digits.len() <= 3
            };
            assert!(line.split(' ').all(fine), "{}: {line}", one.id);
        }
    }
}
