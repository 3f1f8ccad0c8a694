//! Gas in the air, gas at open ports, power and flame: each action that may do harm, and its neighbor that
//! may not. The lower flammable limits are 5 % and 2.1 % of gas in air (NFPA 325); a tenth of them is where
//! a detector calls (common practice).

use quarterturn::appliance::ignition::ControlState;
use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact, PlugStep, Topic};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::marking::Verdict;
use quarterturn::parts::{
    Door, Ending, Fitted, HandValve, Height, Level, OnOff, Opening, OtherAppliance, Place, Port,
    PortFill, Push, Screw, Window,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::{Essential, Severity, shared};
use quarterturn::units::PA_PER_INWC;

use super::sheet::Sheet;
use crate::bench::rig;

fn on(fuel: Fuel) -> Sheet {
    Sheet::of(rig::healthy(fuel))
}

/// Does these one after the other.
fn done(mut sheet: Sheet, actions: &[Action]) -> Sheet {
    for action in actions {
        sheet.did(action.clone()).later();
    }
    sheet
}

const HALL: Action = Action::Go(Place::Hall);
const YARD: Action = Action::Go(Place::Yard);
const AWAY: Action = Action::Go(Place::Away);
const OUT: Action = Action::Tell(Topic::GetOut);
const CALL: Action = Action::Call(Contact::Emergency);

fn valve(hand_valve: HandValve, degrees: i16) -> Action {
    Action::HandValve { hand_valve, degrees }
}

fn plug(port: Port, step: PlugStep) -> Action {
    Action::Plug { port, step }
}

/// Everything that is a hand on the furnace or on gas.
fn touches() -> Vec<Action> {
    vec![
        Action::FurnaceSwitch(OnOff::Off),
        valve(HandValve::Furnace, 0),
        valve(HandValve::WaterHeater, 0),
        valve(HandValve::Range, 0),
        Action::ThermostatMode(OnOff::Off),
        Action::Setpoint(140),
        Action::ValveSwitch(OnOff::Off),
        plug(Port::Inlet, PlugStep::BreakLoose),
        Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On },
        Action::StageJumper(Fitted::On),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Mend(Repair::ReplaceFilter),
        Action::Turn { screw: Screw::High, eighths: 1 },
    ]
}

/// With an alarm on, whoever is inside may go, warn, air, smell and shut valves, and nothing else: every
/// other hand counts, and the telephone too. Outside the alarm nothing of it does.
#[test]
fn an_alarm_leaves_little_to_do() {
    let counted = |actions: &[Action]| {
        let mut sheet = Sheet::new();
        sheet.push(EventKind::Alarm);
        done(sheet, actions).times("worked-on-after-alarm")
    };
    for action in touches() {
        let shuts = matches!(action, Action::HandValve { .. });
        assert_eq!(counted(std::slice::from_ref(&action)), usize::from(!shuts), "{action:?}");
        assert_eq!(done(Sheet::new(), &[action]).times("worked-on-after-alarm"), 0);
    }
    let window = Action::Window { window: Window::Hall, to: Opening::Open };
    for action in [HALL, OUT, window, Action::PutDown, valve(HandValve::Supply, 0)] {
        assert_eq!(counted(&[action]), 0);
    }
    for height in [Height::Floor, Height::Head] {
        assert_eq!(counted(&[Action::Sniff(height), Action::Probe(height)]), 0);
    }
    assert_eq!(counted(&[valve(HandValve::Furnace, 45)]), 1);
    assert_eq!(counted(&[CALL]), 1);
    assert_eq!(counted(&[YARD, CALL]), 0);
    assert_eq!(counted(&[Action::FurnaceSwitch(OnOff::Off), Action::StageJumper(Fitted::On)]), 2);
}

