//! A port opened with the furnace isolated, the hose on it, and closed again: by its plug and an adapter,
//! or by the captive screw of its tap with the hose straight over it.

use super::goal::{after, at_valve, hand_empty, in_hand};
use super::{Awaited, Goal, Memory, Step, meter, number};
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Fitted, Port, PortFill, Push, Tool};
use crate::senses::seen::{Seen, Sound};

/// Snug for a plug started by hand or a captive screw in its seat, in eighths past hand-tight: the middle of the band.
const SNUG_EIGHTHS: i16 = 6;
/// How long trapped gas takes to seep past a loose plug, in seconds (common practice: a minute and
/// a half).
const SEEP_S: f64 = 90.0;
/// What counts as no pressure when a hose comes off, in pascals (a tenth of an inch of water is 25);
/// a number further below nothing is no number to trust.
const NO_PRESSURE_PA: core::ops::RangeInclusive<f64> = -40.0..=20.0;
/// The hose, once on, is left alone for a moment, in seconds.
const HOSE_RESTS_S: f64 = 3.0;

/// Isolated and before the port; then what is in it decides.
fn before(seen: &Seen, memory: &Memory, port: Port, next: impl FnOnce(PortFill) -> Step) -> Step {
    Goal::Isolated
        .step(seen, memory)
        .then(memory, || at_valve(seen))
        .then(memory, || seen.fill(port).map_or(Step::Met, next))
}

/// The plug out, or the captive screw loosened. What is trapped behind it seeps away before that.
pub(super) fn plug_out(seen: &Seen, memory: &Memory, port: Port) -> Step {
    before(seen, memory, port, |fill| match fill {
        PortFill::Open
        | PortFill::BareAdapter
        | PortFill::Hose(_)
        | PortFill::TapOpen
        | PortFill::HoseOnTap(_) => Step::Met,
        // The hose covers the screw.
        PortFill::HoseOnShutTap(_) => hose_off(seen, memory),
        PortFill::Snug | PortFill::HandTight | PortFill::Leaning | PortFill::Started => {
            in_hand(seen, Tool::HexKey).then(memory, || turned_out(seen, memory, port, fill))
        }
        PortFill::TapSnug | PortFill::TapLoose => {
            in_hand(seen, Tool::SlottedDriver).then(memory, || turned_out(seen, memory, port, fill))
        }
    })
}

/// The next step with the tool on plug or screw.
fn turned_out(seen: &Seen, memory: &Memory, port: Port, fill: PortFill) -> Step {
    let plug = |step| Action::Plug { port, step };
    let at = memory.port(port);
    match (fill, at.loosened_tick) {
        // Found hand-tight: nipped up first, so that it is felt coming loose.
        (PortFill::HandTight | PortFill::TapLoose, None) if !at.nipped => {
            Step::Do(plug(PlugStep::Tighten(1)))
        }
        (PortFill::Started, _) => seep(seen, memory, port, memory.valve_tick)
            .then(memory, || Step::Do(plug(PlugStep::SpinOut))),
        (_, None) => Step::Do(plug(PlugStep::BreakLoose)),
        (_, Some(tick)) => {
            seep(seen, memory, port, tick).then(memory, || Step::Do(plug(PlugStep::SpinOut)))
        }
    }
}

fn seep(seen: &Seen, memory: &Memory, port: Port, since: u64) -> Step {
    // The manifold has emptied itself through the orifices.
    let seep_s = match port {
        Port::Inlet => SEEP_S,
        Port::Manifold => 0.0,
    };
    if memory.since_s(since) < seep_s || seen.sounds.contains(&Sound::Hiss) {
        Step::Wait(Awaited::Seep)
    } else {
        Step::Met
    }
}

/// The adapter in, through an open port; a tap takes none.
pub(super) fn adapter_in(seen: &Seen, memory: &Memory, port: Port) -> Step {
    plug_out(seen, memory, port).then(memory, || {
        if seen.fill(port) != Some(PortFill::Open) {
            return Step::Met;
        }
        let adapter = Action::Adapter { port, to: Fitted::On };
        after(memory, || in_hand(seen, Tool::Adapter), adapter)
    })
}

/// The hose on, with the manometer ready before.
pub(super) fn ready_on(seen: &Seen, memory: &Memory, port: Port) -> Step {
    hose_on(seen, memory, port, || meter::ready(seen, memory))
}

