//! The list of known offences. It only shrinks: an offence that is not on it fails, and so does an
//! entry that is no offence any more.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;

use serde::Deserialize;

use super::offence::{Offence, Rule};

/// How often an offence is known, or how many lines a long function has: by rule, file and name.
type Counts = BTreeMap<Rule, BTreeMap<String, BTreeMap<String, usize>>>;

#[derive(Debug, Default, PartialEq, Eq, Deserialize)]
pub struct Known {
    /// The files of each circle.
    circles: Vec<Vec<String>>,
    offences: Counts,
}

impl Known {
    pub fn read(text: &str) -> Result<Self, String> {
        ron::from_str(text).map_err(|error| format!("known.ron: {error}"))
    }

    pub fn of(found: &[Offence]) -> Self {
        let mut known = Self::default();
        for offence in found {
            if offence.rule == Rule::Circle {
                known.circles.push(offence.circle.clone());
                continue;
            }
            let files = known.offences.entry(offence.rule).or_default();
            *files
                .entry(offence.file.clone())
                .or_default()
                .entry(offence.what.clone())
                .or_default() += offence.amount;
        }
        known
    }

    /// New offences against `rule`, and entries that are no offence any more.
    pub fn differences(&self, found: &[Offence], rule: Rule) -> Vec<String> {
        let mine: Vec<&Offence> = found.iter().filter(|offence| offence.rule == rule).collect();
        if rule == Rule::Circle {
            return self.circles_differ(&mine);
        }
        let now = Self::of(found).offences.remove(&rule).unwrap_or_default();
        let before = self.offences.get(&rule).cloned().unwrap_or_default();
        let names =
            |counts: &BTreeMap<String, BTreeMap<String, usize>>| -> BTreeSet<(String, String)> {
                let pairs = |(file, whats): (&String, &BTreeMap<String, usize>)| {
                    whats.keys().map(|what| (file.clone(), what.clone())).collect::<Vec<_>>()
                };
                counts.iter().flat_map(pairs).collect()
            };
        let mut wrong = Vec::new();
        for (file, what) in names(&now).union(&names(&before)) {
            let count = |counts: &BTreeMap<String, BTreeMap<String, usize>>| {
                counts.get(file).and_then(|whats| whats.get(what)).copied().unwrap_or_default()
            };
            let (now, before) = (count(&now), count(&before));
            if now > before {
                wrong.extend(
                    mine.iter()
                        .filter(|offence| offence.file == *file && offence.what == *what)
                        .map(|offence| format!("{offence} (known: {before}, now: {now})")),
                );
            } else if now < before {
                let cure = if now == 0 { "remove it".to_owned() } else { format!("write {now}") };
                wrong.push(format!("outdated exception: {rule:?} {file} \"{what}\": {cure}"));
            }
        }
        wrong
    }

    fn circles_differ(&self, found: &[&Offence]) -> Vec<String> {
        let mut wrong = Vec::new();
        for offence in found {
            let inside =
                |known: &&Vec<String>| offence.circle.iter().all(|file| known.contains(file));
            match self.circles.iter().find(inside) {
                None => {
                    wrong.push(format!("{offence}\n  all its files: {}", offence.circle.join(" ")))
                }
                Some(known) if known.len() > offence.circle.len() => {
                    wrong.push(format!(
                        "outdated exception: the circle of {} is smaller now: write {:?}",
                        offence.file, offence.circle
                    ));
                }
                Some(_) => {}
            }
        }
        for known in &self.circles {
            if !found.iter().any(|offence| offence.circle.iter().all(|file| known.contains(file))) {
                let first = known.first().map(String::as_str).unwrap_or_default();
                wrong.push(format!("outdated exception: no circle at {first} any more: remove it"));
            }
        }
        wrong
    }

    /// This list without entries that are no offence any more. New offences do not come on it.
    pub fn shrunk_to(&self, found: &[Offence]) -> Self {
        let now = Self::of(found);
        let mut shrunk = Self::default();
        for circle in now.circles {
            if self.circles.iter().any(|known| circle.iter().all(|file| known.contains(file))) {
                shrunk.circles.push(circle);
            }
        }
        for (rule, files) in &self.offences {
            for (file, whats) in files {
                for (what, before) in whats {
                    let now = now.offences.get(rule).and_then(|files| files.get(file)?.get(what));
                    if let Some(now) = now {
                        let files = shrunk.offences.entry(*rule).or_default();
                        let whats = files.entry(file.clone()).or_default();
                        whats.insert(what.clone(), *now.min(before));
                    }
                }
            }
        }
        shrunk
    }

    /// The list as text, for the file.
    pub fn written(&self) -> String {
        let mut text = String::from(HEAD);
        text += "(\n    circles: [\n";
        for circle in &self.circles {
            text += "        [\n";
            for file in circle {
                let _ = writeln!(text, "            {file:?},");
            }
            text += "        ],\n";
        }
        text += "    ],\n    offences: {\n";
        for (rule, files) in &self.offences {
            let _ = writeln!(text, "        {rule:?}: {{");
            for (file, whats) in files {
                let all: Vec<String> =
                    whats.iter().map(|(what, count)| format!("{what:?}: {count}")).collect();
                let one_line = format!("            {file:?}: {{{}}},", all.join(", "));
                if one_line.len() <= 100 {
                    text += &one_line;
                } else {
                    let _ = write!(text, "            {file:?}: {{");
                    all.iter().for_each(|what| {
                        let _ = write!(text, "\n                {what},");
                    });
                    text += "\n            },";
                }
                text.push('\n');
            }
            text += "        },\n";
        }
        text += "    },\n)\n";
        text
    }
}

const HEAD: &str = "\
// Offences against tests/core/tidy that stand today. The list only shrinks: DEVELOPERS.md, \"Tidy\".
";
