//! How essentials stand, which practice is advised, and how findings become points: a few rules at a time,
//! so that a job told by its events can be met.

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep, Topic};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::marking::Marks;
use quarterturn::marking::evaluate::Standing;
use quarterturn::parts::{Duty, Ending, Fitted, Level, OnOff, Port, Screw};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::{Essential, Family, RuleBook, Severity, shared};
use quarterturn::setup::SupplyRight;

use super::sheet::{REST, Sheet};
use crate::bench::rig;

const RIGHT: &[Ending] = &[Ending::InService];
const OFF: &[Ending] = &[Ending::ShutOff];

fn of(marks: &Marks, essential: Essential) -> Standing {
    marks.essentials.iter().find(|it| it.essential == essential).unwrap().standing
}

/// How an essential stands where no rule was broken that gates it.
fn unbroken(sheet: &Sheet, right: &[Ending], essential: Essential) -> Standing {
    let mut book = shared().unwrap();
    book.rules.retain(|it| it.essential != Some(essential));
    of(&sheet.marks_by(&book, right), essential)
}

fn with(change: impl FnOnce(&mut Sheet)) -> Sheet {
    let mut sheet = Sheet::new();
    change(&mut sheet);
    sheet
}

fn shut_off(mut sheet: Sheet) -> Sheet {
    sheet.truth.manual_valve = HandleAngle::SHUT;
    sheet.truth.tag = Fitted::On;
    sheet.handed_over(Ending::ShutOff);
    sheet
}

fn mended(sheet: &mut Sheet, repair: Repair) {
    sheet.push(EventKind::Mended { repair, outcome: Outcome::Changed, plate: None }).later();
}

/// An essential is due where the job gave occasion for it, and open until the job was handed over.
#[test]
fn essentials_are_due_where_there_was_occasion() {
    use Essential as E;
    use Standing::{Met, NotDue, Open};
    let idle = || {
        with(|sheet| {
            sheet.did(Action::PutDown).later();
        })
    };
    for essential in [
        E::AlarmResponse,
        E::Isolation,
        E::NoGasToOpenPort,
        E::PortsSealed,
        E::JointsChecked,
        E::MeterTrue,
        E::SupplyInLimits,
        E::WorkAccounted,
    ] {
        let asks = |it: &mut Sheet| it.setup.card.required.clear();
        let mut sheet = idle();
        asks(&mut sheet);
        assert_eq!(unbroken(&sheet, RIGHT, essential), NotDue, "{essential:?}");
        let mut stopped = idle();
        stopped.push(EventKind::Ended { hand_over: None, left: Box::new(stopped.truth.clone()) });
        assert_eq!(unbroken(&stopped, RIGHT, essential), Open, "{essential:?}");
    }
    for essential in
        [E::BothStagesRead, E::ConversionProven, E::SettingsInPlate, E::Restored, E::RightEnding]
    {
        assert_eq!(unbroken(&idle(), RIGHT, essential), Met, "{essential:?}");
    }
    let alarm = || {
        let mut sheet = idle();
        sheet.push(EventKind::Alarm);
        sheet
    };
    assert_eq!(unbroken(&alarm(), RIGHT, E::AlarmResponse), Met);
    for action in [
        Action::Plug { port: Port::Inlet, step: PlugStep::BreakLoose },
        Action::Adapter { port: Port::Inlet, to: Fitted::Off },
    ] {
        let mut sheet = idle();
        sheet.did(action);
        for essential in [E::Isolation, E::PortsSealed, E::JointsChecked] {
            assert_eq!(unbroken(&sheet, RIGHT, essential), Met, "{essential:?}");
        }
    }
    for (repairs, standing) in [
        (&[Repair::ReplaceFilter][..], NotDue),
        (&[Repair::ReplaceFilter, Repair::ReplaceConnector], Met),
    ] {
        let mut sheet = idle();
        repairs.iter().for_each(|&repair| mended(&mut sheet, repair));
        assert_eq!(unbroken(&sheet, RIGHT, E::JointsChecked), standing, "{repairs:?}");
        assert_eq!(unbroken(&sheet, RIGHT, E::Isolation), NotDue);
    }
    let mut read = idle();
    read.read(Port::Inlet, REST, 7.5);
    assert_eq!(unbroken(&read, RIGHT, E::MeterTrue), Met);
}

