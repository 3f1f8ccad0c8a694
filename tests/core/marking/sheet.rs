//! A job told by its events alone: what the meter showed, what was written and turned, how it was left.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::hands::event::{Event, EventKind, ReadingFact};
use quarterturn::marking::{Brief, Finding, Ledger, Marks, evaluate};
use quarterturn::model::truth::Truth;
use quarterturn::parts::{Ending, Level, Phase, Port, Push, Reading, Screw, Stage};
use quarterturn::rules::{Essential, RuleBook, Severity, shared};
use quarterturn::senses::meter_history::{GasDemand, Span, Spell};
use quarterturn::setup::Setup;
use quarterturn::units::{PA_PER_INWC, PressureUnit};

use crate::bench::rig;

/// No slip.
pub const NONE: [(String, usize); 0] = [];

pub const LOW: Stage = Stage::Firing(Level::Low);
pub const HIGH: Stage = Stage::Firing(Level::High);
pub const REST: Stage = Stage::Rest;
pub const FULL_LOAD: Stage = Stage::FullLoad;

/// What is drawn in a state of the sheet.
pub fn draw(stage: Stage) -> GasDemand {
    let (firing, burning) = match stage {
        Stage::Rest | Stage::RestAgain => (None, 0),
        Stage::Firing(level) => (Some(level), 0),
        Stage::FullLoad => (Some(Level::High), 2),
    };
    GasDemand {
        firing,
        burning,
        any_flow: firing.is_some(),
        fed: true,
        throttled: false,
        tapped: true,
    }
}

/// A spell at a port, with numbers in inches of water: none stood in it yet.
pub fn spell(port: Port, demand: GasDemand, least: f64, most: f64) -> Spell {
    let shown =
        Span { least_pa: least * PA_PER_INWC, most_pa: most * PA_PER_INWC, since: 0, until: 0 };
    let unit = PressureUnit::InWc;
    Spell { port, push: Push::Fully, demand, unit, shown, stood: None, error_pa: 0.0 }
}

/// The job so far.
pub struct Sheet {
    pub setup: Setup,
    pub events: Vec<Event>,
    /// State in which actions are done and in which it is left.
    pub truth: Truth,
    tick: u64,
}

impl Sheet {
    /// On the healthy rig for natural gas: the plate says 1.7 and 3.5 ± 0.3 in. w.c. at the manifold,
    /// 5.0 to 10.5 at the inlet; the supply is somebody else's.
    pub fn new() -> Self {
        Self::of(rig::healthy(Fuel::Natural))
    }

    pub fn of(setup: Setup) -> Self {
        let truth = Bench::new(setup.clone()).truth();
        Self { setup, events: Vec::new(), truth, tick: 1_000 }
    }

    pub fn push(&mut self, what: EventKind) -> &mut Self {
        self.events.push(Event { tick: self.tick, what });
        self
    }

    /// Lets ten seconds pass.
    pub fn later(&mut self) -> &mut Self {
        self.pass(500)
    }

    /// Lets so many ticks pass, 50 a second.
    pub fn pass(&mut self, ticks: u64) -> &mut Self {
        self.tick += ticks;
        self
    }

    /// A spell of ten seconds, as it is given; the numbers of `stood` in it, in inches of water.
    pub fn showed(&mut self, mut spell: Spell, stood: Option<(f64, f64)>) -> &mut Self {
        spell.shown.since = self.tick;
        self.tick += 500;
        spell.shown.until = self.tick - 1;
        spell.stood = stood.map(|(least, most)| Span {
            least_pa: least * PA_PER_INWC,
            most_pa: most * PA_PER_INWC,
            since: spell.shown.since + 400,
            until: spell.shown.until,
        });
        self.push(EventKind::Showed(spell))
    }

    /// A number that stood at a port in a state of the sheet, in inches of water.
    pub fn stood(&mut self, port: Port, stage: Stage, number: f64) -> &mut Self {
        self.showed(spell(port, draw(stage), number, number), Some((number, number)))
    }

    pub fn write_in(
        &mut self,
        port: Port,
        stage: Stage,
        phase: Phase,
        (number, unit): (f64, PressureUnit),
    ) -> &mut Self {
        #[expect(clippy::cast_possible_truncation, reason = "a few inches")]
        let thousandths = (number * 1000.0).round() as i32;
        let reading = Reading { port, stage, phase, thousandths, unit };
        self.push(EventKind::Wrote(ReadingFact { reading, scale_off_pa: None }))
    }

