//! An attempt in the window: the bench, how time runs, and what was done.

use std::collections::VecDeque;

use crate::bench::Bench;
use crate::bench::run::{self, Nobody, Witness};
use crate::hands::action::Action;
use crate::hands::event::{Event, EventKind};
use crate::hands::refusal::Refusal;
use crate::model::inside::Inside;
use crate::model::truth::Truth;
use crate::panels::coach::Remembered;
use crate::panels::view::{Help, Pace, Running, SecondChance};
use crate::senses::seen::{Over, Seen, Smell, Sound};
use crate::sound::moment::Moment;
use crate::sound::soundscape::Soundscape;
use crate::units::TICK_S;
use crate::words::Id;

use super::store::{Attempt, Finished, Journal};

/// How long the caption of a short event stays, in ticks.
const CAPTION_TICKS: u64 = 150;
/// Most captions at once.
const CAPTIONS_MAX: usize = 3;
/// Most moments that wait to be heard; nobody need take them.
const MOMENTS_MAX: usize = 16;

/// Said when time shall run faster in a hazard.
const NO_HASTE: Id = id!("session-no-haste");

/// An attempt at work.
pub struct Session {
    bench: Bench,
    scenario: String,
    seed: u64,
    help: Help,
    pace: Pace,
    waiting: VecDeque<Action>,
    done: Vec<(u64, Action)>,
    journal: Box<dyn Journal>,
    refusal: Option<String>,
    captions: Vec<(u64, String)>,
    scape: Soundscape,
    moments: Vec<Moment>,
    closed: Closed,
    trouble: Told,
    hints: Vec<String>,
    hints_taken: usize,
    remembered: Remembered,
}

/// Writes the journal of a tick and keeps its events for the captions.
struct Live<'a> {
    journal: &'a mut dyn Journal,
    events: Vec<Event>,
}

impl Witness for Live<'_> {
    fn acted(&mut self, bench: &Bench, action: &Action, _: Result<(), Refusal>) {
        self.journal.acted(bench, action);
    }

    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        self.journal.ticked(bench);
        self.events.extend(events);
    }
}

/// Whether the end was written down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Closed {
    No,
    Yes,
}

/// Whether trouble with the record was told.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Told {
    Not,
    Once,
}

impl Session {
    /// Takes an attempt up, running at `speed`.
    #[must_use]
    pub fn new(attempt: Attempt, speed: u32) -> Self {
        let (bench, done) = (&attempt.bench, &attempt.done);
        let remembered = recall(bench.setup().clone(), done, bench.tick());
        Self {
            scape: Soundscape::of(&attempt.bench.seen()),
            moments: Vec::new(),
            bench: attempt.bench,
            scenario: attempt.scenario,
            seed: attempt.seed,
            help: attempt.help,
            pace: Pace { running: Running::Running, speed: speed.clamp(1, 20) },
            waiting: VecDeque::new(),
            done: attempt.done,
            journal: attempt.journal,
            refusal: None,
            captions: Vec::new(),
            closed: Closed::No,
            trouble: Told::Not,
            remembered,
            hints: attempt.hints,
            hints_taken: attempt.hints_taken,
        }
    }

    /// What the person perceives.
    #[must_use]
    pub fn seen(&self) -> Seen {
        self.bench.seen()
    }

    /// What the coach keeps in mind of the job up to where it was taken up.
    #[must_use]
    pub fn remembered(&self) -> &Remembered {
        &self.remembered
    }

    /// The paper that came with the job.
    #[must_use]
    pub fn card(&self) -> &crate::setup::JobCard {
        &self.bench.setup().card
    }

    /// Whether and how fast time runs.
    #[must_use]
    pub fn pace(&self) -> Pace {
        self.pace
    }

    /// How much help there is.
    #[must_use]
    pub fn help(&self) -> Help {
        self.help
    }

    /// Name of the scenario.
    #[must_use]
    pub fn scenario(&self) -> &str {
        &self.scenario
    }

    /// The seed that the scenario's numbers were drawn with.
    #[must_use]
    pub fn seed(&self) -> u64 {
        self.seed
    }

    /// Why the last action was refused, until it was read.
    #[must_use]
    pub fn refusal(&self) -> Option<&str> {
        self.refusal.as_deref()
    }

    /// Short events to caption now.
    #[must_use]
    pub fn captions(&self) -> Vec<String> {
        self.captions.iter().map(|(_, text)| text.clone()).collect()
    }

    /// What is to be heard now: nothing while time stands or the job is over.
    #[must_use]
    pub fn scape(&self) -> Soundscape {
        match self.pace.running {
            Running::Running if self.closed == Closed::No => self.scape,
            Running::Running | Running::Paused => Soundscape::default(),
        }
    }

