//! The hand on the parts themselves: by pointer, by wheel, by keys.

use egui::{Event, Key, Modifiers, MouseWheelUnit, PointerButton, Pos2, TouchPhase, pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::panels::Command;
use quarterturn::panels::handling::handling;
use quarterturn::panels::spot::spots;
use quarterturn::parts::{
    Fitted, HandValve, Height, Joint, Levels, OnOff, Place, Port, PortFill, Push, Screw, Subject,
    Tool,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::senses::seen::{FluidSeen, Seen};

use crate::fixture::{App, Which, seen, seen_open};

fn at(seen: Seen) -> Harness<'static, App> {
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 720.0))
        .with_step_dt(1.0 / 60.0)
        .build_ui_state(|ui, app: &mut App| app.ui(ui), App::new(Which::Job, seen));
    harness.run_steps(4);
    harness
}

/// The middle of a part, where no smaller part lies over it.
fn middle(harness: &Harness<'static, App>, part: &str) -> Pos2 {
    let app = harness.state();
    let scene = app.layout.as_ref().unwrap().scene;
    let spots = spots(scene, app.seen.place, &app.parts);
    spots.iter().find(|spot| spot.part == part).unwrap_or_else(|| panic!("no {part}")).rect.center()
}

fn button(harness: &Harness<'static, App>, pos: Pos2, button: PointerButton, pressed: bool) {
    harness.event(Event::PointerButton { pos, button, pressed, modifiers: Modifiers::NONE });
}

fn press(harness: &mut Harness<'static, App>, pos: Pos2, which: PointerButton) {
    harness.event(Event::PointerMoved(pos));
    harness.step();
    button(harness, pos, which, true);
    harness.step();
    button(harness, pos, which, false);
    harness.run_steps(2);
}

/// Drags through the points, a frame each; the bench lives on meanwhile.
fn drag(harness: &mut Harness<'static, App>, way: &[Pos2]) {
    harness.event(Event::PointerMoved(way[0]));
    harness.step();
    button(harness, way[0], PointerButton::Primary, true);
    harness.step();
    for &pos in &way[1..] {
        harness.event(Event::PointerMoved(pos));
        harness.step();
        answer(harness);
    }
    button(harness, way[way.len() - 1], PointerButton::Primary, false);
    harness.run_steps(2);
}

/// A tick of the bench: the manual valve is where it was last turned to.
fn answer(harness: &mut Harness<'static, App>) {
    let turned = acts(harness).into_iter().rev().find_map(|act| match act {
        Action::HandValve { hand_valve: HandValve::Furnace, degrees } => Some(degrees),
        _ => None,
    });
    let seen = &mut harness.state_mut().seen;
    seen.tick += 1;
    if let (Some(furnace), Some(degrees)) = (seen.furnace.as_mut(), turned) {
        furnace.manual_valve = HandleAngle::from_deg(degrees).unwrap();
    }
}

/// Points from a part outwards and round its middle, from the right-hand side on, `deg` clockwise.
fn round(middle: Pos2, radius: f32, deg: f32) -> Vec<Pos2> {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen")]
    let steps = (deg.abs() / 10.0).ceil() as u16;
    let on_it = core::iter::once(middle + vec2(8.0, 0.0));
    let way = (0..=steps).map(|step| {
        let a = (deg * f32::from(step) / f32::from(steps)).to_radians();
        middle + vec2(a.cos(), a.sin()) * radius
    });
    on_it.chain(way).collect()
}

fn acts(harness: &Harness<'static, App>) -> Vec<Action> {
    let act = |command: &Command| match command {
        Command::Act(action) => Some(action.clone()),
        _ => None,
    };
    harness.state().commands.iter().filter_map(act).collect()
}

fn eighths_of(acts: &[Action]) -> i16 {
    acts.iter()
        .map(|act| match act {
            Action::Turn { screw: Screw::Low, eighths } => *eighths,
            other => panic!("{other:?}"),
        })
        .sum()
}

