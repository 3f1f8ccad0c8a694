//! What a bench is built from: a site, an appliance, instruments and the state they are found in.
//!
//! A scenario with its seed becomes one `Setup`. Faults are changes to these numbers, never to a
//! reading.

mod condition;
mod fault;

pub use condition::{
    AirCondition, BurnerCondition, Coil, Condition, Contact, ControlCondition, Fuse, HoseState,
    LineCondition, MeterCondition, Motor, PlugFound, PortCondition, SeatState, SupplyCondition,
    Tripped, ValveCondition, Wire,
};
pub use fault::Fault;

use enum_map::EnumMap;
use serde::{Deserialize, Serialize};

use crate::appliance::plate::{Fuel, Plate};
use crate::parts::{Duty, Fitted, Levels, OnOff, OtherAppliance, Port, Scene, Screw};
use crate::physics::fluid::Gas;
use crate::physics::valve::HandleAngle;

/// Everything that a bench is built from. SI throughout, gauge pressures.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Setup {
    /// The gas in the pipes.
    pub gas: Gas,
    /// Which fuel that gas is.
    pub fuel: Fuel,
    /// Ambient pressure of the site, absolute, in pascals.
    pub ambient_abs_pa: f64,
    /// Temperature outside, in kelvins.
    pub outside_k: f64,
    /// Where the gas comes from.
    pub supply: SupplySetup,
    /// From the supply regulator to the tee in the plant room.
    pub trunk: Vec<Run>,
    /// From the tee to the furnace's manual valve and on to the gas valve.
    pub branch: Vec<Run>,
    /// The other appliances, each with its line from the tee.
    pub other_appliances: EnumMap<OtherAppliance, OtherApplianceSetup>,
    /// The furnace with plate, orifices and gas valve.
    pub furnace: FurnaceSetup,
    /// Equipment and surroundings that are chosen by their kind.
    pub scene: Scene,
    /// The house around it.
    pub house: HouseSetup,
    /// The trainee's own manometer, with its errors.
    pub meter: MeterSetup,
    /// How everything is found.
    pub found: Found,
    /// What is worn, blocked, loose or out of place.
    pub condition: Condition,
    /// The faults that were put in, with their severity, in order.
    pub faults: Vec<(Fault, f64)>,
    /// The same before the first fault: what a replaced part takes its numbers from. None without
    /// a fault; it has none of its own.
    pub sound: Option<Box<Setup>>,
    /// What the trainee is told.
    pub card: JobCard,
}

/// Gas supply from the source to the outlet of its regulator.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SupplySetup {
    /// Pressure upstream of the supply regulator, in pascals (a gas main, or the line after the
    /// first-stage regulator).
    pub upstream_pa: f64,
    /// The supply regulator's set pressure as found, in pascals.
    pub set_pa: f64,
    /// Its pressure at no flow, in pascals, when set to `set_pa`.
    pub lockup_pa: f64,
    /// How far it falls below `set_pa` at `droop_flow_m3_s`, in pascals.
    pub droop_pa: f64,
    /// The flow at which it falls that far, in standard m³/s.
    pub droop_flow_m3_s: f64,
    /// Flow with its seat wide open at normal upstream pressure, in standard m³/s.
    pub capacity_m3_s: f64,
    /// Change of set pressure per turn of its screw, in pascals.
    pub pa_per_turn: f64,
    /// What the supply is made of.
    pub kind: SupplyKind,
    /// Lowest and highest delivery at the regulator that its owner allows, in pascals.
    pub delivery_limits_pa: (f64, f64),
    /// Highest no-flow pressure allowed, in pascals.
    pub lockup_max_pa: f64,
}

/// Source of the gas.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub enum SupplyKind {
    /// A propane tank with a first-stage regulator.
    Tank {
        /// Liquid level, as a fraction of the tank.
        level: f64,
        /// Water capacity, in m³.
        capacity_m3: f64,
    },
    /// Natural gas from the utility's meter.
    Meter {
        /// Gas for one turn of the test dial, in m³.
        dial_m3: f64,
    },
}

/// A stretch of pipe or tubing.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Run {
    /// What it is made of and how wide it is.
    pub bore: Bore,
    /// Length of the pipe, in metres.
    pub length_m: f64,
    /// Screwed 90° elbows in it.
    pub elbows: u32,
    /// Tees passed through their branch.
    pub tees: u32,
}

/// Material and width of a run.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub enum Bore {
    /// Schedule 40 steel of this inside diameter, in metres.
    Steel(f64),
    /// Copper tube of this inside diameter, in metres.
    Copper(f64),
    /// Corrugated stainless tubing of this equivalent hydraulic diameter number.
    Corrugated(u32),
}

/// Gas appliance other than the furnace, on the same trunk.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct OtherApplianceSetup {
    /// Its line from the tee.
    pub line: Vec<Run>,
    /// Input at full rate, in watts.
    pub input_w: f64,
    /// Its own regulator's manifold pressure, in pascals.
    pub manifold_pa: f64,
}

/// Furnace as it was built and converted.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FurnaceSetup {
    /// Its plate and label.
    pub plate: Plate,
    /// Diameter of each orifice that is really fitted, in metres.
    pub orifices_m: Vec<f64>,
    /// Discharge coefficient of the orifices.
    pub orifice_cd: f64,
    /// What is stamped on them.
    pub orifice_stamp: String,
    /// The mark on the springs that are really fitted.
    pub springs_for: Fuel,
    /// Gas valve with its springs.
    pub valve: ValveSetup,
    /// Whether the propane kit's low-gas switch is fitted.
    pub low_gas_switch: bool,
    /// Suction in the burner box with the inducer at full speed, in pascals.
    pub box_suction_pa: f64,
    /// Igniter warm-up, in seconds.
    pub igniter_warm_up_s: f64,
    /// Minutes after which the control goes to the next level by itself, if it does.
    pub auto_next_min: Option<f64>,
}

