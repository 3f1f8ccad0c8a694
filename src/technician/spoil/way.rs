//! One way of spoiling good work.

use super::super::edit::Edit;
use super::super::plan::Technician;
use super::good::Good;
use super::said::{as_said, as_written};
use crate::words::Id;

/// One way of spoiling good work.
#[derive(Debug, Clone, Copy)]
pub struct Spoil {
    /// Its name, as an id of its words.
    name: Id,
    /// Rules that it must trip, sorted.
    pub trips: &'static [&'static str],
    /// How it edits a good run. The first edit tells where it leaves the good run.
    edits: fn(&Good) -> Vec<Edit>,
    /// What else must be so of the good run, so that it loses these items and no others.
    besides: fn(&Good) -> bool,
    /// The deed at which it leaves the good run, where there are several.
    leaves: Leaves,
    /// Whether it still sees what is wrong.
    heeds: Heeds,
    /// Where the occasion for its slips comes from.
    occasion: Occasion,
}

/// Where the occasion for a slip comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Occasion {
    /// The good run gives it.
    Given,
    /// The way does work that the good run does not do, and does it wrongly.
    Brought,
}

/// One of several deeds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Leaves {
    /// The first of them.
    AtFirst,
    /// The last of them.
    AtLast,
}

/// What the one who spoils it still heeds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Heeds {
    /// As the good technician does.
    Faults,
    /// Goes on with the plan, whatever shows.
    Nothing,
}

/// Where a spoiled run leaves the good one.
#[derive(Debug, Clone)]
pub(in crate::technician) struct Fork {
    /// The tick from which they differ.
    pub tick: u64,
    /// How it is spoiled.
    pub spoil: Spoil,
    edits: Vec<Edit>,
}

impl Spoil {
    /// A way that is open to every good run that does what is edited.
    pub(super) const fn new(
        name: Id,
        trips: &'static [&'static str],
        edits: fn(&Good) -> Vec<Edit>,
    ) -> Self {
        Self {
            name,
            trips,
            edits,
            besides: |_| true,
            leaves: Leaves::AtFirst,
            heeds: Heeds::Faults,
            occasion: Occasion::Given,
        }
    }

    /// The same for good runs only of which this is so besides.
    pub(super) const fn besides(self, besides: fn(&Good) -> bool) -> Self {
        Self { besides, ..self }
    }

    /// The same at the last of the deeds that are edited.
    pub(super) const fn at_last(self) -> Self {
        Self { leaves: Leaves::AtLast, ..self }
    }

    /// The same by one who goes on with the plan, whatever shows.
    pub(super) const fn careless(self) -> Self {
        Self { heeds: Heeds::Nothing, ..self }
    }

    /// The same where the slip is in work that the good run does not do.
    pub(super) const fn with_work_of_its_own(self) -> Self {
        Self { occasion: Occasion::Brought, ..self }
    }

    /// Its name for people.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name.text()
    }

    /// Where it leaves a good run; none where that gives no occasion: it does nothing of what is edited,
    /// or by what the rules look at there is nothing to lose.
    pub(in crate::technician) fn fork(&self, good: &Good) -> Option<Fork> {
        let mut edits = (self.edits)(good);
        let places = good.places(edits.first()?);
        let place = match self.leaves {
            Leaves::AtFirst => *places.first()?,
            Leaves::AtLast => *places.last()?,
        };
        // Who heeds nothing mends and gives up nothing: not before all is mended.
        if self.heeds == Heeds::Nothing && (!good.in_use() || good.mends_after(place)) {
            return None;
        }
        let given = match self.occasion {
            Occasion::Given => self.trips.iter().all(|rule| good.gives(rule)),
            Occasion::Brought => true,
        };
        let occasion = given && (self.besides)(good);
        if self.heeds == Heeds::Nothing {
            edits.push(as_said(good));
        }
        edits.extend(as_written(good));
        occasion.then_some(Fork { tick: good.tick_of(place), spoil: *self, edits })
    }
}

impl Fork {
    /// The one who spoils it, as a technician stands who has done the good run so far.
    pub(in crate::technician) fn player(&self, good: &Technician) -> Technician {
        let mut player = good.with_edits(self.edits.clone());
        if self.spoil.heeds == Heeds::Nothing {
            player.close_eyes();
        }
        player
    }
}
