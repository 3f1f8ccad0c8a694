//! Everything put back, the last cycle, calls and hand-over: spoiled.

use super::super::edit::{Edit, What, after, before, instead, leave_out};
use super::super::step::{Step, act, go, pause, reach};
use super::good::Good;
use super::way::Spoil;
use crate::hands::action::{Action, Contact, HandOver, Topic};
use crate::parts::{
    Door, Ending, Fitted, HandValve, OnOff, Opening, OtherAppliance, Place, Subject, Window,
};
use crate::procedure::{Goal, Means};

/// Ways of spoiling the end of a job.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(id!("spoil-jumper-between-r-and-w2-left-on"), &["jumper-left"], |_| {
        vec![leave_out(Action::StageJumper(Fitted::Off))]
    })
    .at_last()
    .careless(),
    Spoil::new(id!("spoil-valve-switch-left-off"), &["valve-switch-off"], |g| {
        let off = reach(Goal::ValveSwitch(OnOff::Off));
        vec![before(last_call(g), vec![off, reach(Goal::ClosedUp)])]
    })
    .at_last()
    .careless(),
    Spoil::new(id!("spoil-manual-valve-left-part-open"), &["cock-not-open"], |g| {
        let part = Action::HandValve { hand_valve: HandValve::Furnace, degrees: 30 };
        vec![before(last_call(g), vec![go(Place::PlantRoom), act(part)])]
    })
    .at_last()
    .careless(),
    Spoil::new(id!("spoil-manual-valve-left-closed"), &["cock-not-open"], |g| {
        let shut = reach(Goal::Valve(HandValve::Furnace, Opening::Closed));
        vec![before(last_call(g), vec![shut])]
    })
    .at_last()
    .careless(),
    Spoil::new(id!("spoil-burner-door-left-off"), &["door-off"], |_| {
        let off = reach(Goal::Door(Door::Burner, Fitted::Off));
        let off = vec![go(Place::PlantRoom), off, go(Place::Hall)];
        vec![before(Action::Tell(Topic::GasSmellDrill), off)]
    })
    .at_last(),
    Spoil::new(id!("spoil-window-left-open"), &["controls-not-restored"], |_| {
        vec![leave_out(Action::Window { window: Window::PlantRoom, to: Opening::Closed })]
    }),
    Spoil::new(id!("spoil-range-left-off"), &["others-not-restored"], |_| {
        vec![leave_out(RANGE_ON_AGAIN)]
    }),
    Spoil::new(id!("spoil-thermostat-not-set-back"), &["controls-not-restored"], |g| {
        // A degree off, and not so far that it calls no more.
        before_hand_over(g, g.setpoint().map(|found| act(Action::Setpoint(found - 2))))
    })
    // Nobody sets back the thermostat of a furnace that is left shut off.
    .besides(Good::in_use),
    Spoil::new(id!("spoil-thermostat-set-far-down"), &["furnace-left-off"], |g| {
        // Six degrees down: no call tonight.
        before_hand_over(g, g.setpoint().map(|found| act(Action::Setpoint(found - 12))))
    })
    .besides(Good::in_use),
    Spoil::new(id!("spoil-heat-left-switched-off-at-the-thermostat"), &["furnace-left-off"], |g| {
        before_hand_over(g, [act(Action::ThermostatMode(OnOff::Off))])
    }),
    Spoil::new(id!("spoil-last-cycle-left-before-its-end"), &["shut-down-unwatched"], |g| {
        let out = vec![go(Place::Yard), pause(300.0)];
        vec![before(last_call(g), touched()), after(ENDS_THE_CALL, out)]
    })
    .at_last(),
    Spoil::new(id!("spoil-gas-shut-again-with-the-range-lit"), &["others-left-out"], |g| {
        let shut = vec![
            reach(Goal::Other(OtherAppliance::Range, OnOff::On)),
            reach(Goal::Valve(HandValve::Supply, Opening::Closed)),
            pause(60.0),
            reach(Goal::Valve(HandValve::Supply, Opening::Open)),
        ];
        vec![before(last_call(g), shut)]
    })
    .at_last()
    .with_work_of_its_own()
    .besides(|g| !g.places(&leave_out(RANGE_ON_AGAIN)).is_empty()),
    Spoil::new(id!("spoil-no-final-cycle"), &["no-final-cycle"], |g| {
        vec![instead(last_call(g), touched()), leave_out(last_call(g))]
    })
    .at_last()
    .careless(),
    Spoil::new(id!("spoil-owner-called-before-anything-was-read"), &["owner-not-called"], |_| {
        vec![after(Action::Look(Subject::SupplyVent), vec![act(CALL_OWNER)]), leave_out(CALL_OWNER)]
    })
    // Gas in the air speaks for a call by itself.
    .besides(|g| !g.alarmed),
    Spoil::new(id!("spoil-supplier-not-called"), &["owner-not-called"], |_| {
        vec![leave_out(CALL_OWNER)]
    }),
    Spoil::new(id!("spoil-owner-called-though-the-supply-is-in-order"), &["needless-call"], |_| {
        vec![after(Action::Tell(Topic::GasSmellDrill), vec![act(CALL_OWNER)])]
    }),
    Spoil::new(id!("spoil-handed-over-as-if-all-were-well"), &["wrong-ending"], |g| {
        handed_over(g, |said| HandOver { ending: Ending::InService, ..said })
    })
    // Said to be in service, a furnace that is left shut off has everything shut as well.
    .besides(|g| g.ends(Ending::SupplyOwnerCalled)),
    Spoil::new(id!("spoil-shut-off-and-tagged-for-nothing"), &["shut-off-without-need"], |g| {
        let said = g.said().into_iter();
        said.map(|said| {
            let shut_off = HandOver { ending: Ending::ShutOff, ..said.clone() };
            let left = vec![
                reach(Goal::Valve(HandValve::Furnace, Opening::Closed)),
                reach(Goal::Tagged),
                reach(Goal::Told(Topic::Unsafe)),
                act(Action::HandOver(shut_off)),
            ];
            instead(Action::HandOver(said), left)
        })
        .collect()
    })
    .besides(Good::in_use),
    Spoil::new(id!("spoil-customer-not-told-the-smell-drill"), &["drill-not-told"], |_| {
        vec![leave_out(Action::Tell(Topic::GasSmellDrill))]
    }),
    Spoil::new(id!("spoil-warning-tag-not-hung"), &["not-tagged"], |_| {
        vec![leave_out(Goal::Tagged)]
    }),
    Spoil::new(id!("spoil-customer-not-told-that-it-is-unsafe"), &["householder-not-told"], |_| {
        vec![leave_out(Goal::Told(Topic::Unsafe))]
    }),
];

