//! The slip beside a chosen part: how it stands and what can be done with it.

use egui::{Align2, Area, Key, Order, Rect, ScrollArea, Ui, pos2, vec2};

use super::command::Command;
use super::forms::FormState;
use super::hand;
use super::menu::{Group, MenuItem};
use super::parts;
use super::view::Job;
use super::widgets;

/// Widest it gets, in points at the usual size of type.
const WIDTH: f32 = 290.0;

/// About how high its heading and its foot are, and a line of it, in points at the usual size of
/// type.
const HEAD: f32 = 96.0;
const LINE: f32 = 33.0;

/// What the slip needs beside the view.
#[derive(Debug)]
pub struct PopupParts<'a> {
    /// Id of the chosen part.
    pub part: &'a str,
    /// Box of the part, in window points.
    pub at: Rect,
    /// What it lies over only where there is no other room: the manometer.
    pub keep_clear: Option<Rect>,
    /// What can be done now.
    pub menu: &'a [MenuItem],
    /// What is set in forms.
    pub forms: &'a mut FormState,
    /// Whether the keyboard shall go into the slip now.
    pub focus: PopupFocus,
    /// Whether it was opened in this very frame.
    pub opened: Opened,
    /// Tells this job's scrolls from those of the jobs before.
    pub run: u64,
}

/// When the slip was opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Opened {
    /// In this frame: the press that opened it does not close it.
    Now,
    /// In a frame before; a press beside it closes it.
    Before,
}

/// Whether the keyboard shall go into the slip.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum PopupFocus {
    /// It stays where it is.
    #[default]
    Stay,
    /// Onto the first thing in the slip.
    First,
}

/// What became of the slip.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PopupAfter {
    /// It stays open for the next frame.
    Open,
    /// It closes, and the keyboard goes back to the part.
    Close,
}

/// Shows the slip beside its part, inside the drawing.
pub fn popup_ui(
    ui: &Ui,
    scene: Rect,
    job: &Job<'_>,
    popup: PopupParts<'_>,
    out: &mut Vec<Command>,
) -> PopupAfter {
    if ui.input(|input| input.key_pressed(Key::Escape)) {
        return PopupAfter::Close;
    }
    let width = (WIDTH * super::theme::factor_of(ui)).min(scene.width() - 24.0).max(80.0);
    let items = popup.menu.iter().filter(|item| item.group == Group::Part).count();
    let height = (HEAD + LINE * items as f32) * super::theme::factor_of(ui);
    let (at, pivot) = beside(scene, popup.at, popup.keep_clear, vec2(width + 30.0, height));
    let opened = popup.opened;
    let mut after = PopupAfter::Open;
    let area = Area::new(widgets::id("popup"))
        .order(Order::Middle)
        .pivot(pivot)
        .fixed_pos(at)
        .constrain_to(scene)
        .show(ui.ctx(), |ui| {
            widgets::slip().show(ui, |ui| {
                ui.set_width(width);
                after = content(ui, scene, job, popup, out);
            });
        });
    let pressed_elsewhere = opened == Opened::Before
        && ui.input(|input| {
            input.pointer.any_pressed()
                && input
                    .pointer
                    .interact_pos()
                    .is_some_and(|pos| scene.contains(pos) && !area.response.rect.contains(pos))
        });
    if pressed_elsewhere { PopupAfter::Close } else { after }
}

fn content(
    ui: &mut Ui,
    scene: Rect,
    job: &Job<'_>,
    popup: PopupParts<'_>,
    out: &mut Vec<Command>,
) -> PopupAfter {
    let mut after = PopupAfter::Open;
    widgets::section(ui, &parts::name(popup.part));
    let most = (scene.height() - 140.0).max(60.0);
    let mut first = None;
    ScrollArea::vertical().id_salt((popup.part, popup.run)).max_height(most).show(ui, |ui| {
        first = hand::part_ui(ui, job.seen, Some(popup.part), popup.menu, popup.forms, out);
    });
    let close = ui.button(t!("popup-close"));
    if close.clicked() {
        after = PopupAfter::Close;
    }
    if popup.focus == PopupFocus::First {
        first.unwrap_or(close).request_focus();
    }
    after
}

/// Where the slip goes: right of the part where there is room, else left of it; on the side where it
/// keeps clear of the manometer, if there is one. `size` is about what it will have.
fn beside(
    scene: Rect,
    part: Rect,
    keep_clear: Option<Rect>,
    size: egui::Vec2,
) -> (egui::Pos2, Align2) {
    let right = Rect::from_min_size(pos2(part.right() + 10.0, part.top()), size);
    let left = Rect::from_min_size(pos2(part.left() - 10.0 - size.x, part.top()), size);
    let clear = |slip: Rect| keep_clear.is_none_or(|meter| !meter.intersects(slip));
    let fits_right = right.right() < scene.right();
    let fits_left = left.left() > scene.left();
    if fits_right && (clear(right) || !fits_left || !clear(left)) {
        (right.left_top(), Align2::LEFT_TOP)
    } else {
        (left.right_top(), Align2::RIGHT_TOP)
    }
}
