//! How a network is written down for a digest: every field is named here, so that a new one does not
//! compile until it is dealt with.
//!
//! Left out are what was compiled from nodes and elements when the network was built, the list of the
//! openings that are not shut, which follows from their areas, and the room for a step, which each
//! step fills before it reads it.
//!
//! **Source.** No physical figures.
//! **Checked.** `tests/core/bench/digest.rs`.

use serde::{Serialize, Serializer};

use super::guess::Guess;
use super::{Network, Work};

impl Serialize for Network {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self {
            gas,
            p_atm_abs_pa,
            nodes,
            slots: _,
            free,
            capacity,
            heads,
            elements,
            places: _,
            curves,
            openings,
            passing: _,
            opened_or_shut: _,
            regulators,
            whole,
            program: _,
            work,
        } = self;
        let heads = heads.get(..nodes.len());
        let shape = (gas, p_atm_abs_pa, nodes, capacity, elements);
        let moving = (heads, curves, openings, regulators, whole);
        (shape, moving, remembered(work, *free)).serialize(serializer)
    }
}

/// What a step remembers for the next one, of networks with `free` nodes that have a volume.
fn remembered(work: &Work, free: usize) -> impl Serialize + '_ {
    let Work {
        start: _,
        trial: _,
        lower_pa: _,
        upper_pa: _,
        first_share: _,
        residual: _,
        change: _,
        diagonal: _,
        matrix: _,
        factors,
        factors_per_dt,
        factors_age,
        guess,
    } = work;
    let Guess { moved_pa, kind } = guess;
    let [last, second, third] = moved_pa;
    let moved_pa = [last.get(..free), second.get(..free), third.get(..free)];
    (factors, factors_per_dt, factors_age, moved_pa, kind)
}
