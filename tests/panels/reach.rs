//! Every action of the bench can be reached from a list or a form.

use enum_map::EnumMap;
use std::collections::BTreeSet;
use std::sync::LazyLock;

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep, StartStop};
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::instrument::water_column::Legs;
use quarterturn::panels::actions::{Form, choices, forms, here, in_hand};
use quarterturn::panels::sheet::rows;
use quarterturn::parts::{
    Door, Fitted, Gauge, HandValve, Joint, Levels, LowSide, OnOff, Opening, OtherAppliance, Place,
    Port, PortFill, Push, Screw, Spot, Subject, Tool, Window, job_order,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::senses::seen::{
    Burning, FluidSeen, GaugeSeen, Measured, OtherApplianceSeen, Seen,
};

use crate::fixture::{meter, seen, seen_open};

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
        Action::WritePiping(_) => "write-piping",
        Action::WriteFinding(_) => "write-finding",
        Action::StrikeFinding(_) => "strike-finding",
        Action::Tag(_) => "tag",
        Action::Call(_) => "call",
        Action::Tell(_) => "tell",
        Action::HandOver(_) => "hand-over",
    }
}

const KINDS: usize = 44;

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
    meter(&mut seen).low_side = LowSide::BurnerBox;
    meter(&mut seen).gauge = GaugeSeen::WaterColumn(Legs::Empty);
    seen.clipped = Fitted::On;
    seen.measured = Some(Measured {
        spot: Spot::FlameRod,
        figures: vec![Figure::new(Quantity::FlameCurrent, 2.3)],
    });
    meter(&mut seen).display = quarterturn::senses::seen::Display::OverRange;
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
        yard.fluid = EnumMap::from_fn(|_| FluidSeen::Quiet(3.0));
    }
    seen
}

fn parts_at(seen: &Seen) -> Vec<&'static str> {
    let at_hand = Tool::ALL.iter().map(|tool| tool.id());
    let meter = ["meter", "meter-power", "meter-zero", "meter-unit", "meter-minus"];
    job_order(seen.place).iter().copied().chain(at_hand).chain(meter).chain(["job-sheet"]).collect()
}

/// Everything that the lists offer anywhere.
static OFFERED: LazyLock<Vec<Action>> = LazyLock::new(|| {
    let mut all = Vec::new();
    for seen in situations() {
        let lists = parts_at(&seen).into_iter().map(|part| choices(part, &seen));
        for choice in lists.chain([here(&seen), in_hand(&seen)]).flatten() {
            assert!(
                choice.label.chars().count() > 5,
                "{:?} says only {:?}",
                choice.action,
                choice.label
            );
            all.push(choice.action);
        }
    }
    all
});

#[track_caller]
fn is_offered(wanted: &Action) {
    assert!(OFFERED.contains(wanted), "no list offers {wanted:?}");
}

/// Every kind of action is in a list, but for those that are forms: writing a reading, writing and
/// striking a finding, and handing over.
#[test]
fn every_kind_of_action_can_be_reached() {
    let mut kinds: BTreeSet<&str> = OFFERED.iter().map(kind).collect();
    let forms_at = |part: &str| forms(part, &seen(Place::Hall));
    assert_eq!(forms_at("job-sheet"), [Form::Write, Form::Finding]);
    assert_eq!(forms_at("householder"), [Form::HandOver]);
    kinds.extend(["write", "write-finding", "strike-finding", "hand-over"]);
    assert_eq!(kinds.len(), KINDS, "{kinds:?}");
}

/// And every value of the closed lists: every place, tool, instrument, part that is looked at, repair.
#[test]
fn everything_can_be_gone_to_taken_looked_at_and_mended() {
    Place::ALL.iter().for_each(|&place| is_offered(&Action::Go(place)));
    Tool::ALL.iter().for_each(|&tool| is_offered(&Action::Take(tool)));
    Spot::ALL.iter().for_each(|&spot| is_offered(&Action::Measure(spot)));
    Gauge::ALL.iter().for_each(|&gauge| is_offered(&Action::Gauge(gauge)));
    Subject::ALL.iter().for_each(|&subject| is_offered(&Action::Look(subject)));
    Repair::ALL.iter().for_each(|&repair| is_offered(&Action::Mend(repair)));
    for press in [StartStop::Start, StartStop::Stop] {
        is_offered(&Action::Stopwatch(press));
    }
}

/// Everything that opens, shuts or is switched, both ways.
#[test]
fn everything_can_be_opened_shut_and_switched() {
    for &hand_valve in HandValve::ALL {
        for degrees in [0, 90] {
            is_offered(&Action::HandValve { hand_valve, degrees });
        }
    }
    for &window in Window::ALL {
        for to in [Opening::Open, Opening::Closed] {
            is_offered(&Action::Window { window, to });
        }
    }
    for to in [Fitted::On, Fitted::Off] {
        Door::ALL.iter().for_each(|&door| is_offered(&Action::Door { door, to }));
        is_offered(&Action::StageJumper(to));
        is_offered(&Action::Tag(to));
    }
    for to in [OnOff::On, OnOff::Off] {
        for &appliance in OtherAppliance::ALL {
            is_offered(&Action::OtherAppliance { appliance, to });
        }
        is_offered(&Action::MeterPower(to));
        is_offered(&Action::FurnaceSwitch(to));
        is_offered(&Action::ThermostatMode(to));
        is_offered(&Action::ValveSwitch(to));
    }
}

/// Every step at a screw's cap, a port, the hose and a joint.
#[test]
fn every_step_at_the_valve_can_be_reached() {
    for to in [Fitted::On, Fitted::Off] {
        Screw::ALL.iter().for_each(|&screw| is_offered(&Action::Cap { screw, to }));
        Port::ALL.iter().for_each(|&port| is_offered(&Action::Adapter { port, to }));
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
            is_offered(&Action::Plug { port, step });
        }
        for push in [Push::Fully, Push::Halfway] {
            is_offered(&Action::HoseOn { port, push });
        }
    }
    for &joint in Joint::ALL {
        is_offered(&Action::LeakFluid(joint));
        is_offered(&Action::Wipe(joint));
    }
    for side in [LowSide::Air, LowSide::BurnerBox] {
        is_offered(&Action::MeterLowSide(side));
    }
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
    assert_eq!(rows(Levels::two((), ()).list()).count(), 8);
    assert_eq!(rows(Levels::one(()).list()).count(), 6);
}
