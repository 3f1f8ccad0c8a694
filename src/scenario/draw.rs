//! From a scenario and a seed to the numbers of one bench.

mod furnace;
mod seeded;
mod supply;

pub(super) use furnace::orifice_input_w;
use seeded::{SEA_LEVEL_PA, SeededValues};

use super::format::{Card, Found, House, Manometer, Scenario, Scene, StatedHeat};
use super::pick::Pick;
use super::required;
use super::value::Vary;
use crate::parts::{
    self, Fitted, OnOff, OtherAppliance, Port, Position, Room, Screw, TimeOfDay, YardLook,
};
use crate::physics::valve::HandleAngle;
use crate::setup::{self, HouseSetup, JobCard, MeterSetup, Setup};
use crate::units::{M_PER_FT, f_from_k};
use enum_map::{EnumMap, enum_map};

/// Kelvins in 70 °F.
const LOSS_STEP_K: f64 = 70.0 / 1.8;
/// Height up to which the plate's orifices are right: 2,000 ft (IFGC, NFPA 54).
const PLATE_ORIFICES_M: f64 = 2_000.0 * M_PER_FT;

impl Scenario {
    /// The bench of a seed. The same scenario and seed give the same bench to the last bit; each
    /// range draws from a stream named after its field, so that a field more or less elsewhere
    /// changes nothing here.
    #[must_use]
    pub fn draw(&self, seed: u64) -> Setup {
        let job = self.settled(seed);
        let mut setup = job.draw_sound(seed);
        for (i, affliction) in job.faults.iter().enumerate() {
            let (fault, severity) = affliction.draw(seed, &format!("faults[{i}]"), setup.fuel);
            fault.apply(&mut setup, severity);
        }
        setup
    }

    /// The healthy bench beside the one of a seed: the same draws, without faults, with the supply
    /// regulator, springs, screws, switches and valves as they should be. Orifices are those of plate
    /// or label, but for heights above 2,000 ft, where others may be right.
    #[must_use]
    pub fn draw_healthy(&self, seed: u64) -> Setup {
        let mut right = self.settled(seed).into_owned();
        right.supply.found = None;
        right.furnace.settings.clear();
        right.furnace.springs_fitted = None;
        if right.site.altitude.most() <= PLATE_ORIFICES_M {
            right.furnace.orifice_fitted = None;
            right.furnace.orifice_sizes = None;
        }
        let mut setup = right.draw_sound(seed);
        setup.found.manual_valve = HandleAngle::OPEN;
        setup.found.valve_switch = OnOff::On;
        setup.found.furnace_switch = OnOff::On;
        setup.found.caps = EnumMap::from_fn(|_| Fitted::On);
        setup
    }

    /// The bench of a seed without its faults.
    #[must_use]
    pub fn draw_sound(&self, seed: u64) -> Setup {
        let job = &*self.settled(seed);
        let values = SeededValues::new(seed);
        let gas = supply::gas(values, &job.gas);
        Setup {
            gas,
            fuel: job.gas.fuel,
            ambient_abs_pa: ambient_abs_pa(values.get(&job.site.altitude, "site.altitude")),
            outside_k: values.get(&job.site.outside, "site.outside"),
            supply: supply::supply(values, &job.supply),
            trunk: supply::runs(values, &job.trunk, "trunk"),
            branch: supply::runs(values, &job.branch, "branch"),
            other_appliances: supply::other_appliances(values, job),
            furnace: furnace::furnace(values, &job.furnace),
            scene: scene(values, &job.scene),
            house: house(values, &job.house),
            meter: manometer(values, &job.manometer),
            found: found(values, job, &job.found),
            condition: setup::Condition::default(),
            faults: Vec::new(),
            sound: None,
            card: card(values, job, &job.card),
        }
    }
}

/// Pressure of the standard atmosphere at a height, absolute, in pascals (ICAO Doc 7488).
fn ambient_abs_pa(height_m: f64) -> f64 {
    SEA_LEVEL_PA * libm::pow(1.0 - 2.255_77e-5 * height_m, 5.255_88)
}

