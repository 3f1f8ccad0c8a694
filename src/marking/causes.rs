//! Evidence of the findings on the sheet: whether they name what was wrong, whether they say what
//! was done about it, and whether anything speaks for them.

use super::deed::lower;
use super::ledger::{Did, Hit, Ledger};
use super::repairs::mended;
use crate::appliance::ignition::ControlState;
use crate::catalogue::cause::{Harms, TrueCause, set_level, true_as_well, true_causes};
use crate::catalogue::fault::remedy::Remedy;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Contact, PlugStep};
use crate::hands::event::{EventKind, Outcome};
use crate::parts::{
    Answer, Backing, Cause, Ending, Fitted, HandValve, OnOff, Place, Screw, Sight, SystemPart,
    WrittenFinding,
};
use crate::rules::OfFinding;
use crate::units::PA_PER_INWC;

/// How far a zero must wander to be seen, in pascals (0.1 in. w.c., a digit of the trade's ordinary
/// meters). A meter that was left alone until it was warm shows nothing of it.
const WANDERS_PA: f64 = 0.1 * PA_PER_INWC;

/// Hits of a kind of evidence. `rightly_shut_off` says whether it was left so, for a reason that
/// was found.
pub(super) fn hits(of: OfFinding, l: &Ledger, rightly_shut_off: bool) -> Vec<Hit> {
    match of {
        OfFinding::CauseNotNamed => not_named(l, rightly_shut_off),
        OfFinding::WrongCause => wrong(l, Harms::No),
        OfFinding::WrongCauseHarms => wrong(l, Harms::Yes),
        OfFinding::AnswerContradicts => answer_contradicts(l),
        OfFinding::Unbacked => unbacked(l),
        OfFinding::NoneWritten => none_written(l),
    }
}

/// Whether a job gave occasion for it.
pub(super) fn gives_occasion(of: OfFinding, l: &Ledger) -> bool {
    match of {
        OfFinding::CauseNotNamed => l.left().is_some() && must_name(l),
        OfFinding::NoneWritten => l.left().is_some() && !must_name(l),
        OfFinding::WrongCause | OfFinding::WrongCauseHarms => l.left().is_some(),
        OfFinding::AnswerContradicts | OfFinding::Unbacked => !written(l).is_empty(),
    }
}

/// A finding that stands on the sheet at the end.
struct Written<'a> {
    tick: u64,
    finding: &'a WrittenFinding,
}

/// What stands on the sheet, in the order of writing.
fn written(l: &Ledger) -> Vec<Written<'_>> {
    let mut all: Vec<Written<'_>> = Vec::new();
    for did in l.did() {
        if let Action::WriteFinding(finding) = did.action {
            all.push(Written { tick: did.tick, finding });
        }
        if let Action::StrikeFinding(cause) = did.action {
            all.retain(|one| one.finding.cause != *cause);
        }
    }
    all
}

/// What stands on the sheet as wrong, in the order of writing.
pub(super) fn on_sheet(l: &Ledger) -> Vec<&WrittenFinding> {
    written(l).into_iter().map(|one| one.finding).collect()
}

/// Whether a true cause stands on the sheet under a name that is near enough.
pub(super) fn is_named(l: &Ledger, it: &TrueCause) -> bool {
    let after_alarm = super::conversion::left_for_gas(l);
    written(l).iter().any(|one| match after_alarm {
        true => it.accepts_after_alarm(one.finding.cause),
        false => it.accepts(one.finding.cause) || is_set_low(l, it, one.finding.cause),
    })
}

/// Whether "set too low" is near enough for what draws a supply down: where its screw, inside its
/// nameplate, puts it right.
fn is_set_low(l: &Ledger, it: &TrueCause, named: Cause) -> bool {
    let before_furnace = matches!(it.cause.part(), SystemPart::Supply | SystemPart::HousePiping);
    named == Cause::SupplySetLow && before_furnace && l.is_cured_by_setting()
}

/// Whether the job has anything that a finding has to name.
pub(super) fn is_due(l: &Ledger) -> bool {
    l.left().is_some() && (must_name(l) || true_causes(&l.setup).iter().any(|it| is_named(l, it)))
}

