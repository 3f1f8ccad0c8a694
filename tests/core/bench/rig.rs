//! Two healthy rigs: an 80,000 Btu/h two-stage furnace beside 100,000 Btu/h of other appliances.

use enum_map::EnumMap;
use quarterturn::appliance::plate::{Fuel, GasFigures, Plate, Target};
use quarterturn::parts::{Fitted, Levels, OnOff, OtherAppliance, Scene};
use quarterturn::physics::fluid::Gas;
use quarterturn::physics::valve::HandleAngle;
use quarterturn::setup::*;
use quarterturn::units::*;

fn steel(inches: f64, feet: f64, elbows: u32, tees: u32) -> Run {
    Run { bore: Bore::Steel(inches * M_PER_IN), length_m: feet * M_PER_FT, elbows, tees }
}

fn inwc(value: f64) -> f64 {
    value * PA_PER_INWC
}

/// What differs between the two rigs; pressures in in. w.c.
struct OnFuel {
    gas: Gas,
    trunk: Run,
    branch: Vec<Run>,
    /// Ahead of the supply regulator, in pascals.
    upstream_pa: f64,
    kind: SupplyKind,
    set: f64,
    lockup: f64,
    lockup_most: f64,
    droop: f64,
    delivery: (f64, f64),
    supply_per_turn: f64,
    inlet: (f64, f64),
    manifold: Levels<f64>,
    per_turn: Levels<f64>,
    valve_loss: f64,
    other_manifold: f64,
}

fn on(fuel: Fuel) -> OnFuel {
    match fuel {
        Fuel::Natural => OnFuel {
            gas: Gas::natural(),
            trunk: steel(1.049, 58.0, 5, 0),
            branch: vec![steel(0.622, 4.0, 0, 1), steel(0.622, 4.5, 2, 0)],
            upstream_pa: 2.0 * PA_PER_PSI,
            kind: SupplyKind::Meter { dial_m3: 0.5 * M3_PER_FT3 },
            set: 7.0,
            lockup: 7.6,
            lockup_most: 10.0,
            droop: 0.35,
            delivery: (6.0, 9.0),
            supply_per_turn: 0.7,
            inlet: (5.0, 10.5),
            manifold: Levels::two(1.7, 3.5),
            per_turn: Levels::two(0.3, 0.35),
            valve_loss: 0.9,
            other_manifold: 4.0,
        },
        Fuel::Propane => OnFuel {
            gas: Gas::propane(),
            trunk: steel(0.824, 46.0, 5, 0),
            branch: vec![steel(0.622, 14.0, 0, 1), steel(0.622, 15.0, 2, 0)],
            upstream_pa: 10.0 * PA_PER_PSI,
            kind: SupplyKind::Tank { level: 0.6, capacity_m3: 1.9 },
            set: 12.0,
            lockup: 13.1,
            lockup_most: 14.0,
            droop: 0.5,
            delivery: (11.0, 13.0),
            supply_per_turn: 0.9,
            inlet: (11.0, 14.0),
            manifold: Levels::two(4.9, 10.0),
            per_turn: Levels::two(0.7, 1.0),
            valve_loss: 0.6,
            other_manifold: 10.0,
        },
    }
}

const INPUT_W: f64 = 80_000.0 * W_PER_BTU_H;
const ORIFICE_CD: f64 = 0.87;

/// The healthy rig on natural gas or on propane.
pub fn healthy(fuel: Fuel) -> Setup {
    let it = on(fuel);
    Setup {
        gas: it.gas,
        fuel,
        ambient_abs_pa: P_STD_PA,
        outside_k: k_from_f(20.0),
        supply: supply(&it),
        trunk: vec![it.trunk.clone()],
        branch: it.branch.clone(),
        other_appliances: EnumMap::from_fn(|appliance| other(appliance, &it)),
        furnace: furnace(fuel, &it),
        scene: Scene::default(),
        house: HouseSetup {
            inside_k: k_from_f(66.0),
            loss_w_k: 350.0,
            mass_j_k: 2.5e7,
            setpoint_half_f: 140,
            plant_room_m3: 25.0,
            air_changes_h: 0.5,
        },
        meter: MeterSetup {
            range_pa: inwc(28.0),
            zero_error_pa: inwc(-0.35),
            drift_pa: inwc(0.02),
            drift_s: 600.0,
            lag_s: 0.4,
        },
        found: Found {
            manual_valve: HandleAngle::OPEN,
            valve_switch: OnOff::On,
            furnace_switch: OnOff::On,
            thermostat_mode: OnOff::On,
            other_appliances: EnumMap::from_fn(|_| OnOff::Off),
            caps: EnumMap::from_fn(|_| Fitted::On),
            plugs_past_hand: EnumMap::from_fn(|_| 0.75),
        },
        condition: Condition::default(),
        faults: Vec::new(),
        sound: None,
        card: JobCard {
            title: "Healthy rig".into(),
            text: "Check the gas pressures of the furnace.".into(),
            heating_value: StatedHeat::default(),
            supply_owner: "the gas utility".into(),
            supply: SupplyRight::OwnerOnly,
            hold_s: 180.0,
            required: Vec::new(),
            settle_s: 8.0,
        },
    }
}

