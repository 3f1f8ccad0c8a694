//! What the cutaway shows is what the model has.

use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::Action;
use quarterturn::parts::{Level, Place};
use quarterturn::scenario::{builtin, load};

/// The level that the control feels while the thermostat calls the first one.
fn felt(fault: Option<Fault>) -> Option<Level> {
    let mut setup = load(builtin::find("healthy-natural").unwrap().text).unwrap().draw(1);
    if let Some(fault) = fault {
        fault.apply(&mut setup, 1.0);
    }
    let mut bench = Bench::new(setup);
    bench.apply(&Action::Go(Place::Hall)).unwrap();
    let room_half_f = bench.seen().hall.unwrap().room_half_f;
    bench.apply(&Action::Setpoint(room_half_f + 3)).unwrap();
    for _ in 0..100 {
        bench.step();
    }
    bench.inside().control.felt.call
}

/// A contact of the second stage that is welded shut calls the full rate whatever the thermostat
/// calls: the cutaway shows what the control feels.
#[test]
fn the_cutaway_shows_the_call_that_the_control_feels() {
    assert_eq!(felt(None), Some(Level::Low));
    assert_eq!(felt(Fault::from_name("stuck_in_high")), Some(Level::High));
}
