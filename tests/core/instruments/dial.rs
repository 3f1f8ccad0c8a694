//! The stopwatch at the meter's dial.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::{Action, StartStop};
use quarterturn::instrument::figure::Quantity;
use quarterturn::parts::{Level, Place, Spot};
use quarterturn::setup::Setup;
use quarterturn::units::{J_M3_PER_BTU_FT3, PA_PER_INWC, W_PER_BTU_H};

use super::{Hand, faulty};
use crate::bench::rig;

/// Times whole turns of the dial, on high: starts now, stops at the first sight of the hand back at
/// its place after `turns`.
fn seconds_per_turn(setup: Setup, turns: f64) -> (f64, Hand) {
    let mut hand = Hand::at(setup);
    hand.fire(Some(Level::High));
    hand.wait(60);
    hand.go(Place::Yard);
    hand.hold(Spot::MeterDial, 0);
    hand.act(Action::Stopwatch(StartStop::Start));
    let dial = |hand: &Hand| hand.bench.seen().yard.unwrap().dial_turns.unwrap();
    let start = dial(&hand);
    for _ in 0..50 * 1_000 {
        if dial(&hand) - start >= turns {
            break;
        }
        hand.bench.step();
    }
    hand.act(Action::Stopwatch(StartStop::Stop));
    (hand.shows(Quantity::SecondsPerTurn).unwrap(), hand)
}

/// Input = 3,600 s/h × ft³ a turn × Btu/ft³ / seconds a turn (the trade's rule for clocking): on the
/// healthy rig, the furnace alone, the plate's input within 2 %.
#[test]
fn the_dial_gives_the_input() {
    let (seconds, hand) = seconds_per_turn(rig::healthy(Fuel::Natural), 3.0);
    let btu_ft3 = hand.bench.setup().gas.heating_value_j_m3 / J_M3_PER_BTU_FT3;
    let btu_h = 3_600.0 * 0.5 * btu_ft3 / seconds;
    let plate = hand.bench.setup().furnace.plate.input.top().si() / W_PER_BTU_H;
    approx::assert_relative_eq!(btu_h, plate, max_relative = 0.02);
}

/// One of four orifices plugged: the manifold pressure is right, the meter is slow by a third (three
/// orifices pass three quarters of the gas).
#[test]
fn one_plugged_orifice_slows_the_meter() {
    let (sound, _) = seconds_per_turn(rig::healthy(Fuel::Natural), 2.0);
    let (slow, hand) = seconds_per_turn(faulty(Fuel::Natural, Fault::PluggedOrifice, 1.0), 2.0);
    approx::assert_relative_eq!(slow / sound, 4.0 / 3.0, max_relative = 0.03);
    let manifold = hand.bench.truth().manifold_pa / PA_PER_INWC;
    approx::assert_abs_diff_eq!(manifold, 3.5, epsilon = 0.15);
}

/// Lean gas (930 Btu/ft³, 0.62 heavy): the meter is about right, within 3 %, and the rise is low.
#[test]
fn lean_gas_shows_in_the_rise_and_not_at_the_meter() {
    let (sound, healthy) = seconds_per_turn(rig::healthy(Fuel::Natural), 2.0);
    let severity = 930.0 * J_M3_PER_BTU_FT3;
    let (lean, hand) = seconds_per_turn(faulty(Fuel::Natural, Fault::LeanGas, severity), 2.0);
    approx::assert_relative_eq!(lean, sound, max_relative = 0.03);
    let rise = |mut hand: Hand| {
        hand.go(Place::PlantRoom);
        hand.hold(Spot::SupplyAir, 240);
        let supply = hand.shows(Quantity::Temperature).unwrap();
        hand.hold(Spot::ReturnAir, 60);
        supply - hand.shows(Quantity::Temperature).unwrap()
    };
    let (low, full) = (rise(hand), rise(healthy));
    assert!(low < 0.95 * full, "{low} against {full}");
}

/// Stopped a tenth of a turn late, the time is a tenth of a turn too long: that is the person's error.
#[test]
fn a_late_finger_makes_a_long_turn() {
    let (right, _) = seconds_per_turn(rig::healthy(Fuel::Natural), 2.0);
    let (late, _) = seconds_per_turn(rig::healthy(Fuel::Natural), 2.1);
    approx::assert_relative_eq!(late / right, 1.05, max_relative = 0.01);
}
