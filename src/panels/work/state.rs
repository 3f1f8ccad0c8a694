//! What the page at work remembers between frames.

use egui::Rect;

use super::message::Message;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::panels::captions::Sniff;
use crate::panels::coach::{CardAsks, Hint, Remembered, coach};
use crate::panels::command::Command;
use crate::panels::cutaway::CutawayState;
use crate::panels::forms::FormState;
use crate::panels::handling::Holding;
use crate::panels::hotspots::{By, Touched};
use crate::panels::menu::{Letters, is_asked_twice};
use crate::panels::popup::PopupFocus;
use crate::panels::sheet::{EntryState, NextFocus};
use crate::panels::view::{Help, Job};
use crate::parts::{Height, OnOff, Place};
use crate::senses::seen::Smell;
use crate::units::TICKS_PER_S;

/// How long a sniff that found nothing stays in the line under the drawing, in seconds.
const SNIFF_STAYS_S: u64 = 120;

/// What the page remembers.
#[derive(Debug)]
pub(in crate::panels) struct WorkState {
    pub(super) seed: u64,
    pub(super) title: String,
    pub(super) last_tick: u64,
    pub(super) place: Place,
    pub(super) chosen: Option<String>,
    /// The chosen part's box when it was last drawn.
    pub(super) anchor: Option<Rect>,
    pub(super) popup: OnOff,
    pub(super) popup_focus: PopupFocus,
    /// The frame in which the slip was opened.
    pub(super) popup_opened: u64,
    pub(super) entry: EntryState,
    pub(super) forms: FormState,
    pub(super) hinting: Hinting,
    pub(super) remembered: Remembered,
    /// The hint that shows and the tick at which it came.
    pub(super) hint_since: (String, u64),
    pub(super) sheet: OnOff,
    /// Whether it lies open wide: since it was written on, until the hands go back to work.
    pub(super) writing: OnOff,
    /// The cutaway, open or not, and what it remembers.
    pub(super) cutaway: OnOff,
    pub(super) pane: CutawayState,
    pub(super) sights: OnOff,
    pub(super) settings: OnOff,
    pub(super) message: Message,
    /// A repair that was chosen and waits to be chosen again.
    pub(super) asked: Option<Repair>,
    pub(super) letters: Letters,
    /// Tells this job's folds and scrolls from those of the jobs before.
    pub(super) run: u64,
    /// Where a message lay over the drawing in the last frame.
    pub(super) message_at: Option<Rect>,
    /// The last sniff and the tick at which it came.
    pub(super) sniffed: (Option<(Height, Smell)>, u64),
    /// What the hands hold.
    pub(super) holding: Holding,
    /// The part that the hand last did something on, and when, in seconds of the window.
    pub(super) handled_at: Option<(String, f64)>,
    /// Time of the window, in seconds.
    pub(super) now_s: f64,
}

/// How the trainee has the papers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Papers {
    /// Put away, where room is scarce.
    Away,
    /// Opened to be read.
    Open,
    /// Opened to be written on.
    Wide,
    /// The cutaway lies over them.
    Cutaway,
}

/// Whether the coach's hints show.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Hinting {
    /// No hint shows until one is asked for.
    Off,
    /// They follow the job.
    On,
    /// This one does, until it is followed.
    Once(String),
}

impl WorkState {
    pub(in crate::panels) fn new(job: &Job<'_>, run: u64, remembered: Remembered) -> Self {
        Self {
            seed: job.seed,
            title: job.card.title.to_owned(),
            last_tick: job.seen.tick,
            place: job.seen.place,
            chosen: None,
            anchor: None,
            popup: OnOff::Off,
            popup_focus: PopupFocus::Stay,
            popup_opened: u64::MAX,
            entry: EntryState::default(),
            forms: FormState::default(),
            hinting: match job.help {
                Help::Coached => Hinting::On,
                Help::Solo => Hinting::Off,
            },
            remembered,
            hint_since: (String::new(), 0),
            sheet: OnOff::Off,
            writing: OnOff::Off,
            cutaway: OnOff::Off,
            pane: CutawayState::default(),
            sights: OnOff::Off,
            settings: OnOff::Off,
            message: Message::new(job),
            asked: None,
            letters: Letters::default(),
            run,
            message_at: None,
            sniffed: (job.seen.sniffed, job.seen.tick),
            holding: Holding::default(),
            handled_at: None,
            now_s: 0.0,
        }
    }

    /// Whether this state belongs to another job, or to this one before it was begun again or gone
    /// back in.
    pub(in crate::panels) fn is_of_another(&self, job: &Job<'_>) -> bool {
        self.seed != job.seed || self.title != job.card.title || job.seen.tick < self.last_tick
    }

    pub(super) fn follow(&mut self, job: &Job<'_>) {
        self.last_tick = job.seen.tick;
        self.message.follow(job);
        if self.sniffed.0 != job.seen.sniffed {
            self.sniffed = (job.seen.sniffed, job.seen.tick);
        }
        self.remembered.notice(job.seen);
        if self.place != job.seen.place {
            self.place = job.seen.place;
            self.holding.let_go();
            self.handled_at = None;
            self.let_go();
        }
    }

    /// What the hand did on the parts themselves becomes commands; a list that is open closes.
    pub(super) fn handled(&mut self, touched: &mut Touched, out: &mut Vec<Command>) {
        let acts = core::mem::take(&mut touched.acts);
        if acts.is_empty() {
            return;
        }
        self.popup = OnOff::Off;
        self.writing = OnOff::Off;
        self.handled_at = touched.at.take().map(|part| (part, self.now_s));
        out.extend(acts.into_iter().map(Command::Act));
    }

