//! An action in a few words, for findings and the time line of the debrief.

use crate::hands::action::{Action, Contact, PlugStep, StartStop, Topic};
use crate::parts::{Cock, Fitted, LowSide, OnOff, Opening, Push};

/// What was done, in a few words.
#[must_use]
pub(super) fn describe(action: &Action) -> String {
    let of = |what: &str, label: &str| format!("{what}: {}", label.to_lowercase());
    let to = |label: &str, end: &str| format!("{} {end}", label.to_lowercase());
    match action {
        Action::Go(place) => of("to", place.label()),
        Action::Look(subject) => of("looked at", subject.label()),
        Action::Sniff(_) => "sniffed".into(),
        Action::Probe(_) => "gas detector held".into(),
        Action::Take(tool) => of("taken", tool.label()),
        Action::PutDown => "tool put down".into(),
        Action::Window { window, to: end } => to(window.label(), opening(*end)),
        Action::Door { door, to: end } => to(door.label(), fitted(*end)),
        Action::FurnaceSwitch(end) => to("power", on_off(*end)),
        Action::ThermostatMode(end) => to("heat switched", on_off(*end)),
        Action::Setpoint(half_f) => format!("setpoint to {:.1} °F", f64::from(*half_f) / 2.0),
        Action::StageJumper(end) => format!("wire between R and W2 {}", fitted(*end)),
        Action::ValveSwitch(end) => to("valve switch", on_off(*end)),
        Action::Cock { cock: Cock::Furnace, degrees } => format!("manual valve to {degrees}°"),
        Action::Cock { cock, degrees } => to(cock.label(), &format!("to {degrees}°")),
        Action::Neighbor { neighbor, to: end } => to(neighbor.label(), on_off(*end)),
        Action::Cap { screw, to: end } => {
            format!("{}: cap {}", screw.label().to_lowercase(), fitted(*end))
        }
        Action::Turn { screw, eighths } => to(screw.label(), &format!("{eighths:+} eighths")),
        Action::Plug { port, step } => format!("{}: {}", port.label().to_lowercase(), plug(*step)),
        Action::Adapter { port, to: end } => {
            format!("{}: adapter {}", port.label().to_lowercase(), fitted(*end))
        }
        Action::HoseOn { port, push: Push::Fully } => of("hose on", port.label()),
        Action::HoseOn { port, push: Push::Halfway } => of("hose on halfway", port.label()),
        Action::HoseOff => "hose off".into(),
        Action::MeterPower(end) => to("manometer", on_off(*end)),
        Action::MeterZero => "manometer zeroed".into(),
        Action::MeterUnit(unit) => format!("manometer shows {}", unit.label()),
        Action::MeterLowSide(LowSide::Air) => "manometer's low side to the air".into(),
        Action::MeterLowSide(LowSide::BurnerBox) => "manometer's low side to the burner box".into(),
        Action::Gauge(gauge) => of("hose put to", gauge.label()),
        Action::FillColumn => "water column filled to zero".into(),
        Action::LeakFluid(joint) => of("leak fluid on", joint.label()),
        Action::Wipe(joint) => of("wiped dry", joint.label()),
        Action::ResetRollout => "roll-out switches reset".into(),
        Action::Mend(repair) => repair.label().to_lowercase(),
        Action::Measure(spot) => of("measured", spot.label()),
        Action::Unclip => "microammeter unclipped".into(),
        Action::Stopwatch(StartStop::Start) => "stopwatch started".into(),
        Action::Stopwatch(StartStop::Stop) => "stopwatch stopped".into(),
        Action::Write(reading) => of("reading written", reading.port.label()),
        Action::WriteJoint { joint, .. } => of("leak check written", joint.label()),
        Action::WriteMeasured(spot) => of("measurement written", spot.label()),
        Action::Tag(end) => to("warning tag", fitted(*end)),
        Action::Call(Contact::SupplyOwner) => "owner of the supply called".into(),
        Action::Call(Contact::Emergency) => "emergency number called".into(),
        Action::Tell(topic) => told(*topic).into(),
        Action::HandOver(_) => "handed over".into(),
    }
}

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
        Opening::Open => "opened",
        Opening::Closed => "closed",
    }
}

fn plug(step: PlugStep) -> &'static str {
    match step {
        PlugStep::BreakLoose => "plug broken loose",
        PlugStep::SpinOut => "plug spun out",
        PlugStep::StartByHand => "plug started by hand",
        PlugStep::StartByKey => "plug started with the key",
        PlugStep::SpinIn => "plug spun in",
        PlugStep::Tighten(_) => "plug tightened",
    }
}

fn told(topic: Topic) -> &'static str {
    match topic {
        Topic::WorkStarts => "householder told: work starts",
        Topic::GasSmellDrill => "householder told: what to do at a smell of gas",
        Topic::Unsafe => "householder told: unsafe, it stays off",
        Topic::GetOut => "householder told: get out",
    }
}
