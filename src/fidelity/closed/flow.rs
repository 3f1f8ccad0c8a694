//! Openings one behind the other and side by side, capillaries, no flow, flow reversed.

use core::f64::consts::PI;

use super::rig::flow_between;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::fluid::Gas;
use crate::physics::network::{ElementId, NetworkBuilder, NodeId};
use crate::physics::pipe::{PipeMaterial, PipeSpec, TubingSpec, schedule_40_id_m};
use crate::units::{M_PER_IN, P_STD_PA, PA_PER_INWC, PA_PER_PSI, T_STD_K};
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    vec![hagen_poiseuille(), series(), parallel(), no_flow(), reversal(), smoothing()]
}

/// An element to be put between two nodes.
#[derive(Clone, Copy)]
enum FlowPath {
    Hole(f64),
    Pipe(PipeSpec),
    Tubing(TubingSpec),
}

impl FlowPath {
    fn add(self, b: &mut NetworkBuilder, from: NodeId, to: NodeId) -> ElementId {
        match self {
            Self::Hole(area_m2) => b.opening(from, to, area_m2),
            Self::Pipe(spec) => b.pipe(from, to, &spec),
            Self::Tubing(spec) => b.tubing(from, to, &spec),
        }
    }
}

/// A hole, steel pipe and corrugated tubing.
fn paths() -> [(&'static str, FlowPath); 3] {
    let steel = schedule_40_id_m("1/2").unwrap_or(0.622 * M_PER_IN);
    [
        (t!("row-hole-10-mm"), FlowPath::Hole(1e-5)),
        (
            t!("row-half-inch-steel"),
            FlowPath::Pipe(PipeSpec::new(PipeMaterial::Steel, steel, 10.0)),
        ),
        (
            t!("row-tubing-ehd-18-10"),
            FlowPath::Tubing(TubingSpec { ehd: 18, length_m: 10.0, extra_fittings: 0 }),
        ),
    ]
}

/// Laminar flow against the law of Hagen and Poiseuille.
fn hagen_poiseuille() -> Check {
    let mut rows = Vec::new();
    for (name, gas) in [(t!("row-natural-gas"), Gas::natural()), ("propane", Gas::propane())] {
        for (bore_m, length_m) in [(5e-4, 0.1), (2e-3, 3.0), (1.58e-2, 20.0)] {
            for re in [10.0, 300.0, 800.0] {
                // Q = Re·π·d·μ/(4·ρ), ΔP = 128·μ·L·Q/(π·d⁴).
                let flow = re * PI * bore_m * gas.viscosity_pa_s / (4.0 * gas.density_std_kg_m3());
                let drop_pa = 128.0 * gas.viscosity_pa_s * length_m * flow
                    / (PI * bore_m * bore_m * bore_m * bore_m);
                let pipe = PipeSpec::new(PipeMaterial::Copper, bore_m, length_m);
                // Half above and half below standard pressure, so that P₁² − P₂² is 2·p·ΔP.
                let found = flow_between(gas, [0.5 * drop_pa, -0.5 * drop_pa], |b, from, to| {
                    b.pipe(from, to, &pipe)
                });
                let label = t!(
                    "row-laminar",
                    name = name,
                    bore = decimal(bore_m * 1e3, 1),
                    re = decimal(re, 0)
                );
                rows.push(Row::new(label, flow * 1e6, found * 1e6).on(name, re));
            }
        }
    }
    check("closed.pipe.hagen-poiseuille", rows)
}

/// Two holes in a row: `1/A² = 1/A₁² + 1/A₂²`, and the pressure between them.
fn series() -> Check {
    let gas = Gas::natural();
    let mut rows = Vec::new();
    for (first_mm2, second_mm2) in [(5.0, 5.0), (5.0, 10.0), (10.0, 5.0), (5.0, 15.0)] {
        let mut b = NetworkBuilder::new(gas, P_STD_PA);
        let drop_pa = PA_PER_INWC;
        let (from, to) = (b.fixed(0.5 * drop_pa), b.fixed(-0.5 * drop_pa));
        let middle = b.node(1e-5, T_STD_K, 0.0);
        b.opening(from, middle, first_mm2 * 1e-6);
        let last = b.opening(middle, to, second_mm2 * 1e-6);
        let mut network = b.build();
        network.settle(100.0);
        let inverse = 1.0 / (first_mm2 * first_mm2) + 1.0 / (second_mm2 * second_mm2);
        let area_m2 = 1e-6 / f64::sqrt(inverse);
        let flow = area_m2 * (2.0 * drop_pa / gas.density_std_kg_m3()).sqrt();
        let label = t!(
            "row-mm-then-mm",
            first_mm2 = first_mm2.to_string(),
            second_mm2 = second_mm2.to_string()
        );
        rows.push(Row::new(
            t!("row-flow-cm3", label = &label),
            flow * 1e6,
            network.flow_std_m3_s(last) * 1e6,
        ));
        let drop_share = 1.0 / (first_mm2 * first_mm2) / inverse;
        let between = drop_pa * (0.5 - drop_share);
        let found = network.pressure_pa(middle);
        rows.push(Row::new(
            t!("row-above-outlet", label = label),
            between + 0.5 * drop_pa,
            found + 0.5 * drop_pa,
        ));
    }
    check("closed.opening.series", rows)
}

/// Side by side, flows add up.
fn parallel() -> Check {
    let mut rows = Vec::new();
    let ends = [7.0 * PA_PER_INWC, 6.5 * PA_PER_INWC];
    for (name, path) in paths() {
        let one = flow_between(Gas::natural(), ends, |b, from, to| path.add(b, from, to));
        let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
        let (from, to) = (b.fixed(ends[0]), b.fixed(ends[1]));
        // Joined before and behind by nodes that the three must share.
        let (start, end) = (b.node(1e-4, T_STD_K, 0.0), b.node(1e-4, T_STD_K, 0.0));
        let feed = b.opening(from, start, 1e3);
        b.opening(end, to, 1e3);
        for _ in 0..3 {
            path.add(&mut b, start, end);
        }
        let mut network = b.build();
        network.settle(100.0);
        let found = network.flow_std_m3_s(feed);
        rows.push(Row::new(t!("row-three", name = name), 3.0 * one * 1e6, found * 1e6));
    }
    for (first, second) in [(2e-6, 3e-6), (1e-7, 1e-5)] {
        let apart: f64 = [first, second]
            .map(|area| flow_between(Gas::natural(), ends, |b, from, to| b.opening(from, to, area)))
            .iter()
            .sum();
        let whole =
            flow_between(Gas::natural(), ends, |b, from, to| b.opening(from, to, first + second));
        let label =
            t!("row-holes-mm", first = decimal(first * 1e6, 1), second = decimal(second * 1e6, 1));
        rows.push(Row::new(label, apart * 1e6, whole * 1e6));
    }
    check("closed.opening.parallel", rows)
}

/// Without a difference of pressure nothing flows, and next to none makes next to nothing.
fn no_flow() -> Check {
    let mut rows = Vec::new();
    for (name, path) in paths() {
        for pa in [0.0, 1_743.6, 10.0 * PA_PER_PSI] {
            let still = flow_between(Gas::natural(), [pa, pa], |b, from, to| path.add(b, from, to));
            rows.push(Row::new(
                t!("row-both-ends-pa", name = name, pa = decimal(pa, 0)),
                0.0,
                still * 1e6,
            ));
        }
        let breath = flow_between(Gas::natural(), [1e-9, 0.0], |b, from, to| path.add(b, from, to));
        rows.push(Row::new(t!("row-next-to-nothing", name = name), 0.0, breath * 1e6));
    }
    check("closed.flow.none", rows)
}

/// Turned round, an element carries the same flow the other path.
fn reversal() -> Check {
    let mut rows = Vec::new();
    for (name, path) in paths() {
        for (upper, lower) in [(5.0, 0.0), (1_743.6, 1_700.0), (2_500.0, 0.0), (69_000.0, 2_500.0)]
        {
            let ahead =
                flow_between(Gas::propane(), [upper, lower], |b, from, to| path.add(b, from, to));
            let back =
                flow_between(Gas::propane(), [lower, upper], |b, from, to| path.add(b, from, to));
            let turned =
                flow_between(Gas::propane(), [upper, lower], |b, from, to| path.add(b, to, from));
            let label = t!(
                "row-high-to-low-pa",
                name = name,
                upper = decimal(upper, 0),
                lower = decimal(lower, 0)
            );
            rows.push(Row::new(t!("row-ends-exchanged", label = &label), -ahead * 1e6, back * 1e6));
            rows.push(Row::new(
                t!("row-element-turned", label = label),
                -ahead * 1e6,
                turned * 1e6,
            ));
        }
    }
    check("closed.flow.reversal", rows)
}

/// How far the law keeps to the square root on its path to nothing.
fn smoothing() -> Check {
    let gas = Gas::natural();
    let rows = [5.0, 10.0, 25.0, 100.0, 500.0]
        .into_iter()
        .map(|drop_pa: f64| {
            let by_hand = 1e-5 * (2.0 * drop_pa / gas.density_std_kg_m3()).sqrt();
            let ends = [0.5 * drop_pa, -0.5 * drop_pa];
            let found = flow_between(gas, ends, |b, from, to| b.opening(from, to, 1e-5));
            Row::new(t!("row-drop-pa", drop_pa = drop_pa.to_string()), by_hand * 1e6, found * 1e6)
                .on("", drop_pa)
        })
        .collect();
    check("closed.opening.smoothing", rows)
}
