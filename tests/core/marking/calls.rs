//! Calls: to the owner of the supply with the numbers that speak for it, to the emergency number with
//! gas in the air.

use quarterturn::appliance::ignition::ControlState;
use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::{Action, Contact};
use quarterturn::hands::event::EventKind;
use quarterturn::parts::{Ending, Height, Port, Stage, Subject};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::meter_history::GasDemand;
use quarterturn::units::{J_M3_PER_BTU_FT3, PA_PER_INWC};

use super::sheet::{FULL_LOAD, HIGH, REST, Sheet, draw, spell};

const CALLED: &[Ending] = &[Ending::SupplyOwnerCalled];

/// A job whose supply belongs to somebody else and cannot deliver.
fn weak_supply() -> Sheet {
    let fault = Fault::UndersizedRegulator;
    let mut setup = healthy_for(fault, Fuel::Natural).unwrap();
    fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
    Sheet::of(setup)
}

fn call(sheet: &mut Sheet) -> &mut Sheet {
    sheet.did(Action::Call(Contact::SupplyOwner))
}

fn uncalled(sheet: &Sheet) -> usize {
    let marks = sheet.marks_with(CALLED);
    marks.findings.iter().filter(|it| it.rule == "owner-not-called").count()
}

/// A call needs right numbers at rest and under load, or one that lies outside what plate and nameplate
/// allow (5.0 in. w.c. at least), written before it. A number that was made up or that belongs to another
/// state is none.
#[test]
fn a_call_has_its_numbers() {
    let with = |read: &[(Stage, f64)]| {
        let mut sheet = weak_supply();
        for &(stage, number) in read {
            sheet.read(Port::Inlet, stage, number);
        }
        uncalled(call(&mut sheet))
    };
    assert_eq!(with(&[(REST, 7.5), (FULL_LOAD, 4.2)]), 0);
    assert_eq!(with(&[(REST, 7.5), (HIGH, 5.5)]), 0);
    assert_eq!(with(&[(FULL_LOAD, 4.2)]), 0);
    assert_eq!(with(&[(REST, 7.5)]), 1);
    assert_eq!(with(&[(HIGH, 5.5)]), 1);
    assert_eq!(with(&[]), 1);

    let mut made_up = weak_supply();
    made_up.read(Port::Inlet, REST, 7.5).write(Port::Inlet, FULL_LOAD, 4.2);
    assert_eq!(uncalled(call(&mut made_up)), 1);
    let mut after = weak_supply();
    after.read(Port::Inlet, REST, 7.5);
    call(&mut after).read(Port::Inlet, FULL_LOAD, 4.2);
    assert_eq!(uncalled(&after), 1);
    let mut throttled = weak_supply();
    let draw = GasDemand { throttled: true, ..draw(HIGH) };
    throttled.showed(spell(Port::Inlet, draw, 3.0, 3.0), Some((3.0, 3.0)));
    throttled.write(Port::Inlet, HIGH, 3.0);
    assert_eq!(uncalled(call(&mut throttled)), 1);
}

/// What was seen speaks for a call as well as numbers do: a vent that is stopped up.
#[test]
fn what_was_seen_speaks_for_a_call() {
    let fault = Fault::BlockedRegulatorVent;
    for (looks, counts) in [(true, 0), (false, 1)] {
        let mut setup = healthy_for(fault, Fuel::Natural).unwrap();
        fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
        let mut sheet = Sheet::of(setup);
        if looks {
            sheet.did(Action::Look(Subject::SupplyVent));
        }
        assert_eq!(uncalled(call(&mut sheet)), counts, "{looks}");
    }
}

/// A call for a supply in order costs a little, and a number read with a valve throttled is no reason
/// for it; a right number outside the plate is.
#[test]
fn a_call_for_nothing_costs_a_little() {
    let called = |throttled: bool, number: f64| {
        let mut sheet = Sheet::new();
        let draw = GasDemand { throttled, ..draw(HIGH) };
        sheet.showed(spell(Port::Inlet, draw, number, number), Some((number, number)));
        sheet.write(Port::Inlet, HIGH, number);
        call(&mut sheet);
        sheet.times("needless-call")
    };
    assert_eq!(called(false, 6.66), 1);
    assert_eq!(called(true, 3.0), 1);
    assert_eq!(called(false, 3.0), 0);
}

