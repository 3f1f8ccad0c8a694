//! The coach leads from arrival to full readings on the real model, from what is seen alone.

use std::sync::Arc;

use egui_kittest::kittest::Queryable;
use quarterturn::bench::Bench;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::panels::Command;
use quarterturn::panels::coach::{CardAsks, Remembered, coach};
use quarterturn::panels::sheet::Cell;
use quarterturn::panels::view::Help;
use quarterturn::parts::{
    Answer, Cause, Ending, HandValve, Height, Joint, Level, Opening, Phase, Place, Port, PortFill,
    Push, Reading, Screw, Stage, Window, WrittenFinding,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::scenario::{builtin, load};
use quarterturn::senses::seen::{Display, FluidSeen, Over, Seen, Smell, Sound};
use quarterturn::setup::JobCard;
use quarterturn::units::TICKS_PER_S;

use crate::fixture::{App, Which, meter, seen, seen_open, window};

/// What a card asks for.
const ASKED: CardAsks<'static> = CardAsks { hold_s: 180.0, settle_s: 20.0, required: &[] };

/// How the coach asks for the finding.
const ASKS_WHAT_WAS_WRONG: &str = "Before you hand over, write what was wrong";

/// Whoever follows the coach: does what it says, waits where it says so, and writes what the
/// manometer shows after a patient while.
pub struct Follower {
    pub bench: Bench,
    remembered: Remembered,
    card: JobCard,
    actions: u32,
    /// What it writes as wrong once the coach asks for it: that is told by nobody.
    found: (Cause, Answer),
    /// After how many readings it stops.
    limit_readings: usize,
    written: Vec<(Cell, u64, u32)>,
    /// What was said, with the second at which it was said first.
    said: Vec<String>,
}

impl Follower {
    /// The bench of a job when so many readings have been written, the last one still burning.
    pub fn bench_after(id: &str, seed: u64, readings: usize) -> Bench {
        let mut follower = Self::new(id, seed);
        follower.limit_readings = readings;
        follower.follow(3_600);
        assert_eq!(follower.written.len(), readings, "{:?}", follower.said);
        follower.bench
    }

    /// What is said on the way through a job, each line with its second before it.
    pub fn said_on(id: &str, seed: u64, limit_s: u64) -> Vec<String> {
        let mut follower = Self::new(id, seed);
        follower.follow(limit_s);
        follower.said
    }

    fn new(id: &str, seed: u64) -> Self {
        let text = builtin::find(id).unwrap().text;
        let setup = load(text).unwrap().draw(seed);
        let card = setup.card.clone();
        Self {
            bench: Bench::new(setup),
            card,
            remembered: Remembered::default(),
            actions: 0,
            found: (Cause::NothingFound, Answer::LeftAsItIs),
            limit_readings: usize::MAX,
            written: Vec::new(),
            said: Vec::new(),
        }
    }

    fn asks(&self) -> CardAsks<'_> {
        let JobCard { hold_s, settle_s, required, .. } = &self.card;
        CardAsks { hold_s: *hold_s, settle_s: *settle_s, required }
    }

    fn wait(&mut self, seconds: u64) {
        for _ in 0..seconds * TICKS_PER_S {
            self.bench.step();
        }
    }

    /// Follows the coach until it only says what to think about, or `limit_s` have passed.
    fn follow(&mut self, limit_s: u64) {
        let end = limit_s * TICKS_PER_S;
        while self.bench.tick() < end && self.written.len() < self.limit_readings {
            let seen = self.bench.seen();
            self.remembered.notice(&seen);
            let Some(hint) = coach(&seen, &self.remembered, self.asks()) else { return };
            if !self.said.last().is_some_and(|last| last.ends_with(&hint.text)) {
                self.said.push(format!("{} s: {}", seen.tick / TICKS_PER_S, hint.text));
            }
            match (&hint.action, hint.cell) {
                (Some(action), _) => {
                    self.wait(u64::from(hint.patience_s));
                    let done = self.bench.apply(action);
                    assert_eq!(done, Ok(()), "{:?} was refused at {:?}", hint.text, seen.place);
                    self.remembered.did(action);
                    self.actions += 1;
                    self.wait(1);
                }
                (None, Some(cell)) => self.write(cell, u64::from(hint.patience_s)),
                (None, None) if hint.part.is_some() => self.wait(1),
                (None, None) if hint.text.starts_with(ASKS_WHAT_WAS_WRONG) => {
                    let evidence = vec![];
                    let (cause, answer) = self.found;
                    let finding = WrittenFinding { cause, answer, evidence };
                    self.bench.apply(&Action::WriteFinding(finding)).unwrap();
                }
                (None, None) => return,
            }
        }
    }

    fn write(&mut self, cell: Cell, patience_s: u64) {
        self.wait(patience_s);
        // What was lit may have gone out meanwhile; then there is something else to do first.
        if coach(&self.bench.seen(), &self.remembered, self.asks()).and_then(|hint| hint.cell)
            != Some(cell)
        {
            return;
        }
        let Some(Display::Number(shown)) = self.bench.seen().display() else {
            panic!("nothing to read for {}", cell.name());
        };
        #[expect(clippy::cast_possible_truncation, reason = "a number on a display")]
        let thousandths = (shown.value * 1000.0).round() as i32;
        let Cell { port, stage, phase } = cell;
        let reading = Reading { port, stage, phase, thousandths, unit: shown.unit };
        self.bench.apply(&Action::Write(reading)).unwrap();
        self.remembered.did(&Action::Write(reading));
        self.written.push((cell, self.bench.tick() / TICKS_PER_S, self.actions));
    }
}

