//! Work done with the pointer on the parts themselves, in the whole program: what the hand does
//! becomes the same actions as those of a script, and the bench obeys.

use bevy::input::ButtonState;
use bevy::prelude::*;
use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::parts::{
    Door, Fitted, HandValve, OnOff, Place, Port, PortFill, Push, Screw, Tool,
};
use quarterturn::scenario::load;
use quarterturn::senses::seen::{Display, FluidSeen};

use super::rig::{Pixels, Rig};
use super::store::TestStore;

const JOB: &str = "propane-cold-morning";

fn fill(rig: &Rig) -> PortFill {
    let furnace = rig.seen().furnace.expect("in view");
    furnace.burners.expect("the door is off").ports[Port::Manifold].fill
}

fn drag_to(rig: &mut Rig, from: &str, to: &str) {
    let (from, to) = (rig.middle(from), rig.middle(to));
    let way: Vec<Vec2> = (0..=6_u8).map(|i| from.lerp(to, f32::from(i) / 6.0)).collect();
    rig.drag(&way);
}

fn press(rig: &mut Rig, part: &str) {
    let at = rig.middle(part);
    rig.click(at);
    // Long enough that the next press is none of a double click.
    rig.frames(30);
}

/// From the switch to the turned screw and the brushed joint: isolated, plug out, adapter, hose in
/// two pushes, zero, cap, screw, fluid. The actions are those that a script would give.
#[test]
fn a_gauge_is_put_on_and_a_screw_turned_by_hand() {
    let mut rig = in_plant_room();
    press(&mut rig, "furnace-switch");
    rig.turn("manual-valve", 100.0);
    press(&mut rig, "burner-door");
    rig.click_on("Go to: Gas valve");
    rig.frames(6);
    press(&mut rig, "hex-key");
    assert_eq!(rig.seen().hand, Some(Tool::HexKey));
    rig.turn("manifold-port", -80.0);
    assert_eq!(fill(&rig), PortFill::HandTight);
    rig.turn("manifold-port", -600.0);
    assert_eq!(fill(&rig), PortFill::Open);
    press(&mut rig, "hex-key");
    drag_to(&mut rig, "adapter", "manifold-port");
    assert_eq!(fill(&rig), PortFill::BareAdapter);
    drag_to(&mut rig, "hose", "manifold-port");
    assert_eq!(fill(&rig), PortFill::Hose(Push::Halfway));
    press(&mut rig, "manifold-port");
    assert_eq!(fill(&rig), PortFill::Hose(Push::Fully));
    press(&mut rig, "meter-power");
    press(&mut rig, "meter-zero");
    assert!(matches!(rig.seen().display(), Some(Display::Number(shown)) if shown.value == 0.0));
    press(&mut rig, "slotted-driver");
    rig.turn("low-cap", -300.0);
    rig.turn("low-screw", 100.0);
    press(&mut rig, "leak-fluid");
    assert_eq!(rig.seen().hand, Some(Tool::LeakFluid));
    let joint = rig.middle("inlet-port");
    rig.drag(&[-20.0, 20.0, -20.0, 20.0].map(|x| joint + Vec2::new(x, 0.0)));
    let furnace = rig.seen().furnace.expect("in view");
    let fluid = furnace.burners.expect("the door is off").fluid;
    assert_ne!(fluid[Port::Inlet.joint()], FluidSeen::Dry);

    let done: Vec<Action> =
        rig.job().finished().done.iter().map(|(_, action)| action.clone()).collect();
    // The lever goes through its steps; where it ends is what counts.
    let hand_valve = HandValve::Furnace;
    let (lever, others): (Vec<Action>, Vec<Action>) = done
        .into_iter()
        .partition(|it| matches!(it, Action::HandValve { hand_valve: HandValve::Furnace, .. }));
    assert_eq!(lever.last(), Some(&Action::HandValve { hand_valve, degrees: 0 }));
    assert_eq!(others, script());
}

