//! What helps against a fault, and what tempts and harms.
//!
//! **Source.** Usual troubleshooting of two-stage gas furnaces (common practice); what each wrong
//! remedy leads to is measured on the model where a test can
//! (`tests/core/faults/made_worse.rs`).

use crate::catalogue::repair::Repair;
use crate::parts::Screw;

/// Something done against a fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Remedy {
    /// A repair.
    Mend(Repair),
    /// A screw turned.
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
            Self::Turn(screw) => format!("turn the {}", screw.label().to_lowercase()),
            Self::Operate(operation) => operation.label().to_owned(),
            Self::CallOwner => "call the owner of the supply".to_owned(),
            Self::ShutOffAndTag => "shut off, tag and explain".to_owned(),
        }
    }

    /// A word for programs: the repair's id, or what kind of remedy it is.
    #[must_use]
    pub fn id(self) -> String {
        match self {
            Self::Mend(repair) => format!("mend {}", repair.id()),
            Self::Turn(screw) => format!("turn {}", screw.id()),
            Self::Operate(operation) => format!("operate {}", operation.id()),
            Self::CallOwner => "call-owner".to_owned(),
            Self::ShutOffAndTag => "shut-off-and-tag".to_owned(),
        }
    }
}

fn lowered(label: &str) -> String {
    let mut letters = label.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

macro_rules! operations {
    ($( $(#[doc = $doc:literal])+ $variant:ident = $id:literal, $label:literal; )+) => {
        /// What every job has hands for.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Operation { $( $(#[doc = $doc])+ $variant, )+ }

        impl Operation {
            /// All of them.
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
        }
    };
}

operations! {
    /// The manual valve opened all the way.
    OpenManualValve = "open-manual-valve", "open the manual valve all the way";
    /// The supply shut, and opened again slowly.
    OpenSlowly = "open-slowly", "shut the supply, wait, and open it again slowly";
    /// The gas valve's switch turned on.
    ValveSwitchOn = "valve-switch-on", "turn the gas valve's switch on";
    /// The cap put on its screw.
    FitCap = "fit-cap", "put the cap on";
    /// The roll-out switches reset once the cause is found.
    ResetRollout = "reset-rollout", "find the cause, then reset the roll-out switches";
    /// The roll-out switches reset, and nothing more.
    ResetAndLeave = "reset-and-leave", "reset the roll-out switches and leave";
    /// The wire on R and W2 left there.
    LeaveStageJumper = "leave-stage-jumper", "leave the wire on R and W2";
    /// The manometer zeroed with its hose off.
    ZeroMeter = "zero-meter", "take the hose off and zero the manometer";
    /// The manometer left to warm, then zeroed.
    WarmAndZero = "warm-and-zero", "let the manometer warm, then zero it with the hose off";
    /// The manometer's unit changed.
    ChangeUnit = "change-unit", "change the manometer's unit";
    /// The plug taken out and started again by hand.
    RefitPlug = "refit-plug", "take out what is in the port and start a plug by hand";
    /// The plug tightened.
    TightenPlug = "tighten-plug", "tighten the plug";
    /// The call tried again and again.
    TryAgain = "try-again", "call for heat again and again";
}

/// A remedy that tempts and harms.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wrong {
    /// What is done.
    pub remedy: Remedy,
    /// What it leads to, in a sentence.
    pub danger: &'static str,
}

/// A wrong remedy with its danger.
pub(crate) const fn wrong(remedy: Remedy, danger: &'static str) -> Wrong {
    Wrong { remedy, danger }
}
