//! From what is seen to the scene: which drawings lie on the page and how each group shall stand.
//! The only system that says so; it writes only what changed.

use bevy::prelude::*;

use super::drawings::seat;
use super::drive::Front;
use super::page::{AppSystems, OnPage, Sight};
use super::pose;
use super::scene::{Aim, Part, SheetRoot, Sheets, seated};

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Sight>()
        .init_resource::<OnPage>()
        .add_systems(Update, (look, lay_out, mirror).chain().in_set(AppSystems::Mirror));
}

fn look(front: Res<Front>, mut sight: ResMut<Sight>, mut page: ResMut<OnPage>) {
    let seen = front.job().map(super::session::Session::seen);
    let drawn = seen.as_ref().and_then(pose::drawing_of);
    if sight.0 != seen {
        sight.0 = seen;
    }
    page.set_if_neq(OnPage(drawn));
}

fn lay_out(
    page: Res<OnPage>,
    sheets: Res<Sheets>,
    mut roots: Query<(&SheetRoot, &mut Visibility, &mut Transform)>,
) {
    for (root, mut visibility, mut transform) in &mut roots {
        let name = sheets.0.get(root.0).map_or("", |sheet| sheet.name);
        match page.0.and_then(|place| seat(name, place)) {
            Some(seat) => {
                visibility.set_if_neq(Visibility::Inherited);
                transform.set_if_neq(seated(seat));
            }
            None => {
                visibility.set_if_neq(Visibility::Hidden);
            }
        }
    }
}

fn mirror(
    sight: Res<Sight>,
    page: Res<OnPage>,
    sheets: Res<Sheets>,
    mut parts: Query<(&Part, &mut Aim)>,
) {
    let (Some(seen), Some(place)) = (&sight.0, page.0) else { return };
    if !sight.is_changed() && !page.is_changed() {
        return;
    }
    for (part, mut aim) in &mut parts {
        let Some(sheet) = sheets.0.get(part.sheet).filter(|s| seat(s.name, place).is_some()) else {
            continue;
        };
        let Some(group) = sheet.drawing.groups.get(part.group) else { continue };
        aim.set_if_neq(Aim(pose::pose(&group.id, seen).unwrap_or_default()));
    }
}
