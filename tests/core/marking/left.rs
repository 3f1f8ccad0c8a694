//! How the furnace and the house are left, what burned when they were, repairs in vain, and how the job is
//! ended: each from both sides.

use quarterturn::appliance::plate::Fuel;
use quarterturn::appliance::safety::Jumper;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::{Nature, Repair};
use quarterturn::hands::action::{Action, Contact, Topic};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::parts::{
    Door, Ending, Fitted, Height, Level, OnOff, Opening, OtherAppliance, Place, Port, Screw, Window,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::Severity;
use quarterturn::setup::SupplyRight;
use quarterturn::units::{M3_S_PER_CFH, PA_PER_INWC};

use super::sheet::{HIGH, REST, Sheet};
use crate::bench::rig;

const IN_SERVICE: &[Ending] = &[Ending::InService];

fn rig(change: impl FnOnce(&mut quarterturn::setup::Setup)) -> Sheet {
    let mut setup = rig::healthy(Fuel::Natural);
    change(&mut setup);
    Sheet::of(setup)
}

/// How often these rules count where it is left so.
fn left<const N: usize>(mut sheet: Sheet, ending: Ending, rules: [&str; N]) -> [usize; N] {
    sheet.handed_over(ending);
    rules.map(|it| sheet.times(it))
}

/// Without power or without a call the house has no heat: each way counts once. A thermostat that was found
/// off is left off; a setpoint further down than five degrees is no call; a furnace that is shut off needs
/// neither.
#[test]
fn a_furnace_is_left_to_answer_a_call() {
    const RULES: [&str; 2] = ["furnace-left-off", "controls-not-restored"];
    let with = |found: OnOff, switch: OnOff, heating: OnOff, moved: i16, ending: Ending| {
        let mut sheet = rig(|setup| setup.found.thermostat_mode = found);
        (sheet.truth.furnace_switch, sheet.truth.heating) = (switch, heating);
        sheet.truth.setpoint_half_f = sheet.setup.house.setpoint_half_f + moved;
        left(sheet, ending, RULES)
    };
    use OnOff::{Off, On};
    let (runs, shut) = (Ending::InService, Ending::ShutOff);
    assert_eq!(with(On, On, On, 0, runs), [0, 0]);
    assert_eq!(with(On, Off, On, 0, runs), [1, 0]);
    assert_eq!(with(On, On, Off, 0, runs), [1, 0]);
    assert_eq!(with(On, Off, Off, 0, runs), [2, 0]);
    assert_eq!(with(On, Off, Off, 0, shut), [0, 0]);
    assert_eq!(with(Off, On, Off, 0, runs), [0, 0]);
    assert_eq!(with(Off, On, On, 0, runs), [0, 1]);
    assert_eq!(with(On, On, On, -1, runs), [0, 1]);
    assert_eq!(with(On, On, On, 1, runs), [0, 1]);
    assert_eq!(with(On, On, On, -10, runs), [0, 1]);
    assert_eq!(with(On, On, On, -11, runs), [1, 0]);
    assert_eq!(with(On, On, On, -11, shut), [0, 0]);
    let mut moved = rig(|setup| setup.house.setpoint_half_f = 140);
    moved.truth.setpoint_half_f = 137;
    let found = moved.handed_over(runs).finding("controls-not-restored").unwrap();
    assert!(found.seen.contains("68.5") && found.truth.contains("70.0"), "{found:?}");
}

/// A tag on a furnace that runs, and each window that is open, are put right in a minute; doors are on where
/// it runs, or there is no heat, and where it is shut off for order's sake.
#[test]
fn tag_windows_and_doors_are_put_right() {
    const RULES: [&str; 2] = ["controls-not-restored", "door-off"];
    let with = |change: fn(&mut Sheet), ending: Ending| {
        let mut sheet = Sheet::new();
        for (_, door) in &mut sheet.truth.doors {
            *door = Fitted::On;
        }
        change(&mut sheet);
        left(sheet, ending, RULES)
    };
    let (runs, shut) = (Ending::InService, Ending::ShutOff);
    assert_eq!(with(|_| {}, runs), [0, 0]);
    assert_eq!(with(|it| it.truth.tag = Fitted::On, runs), [1, 0]);
    assert_eq!(with(|it| it.truth.tag = Fitted::On, shut), [0, 0]);
    for ending in [runs, shut] {
        assert_eq!(with(|it| it.truth.windows[Window::Hall] = Opening::Open, ending), [1, 0]);
        assert_eq!(with(|it| it.truth.windows[Window::PlantRoom] = Opening::Open, ending), [1, 0]);
    }
    assert_eq!(with(|it| it.truth.doors[Door::Blower] = Fitted::Off, runs), [0, 1]);
    assert_eq!(with(|it| it.truth.doors[Door::Burner] = Fitted::Off, shut), [1, 0]);
    let mut room = Sheet::new();
    room.truth.windows[Window::PlantRoom] = Opening::Open;
    let seen = room.handed_over(runs).finding("controls-not-restored").unwrap().seen;
    assert!(seen.contains("furnace"), "{seen}");
}

/// Other appliances are left as they were found, with their valves open; one that was on and lost its flame
/// is lit again, unless nothing can burn.
#[test]
fn other_appliances_are_left_as_found() {
    const RULES: [&str; 2] = ["others-not-restored", "others-left-out"];
    let with = |found: OnOff, now: OnOff, handle: HandleAngle, out: bool, ending: Ending| {
        let mut sheet = rig(|setup| setup.found.other_appliances[OtherAppliance::Range] = found);
        let range = &mut sheet.truth.other_appliances[OtherAppliance::Range];
        (range.switch, range.handle, range.gone_out) = (now, handle, out);
        if ending == Ending::ShutOff {
            sheet.truth.manual_valve = HandleAngle::SHUT;
            sheet.truth.supply_valve = HandleAngle::SHUT;
            sheet.truth.tag = Fitted::On;
        }
        left(sheet, ending, RULES)
    };
    use OnOff::{Off, On};
    let (open, runs) = (HandleAngle::OPEN, Ending::InService);
    assert_eq!(with(On, On, open, false, runs), [0, 0]);
    assert_eq!(with(On, Off, open, false, runs), [1, 0]);
    assert_eq!(with(Off, On, open, false, runs), [1, 0]);
    assert_eq!(with(Off, Off, HandleAngle::SHUT, false, runs), [1, 0]);
    assert_eq!(with(On, On, open, true, runs), [0, 1]);
    assert_eq!(with(Off, Off, open, true, runs), [0, 0]);
    assert_eq!(with(On, Off, open, true, runs), [1, 0]);
    assert_eq!(with(On, On, open, true, Ending::ShutOff), [0, 0]);
    // Shut off with the gas still on at the supply, the range can burn.
    let mut fed = rig(|setup| setup.found.other_appliances[OtherAppliance::Range] = On);
    fed.truth.other_appliances[OtherAppliance::Range].switch = On;
    fed.truth.other_appliances[OtherAppliance::Range].gone_out = true;
    (fed.truth.manual_valve, fed.truth.tag) = (HandleAngle::SHUT, Fitted::On);
    assert_eq!(left(fed, Ending::ShutOff, RULES), [0, 1]);
}

/// The stage jumper comes off, the switch on the gas valve goes on where it runs.
#[test]
fn jumper_and_valve_switch_are_put_back() {
    const RULES: [&str; 2] = ["jumper-left", "valve-switch-off"];
    let with = |jumper: Fitted, switch: OnOff, ending: Ending| {
        let mut sheet = Sheet::new();
        (sheet.truth.stage_jumper, sheet.truth.valve_switch) = (jumper, switch);
        left(sheet, ending, RULES)
    };
    let (runs, shut) = (Ending::InService, Ending::ShutOff);
    assert_eq!(with(Fitted::Off, OnOff::On, runs), [0, 0]);
    assert_eq!(with(Fitted::On, OnOff::On, runs), [1, 0]);
    assert_eq!(with(Fitted::Off, OnOff::Off, runs), [0, 1]);
    assert_eq!(with(Fitted::Off, OnOff::Off, shut), [0, 0]);
}

/// What burned for a minute, as the furnace was left, is held against 400 ppm of carbon monoxide (ANSI
/// Z21.47, from memory) and a tenth over the plate's input. A screw or a repair makes it another furnace.
#[test]
fn what_burned_as_it_was_left_counts() {
    const RULES: [&str; 2] = ["carbon-monoxide-left", "over-fired-left"];
    let burned = |ticks: u64, ppm: f64, share: f64, then: Option<EventKind>, ending: Ending| {
        let mut sheet = Sheet::new();
        let (from, to) = (None, Some(Level::High));
        sheet.push(EventKind::Fired { from, to }).pass(ticks);
        let input_w = sheet.setup.furnace.plate.input[Level::High].si();
        let resting = sheet.truth.clone();
        sheet.truth.firing = to;
        (sheet.truth.co_air_free_ppm, sheet.truth.input_w) = (ppm, share * input_w);
        sheet.did(Action::PutDown).later();
        sheet.truth = resting;
        if let Some(what) = then {
            sheet.push(EventKind::Fired { from: to, to: None }).push(what).later();
        }
        left(sheet, ending, RULES)
    };
    let (runs, shut) = (Ending::InService, Ending::ShutOff);
    assert_eq!(burned(3_000, 400.0, 1.0, None, runs), [0, 0]);
    assert_eq!(burned(3_000, 401.0, 1.0, None, runs), [1, 0]);
    assert_eq!(burned(2_999, 401.0, 1.2, None, runs), [0, 0]);
    assert_eq!(burned(3_000, 401.0, 1.2, None, shut), [0, 0]);
    assert_eq!(burned(3_000, 30.0, 1.095, None, runs), [0, 0]);
    assert_eq!(burned(3_000, 30.0, 1.105, None, runs), [0, 1]);
    let mut far = Sheet::new();
    far.push(EventKind::Fired { from: None, to: Some(Level::High) }).pass(4_000);
    far.truth.firing = Some(Level::High);
    far.truth.input_w = 1.25 * far.setup.furnace.plate.input[Level::High].si();
    let over = far.did(Action::PutDown).handed_over(runs).finding("over-fired-left").unwrap();
    assert!(
        over.seen.contains(" 25 %") && over.truth.contains("10 %"),
        "{} {}",
        over.seen,
        over.truth
    );
    let (repair, outcome) = (Repair::ReplaceFilter, Outcome::Changed);
    let mended = EventKind::Mended { repair, outcome, plate: None };
    assert_eq!(burned(3_000, 401.0, 1.2, Some(mended), runs), [0, 0]);
    assert_eq!(burned(3_000, 401.0, 1.2, Some(EventKind::Alarm), runs), [1, 1]);
    // Of two levels the worse is told, and one that did not burn is not asked.
    let mut sheet = Sheet::new();
    for (level, ppm) in [(Level::Low, 600.0), (Level::High, 500.0)] {
        sheet.push(EventKind::Fired { from: None, to: Some(level) }).pass(4_000);
        (sheet.truth.firing, sheet.truth.co_air_free_ppm) = (Some(level), ppm);
        sheet.did(Action::PutDown).later();
    }
    sheet.truth.firing = None;
    sheet.truth.co_air_free_ppm = 900.0;
    sheet.did(Action::PutDown).handed_over(runs);
    let seen = sheet.finding("carbon-monoxide-left").unwrap().seen;
    assert!(seen.contains("600 ppm") && seen.contains("low"), "{seen}");
}

/// The wrong screw is at its worst where its level is left above its band.
#[test]
fn the_wrong_screw_is_worst_where_it_over_fires() {
    for (set, firing, severity) in [
        (2.05, Level::High, Severity::Critical),
        (1.95, Level::High, Severity::Major),
        (1.0, Level::High, Severity::Major),
    ] {
        let mut sheet = Sheet::new();
        sheet.turn(Screw::Low, 1, Some(firing), Some(Port::Manifold), 1.7);
        sheet.turn(Screw::High, 1, Some(Level::High), Some(Port::Manifold), 3.5);
        sheet.turn(Screw::Supply, 1, Some(Level::High), Some(Port::Manifold), 7.0);
        sheet.truth.set_pa[Level::Low] = set * PA_PER_INWC;
        sheet.handed_over(Ending::InService);
        assert_eq!(sheet.severity("wrong-screw"), Some(severity), "{set}");
    }
}

/// What stood at the inlet at rest since the supply was worked on last: over the limit by a tenth of an inch
/// it counts. One's own ends at 10.0 in. w.c. (nameplate), somebody else's at the gas valve's 14.0.
#[test]
fn a_lock_up_is_told_a_tenth_over_its_limit() {
    let over = |right: SupplyRight, inlet: f64, change: fn(&mut Sheet), ending: Ending| {
        let mut sheet = rig(|setup| setup.card.supply = right);
        sheet.truth.burner_flow_m3_s = 0.0;
        sheet.truth.others_flow_m3_s = 0.0;
        sheet.truth.inlet_pa = inlet * PA_PER_INWC;
        change(&mut sheet);
        left(sheet, ending, ["lock-up-over-limit"])
    };
    use SupplyRight::{OwnerOnly, Trainee};
    let as_is = |_: &mut Sheet| {};
    let runs = Ending::InService;
    assert_eq!(over(Trainee, 10.09, as_is, runs), [0]);
    assert_eq!(over(Trainee, 10.11, as_is, runs), [1]);
    assert_eq!(over(Trainee, 10.11, as_is, Ending::ShutOff), [0]);
    assert_eq!(over(OwnerOnly, 14.09, as_is, runs), [0]);
    assert_eq!(over(OwnerOnly, 14.11, as_is, runs), [1]);
    let flow = |burner: f64, others: f64, leak: f64| {
        move |sheet: &mut Sheet| {
            let of = |cfh: f64| cfh * M3_S_PER_CFH;
            sheet.truth.burner_flow_m3_s = of(burner);
            sheet.truth.others_flow_m3_s = of(others);
            sheet.truth.leak_m3_s.hose = of(leak);
        }
    };
    let with = |flows: (f64, f64, f64)| {
        let mut sheet = rig(|setup| setup.card.supply = Trainee);
        sheet.truth.inlet_pa = 11.0 * PA_PER_INWC;
        flow(flows.0, flows.1, flows.2)(&mut sheet);
        left(sheet, runs, ["lock-up-over-limit"])[0]
    };
    assert_eq!(with((0.0, 0.0, 0.0)), 1);
    assert_eq!(with((0.03, 0.03, 0.035)), 1);
    for flows in [(0.105, 0.0, 0.0), (0.0, 0.105, 0.0), (0.0, 0.0, 0.105), (0.04, 0.04, 0.025)] {
        assert_eq!(with(flows), 0, "{flows:?}");
    }
    for closed in [
        |sheet: &mut Sheet| sheet.truth.manual_valve = HandleAngle::SHUT,
        |sheet: &mut Sheet| sheet.truth.supply_valve = HandleAngle::SHUT,
    ] {
        assert_eq!(over(Trainee, 11.0, closed, runs), [0]);
    }
    // What stood before the supply was worked on last is another supply's.
    let worked: [fn(&mut Sheet); 3] = [
        |sheet| {
            sheet.turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0);
        },
        |sheet| {
            let (repair, outcome) = (Repair::ReplaceSupplyRegulator, Outcome::Changed);
            sheet.push(EventKind::Mended { repair, outcome, plate: None }).later();
        },
        |sheet| {
            let (repair, outcome) = (Repair::ReplaceFilter, Outcome::Changed);
            sheet.push(EventKind::Mended { repair, outcome, plate: None }).later();
        },
    ];
    for (first, then) in [(0, None), (1, None), (0, Some(1)), (1, Some(0)), (0, Some(2))] {
        let mut sheet = rig(|setup| setup.card.supply = Trainee);
        let resting = sheet.truth.inlet_pa;
        worked[first](&mut sheet);
        sheet.truth.inlet_pa = 11.0 * PA_PER_INWC;
        sheet.did(Action::PutDown).later();
        if let Some(then) = then {
            worked[then](&mut sheet);
        }
        sheet.truth.inlet_pa = resting;
        let counts = usize::from(then.is_none_or(|it| it == 2));
        assert_eq!(left(sheet, runs, ["lock-up-over-limit"]), [counts], "{first} {then:?}");
    }
}

