//! What the core costs: a step of the bench in four states, a network against its size, a whole job,
//! a day run on.
//!
//! `cargo bench --no-default-features` prints wall time; `-- --instructions` adds instructions a
//! step, which repeat on a busy machine: each case runs twice under valgrind, and the difference is
//! divided by the steps between. `docs/performance.md` says what the figures mean.

use std::process::Command;
use std::time::Instant;

use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::marking::Observer;
use quarterturn::model::aftermath::Stepping;
use quarterturn::parts::{Door, Fitted, OnOff, OtherAppliance, Place, Screw, Tool};
use quarterturn::physics::fluid::Gas;
use quarterturn::physics::network::{ElementId, Network, NetworkBuilder};
use quarterturn::physics::pipe::{PipeMaterial, PipeSpec};
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::{Technician, play};
use quarterturn::units::{P_STD_PA, T_STD_K};

const CASES: [&str; 5] = ["rest", "low", "high", "adjusted", "hurried"];
/// Nodes of the chains that show how cost grows.
const SIZES: [usize; 5] = [4, 12, 24, 48, 96];

fn bench(id: &str, case: &str) -> Bench {
    let text = builtin::find(id).map(|one| one.text).unwrap_or_default();
    let scenario = load(text).unwrap_or_else(|problems| panic!("{problems:?}"));
    let mut setup = scenario.draw(1);
    setup.found.thermostat_mode = OnOff::Off;
    let mut bench = Bench::new(setup);
    let mut act = |action: Action| {
        let _ = bench.apply(&action);
    };
    if case != "rest" {
        act(Action::Go(Place::Hall));
        act(Action::ThermostatMode(OnOff::On));
        act(Action::Setpoint(if case == "low" { 136 } else { 180 }));
    }
    if case != "rest" && case != "low" {
        act(Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On });
        act(Action::Go(Place::PlantRoom));
        act(Action::Door { door: Door::Burner, to: Fitted::Off });
        act(Action::StageJumper(Fitted::On));
        act(Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to: OnOff::On });
        act(Action::Go(Place::GasValve));
        act(Action::Take(Tool::SlottedDriver));
        act(Action::Cap { screw: Screw::High, to: Fitted::Off });
    }
    for _ in 0..150 * 50 {
        bench.step();
    }
    bench
}

/// Steps of a case. In the adjusted one the high screw goes an eighth to and fro every four seconds,
/// the pace that the rules ask for, in the hurried one every second.
fn run_steps(bench: &mut Bench, case: &str, steps: u32) {
    let between = match case {
        "adjusted" => 200,
        "hurried" => 50,
        _ => u32::MAX,
    };
    for step in 0..steps {
        if between < u32::MAX && step % between == 0 {
            let eighths = if step / between % 2 == 0 { 1 } else { -1 };
            let _ = bench.apply(&Action::Turn { screw: Screw::High, eighths });
            bench.take_events();
        }
        bench.step();
    }
}

fn time_steps(case: &str, steps: u32) -> f64 {
    let mut bench = bench("healthy-propane", case);
    let start = Instant::now();
    run_steps(&mut bench, case, steps);
    start.elapsed().as_secs_f64() / f64::from(steps)
}

/// A line of half-inch pipe with a burner's worth of gas out of its end.
fn chain(nodes: usize) -> (Network, ElementId) {
    let mut builder = NetworkBuilder::new(Gas::natural(), P_STD_PA);
    let main = builder.fixed_at(1_740.0, T_STD_K);
    let room = builder.fixed_at(0.0, T_STD_K);
    let mut last = main;
    for _ in 0..nodes {
        let next = builder.node(3e-4, T_STD_K, 1_740.0);
        let length_m = 24.0 / nodes as f64;
        builder.pipe(last, next, &PipeSpec::new(PipeMaterial::Steel, 0.015_8, length_m));
        last = next;
    }
    let burner = builder.opening(last, room, 1.2e-5);
    (builder.build(), burner)
}

