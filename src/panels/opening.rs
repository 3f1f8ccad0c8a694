//! The opening pages: the caution, then the choice of a job.

mod list;
mod state;

use egui::{
    Align, CentralPanel, Frame, Layout, Margin, Rect, RichText, ScrollArea, TextEdit, Ui,
    UiBuilder, pos2,
};

use super::command::Command;
use super::settings_page::settings_ui;
use super::theme;
use super::view::{Help, JobChoice, Opening, Unfinished, View};
use super::widgets;
use crate::words::Id;

pub use state::{Caution, OpeningState};
use state::{chosen, seed_of};

/// The caution that stands before everything, a sentence each.
pub const CAUTION: [Id; 4] = [
    id!("opening-caution-1"),
    id!("opening-caution-2"),
    id!("opening-caution-3"),
    id!("opening-caution-4"),
];

/// Shows the caution until it was read, then the jobs.
pub fn opening_ui(
    root: &mut Ui,
    view: &View<'_>,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    let frame = Frame::new().fill(theme::PAPER).inner_margin(Margin::symmetric(32, 20));
    CentralPanel::no_frame().frame(frame).show(root, |ui| {
        super::background::grid(ui.painter(), ui.max_rect().expand(40.0));
        match state.caution {
            Caution::Unread => {
                ScrollArea::vertical().id_salt("opening").auto_shrink(false).show(ui, |ui| {
                    title_ui(ui);
                    caution_ui(ui, state);
                });
            }
            Caution::Read => {
                title_ui(ui);
                choose_ui(ui, view, opening, state, out);
            }
        }
    });
}

fn title_ui(ui: &mut Ui) {
    ui.label(RichText::new(t!("opening-name")).text_style(theme::digits()));
    ui.label(t!("opening-subtitle"));
    ui.add_space(10.0);
}

fn caution_ui(ui: &mut Ui, state: &mut OpeningState) {
    let width = ui.available_width().min(640.0 * theme::factor_of(ui));
    widgets::slip().inner_margin(Margin::same(20)).show(ui, |ui| {
        ui.set_max_width((width - 44.0).max(60.0));
        ui.heading(t!("opening-caution-title"));
        for line in CAUTION {
            ui.label(line.text());
        }
        ui.add_space(8.0);
        if widgets::main_button(ui, t!("opening-caution-read")).clicked() {
            state.caution = Caution::Read;
        }
    });
}

fn choose_ui(
    ui: &mut Ui,
    view: &View<'_>,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    if let Some(notice) = opening.notice {
        widgets::live(&ui.label(RichText::new(format!("✗ {notice}")).color(theme::DANGER)));
    }
    let factor = theme::factor_of(ui);
    let (width, height) = (ui.available_width(), ui.available_height());
    if width > 860.0 * factor && height > 380.0 * factor {
        two_columns(ui, view, opening, state, out);
        return;
    }
    ScrollArea::vertical().id_salt("opening-all").auto_shrink(false).show(ui, |ui| {
        chosen_ui(ui, opening, state, out);
        ui.add_space(10.0);
        list::list_ui(ui, opening, state, out);
        ui.add_space(10.0);
        side_ui(ui, view, opening, out);
    });
}

/// The chosen job at the right, the list at the left, each scrolling by itself. The chosen one comes
/// first for the keyboard: from the caution Tab leads to help, seed and start, and then to the list.
fn two_columns(
    ui: &mut Ui,
    view: &View<'_>,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    let whole = ui.available_rect_before_wrap();
    let gap = 14.0;
    let middle = whole.left() + (whole.width() - gap) * 0.54;
    let left = Rect::from_min_max(whole.min, pos2(middle, whole.bottom()));
    let right = Rect::from_min_max(pos2(middle + gap, whole.top()), whole.max);
    // Not egui's columns: those stretch the lines of every text to the full width.
    let column = |rect: Rect| UiBuilder::new().max_rect(rect).layout(Layout::top_down(Align::LEFT));
    ui.scope_builder(column(right).id_salt("chosen"), |ui| {
        ScrollArea::vertical().id_salt("opening-side").auto_shrink(false).show(ui, |ui| {
            chosen_ui(ui, opening, state, out);
            ui.add_space(10.0);
            side_ui(ui, view, opening, out);
        });
    });
    ui.scope_builder(column(left).id_salt("list"), |ui| {
        ScrollArea::vertical().id_salt("opening-list").auto_shrink(false).show(ui, |ui| {
            list::list_ui(ui, opening, state, out);
        });
    });
}