/// Two parts that were sound are waste, each one more is suspicion; care is free five times. What changed
/// something, or was a hazard, is neither.
#[test]
fn parts_in_vain_are_counted() {
    let of = |nature: Nature| {
        let all = Repair::ALL.iter().copied();
        all.filter(|it| it.nature() == nature && !it.is_on_supply()).collect::<Vec<_>>()
    };
    const RULES: [&str; 3] = ["needless-repair", "parts-on-suspicion", "care-on-suspicion"];
    let counts = |nature: Nature, number: usize, outcome: Outcome| {
        let mut sheet = Sheet::new();
        for &repair in of(nature).iter().take(number) {
            sheet.push(EventKind::Mended { repair, outcome, plate: None }).later();
        }
        left(sheet, Ending::InService, RULES)
    };
    assert_eq!(counts(Nature::Part, 1, Outcome::Nothing), [1, 0, 0]);
    assert_eq!(counts(Nature::Part, 2, Outcome::Nothing), [2, 0, 0]);
    assert_eq!(counts(Nature::Part, 4, Outcome::Nothing), [2, 2, 0]);
    assert_eq!(counts(Nature::Part, 4, Outcome::Changed), [0, 0, 0]);
    assert_eq!(counts(Nature::Care, 5, Outcome::Nothing), [0, 0, 0]);
    assert_eq!(counts(Nature::Care, 7, Outcome::Nothing), [0, 0, 2]);
    for (nature, counts) in [(Nature::Danger, 1), (Nature::Part, 0), (Nature::Care, 0)] {
        let mut sheet = Sheet::new();
        let (repair, outcome) = (of(nature)[0], Outcome::Nothing);
        sheet.push(EventKind::Mended { repair, outcome, plate: None });
        assert_eq!(left(sheet, Ending::InService, ["dangerous-repair"]), [counts], "{nature:?}");
    }
    let mut third = Sheet::new();
    for &repair in of(Nature::Part).iter().take(3) {
        third.push(EventKind::Mended { repair, outcome: Outcome::Nothing, plate: None });
    }
    let truth = third.handed_over(Ending::InService).finding("parts-on-suspicion").unwrap().truth;
    assert!(truth.contains('3') || truth.contains("third"), "{truth}");
}

