//! The last cycle: spoiled.

use super::super::edit::{after, instead};
use super::super::step::{act, go, pause};
use super::good::Good;
use super::way::Spoil;
use crate::hands::action::Action;
use crate::parts::{Door, Fitted, Place};
use crate::procedure::{Goal, LIGHT_UP_S, Means};

/// Ways of spoiling the last cycle.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(
        id!("spoil-last-cycle-ended-by-pulling-the-blower-door"),
        &["no-final-cycle"],
        |g: &Good| {
            let door = |to| act(Action::Door { door: Door::Blower, to });
            let ends = ends_last_call(g).into_iter().map(|half_f| {
                let satisfied = Action::Setpoint(half_f);
                let off = vec![go(Place::PlantRoom), door(Fitted::Off), go(Place::Hall)];
                let on = vec![act(satisfied.clone()), go(Place::PlantRoom), door(Fitted::On)];
                instead(satisfied, [off, on, vec![go(Place::Hall)]].concat())
            });
            ends.collect()
        },
    )
    .at_last()
    .careless(),
    Spoil::new(
        id!("spoil-last-cycle-lit-while-nobody-was-in-the-house"),
        &["no-final-cycle"],
        |g: &Good| {
            let called = Goal::Called(Some(g.full()), Means::Thermostat);
            vec![after(called, vec![go(Place::Yard), pause(2.0 * LIGHT_UP_S)])]
        },
    )
    .at_last()
    .careless(),
];

/// The setpoint that ended its last call, whether that was the customer's own or it was put back to
/// that afterwards.
fn ends_last_call(good: &Good) -> Option<i16> {
    let setpoints = good.actions().filter_map(|action| {
        let Action::Setpoint(half_f) = action else { return None };
        Some(*half_f)
    });
    let all: Vec<i16> = setpoints.collect();
    all.windows(2).rev().find(|pair| pair[1] < pair[0]).map(|pair| pair[1])
}
