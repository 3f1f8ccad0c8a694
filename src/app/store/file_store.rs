//! The store of a trainee alone with a computer: the scenarios that come with the program, records
//! and choices kept in the usual places.

use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use super::results::{self, Kept};
use super::{Attempt, Finished, Journal, NoJournal, RecordJournal, Store, marked};
use crate::bench::Bench;
use crate::panels::debrief::DebriefView;
use crate::panels::settings::Settings;
use crate::panels::view::{Help, JobChoice, Unfinished};
use crate::record::{self, Header, MAX_BYTES, Record, ScenarioText, What};
use crate::rules::competency;
use crate::scenario::{self, Scenario, builtin};
use crate::units::TICKS_PER_S;

/// Most records that are looked through for one to go on with, newest first.
const LOOK_THROUGH: usize = 30;

/// Scenarios, records and choices in files; what has no path is not kept.
#[derive(Debug, Clone, Default)]
pub struct FileStore {
    settings_file: Option<PathBuf>,
    records: Option<PathBuf>,
    learner: Option<String>,
    others: Vec<(String, String)>,
}

impl FileStore {
    /// A store that keeps choices and records where this computer keeps such things.
    #[must_use]
    pub fn usual() -> Self {
        let folders = directories::ProjectDirs::from("", "", "quarterturn");
        let file = folders.as_ref().map(|dirs| dirs.config_dir().join("settings.json"));
        let records = folders.as_ref().map(|dirs| dirs.data_dir().join("records"));
        Self { settings_file: file, records, ..Self::default() }
    }

    /// A store that keeps nothing.
    #[must_use]
    pub fn bare() -> Self {
        Self::default()
    }

    /// The same store, with records in this folder.
    #[must_use]
    pub fn recording_in(self, folder: PathBuf) -> Self {
        Self { records: Some(folder), ..self }
    }

    /// The same store, with this learner's id in records.
    #[must_use]
    pub fn of(self, learner: Option<String>) -> Self {
        Self { learner, ..self }
    }

    /// The same store, knowing one more scenario by its id and text.
    #[must_use]
    pub fn knowing(mut self, id: String, text: String) -> Self {
        self.others.push((id, text));
        self
    }

    fn text_of(&self, id: &str) -> Result<&str, String> {
        let other = self.others.iter().find(|(other, _)| other == id);
        other
            .map(|(_, text)| text.as_str())
            .or_else(|| builtin::find(id).map(|found| found.text))
            .ok_or_else(|| t!("desk-no-job", id = id))
    }

    fn journal(&self, header: Header) -> Box<dyn Journal> {
        match &self.records {
            Some(folder) => Box::new(RecordJournal::begin(header, folder)),
            None => Box::new(NoJournal),
        }
    }

    /// Record files, newest first.
    fn record_files(&self) -> Vec<PathBuf> {
        let Some(folder) = &self.records else { return Vec::new() };
        let Ok(entries) = std::fs::read_dir(folder) else { return Vec::new() };
        let mut files: Vec<(SystemTime, PathBuf)> = entries
            .flatten()
            .filter(|entry| entry.path().extension().is_some_and(|ending| ending == "jsonl"))
            .filter_map(|entry| Some((entry.metadata().ok()?.modified().ok()?, entry.path())))
            .collect();
        files.sort_by(|a, b| b.cmp(a));
        files.into_iter().map(|(_, path)| path).collect()
    }
}

fn parse(text: &str) -> Result<Scenario, String> {
    scenario::load(text).map_err(|problems| scenario::to_text(&problems, text))
}

fn read(file: &Path) -> Result<Record, String> {
    let length = std::fs::metadata(file).map_err(|error| error.to_string())?.len();
    if length > u64::try_from(MAX_BYTES).unwrap_or(u64::MAX) {
        return Err(t!("desk-record-too-large").to_owned());
    }
    let bytes = std::fs::read(file).map_err(|error| error.to_string())?;
    record::read(&bytes).map_err(|fault| fault.message)
}

fn recorded(help: Help) -> record::Help {
    match help {
        Help::Coached => record::Help::Coached,
        Help::Solo => record::Help::Solo,
    }
}

impl Store for FileStore {
    fn jobs(&self) -> Vec<JobChoice> {
        let others = self.others.iter().map(|(id, text)| (id.as_str(), text.as_str()));
        let listed = builtin::LADDER.iter().map(|job| (job.id, job.text));
        let kept = self.records.as_deref().map(Kept::read).unwrap_or_default();
        others
            .chain(listed)
            .filter_map(|(id, text)| {
                let scenario = parse(text).ok()?;
                Some(JobChoice {
                    id: id.to_owned(),
                    fuel: scenario
                        .fuels()
                        .iter()
                        .map(|it| it.label().to_owned())
                        .reduce(|one, other| t!("desk-fuel-or", one = one, other = other))
                        .unwrap_or_default(),
                    step: scenario.step_of_ladder(),
                    aim: scenario.aim.unwrap_or_default(),
                    competencies: scenario
                        .competencies
                        .iter()
                        .filter_map(|one| competency::find(one))
                        .collect(),
                    standing: kept.standing(id, text),
                    title: scenario.title,
                    text: scenario.about,
                })
            })
            .collect()
    }

