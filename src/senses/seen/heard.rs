//! How strong, how fast and how often: what the ear adds to the captions.

use crate::parts::Level;

/// Figures of what is heard here, for whoever makes the sound. Everything is nought where nothing
/// is heard; which of it is captioned stands in the list of sounds.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Heard {
    /// Speed of the inducer, 0 still, 1 full.
    pub inducer: f64,
    /// Speed of the blower, 0 still, 1 full.
    pub blower: f64,
    /// Heat input of the burners against the plate's full rate, 0 without a flame.
    pub firing: f64,
    /// Gas that hisses from ports, hose and connector within earshot, in standard m³/s.
    pub hiss_m3_s: f64,
    /// Gas that the supply regulator lets out within earshot, in standard m³/s.
    pub relief_m3_s: f64,
    /// What the control's relays hold closed, and the gas valve.
    pub relays: Relays,
}

/// Relays and coils, each of which clicks when it changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Relays {
    /// Level whose speed the inducer is switched to.
    pub inducer: Option<Level>,
    /// Whether the igniter is switched on.
    pub igniter: bool,
    /// Level whose speed the blower is switched to.
    pub blower: Option<Level>,
    /// Level that the gas valve's seats stand open for; a dead coil moves nothing.
    pub gas_valve: Option<Level>,
}
