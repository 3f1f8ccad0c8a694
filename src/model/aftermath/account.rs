//! Keeps account of what goes on after a job.
//!
//! **Source.** Alarm at a tenth of the lower limit, as the bench's own; smelt by anyone at a fifth, the
//! legal bound (49 CFR 192.625).
//! **Checked.** `tests/core/bench/aftermath.rs`.

use super::report::{
    Aftermath, FurnaceAftermath, GasAftermath, HouseAftermath, MOST_CHANGES, RoomAftermath,
    TankAftermath,
};
use crate::appliance::ignition::ControlState;
use crate::model::state::Model;
use crate::parts::{Level, OtherAppliance, Port};
use crate::units::k_from_f;

/// Share of the lower limit at which a gas alarm sounds.
pub(crate) const ALARM_SHARE: f64 = 0.1;
/// Share of the lower limit at which anyone smells it.
pub(crate) const SMELT_SHARE: f64 = 0.2;
/// Time after a change of stage from which a manifold pressure counts, in seconds.
const SETTLED_S: f64 = 30.0;
/// How far below the setpoint a house counts as cold, in kelvins.
const COLD_K: f64 = 2.0;

/// The sums so far, and the state that the last look found.
#[derive(Debug, Clone)]
pub(crate) struct Account {
    report: Aftermath,
    inside_k: f64,
    control: ControlState,
    firing: Option<Level>,
    since_s: f64,
    ran: bool,
}

impl Account {
    pub(crate) fn new(model: &Model) -> Self {
        let level = model.gas.tank().map(crate::site::tank::Tank::level);
        let mut account = Self {
            report: Aftermath {
                seconds: 0.0,
                furnace: FurnaceAftermath::default(),
                gas: GasAftermath::default(),
                room: RoomAftermath::default(),
                house: HouseAftermath::default(),
                tank: level.map(|level| TankAftermath {
                    level_before: level,
                    level_after: level,
                    lowest_pa: f64::INFINITY,
                }),
                changes: Vec::new(),
            },
            inside_k: model.house.inside_k(),
            control: model.furnace.control_state(),
            firing: model.firing(),
            since_s: 0.0,
            ran: model.firing().is_some(),
        };
        account.see(model, 0.0);
        account
    }

    /// Whether there is nothing more to account for.
    pub(crate) fn is_over(&self) -> bool {
        self.report.room.ignition_s.is_some()
    }

    /// Takes in the state after `dt_s` more.
    pub(crate) fn see(&mut self, model: &Model, dt_s: f64) {
        self.report.seconds += dt_s;
        self.see_furnace(model, dt_s);
        self.see_gas(model, dt_s);
        self.see_room(model);
        let inside_k = model.house.inside_k();
        let setpoint_k = k_from_f(f64::from(model.things.setpoint_half_f) / 2.0);
        let house = &mut self.report.house;
        house.inside_k.see(inside_k);
        // The temperature goes straight through a stride.
        let line_k = setpoint_k - COLD_K;
        let (lower_k, upper_k) = (inside_k.min(self.inside_k), inside_k.max(self.inside_k));
        let below = if upper_k > lower_k {
            (line_k - lower_k) / (upper_k - lower_k)
        } else {
            f64::from(u8::from(lower_k < line_k))
        };
        house.cold_s += below.clamp(0.0, 1.0) * dt_s;
        self.inside_k = inside_k;
        if let (Some(report), Some(tank)) = (&mut self.report.tank, model.gas.tank()) {
            report.lowest_pa = report.lowest_pa.min(tank.pressure_pa());
        }
    }

    fn see_furnace(&mut self, model: &Model, dt_s: f64) {
        let furnace = &mut self.report.furnace;
        let firing = model.firing();
        self.since_s += dt_s;
        if firing != self.firing {
            furnace.runs += u32::from(self.firing.is_none());
            self.ran = true;
            self.firing = firing;
            self.since_s = 0.0;
        }
        if let Some(level) = firing {
            furnace.lit_s += dt_s;
            furnace.level_s[level] += dt_s;
        }
        furnace.heat_j += model.furnace.input_w() * dt_s;
        furnace.co_air_free_ppm = furnace.co_air_free_ppm.max(model.furnace.co_air_free_ppm());
        let control = model.furnace.control_state();
        if control == self.control {
            return;
        }
        self.control = control;
        match control {
            ControlState::Retry => furnace.retries += 1,
            ControlState::Lockout => furnace.lockouts += 1,
            ControlState::LimitOpen => furnace.limits += 1,
            ControlState::RolloutOpen => furnace.rollouts += 1,
            ControlState::Standby => {
                furnace.cycles += u32::from(core::mem::take(&mut self.ran));
            }
            ControlState::InducerStart
            | ControlState::PressureSwitchProving
            | ControlState::PrePurge
            | ControlState::IgniterWarmUp
            | ControlState::TrialForIgnition
            | ControlState::FlameProving
            | ControlState::BlowerOnDelay
            | ControlState::Burning(_)
            | ControlState::NextLevelCall
            | ControlState::InducerUp
            | ControlState::NextSwitchProving
            | ControlState::PostPurge
            | ControlState::BlowerOffDelay => {}
        }
        if self.report.changes.len() < MOST_CHANGES {
            self.report.changes.push((self.report.seconds, control));
        }
    }

    fn see_gas(&mut self, model: &Model, dt_s: f64) {
        let gas = &mut self.report.gas;
        gas.drawn_m3 += model.gas.supply_flow().max(0.0) * dt_s;
        gas.escaped_m3 += model.gas.escaping() * dt_s;
        gas.supply_pa.see(model.gas.supply_pa());
        gas.inlet_pa.see(model.gas.pressure_pa(Port::Inlet));
        let manifold_pa = model.gas.pressure_pa(Port::Manifold);
        if self.since_s >= SETTLED_S
            && let Some(level) = self.firing
        {
            gas.manifold_pa[level].see(manifold_pa);
        }
        for &appliance in OtherAppliance::ALL {
            gas.went_out[appliance] |= model.guard_dropped(appliance);
        }
    }

    fn see_room(&mut self, model: &Model) {
        let at_s = self.report.seconds;
        let room = &mut self.report.room;
        let shares = model.room.fractions().map(|fraction| model.room.of_lower_limit(fraction));
        let [vestibule, floor, breathing] = shares;
        let most = &mut room.most_of_lower_limit;
        most.vestibule = most.vestibule.max(vestibule);
        most.floor = most.floor.max(floor);
        most.breathing = most.breathing.max(breathing);
        if breathing >= ALARM_SHARE {
            room.alarm_s.get_or_insert(at_s);
        }
        if breathing >= SMELT_SHARE {
            room.smelt_s.get_or_insert(at_s);
        }
        if model.would_ignite() {
            room.ignition_s.get_or_insert(at_s);
        }
    }

    /// The account as it stands.
    pub(crate) fn close(mut self, model: &Model) -> Aftermath {
        self.report.house.end_k = model.house.inside_k();
        if let (Some(report), Some(tank)) = (&mut self.report.tank, model.gas.tank()) {
            report.level_after = tank.level();
        }
        self.report
    }
}
