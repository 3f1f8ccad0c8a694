//! Grounds for leaving an appliance shut off, and for calling the owner of its supply: what was found
//! on the job that speaks for it.

use super::joints;
use super::ledger::Ledger;
use super::numbers::{Number, numbers};
use super::safety;
use crate::appliance::ignition::ControlState;
use crate::catalogue::fault::Fault;
use crate::hands::action::Action;
use crate::hands::event::{Event, EventKind};
use crate::instrument::figure::Quantity;
use crate::measure::air;
use crate::model::truth::Truth;
use crate::parts::{Door, Fitted, OnOff, Port, Spot, Subject};
use crate::senses::seen::WrittenMeasured;

/// Gas in the air from which a detector tells of it, as a fraction (about 1 % of the lower
/// flammable limit of either gas; common practice).
const TRACE: f64 = 3.0e-4;
/// Carbon monoxide in the flue at which nothing may go on burning, in parts per million air-free
/// (ANSI Z21.47's limit, from memory).
pub(super) const MOST_CO_PPM: f64 = 400.0;

/// Whether something was found that speaks for shutting off. Who has found nothing has only guessed.
pub(super) fn found(l: &Ledger) -> bool {
    conversion_found_wrong(l)
        || numbers(l).iter().any(|it| outside(l, it))
        || (0..l.events.len()).any(|index| tells(l, index))
        || l.did().any(|did| looked_and_found(l, did.action, did.before))
}

/// Whether something was found before an event that the owner of the supply can be told: numbers at the
/// inlet at rest and under load, one that lies outside by itself, or what was seen and smelt.
pub(super) fn speaks_for_a_call(l: &Ledger, before: usize) -> bool {
    let all = numbers(l);
    let known = |rest: bool| {
        let inlet = |it: &&Number| it.index < before && it.reading.port == Port::Inlet;
        let is = |it: &Number| it.reading.stage.level(l.levels()).is_none() == rest;
        all.iter().filter(inlet).any(|it| it.is_right() && is(it))
    };
    (known(true) && known(false))
        || inlet_outside(l, &all, before)
        || safety::alarm_before(l, before)
        || (0..before).any(|index| tells(l, index))
        || l.did()
            .filter(|did| did.index < before)
            .any(|did| looked_and_found(l, did.action, did.before))
}

/// Whether gas was in the air before an event, or stood to come out: an alarm, a nose or a detector
/// that found it, bubbles.
pub(super) fn gas_found(l: &Ledger, before: usize) -> bool {
    let bubbles =
        |event: &Event| matches!(event.what, EventKind::FluidJudged { bubbles: true, .. });
    safety::alarm_before(l, before)
        || l.events[..before].iter().any(bubbles)
        || l.did().filter(|did| did.index < before).any(|did| smells_gas(did.action, did.before))
}

/// Whether an inlet pressure outside what plate and nameplate allow was read before an event.
pub(super) fn inlet_outside(l: &Ledger, all: &[Number], before: usize) -> bool {
    let inlet = |it: &&Number| it.index < before && it.reading.port == Port::Inlet;
    all.iter().filter(inlet).any(|it| outside(l, it))
}

/// Papers, springs or orifices were looked at that do not fit the gas in the pipes.
pub(super) fn conversion_found_wrong(l: &Ledger) -> bool {
    let papers = [Subject::Plate, Subject::ConversionLabel];
    let looked = |subject: Subject| l.did().any(|did| *did.action == Action::Look(subject));
    let of_papers = l.plate().figures().fuel != l.setup.fuel && papers.into_iter().any(looked);
    let is_there = |wanted: &Fault| l.setup.faults.iter().any(|(fault, _)| fault == wanted);
    let springs = [
        Fault::NaturalSpringsOnPropane,
        Fault::PropaneSpringsOnNatural,
        Fault::UnconvertedOnPropane,
    ];
    let orifices = [
        Fault::NaturalOrificesOnPropane,
        Fault::PropaneOrificesOnNatural,
        Fault::UnconvertedOnPropane,
    ];
    of_papers
        || (looked(Subject::SpringMark) && springs.iter().any(is_there))
        || (looked(Subject::Orifices) && orifices.iter().any(is_there))
}

/// Whether a number is right, and what stood there lies outside what plate and nameplate allow.
pub(super) fn outside(l: &Ledger, it: &Number) -> bool {
    let lockup_most_pa = Some(l.setup.supply.lockup_max_pa);
    let (port, stage) = (it.reading.port, it.reading.stage);
    let band = l.plate().figures().allows(port, stage, lockup_most_pa);
    it.stood().is_some_and(|stood| band.is_below(stood.least_pa) || band.is_above(stood.most_pa))
}

