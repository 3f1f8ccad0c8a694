//! The manometer's hoses: drawn from its barbs to where their other ends are.

use bevy::prelude::*;
use lyon_tessellation::math::point;
use lyon_tessellation::path::Path;
use lyon_tessellation::{LineCap, LineJoin, StrokeOptions};
use usvg::tiny_skia_path::Transform as Flat;

use super::approach::Approach;
use super::drawings::{MANOMETER, NamedDrawing, PAGE, Placement, placement};
use super::in_hand::on_page;
use super::page::{AppSystems, CurrentSeen, OnPage, PageRect};
use super::redraw::Redraw;
use super::scene::{Drawings, Inks, Paint};
use super::svg::{self, Chunk, Edge, Triangles};
use super::ui::WindowLayout;
use crate::parts::{Fitted, LowSide, Port, Tool};
use crate::senses::seen::{HoseLook, Seen};

/// The hoses' meshes: what is solid, and their soft rims.
#[derive(Component, Debug, Clone, Copy, PartialEq, Eq)]
enum Hoses {
    Solid,
    Rims,
}

/// A hose from a barb of the meter to its other end, in the page's units.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hose {
    /// At the meter; it leaves downwards.
    pub from: [f32; 2],
    /// The other end: on a port, at the burner box or in the hand.
    pub to: [f32; 2],
    /// The way it comes to the other end, out of the barb.
    pub out: [f32; 2],
    /// Width of the rubber, in the page's units.
    pub width: f32,
    /// Whether it is clear, wet or pinched.
    pub look: HoseLook,
}

/// A drawing where it lies.
struct PlacedDrawing<'a> {
    named: &'a NamedDrawing,
    placement: Placement,
}

/// In front of the place and the tools, behind the meter.
const DEPTH: f32 = 35.0;
/// The ink around a hose.
const INK: [f32; 4] = [0x1F as f32 / 255.0, 0x2D as f32 / 255.0, 0x3A as f32 / 255.0, 1.0];
/// The hose itself: pale rubber.
const RUBBER: [f32; 4] = [0xDB as f32 / 255.0, 0xDA as f32 / 255.0, 0xC2 as f32 / 255.0, 1.0];
/// Water inside the hose.
const WATER: [f32; 4] = [0x8F as f32 / 255.0, 0xB8 as f32 / 255.0, 0xDB as f32 / 255.0, 1.0];
/// Light on the water.
const LIGHT: [f32; 4] = [1.0, 1.0, 1.0, 1.0];

pub(super) fn plugin(app: &mut App) {
    app.add_systems(Startup, spawn)
        .add_systems(Update, draw.after(AppSystems::Mirror).before(AppSystems::Animate));
}

fn spawn(mut commands: Commands, inks: Res<Inks>) {
    for (layer, ink) in [(Hoses::Solid, &inks.solid), (Hoses::Rims, &inks.clear)] {
        commands.spawn((
            Name::new("hoses"),
            layer,
            MeshMaterial2d(ink.clone()),
            Transform::from_xyz(-PAGE[0] / 2.0, PAGE[1] / 2.0, DEPTH),
            Visibility::Hidden,
        ));
    }
}

#[expect(clippy::too_many_arguments, reason = "a system names all that it reads and writes")]
fn draw(
    current: Res<CurrentSeen>,
    page: Res<OnPage>,
    rect: Res<PageRect>,
    laid: Res<WindowLayout>,
    approach: Res<Approach>,
    drawings: Res<Drawings>,
    mut entities: Query<(Entity, &Hoses, &mut Visibility)>,
    mut meshes: ResMut<Assets<Mesh>>,
    mut last: Local<Vec<Hose>>,
    mut redraw: ResMut<Redraw>,
    mut commands: Commands,
) {
    let (still, moved) = (approach.0.is_none(), approach.is_changed());
    if !current.is_changed() && !page.is_changed() && !laid.is_changed() && !moved {
        return;
    }
    let hand = laid.layout.hand.and_then(|at| on_page(at, rect.0));
    let hoses = match (&current.0, page.0) {
        // While the picture is on its way, its ports are nowhere that a hose could hang from.
        (Some(seen), Some(place)) if still => hoses(seen, place, &drawings.0, hand),
        _ => Vec::new(),
    };
    if *last == hoses {
        return;
    }
    if hoses.is_empty() {
        // Hidden, with the mesh it had: the engine takes a mesh without a corner for one that was
        // freed, and complains.
        for (_, _, mut visibility) in &mut entities {
            *visibility = Visibility::Hidden;
        }
    } else {
        let (solid, rims) = paint(&hoses);
        let (solid, rims) = (meshes.add(solid.mesh()), meshes.add(rims.mesh()));
        for (entity, layer, mut visibility) in &mut entities {
            *visibility = Visibility::Inherited;
            let mesh = match layer {
                Hoses::Solid => &solid,
                Hoses::Rims => &rims,
            };
            commands.entity(entity).insert(Mesh2d(mesh.clone()));
        }
    }
    *last = hoses;
    redraw.changed = true;
}

