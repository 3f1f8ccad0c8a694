//! How a group stands.

/// How a group stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// Whether it is shown.
    pub shown: Shown,
    /// Turned about its pivot, in degrees, clockwise.
    pub turn_deg: f32,
    /// Turns a second that it keeps turning by itself.
    pub spin_rev_s: f32,
    /// Scaled about its pivot.
    pub scale: [f32; 2],
    /// Opacity: 0 is clear, 1 as drawn.
    pub alpha: f32,
    /// Its colour is multiplied by this.
    pub tint: [f32; 3],
    /// How far it flickers, as a fraction of its height.
    pub flicker: f32,
    /// How far it sways to both sides as it flickers, in degrees.
    pub sway_deg: f32,
    /// How fast it flickers: 1 for a crisp flame, less for a lazy one.
    pub pace: f32,
    /// How far it rises or drifts while it comes and goes once, in units of the page.
    pub drift: [f32; 2],
}

/// Whether a group is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Shown {
    /// The group is drawn.
    Yes,
    /// The group is left out.
    No,
}

impl Shown {
    pub(super) fn when(condition: bool) -> Self {
        if condition { Self::Yes } else { Self::No }
    }
}

impl Default for Pose {
    fn default() -> Self {
        Self {
            shown: Shown::Yes,
            turn_deg: 0.0,
            spin_rev_s: 0.0,
            scale: [1.0, 1.0],
            alpha: 1.0,
            tint: [1.0; 3],
            flicker: 0.0,
            sway_deg: 0.0,
            pace: 1.0,
            drift: [0.0; 2],
        }
    }
}

impl Pose {
    /// Left out, otherwise as drawn.
    pub const HIDDEN: Self = Self {
        shown: Shown::No,
        turn_deg: 0.0,
        spin_rev_s: 0.0,
        scale: [1.0, 1.0],
        alpha: 1.0,
        tint: [1.0; 3],
        flicker: 0.0,
        sway_deg: 0.0,
        pace: 1.0,
        drift: [0.0; 2],
    };

    /// Shown, turned clockwise by so many degrees.
    pub(super) fn turned(turn_deg: f32) -> Self {
        Self { turn_deg, ..Self::default() }
    }

    /// Shown as drawn, or hidden.
    pub(super) fn when(condition: bool) -> Self {
        Self { shown: Shown::when(condition), ..Self::default() }
    }

    /// Faded; hidden when nothing is left.
    pub(super) fn faded(alpha: f64) -> Self {
        Self { shown: Shown::when(alpha > 0.01), alpha: narrow(alpha), ..Self::default() }
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "what is drawn needs no more than single precision"
)]
pub(super) fn narrow(value: f64) -> f32 {
    value as f32
}
