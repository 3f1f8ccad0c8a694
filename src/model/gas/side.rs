//! The gas side as it stands, what is read off it and what is set in it.

use super::sizes::{BARB_BORE_M, HOLE_CD, HOSE_END_M2, PORT_BORE_M};
use super::valve::StageSprings;
use super::wear::Wear;
use enum_map::EnumMap;
use serde::Serialize;

use crate::model::truth::Leaks;
use crate::parts::{Fitted, Level, OtherAppliance, Port, Screw};
use crate::physics::network::{ElementId, Network, NodeId, StepReport};
use crate::physics::orifice::{hole_area_m2, series_area};
use crate::physics::regulator::Bonnet;
use crate::physics::valve::{HandValveLaw, HandleAngle};
use crate::site::tank::Tank;
use crate::units::TICK_S;

/// Share of the burner box's pressure that is left in the bonnet with a stage cap off (our own
/// valve).
const CAP_OFF: f64 = 0.7;
/// Share of their open area from which slow seats count as shut.
const SHUT_SHARE: f64 = 0.002;

/// Nodes that are read or set.
#[derive(Debug, Clone, Copy, Serialize)]
pub(super) struct Nodes {
    pub(super) upstream: NodeId,
    pub(super) supply: NodeId,
    pub(super) tee: NodeId,
    pub(super) inlet: NodeId,
    pub(super) manifold: NodeId,
    pub(super) hose: NodeId,
    pub(super) burner_box: NodeId,
}

/// Elements that are read or set.
#[derive(Debug, Clone, Copy, Serialize)]
pub(super) struct Elements {
    pub(super) supply_regulator: ElementId,
    pub(super) supply_hand_valve: ElementId,
    pub(super) furnace_hand_valve: ElementId,
    pub(super) seats: ElementId,
    pub(super) valve_regulator: ElementId,
    pub(super) burners: ElementId,
    pub(super) other_appliances: EnumMap<OtherAppliance, ElementId>,
    /// Each port, to the air.
    pub(super) port_to_air: EnumMap<Port, ElementId>,
    /// Each port, to the hose.
    pub(super) port_to_hose: EnumMap<Port, ElementId>,
    pub(super) hose_to_air: ElementId,
}

/// What is at a port, for the gas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum PortPath {
    /// Closed but for a leak of this effective area, in m².
    Closed(f64),
    /// Open to the air.
    Open,
    /// Open through the bore of an adapter without a hose.
    Barb,
    /// The hose, with a leak at the barb and beside it of these effective areas, in m².
    Hose {
        /// At the hose's end.
        barb_m2: f64,
        /// Around the adapter's thread in the boss.
        boss_m2: f64,
        /// Past a captive screw that is not loosened; none where nothing but the bore is on the way.
        screw_m2: Option<f64>,
    },
}

/// What sets in at rest: the job begins after a run has just ended.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub(super) struct Later {
    /// What the supply regulator's shut seat lets by, in m².
    pub(super) seat_leak_m2: f64,
    /// The shut-in air of its bonnet.
    pub(super) bonnet: Option<Bonnet>,
}

/// The gas side: supply, house line, gas valve, orifices and hose as one network.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct GasSide {
    pub(super) network: Network,
    pub(super) nodes: Nodes,
    pub(super) elements: Elements,
    pub(super) springs: StageSprings,
    pub(super) supply_pa_per_turn: f64,
    pub(super) supply_turns_found: f64,
    pub(super) supply_set_found_pa: f64,
    pub(super) supply_turned: f64,
    pub(super) furnace_hand_valve: HandValveLaw,
    pub(super) supply_hand_valve: HandValveLaw,
    pub(super) appliance_hand_valve: HandValveLaw,
    pub(super) appliance_orifice_m2: EnumMap<OtherAppliance, f64>,
    pub(super) seats_open_m2: f64,
    pub(super) seats_leak_m2: f64,
    /// Time in which the seats fall shut, in seconds; none where they do so at once.
    pub(super) closes_s: f64,
    pub(super) lifts_against_pa: f64,
    /// Share of the burner box's pressure that the valve's bonnet feels.
    pub(super) box_share: f64,
    pub(super) cap_share: f64,
    /// Free area of the tapped hole at each port, in m², where it is not free.
    pub(super) taps_m2: EnumMap<Port, Option<f64>>,
    pub(super) hose_hole_m2: f64,
    /// Open end at the instrument that the hose goes to, in m².
    pub(super) hose_open_m2: f64,
    pub(super) wear: Wear,
    /// Numbers of the first node behind supply, branch, worn places of the line, and of all nodes,
    /// in the order in which they are built.
    pub(super) marks: [u16; 4],
    /// What sets in once the bench has come to rest.
    pub(super) later: Later,
    pub(super) tank: Option<Tank>,
    /// How far the tank's pressure moves in one second, in pascals: between two slow steps it goes
    /// straight, so that the lines behind it are not knocked five times a second.
    pub(super) tank_pa_per_s: f64,
    pub(super) dial_turns: f64,
    pub(super) dial_m3: f64,
    /// Total of Σ|residual| against throughput, the largest seen.
    pub(super) worst_imbalance: f64,
}

