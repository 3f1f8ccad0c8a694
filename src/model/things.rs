//! Everything that hands have put into a state, by name.

use crate::physics::valve::HandleAngle;
use enum_map::EnumMap;
use serde::ser::SerializeTuple;
use serde::{Serialize, Serializer};

use super::brushed::Brushed;
use super::port::PortState;
use crate::parts::{
    Door, Fitted, HandValve, Joint, OnOff, Opening, OtherAppliance, Port, Push, Screw, Window,
};
use crate::setup::Setup;

/// Things that hands have put into a state.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Things {
    /// How each hand valve stands.
    pub(crate) handles: EnumMap<HandValve, HandleAngle>,
    pub(crate) other_appliances: EnumMap<OtherAppliance, OnOff>,
    /// Seconds that another appliance has been turned on without gas to burn.
    pub(crate) starved_s: EnumMap<OtherAppliance, f64>,
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
    #[serde(serialize_with = "fluid")]
    pub(crate) fluid: EnumMap<Joint, Option<Brushed>>,
    /// Turns of each screw since the start, in eighths.
    pub(crate) turned_eighths: EnumMap<Screw, i32>,
    pub(crate) last_turn_tick: Option<u64>,
}

impl Things {
    /// Everything as it is found.
    pub(crate) fn found(setup: &Setup) -> Self {
        let found = &setup.found;
        let mut handles = EnumMap::from_fn(|_| HandleAngle::OPEN);
        handles[HandValve::Furnace] = found.manual_valve;
        Self {
            handles,
            other_appliances: found.other_appliances,
            starved_s: EnumMap::default(),
            valve_switch: found.valve_switch,
            furnace_switch: found.furnace_switch,
            doors: EnumMap::from_fn(|_| Fitted::On),
            caps: found.caps,
            ports: EnumMap::from_fn(|port| {
                let plug = setup.condition.ports[port].plug;
                PortState::found(found.plugs_past_hand[port], plug, setup.scene.valve)
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

    /// Whether shut-off or manual valve keep the gas from the inlet.
    pub(crate) fn is_shut_off(&self) -> bool {
        self.handles[HandValve::Furnace].is_shut() || self.handles[HandValve::Supply].is_shut()
    }

    /// Whether shut-off and manual valve join the inlet to the supply.
    pub(crate) fn is_fed(&self) -> bool {
        self.handles[HandValve::Furnace].feeds() && self.handles[HandValve::Supply].feeds()
    }

    /// The port that the hose is on, and how far.
    pub(crate) fn hose_port(&self) -> Option<(Port, Push)> {
        Port::ALL.iter().find_map(|&port| self.ports[port].hose().map(|push| (port, push)))
    }
}

/// Leak fluid as it is written for the digest: every joint at the furnace, of those in the yard the wet
/// ones. With a dry yard the digest is what it was before there were joints there.
fn fluid<S: Serializer>(
    fluid: &EnumMap<Joint, Option<Brushed>>,
    writer: S,
) -> Result<S::Ok, S::Error> {
    let (yard, furnace): (Vec<_>, Vec<_>) = fluid.iter().partition(|(it, _)| it.is_in_yard());
    let wet: Vec<_> = yard.into_iter().filter(|(_, brushed)| brushed.is_some()).collect();
    let mut tuple = writer.serialize_tuple(furnace.len() + wet.len())?;
    for (_, brushed) in furnace {
        tuple.serialize_element(brushed)?;
    }
    for one in &wet {
        tuple.serialize_element(one)?;
    }
    tuple.end()
}
