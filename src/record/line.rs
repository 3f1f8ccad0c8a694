//! What stands on a line.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::FORMAT;
use super::chain::is_lower_hex;
use crate::hands::action::Action;

/// The first line of a record: what was played, by whom, with which program.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Header {
    /// Version of the program that wrote the record.
    pub program: String,
    /// The scenario that was played.
    pub scenario: ScenarioText,
    /// The seed that its numbers were drawn with.
    pub seed: u64,
    /// Who played, if anybody was named.
    pub learner: Option<String>,
    /// How much help there was, if a person played.
    pub help: Option<Help>,
}

/// A scenario as it is kept in a record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ScenarioText {
    /// Its id, or its file's name.
    pub id: String,
    /// The hash of its text: BLAKE3 in hexadecimal.
    pub hash: String,
    /// The whole RON text of the scenario, so that a record can be replayed without the file.
    pub text: String,
}

impl ScenarioText {
    /// A scenario's text with its hash.
    #[must_use]
    pub fn new(id: &str, text: &str) -> Self {
        Self { id: id.to_owned(), hash: crate::scenario::text_hash(text), text: text.to_owned() }
    }
}

/// How much help a person had.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Help {
    /// Led step by step.
    Coached,
    /// A hint when asked.
    Solo,
}

impl Help {
    /// The help as the debrief and the command line name it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Coached => t!("record-coached"),
            Self::Solo => t!("record-solo"),
        }
    }
}

/// A line after the header.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// Ticks of 20 ms since the attempt began.
    pub tick: u64,
    /// What happened at that tick.
    pub what: What,
}

/// What a line tells.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// An action was tried; a refused one is refused again in a replay.
    Do(Action),
    /// The digest of the bench at this place.
    Mark(u64),
    /// Something beside the bench.
    Note(Note),
    /// The attempt ended; no line may follow.
    End {
        /// How the attempt came to its end.
        how: Ended,
        /// The digest of the bench then.
        digest: u64,
    },
}

/// Something that a reader of marks wants to know and that the bench does not.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Note {
    /// A hint was asked for and shown.
    Hint,
    /// The author's next hint on the job was taken.
    JobHint,
    /// The cutaway was opened: what stands behind the sheet steel.
    Cutaway,
    /// After a stop for danger the attempt went back to here.
    WentBack,
}

/// How an attempt ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Ended {
    /// The job was handed over.
    HandedOver,
    /// Gas ignited where it must not.
    Ignition,
    /// The player gave up, or a script ended before the job did.
    Stopped,
}

impl Ended {
    /// How a job that is over ended; a job that is not was stopped.
    #[must_use]
    pub fn of(over: Option<crate::senses::seen::Over>) -> Self {
        use crate::senses::seen::Over;
        match over {
            Some(Over::HandedOver(_)) => Self::HandedOver,
            Some(Over::Ignition) => Self::Ignition,
            None => Self::Stopped,
        }
    }

    /// The ending as lists of attempts name it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::HandedOver => t!("record-handed-over"),
            Self::Ignition => t!("record-ignition"),
            Self::Stopped => t!("record-stopped"),
        }
    }
}

/// A digest as it is written: 16 hexadecimal digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Hex(u64);

impl Serialize for Hex {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&format_args!("{:016x}", self.0))
    }
}

impl<'de> Deserialize<'de> for Hex {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let good = text.len() == 16 && text.bytes().all(is_lower_hex);
        good.then(|| u64::from_str_radix(&text, 16).ok())
            .flatten()
            .map(Self)
            .ok_or_else(|| serde::de::Error::custom(t!("record-digest")))
    }
}

/// The header as it is written.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct HeaderObject {
    format: String,
    version: u32,
    program: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    model: Option<u32>,
    scenario: ScenarioText,
    seed: u64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    learner: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    help: Option<Help>,
}

/// A line as it is written.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct LineObject {
    t: u64,
    #[serde(rename = "do", default, skip_serializing_if = "Option::is_none")]
    action: Option<Action>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    mark: Option<Hex>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    note: Option<Note>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    end: Option<Ended>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    digest: Option<Hex>,
}

/// Plain data always becomes JSON; an empty text would be refused by the reader.
fn json<T: Serialize>(value: &T) -> String {
    serde_json::to_string(value).unwrap_or_default()
}

impl Header {
    /// The header's JSON object. Version 1 of the format did not tell the model's version.
    pub(super) fn encode(&self, model: Option<u32>) -> String {
        json(&HeaderObject {
            format: FORMAT.to_owned(),
            version: if model.is_some() { 2 } else { 1 },
            program: self.program.clone(),
            model,
            scenario: self.scenario.clone(),
            seed: self.seed,
            learner: self.learner.clone(),
            help: self.help,
        })
    }

    /// The header and the model's version from their JSON object, whose format and version have
    /// been looked at.
    pub(super) fn decode(object: &str) -> Result<(Self, Option<u32>), serde_json::Error> {
        let it: HeaderObject = serde_json::from_str(object)?;
        let header = Self {
            program: it.program,
            scenario: it.scenario,
            seed: it.seed,
            learner: it.learner,
            help: it.help,
        };
        Ok((header, it.model))
    }
}

impl Line {
    /// The line's JSON object.
    pub(super) fn encode(&self) -> String {
        let mut object = LineObject {
            t: self.tick,
            action: None,
            mark: None,
            note: None,
            end: None,
            digest: None,
        };
        match &self.what {
            What::Do(action) => object.action = Some(action.clone()),
            What::Mark(digest) => object.mark = Some(Hex(*digest)),
            What::Note(note) => object.note = Some(*note),
            What::End { how, digest } => {
                object.end = Some(*how);
                object.digest = Some(Hex(*digest));
            }
        }
        json(&object)
    }

    /// A line from its JSON object; `None` when it tells nothing or more than one thing.
    pub(super) fn decode(object: &str) -> Result<Option<Self>, serde_json::Error> {
        let it: LineObject = serde_json::from_str(object)?;
        let what = match (it.action, it.mark, it.note, it.end, it.digest) {
            (Some(action), None, None, None, None) => What::Do(action),
            (None, Some(Hex(digest)), None, None, None) => What::Mark(digest),
            (None, None, Some(note), None, None) => What::Note(note),
            (None, None, None, Some(how), Some(Hex(digest))) => What::End { how, digest },
            _ => return Ok(None),
        };
        Ok(Some(Self { tick: it.t, what }))
    }
}
