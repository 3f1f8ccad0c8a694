//! What measures and shows. Instruments are imperfect, and say nothing about it.

pub mod leak_fluid;
pub mod manometer;
