//! From what is seen to how the drawing stands: each change at the bench moves its own piece.

use quarterturn::app::drawings::all;
use quarterturn::app::hose::hoses;
use quarterturn::app::pose::{Shown, is_absent, moves, pose};
use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::parts::{
    Door, Fitted, HandValve, Level, Levels, OnOff, Opening, OtherAppliance, Place, Port, Push,
    Screw, TimeOfDay, Tool, Window,
};
use quarterturn::scenario;
use quarterturn::senses::seen::{FlameSeen, Seen};

fn bench(id: &str) -> Bench {
    let found = scenario::builtin::find(id).expect("it comes with the program");
    Bench::new(scenario::load(found.text).expect("it is sound").draw(7))
}

fn after(id: &str, actions: &[Action]) -> Seen {
    let mut bench = bench(id);
    for action in actions {
        if let Err(why) = bench.apply(action) {
            panic!("{action:?}: {}", why.text());
        }
        bench.step();
    }
    bench.seen()
}

fn turn(id: &str, seen: &Seen) -> f32 {
    pose(id, seen).expect("it is posed").turn_deg
}

fn shown(id: &str, seen: &Seen) -> bool {
    pose(id, seen).expect("it is posed").shown == Shown::Yes
}

const KNEEL: [Action; 5] = [
    Action::Go(Place::PlantRoom),
    Action::FurnaceSwitch(OnOff::Off),
    Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 },
    Action::Door { door: Door::Burner, to: Fitted::Off },
    Action::Go(Place::GasValve),
];

fn kneeling(then: &[Action]) -> Seen {
    after("propane-cold-morning", &[&KNEEL[..], then].concat())
}

/// A handle lies along its pipe when open and across it when shut, half way between.
#[test]
fn handles_follow_their_valves() {
    for (degrees, want) in [(90, 0.0), (45, 45.0), (0, 90.0)] {
        let mut actions = vec![Action::Go(Place::PlantRoom)];
        if degrees != 90 {
            actions.push(Action::HandValve { hand_valve: HandValve::Furnace, degrees });
        }
        let seen = after("propane-cold-morning", &actions);
        assert_eq!(turn("manual-valve.handle", &seen), want);
    }
}

/// Screws turn by eighths of a turn and are seen with the cap off only.
#[test]
fn screws_turn_by_eighths() {
    let open = [
        Action::Take(Tool::SlottedDriver),
        Action::Cap { screw: Screw::Low, to: Fitted::Off },
        Action::Turn { screw: Screw::Low, eighths: 3 },
    ];
    let seen = kneeling(&open);
    assert_eq!(turn("low-screw.slot", &seen), 135.0);
    assert!(shown("low-cap@off", &seen) && !shown("low-cap@on", &seen));
    assert!(pose("high-screw.slot", &seen).is_none(), "its cap is on");
}

/// A plug goes from seated to proud to the tray; the adapter takes its place.
#[test]
fn a_plug_is_drawn_as_it_stands() {
    let states = ["in", "proud", "leaning", "out"];
    let which = |seen: &Seen| -> Vec<&str> {
        states.into_iter().filter(|s| shown(&format!("manifold-plug@{s}"), seen)).collect()
    };
    let port = Port::Manifold;
    let mut actions = vec![Action::Take(Tool::HexKey)];
    assert_eq!(which(&kneeling(&actions)), ["in"]);
    actions.push(Action::Plug { port, step: PlugStep::BreakLoose });
    assert_eq!(which(&kneeling(&actions)), ["proud"]);
    actions.push(Action::Plug { port, step: PlugStep::SpinOut });
    assert_eq!(which(&kneeling(&actions)), ["out"]);
    let mut leaning = actions.clone();
    leaning.push(Action::Plug { port, step: PlugStep::StartByKey });
    assert_eq!(which(&kneeling(&leaning)), ["leaning"]);
    let fit =
        [Action::PutDown, Action::Take(Tool::Adapter), Action::Adapter { port, to: Fitted::On }];
    actions.extend(fit);
    let seen = kneeling(&actions);
    assert!(shown("manifold-adapter@on", &seen) && !shown("inlet-adapter@on", &seen));
    assert!(!shown("adapter", &seen), "the adapter is not in the roll any more");
}

