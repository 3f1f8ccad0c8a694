//! What the control says: a line in plain words, and flashes of the lamp as they are printed on the
//! panel door.

use super::{Control, ControlState as S};

/// A flash of the status lamp.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Flash {
    /// A quarter of a second.
    Short,
    /// A second.
    Long,
}

impl Control {
    /// The state in plain words.
    #[must_use]
    pub fn status(&self) -> &'static str {
        match self.state {
            S::Standby => "waiting, no call for heat",
            S::InducerStart => "inducer starting",
            S::PressureSwitchProving => "waiting for the pressure switch",
            S::PrePurge => "purging before light-up",
            S::IgniterWarmUp => "igniter warming",
            S::TrialForIgnition => "gas on, waiting for flame",
            S::FlameProving => "flame there, proving it",
            S::BlowerOnDelay => "burning, blower to come",
            S::LowStage => "burning on low",
            S::HighStageCall => "high stage called",
            S::HighInducer => "inducer to high",
            S::HighPressureSwitchProving => "waiting for the high pressure switch",
            S::HighStage => "burning on high",
            S::LimitOpen => "limit open, gas off",
            S::RolloutOpen => "roll-out switch open, gas off",
            S::PostPurge => "purging after burning",
            S::BlowerOffDelay => "blower clearing the heat",
            S::Retry => "no flame, trying again soon",
            S::Lockout => "locked out after its tries",
        }
    }

    /// The flashes of one round of the lamp; a pause of two seconds follows.
    #[must_use]
    pub fn flashes(&self) -> &'static [Flash] {
        use Flash::{Long, Short};
        match self.state {
            S::Standby => &[Long],
            S::PressureSwitchProving | S::HighPressureSwitchProving => &[Short, Long],
            S::Retry => &[Short, Short, Long],
            S::Lockout => &[Long, Long, Long],
            S::LimitOpen => &[Long, Short],
            S::RolloutOpen => &[Long, Long, Short],
            S::InducerStart
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::BlowerOnDelay
            | S::LowStage
            | S::HighStageCall
            | S::HighInducer
            | S::HighStage
            | S::PostPurge
            | S::BlowerOffDelay => &[Short],
        }
    }
}
