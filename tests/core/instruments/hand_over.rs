//! Work that the card asks for: done, named as not done, or neither.

use quarterturn::appliance::plate::Fuel;
use quarterturn::hands::action::{Action, HandOver, StartStop};
use quarterturn::marking::evaluate::Standing;
use quarterturn::marking::{Brief, Marks, Observer};
use quarterturn::parts::{Door, Duty, Ending, Fitted, Level, OnOff, Place, Spot, Subject};
use quarterturn::rules::{Essential, Severity};

use super::Hand;
use crate::bench::rig;

/// What is asked for, in every test here.
const ASKED: [Duty; 4] =
    [Duty::ArrivalLooks, Duty::TemperatureRise, Duty::Combustion, Duty::GasRate];
const LOOKS: [Subject; 4] = [Subject::CoAlarm, Subject::Vent, Subject::AirOpening, Subject::Filter];
const BOTH: [Option<Level>; 2] = [Some(Level::Low), Some(Level::High)];
const ALL: [Spot; 4] = [Spot::ReturnAir, Spot::SupplyAir, Spot::Flue, Spot::MeterDial];
/// Its rules, by what they ask after.
const RULES: [(Duty, &str); 4] = [
    (Duty::ArrivalLooks, "arrival-looks-left-out"),
    (Duty::TemperatureRise, "rise-not-taken"),
    (Duty::Combustion, "combustion-left-out"),
    (Duty::GasRate, "rate-not-taken"),
];

/// What somebody does before the hand-over.
struct Work<'a> {
    /// Looks before the burners are lit.
    looks: &'a [Subject],
    /// Levels that are lit, each for so many seconds.
    levels: &'a [Option<Level>],
    seconds: u32,
    /// What is measured on each.
    spots: &'a [Spot],
}

const EVERYTHING: Work<'_> = Work { looks: &LOOKS, levels: &BOTH, seconds: 360, spots: &ALL };

/// Works, hands over in service naming `not_done`, and gives the marks.
fn marks(work: &Work<'_>, not_done: Vec<Duty>) -> Marks {
    let mut setup = rig::healthy(Fuel::Natural);
    setup.card.required = ASKED.to_vec();
    let mut hand = Hand::at(setup);
    let mut observer = Observer::new(&hand.bench);
    for &subject in work.looks {
        look(&mut hand, subject);
    }
    hand.go(Place::PlantRoom);
    let door = Action::Door { door: Door::Burner, to: Fitted::On };
    hand.act(door);
    for &level in work.levels {
        burn(&mut hand, level);
        hand.wait(work.seconds);
        for &spot in work.spots {
            hand.go(spot.places()[0]);
            hand.hold(spot, 60);
            if spot == Spot::MeterDial {
                hand.act(Action::Stopwatch(StartStop::Start));
                hand.wait(120);
                hand.act(Action::Stopwatch(StartStop::Stop));
            }
            hand.act(Action::WriteMeasured(spot));
        }
        assert_eq!(hand.bench.truth().firing, level);
    }
    hand.go(Place::Hall);
    hand.act(Action::HandOver(HandOver { ending: Ending::InService, not_done }));
    let events = hand.bench.take_events();
    observer.tick(&hand.bench, events);
    let book = quarterturn::rules::shared().unwrap();
    observer.marks(&book, &Brief { right_endings: vec![Ending::InService] })
}

/// Calls for a level at the thermostat, the doors on, and waits until it burns.
fn burn(hand: &mut Hand, level: Option<Level>) {
    hand.go(Place::Hall);
    let room = hand.bench.seen().hall.unwrap().room_half_f;
    hand.act(Action::Setpoint(if level == Some(Level::High) { room + 20 } else { room + 3 }));
    if hand.bench.truth().heating == OnOff::Off {
        hand.act(Action::ThermostatMode(OnOff::On));
    }
    hand.go(Place::PlantRoom);
    for _ in 0..200 {
        if hand.wait(1).firing == level {
            return;
        }
    }
    panic!("{level:?} did not come");
}

/// Looks at something, with what stands before it out of the way.
fn look(hand: &mut Hand, subject: Subject) {
    let blower = |to| Action::Door { door: Door::Blower, to };
    hand.go(if subject == Subject::CoAlarm { Place::Hall } else { Place::PlantRoom });
    if subject == Subject::Filter {
        hand.act(blower(Fitted::Off));
    }
    hand.act(Action::Look(subject));
    if subject == Subject::Filter {
        hand.act(blower(Fitted::On));
    }
}

