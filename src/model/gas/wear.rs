//! Parts of the gas side that move by themselves where they are worn, wet or iced up. A sound bench
//! has none of them.
//!
//! **Equation.** Excess-flow valve: shuts at a flow, opens when both sides are equal. Ice: grows with
//! the gas that passes, `di/dt = Q/(Q_full·τ) − i/τ_thaw`. Water in a sag: stands in the way of the
//! gas, is thrown aside when the pressure across it reaches a share of its head, and runs back.
//! Worn guide: `u″ − μ·(1 − u²)·u′ + ω²u = 0` (van der Pol), driven by the flow. Torn diaphragm: hole
//! and vent in a row. Relief: opens in proportion above its set pressure.
//! **Assumptions.** Areas follow from the pressures at the start of a step.
//! **Valid range.** Steps of 20 ms.
//! **Regularisation.** Relief with a lag; areas never quite shut.
//! **Source.** Van der Pol's oscillator: any text on self-excited vibration. Relief of a second-stage
//! regulator between 1.4 and 2 times its set pressure; bleed hole of an excess-flow valve; times of
//! ice, water and guide: from memory.
//! **Left out.** What the gas carries along.
//! **Checked.** `tests/core/faults`.

use crate::physics::network::{ElementId, Network, NodeId};
use serde::Serialize;

/// Area that an excess-flow valve bleeds through, in m² (a hole of 0.3 mm).
const BLEED_M2: f64 = 5.6e-8;
/// Difference at which an excess-flow valve opens again, in pascals (1 psi).
const RESETS_PA: f64 = 6_900.0;
/// Time in which ice thaws away without flow, in seconds.
const THAWS_S: f64 = 600.0;
/// Most that ice shuts.
const MOST_ICE: f64 = 0.999;
/// Share of the head from which gas throws the water aside, and below which it runs back.
const THROWN_AT: f64 = 0.35;
const BACK_AT: f64 = 0.1;
/// Times in which water is thrown aside and runs back, in seconds.
const THROWN_S: f64 = 0.15;
const BACK_S: f64 = 0.7;
/// Angular frequency of a hunting regulator, in rad/s, and how fast its swing grows.
const SWING_RAD_S: f64 = 2.5;
const SWING_GROWS: f64 = 0.8;
/// Lag of a relief valve, in seconds, and how far above its set pressure it is fully open.
const RELIEF_LAG_S: f64 = 0.2;
const RELIEF_SPAN: f64 = 0.2;

/// What moves by itself.
#[derive(Debug, Clone, Default, Serialize)]
pub(crate) struct Wear {
    pub gate: Option<Gate>,
    pub sag: Option<Sag>,
    pub relief: Option<Relief>,
    pub torn: Option<Torn>,
    pub swing: Option<Swing>,
    pub air: Option<Air>,
    /// A crack in the connector.
    pub crack: Option<ElementId>,
}

/// An opening before the regulators.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Gate {
    pub element: ElementId,
    pub ends: [NodeId; 2],
    pub open_m2: f64,
    /// Flow at which an excess-flow valve shuts, in standard m³/s.
    pub shuts_at: Option<f64>,
    pub shut: bool,
    /// Full flow, in standard m³/s, and the time of it until ice shuts the opening, in seconds.
    pub ices_up: Option<(f64, f64)>,
    pub ice: f64,
}

/// Water in a sag of the pipe.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Sag {
    pub element: ElementId,
    pub ends: [NodeId; 2],
    pub open_m2: f64,
    /// Area past the water at rest, in m².
    pub least_m2: f64,
    pub head_pa: f64,
    /// Share of the water that stands in the way.
    pub water: f64,
    pub thrown: bool,
}

/// The relief valve of the supply regulator.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Relief {
    pub element: ElementId,
    pub node: NodeId,
    pub opens_pa: f64,
    pub full_m2: f64,
    pub area_m2: f64,
}

/// A hole in the supply regulator's diaphragm.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Torn {
    pub element: ElementId,
    pub regulator: ElementId,
    pub node: NodeId,
    /// Share of the outlet pressure that stands in the bonnet.
    pub share: f64,
}

/// A regulator with a worn guide.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Swing {
    pub burners: ElementId,
    pub rated_m3_s: f64,
    pub most_pa: f64,
    pub at: f64,
    pub speed: f64,
}

/// Air in the branch.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct Air {
    pub first_m3: f64,
    pub left_m3: f64,
}

impl Wear {
    /// Goes on by `dt_s` from the last step's pressures and flows.
    pub(crate) fn step(&mut self, dt_s: f64, network: &mut Network) {
        if let Some(gate) = &mut self.gate {
            gate.step(dt_s, network);
        }
        if let Some(sag) = &mut self.sag {
            sag.step(dt_s, network);
        }
        if let Some(relief) = &mut self.relief {
            relief.step(dt_s, network);
        }
        if let Some(torn) = &self.torn {
            let bonnet_pa = torn.share * network.pressure_pa(torn.node);
            if let Some(regulator) = network.regulator_mut(torn.regulator) {
                regulator.set_reference_pa(bonnet_pa);
            }
        }
        if let Some(swing) = &mut self.swing {
            swing.step(dt_s, network.flow_std_m3_s(swing.burners));
        }
    }

    /// What a worn guide adds to the gas valve's reference, in pascals.
    pub(crate) fn swing_pa(&self) -> Option<f64> {
        self.swing.as_ref().map(|swing| 0.5 * swing.most_pa * swing.at)
    }

