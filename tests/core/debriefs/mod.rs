//! `docs/debriefs.md`: five jobs as their debriefs tell of them, from good work to dangerous work.
//!
//! `UPDATE_DOCS=1 cargo test --no-default-features --features cli --test core debriefs` writes the
//! page anew.

use std::fs;

use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::marking::debrief::{Debrief, Job, NIGHT_S, debrief};
use quarterturn::marking::{Brief, Observer};
use quarterturn::model::aftermath::Stepping;
use quarterturn::parts::{Port, Stage};
use quarterturn::scenario::{Scenario, builtin, load};
use quarterturn::technician::script::{ScriptPlayer, read};
use quarterturn::technician::{Player, Technician, play};

use crate::marking::Good;

const PAGE: &str = "docs/debriefs.md";
/// Longest job, in simulated seconds.
const LIMIT_S: u64 = 3 * 3600;
const SEED: u64 = 1;

/// What stands above the debriefs.
const HEAD: &str = "# Debriefs

What `run` and `mark` tell after a job, and the window shows: the verdict with what is missing, what was
wrong in the trainee's own numbers, what it means for the house, the night after by the model, one thing to
practise next, the author's note, the job sheet beside what was true, then essentials and findings.
`--json` gives the same as data. Written by a test (`tests/core/debriefs`); seed 1 throughout.

As data it is the object `debrief` beside `marks`:

| field | what it holds |
|---|---|
| `title`, `note` | title of the job; its author's note or null |
| `causes` | what was wrong, an object each: `cause` (id), `name`, `from` (`arrival` or `work`), `read` (sentences with the trainee's numbers), `seen`, `named`, `is_named`, `left` (`right`, `owner-called`, `shut-off`, `in-use`, `not-handed-over`) |
| `house`, `night` | sentences; `night` is empty where the job was not handed over |
| `next` | `job` (id of a shipped job), `title`, `part` (sentence or null), `rule` (id or null), `words`; or null |
| `sheet.lines` | `port`, `stage`, `found` and `left`: null, or `value`, `unit` (the one written: `InWc`, `KPa`, `Mbar`), `truth` (true pressure then, in that unit, or null), `at_s` (seconds), `is` (`right`, `coarse`, `unsettled`, `one-leg`, `other-state`, `other-port`, `other-unit`, `never-shown`), `written` (numbers on that line in all) |
| `sheet.joints` | `joint`, `verdict` and `truth` (`tight`, `leaking`; `truth` may be null) |
| `sheet.measured` | `spot`, `figures` (with their units), `at_s` |
| `sheet.findings` | `cause`, `answer` (ids) |
| `sheet.not_done`, `sheet.ending`, `sheet.remarks` | words; `ending` is null where the job was not handed over |
| `done` | `at_s`, `what` |

> **Take care.** Practice evidence from a simulator. On real gas the appliance's own plate and instructions,
> the local code and a licensed technician decide.
";

fn scenario(id: &str) -> Scenario {
    load(builtin::find(id).unwrap().text).unwrap()
}

/// A finished bench with what was seen on it, as a debrief.
fn told(id: &str, bench: &Bench, observer: Observer) -> Debrief {
    let scenario = scenario(id);
    let brief = Brief { right_endings: scenario.right_endings(SEED) };
    let marks = observer.marks(&scenario.marking.rule_book().unwrap(), &brief);
    let night = bench.aftermath(NIGHT_S, Stepping::Strides);
    let note = scenario.debrief.as_deref();
    let job = Job { brief: &brief, id: Some(id), note, night: Some(&night) };
    debrief(&observer.ledger, marks, observer.trace, job)
}

fn played(id: &str, player: &mut dyn Player) -> Debrief {
    let mut bench = Bench::new(scenario(id).draw(SEED));
    let mut observer = Observer::new(&bench);
    play(&mut bench, player, LIMIT_S, &mut observer);
    told(id, &bench, observer)
}

fn scripted(id: &str, text: &str) -> Debrief {
    played(id, &mut ScriptPlayer::new(read("page.script", text).unwrap()))
}

/// The technician's work with some of it left out.
fn without(id: &str, out: impl Fn(usize, &Action) -> bool) -> Debrief {
    let good = Good::on(id, SEED);
    let kept = good.done.iter().enumerate().filter(|(i, (_, action))| !out(*i, action));
    let kept: Vec<_> = kept.map(|(_, at)| at.clone()).collect();
    let (bench, observer) = good.left(&kept);
    told(id, &bench, observer)
}

/// Sloppy work: nothing smelt, the papers not looked at, leak fluid on once only, the inlet not read
/// with everything on, nothing said.
fn is_left_out(action: &Action) -> bool {
    let unread = matches!(action, Action::Write(it)
        if it.port == Port::Inlet && it.stage == Stage::FullLoad);
    let unseen = matches!(action, Action::Look(_) | Action::Sniff(_) | Action::Probe(_));
    unread || unseen || matches!(action, Action::Tell(_) | Action::WriteJoint { .. })
}

fn page() -> String {
    let good = played("a-roar-at-night", &mut technician("a-roar-at-night"));
    let sloppy = without("a-roar-at-night", |_, action| is_left_out(action));
    let wrong = scripted("behind-the-cupboard", include_str!("cranked.script"));
    let dangerous = scripted("moved-with-the-house", include_str!("lit_unconverted.script"));
    let half = Good::on("natural-gas-busy-kitchen", SEED).done.len() / 2;
    let unfinished = without("natural-gas-busy-kitchen", |i, _| i > half);
    let mut page = HEAD.to_owned();
    for (title, how, told) in [
        ("Good work", "The reference technician.", good),
        (
            "Sloppy work",
            "The technician's work without nose, looks, the inlet under full load and what is said.",
            sloppy,
        ),
        (
            "A wrong repair",
            "The bent connector is left, and the high screw turned up against it.",
            wrong,
        ),
        (
            "Dangerous work",
            "A furnace with everything of its old gas, lit and left in service.",
            dangerous,
        ),
        ("Not finished", "The first half of the technician's work.", unfinished),
    ] {
        let text = told.text();
        page += &format!("\n## {title}\n\n{how}\n\n```text\n{}\n```\n", text.trim_end());
    }
    page
}

fn technician(id: &str) -> Technician {
    Technician::new(&scenario(id).draw(SEED).card)
}

/// The page holds what the program tells now.
#[test]
fn the_page_is_fresh() {
    let fresh = page();
    if std::env::var_os("UPDATE_DOCS").is_some_and(|value| value == "1") {
        fs::write(PAGE, &fresh).expect("docs/debriefs.md can be written");
    }
    let stored = fs::read_to_string(PAGE).unwrap_or_default();
    let differs = fresh.lines().zip(stored.lines()).position(|(fresh, stored)| fresh != stored);
    assert!(
        fresh == stored,
        "{PAGE} is stale from line {}; run with UPDATE_DOCS=1",
        differs.unwrap_or_else(|| fresh.lines().count().min(stored.lines().count())) + 1
    );
}
