//! What pictures written as text (SVG) share: axes with their ticks, colours, figures and text.

mod axis;

pub(crate) use axis::Axis;

/// How the axes of a picture run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// Equal steps of the value take equal steps on paper, on both axes.
    Even,
    /// Equal ratios of the value take equal steps on paper, on both axes.
    Decades,
}

/// The colour of the paper.
pub(crate) const PAPER: &str = "#fbf9f3";
/// The colour of what is drawn and written.
pub(crate) const INK: &str = "#2c2a27";
/// The colour of lines that guide the eye.
pub(crate) const PALE: &str = "#d9d4c8";
/// The colour of bands.
pub(crate) const WASH: &str = "#dfe9ee";

/// Writes a line into a string, which cannot fail.
macro_rules! put {
    ($svg:expr, $($arg:tt)*) => {
        let _ = writeln!($svg, $($arg)*);
    };
}
pub(crate) use put;

/// Text as it may stand in a picture.
pub(crate) fn escape(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

/// A number with five digits that count.
#[must_use]
pub fn figure(value: f64) -> String {
    if !value.is_finite() {
        return t!("chart-no-number").to_owned();
    }
    if value == 0.0 {
        return "0".to_owned();
    }
    let size = libm::floor(libm::log10(value.abs()));
    let decimals = (4.0 - size).clamp(0.0, 12.0) as usize;
    let text = format!("{value:.decimals$}");
    if text.contains('.') {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}
