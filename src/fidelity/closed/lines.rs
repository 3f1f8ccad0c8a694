//! Pipes in a row.

use super::rig::flow_between;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::fluid::Gas;
use crate::physics::network::NetworkBuilder;
use crate::physics::pipe::{Fitting, PipeMaterial, PipeSpec};
use crate::units::{M_PER_FT, M_PER_IN, M3_S_PER_CFH, P_STD_PA, PA_PER_INWC, PA_PER_PSI, T_STD_K};
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    vec![cut_in_two(), two_bores(), fittings()]
}

fn steel(id_in: f64, feet: f64) -> PipeSpec {
    PipeSpec::new(PipeMaterial::Steel, id_in * M_PER_IN, feet * M_PER_FT)
}

/// What two pipes in a row lose in the first, in pascals.
fn lost_in_first(ends: [f64; 2], pipes: [PipeSpec; 2]) -> f64 {
    let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
    let (from, to) = (b.fixed(ends[0]), b.fixed(ends[1]));
    let joint = b.node(1e-4, T_STD_K, ends[0]);
    b.pipe(from, joint, &pipes[0]);
    b.pipe(joint, to, &pipes[1]);
    let mut network = b.build();
    network.settle(2_000.0);
    ends[0] - network.pressure_pa(joint)
}

/// A pipe cut anywhere carries what the whole one carries.
fn cut_in_two() -> Check {
    let mut rows = Vec::new();
    for (name, ends) in [
        (t!("row-half-inwc"), [7.0 * PA_PER_INWC, 6.5 * PA_PER_INWC]),
        (t!("row-10-5-psi"), [10.0 * PA_PER_PSI, 5.0 * PA_PER_PSI]),
    ] {
        for share in [0.5, 0.2] {
            let squares = ends.map(|pa| (pa + P_STD_PA) * (pa + P_STD_PA));
            let middle = squares[0] + share * (squares[1] - squares[0]);
            let by_hand = middle.sqrt() - P_STD_PA;
            let pipes = [steel(0.824, 50.0 * share), steel(0.824, 50.0 * (1.0 - share))];
            let label = t!("row-line-cut", name = name, percent = decimal(100.0 * share, 0));
            let found = lost_in_first(ends, pipes);
            rows.push(Row::new(label, (ends[0] - by_hand) / PA_PER_INWC, found / PA_PER_INWC));
        }
    }
    check("closed.pipe.cut-in-two", rows)
}

/// Two bores in a row share the drop as the code's equation says.
fn two_bores() -> Check {
    let mut rows = Vec::new();
    for ([first_in, first_ft], [second_in, second_ft]) in [
        ([1.049, 40.0], [0.824, 20.0]),
        ([0.824, 20.0], [0.622, 10.0]),
        ([0.622, 10.0], [1.049, 60.0]),
    ] {
        let ends = [7.0 * PA_PER_INWC, 6.5 * PA_PER_INWC];
        // ΔH ∝ L·D^(−1/0.206) at equal flow.
        let weight = |id: f64, feet: f64| feet * libm::pow(id, -1.0 / 0.206);
        let (first, second) = (weight(first_in, first_ft), weight(second_in, second_ft));
        let by_hand = 0.5 * first / (first + second);
        let pipes = [steel(first_in, first_ft), steel(second_in, second_ft)];
        let lost = lost_in_first(ends, pipes);
        let label = t!(
            "row-two-pipes",
            first_ft = first_ft.to_string(),
            first_in = first_in.to_string(),
            second_ft = second_ft.to_string(),
            second_in = second_in.to_string()
        );
        rows.push(Row::new(label, by_hand, lost / PA_PER_INWC));
    }
    check("closed.pipe.two-bores", rows)
}

/// Fittings count as the length that the code gives them.
fn fittings() -> Check {
    let ends = [7.0 * PA_PER_INWC, 6.5 * PA_PER_INWC];
    let carried = |pipe: PipeSpec| {
        flow_between(Gas::natural(), ends, |b, from, to| b.pipe(from, to, &pipe)) / M3_S_PER_CFH
    };
    // Equivalent feet of IFGC Table A.2.2 for 1 in. screwed fittings.
    let rows = [
        (t!("row-ten-90-elbows"), steel(1.049, 40.0).with(Fitting::Elbow90, 10), 10.0 * 2.62),
        (t!("row-ten-45-elbows"), steel(1.049, 40.0).with(Fitting::Elbow45, 10), 10.0 * 1.22),
        (
            t!("row-ten-tees-by-branch"),
            steel(1.049, 40.0).with(Fitting::TeeBranch, 10),
            10.0 * 5.24,
        ),
    ]
    .into_iter()
    .map(|(name, with, feet)| Row::new(name, carried(steel(1.049, 40.0 + feet)), carried(with)))
    .collect();
    check("closed.pipe.fittings", rows)
}
