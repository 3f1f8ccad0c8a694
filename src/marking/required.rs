//! Evidence of work beyond the pressures that the card asks for.

use super::ended::in_use;
use super::ledger::{Hit, Ledger};
use super::{house, piping};
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::parts::{ARRIVAL_LOOKS, Duty, Level, Spot, Subject};
use crate::rules::LeftOut;

/// The piece of work that a rule asks after.
fn duty(which: LeftOut) -> Duty {
    match which {
        LeftOut::ArrivalLooks => Duty::ArrivalLooks,
        LeftOut::TemperatureRise => Duty::TemperatureRise,
        LeftOut::Combustion => Duty::Combustion,
        LeftOut::GasRate => Duty::GasRate,
        LeftOut::PipingLeakCheck => Duty::PipingLeakCheck,
    }
}

/// Whether it is asked for, and has fallen due: what is left shut off need not be fired for it. A
/// repair that opened the piping asks for its leak check by itself.
pub(super) fn is_due(which: LeftOut, l: &Ledger) -> bool {
    let by_work = which == LeftOut::PipingLeakCheck && piping::is_due(l);
    by_work || (in_use(l) && l.setup.card.required.contains(&duty(which)))
}

/// Whether any such work has fallen due.
pub(super) fn any_due(l: &Ledger) -> bool {
    piping::is_due(l) || (in_use(l) && !l.setup.card.required.is_empty())
}

/// Whether it was done.
pub(super) fn is_done(which: LeftOut, l: &Ledger) -> bool {
    missing(which, l).is_none()
}

/// Work that was not done: named as that at hand-over, or not even that.
pub(super) fn left_out(which: LeftOut, l: &Ledger) -> Vec<Hit> {
    let Some((tick, said, _)) = l.left().filter(|_| is_due(which, l)) else { return Vec::new() };
    let Some(truth) = missing(which, l) else { return Vec::new() };
    let unsaid = !said.not_done.contains(&duty(which));
    let work = duty(which).label();
    let seen = match unsaid {
        true => t!("seen-required-unsaid", work = work),
        false => t!("seen-required-not-done", work = work),
    };
    vec![Hit::new(tick, seen, truth).grave_if(unsaid)]
}

/// What is missing of a piece of work, in words; nothing where it was done. The looks count before
/// the burners are lit, numbers at the level that they belong to.
fn missing(which: LeftOut, l: &Ledger) -> Option<String> {
    match which {
        LeftOut::ArrivalLooks => {
            let things: Vec<String> = ARRIVAL_LOOKS
                .into_iter()
                .filter(|subject| !looked(l, *subject))
                .map(|subject| subject.label().to_lowercase())
                .collect();
            let things = (!things.is_empty()).then(|| things.join(", "))?;
            Some(t!("true-required-looks", things = things))
        }
        LeftOut::TemperatureRise => {
            let both = |level| {
                wrote(l, Spot::ReturnAir, Some(level)) && wrote(l, Spot::SupplyAir, Some(level))
            };
            let levels = l.levels().iter().filter(|level| !both(**level));
            let levels: Vec<&str> = levels.map(|level| level.label()).collect();
            let levels = (!levels.is_empty()).then(|| levels.join(", "))?;
            Some(t!("true-required-rise", levels = levels.to_lowercase()))
        }
        LeftOut::Combustion => {
            let done = wrote(l, Spot::Flue, l.levels().last().copied());
            (!done).then(|| t!("true-required-flue").into())
        }
        LeftOut::GasRate => {
            let done = wrote(l, Spot::MeterDial, l.levels().last().copied());
            (!done).then(|| t!("true-required-rate").into())
        }
        LeftOut::PipingLeakCheck => piping::missing(l),
    }
}

/// Whether something was looked at before the burners were lit by whoever had a hand on the furnace.
fn looked(l: &Ledger, subject: Subject) -> bool {
    let lit = house::first_lit(l).map_or(l.events.len(), |(index, _)| index);
    l.did().take_while(|did| did.index < lit).any(|did| *did.action == Action::Look(subject))
}

/// Whether something was written from an instrument at a spot while the furnace fired so.
fn wrote(l: &Ledger, spot: Spot, firing: Option<Level>) -> bool {
    l.events.iter().any(|event| {
        matches!(&event.what, EventKind::WroteMeasured { written, firing: so }
            if written.spot == spot && *so == firing)
    })
}
