//! The table of parts, `assets/catalogue/parts.ron`: what the parts of the drawings are called, in which
//! order a job meets them, what can be looked at there and where an instrument is held.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::{Deserialize, Deserializer};

use super::names::{Place, Screw, Subject, Tool};
use super::spot::{Range, Spot};
use crate::appliance::test_point::Port;
use crate::words::table::{Asked, Table, TableError, by_id};

/// The table that comes with the program.
const PARTS: Table = Table {
    file: "assets/catalogue/parts.ron",
    text: include_str!("../../assets/catalogue/parts.ron"),
    key: "part",
};

/// A part of a drawing.
#[derive(Debug)]
pub struct Part {
    /// The name a person reads.
    pub name: &'static str,
    /// The port that it belongs to.
    pub port: Option<Port>,
    /// The screw that it belongs to.
    pub screw: Option<Screw>,
    /// What a look at it is a look at.
    pub subject: Option<Subject>,
}

/// The table, read once.
static TABLE: LazyLock<Result<Parts, TableError>> = LazyLock::new(|| Parts::read(PARTS));

#[derive(Debug)]
struct Parts {
    orders: BTreeMap<Place, &'static [&'static str]>,
    at_hand: &'static [&'static str],
    parts: BTreeMap<&'static str, Part>,
    subjects: Vec<(Subject, Looked)>,
    spots: Vec<(Spot, Held)>,
}

/// What the table says of something to look at closely.
#[derive(Debug)]
struct Looked {
    place: Place,
    look: &'static str,
}

/// What the table says of a spot.
#[derive(Debug)]
struct Held {
    tool: Tool,
    range: Option<Range>,
    places: &'static [Place],
    at: &'static [&'static str],
}

/// The table as it is written.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, bound(deserialize = "'de: 'static"))]
struct File {
    orders: Vec<OrderRow>,
    at_hand: Vec<&'static str>,
    parts: Vec<PartRow>,
    subjects: Vec<SubjectRow>,
    spots: Vec<SpotRow>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, bound(deserialize = "'de: 'static"))]
struct OrderRow {
    places: Vec<ById<Place>>,
    parts: Vec<&'static str>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct PartRow {
    part: &'static str,
    name: Option<&'static str>,
    port: Option<ById<Port>>,
    screw: Option<ById<Screw>>,
    subject: Option<ById<Subject>>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct SubjectRow {
    subject: ById<Subject>,
    place: ById<Place>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields, bound(deserialize = "'de: 'static"))]
struct SpotRow {
    spot: ById<Spot>,
    tool: ById<Tool>,
    range: Option<Range>,
    places: Vec<ById<Place>>,
    at: Vec<&'static str>,
}

/// Something that the table writes by its id.
#[derive(Debug, Clone, Copy)]
struct ById<T>(T);

macro_rules! written_by_id {
    ($($kind:ident),+) => {
        $(
            impl<'de> Deserialize<'de> for ById<$kind> {
                fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
                    by_id(reader, $kind::from_id).map(Self)
                }
            }
        )+
    };
}

written_by_id!(Place, Port, Screw, Subject, Spot, Tool);

impl PartRow {
    fn name_id(&self) -> String {
        self.name.map_or_else(|| format!("part-{}", self.part), str::to_owned)
    }
}

impl SubjectRow {
    fn look_id(&self) -> String {
        format!("look-{}", self.subject.0.id())
    }
}

impl Parts {
    /// Reads a table.
    ///
    /// # Errors
    /// What cannot be read, stands twice or is missing, with its place.
    fn read(table: Table) -> Result<Self, TableError> {
        let file: File = table.read()?;
        let parts = parts(table, file.parts)?;
        let listed = file.orders.iter().flat_map(|row| &row.parts).chain(&file.at_hand);
        let offered = file.spots.iter().flat_map(|row| &row.at);
        if let Some(id) = listed.chain(offered).find(|&id| !parts.contains_key(id)) {
            return Err(table.error("", t!("table-no-part", id = *id)));
        }
        Ok(Self {
            orders: orders(table, file.orders)?,
            // The table lives as long as the program.
            at_hand: file.at_hand.leak(),
            parts,
            subjects: subjects(table.keyed("subject"), file.subjects)?,
            spots: spots(table.keyed("spot"), file.spots)?,
        })
    }
}

fn parts(table: Table, rows: Vec<PartRow>) -> Result<BTreeMap<&'static str, Part>, TableError> {
    let mut parts = BTreeMap::new();
    for row in rows {
        let part = Part {
            name: table.message(row.part, &row.name_id())?,
            port: row.port.map(|it| it.0),
            screw: row.screw.map(|it| it.0),
            subject: row.subject.map(|it| it.0),
        };
        if parts.insert(row.part, part).is_some() {
            return Err(table.error(row.part, t!("table-twice", id = row.part)));
        }
    }
    Ok(parts)
}

fn orders(
    table: Table,
    rows: Vec<OrderRow>,
) -> Result<BTreeMap<Place, &'static [&'static str]>, TableError> {
    let mut orders = BTreeMap::new();
    for OrderRow { places, parts } in rows {
        let parts: &'static [&'static str] = parts.leak();
        for ById(place) in places {
            if orders.insert(place, parts).is_some() {
                return Err(table.error("", t!("table-two-orders", place = place.id())));
            }
        }
    }
    match Place::ALL.iter().find(|place| !orders.contains_key(place)) {
        Some(place) => Err(table.error("", t!("table-no-order", place = place.id()))),
        None => Ok(orders),
    }
}

