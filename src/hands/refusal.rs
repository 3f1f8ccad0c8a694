//! Why something cannot be done. Refusals teach; they cost nothing.

use crate::parts::WrittenFinding;

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
    /// A pressure tap with a captive screw: no plug to take out or put in, and no adapter.
    CaptiveScrew,
    /// The captive screw is tight: it is broken loose first.
    ScrewTight,
    /// The captive screw stands loosened: it is turned in to its seat first.
    ScrewNotSeated,
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
    /// The manometer hangs at the furnace, where its hose is.
    MeterAtFurnace,
    /// It is that way already.
    AlreadySo,
    /// There is no such thing on this job.
    NotOnThisJob,
    /// A number that makes no sense.
    Absurd,
    /// A setpoint that the thermostat does not take.
    OffTheDial,
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
    ShutFirst(crate::parts::HandValve),
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
    StopwatchNotRunning,
    /// Gas pressure stands in the hose.
    HoseUnderPressure,
    /// A finding for this cause stands on the sheet already.
    FindingStands,
    /// "Nothing found" beside something that was found.
    NothingBesideSomething,
    /// There is nothing that anything could have been done about.
    NothingToAnswer,
    /// More findings than one sheet takes.
    TooManyFindings,
    /// More to back one finding than fits, or the same twice.
    TooMuchEvidence,
    /// What shall speak for the finding is not on the sheet.
    NotOnSheet,
    /// No finding for this cause stands on the sheet.
    NoSuchFinding,
    /// The job is over.
    Over,
}

impl Refusal {
    /// The reason as a sentence.
    #[must_use]
    pub fn text(self) -> String {
        match self {
            Self::NotHere => t!("refusal-not-here").into(),
            Self::NeedsTool(tool) => {
                t!("refusal-needs-tool", tool = tool.label().to_lowercase())
            }
            Self::HandFull => t!("refusal-hand-full").into(),
            Self::DoorInTheWay => t!("refusal-door-in-the-way").into(),
            Self::CapOn => t!("refusal-cap-on").into(),
            Self::PortNotOpen => t!("refusal-port-not-open").into(),
            Self::NoPlug => t!("refusal-no-plug").into(),
            Self::TooTight => t!("refusal-too-tight").into(),
            Self::NotStarted => t!("refusal-not-started").into(),
            Self::AlreadyLoose => t!("refusal-already-loose").into(),
            Self::NoAdapter => t!("refusal-no-adapter").into(),
            Self::CaptiveScrew => t!("refusal-captive-screw").into(),
            Self::ScrewTight => t!("refusal-screw-tight").into(),
            Self::ScrewNotSeated => t!("refusal-screw-not-seated").into(),
            Self::HoseInTheWay => t!("refusal-hose-in-the-way").into(),
            Self::AdapterElsewhere => t!("refusal-adapter-elsewhere").into(),
            Self::HoseInUse => t!("refusal-hose-in-use").into(),
            Self::HoseFree => t!("refusal-hose-free").into(),
            Self::MeterOff => t!("refusal-meter-off").into(),
            Self::MeterAtFurnace => t!("refusal-meter-at-furnace").into(),
            Self::AlreadySo => t!("refusal-already-so").into(),
            Self::NotOnThisJob => t!("refusal-not-on-this-job").into(),
            Self::Absurd => t!("refusal-absurd").into(),
            Self::OffTheDial => t!("refusal-off-the-dial").into(),
            Self::NothingToBrush => t!("refusal-nothing-to-brush").into(),
            Self::HandOverInside => t!("refusal-hand-over-inside").into(),
            Self::NotWet => t!("refusal-not-wet").into(),
            Self::AtStop => t!("refusal-at-stop").into(),
            Self::CallFromOutside => t!("refusal-call-from-outside").into(),
            Self::ShutFirst(hand_valve) => {
                t!("refusal-shut-first", valve = hand_valve.label().to_lowercase())
            }
            Self::PressureLeft => t!("refusal-pressure-left").into(),
            Self::PowerOn => t!("refusal-power-on").into(),
            Self::NotFitted => t!("refusal-not-fitted").into(),
            Self::ClippedIn => t!("refusal-clipped-in").into(),
            Self::LeadsInTheWay => t!("refusal-leads-in-the-way").into(),
            Self::NotClipped => t!("refusal-not-clipped").into(),
            Self::NothingShown => t!("refusal-nothing-shown").into(),
            Self::StopwatchNotRunning => t!("refusal-watch-not-running").into(),
            Self::HoseUnderPressure => t!("refusal-hose-under-pressure").into(),
            Self::FindingStands => t!("refusal-finding-stands").into(),
            Self::NothingBesideSomething => t!("refusal-nothing-beside-something").into(),
            Self::NothingToAnswer => t!("refusal-nothing-to-answer").into(),
            Self::TooManyFindings => {
                t!("refusal-too-many-findings", most = WrittenFinding::MOST)
            }
            Self::TooMuchEvidence => {
                t!("refusal-too-much-evidence", most = WrittenFinding::MOST_EVIDENCE)
            }
            Self::NotOnSheet => t!("refusal-not-on-sheet").into(),
            Self::NoSuchFinding => t!("refusal-no-such-finding").into(),
            Self::Over => t!("refusal-over").into(),
        }
    }
}
