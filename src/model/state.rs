//! Everything that the model is at a tick.

use super::furnace::Furnace;
use super::gas::GasSide;
use super::kit::Kit;
use super::person::Person;
use super::things::Things;
use crate::instrument::manometer::Manometer;
use crate::parts::{Door, Fitted, Level, LowSide, OnOff, Place, Port};
use crate::physics::room::Room;
use crate::setup::{Fuse, Setup};
use crate::site::house::{House, Thermostat};
use enum_map::EnumMap;
use serde::Serialize;

/// The state of the whole station.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Model {
    /// What it works with; a repair changes it.
    pub(crate) setup: Setup,
    /// Steps since the job began.
    pub(crate) tick: u64,
    pub(crate) gas: GasSide,
    pub(crate) furnace: Furnace,
    pub(crate) house: House,
    pub(crate) thermostat: Thermostat,
    pub(crate) room: Room,
    pub(crate) meter: Manometer,
    /// What the manometer's low side feels.
    pub(crate) low_side: LowSide,
    pub(crate) kit: Kit,
    pub(crate) person: Person,
    pub(crate) things: Things,
    pub(crate) alerts: Alerts,
}

/// Which alarms stand, so that each is told once.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub(crate) struct Alerts {
    pub(crate) alarm: bool,
    pub(crate) from_port: EnumMap<Port, bool>,
    pub(crate) valve_over: bool,
    pub(crate) meter_over: bool,
}

impl Model {
    /// What the furnace does.
    pub(crate) fn firing(&self) -> Option<Level> {
        self.furnace.firing()
    }

    /// Whether the control has its 24 volts: the furnace's switch, the blower door's, the fuse.
    pub(crate) fn powered(&self) -> bool {
        self.things.furnace_switch == OnOff::On
            && self.things.doors[Door::Blower] == Fitted::On
            && self.setup.condition.control.fuse == Fuse::Whole
    }

    /// Whether the person stands at one of `places`.
    pub(crate) fn is_at(&self, places: &[Place]) -> bool {
        places.contains(&self.person.place)
    }

    /// Whether the burner door is off.
    pub(crate) fn is_burner_door_off(&self) -> bool {
        self.things.doors[Door::Burner] == Fitted::Off
    }
}
