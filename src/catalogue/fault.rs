//! The catalogue of faults: named changes to the model, each with a severity and its range.
//!
//! A fault changes the [`Setup`] that a bench is built from: a spring, a seat, a pipe, an orifice, a
//! meter's zero. What is read and seen follows from the model.

mod burner;
mod control;
mod entry;
mod measuring;
pub mod remedy;
mod supply;
mod valve;

pub use crate::setup::Fault;
pub use entry::{Entry, Family, Scale, Severity};

use crate::setup::Setup;

impl Fault {
    /// Its entry in the catalogue.
    #[must_use]
    pub fn entry(self) -> &'static Entry {
        entry(self)
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
        (self.entry().misfit)(setup)
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
        (self.entry().apply)(setup, severity);
        setup.faults.push((self, severity));
    }
}

/// Which entry of the catalogue tells of a fault.
fn entry(fault: Fault) -> &'static Entry {
    match fault {
        Fault::SupplySetLow => &supply::SUPPLY_SET_LOW,
        Fault::SupplySetHigh => &supply::SUPPLY_SET_HIGH,
        Fault::CreepingSupplySeat => &supply::CREEPING_SUPPLY_SEAT,
        Fault::BlockedRegulatorVent => &supply::BLOCKED_REGULATOR_VENT,
        Fault::TornRegulatorDiaphragm => &supply::TORN_REGULATOR_DIAPHRAGM,
        Fault::UndersizedRegulator => &supply::UNDERSIZED_REGULATOR,
        Fault::UndersizedTrunk => &supply::UNDERSIZED_TRUNK,
        Fault::KinkedConnector => &supply::KINKED_CONNECTOR,
        Fault::PartlyOpenManualValve => &supply::PARTLY_OPEN_MANUAL_VALVE,
        Fault::ShutManualValve => &supply::SHUT_MANUAL_VALVE,
        Fault::WaterInLine => &supply::WATER_IN_LINE,
        Fault::LowMainPressure => &supply::LOW_MAIN_PRESSURE,
        Fault::LineRegulatorWideOpen => &supply::LINE_REGULATOR_WIDE_OPEN,
        Fault::NearlyEmptyTank => &supply::NEARLY_EMPTY_TANK,
        Fault::ColdTank => &supply::COLD_TANK,
        Fault::FreezingRegulator => &supply::FREEZING_REGULATOR,
        Fault::WeakFirstStage => &supply::WEAK_FIRST_STAGE,
        Fault::SingleStageRegulator => &supply::SINGLE_STAGE_REGULATOR,
        Fault::EarlyExcessFlowValve => &supply::EARLY_EXCESS_FLOW_VALVE,
        Fault::EarlyLowGasSwitch => &supply::EARLY_LOW_GAS_SWITCH,
        Fault::AirInLine => &supply::AIR_IN_LINE,
        Fault::LowStageSetLow => &valve::LOW_STAGE_SET_LOW,
        Fault::LowStageSetHigh => &valve::LOW_STAGE_SET_HIGH,
        Fault::HighStageSetHigh => &valve::HIGH_STAGE_SET_HIGH,
        Fault::HighStageSetLow => &valve::HIGH_STAGE_SET_LOW,
        Fault::DeadHighCoil => &valve::DEAD_HIGH_COIL,
        Fault::NoSecondStageCall => &valve::NO_SECOND_STAGE_CALL,
        Fault::StuckInHigh => &valve::STUCK_IN_HIGH,
        Fault::BlockedInletScreen => &valve::BLOCKED_INLET_SCREEN,
        Fault::NaturalSpringsOnPropane => &valve::NATURAL_SPRINGS_ON_PROPANE,
        Fault::NaturalOrificesOnPropane => &valve::NATURAL_ORIFICES_ON_PROPANE,
        Fault::UnconvertedOnPropane => &valve::UNCONVERTED_ON_PROPANE,
        Fault::PropaneOrificesOnNatural => &valve::PROPANE_ORIFICES_ON_NATURAL,
        Fault::PropaneSpringsOnNatural => &valve::PROPANE_SPRINGS_ON_NATURAL,
        Fault::BottomedHighScrew => &valve::BOTTOMED_HIGH_SCREW,
        Fault::MissingStageCap => &valve::MISSING_STAGE_CAP,
        Fault::LeakingGasValve => &valve::LEAKING_GAS_VALVE,
        Fault::SlowClosingGasValve => &valve::SLOW_CLOSING_GAS_VALVE,
        Fault::BurnerBoxHoseOff => &valve::BURNER_BOX_HOSE_OFF,
        Fault::HuntingValveRegulator => &valve::HUNTING_VALVE_REGULATOR,
        Fault::PluggedOrifice => &burner::PLUGGED_ORIFICE,
        Fault::OversizeOrifices => &burner::OVERSIZE_ORIFICES,
        Fault::LeanGas => &burner::LEAN_GAS,
        Fault::NotDeratedForAltitude => &burner::NOT_DERATED_FOR_ALTITUDE,
        Fault::DelayedIgnition => &burner::DELAYED_IGNITION,
        Fault::HoledExchanger => &burner::HOLED_EXCHANGER,
        Fault::BlockedVent => &burner::BLOCKED_VENT,
        Fault::BlockedIntake => &burner::BLOCKED_INTAKE,
        Fault::DirtyFlameRod => &control::DIRTY_FLAME_ROD,
        Fault::PoorBurnerGround => &control::POOR_BURNER_GROUND,
        Fault::WeakIgniter => &control::WEAK_IGNITER,
        Fault::LowPressureSwitchOpen => &control::LOW_PRESSURE_SWITCH_OPEN,
        Fault::SplitDraftHose => &control::SPLIT_DRAFT_HOSE,
        Fault::DraftHoseOff => &control::DRAFT_HOSE_OFF,
        Fault::LowPressureSwitchClosed => &control::LOW_PRESSURE_SWITCH_CLOSED,
        Fault::BlockedCondensateTrap => &control::BLOCKED_CONDENSATE_TRAP,
        Fault::DryCondensateTrap => &control::DRY_CONDENSATE_TRAP,
        Fault::HighPressureSwitchOpen => &control::HIGH_PRESSURE_SWITCH_OPEN,
        Fault::BlockedFilter => &control::BLOCKED_FILTER,
        Fault::ClosedRegisters => &control::CLOSED_REGISTERS,
        Fault::TrippedRollOut => &control::TRIPPED_ROLL_OUT,
        Fault::ValveSwitchOff => &control::VALVE_SWITCH_OFF,
        Fault::DeadThermostatCircuit => &control::DEAD_THERMOSTAT_CIRCUIT,
        Fault::MeterZeroOff => &measuring::METER_ZERO_OFF,
        Fault::MeterZeroDrifts => &measuring::METER_ZERO_DRIFTS,
        Fault::MeterZeroedUnderPressure => &measuring::METER_ZEROED_UNDER_PRESSURE,
        Fault::HoledMeterHose => &measuring::HOLED_METER_HOSE,
        Fault::WaterInMeterHose => &measuring::WATER_IN_METER_HOSE,
        Fault::PinchedMeterHose => &measuring::PINCHED_METER_HOSE,
        Fault::BlockedInletTap => &measuring::BLOCKED_INLET_TAP,
        Fault::BlockedManifoldTap => &measuring::BLOCKED_MANIFOLD_TAP,
        Fault::MeterSetToKilopascals => &measuring::METER_SET_TO_KILOPASCALS,
        Fault::MeterSetToMillibars => &measuring::METER_SET_TO_MILLIBARS,
        Fault::LowMeterBattery => &measuring::LOW_METER_BATTERY,
        Fault::SmallMeterRange => &measuring::SMALL_METER_RANGE,
        Fault::CrossThreadedPlug => &measuring::CROSS_THREADED_PLUG,
        Fault::LooseInletPlug => &measuring::LOOSE_INLET_PLUG,
        Fault::LooseManifoldPlug => &measuring::LOOSE_MANIFOLD_PLUG,
        Fault::CrackedBoss => &measuring::CRACKED_BOSS,
        Fault::AdapterLeftIn => &measuring::ADAPTER_LEFT_IN,
        Fault::FadedOdorant => &measuring::FADED_ODORANT,
    }
}
