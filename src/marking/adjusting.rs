//! Evidence of what was done to the springs.

use super::brief::Brief;
use super::deed::{as_written, lower, turn_words};
use super::ledger::{Caught, Hit, Ledger};
use super::measuring::HALF_DIGIT_PA;
use super::numbers::{Number, numbers, slip_at};
use super::unread::{firing_at, is_level_unread};
use crate::appliance::plate::Target;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::parts::{Fitted, Level, Phase, Port, Screw, Stage};
use crate::rules::Evidence;
use crate::rules::evidence::{Setting, Unread};
use crate::setup::SupplyRight;
use crate::units::inwc;
use crate::words::decimal;

/// Turn of a screw, as an event.
struct Turned {
    index: usize,
    tick: u64,
    screw: Screw,
    eighths: i16,
    before_pa: f64,
    bottomed: bool,
    firing: Option<Level>,
    inlet_pa: f64,
    metered: Option<Port>,
    since_turn_s: Option<f64>,
}

fn turns(l: &Ledger) -> impl Iterator<Item = Turned> + '_ {
    l.events.iter().enumerate().filter_map(|(index, event)| {
        let EventKind::Turned {
            screw,
            eighths,
            set_pa,
            bottomed,
            firing,
            inlet_pa,
            metered,
            since_turn_s,
        } = event.what
        else {
            return None;
        };
        Some(Turned {
            index,
            tick: event.tick,
            screw,
            eighths,
            before_pa: set_pa.0,
            bottomed,
            firing,
            inlet_pa,
            metered,
            since_turn_s,
        })
    })
}

/// Plate's target of a stage's screw; none for the supply's.
fn target(l: &Ledger, screw: Screw) -> Option<Target> {
    screw.level().map(|level| l.plate().figures().manifold[level])
}

/// The furnace's levels, each with the screw under its spring.
fn levels(l: &Ledger) -> impl Iterator<Item = (Level, Screw)> {
    l.levels().iter().map(|&level| (level, level.screw()))
}

/// A screw that was turned, in words.
fn seen_turned(screw: Screw) -> String {
    t!("seen-turned", screw = lower(screw.label()))
}

pub(super) fn turned_before_found(l: &Ledger) -> Vec<Hit> {
    let all = numbers(l);
    let mut hits = Vec::new();
    for (level, screw) in levels(l) {
        let Some(first) = turns(l).find(|turn| turn.screw == screw) else { continue };
        let states = firing_at(l, level);
        let found = all
            .iter()
            .filter(|it| it.reading.phase == Phase::Found && it.is_for(Port::Manifold, &states))
            .any(|it| is_before(it, &first) || is_from_before(l, it, &first));
        if !found {
            let hit = Hit::new(first.tick, seen_turned(screw), t!("true-turned-before-found"));
            // A level that was never read at all is told by its own rule.
            let never =
                is_level_unread(l, &all, level).then_some(Evidence::Unread(Unread::StageNeverRead));
            hits.push(hit.following(never));
        }
    }
    hits
}

/// Whether a number was written before a turn and was read, rightly written or not.
fn is_before(it: &Number, turn: &Turned) -> bool {
    it.index < turn.index && it.spell().is_some()
}

/// Whether a number that was written after a turn stood before it, and nothing has stood there since:
/// it was kept in mind while the hand was on the screw.
fn is_from_before(l: &Ledger, it: &Number, turn: &Turned) -> bool {
    let Some(stood) = it.stood().filter(|stood| stood.until < turn.tick) else { return false };
    let since = l.events[turn.index..it.index.max(turn.index)].iter().any(|event| {
        let EventKind::Showed(spell) = event.what else { return false };
        let there = spell.is(it.reading.port, it.reading.stage);
        there && spell.stood.is_some_and(|other| other.since > stood.until)
    });
    !since
}

/// States of the inlet in which it must be known before a screw is turned: one of each list.
fn inlet_due(l: &Ledger, screw: Screw) -> Vec<Vec<Stage>> {
    let under_load = |from: Option<Level>| {
        let levels = l.levels().iter().filter(|&&level| from.is_none_or(|from| level >= from));
        let mut states: Vec<Stage> = levels.map(|&level| Stage::Firing(level)).collect();
        states.push(Stage::FullLoad);
        states
    };
    match screw.level() {
        // A greater load than the level's own is the harder proof.
        Some(level) => vec![under_load(Some(level))],
        None => vec![vec![Stage::Rest], under_load(None)],
    }
}

/// Whether a right number at the inlet, written before a turn, lies outside what plate and nameplate
/// allow: more need not be known of it.
fn is_supply_out(l: &Ledger, all: &[Number], turn: &Turned) -> bool {
    let inlet = |it: &&Number| it.index < turn.index && it.reading.port == Port::Inlet;
    all.iter().filter(inlet).any(|it| super::grounds::outside(l, it))
}

