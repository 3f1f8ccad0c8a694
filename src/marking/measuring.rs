//! Evidence of what was read and written.

use super::ledger::{Caught, Did, Hit, Ledger, inwc};
use super::repairs;
use crate::bench::action::{Action, Phase, Push, Stage};
use crate::bench::event::{Happening, Outcome, ReadingFact, ShownBefore};
use crate::bench::part::{Port, Screw};
use crate::bench::repair::{Nature, Repair};
use crate::bench::seen::PortFill;
use crate::units::PressureUnit;

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
    let Some((low, high)) = span else { return false };
    let unit = fact.reading.unit;
    let written = rounded(l, written_pa(fact), unit);
    let slack = 1e-9;
    (rounded(l, low, unit) - slack..=rounded(l, high, unit) + slack).contains(&written)
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
    let leg = |(low, high): (f64, f64), off_pa: f64| {
        (low / 2.0 + off_pa - reading_pa, high / 2.0 + off_pa + reading_pa)
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

fn name(fact: &ReadingFact) -> String {
    format!("{}, {}", fact.reading.port.label().to_lowercase(), fact.reading.stage.label())
}

fn number(fact: &ReadingFact) -> String {
    let value = f64::from(fact.reading.thousandths) / 1000.0;
    format!("{value} {} written for {}", fact.reading.unit.label(), name(fact))
}

fn shown_text(fact: &ReadingFact) -> String {
    match (fact.shown_pa, fact.shown_unsettled_pa) {
        (Some((low, high)), _) => {
            format!("settled there, the meter showed {} to {}", inwc(low), inwc(high))
        }
        (None, Some((low, high))) => {
            format!("it never settled there; it showed {} to {}", inwc(low), inwc(high))
        }
        (None, None) => "the meter showed nothing there since the last change".into(),
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
        match &event.what {
            Happening::Turned { .. } => return false,
            Happening::Wrote(fact) => {
                let same = fact.reading.port == wrong.reading.port
                    && fact.reading.stage == wrong.reading.stage
                    && fact.reading.phase == wrong.reading.phase;
                let true_meter = error_pa(l, fact).abs() <= error_pa(l, wrong).abs();
                if same && is_right(l, fact) && true_meter {
                    return true;
                }
            }
            _ => {}
        }
    }
    false
}

pub(super) fn wrong_port(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| {
        (!is_right(l, fact) && wrong_place(fact)).then(|| "the hose was on the other port".into())
    })
}

pub(super) fn wrong_stage(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| {
        let (_, stage) = fact.actual?;
        (!is_right(l, fact) && stage_differs(fact) && !is_unsettled(l, fact))
            .then(|| format!("the furnace was {}", stage.label()))
    })
}

pub(super) fn wrong_unit(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| {
        other_unit(l, fact).map(|unit| format!("the meter showed it in {}", unit.label()))
    })
}

pub(super) fn one_leg(l: &Ledger) -> Vec<Hit> {
    facts(l, |fact| {
        is_one_leg(l, fact).then(|| format!("{}, both legs together", shown_text(fact)))
    })
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
            .then(|| format!("the meter read {} off", inwc(error_pa)))
    })
}

pub(super) fn hose_half_on(l: &Ledger) -> Vec<Hit> {
    let half =
        |port: &Port, did: &Did<'_>| did.before.port(*port).fill == PortFill::Hose(Push::Halfway);
    l.did()
        .filter(|did| matches!(did.action, Action::Write(_)))
        .filter_map(|did| {
            let port = Port::ALL.iter().find(|port| half(port, &did))?;
            let seen = format!("{}: hose over the first barb only", port.label().to_lowercase());
            Some(Hit::new(did.tick, seen, "gas came out beside it"))
        })
        .collect()
}

pub(super) fn zeroed_under_pressure(l: &Ledger, most_pa: f64) -> Vec<Hit> {
    let mut hits = Vec::new();
    for (index, event) in l.events.iter().enumerate() {
        let Happening::Zeroed { applied_pa } = event.what else { continue };
        if applied_pa.abs() <= most_pa + HALF_DIGIT_PA {
            continue;
        }
        let mut hit = Hit::new(
            event.tick,
            "the zero button was pressed",
            format!("{} pressed on the meter", inwc(applied_pa)),
        );
        let used = l.events[index + 1..]
            .iter()
            .take_while(|event| !matches!(event.what, Happening::Zeroed { .. }))
            .any(|event| matches!(event.what, Happening::Wrote(_) | Happening::Turned { .. }));
        if !used {
            hit.caught = Caught::InTime;
        }
        hits.push(hit);
    }
    hits
}