fn uncapped() -> Seen {
    let mut seen = seen_open(PortFill::Snug);
    let burners = seen.furnace.as_mut().unwrap().burners.as_mut().unwrap();
    burners.caps = Levels::two(Fitted::Off, Fitted::Off);
    seen.hand = Some(Tool::SlottedDriver);
    seen
}

/// A press on a switch flips it; nothing opens over it.
#[test]
fn a_press_flips_a_switch() {
    let mut harness = at(seen(Place::PlantRoom));
    let at = middle(&harness, "furnace-switch");
    press(&mut harness, at, PointerButton::Primary);
    assert_eq!(acts(&harness), [Action::FurnaceSwitch(OnOff::Off)]);
    assert!(harness.query_by_label("Close (Esc)").is_none(), "no list");
}

/// The second half of a double click is no second flip.
#[test]
fn a_double_click_flips_once() {
    let mut harness = at(seen(Place::PlantRoom));
    let pos = middle(&harness, "furnace-switch");
    harness.event(Event::PointerMoved(pos));
    harness.step();
    for pressed in [true, false, true, false] {
        button(&harness, pos, PointerButton::Primary, pressed);
        harness.step();
    }
    assert_eq!(acts(&harness).len(), 1, "{:?}", acts(&harness));
}

/// The other button opens the list, and does nothing.
#[test]
fn the_other_button_opens_the_list() {
    let mut harness = at(seen(Place::PlantRoom));
    let at = middle(&harness, "furnace-switch");
    press(&mut harness, at, PointerButton::Secondary);
    assert!(acts(&harness).is_empty());
    assert!(harness.query_by_label("Close (Esc)").is_some(), "its list");
}

/// A screw that is dragged round turns by eighths, as far as the hand went round, either way.
#[test]
fn a_screw_follows_the_hand() {
    for (deg, eighths) in [(100.0, 2), (-140.0, -3), (400.0, 8), (40.0, 0)] {
        let mut harness = at(uncapped());
        let middle = middle(&harness, "low-screw");
        drag(&mut harness, &round(middle, 40.0, deg));
        assert_eq!(eighths_of(&acts(&harness)), eighths, "{deg}°");
    }
}

/// A hand that goes to and fro leaves the screw where it was.
#[test]
fn to_and_fro_is_nothing() {
    let mut harness = at(uncapped());
    let middle = middle(&harness, "low-screw");
    let mut way = round(middle, 40.0, 150.0);
    way.extend(round(middle, 40.0, 150.0).into_iter().rev());
    drag(&mut harness, &way);
    assert_eq!(eighths_of(&acts(&harness)), 0);
    assert!(!acts(&harness).is_empty());
}

/// A notch of the wheel is an eighth; two notches at once are two.
#[test]
fn the_wheel_turns_a_screw() {
    let mut harness = at(uncapped());
    let pos = middle(&harness, "low-screw");
    harness.event(Event::PointerMoved(pos));
    harness.step();
    for lines in [1.0, 2.0, -1.0] {
        harness.event(Event::MouseWheel {
            unit: MouseWheelUnit::Line,
            delta: vec2(0.0, lines),
            phase: TouchPhase::Move,
            modifiers: Modifiers::NONE,
        });
        harness.step();
    }
    assert_eq!(eighths_of(&acts(&harness)), 2);
}

/// Arrow keys turn the part that has the keyboard, and leave it there.
#[test]
fn arrows_turn_a_screw() {
    let mut harness = at(uncapped());
    harness.get_by_label_contains("Low-fire screw").focus();
    harness.run_steps(2);
    for key in [Key::ArrowRight, Key::ArrowRight, Key::ArrowLeft, Key::ArrowRight] {
        harness.key_press(key);
        harness.step();
    }
    assert_eq!(eighths_of(&acts(&harness)), 2);
    assert!(harness.get_by_label_contains("Low-fire screw").is_focused());
}

