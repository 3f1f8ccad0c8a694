//! The ignition control in every small world: whatever its inputs do, these things never happen.

use quarterturn::parts::{Level, Levels};
use std::collections::BTreeMap;

use quarterturn::appliance::ignition::{Control, ControlState, Inputs, Outputs, Timings};
use quarterturn::rng;

const DT_S: f64 = 0.05;
/// Kinds of inputs: nine contacts and the flame, each there or not.
const WORLDS: u32 = 512;

fn inputs(bits: u32, levels: &[Level]) -> Inputs {
    let bit = |n: u32| bits >> n & 1 == 1;
    Inputs {
        powered: bit(0),
        call: match (bit(1), bit(2)) {
            (false, _) => None,
            (true, false) => levels.first().copied(),
            (true, true) => levels.last().copied(),
        },
        switches: match levels {
            [_] => Levels::one(bit(3)),
            _ => Levels::two(bit(3), bit(4)),
        },
        limit: bit(5),
        rollout: bit(6),
        low_gas: bit(7),
        flame_ua: if bit(8) { 3.0 } else { 0.0 },
    }
}

/// Furnaces with one level and with two.
const FURNACES: [&[Level]; 2] = [Levels::one(()).list(), Levels::two((), ()).list()];

/// Whether the control of a furnace with these levels has this state.
fn has(levels: &[Level], state: ControlState) -> bool {
    match state {
        ControlState::Burning(level) => levels.contains(&level),
        ControlState::NextLevelCall | ControlState::InducerUp | ControlState::NextSwitchProving => {
            levels.len() > 1
        }
        _ => true,
    }
}

/// Follows one control and knows what must never be.
#[derive(Default, Clone)]
struct Watch {
    unlit_s: f64,
    stray_s: f64,
}

impl Watch {
    fn check(&mut self, i: &Inputs, out: &Outputs, state: ControlState, t: &Timings) {
        let context = || format!("{i:?} {out:?} {state:?}");
        let safe = i.powered
            && i.call.is_some()
            && *i.switches.first()
            && i.limit
            && i.rollout
            && i.low_gas;
        let main = out.valve.is_some();
        let above = out.valve.is_some_and(|level| !level.is_first());
        assert!(!main || safe, "gas with a safety open: {}", context());
        assert!(!main || out.inducer.is_some(), "gas without inducer: {}", context());
        assert!(!above || *i.switches.top(), "second coil with its switch open: {}", context());
        assert!(!above || out.inducer == out.valve, "high on a slow fan: {}", context());
        assert!(!out.igniter || safe, "igniter with a safety open: {}", context());
        let quiet = matches!(state, ControlState::Lockout | ControlState::Standby);
        assert!(!quiet || (!main && !out.igniter), "gas or igniter at rest: {}", context());
        let hot = matches!(state, ControlState::LimitOpen | ControlState::RolloutOpen);
        assert!(
            !hot || out.blower.is_some_and(Level::is_top),
            "overheated and no air: {}",
            context()
        );
        if !i.powered {
            let off = out.inducer.is_none() && out.blower.is_none();
            assert!(off && !main && !out.igniter, "driven without power: {}", context());
        }
        let felt = i.flame_ua >= t.flame_min_ua;
        let unlit = main && !felt;
        self.unlit_s = if unlit { self.unlit_s + DT_S } else { 0.0 };
        let most = t.trial_s + t.flame_response_s + 2.0 * DT_S;
        assert!(self.unlit_s <= most, "{:.2} s of gas unlit: {}", self.unlit_s, context());
        let stray = felt && !main && i.powered;
        self.stray_s = if stray { self.stray_s + DT_S } else { 0.0 };
        let patience = t.stray_flame_s + 2.0 * DT_S;
        let fan = out.inducer.is_some();
        assert!(self.stray_s <= patience || fan, "a stray flame without a fan: {}", context());
    }
}

/// Controls in every state, found by trying every combination of inputs from each state in turn.
fn one_of_each(t: &Timings, levels: &'static [Level]) -> BTreeMap<ControlState, Control> {
    let mut found = BTreeMap::new();
    let rest = Control::new(*t, levels);
    found.insert(rest.state(), rest.clone());
    let mut open = vec![rest];
    while let Some(start) = open.pop() {
        for bits in 0..WORLDS {
            let mut control = start.clone();
            for _ in 0..1200 {
                control.step(DT_S, &inputs(bits, levels));
                if let std::collections::btree_map::Entry::Vacant(slot) =
                    found.entry(control.state())
                {
                    slot.insert(control.clone());
                    open.push(control.clone());
                }
            }
        }
    }
    found
}

/// From every state that there is, every combination of inputs for a minute, and from where that
/// leads every single change of one input for half a minute more.
#[test]
fn every_input_from_every_state() {
    let t = Timings { lockout_s: 60.0, ..Timings::default() };
    for levels in FURNACES {
        from_every_state(&t, levels);
    }
}

fn from_every_state(t: &Timings, levels: &'static [Level]) {
    let starts = one_of_each(t, levels);
    for state in ControlState::ALL.into_iter().filter(|&state| has(levels, state)) {
        assert!(starts.contains_key(&state), "{state:?} is never reached");
    }
    assert!(starts.keys().all(|&state| has(levels, state)), "{levels:?} {:?}", starts.keys());
    for start in starts.values() {
        for bits in 0..WORLDS {
            let mut control = start.clone();
            let mut watch = Watch::default();
            let run = |control: &mut Control, watch: &mut Watch, bits: u32, steps: u32| {
                let i = inputs(bits, levels);
                for _ in 0..steps {
                    let out = control.step(DT_S, &i);
                    watch.check(&i, &out, control.state(), t);
                }
            };
            run(&mut control, &mut watch, bits, 1200);
            for changed in 0..9 {
                run(&mut control.clone(), &mut watch.clone(), bits ^ 1 << changed, 600);
            }
        }
    }
}

/// A million steps of inputs that change at random, a few seconds apart and some within a step.
#[test]
fn random_inputs_never_break_the_rules() {
    let t = Timings { lockout_s: 30.0, retry_s: 5.0, ..Timings::default() };
    for levels in FURNACES {
        at_random(&t, levels);
    }
}

fn at_random(t: &Timings, levels: &'static [Level]) {
    let mut control = Control::new(*t, levels);
    let mut watch = Watch::default();
    let mut random = rng::stream(11, "ignition");
    let mut bits = 0b0_1110_0011_u32;
    for _ in 0..1_000_000 {
        if random.below(60) == 0 {
            bits ^= 1 << random.below(9);
        }
        let i = inputs(bits, levels);
        let out = control.step(DT_S, &i);
        watch.check(&i, &out, control.state(), t);
    }
}
