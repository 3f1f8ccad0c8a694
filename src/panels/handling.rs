//! What the hand does on a part itself: a press, a turn, a lever, strokes, a hold or a pull.
//!
//! Each of them is an action like any other; nothing is done here. A part that has no way of its own
//! opens its list.

mod at_part;
mod grip;
mod lever;
mod manner;
mod part;
mod port;
mod turn;
mod turn_by;

pub use at_part::{Asked, AtPart, ByPointer, Holding};
pub use manner::manner;
pub use part::{Handling, handling};
pub use turn::{Detent, Turning};
