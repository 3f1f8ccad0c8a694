//! From JSON to nodes and elements.

use super::model::{ElementIn, Net, NodeIn, Part, RegulatorIn, Setting, What};
use super::problem::{CaseFault, CaseProblem};
use super::read_regulator;
use super::reader::{Fields, Measure, Spot};
use crate::physics::fluid::Gas;
use crate::physics::orifice::{cv_area_m2, drill_diameter_m, hole_area_m2};
use crate::physics::pipe::{
    Fitting, PipeMaterial, PipeSpec, TubingSpec, copper_tube_id_m, ehd_constants, schedule_40_id_m,
};
use crate::physics::valve::{HandValve, HandValveKind};
use crate::units::J_M3_PER_BTU_FT3;

/// Highest gauge pressure, in Pa (290 psi).
pub(super) const MAX_PRESSURE_PA: f64 = 2e6;
/// Largest standard flow, in m³/s.
pub(super) const MAX_FLOW_M3_S: f64 = 10.0;
/// Largest effective area, in m².
const MAX_AREA_M2: f64 = 0.1;
/// Most nodes and most elements of one network.
const MAX_NODES: usize = 150;
const MAX_ELEMENTS: usize = 400;
/// Volume of a node of a steady network, where it does not matter, in m³.
const ANY_VOLUME_M3: f64 = 1e-4;

/// A gas by name, or by what the model needs to know of it.
pub(super) fn gas(spot: &Spot<'_>) -> Result<Gas, CaseProblem> {
    if spot.text_up_to(200).is_ok() {
        let propane = spot.word(&["natural", "propane"])? == 1;
        return Ok(if propane { Gas::propane() } else { Gas::natural() });
    }
    let mut fields = spot.map()?;
    let specific_gravity = fields.need("specific_gravity")?.number(0.05, 5.0)?;
    let base = if specific_gravity > 1.0 { Gas::propane() } else { Gas::natural() };
    let viscosity_pa_s = fields.need("viscosity_pa_s")?.number(1e-6, 1e-4)?;
    let gamma = fields.opt("gamma").map(|s| s.number(1.01, 1.7)).transpose()?;
    let heat = fields.opt("heating_value_btu_ft3").map(|s| s.number(50.0, 5_000.0)).transpose()?;
    fields.finish()?;
    Ok(Gas {
        specific_gravity,
        viscosity_pa_s,
        gamma: gamma.unwrap_or(base.gamma),
        heating_value_j_m3: heat.map_or(base.heating_value_j_m3, |h| h * J_M3_PER_BTU_FT3),
        ..base
    })
}

/// The nodes and elements of a case.
pub(super) fn net(fields: &mut Fields<'_>, setting: &Setting) -> Result<Net, CaseProblem> {
    let mut net = Net { nodes: Vec::new(), elements: Vec::new() };
    for spot in fields.need("nodes")?.list(MAX_NODES)? {
        let node = node(&spot, setting)?;
        if net.nodes.iter().any(|other| other.id == node.id) {
            let message = format!("two nodes are called `{}`", node.id);
            return Err(spot.problem(CaseFault::Name, message));
        }
        net.nodes.push(node);
    }
    for spot in fields.need("elements")?.list(MAX_ELEMENTS)? {
        let element = element(&spot, &net, setting)?;
        if net.elements.iter().any(|other| other.id == element.id) {
            let message = format!("two elements are called `{}`", element.id);
            return Err(spot.problem(CaseFault::Name, message));
        }
        net.elements.push(element);
    }
    Ok(net)
}

fn node(spot: &Spot<'_>, setting: &Setting) -> Result<NodeIn, CaseProblem> {
    let mut fields = spot.map()?;
    let id = fields.need("id")?.name()?.to_owned();
    let low = -0.9 * setting.ambient_pa;
    let given = fields.opt_measured("pressure", Measure::Pressure, low, MAX_PRESSURE_PA)?;
    let start = fields.opt_measured("start", Measure::Pressure, low, MAX_PRESSURE_PA)?;
    let volume = fields.opt_measured("volume", Measure::Volume, 1e-7, 1e3)?;
    let t_k = fields.opt_measured("temperature", Measure::Temperature, 220.0, 350.0)?;
    let flow = Measure::Flow(setting.gas.density_std_kg_m3());
    let demand = fields.opt_measured("demand", flow, -MAX_FLOW_M3_S, MAX_FLOW_M3_S)?;
    fields.finish()?;
    let inner = start.is_some() || volume.is_some() || demand.is_some();
    if given.is_some() && inner {
        let message = "a node has a given `pressure`, or `volume`, `start` and `demand`, not both";
        return Err(spot.problem(CaseFault::Contradiction, message));
    }
    Ok(NodeIn {
        id,
        volume_m3: given.is_none().then(|| volume.unwrap_or(ANY_VOLUME_M3)),
        p_pa: given.or(start).unwrap_or(0.0),
        t_k: t_k.unwrap_or(setting.t_k),
        demand_m3_s: demand.unwrap_or(0.0),
    })
}

