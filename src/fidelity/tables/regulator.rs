//! Force balance of a regulator.

use super::csv_table::{CsvTable, Line, TableError, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::fluid::Gas;
use crate::physics::network::NetworkBuilder;
use crate::physics::regulator::{InletEffect, Regulator, RegulatorSpec, SeatProfile, Spring};
use crate::units::{M_PER_IN, P_STD_PA, PA_PER_INWC, PA_PER_PSI};

/// Columns of worked geometries.
pub(super) const COLUMNS: &[&str] = &[
    "case",
    "effective_area_in2",
    "spring_rate_lbf_in",
    "screw_pitch_in",
    "valve_travel_in",
    "seat_area_in2",
    "inlet_inwc",
    "set_inwc",
    "inwc_per_turn",
    "droop_full_travel_inwc",
    INLET,
];
const INLET: &str = "outlet_change_per_inlet_change";

const N_PER_LBF: f64 = 4.448_221_615_260_5;
const M2_PER_IN2: f64 = M_PER_IN * M_PER_IN;

/// A regulator by its parts in the trade's units, closing with the inlet.
struct Parts {
    area_in2: f64,
    rate_lbf_in: f64,
    pitch_in: f64,
    travel_in: f64,
    seat_in2: f64,
}

impl Parts {
    /// The regulator with this force of the spring, in lbf.
    fn spec(&self, load_lbf: f64) -> RegulatorSpec {
        let pitch_m = self.pitch_in * M_PER_IN;
        let rate_n_m = self.rate_lbf_in * N_PER_LBF / M_PER_IN;
        let travel_m = self.travel_in * M_PER_IN;
        RegulatorSpec {
            spring: Spring { rate_n_m, pitch_m, bind_m: 10.0, max_turns: 1e6 },
            diaphragm_area_m2: self.area_in2 * M2_PER_IN2,
            seat_area_m2: self.seat_in2 * M2_PER_IN2,
            inlet_effect: InletEffect::Closes,
            seat: SeatProfile {
                width_m: 1e-4,
                seal_m: 0.01 * travel_m,
                blend_m: 0.005 * travel_m,
                toe_slope: 0.05,
                max_lift_m: 3.0 * travel_m,
            },
            turns: load_lbf * N_PER_LBF / (rate_n_m * pitch_m),
            seat_lag_s: 0.0,
            preload_lag_s: 0.0,
        }
    }

    /// Spring force at which the seat stands at zero lift, in lbf.
    fn load_lbf(&self, set_psi: f64, inlet_psi: f64) -> f64 {
        (self.area_in2 - self.seat_in2) * set_psi + self.seat_in2 * inlet_psi
    }
}

/// Outlet pressure at which the seat has risen by `lift_m`, found on the network's own element.
fn outlet_at_lift_pa(spec: RegulatorSpec, inlet_pa: f64, lift_m: f64) -> f64 {
    let lift = |outlet_pa: f64| {
        let mut builder = NetworkBuilder::new(Gas::natural(), P_STD_PA);
        let (inlet, outlet) = (builder.fixed(inlet_pa), builder.fixed(outlet_pa));
        let element = builder.regulator(inlet, outlet, spec);
        let mut network = builder.build();
        network.step(1.0);
        network.regulator(element).map_or(f64::NAN, Regulator::lift_m)
    };
    let (mut lower, mut upper) = (0.0, inlet_pa);
    for _ in 0..50 {
        let middle = 0.5 * (lower + upper);
        if lift(middle) > lift_m {
            lower = middle;
        } else {
            upper = middle;
        }
    }
    0.5 * (lower + upper)
}

pub(super) fn geometries(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let parts = Parts {
            area_in2: line.number("effective_area_in2", (0.01, 1e4))?,
            rate_lbf_in: line.number("spring_rate_lbf_in", (1e-3, 1e5))?,
            pitch_in: line.number("screw_pitch_in", (1e-3, 1.0))?,
            travel_in: line.number("valve_travel_in", (1e-4, 10.0))?,
            seat_in2: line.number("seat_area_in2", (0.0, 1e3))?,
        };
        if parts.seat_in2 >= parts.area_in2 {
            let message = t!("table-seat-not-smaller-than").to_owned();
            return Err(line.error("seat_area_in2", message));
        }
        let inlet_pa = line.number("inlet_inwc", (0.1, 1e4))? * PA_PER_INWC;
        let set_pa = line.number("set_inwc", (0.01, 1e4))? * PA_PER_INWC;
        let spec = parts.spec(parts.load_lbf(set_pa / PA_PER_PSI, inlet_pa / PA_PER_PSI));
        let balance = |turns: f64, inlet_pa: f64| {
            let mut regulator = Regulator::new(spec);
            regulator.set_turns(spec.turns + turns);
            regulator.balance_pa(inlet_pa) / PA_PER_INWC
        };
        let travel_m = parts.travel_in * M_PER_IN;
        let droop = (outlet_at_lift_pa(spec, inlet_pa, 0.0)
            - outlet_at_lift_pa(spec, inlet_pa, travel_m))
            / PA_PER_INWC;
        let inlet = balance(0.0, inlet_pa) - balance(0.0, inlet_pa + PA_PER_INWC);
        let case = line.text("case");
        for (id, column, got, what) in [
            (
                "turn",
                "inwc_per_turn",
                balance(1.0, inlet_pa) - balance(0.0, inlet_pa),
                t!("row-a-turn"),
            ),
            ("droop", "droop_full_travel_inwc", droop, t!("row-droop-full-travel")),
            ("inlet", INLET, inlet, t!("row-outlet-lost-per-inch")),
        ] {
            let printed = line.number(column, (1e-9, 1e4))?;
            let row = Row::new(format!("{case}, {what}"), printed, got)
                .rounded(half_unit(line.text(column), None));
            gather.row(&format!("regulator.balance.{id}"), line, row);
        }
    }
    Ok(gather.done())
}

