//! What is known of a part that is looked at: by the last look, and by what one's own hands have
//! done to it since.

use crate::catalogue::repair::Repair;
use crate::parts::Subject;
use crate::senses::seen::Seen;

/// What is known of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Known {
    /// Nothing: nobody has looked or worked here.
    Nothing,
    /// In order when last looked at.
    Sound,
    /// Plainly not in order when last looked at.
    Faulty,
    /// Worked on since the last look.
    Worked(Repair),
}

/// Whether `part@state` holds for a part that is looked at; `None` for any other.
pub(super) fn holds(part: &str, state: &str, seen: &Seen) -> Option<bool> {
    use Repair as R;
    Some(match (part, state) {
        ("connector", state) => connector(seen) == state,
        ("drip-leg", "hangs") => !faulty(seen, Subject::DripLeg, &[R::EmptyDripLeg]),
        ("drip-leg", "missing") => faulty(seen, Subject::DripLeg, &[R::EmptyDripLeg]),
        ("filter", "matted") => faulty(seen, Subject::Filter, &[R::ReplaceFilter]),
        ("vent", "blocked") => faulty(seen, Subject::Vent, &[R::ClearVent]),
        ("vent", "looked") => known(seen, Subject::Vent, &[R::ClearVent]) != Known::Nothing,
        ("vent", "clear") => match known(seen, Subject::Vent, &[R::ClearVent]) {
            Known::Sound | Known::Worked(_) => true,
            Known::Nothing | Known::Faulty => false,
        },
        ("air-opening", "blocked") => faulty(seen, Subject::AirOpening, &[R::ClearIntake]),
        ("supply-vent", state) => supply_vent(seen) == state,
        _ => return None,
    })
}

/// The connector bent straight stays creased; a new one is whole.
pub(super) fn connector(seen: &Seen) -> &'static str {
    let hands = [Repair::ReplaceConnector, Repair::StraightenConnector];
    if last(seen, &hands).is_some_and(|(repair, _)| repair == Repair::StraightenConnector) {
        "creased"
    } else if faulty(seen, Subject::Connector, &hands) {
        "kinked"
    } else {
        "whole"
    }
}

fn supply_vent(seen: &Seen) -> &'static str {
    let hands = [
        Repair::ClearRegulatorVent,
        Repair::PlugRegulatorVent,
        Repair::DrillRegulatorVent,
        Repair::ReplaceSupplyRegulator,
        Repair::FitTwoStageRegulators,
    ];
    let last = last(seen, &hands).map(|(repair, _)| repair);
    if last == Some(Repair::PlugRegulatorVent) {
        "taped"
    } else if last == Some(Repair::DrillRegulatorVent) {
        "drilled"
    } else if faulty(seen, Subject::SupplyVent, &hands) {
        "blocked"
    } else {
        "clear"
    }
}

fn faulty(seen: &Seen, subject: Subject, hands: &[Repair]) -> bool {
    known(seen, subject, hands) == Known::Faulty
}

fn known(seen: &Seen, subject: Subject, hands: &[Repair]) -> Known {
    let note = seen.sheet.note(subject);
    match (note, last(seen, hands)) {
        (Some(note), Some((repair, tick))) if tick >= note.tick => Known::Worked(repair),
        (None, Some((repair, _))) => Known::Worked(repair),
        (Some(note), _) if note.is_bad() => Known::Faulty,
        (Some(_), _) => Known::Sound,
        (None, None) => Known::Nothing,
    }
}

/// The last of these repairs that was done, and when.
fn last(seen: &Seen, hands: &[Repair]) -> Option<(Repair, u64)> {
    let done = seen.sheet.done.iter().rev().find(|done| hands.contains(&done.repair));
    done.map(|done| (done.repair, done.tick))
}
