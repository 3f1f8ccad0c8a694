//! Putting the bench up: everything as found, pressures at rest, tick 0.

use super::action::{Fitted, LowSide, Opening};
use super::part::Place;
use super::port::PortState;
use super::setup::Setup;
use super::{Alerts, Bench, Person, Sheet, Things, cycle, furnace, gas, kit, watch};
use crate::instrument::manometer::Manometer;
use crate::physics::room::Nose;
use crate::physics::valve::HandleAngle;

/// The bench as found.
pub(super) fn bench(setup: Setup) -> Bench {
    let found = &setup.found;
    let things = Things {
        manual_valve: found.manual_valve,
        supply_valve: HandleAngle::OPEN,
        neighbor_valves: [HandleAngle::OPEN; 2],
        neighbors: found.neighbors,
        starved_s: [0.0; 2],
        valve_switch: found.valve_switch,
        furnace_switch: found.furnace_switch,
        doors: [Fitted::On, Fitted::On],
        caps: [found.caps[0], found.caps[1], Fitted::On],
        ports: [0, 1]
            .map(|i| PortState::found(found.plugs_past_hand[i], setup.condition.ports[i].plug)),
        windows: [Opening::Closed, Opening::Closed],
        stage_jumper: Fitted::Off,
        setpoint_half_f: setup.house.setpoint_half_f,
        heating: found.thermostat_mode,
        tag: Fitted::Off,
        fluid: [None; 4],
        turned_eighths: [0; 3],
        last_turn_tick: None,
    };
    let meter = &setup.meter;
    let mut bench = Bench {
        built_from: None,
        mended: Vec::new(),
        tick: 0,
        gas: gas::GasSide::new(&setup),
        furnace: furnace::Furnace::new(&setup),
        house: furnace::house(&setup),
        thermostat: furnace::thermostat(&setup),
        room: furnace::room(&setup),
        meter: Manometer::new(
            meter.range_pa,
            meter.zero_error_pa,
            meter.drift_pa,
            meter.drift_s,
            meter.lag_s,
        )
        .worn(setup.condition.meter.wear),
        low_side: LowSide::Air,
        kit: kit::Kit::new(setup.house.inside_k, setup.condition.meter.column_off_m),
        person: Person {
            place: Place::Yard,
            hand: None,
            detector: None,
            sniffed: None,
            nose: Nose::default(),
        },
        things,
        sheet: Sheet::default(),
        watch: watch::Watch::new(setup.card.settle_s),
        cycle: cycle::CycleWatch::default(),
        events: Vec::new(),
        alerts: Alerts::default(),
        over: None,
        setup,
    };
    bench.push_paths();
    bench.gas.settle();
    bench
}
