//! From rules and evidence to marks.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::brief::Brief;
use super::ledger::{Caught, Hit, Ledger};
use super::{
    adjusting, causes, control, faults_left, grounds, joints, measuring, repairs, safety, unread,
};
use crate::catalogue::repair::Nature;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::parts::Ending;
use crate::rules::{Essential, Evidence, Family, Rule, RuleBook, Severity};
use crate::setup::SupplyRight;
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
    /// Points lost for it, before the family's cap.
    pub lost: f64,
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
    /// Version of the rule file.
    pub rules_version: u32,
    /// Whether every essential that was due is met and the job was handed over.
    pub met: bool,
    /// Points out of 100.
    pub points: f64,
    /// Points lost in each group, capped.
    pub lost: BTreeMap<Family, f64>,
    /// The essentials, in order.
    pub essentials: Vec<EssentialMark>,
    /// What was found, most serious first.
    pub findings: Vec<Finding>,
    /// Competences: shown in this one job or not.
    pub claims: BTreeMap<String, bool>,
    /// Simulated seconds from arrival to the end.
    pub seconds: f64,
    /// What this is and is not.
    pub standing: String,
}

/// Judges a job that has ended. A job without an end is judged as it stands, and is not met.
#[must_use]
pub fn evaluate(book: &RuleBook, ledger: &Ledger, brief: &Brief) -> Marks {
    let all: Vec<(&Rule, Vec<Hit>)> =
        book.rules.iter().map(|rule| (rule, hits_due(rule.evidence, ledger, brief))).collect();
    let fired = |id: &String| {
        all.iter()
            .any(|(rule, hits)| rule.id == *id && hits.iter().any(|hit| hit.caught == Caught::No))
    };
    let is_cause = |hit: &Hit| hit.cause.is_none_or(|cause| !is_charged(&all, cause));
    let mut findings: Vec<Finding> = all
        .iter()
        .filter(|(rule, _)| !rule.follows_from.iter().any(fired))
        .filter_map(|(rule, hits)| {
            let causes: Vec<&Hit> = hits.iter().filter(|hit| is_cause(hit)).collect();
            finding(rule, &causes)
        })
        .collect();
    findings.sort_by(|a, b| b.severity.cmp(&a.severity).then(a.tick.cmp(&b.tick)));
    let mut lost: BTreeMap<Family, f64> = BTreeMap::new();
    for finding in &findings {
        *lost.entry(finding.family).or_default() += finding.lost;
    }
    for (family, points) in &mut lost {
        *points = points.min(book.caps.get(family).copied().unwrap_or(100.0));
    }
    let charged: Vec<&str> = findings.iter().map(|finding| finding.rule.as_str()).collect();
    let essentials = essentials(ledger, brief, &all, &charged);
    let ended = ledger.end().is_some_and(|(_, said, _)| said.is_some());
    let met = ended && essentials.iter().all(|mark| mark.standing != Standing::NotMet);
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let seconds = ledger.last_tick() as f64 * TICK_S;
    Marks {
        rules_version: book.version,
        met,
        points: (100.0 - lost.values().sum::<f64>()).max(0.0),
        lost,
        essentials,
        claims: claims(book, &findings),
        findings,
        seconds,
        standing: t!("marks-standing", rules = &book.standing),
    }
}

/// Whether a slip with this evidence is charged, and was not put right in time.
fn is_charged(all: &[(&Rule, Vec<Hit>)], evidence: Evidence) -> bool {
    all.iter().any(|(rule, hits)| {
        rule.evidence == evidence && hits.iter().any(|hit| hit.caught == Caught::No)
    })
}

/// A rule's finding, charged once and one point for each repeat.
fn finding(rule: &Rule, hits: &[&Hit]) -> Option<Finding> {
    let worst = hits.iter().find(|hit| hit.caught == Caught::No).or_else(|| hits.first())?;
    let (severity, weight) = match (worst.caught, rule.severity) {
        (Caught::No, severity) => (severity, rule.weight),
        (Caught::InTime, Severity::Critical) => (Severity::Major, 0.4 * rule.weight),
        (Caught::InTime, Severity::Major | Severity::Minor) => (Severity::Minor, 0.4 * rule.weight),
    };
    #[expect(clippy::cast_precision_loss, reason = "a handful of repeats")]
    let repeats = (hits.len() - 1) as f64;
    Some(Finding {
        rule: rule.id.clone(),
        version: rule.version,
        title: rule.title.clone(),
        family: rule.family,
        severity,
        lost: weight + repeats.min(weight),
        tick: worst.tick,
        times: hits.len(),
        seen: worst.seen.clone(),
        truth: worst.truth.clone(),
        why: rule.why.clone(),
        practise: rule.practise.clone(),
    })
}

