//! The square-root law between manifold pressure and rate.

use super::rig::flow_between;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::fluid::Gas;
use crate::physics::orifice::hole_area_m2;
use crate::units::PA_PER_INWC;
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    vec![square_root(), published_pairs(), gravity()]
}

/// Discharge coefficient and diameter of a burner orifice; neither matters for a ratio.
fn orifice_m2() -> f64 {
    hole_area_m2(0.87, 2.2e-3)
}

fn rate(gas: Gas, inwc: f64) -> f64 {
    flow_between(gas, [inwc * PA_PER_INWC, 0.0], |b, from, to| b.opening(from, to, orifice_m2()))
}

/// Twice the rate needs four times the pressure.
fn square_root() -> Check {
    let mut rows = Vec::new();
    for (name, gas, rated) in
        [(t!("row-natural-gas"), Gas::natural(), 3.5), ("propane", Gas::propane(), 10.0)]
    {
        let at_rated = rate(gas, rated);
        for part in [0.1, 0.25, 0.5, 0.75, 0.9, 1.1, 1.25, 1.4] {
            let pressure: f64 = part * rated;
            let by_hand = 100.0 * part.sqrt();
            let found = 100.0 * rate(gas, pressure) / at_rated;
            let row = Row::new(
                t!("row-name-inwc", name = name, pressure = decimal(pressure, 2)),
                by_hand,
                found,
            );
            rows.push(row.on(name, pressure));
        }
    }
    check("closed.orifice.square-root", rows)
}

/// Pairs of pressures that manuals print, and the ratio of rates that goes with them.
fn published_pairs() -> Check {
    let rows = [
        (t!("row-natural-gas-1-5"), Gas::natural(), 1.5, 3.5, 65.9),
        (t!("row-natural-gas-1-7"), Gas::natural(), 1.7, 3.5, 70.0),
        (t!("row-propane-4-9-10"), Gas::propane(), 4.9, 10.0, 70.0),
    ]
    .into_iter()
    .map(|(name, gas, lower, upper, percent)| {
        Row::new(name, percent, 100.0 * rate(gas, lower) / rate(gas, upper))
    })
    .collect();
    check("closed.orifice.published-ratios", rows)
}

/// Against specific gravity the flow goes as its inverse square root.
fn gravity() -> Check {
    let of = |specific_gravity: f64| Gas { specific_gravity, ..Gas::natural() };
    let table_gas = rate(of(0.60), 3.5);
    // Multipliers of IFGC Table A.2.4, for specific gravities against 0.60.
    let rows = [
        (0.50, 1.10),
        (0.55, 1.04),
        (0.65, 0.96),
        (0.70, 0.93),
        (1.00, 0.78),
        (1.50, 0.63),
        (2.00, 0.55),
    ]
    .into_iter()
    .map(|(gravity, multiplier)| {
        Row::new(format!("{gravity:.2}"), multiplier, rate(of(gravity), 3.5) / table_gas)
            .on("", gravity)
    })
    .collect();
    check("closed.orifice.specific-gravity", rows)
}
