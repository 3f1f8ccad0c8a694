//! Gas in a room, and what a nose makes of it.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use quarterturn::physics::fluid::Gas;
use quarterturn::physics::room::{Leaks, Nose, Odorant, Room, Strength, Ventilation, Zone, dilute};

/// Concentration for a source of 1 m³/h in 1 m³, by air changes per hour and minutes: Engineering
/// ToolBox, "Pollution Concentration in Rooms", to four decimals.
const MINUTES: [f64; 7] = [10.0, 20.0, 40.0, 80.0, 160.0, 320.0, 640.0];
const PUBLISHED: [(f64, [f64; 7]); 5] = [
    (0.5, [0.1599, 0.307, 0.5669, 0.9732, 1.4728, 1.861, 1.9903]),
    (1.0, [0.1535, 0.2835, 0.4866, 0.7364, 0.9305, 0.9952, 1.0]),
    (2.0, [0.1417, 0.2433, 0.3682, 0.4653, 0.4976, 0.5, 0.5]),
    (4.0, [0.1216, 0.1841, 0.2326, 0.2488, 0.25, 0.25, 0.25]),
    (8.0, [0.0921, 0.1163, 0.1244, 0.125, 0.125, 0.125, 0.125]),
];

/// The published table to its last decimal, in one step and in steps of a fifth of a second.
#[test]
fn dilution_matches_the_published_table() {
    for (changes_h, row) in PUBLISHED {
        for (minutes, published) in MINUTES.into_iter().zip(row) {
            let n = changes_h / 3600.0;
            let leak = 1.0 / 3600.0;
            let at_once = dilute(0.0, 0.0, leak, n, 60.0 * minutes);
            assert_abs_diff_eq!(at_once, published, epsilon = 6e-5);
            let mut stepped = 0.0;
            for _ in 0..(minutes * 300.0) as u32 {
                stepped = dilute(stepped, 0.0, leak, n, 0.2);
            }
            assert_relative_eq!(stepped, at_once, max_relative = 1e-9);
        }
    }
}

/// Worked figures: 30 m³ at 0.35 changes an hour with 0.10 m³/h levels off at 0.95 %; with 0.5 m³/h
/// it reaches 1 % (a fifth of the lower limit) after 40.4 min. Without air it only builds up.
#[test]
fn worked_leaks_reach_a_fifth_of_the_limit_when_computed() {
    let n = 0.35 / 3600.0;
    let level = dilute(0.0, 0.0, 0.10 / 3600.0 / 30.0, n, 1e6);
    assert_abs_diff_eq!(100.0 * level, 0.95, epsilon = 0.005);
    let c = dilute(0.0, 0.0, 0.5 / 3600.0 / 30.0, n, 40.4 * 60.0);
    assert_abs_diff_eq!(100.0 * c, 1.0, epsilon = 0.005);
    assert_relative_eq!(dilute(0.01, 0.0, 1e-5, 0.0, 100.0), 0.011, max_relative = 1e-12);
}

fn closed() -> Ventilation {
    Ventilation::default()
}

fn after(gas: &Gas, seconds: u32, leaks: Leaks, air: Ventilation) -> Room {
    let mut room = Room::new(gas, 30.0, 0.5);
    for _ in 0..5 * seconds {
        room.step(0.2, leaks, air);
    }
    room
}

/// The gas balance of a room without air changes: what leaked in is there, wherever it came out,
/// within 4 parts in 100,000 (each zone is exact, with its neighbours held over a step).
#[test]
fn no_gas_is_lost_or_made() {
    let leaks = Leaks { vestibule_m3_s: 2e-5, floor_m3_s: 1e-5, breathing_m3_s: 3e-5 };
    for gas in [Gas::natural(), Gas::propane()] {
        let mut room = Room::new(&gas, 30.0, 0.0);
        for tick in 0..20_000 {
            let on = if tick < 5_000 { leaks } else { Leaks::default() };
            room.step(0.2, on, closed());
        }
        assert_relative_eq!(room.gas_m3(), 6e-5 * 1_000.0, max_relative = 4e-5);
    }
}

/// In the long run what leaks in goes out with the air: the mean settles at q/(nV) (steady state
/// of the dilution law) with zones that the air changes alike.
#[test]
fn a_long_leak_settles_at_its_steady_state() {
    for gas in [Gas::natural(), Gas::propane()] {
        let leak = 1e-5;
        let room = after(&gas, 100_000, leak.into(), closed());
        let [vestibule, ..] = room.fractions();
        let zones = room.gas_m3() - 0.12 * vestibule;
        assert_relative_eq!(zones / 30.0, leak / (0.5 / 3600.0 * 30.0), max_relative = 1e-3);
    }
}

