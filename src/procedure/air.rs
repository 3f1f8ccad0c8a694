//! Nose, eyes and window.

use super::goal::{after, at, at_furnace, at_valve, unless};
use super::{Memory, Step, isolate};
use crate::hands::action::Action;
use crate::parts::{Door, Fitted, Height, Opening, Subject, Window};
use crate::senses::seen::Seen;

/// Something looked at closely, and the note newer than the last repair.
pub(super) fn looked(seen: &Seen, memory: &Memory, subject: Subject) -> Step {
    let done = seen.sheet.done.last().map_or(0, |done| done.tick);
    if seen.sheet.note(subject).is_some_and(|note| note.tick >= done) {
        return Step::Met;
    }
    look(seen, memory, subject)
}

/// Something looked at since the person came here: flames and lamp change from hour to hour.
pub(super) fn looked_here(seen: &Seen, memory: &Memory, subject: Subject) -> Step {
    if memory.looked.contains(&subject) { Step::Met } else { look(seen, memory, subject) }
}

/// A close look, with what stands in front of it out of the way.
fn look(seen: &Seen, memory: &Memory, subject: Subject) -> Step {
    let burner_door_off = || isolate::door(seen, memory, Door::Burner, Fitted::Off);
    let there = || match subject {
        Subject::Orifices | Subject::SpringMark | Subject::LowGasSwitch => {
            burner_door_off().then(memory, || at_valve(seen))
        }
        Subject::Flames
        | Subject::StatusLamp
        | Subject::DraftHose
        | Subject::BoxHose
        | Subject::FlameRod => at_furnace(seen).then(memory, burner_door_off),
        Subject::Filter => {
            at_furnace(seen).then(memory, || isolate::door(seen, memory, Door::Blower, Fitted::Off))
        }
        Subject::Plate
        | Subject::ConversionLabel
        | Subject::Vent
        | Subject::AirOpening
        | Subject::Connector
        | Subject::DripLeg => at_furnace(seen),
        Subject::SupplyVent
        | Subject::TankGauge
        | Subject::MeterDial
        | Subject::CoAlarm
        | Subject::SupplyRegulator
        | Subject::Registers => at(seen, &[subject.place()]),
    };
    after(memory, there, Action::Look(subject))
}

/// The air smelt at a height where the person stands.
pub(super) fn smelt(memory: &Memory, height: Height) -> Step {
    unless(memory.smelt.contains(&height), Action::Sniff(height))
}

/// The plant room's window.
pub(super) fn window(seen: &Seen, memory: &Memory, to: Opening) -> Step {
    if memory.furnace.is_some_and(|it| it.window == to) {
        return Step::Met;
    }
    after(memory, || at_furnace(seen), Action::Window { window: Window::PlantRoom, to })
}
