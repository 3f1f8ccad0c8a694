//! What the technician takes a job's faults for, and why it gives a job up.

use crate::parts::{Cause, Level};
use Stands::{Burners, Flame, For, Hose, Light, Nothing, OutOfBand, Screw, Supply, Tap};

/// What a diagnosis stands for among the causes that a finding can name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Stands {
    /// This cause, whatever else was found.
    For(Cause),
    /// The side on which a level lies out of its band.
    OutOfBand(Level),
    /// What the pattern of the inlet tells of the supply.
    Supply,
    /// What the manometer's hose looks like.
    Hose,
    /// The hole of the port that was cleaned last.
    Tap,
    /// What was cleaned last at the burners.
    Burners,
    /// What was mended last against a flame that is lost.
    Flame,
    /// What was mended last against burners that do not light.
    Light,
    /// What was mended last against a screw without effect.
    Screw,
    /// No cause: no more could be done.
    Nothing,
}

/// Declares the diagnoses with their words for people and what they stand for.
macro_rules! diagnoses {
    ($( $diagnosis:ident = $words:expr, $stands:expr; )+) => {
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

            /// What it stands for on the job sheet.
            pub(super) fn stands(self) -> Stands {
                match self { $( Self::$diagnosis => $stands, )+ }
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
    GasInTheAir = t!("diagnosis-gas-in-the-air"), For(Cause::GasInTheAir);
    RegistersClosed = t!("diagnosis-registers-closed"), For(Cause::RegistersClosed);
    FlueBlocked = t!("diagnosis-flue-blocked"), For(Cause::VentBlocked);
    AirOpeningCovered = t!("diagnosis-air-opening-covered"), For(Cause::AirOpeningCovered);
    ConnectorKinked = t!("diagnosis-connector-kinked"), For(Cause::ConnectorKinked);
    WaterInTheLine = t!("diagnosis-water-in-the-line"), For(Cause::WaterInLine);
    FilterBlocked = t!("diagnosis-filter-blocked"), For(Cause::FilterBlocked);
    OrificePlugged = t!("diagnosis-orifice-plugged"), For(Cause::OrificePlugged);
    BurnerDark = t!("diagnosis-burner-dark"), Burners;
    FlamesStayWrong = t!("diagnosis-flames-stay-wrong"), Nothing;
    ValveLetsGasBy = t!("diagnosis-valve-lets-gas-by"), For(Cause::ValveLetsBy);
    ValveDoesNotShut = t!("diagnosis-valve-does-not-shut"), For(Cause::ValveShutsSlowly);
    BoxHoseOff = t!("diagnosis-box-hose-off"), For(Cause::BoxHoseOff);
    RodFilmed = t!("diagnosis-rod-filmed"), For(Cause::FlameRodFilmed);
    GroundLoose = t!("diagnosis-ground-loose"), For(Cause::GroundPoor);
    FirstSwitchStaysOpen = t!("diagnosis-low-switch-stays-open"), For(Cause::LowSwitchStaysOpen);
    FullSwitchInThinAir = t!("diagnosis-high-switch-in-thin-air"), For(Cause::NotDerated);
    FullSwitchStaysOpen = t!("diagnosis-high-switch-stays-open"), For(Cause::HighSwitchStaysOpen);
    DraftHoseOff = t!("diagnosis-draft-hose-off"), For(Cause::DraftHoseOff);
    DraftHoseSplit = t!("diagnosis-draft-hose-split"), For(Cause::DraftHoseSplit);
    WaterInDraftHose = t!("diagnosis-water-in-draft-hose"), For(Cause::TrapBlocked);
    TrapDry = t!("diagnosis-trap-dry"), For(Cause::TrapDry);
    FlameLost = t!("diagnosis-flame-lost"), Flame;
    RepairsInVain = t!("diagnosis-repairs-in-vain"), Nothing;
    CarbonMonoxide = t!("diagnosis-carbon-monoxide"), Nothing;
    ExchangerHoled = t!("diagnosis-exchanger-holed"), For(Cause::ExchangerHoled);
    TooLittleHeat = t!("diagnosis-too-little-heat"), For(Cause::GasLean);
    NotDerated = t!("diagnosis-not-derated"), For(Cause::NotDerated);
    TooMuchGas = t!("diagnosis-too-much-gas"), For(Cause::OrificesTooLarge);
    FlueStaysWrong = t!("diagnosis-flue-stays-wrong"), Nothing;
    MeterHoseLeaks = t!("diagnosis-meter-hose-leaks"), For(Cause::MeterHoseLeaks);
    NumberSlow = t!("diagnosis-number-slow"), Hose;
    NumberSlowAtPort = t!("diagnosis-number-slow-at-port"), Tap;
    PressureSwings = t!("diagnosis-pressure-swings"), For(Cause::ValveRegulatorHunts);
    NeverSteady = t!("diagnosis-never-steady"), Nothing;
    MeterShowsNothing = t!("diagnosis-meter-shows-nothing"), Tap;
    ZeroDoesNotComeBack = t!("diagnosis-zero-does-not-come-back"), Hose;
    SupplySetLow = t!("diagnosis-supply-set-low"), Supply;
    SupplyRaisedInVain = t!("diagnosis-supply-raised-in-vain"), Supply;
    SupplySetHigh = t!("diagnosis-supply-set-high"), Supply;
    SupplyCreeps = t!("diagnosis-supply-creeps"), Supply;
    ExcessFlowShuts = t!("diagnosis-excess-flow-shuts"), Supply;
    SupplyFailsUnderLoad = t!("diagnosis-supply-fails-under-load"), Supply;
    TooLittleBeforeRegulator = t!("diagnosis-too-little-before-regulator"), Supply;
    TrunkTooNarrow = t!("diagnosis-trunk-too-narrow"), Supply;
    RegulatorTooSmall = t!("diagnosis-regulator-too-small"), Supply;
    SupplyTooWeak = t!("diagnosis-supply-too-weak"), Supply;
    SupplyTooHigh = t!("diagnosis-supply-too-high"), Supply;
    SupplyScrewInVain = t!("diagnosis-supply-screw-in-vain"), Supply;
    SupplyAbovePlate = t!("diagnosis-supply-above-plate"), Supply;
    NoGas = t!("diagnosis-no-gas"), Supply;
    TankNearlyEmpty = t!("diagnosis-tank-nearly-empty"), For(Cause::TankNearlyEmpty);
    VentBlocked = t!("diagnosis-vent-blocked"), For(Cause::RegulatorVentBlocked);
    RegulatorVents = t!("diagnosis-regulator-vents"), For(Cause::RegulatorVents);
    BossLeaksAgain = t!("diagnosis-boss-leaks-again"), For(Cause::BossCracked);
    BossCracked = t!("diagnosis-boss-cracked"), For(Cause::BossCracked);
    SecondStageAlwaysCalled = t!("diagnosis-high-always-called"), For(Cause::HighAlwaysCalled);
    LightsLate = t!("diagnosis-lights-late"), For(Cause::BurnersDirty);
    SafetyJumpered = t!("diagnosis-safety-jumpered"), For(Cause::SafetyJumpered);
    InducerDead = t!("diagnosis-inducer-dead"), For(Cause::InducerDead);
    BlowerWeak = t!("diagnosis-blower-weak"), For(Cause::BlowerTooSlow);
    ControlFuseBlown = t!("diagnosis-control-fuse-blown"), For(Cause::ControlFuseBlown);
    NoReasonFound = t!("diagnosis-no-reason-found"), Nothing;
    NoCallAtControl = t!("diagnosis-no-call-at-control"), For(Cause::ThermostatCircuitOpen);
    FirstSwitchStuckClosed = t!("diagnosis-low-switch-stuck-closed"), For(Cause::LowSwitchStaysClosed);
    LowGasSwitchForPressure = t!("diagnosis-low-gas-switch-for-pressure"), Supply;
    LowGasSwitchOpen = t!("diagnosis-low-gas-switch-open"), For(Cause::LowGasSwitchOpensEarly);
    IgniterDim = t!("diagnosis-igniter-dim"), For(Cause::IgniterWeak);
    GasButNoFlame = t!("diagnosis-gas-but-no-flame"), Light;
    RolloutOpen = t!("diagnosis-rollout-open"), For(Cause::RolloutTripped);
    RolloutOpensAgain = t!("diagnosis-rollout-opens-again"), Nothing;
    NoEnd = t!("diagnosis-no-end"), Nothing;
    SecondStageDoesNotBurn = t!("diagnosis-high-does-not-burn"), Nothing;
    SecondCoilDead = t!("diagnosis-high-coil-dead"), For(Cause::HighCoilDead);
    LimitOpensAgain = t!("diagnosis-limit-opens-again"), Nothing;
    LimitOpens = t!("diagnosis-limit-opens"), For(Cause::RegistersClosed);
    MeterBatteryFlat = t!("diagnosis-meter-battery-flat"), For(Cause::MeterBatteryLow);
    MeterRangeTooSmall = t!("diagnosis-meter-range-too-small"), For(Cause::MeterRangeSmall);
    MeterOfNoUse = t!("diagnosis-meter-of-no-use"), Nothing;
    NoSecondStage = t!("diagnosis-no-second-stage"), Nothing;
    SecondStageNeverCalled = t!("diagnosis-high-never-called"), For(Cause::SecondStageNotCalled);
    HighOutOfBand = t!("diagnosis-high-out-of-band"), OutOfBand(Level::High);
    ManifoldOutOfBand = t!("diagnosis-manifold-out-of-band"), OutOfBand(Level::Only);
    LowOutOfBand = t!("diagnosis-low-out-of-band"), OutOfBand(Level::Low);
    ManifoldFollowsInlet = t!("diagnosis-manifold-follows-inlet"), Nothing;
    ManifoldLowAndFollowing = t!("diagnosis-manifold-low-and-following"), For(Cause::InletScreenBlocked);
    ScrewWithoutEffect = t!("diagnosis-screw-without-effect"), Screw;
}
