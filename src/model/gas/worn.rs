//! What is worn, blocked or wet on the gas side: elements that a sound bench does not have.

use super::side::Later;
use super::sizes::{BODY_M3, MAIN_BORE_M, SHARP_CD, ball};
use super::wear::{Air, Gate, Relief, Sag, Swing, Torn, Wear};
use crate::physics::network::{ElementId, NetworkBuilder, NodeId};
use crate::physics::orifice::{OpeningLaw, area_for_flow_m2, hole_area_m2, series_area};
use crate::physics::regulator::Bonnet;
use crate::setup::Setup;
use crate::site::tank::vapour_abs_pa;
use crate::units::{M_PER_IN, T_STD_K};

/// Volume of the supply regulator's bonnet, in m³ (our own regulator).
const BONNET_M3: f64 = 1.5e-4;
/// Time constant in which its bonnet breathes through a free vent, in seconds (from memory).
const BREATHES_S: f64 = 0.05;
/// Bore of its vent, in metres (our own regulator).
const VENT_M: f64 = 5.0e-3;
/// Pressure at which its relief opens, against its set pressure.
const RELIEF_AT: f64 = 1.7;
/// Area of that relief, fully open, in m².
const RELIEF_M2: f64 = 3.0e-6;
/// Area of the opening before the regulators, in m².
const GATE_M2: f64 = 6.0e-6;
/// Bore of the connector behind the furnace, in metres (1/2 in. tubing).
const CONNECTOR_M: f64 = 0.5 * M_PER_IN;

/// The opening before the regulators, where an excess-flow valve or ice can shut it.
pub(super) fn gate(
    b: &mut NetworkBuilder,
    setup: &Setup,
    from: NodeId,
    start_pa: f64,
    wear: &mut Wear,
) -> NodeId {
    let worn = &setup.condition.supply;
    if worn.excess_flow_m3_s.is_none() && worn.ices_up_s.is_none() {
        return from;
    }
    let to = b.node(BODY_M3, T_STD_K, start_pa);
    // Before the regulators the gas is dense behind a tank, and thin behind a low-pressure main.
    let open_m2 = GATE_M2.max(2.0 * supply_area(setup, setup.supply.capacity_m3_s));
    wear.gate = Some(Gate {
        element: b.opening(from, to, open_m2),
        ends: [from, to],
        open_m2,
        shuts_at: worn.excess_flow_m3_s,
        shut: false,
        ices_up: worn.ices_up_s.map(|time_s| (setup.supply.droop_flow_m3_s, time_s)),
        ice: 0.0,
    });
    to
}

/// Pressure that the supply regulator is laid out for, in pascals.
pub(super) fn design_pa(setup: &Setup) -> f64 {
    match setup.condition.supply.single_stage_set_k {
        Some(set_k) => vapour_abs_pa(set_k) - setup.ambient_abs_pa,
        None => setup.supply.upstream_pa,
    }
}

/// Pressure behind the supply regulator before all comes to rest: what is trapped there stays.
pub(super) fn start_pa(setup: &Setup) -> f64 {
    let worn = &setup.condition.supply;
    match (worn.upstream_pa, worn.single_stage_set_k) {
        (_, Some(_)) => 0.0,
        (Some(upstream_pa), None) => setup.supply.lockup_pa.min(upstream_pa),
        (None, None) => setup.supply.lockup_pa,
    }
}

/// Effective area that passes a flow from the pressure before the supply regulator to its own.
pub(super) fn supply_area(setup: &Setup, flow_m3_s: f64) -> f64 {
    let law = OpeningLaw::new(&setup.gas, T_STD_K);
    area_for_flow_m2(&law, flow_m3_s, design_pa(setup), setup.supply.set_pa, setup.ambient_abs_pa)
}

/// What sets in once everything has come to rest.
pub(super) fn later(setup: &Setup) -> Later {
    let worn = &setup.condition.supply;
    let seat_leak_m2 =
        if worn.lets_by_m3_s > 0.0 { supply_area(setup, worn.lets_by_m3_s) } else { 0.0 };
    let bonnet = (worn.vent_blocked > 0.0).then(|| Bonnet {
        volume_m3: BONNET_M3,
        air_abs_pa: setup.ambient_abs_pa,
        breathes_s: BREATHES_S / (1.0 - worn.vent_blocked).max(0.0),
    });
    Later { seat_leak_m2, bonnet }
}

