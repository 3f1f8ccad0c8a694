//! The way between the furnace room and its gas valve: the room's picture grows about the valve and
//! gives way to the valve close up, and back. Only the picture is under way: what can be pointed at
//! lies at once where it shall stand, and with reduced motion the picture does too.

use bevy::prelude::*;
use bevy::sprite_render::AlphaMode2d;

use super::drawings::{NamedDrawing, PAGE, Placement, is_close_up, is_furnace_room};
use super::page::{AppSystems, Choices, OnPage};
use super::redraw::{Moving, Redraw};
use super::scene::Drawings;
use crate::panels::settings::Motion;

/// How long the way takes, in seconds.
const WAY_S: f32 = 0.36;
/// Share of the way at which one picture gives place to the other.
const CHANGE: f32 = 0.68;
/// Share of the way before and after the change in which the veil comes and goes.
const VEILED: f32 = 0.17;
/// The veil's color is that of the sheet metal behind the valve, which fills both pictures there.
const VEIL: Color = Color::srgb_u8(0xE9, 0xED, 0xF0);
/// In front of a place, behind the frame of the page.
const VEIL_DEPTH: f32 = 14.5;
/// The part that both pictures show.
const VALVE: &str = "gas-valve";

/// The way that the picture is on, if it is on any.
#[derive(Resource, Debug, Default, Clone, Copy, PartialEq)]
pub struct Approach(pub Option<Way>);

/// A way from one picture to the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Way {
    from: &'static str,
    to: &'static str,
    /// The valve in the room and close up, on the page.
    at: [[f32; 2]; 2],
    /// How much larger it is close up.
    zoom: f32,
    /// Seconds since it began.
    since_s: f32,
}

#[derive(Component)]
struct Veil(Handle<ColorMaterial>);

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Approach>()
        .add_systems(Startup, spawn)
        .add_systems(Update, (go_on.after(AppSystems::Animate), veil).chain());
}

fn spawn(
    mut commands: Commands,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<ColorMaterial>>,
) {
    let ink = materials.add(ColorMaterial {
        color: VEIL.with_alpha(0.0),
        alpha_mode: AlphaMode2d::Blend,
        ..default()
    });
    commands.spawn((
        Name::new("veil"),
        Veil(ink.clone()),
        Mesh2d(meshes.add(Rectangle::new(PAGE[0], PAGE[1]))),
        MeshMaterial2d(ink),
        Transform::from_xyz(0.0, 0.0, VEIL_DEPTH),
        Visibility::Hidden,
    ));
}

/// Sets out when the page goes from a room to its valve or back. Runs before anything is laid out.
pub(super) fn set_out(
    page: Res<OnPage>,
    choices: Res<Choices>,
    drawings: Res<Drawings>,
    mut approach: ResMut<Approach>,
    mut last: Local<Option<&'static str>>,
) {
    let before = std::mem::replace(&mut *last, page.0);
    if before == page.0 {
        return;
    }
    let way = match (choices.0.motion, before, page.0) {
        (Motion::Full, Some(from), Some(to)) => way(&drawings.0, from, to),
        (Motion::Full | Motion::Reduced, ..) => None,
    };
    approach.set_if_neq(Approach(way));
}

/// The way from one drawing to another, where they are a room and the valve in it.
#[must_use]
pub fn way(drawings: &[NamedDrawing], from: &'static str, to: &'static str) -> Option<Way> {
    let (room, close) = match (is_furnace_room(from), is_furnace_room(to)) {
        (true, false) if is_close_up(to) => (from, to),
        (false, true) if is_close_up(from) => (to, from),
        _ => return None,
    };
    let valve = |name: &str| {
        let drawing = &drawings.iter().find(|named| named.name == name)?.drawing;
        drawing.bounds(drawing.find(VALVE)?, |_| true)
    };
    let (small, large) = (valve(room)?, valve(close)?);
    let zoom = (large.max[0] - large.min[0]) / (small.max[0] - small.min[0]).max(1.0);
    Some(Way { from, to, at: [small.center(), large.center()], zoom, since_s: 0.0 })
}

/// One frame further. The last one lays everything out as it shall stay.
fn go_on(time: Res<Time<Real>>, mut approach: ResMut<Approach>, mut redraw: ResMut<Redraw>) {
    let Some(mut way) = approach.0 else { return };
    way.since_s += time.delta_secs();
    approach.0 = (way.since_s < WAY_S).then_some(way);
    redraw.changed = true;
    redraw.again |= approach.0.is_none();
    redraw.motion = Moving::Changing;
}

