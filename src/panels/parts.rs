//! Parts of the drawings by id: what they are called and in which order a job meets them.

use crate::parts::{Place, at_hand, job_order, part};

/// The part an element id belongs to: `high-cap@off` is `high-cap`, `meter.display` is `meter`.
#[must_use]
pub fn canonical(id: &str) -> &str {
    id.split(['@', '.']).next().unwrap_or(id)
}

/// Whether an element id names a piece inside a part, which is no hot-spot of its own.
#[must_use]
pub fn is_piece(id: &str) -> bool {
    id.contains('.')
}

/// What a person calls the part; its id, where the table of parts does not have it.
#[must_use]
pub fn name(id: &str) -> String {
    let id = canonical(id);
    part(id).map_or(id, |part| part.name).to_owned()
}

/// Rank of a part in the order of the job at a place: the place's own parts, parts not listed, what is
/// at hand everywhere.
#[must_use]
pub fn rank(place: Place, id: &str) -> usize {
    let id = canonical(id);
    let order = job_order(place);
    let unlisted = order.len();
    if let Some(at) = order.iter().position(|&one| one == id) {
        return at;
    }
    match at_hand().iter().position(|&one| one == id) {
        Some(at) => unlisted + 1 + at,
        None => unlisted,
    }
}
