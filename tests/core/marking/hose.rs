//! The manometer's hose on a port: its joint, its zero, and whether anybody was there; the timed dial and
//! the temperature rise. A minute for the joint, ten minutes for a hose alone, five minutes before a rise
//! is read: common practice.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, StartStop};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::parts::{
    Door, Ending, Fitted, Gauge, Joint, Level, Phase, Place, Port, PortFill, Push, Screw, Spot,
    Subject,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::{Harm, Severity, shared};
use quarterturn::senses::meter_history::Spell;
use quarterturn::senses::seen::WrittenMeasured;
use quarterturn::units::{M3_S_PER_CFH, PA_PER_INWC, PressureUnit};

use super::sheet::{HIGH, LOW, REST, Sheet, draw, spell};
use crate::bench::rig;

fn hose_on(sheet: &mut Sheet, port: Port) -> &mut Sheet {
    sheet.did(Action::HoseOn { port, push: Push::Fully });
    sheet.truth.ports[port].fill = PortFill::Hose(Push::Fully);
    sheet.later()
}

fn hose_off(sheet: &mut Sheet, port: Port) -> &mut Sheet {
    sheet.did(Action::HoseOff);
    sheet.truth.ports[port].fill = PortFill::BareAdapter;
    sheet.later()
}

fn fires(sheet: &mut Sheet, from: Option<Level>, to: Option<Level>) -> &mut Sheet {
    sheet.push(EventKind::Fired { from, to })
}

/// Fluid that was judged now, after so many seconds on a joint.
fn fluid(
    sheet: &mut Sheet,
    joint: Joint,
    dwell_s: f64,
    inwc: f64,
    firing: Option<Level>,
) -> &mut Sheet {
    sheet.push(EventKind::FluidJudged {
        joint,
        lowest_pa: inwc * PA_PER_INWC,
        dwell_s,
        firing,
        bubbles: false,
        manual_valve: HandleAngle::OPEN,
    })
}

const LIT: Option<Level> = Some(Level::Low);

/// At the inlet port the joint is checked before the burners are lit, with an inch of water behind it at
/// least; what was put on before and judged after is in time.
#[test]
fn the_inlet_joint_is_checked_before_lighting() {
    let counts = |joint: Joint, dwell_s: f64, inwc: f64, after: u64| {
        let mut sheet = Sheet::new();
        hose_on(&mut sheet, Port::Inlet);
        if after == 0 {
            fluid(&mut sheet, joint, dwell_s, inwc, None);
        }
        fires(&mut sheet, None, LIT);
        if after > 0 {
            fluid(sheet.pass(after), joint, dwell_s, inwc, None);
        }
        sheet.times("test-joint-unchecked")
    };
    let joint = Joint::InletPort;
    assert_eq!(counts(joint, 10.0, 7.0, 0), 0);
    assert_eq!(counts(joint, 10.0, 1.0, 0), 0);
    assert_eq!(counts(joint, 10.0, 1.05, 0), 0);
    assert_eq!(counts(joint, 10.0, 0.95, 0), 1);
    assert_eq!(counts(Joint::ManifoldPort, 10.0, 7.0, 0), 1);
    assert_eq!(counts(joint, 5.0, 7.0, 500), 1);
    assert_eq!(counts(joint, 20.0, 7.0, 500), 0);
    assert_eq!(counts(joint, 10.0, 7.0, 500), 0);
    assert_eq!(counts(joint, 10.0, 7.0, 501), 1);
}

/// Only a lighting with the hose on asks for it: not one before or after, not a change of level, not a
/// furnace that was never lit.
#[test]
fn only_a_lighting_with_the_hose_on_counts() {
    let mut never = Sheet::new();
    hose_on(&mut never, Port::Inlet);
    assert_eq!(never.times("test-joint-unchecked"), 0);
    let mut before = Sheet::new();
    fires(&mut before, None, LIT);
    hose_on(&mut before, Port::Inlet);
    fires(&mut before, LIT, Some(Level::High));
    fires(&mut before, Some(Level::High), None);
    hose_off(&mut before, Port::Inlet);
    fires(&mut before, None, LIT);
    assert_eq!(before.times("test-joint-unchecked"), 0);
    fires(hose_on(&mut before, Port::Inlet), None, LIT);
    assert_eq!(before.times("test-joint-unchecked"), 1);
}

