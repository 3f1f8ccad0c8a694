//! The scenarios that come with the program.

/// A scenario that comes with the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Builtin {
    /// Its id on the command line and in records.
    pub id: &'static str,
    /// Its text.
    pub text: &'static str,
}

/// The jobs, in the order in which they are offered.
pub const JOBS: [Builtin; 2] = [
    Builtin {
        id: "propane-cold-morning",
        text: include_str!("../../scenarios/propane-cold-morning.ron"),
    },
    Builtin {
        id: "natural-gas-busy-kitchen",
        text: include_str!("../../scenarios/natural-gas-busy-kitchen.ron"),
    },
];

/// Two benches without a fault, against which the model is calibrated.
pub const HEALTHY: [Builtin; 2] = [
    Builtin { id: "healthy-natural", text: include_str!("../../scenarios/healthy-natural.ron") },
    Builtin { id: "healthy-propane", text: include_str!("../../scenarios/healthy-propane.ron") },
];

/// The one with this id, jobs and healthy benches alike.
#[must_use]
pub fn find(id: &str) -> Option<&'static Builtin> {
    JOBS.iter().chain(&HEALTHY).find(|one| one.id == id)
}
