//! Faults that a look shows are drawn: from what is seen, and no sooner than it is.

use quarterturn::app::pose::{Shown, drawing_of, pose};
use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::parts::{
    Door, Fitted, HandValve, OnOff, Place, Room, Subject, TimeOfDay, Tool, ValveBody, YardLook,
};
use quarterturn::scenario;
use quarterturn::senses::seen::{HoseLook, Seen};

const KNEEL: [Action; 5] = [
    Action::Go(Place::PlantRoom),
    Action::FurnaceSwitch(OnOff::Off),
    Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 },
    Action::Door { door: Door::Burner, to: Fitted::Off },
    Action::Go(Place::GasValve),
];

/// A sound natural gas furnace with one fault, by the catalogue.
fn faulty(name: &str) -> Bench {
    let found = scenario::builtin::find("healthy-natural").expect("it comes with the program");
    let mut setup = scenario::load(found.text).expect("it is sound").draw(7);
    let fault = Fault::from_name(name).expect("it is in the catalogue");
    // A sealed burner box, so that its hose matters.
    setup.furnace.box_suction_pa = 60.0;
    let severity = fault.entry().severity.typical(Fuel::Natural);
    fault.apply(&mut setup, severity);
    Bench::new(setup)
}

fn after(bench: &mut Bench, actions: &[Action]) -> Seen {
    for action in actions {
        if let Err(why) = bench.apply(action) {
            panic!("{action:?}: {}", why.text());
        }
        bench.step();
    }
    bench.seen()
}

fn shown(id: &str, seen: &Seen) -> bool {
    pose(id, seen).expect("it is posed").shown == Shown::Yes
}

/// What only a look tells is drawn with the look, not before; a repair puts it right at once.
#[test]
fn a_look_comes_before_the_picture() {
    let cases = [
        ("kinked_connector", Subject::Connector, "connector@kinked"),
        ("blocked_vent", Subject::Vent, "vent@blocked"),
        ("blocked_intake", Subject::AirOpening, "air-opening@blocked"),
        ("blocked_filter", Subject::Filter, "filter@matted"),
        ("water_in_line", Subject::DripLeg, "drip-leg@missing"),
    ];
    for (name, subject, state) in cases {
        let mut bench = faulty(name);
        let mut way = vec![Action::Go(Place::PlantRoom)];
        if subject == Subject::Filter {
            way.push(Action::FurnaceSwitch(OnOff::Off));
            way.push(Action::Door { door: Door::Blower, to: Fitted::Off });
        }
        assert!(!shown(state, &after(&mut bench, &way)), "{state} before the look");
        assert!(shown(state, &after(&mut bench, &[Action::Look(subject)])), "{state} after it");
        if subject == Subject::Vent {
            let off = Action::FurnaceSwitch(OnOff::Off);
            let seen = after(&mut bench, &[off, Action::Mend(Repair::ClearVent)]);
            assert!(!shown("vent@blocked", &seen) && shown("vent@clear", &seen));
        }
    }
}

/// A sound part is never drawn otherwise, looked at or not.
#[test]
fn a_sound_furnace_shows_no_signs() {
    let found = scenario::builtin::find("healthy-natural").expect("it comes with the program");
    let mut bench = Bench::new(scenario::load(found.text).expect("it is sound").draw(7));
    let seen = after(
        &mut bench,
        &[
            &KNEEL[..],
            &[
                Action::Look(Subject::Orifices),
                Action::Go(Place::PlantRoom),
                Action::Look(Subject::Connector),
                Action::Look(Subject::Vent),
                Action::Look(Subject::DripLeg),
                Action::Go(Place::GasValve),
            ],
        ]
        .concat(),
    );
    for id in ["connector@whole", "drip-leg@hangs", "vent@clear", "box-hose@on", "ground-wire@on"] {
        assert!(shown(id, &seen), "{id}");
    }
    let none = [
        "connector@kinked",
        "connector@creased",
        "drip-leg@missing",
        "filter@matted",
        "flame-rod@filmed",
        "pressure-switch-low@hose-off",
        "pressure-switch-low@hose-wet",
        "orifices@plugged-1",
        "orifices@plugged-4",
    ];
    for id in none {
        assert!(!shown(id, &seen), "{id}");
    }
}

/// What stands open to the eye behind the burner door is drawn at once.
#[test]
fn what_is_in_plain_view_is_drawn_at_once() {
    let cases = [
        ("burner_box_hose_off", "box-hose@off"),
        ("draft_hose_off", "pressure-switch-low@hose-off"),
        ("split_draft_hose", "pressure-switch-high@hose-split"),
        ("blocked_condensate_trap", "pressure-switch-low@hose-wet"),
        ("dirty_flame_rod", "flame-rod@filmed"),
        ("poor_burner_ground", "ground-wire@off"),
    ];
    for (name, state) in cases {
        let mut bench = faulty(name);
        assert!(shown(state, &after(&mut bench, &KNEEL)), "{name}: {state}");
    }
}

