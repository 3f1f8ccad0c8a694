//! Capacity tables of corrugated tubing.

use super::cells;
use super::csv_table::{CsvTable, Line, TableError, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use super::stream::{Drive, Stream};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::{self, TableMiss, table_miss};
use crate::physics::fluid::Gas;
use crate::physics::pipe::{TubingSpec, ehd_constants};
use crate::units::{M_PER_FT, M3_S_PER_CFH, PA_PER_INWC, T_STD_K};

/// Columns of a tubing table.
pub(super) const COLUMNS: &[&str] =
    &["gas", "ehd", "inlet", "drop", "length_ft", "capacity", "unit"];
/// Columns of the table of the flow law's constants.
pub(super) const FIT_COLUMNS: &[&str] = &["ehd", FIT_C, "n"];
const FIT_C: &str = "C";

/// Heating value behind the propane tables, thousands of Btu/ft³: they are the natural-gas ones times
/// 1.58 = 2.5·√(0.60/1.50).
const PROPANE_KBTU_FT3: f64 = 2.5;
/// Steepest drop that the law's constants are fitted to: 6 in. w.c. over 5 ft.
const STEEPEST_INWC_FT: f64 = 1.2;

/// A printed capacity with the tubing and the drop that it stands for.
struct Cell {
    stream: Stream,
    ehd: u16,
    length_ft: f64,
    printed: f64,
    half: f64,
}

pub(super) fn run(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    let mut tables: Vec<(String, Option<&'static TableMiss>)> = Vec::new();
    for line in table.lines() {
        let cell = Cell::read(line)?;
        if let Some(reason) = cell.not_used(line) {
            gather.set_aside(reason);
            continue;
        }
        let id = format!("csst.{}", cell.stream.id());
        let known = match cell.stream.drive {
            Drive::Drop { .. } => None,
            Drive::Squares { .. } => table_miss("csst.real-density"),
        };
        let row = cell.row(cell.stream.drive_pa);
        gather.row_of(&id, line, row, || cell.check("csst.capacity"));
        let mut ids = vec![(id.clone(), known)];
        if known.is_some() {
            ids.push((plain(&mut gather, line, &cell, &id), None));
        }
        for (id, known) in ids {
            if !tables.iter().any(|(have, _)| *have == id) {
                tables.push((id, known));
            }
        }
    }
    for (id, known) in tables {
        if !id.ends_with(".steep") {
            cells::judge(gather.checks(), &id, known);
        }
    }
    Ok(gather.done())
}

/// The same cell at the plain drop; returns the check it went to.
fn plain(gather: &mut Gather, line: Line<'_>, cell: &Cell, id: &str) -> String {
    let row = cell.row(cell.stream.drop_pa());
    let steep = cell.stream.drop_pa() / PA_PER_INWC / cell.length_ft > STEEPEST_INWC_FT;
    if steep {
        let id = format!("{id}.plain-drop.steep");
        gather.row_of(&id, line, row, || cell.check("csst.capacity.plain-drop.steep"));
        return id;
    }
    let id = format!("{id}.plain-drop");
    gather.row_of(&id, line, row, || cell.check("csst.capacity.plain-drop"));
    id
}

impl Cell {
    fn read(line: Line<'_>) -> Result<Self, TableError> {
        let stream = Stream::read(line)?;
        let text = line.text("capacity");
        // Four digits are printed up to about 1,100 and in the columns of EHD 37 and 39.
        let digits = if text.trim_end_matches('0').len() > 3 { None } else { Some(3) };
        let half = half_unit(text, digits);
        let propane = stream.unit == "kBtu/h";
        let ehd = line.number("ehd", (1.0, 200.0))?;
        Ok(Self {
            stream,
            // Within range, and a fraction names no size.
            ehd: if ehd.fract() == 0.0 { ehd as u16 } else { 0 },
            length_ft: line.number("length_ft", (1.0, 20_000.0))?,
            printed: line.number("capacity", (1e-3, 1e9))?,
            // Rounded as natural gas, multiplied, and rounded again.
            half: if propane { half * 2.58 } else { half },
        })
    }

    fn row(&self, drive_pa: f64) -> Row {
        let spec =
            TubingSpec { ehd: self.ehd, length_m: self.length_ft * M_PER_FT, extra_fittings: 0 };
        let per_cfh = if self.stream.unit == "kBtu/h" { PROPANE_KBTU_FT3 } else { 1.0 };
        let flow = spec.curve(&self.stream.gas, T_STD_K).map_or(f64::NAN, |c| c.flow(drive_pa).0);
        let label =
            t!("row-ehd-ft", ehd = self.ehd.to_string(), length = self.length_ft.to_string());
        Row::new(label, self.printed, flow / M3_S_PER_CFH * per_cfh)
            .rounded(self.half)
            .on(t!("row-ehd", ehd = self.ehd.to_string()), self.length_ft)
    }

    /// A check on the claim of this name about the cell's table.
    fn check(&self, claim: &str) -> Check {
        self.stream.fill(claims::check(claim, Vec::new()))
    }

    /// Why the cell is not used, if it is not.
    fn not_used(&self, line: Line<'_>) -> Option<&'static str> {
        let lower = matches!(self.stream.drive, Drive::Drop { .. });
        let half_inch = matches!(self.stream.drive, Drive::Drop { drop_inwc } if drop_inwc == 0.5);
        let last = if lower { 300.0 } else { 500.0 };
        if ehd_constants(self.ehd).is_none() {
            Some(t!("unused-size-ehd-that-model"))
        } else if self.ehd == 37 && self.stream.unit == "kBtu/h" && lower && self.length_ft > 5.0 {
            Some(t!("unused-ehd-37-propane-beyond"))
        } else if self.ehd == 37 && self.length_ft == last {
            Some(t!("unused-ehd-37-last-row"))
        } else if half_inch && self.length_ft == 150.0 && self.ehd <= 31 {
            Some(t!("unused-150-ft-row-up"))
        } else if line.text("note").contains("do not test") {
            Some(t!("unused-marked-table-as-not"))
        } else {
            None
        }
    }
}

/// The flow law's constants: the model's flow through 1 ft to 300 ft follows them.
pub(super) fn fit(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(FIT_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let ehd = line.number("ehd", (1.0, 200.0))?;
        let c = line.number(FIT_C, (1.0, 1e6))?;
        let n = line.number("n", (0.3, 0.7))?;
        if ehd.fract() != 0.0 || ehd_constants(ehd as u16).is_none() {
            gather.set_aside(t!("unused-size-ehd-that-model"));
            continue;
        }
        let spec = TubingSpec { ehd: ehd as u16, length_m: 60.0 * M_PER_FT, extra_fittings: 0 };
        let gas = Gas::natural();
        for drop_inwc in [0.1, 0.5, 3.0] {
            let want = c * libm::pow(drop_inwc / 60.0, n);
            let flow = spec
                .curve(&gas, T_STD_K)
                .map_or(f64::NAN, |curve| curve.flow(drop_inwc * PA_PER_INWC).0 / M3_S_PER_CFH);
            let row = Row::new(
                t!("row-ehd-drop", ehd = ehd.to_string(), drop_inwc = drop_inwc.to_string()),
                want,
                flow,
            );
            gather.row("csst.law", line, row);
        }
    }
    Ok(gather.done())
}

/// Rules of the tables' footnotes that have figures.
pub(super) fn rules(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(&["item", "value", "source", "confidence"])?;
    let flow = |gas: &Gas, feet: f64, extra: u32| {
        let spec = TubingSpec { ehd: 25, length_m: feet * M_PER_FT, extra_fittings: extra };
        spec.curve(gas, T_STD_K).map_or(f64::NAN, |curve| curve.flow(0.5 * PA_PER_INWC).0)
    };
    let natural = Gas::natural();
    let mut gather = Gather::new(table);
    for line in table.lines() {
        match line.text("item") {
            "extra fittings" => {
                let feet = line.figure("value", 0, (0.01, 100.0))?;
                let (with, without) =
                    (flow(&natural, 20.0, 5), flow(&natural, 20.0 + 5.0 * feet, 0));
                let row = Row::new(t!("row-five-more-20-ft"), without, with);
                gather.row("csst.extra-fittings", line, row);
            }
            "propane from natural gas" => {
                let printed = line.figure("value", 0, (0.1, 10.0))?;
                let propane = Gas { specific_gravity: 1.50, ..Gas::propane() };
                let got = PROPANE_KBTU_FT3 * flow(&propane, 20.0, 0) / flow(&natural, 20.0, 0);
                let row = Row::new(t!("row-kbtu-h-propane-over"), printed, got);
                gather.row("csst.propane-factor", line, row.rounded(0.005));
            }
            _ => gather.set_aside(t!("unused-definition-note-without-figure")),
        }
    }
    Ok(gather.done())
}
