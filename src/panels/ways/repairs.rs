//! Repairs, each at the part that it is done on.

use super::List;
use super::valve::{fill, port_of};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Fitted, Place, Port, PortFill, Subject};
use crate::senses::seen::Seen;

/// Adds the repairs of a part, where it stands before whoever looks.
pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    for &repair in at(id) {
        let here = match repair.place() {
            Place::PlantRoom => matches!(seen.place, Place::PlantRoom | Place::GasValve),
            place @ (Place::GasValve | Place::Hall | Place::Yard | Place::Away) => {
                seen.place == place
            }
        };
        if here && is_fitted(repair, seen) {
            list.add(repair.label(), Action::Mend(repair));
        }
    }
    if let Some(port) = port_of(id)
        && fill(port, seen) == Some(PortFill::Open)
    {
        for repair in taps(port) {
            list.add(repair.label(), Action::Mend(repair));
        }
    }
}

/// Whether what a repair works on is there, as far as that can be seen: the low gas switch of the
/// propane kit, and what belongs to a tank.
fn is_fitted(repair: Repair, seen: &Seen) -> bool {
    if matches!(repair, Repair::ReplaceLowGasSwitch | Repair::BypassLowGasSwitch) {
        let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
        return burners.is_some_and(|burners| burners.low_gas_switch == Fitted::On);
    }
    let of_a_tank = matches!(
        repair,
        Repair::ReplaceFirstStage
            | Repair::FitTwoStageRegulators
            | Repair::ThawRegulator
            | Repair::FlameOnRegulator
    );
    !of_a_tank || seen.yard.as_ref().is_some_and(|yard| yard.tank_percent.is_some())
}

fn taps(port: Port) -> [Repair; 2] {
    match port {
        Port::Inlet => [Repair::CleanInletTap, Repair::DrillInletTap],
        Port::Manifold => [Repair::CleanManifoldTap, Repair::DrillManifoldTap],
    }
}

/// Whether a repair makes a look of before it out of date.
pub(in crate::panels) fn outdates(repair: Repair, subject: Subject) -> bool {
    let on_it = at(subject.id()).contains(&repair);
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

/// The repairs of a part.
fn at(id: &str) -> &'static [Repair] {
    match id {
        "supply-regulator" => &[
            Repair::ReplaceSupplyRegulator,
            Repair::ThawRegulator,
            Repair::FlameOnRegulator,
            Repair::FitTwoStageRegulators,
        ],
        "first-regulator" => &[Repair::ReplaceFirstStage, Repair::FitTwoStageRegulators],
        "supply-cock" => &[Repair::ReplaceExcessFlowValve],
        "supply-vent" => {
            &[Repair::ClearRegulatorVent, Repair::PlugRegulatorVent, Repair::DrillRegulatorVent]
        }
        "riser" => &[Repair::ReplaceTrunk],
        "connector" => &[Repair::ReplaceConnector, Repair::StraightenConnector],
        "drip-leg" => &[Repair::EmptyDripLeg],
        "union" => &[Repair::PurgeLine],
        "vent" => &[Repair::ClearVent],
        "air-opening" => &[Repair::ClearIntake],
        "gas-valve" => {
            &[Repair::CleanInletScreen, Repair::RemoveInletScreen, Repair::ReplaceGasValve]
        }
        "high-coil" => &[Repair::ReplaceHighCoil],
        "spring-mark" => &[Repair::FitSprings, Repair::FitConversionKit],
        "box-hose" => &[Repair::RefitBoxHose],
        "orifices" => &[
            Repair::CleanOrifices,
            Repair::FitOrifices,
            Repair::FitAltitudeOrifices,
            Repair::DrillOrifices,
        ],
        "burners" => &[Repair::CleanBurners],
        "flame-rod" => &[Repair::CleanFlameRod, Repair::MendBurnerGround],
        "ground-wire" => &[Repair::MendBurnerGround],
        "igniter" => &[Repair::ReplaceIgniter],
        "pressure-switch-low" => &[
            Repair::RefitDraftHose,
            Repair::ReplaceDraftHose,
            Repair::ReplaceLowSwitch,
            Repair::BypassLowSwitch,
        ],
        "pressure-switch-high" => &[Repair::ReplaceHighSwitch, Repair::BypassHighSwitch],
        "inducer" => &[
            Repair::RefitDraftHose,
            Repair::ReplaceDraftHose,
            Repair::ClearTrap,
            Repair::PrimeTrap,
        ],
        "limit" => &[Repair::BypassLimit],
        "rollout-1" | "rollout-2" => &[Repair::BypassRollout],
        "control-board" => {
            &[Repair::MendSecondStageWire, Repair::ReplaceControlBoard, Repair::RemoveBypasses]
        }
        "low-gas-switch" => &[Repair::ReplaceLowGasSwitch, Repair::BypassLowGasSwitch],
        "filter" => &[Repair::ReplaceFilter],
        "thermostat" => &[Repair::MendThermostatWire],
        "householder" | "register" => &[Repair::OpenRegisters],
        "meter" => &[Repair::SwapMeterHose, Repair::ReplaceMeterBattery, Repair::BorrowMeter],
        _ => &[],
    }
}
