//! The catalogue of repairs: what a hand can mend on a job, and what it can make worse.
//!
//! As a fault does, a repair changes the [`Setup`] that the bench works with: a spring, a seat, a
//! pipe, a contact. What is read and seen afterwards follows from the model. A part that is replaced
//! takes its numbers from the setup as it was before the first fault ([`Setup::sound`]); orifices
//! and springs are fitted by the figures of plate or label for the fuel in the pipes.
//!
//! Where a repair is done, what it needs and what it touches stands in
//! `assets/catalogue/repairs.ron`, its name in `assets/words/en/repairs.ftl`. Which of these is the
//! right remedy for a fault, and which one tempts and harms, stands with the fault
//! ([`super::fault::Entry::right`], [`super::fault::Entry::wrong`]).

mod burner;
mod control;
mod fitting;
mod line;
mod measuring;
mod repairs;
mod row;
mod valve;
mod work;
mod yard;

use crate::parts::{Joint, Place};
use crate::setup::Setup;
use work::{Edit, OnPiping, OnReading, Work};

pub use repairs::Repair;
pub(super) use row::{WORKS, asked};
pub(crate) use work::{Beside, RepairContext};
pub use work::{Moves, Nature, Need, There};

/// Declares which edit does which repair.
macro_rules! edits {
    ($( $variant:ident = $edit:path; )+) => {
        impl Repair {
            /// What it changes in the setup and beside it.
            fn edit(self) -> Edit {
                match self { $( Self::$variant => $edit, )+ }
            }
        }
    };
}

edits! {
    ReplaceSupplyRegulator = yard::REPLACE_SUPPLY_REGULATOR;
    ReplaceFirstStage = yard::REPLACE_FIRST_STAGE;
    FitTwoStageRegulators = yard::FIT_TWO_STAGE_REGULATORS;
    ReplaceExcessFlowValve = yard::REPLACE_EXCESS_FLOW_VALVE;
    ClearRegulatorVent = yard::CLEAR_REGULATOR_VENT;
    PlugRegulatorVent = yard::PLUG_REGULATOR_VENT;
    DrillRegulatorVent = yard::DRILL_REGULATOR_VENT;
    ThawRegulator = yard::THAW_REGULATOR;
    FlameOnRegulator = yard::FLAME_ON_REGULATOR;
    ReplaceConnector = line::REPLACE_CONNECTOR;
    StraightenConnector = line::STRAIGHTEN_CONNECTOR;
    EmptyDripLeg = line::EMPTY_DRIP_LEG;
    ReplaceTrunk = line::REPLACE_TRUNK;
    PurgeLine = line::PURGE_LINE;
    CleanInletScreen = valve::CLEAN_INLET_SCREEN;
    RemoveInletScreen = valve::REMOVE_INLET_SCREEN;
    ReplaceGasValve = valve::REPLACE_GAS_VALVE;
    ReplaceSecondCoil = valve::REPLACE_SECOND_COIL;
    FitSprings = valve::FIT_SPRINGS;
    FitConversionKit = valve::FIT_CONVERSION_KIT;
    RefitBoxHose = valve::REFIT_BOX_HOSE;
    FitOrifices = burner::FIT_ORIFICES;
    CleanOrifices = burner::CLEAN_ORIFICES;
    DrillOrifices = burner::DRILL_ORIFICES;
    FitAltitudeOrifices = burner::FIT_ALTITUDE_ORIFICES;
    CleanBurners = burner::CLEAN_BURNERS;
    ClearVent = burner::CLEAR_VENT;
    ClearIntake = burner::CLEAR_INTAKE;
    CleanFlameRod = control::CLEAN_FLAME_ROD;
    MendBurnerGround = control::MEND_BURNER_GROUND;
    ReplaceIgniter = control::REPLACE_IGNITER;
    ReplaceFirstSwitch = control::REPLACE_FIRST_SWITCH;
    ReplaceFullSwitch = control::REPLACE_FULL_SWITCH;
    ReplaceDraftHose = control::REPLACE_DRAFT_HOSE;
    RefitDraftHose = control::REFIT_DRAFT_HOSE;
    ClearTrap = control::CLEAR_TRAP;
    PrimeTrap = control::PRIME_TRAP;
    ReplaceControlBoard = control::REPLACE_CONTROL_BOARD;
    MendSecondStageWire = control::MEND_SECOND_STAGE_WIRE;
    MendThermostatWire = control::MEND_THERMOSTAT_WIRE;
    ReplaceFilter = control::REPLACE_FILTER;
    OpenRegisters = control::OPEN_REGISTERS;
    ReplaceInducer = control::REPLACE_INDUCER;
    ReplaceBlowerMotor = control::REPLACE_BLOWER_MOTOR;
    ReplaceControlFuse = control::REPLACE_CONTROL_FUSE;
    ReplaceLowGasSwitch = control::REPLACE_LOW_GAS_SWITCH;
    BypassFirstSwitch = control::BYPASS_FIRST_SWITCH;
    BypassFullSwitch = control::BYPASS_FULL_SWITCH;
    BypassLimit = control::BYPASS_LIMIT;
    BypassRollout = control::BYPASS_ROLLOUT;
    BypassLowGasSwitch = control::BYPASS_LOW_GAS_SWITCH;
    RemoveBypasses = control::REMOVE_BYPASSES;
    SwapMeterHose = measuring::SWAP_METER_HOSE;
    ReplaceMeterBattery = measuring::REPLACE_METER_BATTERY;
    BorrowMeter = measuring::BORROW_METER;
    CleanInletTap = measuring::CLEAN_INLET_TAP;
    CleanManifoldTap = measuring::CLEAN_MANIFOLD_TAP;
    DrillInletTap = measuring::DRILL_INLET_TAP;
    DrillManifoldTap = measuring::DRILL_MANIFOLD_TAP;
}

