//! Limits of screws and springs, each from both sides. The plate of the rig says 1.7 and 3.5 ± 0.3 in.
//! w.c.; its supply delivers 6.0 to 9.0 in. w.c. by its nameplate, and its gas valve may see 14.0.

use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::parts::{Ending, Fitted, Level, Port, Screw, Spot};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::{Essential, Severity};
use quarterturn::senses::meter_history::Spell;
use quarterturn::senses::seen::WrittenMeasured;
use quarterturn::setup::SupplyRight;
use quarterturn::units::PA_PER_INWC;

use super::sheet::{HIGH, LOW, REST, Sheet, draw, spell};

const MANIFOLD: Option<Port> = Some(Port::Manifold);

fn supplied(right: SupplyRight) -> Sheet {
    let mut setup = Sheet::new().setup;
    setup.card.supply = right;
    let mut sheet = Sheet::of(setup);
    sheet.read(Port::Inlet, REST, 7.5).read(Port::Inlet, HIGH, 6.6);
    sheet
}

/// Left shut off: valve shut, tag on.
fn shut_off(sheet: &mut Sheet) -> &mut Sheet {
    sheet.truth.manual_valve = HandleAngle::SHUT;
    sheet.truth.tag = Fitted::On;
    sheet.handed_over(Ending::ShutOff)
}

/// The last turn, put otherwise.
fn last_turn(sheet: &mut Sheet, bottoms: bool, since_s: Option<f64>) {
    for event in sheet.events.iter_mut().rev() {
        if let EventKind::Turned { bottomed, since_turn_s, .. } = &mut event.what {
            (*bottomed, *since_turn_s) = (bottoms, since_s);
            return;
        }
    }
    panic!("nothing was turned");
}

/// A supply that is one's own is right at either end of what its nameplate says. Below it is too low;
/// above, a meter at the port shows it from 0.2 in. w.c. on. Somebody else's is theirs, and one that is
/// left shut off burns nothing.
#[test]
fn a_supply_is_left_inside_its_nameplate() {
    use SupplyRight::{OwnerOnly, Trainee};
    for (set, right, ending, low, high) in [
        (6.0, Trainee, Ending::InService, 0, 0),
        (5.99, Trainee, Ending::InService, 1, 0),
        (5.5, OwnerOnly, Ending::InService, 0, 0),
        (5.5, Trainee, Ending::ShutOff, 0, 0),
        (9.0, Trainee, Ending::InService, 0, 0),
        (9.19, Trainee, Ending::InService, 0, 0),
        (9.21, Trainee, Ending::InService, 0, 1),
        (9.5, OwnerOnly, Ending::InService, 0, 0),
        (9.5, Trainee, Ending::ShutOff, 0, 0),
    ] {
        let mut sheet = supplied(right);
        sheet.truth.supply_set_pa = set * PA_PER_INWC;
        match ending {
            Ending::ShutOff => shut_off(&mut sheet),
            other => sheet.handed_over(other),
        };
        let times = ["supply-left-low", "supply-over-maximum"].map(|it| sheet.times(it));
        assert_eq!(times, [low, high], "{set} {right:?} {ending:?}");
    }
}

/// Whoever turned the supply answers for where it stands, whoever owns it and however it is left; whoever
/// turned another screw does not.
#[test]
fn whoever_turned_the_supply_answers_for_it() {
    for (screws, counts) in [
        (&[Screw::Supply][..], 1),
        (&[Screw::High, Screw::Supply], 1),
        (&[Screw::High], 0),
        (&[], 0),
    ] {
        let mut sheet = supplied(SupplyRight::OwnerOnly);
        for &screw in screws {
            sheet.turn(screw, 1, Some(Level::High), MANIFOLD, 3.5);
        }
        sheet.truth.supply_set_pa = 9.5 * PA_PER_INWC;
        shut_off(&mut sheet);
        assert_eq!(sheet.times("supply-over-maximum"), counts, "{screws:?}");
    }
}

