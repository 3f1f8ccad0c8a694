//! Findings on the sheet: whether they are true, whether their answer is what was done, whether anything
//! speaks for them. Only the rules on that are asked.

use quarterturn::appliance::ignition::ControlState;
use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact, PlugStep};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::marking::occasion::gives_occasion;
use quarterturn::marking::{Brief, Ledger};
use quarterturn::parts::{
    Answer, Backing, Cause, Ending, Fitted, HandValve, Height, Joint, OnOff, Phase, Place, Port,
    Push, Screw, Sight, Spot, Subject, WrittenFinding,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::evidence::Closing;
use quarterturn::rules::{Evidence, Harm, OfFinding, RuleBook, shared};
use quarterturn::setup::Setup;
use quarterturn::units::PressureUnit;

use super::sheet::{REST, Sheet};
use crate::bench::rig;

const RIGHT: &[Ending] = &[Ending::InService];

fn book(rules: &[&str]) -> RuleBook {
    let mut book = shared().unwrap();
    book.rules.retain(|it| rules.contains(&it.id.as_str()));
    for rule in &mut book.rules {
        rule.follows_from.clear();
        // What costs little is told like the rest.
        rule.harm = if rule.essential.is_some() { rule.harm } else { Harm::Unproven };
    }
    book
}

fn times(sheet: &Sheet, rules: &[&str]) -> usize {
    sheet.marks_by(&book(rules), RIGHT).findings.iter().map(|it| it.times).sum()
}

fn writes(cause: Cause, answer: Answer, evidence: &[Backing]) -> Action {
    Action::WriteFinding(WrittenFinding { cause, answer, evidence: evidence.to_vec() })
}

fn rig(change: impl FnOnce(&mut Setup)) -> Sheet {
    let mut setup = rig::healthy(Fuel::Natural);
    change(&mut setup);
    Sheet::of(setup)
}

fn faulty(fault: Fault) -> Sheet {
    rig(|setup| fault.apply(setup, fault.entry().severity.typical(Fuel::Natural)))
}

/// Whether an answer contradicts what was done.
fn contradicts(mut sheet: Sheet, cause: Cause, answer: Answer, done: &[Action]) -> bool {
    for action in done {
        sheet.did(action.clone()).later();
    }
    sheet.did(writes(cause, answer, &[])).handed_over(Ending::InService);
    times(&sheet, &["answer-contradicts"]) > 0
}

fn mended(mut sheet: Sheet, repair: Repair, outcome: Outcome) -> Sheet {
    sheet.push(EventKind::Mended { repair, outcome, plate: None }).later();
    sheet
}

/// What came about on the job is true of it, each by its own event, and nothing else is; what was struck out
/// is not written.
#[test]
fn what_came_about_is_true() {
    const WRONG: [&str; 2] = ["wrong-cause", "wrong-cause-harms"];
    let tripped = EventKind::Control { from: ControlState::Retry, to: ControlState::RolloutOpen };
    let events = [
        (Cause::BossCracked, EventKind::Cracked { port: Port::Inlet }),
        (Cause::PlugCrossThreaded, EventKind::CrossThreaded { port: Port::Inlet }),
        (Cause::GasInTheAir, EventKind::Alarm),
        (Cause::RolloutTripped, tripped),
    ];
    for (came, event) in &events {
        for (written, _) in &events {
            let mut sheet = Sheet::new();
            sheet.did(Action::PutDown).push(event.clone());
            sheet.did(writes(*written, Answer::LeftAsItIs, &[]));
            assert_eq!(times(&sheet, &WRONG) == 0, came == written, "{came:?} {written:?}");
        }
    }
    let mut sheet = Sheet::new();
    sheet.did(writes(Cause::NothingFound, Answer::LeftAsItIs, &[]));
    assert_eq!(times(&sheet, &WRONG), 0);
    let mut sheet = Sheet::new();
    sheet.did(writes(Cause::BossCracked, Answer::LeftAsItIs, &[]));
    sheet.did(writes(Cause::FilterBlocked, Answer::LeftAsItIs, &[]));
    assert_eq!(WRONG.map(|it| times(&sheet, &[it])), [1, 1], "a word that harms is another");
    sheet.did(Action::StrikeFinding(Cause::BossCracked));
    assert_eq!(WRONG.map(|it| times(&sheet, &[it])), [1, 0]);
    assert_eq!(times(&sheet, &["no-finding-written"]), 0);
    sheet.did(Action::StrikeFinding(Cause::FilterBlocked));
    assert_eq!(times(&sheet, &WRONG), 0);
    assert_eq!(times(&sheet, &["no-finding-written"]), 1);
}

/// Mended is what a repair against it changed, a whole gas valve, or anything where the catalogue names no
/// repair.
#[test]
fn mended_is_what_was_changed() {
    use Answer::{LeftAsItIs, Mended};
    use Outcome::{Changed, Nothing};
    let plugged = || faulty(Fault::PluggedOrifice);
    let right = Repair::CleanOrifices;
    let of = |sheet, answer| contradicts(sheet, Cause::OrificePlugged, answer, &[]);
    assert!(of(plugged(), Mended));
    assert!(!of(mended(plugged(), right, Changed), Mended));
    assert!(of(mended(plugged(), right, Nothing), Mended));
    assert!(of(mended(plugged(), Repair::ReplaceFilter, Changed), Mended));
    assert!(!of(mended(plugged(), Repair::ReplaceGasValve, Changed), Mended));
    let both = mended(mended(plugged(), Repair::ReplaceFilter, Changed), right, Changed);
    assert!(!of(both, Mended));
    assert!(!of(plugged(), LeftAsItIs));
    assert!(of(mended(plugged(), right, Changed), LeftAsItIs));
    assert!(!of(mended(plugged(), right, Nothing), LeftAsItIs));
    assert!(!of(mended(plugged(), Repair::ReplaceFilter, Changed), LeftAsItIs));
    // Nothing in the catalogue mends a screw: any repair that changed something may have.
    let low = || faulty(Fault::LowStageSetLow);
    let of = |sheet| contradicts(sheet, Cause::LowSetLow, Mended, &[]);
    assert!(of(low()));
    assert!(!of(mended(low(), Repair::ReplaceFilter, Changed)));
    assert!(of(mended(low(), Repair::ReplaceFilter, Nothing)));
    // What is not true is not asked.
    assert!(!contradicts(Sheet::new(), Cause::OrificePlugged, Mended, &[]));
}

/// What was put back by hand was mended: a cap, a plug, an adapter, each by its own hand.
#[test]
fn put_back_is_mended() {
    let cap = Action::Cap { screw: Screw::Low, to: Fitted::On };
    let plug = Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(6) };
    let adapter = Action::Adapter { port: Port::Inlet, to: Fitted::Off };
    let capless = || faulty(Fault::MissingStageCap);
    let loose = || faulty(Fault::LooseInletPlug);
    let fitted = || faulty(Fault::AdapterLeftIn);
    for (i, (cause, sheet)) in [
        (Cause::CapMissing, &capless as &dyn Fn() -> Sheet),
        (Cause::InletPlugLoose, &loose),
        (Cause::AdapterLeftIn, &fitted),
    ]
    .into_iter()
    .enumerate()
    {
        for (j, action) in [&cap, &plug, &adapter].into_iter().enumerate() {
            let done = [Action::PutDown, action.clone()];
            let no_repair = contradicts(sheet(), cause, Answer::Mended, &done);
            assert_eq!(no_repair, i != j, "{cause:?} {action:?}");
            let left = contradicts(sheet(), cause, Answer::LeftAsItIs, &done);
            assert_eq!(left, i == j, "{cause:?} {action:?}");
        }
    }
}

