//! When gas is smelt.

use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::fluid::Gas;
use crate::physics::room::{Nose, Odorant, Strength};

pub(super) fn checks() -> Vec<Check> {
    vec![legal(), stricter()]
}

/// The least share of the lower limit at which a fresh nose smells at least `wanted`.
fn smelt_at(wanted: Strength) -> f64 {
    let (nose, odorant) = (Nose::default(), Odorant::default());
    (1..=2_000)
        .map(|k| f64::from(k) * 1e-3)
        .find(|&share| nose.smells(share, &odorant) >= wanted)
        .unwrap_or(f64::INFINITY)
}

fn legal() -> Check {
    let mut rows = Vec::new();
    for (name, gas) in [(t!("row-natural-gas"), Gas::natural()), ("propane", Gas::propane())] {
        let fifth = 100.0 * gas.lower_limit / 5.0;
        for (strength, kind) in [
            (t!("row-whiff"), Strength::Faint),
            ("plain", Strength::Clear),
            ("strong", Strength::Strong),
        ] {
            let found = 100.0 * gas.lower_limit * smelt_at(kind);
            rows.push(Row::new(format!("{name}, {strength}"), fifth, found));
        }
    }
    check("parts.odor.legal-bound", rows)
}

fn stricter() -> Check {
    let found = 100.0 * Gas::natural().lower_limit * smelt_at(Strength::Faint);
    check("parts.odor.stricter-state", vec![Row::new(t!("row-natural-gas-whiff"), 0.15, found)])
}
