//! Work beyond the pressures that a job asks for: what its card lists, or what goes by the job.

use super::format::{Scenario, Source};
use crate::appliance::plate::Fuel;
use crate::parts::Duty;

/// What is asked for where the card lists nothing, in the order of the work: a furnace has air and
/// flue to be looked at, a rise to be taken and, the analyzer being in every bag, a flue to be
/// analyzed; a gas meter can be clocked.
const USUAL: [Duty; 4] =
    [Duty::ArrivalLooks, Duty::TemperatureRise, Duty::Combustion, Duty::GasRate];

/// What a job asks for.
pub(super) fn of(scenario: &Scenario) -> Vec<Duty> {
    match &scenario.card.required {
        Some(listed) => listed.clone(),
        None => USUAL.into_iter().filter(|&duty| has_means(duty, scenario)).collect(),
    }
}

/// Whether the job gives the means for a piece of work. A test dial is at the meter of natural gas:
/// a meter behind a propane supply is not read for this.
pub(super) fn has_means(duty: Duty, scenario: &Scenario) -> bool {
    match duty {
        Duty::GasRate => {
            let meter = matches!(scenario.supply.source, Source::Meter(_));
            meter && scenario.gas.fuel == Fuel::Natural
        }
        Duty::Combustion | Duty::TemperatureRise | Duty::PipingLeakCheck | Duty::ArrivalLooks => {
            true
        }
    }
}
