//! Repairs, each at the part that it is done on.

use super::list::List;
use crate::catalogue::repair::{Need, Repair, There};
use crate::hands::action::Action;
use crate::parts::{Fitted, Place, PortFill, Subject, is_staged};
use crate::senses::seen::Seen;

/// Adds the repairs of a part, where it stands before whoever looks.
pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    for repair in Repair::at(id) {
        let here = match repair.place() {
            Place::PlantRoom => matches!(seen.place, Place::PlantRoom | Place::GasValve),
            place @ (Place::GasValve | Place::Hall | Place::Yard | Place::Away) => {
                seen.place == place
            }
        };
        if here && is_there(repair, seen) && is_open(repair, seen) {
            list.add(repair.label(), Action::Mend(repair));
        }
    }
}

/// Whether what a repair works on is there, as far as that can be seen: the low-gas switch of the
/// propane kit, and what belongs to a tank.
fn is_there(repair: Repair, seen: &Seen) -> bool {
    match repair.there() {
        There::LowGasSwitch => {
            let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
            burners.is_some_and(|burners| burners.low_gas_switch == Fitted::On)
        }
        There::Tank | There::TwoStageRegulation => {
            seen.yard.as_ref().is_some_and(|yard| yard.tank_percent.is_some())
        }
        There::TwoLevels => is_staged(seen.levels),
        There::Anywhere
        | There::ExcessFlow
        | There::FiguresForFuel
        | There::BurnerBoxHose
        | There::Jumpers => true,
    }
}

/// Whether the port that a repair works through is seen open.
fn is_open(repair: Repair, seen: &Seen) -> bool {
    repair.needs().iter().all(|need| match need {
        Need::Open(port) => {
            matches!(seen.fill(*port), Some(PortFill::Open | PortFill::TapOpen))
        }
        Need::Shut(_)
        | Need::NoPressure
        | Need::PowerOff
        | Need::BurnerDoorOff
        | Need::BlowerDoorOff
        | Need::HoseFree => true,
    })
}

/// Whether a repair makes a look of before it out of date.
pub(in crate::panels) fn outdates(repair: Repair, subject: Subject) -> bool {
    let on_it = Repair::at(subject.id()).any(|one| one == repair);
    match subject {
        // What burns and what the control says hangs on everything.
        Subject::Flames | Subject::StatusLamp => true,
        Subject::ConversionLabel
        | Subject::LowGasSwitch
        | Subject::Orifices
        | Subject::SpringMark => {
            on_it || matches!(repair, Repair::FitConversionKit | Repair::ReplaceGasValve)
        }
        Subject::SupplyVent => {
            on_it
                || matches!(repair, Repair::ReplaceSupplyRegulator | Repair::FitTwoStageRegulators)
        }
        Subject::Plate
        | Subject::Vent
        | Subject::AirOpening
        | Subject::Connector
        | Subject::DripLeg
        | Subject::Filter
        | Subject::TankGauge
        | Subject::MeterDial
        | Subject::CoAlarm
        | Subject::SupplyRegulator
        | Subject::DraftHose
        | Subject::BoxHose
        | Subject::FlameRod
        | Subject::Registers => on_it,
    }
}
