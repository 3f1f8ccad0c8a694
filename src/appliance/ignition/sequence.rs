//! One step of the control. The order of [`Control::decide`] is that of the module page.
//!
//! **Source.** The next level is tried again 300 s after its switch did not close, an inducer has
//! stopped after 5 s, an open limit holds the gas for at least 1 s: from memory, our own control.
//! **Checked.** `high_needs_its_pressure_switch()` in `tests/core/appliance/ignition_tables.rs`,
//! `a_switch_closed_at_rest_starts_nothing()` in `tests/core/appliance/ignition_refusals.rs`.

use super::{Cause, Control, ControlState, Inputs, Outputs};
use crate::appliance::level::Level;
use ControlState as S;

/// Wait before the next level is tried again after its switch did not close, in seconds.
const NEXT_AGAIN_S: f64 = 300.0;
/// Shortest stay with the limit open, in seconds: a contact that chatters must not pulse the gas.
const LIMIT_LEAST_S: f64 = 1.0;
/// The inducer has certainly stopped after this time at rest, in seconds.
const COASTED_S: f64 = 5.0;

impl ControlState {
    /// Whether the main gas valve is energised in this state.
    #[must_use]
    pub fn gas(self) -> bool {
        self.burning() || matches!(self, S::TrialForIgnition | S::FlameProving)
    }

    /// Whether a proved flame burns in this state.
    #[must_use]
    pub fn burning(self) -> bool {
        matches!(
            self,
            S::BlowerOnDelay
                | S::Burning(_)
                | S::NextLevelCall
                | S::InducerUp
                | S::NextSwitchProving
        )
    }
}

impl Control {
    /// Goes on by `dt_s` and says what is driven.
    pub fn step(&mut self, dt_s: f64, inputs: &Inputs) -> Outputs {
        self.count(dt_s, inputs);
        let next = self.decide(inputs);
        if next != self.state {
            self.enter(next);
        }
        self.drive(inputs)
    }

    fn count(&mut self, dt_s: f64, inputs: &Inputs) {
        self.in_state_s += dt_s;
        let flame = self.felt(inputs);
        if self.state.gas() {
            self.gas_s += dt_s;
            self.no_flame_s = if flame { 0.0 } else { self.no_flame_s + dt_s };
        }
        self.stray_s = if flame && !self.state.gas() { self.stray_s + dt_s } else { 0.0 };
        if self.state.burning() && !self.burns_above_first() {
            self.first_s += dt_s;
        }
        self.weak_flame =
            self.state.burning() && flame && inputs.flame_ua < self.timings.flame_weak_ua;
        self.next_again_s = (self.next_again_s - dt_s).max(0.0);
        self.lockout_left_s = (self.lockout_left_s - dt_s).max(0.0);
    }

    fn felt(&self, inputs: &Inputs) -> bool {
        inputs.flame_ua >= self.timings.flame_min_ua
    }

    /// The state that follows.
    fn decide(&mut self, i: &Inputs) -> S {
        if matches!(self.state, S::Standby) {
            self.cause = Cause::Nothing;
        }
        if !i.powered {
            *self = Self::new(self.timings, self.levels);
            return S::Standby;
        }
        if !i.rollout {
            return S::RolloutOpen;
        }
        if !i.limit || (matches!(self.state, S::LimitOpen) && self.in_state_s < LIMIT_LEAST_S) {
            return S::LimitOpen;
        }
        if self.stray_s >= self.timings.stray_flame_s {
            return self.lock_out(Cause::StrayFlame);
        }
        if self.lockout_left_s > 0.0 {
            return S::Lockout;
        }
        if matches!(self.state, S::RolloutOpen | S::LimitOpen) {
            return S::PostPurge;
        }
        if matches!(self.state, S::Lockout) {
            return S::Standby;
        }
        if i.call.is_none() {
            return self.without_call();
        }
        if self.state.gas() || matches!(self.state, S::PrePurge | S::IgniterWarmUp) {
            if !i.switches.first() || !i.low_gas {
                self.cause = open_contact(i);
                return S::PressureSwitchProving;
            }
            if self.flame_lost() {
                return self.after_flame_loss();
            }
        }
        self.go_on(i)
    }

