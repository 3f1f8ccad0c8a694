//! What an author says about the job beside the bench: step, aim, competencies, hints, note.

use super::context::Cross;
use crate::rules::competency;
use crate::scenario::format::Scenario;
use crate::scenario::problem::{Code, ProblemLevel, nearest};

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    if scenario.step.least() < scenario.step.most() {
        cross.error("step", t!("problem-step-range").into());
    }
    lengths(scenario, cross);
    competencies(&scenario.competencies, cross);
    told(scenario, cross);
}

fn lengths(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let hints = scenario.hints.iter().enumerate();
    let hints = hints.map(|(i, hint)| (format!("hints[{i}]"), hint, "hints"));
    let aim = scenario.aim.iter().map(|aim| ("aim".to_owned(), aim, "aim"));
    let note = scenario.debrief.iter().map(|note| ("debrief".to_owned(), note, "debrief"));
    for (path, text, field) in aim.chain(note).chain(hints) {
        let length = text.chars().count();
        let most = Scenario::SECTION.text_limit(field);
        if length > most {
            cross.length(&path, t!("problem-too-long", length = length, most = most));
        }
    }
}

fn competencies(ids: &[String], cross: &mut Cross<'_, '_>) {
    // The shared book is part of the program; were it broken, its own test would say so.
    let rules = crate::rules::shared().map(|book| book.rules).unwrap_or_default();
    for (i, id) in ids.iter().enumerate() {
        let path = format!("competencies[{i}]");
        if competency::find(id).is_none() {
            let message = t!("problem-competency", id = id);
            cross.reader.at_path(ProblemLevel::Error, Code::UnknownName, &path, message);
            cross.reader.suggest(nearest(id, competency::ALL.iter().map(|one| one.id)));
        } else if ids[..i].contains(id) {
            cross.error(&path, t!("problem-twice", id = id));
        } else if !rules.iter().any(|rule| rule.claims.contains(id)) {
            cross.warn(&path, t!("problem-competency-silent", id = id));
        }
    }
}

/// What is read before the job, or as the first hint, must not call a fault by its name, nor tell it in
/// the name's own words.
fn told(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let texts = [
        ("title", Some(&scenario.title)),
        ("about", Some(&scenario.about)),
        ("aim", scenario.aim.as_ref()),
        ("card.text", Some(&scenario.card.text)),
        ("hints[0]", scenario.hints.first()),
    ];
    for (path, text) in texts {
        let text = sentences(text.map_or("", String::as_str));
        let names = scenario.faults.iter().flat_map(|it| &it.choices);
        let names = names.map(|choice| choice.fault.name());
        if let Some(name) = names.into_iter().find(|name| tells(&text, name)) {
            cross.warn(path, t!("problem-gives-away", name = name));
        }
    }
}

/// The words of each sentence of a text, in small letters.
fn sentences(text: &str) -> Vec<Vec<String>> {
    let words = |sentence: &str| {
        let words = sentence.split(|c: char| !c.is_alphanumeric());
        words.filter(|word| !word.is_empty()).map(str::to_lowercase).collect()
    };
    text.split(['.', ':', ';', '?', '!']).map(words).collect()
}

/// Words that may stand between those of a name: "the filter is quite blocked".
const BETWEEN: usize = 2;

/// Whether a few words on end hold all the words of a fault's name: two or three in any order, more
/// of them in the order of the name.
fn tells(sentences: &[Vec<String>], name: &str) -> bool {
    let parts: Vec<&str> = name.split('_').collect();
    sentences.iter().any(|words| {
        let width = (parts.len() + BETWEEN).min(words.len()).max(1);
        words.windows(width).any(|window| {
            let mut rest = window.iter();
            let in_order = parts.iter().all(|part| rest.any(|word| word == part));
            let all = parts.iter().all(|part| window.iter().any(|word| word == part));
            in_order || (parts.len() <= 3 && all)
        })
    })
}

#[cfg(test)]
mod tests {
    use super::{sentences, tells};

    #[test]
    fn names_are_found_in_other_words() {
        for (text, name, told) in [
            ("The regulator is undersized.", "undersized_regulator", true),
            ("it is an undersized regulator", "undersized_regulator", true),
            ("undersized_regulator. The house is cold.", "undersized_regulator", true),
            ("The supply is set low", "supply_set_low", true),
            ("The high stage is set high.", "high_stage_set_high", true),
            ("Water stands in the meter hose", "water_in_meter_hose", true),
            ("Read the high stage. Set what is off, high or low.", "high_stage_set_high", false),
            ("Read supply and both stages, and set what is low.", "supply_set_low", false),
            ("The hose is on the meter.", "water_in_meter_hose", false),
            ("Look at the filter before it is blocked by a box.", "blocked_vent", false),
            ("", "cold_tank", false),
        ] {
            assert_eq!(tells(&sentences(text), name), told, "{text}");
        }
    }
}
