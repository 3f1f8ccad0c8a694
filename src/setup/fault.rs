//! The faults by name: a setup notes which of them were put into it. What each of them changes
//! stands in the catalogue.

use serde::{Deserialize, Serialize};

/// Declares the faults and the list of all of them.
macro_rules! faults {
    ($( $(#[doc = $doc:literal])+ $variant:ident; )+) => {
        /// A fault. The catalogue's table names it in small letters: `supply_set_low`.
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize,
        )]
        #[serde(rename_all(deserialize = "snake_case"))]
        pub enum Fault { $( $(#[doc = $doc])+ $variant, )+ }

        impl Fault {
            /// All of them, in the order of the catalogue.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];
        }
    };
}

faults! {
    /// The supply regulator is set too low.
    SupplySetLow;
    /// The supply regulator is set too high.
    SupplySetHigh;
    /// The shut seat of the supply regulator lets gas by.
    CreepingSupplySeat;
    /// The vent of the supply regulator is blocked.
    BlockedRegulatorVent;
    /// The diaphragm of the supply regulator is torn.
    TornRegulatorDiaphragm;
    /// The supply regulator is too small.
    UndersizedRegulator;
    /// The trunk is too narrow.
    UndersizedTrunk;
    /// The connector has a kink.
    KinkedConnector;
    /// The manual valve is partly open.
    PartlyOpenManualValve;
    /// The manual valve is shut.
    ShutManualValve;
    /// Water stands in the line.
    WaterInLine;
    /// The main's pressure is low.
    LowMainPressure;
    /// The line regulator stands wide open.
    LineRegulatorWideOpen;
    /// The tank is nearly empty.
    NearlyEmptyTank;
    /// The tank is too cold for what is drawn.
    ColdTank;
    /// The regulator ices up.
    FreezingRegulator;
    /// The first stage gives too little.
    WeakFirstStage;
    /// One regulator stands straight on the tank.
    SingleStageRegulator;
    /// The excess-flow valve shuts too early.
    EarlyExcessFlowValve;
    /// The low-gas switch opens too early.
    EarlyLowGasSwitch;
    /// Air stands in the line.
    AirInLine;
    /// The low stage is set too low.
    LowStageSetLow;
    /// The low stage is set too high.
    LowStageSetHigh;
    /// The high stage is set too high.
    HighStageSetHigh;
    /// The high stage is set too low.
    HighStageSetLow;
    /// The high coil is dead.
    DeadHighCoil;
    /// The second stage is never called.
    NoSecondStageCall;
    /// The second stage is always called.
    StuckInHigh;
    /// Dirt on the gas valve's screen.
    BlockedInletScreen;
    /// Natural-gas springs on propane.
    NaturalSpringsOnPropane;
    /// Natural-gas orifices on propane.
    NaturalOrificesOnPropane;
    /// Nothing converted, on propane.
    UnconvertedOnPropane;
    /// Propane orifices on natural gas.
    PropaneOrificesOnNatural;
    /// Propane springs on natural gas.
    PropaneSpringsOnNatural;
    /// The high screw stands at its bottom.
    BottomedHighScrew;
    /// A stage cap is missing.
    MissingStageCap;
    /// The gas valve lets gas by.
    LeakingGasValve;
    /// The gas valve shuts slowly.
    SlowClosingGasValve;
    /// The hose from the burner box is off.
    BurnerBoxHoseOff;
    /// The gas valve's regulator hunts.
    HuntingValveRegulator;
    /// One orifice is plugged.
    PluggedOrifice;
    /// The orifices are too large.
    OversizeOrifices;
    /// The gas has a low heating value.
    LeanGas;
    /// Nothing was changed for the altitude.
    NotDeratedForAltitude;
    /// The gas reaches the igniter late.
    DelayedIgnition;
    /// A hole in the heat exchanger.
    HoledExchanger;
    /// The vent is blocked.
    BlockedVent;
    /// The air intake is blocked.
    BlockedIntake;
    /// Dirt on the flame rod.
    DirtyFlameRod;
    /// A poor ground at the burners.
    PoorBurnerGround;
    /// Igniter that no longer gets hot enough.
    WeakIgniter;
    /// The low pressure switch does not close.
    LowPressureSwitchOpen;
    /// The hose to the pressure switches is split.
    SplitDraftHose;
    /// The hose to the pressure switches is off.
    DraftHoseOff;
    /// The low pressure switch does not open.
    LowPressureSwitchClosed;
    /// Water stands in trap and draft hose.
    BlockedCondensateTrap;
    /// The condensate trap is dry.
    DryCondensateTrap;
    /// The high pressure switch does not close.
    HighPressureSwitchOpen;
    /// The filter is blocked.
    BlockedFilter;
    /// Registers that are closed by hand.
    ClosedRegisters;
    /// A roll-out switch has tripped.
    TrippedRollOut;
    /// The switch on the gas valve is off.
    ValveSwitchOff;
    /// The thermostat's circuit is dead.
    DeadThermostatCircuit;
    /// Jumper across the limit, left by others.
    JumperedLimit;
    /// Jumper across the roll-out switches, left by others.
    JumperedRollOut;
    /// Jumper across the low pressure switch, left by others.
    JumperedLowPressureSwitch;
    /// The inducer's motor stands still.
    DeadInducer;
    /// The blower turns too slowly, or not at all.
    WeakBlower;
    /// The fuse of the 24 volts has blown.
    BlownControlFuse;
    /// The manometer's zero is off.
    MeterZeroOff;
    /// The manometer's zero drifts.
    MeterZeroDrifts;
    /// The manometer was zeroed under pressure.
    MeterZeroedUnderPressure;
    /// The manometer's hose has a hole.
    HoledMeterHose;
    /// Water in the manometer's hose.
    WaterInMeterHose;
    /// The manometer's hose is pinched.
    PinchedMeterHose;
    /// The inlet port's hole is blocked.
    BlockedInletTap;
    /// The manifold port's hole is blocked.
    BlockedManifoldTap;
    /// The manometer stands at kilopascals.
    MeterSetToKilopascals;
    /// The manometer stands at millibars.
    MeterSetToMillibars;
    /// The manometer's battery is nearly flat.
    LowMeterBattery;
    /// The manometer's range is too small.
    SmallMeterRange;
    /// The manifold plug is cross-threaded.
    CrossThreadedPlug;
    /// The inlet plug is loose.
    LooseInletPlug;
    /// The manifold plug is loose.
    LooseManifoldPlug;
    /// The manifold boss is cracked.
    CrackedBoss;
    /// An adapter stands open in the manifold port.
    AdapterLeftIn;
    /// The gas has lost its odor.
    FadedOdorant;
}
