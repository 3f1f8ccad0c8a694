//! The two healthy benches as a correct meter finds them, and their gas meter.

use super::bench::setup;
use super::run::Run;
use crate::appliance::test_point::Stage;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::model::truth::Truth as State;
use crate::setup::{Setup, SupplyKind};
use crate::units::{J_M3_PER_BTU_FT3, M3_PER_FT3, PA_PER_INWC, W_PER_BTU_H};

/// The rows that the healthy benches are laid out for.
struct Wanted {
    id: &'static str,
    /// At rest, low, high, high with the others, in in. w.c.
    inlet: [f64; 4],
    /// Low, high, high with the others, in in. w.c.
    manifold: [f64; 3],
}

const WANTED: [Wanted; 2] = [
    Wanted { id: "healthy-natural", inlet: [7.6, 6.8, 6.6, 6.2], manifold: [1.70, 3.50, 3.50] },
    Wanted { id: "healthy-propane", inlet: [13.1, 11.7, 11.6, 11.1], manifold: [4.90, 10.0, 10.0] },
];

pub(super) fn checks() -> Vec<Check> {
    let mut pressures = Vec::new();
    let mut rates = Vec::new();
    let mut dial = Vec::new();
    let mut worst = 0.0_f64;
    for wanted in &WANTED {
        let Some(setup) = setup(wanted.id) else { continue };
        let mut run = Run::at_rest(setup.clone());
        let mut states: Vec<State> = vec![run.wait(10), run.first(), run.full()];
        if let SupplyKind::Meter { dial_m3 } = setup.supply.kind {
            dial.push(clocked(&mut run, &setup, dial_m3));
        }
        states.push(run.others());
        worst = worst.max(run.imbalance());
        if run.refused {
            continue;
        }
        let names: Vec<&str> =
            Stage::of(setup.furnace.plate.input.list()).map(Stage::label).collect();
        for ((state, name), inlet) in states.iter().zip(&names).zip(wanted.inlet) {
            let label = t!("row-inlet", id = wanted.id, name = *name);
            pressures.push(Row::new(label, inlet, state.inlet_pa / PA_PER_INWC));
        }
        let fired = states.iter().zip(&names).skip(1);
        for (((state, name), manifold), input) in
            fired.zip(wanted.manifold).zip([56_000.0, 80_000.0, 80_000.0])
        {
            let label = format!("{}, {name}", wanted.id);
            let found = state.manifold_pa / PA_PER_INWC;
            pressures.push(Row::new(t!("row-manifold", label = &label), manifold, found));
            rates.push(Row::new(label, input, state.input_w / W_PER_BTU_H));
        }
    }
    dial.extend(chart());
    vec![
        check("parts.bench.pressures", pressures),
        check("parts.bench.rates", rates),
        check("parts.meter.clocking", dial),
        check("parts.bench.balance", vec![Row::new(t!("row-worst-tick"), 1e-9, worst)]),
    ]
}

/// One turn of the healthy bench's dial on high.
fn clocked(run: &mut Run, setup: &Setup, dial_m3: f64) -> Row {
    let dial_ft3 = dial_m3 / M3_PER_FT3;
    let btu_ft3 = setup.gas.heating_value_j_m3 / J_M3_PER_BTU_FT3;
    let by_hand = 3_600.0 * dial_ft3 * btu_ft3 / 80_000.0;
    Row::new(t!("row-healthy-bench-80-000"), by_hand, run.dial_s(30))
}

/// The chart of a manual: seconds for a cubic foot at 1,000 Btu/ft³.
fn chart() -> Vec<Row> {
    let mut rows = Vec::new();
    for (btu_h, seconds) in [(30_000.0, 120.0), (45_000.0, 80.0), (110_000.0, 33.0)] {
        let Some(mut setup) = setup("healthy-natural") else { continue };
        setup.gas.heating_value_j_m3 = 1_000.0 * J_M3_PER_BTU_FT3;
        setup.supply.kind = SupplyKind::Meter { dial_m3: M3_PER_FT3 };
        let furnace = &mut setup.furnace;
        // The rate goes with the holes' area and with the heating value.
        let area: f64 = btu_h / 80_000.0 * 1_030.0 / 1_000.0;
        for orifice_m in &mut furnace.orifices_m {
            *orifice_m *= area.sqrt();
        }
        furnace.plate.input.each_mut(|input| input.0 *= btu_h / 80_000.0);
        let mut run = Run::at_rest(setup);
        run.full();
        let found = run.dial_s(20);
        let label = t!("row-dial-chart", btu_h = btu_h.to_string());
        rows.push(Row::new(label, seconds, if run.refused { f64::NAN } else { found }));
    }
    rows
}
