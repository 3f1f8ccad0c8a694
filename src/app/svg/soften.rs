//! Soft edges: a narrow rim around triangles that fades out, in place of sampling every pixel
//! several times, which a software renderer cannot afford.

use std::collections::BTreeMap;

use super::tessellate::{RIM, Triangles};

/// Points nearer than this are one.
const WELD: f32 = 1.0 / 128.0;
/// How far a rim reaches at a sharp corner, in rims.
const CORNER_REACH: f32 = 2.0;

/// An outer edge: its ends, with the triangle on its left.
type Edge = (u32, u32);

/// The rim around `core`, fading from its colour to nothing.
pub(super) fn rim(core: &Triangles) -> Triangles {
    let welded = weld(&core.points);
    let edges = outer_edges(core, &welded);
    let normals = corner_normals(core, &edges);
    let mut rim = Triangles::default();
    let mut corners: BTreeMap<u32, u32> = BTreeMap::new();
    for (a, b) in edges {
        let ends = [a, b].map(|at| match corners.get(&at) {
            Some(&inner) => inner,
            None => {
                let inner = add_corner(&mut rim, core, at, normals.get(&at).copied());
                corners.insert(at, inner);
                inner
            }
        });
        let [a, b] = ends;
        rim.indices.extend([a, b, b + 1, a, b + 1, a + 1]);
    }
    rim
}

/// Adds a corner's inner point and, right after it, the outer one; returns the inner one's index.
fn add_corner(rim: &mut Triangles, core: &Triangles, at: u32, out: Option<[f32; 2]>) -> u32 {
    let inner = u32::try_from(rim.points.len()).unwrap_or(u32::MAX - 1);
    let p = point(core, at).copied().unwrap_or_default();
    let n = out.unwrap_or_default();
    let color = core.colors.get(at as usize).copied().unwrap_or_default();
    rim.points.extend([p, [p[0] + n[0] * RIM, p[1] + n[1] * RIM]]);
    rim.colors.extend([color, [color[0], color[1], color[2], 0.0]]);
    inner
}

fn point(core: &Triangles, at: u32) -> Option<&[f32; 2]> {
    core.points.get(at as usize)
}

/// For each point the first point at the same place.
fn weld(points: &[[f32; 2]]) -> Vec<u32> {
    let mut first: BTreeMap<(i32, i32), u32> = BTreeMap::new();
    points
        .iter()
        .zip(0_u32..)
        .map(|(p, index)| {
            #[expect(clippy::cast_possible_truncation, reason = "a drawing is some hundred wide")]
            let cell = |v: f32| (v / WELD).round() as i32;
            *first.entry((cell(p[0]), cell(p[1]))).or_insert(index)
        })
        .collect()
}

/// Edges that only one triangle has.
fn outer_edges(core: &Triangles, welded: &[u32]) -> Vec<Edge> {
    let mut seen: BTreeMap<Edge, (u32, Edge)> = BTreeMap::new();
    for triangle in core.indices.chunks_exact(3) {
        let corners: Vec<u32> =
            triangle.iter().filter_map(|i| welded.get(*i as usize).copied()).collect();
        let &[a, b, c] = corners.as_slice() else { continue };
        let (Some(pa), Some(pb), Some(pc)) = (point(core, a), point(core, b), point(core, c))
        else {
            continue;
        };
        let area = (pb[0] - pa[0]) * (pc[1] - pa[1]) - (pb[1] - pa[1]) * (pc[0] - pa[0]);
        if area == 0.0 {
            continue;
        }
        let turned = if area > 0.0 { [a, b, c] } else { [a, c, b] };
        for (from, to) in [(turned[0], turned[1]), (turned[1], turned[2]), (turned[2], turned[0])] {
            let entry = seen.entry((from.min(to), from.max(to))).or_insert((0, (from, to)));
            entry.0 += 1;
        }
    }
    seen.into_values().filter(|(count, _)| *count == 1).map(|(_, edge)| edge).collect()
}

/// Outward direction at each corner of the outline, longer at sharp corners.
fn corner_normals(core: &Triangles, edges: &[Edge]) -> BTreeMap<u32, [f32; 2]> {
    let mut sums: BTreeMap<u32, [f32; 2]> = BTreeMap::new();
    for &(a, b) in edges {
        let (Some(pa), Some(pb)) = (point(core, a), point(core, b)) else { continue };
        let (dx, dy) = (pb[0] - pa[0], pb[1] - pa[1]);
        let length = (dx * dx + dy * dy).sqrt().max(1e-6);
        // The triangle lies on the left, so out is on the right.
        let normal = [dy / length, -dx / length];
        for at in [a, b] {
            let sum = sums.entry(at).or_default();
            sum[0] += normal[0];
            sum[1] += normal[1];
        }
    }
    for sum in sums.values_mut() {
        let square = sum[0] * sum[0] + sum[1] * sum[1];
        // Two unit normals at an angle sum to a vector whose mitre is twice it over its square.
        let reach =
            if square > 1e-6 { (2.0 / square).min(CORNER_REACH / square.sqrt()) } else { 0.0 };
        *sum = [sum[0] * reach, sum[1] * reach];
    }
    sums
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_gets_a_rim_on_its_four_sides_only() {
        let square = Triangles {
            points: vec![[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]],
            colors: vec![[0.5, 0.5, 0.5, 1.0]; 4],
            indices: vec![0, 1, 2, 0, 2, 3],
        };
        let rim = rim(&square);
        assert_eq!(rim.indices.len(), 4 * 6);
        let bounds = rim.bounds().expect("a rim");
        for i in 0..2 {
            assert!((bounds.min[i] + RIM).abs() < 1e-4, "{bounds:?}");
            assert!((bounds.max[i] - 10.0 - RIM).abs() < 1e-4, "{bounds:?}");
        }
        let faded = rim.colors.iter().filter(|c| c[3] == 0.0).count();
        assert_eq!(faded, rim.colors.len() / 2);
    }
}
