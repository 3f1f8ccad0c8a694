//! Screws: what must be read before a turn, what a turn costs, how a setting is left. The plate of the
//! rig says 1.7 and 3.5 ± 0.3 in. w.c.

use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::parts::{Ending, Fitted, Level, Port, Screw, Stage};
use quarterturn::rules::Severity;
use quarterturn::senses::meter_history::Spell;
use quarterturn::setup::SupplyRight;
use quarterturn::units::PA_PER_INWC;

use super::sheet::{FULL_LOAD, HIGH, LOW, REST, Sheet, draw, spell};

const MANIFOLD: Option<Port> = Some(Port::Manifold);

fn ones_own_supply() -> Sheet {
    let mut setup = Sheet::new().setup;
    setup.card.supply = SupplyRight::Trainee;
    Sheet::of(setup)
}

/// A level's screw asks for its manifold pressure, read and written as found: not for one as left, not
/// for one that was made up, not for the other level's.
#[test]
fn a_level_is_read_as_found_before_its_screw_is_turned() {
    let low = |read: fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, LOW, 6.9);
        read(&mut sheet);
        sheet.turn(Screw::Low, 1, Some(Level::Low), MANIFOLD, 1.2);
        sheet.read(Port::Manifold, LOW, 1.7).read(Port::Manifold, HIGH, 3.5);
        sheet.times("turned-before-found")
    };
    assert_eq!(
        low(|sheet| {
            sheet.read(Port::Manifold, LOW, 1.2);
        }),
        0
    );
    assert_eq!(
        low(|sheet| {
            sheet.stood(Port::Manifold, LOW, 1.2).write_left(Port::Manifold, LOW, 1.2);
        }),
        1
    );
    assert_eq!(
        low(|sheet| {
            sheet.stood(Port::Manifold, LOW, 1.2).write(Port::Manifold, LOW, 2.0);
        }),
        1
    );
    assert_eq!(
        low(|sheet| {
            sheet.read(Port::Manifold, HIGH, 3.5);
        }),
        1
    );
    assert_eq!(low(|_| {}), 1);
}

/// A number kept in mind while the hand is on the screw is written as found a moment later; once
/// another has stood there, it is not.
#[test]
fn a_number_kept_in_mind_may_be_written_after_the_first_turn() {
    let kept = |meanwhile: fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, LOW, 6.9).stood(Port::Manifold, LOW, 1.2);
        sheet.turn(Screw::Low, 1, Some(Level::Low), MANIFOLD, 1.2);
        meanwhile(&mut sheet);
        sheet.write(Port::Manifold, LOW, 1.2).times("turned-before-found")
    };
    assert_eq!(kept(|_| {}), 0);
    assert_eq!(
        kept(|sheet| {
            sheet.stood(Port::Manifold, LOW, 1.4);
        }),
        1
    );
    // What passes there, or stands elsewhere, takes its place in nobody's mind.
    let passing = |sheet: &mut Sheet| {
        sheet.showed(spell(Port::Manifold, draw(LOW), 1.3, 1.5), None);
    };
    assert_eq!(kept(passing), 0);
    assert_eq!(
        kept(|sheet| {
            sheet.stood(Port::Inlet, LOW, 6.8);
        }),
        0
    );
}

/// A level that was never read at the manifold is told by that, and not by each thing that follows.
#[test]
fn a_level_never_read_is_one_finding() {
    let mut sheet = Sheet::new();
    sheet.read(Port::Inlet, HIGH, 6.66).read(Port::Manifold, LOW, 1.7);
    sheet.did(Action::Cap { screw: Screw::High, to: Fitted::Off });
    sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.1);
    sheet.did(Action::Cap { screw: Screw::High, to: Fitted::On }).later();
    sheet.handed_over(Ending::InService);
    let times =
        ["stage-never-read", "turned-before-found", "not-read-with-cap"].map(|it| sheet.times(it));
    assert_eq!(times, [1, 0, 0]);
}

/// A level's screw asks for the inlet on that level or a greater load: at rest a supply that cannot
/// deliver looks right.
#[test]
fn the_inlet_is_read_under_load_before_a_level_is_set() {
    for (stage, low, high) in [(REST, 1, 1), (LOW, 0, 1), (HIGH, 0, 0), (FULL_LOAD, 0, 0)] {
        for (level, screw, counts) in
            [(Level::Low, Screw::Low, low), (Level::High, Screw::High, high)]
        {
            let mut sheet = Sheet::new();
            sheet.read(Port::Inlet, stage, 6.7);
            sheet.read(Port::Manifold, Stage::Firing(level), 1.2);
            sheet.turn(screw, 1, Some(level), MANIFOLD, 1.2);
            assert_eq!(sheet.times("turned-before-inlet"), counts, "{stage:?} {level:?}");
        }
    }
    // A number that was made up is no ground.
    let mut sheet = Sheet::new();
    sheet.write(Port::Inlet, HIGH, 6.7).read(Port::Manifold, HIGH, 3.1);
    sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.1);
    assert_eq!(sheet.times("turned-before-inlet"), 1);
}

