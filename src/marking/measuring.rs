//! Evidence of what was read and written.

use super::deed::{as_written, lower};
use super::ledger::{Caught, Hit, Ledger};
use super::numbers::{Judged, Number, numbers};
use crate::hands::event::EventKind;
use crate::parts::{Level, Push};
use crate::rules::Slip;
use crate::senses::meter_history::{GasDemand, Span, Spell};
use crate::units::{PressureUnit, Shown, TICK_S, inwc};

/// Half a digit of the manometer, in pascals: what lies nearer to a limit, nobody can tell from it.
pub(super) const HALF_DIGIT_PA: f64 = 0.005 * crate::units::PA_PER_INWC;

/// Numbers put right later than at once that cost nothing, on one job.
const SLIPS_FREE: usize = 2;
/// Wrong numbers before the right one of a line from which they are no slips: it is being guessed
/// at.
const GUESSES: usize = 3;
/// A number put right within this time, in seconds, with nothing else written between, is a slip of
/// the pencil struck out at once (common practice).
const AT_ONCE_S: f64 = 30.0;

fn number(it: &Number) -> String {
    t!(
        "seen-written",
        number = as_written(&it.reading),
        port = lower(it.reading.port.label()),
        stage = lower(it.reading.stage.label())
    )
}

/// A pressure in the unit that somebody wrote.
fn in_unit(pa: f64, unit: PressureUnit) -> String {
    Shown { value: pa / unit.pa(), unit }.to_string()
}

/// Numbers that are one kind of slip.
pub(super) fn written(l: &Ledger, slip: Slip) -> Vec<Hit> {
    let all = numbers(l);
    wrong_numbers(l, &all)
        .into_iter()
        .filter(|(it, _)| it.slip() == Some(slip))
        .map(|(it, caught)| Hit { caught, ..Hit::new(it.tick, number(it), truth(it)) })
        .collect()
}

/// Wrong numbers that cost something. A slip of the pencil that is struck out at once costs
/// nothing, however many there are. One that is put right later costs nothing either, but more than
/// a few of them cost a little. Many wrong numbers before the right one are guesses.
pub(super) fn wrong_numbers<'a>(l: &Ledger, all: &'a [Number]) -> Vec<(&'a Number, Caught)> {
    let corrected: Vec<Corrected<'_>> = all.iter().filter_map(|it| corrected(l, all, it)).collect();
    let is_guess = |it: &Corrected<'_>| {
        corrected.iter().filter(|one| one.right.index == it.right.index).count() >= GUESSES
    };
    let late = |it: &&Corrected<'_>| !it.is_at_once(all);
    let caught = |wrong: &Number| {
        let it = corrected.iter().find(|one| one.wrong.index == wrong.index);
        let Some(it) = it.filter(|it| !is_guess(it)) else { return Some(Caught::No) };
        let earlier = corrected.iter().take_while(|one| one.wrong.index < wrong.index);
        let costs = late(&it) && earlier.filter(late).count() >= SLIPS_FREE;
        costs.then_some(Caught::InTime)
    };
    let wrong = all.iter().filter(|it| it.slip().is_some());
    wrong.filter_map(|it| Some((it, caught(it)?))).collect()
}

/// What was true of a written number, in words.
fn truth(it: &Number) -> String {
    let unit = it.reading.unit;
    let span = |span: Span| (in_unit(span.least_pa, unit), in_unit(span.most_pa, unit));
    match &it.judged {
        Judged::Right(spell) | Judged::Coarse(spell) => {
            let (lower, upper) = span(spell.stood.unwrap_or(spell.shown));
            t!("true-stood", lower = lower, upper = upper)
        }
        Judged::Unsettled(spell) => {
            let (lower, upper) = span(spell.shown);
            t!("true-unsettled", lower = lower, upper = upper)
        }
        Judged::OneLeg(spell) => {
            let (lower, upper) = span(spell.stood.unwrap_or(spell.shown));
            t!("true-both-legs", lower = lower, upper = upper)
        }
        Judged::OtherState(spell) => state(spell),
        Judged::OtherPort(_) => t!("true-other-port").into(),
        Judged::OtherUnit(_, unit) => t!("true-other-unit", unit = unit.label()),
        Judged::Unfounded(None) => t!("true-never-shown").into(),
        Judged::Unfounded(Some(_)) => t!("true-from-before").into(),
    }
}

