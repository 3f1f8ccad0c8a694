//! Deciding about the supply, and setting the two stages: a little, wait, look.

use super::burn::{look_at_flames, valve_shuts};
use super::course::Course;
use super::diagnosis::Diagnosis;
use super::flue;
use super::mind::Mind;
use super::run_furnace::{read_manifold, run_first, run_full};
use super::screw::{MOST_TRIES, turn_back};
use super::step::{Step, act, give_up, go, others, pause, reach, stop, take, think, until_steady};
use crate::appliance::plate::{GasFigures, Target};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Level, OnOff, Phase, Place, Screw, Stage};
use crate::procedure::{Goal, number};
use crate::senses::seen::{Seen, Sound};
use crate::units::PA_PER_INWC;

/// How near to the target a stage is set, as a share of the plate's tolerance.
const NEAR: f64 = 0.4;
/// Head over the manifold below which the supply, not the spring, holds the pressure down: in
/// pascals (1 in. w.c.; the valve itself needs most of that).
const STARVED_PA: f64 = PA_PER_INWC;
/// Fall of the manifold with the others on that tells of something in its way, in pascals (0.1 in.
/// w.c.).
const FOLLOWS_PA: f64 = 0.1 * PA_PER_INWC;
/// The same at least: two digits of the manometer, in pascals.
const LEAST_FALL_PA: f64 = 0.02 * PA_PER_INWC;

/// After the manifold was read as found, at the full rate: set what is out of its band and can be
/// set.
pub(super) fn set_stages(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let held_down = me.is_low(Stage::FullLoad);
    if held_down && !me.know.read.loaded && !me.careless {
        return with_a_load(me, seen);
    }
    let mut steps = Vec::new();
    // The full rate first: it burns, as read last.
    for &level in seen.levels.iter().rev() {
        if me.needs(Stage::Firing(level)) {
            me.know.note(Diagnosis::out_of_band(level));
            steps.extend(if level.is_top() { run_full() } else { run_first() });
            steps.extend(adjust(level.screw()));
            steps.push(think(no_effect));
        }
    }
    steps.push(think(|me, _| {
        // One level may have moved the other: look at each again, caps on.
        if !me.know.screws.turned {
            return Vec::new();
        }
        let mut steps = vec![read_manifold(Phase::Left)];
        steps.extend(look_at_flames());
        steps
    }));
    steps.extend(flue::check());
    steps.extend(stop());
    steps.extend(valve_shuts());
    steps.extend(take(Course::Finish));
    steps
}

/// The full rate is too low with the inlet in order: a regulated pressure does not care about the
/// others; one that follows the inlet is held down between inlet port and spring.
fn with_a_load(me: &mut Mind, _: &Seen) -> Vec<Step> {
    me.know.read.loaded = true;
    let mut steps = run_full();
    steps.extend(others(OnOff::On));
    steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
    steps.push(think(|me, seen| {
        let full = seen.levels.last().and_then(|&level| me.know.read.manifold[level]);
        let (Some(loaded), Some(alone)) = (number(seen), full) else {
            return Vec::new();
        };
        let falls = alone - loaded > me.follows_pa(alone);
        let mut steps = others(OnOff::Off);
        if falls {
            if me.know.has_mended(Repair::CleanInletScreen) {
                // With the screen clean, what draws the inlet and the manifold down is the flow.
                steps.extend(flue::check());
                steps.push(think(|me, _| give_up(me, Diagnosis::ManifoldFollowsInlet)));
                return steps;
            }
            me.know.read.loaded = false;
            me.plan_repair(Diagnosis::ManifoldLowAndFollowing, Repair::CleanInletScreen);
            steps.extend(take(Course::MendAtManifold));
        } else {
            steps.push(pause(10.0));
            steps.extend(take(Course::SetLevels));
        }
        steps
    }));
    steps
}

impl Mind {
    /// Fall of the manifold with the others on from which it follows the inlet, in pascals: half of
    /// what it would fall in step with it. A pressure that is held far down moves little.
    fn follows_pa(&self, alone_pa: f64) -> f64 {
        let (Some(alone), Some(others)) =
            (self.full_inlet_pa(), self.know.read.inlet[Stage::FullLoad])
        else {
            return FOLLOWS_PA;
        };
        let share = (alone - others) / alone.max(1.0);
        (0.5 * share * alone_pa).clamp(LEAST_FALL_PA, FOLLOWS_PA)
    }

    /// Whether the full rate could not be brought to its plate, so that its flue gas tells nothing.
    pub(super) fn set_aside(&self) -> bool {
        self.is_under(Stage::FullLoad) || self.is_over(Stage::FullLoad)
    }

    /// Whether a stage was read below its band.
    fn is_under(&self, stage: Stage) -> bool {
        let Some(figures) = &self.know.papers.figures else { return false };
        let (target, i) = Self::of(figures, stage);
        self.know.read.manifold[i].is_some_and(|pa| target.band().is_below(pa))
    }

    /// Whether a stage is so far under its target that something may hold it down, inside its band
    /// or not, and the supply does not.
    fn is_low(&self, stage: Stage) -> bool {
        let Some(figures) = &self.know.papers.figures else { return false };
        let (target, i) = Self::of(figures, stage);
        let under_pa = target.share_pa(NEAR).max(FOLLOWS_PA);
        self.know.read.manifold[i].is_some_and(|pa| pa < target.pa - under_pa)
            && !self.starved(stage)
    }