/// One's own supply asks for the inlet at rest and under load, or for one number that lies outside what
/// plate and nameplate allow (5.0 in. w.c. at least); somebody else's is not turned at all.
#[test]
fn a_supply_is_read_at_rest_and_under_load_before_it_is_set() {
    for (read, counts) in [
        (&[(REST, 7.5), (FULL_LOAD, 6.2)][..], 0),
        (&[(REST, 7.5), (LOW, 6.9)], 0),
        (&[(REST, 7.5)], 1),
        (&[(FULL_LOAD, 6.2), (HIGH, 6.6)], 1),
        (&[(FULL_LOAD, 4.6)], 0),
        (&[(REST, 4.6)], 0),
        (&[], 1),
    ] {
        let mut sheet = ones_own_supply();
        for &(stage, number) in read {
            sheet.read(Port::Inlet, stage, number);
        }
        sheet.turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0);
        assert_eq!(sheet.times("turned-before-inlet"), counts, "{read:?}");
        assert_eq!(["supply-not-yours", "wrong-screw"].map(|it| sheet.times(it)), [0, 0]);
    }
    // Outside at the manifold, or read only afterwards, says nothing of the supply before the turn.
    let mut manifold = ones_own_supply();
    manifold.read(Port::Manifold, LOW, 2.4);
    manifold.turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0);
    assert_eq!(manifold.times("turned-before-inlet"), 1);
    let mut after = ones_own_supply();
    after.turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0).read(Port::Inlet, REST, 4.6);
    assert_eq!(after.times("turned-before-inlet"), 1);
    let mut theirs = Sheet::new();
    theirs.turn(Screw::Supply, 1, None, None, 7.0);
    let times = ["supply-not-yours", "turned-before-inlet", "turned-unseen"];
    assert_eq!(times.map(|it| theirs.times(it)), [1, 0, 0]);
}

/// A screw is turned by a number: a level's with the meter on the manifold, the supply's with the meter
/// on either port.
#[test]
fn a_screw_is_turned_by_a_number() {
    let turned = |screw: Screw, metered: Option<Port>| {
        let mut sheet = ones_own_supply();
        sheet.read(Port::Inlet, REST, 7.5).read(Port::Inlet, HIGH, 6.6);
        sheet.read(Port::Manifold, HIGH, 3.1);
        sheet.turn(screw, 1, Some(Level::High), metered, 3.1);
        sheet.finding("turned-unseen").map(|it| it.severity)
    };
    let minor = Some(Severity::Minor);
    assert_eq!(turned(Screw::High, Some(Port::Manifold)), None);
    assert_eq!(turned(Screw::High, Some(Port::Inlet)), minor);
    assert_eq!(turned(Screw::High, None), minor);
    assert_eq!(turned(Screw::Supply, Some(Port::Inlet)), None);
    assert_eq!(turned(Screw::Supply, Some(Port::Manifold)), None);
    assert_eq!(turned(Screw::Supply, None), minor);
}

/// The wrong level's screw turned and turned back at once is one slip that was caught, and no needless
/// turn on top; left turned it is not caught, and each turn is one.
#[test]
fn a_wrong_screw_turned_back_is_one_slip() {
    let low_while_high_burns = |turns: &[i16]| {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, HIGH, 6.6).read(Port::Manifold, LOW, 1.7);
        for &eighths in turns {
            sheet.turn(Screw::Low, eighths, Some(Level::High), MANIFOLD, 1.7);
        }
        sheet.handed_over(Ending::InService);
        let found = sheet.finding("wrong-screw").unwrap();
        assert_eq!(sheet.times("needless-turn"), 0);
        (found.times, found.severity)
    };
    assert_eq!(low_while_high_burns(&[1, -1]), (1, Severity::Minor));
    assert_eq!(low_while_high_burns(&[1]), (1, Severity::Major));
    assert_eq!(low_while_high_burns(&[1, 1]), (2, Severity::Major));
}

/// How a job is left whose high screw was set from one pressure to another, in inches of water, with
/// the meter off by so much when it was read as left.
fn set_high(from: f64, to: f64, error: f64) -> Sheet {
    let mut sheet = Sheet::new();
    sheet.read(Port::Inlet, HIGH, 6.66).read(Port::Manifold, LOW, 1.7);
    sheet.read(Port::Manifold, HIGH, from);
    sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, from);
    let shown = to + error;
    let off =
        Spell { error_pa: error * PA_PER_INWC, ..spell(Port::Manifold, draw(HIGH), shown, shown) };
    sheet.showed(off, Some((shown, shown))).write_left(Port::Manifold, HIGH, shown).later();
    sheet.truth.set_pa[Level::High] = to * PA_PER_INWC;
    sheet.handed_over(Ending::InService);
    sheet
}

