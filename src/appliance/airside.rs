//! Inducer, blower and heat exchanger.
//!
//! **Equation.** Fans follow their speed first-order (1.2 s and 3 s); the exchanger is
//! [`Exchanger`]. The blower's air goes with its speed, with the air's density and with `1/√ΣR`,
//! resistances of coil and ducts (0.5), filter (0.25) and registers (0.25) in a row, the last two
//! each as the inverse square of the free area. A worn motor makes a share of each speed. Low speed is 0.75 of high, the inducer's 0.7.
//! **Assumptions.** Fixed fan head at a speed; standard air but for its density.
//! **Valid range.** Blocked shares 0 to 0.95.
//! **Regularisation.** A wholly blocked part keeps a twentieth of its area. The flue gas's
//! temperature is worked out anew when the firing has changed by a thousandth.
//! **Source.** Blower sized by the 1.08 rule for a rise in the middle of the plate's range; density
//! corrects that rule at altitude (handbook). Shares of resistance, speeds and run-up times, flue
//! gas 110 K above the metal at full input: from memory. Exchanger 15 kJ/K, 30 kg of steel: common
//! practice.
//! **Left out.** Motor current, duct leaks, a motor that holds its airflow.
//! **Checked.** `tests/core/appliance/airside.rs`: `rise_follows_heat_and_air()`, ISA density in
//! `thin_air_warms_more()`, `restricted_air_reaches_the_limit()`, `fans_run_up_and_coast()`.

use super::burner::INDUCER_REDUCED;
use super::level::Level;
use crate::physics::heat::{AIR_J_M3_K, Exchanger, flue_above_metal_k};
use serde::Serialize;

/// Heat capacity of the exchanger, in J/K (about 30 kg of steel, common practice).
const EXCHANGER_J_K: f64 = 15e3;
/// Run-up and coast-down of the fans, in seconds.
const INDUCER_S: f64 = 1.2;
const BLOWER_S: f64 = 3.0;
/// Blower on low, against high.
const BLOWER_REDUCED: f64 = 0.75;
/// Flue gas above the metal at full input, in kelvins.
const FLUE_ABOVE_METAL_K: f64 = 110.0;
/// Resistance of coil and ducts, filter, and registers, as shares of the clean whole.
const DUCTS: f64 = 0.5;
const FILTER: f64 = 0.25;
const REGISTERS: f64 = 0.25;
/// Share of an area that always stays.
const LEAST_AREA: f64 = 0.05;
/// Share of its speed below which a fan is heard to labor (from memory).
const LABORS: f64 = 0.6;
/// Change of firing, as a share of full, from which the flue gas is worked out anew.
const NOTICED: f64 = 1e-3;

/// State of the house air's way.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct AirPath {
    /// Blocked share of the filter, 0–1.
    pub filter_blocked: f64,
    /// Share of the registers that is closed, 0–1.
    pub registers_closed: f64,
    /// Density of the air against standard air (altitude; 1 at sea level).
    pub air_density: f64,
}

impl Default for AirPath {
    fn default() -> Self {
        Self { filter_blocked: 0.0, registers_closed: 0.0, air_density: 1.0 }
    }
}

impl AirPath {
    /// Standard volume (that is, mass) of air against the clean way's at sea level.
    #[must_use]
    pub fn air_share(&self) -> f64 {
        let opened = |blocked: f64| {
            let free = (1.0 - blocked).clamp(LEAST_AREA, 1.0);
            1.0 / (free * free)
        };
        let resistance = DUCTS
            + FILTER * opened(self.filter_blocked)
            + REGISTERS * opened(self.registers_closed);
        self.air_density / resistance.sqrt()
    }
}

/// How fast the fans turn when they are driven, against sound ones.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Fans {
    /// Share of its speed that the inducer makes, 0–1.
    pub inducer: f64,
    /// Share of its speed that the blower makes, 0–1.
    pub blower: f64,
}

impl Default for Fans {
    fn default() -> Self {
        Self { inducer: 1.0, blower: 1.0 }
    }
}

