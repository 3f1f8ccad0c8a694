//! Fills and strokes to coloured triangles.

use lyon_tessellation::geometry_builder::{BuffersBuilder, VertexBuffers};
use lyon_tessellation::math::point;
use lyon_tessellation::path::Path;
use lyon_tessellation::{
    FillOptions, FillRule, FillTessellator, FillVertex, LineCap, LineJoin, StrokeOptions,
    StrokeTessellator, StrokeVertex,
};
use usvg::tiny_skia_path::{self, PathSegment, Point, StrokeDash, Transform};

use super::shapes::{Box4, Edge};

/// Width of the rim, in drawing units: a little less than a pixel at the drawing's own size.
pub(super) const RIM: f32 = 0.8;
/// How far a flat edge may lie from its curve, in drawing units: a tenth of a pixel at the
/// drawing's own size.
const TOLERANCE: f32 = 0.2;
/// Opacity under which a fill is so faint that its edge needs no rim: most shades and lights.
const FAINT: f32 = 0.2;

/// Triangles with a color at each corner.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Triangles {
    /// Corners, in drawing units.
    pub points: Vec<[f32; 2]>,
    /// Colour of each corner: red, green, blue as the drawing writes them (0–1, not linear), and
    /// opacity.
    pub colors: Vec<[f32; 4]>,
    /// Three corners to a triangle.
    pub indices: Vec<u32>,
}

impl Triangles {
    /// The box around them.
    #[must_use]
    pub fn bounds(&self) -> Option<Box4> {
        self.points.iter().map(|&p| Box4 { min: p, max: p }).reduce(Box4::with)
    }

    /// Whether nothing shines through.
    #[must_use]
    pub fn is_opaque(&self) -> bool {
        self.colors.iter().all(|color| color[3] >= 1.0)
    }

    /// Adds a stroked line.
    ///
    /// # Errors
    /// A path that cannot be cut into triangles.
    pub(crate) fn line(
        &mut self,
        path: &Path,
        options: &StrokeOptions,
        transform: Transform,
        color: [f32; 4],
    ) -> Result<(), String> {
        let mut buffers: VertexBuffers<[f32; 2], u32> = VertexBuffers::new();
        StrokeTessellator::new()
            .tessellate_path(
                path,
                options,
                &mut BuffersBuilder::new(&mut buffers, |v: StrokeVertex| v.position().to_array()),
            )
            .map_err(|error| error.to_string())?;
        self.take(&buffers, transform, color);
        Ok(())
    }

    fn take(
        &mut self,
        buffers: &VertexBuffers<[f32; 2], u32>,
        transform: Transform,
        color: [f32; 4],
    ) {
        let base = u32::try_from(self.points.len()).unwrap_or(u32::MAX);
        self.points.extend(buffers.vertices.iter().map(|&[x, y]| {
            let mut at = Point::from_xy(x, y);
            transform.map_point(&mut at);
            [at.x, at.y]
        }));
        self.colors.resize(self.points.len(), color);
        self.indices.extend(buffers.indices.iter().map(|index| base.saturating_add(*index)));
    }
}

/// The triangles of a path's fill and line, in their order of painting.
///
/// # Errors
/// A paint that is not a flat colour, or a path that cannot be cut into triangles.
pub(super) fn paint(path: &usvg::Path, opacity: f32) -> Result<Vec<(Triangles, Edge)>, String> {
    let transform = path.abs_transform();
    let fill = fill(path, transform, opacity)?;
    let line = line(path, transform, opacity)?;
    let edge = match path.stroke() {
        Some(stroke) if stroke.opacity().get() >= 1.0 && stroke.dasharray().is_none() => {
            Edge::Covered
        }
        _ if fill.as_ref().is_some_and(is_faint) => Edge::Covered,
        Some(_) | None => Edge::Soft,
    };
    let fill = fill.map(|fill| (fill, edge));
    let line = line.map(|line| (line, Edge::Soft));
    Ok(match path.paint_order() {
        usvg::PaintOrder::FillAndStroke => fill.into_iter().chain(line).collect(),
        usvg::PaintOrder::StrokeAndFill => line.into_iter().chain(fill).collect(),
    })
}

fn is_faint(fill: &Triangles) -> bool {
    fill.colors.iter().all(|color| color[3] < FAINT)
}

