//! The manometer's joint and zero, gauges that got too much, the timed dial, the temperature rise.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::{Action, PlugStep, StartStop};
use quarterturn::hands::event::{Event, EventKind};
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::marking::{Brief, Marks, Observer};
use quarterturn::parts::{
    Door, Ending, Fitted, Joint, Level, OnOff, OtherAppliance, Place, Port, Push, Screw, Spot,
    Subject,
};
use quarterturn::rules::shared;
use quarterturn::senses::meter_history::Spell;
use quarterturn::senses::seen::WrittenMeasured;
use quarterturn::units::PA_PER_INWC;

use super::sheet::{HIGH, Sheet, draw, spell};
use super::{Good, found, rules};
use crate::bench::rig;
use crate::instruments::{Hand, faulty};

fn is_work_at(action: &Action, joint: Joint) -> bool {
    matches!(action, Action::LeakFluid(at) | Action::Wipe(at) if *at == joint)
        || matches!(action, Action::WriteJoint { joint: at, .. } if *at == joint)
}

/// The joint with the manometer is soaped: at the inlet port before the burners are lit, at the
/// manifold port in the first minute of firing. Left out, or done later, it counts.
#[test]
fn the_manometers_joint_is_checked() {
    let good = Good::on("healthy-natural", 1);
    for port in [Port::Inlet, Port::Manifold] {
        let joint = port.joint();
        let closed =
            good.first(|action| *action == Action::Plug { port, step: PlugStep::StartByHand });
        let open = |i: usize, action: &Action| i < closed && is_work_at(action, joint);
        let marks = good.without(open);
        assert_eq!(rules(&marks), ["test-joint-unchecked"], "{port:?}");
        assert_eq!(marks.verdict.points(), Some((95.0, 100.0)));
        // The same work, done at the end of the readings.
        let work: Vec<_> =
            good.done.iter().enumerate().filter(|(i, (_, it))| open(*i, it)).collect();
        let write = good.last(|action| matches!(action, Action::Write(it) if it.port == port));
        let late = good.done[write].0 + 50;
        let first = work[0].1.0;
        let mut done: Vec<_> = good
            .done
            .iter()
            .enumerate()
            .filter(|(i, (_, it))| !open(*i, it))
            .map(|(_, at)| at.clone())
            .collect();
        done.extend(work.iter().map(|(_, (tick, it))| (late + tick - first, it.clone())));
        done.sort_by_key(|(tick, _)| *tick);
        assert!(rules(&good.marks(&done)).contains(&"test-joint-unchecked"), "{port:?}");
    }
}

/// The manometer is zeroed at each port.
#[test]
fn the_zero_is_set_at_each_port() {
    let good = Good::on("healthy-natural", 1);
    let zero = good.last(|action| *action == Action::MeterZero);
    let marks = good.without(|i, _| i == zero);
    assert_eq!(rules(&marks), ["not-zeroed-anew"]);
    // Off by more than it may be, it is worse, and is charged alone.
    let both_ports = |error: f64| {
        let mut sheet = Sheet::new();
        for port in [Port::Inlet, Port::Manifold] {
            sheet.did(Action::HoseOn { port, push: Push::Fully });
            let shown = 3.5 + error;
            let off =
                Spell { error_pa: error * PA_PER_INWC, ..spell(port, draw(HIGH), shown, shown) };
            sheet.showed(off, Some((shown, shown))).write(port, HIGH, shown).later();
            sheet.did(Action::HoseOff).later();
        }
        ["not-zeroed-anew", "meter-off"].map(|it| sheet.times(it))
    };
    assert_eq!(both_ports(0.02), [1, 0]);
    assert_eq!(both_ports(0.13), [0, 2]);
}

/// Ten minutes out of the house with the hose on under gas count; nine do not, nor behind a shut
/// valve.
#[test]
fn a_hose_under_gas_is_not_left_alone() {
    for (minutes, shut, counts) in [(11, false, true), (9, false, false), (11, true, false)] {
        let mut hand = Hand::natural();
        crate::faults::hand::open(&mut hand.bench, Port::Inlet);
        // The gas behind the open port is shut off by whoever opened it with more care than here.
        for action in [
            Action::Take(quarterturn::parts::Tool::Adapter),
            Action::Adapter { port: Port::Inlet, to: Fitted::On },
            Action::Take(quarterturn::parts::Tool::Hose),
            Action::HoseOn { port: Port::Inlet, push: quarterturn::parts::Push::Fully },
        ] {
            hand.act(action);
        }
        hand.go(Place::PlantRoom);
        if shut {
            let hand_valve = quarterturn::parts::HandValve::Furnace;
            hand.act(Action::HandValve { hand_valve, degrees: 0 });
        }
        hand.go(Place::Yard);
        hand.wait(minutes * 60);
        hand.go(Place::Hall);
        let marks = marks(&mut hand);
        assert_eq!(rules(&marks).contains(&"left-unattended"), counts, "{minutes} {shut}");
    }
}

fn marks(hand: &mut Hand) -> Marks {
    let mut observer = Observer::new(&hand.bench);
    let events = hand.bench.take_events();
    observer.tick(&hand.bench, events);
    observer.marks(&shared().unwrap(), &Brief { right_endings: vec![Ending::InService] })
}

