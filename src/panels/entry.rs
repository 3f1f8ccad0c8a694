//! A number as it is typed, and why it cannot be written.

use crate::units::PressureUnit;
use crate::words::decimal;

/// Largest number that fits on the sheet, in thousandths.
const MOST_THOUSANDTHS: i64 = 9_999_999;

/// Reads a typed number as thousandths. Takes a point or a comma, a plain hyphen or a minus.
///
/// # Errors
/// Why it cannot be written, as a sentence that says what to do.
pub fn thousandths(typed: &str) -> Result<i32, String> {
    let text = typed.trim();
    if text.is_empty() {
        return Err(t!("entry-empty").into());
    }
    let (sign, digits) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (-1, rest),
        None => (1, text.strip_prefix('+').unwrap_or(text)),
    };
    let (whole, part) = match digits.split_once(['.', ',']) {
        Some((whole, part)) => (whole, part),
        None => (digits, ""),
    };
    let is_number = |s: &str| s.chars().all(|c| c.is_ascii_digit());
    if (whole.is_empty() && part.is_empty()) || !is_number(whole) || !is_number(part) {
        return Err(t!("entry-no-number", text = text));
    }
    if part.len() > 3 {
        return Err(t!("entry-decimals").into());
    }
    if whole.len() > 6 {
        return Err(t!("entry-too-much").into());
    }
    let whole: i64 = if whole.is_empty() { 0 } else { whole.parse().unwrap_or(i64::MAX / 2_000) };
    let part: i64 = format!("{part:0<3}").parse().unwrap_or(0);
    let size = whole * 1_000 + part;
    if size > MOST_THOUSANDTHS {
        return Err(t!("entry-too-much").into());
    }
    i32::try_from(sign * size).map_err(|_| t!("entry-too-much").into())
}

/// Thousandths as they stand on the sheet: at least one decimal, no zeros to no purpose.
#[must_use]
pub fn written(thousandths: i32) -> String {
    let size = thousandths.unsigned_abs();
    let sign = if thousandths < 0 { "−" } else { "" };
    let mut text = format!("{sign}{}.{:03}", size / 1_000, size % 1_000);
    while text.ends_with('0') && !text.ends_with(".0") {
        text.pop();
    }
    text
}

/// A pressure in a unit, with about the precision that `decimals` of inches of water stand for.
#[must_use]
pub fn pressure(pa: f64, unit: PressureUnit, decimals: u8) -> String {
    let decimals = usize::from(decimals)
        + match unit {
            PressureUnit::InWc | PressureUnit::Mbar => 0,
            PressureUnit::KPa => 2,
        };
    decimal(pa / unit.pa(), decimals)
}
