//! What measures and shows. Instruments are imperfect, and say nothing about it.

pub mod electrical;
pub mod figure;
pub mod flue_analyser;
pub mod leak_fluid;
pub mod manometer;
pub mod spring_gauge;
pub mod stopwatch;
pub mod thermometer;
pub mod water_column;
