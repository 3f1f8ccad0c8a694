//! Ports and joints as they are left, and checks of them: at which pressure, by whom, with what gas there
//! is. The rig's regulator is set to 7.0 in. w.c., and locks up at 7.6.

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::parts::{
    Ending, Fitted, Joint, JointVerdict, Level, LowSide, Place, Port, PortFill, Push,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::units::PA_PER_INWC;

use super::sheet::Sheet;

const INLET: Joint = Joint::InletPort;
const MANIFOLD: Joint = Joint::ManifoldPort;

/// Fluid on a joint for fifteen seconds, without bubbles.
fn fluid(joint: Joint, lowest_pa: f64, firing: Option<Level>, valve: HandleAngle) -> EventKind {
    EventKind::FluidJudged {
        joint,
        lowest_pa,
        dwell_s: 15.0,
        firing,
        bubbles: false,
        manual_valve: valve,
    }
}

fn tightened(port: Port) -> Sheet {
    let mut sheet = Sheet::new();
    sheet.did(Action::Plug { port, step: PlugStep::Tighten(6) }).later();
    sheet
}

/// How often a joint counts as unchecked, and as checked wrongly.
fn joint(sheet: &mut Sheet, ending: Ending) -> [usize; 2] {
    if ending == Ending::ShutOff {
        sheet.truth.manual_valve = HandleAngle::SHUT;
        sheet.truth.tag = Fitted::On;
    }
    sheet.handed_over(ending);
    ["joint-unchecked", "joint-checked-wrongly"].map(|it| sheet.times(it))
}

/// A port without a plug, with an adapter, with a hose, with a plug that leaks; a plug across its thread
/// and a cracked boss have rules of their own. The manometer's low side left on the burner box is an
/// adapter left.
#[test]
fn a_port_is_left_with_its_plug_tight() {
    let left = |fill: PortFill, leak_m2: f64, crossed: bool, cracked: bool| {
        let mut sheet = Sheet::new();
        for port in [Port::Inlet, Port::Manifold] {
            let there = &mut sheet.truth.ports[port];
            (there.fill, there.leak_area_m2) = (fill, leak_m2);
            (there.cross_threaded, there.cracked) = (crossed, cracked);
        }
        sheet.handed_over(Ending::InService);
        ["port-left-open", "adapter-left", "plug-loose"].map(|it| sheet.times(it))
    };
    assert_eq!(left(PortFill::Snug, 0.0, false, false), [0, 0, 0]);
    assert_eq!(left(PortFill::Open, 1e-5, false, false), [2, 0, 0]);
    assert_eq!(left(PortFill::BareAdapter, 1e-5, false, false), [0, 2, 0]);
    assert_eq!(left(PortFill::Hose(Push::Fully), 0.0, false, false), [0, 2, 0]);
    for fill in [PortFill::Snug, PortFill::HandTight, PortFill::Started] {
        assert_eq!(left(fill, 1e-10, false, false), [0, 0, 2], "{fill:?}");
        assert_eq!(left(fill, 1e-7, true, false)[2], 0, "{fill:?}");
        assert_eq!(left(fill, 1e-7, false, true)[2], 0, "{fill:?}");
    }
    let mut low_side = Sheet::new();
    low_side.truth.low_side = LowSide::BurnerBox;
    low_side.handed_over(Ending::InService);
    assert_eq!(low_side.times("adapter-left"), 1);
    // A job that was not handed over has left nothing.
    let mut stopped = Sheet::new();
    stopped.truth.ports[Port::Inlet].fill = PortFill::Open;
    stopped.push(EventKind::Ended { hand_over: None, left: Box::new(stopped.truth.clone()) });
    assert_eq!(stopped.times("port-left-open"), 0);
}

/// How far a loose plug is past hand-tight is told in turns.
#[test]
fn a_loose_plug_is_told_in_turns() {
    let mut sheet = Sheet::new();
    sheet.truth.ports[Port::Inlet].leak_area_m2 = 1e-7;
    sheet.truth.ports[Port::Inlet].past_hand_turns = 0.125;
    let seen = sheet.handed_over(Ending::InService).finding("plug-loose").unwrap().seen;
    assert!(seen.contains("0.13") || seen.contains("0.12"), "{seen}");
    assert!(!seen.contains("0.125"), "{seen}");
}

/// The inlet joint is checked with the valve open at four fifths of the working pressure at least: of what
/// the spring says as found or as set, whichever is less, and of what a weak supply gives.
#[test]
fn a_joint_is_checked_at_its_working_pressure() {
    let four_fifths = 0.8 * 7.0 * PA_PER_INWC;
    let checked = |pressure: f64, valve: HandleAngle, change: fn(&mut Sheet)| {
        let mut sheet = tightened(Port::Inlet);
        change(&mut sheet);
        sheet.push(fluid(INLET, pressure, None, valve));
        joint(&mut sheet, Ending::InService)
    };
    let as_is = |_: &mut Sheet| {};
    let open = HandleAngle::OPEN;
    assert_eq!(checked(0.8 * (7.0 * PA_PER_INWC), open, as_is), [0, 0]);
    assert_eq!(checked(four_fifths - 10.0, open, as_is), [0, 1]);
    assert_eq!(checked(four_fifths + 10.0, HandleAngle::SHUT, as_is), [0, 1]);
    let set_low = |sheet: &mut Sheet| sheet.truth.supply_set_pa = 6.0 * PA_PER_INWC;
    assert_eq!(checked(4.9 * PA_PER_INWC, open, set_low), [0, 0]);
    let set_high = |sheet: &mut Sheet| sheet.truth.supply_set_pa = 9.0 * PA_PER_INWC;
    assert_eq!(checked(5.7 * PA_PER_INWC, open, set_high), [0, 0]);
    let weak = |sheet: &mut Sheet| sheet.truth.supply_pa = 5.0 * PA_PER_INWC;
    assert_eq!(checked(4.1 * PA_PER_INWC, open, weak), [0, 0]);
    // What stands behind a shut supply valve is not what the supply gives.
    let shut = |sheet: &mut Sheet| {
        sheet.truth.supply_pa = 5.0 * PA_PER_INWC;
        sheet.truth.supply_valve = HandleAngle::SHUT;
    };
    assert_eq!(checked(4.1 * PA_PER_INWC, open, shut), [0, 1]);
}

/// The manifold joint is checked while the full rate burns; shut off it need not be lit for it. The inlet
/// joint is checked all the same.
#[test]
fn the_manifold_joint_is_checked_at_the_full_rate() {
    let checked = |firing: Option<Level>| {
        let mut sheet = tightened(Port::Manifold);
        sheet.push(fluid(MANIFOLD, 3.5 * PA_PER_INWC, firing, HandleAngle::OPEN));
        joint(&mut sheet, Ending::InService)
    };
    assert_eq!(checked(Some(Level::High)), [0, 0]);
    assert_eq!(checked(Some(Level::Low)), [0, 1]);
    assert_eq!(checked(None), [0, 1]);
    assert_eq!(joint(&mut tightened(Port::Manifold), Ending::InService), [1, 0]);
    assert_eq!(joint(&mut tightened(Port::Manifold), Ending::ShutOff), [0, 0]);
    assert_eq!(joint(&mut tightened(Port::Inlet), Ending::ShutOff), [1, 0]);
}

/// What was wrong with a check is told: too brief, or not at the pressure of the line.
#[test]
fn a_wrong_check_is_told_by_what_it_lacks() {
    let told = |dwell: f64, pressure: f64| {
        let mut sheet = tightened(Port::Inlet);
        let mut what = fluid(INLET, pressure * PA_PER_INWC, None, HandleAngle::OPEN);
        if let EventKind::FluidJudged { dwell_s, .. } = &mut what {
            *dwell_s = dwell;
        }
        sheet.push(what).handed_over(Ending::InService);
        sheet.finding("joint-checked-wrongly").unwrap().truth
    };
    let (brief, weak) = (told(5.0, 7.0), told(15.0, 3.0));
    assert!(brief.contains("10 s") && !weak.contains("10 s"), "{brief} {weak}");
}

/// A repair that opens a joint asks for its check; after it the checks before do not count.
#[test]
fn a_repair_disturbs_its_joint() {
    let mended = || {
        let mut sheet = tightened(Port::Inlet);
        sheet.push(fluid(INLET, 7.0 * PA_PER_INWC, None, HandleAngle::OPEN)).later();
        let (repair, outcome) = (Repair::ReplaceConnector, Outcome::Changed);
        sheet.push(EventKind::Mended { repair, outcome, plate: None }).later();
        sheet
    };
    let &[disturbed] = Repair::ReplaceConnector.disturbs() else { panic!("one joint") };
    assert_ne!(disturbed, INLET);
    assert_eq!(joint(&mut mended(), Ending::InService), [1, 0]);
    let mut checked = mended();
    checked.push(fluid(disturbed, 7.0 * PA_PER_INWC, None, HandleAngle::OPEN));
    assert_eq!(joint(&mut checked, Ending::InService), [0, 0]);
}

/// With gas in the air, whoever shuts everything off checks nothing more; with the supply left open, or
/// left in use, or with the work done before the alarm, it is checked.
#[test]
fn after_an_alarm_nothing_is_checked() {
    let left = |alarm_first: bool, supply: HandleAngle, ending: Ending| {
        let mut sheet = Sheet::new();
        if alarm_first {
            sheet.push(EventKind::Alarm);
        }
        sheet.did(Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(6) }).later();
        if !alarm_first {
            sheet.push(EventKind::Alarm);
        }
        sheet.truth.supply_valve = supply;
        joint(&mut sheet, ending)
    };
    assert_eq!(left(true, HandleAngle::SHUT, Ending::ShutOff), [0, 0]);
    assert_eq!(left(false, HandleAngle::SHUT, Ending::ShutOff), [1, 0]);
    assert_eq!(left(true, HandleAngle::OPEN, Ending::ShutOff), [1, 0]);
    assert_eq!(left(true, HandleAngle::SHUT, Ending::InService), [1, 0]);
}

