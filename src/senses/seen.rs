//! The one way out for people: what eyes, ears, nose and instruments give.
//!
//! The window, scripts and the reference technician get only this. What cannot be perceived from
//! where one stands is `None`.

use enum_map::EnumMap;
use serde::Serialize;
use std::sync::Arc;

use crate::appliance::ignition::ControlStatus;
use crate::appliance::safety::Jumpers;
use crate::instrument::figure::Figure;
use crate::instrument::water_column::Legs;
use crate::parts::{
    Ending, Fitted, Gauge, Height, Joint, JointVerdict, Level, Levels, LowSide, OnOff, Opening,
    Place, Port, PortFill, Push, Reading, Scene, Spot, Stage, Subject, Tool, WrittenFinding,
};
use crate::physics::valve::HandleAngle;
use crate::units::{PressureUnit, Shown};

mod at;
mod heard;
mod observation;
mod signs;
mod sound;

pub use heard::{Heard, Relays};
pub use observation::{
    Condition, ConnectorLook, Delivery, FlamesLook, Holes, Note, Observation, RatingPlate,
};
pub use signs::{Done, HoseLook, REGISTERS_SHOW, Rod, Signs, Water};
pub use sound::Sound;

/// What a person perceives now.
#[derive(Debug, Clone, PartialEq)]
pub struct Seen {
    /// Steps since the job began.
    pub tick: u64,
    /// Where the person stands.
    pub place: Place,
    /// Kinds of equipment and surroundings here.
    pub scene: Scene,
    /// What is in the hand.
    pub hand: Option<Tool>,
    /// Temperature outside, in degrees Fahrenheit, to the degree.
    pub outside_f: i32,
    /// The furnace's firing levels, the weakest first: the job says it, and the plate shows it.
    pub levels: &'static [Level],
    /// How high the place lies above the sea, in feet, to the hundred: people here know it.
    pub altitude_ft: i32,
    /// The manometer with its hose and the instrument that the hose goes to.
    pub meter: MeterInView,
    /// What another instrument shows: the one in hand while it is held to a spot, or the
    /// microammeter while it is clipped in and in view.
    pub measured: Option<Measured>,
    /// Whether the microammeter is clipped in at the flame rod.
    pub clipped: Fitted,
    /// What is heard here.
    pub sounds: Vec<Sound>,
    /// How strong and how fast that is.
    pub heard: Heard,
    /// What the nose gets from breathing here, without bending down.
    pub smell: Smell,
    /// What the last deliberate sniff gave, and where the nose was.
    pub sniffed: Option<(Height, Smell)>,
    /// The last reading of the gas detector, when it is in hand: per cent of the lower limit.
    pub detector: Option<DetectorSeen>,
    /// The supply in the yard, from the yard.
    pub yard: Option<YardSeen>,
    /// The furnace and the water heater, from the plant room or from the gas valve.
    pub furnace: Option<FurnaceSeen>,
    /// The thermostat and what is near it, from the hall.
    pub hall: Option<HallSeen>,
    /// The clipboard with the job sheet.
    pub sheet: Arc<SheetSeen>,
    /// Set when the job is over or was stopped.
    pub over: Option<Over>,
}

/// Where the manometer is for the person: it stays where its hose is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MeterInView {
    /// In sight and within reach: carried along, or hanging at the furnace with the person there.
    InSight(MeterSeen),
    /// It hangs at the furnace, and the person is elsewhere.
    HangsAtFurnace,
}

/// The manometer in sight.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeterSeen {
    /// What its display shows.
    pub display: Display,
    /// The unit it shows.
    pub unit: PressureUnit,
    /// The instrument that the hose goes to, where it is not the manometer.
    pub gauge: GaugeSeen,
    /// Where the far end of its hose is, and how far it is pushed on.
    pub hose: Option<(Port, Push)>,
    /// What its low side feels.
    pub low_side: LowSide,
    /// How its hose looks.
    pub hose_look: HoseLook,
}

/// An instrument for pressure at the near end of the hose.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum GaugeSeen {
    /// The digital manometer: see [`MeterSeen::display`].
    Digital,
    /// Both legs of the water column.
    WaterColumn(Legs),
    /// The spring gauge: what the needle reads in tenths of an inch of water; none past its range.
    Spring(Option<i32>),
}

impl GaugeSeen {
    /// Which instrument it is.
    #[must_use]
    pub fn gauge(self) -> Gauge {
        match self {
            Self::Digital => Gauge::Digital,
            Self::WaterColumn(_) => Gauge::WaterColumn,
            Self::Spring(_) => Gauge::SpringGauge,
        }
    }
}

/// What an instrument shows at a spot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Measured {
    /// Where it is held.
    pub spot: Spot,
    /// Figures on its face, as it shows them.
    pub figures: Vec<Figure>,
}