/// One adapter is one joint, however often the hose comes off it; taken out and put in again it is another,
/// and so is the other port's.
#[test]
fn a_joint_lasts_as_long_as_its_adapter() {
    let counts = |between: &[Action], port: Port| {
        let mut sheet = Sheet::new();
        hose_on(&mut sheet, Port::Inlet);
        fluid(&mut sheet, Joint::InletPort, 10.0, 7.0, None);
        hose_off(&mut sheet, Port::Inlet);
        for action in between {
            sheet.did(action.clone()).later();
        }
        hose_on(&mut sheet, port);
        fires(&mut sheet, None, LIT);
        sheet.pass(4_000).times("test-joint-unchecked")
    };
    let off = Action::Adapter { port: Port::Inlet, to: Fitted::Off };
    let on = Action::Adapter { port: Port::Inlet, to: Fitted::On };
    assert_eq!(counts(&[], Port::Inlet), 0);
    assert_eq!(counts(&[on], Port::Inlet), 0);
    assert_eq!(counts(std::slice::from_ref(&off), Port::Inlet), 1);
    assert_eq!(counts(&[], Port::Manifold), 1);
    // A hose that is pushed further on is the same hose.
    let mut pushed = Sheet::new();
    hose_on(&mut pushed, Port::Inlet);
    fluid(&mut pushed, Joint::InletPort, 10.0, 7.0, None);
    hose_on(&mut pushed, Port::Inlet);
    assert_eq!(fires(&mut pushed, None, LIT).times("test-joint-unchecked"), 0);
}

/// At the manifold port the joint is checked in the first minute of the first firing that lasts one. One
/// with too little pressure to show anything is checked at the next.
#[test]
fn the_manifold_joint_is_checked_in_the_first_minute() {
    const JOINT: Joint = Joint::ManifoldPort;
    let lit = |begun: u64, dwell: u64, inwc: f64, firing: Option<Level>| {
        let mut sheet = Sheet::new();
        fires(hose_on(&mut sheet, Port::Manifold), None, LIT);
        #[expect(clippy::cast_precision_loss, reason = "seconds of a job")]
        let dwell_s = dwell as f64;
        fluid(sheet.pass(50 * (begun + dwell)), JOINT, dwell_s, inwc, firing);
        sheet
    };
    let times = |sheet: &Sheet| sheet.times("test-joint-unchecked");
    assert_eq!(times(&lit(20, 10, 1.7, LIT)), 0);
    assert_eq!(times(&lit(60, 10, 1.7, LIT)), 0);
    assert_eq!(times(&lit(61, 10, 1.7, LIT)), 1);
    assert_eq!(times(&lit(20, 10, 1.7, None)), 1);
    // The first shows nothing, and nobody looks at the next.
    let mut weak = lit(20, 10, 0.5, LIT);
    assert_eq!(times(&weak), 0);
    fires(&mut weak, LIT, None);
    fires(weak.later(), None, LIT);
    assert_eq!(times(weak.pass(4_000)), 1);
    fluid(&mut weak, JOINT, 79.0, 1.7, LIT);
    assert_eq!(times(&weak), 0);
    for (burned, counts) in [(2_999, 0), (3_000, 1)] {
        let mut sheet = Sheet::new();
        fires(hose_on(&mut sheet, Port::Manifold), None, LIT);
        fires(sheet.pass(burned), LIT, Some(Level::High));
        fires(&mut sheet, Some(Level::High), None);
        assert_eq!(times(&sheet), counts, "{burned}");
    }
}

