//! Gases, and what an element is: pipe, tubing, opening, valve, regulator.

use serde::Deserialize;
use serde_json::value::RawValue;

use super::figure::{Figure, Measure};
use super::model::{Part, RegulatorIn, Setting, What};
use super::place::{ByName, Place, object};
use super::problem::{CaseFault, CaseProblem};
use crate::physics::fluid::Gas;
use crate::physics::orifice::{cv_area_m2, drill_diameter_m, hole_area_m2};
use crate::physics::pipe::{
    Fitting, PipeMaterial, PipeSpec, TubingSpec, copper_tube_id_m, ehd_constants, schedule_40_id_m,
};
use crate::physics::regulator::{Behaviour, InletEffect, RegulatorSpec, SeatProfile, Spring};
use crate::physics::valve::{HandValveKind, HandValveLaw};
use crate::units::J_M3_PER_BTU_FT3;

use Measure::{Area, Count, Length, Plain, Pressure, Time};

/// Highest gauge pressure, in Pa (290 psi).
pub(super) const MAX_PRESSURE_PA: f64 = 2e6;
/// Largest standard flow, in m³/s.
pub(super) const MAX_FLOW_M3_S: f64 = 10.0;
/// Largest effective area, in m².
const MAX_AREA_M2: f64 = 0.1;

#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum GasName {
    Natural,
    Propane,
}

object! { GasFigures(_setting)
    must { specific_gravity: Plain, 0.05..=5.0; viscosity_pa_s: Plain, 1e-6..=1e-4; }
    may { gamma: Plain, 1.01..=1.7; heating_value_btu_ft3: Plain, 50.0..=5_000.0; }
}

/// A gas by name, or by what the model needs to know of it.
pub(super) fn gas(place: &Place<'_>, base: &Setting) -> Result<Gas, CaseProblem> {
    if !place.is_object() {
        return Ok(match place.read(&[])? {
            GasName::Natural => Gas::natural(),
            GasName::Propane => Gas::propane(),
        });
    }
    let own = GasFigures::read(place, base, &[])?;
    let base = if own.specific_gravity > 1.0 { Gas::propane() } else { Gas::natural() };
    let heat = own.heating_value_btu_ft3.map(|heat| heat * J_M3_PER_BTU_FT3);
    Ok(Gas {
        specific_gravity: own.specific_gravity,
        viscosity_pa_s: own.viscosity_pa_s,
        gamma: own.gamma.unwrap_or(base.gamma),
        heating_value_j_m3: heat.unwrap_or(base.heating_value_j_m3),
        ..base
    })
}

#[derive(Deserialize)]
struct Head {
    r#type: Type,
}

#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum Type {
    Pipe,
    Tubing,
    Opening,
    Valve,
    Regulator,
}

/// What an element is; fields that were read before are passed over.
pub(super) fn part(
    place: &Place<'_>,
    setting: &Setting,
    passed: &[&str],
) -> Result<Part, CaseProblem> {
    let head: Head = place.read(&[])?;
    let passed = &[passed, &["type"]].concat();
    Ok(match head.r#type {
        Type::Pipe => Part::Pipe(pipe(place, setting, passed)?),
        Type::Tubing => Part::Tubing(tubing(place, setting, passed)?),
        Type::Opening => Part::Opening(opening(place, setting, passed)?),
        Type::Valve => {
            let own = Valve::read(place, setting, passed)?;
            Part::Valve(HandValveLaw::new(own.style, own.bore), own.angle_deg)
        }
        Type::Regulator => Part::Regulator(Box::new(regulator(place, setting, passed)?)),
    })
}

object! { Pipe(_setting)
    must { length: Length, 1e-3..=1e5; }
    may {
        inside: Length, 1e-3..=0.5;
        roughness: Length, 0.0..=0.025;
        fittings: Length, 0.0..=1e5;
    }
    plain {
        material: Option<PipeMaterial>;
        nominal: Option<String>;
        #[serde(default)] fitting_count: ByName<Figure>;
    }
}