/// Work on somebody else's supply is not one's own; the trunk behind it is theirs where the job cannot end in
/// service without them.
#[test]
fn somebody_elses_supply_is_left_alone() {
    let counts = |right: SupplyRight, repair: Repair, endings: &[Ending]| {
        let mut sheet = rig(|setup| setup.card.supply = right);
        sheet.push(EventKind::Mended { repair, outcome: Outcome::Changed, plate: None });
        sheet.handed_over(Ending::InService);
        let marks = sheet.marks_with(endings);
        marks.findings.iter().filter(|it| it.rule == "supply-not-yours").count()
    };
    use Repair::{ReplaceFilter, ReplaceSupplyRegulator, ReplaceTrunk};
    use SupplyRight::{OwnerOnly, Trainee};
    const CALLED: &[Ending] = &[Ending::SupplyOwnerCalled];
    assert_eq!(counts(OwnerOnly, ReplaceSupplyRegulator, IN_SERVICE), 1);
    assert_eq!(counts(Trainee, ReplaceSupplyRegulator, IN_SERVICE), 0);
    assert_eq!(counts(OwnerOnly, ReplaceTrunk, IN_SERVICE), 0);
    assert_eq!(counts(OwnerOnly, ReplaceTrunk, CALLED), 1);
    assert_eq!(counts(OwnerOnly, ReplaceFilter, CALLED), 0);
}

