//! How the format describes itself: one declaration gives a section's type, its reader, its
//! limits and its page in the field reference.

use super::reader::Reader;
use crate::words::Id;
use ron2::ast::Expr;

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
    /// `true` or `false`.
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
    /// What it is.
    pub doc: Id,
    /// Its fields.
    pub fields: &'static [Field],
}

/// A field.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// Its name.
    pub name: &'static str,
    /// What it means.
    pub doc: Id,
    /// What its value looks like.
    pub kind: Kind,
    /// What it is when it is not written.
    pub default: Default,
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
pub enum Default {
    /// It must be written.
    Required,
    /// This value, as it would be written.
    Value(&'static str),
    /// Found from other fields; in words.
    Derived(Id),
}

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

/// Turns a declaration's default into a [`Default`].
macro_rules! default_of {
    (required) => {
        $crate::scenario::shape::Default::Required
    };
    ((derived $words:expr)) => {
        $crate::scenario::shape::Default::Derived($words)
    };
    ($text:literal) => {
        $crate::scenario::shape::Default::Value($text)
    };
}

/// The sentence on the default for the documentation.
macro_rules! default_words {
    (required) => {
        "Must be written."
    };
    ((derived $words:expr)) => {
        concat!("Default: found from other fields, `", stringify!($words), "`.")
    };
    ($text:literal) => {
        concat!("Default: `", $text, "`.")
    };
}

/// Declares a section: for each field the id of what it means, its type, default (`required`, a value,
/// or `(derived id)`), and optionally the limits of the model, the usual range with its source, the
/// most characters of a text, the most values of a list, and for whom a number is the same. Words
/// stand in `assets/words/en/format.ftl`.
macro_rules! section {
    ($(
        $name:ident($doc:expr) {
            $(
                $field:ident($field_doc:expr): $kind:ty = $default:tt
                $(, limits $bottom:literal to $top:literal)?
                $(, usual $usual_low:literal to $usual_high:literal ($source:expr))?
                $(, text $most:literal)?
                $(, entries $entries:literal)?
                $(, fixed $fixed:expr)?;
            )+
        }
    )+) => { $(
        #[doc = concat!("A section of the format, `", stringify!($doc), "`.")]
        #[derive(Debug, Clone, PartialEq)]
        pub struct $name { $(
            #[doc = concat!("A field of the format, `", stringify!($field_doc), "`.")]
            ///
            #[doc = $crate::scenario::shape::default_words!($default)]
            $(#[doc = concat!("Limits: ", $bottom, " to ", $top, ".")])?
            $(#[doc = concat!("Usual: ", $usual_low, " to ", $usual_high, ".")])?
            pub $field: $kind,
        )+ }

        impl $name {
            /// How the section describes itself.
            pub const SECTION: $crate::scenario::shape::Section =
                $crate::scenario::shape::Section {
                    name: stringify!($name),
                    doc: $doc,
                    fields: &[$(
                        $crate::scenario::shape::Field {
                            name: stringify!($field),
                            doc: $field_doc,
                            kind: <$kind as $crate::scenario::shape::Shape>::KIND,
                            default: $crate::scenario::shape::default_of!($default),
                            limits: $crate::scenario::shape::maybe!($(($bottom, $top))?),
                            usual: $crate::scenario::shape::maybe!(
                                $(($usual_low, $usual_high, $source))?
                            ),
                            most: $crate::scenario::shape::maybe!($($most)?),
                            entries: $crate::scenario::shape::maybe!($($entries)?),
                            fixed: $crate::scenario::shape::maybe!($($fixed)?),
                        },
                    )+],
                };
        }

        impl $crate::scenario::shape::Shape for $name {
            const KIND: $crate::scenario::shape::Kind =
                $crate::scenario::shape::Kind::Section(&Self::SECTION);

            fn read(
                expr: &ron2::ast::Expr<'_>,
                reader: &mut $crate::scenario::reader::Reader<'_>,
            ) -> Option<Self> {
                let opened = reader.open(&Self::SECTION, expr)?;
                $( let $field = reader.field(&Self::SECTION, &opened, stringify!($field)); )+
                Some(Self { $( $field: $field?, )+ })
            }

            fn from_default(text: &'static str) -> Option<Self> {
                let _ = text;
                Some(Self {
                    $( $field: $crate::scenario::reader::default_value(
                        &Self::SECTION,
                        stringify!($field),
                    )?, )+
                })
            }
        }
    )+ };
}

/// `Some` of what is given, or `None`.
macro_rules! maybe {
    () => {
        None
    };
    ($it:expr) => {
        Some($it)
    };
}

/// Declares an enum of sections: the name before the parenthesis decides.
macro_rules! variants {
    ($(#[doc = $doc:literal])+ $name:ident { $( $variant:ident, )+ }) => {
        $(#[doc = $doc])+
        #[derive(Debug, Clone, PartialEq)]
        pub enum $name { $(
            #[doc = concat!("See [`", stringify!($variant), "`].")]
            $variant($variant),
        )+ }

        impl $crate::scenario::shape::Shape for $name {
            const KIND: $crate::scenario::shape::Kind =
                $crate::scenario::shape::Kind::Variants(&[$( $variant::SECTION, )+]);

            fn read(
                expr: &ron2::ast::Expr<'_>,
                reader: &mut $crate::scenario::reader::Reader<'_>,
            ) -> Option<Self> {
                match reader.variant(&[$( stringify!($variant), )+], expr)? {
                    $( stringify!($variant) => {
                        <$variant as $crate::scenario::shape::Shape>::read(expr, reader)
                            .map(Self::$variant)
                    } )+
                    _ => None,
                }
            }

            fn from_default(_: &'static str) -> Option<Self> {
                None
            }
        }
    };
}

/// The word of a choice in a file: the variant's name, or another.
macro_rules! word_of {
    ($variant:ident) => {
        stringify!($variant)
    };
    ($variant:ident $id:literal) => {
        $id
    };
}

/// Makes an enum readable as one of its words.
macro_rules! choice {
    ($( $kind:ty { $( $variant:ident $(as $word:literal)? = $words:expr, )+ } )+) => { $(
        impl $crate::scenario::shape::Word for $kind {
            const WORDS: &'static [(&'static str, $crate::words::Id)] =
                &[$( ($crate::scenario::shape::word_of!($variant $($word)?), $words), )+];
        }

        impl $crate::scenario::shape::Shape for $kind {
            const KIND: $crate::scenario::shape::Kind = $crate::scenario::shape::Kind::Choice(
                <$kind as $crate::scenario::shape::Word>::WORDS,
            );

            fn read(
                expr: &ron2::ast::Expr<'_>,
                reader: &mut $crate::scenario::reader::Reader<'_>,
            ) -> Option<Self> {
                let word = reader.word(&[$( $crate::scenario::shape::word_of!($variant $($word)?), )+], expr)?;
                Self::from_default(word)
            }

            fn from_default(text: &'static str) -> Option<Self> {
                $( if text == $crate::scenario::shape::word_of!($variant $($word)?) {
                    return Some(Self::$variant);
                } )+
                None
            }
        }
    )+ };
}

pub(super) use {choice, default_of, default_words, maybe, section, variants, word_of};
