//! An action in a few words, for findings and the time line of the debrief.

use crate::hands::action::{Action, Contact, PlugStep, StartStop, Topic};
use crate::parts::{
    Ending, Fitted, Height, JointVerdict, LowSide, OnOff, Opening, Port, Push, Reading,
};
use crate::words::decimal;

/// What was done, in a few words.
#[must_use]
pub(super) fn describe(action: &Action) -> String {
    match action {
        Action::Go(place) => t!("done-go", place = lower(place.label())),
        Action::Look(subject) => t!("done-look", subject = lower(subject.label())),
        Action::Sniff(height) => t!("done-sniff", height = at_height(*height)),
        Action::Probe(height) => t!("done-probe", height = at_height(*height)),
        Action::Take(tool) => t!("done-take", tool = lower(tool.label())),
        Action::PutDown => t!("done-put-down").into(),
        Action::Window { window, to } => {
            t!("done-window", window = lower(window.label()), to = opening(*to))
        }
        Action::Door { door, to } => t!("done-door", door = lower(door.label()), to = fitted(*to)),
        Action::FurnaceSwitch(to) => t!("done-furnace-switch", to = on_off(*to)),
        Action::ThermostatMode(to) => t!("done-thermostat-heat", to = on_off(*to)),
        Action::Setpoint(half_f) => {
            t!("done-setpoint", degrees = decimal(f64::from(*half_f) / 2.0, 1))
        }
        Action::StageJumper(to) => t!("done-jumper", to = fitted(*to)),
        Action::ValveSwitch(to) => t!("done-valve-switch", to = on_off(*to)),
        Action::HandValve { hand_valve, degrees } => {
            t!("done-cock", valve = lower(hand_valve.label()), degrees = degrees.to_string())
        }
        Action::OtherAppliance { appliance, to } => {
            t!("done-neighbor", appliance = lower(appliance.label()), to = on_off(*to))
        }
        Action::Cap { screw, to } => t!("done-cap", screw = lower(screw.label()), to = fitted(*to)),
        Action::Turn { screw, eighths } => {
            t!("done-turn", screw = lower(screw.label()), turn = turn_words(*eighths))
        }
        Action::Plug { port, step } => plug(*port, *step),
        Action::Adapter { port, to } => {
            t!("done-adapter", port = lower(port.label()), to = fitted(*to))
        }
        Action::HoseOn { port, push } => hose_on(*port, *push),
        Action::HoseOff => t!("done-hose-off").into(),
        Action::MeterPower(to) => t!("done-meter-power", to = on_off(*to)),
        Action::MeterZero => t!("done-meter-zero").into(),
        Action::MeterUnit(unit) => t!("done-meter-unit", unit = unit.label()),
        Action::MeterLowSide(LowSide::Air) => t!("done-low-side-air").into(),
        Action::MeterLowSide(LowSide::BurnerBox) => t!("done-low-side-box").into(),
        Action::Gauge(gauge) => t!("done-gauge", gauge = lower(gauge.label())),
        Action::FillColumn => t!("done-fill-column").into(),
        Action::LeakFluid(joint) => t!("done-leak-fluid", joint = lower(joint.label())),
        Action::Wipe(joint) => t!("done-wipe", joint = lower(joint.label())),
        Action::ResetRollout => t!("done-rollout").into(),
        Action::Mend(repair) => lower(repair.label()),
        Action::Measure(spot) => t!("done-measure", spot = lower(spot.label())),
        Action::Unclip => t!("done-unclip").into(),
        Action::Stopwatch(StartStop::Start) => t!("done-watch-start").into(),
        Action::Stopwatch(StartStop::Stop) => t!("done-watch-stop").into(),
        Action::Write(reading) => wrote(reading),
        Action::WriteJoint { joint, verdict: JointVerdict::Tight } => {
            t!("done-write-tight", joint = lower(joint.label()))
        }
        Action::WriteJoint { joint, verdict: JointVerdict::Leaking } => {
            t!("done-write-leaking", joint = lower(joint.label()))
        }
        Action::WritePiping(JointVerdict::Tight) => t!("done-write-piping-tight").to_owned(),
        Action::WritePiping(JointVerdict::Leaking) => t!("done-write-piping-leaking").to_owned(),
        Action::WriteFinding(it) => t!("done-write-finding", cause = lower(it.cause.label())),
        Action::StrikeFinding(cause) => t!("done-strike-finding", cause = lower(cause.label())),
        Action::WriteMeasured(spot) => t!("done-write-measured", spot = lower(spot.label())),
        Action::Tag(to) => t!("done-tag", to = fitted(*to)),
        Action::Call(Contact::SupplyOwner) => t!("done-call-owner").into(),
        Action::Call(Contact::Emergency) => t!("done-call-emergency").into(),
        Action::Tell(topic) => told(*topic).into(),
        Action::HandOver(said) => t!("done-hand-over", ending = ending_words(said.ending)),
    }
}

