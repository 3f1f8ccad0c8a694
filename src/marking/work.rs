//! What good work leaves behind where a rule looks. That nothing went wrong shows nothing by
//! itself: it must have been done.

use super::brief::Brief;
use super::ledger::Ledger;
use super::numbers::numbers;
use super::occasion::writes;
use super::{closing, cycle, faults_left, grounds, house, repairs, required};
use crate::appliance::ignition::ControlState;
use crate::catalogue::fault::remedy::Remedy;
use crate::catalogue::repair::{Nature, Repair};
use crate::hands::action::{Action, Contact, Topic};
use crate::hands::event::{EventKind, Outcome};
use crate::parts::{Ending, Fitted, OnOff, Port, Screw, Spot, Stage, Subject};
use crate::rules::evidence::{
    Closing, Hazard, Leaving, Mending, Sealing, Setting, Supply, Unread, Writing,
};
use crate::rules::{Evidence, OfFinding, Slip};

/// Whether the work was done that a rule looks at; none where a rule only speaks against somebody.
pub(super) fn is_done(evidence: Evidence, l: &Ledger, brief: &Brief) -> Option<bool> {
    match evidence {
        Evidence::Hazard(it) => hazard(it, l),
        // A port that was opened behind its barriers was isolated.
        Evidence::Isolation(_) => Some(true),
        Evidence::Sealing(it) => sealing(it, l),
        Evidence::Writing(it) => writing(it, l),
        Evidence::Unread(it) => Some(unread(it, l)),
        Evidence::LeftOut(it) => Some(required::is_done(it, l)),
        Evidence::Setting(it) => setting(it, l),
        Evidence::Supply(it) => supply(it, l),
        Evidence::Mending(it) => mending(it, l),
        Evidence::Leaving(it) => leaving(it, l),
        Evidence::Closing(it) => closing(it, l, brief),
    }
}

fn did(l: &Ledger, wanted: &Action) -> bool {
    l.did().any(|did| did.action == wanted)
}

/// Whether a right number stands on the sheet for a port.
fn read_right(l: &Ledger, port: Port) -> bool {
    numbers(l).iter().any(|it| it.reading.port == port && it.is_right())
}

/// Whether the manifold was read rightly at every firing level.
fn levels_read(l: &Ledger) -> bool {
    let all = numbers(l);
    l.levels().iter().all(|&level| {
        all.iter().any(|it| it.is_for(Port::Manifold, &[Stage::Firing(level)]) && it.is_right())
    })
}

/// Whether a firing level's screw was turned.
fn level_turned(l: &Ledger) -> bool {
    l.did().any(|did| matches!(did.action, Action::Turn { screw, .. } if screw.level().is_some()))
}

fn hazard(evidence: Hazard, l: &Ledger) -> Option<bool> {
    match evidence {
        Hazard::Ignition | Hazard::LeftUnattended(_) => None,
        Hazard::WorkedOnAfterAlarm => {
            if l.events.iter().any(|event| event.what == EventKind::Alarm) {
                Some(did(l, &Action::Tell(Topic::GetOut)))
            } else {
                // A trace that no alarm calls at is answered too.
                grounds::gas_found(l, l.events.len())
                    .then(|| did(l, &Action::Tell(Topic::GasSmellDrill)))
            }
        }
        Hazard::NoSniffOnArrival | Hazard::HeadHeightOnly | Hazard::NotAired => Some(true),
        // Found wrong and never lit.
        Hazard::WrongConversionFired => Some(l.said_shut_off() || mended_something(l)),
    }
}

fn mended_something(l: &Ledger) -> bool {
    repairs::mended(l).any(|it| it.outcome == Outcome::Changed)
}

fn sealing(evidence: Sealing, l: &Ledger) -> Option<bool> {
    match evidence {
        Sealing::CrossThreadLeft
        | Sealing::CrossThreadCaught
        | Sealing::BossCracked
        | Sealing::PlugLoose
        | Sealing::AdapterLeft
        | Sealing::PortLeftOpen
        | Sealing::JointNotJudged => None,
        Sealing::JointUnchecked
        | Sealing::JointCheckedWrongly
        | Sealing::BubblesLeft
        | Sealing::JointVerdict
        | Sealing::TestJointUnchecked(_) => {
            let checked = |what: &EventKind| matches!(what, EventKind::FluidJudged { .. });
            Some(l.events.iter().any(|event| checked(&event.what)))
        }
    }
}

