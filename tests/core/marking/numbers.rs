//! Written numbers by their distance from what the display showed, and by the state that it was in.
//! The numbers are our own; that figures are rounded or cut off at the last decimal that is written
//! is common practice, and so is 2.5 mbar for an inch of water.

use quarterturn::hands::event::EventKind;
use quarterturn::parts::{Level, Phase, Port, Push, Screw};
use quarterturn::rules::Essential;
use quarterturn::senses::meter_history::{GasDemand, Spell};
use quarterturn::units::{PA_PER_INWC, PressureUnit};

use super::sheet::{FULL_LOAD, HIGH, LOW, NONE, REST, Sheet, draw, spell};

const IN: PressureUnit = PressureUnit::InWc;
const KPA: PressureUnit = PressureUnit::KPa;
const MBAR: PressureUnit = PressureUnit::Mbar;

/// What a number is taken for that is written for an inlet on high that stood at `shown`.
fn written(shown: f64, number: f64, unit: PressureUnit) -> Vec<(String, usize)> {
    let mut sheet = Sheet::new();
    sheet.stood(Port::Inlet, HIGH, shown);
    sheet.write_in(Port::Inlet, HIGH, Phase::Found, (number, unit));
    sheet.slips()
}

fn once(rule: &str) -> Vec<(String, usize)> {
    vec![(rule.to_owned(), 1)]
}

/// A number is right if it is what stands on the display, rounded or cut off at the tenth that the
/// plate carries, or off by half a tenth; further away it is not what was shown.
#[test]
fn a_digit_cut_off_or_rounded_is_right() {
    for (shown, right, wrong) in [
        (
            6.66,
            &[6.66, 6.6, 6.7, 6.64, 6.61, 6.71, 6.65][..],
            &[6.5, 6.8, 6.59, 6.74, 6.72, 6.60 - 0.1][..],
        ),
        (6.60, &[6.6, 6.55, 6.65], &[6.7, 6.5, 6.54, 6.66]),
        (6.69, &[6.6, 6.7], &[6.5, 6.8]),
        (6.70, &[6.7, 6.65, 6.75], &[6.6, 6.8]),
        (6.65, &[6.6, 6.7], &[6.5, 6.8]),
        (0.02, &[0.0, 0.02, 0.05], &[0.1, 0.08]),
    ] {
        for &number in right {
            assert_eq!(written(shown, number, IN), NONE, "{shown} {number}");
        }
        for &number in wrong {
            assert_eq!(written(shown, number, IN), once("invented"), "{shown} {number}");
        }
    }
}

/// A number worked out in another unit is right to the decimals that a person writes there, with
/// the factor that hand reckoning takes; one decimal fewer it is written too coarsely, and no more.
#[test]
fn a_number_worked_out_in_another_unit_is_right() {
    for (shown, unit, right, coarse, wrong) in [
        (
            6.66,
            KPA,
            &[1.66, 1.65, 1.67, 1.659][..],
            &[1.7, 1.6][..],
            &[1.8, 1.5, 1.63, 1.69, 2.0][..],
        ),
        (6.66, MBAR, &[16.6, 16.5, 16.59, 16.65, 16.7], &[17.0, 16.0], &[18.0, 15.0, 16.3, 17.2]),
        (13.02, KPA, &[3.25, 3.24, 3.243], &[3.2, 3.3], &[3.4, 3.1]),
        (3.5, KPA, &[0.87, 0.88, 0.872], &[0.8, 0.9], &[0.7, 1.0, 0.84]),
    ] {
        for &number in right {
            assert_eq!(written(shown, number, unit), NONE, "{shown} {number} {unit:?}");
        }
        for &number in coarse {
            assert_eq!(written(shown, number, unit), once("written-coarsely"), "{shown} {number}");
        }
        for &number in wrong {
            assert_eq!(written(shown, number, unit), once("invented"), "{shown} {number} {unit:?}");
        }
    }
}

