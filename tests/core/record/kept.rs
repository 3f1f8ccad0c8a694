//! Kept records: attempts that were recorded once and must replay to the bit as long as the model
//! has the version that they tell. They do not depend on the technician or on the scenarios' files.
//!
//! `docs/model-versions.md` says what to do when they no longer replay.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::PathBuf;

use quarterturn::hands::action::Action;
use quarterturn::record::{Ended, MODEL_VERSION, Record, Recorder, What, read, replay};
use quarterturn::rng::stream;
use quarterturn::scenario::builtin::{Builtin, JOBS};

use super::{bench, header, whole_of};
use crate::bench::random::action;

/// Random actions of a kept drill.
const DRILL: u32 = 350;
/// How to write the records of a new version.
const WRITE: &str = "cargo test --no-default-features --features cli \
                     write_kept_records -- --ignored";

fn folder() -> PathBuf {
    PathBuf::from(".").join("tests/core/record/kept")
}

/// The kept records by their file's name.
pub fn kept() -> BTreeMap<String, Vec<u8>> {
    fs::read_dir(folder())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .map(|path| {
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            (name, fs::read(path).unwrap())
        })
        .collect()
}

/// A job played at random: what a technician never does is kept too.
fn drill(job: &Builtin, seed: u64) -> String {
    let mut stream = stream(seed, "drill");
    let mut bench = bench(job, seed);
    let mut recorder = Recorder::begin(&header(job, seed), String::new()).unwrap();
    for _ in 0..DRILL {
        let action = action(&mut stream);
        if !matches!(action, Action::HandOver(_)) {
            let _ = bench.apply(&action);
            recorder.acted(&bench, &action);
        }
        for _ in 0..1 + stream.below(60) {
            recorder.ticked(&bench);
            if bench.over().is_none() {
                bench.step();
            }
        }
        if bench.over().is_some() {
            break;
        }
    }
    recorder.ticked(&bench);
    recorder.end(&bench, Ended::of(bench.over())).unwrap()
}

/// The records of the present model, newly played.
fn fresh() -> BTreeMap<String, String> {
    let mut found = BTreeMap::new();
    for job in &JOBS {
        found.insert(format!("model-{MODEL_VERSION}-{}.jsonl", job.id), whole_of(job, 1).0);
        found.insert(format!("model-{MODEL_VERSION}-{}-drill.jsonl", job.id), drill(job, 1));
    }
    found
}

/// The digests in the kept records of a model, in one short word: 16 hexadecimal digits of BLAKE3
/// over all of them, in the order of the files' names.
fn fingerprint(records: &[Record]) -> String {
    let mut hasher = blake3::Hasher::new();
    for line in records.iter().flat_map(|record| &record.lines) {
        if let What::Mark(digest) | What::End { digest, .. } = &line.what {
            hasher.update(&digest.to_be_bytes());
        }
    }
    hasher.finalize().to_hex().as_str()[..16].to_owned()
}

fn of_this_model() -> Vec<Record> {
    kept()
        .iter()
        .map(|(name, bytes)| read(bytes).unwrap_or_else(|fault| panic!("{name}: {fault}")))
        .filter(|record| record.model == Some(MODEL_VERSION))
        .collect()
}

/// A version of the model, as the list of versions tells it.
#[derive(Debug)]
struct Entry {
    version: u32,
    fingerprint: String,
    why: String,
}

/// The rows of the list of versions, in their order.
fn entries() -> Vec<Entry> {
    let path = PathBuf::from(".").join("docs/model-versions.md");
    let text = fs::read_to_string(path).unwrap();
    text.lines()
        .filter_map(|line| {
            let mut cells = line.strip_prefix("| ")?.strip_suffix(" |")?.split(" | ");
            let version = cells.next()?.trim().parse().ok()?;
            let fingerprint = cells.next()?.trim().trim_matches('`').to_owned();
            Some(Entry { version, fingerprint, why: cells.next()?.trim().to_owned() })
        })
        .collect()
}

/// As long as the version stands, every digest in every kept record comes out again. So a changed
/// digest needs a new version.
#[test]
fn kept_records_replay() {
    let records = of_this_model();
    for job in &JOBS {
        let many = records.iter().filter(|record| record.header.scenario.id == job.id).count();
        assert!(many >= 2, "{}: {many} kept records of this model; write them: {WRITE}", job.id);
    }
    let mut wrong = String::new();
    for record in &records {
        let id = &record.header.scenario.id;
        assert!(record.is_finished() && record.torn.is_none(), "{id}");
        let it = replay(record, &mut |_, _| {}).unwrap();
        assert!(it.compared > 20, "{id}: {} digests", it.compared);
        if let Some(difference) = it.differs {
            let _ = writeln!(wrong, "{id}: {difference}");
        }
    }
    assert!(
        wrong.is_empty(),
        "The model no longer does what version {MODEL_VERSION} did:\n{wrong}\
         If that is meant, follow docs/model-versions.md."
    );
}

/// The list of versions tells every version once with its reason, and the newest is the constant's,
/// with the fingerprint of its kept records: who writes those anew must touch the list.
#[test]
fn the_list_of_model_versions_is_true() {
    let entries = entries();
    let newest = entries.last().expect("a row");
    for (i, entry) in entries.iter().enumerate() {
        assert_eq!(entry.version as usize, i + 1, "versions are counted from 1: {entry:?}");
        assert!(entry.why.len() > 20, "a reason in words: {entry:?}");
        assert!(entry.fingerprint.len() == 16, "{entry:?}");
    }
    let found = fingerprint(&of_this_model());
    assert!(
        (newest.version, newest.fingerprint.as_str()) == (MODEL_VERSION, found.as_str()),
        "the last row must be: | {MODEL_VERSION} | `{found}` | why |"
    );
}

/// Records of other versions of the model are still read, and told as such when they come out
/// differently.
#[test]
fn kept_records_of_other_models_are_read() {
    for (name, bytes) in kept() {
        let record = read(&bytes).unwrap();
        let told = record.model.unwrap_or(0);
        assert!(name.starts_with(&format!("model-{told}-")), "{name} tells model {told}");
        let differs = replay(&record, &mut |_, _| {}).unwrap().differs;
        if let Some(difference) = differs.filter(|_| told != MODEL_VERSION) {
            assert!(difference.to_string().contains("version"), "{name}: {difference}");
        }
    }
}

/// Not a test: writes the kept records of the present version.
#[test]
#[ignore = "writes the kept records of a new version of the model"]
fn write_kept_records() {
    for (name, text) in fresh() {
        fs::write(folder().join(name), text).unwrap();
    }
    println!("| {MODEL_VERSION} | `{}` | why |", fingerprint(&of_this_model()));
}
