//! What the looks and readings lead to: going on, looking elsewhere, closing up, or shutting off.

use super::elsewhere::{elsewhere, found};
use super::{Hint, ORDER, Remembered, cycle, fire, port, supply, to_plant_room};
use crate::appliance::ignition::ControlStatus;
use crate::appliance::plate::{Fuel, GasFigures};
use crate::hands::action::{Action, HandOver, NotDone, Topic};
use crate::parts::{Door, Ending, Fitted, Neighbor, OnOff, Phase, Place, Port, Stage, Subject};
use crate::senses::seen::{Burning, Finding, FurnaceSeen, Seen, Sound};

/// What is looked at behind the burner door before a port is opened.
const INSIDE: [(Subject, &str, &str); 3] = [
    (
        Subject::Orifices,
        "orifices",
        "Before a port is opened: read the stamp on an orifice. It must be the one on plate or label.",
    ),
    (
        Subject::SpringMark,
        "gas-valve",
        "Look at the mark on the valve's springs: they must be those for this gas.",
    ),
    (Subject::LowGasSwitch, "low-gas-switch", "On propane, look for the kit's low gas switch."),
];

/// The next look behind the door, or what the looks demand.
pub(super) fn look_inside(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let propane = supply(seen, remembered) == Some(Fuel::Propane);
    INSIDE
        .into_iter()
        .filter(|(subject, _, _)| propane || *subject != Subject::LowGasSwitch)
        .find(|(subject, _, _)| seen.sheet.note(*subject).is_none())
        .map(|(subject, part, text)| Hint::act(text, part, Action::Look(subject)))
}

/// The figures that govern: the label's, else the plate's.
fn figures(seen: &Seen) -> Option<&GasFigures> {
    let on = |subject| seen.sheet.note(subject).and_then(|note| note.finding.figures());
    on(Subject::ConversionLabel).or_else(|| on(Subject::Plate))
}

/// Plate or label, orifices or springs do not fit the gas: shut off, tag, tell, hand over.
pub(super) fn unfit(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let fuel = supply(seen, remembered)?;
    let figures = figures(seen)?;
    let finding = |subject| seen.sheet.note(subject).map(|note| &note.finding);
    let what = if figures.fuel != fuel {
        "Plate or label is"
    } else if matches!(finding(Subject::Orifices), Some(Finding::Orifices { stamp, .. }) if *stamp != figures.orifice_stamp)
    {
        "The orifices are"
    } else if matches!(finding(Subject::SpringMark), Some(Finding::SpringsFor(it)) if *it != fuel) {
        "The springs are"
    } else {
        return None;
    };
    let why = format!("{what} not for the {} in the pipes: it must not burn.", fuel.label());
    // Every paper is looked at before the furnace is left: who comes next must know.
    if let Some(look) = look_inside(seen, remembered) {
        return port::shut(seen).or(Some(look));
    }
    Some(shut_off(seen, remembered, &why))
}

fn shut_off(seen: &Seen, remembered: &Remembered, why: &str) -> Hint {
    let tagged = |furnace: &FurnaceSeen| furnace.tag == Fitted::On;
    if let Some(furnace) = seen.furnace.as_ref().filter(|furnace| !tagged(furnace)) {
        let hint =
            port::close_both(seen).or_else(|| port::off(seen, furnace)).or_else(|| put_down(seen));
        return hint.unwrap_or_else(|| {
            if furnace.burner_door == Fitted::Off {
                return Hint::act(
                    format!("{why} Put the burner door on."),
                    "burner-door",
                    Action::Door { door: Door::Burner, to: Fitted::On },
                );
            }
            Hint::act(format!("{why} Hang the warning tag."), "tag", Action::Tag(Fitted::On))
        });
    }
    match seen.place {
        Place::PlantRoom | Place::GasValve if remembered.told_unsafe => hand_over(
            "It is off, tagged and explained. Hand over as shut off; whoever may convert it comes \
             next.",
            Ending::ShutOff,
            seen,
        ),
        Place::PlantRoom | Place::GasValve => {
            Hint::go(format!("{why} Tell the householder: go to the hall."), Place::Hall)
        }
        Place::Hall if remembered.told_unsafe => hand_over(
            "It is off, tagged and explained. Hand over as shut off; whoever may convert it comes \
             next.",
            Ending::ShutOff,
            seen,
        ),
        Place::Hall if remembered.tagged => Hint::act(
            format!("{why} Tell the householder that it is unsafe and stays off."),
            "householder",
            Action::Tell(Topic::Unsafe),
        ),
        Place::Hall => port::shut(seen).unwrap_or_else(|| to_plant_room(why)),
        Place::Yard | Place::Away => to_plant_room(why),
    }
}

