//! The catalogue of repairs: what a hand can mend on a job, and what it can make worse.
//!
//! As a fault does, a repair changes the [`Setup`] that the bench works with: a spring, a seat, a
//! pipe, a contact. What is read and seen afterwards follows from the model. A part that is replaced
//! takes its numbers from the setup as it was before the first fault ([`Setup::sound`]); orifices
//! and springs are fitted by the figures of plate or label for the fuel in the pipes.
//!
//! Which of these is the right remedy for a fault, and which one tempts and harms, stands with the
//! fault ([`super::fault::Entry::right`], [`super::fault::Entry::wrong`]).

mod burner;
mod control;
mod fitting;
mod line;
mod measuring;
mod valve;
mod work;
mod yard;

use crate::parts::{Joint, Place};
use crate::setup::Setup;
use work::{OnReading, Work};

pub(crate) use work::{Bay, Beside};
pub use work::{Moves, Nature, Need};

/// Declares the repairs with their ids, their names for people and their entries.
macro_rules! repairs {
    ($( $(#[doc = $doc:literal])+ $variant:ident = $id:literal, $label:expr, $work:path; )+) => {
        /// A repair, done by hand.
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord,
            serde::Serialize, serde::Deserialize,
        )]
        #[serde(rename_all = "kebab-case")]
        pub enum Repair { $( $(#[doc = $doc])+ $variant, )+ }

        impl Repair {
            /// All of them, from the yard to the manometer.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];

            /// The id in scripts and records.
            #[must_use]
            pub fn id(self) -> &'static str {
                match self { $( Self::$variant => $id, )+ }
            }

            /// The name a person reads.
            #[must_use]
            pub fn label(self) -> &'static str {
                match self { $( Self::$variant => $label, )+ }
            }

            /// How it is done.
            fn work(self) -> &'static Work {
                match self { $( Self::$variant => &$work, )+ }
            }
        }
    };
}

