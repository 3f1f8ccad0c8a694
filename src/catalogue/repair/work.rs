//! How a repair is described: where it is done, what it needs, what it changes.

use crate::parts::{Cock, Joint, Place, Port};
use crate::setup::Renewed;
use crate::setup::Setup;

/// What kind of work a repair is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Nature {
    /// Cleaning, clearing, joining again: does no harm where nothing was wrong.
    Care,
    /// A part is swapped: for nothing, if the old one was sound.
    Part,
    /// Dangerous in itself.
    Danger,
    /// A safety device is put out of work.
    Bypass,
}

/// The pressure that a repair moves, or what comes of it to the meter: what was read there before
/// says nothing any more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Moves {
    /// None that is read.
    Nothing,
    /// The one at the inlet port.
    Inlet,
    /// The one at the manifold port.
    Manifold,
    /// Every one behind the supply regulator.
    Supply,
}

impl Moves {
    /// Whether it moves the pressure at this port alone.
    #[must_use]
    pub fn is_at(self, port: Port) -> bool {
        match self {
            Self::Inlet => port == Port::Inlet,
            Self::Manifold => port == Port::Manifold,
            Self::Nothing | Self::Supply => false,
        }
    }
}

/// Whether a repair is on the way from the gas to the display.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum OnReading {
    Yes,
    No,
}

/// What must be so before a repair is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Need {
    /// A hand valve is shut.
    Shut(Cock),
    /// No gas pressure is left between the manual valve and the gas valve.
    NoPressure,
    /// The furnace's switch is off.
    PowerOff,
    /// The burner door is off.
    BurnerDoorOff,
    /// The blower door is off.
    BlowerDoorOff,
    /// Nothing is in the port.
    Open(Port),
    /// The manometer's hose is on nothing.
    HoseFree,
}

/// How a repair is done.
#[derive(Debug)]
pub(crate) struct Work {
    pub(crate) place: Place,
    pub(crate) nature: Nature,
    pub(crate) needs: &'static [Need],
    pub(crate) disturbs: Option<Joint>,
    pub(crate) renews: Renewed,
    pub(crate) moves: Moves,
    pub(crate) on_reading: OnReading,
    pub(crate) there: fn(&Setup) -> bool,
    pub(crate) apply: fn(&mut Bay<'_>),
}

impl Work {
    /// Work at a place that can always be done there.
    pub(crate) const fn new(place: Place, nature: Nature, apply: fn(&mut Bay<'_>)) -> Self {
        Self {
            place,
            nature,
            needs: &[],
            disturbs: None,
            renews: Renewed::Nothing,
            moves: Moves::Nothing,
            on_reading: OnReading::No,
            there: anywhere,
            apply,
        }
    }

    pub(crate) const fn needs(self, needs: &'static [Need]) -> Self {
        Self { needs, ..self }
    }

    pub(crate) const fn disturbs(self, joint: Joint) -> Self {
        Self { disturbs: Some(joint), ..self }
    }

    pub(crate) const fn renews(self, renews: Renewed) -> Self {
        Self { renews, ..self }
    }

    pub(crate) const fn moves(self, moves: Moves) -> Self {
        Self { moves, ..self }
    }

    pub(crate) const fn on_reading(self) -> Self {
        Self { on_reading: OnReading::Yes, ..self }
    }

    pub(crate) const fn there(self, there: fn(&Setup) -> bool) -> Self {
        Self { there, ..self }
    }
}

fn anywhere(_: &Setup) -> bool {
    true
}

/// What a repair works on.
#[derive(Debug)]
pub(crate) struct Bay<'a> {
    /// What the bench works with.
    pub setup: &'a mut Setup,
    /// The same before the first fault.
    pub sound: &'a Setup,
    /// What the repair does beside changing the setup.
    pub beside: &'a mut Beside,
}

/// What a repair does to the parts themselves, beside changing the setup.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Beside {
    /// Both ports have new plugs, this many turns past hand-tight.
    pub new_plugs_turns: Option<f64>,
    /// The port whose boss got a crack.
    pub cracked: Option<Port>,
    /// Ice before the regulators is gone.
    pub thawed: bool,
}