/// Fittings by the names that a case file has for them.
const FITTINGS: [(&str, Fitting); 5] = [
    ("elbow-45", Fitting::Elbow45),
    ("elbow-90", Fitting::Elbow90),
    ("return-bend", Fitting::ReturnBend),
    ("tee-branch", Fitting::TeeBranch),
    ("tee-run", Fitting::TeeRun),
];

fn pipe(place: &Place<'_>, setting: &Setting, passed: &[&str]) -> Result<PipeSpec, CaseProblem> {
    let own = Pipe::read(place, setting, passed)?;
    let nominal = |fault, message: &str| place.field("nominal").problem(fault, message);
    let missing = |message: &str| place.problem(CaseFault::Missing, message);
    let id_m = match (own.inside, own.nominal, own.material) {
        (Some(id_m), None, _) => Ok(id_m),
        (None, Some(size), Some(material)) => match material {
            PipeMaterial::Copper => copper_tube_id_m(&size),
            PipeMaterial::Steel | PipeMaterial::RustedSteel => schedule_40_id_m(&size),
        }
        .ok_or_else(|| nominal(CaseFault::Name, &t!("case-size-this-material", size = size))),
        (None, Some(_), None) => {
            Err(nominal(CaseFault::Missing, t!("case-nominal-size-needs-its")))
        }
        (Some(_), Some(_), _) => {
            Err(nominal(CaseFault::Contradiction, t!("case-nominal-inside-are-both")))
        }
        (None, None, _) => Err(missing(t!("case-inside-nominal-missing"))),
    }?;
    let roughness_m = own.roughness.or(own.material.map(PipeMaterial::roughness_m));
    let roughness_m = roughness_m.ok_or_else(|| missing(t!("case-roughness-material-missing")))?;
    if own.roughness.is_some_and(|roughness_m| roughness_m > 0.05 * id_m) {
        let message = t!("case-roughness-more-than-5");
        return Err(place.field("roughness").problem(CaseFault::OutOfRange, message));
    }
    let fittings_m = own.fittings.unwrap_or(0.0);
    let mut spec = PipeSpec { id_m, length_m: own.length, fittings_m, roughness_m };
    let place = place.field("fitting_count");
    for (name, figure) in own.fitting_count.0 {
        let Some((_, fitting)) = FITTINGS.iter().find(|(own, _)| *own == name) else {
            let message =
                t!("case-known-fittings-are", fittings = FITTINGS.map(|(own, _)| own).join(", "));
            return Err(place.field(&name).problem(CaseFault::Unknown, message));
        };
        // Within the range of the type.
        let count = place.si((&name, ""), &figure, Count, 0.0..=1e3)? as u32;
        spec = spec.with(*fitting, count);
    }
    Ok(spec)
}

object! { Tubing(_setting)
    must { ehd: Count, 0.0..=1e3; length: Length, 0.01..=1e4; }
    may { extra_fittings: Count, 0.0..=1e3; }
}

fn tubing(
    place: &Place<'_>,
    setting: &Setting,
    passed: &[&str],
) -> Result<TubingSpec, CaseProblem> {
    let own = Tubing::read(place, setting, passed)?;
    // Within the ranges of the types.
    let (ehd, extra_fittings) = (own.ehd as u16, own.extra_fittings.unwrap_or(0.0) as u32);
    if ehd_constants(ehd).is_none() {
        let message = t!("case-equivalent-hydraulic-diameter-published", ehd = ehd.to_string());
        return Err(place.field("ehd").problem(CaseFault::Name, message));
    }
    Ok(TubingSpec { ehd, length_m: own.length, extra_fittings })
}

object! { Opening(_setting)
    may {
        area: Area, 0.0..=MAX_AREA_M2;
        diameter: Length, 0.0..=0.3;
        cd: Plain, 0.01..=1.0;
        cv: Plain, 0.0..=2e3;
    }
    plain { drill: Option<String>; }
}

