//! The running model brought up to a setup that a repair has changed.

use enum_map::EnumMap;

use super::gas::SupplyRegulator;
use super::port::PortState;
use super::state::Model;
use crate::instrument::manometer::Manometer;
use crate::parts::{Fitted, Joint, Level, Port, Screw};
use crate::setup::{PlugFound, Renewed, Setup, Tripped};

impl Model {
    /// Writes into the setup how the stage screws stand, so that they stay so.
    pub(crate) fn note_screws(&mut self) {
        let turns = self.gas.springs().turns();
        for &level in turns.list() {
            self.setup.furnace.valve.springs[level].found_turns = turns[level];
        }
    }

    /// Fits new plugs or new captive screws into both ports.
    pub(crate) fn fit_plugs(&mut self, past_hand_turns: f64) {
        let body = self.setup.scene.valve;
        self.things.ports = EnumMap::from_fn(|_: Port| {
            PortState::found(past_hand_turns, PlugFound::Straight, body)
        });
    }

    /// A joint was opened and closed again: the fluid on it is gone.
    pub(crate) fn disturb(&mut self, joint: Joint) {
        self.things.fluid[joint] = None;
    }

    /// What is new does not stand as it was turned.
    pub(crate) fn renew(&mut self, renewed: Renewed) {
        match renewed {
            Renewed::Nothing => {}
            Renewed::SupplyRegulator => self.renew_screw(Screw::Supply),
            Renewed::Springs | Renewed::GasValve => {
                for level in Level::ALL {
                    self.renew_screw(level.screw());
                }
            }
            Renewed::Meter => {
                self.meter = manometer(&self.setup);
                self.alerts.meter_over = false;
            }
        }
    }

    fn renew_screw(&mut self, screw: Screw) {
        self.things.turned_eighths[screw] = 0;
        self.things.caps[screw] = Fitted::On;
    }

    /// Brings the running model up to the changed setup.
    pub(crate) fn refit(&mut self, before: &Setup, renewed: Renewed, ice: f64) {
        // A switch that has tripped stands in the model, and is reset there.
        self.setup.condition.control.rollout = Tripped::No;
        let regulator = if renewed == Renewed::SupplyRegulator {
            SupplyRegulator::New
        } else if before.condition.supply != self.setup.condition.supply {
            SupplyRegulator::Changed
        } else {
            SupplyRegulator::Same
        };
        let new_springs = matches!(renewed, Renewed::Springs | Renewed::GasValve);
        if new_springs || regulator == SupplyRegulator::New || gas_changed(before, &self.setup) {
            self.gas.refit(&self.setup, regulator);
        }
        self.gas.set_ice(ice);
        self.furnace.refit(before, &self.setup);
        self.meter.refit(self.setup.condition.meter.wear, self.setup.meter.lag_s);
    }
}

/// A manometer of a setup, without wear.
pub(super) fn manometer(setup: &Setup) -> Manometer {
    let meter = &setup.meter;
    Manometer::new(meter.range_pa, meter.zero_error_pa, meter.drift_pa, meter.drift_s, meter.lag_s)
}

/// Whether the gas side has to be built anew.
fn gas_changed(before: &Setup, after: &Setup) -> bool {
    let gas = |setup: &Setup| {
        let condition = &setup.condition;
        (condition.supply.clone(), condition.line.clone(), condition.valve.clone(), condition.ports)
    };
    gas(before) != gas(after)
        || before.supply != after.supply
        || before.trunk != after.trunk
        || before.furnace.valve != after.furnace.valve
        || before.furnace.orifices_m != after.furnace.orifices_m
        || before.condition.meter.hose_hole_m != after.condition.meter.hose_hole_m
}
