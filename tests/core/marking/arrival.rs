//! What is due before the first screw: the house told and aired, the papers looked at, alarms
//! answered, nobody called for nothing.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact, Topic};
use quarterturn::hands::event::{Event, EventKind, Outcome};
use quarterturn::parts::{Ending, HandValve, Level, OnOff, Opening, Place, Subject, Window};
use quarterturn::rules::{Essential, Severity};
use quarterturn::scenario::builtin::healthy_for;

use super::sheet::Sheet;
use super::{Good, found, handed_over, rules};
use crate::faults::hand::{fire, isolate_furnace, mend, put_back};

/// On propane the room is aired before the burners are lit; on natural gas nobody asks for it.
#[test]
fn propane_is_aired_before_lighting() {
    let opens = |action: &Action| {
        matches!(action, Action::Window { window: Window::PlantRoom, to: Opening::Open })
    };
    let good = Good::on("healthy-propane", 1);
    assert_eq!(rules(&good.marks(&good.done)), Vec::<&str>::new());
    let marks = good.without(|_, action| matches!(action, Action::Window { .. }));
    assert_eq!(rules(&marks), ["not-aired"]);
    assert_eq!(marks.verdict.points(), Some((95.0, 100.0)));
    // Opened only once they have burned, it is too late.
    let window = good.done[good.first(opens)].1.clone();
    let late = good.last(|action| *action == Action::Go(Place::PlantRoom));
    let mut done = good.done.clone();
    done.insert(late + 1, (good.done[late].0, window));
    done.remove(good.first(opens));
    assert!(rules(&good.marks(&done)).contains(&"not-aired"));
    let natural = Good::on("healthy-natural", 1);
    assert!(!natural.done.iter().any(|(_, action)| opens(action)));
}

/// The customer is told before the first switch, and of the smell drill before the end.
#[test]
fn people_are_told() {
    let good = Good::on("healthy-natural", 1);
    for (topic, rule) in
        [(Topic::WorkStarts, "work-not-announced"), (Topic::GasSmellDrill, "drill-not-told")]
    {
        let marks = good.without(|_, action| *action == Action::Tell(topic));
        assert_eq!(rules(&marks), [rule]);
        assert_eq!(found(&marks, rule).severity, Severity::Minor);
    }
    // Told after the heat was switched off, it comes too late.
    let told = good.first(|action| *action == Action::Tell(Topic::WorkStarts));
    let mut done = good.done.clone();
    let (_, tell) = done.remove(told);
    let hall = done.iter().position(|(_, it)| *it == Action::Go(Place::PlantRoom)).unwrap();
    done.insert(hall, (done[hall].0, tell));
    assert_eq!(rules(&good.marks(&done)), ["work-not-announced"]);
}

/// Label, springs and orifices are looked at before a screw is turned; where none is turned, any time
/// before the end will do.
#[test]
fn papers_come_before_screws() {
    let stamp = Action::Look(Subject::Orifices);
    for (job, missing) in [("a-roar-at-night", true), ("healthy-natural", false)] {
        let good = Good::on(job, 1);
        let mut done = good.done.clone();
        let looked = good.first(|action| *action == stamp);
        let (_, look) = done.remove(looked);
        let door = good.last(|action| matches!(action, Action::Adapter { .. })) - 1;
        done.insert(door, (done[door].0, look));
        let marks = good.marks(&done);
        assert_eq!(rules(&marks).contains(&"conversion-not-proven"), missing, "{job}");
        if missing {
            assert_eq!(
                found(&marks, "conversion-not-proven").fails,
                Some(Essential::ConversionProven)
            );
        }
    }
}

/// Burners lit on parts for the other gas are a danger, looked at or not; with the whole kit fitted
/// first they are not. What ran by itself on arrival is nobody's doing here.
#[test]
fn wrong_parts_are_not_lit() {
    let fault = Fault::UnconvertedOnPropane;
    for (fits, lights) in [(false, true), (true, true), (false, false)] {
        let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
        fault.apply(&mut setup, 1.0);
        let mut bench = Bench::new(setup);
        isolate_furnace(&mut bench);
        if fits {
            mend(&mut bench, Repair::FitConversionKit);
        }
        if lights {
            put_back(&mut bench);
            assert!(fire(&mut bench, Some(Level::Low)));
        }
        let marks = handed_over(bench, Ending::InService, &[Ending::ShutOff, Ending::InService]);
        let charged = rules(&marks).contains(&"wrong-conversion-fired");
        assert_eq!(charged, lights && !fits, "fits {fits}, lights {lights}");
        if charged {
            assert_eq!(found(&marks, "wrong-conversion-fired").severity, Severity::Critical);
        }
    }
}

/// The emergency number is for gas in the air.
#[test]
fn an_emergency_call_for_nothing_counts() {
    let good = Good::on("healthy-natural", 1);
    let call = Action::Call(Contact::Emergency);
    let outside = [Action::Go(Place::Yard), call.clone(), Action::Go(Place::Hall)];
    let marks = good.with_before(good.end(), &outside);
    assert_eq!(rules(&marks), ["needless-call"]);
    let mut observer = good.observed(&good.done);
    let alarm = Event { tick: 0, what: EventKind::Alarm };
    observer.ledger.events.insert(0, alarm);
    let before = observer.ledger.did().next().unwrap().before.clone();
    let called = EventKind::Did { action: call, before: Box::new(before) };
    observer.ledger.events.insert(1, Event { tick: 0, what: called });
    let marks = good.marked(&observer, &quarterturn::rules::shared().unwrap());
    assert!(!rules(&marks).contains(&"needless-call"), "{:?}", rules(&marks));
}

