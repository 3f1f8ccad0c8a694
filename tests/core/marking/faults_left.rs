//! Faults that were there on arrival and are there when the door closes: which of them are charged to
//! the trainee, and what answers each.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::parts::Ending::{self, InService, ShutOff, SupplyOwnerCalled};
use quarterturn::setup::SupplyRight::{self, OwnerOnly, Trainee};

use super::sheet::Sheet;
use crate::bench::rig;

/// A vent that a repair clears, or the owner of the supply.
const VENT: &[Fault] = &[Fault::BlockedRegulatorVent];
const CALL: Action = Action::Call(Contact::SupplyOwner);

fn faulty(faults: &[Fault], supply: SupplyRight) -> Sheet {
    let mut setup = rig::healthy(Fuel::Natural);
    for fault in faults {
        fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
    }
    setup.card.supply = supply;
    Sheet::of(setup)
}

/// How often a fault that was left is charged, and one between the gas and the display.
fn charged(mut sheet: Sheet, ending: Ending, right: &[Ending]) -> [usize; 2] {
    let marks = sheet.handed_over(ending).marks_with(right);
    ["fault-left", "meter-fault-left"]
        .map(|rule| marks.findings.iter().find(|it| it.rule == rule).map_or(0, |it| it.times))
}

fn mended(faults: &[Fault], repairs: &[(Repair, Outcome)]) -> [usize; 2] {
    let mut sheet = faulty(faults, Trainee);
    for &(repair, outcome) in repairs {
        sheet.push(EventKind::Mended { repair, outcome, plate: None });
    }
    charged(sheet, InService, &[InService])
}

/// A repair against it answers a fault, if it changed something; another repair does not. A fault of
/// the manometer or its hose is charged as that.
#[test]
fn a_repair_answers_its_own_fault() {
    use Outcome::{Changed, Nothing};
    let (clear, filter) = (Repair::ClearRegulatorVent, Repair::ReplaceFilter);
    assert_eq!(mended(VENT, &[]), [1, 0]);
    assert_eq!(mended(VENT, &[(clear, Nothing)]), [1, 0]);
    assert_eq!(mended(VENT, &[(filter, Changed)]), [1, 0]);
    assert_eq!(mended(VENT, &[(clear, Changed)]), [0, 0]);
    assert_eq!(mended(VENT, &[(filter, Changed), (clear, Changed)]), [0, 0]);
    let hose = &[Fault::PinchedMeterHose];
    assert_eq!(mended(hose, &[]), [0, 1]);
    assert_eq!(mended(hose, &[(Repair::SwapMeterHose, Changed)]), [0, 0]);
}

/// A call answers a fault of the supply where the job ends so; a trainee who may mend it does not hand
/// it over as sound with a call alone. Somebody else's supply is not the trainee's to mend.
#[test]
fn a_call_answers_where_the_job_ends_with_it() {
    let both = [InService, SupplyOwnerCalled];
    let called = |acts: &[Action], supply: SupplyRight, ending: Ending| {
        let mut sheet = faulty(VENT, supply);
        acts.iter().for_each(|it| {
            sheet.did(it.clone());
        });
        charged(sheet, ending, &both)[0]
    };
    assert_eq!(called(&[CALL], Trainee, SupplyOwnerCalled), 0);
    assert_eq!(called(&[Action::PutDown, CALL], Trainee, SupplyOwnerCalled), 0);
    assert_eq!(called(&[Action::PutDown], Trainee, SupplyOwnerCalled), 1);
    assert_eq!(called(&[CALL], Trainee, InService), 1);
    assert_eq!(called(&[Action::PutDown], OwnerOnly, InService), 0);
}

/// A wrong ending says already that a fault was left, unless it is the ending of another fault, which
/// nobody was called for.
#[test]
fn a_wrong_ending_says_it_already() {
    let orifice = &[Fault::PluggedOrifice];
    assert_eq!(charged(faulty(orifice, OwnerOnly), InService, &[ShutOff]), [0, 0]);
    assert_eq!(charged(faulty(orifice, OwnerOnly), InService, &[InService]), [1, 0]);
    let both = &[Fault::BlockedRegulatorVent, Fault::PluggedOrifice];
    let after = |acts: &[Action]| {
        let mut sheet = faulty(both, OwnerOnly);
        acts.iter().for_each(|it| {
            sheet.did(it.clone());
        });
        charged(sheet, InService, &[SupplyOwnerCalled])
    };
    assert_eq!(after(&[Action::PutDown]), [1, 0]);
    assert_eq!(after(&[CALL]), [0, 0]);
}

/// A supply of one's own may be mended; somebody else's may not.
#[test]
fn a_supply_is_mended_by_whom_it_belongs_to() {
    for (supply, counts) in [(Trainee, 0), (OwnerOnly, 1)] {
        let mut sheet = faulty(VENT, supply);
        let (repair, outcome) = (Repair::ClearRegulatorVent, Outcome::Changed);
        sheet.push(EventKind::Mended { repair, outcome, plate: None });
        assert_eq!(sheet.times("supply-not-yours"), counts, "{supply:?}");
    }
}
