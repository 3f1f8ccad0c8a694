//! What a fair run does otherwise than the technician: sequences are really taken, waits count from
//! what is done, and every job draws manners and sequences of its own.

use std::collections::{BTreeMap, BTreeSet};

use quarterturn::bench::Bench;
use quarterturn::bench::run::Witness;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep, Topic};
use quarterturn::hands::event::Event;
use quarterturn::hands::refusal::Refusal;
use quarterturn::marking::{Brief, Marks, Observer};
use quarterturn::parts::{
    Fitted, HandValve, Height, Joint, Level, OnOff, Opening, OtherAppliance, Port, Stage, Subject,
    Tool, Window,
};
use quarterturn::rng::stream;
use quarterturn::rules::shared;
use quarterturn::scenario::builtin::{LADDER, find};
use quarterturn::scenario::load;
use quarterturn::senses::seen::Sound;
use quarterturn::technician::fairness::{Fair, Manner, Sequence};
use quarterturn::technician::play;
use quarterturn::units::TICKS_PER_S;

use super::faulty;

/// An action that was done.
struct Done {
    tick: u64,
    action: Action,
    /// Whether burners were heard meanwhile.
    burning: bool,
}

/// A run that was played to its end.
struct Played {
    done: Vec<Done>,
    marks: Marks,
}

struct Watcher {
    observer: Observer,
    done: Vec<Done>,
}

impl Witness for Watcher {
    fn acted(&mut self, bench: &Bench, action: &Action, result: Result<(), Refusal>) {
        assert_eq!(result, Ok(()), "{action:?}");
        let burning = bench.seen().sounds.iter().any(|it| matches!(it, Sound::Burners(_)));
        self.done.push(Done { tick: bench.tick(), action: action.clone(), burning });
    }

    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        self.observer.ticked(bench, events);
    }
}

/// A fair run of a job's seed in these manners and sequences; `run` draws how long it waits.
fn played(job: &str, seed: u64, manners: &[Manner], sequences: &[Sequence], run: u64) -> Played {
    played_on(find(job).unwrap().text, seed, manners, sequences, run)
}

/// The same on a job of this text.
fn played_on(
    text: &str,
    seed: u64,
    manners: &[Manner],
    sequences: &[Sequence],
    run: u64,
) -> Played {
    let scenario = load(text).unwrap();
    let mut bench = Bench::new(scenario.draw(seed));
    let chance = stream(run, "manners-of-a-test");
    let card = bench.setup().card.clone();
    let mut player = Fair::with(&card, manners.to_vec(), sequences.to_vec(), chance);
    let mut watcher = Watcher { observer: Observer::new(&bench), done: Vec::new() };
    let _ = play(&mut bench, &mut player, 6 * 3600, &mut watcher);
    let brief = Brief { right_endings: scenario.right_endings(seed) };
    let marks = watcher.observer.marks(&shared().unwrap(), &brief);
    Played { done: watcher.done, marks }
}

impl Played {
    fn lost_nothing(&self) -> bool {
        self.marks.verdict.is_met() && self.marks.findings.is_empty()
    }

    /// Place of the first such action.
    fn first(&self, such: fn(&Action) -> bool) -> usize {
        self.done.iter().position(|it| such(&it.action)).unwrap()
    }

    /// Place of the last such action.
    fn last(&self, such: fn(&Action) -> bool) -> usize {
        self.done.iter().rposition(|it| such(&it.action)).unwrap()
    }

    /// Ports, states and phases that were read.
    fn readings(&self) -> BTreeSet<String> {
        let read = |it: &Done| match &it.action {
            Action::Write(it) => Some(format!("{:?} {:?} {:?}", it.port, it.stage, it.phase)),
            _ => None,
        };
        self.done.iter().filter_map(read).collect()
    }

    /// Seconds from each such action to the next of another kind.
    fn gaps_s(&self, from: fn(&Action) -> bool, to: fn(&Action) -> bool) -> Vec<u64> {
        let mut gaps = Vec::new();
        for (place, begin) in self.done.iter().enumerate().filter(|(_, it)| from(&it.action)) {
            let end = self.done[place..].iter().find(|it| to(&it.action)).unwrap();
            gaps.push((end.tick - begin.tick) / TICKS_PER_S);
        }
        gaps
    }
}

type Such = fn(&Action) -> bool;

