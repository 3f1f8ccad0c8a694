//! The format describes itself completely.

use quarterturn::scenario::{
    Field, FieldDefault, Kind, Measure, Plain, Scenario, Section, builtin, explain, load,
    reference, text_hash,
};
use quarterturn::units::*;

fn each_field(section: &'static Section, visit: &mut impl FnMut(&'static Section, &'static Field)) {
    for field in section.fields {
        visit(section, field);
        inner(field.kind, visit);
    }
}

fn inner(kind: Kind, visit: &mut impl FnMut(&'static Section, &'static Field)) {
    match kind {
        Kind::Section(section) => each_field(section, visit),
        Kind::Variants(sections) => sections.iter().for_each(|it| each_field(it, visit)),
        Kind::List(kind, _) => inner(*kind, visit),
        Kind::Choice(_)
        | Kind::Drawn(_)
        | Kind::Truth
        | Kind::Text(_)
        | Kind::Quantity(..)
        | Kind::Number(_)
        | Kind::Whole(_)
        | Kind::Fault => {}
    }
}

fn parse(kind: Kind, text: &str) -> Option<f64> {
    let parsed = match kind {
        Kind::Quantity(what, _) => match what.text() {
            "pressure" => <Pressure as Measure>::parse(text),
            "gas flow" => <Flow as Measure>::parse(text),
            "heat rate" => <HeatRate as Measure>::parse(text),
            "heating value" => <HeatingValue as Measure>::parse(text),
            "length" => <Length as Measure>::parse(text),
            "volume" => <Volume as Measure>::parse(text),
            "temperature" => <Temperature as Measure>::parse(text),
            "temperature difference" => <TemperatureStep as Measure>::parse(text),
            "time" => <TimeSpan as Measure>::parse(text),
            _ => return None,
        },
        Kind::Number(_) | Kind::Whole(_) => Plain::parse(text),
        Kind::List(kind, _) => return parse(*kind, text),
        _ => return None,
    };
    Some(parsed.unwrap_or_else(|why| panic!("{text}: {why}")))
}

/// Every field is explained in a sentence; every number has limits that can be read, with the usual
/// range inside them and the default inside that.
#[test]
fn every_field_is_documented_and_bounded() {
    let mut count = 0;
    each_field(&Scenario::SECTION, &mut |section, field| {
        count += 1;
        let name = format!("{}.{}", section.name, field.name);
        let doc = field.doc.text();
        assert!(doc.trim().len() > 10 && doc.trim_end().ends_with('.'), "{name}: {doc}");
        if name == "Scenario.version" {
            return;
        }
        let Some((low, high)) = field.limits else {
            let free = matches!(field.kind, Kind::Quantity(..) | Kind::Number(_) | Kind::Whole(_));
            assert!(!free, "{name} has no limits");
            return;
        };
        let limits = (parse(field.kind, low).unwrap(), parse(field.kind, high).unwrap());
        assert!(limits.0 < limits.1, "{name}");
        if let Some((low, high, source)) = field.usual {
            let usual = (parse(field.kind, low).unwrap(), parse(field.kind, high).unwrap());
            assert!(limits.0 <= usual.0 && usual.0 <= usual.1 && usual.1 <= limits.1, "{name}");
            assert!(source.text().len() > 5, "{name}");
        }
        if let FieldDefault::Value(text) = field.default {
            let value = parse(field.kind, text).unwrap();
            assert!((limits.0..=limits.1).contains(&value), "{name}: default {text}");
        }
    });
    assert!(count > 100, "{count} fields");
}

/// The reference and `explain` know every field; a name that does not exist gets the nearest.
#[test]
fn fields_are_explained() {
    let reference = reference();
    each_field(&Scenario::SECTION, &mut |section, field| {
        assert!(reference.contains(&format!("\n## {}\n", section.name)));
        assert!(reference.contains(&format!("\n### {}\n", field.name)));
        assert!(explain(field.name).is_ok());
    });
    let text = explain("furnace.plate.made_for.inlet_min").unwrap();
    assert!(text.contains("while firing") && text.contains("1 inH2O to 20 inH2O"), "{text}");
    assert_eq!(explain("droop_flw"), Err(Some("droop_flow".to_owned())));
    assert_eq!(explain("supply.lokup"), Err(Some("supply.lockup".to_owned())));
    assert_eq!(explain("zzzz"), Err(None));
}

/// The smallest scenario: everything that may be left out is left out, and loads.
#[test]
fn defaults_are_enough() {
    let text = r##"(
        version: 1, title: "A", about: "B", gas: (fuel: Natural),
        supply: (source: Meter(), set: "7 inH2O", lockup: "7.6 inH2O", droop: "0.35 inH2O",
                 droop_flow: "175 ft3/h"),
        trunk: [Copper(size: "3/4", length: "10 ft")],
        branch: [Corrugated(ehd: 25, length: "10 ft")],
        neighbors: (
            water_heater: (input: "40000 Btu/h", line: [Steel(size: "1/2", length: "6 ft")]),
            range: (input: "60000 Btu/h", line: [Steel(size: "1/2", length: "6 ft")]),
        ),
        furnace: (plate: (
            model: "M", input_high: "80000 Btu/h", input_low: "56000 Btu/h",
            made_for: (fuel: Natural, inlet_min: "5 inH2O", inlet_max: "10.5 inH2O",
                       low: "1.7 inH2O", high: "3.5 inH2O", orifice: "#44"),
        )),
        card: (text: "T", supply_owner: "O", supply: OwnerOnly),
        marking: (endings: [InService]),
    )"##;
    let scenario = load(text).unwrap_or_else(|problems| panic!("{problems:#?}"));
    let setup = scenario.draw(1);
    approx::assert_relative_eq!(setup.supply.lockup_max_pa, 1.2 * 7.0 * PA_PER_INWC);
    approx::assert_relative_eq!(
        setup.furnace.valve.springs.first().found_turns,
        1.7 / 0.4,
        max_relative = 1e-9
    );
    approx::assert_relative_eq!(
        setup.furnace.valve.springs.top().found_turns,
        3.5 / 0.6,
        max_relative = 1e-9
    );
    // Rooms and walls are looks alone, and every seed has its own.
    let other = quarterturn::setup::Setup { scene: setup.scene, ..scenario.draw(2) };
    assert_eq!(setup, other, "nothing that can be measured varies");
}

/// A text has one hash, and another text another.
#[test]
fn the_hash_tells_texts_apart() {
    let text = builtin::JOBS[0].text;
    assert_eq!(text_hash(text).len(), 64);
    assert_ne!(text_hash(text), text_hash(&format!("{text} ")));
    // BLAKE3 of no bytes, as its authors publish it in their test vectors.
    let empty = "af1349b9f5f9a1a6a0404dea36dcc9499bcb25c9adc112b7cc9a93cae41f3262";
    assert_eq!(text_hash(""), empty);
}
