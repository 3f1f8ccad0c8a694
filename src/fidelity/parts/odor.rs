//! When gas is smelt.

use super::CHAPTER;
use crate::fidelity::{Check, Row, Tolerance, Truth};
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
    for (name, gas) in [("natural gas", Gas::natural()), ("propane", Gas::propane())] {
        let fifth = 100.0 * gas.lower_limit / 5.0;
        for (strength, kind) in
            [("a whiff", Strength::Faint), ("plain", Strength::Clear), ("strong", Strength::Strong)]
        {
            let found = 100.0 * gas.lower_limit * smelt_at(kind);
            rows.push(Row::new(format!("{name}, {strength}"), fifth, found));
        }
    }
    Check {
        id: "parts.odor.legal-bound".into(),
        chapter: CHAPTER,
        claim: "A fresh nose smells odorised gas at or below a fifth of its lower flammable limit.".into(),
        truth: Truth::Published,
        source: "49 CFR 192.625 (distribution gas); 46 CFR 58.16-25 and NFPA 58 (LP-gas); limits of NFPA 325 and NFPA 58".into(),
        condition: "full odorant, fresh nose".into(),
        tolerance: Tolerance::AtMost,
        reason: "A limit.".into(),
        unit: "% gas in air",
        rows,
        known_miss: None,
    }
}

fn stricter() -> Check {
    let found = 100.0 * Gas::natural().lower_limit * smelt_at(Strength::Faint);
    Check {
        id: "parts.odor.stricter-state".into(),
        chapter: CHAPTER,
        claim: "A fresh nose also meets the stricter rule of one state.".into(),
        truth: Truth::Published,
        source: "ASTM D6273, note on Massachusetts: 0.15 % gas in air".into(),
        condition: "natural gas, full odorant, fresh nose, first whiff".into(),
        tolerance: Tolerance::AtMost,
        reason: "A limit.".into(),
        unit: "% gas in air",
        rows: vec![Row::new("natural gas, a whiff", 0.15, found)],
        known_miss: None,
    }
}
