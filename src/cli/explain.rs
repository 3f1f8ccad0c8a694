//! `explain`: the field reference of scenarios, the shared rules and the competencies.

use std::path::PathBuf;

use super::exit::{Exit, Trouble, data, json};
use super::files::write_whole;
use crate::scenario::{self, guide};
use crate::words::t;

/// Explain a field of a scenario, a fault, a rule, a competency, or all fields.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// A field by its path, as in `furnace.plate.made_for.high`, or by its name alone; a fault as
    /// `faults.plugged_orifice`; a rule or a competency by its id, as `left-outside-band` or `C05`;
    /// `rules` or `competencies` for all of them. Without it, the fields are printed.
    field: Option<String>,
    /// Print one JSON array.
    #[arg(long, conflicts_with = "write")]
    json: bool,
    /// Write the page on the format to `scenario-format.md` in this folder instead of printing.
    #[arg(long, value_name = "FOLDER", conflicts_with = "field")]
    write: Option<PathBuf>,
}

/// Characters of an unknown name that are repeated at most.
const REPEATED: usize = 60;

pub(super) fn explain(args: &Args) -> Result<Exit, Trouble> {
    if let Some(folder) = &args.write {
        write_whole(&folder.join("scenario-format.md"), &guide::page())?;
        return Ok(Exit::Fine);
    }
    match &args.field {
        None if args.json => json(&scenario::all_fields())?,
        None => data(&scenario::reference())?,
        Some(field) if args.json => {
            json(&scenario::topics(field).map_err(|it| unknown(field, it))?)?
        }
        Some(field) => data(&scenario::explain(field).map_err(|it| unknown(field, it))?)?,
    }
    Ok(Exit::Fine)
}

fn unknown(field: &str, nearest: Option<String>) -> Trouble {
    let short = shortened(field);
    let message = match nearest {
        None => t!("explain-unknown", name = short),
        Some(near) => t!("explain-unknown-near", name = short, near = near),
    };
    Trouble::new(Exit::Usage, message)
}

/// A name as it may be repeated: printable, and not endless.
pub(super) fn shortened(name: &str) -> String {
    let mut short: String = name.chars().filter(|c| !c.is_control()).take(REPEATED).collect();
    if name.chars().count() > REPEATED {
        short.push('…');
    }
    short
}
