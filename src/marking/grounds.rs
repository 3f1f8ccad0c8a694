//! Grounds for leaving an appliance shut off: what was found on the job that speaks for it.

use super::ledger::{Did, Ledger};
use crate::appliance::ignition::ControlState;
use crate::catalogue::fault::Fault;
use crate::hands::action::Action;
use crate::hands::event::{EventKind, ReadingFact};
use crate::model::truth::Truth;
use crate::parts::{Spot, Subject};

/// Gas in the air from which a detector tells of it, as a fraction (about 1 % of the lower
/// flammable limit of either gas; common practice).
pub(super) const TRACE: f64 = 3.0e-4;

/// Whether something was found that speaks for shutting off. Who has found nothing has only guessed.
pub(super) fn found(l: &Ledger) -> bool {
    conversion_found_wrong(l)
        || l.wrote().any(|(_, _, fact)| outside(l, fact))
        || l.events.iter().any(|event| tells(&event.what))
        || l.did().any(|did| looked_and_found(l, did.action, did.before))
}

/// Papers, springs or orifices were looked at, and they do not fit the gas in the pipes.
fn conversion_found_wrong(l: &Ledger) -> bool {
    let is_conversion = |fault: &Fault| {
        matches!(
            fault,
            Fault::NaturalSpringsOnPropane
                | Fault::NaturalOrificesOnPropane
                | Fault::UnconvertedOnPropane
                | Fault::PropaneOrificesOnNatural
                | Fault::PropaneSpringsOnNatural
        )
    };
    let wrong = l.plate().figures().fuel != l.setup.fuel
        || l.setup.faults.iter().any(|(fault, _)| is_conversion(fault));
    // What else should have been looked at is a slip of its own.
    let papers = [Subject::Plate, Subject::ConversionLabel, Subject::SpringMark, Subject::Orifices];
    let looked = |did: Did<'_>| papers.iter().any(|it| *did.action == Action::Look(*it));
    wrong && l.did().any(looked)
}

/// Whether a written number was really shown and lies outside what plate and nameplate allow.
pub(crate) fn outside(l: &Ledger, fact: &ReadingFact) -> bool {
    let lockup_most_pa = Some(l.setup.supply.lockup_max_pa);
    let (port, stage) = (fact.reading.port, fact.reading.stage);
    let band = l.plate().figures().allows(port, stage, lockup_most_pa);
    let out = |(least, most): (f64, f64)| band.is_below(least) || band.is_above(most);
    fact.shown_pa.or(fact.shown_unsettled_pa).is_some_and(out)
}

/// An alarm, bubbles, flue gas that was analysed, a control that gave up.
fn tells(what: &EventKind) -> bool {
    match what {
        EventKind::Alarm | EventKind::MeterOverRange => true,
        EventKind::FluidJudged { bubbles, .. } => *bubbles,
        EventKind::WroteMeasured { written, firing } => {
            written.spot == Spot::Flue && firing.is_some()
        }
        // A safety contact opened in the middle of a call.
        EventKind::Control { from, to: ControlState::PressureSwitchProving } => {
            *from != ControlState::InducerStart
        }
        // The second stage was waited for in vain.
        EventKind::Control { from: ControlState::NextSwitchProving, to } => {
            matches!(to, ControlState::Burning(_))
        }
        EventKind::Control { to, .. } => matches!(
            to,
            ControlState::Retry
                | ControlState::Lockout
                | ControlState::LimitOpen
                | ControlState::RolloutOpen
        ),
        EventKind::Did { .. }
        | EventKind::Refused { .. }
        | EventKind::Fired { .. }
        | EventKind::OpenedUnderGas { .. }
        | EventKind::GasFromPort { .. }
        | EventKind::CalledOnOpenPort { .. }
        | EventKind::Ignition { .. }
        | EventKind::Zeroed { .. }
        | EventKind::Wrote(_)
        | EventKind::Turned { .. }
        | EventKind::Mended { .. }
        | EventKind::CrossThreaded { .. }
        | EventKind::Cracked { .. }
        | EventKind::Cycle
        | EventKind::ValveOverPressure { .. }
        | EventKind::ColumnBlownOut
        | EventKind::SpringGaugeStrained
        | EventKind::Held { .. }
        | EventKind::Ended { .. }
        | EventKind::NotConverged => false,
    }
}

/// Whether gas was found that escapes: by nose, by detector or under leak fluid.
pub(super) fn found_gas(l: &Ledger) -> bool {
    let bubbles = |what: &EventKind| matches!(what, EventKind::FluidJudged { bubbles: true, .. });
    l.did().any(|did| smells_gas(did.action, did.before))
        || l.events.iter().any(|event| bubbles(&event.what))
}

fn smells_gas(action: &Action, before: &Truth) -> bool {
    let smells = matches!(action, Action::Sniff(_) | Action::Probe(_));
    let gas = before.gas_fraction.iter().any(|there| there > TRACE) || before.vented_m3_s > 0.0;
    smells && gas
}

/// Nose or detector where there was gas; a look at a gauge that stands too low.
fn looked_and_found(l: &Ledger, action: &Action, before: &Truth) -> bool {
    let is_there = |fault| l.setup.faults.iter().any(|(one, _)| *one == fault);
    smells_gas(action, before)
        || (*action == Action::Look(Subject::TankGauge) && is_there(Fault::NearlyEmptyTank))
        || (*action == Action::Look(Subject::SupplyVent) && is_there(Fault::BlockedRegulatorVent))
}
