//! Where to look when the screw is not the cause: one look after the other, each to be done.

use super::{Hint, to_plant_room};
use crate::hands::action::Action;
use crate::panels::sheet::is_stale;
use crate::parts::{Door, Fitted, OnOff, Place, Subject};
use crate::senses::seen::{Note, Seen};

/// What is looked at, and the words for it, from what needs no door to what needs one.
const LOOKS: [(Subject, &str); 9] = [
    (Subject::StatusLamp, "the status lamp"),
    (Subject::Flames, "the flames"),
    (Subject::DraftHose, "the draft hose and the trap"),
    (Subject::FlameRod, "the flame rod"),
    (Subject::Connector, "the connector"),
    (Subject::DripLeg, "the drip leg"),
    (Subject::Vent, "the flue"),
    (Subject::AirOpening, "the air opening"),
    (Subject::Filter, "the filter"),
];

/// The next look, and once all are taken, what to do with them.
pub(super) fn elsewhere(why: &str, seen: &Seen) -> Hint {
    let fresh = |subject| seen.sheet.note(subject).is_some_and(|note| !is_stale(note, &seen.sheet));
    let why = format!("{why} The cause lies elsewhere. Look at");
    let Some((subject, name)) = LOOKS.into_iter().find(|(subject, _)| !fresh(*subject)) else {
        return Hint::say(format!(
            "{why} what your notes say together, then hold the meter to the part that they point \
             to. After a repair, read again and write the left column."
        ));
    };
    let text = format!("{why} one thing after the other; next: {name}.");
    look(seen, subject, &text)
}

/// Both stages are called, and the second does not come: what can be told with the furnace on.
pub(super) fn stays_on_low(seen: &Seen) -> Hint {
    let why = "Both stages are called, and it stays on low.";
    let noted =
        seen.sheet.note(Subject::StatusLamp).is_some_and(|note| !is_stale(note, &seen.sheet));
    if !noted {
        return look(seen, Subject::StatusLamp, &format!("{why} What does the status lamp say?"));
    }
    Hint::say(format!(
        "{why} Put the wire between R and W2 for a try. If high burns with it, the call does not reach \
         the control; if not, hold the electrical meter to the coil of the high stage and across its \
         pressure switch. The wire comes off again."
    ))
}

/// Something was found amiss: mend it; once it was worked on, look again.
pub(super) fn found(seen: &Seen, note: &Note) -> Hint {
    if is_stale(note, &seen.sheet) {
        let text = format!("You have worked since you noted: \"{}\" Look again.", note.words());
        return look(seen, note.subject, &text);
    }
    let text = format!(
        "{} The cause lies elsewhere. Look at what can be done there: mend it, or call whoever may. \
         After a repair, read again and write the left column.",
        note.words()
    );
    match way_to(seen, note.subject, &text) {
        Some(go) => go,
        None => Hint { part: Some(note.subject.id()), ..Hint::say(text) },
    }
}

/// Goes where a look is taken, opens what is in front of it, and takes it.
fn look(seen: &Seen, subject: Subject, text: &str) -> Hint {
    if let Some(go) = way_to(seen, subject, text) {
        return go;
    }
    if let Some(furnace) = &seen.furnace {
        let off = |door: Door, what: &str| {
            let text = format!("{text} Take the {what} off first.");
            match furnace.switch {
                OnOff::On if door == Door::Blower => Hint::act(
                    format!("{text} Power off before that."),
                    "furnace-switch",
                    Action::FurnaceSwitch(OnOff::Off),
                ),
                OnOff::On | OnOff::Off => {
                    Hint::act(text, door.id(), Action::Door { door, to: Fitted::Off })
                }
            }
        };
        let inside = [
            Subject::Flames,
            Subject::StatusLamp,
            Subject::DraftHose,
            Subject::BoxHose,
            Subject::FlameRod,
        ];
        if inside.contains(&subject) && furnace.burner_door == Fitted::On {
            return off(Door::Burner, "burner door");
        }
        if subject == Subject::Filter && furnace.blower_door == Fitted::On {
            return off(Door::Blower, "blower door");
        }
    }
    Hint::act(text, subject.id(), Action::Look(subject))
}

/// The way to where something is looked at; none when one stands there.
fn way_to(seen: &Seen, subject: Subject, text: &str) -> Option<Hint> {
    let at_furnace = |place| matches!(place, Place::PlantRoom | Place::GasValve);
    if subject.place() == seen.place || (at_furnace(subject.place()) && at_furnace(seen.place)) {
        return None;
    }
    Some(match subject.place() {
        Place::PlantRoom | Place::GasValve => to_plant_room(text),
        wanted @ (Place::Yard | Place::Hall | Place::Away) => Hint::go(text, wanted),
    })
}
