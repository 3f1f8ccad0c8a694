//! A whole job in the window, from arrival to handing over: the reference technician decides, and
//! everything it decides is done through the panels, as a hand would, by what is named there.

use bevy::a11y::ActionRequest;
use bevy::input::keyboard::{Key, KeyCode};
use bevy_egui::egui::accesskit;
use quarterturn::app::boxes::Boxes;
use quarterturn::hands::action::Action;
use quarterturn::marking::{Brief, Observer};
use quarterturn::panels::{actions, parts};
use quarterturn::parts::{Ending, Level, Phase, Place, Port, Reading, Stage};
use quarterturn::scenario;
use quarterturn::senses::seen::Over;
use quarterturn::technician::{Player, Technician};

use super::rig::{Pixels, Rig};
use super::store::TestStore;

const JOB: &str = "propane-cold-morning";
/// Most frames that the job may take: pressures, and the work that its card asks for beside them,
/// with minutes of burning before each temperature.
const MOST_FRAMES: u32 = 18_000;

/// Activates the first thing that is called so, or so and a comma and its state.
fn activate(rig: &mut Rig, name: &str) {
    let named = rig.pressable();
    let state = format!("{name},");
    let exact = named.iter().find(|(label, _)| label == name);
    let stated = named.iter().find(|(label, _)| label.starts_with(&state));
    let targets: Vec<_> = exact.or(stated).into_iter().collect();
    if targets.is_empty() {
        let labels: Vec<&String> = named.iter().map(|(label, _)| label).collect();
        panic!("nothing is called `{name}` among {labels:#?}");
    }
    for (_, target) in targets {
        rig.app.world_mut().write_message(ActionRequest(accesskit::ActionRequest {
            action: accesskit::Action::Click,
            target_tree: accesskit::TreeId::ROOT,
            target_node: *target,
            data: None,
        }));
        rig.frames(3);
    }
}

/// How the name of the sheet's cell for a reading begins.
pub fn cell_of(reading: Reading) -> String {
    let port = match reading.port {
        Port::Inlet => "Inlet",
        Port::Manifold => "Manifold",
    };
    let stage = match reading.stage {
        Stage::Rest => "lock-up",
        Stage::Firing(Level::Only) => "firing",
        Stage::Firing(Level::Low) => "low fire",
        Stage::Firing(Level::High) => "high fire",
        Stage::FullLoad => "full connected load",
        Stage::RestAgain => "lock-up after flow",
    };
    let phase = match reading.phase {
        Phase::Found => "found",
        Phase::Left => "left",
    };
    format!("{port}, {stage}, {phase}: ")
}

fn write(rig: &mut Rig, reading: Reading) {
    let cell = cell_of(reading);
    let named = rig.named();
    let label = named.iter().map(|(label, ..)| label).find(|label| label.starts_with(&cell));
    let label = label.unwrap_or_else(|| panic!("no cell `{cell}`")).clone();
    activate(rig, &label);
    let text = format!("{:.2}", f64::from(reading.thousandths) / 1000.0);
    for c in text.chars() {
        rig.key(KeyCode::Digit0, Key::Character(c.to_string().into()));
    }
    rig.key(KeyCode::Enter, Key::Enter);
}

/// Does one of the listed ways: at the part that offers it, or from what can be done here.
fn by_list(rig: &mut Rig, action: &Action) {
    let seen = rig.seen();
    let general = actions::here(&seen).into_iter().chain(actions::in_hand(&seen));
    if let Some(way) = general.into_iter().find(|way| way.action == *action) {
        return activate(rig, &way.label);
    }
    let ids: Vec<String> =
        rig.app.world().resource::<Boxes>().0.iter().map(|b| b.id.clone()).collect();
    // Small parts come after large ones in a drawing.
    for id in ids.iter().rev() {
        let part = parts::canonical(id).to_owned();
        // The thermostat's own name begins like those of its buttons, which item the same.
        if parts::is_piece(id) || part == "thermostat" {
            continue;
        }
        if let Some(way) =
            actions::choices(&part, &seen).into_iter().find(|way| way.action == *action)
        {
            activate(rig, &parts::name(&part));
            if rig.named().iter().any(|(label, ..)| *label == way.label) {
                return activate(rig, &way.label);
            }
        }
    }
    // Kneeling at the valve the rest of the furnace is out of current: get up, do it, kneel again.
    assert_eq!(seen.place, Place::GasValve, "no part here offers {action:?} among {ids:?}");
    by_list(rig, &Action::Go(Place::PlantRoom));
    by_list(rig, action);
    by_list(rig, &Action::Go(Place::GasValve));
}