/// The emergency number is for gas in the air: an alarm, a nose or a detector that found it, bubbles.
/// Called for nothing it costs a little, beside a needless call to the owner.
#[test]
fn the_emergency_number_is_for_gas() {
    let emergency = Action::Call(Contact::Emergency);
    let after = |sheet: &mut Sheet| sheet.did(emergency.clone()).times("needless-call");
    assert_eq!(after(&mut Sheet::new()), 1);
    assert_eq!(after(call(&mut Sheet::new())), 2);
    assert_eq!(after(Sheet::new().push(EventKind::Alarm)), 0);
    assert_eq!(after(Sheet::new().did(Action::Sniff(Height::Head))), 1);
    let mut gas = Sheet::new();
    gas.truth.gas_fraction.breathing = 0.002;
    assert_eq!(after(gas.did(Action::Sniff(Height::Head))), 0);
    // A call before the alarm is no answer to it.
    let mut before = Sheet::new();
    before.did(emergency.clone()).push(EventKind::Alarm);
    assert_eq!(before.times("needless-call"), 1);
}

/// A supply whose spring stands outside its nameplate is told of, read or not.
#[test]
fn a_supply_set_wrong_is_no_needless_call() {
    for (set, counts) in [(7.0, 1), (5.5, 0), (9.5, 0)] {
        let mut setup = Sheet::new().setup;
        setup.supply.set_pa = set * PA_PER_INWC;
        assert_eq!(call(&mut Sheet::of(setup)).times("needless-call"), counts, "{set}");
    }
}

/// A lockout speaks for a call from the first moment on.
#[test]
fn a_lockout_that_was_there_first_speaks_for_a_call() {
    let mut sheet = weak_supply();
    let (from, to) = (ControlState::Retry, ControlState::Lockout);
    sheet.push(EventKind::Control { from, to });
    assert_eq!(uncalled(call(&mut sheet)), 0);
    assert_eq!(uncalled(call(&mut weak_supply())), 1);
}

/// The owner is due where the supply is what is wrong, by the job's right ends or by a fault of theirs,
/// unless the furnace may run as it is or nothing shows of it; an inlet outside the plate shows it. The
/// ending follows from a call that is missing.
#[test]
fn the_owner_is_due_for_what_shows_of_the_supply() {
    use Ending::{InService, ShutOff, SupplyOwnerCalled};
    let lean = |btu_ft3: f64| (Fault::LeanGas, btu_ft3 * J_M3_PER_BTU_FT3);
    let weak = Fault::UndersizedRegulator;
    let weak = (weak, weak.entry().severity.typical(Fuel::Natural));
    let of = |faults: &[(Fault, f64)], inlet: f64, right: &[Ending]| {
        let mut setup = healthy_for(Fault::LeanGas, Fuel::Natural).unwrap();
        faults.iter().for_each(|(fault, severity)| fault.apply(&mut setup, *severity));
        let mut sheet = Sheet::of(setup);
        sheet.read(Port::Inlet, HIGH, inlet);
        let marks = sheet.handed_over(InService).marks_with(right);
        ["owner-not-called", "wrong-ending"]
            .map(|rule| marks.findings.iter().filter(|it| it.rule == rule).count())
    };
    assert_eq!(of(&[lean(960.0)], 6.6, CALLED), [0, 0]);
    assert_eq!(of(&[lean(960.0)], 3.0, CALLED), [1, 0]);
    assert_eq!(of(&[lean(870.0)], 6.6, CALLED), [1, 0]);
    assert_eq!(of(&[lean(960.0), weak], 6.6, CALLED), [1, 0]);
    assert_eq!(of(&[lean(960.0)], 6.6, &[ShutOff]), [0, 1], "hidden is not unsafe");
    assert_eq!(of(&[], 6.6, CALLED), [1, 0]);
    assert_eq!(of(&[weak], 6.6, &[ShutOff]), [1, 0]);
    assert_eq!(of(&[], 6.6, &[ShutOff]), [0, 1]);
    assert_eq!(of(&[weak], 6.6, &[InService, SupplyOwnerCalled]), [0, 0]);
}

/// A furnace that is handed over to run with papers for another gas is told so; another wrong ending is
/// told by the right one.
#[test]
fn a_wrong_ending_is_told_by_what_is_wrong_with_it() {
    let truth = |fault: Option<Fault>| {
        let mut setup = healthy_for(Fault::UnconvertedOnPropane, Fuel::Propane).unwrap();
        fault.iter().for_each(|it| it.apply(&mut setup, 1.0));
        let mut sheet = Sheet::of(setup);
        let marks = sheet.handed_over(Ending::InService).marks_with(&[Ending::ShutOff]);
        marks.findings.into_iter().find(|it| it.rule == "wrong-ending").unwrap().truth
    };
    let wrong_gas = truth(Some(Fault::UnconvertedOnPropane));
    assert_eq!(wrong_gas, "neither plate nor label is for the gas in the pipes");
    assert!(truth(None).starts_with("right here: "), "{}", truth(None));
}
