//! Evidence of a temperature rise off the plate that stands on the sheet and that nothing answers.

use super::causes;
use super::ended::in_use;
use super::instruments::supplied;
use super::ledger::{Hit, Ledger};
use crate::hands::event::{EventKind, Outcome};
use crate::instrument::figure::Quantity;
use crate::parts::{Cause, Ending, Fitted, Level, Spot, SystemPart};
use crate::words::decimal;

/// How far a rise may lie outside the plate's band and still count as inside, in kelvins: two beads
/// of half a degree Fahrenheit each (common practice).
const BEADS_K: f64 = 1.0 / 1.8;

/// A temperature that was written at a level.
struct Written {
    index: usize,
    tick: u64,
    value_f: f64,
}

/// The last temperature that was written of a spot while the furnace burned on a level.
fn last(l: &Ledger, wanted: Spot, level: Level) -> Option<Written> {
    l.events.iter().enumerate().rev().find_map(|(index, event)| {
        let EventKind::WroteMeasured { written, firing } = &event.what else { return None };
        let there = written.spot == wanted && *firing == Some(level);
        let mut figures = written.figures.iter().filter(|_| there);
        let value_f = figures.find(|it| it.quantity == Quantity::Temperature)?.value()?;
        Some(Written { index, tick: event.tick, value_f })
    })
}

/// Whether a screw was turned or something was mended after an event: what was written before it
/// says nothing any more.
fn is_outdated(l: &Ledger, index: usize) -> bool {
    l.events[index..].iter().any(|event| {
        let mended = matches!(event.what, EventKind::Mended { outcome: Outcome::Changed, .. });
        mended || matches!(event.what, EventKind::Turned { .. })
    })
}

/// Whether it was taken with the doors on, after the level had burned for so long.
fn is_steady(l: &Ledger, supply: &Written, level: Level, least_s: f64) -> bool {
    let late = |it: &super::instruments::Supplied| it.burned_s >= least_s;
    let mut all = supplied(l).into_iter();
    let it = all.find(|it| it.tick == supply.tick && it.level == level);
    let before = l.did().filter(|did| did.index < supply.index).last();
    let closed = before.is_none_or(|did| did.before.doors.values().all(|it| *it == Fitted::On));
    it.is_some_and(|it| late(&it)) && closed
}

/// Whether anything says that something is not as it should be: a finding that is not about the
/// measuring gear, the owner called at the end.
fn is_answered(l: &Ledger) -> bool {
    let speaks =
        |cause: Cause| cause != Cause::NothingFound && cause.part() != SystemPart::MeasuringGear;
    let called = l.ending() == Some(Ending::SupplyOwnerCalled);
    called || causes::on_sheet(l).iter().any(|finding| speaks(finding.cause))
}

/// Levels whose rise, as it was written last, lies outside the plate's band, with nothing done or said
/// about it.
pub(super) fn left_off(l: &Ledger, least_s: f64) -> Vec<Hit> {
    if !in_use(l) || is_answered(l) {
        return Vec::new();
    }
    let (least, most) = (l.plate().rise.0.si(), l.plate().rise.1.si());
    let off = |level: Level| {
        let (back, supply) = (last(l, Spot::ReturnAir, level)?, last(l, Spot::SupplyAir, level)?);
        let rise = (supply.value_f - back.value_f) / 1.8;
        let outside = rise < least - BEADS_K || rise > most + BEADS_K;
        let earlier = back.index.min(supply.index);
        let counts = !is_outdated(l, earlier) && is_steady(l, &supply, level, least_s);
        (outside && counts).then_some((rise, supply.tick.max(back.tick)))
    };
    let hit = |level: Level| {
        let (rise, tick) = off(level)?;
        let [rise, least, most] = [rise, least, most].map(|it| decimal(it * 1.8, 0));
        let seen = t!("seen-rise-left-off", level = level.label().to_lowercase(), rise = rise);
        Some(Hit::new(tick, seen, t!("true-rise-left-off", least = least, most = most)))
    };
    l.levels().iter().filter_map(|level| hit(*level)).collect()
}
