//! The manometer made ready: on, in inches of water, warm, zeroed in open air.

use super::goal::{at_furnace, unless};
use super::{Awaited, Memory, Step};
use crate::hands::action::Action;
use crate::parts::OnOff;
use crate::senses::seen::{Display, MeterInView, Seen};
use crate::units::PressureUnit;

/// How long a fresh display is left alone, in seconds (common practice).
const WAKES_S: f64 = 20.0;
/// How long the number must stand after its zero and before, in seconds.
const RESTS_S: f64 = 2.0;

/// In sight: where its hose holds it at the furnace, the person is there too.
pub(super) fn in_sight(seen: &Seen) -> Step {
    match seen.meter {
        MeterInView::InSight(_) => Step::Met,
        MeterInView::HangsAtFurnace => at_furnace(seen),
    }
}

/// On for so long that the zero drifts no more.
pub(super) fn warm(seen: &Seen, memory: &Memory) -> Step {
    on(seen, memory).then(memory, || {
        // A display that stays dark does not warm.
        if memory.meter_warm || seen.display() == Some(Display::Dark) {
            Step::Met
        } else {
            Step::Wait(Awaited::MeterWarms)
        }
    })
}

/// Ready to be trusted. A zero pressed with the hose in open air holds until the hose comes off a
/// port again, or the manometer was dark.
pub(super) fn ready(seen: &Seen, memory: &Memory) -> Step {
    let unit = PressureUnit::InWc;
    let in_inches =
        || unless(seen.meter().is_some_and(|it| it.unit == unit), Action::MeterUnit(unit));
    let rests = |done: bool| if done { Step::Met } else { Step::Wait(Awaited::MeterRests) };
    on(seen, memory).then(memory, in_inches).then(memory, || match memory.zeroed_tick {
        Some(tick) => rests(memory.since_s(tick) >= RESTS_S),
        None if seen.display() == Some(Display::Dark) => Step::Met,
        None => rests(memory.meter_rests_s() >= 2.0 * RESTS_S)
            .then(memory, || Step::Do(Action::MeterZero)),
    })
}

/// Switched on, and past its first moments.
pub(super) fn on(seen: &Seen, memory: &Memory) -> Step {
    in_sight(seen).then(memory, || match (seen.display(), memory.meter_on_tick) {
        (Some(Display::Dark), _) => Step::Do(Action::MeterPower(OnOff::On)),
        (Some(Display::Number(_) | Display::OverRange), Some(tick))
            if memory.since_s(tick) < WAKES_S && !memory.meter_warm =>
        {
            Step::Wait(Awaited::MeterWakes)
        }
        (Some(Display::Number(_) | Display::OverRange) | None, _) => Step::Met,
    })
}