/// A whole inch is written too coarsely, rounded or cut off; it is a reading all the same. Another
/// whole inch is not what was shown. A plate of one decimal more asks for one decimal more.
#[test]
fn a_whole_inch_is_coarse() {
    for (number, rule) in
        [(7.0, "written-coarsely"), (6.0, "written-coarsely"), (8.0, "invented"), (5.0, "invented")]
    {
        assert_eq!(written(6.66, number, IN), once(rule), "{number}");
    }
    assert_eq!(written(7.04, 7.0, IN), NONE);
    // A fifth of the number is the coarsest that anybody reads by.
    assert_eq!(written(5.4, 5.0, IN), once("written-coarsely"));
    assert_eq!(written(4.4, 4.0, IN), once("invented"));
    let mut sheet = Sheet::new();
    sheet.stood(Port::Inlet, HIGH, 6.66).write(Port::Inlet, HIGH, 7.0);
    assert_eq!(sheet.times("never-read-running"), 0);
    assert!(sheet.gates(Essential::MeterTrue).is_empty());

    let hundredths = |number: f64| {
        let mut sheet = Sheet::new();
        sheet.setup.furnace.plate.made_for.decimals = 2;
        sheet.stood(Port::Inlet, HIGH, 6.66).write(Port::Inlet, HIGH, number);
        sheet.slips()
    };
    assert_eq!(hundredths(6.66), NONE);
    assert_eq!(hundredths(6.6), once("written-coarsely"));
    assert_eq!(hundredths(6.5), once("invented"));
}

/// While the pressure crept, every number between was shown.
#[test]
fn a_number_that_crept_was_shown() {
    for (number, right) in [(7.0, true), (7.44, true), (7.8, true), (7.9, false), (6.9, false)] {
        let mut sheet = Sheet::new();
        sheet.showed(spell(Port::Inlet, draw(REST), 7.0, 7.8), Some((7.0, 7.8)));
        sheet.write(Port::Inlet, REST, number);
        assert_eq!(sheet.slips().is_empty(), right, "{number}");
    }
}

/// A number from the meter that stood in another state is that, once, and gates nothing of the meter:
/// at rest with another appliance burning, on high with the others burning or with a valve throttled,
/// on high for low. A level at the manifold may be read whatever else burns.
#[test]
fn a_number_from_another_state_is_no_forgery() {
    let rest_with_range = GasDemand { burning: 1, any_flow: true, ..draw(REST) };
    let throttled = GasDemand { throttled: true, ..draw(HIGH) };
    let shut = GasDemand { fed: false, ..draw(REST) };
    for (seen, port, stage, number) in [
        (rest_with_range, Port::Inlet, REST, 6.87),
        (draw(FULL_LOAD), Port::Inlet, HIGH, 6.2),
        (throttled, Port::Inlet, HIGH, 3.0),
        (throttled, Port::Manifold, HIGH, 2.4),
        (shut, Port::Inlet, REST, 7.6),
        (draw(HIGH), Port::Manifold, LOW, 3.5),
        (draw(LOW), Port::Manifold, HIGH, 1.7),
    ] {
        let mut sheet = Sheet::new();
        sheet.showed(spell(port, seen, number, number), Some((number, number)));
        sheet.write(port, stage, number);
        assert_eq!(sheet.slips(), once("wrong-stage"), "{seen:?} {stage:?}");
        assert!(sheet.gates(Essential::MeterTrue).is_empty());
        // A number that did not stand there either.
        let mut sheet = Sheet::new();
        sheet.showed(spell(port, seen, number, number), Some((number, number)));
        sheet.write(port, stage, number + 0.3);
        assert_eq!(sheet.slips(), once("invented"), "{seen:?} {stage:?}");
        assert_eq!(sheet.gates(Essential::MeterTrue), ["invented"]);
    }
    let beside = GasDemand { burning: 1, ..draw(LOW) };
    let mut sheet = Sheet::new();
    sheet.showed(spell(Port::Manifold, beside, 1.7, 1.7), Some((1.7, 1.7)));
    sheet.write(Port::Manifold, LOW, 1.7);
    assert_eq!(sheet.slips(), NONE);
}

/// What another appliance or a throttled valve made the display show does not become what the level
/// showed, however the numbers lie around it.
#[test]
fn a_throttled_valve_widens_nothing() {
    let throttled = GasDemand { throttled: true, ..draw(HIGH) };
    let mut sheet = Sheet::new();
    sheet.stood(Port::Inlet, HIGH, 6.66);
    sheet.showed(spell(Port::Inlet, throttled, 2.8, 6.6), Some((2.8, 2.9)));
    sheet.stood(Port::Inlet, HIGH, 6.66);
    sheet.write(Port::Inlet, HIGH, 4.0);
    assert_eq!(sheet.slips(), once("invented"));
}

