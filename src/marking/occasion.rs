//! Whether a job gave occasion for a slip: whether what a rule looks at was there to be done wrongly.

use super::brief::Brief;
use super::evaluate::rightly_shut_off;
use super::ledger::Ledger;
use super::{causes, control, faults_left, joints, safety, unread};
use crate::appliance::plate::Fuel;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Ending, Port, Reading, Screw, Stage};
use crate::rules::Evidence;
use crate::setup::SupplyRight;
use crate::units::PA_PER_INWC;

/// Whether this job, as it was done, gave occasion to trip a rule with this evidence. True where the
/// rule asks for nothing that a job may lack.
#[must_use]
pub fn gives_occasion(evidence: Evidence, l: &Ledger, brief: &Brief) -> bool {
    match evidence {
        Evidence::Ignition
        | Evidence::NeedlessRepair(_)
        | Evidence::PartsOnSuspicion(_)
        | Evidence::CareOnSuspicion(_)
        | Evidence::SafetyBypassed
        | Evidence::DangerousRepair => true,
        Evidence::WorkedOnAfterAlarm => gas_may_call(l),
        Evidence::NoSniffOnArrival => arrives_unwarned(l),
        Evidence::HeadHeightOnly => l.setup.fuel == Fuel::Propane,
        Evidence::OpenedInletUnderGas => plug(l, Some(Port::Inlet), PlugStep::SpinOut),
        Evidence::OpenedOnTrappedGas => safety::traps_gas(l),
        Evidence::OpenedManifoldFiring => plug(l, Some(Port::Manifold), PlugStep::SpinOut),
        Evidence::GasFromOpenPort
        | Evidence::CalledWithPortOpen
        | Evidence::LoosenedWithCockOpen
        | Evidence::PowerLeftOn
        | Evidence::AdapterLeft
        | Evidence::PortLeftOpen => plug(l, None, PlugStep::SpinOut),
        Evidence::CrossThreadLeft | Evidence::CrossThreadCaught => started(l),
        Evidence::BossCracked | Evidence::PlugLoose => plug(l, None, PlugStep::SpinIn),
        Evidence::JointUnchecked
        | Evidence::JointCheckedWrongly
        | Evidence::BubblesLeft
        | Evidence::JointVerdict
        | Evidence::JointNotJudged => joints::any_disturbed(l),
        Evidence::Written(_)
        | Evidence::MeterOff(_)
        | Evidence::HoseHalfOn
        | Evidence::ZeroedUnderPressure(_)
        | Evidence::NothingAsFound => l.wrote().next().is_some(),
        Evidence::StageNeverRead
        | Evidence::InletStateUnread
        | Evidence::NeverReadRunning
        | Evidence::NeverReadWithOthers
        | Evidence::HoldTooShort => !rightly_shut_off(l, brief),
        Evidence::SupplyNotRechecked => unread::supply_moved(l).is_some(),
        Evidence::TurnedBeforeFound => turns_a_level(l),
        Evidence::TurnedBeforeInlet | Evidence::TurnedUnseen => {
            turns_a_level(l) || (is_mine(l) && turns(l, Screw::Supply))
        }
        // Any screw can be turned by whoever stands before it.
        Evidence::BigJumps(_)
        | Evidence::BottomedLeft
        | Evidence::BottomedOnce
        | Evidence::WrongScrew
        | Evidence::NeedlessTurn
        | Evidence::NotReadWithCap
        | Evidence::CapOff
        | Evidence::LeftOutsideBand => l.left().is_some(),
        Evidence::Cranked => full_is_starved(l),
        Evidence::SupplyNotYours => l.setup.card.supply == SupplyRight::OwnerOnly,
        Evidence::SupplyLeftLow => in_use(l) && own_supply_found_low(l),
        Evidence::SupplyOverMaximum => turns(l, Screw::Supply),
        Evidence::ConversionNotProven => !control::left_for_gas(l),
        Evidence::FaultLeft => in_use(l) && faults_left::answered_faults(l).next().is_some(),
        Evidence::MeterFaultLeft => in_use(l) && answers_at_the_meter(l),
        Evidence::JumperLeft
        | Evidence::ControlsNotRestored
        | Evidence::DoorOff
        | Evidence::OthersNotRestored => l.left().is_some(),
        Evidence::ValveSwitchOff | Evidence::CockNotOpen => in_use(l),
        Evidence::NoFinalCycle | Evidence::NotDoneUnsaid => in_use(l),
        Evidence::OwnerNotCalled => control::owner_is_due(l, brief),
        Evidence::NeedlessCall => control::nothing_to_tell(l, brief, l.events.len()),
        Evidence::WrongEnding => !brief.right_endings.is_empty(),
        Evidence::Finding(of) => causes::gives_occasion(of, l),
        Evidence::NotTagged | Evidence::HouseholderNotTold => l.ending() == Some(Ending::ShutOff),
    }
}

/// Whether it was handed over to burn.
fn in_use(l: &Ledger) -> bool {
    l.left().is_some() && !l.said_shut_off()
}

/// Whether an alarm calls, or gas may come out of what is opened.
fn gas_may_call(l: &Ledger) -> bool {
    safety::alarm_before(l, l.events.len()) || plug(l, None, PlugStep::SpinOut)
}

/// Whether no alarm called before the first hand was laid on anything.
fn arrives_unwarned(l: &Ledger) -> bool {
    safety::first_hand(l).is_some_and(|first| !safety::alarm_before(l, first.index))
}

/// Whether a plug was started in its thread.
fn started(l: &Ledger) -> bool {
    plug(l, None, PlugStep::StartByHand)
}

fn turns_a_level(l: &Ledger) -> bool {
    l.levels().iter().any(|level| turns(l, level.screw()))
}

/// Whether the supply is the trainee's to set.
fn is_mine(l: &Ledger) -> bool {
    l.setup.card.supply == SupplyRight::Trainee
}

/// Whether the supply was the trainee's to set, and found below what it must deliver.
fn own_supply_found_low(l: &Ledger) -> bool {
    is_mine(l) && l.setup.supply.set_pa < l.setup.supply.delivery_limits_pa.0
}

fn answers_at_the_meter(l: &Ledger) -> bool {
    faults_left::answered_faults(l).any(faults_left::reads)
}

/// Whether such a step was done with a port's plug, or with either.
fn plug(l: &Ledger, wanted: Option<Port>, step: PlugStep) -> bool {
    let with = |port: Port| wanted.is_none_or(|wanted| wanted == port);
    l.did().any(
        |did| matches!(did.action, Action::Plug { port, step: one } if *one == step && with(*port)),
    )
}

fn turns(l: &Ledger, wanted: Screw) -> bool {
    l.did().any(|did| matches!(did.action, Action::Turn { screw, .. } if *screw == wanted))
}

/// Whether the inlet held the full rate down when it was written last: its spring could not show.
fn full_is_starved(l: &Ledger) -> bool {
    let writes = |action: &Action| {
        matches!(action, Action::Write(Reading { port: Port::Manifold, stage: Stage::Firing(level), .. })
            if level.is_top())
    };
    l.did()
        .filter(|did| writes(did.action))
        .last()
        .is_some_and(|did| did.before.inlet_pa - did.before.set_pa.top() < PA_PER_INWC)
}
