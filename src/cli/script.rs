//! `script`: from a record to the script that plays it again.

use std::fmt::Write as _;
use std::path::PathBuf;

use super::exit::{Exit, Trouble, data};
use super::files;
use crate::hands::event::{Event, EventKind};
use crate::record;
use crate::technician::script::action_line;
use crate::units::TICKS_PER_S;

/// Words of scripts: what may be refused, and time that passes.
const TRY: &str = "try";
const WAIT: &str = "wait";
/// Longest waiting on one line, in ticks: ten hours.
const MAX_WAIT_TICKS: u64 = 10 * 3600 * TICKS_PER_S;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-script"))]
pub(super) struct Args {
    #[arg(help = t!("help-script-record"))]
    record: PathBuf,
}

pub(super) fn script(args: &Args) -> Result<Exit, Trouble> {
    let file = args.record.display().to_string();
    let bytes = files::read(&args.record, record::MAX_BYTES)?;
    let record = record::read(&bytes).map_err(|fault| {
        Trouble::new(Exit::from_code(fault.exit_code()), format!("{file}: {fault}"))
    })?;
    let mut all: Vec<Event> = Vec::new();
    let replay = record::replay(&record, &mut |_, events| {
        all.extend(events.into_iter().filter(|event| is_action(&event.what)));
    })
    .map_err(|error| Trouble::new(Exit::Findings, format!("{file}: {error}")))?;
    if let Some(difference) = replay.differs {
        return Err(Trouble::new(Exit::Findings, format!("{file}: {difference}")));
    }
    let header = &record.header;
    let mut out = format!(
        "# {}\n",
        t!("run-job-line", scenario = &header.scenario.id, seed = header.seed.to_string())
    );
    let mut tick = 0;
    for event in &all {
        wait(&mut out, event.tick - tick);
        tick = event.tick;
        if let EventKind::Did { action, .. } = &event.what {
            let _ = writeln!(out, "{}", action_line(action));
        }
        if let EventKind::Refused { action, why } = &event.what {
            let _ = writeln!(out, "{TRY} {}  # {}", action_line(action), why.text());
        }
    }
    wait(&mut out, record.last_tick() - tick);
    data(&out).map(|()| Exit::Fine)
}

fn is_action(what: &EventKind) -> bool {
    matches!(what, EventKind::Did { .. } | EventKind::Refused { .. })
}

/// Lets so many ticks pass.
fn wait(out: &mut String, mut ticks: u64) {
    while ticks > 0 {
        let now = ticks.min(MAX_WAIT_TICKS);
        let hundredths = now % TICKS_PER_S * (100 / TICKS_PER_S);
        let _ = writeln!(out, "{WAIT} {}.{hundredths:02} s", now / TICKS_PER_S);
        ticks -= now;
    }
}