    /// Whether the supply holds a stage down: that is the supply's fault, not the spring's.
    fn starved(&self, stage: Stage) -> bool {
        let Some(figures) = &self.know.papers.figures else { return false };
        let (target, i) = Self::of(figures, stage);
        let inlet = self.know.read.inlet[Stage::Firing(i)];
        self.know.read.manifold[i]
            .zip(inlet)
            .is_some_and(|(pa, inlet)| pa < target.pa && inlet - pa < STARVED_PA)
    }

    /// Whether a stage was read above its band.
    pub(super) fn is_over(&self, stage: Stage) -> bool {
        let Some(figures) = &self.know.papers.figures else { return false };
        let (target, i) = Self::of(figures, stage);
        self.know.read.manifold[i].is_some_and(|pa| target.band().is_above(pa))
    }

    fn of(figures: &GasFigures, stage: Stage) -> (Target, Level) {
        let levels = figures.manifold.list();
        let level = stage.level(levels).unwrap_or(figures.manifold.top_level());
        (figures.manifold[level], level)
    }

    /// Whether a stage is out of its band for a reason that its screw can mend.
    fn needs(&self, stage: Stage) -> bool {
        let Some(figures) = &self.know.papers.figures else { return false };
        let (target, i) = Self::of(figures, stage);
        let Some(pa) = self.know.read.manifold[i] else { return false };
        !target.band().contains(pa) && !self.starved(stage)
    }

    fn target(&self, screw: Screw) -> Option<Target> {
        let figures = self.know.papers.figures.as_ref()?;
        Some(screw.level().map_or(*figures.manifold.top(), |level| figures.manifold[level]))
    }
}

/// Cap off, small turns with waits, cap on.
fn adjust(screw: Screw) -> Vec<Step> {
    let mut steps = vec![
        go(Place::GasValve),
        think(|me, _| {
            me.know.screws.tries = 0;
            me.know.screws.start = None;
            me.know.screws.no_effect = false;
            until_steady(me.card.settle_s)
        }),
    ];
    steps.extend([
        reach(Goal::Uncapped(screw)),
        think(move |me, seen| match screw.level() {
            Some(level) => nudge(me, seen, level),
            None => Vec::new(),
        }),
        reach(Goal::Capped(screw)),
        reach(Goal::HandEmpty),
    ]);
    steps
}

/// A turn without an effect points elsewhere: to what lies before the spring, or to the valve.
fn no_effect(me: &mut Mind, _: &Seen) -> Vec<Step> {
    if !me.know.screws.no_effect || me.careless {
        return Vec::new();
    }
    me.know.screws.no_effect = false;
    match me.know.next_of(&[Repair::CleanInletScreen, Repair::ReplaceGasValve]) {
        Some(repair) => {
            me.plan_repair(Diagnosis::ScrewWithoutEffect, repair);
            take(Course::MendAtManifold)
        }
        None => give_up(me, Diagnosis::ScrewWithoutEffect),
    }
}

/// The room has come to its setpoint while a screw was turned: called for again at the thermostat, and
/// the setting goes on. What goes out for another reason is left to the readings that follow.
fn call_again(me: &Mind, level: Level) -> Vec<Step> {
    if me.careless || me.know.since_call.limit || me.know.screws.tries > MOST_TRIES {
        return Vec::new();
    }
    let screw = level.screw();
    let mut steps = vec![reach(Goal::Capped(screw)), reach(Goal::HandEmpty), go(Place::Hall)];
    steps.extend(if level.is_top() { run_full() } else { run_first() });
    steps.push(go(Place::GasValve));
    steps.push(think(|me, _| until_steady(me.card.settle_s)));
    steps.push(reach(Goal::Uncapped(screw)));
    steps.push(think(move |me, seen| nudge(me, seen, level)));
    steps
}

fn nudge(me: &mut Mind, seen: &Seen, level: Level) -> Vec<Step> {
    let screw = level.screw();
    let (Some(target), Some(pa)) = (me.target(screw), number(seen)) else { return Vec::new() };
    me.know.screws.tries += 1;
    // The screw and the stage that burns belong together.
    if !seen.sounds.contains(&Sound::Burners(level)) {
        return if seen.sounds.iter().any(|it| matches!(it, Sound::Burners(_))) {
            Vec::new()
        } else {
            call_again(me, level)
        };
    }
    let off_pa = target.pa - pa;
    if off_pa.abs() <= target.share_pa(NEAR) || me.know.screws.tries > MOST_TRIES {
        return Vec::new();
    }
    // Screwed in past what the inlet gives, a spring shows nothing until it is out again that far.
    let over = off_pa < 0.0 && me.full_inlet_pa().is_some_and(|inlet| inlet - pa < STARVED_PA);
    if me.turns_in_vain(pa) && !over {
        me.know.screws.no_effect = true;
        return turn_back(me, screw);
    }
    me.know.screws.turned = true;
    // A quarter turn far off, an eighth near by.
    let size = if off_pa.abs() > target.share_pa(2.0) { 2 } else { 1 };
    let eighths = if off_pa > 0.0 { size } else { -size };
    me.count_turn(eighths);
    let mut steps = vec![act(Action::Turn { screw, eighths })];
    steps.extend(until_steady(me.card.settle_s));
    steps.push(think(move |me, seen| nudge(me, seen, level)));
    steps
}
