//! What was wrong, written in three steps: the part of the system and what in it, what was done
//! about it, and what speaks for it. What stands already can be struck.

use egui::Ui;

use super::command::Command;
use super::widgets;
use crate::hands::action::Action;
use crate::parts::{Answer, Backing, Cause, Phase, Sight, SystemPart, WrittenFinding};
use crate::senses::seen::SheetSeen;

/// What is chosen and not yet written.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct FindingState {
    /// The part of the system, looked for first.
    pub part: Option<SystemPart>,
    /// What was wrong there.
    pub cause: Option<Cause>,
    /// What was done about it.
    pub answer: Option<Answer>,
    /// What speaks for it.
    pub evidence: Vec<Backing>,
}

impl FindingState {
    /// The finding, once it has a cause and an answer.
    #[must_use]
    pub fn said(&self) -> Option<WrittenFinding> {
        let (cause, answer) = (self.cause?, self.answer?);
        Some(WrittenFinding { cause, answer, evidence: self.evidence.clone() })
    }
}

/// Shows what stands on the sheet, and the form for another finding.
pub fn finding_ui(
    ui: &mut Ui,
    sheet: &SheetSeen,
    state: &mut FindingState,
    out: &mut Vec<Command>,
) {
    written_ui(ui, sheet, out);
    let Some(part) = part_ui(ui, state) else { return };
    if cause_ui(ui, part, state).is_none() {
        return;
    }
    widgets::section(ui, t!("finding-answer"));
    for &answer in Answer::ALL {
        if widgets::seen_when_focused(ui.radio(state.answer == Some(answer), answer.label()))
            .clicked()
        {
            state.answer = Some(answer);
        }
    }
    evidence_ui(ui, sheet, state);
    let ready = state.said();
    let write = ui.add_enabled(ready.is_some(), egui::Button::new(t!("finding-write")));
    if widgets::seen_when_focused(write).clicked()
        && let Some(finding) = ready
    {
        out.push(Command::Act(Action::WriteFinding(finding)));
        *state = FindingState::default();
    }
    if state.answer.is_none() {
        widgets::quiet(ui, t!("finding-lacks-answer"));
    }
}

/// Findings on the sheet, each with a button that strikes it.
fn written_ui(ui: &mut Ui, sheet: &SheetSeen, out: &mut Vec<Command>) {
    if sheet.findings.is_empty() {
        widgets::quiet(ui, t!("finding-none"));
    }
    for finding in &sheet.findings {
        let (cause, answer) = (finding.cause.label(), finding.answer.label().to_lowercase());
        let line = t!("finding-line", cause = cause, answer = answer);
        widgets::live(&ui.label(widgets::pen(line)));
        let strike = t!("finding-strike", cause = cause.to_lowercase());
        if widgets::list_button(ui, &strike, None).clicked() {
            out.push(Command::Act(Action::StrikeFinding(finding.cause)));
        }
    }
}

/// The list of parts, or the one that was chosen.
fn part_ui(ui: &mut Ui, state: &mut FindingState) -> Option<SystemPart> {
    widgets::section(ui, t!("finding-part"));
    if let Some(part) = state.part {
        ui.label(widgets::pen(part.label()));
        if widgets::list_button(ui, t!("finding-other-part"), None).clicked() {
            *state = FindingState::default();
        }
        return state.part;
    }
    for &part in SystemPart::ALL {
        if widgets::list_button(ui, part.label(), None).clicked() {
            state.part = Some(part);
        }
    }
    None
}

/// The causes that belong to a part, or the one that was chosen.
fn cause_ui(ui: &mut Ui, part: SystemPart, state: &mut FindingState) -> Option<Cause> {
    widgets::section(ui, t!("finding-cause"));
    for &cause in Cause::ALL.iter().filter(|cause| cause.part() == part) {
        if widgets::seen_when_focused(ui.radio(state.cause == Some(cause), cause.label())).clicked()
        {
            state.cause = Some(cause);
        }
    }
    state.cause
}

fn evidence_ui(ui: &mut Ui, sheet: &SheetSeen, state: &mut FindingState) {
    widgets::section(ui, t!("finding-evidence"));
    for backing in on_sheet(sheet) {
        let mut ticked = state.evidence.contains(&backing);
        let tick = widgets::seen_when_focused(ui.checkbox(&mut ticked, label(backing)));
        if tick.clicked() {
            state.evidence.retain(|one| *one != backing);
            if ticked && state.evidence.len() < WrittenFinding::MOST_EVIDENCE {
                state.evidence.push(backing);
            }
        }
    }
}

/// Everything that a finding may rest on, each once: what stands on the sheet, then what is noticed
/// in passing.
fn on_sheet(sheet: &SheetSeen) -> Vec<Backing> {
    let readings = sheet.readings.iter().map(Backing::from);
    let looks = sheet.notes.iter().map(|note| Backing::Look(note.subject));
    let measured = sheet.measured.iter().map(|one| Backing::Measured(one.spot));
    let joints = sheet.joints.iter().map(|(joint, _)| Backing::Joint(*joint));
    let sights = Sight::ALL.iter().map(|sight| Backing::Sight(*sight));
    let mut once = Vec::new();
    for backing in readings.chain(looks).chain(measured).chain(joints).chain(sights) {
        if !once.contains(&backing) {
            once.push(backing);
        }
    }
    once
}

/// What speaks for a finding, as the form names it.
#[must_use]
pub fn label(backing: Backing) -> String {
    match backing {
        Backing::Reading { port, stage, phase } => {
            let phase = match phase {
                Phase::Found => t!("finding-found"),
                Phase::Left => t!("finding-left"),
            };
            let stage = stage.label();
            t!("finding-reading", port = port.label(), stage = stage, phase = phase)
        }
        Backing::Measured(spot) => spot.label().to_owned(),
        Backing::Look(subject) => t!("finding-look", subject = subject.label().to_lowercase()),
        Backing::Joint(joint) => t!("finding-joint", joint = joint.label().to_lowercase()),
        Backing::Sight(sight) => sight.label().to_owned(),
    }
}
