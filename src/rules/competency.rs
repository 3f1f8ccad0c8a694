//! What a job can show that somebody is able to do: 22 competencies, in our own words, after the
//! headings of public competency lists for gas work (UK core gas safety and central-heating
//! assessments, Canadian gas-fitter standards, Australian gas units, US occupational tasks). Their
//! full criteria were not at hand; none of those bodies has looked at this table. Practice here is
//! evidence of practice only and confers no qualification.

use serde::Serialize;

/// A competency.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Competency {
    /// Its id, `C01` to `C22`, as rules and scenarios name it.
    pub id: &'static str,
    /// Its name, in a few words.
    pub name: &'static str,
    /// What somebody does who has it.
    pub criterion: &'static str,
}

const fn c(id: &'static str, name: &'static str, criterion: &'static str) -> Competency {
    Competency { id, name, criterion }
}

/// All of them, by id.
pub const ALL: [Competency; 22] = [
    c(
        "C01",
        "Hazards",
        "Looks for hazards before and during the work, keeps the room aired, and reports what is found.",
    ),
    c(
        "C02",
        "Gas escape",
        "Answers a smell of gas or an alarm rightly, and tells the people in the house what to do.",
    ),
    c(
        "C03",
        "The fuel",
        "Works with the properties of the gas at hand: heavy or light, its heat, its limits, its smell.",
    ),
    c(
        "C04",
        "Plate and papers",
        "Reads job card, rating plate and label first, and works to their figures.",
    ),
    c(
        "C05",
        "Instruments",
        "Chooses a sound instrument, zeroes it open to the air, and knows what its number means.",
    ),
    c("C06", "Isolation", "Shuts off gas and power and proves it before anything is opened."),
    c(
        "C07",
        "Supply pressure",
        "Checks the supply at rest, running and with everything on, and sets it only where it is allowed.",
    ),
    c(
        "C08",
        "Burner pressure",
        "Reads both stages at the manifold, sets what is out of its band, and proves it with the cap on.",
    ),
    c(
        "C09",
        "Gas rate",
        "Finds the heat input from the meter's dial or from the orifices, and compares it with the plate.",
    ),
    c(
        "C10",
        "Air and flue",
        "Makes sure that the burners get air and that the products of combustion leave.",
    ),
    c(
        "C11",
        "Safety devices",
        "Checks that the devices that guard the furnace do so, and leaves none bypassed.",
    ),
    c(
        "C12",
        "Leak checks",
        "Checks every joint that was opened, at its own working pressure, until it is tight.",
    ),
    c(
        "C13",
        "Purge and relight",
        "Brings gas back safely after an interruption, and relights every appliance.",
    ),
    c(
        "C14",
        "Commission and look after",
        "Runs the furnace through a whole cycle and leaves it as its maker wants it.",
    ),
    c(
        "C15",
        "Find and mend",
        "Finds the cause from the readings before turning or changing anything, and mends that.",
    ),
    c(
        "C16",
        "Unsafe situations",
        "Recognises what must not run, shuts it off, tags it and says so in writing.",
    ),
    c("C17", "Pipe size", "Judges pipe by load, length and allowed drop."),
    c(
        "C18",
        "Fuel conversion and altitude",
        "Proves every part of a conversion, and follows the plate at height.",
    ),
    c(
        "C19",
        "Records",
        "Writes down what was read, with unit and place, what was done, and what was found.",
    ),
    c(
        "C20",
        "Care and explaining",
        "Does no damage, leaves the place clean, and explains to the householder.",
    ),
    c(
        "C21",
        "House air and staging",
        "Checks air and temperature rise, and that the thermostat calls both stages.",
    ),
    c(
        "C22",
        "Rules of the house",
        "Keeps to who owns what, to a tidy work place and to the record of maintenance.",
    ),
];

/// The one with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Competency> {
    ALL.iter().find(|one| one.id == id)
}
