//! From what is seen to the scene: which drawings lie on the page and how each group shall stand.
//! The only system that says so; it writes only what changed.

use bevy::prelude::*;

use super::approach::{Approach, set_out};
use super::drawings::{is_in_view, placement};
use super::drive::Screen;
use super::page::{AppSystems, CurrentSeen, OnPage};
use super::pose;
use super::scene::{Aim, DrawingRoot, Drawings, Part, transform_of};
use super::ui::WindowLayout;

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<CurrentSeen>()
        .init_resource::<OnPage>()
        .add_systems(Update, (look, set_out, lay_out, mirror).chain().in_set(AppSystems::Mirror));
}

fn look(screen: Res<Screen>, mut current: ResMut<CurrentSeen>, mut page: ResMut<OnPage>) {
    let seen = screen.job().map(super::session::Session::seen);
    let drawn = seen.as_ref().and_then(pose::drawing_of);
    if current.0 != seen {
        current.0 = seen;
    }
    page.set_if_neq(OnPage(drawn));
}

fn lay_out(
    current: Res<CurrentSeen>,
    page: Res<OnPage>,
    approach: Res<Approach>,
    drawings: Res<Drawings>,
    mut roots: Query<(&DrawingRoot, &mut Visibility, &mut Transform)>,
) {
    let shown = approach.shown(page.0);
    for (root, mut visibility, mut transform) in &mut roots {
        let name = drawings.0.get(root.0).map_or("", |named| named.name);
        let in_view = current.0.as_ref().is_some_and(|seen| is_in_view(name, seen));
        match shown.filter(|_| in_view).and_then(|place| placement(name, place)) {
            Some(placement) => {
                visibility.set_if_neq(Visibility::Inherited);
                transform.set_if_neq(transform_of(approach.place(name, placement)));
            }
            None => {
                visibility.set_if_neq(Visibility::Hidden);
            }
        }
    }
}

fn mirror(
    current: Res<CurrentSeen>,
    page: Res<OnPage>,
    drawings: Res<Drawings>,
    laid: Res<WindowLayout>,
    mut parts: Query<(&Part, &mut Aim)>,
) {
    let (Some(seen), Some(place)) = (&current.0, page.0) else { return };
    if !current.is_changed() && !page.is_changed() && !laid.is_changed() {
        return;
    }
    let turned = laid.layout.turned.as_ref();
    for (part, mut aim) in &mut parts {
        let Some(named) =
            drawings.0.get(part.drawing).filter(|s| placement(s.name, place).is_some())
        else {
            continue;
        };
        let Some(group) = named.drawing.groups.get(part.group) else { continue };
        let mut pose = pose::pose(&group.id, seen).unwrap_or_default();
        if let Some(turned) = turned.filter(|it| turns(&group.id, &it.part)) {
            pose.turn_deg += turned.deg;
        }
        aim.set_if_neq(Aim(pose));
    }
}

/// Whether a group is what turns when a hand turns this part.
fn turns(group: &str, part: &str) -> bool {
    group.strip_prefix(part).is_some_and(|rest| matches!(rest, ".slot" | ".handle" | ".lever"))
}
