//! A preview as SVG: a panel for each test point, the job as found over the healthy bench.
//!
//! Squares on a full line are the job as found, rings on a broken line the healthy bench, so that the
//! picture reads without colour.

use std::fmt::Write;

use super::report::{Report, State};
use crate::chart::{Axis, INK, PALE, PAPER, Scale, WASH, escape, put};

const WIDTH: f64 = 640.0;
const LEFT: f64 = 84.0;
const RIGHT: f64 = 616.0;
/// Top of the first panel, height of one, and from one top to the next.
const TOP: f64 = 78.0;
const TALL: f64 = 130.0;
const PITCH: f64 = 172.0;

/// A test point: its words, its pressure, its key among what differs, bands of the plate by state.
struct Panel {
    words: &'static str,
    key: &'static str,
    pressure: fn(&State) -> f64,
    bands: Vec<(usize, usize, f64, f64)>,
}

/// An SVG of the pressures in each state, healthy and faulty, with the plate's bands.
pub(super) fn draw(report: &Report) -> String {
    let [inlet, manifold] = report.plate.allowed_inwc.each_ref().map(|states| joined(states));
    let panels = [
        Panel {
            words: t!("picture-supply"),
            key: "supply_inwc",
            pressure: |it| it.supply_inwc,
            bands: Vec::new(),
        },
        Panel {
            words: t!("picture-inlet"),
            key: "inlet_inwc",
            pressure: |it| it.inlet_inwc,
            bands: inlet,
        },
        Panel {
            words: t!("picture-manifold"),
            key: "manifold_inwc",
            pressure: |it| it.manifold_inwc,
            bands: manifold,
        },
    ];
    let tall = TOP + PITCH * 3.0 + 14.0;
    let mut svg = String::new();
    put!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {tall}\" \
         font-family=\"Georgia, 'Times New Roman', serif\" font-size=\"12\" fill=\"{INK}\">"
    );
    let seed = report.seed.to_string();
    let title = escape(&t!("picture-title", scenario = &report.scenario, seed = seed));
    put!(svg, "<title>{title}</title>");
    put!(svg, "<rect width=\"{WIDTH}\" height=\"{tall}\" fill=\"{PAPER}\"/>");
    put!(svg, "<text x=\"{LEFT}\" y=\"26\" font-size=\"15\">{title}</text>");
    key(&mut svg);
    for (k, panel) in panels.iter().enumerate() {
        one(&mut svg, report, panel, TOP + PITCH * k as f64);
    }
    svg.push_str("</svg>\n");
    svg
}

/// The bands of the states from left to right; neighbours that are alike become one.
fn joined(states: &[(f64, f64)]) -> Vec<(usize, usize, f64, f64)> {
    let mut bands: Vec<(usize, usize, f64, f64)> = Vec::new();
    for (state, &(lower, upper)) in states.iter().enumerate() {
        match bands.last_mut() {
            Some(last) if (last.2, last.3) == (lower, upper) => last.1 = state,
            Some(_) | None => bands.push((state, state, lower, upper)),
        }
    }
    bands
}

fn key(svg: &mut String) {
    square(svg, LEFT + 6.0, 44.0);
    put!(svg, "<text x=\"{}\" y=\"48\">{}</text>", LEFT + 18.0, t!("picture-found"));
    ring(svg, LEFT + 96.0, 44.0);
    put!(svg, "<text x=\"{}\" y=\"48\">{}</text>", LEFT + 108.0, t!("picture-healthy"));
}

/// The middle of a state's column.
fn column(report: &Report, state: usize) -> f64 {
    LEFT + (RIGHT - LEFT) * (state as f64 + 0.5) / report.states.len().max(1) as f64
}

