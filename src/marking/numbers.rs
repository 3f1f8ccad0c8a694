//! Written numbers, each against what the meter showed.
//!
//! A number is right if somebody who reads the display may write it: rounded or cut off at a decimal
//! that the plate's figures carry, or off by half of that decimal at most. Rounded or cut off one
//! decimal coarser it is still the number that was read, written too coarsely. Worked out in another
//! unit it may be off by what hand reckoning takes for the factor. What the display never showed in
//! any state that the number may come from is unfounded.

use super::ledger::Ledger;
use super::spells::{after_flow, as_it_ended, shown_before};
use crate::catalogue::repair::{Moves, Repair};
use crate::hands::event::{EventKind, ReadingFact};
use crate::parts::{Phase, Port, Reading, Screw, Stage};
use crate::rules::evidence::Writing;
use crate::rules::{Evidence, Slip};
use crate::senses::meter_history::{Span, Spell};
use crate::units::{PA_PER_INWC, PressureUnit};

/// Hand reckoning takes 2.5 mbar, a quarter of a kilopascal, for an inch of water: four parts in a
/// thousand too much (common practice).
const RECKONED: f64 = 0.004;
/// One digit of the manometer, in pascals.
const DIGIT_PA: f64 = 0.01 * PA_PER_INWC;
/// How many times the last decimal a number must be so that it is a reading at all, however coarse.
const COARSEST: i32 = 5;
/// Less than any digit, in pascals: numbers on a limit.
const EDGE_PA: f64 = 0.1;

/// What a written number is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Judged {
    /// The number stood there, and may be written so.
    Right(Spell),
    /// It stood there, and is written so coarsely that it tells little.
    Coarse(Spell),
    /// It was shown there, on its way to where the pressure came to rest.
    Unsettled(Spell),
    /// It stands at one leg of the water column.
    OneLeg(Spell),
    /// It stood at that port in another state.
    OtherState(Spell),
    /// It stood at the other port.
    OtherPort(Spell),
    /// The same digits stood there in this unit.
    OtherUnit(Spell, PressureUnit),
    /// Nothing that was shown explains it. It may have stood there before the last turn.
    Unfounded(Option<Spell>),
}

/// A number on the sheet.
#[derive(Debug, Clone, Copy)]
pub(super) struct Number {
    /// Its place in the list of events.
    pub index: usize,
    /// Moment of writing, in ticks.
    pub tick: u64,
    /// Reading as it stands on the sheet.
    pub reading: Reading,
    /// Outcome of holding it against what was shown.
    pub judged: Judged,
}

impl Number {
    /// Whether it says what the meter showed there.
    pub fn is_right(&self) -> bool {
        matches!(self.judged, Judged::Right(_) | Judged::Coarse(_))
    }

    /// Whether it is written for this port, in one of these states.
    pub fn is_for(&self, port: Port, stages: &[Stage]) -> bool {
        self.reading.port == port && stages.contains(&self.reading.stage)
    }

    /// Whether it stands on the same line as another.
    pub fn same_line(&self, other: &Self) -> bool {
        let line = |it: &Self| (it.reading.port, it.reading.stage, it.reading.phase);
        line(self) == line(other)
    }

    /// The spell that it was read in, if anything that was shown explains it.
    pub fn spell(&self) -> Option<&Spell> {
        match &self.judged {
            Judged::Right(spell)
            | Judged::Coarse(spell)
            | Judged::Unsettled(spell)
            | Judged::OneLeg(spell)
            | Judged::OtherState(spell)
            | Judged::OtherPort(spell)
            | Judged::OtherUnit(spell, _) => Some(spell),
            Judged::Unfounded(_) => None,
        }
    }

    /// What stood on the display where it was read, if it is right.
    pub fn stood(&self) -> Option<Span> {
        self.spell().filter(|_| self.is_right()).and_then(|spell| spell.stood)
    }

    /// Whether it was read after a moment, in ticks.
    pub fn is_read_after(&self, tick: u64) -> bool {
        self.stood().is_some_and(|stood| stood.until > tick)
    }