/// A number that stood at the other port is for the wrong port; with the hose on the other port any
/// other number is still one that no meter showed.
#[test]
fn a_number_for_the_wrong_port_is_one_that_stood_there() {
    for (number, rule) in [(6.66, "wrong-port"), (6.6, "wrong-port"), (4.2, "invented")] {
        let mut sheet = Sheet::new();
        sheet.stood(Port::Inlet, LOW, 6.66).write(Port::Manifold, LOW, number);
        assert_eq!(sheet.slips(), once(rule), "{number}");
    }
}

/// The digits of another unit are told from what stood, and from nothing else: a smaller unit does not
/// make a number out of what the display passed through on its way.
#[test]
fn the_unit_is_guessed_from_what_stood() {
    let low = |number: f64, unit: PressureUnit| {
        let mut sheet = Sheet::new();
        sheet.showed(spell(Port::Manifold, draw(LOW), 0.0, 1.7), Some((1.7, 1.7)));
        sheet.write_in(Port::Manifold, LOW, Phase::Found, (number, unit));
        sheet.slips()
    };
    assert_eq!(low(1.7, MBAR), once("wrong-unit"));
    assert_eq!(low(4.23, IN), once("wrong-unit"));
    assert_eq!(low(0.42, IN), once("wrong-unit"));
    for number in [0.9, 1.0, 1.5, 2.0, 3.0] {
        assert_eq!(low(number, IN), once("invented"), "{number}");
    }
}

/// The number that is written for low while high burns is one slip.
#[test]
fn one_slip_is_one() {
    let mut sheet = Sheet::new();
    sheet.showed(spell(Port::Manifold, draw(LOW), 0.0, 1.7), Some((1.7, 1.7)));
    sheet.showed(spell(Port::Manifold, draw(HIGH), 1.7, 3.5), Some((3.5, 3.5)));
    sheet.write(Port::Manifold, LOW, 3.5);
    assert_eq!(sheet.slips(), once("wrong-stage"));
}

/// A spell that had not settled when the number was written: at which number it then stood.
fn early(number: f64, then: Option<f64>) -> Vec<(String, usize)> {
    let mut sheet = Sheet::new();
    sheet.showed(spell(Port::Manifold, draw(HIGH), 1.7, 3.48), None);
    sheet.write(Port::Manifold, HIGH, number);
    if let Some(EventKind::Showed(mut on)) = sheet.events.first().map(|it| it.what.clone()) {
        on.shown.until += 500;
        on.shown.most_pa = 3.5 * PA_PER_INWC;
        on.stood = then.map(|at| {
            let pa = at * PA_PER_INWC;
            quarterturn::senses::meter_history::Span { least_pa: pa, most_pa: pa, ..on.shown }
        });
        sheet.later().push(EventKind::Showed(on));
    }
    sheet.slips()
}

/// A number written before it settled is charged as that, unless it is the number at which it then
/// stood.
#[test]
fn an_early_number_that_then_stands_is_right() {
    assert_eq!(early(3.5, Some(3.5)), NONE);
    assert_eq!(early(3.48, Some(3.5)), NONE);
    assert_eq!(early(3.2, Some(3.5)), once("read-unsettled"));
    assert_eq!(early(3.2, None), once("read-unsettled"));
    assert_eq!(early(3.9, Some(3.5)), once("invented"));
}

/// What was shown on the way counts only where nothing has stood yet.
#[test]
fn what_passed_before_it_stood_is_not_shown() {
    let mut sheet = Sheet::new();
    sheet.showed(spell(Port::Manifold, draw(HIGH), 0.0, 3.5), Some((3.5, 3.5)));
    sheet.write(Port::Manifold, HIGH, 3.0);
    assert_eq!(sheet.slips(), once("invented"));
}

/// As found, a number stays true whatever is turned since; as left it must be newer than the last
/// turn.
#[test]
fn old_numbers_are_as_found_only() {
    for (left, rules) in [(false, vec![]), (true, once("invented"))] {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, HIGH, 6.66).read(Port::Manifold, HIGH, 3.1);
        sheet.turn(Screw::High, 1, Some(Level::High), Some(Port::Manifold), 3.1);
        sheet.stood(Port::Manifold, HIGH, 3.5);
        if left {
            sheet.write_left(Port::Manifold, HIGH, 3.1);
        } else {
            sheet.write(Port::Manifold, HIGH, 3.1);
        }
        assert_eq!(sheet.slips(), rules, "{left}");
        sheet.write_left(Port::Manifold, HIGH, 3.5);
        assert_eq!(sheet.slips().len(), 0, "the right one follows");
    }
}

