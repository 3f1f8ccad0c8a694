//! What marking says of repairs that no spoiled run of the technician has an occasion for.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::marking::{Brief, Ledger, evaluate};
use quarterturn::parts::{Ending, Fitted, Joint, Place, Screw, Tool};
use quarterturn::rules::{Essential, shared};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::setup::{Setup, SupplyRight};
use quarterturn::units::PA_PER_INWC;

use super::hand::{act, isolate, mend, put_back, wait};

fn bench(right: SupplyRight) -> Bench {
    let fault = Fault::KinkedConnector;
    let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
    fault.apply(&mut setup, 0.8);
    setup.card.supply = right;
    Bench::new(setup)
}

/// Rules that are charged once the job is handed over, each as often as it was broken, and those
/// that gate.
fn charged(mut bench: Bench) -> Vec<String> {
    act(&mut bench, Action::Go(Place::Hall));
    let said = HandOver { ending: Ending::InService, not_done: Vec::new() };
    act(&mut bench, Action::HandOver(said));
    let mut ledger = Ledger::new(bench.setup().clone());
    ledger.take(bench.take_events());
    let brief = Brief { right_endings: vec![Ending::InService] };
    let marks = evaluate(&shared().unwrap(), &ledger, &brief);
    let bypassed = marks.essentials.iter().find(|it| it.essential == Essential::NothingBypassed);
    let times = |it: &quarterturn::marking::Finding| vec![it.rule.clone(); it.times];
    let mut rules: Vec<String> = marks.findings.iter().flat_map(times).collect();
    rules.extend(bypassed.unwrap().because.iter().map(|rule| format!("gate: {rule}")));
    rules
}

fn has(rules: &[String], rule: &str) -> bool {
    rules.iter().any(|it| it == rule)
}

/// A regulator swapped is work on the supply: it counts where the supply is somebody else's.
#[test]
fn work_on_somebody_elses_supply_counts() {
    for (right, counts) in [(SupplyRight::OwnerOnly, true), (SupplyRight::Trainee, false)] {
        let mut bench = bench(right);
        isolate(&mut bench);
        mend(&mut bench, Repair::ReplaceSupplyRegulator);
        put_back(&mut bench);
        let rules = charged(bench);
        assert_eq!(has(&rules, "supply-not-yours"), counts, "{rules:?}");
        assert!(has(&rules, "needless-repair"), "{rules:?}");
        assert!(has(&rules, "supply-not-rechecked"), "{rules:?}");
    }
}

/// A connector that was replaced is checked with fluid under its pressure, or it counts; one that
/// helped is not needless.
#[test]
fn a_replaced_connector_is_checked() {
    for checked in [false, true] {
        let mut bench = bench(SupplyRight::Trainee);
        isolate(&mut bench);
        mend(&mut bench, Repair::ReplaceConnector);
        put_back(&mut bench);
        if checked {
            act(&mut bench, Action::Go(Place::PlantRoom));
            act(&mut bench, Action::Take(Tool::LeakFluid));
            act(&mut bench, Action::LeakFluid(Joint::Connector));
            wait(&mut bench, 15);
            act(&mut bench, Action::Wipe(Joint::Connector));
        }
        let rules = charged(bench);
        // The inlet port, opened to let the gas off, was not checked either way.
        let unchecked = rules.iter().filter(|rule| *rule == "joint-unchecked").count();
        assert_eq!(unchecked, if checked { 1 } else { 2 }, "{rules:?}");
        assert!(!has(&rules, "needless-repair"), "{rules:?}");
        assert!(!has(&rules, "joint-checked-wrongly"), "{rules:?}");
    }
}

