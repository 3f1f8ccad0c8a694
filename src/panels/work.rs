//! The page at work: top bar, coach, drawing with its hot-spots, sheet.

mod board;
mod message;
mod state;

use egui::{Align2, Area, Order, Rect, Ui, vec2};

use super::captions::{self, heard_ui, told_ui};
use super::clear;
use super::coach_line::{LineAfter, coach_line_ui};
use super::command::Command;
use super::drawing_text::drawing_text_ui;
use super::end_card::end_card_ui;
use super::handling::manner;
use super::hotspots::{By, hotspots_ui, spot_id};
use super::instrument_display::instrument_display_ui;
use super::keys::{Pressed, keys};
use super::labels;
use super::menu::{ask, menu};
use super::popup::{Opened, PopupAfter, PopupParts, popup_ui};
use super::settings_page::settings_ui;
use super::sheet::{Cell, NextFocus};
use super::sights::sights_ui;
use super::spot::spots;
use super::theme;
use super::top_bar::{WindowRequest, top_bar_ui};
use super::view::{Job, Layout, View};
use super::widgets;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{OnOff, Phase};
use crate::parts::{Port, Stage};

use board::{board_ui, split};
use state::{Hinting, ask_hint, flip, hint};

pub(super) use state::WorkState;

/// How long what was refused stays at the part, in seconds.
const REFUSAL_STAYS_S: f64 = 6.0;

/// Shows the page and says what is left for the drawing.
pub(super) fn work_ui(
    root: &mut Ui,
    view: &View<'_>,
    job: &Job<'_>,
    state: &mut WorkState,
    out: &mut Vec<Command>,
) -> Layout {
    let already = out.len();
    state.follow(job);
    state.now_s = root.input(|input| input.time);
    let mut list = menu(state.chosen.as_deref(), job.seen);
    state.letters.give(&mut list);
    ask(&mut list, state.asked);
    if let Some(pressed) = keys(root, view.settings, job, &list, out) {
        obey(root, job, state, pressed, out);
    }
    match top_bar_ui(root, job, out) {
        Some(WindowRequest::Hint) => ask_hint(job, state, out),
        Some(WindowRequest::Sights) => flip(&mut state.sights),
        Some(WindowRequest::Cutaway) => state.flip_cutaway(job, out),
        Some(WindowRequest::Settings) => flip(&mut state.settings),
        None => {}
    }
    let hint = hint(job, state);
    if let Some(hint) = &hint {
        let left_s = state.patience_left_s(hint, job.seen.tick);
        let by_hand = hint.part.and_then(|part| manner(part, job.seen));
        let before = out.len();
        let after = coach_line_ui(root, hint, by_hand.as_deref(), left_s, out);
        if out.len() > before {
            // The step goes on elsewhere: what lay open for the one before goes.
            state.let_go();
            state.writing = OnOff::Off;
        }
        match after {
            LineAfter::Stay => {}
            LineAfter::Show => state.show(hint),
            LineAfter::Skip => state.hinting = Hinting::Off,
        }
    }
    let rest = root.available_rect_before_wrap();
    state.follow_pen();
    let (scene, board) = split(root.max_rect().width(), rest, view, state.papers(job));
    let (scene, heard) = captions::split(scene, theme::text_factor(view.settings));
    heard_ui(root, heard, job, state.sniff(job));
    let hinted = hint.as_ref().and_then(|hint| hint.part);
    drawing_ui(root, scene, view, job, state, hinted, out);
    board_ui(root, board, view, job, state, &list, out);
    for command in out.iter() {
        if let Command::Act(action) = command {
            state.remembered.did(action);
        }
    }
    let spots = spots(scene, job.seen.place, job.parts);
    let marked = state
        .chosen
        .as_deref()
        .and_then(|part| spots.iter().find(|spot| spot.part == part))
        .map(|spot| spot.index);
    state.forget_part(out.get(already..).unwrap_or_default());
    state.ask_first(out, already);
    state.message.commanded(job, out.get(already..).unwrap_or_default());
    let pointer = root.input(|input| input.pointer.hover_pos()).filter(|at| scene.contains(*at));
    let hand = state.holding.seat().or(pointer);
    let turned = state.holding.turned();
    Layout { scene, place: Some(job.seen.place), marked, turned, hand }
}

