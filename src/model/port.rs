//! A port with what is in it: plug, adapter, hose or nothing.

use super::gas::PortPath;
use super::truth::PortTruth;
use crate::parts::{PortFill, Push};
use crate::physics::orifice::hole_area_m2;
use crate::setup::PlugFound;
use serde::Serialize;

/// Turns past hand-tight from which a plug seals (scenario value of our own; no published torque).
pub(crate) const SNUG_TURNS: f64 = 0.5;
/// Turns past hand-tight beyond which the boss cracks (our own value).
pub(crate) const CRACK_TURNS: f64 = 1.25;
/// Most that the short arm turns a cross-threaded plug past where it binds, in turns.
pub(crate) const LEANING_STOP_TURNS: f64 = 0.5;

/// Holes that stand for seeping threads, as diameters in metres (0.2–1 mm, common practice).
const HAND_TIGHT_M: f64 = 0.6e-3;
const STARTED_M: f64 = 1.2e-3;
const LEANING_M: f64 = 0.8e-3;
const CRACK_M: f64 = 0.4e-3;
const HALF_HOSE_M: f64 = 0.9e-3;
const SEEP_CD: f64 = 0.6;

/// What is in a port.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) enum Fill {
    /// A plug, straight, this many turns past hand-tight.
    Seated(f64),
    /// A plug started straight with the fingers.
    Started,
    /// A plug across its thread, this many turns past where it binds.
    Leaning(f64),
    Open,
    Adapter(Option<Push>),
}

/// A test port with what is in it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct PortState {
    pub(crate) fill: Fill,
    pub(crate) cracked: bool,
}

impl PortState {
    /// A port with a plug this many turns past hand-tight, or what else is found in it.
    pub(crate) fn found(past_hand_turns: f64, plug: PlugFound) -> Self {
        let past = past_hand_turns.max(0.0);
        let fill = match plug {
            PlugFound::Straight | PlugFound::Cracked => Fill::Seated(past),
            PlugFound::Leaning => Fill::Leaning(past.min(LEANING_STOP_TURNS)),
            PlugFound::Adapter => Fill::Adapter(None),
        };
        Self { fill, cracked: plug == PlugFound::Cracked }
    }

    /// Somebody drills it: its boss has a crack.
    pub(crate) fn crack(&mut self) {
        self.cracked = true;
    }

    /// Whether nothing is in it.
    pub(crate) fn is_empty(&self) -> bool {
        self.fill == Fill::Open
    }

    /// Whether gas can flow freely out of it.
    pub(crate) fn is_wide_open(&self) -> bool {
        matches!(self.fill, Fill::Open | Fill::Adapter(None))
    }

    /// How far a hose is on it.
    pub(crate) fn hose(&self) -> Option<Push> {
        match self.fill {
            Fill::Adapter(push) => push,
            Fill::Seated(_) | Fill::Started | Fill::Leaning(_) | Fill::Open => None,
        }
    }

    /// Whether the adapter is in it.
    pub(crate) fn has_adapter(&self) -> bool {
        matches!(self.fill, Fill::Adapter(_))
    }

    fn crack_m2(&self) -> f64 {
        if self.cracked { hole_area_m2(SEEP_CD, CRACK_M) } else { 0.0 }
    }

    /// What the gas finds here.
    pub(crate) fn path(&self) -> PortPath {
        let crack = self.crack_m2();
        match self.fill {
            Fill::Seated(_) | Fill::Started | Fill::Leaning(_) => {
                PortPath::Closed(self.leak_area_m2())
            }
            Fill::Open => PortPath::Open,
            Fill::Adapter(None) => PortPath::Barb,
            Fill::Adapter(Some(Push::Fully)) => PortPath::Hose { barb_m2: 0.0, boss_m2: crack },
            Fill::Adapter(Some(Push::Halfway)) => {
                PortPath::Hose { barb_m2: hole_area_m2(SEEP_CD, HALF_HOSE_M), boss_m2: crack }
            }
        }
    }

    /// Effective area of what seeps past a plug, in m².
    pub(crate) fn leak_area_m2(&self) -> f64 {
        let hole = |m| hole_area_m2(SEEP_CD, m);
        let seep = match self.fill {
            Fill::Seated(past) => {
                let loose = (1.0 - past / SNUG_TURNS).max(0.0);
                hole(HAND_TIGHT_M) * loose * loose
            }
            Fill::Started => hole(STARTED_M),
            Fill::Leaning(_) => hole(LEANING_M),
            Fill::Open | Fill::Adapter(_) => 0.0,
        };
        seep + self.crack_m2()
    }

    /// What the eye and the fingers find in it.
    pub(crate) fn looks(&self) -> PortFill {
        match self.fill {
            Fill::Seated(past) if past >= SNUG_TURNS => PortFill::Snug,
            Fill::Seated(_) => PortFill::HandTight,
            Fill::Started => PortFill::Started,
            Fill::Leaning(_) => PortFill::Leaning,
            Fill::Open => PortFill::Open,
            Fill::Adapter(None) => PortFill::BareAdapter,
            Fill::Adapter(Some(push)) => PortFill::Hose(push),
        }
    }

    /// As it really is.
    pub(crate) fn truth(&self) -> PortTruth {
        PortTruth {
            fill: self.looks(),
            past_hand_turns: match self.fill {
                Fill::Seated(past) | Fill::Leaning(past) => past,
                Fill::Started | Fill::Open | Fill::Adapter(_) => 0.0,
            },
            cross_threaded: matches!(self.fill, Fill::Leaning(_)),
            cracked: self.cracked,
            leak_area_m2: self.leak_area_m2(),
        }
    }
}
