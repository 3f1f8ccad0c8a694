//! The gas side after a repair: built anew from the changed setup, with everything that the repair
//! did not touch as it stood.

use super::side::GasSide;
use crate::physics::network::NodeId;
use crate::setup::{Setup, SupplyKind};

/// Whether the supply regulator stays the one that it was.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum SupplyRegulator {
    /// With its seat, its screw and the air in its bonnet.
    Same,
    /// With its screw, but something about it has changed.
    Changed,
    /// Another one, its screw where the setup has it.
    New,
}

impl GasSide {
    /// Builds the gas side anew; the stage screws stand as the setup has them.
    pub(crate) fn refit(&mut self, setup: &Setup, regulator: SupplyRegulator) {
        let mut new = Self::new(setup);
        new.wear.carry(&self.wear);
        new.carry_pressures(self, setup);
        new.tank.clone_from(&self.tank);
        new.tank_pa_per_s = self.tank_pa_per_s;
        new.dial_turns = self.dial_turns;
        new.worst_imbalance = self.worst_imbalance;
        match regulator {
            SupplyRegulator::Same => {
                new.supply_turned = self.supply_turned;
                let old = self.network.regulator(self.elements.supply_regulator).cloned();
                let slot = new.network.regulator_mut(new.elements.supply_regulator);
                if let (Some(old), Some(slot)) = (old, slot) {
                    *slot = old;
                }
            }
            SupplyRegulator::Changed => {
                new.turn_supply(self.supply_turned);
                new.set_in();
            }
            SupplyRegulator::New => {
                // What stood between regulator and shut-off is gone when its joint is opened.
                new.network.set_pressure_pa(new.nodes.supply, 0.0);
                new.set_in();
            }
        }
        *self = new;
    }

    /// Takes over the pressures of the old network, stretch by stretch.
    fn carry_pressures(&mut self, old: &Self, setup: &Setup) {
        // Two nodes that stand for the air and the burner box come first.
        let tank = match setup.supply.kind {
            SupplyKind::Tank { .. } => true,
            SupplyKind::Meter { .. } => false,
        };
        let (mut from, mut old_from) = (1, 1);
        for (i, (&end, &old_end)) in self.marks.iter().zip(&old.marks).enumerate() {
            let same = end - from == old_end - old_from;
            // A main keeps the pressure it has; with another row of regulators so does the tank's line.
            let source = i == 0;
            for k in 0..end - from {
                let node = NodeId(from + k);
                let is_box = node == self.nodes.burner_box;
                let kept = !source || is_box || (tank && (same || node == self.nodes.upstream));
                let was = (old_from + k).min(old_end.max(old_from + 1) - 1);
                // What a shorter stretch lacks stands as the stretch before it ended.
                let was = if old_end == old_from { old_from - 1 } else { was };
                if kept {
                    self.network.set_pressure_pa(node, old.network.pressure_pa(NodeId(was)));
                }
            }
            (from, old_from) = (end, old_end);
        }
    }

    /// Share of its opening that ice shuts before the regulators.
    pub(crate) fn ice(&self) -> f64 {
        self.wear.ice()
    }

    /// Sets how much of that opening ice shuts.
    pub(crate) fn set_ice(&mut self, ice: f64) {
        self.wear.set_ice(ice);
    }
}
