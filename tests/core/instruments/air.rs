//! Thermometers.

use quarterturn::appliance::plate::Fuel;
use quarterturn::instrument::figure::Quantity;
use quarterturn::parts::{Level, Place, Spot};
use quarterturn::setup::SupplyKind;
use quarterturn::units::f_from_k;

use super::Hand;
use crate::bench::rig;

/// Return and supply air as a person reads them, and their difference, in °F.
fn rise_f(hand: &mut Hand) -> f64 {
    hand.hold(Spot::SupplyAir, 60);
    let supply = hand.shows(Quantity::Temperature).unwrap();
    hand.hold(Spot::ReturnAir, 60);
    supply - hand.shows(Quantity::Temperature).unwrap()
}

/// On a healthy furnace the rise lies inside the plate's band (40 to 70 °F), on low and on high, and
/// what the thermometer gives is the true rise within half a degree.
#[test]
fn rise_lies_in_the_plates_band_on_both_stages() {
    for fuel in [Fuel::Natural, Fuel::Propane] {
        for firing in [Some(Level::Low), Some(Level::High)] {
            let mut hand = Hand::at(rig::healthy(fuel));
            hand.fire(firing);
            hand.wait(240);
            let rise = rise_f(&mut hand);
            assert!((40.0..=70.0).contains(&rise), "{fuel:?} {firing:?}: {rise}");
            let real = 1.8 * hand.bench.truth().rise_k;
            approx::assert_abs_diff_eq!(rise, real, epsilon = 0.5);
        }
    }
}

/// Taken from the yard in the cold, the bead needs its time: after 25 s of still room air it has made
/// 63 % of the way (Newton's law), after three minutes it shows the room.
#[test]
fn it_takes_its_time() {
    let mut hand = Hand::natural();
    hand.go(Place::Yard);
    hand.hold(Spot::OutsideAir, 10);
    let outside = hand.shows(Quantity::Temperature).unwrap();
    approx::assert_abs_diff_eq!(outside, 20.0, epsilon = 0.2);
    hand.go(Place::Hall);
    hand.hold(Spot::RoomAir, 25);
    let room = f64::from(hand.bench.seen().hall.unwrap().room_half_f) / 2.0;
    let way = (hand.shows(Quantity::Temperature).unwrap() - outside) / (room - outside);
    approx::assert_abs_diff_eq!(way, 0.632, epsilon = 0.02);
    hand.wait(180);
    approx::assert_abs_diff_eq!(hand.shows(Quantity::Temperature).unwrap(), room, epsilon = 0.5);
}

/// A small tank that boils off gas in the cold grows colder than the air: its skin shows it.
#[test]
fn a_working_tank_is_colder_than_the_air() {
    let mut setup = rig::healthy(Fuel::Propane);
    setup.supply.kind = SupplyKind::Tank { level: 0.1, capacity_m3: 0.45 };
    let mut hand = Hand::at(setup);
    hand.fire(Some(Level::High));
    hand.wait(600);
    hand.go(Place::Yard);
    hand.hold(Spot::TankSkin, 60);
    let skin = hand.shows(Quantity::Temperature).unwrap();
    let outside = f_from_k(hand.bench.setup().outside_k);
    assert!(skin < outside - 0.2, "{skin} in {outside}");
}
