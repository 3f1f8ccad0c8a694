//! Which of a part's states holds.

use super::found;
use crate::appliance::safety::Hose;
use crate::parts::{
    Fitted, Level, Opening, OtherAppliance, Port, PortFill, Room, Screw, Tool, ValveBody, YardLook,
    is_staged,
};
use crate::senses::seen::{
    BurnersSeen, Burning, Cracked, PortSeen, REGISTERS_SHOW, Rod, Seen, Signs, Water,
};

/// What a place stands on: the room, the wall in the yard, sky and weather; what falls in
/// of the light outside, how far it dims a place, and how panes and an open window show it.
pub(super) const GROUND: [&str; 8] =
    ["room", "wall", "sky", "weather", "light", "dim", "pane", "view"];

/// Temperature up to which snow lies, in degrees Fahrenheit.
const FREEZING_F: i32 = 32;

/// Frost on the tank above which the first regulator is white as well: the gas comes to it as cold
/// as the liquid, and cools further as it expands (common practice).
const REGULATOR_FROSTS: f64 = 0.4;

/// Hours at which dawn begins, the day, dusk and the dark in the heating season, in the middle
/// latitudes (value from memory).
const DAWN: f64 = 6.75;
const DAY: f64 = 8.5;
const DUSK: f64 = 15.75;
const DARK: f64 = 17.5;

/// The light outside at an hour of the day.
pub(super) fn light(hour: f64) -> &'static str {
    match hour % 24.0 {
        hour if hour < DAWN => "dark",
        hour if hour < DAY => "dawn",
        hour if hour < DUSK => "day",
        hour if hour < DARK => "dusk",
        _ => "dark",
    }
}

/// Whether a state of the gas valve holds that is drawn small in the furnace room: its body, and
/// its coils and screws by the firing levels.
fn valve_body(state: &str, seen: &Seen) -> bool {
    let staged = is_staged(seen.levels);
    let body = seen.scene.valve;
    let side = body == ValveBody::SideBySide;
    match state {
        "two-coils" => staged,
        "stacked-two" => !side && staged,
        "stacked-one" => !side && !staged,
        "side-two" => side && staged,
        "side-one" => side && !staged,
        "plugs" => body == ValveBody::Plugs,
        "taps" => body == ValveBody::TapScrews,
        "side-by-side" => side,
        _ => false,
    }
}

/// Whether a state of the ground holds.
fn ground(part: &str, state: &str, seen: &Seen) -> bool {
    match part {
        "room" => {
            state
                == match seen.scene.room {
                    Room::Basement => "basement",
                    Room::Closet => "closet",
                    Room::Garage => "garage",
                    Room::Attic => "attic",
                }
        }
        "wall" => {
            state
                == match seen.scene.yard {
                    YardLook::Siding => "siding",
                    YardLook::Brick => "brick",
                }
        }
        "light" | "dim" | "pane" | "view" => state == light(seen.hour()),
        _ => state == if seen.outside_f <= FREEZING_F { "snow" } else { "mild" },
    }
}

