//! What turns about its middle: plugs, adapters, caps and screws, with what comes of how much turning.

use super::port::port_fill;
use crate::hands::action::{Action, PlugStep};
use crate::panels::actions::screw_of;
use crate::parts::{Fitted, PortFill};
use crate::senses::seen::Seen;

/// An eighth of a turn, in degrees: the finest that a screw is turned by.
pub(super) const EIGHTH_DEG: f32 = 45.0;
/// Turning that brings a threaded part out of its hole or down to its seat, in degrees. A real plug
/// takes four or five turns; on a screen one and a half tell the hand what it does.
const THREAD_DEG: f32 = 540.0;
/// Turning that loosens a tap's captive screw or brings it to its seat, in degrees: a turn.
const SCREW_DEG: f32 = 360.0;
/// Turning that takes a cap off, in degrees.
const CAP_DEG: f32 = 270.0;

/// What comes of turning so far one way.
#[derive(Debug, Clone, PartialEq)]
pub struct Detent {
    /// How far it is turned until then, in degrees.
    pub deg: f32,
    /// What happens when it is turned that far.
    pub action: Action,
}

/// How a part turns, each way; nothing where it does not.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Turning {
    /// What comes of turning to the right.
    pub clockwise: Option<Detent>,
    /// What comes of turning to the left.
    pub back: Option<Detent>,
}

impl Turning {
    /// Whether it does not turn at all.
    #[must_use]
    pub fn is_none(&self) -> bool {
        self.clockwise.is_none() && self.back.is_none()
    }

    /// What comes of turning this way.
    #[must_use]
    pub fn way(&self, clockwise: f32) -> Option<&Detent> {
        if clockwise > 0.0 { self.clockwise.as_ref() } else { self.back.as_ref() }
    }
}

/// How a part turns, as it is seen.
pub(super) fn turning(id: &str, seen: &Seen) -> Turning {
    if let Some((port, fill)) = port_fill(id, seen) {
        let step = |deg, step| Some(Detent { deg, action: Action::Plug { port, step } });
        let (clockwise, back) = match fill {
            PortFill::Snug => {
                (step(EIGHTH_DEG, PlugStep::Tighten(1)), step(EIGHTH_DEG, PlugStep::BreakLoose))
            }
            PortFill::HandTight => {
                (step(EIGHTH_DEG, PlugStep::Tighten(1)), step(THREAD_DEG, PlugStep::SpinOut))
            }
            PortFill::Started => {
                (step(THREAD_DEG, PlugStep::SpinIn), step(THREAD_DEG / 2.0, PlugStep::SpinOut))
            }
            // Across the thread it stops early, and lets itself be backed off.
            PortFill::Leaning => {
                (step(EIGHTH_DEG, PlugStep::Tighten(1)), step(EIGHTH_DEG, PlugStep::SpinOut))
            }
            PortFill::BareAdapter => {
                let action = Action::Adapter { port, to: Fitted::Off };
                (None, Some(Detent { deg: THREAD_DEG, action }))
            }
            PortFill::TapSnug => {
                (step(EIGHTH_DEG, PlugStep::Tighten(1)), step(EIGHTH_DEG, PlugStep::BreakLoose))
            }
            PortFill::TapLoose => {
                (step(EIGHTH_DEG, PlugStep::Tighten(1)), step(SCREW_DEG, PlugStep::SpinOut))
            }
            PortFill::TapOpen => (step(SCREW_DEG, PlugStep::SpinIn), None),
            // The hose covers a tap's screw.
            PortFill::Open
            | PortFill::Hose(_)
            | PortFill::HoseOnTap(_)
            | PortFill::HoseOnShutTap(_) => (None, None),
        };
        return Turning { clockwise, back };
    }
    let Some(screw) = screw_of(id) else { return Turning::default() };
    match seen.cap(screw) {
        Some(Fitted::On) => Turning {
            clockwise: None,
            back: Some(Detent { deg: CAP_DEG, action: Action::Cap { screw, to: Fitted::Off } }),
        },
        Some(Fitted::Off) if !id.ends_with("-cap") => {
            let by =
                |eighths| Some(Detent { deg: EIGHTH_DEG, action: Action::Turn { screw, eighths } });
            Turning { clockwise: by(1), back: by(-1) }
        }
        Some(Fitted::Off) | None => Turning::default(),
    }
}
