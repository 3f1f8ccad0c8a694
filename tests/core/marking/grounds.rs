//! Grounds for leaving an appliance shut off: what was found, and not what was made.

use quarterturn::appliance::ignition::ControlState;
use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::hands::event::EventKind;
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::measure::air::limits;
use quarterturn::parts::{Door, Ending, Fitted, Height, Joint, Level, OnOff, Port, Spot, Subject};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::WrittenMeasured;

use super::sheet::{FULL_LOAD, Sheet};

/// A job whose right end is to be shut off: a hole in the exchanger.
fn holed() -> Sheet {
    with(Fault::HoledExchanger, Fuel::Natural)
}

fn with(fault: Fault, fuel: Fuel) -> Sheet {
    let mut setup = healthy_for(fault, fuel).unwrap();
    fault.apply(&mut setup, fault.entry().severity.typical(fuel));
    Sheet::of(setup)
}

/// Whether nothing that was found excuses the readings that are missing.
fn is_a_guess(sheet: &mut Sheet) -> bool {
    sheet.truth.manual_valve = HandleAngle::SHUT;
    sheet.truth.tag = Fitted::On;
    sheet.handed_over(Ending::ShutOff);
    let marks = sheet.marks_with(&[Ending::ShutOff]);
    marks.findings.iter().any(|it| it.rule == "never-read-running")
}

fn flue(figures: &[(Quantity, f64)]) -> EventKind {
    let figures = figures.iter().map(|&(quantity, value)| Figure::new(quantity, value)).collect();
    let written = WrittenMeasured { spot: Spot::Flue, tick: 0, figures };
    EventKind::WroteMeasured { written, firing: Some(Level::High) }
}

/// A flue sample speaks for shutting off if its figures are bad: more than 400 ppm of carbon monoxide,
/// air-free (ANSI Z21.47's limit, from memory), or air outside what is right for the gas.
#[test]
fn a_flue_sample_speaks_by_its_figures() {
    use Quantity::{CarbonMonoxideAirFree, ExcessAir};
    for (figures, guess) in [
        (&[(CarbonMonoxideAirFree, 30.0), (ExcessAir, 42.0)][..], true),
        (&[(CarbonMonoxideAirFree, 400.0), (ExcessAir, 42.0)], true),
        (&[(CarbonMonoxideAirFree, 401.0), (ExcessAir, 42.0)], false),
        (&[(CarbonMonoxideAirFree, 30.0), (ExcessAir, 20.0)], false),
        (&[(CarbonMonoxideAirFree, 30.0), (ExcessAir, 80.0)], false),
        (&[(CarbonMonoxideAirFree, 30.0)], true),
        (&[(ExcessAir, 42.0)], true),
    ] {
        let mut sheet = holed();
        sheet.push(flue(figures));
        assert_eq!(is_a_guess(&mut sheet), guess, "{figures:?}");
    }
    // The analyzer shows whole per cents; right are 31.3 to 58.1 of the piped gas that is sold.
    let (least, most) = limits(&holed().setup.card, Fuel::Natural);
    assert!((1.31..1.32).contains(&least) && (1.58..1.59).contains(&most), "{least} {most}");
    for (excess, guess) in [(31.0, false), (32.0, true), (58.0, true), (59.0, false)] {
        let mut sheet = holed();
        sheet.push(flue(&[(ExcessAir, excess)]));
        assert_eq!(is_a_guess(&mut sheet), guess, "{excess}");
    }
    // Taken elsewhere, or with the burners out, such figures are none of the flue.
    for (wanted, burning) in [(Spot::SupplyAir, Some(Level::High)), (Spot::Flue, None)] {
        let mut sheet = holed();
        let mut event = flue(&[(CarbonMonoxideAirFree, 900.0)]);
        if let EventKind::WroteMeasured { written, firing } = &mut event {
            (written.spot, *firing) = (wanted, burning);
        }
        sheet.push(event);
        assert!(is_a_guess(&mut sheet), "{wanted:?} {burning:?}");
    }
}

/// The flames tell of a hole in the exchanger once the blower runs; looked at before, or not looked at,
/// they tell nothing.
#[test]
fn flames_tell_of_a_hole_while_the_blower_runs() {
    let look = Action::Look(Subject::Flames);
    for (control, guess) in [
        (ControlState::Burning(Level::High), false),
        (ControlState::BlowerOnDelay, true),
        (ControlState::Standby, true),
    ] {
        let mut sheet = holed();
        sheet.truth.control = control;
        sheet.did(look.clone());
        assert_eq!(is_a_guess(&mut sheet), guess, "{control:?}");
    }
    let mut sound = Sheet::new();
    sound.truth.control = ControlState::Burning(Level::High);
    sound.did(look);
    assert!(is_a_guess(&mut sound));
}

/// A lockout is a ground; one that a hand made by shutting a valve, a switch or a door is none.
#[test]
fn a_lockout_of_ones_own_making_is_no_ground() {
    let lockout = |make: fn(&mut Sheet)| {
        let mut sheet = holed();
        let lockout = EventKind::Control { from: ControlState::Retry, to: ControlState::Lockout };
        make(&mut sheet);
        sheet.push(lockout);
        sheet.did(Action::PutDown);
        let opened = holed().truth;
        sheet.truth = opened;
        is_a_guess(&mut sheet)
    };
    assert!(!lockout(|_| {}));
    assert!(lockout(|sheet| sheet.truth.manual_valve = HandleAngle::SHUT));
    assert!(lockout(|sheet| sheet.truth.manual_valve = HandleAngle::from_deg(20).unwrap()));
    assert!(lockout(|sheet| sheet.truth.supply_valve = HandleAngle::SHUT));
    assert!(lockout(|sheet| sheet.truth.valve_switch = OnOff::Off));
    assert!(lockout(|sheet| sheet.truth.furnace_switch = OnOff::Off));
    assert!(lockout(|sheet| sheet.truth.doors[Door::Blower] = Fitted::Off));
    // A valve that was found aslant was left so by nobody here.
    let mut setup = holed().setup;
    setup.found.manual_valve = HandleAngle::from_deg(20).unwrap();
    let mut aslant = Sheet::of(setup);
    let (from, to) = (ControlState::Retry, ControlState::Lockout);
    aslant.push(EventKind::Control { from, to }).did(Action::PutDown);
    assert!(!is_a_guess(&mut aslant));
    // The burner door is off while the meter is on.
    assert!(!lockout(|sheet| sheet.truth.doors[Door::Burner] = Fitted::Off));
}

