//! Where the job sheet is: beside the drawing, or behind a tab where room is scarce.

use egui::{Area, Order, Rect, Ui, pos2, vec2};

use super::state::{WorkState, flip};
use crate::panels::command::Command;
use crate::panels::menu::MenuItem;
use crate::panels::sheet::{self, SheetParts, sheet_ui};
use crate::panels::theme;
use crate::panels::view::{Job, View};
use crate::panels::widgets;
use crate::parts::OnOff;

/// Width of the drawing below which the opened sheet lies over it, in points.
const LEAST_DRAWING: f32 = 480.0;

/// The drawing's part of the page and the sheet's; the sheet's is a tab where room is scarce.
///
/// Opened from its tab the sheet lies beside the drawing where that leaves enough of it, so that the
/// manometer can be read while its number is written; else over it.
pub(super) fn split(window: f32, rest: Rect, view: &View<'_>, open: OnOff) -> (Rect, Board) {
    let width = sheet::width(view);
    let tab = 74.0 * theme::text_factor(view.settings);
    let folded = window < 3.4 * width;
    let side = if folded { tab } else { width }.min(rest.width() * 0.5).max(0.0);
    let (scene, side) = rest.split_left_right_at_x(rest.right() - side);
    if !folded {
        return (scene, Board::Open(side));
    }
    let left = scene.width() - width;
    if open == OnOff::Off || left < LEAST_DRAWING {
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
        Board::Open(rect) | Board::Beside { sheet: rect, .. } => {
            if let Board::Beside { tab, .. } = board {
                tab_ui(root, tab, state);
            }
            let parts = SheetParts {
                chosen: state.chosen.as_deref(),
                menu: list,
                entry: &mut state.entry,
                forms: &mut state.forms,
                run: state.run,
            };
            sheet_ui(root, rect, view, job, parts, out);
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
            let parts = SheetParts {
                chosen: state.chosen.as_deref(),
                menu: list,
                entry: &mut state.entry,
                forms: &mut state.forms,
                run: state.run,
            };
            sheet_ui(ui, rect, view, job, parts, out);
        },
    );
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
        flip(&mut state.sheet);
    }
}
