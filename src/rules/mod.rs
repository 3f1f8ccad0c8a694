//! What a rule is: plain data with an id, a version and an explanation. Nothing is judged here.

mod book;
pub mod competency;
mod evidence;

pub use book::{RuleBook, RuleBookError, shared};
pub use evidence::Evidence;

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
    /// Screws and springs.
    Adjusting,
    /// Everything put back.
    Restoring,
    /// What is written and said.
    Records,
    /// Causes and endings.
    Diagnosis,
}

/// How serious a slip is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Severity {
    /// A matter of good practice.
    Minor,
    /// Makes the result wrong or incomplete.
    Major,
    /// Could hurt somebody or leave an unsafe appliance.
    Critical,
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
    /// The meter told the truth.
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
    /// Ports sealed.
    PortsSealed,
    /// Manual valve, valve switch and power as they must be.
    Restored,
    /// No safety device bypassed, no jumper left, nothing made more dangerous than it was.
    NothingBypassed,
    /// Fuel and conversion proven.
    ConversionProven,
    /// Shut off, tagged, reported or handed over as the finding asks.
    RightEnding,
}

impl Essential {
    /// All, in the order of the debrief.
    pub const ALL: [Self; 14] = [
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
    ];

    /// As the debrief writes it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::AlarmResponse => "Right answer to gas in the air",
            Self::Isolation => "Isolated before a port was opened",
            Self::NoGasToOpenPort => "No gas to an open port",
            Self::MeterTrue => "Meter true",
            Self::BothStagesRead => "Both stages read while burning",
            Self::InletWithOthers => "Inlet read with all other appliances on",
            Self::SettingsInPlate => "Both stages set inside the plate",
            Self::SupplyInLimits => "Supply inside its limits",
            Self::JointsChecked => "Every opened joint leak-checked at working pressure",
            Self::PortsSealed => "Ports sealed",
            Self::Restored => "Manual valve, switches and power restored",
            Self::NothingBypassed => "Nothing bypassed, nothing made dangerous",
            Self::ConversionProven => "Fuel and conversion proven",
            Self::RightEnding => "Ended as the finding asks",
        }
    }
}

/// One rule.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// Its name, for good.
    pub id: String,
    /// Raised whenever its meaning changes.
    pub version: u32,
    /// Its group.
    pub family: Family,
    /// How serious.
    pub severity: Severity,
    /// Points lost.
    pub weight: f64,
    /// The essential that it gates.
    #[serde(default)]
    pub essential: Option<Essential>,
    /// Competences that it speaks for.
    pub claims: Vec<String>,
    /// What the slip is, in a few words.
    pub title: String,
    /// What shows it.
    pub evidence: Evidence,
    /// Rules that this one is a consequence of: when one of them is charged, this one is not.
    #[serde(default)]
    pub follows_from: Vec<String>,
    /// Why it matters.
    pub why: String,
    /// What to practise next.
    pub practise: String,
}
