//! From an action to its line in a script, and so from a record to a script.

use super::finding;
use super::verb::plug_word;
use super::words::Word;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Port, Reading};

/// The line of an action; reading it gives the same action again.
#[must_use]
pub fn action_line(action: &Action) -> String {
    match action {
        Action::Go(it) => one("go", *it),
        Action::Look(it) => one("look", *it),
        Action::Sniff(it) => one("sniff", *it),
        Action::Probe(it) => one("probe", *it),
        Action::Take(it) => one("take", *it),
        Action::PutDown => "put-down".to_owned(),
        Action::Window { window, to } => two("window", *window, *to),
        Action::Door { door, to } => two("door", *door, *to),
        Action::FurnaceSwitch(it) => one("furnace-switch", *it),
        Action::ThermostatMode(it) => one("thermostat-mode", *it),
        Action::Setpoint(half_f) => line(&["setpoint", &degrees_f(*half_f), "degF"]),
        Action::StageJumper(it) => one("stage-jumper", *it),
        Action::ValveSwitch(it) => one("valve-switch", *it),
        Action::HandValve { hand_valve, degrees } => {
            line(&["cock", hand_valve.word(), &angle(*degrees)])
        }
        Action::OtherAppliance { appliance, to } => two("neighbor", *appliance, *to),
        Action::Cap { screw, to } => two("cap", *screw, *to),
        Action::Turn { screw, eighths } => line(&["turn", screw.word(), &of_a_turn(*eighths)]),
        Action::Plug { port, step } => plug(*port, *step),
        Action::Adapter { port, to } => two("adapter", *port, *to),
        Action::HoseOn { port, push } => two("hose-on", *port, *push),
        Action::HoseOff => "hose-off".to_owned(),
        Action::MeterPower(it) => one("meter-power", *it),
        Action::MeterZero => "meter-zero".to_owned(),
        Action::MeterUnit(it) => one("meter-unit", *it),
        Action::MeterLowSide(it) => one("meter-low-side", *it),
        Action::LeakFluid(it) => one("leak-fluid", *it),
        Action::Wipe(it) => one("wipe", *it),
        Action::ResetRollout => "reset-rollout".to_owned(),
        Action::Mend(it) => one("mend", *it),
        Action::Measure(it) => one("measure", *it),
        Action::Unclip => "unclip".to_owned(),
        Action::Stopwatch(it) => one("stopwatch", *it),
        Action::WriteMeasured(it) => one("write-measured", *it),
        Action::Gauge(it) => one("gauge", *it),
        Action::FillColumn => "fill-column".to_owned(),
        Action::Write(reading) => write(reading),
        Action::WriteJoint { joint, verdict } => two("write-joint", *joint, *verdict),
        Action::WritePiping(it) => one("write-piping", *it),
        Action::WriteFinding(it) => finding::line(it),
        Action::StrikeFinding(it) => one("strike-finding", *it),
        Action::Tag(it) => one("tag", *it),
        Action::Call(it) => one("call", *it),
        Action::Tell(it) => one("tell", *it),
        Action::HandOver(said) => {
            let not_done = said.not_done.iter().map(|item| item.word());
            let named = (!said.not_done.is_empty()).then_some("not-done");
            let words: Vec<&str> = ["hand-over", said.ending.word()]
                .into_iter()
                .chain(named)
                .chain(not_done)
                .collect();
            line(&words)
        }
    }
}

fn line(words: &[&str]) -> String {
    words.join(" ")
}

fn one(verb: &str, it: impl Word) -> String {
    line(&[verb, it.word()])
}

fn two(verb: &str, it: impl Word, to: impl Word) -> String {
    line(&[verb, it.word(), to.word()])
}

fn plug(port: Port, step: PlugStep) -> String {
    let words = ["plug", port.word(), plug_word(step)];
    match step {
        PlugStep::Tighten(eighths) => line(&[&line(&words), &of_a_turn(eighths)]),
        PlugStep::BreakLoose
        | PlugStep::SpinOut
        | PlugStep::StartByHand
        | PlugStep::StartByKey
        | PlugStep::SpinIn => line(&words),
    }
}

fn of_a_turn(eighths: i16) -> String {
    format!("{eighths}/8")
}

fn degrees_f(half_f: i16) -> String {
    (f64::from(half_f) / 2.0).to_string()
}

fn angle(degrees: i16) -> String {
    match degrees {
        0 => "shut".to_owned(),
        90 => "open".to_owned(),
        other => line(&[&other.to_string(), "deg"]),
    }
}

fn write(reading: &Reading) -> String {
    let Reading { port, stage, phase, thousandths, unit } = reading;
    let sign = if *thousandths < 0 { "-" } else { "" };
    let size = thousandths.unsigned_abs();
    let number = format!("{sign}{}.{:03}", size / 1000, size % 1000);
    line(&["write", port.word(), stage.word(), phase.word(), &number, unit.word()])
}