fn subjects(table: Table, rows: Vec<SubjectRow>) -> Result<Vec<(Subject, Looked)>, TableError> {
    let rows = rows.into_iter().map(|row| (row.subject.0, row)).collect();
    table.one_each(Subject::ALL, Subject::id, rows, |row: SubjectRow| {
        let look = table.message(row.subject.0.id(), &row.look_id())?;
        Ok(Looked { place: row.place.0, look })
    })
}

fn spots(table: Table, rows: Vec<SpotRow>) -> Result<Vec<(Spot, Held)>, TableError> {
    let rows = rows.into_iter().map(|row| (row.spot.0, row)).collect();
    table.one_each(Spot::ALL, Spot::id, rows, |row: SpotRow| {
        let tool = row.tool.0;
        if (tool == Tool::ElectricalMeter) != row.range.is_some() {
            let why = t!("table-meter-range").to_owned();
            return Err(table.error(row.spot.0.id(), why));
        }
        let places: Vec<Place> = row.places.into_iter().map(|it| it.0).collect();
        Ok(Held { tool, range: row.range, places: places.leak(), at: row.at.leak() })
    })
}

/// Whether the table that comes with the program can be read.
pub(crate) fn check() -> Result<(), TableError> {
    TABLE.as_ref().map(drop).map_err(Clone::clone)
}

/// The messages that the rows ask for.
///
/// # Errors
/// A row cannot be read.
pub(crate) fn asked() -> Result<Vec<Asked>, TableError> {
    let file: File = PARTS.read()?;
    let names = file.parts.iter().map(|row| Asked::new(PARTS, row.part, row.name_id()));
    let looked = PARTS.keyed("subject");
    let looks = file.subjects.iter();
    let looks = looks.map(|row| Asked::new(looked, row.subject.0.id(), row.look_id()));
    Ok(names.chain(looks).collect())
}

/// The part with this id; none where the table has none.
#[must_use]
pub fn part(id: &str) -> Option<&'static Part> {
    TABLE.as_ref().ok()?.parts.get(id)
}

/// Parts of a place in the order of a job. Tab goes this way; parts not listed follow.
#[must_use]
pub fn job_order(place: Place) -> &'static [&'static str] {
    TABLE.as_ref().ok().and_then(|table| table.orders.get(&place)).copied().unwrap_or_default()
}

/// Tools and the manometer, which are at hand everywhere.
#[must_use]
pub fn at_hand() -> &'static [&'static str] {
    TABLE.as_ref().map_or(&[], |table| table.at_hand)
}

impl Subject {
    fn looked(self) -> Option<&'static Looked> {
        let mut subjects = TABLE.iter().flat_map(|table| &table.subjects);
        subjects.find(|(subject, _)| *subject == self).map(|(_, looked)| looked)
    }

    /// Where it can be looked at.
    #[must_use]
    pub fn place(self) -> Place {
        self.looked().map_or(Place::Away, |looked| looked.place)
    }

    /// What a person does who looks at it, in words.
    #[must_use]
    pub fn look(self) -> &'static str {
        self.looked().map_or("", |looked| looked.look)
    }
}

impl Spot {
    fn held(self) -> Option<&'static Held> {
        let mut spots = TABLE.iter().flat_map(|table| &table.spots);
        spots.find(|(spot, _)| *spot == self).map(|(_, held)| held)
    }

    /// The instrument that it belongs to.
    #[must_use]
    pub fn tool(self) -> Tool {
        self.held().map_or(Tool::Stopwatch, |held| held.tool)
    }

    /// Where it can be reached from.
    #[must_use]
    pub fn places(self) -> &'static [Place] {
        self.held().map_or(&[], |held| held.places)
    }

    /// Whether it lies behind the burner door.
    #[must_use]
    pub fn is_behind_door(self) -> bool {
        matches!(self.tool(), Tool::ElectricalMeter | Tool::Microammeter)
    }

    /// What the electrical meter is set to there; none for other instruments.
    #[must_use]
    pub fn range(self) -> Option<Range> {
        self.held().and_then(|held| held.range)
    }

    /// The spots that are offered at a part, in the order of the table.
    pub fn at(part: &str) -> impl Iterator<Item = Self> {
        let spots = TABLE.iter().flat_map(|table| &table.spots);
        spots.filter(move |(_, held)| held.at.contains(&part)).map(|(spot, _)| *spot)
    }
}

#[cfg(test)]
mod tests {
    use super::{PARTS, Parts};
    use crate::words::table::Table;

    /// A row that stands twice, is missing or cannot be read is found.
    #[test]
    fn planted_mistakes_are_found() {
        assert!(Parts::read(PARTS).is_ok(), "{:?}", Parts::read(PARTS).err());
        for (sound, planted, expected) in [
            ("(part: \"blower\")", "(part: \"igniter\")", "`igniter` stands there twice"),
            ("(part: \"blower\")", "(part: \"fan\")", "no message `part-fan`"),
            ("(part: \"riser\"),", "", "there is no part `riser`"),
            ("places: [\"hall\"]", "places: [\"yard\"]", "`yard` has two orders"),
            ("\"yard\", \"away\"", "\"yard\"", "`away` has no order"),
            ("port: \"inlet-port\"", "port: \"inlet\"", "nothing has the id `inlet`"),
            ("range: Volts, ", "", "only an electrical meter has a range"),
            ("(subject: \"plate\", place: \"plant-room\"),", "", "no row for `plate`"),
            ("(spot: \"flue\"", "(spot: \"room-air\"", "`room-air` stands there twice"),
            ("at_hand", "in_hand", "in_hand"),
        ] {
            let text = PARTS.text.replacen(sound, planted, 1);
            assert_ne!(text, PARTS.text, "{planted}");
            let told = Parts::read(Table { text: text.leak(), ..PARTS }).unwrap_err();
            assert!(told.message.contains(expected), "{told}");
        }
    }
}
