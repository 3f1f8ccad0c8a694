//! The catalogue as a page and as JSON.

use std::fmt::Write as _;

use serde::Serialize;

use super::instruments::showing;
use super::looks::Sight;
use super::measured::{Case, Measured};
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::{Entry, Family, Scale};
use crate::measure::pattern::{Pattern, Point};
use crate::parts::Port;
use crate::senses::seen::Display;
use crate::units::{M3_S_PER_CFH, hundredths_inwc};
use crate::words::{Id, decimal};

/// The page `docs/faults.md`: every fault under the heading of its family.
pub(super) fn page(all: &[Measured]) -> String {
    let mut text = format!("{}\n", t!("faults-page"));
    for family in Family::ALL {
        let label = family.label();
        let (first, rest) = label.split_at(1);
        let _ = writeln!(text, "\n## {}{rest}", first.to_uppercase());
        for it in all.iter().filter(|it| it.fault.entry().family == family) {
            text.push('\n');
            text.push_str(&entry(it));
        }
    }
    let _ = writeln!(text, "\n{}", t!("faults-left-out"));
    text
}

/// A fault's section: cause, severity, remedies, signs and its table of measured states.
pub(super) fn entry(it: &Measured) -> String {
    let entry = it.fault.entry();
    let mut text = format!("### {}\n\n{}\n\n", entry.name, entry.cause);
    let _ = writeln!(text, "- {}", t!("fault-severity", severity = severity(entry)));
    let right: Vec<String> = entry.right.iter().map(|remedy| remedy.label()).collect();
    let _ = writeln!(text, "- {}", t!("fault-remedy", remedies = right.join("; ")));
    for wrong in entry.wrong {
        let wrong = t!("fault-wrong", remedy = wrong.remedy.label(), danger = wrong.danger);
        let _ = writeln!(text, "- {wrong}");
    }
    for case in &it.cases {
        let signs = signs(case);
        if !signs.is_empty() {
            let (fuel, signs) = (case.fuel.label(), signs.join("; "));
            let _ = writeln!(text, "- {}", t!("fault-signs", fuel = fuel, signs = signs));
        }
    }
    let sights = |case: &Case| -> Vec<String> {
        let sight =
            |it: &Sight| t!("fault-sight", at = &it.at, seen = it.words.trim_end_matches('.'));
        case.looks.iter().map(sight).collect()
    };
    text.push_str(&alike_on_fuels(it, &LOOKS, sights));
    text.push_str(&alike_on_fuels(it, &INSTRUMENTS, showing));
    let states = it.cases.first().map(|case| case.healthy.states()).unwrap_or_default();
    let _ = writeln!(text, "\n| | {} |", states.join(" | "));
    let _ = writeln!(text, "|{}", "---|".repeat(states.len() + 1));
    for case in &it.cases {
        let fuel = case.fuel.label();
        let healthy = t!("fault-row-healthy", fuel = fuel);
        let _ = writeln!(text, "| {healthy} | {} |", cells(&case.healthy));
        let shown = entry.severity.show(case.severity);
        let with = match shown.is_empty() {
            true => t!("fault-row-with", fuel = fuel),
            false => t!("fault-row-severity", fuel = fuel, severity = shown),
        };
        let _ = writeln!(text, "| {with} | {} |", cells(&case.faulty));
        if let Some([inlet, manifold]) = &case.shown {
            let at = t!("fault-row-inlet", fuel = fuel);
            let _ = writeln!(text, "| {at} | {} |", displays(inlet));
            let at = t!("fault-row-manifold", fuel = fuel);
            let _ = writeln!(text, "| {at} | {} |", displays(manifold));
        }
    }
    text
}

/// A line that tells what shows a fault.
struct Shows {
    /// On both fuels the same.
    line: fn(String) -> String,
    /// Each on its own fuel.
    on_fuel: fn(&str, String) -> String,
    /// Where there is nothing to tell.
    none: Id,
}

const LOOKS: Shows = Shows {
    line: |seen| t!("fault-looks", seen = seen),
    on_fuel: |fuel, seen| t!("fault-looks-on-fuel", fuel = fuel, seen = seen),
    none: id!("fault-looks-none"),
};
const INSTRUMENTS: Shows = Shows {
    line: |tools| t!("fault-shown-by", tools = tools),
    on_fuel: |fuel, tools| t!("fault-shown-by-on-fuel", fuel = fuel, tools = tools),
    none: id!("fault-shown-by-none"),
};

/// A line for both fuels where they agree, else one for each.
fn alike_on_fuels(it: &Measured, shows: &Shows, of: impl Fn(&Case) -> Vec<String>) -> String {
    let words = |case: &Case| match of(case) {
        words if words.is_empty() => shows.none.text().to_owned(),
        words => words.join("; "),
    };
    let all: Vec<_> = it.cases.iter().map(|case| (case.fuel.label(), words(case))).collect();
    let mut text = String::new();
    match all.as_slice() {
        [(_, first), rest @ ..] if rest.iter().all(|(_, words)| words == first) => {
            let _ = writeln!(text, "- {}", (shows.line)(first.clone()));
        }
        cases => {
            for (fuel, words) in cases {
                let _ = writeln!(text, "- {}", (shows.on_fuel)(fuel, words.clone()));
            }
        }
    }
    text
}

