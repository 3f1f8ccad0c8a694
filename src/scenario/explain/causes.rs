//! The causes that a finding can name, as text, as a table and for programs.

use core::fmt::Write as _;

use serde::Serialize;

use crate::parts::{Cause, SystemPart};

/// A cause with what an author asks of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ToldCause {
    /// Its id, as scripts and records write it.
    pub id: &'static str,
    /// Part of the system that it is looked for in.
    pub part: &'static str,
    /// Its name on the job sheet.
    pub name: &'static str,
    /// How it can be seen.
    pub seen: &'static str,
    /// Faults of the catalogue that it names.
    pub faults: Vec<&'static str>,
}

impl ToldCause {
    fn of(cause: Cause) -> Self {
        Self {
            id: cause.id(),
            part: cause.part().label(),
            name: cause.label(),
            seen: cause.how_seen(),
            faults: cause.faults().iter().map(|fault| fault.name()).collect(),
        }
    }
}

/// Every cause for `causes`, else the one with this id.
pub(super) fn told(wanted: &str) -> Vec<ToldCause> {
    let id = wanted.strip_prefix("causes.").unwrap_or(wanted);
    let meant = |cause: &&Cause| wanted == "causes" || cause.id() == id;
    Cause::ALL.iter().filter(meant).map(|cause| ToldCause::of(*cause)).collect()
}

/// Every cause in a line, by part of the system.
pub(super) fn list(text: &mut String) {
    for &part in SystemPart::ALL {
        let _ = writeln!(text, "    {}", part.label());
        for cause in Cause::ALL.iter().filter(|cause| cause.part() == part) {
            let _ = writeln!(text, "        {:<26} {}", cause.id(), cause.label());
        }
    }
}

/// Appends the entry of one cause.
pub(super) fn entry(text: &mut String, cause: &ToldCause) {
    let _ = writeln!(text, "    {}: {}", cause.part, cause.name);
    let _ = writeln!(text, "    - {}", cause.seen);
    if !cause.faults.is_empty() {
        let faults = cause.faults.join(", ");
        let _ = writeln!(text, "    - {}", t!("explain-cause-faults", faults = faults));
    }
}

/// The causes as a table in Markdown.
pub(in crate::scenario) fn cause_table() -> String {
    let mut text = format!("{}\n|---|---|---|---|---|\n", t!("explain-cause-columns"));
    for &cause in Cause::ALL {
        let it = ToldCause::of(cause);
        let faults: Vec<_> = it.faults.iter().map(|fault| format!("`{fault}`")).collect();
        let faults = faults.join(", ");
        let _ =
            writeln!(text, "| {} | `{}` | {} | {} | {faults} |", it.part, it.id, it.name, it.seen);
    }
    text
}
