//! What can be done, as lists: every action of the bench is in one of them or in a form, so that
//! mouse, keyboard and screen reader reach all of it.
//!
//! A list offers what makes sense at the part as it is seen, also what will be refused for want of
//! a tool and what is plainly unwise: refusals teach, and mistakes are allowed.

mod at_hand;
mod furnace;
mod hall;
mod here;
mod measure;
mod repairs;
mod valve;
mod yard;

use super::parts::canonical;
use crate::catalogue::repair::Nature;
use crate::hands::action::{Action, Contact};
use crate::parts::{Cock, Port, PortFill, Screw, Subject, Tool};
use crate::senses::seen::Seen;

pub use here::{here, in_hand};
pub(super) use repairs::outdates;

/// One thing that can be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Way {
    /// In plain words.
    pub label: String,
    /// What it does.
    pub action: Action,
}

/// Something done with a number or with several choices at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Form {
    /// A hand valve to an angle.
    Cock(Cock),
    /// A screw by eighths of a turn.
    Turn(Screw),
    /// A plug by eighths of a turn.
    Tighten(Port),
    /// The thermostat to a temperature.
    Setpoint,
    /// A reading on the job sheet.
    Write,
    /// The end of the job.
    HandOver,
}

/// What can be done at a part, as it is seen.
#[must_use]
pub fn ways(part: &str, seen: &Seen) -> Vec<Way> {
    let id = canonical(part);
    let mut list = List::default();
    at_hand::add(id, seen, &mut list);
    furnace::add(id, seen, &mut list);
    valve::add(id, seen, &mut list);
    hall::add(id, seen, &mut list);
    yard::add(id, seen, &mut list);
    measure::add(id, seen, &mut list);
    repairs::add(id, seen, &mut list);
    let subject = match id {
        // The draft hose ends there.
        "pressure-switch-low" | "pressure-switch-high" => Some(Subject::DraftHose),
        _ => Subject::from_id(id),
    };
    if let Some(subject) = subject {
        list.add(look_label(subject), Action::Look(subject));
    }
    let mut ways = list.ways;
    ways.sort_by_key(|way| Rank::of(&way.action));
    ways
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
    if let Some(cock) = Cock::from_id(id) {
        return vec![Form::Cock(cock)];
    }
    if let Some(screw) = valve::screw_of(id) {
        return vec![Form::Turn(screw)];
    }
    if let Some(port) = valve::port_of(id) {
        let tightens = valve::fill(port, seen).is_some_and(|fill| {
            matches!(fill, PortFill::Snug | PortFill::HandTight | PortFill::Leaning)
        });
        return if tightens { vec![Form::Tighten(port)] } else { Vec::new() };
    }
    match id {
        "thermostat" | "thermostat-up" | "thermostat-down" => vec![Form::Setpoint],
        "householder" | "exit-door" | "exit-gate" => vec![Form::HandOver],
        "job-sheet" => vec![Form::Write],
        _ => Vec::new(),
    }
}

/// A list being filled; nothing comes twice.
#[derive(Debug, Default)]
struct List {
    ways: Vec<Way>,
}

impl List {
    fn add(&mut self, label: impl Into<String>, action: Action) {
        if !self.ways.iter().any(|way| way.action == action) {
            self.ways.push(Way { label: label.into(), action });
        }
    }

    /// Adds how the wanted tool comes into the hand, unless it is there.
    fn need(&mut self, tool: Tool, seen: &Seen) {
        match seen.hand {
            Some(held) if held == tool => {}
            Some(held) => self.add(put_down_label(held), Action::PutDown),
            None => self.add(take_label(tool), Action::Take(tool)),
        }
    }

    /// Adds how the hand gets free, unless it is.
    fn need_free_hand(&mut self, seen: &Seen) {
        if let Some(held) = seen.hand {
            self.add(put_down_label(held), Action::PutDown);
        }
    }
}

fn take_label(tool: Tool) -> String {
    t!("way-take", tool = tool.label().to_lowercase())
}

fn put_down_label(tool: Tool) -> String {
    t!("way-put-down", tool = tool.label().to_lowercase())
}

fn look_label(subject: Subject) -> &'static str {
    match subject {
        Subject::Plate => t!("look-plate"),
        Subject::ConversionLabel => t!("look-conversion-label"),
        Subject::Orifices => t!("look-orifices"),
        Subject::SpringMark => t!("look-spring-mark"),
        Subject::LowGasSwitch => t!("look-low-gas-switch"),
        Subject::SupplyVent => t!("look-supply-vent"),
        Subject::Vent => t!("look-vent"),
        Subject::AirOpening => t!("look-air-opening"),
        Subject::Connector => t!("look-connector"),
        Subject::DripLeg => t!("look-drip-leg"),
        Subject::Flames => t!("look-flames"),
        Subject::Filter => t!("look-filter"),
        Subject::TankGauge => t!("look-tank-gauge"),
        Subject::MeterDial => t!("look-meter-dial"),
        Subject::CoAlarm => t!("look-co-alarm"),
        Subject::StatusLamp => t!("look-status-lamp"),
        Subject::SupplyRegulator => t!("look-supply-regulator"),
        Subject::DraftHose => t!("look-draft-hose"),
        Subject::BoxHose => t!("look-box-hose"),
        Subject::FlameRod => t!("look-flame-rod"),
        Subject::Registers => t!("look-registers"),
    }
}

fn call_label(contact: Contact) -> &'static str {
    match contact {
        Contact::SupplyOwner => t!("call-supply-owner"),
        Contact::Emergency => t!("call-emergency"),
    }
}
