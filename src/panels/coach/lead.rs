//! The step of a goal, with the words for it and the part that it is about.

use super::hint::Hint;
use super::memory::Remembered;
use crate::hands::action::{Action, PlugStep, StartStop};
use crate::parts::{
    Door, Fitted, HandValve, Height, Joint, JointVerdict, Level, OnOff, Opening, OtherAppliance,
    Place, Port, PortFill, Push, Tool, is_staged,
};
use crate::procedure::{Awaited, Goal, Step};
use crate::senses::seen::Seen;

/// The next step towards a goal in words; none once it is met.
pub(super) fn towards(goal: Goal, seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let (leaf, step) = goal.toward(seen, &remembered.job);
    match step {
        Step::Met => None,
        Step::Do(action) => {
            let text = doing(leaf, &action, seen);
            Some(Hint { part: part(&action), action: Some(action), ..Hint::say(text) })
        }
        Step::Wait(awaited) => {
            let (text, part) = waiting(awaited, seen);
            Some(Hint::wait(text, part))
        }
    }
}

/// The first of these goals that is not met.
pub(super) fn first(goals: &[Goal], seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    goals.iter().find_map(|&goal| towards(goal, seen, remembered))
}

/// The next step towards a goal, said in these words as long as it is done where one stands; on the
/// way there, in these words and those of the way.
pub(super) fn saying(text: &str, goal: Goal, seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let hint = towards(goal, seen, remembered)?;
    let there = hint.action.as_ref().is_some_and(|action| {
        matches!(action, Action::Look(_) | Action::Sniff(_) | Action::Tag(_) | Action::Tell(_))
    });
    let text = match there {
        true => text.to_owned(),
        false => t!("coach-because", why = text, step = hint.text),
    };
    Some(Hint { text, ..hint })
}

/// The words of an action that leads to a goal.
fn doing(leaf: Goal, action: &Action, seen: &Seen) -> String {
    let plain = match action {
        Action::Go(place) => going(leaf, *place, seen),
        Action::Take(tool) => return taking(*tool, seen),
        Action::PutDown => {
            let held = seen.hand.map_or("", Tool::label).to_lowercase();
            return t!("coach-put-down", tool = held);
        }
        Action::FurnaceSwitch(OnOff::Off) => t!("coach-power-off"),
        Action::FurnaceSwitch(OnOff::On) => t!("coach-power-on"),
        Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 } => t!("coach-valve-shut"),
        Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 } => t!("coach-supply-shut"),
        Action::HandValve { hand_valve: HandValve::Supply, .. } => t!("coach-supply-open"),
        Action::HandValve { .. } => t!("coach-valve-open"),
        Action::Door { door, to } => moving(*door, *to),
        Action::ValveSwitch(OnOff::Off) => t!("coach-switch-off"),
        Action::ValveSwitch(OnOff::On) => t!("coach-switch-on"),
        Action::StageJumper(Fitted::Off) => t!("coach-jumper-off"),
        Action::StageJumper(Fitted::On) => t!("coach-jumper-on"),
        Action::ThermostatMode(OnOff::Off) => t!("coach-heat-off"),
        Action::ThermostatMode(OnOff::On) => t!("coach-heat-on"),
        Action::Setpoint(to) => setting(leaf, *to, seen),
        Action::OtherAppliance { appliance, to } => return turning(leaf, *appliance, *to),
        Action::MeterPower(_) => t!("coach-meter-on"),
        Action::MeterUnit(_) => t!("coach-meter-unit"),
        Action::MeterZero => t!("coach-meter-zero"),
        Action::Plug { port, step } => return plugging(*port, *step, seen),
        Action::Adapter { port, to: Fitted::On } => {
            return t!("coach-adapter-in", port = port.label().to_lowercase());
        }
        Action::Adapter { to: Fitted::Off, .. } => t!("coach-adapter-out"),
        Action::HoseOn { push, .. } => pushing(*push, seen),
        Action::HoseOff => t!("coach-hose-off"),
        Action::LeakFluid(joint) => {
            return t!("coach-brush", joint = joint.label().to_lowercase());
        }
        Action::WriteJoint { joint, verdict } => return judging(*joint, *verdict),
        Action::WritePiping(JointVerdict::Tight) => t!("coach-piping-tight"),
        Action::WritePiping(JointVerdict::Leaking) => t!("coach-piping-leaking"),
        Action::Wipe(joint) => return t!("coach-wipe", joint = joint.label().to_lowercase()),
        Action::Window { to: Opening::Closed, .. } => t!("coach-window-close"),
        Action::Window { to: Opening::Open, .. } => t!("coach-window-open"),
        Action::Tag(_) => t!("coach-tag"),
        Action::Tell(_) => t!("coach-tell"),
        Action::Cap { .. } => t!("coach-cap-on"),
        Action::Measure(spot) => return t!("coach-measure", spot = spot.label().to_lowercase()),
        Action::Stopwatch(StartStop::Start) => t!("coach-watch-start"),
        Action::Stopwatch(StartStop::Stop) => t!("coach-watch-stop"),
        Action::WriteMeasured(_) => t!("coach-write-measured"),
        Action::Look(subject) => return t!("coach-look", subject = subject.label().to_lowercase()),
        Action::Sniff(_)
        | Action::Probe(_)
        | Action::Turn { .. }
        | Action::MeterLowSide(_)
        | Action::ResetRollout
        | Action::Mend(_)
        | Action::Unclip
        | Action::Gauge(_)
        | Action::FillColumn
        | Action::Write(_)
        | Action::WriteFinding(_)
        | Action::StrikeFinding(_)
        | Action::Call(_)
        | Action::HandOver(_) => t!("coach-next"),
    };
    plain.to_owned()
}

