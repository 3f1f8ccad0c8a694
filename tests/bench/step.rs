//! What a step of the bench costs, and how much faster than a clock a whole job runs.
//!
//! `cargo bench --no-default-features` prints wall time. For instructions, which repeat on a busy
//! machine, run one case twice under valgrind and take the difference:
//! `valgrind --tool=callgrind BINARY --case high --steps 2000`.

use std::time::Instant;

use quarterturn::bench::Bench;
use quarterturn::bench::action::{Action, Fitted, OnOff};
use quarterturn::bench::part::{Door, Neighbor, Place};
use quarterturn::marking::Observer;
use quarterturn::scenario::{builtin, load};
use quarterturn::technician::{Technician, play};

const CASES: [&str; 3] = ["rest", "low", "high"];

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
        act(Action::Setpoint(if case == "high" { 180 } else { 136 }));
    }
    if case == "high" {
        act(Action::Neighbor { neighbor: Neighbor::Range, to: OnOff::On });
        act(Action::Go(Place::PlantRoom));
        act(Action::Door { door: Door::Burner, to: Fitted::Off });
        act(Action::StageJumper(Fitted::On));
        act(Action::Neighbor { neighbor: Neighbor::WaterHeater, to: OnOff::On });
    }
    for _ in 0..150 * 50 {
        bench.step();
    }
    bench
}

fn time_steps(case: &str, steps: u32) -> f64 {
    let mut bench = bench("healthy-propane", case);
    let start = Instant::now();
    for _ in 0..steps {
        bench.step();
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

fn main() {
    let args: Vec<String> = std::env::args().collect();
    let value =
        |name: &str| args.iter().position(|arg| arg == name).and_then(|i| args.get(i + 1)).cloned();
    if let Some(case) = value("--case") {
        let steps = value("--steps").and_then(|n| n.parse().ok()).unwrap_or(1000);
        println!("{case}: {:.0} ns a step", 1e9 * time_steps(&case, steps));
        return;
    }
    for case in CASES {
        let best = (0..5).map(|_| time_steps(case, 50_000)).fold(f64::INFINITY, f64::min);
        println!("{case:6} {:6.0} ns a step, {:7.0} times real time", 1e9 * best, 0.02 / best);
    }
    for job in builtin::JOBS {
        let (simulated, wall) = whole_job(job.id);
        let factor = simulated / wall;
        println!("{}: {simulated:.0} s in {wall:.3} s, {factor:.0} times real time", job.id);
    }
}