fn element(spot: &Spot<'_>, net: &Net, setting: &Setting) -> Result<ElementIn, CaseProblem> {
    let mut fields = spot.map()?;
    let id = fields.need("id")?.name()?.to_owned();
    let mut end = |name: &str| {
        let spot = fields.need(name)?;
        find_node(net, spot.name()?, &spot)
    };
    let (from, to) = (end("from")?, end("to")?);
    if from == to {
        let message = format!("`{id}` begins and ends at one node");
        return Err(spot.problem(CaseFault::Contradiction, message));
    }
    let part = part(&mut fields, setting)?;
    fields.finish()?;
    Ok(ElementIn { id, from, to, part })
}

/// What an element is.
pub(super) fn part(fields: &mut Fields<'_>, setting: &Setting) -> Result<Part, CaseProblem> {
    match fields.need("type")?.word(&["pipe", "tubing", "opening", "valve", "regulator"])? {
        0 => pipe(fields).map(Part::Pipe),
        1 => tubing(fields).map(Part::Tubing),
        2 => opening(fields).map(Part::Opening),
        3 => valve(fields).map(|(valve, angle_deg)| Part::Valve(valve, angle_deg)),
        _ => regulator(fields, setting).map(|own| Part::Regulator(Box::new(own))),
    }
}

fn pipe(fields: &mut Fields<'_>) -> Result<PipeSpec, CaseProblem> {
    let material = match fields.opt("material") {
        None => None,
        Some(spot) => Some(match spot.word(&["steel", "copper", "rusted-steel"])? {
            0 => PipeMaterial::Steel,
            1 => PipeMaterial::Copper,
            _ => PipeMaterial::RustedSteel,
        }),
    };
    let id_m = fields.opt_measured("inside", Measure::Length, 1e-3, 0.5)?;
    let nominal = fields.opt("nominal");
    let id_m = match (id_m, nominal, material) {
        (Some(id_m), None, _) => id_m,
        (None, Some(spot), Some(material)) => {
            let size = spot.text_up_to(20)?;
            let found = match material {
                PipeMaterial::Copper => copper_tube_id_m(size),
                PipeMaterial::Steel | PipeMaterial::RustedSteel => schedule_40_id_m(size),
            };
            found.ok_or_else(|| {
                spot.problem(CaseFault::Name, format!("`{size}` is no size of this material"))
            })?
        }
        (None, Some(spot), None) => {
            let message = "a `nominal` size needs its `material`";
            return Err(spot.problem(CaseFault::Missing, message));
        }
        (Some(_), Some(spot), _) => {
            let message = "`nominal` and `inside` are both given";
            return Err(spot.problem(CaseFault::Contradiction, message));
        }
        (None, None, _) => return Err(fields.missing("inside_mm` or `nominal")),
    };
    let rough = fields.opt_measured("roughness", Measure::Length, 0.0, 0.05 * id_m)?;
    let length_m = fields.measured("length", Measure::Length, 1e-3, 1e5)?;
    let equivalent = fields.opt_measured("fittings", Measure::Length, 0.0, 1e5)?;
    let roughness_m = rough.or(material.map(PipeMaterial::roughness_m));
    let roughness_m = roughness_m.ok_or_else(|| fields.missing("roughness_mm` or `material"))?;
    let mut spec = PipeSpec { id_m, length_m, fittings_m: equivalent.unwrap_or(0.0), roughness_m };
    if let Some(spot) = fields.opt("fitting_count") {
        const NAMES: [&str; 5] = ["elbow-45", "elbow-90", "return-bend", "tee-branch", "tee-run"];
        const FITTINGS: [Fitting; 5] = [
            Fitting::Elbow45,
            Fitting::Elbow90,
            Fitting::ReturnBend,
            Fitting::TeeBranch,
            Fitting::TeeRun,
        ];
        let mut own = spot.map()?;
        for (name, fitting) in NAMES.iter().zip(FITTINGS) {
            if let Some(spot) = own.opt(name) {
                spec = spec.with(fitting, spot.whole(1_000)?);
            }
        }
        own.finish()?;
    }
    Ok(spec)
}

fn tubing(fields: &mut Fields<'_>) -> Result<TubingSpec, CaseProblem> {
    let spot = fields.need("ehd")?;
    let ehd = u16::try_from(spot.whole(1_000)?).unwrap_or(0);
    if ehd_constants(ehd).is_none() {
        let message = format!("{ehd} is no equivalent hydraulic diameter with published figures");
        return Err(spot.problem(CaseFault::Name, message));
    }
    let length_m = fields.measured("length", Measure::Length, 0.01, 1e4)?;
    let extra = fields.opt("extra_fittings").map(|spot| spot.whole(1_000)).transpose()?;
    Ok(TubingSpec { ehd, length_m, extra_fittings: extra.unwrap_or(0) })
}

