//! Evidence of what was never read: on either stage, running, with the others on, at rest for long
//! enough, and after a repair that moved it.

use super::ledger::{Hit, Ledger};
use super::measuring::is_right;
use super::repairs;
use crate::catalogue::repair::{Moves, Nature};
use crate::hands::event::{Event, Happening, Outcome, ReadingFact};
use crate::parts::{Port, Screw, Stage};

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

/// A reading that is missing, in words.
fn none_right(what: &str, moved: Option<&repairs::Mended>) -> String {
    match moved {
        Some(it) => format!("no right {what} after: {}", it.repair.label().to_lowercase()),
        None => format!("no right {what}"),
    }
}

pub(super) fn stage_never_read(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Manifold);
    let since = |fact: &ReadingFact| is_after(fact, moved.as_ref());
    let high = [Stage::High, Stage::HighWithOthers];
    let missing: Vec<&str> = [("low", &[Stage::Low][..]), ("high", &high[..])]
        .into_iter()
        .filter(|(_, stages)| !right_ones(l, Port::Manifold, stages).any(since))
        .map(|(name, _)| name)
        .collect();
    // Found unfit at the inlet and left shut off: it need not be fired any further.
    let stopped_early = l.left_shut_off()
        && has_right(l, Port::Inlet, &[Stage::Low, Stage::High, Stage::HighWithOthers]);
    if missing.is_empty() || stopped_early {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        none_right(&format!("manifold reading on {}", missing.join(" and ")), moved.as_ref()),
        "that stage's setting is unknown",
    )]
}

pub(super) fn never_read_running(l: &Ledger) -> Vec<Hit> {
    let running = [Stage::Low, Stage::High, Stage::HighWithOthers];
    let moved = last_moved(l, Port::Inlet);
    if right_ones(l, Port::Inlet, &running).any(|fact| is_after(fact, moved.as_ref())) {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        none_right("inlet reading while firing", moved.as_ref()),
        "what the supply delivers is unknown",
    )]
}

pub(super) fn never_read_with_others(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Inlet);
    if right_ones(l, Port::Inlet, &[Stage::HighWithOthers])
        .any(|fact| is_after(fact, moved.as_ref()))
    {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        none_right("inlet reading with the other appliances on", moved.as_ref()),
        "what the supply delivers under full load is unknown",
    )]
}

pub(super) fn hold_too_short(l: &Ledger) -> Vec<Hit> {
    let wanted_s = l.setup.card.hold_s;
    let longest = l
        .events
        .iter()
        .filter_map(|event| match event.what {
            Happening::Held { seconds, .. } => Some(seconds),
            _ => None,
        })
        .fold(0.0, f64::max);
    if longest >= wanted_s {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        format!("longest hold at rest with the meter on the inlet: {longest:.0} s"),
        format!("the card asks for {wanted_s:.0} s"),
    )]
}

/// When the supply was set or its regulator renewed last.
pub(super) fn supply_moved(l: &Ledger) -> Option<(usize, &Event)> {
    l.events.iter().enumerate().rev().find(|(_, event)| match event.what {
        Happening::Turned { screw, .. } => screw == Screw::Supply,
        Happening::Mended { repair, .. } => repair.moves() == Moves::Supply,
        _ => false,
    })
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
    let mut missing: Vec<&str> = [Stage::Rest, Stage::HighWithOthers]
        .into_iter()
        .filter(|&stage| stage == Stage::Rest || !shut_off)
        .filter(|&stage| !after(stage))
        .map(|stage| match stage {
            Stage::Rest => "inlet at rest",
            Stage::Low | Stage::High | Stage::HighWithOthers => "inlet on high with the others",
        })
        .collect();
    let high = [Stage::High, Stage::HighWithOthers];
    let manifold = l.wrote().any(|(at, _, fact)| {
        at > index
            && fact.reading.port == Port::Manifold
            && high.contains(&fact.reading.stage)
            && is_right(l, fact)
    });
    if !manifold && !shut_off {
        missing.push("manifold on high");
    }
    if missing.is_empty() {
        return Vec::new();
    }
    vec![Hit::new(
        event.tick,
        format!("not read afterwards: {}", missing.join("; ")),
        "everything behind the regulator moved",
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
        Event { tick, what: Happening::Wrote(fact) }
    }

    /// What was read on the old gas valve says nothing of the new one.
    #[test]
    fn a_new_gas_valve_is_read_again() {
        let [natural, _] = crate::scenario::builtin::HEALTHY;
        let mut l = Ledger::new(crate::scenario::load(natural.text).unwrap().draw(0));
        l.take([read(Stage::Low, 10), read(Stage::High, 20)]);
        assert!(stage_never_read(&l).is_empty());
        let mended = Happening::Mended {
            repair: Repair::ReplaceGasValve,
            outcome: Outcome::Nothing,
            plate: None,
        };
        l.take([Event { tick: 30, what: mended }, read(Stage::Low, 40)]);
        // Written now, settled before the repair: the old valve's number.
        let Event { what, .. } = read(Stage::High, 20);
        l.take([Event { tick: 50, what }]);
        let hits = stage_never_read(&l);
        assert!(hits.len() == 1 && hits[0].seen.contains("on high after"), "{hits:?}");
        l.take([read(Stage::High, 60)]);
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
            let mut inlet = read(Stage::HighWithOthers, 10);
            if let Happening::Wrote(fact) = &mut inlet.what {
                fact.reading.port = Port::Inlet;
                fact.actual = Some((Port::Inlet, Stage::HighWithOthers));
            }
            let mended = Happening::Mended { repair, outcome, plate: None };
            l.take([inlet, Event { tick: 20, what: mended }]);
            assert_eq!(never_read_with_others(&l).len(), usize::from(again), "{repair:?}");
            assert_eq!(never_read_running(&l).len(), usize::from(again), "{repair:?}");
        }
    }
}