/// What is rightly left shut off is not read, set or put back; a supply of one's own is kept in its limits
/// where it is used.
#[test]
fn less_is_due_of_what_is_shut_off() {
    use Essential as E;
    use Standing::{Met, NotDue};
    let idle = || {
        with(|sheet| {
            sheet.did(Action::PutDown).later();
        })
    };
    let alarm = || {
        let mut sheet = idle();
        sheet.push(EventKind::Alarm);
        sheet
    };
    // Rightly shut off after gas in the air: nothing is read, set or put back.
    for essential in [E::BothStagesRead, E::ConversionProven, E::SettingsInPlate, E::Restored] {
        assert_eq!(unbroken(&shut_off(alarm()), OFF, essential), NotDue, "{essential:?}");
    }
    for essential in [E::BothStagesRead, E::ConversionProven, E::Restored] {
        assert_eq!(unbroken(&shut_off(idle()), OFF, essential), Met, "{essential:?}");
    }
    assert_eq!(unbroken(&alarm(), RIGHT, E::ConversionProven), Met);
    assert_eq!(unbroken(&shut_off(alarm()), RIGHT, E::Restored), Met);
    let own = || {
        let mut setup = Sheet::new().setup;
        setup.card.supply = SupplyRight::Trainee;
        Sheet::of(setup)
    };
    assert_eq!(unbroken(&own(), RIGHT, E::SupplyInLimits), Met);
    assert_eq!(unbroken(&shut_off(own()), OFF, E::SupplyInLimits), NotDue);
    // Left to burn where it must not, nobody is told to read more of it.
    assert_eq!(unbroken(&idle(), OFF, E::BothStagesRead), NotDue);
    assert_eq!(unbroken(&idle(), &[Ending::ShutOff, Ending::InService], E::BothStagesRead), Met);
}

/// An essential fails on the causes that are charged; on consequences only where there is no such cause.
#[test]
fn an_essential_fails_on_what_is_charged() {
    let mut sheet = Sheet::new();
    sheet.handed_over(Ending::InService);
    let marks = sheet.marks();
    let inlet = marks.essentials.iter().find(|it| it.essential == Essential::InletWithOthers);
    assert_eq!(inlet.unwrap().because, ["never-read-running"]);
    let mut book = shared().unwrap();
    book.rules.retain(|it| it.id != "never-read-running");
    let marks = sheet.marks_by(&book, RIGHT);
    let inlet = marks.essentials.iter().find(|it| it.essential == Essential::InletWithOthers);
    assert_eq!(inlet.unwrap().because, ["never-read-with-others"]);
    // What follows from the slip of another essential is not charged, and fails its own all the same.
    for rule in book.rules.iter_mut().filter(|it| it.id == "never-read-with-others") {
        rule.follows_from = vec!["conversion-not-proven".to_owned()];
    }
    let marks = sheet.marks_by(&book, RIGHT);
    assert!(!marks.findings.iter().any(|it| it.rule == "never-read-with-others"));
    let inlet = marks.essentials.iter().find(|it| it.essential == Essential::InletWithOthers);
    assert_eq!(inlet.unwrap().standing, Standing::NotMet);
}

/// Where a furnace must stay off, the practice that is advised fires none; where it may run as well and was
/// left to run with nothing against it, it does.
#[test]
fn practice_is_advised_by_how_it_must_be_left() {
    let job = |right: &[Ending], ending: Ending, change: fn(&mut Sheet)| {
        let mut setup = rig::healthy(quarterturn::appliance::plate::Fuel::Natural);
        setup.card.required = vec![Duty::ArrivalLooks];
        let mut sheet = Sheet::of(setup);
        change(&mut sheet);
        sheet.handed_over(ending);
        let marks = sheet.marks_with(right);
        let finding = marks.findings.iter().find(|it| it.rule == "arrival-looks-left-out");
        finding.map(|it| it.job.clone())
    };
    use Ending::{InService, ShutOff, SupplyOwnerCalled};
    let as_is = |_: &mut Sheet| {};
    let runs = Some("leaves-on-the-lawn".to_owned());
    let stays = Some("a-trace-by-the-door".to_owned());
    assert_eq!(job(&[InService], InService, as_is), runs);
    assert_eq!(job(&[InService, ShutOff], InService, as_is), runs);
    assert_eq!(job(&[ShutOff], InService, as_is), stays);
    assert_eq!(job(&[ShutOff, InService], InService, as_is), stays, "the conversion is unproven");
    let proven = |sheet: &mut Sheet| {
        use quarterturn::parts::Subject::{ConversionLabel, Orifices, Plate, SpringMark};
        for subject in [Plate, ConversionLabel, SpringMark, Orifices] {
            sheet.did(Action::Look(subject)).later();
        }
    };
    assert_eq!(job(&[ShutOff, InService], InService, proven), runs);
    assert_eq!(job(&[ShutOff, SupplyOwnerCalled], InService, proven), stays);
    let wired = |sheet: &mut Sheet| {
        use quarterturn::parts::Subject::{ConversionLabel, Orifices, Plate, SpringMark};
        for subject in [Plate, ConversionLabel, SpringMark, Orifices] {
            sheet.did(Action::Look(subject)).later();
        }
        sheet.truth.jumpers.limit = quarterturn::appliance::safety::Jumper::On;
    };
    assert_eq!(job(&[ShutOff, InService], InService, wired), stays);
}

