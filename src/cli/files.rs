//! Reading with a limit, and writing all or nothing.

use std::fs::{File, OpenOptions};
use std::io::{Read, Write};
use std::path::{Path, PathBuf};

use super::exit::{Exit, Trouble};

/// The bytes of a file, at most `most` and one more, so that who reads them sees that it is larger.
pub(super) fn read(path: &Path, most: usize) -> Result<Vec<u8>, Trouble> {
    let trouble = |why: &dyn core::fmt::Display| {
        Trouble::new(Exit::Files, format!("{}: {why}", path.display()))
    };
    if path.is_dir() {
        return Err(trouble(&t!("cli-folder-to-read")));
    }
    let file = File::open(path).map_err(|error| trouble(&error))?;
    let mut bytes = Vec::new();
    let limit = u64::try_from(most).unwrap_or(u64::MAX).saturating_add(1);
    file.take(limit).read_to_end(&mut bytes).map_err(|error| trouble(&error))?;
    Ok(bytes)
}

/// Writes a file: first whole under another name in the same folder, then under its own. A file that
/// was there before is replaced; nobody ever sees half of one.
///
/// # Errors
/// With [`Exit::Files`] when it cannot be written; what was there before is untouched then.
pub fn write_whole(path: &Path, text: &str) -> Result<(), Trouble> {
    write_bytes(path, text.as_bytes())
}

/// The same with bytes that are no text.
pub(super) fn write_bytes(path: &Path, bytes: &[u8]) -> Result<(), Trouble> {
    let trouble = |why: &dyn core::fmt::Display| {
        Trouble::new(Exit::Files, format!("{}: {why}", path.display()))
    };
    if path.is_dir() {
        return Err(trouble(&t!("cli-folder-to-write")));
    }
    let part = part_of(path).ok_or_else(|| trouble(&t!("cli-no-file-name")))?;
    let written = write_new(&part, bytes).and_then(|()| std::fs::rename(&part, path));
    written.map_err(|error| {
        // It may not even be there.
        let _ = std::fs::remove_file(&part);
        trouble(&error)
    })
}

fn write_new(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut file = OpenOptions::new().write(true).create_new(true).open(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// A name beside `path` that nobody else uses.
fn part_of(path: &Path) -> Option<PathBuf> {
    let mut name = std::ffi::OsString::from(".");
    name.push(path.file_name()?);
    name.push(format!(".{}.part", std::process::id()));
    Some(path.with_file_name(name))
}
