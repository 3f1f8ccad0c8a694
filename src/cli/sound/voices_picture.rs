//! Every voice at full loudness: its level in each third of an octave.

use std::fmt::Write;

use super::bands::{BANDS, bands, db, nominal};
use super::listener::RATE_HZ;
use crate::chart::{Axis, INK, PALE, PAPER, Scale, WASH, escape, put};
use crate::sound::soundscape::{Distance, Soundscape};
use crate::sound::synth::Synth;
use crate::sound::voice::Voice;

const WIDTH: f64 = 760.0;
/// Left edge of a column of panels, width and height of a panel, and from one to the next.
const LEFT: f64 = 62.0;
const WIDE: f64 = 300.0;
const TALL: f64 = 112.0;
const PITCH: (f64, f64) = (372.0, 168.0);
const TOP: f64 = 66.0;
/// Levels that a panel shows, in decibels of full scale.
const SHOWN: (f64, f64) = (-90.0, -10.0);
/// How long a voice is listened to: longer than the alarm's call.
const SECONDS: usize = 6;

/// An SVG of the voices.
pub(super) fn draw() -> String {
    let rows = Voice::ALL.len().div_ceil(2) as f64;
    let tall = TOP + PITCH.1 * rows + 8.0;
    let mut svg = String::new();
    put!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} {tall}\" \
         font-family=\"Georgia, 'Times New Roman', serif\" font-size=\"12\" fill=\"{INK}\">"
    );
    let title = escape(t!("sound-voices-title"));
    put!(svg, "<title>{title}</title>");
    put!(svg, "<rect width=\"{WIDTH}\" height=\"{tall}\" fill=\"{PAPER}\"/>");
    put!(svg, "<text x=\"24\" y=\"28\" font-size=\"15\">{title}</text>");
    for (k, voice) in Voice::ALL.into_iter().enumerate() {
        let left = LEFT + PITCH.0 * (k % 2) as f64;
        let top = TOP + PITCH.1 * (k / 2) as f64;
        panel(&mut svg, voice, left, top);
    }
    svg.push_str("</svg>\n");
    svg
}

/// Power of a voice by band, the ear at the burner compartment, everything at its full rate.
fn heard(voice: Voice) -> [f64; BANDS] {
    let mut scape = Soundscape {
        inducer: 1.0,
        blower: 1.0,
        firing: 1.0,
        furnace: Distance::AtHand,
        ..Soundscape::default()
    };
    scape.level[voice] = 1.0;
    let mut synth = Synth::new(RATE_HZ, 1);
    synth.set_volume(100);
    synth.hear(&scape);
    let mut samples = vec![0.0; (SECONDS + 1) * RATE_HZ as usize];
    synth.fill(&mut samples);
    bands(&samples[RATE_HZ as usize..], RATE_HZ)
}

fn panel(svg: &mut String, voice: Voice, left: f64, top: f64) {
    let foot = top + TALL;
    let level = Axis::between(SHOWN.0, SHOWN.1, Scale::Even, foot, top);
    put!(
        svg,
        "<text x=\"{left}\" y=\"{}\" font-style=\"italic\">{}</text>",
        top - 7.0,
        escape(voice.caption())
    );
    for value in [-80.0, -60.0, -40.0, -20.0] {
        let y = level.at(value);
        put!(svg, "<path d=\"M{left} {y:.2}h{WIDE}\" stroke=\"{PALE}\" stroke-width=\"0.6\"/>");
        put!(
            svg,
            "<text x=\"{}\" y=\"{:.2}\" text-anchor=\"end\">{value}</text>",
            left - 6.0,
            y + 4.0
        );
    }
    let wide = WIDE / BANDS as f64;
    for (band, power) in heard(voice).into_iter().enumerate() {
        let y = level.at(db(power).clamp(SHOWN.0, SHOWN.1));
        let x = left + wide * band as f64;
        if foot - y > 0.01 {
            put!(
                svg,
                "<rect x=\"{x:.2}\" y=\"{y:.2}\" width=\"{wide:.2}\" height=\"{:.2}\" \
                 fill=\"{WASH}\" stroke=\"{INK}\" stroke-width=\"0.6\"/>",
                foot - y
            );
        }
        // Every other octave has its name.
        if let Some(name) = nominal(band).filter(|_| band.is_multiple_of(6)) {
            put!(
                svg,
                "<text x=\"{:.2}\" y=\"{}\" text-anchor=\"middle\">{name}</text>",
                x + 0.5 * wide,
                foot + 15.0
            );
        }
    }
    put!(
        svg,
        "<rect x=\"{left}\" y=\"{top}\" width=\"{WIDE}\" height=\"{TALL}\" fill=\"none\" \
         stroke=\"{INK}\"/>"
    );
    let middle = left + 0.5 * WIDE;
    put!(
        svg,
        "<text x=\"{middle}\" y=\"{}\" text-anchor=\"middle\">{}</text>",
        foot + 30.0,
        t!("sound-band")
    );
    let side = 0.5 * (top + foot);
    put!(
        svg,
        "<text transform=\"translate({} {side}) rotate(-90)\" text-anchor=\"middle\">{}</text>",
        left - 38.0,
        t!("sound-shade")
    );
}
