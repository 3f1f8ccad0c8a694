//! What the hours after a job brought, as a report.

use enum_map::EnumMap;

use crate::appliance::ignition::ControlState;
use crate::model::truth::GasInAir;
use crate::parts::{Level, OtherAppliance};

/// Most changes of the control that are kept in the report.
pub const MOST_CHANGES: usize = 1_000;

/// What the time after a job brought.
#[derive(Debug, Clone, PartialEq)]
pub struct Aftermath {
    /// How long it went on, in seconds: shorter than asked for when gas ignited.
    pub seconds: f64,
    /// What the furnace did.
    pub furnace: FurnaceAftermath,
    /// What the gas did.
    pub gas: GasAftermath,
    /// What the air of the plant room was like.
    pub room: RoomAftermath,
    /// What the house was like.
    pub house: HouseAftermath,
    /// The tank, if there is one.
    pub tank: Option<TankAftermath>,
    /// Every change of the control, up to [`MOST_CHANGES`]: when, in seconds, and to what.
    pub changes: Vec<(f64, ControlState)>,
}

/// What the furnace did.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FurnaceAftermath {
    /// Times the burners lit.
    pub runs: u32,
    /// Times it came to rest after a run, called off by the thermostat.
    pub cycles: u32,
    /// Time burning, in seconds.
    pub lit_s: f64,
    /// Of that at each level, in seconds.
    pub level_s: EnumMap<Level, f64>,
    /// Heat of the gas that burned, in joules.
    pub heat_j: f64,
    /// Tries that failed, or flames that were lost.
    pub retries: u32,
    /// Times the control locked out.
    pub lockouts: u32,
    /// Times the limit opened.
    pub limits: u32,
    /// Times a roll-out switch opened.
    pub rollouts: u32,
    /// Most carbon monoxide in the flue, air-free, in parts per million.
    pub co_air_free_ppm: f64,
}

/// What the gas did.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct GasAftermath {
    /// Gas drawn from the supply, in standard m³.
    pub drawn_m3: f64,
    /// Gas that escaped into the room, in standard m³.
    pub escaped_m3: f64,
    /// Lowest and highest pressure after the supply regulator, in pascals.
    pub supply_pa: Span,
    /// Lowest and highest pressure at the inlet port, in pascals.
    pub inlet_pa: Span,
    /// Lowest and highest manifold pressure while burning steadily at each level, in pascals.
    pub manifold_pa: EnumMap<Level, Span>,
    /// Other appliances whose flame went out and whose guard shut.
    pub went_out: EnumMap<OtherAppliance, bool>,
}

/// What the air of the plant room was like.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RoomAftermath {
    /// Most gas anywhere, as shares of the lower limit.
    pub most_of_lower_limit: GasInAir,
    /// When it could first be smelt plainly by anyone breathing in the plant room, in seconds.
    pub smelt_s: Option<f64>,
    /// When a gas alarm at breathing height would first have sounded, in seconds.
    pub alarm_s: Option<f64>,
    /// When gas met a flame or a hot igniter, in seconds. The report ends there.
    pub ignition_s: Option<f64>,
}

/// What the house was like.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HouseAftermath {
    /// Lowest and highest temperature, in kelvins.
    pub inside_k: Span,
    /// Temperature at the end, in kelvins.
    pub end_k: f64,
    /// Time more than 2 K below the setpoint, in seconds.
    pub cold_s: f64,
}

/// What the tank was like.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TankAftermath {
    /// Level at the beginning, as a fraction.
    pub level_before: f64,
    /// Level at the end, as a fraction.
    pub level_after: f64,
    /// Lowest pressure, in pascals.
    pub lowest_pa: f64,
}

/// Lowest and highest of something.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Lowest value seen; +∞ before the first.
    pub least: f64,
    /// Highest value seen; −∞ before the first.
    pub most: f64,
}

impl Default for Span {
    /// A span that has seen nothing yet.
    fn default() -> Self {
        Self { least: f64::INFINITY, most: f64::NEG_INFINITY }
    }
}

impl Span {
    /// Whether anything was seen.
    #[must_use]
    pub fn is_seen(&self) -> bool {
        self.least <= self.most
    }

    pub(crate) fn see(&mut self, value: f64) {
        self.least = self.least.min(value);
        self.most = self.most.max(value);
    }
}
