//! The rule file: its scale of harm, what is refused in it, and how slips become points.

use quarterturn::hands::action::Action;
use quarterturn::hands::event::{Event, EventKind};
use quarterturn::parts::{Fitted, Opening, Place, Port, Reading, Window};
use quarterturn::rules::{Family, Grade, Harm, RuleBook, Severity, shared};
use quarterturn::units::PressureUnit;

use super::{Good, found};

const TEXT: &str = include_str!("../../../assets/rules/rules.ron");

fn refused(from: &str, to: &str) -> quarterturn::rules::RuleBookError {
    assert!(TEXT.contains(from), "{from}");
    RuleBook::read(&TEXT.replacen(from, to, 1)).unwrap_err()
}

/// The shared file can be read; what is critical fails the job, what is minor does not, and no
/// family hides a rule.
#[test]
fn the_scale_agrees_with_itself() {
    let book = shared().unwrap();
    for rule in &book.rules {
        for grade in [Grade::Usual, Grade::Grave] {
            let charge = book.charge(rule, grade);
            match charge.severity {
                Severity::Critical => assert!(charge.gates, "{}", rule.id),
                Severity::Minor => assert!(!charge.gates, "{}", rule.id),
                Severity::Major => {}
            }
            assert!(!charge.gates || rule.essential.is_some(), "{}", rule.id);
        }
    }
    // No heat tonight is one class, whichever switch it was.
    for id in ["valve-switch-off", "furnace-left-off", "door-off"] {
        assert_eq!(book.rule(id).unwrap().harm, Harm::NoHeat, "{id}");
    }
    let valve = book.rule("cock-not-open").unwrap();
    assert_eq!(valve.grave.as_ref().unwrap().harm, Harm::NoHeat);
    for (id, grade) in [
        ("left-outside-band", Grade::Grave),
        ("plug-loose", Grade::Usual),
        ("boss-cracked", Grade::Usual),
        ("fault-left", Grade::Grave),
        ("wrong-conversion-fired", Grade::Usual),
        ("safety-bypassed", Grade::Usual),
    ] {
        let severity = book.charge(book.rule(id).unwrap(), grade).severity;
        assert_eq!(severity, Severity::Critical, "{id}");
    }
}

/// What contradicts itself is refused with the line of the rule, or of the scale.
#[test]
fn contradictions_are_refused_with_their_place() {
    let error = refused("standing: ", "standin: ");
    assert!(error.line == 4 && error.message.contains("standin"), "{error}");
    let line_of = |wanted: &str| TEXT.lines().position(|it| it.contains(wanted)).unwrap() + 1;
    let scale = line_of("scoring:");
    for (from, to, words) in [
        ("date: \"2026-11-30\"", "date: \"2026-13-01\"", "is no day"),
        ("gates: true, points: 30", "gates: false, points: 30", "what is critical fails"),
        ("gates: false, points: 2,", "gates: true, points: 2,", "what is minor does not"),
        ("points: 20,\n", "points: 31,\n", "costs more"),
        ("harm: Waste, severity", "harm: Slip, severity", "rows, and needs one"),
        ("(family: Records, points: 10),", "", "caps, and needs one"),
        ("share: 0.4", "share: 1.4", "outside 0 to 1"),
    ] {
        let error = refused(from, to);
        assert!(error.message.contains(words), "{to}: {error}");
        assert_eq!(error.line, scale, "{to}: {error}");
    }
    for (rule, from, to, words) in [
        ("jumper-left", "id: \"cross-thread-left\"", "id: \"jumper-left\"", "stands there twice"),
        (
            "work-not-announced",
            "id: \"work-not-announced\", version: 1, family: Records, harm: Slip",
            "id: \"work-not-announced\", version: 1, family: Records, harm: NoHeat",
            "names no essential",
        ),
        (
            "door-off",
            "id: \"door-off\", version: 3, family: Restoring, harm: NoHeat",
            "id: \"door-off\", version: 3, family: Restoring, harm: Slip",
            "names the essential",
        ),
        ("parts-on-suspicion", "cost: Some((points: 8,", "cost: Some((points: 5,", "of its class"),
        ("parts-on-suspicion", "cost: Some((points: 8,", "cost: Some((points: 25,", "in all"),
    ] {
        let error = refused(from, to);
        assert!(error.message.contains(words), "{to}: {error}");
        assert!(error.line >= line_of(&format!("id: \"{rule}\"")).min(scale + 1), "{to}: {error}");
        assert!(error.line > scale && error.column > 1, "{to}: {error}");
    }
}