/// The digital manometer is zeroed anew after the hose has left a port and before a number is written at
/// the other; a column has no zero to set, and the same port again asks for none.
#[test]
fn the_zero_is_of_its_port() {
    let zero = EventKind::Zeroed { applied_pa: 0.0 };
    let counts = |ports: [Port; 2], at: [bool; 3], gauge: Option<Gauge>, writes: Port| {
        let mut sheet = Sheet::new();
        let [first, second] = ports;
        hose_on(&mut sheet, first).read(first, LOW, 1.7);
        let push = |sheet: &mut Sheet, now: bool| {
            if now {
                sheet.push(zero.clone()).later();
            }
        };
        push(&mut sheet, at[0]);
        hose_off(&mut sheet, first);
        push(&mut sheet, at[1]);
        sheet.did(Action::Adapter { port: first, to: Fitted::Off }).later();
        sheet.truth.ports[first].fill = PortFill::Snug;
        if let Some(gauge) = gauge {
            sheet.did(Action::Gauge(gauge)).later();
        }
        hose_on(&mut sheet, second).read(writes, HIGH, 3.5);
        push(&mut sheet, at[2]);
        sheet.did(Action::Gauge(Gauge::Digital)).times("not-zeroed-anew")
    };
    let there = [Port::Inlet, Port::Manifold];
    let never = [false; 3];
    assert_eq!(counts(there, never, None, Port::Manifold), 1);
    assert_eq!(counts(there, [true, false, false], None, Port::Manifold), 1);
    assert_eq!(counts(there, [false, true, false], None, Port::Manifold), 0);
    assert_eq!(counts(there, [false, false, true], None, Port::Manifold), 1);
    assert_eq!(counts(there, never, Some(Gauge::WaterColumn), Port::Manifold), 0);
    assert_eq!(counts(there, never, None, Port::Inlet), 0);
    assert_eq!(counts([Port::Inlet; 2], never, None, Port::Inlet), 0);
}

/// Out of the house for ten minutes, with the hose or a bare adapter on and both valves open: at leaving and
/// at coming back, or at the end.
#[test]
fn a_hose_under_gas_is_left_for_less_than_ten_minutes() {
    let out = |place: Place, away: u64, change: fn(&mut Sheet), back: fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        sheet.truth.ports[Port::Inlet].fill = PortFill::Hose(Push::Fully);
        change(&mut sheet);
        sheet.did(Action::Go(place)).pass(away);
        back(&mut sheet);
        sheet.did(Action::Go(Place::Hall)).handed_over(Ending::InService);
        sheet.times("left-unattended")
    };
    let as_is = |_: &mut Sheet| {};
    let shut = |sheet: &mut Sheet| sheet.truth.manual_valve = HandleAngle::SHUT;
    let off = |sheet: &mut Sheet| sheet.truth.supply_valve = HandleAngle::SHUT;
    let adapter = |sheet: &mut Sheet| sheet.truth.ports[Port::Inlet].fill = PortFill::BareAdapter;
    let plugged = |sheet: &mut Sheet| sheet.truth.ports[Port::Inlet].fill = PortFill::Snug;
    assert_eq!(out(Place::Yard, 30_000, as_is, as_is), 1);
    assert_eq!(out(Place::Away, 30_000, as_is, as_is), 1);
    assert_eq!(out(Place::Yard, 29_999, as_is, as_is), 0);
    assert_eq!(out(Place::PlantRoom, 30_000, as_is, as_is), 0);
    assert_eq!(out(Place::Yard, 30_000, adapter, as_is), 1);
    assert_eq!(out(Place::Yard, 30_000, plugged, as_is), 0);
    for closed in [shut, off] {
        assert_eq!(out(Place::Yard, 30_000, closed, as_is), 0);
        assert_eq!(out(Place::Yard, 30_000, as_is, closed), 0);
    }
    // From the yard away is one absence; handed over out there, it ends so.
    let mut sheet = Sheet::new();
    sheet.truth.ports[Port::Inlet].fill = PortFill::Hose(Push::Fully);
    sheet.did(Action::Go(Place::Yard)).pass(20_000);
    sheet.did(Action::Go(Place::Away)).pass(10_000).handed_over(Ending::InService);
    assert_eq!(sheet.times("left-unattended"), 1);
}

