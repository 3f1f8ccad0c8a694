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
pub(super) struct Work {
    pub(super) place: Place,
    pub(super) nature: Nature,
    pub(super) needs: &'static [Need],
    pub(super) disturbs: Option<Joint>,
    pub(super) renews: Renewed,
    pub(super) there: fn(&Setup) -> bool,
    pub(super) apply: fn(&mut Bay<'_>),
}

impl Work {
    /// Work at a place that can always be done there.
    pub(super) const fn new(place: Place, nature: Nature, apply: fn(&mut Bay<'_>)) -> Self {
        Self {
            place,
            nature,
            needs: &[],
            disturbs: None,
            renews: Renewed::Nothing,
            there: anywhere,
            apply,
        }
    }

    pub(super) const fn needs(self, needs: &'static [Need]) -> Self {
        Self { needs, ..self }
    }

    pub(super) const fn disturbs(self, joint: Joint) -> Self {
        Self { disturbs: Some(joint), ..self }
    }

    pub(super) const fn renews(self, renews: Renewed) -> Self {
        Self { renews, ..self }
    }

    pub(super) const fn there(self, there: fn(&Setup) -> bool) -> Self {
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