/// Shut off on a job that may end either way, the practice fires none.
#[test]
fn shut_off_is_practised_without_firing() {
    use quarterturn::parts::Subject::{ConversionLabel, LowGasSwitch, Orifices, Plate, SpringMark};
    let mut sheet = Sheet::of(rig::healthy(quarterturn::appliance::plate::Fuel::Propane));
    for subject in [Plate, ConversionLabel, SpringMark, Orifices, LowGasSwitch] {
        sheet.did(Action::Look(subject)).later();
    }
    sheet.did(Action::FurnaceSwitch(OnOff::On));
    sheet.push(EventKind::Fired { from: None, to: Some(Level::Low) });
    let job = |sheet: &Sheet| {
        let marks = sheet.marks_with(&[Ending::ShutOff, Ending::InService]);
        marks.findings.into_iter().find(|it| it.rule == "not-aired").unwrap().job
    };
    let used = job(&sheet);
    sheet.did(Action::Tell(Topic::Unsafe));
    assert_eq!(job(&shut_off(sheet)), "a-trace-by-the-door");
    assert_eq!(used, "healthy-propane");
}

/// A book of these rules alone, each by itself.
fn book(rules: &[&str]) -> RuleBook {
    let mut book = shared().unwrap();
    book.rules.retain(|it| rules.contains(&it.id.as_str()));
    for rule in &mut book.rules {
        rule.follows_from.clear();
    }
    book
}

/// Repeats cost a point each and together no more than the first; a family loses at most its cap, and what
/// is critical counts beside it; nothing goes below the least.
#[test]
fn findings_become_points() {
    let gauges = |times: usize| {
        let mut sheet = Sheet::new();
        for _ in 0..times {
            sheet.push(EventKind::ColumnBlownOut).later();
        }
        sheet
    };
    let only = book(&["gauge-overstrained"]);
    for (times, points) in [(0, 100.0), (1, 95.0), (2, 94.0), (3, 93.0), (6, 90.0), (9, 90.0)] {
        let marks = gauges(times).marks_by(&only, RIGHT);
        assert_eq!(marks.verdict.points(), Some((points, 100.0)), "{times}");
    }
    let mut capped = book(&["gauge-overstrained"]);
    let cap = |book: &mut RuleBook, family: Family, points: f64| {
        book.scoring.caps.iter_mut().find(|it| it.family == family).unwrap().points = points;
    };
    cap(&mut capped, Family::Measuring, 5.5);
    assert_eq!(gauges(3).marks_by(&capped, RIGHT).verdict.points(), Some((94.5, 100.0)));
    assert_eq!(gauges(3).marks_by(&capped, RIGHT).verdict.lost(Family::Measuring), Some(5.5));
    assert_eq!(gauges(3).marks_by(&capped, RIGHT).verdict.lost(Family::Records), Some(0.0));
    capped.scoring.least = 97.0;
    assert_eq!(gauges(3).marks_by(&capped, RIGHT).verdict.points(), Some((97.0, 100.0)));

    let mut sheet = Sheet::new();
    sheet.did(Action::Plug { port: Port::Inlet, step: PlugStep::SpinOut }).later();
    sheet.push(EventKind::CalledOnOpenPort { port: Port::Inlet, barred: true });
    sheet.truth.furnace_switch = OnOff::Off;
    let mut critical = book(&["called-with-port-open", "opened-on-trapped-gas"]);
    cap(&mut critical, Family::Isolation, 1.0);
    let marks = sheet.marks_by(&critical, RIGHT);
    assert_eq!(marks.verdict.points(), Some((88.0, 100.0)));
    sheet.truth.manual_valve = HandleAngle::SHUT;
    sheet.did(Action::PutDown).push(EventKind::OpenedUnderGas { port: Port::Inlet, pa: 500.0 });
    let marks = sheet.marks_by(&critical, RIGHT);
    assert_eq!(marks.verdict.points(), Some((87.0, 100.0)), "{:?}", marks.findings);
    assert_eq!(marks.verdict.lost(Family::Isolation), Some(13.0));
}

