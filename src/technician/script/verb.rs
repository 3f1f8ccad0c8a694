//! From the words of a line to an order.

use super::order::Order;
use super::tokens::{Slip, Tokens, short};
use super::words::nearest;
use super::{finding, until};
use crate::hands::action::{Action, HandOver, PlugStep};
use crate::parts::{Phase, Port, Reading, Stage};
use crate::procedure::Until;
use crate::scenario::Code;
use crate::units::{PressureUnit, Temperature, f_from_k};

/// Every word that a line can begin with.
const VERBS: &[&str] = &[
    "wait",
    "until",
    "go",
    "look",
    "sniff",
    "probe",
    "take",
    "put-down",
    "window",
    "door",
    "furnace-switch",
    "thermostat-mode",
    "setpoint",
    "stage-jumper",
    "valve-switch",
    "cock",
    "neighbor",
    "cap",
    "turn",
    "plug",
    "adapter",
    "hose-on",
    "hose-off",
    "meter-power",
    "meter-zero",
    "meter-unit",
    "meter-low-side",
    "leak-fluid",
    "wipe",
    "reset-rollout",
    "mend",
    "measure",
    "unclip",
    "stopwatch",
    "write-measured",
    "gauge",
    "fill-column",
    "write",
    "write-joint",
    "write-piping",
    "finding",
    "strike-finding",
    "tag",
    "call",
    "tell",
    "hand-over",
];

/// An order from its verb and what follows.
pub(super) fn order(tokens: &mut Tokens<'_>) -> Result<Order, Slip> {
    match tokens.peek() {
        Some("wait") => {
            tokens.skip();
            let seconds = tokens.time()?;
            Ok(Order::Wait { until: Until::Seconds(seconds), limit_s: seconds + 1.0 })
        }
        Some("until") => {
            tokens.skip();
            let until = until::condition(tokens)?;
            tokens.exactly("within")?;
            Ok(Order::Wait { until, limit_s: tokens.time()? })
        }
        Some("write") => {
            tokens.skip();
            write(tokens)
        }
        Some(_) | None => action(tokens).map(Order::Do),
    }
}

fn action(tokens: &mut Tokens<'_>) -> Result<Action, Slip> {
    let unknown = |tokens: &Tokens<'_>, verb: &str| {
        let message = t!("script-unknown-order", verb = short(verb));
        let mut slip = tokens.slip(Code::UnknownName, &message, &VERBS.join(", "));
        slip.nearest = nearest(verb, VERBS.iter().copied());
        slip
    };
    let missing = tokens.slip(Code::MissingField, t!("script-no-order"), &VERBS.join(", "));
    let Some(verb) = tokens.peek() else { return Err(missing) };
    if !VERBS.contains(&verb) {
        return Err(unknown(tokens, verb));
    }
    let at = unknown(tokens, verb);
    tokens.skip();
    Ok(match verb {
        "go" => Action::Go(tokens.word()?),
        "look" => Action::Look(tokens.word()?),
        "sniff" => Action::Sniff(tokens.word()?),
        "probe" => Action::Probe(tokens.word()?),
        "take" => Action::Take(tokens.word()?),
        "put-down" => Action::PutDown,
        "window" => Action::Window { window: tokens.word()?, to: tokens.word()? },
        "door" => Action::Door { door: tokens.word()?, to: tokens.word()? },
        "furnace-switch" => Action::FurnaceSwitch(tokens.word()?),
        "thermostat-mode" => Action::ThermostatMode(tokens.word()?),
        "setpoint" => Action::Setpoint(setpoint(tokens)?),
        "stage-jumper" => Action::StageJumper(tokens.word()?),
        "valve-switch" => Action::ValveSwitch(tokens.word()?),
        "cock" => Action::HandValve { hand_valve: tokens.word()?, degrees: degrees(tokens)? },
        "neighbor" => Action::OtherAppliance { appliance: tokens.word()?, to: tokens.word()? },
        "cap" => Action::Cap { screw: tokens.word()?, to: tokens.word()? },
        "turn" => Action::Turn { screw: tokens.word()?, eighths: tokens.eighths()? },
        "plug" => Action::Plug { port: tokens.word()?, step: plug_step(tokens)? },
        "adapter" => Action::Adapter { port: tokens.word()?, to: tokens.word()? },
        "hose-on" => Action::HoseOn { port: tokens.word()?, push: tokens.word()? },
        "hose-off" => Action::HoseOff,
        "meter-power" => Action::MeterPower(tokens.word()?),
        "meter-zero" => Action::MeterZero,
        "meter-unit" => Action::MeterUnit(tokens.word()?),
        "meter-low-side" => Action::MeterLowSide(tokens.word()?),
        "leak-fluid" => Action::LeakFluid(tokens.word()?),
        "wipe" => Action::Wipe(tokens.word()?),
        "reset-rollout" => Action::ResetRollout,
        "mend" => Action::Mend(tokens.word()?),
        "measure" => Action::Measure(tokens.word()?),
        "unclip" => Action::Unclip,
        "stopwatch" => Action::Stopwatch(tokens.word()?),
        "write-measured" => Action::WriteMeasured(tokens.word()?),
        "gauge" => Action::Gauge(tokens.word()?),
        "fill-column" => Action::FillColumn,
        "write-joint" => Action::WriteJoint { joint: tokens.word()?, verdict: tokens.word()? },
        "write-piping" => Action::WritePiping(tokens.word()?),
        "finding" => Action::WriteFinding(finding::read(tokens)?),
        "strike-finding" => Action::StrikeFinding(tokens.word()?),
        "tag" => Action::Tag(tokens.word()?),
        "call" => Action::Call(tokens.word()?),
        "tell" => Action::Tell(tokens.word()?),
        "hand-over" => Action::HandOver(hand_over(tokens)?),
        _ => return Err(at),
    })
}

