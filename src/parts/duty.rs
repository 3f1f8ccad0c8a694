//! Work beyond the pressures that a job card can ask for, and that a hand-over can name as not done.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

use super::Subject;

named! {
    /// A piece of work that belongs to a full job.
    Duty {
        /// Combustion analysis and carbon monoxide in the flue, at the full rate.
        Combustion = "combustion", t!("duty-combustion");
        /// Temperature rise at every firing level.
        TemperatureRise = "temperature-rise", t!("duty-temperature-rise");
        /// Gas rate at the meter's dial, at the full rate.
        GasRate = "gas-rate", t!("duty-gas-rate");
        /// Leak check of the whole piping.
        PipingLeakCheck = "piping-leak-check", t!("duty-piping-leak-check");
        /// Vent, air opening, filter and carbon monoxide alarm looked at on arrival.
        ArrivalLooks = "arrival-looks", t!("duty-arrival-looks");
    }
}

/// What is looked at on arrival, in the order of the way through the house.
pub const ARRIVAL_LOOKS: [Subject; 4] =
    [Subject::CoAlarm, Subject::Vent, Subject::AirOpening, Subject::Filter];
