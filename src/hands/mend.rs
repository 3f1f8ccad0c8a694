//! Repairs: whether they can be done here and now, and the bench refitted after them.

use super::apply::Done;
use super::event::{Happening, Outcome};
use super::refusal::Refusal;
use super::tools::{joint_index, port_index};
use crate::bench::Bench;
use crate::catalogue::repair::{Bay, Nature, Need, Renewed, Repair};
use crate::instrument::manometer::Manometer;
use crate::model::gas::SupplyRegulator;
use crate::parts::{Cock, Fitted, OnOff, Place, Port};
use crate::setup::{Setup, Tripped};

/// Angle up to which a hand valve counts as shut for work behind it, in degrees.
const SHUT_DEG: i16 = 0;
/// Pressure below which nothing is felt at an opened joint, in pascals (0.1 in. w.c.).
const LET_OFF_PA: f64 = 25.0;

impl Bench {
    /// Does a repair.
    pub(crate) fn mend(&mut self, repair: Repair) -> Done {
        self.need_repair_place(repair.place())?;
        if !repair.fits(&self.setup) {
            return Err(Refusal::NotFitted);
        }
        for need in repair.needs() {
            self.need(*need)?;
        }
        self.note_screws();
        let before = self.setup.clone();
        let ports_before = self.things.ports;
        let ice_before = self.gas.ice();
        let mut ice = ice_before;
        let sound = before.sound.clone().unwrap_or_else(|| Box::new(before.clone()));
        repair.apply(&mut Bay {
            setup: &mut self.setup,
            sound: &sound,
            ports: &mut self.things.ports,
            ice: &mut ice,
        });
        let changed = anything_but_screws(&before, &self.setup)
            || ice != ice_before
            || worse_ports(&ports_before) != worse_ports(&self.things.ports);
        if repair.nature() == Nature::Bypass && !changed {
            return Err(Refusal::AlreadySo);
        }
        self.renew(repair.renews());
        self.refit(&before, repair.renews(), ice);
        if let Some(joint) = repair.disturbs() {
            self.things.fluid[joint_index(joint)] = None;
        }
        let plate = &self.setup.furnace.plate;
        let plate = (*plate != before.furnace.plate).then(|| Box::new(plate.clone()));
        self.built_from.get_or_insert_with(|| Box::new(before));
        self.mended.push(repair);
        self.sheet.done.push(crate::senses::seen::Done { repair, tick: self.tick });
        let outcome = if changed { Outcome::Changed } else { Outcome::Nothing };
        Ok(vec![Happening::Mended { repair, outcome, plate }])
    }

    pub(crate) fn need_repair_place(&self, place: Place) -> Result<(), Refusal> {
        let furnace = [Place::PlantRoom, Place::GasValve];
        self.need_place(if place == Place::PlantRoom {
            &furnace
        } else {
            core::slice::from_ref(&place)
        })
    }

    pub(crate) fn need(&self, need: Need) -> Result<(), Refusal> {
        let things = &self.things;
        let (fine, why) = match need {
            Need::Shut(cock) => {
                let degrees = match cock {
                    Cock::Furnace => things.furnace_cock_deg,
                    Cock::Supply => things.supply_cock_deg,
                    Cock::WaterHeater => things.neighbor_cock_deg[0],
                    Cock::Range => things.neighbor_cock_deg[1],
                };
                (degrees <= SHUT_DEG, Refusal::ShutFirst(cock))
            }
            Need::NoPressure => {
                (self.gas.pressure_pa(Port::Inlet) < LET_OFF_PA, Refusal::PressureLeft)
            }
            Need::PowerOff => (things.furnace_switch == OnOff::Off, Refusal::PowerOn),
            Need::BurnerDoorOff => return self.need_burner_door_off(),
            Need::BlowerDoorOff => (things.doors[1] == Fitted::Off, Refusal::DoorInTheWay),
            Need::Open(port) => (things.ports[port_index(port)].is_empty(), Refusal::PortNotOpen),
            Need::HoseFree => (self.hose_port().is_none(), Refusal::HoseInTheWay),
        };
        if fine { Ok(()) } else { Err(why) }
    }

    /// Writes into the setup how the stage screws stand, so that they stay so.
    pub(crate) fn note_screws(&mut self) {
        let [low, high] = self.gas.springs().turns();
        let valve = &mut self.setup.furnace.valve;
        (valve.low.found_turns, valve.high.found_turns) = (low, high);
    }

    /// What is new does not stand as it was turned.
    pub(crate) fn renew(&mut self, renewed: Renewed) {
        match renewed {
            Renewed::Nothing => {}
            Renewed::SupplyRegulator => {
                self.things.turned_eighths[2] = 0;
                self.things.caps[2] = Fitted::On;
            }
            Renewed::Springs | Renewed::GasValve => {
                self.things.turned_eighths[0] = 0;
                self.things.turned_eighths[1] = 0;
                self.things.caps[0] = Fitted::On;
                self.things.caps[1] = Fitted::On;
            }
            Renewed::Meter => {
                let meter = &self.setup.meter;
                self.meter = Manometer::new(
                    meter.range_pa,
                    meter.zero_error_pa,
                    meter.drift_pa,
                    meter.drift_s,
                    meter.lag_s,
                );
                self.alerts.meter_over = false;
            }
        }
    }

    /// Brings the running model up to the changed setup.
    pub(crate) fn refit(&mut self, before: &Setup, renewed: Renewed, ice: f64) {
        // What has tripped stands in the model, and is reset there.
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

/// Whether anything but the turns of the stage screws and what has tripped is another.
fn anything_but_screws(before: &Setup, after: &Setup) -> bool {
    let mut as_before = after.clone();
    let (kept, was) = (&mut as_before.furnace.valve, &before.furnace.valve);
    kept.low.found_turns = was.low.found_turns;
    kept.high.found_turns = was.high.found_turns;
    as_before != *before
}

/// What of the ports counts as worse or better: a crack, a plug across its thread.
fn worse_ports(ports: &[crate::model::port::PortState; 2]) -> [(bool, bool); 2] {
    ports.map(|port| {
        let truth = port.truth();
        (truth.cracked, truth.cross_threaded)
    })
}
