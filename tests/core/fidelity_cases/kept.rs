//! The kept cases against the model.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;
use std::sync::LazyLock;

use quarterturn::fidelity::cases::{checks, run};
use quarterturn::fidelity::{Check, Tolerance, Verdict};
use serde_json::Value;

/// Run once for all tests of this file.
static CHECKS: LazyLock<Vec<Check>> = LazyLock::new(checks);

const FILES: [&str; 4] = ["networks", "transients", "lines", "properties"];

fn kept(name: &str) -> String {
    let path = PathBuf::from(".").join("tests/reference");
    fs::read_to_string(path.join(format!("{name}.json"))).unwrap()
}

fn cases(name: &str) -> Vec<Value> {
    let file: Value = serde_json::from_str(&kept(name)).unwrap();
    file["cases"].as_array().unwrap().clone()
}

/// Every kept check passes, or is listed as a known miss with its reason; the file of networks has
/// no miss at all.
#[test]
fn kept_cases_hold() {
    let checks = &*CHECKS;
    for check in checks {
        let worst = check.worst().unwrap();
        println!(
            "{:50} {:4} rows, worst {:.6} for {:.6} {} ({}) {:?}",
            check.id,
            check.rows.len(),
            worst.result,
            worst.reference,
            check.unit,
            worst.label,
            check.verdict()
        );
    }
    let of = |verdict: Verdict| -> Vec<&str> {
        checks.iter().filter(|c| c.verdict() == verdict).map(|c| c.id.as_str()).collect()
    };
    assert!(of(Verdict::Fail).is_empty(), "{:?}", of(Verdict::Fail));
    let misses = of(Verdict::KnownMiss);
    assert!(misses.iter().all(|id| !id.starts_with("networks.")), "{misses:?}");
    assert!(checks.iter().filter(|c| c.id.starts_with("networks.")).all(|c| match c.tolerance {
        Tolerance::Absolute(band) => band == 0.02 && c.unit == "in. w.c.",
        Tolerance::Either { absolute, relative } => absolute == 0.02 && relative == 0.005,
        Tolerance::Relative(..) | Tolerance::AtMost | Tolerance::AtLeast => false,
    }));
}

/// Ids are unique, and every check says what it must.
#[test]
fn checks_are_whole() {
    let checks = &*CHECKS;
    let ids: BTreeSet<&str> = checks.iter().map(|check| check.id.as_str()).collect();
    assert_eq!(ids.len(), checks.len());
    let empty = |check: &&Check| {
        [&check.claim, &check.source, &check.condition, &check.reason].iter().any(|t| t.is_empty())
    };
    assert_eq!(checks.iter().find(empty), None);
}

/// A hundred networks and more, trees and loops, 2 to 14 nodes that are solved for; every kind of
/// element and both gases; sixty transients of 38 systems.
#[test]
fn there_are_enough() {
    let networks = cases("networks");
    assert!(networks.len() >= 100, "{}", networks.len());
    let (mut loops, mut kinds, mut propane) = (0, BTreeSet::new(), 0);
    for case in &networks {
        let (nodes, elements) = (&case["nodes"], case["elements"].as_array().unwrap());
        let fixed = nodes.as_array().unwrap().iter().filter(|n| n["pressure_pa"].is_number());
        let links = elements.len() + fixed.count() - 1;
        loops += usize::from(links >= nodes.as_array().unwrap().len());
        propane += usize::from(case["gas"] == "propane");
        kinds.extend(elements.iter().map(|e| e["type"].as_str().unwrap().to_owned()));
    }
    assert!(loops >= 25 && propane >= 25, "{loops} loops, {propane} with propane");
    assert_eq!(kinds.len(), 5, "{kinds:?}");
    let passed = CHECKS
        .iter()
        .filter(|c| c.id.starts_with("transients.") && !c.id.ends_with("-fine"))
        .filter(|c| c.verdict() == Verdict::Pass)
        .count();
    assert!(passed >= 20, "{passed} transients pass with steps of 20 ms");
}

/// A group that says it misses does miss; no note outlives its cause.
#[test]
fn no_miss_is_stale() {
    let checks = &*CHECKS;
    for name in FILES {
        let file: Value = serde_json::from_str(&kept(name)).unwrap();
        for (group, text) in file["groups"].as_object().unwrap() {
            let id = format!("{name}.{group}");
            let missed = checks.iter().any(|check| {
                let own = check.id == id || check.id.starts_with(&format!("{id}."));
                own && check.verdict() == Verdict::KnownMiss
            });
            assert_eq!(missed, text["known_miss"].is_string(), "{id}");
        }
    }
}

/// A case with one changed figure fails: each expected figure of one network, of one line and of one
/// transient in turn.
#[test]
fn a_changed_figure_fails() {
    let change = |name: &str, id: &str, pointer: &str, factor: f64| {
        let mut file: Value = serde_json::from_str(&kept(name)).unwrap();
        file["cases"].as_array_mut().unwrap().retain(|case| case["id"] == id);
        let figure = file["cases"][0].pointer_mut(pointer).unwrap();
        *figure = (figure.as_f64().unwrap() * factor).into();
        let checks = run(&file.to_string()).unwrap();
        checks.iter().filter(|check| check.verdict() != Verdict::Pass).count()
    };
    let first = "lines-natural-low-1";
    for node in ["n1", "n5"] {
        let pointer = format!("/expect/pressures_pa/{node}");
        assert_eq!(change("networks", first, &pointer, 1.0), 0);
        assert_eq!(change("networks", first, &pointer, 1.004), 1);
    }
    assert_eq!(change("networks", first, "/expect/flows_m3_s/p0", 1.006), 1);
    assert!(change("networks", first, "/elements/0/length_m", 1.3) >= 1);
    assert_eq!(change("lines", "pipe-1", "/expect/flow_m3_s", 1.01), 1);
    assert_eq!(change("lines", "pipe-2", "/expect/drop_pa", 0.98), 1);
    assert_eq!(change("transients", "bleed-1", "/expect/5/pressures_pa/line", 1.0), 0);
    assert_eq!(change("transients", "bleed-1", "/expect/5/pressures_pa/line", 1.05), 1);
}
