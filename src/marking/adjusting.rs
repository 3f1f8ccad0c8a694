//! Evidence of what was done to the springs.

use super::brief::Brief;
use super::deed::lower;
use super::ledger::{Caught, Hit, Ledger};
use super::measuring::{HALF_DIGIT_PA, is_right};
use crate::appliance::plate::Target;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::parts::{Fitted, Level, Phase, Port, Screw, Stage};
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
    since_turn_s: Option<f64>,
}

fn turns(l: &Ledger) -> impl Iterator<Item = Turned> + '_ {
    l.events.iter().enumerate().filter_map(|(index, event)| {
        let EventKind::Turned { screw, eighths, set_pa, bottomed, firing, inlet_pa, since_turn_s } =
            event.what
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
    let mut hits = Vec::new();
    for (level, screw) in levels(l) {
        let fires = |stage: Stage| stage.level(l.levels()) == Some(level);
        let Some(first) = turns(l).find(|turn| turn.screw == screw) else { continue };
        let found = l.wrote().any(|(index, _, fact)| {
            index < first.index
                && fact.reading.port == Port::Manifold
                && fact.reading.phase == Phase::Found
                && fires(fact.reading.stage)
        });
        if !found {
            hits.push(Hit::new(first.tick, seen_turned(screw), t!("true-turned-before-found")));
        }
    }
    hits
}

pub(super) fn turned_before_inlet(l: &Ledger) -> Vec<Hit> {
    let Some(first) = turns(l).find(|turn| turn.screw != Screw::Supply) else {
        return Vec::new();
    };
    let known = l.wrote().any(|(index, _, fact)| {
        index < first.index
            && fact.reading.port == Port::Inlet
            && fact.reading.stage != Stage::Rest
            && is_right(l, fact)
    });
    if known {
        return Vec::new();
    }
    vec![Hit::new(
        first.tick,
        seen_turned(first.screw),
        t!("true-turned-before-inlet", pressure = inwc(first.inlet_pa)),
    )]
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
    levels(l)
        .filter_map(|(level, screw)| {
            let target = target(l, screw)?;
            // Left shut off, a stage that nobody touched is somebody else's to set.
            let touched = turns(l).any(|turn| turn.screw == screw);
            let out_pa = target.band().out_by_pa(left.set_pa[level]);
            let off = out_pa > HALF_DIGIT_PA && (touched || !l.left_shut_off());
            off.then(|| {
                let side = if left.set_pa[level] < target.pa { "below" } else { "above" };
                Hit::new(
                    tick,
                    t!(
                        "seen-outside-band",
                        stage = level.id(),
                        set = inwc(left.set_pa[level]),
                        target = inwc(target.pa),
                        tolerance = inwc(target.tolerance_pa)
                    ),
                    t!("true-outside-band", side = side),
                )
            })
        })
        .collect()
}

pub(super) fn big_jumps(l: &Ledger, least_s: f64) -> Vec<Hit> {
    // Turns that follow each other without a wait are one: two quick eighths are a quarter turn.
    let mut together: Option<(Screw, i16)> = None;
    let mut hits = Vec::new();
    for turn in turns(l) {
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
        let seen =
            t!("seen-big-jump", screw = lower(turn.screw.label()), eighths = format!("{sum:+}"));
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

pub(super) fn wrong_screw(l: &Ledger) -> Vec<Hit> {
    turns(l)
        .filter(|turn| turn.screw.level().is_some_and(|level| turn.firing != Some(level)))
        .map(|turn| {
            let burned = match turn.firing {
                None => "out",
                Some(level) => level.id(),
            };
            let truth = t!("true-wrong-screw", burned = burned);
            Hit::new(turn.tick, seen_turned(turn.screw), truth)
        })
        .collect()
}

pub(super) fn needless_turn(l: &Ledger) -> Vec<Hit> {
    levels(l)
        .filter_map(|(_, screw)| {
            let first = turns(l).find(|turn| turn.screw == screw)?;
            let target = target(l, screw)?;
            let out_pa = target.band().out_by_pa(first.before_pa);
            (out_pa <= -HALF_DIGIT_PA).then(|| {
                let truth = t!("true-needless-turn", pressure = inwc(first.before_pa));
                Hit::new(first.tick, seen_turned(screw), truth)
            })
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
    let mut hits = Vec::new();
    for (level, screw) in levels(l) {
        let fires = |stage: Stage| stage.level(l.levels()) == Some(level);
        let Some(last) = turns(l).filter(|turn| turn.screw == screw).last() else { continue };
        let capped = l
            .did()
            .filter(|did| {
                did.index > last.index && *did.action == Action::Cap { screw, to: Fitted::On }
            })
            .last();
        let Some(capped) = capped else { continue };
        let read = l.wrote().any(|(index, _, fact)| {
            index > capped.index
                && fact.reading.port == Port::Manifold
                && fires(fact.reading.stage)
                && fact.settled_tick.is_some_and(|tick| tick > capped.tick)
                && is_right(l, fact)
        });
        if !read {
            let seen = t!("seen-not-read-capped", screw = lower(screw.label()));
            hits.push(Hit::new(capped.tick, seen, t!("true-not-read-capped")));
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
        .chain(super::repairs::supply_not_yours(l, brief))
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

/// Half a digit of an ordinary meter, in pascals: nobody reads less over a limit (0.05 in. w.c.).
const DIGIT_PA: f64 = 0.05 * crate::units::PA_PER_INWC;

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
