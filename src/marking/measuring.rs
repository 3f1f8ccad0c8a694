//! Evidence of what was read and written.

use super::deed::lower;
use super::ledger::{Caught, Did, Hit, Ledger};
use crate::hands::action::Action;
use crate::hands::event::{EventKind, ReadingFact, ShownBefore};
use crate::parts::{Phase, Port, PortFill, Push};
use crate::units::{PressureUnit, inwc};

/// Half a digit of the manometer, in pascals: what lies nearer to a limit, nobody can tell from it.
pub(super) const HALF_DIGIT_PA: f64 = 0.005 * crate::units::PA_PER_INWC;

/// A written number as pascals.
fn written_pa(fact: &ReadingFact) -> f64 {
    f64::from(fact.reading.thousandths) / 1000.0 * fact.reading.unit.pa()
}

/// Rounds to the plate's decimals, counted in the unit that is written.
fn rounded(l: &Ledger, pa: f64, unit: PressureUnit) -> f64 {
    let places = i32::from(l.plate().figures().decimals)
        + match unit {
            PressureUnit::InWc | PressureUnit::Mbar => 0,
            PressureUnit::KPa => 1,
        };
    let step = (0..places).fold(1.0, |step, _| step * 10.0);
    (pa / unit.pa() * step).round() / step
}

/// Whether a written number rounds to one that was shown between two.
fn within(l: &Ledger, fact: &ReadingFact, span: Option<(f64, f64)>) -> bool {
    let Some((lower, upper)) = span else { return false };
    let unit = fact.reading.unit;
    let written = rounded(l, written_pa(fact), unit);
    let slack = 1e-9;
    (rounded(l, lower, unit) - slack..=rounded(l, upper, unit) + slack).contains(&written)
}

/// Whether a written reading is right.
#[must_use]
pub(super) fn is_right(l: &Ledger, fact: &ReadingFact) -> bool {
    within(l, fact, fact.shown_pa) || is_from_before(l, fact)
}

/// Whether a written number is one from before the last change. It may be written a little later:
/// as found it stays true whatever is turned since; as left it must be newer than the last turn.
fn is_from_before(l: &Ledger, fact: &ReadingFact) -> bool {
    let counts = |before: &ShownBefore| !before.turned || fact.reading.phase == Phase::Found;
    let before = fact.before.filter(counts).map(|before| before.shown_pa);
    !within(l, fact, fact.shown_pa) && within(l, fact, before)
}

/// The meter's error when it showed the number that was written, in pascals.
fn error_pa(l: &Ledger, fact: &ReadingFact) -> f64 {
    match fact.before {
        Some(before) if is_from_before(l, fact) => before.meter_error_pa,
        Some(_) | None => fact.meter_error_pa,
    }
}

fn is_unsettled(l: &Ledger, fact: &ReadingFact) -> bool {
    fact.shown_pa.is_none() && !is_right(l, fact) && within(l, fact, fact.shown_unsettled_pa)
}

/// The number is that of one leg of the water column: half of the pressure, more or less by how far
/// the scale's zero stands off.
fn is_one_leg(l: &Ledger, fact: &ReadingFact) -> bool {
    let Some(off_pa) = fact.scale_off_pa else { return false };
    // The legs are read to a tenth of an inch, each for itself.
    let reading_pa = 0.05 * crate::units::PA_PER_INWC;
    let leg = |(lower, upper): (f64, f64), off_pa: f64| {
        (lower / 2.0 + off_pa - reading_pa, upper / 2.0 + off_pa + reading_pa)
    };
    let shown = fact.shown_pa.or(fact.shown_unsettled_pa);
    let on_leg = |off_pa: f64| within(l, fact, shown.map(|span| leg(span, off_pa)));
    !is_right(l, fact) && !is_unsettled(l, fact) && (on_leg(off_pa) || on_leg(-off_pa))
}

/// The number is right if read in another unit than the one that was written.
fn other_unit(l: &Ledger, fact: &ReadingFact) -> Option<PressureUnit> {
    if is_right(l, fact) || is_unsettled(l, fact) || is_one_leg(l, fact) {
        return None;
    }
    PressureUnit::ALL.into_iter().filter(|&unit| unit != fact.reading.unit).find(|&unit| {
        let mut other = *fact;
        other.reading.unit = unit;
        within(l, &other, fact.shown_pa) || within(l, &other, fact.shown_unsettled_pa)
    })
}

fn wrong_place(fact: &ReadingFact) -> bool {
    fact.actual.is_some_and(|(port, _)| port != fact.reading.port)
}

