//! What helps against a fault, and what tempts and harms.
//!
//! **Source.** Usual troubleshooting of two-stage gas furnaces (common practice); what each wrong
//! remedy leads to is measured on the model where a test can
//! (`tests/core/faults/made_worse.rs`).

use serde::Deserialize;

use crate::catalogue::repair::Repair;
use crate::parts::Screw;

/// Something done against a fault. The table of faults writes it by its id.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
#[serde(try_from = "String")]
pub enum Remedy {
    /// A repair of the catalogue.
    Mend(Repair),
    /// The screw of a spring turned.
    Turn(Screw),
    /// Something that every job has hands for.
    Operate(Operation),
    /// The owner of the supply called.
    CallOwner,
    /// Shut off, tagged, explained.
    ShutOffAndTag,
}

impl Remedy {
    /// As a short phrase.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Self::Mend(repair) => lowered(repair.label()),
            Self::Turn(screw) => t!("remedy-turn", screw = screw.label().to_lowercase()),
            Self::Operate(operation) => operation.label().to_owned(),
            Self::CallOwner => t!("remedy-call-owner").to_owned(),
            Self::ShutOffAndTag => t!("remedy-shut-off-and-tag").to_owned(),
        }
    }

    /// A word for programs: the repair's id, or what kind of remedy it is.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Mend(repair) => format!("{MEND} {}", repair.id()),
            Self::Turn(screw) => format!("{TURN} {}", screw.id()),
            Self::Operate(operation) => format!("{OPERATE} {}", operation.id()),
            Self::CallOwner => CALL_OWNER.to_owned(),
            Self::ShutOffAndTag => SHUT_OFF_AND_TAG.to_owned(),
        }
    }

    /// The one with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        match id.split_once(' ') {
            Some((MEND, repair)) => Repair::from_id(repair).map(Self::Mend),
            Some((TURN, screw)) => Screw::from_id(screw).map(Self::Turn),
            Some((OPERATE, operation)) => Operation::from_id(operation).map(Self::Operate),
            Some(_) => None,
            None if id == CALL_OWNER => Some(Self::CallOwner),
            None if id == SHUT_OFF_AND_TAG => Some(Self::ShutOffAndTag),
            None => None,
        }
    }
}

// The first words of ids, and whole ids.
const MEND: &str = "mend";
const TURN: &str = "turn";
const OPERATE: &str = "operate";
const CALL_OWNER: &str = "call-owner";
const SHUT_OFF_AND_TAG: &str = "shut-off-and-tag";

impl TryFrom<String> for Remedy {
    type Error = String;

    fn try_from(id: String) -> Result<Self, String> {
        Self::from_id(&id).ok_or_else(|| t!("table-no-id", id = id))
    }
}

fn lowered(label: &str) -> String {
    let mut letters = label.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

macro_rules! operations {
    ($( $(#[doc = $doc:literal])+ $variant:ident = $id:literal, $label:expr; )+) => {
        /// What every job has hands for.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Operation { $( $(#[doc = $doc])+ $variant, )+ }

        impl Operation {
            /// All of them, from the supply to the meter.
            pub const ALL: &'static [Self] = &[ $( Self::$variant, )+ ];

            /// A word for programs.
            #[must_use]
            pub fn id(self) -> &'static str {
                match self { $( Self::$variant => $id, )+ }
            }

            /// As a short phrase.
            #[must_use]
            pub fn label(self) -> &'static str {
                match self { $( Self::$variant => $label, )+ }
            }

            /// The one with this id.
            #[must_use]
            pub fn from_id(id: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.id() == id)
            }
        }
    };
}

operations! {
    /// The manual valve opened all the way.
    OpenManualValve = "open-manual-valve", t!("operation-open-manual-valve");
    /// The supply shut, and opened again slowly.
    OpenSlowly = "open-slowly", t!("operation-open-slowly");
    /// The gas valve's switch turned on.
    ValveSwitchOn = "valve-switch-on", t!("operation-valve-switch-on");
    /// The cap put on its screw.
    FitCap = "fit-cap", t!("operation-fit-cap");
    /// The roll-out switches reset once the cause is found.
    ResetRollout = "reset-rollout", t!("operation-reset-rollout");
    /// The roll-out switches reset, and nothing more.
    ResetAndLeave = "reset-and-leave", t!("operation-reset-and-leave");
    /// The jumper on R and W2 left there.
    LeaveStageJumper = "leave-stage-jumper", t!("operation-leave-stage-jumper");
    /// The manometer zeroed with its hose off.
    ZeroMeter = "zero-meter", t!("operation-zero-meter");
    /// The manometer left to warm, then zeroed.
    WarmAndZero = "warm-and-zero", t!("operation-warm-and-zero");
    /// The manometer's unit changed.
    ChangeUnit = "change-unit", t!("operation-change-unit");
    /// The plug taken out and started again by hand.
    RefitPlug = "refit-plug", t!("operation-refit-plug");
    /// The plug tightened with the key.
    TightenPlug = "tighten-plug", t!("operation-tighten-plug");
    /// The call tried again and again.
    TryAgain = "try-again", t!("operation-try-again");
}

/// A remedy that tempts and harms.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wrong {
    /// What is done instead of a right remedy.
    pub remedy: Remedy,
    /// What it leads to, in a sentence.
    pub danger: &'static str,
}