impl Repair {
    /// What the table says of it.
    fn work(self) -> &'static Work {
        let mut works = WORKS.iter().flatten();
        works.find(|(repair, _)| *repair == self).map_or(&Work::UNREAD, |(_, work)| work)
    }

    /// The name a person reads.
    #[must_use]
    pub fn label(self) -> &'static str {
        self.work().label
    }

    /// The repairs that are offered at a part, in the order of the table.
    pub fn at(part: &str) -> impl Iterator<Item = Self> {
        let works = WORKS.iter().flatten();
        works.filter(move |(_, work)| work.at.contains(&part)).map(|(repair, _)| *repair)
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

    /// The joints that it opens and closes again, to be checked for leaks afterwards.
    #[must_use]
    pub fn disturbs(self) -> &'static [Joint] {
        self.work().disturbs
    }

    /// Whether it opens the line between source and gas valve.
    #[must_use]
    pub fn is_on_piping(self) -> bool {
        self.work().piping == OnPiping::Yes
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

    /// What the bench must have to be worked on.
    #[must_use]
    pub fn there(self) -> There {
        self.work().there
    }

    /// Whether there is such a thing to work on.
    pub(crate) fn fits(self, setup: &Setup) -> bool {
        match self.there() {
            There::Anywhere => true,
            There::Tank => yard::tank(setup),
            There::TwoStageRegulation => yard::two_stages(setup),
            There::ExcessFlow => setup.condition.supply.excess_flow_m3_s.is_some(),
            There::LowGasSwitch => setup.furnace.low_gas_switch,
            There::FiguresForFuel => fitting::known_fuel(setup),
            There::BurnerBoxHose => setup.furnace.box_suction_pa > 0.0,
            There::Jumpers => setup.condition.control.jumpers.any(),
            There::TwoLevels => setup.furnace.plate.input.list().len() > 1,
        }
    }

    /// Changes the setup, and what else it works on.
    pub(crate) fn apply(self, context: &mut RepairContext<'_>) {
        self.edit()(context);
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