/// Zeroed under more than 0.05 in. w.c., by more than half a digit, either way: caught where nothing was
/// written or turned before it was zeroed again.
#[test]
fn the_zero_is_set_without_pressure() {
    let zeroed = |inwc: f64, again: bool, used: fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        sheet.push(EventKind::Zeroed { applied_pa: inwc * PA_PER_INWC }).later();
        if again {
            sheet.push(EventKind::Zeroed { applied_pa: 0.0 }).later();
        }
        used(&mut sheet);
        sheet.severity("zeroed-under-pressure")
    };
    let wrote = |sheet: &mut Sheet| {
        sheet.did(Action::PutDown).write(Port::Inlet, HIGH, 6.6);
    };
    let turned = |sheet: &mut Sheet| {
        sheet.turn(Screw::High, 1, Some(Level::High), Some(Port::Manifold), 3.1);
    };
    let nothing = |sheet: &mut Sheet| {
        sheet.did(Action::PutDown);
    };
    assert_eq!(zeroed(0.0547, false, wrote), None);
    assert_eq!(zeroed(-0.0547, false, wrote), None);
    for inwc in [0.0553, -0.0553, 1.0] {
        assert_eq!(zeroed(inwc, false, wrote), Some(Severity::Major), "{inwc}");
        assert_eq!(zeroed(inwc, false, turned), Some(Severity::Major), "{inwc}");
        assert_eq!(zeroed(inwc, false, nothing), Some(Severity::Minor), "{inwc}");
        assert_eq!(zeroed(inwc, true, wrote), Some(Severity::Minor), "{inwc}");
    }
}

/// A meter that is off by 0.05 in. w.c. is good enough; by more it is not, and the side is told.
#[test]
fn a_meter_may_be_off_by_a_twentieth() {
    let off = |error: f64| {
        let mut sheet = Sheet::new();
        let shown = 3.5 + error;
        let error_pa = error * PA_PER_INWC;
        let off = Spell { error_pa, ..spell(Port::Manifold, draw(HIGH), shown, shown) };
        sheet.showed(off, Some((shown, shown))).write(Port::Manifold, HIGH, shown);
        sheet.finding("meter-off").map(|it| it.truth)
    };
    assert_eq!(off(0.05), None);
    assert_eq!(off(-0.05), None);
    let (high, low) = (off(0.06).unwrap(), off(-0.06).unwrap());
    assert!(high.contains("high") && low.contains("low"), "{high} {low}");
}

/// The dial is the furnace's alone with less than 0.2 ft³/h to others, from the last start of the watch on.
#[test]
fn the_dial_is_the_furnaces_alone() {
    let timed = |flows: &[(Option<Action>, f64)]| {
        let mut sheet = Sheet::new();
        for (action, cfh) in flows {
            sheet.truth.others_flow_m3_s = cfh * M3_S_PER_CFH;
            sheet.did(action.clone().unwrap_or(Action::PutDown)).later();
        }
        sheet.times("rate-with-others")
    };
    let start = || Some(Action::Stopwatch(StartStop::Start));
    let stop = || Some(Action::Stopwatch(StartStop::Stop));
    let write = || Some(Action::WriteMeasured(Spot::MeterDial));
    assert_eq!(timed(&[(start(), 0.19), (write(), 0.19)]), 0);
    assert_eq!(timed(&[(start(), 0.21), (write(), 0.0)]), 1);
    assert_eq!(timed(&[(start(), 0.0), (None, 0.21), (stop(), 0.0), (write(), 0.0)]), 1);
    assert_eq!(timed(&[(None, 5.0), (start(), 0.0), (write(), 0.0), (None, 5.0)]), 0);
    assert_eq!(timed(&[(start(), 5.0), (stop(), 5.0), (start(), 0.0), (write(), 0.0)]), 0);
    assert_eq!(timed(&[(write(), 0.21)]), 1);
    assert_eq!(timed(&[(start(), 5.0), (stop(), 5.0)]), 0);
}

