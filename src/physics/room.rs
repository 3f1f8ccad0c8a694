//! Gas in a room: the burner vestibule, the air above the floor, the air at breathing height.
//!
//! **Equation.** Each zone is diluted: `dc/dt = q/V − n·(c − c_in)`, solved exactly over a step.
//! **Assumptions.** Well-mixed zones; heavy gas goes to the floor, light gas up (nine parts in
//! ten); zones exchange slowly with each other, faster with a window open.
//! **Valid range.** Any leak; fractions are kept within 0–1.
//! **Source.** Dilution law as in any ventilation handbook (build-up `q/(nV)·(1 − e^{−nt})`); limits
//! NFPA 325 / NFPA 58; odour readily smelt at a fifth of the lower limit (46 CFR 58.16-25, 49 CFR
//! 192.625), by a fresh nose at about a fiftieth (from memory).
//! **Left out.** Plumes, stairs, wind, fading odorant.
//! **Checked.** Tests below.

use super::fluid::Gas;

/// Volume of the burner vestibule, in m³.
const VESTIBULE_M3: f64 = 0.12;
/// Air through the vestibule with doors off, in m³/s.
const VESTIBULE_AIR_M3_S: f64 = 0.012;
/// Share of the room's height that counts as the floor zone.
const FLOOR_SHARE: f64 = 0.15;
/// Share of the gas that goes where its density takes it.
const BUOYANT_SHARE: f64 = 0.9;
/// Exchange between floor and breathing zone, per second.
const MIXING_PER_S: f64 = 1.0 / 900.0;
/// Air changes per hour that an open window adds.
const WINDOW_ACH: f64 = 8.0;

/// Gas in the air of one room.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    volume_m3: f64,
    air_changes_s: f64,
    heavy: bool,
    lower_limit: f64,
    upper_limit: f64,
    /// Vestibule, floor, breathing height.
    fraction: [f64; 3],
}

/// One zone over a step: leak per volume and air changes, exact.
#[must_use]
pub fn dilute(start: f64, incoming: f64, leak_per_s: f64, changes_per_s: f64, dt_s: f64) -> f64 {
    if changes_per_s <= 0.0 {
        return start + leak_per_s * dt_s;
    }
    let end = incoming + leak_per_s / changes_per_s;
    end + (start - end) * libm::exp(-changes_per_s * dt_s)
}

impl Room {
    /// A clean room.
    #[must_use]
    pub fn new(gas: &Gas, volume_m3: f64, air_changes_h: f64) -> Self {
        Self {
            volume_m3,
            air_changes_s: air_changes_h / 3600.0,
            heavy: gas.specific_gravity > 1.0,
            lower_limit: gas.lower_limit,
            upper_limit: gas.upper_limit,
            fraction: [0.0; 3],
        }
    }

    /// Goes on by `dt_s` with gas leaking into the vestibule (standard m³/s).
    pub fn step(&mut self, dt_s: f64, leak_m3_s: f64, window_open: bool) {
        let [vestibule, floor, head] = self.fraction;
        let through = VESTIBULE_AIR_M3_S / VESTIBULE_M3;
        let now = dilute(vestibule, 0.0, leak_m3_s / VESTIBULE_M3, through, dt_s);
        let spilled_m3_s = VESTIBULE_AIR_M3_S * 0.5 * (vestibule + now);
        let to_floor = if self.heavy { BUOYANT_SHARE } else { 1.0 - BUOYANT_SHARE };
        let changes = self.air_changes_s + if window_open { WINDOW_ACH / 3600.0 } else { 0.0 };
        let floor_m3 = FLOOR_SHARE * self.volume_m3;
        let head_m3 = self.volume_m3 - floor_m3;
        let zone = |c: f64, other: f64, share: f64, volume: f64| {
            let mixing = MIXING_PER_S * self.volume_m3.min(4.0 * floor_m3) / volume * 0.25;
            let rate = changes + mixing;
            let incoming = if rate > 0.0 { other * mixing / rate } else { 0.0 };
            dilute(c, incoming, share * spilled_m3_s / volume, rate, dt_s).clamp(0.0, 1.0)
        };
        self.fraction = [
            now.clamp(0.0, 1.0),
            zone(floor, head, to_floor, floor_m3),
            zone(head, floor, 1.0 - to_floor, head_m3),
        ];
    }

    /// Gas in vestibule, floor zone and breathing zone, as fractions.
    #[must_use]
    pub fn fractions(&self) -> [f64; 3] {
        self.fraction
    }

    /// A fraction as a share of the lower flammable limit.
    #[must_use]
    pub fn of_lower_limit(&self, fraction: f64) -> f64 {
        fraction / self.lower_limit
    }

    /// Whether the vestibule holds a mixture that burns.
    #[must_use]
    pub fn vestibule_flammable(&self) -> bool {
        (self.lower_limit..=self.upper_limit).contains(&self.fraction[0])
    }

    /// Every number that changes.
    pub fn digest(&self, sink: &mut impl FnMut(u64)) {
        for fraction in self.fraction {
            sink(fraction.to_bits());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A published dilution table (pollution in rooms): n = 1/h, t = 40 min, q = V = 1 gives 0.4866;
    /// and a 30 m³ room at 0.35 changes with 0.5 m³/h reaches 1 % after 40.4 min.
    #[test]
    fn dilution_matches_the_published_table() {
        let c = dilute(0.0, 0.0, 1.0 / 3600.0, 1.0 / 3600.0, 2400.0);
        approx::assert_abs_diff_eq!(c, 0.4866, epsilon = 1e-4);
        let c = dilute(0.0, 0.0, 0.5 / 3600.0 / 30.0, 0.35 / 3600.0, 40.4 * 60.0);
        approx::assert_abs_diff_eq!(c, 0.01, epsilon = 1e-4);
    }

    /// Propane pools at the floor, natural gas rises; an open window clears both faster.
    #[test]
    fn heavy_gas_pools_and_a_window_clears_it() {
        let after = |gas: &Gas, open: bool| {
            let mut room = Room::new(gas, 30.0, 0.5);
            for _ in 0..3000 {
                room.step(0.2, 3e-5, open);
            }
            room.fractions()
        };
        let heavy = after(&Gas::propane(), false);
        assert!(heavy[1] > 5.0 * heavy[2]);
        let light = after(&Gas::natural(), false);
        assert!(light[2] > light[1]);
        assert!(after(&Gas::propane(), true)[1] < heavy[1]);
    }
}
