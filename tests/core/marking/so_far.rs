//! A job that goes on: what is taken in of it, and that nothing is missing yet which is owed at its
//! end.

use quarterturn::bench::{Bench, run};
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::marking::{Brief, Ledger, Observer, Shown, Verdict, evaluate};
use quarterturn::parts::{Ending, Joint, Level, OnOff, Port, Subject};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::{Essential, Severity, shared};

use super::rules;
use super::sheet::{HIGH, Sheet};
use crate::bench::rig;

/// Pressures are taken in five times a second, from the first tick on.
#[test]
fn pressures_are_taken_in_five_times_a_second() {
    let mut bench = Bench::new(rig::healthy(quarterturn::appliance::plate::Fuel::Natural));
    let mut observer = Observer::new(&bench);
    run::play_again(&mut bench, &[], 50, &mut observer);
    let starts: Vec<f64> = observer.trace.buckets().iter().map(|it| it.start_s).collect();
    let due = [0.0, 0.2, 0.4, 0.6, 0.8];
    assert!(starts.iter().zip(due).all(|(is, due)| (is - due).abs() < 1e-9), "{starts:?}");
    assert!((5..=6).contains(&starts.len()), "{starts:?}");
}

/// A job on which nothing happened lasted no time.
#[test]
fn an_empty_job_lasts_no_time() {
    let ledger = Ledger::new(Sheet::new().setup);
    let brief = Brief { right_endings: vec![Ending::InService] };
    let marks = evaluate(&shared().unwrap(), &ledger, &brief);
    assert!(marks.seconds.abs() < f64::EPSILON, "{}", marks.seconds);
    assert_eq!(marks.verdict, Verdict::NotHandedOver { missing: Vec::new() });
}

/// What is owed at the end is missing then, and not before: readings, the conversion, a cycle, a word
/// to the customer.
#[test]
fn nothing_is_owed_before_the_end() {
    const OWED: [&str; 6] = [
        "conversion-not-proven",
        "drill-not-told",
        "never-read-running",
        "no-final-cycle",
        "stage-never-read",
        "work-not-announced",
    ];
    let mut sheet = Sheet::new();
    sheet.did(Action::FurnaceSwitch(OnOff::Off));
    let so_far = sheet.marks_so_far();
    let found = rules(&so_far);
    assert!(OWED.iter().all(|it| !found.contains(it)), "{found:?}");
    let marks = sheet.marks();
    let found = rules(&marks);
    assert!(OWED.iter().all(|it| found.contains(it)), "{found:?}");
}

/// A plug across its thread is a slip that was caught as long as nobody left it so.
#[test]
fn a_crossed_plug_is_not_left_before_the_end() {
    let mut sheet = Sheet::new();
    sheet.truth.ports[Port::Inlet].cross_threaded = true;
    sheet.push(EventKind::CrossThreaded { port: Port::Inlet });
    let of =
        |found: &[&str]| ["cross-thread-left", "cross-thread-caught"].map(|it| found.contains(&it));
    assert_eq!(of(&rules(&sheet.marks_so_far())), [false, true]);
    assert_eq!(of(&rules(&sheet.marks())), [true, false]);
}

/// What was put right in time costs less where the rule says what that is; where it does not, it costs
/// what it would have.
#[test]
fn in_time_is_what_a_rule_says_it_is() {
    let severity = |says: bool| {
        let mut book = shared().unwrap();
        let rule = book.rules.iter_mut().find(|it| it.id == "zeroed-under-pressure").unwrap();
        assert!(rule.caught.is_some());
        if !says {
            rule.caught = None;
        }
        let mut sheet = Sheet::new();
        sheet.push(EventKind::Zeroed { applied_pa: 500.0 }).later();
        sheet.push(EventKind::Zeroed { applied_pa: 0.0 }).later().read(Port::Inlet, HIGH, 6.6);
        let marks = sheet.marks_by(&book, &[Ending::InService]);
        marks.findings.iter().find(|it| it.rule == "zeroed-under-pressure").unwrap().severity
    };
    assert!(severity(true) < severity(false), "{:?}", severity(true));
    assert_ne!(severity(false), Severity::Minor);
}

/// A verdict on a job that was not handed over names what is missing already, if anything is.
#[test]
fn a_verdict_names_what_is_missing_already() {
    let words =
        |missing: &[Essential]| Verdict::NotHandedOver { missing: missing.to_vec() }.words();
    assert_eq!(words(&[]), "not yet met: not handed over");
    let missing = words(&[Essential::Isolation]);
    assert!(missing.ends_with(Essential::Isolation.label()), "{missing}");
    assert!(missing.contains("missing already: "), "{missing}");
}

/// On propane the low-gas switch is one of the things that prove a conversion, on natural gas there is
/// none to look at.
#[test]
fn a_low_gas_switch_is_looked_at_on_propane() {
    use quarterturn::appliance::plate::Fuel;
    for (fuel, counts) in [(Fuel::Natural, 0), (Fuel::Propane, 1)] {
        let mut sheet = Sheet::of(rig::healthy(fuel));
        for subject in
            [Subject::Plate, Subject::ConversionLabel, Subject::SpringMark, Subject::Orifices]
        {
            sheet.did(Action::Look(subject));
        }
        assert_eq!(sheet.times("conversion-not-proven"), counts, "{fuel:?}");
        sheet.did(Action::Look(Subject::LowGasSwitch));
        assert_eq!(sheet.times("conversion-not-proven"), 0, "{fuel:?}");
    }
}

/// A joint that was checked wrongly is told at once, whatever comes of the furnace; work that opened the
/// line has given no occasion for its leak check before the end.
#[test]
fn what_was_done_is_told_at_once() {
    let mut sheet = Sheet::new();
    sheet.did(Action::Plug { port: Port::Manifold, step: PlugStep::Tighten(6) }).later();
    sheet.did(Action::LeakFluid(Joint::ManifoldPort)).push(EventKind::FluidJudged {
        joint: Joint::ManifoldPort,
        lowest_pa: 870.0,
        dwell_s: 1.0,
        firing: Some(Level::High),
        bubbles: false,
        manual_valve: HandleAngle::OPEN,
    });
    let found = sheet.marks_so_far();
    assert!(rules(&found).contains(&"joint-checked-wrongly"), "{:?}", rules(&found));
    let (repair, outcome) = (Repair::ReplaceTrunk, Outcome::Changed);
    sheet.did(Action::Mend(repair)).push(EventKind::Mended { repair, outcome, plate: None });
    let mut book = shared().unwrap();
    book.rules.retain(|it| it.id == "piping-not-checked");
    book.rules[0].claims = vec!["C01".to_owned()];
    let mut ledger = Ledger::new(sheet.setup.clone());
    ledger.take(sheet.events.iter().cloned());
    let brief = Brief { right_endings: vec![Ending::InService] };
    assert_eq!(evaluate(&book, &ledger, &brief).competencies["C01"], Shown::NoOccasion);
}
