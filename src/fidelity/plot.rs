//! Figures as SVG: a panel with the model's lines and the published points, one with deviations.
//!
//! Plain text with two decimals everywhere, so that the same rows give the same bytes.

use std::fmt::Write;

use super::check::{Check, Tolerance};
use crate::chart::{Axis, INK, PALE, PAPER, Scale, WASH, escape, put};
use crate::words::Id;

/// What a figure shows.
#[derive(Debug, Clone, Copy)]
pub struct Figure {
    /// Name of its file without the ending.
    pub file: &'static str,
    /// What stands under it.
    pub title: Id,
    /// Label of the horizontal axis, with its unit.
    pub x: Id,
    /// Label of the vertical axis, with its unit.
    pub y: Id,
    /// How the axes run.
    pub scale: Scale,
    /// Checks whose rows it shows; the first one's lines are labelled.
    pub checks: &'static [&'static str],
}

const WIDTH: f64 = 760.0;
const HEIGHT: f64 = 640.0;
const LEFT: f64 = 78.0;
const RIGHT: f64 = 670.0;
/// Upper and lower edge of the panel of values, and of the one of deviations.
const VALUES: (f64, f64) = (76.0, 390.0);
const OFFS: (f64, f64) = (452.0, 580.0);

const TINTS: [&str; 6] = ["#2f6f9f", "#b5651d", "#4d7f4a", "#8a4f7d", "#a08a1e", "#5f6b76"];

/// Draws a figure from the checks that are there; `None` when none of its rows has a place.
#[must_use]
pub fn draw(figure: &Figure, number: usize, all: &[Check]) -> Option<String> {
    let checks: Vec<&Check> = figure
        .checks
        .iter()
        .filter_map(|id| all.iter().find(|check| check.id == *id))
        .filter(|check| check.rows.iter().any(|row| row.at.is_some()))
        .collect();
    let rows = || checks.iter().flat_map(|check| &check.rows);
    let xs: Vec<f64> = rows().filter_map(|row| row.at).collect();
    let ys: Vec<f64> = rows().flat_map(|row| [row.reference, row.result]).collect();
    let x = Axis::new(&xs, figure.scale, LEFT, RIGHT)?;
    let y = Axis::new(&ys, figure.scale, VALUES.1, VALUES.0)?;
    let offs = Axis::about_zero(&deviations(&checks), OFFS.1, OFFS.0);
    let mut svg = String::new();
    open(&mut svg, figure, number);
    frame(&mut svg, &x, &y, figure, VALUES, figure.y.text());
    for (k, check) in checks.iter().enumerate() {
        lines(&mut svg, check, tint(k), &x, &y, k == 0);
    }
    for (k, check) in checks.iter().enumerate() {
        points(&mut svg, check, tint(k), &x, &y);
    }
    if let Some(check) = checks.first() {
        band(&mut svg, check.tolerance, &offs);
    }
    frame(&mut svg, &x, &offs, figure, OFFS, t!("plot-deviations"));
    for (k, check) in checks.iter().enumerate() {
        marks(&mut svg, check, tint(k), &x, &offs);
    }
    legend(&mut svg, &checks);
    svg.push_str("</svg>\n");
    Some(svg)
}

fn tint(k: usize) -> &'static str {
    TINTS.get(k % TINTS.len()).copied().unwrap_or(INK)
}

/// Rows' deviations in per cent, rounding taken off.
fn deviations(checks: &[&Check]) -> Vec<f64> {
    let rows = checks.iter().flat_map(|check| &check.rows);
    rows.filter(|row| row.reference != 0.0)
        .map(|row| 100.0 * (row.judged() / row.reference - 1.0))
        .filter(|off| off.is_finite())
        .collect()
}

fn open(svg: &mut String, figure: &Figure, number: usize) {
    put!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {HEIGHT}\" \
         font-family=\"Georgia, 'Times New Roman', serif\" font-size=\"12\" fill=\"{INK}\">"
    );
    put!(svg, "<title>{}</title>", escape(figure.title.text()));
    put!(svg, "<rect width=\"{WIDTH}\" height=\"{HEIGHT}\" fill=\"{PAPER}\"/>");
    let title = escape(&t!("plot-title", number = number, title = figure.title.text()));
    put!(svg, "<text x=\"{LEFT}\" y=\"28\" font-size=\"15\">{title}</text>");
}

fn frame(
    svg: &mut String,
    x: &Axis,
    y: &Axis,
    figure: &Figure,
    (top, bottom): (f64, f64),
    label: &str,
) {
    for (value, text) in x.ticks() {
        let at = x.at(value);
        put!(svg, "<path d=\"M{at:.2} {top}V{bottom}\" stroke=\"{PALE}\" stroke-width=\"0.6\"/>");
        put!(
            svg,
            "<text x=\"{at:.2}\" y=\"{:.2}\" text-anchor=\"middle\">{text}</text>",
            bottom + 16.0
        );
    }
    for (value, text) in y.ticks() {
        let at = y.at(value);
        put!(svg, "<path d=\"M{LEFT} {at:.2}H{RIGHT}\" stroke=\"{PALE}\" stroke-width=\"0.6\"/>");
        put!(
            svg,
            "<text x=\"{:.2}\" y=\"{:.2}\" text-anchor=\"end\">{text}</text>",
            LEFT - 6.0,
            at + 4.0
        );
    }
    put!(
        svg,
        "<rect x=\"{LEFT}\" y=\"{top}\" width=\"{}\" height=\"{}\" fill=\"none\" stroke=\"{INK}\"/>",
        RIGHT - LEFT,
        bottom - top
    );
    let middle = 0.5 * (top + bottom);
    put!(
        svg,
        "<text transform=\"translate(20 {middle}) rotate(-90)\" text-anchor=\"middle\">{}</text>",
        escape(label)
    );
    put!(
        svg,
        "<text x=\"{}\" y=\"{}\" text-anchor=\"middle\">{}</text>",
        0.5 * (LEFT + RIGHT),
        bottom + 33.0,
        escape(figure.x.text())
    );
}