/// The hose runs from the meter to the port it is on, and lies in the roll otherwise.
#[test]
fn the_hose_runs_to_its_port() {
    let drawings = all().expect("the drawings are sound");
    let port = Port::Manifold;
    let mut actions = vec![
        Action::Take(Tool::HexKey),
        Action::Plug { port, step: PlugStep::BreakLoose },
        Action::Plug { port, step: PlugStep::SpinOut },
        Action::PutDown,
        Action::Take(Tool::Adapter),
        Action::Adapter { port, to: Fitted::On },
    ];
    assert!(hoses(&kneeling(&actions), "gas_valve", &drawings, None).is_empty());
    actions.extend([Action::Take(Tool::Hose), Action::HoseOn { port, push: Push::Fully }]);
    let seen = kneeling(&actions);
    let drawn = hoses(&seen, "gas_valve", &drawings, None);
    assert_eq!(drawn.len(), 1);
    let valve = drawings.iter().find(|s| s.name == "gas_valve").expect("drawn");
    let spot = valve.drawing.find("manifold-adapter.spot").expect("the barb's end is marked");
    assert_eq!(Some(drawn[0].to), valve.drawing.groups[spot].spot);
    assert!(!shown("hose", &seen) && shown("hose@taken", &seen));
}

/// Flames stand as high as the burners are fired and are gone when they are out.
#[test]
fn flames_follow_the_firing() {
    let mut bench = bench("propane-cold-morning");
    for action in
        [Action::Go(Place::PlantRoom), Action::Door { door: Door::Burner, to: Fitted::Off }]
    {
        bench.apply(&action).expect("it can be done");
    }
    assert!(!shown("flame-1.body", &bench.seen()));
    let mut glowed = false;
    for _ in 0..50 * 180 {
        bench.step();
        let seen = bench.seen();
        glowed |= shown("igniter.glow", &seen);
        if shown("flame-1.body", &seen) {
            break;
        }
    }
    assert!(glowed, "the igniter never glowed");
    for _ in 0..50 * 120 {
        bench.step();
    }
    let seen = bench.seen();
    let body = pose("flame-4.body", &seen).expect("posed");
    assert!(body.shown == Shown::Yes && body.scale[1] > 0.5, "{body:?}");
    assert!(pose("inducer.wheel", &seen).expect("posed").spin_rev_s > 0.0);
}

/// Switches, windows and other appliances.
#[test]
fn what_hands_set_is_drawn() {
    let seen = after(
        "propane-cold-morning",
        &[
            Action::Go(Place::PlantRoom),
            Action::FurnaceSwitch(OnOff::Off),
            Action::Window { window: Window::PlantRoom, to: Opening::Open },
            Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to: OnOff::On },
        ],
    );
    let lever = pose("furnace-switch.lever", &seen).expect("posed");
    assert_eq!(lever.scale[1], -1.0);
    assert!(shown("plant-window@open", &seen) && !shown("plant-window@closed", &seen));
    assert!(shown("water-heater.flame", &seen));
}

/// The label and the switch of a propane kit are drawn where they are, and only there.
#[test]
fn a_propane_kit_is_drawn_where_it_is() {
    let converted = kneeling(&[]);
    assert!(shown("conversion-label@on", &converted) && shown("low-gas-switch", &converted));
    let natural = after("natural-gas-busy-kitchen", &KNEEL);
    assert!(!shown("conversion-label@on", &natural) && !shown("low-gas-switch", &natural));
}

