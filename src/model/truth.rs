//! The other half of the way out: what is really so. For marking, debrief, preview and the
//! cutaway; never for the window's hands, scripts or the technician.

use enum_map::EnumMap;

use crate::appliance::ignition::ControlState;
use crate::appliance::safety::Jumpers;
use crate::parts::{
    Door, Fitted, Level, Levels, LowSide, OnOff, Opening, OtherAppliance, Port, PortFill, Screw,
    Window,
};
use crate::physics::valve::HandleAngle;

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
    /// What each stage is set to, in pascals above the burner box.
    pub set_pa: Levels<f64>,
    /// What the supply regulator is set to, in pascals.
    pub supply_set_pa: f64,
    /// Turns of each stage screw in from fully out.
    pub screw_turns: Levels<f64>,
    /// Whether a stage screw stands at its bottom.
    pub bottomed: Levels<bool>,
    /// Gas into the burners, in standard m³/s.
    pub burner_flow_m3_s: f64,
    /// Heat input, in watts.
    pub input_w: f64,
    /// Gas to other appliances, in standard m³/s.
    pub others_flow_m3_s: f64,
    /// Gas out of open or leaking joints, in standard m³/s.
    pub leak_m3_s: Leaks,
    /// What the furnace does.
    pub firing: Option<Level>,
    /// State of the ignition control.
    pub control: ControlState,
    /// Gas in the air, as a fraction.
    pub gas_fraction: GasInAir,
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
    pub manual_valve: HandleAngle,
    /// The switch on the gas valve.
    pub valve_switch: OnOff,
    /// The service switch that cuts the furnace's power.
    pub furnace_switch: OnOff,
    /// Handle of the supply shut-off valve.
    pub supply_valve: HandleAngle,
    /// The other gas appliances on the same line.
    pub other_appliances: EnumMap<OtherAppliance, OtherApplianceTruth>,
    /// The cap over each screw.
    pub caps: EnumMap<Screw, Fitted>,
    /// The inlet and the manifold port.
    pub ports: EnumMap<Port, PortTruth>,
    /// Whether each furnace door is on.
    pub doors: EnumMap<Door, Fitted>,
    /// Whether each window stands open.
    pub windows: EnumMap<Window, Opening>,
    /// What the manometer's low side feels.
    pub low_side: LowSide,
    /// The thermostat's setpoint, in half degrees Fahrenheit.
    pub setpoint_half_f: i16,
    /// The thermostat's heat switch.
    pub heating: OnOff,
    /// The wire between R and W2.
    pub stage_jumper: Fitted,
    /// Whether the warning tag hangs on the furnace.
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
    pub fill: PortFill,
    /// Turns past hand-tight of the plug in it (0 when none).
    pub past_hand_turns: f64,
    /// Started across the thread.
    pub cross_threaded: bool,
    /// The boss is cracked.
    pub cracked: bool,
    /// Area of its leak times discharge coefficient, in m².
    pub leak_area_m2: f64,
}

/// Gas out of the ports and of the manometer's hose, in standard m³/s.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Leaks {
    /// Out of each port into the room.
    pub ports: EnumMap<Port, f64>,
    /// At the hose's end.
    pub hose: f64,
}

impl Leaks {
    /// All of them, one by one.
    pub fn iter(&self) -> impl Iterator<Item = f64> {
        self.ports.into_iter().map(|(_, flow)| flow).chain([self.hose])
    }
}

/// Gas in the air of the plant room, as fractions.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct GasInAir {
    /// In the burner vestibule.
    pub vestibule: f64,
    /// In the lowest 15 % of the room's height.
    pub floor: f64,
    /// In the rest of the room, where people breathe.
    pub breathing: f64,
}

impl GasInAir {
    /// All of them, from the vestibule up.
    pub fn iter(&self) -> impl Iterator<Item = f64> {
        [self.vestibule, self.floor, self.breathing].into_iter()
    }
}

/// Another appliance as it really is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OtherApplianceTruth {
    /// Whether it is turned on.
    pub switch: OnOff,
    /// How its hand valve stands.
    pub handle: HandleAngle,
    /// Whether its flame guard has shut the gas because the flame went out.
    pub gone_out: bool,
}

impl Truth {
    /// The pressure at a port, in pascals.
    #[must_use]
    pub fn pressure_pa(&self, port: Port) -> f64 {
        match port {
            Port::Inlet => self.inlet_pa,
            Port::Manifold => self.manifold_pa,
        }
    }

    /// One port as it really is.
    #[must_use]
    pub fn port(&self, port: Port) -> &PortTruth {
        &self.ports[port]
    }
}
