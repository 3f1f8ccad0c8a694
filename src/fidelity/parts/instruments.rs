//! The shipped manometers.

use super::bench::setup;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::instrument::manometer::Manometer;
use crate::setup::MeterSetup;
use crate::units::{PA_PER_INWC, PressureUnit, TICK_S};

pub(super) fn checks() -> Vec<Check> {
    vec![accuracy(), resolution(), range(), wrong_zero()]
}

const SHIPPED: [&str; 4] =
    ["healthy-natural", "healthy-propane", "natural-gas-busy-kitchen", "propane-cold-morning"];

/// A meter that is on, and its clock.
struct Held {
    meter: Manometer,
    tick: u64,
}

impl Held {
    fn new(setup: &MeterSetup) -> Self {
        let mut meter = Manometer::new(
            setup.range_pa,
            setup.zero_error_pa,
            setup.drift_pa,
            setup.drift_s,
            setup.lag_s,
        );
        meter.set_on(true);
        Self { meter, tick: 0 }
    }

    fn read_inwc(&mut self, seconds: u32, inwc: f64) -> f64 {
        for _ in 0..50 * seconds {
            self.meter.step(self.tick, TICK_S, inwc * PA_PER_INWC);
            self.tick += 1;
        }
        self.meter.shown_pa() / PA_PER_INWC
    }
}

fn accuracy() -> Check {
    let mut rows = Vec::new();
    for id in SHIPPED {
        let Some(setup) = setup(id) else { continue };
        for warm in [false, true] {
            let mut held = Held::new(&setup.meter);
            held.read_inwc(if warm { 3_600 } else { 10 }, 0.0);
            held.meter.zero();
            for inwc in [1.7, 3.5, 7.0, 11.0] {
                let state = if warm { "warm" } else { "cold" };
                let found = held.read_inwc(10, inwc);
                rows.push(Row::new(
                    t!("row-zeroed", id = id, state = state, inwc = inwc.to_string()),
                    inwc,
                    found,
                ));
            }
        }
    }
    // A poor one: an inch of water off before it is zeroed.
    if let Some(setup) = setup("healthy-natural") {
        let mut held = Held::new(&MeterSetup { zero_error_pa: PA_PER_INWC, ..setup.meter });
        rows.push(Row::new(t!("row-inch-off"), 1.0, held.read_inwc(10, 0.0)));
        held.meter.zero();
        for inwc in [0.0, 3.5, 10.0] {
            let found = held.read_inwc(10, inwc);
            rows.push(Row::new(t!("row-inch-off-zeroed", inwc = inwc.to_string()), inwc, found));
        }
    }
    check("parts.manometer.accuracy", rows)
}

fn resolution() -> Check {
    let mut rows = Vec::new();
    if let Some(setup) = setup("healthy-natural") {
        for (unit, step_pa) in [
            (PressureUnit::InWc, 0.01 * PA_PER_INWC),
            (PressureUnit::KPa, 1.0),
            (PressureUnit::Mbar, 1.0),
        ] {
            let mut held = Held::new(&setup.meter);
            held.meter.set_unit(unit);
            held.read_inwc(10, 0.0);
            held.meter.zero();
            // Climb slowly and note the smallest change that the display makes.
            let mut smallest = f64::INFINITY;
            let mut last = held.meter.shown_pa();
            for k in 1..=40_u32 {
                held.read_inwc(5, 3.5 + 1e-3 * f64::from(k));
                let change = (held.meter.shown_pa() - last).abs();
                if k > 1 && change > 1e-9 {
                    smallest = smallest.min(change);
                }
                last = held.meter.shown_pa();
            }
            rows.push(Row::new(unit.label(), step_pa / PA_PER_INWC, smallest / PA_PER_INWC));
        }
    }
    check("parts.manometer.resolution", rows)
}

fn range() -> Check {
    let rows = SHIPPED
        .into_iter()
        .filter_map(|id| Some((id, setup(id)?)))
        .map(|(id, setup)| {
            let highest = setup.supply.lockup_pa.max(setup.furnace.plate.valve_max.si());
            Row::new(id, highest / PA_PER_INWC, setup.meter.range_pa / PA_PER_INWC)
        })
        .collect();
    check("parts.manometer.range", rows)
}

/// Zeroed under pressure, a meter carries that pressure along.
fn wrong_zero() -> Check {
    let mut rows = Vec::new();
    if let Some(setup) = setup("healthy-natural") {
        for trapped in [0.5, 3.5, 7.6] {
            let mut held = Held::new(&setup.meter);
            held.read_inwc(10, trapped);
            held.meter.zero();
            let found = held.read_inwc(10, 7.0);
            rows.push(Row::new(
                t!("row-zeroed-under-pressure", trapped = trapped.to_string()),
                7.0 - trapped,
                found,
            ));
        }
    }
    check("parts.manometer.wrong-zero", rows)
}
