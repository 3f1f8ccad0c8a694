//! A hold on a part, from the press to the release.

use egui::Pos2;

use super::part::{Handling, cap_back, handling};
use super::port::port_fill;
use super::turn_by::TurnBy;
use crate::hands::action::Action;
use crate::panels::view::Turned;
use crate::parts::{Height, PortFill, Tool};
use crate::senses::seen::Seen;

/// Nearer to the middle than this a hand has no lever arm, in points.
const ARM: f32 = 6.0;
/// A pointer that moved less than this has clicked, in points.
const CLICK: f32 = 6.0;
/// Strokes of this length in all cover a joint, in points.
const STROKES: f32 = 45.0;
/// A pull of this length brings a hose off, in points.
const PULL: f32 = 36.0;
/// How long one stays at a place to smell or probe it, in seconds.
const HOLD_S: f64 = 0.6;

/// A hold on a part.
#[derive(Debug, Clone, PartialEq)]
pub struct Grip {
    part: String,
    /// What the part turns about.
    middle: Pos2,
    began: Pos2,
    last: Pos2,
    /// Length of the way so far.
    way: f32,
    since_s: f64,
    by: TurnBy,
    /// Whether it has done what it can do: a stroke, a hold or a pull is done once.
    spent: Spent,
    carries: Carries,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Spent {
    No,
    Yes,
}

/// What moves with the hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Carries {
    /// Nothing leaves its place.
    Nothing,
    /// A tool, or the end of the hose.
    Tool(Tool),
    /// A plug or a cap that lay beside.
    Loose,
}

impl Grip {
    /// Takes hold of a part at a point of the window, at a time in seconds.
    #[must_use]
    pub fn new(part: &str, at: Pos2, middle: Pos2, now_s: f64, seen: &Seen) -> Self {
        Self {
            part: part.to_owned(),
            middle,
            began: at,
            last: at,
            way: 0.0,
            since_s: now_s,
            by: TurnBy::begin(part),
            spent: Spent::No,
            carries: match Tool::from_id(part) {
                Some(tool) => Carries::Tool(tool),
                None if lies_loose(part, seen) => Carries::Loose,
                None => Carries::Nothing,
            },
        }
    }

    /// The part that is held.
    #[must_use]
    pub fn part(&self) -> &str {
        &self.part
    }

    /// How far it is turned, for the eye.
    #[must_use]
    pub fn turned(&self) -> Turned {
        let (part, deg) = self.by.shown();
        Turned { part: part.to_owned(), deg }
    }

    /// The middle of a part that turns under the hand.
    #[must_use]
    pub fn seat(&self) -> Option<Pos2> {
        let (_, deg) = self.by.shown();
        (deg != 0.0).then_some(self.middle)
    }

    /// Where the pointer is.
    #[must_use]
    pub fn at(&self) -> Pos2 {
        self.last
    }

    /// Whether letting go now is a click: it hardly moved, and nothing came of it yet.
    #[must_use]
    pub fn is_click(&self) -> bool {
        self.way < CLICK && self.spent == Spent::No
    }

    /// The pointer moved: what comes of it.
    pub fn moved(&mut self, to: Pos2, height: Height, seen: &Seen) -> Vec<Action> {
        let (from, began) = (self.last, self.began);
        self.last = to;
        let step = from.distance(to);
        if step == 0.0 {
            return Vec::new();
        }
        self.way += step;
        if self.way < CLICK {
            return Vec::new();
        }
        if let Carries::Tool(tool) = self.carries {
            // Taken out of the roll as soon as it is dragged.
            let take = self.part == tool.id() && self.spent == Spent::No;
            self.spent = Spent::Yes;
            let press = handling(&self.part, height, seen).press;
            return if take && seen.hand != Some(tool) { press } else { Vec::new() };
        }
        if self.carries == Carries::Loose {
            return Vec::new();
        }
        let now = handling(&self.part, height, seen);
        if self.spent == Spent::Yes {
            return Vec::new();
        }
        // Where there is something to brush or to wipe, that is what the hand does.
        if now.stroke.is_some() {
            if self.way < STROKES {
                return Vec::new();
            }
            self.spent = Spent::Yes;
            return now.stroke.into_iter().collect();
        }
        if now.lever.is_some() || !now.turning.is_none() {
            return self.by.turn(self.swept_deg(from, to), &now, seen);
        }
        if now.pull.is_some() && began.distance(to) >= PULL {
            self.spent = Spent::Yes;
            self.carries = Carries::Tool(Tool::Hose);
            return now.pull.into_iter().collect();
        }
        Vec::new()
    }

