//! Spells of reading as the bench tells them: what ends one, what state each belongs to, and when a
//! number may be written.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::marking::{Brief, Ledger, evaluate};
use quarterturn::parts::{
    Ending, Fitted, HandValve, Level, LowSide, OnOff, OtherAppliance, Phase, Place, Port, Push,
    Reading, Screw, Stage, Tool,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::shared;
use quarterturn::senses::meter_history::Spell;
use quarterturn::setup::Setup;
use quarterturn::units::PressureUnit;

use crate::bench::rig;
use crate::faults::hand::{act, hook_up, others, shown, wait};

const VALVE: HandValve = HandValve::Furnace;

/// The meter on a port, zeroed by nobody; nothing burns.
fn hooked_up(port: Port, change: fn(&mut Setup)) -> Bench {
    let mut setup = rig::healthy(Fuel::Natural);
    setup.found.thermostat_mode = OnOff::Off;
    change(&mut setup);
    let mut bench = Bench::new(setup);
    hook_up(&mut bench, port);
    wait(&mut bench, 20);
    bench
}

/// Spells told since the last call, each as it was told last.
fn spells(bench: &mut Bench) -> Vec<Spell> {
    let mut spells: Vec<Spell> = Vec::new();
    for event in bench.take_events() {
        let EventKind::Showed(spell) = event.what else { continue };
        spells.retain(|one| one.shown.since != spell.shown.since);
        spells.push(spell);
    }
    spells
}

const READING: Action = Action::Write(Reading {
    port: Port::Inlet,
    stage: Stage::Rest,
    phase: Phase::Found,
    thousandths: 7_000,
    unit: PressureUnit::InWc,
});

/// When the spell that goes on began, as writing a number tells it.
fn running(bench: &mut Bench) -> Option<u64> {
    bench.take_events();
    act(bench, READING);
    spells(bench).last().map(|spell| spell.shown.since)
}

/// A hand that can move the number ends the spell; walking, looking, writing and the display's unit do
/// not. Valves, loads, zero, low side, caps and the hose do.
#[test]
fn what_moves_the_number_ends_the_spell() {
    let valve = Action::HandValve { hand_valve: VALVE, degrees: 80 };
    let range = Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On };
    let cap = Action::Cap { screw: Screw::Low, to: Fitted::Off };
    for (actions, ends) in [
        (vec![Action::Go(Place::Hall), Action::Go(Place::GasValve)], false),
        (vec![READING], false),
        (vec![Action::MeterUnit(PressureUnit::KPa)], false),
        (vec![Action::MeterZero], true),
        (vec![Action::MeterLowSide(LowSide::BurnerBox)], true),
        (vec![valve], true),
        (vec![Action::Go(Place::Hall), range], true),
        (vec![Action::Take(Tool::SlottedDriver)], false),
        (vec![Action::Take(Tool::SlottedDriver), cap], true),
        (vec![Action::HoseOff], true),
    ] {
        let mut bench = hooked_up(Port::Inlet, |_| {});
        let before = running(&mut bench);
        assert!(before.is_some());
        for action in &actions {
            act(&mut bench, action.clone());
        }
        wait(&mut bench, 3);
        assert_eq!(running(&mut bench) != before, ends, "{actions:?}");
    }
}

/// A manual valve that a hand put part way throttles, one that was found so does not, and one at rest
/// feeds the port either way.
#[test]
fn a_valve_throttles_where_a_hand_put_it() {
    let part = HandleAngle::from_deg(40).unwrap();
    let draw_with = |found: HandleAngle, degrees: Option<i16>| {
        let mut setup = rig::healthy(Fuel::Natural);
        setup.found.thermostat_mode = OnOff::Off;
        setup.found.manual_valve = found;
        let mut bench = Bench::new(setup);
        hook_up(&mut bench, Port::Inlet);
        if let Some(degrees) = degrees {
            act(&mut bench, Action::HandValve { hand_valve: VALVE, degrees });
        }
        wait(&mut bench, 20);
        act(&mut bench, Action::HoseOff);
        let told = spells(&mut bench);
        let draw = told.last().unwrap().demand;
        assert!(draw.is(Port::Inlet, Stage::Rest));
        draw.throttled
    };
    assert!(!draw_with(HandleAngle::OPEN, None));
    assert!(draw_with(HandleAngle::OPEN, Some(40)));
    assert!(!draw_with(HandleAngle::OPEN, Some(85)));
    assert!(draw_with(HandleAngle::OPEN, Some(84)));
    assert!(!draw_with(part, None));
    assert!(draw_with(part, Some(50)));
}

