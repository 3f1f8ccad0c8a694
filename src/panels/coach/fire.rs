//! Bringing the furnace into the state at which a pressure is read, and reading.

use super::elsewhere::stays_on_low;
use super::memory::Called;
use super::{Asked, Hint, Remembered, STILL, end, port, to_plant_room};
use crate::hands::action::Action;
use crate::panels::sheet::Cell;
use crate::parts::{Cock, Door, Fitted, Neighbor, OnOff, Place, Port, Stage};
use crate::senses::seen::{BurnersSeen, Burning, Call, FurnaceSeen, HallSeen, Seen, Sound};

/// Above the room by this much the thermostat calls its first stage only, in half degrees.
const FIRST_ABOVE_HALF_F: i16 = 3;
/// And by this much its second stage too.
const SECOND_ABOVE_HALF_F: i16 = 10;

/// Least patience before a reading while it burns, in seconds (common practice: until it stands
/// still).
const SETTLE_S: f64 = 45.0;
/// Patience beyond what the card asks, in seconds: a hold that is a breath too short does not count.
const MARGIN_S: f64 = 5.0;
/// Longest patience, in seconds: a card cannot ask for more than a day.
const DAY_S: f64 = 86_400.0;

/// The next step towards a reading, the hose being on its port. Its joints are proven on the way.
pub(super) fn to_stage(
    seen: &Seen,
    remembered: &Remembered,
    asked: Asked,
    cell: Cell,
) -> Option<Hint> {
    let Cell { port, stage, phase: _ } = cell;
    let at_its_pressure = match port {
        Port::Inlet => true,
        Port::Manifold => stage == Stage::High,
    };
    bring(seen, remembered, stage)
        .or_else(|| at_its_pressure.then(|| port::prove(seen, remembered, port)).flatten())
        .or_else(|| Some(write(asked, cell)))
}

/// The next step towards a state of the furnace; none once it is there and seen from the valve.
pub(super) fn bring(seen: &Seen, remembered: &Remembered, stage: Stage) -> Option<Hint> {
    if let Some(hall) = &seen.hall {
        return Some(thermostat(hall, stage));
    }
    let Some(furnace) = seen.furnace.as_ref() else {
        return Some(to_plant_room("The furnace is next."));
    };
    if let Some(hint) = port::kneel(seen, furnace) {
        return Some(hint);
    }
    let burners = furnace.burners.as_ref()?;
    match stage {
        Stage::Rest => at_rest(furnace, remembered),
        Stage::Low | Stage::High | Stage::HighWithOthers => gas_and_power(furnace, burners)
            .or_else(|| neighbors(furnace, remembered, stage))
            .or_else(|| light(seen, remembered, furnace, burners, stage)),
    }
}

pub(super) fn open_cock(furnace: &FurnaceSeen) -> Option<Hint> {
    (!furnace.manual_valve.is_open()).then(|| {
        Hint::act(
            "Open the manual valve, slowly.",
            "manual-valve",
            Action::Cock { cock: Cock::Furnace, degrees: 90 },
        )
    })
}

/// No gas flows anywhere, and the supply stands at the port.
fn at_rest(furnace: &FurnaceSeen, remembered: &Remembered) -> Option<Hint> {
    open_cock(furnace)
        .or_else(|| {
            (furnace.switch == OnOff::On).then(|| {
                Hint::act(
                    "At rest no gas may flow anywhere. Leave the furnace's power off.",
                    "furnace-switch",
                    Action::FurnaceSwitch(OnOff::Off),
                )
            })
        })
        .or_else(|| {
            (furnace.water_heater.burning != Burning::Off).then(|| {
                Hint::act(
                    "At rest no gas may flow anywhere: turn the water heater off.",
                    "water-heater",
                    Action::Neighbor { neighbor: Neighbor::WaterHeater, to: OnOff::Off },
                )
            })
        })
        .or_else(|| {
            (remembered.range != Some(Burning::Off)).then(|| {
                Hint::go(
                    "At rest no gas may flow anywhere: see that the range in the kitchen is off. \
                     Go to the hall.",
                    Place::Hall,
                )
            })
        })
}

