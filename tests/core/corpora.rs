//! The fuzzer's kept inputs, given to the readers as the fuzzer does: what once reached a new place,
//! or failed, is tried on every machine.

#[path = "../fuzz/readers.rs"]
mod readers;

use std::fs;
use std::path::PathBuf;

/// Gives every kept input of a reader to it; whose turn it is stands in the output of a failure.
fn each(name: &str, reader: fn(&[u8])) {
    let folder = PathBuf::from(".").join("tests/fuzz/corpus").join(name);
    let mut paths: Vec<_> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    assert!(paths.len() > 20, "{name} has {} inputs", paths.len());
    for path in paths {
        println!("{}", path.display());
        reader(&fs::read(&path).unwrap());
    }
}

#[test]
fn scenarios() {
    each("scenario", readers::scenario);
}

#[test]
fn scripts() {
    each("script", readers::script);
}

#[test]
fn records() {
    each("record", readers::record);
}

#[test]
fn slow_replays() {
    each("replay", readers::replay);
}

/// All corpora together stay small enough to keep.
#[test]
fn corpora_are_small() {
    let root = PathBuf::from(".").join("tests/fuzz/corpus");
    let folders = fs::read_dir(root).unwrap().map(|entry| entry.unwrap().path());
    let files = folders.flat_map(|folder| fs::read_dir(folder).unwrap());
    let bytes: u64 = files.map(|entry| entry.unwrap().metadata().unwrap().len()).sum();
    assert!(bytes < 1_000_000, "{bytes} bytes");
}
