//! Malformed scenarios: each is refused with its place, what was expected and the nearest name.

use quarterturn::scenario::{
    Code, MAX_BYTES, MAX_DEPTH, ProblemLevel, check, check_bytes, exit_code, load, to_json, to_text,
};

use super::{natural, only, place_of, problems, spoiled};

/// Two problems of one slip: the unknown field, and the one that is missing for it.
#[test]
fn a_misspelt_required_field() {
    let text = spoiled(&natural(), "lockup: \"7.6", "lokup: \"7.6");
    let found = check("job.ron", &text);
    assert_eq!(found.len(), 2, "{found:#?}");
    let unknown = found.iter().find(|p| p.code == Code::UnknownField).unwrap();
    assert_eq!(unknown.path, "supply.lokup");
    assert_eq!(unknown.nearest.as_deref(), Some("lockup"));
    assert_eq!((unknown.line, unknown.column), place_of(&text, "lokup:"));
    assert!(unknown.expected.contains("droop_flow"));
    let missing = found.iter().find(|p| p.code == Code::MissingField).unwrap();
    assert_eq!(missing.path, "supply.lockup");
    assert_eq!(exit_code(&found), 1);
}

/// A misspelt optional field is one problem.
#[test]
fn a_misspelt_optional_field() {
    let problem = only("altitude:", "altitde:", "altitde", Code::UnknownField);
    assert_eq!(problem.path, "site.altitde");
    assert_eq!(problem.nearest.as_deref(), Some("altitude"));
    assert!(problem.message.contains("altitde"));
}

/// Words, variants and range names that do not exist.
#[test]
fn unknown_names_get_the_nearest() {
    let fuel = only("fuel: Natural)", "fuel: Natral)", "Natral", Code::UnknownName);
    assert_eq!(fuel.nearest.as_deref(), Some("Natural"));
    let source = only("Meter(dial", "Metre(dial", "Metre", Code::UnknownName);
    assert_eq!(source.nearest.as_deref(), Some("Meter"));
    assert_eq!(source.path, "supply.source");
    let range = only("outside: Between(", "outside: Betwen(", "Betwen", Code::UnknownName);
    assert_eq!(range.nearest.as_deref(), Some("Between"));
    let size = only("size: \"1/2\"", "size: \"1/ 2\"", "\"1/ 2\"", Code::UnknownName);
    assert_eq!(size.nearest.as_deref(), Some("1/2"));
    assert_eq!(size.path, "neighbors.water_heater.line[0].size");
    let root = only("Scenario(", "Scenery(", "Scenery", Code::UnknownName);
    assert_eq!(root.nearest, None);
}

/// Units that are missing or wrong, and bare numbers where a unit must stand.
#[test]
fn quantities_need_their_units() {
    for (bad, code) in [
        ("\"7.0\"", Code::BadQuantity),
        ("\"7.0 ft\"", Code::BadQuantity),
        ("\"seven inH2O\"", Code::BadQuantity),
        ("\"NaN inH2O\"", Code::BadQuantity),
        ("\"inf inH2O\"", Code::BadQuantity),
        ("\"1e999 inH2O\"", Code::BadQuantity),
        ("\"\"", Code::BadQuantity),
        ("7.0", Code::WrongKind),
        ("[\"7.0 inH2O\"]", Code::WrongKind),
        ("true", Code::WrongKind),
    ] {
        let problem = only("set: \"7.0 inH2O\"", &format!("set: {bad}"), bad, code);
        assert_eq!(problem.path, "supply.set");
        assert!(problem.expected.contains("unit"), "{problem:#?}");
    }
}

/// Bare numbers refuse text, not-a-number, infinity, signs and fractions where none may be.
#[test]
fn counts_are_whole_and_finite() {
    for (bad, code) in [
        ("\"4\"", Code::WrongKind),
        ("-4", Code::BadQuantity),
        ("4.5", Code::BadQuantity),
        ("NaN", Code::BadQuantity),
        ("inf", Code::BadQuantity),
        ("0x4", Code::BadQuantity),
        ("1000000", Code::OutOfRange),
        ("99999999999999999999", Code::BadQuantity),
    ] {
        let at = format!("{bad}, tees: 2");
        let problem = only("elbows: 4, tees: 2", &format!("elbows: {at}"), &at, code);
        assert_eq!(problem.path, "trunk[0].elbows");
    }
}

