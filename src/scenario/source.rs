//! The text of a scenario before its meaning: limits that hold before anything is parsed, the
//! syntax tree, and places in lines and columns.

use ron2::ast::{Document, parse_document_lossy};

use super::problem::{Code, Problem, ProblemLevel};

/// Largest scenario, in bytes.
pub const MAX_BYTES: usize = 256 * 1024;
/// Deepest nesting of brackets.
pub const MAX_DEPTH: usize = 24;
/// Problems listed at most.
pub(super) const MAX_PROBLEMS: usize = 100;

/// A text with its line starts.
pub(super) struct Source<'a> {
    pub text: &'a str,
    lines: Vec<usize>,
}

impl<'a> Source<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        let breaks = text.bytes().enumerate().filter(|&(_, b)| b == b'\n').map(|(i, _)| i + 1);
        Self { text, lines: core::iter::once(0).chain(breaks).collect() }
    }

    /// Line and column (in characters) of a byte offset, both from 1.
    pub(super) fn place(&self, offset: usize) -> (usize, usize) {
        let offset = offset.min(self.text.len());
        let line = self.lines.partition_point(|&start| start <= offset).max(1);
        let start = self.lines.get(line - 1).copied().unwrap_or(0);
        let column = self
            .text
            .get(start..)
            .unwrap_or("")
            .char_indices()
            .take_while(|(i, _)| start + i < offset)
            .count();
        (line, column + 1)
    }

    /// What stands between two offsets, on one line, shortened.
    pub(super) fn snippet(&self, from: usize, to: usize) -> String {
        const MOST: usize = 60;
        let text = self.text.get(from..to.max(from)).unwrap_or("");
        let line = text.lines().next().unwrap_or("");
        let mut short: String = line.chars().filter(|c| !c.is_control()).take(MOST).collect();
        if short.len() < text.trim_end().len() {
            short.push('…');
        }
        short
    }

    /// Characters between two offsets, to the end of the line at most.
    pub(super) fn width(&self, from: usize, to: usize) -> usize {
        let text = self.text.get(from..to.max(from)).unwrap_or("");
        text.lines().next().unwrap_or("").chars().count()
    }

    pub(super) fn problem(&self, code: Code, offset: usize, message: String) -> Problem {
        let (line, column) = self.place(offset);
        Problem {
            severity: ProblemLevel::Error,
            code,
            file: String::new(),
            line,
            column,
            width: 0,
            path: String::new(),
            found: String::new(),
            expected: String::new(),
            message,
            nearest: None,
        }
    }

    /// Why the text must not be given to a parser, if so.
    pub(super) fn over_limits(&self) -> Option<Problem> {
        if self.text.len() > MAX_BYTES {
            let message = t!("problem-file-size", size = self.text.len(), most = MAX_BYTES);
            return Some(self.problem(Code::TooLarge, 0, message));
        }
        deepest_over(self.text.as_bytes(), MAX_DEPTH).map(|offset| {
            let message = t!("problem-depth", most = MAX_DEPTH);
            self.problem(Code::TooDeep, offset, message)
        })
    }

    /// The syntax tree, as far as there is one, and every syntax error.
    pub(super) fn parse(&self) -> (Document<'a>, Vec<Problem>) {
        let (document, errors) = parse_document_lossy(self.text);
        let mut problems: Vec<Problem> = Vec::new();
        for error in errors.iter().take(MAX_PROBLEMS) {
            let span = error.span();
            let message = t!("problem-not-ron", what = lower_first(&error.kind().to_string()));
            let mut problem = self.problem(Code::Syntax, span.start_offset, message);
            problem.found = self.snippet(span.start_offset, span.end_offset);
            problem.width = self.width(span.start_offset, span.end_offset);
            if !problems.contains(&problem) {
                problems.push(problem);
            }
        }
        (document, problems)
    }

    /// The first text that runs over the end of its line, as where a quote is missing: a hint beside
    /// the errors that come of it.
    pub(super) fn run_over(&self) -> Option<Problem> {
        let bytes = self.text.as_bytes();
        let mut i = 0;
        while let Some(&b) = bytes.get(i) {
            match (b, bytes.get(i + 1)) {
                (b'"', _) => {
                    let end = string_end(bytes, i + 1);
                    if bytes.get(i..end).is_some_and(|inside| inside.contains(&b'\n')) {
                        let message = t!("problem-quote");
                        let mut problem = self.problem(Code::Syntax, i, message.to_owned());
                        problem.severity = ProblemLevel::Warning;
                        problem.found = self.snippet(i, end);
                        problem.width = self.width(i, end);
                        return Some(problem);
                    }
                    i = end;
                }
                (b'/', Some(b'/')) => i += bytes[i..].iter().take_while(|&&b| b != b'\n').count(),
                _ => {}
            }
            i += 1;
        }
        None
    }

    /// Whether the reference parser of the format reads the text as well; its objection if not.
    pub(super) fn second_opinion(&self) -> Option<Problem> {
        let error = ron::Options::default()
            .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
            .from_str::<ron::Value>(self.text)
            .err()?;
        let start = &error.span.start;
        let line_start = self.lines.get(start.line.saturating_sub(1)).copied().unwrap_or(0);
        let within = self.text.get(line_start..).unwrap_or("");
        let column = within.char_indices().nth(start.col.saturating_sub(1));
        let offset = line_start + column.map_or(0, |(i, _)| i);
        let message = t!("problem-not-ron", what = lower_first(&error.code.to_string()));
        Some(self.problem(Code::Syntax, offset, message))
    }
}

fn lower_first(text: &str) -> String {
    let mut chars = text.trim_end_matches('.').chars();
    chars.next().map_or_else(String::new, |c| c.to_lowercase().chain(chars).collect())
}

/// Where brackets outside strings and comments stand deeper than `limit`, if anywhere.
fn deepest_over(bytes: &[u8], limit: usize) -> Option<usize> {
    let mut depth = 0_usize;
    let mut i = 0;
    while let Some(&b) = bytes.get(i) {
        match (b, bytes.get(i + 1)) {
            (b'"', _) => i = string_end(bytes, i + 1),
            (b'/', Some(b'/')) => i += bytes[i..].iter().take_while(|&&b| b != b'\n').count(),
            (b'(' | b'[' | b'{', _) => {
                depth += 1;
                if depth > limit {
                    return Some(i);
                }
            }
            (b')' | b']' | b'}', _) => depth = depth.saturating_sub(1),
            _ => {}
        }
        i += 1;
    }
    None
}

/// Index of the quote that ends a string, or of the end of the text.
fn string_end(bytes: &[u8], start: usize) -> usize {
    let mut i = start;
    while let Some(&b) = bytes.get(i) {
        match b {
            b'"' => return i,
            b'\\' => i += 2,
            _ => i += 1,
        }
    }
    i
}
