//! Which of its settings a job takes for a seed, and the job in that setting.

use std::borrow::Cow;

use super::format::{Scenario, Variant};
use crate::appliance::plate::Fuel;
use crate::parts::Ending;
use crate::rng::stream;

/// Applies a macro's fields: what a variant writes takes the place of the job's.
macro_rules! take {
    ($variant:ident into $job:ident: $($field:ident)+) => { $(
        if let Some(it) = &$variant.$field {
            $job.$field.clone_from(it);
        }
    )+ };
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

    /// The fuels that a seed may draw, that of the job as it is written first.
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
