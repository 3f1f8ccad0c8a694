//! What the looks and readings lead to: going on, looking elsewhere, closing up, or shutting off.

use super::cycle::Cycle;
use super::elsewhere::{elsewhere, found, gave_up};
use super::hint::{CardAsks, Hint, order};
use super::memory::Remembered;
use super::paper::{figures, look_inside, supply};
use super::{cycle, lead, piping, reading};
use crate::hands::action::{Action, HandOver, Topic};
use crate::parts::{
    Door, Duty, Ending, Fitted, HandValve, OnOff, Opening, Phase, Place, Port, Stage, Subject,
};
use crate::procedure::{Goal, to_measure, undone};
use crate::senses::seen::{Observation, Seen, Sound};

/// Plate or label, orifices or springs do not fit the gas: shut off, tag, tell, hand over.
pub(super) fn unfit(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let fuel = supply(seen, remembered)?;
    let figures = figures(seen)?;
    let finding = |subject| seen.sheet.note(subject).map(|note| &note.finding);
    let gas = fuel.label();
    let why = if figures.fuel != fuel {
        t!("coach-unfit-plate", gas = gas)
    } else if matches!(finding(Subject::Orifices),
        Some(Observation::Orifices { stamp, .. }) if *stamp != figures.orifice_stamp)
    {
        t!("coach-unfit-orifices", gas = gas)
    } else if matches!(finding(Subject::SpringMark), Some(Observation::SpringsFor(it)) if *it != fuel)
    {
        t!("coach-unfit-springs", gas = gas)
    } else {
        return None;
    };
    // Every paper is looked at before the furnace is left: who comes next must know.
    lead::towards(Goal::Isolated, seen, remembered)
        .filter(|_| look_inside(seen, remembered).is_some())
        .or_else(|| look_inside(seen, remembered))
        .or_else(|| Some(shut_off(seen, remembered, &why)))
}

/// Closed, shut off, tagged, told, handed over.
fn shut_off(seen: &Seen, remembered: &Remembered, why: &str) -> Hint {
    let off = [
        Goal::HeatOff,
        Goal::Standing,
        Goal::Power(OnOff::Off),
        Goal::Valve(HandValve::Furnace, Opening::Closed),
        Goal::HandEmpty,
        Goal::Door(Door::Burner, Fitted::On),
        Goal::Tagged,
        Goal::Told(Topic::Unsafe),
    ];
    close_both(seen, remembered)
        .or_else(|| off.iter().find_map(|&goal| lead::saying(why, goal, seen, remembered)))
        .unwrap_or_else(|| {
            hand_over(t!("coach-over-shut-off"), Ending::ShutOff, &[], seen, remembered)
        })
}

/// Both ports closed; none where both plugs are seen to be in, or out of sight with the hose off.
fn close_both(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
    let snug = burners.is_none_or(|it| it.ports.iter().all(|(_, port)| port.fill.is_snug()));
    if snug && remembered.job.hose().is_none() {
        return None;
    }
    lead::first(&[Goal::Closed(Port::Inlet), Goal::Closed(Port::Manifold)], seen, remembered)
}

fn hand_over(
    text: &str,
    ending: Ending,
    required: &[Duty],
    seen: &Seen,
    remembered: &Remembered,
) -> Hint {
    // What was wrong is the trainee's to say: the coach asks for it, and tells no cause.
    if let Some(hint) = lead::towards(Goal::FindingWritten, seen, remembered) {
        return Hint::say(&hint.text);
    }
    let not_done = undone(required, seen, &remembered.job);
    // After an attempt was resumed, what was measured is the trainee's to say.
    let measures = not_done.iter().any(|duty| *duty != Duty::PipingLeakCheck);
    if measures && !seen.sheet.measured.is_empty() {
        return Hint::say(text);
    }
    let left: Vec<&str> = not_done.iter().map(|duty| duty.label()).collect();
    let said = match left.is_empty() {
        true => text.to_owned(),
        false => t!("coach-not-done", text = text, work = left.join("; ")),
    };
    Hint {
        action: Some(Action::HandOver(HandOver { ending, not_done: not_done.clone() })),
        ..Hint::say(&said)
    }
}

/// The highest pressure at rest on the supply regulator's nameplate, once that was looked at.
fn lockup_most_pa(seen: &Seen) -> Option<f64> {
    let note = seen.sheet.note(Subject::SupplyRegulator)?;
    let Observation::Delivery(it) = &note.finding else { return None };
    Some(it.rest_pa)
}

