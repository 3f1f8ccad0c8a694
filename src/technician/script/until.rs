//! What an `until` waits for.

use super::tokens::{Slip, Tokens, short};
use super::words::{all_words, nearest};
use crate::appliance::ignition::ControlStatus;
use crate::procedure::Until;
use crate::scenario::Code;
use crate::senses::seen::Sound;
use crate::units::{Pressure, Temperature, f_from_k};

/// What is waited for.
#[derive(Debug, Clone, Copy)]
enum Kind {
    Heard,
    Quiet,
    Status,
    Meter,
    Room,
}

const KINDS: [Kind; 5] = [Kind::Heard, Kind::Quiet, Kind::Status, Kind::Meter, Kind::Room];

fn word(kind: Kind) -> &'static str {
    match kind {
        Kind::Heard => "heard",
        Kind::Quiet => "quiet",
        Kind::Status => "status",
        Kind::Meter => "meter",
        Kind::Room => "room",
    }
}

/// A condition, up to its `within`.
pub(super) fn condition(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    match tokens.one_of(id!("script-kind-wait"), &KINDS, word)? {
        Kind::Heard => Ok(Until::Heard(tokens.word()?)),
        Kind::Quiet => quiet(tokens),
        Kind::Status => status(tokens),
        Kind::Meter => meter(tokens),
        Kind::Room => room(tokens),
    }
}

fn quiet(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    let mut sounds: Vec<Sound> = Vec::new();
    while tokens.peek().is_some_and(|word| word != "within") {
        sounds.push(tokens.word()?);
    }
    if sounds.is_empty() {
        let message = t!("script-no-sound");
        return Err(tokens.slip(Code::MissingField, message, &all_words::<Sound>()));
    }
    Ok(Until::Quiet(sounds))
}

fn status(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    let expected = t!("script-status");
    let place = tokens.slip(Code::UnknownName, "", expected);
    let mut words = Vec::new();
    while let Some(word) = tokens.peek().filter(|&word| word != "within") {
        words.push(word);
        tokens.skip();
    }
    if words.is_empty() {
        return Err(tokens.slip(Code::MissingField, t!("script-no-status"), expected));
    }
    let words = words.join(" ");
    let any_of = ControlStatus::beginning_with(&words);
    if any_of.is_empty() {
        let message = t!("script-unknown-status", words = short(&words));
        let nearest = nearest(&words, ControlStatus::ALL.into_iter().map(ControlStatus::words));
        return Err(Slip { message, nearest, found: short(&words), ..place });
    }
    Ok(Until::Status(any_of))
}

fn meter(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    match tokens.one_of(id!("script-kind-meter"), &["between", "steady"], |word| word)? {
        "between" => {
            let place =
                tokens.slip(Code::Contradiction, t!("script-backwards"), t!("script-lower-first"));
            let lower = pressure(tokens)?;
            tokens.exactly("and")?;
            let upper = pressure(tokens)?;
            if lower > upper { Err(place) } else { Ok(Until::MeterBetween(lower, upper)) }
        }
        _ => {
            let within_pa = pressure(tokens)?;
            tokens.exactly("for")?;
            Ok(Until::MeterSteady { within_pa, for_s: tokens.time()? })
        }
    }
}

fn pressure(tokens: &mut Tokens<'_>) -> Result<f64, Slip> {
    let expected = t!("script-pressure");
    Ok(tokens.quantity::<Pressure>(id!("script-kind-pressure"), expected)?.si())
}

fn room(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    tokens.exactly("at-least")?;
    let kelvin = tokens
        .quantity::<Temperature>(id!("script-kind-temperature"), t!("script-temperature"))?
        .si();
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
    let half_f = (2.0 * f_from_k(kelvin) - 1e-6).ceil() as i16;
    Ok(Until::RoomAtLeast(half_f))
}
