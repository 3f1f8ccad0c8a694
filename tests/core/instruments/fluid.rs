//! Leak fluid that is on a joint before gas comes to it.

use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::parts::{HandValve, Joint, Place, Port, Tool};

use super::Hand;
use crate::faults::hand::open;

const JOINT: Joint = Joint::InletPort;
/// Shortest time that fluid is watched to judge a joint, in seconds (common practice).
const JUDGED_S: f64 = 10.0;

fn valve(hand_valve: HandValve, degrees: i16) -> Action {
    Action::HandValve { hand_valve, degrees }
}

/// Fluid on a closed inlet port without gas for so long; then gas let in by this valve, and the joint
/// watched for so long. Gives the pressure and the time that the fluid was judged by, and the pressure
/// in the line.
fn judged(by: HandValve, before_s: u32, after_s: u32) -> (f64, f64, f64) {
    let mut hand = Hand::natural();
    hand.act(valve(HandValve::Furnace, 0));
    open(&mut hand.bench, Port::Inlet);
    hand.wait(5);
    crate::faults::hand::close(&mut hand.bench, Port::Inlet);
    if by == HandValve::Supply {
        hand.go(Place::Yard);
        hand.act(valve(by, 0));
        hand.go(Place::GasValve);
        hand.act(valve(HandValve::Furnace, 90));
        let_off(&mut hand.bench);
    }
    hand.go(Place::GasValve);
    hand.act(Action::Take(Tool::LeakFluid));
    hand.act(Action::LeakFluid(JOINT));
    hand.wait(before_s);
    if by == HandValve::Supply {
        hand.go(Place::Yard);
    }
    hand.act(valve(by, 90));
    hand.go(Place::GasValve);
    let pa = hand.wait(after_s).inlet_pa;
    hand.bench.take_events();
    hand.act(Action::Wipe(JOINT));
    let events = hand.bench.take_events();
    let fluid = events.iter().find_map(|event| match event.what {
        EventKind::FluidJudged { lowest_pa, dwell_s, .. } => Some((lowest_pa, dwell_s)),
        _ => None,
    });
    let (lowest_pa, dwell_s) = fluid.expect("the fluid was judged");
    (lowest_pa, dwell_s, pa)
}

/// The shut-in line without pressure: let off at the inlet port.
fn let_off(bench: &mut Bench) {
    open(bench, Port::Inlet);
    crate::faults::hand::wait(bench, 60);
    crate::faults::hand::close(bench, Port::Inlet);
}

/// It counts from the moment that gas is on the joint, whichever valve let it in and however long it was
/// on before; watched too briefly from then on it proves nothing under pressure.
#[test]
fn it_counts_from_when_gas_comes() {
    for by in [HandValve::Furnace, HandValve::Supply] {
        for before_s in [1, 40] {
            let (lowest_pa, dwell_s, pa) = judged(by, before_s, 15);
            assert!(pa > 1000.0, "{by:?}: {pa} Pa in the line");
            assert!(lowest_pa >= 0.9 * pa, "{by:?}, {before_s} s: {lowest_pa} of {pa} Pa");
            assert!((JUDGED_S..=15.0).contains(&dwell_s), "{by:?}, {before_s} s: {dwell_s} s");
            let (lowest_pa, dwell_s, pa) = judged(by, before_s, 6);
            let proves = dwell_s >= JUDGED_S && lowest_pa >= 0.8 * pa;
            assert!(!proves, "{by:?}, {before_s} s: {lowest_pa} Pa for {dwell_s} s");
        }
    }
}
