//! From JSON to [`CaseFile`]: the file, its groups and its cases.

use super::super::check::{Tolerance, Truth};
use super::json;
use super::model::{
    Ask, Case, CaseFile, Change, Expected, Group, Line, Net, Setting, Start, Task, Transient, What,
};
use super::problem::{CaseFault, CaseProblem};
use super::read_element::{self as element, MAX_FLOW_M3_S, MAX_PRESSURE_PA};
use super::read_property;
use super::reader::{Fields, Measure, Spot};
use crate::physics::fluid::Gas;
use crate::units::{P_STD_PA, T_STD_K, TICK_S};

/// What stands under `format`.
pub const FORMAT: &str = "quarterturn-reference-cases";
/// The version of the layout that is read.
pub const VERSION: u32 = 1;
/// Most cases in one file.
const MAX_CASES: usize = 2_000;
/// Longest transient, in s.
const MAX_TIME_S: f64 = 3_600.0;
/// Most implicit steps times parts over all transients of a file.
const MAX_WORK: f64 = 2e7;

/// Reads a file.
pub(super) fn read(text: &str) -> Result<CaseFile, CaseProblem> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let root = json::parse(text)?;
    let spot = Spot { text, path: String::new(), value: &root };
    let mut fields = spot.map()?;
    check_head(&mut fields)?;
    let title = fields.opt_text("title")?.unwrap_or_else(|| "Reference cases".to_owned());
    let source = fields.opt_text("source")?.unwrap_or_else(|| "not named".to_owned());
    let truth = match fields.opt("truth") {
        None => Truth::Solver,
        Some(spot) => match spot.word(&["solver", "published", "closed-form", "practice"])? {
            1 => Truth::Published,
            2 => Truth::ClosedForm,
            3 => Truth::Practice,
            _ => Truth::Solver,
        },
    };
    fields.opt_text("note")?;
    let mut groups = match fields.opt("groups") {
        None => Vec::new(),
        Some(spot) => spot.map()?.all().into_iter().map(group).collect::<Result<Vec<_>, _>>()?,
    };
    let standard = Setting { gas: Gas::natural(), ambient_pa: P_STD_PA, t_k: T_STD_K };
    let setting = match fields.opt("defaults") {
        None => standard,
        Some(spot) => {
            let mut own = spot.map()?;
            let setting = read_setting(&mut own, standard)?;
            own.finish()?;
            setting
        }
    };
    let list = fields.need("cases")?;
    fields.finish()?;
    let mut cases: Vec<Case> = Vec::new();
    let mut work = 0.0;
    for spot in list.list(MAX_CASES)? {
        let case = read_case(&spot, setting, &mut groups)?;
        if cases.iter().any(|other| other.id == case.id) {
            let message = format!("two cases are called `{}`", case.id);
            return Err(spot.problem(CaseFault::Name, message));
        }
        work += case_work(&case);
        if work > MAX_WORK {
            let message = "the transients up to here take more steps than a file may ask for";
            return Err(spot.problem(CaseFault::TooLarge, message));
        }
        cases.push(case);
    }
    if cases.is_empty() {
        return Err(list.problem(CaseFault::Missing, "there is no case in the list"));
    }
    Ok(CaseFile { title, source, truth, groups, cases })
}

/// Format and version come first: nothing else in a newer file need be understood.
fn check_head(fields: &mut Fields<'_>) -> Result<(), CaseProblem> {
    let format = fields.need("format")?;
    if format.text_up_to(200)? != FORMAT {
        let message = format!("a file of reference cases has `{FORMAT}` here");
        return Err(format.problem(CaseFault::NotCases, message));
    }
    let spot = fields.need("version")?;
    let version = spot.whole(u32::MAX)?;
    if version > VERSION {
        let message =
            format!("version {version} is newer than this program, which reads {VERSION}");
        return Err(spot.problem(CaseFault::Newer, message));
    }
    if version == 0 {
        return Err(spot.problem(CaseFault::OutOfRange, "versions count from 1"));
    }
    Ok(())
}

