//! The furnace of one bench.

use super::seeded::{SEA_LEVEL_PA, SeededValues};
use crate::appliance::plate::{self, Fuel, GasFigures, Target};
use crate::catalogue::springs::per_turn_inwc;
use crate::parts::Levels;
use crate::physics::orifice::{OpeningLaw, drill_diameter_m, hole_area_m2};
use crate::scenario::format::{Figures, Furnace, Spring, Valve};
use crate::setup::{FurnaceSetup, SpringSetup, Stacking, ValveSetup};
use crate::units::{HeatRate, PA_PER_INWC, Pressure, T_STD_K, TemperatureStep};

/// Diameter of an orifice that a check would have refused, in metres.
const FALLBACK_ORIFICE_M: f64 = 1e-3;
/// Input and manifold pressure of a plate that a check would have refused.
const FALLBACK_INPUT: HeatRate = HeatRate(2e4);
const FALLBACK_MANIFOLD: Target = Target { pa: 870.0, tolerance_pa: 75.0 };

pub(super) fn furnace(values: SeededValues, it: &Furnace) -> FurnaceSetup {
    let plate = plate(values, it);
    let governing = plate.figures().clone();
    let burners = values.count(&it.burners, "furnace.burners");
    let springs_for = it.springs_fitted.unwrap_or(governing.fuel);
    let orifice_cd = values.or(
        it.orifice_coefficient.as_ref(),
        "furnace.orifice_coefficient",
        coefficient(&governing, plate.input.top().si(), burners),
    );
    FurnaceSetup {
        orifices_m: orifices(values, it, &governing, burners),
        orifice_cd,
        orifice_stamp: it.orifice_fitted.clone().unwrap_or_else(|| governing.orifice_stamp.clone()),
        springs_for,
        valve: valve(values, it, &plate, springs_for),
        low_gas_switch: it.low_gas_switch.unwrap_or_else(|| {
            plate.converted_to.as_ref().is_some_and(|label| label.fuel == Fuel::Propane)
        }),
        box_suction_pa: values.get(&it.box_suction, "furnace.box_suction"),
        igniter_warm_up_s: values.get(&it.igniter_warm_up, "furnace.igniter_warm_up"),
        auto_next_min: it.auto_next().map(|time| values.get(time, "furnace.auto_high") / 60.0),
        plate,
    }
}

fn plate(values: SeededValues, it: &Furnace) -> plate::Plate {
    let written = &it.plate;
    let get_step = |value, path| TemperatureStep(values.get(value, path));
    plate::Plate {
        model: written.model.clone(),
        made_for: figures(values, &written.made_for, "furnace.plate.made_for"),
        converted_to: it
            .conversion
            .as_ref()
            .map(|label| figures(values, label, "furnace.conversion")),
        input: written.inputs().map_or(Levels::one(FALLBACK_INPUT), |inputs| {
            inputs
                .map(|_, (name, rate)| HeatRate(values.get(rate, &format!("furnace.plate.{name}"))))
        }),
        rise: (
            get_step(&written.rise_min, "furnace.plate.rise_min"),
            get_step(&written.rise_max, "furnace.plate.rise_max"),
        ),
        valve_max: Pressure(values.get(&written.valve_max, "furnace.plate.valve_max")),
    }
}

fn figures(values: SeededValues, it: &Figures, path: &str) -> GasFigures {
    let get = |value, name| values.get(value, &format!("{path}.{name}"));
    let orifice_m = values.or(
        it.orifice_size.as_ref(),
        &format!("{path}.orifice_size"),
        drill_diameter_m(&it.orifice).unwrap_or(FALLBACK_ORIFICE_M),
    );
    GasFigures {
        fuel: it.fuel,
        inlet_min_pa: get(&it.inlet_min, "inlet_min"),
        inlet_max_pa: get(&it.inlet_max, "inlet_max"),
        manifold: it.levels().map_or(Levels::one(FALLBACK_MANIFOLD), |levels| {
            levels.map(|_, it| Target {
                pa: get(it.pressure, it.field),
                tolerance_pa: get(it.tolerance, it.tolerance_field),
            })
        }),
        orifice_m,
        orifice_stamp: it.orifice.clone(),
        decimals: u8::try_from(values.count(&it.decimals, &format!("{path}.decimals")))
            .unwrap_or(1),
    }
}

