//! Springs and burners as they are left: how far over the plate, turned the wrong way, the wrong
//! screw, the flue.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::hands::event::{Event, EventKind};
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::marking::{Brief, Marks, Observer};
use quarterturn::parts::{Ending, Fitted, Level, Place, Screw, Spot, Tool};
use quarterturn::physics::fluid::Gas;
use quarterturn::rules::{Essential, Severity, shared};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::WrittenMeasured;
use quarterturn::setup::{Setup, SupplyKind};
use quarterturn::units::PA_PER_INWC;

use super::sheet::Sheet;
use super::{Good, found, handed_over, rules};
use crate::bench::rig;
use crate::faults::hand::{act, fire, set, wait};

const IN_SERVICE: &[Ending] = &[Ending::InService];

/// Left above its band, a stage is wrong; left more than 10 % over the plate's input, it is unsafe.
/// The rate goes with the square root of the pressure: 4.2 in. w.c. for 3.5 are 9.5 % more, 4.3 are
/// 10.8 %.
#[test]
fn over_firing_is_critical_above_a_tenth() {
    for (inwc, severity) in [(4.2, Severity::Major), (4.3, Severity::Critical)] {
        let mut setup = healthy_for(Fault::HighStageSetHigh, Fuel::Natural).unwrap();
        Fault::HighStageSetHigh.apply(&mut setup, (inwc - 3.5) * PA_PER_INWC);
        let marks = handed_over(Bench::new(setup), Ending::InService, IN_SERVICE);
        let finding = found(&marks, "left-outside-band");
        assert_eq!(finding.severity, severity, "{inwc}");
        assert_eq!(finding.fails, Some(Essential::SettingsInPlate));
        assert!(!marks.verdict.is_met());
    }
    // As far below the plate it starves nobody: it is wrong, and no more.
    let mut setup = healthy_for(Fault::HighStageSetLow, Fuel::Natural).unwrap();
    Fault::HighStageSetLow.apply(&mut setup, 0.8 * PA_PER_INWC);
    let marks = handed_over(Bench::new(setup), Ending::InService, IN_SERVICE);
    assert_eq!(found(&marks, "left-outside-band").severity, Severity::Major);
}

/// The low screw turned up while high burns: a slip of order where it is turned back, and critical
/// where low is left far above its plate.
#[test]
fn the_wrong_screw_is_critical_where_it_is_left_so() {
    for (back, severity) in [(true, Severity::Major), (false, Severity::Critical)] {
        let setup = healthy_for(Fault::HighStageSetHigh, Fuel::Natural).unwrap();
        let mut bench = Bench::new(setup);
        assert!(fire(&mut bench, Some(Level::High)));
        let found_pa = bench.truth().set_pa[Level::Low];
        set(&mut bench, Screw::Low, found_pa + 1.0 * PA_PER_INWC);
        if back {
            set(&mut bench, Screw::Low, found_pa - 1.0);
        }
        assert_eq!(bench.truth().firing, Some(Level::High));
        let marks = handed_over(bench, Ending::InService, IN_SERVICE);
        let finding = found(&marks, "wrong-screw");
        assert_eq!(finding.severity, severity, "{:?}", rules(&marks));
        assert_eq!(finding.fails.is_some(), !back);
    }
}

