//! What eyes and ears find on arrival, and faults in the middle of their range.

use quarterturn::parts::Ending::{InService, SupplyOwnerCalled};
use quarterturn::technician::diagnosis::Diagnosis;

use super::{faulty, full, spoiled, stating_heat};

/// What is plain to see with the doors open is mended before it stops anything.
#[test]
fn what_a_look_shows_is_mended() {
    for (fault, words) in [
        ("dirty_flame_rod(0.25)", Diagnosis::RodFilmed),
        ("dirty_flame_rod(0.48)", Diagnosis::RodFilmed),
        ("poor_burner_ground(0.48)", Diagnosis::GroundLoose),
        ("closed_registers(0.31)", Diagnosis::RegistersClosed),
        ("closed_registers(0.46)", Diagnosis::RegistersClosed),
        ("closed_registers(0.65)", Diagnosis::RegistersClosed),
        ("draft_hose_off", Diagnosis::DraftHoseOff),
        ("dry_condensate_trap", Diagnosis::TrapDry),
    ] {
        for fuel in ["natural", "propane"] {
            let taken_for = full(&faulty(fuel, fault, "InService"), InService);
            assert_eq!(taken_for, [words], "{fuel} {fault}");
        }
    }
}

/// A film and a loose wire at once are both seen.
#[test]
fn two_things_seen_are_both_mended() {
    let text = faulty("natural", "dirty_flame_rod(0.5), poor_burner_ground(0.5)", "InService");
    assert_eq!(full(&text, InService), [Diagnosis::RodFilmed, Diagnosis::GroundLoose]);
}

/// Whatever the share, a fault is found or cannot be felt: it is never charged to who passes it over.
#[test]
fn slow_no_severity_lies_between_found_and_unfelt() {
    for (fault, severities) in [
        ("blocked_inlet_screen", &["0.3", "0.46", "0.5", "0.55", "0.7"][..]),
        ("oversize_orifices", &["0.05", "0.06", "0.07", "0.08", "0.1"]),
        ("not_derated_for_altitude", &["\"2500 ft\"", "\"3200 ft\"", "\"4500 ft\"", "\"7000 ft\""]),
    ] {
        for severity in severities {
            for fuel in ["natural", "propane"] {
                let _ =
                    full(&faulty(fuel, &format!("{fault}({severity})"), "InService"), InService);
            }
        }
    }
}

/// A regulator that hisses at the right pressure lets gas through its diaphragm, smelt or not: one's
/// own is renewed, somebody else's told.
#[test]
fn a_regulator_that_hisses_is_renewed() {
    let torn = "torn_regulator_diaphragm(\"0.855 mm\")";
    let words = [Diagnosis::RegulatorVents];
    assert_eq!(full(&faulty("natural", torn, "InService"), InService), words);
    let theirs = faulty("propane", torn, "SupplyOwnerCalled");
    assert_eq!(full(&theirs, SupplyOwnerCalled), words);
}

/// Gas within the heat that it is sold with, where the card names none, is nobody's fault to tell;
/// leaner gas is told, and so is the same gas where the card names another.
#[test]
fn slow_lean_gas_is_told_where_it_can_be_told() {
    for (heat, ending) in
        [(1000, InService), (940, InService), (930, SupplyOwnerCalled), (850, SupplyOwnerCalled)]
    {
        let fault = format!("lean_gas(\"{heat} Btu/ft3\")");
        let _ = full(&faulty("natural", &fault, "SupplyOwnerCalled"), ending);
    }
    let text = faulty("natural", "lean_gas(\"940 Btu/ft3\")", "SupplyOwnerCalled");
    let text = stating_heat(&text, 1030);
    assert_eq!(full(&text, SupplyOwnerCalled), [Diagnosis::TooLittleHeat]);
}

/// Ways of spoiling have an occasion where they cost what they must, and nowhere else.
#[test]
fn slow_spoiled_runs_have_their_occasion() {
    for (fuel, faults) in [
        ("propane", "oversize_orifices, blocked_vent"),
        ("natural", "low_stage_set_high, blocked_inlet_screen(0.8)"),
        ("natural", "low_stage_set_high, no_second_stage_call"),
        ("natural", "blocked_inlet_tap"),
        ("propane", "loose_inlet_plug"),
        ("natural", "partly_open_manual_valve"),
    ] {
        let _ = spoiled(&faulty(fuel, faults, "InService"));
    }
}