/// Discharge coefficient with which the orifices of plate or label give the plate's full input, in
/// the fuel's gas as the tables have it, at sea level.
fn coefficient(governing: &GasFigures, input_w: f64, burners: u32) -> f64 {
    let gas = super::supply::plain_gas(governing.fuel);
    let full_pa = governing.manifold.top().pa;
    let unit =
        OpeningLaw::new(&gas, T_STD_K).flow(full_pa, full_pa + SEA_LEVEL_PA, SEA_LEVEL_PA).flow;
    let area_m2 = hole_area_m2(1.0, governing.orifice_m) * f64::from(burners.max(1));
    input_w / gas.heating_value_j_m3 / (unit * area_m2).max(1e-12)
}

/// What one hole of `hole_m` metres burns at a manifold pressure, in watts, with a discharge coefficient,
/// in the fuel's gas as the tables have it, at sea level.
pub(in crate::scenario) fn orifice_input_w(
    fuel: Fuel,
    manifold_pa: f64,
    hole_m: f64,
    coefficient: f64,
) -> f64 {
    let gas = super::supply::plain_gas(fuel);
    let law = OpeningLaw::new(&gas, T_STD_K);
    let unit = law.flow(manifold_pa, manifold_pa + SEA_LEVEL_PA, SEA_LEVEL_PA).flow;
    unit * hole_area_m2(coefficient, hole_m) * gas.heating_value_j_m3
}

/// Diameter of each orifice that is fitted, in metres.
fn orifices(values: SeededValues, it: &Furnace, governing: &GasFigures, burners: u32) -> Vec<f64> {
    let stamped_m = match &it.orifice_fitted {
        Some(stamp) if *stamp != governing.orifice_stamp => {
            let made_for = &it.plate.made_for;
            let from_plate = (*stamp == made_for.orifice)
                .then(|| figures(values, made_for, "furnace.plate.made_for").orifice_m);
            from_plate.or_else(|| drill_diameter_m(stamp)).unwrap_or(FALLBACK_ORIFICE_M)
        }
        Some(_) | None => governing.orifice_m,
    };
    match &it.orifice_sizes {
        Some(sizes) => sizes
            .iter()
            .enumerate()
            .map(|(i, size)| values.get(size, &format!("furnace.orifice_sizes[{i}]")))
            .collect(),
        None => (0..burners.max(1)).map(|_| stamped_m).collect(),
    }
}

fn valve(
    values: SeededValues,
    it: &Furnace,
    plate: &plate::Plate,
    springs_for: Fuel,
) -> ValveSetup {
    let written: &Valve = &it.valve;
    let governing = plate.figures();
    let gas = super::supply::plain_gas(governing.fuel);
    // Inches of water lost.
    let loss_inwc = match governing.fuel {
        Fuel::Natural => 0.9,
        Fuel::Propane => 0.6,
    };
    let set_pa = governing.manifold.map(|level, target| {
        let (name, written) = it.settings.of(level);
        values.or(written, &format!("furnace.settings.{name}"), target.pa)
    });
    let springs = set_pa.map(|level, pa| {
        let below_pa = match written.stacking {
            Stacking::NextOnFirst if !level.is_first() => *set_pa.first(),
            Stacking::NextOnFirst | Stacking::Independent => 0.0,
        };
        let (name, spring) = written.of(level);
        let per_turn_pa = per_turn_inwc(springs_for, level) * PA_PER_INWC;
        let path = format!("furnace.valve.{name}");
        spring_setup(values, spring, per_turn_pa, pa - below_pa, &path)
    });
    ValveSetup {
        loss_pa: values.or(written.loss.as_ref(), "furnace.valve.loss", loss_inwc * PA_PER_INWC),
        loss_flow_m3_s: values.or(
            written.loss_flow.as_ref(),
            "furnace.valve.loss_flow",
            plate.input.top().si() / gas.heating_value_j_m3,
        ),
        springs,
        stacking: written.stacking,
        settle_s: values.get(&written.settle, "furnace.valve.settle"),
    }
}

fn spring_setup(
    values: SeededValues,
    it: &Spring,
    usual_pa: f64,
    set_pa: f64,
    path: &str,
) -> SpringSetup {
    let pa_per_turn = values.or(it.per_turn.as_ref(), &format!("{path}.per_turn"), usual_pa);
    let turns = values.get(&it.turns, &format!("{path}.turns"));
    SpringSetup { pa_per_turn, turns, found_turns: (set_pa / pa_per_turn).clamp(0.0, turns) }
}
