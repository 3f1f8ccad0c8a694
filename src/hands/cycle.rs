//! Whether a full cycle was seen: the thermostat calls, the furnace lights, runs at each of
//! its levels, the thermostat ends the call, and everything comes to rest, with no hand on the gas.

use super::action::Action;
use crate::appliance::ignition::ControlState;
use crate::parts::Level;
use enum_map::EnumMap;
use serde::Serialize;

/// How far the present cycle has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize)]
pub(crate) struct CycleWatch {
    begun: bool,
    reached: EnumMap<Level, bool>,
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
            *self = Self { begun: true, ..Self::default() };
        }
        match to {
            ControlState::Burning(level) => self.reached[level] = true,
            ControlState::Retry
            | ControlState::Lockout
            | ControlState::LimitOpen
            | ControlState::RolloutOpen => *self = Self::default(),
            ControlState::Standby => {
                let complete = self.begun && self.reached_all();
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
            | ControlState::NextLevelCall
            | ControlState::InducerUp
            | ControlState::NextSwitchProving
            | ControlState::PostPurge
            | ControlState::BlowerOffDelay => {}
        }
        false
    }

    /// Whether it has burned at every level of its furnace.
    fn reached_all(&self) -> bool {
        let any = Level::ALL.into_iter().find(|&level| self.reached[level]);
        any.is_some_and(|level| level.of().iter().all(|&level| self.reached[level]))
    }
}
