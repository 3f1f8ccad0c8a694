//! A finding as it is written on the job sheet: the cause, what was done about it, and what on the
//! sheet or seen on the job speaks for it.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

use super::cause::Cause;
use super::names::{Joint, Subject};
use super::reading::{Phase, Reading};
use super::spot::Spot;
use crate::appliance::test_point::{Port, Stage};

named! {
    /// Something that was noticed without an instrument and without a close look.
    Sight {
        /// Handle of the manual valve, as found.
        ManualValve = "manual-valve", t!("noticed-manual-valve");
        /// Switch on the gas valve, as found.
        ValveSwitch = "valve-switch", t!("noticed-valve-switch");
        /// Service switch of the furnace, as found.
        FurnaceSwitch = "furnace-switch", t!("noticed-furnace-switch");
        /// Plug or adapter in the inlet port, as found.
        InletPort = "inlet-port", t!("noticed-inlet-port");
        /// Plug or adapter in the manifold port, as found.
        ManifoldPort = "manifold-port", t!("noticed-manifold-port");
        /// Caps over the stage screws, as found.
        Caps = "caps", t!("noticed-caps");
        /// Display of the manometer.
        Manometer = "manometer", t!("noticed-manometer");
        /// Hose of the manometer, by eye.
        Hose = "hose", t!("noticed-hose");
        /// What the control did at a call.
        Control = "control", t!("noticed-control");
        /// Glow of the igniter.
        Igniter = "igniter", t!("noticed-igniter");
        /// Flames in passing, without a close look.
        Flames = "flames", t!("noticed-flames");
        /// Wires across the contacts of safety switches.
        Wires = "wires", t!("noticed-wires");
        /// Ground wire of the burners.
        GroundWire = "ground-wire", t!("noticed-ground-wire");
        /// Smell of gas, or the detector's call.
        Smell = "smell", t!("noticed-smell");
        /// A hiss, a bang, a relief, an alarm.
        Sound = "sound", t!("noticed-sound");
    }
}

named! {
    /// What was done about a cause.
    Answer {
        /// A part mended, cleaned, replaced or put back.
        Mended = "mended", t!("answer-mended");
        /// A screw set, the meter zeroed, a unit chosen.
        Adjusted = "adjusted", t!("answer-adjusted");
        /// A valve opened, a switch turned on, a device reset.
        Opened = "opened", t!("answer-opened");
        /// Whoever owns it was called.
        OwnerCalled = "owner-called", t!("answer-owner-called");
        /// The furnace is left shut off.
        ShutOff = "shut-off", t!("answer-shut-off");
        /// Nothing was done about it.
        LeftAsItIs = "left-as-it-is", t!("answer-left-as-it-is");
    }
}

/// Something that speaks for a finding.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum Backing {
    /// A reading of the manometer that stands on the sheet.
    Reading {
        /// Port that was read.
        port: Port,
        /// State of the furnace while it was read.
        stage: Stage,
        /// Before or after work.
        phase: Phase,
    },
    /// What was written from another instrument.
    Measured(Spot),
    /// A close look that was noted.
    Look(Subject),
    /// A leak check that was written.
    Joint(Joint),
    /// Something noticed in passing.
    Sight(Sight),
}

impl From<&Reading> for Backing {
    fn from(reading: &Reading) -> Self {
        Self::Reading { port: reading.port, stage: reading.stage, phase: reading.phase }
    }
}

/// A finding on the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct WrittenFinding {
    /// What was wrong, by the trade's name.
    pub cause: Cause,
    /// What was done about it.
    pub answer: Answer,
    /// What speaks for it, each once.
    pub evidence: Vec<Backing>,
}

impl WrittenFinding {
    /// Most findings on a sheet: more than a job has ever had wrong.
    pub const MOST: usize = 8;
    /// Most that can be named for one of them.
    pub const MOST_EVIDENCE: usize = 12;
}
