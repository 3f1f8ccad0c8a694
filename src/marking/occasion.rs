//! Whether a job gave occasion for a slip: whether what a rule looks at was there to be done wrongly.

use super::brief::Brief;
use super::ended::{in_use, readings_due};
use super::ledger::Ledger;
use super::{
    causes, closing, combustion, control, conversion, faults_left, house, joints, required, safety,
    unread,
};
use crate::appliance::plate::Fuel;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Ending, Port, Reading, Screw, Spot, Stage};
use crate::rules::Evidence;
use crate::rules::evidence::{
    Closing, Hazard, Isolation, Leaving, Mending, Sealing, Setting, Supply, Unread, Writing,
};
use crate::setup::SupplyRight;
use crate::units::PA_PER_INWC;

/// Whether this job, as it was done, gave occasion to trip a rule with this evidence. True where the
/// rule asks for nothing that a job may lack.
#[must_use]
pub fn gives_occasion(evidence: Evidence, l: &Ledger, brief: &Brief) -> bool {
    match evidence {
        Evidence::Hazard(it) => hazard(it, l),
        Evidence::Isolation(it) => isolation(it, l),
        Evidence::Sealing(it) => sealing(it, l),
        Evidence::Writing(it) => writing(it, l),
        Evidence::Unread(it) => unread(it, l, brief),
        Evidence::LeftOut(it) => required::is_due(it, l),
        Evidence::Setting(it) => setting(it, l),
        Evidence::Supply(it) => supply(it, l),
        Evidence::Mending(it) => mending(it, l),
        Evidence::Leaving(it) => leaving(it, l),
        Evidence::Closing(it) => closing(it, l, brief),
    }
}

fn hazard(evidence: Hazard, l: &Ledger) -> bool {
    match evidence {
        Hazard::Ignition => true,
        Hazard::WorkedOnAfterAlarm => gas_may_call(l),
        Hazard::NoSniffOnArrival => arrives_unwarned(l),
        Hazard::HeadHeightOnly => l.setup.fuel == Fuel::Propane,
        Hazard::NotAired => l.setup.fuel == Fuel::Propane && house::first_lit(l).is_some(),
        Hazard::WrongConversionFired => conversion::is_wrong(l, 0),
        Hazard::LeftUnattended(_) => hooks_up(l),
    }
}

fn isolation(evidence: Isolation, l: &Ledger) -> bool {
    match evidence {
        Isolation::OpenedInletUnderGas => plug(l, Some(Port::Inlet), PlugStep::SpinOut),
        Isolation::OpenedOnTrappedGas => safety::traps_gas(l),
        Isolation::OpenedManifoldFiring => plug(l, Some(Port::Manifold), PlugStep::SpinOut),
        Isolation::GasFromOpenPort
        | Isolation::CalledWithPortOpen
        | Isolation::LoosenedWithCockOpen
        | Isolation::PowerLeftOn => plug(l, None, PlugStep::SpinOut),
    }
}

fn sealing(evidence: Sealing, l: &Ledger) -> bool {
    match evidence {
        Sealing::AdapterLeft | Sealing::PortLeftOpen => plug(l, None, PlugStep::SpinOut),
        Sealing::CrossThreadLeft | Sealing::CrossThreadCaught => {
            plug(l, None, PlugStep::StartByHand)
        }
        Sealing::BossCracked | Sealing::PlugLoose => plug(l, None, PlugStep::SpinIn),
        Sealing::JointUnchecked
        | Sealing::JointCheckedWrongly
        | Sealing::BubblesLeft
        | Sealing::JointVerdict
        | Sealing::JointNotJudged => joints::any_disturbed(l),
        Sealing::TestJointUnchecked(_) => hooks_up(l) && house::first_lit(l).is_some(),
    }
}

fn writing(evidence: Writing, l: &Ledger) -> bool {
    match evidence {
        Writing::Number(_)
        | Writing::MeterOff(_)
        | Writing::HoseHalfOn
        | Writing::ZeroedUnderPressure(_) => l.wrote().next().is_some(),
        Writing::NotZeroedAnew => {
            Port::ALL.iter().all(|port| l.wrote().any(|(_, _, it)| it.reading.port == *port))
        }
        // Whoever puts the hose on chooses the gauge.
        Writing::GaugeOverstrained => hooks_up(l),
        Writing::RateWithOthersOn => writes(l, Spot::MeterDial),
        Writing::RiseDisturbed | Writing::RiseTooEarly(_) => writes(l, Spot::SupplyAir),
        Writing::RiseLeftOff(_) => {
            in_use(l) && writes(l, Spot::SupplyAir) && writes(l, Spot::ReturnAir)
        }
    }
}

