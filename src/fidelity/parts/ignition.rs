//! Timings of the shipped ignition control, measured on the control as it runs.

use super::bench::{in_range, setup};
use crate::appliance::ignition::{Control, ControlState, Inputs, Outputs, Timings};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::parts::{Level, Levels};
use crate::units::TICK_S;

/// The levels of the furnace that is timed.
const LEVELS: &[Level] = Levels::two((), ()).list();

pub(super) fn checks() -> Vec<Check> {
    let times = Times::measured();
    vec![published(&times), practice(&times), counts(&times), flame_failure(&times)]
}

/// A control with sound switches around it.
struct Rig {
    control: Control,
    inputs: Inputs,
    ticks: u32,
    /// Whether the burners light once gas has flowed for a moment.
    burns: bool,
    gas_s: f64,
    inducer_s: f64,
}

impl Rig {
    fn new(burns: bool) -> Self {
        let warm_up = setup("healthy-natural").map(|setup| setup.furnace.igniter_warm_up_s);
        let usual = Timings::default();
        let timings = Timings { igniter_s: warm_up.unwrap_or(usual.igniter_s), ..usual };
        let inputs = Inputs {
            powered: true,
            call: Some(LEVELS[0]),
            switches: Levels::two(false, false),
            limit: true,
            rollout: true,
            low_gas: true,
            flame_ua: 0.0,
        };
        Self {
            control: Control::new(timings, LEVELS),
            inputs,
            ticks: 0,
            burns,
            gas_s: 0.0,
            inducer_s: 0.0,
        }
    }

    /// One tick; the switches follow the inducer, the flame follows the gas.
    fn tick(&mut self) -> Outputs {
        let out = self.control.step(TICK_S, &self.inputs);
        let turning = out.inducer.is_some();
        self.inducer_s = if turning { self.inducer_s + TICK_S } else { 0.0 };
        self.gas_s = if out.valve.is_some() { self.gas_s + TICK_S } else { 0.0 };
        *self.inputs.switches.first_mut() = self.inducer_s > 1.0;
        let lit =
            self.burns && out.valve.is_some() && (self.gas_s > 0.5 || self.inputs.flame_ua > 0.0);
        self.inputs.flame_ua = if lit { 3.0 } else { 0.0 };
        self.ticks += 1;
        out
    }

    fn now_s(&self) -> f64 {
        f64::from(self.ticks) * TICK_S
    }

    /// Seconds until what is asked is so; `NAN` if it never is within two hours.
    fn until(&mut self, mut so: impl FnMut(ControlState, &Outputs) -> bool) -> f64 {
        let start = self.now_s();
        for _ in 0..7_200 * 50 {
            let out = self.tick();
            if so(self.control.state(), &out) {
                return self.now_s() - start;
            }
        }
        f64::NAN
    }

    /// Seconds spent in a state, from when it is next entered.
    fn stay(&mut self, wanted: ControlState) -> f64 {
        self.until(|state, _| state == wanted);
        self.until(|state, _| state != wanted)
    }
}

/// What was measured, in seconds.
struct Times {
    pre_purge: f64,
    igniter: f64,
    overlap: f64,
    trial: f64,
    blower_on: f64,
    stage_hold: f64,
    blower_off: f64,
    post_purge: f64,
    retry: f64,
    tries: f64,
    lockout: f64,
    flame_failure: f64,
}

impl Times {
    fn measured() -> Self {
        let mut run = Rig::new(true);
        let pre_purge = run.stay(ControlState::PrePurge);
        let igniter = run.until(|_, out| out.valve.is_some());
        let mut overlapped = 0.0;
        let blower_on = run.until(|_, out| {
            overlapped += if out.igniter { TICK_S } else { 0.0 };
            out.blower.is_some()
        });
        run.inputs.call = LEVELS.last().copied();
        let stage_hold = run.until(|state, _| state == ControlState::InducerUp);
        run.inputs.call = Some(LEVELS[0]);
        run.until(|state, _| state == ControlState::Burning(LEVELS[0]));
        run.tick();
        run.inputs.call = None;
        run.until(|_, out| out.valve.is_none());
        let post_purge = run.until(|_, out| out.inducer.is_none());
        let blower_off = post_purge + run.until(|_, out| out.blower.is_none());

        let mut dark = Rig::new(false);
        dark.until(|_, out| out.valve.is_some());
        let trial = dark.until(|_, out| out.valve.is_none());
        let retry = dark.stay(ControlState::Retry);
        dark.until(|state, _| state == ControlState::Lockout);
        let tries = f64::from(dark.control.tries());
        let lockout = dark.until(|state, _| state != ControlState::Lockout);

        let mut lost = Rig::new(true);
        lost.until(|state, _| state == ControlState::Burning(LEVELS[0]));
        lost.burns = false;
        let flame_failure = lost.until(|_, out| out.valve.is_none());
        Self {
            pre_purge,
            igniter,
            overlap: overlapped,
            trial,
            blower_on,
            stage_hold,
            blower_off,
            post_purge,
            retry,
            tries,
            lockout,
            flame_failure,
        }
    }
}

fn published(times: &Times) -> Check {
    let rows = vec![
        Row::new("pre-purge", 15.0, times.pre_purge),
        in_range(t!("row-from-gas-blower"), [30.0, 45.0], times.blower_on),
        Row::new(t!("row-settling-low-before-high"), 10.0, times.stage_hold),
        Row::new(t!("row-lockout-before-another-start"), 3_600.0, times.lockout),
    ];
    check("parts.ignition.published-times", rows)
}

fn practice(times: &Times) -> Check {
    let rows = vec![
        in_range(t!("row-igniter-warm-up"), [7.0, 20.0], times.igniter),
        in_range(t!("row-igniter-after-gas-opens"), [3.0, 5.0], times.overlap),
        in_range(t!("row-trial-for-ignition"), [4.0, 7.0], times.trial),
        in_range("post-purge", [5.0, 30.0], times.post_purge),
        in_range(t!("row-blower-off-after-gas"), [60.0, 180.0], times.blower_off),
        in_range(t!("row-purge-between-tries"), [15.0, 60.0], times.retry),
    ];
    check("parts.ignition.usual-times", rows)
}

fn counts(times: &Times) -> Check {
    check("parts.ignition.tries", vec![Row::new(t!("row-trials-before-lockout"), 5.0, times.tries)])
}

fn flame_failure(times: &Times) -> Check {
    let rows = vec![Row::new(t!("row-from-loss-flame-shut"), 1.0, times.flame_failure)];
    check("parts.ignition.flame-failure", rows)
}
