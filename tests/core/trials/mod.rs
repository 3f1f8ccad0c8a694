//! `docs/trials.md`: jobs done otherwise than by the book, from plain cheating to honest habits, each
//! with the verdict that a fair examiner gives, held against the program's.
//!
//! A trial is an edit of the technician's work, played anew. The rows stand in `tests/core/trials/*.ron`.
//! `UPDATE_DOCS=1 cargo test --no-default-features --features cli --test core trials` writes the page;
//! `TRIAL=words` plays only the trials whose sentence holds these words.

mod script;

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::sync::Mutex;

use quarterturn::bench::Bench;
use quarterturn::marking::{Brief, Marks, Observer, Verdict};
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::play;
use quarterturn::technician::script::{ScriptPlayer, read};
use serde::Deserialize;

use crate::marking::{Good, rules};
use script::Edit;

const PAGE: &str = "docs/trials.md";
const CHAPTERS: [&str; 3] = ["cheats", "fair_play", "alike"];
/// Longest job, in simulated seconds.
const LIMIT_S: u64 = 6 * 3600;
const SEED: u64 = 1;

/// What stands above the chapters.
const HEAD: &str = "# Trials

Jobs done otherwise than by the book, each with the verdict that a fair examiner gives. The verdicts were
written down by hand; a test (`tests/core/trials`) plays every row anew and holds what the program says
against them. Each is the reference technician's work on a shipped job, seed 1, with the change that its
row tells. *Charged* are the rules, all of them, that are found; points are given with the verdict *met*
alone.

> **Take care.** Practice evidence from a simulator. On real gas the appliance's own plate and instructions,
> the local code and a licensed technician decide.
";

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Chapter {
    title: String,
    text: String,
    trials: Vec<Trial>,
}

/// Work that is tried.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Trial {
    /// What is done, in a sentence.
    done: String,
    /// Shipped jobs on which it is done.
    jobs: Vec<String>,
    edits: Vec<Edit>,
    /// What a fair examiner says.
    verdict: Expected,
    /// Rules that are found and no others, sorted.
    charged: Vec<String>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
enum Expected {
    Met,
    NotYetMet,
    NotHandedOver,
    EndedByItself,
}

impl Expected {
    fn of(verdict: &Verdict) -> Self {
        match verdict {
            Verdict::Met { .. } => Self::Met,
            Verdict::NotYetMet { .. } => Self::NotYetMet,
            Verdict::NotHandedOver { .. } => Self::NotHandedOver,
            Verdict::EndedByItself => Self::EndedByItself,
        }
    }

    fn words(self) -> &'static str {
        match self {
            Self::Met => "met",
            Self::NotYetMet => "**not yet met**",
            Self::NotHandedOver => "**not handed over**",
            Self::EndedByItself => "**ended by itself**",
        }
    }
}

/// Points of a trial on each of its jobs; none where it gets none.
type Points = Vec<Option<f64>>;

fn chapter(name: &str) -> Chapter {
    let path = format!("tests/core/trials/{name}.ron");
    let text = fs::read_to_string(&path).unwrap_or_else(|error| panic!("{path}: {error}"));
    ron::from_str(&text).unwrap_or_else(|error| panic!("{path}: {error}"))
}

/// The marks of a trial on a job.
fn tried(id: &str, good: &Good, edits: &[Edit]) -> Result<Marks, String> {
    let text = script::script(&good.done, edits)?.join("\n");
    let script = read("trial.script", &text).map_err(|problems| format!("{problems:#?}"))?;
    let mut player = ScriptPlayer::new(script);
    let mut bench = Bench::new(good.setup.clone());
    let mut observer = Observer::new(&bench);
    play(&mut bench, &mut player, LIMIT_S, &mut observer);
    if let Some(stop) = player.stop() {
        return Err(format!("line {}, `{}`: {}", stop.line, stop.text, stop.reason));
    }
    let scenario = load(builtin::find(id).unwrap().text).unwrap();
    let brief = Brief { right_endings: good.endings.clone() };
    Ok(observer.marks(&scenario.marking.rule_book().unwrap(), &brief))
}

/// What is otherwise than a fair examiner says.
fn differences(trial: &Trial, marks: &Marks) -> Option<String> {
    let (verdict, charged) = (Expected::of(&marks.verdict), rules(marks));
    if verdict == trial.verdict && charged == trial.charged {
        return None;
    }
    let found = marks.findings.iter();
    let found: Vec<String> =
        found.map(|it| format!("{} ×{}: {} / {}", it.rule, it.times, it.seen, it.truth)).collect();
    Some(format!(
        "{:?}, {}; not\n{verdict:?}, {}\n{}",
        trial.verdict,
        trial.charged.join(" "),
        charged.join(" "),
        found.join("\n")
    ))
}

