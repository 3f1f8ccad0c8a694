//! Puts each rule's question to the job.

use super::brief::Brief;
use super::ended::{readings_due, rightly_shut_off};
use super::ledger::{Caught, Hit, Ledger};
use super::{
    adjusting, causes, closing, combustion, control, conversion, cycle, faults_left, house,
    instruments, joints, lock_up, measuring, piping, repairs, required, rise, safety, test_setup,
    turning, unread, unsafe_left,
};
use crate::catalogue::repair::Nature;
use crate::rules::evidence::{
    Closing, Hazard, Isolation, Leaving, Mending, Sealing, Setting, Supply, Unread, Writing,
};
use crate::rules::{Evidence, Rule};

/// Hits of a rule's evidence, where the job gave occasion for it. Nothing counts as caught in time
/// where the rule does not say what that is.
pub(super) fn hits_due(rule: &Rule, l: &Ledger, brief: &Brief) -> Vec<Hit> {
    if !is_owed(rule.evidence, l, brief) {
        return Vec::new();
    }
    let mut hits = hits(rule.evidence, l, brief);
    if rule.caught.is_none() {
        for hit in &mut hits {
            hit.caught = Caught::No;
        }
    }
    hits
}

/// Whether what a rule asks for had to be done on this job by now. What is owed at the end is not
/// missing from a job that has not ended.
fn is_owed(evidence: Evidence, l: &Ledger, brief: &Brief) -> bool {
    let ended = l.left().is_some();
    match evidence {
        Evidence::Unread(
            Unread::StageNeverRead
            | Unread::InletStateUnread
            | Unread::NeverReadRunning
            | Unread::NeverReadWithOthers
            | Unread::HoldTooShort
            | Unread::LockUpUnread(_),
        ) => ended && readings_due(l, brief),
        Evidence::Unread(
            Unread::NothingAsFound
            | Unread::SupplyNotRechecked
            | Unread::ConversionNotProven
            | Unread::CombustionNotTaken,
        )
        | Evidence::LeftOut(_)
        | Evidence::Writing(Writing::RiseLeftOff(_))
        | Evidence::Sealing(Sealing::JointUnchecked | Sealing::JointNotJudged)
        | Evidence::Setting(Setting::NotReadWithCap)
        | Evidence::Leaving(_)
        | Evidence::Closing(
            Closing::OwnerNotCalled
            | Closing::WrongEnding
            | Closing::ShutOffWithoutNeed
            | Closing::NotTagged
            | Closing::HouseholderNotTold
            | Closing::WorkNotAnnounced
            | Closing::DrillNotTold
            | Closing::Finding(_),
        ) => ended,
        Evidence::Hazard(_)
        | Evidence::Isolation(_)
        | Evidence::Sealing(_)
        | Evidence::Writing(_)
        | Evidence::Setting(_)
        | Evidence::Supply(_)
        | Evidence::Mending(_)
        | Evidence::Closing(Closing::NeedlessCall) => true,
    }
}

fn hits(evidence: Evidence, l: &Ledger, brief: &Brief) -> Vec<Hit> {
    match evidence {
        Evidence::Hazard(it) => hazard(it, l),
        Evidence::Isolation(it) => isolation(it, l),
        Evidence::Sealing(it) => sealing(it, l),
        Evidence::Writing(it) => writing(it, l),
        Evidence::Unread(it) => unread(it, l),
        Evidence::LeftOut(it) => required::left_out(it, l),
        Evidence::Setting(it) => setting(it, l),
        Evidence::Supply(it) => supply(it, l, brief),
        Evidence::Mending(it) => mending(it, l, brief),
        Evidence::Leaving(it) => leaving(it, l),
        Evidence::Closing(it) => closing(it, l, brief),
    }
}

