//! The scale of harm at its limits, what a rule costs, and the pressures that a debrief draws.

use quarterturn::bench::Bench;
use quarterturn::marking::trace::Trace;
use quarterturn::rules::competency;
use quarterturn::rules::{
    Cost, Family, Grade, Grave, Harm, RuleBook, RuleBookError, Severity, shared,
};

use crate::bench::rig;

const TEXT: &str = include_str!("../../../assets/rules/rules.ron");

fn read(from: &str, to: &str) -> Result<RuleBook, RuleBookError> {
    assert!(TEXT.contains(from), "{from}");
    RuleBook::read(&TEXT.replacen(from, to, 1))
}

/// Shares, repeats, points and the day, each on its limit and beyond it.
#[test]
fn the_scale_ends_at_its_limits() {
    for (from, to, right) in [
        ("share: 0.4", "share: 0.0", true),
        ("share: 0.4", "share: 1.0", true),
        ("share: 0.4", "share: 1.01", false),
        ("share: 0.4", "share: -0.01", false),
        ("points: 1,\n            most: 1", "points: 0,\n            most: 0", true),
        ("points: 1,\n            most: 1", "points: -0.1,\n            most: 1", false),
        ("points: 1,\n            most: 1", "points: 1,\n            most: -0.1", false),
        ("least: 0", "least: 99.9", true),
        ("least: 0", "least: 100", false),
        ("least: 0", "least: -1", false),
        ("gates: true, points: 30", "gates: true, points: 100", true),
        ("gates: true, points: 30", "gates: true, points: 101", false),
        ("gates: false, points: 2,", "gates: false, points: 0,", true),
        ("gates: false, points: 2,", "gates: false, points: -1,", false),
        ("gates: true, points: 20", "gates: true, points: 30", true),
        ("gates: true, points: 20", "gates: true, points: 30.1", false),
        ("gates: true, points: 20", "gates: true, points: 10", true),
        ("gates: true, points: 20", "gates: true, points: 9.9", false),
        ("harm: Danger, severity: Critical", "harm: Danger, severity: Major", false),
    ] {
        assert_eq!(read(from, to).is_ok(), right, "{to}");
    }
    for (date, right) in [
        ("2026-12-31", true),
        ("2026-01-01", true),
        ("2026-13-01", false),
        ("2026-00-01", false),
        ("2026-01-00", false),
        ("2026-01-32", false),
        ("26-01-01", false),
        ("2026-1-01", false),
        ("2026-01-1", false),
        ("20 6-01-01", false),
        ("+026-01-01", false),
        ("2026-01", false),
        ("2026-01-01-01", false),
    ] {
        let to = format!("date: \"{date}\"");
        assert_eq!(read("date: \"2026-11-30\"", &to).is_ok(), right, "{date}");
    }
    // Classes stand from the worst; one that stands before a worse one is out of order.
    let swapped = TEXT
        .replacen("harm: Waste, severity", "harm: Swapped, severity", 1)
        .replacen("harm: Slip, severity", "harm: Waste, severity", 1)
        .replacen("harm: Swapped, severity", "harm: Slip, severity", 1)
        .replacen("gates: false, points: 2,", "gates: false, points: 3,", 1);
    assert!(RuleBook::read(&swapped).is_err());
}

/// What is wrong in a rule is told with its line and column.
#[test]
fn a_rule_is_told_with_its_place() {
    for (rule, from, to) in [
        (
            "door-off",
            "id: \"door-off\", version: 3, family: Restoring, harm: NoHeat",
            "id: \"door-off\", version: 3, family: Restoring, harm: Slip",
        ),
        ("parts-on-suspicion", "cost: Some((points: 8,", "cost: Some((points: 21,"),
        ("parts-on-suspicion", "cost: Some((points: 8,", "cost: Some((points: -1,"),
        ("ignition", "follows_from: [\"opened-inlet-under-gas\"", "follows_from: [\"nothing\""),
    ] {
        let error = read(from, to).unwrap_err();
        let id = format!("id: \"{rule}\"");
        let at = TEXT.lines().position(|line| line.trim_start().starts_with(&id)).unwrap();
        let column = TEXT.lines().nth(at).unwrap().find("id:").unwrap() + 1;
        assert_eq!((error.line, error.column), (at + 1, column), "{error}");
    }
    // A rule may cost as much as its family, and no less than nothing.
    assert!(read("cost: Some((points: 8,", "cost: Some((points: 20,").is_ok());
    assert!(read("cost: Some((points: 8,", "cost: Some((points: 0,").is_ok());
    let because = TEXT.find("because: \"").map(|at| &TEXT[at..]).unwrap();
    let reason =
        &because[..because["because: \"".len()..].find('"').unwrap() + "because: \"".len()];
    assert!(read(reason, "because: \"  ").is_err());
}

