//! From the syntax tree to typed values, with every problem on the way and its place.

use std::collections::BTreeMap;

use ron2::ast::{Expr, FieldsBody, StructBody, StructField};

use super::problem::{Code, Problem, ProblemLevel, nearest};
use super::schema::{Field, FieldDefault, Kind, Section};
use super::source::{MAX_PROBLEMS, Source};
use super::synonyms::meant;
use crate::words::Id;

/// Where a job writes its endings; a setting has them in a field of its own.
const ENDINGS: &str = "marking.endings";

/// A type that a value of the format is read into.
pub(super) trait Shape: Sized {
    /// What its value looks like.
    const KIND: Kind;
    /// Most of them in one list.
    const MOST_IN_LIST: usize = 24;

    /// Reads it; problems go to the reader, and with one there is no value.
    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self>;

    /// Reads a default as the declaration has it.
    fn from_default(text: &'static str) -> Option<Self>;
}

/// One of a list of words.
pub(super) trait Word: Shape {
    /// The words: name and meaning.
    const WORDS: &'static [(&'static str, Id)];
}

/// Reads values and gathers problems.
pub(super) struct Reader<'a> {
    source: &'a Source<'a>,
    /// What was found wrong so far.
    pub problems: Vec<Problem>,
    path: String,
    field: Option<&'static Field>,
    /// Byte offset of the value at each path that is written.
    places: BTreeMap<String, (usize, usize)>,
    /// The setting that is looked at as a whole, with the fields that it writes.
    pub inside: Option<(String, Vec<&'static str>)>,
}

/// A section's fields as written.
pub(super) struct Opened<'e, 's> {
    fields: &'e [StructField<'s>],
    at: usize,
}

impl<'a> Reader<'a> {
    pub(super) fn new(source: &'a Source<'a>) -> Self {
        Self {
            source,
            problems: Vec::new(),
            path: String::new(),
            field: None,
            places: BTreeMap::new(),
            inside: None,
        }
    }

