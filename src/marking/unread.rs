//! Evidence of what was never read: at the manifold on each level, at the inlet in each state, at rest
//! for long enough, as found, and after a repair that moved it.

use super::deed::lower;
use super::ledger::{Hit, Ledger};
use super::numbers::{Number, numbers, slip_at};
use super::repairs;
use super::spells::watched_s;
use crate::catalogue::repair::{Moves, Nature};
use crate::hands::event::{Event, EventKind, Outcome};
use crate::parts::{Level, Phase, Port, Screw, Stage};
use crate::rules::evidence::{Unread, Writing};
use crate::rules::{Evidence, Slip};
use crate::units::TICK_S;
use crate::words::decimal;

/// Whether a right number for one of these places is on the list.
fn has_right(all: &[Number], port: Port, stages: &[Stage]) -> bool {
    all.iter().any(|it| it.is_for(port, stages) && it.is_right())
}

/// The states in which the furnace fires.
fn running(l: &Ledger) -> Vec<Stage> {
    Stage::of(l.levels()).filter(|stage| stage.level(l.levels()).is_some()).collect()
}

/// The states in which the furnace fires at a level.
pub(super) fn firing_at(l: &Ledger, level: Level) -> Vec<Stage> {
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

/// Numbers from after a repair, if there was one.
fn after(l: &Ledger, moved: Option<&repairs::Mended>) -> Vec<Number> {
    let mut all = numbers(l);
    if let Some(it) = moved {
        all.retain(|number| match number.is_right() {
            true => number.is_read_after(it.tick),
            false => number.tick > it.tick,
        });
    }
    all
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

/// Whether a level was never rightly read at the manifold, and no slip on its line tells why.
pub(super) fn is_level_unread(l: &Ledger, all: &[Number], level: Level) -> bool {
    let states = firing_at(l, level);
    !has_right(all, Port::Manifold, &states) && slip_at(all, Port::Manifold, &states).is_none()
}

pub(super) fn stage_never_read(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Manifold);
    let all = after(l, moved.as_ref());
    // Found unfit at the inlet and left shut off: it need not be fired any further.
    if l.left_shut_off() && has_right(&numbers(l), Port::Inlet, &running(l)) {
        return Vec::new();
    }
    let unread = |level: &&Level| !has_right(&all, Port::Manifold, &firing_at(l, **level));
    let hit = |levels: &[&Level], slip: Option<Evidence>| {
        let missing = if levels.len() > 1 { "both" } else { levels.first()?.id() };
        let seen = stage_unread(missing, moved.as_ref());
        Some(Hit::new(l.last_tick(), seen, t!("true-stage-unread")).following(slip))
    };
    let slip = |level: &Level| slip_at(&all, Port::Manifold, &firing_at(l, *level));
    let (slips, empty): (Vec<&Level>, Vec<&Level>) =
        l.levels().iter().filter(unread).partition(|level| slip(level).is_some());
    let of_slip = slips.first().and_then(|level| slip(level));
    hit(&empty, None).into_iter().chain(hit(&slips, of_slip)).collect()
}

pub(super) fn never_read_running(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Inlet);
    let all = after(l, moved.as_ref());
    if has_right(&all, Port::Inlet, &running(l)) {
        return Vec::new();
    }
    let seen = running_unread(moved.as_ref());
    let slip = slip_at(&all, Port::Inlet, &running(l));
    vec![Hit::new(l.last_tick(), seen, t!("true-running-unread")).following(slip)]
}

pub(super) fn never_read_with_others(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Inlet);
    let all = after(l, moved.as_ref());
    if has_right(&all, Port::Inlet, &[Stage::FullLoad]) {
        return Vec::new();
    }
    let seen = loaded_unread(moved.as_ref());
    let slip = slip_at(&all, Port::Inlet, &[Stage::FullLoad]);
    vec![Hit::new(l.last_tick(), seen, t!("true-loaded-unread")).following(slip)]
}

/// Each state of the furnace alone in which the inlet was not read. Full load and the lock-up after
/// flow have rules of their own.
pub(super) fn inlet_state_unread(l: &Ledger) -> Vec<Hit> {
    let all = numbers(l);
    Stage::of(l.levels())
        .filter(|stage| !matches!(stage, Stage::FullLoad | Stage::RestAgain))
        .filter(|stage| !has_right(&all, Port::Inlet, &[*stage]))
        .map(|stage| {
            let seen = t!("seen-inlet-state-unread", state = stage.label());
            let hit = Hit::new(l.last_tick(), seen, t!("true-inlet-state-unread"));
            hit.following(slip_at(&all, Port::Inlet, &[stage]))
        })
        .collect()
}

