//! Pointer, wheel and keys at a part of the drawing, turned into what the hand does.

use std::time::Duration;

use egui::{Event, EventFilter, Key, MouseWheelUnit, PointerButton, Pos2, Response, Ui};

use super::grip::{Grip, Turned};
use super::lever::LEVER_STEP_DEG;
use super::part::{Handling, handling};
use super::turn_by::TurnBy;
use crate::hands::action::Action;
use crate::panels::spot::{Spot, top_spot};
use crate::parts::Height;
use crate::senses::seen::Seen;

/// What one notch of the wheel or one press of an arrow key turns a screw by, in degrees.
const NOTCH_DEG: f32 = 45.0;
/// What one press of an arrow key turns by where a whole thread has to be turned, in degrees.
const THREAD_PRESS_DEG: f32 = 180.0;
/// Points of a smooth wheel that make a notch.
const POINTS_A_NOTCH: f32 = 40.0;
/// How often it is looked whether the hand stayed.
const STAYING: Duration = Duration::from_millis(50);
/// A long thread turns by this much a notch of the wheel, in degrees.
const THREAD_NOTCH_DEG: f32 = 90.0;

/// What the hands hold now: one part by the pointer, one by wheel or keys.
#[derive(Debug, Default)]
pub struct Holding {
    grip: Option<Grip>,
    by: TurnBy,
    /// What a smooth wheel has scrolled since its last notch, in points.
    scrolled: f32,
}

/// What the pointer did at a part, beyond being over it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct AtPart {
    /// What is to be done, in this order.
    pub acts: Vec<Action>,
    /// Whether the list of ways is asked for.
    pub list: Asked,
}

/// Whether something is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Asked {
    /// It is not.
    #[default]
    No,
    /// It is.
    Yes,
}

impl From<bool> for Asked {
    fn from(it: bool) -> Self {
        if it { Self::Yes } else { Self::No }
    }
}

impl Holding {
    /// How far the part that is held is turned.
    #[must_use]
    pub fn turned(&self) -> Option<Turned> {
        match &self.grip {
            Some(grip) => Some(grip.turned()),
            None => {
                let (part, deg) = self.by.shown();
                (deg != 0.0).then(|| Turned { part: part.to_owned(), deg })
            }
        }
    }

    /// The part that the pointer holds.
    #[must_use]
    pub fn held(&self) -> Option<&str> {
        self.grip.as_ref().map(Grip::part)
    }

    /// Whether something is on its way to another part.
    #[must_use]
    pub fn carries(&self) -> bool {
        self.grip.as_ref().is_some_and(Grip::carries)
    }

    /// Nothing is held any longer: another place, the window lost the pointer.
    pub fn let_go(&mut self) {
        *self = Self::default();
    }

    /// The pointer at one part in this frame.
    pub fn point(&mut self, ui: &Ui, spot: &Spot, response: &Response, seen: &Seen) -> AtPart {
        let at = response.interact_pointer_pos().or(response.hover_pos());
        let height = height_at(spot, at);
        let secondary = response.secondary_clicked()
            || (response.long_touched() && handling(&spot.part, height, seen).hold.is_none());
        if secondary {
            self.grip = None;
            return AtPart { acts: Vec::new(), list: Asked::Yes };
        }
        if response.clicked() {
            return self.click(spot, response, height, seen);
        }
        let mut acts = Vec::new();
        if let Some(at) = at.filter(|_| response.is_pointer_button_down_on()) {
            let primary = ui.input(|input| input.pointer.primary_down());
            let now_s = ui.input(|input| input.time);
            if self.held() != Some(spot.part.as_str()) && primary {
                self.grip = Some(Grip::new(&spot.part, at, spot.middle, now_s, seen));
            }
            if let Some(grip) = self.grip.as_mut().filter(|_| primary) {
                if response.dragged() {
                    acts.extend(grip.moved(at, height, seen));
                }
                acts.extend(grip.stayed(now_s, height, seen));
                ui.ctx().request_repaint_after(STAYING);
            }
        }
        if response.hovered() {
            acts.extend(self.wheel(ui, &spot.part, height, seen));
        }
        AtPart { acts, list: Asked::No }
    }

