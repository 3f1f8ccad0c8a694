//! Seat geometry: effective area against lift.
//!
//! **Equation.** With lift `z`, seal compression `c`, half width `b` of the transition, width `W`
//! (Cd times circumference, m): `CdA = 0` for `z ≤ −c`; a toe `W·t·(z + c)²/(2·(c − b))` up to
//! `−b`, `t` the share of the full slope that it reaches; a quadratic on which the slope grows from
//! `t·W` to `W`, up to `+b`; then `W` per metre of lift up to the stop.
//! **Assumptions.** Flat soft disc on a round seat: area in proportion to lift. The soft face
//! passes a little while it is still pressed on.
//! **Valid range.** `0 < b ≤ c`, `0 ≤ t ≤ 1`; any lift.
//! **Regularisation.** Toe and transition as above, value and slope continuous. Upper stop rounded
//! by a quadratic over ±5 % of the travel; lower stop at 1.5 `c`, rounded over ±0.25 `c`.
//! **Source.** Curtain area of a lifted disc, common practice; toe and roundings are our own,
//! fitted to set point, lock-up and droop by `calibrate`.
//! **Left out.** Shaped plugs; that the area levels off at a quarter of the seat's diameter (the
//! stop stands for it).
//! **Checked.** `seat_is_smooth_and_monotone()` in `src/physics/regulator/seat.rs`;
//! `locked_up_gas_stays()` and `droop_is_linear_in_flow()` in `tests/core/physics/regulator.rs`.

use serde::Serialize;

/// Rounding of the upper travel stop, as a share of the travel.
const STOP_ROUNDING: f64 = 0.05;

/// Effective area of a soft seat against its lift.
///
/// From the sealed end: closed at and below `−seal_m`; a thin quadratic toe up to `−blend_m`, where
/// the soft face still touches; slope growing to the full one at `+blend_m`; then linear in lift up
/// to the stop at `max_lift_m`. Value and slope are continuous.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SeatProfile {
    /// Effective area per metre of lift (discharge coefficient × circumference), in m.
    pub width_m: f64,
    /// Compression of the seal at which it is tight, in m.
    pub seal_m: f64,
    /// Half width of the transition to the linear law, in m, at most `seal_m`.
    pub blend_m: f64,
    /// Share of the full slope that the thin toe reaches, 0–1.
    pub toe_slope: f64,
    /// Lift at the stop, in m.
    pub max_lift_m: f64,
}

impl SeatProfile {
    /// Effective area (m²) and its slope (m²/m) at a lift (m).
    #[inline]
    #[must_use]
    pub fn area(&self, lift_m: f64) -> (f64, f64) {
        let from_seal = lift_m + self.seal_m;
        if from_seal <= 0.0 {
            return (0.0, 0.0);
        }
        let toe_m = self.seal_m - self.blend_m;
        if from_seal < toe_m {
            let slope = self.toe_slope * from_seal / toe_m;
            return (self.width_m * 0.5 * slope * from_seal, self.width_m * slope);
        }
        let toe_end = 0.5 * self.toe_slope * toe_m;
        let t = lift_m + self.blend_m;
        let width = 2.0 * self.blend_m;
        if t < width {
            let bend = (1.0 - self.toe_slope) / width;
            let lift_like = toe_end + self.toe_slope * t + 0.5 * bend * t * t;
            (self.width_m * lift_like, self.width_m * (self.toe_slope + bend * t))
        } else {
            let lift_like = toe_end + 0.5 * (1.0 + self.toe_slope) * width + (t - width);
            (self.width_m * lift_like, self.width_m)
        }
    }

    /// The lift that gives an effective area, in m (the sealed end for an area of zero).
    #[must_use]
    pub fn lift_for_area(&self, area_m2: f64) -> f64 {
        if area_m2 <= 0.0 {
            return -self.seal_m;
        }
        let wanted = area_m2 / self.width_m;
        let toe_m = self.seal_m - self.blend_m;
        let toe_end = 0.5 * self.toe_slope * toe_m;
        if wanted < toe_end {
            return (2.0 * wanted * toe_m / self.toe_slope).sqrt() - self.seal_m;
        }
        let width = 2.0 * self.blend_m;
        let rest = wanted - toe_end;
        let whole = 0.5 * (1.0 + self.toe_slope) * width;
        let t = if rest < whole {
            let bend = (1.0 - self.toe_slope) / width;
            2.0 * rest
                / (self.toe_slope + (self.toe_slope * self.toe_slope + 2.0 * bend * rest).sqrt())
        } else {
            width + (rest - whole)
        };
        t - self.blend_m
    }

    /// Keeps a wanted lift within the stops (rounded by quadratics); value and slope.
    #[inline]
    pub(crate) fn within_stops(&self, wanted_m: f64) -> (f64, f64) {
        let upper_half = STOP_ROUNDING * self.max_lift_m;
        let lower = -1.5 * self.seal_m;
        let lower_half = 0.25 * self.seal_m;
        let (over, under) = (wanted_m - self.max_lift_m, wanted_m - lower);
        if over <= -upper_half && under >= lower_half {
            (wanted_m, 1.0)
        } else if over > -upper_half {
            if over >= upper_half {
                return (self.max_lift_m, 0.0);
            }
            let rest = upper_half - over;
            (self.max_lift_m - rest * rest / (4.0 * upper_half), rest / (2.0 * upper_half))
        } else {
            if under <= -lower_half {
                return (lower, 0.0);
            }
            let rest = lower_half + under;
            (lower + rest * rest / (4.0 * lower_half), rest / (2.0 * lower_half))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const SEAT: SeatProfile = SeatProfile {
        width_m: 0.03,
        seal_m: 2e-4,
        blend_m: 3e-5,
        toe_slope: 0.05,
        max_lift_m: 8e-4,
    };

    /// Area and stop are monotone with continuous slopes; the seat is exactly closed at the seal.
    #[test]
    fn seat_is_smooth_and_monotone() {
        assert_eq!(SEAT.area(-2e-4), (0.0, 0.0));
        let (mut last, mut last_stop) = (SEAT.area(-5e-4), SEAT.within_stops(-5e-4));
        for k in 1..=15_000 {
            let lift = -5e-4 + 1e-7 * f64::from(k);
            let (next, stop) = (SEAT.area(lift), SEAT.within_stops(lift));
            assert!(next.0 >= last.0 && next.0 - last.0 <= 0.03 * 1.001e-7);
            assert!((next.1 - last.1).abs() < 0.03 * 2e-3, "area slope jumps at {lift}");
            assert!(stop.0 >= last_stop.0 && (stop.1 - last_stop.1).abs() < 2e-3);
            (last, last_stop) = (next, stop);
        }
        for area in [1e-9, 1e-7, 3e-7, 1e-6, 5e-6, 2e-5] {
            let lift = SEAT.lift_for_area(area);
            approx::assert_relative_eq!(SEAT.area(lift).0, area, max_relative = 1e-9);
        }
    }
}
