//! Arrows between files: those against the layers, and circles.

use std::collections::{BTreeMap, BTreeSet, VecDeque};

use super::facts::Mention;
use super::offence::{Offence, Rule};
use super::tree::Tree;

/// The order of the modules at top level.
pub struct Layers<'a> {
    /// From the bottom up. A module may use what stands in the rows before its own, and nothing of
    /// its own row but itself.
    pub rows: &'a [&'a [&'a str]],
    /// Arrows that are allowed all the same: from, to, and the reason.
    pub allowed: &'a [(&'a str, &'a str, &'a str)],
}

impl Layers<'_> {
    fn row(&self, module: &str) -> Option<usize> {
        self.rows.iter().position(|row| row.contains(&module))
    }
}

/// Arrows up or sideways, modules in no row, and rows and reasons that nothing needs any more.
pub fn against_layers(tree: &Tree, layers: &Layers<'_>) -> Vec<Offence> {
    let offence =
        |file: &str, line, what: &str, said| Offence::new(Rule::Layers, file, line, what, said);
    let mut found = Vec::new();
    let tops = tree.top_modules();
    for name in layers.rows.iter().copied().flatten() {
        if !tops.iter().any(|top| top == name) {
            let said = format!("the layers name `{name}`, which is no module");
            found.push(offence("tests/core/tidy/mod.rs", 1, name, said));
        }
    }
    let mut used = BTreeSet::new();
    for source in tree.program() {
        let Some(own) = source.top() else { continue };
        let Some(row) = layers.row(own) else {
            found.push(offence(&source.name, 1, own, format!("`{own}` is in no layer")));
            continue;
        };
        let mut seen = BTreeSet::new();
        let imports = source.facts.imports.iter().map(|import| &import.at);
        for mention in imports.chain(&source.facts.paths) {
            let Some(target) = tree.resolve(mention) else { continue };
            // A path that only passes through a re-export still names the module that it passes.
            let passed = named_top(mention).into_iter().chain(target.module.first().cloned());
            for to in passed.filter(|to| to != own) {
                if layers.row(&to).is_none_or(|to| to < row) {
                    continue;
                }
                if layers.allowed.iter().any(|(from, into, _)| *from == own && *into == to) {
                    used.insert((own.to_owned(), to));
                } else if seen.insert((to.clone(), mention.line)) {
                    let said = format!("`{own}` uses `{to}`: {}", mention.path.join("::"));
                    found.push(offence(&source.name, mention.line, &to, said));
                }
            }
        }
    }
    for (from, to, _) in layers.allowed {
        if !used.contains(&((*from).to_owned(), (*to).to_owned())) {
            let said = format!("outdated exception: `{from}` does not use `{to}` any more");
            found.push(offence("tests/core/tidy/mod.rs", 1, &format!("{from} -> {to}"), said));
        }
    }
    found
}

/// The module at top level that a path from the crate's root names.
fn named_top(mention: &Mention) -> Option<String> {
    let mut path = mention.path.iter();
    (path.next()? == "crate").then(|| path.next().cloned())?
}

/// Arrows between files of one module at top level, each with the first line that draws it.
pub type Arrows<'a> = BTreeMap<&'a str, BTreeMap<&'a str, usize>>;

/// Declaring a child (`mod x;`) and passing its items on (`pub use x::Y;`) draw no arrow; every
/// other `use` and every path does.
pub fn arrows(tree: &Tree) -> Arrows<'_> {
    let names: BTreeMap<&str, &str> = tree
        .program()
        .map(|source| (source.name.as_str(), source.top().unwrap_or_default()))
        .collect();
    let mut arrows = Arrows::new();
    for source in tree.program() {
        let imports =
            source.facts.imports.iter().filter(|import| !import.reexport).map(|import| &import.at);
        for mention in imports.chain(&source.facts.paths) {
            let Some(target) = tree.resolve(mention) else { continue };
            let Some((file, top)) = names.get_key_value(target.file.as_str()) else { continue };
            if *file != source.name && source.top() == Some(*top) {
                let line =
                    arrows.entry(&source.name).or_default().entry(file).or_insert(mention.line);
                *line = mention.line.min(*line);
            }
        }
    }
    arrows
}

/// Files that one reaches from `from`, each with the file before it on a shortest way.
fn reached<'a>(arrows: &Arrows<'a>, from: &'a str) -> BTreeMap<&'a str, &'a str> {
    let mut before = BTreeMap::new();
    let mut waiting = VecDeque::from([from]);
    while let Some(file) = waiting.pop_front() {
        for to in arrows.get(file).into_iter().flat_map(BTreeMap::keys) {
            if !before.contains_key(to) {
                before.insert(*to, file);
                waiting.push_back(to);
            }
        }
    }
    before
}

/// Arrows from a file to a file above it in the tree of modules left out: what a parent holds in
/// common for its children makes a circle with the parent, but is easily untied.
pub fn without_parents(mut arrows: Arrows<'_>) -> Arrows<'_> {
    for (from, tos) in &mut arrows {
        tos.retain(|to, _| {
            let folder = to
                .strip_suffix("mod.rs")
                .map_or_else(|| format!("{}/", to.trim_end_matches(".rs")), str::to_owned);
            !from.starts_with(&folder)
        });
    }
    arrows
}

pub fn circles(tree: &Tree) -> Vec<Offence> {
    circles_of(&arrows(tree))
}

/// Sets of files each of which reaches all the others.
pub fn circles_of(arrows: &Arrows<'_>) -> Vec<Offence> {
    let ways: BTreeMap<&str, BTreeMap<&str, &str>> =
        arrows.keys().map(|file| (*file, reached(arrows, file))).collect();
    let mut done = BTreeSet::new();
    let mut found = Vec::new();
    for (file, way) in &ways {
        if !way.contains_key(file) || done.contains(file) {
            continue;
        }
        let members: Vec<&str> = way
            .keys()
            .filter(|to| ways.get(*to).is_some_and(|back| back.contains_key(file)))
            .copied()
            .collect();
        done.extend(members.iter().copied());
        let ring = shortest_ring(way, file);
        let said: Vec<String> = ring
            .windows(2)
            .map(|pair| format!("{}:{} uses {}", pair[0], arrows[pair[0]][pair[1]], pair[1]))
            .collect();
        let said = format!("a circle of {} files, for one: {}", members.len(), said.join(", "));
        let line = arrows[ring[0]][ring[1]];
        let mut offence = Offence::new(Rule::Circle, file, line, "", said);
        offence.circle = members.into_iter().map(str::to_owned).collect();
        found.push(offence);
    }
    found
}

/// From a file back to itself.
fn shortest_ring<'a>(way: &BTreeMap<&'a str, &'a str>, file: &'a str) -> Vec<&'a str> {
    let mut ring = vec![file];
    let mut at = way[file];
    while at != file {
        ring.push(at);
        at = way[at];
    }
    ring.push(file);
    ring.reverse();
    ring
}