fn writing(evidence: Writing, l: &Ledger) -> Option<bool> {
    match evidence {
        Writing::Number(Slip::OtherPort | Slip::OtherState) => levels_read(l).then_some(true),
        Writing::MeterOff(_) | Writing::ZeroedUnderPressure(_) | Writing::NotZeroedAnew => {
            let zeroed = |what: &EventKind| matches!(what, EventKind::Zeroed { .. });
            let zeroed = l.events.iter().any(|event| zeroed(&event.what));
            Some(zeroed && Port::ALL.iter().any(|&port| read_right(l, port)))
        }
        Writing::Number(Slip::OtherUnit | Slip::Unfounded) => {
            Some(Port::ALL.iter().any(|&port| read_right(l, port)))
        }
        Writing::Number(Slip::OneLeg | Slip::Unsettled | Slip::Coarse)
        | Writing::HoseHalfOn
        | Writing::GaugeOverstrained => None,
        Writing::RateWithOthersOn => Some(writes(l, Spot::MeterDial)),
        Writing::RiseDisturbed | Writing::RiseTooEarly(_) | Writing::RiseLeftOff(_) => {
            Some(writes(l, Spot::SupplyAir) && writes(l, Spot::ReturnAir))
        }
    }
}

fn unread(evidence: Unread, l: &Ledger) -> bool {
    match evidence {
        Unread::StageNeverRead => levels_read(l),
        Unread::InletStateUnread
        | Unread::NeverReadRunning
        | Unread::NeverReadWithOthers
        | Unread::HoldTooShort
        | Unread::LockUpUnread(_)
        | Unread::SupplyNotRechecked => read_right(l, Port::Inlet),
        // Who has missed none of it has looked at all of it, and written what was found.
        Unread::ConversionNotProven | Unread::NothingAsFound => true,
        Unread::CombustionNotTaken => writes(l, Spot::Flue),
    }
}

fn setting(evidence: Setting, l: &Ledger) -> Option<bool> {
    match evidence {
        Setting::TurnedBeforeFound | Setting::TurnedBeforeInlet => Some(level_turned(l)),
        Setting::LeftOutsideBand | Setting::NeedlessTurn => levels_read(l).then_some(true),
        Setting::NotReadWithCap => level_turned(l).then(|| levels_read(l)),
        Setting::CapOff => level_turned(l).then_some(true),
        Setting::Cranked
        | Setting::TurnedUnseen
        | Setting::BigJumps(_)
        | Setting::BottomedLeft
        | Setting::BottomedOnce
        | Setting::WrongScrew
        | Setting::WrongWay(_)
        | Setting::RiseByGas => None,
    }
}

fn supply(evidence: Supply, l: &Ledger) -> Option<bool> {
    match evidence {
        Supply::SupplyNotYours => read_right(l, Port::Inlet).then_some(true),
        Supply::SupplyLeftLow | Supply::SupplyOverMaximum | Supply::LockUpOverLimit => {
            let turns =
                |action: &Action| matches!(action, Action::Turn { screw: Screw::Supply, .. });
            let set = l.did().any(|did| turns(did.action));
            set.then(|| read_right(l, Port::Inlet))
        }
    }
}

/// Whether a safety device was looked into: measured, renewed, or on propane the low-gas switch
/// looked at.
fn examines_a_guard(l: &Ledger) -> bool {
    const SPOTS: [Spot; 5] = [
        Spot::FirstSwitch,
        Spot::SecondSwitch,
        Spot::LimitSwitch,
        Spot::RolloutSwitch,
        Spot::LowGasVolts,
    ];
    const PARTS: [Repair; 4] = [
        Repair::ReplaceFirstSwitch,
        Repair::ReplaceFullSwitch,
        Repair::ReplaceLowGasSwitch,
        Repair::RemoveBypasses,
    ];
    let renewed =
        repairs::mended(l).any(|it| PARTS.contains(&it.repair) && it.outcome == Outcome::Changed);
    let looked = l.setup.furnace.low_gas_switch && did(l, &Action::Look(Subject::LowGasSwitch));
    SPOTS.iter().any(|spot| writes(l, *spot)) || renewed || looked
}

