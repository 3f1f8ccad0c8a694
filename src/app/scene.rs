//! From drawings to entities: a root for each drawing with everything that stays, and an entity
//! for each group that moves. They hold ids and looks, never a value of the model.
//!
//! Depth follows the order of painting, so what is solid can be drawn in any order: front to back,
//! which spares a software renderer most of the pixels it would paint over. Soft rims and what
//! shines through come after.

use bevy::asset::RenderAssetUsages;
use bevy::mesh::{Indices, PrimitiveTopology};
use bevy::prelude::*;
use bevy::sprite_render::AlphaMode2d;

use super::drawings::{self, NamedDrawing, PAGE, Placement};
use super::page::BACKGROUND;
use super::pose::{self, Pose};
use super::svg::{Box4, Chunk, Drawing, Triangles};

/// All drawings as read.
#[derive(Resource)]
pub struct Drawings(pub Vec<NamedDrawing>);

/// The root of a drawing.
#[derive(Component, Debug, Clone, Copy, PartialEq, Eq)]
pub struct DrawingRoot(pub usize);

/// A group of a drawing that moves: indices into [`Drawings`].
#[derive(Component, Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// Index of the drawing.
    pub drawing: usize,
    /// Which of its groups.
    pub group: usize,
}

/// The entity of every group that moves, by the same indices; the root for the first group.
#[derive(Resource, Default)]
pub struct PartEntities(pub Vec<Vec<Option<Entity>>>);

/// How a group shall stand.
#[derive(Component, Debug, Clone, Copy, PartialEq, Default)]
pub struct Aim(pub Pose);

/// How a group stands.
#[derive(Component, Debug, Clone, Copy, PartialEq)]
pub struct Now {
    pub(super) turn_deg: f32,
    pub(super) scale: [f32; 2],
    pub(super) alpha: f32,
    pub(super) tint: [f32; 3],
    /// Turns made by itself, 0–1.
    pub(super) spun: f32,
    /// Factor on the height by flicker.
    pub(super) flare: f32,
    /// Leaned by flicker, in degrees.
    pub(super) swayed_deg: f32,
    /// How far it has come and gone, 0–1.
    pub(super) drifted: f32,
}

impl Default for Now {
    fn default() -> Self {
        let Pose { turn_deg, scale, alpha, tint, .. } = Pose::default();
        Self { turn_deg, scale, alpha, tint, spun: 0.0, flare: 1.0, swayed_deg: 0.0, drifted: 0.5 }
    }
}

/// The material of a group whose look fades or glows.
#[derive(Component, Debug, Clone)]
pub struct Veil(pub Handle<ColorMaterial>);

/// The materials that all share: what is solid, and what shines through.
#[derive(Resource, Debug, Clone)]
pub struct Inks {
    /// For what is solid.
    pub solid: Handle<ColorMaterial>,
    /// For soft rims and what shines through.
    pub clear: Handle<ColorMaterial>,
}

/// Between neighbours in paint order.
const DEPTH_STEP: f32 = 0.01;
/// Width of the frame around the page, in drawing units: a place that grows on the way to the gas
/// valve stays under it.
const FRAME_WIDTH: f32 = 4000.0;
/// In front of a place, behind tools and meter.
const FRAME_DEPTH: f32 = 15.0;

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<PartEntities>()
        .add_systems(PreStartup, mix)
        .add_systems(Startup, (spawn, frame));
}

/// Reads the drawings for [`Drawings`].
///
/// # Errors
/// Which drawing is wrong, and how.
pub fn read() -> Result<Drawings, String> {
    drawings::all().map(Drawings)
}

fn mix(mut commands: Commands, mut materials: ResMut<Assets<ColorMaterial>>) {
    let solid = materials.add(ColorMaterial::from_color(Color::WHITE));
    let clear = materials.add(veil());
    commands.insert_resource(Inks { solid, clear });
}

/// A frame of paper around the page: lines that end at its edge reach over it a little, and a
/// picture that grows reaches over it far.
fn frame(mut commands: Commands, inks: Res<Inks>, mut meshes: ResMut<Assets<Mesh>>) {
    let ([w, h], d) = (PAGE, FRAME_WIDTH);
    let mut paint = Paint::default();
    for (min, max) in [
        ([-d, -d], [w + d, 0.0]),
        ([-d, h], [w + d, h + d]),
        ([-d, 0.0], [0.0, h]),
        ([w, 0.0], [w + d, h]),
    ] {
        let corners = vec![min, [max[0], min[1]], max, [min[0], max[1]]];
        let colors = vec![Srgba::from(BACKGROUND).to_f32_array(); 4];
        paint.add(&Triangles { points: corners, colors, indices: vec![0, 1, 2, 0, 2, 3] }, 0.0);
    }
    commands.spawn((
        Name::new("frame"),
        Mesh2d(meshes.add(paint.mesh())),
        MeshMaterial2d(inks.solid.clone()),
        Transform::from_xyz(-w / 2.0, h / 2.0, FRAME_DEPTH),
    ));
}

fn veil() -> ColorMaterial {
    ColorMaterial { color: Color::WHITE, alpha_mode: AlphaMode2d::Blend, ..default() }
}

