//! Doors, switches, valves, windows, thermostat.

use super::apply::{Done, plain};
use super::refusal::Refusal;
use crate::bench::Bench;
use crate::parts::{Cock, Door, Fitted, Neighbor, OnOff, Opening, Place, Window};

/// Setpoints a thermostat takes, in half degrees Fahrenheit (45–90 °F).
const SETPOINTS: core::ops::RangeInclusive<i16> = 90..=180;

/// Sets a thing unless it is so already.
fn put<T: PartialEq>(slot: &mut T, to: T) -> Done {
    if *slot == to {
        return Err(Refusal::AlreadySo);
    }
    *slot = to;
    plain()
}

impl Bench {
    pub(crate) fn set_window(&mut self, window: Window, to: Opening) -> Done {
        match window {
            Window::PlantRoom => {
                self.need_place(&[Place::PlantRoom, Place::GasValve])?;
                put(&mut self.things.windows[0], to)
            }
            Window::Hall => {
                self.need_place(&[Place::Hall])?;
                put(&mut self.things.windows[1], to)
            }
        }
    }

    pub(crate) fn set_door(&mut self, door: Door, to: Fitted) -> Done {
        self.need_place(&[Place::PlantRoom, Place::GasValve])?;
        match door {
            Door::Burner => {
                if to == Fitted::On && self.hose_port().is_some() {
                    return Err(Refusal::HoseInTheWay);
                }
                if to == Fitted::On && self.kit.clipped == Fitted::On {
                    return Err(Refusal::LeadsInTheWay);
                }
                put(&mut self.things.doors[0], to)
            }
            Door::Blower => put(&mut self.things.doors[1], to),
        }
    }

    pub(crate) fn set_furnace_switch(&mut self, to: OnOff) -> Done {
        self.need_place(&[Place::PlantRoom, Place::GasValve])?;
        put(&mut self.things.furnace_switch, to)
    }

    pub(crate) fn set_thermostat_mode(&mut self, to: OnOff) -> Done {
        self.need_place(&[Place::Hall])?;
        put(&mut self.things.heating, to)
    }

    pub(crate) fn set_setpoint(&mut self, half_f: i16) -> Done {
        self.need_place(&[Place::Hall])?;
        if !SETPOINTS.contains(&half_f) {
            return Err(Refusal::Absurd);
        }
        put(&mut self.things.setpoint_half_f, half_f)
    }

    pub(crate) fn set_stage_jumper(&mut self, to: Fitted) -> Done {
        self.need_place(&[Place::PlantRoom, Place::GasValve])?;
        self.need_burner_door_off()?;
        put(&mut self.things.stage_jumper, to)
    }

    pub(crate) fn set_valve_switch(&mut self, to: OnOff) -> Done {
        self.need_valve()?;
        put(&mut self.things.valve_switch, to)
    }

    pub(crate) fn set_cock(&mut self, cock: Cock, degrees: i16) -> Done {
        if !(0..=90).contains(&degrees) {
            return Err(Refusal::Absurd);
        }
        let plant = [Place::PlantRoom, Place::GasValve];
        match cock {
            Cock::Furnace => {
                self.need_place(&plant)?;
                put(&mut self.things.furnace_cock_deg, degrees)
            }
            Cock::WaterHeater => {
                self.need_place(&plant)?;
                put(&mut self.things.neighbor_cock_deg[0], degrees)
            }
            Cock::Range => {
                self.need_place(&[Place::Hall])?;
                put(&mut self.things.neighbor_cock_deg[1], degrees)
            }
            Cock::Supply => {
                self.need_place(&[Place::Yard])?;
                put(&mut self.things.supply_cock_deg, degrees)
            }
        }
    }

    pub(crate) fn set_neighbor(&mut self, neighbor: Neighbor, to: OnOff) -> Done {
        match neighbor {
            Neighbor::WaterHeater => {
                self.need_place(&[Place::PlantRoom, Place::GasValve])?;
                put(&mut self.things.neighbors[0], to)?;
                self.things.starved_s[0] = 0.0;
                plain()
            }
            Neighbor::Range => {
                self.need_place(&[Place::Hall])?;
                put(&mut self.things.neighbors[1], to)?;
                self.things.starved_s[1] = 0.0;
                plain()
            }
        }
    }

    pub(crate) fn set_tag(&mut self, to: Fitted) -> Done {
        self.need_place(&[Place::PlantRoom, Place::GasValve])?;
        put(&mut self.things.tag, to)
    }

    pub(crate) fn reset_rollout(&mut self) -> Done {
        self.need_place(&[Place::PlantRoom, Place::GasValve])?;
        self.need_burner_door_off()?;
        if self.furnace.reset_rollout() { plain() } else { Err(Refusal::AlreadySo) }
    }
}