/// With less than an inch of water left in the supply there is nothing to check with: fluid that was put
/// on is enough where it is left shut off.
#[test]
fn an_empty_supply_checks_nothing() {
    let left = |supply: f64, fluid_on: bool, ending: Ending| {
        let mut sheet = tightened(Port::Inlet);
        sheet.truth.supply_pa = supply * PA_PER_INWC;
        sheet.truth.supply_valve = HandleAngle::SHUT;
        if fluid_on {
            sheet.push(fluid(INLET, supply * PA_PER_INWC, None, HandleAngle::OPEN));
        }
        joint(&mut sheet, ending)
    };
    assert_eq!(left(0.95, true, Ending::ShutOff), [0, 0]);
    assert_eq!(left(1.05, true, Ending::ShutOff), [0, 1]);
    assert_eq!(left(1.0, true, Ending::ShutOff), [0, 1]);
    assert_eq!(left(0.95, false, Ending::ShutOff), [1, 0]);
    assert_eq!(left(0.95, true, Ending::InService), [0, 1]);
    let mut sheet = tightened(Port::Inlet);
    sheet.push(fluid(INLET, 0.5 * PA_PER_INWC, None, HandleAngle::OPEN));
    assert_eq!(joint(&mut sheet, Ending::ShutOff), [0, 1]);
}

