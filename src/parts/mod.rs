//! Places, parts and tools by name, the states that parts can be in, and what is written of them: the
//! words that every other room shares. The ids are the element ids of the drawings. What belongs to
//! which part stands in `assets/catalogue/parts.ron`.

#[macro_use]
mod named;
mod cause;
mod duty;
mod ending;
mod finding;
mod names;
mod reading;
mod scene;
mod spot;
mod state;
mod table;

pub use crate::appliance::level::{Level, Levels, is_staged};
pub use crate::appliance::test_point::{Port, Stage};
pub use cause::{Cause, SystemPart};
pub use duty::{ARRIVAL_LOOKS, Duty};
pub use ending::Ending;
pub use finding::{Answer, Backing, Sight, WrittenFinding};
pub use names::{Door, HandValve, Joint, OtherAppliance, Place, Screw, Subject, Tool, Window};
pub use reading::{JointVerdict, Phase, Reading};
pub use scene::{Position, Room, Scene, TimeOfDay, ValveBody, YardLook};
pub use spot::{Range, Spot};
pub use state::{Fitted, Gauge, Height, LowSide, OnOff, Opening, PortFill, Push};
pub use table::{Part, at_hand, job_order, part};

pub(crate) use table::{asked, check};
