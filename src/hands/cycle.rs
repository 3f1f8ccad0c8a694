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
        if action.spoils_cycle() {
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
