//! Where to look when the screw is not the cause: one look after the other, each to be done.

use super::hint::Hint;
use super::lead;
use super::memory::Remembered;
use crate::appliance::ignition::ControlStatus;
use crate::panels::sheet::is_stale;
use crate::parts::{Place, Subject};
use crate::procedure::Goal;
use crate::senses::seen::{Note, Seen};

/// Looks, from those that need no door to those that need one.
const LOOKS: [Subject; 9] = [
    Subject::StatusLamp,
    Subject::Flames,
    Subject::DraftHose,
    Subject::FlameRod,
    Subject::Connector,
    Subject::DripLeg,
    Subject::Vent,
    Subject::AirOpening,
    Subject::Filter,
];

/// The next look, and once all are taken, what to do with them.
pub(super) fn elsewhere(why: &str, seen: &Seen, remembered: &Remembered) -> Hint {
    let fresh = |subject| seen.sheet.note(subject).is_some_and(|note| !is_stale(note, &seen.sheet));
    let Some(subject) = LOOKS.into_iter().find(|subject| !fresh(*subject)) else {
        return Hint::say(t!("coach-notes-together", why = why));
    };
    let subject_name = subject.label().to_lowercase();
    let text = t!("coach-look-next", why = why, subject = subject_name);
    look(seen, remembered, subject, &text)
}

/// Both stages are called, and the second does not come: what can be told with the furnace on.
pub(super) fn stays_on_low(seen: &Seen, remembered: &Remembered) -> Hint {
    let noted =
        seen.sheet.note(Subject::StatusLamp).is_some_and(|note| !is_stale(note, &seen.sheet));
    if noted {
        return Hint::say(t!("coach-try-wire"));
    }
    look(seen, remembered, Subject::StatusLamp, t!("coach-stays-low"))
}

/// Something was found amiss: mend it; once it was worked on, look again.
pub(super) fn found(seen: &Seen, remembered: &Remembered, note: &Note) -> Hint {
    if is_stale(note, &seen.sheet) {
        let text = t!("coach-look-again", note = note.words());
        return look(seen, remembered, note.subject, &text);
    }
    let text = t!("coach-mend", note = note.words());
    let there = match note.subject.place() {
        Place::PlantRoom | Place::GasValve => {
            matches!(seen.place, Place::PlantRoom | Place::GasValve)
        }
        place @ (Place::Yard | Place::Hall | Place::Away) => seen.place == place,
    };
    let way = Goal::At(note.subject.place());
    match lead::saying(&text, way, seen, remembered).filter(|_| !there) {
        Some(go) => go,
        None => Hint { part: Some(note.subject.id()), ..Hint::say(text) },
    }
}

/// Goes where a look is taken, opens what is in front of it, and takes it.
fn look(seen: &Seen, remembered: &Remembered, subject: Subject, text: &str) -> Hint {
    lead::saying(text, Goal::Looked(subject), seen, remembered).unwrap_or_else(|| Hint::say(text))
}

/// The control has given up, or a limit stands open.
pub(super) fn gave_up(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let furnace = seen.furnace.as_ref()?;
    let status = furnace.status;
    let waits_in_vain =
        matches!(status, ControlStatus::AwaitsGasPressure | ControlStatus::SwitchClosedAtRest);
    (status.is_stopped() || waits_in_vain).then(|| {
        let why = t!("coach-lamp-says", status = status.words());
        elsewhere(&why, seen, remembered)
    })
}
