//! The list of jobs, by the steps of the ladder. It never names a fault.

use egui::{
    EventFilter, Frame, Key, Margin, Modifiers, Response, RichText, Ui, WidgetInfo, WidgetType,
};

use super::state::{OpeningState, ToChosen, chosen, seed_of};
use crate::panels::command::Command;
use crate::panels::theme;
use crate::panels::view::{JobChoice, Opening, Tried};
use crate::panels::widgets;
use crate::scenario::Step;

/// Shows the list. Arrows go from job to job and choose as they go; Enter on the chosen one starts
/// it.
pub(super) fn list_ui(
    ui: &mut Ui,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    widgets::slip().inner_margin(Margin::same(14)).show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.heading(t!("opening-list"));
        widgets::quiet(ui, t!("opening-list-keys"));
        let now = chosen(opening, state).map(|job| job.id.clone());
        for step in Step::ALL {
            let mut jobs = opening.jobs.iter().filter(|job| job.step == step).peekable();
            if jobs.peek().is_none() {
                continue;
            }
            ui.add_space(8.0);
            widgets::section(ui, step.label());
            widgets::quiet(ui, step.asks());
            for job in jobs {
                job_ui(ui, opening, job, now.as_deref() == Some(job.id.as_str()), state, out);
            }
        }
    });
}

/// Up and down choose the job before and after, and take the keyboard along.
fn arrows(
    ui: &Ui,
    button: &Response,
    opening: &Opening<'_>,
    job: &JobChoice,
    state: &mut OpeningState,
) {
    let filter = EventFilter { vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(button.id, filter));
    let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
    let (up, down) = (pressed(Key::ArrowUp), pressed(Key::ArrowDown));
    // In the order of the page: by step.
    let mut order: Vec<&JobChoice> = opening.jobs.iter().collect();
    order.sort_by_key(|one| one.step);
    let at = order.iter().position(|one| one.id == job.id);
    let to = match (at, up, down) {
        (Some(at), true, false) => at.checked_sub(1),
        (Some(at), false, true) => at.checked_add(1),
        _ => None,
    };
    if let Some(other) = to.and_then(|to| order.get(to)) {
        state.job = Some(other.id.clone());
        state.to_chosen = ToChosen::Yes;
        ui.ctx().request_repaint();
    }
}

fn job_ui(
    ui: &mut Ui,
    opening: &Opening<'_>,
    job: &JobChoice,
    now: bool,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    ui.add_space(2.0);
    let title = RichText::new(&job.title).family(theme::semibold());
    let button = ui
        .horizontal_wrapped(|ui| {
            let button = widgets::seen_when_focused(ui.radio(now, title));
            let color = match job.standing {
                Tried::Never => theme::QUIET,
                Tried::Tried(_) => theme::INK,
                Tried::Passed(_) => theme::SETTLED,
            };
            let words =
                t!("opening-job-standing", fuel = &job.fuel, standing = job.standing.words());
            ui.label(RichText::new(words).small().color(color));
            button
        })
        .inner;
    let name =
        t!("opening-job", title = &job.title, fuel = &job.fuel, standing = job.standing.words());
    button.widget_info(|| WidgetInfo::selected(WidgetType::RadioButton, true, now, &name));
    if now && core::mem::take(&mut state.to_chosen) == ToChosen::Yes {
        button.request_focus();
        button.scroll_to_me(None);
    }
    if button.has_focus() {
        arrows(ui, &button, opening, job, state);
    }
    let start = now
        && button.has_focus()
        && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Enter));
    if start && let Ok(seed) = seed_of(opening, state) {
        out.push(Command::Start { scenario: job.id.clone(), seed, help: state.help });
    } else if button.clicked() || button.gained_focus() {
        state.job = Some(job.id.clone());
    }
    let line = if job.aim.is_empty() { &job.text } else { &job.aim };
    let inside = Margin { left: 24, ..Margin::ZERO };
    Frame::new().inner_margin(inside).show(ui, |ui| ui.label(line));
}
