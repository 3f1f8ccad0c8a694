//! Coached help: the next step, worked out from what the trainee sees and from nothing else.
//!
//! It leads by doing: from arrival to the first true reading within about five minutes, then from
//! reading to reading until the found column is full. What the readings mean is left to the
//! trainee. The order is common practice: air first, paper, isolation, port, gas, fire, wait, read.

mod air;
mod cycle;
mod elsewhere;
mod end;
mod hint;
mod lead;
mod memory;
mod paper;
mod piping;
mod reading;

use crate::panels::sheet::Cell;
use crate::parts::Phase;
use crate::senses::seen::Seen;
use hint::order;
pub use hint::{CardAsks, Hint};
pub use memory::Remembered;

/// The next step, or nothing once the job is over.
#[must_use]
pub fn coach(seen: &Seen, remembered: &Remembered, asks: CardAsks<'_>) -> Option<Hint> {
    if seen.over.is_some() {
        return None;
    }
    air::danger(seen)
        .or_else(|| air::leak(seen))
        .or_else(|| air::arrive(seen, remembered))
        .or_else(|| paper::paper(seen, remembered))
        .or_else(|| paper::look_round(seen, remembered, asks))
        .or_else(|| end::unfit(seen, remembered))
        .or_else(|| paper::look_at_filter(seen, remembered, asks))
        .or_else(|| {
            let (port, stage) = order(seen.levels)
                .into_iter()
                .find(|&(port, stage)| seen.sheet.reading(port, stage, Phase::Found).is_none())?;
            reading::lead(seen, remembered, asks, Cell { port, stage, phase: Phase::Found })
        })
        .or_else(|| {
            let (port, stage) = remembered.next_again(seen)?;
            reading::lead(seen, remembered, asks, Cell { port, stage, phase: Phase::Left })
        })
        .or_else(|| Some(end::judge(seen, remembered, asks)))
}