fn group((name, spot): (&str, Spot<'_>)) -> Result<Group, CaseProblem> {
    let mut fields = spot.map()?;
    let group = Group {
        name: name.to_owned(),
        claim: fields.opt_text("claim")?,
        condition: fields.opt_text("condition")?,
        source: fields.opt_text("source")?,
        reason: fields.opt_text("reason")?,
        known_miss: fields.opt_text("known_miss")?,
        band: fields.opt("band").map(|spot| band(&spot)).transpose()?,
    };
    fields.finish()?;
    if group.band.is_some() && group.reason.is_none() {
        return Err(fields.spot.problem(CaseFault::Missing, "a band needs its `reason`"));
    }
    Ok(group)
}

fn band(spot: &Spot<'_>) -> Result<Tolerance, CaseProblem> {
    let mut fields = spot.map()?;
    let mut part = |name: &str| fields.opt(name).map(|s| s.number(0.0, 1e9)).transpose();
    let (absolute, relative) = (part("absolute")?, part("relative")?);
    fields.finish()?;
    match (absolute, relative) {
        (Some(absolute), None) => Ok(Tolerance::Absolute(absolute)),
        (None, Some(relative)) => Ok(Tolerance::Relative(-relative, relative)),
        (Some(absolute), Some(relative)) => Ok(Tolerance::Either { absolute, relative }),
        (None, None) => Err(fields.missing("absolute")),
    }
}

fn read_setting(fields: &mut Fields<'_>, base: Setting) -> Result<Setting, CaseProblem> {
    let gas = fields.opt("gas").map(|spot| element::gas(&spot)).transpose()?;
    let ambient = fields.opt_measured("ambient", Measure::Pressure, 5e4, 1.2e5)?;
    let t_k = fields.opt_measured("temperature", Measure::Temperature, 220.0, 350.0)?;
    Ok(Setting {
        gas: gas.unwrap_or(base.gas),
        ambient_pa: ambient.unwrap_or(base.ambient_pa),
        t_k: t_k.unwrap_or(base.t_k),
    })
}

fn read_case(spot: &Spot<'_>, base: Setting, groups: &mut Vec<Group>) -> Result<Case, CaseProblem> {
    let mut fields = spot.map()?;
    let id = fields.need("id")?.name()?.to_owned();
    let name = match fields.opt("group") {
        Some(spot) => spot.name()?.to_owned(),
        None => id.clone(),
    };
    let group = groups.iter().position(|group| group.name == name).unwrap_or_else(|| {
        groups.push(Group { name, ..Group::default() });
        groups.len() - 1
    });
    fields.opt_text("note")?;
    let setting = read_setting(&mut fields, base)?;
    let task = match fields.need("kind")?.word(&["network", "line", "transient", "property"])? {
        0 => network(&mut fields, &setting)?,
        1 => Task::Line(line(&mut fields, &setting)?),
        2 => Task::Transient(transient(&mut fields, &setting)?),
        _ => Task::Property(read_property::property(&mut fields, &setting)?),
    };
    fields.finish()?;
    Ok(Case { id, group, setting, task })
}

fn network(fields: &mut Fields<'_>, setting: &Setting) -> Result<Task, CaseProblem> {
    let net = element::net(fields, setting)?;
    let spot = fields.need("expect")?;
    let mut own = spot.map()?;
    let expect = expected(&mut own, &net, setting)?;
    own.finish()?;
    Ok(Task::Network { net, expect })
}

fn expected(
    fields: &mut Fields<'_>,
    net: &Net,
    setting: &Setting,
) -> Result<Expected, CaseProblem> {
    let mut expect = Expected::default();
    for (name, spot, p_pa) in
        fields.measured_map("pressures", Measure::Pressure, MAX_PRESSURE_PA)?
    {
        expect.pressures_pa.push((element::find_node(net, name, &spot)?, p_pa));
    }
    let flow = Measure::Flow(setting.gas.density_std_kg_m3());
    for (name, spot, flow) in fields.measured_map("flows", flow, MAX_FLOW_M3_S)? {
        expect.flows_m3_s.push((element::find_element(net, name, &spot)?, flow));
    }
    if expect.pressures_pa.is_empty() && expect.flows_m3_s.is_empty() {
        return Err(fields.spot.problem(CaseFault::Missing, "no pressure and no flow is expected"));
    }
    Ok(expect)
}

fn line(fields: &mut Fields<'_>, setting: &Setting) -> Result<Line, CaseProblem> {
    let spot = fields.need("element")?;
    let mut own = spot.map()?;
    let part = element::part(&mut own, setting)?;
    own.finish()?;
    let lowest = -0.9 * setting.ambient_pa;
    let pressure = |fields: &mut Fields<'_>, name: &str| {
        fields.opt_measured(name, Measure::Pressure, lowest, MAX_PRESSURE_PA)
    };
    let flow = Measure::Flow(setting.gas.density_std_kg_m3());
    let inlet_pa = pressure(fields, "inlet")?.ok_or_else(|| fields.missing("inlet_pa"))?;
    let given_flow = fields.opt_measured("flow", flow, 1e-12, MAX_FLOW_M3_S)?;
    let outlet = pressure(fields, "outlet")?;
    let drop = fields.opt_measured("drop", Measure::Pressure, 0.0, MAX_PRESSURE_PA)?;
    let expect = fields.need("expect")?;
    let mut own = expect.map()?;
    let want_flow = own.opt_measured("flow", flow, 0.0, MAX_FLOW_M3_S)?;
    let want_drop = own.opt_measured("drop", Measure::Pressure, 0.0, MAX_PRESSURE_PA)?;
    own.finish()?;
    let outlet = outlet.or(drop.map(|drop| inlet_pa - drop));
    let ask = match (outlet, given_flow, want_flow, want_drop) {
        (Some(outlet_pa), None, Some(flow_m3_s), None) => Ask::Flow { outlet_pa, flow_m3_s },
        (None, Some(flow_m3_s), None, Some(drop_pa)) => Ask::Drop { flow_m3_s, drop_pa },
        _ => {
            let message = "a line has `outlet` or `drop` and expects `flow`, or has `flow` and \
                           expects `drop`";
            return Err(expect.problem(CaseFault::Contradiction, message));
        }
    };
    Ok(Line { part, inlet_pa, ask })
}

