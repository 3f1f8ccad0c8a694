//! `preview`: what a correct meter would show on a job as it is found, beside the plate.

use std::fmt::Write as _;

use serde::Serialize;

use super::exit::{Exit, Trouble, data, json};
use super::job::Job;
use crate::appliance::plate::{GasFigures, Plate};
use crate::bench::Bench;
use crate::bench::action::{Action, Fitted, OnOff};
use crate::bench::part::{Cock, Door, Neighbor, Place};
use crate::bench::truth::{Firing, Truth};
use crate::units::{PA_PER_INWC, TICKS_PER_S, W_PER_BTU_H};

/// Longest time from a call to a lit stage, in seconds; one more try fits in.
const LIGHT_UP_S: u64 = 300;
/// Time from a lit stage to a reading, in seconds.
const SETTLE_S: u64 = 60;
/// How far above the room the setpoint stands for a first-stage call, in half degrees.
const FIRST_STAGE_HALF_F: i16 = 3;
/// The same for both stages.
const BOTH_STAGES_HALF_F: i16 = 12;

/// Print what a correct meter would show at rest, on low, on high and on high with the others, as
/// the job is found. For authors: it tells the faults.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// A scenario that comes with the program, by its id, or a scenario's file.
    scenario: String,
    /// The seed that the job's numbers are drawn with.
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
}

/// What a preview gave; pressures in inches of water column, rates in Btu/h.
#[derive(Debug, Serialize)]
struct Report {
    scenario: String,
    seed: u64,
    plate: PlateReport,
    states: Vec<State>,
}

#[derive(Debug, Serialize)]
struct PlateReport {
    model: String,
    fuel: &'static str,
    converted: bool,
    inlet_inwc: [f64; 2],
    low_inwc: Band,
    high_inwc: Band,
    input_low_btu_h: f64,
    input_high_btu_h: f64,
}

#[derive(Debug, Clone, Copy, Serialize)]
struct Band {
    target: f64,
    tolerance: f64,
}

#[derive(Debug, Serialize)]
struct State {
    state: &'static str,
    /// What is in the way, when the furnace does not come to this state.
    missed: Option<String>,
    inlet_inwc: f64,
    manifold_inwc: f64,
    input_btu_h: f64,
    /// Input against the plate's high input.
    percent: f64,
    others_btu_h: f64,
}

pub(super) fn preview(args: &Args) -> Result<Exit, Trouble> {
    let job = Job::find(&args.scenario)?;
    let setup = job.scenario.draw(args.seed);
    let plate = plate_report(&setup.furnace.plate);
    let states = Driver::new(Bench::new(setup)).states();
    let report = Report { scenario: job.id, seed: args.seed, plate, states };
    if args.json {
        json(&report)?
    } else {
        data(&text(&report))?
    }
    Ok(Exit::Fine)
}

fn plate_report(plate: &Plate) -> PlateReport {
    let figures: &GasFigures = plate.figures();
    let band = |target: crate::appliance::plate::Target| Band {
        target: inwc(target.pa),
        tolerance: inwc(target.tolerance_pa),
    };
    PlateReport {
        model: plate.model.clone(),
        fuel: figures.fuel.label(),
        converted: plate.converted_to.is_some(),
        inlet_inwc: [inwc(figures.inlet_min_pa), inwc(figures.inlet_max_pa)],
        low_inwc: band(figures.low),
        high_inwc: band(figures.high),
        input_low_btu_h: plate.input_low.si() / W_PER_BTU_H,
        input_high_btu_h: plate.input_high.si() / W_PER_BTU_H,
    }
}

/// To a ten-thousandth, so that no dust is shown.
fn inwc(pa: f64) -> f64 {
    let value = (pa / PA_PER_INWC * 1e4).round() / 1e4;
    if value == 0.0 { 0.0 } else { value }
}

/// Brings a bench to the four states through actions, and reads what is true.
struct Driver {
    bench: Bench,
}

impl Driver {
    fn new(bench: Bench) -> Self {
        Self { bench }
    }

    /// Does something; what is so already is refused and is no trouble.
    fn act(&mut self, action: Action) {
        let _ = self.bench.apply(&action);
    }

    fn wait(&mut self, seconds: u64) {
        for _ in 0..seconds * TICKS_PER_S {
            self.bench.step();
        }
    }

    fn call(&mut self, above_half_f: i16) {
        self.act(Action::Go(Place::Hall));
        if let Some(hall) = self.bench.seen().hall {
            self.act(Action::Setpoint((hall.room_half_f + above_half_f).clamp(90, 180)));
        }
        self.act(Action::ThermostatMode(OnOff::On));
    }