/// Back in counts unless everybody was told, the supply is shut, the call was made and the gas is gone; each
/// new alarm asks for all of it again. Going back in is one slip, however often one walks about then.
#[test]
fn nobody_goes_back_in_too_soon() {
    let shut = valve(HandValve::Supply, 0);
    let whole = [OUT, YARD, shut.clone(), CALL, HALL];
    let back = |actions: &[Action]| {
        let mut sheet = Sheet::new();
        sheet.push(EventKind::Alarm);
        let sheet = done(sheet, actions);
        sheet.finding("worked-on-after-alarm").map(|it| (it.times, it.truth))
    };
    let truth = |actions: &[Action]| back(actions).map(|it| it.1);
    assert_eq!(back(&whole), None);
    assert_eq!(back(&[OUT, AWAY, shut.clone(), CALL, HALL]), None);
    let untold = truth(&[YARD, shut.clone(), CALL, HALL]).unwrap();
    let unshut = truth(&[OUT, YARD, CALL, HALL]).unwrap();
    let uncalled = truth(&[OUT, YARD, shut.clone(), HALL]).unwrap();
    assert!(untold != unshut && unshut != uncalled && untold != uncalled);
    let place = Action::Go(Place::PlantRoom);
    assert_eq!(back(&[OUT, YARD, HALL, place]).unwrap().0, 1);
    // Another valve is not the supply's.
    assert_eq!(back(&[OUT, valve(HandValve::Furnace, 0), YARD, CALL, HALL]).unwrap().0, 1);

    let mut stands_shut = Sheet::new();
    stands_shut.push(EventKind::Alarm);
    stands_shut.truth.supply_valve = HandleAngle::SHUT;
    assert_eq!(done(stands_shut, &[OUT, YARD, CALL, HALL]).times("worked-on-after-alarm"), 0);

    let mut again = Sheet::new();
    again.push(EventKind::Alarm);
    let mut again = done(again, &whole);
    again.push(EventKind::Alarm);
    let again = done(again, &[YARD, HALL]);
    assert_eq!(again.finding("worked-on-after-alarm").map(|it| it.truth), Some(untold));
}

/// The gas is gone below a tenth of its lower flammable limit, wherever it stands.
#[test]
fn gas_is_gone_below_a_tenth_of_its_limit() {
    for (fuel, limit) in [(Fuel::Natural, 0.05), (Fuel::Propane, 0.021)] {
        for (share, counts) in [(0.1, 1), (0.099, 0)] {
            for place in 0..3 {
                let mut sheet = on(fuel);
                sheet.push(EventKind::Alarm);
                let mut sheet = done(sheet, &[OUT, YARD, valve(HandValve::Supply, 0), CALL]);
                let gas = &mut sheet.truth.gas_fraction;
                let there = [&mut gas.vestibule, &mut gas.floor, &mut gas.breathing];
                *there.into_iter().nth(place).unwrap() = limit * share;
                let sheet = done(sheet, &[HALL]);
                assert_eq!(sheet.times("worked-on-after-alarm"), counts, "{fuel:?} {share}");
            }
        }
    }
}

/// Before the first hand on anything, nose or detector are used in the house: in the yard they tell
/// nothing, and an alarm on the way in is more than they would.
#[test]
fn the_house_is_smelt_before_the_first_hand() {
    let sniff = Action::Sniff(Height::Head);
    for first in touches() {
        let counts = |before: &[Action]| {
            let all = [before, std::slice::from_ref(&first)].concat();
            done(Sheet::new(), &all).times("no-sniff-on-arrival")
        };
        assert_eq!(counts(&[HALL]), 1, "{first:?}");
        assert_eq!(counts(&[HALL, sniff.clone()]), 0, "{first:?}");
    }
    let switch = Action::FurnaceSwitch(OnOff::Off);
    let counts = |actions: &[Action]| done(Sheet::new(), actions).times("no-sniff-on-arrival");
    assert_eq!(counts(&[HALL, Action::Probe(Height::Floor), switch.clone()]), 0);
    assert_eq!(counts(&[sniff.clone(), HALL, switch.clone()]), 1);
    assert_eq!(counts(&[HALL, YARD, sniff.clone(), switch.clone()]), 1);
    assert_eq!(counts(&[HALL, AWAY, sniff.clone(), switch.clone()]), 1);
    assert_eq!(counts(&[HALL, switch.clone(), sniff]), 1);
    assert_eq!(counts(&[HALL, Action::PutDown]), 0);
    // The supply's valve and screw are outside.
    let outside = [valve(HandValve::Supply, 0), Action::Turn { screw: Screw::Supply, eighths: 1 }];
    assert_eq!(counts(&outside), 0);
    for (first, counts) in [(true, 0), (false, 1)] {
        let mut sheet = Sheet::new();
        if first {
            sheet.push(EventKind::Alarm);
        }
        sheet.did(switch.clone());
        if !first {
            sheet.push(EventKind::Alarm);
        }
        assert_eq!(sheet.times("no-sniff-on-arrival"), counts);
        assert_eq!(sheet.times("work-not-announced"), counts);
    }
}