fn hazard(evidence: Hazard, l: &Ledger) -> Vec<Hit> {
    match evidence {
        Hazard::WorkedOnAfterAlarm => safety::worked_on_after_alarm(l),
        Hazard::Ignition => safety::ignition(l),
        Hazard::NoSniffOnArrival => safety::no_sniff_on_arrival(l),
        Hazard::HeadHeightOnly => safety::head_height_only(l),
        Hazard::NotAired => house::not_aired(l),
        Hazard::WrongConversionFired => conversion::wrong_conversion_fired(l),
        Hazard::LeftUnattended(least) => test_setup::left_unattended(l, least.si()),
    }
}

fn isolation(evidence: Isolation, l: &Ledger) -> Vec<Hit> {
    match evidence {
        Isolation::OpenedInletUnderGas => safety::opened_inlet_under_gas(l),
        Isolation::OpenedOnTrappedGas => safety::opened_on_trapped_gas(l),
        Isolation::OpenedManifoldFiring => safety::opened_manifold_firing(l),
        Isolation::GasFromOpenPort => safety::gas_from_open_port(l),
        Isolation::CalledWithPortOpen => safety::called_with_port_open(l),
        Isolation::LoosenedWithCockOpen => safety::loosened_with_valve_open(l),
        Isolation::PowerLeftOn => safety::power_left_on(l),
    }
}

fn sealing(evidence: Sealing, l: &Ledger) -> Vec<Hit> {
    match evidence {
        Sealing::CrossThreadLeft => safety::cross_threads(l).0,
        Sealing::CrossThreadCaught => safety::cross_threads(l).1,
        Sealing::BossCracked => safety::boss_cracked(l),
        Sealing::PlugLoose => joints::plug_loose(l),
        Sealing::AdapterLeft => joints::adapter_left(l),
        Sealing::PortLeftOpen => joints::port_left_open(l),
        Sealing::JointUnchecked => joints::unchecked(l).0,
        Sealing::JointCheckedWrongly => joints::unchecked(l).1,
        Sealing::BubblesLeft => joints::bubbles_left(l),
        Sealing::JointVerdict => [joints::verdicts(l), piping::verdicts(l)].concat(),
        Sealing::JointNotJudged => joints::not_judged(l),
        Sealing::TestJointUnchecked(within) => test_setup::joint_unchecked(l, within.si()),
    }
}

fn writing(evidence: Writing, l: &Ledger) -> Vec<Hit> {
    match evidence {
        Writing::Number(slip) => measuring::written(l, slip),
        Writing::MeterOff(most) => measuring::meter_off(l, most.si()),
        Writing::HoseHalfOn => measuring::hose_half_on(l),
        Writing::ZeroedUnderPressure(most) => measuring::zeroed_under_pressure(l, most.si()),
        Writing::NotZeroedAnew => test_setup::not_zeroed_anew(l),
        Writing::GaugeOverstrained => instruments::gauge_overstrained(l),
        Writing::RateWithOthersOn => instruments::rate_with_others(l),
        Writing::RiseDisturbed => instruments::rise_disturbed(l),
        Writing::RiseTooEarly(least) => instruments::rise_too_early(l, least.si()),
        Writing::RiseLeftOff(least) => rise::left_off(l, least.si()),
    }
}

fn unread(evidence: Unread, l: &Ledger) -> Vec<Hit> {
    match evidence {
        Unread::StageNeverRead => unread::stage_never_read(l),
        Unread::InletStateUnread => unread::inlet_state_unread(l),
        Unread::NothingAsFound => unread::nothing_as_found(l),
        Unread::NeverReadRunning => unread::never_read_running(l),
        Unread::NeverReadWithOthers => unread::never_read_with_others(l),
        Unread::HoldTooShort => unread::hold_too_short(l),
        Unread::LockUpUnread(least) => unread::lock_up_unread(l, least.si()),
        Unread::SupplyNotRechecked => unread::supply_not_rechecked(l),
        Unread::ConversionNotProven => conversion::not_proven(l),
        Unread::CombustionNotTaken => combustion::not_taken(l),
    }
}

