//! Each caption has a sound, each sound has a caption.

use std::collections::BTreeSet;

use quarterturn::parts::Level;
use quarterturn::senses::seen::Sound;
use quarterturn::sound::moment::Moment;
use quarterturn::sound::voice::{Made, Voice, made_for};

/// Every captioned sound. A new one stops the compiler here.
fn all() -> Vec<Sound> {
    let mut all: Vec<Sound> = Level::ALL.iter().map(|level| Sound::Burners(*level)).collect();
    all.extend([
        Sound::Inducer,
        Sound::InducerFast,
        Sound::Blower,
        Sound::BlowerSlow,
        Sound::Hiss,
        Sound::Bang,
        Sound::Alarm,
        Sound::Relief,
        Sound::OtherApplianceBurning,
    ]);
    for sound in &all {
        match sound {
            Sound::Inducer
            | Sound::InducerFast
            | Sound::Burners(_)
            | Sound::Blower
            | Sound::BlowerSlow
            | Sound::Hiss
            | Sound::Bang
            | Sound::Alarm
            | Sound::Relief
            | Sound::OtherApplianceBurning => {}
        }
    }
    all
}

/// Every voice belongs to a caption, so that nothing goes on that is not written.
#[test]
fn every_voice_is_captioned() {
    let made: Vec<Made> = all().into_iter().map(made_for).collect();
    for voice in Voice::ALL {
        assert!(made.contains(&Made::Voice(voice)), "{voice:?} has no caption");
    }
    assert!(made.contains(&Made::Moment(Moment::LateLight)));
}

/// Every moment has a caption of its own, and it is a text.
#[test]
fn every_moment_is_captioned() {
    let captions: BTreeSet<&str> = Moment::ALL.iter().map(|moment| moment.caption()).collect();
    assert_eq!(captions.len(), Moment::ALL.len());
    for caption in captions {
        assert!(caption.contains(' '), "{caption}");
    }
}

/// Moments of the hand are at hand; those of the furnace are as far away as that.
#[test]
fn the_hand_is_where_the_ear_is() {
    for moment in Moment::ALL {
        assert!(!(moment.is_of_hand() && moment.is_of_furnace()), "{moment:?}");
    }
}
