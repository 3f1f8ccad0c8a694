//! The night after, as the model goes on from how the job was left with nobody at it.

use super::super::grounds::MOST_CO_PPM;
use super::super::ledger::Ledger;
use super::moment::ppm_words;
use crate::model::aftermath::Aftermath;
use crate::parts::OtherAppliance;
use crate::units::{M3_PER_FT3, f_from_k};
use crate::words::decimal;

/// How long the night is, in seconds.
pub const NIGHT_S: f64 = 12.0 * 3600.0;
/// Time below the setpoint from which a house is told as cold, in seconds.
const COLD_S: f64 = 1800.0;
/// Gas that is told as escaped, in standard m³ (a tenth of a cubic foot).
const ESCAPED_M3: f64 = 0.1 * M3_PER_FT3;
/// Carbon monoxide in the flue that is told, in parts per million air-free: at light-up a sound
/// furnace gives some for a moment.
const CO_PPM: f64 = MOST_CO_PPM;

/// What the night brought, a sentence each, the worst first.
pub(super) fn night(l: &Ledger, after: &Aftermath) -> Vec<String> {
    let mut told = Vec::new();
    told.extend(gas(after));
    // Nobody is told that a furnace that is shut off gives no heat.
    if l.said_shut_off() {
        return told;
    }
    let furnace = &after.furnace;
    if furnace.rollouts > 0 {
        told.push(t!("night-roll-out", times = usize_of(furnace.rollouts)));
    }
    if furnace.co_air_free_ppm > CO_PPM {
        told.push(t!("night-carbon-monoxide", ppm = ppm_words(furnace.co_air_free_ppm)));
    }
    if furnace.lockouts > 0 {
        told.push(t!("night-lockouts", times = usize_of(furnace.lockouts)));
    }
    if furnace.limits > 0 {
        told.push(t!("night-limits", times = usize_of(furnace.limits)));
    }
    let end_f = decimal(f_from_k(after.house.end_k), 0);
    if after.house.cold_s > COLD_S {
        let set_f = l.left().map_or(0.0, |(_, _, left)| f64::from(left.setpoint_half_f) / 2.0);
        let hours = decimal(after.house.cold_s / 3600.0, 1);
        told.push(t!("night-cold", inside = &end_f, set = decimal(set_f, 1), hours = hours));
    }
    told.extend(
        OtherAppliance::ALL
            .iter()
            .filter(|it| after.gas.went_out[**it])
            .map(|it| t!("night-went-out", appliance = it.label())),
    );
    if told.is_empty() {
        let cycles = usize_of(furnace.cycles);
        told.push(t!("night-sound", cycles = cycles, inside = end_f));
    }
    told
}

/// Gas that came out, and whether it met a flame.
fn gas(after: &Aftermath) -> Vec<String> {
    let mut told = Vec::new();
    if let Some(seconds) = after.room.ignition_s {
        told.push(t!("night-ignition", minutes = decimal(seconds / 60.0, 0)));
    }
    if after.gas.escaped_m3 > ESCAPED_M3 {
        let most = after.room.most_of_lower_limit.iter().fold(0.0, f64::max);
        told.push(t!(
            "night-gas",
            gas = decimal(after.gas.escaped_m3 / M3_PER_FT3, 1),
            share = decimal(100.0 * most, 1)
        ));
    }
    if let Some(seconds) = after.room.alarm_s {
        told.push(t!("night-alarm", minutes = decimal(seconds / 60.0, 0)));
    }
    told
}

fn usize_of(count: u32) -> usize {
    usize::try_from(count).unwrap_or(usize::MAX)
}
