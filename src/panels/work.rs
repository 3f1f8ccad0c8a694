//! The page at work: strip, coach, drawing with its hot-spots, sheet.

use egui::{Align2, Area, Order, Rect, Ui, vec2};

use super::captions::captions_ui;
use super::coach::{Hint, Remembered, coach};
use super::coach_line::{LineAfter, coach_line_ui};
use super::end_card::end_card_ui;
use super::forms::FormState;
use super::glass::glass_ui;
use super::hotspots::{self, By, hotspots_ui, spot_id};
use super::keys::{Pressed, keys};
use super::kit;
use super::offers::{Offer, offers};
use super::popup::{PopupAfter, PopupFocus, PopupParts, popup_ui};
use super::settings_page::settings_ui;
use super::sheet::{self, Cell, EntryState, NextFocus, ROWS, SheetParts, sheet_ui};
use super::sights::sights_ui;
use super::strip::{Asked, strip_ui};
use super::theme;
use super::view::{Help, Job, Layout, View};
use super::wish::Wish;
use crate::bench::action::{OnOff, Phase};
use crate::bench::part::Place;
use crate::units::TICKS_PER_S;

/// What the page remembers.
#[derive(Debug)]
pub(super) struct WorkState {
    seed: u64,
    title: String,
    last_tick: u64,
    place: Place,
    chosen: Option<String>,
    /// The chosen part's box when it was last drawn.
    anchor: Option<Rect>,
    popup: OnOff,
    popup_focus: PopupFocus,
    entry: EntryState,
    forms: FormState,
    hinting: Hinting,
    remembered: Remembered,
    /// The hint that shows and the tick at which it came.
    hint_since: (String, u64),
    sheet: OnOff,
    sights: OnOff,
    settings: OnOff,
}

/// Whether hints show.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Hinting {
    /// They do not.
    Off,
    /// They follow the job.
    On,
    /// This one does, until it is followed.
    Once(String),
}

impl WorkState {
    pub(super) fn new(job: &Job<'_>) -> Self {
        Self {
            seed: job.seed,
            title: job.card.title.to_owned(),
            last_tick: job.seen.tick,
            place: job.seen.place,
            chosen: None,
            anchor: None,
            popup: OnOff::Off,
            popup_focus: PopupFocus::Stay,
            entry: EntryState::default(),
            forms: FormState::default(),
            hinting: match job.help {
                Help::Coached => Hinting::On,
                Help::Solo => Hinting::Off,
            },
            remembered: Remembered::default(),
            hint_since: (String::new(), 0),
            sheet: OnOff::Off,
            sights: OnOff::Off,
            settings: OnOff::Off,
        }
    }

    /// Whether this state belongs to another job, or to this one before it was begun again.
    pub(super) fn is_of_another(&self, job: &Job<'_>) -> bool {
        self.seed != job.seed
            || self.title != job.card.title
            || (job.seen.tick == 0 && self.last_tick > 0)
    }

    fn follow(&mut self, job: &Job<'_>) {
        self.last_tick = job.seen.tick;
        self.remembered.notice(job.seen);
        if self.place != job.seen.place {
            self.place = job.seen.place;
            self.let_go();
        }
    }

    fn let_go(&mut self) {
        self.chosen = None;
        self.anchor = None;
        self.popup = OnOff::Off;
    }

    /// Seconds that a hint still asks to wait.
    fn patience_left_s(&mut self, hint: &Hint, tick: u64) -> u32 {
        if self.hint_since.0 != hint.text {
            self.hint_since = (hint.text.clone(), tick);
        }
        let passed_s = tick.saturating_sub(self.hint_since.1) / TICKS_PER_S;
        hint.patience_s.saturating_sub(u32::try_from(passed_s).unwrap_or(u32::MAX))
    }

    /// Shows what a hint is about: the cell to write in, or the part.
    fn show(&mut self, hint: &Hint) {
        match (hint.cell, hint.part) {
            (Some(cell), _) => {
                self.sheet = OnOff::On;
                self.entry = EntryState { cell: Some(cell), ..EntryState::default() };
                self.entry.focus = NextFocus::Field;
            }
            (None, Some(part)) => self.choose(part, By::Key),
            (None, None) => {}
        }
    }

    fn choose(&mut self, part: &str, by: By) {
        self.chosen = Some(part.to_owned());
        self.popup = OnOff::On;
        self.popup_focus = match by {
            By::Pointer => PopupFocus::Stay,
            By::Key => PopupFocus::First,
        };
    }
}

fn flip(state: &mut OnOff) {
    *state = match *state {
        OnOff::On => OnOff::Off,
        OnOff::Off => OnOff::On,
    };
}

