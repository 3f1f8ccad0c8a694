//! Every action of the bench can be reached from a list or a form.

use enum_map::EnumMap;
use std::collections::BTreeSet;

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep, StartStop};
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::instrument::water_column::Legs;
use quarterturn::panels::sheet::rows;
use quarterturn::panels::ways::{Form, forms, here, in_hand, ways};
use quarterturn::parts::{
    Door, Fitted, Gauge, HandValve, Joint, Levels, LowSide, OnOff, Opening, OtherAppliance, Place,
    Port, PortFill, Push, Screw, Spot, Subject, Tool, Window, job_order,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::senses::seen::{
    Burning, FluidSeen, GaugeSeen, Measured, OtherApplianceSeen, Seen,
};

use crate::fixture::{seen, seen_open};

/// The kind of an action; a new one does not compile until it is listed here.
fn kind(action: &Action) -> &'static str {
    match action {
        Action::Go(_) => "go",
        Action::Look(_) => "look",
        Action::Sniff(_) => "sniff",
        Action::Probe(_) => "probe",
        Action::Take(_) => "take",
        Action::PutDown => "put-down",
        Action::Window { .. } => "window",
        Action::Door { .. } => "door",
        Action::FurnaceSwitch(_) => "furnace-switch",
        Action::ThermostatMode(_) => "thermostat-mode",
        Action::Setpoint(_) => "setpoint",
        Action::StageJumper(_) => "stage-jumper",
        Action::ValveSwitch(_) => "valve-switch",
        Action::HandValve { .. } => "cock",
        Action::OtherAppliance { .. } => "neighbor",
        Action::Cap { .. } => "cap",
        Action::Turn { .. } => "turn",
        Action::Plug { .. } => "plug",
        Action::Adapter { .. } => "adapter",
        Action::HoseOn { .. } => "hose-on",
        Action::HoseOff => "hose-off",
        Action::MeterPower(_) => "meter-power",
        Action::MeterZero => "meter-zero",
        Action::MeterUnit(_) => "meter-unit",
        Action::MeterLowSide(_) => "meter-low-side",
        Action::LeakFluid(_) => "leak-fluid",
        Action::Wipe(_) => "wipe",
        Action::ResetRollout => "reset-rollout",
        Action::Mend(_) => "mend",
        Action::Measure(_) => "measure",
        Action::Unclip => "unclip",
        Action::Stopwatch(_) => "stopwatch",
        Action::WriteMeasured(_) => "write-measured",
        Action::Gauge(_) => "gauge",
        Action::FillColumn => "fill-column",
        Action::Write(_) => "write",
        Action::WriteJoint { .. } => "write-joint",
        Action::WriteFinding(_) => "write-finding",
        Action::StrikeFinding(_) => "strike-finding",
        Action::Tag(_) => "tag",
        Action::Call(_) => "call",
        Action::Tell(_) => "tell",
        Action::HandOver(_) => "hand-over",
    }
}

const KINDS: usize = 43;

/// Situations that between them show every state of everything.
fn situations() -> Vec<Seen> {
    let fills = [
        PortFill::Snug,
        PortFill::HandTight,
        PortFill::Started,
        PortFill::Leaning,
        PortFill::Open,
        PortFill::BareAdapter,
        PortFill::Hose(Push::Fully),
        PortFill::Hose(Push::Halfway),
    ];
    let mut all: Vec<Seen> = Place::ALL.iter().map(|&place| seen(place)).collect();
    all.extend(fills.map(seen_open));
    let mut standing = seen_open(PortFill::Snug);
    standing.place = Place::PlantRoom;
    all.push(standing);
    // The same with everything the other way round.
    let flipped: Vec<Seen> = all.iter().cloned().map(flipped).collect();
    all.extend(flipped);
    let held = all.clone();
    for &tool in Tool::ALL {
        all.extend(held.iter().cloned().map(|mut seen| {
            seen.hand = Some(tool);
            seen
        }));
    }
    all
}

fn flipped(mut seen: Seen) -> Seen {
    seen.meter.low_side = LowSide::BurnerBox;
    seen.gauge = GaugeSeen::WaterColumn(Legs::Empty);
    seen.clipped = Fitted::On;
    seen.measured = Some(Measured {
        spot: Spot::FlameRod,
        figures: vec![Figure::new(Quantity::FlameCurrent, 2.3)],
    });
    seen.meter.display = quarterturn::senses::seen::Display::OverRange;
    if let Some(furnace) = seen.furnace.as_mut() {
        furnace.blower_door = Fitted::Off;
        furnace.switch = OnOff::Off;
        furnace.manual_valve = HandleAngle::SHUT;
        furnace.water_heater =
            OtherApplianceSeen { handle: HandleAngle::SHUT, burning: Burning::Off };
        furnace.window = Opening::Open;
        furnace.stage_jumper = Fitted::On;
        furnace.tag = Fitted::On;
        if let Some(burners) = furnace.burners.as_mut() {
            burners.valve_switch = OnOff::Off;
            burners.caps = Levels::two(Fitted::Off, Fitted::Off);
            burners.screw_eighths = Levels::two(Some(0), Some(0));
            burners.fluid = EnumMap::from_fn(|_| FluidSeen::Quiet(3.0));
        }
    }
    if let Some(hall) = seen.hall.as_mut() {
        hall.mode = OnOff::Off;
        hall.window = Opening::Open;
        hall.range = OtherApplianceSeen { handle: HandleAngle::SHUT, burning: Burning::Burning };
    }
    if let Some(yard) = seen.yard.as_mut() {
        yard.supply_valve = HandleAngle::SHUT;
        yard.cap = Fitted::Off;
        yard.screw_eighths = Some(3);
    }
    seen
}

