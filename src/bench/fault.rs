//! The catalogue of faults: named changes to the model, each with a severity and its range.
//!
//! A fault changes the [`Setup`] that a bench is built from: a spring, a seat, a pipe, an orifice, a
//! meter's zero. What is read and seen follows from the model.

pub mod air;
mod burner;
mod control;
pub mod endings;
mod entry;
pub mod felt;
mod measuring;
pub mod pattern;
pub mod remedy;
mod supply;
mod valve;

pub use entry::{Entry, Family, Scale, Severity};
pub(super) use valve::fit_springs;

use super::setup::Setup;

/// Declares the faults with their entries.
macro_rules! faults {
    ($( $(#[doc = $doc:literal])+ $variant:ident = $entry:path; )+) => {
        /// A fault.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Fault { $( $(#[doc = $doc])+ $variant, )+ }

        impl Fault {
            /// All of them, in the order of the catalogue.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];

            /// Its entry in the catalogue.
            #[must_use]
            pub fn entry(self) -> &'static Entry {
                match self { $( Self::$variant => &$entry, )+ }
            }
        }
    };
}

faults! {
    /// The supply regulator is set too low.
    SupplySetLow = supply::SUPPLY_SET_LOW;
    /// The supply regulator is set too high.
    SupplySetHigh = supply::SUPPLY_SET_HIGH;
    /// The shut seat of the supply regulator lets gas by.
    CreepingSupplySeat = supply::CREEPING_SUPPLY_SEAT;
    /// The vent of the supply regulator is blocked.
    BlockedRegulatorVent = supply::BLOCKED_REGULATOR_VENT;
    /// The diaphragm of the supply regulator is torn.
    TornRegulatorDiaphragm = supply::TORN_REGULATOR_DIAPHRAGM;
    /// The supply regulator is too small.
    UndersizedRegulator = supply::UNDERSIZED_REGULATOR;
    /// The trunk is too narrow.
    UndersizedTrunk = supply::UNDERSIZED_TRUNK;
    /// The connector has a kink.
    KinkedConnector = supply::KINKED_CONNECTOR;
    /// The manual valve is partly open.
    PartlyOpenManualValve = supply::PARTLY_OPEN_MANUAL_VALVE;
    /// The manual valve is shut.
    ShutManualValve = supply::SHUT_MANUAL_VALVE;
    /// Water stands in the line.
    WaterInLine = supply::WATER_IN_LINE;
    /// The main's pressure is low.
    LowMainPressure = supply::LOW_MAIN_PRESSURE;
    /// The line regulator stands wide open.
    LineRegulatorWideOpen = supply::LINE_REGULATOR_WIDE_OPEN;
    /// The tank is nearly empty.
    NearlyEmptyTank = supply::NEARLY_EMPTY_TANK;
    /// The tank is too cold for what is drawn.
    ColdTank = supply::COLD_TANK;
    /// The regulator ices up.
    FreezingRegulator = supply::FREEZING_REGULATOR;
    /// The first stage gives too little.
    WeakFirstStage = supply::WEAK_FIRST_STAGE;
    /// One regulator stands straight on the tank.
    SingleStageRegulator = supply::SINGLE_STAGE_REGULATOR;
    /// The excess-flow valve shuts too early.
    EarlyExcessFlowValve = supply::EARLY_EXCESS_FLOW_VALVE;
    /// The low-gas switch opens too early.
    EarlyLowGasSwitch = supply::EARLY_LOW_GAS_SWITCH;
    /// Air stands in the line.
    AirInLine = supply::AIR_IN_LINE;
    /// The low stage is set too low.
    LowStageSetLow = valve::LOW_STAGE_SET_LOW;
    /// The low stage is set too high.
    LowStageSetHigh = valve::LOW_STAGE_SET_HIGH;
    /// The high stage is set too high.
    HighStageSetHigh = valve::HIGH_STAGE_SET_HIGH;
    /// The high stage is set too low.
    HighStageSetLow = valve::HIGH_STAGE_SET_LOW;
    /// The high coil is dead.
    DeadHighCoil = valve::DEAD_HIGH_COIL;
    /// The second stage is never called.
    NoSecondStageCall = valve::NO_SECOND_STAGE_CALL;
    /// The second stage is always called.
    StuckInHigh = valve::STUCK_IN_HIGH;
    /// Dirt on the gas valve's screen.
    BlockedInletScreen = valve::BLOCKED_INLET_SCREEN;
    /// Natural-gas springs on propane.
    NaturalSpringsOnPropane = valve::NATURAL_SPRINGS_ON_PROPANE;
    /// Natural-gas orifices on propane.
    NaturalOrificesOnPropane = valve::NATURAL_ORIFICES_ON_PROPANE;
    /// Nothing converted, on propane.
    UnconvertedOnPropane = valve::UNCONVERTED_ON_PROPANE;
    /// Propane orifices on natural gas.
    PropaneOrificesOnNatural = valve::PROPANE_ORIFICES_ON_NATURAL;
    /// Propane springs on natural gas.
    PropaneSpringsOnNatural = valve::PROPANE_SPRINGS_ON_NATURAL;
    /// The high screw stands at its bottom.
    BottomedHighScrew = valve::BOTTOMED_HIGH_SCREW;
    /// A stage cap is missing.
    MissingStageCap = valve::MISSING_STAGE_CAP;
    /// The gas valve lets gas by.
    LeakingGasValve = valve::LEAKING_GAS_VALVE;
    /// The gas valve shuts slowly.
    SlowClosingGasValve = valve::SLOW_CLOSING_GAS_VALVE;
    /// The hose from the burner box is off.
    BurnerBoxHoseOff = valve::BURNER_BOX_HOSE_OFF;
    /// The gas valve's regulator hunts.
    HuntingValveRegulator = valve::HUNTING_VALVE_REGULATOR;
    /// One orifice is plugged.
    PluggedOrifice = burner::PLUGGED_ORIFICE;
    /// The orifices are too large.
    OversizeOrifices = burner::OVERSIZE_ORIFICES;
    /// The gas has a low heating value.
    LeanGas = burner::LEAN_GAS;
    /// Nothing was changed for the altitude.
    NotDeratedForAltitude = burner::NOT_DERATED_FOR_ALTITUDE;
    /// The gas reaches the igniter late.
    DelayedIgnition = burner::DELAYED_IGNITION;
    /// A hole in the heat exchanger.
    HoledExchanger = burner::HOLED_EXCHANGER;
    /// The vent is blocked.
    BlockedVent = burner::BLOCKED_VENT;
    /// The air intake is blocked.
    BlockedIntake = burner::BLOCKED_INTAKE;
    /// Dirt on the flame rod.
    DirtyFlameRod = control::DIRTY_FLAME_ROD;
    /// A poor ground at the burners.
    PoorBurnerGround = control::POOR_BURNER_GROUND;
    /// A weak igniter.
    WeakIgniter = control::WEAK_IGNITER;
    /// The low pressure switch does not close.
    LowPressureSwitchOpen = control::LOW_PRESSURE_SWITCH_OPEN;
    /// The hose to the pressure switches is split.
    SplitDraftHose = control::SPLIT_DRAFT_HOSE;
    /// The hose to the pressure switches is off.
    DraftHoseOff = control::DRAFT_HOSE_OFF;
    /// The low pressure switch does not open.
    LowPressureSwitchClosed = control::LOW_PRESSURE_SWITCH_CLOSED;
    /// Water stands in trap and draft hose.
    BlockedCondensateTrap = control::BLOCKED_CONDENSATE_TRAP;
    /// The condensate trap is dry.
    DryCondensateTrap = control::DRY_CONDENSATE_TRAP;
    /// The high pressure switch does not close.
    HighPressureSwitchOpen = control::HIGH_PRESSURE_SWITCH_OPEN;
    /// The filter is blocked.
    BlockedFilter = control::BLOCKED_FILTER;
    /// Registers are closed.
    ClosedRegisters = control::CLOSED_REGISTERS;
    /// A roll-out switch has tripped.
    TrippedRollOut = control::TRIPPED_ROLL_OUT;
    /// The switch on the gas valve is off.
    ValveSwitchOff = control::VALVE_SWITCH_OFF;
    /// The thermostat's circuit is dead.
    DeadThermostatCircuit = control::DEAD_THERMOSTAT_CIRCUIT;
    /// The manometer's zero is off.
    MeterZeroOff = measuring::METER_ZERO_OFF;
    /// The manometer's zero drifts.
    MeterZeroDrifts = measuring::METER_ZERO_DRIFTS;
    /// The manometer was zeroed under pressure.
    MeterZeroedUnderPressure = measuring::METER_ZEROED_UNDER_PRESSURE;
    /// The manometer's hose has a hole.
    HoledMeterHose = measuring::HOLED_METER_HOSE;
    /// Water in the manometer's hose.
    WaterInMeterHose = measuring::WATER_IN_METER_HOSE;
    /// The manometer's hose is pinched.
    PinchedMeterHose = measuring::PINCHED_METER_HOSE;
    /// The inlet port's hole is blocked.
    BlockedInletTap = measuring::BLOCKED_INLET_TAP;
    /// The manifold port's hole is blocked.
    BlockedManifoldTap = measuring::BLOCKED_MANIFOLD_TAP;
    /// The manometer stands at kilopascals.
    MeterSetToKilopascals = measuring::METER_SET_TO_KILOPASCALS;
    /// The manometer stands at millibars.
    MeterSetToMillibars = measuring::METER_SET_TO_MILLIBARS;
    /// The manometer's battery is nearly flat.
    LowMeterBattery = measuring::LOW_METER_BATTERY;
    /// The manometer's range is too small.
    SmallMeterRange = measuring::SMALL_METER_RANGE;
    /// The manifold plug is cross-threaded.
    CrossThreadedPlug = measuring::CROSS_THREADED_PLUG;
    /// The inlet plug is loose.
    LooseInletPlug = measuring::LOOSE_INLET_PLUG;
    /// The manifold plug is loose.
    LooseManifoldPlug = measuring::LOOSE_MANIFOLD_PLUG;
    /// The manifold boss is cracked.
    CrackedBoss = measuring::CRACKED_BOSS;
    /// An adapter stands open in the manifold port.
    AdapterLeftIn = measuring::ADAPTER_LEFT_IN;
    /// The gas has lost its odour.
    FadedOdorant = measuring::FADED_ODORANT;
}

impl Fault {
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
