//! Gas in a room: the burner vestibule, the air above the floor, the air at breathing height.
//!
//! **Equation.** Each zone is diluted: `dc/dt = q/V − n·(c − c_in)`, `c` a volume fraction, `q` in
//! m³/s, `n` in 1/s, solved exactly over a step with its neighbours held; what leaves a zone goes,
//! by its exact mean over the step, to the next. The vestibule (0.12 m³) draws 0.012 m³/s and the
//! flue's share from floor and head alike; floor zone 15 % of the room, turned over with the head
//! every 900 s.
//! **Assumptions.** Well-mixed zones; fresh gas of a heavy kind goes to the floor, of a light kind
//! up (nine parts in ten); once mixed it does not part again; make-up air is clean. A window adds 8
//! air changes an hour, an open outside door 15.
//! **Valid range.** Any leak; fractions are kept within 0–1. Steps well below 10 s (the vestibule's
//! time constant); the bench uses 0.2 s.
//! **Regularisation.** None needed; no ventilation is the limit of little.
//! **Source.** Dilution law as in any ventilation handbook (build-up `q/(nV)·(1 − e^{−nt})`);
//! limits NFPA 325 / NFPA 58. Zone volumes, mixing, vestibule air, air changes of window and door,
//! and the parting of nine in ten: from memory.
//! **Left out.** Plumes, stairs, wind; a house's other rooms; the room air that a leak itself
//! pushes out. Outdoors gas is taken as gone.
//! **Checked.** `tests/core/appliance/room.rs`: Engineering ToolBox, "Pollution Concentration in
//! Rooms", in `dilution_matches_the_published_table()`; `no_gas_is_lost_or_made()`,
//! `a_long_leak_settles_at_its_steady_state()`,
//! `heavy_gas_pools_light_gas_rises_and_air_clears_both()`.

mod odor;

use super::fluid::Gas;
use serde::Serialize;

pub use odor::{Nose, Odorant, Strength};

/// Volume of the burner vestibule, in m³.
const VESTIBULE_M3: f64 = 0.12;
/// Air that drifts through the vestibule with doors off, in m³/s.
const VESTIBULE_AIR_M3_S: f64 = 0.012;
/// Share of the room's height that counts as the floor zone.
const FLOOR_SHARE: f64 = 0.15;
/// Share of fresh gas that goes where its density takes it.
const BUOYANT_SHARE: f64 = 0.9;
/// Exchange between floor and breathing zone, per second of the floor zone.
const MIXING_PER_S: f64 = 1.0 / 900.0;
/// Air changes per hour that an open window adds, and an open outside door.
const WINDOW_ACH: f64 = 8.0;
const DOOR_ACH: f64 = 15.0;

/// A part of the room.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Zone {
    /// Around burners and gas valve.
    Vestibule,
    /// The lowest 15 % of the room's height.
    Floor,
    /// The rest of the room, where people breathe.
    Breathing,
}

impl Zone {
    /// Every zone, in the order of [`Room::fractions`].
    pub const ALL: [Self; 3] = [Self::Vestibule, Self::Floor, Self::Breathing];
}

/// Gas that escapes, by where it comes out, in standard m³/s.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Leaks {
    /// Into the burner vestibule, in standard m³/s.
    pub vestibule_m3_s: f64,
    /// Into the floor zone, in standard m³/s.
    pub floor_m3_s: f64,
    /// Into the breathing zone, in standard m³/s.
    pub breathing_m3_s: f64,
}

impl From<f64> for Leaks {
    /// All of it in the vestibule.
    fn from(vestibule_m3_s: f64) -> Self {
        Self { vestibule_m3_s, ..Self::default() }
    }
}

/// What moves the room's air.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Ventilation {
    /// Open share of the window, 0–1.
    pub window: f64,
    /// Open share of an outside door, 0–1.
    pub door: f64,
    /// Air that burners and inducer draw from the vestibule to the flue, in m³/s.
    pub to_flue_m3_s: f64,
}

impl From<bool> for Ventilation {
    /// The window open, or nothing.
    fn from(window: bool) -> Self {
        Self { window: f64::from(u8::from(window)), ..Self::default() }
    }
}

/// Gas that takes fire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoomFire {
    /// The zone whose gas takes fire.
    pub zone: Zone,
    /// Gas in that zone, in m³.
    pub gas_m3: f64,
    /// Heat that it can give, in joules.
    pub heat_j: f64,
}

/// Gas in the air of one room.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Room {
    /// Vestibule, floor, breathing height.
    volumes_m3: [f64; 3],
    air_changes_s: f64,
    heavy: bool,
    lower_limit: f64,
    upper_limit: f64,
    heating_value_j_m3: f64,
    fraction: [f64; 3],
}

/// Fraction of gas in one zone after `dt_s`, exact: from `start`, with air of fraction `incoming` at
/// `changes_per_s` (1/s) and a leak of `leak_per_s` zone volumes a second. Without air changes it only
/// builds up; it is not kept below 1.
#[must_use]
pub fn dilute(start: f64, incoming: f64, leak_per_s: f64, changes_per_s: f64, dt_s: f64) -> f64 {
    if changes_per_s <= 0.0 {
        return start + leak_per_s * dt_s;
    }
    let end = incoming + leak_per_s / changes_per_s;
    end + (start - end) * libm::exp(-changes_per_s * dt_s)
}

/// The mean of [`dilute`] over the step.
fn dilute_mean(start: f64, incoming: f64, leak_per_s: f64, changes_per_s: f64, dt_s: f64) -> f64 {
    let turned_over = changes_per_s * dt_s;
    if turned_over <= 0.0 {
        return start + 0.5 * leak_per_s * dt_s;
    }
    let end = incoming + leak_per_s / changes_per_s;
    end - (start - end) * libm::expm1(-turned_over) / turned_over
}

