//! `prove`: every shipped scenario on its first seeds, and the committed page. `examine`: its
//! options.

use std::fs;

use super::expect;

/// Seeds that are proven anew at every check.
const SEEDS: &str = "3";

/// The reference technician has full marks on the first seeds of every shipped scenario, every
/// spoiled run loses exactly its items, and the committed page says the same of these seeds.
#[test]
fn slow_every_shipped_scenario_is_proven_and_the_page_is_fresh() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    expect(at, &["prove", "--seeds", SEEDS, "--no-alike", "--write", "."], 0);
    let fresh = fs::read_to_string(at.join("proof.md")).unwrap();
    let kept = fs::read_to_string("docs/proof.md").unwrap();
    // The first table sums up all seeds and the looks at other faults, which take longer; each
    // section after it is a job's.
    let mut kept_jobs = kept.split("\n## ").skip(1);
    let mut stale = Vec::new();
    for job in fresh.split("\n## ").skip(1) {
        let rows: std::collections::BTreeSet<&str> =
            kept_jobs.next().unwrap_or_default().lines().collect();
        stale.extend(job.lines().filter(|line| !rows.contains(line)));
    }
    assert!(
        stale.is_empty(),
        "docs/proof.md does not have these lines; write it with `quarterturn prove --seeds 20 \
         --write docs`:\n{}",
        stale.join("\n")
    );
    let untripped = |page: &str| {
        page.lines().find(|line| line.starts_with("Rules that no spoiled")).map(str::to_owned)
    };
    assert_eq!(untripped(&fresh), untripped(&kept));
}

/// A file that is no scenario is told with its place; a seed count out of range is a usage mistake.
#[test]
fn what_cannot_be_proven_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    for bytes in [&b"Scenario(version: 1"[..], b"\xff\xfe\x00", b""] {
        fs::write(at.join("broken.ron"), bytes).unwrap();
        let ran = expect(at, &["prove", "broken.ron"], 1);
        assert!(ran.err.contains("broken.ron"), "{}", ran.err);
    }
    expect(at, &["prove", "healthy-natural", "--seeds", "0"], 2);
    expect(at, &["prove", "healthy-natural", "--seeds", "1001"], 2);
    expect(at, &["prove", "no-such-job"], 3);
}

/// What cannot be examined is told: counts out of range and options that exclude each other are
/// usage mistakes, a job that is not there is a file that is missing.
#[test]
fn what_cannot_be_examined_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    expect(at, &["examine", "healthy-natural", "--seeds", "0"], 2);
    expect(at, &["examine", "healthy-natural", "--runs", "1001"], 2);
    expect(at, &["examine", "healthy-natural", "--faults"], 2);
    expect(at, &["examine", "--faults", "--write", "."], 2);
    expect(at, &["examine", "--json", "--write", "."], 2);
    expect(at, &["examine", "no-such-job"], 3);
}
