//! `preview`: what a correct meter would show on a job as it is found, beside the healthy bench.

mod own_meter;
mod picture;

use std::fmt::Write as _;
use std::path::PathBuf;

use serde::Serialize;

use super::exit::{Exit, Trouble, data, json};
use super::files::write_whole;
use super::job::Job;
use crate::appliance::plate::{GasFigures, Plate, Target};
use crate::appliance::test_point::{Port, Stage};
use crate::measure::pattern::{Hands, Pattern, Point, measure};
use crate::setup::Setup;
use crate::units::{W_PER_BTU_H, hundredths_inwc};

#[derive(Debug, clap::Args)]
#[command(about = t!("help-preview"))]
pub(super) struct Args {
    #[arg(help = t!("help-scenario"))]
    scenario: String,
    #[arg(long, default_value_t = 1, help = t!("help-seed"))]
    seed: u64,
    #[arg(long, help = t!("help-json-object"))]
    json: bool,
    #[arg(long, value_name = "FILE.svg", help = t!("help-preview-svg"))]
    svg: Option<PathBuf>,
}

/// What a preview gave; pressures in inches of water column, rates in Btu/h.
#[derive(Debug, Serialize)]
struct Report {
    scenario: String,
    seed: u64,
    plate: PlateReport,
    faults: Vec<FaultReport>,
    /// As the job is found.
    states: Vec<State>,
    /// The same house without faults, and with everything set as it should be.
    healthy: Vec<State>,
    /// For each state, the keys of what differs between the two.
    differs: Vec<Vec<&'static str>>,
    /// For each state, what the job's own manometer shows as it comes out of the bag.
    own_meter: Vec<own_meter::Faces>,
}

/// A fault that the seed drew, with its severity as an author writes it.
#[derive(Debug, Serialize)]
struct FaultReport {
    name: &'static str,
    severity: String,
}

#[derive(Debug, Serialize)]
struct PlateReport {
    model: String,
    fuel: &'static str,
    converted: bool,
    inlet_inwc: [f64; 2],
    low_inwc: TargetReport,
    high_inwc: TargetReport,
    input_low_btu_h: f64,
    input_high_btu_h: f64,
    /// What is allowed at the inlet and at the manifold, state by state.
    #[serde(skip)]
    allowed_inwc: [[(f64, f64); 4]; 2],
}

#[derive(Debug, Clone, Copy, Serialize)]
struct TargetReport {
    target: f64,
    tolerance: f64,
}

#[derive(Debug, Serialize)]
struct State {
    state: &'static str,
    /// What is in the way, when the furnace does not come to this state.
    missed: Option<String>,
    /// At the outlet of the supply regulator.
    supply_inwc: f64,
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
    let plate = plate_report(&setup);
    let heating_value_j_m3 = setup.gas.heating_value_j_m3;
    let faults = setup.faults.iter().map(|(fault, severity)| FaultReport {
        name: fault.name(),
        severity: fault.entry().severity.show(*severity),
    });
    let faults = faults.collect();
    let own_meter = own_meter::faces(&setup);
    let states = states(&measure(setup, Hands::OpenUp, None), heating_value_j_m3);
    let right = job.scenario.draw_healthy(args.seed);
    let heating_value_j_m3 = right.gas.heating_value_j_m3;
    let healthy = self::states(&measure(right, Hands::OpenUp, None), heating_value_j_m3);
    let differs = states.iter().zip(&healthy).map(|(it, right)| differs(it, right)).collect();
    let report = Report {
        scenario: job.id,
        seed: args.seed,
        plate,
        faults,
        states,
        healthy,
        differs,
        own_meter,
    };
    if let Some(path) = &args.svg {
        write_whole(path, &picture::draw(&report))?;
    }
    if args.json {
        json(&report)?
    } else {
        data(&text(&report))?
    }
    Ok(Exit::Fine)
}

/// Pressures differ from half a tenth of an inch on, half the last digit of an ordinary gauge; rates from one in a hundred.
fn differs(it: &State, right: &State) -> Vec<&'static str> {
    let rate = |a: f64, b: f64| (a - b).abs() > 0.01 * a.abs().max(b.abs());
    // Both are whole hundredths.
    let pressure = |a: f64, b: f64| ((a - b).abs() * 100.0).round() >= 5.0;
    [
        ("missed", it.missed != right.missed),
        ("supply_inwc", pressure(it.supply_inwc, right.supply_inwc)),
        ("inlet_inwc", pressure(it.inlet_inwc, right.inlet_inwc)),
        ("manifold_inwc", pressure(it.manifold_inwc, right.manifold_inwc)),
        ("input_btu_h", rate(it.input_btu_h, right.input_btu_h)),
        ("others_btu_h", rate(it.others_btu_h, right.others_btu_h)),
    ]
    .into_iter()
    .filter_map(|(key, so)| so.then_some(key))
    .collect()
}

