//! The sources as a tree of modules, and the one question asked of it: which file does a path lead
//! to? Built from a map of file names and texts, so that tests can plant small trees.

use std::collections::BTreeMap;

use super::facts::{Facts, Import, Mention, read};

/// A source file with its facts.
#[derive(Debug)]
pub struct Source {
    /// Path from the project's root, such as `src/bench/gas.rs`.
    pub name: String,
    pub text: String,
    pub facts: Facts,
}

impl Source {
    /// The module at top level that the file belongs to; `None` for `lib.rs`, `main.rs` and tests.
    pub fn top(&self) -> Option<&str> {
        let rest = self.name.strip_prefix("src/")?;
        let first = rest.split(['/', '.']).next()?;
        (first != "lib" && first != "main").then_some(first)
    }
}

/// All source files, and the modules that they make.
#[derive(Debug, Default)]
pub struct Tree {
    pub sources: Vec<Source>,
    modules: BTreeMap<Vec<String>, Module>,
    /// The files of messages, one behind the other.
    pub messages: String,
    /// Files that cannot be read as Rust.
    pub broken: Vec<(String, String)>,
}

#[derive(Debug, Default)]
struct Module {
    file: String,
    items: Vec<String>,
    imports: Vec<Import>,
}

/// The end of a path: a module, its file, and the rest of the path within it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Target {
    pub module: Vec<String>,
    pub file: String,
    pub rest: Vec<String>,
}

/// The module of a file in `src`: `src/bench/gas.rs` is `bench::gas`, `src/bench/mod.rs` is `bench`.
fn module_of(name: &str) -> Vec<String> {
    let name = name.strip_prefix("src/").unwrap_or(name).trim_end_matches(".rs");
    let mut parts: Vec<String> = name.split('/').map(str::to_owned).collect();
    if parts.last().is_some_and(|last| last == "mod" || last == "lib") {
        parts.pop();
    }
    parts
}

/// Imports that lead to imports that lead in a ring end here.
const DEEPEST: usize = 12;

impl Tree {
    pub fn new(files: &BTreeMap<String, String>) -> Self {
        let mut tree = Self::default();
        for (name, text) in files {
            if name.ends_with(".ftl") {
                tree.messages.push_str(text);
                continue;
            }
            let scope = module_of(name);
            let facts = match read(&scope, text) {
                Ok(facts) => facts,
                Err(error) => {
                    tree.broken.push((name.clone(), error.to_string()));
                    continue;
                }
            };
            if name.starts_with("src/") {
                tree.modules.entry(scope).or_default().file.clone_from(name);
                tree.enter(name, &facts);
            }
            tree.sources.push(Source { name: name.clone(), text: text.clone(), facts });
        }
        tree
    }

    fn enter(&mut self, file: &str, facts: &Facts) {
        for (scope, name) in &facts.modules {
            let mut child = scope.clone();
            child.push(name.clone());
            // A module written within this file; one with a file of its own overwrites it.
            let child = self.modules.entry(child).or_default();
            if child.file.is_empty() {
                child.file = file.to_owned();
            }
        }
        for (scope, name) in &facts.items {
            self.modules.entry(scope.clone()).or_default().items.push(name.clone());
        }
        for import in &facts.imports {
            self.modules.entry(import.at.scope.clone()).or_default().imports.push(import.clone());
        }
    }

    /// The sources of the program, without the tests.
    pub fn program(&self) -> impl Iterator<Item = &Source> {
        self.sources.iter().filter(|source| source.name.starts_with("src/"))
    }

    /// Modules that stand beside each other at the top.
    pub fn top_modules(&self) -> Vec<String> {
        let mut tops: Vec<String> = self
            .modules
            .keys()
            .filter_map(|path| path.first().cloned())
            .filter(|name| name != "main")
            .collect();
        tops.dedup();
        tops
    }

    /// The module and file that a path leads to; `None` when it leaves the crate or names a local
    /// thing.
    pub fn resolve(&self, mention: &Mention) -> Option<Target> {
        self.resolve_in(&mention.scope, &mention.path, DEEPEST)
    }

    fn resolve_in(&self, scope: &[String], path: &[String], depth: usize) -> Option<Target> {
        let (first, rest) = path.split_first()?;
        match first.as_str() {
            "crate" | "quarterturn" => self.walk(&[], rest, depth),
            "self" => self.walk(scope, rest, depth),
            "super" => self.walk(scope.split_last()?.1, rest, depth),
            _ => self.step(scope, path, depth),
        }
    }

    fn walk(&self, module: &[String], path: &[String], depth: usize) -> Option<Target> {
        match path.first().map(String::as_str) {
            None => self.target(module, path),
            Some("super") => self.walk(module.split_last()?.1, &path[1..], depth),
            Some("self") => self.walk(module, &path[1..], depth),
            Some(_) => self.step(module, path, depth).or_else(|| self.target(module, path)),
        }
    }

    fn target(&self, module: &[String], rest: &[String]) -> Option<Target> {
        let file = self.modules.get(module)?.file.clone();
        Some(Target { module: module.to_vec(), file, rest: rest.to_vec() })
    }

    /// Looks the first name of `path` up in `scope`: a module where the path goes on, else an item,
    /// else what an import brings in.
    fn step(&self, scope: &[String], path: &[String], depth: usize) -> Option<Target> {
        let depth = depth.checked_sub(1)?;
        let module = self.modules.get(scope)?;
        let (first, rest) = path.split_first()?;
        let mut child = scope.to_vec();
        child.push(first.clone());
        let is_item = module.items.contains(first);
        if self.modules.contains_key(&child) && (!rest.is_empty() || !is_item) {
            return self.walk(&child, rest, depth);
        }
        if is_item {
            return self.target(scope, path);
        }
        for import in &module.imports {
            let mut full = import.at.path.clone();
            match &import.name {
                Some(name) if name == first => full.extend_from_slice(rest),
                Some(_) => continue,
                None => {
                    let inside = self.resolve_in(scope, &full, depth);
                    let Some(inside) = inside.filter(|inside| inside.rest.is_empty()) else {
                        continue;
                    };
                    if let Some(found) = self.step(&inside.module, path, depth) {
                        return Some(found);
                    }
                    continue;
                }
            }
            // `use a::b;` in the module `a` itself would lead back to this very import.
            if full == path {
                continue;
            }
            return self.resolve_in(scope, &full, depth);
        }
        None
    }
}