/// On both jobs and five seeds: no refusal on the way, never gas out of an open port, no thread
/// crossed, and each reading is taken at the port and stage that it is written for, settled. The
/// first one stands inside five minutes at ordinary speed, an action taking five seconds (one of
/// them simulated here).
#[test]
fn the_coach_leads_to_true_readings() {
    for id in ["propane-cold-morning", "natural-gas-busy-kitchen"] {
        for seed in 1..=5 {
            let mut follower = Follower::new(id, seed);
            follower.follow(3_600);
            let written = &follower.written;
            let said = follower.said.join("\n");
            assert!(written.len() >= 6, "{id} {seed}: only {} readings\n{said}", written.len());
            let (cell, at_s, actions) = written[0];
            assert_eq!(cell.phase, Phase::Found);
            assert!(
                at_s + 4 * u64::from(actions) <= 300,
                "{id} {seed}: {at_s} s, {actions} actions\n{said}"
            );
            let mut held_s: f64 = 0.0;
            let mut shown = None;
            for event in follower.bench.take_events() {
                match event.what {
                    EventKind::OpenedUnderGas { .. }
                    | EventKind::GasFromPort { .. }
                    | EventKind::Ignition { .. }
                    | EventKind::CrossThreaded { .. }
                    | EventKind::Cracked { .. } => panic!("{id} {seed}: {:?}\n{said}", event.what),
                    EventKind::Held { seconds, .. } => held_s = held_s.max(seconds),
                    EventKind::Showed(spell) => shown = Some(spell),
                    EventKind::Wrote(fact) => {
                        let (port, stage) = (fact.reading.port, fact.reading.stage);
                        let spell = shown.unwrap();
                        assert!(spell.is(port, stage), "{id} {seed}: {port:?} {stage:?} {spell:?}");
                        assert!(spell.stood.is_some(), "{id} {seed}: {spell:?} not settled");
                    }
                    _ => {}
                }
            }
            let asked_s = follower.card.hold_s;
            assert!(held_s >= asked_s, "{id} {seed}: held {held_s} s of {asked_s}");
            assert!(said.contains(&format!("{asked_s:.0} seconds: a slow climb")), "{said}");
            let to_hall = said.matches("ask for much more heat").count();
            assert!(to_hall <= 3, "{id} {seed}: to the hall and back {to_hall} times\n{said}");
            let propane = id.starts_with("propane");
            assert_eq!(said.contains("Propane lies low"), propane, "{id}: {said}");
            assert_eq!(said.contains("Natural gas rises"), !propane, "{id}: {said}");
        }
    }
}

