//! A line of a script in pieces, with their places.

use core::str::FromStr;

use super::words::{Word, nearest};
use crate::scenario::Code;
use crate::units::{QuantityError, TimeSpan};
use crate::words::Id;

/// Longest waiting, in seconds.
const MAX_WAIT_S: f64 = 12.0 * 3600.0;

/// Most pieces on a line.
const MAX_TOKENS: usize = 64;

/// Something wrong on a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Slip {
    pub code: Code,
    /// In characters, from 1.
    pub column: usize,
    pub message: String,
    pub found: String,
    pub expected: String,
    pub nearest: Option<String>,
}

impl Slip {
    pub(super) fn new(code: Code, column: usize, message: &str) -> Self {
        Self {
            code,
            column,
            message: message.to_owned(),
            found: String::new(),
            expected: String::new(),
            nearest: None,
        }
    }
}

/// A piece with its column.
#[derive(Debug, Clone, Copy)]
struct Token<'a> {
    text: &'a str,
    column: usize,
}

/// The pieces of a line, taken one after the other.
#[derive(Debug)]
pub(super) struct Tokens<'a> {
    all: Vec<Token<'a>>,
    next: usize,
    /// Column after the last piece.
    after: usize,
}

impl<'a> Tokens<'a> {
    pub(super) fn of(line: &'a str) -> Result<Self, Slip> {
        let mut all = Vec::new();
        let mut after = 1;
        let mut rest = line;
        let mut column = 1;
        while let Some(start) = rest.find(|c: char| !c.is_whitespace()) {
            let (blank, word) = rest.split_at(start);
            column += blank.chars().count();
            let (text, tail) = word.split_at(word.find(char::is_whitespace).unwrap_or(word.len()));
            all.push(Token { text, column });
            column += text.chars().count();
            after = column;
            rest = tail;
            if all.len() > MAX_TOKENS {
                let message = t!("script-too-many-words", most = MAX_TOKENS);
                return Err(Slip::new(Code::BadLength, column, &message));
            }
        }
        Ok(Self { all, next: 0, after })
    }

    /// The piece that comes next.
    pub(super) fn peek(&self) -> Option<&'a str> {
        self.all.get(self.next).map(|token| token.text)
    }

    pub(super) fn skip(&mut self) {
        self.next += 1;
    }

    fn column(&self) -> usize {
        self.all.get(self.next).map_or(self.after + 1, |token| token.column)
    }

    /// A slip at the next piece.
    pub(super) fn slip(&self, code: Code, message: &str, expected: &str) -> Slip {
        let found = self.peek().unwrap_or("").chars().take(60).collect();
        Slip { found, expected: expected.to_owned(), ..Slip::new(code, self.column(), message) }
    }

    /// The next piece, whatever it is.
    pub(super) fn any(&mut self, what: Id, expected: &str) -> Result<&'a str, Slip> {
        let Some(text) = self.peek() else {
            let message = t!("script-missing", what = what.text());
            return Err(self.slip(Code::MissingField, &message, expected));
        };
        self.skip();
        Ok(text)
    }

    /// One word of a closed list.
    pub(super) fn word<W: Word>(&mut self) -> Result<W, Slip> {
        self.one_of(W::WHAT, W::ALL, |one| one.word())
    }

    /// One of some values, by its word.
    pub(super) fn one_of<T: Copy>(
        &mut self,
        what: Id,
        all: &[T],
        word: impl Fn(T) -> &'static str,
    ) -> Result<T, Slip> {
        let words = || all.iter().map(|&one| word(one));
        let expected = words().collect::<Vec<_>>().join(", ");
        let text = self.any(what, &expected)?;
        if let Some(&one) = all.iter().find(|&&one| word(one) == text) {
            return Ok(one);
        }
        self.next -= 1;
        let message = t!("script-unknown", text = short(text), what = what.text());
        let mut slip = self.slip(Code::UnknownName, &message, &expected);
        slip.nearest = nearest(text, words());
        Err(slip)
    }

    /// This very word, and no other.
    pub(super) fn exactly(&mut self, word: &'static str) -> Result<(), Slip> {
        if self.peek() == Some(word) {
            self.skip();
            return Ok(());
        }
        let message = t!("script-exactly", word = word);
        Err(self.slip(Code::Syntax, &message, word))
    }

    /// A number with its unit, in one piece or in two.
    pub(super) fn quantity<Q>(&mut self, what: Id, expected: &str) -> Result<Q, Slip>
    where
        Q: FromStr<Err = QuantityError>,
    {
        let start = self.next;
        let mut text = self.any(what, expected)?.to_owned();
        if text.parse::<f64>().is_ok()
            && let Some(unit) = self.peek()
        {
            text = format!("{text} {unit}");
            self.skip();
        }
        text.parse().map_err(|error: QuantityError| {
            self.next = start;
            let message: String = error.message.chars().take(300).collect();
            let mut slip = self.slip(Code::BadQuantity, &format!("{message}."), expected);
            slip.found = short(&text);
            slip
        })
    }

    /// A time of waiting, in seconds.
    pub(super) fn time(&mut self) -> Result<f64, Slip> {
        let place = self.slip(Code::OutOfRange, t!("script-too-long"), t!("script-time-range"));
        let seconds = self.quantity::<TimeSpan>(id!("script-kind-time"), t!("script-time"))?.si();
        if (0.0..=MAX_WAIT_S).contains(&seconds) { Ok(seconds) } else { Err(place) }
    }

    /// Eighths of a turn, written as `6/8` or `-2/8`.
    pub(super) fn eighths(&mut self) -> Result<i16, Slip> {
        let expected = t!("script-eighths");
        let text = self.any(id!("script-kind-turn"), expected)?;
        text.strip_suffix("/8").and_then(|number| number.parse().ok()).ok_or_else(|| {
            self.next -= 1;
            let message = t!("script-no-turn", text = short(text));
            self.slip(Code::BadQuantity, &message, expected)
        })
    }

    /// Nothing more on this line.
    pub(super) fn end(&self) -> Result<(), Slip> {
        match self.peek() {
            None => Ok(()),
            Some(text) => {
                let message = t!("script-too-much", text = short(text));
                Err(self.slip(Code::Syntax, &message, t!("script-line-end")))
            }
        }
    }
}

/// A word, shortened for a message.
pub(super) fn short(text: &str) -> String {
    let mut short: String = text.chars().take(60).collect();
    if short.len() < text.len() {
        short.push('…');
    }
    short
}
