//! The tool in the hand, drawn with its tip at the pointer.

use bevy::prelude::*;
use bevy_egui::egui;

use super::drawings::{PAGE, TOOLS, is_close_up};
use super::page::{AppSystems, CurrentSeen, OnPage, PageRect};
use super::redraw::Redraw;
use super::scene::{Drawings, Inks, painted};
use super::svg::Drawing;
use super::ui::WindowLayout;
use crate::parts::Tool;

/// A tool as it is carried.
#[derive(Component, Debug, Clone, Copy, PartialEq, Eq)]
pub struct InHand(pub Tool);

/// In front of everything that is drawn on the page.
const DEPTH: f32 = 70.0;
/// Size of a tool close up, in units of the page to a unit of its drawing.
const CLOSE_UP: f32 = 1.3;
/// The same where one stands back.
const STANDING: f32 = 0.6;

pub(super) fn plugin(app: &mut App) {
    app.add_systems(Startup, spawn)
        .add_systems(Update, carry.after(AppSystems::Mirror).before(AppSystems::Animate));
}

fn spawn(
    mut commands: Commands,
    drawings: Res<Drawings>,
    inks: Res<Inks>,
    mut meshes: ResMut<Assets<Mesh>>,
) {
    let Some(tools) = drawings.0.iter().find(|named| named.name == TOOLS) else { return };
    for &tool in Tool::ALL {
        let Some(group) = tools.drawing.find(tool.id()) else { continue };
        // The hose is drawn as a hose, from the meter to the hand.
        let Some([x, y]) = tip(&tools.drawing, tool).filter(|_| tool != Tool::Hose) else {
            continue;
        };
        let held = (Name::new(tool.id()), InHand(tool), Transform::default(), Visibility::Hidden);
        let (solid, clear) = painted(&tools.drawing, group, false);
        commands.spawn(held).with_children(|held| {
            for (paint, ink) in [(solid, &inks.solid), (clear, &inks.clear)] {
                if !paint.is_empty() {
                    let looks = (Mesh2d(meshes.add(paint.mesh())), MeshMaterial2d(ink.clone()));
                    held.spawn((looks, Transform::from_xyz(-x, y, 0.0)));
                }
            }
        });
    }
}

/// The end of a tool that works, in its drawing.
fn tip(tools: &Drawing, tool: Tool) -> Option<[f32; 2]> {
    let mark = format!("{}.spot", tool.id());
    tools.groups.iter().find(|group| group.id == mark).and_then(|group| group.spot)
}

/// A point of the window on the page, in the page's units.
#[must_use]
pub fn on_page(at: egui::Pos2, page: egui::Rect) -> Option<[f32; 2]> {
    if !page.is_positive() {
        return None;
    }
    let units = PAGE[0] / page.width();
    Some([(at.x - page.min.x) * units, (at.y - page.min.y) * units])
}

fn carry(
    current: Res<CurrentSeen>,
    page: Res<OnPage>,
    rect: Res<PageRect>,
    laid: Res<WindowLayout>,
    mut redraw: ResMut<Redraw>,
    mut tools: Query<(&InHand, &mut Visibility, &mut Transform)>,
) {
    let hand = current.0.as_ref().and_then(|seen| seen.hand);
    let at = laid.layout.hand.and_then(|at| on_page(at, rect.0));
    for (tool, mut visibility, mut transform) in &mut tools {
        let carried = (hand == Some(tool.0)).then_some(()).and(page.0).zip(at);
        let Some((place, [x, y])) = carried else {
            redraw.changed |= visibility.set_if_neq(Visibility::Hidden);
            continue;
        };
        let scale = if is_close_up(place) { CLOSE_UP } else { STANDING };
        let to = Transform::from_xyz(x - PAGE[0] / 2.0, PAGE[1] / 2.0 - y, DEPTH)
            .with_scale(Vec3::new(scale, scale, 1.0));
        redraw.changed |= visibility.set_if_neq(Visibility::Inherited);
        redraw.changed |= transform.set_if_neq(to);
    }
}
