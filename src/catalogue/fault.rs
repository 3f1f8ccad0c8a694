//! The catalogue of faults: named changes to the model, each with a severity and its range.
//!
//! A fault changes the [`Setup`] that a bench is built from: a spring, a seat, a pipe, an orifice, a
//! meter's zero. What is read and seen follows from the model. How severe it can be and what helps
//! stands in `assets/catalogue/faults.ron`, its texts in `assets/words/en/faults.ftl`.

mod burner;
mod control;
mod entry;
mod fits;
mod measuring;
pub mod remedy;
mod row;
mod supply;
mod valve;

pub use crate::setup::Fault;
pub use entry::{Entry, Family, Scale, Severity};
pub use fits::Fits;

pub(super) use row::{ENTRIES, asked};

use crate::setup::Setup;
use entry::Edit;

/// Declares which edit puts which fault into a setup.
macro_rules! edits {
    ($( $variant:ident = $edit:path; )+) => {
        impl Fault {
            /// What it changes in a setup.
            fn edit(self) -> Edit {
                match self { $( Self::$variant => $edit, )+ }
            }
        }
    };
}

edits! {
    SupplySetLow = supply::SUPPLY_SET_DOWN;
    SupplySetHigh = supply::SUPPLY_SET_UP;
    CreepingSupplySeat = supply::CREEPING_SUPPLY_SEAT;
    BlockedRegulatorVent = supply::BLOCKED_REGULATOR_VENT;
    TornRegulatorDiaphragm = supply::TORN_REGULATOR_DIAPHRAGM;
    UndersizedRegulator = supply::UNDERSIZED_REGULATOR;
    UndersizedTrunk = supply::UNDERSIZED_TRUNK;
    KinkedConnector = supply::KINKED_CONNECTOR;
    PartlyOpenManualValve = supply::PARTLY_OPEN_MANUAL_VALVE;
    ShutManualValve = supply::SHUT_MANUAL_VALVE;
    WaterInLine = supply::WATER_IN_LINE;
    LowMainPressure = supply::LOW_MAIN_PRESSURE;
    LineRegulatorWideOpen = supply::LINE_REGULATOR_WIDE_OPEN;
    NearlyEmptyTank = supply::NEARLY_EMPTY_TANK;
    ColdTank = supply::COLD_TANK;
    FreezingRegulator = supply::FREEZING_REGULATOR;
    WeakFirstStage = supply::WEAK_FIRST_STAGE;
    SingleStageRegulator = supply::SINGLE_STAGE_REGULATOR;
    EarlyExcessFlowValve = supply::EARLY_EXCESS_FLOW_VALVE;
    EarlyLowGasSwitch = supply::EARLY_LOW_GAS_SWITCH;
    AirInLine = supply::AIR_IN_LINE;
    LowStageSetLow = valve::FIRST_SET_DOWN;
    LowStageSetHigh = valve::FIRST_SET_UP;
    HighStageSetHigh = valve::FULL_SET_UP;
    HighStageSetLow = valve::FULL_SET_DOWN;
    DeadHighCoil = valve::DEAD_SECOND_COIL;
    NoSecondStageCall = valve::NO_SECOND_STAGE_CALL;
    StuckInHigh = valve::STUCK_IN_SECOND;
    BlockedInletScreen = valve::BLOCKED_INLET_SCREEN;
    NaturalSpringsOnPropane = valve::NATURAL_SPRINGS_ON_PROPANE;
    NaturalOrificesOnPropane = valve::NATURAL_ORIFICES_ON_PROPANE;
    UnconvertedOnPropane = valve::UNCONVERTED_ON_PROPANE;
    PropaneOrificesOnNatural = valve::PROPANE_ORIFICES_ON_NATURAL;
    PropaneSpringsOnNatural = valve::PROPANE_SPRINGS_ON_NATURAL;
    BottomedHighScrew = valve::BOTTOMED_FULL_SCREW;
    MissingStageCap = valve::MISSING_STAGE_CAP;
    LeakingGasValve = valve::LEAKING_GAS_VALVE;
    SlowClosingGasValve = valve::SLOW_CLOSING_GAS_VALVE;
    BurnerBoxHoseOff = valve::BURNER_BOX_HOSE_OFF;
    HuntingValveRegulator = valve::HUNTING_VALVE_REGULATOR;
    PluggedOrifice = burner::PLUGGED_ORIFICE;
    OversizeOrifices = burner::OVERSIZE_ORIFICES;
    LeanGas = burner::LEAN_GAS;
    NotDeratedForAltitude = burner::NOT_DERATED_FOR_ALTITUDE;
    DelayedIgnition = burner::DELAYED_IGNITION;
    HoledExchanger = burner::HOLED_EXCHANGER;
    BlockedVent = burner::BLOCKED_VENT;
    BlockedIntake = burner::BLOCKED_INTAKE;
    DirtyFlameRod = control::DIRTY_FLAME_ROD;
    PoorBurnerGround = control::POOR_BURNER_GROUND;
    WeakIgniter = control::WEAK_IGNITER;
    LowPressureSwitchOpen = control::FIRST_SWITCH_OPEN;
    SplitDraftHose = control::SPLIT_DRAFT_HOSE;
    DraftHoseOff = control::DRAFT_HOSE_OFF;
    LowPressureSwitchClosed = control::FIRST_SWITCH_CLOSED;
    BlockedCondensateTrap = control::BLOCKED_CONDENSATE_TRAP;
    DryCondensateTrap = control::DRY_CONDENSATE_TRAP;
    HighPressureSwitchOpen = control::FULL_SWITCH_OPEN;
    BlockedFilter = control::BLOCKED_FILTER;
    ClosedRegisters = control::CLOSED_REGISTERS;
    TrippedRollOut = control::TRIPPED_ROLL_OUT;
    ValveSwitchOff = control::VALVE_SWITCH_OFF;
    DeadThermostatCircuit = control::DEAD_THERMOSTAT_CIRCUIT;
    JumperedLimit = control::JUMPERED_LIMIT;
    JumperedRollOut = control::JUMPERED_ROLL_OUT;
    JumperedLowPressureSwitch = control::JUMPERED_FIRST_SWITCH;
    DeadInducer = control::DEAD_INDUCER;
    WeakBlower = control::WEAK_BLOWER;
    BlownControlFuse = control::BLOWN_CONTROL_FUSE;
    MeterZeroOff = measuring::METER_ZERO_OFF;
    MeterZeroDrifts = measuring::METER_ZERO_DRIFTS;
    MeterZeroedUnderPressure = measuring::METER_ZEROED_UNDER_PRESSURE;
    HoledMeterHose = measuring::HOLED_METER_HOSE;
    WaterInMeterHose = measuring::WATER_IN_METER_HOSE;
    PinchedMeterHose = measuring::PINCHED_METER_HOSE;
    BlockedInletTap = measuring::BLOCKED_INLET_TAP;
    BlockedManifoldTap = measuring::BLOCKED_MANIFOLD_TAP;
    MeterSetToKilopascals = measuring::METER_SET_TO_KILOPASCALS;
    MeterSetToMillibars = measuring::METER_SET_TO_MILLIBARS;
    LowMeterBattery = measuring::LOW_METER_BATTERY;
    SmallMeterRange = measuring::SMALL_METER_RANGE;
    CrossThreadedPlug = measuring::CROSS_THREADED_PLUG;
    LooseInletPlug = measuring::LOOSE_INLET_PLUG;
    LooseManifoldPlug = measuring::LOOSE_MANIFOLD_PLUG;
    CrackedBoss = measuring::CRACKED_BOSS;
    AdapterLeftIn = measuring::ADAPTER_LEFT_IN;
    FadedOdorant = measuring::FADED_ODORANT;
}

impl Fault {
    /// Its entry in the catalogue.
    #[must_use]
    pub fn entry(self) -> &'static Entry {
        let table = ENTRIES.as_ref().ok();
        table.and_then(|entries| entries.get(&self)).unwrap_or(&Entry::UNREAD)
    }

    /// Its name, in plain words joined by underscores.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.entry().name
    }

    /// The one with this name.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|fault| fault.name() == name)
    }

    /// Why it cannot be put into this setup, if it cannot.
    #[must_use]
    pub fn misfit(self, setup: &Setup) -> Option<&'static str> {
        self.entry().fits.misfit(setup)
    }

    /// Puts it into a setup, as severe as `severity` (SI; kept within its range), and notes it
    /// there. Into a setup that it does not fit it is not put.
    pub fn apply(self, setup: &mut Setup, severity: f64) {
        if self.misfit(setup).is_some() {
            return;
        }
        if setup.sound.is_none() {
            setup.sound = Some(Box::new(setup.clone()));
        }
        let severity = self.entry().severity.within(severity);
        self.edit()(setup, severity);
        setup.faults.push((self, severity));
    }
}
