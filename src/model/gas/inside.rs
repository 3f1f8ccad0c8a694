//! What the cutaway shows of the gas side's regulators and springs.

use super::side::GasSide;
use crate::model::inside::{RegulatorInside, SpringInside};
use crate::parts::Levels;
use crate::physics::network::ElementId;
use crate::physics::regulator::Regulator;

impl GasSide {
    /// The supply regulator's moving parts.
    pub(crate) fn supply_inside(&self) -> RegulatorInside {
        self.regulator_inside(self.elements.supply_regulator)
    }

    /// The moving parts of the regulator in the gas valve.
    pub(crate) fn valve_inside(&self) -> RegulatorInside {
        self.regulator_inside(self.elements.valve_regulator)
    }

    fn regulator_inside(&self, element: ElementId) -> RegulatorInside {
        let before_pa = self.network.before_pa(element);
        let regulator = self.network.regulator(element);
        regulator.map_or(RegulatorInside::NONE, |it| inside(it, before_pa))
    }

    /// How far the shut-off seats of the gas valve stand open, 0–1.
    pub(crate) fn seats_open(&self) -> f64 {
        (self.network.opening_m2(self.elements.seats) / self.seats_open_m2.max(1e-12)).min(1.0)
    }

    /// The springs of the gas valve under their screws.
    pub(crate) fn springs_inside(&self) -> Levels<SpringInside> {
        self.springs.inside()
    }
}

fn inside(regulator: &Regulator, before_pa: f64) -> RegulatorInside {
    let spec = regulator.spec();
    RegulatorInside {
        before_pa,
        screwed_m: regulator.turns() * spec.spring.pitch_m,
        travel_m: spec.spring.max_turns * spec.spring.pitch_m,
        force_n: regulator.preload_n(),
        balance_pa: regulator.holds_pa(before_pa),
        lift_m: regulator.lift_m(),
        stop_m: spec.seat.max_lift_m,
    }
}
