//! Curves that must rise, or fall, all the way.

use crate::appliance::burner::{BurnerIn, Burners};
use crate::appliance::draft::Draft;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::fidelity::closed::rig::{RegulatorRig, flow_between};
use crate::parts::Levels;
use crate::physics::combustion::{efficiency, excess_air_from_o2, flue_gas};
use crate::physics::fluid::Gas;
use crate::physics::orifice::hole_area_m2;
use crate::physics::pipe::{PipeMaterial, PipeSpec, TubingSpec};
use crate::physics::regulator::{Behaviour, RegulatorSpec};
use crate::physics::room::dilute;
use crate::physics::valve::{HandValveKind, HandValveLaw};
use crate::site::tank::vapour_abs_pa;
use crate::units::{P_STD_PA, PA_PER_INWC, TICK_S};

pub(super) fn checks() -> Vec<Check> {
    vec![flows(), parts(), flames()]
}

/// The largest step the wrong way on a curve that should rise over `count` points between two
/// values, as a share of its whole rise.
fn fall(lower: f64, upper: f64, count: u32, curve: impl FnMut(f64) -> f64) -> f64 {
    let at = |k: u32| lower + (upper - lower) * f64::from(k) / f64::from(count);
    let points: Vec<f64> = (0..=count).map(at).map(curve).collect();
    let (Some(first), Some(last)) = (points.first(), points.last()) else { return f64::NAN };
    let back = points.windows(2).map(|pair| pair[0] - pair[1]).fold(0.0, f64::max);
    back / (last - first)
}

const DIGITS: f64 = 1e-12;

fn row(name: &str, fall: f64) -> Row {
    // A curve that does not rise at all gives no number, which is no pass.
    Row::new(name, DIGITS, fall)
}

/// Flow against pressure, by every kind of link.
fn flows() -> Check {
    let mut rows = Vec::new();
    for (name, gas) in [(t!("row-natural-gas"), Gas::natural()), ("propane", Gas::propane())] {
        let steel = PipeSpec::new(PipeMaterial::Steel, 0.0158, 12.0);
        let rusted = PipeSpec::new(PipeMaterial::RustedSteel, 0.0158, 12.0);
        let tubing = TubingSpec { ehd: 18, length_m: 12.0, extra_fittings: 0 };
        for (what, top) in [(t!("row-low-pressure"), 3_500.0), (t!("row-medium-pressure"), 1.4e5)] {
            let hole = |pa| flow_between(gas, [pa, 0.0], |b, from, to| b.opening(from, to, 1e-5));
            rows.push(row(
                &t!("row-hole-gas", name = name, what = what),
                fall(-top, top, 600, hole),
            ));
            for (kind, spec) in [("steel", steel), (t!("row-rusted-steel"), rusted)] {
                let curve = spec.curve(&gas, 288.7);
                let label = format!("{kind}, {name}, {what}");
                rows.push(row(&label, fall(-top, top, 3_000, |pa| curve.flow(pa).0)));
            }
            if let Some(curve) = tubing.curve(&gas, 288.7) {
                let label = t!("row-tubing", name = name, what = what);
                rows.push(row(&label, fall(-top, top, 3_000, |pa| curve.flow(pa).0)));
            }
        }
        let rate = |inwc: f64| {
            let ends = [inwc * PA_PER_INWC, 0.0];
            flow_between(gas, ends, |b, from, to| b.opening(from, to, hole_area_m2(0.87, 2e-3)))
        };
        rows.push(row(&t!("row-rate-against-manifold", name = name), fall(0.0, 14.0, 400, rate)));
    }
    check("invariants.curves.flow", rows)
}

