//! A supply that is left locking up too high.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::parts::{Ending, OnOff, OtherAppliance, Place};
use quarterturn::rules::{Essential, Severity};
use quarterturn::setup::SupplyRight;
use quarterturn::units::PA_PER_INWC;

use super::{found, handed_over, rules};
use crate::bench::rig;
use crate::faults::hand::{act, wait};

/// What stands at the inlet at rest is held against nameplate and plate where the supply is one's own
/// (10.0 in. w.c. on the natural rig), against the gas valve (14.0) whoever owns it; with gas flowing
/// it is no lock-up.
#[test]
fn lock_up_is_held_against_its_limit() {
    use SupplyRight::{OwnerOnly, Trainee};
    for (lock_up, right, flows, counts) in [
        (9.9, Trainee, false, false),
        (10.3, Trainee, false, true),
        (10.3, OwnerOnly, false, false),
        (14.4, OwnerOnly, false, true),
        (10.3, Trainee, true, false),
    ] {
        let mut setup = rig::healthy(Fuel::Natural);
        setup.supply.lockup_pa = lock_up * PA_PER_INWC;
        setup.card.supply = right;
        setup.found.thermostat_mode = OnOff::Off;
        let to = if flows { OnOff::On } else { OnOff::Off };
        for (_, found) in &mut setup.found.other_appliances {
            *found = to;
        }
        let mut bench = Bench::new(setup);
        wait(&mut bench, 60);
        act(&mut bench, Action::Go(Place::Hall));
        act(&mut bench, Action::Go(Place::PlantRoom));
        let appliance = OtherAppliance::WaterHeater;
        act(&mut bench, Action::OtherAppliance { appliance, to });
        let marks = handed_over(bench, Ending::InService, &[Ending::InService]);
        let case = format!("{lock_up} {right:?} {flows}");
        assert_eq!(rules(&marks).contains(&"lock-up-over-limit"), counts, "{case}");
        if counts {
            let finding = found(&marks, "lock-up-over-limit");
            let gated = (finding.severity, finding.fails);
            assert_eq!(gated, (Severity::Critical, Some(Essential::SupplyInLimits)), "{case}");
        }
    }
}
