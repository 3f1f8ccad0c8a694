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
        "burners" => "Burners",
        "orifices" => "Orifices",
        "inlet-plug" => "Inlet port plug",
        "manifold-plug" => "Manifold port plug",
        "inlet-adapter" => "Adapter in the inlet port",
        "manifold-adapter" => "Adapter in the manifold port",
        "low-cap" => "Low stage cap",
        "high-cap" => "High stage cap",
        "supply-cap" => "Supply regulator cap",
        "valve-switch" => "Gas valve switch",
        "furnace-switch" => "Furnace switch",
        "stage-jumper" => "Wire R–W2",
        "breathing-zone" => "Air at head height",
        "floor-zone" => "Air just above the floor",
        "yard-air" => "Air in the yard",
        "exit-door" => "Doorway",
        "exit-gate" => "Gate",
        "thermostat-mode" => "Thermostat heat switch",
        "thermostat-up" => "Thermostat, warmer",
        "thermostat-down" => "Thermostat, cooler",
        "meter" => "Manometer",
        "meter-power" => "Manometer power button",
        "meter-zero" => "Manometer zero button",
        "meter-unit" => "Manometer unit button",
        "meter-hold" => "Manometer hold button",
        "meter-plus" => "Manometer high side",
        "meter-minus" => "Manometer low side",
        "meter-index" => "Meter index",
        "box-hose" => "Burner box hose",
        "flame-rod" => "Flame rod",
        "inducer" => "Inducer",
        "ground-wire" => "Ground wire",
        "register" => "Register",
        "rollout-1" | "rollout-2" => "Roll-out switch",
        "limit" => "Limit switch",
        "pressure-switch-low" => "Pressure switch, low",
        "pressure-switch-high" => "Pressure switch, high",
        "main-coil" => "Main coil",
        "high-coil" => "High stage coil",
        "tank" => "Propane tank",
        "tank-valve" => "Tank service valve",
        "first-regulator" => "First-stage regulator",
        "tag" => "Warning tag",
        "door-switch" => "Blower door switch",
        "control-board" => "Furnace control",
        "job-sheet" => "Job sheet",
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
