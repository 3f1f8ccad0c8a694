//! The cutaway: what it shows is the model's own state, it follows the screw, it covers neither
//! meter nor tools, and it is not there where somebody works alone.

use egui::{Key, Rect};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::panels::Command;
use quarterturn::panels::cutaway::{Leaf, flow, shown};
use quarterturn::panels::view::Help;
use quarterturn::parts::{Fitted, Place, PortFill, Screw, Tool};
use quarterturn::units::{PressureUnit, TICKS_PER_S};

use crate::coached::Follower;
use crate::fixture::{App, Which, seen, seen_open, window};

const JOB: &str = "propane-cold-morning";
const UNIT: PressureUnit = PressureUnit::InWc;

/// Burning on low, the manometer on the manifold port.
fn burning() -> Bench {
    Follower::bench_after(JOB, 1, 1)
}

fn on(bench: &Bench, (width, height): (f32, f32), leaf: Leaf) -> Harness<'static, App> {
    let mut app = App::new(Which::Job, bench.seen());
    app.help = Help::Coached;
    app.behind = Some((bench.truth(), bench.inside()));
    let mut harness = window(app, width, height);
    harness.key_press(Key::F7);
    // The dots go on and on.
    harness.run_steps(3);
    harness.get_by_label(&format!("Cutaway: {}", leaf.label())).click();
    harness.run_steps(4);
    harness
}

fn show(harness: &mut Harness<'_, App>, bench: &Bench) {
    harness.state_mut().seen = bench.seen();
    harness.state_mut().behind = Some((bench.truth(), bench.inside()));
    harness.run_steps(3);
}

fn wait(bench: &mut Bench, seconds: u64) {
    for _ in 0..seconds * TICKS_PER_S {
        bench.step();
    }
}

/// Each pressure along the pipe is that of the model, at rest and while it burns.
#[test]
fn pressures_are_those_of_the_model() {
    for bench in [burning(), Follower::bench_after(JOB, 3, 2)] {
        let harness = on(&bench, (1280.0, 720.0), Leaf::Pressures);
        let (truth, inside) = (bench.truth(), bench.inside());
        for (name, pa) in [
            ("Tank or gas main", inside.upstream_pa),
            ("Between the regulators", inside.supply.before_pa),
            ("After the regulator", truth.supply_pa),
            ("Tee in the house", truth.tee_pa),
            ("Inlet port", truth.inlet_pa),
            ("Manifold port", truth.manifold_pa),
            ("Burner box", truth.box_pa),
        ] {
            let label = format!("{name}: {}", shown(pa, UNIT));
            assert!(harness.query_by_label(&label).is_some(), "{label}");
        }
        let burners = format!("Orifices: takes {}", shown(truth.manifold_pa - truth.box_pa, UNIT));
        let burners = format!("{burners}; {}", flow(truth.burner_flow_m3_s));
        assert!(harness.query_by_label(&burners).is_some(), "{burners}");
    }
}

/// The low screw turned in: the spring is pressed further, holds more, and the manifold goes up
/// with it; the picture and its values follow.
#[test]
fn the_valve_follows_the_screw() {
    let mut bench = burning();
    let mut harness = on(&bench, (1280.0, 720.0), Leaf::Valve);
    let (truth, inside) = (bench.truth(), bench.inside());
    let turns = *inside.springs.first();
    assert!(turns.pressing, "the low spring does not press while low burns");
    let label = |bench: &Bench| {
        let spring = *bench.inside().springs.first();
        format!("in {:.2} of {:.0} turns, presses", spring.turns, spring.travel_turns)
    };
    assert!(harness.query_by_label_contains(&label(&bench)).is_some(), "{}", label(&bench));
    for action in [
        Action::Take(Tool::SlottedDriver),
        Action::Cap { screw: Screw::Low, to: Fitted::Off },
        Action::Turn { screw: Screw::Low, eighths: 4 },
    ] {
        assert_eq!(bench.apply(&action), Ok(()), "{action:?}");
        wait(&mut bench, 1);
    }
    wait(&mut bench, 20);
    let (turned, opened) = (bench.truth(), bench.inside());
    assert!((opened.springs.first().turns - turns.turns - 0.5).abs() < 1e-9);
    assert!(opened.valve.screwed_m > inside.valve.screwed_m);
    assert!(opened.valve.balance_pa > inside.valve.balance_pa + 10.0);
    assert!(turned.manifold_pa > truth.manifold_pa + 10.0);
    show(&mut harness, &bench);
    assert!(harness.query_by_label_contains(&label(&bench)).is_some(), "{}", label(&bench));
    let stands = format!("The manifold stands at {}", shown(turned.manifold_pa, UNIT));
    assert!(harness.query_by_label(&stands).is_some(), "{stands}");
}

/// The spring would hold what the manifold comes to, but for the droop of a few percent, while it
/// burns and the inlet is enough.
#[test]
fn the_spring_holds_the_manifold() {
    let bench = burning();
    let (truth, inside) = (bench.truth(), bench.inside());
    let ratio = truth.manifold_pa / inside.valve.balance_pa;
    assert!((0.9..1.02).contains(&ratio), "{ratio}");
    assert!(inside.valve.before_pa <= truth.inlet_pa && inside.seats_open > 0.9);
}

/// The strip says what the control does now and for how long.
#[test]
fn the_strip_says_what_the_control_does() {
    let bench = burning();
    let harness = on(&bench, (1280.0, 720.0), Leaf::Sequence);
    let passed = bench.inside().control.in_state_s;
    let now = format!("Now: Burning on low. Waits for the call to change or end. {passed:.0} s");
    assert!(harness.query_by_label(&now).is_some(), "{now}");
    let current = format!("Flame {:.1} µA", bench.truth().flame_ua);
    assert!(harness.query_by_label_contains(&current).is_some(), "{current}");
}