fn put_down(seen: &Seen) -> Option<Hint> {
    seen.hand.map(port::empty)
}

fn hand_over(text: &str, ending: Ending, seen: &Seen) -> Hint {
    let not_done = if seen.sheet.measured.is_empty() {
        vec![
            NotDone::Combustion,
            NotDone::TemperatureRise,
            NotDone::GasRate,
            NotDone::PipingLeakCheck,
        ]
    } else {
        // What was measured is the trainee's to say.
        return Hint::say(text);
    };
    Hint {
        action: Some(Action::HandOver(HandOver { ending, not_done })),
        ..Hint::say(format!("{text} Say what was not done: flue gas, rise, rate, piping."))
    }
}

/// The control has given up, or a limit stands open.
pub(super) fn gave_up(seen: &Seen) -> Option<Hint> {
    let furnace = seen.furnace.as_ref()?;
    let status = furnace.status;
    let waits_in_vain =
        matches!(status, ControlStatus::AwaitsGasPressure | ControlStatus::SwitchClosedAtRest);
    (status.is_stopped() || waits_in_vain).then(|| {
        let why = format!("The status lamp says: {}. No screw mends that.", status.words());
        elsewhere(&why, seen)
    })
}

/// The highest pressure at rest on the supply regulator's nameplate, once that was looked at.
fn lockup_most_pa(seen: &Seen) -> Option<f64> {
    match seen.sheet.note(Subject::SupplyRegulator).map(|note| &note.finding) {
        Some(Finding::Delivery(it)) => Some(it.rest_pa),
        _ => None,
    }
}

/// The found column is full: what stands on the sheet decides.
pub(super) fn judge(seen: &Seen, remembered: &Remembered) -> Hint {
    let Some(figures) = figures(seen) else { return to_plant_room("Read the rating plate.") };
    let off = |&(port, stage): &(Port, Stage)| {
        let last = |phase| seen.sheet.reading(port, stage, phase);
        let reading = last(Phase::Left).or_else(|| last(Phase::Found));
        reading.is_some_and(|it| {
            let pa = f64::from(it.thousandths) / 1000.0 * it.unit.pa();
            !figures.allows(port, stage, lockup_most_pa(seen)).contains(pa)
        })
    };
    let bad = seen.sheet.notes.iter().find(|note| note.is_bad());
    if let Some(note) = bad {
        return found(seen, note);
    }
    if ORDER.iter().any(|cell| cell.0 == Port::Inlet && off(cell)) {
        return Hint::say(
            "The inlet lies outside plate, label or nameplate: no screw of the furnace mends that. Too low \
             only under load: supply, pipe or valve gives too little. Too high at rest: the supply \
             regulator. Call its owner unless the card makes it yours; then read again and write \
             the left column.",
        );
    }
    // The stage that burns comes first, where both are off.
    let burns = |stage| match stage {
        Stage::High => seen.sounds.contains(&Sound::BurnersHigh),
        Stage::Low => seen.sounds.contains(&Sound::BurnersLow),
        Stage::Rest | Stage::HighWithOthers => false,
    };
    let cells = ORDER.iter().filter(|cell| cell.0 == Port::Manifold && off(cell));
    let stages: Vec<Stage> = cells.map(|cell| cell.1).collect();
    let first = stages.iter().copied().find(|stage| burns(*stage));
    if let Some(stage) = first.or(stages.first().copied()) {
        return manifold(seen, remembered, stage);
    }
    close_up(seen, remembered)
}