/// The hose on, pushed fully on; the manometer is made as it must be before. The other port is
/// closed before that.
pub(super) fn hose_on(
    seen: &Seen,
    memory: &Memory,
    port: Port,
    meter: impl FnOnce() -> Step,
) -> Step {
    match memory.hose() {
        Some((other, Push::Fully | Push::Halfway)) if other != port => closed(seen, memory, other),
        Some((_, Push::Fully)) => {
            if memory.since_s(memory.hose_tick) < HOSE_RESTS_S {
                Step::Wait(Awaited::MeterRests)
            } else {
                Step::Met
            }
        }
        Some((_, Push::Halfway)) => {
            at_valve(seen).then(memory, || Step::Do(Action::HoseOn { port, push: Push::Fully }))
        }
        // After an attempt was resumed it may hang at the furnace unknown.
        None => meter::in_sight(seen)
            .then(memory, || Goal::Isolated.step(seen, memory))
            .then(memory, || other_closed(seen, memory, port))
            .then(memory, meter)
            .then(memory, || adapter_in(seen, memory, port))
            .then(memory, || {
                let hose = Action::HoseOn { port, push: Push::Fully };
                after(memory, || in_hand(seen, Tool::Hose), hose)
            }),
    }
}

/// The other port closed, where this person left it open.
fn other_closed(seen: &Seen, memory: &Memory, port: Port) -> Step {
    let other = match port {
        Port::Inlet => Port::Manifold,
        Port::Manifold => Port::Inlet,
    };
    let left = match seen.fill(other) {
        Some(PortFill::Open | PortFill::BareAdapter | PortFill::Started | PortFill::TapOpen) => {
            true
        }
        Some(PortFill::HandTight | PortFill::Leaning | PortFill::TapLoose) => {
            memory.port(other).started
        }
        Some(
            PortFill::Snug
            | PortFill::Hose(_)
            | PortFill::TapSnug
            | PortFill::HoseOnTap(_)
            | PortFill::HoseOnShutTap(_),
        )
        | None => false,
    };
    if left { closed(seen, memory, other) } else { Step::Met }
}

/// The hose off: eased back to the first barb, and pulled off once nothing presses any longer.
pub(super) fn hose_off(seen: &Seen, memory: &Memory) -> Step {
    if memory.hose().is_none() {
        return meter::in_sight(seen);
    }
    Goal::Isolated
        .step(seen, memory)
        .then(memory, || at_valve(seen))
        .then(memory, || hand_empty(seen))
        .then(memory, || match seen.hose() {
            None => Step::Met,
            Some((port, Push::Fully)) => Step::Do(Action::HoseOn { port, push: Push::Halfway }),
            Some((_, Push::Halfway)) => {
                // Over its range or dark, the instrument does not say that nothing presses.
                let none = number(seen).is_some_and(|pa| NO_PRESSURE_PA.contains(&pa));
                let bled = if none { Step::Met } else { Step::Wait(Awaited::Bleed) };
                bled.then(memory, || Step::Do(Action::HoseOff))
            }
        })
}

/// The adapter out of a port; its hose comes off first.
pub(super) fn adapter_out(seen: &Seen, memory: &Memory, port: Port) -> Step {
    before(seen, memory, port, |fill| match fill {
        PortFill::Hose(_) | PortFill::HoseOnTap(_) | PortFill::HoseOnShutTap(_) => {
            hose_off(seen, memory)
        }
        PortFill::BareAdapter => {
            let adapter = Action::Adapter { port, to: Fitted::Off };
            after(memory, || hand_empty(seen), adapter)
        }
        PortFill::Snug
        | PortFill::HandTight
        | PortFill::Started
        | PortFill::Leaning
        | PortFill::Open
        | PortFill::TapSnug
        | PortFill::TapLoose
        | PortFill::TapOpen => Step::Met,
    })
}

/// A plug in, started by hand, snugged with the short arm; or the captive screw turned in, snug.
pub(super) fn closed(seen: &Seen, memory: &Memory, port: Port) -> Step {
    if seen.fill(port).is_some_and(PortFill::is_snug) {
        return Step::Met;
    }
    let with = |tool, step| after(memory, || in_hand(seen, tool), Action::Plug { port, step });
    let with_key = |step| with(Tool::HexKey, step);
    let with_driver = |step| with(Tool::SlottedDriver, step);
    before(seen, memory, port, |fill| match fill {
        PortFill::Snug | PortFill::TapSnug => Step::Met,
        PortFill::Hose(_)
        | PortFill::BareAdapter
        | PortFill::HoseOnTap(_)
        | PortFill::HoseOnShutTap(_) => adapter_out(seen, memory, port),
        PortFill::TapOpen => with_driver(PlugStep::SpinIn),
        PortFill::TapLoose => with_driver(PlugStep::Tighten(SNUG_EIGHTHS)),
        PortFill::Open => {
            let key = seen.hand == Some(Tool::HexKey);
            let fingers = || if key { Step::Met } else { hand_empty(seen) };
            after(memory, fingers, Action::Plug { port, step: PlugStep::StartByHand })
        }
        PortFill::Started => with_key(PlugStep::SpinIn),
        PortFill::HandTight => with_key(PlugStep::Tighten(SNUG_EIGHTHS)),
        PortFill::Leaning => with_key(PlugStep::SpinOut),
    })
}
