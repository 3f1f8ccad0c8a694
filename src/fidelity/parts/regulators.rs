//! Regulators of the supply and of appliances: droop, lock-up, inlet effect, starvation, springs at
//! their ends.

use super::bench::setup;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::fidelity::closed::rig::RegulatorRig;
use crate::physics::fluid::Gas;
use crate::physics::orifice::{OpeningLaw, area_for_flow_m2};
use crate::physics::regulator::{Behaviour, RegulatorSpec};
use crate::units::{P_STD_PA, PA_PER_INWC, PA_PER_PSI, T_STD_K};
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    vec![droop(), droop_line(), lock_up(), inlet_effect(), starved(), screw_ends()]
}

/// Rated flow of the second stage, in standard m³/s (about 380,000 Btu/h of propane).
const RATED: f64 = 1.2e-3;

/// The usual propane second stage: 11 in. w.c. at little flow and 10 psi, 9 in. at rated flow.
fn second_stage() -> Behaviour {
    let inwc = PA_PER_INWC;
    let usual = Behaviour::new(11.0 * inwc, 12.6 * inwc, 2.0 * inwc, 10.0 * PA_PER_PSI, RATED);
    Behaviour { seat_area_m2: 0.0025 * usual.diaphragm_area_m2, ..usual }
}

/// A line regulator for natural gas, 2 psi to 7 in. w.c.
fn line() -> Behaviour {
    let inwc = PA_PER_INWC;
    let usual = Behaviour::new(7.0 * inwc, 8.0 * inwc, 0.8 * inwc, 2.0 * PA_PER_PSI, RATED);
    Behaviour { seat_area_m2: 0.0025 * usual.diaphragm_area_m2, ..usual }
}

/// An appliance regulator, 7 to 3.5 in. w.c.
fn appliance() -> Behaviour {
    let inwc = PA_PER_INWC;
    let usual = Behaviour::new(3.5 * inwc, 4.0 * inwc, 0.15 * inwc, 7.0 * inwc, 6e-4);
    Behaviour { wide_open_drop_pa: 0.9 * inwc, ..usual }
}