/// Whether the bench shows anything that a finding has to name, whatever was written.
fn must_name(l: &Ledger) -> bool {
    !l.to_be_named().is_empty()
}

/// Causes that no finding names. What is rightly left shut off need not be searched to its end: one
/// of its causes is enough.
fn not_named(l: &Ledger, rightly_shut_off: bool) -> Vec<Hit> {
    let Some((tick, _, _)) = l.left() else { return Vec::new() };
    let (named, unnamed): (Vec<_>, Vec<_>) =
        true_causes(&l.setup).into_iter().partition(|it| is_named(l, it));
    if rightly_shut_off && !named.is_empty() {
        return Vec::new();
    }
    let names = written(l).iter().map(|one| lower(one.finding.cause.label())).collect::<Vec<_>>();
    let seen = match names.is_empty() {
        true => t!("seen-no-finding").to_owned(),
        false => t!("seen-findings", causes = names.join("; ")),
    };
    unnamed
        .into_iter()
        .filter(|it| l.to_be_named().contains(it))
        .filter(|it| it.cause != Cause::MeterZeroDrifts || zero_wandered_pa(l) > WANDERS_PA)
        .map(|it| {
            let cause = it.cause;
            let truth = t!("true-cause", cause = cause.label(), how = cause.how_seen());
            Hit::new(tick, &*seen, truth)
        })
        .collect()
}

/// How far the manometer's zero wandered while somebody could see it, in pascals: from when it was
/// switched on to the end, without what the zero button took.
fn zero_wandered_pa(l: &Ledger) -> f64 {
    let switched_on =
        l.did().find(|did| *did.action == Action::MeterPower(OnOff::On)).map_or(0, |did| did.index);
    let seen: Vec<Did<'_>> = l.did().filter(|did| did.index >= switched_on).collect();
    let pairs = seen.iter().zip(seen.iter().skip(1));
    let kept = pairs.filter(|(one, _)| *one.action != Action::MeterZero);
    let by: f64 =
        kept.map(|(one, next)| next.before.meter_error_pa - one.before.meter_error_pa).sum();
    by.abs()
}

/// Findings that name what was not wrong, by the harm that such a word does.
fn wrong(l: &Ledger, harms: Harms) -> Vec<Hit> {
    let hit = |one: &Written<'_>| {
        let cause = one.finding.cause;
        let truth = t!("true-wrong-cause", how = cause.how_seen());
        Hit::new(one.tick, t!("seen-finding", cause = lower(cause.label())), truth)
    };
    let all = written(l);
    let wrong = all.iter().filter(|one| !is_true(l, one.finding.cause));
    let mut hits: Vec<Hit> =
        wrong.filter(|one| one.finding.cause.harms() == harms).map(hit).collect();
    if !hits.is_empty() && is_sound(l) {
        hits = hits.into_iter().map(|hit| hit.grave_if(true)).collect();
    }
    hits
}

/// Whether nothing on the bench has to be named, and no finding names anything that was wrong.
fn is_sound(l: &Ledger) -> bool {
    let names_something = |one: &Written<'_>| {
        one.finding.cause != Cause::NothingFound && is_true(l, one.finding.cause)
    };
    !written(l).iter().any(names_something) && !must_name(l)
}

/// Whether a cause is true of the bench, as built or as it became on the job. Whether "nothing
/// found" is true, the causes that are not named tell.
fn is_true(l: &Ledger, cause: Cause) -> bool {
    let came_about = |event: &EventKind| {
        let cracked = matches!(event, EventKind::Cracked { .. });
        let crossed = matches!(event, EventKind::CrossThreaded { .. });
        let tripped = matches!(event, EventKind::Control { to: ControlState::RolloutOpen, .. });
        (cracked && cause == Cause::BossCracked)
            || (crossed && cause == Cause::PlugCrossThreaded)
            || (*event == EventKind::Alarm && cause == Cause::GasInTheAir)
            || (tripped && cause == Cause::RolloutTripped)
    };
    cause == Cause::NothingFound
        || l.events.iter().any(|event| came_about(&event.what))
        || true_causes(&l.setup)
            .iter()
            .any(|it| it.accepts_after_alarm(cause) || is_set_low(l, it, cause))
        || true_as_well(&l.setup).contains(&cause)
}

