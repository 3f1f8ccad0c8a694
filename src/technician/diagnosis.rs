//! What the technician takes a job's faults for, and why it gives a job up.

use crate::parts::Level;

/// Declares the diagnoses with their words for people.
macro_rules! diagnoses {
    ($( $diagnosis:ident = $words:literal; )+) => {
        /// What was found wrong, or why no more can be done.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Diagnosis { $(
            #[doc = concat!("In words: ", $words, ".")]
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
    GasInTheAir = "gas in the air: everybody out";
    RegistersClosed = "registers closed";
    FlueBlocked = "flue blocked";
    AirOpeningCovered = "air opening covered";
    ConnectorKinked = "connector kinked";
    WaterInTheLine = "water in the line, no drip leg";
    FilterBlocked = "filter blocked";
    OrificePlugged = "an orifice is plugged";
    BurnerDark = "a burner is dark";
    FlamesStayWrong = "flames stay wrong";
    ValveLetsGasBy = "gas valve lets gas by";
    ValveDoesNotShut = "gas valve does not shut";
    BoxHoseOff = "burner box hose off";
    RodFilmed = "film on the flame rod";
    GroundLoose = "burner ground loose";
    LowSwitchStaysOpen = "low pressure switch does not close";
    HighSwitchInThinAir = "high pressure switch stays open";
    HighSwitchStaysOpen = "high pressure switch does not close";
    DraftHoseOff = "draft hose off";
    DraftHoseSplit = "draft hose split";
    WaterInDraftHose = "water in the draft hose";
    TrapDry = "condensate trap dry";
    FlameLost = "flame is lost again";
    RepairsInVain = "every likely repair done in vain";
    CarbonMonoxide = "carbon monoxide in the flue at the right pressure";
    ExchangerHoled = "flames blown about once the blower runs: a hole in the exchanger";
    TooLittleHeat = "too little heat in the gas";
    NotDerated = "nothing changed for the altitude";
    TooMuchGas = "too much gas at the right pressure";
    FlueStaysWrong = "flue gas stays wrong";
    MeterHoseLeaks = "manometer's hose leaks";
    NumberSlow = "number comes slowly";
    NumberSlowAtPort = "number comes slowly at this port";
    PressureSwings = "pressure swings";
    NeverSteady = "pressure never steady";
    MeterShowsNothing = "burners burn and the meter shows nothing";
    ZeroDoesNotComeBack = "meter does not go back to zero";
    SupplySetLow = "supply set low";
    SupplyRaisedInVain = "supply raised in vain";
    SupplySetHigh = "supply set high";
    SupplyCreeps = "supply creeps at rest";
    ExcessFlowShuts = "inlet dead after the burners went out: an excess-flow valve shuts";
    SupplyFailsUnderLoad = "supply fails under load";
    TooLittleBeforeRegulator = "too little comes to the regulator";
    TrunkTooNarrow = "trunk too narrow for the load";
    RegulatorTooSmall = "regulator too small for the load";
    SupplyTooWeak = "supply too weak for the load";
    SupplyTooHigh = "supply too high at rest";
    SupplyScrewInVain = "supply's screw without effect";
    SupplyAbovePlate = "supply above the plate";
    NoGas = "no gas from the supply";
    TankNearlyEmpty = "tank nearly empty";
    VentBlocked = "regulator's vent blocked";
    RegulatorVents = "gas comes out of the regulator's vent";
    BossLeaksAgain = "boss leaks again";
    BossCracked = "boss cracked";
    HighAlwaysCalled = "second stage always called";
    LightsLate = "gas lights late";
    NoReasonFound = "no reason found";
    NoCallAtControl = "no call at the control";
    LowSwitchStuckClosed = "pressure switch stuck closed";
    LowGasSwitchForPressure = "low-gas switch open for want of pressure";
    LowGasSwitchOpen = "low-gas switch open with gas there";
    IgniterDim = "igniter does not glow bright";
    GasButNoFlame = "gas there, igniter bright, no flame";
    RolloutOpen = "roll-out switch open";
    RolloutOpensAgain = "roll-out switch opens again";
    NoEnd = "no end of it";
    HighDoesNotBurn = "high does not burn";
    HighCoilDead = "control gives high, burners stay low";
    LimitOpensAgain = "limit opens again";
    LimitOpens = "limit opens with the filter clean";
    MeterBatteryFlat = "manometer's battery flat";
    MeterRangeTooSmall = "manometer's range too small";
    MeterOfNoUse = "manometer of no use here";
    NoSecondStage = "no second stage from the thermostat";
    HighNeverCalled = "second stage never called";
    HighOutOfBand = "high stage out of its band";
    LowOutOfBand = "low stage out of its band";
    ManifoldOutOfBand = "manifold pressure out of its band";
    ManifoldFollowsInlet = "manifold follows the inlet";
    ManifoldLowAndFollowing = "inlet right, manifold low and following";
    ScrewWithoutEffect = "screw without effect";
}