/// A turn makes an old number of what it moves: a level's screw of its own level and those above it at
/// the manifold, the supply's screw of everything. The rest may be written as left from before.
#[test]
fn a_turn_makes_old_what_it_moves() {
    for (screw, port, stage, old) in [
        (Screw::Low, Port::Manifold, LOW, true),
        (Screw::Low, Port::Manifold, HIGH, true),
        (Screw::High, Port::Manifold, HIGH, true),
        (Screw::High, Port::Manifold, FULL_LOAD, true),
        (Screw::High, Port::Manifold, LOW, false),
        (Screw::High, Port::Inlet, HIGH, false),
        (Screw::Supply, Port::Inlet, HIGH, true),
        (Screw::Supply, Port::Manifold, LOW, true),
    ] {
        let mut sheet = Sheet::new();
        sheet.read(port, stage, 3.3);
        sheet.turn(screw, 1, Some(Level::High), Some(Port::Manifold), 3.1);
        sheet.write_left(port, stage, 3.3);
        assert_eq!(sheet.slips().is_empty(), !old, "{screw:?} {port:?} {stage:?}");
    }
}

/// Each number carries the meter's error of its own spell: from before the zero was set it is off,
/// whatever the meter reads now. The rule allows 0.05 in. w.c.
#[test]
fn a_number_carries_the_meters_error_of_its_spell() {
    let off = |error: f64| {
        let mut sheet = Sheet::new();
        let before =
            Spell { error_pa: error * PA_PER_INWC, ..spell(Port::Inlet, draw(LOW), 6.9, 6.9) };
        sheet.showed(before, Some((6.9, 6.9)));
        sheet.stood(Port::Inlet, LOW, 6.7).write(Port::Inlet, LOW, 6.9);
        sheet
    };
    assert_eq!(off(0.2).times("meter-off"), 1);
    assert_eq!(
        off(0.2).finding("meter-off").unwrap().truth,
        "the meter read 0.20 in. w.c. too high"
    );
    assert_eq!(off(-0.052).times("meter-off"), 1);
    assert_eq!(off(0.048).times("meter-off"), 0);
    assert_eq!(off(0.2).slips(), NONE);
    // Written again with the meter true it was caught; with one that is still off it was not.
    let mut again = off(0.2);
    again.write(Port::Inlet, LOW, 6.7);
    assert_eq!(again.finding("meter-off").unwrap().severity, quarterturn::rules::Severity::Minor);
    let mut again = off(0.2);
    again.write(Port::Inlet, LOW, 6.9);
    assert_eq!(again.finding("meter-off").unwrap().severity, quarterturn::rules::Severity::Major);
}

/// The hose counts as it was when the number stood, not when it is written.
#[test]
fn the_hose_counts_when_it_is_read() {
    for (read, then, counts) in [(Push::Halfway, Push::Fully, 1), (Push::Fully, Push::Halfway, 0)] {
        let mut sheet = Sheet::new();
        let of = |push| Spell { push, ..spell(Port::Inlet, draw(HIGH), 6.66, 6.66) };
        sheet.showed(of(read), Some((6.66, 6.66)));
        let other = Spell { push: then, ..spell(Port::Inlet, draw(REST), 7.5, 7.5) };
        sheet.showed(other, Some((7.5, 7.5)));
        sheet.write(Port::Inlet, HIGH, 6.66);
        assert_eq!(sheet.times("hose-half-on"), counts, "{read:?}");
    }
}

/// A meter zeroed with pressure on it has been used once a screw is turned or a number written by it;
/// zeroed again before that, it was caught.
#[test]
fn a_turn_uses_a_false_zero() {
    use quarterturn::rules::Severity::{Major, Minor};
    let zeroed = EventKind::Zeroed { applied_pa: 0.2 * PA_PER_INWC };
    let again = EventKind::Zeroed { applied_pa: 0.0 };
    let turned = |sheet: &mut Sheet| {
        sheet.turn(Screw::High, 1, Some(Level::High), Some(Port::Manifold), 3.1);
    };
    let mut used = Sheet::new();
    used.push(zeroed.clone());
    turned(&mut used);
    used.push(again.clone());
    assert_eq!(used.severity("zeroed-under-pressure"), Some(Major));
    let mut caught = Sheet::new();
    caught.push(zeroed).push(again);
    turned(&mut caught);
    assert_eq!(caught.severity("zeroed-under-pressure"), Some(Minor));
}
