//! The last digit of a written number, and what else it may stand for: a leg of the water column, another
//! state that the display shows, another unit, a number from before a turn. That a leg is read to half a
//! tenth, and 2.5 mbar for an inch of water: common practice.

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::event::{EventKind, Outcome, ReadingFact};
use quarterturn::parts::{Ending, Fitted, Level, Phase, Port, Reading, Screw, Stage};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::senses::meter_history::Spell;
use quarterturn::setup::SupplyRight;
use quarterturn::units::{PA_PER_INWC, PressureUnit};

use super::sheet::{FULL_LOAD, HIGH, LOW, NONE, REST, Sheet, draw, spell};

const IN: PressureUnit = PressureUnit::InWc;

fn once(rule: &str) -> Vec<(String, usize)> {
    vec![(rule.to_owned(), 1)]
}

/// What a number is taken for that is written for an inlet on high that stood so, on a plate whose figures
/// carry so many decimals.
fn written(decimals: u8, shown: f64, number: f64, unit: PressureUnit) -> Vec<(String, usize)> {
    let mut setup = Sheet::new().setup;
    let plate = &mut setup.furnace.plate;
    plate.converted_to.as_mut().unwrap_or(&mut plate.made_for).decimals = decimals;
    let mut sheet = Sheet::of(setup);
    sheet.stood(Port::Inlet, HIGH, shown);
    sheet.write_in(Port::Inlet, HIGH, Phase::Found, (number, unit)).slips()
}

/// One leg of the water column is half of what stands there, to half a tenth and by how far the scale's zero
/// stands off; a manometer has no legs.
#[test]
fn a_leg_is_half_of_it() {
    let leg = |number: f64, off: Option<f64>| {
        let mut sheet = Sheet::new();
        sheet.stood(Port::Inlet, HIGH, 6.6);
        #[expect(clippy::cast_possible_truncation, reason = "a few inches")]
        let thousandths = (number * 1000.0).round() as i32;
        let (port, stage, phase) = (Port::Inlet, HIGH, Phase::Found);
        let reading = Reading { port, stage, phase, thousandths, unit: IN };
        let scale_off_pa = off.map(|it| it * PA_PER_INWC);
        sheet.push(EventKind::Wrote(ReadingFact { reading, scale_off_pa })).slips()
    };
    for number in [3.2, 3.25, 3.3, 3.4] {
        assert_eq!(leg(number, Some(0.0)), once("one-leg-read"), "{number}");
        assert_eq!(leg(number, None), once("invented"), "{number}");
    }
    for number in [3.197, 3.19, 3.403, 3.41] {
        assert_eq!(leg(number, Some(0.0)), once("invented"), "{number}");
    }
    for number in [3.0, 3.1, 3.5, 3.6] {
        assert_eq!(leg(number, Some(0.2)), once("one-leg-read"), "{number}");
        assert_eq!(leg(number, Some(-0.2)), once("one-leg-read"), "{number}");
    }
    for number in [2.99, 3.3, 3.61] {
        assert_eq!(leg(number, Some(0.2)), once("invented"), "{number}");
    }
}

/// What the display shows in another state while it is written belongs there, settled or not; once it has
/// gone on it must have stood. At the same port before the other.
#[test]
fn a_number_belongs_where_it_is_shown() {
    let passing = |ticks: u64| {
        let mut sheet = Sheet::new();
        sheet.showed(spell(Port::Inlet, draw(HIGH), 6.5, 6.7), None).pass(ticks);
        sheet.write(Port::Inlet, LOW, 6.6).slips()
    };
    assert_eq!(passing(0), once("wrong-stage"));
    assert_eq!(passing(1), once("invented"));
    assert_eq!(passing(500), once("invented"));
    let mut both = Sheet::new();
    both.stood(Port::Inlet, LOW, 3.5).stood(Port::Manifold, HIGH, 3.5).later();
    assert_eq!(both.write(Port::Inlet, FULL_LOAD, 3.5).slips(), once("wrong-stage"));
    let mut other = Sheet::new();
    other.stood(Port::Manifold, HIGH, 3.5).later();
    assert_eq!(other.write(Port::Inlet, FULL_LOAD, 3.5).slips(), once("wrong-port"));
}

