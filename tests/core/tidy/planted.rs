//! The rules tested on small planted trees: each offence is found at its file and line, and a clean
//! tree is clean.

use std::collections::BTreeMap;

use super::arrows::Layers;
use super::known::Known;
use super::offence::{Offence, Rule};
use super::tree::Tree;
use super::{offences, rules};

const SMALL: Layers<'static> =
    Layers { rows: &[&["ground"], &["house"], &["window", "desk"]], allowed: &[] };

/// A clean tree of three layers.
const CLEAN: &[(&str, &str)] = &[
    ("src/lib.rs", "pub mod desk;\npub mod ground;\npub mod house;\npub mod window;\n"),
    ("src/ground.rs", "pub struct Stone;\n"),
    (
        "src/house/mod.rs",
        "//! A house.\nmod door;\nmod wall;\npub use door::Door;\npub use wall::Wall;\n",
    ),
    (
        "src/house/door.rs",
        "use super::wall::Wall;\nuse crate::ground::Stone;\n\
         pub enum Door { Open, Shut }\n\
         pub fn shut(door: Door, _: Wall) -> Stone {\n\
         match door { Door::Open => Stone, Door::Shut => panic!(\"{:?}\", 1) }\n}\n",
    ),
    ("src/house/wall.rs", "pub struct Wall;\n"),
    ("src/window.rs", "use crate::house::{Door, Wall};\npub fn look(_: Door, _: Wall) {}\n"),
    ("src/desk.rs", "/// What lies on the desk.\npub fn write(_: crate::house::Door) {}\n"),
    ("tests/all.rs", "fn all() { write(); look(); shut(); }\n"),
];

fn tree(more: &[(&str, &str)]) -> Tree {
    let files: BTreeMap<String, String> = CLEAN
        .iter()
        .chain(more)
        .map(|(name, text)| ((*name).to_owned(), (*text).to_owned()))
        .collect();
    let tree = Tree::new(&files);
    assert!(tree.broken.is_empty(), "{:?}", tree.broken);
    tree
}

fn found(more: &[(&str, &str)]) -> Vec<Offence> {
    offences(&tree(more), &SMALL)
}

/// The offences in a tree with `more`, as rule, file and line.
fn places(more: &[(&str, &str)]) -> Vec<(Rule, String, usize)> {
    found(more).into_iter().map(|it| (it.rule, it.file, it.line)).collect()
}

/// Asks that `text`, as `src/ground.rs`, uses the house at `lines` and offends in nothing else.
#[track_caller]
fn reaches_up(text: &str, lines: &[usize]) {
    let text = format!("{text}\npub struct Stone;\n");
    let expected: Vec<_> =
        lines.iter().map(|line| (Rule::Layers, "src/ground.rs".to_owned(), *line)).collect();
    assert_eq!(places(&[("src/ground.rs", &text)]), expected, "{text}");
}

/// Nothing is found where nothing is wrong: a re-export by the parent is no circle, and a panic may
/// print `Debug` text.
#[test]
fn a_clean_tree_is_clean() {
    assert_eq!(found(&[]), []);
}

/// Every way of writing an import is seen.
#[test]
fn an_arrow_up_is_found_however_it_is_written() {
    reaches_up("use crate::house::Door;", &[1]);
    reaches_up("use super::house::Door;", &[1]);
    reaches_up("use crate::{\n    house::Door,\n    house::Wall,\n};", &[2, 3]);
    reaches_up("use crate::house as h;\nfn f(_: h::Door) {}", &[1, 2]);
    reaches_up("fn f() {\n    crate::house::door::shut();\n}", &[2]);
    reaches_up("fn f(_: &crate::house::Wall) {}", &[1]);
    reaches_up("pub use crate::house::Wall;", &[1]);
    reaches_up("fn f() {\n    use super::house::*;\n}", &[2]);
    reaches_up("fn f() -> Vec<u8> {\n    vec![crate::house::COUNT; 2]\n}", &[2]);
    reaches_up("macro_rules! m {\n    () => { $crate::house::Door::Open };\n}", &[2]);
    reaches_up("mod inner {\n    use super::super::house::Door;\n}", &[2]);
}

