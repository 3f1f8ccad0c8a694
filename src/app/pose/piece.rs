//! How a part's pieces turn, scale and fade.

use super::appearance::{Pose, Shown, narrow};
use super::found::connector;
use super::state::{burning, burns, eighths, light, of_levels, port_of};
use crate::parts::{HandValve, Joint, OnOff, OtherAppliance, PortFill, Screw};
use crate::senses::seen::{BurnersSeen, FlameSeen, FluidSeen, Seen};

/// How far the valve switch's lever turns from off to on, in degrees.
const VALVE_LEVER_DEG: f32 = 70.0;
/// How far a service switch's lever swings from on to off, as a scale of its height.
const SWITCH_FLIP: f32 = -1.0;
/// How far a knob turns from off to full, in degrees.
const KNOB_DEG: f32 = 90.0;
/// Sweep of the tank gauge's needle from 5 % to 95 %, in degrees.
const GAUGE_SWEEP_DEG: f32 = 270.0;
/// Turns a second of a wheel at full speed as drawn: slow enough to follow with the eye.
const WHEEL_REV_S: f32 = 1.5;
/// Share of the burners' air blown in at which flames lean as far as they do.
const STORM: f64 = 0.3;
/// How far they lean then, in degrees.
const LEAN_DEG: f64 = 26.0;
/// How far warm air rises while it is seen to shimmer, in units of the page.
const RISING: [f32; 2] = [0.0, -12.0];
/// How far dust drifts while it is seen.
const STIRRED: [f32; 2] = [-14.0, -6.0];
/// Height of a flame under which it counts as out.
const OUT: f64 = 0.02;

/// How `part.piece` stands; `None` when it stays as drawn.
pub(super) fn pose(part: &str, piece: &str, seen: &Seen) -> Option<Pose> {
    match piece {
        "sign" => of_levels(part, seen).map(Pose::when),
        "handle" => handle(part, seen),
        "lever" => lever(part, seen),
        "slot" => slot(part, seen),
        "wheel" => wheel(part, seen),
        "glow" => glow(part, seen),
        "body" | "core" | "tip" | "soot" => flame(part, piece, seen),
        // A connector bent straight leaks at its crease, not at its nut.
        "bubbles" if part == "connector-crack" => bubbles(Joint::Connector, seen),
        "bubbles" if part == "connector" && connector(seen) == "creased" => Some(Pose::HIDDEN),
        "bubbles" => Joint::from_id(part).and_then(|joint| bubbles(joint, seen)),
        "needle" => seen
            .yard
            .as_ref()
            .and_then(|y| y.tank_percent)
            .map(|percent| Pose::turned((narrow(percent) - 50.0) / 90.0 * GAUGE_SWEEP_DEG)),
        // The fraction alone, so that the hand stays exact after many turns.
        "hand" => seen
            .yard
            .as_ref()
            .and_then(|y| y.dial_turns)
            .map(|turns| Pose::turned(narrow((turns - libm::floor(turns)) * 360.0))),
        "flame" => appliance(part).map(|n| Pose { flicker: 0.06, ..Pose::when(burns(n, seen)) }),
        "shimmer" => appliance(part).map(|n| Pose { drift: RISING, ..Pose::when(burns(n, seen)) }),
        "dust" => dust(seen),
        "knob" => appliance(part).map(|n| knob(n, seen)),
        "lamp" => seen.hall.as_ref().map(|_| Pose::default()),
        _ => None,
    }
}

fn handle(part: &str, seen: &Seen) -> Option<Pose> {
    let handle = seen.handle(HandValve::from_id(part)?)?;
    Some(Pose::turned(90.0 - f32::from(handle.deg())))
}

fn lever(part: &str, seen: &Seen) -> Option<Pose> {
    let furnace = seen.furnace.as_ref()?;
    match part {
        "valve-switch" => Some(Pose::turned(match furnace.burners.as_ref()?.valve_switch {
            OnOff::On => VALVE_LEVER_DEG,
            OnOff::Off => 0.0,
        })),
        "furnace-switch" => Some(Pose {
            scale: [
                1.0,
                match furnace.switch {
                    OnOff::On => 1.0,
                    OnOff::Off => SWITCH_FLIP,
                },
            ],
            ..Pose::default()
        }),
        "door-switch" => Some(Pose::turned(match furnace.blower_door {
            crate::parts::Fitted::On => 0.0,
            crate::parts::Fitted::Off => 25.0,
        })),
        _ => None,
    }
}

fn slot(part: &str, seen: &Seen) -> Option<Pose> {
    if let Some(screw) = Screw::from_id(part) {
        let turned = eighths(screw, seen)?;
        return Some(Pose::turned(narrow(f64::from(turned) * 45.0)));
    }
    let burners = seen.furnace.as_ref()?.burners.as_ref()?;
    // The socket of a loosened plug stands askew to that of a seated one.
    let turn = match port_of(part, Some(burners))?.fill {
        PortFill::HandTight | PortFill::TapLoose => 30.0,
        // A captive screw a turn out of its seat, the slot askew.
        PortFill::TapOpen | PortFill::HoseOnTap(_) => 60.0,
        PortFill::Started => 15.0,
        PortFill::Snug
        | PortFill::Leaning
        | PortFill::Open
        | PortFill::BareAdapter
        | PortFill::Hose(_)
        | PortFill::TapSnug
        | PortFill::HoseOnShutTap(_) => 0.0,
    };
    Some(Pose::turned(turn))
}

