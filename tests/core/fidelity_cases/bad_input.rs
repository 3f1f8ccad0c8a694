//! Bad files: one clear problem with its place, no panic, no hang.

use quarterturn::fidelity::cases::{CaseFault, CaseProblem, run};

const GOOD: &str = r#"{"format": "quarterturn-reference-cases", "version": 1,
 "cases": [
  {"id": "a", "kind": "network",
   "nodes": [{"id": "meter", "pressure_pa": 1743.6}, {"id": "end", "demand_m3_s": 0.0005}],
   "elements": [{"id": "p", "type": "pipe", "from": "meter", "to": "end", "nominal": "1/2", "material": "steel", "length_m": 15.0}],
   "expect": {"pressures_pa": {"end": 1600}}}
 ]}"#;

fn problem(from: &str, to: &str) -> CaseProblem {
    assert!(GOOD.contains(from), "{from}");
    run(&GOOD.replacen(from, to, 1)).expect_err(to)
}

/// The good file is good: what fails below fails for what was changed.
#[test]
fn the_good_file_runs() {
    run(GOOD).unwrap();
}

/// A value put for another, and the kind, path and words of the problem it makes.
type Bad = (&'static str, &'static str, CaseFault, &'static str, &'static str);

fn told(table: &[Bad]) {
    for &(from, to, fault, path, words) in table {
        let problem = problem(from, to);
        assert_eq!((problem.fault, problem.path.as_str()), (fault, path), "{to}: {problem}");
        assert!(problem.message.contains(words), "{to}: {problem}");
        assert_eq!(problem.exit_code(), if fault == CaseFault::Newer { 4 } else { 3 });
    }
}

/// Numbers that are out of range, no numbers, or none at all, and versions of the layout.
#[test]
fn wrong_numbers_are_told() {
    let length = "cases[0].elements[0].length_m";
    told(&[
        ("15.0", "-15.0", CaseFault::OutOfRange, length, "-15"),
        ("15.0", "1e999", CaseFault::OutOfRange, length, "out of"),
        ("15.0", "\"15\"", CaseFault::WrongKind, length, "a number"),
        ("15.0", "null", CaseFault::WrongKind, length, "null"),
        ("1743.6", "1e300", CaseFault::OutOfRange, "cases[0].nodes[0].pressure_pa", "range"),
        ("\"version\": 1", "\"version\": 2", CaseFault::Newer, "version", "newer"),
        ("\"version\": 1", "\"version\": 0", CaseFault::OutOfRange, "version", "1"),
        ("\"version\": 1", "\"version\": 1.5", CaseFault::OutOfRange, "version", "whole"),
    ]);
}

/// Names that nothing bears, that two things bear, or that mean something else.
#[test]
fn wrong_names_are_told() {
    let element = "cases[0].elements[0]";
    let (from, nominal) = ("cases[0].elements[0].from", "cases[0].elements[0].nominal");
    let expected = "cases[0].expect.pressures_pa.ende";
    told(&[
        ("quarterturn-reference-cases", "cases", CaseFault::NotCases, "format", "has `quarter"),
        ("\"from\": \"meter\"", "\"from\": \"metre\"", CaseFault::Name, from, "metre"),
        ("{\"end\": 1600}", "{\"ende\": 1600}", CaseFault::Name, expected, "ende"),
        (
            "{\"id\": \"end\"",
            "{\"id\": \"meter\"",
            CaseFault::Name,
            "cases[0].nodes[1]",
            "two nodes",
        ),
        ("\"1/2\"", "\"7/16\"", CaseFault::Name, nominal, "7/16"),
        ("\"to\": \"end\"", "\"to\": \"meter\"", CaseFault::Contradiction, element, "one node"),
        (
            "\"kind\": \"network\"",
            "\"kind\": \"web\"",
            CaseFault::Name,
            "cases[0].kind",
            "transient",
        ),
        ("\"id\": \"a\"", "\"id\": \"a\", \"id\": \"b\"", CaseFault::Name, "cases[0]", "twice"),
    ]);
}

/// Fields that are not known, stand twice, have no unit or a wrong one, or are missing.
#[test]
fn wrong_fields_are_told() {
    let (element, length) = ("cases[0].elements[0]", "cases[0].elements[0].length");
    let nominal = "cases[0].elements[0].nominal";
    let demand = "cases[0].nodes[1].demmand_m3_s";
    let twice = "\"length_m\": 15.0, \"length\": \"3 m\"";
    told(&[
        ("\"demand_m3_s\"", "\"demmand_m3_s\"", CaseFault::Unknown, demand, "`demand`"),
        ("\"length_m\": 15.0", twice, CaseFault::Contradiction, length, "twice"),
        ("\"length_m\": 15.0", "\"length\": 15.0", CaseFault::WrongKind, length, "length_m"),
        ("\"length_m\": 15.0", "\"length\": \"15 yd\"", CaseFault::OutOfRange, length, "yd"),
        (", \"length_m\": 15.0", "", CaseFault::Missing, element, "`length`"),
        ("\"material\": \"steel\", ", "", CaseFault::Missing, nominal, "material"),
        (
            "{\"pressures_pa\": {\"end\": 1600}}",
            "{}",
            CaseFault::Missing,
            "cases[0].expect",
            "no pressure",
        ),
    ]);
}

