//! The ignition control of a two-stage furnace with a hot-surface igniter, as a state machine.
//!
//! What rules, in this order; the code follows it line by line:
//! 1. Without power everything is off and forgotten.
//! 2. An open roll-out switch shuts the gas and keeps the fans on until it is reset by hand.
//! 3. An open limit shuts the gas and runs the blower until it closes.
//! 4. A lockout waits for its time or for the power to be cut.
//! 5. Without a first-stage call the gas is shut, then the flue is purged, then the blower coasts.
//! 6. An open low pressure switch or low-gas switch shuts the gas and goes back to proving.
//! 7. A lost flame shuts the gas at once and costs a try.
//! 8. Otherwise the sequence goes on.
//!
//! Timings are the appliance's; the defaults lie in published ranges (pre-purge 15 s, igniter 17–20
//! s, trial 4–7 s, stabilisation 10 s, blower on 30–45 s and off 90–180 s, five trials, then an hour:
//! furnace service manuals).

mod sequence;
mod status;

/// State of the control, by the trade's names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum ControlState {
    /// No call.
    Standby,
    /// The inducer starts; the pressure switch must be open at rest.
    InducerStart,
    /// The low pressure switch must close.
    PressureSwitchProving,
    /// Air goes through before anything is lit.
    PrePurge,
    /// The igniter warms up.
    IgniterWarmUp,
    /// Gas on, waiting for a flame.
    TrialForIgnition,
    /// A flame is there and must stay.
    FlameProving,
    /// Burning, the blower waits for a warm exchanger.
    BlowerOnDelay,
    /// Burning on low.
    LowStage,
    /// The second stage is called.
    HighStageCall,
    /// The inducer goes to its higher speed.
    HighInducer,
    /// The high pressure switch must close.
    HighPressureSwitchProving,
    /// Burning on high.
    HighStage,
    /// The limit is open.
    LimitOpen,
    /// A roll-out switch is open.
    RolloutOpen,
    /// The flue is purged after burning.
    PostPurge,
    /// The blower takes the rest of the heat.
    BlowerOffDelay,
    /// Purging before another try.
    Retry,
    /// Tries used up.
    Lockout,
}

/// Speed of a fan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Speed {
    /// Still.
    Off,
    /// Low.
    Low,
    /// High.
    High,
}

/// What the control feels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Inputs {
    /// Power, through the service switch and the door switch.
    pub powered: bool,
    /// First-stage call (W1).
    pub first: bool,
    /// Second-stage call (W2); counts only with the first.
    pub second: bool,
    /// Low pressure switch closed.
    pub low_switch: bool,
    /// High pressure switch closed.
    pub high_switch: bool,
    /// Limit closed.
    pub limit: bool,
    /// Roll-out switches closed.
    pub rollout: bool,
    /// Low-gas switch closed, or none fitted.
    pub low_gas: bool,
    /// Flame current, in microamperes.
    pub flame_ua: f64,
}

/// What the control drives.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Outputs {
    /// Inducer speed.
    pub inducer: Speed,
    /// Igniter on.
    pub igniter: bool,
    /// Main gas valve energised.
    pub main: bool,
    /// High coil energised.
    pub high: bool,
    /// Blower speed.
    pub blower: Speed,
}

/// Times and limits of one appliance's control, in seconds where not said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timings {
    /// Inducer start-up before the switch is looked at.
    pub inducer_start_s: f64,
    /// Longest wait for the low pressure switch; then a try is lost.
    pub switch_wait_s: f64,
    /// Pre-purge.
    pub pre_purge_s: f64,
    /// Igniter warm-up.
    pub igniter_s: f64,
    /// Trial for ignition.
    pub trial_s: f64,
    /// Time the igniter stays on after the gas opens.
    pub igniter_overlap_s: f64,
    /// Time a flame must hold to count as proved.
    pub proving_s: f64,
    /// From gas to blower.
    pub blower_on_s: f64,
    /// Settling on low before a change of stage.
    pub stage_hold_s: f64,
    /// Inducer's run-up to high.
    pub high_inducer_s: f64,
    /// Longest wait for the high pressure switch; then low goes on and high is tried later.
    pub high_switch_wait_s: f64,
    /// Minutes on low after which high comes by itself, if it does.
    pub auto_high_min: Option<f64>,
    /// Post-purge.
    pub post_purge_s: f64,
    /// Blower after burning.
    pub blower_off_s: f64,
    /// Purge between tries.
    pub retry_s: f64,
    /// Tries before lockout.
    pub tries: u32,
    /// Lockout.
    pub lockout_s: f64,
    /// Flame current that counts as a flame, in microamperes.
    pub flame_min_ua: f64,
    /// Longest gas flow without a sensed flame in a run.
    pub flame_response_s: f64,
}

impl Default for Timings {
    fn default() -> Self {
        Self {
            inducer_start_s: 2.0,
            switch_wait_s: 60.0,
            pre_purge_s: 15.0,
            igniter_s: 17.0,
            trial_s: 5.0,
            igniter_overlap_s: 4.0,
            proving_s: 3.0,
            blower_on_s: 30.0,
            stage_hold_s: 10.0,
            high_inducer_s: 3.0,
            high_switch_wait_s: 60.0,
            auto_high_min: None,
            post_purge_s: 15.0,
            blower_off_s: 90.0,
            retry_s: 30.0,
            tries: 5,
            lockout_s: 3600.0,
            flame_min_ua: 1.0,
            flame_response_s: 0.8,
        }
    }
}

/// The control.
#[derive(Debug, Clone, PartialEq)]
pub struct Control {
    timings: Timings,
    state: ControlState,
    /// Time in this state.
    in_state_s: f64,
    /// Time since the gas opened.
    gas_s: f64,
    /// Time without a sensed flame while gas flows in a run.
    no_flame_s: f64,
    /// Time on low.
    low_s: f64,
    tries: u32,
    blower_ran: bool,
    /// Set after the high pressure switch did not close: when to try again.
    high_again_s: f64,
}

impl Control {
    /// A control at rest.
    #[must_use]
    pub fn new(timings: Timings) -> Self {
        Self {
            timings,
            state: ControlState::Standby,
            in_state_s: 0.0,
            gas_s: 0.0,
            no_flame_s: 0.0,
            low_s: 0.0,
            tries: 0,
            blower_ran: false,
            high_again_s: 0.0,
        }
    }

    /// The state.
    #[must_use]
    pub fn state(&self) -> ControlState {
        self.state
    }

    /// Tries for ignition used in this call.
    #[must_use]
    pub fn tries(&self) -> u32 {
        self.tries
    }

    /// Every number that changes.
    pub fn digest(&self, sink: &mut impl FnMut(u64)) {
        sink(self.state as u64 | u64::from(self.tries) << 8 | u64::from(self.blower_ran) << 40);
        for value in [self.in_state_s, self.gas_s, self.no_flame_s, self.low_s, self.high_again_s] {
            sink(value.to_bits());
        }
    }
}