/// Whether `part@state` holds; `None` for a part that is not known.
pub(super) fn holds(part: &str, state: &str, seen: &Seen) -> Option<bool> {
    if let Some(tool) = Tool::from_id(part) {
        return match state {
            "taken" => Some(!in_roll(tool, seen)),
            _ => None,
        };
    }
    let furnace = seen.furnace.as_ref();
    let yard = seen.yard.as_ref();
    let burners = furnace.and_then(|f| f.burners.as_ref());
    match part {
        "burner-door" => furnace.map(|f| fitted(f.burner_door, state)),
        "blower-door" => furnace.map(|f| fitted(f.blower_door, state)),
        "stage-jumper" => furnace.map(|f| fitted(f.stage_jumper, state)),
        "tag" => furnace.map(|f| fitted(f.tag, state)),
        "plant-window" => furnace.map(|f| opening(f.window, state)),
        "hall-window" => seen.hall.as_ref().map(|h| opening(h.window, state)),
        "supply-cap" => yard.map(|y| fitted(y.cap, state)),
        "inlet-plug" | "manifold-plug" => port_of(part, burners).map(|port| plug(port, state)),
        "inlet-adapter" | "manifold-adapter" => {
            port_of(part, burners).map(|port| has_adapter(port) == (state == "on"))
        }
        // The air is drawn for the tool that it is held into.
        "yard-air" | "floor-zone" | "breathing-zone" => Some(seen.hand == Some(Tool::GasDetector)),
        "gas-valve" => Some(valve_body(state, seen)),
        "conversion-label" => furnace.map(|f| fitted(f.conversion_label, state)),
        "box-hose" => burners.map(|b| (b.signs.box_hose == Fitted::On) == (state == "on")),
        "flame-rod" => burners.map(|b| b.signs.rod == Rod::Filmed),
        "ground-wire" => burners.map(|b| fitted(b.signs.ground, state)),
        "orifices" => burners.map(|b| plugged(&b.signs, state)),
        "register" => {
            seen.hall.as_ref().map(|h| (h.registers_closed > REGISTERS_SHOW) == (state == "closed"))
        }
        "tank" => yard.map(|y| state != "frost" || y.frost > 0.01),
        "first-regulator" => yard.map(|y| y.frost > REGULATOR_FROSTS),
        part if GROUND.contains(&part) => Some(ground(part, state, seen)),
        _ => match level_of(part) {
            Some(level) if part == level.cap_id() => {
                burners.map(|b| b.caps.get(level).is_some_and(|cap| fitted(*cap, state)))
            }
            Some(_) => burners.map(|b| draft_hose(&b.signs, state)),
            None => found::holds(part, state, seen),
        },
    }
}

/// The hose to the pressure switches: on, split or off, with water standing in it or not.
fn draft_hose(signs: &Signs, state: &str) -> bool {
    let wet = signs.draft_water == Water::Stands;
    match signs.draft_hose {
        Hose::Sound => state == "hose-on" || (wet && state == "hose-wet"),
        Hose::Split => state == "hose-split",
        Hose::Off => state == "hose-off",
    }
}

/// Whether `plugged-N` is the orifice in which something was found.
fn plugged(signs: &Signs, state: &str) -> bool {
    let number = state.strip_prefix("plugged-").and_then(|number| number.parse::<usize>().ok());
    number.is_some_and(|number| signs.plugged.is_some_and(|index| index + 1 == number))
}

/// Whether a whole part is there at all; `None` for parts that always are.
pub(super) fn whole(part: &str, seen: &Seen) -> Option<bool> {
    if let Some(tool) = Tool::from_id(part) {
        return Some(in_roll(tool, seen));
    }
    match part {
        "low-gas-switch" => {
            let burners = seen.furnace.as_ref().and_then(|f| f.burners.as_ref());
            burners.map(|b| b.low_gas_switch == Fitted::On)
        }
        _ => of_levels(part, seen),
    }
}

/// Whether the furnace has the firing level that a part belongs to; `None` for other parts.
pub(super) fn of_levels(part: &str, seen: &Seen) -> Option<bool> {
    match part {
        "high-coil" | "stage-jumper" => Some(is_staged(seen.levels)),
        _ => level_of(part).map(|level| seen.levels.contains(&level)),
    }
}

/// Whether a part is the adapter of a port in view that has none.
pub(super) fn is_bare_of_adapter(part: &str, seen: &Seen) -> bool {
    let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
    let port = port_of(part, burners).filter(|_| part.ends_with("-adapter"));
    port.is_some_and(|port| !has_adapter(port))
}

/// Whether a whole part is there on some jobs only.
pub(super) fn comes_and_goes(part: &str) -> bool {
    let fitted = ["low-gas-switch", "high-coil", "stage-jumper"].contains(&part);
    fitted || Tool::from_id(part).is_some() || level_of(part).is_some()
}

/// The firing level that a cap, a screw or a pressure switch belongs to.
fn level_of(part: &str) -> Option<Level> {
    Level::ALL
        .into_iter()
        .find(|level| [level.cap_id(), level.screw().id(), level.switch_id()].contains(&part))
}

