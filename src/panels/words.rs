//! States in words: what the eye finds at a part, for names of hot-spots and for lists.

use super::instrument_display;
use super::parts::canonical;
use crate::appliance::safety::{Hose, Jumper};
use crate::parts::{Fitted, Joint, Level, LowSide, OnOff, Opening, Port, PortFill, Push, Tool};
use crate::physics::valve::HandleAngle;
use crate::senses::seen::{
    BurnersSeen, Burning, Cracked, Display, FlameSeen, FluidSeen, FurnaceSeen, HallSeen, HoseLook,
    MeterSeen, PortSeen, REGISTERS_SHOW, Rod, Seen, Signs, Water, YardSeen,
};
use crate::words::decimal;

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
    let meter = seen.meter()?;
    Some(match id {
        "meter" => match instrument_display::gauge_line(meter.gauge) {
            Some(gauge) => t!("meter-shows-beside", display = display(meter), gauge = gauge),
            None => t!("meter-shows", display = display(meter)),
        },
        "meter-power" => match meter.display {
            Display::Dark => t!("state-off").into(),
            Display::Number(_) | Display::OverRange => t!("state-on").into(),
        },
        "meter-unit" => meter.unit.label().into(),
        "meter-plus" => {
            let place = match meter.hose {
                None => t!("hose-open").to_owned(),
                Some((port, Push::Fully)) => t!("hose-fully", port = port.label().to_lowercase()),
                Some((port, Push::Halfway)) => {
                    t!("hose-halfway", port = port.label().to_lowercase())
                }
            };
            match meter.hose_look {
                HoseLook::Clear => place,
                HoseLook::Wet => t!("hose-wet", hose = place),
                HoseLook::Pinched => t!("hose-pinched", hose = place),
            }
        }
        "meter-minus" => match meter.low_side {
            LowSide::Air => t!("low-side-air").into(),
            LowSide::BurnerBox => t!("low-side-box").into(),
        },
        _ => return None,
    })
}

fn tool_state(tool: Tool, seen: &Seen) -> String {
    if seen.hand == Some(tool) {
        return match seen.detector.filter(|_| tool == Tool::GasDetector) {
            Some(read) => t!("tool-detector", percent = decimal(read.percent_lel, 0)),
            None => t!("tool-in-hand").into(),
        };
    }
    if tool == Tool::Microammeter && seen.clipped == Fitted::On {
        return t!("tool-clipped").into();
    }
    if tool == Tool::Hose && seen.hose().is_some() {
        return t!("tool-on-port").into();
    }
    t!("tool-in-roll").into()
}

/// What the manometer shows, in words.
#[must_use]
pub fn display(meter: &MeterSeen) -> String {
    match meter.display {
        Display::Dark => t!("display-dark").into(),
        Display::Number(shown) => shown.to_string(),
        Display::OverRange => t!("display-over").into(),
    }
}

fn at_furnace(id: &str, furnace: &FurnaceSeen) -> Option<String> {
    Some(match id {
        "burner-door" => door(furnace.burner_door),
        "blower-door" => door(furnace.blower_door),
        "furnace-switch" => on_off(furnace.switch).into(),
        "manual-valve" => hand_valve(furnace.manual_valve),
        "water-heater" => burning(furnace.water_heater.burning).into(),
        "water-heater-cock" => hand_valve(furnace.water_heater.handle),
        "plant-window" => opening(furnace.window).into(),
        "stage-jumper" => match furnace.stage_jumper {
            Fitted::On => t!("jumper-fitted").into(),
            Fitted::Off => t!("jumper-not-fitted").into(),
        },
        "tag" => match furnace.tag {
            Fitted::On => t!("tag-hangs").into(),
            Fitted::Off => t!("tag-not-hung").into(),
        },
        "status-lamp" | "control-board" => furnace.status.words().into(),
        "inducer" => fan(furnace.inducer).into(),
        "blower" => fan(furnace.blower).into(),
        _ => return furnace.burners.as_ref().and_then(|burners| behind_door(id, burners)),
    })
}