    /// The field whose value is being read.
    pub(super) fn current(&self) -> Option<&'static Field> {
        self.field
    }

    /// Notes a problem with the value at `expr`.
    pub(super) fn wrong(&mut self, code: Code, expr: &Expr<'_>, message: String, expected: &str) {
        let span = expr.span();
        let path = self.path.clone();
        self.push(code, (span.start_offset, span.end_offset), path, message, expected);
    }

    fn push(&mut self, code: Code, at: (usize, usize), path: String, text: String, expected: &str) {
        if self.problems.len() > MAX_PROBLEMS {
            return;
        }
        let mut problem = self.source.problem(code, at.0, text);
        problem.found = self.source.snippet(at.0, at.1);
        problem.width = self.source.width(at.0, at.1);
        expected.clone_into(&mut problem.expected);
        problem.path = path;
        self.problems.push(problem);
    }

    /// Notes what a look at the whole found wrong at a path. A value that is not written is shown
    /// at the nearest section around it.
    pub(super) fn at_path(&mut self, level: ProblemLevel, code: Code, path: &str, message: String) {
        let path = &self.placed(path);
        let mut here = path.as_str();
        let place = loop {
            if let Some(&place) = self.places.get(here) {
                break place;
            }
            match here.rfind(['.', '[']) {
                Some(cut) => here = &here[..cut],
                None => break (0, 0),
            }
        };
        // Only what is written there itself is shown as found.
        let at = if here == *path { place } else { (place.0, place.0) };
        self.push(code, at, path.clone(), message, "");
        if let Some(last) = self.problems.last_mut() {
            last.severity = level;
        }
    }

    /// Where a path of the job is written: in the setting that is looked at, or in the job itself.
    fn placed(&self, path: &str) -> String {
        let first = path.split(['.', '[']).next().unwrap_or(path);
        match &self.inside {
            Some((place, written)) if written.contains(&first) => format!("{place}.{path}"),
            Some((place, written)) if path.starts_with(ENDINGS) && written.contains(&"endings") => {
                format!("{place}.endings{}", path.trim_start_matches(ENDINGS))
            }
            Some(_) | None => path.to_owned(),
        }
    }

    /// Opens a section: checks its name, and that each field is known and stands once.
    pub(super) fn open<'e, 's>(
        &mut self,
        section: &'static Section,
        expr: &'e Expr<'s>,
    ) -> Option<Opened<'e, 's>> {
        let span = expr.span();
        self.places.insert(self.path.clone(), (span.start_offset, span.end_offset));
        let at = span.start_offset;
        let (name, fields): (_, &[StructField<'s>]) = match expr {
            Expr::AnonStruct(it) => (None, &it.fields),
            Expr::Unit(_) => (None, &[]),
            Expr::Struct(it) => match &it.body {
                Some(StructBody::Fields(FieldsBody { fields, .. })) => (Some(&it.name), fields),
                Some(StructBody::Tuple(body)) if body.elements.is_empty() => (Some(&it.name), &[]),
                Some(StructBody::Tuple(_)) | None => return self.not_a_section(section, expr),
            },
            Expr::Error(_) => return None,
            _ => return self.not_a_section(section, expr),
        };
        if let Some(name) = name.filter(|name| name.name != section.name) {
            let message = t!("problem-other-section", name = &*name.name);
            let expected = t!("expected-section", section = section.name);
            let span = (name.span.start_offset, name.span.end_offset);
            self.push(Code::UnknownName, span, self.path.clone(), message, &expected);
        }
        self.check_names(section, fields);
        Some(Opened { fields, at })
    }

    fn not_a_section<T>(&mut self, section: &Section, expr: &Expr<'_>) -> Option<T> {
        let message = t!("problem-no-section", section = section.name);
        self.wrong(Code::WrongKind, expr, message, t!("expected-fields"));
        None
    }

    fn check_names(&mut self, section: &'static Section, fields: &[StructField<'_>]) {
        let known = || section.fields.iter().map(|field| field.name);
        for (i, field) in fields.iter().enumerate() {
            let name: &str = &field.name.name;
            // A nameless field stands for one that the syntax errors have told of already.
            if name.is_empty() {
                continue;
            }
            let at = (field.name.span.start_offset, field.name.span.end_offset);
            let path = join(&self.path, name);
            if !known().any(|one| one == name) {
                let message = t!("problem-unknown-field", section = section.name, name = name);
                let expected =
                    t!("expected-one-of", names = known().collect::<Vec<_>>().join(", "));
                self.push(Code::UnknownField, at, path, message, &expected);
                if let Some(last) = self.problems.last_mut() {
                    last.nearest = meant(name, section).or_else(|| nearest(name, known()));
                }
            } else if fields[..i].iter().any(|before| before.name.name == field.name.name) {
                let message = t!("problem-field-twice", name = name);
                self.push(Code::DuplicateField, at, path, message, t!("expected-field-once"));
            }
        }
    }

    /// Reads one field of an opened section, or takes its default.
    pub(super) fn field<T: Shape>(
        &mut self,
        section: &'static Section,
        opened: &Opened<'_, '_>,
        name: &'static str,
    ) -> Option<T> {
        let info = section.fields.iter().find(|field| field.name == name)?;
        let Some(written) = opened.fields.iter().find(|field| field.name.name == name) else {
            if info.default == FieldDefault::Required {
                let message = t!("problem-missing-field", section = section.name, name = name);
                let path = join(&self.path, name);
                self.push(Code::MissingField, (opened.at, opened.at), path, message, "");
            }
            return default_value(section, name);
        };
        let here = join(&self.path, name);
        let outer = core::mem::replace(&mut self.path, here);
        let outer_field = self.field.replace(info);
        let span = written.value.span();
        self.places.insert(self.path.clone(), (span.start_offset, span.end_offset));
        let value = T::read(&written.value, self);
        self.path = outer;
        self.field = outer_field;
        value
    }

    /// Reads the values of a list.
    pub(super) fn list<T: Shape>(&mut self, expr: &Expr<'_>) -> Option<Vec<T>> {
        let Expr::Seq(list) = expr else {
            if !matches!(expr, Expr::Error(_)) {
                let message = t!("problem-no-list").to_owned();
                self.wrong(Code::WrongKind, expr, message, t!("expected-list"));
            }
            return None;
        };
        let most = self.field.and_then(|field| field.entries).unwrap_or(T::MOST_IN_LIST);
        if list.items.len() > most {
            let message = t!("problem-list-length", count = list.items.len());
            let expected = t!("expected-at-most", most = most);
            self.wrong(Code::BadLength, expr, message, &expected);
            return None;
        }
        let outer = self.path.clone();
        let mut values = Vec::new();
        for (i, item) in list.items.iter().enumerate() {
            self.path = format!("{outer}[{i}]");
            let span = item.expr.span();
            self.places.insert(self.path.clone(), (span.start_offset, span.end_offset));
            values.push(T::read(&item.expr, self));
        }
        self.path = outer;
        values.into_iter().collect()
    }

    /// The word that stands here, if it is one of `names`.
    pub(super) fn word(&mut self, names: &[&'static str], expr: &Expr<'_>) -> Option<&'static str> {
        match expr {
            Expr::Struct(it) if it.body.is_none() => self.named(names, &it.name.name, expr),
            Expr::Error(_) => None,
            Expr::Struct(it) if it.name.name == "OneOf" => {
                let message = t!("problem-word-drawn");
                self.wrong(Code::WrongKind, expr, message.to_owned(), &one_of(names));
                None
            }
            _ => {
                let message = t!("problem-no-word").to_owned();
                self.wrong(Code::WrongKind, expr, message, &one_of(names));
                None
            }
        }
    }

    /// The name before the parenthesis that stands here, if it is one of `names`.
    pub(super) fn variant(
        &mut self,
        names: &[&'static str],
        expr: &Expr<'_>,
    ) -> Option<&'static str> {
        match expr {
            Expr::Struct(it) => self.named(names, &it.name.name, expr),
            Expr::Error(_) => None,
            _ => {
                let message = t!("problem-no-named-section").to_owned();
                self.wrong(Code::WrongKind, expr, message, &one_of(names));
                None
            }
        }
    }

    fn named(
        &mut self,
        names: &[&'static str],
        found: &str,
        expr: &Expr<'_>,
    ) -> Option<&'static str> {
        let name = names.iter().copied().find(|&name| name == found);
        if name.is_none() {
            let message = t!("problem-not-here", found = found);
            self.wrong(Code::UnknownName, expr, message, &one_of(names));
            self.suggest(nearest(found, names.iter().copied()));
        }
        name
    }

    /// Adds the nearest name to the last problem.
    pub(super) fn suggest(&mut self, name: Option<String>) {
        if let Some(last) = self.problems.last_mut() {
            last.nearest = name;
        }
    }
}

/// A field's default; none when it must be written.
pub(super) fn default_value<T: Shape>(section: &'static Section, name: &str) -> Option<T> {
    let info = section.fields.iter().find(|field| field.name == name)?;
    match info.default {
        FieldDefault::Required => None,
        FieldDefault::Value(text) => T::from_default(text),
        FieldDefault::Derived(_) => T::from_default(""),
    }
}

fn join(path: &str, name: &str) -> String {
    if path.is_empty() { name.to_owned() } else { format!("{path}.{name}") }
}

fn one_of(names: &[&str]) -> String {
    t!("expected-one-of", names = names.join(", "))
}
