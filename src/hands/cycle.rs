//! Whether a full cycle was seen: the thermostat calls, the furnace lights, runs on low and on
//! high, the thermostat ends the call, and everything comes to rest, with no hand on the gas.

use super::action::Action;
use crate::appliance::ignition::ControlState;
use serde::Serialize;

/// How far the present cycle has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
pub(crate) struct CycleWatch {
    begun: bool,
    low: bool,
    high: bool,
}

impl CycleWatch {
    /// An action was done: some spoil the cycle.
    pub(crate) fn touched(&mut self, action: &Action) {
        let spoils = match action {
            Action::StageJumper(_)
            | Action::ValveSwitch(_)
            | Action::FurnaceSwitch(_)
            | Action::Cock { .. }
            | Action::Cap { .. }
            | Action::Turn { .. }
            | Action::Plug { .. }
            | Action::Adapter { .. }
            | Action::HoseOn { .. }
            | Action::HoseOff
            | Action::Mend(_)
            | Action::ResetRollout => true,
            Action::Go(_)
            | Action::Look(_)
            | Action::Sniff(_)
            | Action::Probe(_)
            | Action::Take(_)
            | Action::PutDown
            | Action::Window { .. }
            | Action::Door { .. }
            | Action::ThermostatMode(_)
            | Action::Setpoint(_)
            | Action::Neighbor { .. }
            | Action::MeterPower(_)
            | Action::MeterZero
            | Action::MeterUnit(_)
            | Action::MeterLowSide(_)
            | Action::LeakFluid(_)
            | Action::Wipe(_)
            | Action::Write(_)
            | Action::WriteJoint { .. }
            | Action::Measure(_)
            | Action::Unclip
            | Action::Stopwatch(_)
            | Action::WriteMeasured(_)
            | Action::Gauge(_)
            | Action::FillColumn
            | Action::Tag(_)
            | Action::Call(_)
            | Action::Tell(_)
            | Action::HandOver(_) => false,
        };
        if spoils {
            *self = Self::default();
        }
    }

    /// The control changed state; returns whether a cycle is complete.
    pub(crate) fn control(&mut self, from: ControlState, to: ControlState) -> bool {
        if from == ControlState::Standby || to == ControlState::InducerStart {
            *self = Self { begun: true, low: false, high: false };
        }
        match to {
            ControlState::LowStage => self.low = true,
            ControlState::HighStage => self.high = true,
            ControlState::Retry
            | ControlState::Lockout
            | ControlState::LimitOpen
            | ControlState::RolloutOpen => *self = Self::default(),
            ControlState::Standby => {
                let complete = self.begun && self.low && self.high;
                *self = Self::default();
                return complete;
            }
            ControlState::InducerStart
            | ControlState::PressureSwitchProving
            | ControlState::PrePurge
            | ControlState::IgniterWarmUp
            | ControlState::TrialForIgnition
            | ControlState::FlameProving
            | ControlState::BlowerOnDelay
            | ControlState::HighStageCall
            | ControlState::HighInducer
            | ControlState::HighPressureSwitchProving
            | ControlState::PostPurge
            | ControlState::BlowerOffDelay => {}
        }
        false
    }
}