/// A spell knows the state that it was taken in: the furnace alone, everything on, the hose half on.
#[test]
fn a_spell_knows_its_state() {
    let mut bench = hooked_up(Port::Inlet, |_| {});
    act(&mut bench, Action::HoseOff);
    act(&mut bench, Action::HoseOn { port: Port::Inlet, push: Push::Halfway });
    wait(&mut bench, 20);
    others(&mut bench, OnOff::On);
    others(&mut bench, OnOff::Off);
    let told = spells(&mut bench);
    let has = |wanted: &dyn Fn(&Spell) -> bool| told.iter().any(wanted);
    assert!(has(&|it| it.push == Push::Halfway && it.is(Port::Inlet, Stage::Rest)));
    assert!(has(&|it| it.demand.burning == 2 && it.demand.any_flow && it.demand.firing.is_none()));
    assert!(
        told.iter().filter(|it| it.demand.burning > 0).all(|it| !it.is(Port::Inlet, Stage::Rest))
    );
}

/// Low is called, and its number written so many seconds after the burners fire; then it burns on for
/// so long.
fn low_written_after(seconds: u64, then_s: u64) -> Vec<String> {
    let mut bench = hooked_up(Port::Manifold, |setup| setup.meter.zero_error_pa = 0.0);
    act(&mut bench, Action::Go(Place::Hall));
    let room_half_f = bench.seen().hall.unwrap().room_half_f;
    act(&mut bench, Action::Setpoint(room_half_f + 3));
    act(&mut bench, Action::ThermostatMode(OnOff::On));
    let mut left = 200 * 50;
    while bench.truth().firing != Some(Level::Low) {
        bench.step();
        left -= 1;
        assert!(left > 0, "it does not light");
    }
    act(&mut bench, Action::Go(Place::PlantRoom));
    for _ in 0..seconds * 50 {
        bench.step();
    }
    #[expect(clippy::cast_possible_truncation, reason = "a display's number")]
    let thousandths = (shown(&bench) * 1000.0).round() as i32;
    let (port, stage, phase) = (Port::Manifold, Stage::Firing(Level::Low), Phase::Found);
    let unit = PressureUnit::InWc;
    act(&mut bench, Action::Write(Reading { port, stage, phase, thousandths, unit }));
    wait(&mut bench, then_s);
    bench.apply(&Action::Go(Place::Hall)).unwrap();
    bench.apply(&Action::ThermostatMode(OnOff::Off)).unwrap();
    wait(&mut bench, 5);
    let mut ledger = Ledger::new(bench.setup().clone());
    ledger.take(bench.take_events());
    let brief = Brief { right_endings: vec![Ending::InService] };
    let findings = evaluate(&shared().unwrap(), &ledger, &brief).findings;
    let numbers = ["read-unsettled", "invented", "wrong-stage", "wrong-unit"];
    findings.into_iter().map(|it| it.rule).filter(|it| numbers.contains(&it.as_str())).collect()
}

/// The number that is still seven seconds after the burners fire is the one that the card's eight
/// seconds give: written then it is right. One second after they fire it is on its way.
#[test]
fn a_still_number_may_be_written_at_once() {
    assert_eq!(low_written_after(7, 20), [""; 0]);
    assert_eq!(low_written_after(12, 0), [""; 0]);
    assert_eq!(low_written_after(1, 20), ["read-unsettled"]);
}
