//! `explain`: the field reference of scenarios.

use super::exit::{Exit, Trouble, data};
use crate::scenario;

/// Explain a field of a scenario, or all of them.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// A field by its path, as in `furnace.plate.made_for.high`, or by its name alone; without it,
    /// the whole reference is printed.
    field: Option<String>,
}

pub(super) fn explain(args: &Args) -> Result<Exit, Trouble> {
    let Some(field) = &args.field else {
        return data(&scenario::reference()).map(|()| Exit::Fine);
    };
    match scenario::explain(field) {
        Ok(text) => data(&text).map(|()| Exit::Fine),
        Err(nearest) => {
            let near = nearest.map(|name| format!("; nearest: {name}")).unwrap_or_default();
            Err(Trouble::new(Exit::Usage, format!("A scenario has no field `{field}`{near}.")))
        }
    }
}