    fn without_call(&self) -> S {
        let t = &self.timings;
        match self.state {
            S::Standby => S::Standby,
            S::PostPurge if self.in_state_s < t.post_purge_s => S::PostPurge,
            S::PostPurge if self.blower_ran => S::BlowerOffDelay,
            S::BlowerOffDelay if self.in_state_s < t.blower_off_s => S::BlowerOffDelay,
            S::PostPurge | S::BlowerOffDelay => S::Standby,
            S::InducerStart
            | S::PressureSwitchProving
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::BlowerOnDelay
            | S::Burning(_)
            | S::NextLevelCall
            | S::InducerUp
            | S::NextSwitchProving
            | S::LimitOpen
            | S::RolloutOpen
            | S::Retry
            | S::Lockout => {
                if self.gas_s > 0.0 {
                    S::PostPurge
                } else {
                    S::Standby
                }
            }
        }
    }

    /// A flame that does not come in the trial, does not stay while it is proved, or goes out.
    fn flame_lost(&self) -> bool {
        let t = &self.timings;
        if self.state == S::TrialForIgnition {
            return self.in_state_s >= t.trial_s && self.no_flame_s > 0.0;
        }
        self.state.gas() && self.no_flame_s >= t.flame_response_s
    }

    fn after_flame_loss(&mut self) -> S {
        if !self.state.burning() {
            return self.another_try(Cause::NoFlame);
        }
        self.losses += 1;
        if self.losses >= self.timings.flame_losses {
            return self.lock_out(Cause::FlameLost);
        }
        self.another_try(Cause::FlameLost)
    }

    fn another_try(&mut self, cause: Cause) -> S {
        self.tries += 1;
        if self.tries >= self.timings.tries {
            return self.lock_out(cause);
        }
        self.cause = cause;
        S::Retry
    }

    fn lock_out(&mut self, cause: Cause) -> S {
        self.cause = cause;
        self.lockout_left_s = self.timings.lockout_s;
        S::Lockout
    }

    fn go_on(&mut self, i: &Inputs) -> S {
        let t = self.timings;
        let past = |limit_s: f64| self.in_state_s >= limit_s;
        let flame = self.felt(i);
        let first = S::Burning(self.levels[0]);
        let (first_switch, next_switch) = (*i.switches.first(), *i.switches.top());
        match self.state {
            S::Standby if first_switch => {
                if past(COASTED_S) {
                    self.cause = Cause::SwitchClosedAtRest;
                }
                S::Standby
            }
            S::BlowerOffDelay if first_switch && past(t.blower_off_s) => S::Standby,
            S::BlowerOffDelay if first_switch => S::BlowerOffDelay,
            S::Standby | S::BlowerOffDelay if flame => self.state,
            S::Standby | S::BlowerOffDelay => S::InducerStart,
            S::InducerStart if past(t.inducer_start_s) => S::PressureSwitchProving,
            S::PressureSwitchProving if first_switch && i.low_gas => S::PrePurge,
            S::PressureSwitchProving => {
                self.cause = open_contact(i);
                if past(t.switch_wait_s) { self.another_try(self.cause) } else { self.state }
            }
            S::PrePurge if past(t.pre_purge_s) => S::IgniterWarmUp,
            S::IgniterWarmUp if past(t.igniter_s) => S::TrialForIgnition,
            S::TrialForIgnition if flame => S::FlameProving,
            S::FlameProving if past(t.proving_s) => {
                self.tries = 0;
                if self.blower_ran { first } else { S::BlowerOnDelay }
            }
            S::BlowerOnDelay if self.gas_s >= t.blower_on_s => first,
            S::Burning(level)
                if level.next().is_some() && self.wants_next(i) && past(t.stage_hold_s) =>
            {
                S::NextLevelCall
            }
            S::NextLevelCall => S::InducerUp,
            S::InducerUp if past(t.inducer_up_s) => S::NextSwitchProving,
            S::NextSwitchProving if next_switch => S::Burning(i.switches.top_level()),
            S::NextSwitchProving if past(t.next_switch_wait_s) => {
                self.next_again_s = NEXT_AGAIN_S;
                first
            }
            S::Burning(level) if !level.is_first() && !next_switch => S::NextSwitchProving,
            S::Burning(_) | S::InducerUp | S::NextSwitchProving
                if !self.wants_next(i) && past(t.stage_hold_s) =>
            {
                first
            }
            S::Retry if past(t.retry_s) => S::PressureSwitchProving,
            S::PostPurge if past(t.post_purge_s) => S::PressureSwitchProving,
            stay @ (S::InducerStart
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::BlowerOnDelay
            | S::Burning(_)
            | S::InducerUp
            | S::NextSwitchProving
            | S::LimitOpen
            | S::RolloutOpen
            | S::PostPurge
            | S::Retry
            | S::Lockout) => stay,
        }
    }

