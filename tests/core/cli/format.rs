//! `explain`, and the page on the format made by it.

use std::fs;

use quarterturn::rules::{Grade, competency, shared};
use quarterturn::scenario::{check, guide, to_text};
use serde_json::Value;

use super::{expect, run_in};

/// The pages in `docs` are what the program writes now.
#[test]
fn the_pages_are_fresh() {
    let folder = tempfile::tempdir().unwrap();
    expect(folder.path(), &["explain", "--write", "."], 0);
    for page in ["scenario-format.md", "coverage.md"] {
        let made = fs::read_to_string(folder.path().join(page)).unwrap();
        let kept = fs::read_to_string(format!("docs/{page}")).unwrap_or_default();
        let differs = made.lines().zip(kept.lines()).find(|(made, kept)| made != kept);
        assert!(made == kept, "make it anew with `quarterturn explain --write docs`: {differs:?}");
    }
    expect(folder.path(), &["explain", "supply", "--write", "."], 2);
    expect(folder.path(), &["explain", "--json", "--write", "."], 2);
}

/// The smallest scenario stands on the page whole, passes the strictest check, and previews as a
/// bench that works.
#[test]
fn the_smallest_scenario_is_whole() {
    assert!(guide::page().contains(guide::SMALLEST));
    let problems = check("smallest.ron", guide::SMALLEST);
    assert!(problems.is_empty(), "{}", to_text(&problems, guide::SMALLEST));
    assert!(guide::SMALLEST.lines().count() <= 45);
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("smallest.ron"), guide::SMALLEST).unwrap();
    let out = expect(folder.path(), &["preview", "smallest.ron", "--json"], 0).out;
    let json: Value = serde_json::from_str(&out).unwrap();
    for i in 1..4 {
        assert_eq!(json["states"][i]["missed"], Value::Null, "{out}");
    }
}

/// Fields are told by path, by a path with an index as `check` prints it, and by name; faults too;
/// programs get JSON; a slip gets the nearest name.
#[test]
fn fields_and_faults_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let tell = |args: &[&str]| expect(folder.path(), &[&["explain"], args].concat(), 0).out;
    assert!(tell(&["trunk[0].length"]).starts_with("trunk.length\n"));
    assert!(tell(&["faults.plugged_orifice"]).starts_with("faults.plugged_orifice\n"));
    assert!(tell(&["site"]).contains("default: `()`, the defaults of its fields"));
    let json: Value = serde_json::from_str(&tell(&["supply.lockup", "--json"])).unwrap();
    assert_eq!(json[0]["path"], "supply.lockup");
    assert_eq!(json[0]["required"], true);
    assert_eq!(json[0]["limits"][1], "40 inH2O");
    let all: Value = serde_json::from_str(&tell(&["--json"])).unwrap();
    assert!(all.as_array().unwrap().len() > 150);
    for (wrong, near) in [
        ("supply.lokup", "supply.lockup"),
        ("faults.pluged_orifice", "faults.plugged_orifice"),
        ("pluged_orifice", "plugged_orifice"),
    ] {
        let refused = expect(folder.path(), &["explain", wrong], 2);
        assert!(refused.err.contains(&format!("nearest: {near}")), "{}", refused.err);
    }
    let refused = expect(folder.path(), &["faults", "pluged_orifice"], 2);
    assert!(refused.err.contains("nearest: plugged_orifice"), "{}", refused.err);
}

/// Names of any shape are refused in one short line, at once.
#[test]
fn wild_names_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let long = "x.".repeat(40_000);
    for name in
        ["", " ", ".", "[", "]]]", "a[", "\u{1b}[31m", "faults.", "..", "é\u{10ffff}", &long]
    {
        for command in ["explain", "faults"] {
            let ran = run_in(folder.path(), &[command, name]);
            assert_eq!(ran.code, 2, "{command} {name:.20}: {}", ran.err);
            assert!(ran.err.len() < 400 && !ran.err.contains('\u{1b}'), "{}", ran.err);
        }
    }
}

/// A warning is no finding unless `--strict` says so; the whole place is underlined.
#[test]
fn strict_counts_warnings() {
    let folder = tempfile::tempdir().unwrap();
    let odd = guide::SMALLEST.replace("length: \"52 ft\"", "length: \"320 ft\"");
    fs::write(folder.path().join("odd.ron"), odd).unwrap();
    let text = expect(folder.path(), &["check", "odd.ron"], 0).out;
    assert!(text.contains("warning[unusual]"), "{text}");
    assert!(text.lines().any(|line| line.ends_with(" ^^^^^^^^")), "{text}");
    assert!(text.contains("1 ft to 200 ft (common practice"), "{text}");
    expect(folder.path(), &["check", "odd.ron", "--strict"], 1);
    fs::write(folder.path().join("good.ron"), guide::SMALLEST).unwrap();
    expect(folder.path(), &["check", "good.ron", "--strict"], 0);
}

