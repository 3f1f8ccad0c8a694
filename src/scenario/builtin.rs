//! The scenarios that come with the program.

use crate::appliance::plate::Fuel;
use crate::catalogue::fault::Fault;
use crate::setup::Setup;
use crate::units::PA_PER_INWC;

/// A scenario that comes with the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Builtin {
    /// Its id on the command line and in records.
    pub id: &'static str,
    /// Text of the scenario, in the format.
    pub text: &'static str,
}

/// A scenario of the folder `scenarios`, by its file's name.
macro_rules! ship {
    ($id:literal) => {
        Builtin { id: $id, text: include_str!(concat!("../../scenarios/", $id, ".ron")) }
    };
}

/// The two jobs on which the model and the marking were first tried.
pub const JOBS: [Builtin; 2] = [ship!("propane-cold-morning"), ship!("natural-gas-busy-kitchen")];

/// Two benches without a fault, against which the model is calibrated.
pub const HEALTHY: [Builtin; 2] = [ship!("healthy-natural"), ship!("healthy-propane")];

/// Everything that ships, in the order in which it is offered: by step, the easier first.
pub const LADDER: [Builtin; 37] = [
    ship!("one-screw-one-number"),
    ship!("healthy-natural"),
    ship!("healthy-propane"),
    ship!("borrowed-bag"),
    ship!("first-call-of-the-day"),
    ship!("after-the-painters"),
    ship!("no-heat-after-cleaning"),
    ship!("propane-cold-morning"),
    ship!("natural-gas-busy-kitchen"),
    ship!("an-order-without-a-fuel"),
    ship!("short-spells"),
    ship!("a-label-of-its-own"),
    ship!("a-roar-at-night"),
    ship!("slow-half-of-winter"),
    ship!("a-hard-light"),
    ship!("two-meters-two-numbers"),
    ship!("needle-in-no-hurry"),
    ship!("behind-the-cupboard"),
    ship!("the-new-dial"),
    ship!("lukewarm-at-dawn"),
    ship!("stops-when-warm"),
    ship!("lights-and-quits"),
    ship!("hums-and-clicks"),
    ship!("no-bite-on-high"),
    ship!("after-a-quiet-summer"),
    ship!("leaves-on-the-lawn"),
    ship!("first-monday-of-frost"),
    ship!("house-on-the-pass"),
    ship!("thaw-week"),
    ship!("the-helpful-cousin"),
    ship!("the-second-kitchen"),
    ship!("while-dinner-cooks"),
    ship!("wet-and-windy"),
    ship!("a-letter-about-the-yard"),
    ship!("end-of-the-month"),
    ship!("a-trace-by-the-door"),
    ship!("moved-with-the-house"),
];

/// The one with this id.
#[must_use]
pub fn find(id: &str) -> Option<&'static Builtin> {
    LADDER.iter().find(|one| one.id == id)
}

/// Suction of the sealed burner box on which faults of that box are shown, in inches of water.
const SEALED_BOX_INWC: f64 = 0.4;

/// The healthy bench of a fuel with a manometer without error: what a fault's pattern is held
/// against. Faults of a sealed burner box get a furnace that has one. None where the fault does not
/// fit the fuel.
#[must_use]
pub fn healthy_for(fault: Fault, fuel: Fuel) -> Option<Setup> {
    let [natural, propane] = HEALTHY;
    let text = match fuel {
        Fuel::Natural => natural.text,
        Fuel::Propane => propane.text,
    };
    let mut setup = super::load(text).ok()?.draw(0);
    setup.meter.zero_error_pa = 0.0;
    setup.meter.drift_pa = 0.0;
    if matches!(fault, Fault::BurnerBoxHoseOff | Fault::MissingStageCap) {
        setup.furnace.box_suction_pa = SEALED_BOX_INWC * PA_PER_INWC;
    }
    fault.misfit(&setup).is_none().then_some(setup)
}
