//! The ladder: its steps with what was met on each, the jobs of one step unfolded. It never names a
//! fault.

use egui::{
    Button, EventFilter, Key, Margin, Modifiers, Rect, Response, RichText, Sense, Stroke,
    StrokeKind, Ui, WidgetInfo, WidgetType, pos2, vec2,
};

use super::state::{OpeningState, ToChosen, Unfold, chosen, seed_of, suggested};
use crate::panels::command::Command;
use crate::panels::theme;
use crate::panels::view::{JobChoice, Opening, Tried};
use crate::panels::widgets;
use crate::scenario::Step;

/// Shows the ladder. Arrows go from job to job and choose as they go, unfolding the step that they
/// come to; Enter on the chosen one starts it.
pub(super) fn ladder_ui(
    ui: &mut Ui,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    let here = suggested(opening).map(|job| job.step);
    widgets::slip().inner_margin(Margin::same(14)).show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.heading(t!("opening-list"));
        widgets::quiet(ui, t!("opening-list-keys"));
        ui.add_space(4.0);
        let now = chosen(opening, state).map(|job| job.id.clone());
        for step in Step::ALL {
            let jobs: Vec<&JobChoice> = opening.jobs.iter().filter(|it| it.step == step).collect();
            if jobs.is_empty() {
                continue;
            }
            let open = state.unfolded(opening) == Some(step);
            if step_ui(ui, step, &jobs, open, here == Some(step)).clicked() {
                state.step = Some(if open { Unfold::Nothing } else { Unfold::This(step) });
            }
            if !open {
                continue;
            }
            widgets::quiet(ui, step.asks());
            for job in jobs {
                job_ui(ui, opening, job, now.as_deref() == Some(job.id.as_str()), state, out);
            }
            ui.add_space(4.0);
        }
    });
}

/// One step: its name, a mark for each of its jobs, how many are met. A press unfolds it.
fn step_ui(ui: &mut Ui, step: Step, jobs: &[&JobChoice], open: bool, here: bool) -> Response {
    let met = jobs.iter().filter(|job| matches!(job.standing, Tried::Passed(_))).count();
    let (fill, text) = if here { (theme::INK, theme::PAPER) } else { (theme::SHADE, theme::INK) };
    let size = vec2(ui.available_width(), 34.0 * theme::factor_of(ui));
    let said = t!("opening-step-met", met = met, all = jobs.len());
    let name = RichText::new(step.label()).text_style(theme::section()).color(text);
    let button = Button::new(name)
        .fill(fill)
        .stroke(Stroke::new(1.5, theme::INK))
        .min_size(size)
        .right_text(
            RichText::new(if here { t!("opening-here", met = &said) } else { said.clone() })
                .small()
                .color(text),
        );
    let response = ui.add(button);
    let response = widgets::ringed(ui, response);
    let name = match (here, open) {
        (true, _) => t!("opening-step-here", step = step.label(), met = said),
        (false, true) => t!("opening-step-open", step = step.label(), met = said),
        (false, false) => t!("opening-step-folded", step = step.label(), met = said),
    };
    widgets::named(&response, WidgetType::Button, name);
    response.ctx.accesskit_node_builder(response.id, |node| node.set_expanded(open));
    marks(ui, response.rect, jobs, (here, text));
    response
}

/// A small square for each job: filled where the essentials were met, with a bar where it was tried.
fn marks(ui: &Ui, rect: Rect, jobs: &[&JobChoice], (here, color): (bool, egui::Color32)) {
    let factor = theme::factor_of(ui);
    let (side, gap) = (8.0 * factor, 4.0 * factor);
    #[expect(clippy::cast_precision_loss, reason = "some dozen jobs")]
    let count = jobs.len() as f32;
    let text = if here { 178.0 } else { 92.0 };
    let left = rect.right() - text * factor - count * (side + gap);
    if left < rect.left() + 110.0 * factor {
        return;
    }
    let mut at = pos2(left, rect.center().y - side / 2.0);
    for job in jobs {
        let square = Rect::from_min_size(at, vec2(side, side));
        let line = Stroke::new(1.3, color);
        match job.standing {
            Tried::Passed(_) => {
                ui.painter().rect(square, 1.0, color, line, StrokeKind::Middle);
            }
            Tried::Tried(_) => {
                ui.painter().rect_stroke(square, 1.0, line, StrokeKind::Middle);
                ui.painter().line_segment([square.left_bottom(), square.right_top()], line);
            }
            Tried::Never => {
                ui.painter().rect_stroke(square, 1.0, line, StrokeKind::Middle);
            }
        }
        at.x += side + gap;
    }
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
        state.step = Some(Unfold::This(other.step));
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
    let button = row_ui(ui, job, now);
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
}

/// A job in one line, all of it to be pressed: title at the left, fuel and standing at the right.
fn row_ui(ui: &mut Ui, job: &JobChoice, now: bool) -> Response {
    let standing = match job.standing {
        Tried::Never => theme::QUIET,
        Tried::Tried(_) => theme::INK,
        Tried::Passed(_) => theme::SETTLED,
    };
    let color = if now { theme::PAPER } else { standing };
    let words = t!("opening-job-standing", fuel = &job.fuel, standing = job.standing.words());
    let (fill, text) = if now { (theme::PEN, theme::PAPER) } else { (theme::SHEET, theme::INK) };
    let title = RichText::new(&job.title).family(theme::semibold()).color(text);
    let size = vec2(ui.available_width(), widgets::TARGET + 2.0);
    let button = Button::new(title)
        .fill(fill)
        .stroke(Stroke::new(1.0, theme::RULE))
        .min_size(size)
        .truncate()
        .sense(Sense::click())
        .right_text(RichText::new(words).small().color(color));
    let button = ui.add(button);
    widgets::ringed(ui, button)
}
