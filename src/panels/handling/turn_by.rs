//! Turning that adds up until something comes of it, whether a pointer, a wheel or a key turns.

use super::lever::{LEVER_STEP_DEG, swung};
use super::part::Handling;
use super::turn::EIGHTH_DEG;
use crate::hands::action::Action;
use crate::parts::HandValve;
use crate::physics::valve::HandleAngle;
use crate::senses::seen::Seen;

/// The furthest that a part follows a hand that turns it against its stop, in degrees.
const AT_STOP_DEG: f32 = 12.0;
/// Most eighths that one action may turn a screw by.
const MOST_EIGHTHS: i16 = 16;

/// How far a part is turned since something last came of it.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct TurnBy {
    part: String,
    /// How far it is turned clockwise by now, in degrees.
    deg: f32,
    /// The tick at which an action was last sent: until the next one its outcome is not seen.
    sent: Option<u64>,
    /// Where a lever was last sent to, in degrees from shut, and when.
    lever: Option<(i16, u64)>,
}

impl TurnBy {
    /// Another part is taken hold of, or the same one anew.
    pub(super) fn begin(part: &str) -> Self {
        Self { part: part.to_owned(), ..Self::default() }
    }

    /// The part, and how far it is turned, for the eye.
    pub(super) fn shown(&self) -> (&str, f32) {
        (&self.part, self.deg)
    }

    /// Whether it belongs to this part.
    pub(super) fn is_of(&self, part: &str) -> bool {
        self.part == part
    }

    /// Turns it on by so many degrees clockwise; gives what comes of it.
    pub(super) fn turn(&mut self, by_deg: f32, handling: &Handling, seen: &Seen) -> Vec<Action> {
        if let Some(hand_valve) = handling.lever {
            return self.lever(hand_valve, by_deg, seen).into_iter().collect();
        }
        // What was sent is not seen yet: turning on would do it a second time.
        if self.sent.is_some_and(|tick| seen.tick <= tick) {
            return Vec::new();
        }
        self.deg += by_deg;
        let Some(detent) = handling.turning.way(self.deg) else {
            self.deg = self.deg.clamp(-AT_STOP_DEG, AT_STOP_DEG);
            return Vec::new();
        };
        if self.deg.abs() < detent.deg {
            return Vec::new();
        }
        if let Action::Turn { screw, .. } = detent.action {
            let turned = (self.deg / EIGHTH_DEG).trunc();
            self.deg -= turned * EIGHTH_DEG;
            #[expect(clippy::cast_possible_truncation, reason = "a few eighths")]
            let eighths = (turned as i16).clamp(-MOST_EIGHTHS, MOST_EIGHTHS);
            return vec![Action::Turn { screw, eighths }];
        }
        self.deg = 0.0;
        self.sent = Some(seen.tick);
        vec![detent.action.clone()]
    }

    /// A lever by so many degrees; it is told to the bench step by step.
    fn lever(&mut self, hand_valve: HandValve, by_deg: f32, seen: &Seen) -> Option<Action> {
        let at = match self.lever {
            Some((at, tick)) if seen.tick <= tick => at,
            Some(_) | None => seen.handle(hand_valve)?.deg(),
        };
        self.deg += by_deg;
        let to = swung(at, self.deg);
        let moved = f32::from(at - to);
        if (to - at).abs() < LEVER_STEP_DEG && !is_stop(to) || to == at {
            // Against its stop it does not wind up.
            let step = f32::from(LEVER_STEP_DEG);
            self.deg = self.deg.clamp(-step, step);
            return None;
        }
        self.deg -= moved;
        self.lever = Some((to, seen.tick));
        Some(Action::HandValve { hand_valve, degrees: to })
    }
}

/// Whether a lever goes no further than this angle.
fn is_stop(degrees: i16) -> bool {
    [HandleAngle::SHUT, HandleAngle::OPEN].iter().any(|stop| stop.deg() == degrees)
}
