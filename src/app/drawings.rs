//! The drawings and where each one lies on the page.

use super::svg::Drawing;
use crate::parts::{Room, ValveBody};
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

/// The drawings of the furnace room: on a floor, in a garage with the water heater on its stand, and
/// under the roof.
const FURNACE_ROOMS: [&str; 3] = ["plant_room", "plant_room_garage", "attic"];

/// Text of the furnace room's drawing with an upright furnace; the water heater is a layer.
const PLANT_ROOM: &str = include_str!("../../assets/drawings/plant_room.svg");

/// Every drawing: name, text, and the layers that it has at marks which name none themselves.
const FILES: [(&str, &str, &[Picked]); 11] = [
    ("yard_propane", include_str!("../../assets/drawings/yard_propane.svg"), &[]),
    ("yard_natural", include_str!("../../assets/drawings/yard_natural.svg"), &[]),
    ("plant_room", PLANT_ROOM, &[("water_heater", "heater_floor"), TALL_STACKS]),
    (
        "plant_room_garage",
        PLANT_ROOM,
        &[("water_heater", "heater_stand"), ("heater_stacks", "heater_stacks_short")],
    ),
    ("attic", include_str!("../../assets/drawings/attic.svg"), &[TALL_STACKS]),
    ("gas_valve", GAS_VALVE, &[("valve", "valve_stacked"), ("ports", "ports_plugs")]),
    ("gas_valve_taps", GAS_VALVE, &[("valve", "valve_stacked"), ("ports", "ports_taps")]),
    ("gas_valve_side", GAS_VALVE, &[("valve", "valve_side"), ("ports", "ports_side")]),
    ("hall", include_str!("../../assets/drawings/hall.svg"), &[]),
    (TOOLS, include_str!("../../assets/drawings/tools.svg"), &[]),
    (MANOMETER, include_str!("../../assets/drawings/manometer.svg"), &[]),
];

/// Flue and water pipes of a water heater that stands low.
const TALL_STACKS: Picked = ("heater_stacks", "heater_stacks_tall");

/// Files and texts of layers.
macro_rules! layers {
    ($($name:literal),+ $(,)?) => {
        &[$(($name, include_str!(concat!("../../assets/drawings/", $name)))),+]
    };
}

/// Every layer: its file and text.
const LAYERS: &[(&str, &str)] = layers![
    "furnace_blower.svg",
    "furnace_board.svg",
    "furnace_door_switch.svg",
    "furnace_flame_1.svg",
    "furnace_flame_2.svg",
    "furnace_flame_3.svg",
    "furnace_flame_4.svg",
    "furnace_igniter.svg",
    "furnace_inducer.svg",
    "furnace_label.svg",
    "furnace_limit.svg",
    "furnace_manifold.svg",
    "furnace_plate.svg",
    "furnace_rod.svg",
    "furnace_rollout_1.svg",
    "furnace_rollout_2.svg",
    "furnace_switch_box.svg",
    "furnace_switches.svg",
    "furnace_valve.svg",
    "gas_connector.svg",
    "gas_drip_leg.svg",
    "gas_shutoff.svg",
    "gas_tag.svg",
    "gas_tee.svg",
    "gas_union.svg",
    "heater.svg",
    "heater_drip_leg.svg",
    "heater_floor.svg",
    "heater_shutoff.svg",
    "heater_stacks_short.svg",
    "heater_stacks_tall.svg",
    "heater_stand.svg",
    "heater_union.svg",
    "ports_plugs.svg",
    "ports_side.svg",
    "ports_taps.svg",
    "room_attic.svg",
    "room_basement.svg",
    "room_closet.svg",
    "room_garage.svg",
    "room_grille.svg",
    "room_window.svg",
    "valve_casting.svg",
    "valve_high.svg",
    "valve_high_sign.svg",
    "valve_inlet_plug.svg",
    "valve_low.svg",
    "valve_low_sign.svg",
    "valve_manifold_plug.svg",
    "valve_only.svg",
    "valve_pad.svg",
    "valve_side.svg",
    "valve_spring_mark.svg",
    "valve_stacked.svg",
];

/// Size of the tool roll on a floor.
const ROLL: f32 = 330.0 / 640.0;
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
        match LAYERS.iter().find(|(file, _)| file.strip_suffix(".svg") == Some(name)) {
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

/// The drawing of the furnace room with these surroundings. In a garage the water heater stands
/// raised, for vapors of gasoline may lie on the floor there.
#[must_use]
pub fn furnace_room(room: Room) -> &'static str {
    let [floor, garage, attic] = FURNACE_ROOMS;
    match room {
        Room::Basement | Room::Closet => floor,
        Room::Garage => garage,
        Room::Attic => attic,
    }
}

/// Whether a drawing shows the furnace room.
#[must_use]
pub fn is_furnace_room(name: &str) -> bool {
    FURNACE_ROOMS.contains(&name)
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
        // Below the furnace that lies.
        (MANOMETER, "attic") => Some(Placement { at: [738.0, 512.0], scale: 0.82, depth: 40.0 }),
        (MANOMETER, _) => Some(Placement { at: [700.0, 475.0], scale: 1.0, depth: 40.0 }),
        // Beside the hatch.
        (TOOLS, "attic") => Some(Placement { at: [128.0, 606.0], scale: ROLL, depth: 20.0 }),
        (TOOLS, room) if is_furnace_room(room) => {
            Some(Placement { at: [20.0, 600.0], scale: ROLL, depth: 20.0 })
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