/// Gas in the air by height is the model's.
#[test]
fn the_air_is_the_models() {
    let bench = burning();
    let harness = on(&bench, (1280.0, 720.0), Leaf::Air);
    let air = bench.truth().gas_fraction;
    for (name, fraction) in [
        ("Where people breathe", air.breathing),
        ("Above the floor", air.floor),
        ("Burner vestibule", air.vestibule),
    ] {
        let said = format!("{name}: {:.2} % gas", 100.0 * fraction);
        assert!(harness.query_by_label_contains(&said).is_some(), "{said}");
    }
}

/// Solo there is no button, and neither key nor state opens it.
#[test]
fn it_is_not_there_solo() {
    assert!(!Help::Solo.opens_cutaway() && Help::Coached.opens_cutaway());
    let mut harness = window(App::new(Which::Job, seen(Place::PlantRoom)), 1280.0, 720.0);
    harness.key_press(Key::F7);
    harness.run();
    assert!(harness.query_by_label_contains("Cutaway").is_none());
    assert_eq!(harness.state().commands, []);
}

/// It is off at first; that it was opened is commanded to be written down, once each time.
#[test]
fn opening_it_is_told() {
    let bench = burning();
    let mut app = App::new(Which::Job, bench.seen());
    app.help = Help::Coached;
    app.behind = Some((bench.truth(), bench.inside()));
    let mut harness = window(app, 1280.0, 720.0);
    assert!(harness.query_by_label("Close, F7").is_none());
    for _ in 0..3 {
        harness.key_press(Key::F7);
        harness.run_steps(3);
    }
    let opened = harness.state().commands.iter().filter(|it| **it == Command::CutawayOpened);
    assert_eq!(opened.count(), 2);
}

/// It lies beside the drawing, never over it; it gives way to the sheet while a number is written,
/// and the sheet leaves the drawing too.
#[test]
fn it_covers_neither_meter_nor_tools() {
    let bench = burning();
    for size in [(1280.0, 720.0), (1024.0, 768.0)] {
        for leaf in Leaf::ALL {
            let mut harness = on(&bench, size, leaf);
            let scene = harness.state().layout.as_ref().unwrap().scene;
            assert!(scene.width() >= 480.0, "{size:?}");
            let close = harness.get_by_label("Close, F7").rect();
            assert!(!overlap(close, scene), "{leaf:?} at {size:?}");
            let tab = harness.get_by_label(&format!("Cutaway: {}", leaf.label())).rect();
            assert!(!overlap(tab, scene), "{leaf:?} at {size:?}");
            for part in &harness.state().parts {
                assert!(scene.expand(1.0).contains_rect(part.rect), "{}", part.id);
            }
            harness.get_by_label("Close, F7").click();
            harness.run_steps(3);
            assert!(harness.query_by_label("Close, F7").is_none());
        }
    }
}

/// While a number is written the sheet lies open wide beside the drawing, with plate, readings,
/// joints and notes in sight without scrolling; put away, everything is as before.
#[test]
fn the_sheet_opens_wide_to_be_written_on() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0)] {
        let mut harness = window(App::new(Which::Job, seen_open(PortFill::Snug)), width, height);
        harness.run();
        let before = harness.state().layout.as_ref().unwrap().scene;
        harness.key_press(Key::F6);
        harness.run();
        harness.key_press(Key::F6);
        harness.run();
        harness.get_by_label("Inlet, lock-up, found: not written").click();
        harness.run();
        let scene = harness.state().layout.as_ref().unwrap().scene;
        assert!(scene.width() >= 480.0 && scene.width() < before.width());
        for label in [
            "Inlet, lock-up, found: not written",
            "Manifold, high fire, left: not written",
            "Joints checked",
            "Plate: not read yet.",
            "Notes",
            "Write",
        ] {
            let at = harness.get_by_label(label).rect();
            assert!(!overlap(at, scene) && at.bottom() < height, "{label} at {width}: {at:?}");
        }
        harness.get_by_label("Fold the job sheet, F2").click();
        harness.run();
        assert_eq!(harness.state().layout.as_ref().unwrap().scene, before);
    }
}

/// What lay open for the step before goes when the coach's step is done.
#[test]
fn the_coachs_step_closes_what_lay_open() {
    let bench = burning();
    let mut app = App::new(Which::Job, bench.seen());
    app.help = Help::Coached;
    let mut harness = window(app, 1280.0, 720.0);
    harness.get_by_label_contains("Inlet port,").click();
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    assert!(harness.query_by_label("Close (Esc)").is_some());
    harness.get_by_label("Do the next step for me").click();
    harness.run();
    assert!(matches!(harness.state().commands.last(), Some(Command::Act(_))));
    assert!(harness.query_by_label("Close (Esc)").is_none());
}

/// What is said over the drawing covers neither manometer nor tools, wherever they lie.
#[test]
fn what_is_said_keeps_clear() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0)] {
        let mut app = App::new(Which::Job, seen_open(PortFill::Snug));
        app.refusal = Some("Gas pressure is left behind the shut valve: let it off first.");
        let mut harness = window(app, width, height);
        harness.run();
        let at = harness.get_by_label_contains("✗ Gas pressure is left").rect();
        for part in &harness.state().parts {
            let kept = part.id == "meter" || quarterturn::parts::at_hand().contains(&&*part.id);
            assert!(!kept || !overlap(at, part.rect), "{} at {width}: {at:?}", part.id);
        }
    }
}

fn overlap(a: Rect, b: Rect) -> bool {
    let both = a.intersect(b);
    both.width() > 0.5 && both.height() > 0.5
}
