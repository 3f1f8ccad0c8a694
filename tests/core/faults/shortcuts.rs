//! Short cuts that look like a finished job: a fault found by nobody, a guard put out of work for a
//! while, a call in place of the work.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact, HandOver};
use quarterturn::marking::{Brief, Finding, Ledger, evaluate};
use quarterturn::parts::{Ending, Fitted, HandValve, Level, Place, Screw, Subject};
use quarterturn::rules::{Severity, shared};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::setup::SupplyRight;
use quarterturn::units::PA_PER_INWC;

use super::hand::{act, fire, isolate_furnace, mend, put_back, set};

fn bench(fault: Fault, amount: f64, fuel: Fuel, right: SupplyRight) -> Bench {
    let mut setup = healthy_for(fault, fuel).unwrap();
    fault.apply(&mut setup, amount);
    setup.card.supply = right;
    Bench::new(setup)
}

/// What is found once the job is handed over.
fn findings(mut bench: Bench, ending: Ending, right_endings: &[Ending]) -> Vec<Finding> {
    act(&mut bench, Action::Go(Place::Hall));
    act(&mut bench, Action::HandOver(HandOver { ending, not_done: Vec::new() }));
    let mut ledger = Ledger::new(bench.setup().clone());
    ledger.take(bench.take_events());
    let brief = Brief { right_endings: right_endings.to_vec() };
    evaluate(&shared().unwrap(), &ledger, &brief).findings
}

fn has(findings: &[Finding], rule: &str) -> bool {
    findings.iter().any(|it| it.rule == rule)
}

/// A supply found too high and never touched counts where the trainee may set it; put right, it
/// does not; somebody else's is theirs.
#[test]
fn a_supply_left_too_high_counts_where_it_may_be_set() {
    let high = Fault::SupplySetHigh;
    let amount = 3.5 * PA_PER_INWC;
    let found = |bench| findings(bench, Ending::InService, &[Ending::InService]);
    let mine = bench(high, amount, Fuel::Natural, SupplyRight::Trainee);
    assert!(has(&found(mine), "supply-over-maximum"));
    let theirs = bench(high, amount, Fuel::Natural, SupplyRight::OwnerOnly);
    assert!(!has(&found(theirs), "supply-over-maximum"));
    let mut mended = bench(high, amount, Fuel::Natural, SupplyRight::Trainee);
    let wanted_pa = mended.setup().supply.delivery_limits_pa.1 - 0.5 * PA_PER_INWC;
    set(&mut mended, Screw::Supply, wanted_pa);
    assert!(!has(&found(mended), "supply-over-maximum"));
}

/// Shut off with nothing found is a guess: the readings are missed. A look at the gauge of an empty
/// tank is ground enough.
#[test]
fn shutting_off_needs_a_ground() {
    for looks in [false, true] {
        let fault = Fault::NearlyEmptyTank;
        let mut bench = bench(fault, 0.0003, Fuel::Propane, SupplyRight::OwnerOnly);
        act(&mut bench, Action::Go(Place::Yard));
        if looks {
            act(&mut bench, Action::Look(Subject::TankGauge));
        }
        act(&mut bench, Action::Go(Place::PlantRoom));
        act(&mut bench, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
        act(&mut bench, Action::Tag(Fitted::On));
        let found = findings(bench, Ending::ShutOff, &[Ending::ShutOff]);
        assert_eq!(has(&found, "stage-never-read"), !looks, "{found:?}");
        assert_eq!(has(&found, "hold-too-short"), !looks, "{found:?}");
    }
}

/// A wire across the limit while the burners fire counts though it was taken off; one that no
/// flame burned under does not.
#[test]
fn firing_on_a_bypass_counts_though_it_was_taken_off() {
    for fires in [false, true] {
        let mut bench = bench(Fault::BlockedFilter, 0.5, Fuel::Natural, SupplyRight::OwnerOnly);
        isolate_furnace(&mut bench);
        mend(&mut bench, Repair::BypassLimit);
        if fires {
            put_back(&mut bench);
            assert!(fire(&mut bench, Some(Level::Low)));
            isolate_furnace(&mut bench);
        }
        mend(&mut bench, Repair::RemoveBypasses);
        put_back(&mut bench);
        let found = findings(bench, Ending::InService, &[Ending::InService]);
        let bypassed = found.iter().find(|it| it.rule == "safety-bypassed");
        assert_eq!(bypassed.is_some(), fires, "{found:?}");
        assert!(bypassed.is_none_or(|it| it.severity == Severity::Major), "{found:?}");
    }
}

/// A call to the owner mends nothing that the trainee may mend.
#[test]
fn a_call_does_not_stand_for_ones_own_work() {
    for (right, left) in [(SupplyRight::Trainee, true), (SupplyRight::OwnerOnly, false)] {
        let mut bench = bench(Fault::UndersizedRegulator, 750.0, Fuel::Natural, right);
        act(&mut bench, Action::Go(Place::Hall));
        act(&mut bench, Action::Call(Contact::SupplyOwner));
        let found = findings(bench, Ending::InService, &[Ending::InService]);
        assert_eq!(has(&found, "fault-left"), left, "{found:?}");
    }
}
