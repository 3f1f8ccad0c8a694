//! Evidence of gauges that got too much, of the timed dial and of the temperature rise.

use super::ledger::{Caught, Did, Hit, Ledger};
use super::repairs::mended;
use crate::catalogue::fault::Fault;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, StartStop};
use crate::hands::event::EventKind;
use crate::parts::{Fitted, Level, Spot, Subject};
use crate::units::{M3_S_PER_CFH, TICK_S};
use crate::words::decimal;

/// Gas to other appliances from which the dial is no longer the furnace's alone, in ft³/h: less
/// than a pilot burns (from memory).
const OTHERS_CFH: f64 = 0.2;

pub(super) fn gauge_overstrained(l: &Ledger) -> Vec<Hit> {
    l.events
        .iter()
        .filter_map(|event| {
            let seen = if event.what == EventKind::ColumnBlownOut {
                t!("seen-column-blown-out")
            } else if event.what == EventKind::SpringGaugeStrained {
                t!("seen-spring-gauge-strained")
            } else {
                return None;
            };
            Some(Hit::new(event.tick, seen, t!("true-gauge-overstrained")))
        })
        .collect()
}

/// Where the stopwatch was started for what was written at an event.
fn started(l: &Ledger, write: &Did<'_>) -> usize {
    let start = Action::Stopwatch(StartStop::Start);
    let starts = l.did().take_while(|did| did.index < write.index);
    starts.filter(|did| *did.action == start).last().map_or(write.index, |did| did.index)
}

pub(super) fn rate_with_others(l: &Ledger) -> Vec<Hit> {
    let writes = l.did().filter(|did| *did.action == Action::WriteMeasured(Spot::MeterDial));
    writes
        .filter_map(|write| {
            let begin = started(l, &write);
            let timed = l.did().filter(|did| (begin..=write.index).contains(&did.index));
            let flows = timed.map(|did| did.before.others_flow_m3_s / M3_S_PER_CFH);
            let most_cfh = flows.fold(0.0, f64::max);
            (most_cfh > OTHERS_CFH).then(|| {
                let truth = t!("true-rate-with-others", flow = decimal(most_cfh, 1));
                Hit::new(write.tick, t!("seen-rate-with-others"), truth)
            })
        })
        .collect()
}

/// Whether a blocked filter, never looked at, still stood in the air before an event.
fn filter_unseen(l: &Ledger, before: usize) -> bool {
    let blocked = l.setup.faults.iter().any(|(fault, _)| *fault == Fault::BlockedFilter);
    let looked =
        l.did().any(|did| did.index < before && *did.action == Action::Look(Subject::Filter));
    let renewed = mended(l).any(|it| it.index < before && it.repair == Repair::ReplaceFilter);
    blocked && !looked && !renewed
}

pub(super) fn rise_disturbed(l: &Ledger) -> Vec<Hit> {
    let writes = l.did().filter(|did| *did.action == Action::WriteMeasured(Spot::SupplyAir));
    writes
        .filter(|write| write.before.firing.is_some())
        .filter_map(|write| {
            let truth = if write.before.doors.values().any(|door| *door == Fitted::Off) {
                t!("true-rise-door-off")
            } else if filter_unseen(l, write.index) {
                t!("true-rise-filter")
            } else {
                return None;
            };
            Some(Hit::new(write.tick, t!("seen-rise-disturbed"), truth))
        })
        .collect()
}

/// A supply temperature that was written while the furnace burned.
pub(super) struct Supplied {
    pub tick: u64,
    pub level: Level,
    /// Seconds that it had burned on that level.
    pub burned_s: f64,
}

/// Every one, in order.
pub(super) fn supplied(l: &Ledger) -> Vec<Supplied> {
    let mut all = Vec::new();
    let mut since: Option<(Level, u64)> = None;
    for event in &l.events {
        if let EventKind::Fired { to, .. } = event.what {
            since = to.map(|level| (level, event.tick));
        } else if let EventKind::WroteMeasured { written, .. } = &event.what
            && written.spot == Spot::SupplyAir
            && let Some((level, lit)) = since
        {
            #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
            let burned_s = event.tick.saturating_sub(lit) as f64 * TICK_S;
            all.push(Supplied { tick: event.tick, level, burned_s });
        }
    }
    all
}

/// The supply air written while exchanger and air still warmed up on a level.
pub(super) fn rise_too_early(l: &Ledger, least_s: f64) -> Vec<Hit> {
    let all = supplied(l);
    all.iter()
        .filter(|it| it.burned_s < least_s)
        .map(|it| {
            let seen = t!("seen-rise-too-early", level = it.level.label().to_lowercase());
            let truth = t!("true-rise-too-early", seconds = decimal(it.burned_s, 0));
            let again = |later: &Supplied| {
                later.tick > it.tick && later.level == it.level && later.burned_s >= least_s
            };
            let mut hit = Hit::new(it.tick, seen, truth);
            if all.iter().any(again) {
                hit.caught = Caught::InTime;
            }
            hit
        })
        .collect()
}