/// A field that goes with another thing, a unit of another measure, a value of another shape.
#[test]
fn strange_fields_are_told() {
    told(&[
        // A unit that the field's measure does not have.
        ("length_m", "length_pa", CaseFault::Unknown, "cases[0].elements[0].length_pa", "_pa"),
        // A name that takes no unit.
        (
            "\"id\": \"p\"",
            "\"id_m\": 3",
            CaseFault::WrongKind,
            "cases[0].elements[0].id_m",
            "string",
        ),
        ("15.0", "{\"_m\": 15}", CaseFault::WrongKind, "cases[0].elements[0].length_m", "a number"),
        ("15.0", "[15]", CaseFault::WrongKind, "cases[0].elements[0].length_m", "a number"),
        // A field of another type of element, and one of another kind of case.
        (
            "\"length_m\": 15.0",
            "\"length_m\": 15.0, \"ehd\": 18",
            CaseFault::Unknown,
            "cases[0].elements[0].ehd",
            "`ehd`",
        ),
        (
            "\"kind\": \"network\"",
            "\"kind\": \"network\", \"step_s\": 1",
            CaseFault::Unknown,
            "cases[0].step_s",
            "`step`",
        ),
        ("\"steel\"", "null", CaseFault::WrongKind, "cases[0].elements[0].material", "null"),
        (
            "{\"end\": 1600}",
            "{\"end\": 1600, \"end\": 1500}",
            CaseFault::Name,
            "cases[0].expect.pressures_pa",
            "twice",
        ),
    ]);
}

/// The place is the line and column at which the value starts, counted in characters.
#[test]
fn places_are_right() {
    let found = problem("15.0", "-15.0");
    let line = GOOD.lines().nth(found.line - 1).unwrap();
    assert_eq!(found.line, 5);
    assert!(line.chars().skip(found.column - 1).collect::<String>().starts_with("15.0"));
    assert_eq!(problem("1600", "").line, 6);
    let wide = run("{\"äöü\": 1, \"format\": 3}").unwrap_err();
    assert_eq!((wide.line, wide.column), (1, 22), "{wide}");
    assert!(wide.to_string().starts_with("line 1, column 22, format: "));
}

/// What is no JSON is said to be none.
#[test]
fn syntax_is_told() {
    for text in [
        "",
        "{",
        "[",
        "nonsense",
        "{\"a\": }",
        "{\"a\": 1,}",
        "{\"a\": NaN}",
        "\u{0}",
        "{\"a\": \"\\ud800\"}",
    ] {
        let problem = run(text).unwrap_err();
        assert!(
            matches!(problem.fault, CaseFault::Syntax | CaseFault::Unknown | CaseFault::Missing),
            "{text}: {problem}"
        );
        assert_eq!(problem.exit_code(), 3);
    }
    for text in ["null", "3", "[]", "\"x\""] {
        assert_eq!(run(text).unwrap_err().fault, CaseFault::WrongKind, "{text}");
    }
    let deep = "[".repeat(100_000);
    assert_eq!(run(&deep).unwrap_err().fault, CaseFault::Syntax);
    let closed = format!("{deep}{}", "]".repeat(100_000));
    assert_eq!(run(&closed).unwrap_err().fault, CaseFault::WrongKind);
}

/// Size is bounded before any work is done.
#[test]
fn size_is_bounded() {
    let spaces = " ".repeat((4 << 20) + 1);
    assert_eq!(run(&spaces).unwrap_err().fault, CaseFault::TooLarge);
    let many = |count: usize| {
        let nodes: Vec<String> = (0..count).map(|k| format!("{{\"id\":\"{k}\"}}")).collect();
        GOOD.replacen("{\"id\": \"end\"", &format!("{},{{\"id\": \"end\"", nodes.join(",")), 1)
    };
    let problem = run(&many(1_000)).unwrap_err();
    assert_eq!((problem.fault, problem.path.as_str()), (CaseFault::TooLarge, "cases[0].nodes"));
    assert_eq!(run(&many(1_000_000)).unwrap_err().fault, CaseFault::TooLarge);
    let long = r#"{"format": "quarterturn-reference-cases", "version": 1, "cases": [
        {"id": "a", "kind": "transient", "step_s": 0.0001,
         "nodes": [{"id": "n", "volume_m3": 1}, {"id": "r", "pressure_pa": 0}],
         "elements": [{"id": "o", "type": "opening", "from": "n", "to": "r", "area_mm2": 1}],
         "expect": [{"at_s": 3600, "pressures_pa": {"n": 0}}]}]}"#;
    let problem = run(long).unwrap_err();
    assert_eq!((problem.fault, problem.path.as_str()), (CaseFault::TooLarge, "cases[0]"));
}

/// Cut anywhere, or with any byte changed, a file gives a result or a problem, never a panic.
#[test]
fn no_text_panics() {
    for end in 0..GOOD.len() {
        assert!(run(&GOOD[..end]).is_err());
    }
    for at in 0..GOOD.len() {
        for byte in [b'"', b'{', b']', b'0', b'-', b'e', b' '] {
            let mut bytes = GOOD.as_bytes().to_vec();
            bytes[at] = byte;
            let _ = run(&String::from_utf8(bytes).unwrap());
        }
    }
}