fn wheel(part: &str, seen: &Seen) -> Option<Pose> {
    let furnace = seen.furnace.as_ref()?;
    let speed = match part {
        "inducer" => furnace.inducer,
        "blower" => furnace.blower,
        _ => return None,
    };
    Some(Pose { spin_rev_s: narrow(speed) * WHEEL_REV_S, ..Pose::default() })
}

fn glow(part: &str, seen: &Seen) -> Option<Pose> {
    let furnace = seen.furnace.as_ref()?;
    match part {
        // From a dull red to a bright orange.
        "igniter" => furnace.burners.as_ref().map(|b| Pose {
            tint: [1.0, narrow(0.35 + 0.65 * b.glow), narrow(0.2 + 0.8 * b.glow)],
            ..Pose::faded(b.glow)
        }),
        "status-lamp" => Some(Pose::when(furnace.switch == OnOff::On)),
        _ => {
            let FlameSeen { height, yellow } = flame_of(part, seen)?;
            // A flame throws its own color: blue, or yellow where it wants air.
            let warm = narrow(yellow.clamp(0.0, 1.0));
            Some(Pose {
                tint: [0.35 + 0.65 * warm, 0.6 + 0.2 * warm, 1.0 - 0.65 * warm],
                ..Pose::faded(if height < OUT { 0.0 } else { height.min(1.0) })
            })
        }
    }
}

/// Number of a burner, from 1, by the id of its flame.
fn flame_number(part: &str) -> Option<usize> {
    part.strip_prefix("flame-")?.parse().ok().filter(|number| *number > 0)
}

/// The flame of a burner, by its id.
fn flame_of(part: &str, seen: &Seen) -> Option<FlameSeen> {
    let burners = seen.furnace.as_ref()?.burners.as_ref()?;
    burners.flames.get(flame_number(part)?.checked_sub(1)?).copied()
}

/// Dust in the light that falls in, stirred while the blower moves the air.
fn dust(seen: &Seen) -> Option<Pose> {
    let furnace = seen.furnace.as_ref()?;
    let drift = if furnace.blower > 0.0 { STIRRED } else { [0.0; 2] };
    Some(Pose { drift, ..Pose::when(light(seen.hour()) != "dark") })
}

fn flame(part: &str, piece: &str, seen: &Seen) -> Option<Pose> {
    let burners = seen.furnace.as_ref()?.burners.as_ref()?;
    let number = flame_number(part)?;
    let FlameSeen { height, yellow } = flame_of(part, seen)?;
    if height < OUT {
        return Some(Pose::HIDDEN);
    }
    // A lazy flame stands longer, and its yellow tip grows at the cost of the blue core.
    let yellow = yellow.clamp(0.0, 1.0);
    if piece == "soot" {
        // Smoke from a flame that is more yellow than blue, as the combustion has it.
        let soot = 2.0 * yellow - 1.0;
        let size = narrow(0.6 + 0.4 * soot.max(0.0));
        let pose = Pose { scale: [size, size], flicker: 0.2, ..Pose::when(soot > 0.05) };
        return Some(pose);
    }
    let (share, shown) = match piece {
        "tip" => (0.35 + 0.65 * yellow, yellow > 0.03),
        "core" => (1.0 - 0.6 * yellow, true),
        _ => (1.0, true),
    };
    let width = 0.75 + 0.25 * height.min(1.0);
    // Wind from the blower side leans the flames over, each a little differently, and tears at
    // them.
    let blown = (burners.signs.blown / STORM).clamp(0.0, 1.0);
    #[expect(clippy::cast_precision_loss, reason = "one of four")]
    let lean = blown * LEAN_DEG * (0.7 + 0.3 * (number % 3) as f64);
    Some(Pose {
        shown: Shown::when(shown),
        turn_deg: narrow(lean),
        scale: [narrow(width), narrow(height * share)],
        // Short of air it dances wide and slowly; on low fire, with little gas behind it, a little.
        flicker: narrow(0.02 + 0.02 * (1.0 - height.min(1.0)) + 0.1 * yellow + 0.3 * blown),
        sway_deg: narrow(0.6 + 5.0 * yellow + 6.0 * blown),
        pace: narrow(1.0 - 0.5 * yellow * (1.0 - blown)),
        ..Pose::default()
    })
}

fn bubbles(joint: Joint, seen: &Seen) -> Option<Pose> {
    let burners: Option<&BurnersSeen> = seen.furnace.as_ref()?.burners.as_ref();
    let fluid = burners.map(|b| b.fluid[joint]).unwrap_or_default();
    Some(match fluid {
        FluidSeen::Dry | FluidSeen::Quiet(_) => Pose::HIDDEN,
        FluidSeen::Bubbles(size) => {
            let scale = narrow(0.3 + 0.7 * size.clamp(0.0, 1.0));
            Pose { scale: [scale, scale], ..Pose::default() }
        }
    })
}

fn appliance(part: &str) -> Option<OtherAppliance> {
    OtherAppliance::from_id(part)
}

fn knob(appliance: OtherAppliance, seen: &Seen) -> Pose {
    use crate::senses::seen::Burning;
    Pose::turned(match burning(appliance, seen) {
        Some(Burning::Burning | Burning::NoGas) => KNOB_DEG,
        Some(Burning::Off) | None => 0.0,
    })
}
