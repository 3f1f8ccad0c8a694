//! Instruments other than the manometer: what is in the bag, and what it is held to.

use crate::instrument::electrical::Needle;
use crate::instrument::flue_analyser::FlueAnalyser;
use crate::instrument::spring_gauge::SpringGauge;
use crate::instrument::stopwatch::Stopwatch;
use crate::instrument::thermometer::Thermometer;
use crate::instrument::water_column::WaterColumn;
use crate::parts::{Fitted, Gauge, Spot};
use serde::Serialize;

/// The instruments in the bag.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Kit {
    /// What the tool in hand is held to.
    pub spot: Option<Spot>,
    /// Whether the microammeter is clipped in at the flame rod.
    pub clipped: Fitted,
    pub thermometer: Thermometer,
    pub analyser: FlueAnalyser,
    /// The electrical meter's face.
    pub meter: Needle,
    /// Needle of the microammeter in the flame circuit.
    pub micro: Needle,
    pub stopwatch: Stopwatch,
    /// Which instrument the hose goes to.
    pub gauge: Gauge,
    pub column: WaterColumn,
    pub spring: SpringGauge,
    /// Whether one of the gauges was ever used: until then they need no steps.
    pub gauges_used: bool,
}

impl Kit {
    pub(crate) fn new(inside_k: f64, scale_off_m: f64) -> Self {
        Self {
            spot: None,
            clipped: Fitted::Off,
            thermometer: Thermometer::new(inside_k),
            analyser: FlueAnalyser::new(inside_k),
            meter: Needle::default(),
            micro: Needle::default(),
            stopwatch: Stopwatch::default(),
            gauge: Gauge::Digital,
            column: WaterColumn::new(scale_off_m),
            spring: SpringGauge::default(),
            gauges_used: false,
        }
    }
}