    /// The slip that it is, if it is one.
    pub fn slip(&self) -> Option<Slip> {
        match self.judged {
            Judged::Right(_) => None,
            Judged::Coarse(_) => Some(Slip::Coarse),
            Judged::Unsettled(_) => Some(Slip::Unsettled),
            Judged::OneLeg(_) => Some(Slip::OneLeg),
            Judged::OtherState(_) => Some(Slip::OtherState),
            Judged::OtherPort(_) => Some(Slip::OtherPort),
            Judged::OtherUnit(..) => Some(Slip::OtherUnit),
            Judged::Unfounded(_) => Some(Slip::Unfounded),
        }
    }
}

/// Every number on the sheet, in order.
pub(super) fn numbers(l: &Ledger) -> Vec<Number> {
    l.wrote()
        .map(|(index, tick, fact)| Number {
            index,
            tick,
            reading: fact.reading,
            judged: judge(l, index, tick, fact),
        })
        .collect()
}

/// The evidence that charges a number for one of these places that was read and is written wrongly, if
/// there is one. A line that carries it is not empty: what is missing there follows from it.
pub(super) fn slip_at(all: &[Number], port: Port, stages: &[Stage]) -> Option<Evidence> {
    let read = |it: &&Number| it.is_for(port, stages) && !it.is_right() && it.spell().is_some();
    all.iter()
        .filter(read)
        .find_map(Number::slip)
        .map(|slip| Evidence::Writing(Writing::Number(slip)))
}

fn judge(l: &Ledger, index: usize, tick: u64, fact: &ReadingFact) -> Judged {
    let known = shown_before(l, index);
    // As found stays true whatever is turned since; as left must be newer than what moved it last.
    let valid_from = match fact.reading.phase {
        Phase::Found => 0,
        Phase::Left => moved_before(l, index, &fact.reading),
    };
    let again = fact.reading.stage == Stage::RestAgain;
    let mut it = Judging {
        fact,
        written: Written::new(l, &fact.reading),
        after_flow: if again { after_flow(l, &known) } else { Vec::new() },
        running: known.last().filter(|spell| is_running(spell, tick)).copied(),
        here: Vec::new(),
        elsewhere: Vec::new(),
    };
    let valid = known.iter().rev().filter(|spell| spell.shown.since >= valid_from);
    (it.here, it.elsewhere) = valid.copied().partition(|spell| it.is_here(spell));
    let older = || {
        let stood = known.iter().rev().filter(|spell| it.is_here(spell));
        Judged::Unfounded(stood.copied().find(|spell| it.written.stands_in(spell)))
    };
    it.right()
        .or_else(|| it.right_early(l))
        .or_else(|| it.coarse())
        .or_else(|| it.unsettled())
        .or_else(|| it.one_leg())
        .or_else(|| it.shown_elsewhere_now())
        .or_else(|| it.other_unit(l))
        .or_else(|| it.stood_elsewhere())
        .unwrap_or_else(older)
}

/// A number that is being judged, and what was shown before it was written: the latest first.
struct Judging<'a> {
    fact: &'a ReadingFact,
    written: Written,
    /// Beginnings of the spells at rest after flow, in ticks.
    after_flow: Vec<u64>,
    /// The spell that goes on.
    running: Option<Spell>,
    /// Spells in the state that the number is written for.
    here: Vec<Spell>,
    /// Spells in other states, at either port.
    elsewhere: Vec<Spell>,
}

