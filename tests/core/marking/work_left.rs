//! What shows that a furnace was left well: each rule asked by itself, as the only one that speaks for a
//! competency.

use quarterturn::appliance::ignition::ControlState;
use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact, Topic};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::marking::Shown::{NoOccasion, NotShown, Shown as Done};
use quarterturn::parts::{
    Ending, Fitted, HandValve, Level, OnOff, OtherAppliance, Place, Port, Spot, Subject,
};

use super::sheet::{HIGH, Sheet};
use super::work::{
    HALL, LIT, OFF, RIGHT, SWITCH, done, mended, read, read_on, shut_off, told, with,
};

/// A cycle that is called by the thermostat and seen from the furnace.
fn cycle(sheet: &mut Sheet) -> &mut Sheet {
    let control = |from, to| EventKind::Control { from, to };
    let fired = |from, to| EventKind::Fired { from, to };
    let high = ControlState::Burning(Level::High);
    sheet.did(Action::Go(Place::PlantRoom)).later();
    sheet.push(control(ControlState::Standby, ControlState::InducerStart)).later();
    sheet.push(LIT).later().push(fired(Some(Level::Low), Some(Level::High))).later();
    sheet.push(control(high, ControlState::PostPurge)).push(fired(Some(Level::High), None));
    sheet.later().push(EventKind::Cycle).later()
}

/// How it is left: a jumper or the power that was off, and a cycle seen after it; without a cycle it is not
/// shown. An appliance that went out gives occasion to light it.
#[test]
fn leaving_is_shown_by_a_cycle() {
    let jumper = [Action::StageJumper(Fitted::On), Action::StageJumper(Fitted::Off)];
    let power = [SWITCH, Action::FurnaceSwitch(OnOff::On)];
    for (rule, acts) in [("jumper-left", jumper), ("furnace-left-off", power.clone())] {
        assert_eq!(told(rule, &with(&acts), RIGHT), NotShown, "{rule}");
        let mut seen = with(&acts);
        assert_eq!(told(rule, cycle(&mut seen), RIGHT), Done, "{rule}");
        assert_eq!(told(rule, &read(), RIGHT), NoOccasion, "{rule}");
    }
    let mut seen = with(&power);
    cycle(&mut seen);
    for rule in ["no-final-cycle", "shut-down-unwatched"] {
        assert_eq!(told(rule, &seen, RIGHT), Done, "{rule}");
        assert_eq!(told(rule, &shut_off(with(&power)), OFF), NoOccasion, "{rule}");
    }
    assert_eq!(told("shut-down-unwatched", &with(&power), RIGHT), NotShown);
    for (found, out, shown) in
        [(OnOff::On, true, Done), (OnOff::On, false, NoOccasion), (OnOff::Off, true, NoOccasion)]
    {
        let range = OtherAppliance::Range;
        let mut sheet = read_on(Fuel::Natural, |setup| setup.found.other_appliances[range] = found);
        sheet.truth.other_appliances[range].gone_out = out;
        sheet.did(HALL);
        sheet.truth.other_appliances[range].gone_out = false;
        sheet.truth.other_appliances[range].switch = found;
        assert_eq!(told("others-left-out", &sheet, RIGHT), shown, "{found:?} {out}");
    }
}

