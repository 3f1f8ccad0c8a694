//! Gas, supply, pipe and other appliances of one bench.

use super::seeded::SeededValues;
use crate::appliance::plate::Fuel;
use crate::parts;
use crate::physics::fluid;
use crate::physics::pipe::{copper_tube_id_m, schedule_40_id_m};
use crate::scenario::format::{Gas, Neighbor, Pipe, Scenario, Source, Supply};
use crate::scenario::value::{Count, Vary};
use crate::setup::{Bore, OtherApplianceSetup, Run, SupplyKind, SupplySetup};
use crate::units::{Length, PA_PER_INWC, PA_PER_PSI};
use enum_map::{EnumMap, enum_map};

/// The gas of a fuel as the tables have it.
pub(in crate::scenario) fn plain_gas(fuel: Fuel) -> fluid::Gas {
    match fuel {
        Fuel::Natural => fluid::Gas::natural(),
        Fuel::Propane => fluid::Gas::propane(),
    }
}

pub(super) fn gas(values: SeededValues, gas: &Gas) -> fluid::Gas {
    let plain = plain_gas(gas.fuel);
    fluid::Gas {
        heating_value_j_m3: values.or(
            gas.heating_value.as_ref(),
            "gas.heating_value",
            plain.heating_value_j_m3,
        ),
        specific_gravity: values.or(
            gas.specific_gravity.as_ref(),
            "gas.specific_gravity",
            plain.specific_gravity,
        ),
        ..plain
    }
}

pub(super) fn supply(values: SeededValues, it: &Supply) -> SupplySetup {
    let set_pa = values.get(&it.set, "supply.set");
    let lockup_pa = values.get(&it.lockup, "supply.lockup");
    let found_pa = values.or(it.found.as_ref(), "supply.found", set_pa);
    let droop_flow_m3_s = values.get(&it.droop_flow, "supply.droop_flow");
    let (kind, upstream_psi) = match &it.source {
        Source::Tank(tank) => {
            let level = values.get(&tank.level, "supply.source.level");
            let capacity_m3 = values.get(&tank.capacity, "supply.source.capacity");
            (SupplyKind::Tank { level, capacity_m3 }, 10.0)
        }
        Source::Meter(meter) => {
            let dial_m3 = values.get(&meter.dial, "supply.source.dial");
            (SupplyKind::Meter { dial_m3 }, 2.0)
        }
    };
    let limit = |value: &Option<_>, path, other| values.or(value.as_ref(), path, other);
    SupplySetup {
        upstream_pa: limit(&it.upstream, "supply.upstream", upstream_psi * PA_PER_PSI),
        set_pa: found_pa,
        // The spring moves both alike: lock-up stays as far above the set pressure.
        lockup_pa: found_pa + lockup_pa - set_pa,
        droop_pa: values.get(&it.droop, "supply.droop"),
        droop_flow_m3_s,
        capacity_m3_s: values.or(it.capacity.as_ref(), "supply.capacity", 2.0 * droop_flow_m3_s),
        pa_per_turn: values.get(&it.per_turn, "supply.per_turn"),
        kind,
        delivery_limits_pa: (
            limit(&it.delivery_min, "supply.delivery_min", 0.9 * set_pa),
            limit(&it.delivery_max, "supply.delivery_max", 1.1 * set_pa),
        ),
        lockup_max_pa: limit(&it.lockup_max, "supply.lockup_max", 1.2 * set_pa),
    }
}

pub(super) fn runs(values: SeededValues, list: &[Pipe], path: &str) -> Vec<Run> {
    list.iter().enumerate().map(|(i, pipe)| run(values, pipe, &format!("{path}[{i}]"))).collect()
}

fn run(values: SeededValues, pipe: &Pipe, path: &str) -> Run {
    match pipe {
        Pipe::Steel(it) => {
            let bore = Bore::Steel(schedule_40_id_m(&it.size).unwrap_or(FALLBACK_BORE_M));
            stretch(values, bore, &it.length, (&it.elbows, &it.tees), path)
        }
        Pipe::Copper(it) => {
            let bore = Bore::Copper(copper_tube_id_m(&it.size).unwrap_or(FALLBACK_BORE_M));
            stretch(values, bore, &it.length, (&it.elbows, &it.tees), path)
        }
        Pipe::Corrugated(it) => Run {
            bore: Bore::Corrugated(values.count(&it.ehd, &format!("{path}.ehd"))),
            length_m: values.get(&it.length, &format!("{path}.length")),
            elbows: values.count(&it.extra_fittings, &format!("{path}.extra_fittings")),
            tees: 0,
        },
    }
}

/// Bore of a size that a check would have refused, in metres.
const FALLBACK_BORE_M: f64 = 0.02;

fn stretch(
    values: SeededValues,
    bore: Bore,
    length: &Vary<Length>,
    (elbows, tees): (&Vary<Count>, &Vary<Count>),
    path: &str,
) -> Run {
    Run {
        bore,
        length_m: values.get(length, &format!("{path}.length")),
        elbows: values.count(elbows, &format!("{path}.elbows")),
        tees: values.count(tees, &format!("{path}.tees")),
    }
}

pub(super) fn other_appliances(
    values: SeededValues,
    scenario: &Scenario,
) -> EnumMap<parts::OtherAppliance, OtherApplianceSetup> {
    let manifold_inwc = match scenario.gas.fuel {
        Fuel::Natural => 3.5,
        Fuel::Propane => 10.0,
    };
    let one = |it: &Neighbor, path: &str| OtherApplianceSetup {
        line: runs(values, &it.line, &format!("{path}.line")),
        input_w: values.get(&it.input, &format!("{path}.input")),
        manifold_pa: values.or(
            it.manifold.as_ref(),
            &format!("{path}.manifold"),
            manifold_inwc * PA_PER_INWC,
        ),
    };
    enum_map! {
        parts::OtherAppliance::WaterHeater => one(&scenario.neighbors.water_heater, "neighbors.water_heater"),
        parts::OtherAppliance::Range => one(&scenario.neighbors.range, "neighbors.range"),
    }
}
