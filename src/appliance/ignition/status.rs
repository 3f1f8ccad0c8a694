//! What the control says, and the flashes of its lamp. The lines of the chart with their flashes are
//! what is printed inside the panel door.
//!
//! **Source.** Flashes, their lengths and the words are our own; no maker's code is behind them.
//! **Checked.** `tests/core/appliance/ignition_refusals.rs`.

use super::{Cause, Control, ControlState as S};
use crate::appliance::level::Level;
use serde::Serialize;

/// A flash of the status lamp.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Flash {
    /// A quarter of a second.
    Short,
    /// A second of light.
    Long,
}

/// A line of the chart on the panel door.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ChartLine {
    /// Powered, waiting for a call.
    Rest,
    /// Starting, burning or coming to rest.
    Working,
    /// Burning, but the flame current is small.
    WeakFlame,
    /// The first level's pressure switch is awaited or did not close.
    SwitchOpen,
    /// That switch is closed with the inducer still.
    SwitchClosed,
    /// The next level's pressure switch is awaited.
    NextSwitchOpen,
    /// The low-gas switch is open.
    LowGas,
    /// A try has failed and the next is to come.
    Retry,
    /// Locked out after too many failed tries or lost flames.
    LockedOut,
    /// A flame is felt with the gas shut.
    StrayFlame,
    /// The limit is open.
    LimitOpen,
    /// A roll-out switch is open.
    RolloutOpen,
}

impl ChartLine {
    /// The chart, in its printed order.
    pub const ALL: [Self; 12] = [
        Self::Rest,
        Self::Working,
        Self::WeakFlame,
        Self::SwitchOpen,
        Self::SwitchClosed,
        Self::NextSwitchOpen,
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
            Self::NextSwitchOpen => &[Short, Long, Long],
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
            Self::Rest => t!("lamp-rest"),
            Self::Working => t!("lamp-working"),
            Self::WeakFlame => t!("lamp-weak-flame"),
            Self::SwitchOpen => t!("lamp-switch-open"),
            Self::SwitchClosed => t!("lamp-switch-closed"),
            Self::NextSwitchOpen => t!("lamp-high-switch-open"),
            Self::LowGas => t!("lamp-low-gas"),
            Self::Retry => t!("lamp-retry"),
            Self::LockedOut => t!("lamp-locked-out"),
            Self::StrayFlame => t!("lamp-stray-flame"),
            Self::LimitOpen => t!("lamp-limit-open"),
            Self::RolloutOpen => t!("lamp-rollout-open"),
        }
    }
}

/// Current through the flame, as the control judges it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
pub enum FlameCurrent {
    /// Enough: the control says nothing of it.
    Sound,
    /// So small that the control says so.
    Weak,
}

/// Reason why a try to light failed, or a flame did not last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
pub enum Failure {
    /// Gas was on, and no flame was felt.
    NoFlame,
    /// A flame was felt and was lost again.
    FlameLost,
    /// The low pressure switch did not close.
    PressureSwitch,
    /// The low-gas switch stayed open.
    GasPressure,
}

/// What the control says of itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
pub enum ControlStatus {
    /// Without power the lamp is dark.
    NoPower,
    /// At rest, and no call comes in.
    NoCall,
    /// At rest: the pressure switch is closed with the inducer still, so nothing starts.
    SwitchClosedAtRest,
    /// The inducer comes up to speed.
    InducerStarting,
    /// The first level's pressure switch is awaited.
    AwaitsPressureSwitch,
    /// The low-gas switch is awaited.
    AwaitsGasPressure,
    /// Air goes through before the igniter comes on.
    PrePurge,
    /// The igniter warms up, gas still shut.
    IgniterWarming,
    /// Gas is on and no flame is felt yet.
    TrialForIgnition,
    /// A flame is felt and has to last.
    FlameProving,
    /// Burning, the blower still to come.
    BlowerToCome(FlameCurrent),
    /// Burning at a level.
    Burning(Level, FlameCurrent),
    /// Burning, the next level called.
    NextCalled,
    /// The inducer goes to its higher speed.
    InducerUp,
    /// The next level's pressure switch is awaited.
    AwaitsNextSwitch,
    /// The limit is open and the gas off.
    LimitOpen,
    /// A roll-out switch is open and the gas off.
    RolloutOpen,
    /// Purging after the gas was shut.
    PostPurge,
    /// The blower takes the last heat away.
    BlowerOffDelay,
    /// A try has failed, the next is to come.
    Retry(Failure),
    /// No further try for an hour, or until the power is cut.
    LockedOut(Failure),
    /// Locked out because a flame is felt with the gas shut.
    StrayFlame,
}

