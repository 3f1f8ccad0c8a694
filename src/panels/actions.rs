//! What can be done, as lists: every action of the bench is in one of them or in a form, so that
//! mouse, keyboard and screen reader reach all of it.
//!
//! A list offers what makes sense at the part as it is seen, also what will be refused for want of
//! a tool and what is plainly unwise: refusals teach, and mistakes are allowed.

mod at_hand;
mod furnace;
mod hall;
mod here;
mod list;
mod measure;
mod repairs;
mod valve;
mod yard;

use super::parts::canonical;
use crate::catalogue::repair::Nature;
use crate::hands::action::Action;
use crate::parts::{HandValve, Port, PortFill, Screw};
use crate::senses::seen::Seen;

use list::List;

pub use here::{here, in_hand};
pub use list::ActionChoice;
pub(super) use repairs::outdates;
pub(super) use valve::{port_of, screw_of};

/// Something done with a number or with several choices at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Form {
    /// A hand valve to an angle.
    HandValve(HandValve),
    /// A screw by eighths of a turn.
    Turn(Screw),
    /// A plug by eighths of a turn.
    Tighten(Port),
    /// The thermostat to a temperature.
    Setpoint,
    /// A reading on the job sheet.
    Write,
    /// What was wrong, on the job sheet.
    Finding,
    /// The end of the job.
    HandOver,
}

/// What can be done at a part, as it is seen.
#[must_use]
pub fn choices(part: &str, seen: &Seen) -> Vec<ActionChoice> {
    let id = canonical(part);
    let mut list = List::default();
    at_hand::add(id, seen, &mut list);
    furnace::add(id, seen, &mut list);
    valve::add(id, seen, &mut list);
    hall::add(id, seen, &mut list);
    yard::add(id, seen, &mut list);
    measure::add(id, seen, &mut list);
    repairs::add(id, seen, &mut list);
    if let Some(subject) = crate::parts::part(id).and_then(|part| part.subject) {
        list.add(subject.look(), Action::Look(subject));
    }
    let mut choices = list.choices;
    choices.sort_by_key(|choice| Rank::of(&choice.action));
    choices
}

/// Where an action stands in a part's list: what harms nobody first, what harms most last, so that
/// the first thing under the hand is never a repair.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Rank {
    Look,
    Work,
    Care,
    Part,
    Danger,
}

impl Rank {
    fn of(action: &Action) -> Self {
        if let Action::Look(_) = action {
            return Self::Look;
        }
        let Action::Mend(repair) = action else { return Self::Work };
        match repair.nature() {
            Nature::Care => Self::Care,
            Nature::Part => Self::Part,
            Nature::Danger | Nature::Bypass => Self::Danger,
        }
    }
}

/// The forms at a part, as it is seen.
#[must_use]
pub fn forms(part: &str, seen: &Seen) -> Vec<Form> {
    let id = canonical(part);
    if let Some(hand_valve) = HandValve::from_id(id) {
        return vec![Form::HandValve(hand_valve)];
    }
    if let Some(screw) = screw_of(id) {
        return vec![Form::Turn(screw)];
    }
    if let Some(port) = port_of(id) {
        let tightens = seen.fill(port).is_some_and(|fill| {
            matches!(
                fill,
                PortFill::Snug
                    | PortFill::HandTight
                    | PortFill::Leaning
                    | PortFill::TapSnug
                    | PortFill::TapLoose
            )
        });
        return if tightens { vec![Form::Tighten(port)] } else { Vec::new() };
    }
    match id {
        "thermostat" | "thermostat-up" | "thermostat-down" => vec![Form::Setpoint],
        "householder" | "exit-door" | "exit-gate" => vec![Form::HandOver],
        "job-sheet" => vec![Form::Write, Form::Finding],
        _ => Vec::new(),
    }
}
