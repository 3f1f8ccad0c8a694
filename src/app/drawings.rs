//! The drawings and where each one lies on the page.

use super::svg::Drawing;
use crate::senses::seen::Seen;

/// The page that every place is drawn on: its width and height in drawing units.
pub const PAGE: [f32; 2] = [960.0, 672.0];

/// Name of the manometer's drawing.
pub const MANOMETER: &str = "manometer";
/// Name of the tool roll's drawing.
pub const TOOLS: &str = "tools";

/// Where a drawing lies on the page.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placement {
    /// Its upper left corner, in drawing units of the page.
    pub at: [f32; 2],
    /// Units of the page to a unit of the drawing.
    pub scale: f32,
    /// How far in front of the place it lies.
    pub depth: f32,
}

impl Placement {
    /// A point of the drawing, on the page.
    #[must_use]
    pub fn place(self, point: [f32; 2]) -> [f32; 2] {
        [self.at[0] + point[0] * self.scale, self.at[1] + point[1] * self.scale]
    }
}

/// A drawing by its name.
#[derive(Debug, Clone, PartialEq)]
pub struct NamedDrawing {
    /// Its name: the file's.
    pub name: &'static str,
    /// Its groups and triangles.
    pub drawing: Drawing,
}

/// Every drawing: name and text.
const FILES: [(&str, &str); 7] = [
    ("yard_propane", include_str!("../../assets/drawings/yard_propane.svg")),
    ("yard_natural", include_str!("../../assets/drawings/yard_natural.svg")),
    ("plant_room", include_str!("../../assets/drawings/plant_room.svg")),
    ("gas_valve", include_str!("../../assets/drawings/gas_valve.svg")),
    ("hall", include_str!("../../assets/drawings/hall.svg")),
    (TOOLS, include_str!("../../assets/drawings/tools.svg")),
    (MANOMETER, include_str!("../../assets/drawings/manometer.svg")),
];

const WHOLE: Placement = Placement { at: [0.0, 0.0], scale: 1.0, depth: 0.0 };

/// Reads all drawings.
///
/// # Errors
/// Which one is wrong, and how.
pub fn all() -> Result<Vec<NamedDrawing>, String> {
    FILES
        .iter()
        .map(|&(name, text)| {
            Drawing::parse(text)
                .map(|drawing| NamedDrawing { name, drawing })
                .map_err(|error| t!("drawing-wrong", name = name, error = error))
        })
        .collect()
}

/// Whether a drawing is there to be seen: the manometer may hang at the furnace, out of sight.
#[must_use]
pub fn is_in_view(name: &str, seen: &Seen) -> bool {
    name != MANOMETER || seen.meter().is_some()
}

/// Where a drawing lies while `place`'s drawing is shown; `None` when it is not there.
#[must_use]
pub fn placement(name: &str, place: &str) -> Option<Placement> {
    match (name, place) {
        // The hall is full; there the meter is held a little away.
        (MANOMETER, "hall") => Some(Placement { at: [788.0, 532.0], scale: 0.72, depth: 40.0 }),
        (MANOMETER, _) => Some(Placement { at: [700.0, 475.0], scale: 1.0, depth: 40.0 }),
        (TOOLS, "plant_room") => {
            Some(Placement { at: [20.0, 600.0], scale: 330.0 / 640.0, depth: 20.0 })
        }
        // Beside the tray with the caps and plugs.
        (TOOLS, "gas_valve") => Some(Placement { at: [416.0, 560.0], scale: 0.43, depth: 20.0 }),
        (TOOLS, _) => None,
        _ if name == place => Some(WHOLE),
        _ => None,
    }
}