fn severity(entry: &Entry) -> String {
    let it = &entry.severity;
    if it.scale == Scale::Plain {
        return t!("fault-severity-none").to_owned();
    }
    let [natural, propane] = it.typical;
    let typical = if natural == propane {
        natural.to_owned()
    } else {
        t!("fault-typical-both", natural = natural, propane = propane)
    };
    t!(
        "fault-severity-range",
        what = it.words(),
        lower = it.least,
        upper = it.most,
        typical = typical
    )
}

fn cells(pattern: &Pattern) -> String {
    let cells: Vec<_> = pattern.points.iter().map(cell).collect();
    cells.join(" | ")
}

fn cell(point: &Point) -> String {
    let truth = &point.truth;
    let [inlet, manifold] = [truth.inlet_pa, truth.manifold_pa].map(hundredths_inwc);
    let mut text = format!("{inlet:.2} / {manifold:.2}");
    if truth.input_w > 0.0 {
        let percent = decimal(100.0 * truth.input_w / point.rated_w, 0);
        let _ = write!(text, " / {}", t!("fault-percent", percent = percent));
    }
    if point.missed.is_some() {
        text.push('*');
    }
    text
}

fn displays(shown: &[Display]) -> String {
    let words: Vec<_> = shown
        .iter()
        .map(|display| match display {
            Display::Dark => t!("fault-display-dark").to_owned(),
            Display::OverRange => t!("fault-display-over").to_owned(),
            Display::Number(number) => format!("{number}"),
        })
        .collect();
    words.join(" | ")
}

/// What is seen, heard, smelt or measured beside the pressures.
fn signs(case: &Case) -> Vec<String> {
    let mut signs = counted(&case.faulty);
    let pairs = || case.healthy.points.iter().zip(&case.faulty.points);
    let burns = |point: &Point| point.truth.input_w > 0.0;
    let firing = || pairs().filter(|(healthy, faulty)| burns(healthy) && burns(faulty));
    let mut compare = |sign: Sign, of: &dyn Fn(&Point) -> f64| {
        let worst = firing()
            .map(|(healthy, faulty)| (of(healthy), of(faulty)))
            .max_by(|a, b| (a.1 - a.0).abs().total_cmp(&(b.1 - b.0).abs()));
        if let Some((was, is)) = worst.filter(|(was, is)| (is - was).abs() > sign.by) {
            signs.push((sign.words)(decimal(is, sign.digits), decimal(was, sign.digits)));
        }
    };
    compare(FLAME, &|it| it.truth.flame_ua);
    compare(AIR, &|it| 100.0 * it.truth.excess_air.unwrap_or(0.0));
    compare(CO, &|it| it.truth.co_air_free_ppm);
    compare(RISE, &|it| 1.8 * it.truth.rise_k);
    compare(DRAFT, &|it| hundredths_inwc(it.truth.draft_pa));
    compare(GAS, &|it| it.truth.burner_flow_m3_s / M3_S_PER_CFH);
    compare(INLET_SWING, &|it| swing(it, Port::Inlet));
    compare(MANIFOLD_SWING, &|it| swing(it, Port::Manifold));
    signs.extend(escapes(case));
    signs
}

/// A measured figure that a fault changes.
struct Sign {
    /// What it is now, and what it was.
    words: fn(String, String) -> String,
    digits: usize,
    /// What it must differ by to be told, in its unit.
    by: f64,
}

const FLAME: Sign =
    Sign { words: |is, was| t!("fault-flame-current", is = is, was = was), digits: 1, by: 0.3 };
const AIR: Sign =
    Sign { words: |is, was| t!("fault-excess-air", is = is, was = was), digits: 0, by: 7.0 };
const CO: Sign = Sign { words: |is, was| t!("fault-co", is = is, was = was), digits: 0, by: 25.0 };
const RISE: Sign =
    Sign { words: |is, was| t!("fault-rise", is = is, was = was), digits: 0, by: 6.0 };
const DRAFT: Sign =
    Sign { words: |is, was| t!("fault-draft", is = is, was = was), digits: 2, by: 0.1 };
const GAS: Sign =
    Sign { words: |is, was| t!("fault-gas-rate", is = is, was = was), digits: 0, by: 4.0 };
const INLET_SWING: Sign =
    Sign { words: |is, was| t!("fault-inlet-swing", is = is, was = was), digits: 2, by: 0.02 };
const MANIFOLD_SWING: Sign =
    Sign { words: |is, was| t!("fault-manifold-swing", is = is, was = was), digits: 2, by: 0.02 };

fn swing(point: &Point, port: Port) -> f64 {
    let (lower, upper) = point.swing_pa[port];
    hundredths_inwc(upper - lower)
}

