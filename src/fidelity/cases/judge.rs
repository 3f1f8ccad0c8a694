//! From rows to checks: one for each kind of figure in a group of steady cases, one for each
//! transient.

use super::super::check::{Check, Row, Tolerance, Truth, Verdict};
use super::model::{Case, CaseFile, Group, Task};
use super::problem::CaseProblem;
use super::solve::{self, Kind};

const NETWORKS: &str = "The gas network against independent solvers";
const LINES: &str = "Single lines against other programs";
const TRANSIENTS: &str = "Pressures over time against a stiff integrator";
const PROPERTIES: &str = "Gases and burning against property libraries";

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
    let standard = Standard::of(kind);
    let own_band = group.band.filter(|_| kind != Kind::Flow || !has_pressures(case));
    let reason = match (own_band, &group.reason) {
        (Some(_), Some(reason)) => reason.clone(),
        _ => standard.reason.to_owned(),
    };
    Check {
        id,
        chapter: standard.chapter,
        claim: group.claim.clone().unwrap_or_else(|| standard.claim.to_owned()),
        truth: file.truth,
        source: group.source.clone().unwrap_or_else(|| file.source.clone()),
        condition: group.condition.clone().unwrap_or_else(|| file.title.clone()),
        tolerance: own_band.unwrap_or(standard.band),
        reason,
        unit: standard.unit,
        rows: vec![row],
        known_miss: group.known_miss.clone(),
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
struct Standard {
    chapter: &'static str,
    claim: &'static str,
    band: Tolerance,
    reason: &'static str,
    unit: &'static str,
}

impl Standard {
    fn of(kind: Kind) -> Self {
        match kind {
            Kind::Pressure => Self {
                chapter: NETWORKS,
                claim: "Steady pressures at the nodes of a network agree with the reference.",
                band: Tolerance::Absolute(0.02),
                reason: "A fifth of the least step that a gas manometer shows.",
                unit: "in. w.c.",
            },
            Kind::Flow => Self {
                chapter: NETWORKS,
                claim: "Steady flows through the elements of a network agree with the reference.",
                band: Tolerance::Either { absolute: 0.02, relative: 0.005 },
                reason: "What 0.02 in. w.c. moves an orifice at 2 to 3.5 in. w.c.; a flow near \
                         nothing is held to 0.02 ft³/h.",
                unit: "ft³/h",
            },
            Kind::LineFlow => Self {
                chapter: LINES,
                claim: "The flow through one element between two pressures agrees with the \
                        reference.",
                band: Tolerance::Relative(-0.005, 0.005),
                reason: "Same equation: only rounding and the tabulated curve may differ.",
                unit: "ft³/h",
            },
            Kind::LineDrop => Self {
                chapter: LINES,
                claim: "The drop along one element at a given flow agrees with the reference.",
                band: Tolerance::Either { absolute: 0.002, relative: 0.005 },
                reason: "Same equation: only rounding and the tabulated curve may differ.",
                unit: "in. w.c.",
            },
            Kind::Span => Self {
                chapter: TRANSIENTS,
                claim: "A pressure over time follows the reference.",
                band: Tolerance::Absolute(1.0),
                reason: "1 % of the span that the pressure goes through: the first-order method \
                         with 20 ms steps trails a fast change by up to half a step.",
                unit: "% of span",
            },
            Kind::Property(unit) => Self {
                chapter: PROPERTIES,
                claim: "A property of the gas or of what it burns to agrees with the reference.",
                band: Tolerance::Relative(-0.01, 0.01),
                reason: "The model works with the trade's rounded figures.",
                unit,
            },
        }
    }
}

/// A kept file that cannot be read is a check that fails.
pub(super) fn unread(name: &str, problem: &CaseProblem) -> Check {
    Check {
        id: format!("{name}.unread"),
        chapter: NETWORKS,
        claim: "The reference cases kept with the program can be read.".to_owned(),
        truth: Truth::Solver,
        source: format!("tests/reference/{name}.json"),
        condition: problem.to_string(),
        tolerance: Tolerance::Absolute(0.0),
        reason: "There is nothing to compare.".to_owned(),
        unit: "1",
        rows: Vec::new(),
        known_miss: None,
    }
}
