//! Force balance of a self-operated regulator.

use super::rig::RegulatorRig;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::fluid::Gas;
use crate::physics::regulator::{
    Behaviour, InletEffect, Regulator, RegulatorSpec, SeatProfile, Spring,
};
use crate::units::{M_PER_IN, P_STD_PA, PA_PER_INWC, PA_PER_PSI};
use crate::words::decimal;

/// Newtons in one pound-force (NIST SP 811).
const N_PER_LBF: f64 = 4.448_221_615_260_5;
const M2_PER_IN2: f64 = M_PER_IN * M_PER_IN;
const LBF_IN: f64 = N_PER_LBF / M_PER_IN;

pub(super) fn checks() -> Vec<Check> {
    vec![balance_holds(), spring_example(), inlet_example(), screw_and_travel()]
}

/// Diaphragm, seat and spring in square inches and pounds.
fn parts(diaphragm_in2: f64, seat_in2: f64, lbf_in: f64, pitch_in: f64) -> RegulatorSpec {
    RegulatorSpec {
        spring: Spring {
            rate_n_m: lbf_in * LBF_IN,
            pitch_m: pitch_in * M_PER_IN,
            bind_m: 1.0,
            max_turns: 1e4,
        },
        diaphragm_area_m2: diaphragm_in2 * M2_PER_IN2,
        seat_area_m2: seat_in2 * M2_PER_IN2,
        inlet_effect: InletEffect::None,
        seat: SeatProfile {
            width_m: 0.01,
            seal_m: 1e-6,
            blend_m: 5e-7,
            toe_slope: 0.05,
            max_lift_m: 0.02,
        },
        turns: 0.0,
        seat_lag_s: 0.03,
        preload_lag_s: 0.0,
    }
}

/// At rest in a network the outlet is what spring, diaphragm and seat make it, at any flow.
fn balance_holds() -> Check {
    let mut rows = Vec::new();
    for (name, effect) in [
        (t!("row-inlet-opens"), InletEffect::Opens),
        (t!("row-inlet-closes"), InletEffect::Closes),
        (t!("row-balanced-seat"), InletEffect::None),
    ] {
        let wanted = Behaviour {
            inlet_effect: effect,
            ..Behaviour::new(
                11.0 * PA_PER_INWC,
                13.0 * PA_PER_INWC,
                2.0 * PA_PER_INWC,
                10.0 * PA_PER_PSI,
                1.2e-3,
            )
        };
        let Ok(spec) = RegulatorSpec::from_behaviour(&wanted, &Gas::propane(), P_STD_PA) else {
            continue;
        };
        let mut rig = RegulatorRig::new(Gas::propane(), wanted.inlet_pa, spec);
        for (share, psi) in [(0.2, 10.0), (0.6, 10.0), (1.0, 10.0), (0.6, 7.0)] {
            rig.set_inlet(psi * PA_PER_PSI);
            rig.draw(share * wanted.rated_flow_std_m3_s, wanted.set_pa);
            let push_m2 = match effect {
                InletEffect::Opens => spec.seat_area_m2,
                InletEffect::Closes => -spec.seat_area_m2,
                InletEffect::None => 0.0,
            };
            let compression_m = spec.turns * spec.spring.pitch_m - rig.lift_m();
            let force_n = spec.spring.rate_n_m * compression_m + push_m2 * psi * PA_PER_PSI;
            let by_hand = force_n / (spec.diaphragm_area_m2 + push_m2);
            let label = t!(
                "row-psi-rated-flow",
                name = name,
                psi = decimal(psi, 0),
                percent = decimal(100.0 * share, 0)
            );
            rows.push(Row::new(label, by_hand / PA_PER_INWC, rig.outlet_pa() / PA_PER_INWC));
        }
    }
    check("closed.regulator.force-balance", rows)
}

