//! What is written as wrong: the technician names the cause of every fault of the catalogue, and
//! what anybody else writes on the same job is marked by it. Faults and severities are the
//! catalogue's own.

use std::sync::Mutex;

use quarterturn::bench::Bench;
use quarterturn::catalogue::cause::true_causes;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::Action;
use quarterturn::hands::refusal::Refusal;
use quarterturn::marking::evaluate::Standing;
use quarterturn::marking::{Brief, Marks, Observer};
use quarterturn::measure::causes::to_be_named;
use quarterturn::parts::{Answer, Backing, Cause, Port, Sight, WrittenFinding};
use quarterturn::rules::{Essential, shared};
use quarterturn::senses::seen::Seen;
use quarterturn::technician::proof::{Spoiling, prove_seed};
use quarterturn::technician::{Player, Technician, play};

use super::{faulty, healthy};

/// Faults whose cause the technician does not name, by bench, each with the reason: none.
const MISSES: &[(&str, &str, &str)] = &[];

/// The technician, with its findings written otherwise.
struct Writes {
    good: Technician,
    /// Written once instead of whatever the technician would write.
    instead: Option<Vec<WrittenFinding>>,
    queue: Vec<Action>,
    refused: Vec<String>,
}

impl Player for Writes {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        loop {
            if let Some(action) = self.queue.pop() {
                return Some(action);
            }
            let action = self.good.next(seen)?;
            if self.instead.is_none() || !matches!(action, Action::WriteFinding(_)) {
                return Some(action);
            }
            let instead = self.instead.replace(Vec::new()).unwrap_or_default();
            self.queue.extend(instead.into_iter().rev().map(Action::WriteFinding));
        }
    }

    fn refused(&mut self, action: &Action, why: Refusal) {
        self.refused.push(format!("{action:?}: {why:?}"));
    }

    fn finished(&self) -> bool {
        self.queue.is_empty() && self.good.finished()
    }
}

/// The marks of a job, with these findings or the technician's own, and what stands on the sheet.
fn marks(text: &str, instead: Option<Vec<WrittenFinding>>) -> (Marks, Vec<WrittenFinding>) {
    let scenario = quarterturn::scenario::load(text).unwrap();
    let mut bench = Bench::new(scenario.draw(0));
    let mut observer = Observer::new(&bench);
    let good = Technician::new(&bench.setup().card);
    let mut player = Writes { good, instead, queue: Vec::new(), refused: Vec::new() };
    let _ = play(&mut bench, &mut player, 6 * 3600, &mut observer);
    assert!(player.refused.is_empty(), "{:?}", player.refused);
    let brief = Brief { right_endings: scenario.right_endings(0) };
    (observer.marks(&shared().unwrap(), &brief), bench.seen().sheet.findings.clone())
}

fn rules(marks: &Marks) -> Vec<&str> {
    marks.findings.iter().map(|finding| finding.rule.as_str()).collect()
}

fn standing(marks: &Marks) -> Standing {
    let all = &marks.essentials;
    all.iter().find(|mark| mark.essential == Essential::CauseNamed).unwrap().standing
}

fn finding(cause: Cause, answer: Answer, evidence: &[Backing]) -> WrittenFinding {
    WrittenFinding { cause, answer, evidence: evidence.to_vec() }
}

/// What the technician wrote on a bench with a fault, where that does not name it.
fn missed(fuel: &str, fault: Fault) -> Option<String> {
    let text = faulty(fuel, fault.name(), "InService, ShutOff, SupplyOwnerCalled");
    let setup = quarterturn::scenario::load(&text).ok()?.draw(0);
    let (marks, written) = marks(&text, None);
    const OF_FINDINGS: [&str; 6] = [
        "cause-not-named",
        "wrong-cause",
        "wrong-cause-harms",
        "answer-contradicts",
        "finding-unbacked",
        "no-finding-written",
    ];
    let charged: Vec<&str> =
        rules(&marks).into_iter().filter(|rule| OF_FINDINGS.contains(rule)).collect();
    let told = || {
        let names: Vec<_> = written.iter().map(|one| (one.cause.id(), one.answer.id())).collect();
        let true_ones: Vec<_> = to_be_named(&setup).iter().map(|one| one.cause.id()).collect();
        format!("{charged:?}, written {names:?}, true {true_ones:?}")
    };
    (!charged.is_empty()).then(told)
}

