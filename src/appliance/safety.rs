//! Safety devices: pressure switches, limit, roll-out, low-gas switch.
//!
//! **Equation.** Contacts with hysteresis: closed from one value on, open below another. The
//! pressure switches feel `max(0, t·Δp − w)` in Pa, `Δp` the draft across the exchanger
//! ([`Draft`]), `t` what the hose lets through (1, split 0.4, off 0), `w` the head of the water
//! that stands in it. The limit opens above one supply-air temperature and closes below another;
//! roll-out switches stay open until reset.
//! **Assumptions.** A split hose lets through a fixed share; contacts act at once.
//! **Valid range.** Any pressure and temperature.
//! **Regularisation.** None; hysteresis keeps contacts from chattering.
//! **Source.** Low-gas switch: closes at 8.0 in. w.c. rising, opens at 6.0 ± 0.6 falling (a
//! two-stage furnace service manual). Draft set points (one level 0.85/0.70, two 0.45/0.35 and
//! 1.15/1.00 in. w.c.) and limit (190/150 °F): the appliance's, of our own world. Split hose: from
//! memory.
//! **Left out.** Contact bounce, ageing.
//! **Checked.** `tests/core/appliance/safety.rs`:
//! `the_low_gas_switch_has_its_published_hysteresis()`, `what_spoils_a_pressure_switch()`,
//! `the_limit_resets_itself_and_the_rollout_does_not()`.

use super::draft::Draft;
use super::level::{Level, Levels};
use crate::units::{PA_PER_INWC, k_from_f};
use enum_map::EnumMap;
use serde::Serialize;

/// Share of the draft that reaches a switch through a split hose (from memory).
const SPLIT_HOSE: f64 = 0.4;

/// A contact that closes above one value and opens below another.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Contact {
    closes_at: f64,
    opens_at: f64,
    closed: bool,
}

impl Contact {
    /// An open contact that closes at `closes_at` and opens below `opens_at`.
    #[must_use]
    pub fn new(closes_at: f64, opens_at: f64) -> Self {
        Self { closes_at, opens_at, closed: false }
    }

    /// Feels a value and says whether it is closed.
    pub fn feel(&mut self, value: f64) -> bool {
        self.closed = if self.closed { value >= self.opens_at } else { value >= self.closes_at };
        self.closed
    }

    /// Whether it is closed.
    fn is_closed(&self) -> bool {
        self.closed
    }
}

/// Where a contact closes and where it opens, in pascals.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Points {
    /// Closes at or above.
    pub closes_pa: f64,
    /// Opens below; lower than `closes_pa`.
    pub opens_pa: f64,
}

impl Points {
    fn contact(self) -> Contact {
        Contact::new(self.closes_pa, self.opens_pa)
    }
}

/// Whether the propane kit's low-gas switch is fitted, and its points.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub enum LowGasSwitch {
    /// None: the control always finds the contact closed.
    Absent,
    /// Fitted; the published opening point has a tolerance of 0.6 in. w.c. either way.
    Fitted(Points),
}

impl LowGasSwitch {
    /// A switch at its published points: closes at 8.0, opens at 6.0 in. w.c.
    pub const NOMINAL: Self =
        Self::Fitted(Points { closes_pa: 8.0 * PA_PER_INWC, opens_pa: 6.0 * PA_PER_INWC });
}

impl From<bool> for LowGasSwitch {
    /// Fitted at its published points, or absent.
    fn from(fitted: bool) -> Self {
        if fitted { Self::NOMINAL } else { Self::Absent }
    }
}

/// Set points of an appliance's devices.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct SetPoints {
    /// The pressure switch of each level.
    pub switches: Levels<Points>,
    /// Supply-air temperature at which the limit opens, in kelvins.
    pub limit_opens_k: f64,
    /// Supply-air temperature below which it closes again, in kelvins.
    pub limit_closes_k: f64,
}

impl SetPoints {
    /// The set points of our appliance with these levels.
    #[must_use]
    pub fn of(levels: &'static [Level]) -> Self {
        let points = |closes: f64, opens: f64| Points {
            closes_pa: closes * PA_PER_INWC,
            opens_pa: opens * PA_PER_INWC,
        };
        Self {
            switches: match levels {
                [Level::Only] => Levels::one(points(0.85, 0.70)),
                _ => Levels::two(points(0.45, 0.35), points(1.15, 1.0)),
            },
            limit_opens_k: k_from_f(190.0),
            limit_closes_k: k_from_f(150.0),
        }
    }
}

/// The hose from the exchanger to the pressure switches.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Hose {
    /// On its barbs, and whole.
    #[default]
    Sound,
    /// Split: part of the draft is lost.
    Split,
    /// Off: the switch feels nothing.
    Off,
}

/// What a pressure switch's contact does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum SwitchState {
    /// Closes and opens at its points.
    #[default]
    Works,
    /// Stays open at any draft.
    StuckOpen,
    /// Stays closed even without draft.
    StuckClosed,
}

/// What lies between draft and contacts.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct Sensing {
    /// The hose from the exchanger.
    pub hose: Hose,
    /// Water standing in hose or inducer housing (a blocked trap), as pascals that it holds off.
    pub water_pa: f64,
    /// The pressure switch of each level.
    pub switches: EnumMap<Level, SwitchState>,
}

/// Whether a wire lies across a contact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Jumper {
    /// None: the contact works.
    #[default]
    Off,
    /// The control finds the contact closed, whatever it does.
    On,
}

impl Jumper {
    fn or(self, closed: bool) -> bool {
        self == Self::On || closed
    }
}

