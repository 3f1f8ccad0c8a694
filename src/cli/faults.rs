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

#[derive(Debug, clap::Args)]
#[command(about = t!("help-faults"))]
pub(super) struct Args {
    #[arg(help = t!("help-faults-name"))]
    name: Option<String>,
    #[arg(long, conflicts_with = "write", help = t!("help-json-array"))]
    json: bool,
    #[arg(long, value_name = "FOLDER", conflicts_with = "name", help = t!("help-faults-write"))]
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
                let name = shortened(name);
                let message = match near {
                    None => t!("faults-unknown", name = name),
                    Some(near) => t!("faults-unknown-near", name = name, near = near),
                };
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