/// The same work as a script gives it.
fn script() -> Vec<Action> {
    let plug = |step| Action::Plug { port: Port::Manifold, step };
    let turned = |eighths| Action::Turn { screw: Screw::Low, eighths };
    vec![
        Action::Go(Place::PlantRoom),
        Action::FurnaceSwitch(OnOff::Off),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Go(Place::GasValve),
        Action::Take(Tool::HexKey),
        plug(PlugStep::BreakLoose),
        plug(PlugStep::SpinOut),
        Action::PutDown,
        Action::Take(Tool::Adapter),
        Action::Adapter { port: Port::Manifold, to: Fitted::On },
        Action::Take(Tool::Hose),
        Action::HoseOn { port: Port::Manifold, push: Push::Halfway },
        Action::HoseOn { port: Port::Manifold, push: Push::Fully },
        Action::MeterPower(OnOff::On),
        Action::MeterZero,
        Action::Take(Tool::SlottedDriver),
        Action::Cap { screw: Screw::Low, to: Fitted::Off },
        turned(1),
        turned(1),
        Action::PutDown,
        Action::Take(Tool::LeakFluid),
        Action::LeakFluid(Port::Inlet.joint()),
    ]
}

fn manual_valve_deg(rig: &Rig) -> Option<i16> {
    rig.seen().furnace.map(|furnace| furnace.manual_valve.deg())
}

fn in_plant_room() -> Rig {
    let store =
        TestStore { before: (vec![(0, Action::Go(Place::PlantRoom))], 1), ..TestStore::default() };
    let mut rig = Rig::open(store, Some(JOB), (1280, 720), Pixels::None);
    rig.frames(4);
    rig
}

/// A finger does what the mouse does: a tap flips, a swing turns, a drag carries.
#[test]
fn a_finger_does_what_the_mouse_does() {
    let mut rig = in_plant_room();
    let switch = rig.middle("furnace-switch");
    rig.finger(&[switch]);
    assert_eq!(rig.seen().furnace.map(|furnace| furnace.switch), Some(OnOff::Off));
    let way = rig.way_round("manual-valve", 100.0);
    rig.finger(&way);
    assert_eq!(manual_valve_deg(&rig), Some(0));
    let (from, to) = (rig.middle("leak-fluid"), rig.middle("union"));
    let way: Vec<Vec2> = (0..=6_u8).map(|i| from.lerp(to, f32::from(i) / 6.0)).collect();
    rig.finger(&way);
    assert_eq!(rig.seen().hand, Some(Tool::LeakFluid));
}

/// A drag in which the window changes its size ends with it: nothing stays in the grip.
#[test]
fn a_drag_that_the_window_loses_ends() {
    let mut rig = in_plant_room();
    let way = rig.way_round("manual-valve", 40.0);
    rig.point(way[0]);
    rig.button(ButtonState::Pressed);
    rig.point(way[2]);
    rig.resize(1024, 768);
    rig.button(ButtonState::Released);
    let before = rig.job().finished().done.len();
    for &at in &way {
        rig.point(at);
    }
    assert_eq!(rig.job().finished().done.len(), before);
}

/// A valve that is swung in steps and one that is turned at once leave the same bench.
#[test]
fn a_lever_in_steps_ends_as_one_turn() {
    let scenario = load(quarterturn::scenario::builtin::LADDER[0].text).expect("it loads");
    let hand_valve = HandValve::Furnace;
    let bench = |steps: &[i16]| {
        let mut bench = Bench::new(scenario.draw(1));
        bench.apply(&Action::Go(Place::PlantRoom)).expect("it is near");
        for &degrees in steps {
            bench.apply(&Action::HandValve { hand_valve, degrees }).expect("it turns");
        }
        bench.digest()
    };
    assert_eq!(bench(&[75, 60, 45, 30, 15, 0]), bench(&[0]));
}