fn spawn(
    mut commands: Commands,
    drawings: Res<Drawings>,
    inks: Res<Inks>,
    mut entities: ResMut<PartEntities>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<ColorMaterial>>,
) {
    for (index, named) in drawings.0.iter().enumerate() {
        let groups = spawn_groups(&mut commands, index, named);
        for (group, entity) in groups.iter().enumerate() {
            let Some(entity) = *entity else { continue };
            let id = named.drawing.groups.get(group).map_or("", |g| g.id.as_str());
            let fades = pose::fades(id);
            let (solid, clear) = painted(&named.drawing, group, fades);
            let own = if fades { materials.add(veil()) } else { inks.clear.clone() };
            if fades {
                commands.entity(entity).insert(Veil(own.clone()));
            }
            for (paint, ink) in [(solid, inks.solid.clone()), (clear, own)] {
                if !paint.is_empty() {
                    let parts =
                        (Mesh2d(meshes.add(paint.mesh())), MeshMaterial2d(ink), ChildOf(entity));
                    commands.spawn((Transform::default(), parts));
                }
            }
        }
        entities.0.push(groups);
    }
}

/// An entity for the drawing and for each group that moves.
fn spawn_groups(
    commands: &mut Commands,
    index: usize,
    named: &NamedDrawing,
) -> Vec<Option<Entity>> {
    let root = commands
        .spawn((
            Name::new(named.name),
            DrawingRoot(index),
            Transform::default(),
            Visibility::Hidden,
        ))
        .id();
    let mut spawned = vec![Some(root)];
    for (group, what) in named.drawing.groups.iter().enumerate().skip(1) {
        let parent = mover(&named.drawing, what.parent.unwrap_or(0));
        let parent = spawned.get(parent).copied().flatten().unwrap_or(root);
        spawned.push(pose::moves(&what.id).then(|| {
            let looks = (Aim::default(), Now::default(), Transform::default());
            commands
                .spawn((
                    Name::new(what.id.clone()),
                    Part { drawing: index, group },
                    looks,
                    Visibility::Inherited,
                    ChildOf(parent),
                ))
                .id()
        }));
    }
    spawned
}

/// Where a drawing lies, as a transform.
#[must_use]
pub fn transform_of(placement: Placement) -> Transform {
    let [x, y] = placement.at;
    Transform::from_xyz(x - PAGE[0] / 2.0, PAGE[1] / 2.0 - y, placement.depth)
        .with_scale(Vec3::new(placement.scale, placement.scale, 1.0))
}

/// The nearest group that moves, from `group` outwards; the drawing itself if none does.
fn mover(drawing: &Drawing, group: usize) -> usize {
    let mut at = group;
    while let Some(this) = drawing.groups.get(at) {
        match this.parent {
            Some(parent) if !pose::moves(&this.id) => at = parent,
            Some(_) | None => return at,
        }
    }
    0
}

/// What moves with `group`: what is solid, front to back, and what is soft, back to front.
pub(super) fn painted(drawing: &Drawing, group: usize, fades: bool) -> (Paint, Paint) {
    let (mut solid, mut clear) = (Paint::default(), Paint::default());
    let own: Vec<(usize, &Chunk)> = drawing
        .chunks
        .iter()
        .enumerate()
        .filter(|(_, chunk)| mover(drawing, chunk.group) == group && !is_background(drawing, chunk))
        .collect();
    for (order, chunk) in &own {
        if fades || !chunk.core.is_opaque() {
            clear.add(&chunk.core, depth(*order));
        }
        clear.add(&chunk.rim, depth(*order));
    }
    for (order, chunk) in own.iter().rev() {
        if !fades && chunk.core.is_opaque() {
            solid.add(&chunk.core, depth(*order));
        }
    }
    (solid, clear)
}

/// Whether a chunk only paints the paper that is there already.
fn is_background(drawing: &Drawing, chunk: &Chunk) -> bool {
    let page = Box4 { min: [0.0; 2], max: drawing.size };
    let paper = Srgba::from(BACKGROUND).to_f32_array();
    chunk.bounds.holds(page, 0.5)
        && chunk.core.colors.iter().all(|color| {
            color.iter().zip(&paper).all(|(have, want)| (have - want).abs() < 1.0 / 512.0)
        })
}

fn depth(order: usize) -> f32 {
    #[expect(clippy::cast_precision_loss, reason = "a drawing has some hundred chunks")]
    let order = order as f32;
    order * DEPTH_STEP
}

/// Triangles at their depths, ready to become a mesh.
#[derive(Debug, Default)]
pub struct Paint {
    points: Vec<[f32; 3]>,
    colors: Vec<[f32; 4]>,
    indices: Vec<u32>,
}

impl Paint {
    /// Adds triangles at a depth; y turns up and colours become linear.
    pub fn add(&mut self, triangles: &Triangles, depth: f32) {
        let base = u32::try_from(self.points.len()).unwrap_or(u32::MAX);
        self.points.extend(triangles.points.iter().map(|&[x, y]| [x, -y, depth]));
        self.colors.extend(
            triangles
                .colors
                .iter()
                .map(|&[r, g, b, a]| LinearRgba::from(Srgba::new(r, g, b, a)).to_f32_array()),
        );
        self.indices.extend(triangles.indices.iter().map(|i| base.saturating_add(*i)));
    }

    /// Whether nothing was added.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.indices.is_empty()
    }

    /// A mesh of all that was added, for the engine to draw.
    #[must_use]
    pub fn mesh(self) -> Mesh {
        Mesh::new(PrimitiveTopology::TriangleList, RenderAssetUsages::RENDER_WORLD)
            .with_inserted_attribute(Mesh::ATTRIBUTE_POSITION, self.points)
            .with_inserted_attribute(Mesh::ATTRIBUTE_COLOR, self.colors)
            .with_inserted_indices(Indices::U32(self.indices))
    }
}
