//! Timings of the shipped ignition control, measured on the control as it runs.

use super::{CHAPTER, RANGE, in_range, setup};
use crate::appliance::ignition::{Control, ControlState, Inputs, Outputs, Speed, Timings};
use crate::fidelity::{Check, Row, Tolerance, Truth};
use crate::units::TICK_S;

pub(super) fn checks() -> Vec<Check> {
    let times = Times::measured();
    vec![published(&times), practice(&times), counts(&times), flame_failure(&times)]
}

/// A control with sound switches around it.
struct Rig {
    control: Control,
    inputs: Inputs,
    ticks: u32,
    /// Whether burners light.
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
            first: true,
            second: false,
            low_switch: false,
            high_switch: false,
            limit: true,
            rollout: true,
            low_gas: true,
            flame_ua: 0.0,
        };
        Self { control: Control::new(timings), inputs, ticks: 0, burns, gas_s: 0.0, inducer_s: 0.0 }
    }

    /// One tick; the switches follow the inducer, the flame follows the gas.
    fn tick(&mut self) -> Outputs {
        let out = self.control.step(TICK_S, &self.inputs);
        let turning = out.inducer != Speed::Off;
        self.inducer_s = if turning { self.inducer_s + TICK_S } else { 0.0 };
        self.gas_s = if out.main { self.gas_s + TICK_S } else { 0.0 };
        self.inputs.low_switch = self.inducer_s > 1.0;
        let lit = self.burns && out.main && (self.gas_s > 0.5 || self.inputs.flame_ua > 0.0);
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
        let igniter = run.until(|_, out| out.main);
        let mut overlapped = 0.0;
        let blower_on = run.until(|_, out| {
            overlapped += if out.igniter { TICK_S } else { 0.0 };
            out.blower != Speed::Off
        });
        run.inputs.second = true;
        let stage_hold = run.until(|state, _| state == ControlState::HighInducer);
        run.inputs.second = false;
        run.until(|state, _| state == ControlState::LowStage);
        run.tick();
        run.inputs.first = false;
        run.until(|_, out| !out.main);
        let post_purge = run.until(|_, out| out.inducer == Speed::Off);
        let blower_off = post_purge + run.until(|_, out| out.blower == Speed::Off);

        let mut dark = Rig::new(false);
        dark.until(|_, out| out.main);
        let trial = dark.until(|_, out| !out.main);
        let retry = dark.stay(ControlState::Retry);
        dark.until(|state, _| state == ControlState::Lockout);
        let tries = f64::from(dark.control.tries());
        let lockout = dark.until(|state, _| state != ControlState::Lockout);

        let mut lost = Rig::new(true);
        lost.until(|state, _| state == ControlState::LowStage);
        lost.burns = false;
        let flame_failure = lost.until(|_, out| !out.main);
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
        in_range("from gas to blower", [30.0, 45.0], times.blower_on),
        Row::new("settling on low before the high stage", 10.0, times.stage_hold),
        Row::new("lockout before another start", 3_600.0, times.lockout),
    ];
    Check {
        id: "parts.ignition.published-times".into(),
        chapter: CHAPTER,
        claim: "The shipped control purges, starts its blower and leaves a lockout when manuals say so.".into(),
        truth: Truth::Published,
        source: "Product manuals of furnaces (makers withheld): pre-purge 15 s, stabilisation 10 s, lockout 60 min; trade article on furnace sequence: blower on after 30 to 45 s".into(),
        condition: "control run in ticks of 20 ms with sound switches".into(),
        tolerance: Tolerance::Absolute(0.1),
        reason: "A few ticks pass between states.".into(),
        unit: "s",
        rows,
        known_miss: None,
    }
}

fn practice(times: &Times) -> Check {
    let rows = vec![
        in_range("igniter warm-up", [7.0, 20.0], times.igniter),
        in_range("igniter on after the gas opens", [3.0, 5.0], times.overlap),
        in_range("trial for ignition", [4.0, 7.0], times.trial),
        in_range("post-purge", [5.0, 30.0], times.post_purge),
        in_range("blower off after the gas", [60.0, 180.0], times.blower_off),
        in_range("purge between tries", [15.0, 60.0], times.retry),
    ];
    Check {
        id: "parts.ignition.usual-times".into(),
        chapter: CHAPTER,
        claim: "Warm-up, trial, purges and blower delay of the shipped control are usual ones."
            .into(),
        truth: Truth::Practice,
        source: "Common practice (from memory), with a furnace manual's 20 s warm-up".into(),
        condition: "control run in ticks of 20 ms with sound switches".into(),
        tolerance: Tolerance::Absolute(0.0),
        reason: RANGE.into(),
        unit: "s",
        rows,
        known_miss: None,
    }
}

fn counts(times: &Times) -> Check {
    Check {
        id: "parts.ignition.tries".into(),
        chapter: CHAPTER,
        claim: "Without a flame the control tries five times, then locks out.".into(),
        truth: Truth::Published,
        source: "Product manual of a two-stage furnace (maker withheld): first trial and four repeats; control sheets: 3 to 5".into(),
        condition: "gas opens, nothing lights".into(),
        tolerance: Tolerance::Absolute(0.0),
        reason: "A count.".into(),
        unit: "trials",
        rows: vec![Row::new("trials before lockout", 5.0, times.tries)],
        known_miss: None,
    }
}

fn flame_failure(times: &Times) -> Check {
    let rows = vec![Row::new("from loss of flame to shut gas", 1.0, times.flame_failure)];
    Check {
        id: "parts.ignition.flame-failure".into(),
        chapter: CHAPTER,
        claim: "A lost flame shuts the gas within a second.".into(),
        truth: Truth::Published,
        source: "Control sheet of a unit listed to ANSI Z21.20 (maker withheld): 1.0 s at most; EN 298: 1 s (from memory)".into(),
        condition: "flame current falls to nothing on low".into(),
        tolerance: Tolerance::AtMost,
        reason: "A limit.".into(),
        unit: "s",
        rows,
        known_miss: None,
    }
}
