//! Looking closely: what a look gives goes onto the clipboard.

use super::done::{Done, plain};
use super::job::Job;
use super::reach;
use super::refusal::Refusal;
use crate::model::Model;
use crate::parts::Subject;
use crate::senses::look::sight;
use crate::senses::seen::Note;

/// Looks and notes. A second look at something replaces what was noted.
pub(super) fn look(model: &Model, job: &mut Job, subject: Subject) -> Done {
    reach::subject(model, subject)?;
    let finding = sight(model, subject).ok_or(Refusal::NotOnThisJob)?;
    let notes = &mut job.sheet_mut().notes;
    notes.retain(|note| note.subject != subject);
    notes.push(Note { subject, tick: model.tick, finding });
    plain()
}