/// Propane pools above the floor, natural gas rises, from whichever height it leaks; a window
/// clears both, an open door better.
#[test]
fn heavy_gas_pools_light_gas_rises_and_air_clears_both() {
    let sources = [
        Leaks { vestibule_m3_s: 3e-5, ..Leaks::default() },
        Leaks { floor_m3_s: 3e-5, ..Leaks::default() },
        Leaks { breathing_m3_s: 3e-5, ..Leaks::default() },
    ];
    for leaks in sources {
        let [_, floor, head] = after(&Gas::propane(), 600, leaks, closed()).fractions();
        assert!(floor > 5.0 * head, "{leaks:?} {floor} {head}");
        let [_, floor, head] = after(&Gas::natural(), 600, leaks, closed()).fractions();
        assert!(head > floor, "{leaks:?} {floor} {head}");
    }
    for gas in [Gas::natural(), Gas::propane()] {
        let left = |air: Ventilation| after(&gas, 600, sources[0], air).gas_m3();
        let shut = left(closed());
        let window = left(Ventilation { window: 1.0, ..closed() });
        let door = left(Ventilation { window: 1.0, door: 1.0, ..closed() });
        assert!(window < 0.8 * shut && door < 0.7 * window, "{shut} {window} {door}");
    }
}

/// Running burners draw the vestibule's air to the flue: the same leak leaves less gas behind.
#[test]
fn the_flue_takes_part_of_a_leak_in_the_vestibule() {
    let flue = Ventilation { to_flue_m3_s: 0.008, ..closed() };
    let still = after(&Gas::natural(), 300, 3e-5.into(), closed());
    let drawn = after(&Gas::natural(), 300, 3e-5.into(), flue);
    assert!(drawn.gas_m3() < 0.8 * still.gas_m3());
    assert!(drawn.fractions()[0] < 0.8 * still.fractions()[0]);
}

/// Within the published limits (NFPA 325 and NFPA 58) a zone is flammable; above the upper one its
/// middle is not, yet a source there still lights its edge. The fire's heat is gas × heating value.
#[test]
fn a_source_lights_whatever_reaches_the_lower_limit() {
    for (gas, lower, upper) in [(Gas::natural(), 0.05, 0.15), (Gas::propane(), 0.0215, 0.096)] {
        let mut room = Room::new(&gas, 30.0, 0.0);
        let mut crossed = Vec::new();
        for _ in 0..3_000 {
            room.step(0.2, 4e-3, closed());
            let share = room.fractions()[0];
            let inside = (lower..=upper).contains(&share);
            assert_eq!(room.flammable(Zone::Vestibule), inside, "{share}");
            assert_eq!(room.fire(Zone::Vestibule).is_some(), share >= lower, "{share}");
            if crossed.last() != Some(&inside) {
                crossed.push(inside);
            }
        }
        assert_eq!(crossed, [false, true, false]);
        let fire = room.fire(Zone::Vestibule).unwrap();
        assert_relative_eq!(fire.gas_m3, 0.12 * room.fractions()[0], max_relative = 1e-12);
        assert_relative_eq!(fire.heat_j, fire.gas_m3 * gas.heating_value_j_m3);
    }
    assert!(Room::new(&Gas::propane(), 30.0, 0.5).fire(Zone::Floor).is_none());
}

/// A pool of propane on the floor reaches the vestibule by itself.
#[test]
fn a_pool_on_the_floor_feeds_the_vestibule() {
    let leaks = Leaks { floor_m3_s: 2e-4, ..Leaks::default() };
    let room = after(&Gas::propane(), 1800, leaks, closed());
    let [vestibule, floor, _] = room.fractions();
    assert!(vestibule > 0.4 * floor, "{vestibule} {floor}");
}

/// Odorised gas is readily smelt at a fifth of the lower limit (49 CFR 192.625, 46 CFR 58.16-25), by
/// a fresh nose far below; faded odorant hides it.
#[test]
fn a_fresh_nose_keeps_the_legal_bound() {
    let fresh = Nose::default();
    let odorant = Odorant::default();
    let cases = [
        (0.005, Strength::None),
        (0.021, Strength::Faint),
        (0.1, Strength::Clear),
        (0.2, Strength::Strong),
        (1.0, Strength::Strong),
    ];
    for (share, strength) in cases {
        assert_eq!(fresh.smells(share, &odorant), strength, "{share}");
    }
    let faded = Odorant { left: 0.05, ..odorant };
    assert_eq!(fresh.smells(0.2, &faded), Strength::None);
}

/// A nose tires within minutes in gas, so that a strong smell becomes weaker, and recovers in fresh
/// air more slowly.
#[test]
fn a_nose_tires_and_recovers() {
    let odorant = Odorant::default();
    let mut nose = Nose::default();
    let mut breathe = |seconds: u32, share: f64| {
        for _ in 0..5 * seconds {
            nose.breathe(0.2, share, &odorant);
        }
        nose
    };
    assert!(breathe(600, 0.2).smells(0.2, &odorant) <= Strength::Faint.max(Strength::Clear));
    assert!(breathe(0, 0.0).tired() > 0.5);
    assert_eq!(breathe(0, 0.0).smells(0.03, &odorant), Strength::None);
    let after_ten_minutes = breathe(600, 0.0).tired();
    assert!((0.1..0.5).contains(&after_ten_minutes), "{after_ten_minutes}");
    assert_eq!(breathe(3600, 0.0).smells(0.21, &odorant), Strength::Strong);
}
