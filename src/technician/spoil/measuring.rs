//! Work that the card asks for beyond the pressures: spoiled.

use super::super::edit::{Edit, What, hurry, instead, leave_out};
use super::super::step::{act, reach};
use super::good::Good;
use super::steps::AT_ONCE;
use super::way::Spoil;
use crate::hands::action::{Action, HandOver};
use crate::parts::{
    Cause, Door, Ending, Fitted, HandValve, JointVerdict, OnOff, OtherAppliance, Spot, Subject,
    WrittenFinding,
};
use crate::procedure::Goal;

/// Ways of spoiling it.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil::new(id!("spoil-co-alarm-not-looked-at"), &["arrival-looks-left-out"], |_| {
        vec![leave_out(Action::Look(Subject::CoAlarm))]
    }),
    Spoil::new(id!("spoil-rise-not-taken-and-named"), &["rise-not-taken"], |g| {
        vec![leave_out(Goal::Measured(Spot::ReturnAir, g.first()))]
    }),
    Spoil::new(id!("spoil-rise-taken-with-the-burner-door-off"), &["rise-disturbed"], |g| {
        let rise = Goal::Measured(Spot::SupplyAir, g.full());
        let door = |to| reach(Goal::Door(Door::Burner, to));
        vec![instead(rise, vec![door(Fitted::Off), reach(rise), door(Fitted::On)])]
    }),
    Spoil::new(id!("spoil-supply-air-written-at-once"), &["rise-too-early"], |_| {
        vec![hurry(Action::WriteMeasured(Spot::SupplyAir), AT_ONCE)]
    }),
    // The bead comes from the supply air and still shows it.
    Spoil::new(id!("spoil-return-air-written-at-once"), &["rise-left-off"], |_| {
        vec![hurry(Action::WriteMeasured(Spot::ReturnAir), AT_ONCE)]
    })
    .besides(|g| {
        let nothing = |finding: &WrittenFinding| finding.cause == Cause::NothingFound;
        g.ends(Ending::InService) && g.findings().all(nothing)
    }),
    Spoil::new(id!("spoil-dial-not-timed-and-not-named"), &["rate-not-taken"], |g| {
        let mut edits = vec![leave_out(Goal::Measured(Spot::MeterDial, g.full()))];
        edits.extend(names_nothing(g));
        edits
    }),
    Spoil::new(id!("spoil-dial-timed-with-the-water-heater-on"), &["rate-with-others"], |g| {
        let rate = Goal::Measured(Spot::MeterDial, g.full());
        let heater = |to| reach(Goal::Other(OtherAppliance::WaterHeater, to));
        vec![instead(rate, vec![heater(OnOff::On), reach(rate), heater(OnOff::Off)])]
    })
    // A supply that holds too little puts the furnace out.
    .besides(|g| g.ends(Ending::InService)),
    Spoil::new(id!("spoil-piping-not-checked-and-named"), &["piping-not-checked"], |_| {
        vec![leave_out(Goal::PipingChecked)]
    }),
    Spoil::new(id!("spoil-piping-watched-with-the-supply-open"), &["piping-not-checked"], |_| {
        vec![leave_out(SUPPLY_SHUT)]
    })
    // What is mended in the yard is mended with the supply shut.
    .besides(|g| g.times(&SUPPLY_SHUT) == 1),
    Spoil::new(id!("spoil-piping-watched-for-a-moment"), &["piping-not-checked"], |_| {
        vec![hurry(Action::WritePiping(JointVerdict::Tight), AT_ONCE)]
    }),
    Spoil::new(id!("spoil-flue-not-analyzed-and-not-named"), &["combustion-left-out"], |g| {
        let mut edits = vec![leave_out(Action::WriteMeasured(Spot::Flue))];
        edits.extend(names_nothing(g));
        edits
    })
    // The flue gas may be what tells of the fault.
    .besides(|g| g.mends().next().is_none() && g.ends(Ending::InService)),
];

/// The supply shut off.
const SUPPLY_SHUT: Action = Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 };

/// Nothing named as not done at hand-over.
fn names_nothing(good: &Good) -> Vec<Edit> {
    let hands_over = What::Such(|action| matches!(action, Action::HandOver(_)));
    let said = good.said().into_iter();
    said.map(|said| {
        let other = Action::HandOver(HandOver { not_done: Vec::new(), ..said });
        instead(hands_over.clone(), vec![act(other)])
    })
    .collect()
}