/// A safety device that was measured, renewed or looked at shows that it was not put out of work; one that
/// held the burners back, where a cycle was seen in the end.
#[test]
fn a_guard_is_left_to_work() {
    let rule = "safety-bypassed";
    assert_eq!(told(rule, &read(), RIGHT), NoOccasion);
    for spot in [
        Spot::FirstSwitch,
        Spot::SecondSwitch,
        Spot::LimitSwitch,
        Spot::RolloutSwitch,
        Spot::LowGasVolts,
    ] {
        assert_eq!(told(rule, &with(&[Action::WriteMeasured(spot)]), RIGHT), Done, "{spot:?}");
    }
    assert_eq!(told(rule, &with(&[Action::WriteMeasured(Spot::Flue)]), RIGHT), NoOccasion);
    for repair in
        [Repair::ReplaceFirstSwitch, Repair::ReplaceFullSwitch, Repair::ReplaceLowGasSwitch]
    {
        for (outcome, shown) in [(Outcome::Changed, Done), (Outcome::Nothing, NoOccasion)] {
            let mut sheet = read();
            sheet.push(mended(repair, outcome));
            assert_eq!(told(rule, &sheet, RIGHT), shown, "{repair:?}");
        }
    }
    let mut filter = read();
    filter.push(mended(Repair::ReplaceFilter, Outcome::Changed));
    assert_eq!(told(rule, &filter, RIGHT), NoOccasion);
    let look = Action::Look(Subject::LowGasSwitch);
    for (has, shown) in [(true, Done), (false, NoOccasion)] {
        let sheet = read_on(Fuel::Propane, |setup| setup.furnace.low_gas_switch = has);
        assert_eq!(told(rule, &done(sheet, std::slice::from_ref(&look)), RIGHT), shown);
    }
    use ControlState as C;
    let (low, high) = (C::Burning(Level::Low), C::Burning(Level::High));
    for (from, to, holds) in [
        (high, C::LimitOpen, true),
        (high, C::RolloutOpen, true),
        (C::PressureSwitchProving, C::Retry, true),
        (C::PressureSwitchProving, C::Lockout, true),
        (C::PressureSwitchProving, C::PrePurge, false),
        (C::NextSwitchProving, low, true),
        (C::NextSwitchProving, high, false),
        (C::Retry, C::Lockout, false),
        (high, low, false),
    ] {
        let mut sheet = done(read(), &[SWITCH]);
        sheet.push(EventKind::Control { from, to }).later();
        let shown = if holds { NotShown } else { NoOccasion };
        assert_eq!(told(rule, &sheet, RIGHT), shown, "{from:?} {to:?}");
        let seen = if holds { Done } else { NoOccasion };
        assert_eq!(told(rule, cycle(&mut sheet), RIGHT), seen, "{from:?} {to:?}");
    }
}

/// How it ends: the owner called where that is due, tagged and told where it is shut off; judgment only where
/// there was something to judge.
#[test]
fn the_end_is_shown_where_it_asks_for_judgment() {
    const CALLED: &[Ending] = &[Ending::SupplyOwnerCalled];
    let mut call = read();
    call.read(Port::Inlet, HIGH, 6.6).did(Action::Call(Contact::SupplyOwner));
    call.handed_over(Ending::SupplyOwnerCalled);
    assert_eq!(told("owner-not-called", &call, CALLED), Done);
    assert_eq!(told("owner-not-called", &call, RIGHT), NoOccasion);
    assert_eq!(told("wrong-ending", &call, CALLED), Done);
    assert_eq!(told("wrong-ending", &read(), RIGHT), NoOccasion);
    let both = [Ending::InService, Ending::ShutOff];
    assert_eq!(told("wrong-ending", &read(), &both), Done);
    let off = shut_off(with(&[Action::Tell(Topic::Unsafe)]));
    assert_eq!(told("wrong-ending", &off, OFF), Done);
    for rule in ["not-tagged", "householder-not-told"] {
        assert_eq!(told(rule, &off, OFF), Done, "{rule}");
        assert_eq!(told(rule, &read(), RIGHT), NoOccasion, "{rule}");
    }
    assert_eq!(told("householder-not-told", &shut_off(read()), OFF), NotShown);
    assert_eq!(told("shut-off-without-need", &off, OFF), NoOccasion);
    let announced = [Action::Tell(Topic::WorkStarts), HALL];
    let valve = Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 };
    let outside = [&announced[..], &[valve]].concat();
    assert_eq!(told("work-not-announced", &with(&outside), RIGHT), NoOccasion);
}

/// A fault that tempts people to bridge a switch, among other things, and a cycle seen in the end with
/// nothing bridged: the guard was left to work. A fault that was mended shows that it was.
#[test]
fn what_tempts_to_bridge_a_guard_gives_occasion() {
    let with_fault = |fault: Fault| {
        read_on(Fuel::Natural, |setup| {
            fault.apply(setup, fault.entry().severity.typical(Fuel::Natural));
        })
    };
    for (fault, shown) in [(Fault::BlockedVent, Done), (Fault::PluggedOrifice, NoOccasion)] {
        let mut sheet = done(with_fault(fault), &[SWITCH]);
        assert_eq!(told("safety-bypassed", cycle(&mut sheet), RIGHT), shown, "{fault:?}");
    }
    for (outcome, shown) in [(Outcome::Changed, Done), (Outcome::Nothing, NotShown)] {
        let mut sheet = with_fault(Fault::PluggedOrifice);
        sheet.push(mended(Repair::CleanOrifices, outcome));
        assert_eq!(told("fault-left", &sheet, RIGHT), shown, "{outcome:?}");
    }
}