/// Numbers beyond what the model takes.
#[test]
fn absurd_values_are_out_of_range() {
    for (from, bad) in [
        ("length: \"22 ft\"", "length: \"-22 ft\""),
        ("length: \"22 ft\"", "length: \"0 ft\""),
        ("length: \"22 ft\"", "length: \"9000 m\""),
        ("altitude: \"300 ft\"", "altitude: \"9000 m\""),
        ("input_high: \"80000 Btu/h\"", "input_high: \"8e12 Btu/h\""),
        ("set: \"7.0 inH2O\"", "set: \"7.0 psi\""),
        ("dial: \"0.5 ft3\"", "dial: \"0 ft3\""),
        ("setpoint: \"70 degF\"", "setpoint: \"-500 degC\""),
    ] {
        let (_, value) = bad.split_once(": ").unwrap();
        let problem = only(from, bad, value, Code::OutOfRange);
        assert!(problem.expected.contains(" to "), "{problem:#?}");
    }
}

/// A range is checked at both ends and may not run backwards.
#[test]
fn ranges_are_checked_at_both_ends() {
    let from = "Between(\"48 ft\", \"54 ft\")";
    only(from, "Between(\"48 ft\", \"9000 ft\")", "\"9000 ft\"", Code::OutOfRange);
    only(from, "Between(\"-1 ft\", \"54 ft\")", "\"-1 ft\"", Code::OutOfRange);
    let at = "Between(\"54 ft\", \"48 ft\")";
    only(from, at, at, Code::Contradiction);
    let at = "Between(\"54 ft\")";
    only(from, at, at, Code::WrongKind);
}

/// Lists that are too long: a million stretches of pipe are no house.
#[test]
fn lists_have_an_end() {
    let many = "Corrugated(ehd: 25, length: \"9 ft\"),".repeat(2_000);
    let found = problems("trunk: [", &format!("trunk: [{many}"));
    assert_eq!(found.len(), 1, "{found:#?}");
    assert_eq!((found[0].code, found[0].path.as_str()), (Code::BadLength, "trunk"));
    let found = problems("endings: [InService]", "endings: []");
    assert_eq!((found[0].code, found[0].path.as_str()), (Code::BadLength, "marking.endings"));
    let found = problems("endings: [InService]", "endings: [InService, InService]");
    assert_eq!(found[0].path, "marking.endings[1]");
}

/// Texts: empty, endless, with control characters.
#[test]
fn texts_have_limits() {
    let title = "title: \"Natural gas and a busy kitchen\"";
    for bad in [String::new(), "x".repeat(2_001), "a\\u{7}b".to_owned()] {
        let found = problems(title, &format!("title: \"{bad}\""));
        assert_eq!(found.len(), 1, "{found:#?}");
        assert_eq!((found[0].code, found[0].path.as_str()), (Code::BadLength, "title"));
    }
    let found = problems(title, &format!("title: \"{}\"", "x".repeat(200)));
    assert_eq!((found[0].code, found[0].path.as_str()), (Code::BadLength, "title"));
}

/// All problems come at once, in the order of the text.
#[test]
fn everything_is_reported_at_once() {
    let text = natural();
    let text = spoiled(&text, "altitude: \"300 ft\"", "altitude: 300");
    let text = spoiled(&text, "fuel: Natural)", "fuel: Methane)");
    let text = spoiled(&text, "droop: \"0.35 inH2O\"", "droop: \"0.35 in\"");
    let text = spoiled(&text, "elbows: 3", "elbow: 3");
    let text = spoiled(&text, "supply: Trainee", "supply: Anybody");
    let found = check("job.ron", &text);
    let codes: Vec<_> = found.iter().map(|p| (p.code, p.path.as_str())).collect();
    assert_eq!(
        codes,
        [
            (Code::WrongKind, "site.altitude"),
            (Code::UnknownName, "gas.fuel"),
            (Code::BadQuantity, "supply.droop"),
            (Code::UnknownField, "neighbors.water_heater.line[0].elbow"),
            (Code::UnknownName, "card.supply"),
        ]
    );
    assert!(load(&text).is_err());
}

/// Syntax errors: all of them with their places, and what else can be seen beside them.
#[test]
fn syntax_errors_are_all_told() {
    let text = natural();
    let text = spoiled(&text, "fuel: Natural),", "fuel: @),");
    let text = spoiled(&text, "low_tolerance: \"0.2 inH2O\",", "low_tolerance \"0.2 inH2O\",");
    let text = spoiled(&text, "altitude: \"300 ft\"", "altitude: 300, altitde: 1");
    let found = check("job.ron", &text);
    let syntax: Vec<_> = found.iter().filter(|p| p.code == Code::Syntax).map(|p| p.line).collect();
    assert!(syntax.contains(&place_of(&text, "@").0), "{found:#?}");
    assert!(syntax.contains(&place_of(&text, "low_tolerance").0), "{found:#?}");
    assert!(found.iter().any(|p| p.code == Code::UnknownField), "{found:#?}");
    assert!(found.iter().any(|p| p.code == Code::WrongKind), "{found:#?}");
    assert_eq!(found.len(), 4, "{found:#?}");
    let twice = problems("gas: (fuel: Natural),", "gas: (fuel: Natural), gas: (fuel: Natural),");
    assert_eq!(twice.iter().filter(|p| p.code == Code::DuplicateField).count(), 1, "{twice:#?}");
}

