//! An offence against a rule of the house, and the rules.

use serde::Deserialize;

/// The rules.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
pub enum Rule {
    /// A module uses what stands above it in the layers.
    Layers,
    /// Files of one module at top level use each other in a circle.
    Circle,
    /// A function has more than 70 lines between its braces.
    LongFunction,
    /// A file has more than 500 lines.
    LongFile,
    /// A clock, a file, a thread, the engine or the panels' library outside its room.
    Word,
    /// Something is marked as unfinished.
    Unfinished,
    /// A public item that no other file names.
    Unused,
    /// A catch-all arm over an enum of ours.
    CatchAll,
    /// `Debug` text where a person or the program reads it.
    DebugText,
    /// Documentation of three words or fewer.
    ShortDocs,
    /// A literal with words for a person: they belong to `assets/words`.
    WordsInCode,
}

impl Rule {
    pub const ALL: &'static [Self] = &[
        Self::Layers,
        Self::Circle,
        Self::LongFunction,
        Self::LongFile,
        Self::Word,
        Self::Unfinished,
        Self::Unused,
        Self::CatchAll,
        Self::DebugText,
        Self::ShortDocs,
        Self::WordsInCode,
    ];
}

/// One offence, at its file and line.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Offence {
    pub rule: Rule,
    /// The file, or the module at top level where the rule counts by room.
    pub file: String,
    pub line: usize,
    /// Its name on the list of known offences: a function, an enum, a module; may be empty.
    pub what: String,
    /// Lines of a long function or file, else one.
    pub amount: usize,
    /// The files of a circle, else none.
    pub circle: Vec<String>,
    /// The message for the person who must mend it.
    pub said: String,
}

impl Offence {
    pub fn new(rule: Rule, file: &str, line: usize, what: &str, said: String) -> Self {
        let circle = Vec::new();
        Self { rule, file: file.to_owned(), line, what: what.to_owned(), amount: 1, circle, said }
    }
}

impl std::fmt::Display for Offence {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}:{}: {}", self.file, self.line, self.said)
    }
}