/// Wires across the contacts of safety devices.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub struct Jumpers {
    /// Across the pressure switch of each level.
    pub switches: EnumMap<Level, Jumper>,
    /// Across the limit's contact.
    pub limit: Jumper,
    /// Across the roll-out switches.
    pub rollout: Jumper,
    /// Across the low-gas switch.
    pub low_gas: Jumper,
}

impl Jumpers {
    fn all(self) -> impl Iterator<Item = (Jumper, &'static str)> {
        let switches = self.switches.into_iter().map(|(level, jumper)| (jumper, level.id()));
        let others = [(self.limit, "limit"), (self.rollout, "rollout"), (self.low_gas, "low-gas")];
        switches.chain(others)
    }

    /// The devices that have one, by the names that the texts choose their words by.
    #[must_use]
    pub fn named(self) -> Vec<&'static str> {
        self.all().filter(|(jumper, _)| *jumper == Jumper::On).map(|(_, name)| name).collect()
    }

    /// Whether there is any.
    #[must_use]
    pub fn any(self) -> bool {
        self.all().any(|(jumper, _)| jumper == Jumper::On)
    }
}

/// All safety devices of the furnace.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Safety {
    points: SetPoints,
    draft: Draft,
    sensing: Sensing,
    switches: Levels<Contact>,
    low_gas: Option<Contact>,
    felt_pa: f64,
    limit_open: bool,
    rollout_open: bool,
    jumpers: Jumpers,
}

impl Safety {
    /// Devices at rest with our appliance's set points; the low-gas switch only where a kit has
    /// fitted it.
    #[must_use]
    pub fn new(levels: &'static [Level], low_gas: impl Into<LowGasSwitch>) -> Self {
        Self::with_points(SetPoints::of(levels), low_gas.into())
    }

    /// Devices at rest with set points of their own.
    #[must_use]
    pub fn with_points(points: SetPoints, low_gas: LowGasSwitch) -> Self {
        Self {
            points,
            draft: Draft::default(),
            sensing: Sensing::default(),
            switches: points.switches.map(|_, points| points.contact()),
            low_gas: match low_gas {
                LowGasSwitch::Absent => None,
                LowGasSwitch::Fitted(points) => Some(points.contact()),
            },
            felt_pa: 0.0,
            limit_open: false,
            rollout_open: false,
            jumpers: Jumpers::default(),
        }
    }

    /// Sets the way of the combustion air.
    pub fn set_draft(&mut self, draft: Draft) {
        self.draft = draft;
    }

    /// Sets what lies between draft and contacts.
    pub fn set_sensing(&mut self, sensing: Sensing) {
        self.sensing = sensing;
    }

    /// Sets what wires lie across the contacts.
    pub fn set_jumpers(&mut self, jumpers: Jumpers) {
        self.jumpers = jumpers;
    }

    /// Puts another low-gas switch in, or none; a new one stands open until it feels gas.
    pub fn set_low_gas(&mut self, low_gas: LowGasSwitch) {
        self.low_gas = match low_gas {
            LowGasSwitch::Absent => None,
            LowGasSwitch::Fitted(points) => Some(points.contact()),
        };
    }

    /// Feels the inducer's speed (0–1), the supply air and the inlet pressure.
    pub fn feel(&mut self, inducer: f64, supply_air_k: f64, inlet_pa: f64) {
        let through = match self.sensing.hose {
            Hose::Sound => 1.0,
            Hose::Split => SPLIT_HOSE,
            Hose::Off => 0.0,
        };
        self.felt_pa = (through * self.draft.pressure_pa(inducer) - self.sensing.water_pa).max(0.0);
        let felt_pa = self.felt_pa;
        self.switches.each_mut(|switch| {
            switch.feel(felt_pa);
        });
        if let Some(low_gas) = &mut self.low_gas {
            low_gas.feel(inlet_pa);
        }
        self.limit_open = self.limit_opens_at(supply_air_k);
    }

    /// Whether the limit, as it stands, would be open with supply air at this temperature, in
    /// kelvins.
    #[must_use]
    pub fn limit_opens_at(&self, supply_air_k: f64) -> bool {
        let point_k =
            if self.limit_open { self.points.limit_closes_k } else { self.points.limit_opens_k };
        supply_air_k > point_k
    }

    /// Draft that the pressure switches feel, in pascals: what a draft gauge at the switch reads.
    #[must_use]
    pub fn felt_pa(&self) -> f64 {
        self.felt_pa
    }

    /// Flames outside the tubes open the roll-out switches.
    pub fn roll_out(&mut self) {
        self.rollout_open = true;
    }

    /// Resets the roll-out switches by hand; says whether they were open.
    pub fn reset_rollout(&mut self) -> bool {
        core::mem::take(&mut self.rollout_open)
    }

    /// Whether the pressure switch of each level is closed.
    #[must_use]
    pub fn switches(&self) -> Levels<bool> {
        self.switches.map(|level, &switch| {
            self.jumpers.switches[level].or(contact(self.sensing.switches[level], switch))
        })
    }

    /// Whether the control finds the limit closed, a jumper counted in.
    #[must_use]
    pub fn limit(&self) -> bool {
        self.jumpers.limit.or(!self.limit_open)
    }

    /// Whether the control finds the roll-out switches closed, a jumper counted in.
    #[must_use]
    pub fn rollout(&self) -> bool {
        self.jumpers.rollout.or(!self.rollout_open)
    }

    /// Low-gas switch closed, or none fitted.
    #[must_use]
    pub fn low_gas(&self) -> bool {
        self.jumpers.low_gas.or(self.low_gas.as_ref().is_none_or(Contact::is_closed))
    }
}

fn contact(state: SwitchState, contact: Contact) -> bool {
    match state {
        SwitchState::Works => contact.is_closed(),
        SwitchState::StuckOpen => false,
        SwitchState::StuckClosed => true,
    }
}
