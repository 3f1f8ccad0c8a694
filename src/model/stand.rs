//! Putting the bench up: everything as found, pressures at rest, tick 0.

use super::port::PortState;
use super::{furnace, gas, kit};
use crate::bench::{Alerts, Bench, Person, Sheet, Things};
use crate::hands::cycle;
use crate::instrument::manometer::Manometer;
use crate::parts::{Fitted, LowSide, Opening, Place};
use crate::physics::room::Nose;
use crate::senses::watch;
use crate::setup::Setup;

/// The bench as found.
pub(crate) fn bench(setup: Setup) -> Bench {
    let found = &setup.found;
    let things = Things {
        furnace_cock_deg: found.cock_deg,
        supply_cock_deg: 90,
        neighbor_cock_deg: [90, 90],
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