fn behind_door(id: &str, burners: &BurnersSeen) -> Option<String> {
    let at_port = |which: Port| port(&burners.ports[which], Some(burners.fluid[which.joint()]));
    Some(match id {
        "burners" => {
            let lit = burners.flames.iter().any(|flame| flame.height > 0.0);
            if lit && burners.signs.flames_lean() {
                t!("burners-blown", flames = flames(&burners.flames))
            } else {
                flames(&burners.flames)
            }
        }
        "igniter" => match burners.glow {
            glow if glow > 0.6 => t!("igniter-white").into(),
            glow if glow > 0.05 => t!("igniter-dull").into(),
            _ => t!("igniter-dark").into(),
        },
        "valve-switch" | "gas-valve" => t!("valve-switch", switch = on_off(burners.valve_switch)),
        "inlet-port" | "inlet-plug" | "inlet-adapter" => at_port(Port::Inlet),
        "manifold-port" | "manifold-plug" | "manifold-adapter" => at_port(Port::Manifold),
        "box-hose" => match burners.signs.box_hose {
            Fitted::On => t!("box-hose-on").into(),
            Fitted::Off => t!("box-hose-off").into(),
        },
        "flame-rod" => match burners.signs.rod {
            Rod::Bright => return None,
            Rod::Filmed => t!("rod-filmed").into(),
        },
        "ground-wire" => match burners.signs.ground {
            Fitted::On => t!("ground-on").into(),
            Fitted::Off => t!("ground-off").into(),
        },
        "limit" => wire(burners.wires.limit)?.into(),
        "rollout-1" | "rollout-2" => wire(burners.wires.rollout)?.into(),
        "low-gas-switch" => wire(burners.wires.low_gas)?.into(),
        "union" | "connector" => fluid(burners.fluid[Joint::from_id(id)?])?.into(),
        _ => return of_level(id, burners),
    })
}

/// What belongs to one firing level: cap, screw and pressure switch.
fn of_level(id: &str, burners: &BurnersSeen) -> Option<String> {
    let level = |part: LevelPart| burners.caps.list().iter().find(|level| part(**level) == id);
    if let Some(&it) = level(|it| it.cap_id()) {
        return Some(cap(burners.caps[it]));
    }
    if let Some(&it) = level(|it| it.screw().id()) {
        return Some(screw(burners.screw_eighths[it]));
    }
    let it = *level(|it| it.switch_id())?;
    draft(burners.wires.switches[it], &burners.signs)
}

/// The id of a level's part.
type LevelPart = fn(Level) -> &'static str;

/// A wire across the contacts of a safety device.
fn wire(jumper: Jumper) -> Option<&'static str> {
    match jumper {
        Jumper::On => Some(t!("wire-across")),
        Jumper::Off => None,
    }
}

/// A pressure switch: the wire across it, and its hose where that is not as it should be.
fn draft(jumper: Jumper, signs: &Signs) -> Option<String> {
    let hose = match (signs.draft_hose, signs.draft_water) {
        (Hose::Off, _) => Some(t!("draft-hose-off")),
        (Hose::Split, _) => Some(t!("draft-hose-split")),
        (Hose::Sound, Water::Stands) => Some(t!("draft-hose-water")),
        (Hose::Sound, Water::None) => None,
    };
    let words: Vec<&str> = wire(jumper).into_iter().chain(hose).collect();
    (!words.is_empty()).then(|| words.join("; "))
}

fn in_hall(id: &str, hall: &HallSeen) -> Option<String> {
    Some(match id {
        "thermostat" => t!(
            "thermostat-state",
            room = half_degrees(hall.room_half_f),
            setpoint = half_degrees(hall.setpoint_half_f),
            call = call(hall.call)
        ),
        "thermostat-mode" => t!("thermostat-heat", switch = on_off(hall.mode)),
        "co-alarm" => t!("alarm-ppm", ppm = decimal(hall.co_ppm, 0)),
        "hall-window" => opening(hall.window).into(),
        "range" => burning(hall.range.burning).into(),
        "range-cock" => hand_valve(hall.range.handle),
        "register" => match hall.registers_closed {
            closed if closed > REGISTERS_SHOW => t!("register-closed").into(),
            _ => t!("state-open").into(),
        },
        _ => return None,
    })
}

fn in_yard(id: &str, yard: &YardSeen) -> Option<String> {
    Some(match id {
        "supply-cock" => hand_valve(yard.supply_valve),
        "supply-regulator" | "first-regulator" | "tank-valve" | "riser" => {
            fluid(yard.fluid[Joint::from_id(id)?])?.into()
        }
        "supply-cap" => cap(yard.cap),
        "supply-screw" => screw(yard.screw_eighths),
        "tank-gauge" => t!("tank-percent", percent = decimal(yard.tank_percent?, 0)),
        "meter-dial" | "meter-index" | "gas-meter" => {
            t!("dial-turns", turns = decimal(yard.dial_turns?, 2))
        }
        "tank" => match yard.frost {
            frost if frost > 0.6 => t!("frost-white").into(),
            frost if frost > 0.05 => t!("frost-climbs").into(),
            _ => t!("frost-none").into(),
        },
        _ => return None,
    })
}

/// A hand valve's angle in words.
#[must_use]
pub fn hand_valve(handle: HandleAngle) -> String {
    if handle.is_shut() {
        t!("state-shut").into()
    } else if handle.is_open() {
        t!("state-open").into()
    } else {
        t!("valve-between", degrees = i64::from(handle.deg()))
    }
}

/// A switch in a word.
#[must_use]
pub fn on_off(state: OnOff) -> &'static str {
    match state {
        OnOff::On => t!("state-on"),
        OnOff::Off => t!("state-off"),
    }
}

