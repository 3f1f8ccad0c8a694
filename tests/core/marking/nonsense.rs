//! Nonsense on the sheet of work that is good otherwise: each is marked for what it is, none
//! passes, and one sentence tells it to whoever reads the sheet.

use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::hands::refusal::Refusal;
use quarterturn::marking::debrief::{Job, debrief};
use quarterturn::marking::{Brief, Marks};
use quarterturn::parts::{
    Answer, Cause, Ending, Level, Phase, Port, Reading, Stage, WrittenFinding,
};
use quarterturn::rules::{Essential, shared};
use quarterturn::units::PressureUnit;

use super::{At, Good, found, rules};

/// The technician's work on a sound bench with each action made into others: its marks, and the
/// remarks on its sheet.
fn marked(instead: impl Fn(&Action) -> Vec<Action>) -> (Marks, Vec<String>) {
    let good = Good::on("healthy-natural", 0);
    let all = good.done.iter();
    let done: Vec<At> =
        all.flat_map(|(tick, action)| instead(action).into_iter().map(|it| (*tick, it))).collect();
    let observer = good.observed(&done);
    let marks = good.marked(&observer, &shared().unwrap());
    let brief = Brief { right_endings: good.endings.clone() };
    let job = Job { brief: &brief, id: None, note: None, night: None };
    let told = debrief(&observer.ledger, marks.clone(), observer.trace, job);
    (marks, told.account.sheet.remarks)
}

/// Rules on numbers that stood nowhere, in another state or at the other port.
const NUMBERS: [&str; 3] = ["invented", "wrong-stage", "wrong-port"];

/// How many numbers the technician writes.
fn lines() -> usize {
    let good = Good::on("healthy-natural", 0);
    good.done.iter().filter(|(_, action)| matches!(action, Action::Write(_))).count()
}

fn gates(marks: &Marks, essential: Essential) -> Vec<String> {
    marks.essentials.iter().find(|it| it.essential == essential).unwrap().because.clone()
}

/// The same number wherever one is written.
fn everywhere(thousandths: i32) -> (Marks, Vec<String>) {
    marked(|action| match action {
        Action::Write(it) => vec![Action::Write(Reading { thousandths, ..*it })],
        other => vec![other.clone()],
    })
}

/// Every line of pressure left empty: each reading that the job needs is missed, once, and nothing
/// is called made up.
#[test]
fn empty_lines_do_not_pass() {
    let (marks, remarks) = marked(|action| match action {
        Action::Write(_) => Vec::new(),
        other => vec![other.clone()],
    });
    assert!(!marks.verdict.is_met());
    for rule in ["never-read-running", "stage-never-read"] {
        assert_eq!(found(&marks, rule).times, 1, "{rule}");
    }
    assert!(!rules(&marks).contains(&"invented"), "{:?}", rules(&marks));
    assert_eq!(remarks, ["The sheet has no pressure on it."]);
}

/// One number on every line, far too high, nothing, or the highest that can be written: none of
/// them is right, and what was to be read is missing beside it. Nothing did stand at a port at
/// rest; elsewhere it is made up, as any other.
#[test]
fn one_number_everywhere_does_not_pass() {
    for thousandths in [99_900, 0, -99_900, 9_999_999, -9_999_999] {
        let (marks, remarks) = everywhere(thousandths);
        assert!(!marks.verdict.is_met(), "{thousandths}");
        assert_eq!(gates(&marks, Essential::MeterTrue), ["invented"], "{thousandths}");
        let charged = marks.findings.iter().filter(|it| NUMBERS.contains(&it.rule.as_str()));
        let times: usize = charged.map(|it| it.times).sum();
        assert_eq!(times, lines(), "{thousandths}: {:?}", rules(&marks));
        assert!(!gates(&marks, Essential::BothStagesRead).is_empty(), "{thousandths}");
        let made_up = remarks.iter().filter(|it| it.contains("never shown by the meter"));
        assert_eq!(made_up.count(), 1, "{thousandths}: {remarks:?}");
    }
}

/// A number that no sheet has room for is refused, and the sheet stays as it was.
#[test]
fn an_absurd_number_is_refused() {
    let mut bench = Bench::new(Good::on("healthy-natural", 0).setup);
    for thousandths in [10_000_000, i32::MAX, i32::MIN] {
        let reading = Reading {
            port: Port::Inlet,
            stage: Stage::Rest,
            phase: Phase::Found,
            thousandths,
            unit: PressureUnit::InWc,
        };
        assert_eq!(bench.apply(&Action::Write(reading)), Err(Refusal::Absurd), "{thousandths}");
    }
    assert!(bench.seen().sheet.readings.is_empty());
}

/// Ten numbers for one place, the right one among them, first or last: guessed, however near they
/// lie.
#[test]
fn ten_numbers_for_one_place_do_not_pass() {
    let low = |it: &Reading| {
        it.port == Port::Manifold
            && it.stage == Stage::Firing(Level::Low)
            && it.phase == Phase::Found
    };
    for (apart, right_at) in [(100, 9), (100, 0), (1_000, 9), (1_000, 0)] {
        let (marks, remarks) = marked(|action| match action {
            Action::Write(it) if low(it) => (0..10)
                .map(|i| {
                    let off = (i - right_at) * apart;
                    Action::Write(Reading { thousandths: it.thousandths + off, ..*it })
                })
                .collect(),
            other => vec![other.clone()],
        });
        assert!(!marks.verdict.is_met(), "{apart} {right_at}");
        assert_eq!(gates(&marks, Essential::MeterTrue), ["invented"], "{apart} {right_at}");
        let again = remarks.iter().filter(|it| it.contains("for one line"));
        assert_eq!(again.count(), 1, "{apart} {right_at}: {remarks:?}");
    }
}

/// A finding that contradicts the ending is told in one sentence, and does not pass: a fault to
/// shut off for, left in service; somebody else's fault, left in service; nothing found, and yet
/// shut off or its owner called. That nothing was found beside a fault cannot be written at all.
#[test]
fn a_cause_against_the_ending_does_not_pass() {
    let finding = |cause, answer| WrittenFinding { cause, answer, evidence: Vec::new() };
    let holed = finding(Cause::ExchangerHoled, Answer::ShutOff);
    let supply = finding(Cause::SupplySetLow, Answer::OwnerCalled);
    let nothing = finding(Cause::NothingFound, Answer::LeftAsItIs);
    for (findings, ending, told) in [
        (vec![holed], Ending::InService, "the job ended otherwise"),
        (vec![supply], Ending::InService, "the job ended otherwise"),
        (vec![nothing.clone()], Ending::ShutOff, "nothing was wrong, and the job ended otherwise"),
        (
            vec![nothing],
            Ending::SupplyOwnerCalled,
            "nothing was wrong, and the job ended otherwise",
        ),
    ] {
        let (marks, remarks) = marked(|action| match action {
            Action::WriteFinding(_) => findings.iter().cloned().map(Action::WriteFinding).collect(),
            Action::HandOver(it) => {
                vec![Action::HandOver(HandOver { ending, not_done: it.not_done.clone() })]
            }
            other => vec![other.clone()],
        });
        assert!(!marks.verdict.is_met(), "{findings:?} {ending:?} {:?}", rules(&marks));
        let told = remarks.iter().filter(|it| it.contains(told)).count();
        assert_eq!((told, remarks.len()), (1, 1), "{findings:?} {ending:?}: {remarks:?}");
    }
}
