//! Repairs on burners, orifices and the ways of the combustion air.
//!
//! **Source.** Orifices by plate or label, never drilled out; 4 % less input for each 1000 ft above
//! the sea from 2000 ft on: NFPA 54. How far a drill opens a hole: from memory.
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::fitting::fit_orifices;
use super::work::{Edit, RepairContext};
use crate::units::{M_PER_FT, P_STD_PA};

/// Area of a drilled orifice against the widest.
const DRILLED_AREA: f64 = 1.3;
/// Input less for each 1000 ft, as a share.
const LESS_PER_1000_FT: f64 = 0.04;
/// Height up to which nothing is changed, in feet.
const UNCHANGED_FT: f64 = 2000.0;

pub(crate) const FIT_ORIFICES: Edit = fit_orifices;

pub(crate) const CLEAN_ORIFICES: Edit = |context| {
    let widest_m = widest_m(context);
    context.setup.furnace.orifices_m.fill(widest_m);
};

fn widest_m(context: &RepairContext<'_>) -> f64 {
    context.setup.furnace.orifices_m.iter().copied().fold(0.0, f64::max)
}

pub(crate) const DRILL_ORIFICES: Edit = |context| {
    let drilled_m = widest_m(context) * DRILLED_AREA.sqrt();
    context.setup.furnace.orifices_m.fill(drilled_m);
};

pub(crate) const FIT_ALTITUDE_ORIFICES: Edit = |context| {
    fit_orifices(context);
    let height_ft = height_m(context.setup.ambient_abs_pa) / M_PER_FT;
    if height_ft > UNCHANGED_FT {
        let input = (1.0 - LESS_PER_1000_FT * height_ft / 1000.0).clamp(0.3, 1.0);
        // Part of it is gone by itself: thin gas passes the same hole as the root of its density.
        let share = input / (context.setup.ambient_abs_pa / P_STD_PA).sqrt();
        for hole_m in &mut context.setup.furnace.orifices_m {
            *hole_m *= share.sqrt();
        }
        let stamp = &mut context.setup.furnace.orifice_stamp;
        let hole_mm = 1e3 * context.setup.furnace.orifices_m.first().copied().unwrap_or(0.0);
        *stamp = format!("{hole_mm:.2} mm");
    }
};

/// Height above the sea at which this pressure stands (ICAO standard atmosphere, Doc 7488).
fn height_m(ambient_abs_pa: f64) -> f64 {
    (1.0 - libm::pow(ambient_abs_pa / P_STD_PA, 1.0 / 5.255_88)) / 2.255_77e-5
}

pub(crate) const CLEAN_BURNERS: Edit = |context| {
    context.setup.condition.burners.late_s = 0.0;
};

pub(crate) const CLEAR_VENT: Edit = |context| {
    context.setup.condition.air.vent_blocked = 0.0;
};

pub(crate) const CLEAR_INTAKE: Edit = |context| {
    context.setup.condition.air.intake_blocked = 0.0;
};
