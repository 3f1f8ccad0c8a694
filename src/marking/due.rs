//! Whether a job gave occasion for an essential.

use super::brief::Brief;
use super::ended::{readings_due, rightly_shut_off};
use super::ledger::Ledger;
use super::{causes, conversion, repairs, required};
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::rules::Essential;
use crate::setup::SupplyRight;

/// Whether the job gave occasion for an essential. One that every job asks for is always due: not
/// to have tried is not to have met it.
pub(super) fn is_due(essential: Essential, l: &Ledger, brief: &Brief) -> bool {
    let opened =
        || l.did().any(|did| matches!(did.action, Action::Plug { .. } | Action::Adapter { .. }));
    match essential {
        Essential::AlarmResponse => {
            l.events.iter().any(|event| matches!(event.what, EventKind::Alarm))
        }
        Essential::Isolation | Essential::NoGasToOpenPort | Essential::PortsSealed => opened(),
        Essential::JointsChecked => {
            opened() || repairs::mended(l).any(|it| !it.repair.disturbs().is_empty())
        }
        Essential::MeterTrue => l.wrote().next().is_some(),
        Essential::BothStagesRead | Essential::InletWithOthers => readings_due(l, brief),
        Essential::ConversionProven => !conversion::left_for_gas(l),
        // Shut off, nothing is left set; and a supply that is somebody else's is theirs to set.
        Essential::SettingsInPlate => !l.left_shut_off(),
        Essential::SupplyInLimits => {
            l.setup.card.supply == SupplyRight::Trainee && !l.left_shut_off()
        }
        // What was rightly left off has nothing to be put back on.
        Essential::Restored => !rightly_shut_off(l, brief),
        Essential::NothingBypassed | Essential::RightEnding => true,
        Essential::CauseNamed => causes::is_due(l),
        Essential::WorkAccounted => required::any_due(l),
    }
}
