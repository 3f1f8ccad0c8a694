//! Faults over the whole range of the catalogue, and two at once.

use quarterturn::parts::Ending::{InService, ShutOff, SupplyOwnerCalled};
use quarterturn::technician::diagnosis::Diagnosis;

use super::{faulty, full, spoiled};

/// A screen from hardly to almost wholly blocked: what does nothing is passed over, what holds the
/// manifold down is cleaned, and no screw is turned that has no effect.
#[test]
fn a_screen_is_cleaned_however_blocked_it_is() {
    for (fuel, share, cleaned) in [
        ("natural", "0.2", false),
        ("natural", "0.8", true),
        ("natural", "0.95", true),
        ("propane", "0.2", false),
        ("propane", "0.8", true),
        ("propane", "0.95", true),
    ] {
        let fault = format!("blocked_inlet_screen({share})");
        let taken_for = full(&faulty(fuel, &fault, "InService"), InService);
        assert_eq!(!taken_for.is_empty(), cleaned, "{fuel} {share} {taken_for:?}");
    }
}

/// Orifices from a trifle to four fifths too large in area: those of the plate are fitted, whatever
/// carbon monoxide the large ones made; a trifle changes nothing that is read.
#[test]
fn orifices_too_large_are_found() {
    for (fuel, share, found) in [
        ("natural", "0.03", false),
        ("natural", "0.15", true),
        ("natural", "0.3", true),
        ("natural", "0.4", true),
        ("natural", "0.5", true),
        ("natural", "0.8", true),
        ("propane", "0.03", false),
        ("propane", "0.15", true),
        ("propane", "0.3", true),
        ("propane", "0.4", true),
        ("propane", "0.5", true),
        ("propane", "0.8", true),
    ] {
        let fault = format!("oversize_orifices({share})");
        let taken_for = full(&faulty(fuel, &fault, "InService"), InService);
        assert_eq!(!taken_for.is_empty(), found, "{fuel} {share} {taken_for:?}");
    }
}

/// What lets by hardly, rods that still light: passed over or mended, never charged.
#[test]
fn slow_small_leaks_and_weak_parts_are_no_trap() {
    for fault in [
        "leaking_gas_valve(\"0.05 ft3/h\")",
        "leaking_gas_valve(\"1 ft3/h\")",
        "dirty_flame_rod(0.2)",
        "weak_igniter(0.1)",
        "delayed_ignition(\"0.5 s\")",
        "water_in_meter_hose(\"0.05 inH2O\")",
        "blocked_manifold_tap(\"0 mm\")",
        "blocked_inlet_tap(\"0 mm\")",
        "low_meter_battery(\"0 s\")",
    ] {
        for fuel in ["natural", "propane"] {
            let _ = full(&faulty(fuel, fault, "InService"), InService);
        }
    }
}

/// Flames that lean once the blower runs tell of a hole in the exchanger, however small: no size of
/// it is left in service (common practice).
#[test]
fn a_holed_exchanger_is_never_left_in_service() {
    for severity in ["0.05", "0.1", "0.25"] {
        for fuel in ["natural", "propane"] {
            let text = faulty(fuel, &format!("holed_exchanger({severity})"), "ShutOff");
            assert_eq!(full(&text, ShutOff), [Diagnosis::ExchangerHoled], "{fuel} {severity}");
        }
    }
}

/// A seat that creeps moves the number too: hose and hole are left alone. One's own regulator is
/// renewed; what the old one let into the line is burned off before the new one is judged.
#[test]
fn a_creeping_seat_is_not_taken_for_a_slow_hose() {
    let faults = "creeping_supply_seat(\"0.2 ft3/h\")";
    for (fuel, ending) in [("natural", InService), ("propane", ShutOff)] {
        let taken_for = full(&faulty(fuel, faults, &format!("{ending:?}")), ending);
        let slow = [Diagnosis::NumberSlow, Diagnosis::NumberSlowAtPort];
        assert!(!slow.iter().any(|one| taken_for.contains(one)), "{fuel} {taken_for:?}");
        let supply = [Diagnosis::SupplyCreeps, Diagnosis::SupplyTooHigh];
        assert!(supply.iter().any(|one| taken_for.contains(one)), "{fuel} {taken_for:?}");
    }
    let slow = "pinched_meter_hose(\"20 s\")";
    assert_eq!(full(&faulty("natural", slow, "InService"), InService), [Diagnosis::NumberSlow]);
}

/// A strong smell is answered: out, shut off, call. Somebody else's regulator stays shut off with the
/// furnace; one's own is renewed and the job done from the beginning.
#[test]
fn a_strong_smell_is_answered() {
    let alarm = Diagnosis::GasInTheAir;
    let torn = "torn_regulator_diaphragm(\"4 mm\")";
    let theirs = spoiled(&faulty("propane", torn, "ShutOff"));
    assert_eq!(theirs.ending, Some(ShutOff));
    assert!(theirs.diagnosis.contains(&alarm), "{theirs:?}");
    let tripped = |one: &str| theirs.spoiled.iter().any(|it| it.found.iter().any(|id| id == one));
    assert!(tripped("worked-on-after-alarm"), "{:?}", theirs.spoiled);
    assert!(full(&faulty("natural", torn, "InService"), InService).contains(&alarm));
}

/// A supply set low with a second fault that it hides, or that hides it: each spoiled run still loses
/// exactly its own items.
#[test]
fn slow_faults_that_hide_each_other_are_both_found() {
    for second in [
        "high_stage_set_low",
        "low_stage_set_low",
        "blocked_inlet_screen(0.8)",
        "oversize_orifices",
        "undersized_trunk",
    ] {
        let text = faulty("natural", &format!("supply_set_low, {second}"), "InService");
        let proof = spoiled(&text);
        assert!(proof.diagnosis.len() > 1, "{second}: {:?}", proof.diagnosis);
    }
}

/// A supply found far too high has put more on the gas valve than it may see: that was so before
/// anybody's hand was on it, and is not charged to who puts it right.
#[test]
fn what_stood_on_the_valve_before_is_not_charged() {
    let text = faulty("natural", "supply_set_high(\"8 inH2O\")", "InService");
    assert_eq!(full(&text, InService), [Diagnosis::SupplySetHigh]);
}

/// The main's pressure is down: the regulator's screw moves nothing and is put back where it was.
#[test]
fn a_screw_without_effect_is_turned_back() {
    let text = faulty("natural", "low_main_pressure(\"2 inH2O\")", "SupplyOwnerCalled");
    let taken_for = full(&text, SupplyOwnerCalled);
    assert!(taken_for.contains(&Diagnosis::SupplyScrewInVain), "{taken_for:?}");
}