/// Adjusted is the screw of its own level, the zero, the unit, or some screw where a cause is about none.
#[test]
fn adjusted_is_what_was_set() {
    use Answer::Adjusted;
    let turn = |screw| Action::Turn { screw, eighths: 1 };
    let low = || faulty(Fault::LowStageSetLow);
    let of = |done: &[Action]| contradicts(low(), Cause::LowSetLow, Adjusted, done);
    assert!(of(&[]) && of(&[turn(Screw::High)]) && of(&[Action::MeterZero]));
    assert!(!of(&[turn(Screw::High), turn(Screw::Low)]));
    let high = |done: &[Action]| {
        contradicts(faulty(Fault::HighStageSetHigh), Cause::HighSetHigh, Adjusted, done)
    };
    assert!(high(&[turn(Screw::Low)]) && !high(&[turn(Screw::High)]));
    // The rig's manometer comes with its zero off.
    let zero = |done: &[Action]| contradicts(Sheet::new(), Cause::MeterZeroOff, Adjusted, done);
    assert!(zero(&[turn(Screw::Low)]) && zero(&[Action::MeterUnit(PressureUnit::InWc)]));
    assert!(!zero(&[Action::PutDown, Action::MeterZero]));
    let orifice = |done: &[Action]| {
        contradicts(faulty(Fault::PluggedOrifice), Cause::OrificePlugged, Adjusted, done)
    };
    assert!(!orifice(&[turn(Screw::Low)]) && orifice(&[Action::MeterZero]));
    let unit = |done: &[Action]| {
        contradicts(faulty(Fault::MeterSetToMillibars), Cause::MeterUnitWrong, Adjusted, done)
    };
    assert!(unit(&[turn(Screw::Low)]));
    assert!(!unit(&[Action::PutDown, Action::MeterUnit(PressureUnit::InWc)]));
}