pub(super) fn turned_before_inlet(l: &Ledger) -> Vec<Hit> {
    let all = numbers(l);
    let mine = l.setup.card.supply == SupplyRight::Trainee;
    let supply = mine.then_some(Screw::Supply);
    let mut hits = Vec::new();
    for screw in levels(l).map(|(_, screw)| screw).chain(supply) {
        let Some(first) = turns(l).find(|turn| turn.screw == screw) else { continue };
        let known = |stages: &Vec<Stage>| {
            all.iter().any(|it| it.is_for(Port::Inlet, stages) && is_before(it, &first))
        };
        let is_known = inlet_due(l, screw).iter().all(known)
            || (screw == Screw::Supply && is_supply_out(l, &all, &first));
        if !is_known {
            let pressure = inwc(first.inlet_pa);
            let truth = match screw.level() {
                Some(_) => t!("true-turned-before-inlet", pressure = pressure),
                None => t!("true-supply-turned-before-inlet", pressure = pressure),
            };
            hits.push(Hit::new(first.tick, seen_turned(screw), truth));
        }
    }
    hits.sort_by_key(|hit| hit.tick);
    hits
}

/// Turns that no number tells the effect of: the meter is dark, or its hose is not where the screw's
/// pressure is read.
pub(super) fn turned_unseen(l: &Ledger) -> Vec<Hit> {
    let mine = l.setup.card.supply == SupplyRight::Trainee;
    turns(l)
        .filter(|turn| match turn.screw.level() {
            Some(_) => turn.metered != Some(Port::Manifold),
            None => mine && turn.metered.is_none(),
        })
        .map(|turn| Hit::new(turn.tick, seen_turned(turn.screw), t!("true-turned-unseen")))
        .collect()
}

/// Stages left set above their band while the supply was too low to show it.
pub(super) fn cranked(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, left)) = l.left() else { return Vec::new() };
    let mut hits = Vec::new();
    for (level, screw) in levels(l) {
        let Some(target) = target(l, screw) else { continue };
        let band = target.band();
        let last = turns(l).filter(|turn| turn.screw == screw).last();
        let Some(last) = last else { continue };
        // With the inlet less than an inch of water above the setting, the spring cannot show.
        let hidden = last.inlet_pa - left.set_pa[level] < crate::units::PA_PER_INWC;
        if band.is_above(left.set_pa[level]) && hidden && !left.bottomed[level] {
            hits.push(Hit::new(
                tick,
                t!("seen-cranked", screw = lower(screw.label()), pressure = inwc(last.inlet_pa)),
                t!("true-cranked", set = inwc(left.set_pa[level]), most = inwc(band.most_pa)),
            ));
        }
    }
    hits
}

pub(super) fn left_outside_band(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, left)) = l.left() else { return Vec::new() };
    let all = numbers(l);
    let hit = |(level, target): (Level, Target)| {
        let states = firing_at(l, level);
        let read = all.iter().rfind(|it| it.is_for(Port::Manifold, &states));
        let stage = level.id();
        let seen = match read {
            Some(it) => {
                t!("seen-outside-band", stage = stage, number = as_written(&it.reading))
            }
            None => t!("seen-outside-band-unread", stage = stage),
        };
        let truth = t!(
            "true-outside-band",
            set = inwc(left.set_pa[level]),
            target = inwc(target.pa),
            tolerance = inwc(target.tolerance_pa)
        );
        Hit::new(tick, seen, truth)
    };
    outside_band(l).map(hit).collect()
}

/// Levels that are left outside their band, each with what the plate asks for.
fn outside_band(l: &Ledger) -> impl Iterator<Item = (Level, Target)> {
    let all = numbers(l);
    let left = l.left().map(|(_, _, left)| left);
    levels(l).filter_map(move |(level, screw)| {
        let (left, target) = left.zip(target(l, screw))?;
        // Left shut off, a stage that nobody touched is somebody else's to set.
        let touched = turns(l).any(|turn| turn.screw == screw);
        let out_pa = target.band().out_by_pa(left.set_pa[level]);
        let off = out_pa > HALF_DIGIT_PA && (touched || !l.left_shut_off());
        (off && !is_read_inside(l, &all, level, target)).then_some((level, target))
    })
}

