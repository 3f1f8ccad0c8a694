//! Faults from tank or main to the inlet port. Each takes its severity in SI.

use super::entry::Edit;
use crate::appliance::safety::{LowGasSwitch, Points};
use crate::physics::pipe::ehd_constants;
use crate::physics::valve::HandleAngle;
use crate::setup::{Bore, SeatState, Setup, SupplyKind};
use crate::units::PA_PER_INWC;

pub(crate) const SUPPLY_SET_DOWN: Edit = |setup, pa| move_supply(setup, -pa);

pub(crate) const SUPPLY_SET_UP: Edit = move_supply;

/// Spring and lock-up move alike.
fn move_supply(setup: &mut Setup, by_pa: f64) {
    let least_pa = setup.supply.droop_pa + 0.3 * PA_PER_INWC;
    let by_pa = by_pa.max(least_pa - setup.supply.set_pa);
    setup.supply.set_pa += by_pa;
    setup.supply.lockup_pa += by_pa;
}

pub(crate) const CREEPING_SUPPLY_SEAT: Edit =
    |setup, flow| setup.condition.supply.lets_by_m3_s = flow;

pub(crate) const BLOCKED_REGULATOR_VENT: Edit =
    |setup, share| setup.condition.supply.vent_blocked = share;

pub(crate) const TORN_REGULATOR_DIAPHRAGM: Edit =
    |setup, hole_m| setup.condition.supply.diaphragm_hole_m = hole_m;

pub(crate) const UNDERSIZED_REGULATOR: Edit = |setup, droop_pa| {
    let supply = &mut setup.supply;
    supply.droop_pa = supply.droop_pa.max(droop_pa.min(0.8 * supply.set_pa));
    supply.capacity_m3_s = supply.capacity_m3_s.min(1.3 * supply.droop_flow_m3_s);
};

pub(crate) const UNDERSIZED_TRUNK: Edit = |setup, share| {
    for run in &mut setup.trunk {
        run.bore = narrowed(run.bore, share);
    }
};

/// A bore with a share of its diameter; of tubing the next smaller published size.
fn narrowed(bore: Bore, share: f64) -> Bore {
    match bore {
        Bore::Steel(id_m) => Bore::Steel(id_m * share),
        Bore::Copper(id_m) => Bore::Copper(id_m * share),
        Bore::Corrugated(ehd) => {
            let wanted = f64::from(ehd) * share;
            let known = |it: &u32| u16::try_from(*it).ok().and_then(ehd_constants).is_some();
            let smaller = (1..=ehd).rev().filter(known).find(|&it| f64::from(it) <= wanted);
            Bore::Corrugated(smaller.or_else(|| (1..=ehd).find(known)).unwrap_or(ehd))
        }
    }
}

pub(crate) const KINKED_CONNECTOR: Edit =
    |setup, share| setup.condition.line.connector_kinked = share;

pub(crate) const PARTLY_OPEN_MANUAL_VALVE: Edit =
    |setup, degrees| setup.found.manual_valve = angle(degrees);

pub(crate) const SHUT_MANUAL_VALVE: Edit = |setup, _| setup.found.manual_valve = HandleAngle::SHUT;

fn angle(degrees: f64) -> HandleAngle {
    #[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
    let degrees = degrees.round().clamp(0.0, 90.0) as i16;
    HandleAngle::from_deg(degrees).unwrap_or(HandleAngle::OPEN)
}

pub(crate) const WATER_IN_LINE: Edit = |setup, head_pa| setup.condition.line.water_pa = head_pa;

pub(crate) const LOW_MAIN_PRESSURE: Edit =
    |setup, pa| setup.condition.supply.upstream_pa = Some(pa);

pub(crate) const LINE_REGULATOR_WIDE_OPEN: Edit =
    |setup, _| setup.condition.supply.seat = SeatState::WideOpen;

pub(crate) const NEARLY_EMPTY_TANK: Edit = |setup, share| {
    if let SupplyKind::Tank { level, .. } = &mut setup.supply.kind {
        *level = share;
    }
    // Odorant boils off last: what is left of the liquid smells more (common practice).
    setup.condition.odorant.left = 2.0;
};

pub(crate) const COLD_TANK: Edit = |setup, liquid_k| {
    setup.condition.supply.liquid_k = Some(liquid_k);
    // Only a cold day keeps the liquid so cold.
    setup.outside_k = setup.outside_k.min(liquid_k + 6.0);
};

pub(crate) const FREEZING_REGULATOR: Edit =
    |setup, time_s| setup.condition.supply.ices_up_s = Some(time_s);

pub(crate) const WEAK_FIRST_STAGE: Edit = |setup, pa| setup.condition.supply.upstream_pa = Some(pa);

pub(crate) const SINGLE_STAGE_REGULATOR: Edit =
    |setup, set_k| setup.condition.supply.single_stage_set_k = Some(set_k);

pub(crate) const EARLY_EXCESS_FLOW_VALVE: Edit =
    |setup, flow| setup.condition.supply.excess_flow_m3_s = Some(flow);

pub(crate) const EARLY_LOW_GAS_SWITCH: Edit = |setup, opens_pa| {
    let closes_pa = opens_pa + 0.3 * PA_PER_INWC;
    setup.condition.control.low_gas = Some(LowGasSwitch::Fitted(Points { closes_pa, opens_pa }));
};

pub(crate) const AIR_IN_LINE: Edit = |setup, m3| setup.condition.line.air_m3 = m3;