/// True findings whose answer is not what was done, or not how the job ended.
fn answer_contradicts(l: &Ledger) -> Vec<Hit> {
    let Some((_, said, _)) = l.left() else { return Vec::new() };
    let contradicts = |finding: &WrittenFinding| match finding.answer {
        Answer::Mended => !is_mended(l, finding.cause) && !is_put_back(l, finding.cause),
        Answer::Adjusted => !is_adjusted(l, finding.cause),
        Answer::Opened => !is_opened(l),
        Answer::OwnerCalled => {
            let calls = [Contact::SupplyOwner, Contact::Emergency].map(Action::Call);
            !l.did().any(|did| calls.contains(did.action))
        }
        Answer::ShutOff => said.ending != Ending::ShutOff,
        Answer::LeftAsItIs => {
            finding.cause != Cause::NothingFound
                && (is_put_back(l, finding.cause) || is_rightly_mended(l, finding.cause))
        }
    };
    written(l)
        .iter()
        .filter(|one| is_true(l, one.finding.cause) && contradicts(one.finding))
        .map(|one| {
            let cause = lower(one.finding.cause.label());
            let answer = lower(one.finding.answer.label());
            let seen = t!("seen-finding-answer", cause = cause, answer = answer);
            Hit::new(one.tick, seen, t!("true-finding-answer"))
        })
        .collect()
}

/// What the catalogue names against what a cause names.
fn remedies(cause: Cause) -> impl Iterator<Item = &'static Remedy> {
    cause.faults().iter().flat_map(|fault| fault.entry().right)
}

fn repairs_against(cause: Cause) -> impl Iterator<Item = Repair> {
    remedies(cause).filter_map(|remedy| match remedy {
        Remedy::Mend(repair) => Some(*repair),
        Remedy::Turn(_) | Remedy::Operate(_) | Remedy::CallOwner | Remedy::ShutOffAndTag => None,
    })
}

fn is_rightly_mended(l: &Ledger, cause: Cause) -> bool {
    let changed =
        |it: Repair| mended(l).any(|done| done.repair == it && done.outcome == Outcome::Changed);
    repairs_against(cause).any(changed)
}

/// Whether something was mended that answers a cause: one of the repairs against it, a whole gas
/// valve, or, where the catalogue names none, any.
fn is_mended(l: &Ledger, cause: Cause) -> bool {
    let none = repairs_against(cause).next().is_none();
    is_rightly_mended(l, cause)
        || mended(l).any(|it| {
            it.outcome == Outcome::Changed && (none || it.repair == Repair::ReplaceGasValve)
        })
}

/// Whether what was out of its place was put back by hand.
fn is_put_back(l: &Ledger, cause: Cause) -> bool {
    const AT_PLUGS: [Cause; 3] =
        [Cause::InletPlugLoose, Cause::ManifoldPlugLoose, Cause::PlugCrossThreaded];
    l.did().any(|did| {
        let cap = matches!(did.action, Action::Cap { to: Fitted::On, .. });
        let plug = matches!(did.action, Action::Plug { step: PlugStep::Tighten(_), .. });
        let adapter = matches!(did.action, Action::Adapter { to: Fitted::Off, .. });
        (cap && cause == Cause::CapMissing)
            || (plug && AT_PLUGS.contains(&cause))
            || (adapter && cause == Cause::AdapterLeftIn)
    })
}

/// Whether a cause was answered by setting: the screw of its spring turned, the meter zeroed, its
/// unit chosen; for any other, some screw turned.
fn is_adjusted(l: &Ledger, cause: Cause) -> bool {
    const ZERO: [Cause; 2] = [Cause::MeterZeroOff, Cause::MeterZeroDrifts];
    if ZERO.contains(&cause) {
        return l.did().any(|did| *did.action == Action::MeterZero);
    }
    if cause == Cause::MeterUnitWrong {
        return l.did().any(|did| matches!(did.action, Action::MeterUnit(_)));
    }
    let wanted = screw_of(cause);
    l.did().any(|did| {
        matches!(did.action, Action::Turn { screw, .. } if wanted.is_none_or(|it| it == *screw))
    })
}