/// A sequence with a job, what the technician does first there, and what comes before it then.
const TAKEN: [(Sequence, &str, Such, Such); 16] = [
    (
        Sequence::DetectorFirst,
        "healthy-natural",
        |it| *it == Action::Sniff(Height::Floor),
        |it| *it == Action::Probe(Height::Head),
    ),
    (
        Sequence::FurnaceFirst,
        "healthy-natural",
        |it| *it == Action::Look(Subject::SupplyRegulator),
        |it| *it == Action::Look(Subject::Vent),
    ),
    (
        Sequence::AirsFirst,
        "healthy-propane",
        |it| *it == Action::Look(Subject::Plate),
        |it| *it == Action::Window { window: Window::PlantRoom, to: Opening::Open },
    ),
    (
        Sequence::IsolatesFirst,
        "healthy-natural",
        |it| *it == Action::Look(Subject::Vent),
        |it| *it == Action::FurnaceSwitch(OnOff::Off),
    ),
    (
        Sequence::PapersLate,
        "healthy-propane",
        |it| *it == Action::Look(Subject::Plate),
        |it| *it == Action::FurnaceSwitch(OnOff::Off),
    ),
    (
        Sequence::LooksBackwards,
        "healthy-natural",
        |it| *it == Action::Look(Subject::Orifices),
        |it| *it == Action::Look(Subject::LowGasSwitch),
    ),
    (
        Sequence::FilterLast,
        "healthy-natural",
        |it| *it == Action::Look(Subject::Filter),
        |it| *it == Action::Look(Subject::Orifices),
    ),
    (
        Sequence::DrillFirst,
        "healthy-natural",
        |it| matches!(it, Action::Plug { .. }),
        |it| *it == Action::Tell(Topic::GasSmellDrill),
    ),
    (
        Sequence::MeterFirst,
        "healthy-natural",
        |it| *it == Action::Look(Subject::Plate),
        |it| *it == Action::MeterPower(OnOff::On),
    ),
    (
        Sequence::ZeroesFirst,
        "healthy-natural",
        |it| matches!(it, Action::Plug { step: PlugStep::BreakLoose, .. }),
        |it| *it == Action::MeterZero,
    ),
    (
        Sequence::GasBeforePower,
        "healthy-natural",
        |it| *it == Action::FurnaceSwitch(OnOff::Off),
        |it| matches!(it, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 }),
    ),
    (Sequence::SwitchBeforeValve, "healthy-natural", is_gas_let_in, |it| {
        *it == Action::ValveSwitch(OnOff::On)
    }),
    (Sequence::FluidFirst, "healthy-propane", is_gas_let_in, |it| {
        *it == Action::Take(Tool::LeakFluid)
    }),
    (
        Sequence::FullRateFirst,
        "healthy-propane",
        |it| reads(it, Level::Low),
        |it| reads(it, Level::High),
    ),
    (
        Sequence::RangeFirst,
        "healthy-natural",
        |it| turns(it, OtherAppliance::WaterHeater),
        |it| turns(it, OtherAppliance::Range),
    ),
    (
        Sequence::FindingsFirst,
        "healthy-natural",
        |it| *it == Action::Tell(Topic::GasSmellDrill),
        |it| matches!(it, Action::WriteFinding(_)),
    ),
];

fn is_gas_let_in(action: &Action) -> bool {
    matches!(action, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 1.. })
}

fn reads(action: &Action, level: Level) -> bool {
    matches!(action, Action::Write(it) if it.stage == Stage::Firing(level))
}

fn turns(action: &Action, which: OtherAppliance) -> bool {
    matches!(action, Action::OtherAppliance { appliance, .. } if *appliance == which)
}

/// Each sequence turns round what the technician does: what it does first comes second then. The same
/// readings are written, and nothing is lost.
#[test]
fn a_sequence_is_really_taken_and_costs_nothing() {
    let mut usual: BTreeMap<&str, Played> = BTreeMap::new();
    for (sequence, job, first, second) in TAKEN {
        let usual = usual.entry(job).or_insert_with(|| played(job, 0, &[], &[], 0));
        assert!(usual.lost_nothing() && usual.first(first) < usual.first(second), "{sequence:?}");
        let other = played(job, 0, &[], &[sequence], 0);
        assert!(other.first(second) < other.first(first), "{sequence:?}");
        assert!(other.lost_nothing(), "{sequence:?}: {:?}", other.marks.findings);
        assert_eq!(usual.readings(), other.readings(), "{sequence:?}");
    }
    let told: BTreeSet<Sequence> = TAKEN.iter().map(|it| it.0).collect();
    let others = [Sequence::JointsTogether, Sequence::OthersBeforeRest];
    let missing = Sequence::ALL.iter().filter(|it| !told.contains(it) && !others.contains(it));
    assert_eq!(missing.count(), 0);
}

/// With the joints checked together the plug of the inlet port is brushed once the manometer is on the
/// manifold port, and before anything is lit; else before that port is opened.
#[test]
fn joints_are_checked_one_by_one_or_together() {
    let brushes_inlet: Such = |it| *it == Action::LeakFluid(Joint::InletPort);
    let at_manifold: Such = |it| *it == Action::Adapter { port: Port::Manifold, to: Fitted::On };
    let usual = played("healthy-natural", 0, &[], &[], 0);
    assert!(usual.last(brushes_inlet) < usual.first(at_manifold));
    let together = played("healthy-natural", 0, &[], &[Sequence::JointsTogether], 0);
    let brushed = together.last(brushes_inlet);
    assert!(together.first(at_manifold) < brushed && !together.done[brushed].burning);
    assert!(together.lost_nothing(), "{:?}", together.marks.findings);
}