/// Gas valve: springs, seats and times.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ValveSetup {
    /// Pressure lost through the open valve at full rate, in pascals.
    pub loss_pa: f64,
    /// The flow at which it loses that, in standard m³/s.
    pub loss_flow_m3_s: f64,
    /// The spring of each firing level.
    pub springs: Levels<SpringSetup>,
    /// Whether the two springs add up.
    pub stacking: Stacking,
    /// Seconds to settle after a change.
    pub settle_s: f64,
}

impl ValveSetup {
    /// What each level is found set to, in pascals over the burner box, as long as no coils touch.
    #[must_use]
    pub fn set_pa(&self) -> Levels<f64> {
        let own_pa = self.springs.map(|_, spring| spring.found_turns * spring.pa_per_turn);
        own_pa.map(|level, &pa| match self.stacking {
            Stacking::NextOnFirst if !level.is_first() => own_pa.first() + pa,
            Stacking::NextOnFirst | Stacking::Independent => pa,
        })
    }
}

/// How the springs work together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub enum Stacking {
    /// Each level has a spring of its own.
    Independent,
    /// The spring of the next level adds to the first one's.
    NextOnFirst,
}

/// One spring with its screw.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpringSetup {
    /// Pressure per turn of the screw, in pascals.
    pub pa_per_turn: f64,
    /// Turns from fully out to the bottom.
    pub turns: f64,
    /// Turns in from fully out, as found.
    pub found_turns: f64,
}

/// House around the furnace: its losses and its mass.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct HouseSetup {
    /// Temperature inside at the start, in kelvins.
    pub inside_k: f64,
    /// Heat lost per kelvin, in W/K.
    pub loss_w_k: f64,
    /// Thermal mass, in J/K.
    pub mass_j_k: f64,
    /// Setpoint as found, in half degrees Fahrenheit.
    pub setpoint_half_f: i16,
    /// Volume of the plant room, in m³.
    pub plant_room_m3: f64,
    /// Air changes per hour of the plant room, window closed.
    pub air_changes_h: f64,
}

/// Manometer, with the errors that it comes with.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MeterSetup {
    /// Largest pressure it shows, in pascals.
    pub range_pa: f64,
    /// Its error before it is zeroed, in pascals.
    pub zero_error_pa: f64,
    /// How far its zero still drifts as it warms, in pascals.
    pub drift_pa: f64,
    /// Time constant of that drift, in seconds.
    pub drift_s: f64,
    /// Time constant of the display, in seconds.
    pub lag_s: f64,
}

/// The state things are found in.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Found {
    /// The furnace's manual valve, degrees open.
    pub manual_valve: HandleAngle,
    /// Switch on the gas valve.
    pub valve_switch: OnOff,
    /// Service switch beside the furnace.
    pub furnace_switch: OnOff,
    /// The thermostat's heat switch.
    pub thermostat_mode: OnOff,
    /// Which of the other appliances are turned on.
    pub other_appliances: EnumMap<OtherAppliance, OnOff>,
    /// Which caps are on.
    pub caps: EnumMap<Screw, Fitted>,
    /// How far the plugs stand in, in turns past finger-tight.
    pub plugs_past_hand: EnumMap<Port, f64>,
}

/// The paper that comes with the job.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct JobCard {
    // Words for people are not in the digest: another wording is no other bench.
    /// Title of the job, in a few words.
    #[serde(skip)]
    pub title: String,
    /// What is asked, in plain words.
    #[serde(skip)]
    pub text: String,
    /// The heating value that the card states.
    pub heating_value: StatedHeat,
    /// Who owns the supply, in words.
    #[serde(skip)]
    pub supply_owner: String,
    /// Whether the trainee may turn the supply regulator.
    pub supply: SupplyRight,
    /// Seconds that a no-flow hold must last.
    pub hold_s: f64,
    /// Seconds after a change before a reading counts as settled.
    pub settle_s: f64,
    /// Work beyond the pressures that is asked for. It changes nothing on the bench.
    #[serde(skip)]
    pub required: Vec<Duty>,
}

/// Heating values that a job card states, in joules per standard cubic metre of the gas. A card for a
/// house whose gas is to be found out states one for each.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct StatedHeat {
    /// That of natural gas.
    pub natural_j_m3: Option<f64>,
    /// Heating value of propane, in J/m³.
    pub propane_j_m3: Option<f64>,
}

impl StatedHeat {
    /// What is stated for a gas.
    #[must_use]
    pub fn of(&self, fuel: Fuel) -> Option<f64> {
        match fuel {
            Fuel::Natural => self.natural_j_m3,
            Fuel::Propane => self.propane_j_m3,
        }
    }
}

/// Who may touch the supply regulator.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
pub enum SupplyRight {
    /// The trainee may set it, inside its limits.
    Trainee,
    /// Its owner only: call, do not touch.
    OwnerOnly,
}

/// What is new after a repair, so that it does not stand as it was turned.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize)]
pub(crate) enum Renewed {
    /// Nothing with a screw.
    #[default]
    Nothing,
    /// Regulator of the supply, outside the house.
    SupplyRegulator,
    /// The springs of the gas valve.
    Springs,
    /// The gas valve, with its springs, caps, ports and plugs.
    GasValve,
    /// Manometer in the trainee's bag.
    Meter,
}
