//! What was heard, as a score: captions over level over spectrum, on one axis of time.

use std::fmt::Write;

use super::bands::{BANDS, bands, db, nominal, power};
use super::listener::{Listener, RATE_HZ};
use crate::chart::{Axis, INK, PALE, PAPER, Scale, escape, put};
use crate::sound::moment::Moment;
use crate::sound::voice::Voice;

const WIDTH: f64 = 900.0;
const LEFT: f64 = 216.0;
const RIGHT: f64 = 876.0;
/// Top of the captions, and height of a row of them.
const TOP: f64 = 56.0;
const ROW: f64 = 17.0;
/// Height of the curve, of a band of the spectrum, and of the gap between panels.
const CURVE: f64 = 110.0;
const BAND: f64 = 8.0;
const GAP: f64 = 26.0;
/// Columns of the spectrum, and points of the curve.
const COLUMNS: usize = 165;
const POINTS: usize = 660;
/// Levels between which the spectrum is shaded, in decibels, and steps of it.
const PALEST_DB: f64 = -90.0;
const STEP_DB: f64 = 10.0;
const SHADES: [&str; 7] =
    ["#eef1ec", "#d5e0e3", "#b3c8d3", "#86a8bd", "#5a86a3", "#356486", "#1d4465"];
const BAR: &str = "#2f6f9f";
const DOT: &str = "#b5651d";

/// An SVG of what was heard.
pub(super) fn draw(scenario: &str, heard: &Listener) -> String {
    let seconds = heard.seconds().max(1.0);
    let time = Axis::between(0.0, seconds, Scale::Even, LEFT, RIGHT);
    let voices: Vec<Voice> = Voice::ALL
        .into_iter()
        .filter(|voice| heard.captioned.iter().any(|(other, ..)| other == voice))
        .collect();
    let moments: Vec<Moment> = Moment::ALL
        .into_iter()
        .filter(|moment| heard.moments.iter().any(|(other, _)| other == moment))
        .collect();
    let rows = (voices.len() + moments.len()) as f64;
    let curve = TOP + ROW * rows + GAP;
    let spectrum = curve + CURVE + GAP;
    let foot = spectrum + BAND * BANDS as f64;
    let tall = foot + 84.0;
    let mut svg = String::new();
    put!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {tall}\" \
         font-family=\"Georgia, 'Times New Roman', serif\" font-size=\"12\" fill=\"{INK}\">"
    );
    let title = escape(&t!("sound-cycle-title", scenario = scenario));
    put!(svg, "<title>{title}</title>");
    put!(svg, "<rect width=\"{WIDTH}\" height=\"{tall}\" fill=\"{PAPER}\"/>");
    put!(svg, "<text x=\"24\" y=\"28\" font-size=\"15\">{title}</text>");
    for (_, at) in time.ticks().iter().map(|(value, _)| (value, time.at(*value))) {
        put!(svg, "<path d=\"M{at:.2} {TOP}V{foot}\" stroke=\"{PALE}\" stroke-width=\"0.6\"/>");
    }
    captions(&mut svg, heard, &voices, &moments, &time);
    level(&mut svg, heard, &time, curve);
    shades(&mut svg, heard, spectrum);
    feet(&mut svg, &time, foot);
    svg.push_str("</svg>\n");
    svg
}

/// A row for each caption: a bar as long as it stands, a dot where it is one of a moment.
fn captions(svg: &mut String, heard: &Listener, voices: &[Voice], moments: &[Moment], time: &Axis) {
    let row = |k: usize| TOP + ROW * k as f64;
    let name = |svg: &mut String, k: usize, words: &str| {
        put!(
            svg,
            "<text x=\"{}\" y=\"{:.2}\" text-anchor=\"end\">{}</text>",
            LEFT - 8.0,
            row(k) + 0.72 * ROW,
            escape(words)
        );
    };
    for (k, voice) in voices.iter().enumerate() {
        name(svg, k, voice.caption());
        for (_, from, to) in heard.captioned.iter().filter(|(other, ..)| other == voice) {
            put!(
                svg,
                "<rect x=\"{:.2}\" y=\"{:.2}\" width=\"{:.2}\" height=\"9\" fill=\"{BAR}\"/>",
                time.at(*from),
                row(k) + 4.0,
                (time.at(*to) - time.at(*from)).max(1.0)
            );
        }
    }
    for (k, moment) in moments.iter().enumerate() {
        let k = voices.len() + k;
        name(svg, k, moment.caption());
        for (_, at) in heard.moments.iter().filter(|(other, _)| other == moment) {
            let (x, y) = (time.at(*at), row(k) + 0.5 * ROW);
            put!(svg, "<circle cx=\"{x:.2}\" cy=\"{y:.2}\" r=\"2.6\" fill=\"{DOT}\"/>");
        }
    }
    frame(svg, TOP - 2.0, ROW * (voices.len() + moments.len()) as f64 + 4.0);
}