/// A cost of its own is that of a rule's usual case; its worst costs what the class costs.
#[test]
fn the_worst_costs_what_its_class_costs() {
    let mut book = shared().unwrap();
    let rule = book.rules.iter_mut().find(|it| it.id == "left-outside-band").unwrap();
    rule.cost = Some(Cost { points: 9.0, because: "a test".to_owned() });
    rule.grave = Some(Grave { harm: Harm::LeftUnsafe, when: "a test".to_owned() });
    let rule = rule.clone();
    let charge = |grade| {
        let charge = book.charge(&rule, grade);
        (charge.points, charge.severity, charge.gates)
    };
    assert_eq!(charge(Grade::Usual), (9.0, Severity::Major, true));
    assert_eq!(charge(Grade::Grave), (20.0, Severity::Critical, true));
}

/// Every family has its cap, and every competency is found by its id.
#[test]
fn caps_and_competencies_are_found() {
    let scoring = shared().unwrap().scoring;
    for (family, points) in [
        (Family::Safety, 40.0),
        (Family::Isolation, 40.0),
        (Family::Measuring, 20.0),
        (Family::Adjusting, 20.0),
        (Family::Restoring, 15.0),
        (Family::Records, 10.0),
        (Family::Diagnosis, 20.0),
    ] {
        assert!((scoring.cap(family) - points).abs() < 1e-12, "{family:?}");
    }
    for one in &competency::ALL {
        assert_eq!(competency::find(one.id).map(|it| it.id), Some(one.id));
    }
}

/// A sample every fifth of a second, each a bucket of its own until there are two thousand; then two are
/// joined in one, with the lowest and the highest of both.
#[test]
fn pressures_are_joined_two_by_two() {
    for (tick, due) in [(0, true), (10, true), (9, false), (11, false), (5, false), (200, true)] {
        assert_eq!(Trace::is_due(tick), due, "{tick}");
    }
    let mut truth = Bench::new(rig::healthy(quarterturn::appliance::plate::Fuel::Natural)).truth();
    let mut trace = Trace::default();
    let mut add = |trace: &mut Trace, sample: u64| {
        truth.tick = sample * 10;
        #[expect(clippy::cast_precision_loss, reason = "a few thousand")]
        let pa = if sample.is_multiple_of(2) {
            1_000.0 + sample as f64
        } else {
            1_000.0 - sample as f64
        };
        truth.inlet_pa = pa;
        trace.add(&truth);
    };
    for sample in 0..2_000 {
        add(&mut trace, sample);
    }
    assert_eq!(trace.buckets().len(), 2_000);
    assert_eq!(trace.buckets()[3].span_pa[1], (997.0, 997.0));
    add(&mut trace, 2_000);
    assert_eq!(trace.buckets().len(), 1_001);
    assert_eq!(trace.buckets()[1].span_pa[1], (997.0, 1_002.0));
    assert!((trace.buckets()[1].start_s - 0.4).abs() < 1e-9);
    assert_eq!(trace.buckets()[1_000].span_pa[1], (3_000.0, 3_000.0));
    // From now on two samples are one bucket.
    for (sample, buckets) in [(2_001, 1_002), (2_002, 1_002), (2_003, 1_003)] {
        add(&mut trace, sample);
        assert_eq!(trace.buckets().len(), buckets, "{sample}");
    }
    assert_eq!(trace.buckets()[1_001].span_pa[1], (-1_001.0, 3_002.0));
}
