//! The right repair brings the healthy pattern back.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::fault::remedy::Remedy;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::measure::pattern::{Pattern, Start, measure, measure_on};
use quarterturn::parts::{OnOff, Place, Port};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::Display;

use super::hand::{act, isolate, mend, put_back};
use super::row::{healthy, pressures};

/// A manometer shows hundredths of an inch of water; two of them may round apart.
const RESOLUTION_INWC: f64 = 0.011;

/// A faulty bench with the remedy done and everything put back.
fn mended(fault: Fault, fuel: Fuel, repair: Repair) -> Bench {
    let mut setup = healthy_for(fault, fuel).unwrap();
    fault.apply(&mut setup, fault.entry().severity.typical(fuel));
    let mut bench = Bench::new(setup);
    isolate(&mut bench);
    mend(&mut bench, repair);
    put_back(&mut bench);
    bench
}

fn differences(was: &Pattern, is: &Pattern) -> Vec<String> {
    let mut wrong = Vec::new();
    for (i, (was, is)) in pressures(was).iter().zip(&pressures(is)).enumerate() {
        if (was - is).abs() > RESOLUTION_INWC {
            wrong.push(format!("pressure {i}: {is:.3} instead of {was:.3}"));
        }
    }
    for (was, is) in was.points.iter().zip(&is.points) {
        let (was_w, is_w) = (was.truth.input_w / was.rated_w, is.truth.input_w / is.rated_w);
        if (was_w - is_w).abs() > 0.005 {
            wrong.push(format!("{:?}: input {is_w:.3} instead of {was_w:.3}", is.stage));
        }
        if (was.truth.co_air_free_ppm - is.truth.co_air_free_ppm).abs() > 5.0 {
            wrong.push(format!("{:?}: carbon monoxide", is.stage));
        }
        if (was.truth.flame_ua - is.truth.flame_ua).abs() > 0.05 {
            wrong.push(format!("{:?}: flame current", is.stage));
        }
        let (was_leak, is_leak) = (was.truth.leak_m3_s, is.truth.leak_m3_s);
        if was_leak.iter().zip(is_leak.iter()).any(|(was, is)| (was - is).abs() > 1e-8) {
            wrong.push(format!("{:?}: leaks {is_leak:?} instead of {was_leak:?}", is.stage));
        }
        if (was.truth.vented_m3_s - is.truth.vented_m3_s).abs() > 1e-8 {
            wrong.push(format!("{:?}: vented", is.stage));
        }
    }
    if was.signs != is.signs {
        wrong.push(format!("signs {:?} instead of {:?}", is.signs, was.signs));
    }
    wrong
}

/// What is not healthy again with one repair, and why.
fn is_more_than_one_hand(fault: Fault, repair: Repair) -> bool {
    matches!(
        (fault, repair),
        // The moisture is still in the gas: it freezes again, which `a_thawed_regulator…` tells.
        (Fault::FreezingRegulator, Repair::ThawRegulator)
            // Less input on purpose: `an_orifice_for_the_altitude…` tells.
            | (Fault::NotDeratedForAltitude, Repair::FitAltitudeOrifices)
            // The meter's own faults show on the meter: `the_meter_shows…` tells.
            | (
                Fault::HoledMeterHose
                    | Fault::WaterInMeterHose
                    | Fault::PinchedMeterHose
                    | Fault::BlockedInletTap
                    | Fault::BlockedManifoldTap
                    | Fault::LowMeterBattery
                    | Fault::SmallMeterRange,
                _
            )
    )
}

