//! What is practised next: every rule names a shipped job that fits it, and nobody is told to fire a
//! furnace that must stay off.

use std::collections::BTreeSet;

use quarterturn::hands::action::Action;
use quarterturn::marking::Brief;
use quarterturn::marking::debrief::{Job, debrief};
use quarterturn::parts::Ending;
use quarterturn::rules::shared;
use quarterturn::scenario::{Scenario, builtin, load};

use super::Good;

/// Competencies that no shipped job names as its aim: rules that speak for one of these alone go to
/// a job by what is done there.
const NO_JOB: [&str; 3] = ["C09", "C13", "C17"];

/// Words of texts that have a furnace run: in a text for one that must stay off none of them may
/// stand.
const FIRES: [&str; 16] = [
    "force",
    "fire ",
    "firing",
    "burner",
    "light it",
    "relight",
    "light every",
    "light-up",
    "last act: call",
    "low, high",
    "everything on",
    "full load",
    "full connected load",
    "valve on",
    "switch on",
    "call for heat",
];

fn scenario(id: &str) -> Scenario {
    load(builtin::find(id).unwrap_or_else(|| panic!("{id} does not ship")).text).unwrap()
}

/// Jobs whose usual right end is to leave the furnace shut off, on some seed.
fn shut_off_jobs() -> Vec<(&'static str, Scenario)> {
    let all = builtin::LADDER.iter().map(|one| (one.id, load(one.text).unwrap()));
    let stays =
        |it: &Scenario| (0..2).any(|seed| it.right_endings(seed).first() == Some(&Ending::ShutOff));
    all.filter(|(_, it)| stays(it)).collect()
}

fn fires(text: &str) -> Option<&'static str> {
    let text = text.to_lowercase();
    FIRES.into_iter().find(|word| text.contains(word))
}

/// Every rule names a job that ships and has a competency of the rule among its aims, usually and
/// where the furnace must stay off.
#[test]
fn every_rule_names_a_job_that_fits() {
    for rule in shared().unwrap().rules {
        let aims: BTreeSet<String> = scenario(&rule.job).competencies.into_iter().collect();
        let only_without = rule.claims.iter().all(|id| NO_JOB.contains(&id.as_str()));
        let fits = rule.claims.iter().any(|id| aims.contains(id)) || only_without;
        assert!(fits, "{}: {:?} in {} {aims:?}", rule.id, rule.claims, rule.job);
        for practice in [rule.practice(false), rule.practice(true)] {
            scenario(&practice.job);
            assert!(practice.practise.ends_with(['.', '?']), "{}", rule.id);
        }
    }
}

/// The words that are looked for are those by which the usual texts have a furnace run: a rule whose
/// usual text does has another one for a furnace that must stay off.
#[test]
fn no_text_fires_a_furnace_that_must_stay_off() {
    let book = shared().unwrap();
    let usual = book.rules.iter().filter(|rule| fires(&rule.practice(false).practise).is_some());
    assert!(usual.count() >= 5, "the words find the usual texts");
    let jobs = shut_off_jobs();
    assert!(jobs.len() >= 4, "{}", jobs.len());
    for (id, job) in &jobs {
        for rule in &book.rules {
            let text = rule.practice(true).practise;
            assert_eq!(fires(&text), None, "{id}, {}: {text}", rule.id);
        }
        let note = job.debrief.clone().unwrap_or_default();
        for told in ["light it now", "run it", "turn it on"] {
            assert!(!note.contains(told), "{id}: {note}");
        }
    }
}

/// On a job that must end shut off, whatever is left out of good work or handed over blind in any of
/// the three ways, neither the findings nor what to practise next has the furnace run.
#[test]
fn slow_debriefs_of_unsafe_furnaces_fire_nothing() {
    for (id, _) in shut_off_jobs() {
        let good = Good::on(id, 1);
        let blind = |ending: Ending| {
            let mut done = good.done[good.end()..].to_vec();
            if let Action::HandOver(said) = &mut done[0].1 {
                said.ending = ending;
            }
            done
        };
        let endings = [Ending::InService, Ending::SupplyOwnerCalled, Ending::ShutOff];
        let mut ways: Vec<_> = endings.map(blind).to_vec();
        ways.push(good.done.clone());
        ways.push(good.done[good.done.len() / 2..].to_vec());
        for done in ways {
            let observer = good.observed(&done);
            let in_use = observer.ledger.ending() != Some(Ending::ShutOff);
            let marks = good.marked(&observer, &shared().unwrap());
            let brief = Brief { right_endings: good.endings.clone() };
            let job = Job { brief: &brief, id: Some(id), note: None, night: None };
            let told = debrief(&observer.ledger, marks, observer.trace, job);
            // Mended and left in use, it may burn.
            let mended = done.iter().any(|(_, action)| matches!(action, Action::Mend(_)));
            if mended && in_use {
                continue;
            }
            for finding in &told.marks.findings {
                assert_eq!(fires(&finding.practise), None, "{id}, {}", finding.rule);
            }
            let next = told.account.next.unwrap();
            if let Some(part) = &next.part {
                assert_eq!(fires(part), None, "{id}: {part}");
            }
            assert!(builtin::find(&next.job).is_some() && next.words.contains(&next.title));
        }
    }
}
