//! Whole jobs played through the bench, each by the technician with one thing done otherwise.

use std::collections::VecDeque;

use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, Contact, Topic};
use quarterturn::hands::refusal::Refusal;
use quarterturn::marking::{Brief, Marks, Observer};
use quarterturn::parts::{
    HandValve, Level, OnOff, OtherAppliance, Phase, Place, Port, Reading, Stage,
};
use quarterturn::scenario::{Scenario, builtin, load};
use quarterturn::senses::seen::{Display, Seen};
use quarterturn::technician::{Player, Technician, play};
use quarterturn::units::{PressureUnit, TICKS_PER_S};

use super::all_worth;

/// A piece of what is done in place of an action.
enum Piece {
    Do(Action),
    /// So many seconds pass.
    Wait(u64),
    /// The number on the display is kept in mind.
    Keep,
    /// What is kept in mind is written there as found.
    Write(Port, Stage),
}

impl From<&Action> for Piece {
    fn from(action: &Action) -> Self {
        Self::Do(action.clone())
    }
}

/// The technician with some actions changed.
struct Otherwise<F> {
    good: Technician,
    change: F,
    queue: VecDeque<Piece>,
    kept: Option<i32>,
}

impl<F: FnMut(&Action, &Seen) -> Vec<Piece>> Player for Otherwise<F> {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        loop {
            match self.queue.pop_front() {
                Some(Piece::Do(action)) => return Some(action),
                Some(Piece::Wait(0)) => continue,
                Some(Piece::Wait(ticks)) => {
                    self.queue.push_front(Piece::Wait(ticks - 1));
                    return None;
                }
                Some(Piece::Keep) => {
                    let Some(Display::Number(shown)) = seen.display() else { panic!("no number") };
                    #[expect(clippy::cast_possible_truncation, reason = "a display's number")]
                    let thousandths = (shown.value * 1000.0).round() as i32;
                    self.kept = Some(thousandths);
                    continue;
                }
                Some(Piece::Write(port, stage)) => {
                    let (phase, unit) = (Phase::Found, PressureUnit::InWc);
                    let thousandths = self.kept.unwrap();
                    return Some(Action::Write(Reading { port, stage, phase, thousandths, unit }));
                }
                None => {}
            }
            let action = self.good.next(seen)?;
            let ticks = |piece| match piece {
                Piece::Wait(seconds) => Piece::Wait(seconds * TICKS_PER_S),
                other => other,
            };
            self.queue.extend((self.change)(&action, seen).into_iter().map(ticks));
        }
    }

    fn refused(&mut self, action: &Action, why: Refusal) {
        panic!("{action:?}: {why:?}");
    }

    fn finished(&self) -> bool {
        self.queue.is_empty() && self.good.finished()
    }
}

fn job(id: &str) -> Scenario {
    load(builtin::find(id).unwrap().text).unwrap()
}

/// A job's marks, played with some actions changed.
fn played(id: &str, change: impl FnMut(&Action, &Seen) -> Vec<Piece>) -> Marks {
    let scenario = job(id);
    let setup = scenario.draw(1);
    let good = Technician::new(&setup.card);
    let mut bench = Bench::new(setup);
    let mut observer = Observer::new(&bench);
    let mut player = Otherwise { good, change, queue: VecDeque::new(), kept: None };
    play(&mut bench, &mut player, 6 * 3600, &mut observer);
    let book = scenario.marking.rule_book().unwrap();
    observer.marks(&book, &Brief { right_endings: scenario.marking.endings.clone() })
}

/// The same with every number written otherwise.
fn written(id: &str, change: impl Fn(Reading) -> Reading) -> Marks {
    played(id, |action, _| match action {
        Action::Write(reading) => vec![Piece::Do(Action::Write(change(*reading)))],
        other => vec![other.into()],
    })
}

fn rules(marks: &Marks) -> Vec<&str> {
    marks.findings.iter().map(|it| it.rule.as_str()).collect()
}

const JOBS: [&str; 4] =
    ["healthy-natural", "healthy-propane", "a-roar-at-night", "natural-gas-busy-kitchen"];