/// A wire across a safety device that is left there is unsafe; taken off again, the burners that fired
/// meanwhile had no guard, and it was caught. Put there and taken off with nothing fired, it is nothing.
#[test]
fn a_wire_across_a_guard_counts() {
    let wire = |repair| {
        let outcome = Outcome::Changed;
        EventKind::Mended { repair, outcome, plate: None }
    };
    let on = || wire(Repair::BypassLimit);
    let off = || wire(Repair::RemoveBypasses);
    let fires = || EventKind::Fired { from: None, to: Some(Level::Low) };
    let rests = || EventKind::Fired { from: Some(Level::Low), to: None };
    let counts = |events: &[EventKind], jumper: Jumper| {
        let mut sheet = Sheet::new();
        for what in events {
            sheet.push(what.clone()).later();
        }
        sheet.truth.jumpers.limit = jumper;
        sheet.handed_over(Ending::InService).severity("safety-bypassed")
    };
    let caught = Some(Severity::Major);
    assert_eq!(counts(&[], Jumper::Off), None);
    assert_eq!(counts(&[on()], Jumper::On), Some(Severity::Critical));
    assert_eq!(counts(&[on(), fires(), rests(), off()], Jumper::Off), caught);
    assert_eq!(counts(&[fires(), on(), rests(), off()], Jumper::Off), caught);
    assert_eq!(counts(&[on(), off(), fires()], Jumper::Off), None);
    assert_eq!(counts(&[fires(), rests(), on(), off()], Jumper::Off), None);
    assert_eq!(counts(&[fires(), wire(Repair::ReplaceFilter)], Jumper::Off), None);
    let filter = || wire(Repair::ReplaceFilter);
    assert_eq!(counts(&[on(), filter(), fires(), off()], Jumper::Off), caught);
}