    /// A number as found, in inches of water.
    pub fn write(&mut self, port: Port, stage: Stage, number: f64) -> &mut Self {
        self.write_in(port, stage, Phase::Found, (number, PressureUnit::InWc))
    }

    /// The same as left.
    pub fn write_left(&mut self, port: Port, stage: Stage, number: f64) -> &mut Self {
        self.write_in(port, stage, Phase::Left, (number, PressureUnit::InWc))
    }

    /// A number that stood, and is written so, as found.
    pub fn read(&mut self, port: Port, stage: Stage, number: f64) -> &mut Self {
        self.stood(port, stage, number).write(port, stage, number).later()
    }

    /// An action, done in the state that is so.
    pub fn did(&mut self, action: Action) -> &mut Self {
        let before = Box::new(self.truth.clone());
        self.push(EventKind::Did { action, before })
    }

    /// A screw turned by an eighth, with a level burning, the meter on this port, and what the screw
    /// was set to before, in inches of water.
    pub fn turn(
        &mut self,
        screw: Screw,
        eighths: i16,
        firing: Option<Level>,
        metered: Option<Port>,
        set: f64,
    ) -> &mut Self {
        self.did(Action::Turn { screw, eighths });
        self.push(EventKind::Turned {
            screw,
            eighths,
            set_pa: (set * PA_PER_INWC, set * PA_PER_INWC),
            bottomed: false,
            firing,
            inlet_pa: 6.7 * PA_PER_INWC,
            metered,
            since_turn_s: None,
        });
        self.later()
    }

    /// Handed over so.
    pub fn handed_over(&mut self, ending: Ending) -> &mut Self {
        let hand_over = Some(HandOver { ending, not_done: Vec::new() });
        let left = Box::new(self.truth.clone());
        self.push(EventKind::Ended { hand_over, left })
    }

    /// The marks of the job as it stands; one without an end is handed over in service, because what
    /// is owed at the end is missing only then.
    pub fn marks_with(&self, right_endings: &[Ending]) -> Marks {
        self.marks_by(&shared().unwrap(), right_endings)
    }

    /// The same by a rule book of one's own.
    pub fn marks_by(&self, book: &RuleBook, right_endings: &[Ending]) -> Marks {
        let mut ledger = Ledger::new(self.setup.clone());
        ledger.take(self.events.iter().cloned());
        if ledger.end().is_none() {
            let hand_over = Some(HandOver { ending: Ending::InService, not_done: Vec::new() });
            let left = Box::new(self.truth.clone());
            let what = EventKind::Ended { hand_over, left };
            ledger.take([Event { tick: self.tick, what }]);
        }
        let brief = Brief { right_endings: right_endings.to_vec() };
        evaluate(book, &ledger, &brief)
    }

    /// The marks of a job that goes on.
    pub fn marks_so_far(&self) -> Marks {
        let mut ledger = Ledger::new(self.setup.clone());
        ledger.take(self.events.iter().cloned());
        let brief = Brief { right_endings: vec![Ending::InService] };
        evaluate(&shared().unwrap(), &ledger, &brief)
    }

    pub fn marks(&self) -> Marks {
        self.marks_with(&[Ending::InService])
    }

    pub fn finding(&self, rule: &str) -> Option<Finding> {
        self.marks().findings.into_iter().find(|it| it.rule == rule)
    }

    /// How often a rule is charged.
    pub fn times(&self, rule: &str) -> usize {
        self.finding(rule).map_or(0, |it| it.times)
    }

    /// How serious a rule is charged, if it is.
    pub fn severity(&self, rule: &str) -> Option<Severity> {
        self.finding(rule).map(|it| it.severity)
    }

    /// The rules on numbers that are charged, as often as each.
    pub fn slips(&self) -> Vec<(String, usize)> {
        const NUMBERS: [&str; 7] = [
            "wrong-port",
            "wrong-unit",
            "wrong-stage",
            "one-leg-read",
            "read-unsettled",
            "written-coarsely",
            "invented",
        ];
        let found = self.marks().findings.into_iter();
        let of_numbers = found.filter(|it| NUMBERS.contains(&it.rule.as_str()));
        of_numbers.map(|it| (it.rule, it.times)).collect()
    }

    /// Rules that an essential fails on.
    pub fn gates(&self, essential: Essential) -> Vec<String> {
        let marks = self.marks();
        marks.essentials.iter().find(|it| it.essential == essential).unwrap().because.clone()
    }
}