    /// Moments that have come since the last call and are to be heard.
    pub fn take_moments(&mut self) -> Vec<Moment> {
        std::mem::take(&mut self.moments)
    }

    /// Time of day in the house, in seconds after midnight.
    #[must_use]
    pub fn clock_s(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "ticks of a job stay far below 2^52")]
        let since = self.bench.tick() as f64 * TICK_S;
        self.bench.setup().scene.begins.seconds() + since
    }

    /// Whether practice can go back to the step before a stop for danger.
    #[must_use]
    pub fn second_chance(&self) -> SecondChance {
        match self.bench.over() {
            Some(Over::Ignition) if !self.done.is_empty() => SecondChance::Offered,
            Some(Over::Ignition | Over::HandedOver(_)) | None => SecondChance::None,
        }
    }

    /// How the job ended, if it did.
    #[must_use]
    pub fn over(&self) -> Option<Over> {
        self.bench.over()
    }

    /// The attempt as its marking wants it.
    #[must_use]
    pub fn finished(&self) -> Finished<'_> {
        Finished {
            scenario: &self.scenario,
            seed: self.seed,
            help: self.help,
            done: &self.done,
            bench: &self.bench,
            hints_taken: self.hints_taken,
        }
    }

    /// Asks for something to be done at the next tick. While time stands it waits there.
    pub fn ask(&mut self, action: Action) {
        self.waiting.push_back(action);
    }

    /// Lets time run or stand.
    pub fn set_running(&mut self, running: Running) {
        self.pace.running = running;
    }

    /// Sets how many times faster than a clock time runs; never faster than 1 in a hazard.
    pub fn set_speed(&mut self, speed: u32) {
        let hazard = self.hazard();
        if hazard && speed > 1 {
            self.refusal = Some(NO_HASTE.text().to_owned());
        }
        self.pace.speed = if hazard { 1 } else { speed.clamp(1, 20) };
    }

    /// The refusal was read.
    pub fn read_refusal(&mut self) {
        self.refusal = None;
    }

    /// One fiftieth of a second of the clock: as many ticks as the speed says, actions first.
    pub fn run(&mut self) {
        match self.pace.running {
            Running::Paused => {}
            Running::Running => {
                for _ in 0..self.pace.speed {
                    self.tick();
                }
                self.listen();
            }
        }
    }

    fn tick(&mut self) {
        if self.closed == Closed::Yes {
            self.waiting.clear();
            return;
        }
        let tick = self.bench.tick();
        let mut live = Live { journal: self.journal.as_mut(), events: Vec::new() };
        while let Some(action) = self.waiting.pop_front() {
            let tried = run::act(&mut self.bench, &action, &mut live);
            self.refusal = tried.err().map(|why| why.text());
            self.done.push((tick, action));
        }
        if self.bench.over().is_some() {
            run::tell(&mut self.bench, &mut live);
            live.journal.ended(&self.bench);
            self.closed = Closed::Yes;
        } else {
            run::pass(&mut self.bench, &mut live);
        }
        let mut events = live.events;
        // What the step brought is captioned at once.
        events.extend(self.bench.take_events());
        self.note(&events);
        let now = self.bench.tick();
        self.captions.retain(|(since, _)| now.saturating_sub(*since) < CAPTION_TICKS);
        if let Some(trouble) = self.journal.trouble().filter(|_| self.trouble == Told::Not) {
            self.trouble = Told::Once;
            self.refusal = Some(t!("session-not-recorded", trouble = trouble));
        }
    }

    /// The author's hints that were taken, and how many more there are.
    #[must_use]
    pub fn hints(&self) -> (&[String], usize) {
        let (taken, left) = self.hints.split_at(self.hints_taken.min(self.hints.len()));
        (taken, left.len())
    }

    /// Takes the author's next hint, if there is one. It is noted like any hint.
    pub fn take_hint(&mut self) {
        if self.hints_taken < self.hints.len() {
            self.hints_taken += 1;
            self.journal.job_hinted(&self.bench);
        }
    }

    /// What stands behind the sheet steel, where the help allows to look at it.
    #[must_use]
    pub fn behind(&self) -> Option<(Truth, Inside)> {
        self.help.opens_cutaway().then(|| (self.bench.truth(), self.bench.inside()))
    }

    /// The cutaway was opened.
    pub fn opened_cutaway(&mut self) {
        self.journal.opened_cutaway(&self.bench);
    }

    /// A hint was shown.
    pub fn hinted(&mut self) {
        self.journal.hinted(&self.bench);
    }

    fn note(&mut self, events: &[Event]) {
        for event in events {
            if danger(&event.what) {
                self.pace.speed = 1;
            }
            if let Some(moment) = Moment::of(&event.what) {
                self.sounds(event.tick, moment);
            }
        }
        if self.pace.speed > 1 && self.hazard() {
            self.pace.speed = 1;
        }
    }

    /// What clicked and lit since the last look.
    fn listen(&mut self) {
        let now = Soundscape::of(&self.bench.seen());
        let moments = now.moments_since(&self.scape);
        self.scape = now;
        for moment in moments.into_iter().flatten() {
            self.sounds(self.bench.tick(), moment);
        }
    }

    /// Something sounds for a moment. It is captioned unless it is what the hand has just done, or
    /// its caption stands already.
    fn sounds(&mut self, tick: u64, moment: Moment) {
        if !self.scape.hears(moment) {
            return;
        }
        if self.moments.len() < MOMENTS_MAX {
            self.moments.push(moment);
        }
        if moment.is_of_hand() || moment == Moment::LateLight {
            return;
        }
        let text = moment.caption();
        self.captions.retain(|(_, other)| other != text);
        self.captions.push((tick, text.to_owned()));
        let surplus = self.captions.len().saturating_sub(CAPTIONS_MAX);
        self.captions.drain(..surplus);
    }

    /// Whether something is going on that must not be rushed through.
    #[must_use]
    pub fn hazard(&self) -> bool {
        let seen = self.bench.seen();
        seen.smell >= Smell::Clear
            || seen.sounds.iter().any(|s| matches!(s, Sound::Hiss | Sound::Alarm))
    }

    /// Goes back to right before the last thing done, by running the job again up to there.
    pub fn step_back(&mut self) {
        let Some((tick, _)) = self.done.pop() else { return };
        // Everything done in the same instant belongs to the same step.
        while self.done.last().is_some_and(|(other, _)| *other == tick) {
            self.done.pop();
        }
        self.bench = replay(self.bench.setup().clone(), &self.done, tick);
        self.remembered = recall(self.bench.setup().clone(), &self.done, tick);
        self.closed = Closed::No;
        self.journal.went_back(&self.bench, &self.done);
        self.waiting.clear();
        self.captions.clear();
        self.scape = Soundscape::of(&self.bench.seen());
        self.moments.clear();
        self.refusal = None;
        self.pace = Pace { running: Running::Paused, speed: 1 };
    }
}