    fn unfinished(&self) -> Vec<Unfinished> {
        let files = self.record_files().into_iter().take(LOOK_THROUGH);
        files
            .filter_map(|file| {
                let record = read(&file).ok().filter(|record| !record.is_finished())?;
                let title = parse(&record.header.scenario.text).ok()?.title;
                let minutes = record.last_tick() / (60 * TICKS_PER_S);
                let name = file.file_name()?.to_str()?.to_owned();
                Some(Unfinished {
                    id: name,
                    title,
                    text: t!("desk-minutes-in", minutes = minutes.to_string()),
                })
            })
            .collect()
    }

    fn seed(&mut self) -> u64 {
        // A short number that a class can read aloud; what it draws is the scenario's business.
        let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
        since.as_secs() % 9_999 + 1
    }

    fn settings(&self) -> Settings {
        self.settings_file
            .as_ref()
            .and_then(|file| std::fs::read_to_string(file).ok())
            .and_then(|text| serde_json::from_str(&text).ok())
            .unwrap_or_default()
    }

    fn keep_settings(&mut self, settings: &Settings) {
        let Some(file) = &self.settings_file else { return };
        if let Err(error) = write_whole(file, settings) {
            eprintln!("{}", t!("desk-settings-not-kept", error = error.to_string()));
        }
    }

    fn start(&mut self, id: &str, seed: u64, help: Help) -> Result<Attempt, String> {
        let text = self.text_of(id)?;
        let scenario = parse(text)?;
        let bench = Bench::new(scenario.draw(seed));
        let header = Header {
            program: env!("CARGO_PKG_VERSION").to_owned(),
            scenario: ScenarioText::new(id, text),
            seed,
            learner: self.learner.clone(),
            help: Some(recorded(help)),
        };
        let journal = self.journal(header);
        Ok(Attempt {
            scenario: id.to_owned(),
            seed,
            help,
            bench,
            done: Vec::new(),
            hints: scenario.hints,
            hints_taken: 0,
            journal,
        })
    }

    fn resume(&mut self, id: &str) -> Result<Attempt, String> {
        let missing = || t!("desk-no-attempt", id = id);
        let file = self
            .record_files()
            .into_iter()
            .find(|file| file.file_name().is_some_and(|name| name == id))
            .ok_or_else(missing)?;
        let record = read(&file)?;
        let resumed = record::resume(&record, &mut |_, _| {}).map_err(|error| error.to_string())?;
        let header = record.header.clone();
        let job_hint = |what: &What| *what == What::Note(record::Note::JobHint);
        let hints_taken = record.lines.iter().filter(|line| job_hint(&line.what)).count();
        let journal =
            RecordJournal::go_on(header.clone(), &file, record.whole_bytes, resumed.writer)
                .map_err(|error| error.to_string())?
                .after_hints(hints_taken);
        let done = record
            .lines
            .iter()
            .filter_map(|line| match &line.what {
                What::Do(action) => Some((line.tick, action.clone())),
                What::Mark(_) | What::Note(_) | What::End { .. } => None,
            })
            .collect();
        let ScenarioText { id, text, .. } = header.scenario;
        // The record's own text counts, whatever became of the scenario since.
        self.others.retain(|(other, _)| *other != id);
        if self.text_of(&id) != Ok(text.as_str()) {
            self.others.push((id.clone(), text));
        }
        Ok(Attempt {
            seed: header.seed,
            help: match header.help {
                Some(record::Help::Coached) => Help::Coached,
                Some(record::Help::Solo) | None => Help::Solo,
            },
            hints: self.text_of(&id).and_then(parse).map(|it| it.hints).unwrap_or_default(),
            hints_taken,
            scenario: id,
            bench: resumed.bench,
            done,
            journal: Box::new(journal),
        })
    }

    fn debrief(&mut self, finished: &Finished<'_>) -> DebriefView {
        match self.text_of(finished.scenario).and_then(parse) {
            Ok(scenario) => {
                let (view, marks) = marked(finished, &scenario);
                if let (Some(folder), Some(marks), Ok(text)) =
                    (&self.records, marks, self.text_of(finished.scenario))
                    && let Err(error) =
                        results::add(folder, finished.scenario, text, finished.seed, &marks)
                {
                    eprintln!("{}", t!("desk-result-not-kept", error = error.to_string()));
                }
                view
            }
            Err(why) => DebriefView { result: why, ..DebriefView::default() },
        }
    }
}

/// Writes beside the file and then renames, so that there is always a whole one.
fn write_whole(file: &Path, settings: &Settings) -> std::io::Result<()> {
    if let Some(folder) = file.parent() {
        std::fs::create_dir_all(folder)?;
    }
    let beside = file.with_extension("new");
    std::fs::write(&beside, serde_json::to_string_pretty(settings)?)?;
    std::fs::rename(&beside, file)
}
