//! JSON in which every value knows its place.
//!
//! `serde_json` judges the syntax; what it has let pass is then read again with the byte at which
//! each value starts, so that a problem can name its line.

use std::borrow::Cow;

use super::problem::{CaseFault, CaseProblem};

/// Largest text, in bytes.
pub(super) const MAX_BYTES: usize = 4 << 20;
/// Brackets inside each other.
const MAX_DEPTH: usize = 24;

/// A value and the byte where it starts.
#[derive(Debug)]
pub(super) struct Value<'t> {
    pub at: usize,
    pub data: Data<'t>,
}

#[derive(Debug)]
pub(super) enum Data<'t> {
    Null,
    Bool,
    /// May be infinite: `1e999` is good JSON.
    Number(f64),
    Text(Cow<'t, str>),
    List(Vec<Value<'t>>),
    /// Name, where the name starts, value.
    Map(Vec<(Cow<'t, str>, usize, Value<'t>)>),
}

/// Reads a text.
pub(super) fn parse(text: &str) -> Result<Value<'_>, CaseProblem> {
    if text.len() > MAX_BYTES {
        let message =
            format!("the file has {} bytes; {MAX_BYTES} are the most that are read", text.len());
        return Err(CaseProblem::at(CaseFault::TooLarge, text, 0, "", message));
    }
    check_depth(text)?;
    if let Err(error) = serde_json::from_str::<serde::de::IgnoredAny>(text) {
        let (line, column) = (error.line().max(1), error.column().max(1));
        let words = error.to_string();
        let words = words.split(" at line ").next().unwrap_or_default();
        let message = format!("this is not JSON: {words}");
        let path = String::new();
        return Err(CaseProblem { fault: CaseFault::Syntax, path, line, column, message });
    }
    Cursor { text, at: 0 }.value()
}

fn check_depth(text: &str) -> Result<(), CaseProblem> {
    let (mut depth, mut quoted, mut escaped) = (0_usize, false, false);
    for (at, byte) in text.bytes().enumerate() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if quoted => escaped = true,
            b'"' => quoted = !quoted,
            b'[' | b'{' if !quoted => depth += 1,
            b']' | b'}' if !quoted => depth = depth.saturating_sub(1),
            _ => {}
        }
        if depth > MAX_DEPTH {
            let message = format!("brackets stand more than {MAX_DEPTH} deep inside each other");
            return Err(CaseProblem::at(CaseFault::Syntax, text, at, "", message));
        }
    }
    Ok(())
}

/// Goes over a text that is known to be JSON.
struct Cursor<'t> {
    text: &'t str,
    at: usize,
}

impl<'t> Cursor<'t> {
    fn value(&mut self) -> Result<Value<'t>, CaseProblem> {
        self.skip_space();
        let at = self.at;
        let data = match self.peek() {
            b'{' => self.map()?,
            b'[' => self.list()?,
            b'"' => Data::Text(self.string()?),
            b't' | b'f' => {
                self.word();
                Data::Bool
            }
            b'n' => {
                self.word();
                Data::Null
            }
            _ => {
                let number = self.word();
                Data::Number(number.parse().map_err(|_| self.broken(at))?)
            }
        };
        Ok(Value { at, data })
    }

    fn map(&mut self) -> Result<Data<'t>, CaseProblem> {
        let mut entries = Vec::new();
        self.at += 1;
        loop {
            self.skip_space();
            match self.peek() {
                b'}' => break,
                b',' => self.at += 1,
                b'"' => {
                    let at = self.at;
                    let name = self.string()?;
                    self.skip_space();
                    self.at += 1;
                    entries.push((name, at, self.value()?));
                }
                _ => return Err(self.broken(self.at)),
            }
        }
        self.at += 1;
        Ok(Data::Map(entries))
    }

    fn list(&mut self) -> Result<Data<'t>, CaseProblem> {
        let mut items = Vec::new();
        self.at += 1;
        loop {
            self.skip_space();
            match self.peek() {
                b']' => break,
                b',' => self.at += 1,
                0 => return Err(self.broken(self.at)),
                _ => items.push(self.value()?),
            }
        }
        self.at += 1;
        Ok(Data::List(items))
    }

    fn string(&mut self) -> Result<Cow<'t, str>, CaseProblem> {
        let start = self.at;
        self.at += 1;
        let mut plain = true;
        loop {
            match self.peek() {
                b'"' => break,
                b'\\' => {
                    plain = false;
                    self.at += 2;
                }
                0 => return Err(self.broken(start)),
                _ => self.at += 1,
            }
        }
        self.at += 1;
        let quoted = self.text.get(start..self.at).unwrap_or_default();
        if plain {
            return Ok(Cow::Borrowed(quoted.trim_matches('"')));
        }
        serde_json::from_str(quoted).map(Cow::Owned).map_err(|_| self.broken(start))
    }

    /// A number, `true`, `false` or `null`.
    fn word(&mut self) -> &'t str {
        let rest = self.text.get(self.at..).unwrap_or_default();
        let end = rest
            .find(|c: char| !(c.is_ascii_alphanumeric() || matches!(c, '.' | '+' | '-')))
            .unwrap_or(rest.len());
        self.at += end;
        rest.get(..end).unwrap_or_default()
    }

    fn skip_space(&mut self) {
        while matches!(self.peek(), b' ' | b'\n' | b'\r' | b'\t') {
            self.at += 1;
        }
    }

    fn peek(&self) -> u8 {
        self.text.as_bytes().get(self.at).copied().unwrap_or(0)
    }

    fn broken(&self, at: usize) -> CaseProblem {
        CaseProblem::at(CaseFault::Syntax, self.text, at, "", "this is not a JSON value")
    }
}