fn fill(
    path: &usvg::Path,
    transform: Transform,
    opacity: f32,
) -> Result<Option<Triangles>, String> {
    let Some(fill) = path.fill() else { return Ok(None) };
    let color = flat(fill.paint(), fill.opacity().get() * opacity)?;
    let rule = match fill.rule() {
        usvg::FillRule::NonZero => FillRule::NonZero,
        usvg::FillRule::EvenOdd => FillRule::EvenOdd,
    };
    let options = FillOptions::tolerance(tolerance(transform)).with_fill_rule(rule);
    let mut buffers: VertexBuffers<[f32; 2], u32> = VertexBuffers::new();
    FillTessellator::new()
        .tessellate_path(
            &outline(path.data()),
            &options,
            &mut BuffersBuilder::new(&mut buffers, |v: FillVertex| v.position().to_array()),
        )
        .map_err(|error| format!("{}: {error}", path.id()))?;
    let mut out = Triangles::default();
    out.take(&buffers, transform, color);
    Ok(Some(out))
}

fn line(
    path: &usvg::Path,
    transform: Transform,
    opacity: f32,
) -> Result<Option<Triangles>, String> {
    let Some(stroke) = path.stroke() else { return Ok(None) };
    let color = flat(stroke.paint(), stroke.opacity().get() * opacity)?;
    let dashed = stroke.dasharray().and_then(|dashes| {
        StrokeDash::new(dashes.to_vec(), stroke.dashoffset())
            .and_then(|dash| path.data().dash(&dash, 1.0))
    });
    let cap = match stroke.linecap() {
        usvg::LineCap::Butt => LineCap::Butt,
        usvg::LineCap::Round => LineCap::Round,
        usvg::LineCap::Square => LineCap::Square,
    };
    let join = match stroke.linejoin() {
        usvg::LineJoin::Miter => LineJoin::Miter,
        usvg::LineJoin::MiterClip => LineJoin::MiterClip,
        usvg::LineJoin::Round => LineJoin::Round,
        usvg::LineJoin::Bevel => LineJoin::Bevel,
    };
    let options = StrokeOptions::tolerance(tolerance(transform))
        .with_line_width(core_width(stroke.width().get(), scale(transform)))
        .with_line_cap(cap)
        .with_line_join(join)
        .with_miter_limit(stroke.miterlimit().get().max(1.0));
    let mut out = Triangles::default();
    out.line(&outline(dashed.as_ref().unwrap_or(path.data())), &options, transform, color)?;
    Ok(Some(out))
}

/// Width of the full part of a line, so that it with half of each rim is as wide as drawn.
#[must_use]
pub(crate) fn core_width(width: f32, scale: f32) -> f32 {
    (width - RIM / scale).max(0.15 * width)
}

fn scale(transform: Transform) -> f32 {
    let (sx, sy) = transform.get_scale();
    sx.abs().max(sy.abs()).max(1e-3)
}

fn tolerance(transform: Transform) -> f32 {
    TOLERANCE / scale(transform)
}

fn flat(paint: &usvg::Paint, opacity: f32) -> Result<[f32; 4], String> {
    match paint {
        usvg::Paint::Color(c) => Ok([
            f32::from(c.red) / 255.0,
            f32::from(c.green) / 255.0,
            f32::from(c.blue) / 255.0,
            opacity,
        ]),
        usvg::Paint::LinearGradient(_)
        | usvg::Paint::RadialGradient(_)
        | usvg::Paint::Pattern(_) => Err(t!("drawing-colors").into()),
    }
}

fn outline(data: &tiny_skia_path::Path) -> Path {
    let at = |p: Point| point(p.x, p.y);
    let mut builder = Path::builder();
    let mut open = false;
    for segment in data.segments() {
        match segment {
            PathSegment::MoveTo(p) => {
                if open {
                    builder.end(false);
                }
                builder.begin(at(p));
                open = true;
            }
            PathSegment::LineTo(p) => {
                builder.line_to(at(p));
            }
            PathSegment::QuadTo(c, p) => {
                builder.quadratic_bezier_to(at(c), at(p));
            }
            PathSegment::CubicTo(c1, c2, p) => {
                builder.cubic_bezier_to(at(c1), at(c2), at(p));
            }
            PathSegment::Close => {
                if open {
                    builder.end(true);
                }
                open = false;
            }
        }
    }
    if open {
        builder.end(false);
    }
    builder.build()
}