/// The found column is full: what stands on the sheet decides.
pub(super) fn judge(seen: &Seen, remembered: &Remembered, asks: CardAsks<'_>) -> Hint {
    let Some(figures) = figures(seen) else { return Hint::say(t!("coach-read-plate")) };
    let off = |&(port, stage): &(Port, Stage)| {
        let last = |phase| seen.sheet.reading(port, stage, phase);
        let reading = last(Phase::Left).or_else(|| last(Phase::Found));
        reading
            .is_some_and(|it| !figures.allows(port, stage, lockup_most_pa(seen)).contains(it.pa()))
    };
    let bad = seen.sheet.notes.iter().find(|note| note.is_bad());
    if let Some(note) = bad {
        return found(seen, remembered, note);
    }
    let order = order(seen.levels);
    if order.iter().any(|cell| cell.0 == Port::Inlet && off(cell)) {
        return Hint::say(t!("coach-inlet-outside"));
    }
    // The stage that burns comes first, where both are off.
    let burns = |stage| match stage {
        Stage::Firing(level) => seen.sounds.contains(&Sound::Burners(level)),
        Stage::Rest | Stage::FullLoad | Stage::RestAgain => false,
    };
    let cells = order.iter().filter(|cell| cell.0 == Port::Manifold && off(cell));
    let stages: Vec<Stage> = cells.map(|cell| cell.1).collect();
    let first = stages.iter().copied().find(|stage| burns(*stage));
    if let Some(stage) = first.or(stages.first().copied()) {
        return manifold(seen, remembered, stage);
    }
    close_up(seen, remembered, asks)
}

/// The inlet is right, the manifold is not.
fn manifold(seen: &Seen, remembered: &Remembered, stage: Stage) -> Hint {
    if remembered.turned_in_vain() {
        return elsewhere(t!("coach-screw-in-vain"), seen, remembered);
    }
    // The number to turn by is the manifold's.
    gave_up(seen, remembered)
        .or_else(|| reading::hook_up(seen, remembered, Port::Manifold))
        .or_else(|| reading::bring(seen, remembered, stage))
        .unwrap_or_else(|| Hint::say(t!("coach-turn-a-little")))
}

/// Everything lies in its band: ports closed and proven, doors and switches, a cycle, hand-over.
fn close_up(seen: &Seen, remembered: &Remembered, asks: CardAsks<'_>) -> Hint {
    piping::prove(seen, remembered, asks)
        .or_else(|| close_both(seen, remembered))
        .or_else(|| prove_plugs(seen, remembered))
        .or_else(|| measure(seen, remembered, asks))
        .or_else(|| restore(seen, remembered))
        .unwrap_or_else(|| {
            let text = t!("coach-over-in-service");
            hand_over(text, Ending::InService, asks.required, seen, remembered)
        })
}

/// The inlet plug with the valve open, the manifold plug while it burns at its full rate.
fn prove_plugs(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let check = |port: Port| lead::towards(Goal::JointChecked(port.joint()), seen, remembered);
    let job = &remembered.job;
    let checked = |port: Port| job.is_proven(port) && !job.is_wet(port.joint());
    if !checked(Port::Inlet) {
        let open = Goal::Valve(HandValve::Furnace, Opening::Open);
        return lead::towards(open, seen, remembered).or_else(|| check(Port::Inlet));
    }
    if !checked(Port::Manifold) {
        let full = seen.levels.last().map(|&level| Stage::Firing(level));
        return full
            .and_then(|full| reading::bring(seen, remembered, full))
            .or_else(|| check(Port::Manifold));
    }
    None
}

/// What the card asks for beyond the pressures, with everything closed.
fn measure(seen: &Seen, remembered: &Remembered, asks: CardAsks<'_>) -> Option<Hint> {
    lead::first(&to_measure(asks.required, seen.levels, &remembered.job), seen, remembered)
}

/// Hands empty, doors on, a whole cycle, others and thermostat as they were found.
fn restore(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let begun = remembered.cycle == Cycle::Seen;
    let closed = [Goal::GasOn, Goal::ClosedUp];
    lead::first(&closed, seen, remembered)
        .or_else(|| match &seen.hall {
            _ if begun => None,
            Some(hall) => cycle::step(remembered.cycle, hall, seen.levels),
            None => {
                let called = remembered.job.called(seen.levels.last().copied());
                cycle::elsewhere(remembered.cycle, seen, called)
            }
        })
        .or_else(|| lead::towards(Goal::AsFound, seen, remembered))
        .or_else(|| lead::towards(Goal::At(Place::Hall), seen, remembered))
}
