//! What comes about by itself in a step, to be told.

use crate::appliance::ignition::ControlState;
use crate::parts::{Level, Port};

/// Something that came about by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Notice {
    /// The solver did not converge.
    NotConverged,
    /// The ignition control changed state.
    Control { from: ControlState, to: ControlState },
    /// The burners changed stage.
    Fired { from: Option<Level>, to: Option<Level> },
    /// The control took up a call while a port stood open; a shut valve or the valve switch may
    /// keep the gas from coming.
    CalledOnOpenPort { port: Port, barred: bool },
    /// Gas began to flow from an open port or a bare adapter.
    GasFromPort { port: Port },
    /// A jet from a port, or gas that had gathered, met a source of ignition.
    Ignition { port: Option<Port> },
    /// Pressure at the gas valve passed what the valve may see.
    ValveOverPressure { pa: f64 },
    /// The manometer saw more than its range.
    MeterOverRange,
    /// The smell became strong or the gas detector sounded.
    Alarm,
    /// The water column's water was blown out.
    ColumnBlownOut,
    /// The spring gauge saw so much that its spring has set.
    SpringGaugeStrained,
}
