//! What is possible but not usual: each warning names the range that is published or common.

use super::context::{Cross, TRIED_SEEDS};
use crate::appliance::plate::Fuel;
use crate::appliance::test_point::{Port, Stage};
use crate::catalogue::fault::Fault;
use crate::physics::fluid::Gas;
use crate::physics::pipe::{Fitting, PipeMaterial, PipeSpec, TubingSpec};
use crate::scenario::format::Scenario;
use crate::setup::{Bore, Run, Setup, SupplyKind};
use crate::site::tank::Tank;
use crate::units::{
    J_M3_PER_BTU_FT3, M_PER_FT, M3_S_PER_CFH, P_STD_PA, PA_PER_INWC, T_STD_K, k_from_f,
};
use crate::words::decimal;

/// Drop for which the code's low-pressure tables are made, in inches of water.
const DESIGN_DROP_INWC: f64 = 0.5;
/// Height above which the code takes input off, in feet.
const DERATED_FT: f64 = 2_000.0;
/// Share of the input that it takes off for each thousand feet, and that some makers' manuals take.
const DERATED_EACH: [f64; 2] = [0.04, 0.02];
/// How near to the plate's input a rate may come to be right (a maker's manual).
const INPUT_BAND: f64 = 0.02;
/// Lock-up against set pressure that is still common.
const LOCKUP_SHARE: f64 = 1.3;
/// Latent heat of propane by its vapour's standard volume, in J/m³ (from memory).
const LATENT_J_M3: f64 = 356e3 * 1.86;
/// Heat through the wall of a full tank of 1 m³, in W/K; see the tank's own page.
const WALL_W_K: f64 = 25.0;

/// Looks at one thing on a bench.
type Look = fn(&Scenario, &Setup, &mut Cross<'_, '_>);

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let setups: Vec<Setup> = (0..TRIED_SEEDS).map(|seed| scenario.draw_sound(seed)).collect();
    let looks: [Look; 6] = [gas, set, lockup, drops, tank, altitude];
    for look in looks {
        // One seed's figures are enough to tell of it.
        let before = cross.reader.problems.len();
        for setup in &setups {
            look(scenario, setup, cross);
            if cross.reader.problems.len() > before {
                break;
            }
        }
    }
}

fn gas(scenario: &Scenario, setup: &Setup, cross: &mut Cross<'_, '_>) {
    let (heat, gravity, from) = match setup.fuel {
        Fuel::Natural => ((950.0, 1_150.0), (0.55, 0.70), t!("usual-common-practice")),
        Fuel::Propane => ((2_400.0, 2_600.0), (1.50, 1.56), t!("problem-from-propane")),
    };
    let fuel = scenario.gas.fuel.label();
    let heating_value = setup.gas.heating_value_j_m3 / J_M3_PER_BTU_FT3;
    if !(heat.0..=heat.1).contains(&heating_value) {
        let message = t!(
            "problem-heating-value",
            fuel = fuel,
            least = heat.0.to_string(),
            most = heat.1.to_string(),
            from = from
        );
        cross.warn("gas.heating_value", message);
    }
    if !(gravity.0..=gravity.1).contains(&setup.gas.specific_gravity) {
        let message = t!(
            "problem-gravity",
            fuel = fuel,
            least = gravity.0.to_string(),
            most = gravity.1.to_string(),
            from = from
        );
        cross.warn("gas.specific_gravity", message);
    }
}

/// The supply regulator against what is usual for the fuel, and against plate or label.
fn set(scenario: &Scenario, setup: &Setup, cross: &mut Cross<'_, '_>) {
    let set_inwc =
        [scenario.supply.set.least(), scenario.supply.set.most()].map(|pa| pa / PA_PER_INWC);
    let (least, most, fuel) = match setup.fuel {
        Fuel::Natural => (5.0, 8.0, "natural"),
        Fuel::Propane => (10.5, 13.0, "propane"),
    };
    if set_inwc[0] < least || set_inwc[1] > most {
        let message = t!(
            "problem-supply-set",
            least = least.to_string(),
            most = most.to_string(),
            fuel = fuel
        );
        cross.warn("supply.set", message);
    }
    let figures = setup.furnace.plate.figures();
    let band = figures.allows(Port::Inlet, Stage::FullLoad, None);
    let band = [band.least_pa, band.most_pa].map(|pa| pa / PA_PER_INWC);
    if figures.fuel == setup.fuel && (set_inwc[0] < band[0] || set_inwc[1] > band[1]) {
        let message = t!(
            "problem-supply-not-for-furnace",
            least = decimal(band[0], 1),
            most = decimal(band[1], 1)
        );
        cross.warn("supply.set", message);
    }
}

fn lockup(_: &Scenario, setup: &Setup, cross: &mut Cross<'_, '_>) {
    let share = setup.supply.lockup_pa / setup.supply.set_pa;
    // Above its own limit it has been told of already.
    if share > LOCKUP_SHARE && setup.supply.lockup_pa <= setup.supply.lockup_max_pa {
        let message = t!("problem-lockup-share", percent = decimal(100.0 * share, 0));
        cross.warn("supply.lockup", message);
    }
}

