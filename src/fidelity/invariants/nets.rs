//! Questions to a gas network.

use super::shape::{Built, LinkKind, SEED, Shape};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::rng::{Stream, stream};
use crate::units::{P_STD_PA, TICK_S};

/// Networks drawn for each question.
const SHAPES: u32 = 40;
/// Steps of each run.
const STEPS: u32 = 60;
/// Least flow that a share of the throughput is taken of, in standard m³/s (0.01 cm³/s).
const LEAST_FLOW: f64 = 1e-8;

pub(super) fn checks() -> Vec<Check> {
    vec![balance_check(), bounds_check(), opening_check(), order_check(), reversal_check()]
}

/// The worst of a question over the drawn shapes.
fn worst(name: &str, question: impl Fn(&Shape, &mut Stream) -> f64) -> f64 {
    let mut draws = stream(SEED, name);
    let mut worst = 0.0_f64;
    for _ in 0..SHAPES {
        let shape = Shape::drawn(&mut draws);
        let found = question(&shape, &mut draws);
        // A result that is no number is the worst there is.
        worst = if found.is_nan() { f64::INFINITY } else { worst.max(found) };
    }
    worst
}

fn largest_flow(built: &Built) -> f64 {
    (0..built.elements.len()).map(|k| built.flow_m3_s(k).abs()).fold(LEAST_FLOW, f64::max)
}

/// The worst imbalance of any volume in any step, as a share of the largest flow: what it holds
/// more, against what flowed in and out.
#[must_use]
pub fn imbalance(shape: &Shape) -> f64 {
    let mut built = shape.built();
    let first = shape.sources.len();
    let mut worst = 0.0_f64;
    let mut before: Vec<f64> = (0..shape.places()).map(|k| built.pressure_pa(k)).collect();
    for step in 0..STEPS {
        if step == STEPS / 2 {
            open_all(shape, &mut built, 0.3);
        }
        built.network.step(TICK_S);
        let throughput = largest_flow(&built) * TICK_S;
        for (k, volume) in shape.volumes.iter().enumerate() {
            let place = first + k;
            let now = built.pressure_pa(place);
            let mut gained = 0.0;
            for (link, ends) in shape.links.iter().enumerate() {
                let flow = built.flow_m3_s(link) * TICK_S;
                gained += if ends.to == place { flow } else { 0.0 };
                gained -= if ends.from == place { flow } else { 0.0 };
            }
            let held = volume.m3 / P_STD_PA * (now - before.get(place).copied().unwrap_or(now));
            // A pressure is known to its last digit only.
            let digit = volume.m3 / P_STD_PA * 4.0 * f64::EPSILON * now.abs();
            worst = worst.max(((gained - held).abs() - digit) / throughput);
            if let Some(slot) = before.get_mut(place) {
                *slot = now;
            }
        }
    }
    worst
}

/// Sets every opening to a share of its area.
fn open_all(shape: &Shape, built: &mut Built, share: f64) {
    for (link, &element) in shape.links.iter().zip(&built.elements) {
        if let LinkKind::Hole(area_m2) = link.kind {
            built.network.set_opening(element, share * area_m2);
        }
    }
}

/// How far, in pascals, a pressure leaves the range of its own last value and its neighbours'
/// present ones in any step; nothing when the gas only flows from high to low.
#[must_use]
pub fn overshoot_pa(shape: &Shape) -> f64 {
    let mut built = shape.built();
    let mut worst = 0.0_f64;
    for _ in 0..STEPS {
        let before: Vec<f64> = (0..shape.places()).map(|k| built.pressure_pa(k)).collect();
        built.network.step(TICK_S);
        for place in shape.sources.len()..shape.places() {
            let own = before.get(place).copied().unwrap_or(0.0);
            let (mut lower, mut upper) = (own, own);
            for link in &shape.links {
                let other = if link.from == place {
                    link.to
                } else if link.to == place {
                    link.from
                } else {
                    continue;
                };
                lower = lower.min(built.pressure_pa(other));
                upper = upper.max(built.pressure_pa(other));
            }
            let now = built.pressure_pa(place);
            worst = worst.max(now - upper).max(lower - now);
        }
    }
    worst
}