impl GasSide {
    pub(crate) fn pressure_pa(&self, port: Port) -> f64 {
        self.network.pressure_pa(match port {
            Port::Inlet => self.nodes.inlet,
            Port::Manifold => self.nodes.manifold,
        })
    }

    /// Pressure before every regulator, in pascals.
    pub(crate) fn upstream_pa(&self) -> f64 {
        self.network.pressure_pa(self.nodes.upstream)
    }

    pub(crate) fn supply_pa(&self) -> f64 {
        self.network.pressure_pa(self.nodes.supply)
    }

    pub(crate) fn tee_pa(&self) -> f64 {
        self.network.pressure_pa(self.nodes.tee)
    }

    pub(crate) fn hose_pa(&self) -> f64 {
        self.network.pressure_pa(self.nodes.hose)
    }

    pub(crate) fn box_pa(&self) -> f64 {
        self.network.pressure_pa(self.nodes.burner_box)
    }

    pub(crate) fn burner_flow(&self) -> f64 {
        self.network.flow_std_m3_s(self.elements.burners)
    }

    /// Gas, without what air there is before it, to the burners, in standard m³/s.
    pub(crate) fn burner_gas(&self) -> f64 {
        match &self.wear.air {
            Some(air) => self.burner_flow() * air.gas_share(),
            None => self.burner_flow(),
        }
    }

    /// Gas that the supply regulator lets out by itself, in standard m³/s.
    pub(crate) fn vented(&self) -> f64 {
        self.wear.vented(&self.network)
    }

    pub(crate) fn appliance_flow(&self, appliance: OtherAppliance) -> f64 {
        self.network.flow_std_m3_s(self.elements.other_appliances[appliance])
    }

    /// Gas to the air at each port and at the hose's end, in standard m³/s.
    pub(crate) fn leaks(&self) -> Leaks {
        let flow = |element| self.network.flow_std_m3_s(element).max(0.0);
        Leaks {
            ports: self.elements.port_to_air.map(|_, element| flow(element)),
            hose: flow(self.elements.hose_to_air),
        }
    }

    /// Gas out of a crack in the connector, in standard m³/s; none without one.
    pub(crate) fn connector_leak(&self) -> Option<f64> {
        self.wear.cracked(&self.network)
    }

    /// Gas to the air from ports, hose and connector together, in standard m³/s.
    pub(crate) fn escaping(&self) -> f64 {
        let ports = self.leaks().iter().sum::<f64>();
        self.connector_leak().map_or(ports, |connector| ports + connector)
    }

    /// Works the seats of the gas valve and loads its spring: for which level the control opens it,
    /// if for any.
    pub(crate) fn drive_valve(&mut self, seats: Option<Level>) {
        let inlet_pa = self.pressure_pa(Port::Inlet);
        let lifted = self.network.opening_m2(self.elements.seats) > self.seats_leak_m2;
        let open = match seats {
            None => self.closing_m2(),
            Some(_) if lifted || inlet_pa <= self.lifts_against_pa => self.seats_open_m2,
            Some(_) => self.seats_leak_m2,
        };
        self.network.set_opening(self.elements.seats, open);
        if let Some(regulator) = self.network.regulator_mut(self.elements.valve_regulator) {
            self.springs.load(regulator, seats);
        }
    }

