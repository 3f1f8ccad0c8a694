//! Sounds of a moment: what the work and the furnace sound like when something happens.

use enum_map::Enum;

use crate::hands::action::Action;
use crate::hands::event::EventKind;

/// Something that sounds for a moment.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Enum)]
pub enum Moment {
    /// A relay of the control pulls in or lets go.
    Relay,
    /// The gas valve opens, shuts or changes its level.
    GasValve,
    /// The burners light as they should.
    Lights,
    /// The burners light late and hard.
    LateLight,
    /// The burners go out.
    GoesOut,
    /// The flames go to a higher level.
    FlamesGrow,
    /// The flames go to a lower level.
    FlamesShrink,
    /// A port is opened with pressure behind it.
    Puff,
    /// Gas begins to flow from a port.
    PortHiss,
    /// Gas takes fire where it must not.
    Ignition,
    /// A plug begins across its thread.
    CrossThread,
    /// The boss of a port cracks.
    Crack,
    /// A screw comes to its bottom.
    ScrewStop,
    /// Water is blown out of the water column.
    ColumnBlown,
    /// A repair is done.
    WorkDone,
    /// The handle of a hand valve turns.
    Lever,
    /// A plug, an adapter, a cap or a screw turns in its thread.
    Thread,
    /// The hose goes over the barbs.
    HoseOn,
    /// The hose comes off.
    HoseOff,
    /// A key of an instrument or the thermostat is pressed.
    Key,
    /// A switch snaps over.
    Switch,
    /// A door of the furnace comes off or goes on.
    Door,
    /// A window slides open or shut.
    Window,
}

/// Where a moment comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Source {
    /// The furnace, near or far.
    Furnace,
    /// What the work brings about, at hand.
    Work,
    /// The hand that does something.
    Hand,
}

impl Moment {
    /// All of them, in their usual order.
    pub const ALL: [Self; 23] = [
        Self::Relay,
        Self::GasValve,
        Self::Lights,
        Self::LateLight,
        Self::GoesOut,
        Self::FlamesGrow,
        Self::FlamesShrink,
        Self::Puff,
        Self::PortHiss,
        Self::Ignition,
        Self::CrossThread,
        Self::Crack,
        Self::ScrewStop,
        Self::ColumnBlown,
        Self::WorkDone,
        Self::Lever,
        Self::Thread,
        Self::HoseOn,
        Self::HoseOff,
        Self::Key,
        Self::Switch,
        Self::Door,
        Self::Window,
    ];

    /// What an event sounds like for a moment.
    #[must_use]
    pub fn of(what: &EventKind) -> Option<Self> {
        match what {
            EventKind::Did { action, .. } => Self::of_action(action),
            EventKind::Fired { from: None, .. } => Some(Self::Lights),
            EventKind::Fired { to: None, .. } => Some(Self::GoesOut),
            EventKind::Fired { from, to } if to > from => Some(Self::FlamesGrow),
            EventKind::Fired { .. } => Some(Self::FlamesShrink),
            EventKind::OpenedUnderGas { .. } => Some(Self::Puff),
            EventKind::GasFromPort { .. } => Some(Self::PortHiss),
            EventKind::Ignition { .. } => Some(Self::Ignition),
            EventKind::CrossThreaded { .. } => Some(Self::CrossThread),
            EventKind::ColumnBlownOut => Some(Self::ColumnBlown),
            EventKind::Cracked { .. } => Some(Self::Crack),
            EventKind::Mended { .. } => Some(Self::WorkDone),
            EventKind::Turned { bottomed: true, .. } => Some(Self::ScrewStop),
            EventKind::Turned { bottomed: false, .. }
            | EventKind::Refused { .. }
            | EventKind::Control { .. }
            | EventKind::CalledOnOpenPort { .. }
            | EventKind::Zeroed { .. }
            | EventKind::Showed(_)
            | EventKind::Wrote(_)
            | EventKind::FluidJudged { .. }
            | EventKind::Alarm
            | EventKind::Cycle
            | EventKind::ValveOverPressure { .. }
            | EventKind::MeterOverRange
            | EventKind::WroteMeasured { .. }
            | EventKind::SpringGaugeStrained
            | EventKind::Held { .. }
            | EventKind::Ended { .. }
            | EventKind::NotConverged => None,
        }
    }