/// The other appliances are put back while the furnace still burns, or once it stands.
#[test]
fn other_appliances_are_put_back_before_or_after_the_last_rest() {
    let job = "one-screw-one-number";
    let others: Such = |it| matches!(it, Action::OtherAppliance { .. });
    let usual = played(job, 0, &[], &[], 0);
    assert!(!usual.done[usual.last(others)].burning);
    let before = played(job, 0, &[], &[Sequence::OthersBeforeRest], 0);
    assert!(before.done[before.last(others)].burning);
    assert!(before.lost_nothing(), "{:?}", before.marks.findings);
}

/// A hand that waits before an act loses none of the waits after it: gas trickles for three seconds
/// before the valve is opened, leak fluid is watched for fifteen from the brush, and the meter rests
/// four after another hose before it is zeroed. A run that never waits has the same waits.
#[test]
fn waits_count_from_what_is_done() {
    let mut swapped = 0;
    for run in 0..4 {
        let manners: &[Manner] = if run == 0 { &[] } else { &[Manner::TakesTime] };
        for job in ["thaw-week", "wet-and-windy"] {
            let played = played(job, 1, manners, &[], run);
            let trickles = played.gaps_s(
                |it| {
                    matches!(it, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 20 })
                },
                |it| {
                    matches!(it, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 })
                },
            );
            assert!(!trickles.is_empty() && trickles.iter().all(|it| *it >= 3), "{trickles:?}");
            let watched = played.gaps_s(
                |it| matches!(it, Action::LeakFluid(_)),
                |it| matches!(it, Action::WriteJoint { .. }),
            );
            assert!(!watched.is_empty() && watched.iter().all(|it| *it >= 14), "{watched:?}");
            let rests = played.gaps_s(
                |it| *it == Action::Mend(Repair::SwapMeterHose),
                |it| *it == Action::MeterZero,
            );
            assert!(rests.iter().all(|it| *it >= 4), "{rests:?}");
            swapped += rests.len();
            assert!(played.lost_nothing(), "{job} {run}: {:?}", played.marks.findings);
        }
    }
    assert!(swapped >= 4, "{swapped}");
}

/// A screw that takes so long to set that the room comes to its setpoint meanwhile: heat is called for
/// again and the setting goes on. One that is set sooner is set in one call.
#[test]
fn a_call_that_ends_while_a_screw_is_turned_is_made_again() {
    let turns: Such = |it| matches!(it, Action::Turn { .. });
    let calls = |severity: &str, manners: &[Manner]| {
        let text = faulty("natural", &format!("low_stage_set_high(\"{severity}\")"), "InService");
        let played = played_on(&text, 0, manners, &[], 0);
        assert!(played.lost_nothing(), "{severity}: {:?}", played.marks.findings);
        let turning = &played.done[played.first(turns)..played.last(turns)];
        turning.iter().filter(|it| matches!(it.action, Action::Setpoint(_))).count()
    };
    assert!(calls("4 inH2O", &[Manner::Overshoots]) > 0);
    assert_eq!(calls("0.7 inH2O", &[Manner::Overshoots]), 0);
}

/// Plate and label are read at the furnace, wherever a repair before them has led.
#[test]
fn papers_that_are_read_late_are_read_at_the_furnace() {
    let text = faulty("natural", "blocked_regulator_vent(0.9)", "InService");
    let late = played_on(&text, 0, &[], &[Sequence::PapersLate], 0);
    let plate = late.first(|it| *it == Action::Look(Subject::Plate));
    assert!(late.first(|it| matches!(it, Action::Mend(_))) < plate);
    assert!(late.lost_nothing(), "{:?}", late.marks.findings);
}

/// A run's number draws others on each job, and over all jobs every manner and every sequence comes up
/// often: at least half as often as chance has it.
#[test]
fn every_job_draws_its_own_and_every_manner_comes_up() {
    let runs = 30;
    let (mut manners, mut sequences) = (BTreeMap::new(), BTreeMap::new());
    let (mut first, mut all) = (BTreeSet::new(), 0);
    for one in LADDER {
        let card = load(one.text).unwrap().draw(0).card;
        for run in 0..runs {
            let fair = Fair::new(&card, run);
            if run == 0 {
                first.insert((fair.manners().to_vec(), fair.sequences().to_vec()));
            }
            fair.manners().iter().for_each(|it| *manners.entry(*it).or_insert(0) += 1);
            fair.sequences().iter().for_each(|it| *sequences.entry(*it).or_insert(0) += 1);
            all += 1;
        }
    }
    assert_eq!(first.len(), LADDER.len());
    // Three and a half of each at a time, as one to six come up alike.
    let often = |of: usize| all * 7 / (4 * of);
    let rare_manners = Manner::ALL.iter().filter(|it| manners[it] < often(Manner::ALL.len()));
    assert_eq!(rare_manners.collect::<Vec<_>>(), [&Manner::TakesTime; 0]);
    let rare = Sequence::ALL.iter().filter(|it| sequences[it] < often(Sequence::ALL.len()));
    assert_eq!(rare.collect::<Vec<_>>(), [&Sequence::FluidFirst; 0]);
}
