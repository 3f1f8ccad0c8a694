//! Work that was really measured need not be named as not done.

use quarterturn::appliance::plate::Fuel;
use quarterturn::hands::action::{Action, HandOver, StartStop};
use quarterturn::marking::{Brief, Observer};
use quarterturn::parts::{Duty, Ending, Fitted, Level, Place, Spot};

use super::Hand;
use crate::bench::rig;

/// Measures on high, or before that on low too, hands over naming `not_done`, and says what the rule
/// finds missing.
fn unsaid(stages: &[Option<Level>], spots: &[Spot], not_done: Vec<Duty>) -> Option<String> {
    let mut hand = Hand::at(rig::healthy(Fuel::Natural));
    let mut observer = Observer::new(&hand.bench);
    for &stage in stages {
        if stage == Some(Level::High) && stages.len() > 1 {
            hand.go(Place::PlantRoom);
            hand.act(Action::StageJumper(Fitted::On));
            hand.wait(60);
        } else {
            hand.fire(stage);
        }
        for &spot in spots {
            hand.go(spot.places()[0]);
            hand.hold(spot, 60);
            if spot == Spot::MeterDial {
                hand.act(Action::Stopwatch(StartStop::Start));
                hand.wait(120);
                hand.act(Action::Stopwatch(StartStop::Stop));
            }
            hand.act(Action::WriteMeasured(spot));
        }
        assert_eq!(hand.bench.truth().firing, stage);
    }
    hand.go(Place::Hall);
    hand.act(Action::HandOver(HandOver { ending: Ending::InService, not_done }));
    let events = hand.bench.take_events();
    observer.tick(&hand.bench, events);
    let book = quarterturn::rules::shared().unwrap();
    let brief = Brief { right_endings: vec![Ending::InService] };
    let marks = observer.marks(&book, &brief);
    marks.findings.into_iter().find(|it| it.rule == "not-done-unsaid").map(|it| it.seen)
}

const ALL: [Spot; 4] = [Spot::ReturnAir, Spot::SupplyAir, Spot::Flue, Spot::MeterDial];

/// Everything measured on both stages: nothing need be named. Nothing measured: all three.
#[test]
fn measured_work_need_not_be_named() {
    assert_eq!(unsaid(&[Some(Level::Low), Some(Level::High)], &ALL, vec![]), None);
    let nothing = unsaid(&[Some(Level::High)], &[], vec![]).unwrap();
    for work in ["combustion", "temperature rise", "gas rate"] {
        assert!(nothing.contains(work), "{nothing}");
    }
}

/// The rise on high alone is not the rise on both stages; named as not done, it is not found.
#[test]
fn a_rise_on_one_stage_is_not_done() {
    let one = unsaid(&[Some(Level::High)], &ALL, vec![]).unwrap();
    assert_eq!(one, "not named: temperature rise");
    assert_eq!(unsaid(&[Some(Level::High)], &ALL, vec![Duty::TemperatureRise]), None);
}

/// The flue analysed on low alone does not stand for combustion on high.
#[test]
fn analysed_on_low_alone_is_not_done() {
    let low = unsaid(&[Some(Level::Low)], &[Spot::Flue], vec![Duty::GasRate]).unwrap();
    assert!(low.contains("combustion") && low.contains("temperature rise"), "{low}");
}
