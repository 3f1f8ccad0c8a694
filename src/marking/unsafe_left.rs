//! What makes a slip the worst of its kind: a furnace left over-fired, carbon monoxide, gas that
//! leaks.

use super::ended::in_use;
use super::grounds::MOST_CO_PPM;
use super::ledger::{Hit, Ledger};
use crate::appliance::plate::Fuel;
use crate::hands::event::EventKind;
use crate::instrument::figure::Quantity;
use crate::model::truth::Truth;
use crate::parts::{Level, Spot};
use crate::physics::fluid::Gas;
use crate::setup::SupplyKind;
use crate::units::TICK_S;
use crate::words::decimal;

/// Share above the plate's input from which a furnace is unsafe to leave (draft; common practice asks
/// for 2 to 5 % of the plate).
const OVER_FIRED: f64 = 0.1;
/// Gas out of a joint that leak fluid shows, in standard m³/s.
const LEAK_M3_S: f64 = 1e-7;
/// How long the burners burn at a level before what they give is steady, in seconds (from memory).
const STEADY_S: f64 = 60.0;

/// Share by which a level's spring sends more gas than its target: the rate of an orifice goes with
/// the square root of the pressure before it.
pub(super) fn over_share(set_pa: f64, target_pa: f64) -> f64 {
    libm::sqrt((set_pa / target_pa.max(1.0)).max(0.0)) - 1.0
}

/// Levels left outside their band, at their worst where one of them over-fires far above the plate.
pub(super) fn over_fired(l: &Ledger, hits: Vec<Hit>) -> Vec<Hit> {
    let over = l.left().is_some_and(|(_, _, left)| {
        let manifold = &l.plate().figures().manifold;
        let share = |&level: &Level| over_share(left.set_pa[level], manifold[level].pa);
        l.levels().iter().any(|level| share(level) > OVER_FIRED)
    });
    hits.into_iter().map(|hit| hit.grave_if(over)).collect()
}

/// Screws turned while their level did not burn, at their worst where that level is left above its
/// band.
pub(super) fn wrong_screw(l: &Ledger, hits: Vec<Hit>) -> Vec<Hit> {
    let manifold = &l.plate().figures().manifold;
    let left_above = |level: Level| {
        l.left().is_some_and(|(_, _, left)| manifold[level].band().is_above(left.set_pa[level]))
    };
    let grave = l.events.iter().any(|event| {
        let EventKind::Turned { screw, firing, .. } = event.what else { return false };
        screw.level().is_some_and(|level| firing != Some(level) && left_above(level))
    });
    hits.into_iter().map(|hit| hit.grave_if(grave)).collect()
}

/// Greatest share of the plate's input that burned, as the furnace was left, with its level.
pub(super) fn most_input(l: &Ledger) -> Option<(Level, f64)> {
    let input = &l.plate().input;
    let share = |level: Level, truth: &Truth| truth.input_w / input[level].si().max(1.0);
    most(l, share).map(|(level, _, share)| (level, share))
}

/// Most carbon monoxide in the flue, as the furnace was left, in parts per million air-free.
pub(super) fn most_carbon_monoxide(l: &Ledger) -> Option<(Level, f64)> {
    most(l, |_, truth| truth.co_air_free_ppm).map(|(level, _, ppm)| (level, ppm))
}

/// Least share of the plate's input at the full rate that burned, as the furnace was left.
pub(super) fn least_full_input(l: &Ledger) -> Option<f64> {
    let input = &l.plate().input;
    let states = burned(l)
        .into_iter()
        .filter(|(level, truth)| level.is_top() && truth.firing == Some(*level));
    let shares = states.map(|(level, truth)| truth.input_w / input[level].si().max(1.0));
    shares.min_by(f64::total_cmp)
}

/// The level that burned steadily before each action since the last screw or repair, with the state
/// then.
fn burned(l: &Ledger) -> Vec<(Level, &Truth)> {
    let mut since: Option<(Level, u64)> = None;
    let mut states = Vec::new();
    for event in &l.events {
        if let EventKind::Fired { to, .. } = &event.what {
            since = to.map(|level| (level, event.tick));
        } else if matches!(event.what, EventKind::Turned { .. } | EventKind::Mended { .. }) {
            states.clear();
        } else if let EventKind::Did { before, .. } = &event.what {
            let steady = since.filter(|(_, tick)| seconds(*tick, event.tick) >= STEADY_S);
            states.extend(steady.map(|(level, _)| (level, before.as_ref())));
        }
    }
    states
}

fn seconds(from: u64, to: u64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let ticks = to.saturating_sub(from) as f64;
    ticks * TICK_S
}

