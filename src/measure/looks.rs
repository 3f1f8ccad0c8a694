//! What eyes, ears and nose get everywhere: on arrival, and with the furnace off and its doors open.

use super::driver::Driver;
use crate::bench::run::Witness;
use crate::parts::{Door, Fitted, OnOff, Place, Subject};
use crate::procedure::Goal;
use crate::senses::seen::{FurnaceSeen, Note, Smell, Sound};

/// How long a nose is held somewhere, in seconds.
const SNIFF_S: u64 = 5;
/// How long the furnace stands switched off before it is looked into, in seconds: what glows or
/// turns has come to rest.
const REST_S: u64 = 120;

/// What there is to perceive at a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Around {
    /// The furnace as it is seen on coming here.
    pub furnace: Option<Box<FurnaceSeen>>,
    /// The smell after a while.
    pub smell: Smell,
    /// The sounds after the same while.
    pub sounds: Vec<Sound>,
}

/// Goes everywhere, touches nothing, and perceives.
pub fn around(by: &mut Driver, witness: &mut dyn Witness) -> Vec<Around> {
    let mut all = Vec::new();
    for &place in Place::ALL {
        by.reach(&[Goal::At(place)], witness);
        let furnace = by.bench().seen().furnace.map(Box::new);
        by.wait(SNIFF_S, witness);
        let seen = by.bench().seen();
        all.push(Around { furnace, smell: seen.smell, sounds: seen.sounds });
    }
    all
}

/// The furnace off, its doors open, everything still.
pub fn open(by: &mut Driver, witness: &mut dyn Witness) {
    let off = Fitted::Off;
    by.reach(
        &[Goal::Power(OnOff::Off), Goal::Door(Door::Burner, off), Goal::Door(Door::Blower, off)],
        witness,
    );
    by.wait(REST_S, witness);
}

/// Looks closely at everything; what stands on the clipboard then.
pub fn closely(by: &mut Driver, witness: &mut dyn Witness) -> Vec<Note> {
    let subjects = Place::ALL.iter().flat_map(|place| {
        Subject::ALL.iter().copied().filter(move |subject| subject.place() == *place)
    });
    by.reach(&subjects.map(Goal::Looked).collect::<Vec<_>>(), witness);
    // The figure on the dial is where it happens to stand.
    let notes = by.bench().seen().sheet.notes.clone().into_iter();
    notes.filter(|note| note.subject != Subject::MeterDial).collect()
}
