//! Other settings of a job, of which each seat draws one.

use std::borrow::Cow;

use super::{Affliction, Card, Furnace, Gas, House, Neighbors, Pipe, Scenario, Site, Supply};
use crate::appliance::plate::Fuel;
use crate::parts::Ending;
use crate::rng::stream;
use crate::scenario::shape::section;

section! {
    /// Another setting of the job. What it does not write stays as in the job; what it writes
    /// replaces that field as a whole, so that each part of a section it writes must be written
    /// anew. Title, texts for the list, hints, debrief, manometer, found state and rules are the same
    /// in all settings.
    Variant {
        /// Where the house stands.
        site: Option<Site> = (derived "that of the job");
        /// The gas in the pipes.
        gas: Option<Gas> = (derived "that of the job");
        /// Where the gas comes from.
        supply: Option<Supply> = (derived "that of the job");
        /// Pipe from the supply regulator to the tee in the plant room.
        trunk: Option<Vec<Pipe>> = (derived "that of the job");
        /// Pipe from the tee to the furnace.
        branch: Option<Vec<Pipe>> = (derived "that of the job");
        /// The other gas appliances.
        neighbors: Option<Neighbors> = (derived "those of the job");
        /// The furnace.
        furnace: Option<Furnace> = (derived "that of the job");
        /// The house around it.
        house: Option<House> = (derived "that of the job");
        /// What is wrong.
        faults: Option<Vec<Affliction>> = (derived "those of the job");
        /// What the trainee is told.
        card: Option<Card> = (derived "that of the job");
        /// Ways of ending the job that are right, as in `marking.endings`.
        endings: Option<Vec<Ending>> = (derived "those of the job");
    }
}

/// Applies a macro's fields: what a variant writes takes the place of the job's.
macro_rules! take {
    ($variant:ident into $job:ident: $($field:ident)+) => { $(
        if let Some(it) = &$variant.$field {
            $job.$field.clone_from(it);
        }
    )+ };
}

/// Names of the fields that are written.
macro_rules! written {
    ($variant:ident: $($field:ident)+) => {
        [$( ($variant.$field.is_some(), stringify!($field)) ),+]
            .into_iter()
            .filter_map(|(is, name)| is.then_some(name))
            .collect()
    };
}

impl Variant {
    /// Names of the fields that it writes.
    #[must_use]
    pub fn written(&self) -> Vec<&'static str> {
        written!(self: site gas supply trunk branch neighbors furnace house faults card endings)
    }
}

impl Scenario {
    /// The job as it is written, without variants.
    #[must_use]
    pub fn as_written(&self) -> Self {
        Self { variants: Vec::new(), ..self.clone() }
    }

    /// The job in the setting of a variant, without others.
    #[must_use]
    pub fn in_variant(&self, variant: &Variant) -> Self {
        let mut job = self.as_written();
        take!(variant into job:
            site gas supply trunk branch neighbors furnace house faults card);
        if let Some(endings) = &variant.endings {
            job.marking.endings.clone_from(endings);
        }
        job
    }

    /// Ways of ending the job that are right for a seed.
    #[must_use]
    pub fn right_endings(&self, seed: u64) -> Vec<Ending> {
        self.settled(seed).marking.endings.clone()
    }

    /// The fuels that a seat may draw, that of the job as it is written first.
    #[must_use]
    pub fn fuels(&self) -> Vec<Fuel> {
        let mut fuels = vec![self.gas.fuel];
        for gas in self.variants.iter().filter_map(|it| it.gas.as_ref()) {
            if !fuels.contains(&gas.fuel) {
                fuels.push(gas.fuel);
            }
        }
        fuels
    }

    /// Which setting a seed draws: 0 for the job as it is written, then the variants in order.
    #[must_use]
    pub fn setting(&self, seed: u64) -> usize {
        let count = u32::try_from(self.variants.len()).map_or(u32::MAX, |n| n.saturating_add(1));
        let at = if count > 1 { stream(seed, "variants").below(count) } else { 0 };
        usize::try_from(at).unwrap_or(0)
    }

    /// The job in the setting that a seed draws, without others.
    #[must_use]
    pub fn settled(&self, seed: u64) -> Cow<'_, Self> {
        if self.variants.is_empty() {
            return Cow::Borrowed(self);
        }
        let variant = self.setting(seed).checked_sub(1).and_then(|i| self.variants.get(i));
        Cow::Owned(variant.map_or_else(|| self.as_written(), |it| self.in_variant(it)))
    }
}
