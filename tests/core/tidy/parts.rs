//! Small questions about attributes, identifiers and texts.

use std::collections::BTreeSet;

use proc_macro2::{TokenStream, TokenTree};
use syn::{Attribute, Item};

/// Macros that stop the program: their texts are for programmers.
pub const PANICS: &[&str] = &[
    "panic",
    "assert",
    "assert_eq",
    "assert_ne",
    "debug_assert",
    "debug_assert_eq",
    "debug_assert_ne",
    "unreachable",
    "todo",
    "unimplemented",
];

/// `#[test]` and `#[cfg(test)]`.
pub fn is_test(attrs: &[Attribute]) -> bool {
    attrs.iter().any(|attr| {
        attr.path().is_ident("test")
            || attr.path().is_ident("cfg")
                && attr.meta.require_list().is_ok_and(|list| list.tokens.to_string() == "test")
    })
}

pub fn attributes(item: &Item) -> &[Attribute] {
    match item {
        Item::Mod(it) => &it.attrs,
        Item::Fn(it) => &it.attrs,
        Item::Use(it) => &it.attrs,
        Item::Impl(it) => &it.attrs,
        Item::Struct(it) => &it.attrs,
        Item::Enum(it) => &it.attrs,
        Item::Const(it) => &it.attrs,
        Item::Static(it) => &it.attrs,
        _ => &[],
    }
}

/// Every identifier in `tokens`, however deep.
pub fn every_ident(tokens: TokenStream, found: &mut BTreeSet<String>) {
    for token in tokens {
        match token {
            TokenTree::Ident(ident) => {
                found.insert(ident.to_string());
            }
            TokenTree::Group(group) => every_ident(group.stream(), found),
            // A constant may be named within a text only: `{LIMIT_PA}`.
            TokenTree::Literal(literal) => {
                for piece in literal.to_string().split('{').skip(1) {
                    found.insert(leading_ident(piece));
                }
            }
            TokenTree::Punct(_) => {}
        }
    }
}

fn leading_ident(text: &str) -> String {
    text.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect()
}

/// Whether a format string prints something by `Debug`.
pub fn prints_debug(text: &str) -> bool {
    text.split('{').skip(1).any(|piece| {
        piece.split('}').next().is_some_and(|inner| inner.contains(':') && inner.ends_with('?'))
    })
}

/// Symbols of units, as the SI brochure and NIST SP 811 define them, with those of scenarios for the
/// inch of water, powers and degrees. A symbol is the same in every language.
const UNITS: &[&str] = &[
    "Pa", "kPa", "mbar", "psi", "inH2O", "ft3/h", "m3/h", "Btu/h", "kW", "W", "Btu/ft3", "MJ/m3",
    "ft", "in", "m", "mm", "ft3", "m3", "L", "gal", "K", "degF", "degC", "s", "min", "h", "Ω",
    "kΩ", "MΩ",
];

/// Methods that look for a text in another one, or cut it there.
pub const SEARCHES: &[&str] = &[
    "contains",
    "starts_with",
    "ends_with",
    "strip_prefix",
    "strip_suffix",
    "find",
    "rfind",
    "split",
    "rsplit",
    "split_once",
    "rsplit_once",
    "replace",
];

/// A space and a word of two letters or more beside what a format fills in: something for a person
/// to read. Markup (`<g id="…">`, `font-family="…"`) and a number, given or filled in, with the
/// symbol of its unit (`3.5 inH2O`, `{:.2} mm`) are none.
pub fn has_words(text: &str) -> bool {
    if is_quantity(text) {
        return false;
    }
    let filled = without(&without(text, '{', '}'), '<', '>');
    let is_word = |piece: &str| piece.chars().filter(|c| c.is_alphabetic()).count() >= 2;
    filled.contains(' ') && !filled.contains("=\"") && filled.split_whitespace().any(is_word)
}

/// A number or one place of a format, and the symbol of a unit behind it.
fn is_quantity(text: &str) -> bool {
    text.split_once(' ').is_some_and(|(number, unit)| {
        let filled_in = number.starts_with('{') && number.find('}') == Some(number.len() - 1);
        (filled_in || number.parse::<f64>().is_ok()) && UNITS.contains(&unit)
    })
}

/// A text without what stands between two marks.
fn without(text: &str, open: char, close: char) -> String {
    let mut depth = 0_usize;
    let mut left = String::new();
    for c in text.chars() {
        if c == open {
            depth += 1;
        } else if c == close {
            depth = depth.saturating_sub(1);
        } else if depth == 0 {
            left.push(c);
        }
    }
    left
}