/// A setpoint in half degrees Fahrenheit.
fn setpoint(tokens: &mut Tokens<'_>) -> Result<i16, Slip> {
    let expected = t!("script-setpoint");
    let place = tokens.slip(Code::OutOfRange, t!("script-no-setpoint"), expected);
    let what = id!("script-kind-temperature");
    let half_f = 2.0 * f_from_k(tokens.quantity::<Temperature>(what, expected)?.si());
    let whole = half_f.round();
    // What a conversion between the scales leaves behind, and no more.
    let is_half = (half_f - whole).abs() < 1e-6;
    if !is_half || !(f64::from(i16::MIN)..=f64::from(i16::MAX)).contains(&whole) {
        return Err(place);
    }
    #[expect(clippy::cast_possible_truncation, reason = "within the range")]
    let half_f = whole as i16;
    Ok(half_f)
}

/// The angle of a hand valve: `open`, `shut`, or so many `deg`.
fn degrees(tokens: &mut Tokens<'_>) -> Result<i16, Slip> {
    let expected = t!("script-angle");
    let place = tokens.slip(Code::BadQuantity, t!("script-no-angle"), expected);
    let degrees = match tokens.any(id!("script-kind-angle"), expected)? {
        "open" => return Ok(90),
        "shut" => return Ok(0),
        text => text.parse().map_err(|_| place)?,
    };
    tokens.exactly("deg")?;
    Ok(degrees)
}

/// A step with a plug.
fn plug_step(tokens: &mut Tokens<'_>) -> Result<PlugStep, Slip> {
    const STEPS: [PlugStep; 6] = [
        PlugStep::BreakLoose,
        PlugStep::SpinOut,
        PlugStep::StartByHand,
        PlugStep::StartByKey,
        PlugStep::SpinIn,
        PlugStep::Tighten(0),
    ];
    match tokens.one_of(id!("script-kind-plug-step"), &STEPS, plug_word)? {
        PlugStep::Tighten(_) => tokens.eighths().map(PlugStep::Tighten),
        step @ (PlugStep::BreakLoose
        | PlugStep::SpinOut
        | PlugStep::StartByHand
        | PlugStep::StartByKey
        | PlugStep::SpinIn) => Ok(step),
    }
}

/// The word of a step with a plug.
pub(super) fn plug_word(step: PlugStep) -> &'static str {
    match step {
        PlugStep::BreakLoose => "break-loose",
        PlugStep::SpinOut => "spin-out",
        PlugStep::StartByHand => "start-by-hand",
        PlugStep::StartByKey => "start-by-key",
        PlugStep::SpinIn => "spin-in",
        PlugStep::Tighten(_) => "tighten",
    }
}

/// A reading: a number with its unit, or what the manometer shows.
fn write(tokens: &mut Tokens<'_>) -> Result<Order, Slip> {
    let expected = t!("script-reading");
    let port: Port = tokens.word()?;
    let stage: Stage = tokens.word()?;
    let phase: Phase = tokens.word()?;
    if tokens.peek().is_none() {
        return Ok(Order::WriteShown { port, stage, phase });
    }
    let place = tokens.slip(Code::BadQuantity, t!("script-no-reading"), expected);
    let number = tokens.any(id!("script-kind-number"), expected)?;
    let thousandths = thousandths(number).ok_or(place)?;
    let unit: PressureUnit = tokens.word()?;
    Ok(Order::Do(Action::Write(Reading { port, stage, phase, thousandths, unit })))
}

/// A decimal number in thousandths, exactly.
fn thousandths(text: &str) -> Option<i32> {
    let (sign, digits) = match text.strip_prefix('-') {
        Some(digits) => (-1_i64, digits),
        None => (1, text.strip_prefix('+').unwrap_or(text)),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let plain = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    if whole.is_empty() || whole.len() > 9 || part.len() > 3 || !plain(whole) || !plain(part) {
        return None;
    }
    let part: i64 = format!("{part:0<3}").parse().ok()?;
    let whole: i64 = whole.parse().ok()?;
    i32::try_from(sign * (whole * 1000 + part)).ok()
}

fn hand_over(tokens: &mut Tokens<'_>) -> Result<HandOver, Slip> {
    let ending = tokens.word()?;
    let mut not_done = Vec::new();
    if tokens.peek().is_some() {
        tokens.exactly("not-done")?;
        not_done.push(tokens.word()?);
        while tokens.peek().is_some() {
            not_done.push(tokens.word()?);
        }
    }
    Ok(HandOver { ending, not_done })
}