/// Names of a check's lines, in the order of its rows.
fn names(check: &Check) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for row in check.rows.iter().filter(|row| row.at.is_some()) {
        if !names.contains(&row.line.as_str()) {
            names.push(&row.line);
        }
    }
    names
}

fn lines(svg: &mut String, check: &Check, tint: &str, x: &Axis, y: &Axis, labelled: bool) {
    let mut taken: Vec<f64> = Vec::new();
    for name in names(check) {
        let mut ends: Vec<(f64, f64)> = check
            .rows
            .iter()
            .filter(|row| row.line == name)
            .filter_map(|row| Some((row.at?, row.result)))
            .collect();
        ends.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut path = String::new();
        for (k, (at, value)) in ends.iter().enumerate() {
            let letter = if k == 0 { 'M' } else { 'L' };
            let _ = write!(path, "{letter}{:.2} {:.2}", x.at(*at), y.at(*value));
        }
        put!(svg, "<path d=\"{path}\" fill=\"none\" stroke=\"{tint}\" stroke-width=\"1.1\"/>");
        if let (true, Some((at, value))) = (labelled, ends.last()) {
            let high = y.at(*value) + 4.0;
            // Two labels on one another say nothing.
            if taken.iter().all(|other| (other - high).abs() >= 11.0) {
                let end = x.at(*at);
                let place = if end > RIGHT - 90.0 { RIGHT } else { end };
                put!(svg, "<text x=\"{:.2}\" y=\"{high:.2}\">{}</text>", place + 7.0, escape(name));
                taken.push(high);
            }
        }
    }
}

fn points(svg: &mut String, check: &Check, tint: &str, x: &Axis, y: &Axis) {
    put!(svg, "<g fill=\"{PAPER}\" stroke=\"{tint}\" stroke-width=\"0.8\">");
    for row in &check.rows {
        let Some(at) = row.at else { continue };
        put!(svg, "<circle cx=\"{:.2}\" cy=\"{:.2}\" r=\"2\"/>", x.at(at), y.at(row.reference));
    }
    put!(svg, "</g>");
}

fn marks(svg: &mut String, check: &Check, tint: &str, x: &Axis, offs: &Axis) {
    put!(svg, "<g fill=\"{tint}\">");
    for row in check.rows.iter().filter(|row| row.reference != 0.0) {
        let Some(at) = row.at else { continue };
        let off = 100.0 * (row.judged() / row.reference - 1.0);
        if off.is_finite() {
            put!(svg, "<circle cx=\"{:.2}\" cy=\"{:.2}\" r=\"1.6\"/>", x.at(at), offs.at(off));
        }
    }
    put!(svg, "</g>");
}

/// The band of the first check, where it is one of per cent.
fn band(svg: &mut String, tolerance: Tolerance, offs: &Axis) {
    if let Tolerance::Relative(below, above) = tolerance {
        let top = offs.at(100.0 * above).clamp(OFFS.0, OFFS.1);
        let bottom = offs.at(100.0 * below).clamp(OFFS.0, OFFS.1);
        put!(
            svg,
            "<rect x=\"{LEFT}\" y=\"{top:.2}\" width=\"{}\" height=\"{:.2}\" fill=\"{WASH}\"/>",
            RIGHT - LEFT,
            bottom - top
        );
    }
    let zero = offs.at(0.0);
    put!(svg, "<path d=\"M{LEFT} {zero:.2}H{RIGHT}\" stroke=\"{INK}\" stroke-width=\"0.8\"/>");
}

fn legend(svg: &mut String, checks: &[&Check]) {
    let (mut at, mut high) = (LEFT, 42.0);
    for (k, check) in checks.iter().enumerate() {
        let wide = 26.0 + 5.3 * check.id.chars().count() as f64;
        if at + wide > WIDTH && at > LEFT {
            (at, high) = (LEFT, high + 15.0);
        }
        put!(
            svg,
            "<rect x=\"{at:.2}\" y=\"{high}\" width=\"10\" height=\"10\" fill=\"{}\"/>",
            tint(k)
        );
        put!(
            svg,
            "<text x=\"{:.2}\" y=\"{}\" font-size=\"10.5\">{}</text>",
            at + 14.0,
            high + 9.0,
            escape(&check.id)
        );
        at += wide;
    }
    put!(
        svg,
        "<text x=\"{LEFT}\" y=\"{:.2}\" font-size=\"11\" font-style=\"italic\">{}</text>",
        HEIGHT - 8.0,
        t!("plot-key")
    );
}
