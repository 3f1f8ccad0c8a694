//! Tests of the furnace's parts.

mod ignition_safety;
mod ignition_tables;