/// Space does at once what a press does; Enter opens the list.
#[test]
fn space_presses_and_enter_opens_the_list() {
    for (key, done) in [(Key::Space, 1), (Key::Enter, 0)] {
        let mut harness = at(seen(Place::PlantRoom));
        harness.get_by_label_contains("Furnace switch").focus();
        harness.run_steps(2);
        harness.key_press(key);
        harness.run_steps(2);
        assert_eq!(acts(&harness).len(), done, "{key:?}");
        assert_eq!(harness.query_by_label("Close (Esc)").is_some(), done == 0, "{key:?}");
    }
}

/// A plug comes loose after an eighth and out after its thread, and not before; what was done is
/// not done again while the bench has not answered.
#[test]
fn a_plug_is_turned_out() {
    let plug = |step| Action::Plug { port: Port::Manifold, step };
    let cases = [
        (PortFill::Snug, -30.0, None),
        (PortFill::Snug, -80.0, Some(PlugStep::BreakLoose)),
        (PortFill::HandTight, -500.0, None),
        (PortFill::HandTight, -560.0, Some(PlugStep::SpinOut)),
        (PortFill::HandTight, 80.0, Some(PlugStep::Tighten(1))),
        (PortFill::Started, 560.0, Some(PlugStep::SpinIn)),
        // Across the thread it is felt at once, and can be backed off.
        (PortFill::Leaning, -80.0, Some(PlugStep::SpinOut)),
    ];
    for (fill, deg, step) in cases {
        let mut seen = seen_open(fill);
        seen.hand = Some(Tool::HexKey);
        let mut harness = at(seen);
        let middle = middle(&harness, "manifold-port");
        drag(&mut harness, &round(middle, 40.0, deg));
        assert_eq!(
            acts(&harness),
            step.map(plug).into_iter().collect::<Vec<_>>(),
            "{fill:?} {deg}"
        );
    }
}

/// A quick whirl between two ticks of the bench does one thing.
#[test]
fn nothing_is_done_twice_before_the_bench_answers() {
    let mut seen = seen_open(PortFill::Snug);
    seen.hand = Some(Tool::HexKey);
    let mut harness = at(seen);
    let middle = middle(&harness, "manifold-port");
    let way = round(middle, 40.0, -700.0);
    harness.event(Event::PointerMoved(way[0]));
    harness.step();
    button(&harness, way[0], PointerButton::Primary, true);
    harness.step();
    for &pos in &way[1..] {
        harness.event(Event::PointerMoved(pos));
        harness.step();
    }
    assert_eq!(acts(&harness).len(), 1, "{:?}", acts(&harness));
}

/// A lever follows the hand between its stops, in steps.
#[test]
fn a_lever_follows_the_hand() {
    for (deg, last) in [(95.0, 0), (200.0, 0), (50.0, 45)] {
        let mut harness = at(seen(Place::PlantRoom));
        let pos = middle(&harness, "manual-valve");
        drag(&mut harness, &round(pos, 40.0, deg));
        let acts = acts(&harness);
        let hand_valve = HandValve::Furnace;
        assert_eq!(acts.last(), Some(&Action::HandValve { hand_valve, degrees: last }), "{deg}°");
    }
    // Open already: against its stop nothing is done.
    let mut harness = at(seen(Place::PlantRoom));
    let pos = middle(&harness, "manual-valve");
    drag(&mut harness, &round(pos, 40.0, -90.0));
    assert!(acts(&harness).is_empty(), "{:?}", acts(&harness));
}

/// Strokes with the bottle in hand brush a joint once; a tap with it does not.
#[test]
fn strokes_brush_a_joint() {
    let mut open = seen_open(PortFill::Snug);
    open.hand = Some(Tool::LeakFluid);
    for (strokes, done) in [(2.0, 0), (30.0, 1)] {
        let mut harness = at(open.clone());
        // A part whose only way is the stroke.
        harness.state_mut().seen.place = Place::PlantRoom;
        harness.run_steps(2);
        let pos = middle(&harness, "union");
        let way: Vec<Pos2> =
            [0.0, 1.0, -1.0, 1.0, -1.0].map(|x| pos + vec2(x * strokes, 0.0)).to_vec();
        drag(&mut harness, &way);
        let brushed = acts(&harness);
        assert_eq!(brushed.len(), done, "{brushed:?}");
        assert!(brushed.iter().all(|it| *it == Action::LeakFluid(Joint::Union)));
    }
}

