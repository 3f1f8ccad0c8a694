//! Boxes and edges of what is painted.

/// Whether an edge shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edge {
    /// It does, so it is made soft.
    Soft,
    /// A line is painted over it, or it is too faint to be seen.
    Covered,
}

/// Corners of a box: left, top, right, bottom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Box4 {
    /// Least x and y.
    pub min: [f32; 2],
    /// Greatest x and y.
    pub max: [f32; 2],
}

impl Box4 {
    /// The box around both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self {
            min: [self.min[0].min(other.min[0]), self.min[1].min(other.min[1])],
            max: [self.max[0].max(other.max[0]), self.max[1].max(other.max[1])],
        }
    }

    /// The point halfway between its corners.
    #[must_use]
    pub fn center(self) -> [f32; 2] {
        [(self.min[0] + self.max[0]) / 2.0, (self.min[1] + self.max[1]) / 2.0]
    }

    /// Whether `other` lies inside, allowing `slack` on each side.
    #[must_use]
    pub fn holds(self, other: Self, slack: f32) -> bool {
        (0..2).all(|i| other.min[i] >= self.min[i] - slack && other.max[i] <= self.max[i] + slack)
    }
}
