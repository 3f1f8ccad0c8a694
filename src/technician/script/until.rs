//! What an `until` waits for.

use super::tokens::{Slip, Tokens, short};
use super::verb::{all_words, time};
use super::words::nearest;
use crate::appliance::ignition::ControlStatus;
use crate::procedure::Until;
use crate::scenario::Code;
use crate::senses::seen::Sound;
use crate::units::{Pressure, Temperature, f_from_k};

/// What a pressure looks like.
const PRESSURE: &str = "a pressure, as in 3.5 inH2O, 0.87 kPa or 8.7 mbar";

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
    match tokens.one_of("thing to wait for", &KINDS, word)? {
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
        let message = "A sound is missing here.";
        return Err(tokens.slip(Code::MissingField, message, &all_words::<Sound>()));
    }
    Ok(Until::Quiet(sounds))
}

fn status(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    const EXPECTED: &str = "the first words of the control's status, as in: burning on low";
    let place = tokens.slip(Code::UnknownName, "", EXPECTED);
    let mut words = Vec::new();
    while let Some(word) = tokens.peek().filter(|&word| word != "within") {
        words.push(word);
        tokens.skip();
    }
    if words.is_empty() {
        return Err(tokens.slip(Code::MissingField, "A status is missing here.", EXPECTED));
    }
    let words = words.join(" ");
    let any_of = ControlStatus::beginning_with(&words);
    if any_of.is_empty() {
        let message = format!("The control never says `{}`.", short(&words));
        let nearest = nearest(&words, ControlStatus::ALL.into_iter().map(ControlStatus::words));
        return Err(Slip { message, nearest, found: short(&words), ..place });
    }
    Ok(Until::Status(any_of))
}

fn meter(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    match tokens.one_of("way of the manometer", &["between", "steady"], |word| word)? {
        "between" => {
            let place = tokens.slip(
                Code::Contradiction,
                "This range runs backwards.",
                "the lower pressure first",
            );
            let low = tokens.quantity::<Pressure>("pressure", PRESSURE)?.si();
            tokens.exactly("and")?;
            let high = tokens.quantity::<Pressure>("pressure", PRESSURE)?.si();
            if low > high { Err(place) } else { Ok(Until::MeterBetween(low, high)) }
        }
        _ => {
            let within_pa = tokens.quantity::<Pressure>("pressure", PRESSURE)?.si();
            tokens.exactly("for")?;
            Ok(Until::MeterSteady { within_pa, for_s: time(tokens)? })
        }
    }
}

fn room(tokens: &mut Tokens<'_>) -> Result<Until, Slip> {
    const EXPECTED: &str = "a temperature, as in 68 degF";
    tokens.exactly("at-least")?;
    let kelvin = tokens.quantity::<Temperature>("temperature", EXPECTED)?.si();
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
    let half_f = (2.0 * f_from_k(kelvin) - 1e-6).ceil() as i16;
    Ok(Until::RoomAtLeast(half_f))
}