/// What gates each essential: the causes that are charged, and only where there is none of them in
/// it the consequences.
fn essentials(
    l: &Ledger,
    brief: &Brief,
    all: &[(&Rule, Vec<Hit>)],
    charged: &[&str],
) -> Vec<EssentialMark> {
    Essential::ALL
        .into_iter()
        .map(|essential| {
            let mut because: Vec<String> = all
                .iter()
                .filter(|(rule, hits)| {
                    rule.essential == Some(essential)
                        && hits.iter().any(|hit| hit.caught == Caught::No)
                })
                .map(|(rule, _)| rule.id.clone())
                .collect();
            if because.iter().any(|id| charged.contains(&id.as_str())) {
                because.retain(|id| charged.contains(&id.as_str()));
            }
            let standing = if !because.is_empty() {
                Standing::NotMet
            } else if is_due(essential, l, brief) {
                Standing::Met
            } else {
                Standing::NotDue
            };
            EssentialMark { essential, standing, because }
        })
        .collect()
}

/// Whether the job gave occasion for an essential. One that every job asks for is always due: not
/// to have tried is not to have met it.
fn is_due(essential: Essential, l: &Ledger, brief: &Brief) -> bool {
    let opened =
        || l.did().any(|did| matches!(did.action, Action::Plug { .. } | Action::Adapter { .. }));
    match essential {
        Essential::AlarmResponse => {
            l.events.iter().any(|event| matches!(event.what, EventKind::Alarm))
        }
        Essential::Isolation | Essential::NoGasToOpenPort | Essential::PortsSealed => opened(),
        Essential::JointsChecked => {
            opened() || repairs::mended(l).any(|it| it.repair.disturbs().is_some())
        }
        Essential::MeterTrue => l.wrote().next().is_some(),
        Essential::BothStagesRead | Essential::InletWithOthers => !rightly_shut_off(l, brief),
        Essential::ConversionProven => !control::left_for_gas(l),
        // How it was left is not shown by a job that was not handed over.
        // Shut off, nothing is left set; and a supply that is somebody else's is theirs to set.
        Essential::SettingsInPlate => l.left().is_some() && !l.left_shut_off(),
        Essential::SupplyInLimits => {
            let mine = l.setup.card.supply == SupplyRight::Trainee;
            l.left().is_some() && !l.left_shut_off() && mine
        }
        // What was rightly left off has nothing to be put back on.
        Essential::Restored => l.left().is_some() && !rightly_shut_off(l, brief),
        Essential::NothingBypassed | Essential::RightEnding => l.left().is_some(),
        Essential::CauseNamed => causes::is_due(l),
    }
}

/// A competence counts as shown in this job when no finding speaks against it.
fn claims(book: &RuleBook, findings: &[Finding]) -> BTreeMap<String, bool> {
    let mut claims = BTreeMap::new();
    for rule in &book.rules {
        let failed = findings
            .iter()
            .any(|finding| finding.rule == rule.id && finding.severity > Severity::Minor);
        for claim in &rule.claims {
            let shown = claims.entry(claim.clone()).or_insert(true);
            *shown &= !failed;
        }
    }
    claims
}

/// Whether it was left shut off, that is the usual right end of this job, and something was found
/// that speaks for it.
pub(super) fn rightly_shut_off(l: &Ledger, brief: &Brief) -> bool {
    let usual = brief.right_endings.first() == Some(&Ending::ShutOff);
    usual && l.said_shut_off() && grounds::found(l)
}

/// Whether the evidence is a reading that was never taken.
fn is_unread(evidence: Evidence) -> bool {
    matches!(
        evidence,
        Evidence::StageNeverRead
            | Evidence::InletStateUnread
            | Evidence::NeverReadRunning
            | Evidence::NeverReadWithOthers
            | Evidence::HoldTooShort
    )
}

/// Hits of a rule's evidence, where the job gave occasion for it.
fn hits_due(evidence: Evidence, l: &Ledger, brief: &Brief) -> Vec<Hit> {
    // What is rightly shut off need not be fired for a reading.
    if is_unread(evidence) && rightly_shut_off(l, brief) {
        return Vec::new();
    }
    hits(evidence, l, brief)
}

/// Plugs across their threads: left so, or mended.
fn crossed(evidence: Evidence, l: &Ledger) -> Vec<Hit> {
    let (left, caught) = safety::cross_threads(l);
    if evidence == Evidence::CrossThreadLeft { left } else { caught }
}