/// A file deep in its module climbs out by `super::super`.
#[test]
fn super_super_is_seen() {
    let more = [
        ("src/ground/mod.rs", "mod rock;\npub struct Stone;\n"),
        ("src/ground/rock.rs", "// A comment: crate::house.\n\nuse super::super::house::Door;\n"),
        ("src/ground.rs", ""),
    ];
    assert_eq!(places(&more), [(Rule::Layers, "src/ground/rock.rs".to_owned(), 3)]);
}

/// An alias made in one file and used from another leads to the same place.
#[test]
fn a_re_export_hides_no_arrow() {
    let more = [
        (
            "src/house/mod.rs",
            "mod door;\nmod wall;\npub use door::Door;\npub use wall::Wall as W;\n",
        ),
        ("src/window.rs", "use crate::house::{Door, W};\npub fn look(_: Door, _: W) {}\n"),
    ];
    assert_eq!(found(&more), []);
    let target = tree(&more);
    let import =
        &target.sources.iter().find(|it| it.name == "src/window.rs").unwrap().facts.imports;
    let files: Vec<String> =
        import.iter().map(|import| target.resolve(&import.at).unwrap().file).collect();
    assert_eq!(files, ["src/house/door.rs", "src/house/wall.rs"]);
}

/// Neighbors of one layer do not use each other, but for a named reason; a reason without need and
/// a layer without a module are offences.
#[test]
fn neighbors_reasons_and_stale_layers() {
    let more = [("src/desk.rs", "pub fn write(_: crate::house::Door) { crate::window::look() }\n")];
    assert_eq!(places(&more), [(Rule::Layers, "src/desk.rs".to_owned(), 1)]);
    let said = |layers: &Layers<'_>, more| -> Vec<String> {
        offences(&tree(more), layers).into_iter().map(|it| it.said).collect()
    };
    let allowed = Layers { rows: SMALL.rows, allowed: &[("desk", "window", "a reason")] };
    assert_eq!(said(&allowed, &more), [""; 0]);
    assert_eq!(said(&allowed, &[]), ["outdated exception: `desk` does not use `window` any more"]);
    let stale =
        Layers { rows: &[&["ground"], &["house", "cellar"], &["window", "desk"]], allowed: &[] };
    assert_eq!(said(&stale, &[]), ["the layers name `cellar`, which is no module"]);
    let missing = Layers { rows: &[&["ground"], &["house"], &["window"]], allowed: &[] };
    assert_eq!(said(&missing, &[]), ["`desk` is in no layer"]);
}

/// Two files that use each other, and three in a ring: one offence with all its files, each arrow
/// with its line.
#[test]
fn circles_are_found() {
    let two = [("src/house/wall.rs", "pub struct Wall;\n\nfn f(_: super::Door) {}\n")];
    let circle = &found(&two)[..];
    assert_eq!(circle.len(), 1);
    assert_eq!(circle[0].circle, ["src/house/door.rs", "src/house/wall.rs"]);
    assert_eq!((circle[0].file.as_str(), circle[0].line), ("src/house/door.rs", 1));
    assert!(circle[0].said.contains("src/house/wall.rs:3 uses src/house/door.rs"), "{}", circle[0]);
    let three = [
        ("src/house/wall.rs", "pub struct Wall;\nuse super::roof;\n"),
        ("src/house/roof.rs", "use super::door::Door;\n"),
        (
            "src/house/mod.rs",
            "mod door;\nmod roof;\nmod wall;\npub use {door::Door, wall::Wall};\n",
        ),
    ];
    let circle = &found(&three)[..];
    assert_eq!(circle.len(), 1);
    let files = ["src/house/door.rs", "src/house/roof.rs", "src/house/wall.rs"];
    assert_eq!(circle[0].circle, files);
    assert!(circle[0].said.contains("src/house/roof.rs:1 uses src/house/door.rs"), "{}", circle[0]);
}

