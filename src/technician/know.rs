//! What the technician has learned by looking, reading and listening.

use std::collections::VecDeque;

use crate::appliance::plate::{Fuel, GasFigures};
use crate::catalogue::repair::Repair;
use crate::parts::{Joint, OnOff};
use crate::senses::seen::{Burning, Seen, Sound};
use crate::units::TICKS_PER_S;

/// Everything that is remembered.
#[derive(Debug, Clone, Default)]
pub(super) struct Know {
    /// Figures that govern: the label's, else the plate's.
    pub figures: Option<GasFigures>,
    pub plate_fuel: Option<Fuel>,
    pub supply_is_propane: bool,
    pub delivery: Option<(f64, f64, f64)>,
    pub setpoint: Option<i16>,
    pub mode: Option<OnOff>,
    pub neighbors: [Option<OnOff>; 2],
    pub conversion_wrong: bool,
    /// Inlet at rest, low, high, and high with the others on, as read last, in pascals.
    pub inlet: [Option<f64>; 4],
    pub supply_turned: bool,
    /// Whether it was turned up, and whether down.
    pub raised: bool,
    pub lowered: bool,
    /// Whether low and high screw have been turned.
    pub turned: [bool; 2],
    /// Manifold on low and on high, as read last, in pascals.
    pub manifold: [Option<f64>; 2],
    /// Whether the manometer has warmed up.
    pub meter_warm: bool,
    /// Whether the burners went out under load: the supply does not carry it.
    pub collapsed: bool,
    /// Whether high was tried with the others on.
    pub loaded: bool,
    pub tries: u32,
    pub leave_shut_off: bool,
    /// Whether the owner of the supply has to come, whatever the pressures say.
    pub owner_needed: bool,
    /// Whether gas was heard coming out of the supply regulator's vent.
    pub vent_heard: bool,
    /// What is wrong, in words.
    pub diagnosis: Vec<String>,
    /// Repairs that can be done once the furnace is isolated.
    pub to_mend: VecDeque<Repair>,
    /// Repairs that wait until the inlet port is open and the pressure gone.
    pub to_mend_open: VecDeque<Repair>,
    /// What has been mended.
    pub mended: Vec<Repair>,
    /// Joints that a repair has opened, to be checked with gas on them.
    pub to_check: Vec<Joint>,
    /// The joint that is being checked.
    pub checking: Option<Joint>,
    /// How often gas was in the air.
    pub alarms: u32,
    /// Whether the room was aired before a new gas valve was judged.
    pub aired: bool,
    /// Whether it is on the way out because of it.
    pub alarm_answered: bool,
    /// Whether the inlet's number moves because the supply does, not for want of a free hose.
    pub supply_moves: bool,
    /// A number that was looked at, to be looked at again, in pascals.
    pub looked_at: Option<f64>,
    /// The number before the first turn of a screw, and the eighths turned since.
    pub screw: Option<(f64, i16)>,
    /// Whether the last screw was turned without effect.
    pub no_effect: bool,
    /// The inlet's number when the hold at rest began, in pascals.
    pub rest_began: Option<f64>,
    /// How far it rose during the hold, in pascals.
    pub rest_rise: Option<f64>,
    /// How often the readings were begun anew.
    pub rounds: u32,
    /// What was noticed since the last call for heat.
    pub watch: Watch,
}

impl Know {
    /// Notes a finding once.
    pub(super) fn note(&mut self, words: &str) {
        if !self.diagnosis.iter().any(|one| one == words) {
            self.diagnosis.push(words.to_owned());
        }
    }

    /// Whether a repair was done already.
    pub(super) fn has_mended(&self, repair: Repair) -> bool {
        self.mended.contains(&repair)
    }

    /// The first of these repairs that was not done yet.
    pub(super) fn next_of(&self, repairs: &[Repair]) -> Option<Repair> {
        repairs.iter().copied().find(|&repair| !self.has_mended(repair))
    }
}

/// What eyes and ears notice in passing.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Watch {
    /// Brightest glow of the igniter.
    pub glow: f64,
    /// Most burners lit at once.
    pub lit: usize,
    /// Whether a hard light was heard.
    pub bang: bool,
    /// Whether the limit has opened.
    pub limit: bool,
    /// Ticks for which the control waited for its high pressure switch.
    pub high_switch_ticks: u32,
    /// Whether the control said that it burns on high.
    pub says_high: bool,
    /// Whether it waited for gas pressure.
    pub low_gas: bool,
    /// Whether its low pressure switch was waited for in vain.
    pub low_switch: bool,
    /// Whether it felt a flame with the gas shut.
    pub stray: bool,
    /// Ticks on end for which flames stood after the control had shut the gas.
    pub burning_on_ticks: u32,
    /// Whether a roll-out switch was open.
    pub rolled_out: bool,
}

impl Watch {
    /// Notices what there is.
    pub(super) fn look(&mut self, seen: &Seen) {
        self.bang |= seen.sounds.contains(&Sound::Bang);
        let Some(furnace) = &seen.furnace else { return };
        self.limit |= furnace.status.starts_with("limit open");
        self.says_high |= furnace.status.starts_with("burning on high");
        self.low_gas |=
            furnace.status.contains("low-gas") || furnace.status.contains("gas pressure too low");
        self.low_switch |= furnace.status.contains("pressure switch did not close");
        self.stray |= furnace.status.contains("with the gas shut");
        self.rolled_out |= furnace.status.contains("roll-out");
        if furnace.status.starts_with("waiting for the high pressure switch") {
            self.high_switch_ticks += 1;
        }
        let Some(burners) = &furnace.burners else { return };
        self.glow = self.glow.max(burners.glow);
        let lit = burners.flames.iter().filter(|flame| flame.height > 0.0).count();
        self.lit = self.lit.max(lit);
        if lit > 0 && furnace.status.starts_with("purging after burning") {
            self.burning_on_ticks += 1;
        } else if !self.burns_on() {
            self.burning_on_ticks = 0;
        }
    }

    /// Whether flames stayed on after a call for more than a second and a half: a gas valve shuts
    /// within one (EN 161, from memory).
    pub(super) fn burns_on(&self) -> bool {
        u64::from(self.burning_on_ticks) * 2 > 3 * TICKS_PER_S
    }
}

/// Whether a neighbour is turned on.
pub(super) fn turned_on(burning: Burning) -> OnOff {
    match burning {
        Burning::Burning | Burning::NoGas => OnOff::On,
        Burning::Off => OnOff::Off,
    }
}