/// The textbook's spring: 10 in², 5 lbf/in, 10 lbf preload; 0.2 in of lift leaves 9 lbf.
fn spring_example() -> Check {
    let mut spec = parts(10.0, 0.0, 5.0, 0.1);
    spec.turns = 2.0 / 0.1;
    let mut rig = RegulatorRig::new(Gas::natural(), 10.0 * PA_PER_PSI, spec);
    let rows = [(0.0, 1.00), (0.1, 0.95), (0.2, 0.90), (0.4, 0.80)]
        .into_iter()
        .map(|(lift_in, psi)| {
            // The seat's own area at the wanted lift, with the flow that it passes there.
            let seat_m2 = spec.seat.area(lift_in * M_PER_IN).0;
            let law =
                crate::physics::orifice::OpeningLaw::new(&Gas::natural(), 288.705_555_555_555_6);
            let (up, out) = (10.0 * PA_PER_PSI, psi * PA_PER_PSI);
            let flow = law.flow(up - out, up + P_STD_PA, out + P_STD_PA).flow * seat_m2;
            let found = rig.draw(flow, out) / PA_PER_PSI;
            Row::new(t!("row-lift", lift_in = lift_in.to_string()), psi, found)
        })
        .collect();
    check("closed.regulator.spring-example", rows)
}

/// The textbook's inlet effect: 1 in² seat, 10 in² diaphragm, 19 lbf.
fn inlet_example() -> Check {
    let mut spec = parts(10.0, 1.0, 5.0, 0.1);
    spec.inlet_effect = InletEffect::Closes;
    spec.turns = 19.0 / 5.0 / 0.1;
    let regulator = Regulator::new(spec);
    let rows = [(10.0, 1.0), (11.0, 8.0 / 9.0), (8.0, 11.0 / 9.0)]
        .into_iter()
        .map(|(psi, outlet)| {
            let found = regulator.balance_pa(psi * PA_PER_PSI) / PA_PER_PSI;
            Row::new(t!("row-psi-inlet", psi = psi.to_string()), outlet, found)
        })
        .collect();
    check("closed.regulator.inlet-example", rows)
}

/// Three usual geometries: pressure per turn, droop over the travel, inlet effect.
fn screw_and_travel() -> Check {
    // Name; diaphragm, rate, pitch, travel, seat; set; in. w.c. per turn, droop, per cent of inlet.
    let cases = [
        (
            t!("row-small-valve-natural"),
            [2.0, 0.6, 1.0 / 32.0, 0.03, 0.01],
            3.5,
            [0.26, 0.25, 0.50],
        ),
        (
            t!("row-small-valve-propane"),
            [2.0, 1.6, 1.0 / 32.0, 0.03, 0.01],
            10.0,
            [0.69, 0.66, 0.50],
        ),
        (
            t!("row-second-stage-propane"),
            [12.0, 6.0, 1.0 / 24.0, 0.08, 0.03],
            11.0,
            [0.58, 1.11, 0.25],
        ),
    ];
    let mut rows = Vec::new();
    for (name, [diaphragm, rate, pitch, travel, seat], set, [turn, droop, inlet]) in cases {
        let mut spec = parts(diaphragm, seat, rate, pitch);
        let psi = set * PA_PER_INWC / PA_PER_PSI;
        spec.turns = psi * diaphragm / rate / pitch;
        let mut screwed = Regulator::new(spec);
        let before = screwed.balance_pa(0.0);
        screwed.set_turns(spec.turns + 1.0);
        let per_turn = (screwed.balance_pa(0.0) - before) / PA_PER_INWC;
        rows.push(Row::new(t!("row-turn", name = name), turn, per_turn));
        let relaxed = spec.spring.force_n((spec.turns * pitch - travel) * M_PER_IN);
        let fall = (before - relaxed / spec.diaphragm_area_m2) / PA_PER_INWC;
        rows.push(Row::new(t!("row-droop-over-travel", name = name), droop, fall));
        spec.inlet_effect = InletEffect::Opens;
        let pushed = Regulator::new(spec);
        let moved = pushed.balance_pa(1e4) - pushed.balance_pa(0.0);
        rows.push(Row::new(t!("row-per-100-inwc-of-inlet", name = name), inlet, moved / 100.0));
    }
    check("closed.regulator.geometry", rows)
}
