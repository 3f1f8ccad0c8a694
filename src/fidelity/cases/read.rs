//! From a file's text to [`CaseFile`]: the file, its groups and its cases.

use serde::Deserialize;
use serde::de::IgnoredAny;
use serde_json::value::RawValue;

use super::super::check::{Tolerance, Truth};
use super::figure::{Figure, Measure};
use super::model::{
    Ask, Case, CaseFile, Change, Expected, Group, Line, Net, Setting, Start, Task, Transient, What,
};
use super::network::{self, find_element, find_node};
use super::part::{self, MAX_FLOW_M3_S, MAX_PRESSURE_PA};
use super::place::{ByName, Name, Place, object};
use super::problem::{CaseFault, CaseProblem};
use super::property;
use crate::physics::fluid::Gas;
use crate::units::{P_STD_PA, T_STD_K, TICK_S};

use Measure::{Count, Plain, Pressure, Temperature, Time};

/// What stands under `format`.
pub const FORMAT: &str = "quarterturn-reference-cases";
/// The version of the layout that is read.
pub const VERSION: u32 = 1;
/// Largest text, in bytes.
const MAX_BYTES: usize = 4 << 20;
/// Most cases in one file.
const MAX_CASES: usize = 2_000;
/// Longest transient, in s.
const MAX_TIME_S: f64 = 3_600.0;
/// Most implicit steps times parts over all transients of a file.
const MAX_WORK: f64 = 2e7;

/// Format and version come first: nothing else in a newer file need be understood.
#[derive(Deserialize)]
struct FileHead {
    format: String,
    version: Figure,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct FileFields<'t> {
    title: Option<String>,
    source: Option<String>,
    #[serde(rename = "note")]
    _note: Option<String>,
    truth: Option<TruthWord>,
    #[serde(borrow, default)]
    groups: ByName<&'t RawValue>,
    #[serde(borrow)]
    defaults: Option<&'t RawValue>,
    #[serde(borrow)]
    cases: Vec<&'t RawValue>,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum TruthWord {
    Solver,
    Published,
    ClosedForm,
    Practice,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct GroupFields<'t> {
    claim: Option<String>,
    condition: Option<String>,
    source: Option<String>,
    reason: Option<String>,
    known_miss: Option<String>,
    #[serde(borrow)]
    band: Option<&'t RawValue>,
}

object! { Band(_setting)
    may { absolute: Plain, 0.0..=1e9; relative: Plain, 0.0..=1e9; }
}

/// Reads a whole file of cases; the first problem ends the reading.
pub(super) fn read(text: &str) -> Result<CaseFile, CaseProblem> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let file = Place::whole(text);
    if text.len() > MAX_BYTES {
        let message =
            t!("case-file-bytes-are-most", bytes = text.len(), max_bytes = MAX_BYTES.to_string());
        return Err(file.problem(CaseFault::TooLarge, message));
    }
    serde_json::from_str::<IgnoredAny>(text).map_err(|error| syntax(&error))?;
    let head: FileHead = file.read(&[])?;
    check_head(&file, &head)?;
    let own: FileFields<'_> = file.read(&["format", "version"])?;
    let mut setting = Setting { gas: Gas::natural(), ambient_pa: P_STD_PA, t_k: T_STD_K };
    let mut groups = Vec::new();
    for (name, _) in own.groups.0 {
        let place = file.field("groups").field(&name);
        groups.push(group(name, &place, &setting)?);
    }
    if own.defaults.is_some() {
        let place = file.field("defaults");
        setting = SettingFields::read(&place, &setting, &[])?.over(&place, setting)?;
    }
    let mut cases: Vec<Case> = Vec::new();
    let mut work = 0.0;
    for place in file.items("cases", &own.cases, MAX_CASES)? {
        let case = read_case(&place, setting, &mut groups)?;
        if cases.iter().any(|other| other.id == case.id) {
            let message = t!("case-two-cases-are-called", case = &case.id);
            return Err(place.problem(CaseFault::Name, message));
        }
        work += case_work(&case);
        if work > MAX_WORK {
            let message = t!("case-transients-up-here-take");
            return Err(place.problem(CaseFault::TooLarge, message));
        }
        cases.push(case);
    }
    if cases.is_empty() {
        let message = t!("case-there-case-list");
        return Err(file.field("cases").problem(CaseFault::Missing, message));
    }
    let truth = match own.truth {
        None | Some(TruthWord::Solver) => Truth::Solver,
        Some(TruthWord::Published) => Truth::Published,
        Some(TruthWord::ClosedForm) => Truth::ClosedForm,
        Some(TruthWord::Practice) => Truth::Practice,
    };
    let title = own.title.unwrap_or_else(|| t!("case-reference-cases").to_owned());
    let source = own.source.unwrap_or_else(|| t!("case-not-named").to_owned());
    Ok(CaseFile { title, source, truth, groups, cases })
}