    /// Time passed with the button down: what comes of staying.
    pub fn stayed(&mut self, now_s: f64, height: Height, seen: &Seen) -> Vec<Action> {
        let hold = handling(&self.part, height, seen).hold;
        if hold.is_none() || self.spent == Spent::Yes || now_s - self.since_s < HOLD_S {
            return Vec::new();
        }
        self.spent = Spent::Yes;
        hold.into_iter().collect()
    }

    /// Let go over a part, or over none: what comes of it.
    #[must_use]
    pub fn released(self, over: Option<&str>, seen: &Seen) -> Vec<Action> {
        let Some(over) = over.filter(|over| *over != self.part) else { return Vec::new() };
        match self.carries {
            Carries::Nothing => Vec::new(),
            Carries::Tool(tool) if Tool::from_id(over).is_some() => {
                // Onto the roll: put back.
                let held = seen.hand == Some(tool);
                if held { vec![Action::PutDown] } else { Vec::new() }
            }
            Carries::Tool(_) => set_down(over, seen),
            Carries::Loose if belongs(&self.part, over) => {
                handling(&self.part, Height::Head, seen).press
            }
            Carries::Loose => Vec::new(),
        }
    }

    /// How far the hand went round the middle, in degrees clockwise.
    fn swept_deg(&self, from: Pos2, to: Pos2) -> f32 {
        let (a, b) = (from - self.middle, to - self.middle);
        if a.length() < ARM || b.length() < ARM {
            return 0.0;
        }
        let turned = (b.angle() - a.angle()).to_degrees();
        (turned + 540.0).rem_euclid(360.0) - 180.0
    }
}

/// What a tool does that is set to a part: what a press or strokes would do, no more.
fn set_down(over: &str, seen: &Seen) -> Vec<Action> {
    let it: Handling = handling(over, Height::Head, seen);
    let fits = |action: &Action| {
        matches!(
            action,
            Action::Plug { .. }
                | Action::Adapter { .. }
                | Action::HoseOn { .. }
                | Action::Measure(_)
                | Action::Probe(_)
                | Action::LeakFluid(_)
        )
    };
    it.at_once().into_iter().filter(fits).collect()
}

/// Whether a part is a plug or a cap that lies beside its hole or screw.
fn lies_loose(part: &str, seen: &Seen) -> bool {
    if part.ends_with("-plug") {
        return port_fill(part, seen).is_some_and(|(_, fill)| match fill {
            PortFill::Open | PortFill::BareAdapter | PortFill::Hose(_) => true,
            PortFill::Snug
            | PortFill::HandTight
            | PortFill::Started
            | PortFill::Leaning
            // A captive screw never leaves its tap.
            | PortFill::TapSnug
            | PortFill::TapLoose
            | PortFill::TapOpen
            | PortFill::HoseOnTap(_)
            | PortFill::HoseOnShutTap(_) => false,
        });
    }
    cap_back(part, seen).is_some()
}

/// Whether a loose plug or cap goes where it is let go: the same port, the same screw.
fn belongs(loose: &str, over: &str) -> bool {
    let stem = loose.trim_end_matches("-plug").trim_end_matches("-cap");
    over.strip_prefix(stem).is_some_and(|rest| matches!(rest, "-port" | "-screw" | "-adapter"))
}
