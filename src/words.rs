//! Words that a person reads: messages by id, from the Fluent files of `assets/words/en`.
//!
//! ```text
//! t!("sheet-title")                          a text without arguments: &'static str
//! t!("sheet-hold", seconds = decimal(s, 0))  a text with arguments: String
//! id!("sheet-title")                         an id for a table, read later with `text`
//! ```
//!
//! Ids stand in the sources as literals only, so that `tests/core/words` can compare them with the
//! files. A message or argument that is missing fails that test; in the program it shows its id.
//! Ids of texts about rows of data are put together from the row ([`table`]); the same test asks
//! the tables for them.
//!
//! `fluent-bundle` reads files that are embedded one by one. A loader that embeds a whole folder
//! brings a walker of folders and threads into the bare core; twenty lines here do without. Look-ups
//! are by id, so that no order of a hash table reaches a text.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use fluent_syntax::ast::Entry;
use unic_langid::LanguageIdentifier;

/// A text by its id: `&'static str`, or `String` where it has arguments.
macro_rules! t {
    ($id:literal $(,)?) => {
        $crate::words::Id::new($id).text()
    };
    ($id:literal, $($name:ident = $value:expr),+ $(,)?) => {
        $crate::words::fill(
            $crate::words::Id::new($id),
            vec![$((stringify!($name), $crate::words::Argument::from($value))),+],
        )
    };
}

/// An id in a table of constants.
macro_rules! id {
    ($id:literal) => {
        $crate::words::Id::new($id)
    };
}

mod number;
pub mod table;

pub use number::{decimal, fixed, whole};

macro_rules! files {
    ($($name:literal),* $(,)?) => {
        &[$(($name, include_str!(concat!("../assets/words/en/", $name)))),*]
    };
}

/// The files of words, each with its name, in the order in which they are read.
pub const FILES: &[(&str, &str)] = files![
    "terms.ftl",
    "numbers.ftl",
    "units.ftl",
    "panels.ftl",
    "opening.ftl",
    "sheet.ftl",
    "parts.ftl",
    "states.ftl",
    "ways.ftl",
    "handling.ftl",
    "coach.ftl",
    "inside.ftl",
    "debrief.ftl",
    "marking.ftl",
    "rules.ftl",
    "desk.ftl",
    "repairs.ftl",
    "refusals.ftl",
    "senses.ftl",
    "sound.ftl",
    "findings.ftl",
    "causes.ftl",
    "status.ftl",
    "format.ftl",
    "scenario.ftl",
    "record.ftl",
    "technician.ftl",
    "cli.ftl",
    "preview.ftl",
    "faults.ftl",
    "fault_pages.ftl",
    "proof.ftl",
    "drawings.ftl",
    "fidelity.ftl",
];

/// The id of a message. Sources write it through [`t!`] and [`id!`] only.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Id(&'static str);

impl Id {
    /// An id that a macro of this module took from the source.
    #[doc(hidden)]
    #[must_use]
    pub const fn new(id: &'static str) -> Id {
        Id(id)
    }

    /// The message's text; it has no arguments.
    #[must_use]
    pub fn text(self) -> &'static str {
        WORDS.plain.get(self.0).map_or(self.0, String::as_str)
    }
}

/// The text of a message, without arguments, whose id is put together from a row of data. None if
/// there is no such message. Tables read it once, so that a missing text is an error with its row.
fn from_data(id: &str) -> Option<&'static str> {
    WORDS.plain.get(id).map(String::as_str)
}

/// An argument of a message. Decimals come through [`decimal`], because Fluent writes a number
/// without regard to the language.
#[derive(Clone, Debug)]
pub enum Argument {
    /// Words, or a number that is formatted already.
    Text(String),
    /// A count, which a message may also choose its plural by.
    Count(i64),
}

impl From<String> for Argument {
    fn from(text: String) -> Self {
        Argument::Text(text)
    }
}

impl From<&String> for Argument {
    fn from(text: &String) -> Self {
        Argument::Text(text.clone())
    }
}

impl From<&str> for Argument {
    fn from(text: &str) -> Self {
        Argument::Text(text.to_owned())
    }
}

impl From<i64> for Argument {
    fn from(count: i64) -> Self {
        Argument::Count(count)
    }
}

impl From<u32> for Argument {
    fn from(count: u32) -> Self {
        Argument::Count(i64::from(count))
    }
}

impl From<usize> for Argument {
    fn from(count: usize) -> Self {
        Argument::Count(i64::try_from(count).unwrap_or(i64::MAX))
    }
}

impl From<Argument> for FluentValue<'static> {
    fn from(argument: Argument) -> Self {
        match argument {
            Argument::Text(text) => FluentValue::from(text),
            Argument::Count(count) => FluentValue::from(count),
        }
    }
}

struct Words {
    bundle: FluentBundle<FluentResource>,
    plain: BTreeMap<String, String>,
}

static WORDS: LazyLock<Words> = LazyLock::new(|| {
    let language: LanguageIdentifier = "en-US".parse().unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![language]);
    // Marks of direction around arguments are for languages written from right to left.
    bundle.set_use_isolating(false);
    let mut ids = Vec::new();
    for (_, text) in FILES {
        // A test finds what cannot be parsed, and an id that stands twice; here the rest is shown.
        let resource = match FluentResource::try_new((*text).to_owned()) {
            Ok(resource) | Err((resource, _)) => resource,
        };
        for entry in resource.entries() {
            if let Entry::Message(message) = entry {
                ids.push(message.id.name.to_owned());
            }
        }
        let _ = bundle.add_resource(resource);
    }
    let plain = ids
        .into_iter()
        .filter_map(|id| {
            let mut problems = Vec::new();
            let pattern = bundle.get_message(&id)?.value()?;
            let text = bundle.format_pattern(pattern, None, &mut problems).into_owned();
            problems.is_empty().then_some((id, text))
        })
        .collect();
    Words { bundle, plain }
});

/// The text of a message with arguments; [`t!`] calls it.
#[must_use]
pub fn fill(id: Id, arguments: Vec<(&'static str, Argument)>) -> String {
    let Some(pattern) = WORDS.bundle.get_message(id.0).and_then(|message| message.value()) else {
        return id.0.to_owned();
    };
    let mut filled = FluentArgs::with_capacity(arguments.len());
    for (name, argument) in arguments {
        filled.set(name, argument);
    }
    // What is missing stands in the text as `{$name}`.
    WORDS.bundle.format_pattern(pattern, Some(&filled), &mut Vec::new()).into_owned()
}
