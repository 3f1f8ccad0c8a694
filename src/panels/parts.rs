//! Parts of the drawings by id: what they are called and in which order a job meets them.

use crate::parts::{Cock, Door, Joint, Neighbor, Place, Port, Screw, Subject, Tool, Window};

/// The part an element id belongs to: `high-cap@off` is `high-cap`, `meter.display` is `meter`.
#[must_use]
pub fn canonical(id: &str) -> &str {
    id.split(['@', '.']).next().unwrap_or(id)
}

/// Whether an element id names a piece inside a part, which is no hot-spot of its own.
#[must_use]
pub fn is_piece(id: &str) -> bool {
    id.contains('.')
}

/// What a person calls the part.
#[must_use]
pub fn name(id: &str) -> String {
    let id = canonical(id);
    if let Some(known) = own_name(id) {
        return known.into();
    }
    let listed = Port::from_id(id)
        .map(Port::label)
        .or_else(|| Cock::from_id(id).map(Cock::label))
        .or_else(|| Screw::from_id(id).map(Screw::label))
        .or_else(|| Door::from_id(id).map(Door::label))
        .or_else(|| Window::from_id(id).map(Window::label))
        .or_else(|| Neighbor::from_id(id).map(Neighbor::label))
        .or_else(|| Tool::from_id(id).map(Tool::label))
        .or_else(|| Joint::from_id(id).map(Joint::label))
        .or_else(|| Subject::from_id(id).map(Subject::label));
    match listed {
        Some(label) => label.into(),
        None => capitalized(id),
    }
}

/// Names of parts that no list of the bench has, or whose name there is of something seen on
/// them.
fn own_name(id: &str) -> Option<&'static str> {
    Some(match id {
        "burners" => t!("part-burners"),
        "orifices" => t!("part-orifices"),
        "inlet-plug" => t!("part-inlet-plug"),
        "manifold-plug" => t!("part-manifold-plug"),
        "inlet-adapter" => t!("part-inlet-adapter"),
        "manifold-adapter" => t!("part-manifold-adapter"),
        "low-cap" => t!("part-low-cap"),
        "high-cap" => t!("part-high-cap"),
        "supply-cap" => t!("part-supply-cap"),
        "valve-switch" => t!("part-valve-switch"),
        "furnace-switch" => t!("part-furnace-switch"),
        "stage-jumper" => t!("part-stage-jumper"),
        "breathing-zone" => t!("part-breathing-zone"),
        "floor-zone" => t!("part-floor-zone"),
        "yard-air" => t!("part-yard-air"),
        "exit-door" => t!("part-exit-door"),
        "exit-gate" => t!("part-exit-gate"),
        "thermostat-mode" => t!("part-thermostat-mode"),
        "thermostat-up" => t!("part-thermostat-up"),
        "thermostat-down" => t!("part-thermostat-down"),
        "meter" => t!("part-meter"),
        "meter-power" => t!("part-meter-power"),
        "meter-zero" => t!("part-meter-zero"),
        "meter-unit" => t!("part-meter-unit"),
        "meter-hold" => t!("part-meter-hold"),
        "meter-plus" => t!("part-meter-plus"),
        "meter-minus" => t!("part-meter-minus"),
        "meter-index" => t!("part-meter-index"),
        "box-hose" => t!("part-box-hose"),
        "flame-rod" => t!("part-flame-rod"),
        "householder" => t!("part-householder"),
        "inducer" => t!("part-inducer"),
        "ground-wire" => t!("part-ground-wire"),
        "register" => t!("part-register"),
        "rollout-1" | "rollout-2" => t!("part-rollout"),
        "limit" => t!("part-limit"),
        "pressure-switch-low" => t!("part-pressure-switch-low"),
        "pressure-switch-high" => t!("part-pressure-switch-high"),
        "main-coil" => t!("part-main-coil"),
        "high-coil" => t!("part-high-coil"),
        "tank" => t!("part-tank"),
        "tank-valve" => t!("part-tank-valve"),
        "first-regulator" => t!("part-first-regulator"),
        "tag" => t!("part-tag"),
        "door-switch" => t!("part-door-switch"),
        "control-board" => t!("part-control-board"),
        "job-sheet" => t!("part-job-sheet"),
        _ => return None,
    })
}

fn capitalized(id: &str) -> String {
    let words = id.replace('-', " ");
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => words,
    }
}

/// Parts of a place in the order of a job: safety first, then paper, isolation, port, meter, gas,
/// firing, adjusting, checking, closing. Tab goes this way; parts not listed follow.
#[must_use]
pub fn job_order(place: Place) -> &'static [&'static str] {
    match place {
        Place::PlantRoom => PLANT_ROOM,
        Place::GasValve => GAS_VALVE,
        Place::Hall => HALL,
        Place::Yard | Place::Away => YARD,
    }
}

const PLANT_ROOM: &[&str] = &[
    "breathing-zone",
    "floor-zone",
    "plant-window",
    "air-opening",
    "vent",
    "plate",
    "conversion-label",
    "furnace-switch",
    "manual-valve",
    "union",
    "drip-leg",
    "connector",
    "burner-door",
    "gas-valve",
    "burners",
    "status-lamp",
    "stage-jumper",
    "control-board",
    "blower-door",
    "filter",
    "rollout-1",
    "rollout-2",
    "pressure-switch-low",
    "pressure-switch-high",
    "inducer",
    "limit",
    "water-heater",
    "water-heater-cock",
    "furnace",
    "exit-door",
];

const GAS_VALVE: &[&str] = &[
    "spring-mark",
    "orifices",
    "low-gas-switch",
    "valve-switch",
    "manifold-port",
    "manifold-plug",
    "manifold-adapter",
    "inlet-port",
    "inlet-plug",
    "inlet-adapter",
    "box-hose",
    "low-cap",
    "low-screw",
    "high-cap",
    "high-screw",
    "high-coil",
    "flame-rod",
    "ground-wire",
    "igniter",
    "gas-valve",
];

const HALL: &[&str] = &[
    "householder",
    "register",
    "co-alarm",
    "hall-window",
    "thermostat-mode",
    "thermostat-down",
    "thermostat-up",
    "thermostat",
    "range",
    "range-cock",
    "telephone",
    "exit-door",
];

const YARD: &[&str] = &[
    "yard-air",
    "supply-regulator",
    "supply-vent",
    "tank-gauge",
    "meter-dial",
    "meter-index",
    "supply-cock",
    "supply-cap",
    "supply-screw",
    "tank",
    "tank-valve",
    "first-regulator",
    "riser",
    "gas-meter",
    "exit-gate",
];

/// Tools and the manometer, which are at hand everywhere; they come after the place's parts.
pub(crate) const AT_HAND: &[&str] = &[
    "gas-detector",
    "thermometer",
    "flue-analyser",
    "microammeter",
    "electrical-meter",
    "stopwatch",
    "hex-key",
    "adapter",
    "hose",
    "slotted-driver",
    "leak-fluid",
    "meter-power",
    "meter-zero",
    "meter-unit",
    "meter-minus",
    "meter-plus",
    "meter",
];

/// Rank of a part in the order of the job at a place.
#[must_use]
pub fn rank(place: Place, id: &str) -> usize {
    let id = canonical(id);
    let order = job_order(place);
    let unlisted = order.len();
    if let Some(at) = order.iter().position(|&one| one == id) {
        return at;
    }
    match AT_HAND.iter().position(|&one| one == id) {
        Some(at) => unlisted + 1 + at,
        None => unlisted,
    }
}
