//! Hot-spots over the drawing: every part can be pointed at, pressed, reached by Tab and heard.

use egui::{
    CursorIcon, Id, Rect, Sense, Stroke, StrokeKind, TextStyle, Ui, WidgetInfo, WidgetType,
};

use super::handling::{Asked, AtPart, Holding, manner};
use super::labels;
use super::parts;
use super::spot::{Spot, spots};
use super::theme;
use super::view::Job;
use super::widgets;
use super::words;
use crate::hands::action::Action;
use crate::parts::{Fitted, OnOff};
use crate::senses::seen::Seen;

/// Room around a part for the arc of its turning, in points.
const ARC: f32 = 14.0;

/// A mouse that has not moved for so long only rests where it is, in seconds.
const RESTS_S: f32 = 1.0;

/// What happened over the drawing.
#[derive(Debug, Clone, Default)]
pub struct Touched {
    /// The part that was pressed, by pointer or key.
    pub pressed: Option<String>,
    /// Its id, to give the keyboard back to it.
    pub focus: Option<Id>,
    /// Whether the pointer did it.
    pub by: By,
    /// What the hand did on the parts themselves, in this order.
    pub acts: Vec<Action>,
    /// The part that it did it on.
    pub at: Option<String>,
}

impl Touched {
    fn add(&mut self, spot: &Spot, by: By, at: AtPart) {
        if at.list == Asked::Yes {
            self.pressed = Some(spot.part.clone());
            self.focus = Some(spot_id(&spot.part));
            self.by = by;
        }
        if !at.acts.is_empty() {
            self.at = Some(spot.part.clone());
            self.acts.extend(at.acts);
        }
    }
}

/// How a part was pressed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum By {
    /// With mouse, pen or finger.
    #[default]
    Pointer,
    /// With the keyboard or a screen reader.
    Key,
}

/// The id of a part's hot-spot.
#[must_use]
pub fn spot_id(part: &str) -> Id {
    widgets::id("part").with(part)
}

/// Lays the hot-spots over the drawing and paints names, ring and leader.
pub fn hotspots_ui(
    ui: &mut Ui,
    scene: Rect,
    job: &Job<'_>,
    labels: OnOff,
    chosen: Option<&str>,
    hinted: Option<&str>,
    holding: &mut Holding,
) -> Touched {
    let mut ui = ui.new_child(egui::UiBuilder::new().id(widgets::id("drawing")).max_rect(scene));
    ui.set_clip_rect(scene.intersect(ui.clip_rect()));
    let spots = spots(scene, job.seen.place, job.parts);
    let mut touched = Touched::default();
    let mut focused = None;
    for spot in &spots {
        if reach(&ui, spot, job, holding, &mut touched) {
            focused = Some(spot);
        }
    }
    let hovered = point(&ui, scene, &spots, job, holding, &mut touched);
    if labels == OnOff::On {
        names(&ui, scene, &spots, job);
    }
    let painter = ui.painter().clone();
    let font = TextStyle::Body.resolve(ui.style());
    for spot in &spots {
        let is = |other: Option<&str>| other == Some(spot.part.as_str());
        if is(hinted) {
            ring(&painter, spot.rect.expand(5.0), 2.0, theme::BRASS_DARK);
        }
        if is(chosen) {
            ring(&painter, spot.rect.expand(2.0), 2.0, theme::INK);
        }
    }
    if let Some(spot) = focused {
        ring(&painter, spot.rect.expand(2.0), 3.5, theme::PEN);
    }
    holding.keep_turning(&[hovered, focused].map(|it| it.map(|spot| spot.part.as_str())));
    let held = holding.held().and_then(|part| spots.iter().find(|spot| spot.part == part));
    if let Some(turned) = holding.turned() {
        let of_it = spots.iter().find(|spot| spot.part == turned.part);
        of_it.into_iter().for_each(|spot| swept(&painter, spot, turned.deg));
    }
    // A mouse that only rests on the drawing does not hide the name of what the keyboard is on.
    let rests = ui.input(|input| input.pointer.time_since_last_movement()) > RESTS_S;
    let pointed = if rests { focused.or(hovered) } else { hovered.or(focused) };
    if let Some(spot) = held.or(pointed) {
        ring(&painter, spot.rect.expand(1.0), 1.5, theme::INK);
        if held.is_some() {
            labels::leader_ui(
                &painter,
                scene,
                spot.rect.expand(ARC),
                &said(&spot.part, job),
                &font,
            );
        } else if chosen != Some(spot.part.as_str()) {
            labels::leader_ui(&painter, scene, spot.rect, &told(&spot.part, job), &font);
        }
    }
    touched
}

/// Whether a part is only the place where something could be fitted and is not: it can be looked
/// at, but there is nothing to name.
fn is_bare(part: &str, seen: &Seen) -> bool {
    let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
    part == "low-gas-switch" && burners.is_none_or(|b| b.low_gas_switch == Fitted::Off)
}