/// What happened on the way.
fn counted(pattern: &Pattern) -> Vec<String> {
    let signs = &pattern.signs;
    let times = |count: u32, what: &str| match count {
        0 => None,
        1 => Some(what.to_owned()),
        more => Some(t!("fault-times", what = what, times = more)),
    };
    let mut words: Vec<String> = [
        times(signs.retries, t!("fault-retry")),
        times(signs.lockouts, t!("fault-lockout")),
        times(signs.limits, t!("fault-limit")),
        times(signs.rollouts, t!("fault-rollout")),
        times(signs.next_given_up, t!("fault-high-in-vain")),
    ]
    .into_iter()
    .flatten()
    .collect();
    for (so, what) in [
        (signs.banged, t!("fault-hard-light")),
        (signs.over_pressure, t!("fault-over-pressure")),
        (signs.ignited, t!("fault-ignited")),
    ] {
        if so {
            words.push(what.to_owned());
        }
    }
    words
}

/// Gas that comes out where it should not.
fn escapes(case: &Case) -> Vec<String> {
    let most = |of: &dyn Fn(&Point) -> f64| case.faulty.points.iter().map(of).fold(0.0, f64::max);
    let mut words = Vec::new();
    let leak = most(&|it| it.truth.leak_m3_s.iter().sum::<f64>()) / M3_S_PER_CFH;
    if leak > 0.01 {
        words.push(t!("fault-leak", flow = decimal(leak, 2)));
    }
    let vented = most(&|it| it.truth.vented_m3_s) / M3_S_PER_CFH;
    if vented > 0.01 {
        words.push(t!("fault-vented", flow = decimal(vented, 2)));
    }
    let vestibule = most(&|it| it.truth.gas_fraction.vestibule) / case.setup.gas.lower_limit;
    if vestibule > 0.002 {
        words.push(t!("fault-vestibule", percent = decimal(100.0 * vestibule, 1)));
    }
    words
}

/// An entry for programs; pressures in inches of water column.
#[derive(Debug, Serialize)]
pub(super) struct Report {
    name: &'static str,
    number: u8,
    family: &'static str,
    cause: &'static str,
    severity: Option<SeverityReport>,
    right: Vec<String>,
    wrong: Vec<WrongReport>,
    cases: Vec<CaseReport>,
}

#[derive(Debug, Serialize)]
struct WrongReport {
    remedy: String,
    danger: &'static str,
}

#[derive(Debug, Serialize)]
struct SeverityReport {
    what: &'static str,
    lower: &'static str,
    upper: &'static str,
    typical: &'static str,
    typical_on_propane: &'static str,
}

#[derive(Debug, Serialize)]
struct CaseReport {
    fuel: &'static str,
    severity: String,
    healthy: Vec<PointReport>,
    faulty: Vec<PointReport>,
    signs: Vec<String>,
    looks: Vec<[String; 2]>,
    instruments: Vec<String>,
}

#[derive(Debug, Serialize)]
struct PointReport {
    stage: String,
    reached: bool,
    inlet_inwc: f64,
    manifold_inwc: f64,
    percent: f64,
}

/// One fault for programs.
pub(super) fn report(it: &Measured) -> Report {
    let entry = it.fault.entry();
    let [typical, typical_on_propane] = entry.severity.typical;
    let (what, lower, upper) = (entry.severity.what, entry.severity.least, entry.severity.most);
    Report {
        name: entry.name,
        number: entry.number,
        family: entry.family.label(),
        cause: entry.cause,
        severity: (entry.severity.scale != Scale::Plain).then_some(SeverityReport {
            what,
            lower,
            upper,
            typical,
            typical_on_propane,
        }),
        right: entry.right.iter().map(|remedy| remedy.id()).collect(),
        wrong: entry
            .wrong
            .iter()
            .map(|wrong| WrongReport { remedy: wrong.remedy.id(), danger: wrong.danger })
            .collect(),
        cases: it.cases.iter().map(|case| case_report(entry, case)).collect(),
    }
}

fn case_report(entry: &Entry, case: &Case) -> CaseReport {
    CaseReport {
        fuel: match case.fuel {
            Fuel::Natural => "natural",
            Fuel::Propane => "propane",
        },
        severity: entry.severity.show(case.severity),
        healthy: points(&case.healthy),
        faulty: points(&case.faulty),
        signs: signs(case),
        looks: case.looks.iter().map(|it| [it.at.clone(), it.words.clone()]).collect(),
        instruments: showing(case),
    }
}

fn points(pattern: &Pattern) -> Vec<PointReport> {
    let points = pattern.states().into_iter().zip(&pattern.points);
    points
        .map(|(stage, point)| PointReport {
            stage,
            reached: point.missed.is_none(),
            inlet_inwc: hundredths_inwc(point.truth.inlet_pa),
            manifold_inwc: hundredths_inwc(point.truth.manifold_pa),
            percent: (1000.0 * point.truth.input_w / point.rated_w).round() / 10.0,
        })
        .collect()
}