/// Propane is smelt at the floor before gas may meet a flame; natural gas rises.
#[test]
fn propane_is_smelt_at_the_floor() {
    let at = |height| [HALL, Action::Sniff(height)];
    let probe = [HALL, Action::Probe(Height::Floor)];
    for work in [
        Action::Turn { screw: Screw::Low, eighths: 1 },
        plug(Port::Manifold, PlugStep::BreakLoose),
        Action::FurnaceSwitch(OnOff::On),
        Action::ThermostatMode(OnOff::On),
    ] {
        let counts = |fuel: Fuel, before: &[Action]| {
            let all = [before, std::slice::from_ref(&work)].concat();
            done(on(fuel), &all).times("head-height-only")
        };
        assert_eq!(counts(Fuel::Propane, &at(Height::Head)), 1, "{work:?}");
        assert_eq!(counts(Fuel::Propane, &at(Height::Floor)), 0, "{work:?}");
        assert_eq!(counts(Fuel::Propane, &probe), 0, "{work:?}");
        assert_eq!(counts(Fuel::Natural, &at(Height::Head)), 0, "{work:?}");
    }
    for rest in [Action::FurnaceSwitch(OnOff::Off), Action::ThermostatMode(OnOff::Off)] {
        let all = [&at(Height::Head)[..], &[rest]].concat();
        assert_eq!(done(on(Fuel::Propane), &all).times("head-height-only"), 0);
    }
}

/// A port opened under gas, with these valves, this level burning, this hole in the tap and this repair.
fn opened(
    port: Port,
    valves: [HandleAngle; 2],
    firing: Option<Level>,
    tap_m: Option<f64>,
    repair: Option<Repair>,
) -> [usize; 3] {
    let mut setup = rig::healthy(Fuel::Natural);
    setup.condition.ports[port].tap_free_m = tap_m;
    let mut sheet = Sheet::of(setup);
    if let Some(repair) = repair {
        sheet.push(EventKind::Mended { repair, outcome: Outcome::Changed, plate: None }).later();
    }
    [sheet.truth.manual_valve, sheet.truth.supply_valve] = valves;
    sheet.truth.firing = firing;
    sheet.did(plug(port, PlugStep::BreakLoose));
    sheet.push(EventKind::OpenedUnderGas { port, pa: 7.0 * PA_PER_INWC });
    ["opened-inlet-under-gas", "opened-on-trapped-gas", "opened-manifold-firing"]
        .map(|it| sheet.times(it))
}

/// Under gas the inlet port is a danger with both valves open; behind either of them, or at the manifold
/// with no flame, it is trapped gas. Out of a hole that is stopped up to a tenth of a millimeter none is
/// heard to come, until it is cleaned, drilled or renewed.
#[test]
fn a_port_is_not_opened_under_gas() {
    let (open, shut) = (HandleAngle::OPEN, HandleAngle::SHUT);
    let inlet = |valves, tap_m, repair| opened(Port::Inlet, valves, None, tap_m, repair);
    assert_eq!(inlet([open, open], None, None), [1, 0, 0]);
    assert_eq!(inlet([shut, open], None, None), [0, 1, 0]);
    assert_eq!(inlet([open, shut], None, None), [0, 1, 0]);
    assert_eq!(inlet([open, open], Some(1.0e-4), None), [1, 0, 0]);
    assert_eq!(inlet([shut, open], Some(1.0e-4), None), [0, 0, 0]);
    assert_eq!(inlet([shut, open], Some(1.05e-4), None), [0, 1, 0]);
    for repair in [Repair::CleanInletTap, Repair::DrillInletTap, Repair::ReplaceGasValve] {
        assert_eq!(inlet([shut, open], Some(1.0e-5), Some(repair)), [0, 1, 0], "{repair:?}");
    }
    assert_eq!(inlet([shut, open], Some(1.0e-5), Some(Repair::CleanManifoldTap)), [0, 0, 0]);

    let manifold =
        |firing, tap_m, repair| opened(Port::Manifold, [open, open], firing, tap_m, repair);
    assert_eq!(manifold(None, None, None), [0, 1, 0]);
    assert_eq!(manifold(Some(Level::Low), None, None)[1], 0);
    assert_eq!(manifold(None, Some(1.0e-4), None), [0, 0, 0]);
    for repair in [Repair::CleanManifoldTap, Repair::DrillManifoldTap, Repair::ReplaceGasValve] {
        assert_eq!(manifold(None, Some(1.0e-5), Some(repair)), [0, 1, 0], "{repair:?}");
    }
    assert_eq!(manifold(None, Some(1.0e-5), Some(Repair::CleanInletTap)), [0, 0, 0]);
}