/// The gas valve saw more than its plate allows once a meter shows it: 0.05 in. w.c. over. Before a hand
/// was on the supply it is not of that hand's doing. With the supply set back to its nameplate it was
/// caught.
#[test]
fn the_gas_valve_sees_no_more_than_it_may() {
    let saw = |before: f64, after: f64, set: f64| {
        let mut sheet = supplied(SupplyRight::OwnerOnly);
        let saw = |sea: f64| EventKind::ValveOverPressure { pa: sea * PA_PER_INWC };
        sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.1);
        sheet.push(saw(before)).turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0);
        sheet.push(saw(after));
        sheet.truth.supply_set_pa = set * PA_PER_INWC;
        sheet.handed_over(Ending::InService);
        sheet.finding("supply-over-maximum").map(|it| (it.times, it.severity))
    };
    assert_eq!(saw(14.5, 14.047, 9.0), None);
    assert_eq!(saw(14.0, 14.053, 9.0), Some((1, Severity::Major)));
    assert_eq!(saw(14.0, 14.5, 9.01), Some((1, Severity::Critical)));
    let mut untouched = supplied(SupplyRight::OwnerOnly);
    untouched.push(EventKind::ValveOverPressure { pa: 14.5 * PA_PER_INWC });
    assert_eq!(untouched.handed_over(Ending::InService).times("supply-over-maximum"), 0);
}

/// Turns of one screw within four seconds are one turn; another screw's is another.
#[test]
fn turns_without_a_wait_are_one() {
    let jumps = |turns: &[(Screw, i16, Option<f64>)]| {
        let mut sheet = Sheet::new();
        for &(screw, eighths, since_s) in turns {
            sheet.turn(screw, eighths, screw.level(), MANIFOLD, 3.1);
            last_turn(&mut sheet, false, since_s);
        }
        sheet.times("big-jumps")
    };
    use Screw::{High, Low};
    assert_eq!(jumps(&[(High, 3, None), (High, 2, Some(3.98))]), 1);
    assert_eq!(jumps(&[(High, 3, None), (High, 2, Some(4.0))]), 0);
    assert_eq!(jumps(&[(High, 3, None), (High, 2, None)]), 0);
    assert_eq!(jumps(&[(High, 3, None), (Low, 2, Some(1.0))]), 0);
    assert_eq!(jumps(&[(High, 3, None), (High, -2, Some(1.0)), (High, 3, Some(1.0))]), 0);
    let seen = |eighths: i16| {
        let mut sheet = Sheet::new();
        sheet.turn(High, eighths, Some(Level::High), MANIFOLD, 3.1);
        sheet.finding("big-jumps").unwrap().seen
    };
    assert!(seen(5) != seen(-5) && seen(5) != seen(6));
    // What goes on after a jump is a new one.
    assert_eq!(jumps(&[(High, 5, None), (High, 4, Some(1.0))]), 1);
    assert_eq!(jumps(&[(High, 5, None), (High, 5, Some(1.0))]), 2);
}

/// A screw at its bottom is told by how it is left, each level by its own screw.
#[test]
fn a_bottomed_screw_is_told_by_how_it_is_left() {
    for (screw, left, counts) in [
        (Screw::Low, Some(Level::Low), [1, 0]),
        (Screw::Low, Some(Level::High), [0, 1]),
        (Screw::Low, None, [0, 1]),
        (Screw::High, Some(Level::High), [1, 0]),
    ] {
        let mut sheet = Sheet::new();
        sheet.turn(Screw::Low, -1, Some(Level::Low), MANIFOLD, 1.7);
        sheet.turn(screw, 1, screw.level(), MANIFOLD, 1.7);
        last_turn(&mut sheet, true, None);
        if let Some(level) = left {
            sheet.truth.bottomed[level] = true;
        }
        sheet.handed_over(Ending::InService);
        let times = ["bottomed-left", "bottomed-once"].map(|it| sheet.times(it));
        assert_eq!(times, counts, "{screw:?} {left:?}");
    }
}