/// Danger comes before everything; an ended job has no next step.
#[test]
fn danger_comes_first() {
    let mut strong = seen(Place::PlantRoom);
    strong.smell = Smell::Strong;
    let hint = coach(&strong, &Remembered::default(), ASKED).unwrap();
    assert_eq!(hint.action, Some(Action::Go(Place::Away)));
    let mut over = seen(Place::PlantRoom);
    over.over = Some(Over::Ignition);
    assert_eq!(coach(&over, &Remembered::default(), ASKED), None);
}

/// Hissing, bubbles or a clear smell: the manual valve first, then air; never a reading.
#[test]
fn escaping_gas_is_shut_off_first() {
    let shut = Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 };
    let told = |seen: &Seen| coach(seen, &Remembered::default(), ASKED).unwrap();
    let mut hissing = seen_open(PortFill::Open);
    hissing.sounds.push(Sound::Hiss);
    assert_eq!(told(&hissing).action, Some(shut.clone()));
    let mut bubbles = seen_open(PortFill::Snug);
    bubbles.furnace.as_mut().unwrap().burners.as_mut().unwrap().fluid[Joint::InletPort] =
        FluidSeen::Bubbles(0.4);
    assert_eq!(told(&bubbles).action, Some(shut.clone()));
    let mut clear = seen_open(PortFill::Snug);
    clear.smell = Smell::Clear;
    assert_eq!(told(&clear).action, Some(shut.clone()));
    clear.smell = Smell::None;
    clear.sniffed = Some((Height::Floor, Smell::Clear));
    assert_eq!(told(&clear).action, Some(shut));
    clear.furnace.as_mut().unwrap().manual_valve = HandleAngle::SHUT;
    let window = Action::Window { window: Window::PlantRoom, to: Opening::Open };
    assert_eq!(told(&clear).action, Some(window));
    clear.sniffed = Some((Height::Floor, Smell::Strong));
    assert_eq!(told(&clear).action, Some(Action::Go(Place::Away)));
}

/// A sound house is led to its end: closed, proven, restored, handed over in service.
#[test]
fn a_sound_job_is_led_to_its_end() {
    for id in ["healthy-natural", "healthy-propane"] {
        let mut follower = Follower::new(id, 1);
        follower.follow(7_200);
        let said = follower.said.join("\n");
        let over = follower.bench.seen().over;
        assert_eq!(over, Some(Over::HandedOver(Ending::InService)), "{id}\n{said}");
        let asked = said.lines().filter(|line| line.contains(ASKS_WHAT_WAS_WRONG)).count();
        assert_eq!(asked, 1, "{id}\n{said}");
        let tight = follower.bench.seen().sheet.joints.clone();
        assert!(tight.len() >= 4, "{id}: {tight:?}\n{said}");
    }
}

/// A furnace that was never converted is shut off, tagged, explained; no port is opened.
#[test]
fn a_wrong_conversion_is_shut_off() {
    let mut follower = Follower::new("moved-with-the-house", 1);
    follower.found = (Cause::NotConverted, Answer::ShutOff);
    follower.follow(3_600);
    let said = follower.said.join("\n");
    let over = follower.bench.seen().over;
    assert_eq!(over, Some(Over::HandedOver(Ending::ShutOff)), "{said}");
    assert!(!said.contains("adapter") && !said.contains("anometer"), "{said}");
}