fn parts_at(seen: &Seen) -> Vec<&'static str> {
    let at_hand = Tool::ALL.iter().map(|tool| tool.id());
    let meter = ["meter", "meter-power", "meter-zero", "meter-unit", "meter-minus"];
    job_order(seen.place).iter().copied().chain(at_hand).chain(meter).chain(["job-sheet"]).collect()
}

/// Everything that the lists offer anywhere.
fn offered() -> Vec<Action> {
    let mut all = Vec::new();
    for seen in situations() {
        let lists = parts_at(&seen).into_iter().map(|part| ways(part, &seen));
        for way in lists.chain([here(&seen), in_hand(&seen)]).flatten() {
            assert!(way.label.chars().count() > 5, "{:?} says only {:?}", way.action, way.label);
            all.push(way.action);
        }
    }
    all
}

/// Every kind of action is in a list, but for those that are forms: writing a reading, writing and
/// striking a finding, and handing over.
#[test]
fn every_kind_of_action_can_be_reached() {
    let mut kinds: BTreeSet<&str> = offered().iter().map(kind).collect();
    let forms_at = |part: &str| forms(part, &seen(Place::Hall));
    assert_eq!(forms_at("job-sheet"), [Form::Write, Form::Finding]);
    assert_eq!(forms_at("householder"), [Form::HandOver]);
    kinds.extend(["write", "write-finding", "strike-finding", "hand-over"]);
    assert_eq!(kinds.len(), KINDS, "{kinds:?}");
}

/// And every value of the closed lists: every tool, hand valve, door, joint, port, step and so on.
#[test]
fn every_thing_can_be_reached() {
    let all = offered();
    let has = |wanted: &Action| assert!(all.contains(wanted), "no list offers {wanted:?}");
    for &tool in Tool::ALL {
        has(&Action::Take(tool));
    }
    for &place in Place::ALL {
        has(&Action::Go(place));
    }
    for &spot in Spot::ALL {
        has(&Action::Measure(spot));
    }
    for gauge in Gauge::ALL {
        has(&Action::Gauge(gauge));
    }
    for press in [StartStop::Start, StartStop::Stop] {
        has(&Action::Stopwatch(press));
    }
    for &subject in Subject::ALL {
        has(&Action::Look(subject));
    }
    for &repair in Repair::ALL {
        has(&Action::Mend(repair));
    }
    for &hand_valve in HandValve::ALL {
        has(&Action::HandValve { hand_valve, degrees: 0 });
        has(&Action::HandValve { hand_valve, degrees: 90 });
    }
    for to in [Fitted::On, Fitted::Off] {
        for &door in Door::ALL {
            has(&Action::Door { door, to });
        }
        for &screw in Screw::ALL {
            has(&Action::Cap { screw, to });
        }
        for &port in Port::ALL {
            has(&Action::Adapter { port, to });
        }
        has(&Action::StageJumper(to));
        has(&Action::Tag(to));
    }
    for &window in Window::ALL {
        has(&Action::Window { window, to: Opening::Open });
        has(&Action::Window { window, to: Opening::Closed });
    }
    for to in [OnOff::On, OnOff::Off] {
        for &appliance in OtherAppliance::ALL {
            has(&Action::OtherAppliance { appliance, to });
        }
        has(&Action::MeterPower(to));
        has(&Action::FurnaceSwitch(to));
        has(&Action::ThermostatMode(to));
        has(&Action::ValveSwitch(to));
    }
    for &joint in Joint::ALL {
        has(&Action::LeakFluid(joint));
        has(&Action::Wipe(joint));
    }
    for &port in Port::ALL {
        for step in [
            PlugStep::BreakLoose,
            PlugStep::SpinOut,
            PlugStep::StartByHand,
            PlugStep::StartByKey,
            PlugStep::SpinIn,
            PlugStep::Tighten(1),
        ] {
            has(&Action::Plug { port, step });
        }
        for push in [Push::Fully, Push::Halfway] {
            has(&Action::HoseOn { port, push });
        }
    }
    has(&Action::MeterLowSide(LowSide::Air));
    has(&Action::MeterLowSide(LowSide::BurnerBox));
}

/// Screws, hand valves, plugs and the thermostat take a number.
#[test]
fn numbers_have_forms() {
    let open = seen_open(PortFill::Snug);
    assert_eq!(forms("low-screw", &open), [Form::Turn(Screw::Low)]);
    assert_eq!(forms("high-cap@off", &open), [Form::Turn(Screw::High)]);
    assert_eq!(forms("manual-valve", &open), [Form::HandValve(HandValve::Furnace)]);
    assert_eq!(forms("inlet-port", &open), [Form::Tighten(Port::Inlet)]);
    assert_eq!(forms("thermostat", &seen(Place::Hall)), [Form::Setpoint]);
    // Inlet and manifold in every state under test; at rest the manifold has nothing to read.
    assert_eq!(rows(Levels::two((), ()).list()).count(), 7);
    assert_eq!(rows(Levels::one(()).list()).count(), 5);
}