/// What has not been left yet is not left so: a screw at its bottom and a plug across its thread may still
/// be put right.
#[test]
fn a_job_that_goes_on_has_left_nothing() {
    let mut setup = Sheet::new().setup;
    setup.card.supply = SupplyRight::Trainee;
    let mut sheet = Sheet::of(setup);
    sheet.truth.inlet_pa = 11.0 * PA_PER_INWC;
    (sheet.truth.burner_flow_m3_s, sheet.truth.others_flow_m3_s) = (0.0, 0.0);
    sheet.did(Action::PutDown);
    sheet.turn(Screw::Low, 1, Some(Level::Low), MANIFOLD, 1.7);
    last_turn(&mut sheet, true, None);
    sheet.push(EventKind::CrossThreaded { port: Port::Inlet });
    sheet.turn(Screw::Low, 1, Some(Level::High), MANIFOLD, 1.7);
    let marks = sheet.marks_so_far();
    let wrong = marks.findings.iter().find(|it| it.rule == "wrong-screw").unwrap();
    assert_eq!(wrong.severity, Severity::Major);
    let found: Vec<&str> = marks.findings.iter().map(|it| it.rule.as_str()).collect();
    for (rule, counts) in [
        ("lock-up-over-limit", false),
        ("bottomed-left", false),
        ("bottomed-once", true),
        ("cross-thread-left", false),
        ("cross-thread-caught", true),
    ] {
        assert_eq!(found.contains(&rule), counts, "{rule}");
    }
}

/// Left shut off, a level that nobody touched is somebody else's to set; one whose screw was turned is
/// not. In use both are.
#[test]
fn a_touched_level_is_left_inside_its_band() {
    for (turned, ending, counts) in [
        (None, Ending::InService, 1),
        (None, Ending::ShutOff, 0),
        (Some(Screw::Low), Ending::ShutOff, 0),
        (Some(Screw::High), Ending::ShutOff, 1),
    ] {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, HIGH, 6.6).read(Port::Manifold, LOW, 1.7);
        if let Some(screw) = turned {
            sheet.turn(Screw::Low, 1, Some(Level::Low), MANIFOLD, 1.7);
            sheet.turn(screw, 1, screw.level(), MANIFOLD, 3.1);
        }
        sheet.truth.set_pa[Level::High] = 4.0 * PA_PER_INWC;
        match ending {
            Ending::ShutOff => shut_off(&mut sheet),
            other => sheet.handed_over(other),
        };
        assert_eq!(sheet.times("left-outside-band"), counts, "{turned:?} {ending:?}");
    }
}

/// Both levels turned out of their bands are two settings, and no needless turns beside them. Turned and
/// turned back while the other burned, and then turned while it burned itself, a level that stood right
/// was turned needlessly all the same.
#[test]
fn a_turn_out_of_the_band_is_charged_once() {
    let mut sheet = Sheet::new();
    sheet.read(Port::Inlet, HIGH, 6.6);
    for (level, screw, stage, set) in
        [(Level::Low, Screw::Low, LOW, 1.7), (Level::High, Screw::High, HIGH, 3.5)]
    {
        sheet.read(Port::Manifold, stage, set).turn(screw, 3, Some(level), MANIFOLD, set);
        sheet.truth.set_pa[level] = (set + 0.5) * PA_PER_INWC;
    }
    sheet.handed_over(Ending::InService);
    assert_eq!(["left-outside-band", "needless-turn"].map(|it| sheet.times(it)), [2, 0]);

    let mut sheet = Sheet::new();
    sheet.read(Port::Inlet, HIGH, 6.6).read(Port::Manifold, LOW, 1.7);
    sheet.turn(Screw::Low, 1, Some(Level::High), MANIFOLD, 1.7);
    sheet.turn(Screw::Low, -1, Some(Level::High), MANIFOLD, 1.7);
    sheet.turn(Screw::Low, -2, Some(Level::Low), MANIFOLD, 1.7);
    sheet.handed_over(Ending::InService);
    assert_eq!(["wrong-screw", "needless-turn"].map(|it| sheet.times(it)), [1, 1]);
}