fn veil(
    approach: Res<Approach>,
    mut materials: ResMut<Assets<ColorMaterial>>,
    veil: Single<(&Veil, &mut Visibility)>,
) {
    if !approach.is_changed() {
        return;
    }
    let (veil, mut visibility) = veil.into_inner();
    let alpha = approach.0.map_or(0.0, |way| way.veil());
    let shown = if alpha > 0.0 { Visibility::Inherited } else { Visibility::Hidden };
    visibility.set_if_neq(shown);
    if let Some(mut material) = materials.get_mut(&veil.0) {
        material.color = VEIL.with_alpha(alpha);
    }
}

impl Approach {
    /// Which place's picture is to be seen, while `page` lies open.
    #[must_use]
    pub fn shown(self, page: Option<&'static str>) -> Option<&'static str> {
        match self.0 {
            Some(way) if page == Some(way.to) && way.share() < CHANGE => Some(way.from),
            Some(_) | None => page,
        }
    }

    /// Where a place's picture lies for now, that lies at `settled` when all stands.
    #[must_use]
    pub fn place(self, name: &str, settled: Placement) -> Placement {
        match self.0 {
            Some(way) if name == way.from || name == way.to => way.place(name, settled),
            Some(_) | None => settled,
        }
    }
}

impl Way {
    fn share(self) -> f32 {
        (self.since_s / WAY_S).clamp(0.0, 1.0)
    }

    /// How far it is from the room to the valve: slow at both ends.
    fn nearness(self) -> f32 {
        let share = self.share();
        let eased = share * share * (3.0 - 2.0 * share);
        if is_close_up(self.to) { eased } else { 1.0 - eased }
    }

    fn veil(self) -> f32 {
        (1.0 - (self.share() - CHANGE).abs() / VEILED).clamp(0.0, 1.0)
    }

    fn place(self, name: &str, settled: Placement) -> Placement {
        let near = self.nearness();
        let grown = self.zoom.powf(near);
        let [small, large] = self.at;
        let (fixed, scale) =
            if is_close_up(name) { (large, grown / self.zoom) } else { (small, grown) };
        let on_page = |axis: usize| small[axis] + (large[axis] - small[axis]) * near;
        let at = [0, 1].map(|axis| on_page(axis) - fixed[axis] * scale);
        Placement { at, scale, ..settled }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn there(since_s: f32) -> Way {
        let at = [[550.0, 250.0], [470.0, 397.0]];
        Way { from: "attic", to: "gas_valve", at, zoom: 3.5, since_s }
    }

    /// The way begins and ends where things stand, and at every moment both pictures would show the
    /// valve at one place and of one size.
    #[test]
    fn the_picture_goes_without_a_jump() {
        let settled = Placement { at: [0.0, 0.0], scale: 1.0, depth: 0.0 };
        let (begin, end) = (there(0.0), there(WAY_S));
        for (placed, wanted) in
            [(begin.place("attic", settled), settled), (end.place("gas_valve", settled), settled)]
        {
            assert!((placed.scale - wanted.scale).abs() < 1e-4, "{placed:?}");
            assert!(placed.at.iter().all(|at| at.abs() < 1e-2), "{placed:?}");
        }
        for step in 0..=20_u8 {
            let way = there(WAY_S * f32::from(step) / 20.0);
            let (room, close) = (way.place("attic", settled), way.place("gas_valve", settled));
            let (a, b) = (room.place(way.at[0]), close.place(way.at[1]));
            assert!((a[0] - b[0]).abs() < 0.01 && (a[1] - b[1]).abs() < 0.01, "{a:?} {b:?}");
            assert!((room.scale - close.scale * way.zoom).abs() < 1e-3);
        }
    }

    /// First the picture that one comes from, then the other; veiled where they change.
    #[test]
    fn one_picture_gives_place_to_the_other() {
        let shown = |share: f32| Approach(Some(there(share * WAY_S))).shown(Some("gas_valve"));
        assert_eq!(shown(0.1), Some("attic"));
        assert_eq!(shown(0.9), Some("gas_valve"));
        assert!(there(CHANGE * WAY_S).veil() > 0.99);
        assert!(there(0.0).veil() == 0.0 && there(WAY_S).veil() == 0.0);
        assert_eq!(Approach(None).shown(Some("hall")), Some("hall"));
    }
}
