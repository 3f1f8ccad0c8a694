//! What is possible but unusual is warned of with the usual range and where it is from.

use quarterturn::scenario::{Code, ProblemLevel, check, load};

use super::{natural, propane, spoiled};

/// One change, the path it is warned at, and a word of the source or range.
fn warned(text: &str, from: &str, to: &str, path: &str, word: &str) {
    let text = spoiled(text, from, to);
    let found = check("job.ron", &text);
    let hit = found.iter().find(|it| it.path == path && it.message.contains(word));
    let problem = hit.unwrap_or_else(|| panic!("{to}: {found:#?}"));
    assert_eq!((problem.severity, problem.code), (ProblemLevel::Warning, Code::Unusual));
    assert!(load(&text).is_ok(), "{to}: {found:#?}");
}

/// Natural gas: heating value and gravity of the fuel, set pressure, pipe too small for the load
/// (IFGC 402.4: 0.5 in. w.c.), long pipe, orifices not changed for the height (IFGC, NFPA 54: 4 % for
/// each 1,000 ft above 2,000 ft; some makers 2 %), lock-up.
#[test]
fn unusual_on_natural_gas() {
    let text = natural();
    for (from, to, path, word) in [
        (
            "(fuel: Natural),",
            "(fuel: Natural, heating_value: \"700 Btu/ft3\"),",
            "gas.heating_value",
            "950 to 1150",
        ),
        (
            "(fuel: Natural),",
            "(fuel: Natural, specific_gravity: 0.9),",
            "gas.specific_gravity",
            "0.55 to 0.7",
        ),
        (
            "set: \"7.0 inH2O\",\n        lockup: \"7.6",
            "set: \"4.2 inH2O\",\n        lockup: \"7.6",
            "supply.set",
            "low-pressure natural gas",
        ),
        ("trunk: [Steel(size: \"1\"", "trunk: [Steel(size: \"1/2\"", "trunk", "IFGC 402.4"),
        (
            "Steel(size: \"3/4\", length: \"22 ft\"",
            "Steel(size: \"3/8\", length: \"22 ft\"",
            "branch",
            "IFGC 402.4",
        ),
        ("length: \"28 ft\"", "length: \"260 ft\"", "neighbors.range.line[0].length", "200 ft"),
        ("altitude: \"300 ft\"", "altitude: \"10000 ft\"", "site.altitude", "60 % (IFGC"),
        (
            "lockup: \"7.6 inH2O\"",
            "lockup_max: \"12 inH2O\", lockup: \"9.8 inH2O\"",
            "supply.lockup",
            "120 to 130 %",
        ),
        ("house: (", "house: (air_changes: 15, ", "house.air_changes", "NFPA 54"),
        ("house: (", "house: (plant_room: \"80 ft3\", ", "house.plant_room", "NFPA 54"),
        (
            "settings: (",
            "igniter_warm_up: \"70 s\", settings: (",
            "furnace.igniter_warm_up",
            "common practice",
        ),
    ] {
        // A name may stand twice after a change; what is looked for is the warning.
        let text = if to.contains("lockup_max") {
            spoiled(&text, "lockup_max: \"9.0 inH2O\",", "")
        } else {
            text.clone()
        };
        let text = if path == "supply.set" {
            spoiled(&text, "delivery_min: \"5.7 inH2O\",", "delivery_min: \"3 inH2O\",")
        } else {
            text
        };
        warned(&text, from, to, path, word);
    }
}

/// Orifices drilled for what the code allows at 10,000 ft (60 %, where the thin gas alone gives
/// 83 %: root of the standard atmosphere's pressure ratio 0.6877) end the warning.
#[test]
fn a_derated_furnace_is_not_warned_of() {
    let text = spoiled(&natural(), "altitude: \"300 ft\"", "altitude: \"10000 ft\"");
    let mm = 2.1844 * (0.60_f64 / 0.829).sqrt();
    let sizes = vec![format!("\"{mm:.3} mm\""); 4].join(", ");
    let text =
        spoiled(&text, "settings: (", &format!("orifice_sizes: Some([{sizes}]), settings: ("));
    let found = check("job.ron", &text);
    assert!(found.iter().all(|it| it.path != "site.altitude"), "{found:#?}");
}

/// Propane: a tank that is too small for the load in the cold, one so cold that it has no pressure,
/// and a set pressure below the label. A half-full 250-gallon tank gives about 50 ft3/h at 0 degF (a
/// published withdrawal table), and less than the 71 ft3/h of this house.
#[test]
fn unusual_on_propane() {
    let text = propane();
    for (from, to, path, word) in [
        (
            "capacity: \"500 gal\", level: Between(0.45, 0.7)",
            "capacity: \"250 gal\", level: 0.5",
            "supply.source.capacity",
            "boils",
        ),
        ("Between(\"8 degF\", \"18 degF\")", "\"-35 degF\"", "site.outside", "pressure wanted"),
        ("inlet_min: \"11.0 inH2O\"", "inlet_min: \"12.5 inH2O\"", "supply.set", "12.5 to 14.0"),
    ] {
        warned(&text, from, to, path, word);
    }
}

/// A tank that is meant to give too little, by a fault of the catalogue, is not warned of.
#[test]
fn a_fault_of_the_tank_explains_itself() {
    let from = "capacity: \"500 gal\", level: Between(0.45, 0.7)";
    let text = spoiled(&propane(), from, "capacity: \"250 gal\", level: 0.08");
    assert!(check("job.ron", &text).iter().any(|it| it.path == "supply.source.capacity"));
    let text = spoiled(&text, "    card: (", "    faults: [nearly_empty_tank],\n    card: (");
    let found = check("job.ron", &text);
    assert!(found.iter().all(|it| it.path != "supply.source.capacity"), "{found:#?}");
}
