//! The whole station: supply, piping, house, furnace, instruments and hands, behind two doors.
//!
//! Everything done is an [`Action`] through [`Bench::apply`]; everything that comes out is a
//! [`Seen`] for people and programs that play, a [`Truth`] for marking and teaching, and a list of
//! [`Event`]s. At a tick, actions come first, then one [`Bench::step`].

use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, HandOver};
use crate::hands::event::{Event, Happening};
use crate::hands::refusal::Refusal;
use crate::hands::{Hands, Job, judge_all_fluid};
use crate::model::night::{Night, Pace};
use crate::model::truth::Truth;
use crate::model::{Model, Notice};
use crate::parts::{Cock, Fitted, LowSide, OnOff, Opening, Port, Spot};
use crate::senses::meter::{draw, metered_port, sight};
use crate::senses::perceive;
use crate::senses::seen::{Over, Seen, SheetSeen};
use crate::senses::watch::Watch;
use crate::setup::Setup;
use crate::units::TICK_S;

/// The bench. Its state is private: it changes through `apply` and `step` only.
#[derive(Debug, Clone)]
pub struct Bench {
    model: Model,
    /// What the meter showed, where and when.
    watch: Watch,
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
        let watch = Watch::new(setup.card.settle_s);
        Self {
            model: Model::found(setup),
            watch,
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
    pub fn night(&self, seconds: f64, pace: Pace) -> Night {
        self.model.night(seconds, pace)
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
                self.tell(Happening::Did { action: action.clone(), before: Box::new(before) });
                for what in follow {
                    self.tell(what);
                }
                self.hands().after(action);
                if let Action::HandOver(said) = action {
                    self.end(Over::HandedOver(said.ending), Some(said.clone()));
                }
                Ok(())
            }
            Err(why) => {
                self.tell(Happening::Refused { action: action.clone(), why });
                Err(why)
            }
        }
    }

    /// One tick of 20 ms. A job that is over goes on physically, but tells no more of dangers.
    pub fn step(&mut self) {
        let mut notices = Vec::new();
        self.model.step(&mut notices);
        for notice in notices {
            self.tell(notice.into());
            self.follow_cycle(notice);
        }
        let at = metered_port(&self.model).map(|port| (port, draw(&self.model)));
        if let Some(hold) = self.watch.step(at, sight(&self.model)) {
            self.tell(Happening::Held { seconds: hold.seconds, rise_pa: hold.rise_pa });
        }
        if self.over.is_none() {
            self.tell_dangers();
        }
        self.model.tick += 1;
    }

    /// Everything that happened since the last call, in order.
    pub fn take_events(&mut self) -> Vec<Event> {
        core::mem::take(&mut self.events)
    }

    /// The largest imbalance of gas in any step so far, relative to the throughput.
    #[must_use]
    pub fn worst_imbalance(&self) -> f64 {
        self.model.gas.worst_imbalance()
    }

    fn hands(&mut self) -> Hands<'_> {
        Hands { model: &mut self.model, watch: &mut self.watch, job: &mut self.job }
    }

    fn follow_cycle(&mut self, notice: Notice) {
        if let Notice::Control { from, to } = notice
            && self.job.cycle.control(from, to)
        {
            self.tell(Happening::Cycle);
        }
    }

    fn tell_dangers(&mut self) {
        let mut notices = Vec::new();
        self.model.dangers(&mut notices);
        for notice in notices {
            self.tell(notice.into());
            if let Notice::Ignition { .. } = notice {
                self.end(Over::Ignition, None);
            }
        }
    }

    /// Ends the job and tells the state it is left in.
    fn end(&mut self, over: Over, hand_over: Option<HandOver>) {
        for judged in judge_all_fluid(&mut self.model) {
            self.tell(judged);
        }
        self.over = Some(over);
        let left = Box::new(self.truth());
        self.tell(Happening::Ended { hand_over, left });
    }

    fn tell(&mut self, what: Happening) {
        self.events.push(Event { tick: self.model.tick, what });
    }
}

