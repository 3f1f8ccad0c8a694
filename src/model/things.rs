//! Everything that hands have put into a state, by name.

use enum_map::EnumMap;
use serde::Serialize;

use super::brushed::Brushed;
use super::port::PortState;
use crate::parts::{
    Cock, Door, Fitted, Joint, Neighbor, OnOff, Opening, Port, Push, Screw, Window,
};
use crate::setup::Setup;

/// A hand valve opened less than this counts as shut, in degrees.
const SHUT_DEG: i16 = 6;
/// A hand valve opened as far as this joins both sides, in degrees.
const FED_DEG: i16 = 45;

/// Things that hands have put into a state.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Things {
    /// Angle of each hand valve from shut, in degrees.
    pub(crate) cocks_deg: EnumMap<Cock, i16>,
    pub(crate) neighbors: EnumMap<Neighbor, OnOff>,
    /// Seconds that another appliance has been turned on without gas to burn.
    pub(crate) starved_s: EnumMap<Neighbor, f64>,
    pub(crate) valve_switch: OnOff,
    pub(crate) furnace_switch: OnOff,
    pub(crate) doors: EnumMap<Door, Fitted>,
    pub(crate) caps: EnumMap<Screw, Fitted>,
    pub(crate) ports: EnumMap<Port, PortState>,
    pub(crate) windows: EnumMap<Window, Opening>,
    pub(crate) stage_jumper: Fitted,
    pub(crate) setpoint_half_f: i16,
    pub(crate) heating: OnOff,
    pub(crate) tag: Fitted,
    pub(crate) fluid: EnumMap<Joint, Option<Brushed>>,
    /// Turns of each screw since the start, in eighths.
    pub(crate) turned_eighths: EnumMap<Screw, i32>,
    pub(crate) last_turn_tick: Option<u64>,
}

impl Things {
    /// Everything as it is found.
    pub(crate) fn found(setup: &Setup) -> Self {
        let found = &setup.found;
        let mut cocks_deg = EnumMap::from_fn(|_| 90);
        cocks_deg[Cock::Furnace] = found.cock_deg;
        Self {
            cocks_deg,
            neighbors: found.neighbors,
            starved_s: EnumMap::default(),
            valve_switch: found.valve_switch,
            furnace_switch: found.furnace_switch,
            doors: EnumMap::from_fn(|_| Fitted::On),
            caps: found.caps,
            ports: EnumMap::from_fn(|port| {
                PortState::found(found.plugs_past_hand[port], setup.condition.ports[port].plug)
            }),
            windows: EnumMap::from_fn(|_| Opening::Closed),
            stage_jumper: Fitted::Off,
            setpoint_half_f: setup.house.setpoint_half_f,
            heating: found.thermostat_mode,
            tag: Fitted::Off,
            fluid: EnumMap::default(),
            turned_eighths: EnumMap::default(),
            last_turn_tick: None,
        }
    }

    /// Whether the inlet is joined to the supply at all.
    pub(crate) fn is_joined(&self) -> bool {
        self.cocks_deg[Cock::Furnace] >= SHUT_DEG && self.cocks_deg[Cock::Supply] >= SHUT_DEG
    }

    /// Whether shut-off and manual valve stand open for a reading.
    pub(crate) fn is_fed(&self) -> bool {
        self.cocks_deg[Cock::Furnace] >= FED_DEG && self.cocks_deg[Cock::Supply] >= FED_DEG
    }

    /// The port that the hose is on, and how far.
    pub(crate) fn hose_port(&self) -> Option<(Port, Push)> {
        Port::ALL.iter().find_map(|&port| self.ports[port].hose().map(|push| (port, push)))
    }
}
