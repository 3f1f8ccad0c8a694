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
use work::Work;

pub(crate) use work::{Bay, Beside};
pub use work::{Nature, Need};

/// Declares the repairs with their ids, their names for people and their entries.
macro_rules! repairs {
    ($( $(#[doc = $doc:literal])+ $variant:ident = $id:literal, $label:literal, $work:path; )+) => {
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
    ReplaceSupplyRegulator = "replace-supply-regulator", "Replace the supply regulator",
        yard::REPLACE_SUPPLY_REGULATOR;
    /// Another first-stage regulator at the tank.
    ReplaceFirstStage = "replace-first-stage", "Replace the first-stage regulator",
        yard::REPLACE_FIRST_STAGE;
    /// Two regulators in a row instead of one straight on the tank.
    FitTwoStageRegulators = "fit-two-stage-regulators", "Fit two-stage regulators",
        yard::FIT_TWO_STAGE_REGULATORS;
    /// Another excess-flow valve, of the right size.
    ReplaceExcessFlowValve = "replace-excess-flow-valve", "Replace the excess-flow valve",
        yard::REPLACE_EXCESS_FLOW_VALVE;
    /// Ice, mud or paint off the regulator's vent.
    ClearRegulatorVent = "clear-regulator-vent", "Clear the regulator's vent",
        yard::CLEAR_REGULATOR_VENT;
    /// The vent plugged or taped over. Wrong.
    PlugRegulatorVent = "plug-regulator-vent", "Plug the regulator's vent",
        yard::PLUG_REGULATOR_VENT;
    /// A drill through the blocked vent, and into the diaphragm. Wrong.
    DrillRegulatorVent = "drill-regulator-vent", "Drill the regulator's vent open",
        yard::DRILL_REGULATOR_VENT;
    /// Ice in the regulator thawed with warm cloths.
    ThawRegulator = "thaw-regulator", "Thaw the regulator with warm cloths",
        yard::THAW_REGULATOR;
    /// Ice in the regulator thawed with a flame. Wrong.
    FlameOnRegulator = "flame-on-regulator", "Thaw the regulator with a torch",
        yard::FLAME_ON_REGULATOR;
    /// Another connector, of full bore.
    ReplaceConnector = "replace-connector", "Replace the connector", line::REPLACE_CONNECTOR;
    /// The kink bent straight by hand. Wrong.
    StraightenConnector = "straighten-connector", "Bend the connector straight",
        line::STRAIGHTEN_CONNECTOR;
    /// Water out of the branch, and a drip leg fitted to it.
    EmptyDripLeg = "empty-drip-leg", "Empty the line and fit a drip leg", line::EMPTY_DRIP_LEG;
    /// The trunk re-piped for the whole load.
    ReplaceTrunk = "replace-trunk", "Re-pipe the trunk for the whole load", line::REPLACE_TRUNK;
    /// Air out of the branch.
    PurgeLine = "purge-line", "Purge the air out of the line", line::PURGE_LINE;
    /// Dirt off the gas valve's screen.
    CleanInletScreen = "clean-inlet-screen", "Clean the gas valve's screen",
        valve::CLEAN_INLET_SCREEN;
    /// The screen taken out for good. Wrong.
    RemoveInletScreen = "remove-inlet-screen", "Take the gas valve's screen out",
        valve::REMOVE_INLET_SCREEN;
    /// Another gas valve.
    ReplaceGasValve = "replace-gas-valve", "Replace the gas valve", valve::REPLACE_GAS_VALVE;
    /// Another coil for the high stage.
    ReplaceHighCoil = "replace-high-coil", "Replace the high coil", valve::REPLACE_HIGH_COIL;
    /// The springs for the fuel in the pipes.
    FitSprings = "fit-springs", "Fit the springs for this gas", valve::FIT_SPRINGS;
    /// The whole conversion kit: springs, orifices, low-gas switch, label.
    FitConversionKit = "fit-conversion-kit", "Fit the conversion kit for this gas",
        valve::FIT_CONVERSION_KIT;
    /// The burner box's hose back on the gas valve.
    RefitBoxHose = "refit-box-hose", "Refit the burner box's hose", valve::REFIT_BOX_HOSE;
    /// The orifices of plate or label for the fuel in the pipes.
    FitOrifices = "fit-orifices", "Fit the orifices of the plate", burner::FIT_ORIFICES;
    /// What sits in an orifice taken out.
    CleanOrifices = "clean-orifices", "Clean the orifices", burner::CLEAN_ORIFICES;
    /// A drill through the orifices. Wrong.
    DrillOrifices = "drill-orifices", "Drill the orifices out", burner::DRILL_ORIFICES;
    /// Smaller orifices, as the height above the sea asks for.
    FitAltitudeOrifices = "fit-altitude-orifices", "Fit orifices for the altitude",
        burner::FIT_ALTITUDE_ORIFICES;
    /// Burners cleaned, igniter set in its place.
    CleanBurners = "clean-burners", "Clean the burners and set the igniter",
        burner::CLEAN_BURNERS;
    /// What blocks the flue taken out.
    ClearVent = "clear-vent", "Clear the flue", burner::CLEAR_VENT;
    /// What covers the air opening taken off.
    ClearIntake = "clear-intake", "Clear the air opening", burner::CLEAR_INTAKE;
    /// The film off the flame rod.
    CleanFlameRod = "clean-flame-rod", "Clean the flame rod", control::CLEAN_FLAME_ROD;
    /// Burners and cabinet joined well to ground.
    MendBurnerGround = "mend-burner-ground", "Mend the burners' ground",
        control::MEND_BURNER_GROUND;
    /// Another igniter.
    ReplaceIgniter = "replace-igniter", "Replace the igniter", control::REPLACE_IGNITER;
    /// Another low pressure switch.
    ReplaceLowSwitch = "replace-low-switch", "Replace the low pressure switch",
        control::REPLACE_LOW_SWITCH;
    /// Another high pressure switch.
    ReplaceHighSwitch = "replace-high-switch", "Replace the high pressure switch",
        control::REPLACE_HIGH_SWITCH;
    /// Another hose to the pressure switches.
    ReplaceDraftHose = "replace-draft-hose", "Replace the draft hose",
        control::REPLACE_DRAFT_HOSE;
    /// The hose pushed back onto the pressure switches.
    RefitDraftHose = "refit-draft-hose", "Push the draft hose on", control::REFIT_DRAFT_HOSE;
    /// The condensate trap cleared, water out of housing and hose.
    ClearTrap = "clear-trap", "Clear the condensate trap", control::CLEAR_TRAP;
    /// The condensate trap filled with water.
    PrimeTrap = "prime-trap", "Fill the condensate trap", control::PRIME_TRAP;
    /// Another control board.
    ReplaceControlBoard = "replace-control-board", "Replace the control board",
        control::REPLACE_CONTROL_BOARD;
    /// The second stage's wire mended, the thermostat set up for two stages.
    MendSecondStageWire = "mend-second-stage-wire", "Mend the wire to W2",
        control::MEND_SECOND_STAGE_WIRE;
    /// The thermostat's wire mended.
    MendThermostatWire = "mend-thermostat-wire", "Mend the thermostat's wire",
        control::MEND_THERMOSTAT_WIRE;
    /// Another filter.
    ReplaceFilter = "replace-filter", "Replace the filter", control::REPLACE_FILTER;
    /// All registers opened.
    OpenRegisters = "open-registers", "Open the registers", control::OPEN_REGISTERS;
    /// Another low-gas switch.
    ReplaceLowGasSwitch = "replace-low-gas-switch", "Replace the low gas switch",
        control::REPLACE_LOW_GAS_SWITCH;
    /// A wire across the low pressure switch. Wrong.
    BypassLowSwitch = "bypass-low-switch", "Put a wire across the low pressure switch",
        control::BYPASS_LOW_SWITCH;
    /// A wire across the high pressure switch. Wrong.
    BypassHighSwitch = "bypass-high-switch", "Put a wire across the high pressure switch",
        control::BYPASS_HIGH_SWITCH;
    /// A wire across the limit. Wrong.
    BypassLimit = "bypass-limit", "Put a wire across the limit", control::BYPASS_LIMIT;
    /// A wire across the roll-out switches. Wrong.
    BypassRollout = "bypass-rollout", "Put a wire across the roll-out switches",
        control::BYPASS_ROLLOUT;
    /// A wire across the low-gas switch. Wrong.
    BypassLowGasSwitch = "bypass-low-gas-switch", "Put a wire across the low gas switch",
        control::BYPASS_LOW_GAS_SWITCH;
    /// All such wires taken off.
    RemoveBypasses = "remove-bypasses", "Take off every wire across a safety switch",
        control::REMOVE_BYPASSES;
    /// Another hose on the manometer.
    SwapMeterHose = "swap-meter-hose", "Put another hose on the manometer",
        measuring::SWAP_METER_HOSE;
    /// A fresh battery in the manometer.
    ReplaceMeterBattery = "replace-meter-battery", "Replace the manometer's battery",
        measuring::REPLACE_METER_BATTERY;
    /// Another manometer, with range enough.
    BorrowMeter = "borrow-meter", "Fetch a manometer of greater range",
        measuring::BORROW_METER;
    /// The inlet port's tapped hole cleaned.
    CleanInletTap = "clean-inlet-tap", "Clean the inlet port's hole",
        measuring::CLEAN_INLET_TAP;
    /// The manifold port's tapped hole cleaned.
    CleanManifoldTap = "clean-manifold-tap", "Clean the manifold port's hole",
        measuring::CLEAN_MANIFOLD_TAP;
    /// A drill into the inlet port. Wrong.
    DrillInletTap = "drill-inlet-tap", "Drill the inlet port's hole",
        measuring::DRILL_INLET_TAP;
    /// A drill into the manifold port. Wrong.
    DrillManifoldTap = "drill-manifold-tap", "Drill the manifold port's hole",
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

    /// What it leaves behind as new.
    pub(crate) fn renews(self) -> crate::setup::Renewed {
        self.work().renews
    }
}