/// Whether the last right number of a level, read after its last turn, stands inside the band, on a
/// meter that may be off by no more than a meter may: nobody could read that it is out.
fn is_read_inside(l: &Ledger, all: &[Number], level: Level, target: Target) -> bool {
    let turned = turns(l).filter(|turn| turn.screw == level.screw()).last();
    let states = firing_at(l, level);
    let read = all.iter().filter(|it| it.is_for(Port::Manifold, &states) && it.is_right());
    let mut last = read.filter(|it| turned.as_ref().is_none_or(|turn| it.is_read_after(turn.tick)));
    let Some(last) = last.next_back() else { return false };
    let band = target.band();
    let inside =
        last.stood().is_some_and(|it| band.contains(it.least_pa) && band.contains(it.most_pa));
    inside && last.spell().is_some_and(|spell| spell.error_pa.abs() <= DIGIT_PA)
}

pub(super) fn big_jumps(l: &Ledger, least_s: f64) -> Vec<Hit> {
    // Turns that follow each other without a wait are one: two quick eighths are a quarter turn. A
    // supply regulator's spring is long: whole turns are usual there.
    let mut together: Option<(Screw, i16)> = None;
    let mut hits = Vec::new();
    for turn in turns(l).filter(|turn| turn.screw.level().is_some()) {
        let sum = match together {
            Some((screw, so_far))
                if screw == turn.screw && turn.since_turn_s.is_some_and(|s| s < least_s) =>
            {
                so_far.saturating_add(turn.eighths)
            }
            _ => turn.eighths,
        };
        together = Some((turn.screw, sum));
        if sum.unsigned_abs() <= 4 {
            continue;
        }
        // What goes on from here is a new jump.
        together = None;
        let since = match turn.since_turn_s {
            Some(s) => t!("true-big-jump", seconds = decimal(s, 1)),
            None => t!("true-big-jump-first").into(),
        };
        let seen = t!("seen-big-jump", screw = lower(turn.screw.label()), turn = turn_words(sum));
        hits.push(Hit::new(turn.tick, seen, since));
    }
    hits
}

pub(super) fn bottomed(l: &Ledger) -> (Vec<Hit>, Vec<Hit>) {
    let mut left = Vec::new();
    let mut once = Vec::new();
    let end = l.end();
    for (level, screw) in levels(l) {
        let Some(turn) = turns(l).find(|turn| turn.screw == screw && turn.bottomed) else {
            continue;
        };
        let seen = t!("seen-bottomed", screw = lower(screw.label()));
        let hit = Hit::new(turn.tick, seen, t!("true-bottomed"));
        if end.is_some_and(|(_, _, truth)| truth.bottomed[level]) {
            left.push(hit);
        } else {
            once.push(hit);
        }
    }
    (left, once)
}

/// Whether the screw's own level did not burn when it was turned.
fn is_wrong(turn: &Turned) -> bool {
    turn.screw.level().is_some_and(|level| turn.firing != Some(level))
}

pub(super) fn wrong_screw(l: &Ledger) -> Vec<Hit> {
    let all: Vec<Turned> = turns(l).collect();
    let mut hits = Vec::new();
    let mut rest = all.as_slice();
    while let [turn, after @ ..] = rest {
        rest = after;
        if !is_wrong(turn) {
            continue;
        }
        let burned = turn.firing.map_or("out", Level::id);
        let truth = t!("true-wrong-screw", burned = burned);
        let mut hit = Hit::new(turn.tick, seen_turned(turn.screw), truth);
        // Noticed and turned back at once, it is one slip.
        if let [back, after @ ..] = after
            && back.screw == turn.screw
            && back.eighths == -turn.eighths
        {
            hit.caught = Caught::InTime;
            rest = after;
        }
        hits.push(hit);
    }
    hits
}

pub(super) fn needless_turn(l: &Ledger) -> Vec<Hit> {
    let is_outside = |level: Level| outside_band(l).any(|(other, _)| other == level);
    levels(l)
        .filter_map(|(level, screw)| {
            let own = || turns(l).filter(|turn| turn.screw == screw);
            let first = own().next()?;
            let target = target(l, screw)?;
            // Turned only while another level burned, it is the wrong screw.
            if !is_right_as_found(target, first.before_pa) || own().all(|it| is_wrong(&it)) {
                return None;
            }
            let truth = t!("true-needless-turn", pressure = inwc(first.before_pa));
            let hit = Hit::new(first.tick, seen_turned(screw), truth);
            // Turned out of its band and left there, that is the slip.
            Some(hit.following(
                is_outside(level).then_some(Evidence::Setting(Setting::LeftOutsideBand)),
            ))
        })
        .collect()
}

pub(super) fn cap_off(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, left)) = l.left() else { return Vec::new() };
    left.caps
        .into_iter()
        .filter(|(_, cap)| *cap == Fitted::Off)
        .map(|(screw, _)| {
            let seen = t!("seen-cap-off", screw = lower(screw.label()));
            Hit::new(tick, seen, t!("true-cap-off"))
        })
        .collect()
}