/// The technician names every fault that can be felt, on both benches at typical severity, names
/// nothing that is not wrong, and says of each what it did.
#[test]
fn slow_the_technician_names_every_cause() {
    let wanted: Vec<(&str, Fault)> = ["natural", "propane"]
        .into_iter()
        .flat_map(|fuel| Fault::ALL.iter().map(move |&fault| (fuel, fault)))
        .collect();
    let waiting = Mutex::new(wanted);
    let told = Mutex::new(Vec::new());
    let work = || {
        loop {
            let Some((fuel, fault)) = waiting.lock().unwrap().pop() else { return };
            let listed = MISSES.iter().any(|it| (it.0, it.1) == (fuel, fault.name()));
            match (missed(fuel, fault), listed) {
                (Some(how), false) => {
                    told.lock().unwrap().push(format!("{fuel} {}: {how}", fault.name()));
                }
                (None, true) => {
                    let name = fault.name();
                    told.lock().unwrap().push(format!("{fuel} {name} is named: off the list"));
                }
                (Some(_), true) | (None, false) => {}
            }
        }
    };
    let hands = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    std::thread::scope(|scope| {
        for _ in 0..hands {
            scope.spawn(work);
        }
    });
    let mut told = told.into_inner().unwrap();
    told.sort();
    assert!(told.is_empty(), "{}", told.join("\n"));
}

/// On a sound bench nothing is found, and that is written; an empty sheet costs.
#[test]
fn nothing_wrong_is_a_finding_too() {
    for fuel in ["natural", "propane"] {
        let (good, written) = marks(&healthy(fuel), None);
        assert_eq!(rules(&good), [""; 0], "{fuel}");
        assert!(written.iter().all(|one| one.cause == Cause::NothingFound), "{written:?}");
        assert_eq!(standing(&good), Standing::NotDue, "{fuel}");
    }
    let (none, _) = marks(&healthy("natural"), Some(Vec::new()));
    assert_eq!(rules(&none), ["no-finding-written"]);
}

/// On a sound bench a cause on the sheet is a false report, whatever it blames: the job is not met.
#[test]
fn a_sound_bench_is_not_said_to_have_a_fault() {
    let slow = || finding(Cause::BlowerTooSlow, Answer::Mended, &[]);
    let leak = || finding(Cause::UnionLeaks, Answer::Mended, &[]);
    for (instead, charged) in [
        (vec![slow()], "wrong-cause"),
        (vec![leak()], "wrong-cause-harms"),
        (vec![leak(), slow()], "wrong-cause"),
    ] {
        let (marks, _) = marks(&healthy("natural"), Some(instead.clone()));
        assert!(rules(&marks).contains(&charged), "{instead:?}");
        assert_eq!(standing(&marks), Standing::NotMet, "{instead:?}");
    }
}

/// A manual valve that was found half shut is opened by whoever isolates and restores; unless that
/// is written, the cause was passed unseen. What is written instead is marked by its harm.
#[test]
fn a_valve_found_half_shut_is_not_passed_unseen() {
    let text = faulty("natural", "partly_open_manual_valve", "InService");
    let handle = [Backing::Sight(Sight::ManualValve)];
    let named = finding(Cause::ManualValvePartOpen, Answer::Opened, &handle);
    let leak = finding(Cause::UnionLeaks, Answer::LeftAsItIs, &[]);
    let slow = finding(Cause::BlowerTooSlow, Answer::LeftAsItIs, &[]);
    let nothing = finding(Cause::NothingFound, Answer::LeftAsItIs, &[]);
    let bare = finding(Cause::ManualValvePartOpen, Answer::Opened, &[]);
    let untrue = finding(Cause::ManualValvePartOpen, Answer::ShutOff, &handle);
    let not_met = Standing::NotMet;
    for (instead, charged, stands) in [
        (vec![named.clone()], vec![], Standing::Met),
        (vec![], vec!["cause-not-named"], not_met),
        (vec![nothing], vec!["cause-not-named"], not_met),
        (vec![slow.clone()], vec!["cause-not-named", "wrong-cause"], not_met),
        (vec![leak.clone()], vec!["wrong-cause-harms", "cause-not-named"], not_met),
        (vec![named.clone(), slow], vec!["wrong-cause"], Standing::Met),
        (vec![named, leak], vec!["wrong-cause-harms"], Standing::Met),
        (vec![bare], vec!["finding-unbacked"], Standing::Met),
        (vec![untrue], vec!["answer-contradicts"], Standing::Met),
    ] {
        let (marks, _) = marks(&text, Some(instead.clone()));
        let mut found = rules(&marks);
        let mut charged = charged;
        found.sort_unstable();
        charged.sort_unstable();
        assert_eq!(found, charged, "{instead:?}");
        assert_eq!(standing(&marks), stands, "{instead:?}");
        assert_eq!(marks.verdict.is_met(), stands == Standing::Met, "{instead:?}");
    }
}

