//! Bores, volumes and coefficients of the gas side's parts.

use crate::physics::valve::{HandValveKind, HandValveLaw};
use crate::units::M_PER_IN;

/// Bore of a port's tapped hole behind the plug, in metres (a 1/8 in. tap; from memory).
pub(super) const PORT_BORE_M: f64 = 3.0e-3;
/// Bore of the barbed adapter, in metres (common practice).
pub(super) const BARB_BORE_M: f64 = 2.5e-3;
/// Discharge coefficient of a short drilled hole (common practice).
pub(super) const HOLE_CD: f64 = 0.8;
/// Area of the hose's open end, in m².
pub(super) const HOSE_END_M2: f64 = 1.5e-5;
/// Gas volume of hose and manometer, in m³.
pub(super) const HOSE_M3: f64 = 2.5e-5;
/// Discharge coefficient of a hole with sharp edges (common practice).
pub(super) const SHARP_CD: f64 = 0.6;
/// Inlet pressure against which the coil no longer lifts the seats, against the most that the valve
/// may see (our own valve).
pub(super) const LIFTS_AGAINST: f64 = 1.4;
/// Volume of a part without one of its own (a valve body, a tee), in m³.
pub(super) const BODY_M3: f64 = 5.0e-5;
/// Bore of the supply shut-off and of the furnace's manual valve, in metres.
pub(super) const MAIN_BORE_M: f64 = 0.824 * M_PER_IN;

/// A ball valve of this bore, in metres.
pub(super) fn ball(bore_m: f64) -> HandValveLaw {
    HandValveLaw::new(HandValveKind::Ball, bore_m)
}
