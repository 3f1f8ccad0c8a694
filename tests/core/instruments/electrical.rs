//! Microammeter, volts between named terminals, ohms of parts.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::Action;
use quarterturn::instrument::figure::Quantity;
use quarterturn::parts::{Fitted, Level, OnOff, Spot};
use quarterturn::setup::Setup;

use super::{Hand, faulty};
use crate::bench::rig;

/// Largest current seen at the rod during two minutes of a call, in microamperes.
fn microamperes(setup: Setup) -> f64 {
    let mut hand = Hand::at(setup);
    hand.clip();
    hand.call(Fitted::Off);
    let mut most: f64 = 0.0;
    for _ in 0..150 {
        hand.wait(1);
        most = most.max(hand.shows(Quantity::FlameCurrent).unwrap());
    }
    most
}

fn ohms(setup: Setup, spot: Spot) -> Option<f64> {
    let mut hand = Hand::at(setup);
    hand.act(Action::FurnaceSwitch(OnOff::Off));
    hand.hold(spot, 3);
    hand.shows(Quantity::Resistance)
}

/// A clean rod gives 1.8–4 µA (a furnace manual); a dirty one stays below 1 µA, where the control no
/// longer takes it for a flame (another manual).
#[test]
fn a_dirty_rod_is_below_one_microampere() {
    let clean = microamperes(rig::healthy(Fuel::Natural));
    assert!((1.8..=4.0).contains(&clean), "{clean}");
    let dirty = microamperes(faulty(Fuel::Natural, Fault::DirtyFlameRod, 0.8));
    assert!(dirty < 1.0, "{dirty}");
}

/// A sound igniter lies in the published range (37–68 Ω cold for one type, product manual, maker
/// withheld), a weak one above it; it is read dead.
#[test]
fn a_weak_igniter_is_off_in_ohms() {
    let sound = ohms(rig::healthy(Fuel::Natural), Spot::IgniterOhms).unwrap();
    assert!((37.0..=68.0).contains(&sound), "{sound}");
    let mut weak = rig::healthy(Fuel::Natural);
    weak.condition.burners.igniter_weak = 0.4;
    assert!(ohms(weak, Spot::IgniterOhms).unwrap() > 68.0);
    let mut cracked = rig::healthy(Fuel::Natural);
    cracked.condition.burners.igniter_weak = 1.0;
    assert_eq!(ohms(cracked, Spot::IgniterOhms), None, "open line");
}

/// Second stage called, volts at the high coil, low manifold pressure: the coil is open in ohms.
#[test]
fn a_dead_high_coil_has_volts_and_is_open() {
    let dead = || faulty(Fuel::Natural, Fault::DeadHighCoil, 1.0);
    let mut hand = Hand::at(dead());
    hand.call(Fitted::On);
    hand.wait(150);
    assert!(hand.volts(Spot::SecondCoil) > 20.0);
    assert_eq!(hand.bench.truth().firing, Some(Level::Low));
    assert_eq!(ohms(dead(), Spot::SecondCoilOhms), None);
    assert!(ohms(rig::healthy(Fuel::Natural), Spot::SecondCoilOhms).is_some());
}

/// Without a call of the second stage there are no volts at W2, and none at the high coil; with the
/// wire R–W2 there are.
#[test]
fn a_second_stage_that_is_not_called_has_no_volts() {
    let mut hand = Hand::natural();
    hand.fire(Some(Level::Low));
    assert!(hand.volts(Spot::W1ToC) > 20.0);
    assert_eq!(hand.volts(Spot::W2ToC), 0.0);
    assert_eq!(hand.volts(Spot::SecondCoil), 0.0);
    hand.act(Action::StageJumper(Fitted::On));
    hand.wait(60);
    assert!(hand.volts(Spot::W2ToC) > 20.0);
}

/// A dead thermostat circuit: volts from R to C, none from W1 to C (trade practice).
#[test]
fn a_dead_thermostat_circuit_has_volts_at_r_alone() {
    let mut hand = Hand::at(faulty(Fuel::Natural, Fault::DeadThermostatCircuit, 1.0));
    hand.call(Fitted::Off);
    assert!(hand.volts(Spot::RToC) > 24.0);
    assert_eq!(hand.volts(Spot::W1ToC), 0.0);
    assert_eq!(hand.bench.truth().firing, None);
}

/// With the limit open the 24 volts stand across it; closed, nothing does.
#[test]
fn an_open_limit_has_the_volts_across_it() {
    let mut hand = Hand::at(faulty(Fuel::Natural, Fault::BlockedFilter, 0.95));
    assert_eq!(hand.volts(Spot::LimitSwitch), 0.0);
    hand.call(Fitted::On);
    hand.hold(Spot::LimitSwitch, 0);
    let mut most: f64 = 0.0;
    for _ in 0..600 {
        hand.wait(2);
        most = most.max(hand.shows(Quantity::Voltage).unwrap());
    }
    assert!(most > 20.0, "{most}");
}

/// At rest an open pressure switch has the volts across it; one that is stuck closed has none, which
/// is how it is found (trade practice).
#[test]
fn a_stuck_switch_shows_at_rest() {
    assert!(Hand::natural().volts(Spot::FirstSwitch) > 20.0);
    let mut stuck = Hand::at(faulty(Fuel::Natural, Fault::LowPressureSwitchClosed, 1.0));
    assert_eq!(stuck.volts(Spot::FirstSwitch), 0.0);
}

/// A tripped roll-out switch has the volts across it until it is reset.
#[test]
fn a_tripped_roll_out_has_the_volts_across_it() {
    let mut hand = Hand::at(faulty(Fuel::Natural, Fault::TrippedRollOut, 1.0));
    assert!(hand.volts(Spot::RolloutSwitch) > 20.0);
    hand.act(Action::ResetRollout);
    hand.wait(5);
    assert_eq!(hand.shows(Quantity::Voltage), Some(0.0));
}

/// The valve's own switch off: the main coil's terminals have their volts, and no gas flows.
#[test]
fn a_valve_switch_left_off_has_volts_at_the_valve() {
    let mut hand = Hand::at(faulty(Fuel::Natural, Fault::ValveSwitchOff, 1.0));
    hand.call(Fitted::Off);
    hand.hold(Spot::MainCoil, 0);
    let mut most: f64 = 0.0;
    for _ in 0..120 {
        hand.wait(1);
        most = most.max(hand.shows(Quantity::Voltage).unwrap());
    }
    assert!(most > 20.0, "{most}");
    assert_eq!(hand.bench.truth().firing, None);
}

/// A good ground is next to nothing in ohms; a poor one, which takes half of the flame current, is
/// far from it.
#[test]
fn a_poor_ground_shows_in_ohms() {
    assert!(ohms(rig::healthy(Fuel::Natural), Spot::BurnerGroundOhms).unwrap() < 1.0);
    let poor = faulty(Fuel::Natural, Fault::PoorBurnerGround, 0.5);
    assert!(ohms(poor, Spot::BurnerGroundOhms).is_none_or(|ohm| ohm > 1_000.0));
}