/// Shows the page and says what is left for the drawing.
pub(super) fn work_ui(
    root: &mut Ui,
    view: &View<'_>,
    job: &Job<'_>,
    state: &mut WorkState,
    out: &mut Vec<Wish>,
) -> Layout {
    state.follow(job);
    let list = offers(state.chosen.as_deref(), job.seen);
    if let Some(pressed) = keys(root, view.settings, job, &list, out) {
        obey(root, job, state, pressed, out);
    }
    match strip_ui(root, job, out) {
        Some(Asked::Hint) => ask_hint(job, state, out),
        Some(Asked::Sights) => flip(&mut state.sights),
        Some(Asked::Settings) => flip(&mut state.settings),
        None => {}
    }
    let hint = hint(job, state);
    if let Some(hint) = &hint {
        let left_s = state.patience_left_s(hint, job.seen.tick);
        match coach_line_ui(root, hint, left_s, out) {
            LineAfter::Stay => {}
            LineAfter::Show => state.show(hint),
            LineAfter::Skip => state.hinting = Hinting::Off,
        }
    }
    let rest = root.available_rect_before_wrap();
    let (scene, board) = split(root.max_rect().width(), rest, view);
    let hinted = hint.as_ref().and_then(|hint| hint.part);
    drawing_ui(root, scene, view, job, state, hinted, out);
    paper_ui(root, board, rest, view, job, state, &list, out);
    let spots = hotspots::spots(scene, job.seen.place, job.parts);
    let marked = state
        .chosen
        .as_deref()
        .and_then(|part| spots.iter().find(|spot| spot.part == part))
        .map(|spot| spot.index);
    Layout { scene, place: Some(job.seen.place), marked }
}

/// The drawing's part of the page and the sheet's; the sheet's is a tab where room is scarce.
fn split(window: f32, rest: Rect, view: &View<'_>) -> (Rect, Board) {
    let width = sheet::width(view);
    let tab = 74.0 * theme::text_factor(view.settings);
    let folded = window < 3.4 * width;
    let side = if folded { tab } else { width }.min(rest.width() * 0.5).max(0.0);
    let (scene, side) = rest.split_left_right_at_x(rest.right() - side);
    (scene, if folded { Board::Tab(side) } else { Board::Open(side) })
}

/// Where the sheet is.
#[derive(Debug, Clone, Copy)]
enum Board {
    /// Beside the drawing.
    Open(Rect),
    /// Behind a tab beside the drawing.
    Tab(Rect),
}