fn gas_and_power(furnace: &FurnaceSeen, burners: &BurnersSeen) -> Option<Hint> {
    if let Some(hint) = open_cock(furnace) {
        return Some(hint);
    }
    if burners.valve_switch == OnOff::Off {
        return Some(Hint::act(
            "Switch the gas valve on.",
            "valve-switch",
            Action::ValveSwitch(OnOff::On),
        ));
    }
    if furnace.blower_door == Fitted::Off {
        return Some(Hint::act(
            "Put the blower door on: without it its switch keeps everything off.",
            "blower-door",
            Action::Door { door: Door::Blower, to: Fitted::On },
        ));
    }
    (furnace.switch == OnOff::Off).then(|| {
        Hint::act(
            "Now power: switch the furnace on.",
            "furnace-switch",
            Action::FurnaceSwitch(OnOff::On),
        )
    })
}

/// Every other appliance on.
fn neighbors(furnace: &FurnaceSeen, remembered: &Remembered, stage: Stage) -> Option<Hint> {
    if stage != Stage::HighWithOthers {
        return None;
    }
    match furnace.water_heater.burning {
        Burning::Off => Some(Hint::act(
            "The true test of a supply: everything on at once. Turn the water heater on full.",
            "water-heater",
            Action::Neighbor { neighbor: Neighbor::WaterHeater, to: OnOff::On },
        )),
        Burning::NoGas if !furnace.water_heater.handle.is_open() => Some(Hint::act(
            "The water heater has no gas: open its valve.",
            "water-heater-cock",
            Action::Cock { cock: Cock::WaterHeater, degrees: 90 },
        )),
        Burning::NoGas => Some(Hint::act(
            "The water heater's flame has gone out: turn it off, then light it again.",
            "water-heater",
            Action::Neighbor { neighbor: Neighbor::WaterHeater, to: OnOff::Off },
        )),
        Burning::Burning => (remembered.range != Some(Burning::Burning))
            .then(|| Hint::go("And the range in the kitchen: go to the hall.", Place::Hall)),
    }
}

/// Calls for heat and watches it light.
fn light(
    seen: &Seen,
    remembered: &Remembered,
    furnace: &FurnaceSeen,
    burners: &BurnersSeen,
    stage: Stage,
) -> Option<Hint> {
    let lit = burners.flames.iter().any(|flame| flame.height > 0.0);
    let high = seen.sounds.contains(&Sound::BurnersHigh);
    let high_wanted = stage != Stage::Low;
    let to_hall = |text: &str| Some(Hint::go(text, Place::Hall));
    if lit && high == high_wanted {
        return None;
    }
    let called = remembered.called(if high_wanted { Call::Second } else { Call::First });
    match (lit, high_wanted, called) {
        (true, true, Called::JustNow) => {
            return Some(Hint::wait(
                "Both stages are called, and it fires on low. The second follows: the inducer runs \
                 faster first. Let time run.",
                "burners",
            ));
        }
        (true, true, Called::LongSince) => {
            return Some(stays_on_low(seen));
        }
        (true, false, Called::JustNow) => {
            return Some(Hint::wait(
                "Only the first stage is called: the second lets go in a moment. Let time run.",
                "burners",
            ));
        }
        _ => {}
    }
    if lit && high_wanted {
        return to_hall(
            "It fires on low. Go to the hall and ask for much more heat, so that the second stage \
             comes.",
        );
    }
    if lit {
        return to_hall("It fires on high. Go to the hall and ask for less, so that low remains.");
    }
    if let Some(hint) = end::gave_up(seen) {
        return Some(hint);
    }
    if furnace.inducer > STILL || burners.glow > STILL {
        return Some(Hint::wait(
            "Watch it light: the inducer proves the draft, the igniter warms, gas, flame. Let \
             time run; you may speed it up.",
            "burners",
        ));
    }
    to_hall("Power and gas are there; nothing calls. Go to the hall and call for heat.")
}

