//! The opening pages: the caution, then where the trainee stands on the ladder and the one next
//! step.

mod ladder;
mod next;
mod picture;
mod state;

use egui::{
    Align, CentralPanel, CollapsingHeader, Frame, Layout, Margin, Rect, RichText, ScrollArea, Ui,
    UiBuilder, pos2,
};

use super::command::Command;
use super::settings_page::settings_ui;
use super::theme;
use super::view::{Opening, Unfinished, View};
use super::widgets;
use crate::words::Id;

pub use state::{Caution, OpeningState};

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
                title_line_ui(ui);
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

/// Name and subtitle in one line: the room is the job's.
fn title_line_ui(ui: &mut Ui) {
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new(t!("opening-name")).text_style(theme::digits()));
        // Where type is large the room is the job's.
        if ui.available_width() > 460.0 * theme::factor_of(ui) {
            widgets::quiet(ui, t!("opening-subtitle"));
        }
    });
    ui.add_space(4.0);
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
        unfinished_ui(ui, t!("opening-resume"), in_front(opening.unfinished).0, out);
        next::next_ui(ui, opening, state, height, out);
        ui.add_space(10.0);
        ladder::ladder_ui(ui, opening, state, out);
        ui.add_space(10.0);
        side_ui(ui, view, opening, out);
    });
}

/// What goes on and the next step at the left, the ladder at the right, each scrolling by itself.
/// Tab leads from what goes on to the start, from there to the ladder, and to the settings last.
fn two_columns(
    ui: &mut Ui,
    view: &View<'_>,
    opening: &Opening<'_>,
    state: &mut OpeningState,
    out: &mut Vec<Command>,
) {
    let whole = ui.available_rect_before_wrap();
    let gap = 14.0;
    let middle = whole.left() + (whole.width() - gap) * 0.53;
    let left = Rect::from_min_max(whole.min, pos2(middle, whole.bottom()));
    let right = Rect::from_min_max(pos2(middle + gap, whole.top()), whole.max);
    // Not egui's columns: those stretch the lines of every text to the full width.
    let column = |rect: Rect| UiBuilder::new().max_rect(rect).layout(Layout::top_down(Align::LEFT));
    ui.scope_builder(column(left).id_salt("chosen"), |ui| {
        ScrollArea::vertical().id_salt("opening-next").auto_shrink(false).show(ui, |ui| {
            let top = ui.cursor().top();
            unfinished_ui(ui, t!("opening-resume"), in_front(opening.unfinished).0, out);
            let room = whole.height() - (ui.cursor().top() - top);
            next::next_ui(ui, opening, state, room, out);
        });
    });
    ui.scope_builder(column(right).id_salt("list"), |ui| {
        ScrollArea::vertical().id_salt("opening-list").auto_shrink(false).show(ui, |ui| {
            ladder::ladder_ui(ui, opening, state, out);
            ui.add_space(10.0);
            side_ui(ui, view, opening, out);
        });
    });
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
            let text = t!("opening-unfinished", title = &attempt.title, at = &attempt.text);
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
        let fold = CollapsingHeader::new(t!("settings-title")).id_salt("settings");
        let shown = fold.show(ui, |ui| settings_ui(ui, view.settings, out));
        widgets::ringed(ui, shown.header_response);
    });
    ui.add_space(10.0);
    ui.horizontal(|ui| {
        let close = ui.button(t!("opening-close"));
        if widgets::ringed(ui, close).clicked() {
            out.push(Command::Quit);
        }
    });
}
