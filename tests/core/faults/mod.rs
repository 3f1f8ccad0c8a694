//! The catalogue of faults: each is put into a healthy bench, and what is read and seen must differ
//! in the direction and the order that the trade knows.

mod catalogue;
mod control;
pub mod hand;
mod judged;
mod looks;
mod made_worse;
mod marked;
mod measuring;
mod mended;
mod mending;
mod order;
mod row;
mod shortcuts;
mod supply;
mod valve;
