//! How the job sheet lies open.

/// How the job sheet lies open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spread {
    /// One column beside the drawing.
    Narrow,
    /// One column over the drawing: it says itself what the manometer shows.
    Over,
    /// Two columns, all of it at a glance.
    Wide,
}
