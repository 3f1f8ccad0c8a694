//! What the control says: a line in plain words, and the flashes of its lamp. The signs with their
//! flashes are what is printed inside the panel door.
//!
//! **Source.** Flashes, their lengths and the words are our own; no maker's code is behind them.
//! **Checked.** `tests/core/appliance/ignition_refusals.rs`.

use super::{Cause, Control, ControlState as S};

/// A flash of the status lamp.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Flash {
    /// A quarter of a second.
    Short,
    /// A second.
    Long,
}

/// A line of the chart on the panel door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sign {
    /// At rest.
    Rest,
    /// Starting, burning or coming to rest.
    Working,
    /// Burning, but the flame current is small.
    WeakFlame,
    /// The low pressure switch is awaited or did not close.
    SwitchOpen,
    /// The low pressure switch is closed with the inducer still.
    SwitchClosed,
    /// The high pressure switch is awaited.
    HighSwitchOpen,
    /// The low-gas switch is open.
    LowGas,
    /// Between two tries.
    Retry,
    /// Locked out.
    LockedOut,
    /// A flame is felt with the gas shut.
    StrayFlame,
    /// The limit is open.
    LimitOpen,
    /// A roll-out switch is open.
    RolloutOpen,
}

impl Sign {
    /// The chart, in its printed order.
    pub const ALL: [Self; 12] = [
        Self::Rest,
        Self::Working,
        Self::WeakFlame,
        Self::SwitchOpen,
        Self::SwitchClosed,
        Self::HighSwitchOpen,
        Self::LowGas,
        Self::Retry,
        Self::LockedOut,
        Self::StrayFlame,
        Self::LimitOpen,
        Self::RolloutOpen,
    ];

    /// The flashes of one round of the lamp; a pause of two seconds follows.
    #[must_use]
    pub fn flashes(self) -> &'static [Flash] {
        use Flash::{Long, Short};
        match self {
            Self::Rest => &[Long],
            Self::Working => &[Short],
            Self::WeakFlame => &[Short, Short],
            Self::SwitchOpen => &[Short, Long],
            Self::SwitchClosed => &[Short, Long, Short],
            Self::HighSwitchOpen => &[Short, Long, Long],
            Self::LowGas => &[Short, Short, Short, Long],
            Self::Retry => &[Short, Short, Long],
            Self::LockedOut => &[Long, Long, Long],
            Self::StrayFlame => &[Long, Long, Long, Short],
            Self::LimitOpen => &[Long, Short],
            Self::RolloutOpen => &[Long, Long, Short],
        }
    }

    /// The words beside the flashes on the chart.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Rest => "at rest",
            Self::Working => "working",
            Self::WeakFlame => "burning, flame current weak",
            Self::SwitchOpen => "low pressure switch open",
            Self::SwitchClosed => "pressure switch closed with the inducer still",
            Self::HighSwitchOpen => "high pressure switch open",
            Self::LowGas => "gas pressure too low",
            Self::Retry => "another try follows",
            Self::LockedOut => "locked out",
            Self::StrayFlame => "flame felt with the gas shut",
            Self::LimitOpen => "limit open",
            Self::RolloutOpen => "roll-out switch open",
        }
    }
}

impl Control {
    /// The line of the chart that its lamp shows.
    #[must_use]
    pub fn sign(&self) -> Sign {
        match self.state {
            S::Standby if self.cause == Cause::SwitchClosedAtRest => Sign::SwitchClosed,
            S::Standby => Sign::Rest,
            S::PressureSwitchProving if self.cause == Cause::LowGas => Sign::LowGas,
            S::PressureSwitchProving => Sign::SwitchOpen,
            S::HighPressureSwitchProving => Sign::HighSwitchOpen,
            S::Retry => Sign::Retry,
            S::Lockout if self.cause == Cause::StrayFlame => Sign::StrayFlame,
            S::Lockout => Sign::LockedOut,
            S::LimitOpen => Sign::LimitOpen,
            S::RolloutOpen => Sign::RolloutOpen,
            S::BlowerOnDelay | S::LowStage | S::HighStageCall | S::HighInducer | S::HighStage
                if self.weak_flame =>
            {
                Sign::WeakFlame
            }
            S::BlowerOnDelay
            | S::LowStage
            | S::HighStageCall
            | S::HighInducer
            | S::HighStage
            | S::InducerStart
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::PostPurge
            | S::BlowerOffDelay => Sign::Working,
        }
    }

    /// The state in plain words, with the reason where the control does not go on.
    #[must_use]
    pub fn status(&self) -> &'static str {
        match self.state {
            S::Standby => match self.cause {
                Cause::SwitchClosedAtRest => "not starting, pressure switch closed at rest",
                _ => "waiting, no call for heat",
            },
            S::InducerStart => "inducer starting",
            S::PressureSwitchProving => match self.cause {
                Cause::LowGas => "waiting for gas pressure, low-gas switch open",
                _ => "waiting for the pressure switch",
            },
            S::PrePurge => "purging before light-up",
            S::IgniterWarmUp => "igniter warming",
            S::TrialForIgnition => "gas on, waiting for flame",
            S::FlameProving => "flame there, proving it",
            S::BlowerOnDelay if self.weak_flame => "burning, blower to come, flame current weak",
            S::BlowerOnDelay => "burning, blower to come",
            S::LowStage if self.weak_flame => "burning on low, flame current weak",
            S::LowStage => "burning on low",
            S::HighStageCall => "high stage called",
            S::HighInducer => "inducer to high",
            S::HighPressureSwitchProving => "waiting for the high pressure switch",
            S::HighStage if self.weak_flame => "burning on high, flame current weak",
            S::HighStage => "burning on high",
            S::LimitOpen => "limit open, gas off",
            S::RolloutOpen => "roll-out switch open, gas off",
            S::PostPurge => "purging after burning",
            S::BlowerOffDelay => "blower clearing the heat",
            S::Retry => self.retry_words(),
            S::Lockout => self.lockout_words(),
        }
    }

    fn retry_words(&self) -> &'static str {
        match self.cause {
            Cause::FlameLost => "flame lost, trying again soon",
            Cause::SwitchOpen => "pressure switch did not close, trying again soon",
            Cause::LowGas => "gas pressure too low, trying again soon",
            Cause::Nothing | Cause::SwitchClosedAtRest | Cause::NoFlame | Cause::StrayFlame => {
                "no flame, trying again soon"
            }
        }
    }

    fn lockout_words(&self) -> &'static str {
        match self.cause {
            Cause::StrayFlame => "locked out, flame felt with the gas shut",
            Cause::FlameLost => "locked out, flame lost too often",
            Cause::SwitchOpen => "locked out, pressure switch did not close",
            Cause::LowGas => "locked out, gas pressure too low",
            Cause::Nothing | Cause::SwitchClosedAtRest | Cause::NoFlame => {
                "locked out after its tries"
            }
        }
    }
}
