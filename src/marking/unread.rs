//! Evidence of what was never read: on either stage, running, with the others on, at rest for long
//! enough, and after a repair that moved it.

use super::deed::lower;
use super::ledger::{Hit, Ledger};
use super::measuring::is_right;
use super::repairs;
use crate::catalogue::repair::{Moves, Nature};
use crate::hands::event::{Event, EventKind, Outcome, ReadingFact};
use crate::parts::Level;
use crate::parts::{Port, Screw, Stage};
use crate::words::decimal;

/// Whether a right reading of this place was ever written.
fn has_right(l: &Ledger, port: Port, stages: &[Stage]) -> bool {
    right_ones(l, port, stages).next().is_some()
}

/// Right readings of a place.
fn right_ones<'a>(
    l: &'a Ledger,
    port: Port,
    stages: &'a [Stage],
) -> impl Iterator<Item = &'a ReadingFact> {
    l.wrote().map(|(_, _, fact)| fact).filter(move |fact| {
        fact.reading.port == port && stages.contains(&fact.reading.stage) && is_right(l, fact)
    })
}

/// The states in which the furnace fires.
fn running(l: &Ledger) -> Vec<Stage> {
    Stage::of(l.levels()).filter(|stage| stage.level(l.levels()).is_some()).collect()
}

/// The states in which the furnace fires at a level.
fn firing_at(l: &Ledger, level: Level) -> Vec<Stage> {
    Stage::of(l.levels()).filter(|stage| stage.level(l.levels()) == Some(level)).collect()
}

/// The last repair that moved a port's pressure; a regulator of the supply has a rule of its own. A part that is new was set anew though the old one
/// was sound; what was cleaned for nothing has moved nothing.
fn last_moved(l: &Ledger, port: Port) -> Option<repairs::Mended> {
    repairs::mended(l)
        .filter(|it| it.repair.moves().is_at(port))
        .filter(|it| it.repair.nature() != Nature::Care || it.outcome == Outcome::Changed)
        .last()
}

/// Whether a reading is from after a repair, if there was one.
fn is_after(fact: &ReadingFact, moved: Option<&repairs::Mended>) -> bool {
    moved.is_none_or(|it| fact.settled_tick.is_some_and(|tick| tick > it.tick))
}

/// A manifold reading that is missing, in words, with the repair after which it was due.
fn stage_unread(levels: &str, moved: Option<&repairs::Mended>) -> String {
    match moved {
        Some(it) => {
            let repair = lower(it.repair.label());
            t!("seen-stage-unread-after", levels = levels, repair = repair)
        }
        None => t!("seen-stage-unread", levels = levels),
    }
}

fn running_unread(moved: Option<&repairs::Mended>) -> String {
    match moved {
        Some(it) => t!("seen-running-unread-after", repair = lower(it.repair.label())),
        None => t!("seen-running-unread").into(),
    }
}

fn loaded_unread(moved: Option<&repairs::Mended>) -> String {
    match moved {
        Some(it) => t!("seen-loaded-unread-after", repair = lower(it.repair.label())),
        None => t!("seen-loaded-unread").into(),
    }
}

pub(super) fn stage_never_read(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Manifold);
    let since = |fact: &ReadingFact| is_after(fact, moved.as_ref());
    let mut unread = l
        .levels()
        .iter()
        .filter(|&&level| !right_ones(l, Port::Manifold, &firing_at(l, level)).any(since));
    let Some(first) = unread.next() else { return Vec::new() };
    let missing = if unread.next().is_some() { "both" } else { first.id() };
    // Found unfit at the inlet and left shut off: it need not be fired any further.
    if l.left_shut_off() && has_right(l, Port::Inlet, &running(l)) {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), stage_unread(missing, moved.as_ref()), t!("true-stage-unread"))]
}

pub(super) fn never_read_running(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Inlet);
    if right_ones(l, Port::Inlet, &running(l)).any(|fact| is_after(fact, moved.as_ref())) {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), running_unread(moved.as_ref()), t!("true-running-unread"))]
}

pub(super) fn never_read_with_others(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Inlet);
    if right_ones(l, Port::Inlet, &[Stage::FullLoad]).any(|fact| is_after(fact, moved.as_ref())) {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), loaded_unread(moved.as_ref()), t!("true-loaded-unread"))]
}

pub(super) fn hold_too_short(l: &Ledger) -> Vec<Hit> {
    let wanted_s = l.setup.card.hold_s;
    let longest = l
        .events
        .iter()
        .filter_map(|event| {
            let EventKind::Held { seconds, .. } = event.what else { return None };
            Some(seconds)
        })
        .fold(0.0, f64::max);
    if longest >= wanted_s {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        t!("seen-hold-short", seconds = decimal(longest, 0)),
        t!("true-hold-short", seconds = decimal(wanted_s, 0)),
    )]
}

