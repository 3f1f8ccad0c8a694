//! `faults`: the catalogue of faults with the pattern that each makes.

mod instruments;
mod looks;
mod measured;
mod page;

use std::path::PathBuf;

use super::exit::{Exit, Trouble, data, json};
use super::explain::shortened;
use super::files::write_whole;
use crate::catalogue::fault::Fault;
use crate::scenario;

/// Print the catalogue of faults: cause, severity, and what is read and seen beside a healthy bench.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// One fault by its name; without it, all of them.
    name: Option<String>,
    /// Print one JSON array.
    #[arg(long, conflicts_with = "write")]
    json: bool,
    /// Write the page to `faults.md` in this folder instead of printing it.
    #[arg(long, value_name = "FOLDER", conflicts_with = "name")]
    write: Option<PathBuf>,
}

pub(super) fn faults(args: &Args) -> Result<Exit, Trouble> {
    let wanted: Vec<Fault> = match &args.name {
        None => Fault::ALL.to_vec(),
        Some(name) => match Fault::from_name(name) {
            Some(fault) => vec![fault],
            None => {
                let near = scenario::find(&format!("faults.{name}")).err().flatten();
                let near = near.as_deref().and_then(|path| path.strip_prefix("faults."));
                let near = near.map(|name| format!("; nearest: {name}")).unwrap_or_default();
                let name = shortened(name);
                let message =
                    format!("There is no fault `{name}`{near}; `quarterturn faults` lists them.");
                return Err(Trouble::new(Exit::Usage, message));
            }
        },
    };
    let measured = measured::measure_all(&wanted);
    if args.json {
        json(&measured.iter().map(page::report).collect::<Vec<_>>())?;
    } else if let Some(folder) = &args.write {
        write_whole(&folder.join("faults.md"), &page::page(&measured))?;
    } else if args.name.is_some() {
        data(&measured.iter().map(page::entry).collect::<String>())?;
    } else {
        data(&page::page(&measured))?;
    }
    Ok(Exit::Fine)
}
