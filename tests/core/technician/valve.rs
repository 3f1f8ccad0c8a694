//! Gas valves that let gas by or shut slowly, and gas in the air.

use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::parts::Ending::{InService, ShutOff};
use quarterturn::parts::Place;
use quarterturn::senses::seen::Sound;
use quarterturn::technician::Technician;
use quarterturn::technician::diagnosis::Diagnosis;
use quarterturn::technician::drive::Player;

use super::{faulty, full, healthy, prove, spoiled};
use quarterturn::technician::proof::Spoiling;

/// What a valve lets by is found by the detector in front of the burners; the new valve is judged once
/// the room is aired, not by what the old one left in it.
#[test]
fn a_leaking_valve_is_renewed_and_the_new_one_trusted() {
    for (fuel, severity) in [
        ("natural", "leaking_gas_valve"),
        ("propane", "leaking_gas_valve"),
        ("natural", "leaking_gas_valve(\"2 ft3/h\")"),
        ("natural", "leaking_gas_valve(\"5 ft3/h\")"),
    ] {
        let taken_for = full(&faulty(fuel, severity, "InService"), InService);
        assert_eq!(taken_for, [Diagnosis::ValveLetsGasBy], "{fuel} {severity}");
    }
}

/// Flames that stay on after the call are the valve's: nobody is called for want of gas.
#[test]
fn a_flame_that_stays_on_is_the_valves() {
    for (fuel, fault) in [
        ("natural", "leaking_gas_valve(\"10.53 ft3/h\")"),
        ("propane", "leaking_gas_valve(\"5 ft3/h\")"),
        ("natural", "slow_closing_gas_valve"),
        ("natural", "slow_closing_gas_valve(\"7 s\")"),
        ("propane", "slow_closing_gas_valve(\"12 s\")"),
        ("natural", "slow_closing_gas_valve(\"20 s\")"),
    ] {
        let taken_for = full(&faulty(fuel, fault, "InService"), InService);
        assert_eq!(taken_for, [Diagnosis::ValveDoesNotShut], "{fuel} {fault}");
    }
    // A valve that shuts within the second that it may take is left alone.
    let brisk = faulty("natural", "slow_closing_gas_valve(\"0.3 s\")", "InService");
    assert!(full(&brisk, InService).is_empty());
}

/// Who obeys the alarm, shuts the supply and closes the port again has full marks: there is no gas to
/// check its joint with.
#[test]
fn a_port_closed_after_the_alarm_asks_for_no_check() {
    let fault = "leaking_gas_valve(\"18.02 ft3/h\")";
    let taken_for = full(&faulty("natural", fault, "ShutOff"), ShutOff);
    assert_eq!(taken_for, [Diagnosis::GasInTheAir]);
}

/// Spoiled in any way, a job with such a valve loses what it must and no more.
#[test]
fn slow_spoiled_work_on_a_valve_loses_its_own_items() {
    for fault in ["leaking_gas_valve", "low_stage_set_high, leaking_gas_valve"] {
        let _ = spoiled(&faulty("propane", fault, "InService"));
    }
}

/// Gas that is in the air whenever somebody goes in: after some tries nobody goes in any more, and the
/// job is handed over from outside.
#[test]
fn an_alarm_that_goes_on_ends_outside() {
    let scenario = quarterturn::scenario::load(&healthy("natural")).unwrap();
    let bench = Bench::new(scenario.draw(0));
    let mut technician = Technician::new(&bench.setup().card.clone());
    let mut seen = bench.seen();
    let mut last = None;
    // A look a tick, for six hours at most.
    for _ in 0..6 * 3600 * quarterturn::units::TICKS_PER_S {
        seen.sounds = if matches!(seen.place, Place::Yard | Place::Away) {
            Vec::new()
        } else {
            vec![Sound::Alarm]
        };
        match technician.next(&seen) {
            Some(Action::Go(place)) => seen.place = place,
            Some(action) => last = Some(action),
            None if technician.finished() => break,
            None => {}
        }
    }
    assert!(technician.finished());
    let said = HandOver { ending: ShutOff, not_done: Vec::new() };
    assert_eq!((last, seen.place), (Some(Action::HandOver(said)), Place::Away));
}

/// The healthy bench still has nothing of all that.
#[test]
fn a_sound_valve_is_left_alone() {
    for fuel in ["natural", "propane"] {
        let proof = prove(&healthy(fuel), Spoiling::No);
        assert!(proof.is_full() && proof.diagnosis.is_empty(), "{proof:?}");
    }
}
