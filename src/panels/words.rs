//! States in words: what the eye finds at a part, for names of hot-spots and for lists.

use super::face;
use super::parts::canonical;
use crate::appliance::safety::{Hose, Jumper};
use crate::parts::{Fitted, Joint, Level, LowSide, OnOff, Opening, Port, PortFill, Push, Tool};
use crate::senses::seen::{
    BurnersSeen, Burning, Call, Cracked, Display, FlameSeen, FluidSeen, FurnaceSeen, HallSeen,
    HoseLook, PortSeen, REGISTERS_SHOW, Rod, Seen, Signs, Water, YardSeen,
};

/// How a part stands, in words, or nothing where there is nothing to say or it cannot be seen.
#[must_use]
pub fn value(part: &str, seen: &Seen) -> Option<String> {
    let id = canonical(part);
    at_hand(id, seen)
        .or_else(|| seen.furnace.as_ref().and_then(|furnace| at_furnace(id, furnace)))
        .or_else(|| seen.hall.as_ref().and_then(|hall| in_hall(id, hall)))
        .or_else(|| seen.yard.as_ref().and_then(|yard| in_yard(id, yard)))
}

fn at_hand(id: &str, seen: &Seen) -> Option<String> {
    if let Some(tool) = Tool::from_id(id) {
        return Some(tool_state(tool, seen));
    }
    Some(match id {
        "meter" => match face::gauge_line(seen.gauge) {
            Some(gauge) => format!("shows {}; the hose goes elsewhere. {gauge}", display(seen)),
            None => format!("shows {}", display(seen)),
        },
        "meter-power" => match seen.meter.display {
            Display::Dark => "off".into(),
            Display::Number(_) | Display::OverRange => "on".into(),
        },
        "meter-unit" => seen.meter.unit.label().into(),
        "meter-plus" => {
            let place = match seen.meter.hose {
                None => "hose open to the air".to_owned(),
                Some((port, Push::Fully)) => format!("hose on the {}", port.label().to_lowercase()),
                Some((port, Push::Halfway)) => {
                    format!("hose halfway on the {}", port.label().to_lowercase())
                }
            };
            match seen.meter.hose_look {
                HoseLook::Clear => place,
                HoseLook::Wet => format!("{place}, drops of water in it"),
                HoseLook::Pinched => format!("{place}, pinched in one place"),
            }
        }
        "meter-minus" => match seen.meter.low_side {
            LowSide::Air => "open to the air".into(),
            LowSide::BurnerBox => "to the burner box".into(),
        },
        _ => return None,
    })
}

fn tool_state(tool: Tool, seen: &Seen) -> String {
    if seen.hand == Some(tool) {
        return match seen.detector.filter(|_| tool == Tool::GasDetector) {
            Some(read) => format!("in hand, {:.0} % of the lower limit", read.percent_lel),
            None => "in hand".into(),
        };
    }
    if tool == Tool::Microammeter && seen.clipped == Fitted::On {
        return "clipped in at the flame rod".into();
    }
    if tool == Tool::Hose && seen.meter.hose.is_some() {
        return "on a port".into();
    }
    "in the roll".into()
}

/// What the manometer shows, in words.
#[must_use]
pub fn display(seen: &Seen) -> String {
    match seen.meter.display {
        Display::Dark => "nothing, it is off".into(),
        Display::Number(shown) => shown.to_string(),
        Display::OverRange => "more than its range".into(),
    }
}

fn at_furnace(id: &str, furnace: &FurnaceSeen) -> Option<String> {
    Some(match id {
        "burner-door" => door(furnace.burner_door),
        "blower-door" => door(furnace.blower_door),
        "furnace-switch" => on_off(furnace.switch).into(),
        "manual-valve" => cock(furnace.cock_deg),
        "water-heater" => burning(furnace.water_heater.burning).into(),
        "water-heater-cock" => cock(furnace.water_heater.cock_deg),
        "plant-window" => opening(furnace.window).into(),
        "stage-jumper" => match furnace.stage_jumper {
            Fitted::On => "fitted".into(),
            Fitted::Off => "not fitted".into(),
        },
        "tag" => match furnace.tag {
            Fitted::On => "hangs on the furnace".into(),
            Fitted::Off => "not hung".into(),
        },
        "status-lamp" | "control-board" => furnace.status.into(),
        "inducer" => fan(furnace.inducer).into(),
        "blower" => fan(furnace.blower).into(),
        _ => return furnace.burners.as_ref().and_then(|burners| behind_door(id, burners)),
    })
}