/// What the fluid on a joint told, written on the sheet.
fn judging(joint: Joint, verdict: JointVerdict) -> String {
    let joint = joint.label().to_lowercase();
    match verdict {
        JointVerdict::Tight => t!("coach-write-tight", joint = joint),
        JointVerdict::Leaking => t!("coach-write-leak", joint = joint),
    }
}

/// A furnace door off or on.
fn moving(door: Door, to: Fitted) -> &'static str {
    match (door, to) {
        (Door::Burner, Fitted::Off) => t!("coach-burner-door-off"),
        (Door::Burner, Fitted::On) => t!("coach-burner-door-on"),
        (Door::Blower, Fitted::Off) => t!("coach-blower-door-off"),
        (Door::Blower, Fitted::On) => t!("coach-blower-door-on"),
    }
}

/// The hose pushed fully on, or eased back to its first barb.
fn pushing(push: Push, seen: &Seen) -> &'static str {
    match push {
        Push::Fully if seen.hose().is_some() => t!("coach-hose-fully"),
        Push::Fully if has_taps(seen) => t!("coach-hose-on-tap"),
        Push::Fully => t!("coach-hose-on"),
        Push::Halfway => t!("coach-hose-ease"),
    }
}

/// Where to go, and what for.
fn going(leaf: Goal, place: Place, seen: &Seen) -> &'static str {
    match (place, leaf) {
        (Place::Hall, Goal::Called(level, _)) => ask_for_heat(level, seen),
        (Place::Hall, Goal::Other(OtherAppliance::Range, OnOff::On)) => t!("coach-hall-range-on"),
        (Place::Hall, Goal::Other(OtherAppliance::Range, OnOff::Off)) => t!("coach-hall-range-off"),
        (Place::Hall, Goal::Told(_)) => t!("coach-hall-tell"),
        (Place::Hall, Goal::ThermostatAsFound) => t!("coach-hall-restore"),
        (Place::Hall, _) => t!("coach-hall-heat-off"),
        (Place::PlantRoom, _) => t!("coach-go-furnace"),
        (Place::GasValve, _) => t!("coach-kneel"),
        (Place::Yard, _) => t!("coach-go-yard"),
        (Place::Away, _) => t!("coach-go-away"),
    }
}

