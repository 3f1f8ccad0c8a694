//! Evidence of screws that were turned away from the plate, or against a temperature rise.

use super::adjusting::is_right_as_found;
use super::deed::{lower, turn_words};
use super::ledger::{Hit, Ledger};
use crate::appliance::plate::Target;
use crate::hands::event::EventKind;
use crate::instrument::figure::Quantity;
use crate::parts::{Level, Screw, Spot};
use crate::units::inwc;
use crate::words::decimal;

/// A turn of a firing level's screw.
struct Turned {
    index: usize,
    tick: u64,
    eighths: i16,
    before_pa: f64,
}

fn turns(l: &Ledger, wanted: Screw) -> impl Iterator<Item = Turned> + '_ {
    l.events.iter().enumerate().filter_map(move |(index, event)| {
        let EventKind::Turned { screw, eighths, set_pa, .. } = event.what else { return None };
        let turned = Turned { index, tick: event.tick, eighths, before_pa: set_pa.0 };
        (screw == wanted).then_some(turned)
    })
}

fn levels(l: &Ledger) -> impl Iterator<Item = (Level, Screw, Target)> {
    let manifold = &l.plate().figures().manifold;
    l.levels().iter().map(|&level| (level, level.screw(), manifold[level]))
}

/// Screws that stand further from the plate than they were found, by more than so many eighths
/// turned to the wrong side.
pub(super) fn wrong_way(l: &Ledger, most: i16) -> Vec<Hit> {
    levels(l).filter_map(|(_, screw, target)| away(l, screw, target, most)).collect()
}

fn away(l: &Ledger, screw: Screw, target: Target, most: i16) -> Option<Hit> {
    let found_pa = turns(l, screw).next()?.before_pa;
    let band = target.band();
    let toward: i16 = match (band.is_below(found_pa), band.is_above(found_pa)) {
        (true, _) => 1,
        (_, true) => -1,
        (false, false) => return None,
    };
    let mut net = 0_i16;
    let wrong = turns(l, screw).find(|turn| {
        net = net.saturating_add(turn.eighths);
        net.saturating_mul(toward) < -most
    })?;
    let seen = t!("seen-wrong-way", screw = lower(screw.label()), turn = turn_words(net));
    let truth = t!("true-wrong-way", found = inwc(found_pa), target = inwc(target.pa));
    Some(Hit::new(wrong.tick, seen, truth))
}

/// The temperature rise that stands on the sheet before an event, in kelvins.
fn rise_k(l: &Ledger, before: usize) -> Option<f64> {
    let last = |wanted: Spot| {
        l.events[..before].iter().rev().find_map(|event| {
            let EventKind::WroteMeasured { written, firing: Some(_) } = &event.what else {
                return None;
            };
            let figure = written.figures.iter().find(|it| it.quantity == Quantity::Temperature);
            figure.filter(|_| written.spot == wanted)?.value()
        })
    };
    Some((last(Spot::SupplyAir)? - last(Spot::ReturnAir)?) / 1.8)
}

/// A screw that was right as found, turned once a rise outside the plate's stood on the sheet.
pub(super) fn rise_by_gas(l: &Ledger) -> Vec<Hit> {
    let (least, most) = (l.plate().rise.0.si(), l.plate().rise.1.si());
    levels(l)
        .filter_map(|(_, screw, target)| {
            let first = turns(l, screw).next()?;
            let right = is_right_as_found(target, first.before_pa);
            let rise = rise_k(l, first.index).filter(|rise| !(least..=most).contains(rise))?;
            right.then(|| {
                let seen = t!("seen-rise-by-gas", screw = lower(screw.label()));
                let truth = t!(
                    "true-rise-by-gas",
                    rise = decimal(rise * 1.8, 0),
                    least = decimal(least * 1.8, 0),
                    most = decimal(most * 1.8, 0),
                    pressure = inwc(first.before_pa)
                );
                Hit::new(first.tick, seen, truth)
            })
        })
        .collect()
}