/// With a flame, the manifold port is opened by its plug, its adapter or its hose; the inlet's are others,
/// and without a flame none is.
#[test]
fn the_manifold_is_not_opened_on_a_flame() {
    let off = |port| Action::Adapter { port, to: Fitted::Off };
    let opens = |action: Action, firing: Option<Level>, hose: Option<Port>| {
        let mut sheet = Sheet::new();
        sheet.truth.firing = firing;
        if let Some(port) = hose {
            sheet.truth.ports[port].fill = PortFill::Hose(Push::Fully);
        }
        done(sheet, &[action]).times("opened-manifold-firing")
    };
    let burns = Some(Level::Low);
    assert_eq!(opens(plug(Port::Manifold, PlugStep::SpinOut), burns, None), 1);
    assert_eq!(opens(plug(Port::Manifold, PlugStep::SpinOut), None, None), 0);
    assert_eq!(opens(plug(Port::Manifold, PlugStep::BreakLoose), burns, None), 0);
    assert_eq!(opens(plug(Port::Inlet, PlugStep::SpinOut), burns, None), 0);
    assert_eq!(opens(off(Port::Manifold), burns, None), 1);
    assert_eq!(opens(off(Port::Inlet), burns, None), 0);
    assert_eq!(opens(Action::HoseOff, burns, Some(Port::Manifold)), 1);
    assert_eq!(opens(Action::HoseOff, burns, Some(Port::Inlet)), 0);
    assert_eq!(opens(Action::HoseOff, None, Some(Port::Manifold)), 0);
}

/// Heat called for with a port open counts against whoever opened it: behind a valve, or ended before any
/// gas came, it was caught. A port that stood open on arrival is nobody's here. Gas that came is charged as
/// that; the book is read without that rule, as an author may.
#[test]
fn a_call_on_an_open_port_is_caught_if_no_gas_comes() {
    let mut book = shared().unwrap();
    for rule in &mut book.rules {
        rule.follows_from.retain(|it| it != "gas-from-open-port");
    }
    book.rules.retain(|it| it.id != "gas-from-open-port");
    let rest = EventKind::Control { from: ControlState::PostPurge, to: ControlState::Standby };
    let gas = EventKind::GasFromPort { port: Port::Inlet };
    let called = |worked: Option<Port>, barred: bool, then: &[EventKind]| {
        let mut sheet = Sheet::new();
        if let Some(port) = worked {
            sheet.did(Action::Adapter { port, to: Fitted::Off }).later();
        }
        sheet.push(EventKind::CalledOnOpenPort { port: Port::Inlet, barred });
        for it in then {
            sheet.later().push(it.clone());
        }
        sheet.did(plug(Port::Inlet, PlugStep::SpinIn)).handed_over(Ending::InService);
        let marks = sheet.marks_by(&book, &[Ending::InService]);
        let found = marks.findings.into_iter().find(|it| it.rule == "called-with-port-open");
        found.map(|it| it.severity)
    };
    let (caught, not) = (Some(Severity::Major), Some(Severity::Critical));
    let mine = Some(Port::Inlet);
    assert_eq!(called(None, false, &[]), None);
    assert_eq!(called(Some(Port::Manifold), false, &[]), None);
    assert_eq!(called(mine, false, &[]), caught);
    assert_eq!(called(mine, false, std::slice::from_ref(&gas)), not);
    assert_eq!(called(mine, true, std::slice::from_ref(&gas)), caught);
    assert_eq!(called(mine, false, &[rest.clone(), gas.clone()]), caught);
    assert_eq!(called(mine, false, &[gas.clone(), rest]), not);
    // What came out before the call was not called for.
    let mut before = Sheet::new();
    before.did(plug(Port::Inlet, PlugStep::SpinOut)).push(gas.clone());
    before.push(EventKind::CalledOnOpenPort { port: Port::Inlet, barred: false });
    let marks = before.marks_by(&book, &[Ending::InService]);
    let found = marks.findings.iter().find(|it| it.rule == "called-with-port-open");
    assert_eq!(found.map(|it| it.severity), caught);
    let mut sheet = Sheet::new();
    sheet.did(plug(Port::Inlet, PlugStep::SpinOut)).later();
    sheet.push(EventKind::CalledOnOpenPort { port: Port::Inlet, barred: false }).push(gas);
    assert_eq!(sheet.times("called-with-port-open"), 0);
    assert_eq!(sheet.severity("gas-from-open-port"), not);
    assert_eq!(sheet.gates(Essential::NoGasToOpenPort), ["gas-from-open-port"]);
}

