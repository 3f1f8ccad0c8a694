//! Where the job goes on from a decision. A file that decides names a course; only the plan knows
//! the steps of each, so that no file has to know the others.

/// A way to go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Course {
    /// From the yard inward: nose, papers, eyes.
    Arrive,
    /// The inlet port opened and read in every state, then the supply judged.
    InletAsFound,
    /// The inlet read again in every state after the supply was worked on.
    InletAsLeft,
    /// The inlet read at rest again after flow, then its lock-up judged.
    InletAfterFlow,
    /// The inlet port closed, the manifold port opened and read.
    OnToManifold,
    /// The manifold read on each level, then the levels judged.
    ManifoldAsFound,
    /// The levels judged and set.
    SetLevels,
    /// The manifold port closed, a cycle seen, everything restored, handed over.
    Finish,
    /// What waits to be mended is mended with both ports closed, then the last cycle again.
    MendClosed,
    /// What waits to be mended is mended, and read again where the hose is.
    MendAndReadAgain,
    /// The same with the hose on the manifold port.
    MendAtManifold,
    /// The same with the inlet port open and the line without pressure.
    MendInOpenLine,
    /// Read again from the beginning where the hose is.
    ReadAgain,
    /// Nothing burns, or not the level that is called: the reason is looked for at the furnace.
    LookForReason,
    /// The limit has opened.
    LimitOpened,
    /// The manometer is of no use: another, or a fresh battery.
    AnotherMeter,
    /// Whatever port is open is closed.
    CloseOpenPort,
    /// The same, and the furnace left shut off.
    CloseAndLeave,
    /// Shut off, tagged, told, handed over.
    LeaveShutOff,
}