fn opening(fields: &mut Fields<'_>) -> Result<f64, CaseProblem> {
    let area = fields.opt_measured("area", Measure::Area, 0.0, MAX_AREA_M2)?;
    let diameter = fields.opt_measured("diameter", Measure::Length, 0.0, 0.3)?;
    let drill = match fields.opt("drill") {
        None => None,
        Some(spot) => {
            let name = spot.text_up_to(40)?;
            let message = || format!("`{name}` is no drill number and no diameter");
            Some(drill_diameter_m(name).ok_or_else(|| spot.problem(CaseFault::Name, message()))?)
        }
    };
    let cv = fields.opt("cv").map(|spot| spot.number(0.0, 2_000.0)).transpose()?;
    let hole = diameter.or(drill);
    let cd = match (hole, fields.opt("cd")) {
        (Some(_), Some(spot)) => spot.number(0.01, 1.0)?,
        (Some(_), None) => return Err(fields.missing("cd")),
        (None, Some(spot)) => {
            return Err(spot.problem(CaseFault::Contradiction, "`cd` goes with a `diameter`"));
        }
        (None, None) => 0.0,
    };
    let given = [area, hole.map(|d| hole_area_m2(cd, d)), cv.map(cv_area_m2)];
    let count = given.iter().flatten().count() + usize::from(diameter.is_some() && drill.is_some());
    match (count, given.into_iter().flatten().next()) {
        (1, Some(area)) => Ok(area),
        _ => Err(fields.spot.problem(
            CaseFault::Contradiction,
            "an opening has one of `area_mm2`, `diameter_mm` with `cd`, `drill` with `cd`, `cv`",
        )),
    }
}

fn valve(fields: &mut Fields<'_>) -> Result<(HandValve, f64), CaseProblem> {
    let kind = match fields.need("style")?.word(&["ball", "plug-cock"])? {
        0 => HandValveKind::Ball,
        _ => HandValveKind::PlugCock,
    };
    let bore_m = fields.measured("bore", Measure::Length, 1e-3, 0.2)?;
    let angle_deg = fields.need("angle_deg")?.number(0.0, 90.0)?;
    Ok((HandValve::new(kind, bore_m), angle_deg))
}

fn regulator(fields: &mut Fields<'_>, setting: &Setting) -> Result<RegulatorIn, CaseProblem> {
    let spec = read_regulator::spec(fields, setting)?;
    let low = -0.9 * setting.ambient_pa;
    let reference = fields.opt_measured("reference", Measure::Pressure, low, MAX_PRESSURE_PA)?;
    let leak = fields.opt_measured("leak", Measure::Area, 0.0, MAX_AREA_M2)?;
    Ok(RegulatorIn { spec, reference_pa: reference.unwrap_or(0.0), leak_m2: leak.unwrap_or(0.0) })
}

/// What can change at an element.
pub(super) fn change_of(
    fields: &mut Fields<'_>,
    spot: &Spot<'_>,
    part: &Part,
    index: usize,
) -> Result<What, CaseProblem> {
    match part {
        Part::Opening(_) => opening(fields).map(|area| What::Area(index, area)),
        Part::Valve(valve, _) => {
            let angle_deg = fields.need("angle_deg")?.number(0.0, 90.0)?;
            Ok(What::Area(index, valve.cd_area_m2(angle_deg)))
        }
        Part::Regulator(_) => {
            if let Some(spot) = fields.opt("turns") {
                return Ok(What::Turns(index, spot.number(0.0, 1_000.0)?));
            }
            let reference =
                fields.measured("reference", Measure::Pressure, -1e5, MAX_PRESSURE_PA)?;
            Ok(What::Reference(index, reference))
        }
        Part::Pipe(_) | Part::Tubing(_) => {
            let message = "nothing can change at a pipe or tubing";
            Err(spot.problem(CaseFault::Contradiction, message))
        }
    }
}

/// A node by its name.
pub(super) fn find_node(net: &Net, name: &str, spot: &Spot<'_>) -> Result<usize, CaseProblem> {
    net.nodes.iter().position(|node| node.id == name).ok_or_else(|| {
        spot.problem(CaseFault::Name, format!("there is no node `{name}` in this case"))
    })
}

/// An element by its name.
pub(super) fn find_element(net: &Net, name: &str, spot: &Spot<'_>) -> Result<usize, CaseProblem> {
    net.elements.iter().position(|element| element.id == name).ok_or_else(|| {
        spot.problem(CaseFault::Name, format!("there is no element `{name}` in this case"))
    })
}
