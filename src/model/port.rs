//! A port with what is in it: plug, adapter, hose or nothing; or a pressure tap with its captive screw
//! and the hose over it.

use super::gas::PortPath;
use super::truth::PortTruth;
use crate::parts::{PortFill, Push, ValveBody};
use crate::physics::orifice::hole_area_m2;
use crate::setup::PlugFound;
use serde::Serialize;

/// Turns past hand-tight from which a plug seals (scenario value of our own; no published torque). A
/// tap's screw is taken to seal and to seep as a plug does (an assumption of our own).
pub(crate) const SNUG_TURNS: f64 = 0.5;
/// Turns past hand-tight beyond which the boss cracks (our own value).
pub(crate) const CRACK_TURNS: f64 = 1.25;
/// Most that the short arm turns a cross-threaded plug past where it binds, in turns.
pub(crate) const LEANING_STOP_TURNS: f64 = 0.5;

/// Where a captive screw stands that was loosened: a turn out of its seat (common practice: a turn or
/// less).
pub(crate) const LOOSENED_TURNS: f64 = -1.0;

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
    /// A pressure tap: its captive screw this many turns past its seat (less than none: loosened), and
    /// the hose over it.
    Tap {
        past: f64,
        hose: Option<Push>,
    },
}

/// A test port with what is in it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct PortState {
    pub(crate) fill: Fill,
    pub(crate) cracked: bool,
}

impl PortState {
    /// A port with a plug or screw this many turns past hand-tight, or what else is found in it.
    pub(crate) fn found(past_hand_turns: f64, plug: PlugFound, body: ValveBody) -> Self {
        let past = past_hand_turns.max(0.0);
        let fill = match plug {
            PlugFound::Straight | PlugFound::Cracked | PlugFound::Leaning | PlugFound::Adapter
                if body == ValveBody::TapScrews =>
            {
                Fill::Tap { past, hose: None }
            }
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

    /// Whether nothing is in the way of a drill: an open port, or a tap with its screw loosened.
    pub(crate) fn is_empty(&self) -> bool {
        match self.fill {
            Fill::Open => true,
            Fill::Tap { past, hose: None } => past < 0.0,
            Fill::Seated(_)
            | Fill::Started
            | Fill::Leaning(_)
            | Fill::Adapter(_)
            | Fill::Tap { hose: Some(_), .. } => false,
        }
    }

    /// Whether gas can flow freely out of it.
    pub(crate) fn is_wide_open(&self) -> bool {
        matches!(self.fill, Fill::Adapter(None)) || self.is_empty()
    }

    /// How far a hose is on it.
    pub(crate) fn hose(&self) -> Option<Push> {
        match self.fill {
            Fill::Adapter(push) | Fill::Tap { hose: push, .. } => push,
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
            Fill::Adapter(Some(push)) => {
                PortPath::Hose { barb_m2: beside_hose_m2(push), boss_m2: crack, screw_m2: None }
            }
            Fill::Tap { past, hose: None } if past < 0.0 => PortPath::Barb,
            Fill::Tap { hose: None, .. } => PortPath::Closed(self.leak_area_m2()),
            Fill::Tap { past, hose: Some(push) } => PortPath::Hose {
                barb_m2: beside_hose_m2(push),
                boss_m2: crack,
                screw_m2: (past >= 0.0).then(|| seat_m2(past)),
            },
        }
    }

    /// Effective area of what seeps past a plug or a captive screw, in m². Under a hose nothing seeps to
    /// the room.
    pub(crate) fn leak_area_m2(&self) -> f64 {
        let hole = |m| hole_area_m2(SEEP_CD, m);
        let seep = match self.fill {
            Fill::Seated(past) => seat_m2(past),
            Fill::Tap { past, hose: None } if past >= 0.0 => seat_m2(past),
            Fill::Started => hole(STARTED_M),
            Fill::Leaning(_) => hole(LEANING_M),
            Fill::Open | Fill::Adapter(_) | Fill::Tap { .. } => 0.0,
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
            Fill::Tap { past, hose: Some(push) } if past > 0.0 => PortFill::HoseOnShutTap(push),
            Fill::Tap { hose: Some(push), .. } => PortFill::HoseOnTap(push),
            Fill::Tap { past, hose: None } if past < 0.0 => PortFill::TapOpen,
            Fill::Tap { past, hose: None } if past >= SNUG_TURNS => PortFill::TapSnug,
            Fill::Tap { hose: None, .. } => PortFill::TapLoose,
        }
    }

    /// As it really is.
    pub(crate) fn truth(&self) -> PortTruth {
        PortTruth {
            fill: self.looks(),
            past_hand_turns: match self.fill {
                Fill::Seated(past) | Fill::Leaning(past) => past,
                Fill::Tap { past, .. } => past.max(0.0),
                Fill::Started | Fill::Open | Fill::Adapter(_) => 0.0,
            },
            cross_threaded: matches!(self.fill, Fill::Leaning(_)),
            cracked: self.cracked,
            leak_area_m2: self.leak_area_m2(),
        }
    }
}

/// Effective area of what seeps past a seat this many turns past hand-tight, in m².
fn seat_m2(past: f64) -> f64 {
    let loose = (1.0 - past / SNUG_TURNS).max(0.0);
    hole_area_m2(SEEP_CD, HAND_TIGHT_M) * loose * loose
}

/// Effective area beside a hose that is on so far, in m².
fn beside_hose_m2(push: Push) -> f64 {
    match push {
        Push::Fully => 0.0,
        Push::Halfway => hole_area_m2(SEEP_CD, HALF_HOSE_M),
    }
}
