//! Evidence of the leak check of the whole piping: the line shut in between the supply shut-off and the
//! appliances, the manometer on the inlet port, watched.
//!
//! **Source.** Three minutes at least, nothing drawn, no drop: leak check with a gauge, NFPA 54 annex C
//! (from memory). A tenth of an inch of water is the last digit of the trade's ordinary meters, and more
//! than a zero drifts in that time (from memory).

use super::joints::is_working;
use super::ledger::{Did, Hit, Ledger};
use super::repairs::{Mended, mended};
use crate::catalogue::repair::Need;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::parts::{Gauge, HandValve, JointVerdict, OnOff, OtherAppliance, Port};
use crate::senses::meter_history::Spell;
use crate::units::{PA_PER_INWC, TICK_S, inwc};
use crate::words::decimal;

/// Shortest time that the shut-in line must be watched, in seconds. It is watched from the tick after
/// the hand's.
const LEAST_S: f64 = 180.0 - 1.5 * TICK_S;
/// Fall from which it leaks, in pascals.
const FALLS_PA: f64 = 0.1 * PA_PER_INWC;
/// Gas to the other appliances from which they burn, in standard m³/s.
const BURNS_M3_S: f64 = 1e-6;

/// A leak check as it was written.
struct Check<'a> {
    did: Did<'a>,
    verdict: JointVerdict,
    /// What the manometer had shown since the last hand on the gas; none where it showed nothing.
    spell: Option<Spell>,
}

impl Check<'_> {
    /// What keeps it from telling, in words; nothing where it tells.
    fn lacks(&self, l: &Ledger) -> Option<String> {
        let state = self.did.before;
        let Some(spell) = self.at_inlet() else {
            return Some(t!("true-piping-no-meter").into());
        };
        if !state.supply_valve.is_shut() {
            return Some(t!("true-piping-fed").into());
        }
        if !state.manual_valve.feeds() {
            return Some(t!("true-piping-cut-off").into());
        }
        if spell.demand.firing.is_some() || spell.demand.burning > 0 {
            return Some(t!("true-piping-drawn").into());
        }
        if !is_working(l, spell.shown.most_pa) {
            return Some(t!("true-piping-no-pressure", pressure = inwc(spell.shown.most_pa)));
        }
        let seconds = watched_s(&spell);
        let brief = seconds < LEAST_S && self.fallen_pa(l).is_none();
        brief.then(|| t!("true-piping-brief", seconds = decimal(seconds, 0)))
    }

    /// What the manometer had shown at the inlet port, where the line is watched.
    fn at_inlet(&self) -> Option<Spell> {
        self.spell.filter(|spell| spell.port == Port::Inlet)
    }

    /// How far the number fell, in pascals, from its highest to where it stood when it was written (no
    /// more than it ever moved, whatever a gauge reads too high), if by more than its gauge is read to:
    /// on a column or a needle, each of two readings is a tenth of an inch off at most.
    fn fallen_pa(&self, l: &Ledger) -> Option<f64> {
        let Spell { shown, error_pa, .. } = self.at_inlet()?;
        let before = l.did().take_while(|did| did.index < self.did.index);
        let gauges = before.filter_map(|did| {
            let Action::Gauge(gauge) = did.action else { return None };
            Some(*gauge)
        });
        let coarse = gauges.last().is_some_and(|gauge| gauge != Gauge::Digital);
        let end_pa = self.did.before.hose_pa + error_pa;
        let fell_pa = shown.most_pa - end_pa.max(shown.least_pa);
        (fell_pa >= if coarse { 2.0 * FALLS_PA } else { FALLS_PA }).then_some(fell_pa)
    }
}

fn watched_s(spell: &Spell) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let ticks = spell.shown.until.saturating_sub(spell.shown.since) as f64;
    ticks * TICK_S
}

/// Every leak check of the piping that was written, in order.
fn checks(l: &Ledger) -> impl Iterator<Item = Check<'_>> {
    l.did().filter_map(|did| {
        let Action::WritePiping(verdict) = *did.action else { return None };
        let told = l.events.get(did.index + 1);
        let spell = told.and_then(|event| {
            let EventKind::Showed(spell) = event.what else { return None };
            Some(spell)
        });
        Some(Check { did, verdict, spell })
    })
}

/// Where the line between source and gas valve was opened last for a repair.
pub(super) fn opened(l: &Ledger) -> Option<usize> {
    mended(l).filter(|it| it.repair.is_on_piping()).map(|it| it.index).last()
}

/// Whether such work makes the check due by itself: the line was opened, and gas stands in it. What was
/// opened behind a manual valve that is left shut has none.
pub(super) fn is_due(l: &Ledger) -> bool {
    let gas = l.left().is_some_and(|(_, _, left)| {
        let supplied = left.supply_valve.feeds() && left.supply_pa >= PA_PER_INWC;
        supplied && (left.manual_valve.feeds() || house_shut_off(l).is_some())
    });
    gas && opened(l).is_some()
}

/// What is missing of the leak check of the piping, in words; nothing where it was done.
pub(super) fn missing(l: &Ledger) -> Option<String> {
    let opened = opened(l);
    let since = |check: &Check<'_>| opened.is_none_or(|opened| check.did.index > opened);
    let lacks = checks(l).filter(since).map(|check| check.lacks(l));
    let lacks: Option<Vec<String>> = lacks.collect();
    lacks.map(|mut all| all.pop().unwrap_or_else(|| t!("true-piping-none").into()))
}

/// Verdicts on the piping that do not fit: tight over a number that fell, leaking and left in use.
pub(super) fn verdicts(l: &Ledger) -> Vec<Hit> {
    let Some(check) = checks(l).last() else { return Vec::new() };
    let in_use = l.left().is_some() && !l.left_shut_off();
    // Fed, a line holds its number whatever leaks.
    let fallen_pa = check.fallen_pa(l).filter(|_| check.did.before.supply_valve.is_shut());
    match (check.verdict, fallen_pa) {
        (JointVerdict::Tight, Some(fell_pa)) => {
            let truth = t!("true-piping-fell", fall = inwc(fell_pa));
            vec![Hit::new(check.did.tick, t!("seen-piping-tight"), truth)]
        }
        (JointVerdict::Leaking, _) if in_use => {
            vec![Hit::new(check.did.tick, t!("seen-piping-leaking"), t!("true-piping-leaking"))]
        }
        (JointVerdict::Tight, None) | (JointVerdict::Leaking, _) => Vec::new(),
    }
}

/// Where the gas of the whole house was shut off last for a repair.
pub(super) fn house_shut_off(l: &Ledger) -> Option<usize> {
    let shuts = |it: &Mended| it.repair.needs().contains(&Need::Shut(HandValve::Supply));
    mended(l).filter(shuts).map(|it| it.index).last()
}

/// The other appliances that nobody saw burn since the gas of the whole house was shut off for a
/// repair.
pub(super) fn not_lit_since(l: &Ledger) -> Vec<OtherAppliance> {
    let Some(opened) = house_shut_off(l) else { return Vec::new() };
    let burned = |which: OtherAppliance| {
        l.did().filter(|did| did.index > opened).any(|did| {
            let it = &did.before.other_appliances[which];
            let burns = did.before.others_flow_m3_s > BURNS_M3_S;
            it.switch == OnOff::On && !it.gone_out && burns
        })
    };
    OtherAppliance::ALL.iter().copied().filter(|&which| !burned(which)).collect()
}