/// A level that reads inside its band is right as far as anybody can tell: by the last right number after
/// the last turn of its own screw, on a meter that is off by no more than 0.05 in. w.c.
#[test]
fn the_last_right_number_of_a_level_counts() {
    let left = |error: f64, then: fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, HIGH, 6.6).read(Port::Manifold, HIGH, 3.1);
        sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.1);
        let shown = 3.79;
        let error_pa = error * PA_PER_INWC;
        let off = Spell { error_pa, ..spell(Port::Manifold, draw(HIGH), shown, shown) };
        sheet.showed(off, Some((shown, shown))).write_left(Port::Manifold, HIGH, shown).later();
        then(&mut sheet);
        sheet.truth.set_pa[Level::High] = 3.84 * PA_PER_INWC;
        sheet.handed_over(Ending::InService);
        sheet
    };
    let nothing = |_: &mut Sheet| {};
    assert_eq!(left(-0.048, nothing).times("left-outside-band"), 0);
    assert!(left(-0.048, nothing).gates(Essential::SettingsInPlate).is_empty());
    // The meter is charged, and the setting is missing all the same.
    let off = left(-0.053, nothing);
    assert_eq!(["left-outside-band", "meter-off"].map(|it| off.times(it)), [0, 1]);
    assert_eq!(off.gates(Essential::SettingsInPlate), ["left-outside-band"]);
    // A turn of the other screw, or a number that was made up, takes nothing away.
    let other = |sheet: &mut Sheet| {
        sheet.turn(Screw::Low, 1, Some(Level::Low), MANIFOLD, 1.7);
    };
    assert_eq!(left(-0.045, other).times("left-outside-band"), 0);
    let made_up = |sheet: &mut Sheet| {
        sheet.write_left(Port::Manifold, HIGH, 3.2);
    };
    assert_eq!(left(-0.045, made_up).times("left-outside-band"), 0);
    let inlet = |sheet: &mut Sheet| {
        sheet.stood(Port::Inlet, HIGH, 6.6).write_left(Port::Inlet, HIGH, 6.6);
    };
    assert_eq!(left(-0.045, inlet).times("left-outside-band"), 0);
    // Never turned, the last right number counts as well.
    let mut found = Sheet::new();
    let off =
        Spell { error_pa: -0.045 * PA_PER_INWC, ..spell(Port::Manifold, draw(HIGH), 3.79, 3.79) };
    found.showed(off, Some((3.79, 3.79))).write(Port::Manifold, HIGH, 3.79);
    found.truth.set_pa[Level::High] = 3.84 * PA_PER_INWC;
    assert_eq!(found.handed_over(Ending::InService).times("left-outside-band"), 0);
    // A turn of its own does, and so does a later number outside.
    let own = |sheet: &mut Sheet| {
        sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.79);
    };
    assert_eq!(left(-0.045, own).times("left-outside-band"), 1);
    let later = |sheet: &mut Sheet| {
        sheet.stood(Port::Manifold, HIGH, 3.84).write_left(Port::Manifold, HIGH, 3.84);
    };
    assert_eq!(left(-0.045, later).times("left-outside-band"), 1);
    // One that ran over the end of the band stood on both sides of it.
    let over = |sheet: &mut Sheet| {
        let ran = spell(Port::Manifold, draw(HIGH), 3.78, 3.84);
        sheet.showed(ran, Some((3.78, 3.84))).write_left(Port::Manifold, HIGH, 3.8);
    };
    assert_eq!(left(-0.045, over).times("left-outside-band"), 1);
}

/// A spring that stands a tenth over its plate's rate, by the square root of its pressure: 3.5 in. w.c.
/// are 10 % over at 4.235.
#[test]
fn a_tenth_over_the_rate_is_unsafe() {
    for (set, severity) in [(4.23, Severity::Major), (4.24, Severity::Critical)] {
        let mut sheet = Sheet::new();
        sheet.truth.set_pa[Level::High] = set * PA_PER_INWC;
        sheet.handed_over(Ending::InService);
        assert_eq!(sheet.severity("left-outside-band"), Some(severity), "{set}");
    }
}

