//! The condition that everything is in: what is worn, blocked, loose or out of place.
//!
//! The default is a bench without a fault. Each number is a change to a part of the model; readings
//! follow from it.

use enum_map::EnumMap;
use serde::Serialize;

use crate::appliance::safety::{Jumpers, LowGasSwitch, Sensing};
use crate::instrument::manometer::Wear;
use crate::parts::Port;
use crate::physics::room::Odorant;

/// The condition of the bench.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Condition {
    /// Tank or main, and the regulators.
    pub supply: SupplyCondition,
    /// The pipe to the furnace.
    pub line: LineCondition,
    /// Wear of the gas valve.
    pub valve: ValveCondition,
    /// Burners, igniter, flame rod, exchanger.
    pub burners: BurnerCondition,
    /// Combustion air and house air.
    pub air: AirCondition,
    /// Between draft and the pressure switches.
    pub sensing: Sensing,
    /// Thermostat, control and safety devices.
    pub control: ControlCondition,
    /// The manometer with its hose.
    pub meter: MeterCondition,
    /// Plug and tap hole of each port.
    pub ports: EnumMap<Port, PortCondition>,
    /// The odor of the gas.
    pub odorant: Odorant,
}

/// Wear of the gas supply, from its source to its regulator.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct SupplyCondition {
    /// Pressure that really stands before the supply regulator, in pascals, where it is not
    /// `SupplySetup::upstream_pa`.
    pub upstream_pa: Option<f64>,
    /// Flow that the shut supply regulator lets by at its normal inlet, in standard m³/s.
    pub lets_by_m3_s: f64,
    /// Whether the seat of the supply regulator stands wide open, whatever its diaphragm says.
    pub seat: SeatState,
    /// Blocked share of the vent of the supply regulator's bonnet, 0–1.
    pub vent_blocked: f64,
    /// Diameter of a hole in the supply regulator's diaphragm, in metres.
    pub diaphragm_hole_m: f64,
    /// Flow at which an excess-flow valve before the regulators shuts, in standard m³/s.
    pub excess_flow_m3_s: Option<f64>,
    /// Time of full flow in which ice shuts the orifice before the regulators, in seconds.
    pub ices_up_s: Option<f64>,
    /// Temperature of the tank at which a single regulator, straight on the tank, was set, in
    /// kelvins; none where two regulators stand in a row.
    pub single_stage_set_k: Option<f64>,
    /// Temperature of the tank's liquid at the start, in kelvins, where it is not that outside.
    pub liquid_k: Option<f64>,
}

/// Whether a regulator's seat moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum SeatState {
    /// It follows its diaphragm.
    #[default]
    Works,
    /// It stands wide open.
    WideOpen,
}

/// The condition of the pipe to the furnace.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct LineCondition {
    /// Share of the connector's bore (by area) that a kink shuts, 0–1.
    pub connector_kinked: f64,
    /// Diameter of a hole that stands for a crack in the connector, in metres.
    pub connector_crack_m: f64,
    /// Head of water that stands in a sag of the branch, in pascals.
    pub water_pa: f64,
    /// Air in the branch, in m³.
    pub air_m3: f64,
}

/// The gas valve's condition.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct ValveCondition {
    /// Share of the free area behind the inlet port that dirt on the screen shuts, 0–1.
    pub screen_blocked: f64,
    /// The coil that loads the spring above the first.
    pub second_coil: Coil,
    /// Flow that the shut seats let by at the plate's lowest inlet pressure, in standard m³/s.
    pub lets_by_m3_s: f64,
    /// Time in which the seats fall shut, in seconds, where they do not do so at once.
    pub closes_s: f64,
    /// Whether the hose from the burner box to the regulator's bonnet is on.
    pub box_hose: HoseState,
    /// Swing of the regulator with a worn guide, in pascals either way at full rate.
    pub swing_pa: f64,
}

/// Solenoid coil of the gas valve.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Coil {
    /// It pulls when it has voltage.
    #[default]
    Works,
    /// Open winding, or unplugged.
    Dead,
}

