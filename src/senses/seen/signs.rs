//! Signs of wear that stand open to the eye: nobody has to look closely for them.

use crate::appliance::safety::Hose;
use crate::catalogue::repair::Repair;
use crate::parts::Fitted;
use serde::Serialize;

/// Share of the registers closed from which it strikes the eye; most houses have some shut.
pub const REGISTERS_SHOW: f64 = 0.25;

/// Lean of the flames from which it strikes the eye (from memory).
const LEAN_SHOWS: f64 = 0.04;

/// Signs at the open burner compartment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Signs {
    /// The hose from the burner box to the gas valve: on it, or off.
    pub box_hose: Fitted,
    /// The hose to the pressure switches.
    pub draft_hose: Hose,
    /// Water that stands in that hose.
    pub draft_water: Water,
    /// Film on the flame rod.
    pub rod: Rod,
    /// The burners' ground wire: under its screw, or loose.
    pub ground: Fitted,
    /// How far the blower's wind leans the flames over, 0–1.
    pub blown: f64,
    /// Which of the orifices, from the left, is not free; only once a look at the orifices has found it.
    pub plugged: Option<usize>,
}

impl Signs {
    /// Whether the blower's wind is seen in flames that burn.
    #[must_use]
    pub fn flames_lean(&self) -> bool {
        self.blown >= LEAN_SHOWS
    }
}

impl Default for Signs {
    fn default() -> Self {
        Self {
            box_hose: Fitted::On,
            draft_hose: Hose::Sound,
            draft_water: Water::None,
            rod: Rod::Bright,
            ground: Fitted::On,
            blown: 0.0,
            plugged: None,
        }
    }
}

/// Whether water stands in a hose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Water {
    /// No water stands in it.
    #[default]
    None,
    /// Drops or a plug of it.
    Stands,
}

/// How the flame rod looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Rod {
    /// Bare metal, without a film.
    #[default]
    Bright,
    /// Under a pale film.
    Filmed,
}

/// How the manometer's hose looks, once it is out of the roll.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum HoseLook {
    /// Clear and round, as drilled.
    #[default]
    Clear,
    /// Drops of water in it.
    Wet,
    /// Pinched flat in one place.
    Pinched,
}

/// A repair that was done on this job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Done {
    /// Repair that was done.
    pub repair: Repair,
    /// Moment of the repair, in ticks.
    pub tick: u64,
}
