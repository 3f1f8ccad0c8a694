//! The rows of `assets/catalogue/repairs.ron`.

use std::sync::LazyLock;

use serde::{Deserialize, Deserializer};

use super::repairs::Repair;
use super::work::{Moves, Nature, Need, OnPiping, OnReading, There, Work};
use crate::parts::{self, Joint, Place};
use crate::setup::Renewed;
use crate::words::table::{Asked, Table, TableError, by_id};

/// The table that comes with the program.
const REPAIRS: Table = Table {
    file: "assets/catalogue/repairs.ron",
    text: include_str!("../../../assets/catalogue/repairs.ron"),
    key: "repair",
};

/// What the table says of each repair, in its order, read once.
pub(crate) static WORKS: LazyLock<Result<Vec<(Repair, Work)>, TableError>> =
    LazyLock::new(|| works(REPAIRS));

/// A row as it is written.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, bound(deserialize = "'de: 'static"))]
struct Row {
    #[serde(deserialize_with = "repair")]
    repair: Repair,
    at: Vec<&'static str>,
    #[serde(deserialize_with = "place")]
    place: Place,
    nature: Nature,
    #[serde(default)]
    there: There,
    #[serde(default)]
    needs: Vec<Need>,
    #[serde(default)]
    disturbs: Vec<Opened>,
    #[serde(default)]
    piping: OnPiping,
    #[serde(default)]
    renews: Renewed,
    #[serde(default)]
    moves: Moves,
    #[serde(default)]
    on_reading: OnReading,
}

/// A joint that is opened and closed again.
#[derive(Debug, Deserialize)]
#[serde(transparent)]
struct Opened(#[serde(deserialize_with = "joint")] Joint);

fn repair<'de, D: Deserializer<'de>>(reader: D) -> Result<Repair, D::Error> {
    by_id(reader, Repair::from_id)
}

fn place<'de, D: Deserializer<'de>>(reader: D) -> Result<Place, D::Error> {
    by_id(reader, Place::from_id)
}

fn joint<'de, D: Deserializer<'de>>(reader: D) -> Result<Joint, D::Error> {
    by_id(reader, Joint::from_id)
}

/// The id of a repair's name.
fn label_id(repair: Repair) -> String {
    format!("repair-{}", repair.id())
}

/// What a table says of each repair, in its order.
///
/// # Errors
/// What cannot be read, stands twice or is missing, with its place.
pub(crate) fn works(table: Table) -> Result<Vec<(Repair, Work)>, TableError> {
    let rows = table.read::<Vec<Row>>()?.into_iter().map(|row| (row.repair, row)).collect();
    table.one_each(Repair::ALL, Repair::id, rows, |row| {
        let id = row.repair.id();
        if let Some(part) = row.at.iter().find(|part| parts::part(part).is_none()) {
            return Err(table.error(id, t!("table-no-part", id = *part)));
        }
        Ok(Work {
            label: table.message(id, &label_id(row.repair))?,
            // The table lives as long as the program.
            at: row.at.leak(),
            place: row.place,
            nature: row.nature,
            there: row.there,
            needs: row.needs.leak(),
            disturbs: row
                .disturbs
                .into_iter()
                .map(|Opened(joint)| joint)
                .collect::<Vec<_>>()
                .leak(),
            piping: row.piping,
            renews: row.renews,
            moves: row.moves,
            on_reading: row.on_reading,
        })
    })
}

/// The messages that the rows ask for.
///
/// # Errors
/// A row cannot be read.
pub(crate) fn asked() -> Result<Vec<Asked>, TableError> {
    let rows = REPAIRS.read::<Vec<Row>>()?;
    let of = |row: &Row| Asked::new(REPAIRS, row.repair.id(), label_id(row.repair));
    Ok(rows.iter().map(of).collect())
}

#[cfg(test)]
mod tests {
    use super::{REPAIRS, works};
    use crate::words::table::Table;

    /// A row that stands twice, is missing or cannot be read is found with its place.
    #[test]
    fn planted_mistakes_are_found() {
        assert!(works(REPAIRS).is_ok(), "{:?}", works(REPAIRS).err());
        let first = "repair: \"replace-supply-regulator\"";
        for (sound, planted, expected) in [
            (first, "repair: \"clear-vent\"", "`clear-vent` stands there twice"),
            (first, "repair: \"new-regulator\"", "nothing has the id `new-regulator`"),
            ("nature: Part", "natur: Part", "natur"),
            ("Shut(\"supply-cock\")", "Shut(\"cock\")", "nothing has the id `cock`"),
            ("at: [\"riser\"]", "at: [\"rise\"]", "there is no part `rise`"),
            ("disturbs: [\"union\"]", "disturbs: [\"elbow\"]", "nothing has the id `elbow`"),
        ] {
            let text = REPAIRS.text.replacen(sound, planted, 1);
            assert_ne!(text, REPAIRS.text, "{planted}");
            let told = works(Table { text: text.leak(), ..REPAIRS }).unwrap_err();
            assert!(told.message.contains(expected), "{told}");
            assert!(told.line > 12, "{told}");
        }
        let end = REPAIRS.text.rfind("    (").unwrap_or_default();
        let text = format!("{}]", &REPAIRS.text[..end]);
        let told = works(Table { text: text.leak(), ..REPAIRS }).unwrap_err();
        assert_eq!(told.message, "there is no row for `drill-manifold-tap`");
    }
}