repairs! {
    /// Another supply regulator of the right size, set as it should be.
    ReplaceSupplyRegulator = "replace-supply-regulator", t!("repair-replace-supply-regulator"),
        yard::REPLACE_SUPPLY_REGULATOR;
    /// Another first-stage regulator at the tank.
    ReplaceFirstStage = "replace-first-stage", t!("repair-replace-first-stage"),
        yard::REPLACE_FIRST_STAGE;
    /// Two regulators in a row instead of one straight on the tank.
    FitTwoStageRegulators = "fit-two-stage-regulators", t!("repair-fit-two-stage-regulators"),
        yard::FIT_TWO_STAGE_REGULATORS;
    /// Another excess-flow valve, of the right size.
    ReplaceExcessFlowValve = "replace-excess-flow-valve", t!("repair-replace-excess-flow-valve"),
        yard::REPLACE_EXCESS_FLOW_VALVE;
    /// Ice, mud or paint off the regulator's vent.
    ClearRegulatorVent = "clear-regulator-vent", t!("repair-clear-regulator-vent"),
        yard::CLEAR_REGULATOR_VENT;
    /// The vent plugged or taped over. Wrong.
    PlugRegulatorVent = "plug-regulator-vent", t!("repair-plug-regulator-vent"),
        yard::PLUG_REGULATOR_VENT;
    /// A drill through the blocked vent, and into the diaphragm. Wrong.
    DrillRegulatorVent = "drill-regulator-vent", t!("repair-drill-regulator-vent"),
        yard::DRILL_REGULATOR_VENT;
    /// Ice in the regulator thawed with warm cloths.
    ThawRegulator = "thaw-regulator", t!("repair-thaw-regulator"),
        yard::THAW_REGULATOR;
    /// Ice in the regulator thawed with a flame. Wrong.
    FlameOnRegulator = "flame-on-regulator", t!("repair-flame-on-regulator"),
        yard::FLAME_ON_REGULATOR;
    /// Another connector, of full bore.
    ReplaceConnector = "replace-connector", t!("repair-replace-connector"), line::REPLACE_CONNECTOR;
    /// The kink bent straight by hand. Wrong.
    StraightenConnector = "straighten-connector", t!("repair-straighten-connector"),
        line::STRAIGHTEN_CONNECTOR;
    /// Water out of the branch, and a drip leg fitted to it.
    EmptyDripLeg = "empty-drip-leg", t!("repair-empty-drip-leg"), line::EMPTY_DRIP_LEG;
    /// The trunk re-piped for the whole load.
    ReplaceTrunk = "replace-trunk", t!("repair-replace-trunk"), line::REPLACE_TRUNK;
    /// Air out of the branch.
    PurgeLine = "purge-line", t!("repair-purge-line"), line::PURGE_LINE;
    /// Dirt off the gas valve's screen.
    CleanInletScreen = "clean-inlet-screen", t!("repair-clean-inlet-screen"),
        valve::CLEAN_INLET_SCREEN;
    /// The screen taken out for good. Wrong.
    RemoveInletScreen = "remove-inlet-screen", t!("repair-remove-inlet-screen"),
        valve::REMOVE_INLET_SCREEN;
    /// Another gas valve.
    ReplaceGasValve = "replace-gas-valve", t!("repair-replace-gas-valve"), valve::REPLACE_GAS_VALVE;
    /// Another coil for the high stage.
    ReplaceHighCoil = "replace-high-coil", t!("repair-replace-high-coil"), valve::REPLACE_HIGH_COIL;
    /// The springs for the fuel in the pipes.
    FitSprings = "fit-springs", t!("repair-fit-springs"), valve::FIT_SPRINGS;
    /// The whole conversion kit: springs, orifices, low-gas switch, label.
    FitConversionKit = "fit-conversion-kit", t!("repair-fit-conversion-kit"),
        valve::FIT_CONVERSION_KIT;
    /// The burner box's hose back on the gas valve.
    RefitBoxHose = "refit-box-hose", t!("repair-refit-box-hose"), valve::REFIT_BOX_HOSE;
    /// The orifices of plate or label for the fuel in the pipes.
    FitOrifices = "fit-orifices", t!("repair-fit-orifices"), burner::FIT_ORIFICES;
    /// What sits in an orifice taken out.
    CleanOrifices = "clean-orifices", t!("repair-clean-orifices"), burner::CLEAN_ORIFICES;
    /// A drill through the orifices. Wrong.
    DrillOrifices = "drill-orifices", t!("repair-drill-orifices"), burner::DRILL_ORIFICES;
    /// Smaller orifices, as the height above the sea asks for.
    FitAltitudeOrifices = "fit-altitude-orifices", t!("repair-fit-altitude-orifices"),
        burner::FIT_ALTITUDE_ORIFICES;
    /// Burners cleaned, igniter set in its place.
    CleanBurners = "clean-burners", t!("repair-clean-burners"),
        burner::CLEAN_BURNERS;
    /// What blocks the flue taken out.
    ClearVent = "clear-vent", t!("repair-clear-vent"), burner::CLEAR_VENT;
    /// What covers the air opening taken off.
    ClearIntake = "clear-intake", t!("repair-clear-intake"), burner::CLEAR_INTAKE;
    /// The film off the flame rod.
    CleanFlameRod = "clean-flame-rod", t!("repair-clean-flame-rod"), control::CLEAN_FLAME_ROD;
    /// Burners and cabinet joined well to ground.
    MendBurnerGround = "mend-burner-ground", t!("repair-mend-burner-ground"),
        control::MEND_BURNER_GROUND;
    /// Another igniter.
    ReplaceIgniter = "replace-igniter", t!("repair-replace-igniter"), control::REPLACE_IGNITER;
    /// Another low pressure switch.
    ReplaceLowSwitch = "replace-low-switch", t!("repair-replace-low-switch"),
        control::REPLACE_LOW_SWITCH;
    /// Another high pressure switch.
    ReplaceHighSwitch = "replace-high-switch", t!("repair-replace-high-switch"),
        control::REPLACE_HIGH_SWITCH;
    /// Another hose to the pressure switches.
    ReplaceDraftHose = "replace-draft-hose", t!("repair-replace-draft-hose"),
        control::REPLACE_DRAFT_HOSE;
    /// The hose pushed back onto the pressure switches.
    RefitDraftHose = "refit-draft-hose", t!("repair-refit-draft-hose"), control::REFIT_DRAFT_HOSE;
    /// The condensate trap cleared, water out of housing and hose.
    ClearTrap = "clear-trap", t!("repair-clear-trap"), control::CLEAR_TRAP;
    /// The condensate trap filled with water.
    PrimeTrap = "prime-trap", t!("repair-prime-trap"), control::PRIME_TRAP;
    /// Another control board.
    ReplaceControlBoard = "replace-control-board", t!("repair-replace-control-board"),
        control::REPLACE_CONTROL_BOARD;
    /// The second stage's wire mended, the thermostat set up for two stages.
    MendSecondStageWire = "mend-second-stage-wire", t!("repair-mend-second-stage-wire"),
        control::MEND_SECOND_STAGE_WIRE;
    /// The thermostat's wire mended.
    MendThermostatWire = "mend-thermostat-wire", t!("repair-mend-thermostat-wire"),
        control::MEND_THERMOSTAT_WIRE;
    /// Another filter.
    ReplaceFilter = "replace-filter", t!("repair-replace-filter"), control::REPLACE_FILTER;
    /// All registers opened.
    OpenRegisters = "open-registers", t!("repair-open-registers"), control::OPEN_REGISTERS;
    /// Another low-gas switch.
    ReplaceLowGasSwitch = "replace-low-gas-switch", t!("repair-replace-low-gas-switch"),
        control::REPLACE_LOW_GAS_SWITCH;
    /// A wire across the low pressure switch. Wrong.
    BypassLowSwitch = "bypass-low-switch", t!("repair-bypass-low-switch"),
        control::BYPASS_LOW_SWITCH;
    /// A wire across the high pressure switch. Wrong.
    BypassHighSwitch = "bypass-high-switch", t!("repair-bypass-high-switch"),
        control::BYPASS_HIGH_SWITCH;
    /// A wire across the limit. Wrong.
    BypassLimit = "bypass-limit", t!("repair-bypass-limit"), control::BYPASS_LIMIT;
    /// A wire across the roll-out switches. Wrong.
    BypassRollout = "bypass-rollout", t!("repair-bypass-rollout"),
        control::BYPASS_ROLLOUT;
    /// A wire across the low-gas switch. Wrong.
    BypassLowGasSwitch = "bypass-low-gas-switch", t!("repair-bypass-low-gas-switch"),
        control::BYPASS_LOW_GAS_SWITCH;
    /// All such wires taken off.
    RemoveBypasses = "remove-bypasses", t!("repair-remove-bypasses"),
        control::REMOVE_BYPASSES;
    /// Another hose on the manometer.
    SwapMeterHose = "swap-meter-hose", t!("repair-swap-meter-hose"),
        measuring::SWAP_METER_HOSE;
    /// A fresh battery in the manometer.
    ReplaceMeterBattery = "replace-meter-battery", t!("repair-replace-meter-battery"),
        measuring::REPLACE_METER_BATTERY;
    /// Another manometer, with range enough.
    BorrowMeter = "borrow-meter", t!("repair-borrow-meter"),
        measuring::BORROW_METER;
    /// The inlet port's tapped hole cleaned.
    CleanInletTap = "clean-inlet-tap", t!("repair-clean-inlet-tap"),
        measuring::CLEAN_INLET_TAP;
    /// The manifold port's tapped hole cleaned.
    CleanManifoldTap = "clean-manifold-tap", t!("repair-clean-manifold-tap"),
        measuring::CLEAN_MANIFOLD_TAP;
    /// A drill into the inlet port. Wrong.
    DrillInletTap = "drill-inlet-tap", t!("repair-drill-inlet-tap"),
        measuring::DRILL_INLET_TAP;
    /// A drill into the manifold port. Wrong.
    DrillManifoldTap = "drill-manifold-tap", t!("repair-drill-manifold-tap"),
        measuring::DRILL_MANIFOLD_TAP;
}