/// A low stage that is set too low, turned further out: from three eighths on it is the wrong way.
/// There and back by a quarter, or straight up, it is not.
#[test]
fn the_wrong_way_counts_from_three_eighths() {
    for (turns, counts) in [
        (&[-1, -1, -1][..], true),
        (&[-3], true),
        (&[-2, 4], false),
        (&[2, 1], false),
        (&[3, -3, -3], true),
    ] {
        let mut setup = healthy_for(Fault::LowStageSetLow, Fuel::Natural).unwrap();
        Fault::LowStageSetLow.apply(&mut setup, 0.4 * PA_PER_INWC);
        let mut bench = Bench::new(setup);
        assert!(fire(&mut bench, Some(Level::Low)));
        act(&mut bench, Action::Go(Place::PlantRoom));
        let burner = quarterturn::parts::Door::Burner;
        act(&mut bench, Action::Door { door: burner, to: Fitted::Off });
        act(&mut bench, Action::Go(Place::GasValve));
        act(&mut bench, Action::Take(Tool::SlottedDriver));
        act(&mut bench, Action::Cap { screw: Screw::Low, to: Fitted::Off });
        for &eighths in turns {
            act(&mut bench, Action::Turn { screw: Screw::Low, eighths });
            wait(&mut bench, 5);
        }
        act(&mut bench, Action::PutDown);
        let marks = handed_over(bench, Ending::InService, IN_SERVICE);
        assert_eq!(rules(&marks).contains(&"wrong-way"), counts, "{turns:?}");
    }
}

/// After a screw was turned the flue is analyzed; naming it at the end does not stand for it. Where
/// nothing was changed, to name it is enough, unless the card asks for it: then it is charged once,
/// as work that was left out.
#[test]
fn changed_burners_are_analyzed() {
    let writes = |action: &Action| *action == Action::WriteMeasured(Spot::Flue);
    let good = Good::on("a-roar-at-night", 1);
    assert_eq!(rules(&good.marks(&good.done)), Vec::<&str>::new());
    let named = |marks: &[_]| -> Vec<(u64, Action)> {
        let name = |action: &Action| match action {
            Action::HandOver(said) => {
                let mut said = said.clone();
                said.not_done.push(quarterturn::parts::Duty::Combustion);
                Action::HandOver(said)
            }
            other => other.clone(),
        };
        let kept = |(_, action): &&(u64, Action)| !writes(action);
        marks.iter().filter(kept).map(|(tick, action)| (*tick, name(action))).collect()
    };
    let healthy = Good::on("healthy-natural", 1);
    for (mut good, unasked) in [(good, vec!["combustion-not-taken"]), (healthy, Vec::new())] {
        assert_eq!(rules(&good.marks(&named(&good.done))), ["combustion-left-out"]);
        good.setup.card.required.clear();
        assert_eq!(rules(&good.marks(&named(&good.done))), unasked);
    }
}

/// What burns when the job is left is held against the plate and against the limit of carbon monoxide
/// (400 ppm air-free, ANSI Z21.47, from memory), whatever is to blame; not what burned on arrival and
/// was left shut off.
#[test]
fn what_is_left_burning_is_held_against_its_limits() {
    for (wider, rule) in [(1.03, None), (1.08, Some("over-fired-left"))] {
        let mut setup = rig::healthy(Fuel::Natural);
        for hole_m in &mut setup.furnace.orifices_m {
            *hole_m *= wider;
        }
        let marks = burned_and_left(setup, Ending::InService);
        let found = marks.findings.iter().find(|it| it.rule == "over-fired-left");
        assert_eq!(found.map(|it| it.rule.as_str()), rule, "{wider}");
        assert!(found.is_none_or(|it| it.severity == Severity::Critical));
    }
    // The debrief holds the trainee's own clock beside it: half a cubic foot in 19.7 s at 1,030 Btu/ft³ is
    // 94,100 Btu/h, 118 % of 80,000.
    for (turn_s, said) in [(19.7, true), (23.2, false)] {
        let mut setup = rig::healthy(Fuel::Natural);
        setup.furnace.orifices_m.iter_mut().for_each(|hole_m| *hole_m *= 1.08);
        let mut bench = Bench::new(setup);
        assert!(fire(&mut bench, Some(Level::High)));
        wait(&mut bench, 120);
        act(&mut bench, Action::Go(Place::PlantRoom));
        let marks = clocked(bench, turn_s);
        let seen = marks.findings.iter().find(|it| it.rule == "over-fired-left").unwrap();
        assert_eq!(seen.seen.contains("19.7 s a turn, makes 118 % of it"), said, "{}", seen.seen);
    }
    // Gas that is sold with a tenth more heat than usual (1,150 Btu/ft³, a range that handbooks give)
    // is not too much gas.
    let mut rich = rig::healthy(Fuel::Natural);
    rich.gas.heating_value_j_m3 *= 1150.0 / 1030.0;
    let marks = burned_and_left(rich, Ending::InService);
    assert!(!rules(&marks).contains(&"over-fired-left"));
    let holed = |share: f64| {
        let mut setup = rig::healthy(Fuel::Natural);
        setup.condition.burners.exchanger_hole = share;
        setup
    };
    for (share, ending, counts) in [
        (0.0, Ending::InService, false),
        (0.4, Ending::InService, true),
        (0.4, Ending::ShutOff, false),
    ] {
        let marks = burned_and_left(holed(share), ending);
        assert_eq!(rules(&marks).contains(&"carbon-monoxide-left"), counts, "{share} {ending:?}");
    }
}