impl ControlStatus {
    /// Everything that the control can say.
    pub const ALL: [Self; 34] = [
        Self::NoPower,
        Self::NoCall,
        Self::SwitchClosedAtRest,
        Self::InducerStarting,
        Self::AwaitsPressureSwitch,
        Self::AwaitsGasPressure,
        Self::PrePurge,
        Self::IgniterWarming,
        Self::TrialForIgnition,
        Self::FlameProving,
        Self::BlowerToCome(FlameCurrent::Sound),
        Self::BlowerToCome(FlameCurrent::Weak),
        Self::Burning(Level::ALL[0], FlameCurrent::Sound),
        Self::Burning(Level::ALL[0], FlameCurrent::Weak),
        Self::Burning(Level::ALL[1], FlameCurrent::Sound),
        Self::Burning(Level::ALL[1], FlameCurrent::Weak),
        Self::NextCalled,
        Self::InducerUp,
        Self::AwaitsNextSwitch,
        Self::Burning(Level::ALL[2], FlameCurrent::Sound),
        Self::Burning(Level::ALL[2], FlameCurrent::Weak),
        Self::LimitOpen,
        Self::RolloutOpen,
        Self::PostPurge,
        Self::BlowerOffDelay,
        Self::Retry(Failure::NoFlame),
        Self::Retry(Failure::FlameLost),
        Self::Retry(Failure::PressureSwitch),
        Self::Retry(Failure::GasPressure),
        Self::LockedOut(Failure::NoFlame),
        Self::LockedOut(Failure::FlameLost),
        Self::LockedOut(Failure::PressureSwitch),
        Self::LockedOut(Failure::GasPressure),
        Self::StrayFlame,
    ];

    /// The status in plain words, with the reason where the control does not go on.
    #[must_use]
    pub fn words(self) -> &'static str {
        use FlameCurrent::{Sound, Weak};
        match self {
            Self::NoPower => t!("status-no-power"),
            Self::NoCall => t!("status-no-call"),
            Self::SwitchClosedAtRest => t!("status-switch-closed-at-rest"),
            Self::InducerStarting => t!("status-inducer-starting"),
            Self::AwaitsPressureSwitch => t!("status-awaits-pressure-switch"),
            Self::AwaitsGasPressure => t!("status-awaits-gas-pressure"),
            Self::PrePurge => t!("status-pre-purge"),
            Self::IgniterWarming => t!("status-igniter-warming"),
            Self::TrialForIgnition => t!("status-trial-for-ignition"),
            Self::FlameProving => t!("status-flame-proving"),
            Self::BlowerToCome(Sound) => t!("status-blower-to-come"),
            Self::BlowerToCome(Weak) => t!("status-blower-to-come-weak"),
            Self::Burning(level, Sound) => burning_words(level),
            Self::Burning(level, Weak) => weakly_burning_words(level),
            Self::NextCalled => t!("status-high-called"),
            Self::InducerUp => t!("status-inducer-to-high"),
            Self::AwaitsNextSwitch => t!("status-awaits-high-pressure-switch"),
            Self::LimitOpen => t!("status-limit-open"),
            Self::RolloutOpen => t!("status-rollout-open"),
            Self::PostPurge => t!("status-post-purge"),
            Self::BlowerOffDelay => t!("status-blower-off-delay"),
            Self::Retry(failure) => failure.retry_words(),
            Self::LockedOut(failure) => failure.lockout_words(),
            Self::StrayFlame => t!("status-stray-flame"),
        }
    }

    /// Every status whose words begin with these.
    #[must_use]
    pub fn beginning_with(words: &str) -> Vec<Self> {
        Self::ALL.into_iter().filter(|status| status.words().starts_with(words)).collect()
    }

    /// Why it failed, while it waits for another try or is locked out for want of a flame.
    #[must_use]
    pub fn failure(self) -> Option<Failure> {
        if let Self::Retry(failure) | Self::LockedOut(failure) = self {
            Some(failure)
        } else {
            None
        }
    }

    /// The level that it burns at, with everything settled.
    #[must_use]
    pub fn burns_at(self) -> Option<Level> {
        if let Self::Burning(level, _) = self { Some(level) } else { None }
    }

    /// Whether the control has stopped on the way: it waits to try again, is locked out, or a limit or
    /// roll-out switch is open.
    #[must_use]
    pub fn is_stopped(self) -> bool {
        match self {
            Self::Retry(_)
            | Self::LockedOut(_)
            | Self::StrayFlame
            | Self::LimitOpen
            | Self::RolloutOpen => true,
            Self::NoPower
            | Self::NoCall
            | Self::SwitchClosedAtRest
            | Self::InducerStarting
            | Self::AwaitsPressureSwitch
            | Self::AwaitsGasPressure
            | Self::PrePurge
            | Self::IgniterWarming
            | Self::TrialForIgnition
            | Self::FlameProving
            | Self::BlowerToCome(_)
            | Self::Burning(_, _)
            | Self::NextCalled
            | Self::InducerUp
            | Self::AwaitsNextSwitch
            | Self::PostPurge
            | Self::BlowerOffDelay => false,
        }
    }

    /// The line of the chart for it; none while the lamp is dark.
    #[must_use]
    pub fn chart_line(self) -> Option<ChartLine> {
        Some(match self {
            Self::NoPower => return None,
            Self::NoCall => ChartLine::Rest,
            Self::SwitchClosedAtRest => ChartLine::SwitchClosed,
            Self::AwaitsPressureSwitch => ChartLine::SwitchOpen,
            Self::AwaitsGasPressure => ChartLine::LowGas,
            Self::AwaitsNextSwitch => ChartLine::NextSwitchOpen,
            Self::BlowerToCome(FlameCurrent::Weak) | Self::Burning(_, FlameCurrent::Weak) => {
                ChartLine::WeakFlame
            }
            Self::BlowerToCome(FlameCurrent::Sound)
            | Self::Burning(_, FlameCurrent::Sound)
            | Self::InducerStarting
            | Self::PrePurge
            | Self::IgniterWarming
            | Self::TrialForIgnition
            | Self::FlameProving
            | Self::NextCalled
            | Self::InducerUp
            | Self::PostPurge
            | Self::BlowerOffDelay => ChartLine::Working,
            Self::LimitOpen => ChartLine::LimitOpen,
            Self::RolloutOpen => ChartLine::RolloutOpen,
            Self::Retry(_) => ChartLine::Retry,
            Self::LockedOut(_) => ChartLine::LockedOut,
            Self::StrayFlame => ChartLine::StrayFlame,
        })
    }
}

