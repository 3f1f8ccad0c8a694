//! From JSON to a regulator: by its behaviour or by its parts.

use super::model::Setting;
use super::problem::{CaseFault, CaseProblem};
use super::read_element::{MAX_FLOW_M3_S, MAX_PRESSURE_PA};
use super::reader::{Fields, Measure};
use crate::physics::regulator::{Behaviour, InletEffect, RegulatorSpec, SeatProfile, Spring};

/// A regulator of an element.
pub(super) fn spec(
    fields: &mut Fields<'_>,
    setting: &Setting,
) -> Result<RegulatorSpec, CaseProblem> {
    match (fields.opt("behavior"), fields.opt("parts")) {
        (Some(spot), None) => {
            let mut own = spot.map()?;
            let wanted = behavior(&mut own, setting)?;
            own.finish()?;
            RegulatorSpec::from_behaviour(&wanted, &setting.gas, setting.ambient_pa).map_err(
                |error| {
                    let message = format!("no regulator behaves so: {error}");
                    spot.problem(CaseFault::Contradiction, message)
                },
            )
        }
        (None, Some(spot)) => {
            let mut own = spot.map()?;
            let spec = parts(&mut own)?;
            own.finish()?;
            Ok(spec)
        }
        _ => {
            let message = "a regulator has either `behavior` or `parts`";
            Err(fields.spot.problem(CaseFault::Contradiction, message))
        }
    }
}

fn behavior(fields: &mut Fields<'_>, setting: &Setting) -> Result<Behaviour, CaseProblem> {
    let mut pressure = |name: &str| fields.measured(name, Measure::Pressure, 1.0, MAX_PRESSURE_PA);
    let (set, lockup) = (pressure("set")?, pressure("lockup")?);
    let (droop, inlet) = (pressure("droop")?, pressure("inlet")?);
    let flow = Measure::Flow(setting.gas.density_std_kg_m3());
    let rated = fields.measured("rated_flow", flow, 1e-9, MAX_FLOW_M3_S)?;
    let base = Behaviour::new(set, lockup, droop, inlet, rated);
    let set_flow = fields.opt_measured("set_flow", flow, 1e-12, MAX_FLOW_M3_S)?;
    let wide = fields.opt_measured("wide_open_drop", Measure::Pressure, 1e-3, MAX_PRESSURE_PA)?;
    let turn = fields.opt_measured("per_turn", Measure::Pressure, 1e-3, MAX_PRESSURE_PA)?;
    let (seat_lag, preload_lag) = lags(fields)?;
    Ok(Behaviour {
        set_flow_std_m3_s: set_flow.unwrap_or(base.set_flow_std_m3_s),
        wide_open_drop_pa: wide.unwrap_or(base.wide_open_drop_pa),
        pa_per_turn: turn.unwrap_or(base.pa_per_turn),
        seat_lag_s: seat_lag.unwrap_or(base.seat_lag_s),
        preload_lag_s: preload_lag.unwrap_or(base.preload_lag_s),
        diaphragm_area_m2: fields
            .opt_measured("diaphragm", Measure::Area, 1e-6, 1.0)?
            .unwrap_or(base.diaphragm_area_m2),
        seat_area_m2: fields
            .opt_measured("seat", Measure::Area, 0.0, 0.01)?
            .unwrap_or(base.seat_area_m2),
        inlet_effect: inlet_effect(fields)?.unwrap_or(base.inlet_effect),
        ..base
    })
}

fn lags(fields: &mut Fields<'_>) -> Result<(Option<f64>, Option<f64>), CaseProblem> {
    let mut lag = |name: &str| fields.opt_measured(name, Measure::Time, 0.0, 60.0);
    Ok((lag("seat_lag")?, lag("preload_lag")?))
}

fn inlet_effect(fields: &mut Fields<'_>) -> Result<Option<InletEffect>, CaseProblem> {
    let Some(spot) = fields.opt("inlet_effect") else { return Ok(None) };
    Ok(Some(match spot.word(&["opens", "closes", "none"])? {
        0 => InletEffect::Opens,
        1 => InletEffect::Closes,
        _ => InletEffect::None,
    }))
}

fn parts(fields: &mut Fields<'_>) -> Result<RegulatorSpec, CaseProblem> {
    let mut length =
        |name: &str, low: f64, high: f64| fields.measured(name, Measure::Length, low, high);
    let (pitch_m, bind_m) = (length("pitch", 1e-5, 0.01)?, length("bind", 1e-5, 1.0)?);
    let (width_m, seal_m) = (length("width", 1e-6, 10.0)?, length("seal", 1e-9, 0.1)?);
    let (blend_m, max_lift_m) = (length("blend", 1e-12, 0.1)?, length("max_lift", 1e-7, 1.0)?);
    let rate_n_m = fields.need("spring_n_m")?.number(1e-3, 1e8)?;
    let max_turns = fields.need("max_turns")?.number(0.0, 1_000.0)?;
    let turns = fields.need("turns")?.number(0.0, max_turns)?;
    let toe_slope = fields.need("toe_slope")?.number(1e-6, 1.0)?;
    let diaphragm_area_m2 = fields.measured("diaphragm", Measure::Area, 1e-6, 1.0)?;
    let seat_area_m2 = fields.measured("seat", Measure::Area, 0.0, 0.5 * diaphragm_area_m2)?;
    let (seat_lag, preload_lag) = lags(fields)?;
    if blend_m > seal_m {
        let message = "`blend` is at most `seal`";
        return Err(fields.spot.problem(CaseFault::Contradiction, message));
    }
    Ok(RegulatorSpec {
        spring: Spring { rate_n_m, pitch_m, bind_m, max_turns },
        diaphragm_area_m2,
        seat_area_m2,
        inlet_effect: inlet_effect(fields)?.unwrap_or(InletEffect::Opens),
        seat: SeatProfile { width_m, seal_m, blend_m, toe_slope, max_lift_m },
        turns,
        seat_lag_s: seat_lag.unwrap_or(0.03),
        preload_lag_s: preload_lag.unwrap_or(0.0),
    })
}
