//! Control faults: the gas is right, the furnace is not. Where nothing is drawn, the inlet stands as
//! at rest: above what it is while a healthy furnace burns.

use super::row::{Natural, Propane, Row, Sign::*, check};
use quarterturn::catalogue::fault::Fault::*;

#[rustfmt::skip]
const ROWS: &[Row] = &[
    // It lights, the current is missed, it drops, and tries again.
    (DirtyFlameRod, Natural, "=... 000", &[Retry, Lockout, WasWarm]),
    (DirtyFlameRod, Propane, "=... 000", &[Retry, Lockout, WasWarm]),
    (PoorBurnerGround, Natural, "=... 000", &[Retry, Lockout, WasWarm]),
    (PoorBurnerGround, Propane, "=... 000", &[Retry, Lockout, WasWarm]),
    // Gas comes, but nothing lights it.
    (WeakIgniter, Natural, "=+.. 000", &[Retry, Lockout]),
    (WeakIgniter, Propane, "=+.. 000", &[Retry, Lockout]),
    // Gas never comes.
    (LowPressureSwitchOpen, Natural, "=++. 000", &[Retry, Lockout]),
    (LowPressureSwitchOpen, Propane, "=++. 000", &[Retry, Lockout]),
    (SplitDraftHose, Natural, "=++. 000", &[Retry, Lockout]),
    (SplitDraftHose, Propane, "=++. 000", &[Retry, Lockout]),
    (DraftHoseOff, Natural, "=++. 000", &[Retry, Lockout]),
    (DraftHoseOff, Propane, "=++. 000", &[Retry, Lockout]),
    (BlockedCondensateTrap, Natural, "=++. 000", &[Retry, Lockout]),
    (BlockedCondensateTrap, Propane, "=++. 000", &[Retry, Lockout]),
    // The low switch still makes, the high one does not.
    (DryCondensateTrap, Natural, "==++ =--", &[HighInVain, LessDraft, LessAir]),
    (DryCondensateTrap, Propane, "==++ =--", &[HighInVain, LessDraft, LessAir]),
    // The control refuses to start, and does not count that as a try.
    (LowPressureSwitchClosed, Natural, "=++. 000", &[Quiet]),
    (LowPressureSwitchClosed, Propane, "=++. 000", &[Quiet]),
    (HighPressureSwitchOpen, Natural, "==++ =--", &[HighInVain, LessHeat]),
    (HighPressureSwitchOpen, Propane, "==++ =--", &[HighInVain, LessHeat]),
    // All is well until the exchanger is hot.
    (BlockedFilter, Natural, "===. ==.", &[Limit, MoreRise]),
    (BlockedFilter, Propane, "===. ==.", &[Limit, MoreRise]),
    (ClosedRegisters, Natural, "===. ==.", &[Limit, MoreRise]),
    (ClosedRegisters, Propane, "===. ==.", &[Limit, MoreRise]),
    (TrippedRollOut, Natural, "=++. 000", &[RollOut, Quiet]),
    (TrippedRollOut, Propane, "=++. 000", &[RollOut, Quiet]),
    (ValveSwitchOff, Natural, "=++. 000", &[Retry, Lockout]),
    (ValveSwitchOff, Propane, "=++. 000", &[Retry, Lockout]),
    (DeadThermostatCircuit, Natural, "=++. 000", &[Quiet]),
    (DeadThermostatCircuit, Propane, "=++. 000", &[Quiet]),
    // A wire across a contact that has nothing to do changes no reading.
    (JumperedLimit, Natural, "==== ===", &[Quiet]),
    (JumperedLimit, Propane, "==== ===", &[Quiet]),
    (JumperedRollOut, Natural, "==== ===", &[Quiet]),
    (JumperedRollOut, Propane, "==== ===", &[Quiet]),
    // Closed at rest: the control refuses to start.
    (JumperedLowPressureSwitch, Natural, "=++. 000", &[Quiet]),
    (JumperedLowPressureSwitch, Propane, "=++. 000", &[Quiet]),
    (DeadInducer, Natural, "=++. 000", &[Retry, Lockout]),
    (DeadInducer, Propane, "=++. 000", &[Retry, Lockout]),
    (WeakBlower, Natural, "===. ==.", &[Limit, MoreRise]),
    (WeakBlower, Propane, "===. ==.", &[Limit, MoreRise]),
    (BlownControlFuse, Natural, "=++. 000", &[Quiet]),
    (BlownControlFuse, Propane, "=++. 000", &[Quiet]),
];

#[test]
fn control_faults_show_their_pattern() {
    check(ROWS);
}

pub const ALL: &[Row] = ROWS;
