//! Words that may be drawn from the seed: `On`, or `OneOf([On, Off])`.

use ron2::ast::{Expr, StructBody};

use super::problem::{Code, nearest};
use super::reader::{Reader, Shape, Word};
use super::schema::Kind;
use crate::rng::stream;

/// Most words in one choice: each may stand more than once, so that it is drawn more often.
const MOST: usize = 12;

/// One word, or several of which each seed draws one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pick<T> {
    first: T,
    others: Vec<T>,
}

impl<T> Pick<T> {
    /// One of these: the first, or one of the others.
    pub(super) fn among(first: T, others: Vec<T>) -> Self {
        Self { first, others }
    }
}

impl<T: Copy> Pick<T> {
    /// Every word that a seed can draw.
    pub(super) fn words(&self) -> impl Iterator<Item = T> + '_ {
        core::iter::once(self.first).chain(self.others.iter().copied())
    }
}

impl<T: Copy> Pick<T> {
    /// The word for a seed. `path` names the field; each field has a stream of its own.
    #[must_use]
    pub fn draw(&self, seed: u64, path: &str) -> T {
        let count =
            u32::try_from(self.others.len()).map_or(u32::MAX, |more| more.saturating_add(1));
        let at = if count > 1 { stream(seed, path).below(count) } else { 0 };
        let at = usize::try_from(at).unwrap_or(0);
        at.checked_sub(1).and_then(|i| self.others.get(i)).copied().unwrap_or(self.first)
    }
}

impl<T> From<T> for Pick<T> {
    fn from(first: T) -> Self {
        Self { first, others: Vec::new() }
    }
}

impl<T: Word> Shape for Pick<T> {
    const KIND: Kind = Kind::Drawn(T::WORDS);

    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self> {
        let Expr::Struct(it) = expr else { return T::read(expr, reader).map(Self::from) };
        let name: &str = &it.name.name;
        let Some(body) = &it.body else {
            if name == "OneOf" {
                let message = t!("problem-choice-words").to_owned();
                reader.wrong(Code::WrongKind, expr, message, &expected::<T>());
                return None;
            }
            return T::read(expr, reader).map(Self::from);
        };
        if name != "OneOf" {
            let message = t!("problem-not-here", found = name);
            reader.wrong(Code::UnknownName, expr, message, &expected::<T>());
            reader.suggest(nearest(name, core::iter::once("OneOf")));
            return None;
        }
        let list = match body {
            StructBody::Tuple(body) => match body.elements.as_slice() {
                [only] => match &only.expr {
                    Expr::Seq(list) => Some(list),
                    _ => None,
                },
                _ => None,
            },
            StructBody::Fields(_) => None,
        };
        let Some(list) = list else {
            let message = t!("problem-choice-words").to_owned();
            reader.wrong(Code::WrongKind, expr, message, &expected::<T>());
            return None;
        };
        if list.items.is_empty() || list.items.len() > MOST {
            let message = t!("problem-choice-count", count = list.items.len());
            reader.wrong(Code::BadLength, expr, message, &t!("expected-choice-count", most = MOST));
            return None;
        }
        let words: Vec<_> = list.items.iter().map(|item| T::read(&item.expr, reader)).collect();
        let mut words = words.into_iter().collect::<Option<Vec<_>>>()?.into_iter();
        Some(Self { first: words.next()?, others: words.collect() })
    }

    fn from_default(text: &'static str) -> Option<Self> {
        T::from_default(text).map(Self::from)
    }
}

fn expected<T: Word>() -> String {
    let words: Vec<_> = T::WORDS.iter().map(|(word, _)| *word).collect();
    t!("expected-word-or-choice", words = words.join(", "))
}