/// Water blown out of the U-tube and a strained spring count.
#[test]
fn gauges_are_not_overstrained() {
    for (what, counts) in [
        (EventKind::ColumnBlownOut, true),
        (EventKind::SpringGaugeStrained, true),
        (EventKind::MeterOverRange, false),
    ] {
        let mut hand = Hand::natural();
        let mut observer = Observer::new(&hand.bench);
        let events = hand.bench.take_events();
        observer.tick(&hand.bench, events);
        observer.ledger.events.push(Event { tick: 1, what });
        let brief = Brief { right_endings: vec![Ending::InService] };
        let marks = observer.marks(&shared().unwrap(), &brief);
        assert_eq!(rules(&marks).contains(&"gauge-overstrained"), counts);
    }
}

/// The dial is timed with everything else off, or it tells of all of it.
#[test]
fn the_dial_is_timed_alone() {
    for others in [OnOff::Off, OnOff::On] {
        let mut hand = Hand::natural();
        hand.fire(Some(Level::High));
        hand.go(Place::Hall);
        if others == OnOff::On {
            hand.act(Action::OtherAppliance { appliance: OtherAppliance::Range, to: others });
        }
        hand.go(Place::Yard);
        hand.hold(Spot::MeterDial, 5);
        hand.act(Action::Stopwatch(StartStop::Start));
        hand.wait(60);
        hand.act(Action::Stopwatch(StartStop::Stop));
        hand.act(Action::WriteMeasured(Spot::MeterDial));
        let marks = marks(&mut hand);
        let counts = rules(&marks).contains(&"rate-with-others");
        assert_eq!(counts, others == OnOff::On);
        if counts {
            assert!(found(&marks, "rate-with-others").truth.contains("ft³/h"));
        }
    }
}

/// The rise is taken with the doors on, and with a filter that somebody has looked at.
#[test]
fn the_rise_is_taken_undisturbed() {
    for (door, blocked, looks, why) in [
        (Fitted::On, false, false, None),
        (Fitted::Off, false, false, Some("a furnace door was off")),
        (Fitted::On, true, false, Some("the filter is blocked, and nobody had looked at it")),
        (Fitted::On, true, true, None),
    ] {
        let setup = match blocked {
            true => faulty(Fuel::Natural, Fault::BlockedFilter, 0.5),
            false => rig::healthy(Fuel::Natural),
        };
        let mut hand = Hand::at(setup);
        if looks {
            hand.act(Action::FurnaceSwitch(OnOff::Off));
            hand.act(Action::Door { door: Door::Blower, to: Fitted::Off });
            hand.act(Action::Look(Subject::Filter));
            hand.act(Action::Door { door: Door::Blower, to: Fitted::On });
            hand.act(Action::FurnaceSwitch(OnOff::On));
        }
        if door == Fitted::On {
            hand.act(Action::Door { door: Door::Burner, to: Fitted::On });
        }
        hand.fire(Some(Level::Low));
        hand.go(Spot::SupplyAir.places()[0]);
        hand.hold(Spot::SupplyAir, 60);
        hand.act(Action::WriteMeasured(Spot::SupplyAir));
        let marks = marks(&mut hand);
        let finding = marks.findings.iter().find(|it| it.rule == "rise-disturbed");
        assert_eq!(finding.map(|it| it.truth.as_str()), why);
    }
}

/// A screw that stood right, turned after a rise off the plate (40 to 70 °F): that is charged, and not
/// the needless turn beside it.
#[test]
fn a_rise_is_not_corrected_with_the_gas() {
    for (rise_f, rule) in [(50.0, "needless-turn"), (85.0, "rise-by-gas")] {
        let hand = Hand::natural();
        let mut observer = Observer::new(&hand.bench);
        let wrote = |spot: Spot, f: f64| EventKind::WroteMeasured {
            written: WrittenMeasured {
                spot,
                tick: 0,
                figures: vec![Figure::new(Quantity::Temperature, f)],
            },
            firing: Some(Level::High),
        };
        let set_pa = hand.bench.truth().set_pa[Level::High];
        let turned = EventKind::Turned {
            screw: Screw::High,
            eighths: -1,
            set_pa: (set_pa, set_pa - 20.0),
            bottomed: false,
            firing: Some(Level::High),
            inlet_pa: 6.6 * PA_PER_INWC,
            metered: None,
            since_turn_s: None,
        };
        let air = [wrote(Spot::ReturnAir, 68.0), wrote(Spot::SupplyAir, 68.0 + rise_f)];
        for what in air.into_iter().chain([turned]) {
            observer.ledger.events.push(Event { tick: 1, what });
        }
        let brief = Brief { right_endings: vec![Ending::InService] };
        let marks = observer.marks(&shared().unwrap(), &brief);
        let charged = rules(&marks);
        let of_two: Vec<&&str> =
            charged.iter().filter(|it| ["needless-turn", "rise-by-gas"].contains(*it)).collect();
        assert_eq!(of_two, [&rule]);
    }
}