/// A parent that works with its child, and the child with the parent, stand in a circle.
#[test]
fn a_parent_can_stand_in_a_circle() {
    let more = [
        (
            "src/house/mod.rs",
            "mod door;\nmod wall;\npub use {door::Door, wall::Wall};\nconst AT: u8 = wall::AT;\n",
        ),
        ("src/house/wall.rs", "pub struct Wall;\npub const AT: u8 = super::AT;\n"),
    ];
    let circle = &found(&more)[..];
    assert_eq!(circle.len(), 1);
    assert_eq!(
        circle[0].circle,
        ["src/house/door.rs", "src/house/mod.rs", "src/house/wall.rs"][1..]
    );
}

/// Lengths are measured between the braces and by lines of the file, in the program and its tests.
#[test]
fn lengths_are_measured() {
    let body = "    let _ = 1;\n".repeat(70);
    let fits = format!("pub struct Wall;\nimpl Wall {{\n    fn f() {{\n{body}    }}\n}}\n");
    assert_eq!(found(&[("src/house/wall.rs", &fits)]), []);
    let long = fits.replace("fn f() {", "fn f() {\n        // One line more.");
    let offence = &found(&[("src/house/wall.rs", &long)])[..];
    assert_eq!(offence.len(), 1);
    let it = &offence[0];
    assert_eq!(
        (it.rule, it.line, it.what.as_str(), it.amount),
        (Rule::LongFunction, 3, "Wall::f", 71)
    );
    let text = "// A line.\n".repeat(500);
    assert_eq!(found(&[("tests/long.rs", &text)]), []);
    let text = text + "\n";
    assert_eq!(
        places(&[("tests/long.rs", &text)]),
        [(Rule::LongFile, "tests/long.rs".to_owned(), 501)]
    );
}

/// Words in wrong rooms are seen through groups; texts and comments may hold them.
#[test]
fn words_in_wrong_rooms() {
    let text = "//! No HashMap here.\nuse std::{\n    collections::HashMap,\n    fs,\n};\n\
                pub struct Wall;\nfn f() { println!(\"egui::Ui\") }\nfn g(_: egui::Ui) {}\n";
    let found = found(&[("src/house/wall.rs", text)]);
    let words: Vec<(&str, usize)> = found.iter().map(|it| (it.what.as_str(), it.line)).collect();
    assert_eq!(words, [("HashMap", 3), ("std::fs", 4), ("println", 7), ("egui", 8)]);
    let free = [("src/app.rs", "use std::fs;\n"), ("src/cli.rs", "use std::fs;\n")];
    assert_eq!(rules::words(&tree(&free)), []);
}

/// A mark in a comment and a macro that stands for work to come.
#[test]
fn unfinished_marks() {
    let text = format!(
        "pub struct Wall;\n// {}: paint it.\nfn f() {{ {}!() }}\n",
        ["FIX", "ME"].concat(),
        "todo"
    );
    let offence = |line| (Rule::Unfinished, "src/house/wall.rs".to_owned(), line);
    assert_eq!(places(&[("src/house/wall.rs", &text)]), [offence(2), offence(3)]);
}

/// A public item that no other file names; one that a test names, and a type that a public
/// signature needs, pass.
#[test]
fn unused_public_items() {
    let text = "pub struct Wall;\npub struct Brick;\nimpl Wall {\n    pub fn brick(&self) -> Brick {\n        \
                Brick\n    }\n    pub(super) fn idle() {}\n}\npub const LOST: u8 = 1;\n";
    let more = [("src/house/wall.rs", text), ("tests/wall.rs", "fn t() { wall.brick(); }\n")];
    let found = found(&more);
    let items: Vec<(&str, usize)> = found.iter().map(|it| (it.what.as_str(), it.line)).collect();
    assert_eq!(items, [("Wall::idle", 7), ("LOST", 9)]);
}

