//! The parts of the format as data: sections, fields, and what their values look like.

use crate::words::Id;

/// What a value of the format looks like.
#[derive(Debug, Clone, Copy)]
pub enum Kind {
    /// Named fields in parentheses.
    Section(&'static Section),
    /// One of several named sections.
    Variants(&'static [Section]),
    /// One word of a list: name and meaning.
    Choice(&'static [(&'static str, Id)]),
    /// The same, or several of these words to draw from.
    Drawn(&'static [(&'static str, Id)]),
    /// Values of one kind in square brackets.
    List(&'static Kind, usize),
    /// A truth value, `true` or `false`.
    Truth,
    /// Text in quotes, with its greatest length in characters.
    Text(usize),
    /// A number with its unit in one text: what it is, and units that will do. May be a range.
    Quantity(Id, &'static [&'static str]),
    /// A number. May be a range.
    Number(Id),
    /// A whole number. May be a range.
    Whole(Id),
    /// A fault of the catalogue with its severity, or one of several.
    Fault,
}

/// A group of fields.
#[derive(Debug, Clone, Copy)]
pub struct Section {
    /// Its name, which may stand before the parenthesis.
    pub name: &'static str,
    /// Meaning of the section, as a message.
    pub doc: Id,
    /// Fields in the order of the reference.
    pub fields: &'static [Field],
}

/// One field of a section, as the format declares it.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// Name as it is written in a file.
    pub name: &'static str,
    /// Meaning of the field, as a message.
    pub doc: Id,
    /// What its value looks like.
    pub kind: Kind,
    /// What it is when it is not written.
    pub default: FieldDefault,
    /// Lowest and highest value that the model takes.
    pub limits: Option<(&'static str, &'static str)>,
    /// Lowest and highest value that is published or common, and where that is from.
    pub usual: Option<(&'static str, &'static str, Id)>,
    /// Most characters of a text, or of each text of a list, where that is less than for any text.
    pub most: Option<usize>,
    /// Most values of a list, where that is less than for any list.
    pub entries: Option<usize>,
    /// For whom or what a number is one and the same: it may not be a range.
    pub fixed: Option<Id>,
}

impl Section {
    /// Most characters that a text of this field may have.
    pub(super) fn text_limit(&self, name: &str) -> usize {
        let field = self.fields.iter().find(|field| field.name == name);
        field.and_then(|field| field.most).unwrap_or(usize::MAX)
    }
}

/// What a field is when it is not written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FieldDefault {
    /// It must be written.
    Required,
    /// This value, as it would be written.
    Value(&'static str),
    /// Found from other fields; in words.
    Derived(Id),
}