fn stage_differs(fact: &ReadingFact) -> bool {
    fact.actual
        .is_some_and(|(port, stage)| port == fact.reading.port && stage != fact.reading.stage)
}

fn number(fact: &ReadingFact) -> String {
    let value = f64::from(fact.reading.thousandths) / 1000.0;
    t!(
        "seen-written",
        value = value.to_string(),
        unit = fact.reading.unit.label(),
        port = lower(fact.reading.port.label()),
        stage = fact.reading.stage.label()
    )
}

fn shown_text(fact: &ReadingFact) -> String {
    match (fact.shown_pa, fact.shown_unsettled_pa) {
        (Some((lower, upper)), _) => t!("true-settled", lower = inwc(lower), upper = inwc(upper)),
        (None, Some((lower, upper))) => {
            t!("true-never-settled", lower = inwc(lower), upper = inwc(upper))
        }
        (None, None) => t!("true-nothing-shown").into(),
    }
}

/// What both legs of the water column showed together.
fn legs_text(fact: &ReadingFact) -> String {
    match (fact.shown_pa, fact.shown_unsettled_pa) {
        (Some((lower, upper)), _) => {
            t!("true-settled-legs", lower = inwc(lower), upper = inwc(upper))
        }
        (None, Some((lower, upper))) => {
            t!("true-never-settled-legs", lower = inwc(lower), upper = inwc(upper))
        }
        (None, None) => t!("true-nothing-shown").into(),
    }
}

fn facts(l: &Ledger, when: impl Fn(&ReadingFact) -> Option<String>) -> Vec<Hit> {
    l.wrote()
        .filter_map(|(index, tick, fact)| {
            let mut hit = Hit::new(tick, number(fact), when(fact)?);
            if mended(l, index, fact) {
                hit.caught = Caught::InTime;
            }
            Some(hit)
        })
        .collect()
}

/// Whether a right reading of the same place was written later, before any screw was turned on
/// the strength of the wrong one.
fn mended(l: &Ledger, index: usize, wrong: &ReadingFact) -> bool {
    for event in &l.events[index + 1..] {
        if let EventKind::Turned { .. } = &event.what {
            return false;
        }
        let EventKind::Wrote(fact) = &event.what else { continue };
        let same = fact.reading.port == wrong.reading.port
            && fact.reading.stage == wrong.reading.stage
            && fact.reading.phase == wrong.reading.phase;
        let true_meter = error_pa(l, fact).abs() <= error_pa(l, wrong).abs();
        if same && is_right(l, fact) && true_meter {
            return true;
        }
    }
    false
}

pub(super) fn wrong_port(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| (!is_right(l, fact) && wrong_place(fact)).then(|| t!("true-other-port").into()))
}

pub(super) fn wrong_stage(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| {
        let (_, stage) = fact.actual?;
        (!is_right(l, fact) && stage_differs(fact) && !is_unsettled(l, fact))
            .then(|| t!("true-other-stage", stage = stage.label()))
    })
}

pub(super) fn wrong_unit(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| other_unit(l, fact).map(|unit| t!("true-other-unit", unit = unit.label())))
}

pub(super) fn one_leg(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| is_one_leg(l, fact).then(|| legs_text(fact)))
}

pub(super) fn unsettled(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| is_unsettled(l, fact).then(|| shown_text(fact)))
}

pub(super) fn invented(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| {
        let explained = is_right(l, fact)
            || is_unsettled(l, fact)
            || wrong_place(fact)
            || stage_differs(fact)
            || is_one_leg(l, fact)
            || other_unit(l, fact).is_some();
        (!explained).then(|| shown_text(fact))
    })
}

pub(super) fn meter_off(l: &Ledger, most_pa: f64) -> Vec<Hit> {
    facts(l, |fact| {
        let measured = fact.actual.is_some() || fact.shown_unsettled_pa.is_some();
        let measured = measured || is_right(l, fact);
        let error_pa = error_pa(l, fact);
        (measured && error_pa.abs() > most_pa)
            .then(|| t!("true-meter-off", pressure = inwc(error_pa)))
    })
}

pub(super) fn hose_half_on(l: &Ledger) -> Vec<Hit> {
    let half =
        |port: &Port, did: &Did<'_>| did.before.port(*port).fill == PortFill::Hose(Push::Halfway);
    l.did()
        .filter(|did| matches!(did.action, Action::Write(_)))
        .filter_map(|did| {
            let port = Port::ALL.iter().find(|port| half(port, &did))?;
            let seen = t!("seen-first-barb", port = lower(port.label()));
            Some(Hit::new(did.tick, seen, t!("true-first-barb")))
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
