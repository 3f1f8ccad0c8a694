//! Large tables as a whole: columns by their medians, single cells by what a transcription is worth.

use crate::fidelity::{Check, Row, Tolerance};

/// What is known of a table beforehand.
#[derive(Debug, Clone, Copy)]
pub(super) struct Known {
    /// Why the model misses it.
    pub why: &'static str,
    /// Where the columns' medians must lie all the same.
    pub columns: Tolerance,
    /// Where every cell must lie all the same.
    pub cells: Tolerance,
    /// Why these bands.
    pub reason: &'static str,
}

/// Most that a cell of a transcribed table is trusted to.
const TRUST: Tolerance = Tolerance::Relative(-0.02, 0.02);
const STRAYS: &str = "single cells lie outside: the transcription has slips of single digits, and the \
    print some scatter of its own. Tried: the columns' medians, which hold within the band, and every \
    cell within what the transcription is worth, which holds too";
const TRUST_REASON: &str =
    "what is left of a transcription after the slips that were found: 2 % a cell";

/// Adds to the check `id` what stays hard where it may miss: its columns' medians always, and every
/// cell within a wider band if a cell lies outside the narrow one.
pub(super) fn judge(checks: &mut Vec<Check>, id: &str, known: Option<Known>) {
    let Some(at) = checks.iter().position(|check| check.id == id) else { return };
    let Some(check) = checks.get_mut(at) else { return };
    let missed = !check.rows.iter().all(|row| check.tolerance.holds(row.reference, row.judged()));
    let transcribed = is_transcribed(&check.source);
    check.known_miss = match known {
        Some(known) => Some(known.why.to_owned()),
        None if transcribed && missed => Some(STRAYS.to_owned()),
        None => None,
    };
    let check = check.clone();
    let band = known.map_or(check.tolerance, |known| known.columns);
    let rows = medians(&check);
    let mut more = Vec::new();
    more.extend((!rows.is_empty()).then(|| Check {
        id: format!("{id}.columns"),
        claim: format!("{} Median of each column, model over table.", check.claim),
        tolerance: band,
        reason: known.map_or(check.reason.clone(), |known| known.reason.to_owned()),
        unit: "1",
        rows,
        known_miss: None,
        ..check.clone()
    }));
    if missed && (known.is_some() || transcribed) {
        more.push(Check {
            id: format!("{id}.cells"),
            claim: format!("{} Every cell.", check.claim),
            tolerance: known.map_or(TRUST, |known| known.cells),
            reason: known.map_or(TRUST_REASON, |known| known.reason).to_owned(),
            known_miss: None,
            ..check
        });
    }
    checks.splice(at + 1..at + 1, more);
}

/// Fewest cells that have a median worth the name.
const FEWEST: usize = 5;

/// One row a column: the median of model over table, rounding taken off.
fn medians(check: &Check) -> Vec<Row> {
    let mut columns: Vec<(&str, Vec<f64>)> = Vec::new();
    for row in &check.rows {
        let ratio = row.judged() / row.reference;
        match columns.iter_mut().find(|(name, _)| *name == row.line) {
            Some((_, ratios)) => ratios.push(ratio),
            None => columns.push((&row.line, vec![ratio])),
        }
    }
    let mut rows = Vec::new();
    for (name, mut ratios) in columns {
        ratios.sort_by(f64::total_cmp);
        if let Some(median) = ratios.get(ratios.len() / 2).filter(|_| ratios.len() >= FEWEST) {
            rows.push(Row::new(format!("{name}, {} cells", ratios.len()), 1.0, *median));
        }
    }
    rows
}

/// Whether a source is somebody's copy of the print, with slips of its own.
fn is_transcribed(source: &str) -> bool {
    source.contains("transcription")
        || source.split(|c: char| !c.is_ascii_alphanumeric()).any(|word| word == "S3")
}
