//! Large tables as a whole: columns by their medians, single cells by what a transcription is worth.

use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::{Bound, TableMiss, table_miss};

/// Adds to the check `id` what stays hard where it may miss: its columns' medians always, and every
/// cell within a wider band if a cell lies outside the narrow one.
pub(super) fn judge(checks: &mut Vec<Check>, id: &str, known: Option<&TableMiss>) {
    let Some(at) = checks.iter().position(|check| check.id == id) else { return };
    let Some(check) = checks.get_mut(at) else { return };
    let missed = !check.rows.iter().all(|row| check.tolerance.holds(row.reference, row.judged()));
    let strays = || table_miss("transcription").filter(|_| missed && is_transcribed(&check.source));
    let known = known.or_else(strays);
    check.known_miss = known.map(|known| known.why.clone());
    let check = check.clone();
    let beside = |bound: Bound| {
        let reason = known.filter(|_| bound != Bound::Own).map(|known| known.reason.clone());
        (bound.beside(check.tolerance), reason.unwrap_or_else(|| check.reason.clone()))
    };
    let rows = medians(&check);
    let mut more = Vec::new();
    if !rows.is_empty() {
        let (tolerance, reason) = beside(known.map_or(Bound::Own, |known| known.columns));
        more.push(Check {
            id: format!("{id}.columns"),
            claim: t!("row-claim-columns", claim = &check.claim),
            tolerance,
            reason,
            unit: "1",
            rows,
            known_miss: None,
            ..check.clone()
        });
    }
    if let Some(known) = known.filter(|_| missed) {
        let (tolerance, reason) = beside(known.cells);
        more.push(Check {
            id: format!("{id}.cells"),
            claim: t!("row-claim-cells", claim = &check.claim),
            tolerance,
            reason,
            known_miss: None,
            ..check.clone()
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
            rows.push(Row::new(t!("row-cells", name = name, count = ratios.len()), 1.0, *median));
        }
    }
    rows
}

/// Whether a source is somebody's copy of the print, with slips of its own.
fn is_transcribed(source: &str) -> bool {
    source.contains("transcription")
        || source.split(|c: char| !c.is_ascii_alphanumeric()).any(|word| word == "S3")
}