fn perform(rig: &mut Rig, action: &Action) {
    match action {
        Action::Write(reading) => write(rig, *reading),
        // A hand opens it in one sweep; the slow start is the technician's own.
        Action::HandValve { degrees: 1..=89, .. } => {}
        Action::Setpoint(half_f) => {
            for _ in 0..60 {
                let now = rig.seen().hall.expect("at the thermostat").setpoint_half_f;
                let press = (half_f - now).signum();
                if press == 0 {
                    return;
                }
                by_list(rig, &Action::Setpoint(now + press));
            }
            panic!("the setpoint never came to {half_f}");
        }
        Action::Turn { screw, eighths } => {
            for _ in 0..eighths.unsigned_abs() {
                by_list(rig, &Action::Turn { screw: *screw, eighths: eighths.signum() });
                rig.frames(20);
            }
        }
        Action::Plug { port, step: quarterturn::hands::action::PlugStep::Tighten(eighths) } => {
            let step = quarterturn::hands::action::PlugStep::Tighten(1);
            for _ in 0..*eighths {
                by_list(rig, &Action::Plug { port: *port, step });
            }
        }
        Action::WriteFinding(finding) => {
            let part = finding.cause.part().label();
            if !rig.named().iter().any(|(label, ..)| label == part) {
                activate(rig, "What was wrong");
            }
            activate(rig, part);
            activate(rig, finding.cause.label());
            activate(rig, finding.answer.label());
            for backing in &finding.evidence {
                activate(rig, &quarterturn::panels::finding::label(*backing));
            }
            activate(rig, "Write it on the sheet");
        }
        Action::HandOver(said) => {
            activate(rig, "End the job");
            let ending = match said.ending {
                Ending::InService => "The furnace is back in service",
                Ending::SupplyOwnerCalled => "It runs; the owner of the supply has been called",
                Ending::ShutOff => "Shut off, tagged and explained",
            };
            activate(rig, ending);
            for duty in &said.not_done {
                activate(rig, duty.label());
            }
            activate(rig, "Hand over and leave");
        }
        other => by_list(rig, other),
    }
}

/// The job is done in the window to its end, and the marks of what was done there have every
/// essential met.
#[test]
fn a_whole_job_is_done_in_the_window() {
    let mut rig = Rig::open(TestStore::default(), Some(JOB), (1280, 720), Pixels::None);
    rig.click_on("Speed ×20");
    let mut technician = Technician::new(rig.job().card());
    let mut frames = 0;
    while rig.job().over().is_none() {
        // An event that must not be rushed past slows time down; afterwards it may run again.
        if rig.job().pace().speed == 1 && !rig.job().hazard() {
            activate(&mut rig, "Speed ×20");
        }
        let looks = rig.job().pace().speed;
        let seen = rig.seen();
        let action = (0..looks).find_map(|_| technician.next(&seen));
        match action {
            Some(action) => perform(&mut rig, &action),
            None => rig.frames(1),
        }
        frames += 1;
        assert!(
            frames < MOST_FRAMES,
            "the job does not end; last done: {:#?}",
            rig.job().finished().done.iter().rev().take(12).collect::<Vec<_>>()
        );
    }
    assert!(matches!(rig.job().over(), Some(Over::HandedOver(Ending::SupplyOwnerCalled))));
    let scenario =
        scenario::load(scenario::builtin::find(JOB).expect("it ships").text).expect("sound");
    let finished = rig.job().finished();
    let mut bench = quarterturn::bench::Bench::new(finished.bench.setup().clone());
    let mut observer = Observer::new(&bench);
    let mut next = finished.done.iter().peekable();
    while bench.over().is_none() {
        while let Some((_, action)) = next.next_if(|(tick, _)| *tick <= bench.tick()) {
            bench.apply(action).unwrap_or_else(|why| panic!("{action:?}: {}", why.text()));
        }
        let events = bench.take_events();
        observer.tick(&bench, events);
        if bench.over().is_none() {
            bench.step();
        }
    }
    let book = scenario.marking.rule_book().expect("sound");
    let marks = observer.marks(&book, &Brief { right_endings: scenario.marking.endings });
    assert!(marks.verdict.is_met() && marks.findings.is_empty(), "{:#?}", marks.findings);
}
