//! What is charged and what is not: faults that nobody can feel, blind work, other people's pipe and
//! calls for nothing, a furnace left on the wrong gas.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact, HandOver};
use quarterturn::marking::{Brief, Finding, Ledger, evaluate};
use quarterturn::measure::felt::is_felt;
use quarterturn::parts::{Door, Ending, Fitted, Joint, Level, Place, Port, Tool};
use quarterturn::rules::{Severity, shared};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::Cracked;
use quarterturn::setup::{Setup, SupplyRight};

use super::hand::{act, fire, isolate, isolate_furnace, mend, open, put_back, wait};

fn sound(fuel: Fuel) -> Setup {
    healthy_for(Fault::BlockedInletScreen, fuel).unwrap()
}

fn faulty(fault: Fault, severity: f64, fuel: Fuel) -> Setup {
    let mut setup = healthy_for(fault, fuel).unwrap();
    fault.apply(&mut setup, severity);
    setup
}

fn findings(mut bench: Bench, right_endings: &[Ending]) -> Vec<Finding> {
    act(&mut bench, Action::Go(Place::Hall));
    let said = HandOver { ending: Ending::InService, not_done: Vec::new() };
    act(&mut bench, Action::HandOver(said));
    let mut ledger = Ledger::new(bench.setup().clone());
    ledger.take(bench.take_events());
    let brief = Brief { right_endings: right_endings.to_vec() };
    evaluate(&shared().unwrap(), &ledger, &brief).findings
}

fn times(findings: &[Finding], rule: &str) -> usize {
    findings.iter().find(|it| it.rule == rule).map_or(0, |it| it.times)
}

const IN_SERVICE: &[Ending] = &[Ending::InService];

/// A fault that no instrument shows is not charged when it is left; one that any of them shows is.
/// Both ends of its range stand in the catalogue.
#[test]
fn what_nobody_can_feel_is_not_left() {
    for (fault, small, great) in [
        (Fault::BlockedInletScreen, 0.2, 0.8),
        (Fault::OversizeOrifices, 0.03, 0.15),
        // Film, loose wire and closed registers are seen before they do anything.
        (Fault::DirtyFlameRod, 0.2, 0.25),
        (Fault::PoorBurnerGround, 0.2, 0.25),
        (Fault::ClosedRegisters, 0.2, 0.3),
    ] {
        for (severity, felt) in [(small, false), (great, true)] {
            let setup = healthy_for(fault, Fuel::Natural).unwrap();
            assert_eq!(is_felt(&setup, fault, severity), felt, "{fault:?} {severity}");
            let bench = Bench::new(faulty(fault, severity, Fuel::Natural));
            let left = times(&findings(bench, IN_SERVICE), "fault-left");
            assert_eq!(left == 1, felt, "{fault:?} {severity}");
        }
    }
}

/// Piped gas leaner than usual, within the heat that it is sold with (950 to 1,150 Btu/ft³, a range
/// that handbooks give), cannot be told on a card without a value, and need not be called for; leaner
/// than any that is sold, it must be.
#[test]
fn what_nobody_can_tell_of_the_gas_needs_no_call() {
    for (btu_ft3, counts) in [(960.0, 0), (870.0, 1)] {
        // A British thermal unit a cubic foot in joules a cubic metre.
        let j_m3 = btu_ft3 * 37_258.9;
        let bench = Bench::new(faulty(Fault::LeanGas, j_m3, Fuel::Natural));
        let found = findings(bench, &[Ending::SupplyOwnerCalled]);
        assert_eq!(times(&found, "owner-not-called"), counts, "{btu_ft3}");
        assert_eq!(times(&found, "wrong-ending"), 0, "{btu_ft3} {found:?}");
    }
}

/// Two sound parts swapped are a slip; the third is a way of working, and weighs more. Five things
/// cleaned for nothing are free, the sixth is not.
#[test]
fn blind_work_costs() {
    let parts = [Repair::ReplaceIgniter, Repair::ReplaceFullSwitch, Repair::ReplaceFirstSwitch];
    let care = [
        Repair::CleanFlameRod,
        Repair::MendBurnerGround,
        Repair::CleanBurners,
        Repair::ClearTrap,
        Repair::PrimeTrap,
        Repair::RefitDraftHose,
    ];
    let after = |repairs: &[Repair]| {
        let mut bench = Bench::new(sound(Fuel::Natural));
        isolate_furnace(&mut bench);
        for &repair in repairs {
            mend(&mut bench, repair);
        }
        put_back(&mut bench);
        findings(bench, IN_SERVICE)
    };
    let two = after(&parts[..2]);
    assert_eq!((times(&two, "needless-repair"), times(&two, "parts-on-suspicion")), (2, 0));
    let three = after(&parts);
    assert_eq!((times(&three, "needless-repair"), times(&three, "parts-on-suspicion")), (2, 1));
    let third = three.iter().find(|it| it.rule == "parts-on-suspicion").unwrap();
    assert_eq!(third.truth, "it was part number 3 with nothing wrong");
    let heavy = three.iter().find(|it| it.rule == "parts-on-suspicion").unwrap();
    assert_eq!(heavy.severity, Severity::Major);
    assert_eq!(times(&after(&care[..5]), "care-on-suspicion"), 0);
    assert_eq!(times(&after(&care), "care-on-suspicion"), 1);
}

