//! From rows to checks: one for each kind of figure in a group of steady cases, one for each
//! transient.

use super::super::check::{Check, Row, Verdict};
use super::super::claims;
use super::model::{Case, CaseFile, Group, Task};
use super::problem::CaseProblem;
use super::solve::{self, Kind};

/// Runs all cases of a file; `prefix` begins the ids.
pub(super) fn checks(file: &CaseFile, prefix: &str) -> Vec<Check> {
    let mut checks: Vec<Check> = Vec::new();
    for case in &file.cases {
        let group = &file.groups[case.group];
        for (kind, row) in solve::rows(case) {
            let id = check_id(prefix, group, case, kind);
            if let Some(check) = checks.iter_mut().find(|check| check.id == id) {
                check.rows.push(row);
            } else {
                checks.push(new_check(file, group, case, kind, id, row));
            }
        }
    }
    // A miss is known of the checks of a group that do miss.
    for check in checks.iter_mut().filter(|check| check.verdict() == Verdict::Pass) {
        check.known_miss = None;
    }
    checks
}

fn check_id(prefix: &str, group: &Group, case: &Case, kind: Kind) -> String {
    let single = matches!(case.task, Task::Transient(_)) && case.id != group.name;
    let mut id = format!("{prefix}.{}", group.name);
    if single {
        id = format!("{id}.{}", case.id);
    }
    let ending = match kind {
        Kind::Pressure => ".pressure",
        Kind::Flow | Kind::LineFlow => ".flow",
        Kind::LineDrop => ".drop",
        Kind::Span | Kind::Property(_) => "",
    };
    id + ending
}

fn new_check(
    file: &CaseFile,
    group: &Group,
    case: &Case,
    kind: Kind,
    id: String,
    row: Row,
) -> Check {
    let standard = standard(kind);
    let own_band = group.band.filter(|_| kind != Kind::Flow || !has_pressures(case));
    let reason = match (own_band, &group.reason) {
        (Some(_), Some(reason)) => reason.clone(),
        _ => standard.reason,
    };
    Check {
        id,
        claim: group.claim.clone().unwrap_or(standard.claim),
        truth: file.truth,
        source: group.source.clone().unwrap_or_else(|| file.source.clone()),
        condition: group.condition.clone().unwrap_or_else(|| file.title.clone()),
        tolerance: own_band.unwrap_or(standard.tolerance),
        reason,
        rows: vec![row],
        known_miss: group.known_miss.clone(),
        ..standard
    }
}

/// Whether a group's band is for pressures, so that flows keep the standard one.
fn has_pressures(case: &Case) -> bool {
    match &case.task {
        Task::Network { expect, .. } => !expect.pressures_pa.is_empty(),
        Task::Transient(_) => true,
        Task::Line(_) | Task::Property(_) => false,
    }
}

/// What holds where a file says nothing else.
fn standard(kind: Kind) -> Check {
    let check = |id: &str| claims::check(id, Vec::new());
    match kind {
        Kind::Pressure => check("cases.pressure"),
        Kind::Flow => check("cases.flow"),
        Kind::LineFlow => check("cases.line-flow"),
        Kind::LineDrop => check("cases.line-drop"),
        Kind::Span => check("cases.span"),
        Kind::Property(unit) => Check { unit, ..check("cases.property") },
    }
}

/// A kept file that cannot be read is a check that fails.
pub(super) fn unread(name: &str, problem: &CaseProblem) -> Check {
    Check {
        id: format!("{name}.unread"),
        source: format!("tests/reference/{name}.json"),
        condition: problem.to_string(),
        ..claims::check("cases.unread", Vec::new())
    }
}
