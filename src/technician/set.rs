//! Deciding about the supply, and setting the two stages: a little, wait, look.

use super::plan::{Step, Technician, act, finish, go, on_to_manifold, think, until_steady, with};
use super::run_furnace::{inlet_series, keep_manifold, run_high, run_low, stop};
use super::task::{number, pause};
use crate::bench::action::{Action, Fitted, Phase, Stage};
use crate::bench::part::{Place, Screw, Tool};
use crate::bench::seen::{Seen, Sound};
use crate::units::PA_PER_INWC;

/// How near to the target a stage is set, as a share of the plate's tolerance.
const NEAR: f64 = 0.4;
/// Most turns of the driver for one setting.
const MOST_TRIES: u32 = 40;
/// Head over the manifold below which the supply, not the spring, holds the pressure down: in
/// pascals (1 in. w.c.; the valve itself needs most of that).
const STARVED_PA: f64 = PA_PER_INWC;
/// Margin over the plate's minimum that the supply is set to, in pascals (0.3 in. w.c.).
const SUPPLY_MARGIN_PA: f64 = 0.3 * PA_PER_INWC;

/// After the inlet series: set the supply where that is allowed and needed, else go on.
pub(super) fn judge_supply(me: &mut Technician, _: &Seen) -> Vec<Step> {
    let mut steps = Vec::new();
    if me.supply_is_bad() && me.may_set_supply() {
        me.know.tries = 0;
        me.know.supply_turned = true;
        steps.push(go(Place::Yard));
        steps.extend(with(
            Tool::SlottedDriver,
            vec![
                act(Action::Cap { screw: Screw::Supply, to: Fitted::Off }),
                think(turn_supply),
                act(Action::Cap { screw: Screw::Supply, to: Fitted::On }),
            ],
        ));
        steps.extend(stop());
        steps.extend(inlet_series(Phase::Left));
    }
    steps.extend(stop());
    steps.push(think(|_, _| on_to_manifold()));
    steps
}

/// One small turn at the supply, with everything burning, until the plate's minimum is passed.
fn turn_supply(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let Some(figures) = &me.know.figures else { return Vec::new() };
    let wanted = figures.inlet_min_pa + SUPPLY_MARGIN_PA;
    me.know.tries += 1;
    match number(seen) {
        Some(pa) if pa < wanted && me.know.tries < MOST_TRIES => vec![
            act(Action::Turn { screw: Screw::Supply, eighths: 2 }),
            pause(12.0),
            think(turn_supply),
        ],
        Some(_) | None => Vec::new(),
    }
}

/// After the manifold was read as found, on high: set what is out of its band and can be set.
pub(super) fn set_stages(me: &mut Technician, _: &Seen) -> Vec<Step> {
    let mut steps = Vec::new();
    if me.needs(Stage::High) {
        steps.extend(run_high());
        steps.extend(adjust(Screw::High));
    }
    if me.needs(Stage::Low) {
        steps.extend(run_low());
        steps.extend(adjust(Screw::Low));
    }
    steps.push(think(|me, _| {
        // One stage may have moved the other: look at both again, caps on.
        if me.know.turned == [false, false] {
            return Vec::new();
        }
        let mut steps = run_low();
        steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
        steps.push(think(|me, seen| keep_manifold(me, seen, Stage::Low, Phase::Left)));
        steps.extend(run_high());
        steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
        steps.push(think(|me, seen| keep_manifold(me, seen, Stage::High, Phase::Left)));
        steps
    }));
    steps.extend(stop());
    steps.push(think(|_, _| finish()));
    steps
}

impl Technician {
    /// Whether a stage is out of its band for a reason that its screw can mend.
    fn needs(&self, stage: Stage) -> bool {
        let Some(figures) = &self.know.figures else { return false };
        let (target, i) = match stage {
            Stage::Low => (figures.low, 0),
            Stage::Rest | Stage::High | Stage::HighWithOthers => (figures.high, 1),
        };
        let Some(pa) = self.know.manifold[i] else { return false };
        // A high stage that the supply holds down is the supply's fault, not the spring's.
        let starved = i == 1
            && pa < target.pa
            && self.know.inlet_high_pa.is_some_and(|inlet| inlet - pa < STARVED_PA);
        !target.holds(pa) && !starved
    }

    fn target(&self, screw: Screw) -> Option<crate::appliance::plate::Target> {
        let figures = self.know.figures.as_ref()?;
        Some(match screw {
            Screw::Low => figures.low,
            Screw::High | Screw::Supply => figures.high,
        })
    }
}

/// Cap off, small turns with waits, cap on.
fn adjust(screw: Screw) -> Vec<Step> {
    let mut steps = vec![
        go(Place::GasValve),
        think(|me, _| {
            me.know.tries = 0;
            until_steady(me.card.settle_s)
        }),
    ];
    steps.extend(with(
        Tool::SlottedDriver,
        vec![
            act(Action::Cap { screw, to: Fitted::Off }),
            think(match screw {
                Screw::Low => |me, seen| nudge(me, seen, Screw::Low),
                Screw::High => |me, seen| nudge(me, seen, Screw::High),
                Screw::Supply => |me, seen| turn_supply(me, seen),
            }),
            act(Action::Cap { screw, to: Fitted::On }),
        ],
    ));
    steps
}

fn nudge(me: &mut Technician, seen: &Seen, screw: Screw) -> Vec<Step> {
    let (Some(target), Some(pa)) = (me.target(screw), number(seen)) else { return Vec::new() };
    // The screw and the stage that burns belong together.
    let sound = if screw == Screw::Low { Sound::BurnersLow } else { Sound::BurnersHigh };
    if !seen.sounds.contains(&sound) {
        return Vec::new();
    }
    me.know.tries += 1;
    let off_pa = target.pa - pa;
    if off_pa.abs() <= NEAR * target.tolerance_pa || me.know.tries > MOST_TRIES {
        return Vec::new();
    }
    me.know.turned[usize::from(screw == Screw::High)] = true;
    // A quarter turn far off, an eighth near by.
    let size = if off_pa.abs() > 2.0 * target.tolerance_pa { 2 } else { 1 };
    let eighths = if off_pa > 0.0 { size } else { -size };
    let mut steps = vec![act(Action::Turn { screw, eighths })];
    steps.extend(until_steady(me.card.settle_s));
    steps.push(think(match screw {
        Screw::Low => |me, seen| nudge(me, seen, Screw::Low),
        Screw::High | Screw::Supply => |me, seen| nudge(me, seen, Screw::High),
    }));
    steps
}