/// A tool that is dragged out of the roll is taken, and used where it is let go.
#[test]
fn a_tool_is_dragged_to_its_place() {
    let mut harness = at(seen_open(PortFill::Open));
    let (from, to) = (middle(&harness, "adapter"), middle(&harness, "manifold-port"));
    harness.event(Event::PointerMoved(from));
    harness.step();
    button(&harness, from, PointerButton::Primary, true);
    harness.step();
    for share in [0.3, 0.6, 1.0] {
        harness.event(Event::PointerMoved(from + (to - from) * share));
        harness.step();
        harness.state_mut().seen.tick += 1;
        harness.state_mut().seen.hand = Some(Tool::Adapter);
    }
    button(&harness, to, PointerButton::Primary, false);
    harness.run_steps(2);
    let adapter = Action::Adapter { port: Port::Manifold, to: Fitted::On };
    assert_eq!(acts(&harness), [Action::Take(Tool::Adapter), adapter]);
}

/// The hose goes on by its first barb, then home; it is pulled off again.
#[test]
fn the_hose_goes_on_in_two_pushes() {
    let on = |push| Action::HoseOn { port: Port::Manifold, push };
    let mut bare = seen_open(PortFill::BareAdapter);
    bare.hand = Some(Tool::Hose);
    let at_port = |seen: &Seen| handling("manifold-port", Height::Head, seen);
    assert_eq!(at_port(&bare).press, [on(Push::Halfway)]);
    assert_eq!(at_port(&seen_open(PortFill::Hose(Push::Halfway))).press, [on(Push::Fully)]);
    let mut harness = at(seen_open(PortFill::Hose(Push::Fully)));
    let pos = middle(&harness, "manifold-port");
    drag(&mut harness, &[pos, pos + vec2(20.0, 0.0), pos + vec2(60.0, 0.0), pos + vec2(90.0, 0.0)]);
    assert_eq!(acts(&harness), [Action::HoseOff]);
}

/// A plug that is started with the key goes in askew; with the fingers it starts true.
#[test]
fn a_plug_is_started_by_fingers_or_key() {
    let plug = |step| Action::Plug { port: Port::Inlet, step };
    let mut open = seen_open(PortFill::Open);
    let press = |seen: &Seen| handling("inlet-plug", Height::Head, seen).press;
    assert_eq!(press(&open), [plug(PlugStep::StartByHand)]);
    open.hand = Some(Tool::HexKey);
    assert_eq!(press(&open), [plug(PlugStep::StartByKey)]);
}

/// Air is smelt by staying in it; a tap is none.
#[test]
fn air_is_smelt_by_staying() {
    let mut harness = at(seen(Place::PlantRoom));
    let pos = middle(&harness, "floor-zone");
    harness.event(Event::PointerMoved(pos));
    harness.step();
    button(&harness, pos, PointerButton::Primary, true);
    harness.run_steps(2);
    assert!(acts(&harness).is_empty());
    harness.run_steps(60);
    button(&harness, pos, PointerButton::Primary, false);
    harness.run_steps(2);
    assert_eq!(acts(&harness), [Action::Sniff(Height::Floor)]);
    assert!(harness.query_by_label("Close (Esc)").is_none(), "no list on top");
}

/// What can only be looked at is looked at by a press.
#[test]
fn a_press_on_paper_reads_it() {
    let mut harness = at(seen(Place::PlantRoom));
    let at = middle(&harness, "plate");
    press(&mut harness, at, PointerButton::Primary);
    assert_eq!(acts(&harness), [Action::Look(Subject::Plate)]);
}