fn burning_words(level: Level) -> &'static str {
    level.choose(t!("status-burning"), t!("status-burning-low"), t!("status-burning-high"))
}

fn weakly_burning_words(level: Level) -> &'static str {
    level.choose(
        t!("status-burning-weak"),
        t!("status-burning-low-weak"),
        t!("status-burning-high-weak"),
    )
}

impl Failure {
    fn retry_words(self) -> &'static str {
        match self {
            Self::NoFlame => t!("status-retry-no-flame"),
            Self::FlameLost => t!("status-retry-flame-lost"),
            Self::PressureSwitch => t!("status-retry-pressure-switch"),
            Self::GasPressure => t!("status-retry-gas-pressure"),
        }
    }

    fn lockout_words(self) -> &'static str {
        match self {
            Self::NoFlame => t!("status-locked-out-no-flame"),
            Self::FlameLost => t!("status-locked-out-flame-lost"),
            Self::PressureSwitch => t!("status-locked-out-pressure-switch"),
            Self::GasPressure => t!("status-locked-out-gas-pressure"),
        }
    }
}

impl Control {
    /// The line of the chart that its lamp shows while it has power.
    #[must_use]
    pub fn chart_line(&self) -> ChartLine {
        // Two states on the way to the next level do not speak of the flame; the lamp does.
        let on_the_way = matches!(self.state, S::NextLevelCall | S::InducerUp);
        if on_the_way && self.weak_flame {
            return ChartLine::WeakFlame;
        }
        self.status().chart_line().unwrap_or(ChartLine::Rest)
    }

    /// What it says while it has power.
    #[must_use]
    pub fn status(&self) -> ControlStatus {
        let current = if self.weak_flame { FlameCurrent::Weak } else { FlameCurrent::Sound };
        match self.state {
            S::Standby => match self.cause {
                Cause::SwitchClosedAtRest => ControlStatus::SwitchClosedAtRest,
                Cause::Nothing
                | Cause::SwitchOpen
                | Cause::LowGas
                | Cause::NoFlame
                | Cause::FlameLost
                | Cause::StrayFlame => ControlStatus::NoCall,
            },
            S::InducerStart => ControlStatus::InducerStarting,
            S::PressureSwitchProving => match self.cause {
                Cause::LowGas => ControlStatus::AwaitsGasPressure,
                Cause::Nothing
                | Cause::SwitchOpen
                | Cause::SwitchClosedAtRest
                | Cause::NoFlame
                | Cause::FlameLost
                | Cause::StrayFlame => ControlStatus::AwaitsPressureSwitch,
            },
            S::PrePurge => ControlStatus::PrePurge,
            S::IgniterWarmUp => ControlStatus::IgniterWarming,
            S::TrialForIgnition => ControlStatus::TrialForIgnition,
            S::FlameProving => ControlStatus::FlameProving,
            S::BlowerOnDelay => ControlStatus::BlowerToCome(current),
            S::Burning(level) => ControlStatus::Burning(level, current),
            S::NextLevelCall => ControlStatus::NextCalled,
            S::InducerUp => ControlStatus::InducerUp,
            S::NextSwitchProving => ControlStatus::AwaitsNextSwitch,
            S::LimitOpen => ControlStatus::LimitOpen,
            S::RolloutOpen => ControlStatus::RolloutOpen,
            S::PostPurge => ControlStatus::PostPurge,
            S::BlowerOffDelay => ControlStatus::BlowerOffDelay,
            S::Retry => ControlStatus::Retry(self.failure()),
            S::Lockout if self.cause == Cause::StrayFlame => ControlStatus::StrayFlame,
            S::Lockout => ControlStatus::LockedOut(self.failure()),
        }
    }

    fn failure(&self) -> Failure {
        match self.cause {
            Cause::FlameLost => Failure::FlameLost,
            Cause::SwitchOpen => Failure::PressureSwitch,
            Cause::LowGas => Failure::GasPressure,
            Cause::Nothing | Cause::SwitchClosedAtRest | Cause::NoFlame | Cause::StrayFlame => {
                Failure::NoFlame
            }
        }
    }
}
