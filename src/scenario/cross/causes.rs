//! Whether a job's faults leave a finding anything to name.

use super::context::Cross;
use crate::catalogue::cause::{Origin, true_causes};
use crate::measure::causes::to_be_named;
use crate::scenario::format::Scenario;

/// Tells where a fault that the first seed draws asks for no finding, because nothing that is read,
/// seen, heard or smelt tells of it.
pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    if scenario.faults.is_empty() {
        return;
    }
    let setup = scenario.draw(0);
    let to_be_named = to_be_named(&setup);
    for it in true_causes(&setup) {
        if let Origin::Fault(fault, _) = it.origin
            && !to_be_named.contains(&it)
        {
            let message = t!("problem-fault-unfelt", fault = fault.name());
            cross.warn("faults", message);
        }
    }
}