fn scene(values: SeededValues, scene: &Scene) -> parts::Scene {
    let position = scene.position.as_ref().map(|position| values.pick(position, "scene.position"));
    let rooms = match position.unwrap_or_default() {
        Position::Upright => Pick::among(Room::Basement, vec![Room::Closet, Room::Garage]),
        Position::Horizontal => Room::Attic.into(),
    };
    let hours = Pick::among(8.0, vec![7.0, 7.5, 9.25, 10.5, 13.0, 14.5, 16.25]);
    let hour = match &scene.hour {
        Some(hour) => values.get(hour, "scene.hour"),
        None => values.pick(&hours, "scene.hour"),
    };
    parts::Scene {
        valve: values.pick(&scene.valve, "scene.valve"),
        room: values.pick(scene.room.as_ref().unwrap_or(&rooms), "scene.room"),
        yard: values.pick(
            scene.yard.as_ref().unwrap_or(&Pick::among(YardLook::Siding, vec![YardLook::Brick])),
            "scene.yard",
        ),
        begins: TimeOfDay::from_hours(hour),
    }
}

fn house(values: SeededValues, house: &House) -> HouseSetup {
    let loss_w_k = values.get(&house.heat_loss, "house.heat_loss") / LOSS_STEP_K;
    let setpoint_f = f_from_k(values.get(&house.setpoint, "house.setpoint"));
    HouseSetup {
        inside_k: values.get(&house.inside, "house.inside"),
        loss_w_k,
        mass_j_k: loss_w_k * values.get(&house.cooling_time, "house.cooling_time"),
        setpoint_half_f: small(2.0 * setpoint_f),
        plant_room_m3: values.get(&house.plant_room, "house.plant_room"),
        air_changes_h: values.get(&house.air_changes, "house.air_changes"),
    }
}

fn manometer(values: SeededValues, it: &Manometer) -> MeterSetup {
    MeterSetup {
        range_pa: values.get(&it.range, "manometer.range"),
        zero_error_pa: values.get(&it.zero_error, "manometer.zero_error"),
        drift_pa: values.get(&it.drift, "manometer.drift"),
        drift_s: values.get(&it.drift_time, "manometer.drift_time"),
        lag_s: values.get(&it.lag, "manometer.lag"),
    }
}

fn found(values: SeededValues, scenario: &Scenario, it: &Found) -> setup::Found {
    setup::Found {
        manual_valve: HandleAngle::from_deg(small(
            values.get(&it.manual_valve, "found.manual_valve"),
        ))
        .unwrap_or(HandleAngle::OPEN),
        valve_switch: values.pick(&it.valve_switch, "found.valve_switch"),
        furnace_switch: values.pick(&it.furnace_switch, "found.furnace_switch"),
        thermostat_mode: values.pick(&it.thermostat, "found.thermostat"),
        other_appliances: enum_map! {
            OtherAppliance::WaterHeater => {
                values.pick(&scenario.neighbors.water_heater.found, "neighbors.water_heater.found")
            }
            OtherAppliance::Range => {
                values.pick(&scenario.neighbors.range.found, "neighbors.range.found")
            }
        },
        caps: EnumMap::from_fn(|screw: Screw| {
            screw.level().map_or(Fitted::On, |level| {
                let (path, cap) = it.cap(level);
                values.pick(cap, path)
            })
        }),
        plugs_past_hand: enum_map! {
            Port::Inlet => values.get(&it.inlet_plug, "found.inlet_plug"),
            Port::Manifold => values.get(&it.manifold_plug, "found.manifold_plug"),
        },
    }
}

fn card(values: SeededValues, scenario: &Scenario, card: &Card) -> JobCard {
    JobCard {
        title: scenario.title.clone(),
        text: card.text.clone(),
        heating_value: stated_heat(values, &card.heating_value),
        supply_owner: card.supply_owner.clone(),
        supply: card.supply,
        hold_s: values.get(&card.hold, "card.hold"),
        settle_s: values.get(&card.settle, "card.settle"),
        required: required::of(scenario),
    }
}

fn stated_heat(values: SeededValues, stated: &StatedHeat) -> setup::StatedHeat {
    let of = |value: &Option<Vary<_>>, path| value.as_ref().map(|value| values.get(value, path));
    setup::StatedHeat {
        natural_j_m3: of(&stated.natural, "card.heating_value.natural"),
        propane_j_m3: of(&stated.propane, "card.heating_value.propane"),
    }
}

/// A small number as a whole one.
fn small(value: f64) -> i16 {
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
    let small = value.round() as i16;
    small
}
