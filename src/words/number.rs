//! Numbers in texts, with the marks of the language: `number-decimal-mark`, `number-group-mark`.

/// A number with so many decimals and a point, in any language; a zero has no sign.
#[must_use]
pub fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(size) if size.chars().all(|c| matches!(c, '0' | '.')) => size.to_owned(),
        Some(_) | None => text,
    }
}

/// A number with `places` decimals. A value that rounds to zero has no sign.
#[must_use]
pub fn decimal(value: f64, places: usize) -> String {
    fixed(value, places).replace('.', t!("number-decimal-mark"))
}

/// A whole number with a mark between its groups of three digits.
#[must_use]
pub fn whole(value: i64) -> String {
    let digits = value.unsigned_abs().to_string();
    let mut text = String::from(if value < 0 { "-" } else { "" });
    for (at, digit) in digits.char_indices() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            text.push_str(t!("number-group-mark"));
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::{decimal, whole};

    /// Decimals are rounded, and a zero has no sign.
    #[test]
    fn decimals_have_the_mark_of_the_language() {
        assert_eq!(decimal(3.456, 2), "3.46");
        assert_eq!(decimal(-0.04, 1), "0.0");
        assert_eq!(decimal(-12.0, 0), "-12");
    }

    /// Thousands are set apart.
    #[test]
    fn whole_numbers_stand_in_groups_of_three() {
        assert_eq!(whole(7), "7");
        assert_eq!(whole(5_280), "5,280");
        assert_eq!(whole(-1_234_567), "-1,234,567");
    }
}
