//! The job sheet: paper on a clipboard.

mod grid;
mod joints;
mod notes;

use egui::{Rect, ScrollArea, Stroke, StrokeKind, Ui, UiBuilder, pos2, vec2};

use super::command::Command;
use super::forms::FormState;
use super::hand;
use super::menu::MenuItem;
use super::theme;
use super::view::{Job, View};
use super::widgets;

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
    /// Tells this job's folds and scrolls from those of the jobs before.
    pub run: u64,
}

/// Width of the sheet at a size of type.
#[must_use]
pub fn width(view: &View<'_>) -> f32 {
    320.0 * theme::text_factor(view.settings).min(1.5)
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
    let page = board(ui, rect);
    if page.width() < 60.0 || page.height() < 40.0 {
        return;
    }
    let inner = page.shrink2(vec2(12.0, 14.0));
    let builder = UiBuilder::new().id(widgets::id("sheet").with(parts.run)).max_rect(inner);
    let mut ui = ui.new_child(builder);
    ui.set_clip_rect(page.shrink(2.0).intersect(ui.clip_rect()));
    ui.spacing_mut().scroll = egui::style::ScrollStyle::thin();
    ui.spacing_mut().item_spacing.y = 4.0;
    if inner.height() < SPLIT_HEIGHT {
        ScrollArea::vertical().id_salt("sheet-all").auto_shrink(false).show(&mut ui, |ui| {
            upper_ui(ui, view, job, parts.entry, out);
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
        .show(&mut ui, |ui| upper_ui(ui, view, job, parts.entry, out));
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
    out: &mut Vec<Command>,
) {
    notes::card_ui(ui, view, job, out);
    ui.separator();
    grid::grid_ui(ui, view.settings.unit, (&job.seen.sheet, job.seen.levels), entry, out);
    ui.separator();
    joints::joints_ui(ui, job, out);
    ui.separator();
    notes::notes_ui(ui, &job.seen.sheet);
}

/// Paints board, paper and clip; gives the paper.
fn board(ui: &Ui, rect: Rect) -> Rect {
    let painter = ui.painter();
    painter.rect_filled(rect, 0.0, theme::BOARD);
    let page = Rect::from_min_max(
        pos2(rect.left() + 12.0, rect.top() + 18.0),
        pos2(rect.right() - 12.0, rect.bottom() - 12.0),
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
