//! Twist drills by name: how gas orifices are stamped.
//!
//! **Source.** Number drills #80 to #1: ASME B94.11M; #29 to #1 from memory of the same standard.
//! **Checked.** `names_are_read()` and `table_is_whole()` in `src/physics/orifice/drill.rs`; flows
//! of drilled holes in `tests/core/physics/orifice.rs`.

use crate::units::M_PER_IN;

/// Number drills and their diameters in inches, smallest first (ASME B94.11M; #29 to #1 from
/// memory of the same standard).
#[rustfmt::skip]
pub const DRILLS: &[(u16, f64)] = &[
    (80, 0.0135), (79, 0.0145), (78, 0.0160), (77, 0.0180), (76, 0.0200), (75, 0.0210),
    (74, 0.0225), (73, 0.0240), (72, 0.0250), (71, 0.0260), (70, 0.0280), (69, 0.0292),
    (68, 0.0310), (67, 0.0320), (66, 0.0330), (65, 0.0350), (64, 0.0360), (63, 0.0370),
    (62, 0.0380), (61, 0.0390), (60, 0.0400), (59, 0.0410), (58, 0.0420), (57, 0.0430),
    (56, 0.0465), (55, 0.0520), (54, 0.0550), (53, 0.0595), (52, 0.0635), (51, 0.0670),
    (50, 0.0700), (49, 0.0730), (48, 0.0760), (47, 0.0785), (46, 0.0810), (45, 0.0820),
    (44, 0.0860), (43, 0.0890), (42, 0.0935), (41, 0.0960), (40, 0.0980), (39, 0.0995),
    (38, 0.1015), (37, 0.1040), (36, 0.1065), (35, 0.1100), (34, 0.1110), (33, 0.1130),
    (32, 0.1160), (31, 0.1200), (30, 0.1285), (29, 0.1360), (28, 0.1405), (27, 0.1440),
    (26, 0.1470), (25, 0.1495), (24, 0.1520), (23, 0.1540), (22, 0.1570), (21, 0.1590),
    (20, 0.1610), (19, 0.1660), (18, 0.1695), (17, 0.1730), (16, 0.1770), (15, 0.1800),
    (14, 0.1820), (13, 0.1850), (12, 0.1890), (11, 0.1910), (10, 0.1935), (9, 0.1960), (8, 0.1990),
    (7, 0.2010), (6, 0.2040), (5, 0.2055), (4, 0.2090), (3, 0.2130), (2, 0.2210), (1, 0.2280),
];

/// Diameter of a drill by name, in metres: `"#43"` or `"43"` is a number drill, `"1.25 mm"` a metric
/// one, `"0.089 in"` a plain diameter. `None` for anything else, or outside 0.1–25 mm.
#[must_use]
pub fn drill_diameter_m(name: &str) -> Option<f64> {
    let name = name.trim();
    let diameter_m = if let Some(mm) = name.strip_suffix("mm") {
        mm.trim().parse::<f64>().ok()? * 1e-3
    } else if let Some(inches) = name.strip_suffix("in") {
        inches.trim().parse::<f64>().ok()? * M_PER_IN
    } else {
        let number = name.strip_prefix('#').unwrap_or(name).parse::<u16>().ok()?;
        DRILLS.iter().find(|&&(n, _)| n == number)?.1 * M_PER_IN
    };
    (1e-4..=0.025).contains(&diameter_m).then_some(diameter_m)
}

/// The number drill nearest in diameter to `diameter_m`.
#[must_use]
pub fn nearest_drill(diameter_m: f64) -> u16 {
    let wanted_in = diameter_m / M_PER_IN;
    let mut best = (80, f64::INFINITY);
    for &(number, inches) in DRILLS {
        let gap = (inches - wanted_in).abs();
        if gap < best.1 {
            best = (number, gap);
        }
    }
    best.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Names read as the trade writes them; rubbish is refused.
    #[test]
    fn names_are_read() {
        approx::assert_relative_eq!(
            drill_diameter_m("#43").unwrap(),
            2.2606e-3,
            max_relative = 1e-9
        );
        approx::assert_relative_eq!(drill_diameter_m("54").unwrap(), 1.397e-3, max_relative = 1e-9);
        approx::assert_relative_eq!(drill_diameter_m("1.25 mm").unwrap(), 1.25e-3);
        approx::assert_relative_eq!(drill_diameter_m("0.089 in").unwrap(), 2.2606e-3);
        for bad in ["", "#", "#81", "#0", "mm", "-1 mm", "NaN mm", "1e9 mm", "inf in", "43.5"] {
            assert_eq!(drill_diameter_m(bad), None, "{bad}");
        }
        assert_eq!(nearest_drill(2.26e-3), 43);
    }

    /// The table is complete and in order.
    #[test]
    fn table_is_whole() {
        assert_eq!(DRILLS.len(), 80);
        assert!(DRILLS.windows(2).all(|w| w[0].0 == w[1].0 + 1 && w[0].1 < w[1].1));
    }
}