/// Gas that comes by itself out of a port that stood open on arrival is nobody's here, and what it lights
/// neither; once somebody has worked on the port, or has let gas on, it is.
#[test]
fn gas_that_comes_by_itself_is_nobodys() {
    let hand_valve = HandValve::Furnace;
    let opened = Action::HandValve { hand_valve, degrees: 90 };
    let shut = Action::HandValve { hand_valve, degrees: 0 };
    let cases = [
        (None, 0),
        (Some(Action::Sniff(Height::Floor)), 0),
        (Some(shut), 0),
        (Some(Action::FurnaceSwitch(OnOff::Off)), 0),
        (Some(plug(Port::Inlet, PlugStep::SpinOut)), 0),
        (Some(plug(Port::Manifold, PlugStep::SpinOut)), 1),
        (Some(opened), 1),
        (Some(Action::Setpoint(150)), 1),
        (Some(Action::FurnaceSwitch(OnOff::On)), 1),
    ];
    for (act, times) in cases {
        let mut sheet = Sheet::new();
        if let Some(act) = act.clone() {
            sheet.did(act).later();
        }
        sheet.push(EventKind::GasFromPort { port: Port::Manifold });
        assert_eq!(sheet.times("gas-from-open-port"), times, "{act:?}");
        let mut alone = Sheet::new();
        if let Some(act) = act.clone() {
            alone.did(act).later();
        }
        alone.push(EventKind::Ignition { port: Some(Port::Manifold) });
        assert_eq!(alone.times("ignition"), times, "{act:?}");
    }
}

/// A job that gas ended by itself has no verdict on the work, so long as nothing is charged; where it was
/// let on by hand, or something else was done wrongly before, it was not handed over and no more.
#[test]
fn a_job_that_ended_by_itself_has_no_verdict() {
    let lit = EventKind::Ignition { port: Some(Port::Manifold) };
    let mut alone = Sheet::new();
    alone.did(Action::Go(Place::Hall)).later().did(Action::Sniff(Height::Floor)).later();
    alone.push(lit.clone());
    assert_eq!(alone.marks_so_far().verdict, Verdict::EndedByItself);
    let mut by_hand = Sheet::new();
    by_hand.did(Action::Go(Place::Hall)).later().did(Action::Sniff(Height::Floor)).later();
    by_hand.did(Action::Setpoint(150)).later().push(lit);
    assert!(matches!(by_hand.marks_so_far().verdict, Verdict::NotHandedOver { .. }));
}