/// Rules and competencies are told by id, all of them by name of the list, and to programs; the page has
/// each of them.
#[test]
fn rules_and_competencies_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let tell = |args: &[&str]| expect(folder.path(), &[&["explain"], args].concat(), 0).out;
    let rule = tell(&["left-outside-band"]);
    for word in [
        "left-outside-band\n",
        "A stage left outside the plate",
        "harm: ResultWrong, Major; 8 points",
        "LeftUnsafe when the furnace is left to burn more than 10 %",
        "essential: Both stages set inside the plate",
        "why: Too much gas overheats",
        "practise: Set both",
    ] {
        assert!(rule.contains(word), "{word}: {rule}");
    }
    assert!(tell(&["C05"]).contains("Chooses a sound instrument"));
    assert!(tell(&["c05"]).starts_with("C05\n"));
    let json: Value = serde_json::from_str(&tell(&["left-outside-band", "--json"])).unwrap();
    assert_eq!(
        (&json[0]["points"], &json[0]["essential"]),
        (&8.0.into(), &"SettingsInPlate".into())
    );
    let (rules, competencies, page) = (tell(&["rules"]), tell(&["competencies"]), guide::page());
    let book = shared().unwrap();
    for rule in &book.rules {
        assert!(rules.contains(&rule.id) && rules.contains(&rule.title), "{}", rule.id);
        let points = book.charge(rule, Grade::Usual).points;
        let row = format!("| `{}` | {} | {points} |", rule.id, rule.harm.id());
        assert!(page.contains(&row), "{row}");
    }
    let scoring = tell(&["scoring"]);
    let told = [&book.scoring.date, &book.scoring.given, &book.scoring.caught.means];
    assert!(told.iter().all(|it| scoring.contains(*it) && page.contains(*it)), "{scoring}");
    for row in &book.scoring.harms {
        assert!(scoring.contains(&row.why) && page.contains(&row.why), "{}", row.harm.id());
    }
    for one in &competency::ALL {
        assert!(
            competencies.contains(one.criterion()) && page.contains(one.criterion()),
            "{}",
            one.id
        );
    }
    let refused = expect(folder.path(), &["explain", "left-outside-bend"], 2);
    assert!(refused.err.contains("nearest: left-outside-band"), "{}", refused.err);
    assert!(refused.err.contains("quarterturn explain rules"), "{}", refused.err);
}

/// What the page says of lengths and of ranges is what the check holds to.
#[test]
fn the_limits_told_are_the_limits_held() {
    let page = guide::page();
    let chapter = |name: &str| {
        let from = page.find(&format!("\n#### {name}\n")).unwrap();
        let rest = &page[from + 5..];
        rest[..rest.find("\n#").unwrap()].to_owned()
    };
    assert!(chapter("title").contains("at most 120 characters"));
    assert!(chapter("hints").contains("a list of at most 6: a text of at most 400 characters"));
    for fixed in ["version", "step", "weight"] {
        let told = chapter(fixed);
        assert!(told.contains("the same for every seed") && !told.contains("Between"), "{told}");
    }
    for (name, most) in [("title", 120), ("aim", 240), ("debrief", 1600)] {
        for (length, refused) in [(most, false), (most + 1, true)] {
            let text = "x".repeat(length);
            let job = match name {
                "title" => guide::SMALLEST.replace("First readings", &text),
                _ => guide::SMALLEST
                    .replace("version: 1,", &format!("version: 1, {name}: \"{text}\",")),
            };
            let found = check("job.ron", &job);
            assert_eq!(
                found.iter().any(|it| it.path == name),
                refused,
                "{name} {length}: {found:?}"
            );
        }
    }
}

/// The table of drills: NFPA 54 Annex E, Q = 1658.5·K·A·√(H/SG) ft³/h, K = 0.85. Within 1 % and the
/// rounding to hundreds.
#[test]
fn the_drills_of_the_page_follow_annex_e() {
    let page = guide::page();
    let rows: Vec<Vec<f64>> = page
        .lines()
        .filter_map(|line| line.strip_prefix("| #"))
        .map(|line| line.split('|').filter_map(|cell| cell.trim().parse().ok()).collect())
        .collect();
    assert!(rows.len() >= 30);
    for row in rows {
        let area = std::f64::consts::FRAC_PI_4 * row[1] * row[1];
        let rate = |inwc: f64, gravity: f64| 1658.5 * 0.85 * area * (inwc / gravity).sqrt();
        for (told, want) in
            [(row[3], 1030.0 * rate(3.5, 0.60)), (row[4], 2516.0 * rate(10.0, 1.52))]
        {
            assert!((told - want).abs() < 50.0 + 0.01 * want, "{row:?}: {want}");
        }
        assert!((row[2] - 25.4 * row[1]).abs() < 0.0051, "{row:?}");
    }
}

/// Every line of the script that the page shows can be read as one.
#[test]
fn the_script_on_the_page_reads() {
    let page = guide::page();
    let block = page.split("```text\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    let script = quarterturn::technician::script::read("page.script", block).unwrap();
    assert_eq!(script.steps.len(), block.lines().count());
}
