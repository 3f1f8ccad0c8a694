//! The drawings and where each one lies on the page.

use super::svg::Drawing;
use crate::parts::ValveBody;
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

/// The drawings of the gas valve, one for each body.
const GAS_VALVES: [&str; 3] = ["gas_valve", "gas_valve_taps", "gas_valve_side"];

/// Text of the gas valve's drawing; its body and its ports are layers.
const GAS_VALVE: &str = include_str!("../../assets/drawings/gas_valve.svg");

/// Mark in a drawing's text and the layer that stands there.
type Picked = (&'static str, &'static str);

/// Every drawing: name, text, and the layers that it has at marks which name none themselves.
const FILES: [(&str, &str, &[Picked]); 9] = [
    ("yard_propane", include_str!("../../assets/drawings/yard_propane.svg"), &[]),
    ("yard_natural", include_str!("../../assets/drawings/yard_natural.svg"), &[]),
    ("plant_room", include_str!("../../assets/drawings/plant_room.svg"), &[]),
    ("gas_valve", GAS_VALVE, &[("valve", "valve_stacked"), ("ports", "ports_plugs")]),
    ("gas_valve_taps", GAS_VALVE, &[("valve", "valve_stacked"), ("ports", "ports_taps")]),
    ("gas_valve_side", GAS_VALVE, &[("valve", "valve_side"), ("ports", "ports_side")]),
    ("hall", include_str!("../../assets/drawings/hall.svg"), &[]),
    (TOOLS, include_str!("../../assets/drawings/tools.svg"), &[]),
    (MANOMETER, include_str!("../../assets/drawings/manometer.svg"), &[]),
];

/// Every layer: name and text.
const LAYERS: [(&str, &str); 18] = [
    ("ports_plugs", include_str!("../../assets/drawings/ports_plugs.svg")),
    ("ports_side", include_str!("../../assets/drawings/ports_side.svg")),
    ("ports_taps", include_str!("../../assets/drawings/ports_taps.svg")),
    ("room_basement", include_str!("../../assets/drawings/room_basement.svg")),
    ("room_closet", include_str!("../../assets/drawings/room_closet.svg")),
    ("room_garage", include_str!("../../assets/drawings/room_garage.svg")),
    ("valve_casting", include_str!("../../assets/drawings/valve_casting.svg")),
    ("valve_high", include_str!("../../assets/drawings/valve_high.svg")),
    ("valve_high_sign", include_str!("../../assets/drawings/valve_high_sign.svg")),
    ("valve_inlet_plug", include_str!("../../assets/drawings/valve_inlet_plug.svg")),
    ("valve_low", include_str!("../../assets/drawings/valve_low.svg")),
    ("valve_low_sign", include_str!("../../assets/drawings/valve_low_sign.svg")),
    ("valve_manifold_plug", include_str!("../../assets/drawings/valve_manifold_plug.svg")),
    ("valve_only", include_str!("../../assets/drawings/valve_only.svg")),
    ("valve_pad", include_str!("../../assets/drawings/valve_pad.svg")),
    ("valve_side", include_str!("../../assets/drawings/valve_side.svg")),
    ("valve_spring_mark", include_str!("../../assets/drawings/valve_spring_mark.svg")),
    ("valve_stacked", include_str!("../../assets/drawings/valve_stacked.svg")),
];

const WHOLE: Placement = Placement { at: [0.0, 0.0], scale: 1.0, depth: 0.0 };

/// Reads all drawings.
///
/// # Errors
/// Which one is wrong, and how.
pub fn all() -> Result<Vec<NamedDrawing>, String> {
    FILES
        .iter()
        .map(|&(name, text, picked)| {
            Drawing::parse(&composed(text, picked))
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

/// A drawing's text with a layer in the place of each mark `<!--LAYER-->`. A layer may have marks of
/// its own. A mark without a layer stays and paints nothing; a test finds it.
fn composed(text: &str, picked: &[Picked]) -> String {
    let mut whole = String::with_capacity(text.len());
    let mut rest = text;
    while let Some((before, (mark, after))) =
        rest.split_once(OPEN).and_then(|(before, rest)| Some((before, rest.split_once(CLOSE)?)))
    {
        whole.push_str(before);
        let name = picked.iter().find(|(at, _)| *at == mark).map_or(mark, |(_, layer)| layer);
        match LAYERS.iter().find(|(layer, _)| *layer == name) {
            Some((_, layer)) => whole.push_str(&composed(content(layer), picked)),
            None => whole.extend([OPEN, mark, CLOSE]),
        }
        rest = after;
    }
    whole.push_str(rest);
    whole
}

/// Begin and end of a mark.
const OPEN: &str = "<!--";
const CLOSE: &str = "-->";

/// What lies inside a layer's outermost element.
fn content(layer: &str) -> &str {
    let inside = layer.split_once("<svg").and_then(|(_, rest)| rest.split_once('>'));
    inside.and_then(|(_, rest)| rest.rsplit_once("</svg>")).map_or(layer, |(inside, _)| inside)
}

/// The drawing of a gas valve with this body.
#[must_use]
pub fn gas_valve(body: ValveBody) -> &'static str {
    let [plugs, taps, side] = GAS_VALVES;
    match body {
        ValveBody::Plugs => plugs,
        ValveBody::TapScrews => taps,
        ValveBody::SideBySide => side,
    }
}

/// Whether a drawing shows the gas valve close up.
#[must_use]
pub fn is_close_up(name: &str) -> bool {
    GAS_VALVES.contains(&name)
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
        (TOOLS, close) if is_close_up(close) => {
            Some(Placement { at: [416.0, 560.0], scale: 0.43, depth: 20.0 })
        }
        (TOOLS, _) => None,
        _ if name == place => Some(WHOLE),
        _ => None,
    }
}
