//! Volts and ohms of the furnace's wiring, whether or not anybody measures them.

use super::furnace::Contacts;
use super::state::Model;
use crate::instrument::electrical::{self, Load};
use crate::parts::{Fitted, OnOff, Spot};
use crate::setup::{Coil, Contact};

impl Model {
    /// Volts at a spot, between two terminals or across a contact: what the electrical meter comes
    /// to when it is held there, whether or not anybody holds it.
    pub(crate) fn volts(&self, spot: Spot) -> f64 {
        if !self.powered() {
            return 0.0;
        }
        let coils = self.furnace.coils();
        let second = coils.is_some_and(|level| !level.is_first());
        let load = match (coils, self.setup.condition.valve.second_coil) {
            (Some(_), Coil::Works) if second && self.is_valve_on() => Load::Both,
            (Some(_), _) if self.is_valve_on() => Load::Main,
            (Some(_) | None, _) => Load::Idle,
        };
        let volts = electrical::control_v(load);
        let (w1, w2) = self.thermostat_calls();
        let forced = match self.setup.condition.control.second_contact {
            Contact::Works => false,
            Contact::Closed => w1,
        };
        let Contacts { switches, limit, rollout, low_gas } = self.furnace.contacts();
        let behind = limit && rollout;
        let live = match spot {
            Spot::RToC => true,
            Spot::W1ToC => w1,
            Spot::W2ToC => w2 || forced || self.things.stage_jumper == Fitted::On,
            // Limit, roll-out switches and the others lie in a row: an open one takes the volts of
            // those behind it.
            Spot::LimitSwitch => !limit,
            Spot::RolloutSwitch => limit && !rollout,
            Spot::FirstSwitch => behind && !switches.first(),
            Spot::SecondSwitch => behind && !switches.top(),
            Spot::LowGasVolts => behind && !low_gas,
            Spot::MainCoil => coils.is_some(),
            Spot::SecondCoil => second,
            Spot::ReturnAir
            | Spot::SupplyAir
            | Spot::RoomAir
            | Spot::OutsideAir
            | Spot::TankSkin
            | Spot::Flue
            | Spot::FlameRod
            | Spot::IgniterOhms
            | Spot::SecondCoilOhms
            | Spot::BurnerGroundOhms
            | Spot::MeterDial => false,
        };
        if live { volts } else { 0.0 }
    }

    /// Ohms of a part with the furnace off: what the electrical meter comes to when it is held there.
    pub(crate) fn ohms(&self, spot: Spot) -> f64 {
        let condition = &self.setup.condition;
        match spot {
            Spot::IgniterOhms => electrical::igniter_ohm(condition.burners.igniter_weak),
            Spot::SecondCoilOhms => match condition.valve.second_coil {
                Coil::Works => electrical::second_coil_ohm(),
                Coil::Dead => f64::INFINITY,
            },
            Spot::BurnerGroundOhms => electrical::ground_ohm(condition.burners.ground_poor),
            Spot::ReturnAir
            | Spot::SupplyAir
            | Spot::RoomAir
            | Spot::OutsideAir
            | Spot::TankSkin
            | Spot::Flue
            | Spot::FlameRod
            | Spot::RToC
            | Spot::W1ToC
            | Spot::W2ToC
            | Spot::FirstSwitch
            | Spot::SecondSwitch
            | Spot::LimitSwitch
            | Spot::RolloutSwitch
            | Spot::LowGasVolts
            | Spot::MainCoil
            | Spot::SecondCoil
            | Spot::MeterDial => f64::INFINITY,
        }
    }

    /// Whether the switch on the gas valve lets the coils have their volts.
    fn is_valve_on(&self) -> bool {
        self.things.valve_switch == OnOff::On
    }
}
