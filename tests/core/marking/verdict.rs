//! Met or not yet met stands before the points, and points stand with *met* alone.

use quarterturn::hands::action::Action;
use quarterturn::marking::debrief::{Job, debrief};
use quarterturn::marking::evaluate::Standing;
use quarterturn::marking::trace::Trace;
use quarterturn::marking::{Brief, Ledger, Marks, Verdict};
use quarterturn::parts::{Ending, OnOff, Place, Subject, Window};
use quarterturn::rules::{Essential, Severity};

use super::{Good, found, rules};

/// The debrief of these marks as text.
fn text(ledger: &Ledger, marks: Marks) -> String {
    let brief = Brief { right_endings: vec![Ending::InService] };
    let job = Job { brief: &brief, id: Some("healthy-natural"), note: None, night: None };
    debrief(ledger, marks, Trace::default(), job).text()
}

/// Good work is met with every point; its text begins with the verdict.
#[test]
fn good_work_is_met() {
    let good = Good::on("healthy-natural", 1);
    let marks = good.marks(&good.done);
    assert!(marks.verdict.is_met(), "{:?}", rules(&marks));
    assert_eq!(marks.verdict.points(), Some((100.0, 100.0)));
    let ledger = Ledger::new(good.setup.clone());
    let text = text(&ledger, marks);
    let first = text.lines().next().unwrap();
    assert!(first.contains(": met. "), "{first}");
    assert!(text.contains("100 of 100 points"), "{text}");
}

/// With an essential missed, the first line says which, and no points stand anywhere.
#[test]
fn no_points_beside_a_missing_essential() {
    let good = Good::on("healthy-natural", 1);
    let marks = good.without(|_, action| {
        matches!(action, Action::Write(it) if it.stage.is_at_full_rate()
            && it.port == quarterturn::parts::Port::Manifold)
    });
    let missing = vec![Essential::BothStagesRead];
    assert_eq!(marks.verdict, Verdict::NotYetMet { missing });
    assert_eq!(marks.verdict.points(), None);
    assert!(marks.findings.iter().all(|it| it.cost.is_none()));
    assert_eq!(found(&marks, "stage-never-read").fails, Some(Essential::BothStagesRead));
    let json = serde_json::to_value(&marks).unwrap();
    assert_eq!(json["verdict"], "not-yet-met");
    assert!(json.get("points").is_none() && json.get("lost").is_none(), "{json}");
    let text = text(&Ledger::new(good.setup.clone()), marks);
    let first = text.lines().next().unwrap();
    assert!(first.contains("not yet met; missing: Both stages read while burning"), "{first}");
    assert!(!text.contains("points") && !text.contains('−'), "{text}");
}

/// A job that was not handed over has no points, and is not charged with what it had not come to;
/// what was done wrongly by then stands.
#[test]
fn a_job_that_was_not_handed_over_has_no_points() {
    let good = Good::on("healthy-natural", 1);
    let marks = good.marks(&good.done[..3]);
    assert_eq!(marks.verdict, Verdict::NotHandedOver { missing: Vec::new() });
    assert_eq!(rules(&marks), Vec::<&str>::new());
    let open =
        |essential| marks.essentials.iter().find(|it| it.essential == essential).unwrap().standing;
    assert_eq!(open(Essential::BothStagesRead), Standing::Open);
    let until = good.first(|action| matches!(action, Action::FurnaceSwitch(OnOff::Off)));
    let mut cut: Vec<_> = good.done[..good.end()].to_vec();
    cut.remove(until);
    let marks = good.marks(&cut);
    let missing = vec![Essential::Isolation];
    assert_eq!(marks.verdict, Verdict::NotHandedOver { missing }, "{:?}", rules(&marks));
}

/// Half a degree on the thermostat and an open window fail no job; they cost a little.
#[test]
fn a_small_matter_fails_no_job() {
    let good = Good::on("healthy-natural", 1);
    let found_half_f = good.setup.house.setpoint_half_f;
    let half_degree = [Action::Setpoint(found_half_f - 1)];
    let window = [
        Action::Go(Place::Yard),
        Action::Go(Place::PlantRoom),
        Action::Window { window: Window::PlantRoom, to: quarterturn::parts::Opening::Open },
        Action::Go(Place::Hall),
    ];
    for more in [&half_degree[..], &window] {
        let marks = good.with_before(good.end(), more);
        assert_eq!(rules(&marks), ["controls-not-restored"]);
        let finding = found(&marks, "controls-not-restored");
        assert_eq!((finding.severity, finding.fails), (Severity::Minor, None));
        assert_eq!(marks.verdict.points(), Some((98.0, 100.0)));
    }
}

/// A furnace that must not burn, left burning: what is said is that, and not to fire it for readings.
#[test]
fn nobody_is_told_to_fire_what_must_not_burn() {
    let good = Good::on("moved-with-the-house", 1);
    let endings = vec![Ending::ShutOff];
    let good = Good { endings, ..good };
    let looks = |action: &Action| matches!(action, Action::Look(_) | Action::Go(_));
    let mut blind: Vec<_> = good.done.iter().filter(|(_, it)| looks(it)).cloned().collect();
    let end = blind.last().unwrap().0;
    let leave =
        quarterturn::hands::action::HandOver { ending: Ending::InService, not_done: Vec::new() };
    blind.push((end + 1, Action::HandOver(leave)));
    let marks = good.marks(&blind);
    assert_eq!(found(&marks, "wrong-ending").severity, Severity::Critical);
    for unread in ["stage-never-read", "never-read-running", "never-read-with-others"] {
        assert!(!rules(&marks).contains(&unread), "{:?}", rules(&marks));
    }
    assert!(blind.iter().any(|(_, action)| *action == Action::Look(Subject::Plate)));
}