    fn click(&mut self, spot: &Spot, response: &Response, height: Height, seen: &Seen) -> AtPart {
        let spent = self.grip.take().is_some_and(|grip| grip.is_spent());
        let it = handling(&spot.part, height, seen);
        if spent {
            return AtPart::default();
        }
        if it.press.is_empty() {
            return AtPart { acts: Vec::new(), list: Asked::Yes };
        }
        // The second half of a double click is no second press, but for keys that count presses.
        let counts = it.press.iter().all(|action| {
            matches!(action, Action::Setpoint(_) | Action::MeterUnit(_) | Action::HoseOn { .. })
        });
        let again = response.double_clicked() || response.triple_clicked();
        let acts = if again && !counts { Vec::new() } else { it.press };
        AtPart { acts, list: Asked::No }
    }

    /// The pointer let go, or the window lost it: what is set down where.
    pub fn release(&mut self, ui: &Ui, spots: &[Spot], seen: &Seen) -> Vec<Action> {
        let down = ui.input(|input| input.pointer.button_down(PointerButton::Primary));
        if down {
            return Vec::new();
        }
        let Some(grip) = self.grip.take() else { return Vec::new() };
        let released = ui.input(|input| input.pointer.any_released());
        let at = ui.input(|input| input.pointer.interact_pos()).filter(|_| released);
        let over = at.and_then(|at| top_spot(spots, at)).map(|spot| spot.part.as_str());
        grip.released(over, seen)
    }

    fn wheel(&mut self, ui: &Ui, part: &str, height: Height, seen: &Seen) -> Vec<Action> {
        let notches = ui.input(|input| {
            let one = |event: &Event| match event {
                Event::MouseWheel { unit: MouseWheelUnit::Point, delta, .. } => {
                    delta.y / POINTS_A_NOTCH
                }
                Event::MouseWheel { delta, .. } => delta.y,
                _ => 0.0,
            };
            input.events.iter().map(one).sum::<f32>()
        });
        if notches == 0.0 {
            return Vec::new();
        }
        let it = handling(part, height, seen);
        if it.lever.is_none() && it.turning.is_none() {
            return Vec::new();
        }
        self.scrolled += notches;
        let whole = self.scrolled.trunc();
        self.scrolled -= whole;
        self.turn(part, whole * per_notch(&it, whole, THREAD_NOTCH_DEG), &it, seen)
    }

    /// The keys at the part that has the keyboard: arrows turn, Space presses. Gives also whether
    /// Space was that press, which then opens no list.
    pub fn keys(&mut self, ui: &Ui, spot: &Spot, response: &Response, seen: &Seen) -> AtPart {
        let it = handling(&spot.part, Height::Head, seen);
        if it.lever.is_some() || !it.turning.is_none() {
            let filter = EventFilter { horizontal_arrows: true, ..EventFilter::default() };
            ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
        }
        let presses = |key| ui.input(|input| input.num_presses(key));
        let (right, left) = (presses(Key::ArrowRight), presses(Key::ArrowLeft));
        let mut acts = Vec::new();
        for (count, way) in [(right, 1.0_f32), (left, -1.0)] {
            for _ in 0..count {
                let deg = way * per_notch(&it, way, THREAD_PRESS_DEG);
                acts.extend(self.turn(&spot.part, deg, &it, seen));
            }
        }
        let mut list = Asked::from(response.clicked());
        if response.clicked() && presses(Key::Space) > 0 {
            let at_once = it.at_once();
            if !at_once.is_empty() {
                acts.extend(at_once);
                list = Asked::No;
            }
        }
        AtPart { acts, list }
    }

    fn turn(&mut self, part: &str, deg: f32, it: &Handling, seen: &Seen) -> Vec<Action> {
        if !self.by.is_of(part) {
            self.by = TurnBy::begin(part);
        }
        self.by.turn(deg, it, seen)
    }
}

/// Degrees of a notch: a step of a lever, an eighth of a screw, more on a long thread.
fn per_notch(it: &Handling, way: f32, thread_deg: f32) -> f32 {
    if it.lever.is_some() {
        return f32::from(LEVER_STEP_DEG);
    }
    match it.turning.way(way) {
        Some(detent) if detent.deg > NOTCH_DEG => thread_deg,
        Some(_) | None => NOTCH_DEG,
    }
}

/// Air that has two heights in one box is that of the head in its upper half.
fn height_at(spot: &Spot, at: Option<Pos2>) -> Height {
    match at {
        Some(at) if at.y > spot.rect.center().y => Height::Floor,
        Some(_) | None => Height::Head,
    }
}
