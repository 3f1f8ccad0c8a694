//! How a job ended, as far as other questions hang on it.

use super::brief::Brief;
use super::grounds;
use super::ledger::Ledger;
use crate::parts::Ending;

/// Whether the usual right end of this job is to leave the furnace shut off.
pub(super) fn stays_off(brief: &Brief) -> bool {
    brief.right_endings.first() == Some(&Ending::ShutOff)
}

/// Whether it was left shut off, that is the usual right end of this job, and something was found
/// that speaks for it.
pub(super) fn rightly_shut_off(l: &Ledger, brief: &Brief) -> bool {
    stays_off(brief) && l.said_shut_off() && grounds::found(l)
}

/// Whether it was left to burn on a job whose usual right end is to leave it shut off, and that
/// ending is not right here as well.
fn wrongly_in_use(l: &Ledger, brief: &Brief) -> bool {
    let used = l.ending().filter(|ending| *ending != Ending::ShutOff);
    stays_off(brief) && used.is_some_and(|ending| !brief.right_endings.contains(&ending))
}

/// Whether the pressures of a firing furnace have to be read. What is rightly shut off need not be
/// fired for a reading, and nobody is told to fire what must not burn.
pub(super) fn readings_due(l: &Ledger, brief: &Brief) -> bool {
    !rightly_shut_off(l, brief) && !wrongly_in_use(l, brief)
}

/// Whether it was handed over to burn.
pub(super) fn in_use(l: &Ledger) -> bool {
    l.left().is_some() && !l.said_shut_off()
}
