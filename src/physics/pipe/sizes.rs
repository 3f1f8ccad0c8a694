//! Inside diameters of pipe and tube by their trade size.
//!
//! **Source.** Schedule 40 steel: ASME B36.10M, as printed in IFGC 2018 Table 402.4(2). Semirigid
//! copper K/L: IFGC 2018 Table 402.4(9).
//! **Checked.** Through the capacity tables in `tests/core/physics/pipe.rs`, which a wrong diameter
//! would leave.

use crate::units::M_PER_IN;

/// Inside diameter of Schedule 40 steel pipe of nominal size `nominal` ("1/2", "3/4", "1", "1-1/4",
/// …), in metres (IFGC Table 402.4(2), ASME B36.10M).
#[must_use]
pub fn schedule_40_id_m(nominal: &str) -> Option<f64> {
    let id_in = match nominal {
        "1/4" => 0.364,
        "3/8" => 0.493,
        "1/2" => 0.622,
        "3/4" => 0.824,
        "1" => 1.049,
        "1-1/4" => 1.380,
        "1-1/2" => 1.610,
        "2" => 2.067,
        "2-1/2" => 2.469,
        "3" => 3.068,
        "4" => 4.026,
        _ => return None,
    };
    Some(id_in * M_PER_IN)
}

/// Inside diameter of semirigid copper tube of type K/L nominal size, in metres
/// (IFGC Table 402.4(9)).
#[must_use]
pub fn copper_tube_id_m(nominal: &str) -> Option<f64> {
    let id_in = match nominal {
        "1/4" => 0.305,
        "3/8" => 0.402,
        "1/2" => 0.527,
        "5/8" => 0.652,
        "3/4" => 0.745,
        "1" => 0.995,
        "1-1/4" => 1.245,
        "1-1/2" => 1.481,
        _ => return None,
    };
    Some(id_in * M_PER_IN)
}
