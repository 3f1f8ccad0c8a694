//! The other half of the way out: what is really so. For marking, debrief, preview and the
//! teaching view; never for the window's hands, scripts or the technician.

use crate::appliance::safety::Jumpers;
use crate::parts::Firing;
use crate::parts::{Fitted, LowSide, OnOff, Opening, Port};

/// The state of the model, in SI; gauge pressures.
#[derive(Debug, Clone, PartialEq)]
pub struct Truth {
    /// Steps since the job began.
    pub tick: u64,
    /// Pressure downstream of the supply regulator, in pascals.
    pub supply_pa: f64,
    /// Pressure at the tee in the plant room, in pascals.
    pub tee_pa: f64,
    /// Pressure at the inlet port, in pascals.
    pub inlet_pa: f64,
    /// Pressure at the manifold port, in pascals.
    pub manifold_pa: f64,
    /// Pressure in the burner box, in pascals.
    pub box_pa: f64,
    /// Pressure in the manometer's hose, in pascals.
    pub hose_pa: f64,
    /// What the manometer reads too high, in pascals.
    pub meter_error_pa: f64,
    /// What the low spring is set to, in pascals above the burner box.
    pub low_set_pa: f64,
    /// What the high stage is set to, in pascals above the burner box.
    pub high_set_pa: f64,
    /// What the supply regulator is set to, in pascals.
    pub supply_set_pa: f64,
    /// Turns in from fully out: low, high.
    pub screw_turns: [f64; 2],
    /// Whether a stage screw stands at its bottom: low, high.
    pub bottomed: [bool; 2],
    /// Gas into the burners, in standard m³/s.
    pub burner_flow_m3_s: f64,
    /// Heat input, in watts.
    pub input_w: f64,
    /// Gas to other appliances, in standard m³/s.
    pub neighbor_flow_m3_s: f64,
    /// Gas out of open or leaking joints, in standard m³/s: inlet port, manifold port, hose.
    pub leak_m3_s: [f64; 3],
    /// What the furnace does.
    pub firing: Firing,
    /// State of the ignition control.
    pub control: crate::appliance::ignition::ControlState,
    /// Gas in the air, as a fraction: burner vestibule, floor, breathing height.
    pub gas_fraction: [f64; 3],
    /// Carbon monoxide in the flue, air-free, in parts per million.
    pub co_air_free_ppm: f64,
    /// Flame current, in microamperes.
    pub flame_ua: f64,
    /// Excess air over all burners, as a fraction; none without a flame.
    pub excess_air: Option<f64>,
    /// Temperature rise of the house air, in kelvins.
    pub rise_k: f64,
    /// Draft that the pressure switches feel, in pascals.
    pub draft_pa: f64,
    /// Gas that the supply regulator lets out by itself, in standard m³/s.
    pub vented_m3_s: f64,
    /// Angle of the manual valve, degrees.
    pub cock_deg: i16,
    /// The valve switch.
    pub valve_switch: OnOff,
    /// The service switch.
    pub furnace_switch: OnOff,
    /// Supply shut-off, degrees.
    pub supply_cock_deg: i16,
    /// Neighbours: turned on, and their valve's angle.
    pub neighbors: [(OnOff, i16); 2],
    /// Caps: low, high, supply.
    pub caps: [Fitted; 3],
    /// Ports: inlet, manifold.
    pub ports: [PortTruth; 2],
    /// Furnace doors: burner, blower.
    pub doors: [Fitted; 2],
    /// Neighbours: whether the flame guard has shut the gas because the flame went out.
    pub gone_out: [bool; 2],
    /// Windows: plant room, hall.
    pub windows: [Opening; 2],
    /// What the manometer's low side feels.
    pub low_side: LowSide,
    /// Setpoint in half degrees Fahrenheit and the heat switch.
    pub thermostat: (i16, OnOff),
    /// The wire between R and W2.
    pub stage_jumper: Fitted,
    /// The warning tag.
    pub tag: Fitted,
    /// Wires across the contacts of safety devices.
    pub jumpers: Jumpers,
    /// Gas out of a crack in the connector, in standard m³/s.
    pub connector_leak_m3_s: f64,
}

/// A port as it really is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PortTruth {
    /// What is in it.
    pub fill: crate::parts::PortFill,
    /// Turns past hand-tight of the plug in it (0 when none).
    pub past_hand_turns: f64,
    /// Started across the thread.
    pub cross_threaded: bool,
    /// The boss is cracked.
    pub cracked: bool,
    /// Area of its leak times discharge coefficient, in m².
    pub leak_area_m2: f64,
}

impl Truth {
    /// A port.
    #[must_use]
    pub fn port(&self, port: Port) -> &PortTruth {
        match port {
            Port::Inlet => &self.ports[0],
            Port::Manifold => &self.ports[1],
        }
    }
}