fn syntax(error: &serde_json::Error) -> CaseProblem {
    let words = error.to_string();
    let words = words.split(" at line ").next().unwrap_or_default();
    CaseProblem {
        fault: CaseFault::Syntax,
        path: String::new(),
        line: error.line().max(1),
        column: error.column().max(1),
        message: t!("case-this-not-json", words = words),
    }
}

fn check_head(file: &Place<'_>, head: &FileHead) -> Result<(), CaseProblem> {
    if head.format != FORMAT {
        let message = t!("case-file-reference-cases-here", format = FORMAT);
        return Err(file.field("format").problem(CaseFault::NotCases, message));
    }
    let most = 0.0..=f64::from(u32::MAX);
    let version = file.si(("version", ""), &head.version, Count, most)?;
    let problem = |fault, message: String| Err(file.field("version").problem(fault, message));
    if version > f64::from(VERSION) {
        let message = t!(
            "case-version-newer-than-this",
            version = version.to_string(),
            known = VERSION.to_string()
        );
        return problem(CaseFault::Newer, message);
    }
    if version < 1.0 {
        return problem(CaseFault::OutOfRange, t!("case-versions-count-from-1").to_owned());
    }
    Ok(())
}

fn group(name: String, place: &Place<'_>, setting: &Setting) -> Result<Group, CaseProblem> {
    let own: GroupFields<'_> = place.read(&[])?;
    let missing = |message| Err(place.problem(CaseFault::Missing, message));
    let band = match own.band {
        None => None,
        Some(_) if own.reason.is_none() => return missing(t!("case-band-needs-its-reason")),
        Some(_) => {
            let band = Band::read(&place.field("band"), setting, &[])?;
            Some(match (band.absolute, band.relative) {
                (Some(absolute), None) => Tolerance::Absolute(absolute),
                (None, Some(relative)) => Tolerance::Relative(-relative, relative),
                (Some(absolute), Some(relative)) => Tolerance::Either { absolute, relative },
                (None, None) => return missing(t!("case-band-absolute-relative-both")),
            })
        }
    };
    let GroupFields { claim, condition, source, reason, known_miss, .. } = own;
    Ok(Group { name, claim, condition, source, reason, known_miss, band })
}

object! { SettingFields(_setting)
    may { ambient: Pressure, 5e4..=1.2e5; temperature: Temperature, 220.0..=350.0; }
    plain { #[serde(borrow)] gas: Option<&'t RawValue>; }
}

impl SettingFields<'_> {
    fn over(&self, place: &Place<'_>, base: Setting) -> Result<Setting, CaseProblem> {
        let gas = self.gas.map(|_| part::gas(&place.field("gas"), &base)).transpose()?;
        Ok(Setting {
            gas: gas.unwrap_or(base.gas),
            ambient_pa: self.ambient.unwrap_or(base.ambient_pa),
            t_k: self.temperature.unwrap_or(base.t_k),
        })
    }
}

