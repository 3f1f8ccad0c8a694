//! From rules and evidence to marks.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::ask::hits_due;
use super::brief::Brief;
use super::ended::stays_off;
use super::judged::Judged;
use super::ledger::Ledger;
use super::shown::{Shown, competencies};
use super::verdict::Verdict;
use super::{due, safety, score};
use crate::parts::Ending;
use crate::rules::{Essential, Evidence, Family, Practice, RuleBook, Severity};
use crate::units::TICK_S;

/// One slip that was found.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Finding {
    /// Which rule, and its version.
    pub rule: String,
    /// Version of the rule, as the rule book counts it.
    pub version: u32,
    /// What it is, in a few words.
    pub title: String,
    /// Family of rules, whose loss is capped together.
    pub family: Family,
    /// How serious, after downgrading what was caught in time.
    pub severity: Severity,
    /// Essential that it fails.
    pub fails: Option<Essential>,
    /// Points lost for it, before the family's cap; none where the job is given no points.
    pub cost: Option<f64>,
    /// When, in ticks; the first if it happened more than once.
    pub tick: u64,
    /// Times that the rule was broken, from 1.
    pub times: usize,
    /// What was seen or done.
    pub seen: String,
    /// State of the bench at that moment, as the trainee could not know it.
    pub truth: String,
    /// Harm that the rule guards against, in a sentence.
    pub why: String,
    /// What to practise next.
    pub practise: String,
    /// Shipped job on which it is practised.
    pub job: String,
}

/// How an essential stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Standing {
    /// No rule that gates it was broken.
    Met,
    /// A rule that gates it was broken.
    NotMet,
    /// There was no occasion for it.
    NotDue,
    /// The job was not handed over, and nothing was broken that gates it.
    Open,
}

/// An essential with what gates it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct EssentialMark {
    /// Essential that is judged.
    pub essential: Essential,
    /// Outcome, with "not due" where the job gave no occasion.
    pub standing: Standing,
    /// Rules that it failed on.
    pub because: Vec<String>,
}

/// The result of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Marks {
    /// Met or not yet met, with what is missing or the points.
    #[serde(flatten)]
    pub verdict: Verdict,
    /// Version of the rule file.
    pub rules_version: u32,
    /// The essentials, in order.
    pub essentials: Vec<EssentialMark>,
    /// What was found, most serious first.
    pub findings: Vec<Finding>,
    /// Each competency that rules speak for, and whether this one job shows it.
    pub competencies: BTreeMap<String, Shown>,
    /// Simulated seconds from arrival to the end.
    pub seconds: f64,
    /// What this is and is not.
    pub standing: String,
}

/// Judges a job that has ended. A job without an end is judged as far as it went, and is not met.
#[must_use]
pub fn evaluate(book: &RuleBook, ledger: &Ledger, brief: &Brief) -> Marks {
    let ask = |rule| Judged { rule, hits: hits_due(rule, ledger, brief) };
    let all: Vec<Judged<'_>> = book.rules.iter().map(ask).collect();
    let broken = |id: &String| all.iter().any(|it| it.rule.id == *id && it.is_broken());
    let caused =
        |evidence: Evidence| all.iter().any(|it| it.rule.evidence == evidence && it.is_broken());
    let charged: Vec<Judged<'_>> = all
        .iter()
        .filter(|it| !it.rule.follows_from.iter().any(broken))
        .map(|it| it.without(|hit| hit.cause.is_some_and(caused)))
        .filter(|it| !it.hits.is_empty())
        .collect();
    let essentials = essentials(book, ledger, brief, &all, &charged);
    let verdict = verdict(book, ledger, &essentials, &charged);
    let stays_off = stays_off(brief) && !is_rightly_in_use(ledger, brief, &essentials);
    let mut findings: Vec<Finding> =
        charged.iter().filter_map(|it| finding(book, it, &verdict, stays_off)).collect();
    findings.sort_by(|a, b| b.severity.cmp(&a.severity).then(a.tick.cmp(&b.tick)));
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let seconds = ledger.last_tick() as f64 * TICK_S;
    Marks {
        verdict,
        rules_version: book.version,
        essentials,
        competencies: competencies(book, ledger, brief, &charged),
        findings,
        seconds,
        standing: t!("marks-standing", rules = &book.standing),
    }
}

/// Met only where it was handed over and no essential is missing; points only then.
fn verdict(
    book: &RuleBook,
    ledger: &Ledger,
    essentials: &[EssentialMark],
    charged: &[Judged<'_>],
) -> Verdict {
    let missing = essentials.iter().filter(|mark| mark.standing == Standing::NotMet);
    let missing: Vec<Essential> = missing.map(|mark| mark.essential).collect();
    if safety::is_ended_by_itself(ledger) && charged.is_empty() {
        Verdict::EndedByItself
    } else if ledger.left().is_none() {
        Verdict::NotHandedOver { missing }
    } else if missing.is_empty() {
        let (points, lost) = score::points(book, charged);
        Verdict::Met { points, of: book.scoring.full, lost }
    } else {
        Verdict::NotYetMet { missing }
    }
}

/// Whether it was handed over to run, that is right on this job as well, and nothing that was found
/// says that it must not.
fn is_rightly_in_use(l: &Ledger, brief: &Brief, essentials: &[EssentialMark]) -> bool {
    const ASKED: [Essential; 3] =
        [Essential::RightEnding, Essential::ConversionProven, Essential::NothingBypassed];
    let failed =
        |it: &EssentialMark| it.standing == Standing::NotMet && ASKED.contains(&it.essential);
    let ending = l.ending().filter(|ending| *ending != Ending::ShutOff);
    ending.is_some_and(|it| brief.right_endings.contains(&it)) && !essentials.iter().any(failed)
}

/// The finding of a rule that was broken.
fn finding(
    book: &RuleBook,
    judged: &Judged<'_>,
    verdict: &Verdict,
    stays_off: bool,
) -> Option<Finding> {
    let (rule, worst) = (judged.rule, judged.worst()?);
    let Practice { job, practise } = rule.practice(stays_off);
    let charge = judged.charge(book)?;
    Some(Finding {
        rule: rule.id.clone(),
        version: rule.version,
        title: rule.title.clone(),
        family: rule.family,
        severity: charge.severity,
        fails: rule.essential.filter(|_| charge.gates),
        cost: verdict.is_met().then(|| score::cost(book, charge.points, judged.hits.len())),
        tick: worst.tick,
        times: judged.hits.len(),
        seen: worst.seen.clone(),
        truth: worst.truth.clone(),
        why: rule.why.clone(),
        practise,
        job,
    })
}

/// What gates each essential: the causes that are charged, and only where there is none of them in
/// it the consequences.
fn essentials(
    book: &RuleBook,
    l: &Ledger,
    brief: &Brief,
    all: &[Judged<'_>],
    charged: &[Judged<'_>],
) -> Vec<EssentialMark> {
    let is_charged = |id: &String| charged.iter().any(|it| it.rule.id == *id);
    Essential::ALL
        .into_iter()
        .map(|essential| {
            let gating = all.iter().filter(|it| it.rule.essential == Some(essential));
            let gating = gating.filter(|it| it.gates(book));
            let mut because: Vec<String> = gating.map(|it| it.rule.id.clone()).collect();
            if because.iter().any(is_charged) {
                because.retain(is_charged);
            }
            let standing = if !because.is_empty() {
                Standing::NotMet
            } else if l.left().is_none() {
                Standing::Open
            } else if due::is_due(essential, l, brief) {
                Standing::Met
            } else {
                Standing::NotDue
            };
            EssentialMark { essential, standing, because }
        })
        .collect()
}