/// A screw out of its band and a regulator set low that no fault put there are drawn as found, and
/// are causes like any other.
#[test]
fn what_is_drawn_as_found_is_a_cause() {
    for (job, wanted) in [
        ("propane-cold-morning", vec![Cause::SupplySetLow, Cause::LowSetLow]),
        ("natural-gas-busy-kitchen", vec![Cause::HighSetHigh, Cause::SupplySetLow]),
        ("healthy-natural", vec![]),
        ("healthy-propane", vec![]),
    ] {
        let text = quarterturn::scenario::builtin::find(job).unwrap().text;
        let setup = quarterturn::scenario::load(text).unwrap().draw(3);
        let mut found: Vec<Cause> = true_causes(&setup).iter().map(|one| one.cause).collect();
        let mut wanted = wanted;
        found.sort_unstable();
        wanted.sort_unstable();
        assert_eq!(found, wanted, "{job}");
    }
}

/// What contradicts itself, or rests on what is on no sheet, is refused.
#[test]
fn a_finding_that_contradicts_itself_is_refused() {
    let text = healthy("natural");
    let mut bench = Bench::new(quarterturn::scenario::load(&text).unwrap().draw(0));
    let mut write = |cause, answer, evidence: &[Backing]| {
        bench.apply(&Action::WriteFinding(finding(cause, answer, evidence)))
    };
    let left = Answer::LeftAsItIs;
    let unread = Backing::Reading {
        port: Port::Inlet,
        stage: quarterturn::parts::Stage::Rest,
        phase: quarterturn::parts::Phase::Found,
    };
    assert_eq!(write(Cause::NothingFound, Answer::Mended, &[]), Err(Refusal::NothingToAnswer));
    assert_eq!(write(Cause::SupplySetLow, left, &[unread]), Err(Refusal::NotOnSheet));
    let twice = [Backing::Sight(Sight::Smell); 2];
    assert_eq!(write(Cause::UnionLeaks, left, &twice), Err(Refusal::TooMuchEvidence));
    assert_eq!(write(Cause::UnionLeaks, left, &twice[..1]), Ok(()));
    assert_eq!(write(Cause::UnionLeaks, left, &[]), Err(Refusal::FindingStands));
    assert_eq!(write(Cause::NothingFound, left, &[]), Err(Refusal::NothingBesideSomething));
    for &cause in Cause::ALL.iter().take(WrittenFinding::MOST - 1) {
        assert_eq!(write(cause, left, &[]), Ok(()), "{cause:?}");
    }
    assert_eq!(write(Cause::BossCracked, left, &[]), Err(Refusal::TooManyFindings));
    assert_eq!(bench.apply(&Action::StrikeFinding(Cause::UnionLeaks)), Ok(()));
    let again = bench.apply(&Action::StrikeFinding(Cause::UnionLeaks));
    assert_eq!(again, Err(Refusal::NoSuchFinding));
    assert_eq!(bench.seen().sheet.findings.len(), WrittenFinding::MOST - 1);
}

/// On seeds where the seat has crept so far that nothing lights, what was purged before the pressure
/// was read is no cause.
#[test]
fn far_too_much_pressure_explains_burners_that_did_not_light() {
    let text = quarterturn::scenario::builtin::find("a-letter-about-the-yard").unwrap().text;
    let scenario = quarterturn::scenario::load(text).unwrap();
    for seed in [7, 13, 18] {
        let proof = prove_seed(&scenario, seed, Spoiling::No).unwrap();
        assert!(proof.is_full(), "seed {seed}: {:?}", proof.findings);
    }
}
