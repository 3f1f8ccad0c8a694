//! What happened, with what was seen and true at that moment. Marking reads these and nothing else
//! between the start and the end.

use super::action::{Action, HandOver};
use super::refusal::Refusal;
use crate::appliance::ignition::ControlState;
use crate::appliance::plate::Plate;
use crate::catalogue::repair::Repair;
use crate::model::Notice;
use crate::model::truth::Truth;
use crate::parts::{Joint, Level, Port, Reading, Screw};
use crate::physics::valve::HandleAngle;
use crate::senses::meter_history::Spell;
use crate::senses::seen::WrittenMeasured;

/// Something that happened at a tick.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// Moment of the event, in ticks.
    pub tick: u64,
    /// Kind of the event, with its facts.
    pub what: EventKind,
}

/// Kind of an event, with its facts.
#[derive(Debug, Clone, PartialEq)]
pub enum EventKind {
    /// An action was done. The state is the one right before it.
    Did {
        /// Action that was done.
        action: Action,
        /// What was true right before.
        before: Box<Truth>,
    },
    /// An action was refused.
    Refused {
        /// Action that was refused.
        action: Action,
        /// Reason of the refusal.
        why: Refusal,
    },
    /// The ignition control changed state.
    Control {
        /// State before the change.
        from: ControlState,
        /// State after the change.
        to: ControlState,
    },
    /// The burners changed stage.
    Fired {
        /// Level before the change; none while nothing fires.
        from: Option<Level>,
        /// Level after the change; none once nothing fires.
        to: Option<Level>,
    },
    /// A port was opened with this pressure behind it (lowest value at which gas is felt: 25 Pa).
    OpenedUnderGas {
        /// Port that was opened.
        port: Port,
        /// The pressure, in pascals.
        pa: f64,
    },
    /// Gas began to flow from an open port or a bare adapter.
    GasFromPort {
        /// Port that the gas came from.
        port: Port,
    },
    /// The control took up a call while a port stood open with nothing on it.
    CalledOnOpenPort {
        /// Port that stood open.
        port: Port,
        /// Whether a shut valve or the valve switch kept the gas from coming.
        barred: bool,
    },
    /// A jet or gathered gas met a source of ignition.
    Ignition {
        /// From which port, or none for gas that had gathered in a zone.
        port: Option<Port>,
    },
    /// The zero button was pressed with this true difference at the meter, in pascals.
    Zeroed {
        /// Pressure at the meter.
        applied_pa: f64,
    },
    /// A spell of reading ended; or, while it goes on, a reading was written or the job ended, and
    /// this is the spell so far.
    Showed(Spell),
    /// A reading was written.
    Wrote(ReadingFact),
    /// A screw was turned.
    Turned {
        /// Screw that was turned.
        screw: Screw,
        /// Eighths of a turn that were asked for, clockwise positive.
        eighths: i16,
        /// Set pressure before and after, in pascals.
        set_pa: (f64, f64),
        /// Whether it came to its bottom.
        bottomed: bool,
        /// What the burners did.
        firing: Option<Level>,
        /// Inlet pressure then, in pascals.
        inlet_pa: f64,
        /// Port at which the meter showed a number then; none while it showed none.
        metered: Option<Port>,
        /// Seconds since the last turn of any screw, if any.
        since_turn_s: Option<f64>,
    },
    /// Something was mended, replaced or cleaned.
    Mended {
        /// Repair that was done.
        repair: Repair,
        /// Whether the repair changed anything.
        outcome: Outcome,
        /// The plate with its label as it stands now, where the repair changed it.
        plate: Option<Box<Plate>>,
    },
    /// A plug began across its thread.
    CrossThreaded {
        /// Port with the crossed thread.
        port: Port,
    },
    /// A port's boss cracked from overtightening.
    Cracked {
        /// Port whose boss cracked.
        port: Port,
    },
    /// Leak fluid had been on a joint long enough to judge, or was wiped: what it could show.
    FluidJudged {
        /// Joint under the fluid.
        joint: Joint,
        /// Lowest pressure behind the joint while the fluid was on, in pascals.
        lowest_pa: f64,
        /// Seconds it was on.
        dwell_s: f64,
        /// What the burners did all that time (the lowest).
        firing: Option<Level>,
        /// Whether bubbles grew in it.
        bubbles: bool,
        /// Handle of the manual valve then.
        manual_valve: HandleAngle,
    },
    /// The smell became strong or an alarm sounded.
    Alarm,
    /// A cycle was seen through: from standby through low and high to standby again, called by the
    /// thermostat, with no hand on the gas in between.
    Cycle,
    /// Pressure at the gas valve passed what the valve may see.
    ValveOverPressure {
        /// The pressure, in pascals.
        pa: f64,
    },
    /// The manometer saw more than its range.
    MeterOverRange,
    /// Something was written from an instrument other than the manometer.
    WroteMeasured {
        /// Spot and figures that were written.
        written: WrittenMeasured,
        /// What the burners did.
        firing: Option<Level>,
    },
    /// The water column's water was blown out.
    ColumnBlownOut,
    /// The spring gauge saw so much that its spring has set.
    SpringGaugeStrained,
    /// A no-flow hold lasted this long, in seconds, with this rise, in pascals.
    Held {
        /// Seconds at rest with the hose on the inlet port.
        seconds: f64,
        /// Rise during that time, in pascals.
        rise_pa: f64,
    },
    /// The job ended, handed over or stopped.
    Ended {
        /// What was said, unless the job was stopped.
        hand_over: Option<HandOver>,
        /// The state it was left in.
        left: Box<Truth>,
    },
    /// The solver did not converge. Tests forbid it.
    NotConverged,
}

/// What a repair changed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Outcome {
    /// Something about the installation is another now.
    Changed,
    /// Nothing: what was worked on was sound.
    Nothing,
}

/// A written reading. What the meter showed stands in the spells told before it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReadingFact {
    /// Reading as it stands on the sheet.
    pub reading: Reading,
    /// With the hose on the water column: how far its scale's zero stands off, as a pressure on one
    /// leg, in pascals.
    pub scale_off_pa: Option<f64>,
}

impl From<Notice> for EventKind {
    fn from(notice: Notice) -> Self {
        match notice {
            Notice::NotConverged => Self::NotConverged,
            Notice::Control { from, to } => Self::Control { from, to },
            Notice::Fired { from, to } => Self::Fired { from, to },
            Notice::CalledOnOpenPort { port, barred } => Self::CalledOnOpenPort { port, barred },
            Notice::GasFromPort { port } => Self::GasFromPort { port },
            Notice::Ignition { port } => Self::Ignition { port },
            Notice::ValveOverPressure { pa } => Self::ValveOverPressure { pa },
            Notice::MeterOverRange => Self::MeterOverRange,
            Notice::Alarm => Self::Alarm,
            Notice::ColumnBlownOut => Self::ColumnBlownOut,
            Notice::SpringGaugeStrained => Self::SpringGaugeStrained,
        }
    }
}
