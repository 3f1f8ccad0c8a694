//! Nodes, elements and what is expected of them.

use serde::Deserialize;
use serde_json::value::RawValue;

use super::figure::{Figure, Measure};
use super::model::{ElementIn, Expected, Net, NodeIn, Setting};
use super::part::{self, MAX_FLOW_M3_S, MAX_PRESSURE_PA};
use super::place::{ByName, Name, Place, object};
use super::problem::{CaseFault, CaseProblem};

use Measure::{Pressure, Temperature, Volume};

/// Most nodes and most elements of one network.
const MAX_NODES: usize = 150;
const MAX_ELEMENTS: usize = 400;
/// Volume of a node of a steady network, where it does not matter, in m³.
const ANY_VOLUME_M3: f64 = 1e-4;

object! { Node(setting)
    may {
        pressure: Pressure, setting.lowest_pa()..=MAX_PRESSURE_PA;
        start: Pressure, setting.lowest_pa()..=MAX_PRESSURE_PA;
        volume: Volume, 1e-7..=1e3;
        temperature: Temperature, 220.0..=350.0;
        demand: setting.flow(), -MAX_FLOW_M3_S..=MAX_FLOW_M3_S;
    }
    plain { id: Name; }
}

#[derive(Deserialize)]
struct ElementHead {
    id: Name,
    from: String,
    to: String,
}

/// The nodes and elements of a case.
pub(super) fn net<'t>(
    case: &Place<'t>,
    setting: &Setting,
    nodes: &[&'t RawValue],
    elements: &[&'t RawValue],
) -> Result<Net, CaseProblem> {
    let mut net = Net { nodes: Vec::new(), elements: Vec::new() };
    for place in case.items("nodes", nodes, MAX_NODES)? {
        let node = node(&place, setting)?;
        if net.nodes.iter().any(|other| other.id == node.id) {
            let message = t!("case-two-nodes-are-called", node = &node.id);
            return Err(place.problem(CaseFault::Name, message));
        }
        net.nodes.push(node);
    }
    for place in case.items("elements", elements, MAX_ELEMENTS)? {
        let element = element(&place, &net, setting)?;
        if net.elements.iter().any(|other| other.id == element.id) {
            let message = t!("case-two-elements-are-called", element = &element.id);
            return Err(place.problem(CaseFault::Name, message));
        }
        net.elements.push(element);
    }
    Ok(net)
}

fn node(place: &Place<'_>, setting: &Setting) -> Result<NodeIn, CaseProblem> {
    let own = Node::read(place, setting, &[])?;
    let given = own.pressure.is_some();
    if given && (own.start.is_some() || own.volume.is_some() || own.demand.is_some()) {
        let message = t!("case-node-given-pressure-volume");
        return Err(place.problem(CaseFault::Contradiction, message));
    }
    Ok(NodeIn {
        id: own.id.0,
        volume_m3: (!given).then(|| own.volume.unwrap_or(ANY_VOLUME_M3)),
        p_pa: own.pressure.or(own.start).unwrap_or(0.0),
        t_k: own.temperature.unwrap_or(setting.t_k),
        demand_m3_s: own.demand.unwrap_or(0.0),
    })
}

fn element(place: &Place<'_>, net: &Net, setting: &Setting) -> Result<ElementIn, CaseProblem> {
    let own: ElementHead = place.read(&[])?;
    let from = find_node(net, &own.from, || place.field("from"))?;
    let to = find_node(net, &own.to, || place.field("to"))?;
    if from == to {
        let message = t!("case-begins-ends-node", element = &own.id.0);
        return Err(place.problem(CaseFault::Contradiction, message));
    }
    let part = part::part(place, setting, &["id", "from", "to"])?;
    Ok(ElementIn { id: own.id.0, from, to, part })
}

/// A node by its name, which stands in a place.
pub(super) fn find_node<'t>(
    net: &Net,
    name: &str,
    place: impl FnOnce() -> Place<'t>,
) -> Result<usize, CaseProblem> {
    let message = || t!("case-there-node-this-case", name = name);
    let found = net.nodes.iter().position(|node| node.id == name);
    found.ok_or_else(|| place().problem(CaseFault::Name, message()))
}

/// An element by its name, which stands in a place.
pub(super) fn find_element<'t>(
    net: &Net,
    name: &str,
    place: impl FnOnce() -> Place<'t>,
) -> Result<usize, CaseProblem> {
    let message = || t!("case-there-element-this-case", name = name);
    let found = net.elements.iter().position(|element| element.id == name);
    found.ok_or_else(|| place().problem(CaseFault::Name, message()))
}

#[derive(Default, Deserialize)]
#[serde(default, deny_unknown_fields)]
struct Figures {
    pressures: ByName<Figure>,
    pressures_pa: ByName<Figure>,
    flows: ByName<Figure>,
    flows_m3_s: ByName<Figure>,
    flows_kg_s: ByName<Figure>,
}

/// What a solver found at one moment.
pub(super) fn expected(
    place: &Place<'_>,
    net: &Net,
    setting: &Setting,
    passed: &[&str],
) -> Result<Expected, CaseProblem> {
    let own: Figures = place.read(passed)?;
    let mut expect = Expected::default();
    for (field, ending, figures) in
        [("pressures", "", own.pressures), ("pressures_pa", "_pa", own.pressures_pa)]
    {
        for (name, figure) in figures.0 {
            let place = place.field(field);
            let range = -MAX_PRESSURE_PA..=MAX_PRESSURE_PA;
            let p_pa = place.si((&name, ending), &figure, Pressure, range)?;
            expect.pressures_pa.push((find_node(net, &name, || place.field(&name))?, p_pa));
        }
    }
    for (field, ending, figures) in [
        ("flows", "", own.flows),
        ("flows_m3_s", "_m3_s", own.flows_m3_s),
        ("flows_kg_s", "_kg_s", own.flows_kg_s),
    ] {
        for (name, figure) in figures.0 {
            let place = place.field(field);
            let range = -MAX_FLOW_M3_S..=MAX_FLOW_M3_S;
            let flow = place.si((&name, ending), &figure, setting.flow(), range)?;
            expect.flows_m3_s.push((find_element(net, &name, || place.field(&name))?, flow));
        }
    }
    if expect.pressures_pa.is_empty() && expect.flows_m3_s.is_empty() {
        return Err(place.problem(CaseFault::Missing, t!("case-pressure-flow-expected")));
    }
    Ok(expect)
}
