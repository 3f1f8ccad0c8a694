//! One step of the control. The order of [`Control::decide`] is that of the module page.
//!
//! **Source.** High is tried again 300 s after its switch did not close, an inducer has stopped
//! after 5 s, an open limit holds the gas for at least 1 s: from memory, our own control.
//! **Checked.** `high_needs_its_pressure_switch()` in `tests/core/appliance/ignition_tables.rs`,
//! `a_switch_closed_at_rest_starts_nothing()` in `tests/core/appliance/ignition_refusals.rs`.

use super::{Cause, Control, ControlState, Inputs, Outputs, Speed};
use ControlState as S;

/// Wait before the high stage is tried again after its switch did not close, in seconds.
const HIGH_AGAIN_S: f64 = 300.0;
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
                | S::LowStage
                | S::HighStageCall
                | S::HighInducer
                | S::HighPressureSwitchProving
                | S::HighStage
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
        if self.state.burning() && self.state != S::HighStage {
            self.low_s += dt_s;
        }
        self.weak_flame =
            self.state.burning() && flame && inputs.flame_ua < self.timings.flame_weak_ua;
        self.high_again_s = (self.high_again_s - dt_s).max(0.0);
        self.lockout_left_s = (self.lockout_left_s - dt_s).max(0.0);
    }

    fn felt(&self, inputs: &Inputs) -> bool {
        inputs.flame_ua >= self.timings.flame_min_ua
    }

    /// The state that follows.
    fn decide(&mut self, i: &Inputs) -> S {
        if self.state == S::Standby {
            self.cause = Cause::Nothing;
        }
        if !i.powered {
            *self = Self::new(self.timings);
            return S::Standby;
        }
        if !i.rollout {
            return S::RolloutOpen;
        }
        if !i.limit || (self.state == S::LimitOpen && self.in_state_s < LIMIT_LEAST_S) {
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
        if self.state == S::Lockout {
            return S::Standby;
        }
        if !i.first {
            return self.without_call();
        }
        if self.state.gas() || matches!(self.state, S::PrePurge | S::IgniterWarmUp) {
            if !i.low_switch || !i.low_gas {
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
            _ if self.gas_s > 0.0 => S::PostPurge,
            _ => S::Standby,
        }
    }

    /// A flame that does not come in the trial, does not stay while it is proved, or goes out.
    fn flame_lost(&self) -> bool {
        let t = &self.timings;
        match self.state {
            S::TrialForIgnition => self.in_state_s >= t.trial_s && self.no_flame_s > 0.0,
            _ if self.state.gas() => self.no_flame_s >= t.flame_response_s,
            _ => false,
        }
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
        match self.state {
            S::Standby if i.low_switch => {
                if past(COASTED_S) {
                    self.cause = Cause::SwitchClosedAtRest;
                }
                S::Standby
            }
            S::BlowerOffDelay if i.low_switch && past(t.blower_off_s) => S::Standby,
            S::BlowerOffDelay if i.low_switch => S::BlowerOffDelay,
            S::Standby | S::BlowerOffDelay if flame => self.state,
            S::Standby | S::BlowerOffDelay => S::InducerStart,
            S::InducerStart if past(t.inducer_start_s) => S::PressureSwitchProving,
            S::PressureSwitchProving if i.low_switch && i.low_gas => S::PrePurge,
            S::PressureSwitchProving => {
                self.cause = open_contact(i);
                if past(t.switch_wait_s) { self.another_try(self.cause) } else { self.state }
            }
            S::PrePurge if past(t.pre_purge_s) => S::IgniterWarmUp,
            S::IgniterWarmUp if past(t.igniter_s) => S::TrialForIgnition,
            S::TrialForIgnition if flame => S::FlameProving,
            S::FlameProving if past(t.proving_s) => {
                self.tries = 0;
                if self.blower_ran { S::LowStage } else { S::BlowerOnDelay }
            }
            S::BlowerOnDelay if self.gas_s >= t.blower_on_s => S::LowStage,
            S::LowStage if self.wants_high(i) && past(t.stage_hold_s) => S::HighStageCall,
            S::HighStageCall => S::HighInducer,
            S::HighInducer if past(t.high_inducer_s) => S::HighPressureSwitchProving,
            S::HighPressureSwitchProving if i.high_switch => S::HighStage,
            S::HighPressureSwitchProving if past(t.high_switch_wait_s) => {
                self.high_again_s = HIGH_AGAIN_S;
                S::LowStage
            }
            S::HighStage if !i.high_switch => S::HighPressureSwitchProving,
            S::HighStage | S::HighInducer | S::HighPressureSwitchProving
                if !self.wants_high(i) && past(t.stage_hold_s) =>
            {
                S::LowStage
            }
            S::Retry if past(t.retry_s) => S::PressureSwitchProving,
            S::PostPurge if past(t.post_purge_s) => S::PressureSwitchProving,
            stay => stay,
        }
    }

    fn wants_high(&self, i: &Inputs) -> bool {
        let by_itself = self.timings.auto_high_min.is_some_and(|min| self.low_s >= 60.0 * min);
        (i.second || by_itself) && self.high_again_s <= 0.0
    }

    fn enter(&mut self, next: S) {
        let was = self.state;
        self.state = next;
        self.in_state_s = 0.0;
        match next {
            S::TrialForIgnition => self.gas_s = 0.0,
            S::Standby => {
                self.gas_s = 0.0;
                self.low_s = 0.0;
                self.tries = 0;
                self.losses = 0;
                self.blower_ran = false;
            }
            S::LowStage if was != S::HighStage => self.low_s = 0.0,
            _ => {}
        }
        // Wherever the blower runs for the first time, there is heat to take away afterwards.
        self.blower_ran |= matches!(next, S::LowStage | S::LimitOpen | S::RolloutOpen);
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
        let safe = i.powered && i.limit && i.rollout && i.low_switch && i.low_gas && i.first;
        Outputs {
            inducer: self.drive_inducer(),
            igniter: igniter && safe,
            main: self.state.gas() && safe,
            high: self.state == S::HighStage && i.high_switch && safe,
            blower: self.drive_blower(),
        }
    }

    fn drive_inducer(&self) -> Speed {
        match self.state {
            S::Standby | S::BlowerOffDelay => Speed::Off,
            S::Lockout if self.stray() || self.in_state_s < self.timings.post_purge_s => Speed::Low,
            S::Lockout => Speed::Off,
            S::HighInducer | S::HighPressureSwitchProving | S::HighStage | S::InducerStart => {
                Speed::High
            }
            S::PressureSwitchProving
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::BlowerOnDelay
            | S::LowStage
            | S::HighStageCall
            | S::LimitOpen
            | S::RolloutOpen
            | S::PostPurge
            | S::Retry => Speed::Low,
        }
    }

    fn drive_blower(&self) -> Speed {
        let if_ran = if self.blower_ran { Speed::Low } else { Speed::Off };
        match self.state {
            S::LimitOpen | S::RolloutOpen | S::HighStage => Speed::High,
            S::LowStage
            | S::HighStageCall
            | S::HighInducer
            | S::HighPressureSwitchProving
            | S::BlowerOffDelay => Speed::Low,
            S::Lockout if self.stray() => Speed::Low,
            S::Lockout if self.in_state_s < self.timings.blower_off_s => if_ran,
            S::Standby | S::BlowerOnDelay | S::Lockout => Speed::Off,
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

    /// A flame is felt that should not be there.
    fn stray(&self) -> bool {
        self.cause == Cause::StrayFlame && self.stray_s > 0.0
    }
}

/// Which of the two contacts that are proved before the purge is open.
fn open_contact(i: &Inputs) -> Cause {
    if i.low_switch { Cause::LowGas } else { Cause::SwitchOpen }
}