/// A cap comes off by turning, and lies beside; there a press puts it back.
#[test]
fn a_cap_comes_off_and_goes_back() {
    let mut capped = seen_open(PortFill::Snug);
    capped.hand = Some(Tool::SlottedDriver);
    let cap = |to| Action::Cap { screw: Screw::Low, to };
    let mut harness = at(capped);
    let pos = middle(&harness, "low-cap");
    drag(&mut harness, &round(pos, 40.0, -300.0));
    assert_eq!(acts(&harness), [cap(Fitted::Off)]);
    assert_eq!(handling("low-cap", Height::Head, &uncapped()).press, [cap(Fitted::On)]);
}

/// A wet joint is wiped with nothing in hand; a dry one is not.
#[test]
fn a_wet_joint_is_wiped() {
    let mut wet = seen_open(PortFill::Snug);
    let joint = Port::Manifold.joint();
    assert_eq!(handling("manifold-port", Height::Head, &wet).stroke, None);
    wet.furnace.as_mut().unwrap().burners.as_mut().unwrap().fluid[joint] = FluidSeen::Quiet(3.0);
    assert_eq!(handling("manifold-port", Height::Head, &wet).stroke, Some(Action::Wipe(joint)));
}

/// The pointer that is lost, or another place, leaves nothing in the grip.
#[test]
fn nothing_sticks_to_the_hand() {
    let mut harness = at(uncapped());
    let pos = middle(&harness, "low-screw");
    button(&harness, pos, PointerButton::Primary, true);
    harness.step();
    harness.event(Event::PointerMoved(pos + vec2(40.0, 0.0)));
    harness.step();
    harness.event(Event::PointerGone);
    button(&harness, pos, PointerButton::Primary, false);
    harness.run_steps(2);
    for at in round(pos, 40.0, 200.0) {
        harness.event(Event::PointerMoved(at));
        harness.step();
    }
    assert!(acts(&harness).is_empty(), "{:?}", acts(&harness));
    assert_eq!(harness.state().layout.as_ref().unwrap().turned, None);
}

/// What was refused to the hand is said at its part; what was refused to a list is said at the foot,
/// not at the part that the hand was on before.
#[test]
fn a_refusal_is_said_where_it_was_asked() {
    let why = "Put down what you hold first.";
    let mut harness = at(seen(Place::PlantRoom));
    let pos = middle(&harness, "furnace-switch");
    press(&mut harness, pos, PointerButton::Primary);
    harness.state_mut().refusal = Some(why);
    harness.run_steps(2);
    assert!(harness.query_by_label_contains(why).is_some());
    assert!(harness.query_by_label("OK").is_none(), "at the part it goes by itself");
    let before = harness.state().commands.len();
    harness.key_press(Key::A);
    harness.run_steps(2);
    assert!(acts(&harness).len() == 2, "{:?}", &harness.state().commands[before..]);
    assert!(harness.query_by_label_contains(why).is_some());
    assert!(harness.query_by_label("OK").is_some(), "at the foot it waits to be read");
}

/// A thread that the wheel has turned half way springs back when the mouse leaves it.
#[test]
fn a_thread_half_turned_springs_back() {
    let mut open = uncapped();
    let burners = open.furnace.as_mut().unwrap().burners.as_mut().unwrap();
    burners.ports[Port::Manifold].fill = PortFill::HandTight;
    open.hand = Some(Tool::HexKey);
    let mut harness = at(open);
    let pos = middle(&harness, "manifold-port");
    harness.event(Event::PointerMoved(pos));
    harness.step();
    harness.event(Event::MouseWheel {
        unit: MouseWheelUnit::Line,
        delta: vec2(0.0, -1.0),
        phase: TouchPhase::Move,
        modifiers: Modifiers::NONE,
    });
    harness.run_steps(2);
    let turned = |harness: &Harness<'static, App>| {
        harness.state().layout.as_ref().unwrap().turned.clone().map(|it| it.part)
    };
    assert_eq!(turned(&harness).as_deref(), Some("manifold-port"));
    harness.event(Event::PointerMoved(pos2(4.0, 400.0)));
    harness.run_steps(2);
    assert_eq!(turned(&harness), None);
    assert!(acts(&harness).is_empty());
}
