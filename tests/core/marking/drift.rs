//! A zero that drifts is to be named where somebody could see it wander. The figures are our own.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::Action;
use quarterturn::parts::{OnOff, Place};
use quarterturn::units::PA_PER_INWC;

use super::sheet::Sheet;
use crate::bench::rig;

/// How often a drift of half an inch is charged as not named. The meter was off by these, in inches
/// of water, when it was switched on, when its zero was pressed, right after, and at the end.
fn charged([on, pressed, after, end]: [f64; 4]) -> usize {
    let mut setup = rig::healthy(Fuel::Natural);
    Fault::MeterZeroDrifts.apply(&mut setup, 0.5 * PA_PER_INWC);
    let mut sheet = Sheet::of(setup);
    let acts = [
        (on, Action::MeterPower(OnOff::On)),
        (pressed, Action::MeterZero),
        (after, Action::Go(Place::Yard)),
        (end, Action::Go(Place::Hall)),
    ];
    for (off, action) in acts {
        sheet.truth.meter_error_pa = off * PA_PER_INWC;
        sheet.did(action).later();
    }
    sheet.times("cause-not-named")
}

/// Whoever switches the meter on once it is warm, after a break, sees nothing of its drift and does
/// not have to name it. What wanders before the zero is pressed, or after it, is seen; what the
/// button takes away is no drift.
#[test]
fn a_drift_that_nobody_could_see_is_not_charged() {
    for (off, times) in [
        ([0.5, 0.5, 0.0, 0.0], 0),
        ([0.45, 0.5, 0.0, 0.02], 0),
        ([0.1, 0.4, 0.0, 0.1], 1),
        ([0.1, 0.1, 0.0, 0.4], 1),
        ([-0.1, -0.4, 0.0, -0.1], 1),
        ([0.1, 0.195, 0.0, 0.0], 0),
        ([0.1, 0.205, 0.0, 0.0], 1),
    ] {
        assert_eq!(charged(off), times, "{off:?}");
    }
    // Never switched on, it is held against the whole job.
    let mut setup = rig::healthy(Fuel::Natural);
    Fault::MeterZeroDrifts.apply(&mut setup, 0.5 * PA_PER_INWC);
    let mut never = Sheet::of(setup);
    for off in [0.0, 0.3] {
        never.truth.meter_error_pa = off * PA_PER_INWC;
        never.did(Action::PutDown).later();
    }
    assert_eq!(never.times("cause-not-named"), 1);
}
