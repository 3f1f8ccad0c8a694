//! The causes that a finding can name, and what is really wrong on a bench in their words.
//!
//! A cause names what can be told apart with what the van carries. Where two cannot, the one is an
//! acceptable name of the other, with the reason in `assets/catalogue/causes.ron`.

mod found;
mod kind;
mod row;

pub use found::{ORDINARY_ZERO_PA, set, set_level};
pub use kind::BackingKind;
pub use row::Harms;

pub(super) use row::{CAUSES_READ, asked};

use crate::parts::{Backing, Cause, SystemPart};
use crate::setup::{Fault, Setup};
use row::Entry;

/// Something that is really wrong on a bench.
#[derive(Debug, Clone, PartialEq)]
pub struct TrueCause {
    /// The name that says it best.
    pub cause: Cause,
    /// Where it comes from.
    pub origin: Origin,
}

/// Where a true cause comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Origin {
    /// A fault of the catalogue, as severe as that.
    Fault(Fault, f64),
    /// How the bench was drawn as found.
    Found,
}

impl TrueCause {
    /// Whether another cause is near enough to count as its name.
    #[must_use]
    pub fn accepts(&self, named: Cause) -> bool {
        let near = |fault: &Fault| named.entry().coarser_for.contains(fault);
        named == self.cause || self.fault().is_some_and(|fault| near(&fault))
    }

    /// The same on a job that was left shut off after an alarm: nobody stays to look for the place.
    #[must_use]
    pub fn accepts_after_alarm(&self, named: Cause) -> bool {
        let near = |fault: &Fault| named.entry().after_alarm.contains(fault);
        self.accepts(named) || self.fault().is_some_and(|fault| near(&fault))
    }

    fn fault(&self) -> Option<Fault> {
        match self.origin {
            Origin::Fault(fault, _) => Some(fault),
            Origin::Found => None,
        }
    }
}

/// Everything that is wrong on a bench as it was built, whether it can be felt or not: its faults,
/// then how it was found. Each cause once.
#[must_use]
pub fn true_causes(setup: &Setup) -> Vec<TrueCause> {
    let mut all: Vec<TrueCause> = Vec::new();
    for &(fault, severity) in &setup.faults {
        if let Some(cause) = Cause::of(fault) {
            all.push(TrueCause { cause, origin: Origin::Fault(fault, severity) });
        }
    }
    for cause in found::to_name(setup) {
        if !all.iter().any(|one| one.cause == cause) {
            all.push(TrueCause { cause, origin: Origin::Found });
        }
    }
    all
}

/// Causes that are true of a bench beside those that are to be named: whoever writes one of them is
/// not wrong.
#[must_use]
pub fn true_as_well(setup: &Setup) -> Vec<Cause> {
    found::true_as_well(setup)
}

impl Cause {
    /// The one that names a fault.
    #[must_use]
    pub fn of(fault: Fault) -> Option<Self> {
        let table = CAUSES_READ.as_ref().ok()?;
        table.iter().find(|(_, entry)| entry.names.contains(&fault)).map(|(cause, _)| *cause)
    }

    /// The part of the system that it belongs to.
    #[must_use]
    pub fn part(self) -> SystemPart {
        self.entry().part
    }

    /// How it can be seen, in a sentence.
    #[must_use]
    pub fn how_seen(self) -> &'static str {
        self.entry().seen
    }

    /// Harm that it does to the house where it is left, in a sentence.
    #[must_use]
    pub fn to_the_house(self) -> &'static str {
        self.entry().house
    }

    /// Kinds of what speaks for it.
    #[must_use]
    pub fn shown_by(self) -> &'static [BackingKind] {
        &self.entry().shown_by
    }

    /// Faults that it names.
    #[must_use]
    pub fn faults(self) -> &'static [Fault] {
        &self.entry().names
    }

    /// What a wrong word of it does.
    #[must_use]
    pub fn harms(self) -> Harms {
        self.entry().harms
    }

    /// Whether something on the sheet, or seen, speaks for it.
    #[must_use]
    pub fn is_shown_by(self, backing: Backing) -> bool {
        self.entry().shown_by.contains(&BackingKind::of(backing))
    }

    fn entry(self) -> &'static Entry {
        let table = CAUSES_READ.as_ref().ok();
        let row = table.and_then(|rows| rows.iter().find(|(cause, _)| *cause == self));
        row.map_or(&UNREAD, |(_, entry)| entry)
    }
}

static UNREAD: Entry = Entry::UNREAD;