/// A wrong number, and the first right one that was written on its line later, before any screw was
/// turned on the strength of the wrong one.
struct Corrected<'a> {
    wrong: &'a Number,
    right: &'a Number,
}

impl Corrected<'_> {
    /// Whether the right number is the next one on the sheet, some seconds later at most.
    fn is_at_once(&self, all: &[Number]) -> bool {
        let (wrong, right) = (self.wrong.index, self.right.index);
        let between = all.iter().any(|it| it.index > wrong && it.index < right);
        #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
        let ticks = self.right.tick.saturating_sub(self.wrong.tick) as f64;
        !between && ticks * TICK_S <= AT_ONCE_S
    }
}

/// How a number was corrected, if it was wrong and was corrected.
fn corrected<'a>(l: &Ledger, all: &'a [Number], wrong: &'a Number) -> Option<Corrected<'a>> {
    let right = (!wrong.is_right()).then(|| corrections(l, all, wrong).next())??;
    Some(Corrected { wrong, right })
}

/// Right numbers on the same line, written later and before any screw was turned.
fn corrections<'a>(
    l: &Ledger,
    all: &'a [Number],
    wrong: &'a Number,
) -> impl Iterator<Item = &'a Number> {
    let turned = l.events[wrong.index..]
        .iter()
        .position(|event| matches!(event.what, EventKind::Turned { .. }))
        .map_or(usize::MAX, |after| wrong.index + after);
    all.iter()
        .filter(move |it| (wrong.index + 1..turned).contains(&it.index))
        .filter(|it| it.same_line(wrong) && it.is_right())
}

/// The state that a number belongs to, in words.
fn state(spell: &Spell) -> String {
    let GasDemand { firing, burning, any_flow: _, fed, throttled, tapped } = spell.demand;
    if !tapped {
        return t!("true-shut-tap").into();
    }
    let valve = match (fed, throttled) {
        (false, _) => "shut",
        (true, true) => "part-open",
        (true, false) => "open",
    };
    t!(
        "true-other-state",
        firing = firing.map_or("out", Level::id),
        others = usize::from(burning),
        valve = valve
    )
}

pub(super) fn meter_off(l: &Ledger, most_pa: f64) -> Vec<Hit> {
    let all = numbers(l);
    let error_pa = |it: &Number| it.spell().map_or(0.0, |spell| spell.error_pa);
    let off = |it: &&Number| error_pa(it).abs() > most_pa;
    all.iter()
        .filter(off)
        .map(|it| {
            let error_pa = error_pa(it);
            let side = if error_pa > 0.0 { "high" } else { "low" };
            let pressure = in_unit(error_pa.abs(), it.reading.unit);
            let truth = t!("true-meter-off", pressure = pressure, side = side);
            let mut hit = Hit::new(it.tick, number(it), truth);
            if corrections(l, &all, it).any(|later| !off(&later)) {
                hit.caught = Caught::InTime;
            }
            hit
        })
        .collect()
}

/// Numbers that were read through a hose over the first barb only.
pub(super) fn hose_half_on(l: &Ledger) -> Vec<Hit> {
    let spell_of = |it: &Number| it.spell().copied();
    numbers(l)
        .iter()
        .filter_map(|it| {
            let spell = spell_of(it).filter(|spell| spell.push == Push::Halfway)?;
            let seen = t!("seen-first-barb", port = lower(spell.port.label()));
            Some(Hit::new(it.tick, seen, t!("true-first-barb")))
        })
        .collect()
}

pub(super) fn zeroed_under_pressure(l: &Ledger, most_pa: f64) -> Vec<Hit> {
    let mut hits = Vec::new();
    for (index, event) in l.events.iter().enumerate() {
        let EventKind::Zeroed { applied_pa } = event.what else { continue };
        if applied_pa.abs() <= most_pa + HALF_DIGIT_PA {
            continue;
        }
        let mut hit = Hit::new(
            event.tick,
            t!("seen-zero-pressed"),
            t!("true-zero-pressed", pressure = inwc(applied_pa)),
        );
        let used = l.events[index + 1..]
            .iter()
            .take_while(|event| !matches!(event.what, EventKind::Zeroed { .. }))
            .any(|event| matches!(event.what, EventKind::Wrote(_) | EventKind::Turned { .. }));
        if !used {
            hit.caught = Caught::InTime;
        }
        hits.push(hit);
    }
    hits
}