/// Re-piping the trunk is work for whoever owns it, where the job cannot end in service without them;
/// where it can, or the supply is the trainee's, it is not charged.
#[test]
fn somebody_elses_trunk_is_theirs() {
    let owners = &[Ending::SupplyOwnerCalled][..];
    for (right, endings, counts) in [
        (SupplyRight::OwnerOnly, owners, 1),
        (SupplyRight::OwnerOnly, IN_SERVICE, 0),
        (SupplyRight::Trainee, owners, 0),
    ] {
        let mut setup = faulty(Fault::UndersizedTrunk, 0.62, Fuel::Natural);
        setup.card.supply = right;
        let mut bench = Bench::new(setup);
        isolate(&mut bench);
        mend(&mut bench, Repair::ReplaceTrunk);
        put_back(&mut bench);
        assert_eq!(times(&findings(bench, endings), "supply-not-yours"), counts);
    }
}

/// A call to the owner of a supply that is in order costs a little; with a fault of theirs it does not.
#[test]
fn a_call_for_nothing_counts() {
    for (setup, counts) in
        [(sound(Fuel::Propane), 1), (faulty(Fault::SupplySetLow, 700.0, Fuel::Propane), 0)]
    {
        let mut bench = Bench::new(setup);
        act(&mut bench, Action::Go(Place::Hall));
        act(&mut bench, Action::Call(Contact::SupplyOwner));
        assert_eq!(times(&findings(bench, IN_SERVICE), "needless-call"), counts);
    }
}

/// A job may take a furnace in service that came without its conversion: with the whole kit it is
/// right, without it is not, whatever the job says.
#[test]
fn in_service_asks_for_a_furnace_made_for_its_gas() {
    for (fits, wrong) in [(false, 1), (true, 0)] {
        let mut bench = Bench::new(faulty(Fault::UnconvertedOnPropane, 1.0, Fuel::Propane));
        isolate_furnace(&mut bench);
        if fits {
            mend(&mut bench, Repair::FitConversionKit);
        }
        put_back(&mut bench);
        let found = findings(bench, &[Ending::ShutOff, Ending::InService]);
        assert_eq!(times(&found, "wrong-ending"), wrong, "{found:?}");
    }
}

/// A hole that is stopped up lets nothing out when its plug is taken out, whatever stands behind it;
/// a free one does.
#[test]
fn nothing_comes_out_of_a_stopped_up_port() {
    for (setup, counts) in
        [(sound(Fuel::Natural), 1), (faulty(Fault::BlockedInletTap, 0.0, Fuel::Natural), 0)]
    {
        let mut bench = Bench::new(setup);
        act(&mut bench, Action::Go(Place::PlantRoom));
        act(
            &mut bench,
            Action::HandValve { hand_valve: quarterturn::parts::HandValve::Furnace, degrees: 0 },
        );
        act(&mut bench, Action::Door { door: Door::Burner, to: Fitted::Off });
        open(&mut bench, Port::Inlet);
        assert_eq!(times(&findings(bench, IN_SERVICE), "opened-on-trapped-gas"), counts);
    }
}

/// A hairline crack is not seen by looking; leak fluid shows it while gas stands behind it.
#[test]
fn a_crack_is_seen_under_leak_fluid_only() {
    let mut bench = Bench::new(faulty(Fault::CrackedBoss, 1.0, Fuel::Natural));
    let cracked = |bench: &Bench| {
        bench.seen().furnace.unwrap().burners.unwrap().ports[Port::Manifold].cracked
    };
    act(&mut bench, Action::Go(Place::PlantRoom));
    act(&mut bench, Action::Door { door: Door::Burner, to: Fitted::Off });
    assert_eq!(cracked(&bench), Cracked::Sound);
    assert!(fire(&mut bench, Some(Level::High)));
    act(&mut bench, Action::Go(Place::GasValve));
    assert_eq!(cracked(&bench), Cracked::Sound);
    act(&mut bench, Action::Take(Tool::LeakFluid));
    act(&mut bench, Action::LeakFluid(Joint::ManifoldPort));
    wait(&mut bench, 15);
    assert_eq!(cracked(&bench), Cracked::Cracked);
}

/// A wrong ending says that its own fault was left; another fault that the trainee could have mended is
/// charged beside it. A faulty hose is named whatever else is left.
#[test]
fn a_second_fault_left_is_charged_beside_the_first() {
    let left = |faults: &[Fault]| {
        let mut setup = sound(Fuel::Natural);
        setup.card.supply = SupplyRight::OwnerOnly;
        for &fault in faults {
            fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
        }
        let found = findings(Bench::new(setup), &[Ending::SupplyOwnerCalled]);
        ["owner-not-called", "fault-left", "meter-fault-left"].map(|rule| times(&found, rule))
    };
    let owners = Fault::UndersizedRegulator;
    assert_eq!(left(&[owners]), [1, 0, 0]);
    assert_eq!(left(&[owners, Fault::KinkedConnector]), [1, 1, 0]);
    assert_eq!(left(&[owners, Fault::WaterInMeterHose]), [1, 0, 1]);
    // Alone it is what the ending says already.
    let mut setup = sound(Fuel::Natural);
    Fault::KinkedConnector.apply(&mut setup, 0.8);
    let found = findings(Bench::new(setup.clone()), &[Ending::ShutOff]);
    assert_eq!([times(&found, "wrong-ending"), times(&found, "fault-left")], [1, 0]);
    assert_eq!(times(&findings(Bench::new(setup), IN_SERVICE), "fault-left"), 1);
}
