//! A supply regulator that locks up badly after flow, with nothing to see at its vent: the reading at rest
//! after flow is what tells.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::Subject;
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::{Condition, Observation, Seen};
use quarterturn::setup::SupplyRight;
use quarterturn::technician::diagnosis::Diagnosis;
use quarterturn::technician::drive::{Nobody, Stopped};
use quarterturn::technician::{Player, Technician, play};

/// A technician to whom the supply regulator's vent looks free, whatever sits in it.
struct Deceived(Technician);

impl Player for Deceived {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        let mut seen = seen.clone();
        for note in &mut std::sync::Arc::make_mut(&mut seen.sheet).notes {
            if note.subject == Subject::SupplyVent {
                note.finding = Observation::Condition(Condition::Good);
            }
        }
        self.0.next(&seen)
    }

    fn refused(&mut self, action: &Action, why: Refusal) {
        Player::refused(&mut self.0, action, why);
    }

    fn finished(&self) -> bool {
        self.0.finished()
    }
}

/// What it takes a healthy bench for on which the vent is blocked or not, and what it mends.
fn takes_for(blocked: bool, supply: SupplyRight) -> (Vec<Diagnosis>, Vec<Repair>) {
    let fault = Fault::BlockedRegulatorVent;
    let mut setup = healthy_for(fault, Fuel::Natural).unwrap();
    setup.card.supply = supply;
    if blocked {
        fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
    }
    let mut player = Deceived(Technician::new(&setup.card));
    let mut bench = Bench::new(setup);
    let stopped = play(&mut bench, &mut player, 3 * 3600, &mut Nobody);
    assert_eq!((stopped, player.0.refused()), (Stopped::Over, &[][..]));
    (player.0.diagnosis(), bench.mended().to_vec())
}

/// At rest before the first light-up all is well, after flow the inlet stands two inches higher: it
/// creeps. Where it is the trainee's, the regulator is renewed, else its owner is told. On a sound bench
/// nothing is said of it.
#[test]
fn a_bad_lock_up_after_flow_is_creep() {
    let (taken_for, mended) = takes_for(true, SupplyRight::Trainee);
    assert_eq!(taken_for, [Diagnosis::SupplyCreeps]);
    assert_eq!(mended, [Repair::ReplaceSupplyRegulator]);
    let (taken_for, mended) = takes_for(true, SupplyRight::OwnerOnly);
    assert_eq!((taken_for, mended), (vec![Diagnosis::SupplyCreeps], vec![]));
    for supply in [SupplyRight::Trainee, SupplyRight::OwnerOnly] {
        assert_eq!(takes_for(false, supply), (vec![], vec![]));
    }
}
