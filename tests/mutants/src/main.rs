//! Mutants of the rules and their evaluation: changes the code in one place at a time, and asks
//! whether a test sees it. `tests/mutants/run` builds a copy of the tree with all of them.
//!
//! `instrument TREE FOLDER...` puts the mutants into the files below these folders of the tree and
//! writes `mutants.txt` there. `try TREE BINARY FILTER...` runs the tests of the binary that reach a
//! mutant, one by one, until one fails; what survives and is not on the list `known.txt` is told.

mod instrument;

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode, Stdio};
use std::sync::Mutex;
use std::time::{Duration, Instant};

/// Least time that a test has with a mutant on; one that hangs is seen.
const LONGEST: Duration = Duration::from_secs(60);

type Failure = Box<dyn std::error::Error>;

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let done = match args.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        ["instrument", tree, folders @ ..] => put_in(Path::new(tree), folders),
        ["try", tree, binary, filters @ ..] => try_all(Path::new(tree), binary, filters),
        _ => Err("instrument TREE FOLDER... | try TREE BINARY FILTER...".into()),
    };
    match done {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

fn files(folder: &Path, found: &mut Vec<PathBuf>) -> Result<(), Failure> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            files(&path, found)?;
        } else if path.extension().is_some_and(|it| it == "rs") {
            found.push(path);
        }
    }
    found.sort();
    Ok(())
}

fn put_in(tree: &Path, folders: &[&str]) -> Result<bool, Failure> {
    let mut found = Vec::new();
    for folder in folders {
        files(&tree.join(folder), &mut found)?;
    }
    let (mut next, mut list) = (1, String::new());
    for path in found {
        let name = path.strip_prefix(tree)?.display().to_string();
        let text = std::fs::read_to_string(&path)?;
        let (text, mutants) =
            instrument::instrument(&text, &mut next).map_err(|why| format!("{name}: {why}"))?;
        std::fs::write(&path, text)?;
        for it in mutants {
            writeln!(list, "{}\t{name}\t{}\t{}\t{}", it.number, it.line, it.function, it.change)?;
        }
    }
    std::fs::write(tree.join("mutants.txt"), list)?;
    let lib = tree.join("src/lib.rs");
    let text = std::fs::read_to_string(&lib)?;
    let at = instrument::first_item(&text)?.ok_or("src/lib.rs names no module")?;
    let with = format!("{}#[macro_use]\npub mod mutant;\n{}", &text[..at], &text[at..]);
    std::fs::write(lib, with)?;
    std::fs::write(tree.join("src/mutant.rs"), include_str!("switches.rs"))?;
    Ok(true)
}

/// A mutant on the list, by what names it: file, function and change, not line or number.
#[derive(Debug, Clone)]
struct Listed {
    number: u32,
    line: String,
    name: String,
}

fn listed(tree: &Path) -> Result<Vec<Listed>, Failure> {
    let text = std::fs::read_to_string(tree.join("mutants.txt"))?;
    let of = |line: &str| {
        let mut parts = line.splitn(5, '\t');
        let number = parts.next()?.parse().ok()?;
        let (file, line) = (parts.next()?, parts.next()?.to_owned());
        let (function, change) = (parts.next()?, parts.next()?);
        Some(Listed { number, line, name: format!("{file} {function}: {change}") })
    };
    Ok(text.lines().filter_map(of).collect())
}

/// A test, how long it takes and which mutants it reaches.
struct Test {
    name: String,
    seconds: f64,
    reaches: BTreeSet<u32>,
}

