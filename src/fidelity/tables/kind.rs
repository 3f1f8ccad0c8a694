//! Which checker a table goes to: by its name, or by its columns where those leave no doubt.

use super::sheet::{Sheet, TableError};
use super::{
    Outcome, air, altitude, burning, csst, fittings, gas, instruments, manifold, meter, orifice,
    pipe, regulator, room, vectors,
};

type Run = fn(&Sheet) -> Result<Outcome, TableError>;

/// Tables that only their name tells, for their columns are words.
const BY_NAME: &[(&str, Run)] = &[
    ("airside.csv", air::run),
    ("combustion_facts.csv", burning::facts),
    ("csst_rules.csv", csst::rules),
    ("dilution_equations.csv", room::equations),
    ("regulator_worked_examples.csv", regulator::worked),
];

/// Tables that their columns tell.
const BY_COLUMNS: &[(&[&str], Run)] = &[
    (pipe::COLUMNS, pipe::run),
    (csst::COLUMNS, csst::run),
    (csst::FIT_COLUMNS, csst::fit),
    (fittings::COLUMNS, fittings::run),
    (fittings::GRAVITY_COLUMNS, fittings::gravity),
    (fittings::FACTOR_COLUMNS, fittings::factors),
    (fittings::EQUATION_COLUMNS, fittings::equations),
    (orifice::DRILL_COLUMNS, orifice::drills),
    (orifice::UTILITY_COLUMNS, orifice::utility),
    (orifice::PROPANE_COLUMNS, orifice::propane),
    (orifice::COMPUTED_COLUMNS, orifice::computed),
    (orifice::LEAK_COLUMNS, orifice::leaks),
    (manifold::PAIR_COLUMNS, manifold::pairs),
    (manifold::RATIO_COLUMNS, manifold::ratios),
    (meter::COMPUTED_COLUMNS, meter::computed),
    (meter::CHART_COLUMNS, meter::chart),
    (altitude::COLUMNS, altitude::run),
    (altitude::EXAMPLE_COLUMNS, altitude::examples),
    (burning::COLUMNS, burning::products),
    (room::COLUMNS, room::vectors),
    (gas::COLUMNS, gas::run),
    (instruments::COLUMNS, instruments::conversions),
    (regulator::COLUMNS, regulator::geometries),
    (vectors::COLUMNS, vectors::run),
];

/// Tables of a known name whose columns must then be right: the first column that is missing is told.
const EXPECTED: &[(&str, Run)] = &[
    ("csst_flow_law_fit.csv", csst::fit),
    ("pipe_fitting_equivalent_lengths.csv", fittings::run),
    ("pipe_sg_multipliers.csv", fittings::gravity),
    ("pipe_gas_factors.csv", fittings::factors),
    ("pipe_equations.csv", fittings::equations),
    ("orifice_drill_sizes.csv", orifice::drills),
    ("orifice_nfpa54_utility_rows.csv", orifice::utility),
    ("orifice_nfpa54_propane_11inwc.csv", orifice::propane),
    ("orifice_capacity_computed.csv", orifice::computed),
    ("leak_orifice_flow.csv", orifice::leaks),
    ("orifice_two_stage_manifold_pairs.csv", manifold::pairs),
    ("appliance_firing_ratio.csv", manifold::ratios),
    ("meter_clocking.csv", meter::computed),
    ("meter_clocking_published.csv", meter::chart),
    ("altitude_derate.csv", altitude::run),
    ("altitude_examples.csv", altitude::examples),
    ("combustion_products.csv", burning::products),
    ("dilution_test_vectors.csv", room::vectors),
    ("gas_properties.csv", gas::run),
    ("manometer_conversions.csv", instruments::conversions),
    ("regulator_force_balance_examples.csv", regulator::geometries),
    ("test_vectors.csv", vectors::run),
];

/// Tables that are known and not used, and why.
pub(super) const NOT_USED: &[(&str, &str)] = &[
    (
        "appliance_pressures.csv",
        "manifold and inlet pressures of products: inputs of a scenario; the plate governs",
    ),
    (
        "ignition_timing.csv",
        "times and flame currents of controls: inputs of a scenario; the control's order of steps is \
         tested in the test suite",
    ),
    ("leak_rules.csv", "rules of procedure: what a job asks for, not what the model computes"),
    (
        "leak_threads.csv",
        "thread sizes and seepage laws from memory: the model has holes, not threads",
    ),
    (
        "manometer_facts.csv",
        "practice with instruments; the manometer's own errors are a scenario's inputs",
    ),
    (
        "pipe_table_agreement.csv",
        "a summary of the pipe tables against the code's equation, drawn from tables checked here",
    ),
    (
        "regulator_standards.csv",
        "classes and limits of standards, mostly from memory: lock-up and droop are a scenario's inputs",
    ),
];

/// The checker of a table.
pub(super) fn checker(sheet: &Sheet) -> Option<Run> {
    let file = sheet.file();
    let named =
        |list: &[(&str, Run)]| list.iter().find(|(name, _)| *name == file).map(|(_, run)| *run);
    if let Some(run) = named(BY_NAME).or_else(|| named(EXPECTED)) {
        return Some(run);
    }
    if file.starts_with("pipe_ng_") || file.starts_with("pipe_lp_") {
        return Some(pipe::run);
    }
    if file.starts_with("csst_ng_") || file.starts_with("csst_lp_") {
        return Some(csst::run);
    }
    let fits = |columns: &[&str]| {
        columns.iter().all(|name| sheet.header().iter().any(|have| have == name))
    };
    let mut fitting = BY_COLUMNS.iter().filter(|(columns, _)| fits(columns));
    match (fitting.next(), fitting.next()) {
        (Some((_, run)), None) => Some(*run),
        _ => None,
    }
}
