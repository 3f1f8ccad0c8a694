//! Playing a script.

use super::super::drive::Player;
use super::order::{Order, Otherwise, Script, Step};
use crate::hands::action::Action;
use crate::hands::refusal::Refusal;
use crate::parts::{Phase, Port, Reading, Stage};
use crate::procedure::{Wait, Waiting};
use crate::senses::seen::Seen;
use crate::units::TICK_S;

/// Plays a script on what is seen.
#[derive(Debug, Clone)]
pub struct ScriptPlayer {
    script: Script,
    next: usize,
    wait: Option<Wait>,
    stop: Option<Stop>,
}

/// Where and why a script stopped before its end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stop {
    /// The line, from 1.
    pub line: usize,
    /// The line as written.
    pub text: String,
    /// Why, in a sentence.
    pub reason: String,
}

impl ScriptPlayer {
    /// A player at the first line.
    #[must_use]
    pub fn new(script: Script) -> Self {
        Self { script, next: 0, wait: None, stop: None }
    }

    /// Where the script stopped, if it did not run to its end.
    #[must_use]
    pub fn stop(&self) -> Option<&Stop> {
        self.stop.as_ref()
    }

    /// The first line that was not come to, when the job was over before the script was.
    #[must_use]
    pub fn left_over(&self) -> Option<&Step> {
        self.script.steps.get(self.next)
    }

    fn fail(&mut self, line: usize, text: &str, otherwise: Otherwise, reason: String) {
        if otherwise == Otherwise::Stop && self.stop.is_none() {
            self.stop = Some(Stop { line, text: text.to_owned(), reason });
        }
    }
}

impl Player for ScriptPlayer {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        loop {
            if self.stop.is_some() || seen.over.is_some() {
                return None;
            }
            let Step { line, text, otherwise, order } = self.script.steps.get(self.next)?.clone();
            match order {
                Order::Do(action) => {
                    self.next += 1;
                    return Some(action);
                }
                Order::WriteShown { port, stage, phase } => {
                    self.next += 1;
                    match shown(seen, port, stage, phase) {
                        Some(action) => return Some(action),
                        None => {
                            let reason = t!("script-no-number-shown").to_owned();
                            self.fail(line, &text, otherwise, reason);
                        }
                    }
                }
                Order::Wait { until, limit_s } => {
                    // Half a tick less, so that a sum of ticks is not late by its last digit.
                    let wait = || Wait::new(until, limit_s - 0.5 * TICK_S);
                    let wait = self.wait.get_or_insert_with(wait);
                    match wait.look(seen) {
                        Waiting::On => return None,
                        Waiting::Met => {}
                        Waiting::TooLong => {
                            let reason = t!("script-not-in-time", seconds = limit_s.to_string());
                            self.fail(line, &text, otherwise, reason);
                        }
                    }
                    self.wait = None;
                    self.next += 1;
                }
            }
        }
    }

    fn refused(&mut self, _: &Action, why: Refusal) {
        let Some(step) = self.next.checked_sub(1).and_then(|i| self.script.steps.get(i)) else {
            return;
        };
        let Step { line, text, otherwise, .. } = step.clone();
        self.fail(line, &text, otherwise, why.text());
    }

    fn finished(&self) -> bool {
        self.stop.is_some() || self.next >= self.script.steps.len()
    }
}

/// What the manometer shows, as a reading in its unit.
fn shown(seen: &Seen, port: Port, stage: Stage, phase: Phase) -> Option<Action> {
    let shown = seen.pressure_shown()?;
    #[expect(clippy::cast_possible_truncation, reason = "a display's number; a cast saturates")]
    let thousandths = (shown.value * 1000.0).round() as i32;
    Some(Action::Write(Reading { port, stage, phase, thousandths, unit: shown.unit }))
}