/// The marks of a furnace that burned on high for a while, and was left so.
/// Left in use, the dial written at the full rate with so many seconds of one turn.
fn clocked(mut bench: Bench, turn_s: f64) -> Marks {
    let mut observer = Observer::new(&bench);
    let (ending, not_done) = (Ending::InService, Vec::new());
    bench.apply(&Action::HandOver(HandOver { ending, not_done })).unwrap();
    let events = bench.take_events();
    observer.tick(&bench, events);
    let figures = vec![Figure::new(Quantity::SecondsPerTurn, turn_s)];
    let written = WrittenMeasured { spot: Spot::MeterDial, tick: 0, figures };
    let what = EventKind::WroteMeasured { written, firing: Some(Level::High) };
    let last = observer.ledger.events.len() - 1;
    let tick = observer.ledger.events[last].tick;
    observer.ledger.events.insert(last, Event { tick, what });
    observer.marks(&shared().unwrap(), &Brief { right_endings: IN_SERVICE.to_vec() })
}

fn burned_and_left(setup: Setup, ending: Ending) -> Marks {
    let mut bench = Bench::new(setup);
    assert!(fire(&mut bench, Some(Level::High)));
    wait(&mut bench, 120);
    act(&mut bench, Action::Go(Place::PlantRoom));
    handed_over(bench, ending, &[Ending::InService, Ending::ShutOff])
}

/// What the trainee timed at the dial is told beside what burned, where it makes more than a tenth over
/// the plate by itself, timed at the full rate.
#[test]
fn the_trainees_own_dial_is_told_beside_what_burned() {
    let told = |share: f64, spot: Spot, firing: Level| {
        let mut sheet = Sheet::new();
        let plate_w = sheet.setup.furnace.plate.input[Level::High].si();
        let SupplyKind::Meter { dial_m3, .. } = sheet.setup.supply.kind else { panic!("a meter") };
        let heat_j_m3 = Gas::natural().heating_value_j_m3;
        let turn_s = heat_j_m3 * dial_m3 / (share * plate_w);
        sheet.push(EventKind::Fired { from: None, to: Some(Level::High) }).pass(4_000);
        let figures = vec![Figure::new(Quantity::SecondsPerTurn, turn_s)];
        let written = WrittenMeasured { spot, tick: 0, figures };
        sheet.push(EventKind::WroteMeasured { written, firing: Some(firing) });
        (sheet.truth.firing, sheet.truth.input_w) = (Some(Level::High), 1.2 * plate_w);
        let seen = sheet.did(Action::PutDown).finding("over-fired-left").unwrap().seen;
        seen.contains("the meter dial that was written")
    };
    assert!(told(1.105, Spot::MeterDial, Level::High));
    assert!(!told(1.095, Spot::MeterDial, Level::High));
    assert!(!told(1.2, Spot::MeterDial, Level::Low));
    assert!(!told(1.2, Spot::Flue, Level::High));
}
