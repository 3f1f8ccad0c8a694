//! A furnace with one firing level has no second of anything: nothing of it can be touched, read or
//! heard.

use quarterturn::bench::Bench;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::{Fitted, Level, Place, Screw, Spot, Tool};
use quarterturn::scenario::{builtin, load};
use quarterturn::senses::seen::Sound;
use quarterturn::setup::Setup;

use super::Hand;

fn single_stage() -> Setup {
    let job = builtin::LADDER.iter().find(|job| job.id == "one-screw-one-number").unwrap();
    load(job.text).unwrap().draw(1)
}

/// Screws, caps, jumper, pressure switch and coil of a second stage are refused as not fitted.
#[test]
fn nothing_of_a_second_stage_is_there() {
    let mut hand = Hand::at(single_stage());
    assert_eq!(hand.refused(Action::StageJumper(Fitted::On)), Refusal::NotFitted);
    for repair in [Repair::ReplaceFullSwitch, Repair::BypassFullSwitch] {
        assert_eq!(hand.refused(Action::Mend(repair)), Refusal::NotFitted, "{repair:?}");
    }
    hand.act(Action::Take(Tool::ElectricalMeter));
    for spot in [Spot::W2ToC, Spot::SecondSwitch, Spot::SecondCoil, Spot::SecondCoilOhms] {
        assert_eq!(hand.refused(Action::Measure(spot)), Refusal::NotFitted, "{spot:?}");
    }
    hand.act(Action::PutDown);
    hand.go(Place::GasValve);
    assert_eq!(hand.refused(Action::Mend(Repair::ReplaceSecondCoil)), Refusal::NotFitted);
    hand.act(Action::Take(Tool::SlottedDriver));
    for screw in [Screw::Low, Screw::High] {
        let cap = Action::Cap { screw, to: Fitted::Off };
        assert_eq!(hand.refused(cap), Refusal::NotFitted, "{screw:?}");
        assert_eq!(hand.refused(Action::Turn { screw, eighths: 1 }), Refusal::NotFitted);
    }
    hand.act(Action::Cap { screw: Screw::Only, to: Fitted::Off });
}

/// Over a whole start it is only ever at rest or at its one level, and its inducer has one speed.
#[test]
fn it_fires_at_one_level_and_sounds_so() {
    let mut bench = Bench::new(single_stage());
    bench.apply(&Action::Go(Place::PlantRoom)).unwrap();
    let mut heard = Vec::new();
    for _ in 0..300 {
        for _ in 0..50 {
            bench.step();
        }
        let firing = bench.truth().firing;
        assert!(matches!(firing, None | Some(Level::Only)), "{firing:?}");
        heard.extend(bench.seen().sounds);
    }
    assert!(heard.contains(&Sound::Inducer) && heard.contains(&Sound::Burners(Level::Only)));
    assert!(!heard.contains(&Sound::InducerFast));
}