/// The tests of some filters with what each reaches, the quick ones first.
fn tests(tree: &Path, binary: &str, filters: &[&str]) -> Result<Vec<Test>, Failure> {
    let listed = Command::new(binary).args(filters).arg("--list").current_dir(tree).output()?;
    let listed = String::from_utf8(listed.stdout)?;
    let trace = tree.join("reached.txt");
    let mut all = Vec::new();
    for name in listed.lines().filter_map(|line| line.strip_suffix(": test")) {
        let _ = std::fs::remove_file(&trace);
        let begun = Instant::now();
        let run = alone(tree, binary, name).env("MUTANT_TRACE", &trace).status()?;
        if !run.success() {
            return Err(format!("without a mutant this test fails: {name}").into());
        }
        let text = std::fs::read_to_string(&trace).unwrap_or_default();
        let reaches = text.lines().filter_map(|line| line.parse().ok()).collect();
        all.push(Test { name: name.to_owned(), seconds: begun.elapsed().as_secs_f64(), reaches });
    }
    all.sort_by(|a, b| a.seconds.total_cmp(&b.seconds));
    Ok(all)
}

/// One test by itself.
fn alone(tree: &Path, binary: &str, test: &str) -> Command {
    let mut run = Command::new(binary);
    let _ = run.args(["--exact", test, "--test-threads", "1", "-q"]).current_dir(tree);
    let _ = run.env("CARGO_MANIFEST_DIR", tree).stdout(Stdio::null()).stderr(Stdio::null());
    run
}

/// Whether a test passes with a mutant on. One that takes far longer than without does not.
fn passes(tree: &Path, binary: &str, test: &Test, number: u32) -> Result<bool, Failure> {
    let mut child = alone(tree, binary, &test.name).env("MUTANT", number.to_string()).spawn()?;
    let longest = LONGEST.max(Duration::from_secs_f64(10.0 * test.seconds));
    let begun = Instant::now();
    loop {
        if let Some(status) = child.try_wait()? {
            return Ok(status.success());
        }
        if begun.elapsed() > longest {
            child.kill()?;
            let _ = child.wait()?;
            return Ok(false);
        }
        std::thread::sleep(Duration::from_millis(5));
    }
}

fn try_all(tree: &Path, binary: &str, filters: &[&str]) -> Result<bool, Failure> {
    let tests = tests(tree, binary, filters)?;
    let mutants = listed(tree)?;
    let seconds: f64 = tests.iter().map(|it| it.seconds).sum();
    println!("{} tests, {seconds:.0} s; {} mutants", tests.len(), mutants.len());
    let hands = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let all = mutants.len();
    let waiting = Mutex::new(mutants);
    let survived = Mutex::new(Vec::new());
    let survives = |number: u32| -> Result<bool, Failure> {
        for test in tests.iter().filter(|it| it.reaches.contains(&number)) {
            if !passes(tree, binary, test, number)? {
                return Ok(false);
            }
        }
        Ok(true)
    };
    let work = || -> Result<(), String> {
        loop {
            let next = waiting.lock().map_err(|it| it.to_string())?.pop();
            let Some(it) = next else { return Ok(()) };
            if survives(it.number).map_err(|it| it.to_string())? {
                println!("survives: {}, line {}", it.name, it.line);
                survived.lock().map_err(|it| it.to_string())?.push(it);
            }
        }
    };
    std::thread::scope(|scope| {
        let hands: Vec<_> = (0..hands).map(|_| scope.spawn(work)).collect();
        hands.into_iter().try_for_each(|it| it.join().map_err(|_| "a thread broke".to_owned())?)
    })?;
    told(all, survived.into_inner().map_err(|it| it.to_string())?)
}

/// Tells what survived; right where all of it is on the list of known ones.
fn told(all: usize, mut left: Vec<Listed>) -> Result<bool, Failure> {
    left.sort_by_key(|it| it.number);
    let known = include_str!("../known.txt");
    let is_known =
        |it: &Listed| known.lines().any(|line| line.split(" # ").next() == Some(&it.name));
    let unknown: Vec<_> = left.iter().filter(|it| !is_known(it)).collect();
    for it in &unknown {
        println!("SURVIVES\t{}\tline {}", it.name, it.line);
    }
    println!("{all} mutants, {} survive, {} of them not listed", left.len(), unknown.len());
    Ok(unknown.is_empty())
}
