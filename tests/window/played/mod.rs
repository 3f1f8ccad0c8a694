//! Whole jobs done with the hands on the parts, three ways: by the mouse, by a finger, by keys. The
//! reference technician decides; what the hands do leaves the same record as its script.

mod deed;
mod keys;
mod order;
mod pointer;

use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::panels::handling::Handling;
use quarterturn::panels::{actions, parts};
use quarterturn::parts::{Ending, Height, Place, PortFill, Push, Reading};
use quarterturn::senses::seen::Seen;
use quarterturn::technician::{Player, Technician};

use super::rig::{Pixels, Rig};
use super::store::TestStore;
use super::whole_job::cell_of;
use deed::{Deed, Where, deed};
use keys::Keys;
use order::plain;
use pointer::{Finger, Mouse};

/// Jobs that are done by hand: propane with the supplier's yard, natural gas with a line regulator to
/// set, and a furnace with one level.
const JOBS: [&str; 3] =
    ["propane-cold-morning", "natural-gas-busy-kitchen", "one-screw-one-number"];

/// Most frames that a job may take.
const MOST_FRAMES: u32 = 30_000;
/// What closes a list.
const CLOSE: &str = "Close (Esc)";
/// A frame while hands are at work, in milliseconds.
const AT_WORK_MS: u64 = 5;
/// A frame in which the bench goes on, in milliseconds.
const WAITING_MS: u64 = 20;
/// Frames of the bench that are longer than a double click.
const APART: u32 = 18;

/// A way to work the window.
pub trait Way {
    /// Does something to a part itself.
    fn at_part(&mut self, rig: &mut Rig, part: &str, deed: &Deed);
    /// Opens the list of a part and chooses from it.
    fn by_list(&mut self, rig: &mut Rig, part: &str, label: &str);
    /// Whether this way has the deed for an action at a part that answers so.
    fn can(&self, _it: &Handling, _deed: &Deed, _action: &Action) -> bool {
        true
    }
    /// Heights at which a part that is air can be held to.
    fn heights(&self) -> &'static [Height] {
        &[Height::Head, Height::Floor]
    }
    /// Walks to a place.
    fn go(&mut self, rig: &mut Rig, place: Place) {
        self.choose(rig, &format!("Go to: {}", place.label()));
    }
    /// Presses what is called so.
    fn choose(&mut self, rig: &mut Rig, label: &str);
    /// Types into what has the keyboard, and ends with Enter.
    fn type_in(&mut self, rig: &mut Rig, text: &str) {
        rig.type_text(text);
    }
}

/// One job, one way: gives what was asked for and what was done.
fn play(job: &str, way: &mut dyn Way) {
    let mut rig = Rig::open(TestStore::default(), Some(job), (1280, 720), Pixels::None);
    way.choose(&mut rig, "Speed ×20");
    let mut technician = Technician::new(rig.job().card());
    let mut asked: Vec<Action> = Vec::new();
    let mut frames = 0;
    while rig.job().over().is_none() {
        if rig.job().pace().speed == 1 && !rig.job().hazard() {
            way.choose(&mut rig, "Speed ×20");
        }
        let looks = rig.job().pace().speed;
        let seen = rig.seen();
        let action = (0..looks).find_map(|_| technician.next(&seen));
        match action {
            Some(action) => {
                rig.frame_ms(AT_WORK_MS);
                perform(&mut rig, way, &action);
                asked.push(action);
                rig.frame_ms(WAITING_MS);
            }
            None => rig.frames(1),
        }
        frames += 1;
        assert!(frames < MOST_FRAMES, "{job} does not end; asked last: {:#?}", last(&asked));
    }
    let done: Vec<Action> =
        rig.job().finished().done.iter().map(|(_, action)| action.clone()).collect();
    let (asked, done) = (plain(&asked), plain(&done));
    for (index, (a, d)) in asked.iter().zip(&done).enumerate() {
        assert_eq!(a, d, "{job}: step {index} after {:#?}", last(&asked[..index]));
    }
    assert_eq!(asked.len(), done.len(), "{job}");
}

fn last(done: &[Action]) -> &[Action] {
    &done[done.len().saturating_sub(6)..]
}

