//! Running one case: the rows of result beside reference.

use super::super::check::Row;
use super::build::Rig;
use super::model::{Ask, Case, Expected, Line, Net, NodeIn, Part, Start, Task, Transient, What};
use super::property;
use crate::physics::network::NetworkBuilder;
use crate::units::{M3_S_PER_CFH, PA_PER_INWC, TICK_S};
use crate::words::decimal;

/// Finest step of a transient that names none, in s.
const FINEST_S: f64 = 5e-5;
/// Most steps times nodes and elements spent on one such transient at its finest step.
const MOST_WORK: f64 = 4e5;
/// Once half the step moves no pressure by more than this share of its span, in per cent, the
/// course stands: what is left of the first-order error is as much again.
const STILL_PERCENT: f64 = 0.2;

/// What a row measures; rows of one kind in one group make a check.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Kind {
    /// Pressure at a node, in. w.c.
    Pressure,
    /// Flow through an element, ft³/h.
    Flow,
    /// Percent of the span of a pressure over a transient.
    Span,
    /// A line's flow, ft³/h.
    LineFlow,
    /// A line's drop, in. w.c.
    LineDrop,
    /// The unit goes with the property.
    Property(&'static str),
}

/// Runs a case of any kind on the model and sets each result beside its reference.
pub(super) fn rows(case: &Case) -> Vec<(Kind, Row)> {
    match &case.task {
        Task::Network { net, expect } => network(case, net, expect),
        Task::Line(own) => line(case, own),
        Task::Transient(own) => transient(case, own),
        Task::Property(own) => {
            let result = property::value(own.quantity, &case.setting);
            let row = Row { at: own.against, ..Row::new(&case.id, own.expect, result) };
            vec![(Kind::Property(own.quantity.unit()), row)]
        }
    }
}

fn network(case: &Case, net: &Net, expect: &Expected) -> Vec<(Kind, Row)> {
    let mut rig = Rig::new(case, net, &[]);
    let rest = rig.settle();
    // A network that finds no rest has no result.
    let sound = |result: f64| if rest { result } else { f64::NAN };
    let mut rows = Vec::new();
    for &(node, reference) in &expect.pressures_pa {
        let label = format!("{}, {}", case.id, net.nodes[node].id);
        let result = sound(rig.pressure_pa(node));
        rows.push((Kind::Pressure, Row::new(label, reference / PA_PER_INWC, result / PA_PER_INWC)));
    }
    for &(element, reference) in &expect.flows_m3_s {
        let label = format!("{}, {}", case.id, net.elements[element].id);
        rows.push((Kind::Flow, flow_row(label, reference, sound(rig.flow_m3_s(element)))));
    }
    rows
}

fn flow_row(label: String, reference_m3_s: f64, result_m3_s: f64) -> Row {
    Row::new(label, reference_m3_s / M3_S_PER_CFH, result_m3_s / M3_S_PER_CFH)
}

fn line(case: &Case, own: &Line) -> Vec<(Kind, Row)> {
    match own.ask {
        Ask::Flow { outlet_pa, flow_m3_s } => {
            let result = line_flow(case, own, outlet_pa);
            vec![(Kind::LineFlow, flow_row(case.id.clone(), flow_m3_s, result))]
        }
        Ask::Drop { flow_m3_s, drop_pa } => {
            let lowest = -0.9 * case.setting.ambient_pa;
            let (mut lower, mut upper) = (0.0, (own.inlet_pa - lowest).max(0.0));
            let reached = line_flow(case, own, own.inlet_pa - upper) >= flow_m3_s;
            for _ in 0..200 {
                let middle = 0.5 * (lower + upper);
                if line_flow(case, own, own.inlet_pa - middle) < flow_m3_s {
                    lower = middle;
                } else {
                    upper = middle;
                }
            }
            let result = if reached { upper } else { f64::NAN };
            let row = Row::new(&case.id, drop_pa / PA_PER_INWC, result / PA_PER_INWC);
            vec![(Kind::LineDrop, row)]
        }
    }
}

/// Flow through one element between two boundaries, in standard m³/s.
fn line_flow(case: &Case, own: &Line, outlet_pa: f64) -> f64 {
    let setting = case.setting;
    let mut builder = NetworkBuilder::new(setting.gas, setting.ambient_pa);
    let from = builder.fixed_at(own.inlet_pa, setting.t_k);
    let to = builder.fixed_at(outlet_pa, setting.t_k);
    let element = match &own.part {
        Part::Pipe(spec) => builder.pipe(from, to, spec),
        Part::Tubing(spec) => builder.tubing(from, to, spec),
        Part::Opening(area_m2) => builder.opening(from, to, *area_m2),
        Part::Valve(valve, angle_deg) => builder.opening(from, to, valve.cd_area_m2(*angle_deg)),
        Part::Regulator(regulator) => builder.regulator(from, to, regulator.spec),
    };
    let mut network = builder.build();
    if let (Part::Regulator(own), Some(regulator)) = (&own.part, network.regulator_mut(element)) {
        regulator.set_reference_pa(own.reference_pa);
        regulator.set_leak_cd_area_m2(own.leak_m2);
    }
    // Long enough for any lag.
    network.step(1e6);
    network.flow_std_m3_s(element)
}