/// Turned the wrong way is a quarter turn and more beyond where it was found, on the side away from the
/// plate; each screw for itself.
#[test]
fn the_wrong_way_is_away_from_the_plate() {
    let wrong = |screw: Screw, found: f64, turns: &[i16]| {
        let mut sheet = Sheet::new();
        for &eighths in turns {
            sheet.turn(screw, eighths, screw.level(), MANIFOLD, found);
        }
        // The other screw's turns are not its own.
        let other = if screw == Screw::Low { Screw::High } else { Screw::Low };
        sheet.turn(other, -4, other.level(), MANIFOLD, 3.5);
        sheet.turn(other, -4, other.level(), MANIFOLD, 3.5);
        sheet.handed_over(Ending::InService);
        sheet.finding("wrong-way").map(|it| (it.times, it.seen))
    };
    let times = |screw, found, turns: &[i16]| wrong(screw, found, turns).map_or(0, |it| it.0);
    assert_eq!(times(Screw::High, 3.0, &[-2]), 0);
    assert_eq!(times(Screw::High, 3.0, &[-3]), 1);
    assert_eq!(times(Screw::High, 3.0, &[3]), 0);
    assert_eq!(times(Screw::High, 4.0, &[2]), 0);
    assert_eq!(times(Screw::High, 4.0, &[3]), 1);
    assert_eq!(times(Screw::High, 4.0, &[-3]), 0);
    assert_eq!(times(Screw::High, 3.5, &[-3]), 0);
    assert_eq!(times(Screw::Low, 1.2, &[-1, -1]), 0);
    assert_eq!(times(Screw::Low, 1.2, &[-1, -2]), 1);
    assert_eq!(times(Screw::Low, 1.2, &[2, -4]), 0);
}

/// The rise that stands on the sheet when a screw is first turned, against the plate's 40 to 70 °F: in
/// between, or written later, or of one side only, it is no reason that is charged.
#[test]
fn a_rise_is_held_against_the_plate() {
    let wrote = |spot: Spot, f: f64, burns: bool| EventKind::WroteMeasured {
        written: WrittenMeasured {
            spot,
            tick: 0,
            figures: vec![Figure::new(Quantity::Temperature, f)],
        },
        firing: burns.then_some(Level::High),
    };
    let by_gas = |set: f64, written: &[EventKind], later: &[EventKind]| {
        let mut sheet = Sheet::new();
        for it in written {
            sheet.push(it.clone());
        }
        sheet.turn(Screw::High, -1, Some(Level::High), MANIFOLD, set);
        for it in later {
            sheet.push(it.clone());
        }
        sheet.handed_over(Ending::InService);
        sheet.times("rise-by-gas")
    };
    let both = |back: f64, out: f64| {
        [wrote(Spot::ReturnAir, back, true), wrote(Spot::SupplyAir, out, true)]
    };
    assert_eq!(by_gas(3.5, &both(68.0, 68.0 + 39.0), &[]), 1);
    assert_eq!(by_gas(3.5, &both(68.0, 68.0 + 41.0), &[]), 0);
    assert_eq!(by_gas(3.5, &both(68.0, 68.0 + 69.0), &[]), 0);
    assert_eq!(by_gas(3.5, &both(68.0, 68.0 + 71.0), &[]), 1);
    assert_eq!(by_gas(4.0, &both(68.0, 68.0 + 90.0), &[]), 0);
    assert_eq!(by_gas(3.5, &[], &both(68.0, 68.0 + 90.0)), 0);
    assert_eq!(by_gas(3.5, &both(68.0, 68.0 + 90.0)[..1], &[]), 0);
    let cold = [wrote(Spot::ReturnAir, 68.0, false), wrote(Spot::SupplyAir, 158.0, false)];
    assert_eq!(by_gas(3.5, &cold, &[]), 0);
    // The last of each counts.
    let again = [&both(68.0, 158.0)[..], &both(68.0, 123.0)].concat();
    assert_eq!(by_gas(3.5, &again, &[]), 0);
}

/// A cap that is off, and one that was put back before the last turn, tell of their own level.
#[test]
fn a_cap_belongs_to_its_screw() {
    let cap = |screw, to| Action::Cap { screw, to };
    for (off, counts) in [(None, 0), (Some(Screw::Low), 1)] {
        let mut sheet = Sheet::new();
        if let Some(screw) = off {
            sheet.truth.caps[screw] = Fitted::Off;
        }
        sheet.handed_over(Ending::InService);
        assert_eq!(sheet.times("cap-off"), counts);
    }
    // Put on before the last turn, the cap says nothing of it.
    let mut sheet = Sheet::new();
    sheet.read(Port::Inlet, HIGH, 6.6).read(Port::Manifold, HIGH, 3.1);
    sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.1);
    sheet.did(cap(Screw::High, Fitted::On)).later();
    sheet.turn(Screw::High, 1, Some(Level::High), MANIFOLD, 3.3);
    sheet.did(cap(Screw::High, Fitted::Off)).did(cap(Screw::Low, Fitted::On));
    assert_eq!(sheet.times("not-read-with-cap"), 0);
}