/// Repeats cost a point each and all of them at most as much as the first; what was caught in time
/// costs four tenths, is less severe, and fails nothing.
#[test]
fn caught_in_time_costs_a_share() {
    let book = shared().unwrap();
    let rule = book.rule("called-with-port-open").unwrap();
    let charge = book.in_time(rule, Grade::Usual);
    assert_eq!((charge.severity, charge.gates), (Severity::Major, false));
    assert!((charge.points - 0.4 * 30.0).abs() < 1e-9, "{charge:?}");
    let slip = book.in_time(book.rule("read-unsettled").unwrap(), Grade::Usual);
    assert_eq!(slip.severity, Severity::Minor);
    // A rule that does not say what in time is knows none: a door is off or on.
    assert!(book.rule("door-off").unwrap().caught.is_none());
}

/// Two numbers that are put right after the next line is written cost nothing. A third, on another
/// line, is caught: the job is met, and the points are those of the file.
#[test]
fn a_number_put_right_is_caught() {
    let good = Good::on("healthy-natural", 1);
    let in_another_unit = |times: usize| {
        let mut wrong = 0;
        let mut done = Vec::new();
        let mut owed = None;
        for (tick, action) in &good.done {
            let Action::Write(it) = action else {
                done.push((*tick, action.clone()));
                continue;
            };
            let right = owed.take().map(|right| (*tick, right));
            if it.thousandths > 6000 && wrong < times {
                wrong += 1;
                done.push((*tick, Action::Write(Reading { unit: PressureUnit::Mbar, ..*it })));
                owed = Some(action.clone());
            } else {
                done.push((*tick, action.clone()));
            }
            done.extend(right);
        }
        good.marks(&done)
    };
    assert_eq!(in_another_unit(2).findings, []);
    let marks = in_another_unit(3);
    let book = shared().unwrap();
    let finding = found(&marks, "wrong-unit");
    let cost = book.scoring.caught.share
        * book.charge(book.rule("wrong-unit").unwrap(), Grade::Usual).points;
    assert_eq!((finding.cost, finding.fails), (Some(cost), None));
    assert_eq!(marks.verdict.points(), Some((100.0 - cost, 100.0)));
    assert_eq!(marks.verdict.lost(Family::Measuring), Some(cost));
}

/// Each repeat costs a point, and all of them at most as much as the first.
#[test]
fn repeats_cost_at_most_the_first_again() {
    let good = Good::on("healthy-natural", 1);
    let cooler = Action::Setpoint(good.setup.house.setpoint_half_f - 1);
    let window = |window| Action::Window { window, to: Opening::Open };
    let room = [Action::Go(Place::PlantRoom), window(Window::PlantRoom), Action::Tag(Fitted::On)];
    let hall = [Action::Go(Place::Hall), window(Window::Hall)];
    let many = [std::slice::from_ref(&cooler), &room[..], &hall].concat();
    for (more, times, cost) in [(vec![cooler], 1, 2.0), (many, 4, 4.0)] {
        let marks = good.with_before(good.end(), &more);
        let finding = found(&marks, "controls-not-restored");
        assert_eq!((finding.times, finding.cost), (times, Some(cost)));
    }
}

/// A family's cap never hides what is critical, though it was caught in time.
#[test]
fn no_cap_hides_what_is_critical() {
    let good = Good::on("healthy-natural", 1);
    let mut observer = good.observed(&good.done);
    let events = &mut observer.ledger.events;
    let opened = events.iter().position(|event| {
        matches!(&event.what, EventKind::Did { action: Action::Plug { .. }, .. })
    });
    let opened = opened.unwrap();
    let what = EventKind::CalledOnOpenPort { port: Port::Inlet, barred: true };
    events.insert(opened + 1, Event { tick: events[opened].tick, what });
    let mut book = shared().unwrap();
    let isolation = book.scoring.caps.iter_mut().find(|cap| cap.family == Family::Isolation);
    isolation.unwrap().points = 1.0;
    let marks = good.marked(&observer, &book);
    assert_eq!(found(&marks, "called-with-port-open").severity, Severity::Major);
    assert_eq!(marks.verdict.points(), Some((88.0, 100.0)));
    assert_eq!(marks.verdict.lost(Family::Isolation), Some(12.0));
}