impl Repair {
    /// The one with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|one| one.id() == id)
    }

    /// Where it is done.
    #[must_use]
    pub fn place(self) -> Place {
        self.work().place
    }

    /// What kind of work it is.
    #[must_use]
    pub fn nature(self) -> Nature {
        self.work().nature
    }

    /// The joint that it opens and closes again, to be checked for leaks afterwards.
    #[must_use]
    pub fn disturbs(self) -> Option<Joint> {
        self.work().disturbs
    }

    /// Whether it is work on the supply regulator or before it, which its owner may keep to itself. The
    /// trunk behind it is not among it.
    #[must_use]
    pub fn is_on_supply(self) -> bool {
        self.work().place == Place::Yard && self != Self::ReplaceTrunk
    }

    /// What must be so before it is done.
    #[must_use]
    pub fn needs(self) -> &'static [Need] {
        self.work().needs
    }

    /// Whether there is such a thing to work on.
    pub(crate) fn fits(self, setup: &Setup) -> bool {
        (self.work().there)(setup)
    }

    /// Changes the setup, and what else it works on.
    pub(crate) fn apply(self, bay: &mut Bay<'_>) {
        (self.work().apply)(bay);
    }

    /// Whose pressure is another once it is done.
    #[must_use]
    pub fn moves(self) -> Moves {
        self.work().moves
    }

    /// Whether it is work between the gas and the number on the display: on the manometer, its hose
    /// or the hole of a port.
    #[must_use]
    pub fn is_on_reading(self) -> bool {
        self.work().on_reading == OnReading::Yes
    }

    /// What it leaves behind as new.
    pub(crate) fn renews(self) -> crate::setup::Renewed {
        self.work().renews
    }
}
