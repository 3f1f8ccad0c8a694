//! Scenarios: a job written down by an author, with every problem in it told at once.
//!
//! A scenario is a RON file with units in its values. [`check`] tells what is wrong with one,
//! [`load`] reads one, [`Scenario::draw`] makes the bench of a seed from it, [`explain`] is the
//! field reference. Any bytes may be given: what is not a scenario is refused with reasons.

pub mod builtin;
pub mod coverage;
mod cross;
mod draw;
mod explain;
pub mod format;
pub mod guide;
mod pick;
mod problem;
mod reader;
mod required;
mod rule_book;
mod schema;
mod setting;
mod shape;
mod source;
mod step;
mod synonyms;
mod told;
mod value;

pub use explain::{Told, Topic, all_fields, explain, find, reference, topics};
pub use format::{Scenario, VERSION};
pub use pick::Pick;
pub use problem::{Code, Problem, ProblemLevel, exit_code, to_json, to_text, warns};
pub use schema::{Field, FieldDefault, Kind, Section};
pub use source::{MAX_BYTES, MAX_DEPTH};
pub use step::Step;
pub use told::in_this_job;
pub use value::{Count, Measure, Plain, Vary};

use ron2::ast::{Document, Expr, StructBody};

use reader::{Reader, Shape};
use source::{MAX_PROBLEMS, Source};

/// Reads a scenario.
///
/// # Errors
/// Every problem found, warnings among them, in the order of the text; at least one is an error.
pub fn load(text: &str) -> Result<Scenario, Vec<Problem>> {
    let (scenario, problems) = examine(text, For::Playing);
    let sound = problems.iter().all(is_warning);
    match scenario {
        Some(scenario) if sound => Ok(scenario),
        Some(_) | None => Err(problems),
    }
}

/// Every problem of a scenario, in the order of the text; `name` is the file's name for the report.
#[must_use]
pub fn check(name: &str, text: &str) -> Vec<Problem> {
    let (_, mut problems) = examine(text, For::Author);
    for problem in &mut problems {
        name.clone_into(&mut problem.file);
    }
    problems
}

/// Like [`check`], for bytes that may not even be text.
#[must_use]
pub fn check_bytes(name: &str, bytes: &[u8]) -> Vec<Problem> {
    match core::str::from_utf8(bytes) {
        Ok(text) => check(name, text),
        Err(error) => {
            let (good, _) = bytes.split_at(error.valid_up_to());
            let text = String::from_utf8_lossy(good);
            let message = t!("problem-not-utf8").to_owned();
            let mut problem = Source::new(&text).problem(Code::NotUtf8, text.len(), message);
            name.clone_into(&mut problem.file);
            vec![problem]
        }
    }
}

/// The hash that a record keeps of a scenario's text: BLAKE3, in hexadecimal.
#[must_use]
pub fn text_hash(text: &str) -> String {
    blake3::hash(text.as_bytes()).to_hex().to_string()
}

/// Whom a scenario is examined for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum For {
    /// A job that is to be played.
    Playing,
    /// An author, who is told as well what only playing the bench shows.
    Author,
}

fn is_warning(problem: &Problem) -> bool {
    problem.severity == ProblemLevel::Warning
}

/// The scenario, as far as it can be read, and every problem.
fn examine(text: &str, whom: For) -> (Option<Scenario>, Vec<Problem>) {
    let source = Source::new(text);
    if let Some(problem) = source.over_limits() {
        return (None, vec![problem]);
    }
    let (document, syntax) = source.parse();
    if let Some(problem) = newer_version(&document, &source) {
        return (None, vec![problem]);
    }
    let Some(root) = &document.value else {
        let mut problems = syntax;
        if problems.is_empty() {
            let message = t!("problem-no-scenario").to_owned();
            problems.push(source.problem(Code::Syntax, text.len(), message));
        }
        return (None, problems);
    };
    let mut reader = Reader::new(&source);
    let scenario = Scenario::read(root, &mut reader);
    let mut problems = syntax;
    if problems.is_empty() {
        if let Some(scenario) = &scenario {
            cross::check(scenario, &mut reader);
            if whom == For::Author && reader.problems.iter().all(is_warning) {
                cross::check_causes(scenario, &mut reader);
            }
        }
        problems.extend(source.second_opinion());
        problems.append(&mut reader.problems);
    } else {
        let hint = source.run_over();
        let at = hint.as_ref().map(|hint| (hint.line, hint.column));
        problems.extend(hint);
        // What a syntax error tore apart is not missed once more, nor is a text that runs on.
        let torn = reader.problems.into_iter().filter(|it| Some((it.line, it.column)) != at);
        problems.extend(torn.filter(is_told_beside_syntax));
    }
    if scenario.is_none() && problems.is_empty() {
        let message = t!("problem-unreadable").to_owned();
        problems.push(source.problem(Code::Syntax, 0, message));
    }
    problems.sort_by_key(|problem| (problem.line, problem.column));
    if problems.len() > MAX_PROBLEMS {
        problems.truncate(MAX_PROBLEMS);
        let message = t!("problem-more").to_owned();
        problems.push(source.problem(Code::TooMany, text.len(), message));
    }
    (scenario, problems)
}

/// Whether a problem is told beside errors of syntax, which tear sections and texts apart.
fn is_told_beside_syntax(problem: &Problem) -> bool {
    match problem.code {
        Code::MissingField | Code::BadLength => false,
        // A plain number or text is surely what the author wrote.
        Code::WrongKind => {
            problem.found.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '"' | '-'))
        }
        Code::TooLarge
        | Code::NotUtf8
        | Code::TooDeep
        | Code::Syntax
        | Code::NewerVersion
        | Code::NoSuchVersion
        | Code::UnknownField
        | Code::DuplicateField
        | Code::BadQuantity
        | Code::UnknownName
        | Code::OutOfRange
        | Code::Contradiction
        | Code::Unusual
        | Code::TooMany => true,
    }
}

/// A version of the format that this program does not know yet: nothing else can be judged then.
fn newer_version(document: &Document<'_>, source: &Source<'_>) -> Option<Problem> {
    let fields = match document.value.as_ref()? {
        Expr::AnonStruct(it) => &it.fields,
        Expr::Struct(it) => match it.body.as_ref()? {
            StructBody::Fields(body) => &body.fields,
            StructBody::Tuple(_) => return None,
        },
        _ => return None,
    };
    let field = fields.iter().find(|field| field.name.name == "version")?;
    let Expr::Number(number) = &field.value else { return None };
    let raw = number.raw.replace('_', "");
    let newer = raw.bytes().all(|b| b.is_ascii_digit())
        && raw.parse::<u64>().map_or(!raw.is_empty(), |version| version > u64::from(VERSION));
    newer.then(|| {
        let message = t!("problem-newer", version = &raw, known = VERSION.to_string());
        let mut problem = source.problem(Code::NewerVersion, number.span.start_offset, message);
        problem.path = "version".to_owned();
        problem.found = raw.chars().take(40).collect();
        problem.width = problem.found.chars().count();
        problem.expected = VERSION.to_string();
        problem
    })
}
