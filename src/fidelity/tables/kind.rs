//! The tables of `assets/reference`, and what reads a table: by its name in `tables.ron` there, or by
//! its columns where those leave no doubt.

use std::sync::LazyLock;

use include_dir::{Dir, include_dir};
use serde::Deserialize;

use super::csv_table::{CsvTable, TableError};
use super::outcome::Outcome;
use super::{
    air, altitude, burning, csst, fittings, gas, instruments, manifold, meter, orifice, pipe,
    regulator, room, vectors,
};

type Run = fn(&CsvTable) -> Result<Outcome, TableError>;

static FOLDER: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/assets/reference");

/// Name and text of every table kept with the program, in the order of the guide.
pub static TABLES: LazyLock<Vec<(&'static str, &'static str)>> = LazyLock::new(|| {
    let text = |name: &str| FOLDER.get_file(name)?.contents_utf8();
    LIST.kept.iter().filter_map(|row| Some((row.name.as_str(), text(&row.name)?))).collect()
});

static LIST: LazyLock<List> = LazyLock::new(|| read_list().unwrap_or_default());

/// The tables known by name.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct List {
    /// Kept with the program.
    pub kept: Vec<Named>,
    /// Known to anybody who brings them.
    pub known: Vec<Named>,
    /// Known and not used, and why.
    pub not_used: Vec<(String, String)>,
}

/// A table's name, or its beginning and a `*`, and what reads the table.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Named {
    /// The name of the file without its folder, or the beginning of it and a `*`.
    pub name: String,
    /// The reader, whatever the columns of the file.
    pub reader: Reader,
}

/// Reads the list.
///
/// # Errors
/// With line and column, if the list kept with the program is broken.
pub fn read_list() -> Result<List, ron::error::SpannedError> {
    ron::from_str(include_str!("../../../assets/reference/tables.ron"))
}

macro_rules! readers {
    ($($name:ident => $run:path, $columns:expr;)+) => {
        /// What reads a table.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
        #[expect(missing_docs, reason = "named for what their tables hold")]
        pub enum Reader {
            $($name),+
        }

        impl Reader {
            const ALL: &[Self] = &[$(Self::$name),+];

            /// What does the reading, and the columns that tell its tables; none for tables of words.
            fn parts(self) -> (Run, &'static [&'static str]) {
                match self {
                    $(Self::$name => ($run, $columns)),+
                }
            }
        }
    };
}

readers! {
    AirSide => air::run, &[];
    BurningFacts => burning::facts, &[];
    TubingRules => csst::rules, &[];
    DilutionExamples => room::equations, &[];
    RegulatorExamples => regulator::worked, &[];
    Pipe => pipe::run, pipe::COLUMNS;
    Tubing => csst::run, csst::COLUMNS;
    TubingLaw => csst::fit, csst::FIT_COLUMNS;
    Fittings => fittings::run, fittings::COLUMNS;
    PipeGravity => fittings::gravity, fittings::GRAVITY_COLUMNS;
    PipeGasFactors => fittings::factors, fittings::FACTOR_COLUMNS;
    PipeEquations => fittings::equations, fittings::EQUATION_COLUMNS;
    Drills => orifice::drills, orifice::DRILL_COLUMNS;
    UtilityOrifices => orifice::utility, orifice::UTILITY_COLUMNS;
    PropaneOrifices => orifice::propane, orifice::PROPANE_COLUMNS;
    OrificeFormula => orifice::computed, orifice::COMPUTED_COLUMNS;
    Leaks => orifice::leaks, orifice::LEAK_COLUMNS;
    ManifoldPairs => manifold::pairs, manifold::PAIR_COLUMNS;
    FiringRatio => manifold::ratios, manifold::RATIO_COLUMNS;
    MeterFormula => meter::computed, meter::COMPUTED_COLUMNS;
    ClockingChart => meter::chart, meter::CHART_COLUMNS;
    Altitude => altitude::run, altitude::COLUMNS;
    AltitudeExamples => altitude::examples, altitude::EXAMPLE_COLUMNS;
    FlueGas => burning::products, burning::COLUMNS;
    Dilution => room::vectors, room::COLUMNS;
    Gases => gas::run, gas::COLUMNS;
    PressureUnits => instruments::conversions, instruments::COLUMNS;
    RegulatorGeometries => regulator::geometries, regulator::COLUMNS;
    Cases => vectors::run, vectors::COLUMNS;
}

/// Tables that are known and not used, with the reason.
pub(super) fn all_not_used() -> &'static [(String, String)] {
    &LIST.not_used
}

/// Why a table of this name is known and not used.
pub(super) fn not_used(file: &str) -> Option<&'static str> {
    LIST.not_used.iter().find(|(name, _)| name == file).map(|(_, why)| why.as_str())
}

/// What reads a table.
pub(super) fn reader(table: &CsvTable) -> Option<Run> {
    let file = table.file();
    let named = |row: &&Named| match row.name.strip_suffix('*') {
        Some(beginning) => file.starts_with(beginning),
        None => row.name == file,
    };
    if let Some(row) = LIST.kept.iter().chain(&LIST.known).find(named) {
        return Some(row.reader.parts().0);
    }
    let has = |name: &str| table.header().iter().any(|have| have == name);
    let mut fitting = Reader::ALL
        .iter()
        .map(|reader| reader.parts())
        .filter(|(_, columns)| !columns.is_empty() && columns.iter().all(|name| has(name)));
    match (fitting.next(), fitting.next()) {
        (Some((run, _)), None) => Some(run),
        _ => None,
    }
}