/// Trunk at the load of all appliances, branch at the furnace's.
fn drops(_: &Scenario, setup: &Setup, cross: &mut Cross<'_, '_>) {
    let furnace_w = setup.furnace.plate.input.top().si();
    let all_w = furnace_w + setup.other_appliances.values().map(|it| it.input_w).sum::<f64>();
    for (path, runs, load_w) in
        [("trunk", &setup.trunk, all_w), ("branch", &setup.branch, furnace_w)]
    {
        let flow_m3_s = load_w / setup.gas.heating_value_j_m3;
        let drop_inwc: f64 =
            runs.iter().map(|run| drop_pa(run, &setup.gas, flow_m3_s) / PA_PER_INWC).sum();
        if drop_inwc > DESIGN_DROP_INWC {
            let message = t!(
                "problem-pipe-drop",
                flow = decimal(flow_m3_s / M3_S_PER_CFH, 0),
                pipe = path,
                drop = decimal(drop_inwc, 2),
                most = decimal(DESIGN_DROP_INWC, 1)
            );
            cross.warn(path, message);
        }
    }
}

/// Pressure that a run loses at a flow, in pascals; never more than a psi or so.
fn drop_pa(run: &Run, gas: &Gas, flow_m3_s: f64) -> f64 {
    let smooth = |material, id_m| {
        PipeSpec::new(material, id_m, run.length_m)
            .with(Fitting::Elbow90, run.elbows)
            .with(Fitting::TeeBranch, run.tees)
            .curve(gas, T_STD_K)
    };
    let curve = match run.bore {
        Bore::Steel(id_m) => smooth(PipeMaterial::Steel, id_m),
        Bore::Copper(id_m) => smooth(PipeMaterial::Copper, id_m),
        Bore::Corrugated(ehd) => {
            let tubing = TubingSpec {
                ehd: u16::try_from(ehd).unwrap_or(u16::MAX),
                length_m: run.length_m,
                extra_fittings: run.elbows + run.tees,
            };
            // A size without figures has been told of already.
            let Some(curve) = tubing.curve(gas, T_STD_K) else { return 0.0 };
            curve
        }
    };
    let (mut least, mut most) = (0.0, 1e4);
    for _ in 0..50 {
        let middle = 0.5 * (least + most);
        if curve.flow(middle).0 < flow_m3_s { least = middle } else { most = middle }
    }
    most
}

/// Whether a fault of the tank is put in, so that a tank that gives too little is meant.
fn starved_on_purpose(scenario: &Scenario) -> bool {
    let choices = scenario.faults.iter().flat_map(|it| &it.choices);
    choices.into_iter().any(|it| matches!(it.fault, Fault::NearlyEmptyTank | Fault::ColdTank))
}

/// Whether the tank boils as much as all appliances burn, for as long as they burn.
fn tank(scenario: &Scenario, setup: &Setup, cross: &mut Cross<'_, '_>) {
    if starved_on_purpose(scenario) {
        return;
    }
    let SupplyKind::Tank { level, capacity_m3 } = setup.supply.kind else { return };
    let pressure_pa =
        |liquid_k| Tank::new(capacity_m3, level, liquid_k, setup.ambient_abs_pa).pressure_pa();
    let (mut least, mut most) = (k_from_f(-60.0), setup.outside_k);
    if pressure_pa(most) <= setup.supply.upstream_pa {
        let message = t!("problem-tank-pressure");
        cross.warn("site.outside", message.into());
        return;
    }
    for _ in 0..40 {
        let middle = 0.5 * (least + most);
        if pressure_pa(middle) < setup.supply.upstream_pa { least = middle } else { most = middle }
    }
    let wall_w_k = WALL_W_K * libm::cbrt(capacity_m3 * capacity_m3) * level.sqrt();
    let boils_m3_s = wall_w_k * (setup.outside_k - most) / LATENT_J_M3;
    let load_w = setup.furnace.plate.input.top().si()
        + setup.other_appliances.values().map(|it| it.input_w).sum::<f64>();
    let load_m3_s = load_w / setup.gas.heating_value_j_m3;
    if load_m3_s > boils_m3_s {
        let message = t!(
            "problem-tank-boils",
            burn = decimal(load_m3_s / M3_S_PER_CFH, 0),
            boils = decimal(boils_m3_s / M3_S_PER_CFH, 0)
        );
        cross.warn("supply.source.capacity", message);
    }
}

/// The orifices fitted against the input that the code allows at the height.
fn altitude(scenario: &Scenario, setup: &Setup, cross: &mut Cross<'_, '_>) {
    let height_ft = scenario.site.altitude.most() / M_PER_FT;
    if height_ft <= DERATED_FT {
        return;
    }
    let [code, makers] = DERATED_EACH.map(|each| 1.0 - each * height_ft / 1_000.0);
    let fitted: f64 = setup.furnace.orifices_m.iter().map(|d| d * d).sum();
    let plate_m = setup.furnace.plate.figures().orifice_m;
    let count = f64::from(u32::try_from(setup.furnace.orifices_m.len()).unwrap_or(1));
    let given = fitted / (count * plate_m * plate_m) * (setup.ambient_abs_pa / P_STD_PA).sqrt();
    if given > makers + INPUT_BAND {
        let message = t!(
            "problem-altitude",
            height = decimal(height_ft, 0),
            given = decimal(100.0 * given, 0),
            code = decimal(100.0 * code, 0),
            makers = decimal(100.0 * makers, 0)
        );
        cross.warn("site.altitude", message);
    }
}
