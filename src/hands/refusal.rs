//! Why something cannot be done. Refusals teach; they cost nothing.

/// A reason, in words that help.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Refusal {
    /// The thing is elsewhere.
    NotHere,
    /// Another tool is needed.
    NeedsTool(crate::parts::Tool),
    /// Both hands are needed: put the tool down.
    HandFull,
    /// A door is in the way.
    DoorInTheWay,
    /// A cap is over the screw.
    CapOn,
    /// The port is not open.
    PortNotOpen,
    /// There is no plug in the port.
    NoPlug,
    /// The plug is too tight to spin.
    TooTight,
    /// The plug is not in the thread yet.
    NotStarted,
    /// The plug stands loose: nothing to break.
    AlreadyLoose,
    /// There is no adapter in the port.
    NoAdapter,
    /// The hose is on it.
    HoseInTheWay,
    /// The one adapter is in the other port.
    AdapterElsewhere,
    /// The hose is already on something.
    HoseInUse,
    /// The hose is not on anything.
    HoseFree,
    /// The manometer is off.
    MeterOff,
    /// It is that way already.
    AlreadySo,
    /// There is no such thing on this job.
    NotOnThisJob,
    /// A number that makes no sense.
    Absurd,
    /// The port stands open: there is no joint to brush.
    NothingToBrush,
    /// A job is handed over to the householder, or after stepping back from the furnace.
    HandOverInside,
    /// Nothing to be seen with the dauber: the joint is dry.
    NotWet,
    /// The screw is at its stop.
    AtStop,
    /// From inside, with gas in the air: go outside first.
    CallFromOutside,
    /// A valve upstream of the work is open.
    ShutFirst(crate::parts::Cock),
    /// Gas pressure is left in what is to be opened.
    PressureLeft,
    /// The furnace has power.
    PowerOn,
    /// There is no such part on this job.
    NotFitted,
    /// The instrument is clipped in.
    ClippedIn,
    /// The instrument's leads are in the way.
    LeadsInTheWay,
    /// The instrument is not clipped in.
    NotClipped,
    /// The instrument shows nothing that could be written there.
    NothingShown,
    /// The stopwatch is not held to the dial, or does not run.
    WatchNotRunning,
    /// Gas pressure stands in the hose.
    HoseUnderPressure,
    /// The job is over.
    Over,
}

impl Refusal {
    /// The reason as a sentence.
    #[must_use]
    pub fn text(self) -> String {
        match self {
            Self::NotHere => "That is not within reach from here.".into(),
            Self::NeedsTool(tool) => {
                format!("This needs the {} in hand.", tool.label().to_lowercase())
            }
            Self::HandFull => "Put down what you hold first.".into(),
            Self::DoorInTheWay => "The furnace door is in the way.".into(),
            Self::CapOn => "The cap covers the screw.".into(),
            Self::PortNotOpen => "Something is in that port already.".into(),
            Self::NoPlug => "There is no plug in that port.".into(),
            Self::TooTight => "It will not spin: break it loose with the short arm first.".into(),
            Self::NotStarted => "The plug is not in the thread yet.".into(),
            Self::AlreadyLoose => "It is loose already: spin it.".into(),
            Self::NoAdapter => "There is no adapter in that port to push the hose on.".into(),
            Self::HoseInTheWay => "Pull the hose off first.".into(),
            Self::AdapterElsewhere => "The adapter is still in the other port.".into(),
            Self::HoseInUse => "The hose is on a port already.".into(),
            Self::HoseFree => "The hose is not on anything.".into(),
            Self::MeterOff => "The manometer is off.".into(),
            Self::AlreadySo => "It is that way already.".into(),
            Self::NotOnThisJob => "There is no such thing on this job.".into(),
            Self::Absurd => "No such number can be read here.".into(),
            Self::NothingToBrush => "The port is open: there is no joint to brush yet.".into(),
            Self::HandOverInside => {
                "Hand over to the householder: go to the hall, or stand up in the plant room."
                    .into()
            }
            Self::NotWet => "There is no leak fluid on that joint.".into(),
            Self::AtStop => "The screw is at its stop.".into(),
            Self::CallFromOutside => "Not from in here: go outside first, then call.".into(),
            Self::ShutFirst(cock) => {
                format!("Gas stands at this joint: shut the {} first.", cock.label().to_lowercase())
            }
            Self::PressureLeft => {
                "Gas pressure is left behind the shut valve: let it off at the opened inlet port \
                 first."
                    .into()
            }
            Self::PowerOn => "Switch the furnace off first: this part carries voltage.".into(),
            Self::NotFitted => "Nothing like that is fitted here.".into(),
            Self::ClippedIn => "It is clipped in at the flame rod: unclip it first.".into(),
            Self::LeadsInTheWay => {
                "The microammeter's leads are in the way: unclip it first.".into()
            }
            Self::NotClipped => "The microammeter is not clipped in.".into(),
            Self::NothingShown => "The instrument shows no number there to write.".into(),
            Self::WatchNotRunning => "Start the stopwatch at the dial first.".into(),
            Self::HoseUnderPressure => {
                "Gas stands in the hose: shut the valve and let it off, or pull the hose off the \
                 port, before another instrument is put on."
                    .into()
            }
            Self::Over => "The job is over.".into(),
        }
    }
}