/// Worked examples in words.
pub(super) fn worked(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(&["item", "value", "source", "confidence"])?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        match line.text("item") {
            "spring effect example" => spring_effect(&mut gather, line)?,
            "inlet effect example" => inlet_effect(&mut gather, line)?,
            _ => gather.set_aside(t!("unused-reference-literature-without-figures")),
        }
    }
    Ok(gather.done())
}

fn spring_effect(gather: &mut Gather, line: Line<'_>) -> Result<(), TableError> {
    // Ae 10 in2, k 5 lbf/in, preload 10 lbf (1.00 psi): 0.2 in opening leaves 9 lbf -> 0.90 psi
    let area_in2 = line.figure("value", 0, (0.01, 1e4))?;
    let rate_lbf_in = line.figure("value", 1, (1e-3, 1e5))?;
    let load = line.figure("value", 2, (1e-3, 1e6))?;
    let travel_in = line.figure("value", 4, (1e-4, 10.0))?;
    let (full, left) =
        (line.figure("value", 3, (1e-3, 1e4))?, line.figure("value", 6, (1e-3, 1e4))?);
    let parts = Parts { area_in2, rate_lbf_in, pitch_in: 0.04, travel_in, seat_in2: 0.0 };
    let spec = parts.spec(load);
    let inlet_pa = 10.0 * PA_PER_PSI;
    for (label, printed, lift_in) in
        [("closed", full, 0.0), (t!("row-full-travel"), left, travel_in)]
    {
        let got = outlet_at_lift_pa(spec, inlet_pa, lift_in * M_PER_IN) / PA_PER_PSI;
        gather.row("regulator.worked.spring", line, Row::new(label, printed, got));
    }
    Ok(())
}

fn inlet_effect(gather: &mut Gather, line: Line<'_>) -> Result<(), TableError> {
    // As 1 in2, Ae 10 in2, load 19 lbf, As(Pin-Pout)+Ae*Pout=19: Pin 10 -> 11 psig moves Pout 1.000 -> 0.889 psig
    let seat_in2 = line.figure("value", 0, (1e-6, 1e3))?;
    let area_in2 = line.figure("value", 1, (0.01, 1e4))?;
    let load = line.figure("value", 2, (1e-3, 1e6))?;
    if seat_in2 >= area_in2 {
        let message = t!("table-seat-not-smaller-than").to_owned();
        return Err(line.error("value", message));
    }
    let parts = Parts { area_in2, rate_lbf_in: 5.0, pitch_in: 0.04, travel_in: 0.2, seat_in2 };
    let regulator = Regulator::new(parts.spec(load));
    for k in 0..2 {
        let inlet = line.figure("value", 4 + k, (0.01, 1e4))?;
        let printed = line.figure("value", 6 + k, (1e-4, 1e4))?;
        let got = regulator.balance_pa(inlet * PA_PER_PSI) / PA_PER_PSI;
        let row =
            Row::new(t!("row-inlet-psi", inlet = inlet.to_string()), printed, got).rounded(5e-4);
        gather.row("regulator.worked.inlet", line, row);
    }
    Ok(())
}
