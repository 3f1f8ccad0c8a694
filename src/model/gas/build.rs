//! From a setup to a network.

use super::side::{Elements, GasSide, Nodes};
use super::sizes::{BODY_M3, HOSE_END_M2, HOSE_M3, LIFTS_AGAINST, MAIN_BORE_M, SHARP_CD, ball};
use super::valve::{StageFlow, StageSprings, plain_spec};
use super::wear::Wear;
use super::worn::{
    design_pa, gate, later, line_faults, seats_leak_m2, start_pa, supply_area, supply_faults,
    valve_faults,
};
use crate::parts::{OtherAppliance, Port};
use crate::physics::network::{ElementId, Network, NetworkBuilder, NodeId};
use crate::physics::orifice::{OpeningLaw, area_for_flow_m2, hole_area_m2};
use crate::physics::pipe::{Fitting, PipeMaterial, PipeSpec, TubingSpec};
use crate::physics::regulator::{Behaviour, RegulatorSpec};
use crate::setup::{
    Bore, HoseState, PortCondition, Run, SeatState, Setup, SupplyKind, SupplySetup,
};
use crate::site::tank::Tank;
use crate::units::{M_PER_IN, PA_PER_INWC, PA_PER_PSI, T_STD_K};
use enum_map::{EnumMap, enum_map};

/// Volume of the gas valve's regulator chamber, in m³.
const CHAMBER_M3: f64 = 2.0e-5;
/// Volume of the manifold, in m³.
const MANIFOLD_M3: f64 = 3.0e-4;
/// Volume between supply regulator and shut-off, in m³.
const SUPPLY_M3: f64 = 5.0e-4;
/// Volume of the line between the regulators of a propane supply, in m³.
const BETWEEN_M3: f64 = 4.0e-3;
/// Bore of the valve of another appliance, in metres.
const APPLIANCE_BORE_M: f64 = 0.622 * M_PER_IN;
/// Discharge coefficient of another appliance's burner orifice (common practice).
const APPLIANCE_CD: f64 = 0.85;
/// Outlet pressure of a first-stage regulator, in psi (UL 144: nominal 10).
const FIRST_STAGE_PSI: f64 = 10.0;

impl GasSide {
    /// Builds the network as found.
    pub(crate) fn new(setup: &Setup) -> Self {
        gas_side(setup)
    }
}

fn gas_side(setup: &Setup) -> GasSide {
    let mut b = NetworkBuilder::new(setup.gas, setup.ambient_abs_pa);
    let mut wear = Wear::default();
    let air = b.fixed(0.0);
    let burner_box = b.fixed(0.0);
    let line = line(&mut b, setup, air, &mut wear);
    let other_appliances = EnumMap::from_fn(|it| appliance(&mut b, line.tee, air, setup, it));
    let valve = valve(&mut b, setup, line.inlet, burner_box);
    let behind = enum_map! { Port::Inlet => line.inlet, Port::Manifold => valve.manifold };
    let ports = ports(&mut b, behind, air);
    supply_faults(&mut b, setup, (line.supply, air, line.supply_regulator), &mut wear);
    valve_faults(setup, valve.burners, &mut wear);
    let [source_end, branch_end, line_end] = line.marks;
    let marks = [source_end, branch_end, line_end, b.node_count()];
    let mut network = b.build();
    open_wide(&mut network, line.supply_regulator, setup);
    GasSide {
        network,
        nodes: Nodes {
            upstream: line.upstream,
            supply: line.supply,
            tee: line.tee,
            inlet: line.inlet,
            manifold: valve.manifold,
            hose: ports.hose,
            burner_box,
        },
        elements: Elements {
            supply_regulator: line.supply_regulator,
            supply_hand_valve: line.supply_hand_valve,
            furnace_hand_valve: line.furnace_hand_valve,
            seats: valve.seats,
            valve_regulator: valve.regulator,
            burners: valve.burners,
            other_appliances: other_appliances.map(|_, (element, _)| element),
            port_to_air: ports.to_air,
            port_to_hose: ports.to_hose,
            hose_to_air: ports.hose_to_air,
        },
        springs: valve.springs,
        supply_pa_per_turn: setup.supply.pa_per_turn,
        supply_turns_found: line.supply_turns,
        supply_set_found_pa: setup.supply.set_pa,
        supply_turned: 0.0,
        furnace_hand_valve: ball(MAIN_BORE_M),
        supply_hand_valve: ball(MAIN_BORE_M),
        appliance_hand_valve: ball(APPLIANCE_BORE_M),
        appliance_orifice_m2: other_appliances.map(|_, (_, area)| area),
        seats_open_m2: valve.seats_open_m2,
        seats_leak_m2: seats_leak_m2(setup),
        closes_s: setup.condition.valve.closes_s,
        lifts_against_pa: LIFTS_AGAINST * setup.furnace.plate.valve_max.si(),
        box_share: box_share(setup),
        cap_share: 1.0,
        taps_m2: setup.condition.ports.map(|_, port| free_area_m2(port)),
        hose_hole_m2: hole_area_m2(SHARP_CD, setup.condition.meter.hose_hole_m),
        hose_open_m2: 0.0,
        wear,
        marks,
        later: later(setup),
        tank: line.tank,
        tank_pa_per_s: 0.0,
        dial_turns: 0.0,
        dial_m3: dial_m3(setup),
        worst_imbalance: 0.0,
    }
}