impl Judging<'_> {
    fn is_here(&self, spell: &Spell) -> bool {
        let again = self.fact.reading.stage == Stage::RestAgain;
        spell.is(self.fact.reading.port, self.fact.reading.stage)
            && (!again || self.after_flow.contains(&spell.shown.since))
    }

    /// Of the spells in its state, one in which it stood.
    fn stood_here(&self, written: &Written) -> Option<Spell> {
        self.here.iter().find(|spell| written.stands_in(spell)).copied()
    }

    /// The spell that goes on in its state, with nothing settled yet.
    fn unsettled_now(&self) -> Option<Spell> {
        self.running.filter(|spell| self.is_here(spell) && spell.stood.is_none())
    }

    fn right(&self) -> Option<Judged> {
        self.stood_here(&self.written).map(Judged::Right)
    }

    /// Written early, and yet the number at which it then stood.
    fn right_early(&self, l: &Ledger) -> Option<Judged> {
        let ended = as_it_ended(l, &self.unsettled_now()?)?;
        self.written.stands_in(&ended).then_some(Judged::Right(ended))
    }

    fn coarse(&self) -> Option<Judged> {
        self.stood_here(&self.written.coarser()?).map(Judged::Coarse)
    }

    /// Shown in passing, where nothing has settled: now, or in all spells of its state.
    fn unsettled(&self) -> Option<Judged> {
        let never_stood = self.here.iter().all(|spell| spell.stood.is_none());
        let passed = self.here.iter().filter(|_| never_stood).copied();
        let mut all = self.unsettled_now().into_iter().chain(passed);
        all.find(|spell| self.written.fits(spell.shown, spell.unit)).map(Judged::Unsettled)
    }

    /// The number is that of one leg of the water column: half of the pressure, more or less by how
    /// far the scale's zero stands off.
    fn one_leg(&self) -> Option<Judged> {
        let off_pa = self.fact.scale_off_pa?;
        // The legs are read to a tenth of an inch, each for itself.
        let reading_pa = 0.05 * PA_PER_INWC;
        let on_leg = |span: Span, off_pa: f64| Span {
            least_pa: span.least_pa / 2.0 + off_pa - reading_pa,
            most_pa: span.most_pa / 2.0 + off_pa + reading_pa,
            ..span
        };
        let is_leg = |spell: &&Spell| {
            let span = spell.stood.unwrap_or(spell.shown);
            let fits = |off_pa| self.written.fits(on_leg(span, off_pa), spell.unit);
            fits(off_pa) || fits(-off_pa)
        };
        self.here.iter().find(is_leg).copied().map(Judged::OneLeg)
    }

    /// What the display shows in another state while this is written.
    fn shown_elsewhere_now(&self) -> Option<Judged> {
        let spell = self.running.filter(|spell| !self.is_here(spell))?;
        let span = spell.stood.unwrap_or(spell.shown);
        self.written.fits(span, spell.unit).then(|| self.of_elsewhere(spell))
    }

    /// The same digits in another unit, against what stood.
    fn other_unit(&self, l: &Ledger) -> Option<Judged> {
        let reading = self.fact.reading;
        let others = PressureUnit::ALL.into_iter().filter(|&unit| unit != reading.unit);
        others.into_iter().find_map(|unit| {
            let other = Written::new(l, &Reading { unit, ..reading });
            let spell = self.stood_here(&other).filter(|_| other.tells_unit())?;
            Some(Judged::OtherUnit(spell, unit))
        })
    }

    /// What stood in another state, at the same port first.
    fn stood_elsewhere(&self) -> Option<Judged> {
        let stood = |spell: &&Spell| self.written.stands_in(spell);
        let same_port = |spell: &&Spell| spell.port == self.fact.reading.port;
        let spell = self.elsewhere.iter().filter(same_port).find(stood);
        spell.or_else(|| self.elsewhere.iter().find(stood)).map(|it| self.of_elsewhere(*it))
    }

    fn of_elsewhere(&self, spell: Spell) -> Judged {
        if spell.port == self.fact.reading.port {
            Judged::OtherState(spell)
        } else {
            Judged::OtherPort(spell)
        }
    }
}

/// Whether a spell goes on at a moment, in ticks: the number of that moment is not taken yet.
fn is_running(spell: &Spell, tick: u64) -> bool {
    spell.shown.until + 1 >= tick
}