/// What goes wrong at the supply regulator: relief and torn diaphragm.
pub(super) fn supply_faults(
    b: &mut NetworkBuilder,
    setup: &Setup,
    (supply, air, regulator): (NodeId, NodeId, ElementId),
    wear: &mut Wear,
) {
    let worn = &setup.condition.supply;
    if worn.lets_by_m3_s > 0.0 || worn.vent_blocked > 0.0 {
        wear.relief = Some(Relief {
            element: b.opening(supply, air, 0.0),
            node: supply,
            opens_pa: RELIEF_AT * setup.supply.set_pa,
            full_m2: RELIEF_M2,
            area_m2: 0.0,
        });
    }
    if worn.diaphragm_hole_m > 0.0 {
        let hole = hole_area_m2(SHARP_CD, worn.diaphragm_hole_m);
        let vent = hole_area_m2(SHARP_CD, VENT_M) * (1.0 - worn.vent_blocked).max(0.0);
        let share = hole * hole / (hole * hole + vent * vent);
        let element = b.opening(supply, air, series_area(&[hole, vent]));
        wear.torn = Some(Torn { element, regulator, node: supply, share });
    }
}

/// A kink in the connector and water in a sag: one opening at the branch's end.
pub(super) fn line_faults(
    b: &mut NetworkBuilder,
    setup: &Setup,
    end: NodeId,
    (start_pa, air): (f64, NodeId),
    wear: &mut Wear,
) -> NodeId {
    let worn = &setup.condition.line;
    let mut at = end;
    if worn.connector_crack_m > 0.0 {
        let crack = hole_area_m2(SHARP_CD, worn.connector_crack_m);
        wear.crack = Some(b.opening(end, air, crack));
    }
    if worn.connector_kinked > 0.0 {
        let free = hole_area_m2(SHARP_CD, CONNECTOR_M) * (1.0 - worn.connector_kinked).max(0.0);
        at = b.node(BODY_M3, T_STD_K, start_pa);
        b.opening(end, at, free);
    }
    if worn.water_pa > 0.0 {
        let from = at;
        at = b.node(BODY_M3, T_STD_K, start_pa);
        let open_m2 = ball(MAIN_BORE_M).full_cd_area_m2;
        let law = OpeningLaw::new(&setup.gas, T_STD_K);
        let rated_m3_s = setup.furnace.plate.input.top().si() / setup.gas.heating_value_j_m3;
        let least_m2 = area_for_flow_m2(&law, rated_m3_s, worn.water_pa, 0.0, setup.ambient_abs_pa);
        wear.sag = Some(Sag {
            element: b.opening(from, at, open_m2),
            ends: [from, at],
            open_m2,
            least_m2,
            head_pa: worn.water_pa,
            water: 1.0,
            thrown: false,
        });
    }
    at
}

/// What the shut seats of the gas valve let by, as an area.
pub(super) fn seats_leak_m2(setup: &Setup) -> f64 {
    let law = OpeningLaw::new(&setup.gas, T_STD_K);
    let lets_by = setup.condition.valve.lets_by_m3_s;
    let inlet_pa = setup.furnace.plate.figures().inlet_min_pa;
    if lets_by <= 0.0 {
        return 0.0;
    }
    area_for_flow_m2(&law, lets_by, inlet_pa, 0.0, setup.ambient_abs_pa)
}

/// What goes wrong at the gas valve and with what comes to it: a worn guide, air in the line.
pub(super) fn valve_faults(setup: &Setup, burners: ElementId, wear: &mut Wear) {
    let worn = &setup.condition;
    if worn.valve.swing_pa > 0.0 {
        let rated_m3_s = setup.furnace.plate.input.top().si() / setup.gas.heating_value_j_m3;
        let most_pa = worn.valve.swing_pa;
        wear.swing = Some(Swing { burners, rated_m3_s, most_pa, at: 0.05, speed: 0.0 });
    }
    if worn.line.air_m3 > 0.0 {
        let first_m3 = worn.line.air_m3;
        wear.air = Some(Air { first_m3, left_m3: first_m3 });
    }
}
