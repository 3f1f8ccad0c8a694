//! Equivalent lengths of screwed fittings, and what the code says of gas in pipe.

use super::csv_table::{CsvTable, Line, TableError, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::fluid::Gas;
use crate::physics::pipe::{Fitting, PipeMaterial, PipeSpec};
use crate::units::{M_PER_FT, M_PER_IN, M3_S_PER_CFH, PA_PER_INWC, PA_PER_PSI, T_STD_K};
use crate::words::Id;

/// Columns of a table of fittings.
pub(super) const COLUMNS: &[&str] = &["nominal_in", "id_in", "fitting", "equivalent_length_ft"];
/// Columns of the gravity multipliers.
pub(super) const GRAVITY_COLUMNS: &[&str] = &["specific_gravity", "multiplier"];
/// Columns of the code's factors.
pub(super) const FACTOR_COLUMNS: &[&str] = &["gas", "Cr", "Y", "viscosity_cP", "specific_gravity"];
/// Columns of the code's equations.
pub(super) const EQUATION_COLUMNS: &[&str] = &["id", "equation", "units", "range"];

pub(super) fn run(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let id_in = line.number("id_in", (0.1, 24.0))?;
        let printed = line.number("equivalent_length_ft", (0.01, 1e3))?;
        let name = line.text("fitting").to_lowercase();
        let fitting = if name.contains("45") {
            Fitting::Elbow45
        } else if name.contains("180") || name.contains("return") {
            Fitting::ReturnBend
        } else if name.contains("90") && name.contains("screwed") {
            Fitting::Elbow90
        } else if name.contains("tee") && name.contains("branch") {
            Fitting::TeeBranch
        } else {
            gather.set_aside(t!("unused-fitting-that-model-does"));
            continue;
        };
        let got = fitting.equivalent_length_m(id_in * M_PER_IN) / M_PER_FT;
        let row = Row::new(
            t!("row-nominal-fitting", nominal = line.text("nominal_in"), name = &name),
            printed,
            got,
        )
        .on(name, id_in);
        gather.row("pipe.fittings", line, row);
    }
    Ok(gather.done())
}

/// Multipliers of capacity for other specific gravities.
pub(super) fn gravity(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(GRAVITY_COLUMNS)?;
    let at = |gravity: f64| {
        let gas = Gas { specific_gravity: gravity, ..Gas::natural() };
        let spec = PipeSpec::new(PipeMaterial::Copper, 0.0266, 10.0);
        spec.curve(&gas, T_STD_K).flow(0.5 * PA_PER_INWC).0
    };
    let base = at(0.60);
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let gravity = line.number("specific_gravity", (0.05, 5.0))?;
        let printed = line.number("multiplier", (0.01, 10.0))?;
        let half = half_unit("0.01", None);
        let row =
            Row::new(t!("row-sg", gravity = gravity.to_string()), printed, at(gravity) / base)
                .rounded(half)
                .on("", gravity);
        let near = (0.5..=1.0).contains(&gravity);
        let id = if near { "pipe.gravity.near" } else { "pipe.gravity.far" };
        gather.row(id, line, row);
    }
    Ok(gather.done())
}

/// Viscosity and gravity that the code's factors are for.
pub(super) fn factors(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(FACTOR_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let name = line.text("gas").to_lowercase();
        let propane = name.contains("propane");
        if !propane && !name.contains("natural") {
            gather.set_aside(t!("unused-gas-that-model-does"));
            continue;
        }
        let gas = if propane { Gas::propane() } else { Gas::natural() };
        let viscosity = line.number("viscosity_cP", (1e-4, 1.0))?;
        let gravity = line.number("specific_gravity", (0.05, 5.0))?;
        let cr = line.number("Cr", (0.01, 10.0))?;
        let rows = [
            (t!("row-viscosity-cp"), viscosity, gas.viscosity_pa_s * 1e3),
            (t!("row-code-factor"), cr, {
                let z = gas.viscosity_pa_s * 1e3;
                0.00354 * gravity * 520.0 * libm::pow(z / gravity, 0.152)
            }),
        ];
        for (what, printed, got) in rows {
            let row = Row::new(format!("{name}, {what}"), printed, got);
            gather.row("pipe.gas-factors", line, row);
        }
    }
    Ok(gather.done())
}