/// The screw that a cause is about: of its level, or the one that the catalogue turns against it;
/// none for one that is about no screw.
fn screw_of(cause: Cause) -> Option<Screw> {
    let turned = |remedy: &Remedy| match remedy {
        Remedy::Turn(screw) => Some(*screw),
        Remedy::Mend(_) | Remedy::Operate(_) | Remedy::CallOwner | Remedy::ShutOffAndTag => None,
    };
    let level = set_level(cause).map(|(level, _)| level.screw());
    level.or_else(|| remedies(cause).find_map(turned))
}

/// Whether a valve was opened, a switch turned on or a device reset.
fn is_opened(l: &Ledger) -> bool {
    let switches = [
        Action::ValveSwitch(OnOff::On),
        Action::FurnaceSwitch(OnOff::On),
        Action::ResetRollout,
        Action::Mend(Repair::OpenRegisters),
    ];
    l.did().any(|did| {
        let opens = |valve: HandValve| matches!(valve, HandValve::Furnace | HandValve::Supply);
        let opened = matches!(did.action, Action::HandValve { hand_valve, degrees }
            if opens(*hand_valve) && *degrees > 0);
        opened || switches.contains(did.action)
    })
}

/// True findings with nothing that speaks for them.
fn unbacked(l: &Ledger) -> Vec<Hit> {
    written(l)
        .iter()
        .filter(|one| {
            let finding = one.finding;
            let backs = |it: &&Backing| finding.cause.is_shown_by(**it) && had_occasion(l, **it);
            // Where something was wrong, that nothing was found is charged as that.
            let missed = finding.cause == Cause::NothingFound && is_due(l);
            is_true(l, finding.cause) && !missed && !finding.evidence.iter().any(|it| backs(&it))
        })
        .map(|one| {
            let cause = one.finding.cause;
            let seen = t!("seen-unbacked", cause = lower(cause.label()));
            Hit::new(one.tick, seen, t!("true-unbacked", how = cause.how_seen()))
        })
        .collect()
}

/// Whether there was an occasion to see it. What stands on the sheet is there; what is noticed in
/// passing takes a place, a nose or an instrument in use.
fn had_occasion(l: &Ledger, backing: Backing) -> bool {
    let did = |such: fn(&Action) -> bool| l.did().any(|it| such(it.action));
    let was = |places: &[Place]| {
        l.did().any(|it| matches!(it.action, Action::Go(place) if places.contains(place)))
    };
    match backing {
        Backing::Reading { .. }
        | Backing::Measured(_)
        | Backing::Look(_)
        | Backing::Joint(_)
        | Backing::Sight(Sight::Sound) => true,
        Backing::Sight(Sight::ManualValve | Sight::FurnaceSwitch | Sight::Control) => {
            was(&[Place::PlantRoom, Place::GasValve])
        }
        Backing::Sight(
            Sight::ValveSwitch
            | Sight::InletPort
            | Sight::ManifoldPort
            | Sight::Caps
            | Sight::Flames
            | Sight::Igniter
            | Sight::Wires
            | Sight::GroundWire,
        ) => was(&[Place::GasValve]),
        Backing::Sight(Sight::Manometer | Sight::Hose) => did(|it| {
            matches!(it, Action::MeterPower(_) | Action::MeterZero | Action::HoseOn { .. })
        }),
        Backing::Sight(Sight::Smell) => did(|it| matches!(it, Action::Sniff(_) | Action::Probe(_))),
    }
}

/// A job handed over with no finding on its sheet.
fn none_written(l: &Ledger) -> Vec<Hit> {
    match l.left() {
        Some((tick, _, _)) if written(l).is_empty() => {
            vec![Hit::new(tick, t!("seen-no-finding"), t!("true-no-finding"))]
        }
        Some(_) | None => Vec::new(),
    }
}