/// A number as it stands on the sheet, with its unit.
pub(super) fn as_written(reading: &Reading) -> String {
    t!("number-written", value = reading.value().to_string(), unit = reading.unit.label())
}

fn wrote(reading: &Reading) -> String {
    let (port, stage) = (lower(reading.port.label()), lower(reading.stage.label()));
    t!("done-write", number = as_written(reading), port = port, stage = stage)
}

/// How a job ended, within a sentence.
pub(super) fn ending_words(ending: Ending) -> &'static str {
    match ending {
        Ending::InService => t!("ending-in-service"),
        Ending::SupplyOwnerCalled => t!("ending-owner-called"),
        Ending::ShutOff => t!("ending-shut-off"),
    }
}

/// How far and which way a screw was turned, in eighths of a turn, clockwise positive.
pub(super) fn turn_words(eighths: i16) -> String {
    let size = eighths.unsigned_abs();
    let amount = t!("turn-amount", whole = usize::from(size / 8), part = usize::from(size % 8));
    let way = if eighths < 0 { "out" } else { "in" };
    t!("turn-way", amount = amount, way = way)
}

/// A name as it stands within a sentence.
pub(super) fn lower(label: &str) -> String {
    label.to_lowercase()
}

// The texts choose their words by these.

fn on_off(to: OnOff) -> &'static str {
    match to {
        OnOff::On => "on",
        OnOff::Off => "off",
    }
}

fn fitted(to: Fitted) -> &'static str {
    match to {
        Fitted::On => "on",
        Fitted::Off => "off",
    }
}

fn opening(to: Opening) -> &'static str {
    match to {
        Opening::Open => "open",
        Opening::Closed => "closed",
    }
}

fn at_height(height: Height) -> &'static str {
    match height {
        Height::Floor => "floor",
        Height::Head => "head",
    }
}

fn hose_on(port: Port, push: Push) -> String {
    match push {
        Push::Fully => t!("done-hose-on", port = lower(port.label())),
        Push::Halfway => t!("done-hose-halfway", port = lower(port.label())),
    }
}

fn plug(port: Port, step: PlugStep) -> String {
    let port = lower(port.label());
    match step {
        PlugStep::BreakLoose => t!("done-plug-loose", port = port),
        PlugStep::SpinOut => t!("done-plug-out", port = port),
        PlugStep::StartByHand => t!("done-plug-by-hand", port = port),
        PlugStep::StartByKey => t!("done-plug-by-key", port = port),
        PlugStep::SpinIn => t!("done-plug-in", port = port),
        PlugStep::Tighten(eighths) => {
            t!("done-plug-tight", port = port, turn = turn_words(eighths))
        }
    }
}

fn told(topic: Topic) -> &'static str {
    match topic {
        Topic::WorkStarts => t!("done-tell-work-starts"),
        Topic::GasSmellDrill => t!("done-tell-smell-drill"),
        Topic::Unsafe => t!("done-tell-unsafe"),
        Topic::GetOut => t!("done-tell-get-out"),
    }
}
