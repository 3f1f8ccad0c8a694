//! Capacity tables of steel pipe and copper tube.

use super::cells;
use super::csv_table::{CsvTable, Line, TableError, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use super::stream::{Drive, Stream, significant};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::{self, TableMiss, table_miss};
use crate::physics::fluid::Gas;
use crate::physics::pipe::{PipeMaterial, PipeSpec, copper_tube_id_m, schedule_40_id_m};
use crate::units::{M_PER_FT, M_PER_IN, M3_S_PER_CFH, T_STD_K};

/// Columns of a pipe table.
pub(super) const COLUMNS: &[&str] =
    &["gas", "material", "nominal_in", "id_in", "inlet", "drop", "length_ft", "capacity", "unit"];

/// Below this Reynolds number gas flows laminar where the code's equation goes on turbulent.
const LEAST_RE: f64 = 1_800.0;
/// End of the model's range, see `physics::pipe`.
const MOST_RE: f64 = 2e6;

pub(super) fn run(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let digits = significant(table);
    let mut gather = Gather::new(table);
    let mut tables: Vec<(String, Option<&'static TableMiss>)> = Vec::new();
    for line in table.lines() {
        let cell = Cell::read(line)?;
        size(&mut gather, line, &cell);
        if line.text("note").contains("do not test") {
            gather.set_aside(t!("unused-marked-table-as-not"));
            continue;
        }
        let flow = cell.flow_m3_s();
        let reynolds = cell.reynolds(flow);
        if reynolds < LEAST_RE {
            gather.set_aside(t!("unused-flow-so-slow-that"));
            continue;
        }
        let got = flow / M3_S_PER_CFH * cell.stream.per_cfh;
        let nominal = line.text("nominal_in");
        let row = Row::new(
            t!("row-nominal-length", nominal = nominal, length = cell.length_ft.to_string()),
            cell.capacity,
            got,
        )
        .rounded(half_unit(line.text("capacity"), digits))
        .on(t!("row-nominal-size", nominal = nominal), cell.length_ft);
        let id = cell.id(line, digits);
        let known = cell.known(line);
        if reynolds > MOST_RE && known.is_none_or(|known| known.id == "pipe.real-gas") {
            let id = format!("{id}.rough");
            gather.row_of(&id, line, row, || cell.check("pipe.capacity.rough"));
            continue;
        }
        gather.row_of(&id, line, row, || cell.check("pipe.capacity"));
        if !tables.iter().any(|(have, _)| *have == id) {
            tables.push((id, known));
        }
    }
    for (id, known) in tables {
        cells::judge(gather.checks(), &id, known);
        cells::judge(gather.checks(), &format!("{id}.memory"), known);
    }
    Ok(gather.done())
}

/// A size whose inside diameter the model knows by name must have the table's.
fn size(gather: &mut Gather, line: Line<'_>, cell: &Cell) {
    let nominal = line.text("nominal_in");
    let (known, id) = match cell.material {
        PipeMaterial::Steel | PipeMaterial::RustedSteel => {
            (schedule_40_id_m(nominal), "pipe.size.steel")
        }
        PipeMaterial::Copper => (copper_tube_id_m(nominal), "pipe.size.copper"),
    };
    let Some(known_m) = known else { return };
    let row = Row::new(t!("row-nominal-size", nominal = nominal), cell.id_in, known_m / M_PER_IN);
    gather.once(id, line, row);
}

/// One cell of a table.
struct Cell {
    stream: Stream,
    material: PipeMaterial,
    id_in: f64,
    length_ft: f64,
    capacity: f64,
}

impl Cell {
    fn read(line: Line<'_>) -> Result<Self, TableError> {
        let text = line.text("material").to_lowercase();
        let material = if text.contains("copper") {
            PipeMaterial::Copper
        } else if text.contains("40") || text.contains("steel") {
            PipeMaterial::Steel
        } else {
            return Err(line.error("material", t!("table-material", text = text)));
        };
        Ok(Self {
            stream: Stream::read(line)?,
            material,
            id_in: line.number("id_in", (0.1, 24.0))?,
            length_ft: line.number("length_ft", (1.0, 20_000.0))?,
            capacity: line.number("capacity", (1e-3, 1e9))?,
        })
    }

    /// A check on the claim of this name about the cell's table.
    fn check(&self, claim: &str) -> Check {
        self.stream.fill(claims::check(claim, Vec::new())).fill("way", self.what())
    }

    fn flow_m3_s(&self) -> f64 {
        let length_m = self.length_ft * M_PER_FT;
        let spec = PipeSpec::new(self.material, self.id_in * M_PER_IN, length_m);
        spec.curve(&self.stream.gas, T_STD_K).flow(self.stream.drive_pa).0
    }

    fn reynolds(&self, flow_m3_s: f64) -> f64 {
        let Gas { viscosity_pa_s, .. } = self.stream.gas;
        let density = self.stream.gas.density_std_kg_m3();
        4.0 * density * flow_m3_s / (core::f64::consts::PI * self.id_in * M_PER_IN * viscosity_pa_s)
    }

    fn what(&self) -> &'static str {
        match self.material {
            PipeMaterial::Steel | PipeMaterial::RustedSteel => t!("row-schedule-40-steel-pipe"),
            PipeMaterial::Copper => t!("row-semirigid-copper-tube"),
        }
    }

    fn id(&self, line: Line<'_>, digits: Option<usize>) -> String {
        let material = match self.material {
            PipeMaterial::Steel | PipeMaterial::RustedSteel => "steel",
            PipeMaterial::Copper => "copper",
        };
        let kind = if is_legacy(line) {
            ".legacy"
        } else if digits.is_none() {
            ".unrounded"
        } else {
            ""
        };
        format!("pipe.{material}.{}{kind}", self.stream.id())
    }

    /// What is known beforehand of the table that the cell is from.
    fn known(&self, line: Line<'_>) -> Option<&'static TableMiss> {
        let propane = self.stream.gas.specific_gravity > 1.0;
        if is_legacy(line) {
            return table_miss(if propane { "pipe.legacy.propane" } else { "pipe.legacy.natural" });
        }
        match self.stream.drive {
            Drive::Drop { .. } => None,
            Drive::Squares { .. } if propane => table_miss("pipe.real-gas"),
            Drive::Squares { inlet_psi, drop_psi } => match self.material {
                PipeMaterial::Copper => None,
                PipeMaterial::Steel | PipeMaterial::RustedSteel => {
                    if inlet_psi == 2.0 && drop_psi == 1.0 {
                        table_miss("pipe.two-psi")
                    } else if inlet_psi == 5.0 && drop_psi == 3.5 {
                        table_miss("pipe.five-psi")
                    } else {
                        None
                    }
                }
            },
        }
    }
}

fn is_legacy(line: Line<'_>) -> bool {
    line.text("note").contains("legacy edition") || line.text("source").contains("older-edition")
}
