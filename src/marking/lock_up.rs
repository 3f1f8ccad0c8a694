//! Evidence of a supply that is left locking up too high.

use super::ended::in_use;
use super::ledger::{Hit, Ledger};
use super::repairs::mended;
use crate::hands::event::EventKind;
use crate::measure::felt::PRESSURE_PA;
use crate::model::truth::Truth;
use crate::parts::{Port, Screw, Stage};
use crate::setup::SupplyRight;
use crate::units::{M3_S_PER_CFH, inwc};

/// Flow below which a line is at rest, in ft³/h.
const REST_CFH: f64 = 0.1;

/// Whether the line stands at rest up to the inlet port.
fn is_at_rest(truth: &Truth) -> bool {
    let leaks: f64 = truth.leak_m3_s.iter().sum();
    let flow = truth.burner_flow_m3_s + truth.others_flow_m3_s + leaks;
    let fed = truth.manual_valve.is_open() && truth.supply_valve.is_open();
    fed && flow < REST_CFH * M3_S_PER_CFH
}

/// Where the supply was worked on last.
fn last_work(l: &Ledger) -> usize {
    let turned = |what: &EventKind| matches!(what, EventKind::Turned { screw: Screw::Supply, .. });
    let turned = l.events.iter().rposition(|event| turned(&event.what));
    let worked = mended(l).filter(|it| it.repair.is_on_supply()).map(|it| it.index).last();
    turned.max(worked).unwrap_or_default()
}

/// The highest that stood at the inlet at rest, as the supply was left, with its moment.
fn highest(l: &Ledger) -> Option<(u64, f64)> {
    let worked = last_work(l);
    let did = l.did().filter(|did| did.index > worked).map(|did| (did.tick, did.before));
    let states = did.chain(l.left().map(|(tick, _, left)| (tick, left)));
    let at_rest = states.filter(|(_, truth)| is_at_rest(truth));
    at_rest.map(|(tick, truth)| (tick, truth.inlet_pa)).max_by(|a, b| a.1.total_cmp(&b.1))
}

/// One's own supply above what plate and nameplate allow at rest; anybody's above what the gas
/// valve may see.
pub(super) fn over_limit(l: &Ledger) -> Vec<Hit> {
    if !in_use(l) {
        return Vec::new();
    }
    let Some((tick, pa)) = highest(l) else { return Vec::new() };
    let valve_pa = l.plate().valve_max.si();
    let own_pa = l
        .plate()
        .figures()
        .allows(Port::Inlet, Stage::Rest, Some(l.setup.supply.lockup_max_pa))
        .most_pa;
    let most_pa = match l.setup.card.supply {
        SupplyRight::Trainee => own_pa.min(valve_pa),
        SupplyRight::OwnerOnly => valve_pa,
    };
    // Nobody reads less than a digit over a limit.
    if pa <= most_pa + PRESSURE_PA {
        return Vec::new();
    }
    let seen = t!("seen-lock-up", pressure = inwc(pa));
    vec![Hit::new(tick, seen, t!("true-lock-up", most = inwc(most_pa)))]
}