/// A transient with the step that it asks for, or else with the step halved from a job's 20 ms until
/// the course moves no more: then the equations are compared, not the method that marches them.
fn transient(case: &Case, own: &Transient) -> Vec<(Kind, Row)> {
    if let Some(step_s) = own.step_s {
        return march(case, own, step_s);
    }
    let end_s = own.expect.last().map_or(0.0, |last| last.at_s);
    let parts = (own.net.nodes.len() + own.net.elements.len()) as f64;
    let mut step_s = TICK_S;
    let mut rows = march(case, own, step_s);
    while step_s > 2.0 * FINEST_S && 2.0 * end_s / step_s * parts <= MOST_WORK {
        step_s *= 0.5;
        let finer = march(case, own, step_s);
        let moved = rows
            .iter()
            .zip(&finer)
            .filter(|((kind, _), _)| *kind == Kind::Span)
            .map(|((_, a), (_, b))| (a.result - b.result).abs())
            .fold(0.0, f64::max);
        rows = finer;
        if moved <= STILL_PERCENT {
            break;
        }
    }
    rows
}

fn march(case: &Case, own: &Transient, step_s: f64) -> Vec<(Kind, Row)> {
    let changed: Vec<usize> = own
        .changes
        .iter()
        .filter_map(|change| match change.what {
            What::Demand(node, _) => Some(node),
            What::Pressure(..) | What::Area(..) | What::Turns(..) | What::Reference(..) => None,
        })
        .collect();
    let mut rig = Rig::new(case, &own.net, &changed);
    let mut sound = own.start == Start::AsGiven || rig.settle();
    let spans = spans(own, &rig);
    let mut changes = own.changes.iter().peekable();
    let mut before = snapshot(&rig);
    let mut after = before.clone();
    let (mut steps, mut rows) = (0.0, Vec::new());
    for expect in &own.expect {
        // Times come from a file: a step ends there if it is within a millionth of one.
        while (steps + 1e-6) * step_s < expect.at_s {
            while let Some(change) =
                changes.next_if(|change| change.at_s <= (steps + 1e-6) * step_s)
            {
                rig.change(change.what);
            }
            before = after;
            sound &= rig.step(step_s);
            steps += 1.0;
            after = snapshot(&rig);
        }
        let share = (1.0 - steps + expect.at_s / step_s).clamp(0.0, 1.0);
        for &(node, reference) in &expect.pressures_pa {
            let result = before[node] + share * (after[node] - before[node]);
            let result = if sound { result } else { f64::NAN };
            rows.push((
                Kind::Span,
                span_row(&own.net.nodes[node], expect, spans[node], reference, result),
            ));
        }
        for &(element, reference) in &expect.flows_m3_s {
            let label = t!(
                "row-id-at-time",
                id = &own.net.elements[element].id,
                seconds = expect.at_s.to_string()
            );
            let result = if sound { rig.flow_m3_s(element) } else { f64::NAN };
            rows.push((Kind::Flow, flow_row(label, reference, result)));
        }
    }
    rows
}

fn snapshot(rig: &Rig) -> Vec<f64> {
    (0..rig.nodes.len()).map(|node| rig.pressure_pa(node)).collect()
}

/// Lowest reference pressure of each node and the span to the highest, start included, in Pa.
fn spans(own: &Transient, rig: &Rig) -> Vec<(f64, f64)> {
    (0..own.net.nodes.len())
        .map(|node| {
            let start = rig.pressure_pa(node);
            let (mut lower, mut upper) = (start, start);
            for expect in &own.expect {
                for (_, p_pa) in expect.pressures_pa.iter().filter(|(own, _)| *own == node) {
                    lower = lower.min(*p_pa);
                    upper = upper.max(*p_pa);
                }
            }
            // A pressure that does not move is held to 0.01 in. w.c.
            (lower, (upper - lower).max(PA_PER_INWC))
        })
        .collect()
}

fn span_row(
    node: &NodeIn,
    expect: &Expected,
    (low_pa, span_pa): (f64, f64),
    reference_pa: f64,
    result_pa: f64,
) -> Row {
    let inches = reference_pa / PA_PER_INWC;
    let label = t!(
        "row-id-at-time-inwc",
        id = &node.id,
        seconds = expect.at_s.to_string(),
        inches = decimal(inches, 3)
    );
    let share = |p_pa: f64| 100.0 * (p_pa - low_pa) / span_pa;
    Row::new(label, share(reference_pa), share(result_pa)).on(&node.id, expect.at_s)
}