    /// Gas that comes out by itself: the relief, and past a torn diaphragm, in standard m³/s.
    pub(crate) fn vented(&self, network: &Network) -> f64 {
        let elements = [
            self.relief.as_ref().map(|relief| relief.element),
            self.torn.as_ref().map(|torn| torn.element),
        ];
        elements.into_iter().flatten().map(|it| network.flow_std_m3_s(it).max(0.0)).sum()
    }

    /// Gas out of a crack in the connector, in standard m³/s; none without one.
    pub(crate) fn cracked(&self, network: &Network) -> Option<f64> {
        self.crack.map(|crack| network.flow_std_m3_s(crack).max(0.0))
    }

    /// Share of its opening that ice shuts before the regulators; 0 without ice.
    pub(crate) fn ice(&self) -> f64 {
        self.gate.as_ref().map_or(0.0, |gate| gate.ice)
    }

    /// Sets how much of that opening ice shuts.
    pub(crate) fn set_ice(&mut self, ice: f64) {
        if let Some(gate) = &mut self.gate {
            gate.ice = ice;
        }
    }

    /// Takes over how everything stands from before a repair, where it is still there.
    pub(crate) fn carry(&mut self, old: &Self) {
        if let (Some(gate), Some(old)) = (&mut self.gate, &old.gate) {
            (gate.shut, gate.ice) = (old.shut, old.ice);
        }
        if let (Some(sag), Some(old)) = (&mut self.sag, &old.sag) {
            (sag.water, sag.thrown) = (old.water, old.thrown);
        }
        if let (Some(relief), Some(old)) = (&mut self.relief, &old.relief) {
            relief.area_m2 = old.area_m2;
        }
        if let (Some(swing), Some(old)) = (&mut self.swing, &old.swing) {
            (swing.at, swing.speed) = (old.at, old.speed);
        }
        if let (Some(air), Some(old)) = (&mut self.air, &old.air) {
            air.left_m3 = old.left_m3;
        }
    }
}

impl Gate {
    fn step(&mut self, dt_s: f64, network: &mut Network) {
        let flow = network.flow_std_m3_s(self.element).max(0.0);
        if let Some(shuts_at) = self.shuts_at {
            let across_pa = network.pressure_pa(self.ends[0]) - network.pressure_pa(self.ends[1]);
            self.shut = if self.shut { across_pa > RESETS_PA } else { flow > shuts_at };
        }
        if let Some((full, time_s)) = self.ices_up {
            let grown = self.ice + dt_s * flow / (full.max(1e-9) * time_s.max(1.0));
            self.ice = (grown / (1.0 + dt_s / THAWS_S)).min(MOST_ICE);
        }
        let open = if self.shut { BLEED_M2 } else { self.open_m2 * (1.0 - self.ice) };
        network.set_opening(self.element, open);
    }
}

impl Sag {
    fn step(&mut self, dt_s: f64, network: &mut Network) {
        let across_pa = network.pressure_pa(self.ends[0]) - network.pressure_pa(self.ends[1]);
        if self.thrown {
            self.water -= self.water * dt_s / (THROWN_S + dt_s);
            self.thrown = across_pa > BACK_AT * self.head_pa;
        } else {
            self.water += (1.0 - self.water) * dt_s / (BACK_S + dt_s);
            self.thrown = across_pa > THROWN_AT * self.head_pa;
        }
        let area = self.open_m2 + (self.least_m2 - self.open_m2) * self.water;
        network.set_opening(self.element, area);
    }
}

impl Relief {
    fn step(&mut self, dt_s: f64, network: &mut Network) {
        let over = network.pressure_pa(self.node) / self.opens_pa.max(1.0) - 1.0;
        let wanted = self.full_m2 * (over / RELIEF_SPAN).clamp(0.0, 1.0);
        self.area_m2 += (wanted - self.area_m2) * dt_s / (RELIEF_LAG_S + dt_s);
        // A relief that is as good as shut is shut.
        let area = if self.area_m2 < 1e-4 * self.full_m2 { 0.0 } else { self.area_m2 };
        network.set_opening(self.element, area);
    }
}

impl Swing {
    fn step(&mut self, dt_s: f64, flow_m3_s: f64) {
        // Without flow nothing drives it, and it dies away.
        let driven = (flow_m3_s / self.rated_m3_s.max(1e-9)).clamp(0.0, 1.2) - 0.2;
        let push = SWING_GROWS * driven * (1.0 - self.at * self.at);
        self.speed += dt_s * (push * self.speed - SWING_RAD_S * SWING_RAD_S * self.at);
        self.at = (self.at + dt_s * self.speed).clamp(-3.0, 3.0);
        // A worn guide never stands quite still.
        if self.at.abs() < 0.02 && self.speed.abs() < 0.02 {
            self.at = 0.02;
        }
    }
}

impl Air {
    /// Gas passes out of the branch.
    pub(crate) fn pass(&mut self, m3: f64) {
        self.left_m3 = (self.left_m3 - m3.max(0.0)).max(0.0);
    }

    /// Share of gas in what comes out: the last quarter is a mixture.
    pub(crate) fn gas_share(&self) -> f64 {
        1.0 - (self.left_m3 / (0.25 * self.first_m3).max(1e-9)).min(1.0)
    }
}