/// The call of the last cycle.
fn last_call(good: &Good) -> Goal {
    Goal::Called(Some(good.full()), Means::Thermostat)
}

/// A hand on the valve and everything closed up again: what was a cycle before it is none any more.
fn touched() -> Vec<Step> {
    vec![
        reach(Goal::ValveSwitch(OnOff::Off)),
        reach(Goal::ValveSwitch(OnOff::On)),
        reach(Goal::ClosedUp),
    ]
}

/// The setpoint that ends the last call.
const ENDS_THE_CALL: What = What::Planned(|action| matches!(action, Action::Setpoint(_)));

/// The range lit again, as it was found.
const RANGE_ON_AGAIN: What = What::StepTo(
    Goal::AsFound,
    Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On },
);

const CALL_OWNER: Action = Action::Call(Contact::SupplyOwner);

/// Something else said at the hand-over.
fn handed_over(good: &Good, otherwise: fn(HandOver) -> HandOver) -> Vec<Edit> {
    let said = good.said().into_iter();
    said.map(|said| {
        let other = Action::HandOver(otherwise(said.clone()));
        instead(Action::HandOver(said), vec![act(other)])
    })
    .collect()
}

/// Something done last, right before the hand-over.
fn before_hand_over(good: &Good, steps: impl IntoIterator<Item = Step>) -> Vec<Edit> {
    let said = good.said().map(Action::HandOver).into_iter();
    let steps: Vec<Step> = steps.into_iter().collect();
    said.map(|said| before(said, steps.clone())).collect()
}
