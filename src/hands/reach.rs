//! What is within reach, and what must be in hand: the refusals that come before any work.

use super::refusal::Refusal;
use crate::model::Model;
use crate::parts::{
    Door, Ending, Fitted, Joint, Place, Range, Screw, Spot, Subject, Tool, is_staged,
};
use crate::setup::SupplyKind;

/// Refuses unless the person stands at one of `places`.
pub(super) fn place(model: &Model, places: &[Place]) -> Result<(), Refusal> {
    if model.is_at(places) { Ok(()) } else { Err(Refusal::NotHere) }
}

/// Refuses unless the tool is in hand.
pub(super) fn tool(model: &Model, tool: Tool) -> Result<(), Refusal> {
    if model.person.hand == Some(tool) { Ok(()) } else { Err(Refusal::NeedsTool(tool)) }
}

/// Refuses unless the person kneels at the gas valve with the burner door off.
pub(super) fn valve(model: &Model) -> Result<(), Refusal> {
    place(model, &[Place::GasValve])?;
    burner_door_off(model)
}

/// Refuses unless the instrument for pressure is within reach.
pub(super) fn meter(model: &Model) -> Result<(), Refusal> {
    if model.is_meter_in_sight() { Ok(()) } else { Err(Refusal::MeterAtFurnace) }
}

/// Refuses unless the burner door is off.
pub(super) fn burner_door_off(model: &Model) -> Result<(), Refusal> {
    if model.is_burner_door_off() { Ok(()) } else { Err(Refusal::DoorInTheWay) }
}

/// Refuses unless a joint is within reach.
pub(super) fn joint(model: &Model, joint: Joint) -> Result<(), Refusal> {
    match joint {
        Joint::InletPort | Joint::ManifoldPort => valve(model),
        Joint::Union | Joint::Connector => place(model, &[Place::PlantRoom, Place::GasValve]),
        Joint::SupplyRegulator | Joint::Riser => place(model, &[Place::Yard]),
        Joint::FirstRegulator | Joint::TankValve => {
            place(model, &[Place::Yard])?;
            let tank = matches!(model.setup.supply.kind, SupplyKind::Tank { .. });
            if tank { Ok(()) } else { Err(Refusal::NotFitted) }
        }
    }
}

/// Refuses unless a screw is within reach.
pub(super) fn screw(model: &Model, screw: Screw) -> Result<(), Refusal> {
    match screw.level() {
        Some(level) if model.levels().contains(&level) => valve(model),
        Some(_) => Err(Refusal::NotFitted),
        None => place(model, &[Place::Yard]),
    }
}

/// Refuses unless a subject can be looked at from here.
pub(super) fn subject(model: &Model, subject: Subject) -> Result<(), Refusal> {
    let near = [subject.place()];
    let furnace = [Place::PlantRoom, Place::GasValve];
    let at_furnace = furnace.contains(&subject.place());
    place(model, if at_furnace { &furnace } else { &near })?;
    match subject {
        Subject::Orifices | Subject::SpringMark | Subject::LowGasSwitch => valve(model),
        Subject::Flames
        | Subject::StatusLamp
        | Subject::DraftHose
        | Subject::BoxHose
        | Subject::FlameRod => burner_door_off(model),
        Subject::Filter => match model.things.doors[Door::Blower] {
            Fitted::Off => Ok(()),
            Fitted::On => Err(Refusal::DoorInTheWay),
        },
        Subject::Plate
        | Subject::ConversionLabel
        | Subject::SupplyVent
        | Subject::Vent
        | Subject::AirOpening
        | Subject::Connector
        | Subject::DripLeg
        | Subject::TankGauge
        | Subject::MeterDial
        | Subject::CoAlarm
        | Subject::SupplyRegulator
        | Subject::Registers => Ok(()),
    }
}

/// Refuses an ending that is at odds with where the person stands.
pub(super) fn ending_place(model: &Model, ending: Ending) -> Result<(), Refusal> {
    let here = match ending {
        Ending::InService | Ending::SupplyOwnerCalled => {
            place(model, &[Place::Hall, Place::PlantRoom])
        }
        Ending::ShutOff => place(model, &[Place::Hall, Place::PlantRoom, Place::Yard, Place::Away]),
    };
    here.map_err(|_| Refusal::HandOverInside)
}

/// Why an instrument cannot be held to a spot from here, whatever is in hand.
pub(super) fn spot(model: &Model, spot: Spot) -> Result<(), Refusal> {
    place(model, spot.places())?;
    if spot.is_behind_door() {
        burner_door_off(model)?;
    }
    let tank = matches!(model.setup.supply.kind, SupplyKind::Tank { .. });
    match spot {
        Spot::TankSkin if !tank => return Err(Refusal::NotFitted),
        Spot::MeterDial if tank => return Err(Refusal::NotFitted),
        Spot::LowGasVolts if !model.setup.furnace.low_gas_switch => {
            return Err(Refusal::NotFitted);
        }
        Spot::W2ToC | Spot::SecondSwitch | Spot::SecondCoil | Spot::SecondCoilOhms
            if !is_staged(model.levels()) =>
        {
            return Err(Refusal::NotFitted);
        }
        Spot::ReturnAir
        | Spot::SupplyAir
        | Spot::RoomAir
        | Spot::OutsideAir
        | Spot::TankSkin
        | Spot::Flue
        | Spot::FlameRod
        | Spot::RToC
        | Spot::W1ToC
        | Spot::W2ToC
        | Spot::FirstSwitch
        | Spot::SecondSwitch
        | Spot::LimitSwitch
        | Spot::RolloutSwitch
        | Spot::LowGasVolts
        | Spot::MainCoil
        | Spot::SecondCoil
        | Spot::IgniterOhms
        | Spot::SecondCoilOhms
        | Spot::BurnerGroundOhms
        | Spot::MeterDial => {}
    }
    if spot.range() == Some(Range::Ohms) && model.powered() {
        return Err(Refusal::PowerOn);
    }
    Ok(())
}