/// Shut off means shut, tagged and told.
#[test]
fn shut_off_is_shut_tagged_and_told() {
    let with = |valve: HandleAngle, tag: Fitted, told: Option<Topic>| {
        let mut sheet = Sheet::new();
        (sheet.truth.manual_valve, sheet.truth.tag) = (valve, tag);
        if let Some(topic) = told {
            sheet.did(Action::Tell(topic));
        }
        left(sheet, Ending::ShutOff, ["not-tagged", "householder-not-told"])
    };
    let (open, shut) = (HandleAngle::OPEN, HandleAngle::SHUT);
    assert_eq!(with(shut, Fitted::On, Some(Topic::Unsafe)), [0, 0]);
    assert_eq!(with(shut, Fitted::Off, Some(Topic::Unsafe)), [1, 0]);
    assert_eq!(with(open, Fitted::On, Some(Topic::Unsafe)), [1, 0]);
    assert_eq!(with(shut, Fitted::On, Some(Topic::WorkStarts)), [0, 1]);
    assert_eq!(with(shut, Fitted::On, None), [0, 1]);
    let runs = left(Sheet::new(), Ending::InService, ["not-tagged", "householder-not-told"]);
    assert_eq!(runs, [0, 0]);
}

/// A call to the owner has something to tell: a supply set outside its nameplate (6.0 to 9.0 in. w.c.), a
/// number outside the plate, an alarm; one to the emergency number has gas in the air, a trace of 0.03 % or
/// what a regulator vents.
#[test]
fn calls_have_something_to_tell() {
    let owner = |set: f64, alarm: bool| {
        let mut sheet = rig(|setup| setup.supply.set_pa = set * PA_PER_INWC);
        if alarm {
            sheet.push(EventKind::Alarm);
        }
        sheet.did(Action::Call(Contact::SupplyOwner)).read(Port::Inlet, REST, 4.0);
        left(sheet, Ending::InService, ["needless-call"])
    };
    assert_eq!(owner(7.0, false), [1]);
    assert_eq!(owner(6.0, false), [1]);
    assert_eq!(owner(9.0, false), [1]);
    assert_eq!(owner(5.9, false), [0]);
    assert_eq!(owner(9.1, false), [0]);
    assert_eq!(owner(7.0, true), [0]);
    let emergency = |share: f64, vented: f64, action: Action, first: bool| {
        let mut sheet = Sheet::new();
        sheet.truth.gas_fraction.breathing = share;
        sheet.truth.vented_m3_s = vented;
        let call = Action::Call(Contact::Emergency);
        let two = if first { [action, call] } else { [call, action] };
        sheet.did(Action::Go(Place::Hall)).did(two[0].clone()).later().did(two[1].clone());
        left(sheet, Ending::InService, ["needless-call"])
    };
    let sniff = || Action::Sniff(Height::Head);
    assert_eq!(emergency(2.9e-4, 0.0, sniff(), true), [1]);
    assert_eq!(emergency(3.1e-4, 0.0, sniff(), true), [0]);
    assert_eq!(emergency(3.1e-4, 0.0, Action::Probe(Height::Floor), true), [0]);
    assert_eq!(emergency(3.1e-4, 0.0, Action::PutDown, true), [1]);
    assert_eq!(emergency(3.1e-4, 0.0, sniff(), false), [1]);
    assert_eq!(emergency(0.0, 1.0e-6, sniff(), true), [0]);
}

