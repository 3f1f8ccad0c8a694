//! How a command ends, and where its words go.

use std::io::{ErrorKind, Write};
use std::process::ExitCode;

/// How a command ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Exit {
    /// The command did what was asked and found nothing wrong.
    Fine,
    /// Something was found: a problem in a file, a slip in a job, a script that stopped.
    Findings,
    /// The command was not written as it must be.
    Usage,
    /// A file for a newer program.
    Newer,
    /// A file could not be read or written.
    Files,
}

impl Exit {
    /// The code for the shell.
    #[must_use]
    pub fn code(self) -> u8 {
        match self {
            Self::Fine => 0,
            Self::Findings => 1,
            Self::Usage => 2,
            Self::Files => 3,
            Self::Newer => 4,
        }
    }

    /// From the code that a scenario or a record has.
    #[must_use]
    pub fn from_code(code: u8) -> Self {
        match code {
            0 => Self::Fine,
            4 => Self::Newer,
            _ => Self::Findings,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit.code())
    }
}

/// Why a command could not do its work.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trouble {
    /// How the program ends.
    pub exit: Exit,
    /// What to tell, on one line where it can be.
    pub message: String,
}

impl Trouble {
    /// Trouble with this exit.
    #[must_use]
    pub fn new(exit: Exit, message: impl Into<String>) -> Self {
        Self { exit, message: message.into() }
    }
}

/// Writes data to standard output. A reader that has gone away is no trouble.
pub(super) fn data(text: &str) -> Result<(), Trouble> {
    let mut out = std::io::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => Ok(()),
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        Err(error) => {
            Err(Trouble::new(Exit::Files, t!("cli-no-output", error = error.to_string())))
        }
    }
}

/// Writes a value to standard output as JSON, on one line.
pub(super) fn json<T: serde::Serialize>(value: &T) -> Result<(), Trouble> {
    let text = serde_json::to_string(value)
        .map_err(|error| Trouble::new(Exit::Files, t!("cli-no-json", error = error.to_string())))?;
    data(&format!("{text}\n"))
}

/// Says something on standard error.
pub(super) fn talk(text: &str) {
    let mut out = std::io::stderr().lock();
    // There is nowhere else to complain.
    let _ = writeln!(out, "{}", text.trim_end());
}
