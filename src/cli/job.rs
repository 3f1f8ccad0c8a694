//! From a word on the command line to a scenario.

use std::path::Path;

use super::exit::{Exit, Trouble};
use super::files;
use crate::record::{Header, MAX_NAME, ScenarioText};
use crate::scenario::builtin::{self, Builtin};
use crate::scenario::{self, Scenario, exit_code, to_text};

/// A scenario that is to be played.
#[derive(Debug, Clone)]
pub struct Job {
    /// Its id, or its file's name.
    pub id: String,
    /// The RON text of the scenario, as it goes into the record.
    pub text: String,
    /// What the text says.
    pub scenario: Scenario,
}

impl Job {
    /// The scenario of a name: an id that comes with the program, or a file.
    ///
    /// # Errors
    /// With [`Exit::Files`] when there is neither, [`Exit::Findings`] when the file is no sound
    /// scenario, [`Exit::Newer`] when it is written for a newer program.
    pub fn find(name: &str) -> Result<Self, Trouble> {
        let (id, text) = match builtin::find(name) {
            Some(one) => (one.id.to_owned(), one.text.to_owned()),
            None => from_file(name)?,
        };
        match scenario::load(&text) {
            Ok(scenario) => Ok(Self { id, text, scenario }),
            Err(mut problems) => {
                for problem in &mut problems {
                    name.clone_into(&mut problem.file);
                }
                let exit = Exit::from_code(exit_code(&problems));
                Err(Trouble::new(exit, to_text(&problems, &text)))
            }
        }
    }

    /// Whether it comes with the program, word for word.
    #[must_use]
    pub fn is_builtin(&self) -> bool {
        builtin::find(&self.id).is_some_and(|one| one.text == self.text)
    }

    /// The header of a record of this job.
    #[must_use]
    pub fn header(&self, seed: u64, learner: Option<String>) -> Header {
        Header {
            program: env!("CARGO_PKG_VERSION").to_owned(),
            scenario: ScenarioText::new(&self.id, &self.text),
            seed,
            learner,
            // Nobody was helped who plays without a window.
            help: None,
        }
    }
}

/// A learner's id as it was given.
///
/// # Errors
/// When a record could not hold it.
pub(super) fn learner(text: &str) -> Result<String, String> {
    let plain = !text.is_empty() && !text.chars().any(char::is_control);
    if plain && text.chars().count() <= MAX_NAME {
        Ok(text.to_owned())
    } else {
        Err(t!("job-learner", most = MAX_NAME))
    }
}

fn from_file(name: &str) -> Result<(String, String), Trouble> {
    let path = Path::new(name);
    if !path.exists() {
        let ids: Vec<_> = builtin::LADDER.iter().map(id).collect();
        let message = t!("job-unknown", name = name, names = ids.join(", "));
        return Err(Trouble::new(Exit::Files, message));
    }
    let bytes = files::read(path, scenario::MAX_BYTES)?;
    let text = String::from_utf8(bytes).map_err(|error| {
        let problems = scenario::check_bytes(name, error.as_bytes());
        Trouble::new(Exit::from_code(exit_code(&problems)), to_text(&problems, ""))
    })?;
    let id = path.file_stem().map_or(name.into(), |stem| stem.to_string_lossy());
    let id: String = id.chars().filter(|c| !c.is_control()).take(100).collect();
    Ok((if id.is_empty() { "scenario".to_owned() } else { id }, text))
}

fn id(one: &Builtin) -> &'static str {
    one.id
}