/// The line from the source to the gas valve's inlet, as built.
struct LineParts {
    upstream: NodeId,
    tank: Option<Tank>,
    supply: NodeId,
    supply_regulator: ElementId,
    /// Turns of the supply regulator's screw.
    supply_turns: f64,
    supply_hand_valve: ElementId,
    tee: NodeId,
    furnace_hand_valve: ElementId,
    inlet: NodeId,
    /// Nodes so far behind the source, the branch and the faults of the line.
    marks: [u16; 3],
}

/// Builds the line from the source to the gas valve's inlet.
fn line(b: &mut NetworkBuilder, setup: &Setup, air: NodeId, wear: &mut Wear) -> LineParts {
    let (upstream, first, tank) = supply_source(b, setup, wear);
    let source_end = b.node_count();
    let start_pa = start_pa(setup);
    let supply = b.node(SUPPLY_M3, T_STD_K, start_pa);
    let spec = supply_regulator(&setup.supply, setup);
    let supply_regulator = b.regulator(first, supply, spec);
    let trunk_start = b.node(BODY_M3, T_STD_K, start_pa);
    let supply_hand_valve = b.opening(supply, trunk_start, ball(MAIN_BORE_M).full_cd_area_m2);
    let tee = runs(b, trunk_start, &setup.trunk, start_pa);
    let (end, furnace_hand_valve) = branch(b, tee, &setup.branch, start_pa);
    let branch_end = b.node_count();
    let inlet = line_faults(b, setup, end, (start_pa, air), wear);
    LineParts {
        upstream,
        tank,
        supply,
        supply_regulator,
        supply_turns: spec.turns,
        supply_hand_valve,
        tee,
        furnace_hand_valve,
        inlet,
        marks: [source_end, branch_end, b.node_count()],
    }
}

/// The ports with the hose that goes onto one of them, as built.
struct PortParts {
    hose: NodeId,
    to_air: EnumMap<Port, ElementId>,
    to_hose: EnumMap<Port, ElementId>,
    hose_to_air: ElementId,
}

/// What each port opens to: the air, and the hose.
fn ports(b: &mut NetworkBuilder, behind: EnumMap<Port, NodeId>, air: NodeId) -> PortParts {
    let hose = b.node(HOSE_M3, T_STD_K, 0.0);
    PortParts {
        hose,
        to_air: behind.map(|_, node| b.opening(node, air, 0.0)),
        to_hose: behind.map(|_, node| b.opening(node, hose, 0.0)),
        hose_to_air: b.opening(hose, air, HOSE_END_M2),
    }
}

/// A supply regulator whose seat does not move stands wide open.
fn open_wide(network: &mut Network, supply_regulator: ElementId, setup: &Setup) {
    if setup.condition.supply.seat == SeatState::WideOpen
        && let Some(regulator) = network.regulator_mut(supply_regulator)
    {
        regulator.set_leak_cd_area_m2(supply_area(setup, setup.supply.capacity_m3_s));
    }
}

/// Share of the burner box's pressure that its hose brings to the gas valve's bonnet.
fn box_share(setup: &Setup) -> f64 {
    match setup.condition.valve.box_hose {
        HoseState::On => 1.0,
        HoseState::Off => 0.0,
    }
}

/// Free area of a port's tapped hole, in m², where it is not free.
fn free_area_m2(port: PortCondition) -> Option<f64> {
    port.tap_free_m.map(|free_m| hole_area_m2(SHARP_CD, free_m))
}

/// Gas of one turn of the meter's dial, in m³; 0 without a meter.
fn dial_m3(setup: &Setup) -> f64 {
    match setup.supply.kind {
        SupplyKind::Tank { .. } => 0.0,
        SupplyKind::Meter { dial_m3 } => dial_m3,
    }
}

