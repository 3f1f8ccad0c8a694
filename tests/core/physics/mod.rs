//! Physics against closed forms and published tables.

mod network;
mod network_shapes;
mod network_storm;
mod orifice;
mod pipe;
mod regulator;
mod tubing;
mod unit_rows;
mod valve;
