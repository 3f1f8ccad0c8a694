//! Evidence of faults that were there on arrival and are there when the door closes.

use super::brief::Brief;
use super::closing;
use super::ledger::{Hit, Ledger};
use super::repairs::mended;
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::hands::action::{Action, Contact};
use crate::hands::event::Outcome;
use crate::measure::felt::is_felt;
use crate::parts::Ending;
use crate::setup::SupplyRight;

/// A fault of the house that a repair would have mended, handed over in use.
pub(super) fn fault_left(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    let mine = |right: &&[Remedy]| may_mend(l, right) && !reads(right);
    let left: Vec<_> = left(l).collect();
    let hits: Vec<Hit> = left.iter().filter(|(_, right, _)| mine(right)).map(hit).collect();
    // A wrong ending says it already, unless it is the ending of another fault.
    let ended_wrongly = !closing::wrong_ending(l, brief).is_empty()
        || !closing::owner_not_called(l, brief).is_empty();
    let of_another = left.iter().any(|(_, right, _)| !may_mend(l, right));
    if ended_wrongly && !of_another { Vec::new() } else { hits }
}

/// A fault between the gas and the number on the display that was never mended: whatever was written
/// is not what was there.
pub(super) fn meter_fault_left(l: &Ledger) -> Vec<Hit> {
    left(l).filter(|(_, right, _)| reads(right)).map(|it| hit(&it)).collect()
}

type Left = (u64, &'static [Remedy], &'static str);

fn hit((tick, _, cause): &Left) -> Hit {
    Hit::new(*tick, t!("seen-fault-left"), *cause)
}

/// Faults that could be felt, and were not answered by one of their remedies: the tick of leaving, the
/// remedies, the cause.
fn left(l: &Ledger) -> impl Iterator<Item = Left> {
    let in_use = l.left().filter(|(_, said, _)| said.ending != Ending::ShutOff);
    let sound = l.setup.sound.as_deref().unwrap_or(&l.setup);
    in_use.into_iter().flat_map(move |(tick, _, _)| {
        l.setup
            .faults
            .iter()
            // Air that stood in the line has burned away by the first cycle.
            .filter(|(fault, _)| *fault != Fault::AirInLine)
            .filter(|(fault, _)| !answered(l, fault.entry().right))
            // Nobody can find what no instrument shows.
            .filter(|(fault, severity)| is_felt(sound, *fault, *severity))
            .map(move |(fault, _)| (tick, fault.entry().right, fault.entry().cause))
    })
}

/// The remedies of the faults that were answered by a repair.
pub(super) fn answered_faults(l: &Ledger) -> impl Iterator<Item = &'static [Remedy]> {
    let right = l.setup.faults.iter().map(|(fault, _)| fault.entry().right);
    right.filter(move |right| {
        let mends: Vec<Remedy> =
            right.iter().copied().filter(|it| matches!(it, Remedy::Mend(_))).collect();
        answered(l, &mends)
    })
}

/// Whether its remedy is one at the manometer, its hose or the hole of a port.
pub(super) fn reads(right: &[Remedy]) -> bool {
    right.iter().any(|remedy| match remedy {
        Remedy::Mend(repair) => repair.is_on_reading(),
        Remedy::Turn(_) | Remedy::Operate(_) | Remedy::CallOwner | Remedy::ShutOffAndTag => false,
    })
}

/// Whether one of its remedies is a repair that the trainee may do.
fn may_mend(l: &Ledger, right: &[Remedy]) -> bool {
    let theirs = l.setup.card.supply == SupplyRight::OwnerOnly;
    right.iter().any(|remedy| match remedy {
        Remedy::Mend(repair) => !(theirs && repair.is_on_supply()),
        Remedy::Turn(_) | Remedy::Operate(_) | Remedy::CallOwner | Remedy::ShutOffAndTag => false,
    })
}

/// Whether one of these remedies was taken. Screws and what every job has hands for are judged by
/// how they were left.
pub(super) fn answered(l: &Ledger, right: &[Remedy]) -> bool {
    right.iter().any(|remedy| match remedy {
        Remedy::Mend(repair) => {
            mended(l).any(|it| it.repair == *repair && it.outcome == Outcome::Changed)
        }
        Remedy::Turn(_) | Remedy::Operate(_) => true,
        Remedy::CallOwner => {
            let called = l.did().any(|did| *did.action == Action::Call(Contact::SupplyOwner));
            called && (l.ending() == Some(Ending::SupplyOwnerCalled) || !is_mine(l, right))
        }
        Remedy::ShutOffAndTag => l.left_shut_off(),
    })
}

/// Whether the trainee may mend what the owner of the supply would come for: handed over as sound, a
/// call alone mends nothing.
fn is_mine(l: &Ledger, right: &[Remedy]) -> bool {
    let mends = right.iter().any(|remedy| matches!(remedy, Remedy::Mend(_)));
    l.setup.card.supply == SupplyRight::Trainee && mends
}