/// The chosen job: what it is, how it is begun, what it is practice for.
fn chosen_ui(ui: &mut Ui, opening: &Opening<'_>, state: &mut OpeningState, out: &mut Vec<Command>) {
    let (newest, _) = in_front(opening.unfinished);
    unfinished_ui(ui, t!("opening-resume"), newest, out);
    let Some(job) = chosen(opening, state) else { return };
    widgets::slip().inner_margin(Margin::same(14)).show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.heading(&job.title);
        widgets::quiet(
            ui,
            t!(
                "opening-job-line",
                step = job.step.label(),
                fuel = &job.fuel,
                standing = job.standing.words()
            ),
        );
        ui.label(&job.text);
        ui.add_space(6.0);
        let helps = Help::ALL.map(|help| (help, help.label()));
        if let Some(help) = widgets::choice(ui, t!("opening-help"), state.help, &helps) {
            state.help = help;
        }
        widgets::quiet(
            ui,
            match state.help {
                Help::Coached => {
                    t!("opening-coached")
                }
                Help::Solo => t!("opening-solo"),
            },
        );
        let seed = seed_ui(ui, opening, state);
        ui.add_space(6.0);
        let start = ui.horizontal(|ui| widgets::main_button(ui, t!("opening-start"))).inner;
        if let (true, Ok(seed)) = (start.clicked(), seed) {
            out.push(Command::Start { scenario: job.id.clone(), seed, help: state.help });
        }
        practice_ui(ui, job);
    });
}

fn practice_ui(ui: &mut Ui, job: &JobChoice) {
    if !job.aim.is_empty() {
        ui.add_space(8.0);
        widgets::section(ui, t!("opening-aim"));
        ui.label(&job.aim);
    }
    if !job.competencies.is_empty() {
        ui.add_space(4.0);
        widgets::section(ui, t!("opening-practice"));
        for one in &job.competencies {
            let name = format!("{} {}", one.id, one.name());
            ui.label(RichText::new(name).family(theme::semibold()));
            ui.label(one.criterion());
        }
        widgets::quiet(ui, t!("opening-practice-only"));
    }
}

fn seed_ui(ui: &mut Ui, opening: &Opening<'_>, state: &mut OpeningState) -> Result<u64, ()> {
    let mut text = state.seed.clone().unwrap_or_else(|| opening.seed.to_string());
    ui.horizontal_wrapped(|ui| {
        let label = ui.label(t!("opening-seed"));
        let field = ui.add(TextEdit::singleline(&mut text).desired_width(150.0));
        let field = widgets::ringed(ui, field).labelled_by(label.id);
        if field.changed() {
            state.seed = Some(text.clone());
        }
        widgets::quiet(ui, t!("opening-seed-same"));
    });
    let seed = seed_of(opening, state);
    if seed.is_err() {
        let words = t!("opening-seed-wrong");
        widgets::live(&ui.label(RichText::new(words).color(theme::DANGER)));
    }
    seed
}

/// Unfinished attempts that stand before the chosen job, and those after it.
fn in_front(unfinished: &[Unfinished]) -> (&[Unfinished], &[Unfinished]) {
    unfinished.split_at(unfinished.len().min(2))
}

fn unfinished_ui(ui: &mut Ui, title: &str, attempts: &[Unfinished], out: &mut Vec<Command>) {
    if attempts.is_empty() {
        return;
    }
    widgets::slip().inner_margin(Margin::same(14)).show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.heading(title);
        for attempt in attempts {
            let text = format!("{}, {}", attempt.title, attempt.text);
            if widgets::list_button(ui, &text, None).clicked() {
                out.push(Command::ResumeAttempt(attempt.id.clone()));
            }
        }
    });
    ui.add_space(10.0);
}

fn side_ui(ui: &mut Ui, view: &View<'_>, opening: &Opening<'_>, out: &mut Vec<Command>) {
    let (_, older) = in_front(opening.unfinished);
    unfinished_ui(ui, t!("opening-older"), older, out);
    widgets::slip().show(ui, |ui| {
        ui.set_width(ui.available_width());
        settings_ui(ui, view.settings, out);
    });
    ui.add_space(10.0);
    ui.horizontal(|ui| {
        let close = ui.button(t!("opening-close"));
        if widgets::ringed(ui, close).clicked() {
            out.push(Command::Quit);
        }
    });
}