/// The inlet is right, the manifold is not.
fn manifold(seen: &Seen, remembered: &Remembered, stage: Stage) -> Hint {
    if remembered.turned_in_vain() {
        return elsewhere(
            "The screw was turned and the manifold stood still. Leave the screw alone.",
            seen,
        );
    }
    if let Some(hint) = gave_up(seen) {
        return hint;
    }
    // The number to turn by is the manifold's.
    let port = Port::Manifold;
    let hook_up = match seen.meter.hose {
        Some((Port::Manifold, push)) => port::push_fully(port, push),
        Some((Port::Inlet, _)) | None => port::connect(seen, remembered, port),
    };
    if let Some(hint) = hook_up.or_else(|| fire::bring(seen, remembered, stage)) {
        return hint;
    }
    Hint::say(
        "The inlet is right, the manifold lies out of its band. Flames, flue and status in order? \
         Then, while that stage burns: cap off, turn a little, wait, see that it moves, cap on. \
         Does it not move, stop: the cause lies elsewhere. Write the left column on both stages.",
    )
}

/// Everything lies in its band: ports closed and proven, doors and switches, hand-over.
fn close_up(seen: &Seen, remembered: &Remembered) -> Hint {
    port::close_both(seen)
        .or_else(|| prove_plugs(seen, remembered))
        .or_else(|| restore(seen, remembered))
        .unwrap_or_else(|| {
            hand_over(
                "Everything lies in its band, closed and tight, and a whole cycle was seen. Hand \
                 over in service.",
                Ending::InService,
                seen,
            )
        })
}

/// The inlet plug with the valve open, the manifold plug while it burns on high.
fn prove_plugs(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    if !remembered.is_proven(Port::Inlet) {
        let Some(furnace) = &seen.furnace else {
            return Some(to_plant_room("The plugs are to be proven tight."));
        };
        return fire::open_cock(furnace)
            .or_else(|| port::kneel(seen, furnace))
            .or_else(|| port::prove(seen, remembered, Port::Inlet));
    }
    if remembered.is_proven(Port::Manifold) {
        return None;
    }
    fire::bring(seen, remembered, Stage::High)
        .or_else(|| port::prove(seen, remembered, Port::Manifold))
}

/// Hands empty, door on, a whole cycle, others and thermostat as they were found.
fn restore(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let [heater, range] = remembered.neighbors_found;
    if let Some(hall) = &seen.hall {
        return cycle::step(remembered.cycle, hall)
            .or_else(|| range.and_then(|was| neighbor(Neighbor::Range, hall.range.burning, was)))
            .or_else(|| {
                let was = remembered.setpoint_found_half_f?;
                (hall.setpoint_half_f != was).then(|| {
                    let text = "Set the thermostat as you found it.";
                    Hint::act(text, "thermostat", Action::Setpoint(was))
                })
            })
            .or_else(|| {
                (hall.mode == OnOff::Off).then(|| {
                    let text = "Switch heat on again at the thermostat.";
                    Hint::act(text, "thermostat-mode", Action::ThermostatMode(OnOff::On))
                })
            });
    }
    let Some(furnace) = &seen.furnace else { return Some(to_plant_room("Close up.")) };
    put_down(seen)
        .or_else(|| {
            (furnace.burner_door == Fitted::Off).then(|| {
                Hint::act(
                    "Both plugs are tight. Put the burner door on.",
                    "burner-door",
                    Action::Door { door: Door::Burner, to: Fitted::On },
                )
            })
        })
        .or_else(|| {
            heater
                .and_then(|was| neighbor(Neighbor::WaterHeater, furnace.water_heater.burning, was))
        })
        .or_else(|| {
            (furnace.blower_door == Fitted::Off).then(|| {
                Hint::act(
                    "Put the blower door on.",
                    "blower-door",
                    Action::Door { door: Door::Blower, to: Fitted::On },
                )
            })
        })
        .or_else(|| {
            (furnace.switch == OnOff::Off).then(|| {
                Hint::act(
                    "Switch the furnace on: a whole cycle is to be seen.",
                    "furnace-switch",
                    Action::FurnaceSwitch(OnOff::On),
                )
            })
        })
        .or_else(|| Some(Hint::go("Now the thermostat: go to the hall.", Place::Hall)))
}

fn neighbor(neighbor: Neighbor, now: Burning, was: Burning) -> Option<Hint> {
    let on = |burning| match burning {
        Burning::Off => OnOff::Off,
        Burning::Burning | Burning::NoGas => OnOff::On,
    };
    let to = on(was);
    (on(now) != to).then(|| {
        let text = format!("{}: as you found it.", neighbor.label());
        Hint::act(text, neighbor.id(), Action::Neighbor { neighbor, to })
    })
}