/// When the supply was set or its regulator renewed last.
pub(super) fn supply_moved(l: &Ledger) -> Option<(usize, &Event)> {
    let moves = |what: &EventKind| {
        matches!(what, EventKind::Turned { screw: Screw::Supply, .. })
            || matches!(what, EventKind::Mended { repair, .. } if repair.moves() == Moves::Supply)
    };
    l.events.iter().enumerate().rev().find(|(_, event)| moves(&event.what))
}

pub(super) fn supply_not_rechecked(l: &Ledger) -> Vec<Hit> {
    let Some((index, event)) = supply_moved(l) else { return Vec::new() };
    let after = |stage: Stage| {
        l.wrote().any(|(at, _, fact)| {
            at > index
                && fact.reading.port == Port::Inlet
                && fact.reading.stage == stage
                && is_right(l, fact)
        })
    };
    // Left shut off, it need not be fired once more for a number.
    let shut_off = l.left_shut_off();
    let mut missing: Vec<&str> = [Stage::Rest, Stage::FullLoad]
        .into_iter()
        .filter(|&stage| stage == Stage::Rest || !shut_off)
        .filter(|&stage| !after(stage))
        .map(|stage| match stage {
            Stage::Rest => t!("unread-inlet-rest"),
            Stage::Firing(_) | Stage::FullLoad => t!("unread-inlet-loaded"),
        })
        .collect();
    let manifold = l.wrote().any(|(at, _, fact)| {
        at > index
            && fact.reading.port == Port::Manifold
            && fact.reading.stage.is_at_full_rate()
            && is_right(l, fact)
    });
    if !manifold && !shut_off {
        missing.push(t!("unread-manifold-high"));
    }
    if missing.is_empty() {
        return Vec::new();
    }
    vec![Hit::new(
        event.tick,
        t!("seen-supply-unread", readings = missing.join("; ")),
        t!("true-supply-unread"),
    )]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::repair::Repair;
    use crate::hands::event::Event;
    use crate::parts::Phase;
    use crate::units::PressureUnit;

    fn read(stage: Stage, tick: u64) -> Event {
        let fact = ReadingFact {
            reading: crate::parts::Reading {
                port: Port::Manifold,
                stage,
                phase: Phase::Found,
                thousandths: 3500,
                unit: PressureUnit::InWc,
            },
            actual: Some((Port::Manifold, stage)),
            shown_pa: Some((870.0, 873.0)),
            shown_unsettled_pa: None,
            true_pa: Some(872.0),
            meter_error_pa: 0.0,
            settled_tick: Some(tick),
            before: None,
            scale_off_pa: None,
        };
        Event { tick, what: EventKind::Wrote(fact) }
    }

    /// What was read on the old gas valve says nothing of the new one.
    #[test]
    fn a_new_gas_valve_is_read_again() {
        let [natural, _] = crate::scenario::builtin::HEALTHY;
        let mut l = Ledger::new(crate::scenario::load(natural.text).unwrap().draw(0));
        l.take([read(Stage::Firing(Level::Low), 10), read(Stage::Firing(Level::High), 20)]);
        assert!(stage_never_read(&l).is_empty());
        let mended = EventKind::Mended {
            repair: Repair::ReplaceGasValve,
            outcome: Outcome::Nothing,
            plate: None,
        };
        l.take([Event { tick: 30, what: mended }, read(Stage::Firing(Level::Low), 40)]);
        // Written now, settled before the repair: the old valve's number.
        let Event { what, .. } = read(Stage::Firing(Level::High), 20);
        l.take([Event { tick: 50, what }]);
        let hits = stage_never_read(&l);
        assert!(hits.len() == 1 && hits[0].seen.contains("on high fire after"), "{hits:?}");
        l.take([read(Stage::Firing(Level::High), 60)]);
        assert!(stage_never_read(&l).is_empty());
    }

    /// A repair that moves the inlet is followed by readings there; cleaning that moved nothing is
    /// not, nor a repair that cannot move it.
    #[test]
    fn what_a_repair_moves_is_read_again() {
        let [natural, _] = crate::scenario::builtin::HEALTHY;
        for (repair, outcome, again) in [
            (Repair::EmptyDripLeg, Outcome::Changed, true),
            (Repair::EmptyDripLeg, Outcome::Nothing, false),
            (Repair::CleanFlameRod, Outcome::Changed, false),
        ] {
            let mut l = Ledger::new(crate::scenario::load(natural.text).unwrap().draw(0));
            let mut inlet = read(Stage::FullLoad, 10);
            if let EventKind::Wrote(fact) = &mut inlet.what {
                fact.reading.port = Port::Inlet;
                fact.actual = Some((Port::Inlet, Stage::FullLoad));
            }
            let mended = EventKind::Mended { repair, outcome, plate: None };
            l.take([inlet, Event { tick: 20, what: mended }]);
            assert_eq!(never_read_with_others(&l).len(), usize::from(again), "{repair:?}");
            assert_eq!(never_read_running(&l).len(), usize::from(again), "{repair:?}");
        }
    }
}