fn drawing_ui(
    root: &mut Ui,
    scene: Rect,
    view: &View<'_>,
    job: &Job<'_>,
    state: &mut WorkState,
    hinted: Option<&str>,
    out: &mut Vec<Wish>,
) {
    if !scene.is_positive() {
        return;
    }
    glass_ui(root, scene, job);
    let labels = view.settings.labels;
    let touched = hotspots_ui(root, scene, job, labels, state.chosen.as_deref(), hinted);
    if let Some(part) = touched.pressed {
        state.choose(&part, touched.by);
    }
    captions_ui(root, scene, job, out);
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

fn popup(root: &Ui, scene: Rect, job: &Job<'_>, state: &mut WorkState, out: &mut Vec<Wish>) {
    let (OnOff::On, Some(part)) = (state.popup, state.chosen.clone()) else { return };
    let spots = hotspots::spots(scene, job.seen.place, job.parts);
    let drawn = spots.iter().find(|spot| spot.part == part).map(|spot| spot.rect);
    state.anchor = drawn.or(state.anchor);
    // The page's list was made before this part was chosen.
    let list = offers(Some(&part), job.seen);
    let middle = Rect::from_center_size(scene.center(), vec2(1.0, 1.0));
    let parts = PopupParts {
        part: &part,
        at: state.anchor.unwrap_or(middle),
        offers: &list,
        forms: &mut state.forms,
        focus: core::mem::take(&mut state.popup_focus),
    };
    if popup_ui(root, scene, job, parts, out) == PopupAfter::Close {
        state.popup = OnOff::Off;
        root.memory_mut(|memory| memory.request_focus(spot_id(&part)));
    }
}

fn settings_card(
    root: &Ui,
    scene: Rect,
    view: &View<'_>,
    state: &mut WorkState,
    out: &mut Vec<Wish>,
) {
    Area::new(kit::id("settings"))
        .order(Order::Foreground)
        .pivot(Align2::CENTER_CENTER)
        .fixed_pos(scene.center())
        .constrain_to(scene)
        .show(root.ctx(), |ui| {
            kit::slip().show(ui, |ui| {
                ui.set_width((scene.width() - 60.0).clamp(40.0, 460.0 * theme::factor_of(ui)));
                egui::ScrollArea::vertical()
                    .id_salt("settings")
                    .max_height((scene.height() - 90.0).max(40.0))
                    .show(ui, |ui| settings_ui(ui, view.settings, out));
                if ui.button("Close settings").clicked() {
                    state.settings = OnOff::Off;
                }
            });
        });
}

#[expect(clippy::too_many_arguments, reason = "one place where everything meets")]
fn paper_ui(
    root: &mut Ui,
    board: Board,
    rest: Rect,
    view: &View<'_>,
    job: &Job<'_>,
    state: &mut WorkState,
    list: &[Offer],
    out: &mut Vec<Wish>,
) {
    let tab = match board {
        Board::Open(rect) => {
            let parts = SheetParts {
                chosen: state.chosen.as_deref(),
                offers: list,
                entry: &mut state.entry,
                forms: &mut state.forms,
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
    let width = sheet::width(view).min(rest.width() - tab.width()).max(0.0);
    let rect = Rect::from_min_max(
        egui::pos2(tab.left() - width, rest.top()),
        egui::pos2(tab.left(), rest.bottom()),
    );
    if !rect.is_positive() {
        return;
    }
    Area::new(kit::id("sheet-over")).order(Order::Middle).fixed_pos(rect.min).show(
        root.ctx(),
        |ui| {
            ui.set_clip_rect(rect);
            ui.set_min_size(rect.size());
            let parts = SheetParts {
                chosen: state.chosen.as_deref(),
                offers: list,
                entry: &mut state.entry,
                forms: &mut state.forms,
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
        OnOff::Off => "Job\nsheet\nF2",
        OnOff::On => "Fold\nsheet\nF2",
    };
    let button = root.put(at, egui::Button::new(text).fill(theme::SHEET).wrap());
    let name = match state.sheet {
        OnOff::Off => "Open the job sheet, F2",
        OnOff::On => "Fold the job sheet, F2",
    };
    kit::named(&button, egui::WidgetType::Button, name);
    if button.clicked() {
        flip(&mut state.sheet);
    }
}

fn hint(job: &Job<'_>, state: &mut WorkState) -> Option<Hint> {
    if state.hinting == Hinting::Off {
        return None;
    }
    let hint = coach(job.seen, &state.remembered);
    if let Hinting::Once(asked) = &state.hinting
        && hint.as_ref().is_none_or(|hint| hint.text != *asked)
    {
        state.hinting = Hinting::Off;
        return None;
    }
    hint
}

fn ask_hint(job: &Job<'_>, state: &mut WorkState, out: &mut Vec<Wish>) {
    state.hinting = match job.help {
        Help::Coached => Hinting::On,
        Help::Solo => match coach(job.seen, &state.remembered) {
            Some(hint) => {
                out.push(Wish::HintShown);
                Hinting::Once(hint.text)
            }
            None => Hinting::Off,
        },
    };
}

fn obey(root: &Ui, job: &Job<'_>, state: &mut WorkState, pressed: Pressed, out: &mut Vec<Wish>) {
    match pressed {
        Pressed::Hint => ask_hint(job, state, out),
        Pressed::Sheet => flip(&mut state.sheet),
        Pressed::Sights => flip(&mut state.sights),
        Pressed::Region => region(root, job, state),
        Pressed::Escape => {
            // The slip closes by itself; what lies under it closes with the next press.
            if state.popup == OnOff::Off {
                if state.settings == OnOff::On {
                    state.settings = OnOff::Off;
                } else if state.sights == OnOff::On {
                    state.sights = OnOff::Off;
                } else if state.sheet == OnOff::On {
                    state.sheet = OnOff::Off;
                } else {
                    state.let_go();
                }
            }
        }
    }
}

/// The keyboard to the drawing's first part, or from the drawing to the sheet's first cell.
fn region(root: &Ui, job: &Job<'_>, state: &mut WorkState) {
    let spots = hotspots::spots(Rect::EVERYTHING, job.seen.place, job.parts);
    let focused = root.memory(|memory| memory.focused());
    let in_drawing = spots.iter().any(|spot| focused == Some(spot_id(&spot.part)));
    match spots.first() {
        Some(first) if !in_drawing => {
            root.memory_mut(|memory| memory.request_focus(spot_id(&first.part)));
        }
        Some(_) | None => {
            let (port, stage) = ROWS[0];
            state.sheet = OnOff::On;
            state.entry.focus = NextFocus::Cell(Cell { port, stage, phase: Phase::Found });
        }
    }
}