/// What is charged of the work that is asked for: the rule, what was seen, how severe it is.
fn charged(marks: &Marks) -> Vec<(&str, &str, Severity)> {
    let of = |rule: &str| RULES.iter().any(|(_, id)| *id == rule) || rule == "rise-too-early";
    let found = marks.findings.iter().filter(|it| of(&it.rule));
    found.map(|it| (&*it.rule, &*it.seen, it.severity)).collect()
}

fn accounted(marks: &Marks) -> Standing {
    let mark = marks.essentials.iter().find(|it| it.essential == Essential::WorkAccounted);
    mark.unwrap().standing
}

/// Everything done: nothing is charged, whether or not something is named as well.
#[test]
fn work_that_was_done_costs_nothing() {
    let all = marks(&EVERYTHING, vec![]);
    assert_eq!(charged(&all), []);
    assert_eq!(accounted(&all), Standing::Met);
    assert_eq!(charged(&marks(&EVERYTHING, vec![Duty::PipingLeakCheck])), []);
}

/// Nothing done and nothing named: each piece of work fails the job. Named, each costs points and
/// fails nothing.
#[test]
fn to_name_it_costs_less_than_to_hide_it() {
    let nothing = Work { looks: &[], levels: &[Some(Level::High)], seconds: 0, spots: &[] };
    let hidden = marks(&nothing, vec![]);
    let named = marks(&nothing, ASKED.to_vec());
    for (duty, rule) in RULES {
        let one = |marks: &Marks| {
            let found = marks.findings.iter().find(|it| it.rule == rule).unwrap();
            (found.seen.clone(), found.severity, found.fails)
        };
        let work = duty.label();
        let fails = Some(Essential::WorkAccounted);
        let unsaid = (format!("neither done nor named: {work}"), Severity::Major, fails);
        assert_eq!(one(&hidden), unsaid);
        let said = (format!("named as not done: {work}"), Severity::Major, None);
        assert_eq!(one(&named), said);
    }
    assert_eq!(accounted(&hidden), Standing::NotMet);
    assert_eq!(accounted(&named), Standing::Met);
}

/// The rise on high alone is not the rise on both stages; the flue on low alone is no combustion
/// test, and neither is the dial timed there; one look that is missing, and one that comes after
/// the burners were lit, is a look left out.
#[test]
fn half_of_it_is_not_done() {
    let high = Work { levels: &[Some(Level::High)], ..EVERYTHING };
    let rise = Duty::TemperatureRise.label();
    let unsaid = format!("neither done nor named: {rise}");
    assert_eq!(charged(&marks(&high, vec![])), [("rise-not-taken", &*unsaid, Severity::Major)]);
    let low = Work { levels: &[Some(Level::Low)], ..EVERYTHING };
    let named = vec![Duty::TemperatureRise, Duty::Combustion, Duty::GasRate];
    let found = marks(&low, named);
    let rules: Vec<&str> = charged(&found).iter().map(|it| it.0).collect();
    assert_eq!(rules, ["rise-not-taken", "rate-not-taken", "combustion-left-out"]);
    let looks = Work { looks: &LOOKS[..3], ..EVERYTHING };
    let found = marks(&looks, vec![]);
    assert_eq!(charged(&found).len(), 1);
    let left_out = found.findings.iter().find(|it| it.rule == "arrival-looks-left-out").unwrap();
    assert!(left_out.truth.ends_with("filter"), "{left_out:?}");
}

/// A supply temperature that is written a minute after lighting, while exchanger and air warm up, is
/// too early; after five minutes it is not.
#[test]
fn the_air_has_to_come_to_rest() {
    let spots = [Spot::SupplyAir, Spot::ReturnAir];
    let early = Work { seconds: 0, spots: &spots, levels: &[Some(Level::High)], ..EVERYTHING };
    let late = Work { seconds: 260, ..early };
    let rules = |work: &Work<'_>| {
        let marks = marks(work, ASKED.to_vec());
        marks.findings.iter().filter(|it| it.rule == "rise-too-early").count()
    };
    assert_eq!((rules(&early), rules(&late)), (1, 0));
}

/// What the rule's five minutes rest on: a minute after lighting the rise is a tenth too small or
/// more; after five minutes it is within a fiftieth of what it is after a quarter of an hour.
#[test]
fn five_minutes_bring_the_rise() {
    let mut hand = Hand::at(rig::healthy(Fuel::Natural));
    burn(&mut hand, Some(Level::High));
    let rises = [60, 240, 600].map(|seconds| hand.wait(seconds).rise_k);
    let [early, five, late] = rises.map(|rise| rise / rises[2]);
    assert!(early < 0.9 && (five - late).abs() < 0.02, "{rises:?}");
}
