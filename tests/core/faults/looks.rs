//! What the eye tells at hose, trap, rod and registers: each fault there shows in a look, and nothing
//! shows on a sound furnace.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::{Door, Fitted, Place, Subject};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::Condition;

const LOOKS: [(Subject, &[Fault]); 4] = [
    (
        Subject::DraftHose,
        &[
            Fault::DraftHoseOff,
            Fault::SplitDraftHose,
            Fault::BlockedCondensateTrap,
            Fault::DryCondensateTrap,
        ],
    ),
    (Subject::BoxHose, &[Fault::BurnerBoxHoseOff]),
    (Subject::FlameRod, &[Fault::DirtyFlameRod]),
    (Subject::Registers, &[Fault::ClosedRegisters]),
];

fn look(bench: &mut Bench, subject: Subject) -> (String, Option<Condition>) {
    for action in [
        Action::Go(Place::PlantRoom),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Go(subject.place()),
    ] {
        let _ = bench.apply(&action);
    }
    bench.apply(&Action::Look(subject)).unwrap();
    let seen = bench.seen();
    let note = seen.sheet.note(subject).unwrap();
    (note.words(), note.finding.condition())
}

/// The faults of one subject are told from sound, and from each other.
#[test]
fn each_fault_shows_where_it_is() {
    for (subject, faults) in LOOKS {
        let mut words = Vec::new();
        for fault in faults {
            for fuel in [Fuel::Natural, Fuel::Propane] {
                let sound = healthy_for(*fault, fuel).unwrap();
                let (text, condition) = look(&mut Bench::new(sound.clone()), subject);
                assert_eq!(condition, Some(Condition::Good), "{text}");
                let mut setup = sound;
                fault.apply(&mut setup, fault.entry().severity.typical(fuel));
                let (text, condition) = look(&mut Bench::new(setup), subject);
                assert_eq!(condition, Some(Condition::Bad), "{text}");
                words.push(text);
            }
        }
        words.sort();
        words.dedup();
        assert_eq!(words.len(), faults.len(), "{words:?}");
    }
}

/// Hose and rod are behind the burner door, and what was mended looks mended.
#[test]
fn behind_the_door_and_mended() {
    let mut setup = healthy_for(Fault::DraftHoseOff, Fuel::Natural).unwrap();
    Fault::DraftHoseOff.apply(&mut setup, 1.0);
    let mut bench = Bench::new(setup);
    bench.apply(&Action::Go(Place::PlantRoom)).unwrap();
    assert_eq!(bench.apply(&Action::Look(Subject::DraftHose)), Err(Refusal::DoorInTheWay));
    assert_eq!(look(&mut bench, Subject::DraftHose).1, Some(Condition::Bad));
    bench.apply(&Action::Mend(Repair::RefitDraftHose)).unwrap();
    assert_eq!(look(&mut bench, Subject::DraftHose).1, Some(Condition::Good));
}
