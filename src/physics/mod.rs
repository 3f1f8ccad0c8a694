//! Gas in pipes, parts that let it through, and what burning it does. Knows no appliance.

pub mod combustion;
pub mod fluid;
pub mod heat;
pub mod network;
pub mod orifice;
pub mod pipe;
pub mod regulator;
pub mod room;
pub mod valve;