fn drawing_ui(
    root: &mut Ui,
    scene: Rect,
    view: &View<'_>,
    job: &Job<'_>,
    state: &mut WorkState,
    hinted: Option<&str>,
    out: &mut Vec<Command>,
) {
    if !scene.is_positive() {
        return;
    }
    drawing_text_ui(root, scene, job);
    instrument_display_ui(root, scene, job);
    let asked = root.input(|input| input.key_down(egui::Key::F4));
    let labels = if asked { OnOff::On } else { view.settings.labels };
    let chosen = state.chosen.clone();
    let mut touched =
        hotspots_ui(root, scene, job, labels, chosen.as_deref(), hinted, &mut state.holding);
    state.handled(&mut touched, out);
    if let Some(part) = touched.pressed {
        state.choose(&part, touched.by);
        // A press and its release may come in one frame: the same press must not close the slip.
        state.popup_opened = root.ctx().cumulative_frame_nr();
    }
    let (refused, message) = match told_at_part(root, scene, job, state, out) {
        Said::AtThePart => (None, None),
        Said::AtTheFoot => (job.refusal, state.message.text()),
    };
    state.message_at = told_ui(root, scene, job.parts, refused, message, out);
    if state.sights == OnOff::On
        && let Some(part) = sights_ui(root, scene, job)
    {
        state.choose(part, By::Key);
    }
    popup(root, scene, job, state, out);
    if state.settings == OnOff::On {
        settings_card(root, scene, view, state, out);
    }
    end_card_ui(root, scene, job, out);
}

fn popup(root: &Ui, scene: Rect, job: &Job<'_>, state: &mut WorkState, out: &mut Vec<Command>) {
    // Once the job is over nothing can be done any more.
    if job.seen.over.is_some() {
        state.popup = OnOff::Off;
    }
    let (OnOff::On, Some(part)) = (state.popup, state.chosen.clone()) else { return };
    let spots = spots(scene, job.seen.place, job.parts);
    let drawn = spots.iter().find(|spot| spot.part == part).map(|spot| spot.rect);
    // Once open it keeps its place, wherever its part goes.
    state.anchor = state.anchor.or(drawn);
    // The page's list was made before this part was chosen.
    let mut list = menu(Some(&part), job.seen);
    state.letters.give(&mut list);
    ask(&mut list, state.asked);
    let middle = Rect::from_center_size(scene.center(), vec2(1.0, 1.0));
    let parts = PopupParts {
        part: &part,
        at: state.anchor.unwrap_or(middle),
        keep_clear: job.parts.iter().find(|it| it.id == "meter").map(|it| it.rect),
        menu: &list,
        forms: &mut state.forms,
        focus: core::mem::take(&mut state.popup_focus),
        opened: if state.popup_opened == root.ctx().cumulative_frame_nr() {
            Opened::Now
        } else {
            Opened::Before
        },
        run: state.run,
    };
    // What was refused or found must stay readable: the slip keeps clear of it.
    let free = clear_of(scene, state.message_at);
    let before = out.len();
    let after = popup_ui(root, free, job, parts, out);
    let moved = out.iter().skip(before).any(moves_a_part);
    if moved || after == PopupAfter::Close {
        state.popup = OnOff::Off;
        state.asked = None;
        root.memory_mut(|memory| memory.request_focus(spot_id(&part)));
    }
}

/// Whether a command moves the part that its list belongs to: the list closes with it.
fn moves_a_part(command: &Command) -> bool {
    use PlugStep::{SpinIn, SpinOut, StartByHand, StartByKey};
    matches!(
        command,
        Command::Act(
            Action::Plug { step: SpinIn | SpinOut | StartByHand | StartByKey, .. }
                | Action::Cap { .. }
                | Action::Adapter { .. }
                | Action::HoseOn { .. }
                | Action::HoseOff
                | Action::Door { .. }
                | Action::Go(_)
        )
    )
}

/// Where what was refused or found is said.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Said {
    /// At the part that the hand was on.
    AtThePart,
    /// At the foot of the drawing.
    AtTheFoot,
}

