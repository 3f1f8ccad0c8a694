//! Volts and ohms of the furnace's wiring, whether or not anybody measures them.

use super::furnace::{Coils, Contacts};
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
        let Coils { main, high } = self.furnace.coils();
        let coil = self.setup.condition.valve.high_coil;
        let load = match (main && self.things.valve_switch == OnOff::On, high, coil) {
            (false, _, _) => Load::Idle,
            (true, true, Coil::Works) => Load::Both,
            (true, false, _) | (true, true, Coil::Dead) => Load::Main,
        };
        let volts = electrical::control_v(load);
        let (first, second) = self.thermostat_calls();
        let forced = match self.setup.condition.control.second_contact {
            Contact::Works => false,
            Contact::Closed => first,
        };
        let Contacts { low_switch, high_switch, limit, rollout, low_gas } = self.furnace.contacts();
        let behind = limit && rollout;
        let live = match spot {
            Spot::RToC => true,
            Spot::W1ToC => first,
            Spot::W2ToC => second || forced || self.things.stage_jumper == Fitted::On,
            // Limit, roll-out switches and the others lie in a row: an open one takes the volts of
            // those behind it.
            Spot::LimitSwitch => !limit,
            Spot::RolloutSwitch => limit && !rollout,
            Spot::LowSwitch => behind && !low_switch,
            Spot::HighSwitch => behind && !high_switch,
            Spot::LowGasVolts => behind && !low_gas,
            Spot::MainCoil => main,
            Spot::HighCoil => high,
            Spot::ReturnAir
            | Spot::SupplyAir
            | Spot::RoomAir
            | Spot::OutsideAir
            | Spot::TankSkin
            | Spot::Flue
            | Spot::FlameRod
            | Spot::IgniterOhms
            | Spot::HighCoilOhms
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
            Spot::HighCoilOhms => match condition.valve.high_coil {
                Coil::Works => electrical::high_coil_ohm(),
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
            | Spot::LowSwitch
            | Spot::HighSwitch
            | Spot::LimitSwitch
            | Spot::RolloutSwitch
            | Spot::LowGasVolts
            | Spot::MainCoil
            | Spot::HighCoil
            | Spot::MeterDial => f64::INFINITY,
        }
    }
}
