//! A store for tests: the scenarios that come with the program, nothing kept.

use quarterturn::app::store::{Attempt, FileStore, Finished, NoJournal, Store};
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::panels::debrief::DebriefView;
use quarterturn::panels::settings::{Motion, Settings};
use quarterturn::panels::view::{Help, JobChoice, Unfinished};
use quarterturn::parts::Scene;
use quarterturn::scenario;
use quarterturn::setup::Setup;

/// The store. What is done before the window opens is in `before`.
#[derive(Default)]
pub struct TestStore {
    /// Actions with their tick, and the tick to come to.
    pub before: (Vec<(u64, Action)>, u64),
    /// Equipment and surroundings, where they are not the job's own.
    pub scene: Option<Scene>,
    /// Whether things move smoothly.
    pub moving: bool,
}

impl Store for TestStore {
    fn jobs(&self) -> Vec<JobChoice> {
        FileStore::bare().jobs()
    }

    fn unfinished(&self) -> Vec<Unfinished> {
        Vec::new()
    }

    fn seed(&mut self) -> u64 {
        7
    }

    fn settings(&self) -> Settings {
        let motion = if self.moving { Motion::Full } else { Motion::Reduced };
        Settings { motion, ..Settings::default() }
    }

    fn keep_settings(&mut self, _settings: &Settings) {}

    fn start(&mut self, id: &str, seed: u64, help: Help) -> Result<Attempt, String> {
        let found = scenario::builtin::find(id).ok_or_else(|| format!("no job `{id}`"))?;
        let scenario = scenario::load(found.text)
            .map_err(|problems| scenario::to_text(&problems, found.text))?;
        let drawn = scenario.draw(seed);
        let scene = self.scene.unwrap_or(drawn.scene);
        let mut bench = Bench::new(Setup { scene, ..drawn });
        let (before, until) = &self.before;
        let mut next = before.iter().peekable();
        while bench.tick() < *until {
            while let Some((_, action)) = next.next_if(|(tick, _)| *tick <= bench.tick()) {
                bench.apply(action).map_err(|why| format!("{action:?}: {}", why.text()))?;
            }
            bench.step();
        }
        bench.take_events();
        Ok(Attempt {
            scenario: id.into(),
            seed,
            help,
            bench,
            done: before.clone(),
            hints: Vec::new(),
            hints_taken: 0,
            journal: Box::new(NoJournal),
        })
    }

    fn resume(&mut self, id: &str) -> Result<Attempt, String> {
        Err(format!("no attempt `{id}`"))
    }

    fn debrief(&mut self, finished: &Finished<'_>) -> DebriefView {
        DebriefView { title: finished.scenario.into(), ..DebriefView::default() }
    }
}