/// What was written down from an instrument.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WrittenMeasured {
    /// Where it was held.
    pub spot: Spot,
    /// Moment of writing, in ticks.
    pub tick: u64,
    /// Figures that its face showed then.
    pub figures: Vec<Figure>,
}

/// Display of the digital manometer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Display {
    /// Off, with nothing shown.
    Dark,
    /// A number in the unit that is chosen.
    Number(Shown),
    /// More than it can show.
    OverRange,
}

/// How strongly gas is smelt.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Default)]
pub enum Smell {
    /// No smell of gas.
    #[default]
    None,
    /// A whiff, if one pays heed.
    Faint,
    /// Plain to anyone who comes in.
    Clear,
    /// Strong: everybody leaves at once.
    Strong,
}

impl Smell {
    /// Strength of the smell, in words.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::None => t!("smell-none"),
            Self::Faint => t!("smell-faint"),
            Self::Clear => t!("smell-clear"),
            Self::Strong => t!("smell-strong"),
        }
    }
}

/// The gas detector's display.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DetectorSeen {
    /// Where it was held last.
    pub height: Height,
    /// Per cent of the lower flammable limit, 0–100.
    pub percent_lel: f64,
}

/// The yard in view.
#[derive(Debug, Clone, PartialEq)]
pub struct YardSeen {
    /// The handle of the supply shut-off.
    pub supply_valve: HandleAngle,
    /// The supply regulator's cap.
    pub cap: Fitted,
    /// Angle of its screw since the start in eighths of a turn, seen with the cap off.
    pub screw_eighths: Option<i32>,
    /// The tank gauge, per cent (propane).
    pub tank_percent: Option<f64>,
    /// Turns of the meter's test dial since it was fitted, with the fraction (natural gas).
    pub dial_turns: Option<f64>,
    /// How far frost has climbed the tank, 0–1 (propane).
    pub frost: f64,
    /// Leak fluid on each joint here and what it shows.
    pub fluid: EnumMap<Joint, FluidSeen>,
}

/// The furnace and the plant room in view.
#[derive(Debug, Clone, PartialEq)]
pub struct FurnaceSeen {
    /// Doors: burner door, blower door.
    pub burner_door: Fitted,
    /// Blower door, on or off.
    pub blower_door: Fitted,
    /// Service switch beside the furnace.
    pub switch: OnOff,
    /// The handle of the manual valve.
    pub manual_valve: HandleAngle,
    /// Water heater beside the furnace, with its hand valve.
    pub water_heater: OtherApplianceSeen,
    /// Window of the plant room.
    pub window: Opening,
    /// What the control says.
    pub status: ControlStatus,
    /// The wire between R and W2.
    pub stage_jumper: Fitted,
    /// Warning tag on the furnace.
    pub tag: Fitted,
    /// Whether a conversion label sticks beside the plate.
    pub conversion_label: Fitted,
    /// Fans: inducer and blower, 0 still, 1 full.
    pub inducer: f64,
    /// The blower, 0 still, 1 full.
    pub blower: f64,
    /// The compartment behind the burner door, when that is off.
    pub burners: Option<BurnersSeen>,
}

/// Another appliance in view.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct OtherApplianceSeen {
    /// How its hand valve stands.
    pub handle: HandleAngle,
    /// Flame of its burner, where that is seen.
    pub burning: Burning,
}

/// Whether another appliance burns.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Burning {
    /// Turned on and burning.
    Burning,
    /// Turned on, but no gas: it went out.
    NoGas,
    /// Turned off at its own switch.
    Off,
}

/// What is seen behind the burner door.
#[derive(Debug, Clone, PartialEq)]
pub struct BurnersSeen {
    /// Brightness of the igniter, 0–1.
    pub glow: f64,
    /// Flame of each burner, in their order.
    pub flames: [FlameSeen; 4],
    /// The switch on the gas valve.
    pub valve_switch: OnOff,
    /// Wires that somebody has put across the contacts of safety devices.
    pub wires: Jumpers,
    /// Whether the low-gas switch of a propane kit is there.
    pub low_gas_switch: Fitted,
    /// The cap over each stage screw.
    pub caps: Levels<Fitted>,
    /// Angle of each stage screw since the start in eighths of a turn, seen with the cap off.
    pub screw_eighths: Levels<Option<i32>>,
    /// Plug, adapter or hose in each port.
    pub ports: EnumMap<Port, PortSeen>,
    /// Leak fluid on each joint and what it shows.
    pub fluid: EnumMap<Joint, FluidSeen>,
    /// Signs of wear in plain view.
    pub signs: Signs,
}

/// Flame of one burner, by eye.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FlameSeen {
    /// Height against a healthy flame at full rate, 0 when out.
    pub height: f64,
    /// How yellow and lazy, 0–1.
    pub yellow: f64,
}

