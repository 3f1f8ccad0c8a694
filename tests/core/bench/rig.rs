//! Two healthy rigs: an 80,000 Btu/h two-stage furnace beside 100,000 Btu/h of other appliances.

use enum_map::EnumMap;
use quarterturn::appliance::plate::{Fuel, GasFigures, Plate, Target};
use quarterturn::parts::{Fitted, Levels, OnOff, OtherAppliance};
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

fn figures(fuel: Fuel, inlet: (f64, f64), low: f64, high: f64, orifice_m: f64) -> GasFigures {
    GasFigures {
        fuel,
        inlet_min_pa: inwc(inlet.0),
        inlet_max_pa: inwc(inlet.1),
        manifold: Levels::two(low, high)
            .map(|_, &value| Target { pa: inwc(value), tolerance_pa: inwc(0.3) }),
        orifice_m,
        orifice_stamp: format!("{:.0}", orifice_m * 1e5),
        decimals: 1,
    }
}

/// The healthy rig on natural gas or on propane.
pub fn healthy(fuel: Fuel) -> Setup {
    let natural = fuel == Fuel::Natural;
    let gas = if natural { Gas::natural() } else { Gas::propane() };
    let (low, high) = if natural { (1.7, 3.5) } else { (4.9, 10.0) };
    let cd = 0.87;
    let input = 80_000.0 * W_PER_BTU_H;
    let orifice_m = orifice_for(&gas, input / 4.0, inwc(high), cd);
    let inlet = if natural { (5.0, 10.5) } else { (11.0, 14.0) };
    let figures = figures(fuel, inlet, low, high, orifice_m);
    let rated = input / gas.heating_value_j_m3;
    let total = 2.25 * rated;
    let trunk = if natural { steel(1.049, 58.0, 5, 0) } else { steel(0.824, 46.0, 5, 0) };
    let branch = if natural {
        vec![steel(0.622, 4.0, 0, 1), steel(0.622, 4.5, 2, 0)]
    } else {
        vec![steel(0.622, 14.0, 0, 1), steel(0.622, 15.0, 2, 0)]
    };
    let per_turn = if natural { (0.3, 0.35) } else { (0.7, 1.0) };
    let (set, lockup, droop) = if natural { (7.0, 7.6, 0.35) } else { (12.0, 13.1, 0.5) };
    let spring = |pa_per_turn: f64, pa: f64| SpringSetup {
        pa_per_turn: inwc(pa_per_turn),
        turns: 14.0,
        found_turns: pa / pa_per_turn,
    };
    Setup {
        gas,
        fuel,
        ambient_abs_pa: P_STD_PA,
        outside_k: k_from_f(20.0),
        supply: SupplySetup {
            upstream_pa: if natural { 2.0 * PA_PER_PSI } else { 10.0 * PA_PER_PSI },
            set_pa: inwc(set),
            lockup_pa: inwc(lockup),
            droop_pa: inwc(droop),
            droop_flow_m3_s: total,
            capacity_m3_s: 3.0 * total,
            pa_per_turn: inwc(if natural { 0.7 } else { 0.9 }),
            kind: if natural {
                SupplyKind::Meter { dial_m3: 0.5 * M3_PER_FT3 }
            } else {
                SupplyKind::Tank { level: 0.6, capacity_m3: 1.9 }
            },
            delivery_limits_pa: if natural {
                (inwc(6.0), inwc(9.0))
            } else {
                (inwc(11.0), inwc(13.0))
            },
            lockup_max_pa: if natural { inwc(10.0) } else { inwc(14.0) },
        },
        trunk: vec![trunk],
        branch,
        other_appliances: EnumMap::from_fn(|it| appliance(it, natural)),
        furnace: FurnaceSetup {
            plate: Plate {
                model: "QT 80-2".into(),
                made_for: figures,
                converted_to: None,
                input: Levels::two(HeatRate(0.7 * input), HeatRate(input)),
                rise: (TemperatureStep(40.0 / 1.8), TemperatureStep(70.0 / 1.8)),
                valve_max: Pressure(inwc(14.0)),
            },
            orifices_m: vec![orifice_m; 4],
            orifice_cd: cd,
            orifice_stamp: format!("{:.0}", orifice_m * 1e5),
            springs_for: fuel,
            valve: ValveSetup {
                loss_pa: inwc(if natural { 0.9 } else { 0.6 }),
                loss_flow_m3_s: rated,
                springs: Levels::two(spring(per_turn.0, low), spring(per_turn.1, high)),
                stacking: Stacking::Independent,
                settle_s: 3.0,
            },
            low_gas_switch: !natural,
            box_suction_pa: 5.0,
            igniter_warm_up_s: 17.0,
            auto_next_min: None,
        },
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
            settle_s: 8.0,
        },
    }
}

fn appliance(appliance: OtherAppliance, natural: bool) -> OtherApplianceSetup {
    let btu_h = match appliance {
        OtherAppliance::WaterHeater => 40_000.0,
        OtherAppliance::Range => 60_000.0,
    };
    OtherApplianceSetup {
        line: vec![steel(0.622, 8.0, 1, 0)],
        input_w: btu_h * W_PER_BTU_H,
        manifold_pa: if natural { inwc(4.0) } else { inwc(10.0) },
    }
}

/// Diameter of an orifice that gives an input at a pressure, by Q = Cd·A·√(2ΔP/ρ).
pub fn orifice_for(gas: &Gas, input_w: f64, pa: f64, cd: f64) -> f64 {
    let flow = input_w / gas.heating_value_j_m3;
    let speed = (2.0 * pa / gas.density_std_kg_m3()).sqrt();
    (4.0 * flow / (cd * std::f64::consts::PI * speed)).sqrt()
}