/// The hoses to draw in a place; `hand` is where the hand is on the page, if it is there.
#[must_use]
pub fn hoses(
    seen: &Seen,
    place: &str,
    drawings: &[NamedDrawing],
    hand: Option<[f32; 2]>,
) -> Vec<Hose> {
    let laid = |name: &str| {
        let named = drawings.iter().find(|named| named.name == name)?;
        Some(PlacedDrawing { named, placement: placement(name, place)? })
    };
    let Some(shown) = seen.meter() else { return Vec::new() };
    let (Some(meter), Some(here)) = (laid(MANOMETER), laid(place)) else { return Vec::new() };
    let (meter, here) = (&meter, &here);
    let mut hoses = Vec::new();
    if let Some(from) = spot(meter, "meter-plus") {
        let end = match shown.hose {
            Some((port, _)) => on_port(seen, here, port),
            None if seen.hand == Some(Tool::Hose) => {
                Some((hand.unwrap_or([from[0] - 120.0, from[1] - 6.0]), [-0.6, 0.8]))
            }
            None => None,
        };
        let look = shown.hose_look;
        hoses.extend(end.map(|(to, out)| Hose { from, to, out, width: 8.0, look }));
    }
    if let (LowSide::BurnerBox, Some(from)) = (shown.low_side, spot(meter, "meter-minus")) {
        let end = burners_in_view(seen).then(|| spot(here, "box-hose")).flatten();
        hoses.extend(end.map(|to| Hose {
            from,
            to,
            out: [0.3, 0.9],
            width: 5.0,
            look: HoseLook::Clear,
        }));
    }
    hoses
}

fn burners_in_view(seen: &Seen) -> bool {
    seen.furnace.as_ref().is_some_and(|f| f.burner_door == Fitted::Off)
}

/// Where a port's hose ends, and the way out of the barb.
fn on_port(seen: &Seen, here: &PlacedDrawing<'_>, port: Port) -> Option<([f32; 2], [f32; 2])> {
    if !burners_in_view(seen) {
        return None;
    }
    let adapter = match port {
        Port::Inlet => "inlet-adapter",
        Port::Manifold => "manifold-adapter",
    };
    let barb = marked(here, adapter).or_else(|| marked(here, port.id()));
    match (barb, marked(here, port.id())) {
        (Some(to), Some(boss)) => {
            let (x, y) = (to[0] - boss[0], to[1] - boss[1]);
            let length = (x * x + y * y).sqrt();
            let out = if length > 1.0 { [x / length, y / length] } else { [0.0, 1.0] };
            Some((to, out))
        }
        // Where the ports are too small to be drawn, it ends at the valve.
        (Some(to), None) => Some((to, [0.0, 1.0])),
        (None, _) => spot(here, "gas-valve").map(|to| (to, [0.0, 1.0])),
    }
}

/// A part's marked spot, on the page.
fn marked(laid: &PlacedDrawing<'_>, part: &str) -> Option<[f32; 2]> {
    let of_part = |id: &str| {
        id.strip_prefix(part).is_some_and(|rest| rest.ends_with(".spot") && !rest.starts_with('-'))
    };
    let groups = &laid.named.drawing.groups;
    groups.iter().find(|g| of_part(&g.id)).and_then(|g| g.spot).map(|at| laid.placement.place(at))
}