/// A catch-all beside variants of an enum of ours, through an alias, `Self`, a pair or `Some`; not
/// beside variants from elsewhere, numbers or texts, and not in test code.
#[test]
fn catch_all_arms() {
    let one = |body: &str| {
        let text =
            format!("use super::Door as D;\npub struct Wall;\nfn f(d: D, n: u8) {{\n{body}\n}}\n");
        let found = found(&[("src/house/wall.rs", &text)]);
        let found = found.into_iter().filter(|it| it.rule == Rule::CatchAll);
        found.map(|it| (it.what, it.line)).collect::<Vec<_>>()
    };
    let offence = vec![("Door".to_owned(), 4)];
    assert_eq!(one("match d { D::Open => 1, _ => 2 };"), offence);
    assert_eq!(one("match d { crate::house::Door::Open if n > 1 => 1, other => 2 };"), offence);
    assert_eq!(one("match (d, n) { (D::Open, 1) => 1, (_, _) => 2 };"), offence);
    assert_eq!(one("match Some(d) { Some(D::Open | D::Shut) => 1, _ => 2 };"), offence);
    assert_eq!(one("let _ = format!(\"{}\", match d { D::Open => 1, _ => 2 });"), offence);
    assert_eq!(one("match d { D::Open => 1, other if n > 1 => 2, _ => 3 };"), offence);
    assert_eq!(one("match Some(d) { Some(D::Open) => 1, Some(_) | None => 2 };"), offence);
    assert_eq!(one("match Some(d) { Some(D::Open) => 1, Some(D::Shut) => 2, None => 3 };"), []);
    assert_eq!(
        one(
            "match (d, Some(n)) { (D::Open, None) => 1, (D::Shut, None) => 2, (_, Some(n)) => n };"
        ),
        []
    );
    assert_eq!(one("match d { D::Open => 1, D::Shut => 2 };"), []);
    assert_eq!(one("match n { 1 => 1, _ => 2 };"), []);
    assert_eq!(one("match n { std::cmp::Ordering::Less => 1, _ => 2 };"), []);
    let own = "pub enum Wall { Thin, Thick }\nimpl Wall {\n    fn f(self) {\n        \
               match self { Self::Thin => 1, _ => 2 };\n    }\n}\n\
               #[cfg(test)]\nmod tests { fn f() { match w { crate::house::Wall::Thin => 1, _ => 2 }; } }\n";
    let offence = (Rule::CatchAll, "src/house/wall.rs".to_owned(), 4);
    assert_eq!(places(&[("src/house/wall.rs", own)]), [offence]);
}

/// `Debug` text in a format string of any macro, but for panics and the command line's errors.
#[test]
fn debug_texts() {
    let text = "pub struct Wall;\nfn f() {\n    format!(\"{:?}\", 1);\n    write!(f, \"{x:#?}\");\n    \
                assert!(true, \"{x:?}\");\n    Trouble::new(format!(\"{e:?}\"));\n    \
                format!(\"{x}? {:>3}\", 1);\n    put!(x => \"{x:?}\");\n}\n\
                #[cfg(test)]\nmod tests { fn f() { format!(\"{:?}\", 1); } }\n";
    let lines: Vec<usize> = found(&[("src/house/wall.rs", text)])
        .into_iter()
        .map(|it| {
            assert_eq!(it.rule, Rule::DebugText, "{it}");
            it.line
        })
        .collect();
    assert_eq!(lines, [3, 4, 8]);
}

/// Words for a person in a literal, counted for its room, also in an error of the command line; not
/// in panics, attributes, documentation, tests, ids, keys that are matched, markup, quantities and
/// formats.
#[test]
fn words_in_code() {
    let text = "pub struct Wall;\nfn f() {\n    let _ = \"no bricks\";\n    \
                format!(\"{n} bricks, {m}\");\n    Trouble::new(\"no wall\");\n    \
                lay! { /// Lay a brick.\n    brick => \"a brick\" }\n    \
                panic!(\"no bricks\");\n    t!(\"wall-bricks\");\n    format!(\"{a}: {b}, {c:.1} m\"); \"3.5 inH2O\"; match a { \"a wall\" => 1, _ => 2 };\n    \
                format!(\"<g id=\\\"wall\\\" {a}>\");\n    \"stroke=\\\"1\\\" fill=\\\"red\\\"\";\n}\n\
                #[expect(unused, reason = \"a wall to be\")]\nconst A: u8 = 1;\n\
                #[cfg(test)]\nmod tests { fn f() { g(\"a wall\"); } }\n";
    let offence = |line| (Rule::WordsInCode, "src/house".to_owned(), line);
    let expected = [offence(3), offence(4), offence(5), offence(7)];
    assert_eq!(places(&[("src/house/wall.rs", text)]), expected);
}

