//! Pointer, wheel and keys at a part of the drawing, turned into what the hand does.

use core::time::Duration;

use egui::{Event, EventFilter, Key, MouseWheelUnit, PointerButton, Pos2, Rect, Response, Ui};

use super::grip::Grip;
use super::lever::LEVER_STEP_DEG;
use super::part::{Handling, handling};
use super::turn::EIGHTH_DEG;
use super::turn_by::TurnBy;
use crate::hands::action::Action;
use crate::panels::spot::{Spot, top_spot};
use crate::panels::view::Turned;
use crate::parts::Height;
use crate::senses::seen::Seen;

/// What one press of an arrow key turns by where a whole thread has to be turned, in degrees.
const THREAD_PRESS_DEG: f32 = 180.0;
/// Points of a smooth wheel that make a notch.
const POINTS_A_NOTCH: f32 = 40.0;
/// Two clicks within this time on one part are a double click, in seconds.
const DOUBLE_S: f64 = 0.3;
/// How often it is looked whether the hand stayed.
const STAYING: Duration = Duration::from_millis(50);
/// A long thread turns by this much a notch of the wheel, in degrees.
const THREAD_NOTCH_DEG: f32 = 90.0;

/// What the hands hold now: one part by the pointer, one by wheel or keys.
#[derive(Debug, Default)]
pub struct Holding {
    grip: Option<Grip>,
    by: TurnBy,
    /// The part that was last clicked, and when.
    clicked: Option<(String, f64)>,
    /// What a smooth wheel has scrolled since its last notch, in points.
    scrolled: f32,
}

/// What keys or wheel did at a part.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct AtPart {
    /// What is to be done, in this order.
    pub acts: Vec<Action>,
    /// Whether the list of ways is asked for.
    pub list: Asked,
}

/// What the pointer did on the drawing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ByPointer {
    /// What is to be done, in this order.
    pub acts: Vec<Action>,
    /// The part that it was last done on.
    pub at: Option<String>,
    /// The part whose list is asked for.
    pub list: Option<String>,
}

impl ByPointer {
    fn add(&mut self, part: &str, acts: Vec<Action>) {
        if !acts.is_empty() {
            self.at = Some(part.to_owned());
            self.acts.extend(acts);
        }
    }
}

/// Whether something is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Asked {
    /// Nobody asked for anything.
    #[default]
    No,
    /// The list was asked for.
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

    /// Where a tool sits while it turns what is held: in the middle of the part.
    #[must_use]
    pub fn seat(&self) -> Option<Pos2> {
        self.grip.as_ref().and_then(Grip::seat)
    }

    /// Nothing is held any longer: another place, the window lost the pointer.
    pub fn let_go(&mut self) {
        *self = Self::default();
    }

    /// A part that wheel or keys have begun to turn springs back once neither is at it any more.
    pub fn keep_turning(&mut self, at: &[Option<&str>]) {
        let (part, deg) = self.by.shown();
        if deg != 0.0 && !at.contains(&Some(part)) {
            self.by = TurnBy::default();
        }
    }

    /// Everything that the pointer did on the drawing since the frame before, event by event: on a
    /// slow machine a whole drag comes in one frame.
    pub fn pointer(&mut self, ui: &Ui, scene: Rect, spots: &[Spot], seen: &Seen) -> ByPointer {
        let (events, now_s, down) = ui.input(|input| {
            (input.events.clone(), input.time, input.pointer.button_down(PointerButton::Primary))
        });
        let mut done = ByPointer::default();
        for event in events {
            match event {
                Event::PointerButton {
                    pos, button: PointerButton::Primary, pressed: true, ..
                } => {
                    let spot = top_spot(spots, pos).filter(|_| is_on_top(ui, scene, pos));
                    self.grip =
                        spot.map(|spot| Grip::new(&spot.part, pos, spot.middle, now_s, seen));
                }
                Event::PointerMoved(pos) => {
                    if let Some(grip) = self.grip.as_mut() {
                        let part = grip.part().to_owned();
                        done.add(&part, grip.moved(pos, height_at(spots, &part, pos), seen));
                    }
                }
                Event::PointerButton { pos, button: PointerButton::Primary, .. } => {
                    if let Some(grip) = self.grip.take() {
                        self.let_go_at(grip, pos, now_s, spots, seen, &mut done);
                    }
                }
                _ => {}
            }
        }
        if !down {
            // Let go where the window did not see it.
            self.grip = None;
        }
        if let Some(grip) = self.grip.as_mut() {
            let part = grip.part().to_owned();
            let height = height_at(spots, &part, grip.at());
            done.add(&part, grip.stayed(now_s, height, seen));
            ui.ctx().request_repaint_after(STAYING);
        }
        done
    }

    fn let_go_at(
        &mut self,
        grip: Grip,
        pos: Pos2,
        now_s: f64,
        spots: &[Spot],
        seen: &Seen,
        done: &mut ByPointer,
    ) {
        let part = grip.part().to_owned();
        if !grip.is_click() {
            let over = top_spot(spots, pos).map(|spot| spot.part.as_str());
            done.add(over.unwrap_or(&part), grip.released(over, seen));
            return;
        }
        let press = handling(&part, height_at(spots, &part, pos), seen).press;
        let again = self
            .clicked
            .as_ref()
            .is_some_and(|(last, at_s)| *last == part && now_s - at_s < DOUBLE_S);
        self.clicked = Some((part.clone(), now_s));
        if press.is_empty() {
            done.list = Some(part);
        } else if !again || press.iter().all(counts) {
            done.add(&part, press);
        }
    }

    /// The wheel at a part that the pointer is over, and whether its list is asked for.
    pub fn hover(&mut self, ui: &Ui, spot: &Spot, response: &Response, seen: &Seen) -> AtPart {
        let holds = handling(&spot.part, Height::Head, seen).hold.is_some();
        if response.secondary_clicked() || (response.long_touched() && !holds) {
            self.grip = None;
            return AtPart { acts: Vec::new(), list: Asked::Yes };
        }
        let acts = match response.hovered() {
            true => self.wheel(ui, &spot.part, Height::Head, seen),
            false => Vec::new(),
        };
        AtPart { acts, list: Asked::No }
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
        Some(detent) if detent.deg > EIGHTH_DEG => thread_deg,
        Some(_) | None => EIGHTH_DEG,
    }
}

/// Whether a press is counted each time: the second half of a double click is no second press but
/// for these.
fn counts(action: &Action) -> bool {
    matches!(action, Action::Setpoint(_) | Action::MeterUnit(_) | Action::HoseOn { .. })
}

/// Whether a point is on the drawing with nothing over it.
fn is_on_top(ui: &Ui, scene: Rect, at: Pos2) -> bool {
    let over = ui.ctx().layer_id_at(at);
    scene.contains(at) && over.is_none_or(|layer| layer == ui.layer_id())
}

/// Air that has two heights in one box is that of the head in its upper half.
fn height_at(spots: &[Spot], part: &str, at: Pos2) -> Height {
    match spots.iter().find(|spot| spot.part == part) {
        Some(spot) if at.y > spot.rect.center().y => Height::Floor,
        Some(_) | None => Height::Head,
    }
}
