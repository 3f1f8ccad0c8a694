//! The inside of pipes, regulators and control as the cutaway shows it: plain data, read off
//! the model with the rest of [`Truth`](super::truth::Truth).

use crate::appliance::ignition::{Inputs, Timings};
use crate::parts::{Level, Levels};

/// What stands behind the sheet steel, in SI; gauge pressures.
#[derive(Debug, Clone, PartialEq)]
pub struct Inside {
    /// Pressure before the supply regulator, in pascals: the tank's or the main's.
    pub upstream_pa: f64,
    /// Gas through the supply shut-off, in standard m³/s.
    pub supply_flow_m3_s: f64,
    /// The regulator of the supply, at meter or house wall.
    pub supply: RegulatorInside,
    /// The regulator in the gas valve.
    pub valve: RegulatorInside,
    /// The spring of each level in the gas valve.
    pub springs: Levels<SpringInside>,
    /// How far the shut-off seats stand open, as a share of fully open, 0–1.
    pub seats_open: f64,
    /// The level that the control gives volts to the coils for; none without volts.
    pub coils: Option<Level>,
    /// Lower flammable limit of the gas in air, as a fraction.
    pub lower_limit: f64,
    /// The ignition control with what it feels, counts and drives.
    pub control: ControlInside,
}

/// A regulator with its moving parts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RegulatorInside {
    /// Pressure just before its seat, in pascals.
    pub before_pa: f64,
    /// How far the screw presses the loaded spring together, in metres.
    pub screwed_m: f64,
    /// Travel of that screw, in metres.
    pub travel_m: f64,
    /// Force of the springs on the diaphragm, in newtons.
    pub force_n: f64,
    /// Outlet pressure at which springs and gas balance with the seat just shut, in pascals.
    pub balance_pa: f64,
    /// Lift of the seat, in metres; negative while its seal is pressed together.
    pub lift_m: f64,
    /// Lift at the stop, in metres.
    pub stop_m: f64,
}

/// A spring of the gas valve under its screw.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpringInside {
    /// Turns of its screw in from fully out.
    pub turns: f64,
    /// Turns from fully out to the stop.
    pub travel_turns: f64,
    /// Whether it presses on the diaphragm now.
    pub pressing: bool,
}

/// The ignition control with what it feels, counts and drives.
#[derive(Debug, Clone, PartialEq)]
pub struct ControlInside {
    /// Power, call, contacts and flame as it feels them.
    pub felt: Inputs,
    /// Time in the present state, in seconds.
    pub in_state_s: f64,
    /// Time since the gas opened in this try, in seconds.
    pub gas_s: f64,
    /// Failed tries for ignition in this call.
    pub tries: u32,
    /// Its times and limits.
    pub timings: Timings,
}

impl RegulatorInside {
    /// No regulator at all: the pipe goes on as it is.
    pub(crate) const NONE: Self = Self {
        before_pa: 0.0,
        screwed_m: 0.0,
        travel_m: 0.0,
        force_n: 0.0,
        balance_pa: 0.0,
        lift_m: 0.0,
        stop_m: 0.0,
    };

    /// How far the seat stands open, 0–1 of its travel.
    #[must_use]
    pub fn open(&self) -> f64 {
        (self.lift_m / self.stop_m.max(1e-9)).clamp(0.0, 1.0)
    }
}
