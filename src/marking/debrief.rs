//! What comes after a job, made once for window, terminal and data: the verdict, what was wrong in the
//! trainee's own numbers, what it would have done to the house, what to practise next, the sheet.

mod account;
mod causes;
mod house;
mod moment;
mod next;
mod night;
mod own;
mod sheet;
mod text;

pub use account::{Account, Debrief, Done};
pub use causes::{CameFrom, CauseTold, Left};
pub use moment::{clock, seconds, severity_word};
pub use next::Next;
pub use night::NIGHT_S;
pub use sheet::{FindingLine, JointLine, MeasuredLine, NumberIs, Sheet, SheetLine, SheetNumber};

use super::brief::Brief;
use super::deed::describe;
use super::evaluate::Marks;
use super::ledger::Ledger;
use super::trace::Trace;
use crate::hands::action::Action;
use crate::model::aftermath::Aftermath;

/// What a debrief needs to know of the job beside what happened on it.
#[derive(Debug, Clone, Copy)]
pub struct Job<'a> {
    /// How it may rightly end.
    pub brief: &'a Brief,
    /// Its id, where it is one that ships.
    pub id: Option<&'a str>,
    /// Its author's note for after it.
    pub note: Option<&'a str>,
    /// The hours after it, where the model went on through them.
    pub night: Option<&'a Aftermath>,
}

/// Puts a debrief together.
#[must_use]
pub fn debrief(ledger: &Ledger, marks: Marks, trace: Trace, job: Job<'_>) -> Debrief {
    let causes = causes::causes(ledger);
    let done = ledger.did().filter(|did| is_work(did.action));
    let account = Account {
        title: ledger.setup.card.title.clone(),
        house: house::consequences(ledger, job.brief, &causes),
        night: job
            .night
            .filter(|_| ledger.left().is_some())
            .map_or_else(Vec::new, |after| night::night(ledger, after)),
        causes,
        next: next::next(&marks, job.brief, job.id),
        sheet: sheet::sheet(ledger),
        note: job.note.map(str::to_owned),
        done: done
            .map(|did| Done { at_s: seconds(did.tick), what: describe(did.action) })
            .collect(),
    };
    Debrief { marks, account, trace }
}

/// Work that belongs on a time line; walking and tools do not.
fn is_work(action: &Action) -> bool {
    !matches!(action, Action::Go(_) | Action::Take(_) | Action::PutDown | Action::Look(_))
}
