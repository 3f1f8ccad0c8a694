//! From the model to what a person perceives: everything in view from where the person stands.

use crate::appliance::ignition::ControlStatus;
use enum_map::EnumMap;
use std::sync::Arc;

use super::measured::measured;
use super::seen::{
    BurnersSeen, Burning, Cracked, DetectorSeen, Display, FlameSeen, FluidSeen, FurnaceSeen,
    GaugeSeen, HallSeen, MeterInView, MeterSeen, Note, OtherApplianceSeen, Over, PortSeen, Seen,
    SheetSeen, Smell, YardSeen,
};
use super::signs::{hose_look, plain_signs};
use super::sounds::{heard, sounds};
use crate::instrument::manometer::MeterDisplay;
use crate::model::{Model, Probe};
use crate::parts::{
    Door, Fitted, Gauge, HandValve, Height, Joint, OnOff, OtherAppliance, Place, Port, Screw,
    Window,
};
use crate::physics::room::Strength;
use crate::units::{M_PER_FT, P_STD_PA, f_from_k};

/// Liquid chill at which frost covers the whole tank, in kelvins.
const FROST_K: f64 = 12.0;

/// What a person perceives now, with what is written on the clipboard.
pub(crate) fn seen(model: &Model, sheet: &Arc<SheetSeen>, over: Option<Over>) -> Seen {
    let place = model.person.place;
    Seen {
        tick: model.tick,
        place,
        scene: model.setup.scene,
        hand: model.person.hand,
        levels: model.levels(),
        outside_f: whole(f_from_k(model.setup.outside_k)),
        altitude_ft: altitude_ft(model.setup.ambient_abs_pa),
        meter: meter_seen(model),
        measured: measured(model),
        clipped: model.kit.clipped,
        sounds: sounds(model),
        heard: heard(model),
        smell: smell(model.smell_at(Height::Head)),
        sniffed: model.person.sniffed.map(|(height, strength)| (height, smell(strength))),
        detector: model
            .person
            .detector
            .map(|Probe { height, percent_lel }| DetectorSeen { height, percent_lel }),
        yard: (place == Place::Yard).then(|| yard_seen(model)),
        furnace: model.person.is_at_furnace().then(|| furnace_seen(model, &sheet.notes)),
        hall: (place == Place::Hall).then(|| hall_seen(model)),
        sheet: Arc::clone(sheet),
        over,
    }
}

fn meter_seen(model: &Model) -> MeterInView {
    if !model.is_meter_in_sight() {
        return MeterInView::HangsAtFurnace;
    }
    let display = match model.meter.face() {
        MeterDisplay::Dark => Display::Dark,
        MeterDisplay::Number(shown) => Display::Number(shown),
        MeterDisplay::OverRange => Display::OverRange,
    };
    MeterInView::InSight(MeterSeen {
        display,
        unit: model.meter.unit(),
        gauge: gauge_seen(model),
        hose: model.things.hose_port(),
        low_side: model.low_side,
        hose_look: hose_look(model),
    })
}

fn gauge_seen(model: &Model) -> GaugeSeen {
    match model.kit.gauge {
        Gauge::Digital => GaugeSeen::Digital,
        Gauge::WaterColumn => GaugeSeen::WaterColumn(model.kit.column.legs()),
        Gauge::SpringGauge => GaugeSeen::Spring(model.kit.spring.shown_tenths()),
    }
}

fn yard_seen(model: &Model) -> YardSeen {
    let tank = model.gas.tank();
    YardSeen {
        supply_valve: model.things.handles[HandValve::Supply],
        cap: model.things.caps[Screw::Supply],
        screw_eighths: uncovered(model, Screw::Supply),
        tank_percent: tank.map(|tank| (tank.level() * 20.0).round() * 5.0),
        dial_turns: model.gas.dial_turns(),
        frost: tank
            .map_or(0.0, |tank| (tank.chill_k(model.setup.outside_k) / FROST_K).clamp(0.0, 1.0)),
        fluid: EnumMap::from_fn(|joint: Joint| match joint.is_in_yard() {
            true => fluid_seen(model, joint),
            false => FluidSeen::Dry,
        }),
    }
}

fn furnace_seen(model: &Model, notes: &[Note]) -> FurnaceSeen {
    let things = &model.things;
    FurnaceSeen {
        burner_door: things.doors[Door::Burner],
        blower_door: things.doors[Door::Blower],
        switch: things.furnace_switch,
        manual_valve: things.handles[HandValve::Furnace],
        water_heater: appliance_seen(model, OtherAppliance::WaterHeater),
        window: things.windows[Window::PlantRoom],
        status: control_status(model),
        stage_jumper: things.stage_jumper,
        tag: things.tag,
        conversion_label: fitted(model.setup.furnace.plate.converted_to.is_some()),
        inducer: model.furnace.inducer(),
        blower: model.furnace.blower(),
        burners: (things.doors[Door::Burner] == Fitted::Off).then(|| burners_seen(model, notes)),
    }
}

