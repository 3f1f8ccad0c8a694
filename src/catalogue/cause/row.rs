//! The rows of `assets/catalogue/causes.ron`.

use std::sync::LazyLock;

use serde::de::value::StrDeserializer;
use serde::{Deserialize, Deserializer};

use super::kind::BackingKind;
use crate::parts::{Cause, SystemPart};
use crate::setup::Fault;
use crate::words::table::{Asked, Table, TableError, by_id};

/// The table that comes with the program.
const CAUSES: Table = Table {
    file: "assets/catalogue/causes.ron",
    text: include_str!("../../../assets/catalogue/causes.ron"),
    key: "cause",
};

/// What the table says of each cause, in its order, read once.
pub(crate) static CAUSES_READ: LazyLock<Result<Vec<(Cause, Entry)>, TableError>> =
    LazyLock::new(|| entries(CAUSES));

/// What the catalogue says of a cause.
#[derive(Debug)]
pub(crate) struct Entry {
    pub(crate) part: SystemPart,
    /// Faults that it names.
    pub(crate) names: Vec<Fault>,
    /// Faults for which it is a name that is near enough.
    pub(crate) coarser_for: Vec<Fault>,
    /// The same on a job that was left shut off after an alarm.
    pub(crate) after_alarm: Vec<Fault>,
    pub(crate) shown_by: Vec<BackingKind>,
    /// How it can be seen, in a sentence.
    pub(crate) seen: &'static str,
    /// Harm that it does to the house where it is left, in a sentence.
    pub(crate) house: &'static str,
    pub(crate) harms: Harms,
}

impl Entry {
    /// What stands for every cause where the table cannot be read; the command line tells why
    /// before it runs anything.
    pub(crate) const UNREAD: Self = Self {
        part: SystemPart::Nothing,
        names: Vec::new(),
        coarser_for: Vec::new(),
        after_alarm: Vec::new(),
        shown_by: Vec::new(),
        seen: "",
        house: "",
        harms: Harms::No,
    };
}

/// Whether a wrong word of a cause sends for somebody, condemns a part or shuts a sound house off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
pub enum Harms {
    /// A wrong word of it does harm.
    Yes,
    /// A wrong word of it costs a look.
    #[default]
    No,
}

/// A row as it is written.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Row {
    #[serde(deserialize_with = "cause")]
    cause: Cause,
    #[serde(deserialize_with = "part")]
    part: SystemPart,
    #[serde(default)]
    harms: Harms,
    #[serde(default)]
    names: Vec<Named>,
    #[serde(default)]
    coarser_for: Vec<Named>,
    #[serde(default)]
    after_alarm: Vec<Named>,
    shown_by: Vec<BackingKind>,
}

/// A fault by the name that the catalogue gives it.
#[derive(Debug, Clone, Copy)]
struct Named(Fault);

impl<'de> Deserialize<'de> for Named {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let written = String::deserialize(reader)?;
        Fault::deserialize(StrDeserializer::new(&written)).map(Self)
    }
}

fn cause<'de, D: Deserializer<'de>>(reader: D) -> Result<Cause, D::Error> {
    by_id(reader, Cause::from_id)
}

fn part<'de, D: Deserializer<'de>>(reader: D) -> Result<SystemPart, D::Error> {
    by_id(reader, SystemPart::from_id)
}

/// The id of the text that says how a cause can be seen.
fn seen_id(cause: Cause) -> String {
    format!("cause-{}-seen", cause.id())
}

/// The id of the text that says what a cause does to the house.
fn house_id(cause: Cause) -> String {
    format!("cause-{}-house", cause.id())
}

/// What a table says of each cause, in its order.
///
/// # Errors
/// What cannot be read, stands twice or is missing, and a fault that no cause names, with its
/// place.
pub(crate) fn entries(table: Table) -> Result<Vec<(Cause, Entry)>, TableError> {
    let faults = |named: Vec<Named>| named.into_iter().map(|Named(fault)| fault).collect();
    let rows = table.read::<Vec<Row>>()?.into_iter().map(|row| (row.cause, row)).collect();
    let entries = table.one_each(Cause::ALL, Cause::id, rows, |row| {
        let id = row.cause.id();
        if row.shown_by.is_empty() {
            return Err(table.error(id, t!("table-cause-unseen", id = id)));
        }
        Ok(Entry {
            part: row.part,
            names: faults(row.names),
            coarser_for: faults(row.coarser_for),
            after_alarm: faults(row.after_alarm),
            shown_by: row.shown_by,
            seen: table.message(id, &seen_id(row.cause))?,
            house: table.message(id, &house_id(row.cause))?,
            harms: row.harms,
        })
    })?;
    let naming = |fault: &Fault| entries.iter().filter(|(_, it)| it.names.contains(fault)).count();
    match Fault::ALL.iter().find(|fault| naming(fault) != 1) {
        Some(fault) => {
            let fault = ron::to_string(fault).unwrap_or_default();
            Err(table.error("", t!("table-fault-uncaused", fault = fault)))
        }
        None => Ok(entries),
    }
}

/// The messages that the rows ask for.
///
/// # Errors
/// A row cannot be read.
pub(crate) fn asked() -> Result<Vec<Asked>, TableError> {
    let rows = CAUSES.read::<Vec<Row>>()?;
    let of = |row: &Row| {
        let id = row.cause.id();
        [seen_id(row.cause), house_id(row.cause)].map(|text| Asked::new(CAUSES, id, text))
    };
    Ok(rows.iter().flat_map(of).collect())
}

#[cfg(test)]
mod tests {
    use super::{CAUSES, entries};
    use crate::words::table::Table;

    /// A row that stands twice, is missing or cannot be read, and a fault that no cause or more
    /// than one names, are found with their place.
    #[test]
    fn planted_mistakes_are_found() {
        assert!(entries(CAUSES).is_ok(), "{:?}", entries(CAUSES).err());
        let first = "cause: \"supply-set-low\"";
        for (sound, planted, expected) in [
            (first, "cause: \"vent-blocked\"", "`vent-blocked` stands there twice"),
            (first, "cause: \"supply-low\"", "nothing has the id `supply-low`"),
            ("part: \"supply\"", "part: \"supplies\"", "nothing has the id `supplies`"),
            ("\"reading inlet-port\"", "\"reading inlet\"", "`reading inlet` speaks for nothing"),
            ("\"supply_set_low\"", "\"supply_low\"", "supply_low"),
            ("\"supply_set_low\"", "\"supply_set_high\"", "`SupplySetLow`"),
            ("shown_by: [\"reading inlet-port\"]", "shown_by: []", "nothing speaks for"),
        ] {
            let text = CAUSES.text.replacen(sound, planted, 1);
            assert_ne!(text, CAUSES.text, "{planted}");
            let told = entries(Table { text: text.leak(), ..CAUSES }).unwrap_err();
            assert!(told.message.contains(expected), "{told}");
        }
        let end = CAUSES.text.rfind("    (").unwrap_or_default();
        let text = format!("{}]", &CAUSES.text[..end]);
        let told = entries(Table { text: text.leak(), ..CAUSES }).unwrap_err();
        assert_eq!(told.message, "there is no row for `nothing-found`");
    }
}
