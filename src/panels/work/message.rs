//! What a look or a repair has just given, to be said over the drawing for some seconds, where the
//! eyes are. A look stays in the notes.

use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::panels::actions;
use crate::panels::command::Command;
use crate::panels::view::Job;
use crate::parts::Subject;
use crate::units::TICKS_PER_S;

/// How long it stays on a clock, in seconds.
const STAYS_S: u64 = 10;

/// What is said now, and what it waits for.
#[derive(Debug, Default)]
pub(super) struct Message {
    /// What is said, and the tick after which it is not.
    said: Option<(String, u64)>,
    /// The last note that is known, and the tick up to which notes are.
    known: (Option<(Subject, u64)>, u64),
    /// A repair that was asked for and neither done nor refused yet, and since when.
    asked: Option<(Repair, u64)>,
    /// Something to somebody that was said and neither heard nor refused yet, and since when.
    spoken: Option<(String, u64)>,
}

impl Message {
    /// Nothing to say of what was noted before.
    pub(super) fn new(job: &Job<'_>) -> Self {
        Self { known: (last_note(job), job.seen.tick), ..Self::default() }
    }

    /// What is said now.
    pub(super) fn text(&self) -> Option<&str> {
        self.said.as_ref().map(|(text, _)| text.as_str())
    }

    /// Looks for a new note, and for a repair that was done since it was asked for.
    pub(super) fn follow(&mut self, job: &Job<'_>) {
        let now = job.seen.tick;
        let until = now + STAYS_S * TICKS_PER_S * u64::from(job.pace.speed);
        if let Some((_, end)) = &mut self.said {
            // Time may have been slowed or gone back.
            *end = until.min(*end);
        }
        self.said.take_if(|(_, end)| now >= *end);
        let (last, up_to) = self.known;
        self.known = (last_note(job), now);
        if self.known.0 != last
            && let Some(note) = job.seen.sheet.notes.last().filter(|note| note.tick >= up_to)
        {
            self.said = Some((t!("message-noted", note = note.words()), until));
        }
        let done = &job.seen.sheet.done;
        let is_done = |asked: &mut (Repair, u64)| {
            let (repair, since) = *asked;
            let it_is = done.iter().any(|done| done.repair == repair && done.tick >= since);
            job.refusal.is_none() && now > since && it_is
        };
        if let Some((repair, _)) = self.asked.take_if(is_done) {
            self.said = Some((done_text(repair.label()), until));
        }
        if let Some((label, _)) = self.spoken.take_if(|(_, since)| now > *since)
            && job.refusal.is_none()
        {
            self.said = Some((done_text(&label), until));
        }
    }

    /// What was commanded this frame: a repair is waited for; anything else done ends the waiting.
    pub(super) fn commanded(&mut self, job: &Job<'_>, commands: &[Command]) {
        for command in commands {
            if let Command::Act(action) = command {
                self.said = None;
                self.spoken = spoken(action, job).map(|label| (label, job.seen.tick));
                self.asked = if let Action::Mend(repair) = action {
                    Some((*repair, job.seen.tick))
                } else {
                    None
                };
            }
            if *command == Command::RefusalRead {
                self.asked = None;
            }
        }
    }
}

fn last_note(job: &Job<'_>) -> Option<(Subject, u64)> {
    job.seen.sheet.notes.last().map(|note| (note.subject, note.tick))
}

/// What is said to somebody, as its list has it.
fn spoken(action: &Action, job: &Job<'_>) -> Option<String> {
    if !matches!(action, Action::Call(_) | Action::Tell(_)) {
        return None;
    }
    let at_hand = ["telephone", "householder"].map(|part| actions::choices(part, job.seen));
    let choices = at_hand.into_iter().flatten().chain(actions::here(job.seen));
    choices.into_iter().find(|choice| choice.action == *action).map(|choice| choice.label)
}

fn done_text(label: &str) -> String {
    let mut letters = label.chars();
    let first: String = letters.next().into_iter().flat_map(char::to_lowercase).collect();
    t!("message-done", repair = format!("{first}{}", letters.as_str()))
}