/// A number that passed is unsettled where nothing has stood there yet; a spell is what was told of it last.
#[test]
fn what_passed_is_unsettled_while_nothing_stood() {
    let passed = |stood_before: bool| {
        let mut sheet = Sheet::new();
        if stood_before {
            sheet.stood(Port::Inlet, HIGH, 6.6);
        }
        sheet.showed(spell(Port::Inlet, draw(HIGH), 5.8, 6.2), None).later();
        sheet.write(Port::Inlet, HIGH, 5.9).slips()
    };
    assert_eq!(passed(false), once("read-unsettled"));
    assert_eq!(passed(true), once("invented"));
    let mut again = Sheet::new();
    again.stood(Port::Inlet, HIGH, 6.6);
    let Some(EventKind::Showed(told)) = again.events.last().map(|it| it.what.clone()) else {
        panic!("a spell was told");
    };
    again.push(EventKind::Showed(Spell { stood: None, ..told })).later();
    assert_eq!(again.write(Port::Inlet, HIGH, 6.6).slips(), once("read-unsettled"));
}

/// The same digits in another unit are told from nothing: more than a tenth of an inch is a number.
#[test]
fn a_unit_is_told_from_a_tenth_of_an_inch_on() {
    let digits = |number: f64| {
        let mut sheet = Sheet::new();
        sheet.stood(Port::Inlet, REST, number);
        sheet.write_in(Port::Inlet, REST, Phase::Found, (number, PressureUnit::KPa)).slips()
    };
    assert_eq!(digits(0.1), once("invented"));
    assert_eq!(digits(0.105), once("wrong-unit"));
    assert_eq!(digits(0.2), once("wrong-unit"));
}

/// A plate with two decimals asks for a hundredth of an inch; what is read below nothing is written with its
/// sign, and nothing is nothing.
#[test]
fn the_plate_says_how_fine_a_number_is() {
    assert_eq!(written(2, 6.66, 6.67, IN), NONE);
    assert_eq!(written(2, 6.655, 6.645, IN), NONE);
    assert_eq!(written(2, 6.66, 6.671, IN), once("invented"));
    assert_eq!(written(1, 6.66, 6.71, IN), NONE);
    for (shown, number, right) in [
        (-0.35, -0.35, true),
        (-0.35, -0.3, true),
        (-0.35, -0.5, false),
        (-0.35, 0.35, false),
        (0.08, 0.0, false),
        (0.04, 0.0, true),
    ] {
        assert_eq!(written(1, shown, number, IN) == NONE, right, "{shown} {number}");
    }
}

/// A whole number is coarse by its own digit, half of it up and all of it down; the reckoning of a unit goes
/// with the number, four parts in a thousand.
#[test]
fn coarse_and_reckoned_numbers_have_their_limits() {
    assert_eq!(written(1, 6.52, 7.0, IN), once("written-coarsely"));
    assert_eq!(written(1, 6.48, 7.0, IN), once("invented"));
    assert_eq!(written(1, 8.45, 2.0, PressureUnit::KPa), once("written-coarsely"));
    assert_eq!(written(1, 8.48, 2.0, PressureUnit::KPa), once("invented"));
    assert_eq!(written(1, 9.952, 25.011, PressureUnit::Mbar), NONE);
    assert_eq!(written(1, 9.948, 25.011, PressureUnit::Mbar), once("invented"));
}

