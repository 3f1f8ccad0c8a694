//! The catalogue as a page and as JSON.

use std::fmt::Write as _;

use serde::Serialize;

use super::instruments::showing;
use super::measured::{Case, Measured};
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::{Entry, Family, Scale};
use crate::measure::pattern::{Pattern, Point, STATES};
use crate::parts::Port;
use crate::senses::seen::Display;
use crate::units::{M3_S_PER_CFH, hundredths_inwc};

/// Head of the page.
const HEAD: &str = "# Faults

This page is made by `quarterturn faults --write docs`; a test keeps it fresh.

A fault is a change to the model: a spring, a seat, a pipe, an orifice, a meter's zero. What is read
and seen follows from the model. A scenario puts faults in with its list `faults`, each by its name,
with a severity within its range or without one for the typical severity; `Between(low, high)` draws
the severity for each seat, `OneOf([…])` the fault.

Each entry names what helps: a repair (`mend clean-flame-rod` in a script), a screw, something that
every job has hands for, the call to the owner, or shutting off and tagging. Several remedies serve
each by itself, or in the order given. It also names what tempts and harms, and what that leads to.

\"A look shows\" tells what a person sees or smells who looks at everything there is to look at, at
rest and on a call, and what differs from the healthy bench; it is found by really looking at a
bench with the fault. \"Shown by\" names the instruments that read something else than on the healthy
bench, with the states in which the manometer does, from 0.1 in. w.c. on. A fault that a look shows
may be found before any meter is out: a job that is to be solved by readings needs one that no look
shows. What is heard and what the control does stands behind the fuel's name.

The tables hold a healthy bench against one with the fault at its typical severity. Each cell gives
the inlet pressure, the manifold pressure, and the heat input against the plate's high input. The
benches are the healthy ones that come with the program: an 80,000 Btu/h two-stage furnace beside a
water heater and a range of 100,000 Btu/h together. Pressures are in inches of water column, as a
correct meter shows them; for faults of the manometer its own display is given too. \"At rest again\"
is four minutes after the end of the call. A star marks a stage that the burners did not come to.

The numbers come out of the model and belong to these benches. They are for practice: on real gas
the appliance's plate and instructions, the local code and a licensed technician decide.
";

/// What cannot be put into a setup, and why.
const LEFT_OUT: &str = "
## Not in the catalogue

- Hose on the wrong port: something a person does. The bench lets it happen, and the written
  reading shows it.
- Reading one leg of a U-tube, or at a slant: something a person does. The water column shows both
  legs, and a number written from one of them is found; a slanting look is not modelled.
- A thermostat timer set wrong: the bench's thermostat has no timer; a second stage that
  is never called is modelled.
- Carbon monoxide at the registers from a holed exchanger: the exchanger of this
  furnace is under suction, so that house air goes in and no flue gas comes out. The flue's carbon
  monoxide, the flames that change when the blower starts, and the roll-out are modelled.
- Regulators that hunt because of a torn diaphragm or a vent limiter: the
  model's regulators have no mass. The hunting of a worn guide is modelled as a self-excited swing.
";

/// The whole page.
pub(super) fn page(all: &[Measured]) -> String {
    let mut text = HEAD.to_owned();
    for family in Family::ALL {
        let label = family.label();
        let (first, rest) = label.split_at(1);
        let _ = writeln!(text, "\n## {}{rest}", first.to_uppercase());
        for it in all.iter().filter(|it| it.fault.entry().family == family) {
            text.push('\n');
            text.push_str(&entry(it));
        }
    }
    text.push_str(LEFT_OUT);
    text
}

/// One fault.
pub(super) fn entry(it: &Measured) -> String {
    let entry = it.fault.entry();
    let mut text = format!("### {}\n\n{}\n\n", entry.name, entry.cause);
    let _ = writeln!(text, "- severity: {}", severity(entry));
    let right: Vec<String> = entry.right.iter().map(|remedy| remedy.label()).collect();
    let _ = writeln!(text, "- remedy: {}", right.join("; "));
    for wrong in entry.wrong {
        let _ = writeln!(text, "- wrong: {}. {}", wrong.remedy.label(), wrong.danger);
    }
    for case in &it.cases {
        let signs = signs(case);
        if !signs.is_empty() {
            let _ = writeln!(text, "- on {}: {}", case.fuel.label(), signs.join("; "));
        }
    }
    text.push_str(&alike_on_fuels(it, "a look shows", "nothing", |case| {
        case.looks
            .iter()
            .map(|it| format!("{}: “{}”", it.at, it.words.trim_end_matches('.')))
            .collect()
    }));
    text.push_str(&alike_on_fuels(it, "shown by", "no instrument here", showing));
    let _ = writeln!(text, "\n| | {} |", STATES.join(" | "));
    text.push_str("|---|---|---|---|---|---|\n");
    for case in &it.cases {
        let fuel = case.fuel.label();
        let _ = writeln!(text, "| {fuel}, healthy | {} |", cells(&case.healthy));
        let shown = entry.severity.show(case.severity);
        let with = if shown.is_empty() { "with the fault".to_owned() } else { shown };
        let _ = writeln!(text, "| {fuel}, {with} | {} |", cells(&case.faulty));
        if let Some([inlet, manifold]) = &case.shown {
            let _ = writeln!(text, "| {fuel}, meter on the inlet port | {} |", displays(inlet));
            let _ =
                writeln!(text, "| {fuel}, meter on the manifold port | {} |", displays(manifold));
        }
    }
    text
}

