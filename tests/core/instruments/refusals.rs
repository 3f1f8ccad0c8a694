//! What instruments refuse, and why.

use quarterturn::appliance::plate::Fuel;
use quarterturn::hands::action::{Action, StartStop};
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::{Door, Fitted, OnOff, Place, Spot, Tool};

use super::Hand;
use crate::bench::rig;

/// Wrong place, wrong tool, door on, no such part: each is refused with its reason.
#[test]
fn a_spot_has_its_place_and_its_tool() {
    let mut hand = Hand::natural();
    assert_eq!(hand.refused(Action::Measure(Spot::Flue)), Refusal::NeedsTool(Tool::FlueAnalyser));
    hand.act(Action::Take(Tool::ElectricalMeter));
    assert_eq!(
        hand.refused(Action::Measure(Spot::SupplyAir)),
        Refusal::NeedsTool(Tool::Thermometer)
    );
    assert_eq!(hand.refused(Action::Measure(Spot::MeterDial)), Refusal::NotHere);
    assert_eq!(hand.refused(Action::Measure(Spot::LowGasVolts)), Refusal::NotFitted);
    hand.act(Action::Door { door: Door::Burner, to: Fitted::On });
    assert_eq!(hand.refused(Action::Measure(Spot::RToC)), Refusal::DoorInTheWay);
    hand.go(Place::Yard);
    assert_eq!(hand.refused(Action::Measure(Spot::TankSkin)), Refusal::NotFitted);
    let mut propane = Hand::at(rig::healthy(Fuel::Propane));
    propane.go(Place::Yard);
    assert_eq!(propane.refused(Action::Measure(Spot::MeterDial)), Refusal::NotFitted);
}

/// Ohms only with the power off; put on again, the face goes.
#[test]
fn ohms_want_a_dead_part() {
    let mut hand = Hand::natural();
    hand.act(Action::Take(Tool::ElectricalMeter));
    assert_eq!(hand.refused(Action::Measure(Spot::IgniterOhms)), Refusal::PowerOn);
    hand.act(Action::FurnaceSwitch(OnOff::Off));
    hand.act(Action::Measure(Spot::IgniterOhms));
    assert!(hand.bench.seen().measured.is_some());
    hand.act(Action::FurnaceSwitch(OnOff::On));
    assert_eq!(hand.bench.seen().measured, None);
}

/// The microammeter goes in and out with the power off; while it is in, the door stays off, and the
/// one there is cannot be taken.
#[test]
fn the_microammeter_goes_in_series_with_the_power_off() {
    let mut hand = Hand::natural();
    assert_eq!(hand.refused(Action::Unclip), Refusal::NotClipped);
    hand.act(Action::Take(Tool::Microammeter));
    assert_eq!(hand.refused(Action::Measure(Spot::FlameRod)), Refusal::PowerOn);
    hand.act(Action::PutDown);
    hand.clip();
    assert_eq!(hand.bench.seen().clipped, Fitted::On);
    assert_eq!(hand.refused(Action::Take(Tool::Microammeter)), Refusal::ClippedIn);
    let shut = Action::Door { door: Door::Burner, to: Fitted::On };
    assert_eq!(hand.refused(shut), Refusal::LeadsInTheWay);
    assert_eq!(hand.refused(Action::Unclip), Refusal::PowerOn);
    hand.act(Action::FurnaceSwitch(OnOff::Off));
    hand.act(Action::Unclip);
    assert_eq!(hand.bench.seen().hand, Some(Tool::Microammeter));
}

/// Nothing is written that is not shown: no instrument, dashes, a watch that still runs.
#[test]
fn nothing_is_written_that_is_not_shown() {
    let mut hand = Hand::natural();
    assert_eq!(hand.refused(Action::WriteMeasured(Spot::Flue)), Refusal::NothingShown);
    hand.hold(Spot::Flue, 30);
    assert_eq!(hand.refused(Action::WriteMeasured(Spot::Flue)), Refusal::NothingShown);
    hand.hold(Spot::ReturnAir, 30);
    assert_eq!(hand.refused(Action::WriteMeasured(Spot::SupplyAir)), Refusal::NothingShown);
    hand.act(Action::WriteMeasured(Spot::ReturnAir));
    let sheet = hand.bench.seen().sheet;
    assert_eq!(sheet.measured.len(), 1);
    assert_eq!(sheet.measured[0].figures, hand.bench.seen().measured.unwrap().figures);
    hand.go(Place::Yard);
    hand.act(Action::PutDown);
    hand.act(Action::Take(Tool::Stopwatch));
    let start = Action::Stopwatch(StartStop::Start);
    assert_eq!(hand.refused(start.clone()), Refusal::StopwatchNotRunning);
    hand.hold(Spot::MeterDial, 0);
    assert_eq!(hand.refused(Action::Stopwatch(StartStop::Stop)), Refusal::StopwatchNotRunning);
    hand.act(start);
    assert_eq!(hand.refused(Action::WriteMeasured(Spot::MeterDial)), Refusal::NothingShown);
}

/// Walking away, an instrument is no longer where it was held; back again, it must be held anew.
#[test]
fn an_instrument_does_not_stay_where_it_was_held() {
    let mut hand = Hand::natural();
    hand.hold(Spot::SupplyAir, 1);
    hand.go(Place::Hall);
    assert_eq!(hand.bench.seen().measured, None);
    hand.go(Place::PlantRoom);
    assert_eq!(hand.bench.seen().measured, None);
}

/// A bag that was not opened leaves no trace in the digest: taking a tool and putting it back does
/// not, either.
#[test]
fn an_unused_bag_leaves_the_digest_alone() {
    let mut plain = Hand::natural();
    let mut opened = Hand::natural();
    opened.act(Action::Take(Tool::Thermometer));
    assert_ne!(opened.bench.digest(), plain.bench.digest());
    opened.act(Action::PutDown);
    assert_eq!(opened.bench.digest(), plain.bench.digest());
    plain.wait(5);
    opened.wait(5);
    assert_eq!(opened.bench.digest(), plain.bench.digest());
}