fn thermostat(hall: &HallSeen, stage: Stage) -> Hint {
    if stage == Stage::Rest {
        return rest_in_hall(hall);
    }
    if hall.mode == OnOff::Off {
        return Hint::act(
            "Switch heat on at the thermostat.",
            "thermostat-mode",
            Action::ThermostatMode(OnOff::On),
        );
    }
    if stage == Stage::HighWithOthers && hall.range.burning != Burning::Burning {
        return Hint::act(
            "Turn the range on full.",
            "range",
            Action::Neighbor { neighbor: Neighbor::Range, to: OnOff::On },
        );
    }
    let set = |text: &str, above: i16| {
        let to = hall.room_half_f.saturating_add(above);
        Hint::act(text, "thermostat", Action::Setpoint(to))
    };
    let above = hall.setpoint_half_f.saturating_sub(hall.room_half_f);
    match (stage, hall.call) {
        (Stage::High | Stage::HighWithOthers, Call::None | Call::First)
            if above >= SECOND_ABOVE_HALF_F =>
        {
            return Hint::say(
                "It is set far above the room and still does not call the second stage. Force it at \
                 the furnace with the wire between R and W2, read, and find out why it is not called. \
                 The wire comes off again.",
            );
        }
        (Stage::High | Stage::HighWithOthers, Call::None | Call::First) => {
            return set(
                "Set it well above the room, more than two degrees: then it calls both stages.",
                SECOND_ABOVE_HALF_F,
            );
        }
        (Stage::Rest | Stage::Low, Call::Second) => {
            let text = "It calls both stages. Set it to the room's temperature: the second stage \
                        lets go, the first stays.";
            return set(text, if above == 0 { -1 } else { 0 });
        }
        (Stage::Rest | Stage::Low, Call::None | Call::First) if above < FIRST_ABOVE_HALF_F - 1 => {
            return set(
                "Set it a degree or so above the room: then it calls the first stage only.",
                FIRST_ABOVE_HALF_F,
            );
        }
        (Stage::Rest | Stage::Low, Call::None) => {
            return set("Nothing calls yet: a little higher.", above.saturating_add(1));
        }
        (Stage::Rest | Stage::Low, Call::First)
        | (Stage::High | Stage::HighWithOthers, Call::Second) => {}
    }
    back("The thermostat calls. Back to the gas valve, and watch.")
}

fn rest_in_hall(hall: &HallSeen) -> Hint {
    if hall.range.burning != Burning::Off {
        return Hint::act(
            "Turn the range off: at rest no gas may flow anywhere.",
            "range",
            Action::Neighbor { neighbor: Neighbor::Range, to: OnOff::Off },
        );
    }
    back("Nothing draws gas here. Back to the gas valve.")
}

fn back(text: &str) -> Hint {
    Hint::go(text, Place::GasValve)
}

fn write(asked: Asked, cell: Cell) -> Hint {
    let settle_s = SETTLE_S.max(asked.settle_s + MARGIN_S);
    let (patience, patience_s) = match cell.stage {
        Stage::Rest => (
            format!(
                "Watch it for as long as the card asks, {:.0} seconds: a slow climb is a leaking \
                 seat.",
                asked.hold_s
            ),
            asked.hold_s + MARGIN_S,
        ),
        Stage::Low | Stage::High => {
            (format!("Wait until the number stands still, {settle_s:.0} seconds."), settle_s)
        }
        Stage::HighWithOthers => (
            format!(
                "Every other appliance must burn now, the range in the kitchen too. Wait until the \
                 number stands still, {settle_s:.0} seconds."
            ),
            settle_s,
        ),
    };
    let text =
        format!("{patience} Then write it on the job sheet: {}, with its unit.", cell.name());
    Hint::write(text, cell, whole_s(patience_s))
}

/// Whole seconds, a day at most.
fn whole_s(seconds: f64) -> u32 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to a day")]
    let whole = seconds.clamp(0.0, DAY_S).ceil() as u32;
    whole
}