/// To the hall, for the call that a level wants.
pub(super) fn ask_for_heat(level: Option<Level>, seen: &Seen) -> &'static str {
    match level {
        Some(level) if !level.is_first() => t!("coach-hall-high"),
        _ if !is_staged(seen.levels) => t!("coach-hall-only"),
        Some(_) | None => t!("coach-hall-low"),
    }
}

fn taking(tool: Tool, seen: &Seen) -> String {
    let why = match tool {
        Tool::HexKey => t!("coach-for-plugs"),
        Tool::SlottedDriver => t!("coach-for-caps"),
        Tool::Adapter => t!("coach-for-hose"),
        Tool::Hose if has_taps(seen) => t!("coach-for-tap"),
        Tool::Hose => t!("coach-for-adapter"),
        Tool::LeakFluid => t!("coach-for-joints"),
        Tool::GasDetector
        | Tool::Thermometer
        | Tool::FlueAnalyser
        | Tool::Microammeter
        | Tool::ElectricalMeter
        | Tool::Stopwatch => t!("coach-for-reading"),
    };
    t!("coach-take", tool = tool.label().to_lowercase(), why = why)
}

/// What the thermostat is set to, and what that calls.
fn setting(leaf: Goal, to_half_f: i16, seen: &Seen) -> &'static str {
    let above = seen.hall.as_ref().map_or(0, |hall| to_half_f.saturating_sub(hall.room_half_f));
    if leaf == Goal::ThermostatAsFound {
        t!("coach-set-as-found")
    } else if matches!(leaf, Goal::Called(Some(level), _) if !level.is_first()) {
        t!("coach-set-both")
    } else if above <= 0 {
        t!("coach-set-room")
    } else if !is_staged(seen.levels) {
        t!("coach-set-only")
    } else {
        t!("coach-set-first")
    }
}

/// Another appliance on or off; where it is put back, as it was found.
fn turning(leaf: Goal, appliance: OtherAppliance, to: OnOff) -> String {
    let name = appliance.label();
    match (leaf, to) {
        (Goal::Other(..), OnOff::On) => t!("coach-other-on", appliance = name),
        (_, OnOff::Off | OnOff::On) => t!("coach-other-off", appliance = name),
    }
}

fn plugging(port: Port, step: PlugStep, seen: &Seen) -> String {
    if has_taps(seen) {
        return screwing(port, step);
    }
    match step {
        PlugStep::BreakLoose => t!("coach-plug-loose", port = port.label().to_lowercase()),
        PlugStep::SpinOut => t!("coach-plug-out").to_owned(),
        PlugStep::StartByHand | PlugStep::StartByKey => t!("coach-plug-start").to_owned(),
        PlugStep::SpinIn => t!("coach-plug-in").to_owned(),
        PlugStep::Tighten(eighths) if eighths < 2 => t!("coach-plug-nip").to_owned(),
        PlugStep::Tighten(_) => t!("coach-plug-snug").to_owned(),
    }
}

/// Whether the ports are seen to be taps with captive screws.
fn has_taps(seen: &Seen) -> bool {
    Port::ALL.iter().any(|&port| seen.fill(port).is_some_and(PortFill::is_tap))
}

fn screwing(port: Port, step: PlugStep) -> String {
    match step {
        PlugStep::BreakLoose => t!("coach-screw-loose", port = port.label().to_lowercase()),
        PlugStep::SpinOut => t!("coach-screw-out").to_owned(),
        PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn => {
            t!("coach-screw-in").to_owned()
        }
        PlugStep::Tighten(eighths) if eighths < 2 => t!("coach-plug-nip").to_owned(),
        PlugStep::Tighten(_) => t!("coach-screw-snug").to_owned(),
    }
}