/// Effective area of an opening, in m².
fn opening(place: &Place<'_>, setting: &Setting, passed: &[&str]) -> Result<f64, CaseProblem> {
    let own = Opening::read(place, setting, passed)?;
    let drill = own.drill.map(|name| {
        drill_diameter_m(&name).ok_or_else(|| {
            let message = t!("case-drill-number-diameter", name = name);
            place.field("drill").problem(CaseFault::Name, message)
        })
    });
    match (own.area, own.diameter, drill.transpose()?, own.cv, own.cd) {
        (Some(area_m2), None, None, None, None) => Ok(area_m2),
        (None, Some(hole_m), None, None, Some(cd)) | (None, None, Some(hole_m), None, Some(cd)) => {
            Ok(hole_area_m2(cd, hole_m))
        }
        (None, None, None, Some(cv), None) => Ok(cv_area_m2(cv)),
        (None, Some(_), None, None, None) | (None, None, Some(_), None, None) => {
            Err(place.problem(CaseFault::Missing, t!("case-cd-missing")))
        }
        _ => {
            let message = t!("case-opening-area-diameter-cd");
            Err(place.problem(CaseFault::Contradiction, message))
        }
    }
}

object! { Valve(_setting)
    must { bore: Length, 1e-3..=0.2; angle_deg: Plain, 0.0..=90.0; }
    plain { style: HandValveKind; }
}

object! { RegulatorFields(setting)
    may {
        reference: Pressure, setting.lowest_pa()..=MAX_PRESSURE_PA;
        leak: Area, 0.0..=MAX_AREA_M2;
    }
    plain {
        #[serde(borrow)] behavior: Option<&'t RawValue>;
        #[serde(borrow)] parts: Option<&'t RawValue>;
    }
}

fn regulator(
    place: &Place<'_>,
    setting: &Setting,
    passed: &[&str],
) -> Result<RegulatorIn, CaseProblem> {
    let own = RegulatorFields::read(place, setting, passed)?;
    let spec = match (own.behavior, own.parts) {
        (Some(_), None) => behavior(&place.field("behavior"), setting)?,
        (None, Some(_)) => parts(&place.field("parts"), setting)?,
        (Some(_), Some(_)) | (None, None) => {
            let message = t!("case-regulator-either-behavior-parts");
            return Err(place.problem(CaseFault::Contradiction, message));
        }
    };
    let (reference_pa, leak_m2) = (own.reference.unwrap_or(0.0), own.leak.unwrap_or(0.0));
    Ok(RegulatorIn { spec, reference_pa, leak_m2 })
}

object! { Behavior(setting)
    must {
        set: Pressure, 1.0..=MAX_PRESSURE_PA;
        lockup: Pressure, 1.0..=MAX_PRESSURE_PA;
        droop: Pressure, 1.0..=MAX_PRESSURE_PA;
        inlet: Pressure, 1.0..=MAX_PRESSURE_PA;
        rated_flow: setting.flow(), 1e-9..=MAX_FLOW_M3_S;
    }
    may {
        set_flow: setting.flow(), 1e-12..=MAX_FLOW_M3_S;
        wide_open_drop: Pressure, 1e-3..=MAX_PRESSURE_PA;
        per_turn: Pressure, 1e-3..=MAX_PRESSURE_PA;
        seat_lag: Time, 0.0..=60.0;
        preload_lag: Time, 0.0..=60.0;
        diaphragm: Area, 1e-6..=1.0;
        seat: Area, 0.0..=0.01;
    }
    plain { inlet_effect: Option<InletEffect>; }
}

fn behavior(place: &Place<'_>, setting: &Setting) -> Result<RegulatorSpec, CaseProblem> {
    let own = Behavior::read(place, setting, &[])?;
    let base = Behaviour::new(own.set, own.lockup, own.droop, own.inlet, own.rated_flow);
    let wanted = Behaviour {
        set_flow_std_m3_s: own.set_flow.unwrap_or(base.set_flow_std_m3_s),
        wide_open_drop_pa: own.wide_open_drop.unwrap_or(base.wide_open_drop_pa),
        pa_per_turn: own.per_turn.unwrap_or(base.pa_per_turn),
        seat_lag_s: own.seat_lag.unwrap_or(base.seat_lag_s),
        preload_lag_s: own.preload_lag.unwrap_or(base.preload_lag_s),
        diaphragm_area_m2: own.diaphragm.unwrap_or(base.diaphragm_area_m2),
        seat_area_m2: own.seat.unwrap_or(base.seat_area_m2),
        inlet_effect: own.inlet_effect.unwrap_or(base.inlet_effect),
        ..base
    };
    RegulatorSpec::from_behaviour(&wanted, &setting.gas, setting.ambient_pa).map_err(|error| {
        place.problem(
            CaseFault::Contradiction,
            t!("case-regulator-behaves-so", error = error.to_string()),
        )
    })
}

