//! The ignition control of a furnace with a hot-surface igniter and one or two firing levels, as a
//! state machine.
//!
//! **Equation.** What rules, in this order; the code follows it line by line:
//! 1. Without power everything is off and forgotten.
//! 2. An open roll-out switch shuts the gas and keeps the fans on until it is reset by hand.
//! 3. An open limit shuts the gas and runs the blower until it closes.
//! 4. A flame that is felt while the gas is shut locks out, with the fans on while it lasts.
//! 5. A lockout waits for its time or for the power to be cut; it outlasts a limit or roll-out.
//! 6. Without a first-stage call the gas is shut, then the flue is purged, then the blower coasts.
//! 7. The first level's pressure switch or the low-gas switch, open, shuts the gas and goes back to
//!    proving.
//! 8. A lost flame shuts the gas at once and costs a try; too many in one call lock out.
//! 9. Otherwise the sequence goes on. It does not start with the first level's pressure switch
//!    closed at rest, nor with a flame felt.
//!
//! **Assumptions.** The control reads its contacts and the flame current once a step and acts at
//! once.
//! **Valid range.** Any inputs in any order; times of [`Timings`] above zero, steps of 20 to 50 ms
//! tested.
//! **Regularisation.** None; times are counted in steps, so each state ends up to one step late.
//! **Source.** Timings are the appliance's; the defaults lie in published ranges: pre-purge 15 s,
//! igniter 17–20 s, stabilisation 10 s, blower on 30–45 s, five trials, then an hour, flame failure
//! 0.8–1 s (furnace and control manuals); trial 4–7 s, blower off 60–180 s, post-purge 5–30 s
//! (common practice). Flame currents: 1.5 µA and more normal (one furnace manual), 1.0 µA the least
//! (another). A false flame at start leads to lockout (EN 298). The patience with a stray flame and
//! the number of flame losses allowed in one call are from memory.
//! **Left out.** Fuses, wiring, the control's own failures.
//! **Checked.** `tests/core/appliance/ignition_tables.rs` (`lights_on_low_and_comes_to_rest()`,
//! `five_tries_then_lockout()`, `a_lost_flame_shuts_the_gas_within_a_second()`),
//! `tests/core/appliance/ignition_refusals.rs` and `tests/core/appliance/ignition_safety.rs` (what
//! never happens, whatever the inputs do).

use crate::appliance::level::{Level, Levels};
use serde::Serialize;

mod sequence;
mod status;

pub use status::{ChartLine, ControlStatus, Failure, FlameCurrent, Flash};

/// State of the control, by the trade's names.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
pub enum ControlState {
    /// Waiting for a call for heat, everything off.
    Standby,
    /// The inducer starts; the pressure switch must be open at rest.
    InducerStart,
    /// The first level's pressure switch must close.
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
    /// Burning at a level, everything settled.
    Burning(Level),
    /// The next level is called.
    NextLevelCall,
    /// The inducer goes to its higher speed.
    InducerUp,
    /// The next level's pressure switch must close.
    NextSwitchProving,
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
    /// Gas shut after too many tries or a stray flame, until time or a cut of power ends it.
    Lockout,
}

impl ControlState {
    /// Every state, [`Self::Burning`] once for each level.
    pub const ALL: [Self; 20] = [
        Self::Standby,
        Self::InducerStart,
        Self::PressureSwitchProving,
        Self::PrePurge,
        Self::IgniterWarmUp,
        Self::TrialForIgnition,
        Self::FlameProving,
        Self::BlowerOnDelay,
        Self::Burning(Level::ALL[0]),
        Self::Burning(Level::ALL[1]),
        Self::Burning(Level::ALL[2]),
        Self::NextLevelCall,
        Self::InducerUp,
        Self::NextSwitchProving,
        Self::LimitOpen,
        Self::RolloutOpen,
        Self::PostPurge,
        Self::BlowerOffDelay,
        Self::Retry,
        Self::Lockout,
    ];
}

/// What the control feels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Inputs {
    /// Power, through the service switch and the door switch.
    pub powered: bool,
    /// The level that is called: W1 alone, or with W2. W2 alone calls nothing.
    pub call: Option<Level>,
    /// Each level's pressure switch closed.
    pub switches: Levels<bool>,
    /// The limit's contact closed; open when the supply air is too hot.
    pub limit: bool,
    /// All roll-out switches closed; one opens when flames leave their tubes.
    pub rollout: bool,
    /// Low-gas switch closed, or none fitted.
    pub low_gas: bool,
    /// Flame current, in microamperes.
    pub flame_ua: f64,
}

/// What the control drives.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Outputs {
    /// Level whose speed the inducer runs at.
    pub inducer: Option<Level>,
    /// Whether the igniter is energized.
    pub igniter: bool,
    /// Level that the gas valve's coils are energised for: the main coil, above the first level the
    /// second one with it.
    pub valve: Option<Level>,
    /// Level whose speed the blower runs at.
    pub blower: Option<Level>,
}