/// A line for both fuels where they agree, else one for each.
fn alike_on_fuels(
    it: &Measured,
    what: &str,
    none: &str,
    of: impl Fn(&Case) -> Vec<String>,
) -> String {
    let words = |case: &Case| match of(case) {
        words if words.is_empty() => none.to_owned(),
        words => words.join("; "),
    };
    let all: Vec<_> = it.cases.iter().map(|case| (case.fuel.label(), words(case))).collect();
    let mut text = String::new();
    match all.as_slice() {
        [(_, first), rest @ ..] if rest.iter().all(|(_, words)| words == first) => {
            let _ = writeln!(text, "- {what}: {first}");
        }
        cases => {
            for (fuel, words) in cases {
                let _ = writeln!(text, "- {what}, on {fuel}: {words}");
            }
        }
    }
    text
}

fn severity(entry: &Entry) -> String {
    let it = &entry.severity;
    if it.scale == Scale::Plain {
        return "none; it is there or not".to_owned();
    }
    let [natural, propane] = it.typical;
    let typical = if natural == propane {
        natural.to_owned()
    } else {
        format!("{natural}, on propane {propane}")
    };
    let what = it.words();
    format!("{what}, {} to {}, typical {typical}", it.low, it.high)
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
        let _ = write!(text, " / {:.0} %", 100.0 * truth.input_w / point.rated_w);
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
            Display::Dark => "dark".to_owned(),
            Display::OverRange => "over range".to_owned(),
            Display::Number(number) => format!("{number}"),
        })
        .collect();
    words.join(" | ")
}

/// What is seen, heard, smelt or measured beside the pressures.
fn signs(case: &Case) -> Vec<String> {
    let mut signs = counted(&case.faulty);
    let pairs = || case.healthy.points.iter().zip(&case.faulty.points).skip(1).take(3);
    let firing = || pairs().filter(|(_, faulty)| faulty.truth.input_w > 0.0);
    let mut compare =
        |what: &str, unit: &str, digits: usize, of: &dyn Fn(&Point) -> f64, by: f64| {
            let worst = firing()
                .map(|(healthy, faulty)| (of(healthy), of(faulty)))
                .max_by(|a, b| (a.1 - a.0).abs().total_cmp(&(b.1 - b.0).abs()));
            if let Some((was, is)) = worst.filter(|(was, is)| (is - was).abs() > by) {
                signs.push(format!("{what} {is:.digits$}{unit} instead of {was:.digits$}{unit}"));
            }
        };
    compare("flame current", " µA", 1, &|it| it.truth.flame_ua, 0.3);
    compare("excess air", " %", 0, &|it| 100.0 * it.truth.excess_air.unwrap_or(0.0), 7.0);
    compare("carbon monoxide", " ppm air-free", 0, &|it| it.truth.co_air_free_ppm, 25.0);
    compare("temperature rise", " °F", 0, &|it| 1.8 * it.truth.rise_k, 6.0);
    compare("draft at the switches", " in. w.c.", 2, &|it| hundredths_inwc(it.truth.draft_pa), 0.1);
    compare("gas to the burners", " ft³/h", 0, &|it| it.truth.burner_flow_m3_s / M3_S_PER_CFH, 4.0);
    compare("inlet swings by", " in. w.c.", 2, &|it| swing(it, Port::Inlet), 0.02);
    compare("manifold swings by", " in. w.c.", 2, &|it| swing(it, Port::Manifold), 0.02);
    signs.extend(escapes(case));
    signs
}

fn swing(point: &Point, port: Port) -> f64 {
    let (low, high) = point.swing_pa[port];
    hundredths_inwc(high - low)
}

/// What happened on the way.
fn counted(pattern: &Pattern) -> Vec<String> {
    let signs = &pattern.signs;
    let times = |count: u32, what: &str| match count {
        0 => None,
        1 => Some(what.to_owned()),
        more => Some(format!("{what} ({more} times)")),
    };
    let mut words: Vec<String> = [
        times(signs.retries, "another try"),
        times(signs.lockouts, "lockout"),
        times(signs.limits, "limit opens"),
        times(signs.rollouts, "roll-out switch opens"),
        times(signs.high_given_up, "high pressure switch awaited in vain"),
    ]
    .into_iter()
    .flatten()
    .collect();
    for (so, what) in [
        (signs.banged, "a hard, late light"),
        (signs.over_pressure, "more pressure than the gas valve may see"),
        (signs.ignited, "escaping gas takes fire"),
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
        words.push(format!("{leak:.2} ft³/h leak at a port"));
    }
    let vented = most(&|it| it.truth.vented_m3_s) / M3_S_PER_CFH;
    if vented > 0.01 {
        words.push(format!("{vented:.2} ft³/h come out of the supply regulator"));
    }
    let vestibule = most(&|it| it.truth.gas_fraction.vestibule) / case.setup.gas.lower_limit;
    if vestibule > 0.002 {
        words.push(format!(
            "up to {:.1} % of the lower flammable limit around the burners",
            100.0 * vestibule
        ));
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
    low: &'static str,
    high: &'static str,
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
    stage: &'static str,
    reached: bool,
    inlet_inwc: f64,
    manifold_inwc: f64,
    percent: f64,
}

/// One fault for programs.
pub(super) fn report(it: &Measured) -> Report {
    let entry = it.fault.entry();
    let [typical, typical_on_propane] = entry.severity.typical;
    let (what, low, high) = (entry.severity.what, entry.severity.low, entry.severity.high);
    Report {
        name: entry.name,
        number: entry.number,
        family: entry.family.label(),
        cause: entry.cause,
        severity: (entry.severity.scale != Scale::Plain).then_some(SeverityReport {
            what,
            low,
            high,
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
    let points = STATES.into_iter().zip(&pattern.points);
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