fn burners_seen(model: &Model, notes: &[Note]) -> BurnersSeen {
    let things = &model.things;
    let springs = &model.setup.furnace.valve.springs;
    BurnersSeen {
        glow: model.furnace.glow(),
        flames: model.furnace.flames().map(|(height, yellow)| FlameSeen { height, yellow }),
        valve_switch: things.valve_switch,
        wires: model.setup.condition.control.jumpers,
        low_gas_switch: fitted(model.setup.furnace.low_gas_switch),
        caps: springs.map(|level, _| things.caps[level.screw()]),
        screw_eighths: springs.map(|level, _| uncovered(model, level.screw())),
        ports: EnumMap::from_fn(|port| port_seen(model, port)),
        fluid: EnumMap::from_fn(|joint: Joint| match joint.is_in_yard() {
            true => FluidSeen::Dry,
            false => fluid_seen(model, joint),
        }),
        signs: plain_signs(model, notes),
    }
}

/// A hairline crack is not seen by looking: only the bubbles that grow along it show it.
fn port_seen(model: &Model, port: Port) -> PortSeen {
    let state = &model.things.ports[port];
    let fill = state.looks();
    match fluid_seen(model, port.joint()) {
        FluidSeen::Bubbles(_) if state.cracked => PortSeen { fill, cracked: Cracked::Cracked },
        FluidSeen::Bubbles(_) | FluidSeen::Quiet(_) | FluidSeen::Dry => {
            PortSeen { fill, cracked: Cracked::Sound }
        }
    }
}

fn fluid_seen(model: &Model, joint: Joint) -> FluidSeen {
    match model.things.fluid[joint] {
        None => FluidSeen::Dry,
        Some(brushed) if brushed.fluid.shows() => FluidSeen::Bubbles(brushed.fluid.bubbles),
        Some(brushed) => FluidSeen::Quiet(brushed.fluid.wet_s),
    }
}

fn uncovered(model: &Model, screw: Screw) -> Option<i32> {
    (model.things.caps[screw] == Fitted::Off).then_some(model.things.turned_eighths[screw])
}

fn hall_seen(model: &Model) -> HallSeen {
    HallSeen {
        room_half_f: half_f(model.house.inside_k()),
        setpoint_half_f: model.things.setpoint_half_f,
        mode: model.things.heating,
        call: model.thermostat_call(),
        co_ppm: 0.0,
        window: model.things.windows[Window::Hall],
        range: appliance_seen(model, OtherAppliance::Range),
        registers_closed: model.setup.condition.air.registers_closed,
    }
}

fn burning(model: &Model, appliance: OtherAppliance) -> Burning {
    if model.things.other_appliances[appliance] == OnOff::Off {
        Burning::Off
    } else if model.appliance_burns(appliance) {
        Burning::Burning
    } else {
        Burning::NoGas
    }
}

/// What the status lamp tells: without power, that there is none.
pub(super) fn control_status(model: &Model) -> ControlStatus {
    if model.powered() { model.furnace.status() } else { ControlStatus::NoPower }
}

fn appliance_seen(model: &Model, appliance: OtherAppliance) -> OtherApplianceSeen {
    OtherApplianceSeen {
        handle: model.things.handles[appliance.hand_valve()],
        burning: burning(model, appliance),
    }
}

fn smell(strength: Strength) -> Smell {
    match strength {
        Strength::None => Smell::None,
        Strength::Faint => Smell::Faint,
        Strength::Clear => Smell::Clear,
        Strength::Strong => Smell::Strong,
    }
}

fn fitted(there: bool) -> Fitted {
    if there { Fitted::On } else { Fitted::Off }
}

#[expect(clippy::cast_possible_truncation, reason = "weather and rooms")]
fn whole(value: f64) -> i32 {
    value.round() as i32
}

#[expect(clippy::cast_possible_truncation, reason = "weather and rooms")]
fn half_f(kelvin: f64) -> i16 {
    (2.0 * f_from_k(kelvin)).round() as i16
}

/// Height above the sea at which the air has this pressure (ICAO standard atmosphere, Doc 7488), in
/// feet, to the hundred.
fn altitude_ft(ambient_abs_pa: f64) -> i32 {
    let height_m = (1.0 - libm::pow(ambient_abs_pa / P_STD_PA, 1.0 / 5.255_88)) / 2.255_77e-5;
    100 * whole(height_m / M_PER_FT / 100.0)
}