/// A level left outside its band is charged, and the turn that took it there is not charged again. What
/// a meter that is true enough shows inside the band nobody can tell: half a digit, or the 0.05 in.
/// w.c. that a meter may be off; with a meter that is off by more it is charged.
#[test]
fn a_level_is_left_inside_its_band_as_far_as_a_meter_tells() {
    let charged = |from: f64, to: f64, error: f64| {
        let sheet = set_high(from, to, error);
        ["left-outside-band", "needless-turn"].map(|it| sheet.times(it))
    };
    assert_eq!(charged(3.1, 3.5, 0.0), [0, 0]);
    assert_eq!(charged(3.5, 4.0, 0.0), [1, 0]);
    assert_eq!(charged(3.5, 3.6, 0.0), [0, 1]);
    assert_eq!(charged(3.1, 3.804, 0.0), [0, 0]);
    assert_eq!(charged(3.1, 3.82, 0.0), [1, 0]);
    assert_eq!(charged(3.1, 3.83, -0.045), [0, 0]);
    assert_eq!(charged(3.1, 3.83, -0.02), [1, 0]);
    assert_eq!(charged(3.1, 3.85, -0.06), [0, 0], "the meter is what is charged");
    assert_eq!(set_high(3.1, 3.85, -0.06).times("meter-off"), 1);
    // Right as found, as far as a meter tells: by 0.05 in. w.c. inside a band that ends at 3.80.
    assert_eq!(charged(3.752, 3.5, 0.0), [0, 0]);
    assert_eq!(charged(3.748, 3.5, 0.0), [0, 1]);
}

/// More than half a turn of a firing level's screw at once is a jump; half a turn is none, nor are whole
/// turns of a supply regulator, whose spring is long.
#[test]
fn half_a_turn_is_no_jump() {
    for (eighths, counts) in [(4, 0), (5, 1), (-4, 0), (-5, 1)] {
        let mut sheet = Sheet::new();
        sheet.turn(Screw::High, eighths, Some(Level::High), MANIFOLD, 3.1);
        assert_eq!(sheet.times("big-jumps"), counts, "{eighths}");
    }
    let mut sheet = ones_own_supply();
    sheet.turn(Screw::Supply, 24, None, Some(Port::Inlet), 7.0);
    assert_eq!(sheet.times("big-jumps"), 0);
}

/// With the cap on again the level is read anew: a number that stood before the cap was on is not
/// enough, however late it is written.
#[test]
fn the_number_that_counts_is_read_with_the_cap_on() {
    for (anew, counts) in [(true, 0), (false, 1)] {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, HIGH, 6.6).read(Port::Manifold, HIGH, 3.1);
        sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.1);
        sheet.stood(Port::Manifold, HIGH, 3.5);
        sheet.did(Action::Cap { screw: Screw::High, to: Fitted::On }).later();
        if anew {
            sheet.stood(Port::Manifold, HIGH, 3.5);
        }
        sheet.write_left(Port::Manifold, HIGH, 3.5);
        assert_eq!(sheet.times("not-read-with-cap"), counts, "{anew}");
        // One that was read anew is enough beside another that was not.
        sheet.stood(Port::Manifold, HIGH, 3.5).write_left(Port::Manifold, HIGH, 3.5);
        assert_eq!(sheet.times("not-read-with-cap"), 0);
    }
}

/// A spring set past the band is hidden while the inlet stands less than an inch above it; with an inch
/// of head it shows, and is told as what it is. One at its bottom is told as that.
#[test]
fn what_the_inlet_hides_is_cranked() {
    let left = |inlet: f64, bottomed: bool| {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, HIGH, 6.6).read(Port::Manifold, HIGH, 3.1);
        sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.1);
        for event in &mut sheet.events {
            if let EventKind::Turned { inlet_pa, .. } = &mut event.what {
                *inlet_pa = inlet * PA_PER_INWC;
            }
        }
        sheet.truth.set_pa[Level::High] = 5.0 * PA_PER_INWC;
        sheet.truth.bottomed[Level::High] = bottomed;
        sheet.handed_over(Ending::InService);
        [sheet.times("cranked"), sheet.times("left-outside-band")]
    };
    assert_eq!(left(5.95, false), [1, 0]);
    assert_eq!(left(6.05, false), [0, 1]);
    assert_eq!(left(5.95, true), [0, 1]);
}

/// More on the gas valve than its plate allows, after a hand was on the supply: with the supply inside
/// its limits at the end it was caught.
#[test]
fn a_valve_that_saw_too_much_for_a_while_was_caught() {
    for (set, severity) in [(7.0, Severity::Major), (9.5, Severity::Critical)] {
        let mut sheet = ones_own_supply();
        sheet.read(Port::Inlet, REST, 7.5).read(Port::Inlet, HIGH, 6.6);
        sheet.turn(Screw::Supply, 2, None, Some(Port::Inlet), 7.0);
        sheet.push(EventKind::ValveOverPressure { pa: 14.2 * PA_PER_INWC });
        sheet.truth.supply_set_pa = set * PA_PER_INWC;
        sheet.handed_over(Ending::InService);
        assert_eq!(sheet.severity("supply-over-maximum"), Some(severity), "{set}");
    }
}