object! { Parts(_setting)
    must {
        spring_n_m: Plain, 1e-3..=1e8;
        pitch: Length, 1e-5..=0.01;
        bind: Length, 1e-5..=1.0;
        turns: Plain, 0.0..=1e3;
        max_turns: Plain, 0.0..=1e3;
        diaphragm: Area, 1e-6..=1.0;
        seat: Area, 0.0..=0.5;
        width: Length, 1e-6..=10.0;
        seal: Length, 1e-9..=0.1;
        blend: Length, 1e-12..=0.1;
        toe_slope: Plain, 1e-6..=1.0;
        max_lift: Length, 1e-7..=1.0;
    }
    may { seat_lag: Time, 0.0..=60.0; preload_lag: Time, 0.0..=60.0; }
    plain { inlet_effect: Option<InletEffect>; }
}

fn parts(place: &Place<'_>, setting: &Setting) -> Result<RegulatorSpec, CaseProblem> {
    let own = Parts::read(place, setting, &[])?;
    for (field, fine, message) in [
        ("turns", own.turns <= own.max_turns, t!("case-turns-most-max-turns")),
        ("seat", own.seat <= 0.5 * own.diaphragm, t!("case-seat-most-half-diaphragm")),
    ] {
        if !fine {
            return Err(place.field(field).problem(CaseFault::OutOfRange, message));
        }
    }
    if own.blend > own.seal {
        return Err(place.problem(CaseFault::Contradiction, t!("case-blend-most-seal")));
    }
    Ok(RegulatorSpec {
        spring: Spring {
            rate_n_m: own.spring_n_m,
            pitch_m: own.pitch,
            bind_m: own.bind,
            max_turns: own.max_turns,
        },
        diaphragm_area_m2: own.diaphragm,
        seat_area_m2: own.seat,
        inlet_effect: own.inlet_effect.unwrap_or(InletEffect::Opens),
        seat: SeatProfile {
            width_m: own.width,
            seal_m: own.seal,
            blend_m: own.blend,
            toe_slope: own.toe_slope,
            max_lift_m: own.max_lift,
        },
        turns: own.turns,
        seat_lag_s: own.seat_lag.unwrap_or(0.03),
        preload_lag_s: own.preload_lag.unwrap_or(0.0),
    })
}

object! { Angle(_setting)
    must { angle_deg: Plain, 0.0..=90.0; }
}

object! { Screw(_setting)
    may { turns: Plain, 0.0..=1e3; reference: Pressure, -1e5..=MAX_PRESSURE_PA; }
}

/// What changes at the element of this index.
pub(super) fn change_of(
    place: &Place<'_>,
    setting: &Setting,
    (part, index): (&Part, usize),
    passed: &[&str],
) -> Result<What, CaseProblem> {
    let wrong = |message: &str| Err(place.problem(CaseFault::Contradiction, message));
    match part {
        Part::Opening(_) => Ok(What::Area(index, opening(place, setting, passed)?)),
        Part::Valve(valve, _) => {
            let own = Angle::read(place, setting, passed)?;
            Ok(What::Area(index, valve.cd_area_m2(own.angle_deg)))
        }
        Part::Regulator(_) => {
            let own = Screw::read(place, setting, passed)?;
            match (own.turns, own.reference) {
                (Some(turns), None) => Ok(What::Turns(index, turns)),
                (None, Some(pa)) => Ok(What::Reference(index, pa)),
                (Some(_), Some(_)) | (None, None) => wrong(t!("case-regulator-changes-either-its")),
            }
        }
        Part::Pipe(_) | Part::Tubing(_) => wrong(t!("case-nothing-can-change-pipe")),
    }
}
