//! `preview`: what a correct meter would show on a job as it is found, beside the healthy bench.

mod own_meter;
mod picture;
mod report;

use std::fmt::Write as _;
use std::path::PathBuf;

use super::exit::{Exit, Trouble, data, json};
use super::files::write_whole;
use super::job::Job;
use crate::appliance::ignition::{ControlState, ControlStatus, FlameCurrent};
use crate::appliance::plate::{GasFigures, Plate, Target};
use crate::appliance::test_point::Port;
use crate::measure::pattern::{Pattern, Point, Start, measure};
use crate::setup::Setup;
use crate::units::{PressureUnit, W_PER_BTU_H, hundredths_inwc};
use crate::words::decimal;
use report::{FaultReport, LevelReport, PlateReport, Report, State, TargetReport};

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

pub(super) fn preview(args: &Args) -> Result<Exit, Trouble> {
    let job = Job::find(&args.scenario)?;
    let setup = job.scenario.draw(args.seed);
    let pattern = measure(setup.clone(), Start::GasOn);
    let plate = plate_report(&setup, &pattern);
    let heating_value_j_m3 = setup.gas.heating_value_j_m3;
    let faults = setup.faults.iter().map(|(fault, severity)| FaultReport {
        name: fault.name(),
        severity: fault.entry().severity.show(*severity),
    });
    let faults = faults.collect();
    let own_meter = own_meter::readings(&setup);
    let states = states(&pattern, heating_value_j_m3);
    let right = job.scenario.draw_healthy(args.seed);
    let heating_value_j_m3 = right.gas.heating_value_j_m3;
    let healthy = self::states(&measure(right, Start::GasOn), heating_value_j_m3);
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

fn plate_report(setup: &Setup, pattern: &Pattern) -> PlateReport {
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
        levels: plate
            .input
            .iter()
            .map(|(level, input)| LevelReport {
                level,
                manifold_inwc: band(figures.manifold[level]),
                input_btu_h: input.si() / W_PER_BTU_H,
            })
            .collect(),
        allowed_inwc: [Port::Inlet, Port::Manifold].map(|port| {
            let points = pattern.points.iter();
            points
                .map(|it| {
                    let band = figures.allows(port, it.stage, Some(setup.supply.lockup_max_pa));
                    (hundredths_inwc(band.least_pa), hundredths_inwc(band.most_pa))
                })
                .collect()
        }),
    }
}

/// The states of a pattern.
fn states(pattern: &Pattern, heating_value_j_m3: f64) -> Vec<State> {
    pattern.points.iter().map(|it| state(it, heating_value_j_m3)).collect()
}

fn state(point: &Point, heating_value_j_m3: f64) -> State {
    let truth = &point.truth;
    let btu_h = |watts: f64| (watts / W_PER_BTU_H).round();
    State {
        state: point.state(),
        missed: point.missed.map(|control| t!("preview-control", status = says(control))),
        supply_inwc: hundredths_inwc(truth.supply_pa),
        inlet_inwc: hundredths_inwc(truth.inlet_pa),
        manifold_inwc: hundredths_inwc(truth.manifold_pa),
        input_btu_h: btu_h(truth.input_w),
        percent: (1000.0 * truth.input_w / point.rated_w).round() / 10.0,
        others_btu_h: btu_h(truth.others_flow_m3_s * heating_value_j_m3),
    }
}

/// What a control says that stays at a state.
fn says(state: ControlState) -> &'static str {
    match state {
        ControlState::Standby => t!("status-no-call"),
        ControlState::InducerStart => t!("status-inducer-starting"),
        ControlState::PressureSwitchProving => t!("status-awaits-pressure-switch"),
        ControlState::PrePurge => t!("status-pre-purge"),
        ControlState::IgniterWarmUp => t!("status-igniter-warming"),
        ControlState::TrialForIgnition => t!("status-trial-for-ignition"),
        ControlState::FlameProving => t!("status-flame-proving"),
        ControlState::BlowerOnDelay => t!("status-blower-to-come"),
        ControlState::Burning(level) => ControlStatus::Burning(level, FlameCurrent::Sound).words(),
        ControlState::NextLevelCall => t!("status-high-called"),
        ControlState::InducerUp => t!("status-inducer-to-high"),
        ControlState::NextSwitchProving => t!("status-awaits-high-pressure-switch"),
        ControlState::LimitOpen => t!("status-limit-open"),
        ControlState::RolloutOpen => t!("status-rollout-open"),
        ControlState::PostPurge => t!("status-post-purge"),
        ControlState::BlowerOffDelay => t!("status-blower-off-delay"),
        ControlState::Retry => t!("lamp-retry"),
        ControlState::Lockout => t!("lamp-locked-out"),
    }
}

fn text(report: &Report) -> String {
    let mut out = String::new();
    let seed = report.seed.to_string();
    let title = t!("preview-title", scenario = &report.scenario, seed = seed);
    let _ = writeln!(out, "{title}\n");
    put_plate(&mut out, &report.plate);
    for it in &report.faults {
        let fault = t!("preview-fault", fault = it.name, severity = &it.severity);
        let _ = writeln!(out, "  {fault}");
    }
    let _ = writeln!(
        out,
        "\n{:<20} {:<8} {:>9} {:>9} {:>9} {:>10} {:>8} {:>10}",
        t!("preview-state"),
        "",
        t!("preview-supply"),
        t!("preview-inlet"),
        t!("preview-manifold"),
        t!("preview-input"),
        t!("preview-of-high"),
        t!("preview-others")
    );
    let inwc = PressureUnit::InWc.label();
    let _ = writeln!(
        out,
        "{:<20} {:<8} {inwc:>9} {inwc:>9} {inwc:>9} {:>10} {:>8} {:>10}",
        "", "", "Btu/h", "%", "Btu/h"
    );
    for ((it, right), keys) in report.states.iter().zip(&report.healthy).zip(&report.differs) {
        row(&mut out, &it.state, t!("preview-found"), it, keys);
        row(&mut out, "", t!("preview-healthy"), right, &[]);
    }
    let _ = writeln!(out, "\n{}", t!("preview-differs"));
    out.push_str(&own_meter::text(&report.own_meter));
    out
}

/// Plate or label, and its figures.
fn put_plate(out: &mut String, plate: &PlateReport) {
    let (model, fuel) = (&plate.model, plate.fuel);
    let name = match plate.converted {
        true => t!("preview-plate-label", model = model, fuel = fuel),
        false => t!("preview-plate", model = model, fuel = fuel),
    };
    let levels = plate.levels.iter().map(|it| {
        let TargetReport { target, tolerance } = it.manifold_inwc;
        t!(
            "found-target",
            level = it.level.id(),
            pressure = decimal(target, 2),
            tolerance = decimal(tolerance, 2)
        )
    });
    let manifold: Vec<String> = levels.collect();
    let inputs: Vec<String> = plate.levels.iter().map(|it| decimal(it.input_btu_h, 0)).collect();
    let figures = t!(
        "preview-figures",
        inlet_least = decimal(plate.inlet_inwc[0], 1),
        inlet_most = decimal(plate.inlet_inwc[1], 1),
        manifold = manifold.join(", "),
        input = inputs.join(" / ")
    );
    let _ = writeln!(out, "{name}\n  {figures}");
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
        let _ = write!(out, "  {}", t!("preview-missed", missed = missed));
    }
    out.truncate(out.trim_end_matches(' ').len());
    out.push('\n');
}
