//! Competencies: shown only where there was occasion and the work was done, and nothing above a minor
//! slip speaks against it.

use quarterturn::hands::action::{Action, HandOver, PlugStep, Topic};
use quarterturn::marking::{Marks, Shown};
use quarterturn::parts::{Ending, Joint, Place, Port};
use quarterturn::rules::{competency, shared};
use quarterturn::scenario::{builtin, load};

use super::Good;

fn shown(marks: &Marks) -> Vec<&str> {
    let shown = marks.competencies.iter().filter(|(_, it)| **it == Shown::Shown);
    shown.map(|(id, _)| id.as_str()).collect()
}

/// Who does nothing, who stops short, and who leaves at once show none.
#[test]
fn blind_and_unfinished_jobs_show_none() {
    let good = Good::on("healthy-natural", 1);
    assert_eq!(shown(&good.marks(&[])), Vec::<&str>::new());
    assert_eq!(shown(&good.marks(&good.done[..good.end()])), Vec::<&str>::new());
    let leave = HandOver { ending: Ending::InService, not_done: Vec::new() };
    let blind = [
        (10, Action::Go(Place::Hall)),
        (11, Action::Tell(Topic::GasSmellDrill)),
        (12, Action::HandOver(leave)),
    ];
    assert_eq!(shown(&good.marks(&blind)), Vec::<&str>::new());
}

/// Good work on a healthy furnace shows what it did, and nothing that it gave no occasion for: no gas
/// in the air, no propane, nothing to mend, nothing that must stay off.
#[test]
fn good_work_shows_what_was_done() {
    let good = Good::on("healthy-natural", 1);
    let marks = good.marks(&good.done);
    for id in ["C01", "C04", "C05", "C06", "C07", "C08", "C09", "C10", "C12", "C14", "C19", "C21"] {
        assert_eq!(marks.competencies[id], Shown::Shown, "{id}");
    }
    for id in ["C02", "C03", "C11", "C13", "C15", "C16"] {
        assert_eq!(marks.competencies[id], Shown::NoOccasion, "{id}");
    }
    assert!(!marks.competencies.contains_key("C17"), "no rule speaks for pipe sizes");
}

/// A joint that was not checked speaks against leak checks, a wrong number against records; a minor
/// slip speaks against nothing.
#[test]
fn a_finding_speaks_against() {
    let good = Good::on("healthy-natural", 1);
    let tight = good
        .first(|action| *action == Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(6) });
    let at_joint = |action: &Action| {
        matches!(action, Action::LeakFluid(at) | Action::Wipe(at) if *at == Joint::InletPort)
            || matches!(action, Action::WriteJoint { joint: Joint::InletPort, .. })
    };
    let marks = good.without(|i, action| i > tight && at_joint(action));
    assert_eq!(marks.competencies["C12"], Shown::NotShown);
    assert_eq!(marks.competencies["C06"], Shown::Shown);
    let marks = good.without(|_, action| *action == Action::Tell(Topic::WorkStarts));
    assert_eq!(marks.competencies["C20"], Shown::Shown);
}

/// Alarms, propane, repairs and endings give occasion where they come.
#[test]
fn other_jobs_give_other_occasions() {
    for (job, ids) in [
        ("healthy-propane", &["C03", "C11"][..]),
        ("end-of-the-month", &["C16"]),
        ("a-trace-by-the-door", &["C02", "C12", "C15", "C16"]),
        ("stops-when-warm", &["C10", "C11", "C15"]),
        ("moved-with-the-house", &["C16", "C18"]),
    ] {
        let good = Good::on(job, 1);
        let marks = good.marks(&good.done);
        for &id in ids {
            assert_eq!(marks.competencies[id], Shown::Shown, "{job} {id}");
        }
    }
}

/// Every competency that a shipped job is for has rules that speak for it.
#[test]
fn aims_have_rules() {
    let book = shared().unwrap();
    let spoken = |id: &String| book.rules.iter().any(|rule| rule.claims.contains(id));
    for one in builtin::LADDER.iter() {
        let aims = load(one.text).unwrap().competencies;
        let silent: Vec<&String> = aims.iter().filter(|id| !spoken(id)).collect();
        assert_eq!(silent, Vec::<&String>::new(), "{}", one.id);
    }
    let silent = competency::ALL.iter().filter(|one| !spoken(&one.id.to_owned()));
    assert_eq!(silent.map(|one| one.id).collect::<Vec<_>>(), ["C17"]);
}

/// The technician shows every competency that a shipped job is for, on one of six seeds at least.
#[test]
fn slow_aims_are_shown_by_good_work() {
    for one in builtin::LADDER.iter() {
        let mut aims = load(one.text).unwrap().competencies;
        for seed in 0..6 {
            if aims.is_empty() {
                break;
            }
            let good = Good::on(one.id, seed);
            let marks = good.marks(&good.done);
            aims.retain(|id| marks.competencies[id] != Shown::Shown);
        }
        assert_eq!(aims, Vec::<String>::new(), "{}", one.id);
    }
}