/// Numbers cut off at a tenth, rounded to one, worked out in kilopascals and millibars by hand: full
/// marks on every job, whatever is read there.
#[test]
fn every_honest_way_of_writing_has_full_marks() {
    let tenth = |thousandths: i32| thousandths - thousandths % 100;
    let by_hand = |reading: Reading, unit: PressureUnit, per_inch: i32, step: i32| {
        // To the nearest step, as hand reckoning rounds.
        let exact = reading.thousandths * per_inch / 100;
        Reading { thousandths: (exact + step / 2) / step * step, unit, ..reading }
    };
    for id in JOBS {
        for (how, marks) in [
            ("cut off", written(id, |it| Reading { thousandths: tenth(it.thousandths), ..it })),
            (
                "rounded",
                written(id, |it| Reading { thousandths: tenth(it.thousandths + 50), ..it }),
            ),
            ("kPa", written(id, |it| by_hand(it, PressureUnit::KPa, 25, 10))),
            ("mbar", written(id, |it| by_hand(it, PressureUnit::Mbar, 250, 100))),
        ] {
            assert!(
                marks.verdict.is_met() && marks.findings.is_empty(),
                "{id} {how}: {:#?}",
                marks.findings
            );
        }
    }
}

/// Numbers that nobody read are worth less than empty lines.
#[test]
fn made_up_numbers_are_worth_less_than_none() {
    let lost = |change: fn(&Action) -> Vec<Piece>| {
        all_worth(&played("healthy-natural", |action, _| change(action)))
    };
    let all = lost(|action| vec![action.into()]);
    let none = lost(|action| match action {
        Action::Write(_) => Vec::new(),
        other => vec![other.into()],
    });
    let made_up = lost(|action| match action {
        Action::Write(it) => {
            let thousandths = it.thousandths + 1_300;
            vec![Piece::Do(Action::Write(Reading { thousandths, ..*it }))]
        }
        other => vec![other.into()],
    });
    assert!(all.abs() < 1e-9);
    assert!(made_up > none + 5.0 && none > all + 15.0, "{made_up} {none} {all}");
}

fn found(action: &Action, port: Port, stage: Stage) -> bool {
    matches!(action, Action::Write(it)
        if (it.port, it.stage, it.phase) == (port, stage, Phase::Found))
}

/// The number on the display with the range burning, written for the inlet at rest: the state is wrong,
/// and nothing else, least of all the hold.
#[test]
fn a_rest_with_the_range_on_is_a_wrong_state() {
    let range = |to| Piece::Do(Action::OtherAppliance { appliance: OtherAppliance::Range, to });
    let go = |place| Piece::Do(Action::Go(place));
    let marks = played("healthy-natural", |action, seen| {
        if !found(action, Port::Inlet, Stage::Rest) {
            return vec![action.into()];
        }
        let mut pieces = vec![range(OnOff::On)];
        let away = seen.place != Place::Hall;
        if away {
            pieces.insert(0, go(Place::Hall));
        }
        pieces.extend([
            go(Place::PlantRoom),
            Piece::Wait(30),
            Piece::Keep,
            Piece::Write(Port::Inlet, Stage::Rest),
            go(Place::Hall),
            range(OnOff::Off),
        ]);
        if away {
            pieces.push(go(seen.place));
        }
        pieces
    });
    assert_eq!(rules(&marks), ["wrong-stage"], "{:#?}", marks.findings);
    assert!(marks.verdict.is_met());
}

/// A valve throttled under the reading on high, and a number from then beside the right one: the state
/// is wrong, and a call that has no other ground is for nothing.
#[test]
fn a_throttled_valve_makes_no_ground() {
    let valve = |degrees| Piece::Do(Action::HandValve { hand_valve: HandValve::Furnace, degrees });
    let high = Stage::Firing(Level::High);
    let marks = played("healthy-natural", |action, _| {
        let mut pieces = vec![action.into()];
        if found(action, Port::Inlet, high) {
            pieces.extend([
                valve(8),
                Piece::Wait(25),
                Piece::Keep,
                valve(90),
                Piece::Wait(10),
                Piece::Write(Port::Inlet, high),
            ]);
        }
        if *action == Action::Tell(Topic::GasSmellDrill) {
            pieces.push(Piece::Do(Action::Call(Contact::SupplyOwner)));
        }
        pieces
    });
    assert_eq!(rules(&marks), ["wrong-stage", "needless-call"], "{:#?}", marks.findings);
}
