//! Causes that are to be named: when one of them is enough, what a wrong word costs beside them, and
//! when the essential is due.

use quarterturn::appliance::ignition::ControlState;
use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::Action;
use quarterturn::marking::evaluate::Standing;
use quarterturn::parts::{Answer, Cause, Ending, Fitted, Level, Subject, WrittenFinding};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::Essential;
use quarterturn::units::PA_PER_INWC;

use super::sheet::Sheet;
use crate::bench::rig;

const RUNS: &[Ending] = &[Ending::InService];

/// The rig with these faults, as severe as that, and these causes on the sheet.
fn sheet(faults: &[(Fault, f64)], causes: &[Cause]) -> Sheet {
    let mut setup = rig::healthy(Fuel::Natural);
    faults.iter().for_each(|(fault, severity)| fault.apply(&mut setup, *severity));
    let mut sheet = Sheet::of(setup);
    for &cause in causes {
        let answer = Answer::LeftAsItIs;
        let finding = WrittenFinding { cause, answer, evidence: Vec::new() };
        sheet.did(Action::WriteFinding(finding)).later();
    }
    sheet
}

/// A screen that is blocked too little for anything to show it.
const HIDDEN: (Fault, f64) = (Fault::BlockedInletScreen, 0.2);
const PLUGGED: (Fault, f64) = (Fault::PluggedOrifice, 0.5);
const HOLED: (Fault, f64) = (Fault::HoledExchanger, 0.25);

/// What is rightly left shut off, for a reason that was found, need not be searched to its end: one of
/// its causes is enough, and none is not. In use, each is to be named.
#[test]
fn one_cause_is_enough_of_what_is_shut_off() {
    let unnamed = |causes: &[Cause], ending: Ending| {
        let mut sheet = sheet(&[HOLED, PLUGGED], causes);
        sheet.truth.control = ControlState::Burning(Level::High);
        sheet.did(Action::Look(Subject::Flames));
        (sheet.truth.manual_valve, sheet.truth.tag) = (HandleAngle::SHUT, Fitted::On);
        let marks = sheet.handed_over(ending).marks_with(&[ending]);
        marks.findings.iter().find(|it| it.rule == "cause-not-named").map_or(0, |it| it.times)
    };
    assert_eq!(unnamed(&[], Ending::ShutOff), 2);
    assert_eq!(unnamed(&[Cause::ExchangerHoled], Ending::ShutOff), 0);
    assert_eq!(unnamed(&[Cause::ExchangerHoled], Ending::InService), 1);
    assert_eq!(unnamed(&[Cause::ExchangerHoled, Cause::OrificePlugged], Ending::InService), 0);
}

/// A wrong word is worst on a furnace with nothing wrong that could be found, where nothing that is true
/// was written beside it.
#[test]
fn a_wrong_word_is_worst_on_a_sound_furnace() {
    let severity = |faults: &[(Fault, f64)], causes: &[Cause]| {
        let severity = sheet(faults, causes).severity("wrong-cause");
        severity.unwrap_or_else(|| panic!("{faults:?} {causes:?}"))
    };
    let (wrong, nothing) = (Cause::FilterBlocked, Cause::NothingFound);
    let worst = severity(&[], &[wrong]);
    let usual = severity(&[PLUGGED], &[wrong]);
    assert!(usual < worst, "{usual:?} {worst:?}");
    assert_eq!(severity(&[], &[nothing, wrong]), worst);
    assert_eq!(severity(&[HIDDEN], &[wrong]), worst);
    assert_eq!(severity(&[HIDDEN], &[Cause::InletScreenBlocked, wrong]), usual);
    assert_eq!(severity(&[PLUGGED], &[Cause::OrificePlugged, wrong]), usual);
    assert_eq!(sheet(&[], &[nothing]).severity("wrong-cause"), None);
}

/// To have named the cause is asked where the bench shows one, or where one that it hides was named
/// all the same.
#[test]
fn naming_is_asked_where_there_is_something_to_name() {
    let standing = |faults: &[(Fault, f64)], causes: &[Cause]| {
        let marks = sheet(faults, causes).marks_with(RUNS);
        let all = marks.essentials.iter().find(|it| it.essential == Essential::CauseNamed);
        all.unwrap().standing
    };
    assert_eq!(standing(&[], &[Cause::NothingFound]), Standing::NotDue);
    assert_eq!(standing(&[HIDDEN], &[]), Standing::NotDue);
    assert_eq!(standing(&[HIDDEN], &[Cause::InletScreenBlocked]), Standing::Met);
    assert_eq!(standing(&[PLUGGED], &[Cause::OrificePlugged]), Standing::Met);
    assert_eq!(standing(&[PLUGGED], &[]), Standing::NotMet);
}

/// That the supply is set low is near enough for what draws it down, where its screw puts it right inside
/// its nameplate: not where the draw is greater than that, not where nothing burns at all, and not for
/// what has nothing to do with the supply.
#[test]
fn set_low_is_near_enough_where_the_screw_puts_it_right() {
    let weak = |inches: f64| (Fault::UndersizedRegulator, inches * PA_PER_INWC);
    let unnamed =
        |fault: (Fault, f64), named: Cause| sheet(&[fault], &[named]).times("cause-not-named");
    let low = Cause::SupplySetLow;
    assert_eq!(unnamed(weak(1.8), low), 0);
    assert_eq!(unnamed(weak(3.0), low), 1);
    assert_eq!(unnamed(weak(1.8), Cause::ManualValveShut), 1);
    assert_eq!(unnamed((Fault::KinkedConnector, 0.97), low), 1);
    assert_eq!(unnamed(PLUGGED, low), 1);
}