/// What was refused to the hand, or found by it, is said at the part itself; a refusal for some
/// seconds or until the next press.
fn told_at_part(
    root: &Ui,
    scene: Rect,
    job: &Job<'_>,
    state: &mut WorkState,
    out: &mut Vec<Command>,
) -> Said {
    let Some((part, since_s)) = state.handled_at.clone() else { return Said::AtTheFoot };
    let spots = spots(scene, job.seen.place, job.parts);
    let Some(spot) = spots.iter().find(|spot| spot.part == part) else { return Said::AtTheFoot };
    let kept = clear::kept_clear(job.parts);
    let Some(why) = job.refusal else {
        let found = state.message.text();
        found.into_iter().for_each(|it| labels::beside_ui(root, scene, spot.rect, &kept, it));
        return Said::AtThePart;
    };
    let (now_s, pressed) = root.input(|input| (input.time, input.pointer.any_pressed()));
    if now_s - since_s > REFUSAL_STAYS_S || (pressed && now_s > since_s) {
        state.handled_at = None;
        out.push(Command::RefusalRead);
    }
    root.ctx().request_repaint_after(core::time::Duration::from_millis(500));
    labels::beside_ui(root, scene, spot.rect, &kept, &t!("handling-refused", why = why));
    Said::AtThePart
}

/// The drawing above a message at its foot, where enough of it is left.
fn clear_of(scene: Rect, message: Option<Rect>) -> Rect {
    match message {
        Some(message) if message.top() - scene.top() > 0.5 * scene.height() => {
            Rect::from_min_max(scene.min, egui::pos2(scene.right(), message.top() - 4.0))
        }
        Some(_) | None => scene,
    }
}

fn settings_card(
    root: &Ui,
    scene: Rect,
    view: &View<'_>,
    state: &mut WorkState,
    out: &mut Vec<Command>,
) {
    Area::new(widgets::id("settings"))
        .order(Order::Foreground)
        .pivot(Align2::CENTER_CENTER)
        .fixed_pos(scene.center())
        .constrain_to(scene)
        .show(root.ctx(), |ui| {
            widgets::slip().show(ui, |ui| {
                ui.set_width((scene.width() - 60.0).clamp(40.0, 460.0 * theme::factor_of(ui)));
                egui::ScrollArea::vertical()
                    .id_salt("settings")
                    .max_height((scene.height() - 90.0).max(40.0))
                    .show(ui, |ui| settings_ui(ui, view.settings, out));
                if ui.button(t!("settings-close")).clicked() {
                    state.settings = OnOff::Off;
                }
            });
        });
}

fn obey(root: &Ui, job: &Job<'_>, state: &mut WorkState, pressed: Pressed, out: &mut Vec<Command>) {
    match pressed {
        Pressed::Hint => ask_hint(job, state, out),
        Pressed::Sheet if state.writing == OnOff::On => state.put_away(),
        Pressed::Sheet => flip(&mut state.sheet),
        Pressed::Sights => flip(&mut state.sights),
        Pressed::Cutaway => state.flip_cutaway(job, out),
        Pressed::Region => region(root, job, state),
        Pressed::Escape => {
            // The slip closes by itself; what lies under it closes with the next press.
            if state.popup == OnOff::Off {
                if state.settings == OnOff::On {
                    state.settings = OnOff::Off;
                } else if state.sights == OnOff::On {
                    state.sights = OnOff::Off;
                } else if state.writing == OnOff::On || state.sheet == OnOff::On {
                    state.put_away();
                } else if state.cutaway == OnOff::On {
                    state.cutaway = OnOff::Off;
                } else {
                    state.let_go();
                }
            }
        }
    }
}

/// The keyboard to the drawing's first part, or from the drawing to the sheet's first cell.
fn region(root: &Ui, job: &Job<'_>, state: &mut WorkState) {
    let spots = spots(Rect::EVERYTHING, job.seen.place, job.parts);
    let focused = root.memory(|memory| memory.focused());
    let in_drawing = spots.iter().any(|spot| focused == Some(spot_id(&spot.part)));
    match spots.first() {
        Some(first) if !in_drawing => {
            root.memory_mut(|memory| memory.request_focus(spot_id(&first.part)));
        }
        Some(_) | None => {
            let (port, stage) = (Port::Inlet, Stage::Rest);
            state.sheet = OnOff::On;
            state.entry.focus = NextFocus::Cell(Cell { port, stage, phase: Phase::Found });
        }
    }
}