/// Every repair that a fault names as its right remedy, on every fuel that it fits.
#[test]
fn the_right_repair_brings_the_healthy_pattern_back() {
    let mut wrong = Vec::new();
    for &fault in Fault::ALL {
        for fuel in [Fuel::Natural, Fuel::Propane] {
            if healthy_for(fault, fuel).is_none() {
                continue;
            }
            for &remedy in fault.entry().right {
                let Remedy::Mend(repair) = remedy else { continue };
                if is_more_than_one_hand(fault, repair) {
                    continue;
                }
                let bench = mended(fault, fuel, repair);
                let (is, _) = measure_on(bench, Start::AsFound);
                for what in differences(&healthy(fault, fuel), &is) {
                    wrong.push(format!("{} {fuel:?} {}: {what}", fault.name(), repair.id()));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The meter shows what a good meter shows after work on meter, hose or port; before it, it did
/// not.
#[test]
fn the_meter_shows_what_a_good_meter_shows() {
    for (fault, port) in [
        (Fault::HoledMeterHose, Port::Manifold),
        (Fault::WaterInMeterHose, Port::Manifold),
        (Fault::PinchedMeterHose, Port::Manifold),
        (Fault::BlockedInletTap, Port::Inlet),
        (Fault::BlockedManifoldTap, Port::Manifold),
        (Fault::LowMeterBattery, Port::Inlet),
        (Fault::SmallMeterRange, Port::Inlet),
    ] {
        let fuel = Fuel::Natural;
        let sound = healthy_for(fault, fuel).unwrap();
        let good = displays(&measure(sound, Start::Hooked(port)));
        for &remedy in fault.entry().right {
            let Remedy::Mend(repair) = remedy else { continue };
            let bench = mended(fault, fuel, repair);
            let is = displays(&measure_on(bench, Start::Hooked(port)).0);
            for (good, is) in good.iter().zip(&is) {
                assert!((good - is).abs() < 0.021, "{} {}: {is} {good}", fault.name(), repair.id());
            }
        }
    }
}

fn displays(pattern: &Pattern) -> Vec<f64> {
    pattern
        .points
        .iter()
        .map(|point| match point.display {
            Display::Number(shown) => shown.value,
            Display::Dark | Display::OverRange => f64::NAN,
        })
        .collect()
}

/// Thawed with cloths, the regulator gives gas again at once, and freezes again while gas flows:
/// the moisture has to leave the gas.
#[test]
fn a_thawed_regulator_freezes_again() {
    let fault = Fault::FreezingRegulator;
    let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
    fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Propane));
    let (frozen, mut bench) = measure_on(Bench::new(setup), Start::AsFound);
    let others = |it: &Pattern| pressures(it)[3];
    let low_inwc = pressures(&frozen)[1];
    assert!(others(&frozen) < low_inwc - 2.0, "{:?}", pressures(&frozen));
    act(&mut bench, Action::Go(Place::Yard));
    act(&mut bench, Action::Mend(Repair::ThawRegulator));
    act(&mut bench, Action::Go(Place::Hall));
    act(&mut bench, Action::ThermostatMode(OnOff::Off));
    let (again, _) = measure_on(bench, Start::AsFound);
    assert!((pressures(&again)[1] - low_inwc).abs() < 0.1, "{:?}", pressures(&again));
    assert!(others(&again) < low_inwc - 2.0, "{:?}", pressures(&again));
}

/// 4 % less input for each 1000 ft above the sea brings the excess air back (NFPA 54).
#[test]
fn an_orifice_for_the_altitude_brings_the_air_back() {
    let fault = Fault::NotDeratedForAltitude;
    let was = healthy(fault, Fuel::Natural);
    let is =
        measure_on(mended(fault, Fuel::Natural, Repair::FitAltitudeOrifices), Start::AsFound).0;
    let high = |it: &Pattern| it.points[2].truth.input_w / it.points[2].rated_w;
    // 6500 ft: 26 %.
    assert!((high(&is) - 0.74).abs() < 0.02, "{}", high(&is));
    let air = |it: &Pattern| it.points[2].truth.excess_air.unwrap();
    assert!((air(&is) - air(&was)).abs() < 0.12, "{} {}", air(&is), air(&was));
}