fn behind_door(id: &str, burners: &BurnersSeen) -> Option<String> {
    let at_port = |which: Port| port(&burners.ports[which], Some(burners.fluid[which.joint()]));
    Some(match id {
        "burners" => match burners.signs.blown {
            calm if calm < 0.05 => flames(&burners.flames),
            _ if burners.flames.iter().all(|flame| flame.height <= 0.0) => flames(&burners.flames),
            _ => format!("{}; the wind of the blower bends them", flames(&burners.flames)),
        },
        "igniter" => match burners.glow {
            glow if glow > 0.6 => "glows white".into(),
            glow if glow > 0.05 => "glows dull".into(),
            _ => "dark".into(),
        },
        "valve-switch" | "gas-valve" => format!("switch {}", on_off(burners.valve_switch)),
        "low-cap" => cap(burners.caps[Level::Low]),
        "high-cap" => cap(burners.caps[Level::High]),
        "low-screw" => screw(burners.screw_eighths[Level::Low]),
        "high-screw" => screw(burners.screw_eighths[Level::High]),
        "inlet-port" | "inlet-plug" | "inlet-adapter" => at_port(Port::Inlet),
        "manifold-port" | "manifold-plug" | "manifold-adapter" => at_port(Port::Manifold),
        "pressure-switch-low" => draft(burners.wires.low, &burners.signs)?,
        "pressure-switch-high" => draft(burners.wires.high, &burners.signs)?,
        "box-hose" => match burners.signs.box_hose {
            Fitted::On => "on the gas valve".into(),
            Fitted::Off => "off the gas valve, hanging".into(),
        },
        "flame-rod" => match burners.signs.rod {
            Rod::Bright => return None,
            Rod::Filmed => "under a pale film".into(),
        },
        "ground-wire" => match burners.signs.ground {
            Fitted::On => "under its screw".into(),
            Fitted::Off => "off its screw".into(),
        },
        "limit" => wire(burners.wires.limit)?.into(),
        "rollout-1" | "rollout-2" => wire(burners.wires.rollout)?.into(),
        "low-gas-switch" => wire(burners.wires.low_gas)?.into(),
        "union" | "connector" => fluid(burners.fluid[Joint::from_id(id)?])?.into(),
        _ => return None,
    })
}

/// A wire across the contacts of a safety device.
fn wire(jumper: Jumper) -> Option<&'static str> {
    match jumper {
        Jumper::On => Some("a wire lies across it"),
        Jumper::Off => None,
    }
}

/// A pressure switch: the wire across it, and its hose where that is not as it should be.
fn draft(jumper: Jumper, signs: &Signs) -> Option<String> {
    let hose = match (signs.draft_hose, signs.draft_water) {
        (Hose::Off, _) => Some("its hose is off"),
        (Hose::Split, _) => Some("its hose is split"),
        (Hose::Sound, Water::Stands) => Some("water stands in its hose"),
        (Hose::Sound, Water::None) => None,
    };
    let words: Vec<&str> = wire(jumper).into_iter().chain(hose).collect();
    (!words.is_empty()).then(|| words.join("; "))
}

fn in_hall(id: &str, hall: &HallSeen) -> Option<String> {
    Some(match id {
        "thermostat" => format!(
            "room {} °F, set to {} °F, {}",
            half_degrees(hall.room_half_f),
            half_degrees(hall.setpoint_half_f),
            call(hall.call)
        ),
        "thermostat-mode" => format!("heat {}", on_off(hall.mode)),
        "co-alarm" => format!("{:.0} ppm", hall.co_ppm),
        "hall-window" => opening(hall.window).into(),
        "range" => burning(hall.range.burning).into(),
        "range-cock" => cock(hall.range.cock_deg),
        "register" => match hall.registers_closed {
            closed if closed > REGISTERS_SHOW => "closed, like others in the house".into(),
            _ => "open".into(),
        },
        _ => return None,
    })
}

fn in_yard(id: &str, yard: &YardSeen) -> Option<String> {
    Some(match id {
        "supply-cock" => cock(yard.cock_deg),
        "supply-cap" => cap(yard.cap),
        "supply-screw" => screw(yard.screw_eighths),
        "tank-gauge" => format!("{:.0} %", yard.tank_percent?),
        "meter-dial" | "meter-index" | "gas-meter" => format!("{:.2} turns", yard.dial_turns?),
        "tank" => match yard.frost {
            frost if frost > 0.6 => "white with frost".into(),
            frost if frost > 0.05 => "frost climbs it".into(),
            _ => "no frost".into(),
        },
        _ => return None,
    })
}

/// A hand valve's angle in words.
#[must_use]
pub fn cock(degrees: i16) -> String {
    match degrees {
        0 => "shut".into(),
        90 => "open".into(),
        between => format!("{between}° open"),
    }
}

/// A switch in a word.
#[must_use]
pub fn on_off(state: OnOff) -> &'static str {
    match state {
        OnOff::On => "on",
        OnOff::Off => "off",
    }
}