/// Every trial of a chapter on each of its jobs, each job's by one hand: its points, in the order of the
/// jobs, and what is otherwise than it should be.
fn all(trials: &[Trial]) -> (BTreeMap<usize, Points>, Vec<String>) {
    let mut by_job: BTreeMap<&str, Vec<(usize, usize)>> = BTreeMap::new();
    let only = std::env::var("TRIAL").unwrap_or_default();
    for (t, trial) in trials.iter().enumerate().filter(|it| it.1.done.contains(&only)) {
        for (j, job) in trial.jobs.iter().enumerate() {
            by_job.entry(job).or_default().push((t, j));
        }
    }
    let queue = Mutex::new(by_job.into_iter());
    let told = Mutex::new((BTreeMap::new(), Vec::new()));
    let work = || {
        loop {
            let Some((id, rows)) = queue.lock().unwrap().next() else { return };
            let good = Good::on(id, SEED);
            for (t, j) in rows {
                let trial = &trials[t];
                let result = tried(id, &good, &trial.edits);
                let wrong = match &result {
                    Ok(marks) => differences(trial, marks),
                    Err(why) => Some(why.clone()),
                };
                let points = result.ok().and_then(|it| it.verdict.points()).map(|it| it.0);
                let (points_of, wrongs) = &mut *told.lock().unwrap();
                let of: &mut Points =
                    points_of.entry(t).or_insert_with(|| vec![None; trial.jobs.len()]);
                of[j] = points;
                wrongs.extend(wrong.map(|it| format!("{id}: {}\n{it}", trial.done)));
            }
        }
    };
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(work);
        }
    });
    told.into_inner().unwrap()
}

/// A chapter of the page, from its heading on.
fn section(chapter: &Chapter, points: &BTreeMap<usize, Points>) -> String {
    let mut text = format!("\n## {}\n\n{}\n\n", chapter.title, chapter.text);
    text += "| what is done | jobs | verdict | charged | points |\n|---|---|---|---|---|\n";
    for (t, trial) in chapter.trials.iter().enumerate() {
        let charged: Vec<String> = trial.charged.iter().map(|it| format!("`{it}`")).collect();
        let shown = points.get(&t).map(in_words).unwrap_or_default();
        let _ = writeln!(
            text,
            "| {} | {} | {} | {} | {shown} |",
            trial.done,
            trial.jobs.join(", "),
            trial.verdict.words(),
            if charged.is_empty() { "nothing".to_owned() } else { charged.join(", ") },
        );
    }
    text
}

/// A chapter as the page has it; empty where it has none of that title.
fn stored_section(stored: &str, chapter: &Chapter) -> String {
    let heading = format!("\n## {}\n", chapter.title);
    let Some(from) = stored.find(&heading) else { return String::new() };
    let after = from + heading.len();
    let to = stored[after..].find("\n## ").map_or(stored.len(), |it| after + it);
    stored[from..to].to_owned()
}

/// The page with one chapter written anew.
fn renewed(stored: &str, name: &str, fresh: &str) -> String {
    let mut page = HEAD.to_owned();
    for one in CHAPTERS {
        if one == name {
            page += fresh;
        } else {
            page += &stored_section(stored, &chapter(one));
        }
    }
    page
}

/// One at a time writes the page.
static PAGE_IS_WRITTEN: Mutex<()> = Mutex::new(());

/// Plays a chapter, and holds it against what a fair examiner says and against the page.
fn hold(name: &str) {
    let chapter = chapter(name);
    let (points, wrong) = all(&chapter.trials);
    assert!(wrong.is_empty(), "{} of the trials:\n{}", wrong.len(), wrong.join("\n\n"));
    if std::env::var_os("TRIAL").is_some() {
        return;
    }
    let fresh = section(&chapter, &points);
    let _writing = PAGE_IS_WRITTEN.lock().unwrap();
    let stored = fs::read_to_string(PAGE).unwrap_or_default();
    if std::env::var_os("UPDATE_DOCS").is_some_and(|value| value == "1") {
        fs::write(PAGE, renewed(&stored, name, &fresh)).expect("docs/trials.md can be written");
    } else {
        let kept = stored_section(&stored, &chapter);
        assert!(fresh == kept, "{PAGE} is stale; run with UPDATE_DOCS=1");
    }
}

/// Points as the page tells them, each once.
fn in_words(points: &Points) -> String {
    let mut all: Vec<f64> = points.iter().copied().flatten().collect();
    all.sort_by(|a, b| b.total_cmp(a));
    all.dedup();
    if all.is_empty() {
        return "–".to_owned();
    }
    all.iter().map(|it| format!("{}", (it * 10.0).round() / 10.0)).collect::<Vec<_>>().join(", ")
}

/// What must not pass does not.
#[test]
fn slow_cheats_do_not_pass() {
    hold("cheats");
}

/// What must not fail does not.
#[test]
fn slow_fair_play_does_not_fail() {
    hold("fair_play");
}

/// The same slip on other jobs is the same slip.
#[test]
fn slow_a_slip_is_the_same_on_other_jobs() {
    hold("alike");
}

/// The page is its head and its chapters, with a row for each trial.
#[test]
fn the_page_has_every_trial() {
    let stored = fs::read_to_string(PAGE).unwrap_or_default();
    let mut page = HEAD.to_owned();
    for name in CHAPTERS {
        let chapter = chapter(name);
        let section = stored_section(&stored, &chapter);
        for trial in &chapter.trials {
            assert!(section.contains(&format!("\n| {} | ", trial.done)), "{}", trial.done);
        }
        page += &section;
    }
    assert!(page == stored, "{PAGE} holds something else; run with UPDATE_DOCS=1");
}

/// No trial stands there twice, and each names rules that there are, in order.
#[test]
fn trials_are_rows_of_their_own() {
    let book = quarterturn::rules::shared().unwrap();
    let all: Vec<Trial> = CHAPTERS.into_iter().flat_map(|name| chapter(name).trials).collect();
    for (i, trial) in all.iter().enumerate() {
        assert!(all[..i].iter().all(|it| it.done != trial.done), "{} stands twice", trial.done);
        assert!(trial.charged.is_sorted(), "{}", trial.done);
        for rule in &trial.charged {
            assert!(book.rule(rule).is_some(), "{}: no rule {rule}", trial.done);
        }
    }
}