    /// Area of the seats on their way shut.
    fn closing_m2(&self) -> f64 {
        if self.closes_s <= 0.0 {
            return self.seats_leak_m2;
        }
        let now = self.network.opening_m2(self.elements.seats);
        let next = now * self.closes_s / (self.closes_s + TICK_S);
        if next > SHUT_SHARE * self.seats_open_m2 { next } else { self.seats_leak_m2 }
    }

    /// Sets the suction of the burner box, in pascals below the room.
    pub(crate) fn set_box_suction(&mut self, suction_pa: f64) {
        self.network.set_pressure_pa(self.nodes.burner_box, -suction_pa);
        if let Some(regulator) = self.network.regulator_mut(self.elements.valve_regulator) {
            let felt_pa = -suction_pa * (self.box_share * self.cap_share);
            let swing_pa = self.wear.swing_pa();
            // Adding nothing would still turn a negative zero into a positive one.
            regulator.set_reference_pa(swing_pa.map_or(felt_pa, |swing_pa| felt_pa + swing_pa));
        }
    }

    /// Says whether the stage caps are on: they shut the valve's bonnet.
    pub(crate) fn set_caps(&mut self, caps: EnumMap<Screw, Fitted>) {
        let levels = self.springs.turns();
        let off = levels.list().iter().any(|level| caps[level.screw()] == Fitted::Off);
        self.cap_share = if off { CAP_OFF } else { 1.0 };
    }

    pub(crate) fn set_furnace_hand_valve(&mut self, handle: HandleAngle) {
        let area = self.furnace_hand_valve.cd_area_m2(f64::from(handle.deg()));
        self.network.set_opening(self.elements.furnace_hand_valve, area);
    }

    pub(crate) fn set_supply_hand_valve(&mut self, handle: HandleAngle) {
        let area = self.supply_hand_valve.cd_area_m2(f64::from(handle.deg()));
        self.network.set_opening(self.elements.supply_hand_valve, area);
    }

    /// Sets how far the valve and burner of another appliance are open.
    pub(crate) fn set_appliance(
        &mut self,
        appliance: OtherAppliance,
        handle: HandleAngle,
        burner_open: bool,
    ) {
        let hand_valve = self.appliance_hand_valve.cd_area_m2(f64::from(handle.deg()));
        let orifice = if burner_open { self.appliance_orifice_m2[appliance] } else { 0.0 };
        self.network.set_opening(
            self.elements.other_appliances[appliance],
            series_area(&[hand_valve, orifice]),
        );
    }

    /// Sets what the gas finds at the ports.
    pub(crate) fn set_ports(&mut self, paths: EnumMap<Port, PortPath>) {
        let mut hose_end = HOSE_END_M2;
        for (port, path) in paths {
            let tap = |area_m2: f64| match self.taps_m2[port] {
                Some(free_m2) => series_area(&[area_m2, free_m2]),
                None => area_m2,
            };
            let (air, hose) = match path {
                PortPath::Closed(leak) => (leak, 0.0),
                PortPath::Open => (tap(hole_area_m2(HOLE_CD, PORT_BORE_M)), 0.0),
                PortPath::Barb => (tap(hole_area_m2(HOLE_CD, BARB_BORE_M)), 0.0),
                PortPath::Hose { barb_m2, boss_m2, screw_m2 } => {
                    hose_end = barb_m2 + self.hose_hole_m2 + self.hose_open_m2;
                    (boss_m2, tap(screw_m2.unwrap_or(hole_area_m2(HOLE_CD, BARB_BORE_M))))
                }
            };
            self.network.set_opening(self.elements.port_to_air[port], air);
            self.network.set_opening(self.elements.port_to_hose[port], hose);
        }
        self.network.set_opening(self.elements.hose_to_air, hose_end);
    }

    /// Sets what stands open at the instrument's end of the hose, in m²; says whether it changed.
    pub(crate) fn set_hose_open_m2(&mut self, open_m2: f64) -> bool {
        let before = core::mem::replace(&mut self.hose_open_m2, open_m2);
        before.to_bits() != open_m2.to_bits()
    }