/// Name and state in a line, as read out and as written beside the part.
#[must_use]
pub fn said(part: &str, job: &Job<'_>) -> String {
    if is_bare(part, job.seen) {
        return t!("spot-no-low-gas-switch").into();
    }
    match words::value(part, job.seen) {
        Some(value) => t!("spot-part", part = parts::name(part), state = value),
        None => parts::name(part),
    }
}

/// The same with how the hand goes about it, on a line of its own.
fn told(part: &str, job: &Job<'_>) -> String {
    let said = said(part, job);
    match manner(part, job.seen) {
        Some(manner) => format!("{said}\n{manner}"),
        None => said,
    }
}

/// The half of a hot-spot that keyboard and screen reader use, in the order of the job. Gives
/// whether it has the keyboard.
fn reach(
    ui: &Ui,
    spot: &Spot,
    job: &Job<'_>,
    holding: &mut Holding,
    touched: &mut Touched,
) -> bool {
    let id = spot_id(&spot.part);
    let response = ui.interact(spot.rect, id, Sense::click());
    let text = said(&spot.part, job);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &text));
    if response.has_focus() || response.clicked() {
        touched.add(spot, By::Key, holding.keys(ui, spot, &response, job.seen));
    }
    response.has_focus()
}

/// The half that the pointer uses: small parts lie over large ones, whatever the order of the
/// job. It takes no focus, so Tab meets each part once.
fn point<'a>(
    ui: &Ui,
    scene: Rect,
    spots: &'a [Spot],
    job: &Job<'_>,
    holding: &mut Holding,
    touched: &mut Touched,
) -> Option<&'a Spot> {
    let mut by_size: Vec<&Spot> = spots.iter().collect();
    by_size.sort_by(|a, b| b.rect.area().total_cmp(&a.rect.area()));
    let mut hovered = None;
    for spot in by_size {
        let id = spot_id(&spot.part).with("pointer");
        let response = ui.interact(spot.rect, id, Sense::CLICK | Sense::DRAG);
        if response.hovered() {
            hovered = Some(spot);
        }
        touched.add(spot, By::Pointer, holding.hover(ui, spot, &response, job.seen));
    }
    let done = holding.pointer(ui, scene, spots, job.seen);
    touched.acts.extend(done.acts);
    touched.at = done.at.or(touched.at.take());
    if let Some(part) = done.list {
        touched.focus = Some(spot_id(&part));
        touched.by = By::Pointer;
        touched.pressed = Some(part);
    }
    if holding.held().is_some() {
        ui.ctx().set_cursor_icon(CursorIcon::Grabbing);
    }
    hovered
}

fn names(ui: &Ui, scene: Rect, spots: &[Spot], job: &Job<'_>) {
    // A name fits beside a part, not beside what fills half the drawing.
    let small = |spot: &&Spot| spot.rect.area() < 0.12 * scene.area();
    let at_hand = |spot: &&Spot| !crate::parts::at_hand().contains(&spot.part.as_str());
    // A tag that does not hang has a place, but there is nothing to name.
    let hangs = job.seen.furnace.as_ref().is_some_and(|furnace| furnace.tag == Fitted::On);
    let names: Vec<(String, Rect)> = spots
        .iter()
        .filter(|spot| hangs || spot.part != "tag")
        .filter(|spot| !is_bare(&spot.part, job.seen))
        .filter(small)
        .filter(at_hand)
        .map(|spot| (parts::name(&spot.part), spot.drawn))
        .collect();
    let taken: Vec<Rect> = spots.iter().map(|spot| spot.drawn).collect();
    labels::labels_ui(ui, scene, &names, &taken);
}

/// How far a part is turned since something last came of it: an arc around it, from the top on.
fn swept(painter: &egui::Painter, spot: &Spot, deg: f32) {
    if deg.abs() < 1.0 {
        return;
    }
    let radius = 0.5 * spot.rect.width().max(spot.rect.height()) + ARC - 4.0;
    let whole = deg.clamp(-360.0, 360.0);
    let steps = 2 + (whole.abs() / 8.0) as u16;
    let points = (0..=steps).map(|step| {
        let a = (whole * f32::from(step) / f32::from(steps) - 90.0).to_radians();
        spot.middle + radius * egui::vec2(a.cos(), a.sin())
    });
    let points: Vec<egui::Pos2> = points.collect();
    painter.line(points.clone(), Stroke::new(7.0, theme::SHEET));
    painter.line(points, Stroke::new(4.0, theme::PEN));
}

/// A ring that shows on light and dark: a line with a light edge outside it.
fn ring(painter: &egui::Painter, rect: Rect, width: f32, color: egui::Color32) {
    let edge = Stroke::new(width + 2.5, theme::SHEET);
    painter.rect_stroke(rect, 5.0, edge, StrokeKind::Middle);
    painter.rect_stroke(rect, 5.0, Stroke::new(width, color), StrokeKind::Middle);
}