/// Moment of the last turn or repair before an event that may have moved what a reading says, in ticks:
/// what was shown before it is another number.
fn moved_before(l: &Ledger, index: usize, reading: &Reading) -> u64 {
    let level = reading.stage.level(l.levels());
    let turned = |screw: Screw| match (screw.level(), reading.port) {
        (None, _) => true,
        // The spring of a level may stand on those below it.
        (Some(screw), Port::Manifold) => level.is_none_or(|level| screw <= level),
        (Some(_), Port::Inlet) => false,
    };
    let mended = |repair: Repair| repair.moves() != Moves::Nothing || repair.is_on_reading();
    let moves = |what: &EventKind| {
        matches!(what, EventKind::Turned { screw, .. } if turned(*screw))
            || matches!(what, EventKind::Mended { repair, .. } if mended(*repair))
    };
    l.events[..index].iter().rev().find(|event| moves(&event.what)).map_or(0, |event| event.tick)
}

/// A written number, and what it may stand for.
#[derive(Debug, Clone, Copy)]
struct Written {
    thousandths: i32,
    unit: PressureUnit,
    /// The last decimal at which it may be rounded or cut off, in thousandths of the unit.
    step: i32,
    /// The decimal that the plate's figures carry, in the same.
    plate_step: i32,
    /// Half of that decimal, in pascals.
    near_pa: f64,
}

impl Written {
    fn new(l: &Ledger, reading: &Reading) -> Self {
        let decimals = l.plate().figures().decimals;
        // A tenth of an inch is written as a hundredth of a kilopascal.
        let places = decimals + u8::from(reading.unit == PressureUnit::KPa);
        let plate_step = power_of_ten(3_u8.saturating_sub(places));
        let decimal_pa =
            f64::from(power_of_ten(3_u8.saturating_sub(decimals))) / 1000.0 * PA_PER_INWC;
        Self {
            thousandths: reading.thousandths,
            unit: reading.unit,
            step: last_digit(reading.thousandths).min(plate_step),
            plate_step,
            near_pa: (decimal_pa / 2.0).max(DIGIT_PA),
        }
    }

    /// The same number taken as written one decimal coarser than the plate's figures, if it is, and if
    /// that decimal is small beside it.
    fn coarser(self) -> Option<Self> {
        let step = last_digit(self.thousandths).min(10 * self.plate_step);
        let small = COARSEST * step <= self.thousandths.abs();
        (step > self.plate_step && small).then_some(Self { step, ..self })
    }

    /// Whether it tells one unit from another: near nothing they are all alike.
    fn tells_unit(&self) -> bool {
        let written_pa = f64::from(self.thousandths.unsigned_abs()) / 1000.0 * self.unit.pa();
        written_pa > 2.0 * self.near_pa
    }

    /// Whether it is a number that stood in a spell.
    fn stands_in(&self, spell: &Spell) -> bool {
        spell.stood.is_some_and(|span| self.fits(span, spell.unit))
    }

    /// Whether somebody who sees a number between these two, in this unit, may write this one.
    fn fits(&self, span: Span, shown_in: PressureUnit) -> bool {
        let one_pa = self.unit.pa() / 1000.0;
        let written_pa = f64::from(self.thousandths.unsigned_abs()) * one_pa;
        let step_pa = f64::from(self.step) * one_pa;
        let reckoned_pa = if self.unit == shown_in { 0.0 } else { RECKONED * written_pa };
        let below_pa = (step_pa / 2.0).max(self.near_pa) + reckoned_pa + EDGE_PA;
        let above_pa = (step_pa - EDGE_PA).max(self.near_pa + EDGE_PA) + reckoned_pa;
        // What is cut off makes a number smaller, on either side of nothing.
        let (least, most) = if self.thousandths < 0 {
            (-span.most_pa, -span.least_pa)
        } else {
            (span.least_pa, span.most_pa)
        };
        least <= written_pa + above_pa && most >= written_pa - below_pa
    }
}

/// The place of the last digit that is written, in thousandths: 100 of 6.6, 1000 of 7 and of 10.
/// Zeros at the end cannot be told from none.
fn last_digit(thousandths: i32) -> i32 {
    if thousandths == 0 {
        return 1;
    }
    (1..=3).map(power_of_ten).take_while(|step| thousandths % step == 0).last().unwrap_or(1)
}

fn power_of_ten(exponent: u8) -> i32 {
    (0..exponent).fold(1, |power, _| power * 10)
}
