//! The job sheet: paper on a clipboard.

mod grid;
mod joints;
mod notes;

use egui::{Rect, ScrollArea, Stroke, StrokeKind, Ui, UiBuilder, pos2, vec2};

use super::command::Command;
use super::forms::FormState;
use super::hand;
use super::menu::MenuItem;
use super::spread::Spread;
use super::theme;
use super::view::{Job, View};
use super::widgets;
use crate::parts::Level;
use crate::senses::seen::{MeterSeen, SheetSeen};

pub use grid::{Cell, EntryState, NextFocus, rows};
pub(crate) use notes::is_stale;

/// Height below which paper and list scroll as one.
const SPLIT_HEIGHT: f32 = 440.0;

/// What the sheet needs beside the view.
#[derive(Debug)]
pub struct SheetParts<'a> {
    /// The part that is chosen.
    pub chosen: Option<&'a str>,
    /// What can be done now.
    pub menu: &'a [MenuItem],
    /// What is being typed in the grid.
    pub entry: &'a mut EntryState,
    /// What is set in forms.
    pub forms: &'a mut FormState,
    /// How it lies open.
    pub spread: Spread,
    /// Tells this job's folds and scrolls from those of the jobs before.
    pub run: u64,
}

/// Width of the sheet at a size of type.
#[must_use]
pub fn width(view: &View<'_>) -> f32 {
    320.0 * theme::text_factor(view.settings).min(1.5)
}

/// Width of the sheet while it is written on.
#[must_use]
pub fn wide_width(view: &View<'_>) -> f32 {
    520.0 * theme::text_factor(view.settings).min(1.5)
}

/// Shows the clipboard in `rect`.
pub fn sheet_ui(
    ui: &mut Ui,
    rect: Rect,
    view: &View<'_>,
    job: &Job<'_>,
    parts: SheetParts<'_>,
    out: &mut Vec<Command>,
) {
    let margin = if parts.spread == Spread::Wide { 6.0 } else { 12.0 };
    let page = board(ui, rect, margin);
    if page.width() < 60.0 || page.height() < 40.0 {
        return;
    }
    let inner = page.shrink2(vec2(12.0, 14.0));
    let builder = UiBuilder::new().id(widgets::id("sheet").with(parts.run)).max_rect(inner);
    let mut ui = ui.new_child(builder);
    ui.set_clip_rect(page.shrink(2.0).intersect(ui.clip_rect()));
    ui.spacing_mut().scroll = egui::style::ScrollStyle::thin();
    ui.spacing_mut().item_spacing.y = 4.0;
    if inner.height() < SPLIT_HEIGHT || parts.spread != Spread::Narrow {
        ScrollArea::vertical().id_salt("sheet-all").auto_shrink(false).show(&mut ui, |ui| {
            match parts.spread {
                Spread::Wide => wide_ui(ui, view, job, parts.entry, out),
                Spread::Narrow | Spread::Over => {
                    upper_ui(ui, view, job, parts.entry, parts.spread, out);
                }
            }
            ui.separator();
            hand::hand_ui(ui, job.seen, parts.chosen, parts.menu, parts.forms, out);
        });
        return;
    }
    let upper = inner.height() * 0.64;
    ScrollArea::vertical()
        .id_salt("sheet-paper")
        .max_height(upper)
        .auto_shrink(false)
        .show(&mut ui, |ui| upper_ui(ui, view, job, parts.entry, parts.spread, out));
    ui.separator();
    ScrollArea::vertical().id_salt("sheet-hand").auto_shrink(false).show(&mut ui, |ui| {
        hand::hand_ui(ui, job.seen, parts.chosen, parts.menu, parts.forms, out);
    });
}

fn upper_ui(
    ui: &mut Ui,
    view: &View<'_>,
    job: &Job<'_>,
    entry: &mut EntryState,
    spread: Spread,
    out: &mut Vec<Command>,
) {
    widgets::section(ui, t!("sheet-title"));
    notes::card_ui(ui, job);
    notes::hints_ui(ui, job, out);
    ui.separator();
    grid::grid_ui(ui, view.settings.unit, paper(job), entry, spread, out);
    ui.separator();
    notes::figures_ui(ui, view, job);
    ui.separator();
    joints::joints_ui(ui, job, out);
    ui.separator();
    notes::notes_ui(ui, &job.seen.sheet);
}

/// What the grid shows.
fn paper<'a>(job: &'a Job<'_>) -> (&'a SheetSeen, &'static [Level], Option<&'a MeterSeen>) {
    (&job.seen.sheet, job.seen.levels, job.seen.meter())
}

/// All of the paper at a glance: plate and readings at the left, joints and notes at the right.
fn wide_ui(
    ui: &mut Ui,
    view: &View<'_>,
    job: &Job<'_>,
    entry: &mut EntryState,
    out: &mut Vec<Command>,
) {
    notes::card_ui(ui, job);
    ui.separator();
    notes::figures_ui(ui, view, job);
    ui.separator();
    let gap = 14.0;
    let left = (ui.available_width() - gap) * 0.535;
    ui.spacing_mut().button_padding.x = 6.0;
    let right = ui.available_width() - gap - left;
    ui.horizontal_top(|ui| {
        ui.spacing_mut().item_spacing.x = gap;
        let layout = egui::Layout::top_down(egui::Align::LEFT);
        ui.allocate_ui_with_layout(vec2(left, 0.0), layout, |ui| {
            ui.set_width(left);
            ui.spacing_mut().item_spacing.x = 6.0;
            grid::grid_ui(ui, view.settings.unit, paper(job), entry, Spread::Wide, out);
        });
        ui.allocate_ui_with_layout(vec2(right, 0.0), layout, |ui| {
            ui.set_width(right);
            ui.spacing_mut().item_spacing.x = 6.0;
            joints::joints_ui(ui, job, out);
            ui.separator();
            notes::notes_ui(ui, &job.seen.sheet);
            notes::hints_ui(ui, job, out);
        });
    });
}

/// Paints board, paper and clip; gives the paper.
fn board(ui: &Ui, rect: Rect, margin: f32) -> Rect {
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, theme::BOARD);
    let page = Rect::from_min_max(
        pos2(rect.left() + margin, rect.top() + 18.0),
        pos2(rect.right() - margin, rect.bottom() - margin),
    );
    if page.is_negative() {
        return Rect::from_min_size(rect.min, vec2(0.0, 0.0));
    }
    let outline = Stroke::new(2.0, theme::INK);
    painter.rect(page, 3.0, theme::SHEET, outline, StrokeKind::Middle);
    let clip = Rect::from_center_size(pos2(page.center().x, page.top() - 2.0), vec2(72.0, 22.0));
    painter.rect(clip, 4.0, theme::SLATE, outline, StrokeKind::Middle);
    painter.line_segment(
        [clip.left_top() + vec2(5.0, 4.0), clip.right_top() + vec2(-5.0, 4.0)],
        Stroke::new(1.5, theme::STEEL_LIGHT),
    );
    page
}