    /// Whether the level above the first is called, or comes by itself.
    fn wants_next(&self, i: &Inputs) -> bool {
        let by_itself = self.timings.auto_next_min.is_some_and(|min| self.first_s >= 60.0 * min);
        (i.call.is_some_and(|level| !level.is_first()) || by_itself) && self.next_again_s <= 0.0
    }

    fn enter(&mut self, next: S) {
        let was = self.state;
        self.state = next;
        self.in_state_s = 0.0;
        if matches!(next, S::TrialForIgnition | S::Standby) {
            self.gas_s = 0.0;
        }
        if next == S::Standby {
            self.first_s = 0.0;
            self.tries = 0;
            self.losses = 0;
            self.blower_ran = false;
        }
        if let S::Burning(level) = next
            && level.is_first()
            && !is_above_first(was)
        {
            self.first_s = 0.0;
        }
        // Wherever the blower runs for the first time, there is heat to take away afterwards.
        self.blower_ran |= matches!(next, S::Burning(_) | S::LimitOpen | S::RolloutOpen);
        if !next.gas() || next == S::TrialForIgnition {
            self.no_flame_s = 0.0;
        }
        // A lockout remembers its reason through a limit or roll-out that comes between.
        let tells_why = matches!(next, S::Retry | S::PressureSwitchProving);
        if !tells_why && self.lockout_left_s <= 0.0 {
            self.cause = Cause::Nothing;
        }
    }

    fn drive(&self, i: &Inputs) -> Outputs {
        let igniter = self.state == S::IgniterWarmUp
            || (matches!(self.state, S::TrialForIgnition | S::FlameProving)
                && self.gas_s < self.timings.igniter_overlap_s);
        let safe = i.powered
            && i.limit
            && i.rollout
            && *i.switches.first()
            && i.low_gas
            && i.call.is_some();
        let valve = self.settled().filter(|&level| i.switches[level]).unwrap_or(self.levels[0]);
        Outputs {
            inducer: self.drive_inducer(),
            igniter: igniter && safe,
            valve: (self.state.gas() && safe).then_some(valve),
            blower: self.drive_blower(),
        }
    }

    fn drive_inducer(&self) -> Option<Level> {
        let (first, top) = self.ends();
        match self.state {
            S::Standby | S::BlowerOffDelay => None,
            S::Lockout if self.stray() || self.in_state_s < self.timings.post_purge_s => {
                Some(first)
            }
            S::Lockout => None,
            S::Burning(level) => Some(level),
            S::InducerUp | S::NextSwitchProving | S::InducerStart => Some(top),
            S::PressureSwitchProving
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::BlowerOnDelay
            | S::NextLevelCall
            | S::LimitOpen
            | S::RolloutOpen
            | S::PostPurge
            | S::Retry => Some(first),
        }
    }

    fn drive_blower(&self) -> Option<Level> {
        let (first, top) = self.ends();
        let if_ran = self.blower_ran.then_some(first);
        match self.state {
            S::LimitOpen | S::RolloutOpen => Some(top),
            S::Burning(level) => Some(level),
            S::NextLevelCall | S::InducerUp | S::NextSwitchProving | S::BlowerOffDelay => {
                Some(first)
            }
            S::Lockout if self.stray() => Some(first),
            S::Lockout if self.in_state_s < self.timings.blower_off_s => if_ran,
            S::Standby | S::BlowerOnDelay | S::Lockout => None,
            S::PostPurge
            | S::Retry
            | S::PressureSwitchProving
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::InducerStart => if_ran,
        }
    }

    /// The level at which the burners light, and that of the full rate.
    fn ends(&self) -> (Level, Level) {
        (self.levels[0], self.levels[self.levels.len() - 1])
    }

    /// The level that it burns at, with everything settled.
    fn settled(&self) -> Option<Level> {
        if let S::Burning(level) = self.state { Some(level) } else { None }
    }

    /// Whether it burns above the first level.
    fn burns_above_first(&self) -> bool {
        is_above_first(self.state)
    }

    /// A flame is felt that should not be there.
    fn stray(&self) -> bool {
        self.cause == Cause::StrayFlame && self.stray_s > 0.0
    }
}

/// Whether a control in this state burns above the first level.
fn is_above_first(state: S) -> bool {
    matches!(state, S::Burning(level) if !level.is_first())
}

/// Which of the two contacts that are proved before the purge is open.
fn open_contact(i: &Inputs) -> Cause {
    if *i.switches.first() { Cause::LowGas } else { Cause::SwitchOpen }
}
