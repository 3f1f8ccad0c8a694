//! The ignition control in every small world: whatever its inputs do, these things never happen.

use quarterturn::appliance::ignition::{Control, ControlState, Inputs, Outputs, Timings};
use quarterturn::rng;

const DT_S: f64 = 0.05;

fn inputs(bits: u32) -> Inputs {
    let bit = |n: u32| bits >> n & 1 == 1;
    Inputs {
        powered: bit(0),
        first: bit(1),
        second: bit(2),
        low_switch: bit(3),
        high_switch: bit(4),
        limit: bit(5),
        rollout: bit(6),
        low_gas: bit(7),
        flame_ua: if bit(8) { 3.0 } else { 0.0 },
    }
}

/// Seconds of gas without a flame so far.
#[derive(Default)]
struct Watch {
    unlit_s: f64,
}

impl Watch {
    fn check(&mut self, i: &Inputs, out: &Outputs, state: ControlState, t: &Timings) {
        let context = format!("{i:?} {out:?} {state:?}");
        let safe = i.powered && i.first && i.low_switch && i.limit && i.rollout && i.low_gas;
        assert!(!out.main || safe, "gas with a safety open: {context}");
        assert!(!out.high || (out.main && i.high_switch), "high coil alone: {context}");
        assert!(!out.igniter || i.powered, "igniter without power: {context}");
        let quiet = matches!(state, ControlState::Lockout | ControlState::Standby);
        assert!(!quiet || (!out.main && !out.igniter), "gas or igniter at rest: {context}");
        let unlit = out.main && i.flame_ua < t.flame_min_ua;
        self.unlit_s = if unlit { self.unlit_s + DT_S } else { 0.0 };
        let most = t.trial_s + t.flame_response_s + 2.0 * DT_S;
        assert!(self.unlit_s <= most, "{:.2} s of gas without flame: {context}", self.unlit_s);
    }
}

/// From every state that a sound run passes through, every combination of inputs for a minute.
#[test]
fn every_input_from_every_state_of_a_run() {
    let t = Timings { lockout_s: 60.0, ..Timings::default() };
    let good = 0b0_1110_0011;
    let mut control = Control::new(t);
    let mut seen = Vec::new();
    let mut starts = Vec::new();
    for tick in 0..4000 {
        let second_s = f64::from(tick) * DT_S;
        let mut bits = good;
        if second_s > 3.0 {
            bits |= 1 << 3;
        }
        if second_s > 36.0 {
            bits |= 1 << 8;
        }
        if second_s > 80.0 {
            bits |= 1 << 2;
        }
        if second_s > 95.0 {
            bits |= 1 << 4;
        }
        control.step(DT_S, &inputs(bits));
        if !seen.contains(&control.state()) {
            seen.push(control.state());
            starts.push(control.clone());
        }
    }
    assert!(seen.contains(&ControlState::HighStage), "{seen:?}");
    for start in &starts {
        for bits in 0..512 {
            let mut control = start.clone();
            let mut watch = Watch::default();
            let i = inputs(bits);
            for _ in 0..1200 {
                let out = control.step(DT_S, &i);
                watch.check(&i, &out, control.state(), &t);
            }
        }
    }
}

/// A million steps of inputs that change at random.
#[test]
fn random_inputs_never_break_the_rules() {
    let t = Timings { lockout_s: 30.0, retry_s: 5.0, ..Timings::default() };
    let mut control = Control::new(t);
    let mut watch = Watch::default();
    let mut random = rng::stream(11, "ignition");
    let mut bits = 0b0_1110_0011_u32;
    for _ in 0..1_000_000 {
        if random.below(60) == 0 {
            bits ^= 1 << random.below(9);
        }
        let i = inputs(bits);
        let out = control.step(DT_S, &i);
        watch.check(&i, &out, control.state(), &t);
    }
}