fn kinds() -> [(&'static str, Gas, Behaviour); 3] {
    [
        (t!("row-second-stage-propane-11"), Gas::propane(), second_stage()),
        (t!("row-line-regulator-natural-gas"), Gas::natural(), line()),
        (t!("row-appliance-regulator-natural-gas"), Gas::natural(), appliance()),
    ]
}

fn droop() -> Check {
    let mut rows = Vec::new();
    if let Some(mut rig) = RegulatorRig::behaving(Gas::propane(), &second_stage()) {
        for (share, inwc) in [(0.1, 11.0), (1.0, 9.0)] {
            let found = rig.draw(share * RATED, inwc * PA_PER_INWC) / PA_PER_INWC;
            let label = t!("row-rated-flow", percent = decimal(100.0 * share, 0));
            rows.push(Row::new(label, inwc, found).on("", 100.0 * share));
        }
    }
    check("parts.regulator.second-stage-droop", rows)
}

/// Between set point and rated flow the outlet falls in a straight line.
fn droop_line() -> Check {
    let mut rows = Vec::new();
    for (name, gas, wanted) in kinds() {
        let Some(mut rig) = RegulatorRig::behaving(gas, &wanted) else { continue };
        for share in [0.25, 0.5, 0.75, 1.0] {
            let fall = (share - 0.1) / 0.9 * wanted.droop_pa;
            let line = wanted.set_pa - fall;
            let found = rig.draw(share * wanted.rated_flow_std_m3_s, line);
            let label = t!("row-name-rated-flow", name = name, percent = decimal(100.0 * share, 0));
            let percent = |pa: f64| 100.0 * (wanted.set_pa - pa) / wanted.droop_pa;
            rows.push(Row::new(label, percent(line), percent(found)).on(name, 100.0 * share));
        }
    }
    check("parts.regulator.droop-line", rows)
}

fn lock_up() -> Check {
    let mut rows = Vec::new();
    for (name, gas, wanted) in kinds() {
        // Limits of the kinds, in per cent of the set point.
        let limit = if wanted.set_pa < 4.0 * PA_PER_INWC { 150.0 } else { 120.0 };
        for inlet in [1.0, 1.3] {
            let Some(mut rig) = RegulatorRig::behaving(gas, &wanted) else { continue };
            rig.set_inlet(inlet * wanted.inlet_pa);
            rig.draw(wanted.rated_flow_std_m3_s, wanted.set_pa - wanted.droop_pa);
            let found = 100.0 * rig.lock_up() / wanted.set_pa;
            let label = t!("row-inlet-normal", name = name, percent = decimal(100.0 * inlet, 0));
            rows.push(Row::new(label, limit, found));
        }
    }
    for (id, name) in [
        ("healthy-natural", t!("row-healthy-bench-natural-gas")),
        ("healthy-propane", t!("row-healthy-bench-propane")),
    ] {
        if let Some(setup) = setup(id) {
            let found = 100.0 * setup.supply.lockup_pa / setup.supply.set_pa;
            rows.push(Row::new(t!("row-supply-as-set", name = name), 120.0, found));
        }
    }
    check("parts.regulator.lock-up", rows)
}

/// How much the outlet moves with the inlet, at a steady load.
fn inlet_effect() -> Check {
    let mut rows = Vec::new();
    for (name, gas, wanted, inlets) in [
        (t!("row-second-stage-5-10"), Gas::propane(), second_stage(), [5.0, 10.0]),
        (t!("row-line-regulator-1-2"), Gas::natural(), line(), [1.0, 2.0]),
        (t!("row-appliance-regulator-5-10"), Gas::natural(), appliance(), [0.1804, 0.3790]),
    ] {
        let Some(mut rig) = RegulatorRig::behaving(gas, &wanted) else { continue };
        let outlets = inlets.map(|psi| {
            rig.set_inlet(psi * PA_PER_PSI);
            rig.draw(0.6 * wanted.rated_flow_std_m3_s, wanted.set_pa)
        });
        let moved = 100.0 * (outlets[1] - outlets[0]).abs() / wanted.set_pa;
        rows.push(Row::new(name, 10.0, moved));
    }
    check("parts.regulator.inlet-effect", rows)
}

/// Outlet behind a wide-open seat: two holes in a row.
fn behind_open_seat(spec: &RegulatorSpec, load_m2: f64, inlet_pa: f64) -> f64 {
    let seat_m2 = spec.seat.area(spec.seat.max_lift_m).0;
    let (seat, load) = (seat_m2 * seat_m2, load_m2 * load_m2);
    inlet_pa * seat / (seat + load)
}

/// The load that draws `flow` at `pa`, in m².
fn load_m2(gas: &Gas, flow: f64, pa: f64) -> f64 {
    area_for_flow_m2(&OpeningLaw::new(gas, T_STD_K), flow, pa, 0.0, P_STD_PA)
}

fn starved() -> Check {
    let wanted = appliance();
    let mut rows = Vec::new();
    if let Ok(spec) = RegulatorSpec::from_behaviour(&wanted, &Gas::natural(), P_STD_PA) {
        let mut rig = RegulatorRig::new(Gas::natural(), wanted.inlet_pa, spec);
        let outlet = wanted.set_pa - wanted.droop_pa;
        let load = load_m2(&Gas::natural(), wanted.rated_flow_std_m3_s, outlet);
        for inwc in [3.5, 3.0, 2.0, 1.0] {
            rig.set_inlet(inwc * PA_PER_INWC);
            let found = rig.draw(wanted.rated_flow_std_m3_s, outlet) / PA_PER_INWC;
            let by_hand = behind_open_seat(&spec, load, inwc);
            rows.push(
                Row::new(t!("row-inlet-inwc", inwc = inwc.to_string()), by_hand, found)
                    .on("", inwc),
            );
        }
    }
    check("parts.regulator.starved", rows)
}

fn screw_ends() -> Check {
    let wanted = appliance();
    let mut rows = Vec::new();
    if let Ok(spec) = RegulatorSpec::from_behaviour(&wanted, &Gas::natural(), P_STD_PA) {
        let outlet = wanted.set_pa - wanted.droop_pa;
        let load = load_m2(&Gas::natural(), wanted.rated_flow_std_m3_s, outlet);
        for inwc in [7.0, 9.0, 10.5] {
            let mut rig = RegulatorRig::new(Gas::natural(), inwc * PA_PER_INWC, spec);
            if let Some(regulator) = rig.network.regulator_mut(rig.regulator) {
                regulator.set_turns(spec.spring.max_turns);
                regulator.settle_preload();
            }
            let found = rig.draw(wanted.rated_flow_std_m3_s, outlet) / PA_PER_INWC;
            let by_hand = behind_open_seat(&spec, load, inwc);
            rows.push(Row::new(t!("row-bottomed-inlet", inwc = inwc.to_string()), by_hand, found));
            if let Some(regulator) = rig.network.regulator_mut(rig.regulator) {
                regulator.set_turns(0.0);
                regulator.settle_preload();
            }
            let found = rig.draw(wanted.rated_flow_std_m3_s, outlet) / PA_PER_INWC;
            rows.push(Row::new(t!("row-fully-out-inlet", inwc = inwc.to_string()), 0.0, found));
        }
    }
    check("parts.regulator.screw-ends", rows)
}