impl Bench {
    /// A number that stands for the whole state: equal states give equal numbers.
    #[must_use]
    pub fn digest(&self) -> u64 {
        // FNV-1a over 64-bit words.
        let mut hash = 0xcbf2_9ce4_8422_2325_u64;
        let mut sink = |word: u64| hash = (hash ^ word).wrapping_mul(0x0100_0000_01b3);
        sink(self.model.tick);
        self.model.gas.digest(&mut sink);
        self.model.furnace.digest(&mut sink);
        self.model.house.digest(&mut sink);
        self.model.thermostat.digest(&mut sink);
        self.model.room.digest(&mut sink);
        self.model.meter.digest(&mut sink);
        self.watch.digest(&mut sink);
        sink(self.job.cycle.digest());
        for port in self.model.things.ports.values() {
            port.digest(&mut sink);
        }
        for brushed in self.model.things.fluid.values().flatten() {
            sink(brushed.fluid.bubbles.to_bits());
            sink(brushed.fluid.wet_s.to_bits());
        }
        for starved_s in self.model.things.starved_s.into_values() {
            sink(starved_s.to_bits());
        }
        sink(self.things_word());
        sink(u64::from(self.model.things.setpoint_half_f.unsigned_abs()));
        for (i, brushed) in self.model.things.fluid.values().enumerate() {
            sink((i as u64) << 1 | u64::from(brushed.is_some()));
        }
        for turned in self.model.things.turned_eighths.into_values() {
            sink(u64::from(turned.unsigned_abs()) << 1 | u64::from(turned < 0));
        }
        sheet_digest(&self.job.sheet, &mut sink);
        self.model.kit.digest(self.model.person.hand, &mut sink);
        for repair in &self.job.mended {
            sink(*repair as u64);
        }
        hash
    }

    /// Switches, doors and the like packed into one word.
    pub(crate) fn things_word(&self) -> u64 {
        let things = &self.model.things;
        let on = |fitted: Fitted| u64::from(fitted == Fitted::On);
        let mut word = self.model.person.place as u64;
        word = word << 3 | self.model.person.hand.map_or(7, |tool| (tool as u64).min(7));
        for cap in things.caps.values().chain(things.doors.values()) {
            word = word << 1 | on(*cap);
        }
        word = word << 1 | on(things.stage_jumper);
        word = word << 1 | on(things.tag);
        for window in things.windows.into_values() {
            word = word << 1 | u64::from(window == Opening::Open);
        }
        word = word << 1 | u64::from(self.model.low_side == LowSide::BurnerBox);
        word = word << 1 | u64::from(self.over.is_some());
        for switch in things.neighbors.values().chain([
            &things.valve_switch,
            &things.furnace_switch,
            &things.heating,
        ]) {
            word = word << 1 | u64::from(*switch == OnOff::On);
        }
        for degrees in [Cock::Furnace, Cock::Supply, Cock::WaterHeater, Cock::Range]
            .map(|cock| things.cocks_deg[cock])
        {
            word = word << 7 | u64::from(degrees.unsigned_abs());
        }
        word
    }
}

/// What is written, for a digest.
fn sheet_digest(sheet: &SheetSeen, sink: &mut impl FnMut(u64)) {
    for reading in &sheet.readings {
        let place = (reading.port as u64) << 8 | (reading.stage as u64) << 4;
        sink(place | (reading.phase as u64) << 2 | reading.unit as u64);
        sink(u64::from(reading.thousandths.unsigned_abs()) << 1);
    }
    for (joint, verdict) in &sheet.joints {
        sink((*joint as u64) << 1 | *verdict as u64);
    }
    for note in &sheet.notes {
        sink((note.subject as u64) << 48 | note.tick);
    }
    for written in &sheet.measured {
        sink((written.spot as u64) << 48 | written.tick);
        for figure in &written.figures {
            sink(u64::from(figure.steps.map_or(u32::MAX, i32::cast_unsigned)));
        }
    }
}
