//! How the house is left: no heat tonight is one thing, whichever switch it was.

use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::hands::action::PlugStep;
use quarterturn::parts::{Door, Ending, Fitted, HandValve, OnOff, OtherAppliance, Place, Port};
use quarterturn::rules::{Essential, Severity};

use super::sheet::Sheet;
use super::{Good, all_worth, found, handed_over, rules};
use crate::bench::rig;
use crate::faults::hand::{act, wait};

/// Service switch, thermostat, valve switch, manual valve and either door: the same severity, the
/// same essential, and nothing charged beside it.
#[test]
fn no_heat_tonight_is_one_class() {
    let good = Good::on("healthy-natural", 1);
    let room = |acts: &[Action]| {
        let [there, back] = [Place::PlantRoom, Place::Hall].map(Action::Go);
        [&[there], acts, &[back]].concat()
    };
    let far = Action::Setpoint(good.setup.house.setpoint_half_f - 11);
    let door = |door| Action::Door { door, to: Fitted::Off };
    let burner = [door(Door::Burner), Action::Go(Place::GasValve)];
    let valve = [&burner[..], &[Action::ValveSwitch(OnOff::Off), Action::Go(Place::PlantRoom)]];
    let shut = Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 };
    let on = Action::Door { door: Door::Burner, to: Fitted::On };
    for (acts, rule) in [
        (vec![Action::ThermostatMode(OnOff::Off)], "furnace-left-off"),
        (vec![far], "furnace-left-off"),
        (room(&[Action::FurnaceSwitch(OnOff::Off)]), "furnace-left-off"),
        (room(&[shut]), "cock-not-open"),
        (room(&[door(Door::Blower)]), "door-off"),
        (room(&[door(Door::Burner)]), "door-off"),
        (room(&[&valve.concat()[..], &[on]].concat()), "valve-switch-off"),
    ] {
        let marks = good.with_before(good.end(), &acts);
        assert_eq!(rules(&marks), [rule], "{acts:?}");
        let finding = found(&marks, rule);
        let gated = (finding.severity, finding.fails);
        assert_eq!(gated, (Severity::Major, Some(Essential::Restored)), "{acts:?}");
    }
    // Short of its stop by so little that the furnace has its gas, the valve is a slip beside the cycle
    // that was not seen since; nearer across its pipe than along it, no heat, and that alone.
    for (degrees, charged, met) in [
        (85, &["no-final-cycle"][..], true),
        (84, &["cock-not-open", "no-final-cycle"], true),
        (45, &["cock-not-open", "no-final-cycle"], true),
        (44, &["cock-not-open"], false),
    ] {
        let aslant = Action::HandValve { hand_valve: HandValve::Furnace, degrees };
        let marks = good.with_before(good.end(), &room(&[aslant]));
        assert_eq!((rules(&marks), marks.verdict.is_met()), (charged.to_vec(), met), "{degrees}");
    }
    // Five degrees are cool, and heat.
    let cool = Action::Setpoint(good.setup.house.setpoint_half_f - 10);
    let marks = good.with_before(good.end(), &[cool]);
    assert_eq!(rules(&marks), ["controls-not-restored"]);
}

/// Heat that was found off is left off; left on it is a slip, told by its switch. Off as found is no
/// furnace left without heat.
#[test]
fn heat_found_off_is_left_off() {
    for (left, times) in [(OnOff::Off, [0, 0]), (OnOff::On, [1, 0])] {
        let mut setup = Sheet::new().setup;
        setup.found.thermostat_mode = OnOff::Off;
        let mut sheet = Sheet::of(setup);
        sheet.truth.heating = left;
        sheet.handed_over(Ending::InService);
        let found = ["controls-not-restored", "furnace-left-off"].map(|it| sheet.times(it));
        assert_eq!(found, times, "{left:?}");
        if let Some(finding) = sheet.finding("controls-not-restored") {
            assert!(!finding.seen.contains("°F"), "{}", finding.seen);
        }
    }
}

