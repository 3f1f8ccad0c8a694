//! Other words for the format's fields: what an author writes who has not looked it up.

use super::schema::Section;

/// A word, and the fields that it may stand for.
const SYNONYMS: &[(&str, &[&str])] = &[
    ("goal", &["aim"]),
    ("objective", &["aim"]),
    ("purpose", &["aim"]),
    ("learning_goal", &["aim"]),
    ("name", &["title", "model"]),
    ("heading", &["title"]),
    ("description", &["about", "text"]),
    ("summary", &["about"]),
    ("intro", &["about"]),
    ("task", &["text"]),
    ("instructions", &["text"]),
    ("complaint", &["text"]),
    ("difficulty", &["step"]),
    ("level", &["step"]),
    ("stage", &["step"]),
    ("skills", &["competencies"]),
    ("tips", &["hints"]),
    ("clues", &["hints"]),
    ("note", &["debrief"]),
    ("notes", &["debrief"]),
    ("feedback", &["debrief"]),
    ("explanation", &["debrief"]),
    ("location", &["site"]),
    ("place", &["site"]),
    ("elevation", &["altitude"]),
    ("height", &["altitude"]),
    ("temperature", &["outside", "inside"]),
    ("outdoor", &["outside"]),
    ("indoor", &["inside"]),
    ("regulator", &["supply"]),
    ("main", &["trunk", "upstream"]),
    ("pipes", &["trunk", "line"]),
    ("piping", &["trunk", "line"]),
    ("pipe", &["trunk", "line"]),
    ("appliances", &["neighbors"]),
    ("others", &["neighbors"]),
    ("neighbours", &["neighbors"]),
    ("boiler", &["water_heater"]),
    ("stove", &["range"]),
    ("cooker", &["range"]),
    ("meter", &["manometer", "source"]),
    ("gauge", &["manometer"]),
    ("defects", &["faults"]),
    ("problems", &["faults"]),
    ("errors", &["faults"]),
    ("job", &["card"]),
    ("order", &["card"]),
    ("marks", &["marking"]),
    ("scoring", &["marking"]),
    ("ending", &["endings"]),
    ("outcome", &["endings"]),
    ("outcomes", &["endings"]),
    ("result", &["endings"]),
    ("duties", &["required"]),
    ("owner", &["supply_owner"]),
    ("points", &["weight"]),
    ("enabled", &["applies"]),
    ("nameplate", &["plate"]),
    ("rating_plate", &["plate"]),
    ("label", &["conversion"]),
    ("pressure", &["set", "high"]),
    ("set_pressure", &["set"]),
    ("setting", &["set", "settings"]),
    ("as_found", &["found"]),
    ("lock_up", &["lockup"]),
    ("drill", &["orifice"]),
    ("jet", &["orifice"]),
    ("nozzle", &["orifice"]),
    ("diameter", &["size", "ehd", "orifice_size"]),
    ("nominal", &["size"]),
    ("bends", &["elbows"]),
    ("fittings", &["elbows", "extra_fittings"]),
    ("input", &["input_high"]),
    ("tolerance", &["high_tolerance"]),
    ("calorific_value", &["heating_value"]),
    ("density", &["specific_gravity"]),
    ("fill", &["level"]),
    ("volume", &["capacity"]),
];

/// The field of a section that a word stands for, if it is one of the words above.
pub(super) fn meant(word: &str, section: &Section) -> Option<String> {
    let lower = word.to_lowercase();
    let (_, fields) = SYNONYMS.iter().find(|(one, _)| *one == lower)?;
    let known = |name: &&&str| section.fields.iter().any(|field| field.name == **name);
    fields.iter().find(known).map(|name| (*name).to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::format::Scenario;
    use crate::scenario::{Kind, all_fields};

    /// Each word leads to fields that the format has, and stands once.
    #[test]
    fn words_lead_somewhere() {
        let fields = all_fields();
        let has = |name: &str| fields.iter().any(|it| it.path.rsplit('.').next() == Some(name));
        for (i, (word, names)) in SYNONYMS.iter().enumerate() {
            assert!(names.iter().all(|name| has(name)), "{word}");
            assert!(SYNONYMS[..i].iter().all(|(before, _)| before != word), "{word} twice");
        }
        assert_eq!(meant("Goal", &Scenario::SECTION).as_deref(), Some("aim"));
        let card = Scenario::SECTION.fields.iter().find(|field| field.name == "card").unwrap();
        let Kind::Section(card) = card.kind else { panic!("the card is a section") };
        assert_eq!(meant("goal", card), None);
        assert_eq!(meant("owner", card).as_deref(), Some("supply_owner"));
    }
}
