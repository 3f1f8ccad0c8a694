//! Faults of valve, staging and conversion, of burners, air and altitude.

use super::row::{Natural, Propane, Row, Sign::*, check};
use quarterturn::catalogue::fault::Fault::*;

#[rustfmt::skip]
const VALVE: &[Row] = &[
    (LowStageSetLow, Natural, "=.== -==", &[MeterSlow, MoreAir, Quiet]),
    (LowStageSetLow, Propane, "=.== -==", &[MeterSlow, MoreAir, Quiet]),
    (LowStageSetHigh, Natural, "=.== +==", &[MeterFast, LessAir]),
    (LowStageSetHigh, Propane, "=.== +==", &[MeterFast, LessAir]),
    (HighStageSetHigh, Natural, "==.. =++", &[MeterFast, LessAir, MoreHeat]),
    (HighStageSetHigh, Propane, "==.. =++", &[]),
    (HighStageSetLow, Natural, "==.. =--", &[MeterSlow, LessHeat]),
    (HighStageSetLow, Propane, "==.. =--", &[MeterSlow, LessHeat]),
    // High reads as low, the inlet a little up.
    (DeadHighCoil, Natural, "==++ =--", &[MoreAir, LessHeat]),
    (DeadHighCoil, Propane, "==++ =--", &[MoreAir, LessHeat]),
    (NoSecondStageCall, Natural, "==++ =--", &[LessHeat]),
    (NoSecondStageCall, Propane, "==++ =--", &[LessHeat]),
    // The trade's table has high always. The control still lights on low and stays there for its
    // ten seconds, as controls do: a reading after that is high.
    (StuckInHigh, Natural, "=-== +==", &[MoreHeat]),
    (StuckInHigh, Propane, "=-== +==", &[MoreHeat]),
    // The inlet right, the manifold low on high.
    (BlockedInletScreen, Natural, "==== =--", &[]),
    (BlockedInletScreen, Propane, "===. =--", &[]),
    (NaturalSpringsOnPropane, Propane, "=+++ ---", &[MeterSlow, MoreAir, LessHeat]),
    // The trade's table gives manifold pressures for this one. The model's roll-out switch opens in
    // the first seconds, so that there is nothing to read: a safe end of the same fault.
    (NaturalOrificesOnPropane, Propane, "=... 000", &[RollOut]),
    // Against the converted furnace: the manifold stands at the natural-gas figures (see `order`),
    // the fire is far too large.
    (UnconvertedOnPropane, Propane, "=--- ---", &[MeterFast, MoreHeat, LessAir, Co, MoreRise]),
    (PropaneOrificesOnNatural, Natural, "=+++ ===", &[MeterSlow, LessHeat, MoreAir, WeakCurrent]),
    (PropaneSpringsOnNatural, Natural, "=--- +++", &[MeterFast, MoreHeat, Co]),
    (BottomedHighScrew, Natural, "==-- =++", &[MoreHeat, Co]),
    (BottomedHighScrew, Propane, "==== =++", &[]),
    // On a furnace with a sealed burner box. The offset is the box's, not the screw's.
    (MissingStageCap, Natural, "==== .++", &[]),
    (MissingStageCap, Propane, "==== .++", &[]),
    // The manifold is above nothing at rest (see `order`), and the inlet never locks up.
    (LeakingGasValve, Natural, "-=== ===", &[Gathers]),
    (LeakingGasValve, Propane, "-=== ===", &[Gathers]),
    // Right while it burns; when the call ends the flames linger, until the control locks out for a
    // flame with the gas shut.
    (SlowClosingGasValve, Natural, "==== ===", &[Lockout]),
    (SlowClosingGasValve, Propane, "==== ===", &[Lockout]),
    (BurnerBoxHoseOff, Natural, "==== +++", &[MeterFast]),
    (BurnerBoxHoseOff, Propane, "==== +++", &[]),
    (HuntingValveRegulator, Natural, "==== ...", &[ManifoldSwings]),
    (HuntingValveRegulator, Propane, "==== ...", &[ManifoldSwings]),
];

#[rustfmt::skip]
const BURNER: &[Row] = &[
    // Manifold right, meter slow.
    (PluggedOrifice, Natural, "=.++ ===", &[MeterSlow, LessHeat, Quiet]),
    (PluggedOrifice, Propane, "=.++ ===", &[MeterSlow, LessHeat, Quiet]),
    (OversizeOrifices, Natural, "=... ===", &[MeterFast, MoreHeat, LessAir, Co]),
    (OversizeOrifices, Propane, "=... ===", &[MeterFast, MoreHeat, LessAir, Co]),
    // Manifold right, meter right, heat low: only the utility knows.
    (LeanGas, Natural, "==== ===", &[MeterRight, LessHeat, MoreAir]),
    // The gauge shows nothing. The input falls with the root of the air's density, the fans' air
    // with the density itself: less excess air, more carbon monoxide.
    (NotDeratedForAltitude, Natural, "==== ===", &[LessHeat, LessAir, Co, LessDraft]),
    (NotDeratedForAltitude, Propane, "==== ===", &[LessHeat, LessAir, Co, LessDraft]),
    (DelayedIgnition, Natural, "==== ===", &[Bang]),
    (DelayedIgnition, Propane, "==== ===", &[Bang]),
    // The trade's table has carbon monoxide at the registers. An exchanger under suction draws house
    // air in instead; what shows is flame, flue and roll-out.
    (HoledExchanger, Natural, "==== ===", &[LessAir, Co]),
    (HoledExchanger, Propane, "==== ===", &[LessAir, Co]),
    (BlockedVent, Natural, "==== ===", &[LessAir, Co, LessDraft]),
    (BlockedVent, Propane, "==== ===", &[LessAir, Co, LessDraft]),
    (BlockedIntake, Natural, "==== ===", &[LessAir, Co, LessDraft]),
    (BlockedIntake, Propane, "==== ===", &[LessAir, Co, LessDraft]),
];

#[test]
fn valve_faults_show_their_pattern() {
    check(VALVE);
}

#[test]
fn burner_faults_show_their_pattern() {
    check(BURNER);
}

pub const ALL: &[&[Row]] = &[VALVE, BURNER];
