//! Benches with nothing wrong: nothing may be changed.

use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::Event;
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::Duty;
use quarterturn::parts::Ending::InService;
use quarterturn::technician::diagnosis::Diagnosis;
use quarterturn::technician::drive::Witness;
use quarterturn::technician::proof::Spoiling;
use quarterturn::technician::{Technician, play};

use super::{faulty, full, healthy, prove, stating_heat, with};

/// Natural gas is sold with 950 to 1,150 Btu/ft³ (a range that handbooks give); a sound furnace on
/// lean or rich gas is left alone, whether the card names the heat or not.
#[test]
fn a_sound_furnace_is_left_alone_on_any_gas() {
    for (heat, on_card) in [(950, false), (1100, false), (950, true), (1150, true)] {
        let gas = format!("gas: (fuel: Natural, heating_value: \"{heat} Btu/ft3\")");
        let mut text = with(&healthy("natural"), "gas: (fuel: Natural)", &gas);
        if on_card {
            text = stating_heat(&text, heat);
        }
        assert!(full(&text, InService).is_empty(), "{heat}");
    }
}

/// Gas leaner than what the card says is its owner's.
#[test]
fn gas_leaner_than_the_card_says_is_told() {
    let text = faulty("natural", "lean_gas", "SupplyOwnerCalled");
    let text = stating_heat(&text, 1030);
    let proof = prove(&text, Spoiling::No);
    assert!(proof.is_full() && proof.diagnosis == [Diagnosis::TooLittleHeat], "{proof:?}");
}

/// One to eight burners, each with the drill that gives the plate's input: all of them lit is all
/// that is asked.
#[test]
fn any_number_of_burners_is_looked_at() {
    for (count, drill) in [(1, "#18"), (2, "#31"), (3, "#40"), (5, "#48"), (6, "#50"), (8, "#53")] {
        let text = with(&healthy("natural"), "orifice: \"#44\"", &format!("orifice: \"{drill}\""));
        let burners = format!("furnace: (\n        burners: {count},\n");
        let text = with(&text, "furnace: (\n", &burners);
        assert!(full(&text, InService).is_empty(), "{count}");
        if count == 6 {
            let faults = "    faults: [plugged_orifice],\n    card: (\n";
            let text = with(&text, "    card: (\n", faults);
            assert_eq!(full(&text, InService), [Diagnosis::OrificePlugged]);
        }
    }
}

/// What the card asks for is done, and not named as work that was not done.
#[test]
fn what_the_card_asks_for_is_done() {
    struct Said(Vec<Duty>);
    impl Witness for Said {
        fn acted(&mut self, _: &Bench, action: &Action, _: Result<(), Refusal>) {
            if let Action::HandOver(said) = action {
                self.0.clone_from(&said.not_done);
            }
        }
        fn ticked(&mut self, _: &Bench, _: Vec<Event>) {}
    }
    let scenario = quarterturn::scenario::load(&healthy("natural")).unwrap();
    let mut bench = Bench::new(scenario.draw(0));
    let mut technician = Technician::new(&bench.setup().card.clone());
    let mut said = Said(Vec::new());
    let _ = play(&mut bench, &mut technician, 7200, &mut said);
    let not_done = said.0;
    assert_eq!(not_done, [Duty::PipingLeakCheck]);
}
