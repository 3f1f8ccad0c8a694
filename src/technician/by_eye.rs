//! What the eye finds at hose, trap and flame rod before a part is swapped.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mind::Mind;
use super::step::{Step, act, give_up, take, think};
use crate::appliance::safety::Hose;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Fitted, Subject};
use crate::senses::seen::{Note, Rod, Seen, Signs, Water};

/// Height above the sea from which a furnace is derated, in feet (common practice).
pub(super) const DERATE_FT: i32 = 2000;

/// Once the burner door is off on arrival: hoses, trap, flame rod and ground wire. What is plainly wrong
/// there goes on the list of repairs.
pub(super) fn on_arrival() -> Vec<Step> {
    vec![
        act(Action::Look(Subject::FlameRod)),
        act(Action::Look(Subject::BoxHose)),
        act(Action::Look(Subject::DraftHose)),
        think(|me, seen| {
            let Some(signs) = signs(seen) else { return Vec::new() };
            let found = [
                wires(seen).then_some((Diagnosis::SafetyJumpered, Repair::RemoveBypasses)),
                (signs.rod == Rod::Filmed).then_some(FILM),
                (signs.ground == Fitted::Off).then_some(GROUND),
                (signs.box_hose == Fitted::Off)
                    .then_some((Diagnosis::BoxHoseOff, Repair::RefitBoxHose)),
                at_draft(seen),
            ];
            for (words, repair) in found.into_iter().flatten() {
                if !me.know.has_mended(repair) {
                    me.plan_repair(words, repair);
                }
            }
            Vec::new()
        }),
    ]
}

const FILM: (Diagnosis, Repair) = (Diagnosis::RodFilmed, Repair::CleanFlameRod);
const GROUND: (Diagnosis, Repair) = (Diagnosis::GroundLoose, Repair::MendBurnerGround);

/// The low pressure switch does not close: where no inducer was heard, nothing draws.
pub(super) fn first_switch() -> Vec<Step> {
    vec![
        act(Action::Look(Subject::DraftHose)),
        think(|me, seen| {
            if !me.know.since_call.inducer_heard && !me.know.has_mended(Repair::ReplaceInducer) {
                return mend(me, Diagnosis::InducerDead, Repair::ReplaceInducer);
            }
            draft(me, seen, Diagnosis::FirstSwitchStaysOpen, Repair::ReplaceFirstSwitch)
        }),
    ]
}

/// The high pressure switch does not close; in thin air it may be sound.
pub(super) fn next_switch(thin_air: bool) -> Vec<Step> {
    let why: fn(&mut Mind, &Seen) -> Vec<Step> = if thin_air {
        |me, seen| match at_draft(seen).filter(|(_, repair)| !me.know.has_mended(*repair)) {
            Some((words, repair)) => mend(me, words, repair),
            None => give_up(me, Diagnosis::FullSwitchInThinAir),
        }
    } else {
        |me, seen| draft(me, seen, Diagnosis::FullSwitchStaysOpen, Repair::ReplaceFullSwitch)
    };
    vec![act(Action::Look(Subject::DraftHose)), think(why)]
}

/// A flame that is lost again: rod and ground wire, then what the burners themselves may want.
pub(super) fn flame_lost() -> Vec<Step> {
    vec![act(Action::Look(Subject::FlameRod)), think(at_rod)]
}

/// What is seen at hose and trap; with nothing there, the switch itself.
fn draft(me: &mut Mind, seen: &Seen, diagnosis: Diagnosis, switch: Repair) -> Vec<Step> {
    match at_draft(seen).filter(|(_, repair)| !me.know.has_mended(*repair)) {
        Some((seen_there, repair)) => mend(me, seen_there, repair),
        None if me.know.has_mended(switch) => give_up(me, diagnosis),
        None => mend(me, diagnosis, switch),
    }
}

fn mend(me: &mut Mind, diagnosis: Diagnosis, repair: Repair) -> Vec<Step> {
    me.plan_repair(diagnosis, repair);
    take(Course::MendAndReadAgain)
}

/// Whether a wire lies across the contact of a safety device.
fn wires(seen: &Seen) -> bool {
    let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
    burners.is_some_and(|burners| burners.wires.any())
}

fn signs(seen: &Seen) -> Option<&Signs> {
    Some(&seen.furnace.as_ref()?.burners.as_ref()?.signs)
}

fn at_draft(seen: &Seen) -> Option<(Diagnosis, Repair)> {
    let signs = signs(seen)?;
    match (signs.draft_hose, signs.draft_water) {
        (Hose::Off, _) => return Some((Diagnosis::DraftHoseOff, Repair::RefitDraftHose)),
        (Hose::Split, _) => return Some((Diagnosis::DraftHoseSplit, Repair::ReplaceDraftHose)),
        (Hose::Sound, Water::Stands) => {
            return Some((Diagnosis::WaterInDraftHose, Repair::ClearTrap));
        }
        (Hose::Sound, Water::None) => {}
    }
    // Hose and housing are in order: what the look found wrong is the trap.
    let wrong = seen.sheet.note(Subject::DraftHose).is_some_and(Note::is_bad);
    wrong.then_some((Diagnosis::TrapDry, Repair::PrimeTrap))
}

fn at_rod(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let seen_there = signs(seen).and_then(|signs| match (signs.rod, signs.ground) {
        (Rod::Filmed, _) => Some(FILM),
        (Rod::Bright, Fitted::Off) => Some(GROUND),
        (Rod::Bright, Fitted::On) => None,
    });
    if let Some((words, repair)) = seen_there.filter(|(_, it)| !me.know.has_mended(*it)) {
        return mend(me, words, repair);
    }
    match me.know.next_of(FLAME_LOST) {
        Some(repair) => mend(me, Diagnosis::FlameLost, repair),
        None => give_up(me, Diagnosis::RepairsInVain),
    }
}

/// From what does no harm to the part.
const FLAME_LOST: &[Repair] = &[
    Repair::CleanFlameRod,
    Repair::MendBurnerGround,
    Repair::CleanBurners,
    Repair::CleanInletScreen,
];
