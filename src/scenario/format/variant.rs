//! Other settings of a job, of which each seed draws one.

use super::{Affliction, Card, Furnace, Gas, House, Neighbors, Pipe, Site, Supply};
use crate::parts::Ending;
use crate::scenario::shape::section;

section! {
    Variant(id!("format-variant")) {
        site(id!("format-variant-site")): Option<Site> = (derived id!("default-of-the-job"));
        gas(id!("format-variant-gas")): Option<Gas> = (derived id!("default-of-the-job"));
        supply(id!("format-variant-supply")): Option<Supply> = (derived id!("default-of-the-job"));
        trunk(id!("format-variant-trunk")): Option<Vec<Pipe>> = (derived id!("default-of-the-job"));
        branch(id!("format-variant-branch")): Option<Vec<Pipe>> =
            (derived id!("default-of-the-job"));
        neighbors(id!("format-variant-neighbors")): Option<Neighbors> =
            (derived id!("default-those-of-the-job"));
        furnace(id!("format-variant-furnace")): Option<Furnace> =
            (derived id!("default-of-the-job"));
        house(id!("format-variant-house")): Option<House> = (derived id!("default-of-the-job"));
        faults(id!("format-variant-faults")): Option<Vec<Affliction>> =
            (derived id!("default-those-of-the-job"));
        card(id!("format-variant-card")): Option<Card> = (derived id!("default-of-the-job"));
        endings(id!("format-variant-endings")): Option<Vec<Ending>> =
            (derived id!("default-those-of-the-job"));
    }
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