/// What is dangerous in itself and what puts a safety device out of work gate the result.
#[test]
fn danger_and_bypass_gate_the_result() {
    for (repair, rule) in [
        (Repair::StraightenConnector, "dangerous-repair"),
        (Repair::RemoveInletScreen, "dangerous-repair"),
        (Repair::DrillInletTap, "dangerous-repair"),
        (Repair::PlugRegulatorVent, "dangerous-repair"),
        (Repair::DrillRegulatorVent, "dangerous-repair"),
        (Repair::FlameOnRegulator, "dangerous-repair"),
        (Repair::BypassFirstSwitch, "safety-bypassed"),
        (Repair::BypassFullSwitch, "safety-bypassed"),
        (Repair::BypassLimit, "safety-bypassed"),
        (Repair::BypassLowGasSwitch, "safety-bypassed"),
    ] {
        let mut bench = bench(SupplyRight::Trainee);
        isolate(&mut bench);
        mend(&mut bench, repair);
        put_back(&mut bench);
        let rules = charged(bench);
        assert!(has(&rules, rule), "{repair:?} {rules:?}");
        assert!(has(&rules, &format!("gate: {rule}")), "{repair:?} {rules:?}");
    }
    // A wire that was taken off again does not.
    let mut bench = bench(SupplyRight::Trainee);
    isolate(&mut bench);
    mend(&mut bench, Repair::BypassLimit);
    mend(&mut bench, Repair::RemoveBypasses);
    put_back(&mut bench);
    let rules = charged(bench);
    assert!(!has(&rules, "safety-bypassed"), "{rules:?}");
}

/// After a conversion the label's figures are the measure.
#[test]
fn a_conversion_brings_its_label() {
    let fault = Fault::UnconvertedOnPropane;
    let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
    fault.apply(&mut setup, 1.0);
    let mut bench = Bench::new(setup);
    isolate(&mut bench);
    mend(&mut bench, Repair::FitConversionKit);
    let mut ledger = Ledger::new(bench.setup().clone());
    assert_eq!(ledger.plate().figures().fuel, Fuel::Natural);
    ledger.take(bench.take_events());
    assert_eq!(ledger.plate().figures().fuel, Fuel::Propane);
    assert_eq!(&bench.setup_now().furnace.plate, ledger.plate());
}

/// What was seen and true of a job that was handed over with nothing done but these actions in the
/// yard.
fn told_of(mut setup: Setup, rule: &str, in_yard: &[Action]) -> (String, String) {
    setup.card.supply = SupplyRight::Trainee;
    let mut bench = Bench::new(setup);
    act(&mut bench, Action::Go(Place::Yard));
    for action in in_yard {
        act(&mut bench, action.clone());
    }
    act(&mut bench, Action::Go(Place::Hall));
    let said = HandOver { ending: Ending::InService, not_done: Vec::new() };
    act(&mut bench, Action::HandOver(said));
    let mut ledger = Ledger::new(bench.setup().clone());
    ledger.take(bench.take_events());
    let brief = Brief { right_endings: vec![Ending::InService] };
    let marks = evaluate(&shared().unwrap(), &ledger, &brief);
    let found = marks.findings.iter().find(|it| it.rule == rule);
    let found = found.unwrap_or_else(|| panic!("{rule}: {:?}", marks.findings));
    (found.seen.clone(), found.truth.clone())
}

/// Findings on settings say what was left and the limit, in numbers: a stage against the plate's
/// band, the supply against its nameplate.
#[test]
fn settings_left_are_told_in_numbers() {
    let inches = PA_PER_INWC;
    let healthy = healthy_for(Fault::HighStageSetHigh, Fuel::Natural).unwrap();
    let mut setup = healthy.clone();
    Fault::HighStageSetHigh.apply(&mut setup, 0.8 * inches);
    let (seen, truth) = told_of(setup, "left-outside-band", &[]);
    assert_eq!(seen, "no number was written for the manifold on high fire");
    assert_eq!(
        truth,
        "its spring is left set to 4.30 in. w.c.; the plate asks for 3.50 in. w.c. ± 0.30 in. w.c."
    );

    let (least, most) = healthy.supply.delivery_limits_pa;
    let mut setup = healthy.clone();
    setup.supply.set_pa = least - 0.5 * inches;
    let (seen, _) = told_of(setup, "supply-left-low", &[]);
    let [left, limit] = [least / inches - 0.5, least / inches];
    assert_eq!(
        seen,
        format!(
            "supply regulator left set to {left:.2} in. w.c.; its nameplate asks for at least {limit:.2} in. w.c."
        )
    );

    let turn = Action::Turn { screw: Screw::Supply, eighths: 8 };
    let up = [
        Action::Take(Tool::SlottedDriver),
        Action::Cap { screw: Screw::Supply, to: Fitted::Off },
        turn.clone(),
        turn,
    ];
    let (seen, _) = told_of(healthy, "supply-over-maximum", &up);
    let limit = format!("its nameplate allows at most {:.2} in. w.c.", most / inches);
    assert!(seen.starts_with("supply regulator left set to ") && seen.ends_with(&limit), "{seen}");
}