/// Opened is a valve, a switch or a device; called is a call; shut off is how it was left.
#[test]
fn opened_called_and_shut_off_are_what_was_done() {
    let off = || rig(|setup| setup.found.valve_switch = OnOff::Off);
    let opened = |action: Action| {
        let done = [Action::PutDown, action];
        !contradicts(off(), Cause::ValveSwitchOff, Answer::Opened, &done)
    };
    let valve = |hand_valve, degrees| Action::HandValve { hand_valve, degrees };
    for action in [
        Action::ValveSwitch(OnOff::On),
        Action::FurnaceSwitch(OnOff::On),
        Action::ResetRollout,
        Action::Mend(Repair::OpenRegisters),
        valve(HandValve::Furnace, 90),
        valve(HandValve::Supply, 1),
    ] {
        assert!(opened(action.clone()), "{action:?}");
    }
    for action in [
        Action::ValveSwitch(OnOff::Off),
        valve(HandValve::Furnace, 0),
        valve(HandValve::WaterHeater, 90),
        Action::Mend(Repair::ReplaceFilter),
    ] {
        assert!(!opened(action.clone()), "{action:?}");
    }
    let called = |action: Action| {
        let done = [Action::PutDown, action];
        !contradicts(off(), Cause::ValveSwitchOff, Answer::OwnerCalled, &done)
    };
    assert!(called(Action::Call(Contact::SupplyOwner)) && called(Action::Call(Contact::Emergency)));
    assert!(!called(Action::PutDown));
    for (ending, contradicts) in [(Ending::ShutOff, 0), (Ending::InService, 1)] {
        let mut sheet = off();
        sheet.did(writes(Cause::ValveSwitchOff, Answer::ShutOff, &[]));
        (sheet.truth.manual_valve, sheet.truth.tag) = (HandleAngle::SHUT, Fitted::On);
        sheet.handed_over(ending);
        assert_eq!(times(&sheet, &["answer-contradicts"]), contradicts, "{ending:?}");
    }
}