/// Whether a right reading of this place was ever written.
fn has_right(l: &Ledger, port: Port, stages: &[Stage]) -> bool {
    right_ones(l, port, stages).next().is_some()
}

/// Right readings of a place.
fn right_ones<'a>(
    l: &'a Ledger,
    port: Port,
    stages: &'a [Stage],
) -> impl Iterator<Item = &'a ReadingFact> {
    l.wrote().map(|(_, _, fact)| fact).filter(move |fact| {
        fact.reading.port == port && stages.contains(&fact.reading.stage) && is_right(l, fact)
    })
}

/// Repairs after which the pressure at a port, or what comes of it to the meter, is another: what
/// was read there before says nothing any more. A regulator of the supply has a rule of its own.
fn moves(repair: Repair, port: Port) -> bool {
    match port {
        Port::Inlet => matches!(
            repair,
            Repair::ReplaceConnector
                | Repair::StraightenConnector
                | Repair::EmptyDripLeg
                | Repair::ReplaceTrunk
                | Repair::ReplaceExcessFlowValve
                | Repair::ClearRegulatorVent
                | Repair::ThawRegulator
                | Repair::FlameOnRegulator
                | Repair::CleanInletTap
                | Repair::DrillInletTap
        ),
        Port::Manifold => matches!(
            repair,
            Repair::ReplaceGasValve
                | Repair::FitSprings
                | Repair::FitConversionKit
                | Repair::CleanInletScreen
                | Repair::RemoveInletScreen
                | Repair::ReplaceHighCoil
                | Repair::RefitBoxHose
                | Repair::FitOrifices
                | Repair::FitAltitudeOrifices
                | Repair::DrillOrifices
                | Repair::CleanOrifices
                | Repair::CleanManifoldTap
                | Repair::DrillManifoldTap
        ),
    }
}

/// The last repair that moved a port's pressure. A part that is new was set anew though the old one
/// was sound; what was cleaned for nothing has moved nothing.
fn last_moved(l: &Ledger, port: Port) -> Option<repairs::Mended> {
    repairs::mended(l)
        .filter(|it| moves(it.repair, port))
        .filter(|it| it.repair.nature() != Nature::Care || it.outcome == Outcome::Changed)
        .last()
}

/// Whether a reading is from after a repair, if there was one.
fn is_after(fact: &ReadingFact, moved: Option<&repairs::Mended>) -> bool {
    moved.is_none_or(|it| fact.settled_tick.is_some_and(|tick| tick > it.tick))
}

/// A reading that is missing, in words.
fn none_right(what: &str, moved: Option<&repairs::Mended>) -> String {
    match moved {
        Some(it) => format!("no right {what} after: {}", it.repair.label().to_lowercase()),
        None => format!("no right {what}"),
    }
}

pub(super) fn stage_never_read(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Manifold);
    let since = |fact: &ReadingFact| is_after(fact, moved.as_ref());
    let high = [Stage::High, Stage::HighWithOthers];
    let missing: Vec<&str> = [("low", &[Stage::Low][..]), ("high", &high[..])]
        .into_iter()
        .filter(|(_, stages)| !right_ones(l, Port::Manifold, stages).any(since))
        .map(|(name, _)| name)
        .collect();
    // Found unfit at the inlet and left shut off: it need not be fired any further.
    let stopped_early = l.left_shut_off()
        && has_right(l, Port::Inlet, &[Stage::Low, Stage::High, Stage::HighWithOthers]);
    if missing.is_empty() || stopped_early {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        none_right(&format!("manifold reading on {}", missing.join(" and ")), moved.as_ref()),
        "that stage's setting is unknown",
    )]
}

pub(super) fn never_read_running(l: &Ledger) -> Vec<Hit> {
    let running = [Stage::Low, Stage::High, Stage::HighWithOthers];
    let moved = last_moved(l, Port::Inlet);
    if right_ones(l, Port::Inlet, &running).any(|fact| is_after(fact, moved.as_ref())) {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        none_right("inlet reading while firing", moved.as_ref()),
        "what the supply delivers is unknown",
    )]
}