/// The air side: inducer, blower and heat exchanger with the air that passes them.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AirSide {
    exchanger: Exchanger,
    path: AirPath,
    air_share: f64,
    fans: Fans,
    inducer: f64,
    blower: f64,
    full_air_m3_s: f64,
    full_heat_w: f64,
    /// Share of full firing that the flue gas was last worked out for, and its excess over the
    /// metal, in kelvins.
    flue: (f64, f64),
    to_air_w: f64,
    return_k: f64,
}

impl AirSide {
    /// An air side whose blower at the full rate gives a rise of `rise_k` (K, at least 5) at
    /// `useful_w` (W) in the clean way at sea level, all of it at `start_k` (K), fans still.
    #[must_use]
    pub fn new(useful_w: f64, rise_k: f64, start_k: f64) -> Self {
        Self {
            exchanger: Exchanger::new(EXCHANGER_J_K, start_k),
            path: AirPath::default(),
            air_share: 1.0,
            fans: Fans::default(),
            inducer: 0.0,
            blower: 0.0,
            full_air_m3_s: useful_w / (AIR_J_M3_K * rise_k.max(5.0)),
            full_heat_w: useful_w.max(1.0),
            flue: (0.0, 0.0),
            to_air_w: 0.0,
            return_k: start_k,
        }
    }

    /// Sets filter, registers and the air's density.
    pub fn set_path(&mut self, path: AirPath) {
        self.path = path;
        self.air_share = path.air_share();
    }

    /// Sets what the fans still make of their drive.
    pub fn set_fans(&mut self, fans: Fans) {
        self.fans = fans;
    }

    /// Goes on by `dt_s` with the fans driven so, heat from the flame (W) and return air (K).
    pub fn step(
        &mut self,
        dt_s: f64,
        inducer: Option<Level>,
        blower: Option<Level>,
        heat_w: f64,
        return_k: f64,
    ) {
        let approach = |now: f64, end: f64, tau: f64| now + (end - now) * dt_s / (tau + dt_s);
        let (inducer_end, blower_end) = (
            self.fans.inducer * speed(inducer, INDUCER_REDUCED),
            self.fans.blower * speed(blower, BLOWER_REDUCED),
        );
        self.inducer = approach(self.inducer, inducer_end, INDUCER_S);
        self.blower = approach(self.blower, blower_end, BLOWER_S);
        let firing = heat_w / self.full_heat_w;
        if (firing - self.flue.0).abs() > NOTICED {
            self.flue = (firing, flue_above_metal_k(firing, FLUE_ABOVE_METAL_K));
        }
        self.return_k = return_k;
        self.to_air_w = self.exchanger.step(dt_s, heat_w, self.air_m3_s(), return_k);
    }

    /// Inducer speed as a share of its full speed, 0–1.
    #[must_use]
    pub fn inducer(&self) -> f64 {
        self.inducer
    }

    /// Blower speed as a share of its speed at the full rate, 0–1.
    #[must_use]
    pub fn blower(&self) -> f64 {
        self.blower
    }

    /// Whether the blower's motor makes so little of its speed that anybody hears it.
    #[must_use]
    pub fn blower_labors(&self) -> bool {
        self.fans.blower < LABORS
    }

    /// Air over the exchanger, in standard m³/s.
    #[must_use]
    pub fn air_m3_s(&self) -> f64 {
        self.full_air_m3_s * self.blower * self.air_share
    }

    /// Heat to the house, in watts.
    #[must_use]
    pub fn to_air_w(&self) -> f64 {
        self.to_air_w
    }

    /// Supply-air temperature at the limit, in kelvins.
    #[must_use]
    pub fn supply_air_k(&self) -> f64 {
        self.exchanger.supply_air_k()
    }

    /// Temperature rise of the air, in kelvins.
    #[must_use]
    pub fn rise_k(&self) -> f64 {
        self.supply_air_k() - self.return_k
    }

    /// Flue-gas temperature, in kelvins.
    #[must_use]
    pub fn flue_k(&self) -> f64 {
        self.exchanger.metal_k() + self.flue.1
    }
}

/// Speed at a level, 0–1, that is `reduced` below the full rate.
fn speed(at: Option<Level>, reduced: f64) -> f64 {
    at.map_or(0.0, |level| if level.is_top() { 1.0 } else { reduced })
}