/// A part's marked spot or else its middle, on the page.
fn spot(laid: &PlacedDrawing<'_>, part: &str) -> Option<[f32; 2]> {
    marked(laid, part).or_else(|| {
        let group = laid.named.drawing.find(part)?;
        let bounds = laid.named.drawing.bounds(group, |_| true)?;
        Some(laid.placement.place(bounds.center()))
    })
}

/// Hoses as triangles with soft edges: ink below, rubber above, each hanging in a curve; water or
/// a pinch on top.
fn paint(hoses: &[Hose]) -> (Paint, Paint) {
    let (mut solid, mut clear) = (Paint::default(), Paint::default());
    let mut stroke = |path: &Path, width: f32, color: [f32; 4], layer: f32| {
        let options = StrokeOptions::tolerance(0.1)
            .with_line_width(svg::core_width(width, 1.0))
            .with_line_cap(LineCap::Butt)
            .with_line_join(LineJoin::Round);
        let mut core = Triangles::default();
        // A curve that cannot be cut into triangles is left out of the picture.
        let _left_out = core.line(path, &options, Flat::identity(), color);
        if let Some(chunk) = Chunk::new(0, core, Edge::Soft) {
            solid.add(&chunk.core, layer);
            clear.add(&chunk.rim, layer);
        }
    };
    for hose in hoses {
        stroke(&curve(hose), hose.width + 3.0, INK, 0.0);
    }
    for hose in hoses {
        stroke(&curve(hose), hose.width, RUBBER, 0.1);
        match hose.look {
            HoseLook::Clear => {}
            // A plug of water in the sag, and drops that cling further on.
            HoseLook::Wet => {
                for (from, to) in [(0.3, 0.4), (0.6, 0.68), (0.74, 0.77), (0.84, 0.86)] {
                    stroke(&stretch(hose, from, to), hose.width, WATER, 0.2);
                }
                stroke(&stretch(hose, 0.615, 0.655), 1.6, LIGHT, 0.3);
            }
            // Flat in one place: ink closes in from both sides.
            HoseLook::Pinched => {
                stroke(&stretch(hose, 0.62, 0.67), hose.width + 6.0, INK, 0.2);
                stroke(&stretch(hose, 0.615, 0.675), 2.6, RUBBER, 0.3);
            }
        }
    }
    (solid, clear)
}

fn hose_clearance(hose: &Hose) -> f32 {
    hose.width / 2.0 + 2.0
}

/// The four points of the curve in which a hose hangs.
fn bones(hose: &Hose) -> [[f32; 2]; 4] {
    let [x0, y0] = hose.from;
    let [x1, y1] = hose.to;
    let (dx, dy) = (x1 - x0, y1 - y0);
    let reach = (0.35 * (dx * dx + dy * dy).sqrt()).clamp(30.0, 150.0);
    // It lies on the ground of the page rather than below it.
    let floor = |y: f32| y.min(PAGE[1] - hose_clearance(hose));
    [
        [x0, y0],
        [x0 + dx.signum() * 0.4 * reach, floor(y0 + 0.6 * reach)],
        [x1 + hose.out[0] * reach, floor(y1 + hose.out[1] * reach)],
        [x1, y1],
    ]
}

fn curve(hose: &Hose) -> Path {
    let [a, b, c, d] = bones(hose).map(|[x, y]| point(x, y));
    let mut builder = Path::builder();
    builder.begin(a);
    builder.cubic_bezier_to(b, c, d);
    builder.end(false);
    builder.build()
}

/// A stretch of it, from one share of its way to another.
fn stretch(hose: &Hose, from: f32, to: f32) -> Path {
    const STEPS: u8 = 8;
    let bones = bones(hose);
    let at = |t: f32| {
        let u = 1.0 - t;
        let weights = [u * u * u, 3.0 * u * u * t, 3.0 * u * t * t, t * t * t];
        let sum = |axis: usize| bones.iter().zip(weights).map(|(bone, w)| bone[axis] * w).sum();
        point(sum(0), sum(1))
    };
    let mut builder = Path::builder();
    builder.begin(at(from));
    for step in 1..=STEPS {
        builder.line_to(at(from + (to - from) * f32::from(step) / f32::from(STEPS)));
    }
    builder.end(false);
    builder.build()
}
