//! Hot-spots over the drawing: every part can be pointed at, pressed, reached by Tab and heard.

use egui::{Id, Rect, Sense, Stroke, StrokeKind, TextStyle, Ui, WidgetInfo, WidgetType, vec2};

use super::labels;
use super::parts;
use super::theme;
use super::view::{Job, PartBox};
use super::widgets;
use super::words;
use crate::parts::{Fitted, OnOff, Place};
use crate::senses::seen::Seen;

/// Parts of the drawing that are there to look at only.
const NOT_TOUCHED: &[&str] = &["backdrop", "tray", "tool-roll", "grid"];

/// The place in the window where a part can be pressed.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// The part's id, without piece or state.
    pub part: String,
    /// Index of its box.
    pub index: usize,
    /// Where it is drawn, inside the drawing's rectangle.
    pub drawn: Rect,
    /// Where it can be pressed: as drawn, at least 26 points either way.
    pub rect: Rect,
}

/// What happened over the drawing.
#[derive(Debug, Clone, Default)]
pub struct Touched {
    /// The part that was pressed, by pointer or key.
    pub pressed: Option<String>,
    /// Its id, to give the keyboard back to it.
    pub focus: Option<Id>,
    /// Whether the pointer did it.
    pub by: By,
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

/// The hot-spots of a drawing, in the order of the job.
#[must_use]
pub fn spots(scene: Rect, place: Place, boxes: &[PartBox]) -> Vec<Spot> {
    let mut spots: Vec<Spot> = Vec::new();
    for (index, part) in boxes.iter().enumerate() {
        let name = parts::canonical(&part.id);
        let drawn = part.rect.intersect(scene);
        let is_known = spots.iter().any(|spot| spot.part == name);
        if parts::is_piece(&part.id)
            || is_known
            || NOT_TOUCHED.contains(&name)
            || !drawn.is_positive()
        {
            continue;
        }
        let side = vec2(drawn.width().max(widgets::TARGET), drawn.height().max(widgets::TARGET));
        let rect = inside(Rect::from_center_size(drawn.center(), side), scene);
        spots.push(Spot { part: name.to_owned(), index, drawn, rect });
    }
    spots.sort_by_key(|spot| parts::rank(place, &spot.part));
    spots
}

/// Moves a box into the drawing, if it is not larger.
fn inside(rect: Rect, scene: Rect) -> Rect {
    let shift = vec2(
        (scene.left() - rect.left()).max(0.0) - (rect.right() - scene.right()).max(0.0),
        (scene.top() - rect.top()).max(0.0) - (rect.bottom() - scene.bottom()).max(0.0),
    );
    rect.translate(shift).intersect(scene)
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
) -> Touched {
    let mut ui = ui.new_child(egui::UiBuilder::new().id(widgets::id("drawing")).max_rect(scene));
    ui.set_clip_rect(scene.intersect(ui.clip_rect()));
    let spots = spots(scene, job.seen.place, job.parts);
    let mut touched = Touched::default();
    let mut focused = None;
    for spot in &spots {
        if reach(&ui, spot, job, &mut touched) {
            focused = Some(spot);
        }
    }
    let hovered = point(&ui, &spots, &mut touched);
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
    if let Some(spot) = hovered.or(focused) {
        ring(&painter, spot.rect.expand(1.0), 1.5, theme::INK);
        if chosen != Some(spot.part.as_str()) {
            labels::leader_ui(&painter, scene, spot.rect, &said(&spot.part, job), &font);
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

/// The half of a hot-spot that keyboard and screen reader use, in the order of the job. Gives
/// whether it has the keyboard.
fn reach(ui: &Ui, spot: &Spot, job: &Job<'_>, touched: &mut Touched) -> bool {
    let id = spot_id(&spot.part);
    let response = ui.interact(spot.rect, id, Sense::click());
    let text = said(&spot.part, job);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &text));
    if response.clicked() {
        *touched = Touched { pressed: Some(spot.part.clone()), focus: Some(id), by: By::Key };
    }
    response.has_focus()
}

/// The half that the pointer uses: small parts lie over large ones, whatever the order of the
/// job. It takes no focus, so Tab meets each part once.
fn point<'a>(ui: &Ui, spots: &'a [Spot], touched: &mut Touched) -> Option<&'a Spot> {
    let mut by_size: Vec<&Spot> = spots.iter().collect();
    by_size.sort_by(|a, b| b.rect.area().total_cmp(&a.rect.area()));
    let mut hovered = None;
    for spot in by_size {
        let id = spot_id(&spot.part);
        let response = ui.interact(spot.rect, id.with("pointer"), Sense::CLICK);
        if response.hovered() {
            hovered = Some(spot);
        }
        if response.clicked() {
            *touched =
                Touched { pressed: Some(spot.part.clone()), focus: Some(id), by: By::Pointer };
        }
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

/// A ring that shows on light and dark: a line with a light edge outside it.
fn ring(painter: &egui::Painter, rect: Rect, width: f32, color: egui::Color32) {
    let edge = Stroke::new(width + 2.5, theme::SHEET);
    painter.rect_stroke(rect, 5.0, edge, StrokeKind::Middle);
    painter.rect_stroke(rect, 5.0, Stroke::new(width, color), StrokeKind::Middle);
}
