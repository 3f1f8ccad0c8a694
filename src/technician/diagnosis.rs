//! What the technician takes a job's faults for, and why it gives a job up.

use crate::parts::Level;

/// Declares the diagnoses with their words for people.
macro_rules! diagnoses {
    ($( $diagnosis:ident = $words:expr; )+) => {
        /// What was found wrong, or why no more can be done.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Diagnosis { $(
            #[doc = "Its words stand in `technician.ftl` under its name."]
            $diagnosis,
        )+ }

        impl Diagnosis {
            /// In words for people.
            #[must_use]
            pub fn words(self) -> &'static str {
                match self { $( Self::$diagnosis => $words, )+ }
            }
        }
    };
}

impl Diagnosis {
    /// A firing level out of the band of the plate.
    pub(super) fn out_of_band(level: Level) -> Self {
        match level {
            Level::Only => Self::ManifoldOutOfBand,
            Level::Low => Self::LowOutOfBand,
            Level::High => Self::HighOutOfBand,
        }
    }
}

impl AsRef<str> for Diagnosis {
    fn as_ref(&self) -> &str {
        self.words()
    }
}

impl serde::Serialize for Diagnosis {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.words())
    }
}

diagnoses! {
    GasInTheAir = t!("diagnosis-gas-in-the-air");
    RegistersClosed = t!("diagnosis-registers-closed");
    FlueBlocked = t!("diagnosis-flue-blocked");
    AirOpeningCovered = t!("diagnosis-air-opening-covered");
    ConnectorKinked = t!("diagnosis-connector-kinked");
    WaterInTheLine = t!("diagnosis-water-in-the-line");
    FilterBlocked = t!("diagnosis-filter-blocked");
    OrificePlugged = t!("diagnosis-orifice-plugged");
    BurnerDark = t!("diagnosis-burner-dark");
    FlamesStayWrong = t!("diagnosis-flames-stay-wrong");
    ValveLetsGasBy = t!("diagnosis-valve-lets-gas-by");
    ValveDoesNotShut = t!("diagnosis-valve-does-not-shut");
    BoxHoseOff = t!("diagnosis-box-hose-off");
    RodFilmed = t!("diagnosis-rod-filmed");
    GroundLoose = t!("diagnosis-ground-loose");
    LowSwitchStaysOpen = t!("diagnosis-low-switch-stays-open");
    HighSwitchInThinAir = t!("diagnosis-high-switch-in-thin-air");
    HighSwitchStaysOpen = t!("diagnosis-high-switch-stays-open");
    DraftHoseOff = t!("diagnosis-draft-hose-off");
    DraftHoseSplit = t!("diagnosis-draft-hose-split");
    WaterInDraftHose = t!("diagnosis-water-in-draft-hose");
    TrapDry = t!("diagnosis-trap-dry");
    FlameLost = t!("diagnosis-flame-lost");
    RepairsInVain = t!("diagnosis-repairs-in-vain");
    CarbonMonoxide = t!("diagnosis-carbon-monoxide");
    ExchangerHoled = t!("diagnosis-exchanger-holed");
    TooLittleHeat = t!("diagnosis-too-little-heat");
    NotDerated = t!("diagnosis-not-derated");
    TooMuchGas = t!("diagnosis-too-much-gas");
    FlueStaysWrong = t!("diagnosis-flue-stays-wrong");
    MeterHoseLeaks = t!("diagnosis-meter-hose-leaks");
    NumberSlow = t!("diagnosis-number-slow");
    NumberSlowAtPort = t!("diagnosis-number-slow-at-port");
    PressureSwings = t!("diagnosis-pressure-swings");
    NeverSteady = t!("diagnosis-never-steady");
    MeterShowsNothing = t!("diagnosis-meter-shows-nothing");
    ZeroDoesNotComeBack = t!("diagnosis-zero-does-not-come-back");
    SupplySetLow = t!("diagnosis-supply-set-low");
    SupplyRaisedInVain = t!("diagnosis-supply-raised-in-vain");
    SupplySetHigh = t!("diagnosis-supply-set-high");
    SupplyCreeps = t!("diagnosis-supply-creeps");
    ExcessFlowShuts = t!("diagnosis-excess-flow-shuts");
    SupplyFailsUnderLoad = t!("diagnosis-supply-fails-under-load");
    TooLittleBeforeRegulator = t!("diagnosis-too-little-before-regulator");
    TrunkTooNarrow = t!("diagnosis-trunk-too-narrow");
    RegulatorTooSmall = t!("diagnosis-regulator-too-small");
    SupplyTooWeak = t!("diagnosis-supply-too-weak");
    SupplyTooHigh = t!("diagnosis-supply-too-high");
    SupplyScrewInVain = t!("diagnosis-supply-screw-in-vain");
    SupplyAbovePlate = t!("diagnosis-supply-above-plate");
    NoGas = t!("diagnosis-no-gas");
    TankNearlyEmpty = t!("diagnosis-tank-nearly-empty");
    VentBlocked = t!("diagnosis-vent-blocked");
    RegulatorVents = t!("diagnosis-regulator-vents");
    BossLeaksAgain = t!("diagnosis-boss-leaks-again");
    BossCracked = t!("diagnosis-boss-cracked");
    HighAlwaysCalled = t!("diagnosis-high-always-called");
    LightsLate = t!("diagnosis-lights-late");
    NoReasonFound = t!("diagnosis-no-reason-found");
    NoCallAtControl = t!("diagnosis-no-call-at-control");
    LowSwitchStuckClosed = t!("diagnosis-low-switch-stuck-closed");
    LowGasSwitchForPressure = t!("diagnosis-low-gas-switch-for-pressure");
    LowGasSwitchOpen = t!("diagnosis-low-gas-switch-open");
    IgniterDim = t!("diagnosis-igniter-dim");
    GasButNoFlame = t!("diagnosis-gas-but-no-flame");
    RolloutOpen = t!("diagnosis-rollout-open");
    RolloutOpensAgain = t!("diagnosis-rollout-opens-again");
    NoEnd = t!("diagnosis-no-end");
    HighDoesNotBurn = t!("diagnosis-high-does-not-burn");
    HighCoilDead = t!("diagnosis-high-coil-dead");
    LimitOpensAgain = t!("diagnosis-limit-opens-again");
    LimitOpens = t!("diagnosis-limit-opens");
    MeterBatteryFlat = t!("diagnosis-meter-battery-flat");
    MeterRangeTooSmall = t!("diagnosis-meter-range-too-small");
    MeterOfNoUse = t!("diagnosis-meter-of-no-use");
    NoSecondStage = t!("diagnosis-no-second-stage");
    HighNeverCalled = t!("diagnosis-high-never-called");
    HighOutOfBand = t!("diagnosis-high-out-of-band");
    ManifoldOutOfBand = t!("diagnosis-manifold-out-of-band");
    LowOutOfBand = t!("diagnosis-low-out-of-band");
    ManifoldFollowsInlet = t!("diagnosis-manifold-follows-inlet");
    ManifoldLowAndFollowing = t!("diagnosis-manifold-low-and-following");
    ScrewWithoutEffect = t!("diagnosis-screw-without-effect");
}