    /// The springs of the gas valve with their screws.
    pub(crate) fn springs(&self) -> &StageSprings {
        &self.springs
    }

    /// The stage screws, to be turned.
    pub(crate) fn springs_mut(&mut self) -> &mut StageSprings {
        &mut self.springs
    }

    /// Turns the supply regulator's screw; returns whether it came to its stop.
    pub(crate) fn turn_supply(&mut self, turns: f64) -> bool {
        let Some(regulator) = self.network.regulator_mut(self.elements.supply_regulator) else {
            return true;
        };
        let wanted = regulator.turns() + turns;
        regulator.set_turns(wanted);
        let stopped = (regulator.turns() - wanted).abs() > 1e-9;
        self.supply_turned = regulator.turns() - self.supply_turns_found;
        stopped
    }

    /// Turns of the supply screw since the start.
    pub(crate) fn supply_turned(&self) -> f64 {
        self.supply_turned
    }

    /// What the supply regulator is set to, in pascals.
    pub(crate) fn supply_set_pa(&self) -> f64 {
        self.supply_set_found_pa + self.supply_turned * self.supply_pa_per_turn
    }

    /// Liquid level of the tank, as a fraction.
    pub(crate) fn tank(&self) -> Option<&Tank> {
        self.tank.as_ref()
    }

    /// Turns of the meter's test dial since the start; none without a meter.
    pub(crate) fn dial_turns(&self) -> Option<f64> {
        (self.dial_m3 > 0.0).then_some(self.dial_turns)
    }

    pub(crate) fn worst_imbalance(&self) -> f64 {
        self.worst_imbalance
    }

    /// One step of the network.
    pub(crate) fn step(&mut self, dt_s: f64) -> StepReport {
        self.wear.step(dt_s, &mut self.network);
        if self.tank.is_some() {
            let pa = self.network.pressure_pa(self.nodes.upstream) + self.tank_pa_per_s * dt_s;
            self.network.set_pressure_pa(self.nodes.upstream, pa);
        }
        let report = self.network.step(dt_s);
        if self.wear.air.is_some() {
            let out = self.burner_flow().max(0.0) + self.escaping();
            self.wear.air.iter_mut().for_each(|air| air.pass(out * dt_s));
        }
        self.worst_imbalance = self.worst_imbalance.max(report.imbalance);
        if self.dial_m3 > 0.0 {
            let flow = self.network.flow_std_m3_s(self.elements.supply_hand_valve);
            self.dial_turns += flow.max(0.0) * dt_s / self.dial_m3;
        }
        report
    }

    /// What changes slowly: the tank's temperature and pressure.
    pub(crate) fn step_slow(&mut self, dt_s: f64, outside_k: f64) {
        if let Some(tank) = &mut self.tank {
            let flow = self.network.flow_std_m3_s(self.elements.supply_hand_valve);
            tank.step(dt_s, flow.max(0.0), outside_k);
        }
        self.catch_up(dt_s);
    }

    /// Lets the tank's pressure at the lines reach the tank's own within the next `dt_s`.
    pub(crate) fn catch_up(&mut self, dt_s: f64) {
        if let Some(tank) = &self.tank {
            let now_pa = self.network.pressure_pa(self.nodes.upstream);
            self.tank_pa_per_s = (tank.pressure_pa() - now_pa) / dt_s;
        }
    }

    /// Gas from the supply to all appliances and leaks, in standard m³/s.
    pub(crate) fn supply_flow(&self) -> f64 {
        self.network.flow_std_m3_s(self.elements.supply_hand_valve)
    }
}

impl GasSide {
    /// Marches until nothing moves any more.
    pub(crate) fn settle(&mut self) {
        self.network.settle(600.0);
        self.set_in();
    }

    /// What waits until the bench has come to rest sets in.
    pub(super) fn set_in(&mut self) {
        let Later { seat_leak_m2, bonnet } = self.later;
        if let Some(regulator) = self.network.regulator_mut(self.elements.supply_regulator) {
            if seat_leak_m2 > 0.0 {
                regulator.set_leak_cd_area_m2(seat_leak_m2);
            }
            if let Some(bonnet) = bonnet {
                regulator.set_bonnet(bonnet);
            }
        }
    }
}
