//! The aftermath: strides from event to event against single ticks, from several states in which
//! a job may be left.

use enum_map::EnumMap;
use quarterturn::appliance::ignition::ControlState;
use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::model::aftermath::{Aftermath, Span, Stepping};
use quarterturn::parts::{Level, OnOff, Port};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::setup::Setup;
use quarterturn::units::k_from_f;

use super::rig::healthy;

/// How long the two are compared here, in seconds: three hours. The benchmark compares a day.
const COMPARED_S: f64 = 3.0 * 3600.0;

/// Ways to leave a job.
pub fn left_behind() -> Vec<(&'static str, Setup)> {
    let natural = || healthy(Fuel::Natural);
    let propane = || healthy(Fuel::Propane);
    let with = |mut setup: Setup, change: &dyn Fn(&mut Setup)| {
        change(&mut setup);
        setup
    };
    vec![
        ("healthy, natural gas", natural()),
        ("healthy, propane", propane()),
        ("inlet plug loose", with(natural(), &|s| s.found.plugs_past_hand[Port::Inlet] = 0.1)),
        (
            "inlet plug loose, propane",
            with(propane(), &|s| s.found.plugs_past_hand[Port::Inlet] = 0.0),
        ),
        (
            "manifold plug loose",
            with(natural(), &|s| s.found.plugs_past_hand[Port::Manifold] = 0.0),
        ),
        (
            "high screw far in",
            with(natural(), &|s| s.furnace.valve.springs.top_mut().found_turns += 4.0),
        ),
        (
            "low screw far out",
            with(propane(), &|s| s.furnace.valve.springs.first_mut().found_turns = 0.5),
        ),
        ("manual valve shut", with(natural(), &|s| s.found.manual_valve = HandleAngle::SHUT)),
        (
            "supply set low",
            with(propane(), &|s| {
                s.supply.set_pa *= 0.35;
                s.supply.lockup_pa *= 0.35;
            }),
        ),
        (
            "others on",
            with(natural(), &|s| s.found.other_appliances = EnumMap::from_fn(|_| OnOff::On)),
        ),
        ("both stages by time", with(natural(), &|s| s.furnace.auto_next_min = Some(8.0))),
        ("heat off", with(natural(), &|s| s.found.thermostat_mode = OnOff::Off)),
        (
            "tank nearly empty, bitter cold",
            with(propane(), &|s| {
                s.outside_k = k_from_f(-25.0);
                s.supply.kind =
                    quarterturn::setup::SupplyKind::Tank { level: 0.05, capacity_m3: 0.45 };
            }),
        ),
    ]
}

fn close(name: &str, what: &str, a: f64, b: f64, relative: f64, absolute: f64) {
    let bound = absolute + relative * a.abs().max(b.abs());
    assert!((a - b).abs() <= bound, "{name}: {what} {a} by strides, {b} by ticks");
}

fn close_span(name: &str, what: &str, a: Span, b: Span, bound_pa: f64) {
    assert_eq!(a.is_seen(), b.is_seen(), "{name}: {what}");
    if a.is_seen() {
        close(name, what, a.least, b.least, 0.0, bound_pa);
        close(name, what, a.most, b.most, 0.0, bound_pa);
    }
}

fn close_time(name: &str, what: &str, a: Option<f64>, b: Option<f64>, bound_s: f64) {
    assert_eq!(a.is_some(), b.is_some(), "{name}: {what} {a:?} by strides, {b:?} by ticks");
    if let (Some(a), Some(b)) = (a, b) {
        close(name, what, a, b, 0.0, bound_s);
    }
}

