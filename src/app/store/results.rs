//! What the attempts that were kept say of each job: records are counted by their file names, and
//! each result is a line in a small file beside them, so that no record is opened for the list.

use std::collections::BTreeMap;
use std::fs::OpenOptions;
use std::io::Write;
use std::path::Path;

use serde::{Deserialize, Serialize};

use crate::marking::evaluate::Marks;
use crate::panels::view::Tried;
use crate::scenario::text_hash;

/// The file of results, beside the records.
const FILE: &str = "results.log";
/// Largest file of results that is read, in bytes: some ten thousand results.
const MOST_BYTES: u64 = 4 << 20;

/// A result, a line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
struct Line {
    scenario: String,
    /// Hash of the scenario's text: a job that has changed since has not been passed.
    hash: String,
    seed: u64,
    met: bool,
    points: Option<f64>,
}

/// Counts of attempts and passed jobs, from the folder of records.
#[derive(Debug, Clone, Default)]
pub(super) struct Kept {
    /// Records of each scenario, by its id as file names have it.
    tried: BTreeMap<String, u32>,
    /// Ids and hashes with the essentials met.
    met: Vec<(String, String)>,
}

impl Kept {
    /// Reads the folder. What cannot be read counts as nothing.
    pub(super) fn read(folder: &Path) -> Self {
        let mut kept = Self::default();
        let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
        for name in entries.filter_map(|entry| entry.file_name().into_string().ok()) {
            if let Some(id) = id_of(&name) {
                *kept.tried.entry(id.to_owned()).or_default() += 1;
            }
        }
        let file = folder.join(FILE);
        if std::fs::metadata(&file).is_ok_and(|about| about.len() <= MOST_BYTES) {
            let text = std::fs::read_to_string(&file).unwrap_or_default();
            // A torn line is no result.
            let lines = text.lines().filter_map(|line| serde_json::from_str::<Line>(line).ok());
            let met = lines.filter(|line| line.met).map(|line| (line.scenario, line.hash));
            kept.met = met.collect();
        }
        kept
    }

    /// How a scenario with this text stands.
    pub(super) fn standing(&self, id: &str, text: &str) -> Tried {
        let tried = self.tried.get(&safe(id)).copied().unwrap_or(0);
        let mut of_this = self.met.iter().filter(|(other, _)| other == id).peekable();
        if of_this.peek().is_some() {
            let hash = text_hash(text);
            if of_this.any(|(_, other)| *other == hash) {
                return Tried::Passed(tried.max(1));
            }
        }
        if tried == 0 { Tried::Never } else { Tried::Tried(tried) }
    }
}

/// A scenario's id as it stands in file names.
pub(super) fn safe(id: &str) -> String {
    id.chars().map(|c| if c.is_ascii_alphanumeric() || c == '-' { c } else { '_' }).collect()
}

/// The id in a record's file name, `ID-SEED-TIME-NUMBER.jsonl`.
fn id_of(name: &str) -> Option<&str> {
    let stem = name.strip_suffix(".jsonl")?;
    let mut parts = stem.rsplitn(4, '-');
    let numbers = [parts.next()?, parts.next()?, parts.next()?];
    let numbered = numbers.iter().all(|part| part.bytes().all(|b| b.is_ascii_digit()));
    parts.next().filter(|id| numbered && !id.is_empty())
}

/// Adds a result.
///
/// # Errors
/// When the file cannot be written.
pub(super) fn add(
    folder: &Path,
    scenario: &str,
    text: &str,
    seed: u64,
    marks: &Marks,
) -> std::io::Result<()> {
    let line = Line {
        scenario: scenario.to_owned(),
        hash: text_hash(text),
        seed,
        met: marks.verdict.is_met(),
        points: marks.verdict.points().map(|(points, _)| points),
    };
    std::fs::create_dir_all(folder)?;
    let mut file = OpenOptions::new().append(true).create(true).open(folder.join(FILE))?;
    let mut text = serde_json::to_string(&line)?;
    text.push('\n');
    file.write_all(text.as_bytes())
}
