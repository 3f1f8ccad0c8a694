//! Burners by the ear.

use crate::parts::{Level, Place};
use crate::senses::seen::{Seen, Sound};

/// What is heard of the burners.
pub(super) fn heard(seen: &Seen) -> Option<Level> {
    let levels = seen.levels.iter().rev().copied();
    levels.into_iter().find(|&level| seen.sounds.contains(&Sound::Burners(level)))
}

/// The same where burners can be heard at all.
pub(super) fn heard_here(seen: &Seen) -> Option<Option<Level>> {
    match seen.place {
        Place::PlantRoom | Place::GasValve | Place::Hall => Some(heard(seen)),
        Place::Yard | Place::Away => None,
    }
}
