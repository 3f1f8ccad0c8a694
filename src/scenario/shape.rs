//! How the format describes itself: one declaration gives a section's type, its reader, its
//! limits and its page in the field reference.

/// Turns a declaration's default into a [`FieldDefault`](super::schema::FieldDefault).
macro_rules! default_of {
    (required) => {
        $crate::scenario::schema::FieldDefault::Required
    };
    ((derived $words:expr)) => {
        $crate::scenario::schema::FieldDefault::Derived($words)
    };
    ($text:literal) => {
        $crate::scenario::schema::FieldDefault::Value($text)
    };
}

/// Declares a section: for each field the id of what it means, its type, default (`required`, a
/// value, or `(derived id)`), and optionally the limits of the model, the usual range with its
/// source, the most characters of a text, the most values of a list, and for whom a number is the
/// same. Words stand in `assets/words/en/format.ftl`.
macro_rules! section {
    ($(
        $name:ident($doc:expr) {
            $(
                $field:ident($field_doc:expr): $kind:ty = $default:tt
                $(, limits $bottom:literal to $top:literal)?
                $(, usual $usual_least:literal to $usual_most:literal ($source:expr))?
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
            #[doc = concat!("Default: `", stringify!($default), "`.")]
            $(#[doc = concat!("Limits: ", $bottom, " to ", $top, ".")])?
            $(#[doc = concat!("Usual: ", $usual_least, " to ", $usual_most, ".")])?
            pub $field: $kind,
        )+ }

        impl $name {
            /// How the section describes itself.
            pub const SECTION: $crate::scenario::schema::Section =
                $crate::scenario::schema::Section {
                    name: stringify!($name),
                    doc: $doc,
                    fields: &[$(
                        $crate::scenario::schema::Field {
                            name: stringify!($field),
                            doc: $field_doc,
                            kind: <$kind as $crate::scenario::reader::Shape>::KIND,
                            default: $crate::scenario::shape::default_of!($default),
                            limits: $crate::scenario::shape::maybe!($(($bottom, $top))?),
                            usual: $crate::scenario::shape::maybe!(
                                $(($usual_least, $usual_most, $source))?
                            ),
                            most: $crate::scenario::shape::maybe!($($most)?),
                            entries: $crate::scenario::shape::maybe!($($entries)?),
                            fixed: $crate::scenario::shape::maybe!($($fixed)?),
                        },
                    )+],
                };
        }

        impl $crate::scenario::reader::Shape for $name {
            const KIND: $crate::scenario::schema::Kind =
                $crate::scenario::schema::Kind::Section(&Self::SECTION);

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

        impl $crate::scenario::reader::Shape for $name {
            const KIND: $crate::scenario::schema::Kind =
                $crate::scenario::schema::Kind::Variants(&[$( $variant::SECTION, )+]);

            fn read(
                expr: &ron2::ast::Expr<'_>,
                reader: &mut $crate::scenario::reader::Reader<'_>,
            ) -> Option<Self> {
                match reader.variant(&[$( stringify!($variant), )+], expr)? {
                    $( stringify!($variant) => {
                        <$variant as $crate::scenario::reader::Shape>::read(expr, reader)
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
        impl $crate::scenario::reader::Word for $kind {
            const WORDS: &'static [(&'static str, $crate::words::Id)] =
                &[$( ($crate::scenario::shape::word_of!($variant $($word)?), $words), )+];
        }

        impl $crate::scenario::reader::Shape for $kind {
            const KIND: $crate::scenario::schema::Kind = $crate::scenario::schema::Kind::Choice(
                <$kind as $crate::scenario::reader::Word>::WORDS,
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

pub(super) use {choice, default_of, maybe, section, variants, word_of};