/// Curves of single parts.
fn parts() -> Check {
    let inwc = PA_PER_INWC;
    let wanted = Behaviour::new(3.5 * inwc, 4.0 * inwc, 0.15 * inwc, 7.0 * inwc, 6e-4);
    let mut rows = Vec::new();
    if let Ok(spec) = RegulatorSpec::from_behaviour(&wanted, &Gas::natural(), P_STD_PA) {
        let (lower, upper) = (-2.0 * spec.seat.seal_m, spec.seat.max_lift_m);
        rows.push(row(
            t!("row-seat-area-against-lift"),
            fall(lower, upper, 2_000, |lift| spec.seat.area(lift).0),
        ));
        let most = spec.spring.max_turns * spec.spring.pitch_m;
        rows.push(row(
            t!("row-spring-force-against-screw"),
            fall(0.0, most, 2_000, |m| spec.spring.force_n(m)),
        ));
        let mut rig = RegulatorRig::new(Gas::natural(), wanted.inlet_pa, spec);
        let droop =
            fall(0.02, 1.6, 40, |share| -rig.draw(share * wanted.rated_flow_std_m3_s, 3.4 * inwc));
        rows.push(row(t!("row-outlet-falling-against-load"), droop));
        let mut rig = RegulatorRig::new(Gas::natural(), wanted.inlet_pa, spec);
        let inlet = fall(2.0, 14.0, 40, |inlet| {
            rig.set_inlet(inlet * inwc);
            rig.draw(0.6 * wanted.rated_flow_std_m3_s, 3.4 * inwc)
        });
        rows.push(row(t!("row-outlet-against-inlet"), inlet));
        let mut rig = RegulatorRig::new(Gas::natural(), wanted.inlet_pa, spec);
        let screwed = fall(0.0, spec.spring.max_turns, 40, |turns| {
            if let Some(regulator) = rig.network.regulator_mut(rig.regulator) {
                regulator.set_turns(turns);
            }
            rig.draw(0.6 * wanted.rated_flow_std_m3_s, 3.4 * inwc)
        });
        rows.push(row(t!("row-outlet-against-screw"), screwed));
    }
    for (name, kind) in [
        (t!("row-ball-valve"), HandValveKind::Ball),
        (t!("row-plug-cock"), HandValveKind::PlugCock),
    ] {
        let valve = HandValveLaw::new(kind, 0.0158);
        rows.push(row(
            &t!("row-area-against-handle", name = name),
            fall(0.0, 90.0, 900, |deg| valve.cd_area_m2(deg)),
        ));
    }
    rows.push(row(
        t!("row-vapour-pressure-against-temperature"),
        fall(222.0, 328.0, 2_000, vapour_abs_pa),
    ));
    let leak = |l_s: f64| dilute(0.0, 0.0, l_s * 1e-3 / 30.0, 0.5 / 3_600.0, 1_800.0);
    rows.push(row(t!("row-gas-room-against-leak"), fall(0.0, 1.0, 200, leak)));
    let draft = |inducer: f64| Draft { vent_blocked: 0.2, ..Draft::default() }.pressure_pa(inducer);
    rows.push(row(t!("row-draft-against-inducer-speed"), fall(0.0, 1.0, 200, draft)));
    let clear = |free: f64| Draft { vent_blocked: 1.0 - free, ..Draft::default() }.air_share();
    rows.push(row(t!("row-air-against-free-vent"), fall(0.02, 1.0, 200, clear)));
    check("invariants.curves.parts", rows)
}

/// Curves of burning: carbon monoxide, oxygen and the rest against excess air.
fn flames() -> Check {
    let mut rows = Vec::new();
    for (name, gas) in [(t!("row-natural-gas"), Gas::natural()), ("propane", Gas::propane())] {
        let co = |excess: f64| -flue_gas(&gas, excess).co_air_free_ppm;
        rows.push(row(
            &t!("row-carbon-monoxide-falling-air", name = name),
            fall(-0.2, 1.5, 700, co),
        ));
        let o2 = |excess: f64| flue_gas(&gas, excess).o2;
        rows.push(row(&t!("row-oxygen-against-air", name = name), fall(0.0, 2.0, 400, o2)));
        let co2 = |excess: f64| -flue_gas(&gas, excess).co2;
        rows.push(row(
            &t!("row-carbon-dioxide-falling-air", name = name),
            fall(0.0, 2.0, 400, co2),
        ));
        let back = |o2: f64| excess_air_from_o2(&gas, o2);
        rows.push(row(
            &t!("row-excess-air-against-oxygen", name = name),
            fall(0.0, 0.18, 400, back),
        ));
        let hot = |flue_k: f64| -efficiency(&gas, 0.4, flue_k);
        rows.push(row(
            &t!("row-efficiency-falling-flue", name = name),
            fall(310.0, 600.0, 400, hot),
        ));
        let airy = |excess: f64| -efficiency(&gas, excess, 450.0);
        rows.push(row(&t!("row-efficiency-falling-air", name = name), fall(0.0, 2.0, 400, airy)));
        let rated = 6e-4;
        let levels = Levels::two(0.7 * rated, rated);
        let mut burners = Burners::new(&[2.2e-3; 4], levels, 17.0);
        let mut burn = |ticks: u32, flow_m3_s: f64, igniter: bool| {
            for _ in 0..ticks {
                burners.step(TICK_S, &gas, &BurnerIn { flow_m3_s, igniter, inducer: 1.0 });
            }
            (burners.input_w(), burners.flame_ua())
        };
        burn(900, 0.0, true);
        burn(150, rated, true);
        let heat = fall(0.3, 1.3, 100, |load| burn(2, load * rated, false).0);
        rows.push(row(&t!("row-heat-against-gas", name = name), heat));
        burn(150, 0.3 * rated, true);
        let current = fall(0.3, 1.3, 100, |load| burn(2, load * rated, false).1);
        rows.push(row(&t!("row-flame-current-against-gas", name = name), current));
    }
    check("invariants.curves.flame", rows)
}
