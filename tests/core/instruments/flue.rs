//! The flue analyser.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::instrument::figure::Quantity;
use quarterturn::parts::{Level, Spot};
use quarterturn::setup::Setup;

use super::{Hand, faulty};
use crate::bench::rig;

/// Oxygen and carbon dioxide in dry flue gas, in per cent: ideal-gas thermochemistry (GRI-Mech 3.0
/// species data), for a 94.9 % methane pipeline mix and for propane.
const NATURAL: [(f64, f64); 4] = [(3.81, 9.68), (6.45, 8.19), (8.39, 7.10), (9.87, 6.26)];
const PROPANE: [(f64, f64); 4] = [(3.75, 11.26), (6.37, 9.55), (8.29, 8.29), (9.77, 7.32)];

fn fired(setup: Setup, firing: Option<Level>) -> Hand {
    let mut hand = Hand::at(setup);
    hand.fire(firing);
    hand.hold(Spot::Flue, 180);
    hand
}

fn oxygen(hand: &Hand) -> f64 {
    hand.shows(Quantity::Oxygen).unwrap()
}

fn monoxide(hand: &Hand) -> f64 {
    hand.shows(Quantity::CarbonMonoxideAirFree).unwrap()
}

/// On a healthy flame oxygen and carbon dioxide lie on the published line within the resolution of
/// both (0.1 %) and the analyser's 20.9 % of oxygen in air; excess air is the true one within 2
/// points; carbon monoxide is far below 100 ppm air-free (common practice for a good flame).
#[test]
fn a_healthy_flame_shows_the_published_relation() {
    for (fuel, table) in [(Fuel::Natural, NATURAL), (Fuel::Propane, PROPANE)] {
        for firing in [Some(Level::Low), Some(Level::High)] {
            let hand = fired(rig::healthy(fuel), firing);
            let o2 = oxygen(&hand);
            let between = table.windows(2).find(|rows| (rows[0].0..=rows[1].0).contains(&o2));
            let [(o2_a, co2_a), (o2_b, co2_b)] = *between.expect("within the table") else {
                unreachable!()
            };
            let printed = co2_a + (co2_b - co2_a) * (o2 - o2_a) / (o2_b - o2_a);
            let co2 = hand.shows(Quantity::CarbonDioxide).unwrap();
            approx::assert_abs_diff_eq!(co2, printed, epsilon = 0.15);
            let excess = hand.shows(Quantity::ExcessAir).unwrap();
            let real = 100.0 * hand.bench.truth().excess_air.unwrap();
            approx::assert_abs_diff_eq!(excess, real, epsilon = 2.0);
            assert!(monoxide(&hand) < 50.0, "{fuel:?} {firing:?}: {}", monoxide(&hand));
        }
    }
}

/// A blocked flue takes the air away: oxygen falls, carbon monoxide rises (trade practice).
#[test]
fn a_blocked_flue_takes_oxygen_and_makes_monoxide() {
    let sound = fired(rig::healthy(Fuel::Natural), Some(Level::Low));
    let blocked = fired(faulty(Fuel::Natural, Fault::BlockedVent, 0.55), Some(Level::Low));
    assert!(oxygen(&blocked) < oxygen(&sound) - 1.0, "{}", oxygen(&blocked));
    assert!(monoxide(&blocked) >= monoxide(&sound));
}

/// Over-fired by orifices that are too large: oxygen falls, and beyond the air that there is carbon
/// monoxide rises steeply.
#[test]
fn over_fired_burners_use_up_the_oxygen() {
    let sound = fired(rig::healthy(Fuel::Natural), Some(Level::High));
    let large = fired(faulty(Fuel::Natural, Fault::OversizeOrifices, 0.15), Some(Level::High));
    let larger = fired(faulty(Fuel::Natural, Fault::OversizeOrifices, 0.45), Some(Level::High));
    assert!(oxygen(&large) < oxygen(&sound) - 1.0);
    assert!(oxygen(&larger) < oxygen(&large));
    assert!(monoxide(&larger) > 10.0 * monoxide(&sound), "{}", monoxide(&larger));
}

/// A dry trap lets room air in behind the burners: the analyser sees thinner flue gas than burns.
#[test]
fn a_dry_trap_thins_the_flue_gas() {
    let dry = fired(faulty(Fuel::Natural, Fault::DryCondensateTrap, 0.15), Some(Level::Low));
    let burns = 100.0 * dry.bench.truth().excess_air.unwrap();
    assert!(dry.shows(Quantity::ExcessAir).unwrap() > burns + 10.0);
}

/// In fresh air it shows 20.9 % and reckons nothing; put to the flue, it needs about twenty seconds
/// for nine tenths of the way.
#[test]
fn the_cells_lag() {
    let mut hand = Hand::natural();
    hand.fire(Some(Level::Low));
    hand.hold(Spot::Flue, 0);
    assert_eq!(oxygen(&hand), 20.9);
    assert_eq!(hand.shows(Quantity::CarbonDioxide), None);
    hand.wait(20);
    let early = oxygen(&hand);
    hand.wait(160);
    let way = (20.9 - early) / (20.9 - oxygen(&hand));
    approx::assert_abs_diff_eq!(way, 0.9, epsilon = 0.02);
}
