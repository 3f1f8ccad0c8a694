//! How a repair is described: where it is done, what it needs, what it changes.

use serde::{Deserialize, Deserializer};

use crate::parts::{HandValve, Joint, Place, Port};
use crate::setup::{Renewed, Setup};
use crate::words::table::by_id;

/// What kind of work a repair is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
pub enum Nature {
    /// Cleaning, clearing, joining again: does no harm where nothing was wrong.
    Care,
    /// A part is swapped: for nothing, if the old one was sound.
    Part,
    /// Dangerous in itself, whatever is wrong.
    Danger,
    /// A safety device is put out of work.
    Bypass,
}

/// The pressure that a repair moves, or what comes of it to the meter: what was read there before
/// says nothing any more.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize)]
pub enum Moves {
    /// None that is read.
    #[default]
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
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize)]
pub(crate) enum OnReading {
    Yes,
    #[default]
    No,
}

/// Whether a repair opens the line between source and gas valve.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize)]
pub(crate) enum OnPiping {
    Yes,
    #[default]
    No,
}

/// What a bench must have so that a repair can be done on it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize)]
pub enum There {
    /// Nothing: it can be done on every bench.
    #[default]
    Anywhere,
    /// A propane supply from a tank.
    Tank,
    /// A first and a second stage of regulation, behind a tank.
    TwoStageRegulation,
    /// An excess-flow valve that shuts early.
    ExcessFlow,
    /// The low-gas-pressure switch of a propane kit.
    LowGasSwitch,
    /// Figures of plate or label for the fuel in the pipes.
    FiguresForFuel,
    /// A burner box with a hose to the gas valve.
    BurnerBoxHose,
    /// A jumper across a safety device.
    Jumpers,
    /// A furnace with two firing levels.
    TwoLevels,
}

/// What must be so before a repair is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Need {
    /// A hand valve is shut.
    #[serde(deserialize_with = "hand_valve")]
    Shut(HandValve),
    /// No gas pressure is left between the manual valve and the gas valve.
    NoPressure,
    /// The furnace's switch is off.
    PowerOff,
    /// The burner door is off.
    BurnerDoorOff,
    /// The blower door is off.
    BlowerDoorOff,
    /// Nothing is in the port.
    #[serde(deserialize_with = "port")]
    Open(Port),
    /// The manometer's hose is on nothing.
    HoseFree,
}

fn hand_valve<'de, D: Deserializer<'de>>(reader: D) -> Result<HandValve, D::Error> {
    by_id(reader, HandValve::from_id)
}

fn port<'de, D: Deserializer<'de>>(reader: D) -> Result<Port, D::Error> {
    by_id(reader, Port::from_id)
}

/// What the table says of a repair.
#[derive(Debug)]
pub(crate) struct Work {
    pub(crate) label: &'static str,
    /// Ids of the parts that it is offered at.
    pub(crate) at: &'static [&'static str],
    pub(crate) place: Place,
    pub(crate) nature: Nature,
    pub(crate) there: There,
    pub(crate) needs: &'static [Need],
    pub(crate) disturbs: &'static [Joint],
    pub(crate) piping: OnPiping,
    pub(crate) renews: Renewed,
    pub(crate) moves: Moves,
    pub(crate) on_reading: OnReading,
}

impl Work {
    /// What stands for every repair where the table cannot be read; the command line tells why
    /// before it runs anything.
    pub(crate) const UNREAD: Self = Self {
        label: "",
        at: &[],
        place: Place::Away,
        nature: Nature::Danger,
        there: There::Anywhere,
        needs: &[],
        disturbs: &[],
        piping: OnPiping::No,
        renews: Renewed::Nothing,
        moves: Moves::Nothing,
        on_reading: OnReading::No,
    };
}

/// What a repair changes in a setup, and beside it.
pub(crate) type Edit = fn(&mut RepairContext<'_>);

/// What a repair works on.
#[derive(Debug)]
pub(crate) struct RepairContext<'a> {
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
