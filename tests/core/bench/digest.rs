//! The digest takes in the whole state.

use std::fs;
use std::path::Path;

use super::rig;
use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::parts::{
    Answer, Cause, Fitted, Height, Joint, JointVerdict, Place, Screw, Tool, WrittenFinding,
};

fn finding(cause: Cause) -> Action {
    Action::WriteFinding(WrittenFinding { cause, answer: Answer::Mended, evidence: Vec::new() })
}

fn healthy() -> Bench {
    Bench::new(rig::healthy(Fuel::Propane))
}

fn after(actions: &[Action]) -> Bench {
    let mut bench = healthy();
    for action in actions {
        bench.apply(action).unwrap();
    }
    bench
}

/// Equal states have equal digests: a copy, and a bench that came the same way.
#[test]
fn equal_states_have_equal_digests() {
    let mut one = after(&[Action::Go(Place::Hall), Action::Sniff(Height::Head)]);
    let mut other = one.clone();
    assert_eq!(one.digest(), other.digest());
    let mut again = after(&[Action::Go(Place::Hall), Action::Sniff(Height::Head)]);
    for _ in 0..500 {
        one.step();
        other.step();
        again.step();
    }
    other.take_events();
    assert_eq!(one.digest(), other.digest());
    assert_eq!(one.digest(), again.digest());
}

/// Every single thing that is remembered tells two benches apart: a sniff, a probe, a tool put to a
/// spot, a turn that was turned back.
#[test]
fn whatever_is_remembered_counts() {
    let hold = |tool| vec![Action::Take(tool)];
    let and = |mut actions: Vec<Action>, more: &[Action]| {
        actions.extend_from_slice(more);
        actions
    };
    let detector = hold(Tool::GasDetector);
    let fluid = vec![Action::Take(Tool::LeakFluid)];
    let tight = || Action::WritePiping(JointVerdict::Tight);
    let driver =
        and(hold(Tool::SlottedDriver), &[Action::Cap { screw: Screw::Supply, to: Fitted::Off }]);
    let there_and_back = [1, -1].map(|eighths| Action::Turn { screw: Screw::Supply, eighths });
    let pairs = [
        ("a sniff", vec![], vec![Action::Sniff(Height::Head)]),
        (
            "where the sniff was",
            vec![Action::Sniff(Height::Head)],
            vec![Action::Sniff(Height::Floor)],
        ),
        ("a probe", detector.clone(), and(detector, &[Action::Probe(Height::Floor)])),
        ("when a screw was turned", driver.clone(), and(driver, &there_and_back)),
        ("a leak check of the piping", vec![], vec![tight()]),
        ("a wet joint in the yard", fluid.clone(), and(fluid, &[Action::LeakFluid(Joint::Riser)])),
        ("a finding", vec![], vec![finding(Cause::ConnectorKinked)]),
        (
            "which cause it names",
            vec![finding(Cause::ConnectorKinked)],
            vec![finding(Cause::VentBlocked)],
        ),
    ];
    for (what, one, other) in pairs {
        assert_ne!(after(&one).digest(), after(&other).digest(), "{what}");
    }
}

/// A nose that has breathed gas is another nose, wherever it stands afterwards.
#[test]
fn a_tired_nose_counts() {
    let leaking = || {
        let mut setup = rig::healthy(Fuel::Natural);
        setup.found.plugs_past_hand[quarterturn::parts::Port::Inlet] = 0.0;
        Bench::new(setup)
    };
    let [mut near, mut away] = [leaking(), leaking()];
    near.apply(&Action::Go(Place::GasValve)).unwrap();
    for _ in 0..60 * 50 {
        near.step();
        away.step();
    }
    near.apply(&Action::Go(Place::Yard)).unwrap();
    assert_eq!(near.truth(), away.truth());
    assert_ne!(near.digest(), away.digest());
}

/// A field is left out of the digest only where its text says so, and these are all.
#[test]
fn nothing_is_left_out_but_words() {
    let mut skipped = Vec::new();
    for room in
        ["parts", "setup", "model", "senses", "hands", "appliance", "instrument", "site", "physics"]
    {
        find(&Path::new("src").join(room), &mut skipped);
    }
    skipped.sort();
    let words = [
        "src/setup/mod.rs: pub supply_owner: String,",
        "src/setup/mod.rs: pub text: String,",
        "src/setup/mod.rs: pub title: String,",
    ];
    // Looks of a place are nothing that could be measured.
    let looks = [
        "src/parts/scene.rs: pub begins: TimeOfDay,",
        "src/parts/scene.rs: pub room: Room,",
        "src/parts/scene.rs: pub yard: YardLook,",
    ];
    // What the job asks for is no state of the bench; what a plate says stands in the setup.
    let elsewhere = [
        "src/senses/seen/observation.rs: pub rise_k: (f64, f64),",
        "src/setup/mod.rs: pub required: Vec<Duty>,",
    ];
    // Written in full once there is one; an empty list leaves older digests as they were.
    let while_empty = [
        "src/senses/seen.rs: pub findings: Vec<WrittenFinding>,",
        "src/senses/seen.rs: pub piping: Option<JointVerdict>,",
    ];
    let mut all: Vec<&str> =
        while_empty.into_iter().chain(looks).chain(elsewhere).chain(words).collect();
    all.sort_unstable();
    assert_eq!(skipped, all);
}

fn find(folder: &Path, skipped: &mut Vec<String>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            find(&path, skipped);
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        let lines: Vec<_> = text.lines().map(str::trim).collect();
        for pair in lines.windows(2).filter(|pair| pair[0].starts_with("#[serde(skip")) {
            skipped.push(format!("{}: {}", path.display(), pair[1]));
        }
    }
}