/// A switch that opens in the middle of a call is a ground; a call that begins anew, within the purge
/// after the last one too, is none.
#[test]
fn a_call_that_begins_anew_is_no_ground() {
    for (from, guess) in [
        (ControlState::InducerStart, true),
        (ControlState::PostPurge, true),
        (ControlState::PrePurge, false),
        (ControlState::Burning(Level::Low), false),
    ] {
        let mut sheet = holed();
        sheet.push(EventKind::Control { from, to: ControlState::PressureSwitchProving });
        sheet.did(Action::PutDown);
        assert_eq!(is_a_guess(&mut sheet), guess, "{from:?}");
    }
}

/// A level that is reached is no ground; one that is waited for in vain is.
#[test]
fn only_a_level_waited_for_in_vain_is_a_ground() {
    for (to, guess) in [(Level::High, true), (Level::Low, false)] {
        let mut sheet = holed();
        let from = ControlState::NextSwitchProving;
        sheet.push(EventKind::Control { from, to: ControlState::Burning(to) });
        sheet.did(Action::PutDown);
        assert_eq!(is_a_guess(&mut sheet), guess, "{to:?}");
    }
}

/// Bubbles are a ground where the joint was found so; where the plug was left loose by the same hand
/// they are none.
#[test]
fn bubbles_of_ones_own_making_are_no_ground() {
    for (worked, guess) in [(false, false), (true, true)] {
        let mut sheet = holed();
        sheet.truth.ports[Port::Inlet].leak_area_m2 = 1e-7;
        if worked {
            sheet.did(Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(2) });
        }
        sheet.push(EventKind::FluidJudged {
            joint: Joint::InletPort,
            lowest_pa: 1_700.0,
            dwell_s: 15.0,
            firing: None,
            bubbles: true,
            manual_valve: HandleAngle::OPEN,
        });
        sheet.did(Action::PutDown);
        assert_eq!(is_a_guess(&mut sheet), guess, "{worked}");
    }
}

/// What was looked at speaks if it is what does not fit: springs of another gas are seen at the springs
/// and not on the plate.
#[test]
fn papers_speak_where_they_do_not_fit() {
    for (fault, subject, guess) in [
        (Fault::NaturalSpringsOnPropane, Subject::SpringMark, false),
        (Fault::NaturalSpringsOnPropane, Subject::Orifices, true),
        (Fault::NaturalOrificesOnPropane, Subject::Orifices, false),
        (Fault::NaturalOrificesOnPropane, Subject::Plate, true),
        (Fault::UnconvertedOnPropane, Subject::Plate, false),
    ] {
        let mut sheet = with(fault, Fuel::Propane);
        sheet.setup.faults.push((Fault::BlockedFilter, 0.5));
        sheet.did(Action::PutDown).did(Action::Look(subject));
        assert_eq!(is_a_guess(&mut sheet), guess, "{fault:?} {subject:?}");
    }
}

/// A right number outside the plate is a ground, one that was made up is none.
#[test]
fn a_number_speaks_if_it_was_shown() {
    for (shown, guess) in [(4.2, false), (6.2, true)] {
        let mut sheet = holed();
        sheet.stood(Port::Inlet, FULL_LOAD, shown).write(Port::Manifold, FULL_LOAD, 6.2);
        sheet.write(Port::Inlet, FULL_LOAD, 4.2);
        let found = is_a_guess(&mut sheet);
        assert_eq!(found, guess, "{shown}");
    }
}

/// A look speaks of what is seen there: a gauge of a nearly empty tank, a vent that is stopped up.
#[test]
fn a_look_speaks_of_what_is_there() {
    for (fault, fuel, subject, guess) in [
        (Fault::NearlyEmptyTank, Fuel::Propane, Subject::TankGauge, false),
        (Fault::NearlyEmptyTank, Fuel::Propane, Subject::Plate, true),
        (Fault::BlockedFilter, Fuel::Propane, Subject::TankGauge, true),
        (Fault::BlockedRegulatorVent, Fuel::Natural, Subject::SupplyVent, false),
        (Fault::BlockedFilter, Fuel::Natural, Subject::SupplyVent, true),
    ] {
        let mut sheet = with(fault, fuel);
        sheet.did(Action::PutDown).did(Action::Look(subject));
        assert_eq!(is_a_guess(&mut sheet), guess, "{fault:?} {subject:?}");
    }
}

/// A nose finds gas from 0.03 % on (about 1 % of the lower flammable limit; common practice), and what a
/// regulator lets out.
#[test]
fn a_nose_finds_gas_where_there_is_some() {
    let guess = |fraction: f64, vented: f64| {
        let mut sheet = holed();
        (sheet.truth.gas_fraction.floor, sheet.truth.vented_m3_s) = (fraction, vented);
        sheet.did(Action::Sniff(Height::Floor));
        is_a_guess(&mut sheet)
    };
    assert!(guess(2.85e-4, 0.0) && !guess(3.15e-4, 0.0));
    assert!(!guess(0.0, 1e-6));
}