fn unread(evidence: Unread, l: &Ledger, brief: &Brief) -> bool {
    match evidence {
        Unread::NothingAsFound => l.wrote().next().is_some(),
        Unread::StageNeverRead
        | Unread::InletStateUnread
        | Unread::NeverReadRunning
        | Unread::NeverReadWithOthers
        | Unread::HoldTooShort
        | Unread::LockUpUnread(_) => readings_due(l, brief),
        Unread::SupplyNotRechecked => unread::supply_moved(l).is_some(),
        Unread::ConversionNotProven => !conversion::is_settled(l),
        Unread::CombustionNotTaken => {
            in_use(l) && (combustion::last_change(l).is_some() || writes(l, Spot::Flue))
        }
    }
}

fn setting(evidence: Setting, l: &Ledger) -> bool {
    match evidence {
        Setting::TurnedBeforeFound | Setting::WrongWay(_) => turns_a_level(l),
        Setting::TurnedBeforeInlet | Setting::TurnedUnseen => {
            turns_a_level(l) || (is_mine(l) && turns(l, Screw::Supply))
        }
        // Any screw can be turned by whoever stands before it.
        Setting::BigJumps(_)
        | Setting::BottomedLeft
        | Setting::BottomedOnce
        | Setting::WrongScrew
        | Setting::NeedlessTurn
        | Setting::NotReadWithCap
        | Setting::CapOff
        | Setting::LeftOutsideBand => l.left().is_some(),
        Setting::RiseByGas => writes(l, Spot::SupplyAir) && writes(l, Spot::ReturnAir),
        Setting::Cranked => full_is_starved(l),
    }
}

fn supply(evidence: Supply, l: &Ledger) -> bool {
    match evidence {
        Supply::SupplyNotYours => l.setup.card.supply == SupplyRight::OwnerOnly,
        Supply::SupplyLeftLow => in_use(l) && own_supply_found_low(l),
        Supply::SupplyOverMaximum | Supply::LockUpOverLimit => turns(l, Screw::Supply),
    }
}

fn mending(evidence: Mending, l: &Ledger) -> bool {
    match evidence {
        Mending::NeedlessRepair(_)
        | Mending::PartsOnSuspicion(_)
        | Mending::CareOnSuspicion(_)
        | Mending::SafetyBypassed
        | Mending::DangerousRepair => true,
        Mending::FaultLeft => in_use(l) && faults_left::answered_faults(l).next().is_some(),
        Mending::MeterFaultLeft => in_use(l) && answers_at_the_meter(l),
        Mending::CarbonMonoxideLeft | Mending::OverFiredLeft => in_use(l),
    }
}

fn leaving(evidence: Leaving, l: &Ledger) -> bool {
    match evidence {
        Leaving::JumperLeft | Leaving::ControlsNotRestored(_) | Leaving::OthersNotRestored => {
            l.left().is_some()
        }
        Leaving::OthersLeftOut => l.left().is_some() && control::went_out(l),
        Leaving::ValveSwitchOff
        | Leaving::CockNotOpen
        | Leaving::FurnaceLeftOff(_)
        | Leaving::DoorOff
        | Leaving::NoFinalCycle
        | Leaving::ShutDownUnwatched => in_use(l),
    }
}

fn closing(evidence: Closing, l: &Ledger, brief: &Brief) -> bool {
    match evidence {
        Closing::OwnerNotCalled => closing::owner_is_due(l, brief),
        Closing::NeedlessCall => closing::nothing_to_tell(l, brief, l.events.len()),
        Closing::WrongEnding => !brief.right_endings.is_empty(),
        Closing::ShutOffWithoutNeed => !brief.right_endings.contains(&Ending::ShutOff),
        Closing::NotTagged | Closing::HouseholderNotTold => l.said_shut_off(),
        Closing::WorkNotAnnounced => arrives_unwarned(l),
        Closing::DrillNotTold => l.left().is_some() && !conversion::left_for_gas(l),
        Closing::Finding(of) => causes::gives_occasion(of, l),
    }
}

/// Whether the manometer's hose was put on a port.
fn hooks_up(l: &Ledger) -> bool {
    l.did().any(|did| matches!(did.action, Action::HoseOn { .. }))
}

/// Whether something was written from an instrument at a spot.
pub(super) fn writes(l: &Ledger, spot: Spot) -> bool {
    l.did().any(|did| *did.action == Action::WriteMeasured(spot))
}

/// Whether an alarm calls, or gas may come out of what is opened.
fn gas_may_call(l: &Ledger) -> bool {
    safety::alarm_before(l, l.events.len()) || plug(l, None, PlugStep::SpinOut)
}

/// Whether no alarm called before the first hand was laid on anything.
fn arrives_unwarned(l: &Ledger) -> bool {
    safety::first_hand(l).is_some_and(|first| !safety::alarm_before(l, first.index))
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