/// A plugged orifice is marked only once somebody has looked at the orifices.
#[test]
fn a_plugged_orifice_is_found_by_looking() {
    let mut bench = faulty("plugged_orifice");
    let any =
        |seen: &Seen| (1..=4).filter(|n| shown(&format!("orifices@plugged-{n}"), seen)).count();
    assert_eq!(any(&after(&mut bench, &KNEEL)), 0);
    assert_eq!(any(&after(&mut bench, &[Action::Look(Subject::Orifices)])), 1);
}

/// A connector bent straight stays creased until it is replaced, whatever a look says.
#[test]
fn a_wrong_remedy_leaves_its_mark() {
    let mut bench = faulty("kinked_connector");
    let way = [
        Action::Go(Place::PlantRoom),
        Action::Look(Subject::Connector),
        Action::FurnaceSwitch(OnOff::Off),
        Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 },
        Action::Mend(Repair::StraightenConnector),
    ];
    assert!(shown("connector@creased", &after(&mut bench, &way)));
    assert!(shown("connector@creased", &after(&mut bench, &[Action::Look(Subject::Connector)])));
    let mut bench = faulty("blocked_regulator_vent");
    let seen = after(&mut bench, &[Action::Mend(Repair::PlugRegulatorVent)]);
    assert!(shown("supply-vent@taped", &seen) && !shown("supply-vent@clear", &seen));
}

/// Water or a pinch shows in the manometer's hose once it is out of the roll.
#[test]
fn the_hose_shows_what_is_in_it() {
    for (name, look) in
        [("water_in_meter_hose", HoseLook::Wet), ("pinched_meter_hose", HoseLook::Pinched)]
    {
        let mut bench = faulty(name);
        assert_eq!(
            after(&mut bench, &KNEEL).meter().unwrap().hose_look,
            HoseLook::Clear,
            "{name}, rolled up"
        );
        assert_eq!(
            after(&mut bench, &[Action::Take(Tool::Hose)]).meter().unwrap().hose_look,
            look,
            "{name}"
        );
    }
}

/// Wind through a holed exchanger leans the flames when the blower runs, and not before.
#[test]
fn a_holed_exchanger_bends_the_flames_with_the_blower() {
    let mut bench = faulty("holed_exchanger");
    after(
        &mut bench,
        &[Action::Go(Place::PlantRoom), Action::Door { door: Door::Burner, to: Fitted::Off }],
    );
    let lean = |seen: &Seen| {
        pose("flame-1.body", seen).filter(|p| p.shown == Shown::Yes).map(|p| p.turn_deg)
    };
    let (mut upright, mut leaning) = (false, false);
    for _ in 0..50 * 180 {
        bench.step();
        let seen = bench.seen();
        let blower = seen.furnace.as_ref().map_or(0.0, |f| f.blower);
        match lean(&seen) {
            Some(turn) if blower < 0.01 => {
                assert!(turn.abs() < 1.0, "{turn} without the blower");
                upright = true;
            }
            Some(turn) if turn > 8.0 => leaning = true,
            Some(_) | None => {}
        }
    }
    assert!(upright && leaning);
}

/// Where air is short the flames turn yellow and smoke; where it is not, they do neither.
#[test]
fn flames_without_air_turn_yellow_and_smoke() {
    let most = |bench: &mut Bench| {
        after(
            bench,
            &[
                Action::Go(Place::PlantRoom),
                Action::Door { door: Door::Burner, to: Fitted::Off },
                Action::StageJumper(Fitted::On),
            ],
        );
        let (mut tip, mut soot) = (false, false);
        for _ in 0..50 * 300 {
            bench.step();
            let seen = bench.seen();
            let on = |id| pose(id, &seen).is_some_and(|pose| pose.shown == Shown::Yes);
            tip |= on("flame-2.tip");
            soot |= on("flame-2.soot");
        }
        (tip, soot)
    };
    let found = scenario::builtin::find("healthy-natural").expect("it comes with the program");
    let setup = scenario::load(found.text).expect("it is sound").draw(7);
    let (_, smokes) = most(&mut Bench::new(setup.clone()));
    assert!(!smokes);
    let mut blocked = setup;
    Fault::BlockedIntake.apply(&mut blocked, 0.72);
    assert!(most(&mut Bench::new(blocked)).0, "no yellow tip");
}

