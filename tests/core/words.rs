//! The words in `assets/words/en` and the ids in the sources belong together.

mod calls;
mod files;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

use quarterturn::catalogue::asked;
use quarterturn::words::table::Asked;
use quarterturn::words::{FILES, Id, fill};

/// A place in a text file.
type Source = (String, String);

fn rust(folder: &Path, found: &mut Vec<Source>) {
    let mut entries: Vec<_> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    entries.sort();
    for path in entries {
        if path.is_dir() {
            rust(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push((path.display().to_string(), fs::read_to_string(&path).unwrap()));
        }
    }
}

/// Every problem between files of words, sources and rows of data, each with its file and line.
fn problems(files: &[Source], sources: &[Source], rows: &[Asked]) -> Vec<String> {
    let mut wrong = Vec::new();
    let messages = files::read(files, &mut wrong);
    let mut used = BTreeSet::new();
    for (file, text) in sources {
        if text.contains("words::Id::new") {
            wrong.push(format!("{file}: an id is built past the macros of `words`"));
        }
        for call in calls::find(text) {
            let place = format!("{file}:{}", call.line);
            let Some(id) = call.id else {
                wrong.push(format!("{place}: the id is no plain literal"));
                continue;
            };
            let Some(message) = messages.get(&id) else {
                wrong.push(format!("{place}: no message `{id}`"));
                continue;
            };
            used.insert(id.clone());
            for asked in message.arguments.difference(&call.arguments) {
                wrong.push(format!("{place}: `{id}` asks for `${asked}`, which is not given"));
            }
            for given in call.arguments.difference(&message.arguments) {
                wrong.push(format!("{place}: `{given}` is given, and `{id}` does not use it"));
            }
        }
    }
    for Asked { place, id } in rows {
        let Some(message) = messages.get(id) else {
            wrong.push(format!("{place}: no message `{id}`"));
            continue;
        };
        used.insert(id.clone());
        for argument in &message.arguments {
            wrong.push(format!("{place}: `{id}` asks for `${argument}`, which no row gives"));
        }
    }
    used.extend(files::named_in_messages(&messages, &used));
    for (id, message) in &messages {
        if !used.contains(id) {
            wrong.push(format!("{}: `{id}` is used nowhere", message.place));
        }
    }
    wrong
}

/// Ids in sources and rows, arguments and files agree; a person never reads an id or a `{$name}`.
#[test]
fn words_and_sources_agree() {
    let shipped: Vec<Source> = FILES
        .iter()
        .map(|(name, text)| (format!("assets/words/en/{name}"), (*text).to_owned()))
        .collect();
    let mut sources = Vec::new();
    rust(Path::new("src"), &mut sources);
    sources.retain(|(name, _)| name != "src/words.rs");
    let rows = asked().unwrap_or_else(|error| panic!("{error}"));
    let wrong = problems(&shipped, &sources, &rows);
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// No file of words lies beside the program without being read.
#[test]
fn every_file_of_words_ships() {
    let there: BTreeSet<String> = fs::read_dir("assets/words/en")
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    let shipped: BTreeSet<String> = FILES.iter().map(|(name, _)| (*name).to_owned()).collect();
    assert_eq!(there, shipped);
}

/// The check finds each mistake that it is made for, and names file and line.
#[test]
fn planted_mistakes_are_found() {
    let good = "# Gate\n\ngate = Gate\nopen = { $what } is open\n";
    let calls = "fn a() { t!(\"gate\"); t!(\"open\", what = x(1, [2])); }\n";
    let planted: BTreeMap<&str, (&str, &str, &str)> = BTreeMap::from([
        ("sound", (good, calls, "")),
        (
            "missing id",
            (good, "// t!(\"x\")\nt!(\"gate\", );t!(\"gat\")", "a.rs:2: no message `gat`"),
        ),
        ("unused id", (good, "t!(\"gate\")", "a.ftl:4: `open` is used nowhere")),
        (
            "argument not given",
            (good, "t!(\"open\")", "a.rs:1: `open` asks for `$what`, which is not given"),
        ),
        (
            "argument not used",
            (
                good,
                "id!(\"gate\"); t!(\n\"gate\", a = 1)",
                "a.rs:1: `a` is given, and `gate` does not use it",
            ),
        ),
        ("id past the macros", (good, "words::Id::new(x)", "a.rs: an id is built past the macros")),
        ("id that is computed", (good, "t!(name)", "a.rs:1: the id is no plain literal")),
        (
            "id twice",
            ("gate = Gate\ngate = Gate\n", "t!(\"gate\")", "a.ftl:2: `gate` stands a second time"),
        ),
        ("junk", ("gate = Gate\n\nno message\n", "t!(\"gate\")", "a.ftl:3: ")),
        ("unknown term", ("gate = { -gate }\n", "t!(\"gate\")", "a.ftl:1: no term `-gate`")),
        (
            "unused term",
            ("-gate = Gate\nyard = Yard\n", "t!(\"yard\")", "a.ftl:1: `-gate` is used nowhere"),
        ),
        (
            "argument only in one variant",
            (
                "gate = { $n ->\n    [one] one\n   *[other] { $n } of { $all }\n }\n",
                "t!(\"gate\", n = 2)",
                "a.rs:1: `gate` asks for `$all`, which is not given",
            ),
        ),
    ]);
    for (name, (words, source, expected)) in planted {
        let found = problems(
            &[("a.ftl".to_owned(), words.to_owned())],
            &[("a.rs".to_owned(), source.to_owned())],
            &[],
        );
        if expected.is_empty() {
            assert_eq!(found, Vec::<String>::new(), "{name}");
        } else {
            assert!(found.iter().any(|line| line.starts_with(expected)), "{name}: {found:?}");
        }
    }
}

/// A row without its text, a text without a row and a text that asks for more than a row gives are
/// found.
#[test]
fn planted_mistakes_of_rows_are_found() {
    let words = "gate-cause = Rust\ngate-wrong = { $who } oils it\nyard-cause = Frost\n";
    let row = |line: u8, id: &str| Asked { place: format!("a.ron:{line}"), id: id.to_owned() };
    let rows = [row(1, "gate-cause"), row(1, "gate-wrong"), row(2, "hall-cause")];
    let found = problems(&[("a.ftl".to_owned(), words.to_owned())], &[], &rows);
    assert_eq!(
        found,
        [
            "a.ron:1: `gate-wrong` asks for `$who`, which no row gives",
            "a.ron:2: no message `hall-cause`",
            "a.ftl:3: `yard-cause` is used nowhere",
        ]
    );
}

/// What is missing shows its id or its name instead of stopping the program, and no invisible marks
/// stand around arguments.
#[test]
fn a_person_is_never_stopped_by_a_missing_word() {
    assert_eq!(Id::new("no-such-message").text(), "no-such-message");
    assert_eq!(fill(Id::new("no-such-message"), Vec::new()), "no-such-message");
    let port = |arguments| fill(Id::new("hose-fully"), arguments);
    assert_eq!(port(Vec::new()), "hose on the {$port}");
    assert_eq!(port(vec![("port", "inlet port".into())]), "hose on the inlet port");
}
