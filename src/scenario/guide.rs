//! The page on the format: chapters written by hand, the fields from the declarations themselves.

use core::fmt::Write as _;

use super::explain::{quantities, reference};

/// The smallest scenario that the page shows whole.
pub const SMALLEST: &str = include_str!("guide/smallest.ron");

const HEAD: &str = include_str!("guide/head.md");
const VALUES: &str = include_str!("guide/values.md");

/// The whole page, in Markdown.
#[must_use]
pub fn page() -> String {
    let mut text = format!("{HEAD}```\n{SMALLEST}```\n{VALUES}");
    for (what, units) in quantities() {
        let _ = writeln!(text, "- {what}: {units}");
    }
    text.push('\n');
    // The reference stands one heading deeper here.
    for line in reference().lines() {
        let deeper = if line.starts_with("# ") || line.starts_with("##") { "#" } else { "" };
        let _ = writeln!(text, "{deeper}{line}");
    }
    text
}