impl Room {
    /// A clean room of `volume_m3`, the vestibule not counted, with its own air changes per hour. It
    /// takes over the gas's limits and heating value, and whether it is heavier than air.
    #[must_use]
    pub fn new(gas: &Gas, volume_m3: f64, air_changes_h: f64) -> Self {
        let floor_m3 = FLOOR_SHARE * volume_m3;
        Self {
            volumes_m3: [VESTIBULE_M3, floor_m3, volume_m3 - floor_m3],
            air_changes_s: air_changes_h / 3600.0,
            heavy: gas.specific_gravity > 1.0,
            lower_limit: gas.lower_limit,
            upper_limit: gas.upper_limit,
            heating_value_j_m3: gas.heating_value_j_m3,
            fraction: [0.0; 3],
        }
    }

    /// Goes on by `dt_s`, well below 10 s; 0.2 s in use.
    pub fn step(&mut self, dt_s: f64, leaks: impl Into<Leaks>, air: impl Into<Ventilation>) {
        let (leaks, air) = (leaks.into(), air.into());
        let [vestibule, floor, head] = self.fraction;
        let [vestibule_m3, floor_m3, head_m3] = self.volumes_m3;
        let to_flue = air.to_flue_m3_s.max(0.0);

        // The vestibule draws room air from both heights, and gives it back or sends it up the flue.
        let room_air = 0.5 * (floor + head);
        let rate = (VESTIBULE_AIR_M3_S + to_flue) / vestibule_m3;
        let leak = leaks.vestibule_m3_s / vestibule_m3;
        let mean = dilute_mean(vestibule, room_air, leak, rate, dt_s);
        let spilled = VESTIBULE_AIR_M3_S * (mean - room_air);

        let changes = self.air_changes_s + (WINDOW_ACH * air.window + DOOR_ACH * air.door) / 3600.0;
        let exchange_m3_s = MIXING_PER_S * floor_m3;
        let zone = |own: f64, other: f64, leak_m3_s: f64, volume_m3: f64| {
            let mixing = exchange_m3_s / volume_m3;
            let drawn = 0.5 * to_flue / volume_m3;
            let rate = changes + mixing + drawn;
            let incoming = if rate > 0.0 { other * mixing / rate } else { 0.0 };
            dilute(own, incoming, leak_m3_s / volume_m3, rate, dt_s).clamp(0.0, 1.0)
        };
        let (to_floor, to_head) = self.part(&leaks, spilled);
        self.fraction = [
            dilute(vestibule, room_air, leak, rate, dt_s).clamp(0.0, 1.0),
            zone(floor, head, to_floor, floor_m3),
            zone(head, floor, to_head, head_m3),
        ];
    }

    /// Where fresh gas goes: to the floor and to breathing height, in m³/s.
    fn part(&self, leaks: &Leaks, spilled: f64) -> (f64, f64) {
        let Leaks { vestibule_m3_s: _, floor_m3_s: lower, breathing_m3_s: upper } = *leaks;
        let astray = 1.0 - BUOYANT_SHARE;
        let (lower_to_floor, upper_to_floor, spilled_to_floor) = match (self.heavy, spilled > 0.0) {
            (true, true) => (1.0, BUOYANT_SHARE, BUOYANT_SHARE),
            (false, true) => (astray, 0.0, astray),
            // A vestibule cleaner than the room takes from both heights alike.
            (true, false) => (1.0, BUOYANT_SHARE, 0.5),
            (false, false) => (astray, 0.0, 0.5),
        };
        let to_floor = lower * lower_to_floor + upper * upper_to_floor + spilled * spilled_to_floor;
        (to_floor, lower + upper + spilled - to_floor)
    }

    /// Gas in vestibule, floor zone and breathing zone, as fractions.
    #[must_use]
    pub fn fractions(&self) -> [f64; 3] {
        self.fraction
    }

    /// Gas in all the room, in m³.
    #[must_use]
    pub fn gas_m3(&self) -> f64 {
        self.fraction.iter().zip(self.volumes_m3).map(|(c, volume)| c * volume).sum()
    }

    /// The lower flammable limit of the gas in air, as a fraction.
    #[must_use]
    pub fn lower_limit(&self) -> f64 {
        self.lower_limit
    }

    /// A volume fraction as a share of the lower flammable limit; 1 at the limit.
    #[must_use]
    pub fn of_lower_limit(&self, fraction: f64) -> f64 {
        fraction / self.lower_limit
    }

    /// Whether a zone's mean lies within the flammable limits.
    #[must_use]
    pub fn flammable(&self, zone: Zone) -> bool {
        (self.lower_limit..=self.upper_limit).contains(&self.in_zone(zone))
    }

    /// What a flame, a hot igniter or an arc in `zone` would light, if anything. A zone that is too
    /// rich in its middle still burns where it meets air, so there is no safe upper limit here.
    #[must_use]
    pub fn fire(&self, zone: Zone) -> Option<RoomFire> {
        let share = self.in_zone(zone);
        let gas_m3 = share * self.volumes_m3[zone as usize];
        (share >= self.lower_limit).then_some(RoomFire {
            zone,
            gas_m3,
            heat_j: gas_m3 * self.heating_value_j_m3,
        })
    }

    /// Whether a source in the vestibule would light what is there.
    #[must_use]
    pub fn vestibule_flammable(&self) -> bool {
        self.fire(Zone::Vestibule).is_some()
    }

    fn in_zone(&self, zone: Zone) -> f64 {
        self.fraction[zone as usize]
    }
}
