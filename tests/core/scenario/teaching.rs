//! What an author says about a job beside its bench.

use quarterturn::rules::{competency, shared};
use quarterturn::scenario::{Code, ProblemLevel, Step, check, load};

use super::{natural, problems, spoiled};

/// Each slip is told at its place.
#[test]
fn slips_are_told() {
    let long = |count: usize| "x".repeat(count);
    let aim = format!("aim: \"{}\", about: ", long(241));
    let hint = format!("hints: [\"a\", \"{}\"], about: ", long(401));
    let note = format!("debrief: \"{}\", about: ", long(1601));
    let cases = [
        ("step: 2,", "step: 0,", "step", Code::OutOfRange),
        ("step: 2,", "step: 5,", "step", Code::OutOfRange),
        ("step: 2,", "step: Between(1, 2),", "step", Code::Contradiction),
        ("\"C04\"", "\"C23\"", "competencies[0]", Code::UnknownName),
        ("\"C04\"", "\"C05\"", "competencies[1]", Code::Contradiction),
    ];
    for (from, to, path, code) in cases {
        let found = problems(from, to);
        let told = found
            .iter()
            .any(|p| (p.path.as_str(), p.code, p.severity) == (path, code, ProblemLevel::Error));
        assert!(told, "{to}: {found:#?}");
    }
    for (new, path) in [(&aim, "aim"), (&hint, "hints[1]"), (&note, "debrief")] {
        let found = check("job.ron", &spoiled(&bare(), "about: ", new));
        let told = found.iter().any(|p| (p.path.as_str(), p.code) == (path, Code::BadLength));
        assert!(told, "{path}: {found:#?}");
    }
    let seven = "hints: [\"a\", \"b\", \"c\", \"d\", \"e\", \"f\", \"g\"], about: ";
    let found = check("job.ron", &spoiled(&bare(), "about: ", seven));
    assert!(found.iter().any(|p| (p.path.as_str(), p.code) == ("hints", Code::BadLength)));
}

/// The natural-gas job without its teaching fields, as an older author wrote it.
fn bare() -> String {
    let text = natural();
    let from = text.find("    step: 2,").unwrap();
    let to = text.find("    site:").unwrap();
    format!("{}{}", &text[..from], &text[to..])
}

/// A scenario without the teaching fields reads as before, on the first step.
#[test]
fn older_scenarios_still_read() {
    let scenario = load(&bare()).unwrap();
    assert_eq!(scenario.step_of_ladder(), Step::Read);
    assert_eq!((scenario.aim, scenario.debrief), (None, None));
    assert!(scenario.competencies.is_empty() && scenario.hints.is_empty());
    let [with, without] = [natural(), bare()].map(|text| load(&text).unwrap().draw(5));
    assert_eq!(with, without, "what is said of a job changes nothing on its bench");
}

/// A fault's name in what is read before the job is warned of; in the note for after it is not.
#[test]
fn a_fault_given_away_is_warned_of() {
    for (from, path) in
        [("aim: \"", "aim"), ("hints: [\n        \"", "hints[0]"), ("text: \"", "card.text")]
    {
        let text = spoiled(&natural(), from, &format!("{from}A kinked connector. "));
        let text =
            spoiled(&text, "    card: (", "    faults: [kinked_connector(0.8)],\n    card: (");
        let found = check("job.ron", &text);
        let told = found.iter().any(|p| p.path == path && p.severity == ProblemLevel::Warning);
        assert!(told, "{path}: {found:#?}");
    }
    let text = spoiled(&natural(), "debrief: \"", "debrief: \"A kinked connector. ");
    let text = spoiled(&text, "    card: (", "    faults: [kinked_connector(0.8)],\n    card: (");
    assert!(check("job.ron", &text).is_empty());
}

/// Every rule speaks for competencies of the table, and each has a name and a sentence.
#[test]
fn rules_name_competencies_of_the_table() {
    let ids: Vec<String> = (1..=22).map(|number| format!("C{number:02}")).collect();
    assert!(competency::ALL.iter().map(|one| one.id).eq(ids.iter().map(String::as_str)));
    for one in &competency::ALL {
        assert!(
            one.criterion().ends_with('.') && one.criterion().len() > 40 && !one.name().is_empty()
        );
    }
    for rule in shared().unwrap().rules {
        for claim in &rule.claims {
            assert!(competency::find(claim).is_some(), "{}: {claim}", rule.id);
        }
    }
}

/// A competency that no rule speaks for is warned of: no marks could show it.
#[test]
fn a_silent_competency_is_warned_of() {
    let found = problems("\"C04\"", "\"C17\"");
    let told =
        found.iter().any(|it| it.path == "competencies[0]" && it.severity == ProblemLevel::Warning);
    assert!(told, "{found:#?}");
}

/// A text is shown as it stands, and the heat on the card is the one in the pipes.
#[test]
fn the_card_says_what_is_there() {
    let found =
        check("job.ron", &spoiled(&natural(), "elevation 300 ft", "elevation Between(1 ft, 2 ft)"));
    assert!(found.iter().any(|it| it.path == "card.text" && it.message.contains("as it stands")));
    let found = check("job.ron", &spoiled(&natural(), "1,030 Btu/ft3", "1,100 Btu/ft3"));
    assert!(found.iter().any(|it| it.path == "card.text" && it.message.contains("1030 Btu/ft3")));
    assert_eq!(found.iter().filter(|it| it.message.contains("1100 Btu/ft3")).count(), 1);
    // In other units, without the field, and a field that the text or the gas does not bear out.
    let bare = spoiled(&natural(), "heating_value: (natural: \"1030 Btu/ft3\"),", "");
    let found = check("job.ron", &bare);
    assert!(found.iter().any(|it| it.path == "card.text" && it.message.contains("states nothing")));
    let metric = spoiled(&natural(), "1,030 Btu/ft3", "38.4 MJ/m3");
    assert!(check("job.ron", &metric).is_empty());
    let found = check("job.ron", &spoiled(&natural(), "1,030 Btu/ft3", "30 MJ/m3"));
    assert!(found.iter().any(|it| it.path == "card.text" && it.message.contains("805 Btu/ft3")));
    let other = spoiled(&natural(), "natural: \"1030 Btu", "natural: \"1100 Btu");
    let found = check("job.ron", &other);
    let paths: Vec<&str> = found.iter().map(|it| it.path.as_str()).collect();
    assert_eq!(paths, ["card.text", "card.text", "card.heating_value.natural"], "{found:?}");
    let range = spoiled(
        &natural(),
        "(natural: \"1030 Btu/ft3\")",
        "(natural: Between(\"1000 Btu/ft3\", \"1060 Btu/ft3\"))",
    );
    assert!(check("job.ron", &range).iter().any(|it| it.path == "card.heating_value.natural"));
    let both = spoiled(&natural(), "1,030 Btu/ft3", "1,030 Btu/ft3, propane 2,516");
    assert!(check("job.ron", &both).is_empty());
}