/// The level over time: the loudest tenth of a second of each point.
fn level(svg: &mut String, heard: &Listener, time: &Axis, top: f64) {
    let axis = Axis::between(-80.0, 0.0, Scale::Even, top + CURVE, top);
    for (value, text) in axis.ticks() {
        let y = axis.at(value);
        put!(svg, "<path d=\"M{LEFT} {y:.2}H{RIGHT}\" stroke=\"{PALE}\" stroke-width=\"0.6\"/>");
        put!(
            svg,
            "<text x=\"{}\" y=\"{:.2}\" text-anchor=\"end\">{text}</text>",
            LEFT - 8.0,
            y + 4.0
        );
    }
    let tenth = RATE_HZ as usize / 10;
    let per = heard.samples.len().div_ceil(POINTS).max(tenth);
    let mut path = String::new();
    for (k, part) in heard.samples.chunks(per).enumerate() {
        let loudest = part.chunks(tenth).map(power).fold(0.0, f64::max);
        let at = (k as f64 + 0.5) * per as f64 / f64::from(RATE_HZ);
        let (x, y) = (time.at(at.min(heard.seconds())), axis.at(db(loudest).clamp(-80.0, 0.0)));
        let _ = write!(path, "{}{x:.2} {y:.2}", if k == 0 { 'M' } else { 'L' });
    }
    put!(svg, "<path d=\"{path}\" fill=\"none\" stroke=\"{INK}\" stroke-width=\"1\"/>");
    frame(svg, top, CURVE);
    side(svg, top + 0.5 * CURVE, t!("sound-level"));
}

/// The spectrum over time, in shades; neighbors of one shade become one.
fn shades(svg: &mut String, heard: &Listener, top: f64) {
    let per = heard.samples.len().div_ceil(COLUMNS).max(1);
    let columns: Vec<[f64; BANDS]> =
        heard.samples.chunks(per).map(|part| bands(part, RATE_HZ)).collect();
    let wide = (RIGHT - LEFT) / columns.len().max(1) as f64;
    let foot = top + BAND * BANDS as f64;
    for band in 0..BANDS {
        let y = foot - BAND * (band + 1) as f64;
        let row: Vec<Option<usize>> = columns.iter().map(|column| shade(column[band])).collect();
        let mut from = 0;
        for run in row.chunk_by(|a, b| a == b) {
            if let Some(color) = run.first().copied().flatten().and_then(|k| SHADES.get(k)) {
                put!(
                    svg,
                    "<rect x=\"{:.2}\" y=\"{y:.2}\" width=\"{:.2}\" height=\"{:.2}\" \
                     fill=\"{color}\"/>",
                    LEFT + wide * from as f64,
                    // Neighbors overlap a little, so that no paper shines through between them.
                    wide * run.len() as f64 + 0.4,
                    BAND + 0.4
                );
            }
            from += run.len();
        }
        if let Some(name) = nominal(band) {
            put!(
                svg,
                "<text x=\"{}\" y=\"{:.2}\" text-anchor=\"end\">{name}</text>",
                LEFT - 8.0,
                y + BAND
            );
        }
    }
    frame(svg, top, foot - top);
    side(svg, 0.5 * (top + foot), t!("sound-band"));
}

/// The step of shade of a power; none below the palest.
fn shade(power: f64) -> Option<usize> {
    let step = libm::floor((db(power) - PALEST_DB) / STEP_DB);
    (step >= 0.0).then_some((step as usize).min(SHADES.len() - 1))
}

/// Seconds at the foot, and what the shades mean.
fn feet(svg: &mut String, time: &Axis, foot: f64) {
    for (value, text) in time.ticks() {
        let x = time.at(value);
        let y = foot + 16.0;
        put!(svg, "<text x=\"{x:.2}\" y=\"{y:.2}\" text-anchor=\"middle\">{text}</text>");
    }
    let middle = 0.5 * (LEFT + RIGHT);
    let y = foot + 34.0;
    put!(svg, "<text x=\"{middle}\" y=\"{y}\" text-anchor=\"middle\">{}</text>", t!("sound-time"));
    let y = foot + 50.0;
    for (k, color) in SHADES.iter().enumerate() {
        let x = LEFT + 44.0 * k as f64;
        put!(svg, "<rect x=\"{x}\" y=\"{y}\" width=\"44\" height=\"9\" fill=\"{color}\"/>");
        let level = PALEST_DB + STEP_DB * k as f64;
        put!(
            svg,
            "<text x=\"{x}\" y=\"{}\" text-anchor=\"middle\" font-size=\"11\">{}</text>",
            y + 21.0,
            crate::chart::figure(level)
        );
    }
    let x = LEFT + 44.0 * SHADES.len() as f64 + 10.0;
    put!(svg, "<text x=\"{x}\" y=\"{}\">{}</text>", y + 9.0, t!("sound-shade"));
}

fn frame(svg: &mut String, top: f64, tall: f64) {
    put!(
        svg,
        "<rect x=\"{LEFT}\" y=\"{top}\" width=\"{}\" height=\"{tall}\" fill=\"none\" \
         stroke=\"{INK}\"/>",
        RIGHT - LEFT
    );
}

fn side(svg: &mut String, middle: f64, words: &str) {
    put!(
        svg,
        "<text transform=\"translate(150 {middle}) rotate(-90)\" text-anchor=\"middle\">{}</text>",
        escape(words)
    );
}
