//! What jobs come to: the verdict before the points, the scale of harm, and each rule from both
//! sides.
//!
//! Good work is played once by the reference technician and again with something left out, done
//! otherwise or added: what is found then is what that slip costs.

mod adjusting;
mod arrival;
mod asked;
mod book;
mod burners;
mod calls;
mod competencies;
mod cycle;
mod cycles;
mod debrief;
mod digits;
mod drift;
mod faults_left;
mod findings;
mod grounds;
mod hazards;
mod hose;
mod joints;
mod leaving;
mod left;
mod limits;
mod lock_up;
mod measured;
mod mistakes;
mod named;
mod nonsense;
mod numbers;
mod piping;
mod played;
mod ports;
mod practice;
mod rise;
mod scale;
mod sheet;
mod slips;
mod so_far;
mod spells;
mod standing;
mod supply;
mod told;
mod told_causes;
mod told_sheet;
mod unread;
mod verdict;
mod work;
mod work_left;

use quarterturn::bench::{Bench, run};
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::hands::refusal::Refusal;
use quarterturn::marking::{Brief, Finding, Marks, Observer};
use quarterturn::parts::Ending;
use quarterturn::rules::{Grade, RuleBook, shared};
use quarterturn::scenario::{builtin, load};
use quarterturn::setup::Setup;
use quarterturn::technician::drive::{Stopped, Witness};
use quarterturn::technician::{Technician, play};

/// Longest job, in simulated seconds.
const LIMIT_S: u64 = 3 * 3600;

/// An action with the tick that it was done at.
pub type At = (u64, Action);

/// Good work on a job, to be played again.
pub struct Good {
    pub setup: Setup,
    pub done: Vec<At>,
    pub endings: Vec<Ending>,
    until: u64,
}

/// Takes down what was done.
#[derive(Default)]
struct Taker(Vec<At>);

impl Witness for Taker {
    fn acted(&mut self, bench: &Bench, action: &Action, result: Result<(), Refusal>) {
        if result.is_ok() {
            self.0.push((bench.tick(), action.clone()));
        }
    }
}

impl Good {
    /// The technician's work on a shipped job.
    pub fn on(id: &str, seed: u64) -> Self {
        let scenario = load(builtin::find(id).unwrap().text).unwrap();
        Self::of(scenario.draw(seed), scenario.right_endings(seed))
    }

    /// The technician's work on a bench.
    pub fn of(setup: Setup, endings: Vec<Ending>) -> Self {
        let mut technician = Technician::new(&setup.card);
        let mut bench = Bench::new(setup.clone());
        let mut taker = Taker::default();
        let stopped = play(&mut bench, &mut technician, LIMIT_S, &mut taker);
        assert_eq!(stopped, Stopped::Over);
        Self { setup, done: taker.0, endings, until: bench.tick() }
    }

    /// What is seen of what was done instead.
    pub fn observed(&self, done: &[At]) -> Observer {
        self.left(done).1
    }

    /// The bench as it is left by what was done instead, and what is seen of that.
    pub fn left(&self, done: &[At]) -> (Bench, Observer) {
        let mut bench = Bench::new(self.setup.clone());
        let mut observer = Observer::new(&bench);
        run::play_again(&mut bench, done, self.until, &mut observer);
        run::tell(&mut bench, &mut observer);
        (bench, observer)
    }

    /// The marks of what was seen.
    pub fn marked(&self, observer: &Observer, book: &RuleBook) -> Marks {
        observer.marks(book, &Brief { right_endings: self.endings.clone() })
    }

    /// The marks of what was done instead.
    pub fn marks(&self, done: &[At]) -> Marks {
        self.marked(&self.observed(done), &shared().unwrap())
    }

    /// The marks of the work with the actions left out that are chosen, by their place.
    pub fn without(&self, out: impl Fn(usize, &Action) -> bool) -> Marks {
        let kept = self.done.iter().enumerate().filter(|(i, (_, action))| !out(*i, action));
        self.marks(&kept.map(|(_, at)| at.clone()).collect::<Vec<_>>())
    }

    /// The marks of the work with actions put in right before the place of another.
    pub fn with_before(&self, place: usize, more: &[Action]) -> Marks {
        let mut done = self.done.clone();
        let tick = done[place].0;
        done.splice(place..place, more.iter().map(|action| (tick, action.clone())));
        self.marks(&done)
    }

    /// The place of the first such action.
    pub fn first(&self, is: impl Fn(&Action) -> bool) -> usize {
        self.done.iter().position(|(_, action)| is(action)).expect("it was done")
    }

    /// The place of the last such action.
    pub fn last(&self, is: impl Fn(&Action) -> bool) -> usize {
        self.done.iter().rposition(|(_, action)| is(action)).expect("it was done")
    }

    /// The place of the hand-over.
    pub fn end(&self) -> usize {
        self.last(|action| matches!(action, Action::HandOver(_)))
    }
}

/// The rules that were found, sorted.
pub fn rules(marks: &Marks) -> Vec<&str> {
    let mut rules: Vec<&str> = marks.findings.iter().map(|it| it.rule.as_str()).collect();
    rules.sort_unstable();
    rules
}

/// The finding of a rule.
#[track_caller]
pub fn found<'a>(marks: &'a Marks, rule: &str) -> &'a Finding {
    let finding = marks.findings.iter().find(|it| it.rule == rule);
    finding.unwrap_or_else(|| panic!("{rule} was not found: {:?}", rules(marks)))
}

/// What a finding is worth by the scale of the rule file, with its repeats, whether the job is given
/// points or not.
pub fn worth(finding: &Finding) -> f64 {
    let book = shared().unwrap();
    let rule = book.rule(&finding.rule).unwrap();
    let usual = book.charge(rule, Grade::Usual);
    let caught = finding.severity < usual.severity;
    let once = if caught { book.in_time(rule, Grade::Usual).points } else { usual.points };
    once + ((finding.times - 1) as f64 * book.scoring.repeat.points).min(once)
}

/// What all findings are worth together.
pub fn all_worth(marks: &Marks) -> f64 {
    marks.findings.iter().map(worth).sum()
}

/// Marks of a bench that hands were on, handed over from the hall.
pub fn handed_over(mut bench: Bench, ending: Ending, right: &[Ending]) -> Marks {
    let _there = bench.apply(&Action::Go(quarterturn::parts::Place::Hall));
    bench.apply(&Action::HandOver(HandOver { ending, not_done: Vec::new() })).unwrap();
    let mut observer = Observer::new(&bench);
    let events = bench.take_events();
    observer.tick(&bench, events);
    // The bench is told from the beginning: its setup is the one that it was built from.
    observer.marks(&shared().unwrap(), &Brief { right_endings: right.to_vec() })
}