fn plate_report(setup: &Setup) -> PlateReport {
    let plate: &Plate = &setup.furnace.plate;
    let figures: &GasFigures = plate.figures();
    let band = |target: Target| TargetReport {
        target: hundredths_inwc(target.pa),
        tolerance: hundredths_inwc(target.tolerance_pa),
    };
    PlateReport {
        model: plate.model.clone(),
        fuel: figures.fuel.label(),
        converted: plate.converted_to.is_some(),
        inlet_inwc: [hundredths_inwc(figures.inlet_min_pa), hundredths_inwc(figures.inlet_max_pa)],
        low_inwc: band(figures.low),
        high_inwc: band(figures.high),
        input_low_btu_h: plate.input_low.si() / W_PER_BTU_H,
        input_high_btu_h: plate.input_high.si() / W_PER_BTU_H,
        allowed_inwc: [Port::Inlet, Port::Manifold].map(|port| {
            Stage::ALL.map(|stage| {
                let band = figures.allows(port, stage, Some(setup.supply.lockup_max_pa));
                (hundredths_inwc(band.least_pa), hundredths_inwc(band.most_pa))
            })
        }),
    }
}

/// The four states of a pattern.
fn states(pattern: &Pattern, heating_value_j_m3: f64) -> Vec<State> {
    Stage::ALL
        .map(Stage::label)
        .into_iter()
        .zip(&pattern.points)
        .map(|(name, it)| state(name, it, heating_value_j_m3))
        .collect()
}

fn state(state: &'static str, point: &Point, heating_value_j_m3: f64) -> State {
    let truth = &point.truth;
    let btu_h = |watts: f64| (watts / W_PER_BTU_H).round();
    State {
        state,
        missed: point.missed.map(|control| format!("the control is at {control:?}")),
        supply_inwc: hundredths_inwc(truth.supply_pa),
        inlet_inwc: hundredths_inwc(truth.inlet_pa),
        manifold_inwc: hundredths_inwc(truth.manifold_pa),
        input_btu_h: btu_h(truth.input_w),
        percent: (1000.0 * truth.input_w / point.rated_w).round() / 10.0,
        others_btu_h: btu_h(truth.neighbor_flow_m3_s * heating_value_j_m3),
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
    for it in &report.faults {
        let _ = writeln!(out, "  fault: {} {}", it.name, it.severity);
    }
    let _ = writeln!(
        out,
        "\n{:<20} {:<8} {:>9} {:>9} {:>9} {:>10} {:>8} {:>10}",
        "state", "", "supply", "inlet", "manifold", "input", "of high", "others"
    );
    let _ = writeln!(
        out,
        "{:<20} {:<8} {:>9} {:>9} {:>9} {:>10} {:>8} {:>10}",
        "", "", "in. w.c.", "in. w.c.", "in. w.c.", "Btu/h", "%", "Btu/h"
    );
    for ((it, right), keys) in report.states.iter().zip(&report.healthy).zip(&report.differs) {
        row(&mut out, it.state, "found", it, keys);
        row(&mut out, "", "healthy", right, &[]);
    }
    out.push_str("\n* differs from the healthy bench: 0.05 in. w.c. or 1 % of a rate, or more\n");
    out.push_str(&own_meter::text(&report.own_meter));
    out
}

/// One line of the table; a star stands behind what differs.
fn row(out: &mut String, state: &str, which: &str, it: &State, differ: &[&str]) {
    let star = |key: &str| if differ.contains(&key) { '*' } else { ' ' };
    let rate = star("input_btu_h");
    let _ = write!(
        out,
        "{state:<20} {which:<8} {:>8.2}{} {:>8.2}{} {:>8.2}{} {:>9.0}{rate} {:>7.1}{rate} {:>9.0}{}",
        it.supply_inwc,
        star("supply_inwc"),
        it.inlet_inwc,
        star("inlet_inwc"),
        it.manifold_inwc,
        star("manifold_inwc"),
        it.input_btu_h,
        it.percent,
        it.others_btu_h,
        star("others_btu_h")
    );
    if let Some(missed) = &it.missed {
        let _ = write!(out, "  not reached: {missed}");
    }
    out.truncate(out.trim_end_matches(' ').len());
    out.push('\n');
}
