//! The rows of `assets/catalogue/faults.ron`.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::de::value::StrDeserializer;
use serde::{Deserialize, Deserializer};

use super::entry::{Entry, Family, Scale, Severity};
use super::fits::Fits;
use super::remedy::{Remedy, Wrong};
use crate::setup::Fault;
use crate::words::table::{Asked, Table, TableError};

/// The table that comes with the program.
const FAULTS: Table = Table {
    file: "assets/catalogue/faults.ron",
    text: include_str!("../../../assets/catalogue/faults.ron"),
    key: "name",
};

/// The entries of the table, read once.
pub(crate) static ENTRIES: LazyLock<Result<BTreeMap<Fault, Entry>, TableError>> =
    LazyLock::new(|| entries(FAULTS));

/// A row as it is written.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, bound(deserialize = "'de: 'static"))]
struct Row {
    name: Name,
    number: u8,
    family: Family,
    #[serde(default)]
    fits: Fits,
    severity: Option<Measured>,
    right: Vec<Remedy>,
    wrong: Vec<Remedy>,
}

/// A severity that is more than there or not.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(deny_unknown_fields)]
struct Measured {
    scale: Scale,
    least: &'static str,
    most: &'static str,
    typical: &'static str,
    on_propane: Option<&'static str>,
}

/// The fault of a row, with its name as it is written.
#[derive(Debug, Clone, Copy)]
struct Name {
    fault: Fault,
    written: &'static str,
}

impl<'de: 'static> Deserialize<'de> for Name {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let written = <&'static str>::deserialize(reader)?;
        let fault = Fault::deserialize(StrDeserializer::new(written))?;
        Ok(Self { fault, written })
    }
}

impl Row {
    fn cause_id(&self) -> String {
        message(self.name.written, "cause")
    }

    fn severity_id(&self) -> String {
        message(self.name.written, "severity")
    }

    fn danger_id(&self, remedy: Remedy) -> String {
        message(self.name.written, &format!("wrong-{}", remedy.id().replace(' ', "-")))
    }

    fn message_ids(&self) -> Vec<String> {
        let mut ids = vec![self.cause_id()];
        ids.extend(self.severity.map(|_| self.severity_id()));
        ids.extend(self.wrong.iter().map(|&remedy| self.danger_id(remedy)));
        ids
    }

    fn entry(self, table: Table) -> Result<Entry, TableError> {
        let name = self.name.written;
        let text = |id: String| table.message(name, &id);
        let severity = match self.severity {
            None => Severity::PLAIN,
            Some(it) => Severity::read(
                it.scale,
                text(self.severity_id())?,
                (it.least, it.most),
                [it.typical, it.on_propane.unwrap_or(it.typical)],
            )
            .map_err(|why| table.error(name, why))?,
        };
        let mut wrong = Vec::new();
        for &remedy in &self.wrong {
            wrong.push(Wrong { remedy, danger: text(self.danger_id(remedy))? });
        }
        Ok(Entry {
            number: self.number,
            name,
            family: self.family,
            severity,
            cause: text(self.cause_id())?,
            // The table lives as long as the program.
            right: self.right.leak(),
            wrong: wrong.leak(),
            fits: self.fits,
        })
    }
}

/// The id of a text of a fault.
fn message(fault: &str, of: &str) -> String {
    format!("fault-{}-{of}", fault.replace('_', "-"))
}

/// The entries of a table, one for each fault.
///
/// # Errors
/// What cannot be read, stands twice or is missing, with its place.
pub(crate) fn entries(table: Table) -> Result<BTreeMap<Fault, Entry>, TableError> {
    let mut entries = BTreeMap::new();
    for row in table.read::<Vec<Row>>()? {
        let Name { fault, written } = row.name;
        if entries.contains_key(&fault) {
            return Err(table.error(written, t!("table-twice", id = written)));
        }
        entries.insert(fault, row.entry(table)?);
    }
    match Fault::ALL.iter().find(|fault| !entries.contains_key(fault)) {
        Some(missing) => {
            let missing = ron::to_string(missing).unwrap_or_default();
            Err(table.error("", t!("table-no-row", id = missing)))
        }
        None => Ok(entries),
    }
}

/// The messages that the rows ask for.
///
/// # Errors
/// A row cannot be read.
pub(crate) fn asked() -> Result<Vec<Asked>, TableError> {
    let rows = FAULTS.read::<Vec<Row>>()?;
    let of = |row: &Row| {
        let name = row.name.written;
        row.message_ids().into_iter().map(move |id| Asked::new(FAULTS, name, id))
    };
    Ok(rows.iter().flat_map(of).collect())
}

#[cfg(test)]
mod tests {
    use super::{FAULTS, entries};
    use crate::words::table::Table;

    /// A row that stands twice, is missing or cannot be read is found with its place.
    #[test]
    fn planted_mistakes_are_found() {
        assert!(entries(FAULTS).is_ok(), "{:?}", entries(FAULTS).err());
        for (sound, planted, expected) in [
            ("\"supply_set_high\"", "\"supply_set_low\"", "`supply_set_low` stands there twice"),
            ("\"supply_set_low\"", "\"supply_set\"", "supply_set"),
            ("number: 1,", "nr: 1,", "nr"),
            ("\"call-owner\"", "\"call\"", "nothing has the id `call`"),
            ("\"turn high-screw\"", "\"turn gas-valve\"", "nothing has the id `turn gas-valve`"),
            (
                "\"turn high-screw\"",
                "\"turn low-screw\"",
                "no message `fault-supply-set-low-wrong-turn-low-screw`",
            ),
            ("least: \"0.3 inH2O\"", "least: \"0.3 feet\"", "feet"),
            ("least: \"0.3 inH2O\"", "least: \"6 inH2O\"", "6 inH2O to 5 inH2O is no range"),
            (
                "typical: \"3 inH2O\"",
                "typical: \"30 inH2O\"",
                "30 inH2O lies outside 0.3 inH2O to 5 inH2O",
            ),
            ("family: Supply", "family: Supplies", "Supplies"),
        ] {
            let text = FAULTS.text.replacen(sound, planted, 1);
            assert_ne!(text, FAULTS.text, "{planted}");
            let told = entries(Table { text: text.leak(), ..FAULTS }).unwrap_err();
            assert!(told.message.contains(expected), "{told}");
            assert!((7..=16).contains(&told.line), "{told}");
        }
        let end = FAULTS.text.rfind("    (").unwrap_or_default();
        let text = format!("{}]", &FAULTS.text[..end]);
        let told = entries(Table { text: text.leak(), ..FAULTS }).unwrap_err();
        assert_eq!(told.message, "there is no row for `FadedOdorant`");
    }
}