/// Main or tank: the boundary, the node that the supply regulator draws from, and the tank.
fn supply_source(
    b: &mut NetworkBuilder,
    setup: &Setup,
    wear: &mut Wear,
) -> (NodeId, NodeId, Option<Tank>) {
    let worn = &setup.condition.supply;
    let line_pa = worn.upstream_pa.unwrap_or(setup.supply.upstream_pa);
    match setup.supply.kind {
        SupplyKind::Meter { .. } => {
            let main = b.fixed(line_pa);
            (main, gate(b, setup, main, line_pa, wear), None)
        }
        SupplyKind::Tank { level, capacity_m3 } => {
            let liquid_k = worn.liquid_k.unwrap_or(setup.outside_k);
            let tank = Tank::new(capacity_m3, level, liquid_k, setup.ambient_abs_pa);
            let vapour = b.fixed(tank.pressure_pa());
            let start = gate(b, setup, vapour, tank.pressure_pa(), wear);
            if worn.single_stage_set_k.is_some() {
                return (vapour, start, Some(tank));
            }
            let wanted = Behaviour::new(
                line_pa,
                line_pa * 1.1,
                line_pa * 0.1,
                line_pa + 6.0 * FIRST_STAGE_PSI * PA_PER_PSI,
                2.0 * setup.supply.capacity_m3_s,
            );
            let spec =
                RegulatorSpec::from_behaviour(&wanted, &setup.gas, setup.ambient_abs_pa).ok();
            match spec {
                Some(spec) => {
                    let start_pa = line_pa.min(tank.pressure_pa());
                    let between = b.node(BETWEEN_M3, T_STD_K, start_pa);
                    b.regulator(start, between, spec);
                    (vapour, between, Some(tank))
                }
                None => {
                    let line = b.fixed(line_pa);
                    (vapour, line, Some(tank))
                }
            }
        }
    }
}

/// The supply regulator's parts from its behaviour; where no parts fit the numbers exactly, the
/// nearest lock-up and capacity that do.
fn supply_regulator(supply: &SupplySetup, setup: &Setup) -> RegulatorSpec {
    let mut wanted = Behaviour::new(
        supply.set_pa,
        supply.lockup_pa,
        supply.droop_pa,
        design_pa(setup),
        supply.droop_flow_m3_s,
    );
    wanted.pa_per_turn = supply.pa_per_turn;
    // Seat against diaphragm as in a usual second-stage regulator (textbook geometry, from memory).
    wanted.seat_area_m2 = 0.0025 * wanted.diaphragm_area_m2;
    // Its screw goes on for some turns beyond what its owner allows, however soft the spring.
    let most_pa = supply.set_pa.max(supply.delivery_limits_pa.1);
    wanted.bind_turns = most_pa / supply.pa_per_turn + 6.0;
    wanted.max_turns = wanted.bind_turns + 1.0;
    let law = OpeningLaw::new(&setup.gas, T_STD_K);
    let open = area_for_flow_m2(
        &law,
        supply.capacity_m3_s,
        design_pa(setup),
        supply.set_pa - supply.droop_pa,
        setup.ambient_abs_pa,
    );
    for _ in 0..40 {
        if let Ok(mut spec) =
            RegulatorSpec::from_behaviour(&wanted, &setup.gas, setup.ambient_abs_pa)
        {
            let stop = spec.seat.lift_for_area(open);
            let rated = spec.seat.lift_for_area(area_for_flow_m2(
                &law,
                supply.droop_flow_m3_s,
                design_pa(setup),
                supply.set_pa - supply.droop_pa,
                setup.ambient_abs_pa,
            ));
            spec.seat.max_lift_m = stop.max(0.2 * rated);
            return spec;
        }
        wanted.lockup_pa += 0.02 * supply.set_pa;
        wanted.wide_open_drop_pa *= 0.9;
    }
    plain_spec(&wanted)
}

/// Lines in series from `from`; returns their end.
fn runs(b: &mut NetworkBuilder, from: NodeId, runs: &[Run], start_pa: f64) -> NodeId {
    let mut at = from;
    for run in runs {
        let next = b.node(volume(run) + BODY_M3, T_STD_K, start_pa);
        add_run(b, at, next, run);
        at = next;
    }
    at
}

fn add_run(b: &mut NetworkBuilder, from: NodeId, to: NodeId, run: &Run) -> ElementId {
    let pipe = |material, id_m| {
        PipeSpec::new(material, id_m, run.length_m)
            .with(Fitting::Elbow90, run.elbows)
            .with(Fitting::TeeBranch, run.tees)
    };
    match run.bore {
        Bore::Steel(id_m) => b.pipe(from, to, &pipe(PipeMaterial::Steel, id_m)),
        Bore::Copper(id_m) => b.pipe(from, to, &pipe(PipeMaterial::Copper, id_m)),
        Bore::Corrugated(ehd) => b.tubing(
            from,
            to,
            &TubingSpec {
                ehd: u16::try_from(ehd).unwrap_or(u16::MAX),
                length_m: run.length_m,
                extra_fittings: run.elbows + run.tees,
            },
        ),
    }
}