/// Files that hold no scenario at all.
#[test]
fn what_is_no_scenario() {
    for text in ["", "  \n// nothing\n", "42", "[]", "\"Scenario\"", "Scenario", "Scenario(1, 2)"] {
        let found = check("job.ron", text);
        assert!(found.iter().all(|p| p.severity == ProblemLevel::Error), "{text}: {found:#?}");
        assert_eq!(exit_code(&found), 1, "{text}: {found:#?}");
    }
    let found = check("job.ron", "()");
    assert!(found.iter().all(|p| p.code == Code::MissingField));
    assert_eq!(found.len(), 11, "{found:#?}");
}

/// A newer version is one problem of its own, whatever else the file holds, and exit code 4.
#[test]
fn a_newer_version_is_told_apart() {
    for version in ["2", "99999999999999999999999999"] {
        let text = spoiled(&natural(), "version: 1", &format!("version: {version}"));
        let text = spoiled(&text, "gas: (fuel: Natural),", "plasma: [1, 2");
        let found = check("job.ron", &text);
        assert_eq!(found.len(), 1, "{found:#?}");
        assert_eq!(found[0].code, Code::NewerVersion);
        assert_eq!((found[0].line, found[0].column), place_of(&text, version));
        assert_eq!(exit_code(&found), 4);
    }
    let older = problems("version: 1", "version: 0");
    assert_eq!(older[0].code, Code::NoSuchVersion);
    assert_eq!(exit_code(&older), 1);
}

/// Size and nesting are bounded before anything is parsed.
#[test]
fn size_and_depth_are_bounded() {
    let large = format!("{}{}", natural(), " ".repeat(MAX_BYTES));
    let found = check("job.ron", &large);
    assert_eq!((found.len(), found[0].code), (1, Code::TooLarge));
    let deep = "(".repeat(100_000);
    let found = check("job.ron", &deep);
    assert_eq!((found.len(), found[0].code), (1, Code::TooDeep));
    assert_eq!(found[0].column, MAX_DEPTH + 1);
    for nasty in
        ["/*".repeat(60_000), "r#".repeat(60_000), "\"\\".repeat(60_000), "-".repeat(99_999)]
    {
        assert!(!check("job.ron", &nasty).is_empty());
    }
}

/// Bytes that are not text are refused at the first one that is not.
#[test]
fn bytes_that_are_not_text() {
    let mut bytes = b"Scenario(\n  title: \"".to_vec();
    bytes.extend([0xff, 0xfe, b'"']);
    let found = check_bytes("job.ron", &bytes);
    assert_eq!((found.len(), found[0].code), (1, Code::NotUtf8));
    assert_eq!((found[0].line, found[0].column), (2, 11));
    assert!(check_bytes("job.ron", natural().as_bytes()).is_empty());
}

/// The report in text and in JSON names file, place, what was found, expected and nearest.
#[test]
fn reports_carry_everything() {
    let text = spoiled(&natural(), "altitude:", "altitde:");
    let found = check("jobs/kitchen.ron", &text);
    let (line, column) = place_of(&text, "altitde");
    let shown = to_text(&found, &text);
    assert!(shown.contains("error[unknown-field]"), "{shown}");
    assert!(shown.contains(&format!("jobs/kitchen.ron:{line}:{column}")), "{shown}");
    assert!(shown.contains("nearest:  altitude"), "{shown}");
    let caret = shown.lines().find(|l| l.ends_with('^')).unwrap().find('^').unwrap() + 1;
    let source = shown.lines().find(|l| l.contains("site: (altitde")).unwrap();
    assert_eq!(source.find("altitde").unwrap() + 1, caret, "{shown}");
    let json: serde_json::Value = serde_json::from_str(&to_json(&found)).unwrap();
    assert_eq!(json[0]["code"], "unknown-field");
    assert_eq!(json[0]["severity"], "error");
    assert_eq!(json[0]["line"], line);
    assert_eq!(json[0]["nearest"], "altitude");
    assert_eq!(json[0]["path"], "site.altitde");
}