/// What every case has beside its setting.
#[derive(Deserialize)]
struct CaseHead {
    id: Name,
    group: Option<Name>,
    #[serde(rename = "note")]
    _note: Option<String>,
    kind: KindWord,
}

const CASE: [&str; 7] = ["id", "group", "note", "kind", "gas", "ambient", "temperature"];

#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum KindWord {
    Network,
    Line,
    Transient,
    Property,
}

fn read_case(
    place: &Place<'_>,
    base: Setting,
    groups: &mut Vec<Group>,
) -> Result<Case, CaseProblem> {
    let CaseHead { id: Name(id), group, _note, kind } = place.read(&[])?;
    let name = group.map_or_else(|| id.clone(), |name| name.0);
    let group = groups.iter().position(|group| group.name == name).unwrap_or_else(|| {
        groups.push(Group { name, ..Group::default() });
        groups.len() - 1
    });
    let fields = place.only(&["gas", "ambient", "temperature"]);
    let setting = SettingFields::read(&fields, &base, &[])?.over(place, base)?;
    let task = match kind {
        KindWord::Network => network(place, &setting)?,
        KindWord::Line => Task::Line(line(place, &setting)?),
        KindWord::Transient => Task::Transient(transient(place, &setting)?),
        KindWord::Property => Task::Property(property::property(place, &setting, &CASE)?),
    };
    Ok(Case { id, group, setting, task })
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct NetworkFields<'t> {
    #[serde(borrow)]
    nodes: Vec<&'t RawValue>,
    #[serde(borrow)]
    elements: Vec<&'t RawValue>,
    #[serde(rename = "expect")]
    _expect: IgnoredAny,
}

fn network(place: &Place<'_>, setting: &Setting) -> Result<Task, CaseProblem> {
    let own: NetworkFields<'_> = place.read(&CASE)?;
    let net = network::net(place, setting, &own.nodes, &own.elements)?;
    let expect = network::expected(&place.field("expect"), &net, setting, &[])?;
    Ok(Task::Network { net, expect })
}

object! { LineFields(setting)
    must { inlet: Pressure, setting.lowest_pa()..=MAX_PRESSURE_PA; }
    may {
        outlet: Pressure, setting.lowest_pa()..=MAX_PRESSURE_PA;
        drop: Pressure, 0.0..=MAX_PRESSURE_PA;
        flow: setting.flow(), 1e-12..=MAX_FLOW_M3_S;
    }
    plain {
        #[serde(rename = "element")] _element: IgnoredAny;
        #[serde(rename = "expect")] _expect: IgnoredAny;
    }
}

object! { LineExpect(setting)
    may { flow: setting.flow(), 0.0..=MAX_FLOW_M3_S; drop: Pressure, 0.0..=MAX_PRESSURE_PA; }
}

fn line(place: &Place<'_>, setting: &Setting) -> Result<Line, CaseProblem> {
    let own = LineFields::read(place, setting, &CASE)?;
    let part = part::part(&place.field("element"), setting, &[])?;
    let expect = place.field("expect");
    let wanted = LineExpect::read(&expect, setting, &[])?;
    let inlet_pa = own.inlet;
    if own.outlet.is_some() && own.drop.is_some() {
        let message = t!("case-outlet-drop-are-both");
        return Err(place.problem(CaseFault::Contradiction, message));
    }
    let outlet = own.outlet.or(own.drop.map(|drop| inlet_pa - drop));
    let ask = match (outlet, own.flow, wanted.flow, wanted.drop) {
        (Some(outlet_pa), None, Some(flow_m3_s), None) => Ask::Flow { outlet_pa, flow_m3_s },
        (None, Some(flow_m3_s), None, Some(drop_pa)) => Ask::Drop { flow_m3_s, drop_pa },
        _ => {
            let message = t!("case-line-outlet-drop-expects");
            return Err(expect.problem(CaseFault::Contradiction, message));
        }
    };
    Ok(Line { part, inlet_pa, ask })
}