/// Numbers stand on the sheet, and none of them as found.
pub(super) fn nothing_as_found(l: &Ledger) -> Vec<Hit> {
    let all = numbers(l);
    if all.is_empty() || all.iter().any(|it| it.reading.phase == Phase::Found) {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), t!("seen-nothing-found"), t!("true-nothing-found"))]
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
    // The hold begins with the tick after the hand's.
    if longest + 1.5 * TICK_S >= wanted_s {
        return Vec::new();
    }
    // Taken for rest while another appliance burned: that is the slip.
    let elsewhere = Evidence::Writing(Writing::Number(Slip::OtherState));
    let slip = slip_at(&numbers(l), Port::Inlet, &[Stage::Rest]);
    let hit = Hit::new(
        l.last_tick(),
        t!("seen-hold-short", seconds = decimal(longest, 0)),
        t!("true-hold-short", seconds = decimal(wanted_s, 0)),
    );
    vec![hit.following(slip.filter(|slip| *slip == elsewhere))]
}

/// No right number at rest after flow, or one that was watched for less than this, in seconds.
pub(super) fn lock_up_unread(l: &Ledger, least_s: f64) -> Vec<Hit> {
    let all = numbers(l);
    let places = [Stage::RestAgain];
    let read = all.iter().filter(|it| it.is_for(Port::Inlet, &places) && it.is_right());
    let watched = read.filter_map(|it| Some(watched_s(l, it.spell()?, it.index)));
    let Some(longest_s) = watched.reduce(f64::max) else {
        let hit = Hit::new(l.last_tick(), t!("seen-lock-up-unread"), t!("true-lock-up-unread"));
        return vec![hit.following(slip_at(&all, Port::Inlet, &places))];
    };
    let wanted_s = least_s.min(l.setup.card.hold_s);
    // It begins with the tick after the one that ended the flow.
    if longest_s + 1.5 * TICK_S >= wanted_s {
        return Vec::new();
    }
    let seen = t!("seen-lock-up-short", seconds = decimal(longest_s, 0));
    vec![Hit::new(l.last_tick(), seen, t!("true-lock-up-short", seconds = decimal(wanted_s, 0)))]
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
    let all = numbers(l);
    let since: Vec<Number> = all.iter().filter(|it| it.index > index).copied().collect();
    let after = |port: Port, stages: &[Stage]| {
        since
            .iter()
            .filter(|it| it.is_for(port, stages))
            .any(|it| it.is_right() && it.is_read_after(event.tick))
    };
    let full: Vec<Stage> = running(l).into_iter().filter(|it| it.is_at_full_rate()).collect();
    let at_rest = vec![Stage::Rest, Stage::RestAgain];
    let mut due = vec![Due::new(Port::Inlet, at_rest, t!("unread-inlet-rest"))];
    // Left shut off, it need not be fired once more for a number.
    if !l.left_shut_off() {
        due.push(Due::new(Port::Inlet, vec![Stage::FullLoad], t!("unread-inlet-loaded")));
        due.push(Due::new(Port::Manifold, full, t!("unread-manifold-high")));
    }
    due.retain(|it| !after(it.port, &it.stages));
    // The full rate never read at the manifold at all is told by its own rule.
    let never = l.levels().last().is_some_and(|&top| is_level_unread(l, &all, top));
    // So is full load that was never read at the inlet.
    let never_loaded = !has_right(&all, Port::Inlet, &[Stage::FullLoad]);
    let cause = |it: &Due| {
        let never = it.port == Port::Manifold && never;
        let never_loaded = it.stages == [Stage::FullLoad] && never_loaded;
        slip_at(&since, it.port, &it.stages)
            .or(never.then_some(Evidence::Unread(Unread::StageNeverRead)))
            .or(never_loaded.then_some(Evidence::Unread(Unread::NeverReadWithOthers)))
    };
    let told = |missing: &[Due], cause: Option<Evidence>| {
        let names: Vec<&str> = missing.iter().map(|it| it.name).collect();
        let seen = t!("seen-supply-unread", readings = names.join("; "));
        Hit::new(event.tick, seen, t!("true-supply-unread")).following(cause)
    };
    let (follow, missing): (Vec<Due>, Vec<Due>) =
        due.into_iter().partition(|it| cause(it).is_some());
    let first = follow.first().map(|it| told(&follow, cause(it)));
    (!missing.is_empty()).then(|| told(&missing, None)).into_iter().chain(first).collect()
}

/// A reading that is due after the supply was moved.
struct Due {
    port: Port,
    stages: Vec<Stage>,
    name: &'static str,
}

impl Due {
    fn new(port: Port, stages: Vec<Stage>, name: &'static str) -> Self {
        Self { port, stages, name }
    }
}