/// Fluid that was judged before it was put on once more is not judged; a job that was not handed over owes
/// nothing.
#[test]
fn the_last_fluid_is_judged() {
    let written = Action::WriteJoint { joint: INLET, verdict: JointVerdict::Tight };
    let mut sheet = tightened(Port::Inlet);
    sheet.did(Action::LeakFluid(INLET)).later().did(written).later();
    sheet.did(Action::LeakFluid(INLET)).later();
    let mut stopped = Sheet::new();
    stopped.setup = sheet.setup.clone();
    stopped.events = sheet.events.clone();
    stopped.push(EventKind::Ended { hand_over: None, left: Box::new(stopped.truth.clone()) });
    assert_eq!(stopped.times("joint-not-judged"), 0);
    sheet.handed_over(Ending::InService);
    assert_eq!(sheet.times("joint-not-judged"), 1);
}

/// Bubbles speak for leaving it shut off where they were found; not at a joint that the same hand cracked,
/// crossed or left loose, and only at that joint.
#[test]
fn bubbles_speak_where_they_were_found() {
    let speaks = |at: Joint, worked: Option<Port>, change: fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        if let Some(port) = worked {
            sheet.did(Action::Plug { port, step: PlugStep::Tighten(2) }).later();
        }
        change(&mut sheet);
        sheet.push(EventKind::FluidJudged {
            joint: at,
            lowest_pa: 7.0 * PA_PER_INWC,
            dwell_s: 15.0,
            firing: None,
            bubbles: true,
            manual_valve: HandleAngle::OPEN,
        });
        sheet.did(Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(1) });
        sheet.truth.manual_valve = HandleAngle::SHUT;
        sheet.truth.tag = Fitted::On;
        sheet.handed_over(Ending::ShutOff);
        let marks = sheet.marks_with(&[Ending::ShutOff]);
        !marks.findings.iter().any(|it| it.rule == "never-read-running")
    };
    let sound = |_: &mut Sheet| {};
    let loose = |sheet: &mut Sheet| sheet.truth.ports[Port::Inlet].leak_area_m2 = 1e-10;
    let crossed = |sheet: &mut Sheet| sheet.truth.ports[Port::Inlet].cross_threaded = true;
    let found_cracked = |sheet: &mut Sheet| {
        sheet.truth.ports[Port::Inlet].leak_area_m2 = 1e-7;
        sheet.truth.ports[Port::Inlet].cracked = true;
    };
    let cracks = |sheet: &mut Sheet| {
        sheet.push(EventKind::Cracked { port: Port::Inlet });
        sheet.truth.ports[Port::Inlet].cracked = true;
    };
    assert!(speaks(INLET, None, loose));
    assert!(speaks(INLET, Some(Port::Inlet), sound));
    assert!(speaks(INLET, Some(Port::Inlet), found_cracked));
    assert!(speaks(INLET, Some(Port::Manifold), loose));
    assert!(!speaks(INLET, Some(Port::Inlet), loose));
    assert!(!speaks(INLET, Some(Port::Inlet), crossed));
    assert!(!speaks(INLET, Some(Port::Inlet), cracks));
    assert!(speaks(Joint::Union, Some(Port::Inlet), loose));
}

/// A valve or a supply that is not quite open, and one that is shut, is one thing each: the house gets no
/// gas. Along the pipe is from 85° on.
#[test]
fn both_valves_are_left_open() {
    let left = |degrees: [i16; 2], ending: Ending| {
        let mut sheet = Sheet::new();
        let [furnace, supply] = degrees.map(|it| HandleAngle::from_deg(it).unwrap());
        (sheet.truth.manual_valve, sheet.truth.supply_valve) = (furnace, supply);
        sheet.truth.tag = Fitted::On;
        sheet.did(Action::Go(Place::Hall)).handed_over(ending);
        sheet.times("cock-not-open")
    };
    assert_eq!(left([90, 90], Ending::InService), 0);
    assert_eq!(left([85, 85], Ending::InService), 0);
    assert_eq!(left([84, 90], Ending::InService), 1);
    assert_eq!(left([90, 84], Ending::InService), 1);
    assert_eq!(left([0, 0], Ending::InService), 2);
    assert_eq!(left([0, 0], Ending::ShutOff), 0);
}