/// Whoever checks a loose plug does not lose more than whoever does not, though what they wrote of it
/// was wrong: the bubbles are what is charged of the plug.
#[test]
fn a_loose_plug_is_charged_once() {
    let good = Good::on("healthy-natural", 1);
    let tight = Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(6) };
    let place = good.first(|action| *action == tight);
    let mut done = good.done.clone();
    done[place].1 = Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(2) };
    let checked = good.marks(&done);
    assert_eq!(rules(&checked), ["bubbles-left", "joint-verdict"]);
    let joint = Port::Inlet.joint();
    let rest: Vec<_> = done
        .iter()
        .enumerate()
        .filter(|(i, (_, action))| {
            *i < place
                || !matches!(action, Action::LeakFluid(at) | Action::Wipe(at) if *at == joint)
                    && !matches!(action, Action::WriteJoint { joint: at, .. } if *at == joint)
        })
        .map(|(_, at)| at.clone())
        .collect();
    let unchecked = good.marks(&rest);
    assert_eq!(rules(&unchecked), ["joint-unchecked", "plug-loose"]);
    assert_eq!(found(&checked, "bubbles-left").severity, Severity::Critical);
    assert!(all_worth(&checked) < all_worth(&unchecked));
    assert!(!checked.verdict.is_met() && !unchecked.verdict.is_met());
}

/// The last cycle is seen to its end from inside the house.
#[test]
fn the_end_of_the_cycle_is_watched() {
    let good = Good::on("healthy-natural", 1);
    // The last setpoint but one ends the call; the last puts the thermostat back.
    let sets = |action: &Action| matches!(action, Action::Setpoint(_));
    let back = good.last(sets);
    let ends = good.done[..back].iter().rposition(|(_, action)| sets(action)).unwrap();
    let mut done = good.done.clone();
    done.insert(back, (good.done[back].0, Action::Go(Place::Hall)));
    done.insert(ends + 1, (good.done[ends].0, Action::Go(Place::Yard)));
    let marks = good.marks(&done);
    assert_eq!(rules(&marks), ["shut-down-unwatched"]);
    assert_eq!(found(&marks, "shut-down-unwatched").severity, Severity::Minor);
}

/// A range that lost its gas is lit again, or the house is left without it.
#[test]
fn what_went_out_is_lit_again() {
    for lit in [false, true] {
        let mut setup = rig::healthy(quarterturn::appliance::plate::Fuel::Natural);
        setup.found.other_appliances[OtherAppliance::Range] = OnOff::On;
        let mut bench = Bench::new(setup);
        wait(&mut bench, 5);
        act(&mut bench, Action::Go(Place::Hall));
        act(&mut bench, Action::Go(Place::Yard));
        for degrees in [0, 90] {
            let hand_valve = HandValve::Supply;
            act(&mut bench, Action::HandValve { hand_valve, degrees });
            wait(&mut bench, 60);
        }
        act(&mut bench, Action::Go(Place::Hall));
        if lit {
            for to in [OnOff::Off, OnOff::On] {
                let appliance = OtherAppliance::Range;
                act(&mut bench, Action::OtherAppliance { appliance, to });
            }
            wait(&mut bench, 5);
        }
        let marks = handed_over(bench, Ending::InService, &[Ending::InService]);
        assert_eq!(rules(&marks).contains(&"others-left-out"), !lit);
        assert!(!rules(&marks).contains(&"others-not-restored"));
    }
}

/// Shut off though nothing speaks for it, the house is cold; where it may be shut off, it is not wrong.
#[test]
fn shut_off_without_need_is_no_heat() {
    for (right, counts) in [(Ending::InService, true), (Ending::ShutOff, false)] {
        let setup = rig::healthy(quarterturn::appliance::plate::Fuel::Natural);
        let marks = handed_over(Bench::new(setup), Ending::ShutOff, &[right]);
        assert_eq!(rules(&marks).contains(&"shut-off-without-need"), counts);
        assert!(!rules(&marks).contains(&"wrong-ending"));
    }
}

/// A thermostat that was turned down is told beside what the customer had.
#[test]
fn a_thermostat_is_told_beside_what_it_was() {
    let mut sheet = Sheet::new();
    sheet.truth.setpoint_half_f = 121;
    let found = sheet.finding("furnace-left-off").unwrap();
    assert_eq!(found.seen, "the thermostat is set to 60.5 °F");
    assert_eq!(found.truth, "the customer had it at 70.0 °F");
}
