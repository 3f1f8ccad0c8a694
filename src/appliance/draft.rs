//! The way of the combustion air: intake, heat exchanger, inducer, vent.
//!
//! **Equation.** The inducer makes a head that goes with the square of its speed and with the air's
//! density; flow and pressure across the exchanger follow from three resistances in a row,
//! `flow² = head/(Rₓ + Rᵥ/(1 − v)² + Rᵢ/(1 − i)²)`, where `v` and `i` are the blocked shares of the
//! vent's and the intake's area. The pressure switches feel the exchanger's share,
//! `400 Pa·(ρ/ρ₀)·(flow/clean flow)²`. Room air that a dry trap lets into the inducer's housing does
//! not come through the exchanger: its share of the flow is lost there.
//! **Assumptions.** Square-law resistances; the fan's head does not depend on its flow.
//! **Valid range.** Blocked shares 0 to 0.99, speed 0–1.2.
//! **Regularisation.** A wholly blocked opening keeps a hundredth of its area.
//! **Source.** Square law: any fan handbook. The three shares of resistance (0.75, 0.15, 0.10) and
//! the full draft (1.6 in. w.c.): our own appliance.
//! **Left out.** Wind, stack effect, flue-gas temperature, condensate that gathers by itself.
//! **Checked.** `tests/core/appliance/safety.rs`: law of squares in
//! `switches_follow_the_inducer()`, order of the faults' effects in
//! `a_blocked_vent_opens_the_high_switch_first()`, ISA density in `altitude_takes_draft_away()`.

use crate::units::PA_PER_INWC;
use serde::Serialize;

/// Pressure across the clean exchanger with the inducer at full speed, in pascals.
const FULL_DRAFT_PA: f64 = 1.6 * PA_PER_INWC;
/// Resistance of exchanger, vent and intake, as shares of the clean whole.
const EXCHANGER: f64 = 0.75;
const VENT: f64 = 0.15;
const INTAKE: f64 = 0.10;
/// Share of an opening's area that always stays.
const LEAST_AREA: f64 = 0.01;

/// State of the combustion air's way.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Draft {
    /// Blocked share of the intake's area, 0–1.
    pub intake_blocked: f64,
    /// Blocked share of the vent's area, 0–1.
    pub vent_blocked: f64,
    /// Share of the inducer's air that a dry trap lets in beside the exchanger, 0–1.
    pub trap_leak: f64,
    /// Density of the air against standard air (altitude; 1 at sea level).
    pub air_density: f64,
}

impl Default for Draft {
    fn default() -> Self {
        Self { intake_blocked: 0.0, vent_blocked: 0.0, trap_leak: 0.0, air_density: 1.0 }
    }
}

impl Draft {
    /// Volume flow of air against the clean way's, at the same inducer speed.
    #[must_use]
    pub fn volume_share(&self) -> f64 {
        let opened = |blocked: f64| {
            let free = (1.0 - blocked).clamp(LEAST_AREA, 1.0);
            1.0 / (free * free)
        };
        let through = 1.0 - self.trap_leak.clamp(0.0, 1.0);
        let clean = self.vent_blocked <= 0.0 && self.intake_blocked <= 0.0;
        if clean {
            return through;
        }
        let resistance =
            EXCHANGER + VENT * opened(self.vent_blocked) + INTAKE * opened(self.intake_blocked);
        through / resistance.sqrt()
    }

    /// Standard volume (that is, mass) of air against the clean way's at sea level.
    #[must_use]
    pub fn air_share(&self) -> f64 {
        self.volume_share() * self.air_density
    }

    /// Pressure across the exchanger at an inducer speed of 0–1, in pascals.
    #[must_use]
    pub fn pressure_pa(&self, inducer: f64) -> f64 {
        let flow = self.volume_share() * inducer;
        FULL_DRAFT_PA * self.air_density * flow * flow
    }
}