/// Of the rooms, the walls and the weathers exactly one is drawn: what the job has, and snow where it
/// freezes.
#[test]
fn a_place_has_the_looks_of_its_job() {
    let found = scenario::builtin::find("healthy-natural").expect("it comes with the program");
    let mut setup = scenario::load(found.text).expect("it is sound").draw(7);
    let of = |ids: &[&'static str], seen: &Seen| -> Vec<&'static str> {
        ids.iter().copied().filter(|id| shown(id, seen)).collect()
    };
    for (room, id) in [
        (Room::Basement, "room@basement"),
        (Room::Closet, "room@closet"),
        (Room::Garage, "room@garage"),
        (Room::Attic, "room@attic"),
    ] {
        setup.scene.room = room;
        let seen = Bench::new(setup.clone()).seen();
        let rooms = ["room@basement", "room@closet", "room@garage", "room@attic"];
        assert_eq!(of(&rooms, &seen), [id]);
    }
    for (yard, wall) in [(YardLook::Siding, "wall@siding"), (YardLook::Brick, "wall@brick")] {
        setup.scene.yard = yard;
        let seen = Bench::new(setup.clone()).seen();
        assert_eq!(of(&["wall@siding", "wall@brick"], &seen), [wall]);
    }
    for (outside_f, weather) in [(8.0, "weather@snow"), (50.0, "weather@mild")] {
        setup.outside_k = quarterturn::units::k_from_f(outside_f);
        let seen = Bench::new(setup.clone()).seen();
        assert_eq!(of(&["weather@snow", "weather@mild"], &seen), [weather]);
    }
    let lights = ["light@dawn", "light@day", "light@dusk", "light@dark"];
    for (hour, light) in [
        (5.0, "light@dark"),
        (7.5, "light@dawn"),
        (12.0, "light@day"),
        (16.5, "light@dusk"),
        (19.0, "light@dark"),
    ] {
        setup.scene.begins = TimeOfDay::from_hours(hour);
        let seen = Bench::new(setup.clone()).seen();
        assert_eq!(of(&lights, &seen), [light]);
    }
}

/// The valve in the furnace room is drawn small with the body and the levels of the job.
#[test]
fn the_small_valve_has_the_body_of_the_job() {
    let looks = [
        "two-coils",
        "stacked-two",
        "stacked-one",
        "side-two",
        "side-one",
        "plugs",
        "taps",
        "side-by-side",
    ];
    for (job, body, wanted) in [
        ("healthy-natural", ValveBody::Plugs, ["two-coils", "stacked-two", "plugs"].as_slice()),
        ("healthy-natural", ValveBody::TapScrews, &["two-coils", "stacked-two", "taps"]),
        ("healthy-natural", ValveBody::SideBySide, &["two-coils", "side-two", "side-by-side"]),
        ("one-screw-one-number", ValveBody::Plugs, &["stacked-one", "plugs"]),
        ("one-screw-one-number", ValveBody::SideBySide, &["side-one", "side-by-side"]),
    ] {
        let found = scenario::builtin::find(job).expect("it comes with the program");
        let mut setup = scenario::load(found.text).expect("it is sound").draw(7);
        setup.scene.valve = body;
        let seen = after(&mut Bench::new(setup), &[Action::Go(Place::PlantRoom)]);
        let has: Vec<_> =
            looks.into_iter().filter(|look| shown(&format!("gas-valve@{look}"), &seen)).collect();
        assert_eq!(has, wanted, "{job} {body:?}");
    }
}

/// The valve close up is drawn with the body of the job.
#[test]
fn the_valve_is_drawn_with_its_body() {
    let found = scenario::builtin::find("healthy-natural").expect("it comes with the program");
    let mut setup = scenario::load(found.text).expect("it is sound").draw(7);
    for (body, name) in [(ValveBody::Plugs, "gas_valve"), (ValveBody::SideBySide, "gas_valve_side")]
    {
        setup.scene.valve = body;
        let seen = after(&mut Bench::new(setup.clone()), &KNEEL);
        assert_eq!(drawing_of(&seen), Some(name));
    }
}

/// The air is drawn for the gas detector alone.
#[test]
fn the_air_is_drawn_while_it_is_asked_for() {
    let mut bench = faulty("kinked_connector");
    let seen = after(&mut bench, &[Action::Go(Place::PlantRoom)]);
    assert!(!shown("floor-zone@asked", &seen) && !shown("breathing-zone@asked", &seen));
    let seen = after(&mut bench, &[Action::Take(Tool::GasDetector)]);
    assert!(shown("floor-zone@asked", &seen) && shown("breathing-zone@asked", &seen));
}