/// One port of the gas valve, by eye.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PortSeen {
    /// What is in it.
    pub fill: PortFill,
    /// Whether the boss shows a crack.
    pub cracked: Cracked,
}

/// Whether a boss is cracked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Cracked {
    /// Without a crack that is seen.
    Sound,
    /// Cracked through at the port's boss.
    Cracked,
}

/// Leak fluid on a joint.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum FluidSeen {
    /// Dry, never brushed or wiped off.
    #[default]
    Dry,
    /// Wet, no bubbles; seconds since it was brushed on.
    Quiet(f64),
    /// Bubbles grow; size 0–1.
    Bubbles(f64),
}

/// The hall in view.
#[derive(Debug, Clone, PartialEq)]
pub struct HallSeen {
    /// Room temperature, in degrees Fahrenheit, to the half degree.
    pub room_half_f: i16,
    /// The setpoint, in half degrees Fahrenheit.
    pub setpoint_half_f: i16,
    /// Heat switch of the thermostat.
    pub mode: OnOff,
    /// What the thermostat calls for.
    pub call: Option<Level>,
    /// The CO alarm, in parts per million.
    pub co_ppm: f64,
    /// Window of the hall.
    pub window: Opening,
    /// Kitchen range, with its hand valve.
    pub range: OtherApplianceSeen,
    /// Share of the registers that is closed, 0–1.
    pub registers_closed: f64,
}

/// Clipboard: all that was written down and noted.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct SheetSeen {
    /// Readings written so far, in order; a later one replaces an earlier one of the same place.
    pub readings: Vec<Reading>,
    /// Leak checks written so far.
    pub joints: Vec<(Joint, JointVerdict)>,
    /// What was noted from looking closely.
    pub notes: Vec<Note>,
    /// What was written from other instruments, in order.
    pub measured: Vec<WrittenMeasured>,
    /// What was mended, in order.
    pub done: Vec<Done>,
    /// What was written as wrong, in order. A sheet without a finding is in the digest what it was
    /// before there were findings.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub findings: Vec<WrittenFinding>,
    /// What the leak check of the whole piping showed, as written last. A sheet without one is in the
    /// digest what it was before it could be written.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub piping: Option<JointVerdict>,
}

impl Seen {
    /// The manometer, where it is in sight.
    #[must_use]
    pub fn meter(&self) -> Option<&MeterSeen> {
        match &self.meter {
            MeterInView::InSight(meter) => Some(meter),
            MeterInView::HangsAtFurnace => None,
        }
    }

    /// What the manometer's display shows, where it is in sight.
    #[must_use]
    pub fn display(&self) -> Option<Display> {
        self.meter().map(|meter| meter.display)
    }

    /// The port that the hose is seen on, and how far it is pushed on.
    #[must_use]
    pub fn hose(&self) -> Option<(Port, Push)> {
        self.meter()?.hose
    }

    /// The pressure that the instrument at the hose reads now, if it is in sight and reads one. Of a
    /// water column that is both legs together.
    #[must_use]
    pub fn pressure_shown(&self) -> Option<Shown> {
        let inches =
            |tenths: i32| Shown { value: f64::from(tenths) / 10.0, unit: PressureUnit::InWc };
        let meter = self.meter()?;
        match meter.gauge {
            GaugeSeen::Digital => match meter.display {
                Display::Number(shown) => Some(shown),
                Display::Dark | Display::OverRange => None,
            },
            GaugeSeen::WaterColumn(legs) => legs.sum_tenths().map(inches),
            GaugeSeen::Spring(tenths) => tenths.map(inches),
        }
    }
}

impl SheetSeen {
    /// Whether it has a line for a joint: those in the yard once they were worked on or checked.
    #[must_use]
    pub fn has_line_for(&self, joint: Joint) -> bool {
        let worked_on = || self.done.iter().any(|done| done.repair.disturbs().contains(&joint));
        let written = || self.joints.iter().any(|(one, _)| *one == joint);
        !joint.is_in_yard() || worked_on() || written()
    }

    /// The note of a subject.
    #[must_use]
    pub fn note(&self, subject: Subject) -> Option<&Note> {
        self.notes.iter().rev().find(|note| note.subject == subject)
    }

    /// The last reading written for a port, stage and phase.
    #[must_use]
    pub fn reading(
        &self,
        port: Port,
        stage: Stage,
        phase: crate::parts::Phase,
    ) -> Option<&Reading> {
        self.readings.iter().rev().find(|r| r.port == port && r.stage == stage && r.phase == phase)
    }
}

/// How a job came to its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub enum Over {
    /// Handed over, ended in this way.
    HandedOver(Ending),
    /// Stopped because gas ignited where it must not.
    Ignition,
}