object! { TransientFields(_setting)
    may { step: Time, 1e-4..=60.0; }
    plain {
        #[serde(borrow)] nodes: Vec<&'t RawValue>;
        #[serde(borrow)] elements: Vec<&'t RawValue>;
        start: Option<StartWord>;
        #[serde(borrow, default)] changes: Vec<&'t RawValue>;
        #[serde(borrow)] expect: Vec<&'t RawValue>;
    }
}

#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum StartWord {
    AsGiven,
    Settled,
}

fn transient(place: &Place<'_>, setting: &Setting) -> Result<Transient, CaseProblem> {
    let own = TransientFields::read(place, setting, &CASE)?;
    let net = network::net(place, setting, &own.nodes, &own.elements)?;
    let start = match own.start {
        None | Some(StartWord::AsGiven) => Start::AsGiven,
        Some(StartWord::Settled) => Start::Settled,
    };
    let mut changes = Vec::new();
    for place in place.items("changes", &own.changes, 200)? {
        changes.push(change(&place, &net, setting)?);
    }
    changes.sort_by(|a, b| a.at_s.total_cmp(&b.at_s));
    let mut expect: Vec<Expected> = Vec::new();
    for place in place.items("expect", &own.expect, 500)? {
        let at_s = moment(&place, setting)?;
        let now = Expected { at_s, ..network::expected(&place, &net, setting, &["at"])? };
        if expect.last().is_some_and(|last| last.at_s >= at_s) {
            return Err(place.problem(CaseFault::Contradiction, t!("case-times-must-rise")));
        }
        expect.push(now);
    }
    if expect.is_empty() {
        return Err(place.field("expect").problem(CaseFault::Missing, t!("case-nothing-expected")));
    }
    Ok(Transient { net, step_s: own.step, start, changes, expect })
}

// When something changes or is expected.
object! { Moment(_setting)
    must { at: Time, 0.0..=MAX_TIME_S; }
}

fn moment(place: &Place<'_>, setting: &Setting) -> Result<f64, CaseProblem> {
    Ok(Moment::read(&place.only(&["at"]), setting, &[])?.at)
}

#[derive(Deserialize)]
struct ChangeHead {
    node: Option<String>,
    element: Option<String>,
}

object! { PressureChange(setting)
    must { pressure: Pressure, setting.lowest_pa()..=MAX_PRESSURE_PA; }
}

object! { DemandChange(setting)
    must { demand: setting.flow(), -MAX_FLOW_M3_S..=MAX_FLOW_M3_S; }
}

fn change(place: &Place<'_>, net: &Net, setting: &Setting) -> Result<Change, CaseProblem> {
    let head: ChangeHead = place.read(&[])?;
    let at_s = moment(place, setting)?;
    let passed = &["at", "node", "element"];
    let what = match (head.node, head.element) {
        (Some(name), None) => {
            let node = find_node(net, &name, || place.field("node"))?;
            if net.nodes.get(node).is_some_and(|node| node.volume_m3.is_none()) {
                let own = PressureChange::read(place, setting, passed)?;
                What::Pressure(node, own.pressure)
            } else {
                let own = DemandChange::read(place, setting, passed)?;
                What::Demand(node, own.demand)
            }
        }
        (None, Some(name)) => {
            let index = find_element(net, &name, || place.field("element"))?;
            part::change_of(place, setting, (&net.elements[index].part, index), passed)?
        }
        (None, None) => {
            return Err(place.problem(CaseFault::Missing, t!("case-node-element-missing")));
        }
        (Some(_), Some(_)) => {
            let message = t!("case-change-node-element-not");
            return Err(place.problem(CaseFault::Contradiction, message));
        }
    };
    Ok(Change { at_s, what })
}

fn case_work(case: &Case) -> f64 {
    let Task::Transient(transient) = &case.task else { return 0.0 };
    let steps =
        transient.expect.last().map_or(0.0, |last| last.at_s / transient.step_s.unwrap_or(TICK_S));
    steps * (transient.net.nodes.len() + transient.net.elements.len()) as f64
}
