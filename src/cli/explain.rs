//! `explain`: the field reference of scenarios, the shared rules, competencies and mistakes.

use std::path::PathBuf;

use super::exit::{Exit, Trouble, data, json};
use super::files::write_whole;
use crate::scenario::{self, coverage, guide};

#[derive(Debug, clap::Args)]
#[command(about = t!("help-explain"))]
pub(super) struct Args {
    #[arg(help = t!("help-explain-field"))]
    field: Option<String>,
    #[arg(long, conflicts_with = "write", help = t!("help-json-array"))]
    json: bool,
    #[arg(long, value_name = "FOLDER", conflicts_with = "field", help = t!("help-explain-write"))]
    write: Option<PathBuf>,
}

/// Characters of an unknown name that are repeated at most.
const REPEATED: usize = 60;

pub(super) fn explain(args: &Args) -> Result<Exit, Trouble> {
    if let Some(folder) = &args.write {
        write_whole(&folder.join("scenario-format.md"), &guide::page())?;
        write_whole(&folder.join("coverage.md"), &coverage::page())?;
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
