//! Calls of `t!` and `id!` in a source, comments and texts left aside.

use std::collections::BTreeSet;

/// One call.
pub struct Call {
    /// The line on which it begins.
    pub line: usize,
    /// The id, where it is a plain literal.
    pub id: Option<String>,
    /// The names of the arguments that are given.
    pub arguments: BTreeSet<String>,
}

/// A piece of Rust, as coarse as calls need it.
#[derive(Clone, Debug, PartialEq)]
enum Token {
    Word(String),
    Text(String),
    Mark(char),
}

/// The calls of a source in their order.
pub fn find(source: &str) -> Vec<Call> {
    let tokens = tokens(source);
    let mut calls = Vec::new();
    for (at, three) in tokens.windows(3).enumerate() {
        let [(line, Token::Word(word)), (_, Token::Mark('!')), (_, Token::Mark('('))] = three
        else {
            continue;
        };
        if word == "t" || word == "id" {
            calls.push(call(*line, tokens.get(at + 3..).unwrap_or_default()));
        }
    }
    calls
}

fn call(line: usize, tokens: &[(usize, Token)]) -> Call {
    let id = match tokens {
        [(_, Token::Text(id)), (_, Token::Mark(',' | ')')), ..] => Some(id.clone()),
        _ => None,
    };
    let mut arguments = BTreeSet::new();
    let mut depth = 0_usize;
    for (at, (_, token)) in tokens.iter().enumerate() {
        match token {
            Token::Mark('(' | '[' | '{') => depth += 1,
            Token::Mark(')' | ']' | '}') if depth == 0 => break,
            Token::Mark(')' | ']' | '}') => depth -= 1,
            Token::Mark(',') if depth == 0 => {
                if let Some([(_, Token::Word(name)), (_, Token::Mark('='))]) =
                    tokens.get(at + 1..at + 3)
                {
                    arguments.insert(name.clone());
                }
            }
            Token::Mark(_) | Token::Word(_) | Token::Text(_) => {}
        }
    }
    Call { line, id, arguments }
}

fn tokens(source: &str) -> Vec<(usize, Token)> {
    let mut tokens = Vec::new();
    let mut rest = source;
    let mut line = 1;
    while let Some(first) = rest.chars().next() {
        let (length, token) = next(rest, first);
        if let Some(token) = token {
            tokens.push((line, token));
        }
        let (taken, left) = rest.split_at(length);
        line += taken.matches('\n').count();
        rest = left;
    }
    tokens
}

fn next(rest: &str, first: char) -> (usize, Option<Token>) {
    let is_word = |c: char| c.is_alphanumeric() || c == '_';
    if rest.starts_with("//") {
        return (rest.find('\n').unwrap_or(rest.len()), None);
    }
    if rest.starts_with("/*") {
        return (rest.find("*/").map_or(rest.len(), |end| end + 2), None);
    }
    if let Some(length) = raw(rest) {
        return (length, Some(Token::Text(rest.get(..length).unwrap_or_default().to_owned())));
    }
    if first == '"' {
        let length = quoted(rest);
        return (length, Some(Token::Text(rest.get(1..length - 1).unwrap_or_default().to_owned())));
    }
    if first == '\'' {
        return (character(rest), None);
    }
    if is_word(first) {
        let length = rest.find(|c| !is_word(c)).unwrap_or(rest.len());
        return (length, Some(Token::Word(rest.get(..length).unwrap_or_default().to_owned())));
    }
    (first.len_utf8(), (!first.is_whitespace()).then_some(Token::Mark(first)))
}

/// The length of a raw text at the beginning, such as `r#"…"#`.
fn raw(rest: &str) -> Option<usize> {
    let after = rest.strip_prefix("br").or_else(|| rest.strip_prefix('r'))?;
    let fences = after.len() - after.trim_start_matches('#').len();
    let body = after.get(fences..)?.strip_prefix('"')?;
    let end = format!("\"{}", "#".repeat(fences));
    Some(rest.len() - body.len() + body.find(&end)? + end.len())
}

/// The length of a quoted text with its quotes.
fn quoted(rest: &str) -> usize {
    let mut escaped = false;
    for (at, c) in rest.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return at + 1,
            _ => {}
        }
    }
    rest.len()
}

/// The length of a character in quotes, or of the quote that opens a lifetime.
fn character(rest: &str) -> usize {
    let mut chars = rest.char_indices().skip(1);
    match (chars.next(), chars.next(), chars.next()) {
        (Some((_, '\\')), Some(_), _) => {
            rest.char_indices().skip(3).find(|(_, c)| *c == '\'').map_or(1, |(at, _)| at + 1)
        }
        (Some(_), Some((at, '\'')), _) => at + 1,
        _ => 1,
    }
}
