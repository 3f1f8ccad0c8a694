//! Places, parts and tools by name, the states that parts can be in, and what is written of them: the
//! words that every other room shares. The ids are the element ids of the drawings.

#[macro_use]
mod named;
mod ending;
mod names;
mod reading;
mod spot;
mod state;

pub use crate::appliance::test_point::{Port, Stage};
pub use ending::Ending;
pub use names::{Cock, Door, Joint, Neighbor, Place, Screw, Subject, Tool, Window};
pub use reading::{JointVerdict, Phase, Reading};
pub use spot::{Range, Spot};
pub use state::{Firing, Fitted, Gauge, Height, Level, LowSide, OnOff, Opening, PortFill, Push};
