//! What the furnace stands in: the tank and the house.

pub mod house;
pub mod tank;
