//! Values that are sound by themselves and make no sense together.

use quarterturn::scenario::{Code, ProblemLevel, check, load};

use super::{natural, problems, propane, spoiled};

/// Each contradiction is an error at the field that causes it.
#[test]
fn contradictions_are_errors() {
    for (from, to, path) in [
        ("low: \"1.7 inH2O\"", "low: \"3.6 inH2O\"", "furnace.plate.made_for.low"),
        ("inlet_min: \"5.0 inH2O\"", "inlet_min: \"11 inH2O\"", "furnace.plate.made_for.inlet_min"),
        (
            "inlet_max: \"10.5 inH2O\"",
            "inlet_max: \"14.5 inH2O\"",
            "furnace.plate.made_for.inlet_max",
        ),
        (
            "inlet_min: \"5.0 inH2O\"",
            "inlet_min: \"3.4 inH2O\"",
            "furnace.plate.made_for.inlet_min",
        ),
        ("input_low: \"56000 Btu/h\"", "input_low: \"81000 Btu/h\"", "furnace.plate.input_low"),
        ("lockup: \"7.6 inH2O\"", "lockup: \"6.9 inH2O\"", "supply.set"),
        ("droop: \"0.35 inH2O\"", "droop: \"5.5 inH2O\"", "supply.droop"),
        ("delivery_max: \"8.0 inH2O\"", "delivery_max: \"6.5 inH2O\"", "supply.set"),
        ("delivery_min: \"5.7 inH2O\"", "delivery_min: \"8.5 inH2O\"", "supply.delivery_min"),
        ("lockup_max: \"9.0 inH2O\"", "lockup_max: \"7.9 inH2O\"", "supply.lockup_max"),
        (
            "set: \"7.0 inH2O\"",
            "upstream: \"0.31 psi\", set: \"7.0 inH2O\", found: \"8.2 inH2O\"",
            "supply.upstream",
        ),
        (
            "droop_flow: \"175 ft3/h\"",
            "droop_flow: \"175 ft3/h\", capacity: \"180 ft3/h\"",
            "supply.capacity",
        ),
        ("source: Meter(dial: \"0.5 ft3\")", "source: Tank()", "supply.source"),
        ("orifice: \"#44\"", "orifice: \"#99\"", "furnace.plate.made_for.orifice"),
        ("orifice: \"#44\"", "orifice: \"#70\"", "furnace.plate.made_for.orifice"),
        ("settings: (", "orifice_sizes: Some([\"2 mm\"]), settings: (", "furnace.orifice_sizes"),
        (
            "model: \"QT 80-2\"",
            "rise_min: \"70 degF\", model: \"QT 80-2\"",
            "furnace.plate.rise_min",
        ),
    ] {
        let found = problems(from, to);
        assert!(
            found.iter().any(|p| p.severity == ProblemLevel::Error && p.path == path),
            "{to}: {found:#?}"
        );
        let text = spoiled(&natural(), from, to);
        assert!(load(&text).is_err());
    }
}

/// What is possible but unlikely to be meant is a warning: it says why, and the scenario loads.
#[test]
fn unlikely_values_are_warnings() {
    for (from, to, path, word) in [
        ("lockup: \"7.6 inH2O\"", "lockup: \"9.5 inH2O\"", "supply.lockup", "at rest"),
        (
            "input_low: \"56000 Btu/h\"",
            "input_low: \"40000 Btu/h\"",
            "furnace.plate.input_low",
            "%",
        ),
        ("orifice: \"#44\"", "orifice: \"#42\"", "furnace.plate.made_for.orifice", "NFPA 54"),
        (
            "settings: (high: Between(\"3.90 inH2O\", \"4.10 inH2O\"))",
            "settings: (high: \"6 inH2O\")",
            "furnace.settings.high",
            "bottom",
        ),
        (
            "dial: \"0.5 ft3\")",
            "dial: \"0.5 ft3\"), upstream: \"40 psi\"",
            "supply.upstream",
            "usual",
        ),
        ("input: \"60000 Btu/h\"", "input: \"300000 Btu/h\"", "supply.capacity", "ft3/h"),
        ("manometer: (", "manometer: (range: \"6 inH2O\", ", "manometer.range", ""),
        ("high: \"3.5 inH2O\"", "high: \"3.1 inH2O\"", "furnace.plate.made_for.high", "usual"),
    ] {
        let text = spoiled(&natural(), from, to);
        let found = check("job.ron", &text);
        let hit = found.iter().find(|p| p.path == path);
        let problem = hit.unwrap_or_else(|| panic!("{to}: {found:#?}"));
        assert_eq!((problem.severity, problem.code), (ProblemLevel::Warning, Code::Unusual));
        assert!(problem.message.contains(word), "{problem:#?}");
        assert!(load(&text).is_ok(), "{to}: {found:#?}");
    }
}

/// A furnace marked for another fuel than the one in the pipes is warned of: it may be the fault.
#[test]
fn a_half_converted_furnace_is_warned_of() {
    let text = propane();
    let from = text.find("        conversion: Some((").unwrap();
    let to = text.find("        settings:").unwrap();
    let text = format!("{}{}", &text[..from], &text[to..]);
    let found = check("job.ron", &text);
    assert!(found.iter().all(|p| p.severity == ProblemLevel::Warning), "{found:#?}");
    assert!(found.iter().any(|p| p.path == "furnace.plate.made_for.fuel"), "{found:#?}");
}
