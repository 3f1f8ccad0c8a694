//! Judging a job: from what happened and how it was left to findings, essentials and points.

mod adjusting;
mod brief;
mod causes;
mod control;
pub mod debrief;
mod deed;
pub mod evaluate;
mod faults_left;
pub(crate) mod grounds;
mod joints;
pub mod ledger;
mod measuring;
mod numbers;
pub mod observer;
pub mod occasion;
mod repairs;
mod safety;
pub mod trace;
mod unread;

pub use brief::Brief;
pub use evaluate::{EssentialMark, Finding, Marks, evaluate};
pub use ledger::Ledger;
pub use observer::Observer;