fn supply(it: &OnFuel) -> SupplySetup {
    let total = 2.25 * (INPUT_W / it.gas.heating_value_j_m3);
    SupplySetup {
        upstream_pa: it.upstream_pa,
        set_pa: inwc(it.set),
        lockup_pa: inwc(it.lockup),
        droop_pa: inwc(it.droop),
        droop_flow_m3_s: total,
        capacity_m3_s: 3.0 * total,
        pa_per_turn: inwc(it.supply_per_turn),
        kind: it.kind.clone(),
        delivery_limits_pa: (inwc(it.delivery.0), inwc(it.delivery.1)),
        lockup_max_pa: inwc(it.lockup_most),
    }
}

fn furnace(fuel: Fuel, it: &OnFuel) -> FurnaceSetup {
    let orifice_m = orifice_for(&it.gas, INPUT_W / 4.0, inwc(*it.manifold.top()), ORIFICE_CD);
    let figures = GasFigures {
        fuel,
        inlet_min_pa: inwc(it.inlet.0),
        inlet_max_pa: inwc(it.inlet.1),
        manifold: it.manifold.map(|_, &value| Target { pa: inwc(value), tolerance_pa: inwc(0.3) }),
        orifice_m,
        orifice_stamp: format!("{:.0}", orifice_m * 1e5),
        decimals: 1,
    };
    let spring = |pa_per_turn: f64, pa: f64| SpringSetup {
        pa_per_turn: inwc(pa_per_turn),
        turns: 14.0,
        found_turns: pa / pa_per_turn,
    };
    FurnaceSetup {
        orifices_m: vec![orifice_m; 4],
        orifice_cd: ORIFICE_CD,
        orifice_stamp: figures.orifice_stamp.clone(),
        plate: Plate {
            model: "QT 80-2".into(),
            made_for: figures,
            converted_to: None,
            input: Levels::two(HeatRate(0.7 * INPUT_W), HeatRate(INPUT_W)),
            rise: (TemperatureStep(40.0 / 1.8), TemperatureStep(70.0 / 1.8)),
            valve_max: Pressure(inwc(14.0)),
        },
        springs_for: fuel,
        valve: ValveSetup {
            loss_pa: inwc(it.valve_loss),
            loss_flow_m3_s: INPUT_W / it.gas.heating_value_j_m3,
            springs: it.manifold.map(|level, &pa| spring(it.per_turn[level], pa)),
            stacking: Stacking::Independent,
            settle_s: 3.0,
        },
        low_gas_switch: fuel == Fuel::Propane,
        box_suction_pa: 5.0,
        igniter_warm_up_s: 17.0,
        auto_next_min: None,
    }
}

fn other(appliance: OtherAppliance, it: &OnFuel) -> OtherApplianceSetup {
    let btu_h = match appliance {
        OtherAppliance::WaterHeater => 40_000.0,
        OtherAppliance::Range => 60_000.0,
    };
    OtherApplianceSetup {
        line: vec![steel(0.622, 8.0, 1, 0)],
        input_w: btu_h * W_PER_BTU_H,
        manifold_pa: inwc(it.other_manifold),
    }
}

/// Diameter of an orifice that gives an input at a pressure, by Q = Cd·A·√(2ΔP/ρ).
pub fn orifice_for(gas: &Gas, input_w: f64, pa: f64, cd: f64) -> f64 {
    let flow = input_w / gas.heating_value_j_m3;
    let speed = (2.0 * pa / gas.density_std_kg_m3()).sqrt();
    (4.0 * flow / (cd * std::f64::consts::PI * speed)).sqrt()
}
