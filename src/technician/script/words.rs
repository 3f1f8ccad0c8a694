//! The words of a script and what they stand for.

use crate::catalogue::repair::Repair;
use crate::hands::action::{Contact, StartStop, Topic};
use crate::parts::{
    Answer, Cause, Door, Duty, Ending, Fitted, Gauge, HandValve, Height, Joint, JointVerdict,
    Level, LowSide, OnOff, Opening, OtherAppliance, Phase, Place, Port, Push, Screw, Sight, Spot,
    Stage, Subject, Tool, Window,
};
use crate::senses::seen::Sound;
use crate::units::PressureUnit;
use crate::words::Id;

/// Something with a word of its own.
pub trait Word: Copy + PartialEq + 'static {
    /// What it is, for messages.
    const WHAT: Id;
    /// Every thing that has a word.
    const ALL: &'static [Self];

    /// Word that a script writes for it.
    fn word(self) -> &'static str;
}

/// Words that the parts bring along as their ids.
macro_rules! ids {
    ($( $kind:ident, $what:expr; )+) => { $(
        impl Word for $kind {
            const WHAT: Id = $what;
            const ALL: &'static [Self] = <$kind>::ALL;
            fn word(self) -> &'static str {
                self.id()
            }
        }
    )+ };
}

ids! {
    Place, id!("script-kind-place");
    Port, id!("script-kind-port");
    HandValve, id!("script-kind-hand-valve");
    OtherAppliance, id!("script-kind-appliance");
    Screw, id!("script-kind-screw");
    Door, id!("script-kind-door");
    Window, id!("script-kind-window");
    Tool, id!("script-kind-tool");
    Joint, id!("script-kind-joint");
    Spot, id!("script-kind-spot-to-measure-at");
    Subject, id!("script-kind-thing-to-look-at");
    Repair, id!("script-kind-repair");
    Stage, id!("script-kind-stage");
    Cause, id!("script-kind-cause");
    Answer, id!("script-kind-answer");
    Sight, id!("script-kind-sight");
}

/// Words that are given here. The match makes sure that none is forgotten.
macro_rules! words {
    ($( $kind:ident, $what:expr => { $( $variant:ident = $word:literal, )+ } )+) => { $(
        impl Word for $kind {
            const WHAT: Id = $what;
            const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];
            fn word(self) -> &'static str {
                match self { $( Self::$variant => $word, )+ }
            }
        }
    )+ };
}

words! {
    OnOff, id!("script-kind-position") => { On = "on", Off = "off", }
    Fitted, id!("script-kind-position") => { On = "on", Off = "off", }
    StartStop, id!("script-kind-press") => { Start = "start", Stop = "stop", }
    Gauge, id!("script-kind-instrument") => {
        Digital = "digital",
        WaterColumn = "water-column",
        SpringGauge = "spring-gauge",
    }
    Opening, id!("script-kind-position") => { Open = "open", Closed = "closed", }
    Height, id!("script-kind-height") => { Floor = "floor", Head = "head", }
    Push, id!("script-kind-way-of-pushing") => { Fully = "fully", Halfway = "halfway", }
    LowSide, id!("script-kind-connection") => { Air = "air", BurnerBox = "burner-box", }
    Phase, id!("script-kind-phase") => { Found = "found", Left = "left", }
    JointVerdict, id!("script-kind-verdict") => { Tight = "tight", Leaking = "leaking", }
    Contact, id!("script-kind-contact") => { SupplyOwner = "supply-owner", Emergency = "emergency", }
    Topic, id!("script-kind-topic") => {
        WorkStarts = "work-starts",
        GasSmellDrill = "gas-smell-drill",
        Unsafe = "unsafe",
        GetOut = "get-out",
    }
    Ending, id!("script-kind-ending") => {
        InService = "in-service",
        SupplyOwnerCalled = "supply-owner-called",
        ShutOff = "shut-off",
    }
    Duty, id!("script-kind-piece-of-work") => {
        Combustion = "combustion",
        TemperatureRise = "temperature-rise",
        GasRate = "gas-rate",
        PipingLeakCheck = "piping-leak-check",
        ArrivalLooks = "arrival-looks",
    }
    PressureUnit, id!("script-kind-unit") => { InWc = "inH2O", KPa = "kPa", Mbar = "mbar", }
}

impl Word for Sound {
    const WHAT: Id = id!("script-kind-sound");
    const ALL: &'static [Self] = &[
        Self::Inducer,
        Self::InducerFast,
        Self::Burners(Level::ALL[0]),
        Self::Burners(Level::ALL[1]),
        Self::Burners(Level::ALL[2]),
        Self::Blower,
        Self::BlowerSlow,
        Self::Hiss,
        Self::Bang,
        Self::Alarm,
        Self::Relief,
        Self::OtherApplianceBurning,
    ];

    fn word(self) -> &'static str {
        match self {
            Self::Inducer => "inducer",
            Self::InducerFast => "inducer-high",
            Self::Burners(Level::Only) => "burners",
            Self::Burners(Level::Low) => "burners-low",
            Self::Burners(Level::High) => "burners-high",
            Self::Blower => "blower",
            Self::BlowerSlow => "blower-slow",
            Self::Hiss => "hiss",
            Self::Bang => "bang",
            Self::Alarm => "alarm",
            Self::Relief => "relief",
            Self::OtherApplianceBurning => "neighbor-burning",
        }
    }
}

/// The words of a list of one kind, for a message.
pub(super) fn all_words<W: Word>() -> String {
    W::ALL.iter().map(|one| one.word()).collect::<Vec<_>>().join(", ")
}

/// The word among `words` that is nearest to `found`, if one is near enough to be meant.
pub(super) fn nearest<'a>(found: &str, words: impl Iterator<Item = &'a str>) -> Option<String> {
    let lower = found.to_lowercase();
    let likeness = |word: &str| strsim::jaro_winkler(&lower, &word.to_lowercase());
    words
        .map(|word| (likeness(word), word))
        .filter(|(likeness, _)| *likeness >= 0.75)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, word)| word.to_owned())
}
