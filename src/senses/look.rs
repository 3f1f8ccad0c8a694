//! Looking closely: what a look at a subject finds.

use super::perceive::control_status;
use super::seen::{
    Condition, ConnectorLook, Delivery, FlamesLook, Holes, Observation, REGISTERS_SHOW,
    RatingPlate, Water,
};
use super::signs::{FILM_SHOWS, narrowest};
use crate::model::Model;
use crate::parts::Subject;
use crate::setup::{HoseState, SupplyKind};
use crate::units::M3_PER_FT3;

/// Yellow of a flame from which it strikes the eye, 0–1.
const YELLOW_SHOWS: f64 = 0.3;

/// What a look at a subject finds; none where there is no such thing.
pub(crate) fn sight(model: &Model, subject: Subject) -> Option<Observation> {
    let furnace = &model.setup.furnace;
    let condition = &model.setup.condition;
    let bad_if =
        |bad: bool| Observation::Condition(if bad { Condition::Bad } else { Condition::Good });
    Some(match subject {
        Subject::Plate => plate(model),
        Subject::ConversionLabel => {
            furnace.plate.converted_to.clone().map_or(Observation::Absent, Observation::Label)
        }
        Subject::Orifices => Observation::Orifices {
            stamp: furnace.orifice_stamp.clone(),
            holes: narrowest(model).map_or(Holes::Free, |_| Holes::OnePlugged),
        },
        Subject::SpringMark => Observation::SpringsFor(furnace.springs_for),
        Subject::LowGasSwitch if furnace.low_gas_switch => Observation::Condition(Condition::Good),
        Subject::LowGasSwitch => Observation::Absent,
        Subject::SupplyVent => bad_if(condition.supply.vent_blocked > 0.0),
        Subject::Vent => bad_if(condition.air.vent_blocked > 0.0),
        Subject::AirOpening => bad_if(condition.air.intake_blocked > 0.0),
        Subject::Connector => Observation::Connector(connector(model)),
        Subject::DripLeg => bad_if(condition.line.water_pa > 0.0),
        Subject::Filter => bad_if(condition.air.filter_blocked > 0.0),
        Subject::FlameRod => bad_if(condition.burners.rod_dirty > FILM_SHOWS),
        Subject::Registers => bad_if(condition.air.registers_closed > REGISTERS_SHOW),
        Subject::DraftHose => draft_line(model),
        Subject::BoxHose => bad_if(condition.valve.box_hose == HoseState::Off),
        Subject::Flames => Observation::Flames(flames_found(model)),
        Subject::TankGauge => {
            let level = 100.0 * model.gas.tank()?.level();
            Observation::TankPercent((level / 5.0).round() * 5.0)
        }
        Subject::MeterDial => {
            let turns = model.gas.dial_turns()?;
            let SupplyKind::Meter { dial_m3 } = model.setup.supply.kind else { return None };
            Observation::Dial { turn_ft3: dial_m3 / M3_PER_FT3, turns }
        }
        Subject::CoAlarm => Observation::Condition(Condition::Good),
        Subject::StatusLamp => Observation::Status(control_status(model)),
        Subject::SupplyRegulator => {
            let supply = &model.setup.supply;
            let (least_pa, most_pa) = supply.delivery_limits_pa;
            Observation::Delivery(Delivery { least_pa, most_pa, rest_pa: supply.lockup_max_pa })
        }
    })
}

fn connector(model: &Model) -> ConnectorLook {
    let line = &model.setup.condition.line;
    if line.connector_crack_m > 0.0 {
        ConnectorLook::Creased
    } else if line.connector_kinked > 0.0 {
        ConnectorLook::Kinked
    } else {
        ConnectorLook::Whole
    }
}

/// Hose and trap between the inducer and its switches: what is off, split, wet or dry. Close up,
/// any drop shows.
fn draft_line(model: &Model) -> Observation {
    let condition = &model.setup.condition;
    let wet = condition.sensing.water_pa > 0.0;
    let dry_trap = condition.air.trap_leak > 0.0;
    Observation::DraftLine {
        hose: condition.sensing.hose,
        water: if wet { Water::Stands } else { Water::None },
        trap: if dry_trap { Condition::Bad } else { Condition::Good },
    }
}

fn plate(model: &Model) -> Observation {
    let plate = &model.setup.furnace.plate;
    Observation::Plate(RatingPlate {
        model: plate.model.clone(),
        figures: plate.made_for.clone(),
        input_w: plate.input.map(|_, input| input.si()),
        valve_max_pa: plate.valve_max.si(),
        rise_k: (plate.rise.0.si(), plate.rise.1.si()),
    })
}

fn flames_found(model: &Model) -> FlamesLook {
    let of = model.furnace.looks().count();
    let flames: Vec<_> = model.furnace.looks().flatten().collect();
    let lit = flames.len();
    let yellow = flames.iter().fold(0.0, |most: f64, flame| most.max(flame.yellow));
    let color = if yellow < YELLOW_SHOWS { Condition::Good } else { Condition::Bad };
    match lit {
        0 => FlamesLook::Out,
        lit if lit < of => FlamesLook::SomeLit { lit, of },
        _ => FlamesLook::AllLit { of, color },
    }
}