pub(super) fn never_read_with_others(l: &Ledger) -> Vec<Hit> {
    let moved = last_moved(l, Port::Inlet);
    if right_ones(l, Port::Inlet, &[Stage::HighWithOthers])
        .any(|fact| is_after(fact, moved.as_ref()))
    {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        none_right("inlet reading with the other appliances on", moved.as_ref()),
        "what the supply delivers under full load is unknown",
    )]
}

pub(super) fn hold_too_short(l: &Ledger) -> Vec<Hit> {
    let wanted_s = l.setup.card.hold_s;
    let longest = l
        .events
        .iter()
        .filter_map(|event| match event.what {
            Happening::Held { seconds, .. } => Some(seconds),
            _ => None,
        })
        .fold(0.0, f64::max);
    if longest >= wanted_s {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        format!("longest hold at rest with the meter on the inlet: {longest:.0} s"),
        format!("the card asks for {wanted_s:.0} s"),
    )]
}

pub(super) fn supply_not_rechecked(l: &Ledger) -> Vec<Hit> {
    let last = l.events.iter().enumerate().rev().find(|(_, event)| match event.what {
        Happening::Turned { screw, .. } => screw == Screw::Supply,
        Happening::Mended { repair, .. } => matches!(
            repair,
            Repair::ReplaceSupplyRegulator
                | Repair::ReplaceFirstStage
                | Repair::FitTwoStageRegulators
        ),
        _ => false,
    });
    let Some((index, event)) = last else { return Vec::new() };
    let after = |stage: Stage| {
        l.wrote().any(|(at, _, fact)| {
            at > index
                && fact.reading.port == Port::Inlet
                && fact.reading.stage == stage
                && is_right(l, fact)
        })
    };
    // Left shut off, it need not be fired once more for a number.
    let shut_off = l.left_shut_off();
    let mut missing: Vec<&str> = [Stage::Rest, Stage::HighWithOthers]
        .into_iter()
        .filter(|&stage| stage == Stage::Rest || !shut_off)
        .filter(|&stage| !after(stage))
        .map(|stage| match stage {
            Stage::Rest => "inlet at rest",
            Stage::Low | Stage::High | Stage::HighWithOthers => "inlet on high, all others on",
        })
        .collect();
    let high = [Stage::High, Stage::HighWithOthers];
    let manifold = l.wrote().any(|(at, _, fact)| {
        at > index
            && fact.reading.port == Port::Manifold
            && high.contains(&fact.reading.stage)
            && is_right(l, fact)
    });
    if !manifold && !shut_off {
        missing.push("manifold on high");
    }
    if missing.is_empty() {
        return Vec::new();
    }
    vec![Hit::new(
        event.tick,
        format!("not read afterwards: {}", missing.join("; ")),
        "everything behind the regulator moved",
    )]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::event::Event;

    fn read(stage: Stage, tick: u64) -> Event {
        let fact = ReadingFact {
            reading: crate::bench::action::Reading {
                port: Port::Manifold,
                stage,
                phase: Phase::Found,
                thousandths: 3500,
                unit: PressureUnit::InWc,
            },
            actual: Some((Port::Manifold, stage)),
            shown_pa: Some((870.0, 873.0)),
            shown_unsettled_pa: None,
            true_pa: Some(872.0),
            meter_error_pa: 0.0,
            settled_tick: Some(tick),
            before: None,
            scale_off_pa: None,
        };
        Event { tick, what: Happening::Wrote(fact) }
    }

    /// What was read on the old gas valve says nothing of the new one.
    #[test]
    fn a_new_gas_valve_is_read_again() {
        let [natural, _] = crate::scenario::builtin::HEALTHY;
        let mut l = Ledger::new(crate::scenario::load(natural.text).unwrap().draw(0));
        l.take([read(Stage::Low, 10), read(Stage::High, 20)]);
        assert!(stage_never_read(&l).is_empty());
        let mended = Happening::Mended {
            repair: Repair::ReplaceGasValve,
            outcome: Outcome::Nothing,
            plate: None,
        };
        l.take([Event { tick: 30, what: mended }, read(Stage::Low, 40)]);
        // Written now, settled before the repair: the old valve's number.
        let Event { what, .. } = read(Stage::High, 20);
        l.take([Event { tick: 50, what }]);
        let hits = stage_never_read(&l);
        assert!(hits.len() == 1 && hits[0].seen.contains("on high after"), "{hits:?}");
        l.take([read(Stage::High, 60)]);
        assert!(stage_never_read(&l).is_empty());
    }
}