fn transient(fields: &mut Fields<'_>, setting: &Setting) -> Result<Transient, CaseProblem> {
    let net = element::net(fields, setting)?;
    let step_s = fields.opt_measured("step", Measure::Time, 1e-4, 60.0)?;
    let start = match fields.opt("start") {
        None => Start::AsGiven,
        Some(spot) if spot.word(&["as-given", "settled"])? == 0 => Start::AsGiven,
        Some(_) => Start::Settled,
    };
    let mut changes = Vec::new();
    if let Some(spot) = fields.opt("changes") {
        for spot in spot.list(200)? {
            changes.push(change(&spot, &net, setting)?);
        }
    }
    let mut expect: Vec<Expected> = Vec::new();
    for spot in fields.need("expect")?.list(500)? {
        let mut own = spot.map()?;
        let at_s = own.measured("at", Measure::Time, 0.0, MAX_TIME_S)?;
        let now = Expected { at_s, ..expected(&mut own, &net, setting)? };
        own.finish()?;
        if expect.last().is_some_and(|last| last.at_s >= at_s) {
            return Err(spot.problem(CaseFault::Contradiction, "times must rise"));
        }
        expect.push(now);
    }
    if expect.is_empty() {
        return Err(fields.missing("expect[0]"));
    }
    changes.sort_by(|a, b| a.at_s.total_cmp(&b.at_s));
    Ok(Transient { net, step_s, start, changes, expect })
}

fn change(spot: &Spot<'_>, net: &Net, setting: &Setting) -> Result<Change, CaseProblem> {
    let mut fields = spot.map()?;
    let at_s = fields.measured("at", Measure::Time, 0.0, MAX_TIME_S)?;
    let what = if let Some(spot) = fields.opt("node") {
        let node = element::find_node(net, spot.name()?, &spot)?;
        if net.nodes[node].volume_m3.is_none() {
            let low = -0.9 * setting.ambient_pa;
            What::Pressure(
                node,
                fields.measured("pressure", Measure::Pressure, low, MAX_PRESSURE_PA)?,
            )
        } else {
            let flow = Measure::Flow(setting.gas.density_std_kg_m3());
            What::Demand(node, fields.measured("demand", flow, -MAX_FLOW_M3_S, MAX_FLOW_M3_S)?)
        }
    } else {
        let spot = fields.need("element")?;
        let index = element::find_element(net, spot.name()?, &spot)?;
        element::change_of(&mut fields, &spot, &net.elements[index].part, index)?
    };
    fields.finish()?;
    Ok(Change { at_s, what })
}

fn case_work(case: &Case) -> f64 {
    let Task::Transient(transient) = &case.task else { return 0.0 };
    let steps =
        transient.expect.last().map_or(0.0, |last| last.at_s / transient.step_s.unwrap_or(TICK_S));
    steps * (transient.net.nodes.len() + transient.net.elements.len()) as f64
}