/// Hits of each kind of evidence.
fn hits(evidence: Evidence, l: &Ledger, brief: &Brief) -> Vec<Hit> {
    match evidence {
        Evidence::WorkedOnAfterAlarm => safety::worked_on_after_alarm(l),
        Evidence::Ignition => safety::ignition(l),
        Evidence::NoSniffOnArrival => safety::no_sniff_on_arrival(l),
        Evidence::HeadHeightOnly => safety::head_height_only(l),
        Evidence::OpenedInletUnderGas => safety::opened_inlet_under_gas(l),
        Evidence::OpenedOnTrappedGas => safety::opened_on_trapped_gas(l),
        Evidence::OpenedManifoldFiring => safety::opened_manifold_firing(l),
        Evidence::GasFromOpenPort => safety::gas_from_open_port(l),
        Evidence::CalledWithPortOpen => safety::called_with_port_open(l),
        Evidence::LoosenedWithCockOpen => safety::loosened_with_valve_open(l),
        Evidence::PowerLeftOn => safety::power_left_on(l),
        Evidence::CrossThreadLeft | Evidence::CrossThreadCaught => crossed(evidence, l),
        Evidence::BossCracked => safety::boss_cracked(l),
        Evidence::Written(slip) => measuring::written(l, slip),
        Evidence::MeterOff(most) => measuring::meter_off(l, most.si()),
        Evidence::HoseHalfOn => measuring::hose_half_on(l),
        Evidence::ZeroedUnderPressure(most) => measuring::zeroed_under_pressure(l, most.si()),
        Evidence::StageNeverRead => unread::stage_never_read(l),
        Evidence::InletStateUnread => unread::inlet_state_unread(l),
        Evidence::NothingAsFound => unread::nothing_as_found(l),
        Evidence::NeverReadRunning => unread::never_read_running(l),
        Evidence::NeverReadWithOthers => unread::never_read_with_others(l),
        Evidence::HoldTooShort => unread::hold_too_short(l),
        Evidence::SupplyNotRechecked => unread::supply_not_rechecked(l),
        Evidence::TurnedBeforeFound => adjusting::turned_before_found(l),
        Evidence::TurnedBeforeInlet => adjusting::turned_before_inlet(l),
        Evidence::TurnedUnseen => adjusting::turned_unseen(l),
        Evidence::Cranked => adjusting::cranked(l),
        Evidence::LeftOutsideBand => adjusting::left_outside_band(l),
        Evidence::BigJumps(least) => adjusting::big_jumps(l, least.si()),
        Evidence::BottomedLeft => adjusting::bottomed(l).0,
        Evidence::BottomedOnce => adjusting::bottomed(l).1,
        Evidence::WrongScrew => adjusting::wrong_screw(l),
        Evidence::NeedlessTurn => adjusting::needless_turn(l),
        Evidence::CapOff => adjusting::cap_off(l),
        Evidence::NotReadWithCap => adjusting::not_read_with_cap(l),
        Evidence::SupplyNotYours => adjusting::supply_not_yours(l, brief),
        Evidence::SupplyLeftLow => adjusting::supply_left_low(l),
        Evidence::SupplyOverMaximum => adjusting::supply_over_maximum(l),
        Evidence::PlugLoose => joints::plug_loose(l),
        Evidence::AdapterLeft => joints::adapter_left(l),
        Evidence::PortLeftOpen => joints::port_left_open(l),
        Evidence::JointUnchecked => joints::unchecked(l).0,
        Evidence::JointCheckedWrongly => joints::unchecked(l).1,
        Evidence::BubblesLeft => joints::bubbles_left(l),
        Evidence::JointVerdict => joints::verdicts(l),
        Evidence::JointNotJudged => joints::not_judged(l),
        Evidence::ConversionNotProven => control::conversion_not_proven(l),
        Evidence::JumperLeft => control::jumper_left(l),
        Evidence::SafetyBypassed => repairs::safety_bypassed(l),
        Evidence::DangerousRepair => repairs::dangerous_repair(l),
        Evidence::FaultLeft => faults_left::fault_left(l, brief),
        Evidence::MeterFaultLeft => faults_left::meter_fault_left(l),
        Evidence::NeedlessRepair(first) => repairs::needless_repair(l, first),
        Evidence::PartsOnSuspicion(free) => repairs::on_suspicion(l, Nature::Part, free),
        Evidence::CareOnSuspicion(free) => repairs::on_suspicion(l, Nature::Care, free),
        Evidence::ValveSwitchOff => control::valve_switch_off(l),
        Evidence::CockNotOpen => control::hand_valve_not_open(l),
        Evidence::ControlsNotRestored => control::controls_not_restored(l),
        Evidence::DoorOff => control::door_off(l),
        Evidence::OthersNotRestored => control::others_not_restored(l),
        Evidence::NoFinalCycle => control::no_final_cycle(l),
        Evidence::OwnerNotCalled => control::owner_not_called(l, brief),
        Evidence::NeedlessCall => control::needless_call(l, brief),
        Evidence::WrongEnding => control::wrong_ending(l, brief),
        Evidence::NotTagged => control::not_tagged(l),
        Evidence::HouseholderNotTold => control::householder_not_told(l),
        Evidence::NotDoneUnsaid => control::not_done_unsaid(l),
        Evidence::Finding(of) => causes::hits(of, l, rightly_shut_off(l, brief)),
    }
}