/// What is waited for, and the part to watch.
fn waiting(awaited: Awaited, seen: &Seen) -> (String, &'static str) {
    let (text, part) = match awaited {
        Awaited::Rest => (t!("coach-wait-rest"), "status-lamp"),
        Awaited::Seep => (t!("coach-wait-seep"), "gas-valve"),
        Awaited::Bleed => (t!("coach-wait-bleed"), "meter"),
        Awaited::Trickle => (t!("coach-wait-trickle"), "manual-valve"),
        Awaited::MeterWakes | Awaited::MeterWarms | Awaited::MeterRests => {
            (t!("coach-wait-meter"), "meter")
        }
        Awaited::Dwell => (t!("coach-wait-dwell"), "gas-valve"),
        Awaited::Light => (t!("coach-wait-light"), "burners"),
        Awaited::Call if seen.hall.is_some() => (t!("coach-wait-call"), "thermostat"),
        Awaited::Call => (t!("coach-wait-call"), "status-lamp"),
        Awaited::AirRests => (t!("coach-wait-air"), "burners"),
        Awaited::Reads => (t!("coach-wait-reads"), "furnace"),
        Awaited::Turns => (t!("coach-wait-turns"), "meter-dial"),
        Awaited::LineHolds => (t!("coach-wait-line"), "meter"),
        Awaited::Finding => (t!("coach-write-finding"), "job-sheet"),
    };
    (text.to_owned(), part)
}

/// The part in the drawing that an action is about.
fn part(action: &Action) -> Option<&'static str> {
    Some(match action {
        Action::Take(tool) => tool.id(),
        Action::FurnaceSwitch(_) => "furnace-switch",
        Action::HandValve { hand_valve, .. } => hand_valve.id(),
        Action::Door { door, .. } => door.id(),
        Action::ValveSwitch(_) => "valve-switch",
        Action::StageJumper(_) => "control",
        Action::ThermostatMode(_) => "thermostat-mode",
        Action::Setpoint(_) => "thermostat",
        Action::OtherAppliance { appliance, .. } => appliance.id(),
        Action::MeterPower(_) => "meter-power",
        Action::MeterUnit(_) => "meter-unit",
        Action::MeterZero => "meter-zero",
        Action::Plug { port, .. } | Action::Adapter { port, .. } | Action::HoseOn { port, .. } => {
            port.id()
        }
        Action::LeakFluid(joint) | Action::Wipe(joint) | Action::WriteJoint { joint, .. } => {
            joint.id()
        }
        Action::WritePiping(_) => "job-sheet",
        Action::Window { window, .. } => window.id(),
        Action::Tag(_) => "tag",
        Action::Tell(_) => "householder",
        Action::Cap { screw, .. } => screw.level().map_or("supply-cap", Level::cap_id),
        Action::Look(subject) => subject.id(),
        Action::Go(Place::GasValve) => "gas-valve",
        Action::Sniff(height) => zone(*height),
        Action::Go(Place::PlantRoom | Place::Hall | Place::Yard | Place::Away)
        | Action::Probe(_)
        | Action::PutDown
        | Action::Turn { .. }
        | Action::HoseOff
        | Action::MeterLowSide(_)
        | Action::ResetRollout
        | Action::Mend(_)
        | Action::Measure(_)
        | Action::Unclip
        | Action::Stopwatch(_)
        | Action::WriteMeasured(_)
        | Action::Gauge(_)
        | Action::FillColumn
        | Action::Write(_)
        | Action::WriteFinding(_)
        | Action::StrikeFinding(_)
        | Action::Call(_)
        | Action::HandOver(_) => return None,
    })
}

/// The zone of the drawing at a height.
pub(super) fn zone(height: Height) -> &'static str {
    match height {
        Height::Floor => "floor-zone",
        Height::Head => "breathing-zone",
    }
}