/// A window in a word.
#[must_use]
pub fn opening(state: Opening) -> &'static str {
    match state {
        Opening::Open => "open",
        Opening::Closed => "closed",
    }
}

fn door(state: Fitted) -> String {
    match state {
        Fitted::On => "in its place".into(),
        Fitted::Off => "off".into(),
    }
}

fn cap(state: Fitted) -> String {
    match state {
        Fitted::On => "on".into(),
        Fitted::Off => "off, in the tray".into(),
    }
}

fn fan(share: f64) -> &'static str {
    match share {
        still if still < 0.02 => "still",
        slow if slow < 0.75 => "turns",
        _ => "turns fast",
    }
}

fn burning(state: Burning) -> &'static str {
    match state {
        Burning::Burning => "burning",
        Burning::NoGas => "turned on, no flame",
        Burning::Off => "off",
    }
}

/// A thermostat's call in words.
#[must_use]
pub fn call(call: Call) -> &'static str {
    match call {
        Call::None => "no call",
        Call::First => "calls first stage",
        Call::Second => "calls first and second stage",
    }
}

fn screw(eighths: Option<i32>) -> String {
    match eighths {
        None => "under its cap".into(),
        Some(0) => "as found".into(),
        Some(eighths) if eighths.unsigned_abs() > 8 => {
            format!("{} turns from as found", turns(eighths))
        }
        Some(eighths) => format!("{} turn from as found", turns(eighths)),
    }
}

/// Eighths of a turn as a signed number with a fraction: `+1 ¼`, `−⅜`.
#[must_use]
pub fn turns(eighths: i32) -> String {
    const FRACTIONS: [&str; 8] = ["", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"];
    let sign = match eighths {
        0 => return "0".into(),
        more if more > 0 => "+",
        _ => "−",
    };
    let size = eighths.unsigned_abs();
    let part = FRACTIONS.get((size % 8) as usize).copied().unwrap_or("");
    match (size / 8, part) {
        (0, part) => format!("{sign}{part}"),
        (whole, "") => format!("{sign}{whole}"),
        (whole, part) => format!("{sign}{whole} {part}"),
    }
}

/// Half degrees as degrees: 141 is `70.5`.
#[must_use]
pub fn half_degrees(half: i16) -> String {
    format!("{:.1}", f64::from(half) / 2.0)
}

fn port(port: &PortSeen, wet: Option<FluidSeen>) -> String {
    let fill = match port.fill {
        PortFill::Snug => "plug seated, snug",
        PortFill::HandTight => "plug hand-tight",
        PortFill::Started => "plug started, thread showing",
        PortFill::Leaning => "plug leans in its thread",
        PortFill::Open => "open",
        PortFill::BareAdapter => "adapter fitted, nothing on it",
        PortFill::Hose(Push::Fully) => "hose on the adapter, fully",
        PortFill::Hose(Push::Halfway) => "hose on the adapter, halfway",
    };
    let crack = match port.cracked {
        Cracked::Sound => "",
        Cracked::Cracked => "; the boss is cracked",
    };
    let wet = wet.and_then(fluid).map(|words| format!("; {words}")).unwrap_or_default();
    format!("{fill}{crack}{wet}")
}

fn fluid(fluid: FluidSeen) -> Option<&'static str> {
    match fluid {
        FluidSeen::Dry => None,
        FluidSeen::Quiet(wet_s) if wet_s < 10.0 => Some("wet with leak fluid, wait and watch"),
        FluidSeen::Quiet(_) => Some("wet with leak fluid, no bubbles grow"),
        FluidSeen::Bubbles(size) if size < 0.3 => Some("small bubbles grow"),
        FluidSeen::Bubbles(_) => Some("bubbles grow"),
    }
}

/// The four flames in a few words.
#[must_use]
pub fn flames(flames: &[FlameSeen; 4]) -> String {
    let lit = flames.iter().filter(|flame| flame.height > 0.0).count();
    let height = flames.iter().fold(0.0, |most: f64, flame| most.max(flame.height));
    let yellow = flames.iter().fold(0.0, |most: f64, flame| most.max(flame.yellow));
    let count = match lit {
        0 => return "no flame".into(),
        4 => "four flames".to_owned(),
        some => format!("{some} of four flames"),
    };
    let tall = match height {
        low if low < 0.5 => "very low",
        low if low < 0.85 => "low",
        full if full < 1.12 => "full",
        _ => "too tall",
    };
    let look = match yellow {
        blue if blue < 0.15 => "blue and steady",
        tips if tips < 0.45 => "blue with yellow tips",
        _ => "yellow and lazy",
    };
    format!("{count}, {tall}, {look}")
}