/// A rise with a door off, or through a blocked filter that nobody had looked at or renewed before, says
/// nothing; with nothing burning it is no rise.
#[test]
fn a_rise_is_read_undisturbed() {
    let blocked = |faults: &[Fault]| {
        let mut setup = rig::healthy(Fuel::Natural);
        for fault in faults {
            fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
        }
        Sheet::of(setup)
    };
    let written = |mut sheet: Sheet, firing: Option<Level>| {
        sheet.truth.firing = firing;
        sheet.did(Action::WriteMeasured(Spot::SupplyAir)).later();
        sheet
    };
    let times = |sheet: &Sheet| sheet.times("rise-disturbed");
    let mended = |repair| EventKind::Mended { repair, outcome: Outcome::Changed, plate: None };
    let filter = [Fault::HighStageSetLow, Fault::BlockedFilter];
    assert_eq!(times(&written(blocked(&[Fault::HighStageSetLow]), LIT)), 0);
    assert_eq!(times(&written(blocked(&filter), LIT)), 1);
    assert_eq!(times(&written(blocked(&filter), None)), 0);
    let look = |subject| Action::Look(subject);
    let mut other = blocked(&filter);
    other.did(look(Subject::Plate)).push(mended(Repair::ReplaceGasValve)).later();
    assert_eq!(times(&written(other, LIT)), 1);
    let mut looked = blocked(&filter);
    looked.did(look(Subject::Filter)).did(look(Subject::Plate)).later();
    assert_eq!(times(&written(looked, LIT)), 0);
    let mut renewed = blocked(&filter);
    renewed.push(mended(Repair::ReplaceFilter)).push(mended(Repair::ReplaceGasValve)).later();
    assert_eq!(times(&written(renewed, LIT)), 0);
    let mut late = written(blocked(&filter), LIT);
    late.did(look(Subject::Filter)).push(mended(Repair::ReplaceFilter));
    assert_eq!(times(&late), 1);
    for door in [Door::Blower, Door::Burner] {
        let mut sheet = Sheet::new();
        sheet.truth.doors[door] = Fitted::Off;
        sheet.truth.doors[if door == Door::Blower { Door::Burner } else { Door::Blower }] =
            Fitted::On;
        assert_eq!(times(&written(sheet, LIT)), 1, "{door:?}");
    }
}

/// A rise is read after five minutes on its level; written too early it was caught where it was written
/// again in time on the same level. As the rule costs little, it is judged here as one that costs more.
#[test]
fn a_rise_takes_five_minutes() {
    let mut book = shared().unwrap();
    book.rules.iter_mut().find(|it| it.id == "rise-too-early").unwrap().harm = Harm::Unproven;
    let severity = |steps: &[(u64, Option<Level>)]| {
        let mut sheet = Sheet::new();
        let mut burns = None;
        for &(after, level) in steps {
            if level != burns {
                sheet.push(EventKind::Fired { from: burns, to: level });
                burns = level;
            }
            sheet.pass(after);
            let figures = vec![Figure::new(Quantity::Temperature, 120.0)];
            for spot in [Spot::SupplyAir, Spot::ReturnAir] {
                let written = WrittenMeasured { spot, tick: 0, figures: figures.clone() };
                sheet.push(EventKind::WroteMeasured { written, firing: level });
            }
        }
        let marks = sheet.marks_by(&book, &[Ending::InService]);
        let found = marks.findings.into_iter().find(|it| it.rule == "rise-too-early");
        found.map(|it| (it.times, it.severity))
    };
    let (low, high) = (Some(Level::Low), Some(Level::High));
    assert_eq!(severity(&[(15_000, low)]), None);
    assert_eq!(severity(&[(14_999, low)]), Some((1, Severity::Major)));
    assert_eq!(severity(&[(14_999, low), (1, low)]), Some((1, Severity::Minor)));
    assert_eq!(severity(&[(10_000, low), (4_000, low)]), Some((2, Severity::Major)));
    assert_eq!(severity(&[(10_000, low), (15_000, high)]), Some((1, Severity::Major)));
    assert_eq!(severity(&[(15_000, low), (10_000, high)]), Some((1, Severity::Major)));
    assert_eq!(severity(&[(10_000, None)]), None);
    // What was in time before does not make up for what is too early after.
    let again = [(15_000, low), (10_000, None), (10_000, low)];
    assert_eq!(severity(&again), Some((1, Severity::Major)));
}

/// Numbers that stand on the sheet, and none of them as found: told once, whatever else is written.
#[test]
fn something_is_written_as_found() {
    for (found, left, counts) in [(false, false, 0), (false, true, 1), (true, true, 0)] {
        let mut sheet = Sheet::new();
        sheet.stood(Port::Inlet, REST, 7.5);
        for (phase, is) in [(Phase::Left, left), (Phase::Found, found), (Phase::Left, left)] {
            if is {
                sheet.write_in(Port::Inlet, REST, phase, (7.5, PressureUnit::InWc));
            }
        }
        assert_eq!(sheet.times("nothing-as-found"), counts, "{found} {left}");
    }
}
