//! Tests of the furnace's parts, and of the room and house around them.

mod airside;
mod burner;
mod combustion;
mod house;
mod ignition_refusals;
mod ignition_safety;
mod ignition_tables;
mod levels;
mod plate;
mod room;
mod safety;
mod table;