/// Times and limits of one appliance's control, in seconds where not said.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Timings {
    /// Inducer start-up before the switch is looked at.
    pub inducer_start_s: f64,
    /// Longest wait for the first level's pressure switch; then a try is lost.
    pub switch_wait_s: f64,
    /// Purge of air before the igniter comes on.
    pub pre_purge_s: f64,
    /// Warm-up of the igniter before the gas opens.
    pub igniter_s: f64,
    /// Longest time from gas to a sensed flame in a try.
    pub trial_s: f64,
    /// Time the igniter stays on after the gas opens.
    pub igniter_overlap_s: f64,
    /// Time a flame must hold to count as proved.
    pub proving_s: f64,
    /// From gas to blower.
    pub blower_on_s: f64,
    /// Settling at a level before a change of it.
    pub stage_hold_s: f64,
    /// Inducer's run-up to the next level.
    pub inducer_up_s: f64,
    /// Longest wait for the next level's pressure switch; then the level below goes on, and the
    /// next is tried later.
    pub next_switch_wait_s: f64,
    /// Minutes at the first level after which the next comes by itself, if it does.
    pub auto_next_min: Option<f64>,
    /// Purge of the flue after the gas shuts.
    pub post_purge_s: f64,
    /// Time that the blower goes on after the purge of the flue.
    pub blower_off_s: f64,
    /// Purge from a failed try to the next.
    pub retry_s: f64,
    /// Failed tries in one call after which it locks out.
    pub tries: u32,
    /// Length of a lockout that nobody ends by cutting the power.
    pub lockout_s: f64,
    /// Flame current that counts as a flame, in microamperes.
    pub flame_min_ua: f64,
    /// Flame current below which the status says that it is weak, in microamperes.
    pub flame_weak_ua: f64,
    /// Longest gas flow without a sensed flame in a run.
    pub flame_response_s: f64,
    /// Flame losses of a proved flame in one call before lockout.
    pub flame_losses: u32,
    /// How long a flame may be felt while the gas is shut.
    pub stray_flame_s: f64,
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
            inducer_up_s: 3.0,
            next_switch_wait_s: 60.0,
            auto_next_min: None,
            post_purge_s: 15.0,
            blower_off_s: 90.0,
            retry_s: 30.0,
            tries: 5,
            lockout_s: 3600.0,
            flame_min_ua: 1.0,
            flame_weak_ua: 1.5,
            flame_response_s: 0.8,
            flame_losses: 5,
            stray_flame_s: 4.0,
        }
    }
}

/// Why the control does not go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
enum Cause {
    Nothing,
    SwitchClosedAtRest,
    SwitchOpen,
    LowGas,
    NoFlame,
    FlameLost,
    StrayFlame,
}

/// The ignition control with its state and its counts of time, tries and lost flames.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Control {
    timings: Timings,
    /// The furnace's levels, the weakest first.
    levels: &'static [Level],
    state: ControlState,
    /// Time in this state.
    in_state_s: f64,
    /// Time since the gas opened.
    gas_s: f64,
    /// Time without a sensed flame while gas flows in a run.
    no_flame_s: f64,
    /// Time with a sensed flame while the gas is shut.
    stray_s: f64,
    /// Time at the first level.
    first_s: f64,
    /// Time until a lockout ends.
    lockout_left_s: f64,
    /// Set after the next level's pressure switch did not close: when to try again.
    next_again_s: f64,
    tries: u32,
    losses: u32,
    blower_ran: bool,
    weak_flame: bool,
    cause: Cause,
}

impl Control {
    /// The control of a furnace with these levels, at rest.
    #[must_use]
    pub fn new(timings: Timings, levels: &'static [Level]) -> Self {
        Self {
            timings,
            levels,
            state: ControlState::Standby,
            in_state_s: 0.0,
            gas_s: 0.0,
            no_flame_s: 0.0,
            stray_s: 0.0,
            first_s: 0.0,
            lockout_left_s: 0.0,
            next_again_s: 0.0,
            tries: 0,
            losses: 0,
            blower_ran: false,
            weak_flame: false,
            cause: Cause::Nothing,
        }
    }

    /// The state that it is in now.
    #[must_use]
    pub fn state(&self) -> ControlState {
        self.state
    }

    /// Its times and limits.
    #[must_use]
    pub fn timings(&self) -> &Timings {
        &self.timings
    }

    /// Time in the present state, in seconds.
    #[must_use]
    pub fn in_state_s(&self) -> f64 {
        self.in_state_s
    }

    /// Time since the gas opened in this try, in seconds.
    #[must_use]
    pub fn gas_s(&self) -> f64 {
        self.gas_s
    }

    /// Tries for ignition used in this call.
    #[must_use]
    pub fn tries(&self) -> u32 {
        self.tries
    }
}