/// The code's equations over sizes, lengths and drops.
pub(super) fn equations(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(EQUATION_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        match line.text("id") {
            "low_pressure" => small_drop_equation(&mut gather, line),
            "high_pressure" => large_drop_equation(&mut gather, line),
            _ => gather.set_aside(t!("unused-form-consequence-two-equations")),
        }
    }
    Ok(gather.done())
}

/// Key, name, specific gravity and the two factors of the code's equations.
const GASES: [(&str, Id, f64, f64, f64); 2] = [
    ("natural-gas", id!("row-natural-gas"), 0.60, 0.6094, 0.9992),
    ("propane", id!("row-propane"), 1.50, 1.2462, 0.991),
];

/// Flow of smooth pipe and its Reynolds number.
fn smooth(gas: &Gas, id_in: f64, length_ft: f64, drive_pa: f64) -> (f64, f64) {
    let id_m = id_in * M_PER_IN;
    let straight = PipeSpec::new(PipeMaterial::Copper, id_m, length_ft * M_PER_FT);
    let spec = PipeSpec { roughness_m: 0.0, ..straight };
    let flow = spec.curve(gas, T_STD_K).flow(drive_pa).0;
    let flux = 4.0 * gas.density_std_kg_m3() * flow / core::f64::consts::PI;
    (flow / M3_S_PER_CFH, flux / (id_m * gas.viscosity_pa_s))
}

fn small_drop_equation(gather: &mut Gather, line: Line<'_>) {
    for (_, name, gravity, cr, _) in GASES {
        let name = name.text();
        let gas = if gravity > 1.0 { Gas::propane() } else { Gas::natural() };
        let gas = Gas { specific_gravity: gravity, ..gas };
        for id_in in [0.305, 0.622, 1.049, 2.067, 4.026] {
            for (length_ft, drop) in
                [(10.0, 0.1), (10.0, 3.0), (35.0, 0.5), (120.0, 0.5), (120.0, 3.0)]
            {
                let base = 19.17 * id_in * libm::pow(drop / (cr * length_ft), 0.206);
                let (got, re) = smooth(&gas, id_in, length_ft, drop * PA_PER_INWC);
                if re < 3_000.0 {
                    continue;
                }
                let label = t!(
                    "row-pipe-low-pressure",
                    name = name,
                    id_in = id_in.to_string(),
                    length_ft = length_ft.to_string(),
                    drop = drop.to_string()
                );
                let row = Row::new(label, libm::pow(base, 1.0 / 0.381), got);
                gather.row("pipe.equation.low-pressure", line, row);
            }
        }
    }
}

fn large_drop_equation(gather: &mut Gather, line: Line<'_>) {
    for (key, name, gravity, cr, y) in GASES {
        let name = name.text();
        let gas = if gravity > 1.0 { Gas::propane() } else { Gas::natural() };
        let gas = Gas { specific_gravity: gravity, ..gas };
        for id_in in [0.622, 1.049, 2.067] {
            for (length_ft, inlet, drop) in
                [(30.0, 2.0, 1.0), (150.0, 5.0, 3.5), (400.0, 10.0, 1.0)]
            {
                let squares =
                    (inlet + 14.7) * (inlet + 14.7) - (inlet - drop + 14.7) * (inlet - drop + 14.7);
                let base = 18.93 * id_in * libm::pow(squares * y / (cr * length_ft), 0.206);
                let drive_pa = squares / (2.0 * 14.696) * PA_PER_PSI;
                let (got, _) = smooth(&gas, id_in, length_ft, drive_pa);
                let label = t!(
                    "row-pipe-high-pressure",
                    name = name,
                    id_in = id_in.to_string(),
                    length_ft = length_ft.to_string(),
                    inlet = inlet.to_string(),
                    drop = drop.to_string()
                );
                let row = Row::new(label, libm::pow(base, 1.0 / 0.381), got);
                let id = format!("pipe.equation.high-pressure.{key}");
                gather.row(&id, line, row);
            }
        }
    }
}