/// A finding is backed by what shows it, if there was an occasion to see it: a place, a nose, an instrument
/// in use.
#[test]
fn a_finding_is_backed_by_what_shows_it() {
    let unbacked = |event: EventKind, cause: Cause, evidence: &[Backing], done: &[Action]| {
        let mut sheet = Sheet::new();
        sheet.push(event);
        for action in done {
            sheet.did(action.clone()).later();
        }
        sheet.did(writes(cause, Answer::LeftAsItIs, evidence));
        times(&sheet, &["finding-unbacked"]) > 0
    };
    let cracked = |evidence: &[Backing], done: &[Action]| {
        unbacked(EventKind::Cracked { port: Port::Inlet }, Cause::BossCracked, evidence, done)
    };
    let reading = Backing::Reading { port: Port::Inlet, stage: REST, phase: Phase::Found };
    let joint = Backing::Joint(Joint::InletPort);
    let port = Backing::Sight(Sight::InletPort);
    let go = Action::Go;
    assert!(cracked(&[], &[]) && cracked(&[reading], &[]));
    assert!(cracked(&[Backing::Look(Subject::Plate)], &[]));
    assert!(!cracked(&[joint], &[]) && !cracked(&[reading, joint], &[]));
    assert!(cracked(&[port], &[]) && cracked(&[port], &[go(Place::Hall), go(Place::PlantRoom)]));
    assert!(!cracked(&[port], &[go(Place::Hall), go(Place::GasValve)]));

    let tripped = |evidence: &[Backing], done: &[Action]| {
        let to = ControlState::RolloutOpen;
        let event = EventKind::Control { from: ControlState::Retry, to };
        unbacked(event, Cause::RolloutTripped, evidence, done)
    };
    let control = Backing::Sight(Sight::Control);
    assert!(tripped(&[control], &[go(Place::Hall)]));
    assert!(!tripped(&[control], &[go(Place::PlantRoom)]));
    assert!(!tripped(&[control], &[go(Place::GasValve)]));
    assert!(!tripped(&[Backing::Measured(Spot::RolloutSwitch)], &[]));

    let gas = |evidence: &[Backing], done: &[Action]| {
        unbacked(EventKind::Alarm, Cause::GasInTheAir, evidence, done)
    };
    let smell = Backing::Sight(Sight::Smell);
    assert!(gas(&[smell], &[Action::PutDown]));
    assert!(!gas(&[smell], &[Action::PutDown, Action::Sniff(Height::Head)]));
    assert!(!gas(&[smell], &[Action::Probe(Height::Floor)]));
    assert!(!gas(&[Backing::Sight(Sight::Sound)], &[]));

    let zero = |done: &[Action]| {
        let manometer = [Backing::Sight(Sight::Manometer)];
        unbacked(EventKind::Alarm, Cause::MeterZeroOff, &manometer, done)
    };
    assert!(zero(&[]) && zero(&[Action::PutDown]));
    for action in [
        Action::MeterPower(OnOff::On),
        Action::MeterZero,
        Action::HoseOn { port: Port::Inlet, push: Push::Fully },
    ] {
        assert!(!zero(&[Action::PutDown, action]));
    }
    // That nothing was found is backed by readings; a word that is not true is charged as that alone.
    let nothing =
        |evidence: &[Backing]| unbacked(EventKind::Cycle, Cause::NothingFound, evidence, &[]);
    assert!(nothing(&[]) && !nothing(&[reading]));
    assert!(!unbacked(EventKind::Cycle, Cause::BossCracked, &[], &[]));
}

/// Findings are asked for at the end of a job: a cause where the bench shows one, a word that nothing was
/// found where it shows none; whether a finding is answered and backed, where one was written.
#[test]
fn findings_have_their_occasion() {
    use OfFinding::{
        AnswerContradicts, CauseNotNamed, NoneWritten, Unbacked, WrongCause, WrongCauseHarms,
    };
    const ALL: [OfFinding; 6] =
        [CauseNotNamed, NoneWritten, WrongCause, WrongCauseHarms, AnswerContradicts, Unbacked];
    let occasions = |mut sheet: Sheet, writes_one: bool, ends: bool| {
        if writes_one {
            sheet.did(writes(Cause::FilterBlocked, Answer::Mended, &[]));
        }
        if ends {
            sheet.handed_over(Ending::InService);
        }
        let mut ledger = Ledger::new(sheet.setup.clone());
        ledger.take(sheet.events.iter().cloned());
        let brief = Brief { right_endings: RIGHT.to_vec() };
        let given = |it: &OfFinding| {
            gives_occasion(Evidence::Closing(Closing::Finding(*it)), &ledger, &brief)
        };
        ALL.into_iter().filter(given).collect::<Vec<_>>()
    };
    let plugged = || faulty(Fault::PluggedOrifice);
    let at_end = [WrongCause, WrongCauseHarms];
    let written = [AnswerContradicts, Unbacked];
    assert_eq!(occasions(plugged(), false, true), [&[CauseNotNamed][..], &at_end].concat());
    assert_eq!(occasions(Sheet::new(), false, true), [&[NoneWritten][..], &at_end].concat());
    assert_eq!(occasions(plugged(), true, false), written);
    assert_eq!(occasions(Sheet::new(), true, false), written);
    assert_eq!(occasions(Sheet::new(), false, false), []);
    let all = [&[NoneWritten][..], &at_end, &written].concat();
    assert_eq!(occasions(Sheet::new(), true, true), all);
}