/// How much, as a share of the largest flow anywhere, any opening passes less at rest after it was
/// opened more.
///
/// A regulator that is fed from behind stands apart: it opens as its outlet falls, so that gas may
/// rush out backwards once its outlet comes below the set point (two states at rest, as on the real
/// thing). A state in which one flows backwards is not compared.
#[must_use]
pub fn fall_on_opening(shape: &Shape) -> f64 {
    let mut worst = 0.0_f64;
    for (k, link) in shape.links.iter().enumerate() {
        let LinkKind::Hole(area_m2) = link.kind else { continue };
        let mut built = shape.built();
        let mut last: Option<f64> = None;
        for share in [0.1, 0.5, 1.0, 4.0] {
            if let Some(&element) = built.elements.get(k) {
                built.network.set_opening(element, share * area_m2);
            }
            built.network.settle(1e9);
            let flow = built.flow_m3_s(k);
            if flows_backwards(shape, &built) {
                break;
            }
            if let Some(last) = last {
                let forward = if last < 0.0 { -1.0 } else { 1.0 };
                worst = worst.max(forward * (last - flow) / largest_flow(&built));
            }
            last = Some(flow);
        }
    }
    worst
}

/// Whether gas goes backwards through a regulator.
fn flows_backwards(shape: &Shape, built: &Built) -> bool {
    shape.links.iter().enumerate().any(|(k, link)| match link.kind {
        LinkKind::Regulator(..) => built.flow_m3_s(k) < 0.0,
        LinkKind::Hole(_) | LinkKind::Pipe(..) | LinkKind::Tubing(..) => false,
    })
}

/// The largest difference of pressures, against the highest of them, and of flows, against the
/// largest, between the shape in its own order and in another.
#[must_use]
pub fn order_effect(shape: &Shape, places: &[usize], links: &[usize]) -> f64 {
    let (mut plain, mut mixed) = (shape.built(), shape.build(places, links));
    let mut worst = 0.0_f64;
    for _ in 0..STEPS {
        plain.network.step(TICK_S);
        mixed.network.step(TICK_S);
        worst = worst.max(difference(shape, &plain, &mixed, 1.0));
    }
    worst
}

/// The same between the shape and itself with its links turned round.
#[must_use]
pub fn turning_effect(shape: &Shape) -> f64 {
    let (mut plain, mut turned) = (shape.built(), shape.turned().built());
    let mut worst = 0.0_f64;
    for _ in 0..STEPS {
        plain.network.step(TICK_S);
        turned.network.step(TICK_S);
        worst = worst.max(difference(shape, &plain, &turned, -1.0));
    }
    worst
}

/// Largest difference of two runs, relative; `sign` is that of flows through turned links.
fn difference(shape: &Shape, a: &Built, b: &Built, sign: f64) -> f64 {
    let places = 0..shape.places();
    let highest = places.clone().map(|k| a.pressure_pa(k).abs()).fold(1.0, f64::max);
    let pressures =
        places.map(|k| (a.pressure_pa(k) - b.pressure_pa(k)).abs() / highest).fold(0.0, f64::max);
    let largest = largest_flow(a);
    let flows = shape.links.iter().enumerate().map(|(k, link)| {
        let sign = match link.kind {
            LinkKind::Regulator(..) => 1.0,
            LinkKind::Hole(_) | LinkKind::Pipe(..) | LinkKind::Tubing(..) => sign,
        };
        (a.flow_m3_s(k) - sign * b.flow_m3_s(k)).abs() / largest
    });
    flows.fold(pressures, f64::max)
}

/// The numbers below `count` in an order drawn from a stream.
fn shuffled(draws: &mut Stream, count: usize) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    for k in (1..count).rev() {
        let other = draws.below(u32::try_from(k + 1).unwrap_or(1)) as usize;
        order.swap(k, other);
    }
    order
}

/// A check on the drawn networks.
fn drawn(id: &str, row: Row) -> Check {
    check(id, vec![row]).fill("count", &SHAPES.to_string())
}

fn balance_check() -> Check {
    let found = worst("fidelity.balance", |shape, _| imbalance(shape));
    drawn("invariants.net.balance", Row::new(t!("row-worst-volume-any-step"), 1e-9, found))
}

fn bounds_check() -> Check {
    let found = worst("fidelity.bounds", |shape, _| overshoot_pa(shape));
    drawn("invariants.net.between", Row::new(t!("row-worst-place-any-step"), 1e-3, found))
}

fn opening_check() -> Check {
    let found = worst("fidelity.opening", |shape, _| fall_on_opening(shape));
    drawn("invariants.net.opening", Row::new(t!("row-worst-opening-tenth-fourfold"), 1e-9, found))
}

fn order_check() -> Check {
    let found = worst("fidelity.order", |shape, draws| {
        let places = shuffled(draws, shape.places());
        let links = shuffled(draws, shape.links.len());
        order_effect(shape, &places, &links)
    });
    drawn("invariants.net.order", Row::new(t!("row-worst-pressure-flow-any"), 1e-9, found))
}

fn reversal_check() -> Check {
    let found = worst("fidelity.reversal", |shape, _| turning_effect(shape));
    drawn("invariants.net.reversal", Row::new(t!("row-worst-pressure-flow-any"), 1e-9, found))
}