/// The inlet right, the manifold low on the stage that burns: a little turn is right as long as the
/// number follows. Where the other stage is the one, the coach brings it first.
#[test]
fn a_screw_that_does_nothing_is_left_alone() {
    let mut follower = Follower::new("healthy-natural", 1);
    follower.limit_readings = 6;
    follower.follow(7_200);
    let mut now = follower.bench.seen();
    meter(&mut now).hose = Some((Port::Manifold, Push::Fully));
    // The lock-up after flow stands on the sheet too, as it stood at first.
    let first = *now.sheet.reading(Port::Inlet, Stage::Rest, Phase::Found).unwrap();
    Arc::make_mut(&mut now.sheet).readings.push(Reading { stage: Stage::RestAgain, ..first });
    let told = |seen: &Seen, memory: &Remembered| coach(seen, memory, ASKED).unwrap().text;
    let halved = |seen: &Seen, stage: Stage| {
        let mut seen = seen.clone();
        let of = |it: &&mut Reading| it.port == Port::Manifold && it.stage == stage;
        Arc::make_mut(&mut seen.sheet).readings.iter_mut().find(of).unwrap().thousandths /= 2;
        seen
    };
    let other = halved(&now, Stage::Firing(Level::Low));
    // Where the hose is stands in mind.
    follower.remembered.notice(&now);
    let text = told(&other, &follower.remembered);
    assert!(text.contains("so that low remains"), "{text}");
    let mut now = halved(&now, Stage::Firing(Level::High));
    let mut memory = follower.remembered;
    memory.notice(&now);
    assert!(told(&now, &memory).contains("turn a little"), "{}", told(&now, &memory));
    memory.did(&Action::Turn { screw: Screw::High, eighths: 1 });
    now.tick += 20 * TICKS_PER_S;
    memory.notice(&now);
    let text = told(&now, &memory);
    assert!(text.contains("cause lies elsewhere. Look at") && !text.contains("turn a little"));
    // Mended: it is read again.
    memory.did(&Action::Mend(Repair::CleanInletScreen));
    let text = told(&now, &memory);
    assert!(!text.contains("cause lies elsewhere"), "{text}");
}

/// Coached: the line is there from the start, does the step when asked, and can be skipped. Solo:
/// it comes when asked for, once, and says so to the record.
#[test]
fn the_line_is_there_when_it_should_be() {
    let mut app = App::new(Which::Job, seen(Place::PlantRoom));
    app.help = Help::Coached;
    let mut harness = window(app, 1280.0, 720.0);
    harness.get_by_label("Do the next step for me").click();
    harness.run();
    assert!(matches!(harness.state().commands[0], Command::Act(Action::Sniff(_))));
    harness.get_by_label("No more hints").click();
    harness.run();
    assert!(harness.query_by_label("No more hints").is_none());

    let mut harness = window(App::new(Which::Job, seen(Place::PlantRoom)), 1280.0, 720.0);
    assert!(harness.query_by_label("No more hints").is_none());
    harness.get_by_label("Give me a hint, F1").click();
    harness.run();
    assert!(harness.query_by_label("No more hints").is_some());
    assert_eq!(harness.state().commands, [Command::HintShown]);
}

/// Where the screw is not the cause the coach leads from look to look, each of them to be done, and
/// none is refused.
#[test]
fn the_coach_leads_from_look_to_look() {
    for id in ["lights-and-quits", "hums-and-clicks", "stops-when-warm"] {
        let mut follower = Follower::new(id, 3);
        follower.follow(2_400);
        let looked = follower.bench.seen().sheet.notes.len();
        let said = follower.said.join("\n");
        assert!(looked >= 5, "{id}: {looked} looks\n{said}");
    }
}

/// A second stage that is called and does not come is waited for, and then looked into: the coach does
/// not send anybody to the thermostat and back for it.
#[test]
fn the_coach_waits_for_the_second_stage() {
    for (id, words) in [
        ("lukewarm-at-dawn", ["The second follows", "Put the R–W2 jumper on"]),
        ("the-new-dial", ["ask for much more heat", "still does not call the second stage"]),
    ] {
        let mut follower = Follower::new(id, 3);
        follower.follow(2_400);
        let said = follower.said.join("\n");
        assert!(words.iter().all(|words| said.contains(words)), "{id}\n{said}");
        let to_hall = said.matches("ask for much more heat").count();
        assert!(to_hall <= 3, "{id}: {to_hall} times\n{said}");
    }
}