/// A plug that sits is loosened behind a shut valve: broken loose, spun out, or turned back by half a turn.
/// One on its way in that is taken out again lets nothing new out.
#[test]
fn a_plug_is_loosened_behind_a_valve() {
    let loosened = |before: &[PlugStep], step: PlugStep, seated: f64, valves: [HandleAngle; 2]| {
        let mut sheet = Sheet::new();
        for step in before {
            sheet.did(plug(Port::Inlet, *step)).later();
        }
        sheet.truth.ports[Port::Inlet].past_hand_turns = seated;
        [sheet.truth.manual_valve, sheet.truth.supply_valve] = valves;
        sheet.did(plug(Port::Inlet, step));
        sheet.times("loosened-with-cock-open")
    };
    use PlugStep::{BreakLoose, SpinIn, SpinOut, StartByHand, StartByKey, Tighten};
    let (open, shut) = (HandleAngle::OPEN, HandleAngle::SHUT);
    for step in [BreakLoose, SpinOut, Tighten(-4)] {
        assert_eq!(loosened(&[], step, 0.5, [open, open]), 1, "{step:?}");
        assert_eq!(loosened(&[], step, 0.5, [shut, open]), 0, "{step:?}");
        assert_eq!(loosened(&[], step, 0.5, [open, shut]), 0, "{step:?}");
    }
    for step in [Tighten(-3), Tighten(4), StartByHand, StartByKey, SpinIn] {
        assert_eq!(loosened(&[], step, 0.5, [open, open]), 0, "{step:?}");
    }
    assert_eq!(loosened(&[], BreakLoose, 0.0, [open, open]), 0);
    assert_eq!(loosened(&[], SpinOut, 0.0, [open, open]), 1);
    for start in [StartByHand, StartByKey, SpinIn] {
        assert_eq!(loosened(&[start], SpinOut, 0.0, [open, open]), 0, "{start:?}");
    }
    assert_eq!(loosened(&[StartByHand, Tighten(6)], SpinOut, 0.0, [open, open]), 1);
    // Another port's plug is another.
    let mut other = Sheet::new();
    other.did(plug(Port::Manifold, StartByHand)).later();
    other.truth.ports[Port::Inlet].past_hand_turns = 0.0;
    other.did(plug(Port::Inlet, SpinOut));
    assert_eq!(other.times("loosened-with-cock-open"), 1);
}

/// The plug comes out with the power off: at the switch, or at the blower door's.
#[test]
fn the_plug_comes_out_with_the_power_off() {
    for (switch, door, step, counts) in [
        (OnOff::On, Fitted::On, PlugStep::SpinOut, 1),
        (OnOff::Off, Fitted::On, PlugStep::SpinOut, 0),
        (OnOff::On, Fitted::Off, PlugStep::SpinOut, 0),
        (OnOff::On, Fitted::On, PlugStep::BreakLoose, 0),
    ] {
        let mut sheet = Sheet::new();
        sheet.truth.furnace_switch = switch;
        sheet.truth.doors[Door::Blower] = door;
        sheet.truth.manual_valve = HandleAngle::SHUT;
        sheet.did(plug(Port::Inlet, step));
        assert_eq!(sheet.times("power-left-on"), counts, "{switch:?} {door:?} {step:?}");
    }
}

/// A plug left across its thread is one thing, however often it was tried; one that was put right is one
/// each time. A cracked boss was caught where the gas valve was renewed afterwards.
#[test]
fn a_damaged_port_is_told_by_how_it_is_left() {
    for (left, counts) in [(true, [1, 0]), (false, [0, 2])] {
        let mut sheet = Sheet::new();
        for _ in 0..2 {
            sheet.push(EventKind::CrossThreaded { port: Port::Inlet }).later();
        }
        sheet.truth.ports[Port::Inlet].cross_threaded = left;
        sheet.handed_over(Ending::InService);
        let times = ["cross-thread-left", "cross-thread-caught"].map(|it| sheet.times(it));
        assert_eq!(times, counts, "{left}");
    }
    let cracked = |before: Option<Repair>, after: Option<Repair>| {
        let mut sheet = Sheet::new();
        let mended = |repair| EventKind::Mended { repair, outcome: Outcome::Changed, plate: None };
        if let Some(it) = before {
            sheet.push(mended(it)).later();
        }
        sheet.push(EventKind::Cracked { port: Port::Inlet }).later();
        if let Some(it) = after {
            sheet.push(mended(it)).later();
        }
        sheet.severity("boss-cracked")
    };
    let valve = Some(Repair::ReplaceGasValve);
    assert_eq!(cracked(None, None), Some(Severity::Critical));
    assert_eq!(cracked(None, valve), Some(Severity::Major));
    assert_eq!(cracked(valve, None), Some(Severity::Critical));
    assert_eq!(cracked(None, Some(Repair::ReplaceFilter)), Some(Severity::Critical));
}

/// A flash is told with where it came from.
#[test]
fn a_flash_is_told() {
    for port in [None, Some(Port::Inlet), Some(Port::Manifold)] {
        let mut sheet = Sheet::new();
        assert_eq!(sheet.times("ignition"), 0);
        sheet.did(Action::FurnaceSwitch(OnOff::On)).push(EventKind::Ignition { port });
        let found = sheet.finding("ignition").unwrap();
        assert_eq!(found.severity, Severity::Critical);
        assert_eq!(found.truth.contains("port"), port.is_some(), "{}", found.truth);
    }
}