/// Whether a safety device kept the burners from lighting or put them out.
fn a_guard_opened(l: &Ledger) -> bool {
    l.events.iter().any(|event| {
        let EventKind::Control { from, to } = event.what else { return false };
        let opened = matches!(to, ControlState::LimitOpen | ControlState::RolloutOpen);
        let stayed_open = from == ControlState::PressureSwitchProving
            && matches!(to, ControlState::Retry | ControlState::Lockout);
        let full_rate_refused = from == ControlState::NextSwitchProving
            && matches!(to, ControlState::Burning(level) if !level.is_top());
        opened || stayed_open || full_rate_refused
    })
}

/// Whether a fault of the job tempts people to put a safety device out of work.
fn tempts_to_bypass(l: &Ledger) -> bool {
    let bypass = |remedy: Remedy| matches!(remedy, Remedy::Mend(repair) if repair.nature() == Nature::Bypass);
    l.setup.faults.iter().any(|(fault, _)| fault.entry().wrong.iter().any(|it| bypass(it.remedy)))
}

fn mending(evidence: Mending, l: &Ledger) -> Option<bool> {
    match evidence {
        Mending::SafetyBypassed => {
            if examines_a_guard(l) {
                Some(true)
            } else {
                // It held the burners back, or tempts whoever looks for the cause, and was left to
                // do its work.
                let guarded = a_guard_opened(l) || tempts_to_bypass(l);
                guarded.then(|| cycle::final_cycle(l).is_some())
            }
        }
        Mending::DangerousRepair
        | Mending::NeedlessRepair(_)
        | Mending::PartsOnSuspicion(_)
        | Mending::CareOnSuspicion(_)
        | Mending::OverFiredLeft => None,
        Mending::CarbonMonoxideLeft => writes(l, Spot::Flue).then_some(true),
        Mending::FaultLeft | Mending::MeterFaultLeft => {
            Some(faults_left::answered_faults(l).next().is_some())
        }
    }
}

fn leaving(evidence: Leaving, l: &Ledger) -> Option<bool> {
    match evidence {
        Leaving::JumperLeft => {
            did(l, &Action::StageJumper(Fitted::On)).then(|| cycle::final_cycle(l).is_some())
        }
        Leaving::OthersLeftOut => Some(true),
        Leaving::NoFinalCycle | Leaving::ShutDownUnwatched => Some(cycle::final_cycle(l).is_some()),
        Leaving::FurnaceLeftOff(_) => {
            did(l, &Action::FurnaceSwitch(OnOff::Off)).then(|| cycle::final_cycle(l).is_some())
        }
        Leaving::ValveSwitchOff
        | Leaving::CockNotOpen
        | Leaving::ControlsNotRestored(_)
        | Leaving::DoorOff
        | Leaving::OthersNotRestored => None,
    }
}

fn closing(evidence: Closing, l: &Ledger, brief: &Brief) -> Option<bool> {
    match evidence {
        Closing::OwnerNotCalled => Some(did(l, &Action::Call(Contact::SupplyOwner))),
        Closing::NeedlessCall => None,
        // To end it rightly shows judgment only where there was something to judge.
        Closing::WrongEnding | Closing::ShutOffWithoutNeed => {
            let stops = brief.right_endings.contains(&Ending::ShutOff);
            (l.said_shut_off() || stops || closing::owner_is_due(l, brief)).then_some(true)
        }
        Closing::NotTagged => Some(l.left_shut_off()),
        Closing::HouseholderNotTold => Some(house::told(l, Topic::Unsafe, l.events.len())),
        Closing::WorkNotAnnounced => Some(house::told(l, Topic::WorkStarts, l.events.len())),
        Closing::DrillNotTold => Some(house::told(l, Topic::GasSmellDrill, l.events.len())),
        Closing::Finding(OfFinding::CauseNotNamed) => Some(true),
        Closing::Finding(
            OfFinding::WrongCause
            | OfFinding::WrongCauseHarms
            | OfFinding::AnswerContradicts
            | OfFinding::Unbacked
            | OfFinding::NoneWritten,
        ) => None,
    }
}