    /// What the hand sounds like when it does something.
    fn of_action(action: &Action) -> Option<Self> {
        match action {
            Action::HandValve { .. } => Some(Self::Lever),
            Action::Turn { .. }
            | Action::Plug { .. }
            | Action::Adapter { .. }
            | Action::Cap { .. } => Some(Self::Thread),
            Action::HoseOn { .. } => Some(Self::HoseOn),
            Action::HoseOff => Some(Self::HoseOff),
            Action::MeterPower(_)
            | Action::MeterZero
            | Action::MeterUnit(_)
            | Action::Setpoint(_)
            | Action::Stopwatch(_) => Some(Self::Key),
            Action::FurnaceSwitch(_)
            | Action::ThermostatMode(_)
            | Action::ValveSwitch(_)
            | Action::ResetRollout => Some(Self::Switch),
            Action::Door { .. } => Some(Self::Door),
            Action::Window { .. } => Some(Self::Window),
            Action::Go(_)
            | Action::Look(_)
            | Action::Sniff(_)
            | Action::Probe(_)
            | Action::Take(_)
            | Action::PutDown
            | Action::StageJumper(_)
            | Action::OtherAppliance { .. }
            | Action::MeterLowSide(_)
            | Action::LeakFluid(_)
            | Action::Wipe(_)
            | Action::Mend(_)
            | Action::Measure(_)
            | Action::Unclip
            | Action::WriteMeasured(_)
            | Action::Gauge(_)
            | Action::FillColumn
            | Action::Write(_)
            | Action::WriteJoint { .. }
            | Action::WritePiping(_)
            | Action::WriteFinding(_)
            | Action::StrikeFinding(_)
            | Action::Tag(_)
            | Action::Call(_)
            | Action::Tell(_)
            | Action::HandOver(_) => None,
        }
    }

    /// Where it comes from.
    fn source(self) -> Source {
        match self {
            Self::Relay
            | Self::GasValve
            | Self::Lights
            | Self::LateLight
            | Self::GoesOut
            | Self::FlamesGrow
            | Self::FlamesShrink
            | Self::Ignition => Source::Furnace,
            Self::Puff
            | Self::PortHiss
            | Self::CrossThread
            | Self::Crack
            | Self::ScrewStop
            | Self::ColumnBlown
            | Self::WorkDone => Source::Work,
            Self::Lever
            | Self::Thread
            | Self::HoseOn
            | Self::HoseOff
            | Self::Key
            | Self::Switch
            | Self::Door
            | Self::Window => Source::Hand,
        }
    }

    /// Whether it comes from the furnace, and is as far away as that; anything else is at hand.
    #[must_use]
    pub fn is_of_furnace(self) -> bool {
        self.source() == Source::Furnace
    }

    /// Whether it only says what the hand has just done, which is seen.
    #[must_use]
    pub fn is_of_hand(self) -> bool {
        self.source() == Source::Hand
    }

    /// The caption, for people who cannot hear it.
    #[must_use]
    pub fn caption(self) -> &'static str {
        match self {
            Self::Relay => t!("moment-relay"),
            Self::GasValve => t!("moment-gas-valve"),
            Self::Lights => t!("moment-burners-light"),
            Self::LateLight => t!("sound-bang"),
            Self::GoesOut => t!("moment-burners-out"),
            Self::FlamesGrow => t!("moment-flames-grow"),
            Self::FlamesShrink => t!("moment-flames-shrink"),
            Self::Puff => t!("moment-puff"),
            Self::PortHiss => t!("moment-hiss"),
            Self::Ignition => t!("moment-ignition"),
            Self::CrossThread => t!("moment-cross-thread"),
            Self::Crack => t!("moment-crack"),
            Self::ScrewStop => t!("moment-screw-stop"),
            Self::ColumnBlown => t!("moment-column-blown"),
            Self::WorkDone => t!("caption-work-done"),
            Self::Lever => t!("moment-lever"),
            Self::Thread => t!("moment-thread"),
            Self::HoseOn => t!("moment-hose-on"),
            Self::HoseOff => t!("moment-hose-off"),
            Self::Key => t!("moment-key"),
            Self::Switch => t!("moment-switch"),
            Self::Door => t!("moment-door"),
            Self::Window => t!("moment-window"),
        }
    }
}
