//! What a capacity table says of its gas, its inlet, its drop and its unit.

use super::csv_table::{CsvTable, Line, TableError, figures};
use crate::fidelity::check::Check;
use crate::physics::fluid::Gas;
use crate::units::{PA_PER_INWC, PA_PER_PSI};
use crate::words::decimal;

/// Heating value behind the propane pipe tables, thousands of Btu/ft³ (from the unrounded table).
const PROPANE_KBTU_FT3: f64 = 2.488;
/// The code's atmosphere, psi.
const CODE_ATM_PSI: f64 = 14.7;
/// Most driving pressure that the model is made for, in psi.
const MOST_PSI: f64 = 20.0;

/// What drives the gas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Drive {
    /// Under 1.5 psi: the drop itself, in. w.c.
    Drop { drop_inwc: f64 },
    /// From there on: `P₁² − P₂²`.
    Squares { inlet_psi: f64, drop_psi: f64 },
}

/// Gas, pressures and unit of a row.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stream {
    pub gas: Gas,
    pub drive: Drive,
    /// Driving term `(P₁² − P₂²)/(2·p_std)`, in Pa.
    pub drive_pa: f64,
    /// Figures of the table per ft³/h.
    pub per_cfh: f64,
    pub unit: &'static str,
}

impl Stream {
    /// Reads the columns `gas`, `inlet`, `drop` and `unit`.
    pub(super) fn read(line: Line<'_>) -> Result<Self, TableError> {
        let gas = gas(line)?;
        let drive = drive(line)?;
        let drive_pa = match drive {
            Drive::Drop { drop_inwc } => drop_inwc * PA_PER_INWC,
            Drive::Squares { inlet_psi, drop_psi } => {
                let upstream = inlet_psi + CODE_ATM_PSI;
                let downstream = upstream - drop_psi;
                (upstream * upstream - downstream * downstream) / (2.0 * 14.696) * PA_PER_PSI
            }
        };
        let propane = gas.specific_gravity > 1.0;
        let (per_cfh, unit) = match line.text("unit") {
            "ft3/h" => (1.0, "ft³/h"),
            "kBtu/h" if propane => (PROPANE_KBTU_FT3, "kBtu/h"),
            "kBtu/h" => {
                let message = t!("table-natural-gas-tabled-ft3");
                return Err(line.error("unit", message.to_owned()));
            }
            other => {
                return Err(line.error("unit", t!("table-neither-ft3-h-nor", other = other)));
            }
        };
        Ok(Self { gas, drive, drive_pa, per_cfh, unit })
    }

    /// The drop itself, in Pa.
    pub(super) fn drop_pa(&self) -> f64 {
        match self.drive {
            Drive::Drop { drop_inwc } => drop_inwc * PA_PER_INWC,
            Drive::Squares { drop_psi, .. } => drop_psi * PA_PER_PSI,
        }
    }

    /// The gas by name.
    pub(super) fn name(&self) -> &'static str {
        if self.gas.specific_gravity > 1.0 { "propane" } else { t!("row-natural-gas") }
    }

    /// Part of a check's id: gas and pressures.
    pub(super) fn id(&self) -> String {
        let gas = if self.gas.specific_gravity > 1.0 { "propane" } else { "natural" };
        match self.drive {
            Drive::Drop { drop_inwc } => format!("{gas}.drop-{drop_inwc}-inwc"),
            Drive::Squares { inlet_psi, drop_psi } => {
                format!("{gas}.{inlet_psi}-psi.drop-{drop_psi}-psi")
            }
        }
    }

    /// A check with this gas, these pressures and this unit.
    pub(super) fn fill(&self, check: Check) -> Check {
        let filled = check.fill("gas", self.name()).fill("stream", &self.condition());
        Check { unit: self.unit, ..filled }
    }

    /// Gas and pressures in words.
    fn condition(&self) -> String {
        let gravity = self.gas.specific_gravity;
        let drive = match self.drive {
            Drive::Drop { drop_inwc } => {
                t!("row-drive-low", drop_inwc = drop_inwc.to_string())
            }
            Drive::Squares { inlet_psi, drop_psi } => {
                t!(
                    "row-drive-high",
                    inlet_psi = inlet_psi.to_string(),
                    drop_psi = drop_psi.to_string()
                )
            }
        };
        t!("row-stream", gas = self.name(), gravity = decimal(gravity, 2), drive = drive)
    }
}

fn gas(line: Line<'_>) -> Result<Gas, TableError> {
    let text = line.text("gas").to_lowercase();
    let gas = if text.contains("propane") {
        Gas { specific_gravity: 1.50, ..Gas::propane() }
    } else if text.contains("natural") {
        Gas::natural()
    } else {
        return Err(line.error("gas", t!("table-neither-natural-gas-nor", text = text)));
    };
    let Some(gravity) = text.split("sg").nth(1).and_then(|rest| figures(rest).first().copied())
    else {
        return Ok(gas);
    };
    if (0.3..=2.5).contains(&gravity) {
        Ok(Gas { specific_gravity: gravity, ..gas })
    } else {
        Err(line
            .error("gas", t!("table-specific-gravity-lies-outside", gravity = gravity.to_string())))
    }
}

fn drive(line: Line<'_>) -> Result<Drive, TableError> {
    let inches = |column: &str| line.text(column).contains("w.c");
    if !inches("drop") && !line.text("drop").contains("psi") {
        return Err(line.error("drop", t!("table-pressure-w-c-psi").to_owned()));
    }
    let inlet = line.text("inlet");
    if !inches("inlet") && !inlet.contains("psi") {
        return Err(line.error("inlet", t!("table-pressure-w-c-psi").to_owned()));
    }
    if inches("drop") {
        // The code's tables with a drop in inches are low-pressure ones, whatever their inlet.
        let drop_inwc = line.figure("drop", 0, (0.01, MOST_PSI * PA_PER_PSI / PA_PER_INWC))?;
        return Ok(Drive::Drop { drop_inwc });
    }
    let drop_psi = line.figure("drop", 0, (0.01, MOST_PSI))?;
    let inlet_psi = line.figure("inlet", 0, (0.01, MOST_PSI))?;
    if inches("inlet") || inlet.contains('<') || inlet.contains("less") || inlet_psi < 1.5 {
        return Ok(Drive::Drop { drop_inwc: drop_psi * PA_PER_PSI / PA_PER_INWC });
    }
    if drop_psi > inlet_psi {
        let message = t!(
            "table-drop-psi-more-than",
            drop_psi = drop_psi.to_string(),
            inlet_psi = inlet_psi.to_string()
        );
        return Err(line.error("drop", message));
    }
    Ok(Drive::Squares { inlet_psi, drop_psi })
}

/// How many digits of a capacity count: three, as the code prints, unless most figures of four or more
/// digits show more.
pub(super) fn significant(table: &CsvTable) -> Option<usize> {
    let (mut large, mut fine) = (0_usize, 0_usize);
    for line in table.lines() {
        let text = line.text("capacity");
        if text.len() > 3 && text.bytes().all(|byte| byte.is_ascii_digit()) {
            large += 1;
            fine += usize::from(text.trim_end_matches('0').len() > 3);
        }
    }
    (2 * fine <= large).then_some(3)
}
