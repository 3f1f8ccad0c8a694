//! Files of words, read with the parser of the format.

use std::collections::{BTreeMap, BTreeSet, btree_map as map};

use fluent_syntax::ast::{
    CallArguments, Entry, Expression, InlineExpression, Pattern, PatternElement,
};
use fluent_syntax::parser;

/// A message or, with a hyphen before its id, a term.
pub struct Message {
    /// File and line.
    pub place: String,
    /// Arguments that its text names, in any variant, also through other messages.
    pub arguments: BTreeSet<String>,
    /// Messages and terms that its text names.
    pub names: BTreeSet<String>,
}

fn line_of(text: &str, at: usize) -> usize {
    text.bytes().take(at).filter(|&byte| byte == b'\n').count() + 1
}

/// The line on which an entry begins: `id =` at the line's start, from `after` on.
fn line_of_id(text: &str, id: &str, after: usize) -> usize {
    text.lines()
        .enumerate()
        .skip(after)
        .find(|(_, line)| {
            line.strip_prefix(id).is_some_and(|rest| rest.trim_start().starts_with('='))
        })
        .map_or(0, |(at, _)| at + 1)
}

/// All messages and terms of the files; what is wrong in the files themselves goes to `wrong`.
pub fn read(files: &[super::Source], wrong: &mut Vec<String>) -> BTreeMap<String, Message> {
    let mut messages: BTreeMap<String, Message> = BTreeMap::new();
    for (file, text) in files {
        let (resource, errors) = match parser::parse(text.as_str()) {
            Ok(resource) => (resource, Vec::new()),
            Err((resource, errors)) => (resource, errors),
        };
        for error in errors {
            wrong.push(format!("{file}:{}: {}", line_of(text, error.pos.start), error.kind));
        }
        let mut line = 0;
        for entry in &resource.body {
            let (id, pattern) = match entry {
                Entry::Message(message) => (message.id.name.to_owned(), message.value.as_ref()),
                Entry::Term(term) => (format!("-{}", term.id.name), Some(&term.value)),
                Entry::Comment(_)
                | Entry::GroupComment(_)
                | Entry::ResourceComment(_)
                | Entry::Junk { .. } => continue,
            };
            line = line_of_id(text, &id, line);
            let mut message = Message {
                place: format!("{file}:{line}"),
                arguments: BTreeSet::new(),
                names: BTreeSet::new(),
            };
            match pattern {
                Some(pattern) => look_through(pattern, &mut message),
                None => wrong.push(format!("{file}:{line}: `{id}` has no text")),
            }
            match messages.entry(id) {
                map::Entry::Occupied(known) => {
                    wrong.push(format!("{file}:{line}: `{}` stands a second time", known.key()));
                }
                map::Entry::Vacant(free) => {
                    free.insert(message);
                }
            }
        }
    }
    link(&mut messages, wrong);
    messages
}

/// Adds what the named messages ask for, and reports names without a message.
fn link(messages: &mut BTreeMap<String, Message>, wrong: &mut Vec<String>) {
    for message in messages.values() {
        for name in message.names.iter().filter(|&name| !messages.contains_key(name)) {
            let kind = if name.starts_with('-') { "term" } else { "message" };
            wrong.push(format!("{}: no {kind} `{name}`", message.place));
        }
    }
    let ids: Vec<String> = messages.keys().cloned().collect();
    for id in ids {
        let all = named_in_messages(messages, &BTreeSet::from([id.clone()]));
        let more: BTreeSet<String> = all
            .iter()
            .filter(|name| !name.starts_with('-'))
            .filter_map(|name| messages.get(name))
            .flat_map(|message| message.arguments.clone())
            .collect();
        if let Some(message) = messages.get_mut(&id) {
            message.arguments.extend(more);
        }
    }
}

/// Everything that the texts of these messages name, and what those name in their turn.
pub fn named_in_messages(
    messages: &BTreeMap<String, Message>,
    from: &BTreeSet<String>,
) -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    let mut open: Vec<&String> = from.iter().collect();
    while let Some(id) = open.pop() {
        for name in messages.get(id).into_iter().flat_map(|message| &message.names) {
            if found.insert(name.clone()) {
                open.push(name);
            }
        }
    }
    found
}

fn look_through(pattern: &Pattern<&str>, message: &mut Message) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { .. } => {}
            PatternElement::Placeable { expression } => expression_names(expression, message),
        }
    }
}

fn expression_names(expression: &Expression<&str>, message: &mut Message) {
    match expression {
        Expression::Inline(inline) => inline_names(inline, message),
        Expression::Select { selector, variants } => {
            inline_names(selector, message);
            for variant in variants {
                look_through(&variant.value, message);
            }
        }
    }
}

fn inline_names(inline: &InlineExpression<&str>, message: &mut Message) {
    let given = |arguments: &CallArguments<&str>, message: &mut Message| {
        for one in &arguments.positional {
            inline_names(one, message);
        }
        for one in &arguments.named {
            inline_names(&one.value, message);
        }
    };
    match inline {
        InlineExpression::VariableReference { id } => {
            message.arguments.insert(id.name.to_owned());
        }
        InlineExpression::MessageReference { id, .. } => {
            message.names.insert(id.name.to_owned());
        }
        InlineExpression::TermReference { id, arguments, .. } => {
            message.names.insert(format!("-{}", id.name));
            if let Some(arguments) = arguments {
                given(arguments, message);
            }
        }
        InlineExpression::FunctionReference { arguments, .. } => given(arguments, message),
        InlineExpression::Placeable { expression } => expression_names(expression, message),
        InlineExpression::StringLiteral { .. } | InlineExpression::NumberLiteral { .. } => {}
    }
}