/// The most of something while the burners burned, as they were left, with its level and moment.
fn most(l: &Ledger, of: impl Fn(Level, &Truth) -> f64) -> Option<(Level, u64, f64)> {
    let states = burned(l).into_iter().filter(|(level, truth)| truth.firing == Some(*level));
    let each = states.map(|(level, truth)| (level, truth.tick, of(level, truth)));
    each.max_by(|a, b| a.2.total_cmp(&b.2))
}

/// Carbon monoxide in the flue, as the furnace was left to burn, over its limit.
pub(super) fn carbon_monoxide(l: &Ledger) -> Vec<Hit> {
    let worst = most(l, |_, truth| truth.co_air_free_ppm).filter(|_| in_use(l));
    let over = worst.filter(|(_, _, ppm)| *ppm > MOST_CO_PPM);
    over.map(|(level, tick, ppm)| {
        let [ppm, most] = [ppm, MOST_CO_PPM].map(|it| decimal(it, 0));
        let seen = t!("seen-carbon-monoxide", stage = level.id(), ppm = ppm);
        Hit::new(tick, seen, t!("true-carbon-monoxide", most = most))
    })
    .into_iter()
    .collect()
}

/// Gas burned, as the furnace was left, far above the plate's input. How rich the gas is in heat is
/// its seller's: manifold and orifices by the plate pass the plate's gas.
pub(super) fn too_much_gas(l: &Ledger) -> Vec<Hit> {
    let input = &l.plate().input;
    let usual = usual_gas(l.setup.fuel);
    let poorer = usual.heating_value_j_m3 / l.setup.gas.heating_value_j_m3;
    let share = |level: Level, truth: &Truth| poorer * truth.input_w / input[level].si().max(1.0);
    let over = most(l, share).filter(|(_, _, share)| in_use(l) && *share > 1.0 + OVER_FIRED);
    over.map(|(level, tick, share)| {
        let [share, most] = [100.0 * (share - 1.0), 100.0 * OVER_FIRED].map(|it| decimal(it, 0));
        let seen = t!("seen-too-much-gas", stage = level.id(), share = share);
        let seen = match clocked(l).filter(|(_, clocked)| *clocked > 1.0 + OVER_FIRED) {
            Some((turn_s, clocked)) => t!(
                "seen-too-much-gas-clocked",
                seen = seen,
                seconds = decimal(turn_s, 1),
                clocked = decimal(100.0 * clocked, 0)
            ),
            None => seen,
        };
        Hit::new(tick, seen, t!("true-too-much-gas", most = most))
    })
    .into_iter()
    .collect()
}

/// The dial as it was timed last at the full rate: seconds of one turn, and the share of the plate's
/// input that they make with the heating value of the card, or the usual one of the gas.
fn clocked(l: &Ledger) -> Option<(f64, f64)> {
    let SupplyKind::Meter { dial_m3, .. } = l.setup.supply.kind else { return None };
    let full = l.levels().last().copied()?;
    let turn_s = l.events.iter().rev().find_map(|event| {
        let EventKind::WroteMeasured { written, firing } = &event.what else { return None };
        let there = written.spot == Spot::MeterDial && *firing == Some(full);
        let mut figures = written.figures.iter().filter(|_| there);
        figures.find(|it| it.quantity == Quantity::SecondsPerTurn)?.value()
    })?;
    let stated = l.setup.card.heating_value.of(l.setup.fuel);
    let heat_j_m3 = stated.unwrap_or(usual_gas(l.setup.fuel).heating_value_j_m3);
    let input_w = heat_j_m3 * dial_m3 / turn_s.max(TICK_S);
    Some((turn_s, input_w / l.plate().input[full].si().max(1.0)))
}

/// The gas that a fuel usually is.
fn usual_gas(fuel: Fuel) -> Gas {
    match fuel {
        Fuel::Natural => Gas::natural(),
        Fuel::Propane => Gas::propane(),
    }
}

/// A fault that was left, at its worst where gas leaks, carbon monoxide stands over its limit, or far
/// more than the plate's input burns.
pub(super) fn fault(l: &Ledger, hits: Vec<Hit>) -> Vec<Hit> {
    let leaks = l.left().is_some_and(|(_, _, left)| {
        let ports = left.leak_m3_s.ports.values().any(|flow| *flow > LEAK_M3_S);
        ports || left.connector_leak_m3_s > LEAK_M3_S
    });
    let burns = || !carbon_monoxide(l).is_empty() || !too_much_gas(l).is_empty();
    let grave = !hits.is_empty() && (leaks || burns());
    hits.into_iter().map(|hit| hit.grave_if(grave)).collect()
}
