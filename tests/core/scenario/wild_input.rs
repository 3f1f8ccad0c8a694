//! No bytes make the reader panic, and what loads can be drawn.

use proptest::prelude::*;
use quarterturn::scenario::{
    MAX_BYTES, ProblemLevel, builtin, check, check_bytes, load, to_json, to_text,
};

/// A scenario cut off at any byte is refused, never half taken.
#[test]
fn every_truncation_is_refused() {
    for job in &builtin::JOBS {
        let whole = job.text.trim_end().len();
        for cut in 0..whole {
            let Some(text) = job.text.get(..cut) else { continue };
            let found = check(job.id, text);
            assert!(
                found.iter().any(|p| p.severity == ProblemLevel::Error),
                "cut at byte {cut}: {found:#?}"
            );
        }
        assert!(check(job.id, &job.text[..whole]).is_empty());
    }
}

/// Checks, renders and, when it loads, draws.
fn exercise(bytes: &[u8]) {
    let found = check_bytes("wild.ron", bytes);
    let text = String::from_utf8_lossy(bytes);
    let _ = to_text(&found, &text);
    let _ = to_json(&found);
    for problem in &found {
        assert!(problem.line >= 1 && problem.column >= 1);
        assert!(problem.line <= text.lines().count() + 1, "{problem:#?}");
    }
    if let Ok(text) = core::str::from_utf8(bytes)
        && let Ok(scenario) = load(text)
    {
        let setup = scenario.draw(7);
        assert!(setup.supply.set_pa.is_finite() && !setup.trunk.is_empty());
        assert!(setup.furnace.orifice_cd.is_finite());
    }
}

/// Large files of one repeated piece are refused in good time: work that grew with the square of the
/// size would take minutes for a quarter of a megabyte.
#[test]
fn large_nonsense_is_refused_quickly() {
    for piece in [
        "1 ", "(", "a", "@", "\"", "\\", "/*", "*/", "//\n", "[1 ", "x:", "(x:1 ", "),", "Some ",
        "r#", "'", "Between(", "\u{e9}", "#![a]", "0x", "-", "\n", ", ", "b\"",
    ] {
        for lead in ["", "(", "(x:["] {
            let text = format!("{lead}{}", piece.repeat((MAX_BYTES - 4) / piece.len()));
            let start = std::time::Instant::now();
            assert!(!check("wild.ron", &text).is_empty());
            let took = start.elapsed();
            assert!(took.as_secs_f64() < 5.0, "{lead}{piece}: {took:?}");
        }
    }
}

/// Pieces that RON and the format are made of.
const PIECES: [&str; 24] = [
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    ",",
    ":",
    "\"",
    "\\",
    "#",
    "r#\"",
    "//",
    "/*",
    "*/",
    "Some(",
    "None",
    "Between(",
    "\"1 inH2O\"",
    "version",
    "Scenario",
    "-",
    "1e308",
    "\u{0}é\u{10ffff}",
];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn random_bytes(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        exercise(&bytes);
    }

    #[test]
    fn random_pieces(picks in prop::collection::vec(0..PIECES.len(), 0..60)) {
        let text: String = picks.iter().map(|&i| PIECES[i]).collect();
        exercise(text.as_bytes());
    }

    /// A shipped scenario with a few bytes put in, taken out or replaced.
    #[test]
    fn mutated_scenarios(
        job in 0..builtin::JOBS.len(),
        edits in prop::collection::vec((any::<prop::sample::Index>(), 0..PIECES.len(), 0_usize..4), 1..5),
    ) {
        let mut bytes = builtin::JOBS[job].text.as_bytes().to_vec();
        for (at, piece, cut) in edits {
            let at = at.index(bytes.len());
            let end = (at + cut).min(bytes.len());
            let piece = if cut % 2 == 0 { PIECES[piece] } else { "" };
            bytes.splice(at..end, piece.bytes());
        }
        exercise(&bytes);
    }
}
