//! The whole station: supply, piping, house, furnace, instruments and hands, behind two doors.
//!
//! Everything done is an [`Action`] through [`Bench::apply`]; everything that comes out is a
//! [`Seen`] for people and programs that play, a [`Truth`] for marking and teaching, and a list of
//! [`Event`]s. At a tick, actions come first, then one [`Bench::step`].

pub mod run;

use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, HandOver};
use crate::hands::event::{Event, EventKind};
use crate::hands::refusal::Refusal;
use crate::hands::{Hands, Job, judge_all_fluid};
use crate::model::aftermath::{Aftermath, Stepping};
use crate::model::inside::Inside;
use crate::model::truth::Truth;
use crate::model::{Model, Notice, digest};
use crate::parts::{Port, Spot};
use crate::senses::meter::{metered, sample};
use crate::senses::meter_history::MeterHistory;
use crate::senses::perceive;
use crate::senses::seen::{Over, Seen};
use crate::setup::Setup;
use crate::units::TICK_S;

/// The bench. Its state is private: it changes through `apply` and `step` only.
#[derive(Debug, Clone)]
pub struct Bench {
    model: Model,
    /// What the meter showed, where and when.
    history: MeterHistory,
    job: Job,
    /// How the job ended, if it did.
    over: Option<Over>,
    /// What happened since it was asked last.
    events: Vec<Event>,
}

impl Bench {
    /// Builds the bench as found, settled, at tick 0.
    #[must_use]
    pub fn new(setup: Setup) -> Self {
        let history = MeterHistory::new(setup.card.settle_s);
        Self {
            model: Model::found(setup),
            history,
            job: Job::default(),
            over: None,
            events: Vec::new(),
        }
    }

    /// What it was built from. For marking, preview and reports; players get [`Bench::seen`].
    #[must_use]
    pub fn setup(&self) -> &Setup {
        self.job.built_from.as_deref().unwrap_or(&self.model.setup)
    }

    /// The setup as repairs have left it. For tests, reports and the debrief.
    #[must_use]
    pub fn setup_now(&self) -> &Setup {
        &self.model.setup
    }

    /// The repairs done so far, in order.
    #[must_use]
    pub fn mended(&self) -> &[Repair] {
        &self.job.mended
    }

    /// Steps since the job began; 50 a second.
    #[must_use]
    pub fn tick(&self) -> u64 {
        self.model.tick
    }

    /// Simulated seconds since the job began.
    #[must_use]
    pub fn seconds(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
        let ticks = self.model.tick as f64;
        ticks * TICK_S
    }

    /// How the job ended, if it did.
    #[must_use]
    pub fn over(&self) -> Option<Over> {
        self.over
    }

    /// What a person perceives now.
    #[must_use]
    pub fn seen(&self) -> Seen {
        perceive::seen(&self.model, &self.job.sheet, self.over)
    }

    /// Everything that is true now.
    #[must_use]
    pub fn truth(&self) -> Truth {
        self.model.truth()
    }

    /// What stands behind the sheet steel now, for the cutaway.
    #[must_use]
    pub fn inside(&self) -> Inside {
        self.model.inside()
    }

    /// Pressure that really stands at a port, in pascals.
    #[must_use]
    pub fn pressure_pa(&self, port: Port) -> f64 {
        self.model.gas.pressure_pa(port)
    }

    /// Volts at a spot, between two terminals or across a contact: what the electrical meter comes
    /// to when it is held there, whether or not anybody holds it.
    #[must_use]
    pub fn volts(&self, spot: Spot) -> f64 {
        self.model.volts(spot)
    }

    /// Ohms of a part with the furnace off: what the electrical meter comes to when it is held there.
    #[must_use]
    pub fn ohms(&self, spot: Spot) -> f64 {
        self.model.ohms(spot)
    }

    /// Runs a copy of the model on for `seconds` (rounded to ticks) and tells what came of it. The
    /// bench itself stays where it is.
    #[must_use]
    pub fn aftermath(&self, seconds: f64, stepping: Stepping) -> Aftermath {
        self.model.aftermath(seconds, stepping)
    }

    /// Does something, at the current tick.
    ///
    /// # Errors
    /// The reason why it cannot be done; nothing changed then but the list of events.
    pub fn apply(&mut self, action: &Action) -> Result<(), Refusal> {
        let before = self.truth();
        let result = match self.over {
            Some(_) => Err(Refusal::Over),
            None => self.hands().act(action),
        };
        match result {
            Ok(follow) => {
                self.tell(EventKind::Did { action: action.clone(), before: Box::new(before) });
                for what in follow {
                    self.tell(what);
                }
                if let Some(spell) = self.hands().after(action) {
                    self.tell(EventKind::Showed(spell));
                }
                if let Action::HandOver(said) = action {
                    self.end(Over::HandedOver(said.ending), Some(said.clone()));
                }
                Ok(())
            }
            Err(why) => {
                self.tell(EventKind::Refused { action: action.clone(), why });
                Err(why)
            }
        }
    }

    /// One tick of 20 ms. A job that is over goes on physically, but tells no more of dangers.
    pub fn step(&mut self) {
        let Self { model, history, job, over, events } = self;
        let tick = model.tick;
        let mut tell = |what: EventKind| events.push(Event { tick, what });
        let difference_pa = model.step(&mut |notice| {
            tell(notice.into());
            if let Notice::Control { from, to } = notice
                && job.cycle.control(from, to)
            {
                tell(EventKind::Cycle);
            }
        });
        let in_sight = model.is_meter_in_sight();
        let shown = in_sight.then_some(|| sample(model, difference_pa));
        let ended = history.step(metered(model), difference_pa, shown);
        if let Some(spell) = ended.spell {
            tell(EventKind::Showed(spell));
        }
        if let Some(hold) = ended.hold {
            tell(EventKind::Held { seconds: hold.seconds, rise_pa: hold.rise_pa });
        }
        let mut ignited = false;
        if over.is_none() {
            model.dangers(&mut |notice| {
                tell(notice.into());
                ignited |= matches!(notice, Notice::Ignition { .. });
            });
        }
        if ignited {
            self.end(Over::Ignition, None);
        }
        self.model.tick += 1;
    }

    /// Everything that happened since the last call, in order.
    pub fn take_events(&mut self) -> Vec<Event> {
        core::mem::take(&mut self.events)
    }

    /// A number that stands for the whole state: equal states give equal numbers.
    #[must_use]
    pub fn digest(&self) -> u64 {
        // Events are told, and gone once they are taken: no state.
        let Self { model, history, job, over, events: _ } = self;
        digest(&(model, history, job, over))
    }

    /// The largest imbalance of gas in any step so far, relative to the throughput.
    #[must_use]
    pub fn worst_imbalance(&self) -> f64 {
        self.model.gas.worst_imbalance()
    }

    fn hands(&mut self) -> Hands<'_> {
        Hands { model: &mut self.model, history: &mut self.history, job: &mut self.job }
    }

    /// Ends the job and tells the state it is left in.
    fn end(&mut self, over: Over, hand_over: Option<HandOver>) {
        for judged in judge_all_fluid(&mut self.model) {
            self.tell(judged);
        }
        self.over = Some(over);
        if let Some(spell) = self.history.spell() {
            self.tell(EventKind::Showed(spell));
        }
        let left = Box::new(self.truth());
        self.tell(EventKind::Ended { hand_over, left });
    }

    fn tell(&mut self, what: EventKind) {
        self.events.push(Event { tick: self.model.tick, what });
    }
}