/// One panel: bands of the plate and the scale, then the lines and points of both benches.
fn one(svg: &mut String, report: &Report, panel: &Panel, top: f64) {
    let both = || report.states.iter().chain(&report.healthy);
    let mut values: Vec<f64> = both().map(panel.pressure).collect();
    values.extend(panel.bands.iter().flat_map(|band| [band.2, band.3]));
    let Some(axis) = Axis::new(&values, Scale::Even, top + TALL, top) else { return };
    ground(svg, report, panel, &axis, top);
    line(svg, report, &report.healthy, panel, &axis, " stroke-dasharray=\"5 4\"");
    line(svg, report, &report.states, panel, &axis, "");
    points(svg, report, panel, &axis, top + TALL);
}

/// The bands that the plate allows, the scale and the frame.
fn ground(svg: &mut String, report: &Report, panel: &Panel, axis: &Axis, top: f64) {
    let half = (RIGHT - LEFT) / 2.0 / report.states.len().max(1) as f64;
    for &(from, to, lower, upper) in &panel.bands {
        put!(
            svg,
            "<rect x=\"{:.2}\" y=\"{:.2}\" width=\"{:.2}\" height=\"{:.2}\" fill=\"{WASH}\" \
             stroke=\"{INK}\" stroke-width=\"0.5\" stroke-dasharray=\"1 3\"/>",
            column(report, from) - half,
            axis.at(upper),
            column(report, to) - column(report, from) + 2.0 * half,
            axis.at(lower) - axis.at(upper)
        );
    }
    for (value, text) in axis.ticks() {
        let at = axis.at(value);
        put!(svg, "<path d=\"M{LEFT} {at:.2}H{RIGHT}\" stroke=\"{PALE}\" stroke-width=\"0.6\"/>");
        put!(
            svg,
            "<text x=\"{}\" y=\"{:.2}\" text-anchor=\"end\">{text}</text>",
            LEFT - 6.0,
            at + 4.0
        );
    }
    put!(
        svg,
        "<rect x=\"{LEFT}\" y=\"{top}\" width=\"{}\" height=\"{TALL}\" fill=\"none\" \
         stroke=\"{INK}\"/>",
        RIGHT - LEFT
    );
    put!(
        svg,
        "<text x=\"{LEFT}\" y=\"{}\" font-style=\"italic\">{}</text>",
        top - 6.0,
        panel.words
    );
}

/// The points of both benches, and each state under its column.
fn points(svg: &mut String, report: &Report, panel: &Panel, axis: &Axis, bottom: f64) {
    for (i, (it, right)) in report.states.iter().zip(&report.healthy).enumerate() {
        ring(svg, column(report, i), axis.at((panel.pressure)(right)));
        let at = axis.at((panel.pressure)(it));
        square(svg, column(report, i), at);
        let keys = report.differs.get(i);
        if keys.is_some_and(|keys| keys.contains(&panel.key)) {
            put!(
                svg,
                "<text x=\"{:.2}\" y=\"{:.2}\">* {:.2}</text>",
                column(report, i) + 9.0,
                at - 6.0,
                (panel.pressure)(it)
            );
        }
        put!(
            svg,
            "<text x=\"{:.2}\" y=\"{:.2}\" text-anchor=\"middle\">{}</text>",
            column(report, i),
            bottom + 16.0,
            escape(&it.state)
        );
    }
}

fn line(
    svg: &mut String,
    report: &Report,
    states: &[State],
    panel: &Panel,
    axis: &Axis,
    dashes: &str,
) {
    let mut path = String::new();
    for (i, it) in states.iter().enumerate() {
        let letter = if i == 0 { 'M' } else { 'L' };
        let _ =
            write!(path, "{letter}{:.2} {:.2}", column(report, i), axis.at((panel.pressure)(it)));
    }
    put!(svg, "<path d=\"{path}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1.1\"{dashes}/>");
}

fn square(svg: &mut String, x: f64, y: f64) {
    put!(svg, "<rect x=\"{:.2}\" y=\"{:.2}\" width=\"6\" height=\"6\"/>", x - 3.0, y - 3.0);
}

fn ring(svg: &mut String, x: f64, y: f64) {
    put!(
        svg,
        "<circle cx=\"{x:.2}\" cy=\"{y:.2}\" r=\"5\" fill=\"none\" stroke=\"{INK}\" \
         stroke-width=\"1.2\"/>"
    );
}
