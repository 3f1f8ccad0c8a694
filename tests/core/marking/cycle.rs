//! The last cycle: ended by the thermostat, with no hand on the furnace since it began, and seen.

use quarterturn::hands::action::Action;
use quarterturn::marking::Marks;
use quarterturn::parts::{Door, Fitted, HandValve, OnOff, Place};
use quarterturn::rules::Severity;
use quarterturn::units::TICKS_PER_S;

use super::{At, Good, found, rules};

/// Good work on a healthy house, with the way to the furnace during the last cycle and the setpoint
/// that ends its call.
struct Last {
    good: Good,
    watches: usize,
    ends: usize,
}

impl Last {
    fn new() -> Self {
        let good = Good::on("healthy-natural", 1);
        let sets = |action: &Action| matches!(action, Action::Setpoint(_));
        // The last setpoint but one ends the call; the last puts the thermostat back.
        let back = good.last(sets);
        let ends = good.done[..back].iter().rposition(|(_, action)| sets(action)).unwrap();
        let there = |(_, action): &At| *action == Action::Go(Place::PlantRoom);
        let watches = good.done[..ends].iter().rposition(there).unwrap();
        Self { good, watches, ends }
    }

    /// The marks with these actions in the place of one, each so many seconds after it.
    fn instead(&self, place: usize, more: &[(u64, Action)]) -> Marks {
        let mut done = self.good.done.clone();
        let tick = done[place].0;
        let more = more.iter().map(|(s, action)| (tick + s * TICKS_PER_S, action.clone()));
        done.splice(place..=place, more);
        self.good.marks(&done)
    }

    /// The marks with these actions, so many seconds after the way to the furnace.
    fn meanwhile(&self, seconds: u64, more: &[Action]) -> Marks {
        let mut done = self.good.done.clone();
        let tick = done[self.watches].0 + seconds * TICKS_PER_S;
        assert!(tick < done[self.ends].0, "the call has ended");
        let place = done.iter().position(|(at, _)| *at > tick).unwrap();
        done.splice(place..place, more.iter().map(|action| (tick, action.clone())));
        self.good.marks(&done)
    }
}

fn told<'a>(marks: &'a Marks, seen: &str) -> &'a str {
    assert_eq!(rules(marks), ["no-final-cycle"]);
    let finding = found(marks, "no-final-cycle");
    assert_eq!((finding.severity, finding.fails), (Severity::Major, None));
    assert!(finding.seen.contains(seen), "{}", finding.seen);
    &finding.seen
}

/// A cycle that a pulled blower door cuts off is none, though it had burned on both levels, and whether
/// the call is taken away afterwards or not.
#[test]
fn a_pulled_door_ends_no_cycle() {
    let last = Last::new();
    assert_eq!(rules(&last.good.marks(&last.good.done)), [""; 0]);
    let door = |to| Action::Door { door: Door::Blower, to };
    let satisfied = last.good.done[last.ends].1.clone();
    let marks = last.instead(
        last.ends,
        &[
            (0, Action::Go(Place::PlantRoom)),
            (0, door(Fitted::Off)),
            (3, Action::Go(Place::Hall)),
            (3, satisfied),
            (3, Action::Go(Place::PlantRoom)),
            (4, door(Fitted::On)),
            (5, Action::Go(Place::Hall)),
        ],
    );
    told(&marks, "not ended by the thermostat");
}

/// A door that was off and on again after the cycle asks for another: what it was seen with is not what
/// is left. So does the service switch; left off, it is that switch alone which is charged, and so is the
/// wire between R and W2 (each as it is left, and the cycle before it was seen).
#[test]
fn what_is_touched_after_the_cycle_is_charged_once() {
    let last = Last::new();
    let after = |acts: &[Action]| {
        let [there, back] = [Place::PlantRoom, Place::Hall].map(Action::Go);
        last.good.with_before(last.good.end(), &[&[there], acts, &[back]].concat())
    };
    let door = |to| Action::Door { door: Door::Burner, to };
    told(&after(&[door(Fitted::Off), door(Fitted::On)]), "no cycle");
    let switch = Action::FurnaceSwitch;
    told(&after(&[switch(OnOff::Off), switch(OnOff::On)]), "no cycle");
    assert_eq!(rules(&after(&[switch(OnOff::Off)])), ["furnace-left-off"]);
    let wired = [door(Fitted::Off), Action::StageJumper(Fitted::On), door(Fitted::On)];
    assert_eq!(rules(&after(&wired)), ["jumper-left"]);
}

/// The valve of the water heater is no hand on the furnace: opened after the cycle, it asks for no other.
#[test]
fn a_valve_of_another_appliance_asks_for_no_other_cycle() {
    let last = Last::new();
    let valve = |hand_valve, degrees| Action::HandValve { hand_valve, degrees };
    for (hand_valve, charged) in
        [(HandValve::WaterHeater, &[][..]), (HandValve::Furnace, &["no-final-cycle"])]
    {
        let [there, back] = [Place::PlantRoom, Place::Hall].map(Action::Go);
        let acts = [there, valve(hand_valve, 0), valve(hand_valve, 90), back];
        let marks = last.good.with_before(last.good.end(), &acts);
        assert_eq!(rules(&marks), charged, "{hand_valve:?}");
    }
}

/// A cycle is seen at the furnace: light-up and each level. From the hall it is only heard, in the yard
/// not even that, and a walk to the yard while it burns leaves a part of it unseen.
#[test]
fn a_cycle_is_seen_at_the_furnace() {
    let last = Last::new();
    let unseen = "not seen at the furnace";
    told(&last.instead(last.watches, &[]), unseen);
    told(&last.instead(last.watches, &[(0, Action::Go(Place::Yard))]), unseen);
    // Back in the house once both levels burn.
    let late = [(0, Action::Go(Place::Yard)), (240, Action::Go(Place::PlantRoom))];
    told(&last.instead(last.watches, &late), unseen);
    let walk = [Action::Go(Place::Yard), Action::Go(Place::PlantRoom)];
    told(&last.meanwhile(200, &walk), unseen);
}

/// The walk to the thermostat is no fault: neither a second one while it burns, nor the way to the
/// furnace that takes a while, as long as light-up is seen.
#[test]
fn the_walk_to_the_thermostat_is_no_fault() {
    let last = Last::new();
    let walk = [Action::Go(Place::Hall), Action::Go(Place::PlantRoom)];
    assert_eq!(rules(&last.meanwhile(200, &walk)), [""; 0]);
    let slow = [(15, Action::Go(Place::PlantRoom))];
    assert_eq!(rules(&last.instead(last.watches, &slow)), [""; 0]);
}