/// The hand of the gas meter turns with the gas, the tank gauge shows its level.
#[test]
fn dials_follow_the_supply() {
    let seen = after("natural-gas-busy-kitchen", &[]);
    let turns = seen.yard.as_ref().and_then(|y| y.dial_turns).expect("a meter");
    let want = (turns.fract() * 360.0) as f32;
    assert!((turn("meter-dial.hand", &seen) - want).abs() < 0.1);
    let seen = after("propane-cold-morning", &[]);
    let percent = seen.yard.as_ref().and_then(|y| y.tank_percent).expect("a tank");
    let want = (percent as f32 - 50.0) * 3.0;
    assert!((turn("tank-gauge.needle", &seen) - want).abs() < 0.1);
}

/// What belongs to a firing level is drawn on a furnace that has it and hidden on one that has not;
/// so are the second stage's coil and jumper.
#[test]
fn parts_of_levels_follow_the_furnace() {
    let of = |level: Level| [level.cap_id(), level.screw().id(), level.switch_id()];
    for (job, levels) in [
        ("one-screw-one-number", Levels::one(()).list()),
        ("propane-cold-morning", Levels::two((), ()).list()),
    ] {
        let seen = after(job, &KNEEL);
        for level in Level::ALL {
            for id in of(level) {
                assert!(moves(id), "{id}");
                assert_eq!(shown(id, &seen), levels.contains(&level), "{job}, {id}");
                assert_eq!(is_absent(id, &seen), !levels.contains(&level), "{job}, {id}");
            }
        }
        for id in ["high-coil", "stage-jumper"] {
            assert!(moves(id), "{id}");
            assert_eq!(shown(id, &seen), levels.len() > 1, "{job}, {id}");
        }
    }
}

/// Each flame dances by its own heat and air: one that wants air wide and slowly, a crisp one a
/// little; and each throws light of its own color, as bright as it is high.
#[test]
fn flames_dance_by_their_own_heat_and_air() {
    let mut seen = kneeling(&[]);
    let burners = seen.furnace.as_mut().and_then(|f| f.burners.as_mut()).expect("in view");
    burners.flames = [(1.0, 0.0), (1.0, 0.9), (0.5, 0.0), (0.0, 0.0)]
        .map(|(height, yellow)| FlameSeen { height, yellow });
    let of = |piece: &str, number: usize| {
        pose(&format!("flame-{number}.{piece}"), &seen).expect("it is posed")
    };
    let [crisp, lazy, low] = [1, 2, 3].map(|number| of("body", number));
    assert!(lazy.flicker > 3.0 * crisp.flicker && lazy.sway_deg > 3.0 * crisp.sway_deg);
    assert!(lazy.pace < crisp.pace && low.flicker > crisp.flicker);
    let [blue, yellow, dim, out] = [1, 2, 3, 4].map(|number| of("glow", number));
    assert!(blue.tint[2] > blue.tint[0] && yellow.tint[0] > yellow.tint[2]);
    assert!(blue.alpha > dim.alpha && out.shown == Shown::No);
}

/// What moves by itself has its cause: warm air over a burner that burns, dust in the light while the
/// blower moves the air, frost on the regulator of a tank that is cold with boiling.
#[test]
fn what_moves_by_itself_has_its_cause() {
    let water_heater =
        Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to: OnOff::On };
    let off = after("propane-cold-morning", &[Action::Go(Place::PlantRoom)]);
    let mut on = after("propane-cold-morning", &[Action::Go(Place::PlantRoom), water_heater]);
    assert!(!shown("water-heater.shimmer", &off) && shown("water-heater.shimmer", &on));
    let drift = |seen: &Seen| pose("blower.dust", seen).expect("it is posed").drift;
    assert_eq!(drift(&on), [0.0; 2]);
    on.furnace.as_mut().expect("in view").blower = 0.6;
    assert_ne!(drift(&on), [0.0; 2]);
    assert!(shown("blower.dust", &on));
    on.scene.begins = TimeOfDay::from_hours(22.0);
    assert!(!shown("blower.dust", &on));
    let mut yard = after("propane-cold-morning", &[]);
    assert!(!shown("first-regulator@frost", &yard));
    yard.yard.as_mut().expect("in view").frost = 0.7;
    assert!(shown("first-regulator@frost", &yard));
}
