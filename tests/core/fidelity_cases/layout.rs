//! What the layout can say, and that its page says the truth.

use std::fs;
use std::path::PathBuf;

use quarterturn::fidelity::cases::{FORMAT, VERSION, run};
use quarterturn::fidelity::{Truth, Verdict};

fn file(cases: &str) -> String {
    format!("{{\"format\": \"{FORMAT}\", \"version\": {VERSION}, \"cases\": [{cases}]}}")
}

/// Every example of the page is read and holds.
#[test]
fn examples_of_the_page_hold() {
    let page = PathBuf::from(".").join("docs/reference-cases.md");
    let page = fs::read_to_string(page).unwrap();
    let mut found = 0;
    for block in page.split("```json\n").skip(1) {
        let text = block.split("```").next().unwrap();
        let whole = if text.contains("\"format\"") { text.to_owned() } else { file(text) };
        let checks = run(&whole).unwrap_or_else(|problem| panic!("{problem}\n{text}"));
        for check in checks {
            assert_eq!(check.verdict(), Verdict::Pass, "{check:#?}");
        }
        found += 1;
    }
    assert!(found >= 5, "{found} examples");
}

/// Trade units in a text and SI in a bare number are the same case.
#[test]
fn units_are_interchangeable() {
    let si = r#"{"id": "a", "kind": "line", "inlet_pa": 124.544455, "outlet_pa": 0,
        "element": {"type": "pipe", "nominal": "1/2", "material": "steel", "length_m": 15.24},
        "expect": {"flow_m3_s": 5.6633693e-4}}"#;
    let trade = r#"{"id": "a", "kind": "line", "inlet": "0.5 inH2O", "drop": "124.544455 Pa",
        "element": {"type": "pipe", "nominal": "1/2", "material": "steel", "length": "50 ft"},
        "expect": {"flow": "72 ft3/h"}}"#;
    let (si, trade) = (run(&file(si)).unwrap(), run(&file(trade)).unwrap());
    assert!((si[0].rows[0].result / trade[0].rows[0].result - 1.0).abs() < 1e-8);
    // IFGC 2018 Table 402.4(2): 72 ft³/h at 0.5 in. w.c. through 50 ft of 1/2 in.
    assert!((trade[0].rows[0].result - 72.0).abs() < 0.8, "{:?}", trade[0].rows[0]);
}

/// A node can be fed, a network without a source of gas but that feed has a steady state, and what
/// goes in comes out.
#[test]
fn gas_can_be_fed_in() {
    let case = r#"{"id": "a", "kind": "network",
        "nodes": [{"id": "well", "demand": "-50 ft3/h"}, {"id": "tee", "demand": "20 ft3/h"},
                  {"id": "room", "pressure_pa": 0}],
        "elements": [
          {"id": "p", "type": "pipe", "from": "well", "to": "tee", "inside_mm": 15.8,
           "roughness_mm": 0.0178, "length_m": 5, "fitting_count": {"elbow-90": 2}},
          {"id": "jet", "type": "opening", "from": "tee", "to": "room", "area_mm2": 6}],
        "expect": {"flows": {"p": "50 ft3/h", "jet": "30 ft3/h"}}}"#;
    let checks = run(&file(case)).unwrap();
    for row in &checks[0].rows {
        assert!((row.result - row.reference).abs() < 1e-6, "{row:?}");
    }
}

/// A demand may begin, grow and turn round during a transient: the volume gains just what is left.
#[test]
fn demands_change_over_time() {
    let case = r#"{"id": "a", "kind": "transient", "ambient_pa": 101325, "temperature_k": 288.70555555555556,
        "nodes": [{"id": "tank", "volume_m3": 1, "start_pa": 5000}, {"id": "room", "pressure_pa": 0}],
        "elements": [{"id": "shut", "type": "opening", "from": "tank", "to": "room", "area_mm2": 0}],
        "changes": [{"at_s": 1, "node": "tank", "demand_m3_s": 0.001},
                    {"at_s": 3, "node": "tank", "demand_m3_s": -0.003}],
        "expect": [{"at_s": 1, "pressures_pa": {"tank": 5000}},
                   {"at_s": 3, "pressures_pa": {"tank": 4797.349}},
                   {"at_s": 4, "pressures_pa": {"tank": 5101.325}}]}"#;
    // dP = p_std/V · Q · dt with p_std = 101,325 Pa: 202.65 Pa out, 303.98 Pa in.
    let checks = run(&file(case)).unwrap();
    assert_eq!(checks[0].verdict(), Verdict::Pass);
    for row in &checks[0].rows {
        assert!((row.result - row.reference).abs() < 0.01, "{row:?}");
    }
}

/// A demand that no line can carry is a failed check, not a problem of the file, and ends soon.
#[test]
fn an_impossible_demand_fails() {
    let case = r#"{"id": "a", "kind": "network",
        "nodes": [{"id": "meter", "pressure_pa": 1700}, {"id": "end", "demand_m3_s": 1}],
        "elements": [{"id": "p", "type": "pipe", "from": "meter", "to": "end", "nominal": "1/2",
                      "material": "steel", "length_m": 100}],
        "expect": {"pressures_pa": {"end": 100}}}"#;
    let checks = run(&file(case)).unwrap();
    assert_eq!(checks[0].verdict(), Verdict::Fail);
    assert!(checks[0].rows[0].result.is_nan());
}

/// Groups gather rows, carry their texts and their band, and say on whose word they stand.
#[test]
fn groups_carry_their_texts() {
    let text = format!(
        r#"{{"format": "{FORMAT}", "version": 1, "truth": "published", "source": "a table",
        "groups": {{"g": {{"claim": "c", "condition": "d", "band": {{"relative": 0.1}}, "reason": "r"}}}},
        "cases": [
          {{"id": "a", "group": "g", "kind": "property", "quantity": "gamma", "gas": "natural", "expect": 1.4}},
          {{"id": "b", "group": "g", "kind": "property", "quantity": "gamma", "gas": "propane", "expect": 1.2}}]}}"#
    );
    let checks = run(&text).unwrap();
    assert_eq!(checks.len(), 1);
    let check = &checks[0];
    assert_eq!(
        (check.rows.len(), check.truth, check.verdict()),
        (2, Truth::Published, Verdict::Pass)
    );
    assert_eq!(
        (check.id.as_str(), check.claim.as_str(), check.reason.as_str()),
        ("cases.g", "c", "r")
    );
}