/// A window in a word.
#[must_use]
pub fn opening(state: Opening) -> &'static str {
    match state {
        Opening::Open => t!("state-open"),
        Opening::Closed => t!("state-closed"),
    }
}

fn door(state: Fitted) -> String {
    match state {
        Fitted::On => t!("door-in-place").into(),
        Fitted::Off => t!("state-off").into(),
    }
}

fn cap(state: Fitted) -> String {
    match state {
        Fitted::On => t!("state-on").into(),
        Fitted::Off => t!("cap-in-tray").into(),
    }
}

fn fan(share: f64) -> &'static str {
    match share {
        still if still < 0.02 => t!("fan-still"),
        slow if slow < 0.75 => t!("fan-turns"),
        _ => t!("fan-fast"),
    }
}

fn burning(state: Burning) -> &'static str {
    match state {
        Burning::Burning => t!("state-burning"),
        Burning::NoGas => t!("state-no-gas"),
        Burning::Off => t!("state-off"),
    }
}

/// A firing level in the trade's words.
#[must_use]
pub fn level(level: Level) -> &'static str {
    level.choose(t!("level-firing"), t!("level-low-fire"), t!("level-high-fire"))
}

/// A thermostat's call in words.
#[must_use]
pub fn call(call: Option<Level>) -> &'static str {
    match call {
        None => t!("call-none"),
        Some(level) => level.choose(t!("call-heat"), t!("call-first"), t!("call-second")),
    }
}

fn screw(eighths: Option<i32>) -> String {
    match eighths {
        None => t!("screw-under-cap").into(),
        Some(0) => t!("screw-as-found").into(),
        Some(eighths) if eighths.unsigned_abs() > 8 => {
            t!("screw-turns", turns = turns(eighths))
        }
        Some(eighths) => t!("screw-turn", turns = turns(eighths)),
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
    decimal(f64::from(half) / 2.0, 1)
}

fn port(port: &PortSeen, wet: Option<FluidSeen>) -> String {
    let fill = match port.fill {
        PortFill::Snug => t!("port-snug"),
        PortFill::HandTight => t!("port-hand-tight"),
        PortFill::Started => t!("port-started"),
        PortFill::Leaning => t!("port-leaning"),
        PortFill::Open => t!("state-open"),
        PortFill::BareAdapter => t!("port-adapter"),
        PortFill::Hose(Push::Fully) => t!("port-hose"),
        PortFill::Hose(Push::Halfway) => t!("port-hose-halfway"),
        PortFill::TapSnug => t!("port-tap-snug"),
        PortFill::TapLoose => t!("port-tap-loose"),
        PortFill::TapOpen => t!("port-tap-open"),
        PortFill::HoseOnTap(Push::Fully) => t!("port-tap-hose"),
        PortFill::HoseOnTap(Push::Halfway) => t!("port-tap-hose-halfway"),
        PortFill::HoseOnShutTap(Push::Fully) => t!("port-shut-tap-hose"),
        PortFill::HoseOnShutTap(Push::Halfway) => t!("port-shut-tap-hose-halfway"),
    };
    let port = match port.cracked {
        Cracked::Sound => fill.to_owned(),
        Cracked::Cracked => t!("port-cracked", port = fill),
    };
    match wet.and_then(fluid) {
        Some(fluid) => t!("port-wet", port = port, fluid = fluid),
        None => port,
    }
}

fn fluid(fluid: FluidSeen) -> Option<&'static str> {
    match fluid {
        FluidSeen::Dry => None,
        FluidSeen::Quiet(wet_s) if wet_s < 10.0 => Some(t!("fluid-wait")),
        FluidSeen::Quiet(_) => Some(t!("fluid-quiet")),
        FluidSeen::Bubbles(size) if size < 0.3 => Some(t!("fluid-small-bubbles")),
        FluidSeen::Bubbles(_) => Some(t!("fluid-bubbles")),
    }
}

/// The four flames in a few words.
#[must_use]
pub fn flames(flames: &[FlameSeen; 4]) -> String {
    let lit = flames.iter().filter(|flame| flame.height > 0.0).count();
    let height = flames.iter().fold(0.0, |most: f64, flame| most.max(flame.height));
    let yellow = flames.iter().fold(0.0, |most: f64, flame| most.max(flame.yellow));
    let count = match lit {
        0 => return t!("flames-none").into(),
        4 => t!("flames-four").to_owned(),
        some => t!("flames-some", lit = some),
    };
    let tall = match height {
        low if low < 0.5 => t!("flames-very-low"),
        low if low < 0.85 => t!("flames-low"),
        full if full < 1.12 => t!("flames-full"),
        _ => t!("flames-tall"),
    };
    let look = match yellow {
        blue if blue < 0.15 => t!("flames-blue"),
        tips if tips < 0.45 => t!("flames-tips"),
        _ => t!("flames-yellow"),
    };
    t!("flames-all", count = count, height = tall, look = look)
}