/// Keeps in mind what is done, and what is seen at times.
#[derive(Default)]
struct Recall(Remembered);

/// Ticks between two looks of somebody who recalls a job.
const LOOK_TICKS: u64 = 25;

impl Witness for Recall {
    fn acted(&mut self, bench: &Bench, action: &Action, result: Result<(), Refusal>) {
        self.0.notice(&bench.seen());
        if result.is_ok() {
            self.0.did(action);
        }
    }

    fn ticked(&mut self, bench: &Bench, _: Vec<Event>) {
        if bench.tick().is_multiple_of(LOOK_TICKS) {
            self.0.notice(&bench.seen());
        }
    }
}

/// What somebody has in mind who has done this, up to a tick.
fn recall(setup: crate::setup::Setup, done: &[(u64, Action)], tick: u64) -> Remembered {
    let mut recall = Recall::default();
    if !done.is_empty() {
        run::play_again(&mut Bench::new(setup), done, tick, &mut recall);
    }
    recall.0
}

/// The bench after `done`, at `tick`.
#[must_use]
pub fn replay(setup: crate::setup::Setup, done: &[(u64, Action)], tick: u64) -> Bench {
    let mut bench = Bench::new(setup);
    run::play_again(&mut bench, done, tick, &mut Nobody);
    run::tell(&mut bench, &mut Nobody);
    bench
}

/// Whether an event must not be rushed past.
fn danger(what: &EventKind) -> bool {
    match what {
        EventKind::OpenedUnderGas { .. }
        | EventKind::GasFromPort { .. }
        | EventKind::Ignition { .. }
        | EventKind::Cracked { .. }
        | EventKind::Alarm
        | EventKind::ColumnBlownOut
        | EventKind::ValveOverPressure { .. } => true,
        EventKind::Did { .. }
        | EventKind::Refused { .. }
        | EventKind::Control { .. }
        | EventKind::CalledOnOpenPort { .. }
        | EventKind::Fired { .. }
        | EventKind::Zeroed { .. }
        | EventKind::Showed(_)
        | EventKind::Wrote(_)
        | EventKind::Turned { .. }
        | EventKind::Mended { .. }
        | EventKind::CrossThreaded { .. }
        | EventKind::FluidJudged { .. }
        | EventKind::Cycle
        | EventKind::MeterOverRange
        | EventKind::WroteMeasured { .. }
        | EventKind::SpringGaugeStrained
        | EventKind::Held { .. }
        | EventKind::Ended { .. }
        | EventKind::NotConverged => false,
    }
}
