//! What an author says about the job beside the bench: step, aim, competencies, hints, note.

use super::Cross;
use crate::rules::competency;
use crate::scenario::format::Scenario;
use crate::scenario::problem::{Code, Gravity, nearest};

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    if scenario.step.low() < scenario.step.high() {
        cross.error("step", "A job stands on one step for every seat: one number.".into());
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
            cross.length(&path, format!("This has {length} characters; {most} fit."));
        }
    }
}

fn competencies(ids: &[String], cross: &mut Cross<'_, '_>) {
    for (i, id) in ids.iter().enumerate() {
        let path = format!("competencies[{i}]");
        if competency::find(id).is_none() {
            let message = format!(
                "There is no competency `{id}`: they are C01 to C22, and `quarterturn explain \
                 competencies` lists them."
            );
            cross.reader.at_path(Gravity::Error, Code::UnknownName, &path, message);
            cross.reader.suggest(nearest(id, competency::ALL.iter().map(|one| one.id)));
        } else if ids[..i].contains(id) {
            cross.error(&path, format!("`{id}` stands twice."));
        }
    }
}

/// What is read before the job, or as the first hint, must not call a fault by its name.
fn told(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let texts = [
        ("title", Some(&scenario.title)),
        ("about", Some(&scenario.about)),
        ("aim", scenario.aim.as_ref()),
        ("card.text", Some(&scenario.card.text)),
        ("hints[0]", scenario.hints.first()),
    ];
    for (path, text) in texts {
        let text = text.map(|text| text.to_lowercase()).unwrap_or_default();
        let names = scenario.faults.iter().flat_map(|it| &it.choices);
        let names = names.map(|choice| choice.fault.name());
        if let Some(name) = names.into_iter().find(|name| text.contains(&name.replace('_', " "))) {
            cross.warn(path, format!("This gives `{name}` away before the job."));
        }
    }
}
