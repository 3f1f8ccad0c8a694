//! Strides: as long as nothing happens, and no longer.
//!
//! **Source.** No physical figures; lengths and bounds of a stride are our own.
//! **Checked.** `tests/core/bench/aftermath.rs`.

use super::account::{ALARM_SHARE, SMELT_SHARE};
use crate::appliance::ignition::ControlState;
use crate::model::furnace::Contacts;
use crate::model::state::Model;
use crate::model::step::{SLOW_S, SLOW_TICKS};
use crate::parts::{Level, OtherAppliance, Port};
use crate::physics::room::Zone;
use crate::units::TICK_S;
use enum_map::EnumMap;

/// Ticks that follow everything that happened, one by one, before strides begin again: a second.
const ALERT_TICKS: u64 = 50;
/// Longest stride, in ticks: a minute.
const LONGEST: u64 = 3_000;
/// Largest move of a pressure in one stride, in pascals.
const MOVED_PA: f64 = 1.0;
/// Largest change of the heat input in one stride, as a share of the plate's.
const MOVED_INPUT: f64 = 1e-3;
/// Largest change of a fan's speed in one stride.
const MOVED_FAN: f64 = 0.02;

/// How far one dares to go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Reach {
    /// Ticks to take one by one first.
    alert: u64,
    /// Length of the next stride, in ticks; a multiple of [`SLOW_TICKS`].
    stride: u64,
}

impl Default for Reach {
    fn default() -> Self {
        Self { alert: ALERT_TICKS, stride: SLOW_TICKS }
    }
}

/// Everything that is one way or another, and matters.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Signs {
    control: ControlState,
    firing: Option<Level>,
    lit: usize,
    contacts: Contacts,
    ignites: bool,
    air: Air,
}

/// The part of it that can change while the gas flows on as it does.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Air {
    calls: (bool, bool),
    guards: EnumMap<OtherAppliance, bool>,
    danger: Danger,
    limit_moves: bool,
}

/// Where the air could burn, and what would be told of it.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Danger {
    floor: bool,
    breathing: bool,
    vestibule: bool,
    alarm: bool,
    smelt: bool,
}

/// What must not move far.
#[derive(Debug, Clone, Copy)]
struct Measures {
    pressures_pa: [f64; 3],
    input: f64,
    fans: [f64; 2],
}

impl Model {
    /// Goes on by one tick or one stride, not beyond `end`; returns the ticks that passed.
    pub(crate) fn go_on(&mut self, reach: &mut Reach, end: u64) -> u64 {
        let off_beat = !self.tick.is_multiple_of(SLOW_TICKS);
        if reach.alert > 0 || off_beat || self.is_busy() || end - self.tick < SLOW_TICKS {
            reach.alert = reach.alert.saturating_sub(1);
            let before = self.signs();
            let passed = self.plain_tick();
            if self.signs() != before {
                *reach = Reach::default();
            }
            return passed;
        }
        loop {
            let room = (end - self.tick) / SLOW_TICKS * SLOW_TICKS;
            let before = self.clone();
            let passed = self.stride(reach.stride.min(room));
            let moved = self.measures().moved_from(&before.measures());
            let air_only = Signs { air: before.signs().air, ..self.signs() } == before.signs();
            if air_only && moved <= 1.0 {
                let happened = self.air() != before.air();
                if happened {
                    *reach = Reach::default();
                } else if moved <= 0.5 {
                    reach.stride = (2 * reach.stride).min(LONGEST);
                }
                return passed;
            }
            *self = before;
            if reach.stride <= SLOW_TICKS {
                // Even a fifth of a second is too long: tick by tick through what comes.
                reach.alert = ALERT_TICKS;
                return self.plain_tick();
            }
            reach.stride = (reach.stride / 4 / SLOW_TICKS * SLOW_TICKS).max(SLOW_TICKS);
        }
    }

    /// At most `ticks` at once, fewer when the air side brings something about; returns how many.
    fn stride(&mut self, ticks: u64) -> u64 {
        let air = self.air();
        let mut passed = 0;
        while passed < ticks {
            self.furnace.step_air(SLOW_S, self.house.inside_k(), &self.setup);
            self.step_slow(SLOW_S);
            passed += SLOW_TICKS;
            if self.air() != air {
                break;
            }
        }
        #[expect(clippy::cast_precision_loss, reason = "a minute of ticks")]
        let dt_s = passed as f64 * TICK_S;
        self.gas.catch_up(dt_s);
        let input = self.furnace_in();
        let before = (self.furnace.control_state(), self.furnace.firing());
        self.furnace.step_fire(dt_s, &input, &self.setup);
        self.command_gas(before, &mut |_| {});
        self.gas.step(dt_s);
        self.tick += passed;
        passed
    }

    /// Whether the fast parts are at work: something is being lit.
    fn is_busy(&self) -> bool {
        let lighting = match self.furnace.control_state() {
            ControlState::IgniterWarmUp
            | ControlState::TrialForIgnition
            | ControlState::FlameProving => true,
            ControlState::Standby
            | ControlState::InducerStart
            | ControlState::PressureSwitchProving
            | ControlState::PrePurge
            | ControlState::BlowerOnDelay
            | ControlState::Burning(_)
            | ControlState::NextLevelCall
            | ControlState::InducerUp
            | ControlState::NextSwitchProving
            | ControlState::LimitOpen
            | ControlState::RolloutOpen
            | ControlState::PostPurge
            | ControlState::BlowerOffDelay
            | ControlState::Retry
            | ControlState::Lockout => false,
        };
        lighting || self.furnace.igniter()
    }

    fn signs(&self) -> Signs {
        Signs {
            control: self.furnace.control_state(),
            firing: self.firing(),
            lit: self.furnace.lit(),
            contacts: self.furnace.contacts(),
            ignites: self.furnace.ignites(),
            air: self.air(),
        }
    }

    fn air(&self) -> Air {
        let [_, _, breathing] = self.room.fractions();
        let breathing = self.room.of_lower_limit(breathing);
        Air {
            calls: self.thermostat_calls(),
            guards: EnumMap::from_fn(|appliance| self.guard_dropped(appliance)),
            danger: Danger {
                floor: self.room.flammable(Zone::Floor),
                breathing: self.room.flammable(Zone::Breathing),
                vestibule: self.room.vestibule_flammable(),
                alarm: breathing >= ALARM_SHARE,
                smelt: breathing >= SMELT_SHARE,
            },
            limit_moves: self.furnace.limit_moves(),
        }
    }

    fn measures(&self) -> Measures {
        let rated = self.setup.furnace.plate.input.top().si().max(1.0);
        Measures {
            pressures_pa: [
                self.gas.supply_pa(),
                self.gas.pressure_pa(Port::Inlet),
                self.gas.pressure_pa(Port::Manifold),
            ],
            input: self.furnace.input_w() / rated,
            fans: [self.furnace.inducer(), self.furnace.blower()],
        }
    }
}

impl Measures {
    /// How far it moved, 1 being as far as it may.
    fn moved_from(&self, before: &Self) -> f64 {
        let most = |now: &[f64], then: &[f64], bound: f64| {
            now.iter().zip(then).fold(0.0, |most: f64, (a, b)| most.max((a - b).abs() / bound))
        };
        most(&self.pressures_pa, &before.pressures_pa, MOVED_PA)
            .max(most(&[self.input], &[before.input], MOVED_INPUT))
            .max(most(&self.fans, &before.fans, MOVED_FAN))
    }
}