/// Whether a tool lies in the roll: not in the hand and not on a port.
fn in_roll(tool: Tool, seen: &Seen) -> bool {
    if seen.hand == Some(tool) {
        return false;
    }
    match tool {
        Tool::Hose => seen.hose().is_none(),
        Tool::Adapter => {
            let ports = seen.furnace.as_ref().and_then(|f| f.burners.as_ref()).map(|b| b.ports);
            seen.hose().is_none() && !ports.is_some_and(|ports| ports.values().any(has_adapter))
        }
        Tool::Microammeter => seen.clipped == Fitted::Off,
        Tool::HexKey
        | Tool::SlottedDriver
        | Tool::LeakFluid
        | Tool::GasDetector
        | Tool::Thermometer
        | Tool::FlueAnalyser
        | Tool::ElectricalMeter
        | Tool::Stopwatch => true,
    }
}

/// The screw's angle since the start, in eighths of a turn, where it is seen.
pub(super) fn eighths(screw: Screw, seen: &Seen) -> Option<i32> {
    let burners = || seen.furnace.as_ref().and_then(|f| f.burners.as_ref());
    match screw.level() {
        Some(level) => burners().and_then(|b| b.screw_eighths[level]),
        None => seen.yard.as_ref().and_then(|y| y.screw_eighths),
    }
}

/// State of another appliance's burner, where it is seen.
pub(super) fn burning(appliance: OtherAppliance, seen: &Seen) -> Option<Burning> {
    match appliance {
        OtherAppliance::WaterHeater => seen.furnace.as_ref().map(|f| f.water_heater.burning),
        OtherAppliance::Range => seen.hall.as_ref().map(|h| h.range.burning),
    }
}

/// Whether another appliance burns where it can be seen.
pub(super) fn burns(appliance: OtherAppliance, seen: &Seen) -> bool {
    burning(appliance, seen) == Some(Burning::Burning)
}

/// The port that a plug's or an adapter's id belongs to.
pub(super) fn port_of<'a>(part: &str, burners: Option<&'a BurnersSeen>) -> Option<&'a PortSeen> {
    let port = if part.starts_with("inlet") { Port::Inlet } else { Port::Manifold };
    burners.map(|b| &b.ports[port])
}

fn plug(port: &PortSeen, state: &str) -> bool {
    match state {
        "cracked" => port.cracked == Cracked::Cracked,
        "in" => {
            matches!(port.fill, PortFill::Snug | PortFill::TapSnug | PortFill::HoseOnShutTap(_))
        }
        // A captive screw stays in its tap, loosened or not.
        "proud" => matches!(
            port.fill,
            PortFill::HandTight
                | PortFill::Started
                | PortFill::TapLoose
                | PortFill::TapOpen
                | PortFill::HoseOnTap(_)
        ),
        "hosed" => port.fill.is_tap() && port.fill.hose().is_some(),
        "leaning" => port.fill == PortFill::Leaning,
        "out" => match port.fill {
            PortFill::Open | PortFill::BareAdapter | PortFill::Hose(_) => true,
            PortFill::Snug
            | PortFill::HandTight
            | PortFill::Started
            | PortFill::Leaning
            | PortFill::TapSnug
            | PortFill::TapLoose
            | PortFill::TapOpen
            | PortFill::HoseOnTap(_)
            | PortFill::HoseOnShutTap(_) => false,
        },
        _ => false,
    }
}

fn has_adapter(port: &PortSeen) -> bool {
    match port.fill {
        PortFill::BareAdapter | PortFill::Hose(_) => true,
        PortFill::Snug
        | PortFill::HandTight
        | PortFill::Started
        | PortFill::Leaning
        | PortFill::Open
        | PortFill::TapSnug
        | PortFill::TapLoose
        | PortFill::TapOpen
        | PortFill::HoseOnTap(_)
        | PortFill::HoseOnShutTap(_) => false,
    }
}

fn fitted(now: Fitted, state: &str) -> bool {
    match now {
        Fitted::On => state == "on",
        Fitted::Off => state == "off",
    }
}

fn opening(now: Opening, state: &str) -> bool {
    match now {
        Opening::Open => state == "open",
        Opening::Closed => state == "closed",
    }
}