/// The same findings: counts equal, changes of the control in the same order and within a second,
/// totals within half a percent, pressures within 2 Pa (0.008 in. w.c.).
pub fn assert_same(name: &str, strides: &Aftermath, ticks: &Aftermath) {
    let (a, b) = (strides, ticks);
    close(name, "length", a.seconds, b.seconds, 0.0, 1.0);
    let counts = |n: &Aftermath| {
        let f = n.furnace;
        [f.runs, f.cycles, f.retries, f.lockouts, f.limits, f.rollouts]
    };
    assert_eq!(counts(a), counts(b), "{name}");
    let states = |n: &Aftermath| n.changes.iter().map(|(_, state)| *state).collect::<Vec<_>>();
    assert_eq!(states(a), states(b), "{name}");
    for ((at_a, state), (at_b, _)) in a.changes.iter().zip(&b.changes) {
        close(name, &format!("{state:?}"), *at_a, *at_b, 0.0, 1.0);
    }
    let (fa, fb) = (a.furnace, b.furnace);
    close(name, "time lit", fa.lit_s, fb.lit_s, 0.0, 2.0);
    for level in Level::ALL {
        close(name, &format!("time {level:?}"), fa.level_s[level], fb.level_s[level], 0.0, 2.0);
    }
    close(name, "heat", fa.heat_j, fb.heat_j, 5e-3, 1e3);
    close(name, "carbon monoxide", fa.co_air_free_ppm, fb.co_air_free_ppm, 5e-3, 0.5);
    close(name, "gas drawn", a.gas.drawn_m3, b.gas.drawn_m3, 5e-3, 1e-5);
    close(name, "gas escaped", a.gas.escaped_m3, b.gas.escaped_m3, 5e-3, 1e-6);
    close_span(name, "supply", a.gas.supply_pa, b.gas.supply_pa, 2.0);
    close_span(name, "inlet", a.gas.inlet_pa, b.gas.inlet_pa, 2.0);
    for level in Level::ALL {
        let (a, b) = (a.gas.manifold_pa[level], b.gas.manifold_pa[level]);
        close_span(name, level.label(), a, b, 2.0);
    }
    assert_eq!(a.gas.went_out, b.gas.went_out, "{name}");
    let most = |after: &Aftermath| after.room.most_of_lower_limit;
    for (a, b) in most(a).iter().zip(most(b).iter()) {
        close(name, "gas in the air", a, b, 5e-3, 1e-5);
    }
    close_time(name, "smelt", a.room.smelt_s, b.room.smelt_s, 5.0);
    close_time(name, "alarm", a.room.alarm_s, b.room.alarm_s, 5.0);
    close_time(name, "ignition", a.room.ignition_s, b.room.ignition_s, 5.0);
    close_span(name, "house", a.house.inside_k, b.house.inside_k, 0.01);
    close(name, "house at the end", a.house.end_k, b.house.end_k, 0.0, 0.01);
    close(name, "time cold", a.house.cold_s, b.house.cold_s, 1e-3, 2.0);
    assert_eq!(a.tank.is_some(), b.tank.is_some());
    if let (Some(a), Some(b)) = (a.tank, b.tank) {
        close(name, "level", a.level_after, b.level_after, 1e-4, 0.0);
        close(name, "tank", a.lowest_pa, b.lowest_pa, 1e-3, 0.0);
    }
}

#[test]
fn strides_find_what_ticks_find() {
    for (name, setup) in left_behind() {
        let bench = Bench::new(setup);
        let strides = bench.aftermath(COMPARED_S, Stepping::Strides);
        let ticks = bench.aftermath(COMPARED_S, Stepping::Ticks);
        assert_same(name, &strides, &ticks);
    }
}

/// What the states left behind are about does come about in a day: a healthy house is kept warm by
/// cycles; a loose plug fills the room; a shut valve and an empty tank lock the furnace out and let
/// the house go cold. And the bench itself stays where it was.
#[test]
fn slow_a_day_tells_what_was_left_wrong() {
    let day = 24.0 * 3600.0;
    for (name, setup) in left_behind() {
        let bench = Bench::new(setup);
        let before = bench.digest();
        let after = bench.aftermath(day, Stepping::Strides);
        assert_eq!(bench.digest(), before);
        let cold = after.house.end_k < k_from_f(60.0);
        match name {
            "healthy, natural gas" | "healthy, propane" | "others on" => {
                assert!(after.furnace.cycles > 10 && after.furnace.lockouts == 0, "{after:?}");
                assert!(!cold && after.room.most_of_lower_limit.breathing < 1e-6, "{after:?}");
            }
            "inlet plug loose" | "inlet plug loose, propane" => {
                assert!(after.gas.escaped_m3 > 0.1, "{after:?}");
                assert!(after.room.most_of_lower_limit.vestibule > 0.01, "{after:?}");
            }
            "manual valve shut" => {
                assert!(after.furnace.lockouts > 5 && cold, "{after:?}");
                assert!(after.changes.iter().any(|(_, to)| *to == ControlState::Retry));
            }
            "supply set low" => {
                assert!(after.furnace.runs == 0 && cold, "{after:?}");
            }
            "tank nearly empty, bitter cold" => assert!(cold, "{after:?}"),
            "heat off" => assert!(after.furnace.runs == 0 && cold, "{after:?}"),
            _ => {}
        }
    }
}