/// An alarm, bubbles, flue gas that is bad, a control that gave up.
fn tells(l: &Ledger, index: usize) -> bool {
    match &l.events[index].what {
        EventKind::Alarm | EventKind::MeterOverRange => true,
        EventKind::FluidJudged { joint, bubbles, .. } => {
            *bubbles && !joints::is_loosened(l, *joint, index)
        }
        EventKind::WroteMeasured { written, firing } => {
            written.spot == Spot::Flue && firing.is_some() && is_bad_flue(l, written)
        }
        EventKind::Control { from, to } => gave_up(*from, *to) && !is_of_ones_own_making(l, index),
        EventKind::Did { .. }
        | EventKind::Refused { .. }
        | EventKind::Fired { .. }
        | EventKind::OpenedUnderGas { .. }
        | EventKind::GasFromPort { .. }
        | EventKind::CalledOnOpenPort { .. }
        | EventKind::Ignition { .. }
        | EventKind::Zeroed { .. }
        | EventKind::Showed(_)
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

/// Whether the control gave up: a lockout, a safety contact that opened, a second stage that was waited
/// for in vain.
fn gave_up(from: ControlState, to: ControlState) -> bool {
    // In the middle of a call, not at its beginning: after a purge or a retry the control only begins
    // anew.
    let begins =
        matches!(from, ControlState::InducerStart | ControlState::PostPurge | ControlState::Retry);
    let opened = to == ControlState::PressureSwitchProving && !begins;
    let waited = from == ControlState::NextSwitchProving;
    let in_vain = waited && matches!(to, ControlState::Burning(level) if !level.is_top());
    let stopped = matches!(
        to,
        ControlState::Retry
            | ControlState::Lockout
            | ControlState::LimitOpen
            | ControlState::RolloutOpen
    );
    opened || in_vain || stopped
}

/// Whether gas or power was kept from the control by a hand when it gave up: a valve shut, a switch
/// off, a door off.
fn is_of_ones_own_making(l: &Ledger, index: usize) -> bool {
    let Some(then) = l.state_after(index) else { return false };
    let found = &l.setup.found;
    let valve = !then.manual_valve.is_open() && then.manual_valve != found.manual_valve;
    let switch = then.valve_switch == OnOff::Off && found.valve_switch == OnOff::On;
    let power = then.furnace_switch == OnOff::Off || then.doors[Door::Blower] == Fitted::Off;
    valve || !then.supply_valve.is_open() || switch || power
}

/// Whether written figures of the flue gas are those of a furnace that may not go on burning, or of
/// one that gets too much or too little air for its gas.
fn is_bad_flue(l: &Ledger, written: &WrittenMeasured) -> bool {
    let value = |quantity: Quantity| {
        written.figures.iter().find(|it| it.quantity == quantity).and_then(|it| it.value())
    };
    let (least, most) = air::limits(&l.setup.card, l.setup.fuel);
    let air = value(Quantity::ExcessAir).map(|excess| 1.0 + excess / 100.0);
    value(Quantity::CarbonMonoxideAirFree).is_some_and(|ppm| ppm > MOST_CO_PPM)
        || air.is_some_and(|air| air < least || air > most)
}

/// Nose or detector where there was gas; a look at a gauge that stands too low, at a vent that is
/// stopped up, at flames that the blower blows about.
fn looked_and_found(l: &Ledger, action: &Action, before: &Truth) -> bool {
    let is_there = |fault| l.setup.faults.iter().any(|(one, _)| *one == fault);
    let blown = matches!(before.control, ControlState::Burning(_));
    smells_gas(action, before)
        || (*action == Action::Look(Subject::TankGauge) && is_there(Fault::NearlyEmptyTank))
        || (*action == Action::Look(Subject::SupplyVent) && is_there(Fault::BlockedRegulatorVent))
        || (*action == Action::Look(Subject::Flames) && blown && is_there(Fault::HoledExchanger))
}

/// A nose or a detector used where there is gas.
fn smells_gas(action: &Action, before: &Truth) -> bool {
    let smells = matches!(action, Action::Sniff(_) | Action::Probe(_));
    smells && is_gas(before)
}

/// Whether gas is in the air, or a regulator lets it out.
fn is_gas(then: &Truth) -> bool {
    then.gas_fraction.iter().any(|there| there > TRACE) || then.vented_m3_s > 0.0
}