/// Of several slips of a rule the worst is told: one that was not put right before one that was, then the
/// first.
#[test]
fn the_worst_slip_is_told() {
    let mut sheet = Sheet::new();
    for eighths in [1, -1, 1, 1] {
        sheet.turn(Screw::Low, eighths, Some(Level::High), Some(Port::Manifold), 1.7);
    }
    sheet.handed_over(Ending::InService);
    let found = sheet.finding("wrong-screw").unwrap();
    assert_eq!((found.times, found.severity, found.tick), (3, Severity::Major, 2_000));
    let mut caught = Sheet::new();
    for eighths in [1, -1, 2, -2] {
        caught.turn(Screw::Low, eighths, Some(Level::High), Some(Port::Manifold), 1.7);
    }
    let found = caught.handed_over(Ending::InService).finding("wrong-screw").unwrap();
    assert_eq!((found.times, found.severity, found.tick), (2, Severity::Minor, 1_000));
    assert_eq!(found.fails, None);
}

/// After the gas was changed the flue is analyzed at the full rate: after a screw of a level, a repair that
/// moves the manifold, a part of it that is new; not after one at the meter or at the filter.
#[test]
fn changed_gas_is_analyzed_at_the_full_rate() {
    use quarterturn::parts::Spot;
    use quarterturn::senses::seen::WrittenMeasured;
    let missing =
        |change: &dyn Fn(&mut Sheet), analyzed: Option<(Spot, Option<Level>)>, first: bool| {
            let mut sheet = Sheet::new();
            let wrote = |sheet: &mut Sheet| {
                if let Some((spot, firing)) = analyzed {
                    let written = WrittenMeasured { spot, tick: 0, figures: Vec::new() };
                    sheet.push(EventKind::WroteMeasured { written, firing }).later();
                    sheet.did(Action::PutDown).later();
                }
            };
            if first {
                wrote(&mut sheet);
            }
            change(&mut sheet);
            if !first {
                wrote(&mut sheet);
            }
            sheet.handed_over(Ending::InService);
            sheet.marks_by(&book(&["combustion-not-taken"]), RIGHT).findings.len()
        };
    let repair = |repair: Repair, outcome: Outcome| {
        move |sheet: &mut Sheet| {
            sheet.push(EventKind::Mended { repair, outcome, plate: None }).later();
        }
    };
    let turn = |screw: Screw| {
        move |sheet: &mut Sheet| {
            sheet.turn(screw, 1, Some(Level::High), Some(Port::Manifold), 3.5);
        }
    };
    assert_eq!(missing(&|_| (), None, false), 0);
    assert_eq!(missing(&turn(Screw::High), None, false), 1);
    assert_eq!(missing(&turn(Screw::Supply), None, false), 0);
    let full = Some((Spot::Flue, Some(Level::High)));
    assert_eq!(missing(&turn(Screw::High), full, false), 0);
    assert_eq!(missing(&turn(Screw::High), full, true), 1);
    assert_eq!(missing(&turn(Screw::High), Some((Spot::Flue, Some(Level::Low))), false), 1);
    assert_eq!(missing(&turn(Screw::High), Some((Spot::Flue, None)), false), 1);
    assert_eq!(missing(&turn(Screw::High), Some((Spot::MeterDial, Some(Level::High))), false), 1);
    use Outcome::{Changed, Nothing};
    assert_eq!(missing(&repair(Repair::ReplaceGasValve, Changed), None, false), 1);
    assert_eq!(missing(&repair(Repair::ReplaceGasValve, Nothing), None, false), 1);
    assert_eq!(missing(&repair(Repair::CleanOrifices, Changed), None, false), 1);
    assert_eq!(missing(&repair(Repair::CleanOrifices, Nothing), None, false), 0);
    assert_eq!(missing(&repair(Repair::CleanManifoldTap, Changed), None, false), 0);
    assert_eq!(missing(&repair(Repair::ReplaceFilter, Changed), None, false), 0);
    assert_eq!(missing(&repair(Repair::ReplaceConnector, Changed), None, false), 0);
}
