//! Where the parts are: boxes in window points, in paint order, without what is covered.

use bevy::prelude::*;
use bevy_egui::egui;

use super::drawings::{self, NamedDrawing, PAGE, Placement};
use super::page::{AppSystems, CurrentSeen, OnPage, PageRect};
use super::pose::{Shown, is_absent, is_ground, is_not_fitted};
use super::scene::{Aim, Drawings, PartEntities};
use super::svg::{Box4, Drawing};
use crate::panels::view::PartBox;

/// Smallest side of a box, in window points, so that it can be hit.
const LEAST_SIDE: f32 = 26.0;
/// How far a part may look out from behind a door or a cap and still count as covered.
const COVER_SLACK: f32 = 6.0;

/// The boxes of the drawing in front.
#[derive(Resource, Default)]
pub struct Boxes(pub Vec<PartBox>);

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Boxes>()
        .add_systems(Update, measure.after(AppSystems::Mirror).before(AppSystems::Animate));
}

fn measure(
    page: Res<OnPage>,
    rect: Res<PageRect>,
    drawings: Res<Drawings>,
    entities: Res<PartEntities>,
    changed: Query<(), Changed<Aim>>,
    aims: Query<&Aim>,
    current: Res<CurrentSeen>,
    mut boxes: ResMut<Boxes>,
) {
    if !page.is_changed() && !rect.is_changed() && changed.is_empty() {
        return;
    }
    let Some(place) = page.0 else {
        boxes.0.clear();
        return;
    };
    let mut found = Vec::new();
    let in_view = |named: &NamedDrawing| {
        current.0.as_ref().is_none_or(|seen| drawings::is_in_view(named.name, seen))
    };
    for (named, groups) in drawings.0.iter().zip(&entities.0).filter(|(it, _)| in_view(it)) {
        if let Some(placement) = drawings::placement(named.name, place) {
            let shown: Vec<bool> = groups
                .iter()
                .map(|entity| {
                    let aim = entity.and_then(|entity| aims.get(entity).ok());
                    aim.is_none_or(|aim| aim.0.shown == Shown::Yes)
                })
                .collect();
            found.extend(boxes_in_drawing(named, &shown).into_iter().map(|(id, bounds)| PartBox {
                rect: in_window(bounds, placement, rect.0),
                pivot: pivot(&named.drawing, &id).map(|at| at_window(at, placement, rect.0)),
                id,
            }));
        }
    }
    // A part that may be missing can be looked for; one of another kind of furnace cannot.
    if let Some(seen) = &current.0 {
        found.retain(|part: &PartBox| !is_absent(&part.id, seen) && !is_not_fitted(&part.id, seen));
    }
    boxes.0 = found;
}

/// Boxes of the parts of one drawing, in its own units and in paint order: one for each part and
/// one for each place that is written into, without what a door or a cap in front hides.
#[must_use]
pub fn boxes_in_drawing(named: &NamedDrawing, shown: &[bool]) -> Vec<(String, Box4)> {
    let drawing = &named.drawing;
    let visible = |group: usize| chain(drawing, group).all(|g| shown.get(g) == Some(&true));
    let covers = covers(drawing, &visible);
    let mut found: Vec<(usize, &str)> = Vec::new();
    for (index, group) in drawing.groups.iter().enumerate() {
        let Some(part) = boxed_part(&group.id) else { continue };
        let stands = found.iter().position(|(_, other)| *other == part);
        match stands {
            None => found.push((index, part)),
            // A state that holds stands for its part before one that does not.
            Some(at) if visible(index) && !found.get(at).is_some_and(|(old, _)| visible(*old)) => {
                found.remove(at);
                found.push((index, part));
            }
            Some(_) => {}
        }
    }
    found.sort_unstable();
    found
        .into_iter()
        .filter(|(index, _)| {
            // What lies in something hidden is not there.
            chain(drawing, *index).skip(1).all(|g| shown.get(g) == Some(&true))
        })
        .filter_map(|(index, part)| {
            let counts = |g: usize| visible(g) && !is_mark(drawing, g);
            // A part whose every state is hidden can still be looked for where it would be.
            let bounds =
                drawing.bounds(index, counts).or_else(|| drawing.bounds(index, |_| true))?;
            let hidden = covers.iter().any(|(cover, behind, over)| {
                let below = part.split('.').next().unwrap_or_default();
                match behind.strip_suffix("-cap") {
                    Some(screw) => below.strip_suffix("-screw") == Some(screw),
                    None => *cover > index && part != *behind && over.holds(bounds, COVER_SLACK),
                }
            });
            (!hidden).then(|| (part.to_owned(), bounds))
        })
        .collect()
}

/// Doors and caps that are on: their group, part and box.
fn covers<'a>(
    drawing: &'a Drawing,
    visible: &impl Fn(usize) -> bool,
) -> Vec<(usize, &'a str, Box4)> {
    let groups = drawing.groups.iter().enumerate();
    groups
        .filter(|(index, _)| visible(*index))
        .filter_map(|(index, group)| {
            let part = group.id.strip_suffix("@on")?;
            let bounds = drawing.bounds(index, |_| true)?;
            (part.ends_with("-door") || part.ends_with("-cap")).then_some((index, part, bounds))
        })
        .collect()
}

/// A group and those it lies in.
fn chain(drawing: &Drawing, group: usize) -> impl Iterator<Item = usize> {
    std::iter::successors(Some(group), |&at| drawing.groups.get(at).and_then(|g| g.parent))
}

/// The part that a group's box stands for: a part's own or that of one of its states, or a place
/// that is written into or beside.
fn boxed_part(id: &str) -> Option<&str> {
    if is_ground(id) {
        return None;
    }
    if let Some((part, state)) = id.split_once('@') {
        return (!matches!(state, "cracked" | "frost")).then_some(part);
    }
    match id.split_once('.') {
        Some((_, piece)) => matches!(piece, "display" | "slot").then_some(id),
        None => (!id.is_empty()).then_some(id),
    }
}

/// Pieces that come and go and must not widen a part's box.
fn is_mark(drawing: &Drawing, group: usize) -> bool {
    drawing.groups.get(group).is_some_and(|g| g.id.ends_with(".bubbles"))
}

/// A box of a drawing, in window points.
fn in_window(bounds: Box4, placement: Placement, page: egui::Rect) -> egui::Rect {
    let at = |point| at_window(point, placement, page);
    let rect = egui::Rect::from_min_max(at(bounds.min), at(bounds.max));
    let missing = egui::vec2(
        (LEAST_SIDE - rect.width()).max(0.0) / 2.0,
        (LEAST_SIDE - rect.height()).max(0.0) / 2.0,
    );
    rect.expand2(missing)
}

/// A point of a drawing, in window points.
fn at_window(point: [f32; 2], placement: Placement, page: egui::Rect) -> egui::Pos2 {
    let [x, y] = placement.place(point);
    page.min + egui::vec2(x, y) * (page.width() / PAGE[0])
}

/// What a handle, a lever or a slot of a part turns about, in the drawing's units.
fn pivot(drawing: &Drawing, part: &str) -> Option<[f32; 2]> {
    ["handle", "lever", "slot"].into_iter().find_map(|piece| {
        let group = drawing.find(&format!("{part}.{piece}"))?;
        drawing.groups.get(group).map(|group| group.pivot)
    })
}
