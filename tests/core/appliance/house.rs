//! House and thermostat together.

use quarterturn::site::house::{House, Thermostat};
use quarterturn::units::{W_PER_BTU_H, f_from_k, k_from_f};

/// A furnace of 45,000/64,000 Btu/h delivered holds a house at its setpoint: the temperature stays
/// in the thermostat's band and the furnace cycles on its first stage.
#[test]
fn a_house_is_held_at_its_setpoint() {
    let mut house = House::new(k_from_f(68.0), 250.0, 2.0e7);
    let mut thermostat = Thermostat::default();
    let (mut starts, mut was, mut second_s) = (0, false, 0.0);
    for tick in 0..24 * 3600 * 5 {
        thermostat.step_timed(0.2, house.inside_k(), k_from_f(68.0));
        let (first, second) = thermostat.calls();
        let delivered = match (first, second) {
            (false, _) => 0.0,
            (true, false) => 45_000.0,
            (true, true) => 64_000.0,
        };
        house.step(0.2, delivered * W_PER_BTU_H, k_from_f(20.0));
        starts += u32::from(first && !was);
        was = first;
        second_s += if second { 0.2 } else { 0.0 };
        let inside_f = f_from_k(house.inside_k());
        assert!((67.4..68.6).contains(&inside_f), "{inside_f} at {tick}");
    }
    assert!((10..120).contains(&starts), "{starts}");
    assert_eq!(second_s, 0.0);
}

/// A house colder than its setpoint by more than two degrees calls both stages, warms, and is
/// satisfied; the second stage leaves first.
#[test]
fn a_cold_house_calls_both_and_is_satisfied() {
    let mut house = House::new(k_from_f(62.0), 250.0, 2.0e7);
    let mut thermostat = Thermostat::default();
    let mut seen = Vec::new();
    for _ in 0..6 * 3600 * 5 {
        thermostat.step(house.inside_k(), k_from_f(70.0));
        let calls = thermostat.calls();
        if seen.last() != Some(&calls) {
            seen.push(calls);
        }
        if calls == (false, false) {
            break;
        }
        let delivered = if calls.1 { 64_000.0 } else { 45_000.0 };
        house.step(0.2, delivered * W_PER_BTU_H, k_from_f(20.0));
    }
    assert_eq!(seen, [(true, true), (true, false), (false, false)]);
}

/// With a timer the second stage comes after its minutes on the first, though the room is near the
/// setpoint, and goes with the first; a reset forgets the minutes and keeps the timer.
#[test]
fn a_timer_calls_the_second_stage() {
    let mut thermostat = Thermostat::with_timer(600.0);
    let near_k = k_from_f(69.0);
    let mut step = |seconds: u32, inside_k: f64| {
        for _ in 0..seconds {
            thermostat.step_timed(1.0, inside_k, k_from_f(70.0));
        }
        thermostat
    };
    assert_eq!(step(590, near_k).calls(), (true, false));
    assert_eq!(step(20, near_k).calls(), (true, true));
    assert_eq!(step(1, k_from_f(70.6)).calls(), (false, false));
    assert_eq!(step(590, near_k).calls(), (true, false));
    let mut reset = step(590, near_k);
    reset.reset();
    assert_eq!(reset.calls(), (false, false));
    reset.step_timed(1.0, near_k, k_from_f(70.0));
    assert_eq!(reset.calls(), (true, false));
    reset.step_timed(600.0, near_k, k_from_f(70.0));
    assert_eq!(reset.calls(), (true, true));
}
