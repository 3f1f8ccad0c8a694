//! Manners of good work. What each of them changes loses no safety, no reading and no truth, so it may
//! cost nothing.

use super::detour::{Piece, decide, wait};
use crate::hands::action::{Action, Topic};
use crate::parts::{HandValve, Height, Reading, Screw};
use crate::rng::Stream;
use crate::senses::seen::{Display, Seen};
use crate::units::PressureUnit;

/// Declares the manners with their words for people.
macro_rules! manners {
    ($( $(#[doc = $doc:literal])+ $manner:ident = $words:expr; )+) => {
        /// A manner of good work.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Manner { $( $(#[doc = $doc])+ $manner, )+ }

        impl Manner {
            /// Every manner, in the order of the page.
            pub const ALL: &'static [Self] = &[ $( Self::$manner, )+ ];

            /// In words for people.
            #[must_use]
            pub fn words(self) -> &'static str {
                match self { $( Self::$manner => $words, )+ }
            }
        }
    };
}

manners! {
    /// The meter is switched to kilopascals for a reading, and the number is written so.
    ReadsKilopascals = t!("manner-reads-kilopascals");
    /// The meter is switched to millibars for a reading, and the number is written so.
    ReadsMillibars = t!("manner-reads-millibars");
    /// The number is worked out in millibars by hand, to a tenth.
    WorksOutMillibars = t!("manner-works-out-millibars");
    /// The number is worked out in kilopascals by hand, to a hundredth.
    WorksOutKilopascals = t!("manner-works-out-kilopascals");
    /// The last digit of the display is cut off.
    CutsOff = t!("manner-cuts-off");
    /// The last digit of the display is rounded away.
    Rounds = t!("manner-rounds");
    /// A slip of the pencil is struck out at once: a point in the wrong place.
    StrikesOut = t!("manner-strikes-out");
    /// Each number is written a second time, half a minute later.
    WritesTwice = t!("manner-writes-twice");
    /// The meter is zeroed three times where the technician does it once.
    ZeroesAgain = t!("manner-zeroes-again");
    /// A joint is brushed a second time before it is wiped.
    BrushesTwice = t!("manner-brushes-twice");
    /// Some seconds pass before an act.
    TakesTime = t!("manner-takes-time");
    /// A long break with the gas shut off.
    TakesABreak = t!("manner-takes-a-break");
    /// What is looked at is looked at again.
    LooksTwice = t!("manner-looks-twice");
    /// The air is smelt at both heights wherever the way leads.
    SmellsEverywhere = t!("manner-smells-everywhere");
    /// Hand valves are turned halfway first, then to the stop.
    TurnsValvesInSteps = t!("manner-turns-valves-in-steps");
    /// Screws are turned an eighth at a time.
    TurnsByEighths = t!("manner-turns-by-eighths");
    /// A level's screw is turned an eighth past the mark and back.
    Overshoots = t!("manner-overshoots");
    /// The customer is told everything twice.
    TellsTwice = t!("manner-tells-twice");
    /// A tool is picked up, put down and picked up again.
    PicksUpTwice = t!("manner-picks-up-twice");
    /// Calls are made twice.
    CallsTwice = t!("manner-calls-twice");
}

impl Manner {
    /// What becomes of an action of the technician; none where the manner has nothing to say to it.
    pub(super) fn carry_out(
        self,
        action: &Action,
        seen: &Seen,
        chance: &mut Stream,
    ) -> Option<Vec<Piece>> {
        if let Action::Write(reading) = action {
            return self.written(*reading, chance);
        }
        match self {
            Self::ReadsKilopascals
            | Self::ReadsMillibars
            | Self::WorksOutMillibars
            | Self::WorksOutKilopascals
            | Self::CutsOff
            | Self::Rounds
            | Self::StrikesOut
            | Self::WritesTwice => None,
            Self::ZeroesAgain => matches!(action, Action::MeterZero).then(|| times(action, 3, 3)),
            Self::BrushesTwice => {
                matches!(action, Action::LeakFluid(_)).then(|| times(action, 2, 5))
            }
            Self::LooksTwice => matches!(action, Action::Look(_)).then(|| times(action, 2, 1)),
            Self::CallsTwice => matches!(action, Action::Call(_)).then(|| times(action, 2, 20)),
            Self::TellsTwice => {
                let tells = matches!(action, Action::Tell(it) if *it != Topic::GetOut);
                tells.then(|| times(action, 2, 2))
            }
            Self::TakesTime => (chance.below(4) == 0).then(|| late(action, chance)),
            Self::TakesABreak => {
                let breaks = matches!(action, Action::Go(_)) && is_shut_off(seen);
                let minutes = 2 + u64::from(chance.below(15));
                breaks.then(|| vec![wait(60 * minutes), action.clone().into()])
            }
            Self::SmellsEverywhere => matches!(action, Action::Go(_)).then(|| {
                let sniff = |height| Piece::Do(Action::Sniff(height));
                vec![action.clone().into(), sniff(Height::Floor), sniff(Height::Head)]
            }),
            Self::PicksUpTwice => matches!(action, Action::Take(_)).then(|| {
                let again = action.clone().into();
                vec![action.clone().into(), wait(1), Action::PutDown.into(), wait(1), again]
            }),
            Self::TurnsValvesInSteps => {
                let Action::HandValve { hand_valve, degrees } = action else { return None };
                Some(in_steps(*hand_valve, *degrees))
            }
            Self::TurnsByEighths | Self::Overshoots => {
                let Action::Turn { screw, eighths } = action else { return None };
                self.turned(*screw, *eighths)
            }
        }
    }

    /// What becomes of a reading that is to be written.
    fn written(self, it: Reading, chance: &mut Stream) -> Option<Vec<Piece>> {
        let pieces = match self {
            Self::ReadsKilopascals => reads_in(PressureUnit::KPa, it),
            Self::ReadsMillibars => reads_in(PressureUnit::Mbar, it),
            Self::WorksOutMillibars => vec![write(worked_out(it, PressureUnit::Mbar, 100))],
            Self::WorksOutKilopascals => vec![write(worked_out(it, PressureUnit::KPa, 10))],
            Self::CutsOff => {
                vec![write(Reading { thousandths: it.thousandths / 100 * 100, ..it })]
            }
            Self::Rounds => {
                vec![write(Reading { thousandths: nearest(it.thousandths, 100), ..it })]
            }
            // A point in the wrong place of nothing is no slip.
            Self::StrikesOut if it.thousandths == 0 => vec![write(it)],
            Self::StrikesOut => {
                let slip = Reading { thousandths: it.thousandths.saturating_mul(10), ..it };
                vec![Piece::Slip(slip), wait(2), write(it)]
            }
            Self::WritesTwice => {
                let again =
                    move |seen: &Seen| in_shown_unit(it, seen).map(write).into_iter().collect();
                vec![write(it), wait(30), decide(again)]
            }
            Self::TakesTime if chance.below(4) == 0 => late(&Action::Write(it), chance),
            Self::TakesTime
            | Self::ZeroesAgain
            | Self::BrushesTwice
            | Self::TakesABreak
            | Self::LooksTwice
            | Self::SmellsEverywhere
            | Self::TurnsValvesInSteps
            | Self::TurnsByEighths
            | Self::Overshoots
            | Self::TellsTwice
            | Self::PicksUpTwice
            | Self::CallsTwice => return None,
        };
        Some(pieces)
    }

    /// What becomes of a turn of a screw.
    fn turned(self, screw: Screw, eighths: i16) -> Option<Vec<Piece>> {
        if self == Self::TurnsByEighths {
            return Some(by_eighths(screw, eighths));
        }
        screw.level()?;
        let turn = |eighths| Piece::Do(Action::Turn { screw, eighths });
        let more = eighths.signum();
        Some(vec![turn(eighths), wait(8), turn(more), wait(8), turn(-more)])
    }
}

/// The action so many times, with seconds between.
fn times(action: &Action, count: usize, seconds: u64) -> Vec<Piece> {
    let mut pieces = vec![action.clone().into()];
    for _ in 1..count {
        pieces.extend([wait(seconds), action.clone().into()]);
    }
    pieces
}

/// The action some seconds later.
fn late(action: &Action, chance: &mut Stream) -> Vec<Piece> {
    vec![wait(1 + u64::from(chance.below(8))), action.clone().into()]
}

fn write(reading: Reading) -> Piece {
    Action::Write(reading).into()
}

/// The meter switched to a unit, its number written in that unit, and the meter switched back.
fn reads_in(unit: PressureUnit, reading: Reading) -> Vec<Piece> {
    let now = move |seen: &Seen| in_shown_unit(reading, seen).map(write).into_iter().collect();
    vec![
        Action::MeterUnit(unit).into(),
        wait(1),
        decide(now),
        Action::MeterUnit(PressureUnit::InWc).into(),
    ]
}

/// A reading with the number and the unit that the display shows now; none where it shows none.
fn in_shown_unit(reading: Reading, seen: &Seen) -> Option<Reading> {
    let Some(Display::Number(shown)) = seen.display() else { return None };
    #[expect(clippy::cast_possible_truncation, reason = "a display's number")]
    let thousandths = (shown.value * 1000.0).round() as i32;
    Some(Reading { thousandths, unit: shown.unit, ..reading })
}

/// A reading worked out in another unit, rounded to so many thousandths of it.
fn worked_out(reading: Reading, unit: PressureUnit, to: i32) -> Reading {
    let in_unit = f64::from(reading.thousandths) * reading.unit.pa() / unit.pa();
    #[expect(clippy::cast_possible_truncation, reason = "a display's number")]
    let thousandths = nearest(in_unit.round() as i32, to);
    Reading { thousandths, unit, ..reading }
}

/// The multiple of `to` that lies nearest; halves go up in size.
fn nearest(number: i32, to: i32) -> i32 {
    (number.abs() + to / 2) / to * to * number.signum()
}

/// A hand valve turned halfway first.
fn in_steps(hand_valve: HandValve, degrees: i16) -> Vec<Piece> {
    let turn = |degrees| Piece::Do(Action::HandValve { hand_valve, degrees });
    vec![turn(45), wait(1), turn(degrees)]
}

/// A screw turned an eighth at a time.
fn by_eighths(screw: Screw, eighths: i16) -> Vec<Piece> {
    let one = Action::Turn { screw, eighths: eighths.signum() };
    (0..eighths.abs()).flat_map(|_| [one.clone().into(), wait(3)]).collect()
}

/// Whether it is seen that the furnace's manual valve is shut.
fn is_shut_off(seen: &Seen) -> bool {
    seen.furnace.as_ref().is_some_and(|furnace| furnace.manual_valve.is_shut())
}
