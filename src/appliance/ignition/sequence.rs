//! One step of the control.

use super::{Control, ControlState, Inputs, Outputs, Speed};
use ControlState as S;

/// Wait before the high stage is tried again after its switch did not close, in seconds.
const HIGH_AGAIN_S: f64 = 300.0;

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
        let flame = inputs.flame_ua >= self.timings.flame_min_ua;
        if self.state.gas() {
            self.gas_s += dt_s;
            self.no_flame_s = if flame { 0.0 } else { self.no_flame_s + dt_s };
        }
        if self.state.burning() && self.state != S::HighStage {
            self.low_s += dt_s;
        }
        self.high_again_s = (self.high_again_s - dt_s).max(0.0);
    }

    /// The state that follows, by the order of the module page.
    fn decide(&mut self, i: &Inputs) -> S {
        if !i.powered {
            *self = Self::new(self.timings);
            return S::Standby;
        }
        if !i.rollout {
            return S::RolloutOpen;
        }
        if !i.limit && self.state != S::RolloutOpen {
            return S::LimitOpen;
        }
        match self.state {
            S::RolloutOpen => return S::PostPurge,
            S::LimitOpen => return if self.in_state_s < 1.0 { S::LimitOpen } else { S::PostPurge },
            S::Lockout if self.in_state_s < self.timings.lockout_s => return S::Lockout,
            S::Lockout => self.tries = 0,
            _ => {}
        }
        if !i.first {
            return self.without_call();
        }
        if self.state.gas() || matches!(self.state, S::PrePurge | S::IgniterWarmUp) {
            if !i.low_switch || !i.low_gas {
                return S::PressureSwitchProving;
            }
            if self.flame_lost() {
                return self.another_try();
            }
        }
        self.go_on(i)
    }

    fn without_call(&mut self) -> S {
        let t = &self.timings;
        match self.state {
            S::Standby => S::Standby,
            S::PostPurge if self.in_state_s < t.post_purge_s => S::PostPurge,
            S::PostPurge if self.blower_ran => S::BlowerOffDelay,
            S::BlowerOffDelay if self.in_state_s < t.blower_off_s => S::BlowerOffDelay,
            S::PostPurge | S::BlowerOffDelay | S::Lockout => {
                self.tries = 0;
                self.blower_ran = false;
                S::Standby
            }
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

    fn another_try(&mut self) -> S {
        self.tries += 1;
        if self.tries >= self.timings.tries { S::Lockout } else { S::Retry }
    }

    fn go_on(&mut self, i: &Inputs) -> S {
        let t = self.timings;
        let past = |limit_s: f64| self.in_state_s >= limit_s;
        let flame = i.flame_ua >= t.flame_min_ua;
        match self.state {
            // A pressure switch that is closed with the inducer still, or a flame without gas,
            // must not start anything.
            S::Standby if i.low_switch || flame => S::Standby,
            S::Standby | S::Lockout => S::InducerStart,
            S::InducerStart if past(t.inducer_start_s) => S::PressureSwitchProving,
            S::PressureSwitchProving if i.low_switch && i.low_gas => S::PrePurge,
            S::PressureSwitchProving if past(t.switch_wait_s) => self.another_try(),
            S::PrePurge if past(t.pre_purge_s) => S::IgniterWarmUp,
            S::IgniterWarmUp if past(t.igniter_s) => S::TrialForIgnition,
            S::TrialForIgnition if flame => S::FlameProving,
            S::FlameProving if past(t.proving_s) => {
                self.tries = 0;
                if self.blower_ran { S::LowStage } else { S::BlowerOnDelay }
            }
            S::BlowerOnDelay if self.gas_s >= t.blower_on_s => {
                self.blower_ran = true;
                S::LowStage
            }
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
            S::BlowerOffDelay => S::InducerStart,
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
        if !next.gas() {
            self.no_flame_s = 0.0;
        }
        if next == S::TrialForIgnition {
            self.gas_s = 0.0;
            self.no_flame_s = 0.0;
        }
        if next == S::Standby {
            self.gas_s = 0.0;
            self.low_s = 0.0;
        }
        if next == S::LowStage && was != S::HighStage {
            self.low_s = 0.0;
        }
    }

    fn drive(&self, i: &Inputs) -> Outputs {
        let t = &self.timings;
        let state = self.state;
        let fast = matches!(
            state,
            S::HighInducer | S::HighPressureSwitchProving | S::HighStage | S::InducerStart
        );
        let inducer = match state {
            S::Standby | S::Lockout | S::BlowerOffDelay => Speed::Off,
            _ if fast => Speed::High,
            _ => Speed::Low,
        };
        let igniter = state == S::IgniterWarmUp
            || (matches!(state, S::TrialForIgnition | S::FlameProving)
                && self.gas_s < t.igniter_overlap_s);
        let high = state == S::HighStage && i.high_switch;
        let blower = match state {
            S::LimitOpen | S::RolloutOpen | S::HighStage => Speed::High,
            S::LowStage
            | S::HighStageCall
            | S::HighInducer
            | S::HighPressureSwitchProving
            | S::BlowerOffDelay => Speed::Low,
            S::PostPurge
            | S::Retry
            | S::PressureSwitchProving
            | S::PrePurge
            | S::IgniterWarmUp
            | S::TrialForIgnition
            | S::FlameProving
            | S::InducerStart
                if self.blower_ran =>
            {
                Speed::Low
            }
            _ => Speed::Off,
        };
        let safe = i.powered && i.limit && i.rollout && i.low_switch && i.low_gas && i.first;
        Outputs { inducer, igniter, main: state.gas() && safe, high: high && safe, blower }
    }
}