/// An alarm asks for all of it: everybody told, out, the supply shut, a call from outside, and nobody
/// back in while gas stands there. The telephone inside is a switch like any other.
#[test]
fn an_alarm_is_answered_whole() {
    let good = Good::on("healthy-natural", 1);
    let observed = good.observed(&good.done[..1]);
    let before = observed.ledger.did().next().unwrap().before;
    let told = Action::Tell(Topic::GetOut);
    let shut = Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 };
    let call = Action::Call(Contact::Emergency);
    let [out, back] = [Place::Yard, Place::PlantRoom].map(Action::Go);
    let answers = [
        (vec![&told, &out, &shut, &call, &back], 0.0, 0),
        (vec![&out, &shut, &call, &back], 0.0, 1),
        (vec![&told, &out, &call, &back], 0.0, 1),
        (vec![&told, &out, &shut, &back], 0.0, 1),
        (vec![&told, &out, &shut, &call, &back], 0.006, 1),
        (vec![&told, &out, &shut, &call, &back], 0.004, 0),
        (vec![&told, &call, &out, &shut, &back], 0.0, 1),
        (vec![&told, &out, &shut, &call], 0.006, 0),
    ];
    for (actions, gas, times) in answers {
        let mut observer = good.observed(&[]);
        observer.ledger.events = vec![Event { tick: 0, what: EventKind::Alarm }];
        for &action in &actions {
            let mut before = Box::new(before.clone());
            before.gas_fraction.floor = gas;
            let what = EventKind::Did { action: action.clone(), before };
            observer.ledger.events.push(Event { tick: 1, what });
        }
        let marks = good.marked(&observer, &quarterturn::rules::shared().unwrap());
        let finding = marks.findings.iter().find(|it| it.rule == "worked-on-after-alarm");
        assert_eq!(finding.map_or(0, |it| it.times), times, "{actions:?} {gas}");
    }
}

/// A furnace of the other gas that is shut off for its papers needs no look at springs and orifices: one
/// thing that does not fit settles it. With nothing looked at it is not proven.
#[test]
fn one_look_settles_what_must_stay_off() {
    let good = Good::on("moved-with-the-house", 1);
    let looks = |action: &Action, wanted: &[Subject]| matches!(action, Action::Look(at) if wanted.contains(at));
    let parts = [Subject::SpringMark, Subject::Orifices, Subject::LowGasSwitch];
    let papers = [Subject::Plate, Subject::ConversionLabel];
    let all = [&parts[..], &papers].concat();
    for (out, proven) in [(&parts[..], true), (&papers, true), (&all, false)] {
        let marks = good
            .without(|_, action| looks(action, out) || matches!(action, Action::WriteFinding(_)));
        assert_eq!(!rules(&marks).contains(&"conversion-not-proven"), proven, "{out:?}");
    }
}

/// What makes parts fit is the whole kit, fitted before the burners are lit: another repair, one that
/// changed nothing, one that came later or a kit without its label leaves them wrong.
#[test]
fn only_the_whole_kit_makes_parts_fit() {
    use Outcome::{Changed, Nothing};
    let lit = |fault: Fault, before: &[(Repair, Outcome)], after: &[(Repair, Outcome)], labels| {
        let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
        let sound = setup.furnace.plate.clone();
        fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Propane));
        let mut sheet = Sheet::of(setup);
        sheet.did(Action::FurnaceSwitch(OnOff::Off));
        let mend = |sheet: &mut Sheet, &(repair, outcome): &(Repair, Outcome)| {
            let plate = Some(Box::new(sound.clone())).filter(|_| labels);
            sheet.push(EventKind::Mended { repair, outcome, plate });
        };
        before.iter().for_each(|it| mend(&mut sheet, it));
        sheet.push(EventKind::Fired { from: None, to: Some(Level::Low) });
        after.iter().for_each(|it| mend(&mut sheet, it));
        sheet.times("wrong-conversion-fired")
    };
    let (kit, other) = (Repair::FitConversionKit, Repair::ReplaceFilter);
    let whole = Fault::UnconvertedOnPropane;
    assert_eq!(lit(whole, &[(kit, Changed)], &[], true), 0);
    assert_eq!(lit(whole, &[(other, Changed), (kit, Changed)], &[], true), 0);
    assert_eq!(lit(whole, &[(kit, Nothing)], &[], true), 1);
    assert_eq!(lit(whole, &[(other, Changed)], &[], true), 1);
    assert_eq!(lit(whole, &[(other, Changed)], &[(kit, Changed)], true), 1);
    assert_eq!(lit(whole, &[(kit, Changed)], &[], false), 1);
    let springs = Fault::NaturalSpringsOnPropane;
    assert_eq!(lit(springs, &[], &[], true), 1);
    assert_eq!(lit(springs, &[(Repair::FitSprings, Changed)], &[], true), 0);
}
