//! Where the job sheet is: beside the drawing, or behind a tab where room is scarce.

use egui::{Area, Order, Rect, Ui, pos2, vec2};

use super::state::{Papers, WorkState};
use crate::panels::command::Command;
use crate::panels::cutaway::{self, PaneAfter, cutaway_ui};
use crate::panels::menu::MenuItem;
use crate::panels::sheet::{self, SheetParts, sheet_ui};
use crate::panels::spread::Spread;
use crate::panels::theme;
use crate::panels::view::{Job, View};
use crate::panels::widgets;
use crate::parts::OnOff;

/// Width of the drawing below which the opened sheet lies over it, in points.
const LEAST_DRAWING: f32 = 480.0;

/// The drawing's part of the page and the sheet's; the sheet's is a tab where room is scarce.
///
/// While it is written on, the sheet lies open wide beside the drawing where that leaves enough of
/// it: the manometer can be read while its number is written. Opened from its tab it lies beside
/// the drawing on the same terms; else over it.
pub(super) fn split(window: f32, rest: Rect, view: &View<'_>, papers: Papers) -> (Rect, Board) {
    let width = sheet::width(view);
    let wide = sheet::wide_width(view);
    if papers == Papers::Wide && rest.width() - wide >= LEAST_DRAWING {
        let (scene, sheet) = rest.split_left_right_at_x(rest.right() - wide);
        return (scene, Board::Wide(sheet));
    }
    if papers == Papers::Cutaway {
        // Where that leaves too little of the drawing the cutaway is a page of its own.
        let pane = cutaway::width(view);
        let left = rest.width() - pane;
        let at = if left >= LEAST_DRAWING { rest.right() - pane } else { rest.left() };
        let (scene, pane) = rest.split_left_right_at_x(at);
        return (scene, Board::Cutaway(pane));
    }
    let tab = 74.0 * theme::text_factor(view.settings);
    let folded = window < 3.4 * width;
    let side = if folded { tab } else { width }.min(rest.width() * 0.5).max(0.0);
    let (scene, side) = rest.split_left_right_at_x(rest.right() - side);
    if !folded {
        return (scene, Board::Open(side));
    }
    let left = scene.width() - width;
    if papers == Papers::Away || left < LEAST_DRAWING {
        return (scene, Board::Tab(side));
    }
    let (scene, sheet) = scene.split_left_right_at_x(scene.right() - width);
    (scene, Board::Beside { tab: side, sheet })
}

/// Where the sheet is.
#[derive(Debug, Clone, Copy)]
pub(super) enum Board {
    /// Always open beside the drawing, in this rectangle.
    Open(Rect),
    /// Open wide beside the drawing, to be written on.
    Wide(Rect),
    /// The cutaway in its place.
    Cutaway(Rect),
    /// Opened from its tab, beside the drawing.
    Beside {
        /// Where the tab stands.
        tab: Rect,
        /// Where the sheet lies.
        sheet: Rect,
    },
    /// Behind a tab beside the drawing, or over it.
    Tab(Rect),
}

/// Shows the sheet or its tab.
pub(super) fn board_ui(
    root: &mut Ui,
    board: Board,
    view: &View<'_>,
    job: &Job<'_>,
    state: &mut WorkState,
    list: &[MenuItem],
    out: &mut Vec<Command>,
) {
    let tab = match board {
        Board::Open(rect) => {
            sheet_ui(root, rect, view, job, parts(state, list, Spread::Narrow), out);
            return;
        }
        Board::Beside { tab, sheet } => {
            tab_ui(root, tab, state);
            sheet_ui(root, sheet, view, job, parts(state, list, Spread::Narrow), out);
            return;
        }
        Board::Cutaway(rect) => {
            if let Some(behind) = &job.behind {
                match cutaway_ui(root, rect, view, job, behind, &mut state.pane) {
                    PaneAfter::Stay => {}
                    PaneAfter::Close => state.cutaway = OnOff::Off,
                }
            }
            return;
        }
        Board::Wide(rect) => {
            sheet_ui(root, rect, view, job, parts(state, list, Spread::Wide), out);
            put_away_ui(root, rect, state);
            return;
        }
        Board::Tab(rect) => rect,
    };
    tab_ui(root, tab, state);
    if state.sheet == OnOff::Off {
        return;
    }
    let width = sheet::width(view).min(tab.left() - root.max_rect().left()).max(0.0);
    let rect =
        Rect::from_min_max(pos2(tab.left() - width, tab.top()), pos2(tab.left(), tab.bottom()));
    if !rect.is_positive() {
        return;
    }
    Area::new(widgets::id("sheet-over")).order(Order::Middle).fixed_pos(rect.min).show(
        root.ctx(),
        |ui| {
            ui.set_clip_rect(rect);
            ui.set_min_size(rect.size());
            sheet_ui(ui, rect, view, job, parts(state, list, Spread::Over), out);
        },
    );
}

fn parts<'a>(state: &'a mut WorkState, menu: &'a [MenuItem], spread: Spread) -> SheetParts<'a> {
    SheetParts {
        chosen: state.chosen.as_deref(),
        menu,
        entry: &mut state.entry,
        forms: &mut state.forms,
        spread,
        run: state.run,
    }
}

/// The button that puts the wide sheet away, at its upper right corner.
fn put_away_ui(root: &mut Ui, rect: Rect, state: &mut WorkState) {
    let size = vec2(96.0, 28.0) * theme::factor_of(root);
    let at = Rect::from_min_size(pos2(rect.right() - size.x - 22.0, rect.top() + 28.0), size);
    let button = root.put(at, egui::Button::new(t!("tab-put-away")).fill(theme::SHEET));
    widgets::named(&button, egui::WidgetType::Button, t!("tab-fold-name"));
    if widgets::ringed(root, button).clicked() {
        state.put_away();
    }
}

fn tab_ui(root: &mut Ui, tab: Rect, state: &mut WorkState) {
    root.painter().rect_filled(tab, 0.0, theme::BOARD);
    if tab.height() < 40.0 || tab.width() < 20.0 {
        return;
    }
    let at = Rect::from_min_size(tab.min + vec2(3.0, 8.0), vec2(tab.width() - 6.0, 96.0));
    let text = match state.sheet {
        OnOff::Off => t!("tab-open"),
        OnOff::On => t!("tab-fold"),
    };
    let button = root.put(at, egui::Button::new(text).fill(theme::SHEET).wrap());
    let name = match state.sheet {
        OnOff::Off => t!("tab-open-name"),
        OnOff::On => t!("tab-fold-name"),
    };
    widgets::named(&button, egui::WidgetType::Button, name);
    if button.clicked() {
        match state.sheet {
            OnOff::On => state.put_away(),
            OnOff::Off => state.sheet = OnOff::On,
        }
    }
}
