//! Pipe work: the piping shut in and watched. A hole in it, wherever it is, shows in the number.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::bench::run::Nobody;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::measure::driver::Driver;
use quarterturn::parts::{Ending, Joint, JointVerdict, Place, Port};
use quarterturn::procedure::Goal;
use quarterturn::units::PA_PER_INWC;

use super::{faulty, full, healthy, with};
use crate::bench::rig;

/// A trunk too narrow, a regulator that creeps, water in the drip leg, air in the line, a kinked
/// connector: mended with full marks, so with the joints soaped, the piping watched and the
/// other appliances lit.
#[test]
fn slow_its_own_pipe_work_is_checked() {
    for fault in [
        "undersized_trunk",
        "creeping_supply_seat",
        "water_in_line",
        "air_in_line",
        "kinked_connector",
    ] {
        let _ = full(&faulty("natural", fault, "InService"), Ending::InService);
    }
}

/// A card that asks for the leak check gets it, on a bench with nothing wrong.
#[test]
fn what_the_card_asks_for_is_done() {
    let asked = "    card: (\n        required: [PipingLeakCheck],\n";
    let _ = full(&with(&healthy("natural"), "    card: (\n", asked), Ending::InService);
}

/// Shut in, sound piping holds its pressure for three minutes; a crack of 1.5 mm in the connector empties
/// it, and that is what is written. The supply is open again afterwards.
#[test]
fn a_hole_in_the_piping_shows_in_the_number() {
    for fuel in [Fuel::Natural, Fuel::Propane] {
        for (bends, written) in [(false, JointVerdict::Tight), (true, JointVerdict::Leaking)] {
            let mut by = Driver::new(Bench::new(rig::healthy(fuel)));
            assert!(by.reach(&[Goal::HoseOn(Port::Inlet)], &mut Nobody));
            if bends {
                let mut bench = by.leave();
                bench.apply(&Action::Mend(Repair::StraightenConnector)).unwrap();
                by = Driver::new(bench);
            }
            assert!(by.reach(&[Goal::GasOn, Goal::PipingChecked], &mut Nobody));
            assert_eq!(by.bench().seen().sheet.piping, Some(written), "{fuel:?}");
            let truth = by.bench().truth();
            assert!(truth.supply_valve.is_open(), "{fuel:?}");
            let held = by.bench().seconds();
            assert!(held > 190.0, "{held}");
        }
    }
}

/// A joint in the yard is soaped in the yard, under gas, and its verdict stands on the sheet.
#[test]
fn a_joint_in_the_yard_is_soaped() {
    let mut by = Driver::new(Bench::new(rig::healthy(Fuel::Propane)));
    for joint in [Joint::Riser, Joint::SupplyRegulator, Joint::FirstRegulator, Joint::TankValve] {
        assert!(by.reach(&[Goal::JointChecked(joint)], &mut Nobody), "{joint:?}");
        let seen = by.bench().seen();
        assert_eq!(seen.place, Place::Yard);
        assert_eq!(seen.sheet.joints.last(), Some(&(joint, JointVerdict::Tight)));
    }
    let mut events = by.leave();
    let judged: Vec<f64> = events
        .take_events()
        .iter()
        .filter_map(|event| match event.what {
            quarterturn::hands::event::EventKind::FluidJudged { lowest_pa, .. } => Some(lowest_pa),
            _ => None,
        })
        .collect();
    assert!(judged.iter().all(|pa| *pa > 8.0 * PA_PER_INWC), "{judged:?}");
    // Before the regulators stands more than behind them.
    assert!(judged.iter().any(|pa| *pa > 100.0 * PA_PER_INWC), "{judged:?}");
}
