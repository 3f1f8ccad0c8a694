//! What a hand does to a spell of reading and to a cycle that is being watched, action by action.

use super::action::Action;
use crate::parts::HandValve;

impl Action {
    /// Whether this can move the number on the meter, so that a spell of reading ends with it.
    #[must_use]
    pub fn ends_spell(&self) -> bool {
        match self {
            Self::Turn { .. }
            | Self::Mend(_)
            | Self::MeterZero
            | Self::MeterLowSide(_)
            | Self::Gauge(_)
            | Self::HoseOn { .. }
            | Self::HoseOff
            | Self::Plug { .. }
            | Self::Cap { .. }
            | Self::HandValve { hand_valve: HandValve::Furnace | HandValve::Supply, .. } => true,
            // The valve of another appliance and its flame change the load, and with it the state
            // that a reading is taken in.
            Self::HandValve { hand_valve: HandValve::WaterHeater | HandValve::Range, .. }
            | Self::OtherAppliance { .. }
            | Self::Go(_)
            | Self::Look(_)
            | Self::Sniff(_)
            | Self::Probe(_)
            | Self::Take(_)
            | Self::PutDown
            | Self::Window { .. }
            | Self::Door { .. }
            | Self::FurnaceSwitch(_)
            | Self::ThermostatMode(_)
            | Self::Setpoint(_)
            | Self::StageJumper(_)
            | Self::ValveSwitch(_)
            | Self::Adapter { .. }
            | Self::MeterPower(_)
            | Self::MeterUnit(_)
            | Self::LeakFluid(_)
            | Self::Wipe(_)
            | Self::ResetRollout
            | Self::Measure(_)
            | Self::Unclip
            | Self::Stopwatch(_)
            | Self::WriteMeasured(_)
            | Self::FillColumn
            | Self::Write(_)
            | Self::WriteJoint { .. }
            | Self::WritePiping(_)
            | Self::WriteFinding(_)
            | Self::StrikeFinding(_)
            | Self::Tag(_)
            | Self::Call(_)
            | Self::Tell(_)
            | Self::HandOver(_) => false,
        }
    }

    /// Whether this is a hand on the gas or on the furnace's own switches, so that a cycle from the
    /// thermostat has to begin anew.
    #[must_use]
    pub fn spoils_cycle(&self) -> bool {
        match self {
            Self::StageJumper(_)
            | Self::ValveSwitch(_)
            | Self::FurnaceSwitch(_)
            | Self::HandValve { .. }
            | Self::Cap { .. }
            | Self::Turn { .. }
            | Self::Plug { .. }
            | Self::Adapter { .. }
            | Self::HoseOn { .. }
            | Self::HoseOff
            | Self::Mend(_)
            | Self::ResetRollout => true,
            Self::Go(_)
            | Self::Look(_)
            | Self::Sniff(_)
            | Self::Probe(_)
            | Self::Take(_)
            | Self::PutDown
            | Self::Window { .. }
            | Self::Door { .. }
            | Self::ThermostatMode(_)
            | Self::Setpoint(_)
            | Self::OtherAppliance { .. }
            | Self::MeterPower(_)
            | Self::MeterZero
            | Self::MeterUnit(_)
            | Self::MeterLowSide(_)
            | Self::LeakFluid(_)
            | Self::Wipe(_)
            | Self::Write(_)
            | Self::WriteJoint { .. }
            | Self::WritePiping(_)
            | Self::WriteFinding(_)
            | Self::StrikeFinding(_)
            | Self::Measure(_)
            | Self::Unclip
            | Self::Stopwatch(_)
            | Self::WriteMeasured(_)
            | Self::Gauge(_)
            | Self::FillColumn
            | Self::Tag(_)
            | Self::Call(_)
            | Self::Tell(_)
            | Self::HandOver(_) => false,
        }
    }
}