/// Hose that brings the burner box's pressure to the gas valve's regulator.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum HoseState {
    /// On its barbs, and whole.
    #[default]
    On,
    /// Off or cracked: it brings the pressure of the room.
    Off,
}

/// Burners, igniter, flame rod, exchanger.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct BurnerCondition {
    /// Share of the flame current that dirt on the rod holds back, 0–1.
    pub rod_dirty: f64,
    /// Share of the flame current that is lost on the way to ground, 0–1.
    pub ground_poor: f64,
    /// Share of its heat that the igniter no longer makes, 0–1.
    pub igniter_weak: f64,
    /// Time by which gas reaches the igniter late, in seconds.
    pub late_s: f64,
    /// Share of the burners' air that comes through a hole in the exchanger with the blower at
    /// full speed, 0–1.
    pub exchanger_hole: f64,
}

/// Combustion air and house air.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct AirCondition {
    /// Blocked share of the intake's area, 0–1.
    pub intake_blocked: f64,
    /// Blocked share of the vent's area, 0–1.
    pub vent_blocked: f64,
    /// Share of the inducer's air that a dry trap lets in beside the exchanger, 0–1.
    pub trap_leak: f64,
    /// Blocked share of the filter, 0–1.
    pub filter_blocked: f64,
    /// Share of the registers that is closed, 0–1.
    pub registers_closed: f64,
    /// State of the motor that drives the inducer.
    pub inducer: Motor,
    /// Share of its speed that the blower no longer makes, 0–1: 1 where its motor stands still.
    pub blower_slow: f64,
}

/// Whether the motor of a fan turns.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Motor {
    /// It turns when it has voltage.
    #[default]
    Turns,
    /// It stands still: an open winding or seized bearings.
    Dead,
}

/// Thermostat, control and safety devices.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct ControlCondition {
    /// The fuse of the 24 volts on the control board.
    pub fuse: Fuse,
    /// The thermostat's wires, or the 24 volts behind them.
    pub thermostat: Wire,
    /// The second stage's call.
    pub second_call: Wire,
    /// The contact that gives the second stage its voltage.
    pub second_contact: Contact,
    /// The roll-out switch as found.
    pub rollout: Tripped,
    /// The low-gas switch, where it does not stand at its published points.
    pub low_gas: Option<LowGasSwitch>,
    /// Wires across the contacts of safety devices.
    pub jumpers: Jumpers,
}

/// Whether a fuse carries current.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Fuse {
    /// Sound, as it is fitted.
    #[default]
    Whole,
    /// Melted through by a short or an overload.
    Blown,
}

/// Wire to a contact or coil.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Wire {
    /// Joined at both ends.
    #[default]
    Whole,
    /// Broken or off its terminal.
    Open,
}

/// A relay's contact, or a wire across it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Contact {
    /// Opens and closes as it is called.
    #[default]
    Works,
    /// Closed whenever the first stage is called.
    Closed,
}

/// A switch that is reset by hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Tripped {
    /// Closed, as it should be.
    #[default]
    No,
    /// Open until it is reset.
    Yes,
}

/// The manometer with its hose.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct MeterCondition {
    /// What is wrong inside it, or with its settings.
    pub wear: Wear,
    /// Diameter of a hole in the hose, in metres.
    pub hose_hole_m: f64,
    /// How far the zero of the water column's scale stands above its water at rest, in metres.
    pub column_off_m: f64,
}

/// A port as found, beyond how far its plug stands in.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct PortCondition {
    /// Diameter that paint or sealant leaves free of the tapped hole, in metres, where it is not
    /// free.
    pub tap_free_m: Option<f64>,
    /// What is in it.
    pub plug: PlugFound,
}

/// What is found in a port.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum PlugFound {
    /// A plug, straight in its thread.
    #[default]
    Straight,
    /// A plug across its thread.
    Leaning,
    /// A plug, screwed so far in that the boss has cracked.
    Cracked,
    /// The barbed adapter, with no hose on it.
    Adapter,
}

impl Condition {
    /// Whether nothing is wrong.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        *self == Self::default()
    }
}