/// As left, a number is newer than what moved it: a turn at its level or above, any repair that moves a
/// pressure or is at the meter. What begins with the turn is new.
#[test]
fn a_number_as_left_is_newer_than_what_moved_it() {
    let after = |port: Port, stage: Stage, moves: fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        sheet.stood(port, stage, 1.7);
        moves(&mut sheet);
        sheet.write_left(port, stage, 1.7).slips()
    };
    let low = |sheet: &mut Sheet| {
        sheet.turn(Screw::Low, 1, Some(Level::Low), Some(Port::Manifold), 1.7);
    };
    assert_eq!(after(Port::Manifold, REST, low), once("invented"));
    assert_eq!(after(Port::Manifold, LOW, low), once("invented"));
    assert_eq!(after(Port::Inlet, LOW, low), NONE);
    let mends: [(fn(&mut Sheet), bool); 3] = [
        (|sheet| mend(sheet, Repair::ReplaceFilter), false),
        (|sheet| mend(sheet, Repair::SwapMeterHose), true),
        (|sheet| mend(sheet, Repair::ReplaceConnector), true),
    ];
    for (moves, moved) in mends {
        let expected = if moved { once("invented") } else { Vec::new() };
        assert_eq!(after(Port::Inlet, HIGH, moves), expected);
    }
    let mut at_once = Sheet::new();
    at_once.push(EventKind::Turned {
        screw: Screw::Low,
        eighths: 1,
        set_pa: (400.0, 420.0),
        bottomed: false,
        firing: Some(Level::Low),
        inlet_pa: 6.7 * PA_PER_INWC,
        metered: Some(Port::Manifold),
        since_turn_s: None,
    });
    at_once.stood(Port::Manifold, LOW, 1.7).write_left(Port::Manifold, LOW, 1.7);
    assert_eq!(at_once.slips(), NONE);
}

fn mend(sheet: &mut Sheet, repair: Repair) {
    sheet.push(EventKind::Mended { repair, outcome: Outcome::Changed, plate: None }).later();
}

/// The lock-up is watched for as long as its own spells at rest lasted, whatever was fired afterwards.
#[test]
fn the_lock_up_is_watched_while_it_rests() {
    let mut sheet = Sheet::new();
    for (stage, number) in [(REST, 7.5), (LOW, 6.9), (HIGH, 6.66), (FULL_LOAD, 6.2)] {
        sheet.read(Port::Inlet, stage, number);
    }
    for _ in 0..6 {
        sheet.stood(Port::Inlet, Stage::RestAgain, 7.6);
    }
    sheet.stood(Port::Inlet, LOW, 6.9).write(Port::Inlet, Stage::RestAgain, 7.6);
    sheet.handed_over(Ending::InService);
    assert_eq!(sheet.times("lock-up-unread"), 0);
}

/// Levels that were never read are told by their names; the supply that was set is read again at rest alone
/// where it is shut off.
#[test]
fn what_is_missing_is_told() {
    let seen = |levels: &[(Stage, f64)]| {
        let mut sheet = Sheet::new();
        for &(stage, number) in levels {
            sheet.read(Port::Manifold, stage, number);
        }
        sheet.finding("stage-never-read").map(|it| it.seen)
    };
    let (none, low) = (seen(&[]).unwrap(), seen(&[(LOW, 1.7)]).unwrap());
    assert!(none.contains("low") && none.contains("high"), "{none}");
    assert!(low.contains("high") && !low.contains("low"), "{low}");
    assert_eq!(seen(&[(LOW, 1.7), (HIGH, 3.5)]), None);
    // After a repair a line that is written wrongly is not empty.
    let mut mended = Sheet::new();
    mend(&mut mended, Repair::ReplaceGasValve);
    mended.read(Port::Manifold, HIGH, 3.5).write(Port::Manifold, LOW, 3.5);
    assert_eq!(["wrong-stage", "stage-never-read"].map(|it| mended.times(it)), [1, 0]);

    let mut setup = Sheet::new().setup;
    setup.card.supply = SupplyRight::Trainee;
    let mut sheet = Sheet::of(setup);
    sheet.read(Port::Inlet, HIGH, 4.6);
    sheet.turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0);
    sheet.stood(Port::Inlet, REST, 7.7).write_left(Port::Inlet, REST, 7.7);
    (sheet.truth.manual_valve, sheet.truth.tag) = (HandleAngle::SHUT, Fitted::On);
    assert_eq!(sheet.handed_over(Ending::ShutOff).times("supply-not-rechecked"), 0);
}
