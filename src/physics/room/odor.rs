//! What a nose makes of gas in the air.
//!
//! **Equation.** Felt share of the lower limit `x = y·(1 − tired)` with `y = c/LFL · odorant`;
//! tiredness goes first-order to `0.9·y/(y + 0.1)`, in 180 s, and back in 600 s. Faint, clear and
//! strong from `x` = 0.02, 0.08 and 0.2.
//! **Assumptions.** Smell goes with concentration; one nose stands for all.
//! **Valid range.** Any concentration.
//! **Regularisation.** None; tiredness stays below 0.9.
//! **Source.** Odorised gas must be readily detectable at a fifth of the lower limit (49 CFR
//! 192.625; LP-gas 46 CFR 58.16-25 and NFPA 58). A fresh nose smells about a fiftieth: from memory,
//! a parameter. Noses tire within minutes and recover more slowly: from memory.
//! **Left out.** Masking smells, colds, age, the odorant's own chemistry.
//! **Checked.** `tests/core/appliance/room.rs`: the legal bound in
//! `a_fresh_nose_keeps_the_legal_bound()`, `a_nose_tires_and_recovers()`.

use serde::Serialize;

/// How strongly it smells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default, Serialize)]
pub enum Strength {
    /// No smell of gas.
    #[default]
    None,
    /// A whiff that must be sniffed for.
    Faint,
    /// A smell that nobody overlooks.
    Clear,
    /// Strong: what the law asks for at a fifth of the lower flammable limit, with a rested nose.
    Strong,
}

/// Tiring and recovery, in seconds.
const TIRES_S: f64 = 180.0;
const RECOVERS_S: f64 = 600.0;
/// Most of a nose's keenness that can be lost, and the exposure at which half of that is.
const TIRED_MOST: f64 = 0.9;
const TIRED_HALF: f64 = 0.1;

/// Odour of the gas: shares of the lower flammable limit at which a fresh nose smells it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Odorant {
    /// From here on [`Strength::Faint`].
    pub faint_at: f64,
    /// From here on [`Strength::Clear`].
    pub clear_at: f64,
    /// Strong; at most the legal fifth.
    pub strong_at: f64,
    /// Odorant left, against fresh gas (it fades in new pipe and in long storage), 0–1.
    pub left: f64,
}

impl Default for Odorant {
    fn default() -> Self {
        Self { faint_at: 0.02, clear_at: 0.08, strong_at: 0.2, left: 1.0 }
    }
}

/// A nose that tires of the odorant and recovers in fresh air; the default is rested.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct Nose {
    tired: f64,
}

impl Nose {
    /// Breathes air with `share` of the lower limit for `dt_s`.
    pub fn breathe(&mut self, dt_s: f64, share: f64, odorant: &Odorant) {
        let exposure = share.max(0.0) * odorant.left;
        let end = TIRED_MOST * exposure / (exposure + TIRED_HALF);
        let tau = if end > self.tired { TIRES_S } else { RECOVERS_S };
        self.tired += (end - self.tired) * dt_s / (tau + dt_s);
    }

    /// How strongly `share` of the lower limit smells to it.
    #[must_use]
    pub fn smells(&self, share: f64, odorant: &Odorant) -> Strength {
        let felt = share * odorant.left * (1.0 - self.tired);
        if felt >= odorant.strong_at {
            Strength::Strong
        } else if felt >= odorant.clear_at {
            Strength::Clear
        } else if felt >= odorant.faint_at {
            Strength::Faint
        } else {
            Strength::None
        }
    }

    /// Keenness lost by tiring, 0 (rested) to 0.9.
    #[must_use]
    pub fn tired(&self) -> f64 {
        self.tired
    }
}
