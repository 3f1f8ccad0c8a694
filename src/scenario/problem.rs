//! What is wrong with a scenario: data first, words and JSON from it.

use core::fmt::Write as _;

use serde::Serialize;

/// How bad a problem is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum ProblemLevel {
    /// The scenario works, but something in it is unlikely to be meant.
    Warning,
    /// The scenario cannot be used.
    Error,
}

/// What kind of problem it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Code {
    /// The file is larger than a scenario may be.
    TooLarge,
    /// The bytes are not UTF-8 text.
    NotUtf8,
    /// Brackets stand too deep inside each other.
    TooDeep,
    /// Text that is not RON.
    Syntax,
    /// Written for a newer version of the format.
    NewerVersion,
    /// No such version of the format.
    NoSuchVersion,
    /// A field that the format does not have.
    UnknownField,
    /// A field that must be there is not.
    MissingField,
    /// A field stands twice.
    DuplicateField,
    /// A value of another kind than the field's.
    WrongKind,
    /// A number without a unit, with a wrong unit, or none at all.
    BadQuantity,
    /// A word that is not among those allowed.
    UnknownName,
    /// A number outside what the model allows.
    OutOfRange,
    /// A list or a text that is too long or too short.
    BadLength,
    /// Two values that contradict each other.
    Contradiction,
    /// A number outside what is published or common.
    Unusual,
    /// More problems than are worth listing.
    TooMany,
}

impl Code {
    /// The code in text and JSON.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::TooLarge => "too-large",
            Self::NotUtf8 => "not-utf8",
            Self::TooDeep => "too-deep",
            Self::Syntax => "syntax",
            Self::NewerVersion => "newer-version",
            Self::NoSuchVersion => "no-such-version",
            Self::UnknownField => "unknown-field",
            Self::MissingField => "missing-field",
            Self::DuplicateField => "duplicate-field",
            Self::WrongKind => "wrong-kind",
            Self::BadQuantity => "bad-quantity",
            Self::UnknownName => "unknown-name",
            Self::OutOfRange => "out-of-range",
            Self::BadLength => "bad-length",
            Self::Contradiction => "contradiction",
            Self::Unusual => "unusual",
            Self::TooMany => "too-many",
        }
    }
}

/// One problem, with its place.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// Error, or warning only.
    pub severity: ProblemLevel,
    /// Kind of problem, with a stable id.
    pub code: Code,
    /// The file's name as it was given; empty for text without one.
    pub file: String,
    /// Line in the file, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// Characters from there that are meant, on that line; 0 where nothing stands.
    pub width: usize,
    /// Where in the scenario, as in `furnace.plate.made_for.high` or `trunk[0].length`; empty for
    /// the whole file.
    pub path: String,
    /// What stands there, shortened; empty where nothing does.
    pub found: String,
    /// What was expected; empty where the message says it all.
    pub expected: String,
    /// The problem in a sentence.
    pub message: String,
    /// The allowed name nearest to what was found.
    pub nearest: Option<String>,
}

/// The exit code of a check with these problems: 0 when nothing but warnings was found, 1 for
/// errors, 4 when the scenario is written for a newer format.
#[must_use]
pub fn exit_code(problems: &[Problem]) -> u8 {
    if problems.iter().any(|p| p.code == Code::NewerVersion) {
        4
    } else {
        u8::from(problems.iter().any(|p| p.severity == ProblemLevel::Error))
    }
}

/// Whether there is a warning among these problems.
#[must_use]
pub fn warns(problems: &[Problem]) -> bool {
    problems.iter().any(|problem| problem.severity == ProblemLevel::Warning)
}

/// The problems as text for a terminal, each with the line it stands in and its place underlined. `source` is the text that
/// was checked.
#[must_use]
pub fn to_text(problems: &[Problem], source: &str) -> String {
    let mut out = String::new();
    for problem in problems {
        let word = match problem.severity {
            ProblemLevel::Warning => t!("problem-warning"),
            ProblemLevel::Error => t!("problem-error"),
        };
        let _ = writeln!(out, "{word}[{}]: {}", problem.code.id(), problem.message);
        let file = if problem.file.is_empty() { t!("problem-scenario") } else { &problem.file };
        let _ = write!(out, "  --> {file}:{}:{}", problem.line, problem.column);
        if !problem.path.is_empty() {
            let _ = write!(out, "  {}", problem.path);
        }
        out.push('\n');
        excerpt(&mut out, problem, source);
        if !problem.found.is_empty() {
            let _ = writeln!(out, "  {}", t!("problem-found", found = &problem.found));
        }
        if !problem.expected.is_empty() {
            let _ = writeln!(out, "  {}", t!("problem-expected", expected = &problem.expected));
        }
        if let Some(nearest) = &problem.nearest {
            let _ = writeln!(out, "  {}", t!("problem-nearest", nearest = nearest));
        }
        out.push('\n');
    }
    out
}

/// The problems as a JSON array.
#[must_use]
pub fn to_json(problems: &[Problem]) -> String {
    // Strings and numbers only: this cannot fail.
    serde_json::to_string_pretty(problems).unwrap_or_default()
}

/// Characters of a source line shown at most.
const EXCERPT: usize = 100;

fn excerpt(out: &mut String, problem: &Problem, source: &str) {
    let Some(line) = source.lines().nth(problem.line.saturating_sub(1)) else { return };
    let column = problem.column.saturating_sub(1);
    // A long line is shown from a little before the place.
    let skip = if column < EXCERPT - 20 { 0 } else { column - 20 };
    let shown: String = line
        .chars()
        .skip(skip)
        .take(EXCERPT)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    let number = problem.line.to_string();
    let margin = " ".repeat(number.len());
    let _ = writeln!(out, "  {number} | {shown}");
    let room = EXCERPT.saturating_sub(column - skip).max(1);
    let marks = "^".repeat(problem.width.clamp(1, room));
    let _ = writeln!(out, "  {margin} | {}{marks}", " ".repeat(column - skip));
}

/// The name among `names` nearest to `found`, if one is near enough to be meant.
#[must_use]
pub(super) fn nearest<'a>(found: &str, names: impl Iterator<Item = &'a str>) -> Option<String> {
    let lower = found.to_lowercase();
    let mut best: Option<(f64, &str)> = None;
    for name in names {
        let likeness = strsim::jaro_winkler(&lower, &name.to_lowercase());
        if likeness >= 0.75 && best.is_none_or(|(most, _)| likeness > most) {
            best = Some((likeness, name));
        }
    }
    best.map(|(_, name)| name.to_owned())
}