/// What burns on a job that must be shut off, or on papers for another gas, is left unsafe; where another
/// way to run is right, it is a wrong word.
#[test]
fn a_wrong_ending_is_worst_where_it_must_not_burn() {
    let ended = |fuel: Fuel, ending: Ending, right: &[Ending]| {
        let mut sheet = rig(|setup| setup.fuel = fuel);
        // Whoever has to be called was called with the numbers.
        sheet.read(Port::Inlet, REST, 7.5).read(Port::Inlet, HIGH, 6.6);
        sheet.did(Action::Call(Contact::SupplyOwner)).handed_over(ending);
        let marks = sheet.marks_with(right);
        let of =
            |rule: &str| marks.findings.iter().find(|it| it.rule == rule).map(|it| it.severity);
        [of("wrong-ending"), of("shut-off-without-need")]
    };
    use Ending::{InService, ShutOff, SupplyOwnerCalled};
    let (major, critical) = (Some(Severity::Major), Some(Severity::Critical));
    let natural = Fuel::Natural;
    assert_eq!(ended(natural, InService, IN_SERVICE), [None, None]);
    assert_eq!(ended(natural, InService, &[ShutOff]), [critical, None]);
    assert_eq!(ended(natural, SupplyOwnerCalled, IN_SERVICE), [major, None]);
    assert_eq!(ended(natural, InService, &[ShutOff, SupplyOwnerCalled]), [major, None]);
    assert_eq!(ended(natural, ShutOff, IN_SERVICE), [None, major]);
    assert_eq!(ended(natural, ShutOff, &[SupplyOwnerCalled, ShutOff]), [None, None]);
    assert_eq!(ended(Fuel::Propane, InService, IN_SERVICE)[0], critical);
    assert_eq!(ended(Fuel::Propane, ShutOff, IN_SERVICE)[0], None);
}

