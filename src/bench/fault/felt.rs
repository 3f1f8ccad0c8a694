//! Whether a fault can be felt at all: whether anything that is read, seen, heard or smelt differs
//! from a sound bench by as much as the instrument for it shows.
//!
//! **Method.** The bench with this one fault, and the same bench without any, are measured at every
//! test point ([`super::pattern`]), with the hose on each port in turn, and looked at from every
//! place. What differs by less than a resolution below is the same.
//! **Left out.** How fast a number comes, and what shows after hours only.

use super::Fault;
use super::pattern::{Hands, Pattern, Point, measure};
use crate::bench::Bench;
use crate::bench::action::Action;
use crate::bench::part::{Place, Port, Subject};
use crate::bench::seen::Display;
use crate::bench::setup::Setup;
use crate::units::PA_PER_INWC;

/// A pressure, in pascals (0.1 in. w.c., a digit of the trade's ordinary meters).
const PRESSURE_PA: f64 = 0.1 * PA_PER_INWC;
/// A rate, as a share of the plate's input (a dial timed with a stopwatch; common practice).
const RATE: f64 = 0.03;
/// A flame current, in microamperes.
const FLAME_UA: f64 = 0.3;
/// A temperature rise, in kelvins (5 °F; common practice).
const RISE_K: f64 = 2.8;
/// Carbon monoxide, in parts per million air-free.
const CO_PPM: f64 = 25.0;
/// Excess air, as a fraction (two tenths of a per cent of oxygen, a flue analyser's ordinary error).
const EXCESS_AIR: f64 = 0.03;
/// A draft, in pascals (0.05 in. w.c.).
const DRAFT_PA: f64 = 0.05 * PA_PER_INWC;
/// Gas out of a regulator's vent, in standard m³/s: less is not smelt beside it.
const VENTED_M3_S: f64 = 1e-6;
/// Gas out of a joint, in standard m³/s: leak fluid shows very little.
const LEAK_M3_S: f64 = 1e-7;
/// Gas in the air, as a fraction (about 1 % of the lower flammable limit, the last digit of an
/// ordinary detector).
const GAS: f64 = 3.0e-4;

/// Whether a fault of this severity, alone on a sound bench, can be felt there.
#[must_use]
pub fn is_felt(sound: &Setup, fault: Fault, severity: f64) -> bool {
    let mut faulty = sound.clone();
    fault.apply(&mut faulty, severity);
    looks(sound) != looks(&faulty)
        || Port::ALL.iter().any(|&port| {
            let of = |setup: &Setup| measure(setup.clone(), Hands::OpenUp, Some(port));
            differ(&of(sound), &of(&faulty))
        })
}

/// What eyes, ears and nose get on arrival, everywhere.
fn looks(setup: &Setup) -> Vec<String> {
    let mut bench = Bench::new(setup.clone());
    let mut words = Vec::new();
    for place in Place::ALL {
        // What cannot be done or looked at from here is refused.
        let _ = bench.apply(&Action::Go(*place));
        for subject in Subject::ALL {
            let _ = bench.apply(&Action::Look(*subject));
        }
        let seen = bench.seen();
        words.push(format!("{:?} {:?} {:?}", seen.smell, seen.sounds, seen.furnace));
    }
    // The figure on the dial is where it happens to stand.
    let notes = bench.seen().sheet.notes.into_iter();
    words.extend(notes.filter(|it| it.subject != Subject::MeterDial).map(|it| it.text));
    words
}

fn differ(one: &Pattern, other: &Pattern) -> bool {
    one.signs != other.signs
        || one.points.iter().zip(&other.points).any(|(one, other)| points_differ(one, other))
}

fn points_differ(one: &Point, other: &Point) -> bool {
    let shown = match (one.display, other.display) {
        (Display::Number(one), Display::Number(other)) => {
            one.unit != other.unit || (one.pa() - other.pa()).abs() > PRESSURE_PA
        }
        (one, other) => one != other,
    };
    let far = |(one, other, resolution): &(f64, f64, f64)| (one - other).abs() > *resolution;
    let states = one.missed != other.missed || one.truth.firing != other.truth.firing;
    shown || states || numbers(one, other).iter().any(far)
}

/// What there is to compare at a test point: this, that, and by how much they must differ.
fn numbers(one: &Point, other: &Point) -> Vec<(f64, f64, f64)> {
    let (a, b) = (&one.truth, &other.truth);
    let air = |air: Option<f64>| air.unwrap_or(0.0);
    let mut all = vec![
        (a.supply_pa, b.supply_pa, PRESSURE_PA),
        (a.input_w / one.rated_w.max(1.0), b.input_w / other.rated_w.max(1.0), RATE),
        (a.flame_ua, b.flame_ua, FLAME_UA),
        (a.rise_k, b.rise_k, RISE_K),
        (a.co_air_free_ppm, b.co_air_free_ppm, CO_PPM),
        (air(a.excess_air), air(b.excess_air), EXCESS_AIR),
        (a.draft_pa, b.draft_pa, DRAFT_PA),
        (a.vented_m3_s, b.vented_m3_s, VENTED_M3_S),
        (a.connector_leak_m3_s, b.connector_leak_m3_s, LEAK_M3_S),
    ];
    for (a, b) in one.swing_pa.iter().zip(&other.swing_pa) {
        all.extend([(a.0, b.0, PRESSURE_PA), (a.1, b.1, PRESSURE_PA)]);
    }
    all.extend(a.leak_m3_s.iter().zip(&b.leak_m3_s).map(|(a, b)| (*a, *b, LEAK_M3_S)));
    all.extend(a.gas_fraction.iter().zip(&b.gas_fraction).map(|(a, b)| (*a, *b, GAS)));
    all
}
