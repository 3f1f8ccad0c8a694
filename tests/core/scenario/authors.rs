//! What helps an author who has only the documents: hints, nearest names, endings that cannot be.

use quarterturn::scenario::{Code, Problem, ProblemLevel, check, guide, to_text};

use super::{natural, problems, spoiled};

/// The healthy natural-gas house with these faults, owner and endings.
fn job(faults: &str, supply: &str, endings: &str) -> String {
    let text = guide::SMALLEST.replace("supply: Trainee", &format!("supply: {supply}"));
    let to = format!("faults: [{faults}],\n    marking: (endings: [{endings}])");
    spoiled(&text, "marking: (endings: [InService])", &to)
}

fn endings_warned(faults: &str, supply: &str, endings: &str) -> Vec<Problem> {
    let text = job(faults, supply, endings);
    let found = check("job.ron", &text);
    assert!(
        found.iter().all(|it| it.severity == ProblemLevel::Warning),
        "{}",
        to_text(&found, &text)
    );
    found.into_iter().filter(|it| it.path.starts_with("marking.endings")).collect()
}

/// An ending that none of the faults asks for is warned of, and so is one that leaves a fault which the
/// trainee has no remedy for; what the catalogue calls right is not.
#[test]
fn slow_endings_that_cannot_be_right_are_warned_of() {
    for (faults, supply, endings, word) in [
        ("high_stage_set_high", "OwnerOnly", "SupplyOwnerCalled", "not found out of its limits"),
        ("high_stage_set_high", "Trainee", "InService, SupplyOwnerCalled", "owner of the supply"),
        ("plugged_orifice", "Trainee", "ShutOff", "no fault of the list that shows asks for it"),
        ("low_main_pressure", "Trainee", "InService", "call the owner of the supply"),
        // In a tight house nothing smells, more or less.
        ("faded_odorant", "Trainee", "SupplyOwnerCalled", "no fault of the list that shows"),
        ("propane_orifices_on_natural", "Trainee", "InService", "List `ShutOff` beside it"),
        ("undersized_trunk", "OwnerOnly", "InService", "List `SupplyOwnerCalled` beside it"),
        ("undersized_regulator", "OwnerOnly", "InService", "the supply is its owner's"),
        (
            "OneOf([high_stage_set_high, undersized_regulator])",
            "OwnerOnly",
            "InService",
            "where undersized_regulator is drawn",
        ),
    ] {
        let found = endings_warned(faults, supply, endings);
        assert_eq!(found.len(), 1, "{faults}: {found:#?}");
        assert!(found[0].message.contains(word), "{faults}: {}", found[0].message);
    }
    for (faults, supply, endings) in [
        ("high_stage_set_high", "OwnerOnly", "InService"),
        ("undersized_regulator", "Trainee", "InService"),
        ("undersized_regulator, high_stage_set_high", "OwnerOnly", "SupplyOwnerCalled"),
        ("holed_exchanger", "Trainee", "ShutOff"),
        ("loose_inlet_plug", "Trainee", "InService, ShutOff"),
        ("faded_odorant", "Trainee", "InService"),
        ("undersized_trunk", "Trainee", "InService"),
        (
            "OneOf([high_stage_set_high, low_main_pressure])",
            "Trainee",
            "InService, SupplyOwnerCalled",
        ),
        ("", "Trainee", "SupplyOwnerCalled"),
    ] {
        let found = endings_warned(faults, supply, endings);
        assert!(found.is_empty(), "{faults}: {found:#?}");
    }
    // A supply that its own figures put out of its limits is its owner's, whatever the fault.
    let text = job("high_stage_set_high", "OwnerOnly", "SupplyOwnerCalled")
        .replace("lockup: \"7.6 inH2O\",", "lockup: \"7.6 inH2O\", found: \"5.2 inH2O\",");
    let found = check("job.ron", &text);
    assert!(found.iter().all(|it| it.path != "marking.endings[0]"), "{found:#?}");
}