/// Seconds a step of a chain, its burner a little up or down every second.
fn time_chain(nodes: usize) -> f64 {
    let (mut network, burner) = chain(nodes);
    let steps = 20_000_u32;
    let start = Instant::now();
    for step in 0..steps {
        if step % 50 == 0 {
            network.set_opening(burner, if step % 100 == 0 { 1.2e-5 } else { 1.1e-5 });
        }
        network.step(0.02);
    }
    start.elapsed().as_secs_f64() / f64::from(steps)
}

/// Simulated seconds per second of a whole job played by the technician and observed.
fn whole_job(id: &str) -> (f64, f64) {
    let text = builtin::find(id).map(|one| one.text).unwrap_or_default();
    let scenario = load(text).unwrap_or_else(|problems| panic!("{problems:?}"));
    let setup = scenario.draw(1);
    let start = Instant::now();
    let mut technician = Technician::new(&setup.card);
    let mut bench = Bench::new(setup);
    let mut observer = Observer::new(&bench);
    play(&mut bench, &mut technician, 3 * 3600, &mut observer);
    (bench.seconds(), start.elapsed().as_secs_f64())
}

/// Seconds for a day run on from a healthy house, by strides or by ticks.
fn time_day(id: &str, pace: Stepping) -> (f64, u32) {
    let text = builtin::find(id).map(|one| one.text).unwrap_or_default();
    let scenario = load(text).unwrap_or_else(|problems| panic!("{problems:?}"));
    let bench = Bench::new(scenario.draw(1));
    let start = Instant::now();
    let after = bench.aftermath(86_400.0, pace);
    (start.elapsed().as_secs_f64(), after.furnace.cycles)
}

/// Instructions of this program under valgrind; none where there is no valgrind.
fn instructions(case: &str, steps: u32) -> Option<f64> {
    let own = std::env::current_exe().ok()?;
    let output = Command::new("valgrind")
        .args(["--tool=callgrind", "--callgrind-out-file=/dev/null"])
        .arg(own)
        .args(["--case", case, "--steps", &steps.to_string()])
        .output()
        .ok()?;
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    let line = said.lines().find(|line| line.contains("Collected"))?;
    line.rsplit(' ').next()?.parse().ok()
}

fn main() {
    let args: Vec<String> = std::env::args().collect();
    let value =
        |name: &str| args.iter().position(|arg| arg == name).and_then(|i| args.get(i + 1)).cloned();
    if let Some(case) = value("--case") {
        let steps = value("--steps").and_then(|n| n.parse().ok()).unwrap_or(1000);
        println!("{case}: {:.0} ns a step", 1e9 * time_steps(&case, steps));
        return;
    }
    let counted = args.iter().any(|arg| arg == "--instructions");
    for case in CASES {
        let best = (0..5).map(|_| time_steps(case, 50_000)).fold(f64::INFINITY, f64::min);
        println!("{case:9} {:6.0} ns a step, {:7.0} times real time", 1e9 * best, 0.02 / best);
        if counted {
            match (instructions(case, 1_000), instructions(case, 5_000)) {
                (Some(few), Some(many)) => {
                    println!("{case:9} {:6.0} instructions a step", (many - few) / 4_000.0);
                }
                _ => println!("{case:9} no instructions: valgrind is not to be had"),
            }
        }
    }
    for nodes in SIZES {
        let best = (0..5).map(|_| time_chain(nodes)).fold(f64::INFINITY, f64::min);
        println!("chain of {nodes:2} nodes {:6.0} ns a step", 1e9 * best);
    }
    for job in builtin::JOBS {
        let (simulated, wall) = whole_job(job.id);
        let factor = simulated / wall;
        println!("{}: {simulated:.0} s in {wall:.3} s, {factor:.0} times real time", job.id);
    }
    for id in ["healthy-natural", "healthy-propane"] {
        for pace in [Stepping::Strides, Stepping::Ticks] {
            let (wall, cycles) = time_day(id, pace);
            println!("{id}: a day by {pace:?} in {wall:.3} s, {cycles} cycles");
        }
    }
}