pub(super) fn not_read_with_cap(l: &Ledger) -> Vec<Hit> {
    let all = numbers(l);
    let mut hits = Vec::new();
    for (level, screw) in levels(l) {
        let Some(last) = turns(l).filter(|turn| turn.screw == screw).last() else { continue };
        let capped = l
            .did()
            .filter(|did| {
                did.index > last.index && *did.action == Action::Cap { screw, to: Fitted::On }
            })
            .last();
        let Some(capped) = capped else { continue };
        let states = firing_at(l, level);
        let since: Vec<Number> = all.iter().filter(|it| it.index > capped.index).copied().collect();
        let there = |it: &&Number| it.is_for(Port::Manifold, &states);
        let read = since.iter().filter(there).any(|it| it.is_read_after(capped.tick));
        if !read {
            let seen = t!("seen-not-read-capped", screw = lower(screw.label()));
            let hit = Hit::new(capped.tick, seen, t!("true-not-read-capped"));
            // A level that was never read at all is told by its own rule.
            let never =
                is_level_unread(l, &all, level).then_some(Evidence::Unread(Unread::StageNeverRead));
            hits.push(hit.following(slip_at(&since, Port::Manifold, &states).or(never)));
        }
    }
    hits
}

pub(super) fn supply_not_yours(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    if l.setup.card.supply == SupplyRight::Trainee {
        return Vec::new();
    }
    turns(l)
        .filter(|turn| turn.screw == Screw::Supply)
        .map(|turn| {
            let truth = t!("true-supply-turned", owner = &l.setup.card.supply_owner);
            Hit::new(turn.tick, t!("seen-supply-turned"), truth)
        })
        .chain(super::repairs::on_supply(l, brief))
        .collect()
}

/// A supply that the trainee may set, left below what it must deliver.
pub(super) fn supply_left_low(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, left)) = l.left() else { return Vec::new() };
    let least = l.setup.supply.delivery_limits_pa.0;
    if l.setup.card.supply == SupplyRight::OwnerOnly
        || l.said_shut_off()
        || left.supply_set_pa >= least
    {
        return Vec::new();
    }
    vec![Hit::new(
        tick,
        t!("seen-supply-low", set = inwc(left.supply_set_pa), least = inwc(least)),
        t!("true-supply-low"),
    )]
}

/// How far a spring may stand over the nameplate before a meter at the inlet port shows it on the
/// smallest load, in pascals (0.2 in. w.c.: the droop of the regulator and the loss of the pipe).
const HIDDEN_PA: f64 = 0.2 * crate::units::PA_PER_INWC;

/// What a meter may be off by, in pascals: nobody reads less over a limit (0.05 in. w.c.).
const DIGIT_PA: f64 = 0.05 * crate::units::PA_PER_INWC;

/// Whether a setting was found inside its band by so much that a meter tells it.
pub(super) fn is_right_as_found(target: Target, before_pa: f64) -> bool {
    target.band().out_by_pa(before_pa) <= -DIGIT_PA
}

/// A supply left above what it may deliver, whoever set it so, where the trainee may set it.
pub(super) fn supply_over_maximum(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, left)) = l.left() else { return Vec::new() };
    let turned = turns(l).any(|turn| turn.screw == Screw::Supply);
    let most = l.setup.supply.delivery_limits_pa.1;
    // One's own to set is one's own to find, unless nothing burns on it any more.
    let mine = l.setup.card.supply == SupplyRight::Trainee && !l.said_shut_off();
    let mut hits = Vec::new();
    if (turned || mine) && left.supply_set_pa > most + HIDDEN_PA {
        hits.push(Hit::new(
            tick,
            t!("seen-supply-high", set = inwc(left.supply_set_pa), most = inwc(most)),
            t!("true-supply-high"),
        ));
    }
    // What stood on the valve before a hand was on the supply is not of that hand's doing.
    let first = turns(l).find(|turn| turn.screw == Screw::Supply).map(|turn| turn.index);
    for (index, event) in l.events.iter().enumerate() {
        if let EventKind::ValveOverPressure { pa } = event.what
            && first.is_some_and(|first| first < index)
            && pa > l.plate().valve_max.si() + DIGIT_PA
        {
            let mut hit = Hit::new(
                event.tick,
                t!(
                    "seen-valve-pressure",
                    pressure = inwc(pa),
                    most = inwc(l.plate().valve_max.si())
                ),
                t!("true-valve-pressure"),
            );
            if left.supply_set_pa <= most {
                hit.caught = Caught::InTime;
            }
            hits.push(hit);
        }
    }
    hits
}