fn volume(run: &Run) -> f64 {
    let id_m = match run.bore {
        Bore::Steel(id_m) | Bore::Copper(id_m) => id_m,
        // An EHD number is about the inside diameter in 1/40 in. (common practice).
        Bore::Corrugated(ehd) => f64::from(ehd) * M_PER_IN / 40.0,
    };
    core::f64::consts::FRAC_PI_4 * id_m * id_m * run.length_m
}

/// The furnace's branch: its first run, the manual valve, the rest.
fn branch(b: &mut NetworkBuilder, tee: NodeId, list: &[Run], start_pa: f64) -> (NodeId, ElementId) {
    let (before, after) = list.split_at(list.len().min(1));
    let at_hand_valve = runs(b, tee, before, start_pa);
    let past_hand_valve = b.node(BODY_M3, T_STD_K, start_pa);
    let hand_valve = b.opening(at_hand_valve, past_hand_valve, ball(MAIN_BORE_M).full_cd_area_m2);
    (runs(b, past_hand_valve, after, start_pa), hand_valve)
}

/// Another appliance: line, regulator, burner. Returns the burner's element and its orifice area.
fn appliance(
    b: &mut NetworkBuilder,
    tee: NodeId,
    air: NodeId,
    setup: &Setup,
    it: OtherAppliance,
) -> (ElementId, f64) {
    let it = &setup.other_appliances[it];
    let start_pa = start_pa(setup);
    let end = runs(b, tee, &it.line, start_pa);
    let manifold = b.node(BODY_M3, T_STD_K, it.manifold_pa);
    let flow = it.input_w / setup.gas.heating_value_j_m3;
    let law = OpeningLaw::new(&setup.gas, T_STD_K);
    let orifice = area_for_flow_m2(&law, flow, it.manifold_pa, 0.0, setup.ambient_abs_pa);
    let lockup = it.manifold_pa * 1.1;
    let wanted = Behaviour {
        wide_open_drop_pa: 0.6 * PA_PER_INWC,
        ..Behaviour::new(
            it.manifold_pa,
            lockup,
            0.02 * it.manifold_pa,
            lockup + 2.0 * PA_PER_INWC,
            flow,
        )
    };
    let spec = RegulatorSpec::from_behaviour(&wanted, &setup.gas, setup.ambient_abs_pa)
        .unwrap_or_else(|_| plain_spec(&wanted));
    b.regulator(end, manifold, spec);
    let diameter_m = (orifice / APPLIANCE_CD / core::f64::consts::FRAC_PI_4).sqrt();
    let area = hole_area_m2(APPLIANCE_CD, diameter_m);
    (b.opening(manifold, air, 0.0), area)
}

/// The gas valve with the burners behind it, as built.
struct ValveParts {
    seats: ElementId,
    regulator: ElementId,
    burners: ElementId,
    manifold: NodeId,
    springs: StageSprings,
    seats_open_m2: f64,
}

/// The gas valve and the burners.
fn valve(b: &mut NetworkBuilder, setup: &Setup, inlet: NodeId, burner_box: NodeId) -> ValveParts {
    let furnace = &setup.furnace;
    let orifices_m2: f64 =
        furnace.orifices_m.iter().map(|&d| hole_area_m2(furnace.orifice_cd, d)).sum();
    let law = OpeningLaw::new(&setup.gas, T_STD_K);
    let flow_at =
        |pa: f64| law.flow(pa, pa + setup.ambient_abs_pa, setup.ambient_abs_pa).flow * orifices_m2;
    let figures = furnace.plate.figures();
    let stage = |pa: f64| StageFlow { pa, flow_m3_s: flow_at(pa) };
    let springs = StageSprings::new(
        &furnace.valve,
        figures.manifold.map(|_, target| stage(target.pa)),
        &setup.gas,
        setup.ambient_abs_pa,
    );
    let half_loss = 0.5 * furnace.valve.loss_pa.max(1.0);
    let clean_m2 = area_for_flow_m2(
        &law,
        furnace.valve.loss_flow_m3_s,
        figures.manifold.top().pa + 2.0 * half_loss,
        figures.manifold.top().pa + half_loss,
        setup.ambient_abs_pa,
    );
    let seats_open_m2 = clean_m2 * (1.0 - setup.condition.valve.screen_blocked);
    let mid = b.node(CHAMBER_M3, T_STD_K, 0.0);
    let manifold = b.node(MANIFOLD_M3, T_STD_K, 0.0);
    let seats = b.opening(inlet, mid, 0.0);
    let regulator = b.regulator(mid, manifold, springs.spec());
    let burners = b.opening(manifold, burner_box, orifices_m2);
    ValveParts { seats, regulator, burners, manifold, springs, seats_open_m2 }
}