    fn others(&mut self, to: OnOff) {
        self.act(Action::Go(Place::PlantRoom));
        self.act(Action::Neighbor { neighbor: Neighbor::WaterHeater, to });
        self.act(Action::Go(Place::Hall));
        self.act(Action::Neighbor { neighbor: Neighbor::Range, to });
    }

    /// Waits until the burners are at a stage, and then until all has settled.
    fn fire(&mut self, stage: Firing) -> Option<String> {
        for _ in 0..LIGHT_UP_S {
            if self.bench.truth().firing == stage {
                self.wait(SETTLE_S);
                break;
            }
            self.wait(1);
        }
        let truth = self.bench.truth();
        (truth.firing != stage).then(|| format!("the control is at {:?}", truth.control))
    }

    fn states(mut self) -> Vec<State> {
        self.act(Action::Go(Place::Yard));
        self.act(Action::Cock { cock: Cock::Supply, degrees: 90 });
        self.act(Action::Go(Place::Hall));
        self.act(Action::ThermostatMode(OnOff::Off));
        self.others(OnOff::Off);
        self.act(Action::Go(Place::PlantRoom));
        self.act(Action::Door { door: Door::Burner, to: Fitted::Off });
        self.act(Action::Door { door: Door::Blower, to: Fitted::On });
        self.act(Action::FurnaceSwitch(OnOff::On));
        self.act(Action::Cock { cock: Cock::Furnace, degrees: 90 });
        self.act(Action::StageJumper(Fitted::Off));
        self.act(Action::Go(Place::GasValve));
        self.act(Action::ValveSwitch(OnOff::On));
        self.wait(LIGHT_UP_S);
        let out = self.fire(Firing::Out);
        let rest = self.state("at rest", out);
        self.call(FIRST_STAGE_HALF_F);
        let missed = self.fire(Firing::Low);
        let low = self.state("low", missed);
        self.call(BOTH_STAGES_HALF_F);
        self.act(Action::Go(Place::PlantRoom));
        self.act(Action::StageJumper(Fitted::On));
        let missed = self.fire(Firing::High);
        let high = self.state("high", missed);
        self.others(OnOff::On);
        self.wait(SETTLE_S);
        let missed = self.fire(Firing::High);
        let others = self.state("high, all others on", missed);
        vec![rest, low, high, others]
    }

    fn state(&self, state: &'static str, missed: Option<String>) -> State {
        let truth: Truth = self.bench.truth();
        let setup = self.bench.setup();
        let btu_h = |watts: f64| (watts / W_PER_BTU_H).round();
        let others_w = truth.neighbor_flow_m3_s * setup.gas.heating_value_j_m3;
        State {
            state,
            missed,
            inlet_inwc: inwc(truth.inlet_pa),
            manifold_inwc: inwc(truth.manifold_pa),
            input_btu_h: btu_h(truth.input_w),
            percent: (1000.0 * truth.input_w / setup.furnace.plate.input_high.si()).round() / 10.0,
            others_btu_h: btu_h(others_w),
        }
    }
}

fn text(report: &Report) -> String {
    let plate = &report.plate;
    let converted = if plate.converted { ", from the conversion label" } else { "" };
    let mut out = String::new();
    let _ =
        writeln!(out, "{}, seed {}: what a correct meter would show", report.scenario, report.seed);
    let _ = writeln!(out, "\nplate {} ({}{converted})", plate.model, plate.fuel);
    let _ = writeln!(
        out,
        "  inlet {:.1} to {:.1}, manifold low {:.2} ± {:.2}, high {:.2} ± {:.2} in. w.c.; \
         input {:.0} / {:.0} Btu/h",
        plate.inlet_inwc[0],
        plate.inlet_inwc[1],
        plate.low_inwc.target,
        plate.low_inwc.tolerance,
        plate.high_inwc.target,
        plate.high_inwc.tolerance,
        plate.input_low_btu_h,
        plate.input_high_btu_h
    );
    let _ = writeln!(
        out,
        "\n{:<20} {:>8} {:>9} {:>10} {:>7} {:>10}",
        "state", "inlet", "manifold", "input", "of high", "others"
    );
    let _ = writeln!(
        out,
        "{:<20} {:>8} {:>9} {:>10} {:>7} {:>10}",
        "", "in. w.c.", "in. w.c.", "Btu/h", "%", "Btu/h"
    );
    for it in &report.states {
        let _ = write!(
            out,
            "{:<20} {:>8.2} {:>9.2} {:>10.0} {:>7.1} {:>10.0}",
            it.state, it.inlet_inwc, it.manifold_inwc, it.input_btu_h, it.percent, it.others_btu_h
        );
        if let Some(missed) = &it.missed {
            let _ = write!(out, "  not reached: {missed}");
        }
        out.push('\n');
    }
    out
}
