//! What a job can show that somebody is able to do: 22 competencies, in our own words, after the
//! headings of public competency lists for gas work (UK core gas safety and central-heating
//! assessments, Canadian gas-fitter standards, Australian gas units, US occupational tasks). Their
//! full criteria were not at hand; none of those bodies has looked at this table. Practice here is
//! evidence of practice only and confers no qualification.

use serde::{Serialize, Serializer};

use crate::words::Id;

/// One thing that a job can show somebody to be able to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Competency {
    /// Its id, `C01` to `C22`, as rules and scenarios name it.
    pub id: &'static str,
    #[serde(serialize_with = "as_text")]
    name: Id,
    #[serde(serialize_with = "as_text")]
    criterion: Id,
}

fn as_text<S: Serializer>(id: &Id, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(id.text())
}

impl Competency {
    /// Its name, in a few words.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name.text()
    }

    /// What somebody does who has it, in a sentence.
    #[must_use]
    pub fn criterion(&self) -> &'static str {
        self.criterion.text()
    }
}

const fn c(id: &'static str, name: Id, criterion: Id) -> Competency {
    Competency { id, name, criterion }
}

/// All of them, by id.
pub const ALL: [Competency; 22] = [
    c("C01", id!("competency-c01"), id!("competency-c01-shown")),
    c("C02", id!("competency-c02"), id!("competency-c02-shown")),
    c("C03", id!("competency-c03"), id!("competency-c03-shown")),
    c("C04", id!("competency-c04"), id!("competency-c04-shown")),
    c("C05", id!("competency-c05"), id!("competency-c05-shown")),
    c("C06", id!("competency-c06"), id!("competency-c06-shown")),
    c("C07", id!("competency-c07"), id!("competency-c07-shown")),
    c("C08", id!("competency-c08"), id!("competency-c08-shown")),
    c("C09", id!("competency-c09"), id!("competency-c09-shown")),
    c("C10", id!("competency-c10"), id!("competency-c10-shown")),
    c("C11", id!("competency-c11"), id!("competency-c11-shown")),
    c("C12", id!("competency-c12"), id!("competency-c12-shown")),
    c("C13", id!("competency-c13"), id!("competency-c13-shown")),
    c("C14", id!("competency-c14"), id!("competency-c14-shown")),
    c("C15", id!("competency-c15"), id!("competency-c15-shown")),
    c("C16", id!("competency-c16"), id!("competency-c16-shown")),
    c("C17", id!("competency-c17"), id!("competency-c17-shown")),
    c("C18", id!("competency-c18"), id!("competency-c18-shown")),
    c("C19", id!("competency-c19"), id!("competency-c19-shown")),
    c("C20", id!("competency-c20"), id!("competency-c20-shown")),
    c("C21", id!("competency-c21"), id!("competency-c21-shown")),
    c("C22", id!("competency-c22"), id!("competency-c22-shown")),
];

/// The one with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Competency> {
    ALL.iter().find(|one| one.id == id)
}
