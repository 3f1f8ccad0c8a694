//! What a rule is: plain data with an id, a version and an explanation. Nothing is judged here.

mod book;
pub mod competency;
pub mod evidence;
mod harm;
pub mod mistake;
mod scoring;

pub use book::{RuleBook, RuleBookError, shared};
pub use evidence::{Evidence, LeftOut, OfFinding, Slip};
pub use harm::{Charge, Grade, Harm, Severity};
pub use scoring::{Cap, CaughtInTime, HarmRow, Repeat, Scoring};

use serde::{Deserialize, Serialize};

/// A group of rules; points lost in one are capped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Family {
    /// Hazards and what to do about them.
    Safety,
    /// Isolation, ports and joints.
    Isolation,
    /// Zero, port, stage, unit, settling.
    Measuring,
    /// Screws, springs and the turns that they got.
    Adjusting,
    /// Valves, switches, doors and settings put back.
    Restoring,
    /// What is written and said.
    Records,
    /// Causes that are named, and endings that fit them.
    Diagnosis,
}

impl Family {
    /// All of them, in the order of a job.
    pub const ALL: [Self; 7] = [
        Self::Safety,
        Self::Isolation,
        Self::Measuring,
        Self::Adjusting,
        Self::Restoring,
        Self::Records,
        Self::Diagnosis,
    ];

    /// As pages write it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Safety => t!("family-safety"),
            Self::Isolation => t!("family-isolation"),
            Self::Measuring => t!("family-measuring"),
            Self::Adjusting => t!("family-adjusting"),
            Self::Restoring => t!("family-restoring"),
            Self::Records => t!("family-records"),
            Self::Diagnosis => t!("family-diagnosis"),
        }
    }
}

/// The short list that gates the result whatever the points say.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Essential {
    /// The right answer to a strong smell or an alarm.
    AlarmResponse,
    /// Gas and power off before a port is opened.
    Isolation,
    /// No gas to an open port.
    NoGasToOpenPort,
    /// The meter told the truth, and what it told was written.
    MeterTrue,
    /// Both stages read while they burn.
    BothStagesRead,
    /// The inlet read with every other appliance on.
    InletWithOthers,
    /// Final settings inside the plate's bands, from the springs.
    SettingsInPlate,
    /// The supply inside its limits.
    SupplyInLimits,
    /// Every disturbed joint checked at its own working pressure.
    JointsChecked,
    /// Both ports closed with their plugs.
    PortsSealed,
    /// Manual valve, valve switch and power as they must be.
    Restored,
    /// No safety device bypassed, no jumper left, nothing made more dangerous than it was.
    NothingBypassed,
    /// Fuel and conversion proven.
    ConversionProven,
    /// Shut off, tagged, reported or handed over as the finding asks.
    RightEnding,
    /// What was wrong stands on the sheet by its name.
    CauseNamed,
    /// What the card asks for was done, or is named as not done.
    WorkAccounted,
}

impl Essential {
    /// All, in the order of the debrief.
    pub const ALL: [Self; 16] = [
        Self::AlarmResponse,
        Self::Isolation,
        Self::NoGasToOpenPort,
        Self::MeterTrue,
        Self::BothStagesRead,
        Self::InletWithOthers,
        Self::SettingsInPlate,
        Self::SupplyInLimits,
        Self::JointsChecked,
        Self::PortsSealed,
        Self::Restored,
        Self::NothingBypassed,
        Self::ConversionProven,
        Self::RightEnding,
        Self::CauseNamed,
        Self::WorkAccounted,
    ];

    /// As the debrief writes it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::AlarmResponse => t!("essential-alarm-response"),
            Self::Isolation => t!("essential-isolation"),
            Self::NoGasToOpenPort => t!("essential-no-gas-to-open-port"),
            Self::MeterTrue => t!("essential-meter-true"),
            Self::BothStagesRead => t!("essential-both-stages-read"),
            Self::InletWithOthers => t!("essential-inlet-with-others"),
            Self::SettingsInPlate => t!("essential-settings-in-plate"),
            Self::SupplyInLimits => t!("essential-supply-in-limits"),
            Self::JointsChecked => t!("essential-joints-checked"),
            Self::PortsSealed => t!("essential-ports-sealed"),
            Self::Restored => t!("essential-restored"),
            Self::NothingBypassed => t!("essential-nothing-bypassed"),
            Self::ConversionProven => t!("essential-conversion-proven"),
            Self::RightEnding => t!("essential-right-ending"),
            Self::CauseNamed => t!("essential-cause-named"),
            Self::WorkAccounted => t!("essential-work-accounted"),
        }
    }
}

/// One rule: the slip, what shows it, the harm that it does and why.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// Its name, for good.
    pub id: String,
    /// Raised whenever its meaning changes.
    pub version: u32,
    /// Family that it belongs to.
    pub family: Family,
    /// What the slip does: its severity, its points and whether it gates follow from that.
    pub harm: Harm,
    /// Its worst case, where that is another class of harm.
    #[serde(default)]
    pub grave: Option<Grave>,
    /// Points that are not those of its class.
    #[serde(default)]
    pub cost: Option<Cost>,
    /// The essential that it gates.
    #[serde(default)]
    pub essential: Option<Essential>,
    /// What counts as caught in time, where it can be.
    #[serde(default)]
    pub caught: Option<String>,
    /// Competences that it speaks for.
    pub claims: Vec<String>,
    /// What the slip is, in a few words.
    pub title: String,
    /// Question that finds it in what happened.
    pub evidence: Evidence,
    /// Rules that this one is a consequence of: when one of them is charged, this one is not.
    #[serde(default)]
    pub follows_from: Vec<String>,
    /// Harm that it guards against, in a sentence.
    pub why: String,
    /// What to practise next.
    pub practise: String,
    /// Shipped job on which it is practised.
    pub job: String,
    /// The same where the furnace must stay off, as far as it is otherwise: nobody is told to fire it.
    #[serde(default)]
    pub if_unsafe: Option<Practice>,
    /// Severity that a job's own rules give it.
    #[serde(skip)]
    pub own_severity: Option<Severity>,
}

impl Rule {
    /// What to practise after the slip, and on which job: on a furnace that must stay off, nothing
    /// that fires it.
    #[must_use]
    pub fn practice(&self, stays_off: bool) -> Practice {
        let usual = || Practice { job: self.job.clone(), practise: self.practise.clone() };
        self.if_unsafe.clone().filter(|_| stays_off).unwrap_or_else(usual)
    }
}

/// A shipped job, and the part of it to practise.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Practice {
    /// Id of the shipped job.
    pub job: String,
    /// Part of the job, in a sentence.
    pub practise: String,
}

/// The worst case of a rule.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Grave {
    /// What it does then.
    pub harm: Harm,
    /// When that is so, in a sentence.
    pub when: String,
}

/// Points that are not those of a rule's class.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cost {
    /// Points that it costs once.
    pub points: f64,
    /// Why they differ, in a sentence.
    pub because: String,
}
