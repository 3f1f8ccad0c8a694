//! Safety devices: pressure switches, limit, roll-out, low-gas switch.
//!
//! **Equation.** Contacts with hysteresis; draft goes with the square of the inducer's speed.
//! **Source.** Low-gas switch: closes at 8.0 in. w.c. rising, opens at 6.0 falling (a two-stage
//! furnace service manual). Draft and limit set points: the appliance's, of our own world.
//! **Left out.** Contact bounce, ageing.

use crate::units::{PA_PER_INWC, k_from_f};

/// A contact that closes above one value and opens below another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
    closes_at: f64,
    opens_at: f64,
    closed: bool,
}

impl Contact {
    /// An open contact that closes at `closes_at` and opens below `opens_at`.
    #[must_use]
    pub fn new(closes_at: f64, opens_at: f64) -> Self {
        Self { closes_at, opens_at, closed: false }
    }

    /// Feels a value and says whether it is closed.
    pub fn feel(&mut self, value: f64) -> bool {
        self.closed = if self.closed { value >= self.opens_at } else { value >= self.closes_at };
        self.closed
    }

    /// Whether it is closed.
    #[must_use]
    pub fn is_closed(&self) -> bool {
        self.closed
    }
}

/// All safety devices of the furnace.
#[derive(Debug, Clone, PartialEq)]
pub struct Safety {
    low_switch: Contact,
    high_switch: Contact,
    low_gas: Option<Contact>,
    limit_open: bool,
    rollout_open: bool,
}

/// Draft of the inducer at full speed, in pascals (1.6 in. w.c., our own appliance).
const FULL_DRAFT_PA: f64 = 1.6 * PA_PER_INWC;
/// Supply-air temperature at which the limit opens, and at which it closes again (our own).
const LIMIT_OPENS_F: f64 = 190.0;
const LIMIT_CLOSES_F: f64 = 150.0;

impl Safety {
    /// Devices at rest; the low-gas switch only where a kit has fitted it.
    #[must_use]
    pub fn new(low_gas_switch: bool) -> Self {
        Self {
            low_switch: Contact::new(0.45 * PA_PER_INWC, 0.35 * PA_PER_INWC),
            high_switch: Contact::new(1.15 * PA_PER_INWC, 1.0 * PA_PER_INWC),
            low_gas: low_gas_switch.then(|| Contact::new(8.0 * PA_PER_INWC, 6.0 * PA_PER_INWC)),
            limit_open: false,
            rollout_open: false,
        }
    }

    /// Feels the inducer's speed (0–1), the supply air and the inlet pressure.
    pub fn feel(&mut self, inducer: f64, supply_air_k: f64, inlet_pa: f64) {
        let draft_pa = FULL_DRAFT_PA * inducer * inducer;
        self.low_switch.feel(draft_pa);
        self.high_switch.feel(draft_pa);
        if let Some(low_gas) = &mut self.low_gas {
            low_gas.feel(inlet_pa);
        }
        self.limit_open = if self.limit_open {
            supply_air_k > k_from_f(LIMIT_CLOSES_F)
        } else {
            supply_air_k > k_from_f(LIMIT_OPENS_F)
        };
    }

    /// Flames outside the tubes open the roll-out switches.
    pub fn roll_out(&mut self) {
        self.rollout_open = true;
    }

    /// Resets the roll-out switches by hand; says whether they were open.
    pub fn reset_rollout(&mut self) -> bool {
        core::mem::take(&mut self.rollout_open)
    }

    /// Low pressure switch closed.
    #[must_use]
    pub fn low_switch(&self) -> bool {
        self.low_switch.is_closed()
    }

    /// High pressure switch closed.
    #[must_use]
    pub fn high_switch(&self) -> bool {
        self.high_switch.is_closed()
    }

    /// Limit closed.
    #[must_use]
    pub fn limit(&self) -> bool {
        !self.limit_open
    }

    /// Roll-out switches closed.
    #[must_use]
    pub fn rollout(&self) -> bool {
        !self.rollout_open
    }

    /// Low-gas switch closed, or none fitted.
    #[must_use]
    pub fn low_gas(&self) -> bool {
        self.low_gas.as_ref().is_none_or(Contact::is_closed)
    }

    /// Every state.
    pub fn digest(&self, sink: &mut impl FnMut(u64)) {
        let bits = [
            self.low_switch(),
            self.high_switch(),
            self.low_gas(),
            self.limit_open,
            self.rollout_open,
        ];
        sink(bits.iter().fold(0, |word, &bit| word << 1 | u64::from(bit)));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The low-gas switch's published points: closes at 8.0 rising, opens at 6.0 falling.
    #[test]
    fn low_gas_switch_has_its_published_hysteresis() {
        let mut safety = Safety::new(true);
        for (inwc, closed) in
            [(7.9, false), (8.1, true), (6.1, true), (5.9, false), (7.0, false), (8.0, true)]
        {
            safety.feel(0.0, 300.0, inwc * PA_PER_INWC);
            assert_eq!(safety.low_gas(), closed, "{inwc}");
        }
    }
}
