//! Supply faults. Where a comment speaks of the trade's table, it means the usual troubleshooting
//! table of pressures at rest, alone and with all others (common practice).

use super::row::{Natural, Propane, Row, Sign::*, check, faulty, healthy};
use quarterturn::catalogue::fault::Fault::*;
use quarterturn::measure::pattern::Pattern;
use quarterturn::parts::Stage;
use quarterturn::units::PA_PER_INWC;

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // At rest and running low by the same amount; the low stage looks perfect.
    (SupplySetLow, Natural, "---- =--", &[LessHeat, Quiet]),
    (SupplySetLow, Propane, "---- =--", &[LessHeat, Quiet]),
    // High everywhere before the valve, the manifold as it should be.
    (SupplySetHigh, Natural, "++++ ===", &[Quiet]),
    (SupplySetHigh, Propane, "++++ ==.", &[OverPressure]),
    // Only at rest too high; with propane the relief opens so late that the coil no longer lifts
    // the seats against it.
    (CreepingSupplySeat, Natural, "+=== ===", &[Vented, HigherAfterwards]),
    (CreepingSupplySeat, Propane, "+... 000", &[Vented, OverPressure, Lockout]),
    // Slow to open, so low at first; shut in when the call ends, so high afterwards.
    (BlockedRegulatorVent, Natural, "=--. ===", &[HigherAfterwards]),
    (BlockedRegulatorVent, Propane, "=--. ===", &[HigherAfterwards, OverPressure]),
    // The trade's table says: hunting, low under load. The model says a little high under load, and
    // is right for a spring-loaded regulator: the gas behind the diaphragm helps the spring, so
    // that it fails open. At rest it reads lower because the gas that blows out of the vent keeps
    // it from locking up. Hunting needs mass, which the model's regulators do not have.
    (TornRegulatorDiaphragm, Natural, "-+++ ===", &[Vented]),
    (TornRegulatorDiaphragm, Propane, "-+++ ===", &[Vented]),
    // Right at rest; the more is drawn, the lower.
    (UndersizedRegulator, Natural, "=--- ==-", &[]),
    (UndersizedRegulator, Propane, "=--- =--", &[]),
    (UndersizedTrunk, Natural, "=--- ==-", &[]),
    (UndersizedTrunk, Propane, "=--- ==-", &[]),
    // Right at rest, low alone already.
    (KinkedConnector, Natural, "=--- =.-", &[]),
    (KinkedConnector, Propane, "=--- =--", &[]),
    (PartlyOpenManualValve, Natural, "=--- =.-", &[]),
    (PartlyOpenManualValve, Propane, "=--- =.-", &[]),
    // What is trapped behind a shut valve burns nothing and is soon gone. With propane the low-gas
    // switch stops the tries before the line is empty.
    (ShutManualValve, Natural, "=000 000", &[Retry, Lockout]),
    (ShutManualValve, Propane, ".--- 000", &[Retry, Lockout]),
    // The trade's table has an erratic manifold too. With natural gas the valve's regulator has
    // head enough to hold it still; with propane it shows.
    (WaterInLine, Natural, "=--. ===", &[InletSwings]),
    (WaterInLine, Propane, "=--- =..", &[InletSwings, ManifoldSwings]),
    (LowMainPressure, Natural, "---- =--", &[LessHeat]),
    (LineRegulatorWideOpen, Natural, "++++ 000", &[OverPressure, Lockout]),
    // Right until the last liquid is gone; then nothing.
    (NearlyEmptyTank, Propane, "===0 ==0", &[Retry]),
    // At rest right within a tenth; with everything on, down. The low-gas switch shuts the furnace
    // off before the inlet falls as far as the trade's table has it.
    (ColdTank, Propane, ".--- =.-", &[]),
    (FreezingRegulator, Propane, "===- ==-", &[]),
    (WeakFirstStage, Propane, ".--- =.-", &[]),
    // Set on a warm day, measured on a mild one: all low. See also `order`.
    (SingleStageRegulator, Propane, "---- =--", &[LessHeat]),
    // Slams shut when the whole house draws; the others go out, and once both sides are equal it
    // opens again for the furnace alone.
    (EarlyExcessFlowValve, Natural, "===. ==.", &[OthersOut]),
    (EarlyExcessFlowValve, Propane, "===. ==.", &[OthersOut]),
    // It opens as soon as gas flows: light-up after light-up is cut short.
    (EarlyLowGasSwitch, Propane, "=... 000", &[Retry]),
    (AirInLine, Natural, "==== ===", &[Retry]),
    (AirInLine, Propane, "==== ===", &[Retry]),
];

#[test]
fn supply_faults_show_their_pattern() {
    check(ROWS);
}

/// How the inlet stands at rest again one and five minutes after the burners stopped, against where it
/// stood at rest before, in inches of water.
fn climbs(pattern: &Pattern) -> [f64; 2] {
    let rest_pa = pattern.points[0].truth.inlet_pa;
    let again = pattern.points.iter().filter(|point| point.stage == Stage::RestAgain);
    let climbs: Vec<f64> =
        again.map(|point| (point.truth.inlet_pa - rest_pa) / PA_PER_INWC).collect();
    climbs.try_into().unwrap()
}

/// A lock-up is read after flow (common practice). A sound seat comes back to where it stood. A seat that
/// creeps climbs from minute to minute, up to where it stood before. A bonnet that cannot breathe locks
/// up late, far above where it stood before the first light-up, and stays there: at rest before flow
/// nothing shows.
#[test]
fn the_lock_up_after_flow_tells() {
    for fuel in [Natural, Propane] {
        let [soon, late] = climbs(&healthy(CreepingSupplySeat, fuel));
        assert!(soon.abs() < 0.1 && late.abs() < 0.1, "{fuel:?} {soon} {late}");
        let [soon, late] = climbs(&faulty(CreepingSupplySeat, fuel));
        assert!(soon < -1.0 && late - soon > 1.0 && late.abs() < 0.2, "{fuel:?} {soon} {late}");
        let [soon, late] = climbs(&faulty(BlockedRegulatorVent, fuel));
        assert!(soon > 1.0 && (late - soon).abs() < 0.1, "{fuel:?} {soon} {late}");
    }
}

pub const ALL: &[Row] = ROWS;
