//! The manometer stays where its hose is: what is seen of it and done with it from elsewhere.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::{
    Gauge, HandValve, LowSide, OnOff, Opening, Place, Port, Push, Tool, Window,
};
use quarterturn::senses::meter_history::Spell;
use quarterturn::senses::seen::MeterInView;
use quarterturn::units::PressureUnit;

use super::Hand;
use crate::bench::rig;
use crate::faults::hand::{hook_up, shown};

const ELSEWHERE: [Place; 3] = [Place::Hall, Place::Yard, Place::Away];

/// The hose on a port, gas on it, nothing burning.
fn hooked_up(port: Port) -> Hand {
    let mut setup = rig::healthy(Fuel::Natural);
    setup.found.thermostat_mode = OnOff::Off;
    let mut hand = Hand { bench: Bench::new(setup) };
    hook_up(&mut hand.bench, port);
    hand.wait(20);
    hand
}

/// Spells told since the last call, each as it was told last.
fn spells(hand: &mut Hand) -> Vec<Spell> {
    let mut spells: Vec<Spell> = Vec::new();
    for event in hand.bench.take_events() {
        let EventKind::Showed(spell) = event.what else { continue };
        spells.retain(|one| one.shown.since != spell.shown.since);
        spells.push(spell);
    }
    spells
}

/// With its hose on a port it is seen at the furnace alone, whatever instrument the hose goes to; its
/// number is there again on coming back.
#[test]
fn it_is_seen_where_its_hose_is() {
    for port in [Port::Inlet, Port::Manifold] {
        let mut hand = hooked_up(port);
        let before = shown(&hand.bench);
        for place in ELSEWHERE {
            hand.go(place);
            let seen = hand.bench.seen();
            assert_eq!(seen.meter, MeterInView::HangsAtFurnace, "{place:?}");
            assert_eq!((seen.pressure_shown(), seen.hose(), seen.display()), (None, None, None));
            hand.go(Place::PlantRoom);
            assert!((shown(&hand.bench) - before).abs() < 0.05, "{place:?}");
        }
    }
    for gauge in [Gauge::WaterColumn, Gauge::SpringGauge] {
        let mut hand = Hand::natural();
        hand.act(Action::Gauge(gauge));
        hook_up_again(&mut hand);
        assert!(hand.bench.seen().pressure_shown().is_some());
        hand.go(Place::Hall);
        assert_eq!(hand.bench.seen().pressure_shown(), None, "{gauge:?}");
    }
}

fn hook_up_again(hand: &mut Hand) {
    hand.go(Place::Hall);
    hook_up(&mut hand.bench, Port::Inlet);
}

/// With no hose end on anything it goes along; the low side on the burner box holds it too.
#[test]
fn it_goes_along_until_a_hose_holds_it() {
    let mut hand = Hand::natural();
    hand.act(Action::MeterPower(OnOff::On));
    for place in ELSEWHERE {
        hand.go(place);
        assert!(hand.bench.seen().meter().is_some(), "{place:?}");
        hand.act(Action::MeterZero);
    }
    hand.go(Place::GasValve);
    hand.act(Action::MeterLowSide(LowSide::BurnerBox));
    hand.act(Action::Take(Tool::Hose));
    hand.go(Place::Hall);
    assert_eq!(hand.bench.seen().meter, MeterInView::HangsAtFurnace);
    assert_eq!(hand.bench.seen().hand, None, "the hose's end stays with it");
    assert_eq!(hand.refused(Action::Take(Tool::Hose)), Refusal::MeterAtFurnace);
    hand.go(Place::GasValve);
    hand.act(Action::MeterLowSide(LowSide::Air));
    hand.go(Place::Hall);
    assert!(hand.bench.seen().meter().is_some());
}

/// From elsewhere its keys, hose and low side are refused for where it hangs; back at it they work.
#[test]
fn nothing_is_done_with_it_from_elsewhere() {
    let mut hand = hooked_up(Port::Inlet);
    let actions = [
        Action::MeterZero,
        Action::MeterUnit(PressureUnit::KPa),
        Action::MeterPower(OnOff::Off),
        Action::MeterLowSide(LowSide::BurnerBox),
        Action::HoseOn { port: Port::Inlet, push: Push::Halfway },
        Action::HoseOff,
        Action::Take(Tool::Hose),
        Action::Gauge(Gauge::WaterColumn),
        Action::FillColumn,
    ];
    for place in ELSEWHERE {
        hand.go(place);
        for action in &actions {
            assert_eq!(hand.refused(action.clone()), Refusal::MeterAtFurnace, "{action:?}");
        }
    }
    hand.go(Place::GasValve);
    for action in &actions[..5] {
        hand.act(action.clone());
    }
}

/// A state that is made and unmade from the hall without a look at the furnace leaves no number; the
/// same with a look in between does.
#[test]
fn what_nobody_saw_was_not_shown() {
    let range =
        |to| Action::OtherAppliance { appliance: quarterturn::parts::OtherAppliance::Range, to };
    for looks in [false, true] {
        let mut hand = hooked_up(Port::Inlet);
        hand.go(Place::Hall);
        spells(&mut hand);
        hand.act(range(OnOff::On));
        hand.wait(20);
        if looks {
            hand.go(Place::PlantRoom);
            hand.wait(2);
            hand.go(Place::Hall);
            hand.wait(1);
        }
        hand.act(range(OnOff::Off));
        hand.wait(2);
        let told = spells(&mut hand);
        let burning: Vec<_> = told.iter().filter(|it| it.demand.burning == 1).collect();
        assert_eq!(!burning.is_empty(), looks, "{told:?}");
        // It had come to rest while nobody looked.
        assert!(burning.iter().all(|it| it.stood.is_some()));
    }
}

/// A line that is shut in goes on being watched over an absence, from the first number to the last.
#[test]
fn a_watch_goes_on_over_an_absence() {
    let mut hand = hooked_up(Port::Inlet);
    hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
    hand.bench.take_events();
    hand.wait(10);
    hand.go(Place::Hall);
    hand.act(Action::Window { window: Window::Hall, to: Opening::Open });
    hand.wait(60);
    hand.go(Place::GasValve);
    hand.wait(1);
    hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
    let told = spells(&mut hand);
    let last = told.last().unwrap().shown;
    assert!(last.until - last.since >= 70 * 50, "{last:?}");
}
