//! Which endings of a job can be right for what is wrong.

use super::felt::is_felt;
use crate::appliance::plate::Fuel;
use crate::appliance::test_point::{Port, Stage};
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::catalogue::repair::Repair;
use crate::parts::Ending;
use crate::setup::{Setup, SupplyKind, SupplyRight};
use crate::units::M3_S_PER_CFH;

/// Level of a tank below which its owner has to fill it (common practice: a tenth, and a margin).
const LOW_LEVEL: f64 = 0.15;
/// What a gas valve lets by from which its gas sets off the alarm while the job goes on, on natural gas
/// and on propane, in ft³/h: measured on the healthy benches (15 to 16, and 5 to 8). They lie to each
/// other as the gases' lower flammable limits, 5 and 2.1 per cent.
const ALARMS_CFH: [f64; 2] = [15.5, 6.5];

/// Whether an ending can be right on this bench, by what the catalogue says of its faults and by the
/// figures of its supply. A fault that cannot be felt asks for nothing.
#[must_use]
pub fn can_be_right(setup: &Setup, ending: Ending) -> bool {
    match ending {
        Ending::InService => unmended(setup).is_none(),
        Ending::SupplyOwnerCalled => supply_is_off(setup) || any(setup, &[Remedy::CallOwner]),
        Ending::ShutOff => {
            is_mixed(setup)
                || supply_is_off(setup)
                || any(setup, &[Remedy::ShutOffAndTag, Remedy::CallOwner])
        }
    }
}

/// The ending that is right beside `InService` on this bench, if there is one: where a fault may be
/// left shut off, or where its owner may be called to what the trainee may mend, nobody who does that
/// is wrong.
#[must_use]
pub fn right_as_well(setup: &Setup) -> Option<Ending> {
    let theirs = setup.card.supply == SupplyRight::OwnerOnly;
    let other = if is_mixed(setup) || any(setup, &[Remedy::ShutOffAndTag]) {
        Some(Ending::ShutOff)
    } else if theirs && any(setup, &[Remedy::CallOwner]) {
        Some(Ending::SupplyOwnerCalled)
    } else {
        None
    };
    other.filter(|_| can_be_right(setup, Ending::InService))
}

/// Whether one of these helps against a fault of the bench that shows.
fn any(setup: &Setup, wanted: &[Remedy]) -> bool {
    setup.faults.iter().copied().any(|found| {
        remedies(setup, found).iter().any(|it| wanted.contains(it)) && shows(setup, found)
    })
}

/// What helps against a fault as severe as that.
#[must_use]
pub fn remedies(setup: &Setup, (fault, severity): (Fault, f64)) -> &'static [Remedy] {
    let alarms_cfh = ALARMS_CFH[usize::from(setup.fuel == Fuel::Propane)];
    if fault == Fault::LeakingGasValve && severity >= alarms_cfh * M3_S_PER_CFH {
        // Gas that sets off the alarm sends everybody out: the house gets its gas back from the
        // emergency service, not from this job.
        return &[Remedy::ShutOffAndTag];
    }
    if fault == Fault::EarlyExcessFlowValve && severity < load_m3_s(setup) {
        // Opened however slowly, it shuts again once everything burns.
        return &[Remedy::Mend(Repair::ReplaceExcessFlowValve), Remedy::CallOwner];
    }
    fault.entry().right
}

/// The first fault that shows and that the trainee has no remedy for, with its severity.
#[must_use]
pub fn unmended(setup: &Setup) -> Option<(Fault, f64)> {
    let is_mended = |found| remedies(setup, found).iter().any(|it| is_allowed(setup, *it));
    setup.faults.iter().copied().find(|&found| !is_mended(found) && shows(setup, found))
}

/// Whether anything that is read, seen, heard or smelt tells of a fault of this bench.
fn shows(setup: &Setup, (fault, severity): (Fault, f64)) -> bool {
    is_felt(setup.sound.as_deref().unwrap_or(setup), fault, severity)
}

/// Whether the trainee may do it, and the furnace runs afterwards.
fn is_allowed(setup: &Setup, remedy: Remedy) -> bool {
    let theirs = setup.card.supply == SupplyRight::OwnerOnly;
    match remedy {
        Remedy::Mend(repair) => !(theirs && repair.is_on_supply()),
        Remedy::Turn(screw) => screw.level().is_some() || !theirs,
        Remedy::Operate(_) => true,
        Remedy::CallOwner | Remedy::ShutOffAndTag => false,
    }
}

/// What the house draws with everything on.
fn load_m3_s(setup: &Setup) -> f64 {
    let others_w: f64 = setup.other_appliances.values().map(|it| it.input_w).sum();
    (setup.furnace.plate.input.top().si() + others_w) / setup.gas.heating_value_j_m3
}

/// Whether the supply is found out of its own limits or the plate's, by its figures.
fn supply_is_off(setup: &Setup) -> bool {
    let supply = &setup.supply;
    let (least, most) = supply.delivery_limits_pa;
    let figures = setup.furnace.plate.figures();
    let allows = |stage| figures.allows(Port::Inlet, stage, Some(supply.lockup_max_pa));
    let flow_m3_s = load_m3_s(setup);
    let loaded_pa = supply.set_pa - supply.droop_pa * flow_m3_s / supply.droop_flow_m3_s.max(1e-9);
    let empty = match supply.kind {
        SupplyKind::Tank { level, .. } => level <= LOW_LEVEL,
        SupplyKind::Meter { .. } => false,
    };
    empty
        || supply.set_pa < least
        || supply.set_pa > most
        || allows(Stage::Rest).is_above(supply.lockup_pa)
        || allows(Stage::FullLoad).is_below(loaded_pa)
        || supply.capacity_m3_s < flow_m3_s
}

/// Whether gas, label, springs and orifices do not belong together.
fn is_mixed(setup: &Setup) -> bool {
    let figures = setup.furnace.plate.figures();
    figures.fuel != setup.fuel
        || setup.furnace.springs_for != setup.fuel
        || setup.furnace.orifice_stamp != figures.orifice_stamp
}
