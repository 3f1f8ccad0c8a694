//! Putting the model up: everything as found, pressures at rest, tick 0.

use super::furnace::{self, Furnace};
use super::gas::GasSide;
use super::kit::Kit;
use super::person::Person;
use super::refit::manometer;
use super::state::{Alerts, Model};
use super::things::Things;
use crate::parts::LowSide;
use crate::setup::Setup;

impl Model {
    /// The model as found.
    pub(crate) fn found(setup: Setup) -> Self {
        let mut model = Self {
            tick: 0,
            gas: GasSide::new(&setup),
            furnace: Furnace::new(&setup),
            house: furnace::house(&setup),
            thermostat: furnace::thermostat(&setup),
            room: furnace::room(&setup),
            meter: manometer(&setup).worn(setup.condition.meter.wear),
            low_side: LowSide::Air,
            kit: Kit::new(setup.house.inside_k, setup.condition.meter.column_off_m),
            person: Person::arrived(),
            things: Things::found(&setup),
            alerts: Alerts::default(),
            setup,
        };
        model.push_paths();
        model.gas.settle();
        model
    }
}