/// A word for a field that the format calls otherwise leads to it; a slip still to the nearest name.
#[test]
fn other_words_lead_to_their_field() {
    for (wrong, right) in
        [("goal", "aim"), ("objective", "aim"), ("tips", "hints"), ("aimm", "aim")]
    {
        let found = problems("step: 2,", &format!("step: 2, {wrong}: \"x\","));
        let told = found.iter().find(|it| it.code == Code::UnknownField).unwrap();
        assert_eq!(told.nearest.as_deref(), Some(right), "{wrong}");
    }
    let found = problems("supply_owner:", "owner:");
    let told = found.iter().find(|it| it.code == Code::UnknownField).unwrap();
    assert_eq!(told.nearest.as_deref(), Some("supply_owner"));
}

/// A number without its unit: the message begins with what it is and names the units.
#[test]
fn a_missing_unit_names_the_units() {
    for bad in ["set: 7.0", "set: \"7.0\""] {
        let found = problems("set: \"7.0 inH2O\"", bad);
        assert_eq!(found.len(), 1, "{found:#?}");
        let message = &found[0].message;
        assert!(message.starts_with("A pressure needs its unit, one of inH2O, kPa"), "{message}");
        assert!(message.contains("\"7.0 inH2O\""), "{message}");
    }
    let text = job("supply_set_low(2.75)", "Trainee", "InService");
    let found = check("job.ron", &text);
    assert!(found[0].message.starts_with("A pressure needs its unit"), "{found:#?}");
}

/// A missing quote is pointed out first, as a hint, and what it tore apart is not told as a wrong number.
#[test]
fn a_missing_quote_is_pointed_out_first() {
    for bad in ["set: \"7.0 inH2O,", "set: 7.0 inH2O\","] {
        let text = spoiled(&natural(), "set: \"7.0 inH2O\",", bad);
        let found = check("job.ron", &text);
        let hint = found.iter().position(|it| it.message.contains("a quote may be missing"));
        let hint = &found[hint.unwrap_or_else(|| panic!("{bad}: {found:#?}"))];
        let line = text[..text.find(bad).unwrap()].matches('\n').count() + 1;
        assert_eq!(
            (hint.severity, hint.code, hint.line),
            (ProblemLevel::Warning, Code::Syntax, line)
        );
        assert!(found.iter().all(|it| it.line >= line), "{found:#?}");
        assert!(found.iter().any(|it| it.severity == ProblemLevel::Error));
        assert!(found.iter().all(|it| it.code != Code::BadQuantity), "{found:#?}");
    }
    // A text of two lines is none in a file that reads.
    let text = natural().replace("about: \"", "about: \"Two\nlines. ");
    assert!(check("job.ron", &text).iter().all(|it| it.code != Code::Syntax));
}

/// An orifice that does not fit: the drills that do. Four of 80,000 Btu/h at 3.5 in. w.c. take #44 by
/// NFPA 54 Annex E (1658.5·K·A·√(H/SG) with K = 0.85: 20,400 Btu/h each).
#[test]
fn the_drills_that_fit_are_named() {
    let text = guide::SMALLEST.replace("#44", "#50");
    let found = check("job.ron", &text);
    let told = found.iter().find(|it| it.path == "furnace.plate.made_for.orifice").unwrap();
    assert_eq!(told.severity, ProblemLevel::Error);
    assert!(told.message.contains("#44 (0.0860 in, 2.18 mm"), "{}", told.message);
    let text = guide::SMALLEST.replace("#44", "#42");
    let found = check("job.ron", &text);
    let told = found.iter().find(|it| it.path == "furnace.plate.made_for.orifice").unwrap();
    assert_eq!(told.severity, ProblemLevel::Warning);
    assert!(told.message.contains("nearest drills: #44"), "{}", told.message);
}

/// A rule that does not exist: the error names the nearest, and the command that lists them.
#[test]
fn an_unknown_rule_names_the_command() {
    let text = spoiled(&natural(), "marking: (", "marking: (rules: [(id: \"left-outside\")], ");
    let found = check("job.ron", &text);
    let message = &found[0].message;
    assert!(message.contains("Do you mean `left-outside-band`?"), "{message}");
    assert!(message.contains("quarterturn explain rules"), "{message}");
}