    /// What was done in this frame otherwise than by the hand, from a list or by the coach, is not said
    /// at the part that the hand was last on.
    pub(super) fn forget_part(&mut self, commands: &[Command]) {
        let acts = commands.iter().any(|it| matches!(it, Command::Act(_)));
        let now_s = self.now_s;
        self.handled_at.take_if(|(_, since_s)| acts && *since_s < now_s);
    }

    pub(super) fn let_go(&mut self) {
        self.chosen = None;
        self.anchor = None;
        self.popup = OnOff::Off;
        self.asked = None;
    }

    /// Holds a repair that is asked for twice back when it is commanded for the first time. Doing
    /// something else takes the question back.
    pub(super) fn ask_first(&mut self, out: &mut Vec<Command>, from: usize) {
        for command in out.split_off(from.min(out.len())) {
            let mends = if let Command::Act(Action::Mend(repair)) = &command {
                Some(*repair)
            } else {
                None
            };
            let first = mends.filter(|it| is_asked_twice(*it) && self.asked != Some(*it));
            if matches!(command, Command::Act(_)) {
                self.asked = first;
            }
            if first.is_none() {
                out.push(command);
            }
        }
    }

    /// Seconds that a hint still asks to wait.
    pub(super) fn patience_left_s(&mut self, hint: &Hint, tick: u64) -> u32 {
        if self.hint_since.0 != hint.text {
            self.hint_since = (hint.text.clone(), tick);
        }
        let passed_s = tick.saturating_sub(self.hint_since.1) / TICKS_PER_S;
        hint.patience_s.saturating_sub(u32::try_from(passed_s).unwrap_or(u32::MAX))
    }

    /// Shows what a hint is about: the cell to write in, or the part.
    pub(super) fn show(&mut self, hint: &Hint) {
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

    /// Whether the last sniff is still worth a line.
    pub(super) fn sniff(&self, job: &Job<'_>) -> Sniff {
        let since = job.seen.tick.saturating_sub(self.sniffed.1);
        if since < SNIFF_STAYS_S * TICKS_PER_S { Sniff::Fresh } else { Sniff::Old }
    }

    /// Opens the sheet wide as soon as something is written on it.
    pub(super) fn follow_pen(&mut self) {
        if self.entry.cell.is_some() {
            self.writing = OnOff::On;
            self.sheet = OnOff::On;
        }
    }

    /// The sheet back to where it was before it was written on, or behind its tab.
    pub(super) fn put_away(&mut self) {
        self.writing = OnOff::Off;
        self.sheet = OnOff::Off;
        self.entry = EntryState::default();
    }

    /// Opens the cutaway or closes it; that it was opened is written down.
    pub(super) fn flip_cutaway(&mut self, job: &Job<'_>, out: &mut Vec<Command>) {
        if job.behind.is_none() {
            return;
        }
        flip(&mut self.cutaway);
        if self.cutaway == OnOff::On {
            self.writing = OnOff::Off;
            out.push(Command::CutawayOpened);
        }
    }

    /// How the papers lie.
    pub(super) fn papers(&self, job: &Job<'_>) -> Papers {
        if self.cutaway == OnOff::On && self.writing == OnOff::Off && job.behind.is_some() {
            return Papers::Cutaway;
        }
        match (self.writing, self.sheet) {
            (OnOff::On, _) => Papers::Wide,
            (OnOff::Off, OnOff::On) => Papers::Open,
            (OnOff::Off, OnOff::Off) => Papers::Away,
        }
    }

    pub(super) fn choose(&mut self, part: &str, by: By) {
        self.chosen = Some(part.to_owned());
        self.writing = OnOff::Off;
        self.anchor = None;
        self.asked = None;
        self.popup = OnOff::On;
        self.popup_focus = match by {
            By::Pointer => PopupFocus::Stay,
            By::Key => PopupFocus::First,
        };
    }
}

/// What the job card asks for.
fn card_asks<'a>(job: &'a Job<'_>) -> CardAsks<'a> {
    CardAsks { hold_s: job.card.hold_s, settle_s: job.card.settle_s, required: job.card.required }
}

/// The hint to show, if any.
pub(super) fn hint(job: &Job<'_>, state: &mut WorkState) -> Option<Hint> {
    if state.hinting == Hinting::Off {
        return None;
    }
    let hint = coach(job.seen, &state.remembered, card_asks(job));
    if let Hinting::Once(asked) = &state.hinting
        && hint.as_ref().is_none_or(|hint| hint.text != *asked)
    {
        state.hinting = Hinting::Off;
        return None;
    }
    hint
}

/// A hint was asked for.
pub(super) fn ask_hint(job: &Job<'_>, state: &mut WorkState, out: &mut Vec<Command>) {
    state.hinting = match job.help {
        Help::Coached => Hinting::On,
        Help::Solo => match coach(job.seen, &state.remembered, card_asks(job)) {
            Some(hint) => {
                out.push(Command::HintShown);
                Hinting::Once(hint.text)
            }
            None => Hinting::Off,
        },
    };
}

pub(super) fn flip(state: &mut OnOff) {
    *state = match *state {
        OnOff::On => OnOff::Off,
        OnOff::Off => OnOff::On,
    };
}
