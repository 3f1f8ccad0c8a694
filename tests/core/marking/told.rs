//! What a debrief tells of the house and of the night after, each sentence from both sides of its limit.
//! Two to five per cent of the plate's input and 100 ppm of carbon monoxide are where a look is due (common
//! practice).

use enum_map::enum_map;
use quarterturn::appliance::plate::Fuel;
use quarterturn::appliance::safety::Jumper;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::marking::debrief::{Debrief, Job, clock, debrief};
use quarterturn::marking::trace::Trace;
use quarterturn::marking::{Brief, Ledger};
use quarterturn::model::aftermath::{
    Aftermath, FurnaceAftermath, GasAftermath, HouseAftermath, RoomAftermath, Span,
};
use quarterturn::parts::{
    Door, Ending, Fitted, Level, OnOff, OtherAppliance, Port, PortFill, Push, Screw,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::shared;
use quarterturn::scenario::builtin;
use quarterturn::units::{M3_PER_FT3, M3_S_PER_CFH, PA_PER_INWC};

use super::sheet::{HIGH, Sheet};
use crate::bench::rig;

const RIGHT: &[Ending] = &[Ending::InService];

pub fn told(sheet: &Sheet, right: &[Ending], id: &str, night: Option<&Aftermath>) -> Debrief {
    let mut ledger = Ledger::new(sheet.setup.clone());
    ledger.take(sheet.events.iter().cloned());
    let brief = Brief { right_endings: right.to_vec() };
    let marks = sheet.marks_with(right);
    let job = Job { brief: &brief, id: Some(id), note: None, night };
    debrief(&ledger, marks, Trace::default(), job)
}

/// What is told of the house that is left so.
fn house(change: impl FnOnce(&mut Sheet), ending: Ending) -> String {
    let mut sheet = Sheet::new();
    sheet.truth.heating = OnOff::On;
    for (_, door) in &mut sheet.truth.doors {
        *door = Fitted::On;
    }
    change(&mut sheet);
    sheet.handed_over(ending);
    told(&sheet, RIGHT, "healthy-natural", None).account.house.join("\n")
}

const RUNS: Ending = Ending::InService;
const SOUND: &str = "nothing is wrong in this house";

/// A sound house is told as sound, and nothing else is told of it.
#[test]
fn a_sound_house_is_told_as_sound() {
    let text = house(|_| (), RUNS);
    assert!(text.contains(SOUND) && text.lines().count() == 1, "{text}");
    let mut stopped = Sheet::new();
    stopped.push(EventKind::Ended { hand_over: None, left: Box::new(stopped.truth.clone()) });
    let text = told(&stopped, RIGHT, "healthy-natural", None).account.house.join("\n");
    assert!(text.contains("was not handed over"), "{text}");
}

/// Gas that comes out is told from 1e-7 m³/s on, all leaks together, and so is a port that nothing closes.
#[test]
fn gas_in_the_house_is_told() {
    let leaks = |hose: f64, connector: f64| {
        house(
            |sheet| {
                sheet.truth.leak_m3_s.hose = hose;
                sheet.truth.connector_leak_m3_s = connector;
            },
            RUNS,
        )
    };
    const LEAK: &str = "Gas comes out into the room";
    assert!(!leaks(0.95e-7, 0.0).contains(LEAK));
    assert!(leaks(1.05e-7, 0.0).contains(LEAK));
    assert!(leaks(0.0, 1.05e-7).contains(LEAK));
    assert!(leaks(0.6e-7, 0.6e-7).contains(LEAK));
    let text = leaks(2.0 * M3_S_PER_CFH, 0.5 * M3_S_PER_CFH);
    assert!(text.contains("at 2.50 ft³/h") && !text.contains(SOUND), "{text}");
    for (fill, is_told) in [
        (PortFill::Open, true),
        (PortFill::BareAdapter, true),
        (PortFill::Hose(Push::Fully), false),
        (PortFill::Snug, false),
    ] {
        let text = house(|sheet| sheet.truth.ports[Port::Manifold].fill = fill, RUNS);
        assert_eq!(text.contains("jets from the open port"), is_told, "{fill:?}");
    }
    for (jumper, is_told) in [(Jumper::On, true), (Jumper::Off, false)] {
        let text = house(|sheet| sheet.truth.jumpers.limit = jumper, RUNS);
        assert_eq!(text.contains("A safety device is bridged"), is_told);
    }
}

/// What it burned is told from five per cent off the plate on either way, the least at the full rate alone,
/// and carbon monoxide from 100 ppm.
#[test]
fn what_it_burned_is_told() {
    let burned = |level: Level, share: f64, ppm: f64| {
        house(
            |sheet| {
                let resting = sheet.truth.clone();
                sheet.push(EventKind::Fired { from: None, to: Some(level) }).pass(4_000);
                sheet.truth.firing = Some(level);
                sheet.truth.input_w = share * sheet.setup.furnace.plate.input[level].si();
                sheet.truth.co_air_free_ppm = ppm;
                sheet.did(Action::PutDown).later();
                // Before it burned steadily on another level, and after it went out, says nothing.
                sheet.push(EventKind::Fired { from: Some(level), to: None });
                sheet.truth = resting;
                sheet.did(Action::PutDown).later();
            },
            RUNS,
        )
    };
    let high = |share| burned(Level::High, share, 30.0);
    assert!(high(1.049).contains(SOUND) && high(0.951).contains(SOUND));
    assert!(!high(1.052).contains(SOUND) && !high(0.948).contains(SOUND));
    assert!(high(1.06).contains("it burned 6 % above the plate on high"), "{}", high(1.06));
    assert!(high(0.94).contains("it burned 94 % of the plate's input"), "{}", high(0.94));
    let low = burned(Level::Low, 1.06, 30.0);
    assert!(low.contains("6 % above the plate on low"), "{low}");
    assert!(burned(Level::Low, 0.8, 30.0).contains(SOUND));
    assert!(burned(Level::High, 1.0, 100.0).contains(SOUND));
    let gas = burned(Level::High, 1.0, 1_234.0);
    assert!(gas.contains("1,234 ppm of carbon monoxide"), "{gas}");
    assert!(burned(Level::High, 1.0, 101.0).contains("101 ppm"));
}

/// A spring that was turned and stands more than 0.05 in. w.c. out of its band is told by its rate, which
/// goes with the square root of the pressure: 3.5 in. w.c. by the plate, 4.2 are 10 % more, 2.8 11 % less.
#[test]
fn springs_are_told_by_their_rate() {
    let left = |set: f64, screw: Screw| {
        house(
            |sheet| {
                sheet.turn(screw, 1, screw.level(), Some(Port::Manifold), 3.5);
                sheet.truth.set_pa[Level::High] = set * PA_PER_INWC;
            },
            RUNS,
        )
    };
    const HIGH_SPRING: &str = "10 %";
    assert!(left(4.2, Screw::High).contains(HIGH_SPRING), "{}", left(4.2, Screw::High));
    assert!(left(2.8, Screw::High).contains("11 %"), "{}", left(2.8, Screw::High));
    assert!(left(3.84, Screw::High).contains(SOUND));
    assert!(!left(3.86, Screw::High).contains(SOUND));
    assert!(left(4.2, Screw::Low).contains(SOUND), "nobody turned it");
}

/// Why there is no heat is told by the first thing that keeps it away.
#[test]
fn why_there_is_no_heat_is_told() {
    let mut told = Vec::new();
    for change in [
        |it: &mut Sheet| it.truth.manual_valve = HandleAngle::SHUT,
        |it: &mut Sheet| it.truth.supply_valve = HandleAngle::SHUT,
        |it: &mut Sheet| it.truth.valve_switch = OnOff::Off,
        |it: &mut Sheet| it.truth.furnace_switch = OnOff::Off,
        |it: &mut Sheet| it.truth.doors[Door::Blower] = Fitted::Off,
        |it: &mut Sheet| it.truth.heating = OnOff::Off,
    ] {
        let text = house(change, RUNS);
        assert!(text.contains("no heat tonight") && !told.contains(&text), "{text}");
        told.push(text);
    }
    for (switch, out, is_told) in
        [(OnOff::On, true, true), (OnOff::Off, true, false), (OnOff::On, false, false)]
    {
        let change = |it: &mut Sheet| {
            let range = &mut it.truth.other_appliances[OtherAppliance::Range];
            (range.switch, range.gone_out) = (switch, out);
        };
        assert_eq!(house(change, RUNS).contains("its flame is out"), is_told);
    }
}

/// Shut off rightly, on paper only, and for nothing.
#[test]
fn shut_off_is_told_as_it_is() {
    let shut = |valve: HandleAngle, right: &[Ending]| {
        let mut sheet = Sheet::new();
        (sheet.truth.manual_valve, sheet.truth.tag) = (valve, Fitted::On);
        sheet.handed_over(Ending::ShutOff);
        told(&sheet, right, "healthy-natural", None).account.house.join("\n")
    };
    let (closed, open) = (HandleAngle::SHUT, HandleAngle::OPEN);
    assert!(shut(closed, &[Ending::ShutOff]).contains("that is right here"));
    assert!(shut(open, &[Ending::ShutOff]).contains("anybody can turn it on"));
    assert!(shut(closed, RIGHT).contains("nothing here spoke against"));
}

/// A fault that is left is told by what it does, would do, or does until its owner has been.
#[test]
fn what_a_cause_does_is_told_by_how_it_was_left() {
    let left = |fault: Fault, ending: Ending| {
        let mut setup = rig::healthy(Fuel::Natural);
        fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
        let mut sheet = Sheet::of(setup);
        if ending == Ending::ShutOff {
            (sheet.truth.manual_valve, sheet.truth.tag) = (HandleAngle::SHUT, Fitted::On);
        }
        sheet.handed_over(ending);
        told(&sheet, &[Ending::ShutOff], "healthy-natural", None).account.house.join("\n")
    };
    let used = left(Fault::PluggedOrifice, RUNS);
    assert!(used.contains("still there") && !used.contains(SOUND), "{used}");
    let shut = left(Fault::PluggedOrifice, Ending::ShutOff);
    assert!(shut.contains("if it ran") && !shut.contains("still there"), "{shut}");
    let mut setup = rig::healthy(Fuel::Natural);
    let fault = Fault::PluggedOrifice;
    fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
    let mut mended = Sheet::of(setup);
    let (repair, outcome) = (Repair::CleanOrifices, Outcome::Changed);
    mended.push(EventKind::Mended { repair, outcome, plate: None }).handed_over(RUNS);
    let spared = told(&mended, RIGHT, "healthy-natural", None).account.house.join("\n");
    assert!(spared.contains("put right. Left, it would have meant"), "{spared}");
    assert!(!house(|_| (), RUNS).contains("put right"));
}

/// A night on which nothing happened, seventy degrees at the end.
fn quiet() -> Aftermath {
    let span = Span { least: 294.26, most: 294.26 };
    Aftermath {
        seconds: 43_200.0,
        furnace: FurnaceAftermath { cycles: 7, ..FurnaceAftermath::default() },
        gas: GasAftermath {
            drawn_m3: 1.0,
            escaped_m3: 0.0,
            supply_pa: span,
            inlet_pa: span,
            manifold_pa: enum_map! { _ => span },
            went_out: enum_map! { _ => false },
        },
        room: RoomAftermath::default(),
        house: HouseAftermath { inside_k: span, end_k: 294.26, cold_s: 0.0 },
        tank: None,
        changes: Vec::new(),
    }
}

/// What the night brings is told from its limits on: 400 ppm, half an hour below the setpoint, a tenth of a
/// cubic foot of gas, and everything that came about at all.
#[test]
fn the_night_is_told() {
    let night = |change: &dyn Fn(&mut Aftermath), ending: Ending| {
        let mut after = quiet();
        change(&mut after);
        let mut sheet = Sheet::new();
        sheet.truth.setpoint_half_f = 137;
        sheet.handed_over(ending);
        told(&sheet, RIGHT, "healthy-natural", Some(&after)).account.night.join("\n")
    };
    let quiet_words = night(&|_| (), RUNS);
    assert!(quiet_words.contains('7') && quiet_words.contains("70 °F"), "{quiet_words}");
    let is_quiet = |change: &dyn Fn(&mut Aftermath)| night(change, RUNS) == quiet_words;
    assert!(is_quiet(&|it| it.furnace.co_air_free_ppm = 400.0));
    assert!(night(&|it| it.furnace.co_air_free_ppm = 1_401.0, RUNS).contains("1,401 ppm"));
    assert!(!is_quiet(&|it| it.furnace.co_air_free_ppm = 420.0));
    assert!(is_quiet(&|it| it.house.cold_s = 1_800.0));
    let cold = night(&|it| it.house.cold_s = 5_400.0, RUNS);
    assert!(cold.contains("cold for 1.5 h") && cold.contains("70 °F"), "{cold}");
    assert!(cold.contains("asks for 68.5 °F"), "{cold}");
    assert!(!is_quiet(&|it| it.house.cold_s = 1_801.0));
    assert!(is_quiet(&|it| it.gas.escaped_m3 = 0.099 * M3_PER_FT3));
    assert!(!is_quiet(&|it| it.gas.escaped_m3 = 0.101 * M3_PER_FT3));
    let gas = night(
        &|it| {
            it.gas.escaped_m3 = 2.5 * M3_PER_FT3;
            it.room.most_of_lower_limit.floor = 0.123;
            it.room.most_of_lower_limit.breathing = 0.05;
        },
        RUNS,
    );
    assert!(gas.contains("2.5 ft³") && gas.contains("12.3 %"), "{gas}");
    let flame = night(&|it| it.room.ignition_s = Some(180.0), RUNS);
    assert!(flame.contains("After 3 min gas met a flame"), "{flame}");
    let alarm = night(&|it| it.room.alarm_s = Some(300.0), RUNS);
    assert!(alarm.contains("After 5 min a gas alarm"), "{alarm}");
    for change in [
        |it: &mut Aftermath| it.furnace.rollouts = 1,
        |it: &mut Aftermath| it.furnace.lockouts = 1,
        |it: &mut Aftermath| it.furnace.limits = 1,
        |it: &mut Aftermath| it.gas.went_out[OtherAppliance::Range] = true,
    ] {
        let text = night(&change, RUNS);
        assert!(text != quiet_words && text.lines().count() == 1, "{text}");
        assert_eq!(night(&change, Ending::ShutOff), "");
    }
    assert!(night(&|it| it.room.alarm_s = Some(300.0), Ending::ShutOff).contains("gas alarm"));
}

/// What to practise next: the job of the worst finding, one that fails before one that does not; without a
/// finding the next job on the ladder, and after the last the last again.
#[test]
fn the_next_job_follows_the_worst_finding() {
    let next = |change: fn(&mut Sheet), id: &str| {
        let mut sheet = Sheet::new();
        change(&mut sheet);
        sheet.handed_over(RUNS);
        told(&sheet, RIGHT, id, None).account.next.unwrap()
    };
    let failing = next(
        |sheet| {
            sheet.push(EventKind::ColumnBlownOut);
            sheet.truth.set_pa[Level::High] = 3.95 * PA_PER_INWC;
            sheet.read(Port::Inlet, HIGH, 6.6);
        },
        "healthy-natural",
    );
    let book = shared().unwrap();
    let rule = book.rule(failing.rule.as_deref().unwrap()).unwrap();
    assert!(rule.essential.is_some() && failing.part.is_some(), "{failing:?}");
    // With every rule silent, the ladder goes on.
    let mut sheet = Sheet::new();
    sheet.handed_over(RUNS);
    let ladder = |id: Option<&str>| {
        let mut ledger = Ledger::new(sheet.setup.clone());
        ledger.take(sheet.events.iter().cloned());
        let brief = Brief { right_endings: RIGHT.to_vec() };
        let mut marks = sheet.marks();
        marks.findings.clear();
        let job = Job { brief: &brief, id, note: None, night: None };
        debrief(&ledger, marks, Trace::default(), job).account.next.unwrap().job
    };
    let ids: Vec<&str> = builtin::LADDER.iter().map(|it| it.id).collect();
    assert_eq!(ladder(None), ids[0]);
    assert_eq!(ladder(Some(ids[0])), ids[1]);
    assert_eq!(ladder(Some(ids[4])), ids[5]);
    assert_eq!(ladder(ids.last().copied()), *ids.last().unwrap());
    // The same job is told as the same; one that was stopped is played again to its end.
    let worst = |id: &str| told(&sheet, RIGHT, id, None).account.next.unwrap();
    let job = worst("healthy-natural").job;
    let other = ids.iter().find(|id| **id != job).unwrap();
    assert_ne!(worst(&job).words, worst(other).words);
    assert_eq!(worst(other).words, worst("no-such-job").words);
    let mut stopped = Sheet::new();
    stopped.push(EventKind::Ended { hand_over: None, left: Box::new(stopped.truth.clone()) });
    let mut ledger = Ledger::new(stopped.setup.clone());
    ledger.take(stopped.events.iter().cloned());
    let brief = Brief { right_endings: RIGHT.to_vec() };
    let mut marks = stopped.marks();
    marks.findings.clear();
    let job = Job { brief: &brief, id: Some(ids[3]), note: None, night: None };
    let again = debrief(&ledger, marks, Trace::default(), job).account.next.unwrap();
    assert_eq!((again.job.as_str(), again.rule, again.part), (ids[3], None, None));
}

/// A moment is told in minutes and seconds.
#[test]
fn a_moment_is_told_in_minutes() {
    for (seconds, words) in [(0.0, "0:00"), (59.9, "0:59"), (60.0, "1:00"), (3_725.0, "62:05")] {
        assert_eq!(clock(seconds), words);
    }
    assert_eq!(clock(-1.0), "0:00");
}

/// Walking, looking and tools are no work on the time line.
#[test]
fn the_time_line_holds_the_work() {
    let mut sheet = Sheet::new();
    for action in [
        Action::Go(quarterturn::parts::Place::Hall),
        Action::Look(quarterturn::parts::Subject::Plate),
        Action::PutDown,
        Action::FurnaceSwitch(OnOff::Off),
    ] {
        sheet.did(action);
    }
    sheet.handed_over(RUNS);
    let done = told(&sheet, RIGHT, "healthy-natural", None).account.done;
    assert_eq!(done.len(), 1);
    assert!((done[0].at_s - 20.0).abs() < 1e-9, "{}", done[0].at_s);
}