/// A number with the symbol of a unit is no word, whether it is given or filled in; a number of
/// things is.
#[test]
fn quantities_are_no_words() {
    let text = "pub struct Wall;\nfn f() {\n    \"12 mm\";\n    format!(\"{hole:.2} mm\");\n    \
                \"12 bricks\";\n    format!(\"{} bricks\");\n    format!(\"{} mm, {} in\");\n}\n";
    let offence = |line| (Rule::WordsInCode, "src/house".to_owned(), line);
    let expected = [offence(5), offence(6), offence(7)];
    assert_eq!(places(&[("src/house/wall.rs", text)]), expected);
}

/// A text that code looks for in another one is shown to nobody; but where it stands in a message of
/// ours, code hangs on that message's wording.
#[test]
fn code_does_not_look_for_words_of_messages() {
    let text = "pub struct Wall;\nfn f(it: &str) -> bool {\n    it.contains(\"loose bricks\")\n        || \
                it.strip_prefix(\"no mortar: \").is_some()\n        || it.replace(\"a b\", \"new bricks\") == it\n}\n";
    let messages = "wall-bricks = Some loose bricks lie here.\n";
    let files = [("assets/words/en/house.ftl", messages), ("src/house/wall.rs", text)];
    let offence = |line| (Rule::WordsInCode, "src/house".to_owned(), line);
    assert_eq!(places(&files), [offence(5), offence(3)]);
}

/// Documentation of three words, counted for its room; four words pass.
#[test]
fn short_documentation() {
    let text = "/// Which.\npub struct Wall;\n/// The way\n/// in.\nstruct Way;\n/// A wall of bricks.\nstruct B;\n";
    let offence = |line| (Rule::ShortDocs, "src/house".to_owned(), line);
    assert_eq!(places(&[("src/house/wall.rs", text)]), [offence(1), offence(4)]);
}

/// The list lets pass what is on it, and nothing else: neither a new offence, nor more of a known
/// one, nor an entry that no offence needs.
#[test]
fn the_list_only_shrinks() {
    let long = |lines: usize| {
        let body = "let _ = 1;\n".repeat(lines);
        found(&[("src/house/wall.rs", &format!("pub struct Wall;\nfn f() {{\n{body}}}\n"))])
    };
    let rule = Rule::LongFunction;
    let known = Known::of(&long(80));
    assert_eq!(Known::read(&known.written()).unwrap(), known);
    assert_eq!(known.differences(&long(80), rule), [""; 0]);
    assert!(
        known.differences(&long(81), rule)[0].starts_with("src/house/wall.rs:2: `f` has 81 lines")
    );
    assert!(known.differences(&long(75), rule)[0].ends_with("\"f\": write 75"));
    assert!(known.differences(&long(5), rule)[0].ends_with("\"f\": remove it"));
    assert!(!Known::default().differences(&long(80), rule).is_empty());
    assert_eq!(known.shrunk_to(&long(75)), Known::of(&long(75)));
    assert_eq!(known.shrunk_to(&long(90)), known);
    assert_eq!(Known::default().shrunk_to(&long(90)), Known::default());
}

/// A circle may lose files but win none, and its entry follows it.
#[test]
fn a_known_circle_only_shrinks() {
    let back = ("src/house/wall.rs", "pub struct Wall;\nuse super::Door;\n");
    let roof = ("src/house/roof.rs", "use super::Door;\n");
    let wall = ("src/house/wall.rs", "pub struct Wall;\nuse super::{Door, roof};\n");
    let parts = (
        "src/house/mod.rs",
        "mod door;\nmod roof;\nmod wall;\npub use {door::Door, wall::Wall};\n",
    );
    let (two, three) = (found(&[back]), found(&[wall, roof, parts]));
    let differences =
        |known: &[Offence], now: &[Offence]| Known::of(known).differences(now, Rule::Circle);
    assert_eq!(differences(&two, &two), [""; 0]);
    assert_eq!(differences(&three, &three), [""; 0]);
    assert!(differences(&two, &three).iter().any(|it| it.contains("a circle of 3 files")));
    assert!(differences(&three, &two)[0].contains("is smaller now"));
    assert!(differences(&two, &[])[0].contains("remove it"));
    assert!(differences(&[], &two)[0].contains("a circle of 2 files"));
}