/// A fault that is left is worst where gas leaks so that fluid shows it (1e-7 m³/s), or where carbon monoxide
/// or the plate's input stand over their limits.
#[test]
fn a_fault_that_is_left_is_worst_where_it_hurts() {
    let severity = |port: f64, connector: f64, ppm: f64, share: f64| {
        let fault = Fault::PluggedOrifice;
        let mut sheet = rig(|setup| {
            fault.apply(setup, fault.entry().severity.typical(Fuel::Natural));
        });
        let to = Some(Level::High);
        sheet.push(EventKind::Fired { from: None, to }).pass(4_000);
        sheet.truth.firing = to;
        sheet.truth.co_air_free_ppm = ppm;
        sheet.truth.input_w = share * sheet.setup.furnace.plate.input[Level::High].si();
        sheet.did(Action::PutDown).later();
        sheet.truth.leak_m3_s.ports[Port::Manifold] = port;
        sheet.truth.connector_leak_m3_s = connector;
        sheet.handed_over(Ending::InService).severity("fault-left")
    };
    let (major, critical) = (Some(Severity::Major), Some(Severity::Critical));
    assert_eq!(severity(0.0, 0.0, 30.0, 0.8), major);
    assert_eq!(severity(0.95e-7, 0.95e-7, 30.0, 0.8), major);
    assert_eq!(severity(1.05e-7, 0.0, 30.0, 0.8), critical);
    assert_eq!(severity(0.0, 1.05e-7, 30.0, 0.8), critical);
    assert_eq!(severity(0.0, 0.0, 401.0, 0.8), critical);
    assert_eq!(severity(0.0, 0.0, 30.0, 1.2), critical);
}
