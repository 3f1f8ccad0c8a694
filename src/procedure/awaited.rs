//! Events that a goal waits for, and how long each may take.

/// Longest time from a call to a lit level, in seconds: three tries to light and the purges
/// between.
pub const LIGHT_UP_S: f64 = 240.0;

/// What is waited for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Awaited {
    /// Burners out, purge over, blower stopped.
    Rest,
    /// Trapped gas seeps away past a loose plug.
    Seep,
    /// The pressure in the hose falls, its end half off.
    Bleed,
    /// The manual valve stands part open for a moment, so that gas comes slowly.
    Trickle,
    /// The manometer shows its first number.
    MeterWakes,
    /// The manometer's zero drifts no more.
    MeterWarms,
    /// The manometer stands still after its zero, or after its hose was moved.
    MeterRests,
    /// Leak fluid is watched.
    Dwell,
    /// The control lights the burners on the level that is called.
    Light,
    /// The thermostat follows its setpoint.
    Call,
    /// The furnace burns on a level until the air has come to rest.
    AirRests,
    /// The instrument held to a spot comes to its number.
    Reads,
    /// The hand of the dial makes whole turns.
    Turns,
    /// The piping is shut in, and its pressure is watched.
    LineHolds,
    /// A finding is thought out and written: nobody can say it for another.
    Finding,
}

impl Awaited {
    /// The longest that is waited for it, in seconds; after that the work goes on as if it had
    /// come.
    #[must_use]
    pub fn at_most_s(self) -> f64 {
        match self {
            Self::Rest | Self::Seep | Self::LineHolds => 600.0,
            Self::Bleed => 240.0,
            Self::Trickle | Self::MeterRests | Self::Call => 10.0,
            Self::MeterWakes => 30.0,
            Self::MeterWarms | Self::Finding => 3600.0,
            Self::Dwell => 30.0,
            Self::AirRests => 600.0,
            Self::Reads => 180.0,
            Self::Turns => 1200.0,
            Self::Light => LIGHT_UP_S,
        }
    }
}