fn setting(evidence: Setting, l: &Ledger) -> Vec<Hit> {
    match evidence {
        Setting::TurnedBeforeFound => adjusting::turned_before_found(l),
        Setting::TurnedBeforeInlet => adjusting::turned_before_inlet(l),
        Setting::TurnedUnseen => adjusting::turned_unseen(l),
        Setting::Cranked => adjusting::cranked(l),
        Setting::LeftOutsideBand => unsafe_left::over_fired(l, adjusting::left_outside_band(l)),
        Setting::BigJumps(least) => adjusting::big_jumps(l, least.si()),
        Setting::BottomedLeft => adjusting::bottomed(l).0,
        Setting::BottomedOnce => adjusting::bottomed(l).1,
        Setting::WrongScrew => unsafe_left::wrong_screw(l, adjusting::wrong_screw(l)),
        Setting::WrongWay(most) => turning::wrong_way(l, most),
        Setting::NeedlessTurn => adjusting::needless_turn(l),
        Setting::RiseByGas => turning::rise_by_gas(l),
        Setting::CapOff => adjusting::cap_off(l),
        Setting::NotReadWithCap => adjusting::not_read_with_cap(l),
    }
}

fn supply(evidence: Supply, l: &Ledger, brief: &Brief) -> Vec<Hit> {
    match evidence {
        Supply::SupplyNotYours => adjusting::supply_not_yours(l, brief),
        Supply::SupplyLeftLow => adjusting::supply_left_low(l),
        Supply::SupplyOverMaximum => adjusting::supply_over_maximum(l),
        Supply::LockUpOverLimit => lock_up::over_limit(l),
    }
}

fn mending(evidence: Mending, l: &Ledger, brief: &Brief) -> Vec<Hit> {
    match evidence {
        Mending::SafetyBypassed => repairs::safety_bypassed(l),
        Mending::DangerousRepair => repairs::dangerous_repair(l),
        Mending::NeedlessRepair(first) => repairs::needless_repair(l, first),
        Mending::PartsOnSuspicion(free) => repairs::on_suspicion(l, Nature::Part, free),
        Mending::CareOnSuspicion(free) => repairs::on_suspicion(l, Nature::Care, free),
        Mending::FaultLeft => unsafe_left::fault(l, faults_left::fault_left(l, brief)),
        Mending::MeterFaultLeft => faults_left::meter_fault_left(l),
        Mending::CarbonMonoxideLeft => unsafe_left::carbon_monoxide(l),
        Mending::OverFiredLeft => unsafe_left::too_much_gas(l),
    }
}

fn leaving(evidence: Leaving, l: &Ledger) -> Vec<Hit> {
    match evidence {
        Leaving::JumperLeft => control::jumper_left(l),
        Leaving::ValveSwitchOff => control::valve_switch_off(l),
        Leaving::CockNotOpen => control::hand_valve_not_open(l),
        Leaving::FurnaceLeftOff(most) => control::furnace_left_off(l, most.si()),
        Leaving::ControlsNotRestored(most) => control::controls_not_restored(l, most.si()),
        Leaving::DoorOff => control::door_off(l),
        Leaving::OthersNotRestored => control::others_not_restored(l),
        Leaving::OthersLeftOut => control::others_left_out(l),
        Leaving::NoFinalCycle => cycle::no_final_cycle(l),
        Leaving::ShutDownUnwatched => cycle::shut_down_unwatched(l),
    }
}

fn closing(evidence: Closing, l: &Ledger, brief: &Brief) -> Vec<Hit> {
    match evidence {
        Closing::OwnerNotCalled => closing::owner_not_called(l, brief),
        Closing::NeedlessCall => closing::needless_call(l, brief),
        Closing::WrongEnding => closing::wrong_ending(l, brief),
        Closing::ShutOffWithoutNeed => closing::shut_off_without_need(l, brief),
        Closing::NotTagged => closing::not_tagged(l),
        Closing::HouseholderNotTold => closing::householder_not_told(l),
        Closing::WorkNotAnnounced => house::work_not_announced(l),
        Closing::DrillNotTold => house::drill_not_told(l),
        Closing::Finding(of) => causes::hits(of, l, rightly_shut_off(l, brief)),
    }
}