/// Does what the technician asks for.
fn perform(rig: &mut Rig, way: &mut dyn Way, action: &Action) {
    match action {
        Action::Go(place) if on_the_bar(*place) => {
            way.go(rig, *place);
            settle(rig);
            assert_eq!(rig.seen().place, *place);
        }
        Action::Write(reading) => write(rig, way, *reading),
        Action::WriteFinding(finding) => {
            let part = finding.cause.part().label();
            if !rig.is_named(part) {
                way.choose(rig, "What was wrong");
            }
            way.choose(rig, part);
            way.choose(rig, finding.cause.label());
            way.choose(rig, finding.answer.label());
            for backing in &finding.evidence {
                way.choose(rig, &quarterturn::panels::finding::label(*backing));
            }
            way.choose(rig, "Write it on the sheet");
        }
        Action::HandOver(said) => {
            let ending = match said.ending {
                Ending::InService => "The furnace is back in service",
                Ending::SupplyOwnerCalled => "It runs; the owner of the supply has been called",
                Ending::ShutOff => "Shut off, tagged and explained",
            };
            if !rig.is_named(ending) {
                way.choose(rig, "End the job");
            }
            way.choose(rig, ending);
            for duty in &said.not_done {
                way.choose(rig, duty.label());
            }
            way.choose(rig, "Hand over and leave");
        }
        // What it shows goes on while the hand is on the way to the list.
        Action::WriteMeasured(_) => {
            let label = rig.name_that_begins("Write: ");
            let measured = label.split(' ').take(3).collect::<Vec<_>>().join(" ");
            way.choose(rig, &measured);
            settle(rig);
        }
        Action::Setpoint(half_f) => {
            for _ in 0..60 {
                let now = rig.seen().hall.expect("at the thermostat").setpoint_half_f;
                match (half_f - now).signum() {
                    0 => return,
                    press => at_hand(rig, way, &Action::Setpoint(now + press)),
                }
            }
            panic!("the setpoint never came to {half_f}");
        }
        Action::HoseOn { port, push: Push::Fully } => {
            // Over the first barb, then over the second.
            let halfway = Action::HoseOn { port: *port, push: Push::Halfway };
            if rig.seen().fill(*port) == Some(PortFill::BareAdapter) {
                at_hand(rig, way, &halfway);
            }
            at_hand(rig, way, action);
        }
        Action::Plug { port, step: PlugStep::Tighten(eighths @ 2..) } => {
            for _ in 0..*eighths {
                at_hand(rig, way, &Action::Plug { port: *port, step: PlugStep::Tighten(1) });
            }
        }
        other => at_hand(rig, way, other),
    }
}

fn on_the_bar(place: Place) -> bool {
    match place {
        Place::Yard | Place::PlantRoom | Place::GasValve | Place::Hall => true,
        Place::Away => false,
    }
}

/// On the part itself where the hand has a way for it, else from the part's list, else from what can
/// be done here; from where one kneels after getting up.
fn at_hand(rig: &mut Rig, way: &mut dyn Way, action: &Action) {
    let seen = rig.seen();
    if let Some((part, deed)) = deed(rig, way, &seen, action) {
        way.at_part(rig, &part, &deed);
        settle(rig);
        if deed == Deed::Press {
            rig.frame_ms(WAITING_MS);
            rig.frames(APART);
            rig.frame_ms(AT_WORK_MS);
        }
        return;
    }
    if let Some((place, label)) = listed(rig, &seen, action) {
        match place {
            Where::Part(part) => {
                way.by_list(rig, &part, &label);
                settle(rig);
                if rig.is_named(CLOSE) {
                    way.choose(rig, CLOSE);
                }
            }
            Where::Here => way.choose(rig, &label),
        }
        settle(rig);
        return;
    }
    assert_eq!(seen.place, Place::GasValve, "nothing here offers {action:?}");
    perform(rig, way, &Action::Go(Place::PlantRoom));
    at_hand(rig, way, action);
    perform(rig, way, &Action::Go(Place::GasValve));
}

/// Until what was done is seen, and a press more is none of a double click.
fn settle(rig: &mut Rig) {
    rig.frame_ms(WAITING_MS);
    rig.frames(3);
    rig.frame_ms(AT_WORK_MS);
}

/// Where a list has an action, and what it is called there.
fn listed(rig: &Rig, seen: &Seen, action: &Action) -> Option<(Where, String)> {
    for spot in rig.spots().iter().rev() {
        let part = parts::canonical(&spot.part).to_owned();
        let mut choices = actions::choices(&part, seen).into_iter();
        if let Some(choice) = choices.find(|choice| choice.action == *action) {
            return Some((Where::Part(part), choice.label));
        }
    }
    let mut general = actions::here(seen).into_iter().chain(actions::in_hand(seen));
    let choice = general.find(|choice| choice.action == *action)?;
    Some((Where::Here, choice.label))
}

fn write(rig: &mut Rig, way: &mut dyn Way, reading: Reading) {
    let cell = rig.name_that_begins(&cell_of(reading));
    way.choose(rig, &cell);
    way.type_in(rig, &format!("{:.2}", f64::from(reading.thousandths) / 1000.0));
    settle(rig);
}

#[test]
fn three_jobs_are_done_by_the_mouse() {
    JOBS.into_iter().for_each(|job| play(job, &mut Mouse));
}

#[test]
fn three_jobs_are_done_by_a_finger() {
    JOBS.into_iter().for_each(|job| play(job, &mut Finger));
}

#[test]
fn three_jobs_are_done_by_keys() {
    JOBS.into_iter().for_each(|job| play(job, &mut Keys));
}

/// Every shipped job by keys alone; a quarter of an hour.
#[test]
#[ignore = "a quarter of an hour"]
fn every_job_is_done_by_keys() {
    for one in quarterturn::scenario::builtin::LADDER {
        eprintln!("{}", one.id);
        play(one.id, &mut Keys);
    }
}
