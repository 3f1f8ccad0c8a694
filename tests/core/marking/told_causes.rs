//! What a debrief tells of each cause: the trainee's own numbers and looks, what the sheet names, and
//! how it was left. Limits are half of the last digit of the trade's ordinary meters, 0.05 in. w.c.
//! (from memory).

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, Contact};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::marking::debrief::{CameFrom, CauseTold, Left};
use quarterturn::model::truth::Truth;
use quarterturn::parts::{
    Answer, Cause, Ending, Fitted, Joint, Level, OnOff, Port, Screw, Spot, Stage, Subject,
    WrittenFinding,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::WrittenMeasured;
use quarterturn::setup::{Setup, SupplyKind};
use quarterturn::units::PA_PER_INWC;

use super::sheet::{FULL_LOAD, HIGH, LOW, REST, Sheet, draw, spell};
use super::told::told;
use crate::bench::rig;

const RIGHT: &[Ending] = &[Ending::InService];

fn causes(sheet: &Sheet) -> Vec<CauseTold> {
    told(sheet, RIGHT, "healthy-natural", None).account.causes
}

#[track_caller]
fn of(sheet: &Sheet, cause: Cause) -> CauseTold {
    let all = causes(sheet);
    let one = all.iter().find(|it| it.cause == cause);
    one.unwrap_or_else(|| panic!("{cause:?} is not told: {all:?}")).clone()
}

fn rig(fuel: Fuel, change: impl FnOnce(&mut Setup)) -> Sheet {
    let mut setup = rig::healthy(fuel);
    change(&mut setup);
    Sheet::of(setup)
}

fn faulty(fault: Fault) -> Sheet {
    let typical = fault.entry().severity.typical(Fuel::Natural);
    rig(Fuel::Natural, |setup| fault.apply(setup, typical))
}

/// The high screw turned with such a pressure at the inlet, its spring left at `set`; a number from
/// the manifold that stood if `stood`, with that pressure there. All in inches of water.
fn own(set: f64, read: f64, there: f64, inlet: f64, stood: bool) -> CauseTold {
    let mut sheet = Sheet::new();
    sheet.push(EventKind::Turned {
        screw: Screw::High,
        eighths: 1,
        set_pa: (3.5 * PA_PER_INWC, set * PA_PER_INWC),
        bottomed: false,
        firing: Some(Level::High),
        inlet_pa: inlet * PA_PER_INWC,
        metered: Some(Port::Manifold),
        since_turn_s: None,
    });
    sheet.later();
    if stood {
        sheet.stood(Port::Manifold, HIGH, read);
    }
    sheet.truth.manifold_pa = there * PA_PER_INWC;
    sheet.did(Action::PutDown).write(Port::Manifold, HIGH, read);
    sheet.truth.set_pa[Level::High] = set * PA_PER_INWC;
    of(sheet.handed_over(Ending::InService), Cause::HighSetHigh)
}

/// A spring that the work left outside the plate is told with what kept its number from being read: a
/// number that no meter showed, an inlet less than an inch above it, a turn after the reading, a meter
/// that was off. No finding is asked for it.
#[test]
fn a_spring_of_ones_own_is_told_with_what_hid_it() {
    const INVENTED: &str = ": the number was not what the meter showed there";
    const STARVED: &str = ": the starved inlet held the reading down";
    const EARLIER: &str = ": it was turned after that reading";
    const METER: &str = ": the meter was off";
    let all = [INVENTED, STARVED, EARLIER, METER];
    for (read, there, inlet, stood, why) in [
        (4.2, 4.2, 6.7, true, None),
        (4.2, 4.2, 6.7, false, Some(INVENTED)),
        (4.2, 4.2, 5.19, true, Some(STARVED)),
        (4.2, 4.2, 5.21, true, None),
        (4.148, 4.148, 6.7, true, Some(EARLIER)),
        (4.152, 4.152, 6.7, true, None),
        (4.252, 4.2, 6.7, true, Some(METER)),
        (4.248, 4.2, 6.7, true, None),
    ] {
        let told = own(4.2, read, there, inlet, stood);
        let said = all.into_iter().find(|it| told.read[0].contains(it));
        assert_eq!(said, why, "{read} {there} {inlet} {stood}: {:?}", told.read);
        assert_eq!((told.from, told.is_named, told.left), (CameFrom::Work, false, Left::InUse));
        assert!(told.head().contains("by your own work"), "{}", told.head());
        assert!(!told.lines().contains(&told.named), "{:?}", told.lines());
    }
}

/// A spring is the trainee's own only where its screw was turned and it lies more than half a digit out
/// of its band, 3.2 to 3.8; shut off, it is told as that. The last number of its manifold is told, of
/// the full load too; without one, that there is none.
#[test]
fn a_spring_of_ones_own_is_told_from_its_band_on() {
    let left = |screw: Screw, set: f64, ending: Ending| {
        let mut sheet = Sheet::new();
        sheet.turn(screw, 1, Some(Level::High), Some(Port::Manifold), 3.5);
        sheet.read(Port::Manifold, HIGH, 3.5).read(Port::Manifold, FULL_LOAD, 3.4);
        sheet.truth.set_pa[Level::High] = set * PA_PER_INWC;
        (sheet.truth.manual_valve, sheet.truth.tag) = (HandleAngle::SHUT, Fitted::On);
        causes(sheet.handed_over(ending))
    };
    let high = |set| left(Screw::High, set, Ending::InService);
    assert!(high(3.848).is_empty() && high(3.152).is_empty());
    let [above] = high(3.852).try_into().unwrap();
    assert_eq!((above.cause, above.left), (Cause::HighSetHigh, Left::InUse));
    assert!(above.read[0].contains("You wrote 3.4 in. w.c."), "{:?}", above.read);
    assert_eq!(high(3.148)[0].cause, Cause::HighSetLow);
    assert!(left(Screw::Low, 4.2, Ending::InService).is_empty(), "nobody turned it");
    assert_eq!(left(Screw::High, 4.2, Ending::ShutOff)[0].left, Left::ShutOff);
    let mut unread = Sheet::new();
    unread.turn(Screw::High, 1, Some(Level::High), Some(Port::Manifold), 3.5);
    unread.truth.set_pa[Level::High] = 4.2 * PA_PER_INWC;
    let told = of(unread.handed_over(Ending::InService), Cause::HighSetHigh);
    assert!(told.read[0].contains("wrote no number"), "{:?}", told.read);
}

/// Of everything that could show a cause two sentences are told, numbers before looks; with nothing of
/// it on the job, the first that was missed.
#[test]
fn two_sentences_at_most_tell_of_what_was_read() {
    let read = |inlet: usize, looked: bool| {
        let mut sheet = faulty(Fault::BlockedRegulatorVent);
        for stage in [REST, LOW, HIGH].into_iter().take(inlet) {
            sheet.read(Port::Inlet, stage, 6.6);
        }
        sheet.read(Port::Manifold, HIGH, 3.5).write(Port::Inlet, FULL_LOAD, 9.9);
        sheet.did(Action::Look(if looked { Subject::SupplyVent } else { Subject::Plate }));
        of(sheet.handed_over(Ending::InService), Cause::RegulatorVentBlocked).read
    };
    let none = read(0, false);
    assert!(none.len() == 1 && none[0].contains("no number from the inlet"), "{none:?}");
    let seen = read(0, true);
    assert!(seen.len() == 1 && seen[0].starts_with("You looked at it at "), "{seen:?}");
    let both = read(1, true);
    assert!(both[0].starts_with("You wrote") && both[1].starts_with("You looked"), "{both:?}");
    let many = read(3, true);
    assert!(many.len() == 2 && many[1].starts_with("You wrote"), "{many:?}");
}

/// A figure from another instrument speaks if it was taken at the spot that shows the cause, the last
/// one of them.
#[test]
fn a_figure_speaks_at_its_own_spot() {
    let read = |spot: Option<Spot>| {
        let mut sheet = faulty(Fault::OversizeOrifices);
        for excess in [11.0, 22.0] {
            let figures = vec![Figure::new(Quantity::ExcessAir, excess)];
            let written = spot.map(|spot| WrittenMeasured { spot, tick: 0, figures });
            let what = |written| EventKind::WroteMeasured { written, firing: None };
            written.into_iter().for_each(|it| {
                sheet.push(what(it));
            });
        }
        of(sheet.handed_over(Ending::InService), Cause::OrificesTooLarge).read
    };
    assert!(read(Some(Spot::Flue))[0].contains("22"), "{:?}", read(Some(Spot::Flue)));
    for none in [read(None), read(Some(Spot::SupplyAir))] {
        assert!(none.len() == 1 && none[0].contains("measured nothing there"), "{none:?}");
    }
}

/// Leak fluid speaks on its own joint: bubbles that ever grew there, none, or no fluid at all.
#[test]
fn leak_fluid_speaks_on_its_own_joint() {
    let read = |judged: &[(Joint, bool)]| {
        let mut sheet = faulty(Fault::LooseInletPlug);
        for &(joint, bubbles) in judged {
            let manual_valve = HandleAngle::OPEN;
            let (lowest_pa, dwell_s, firing) = (1_700.0, 15.0, None);
            sheet.push(EventKind::FluidJudged {
                joint,
                lowest_pa,
                dwell_s,
                firing,
                bubbles,
                manual_valve,
            });
        }
        of(sheet.handed_over(Ending::InService), Cause::InletPlugLoose).read.remove(0)
    };
    let (inlet, manifold) = (Joint::InletPort, Joint::ManifoldPort);
    assert!(read(&[(inlet, true), (inlet, false)]).starts_with("Bubbles grew"));
    assert!(read(&[(manifold, true), (inlet, false)]).starts_with("No bubbles grew"));
    assert!(read(&[(manifold, true)]).starts_with("You put no leak fluid"));
}

/// The number that lies farthest out of what the plate allows is told first; of two alike the one as
/// found, and the one under the greater load. One line of the sheet is told once.
#[test]
fn the_number_that_tells_most_is_told_first() {
    let read = |write: &dyn Fn(&mut Sheet)| {
        let mut sheet = faulty(Fault::UndersizedRegulator);
        write(&mut sheet);
        of(sheet.handed_over(Ending::InService), Cause::RegulatorTooSmall).read
    };
    let told = read(&|sheet| {
        sheet.read(Port::Inlet, FULL_LOAD, 4.6).read(Port::Inlet, HIGH, 3.1);
        sheet.read(Port::Inlet, LOW, 6.0);
    });
    assert!(told[0].contains("3.1 in. w.c.") && told[1].contains("4.6 in. w.c."), "{told:?}");
    let told = read(&|sheet| {
        sheet.read(Port::Inlet, LOW, 6.0).read(Port::Inlet, HIGH, 6.1);
    });
    assert!(told[0].contains("6.1 in. w.c.") && told[1].contains("6 in. w.c."), "{told:?}");
    let told = read(&|sheet| {
        sheet.stood(Port::Inlet, HIGH, 6.0).write_left(Port::Inlet, HIGH, 6.0);
        sheet.stood(Port::Inlet, LOW, 6.1).write(Port::Inlet, LOW, 6.1);
    });
    assert!(told[0].contains("6.1 in. w.c."), "{told:?}");
    let told = read(&|sheet| {
        sheet.read(Port::Inlet, HIGH, 4.1).read(Port::Inlet, HIGH, 4.2);
        sheet.read(Port::Inlet, LOW, 6.0);
    });
    assert!(told[1].contains("6 in. w.c."), "{told:?}");
}

/// A number that is more than half a digit off the truth is told with that; of measuring gear the one
/// that is farthest off comes first, and a true one is told as true.
#[test]
fn a_number_is_told_beside_what_was_true() {
    let read = |fault: Fault, cause: Cause, numbers: &[(Stage, f64, f64)]| {
        let mut sheet = faulty(fault);
        for &(stage, number, off) in numbers {
            let mut one = spell(Port::Inlet, draw(stage), number, number);
            one.error_pa = off * PA_PER_INWC;
            sheet.showed(one, Some((number, number))).write(Port::Inlet, stage, number).later();
        }
        of(sheet.handed_over(Ending::InService), cause).read
    };
    let (hose, pinched) = (Fault::PinchedMeterHose, Cause::MeterHosePinched);
    let told = read(hose, pinched, &[(REST, 12.5, 0.0), (HIGH, 6.0, 1.0)]);
    assert!(told[0].ends_with("the pressure there was 5.00 in. w.c."), "{told:?}");
    assert!(told[1].ends_with("and that was the pressure there."), "{told:?}");
    let (small, too_small) = (Fault::UndersizedRegulator, Cause::RegulatorTooSmall);
    let off = |off: f64| read(small, too_small, &[(HIGH, 6.0, off)])[0].contains("there was");
    assert!(off(0.052) && off(-0.052) && !off(0.048) && !off(-0.048));
    let inside = &read(small, too_small, &[(HIGH, 6.0, 0.0)])[0];
    assert!(inside.contains("inside what is allowed"), "{inside}");
}

/// A level that was found set wrong is told by the first number of its own manifold, at the full load
/// too where it is the full rate.
#[test]
fn a_spring_that_was_found_is_told_by_its_first_number() {
    let read = |fault: Fault, cause: Cause, numbers: &[(Stage, f64)]| {
        let mut sheet = faulty(fault);
        for &(stage, number) in numbers {
            sheet.read(Port::Manifold, stage, number);
        }
        of(sheet.handed_over(Ending::InService), cause).read.remove(0)
    };
    let (low, is_low) = (Fault::LowStageSetLow, Cause::LowSetLow);
    let told = read(low, is_low, &[(FULL_LOAD, 3.4), (HIGH, 3.5), (LOW, 1.2), (LOW, 1.3)]);
    assert!(
        told.contains("You wrote 1.2 in. w.c.") && told.contains("1.70 in. w.c. ± 0.30"),
        "{told}"
    );
    let (high, is_high) = (Fault::HighStageSetHigh, Cause::HighSetHigh);
    let told = read(high, is_high, &[(LOW, 1.7), (FULL_LOAD, 4.1), (HIGH, 4.2)]);
    assert!(
        told.contains("You wrote 4.1 in. w.c.") && told.contains("3.50 in. w.c. ± 0.30"),
        "{told}"
    );
    assert!(read(high, is_high, &[(LOW, 1.7)]).contains("no number"), "nothing was read on high");
}

/// What the sheet names is told beside each cause.
#[test]
fn what_the_sheet_names_is_told() {
    let named = |causes: &[Cause]| {
        let mut sheet = faulty(Fault::PluggedOrifice);
        for &cause in causes {
            let finding = WrittenFinding { cause, answer: Answer::Mended, evidence: Vec::new() };
            sheet.did(Action::WriteFinding(finding));
        }
        let told = of(sheet.handed_over(Ending::InService), Cause::OrificePlugged);
        (told.is_named, told.named)
    };
    assert_eq!(named(&[]), (false, "Your sheet names nothing as wrong.".into()));
    let (is_named, words) = named(&[Cause::FilterBlocked]);
    assert!(!is_named && words.starts_with("Not named."), "{words}");
    let (is_named, words) = named(&[Cause::FilterBlocked, Cause::OrificePlugged]);
    assert!(is_named && words.starts_with("Named on your sheet: "), "{words}");
}

/// A cause that was found so is put right where the job ends in one state, and is not in the other.
#[track_caller]
fn stands(
    cause: Cause,
    found: impl Fn(&mut Setup),
    right: impl Fn(&mut Truth),
    wrong: impl Fn(&mut Truth),
) {
    for is_right in [true, false] {
        let mut sheet = rig(Fuel::Natural, &found);
        if is_right {
            right(&mut sheet.truth)
        } else {
            wrong(&mut sheet.truth)
        }
        let told = of(sheet.handed_over(Ending::InService), cause);
        assert_eq!(told.left, if is_right { Left::Right } else { Left::InUse }, "{cause:?}");
    }
}

/// What hands set right is right as it stands at the end, as far as a meter tells.
#[test]
fn what_hands_set_right_is_told_as_it_stands() {
    let (least_pa, most_pa) = rig::healthy(Fuel::Natural).supply.delivery_limits_pa;
    let [inside, outside] = [0.048, 0.052].map(|inches| inches * PA_PER_INWC);
    stands(
        Cause::SupplySetLow,
        |it| it.supply.set_pa = 4.5 * PA_PER_INWC,
        |it| it.supply_set_pa = least_pa - inside,
        |it| it.supply_set_pa = least_pa - outside,
    );
    stands(
        Cause::SupplySetHigh,
        |it| it.supply.set_pa = 9.5 * PA_PER_INWC,
        |it| it.supply_set_pa = most_pa + inside,
        |it| it.supply_set_pa = most_pa + outside,
    );
    let fault = Fault::HighStageSetHigh;
    stands(
        Cause::HighSetHigh,
        |it| fault.apply(it, fault.entry().severity.typical(Fuel::Natural)),
        |it| it.set_pa[Level::High] = 3.8 * PA_PER_INWC + inside,
        |it| it.set_pa[Level::High] = 3.8 * PA_PER_INWC + outside,
    );
}

/// What hands opened, switched on or tightened is right as it stands at the end.
#[test]
fn what_hands_put_back_is_told_as_it_stands() {
    let aslant = |degrees| HandleAngle::from_deg(degrees).unwrap();
    stands(
        Cause::ManualValveShut,
        |it| it.found.manual_valve = HandleAngle::SHUT,
        |it| it.manual_valve = HandleAngle::OPEN,
        |it| it.manual_valve = aslant(20),
    );
    stands(
        Cause::ManualValvePartOpen,
        |it| it.found.manual_valve = aslant(20),
        |it| it.manual_valve = HandleAngle::OPEN,
        |it| it.manual_valve = aslant(30),
    );
    stands(
        Cause::ValveSwitchOff,
        |it| it.found.valve_switch = OnOff::Off,
        |it| it.valve_switch = OnOff::On,
        |_| (),
    );
    stands(
        Cause::FurnaceSwitchOff,
        |it| it.found.furnace_switch = OnOff::Off,
        |it| it.furnace_switch = OnOff::On,
        |_| (),
    );
    stands(
        Cause::CapMissing,
        |it| it.found.caps[Screw::Low] = Fitted::Off,
        |it| it.caps[Screw::Low] = Fitted::On,
        |_| (),
    );
    for (cause, port) in
        [(Cause::InletPlugLoose, Port::Inlet), (Cause::ManifoldPlugLoose, Port::Manifold)]
    {
        stands(
            cause,
            |it| it.found.plugs_past_hand[port] = 0.1,
            |it| it.ports[port].past_hand_turns = 0.5,
            |it| it.ports[port].past_hand_turns = 0.49,
        );
    }
    let fault = Fault::LooseInletPlug;
    stands(
        Cause::InletPlugLoose,
        |it| fault.apply(it, fault.entry().severity.typical(Fuel::Natural)),
        |it| it.ports[Port::Inlet].past_hand_turns = 0.5,
        |_| (),
    );
}

/// Parts for another gas are right once the whole kit is fitted, its label with it.
#[test]
fn a_conversion_is_right_with_its_kit() {
    for (mends, labels, left) in
        [(true, true, Left::Right), (true, false, Left::InUse), (false, false, Left::InUse)]
    {
        let fault = Fault::UnconvertedOnPropane;
        let typical = fault.entry().severity.typical(Fuel::Propane);
        let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
        let plate = setup.furnace.plate.clone();
        fault.apply(&mut setup, typical);
        let mut sheet = Sheet::of(setup);
        if mends {
            let plate = Some(Box::new(plate)).filter(|_| labels);
            let (repair, outcome) = (Repair::FitConversionKit, Outcome::Changed);
            sheet.push(EventKind::Mended { repair, outcome, plate });
        }
        let told = of(sheet.handed_over(Ending::InService), Cause::NotConverted);
        assert_eq!(told.left, left);
    }
}

/// What belongs to the owner of the supply is told as theirs once they were called and the job ends so;
/// what hands could have put right is not.
#[test]
fn what_was_left_to_its_owner_is_told_so() {
    let empty = |setup: &mut Setup| {
        let SupplyKind::Tank { level, .. } = &mut setup.supply.kind else { panic!("a tank") };
        *level = 0.05;
    };
    let off = |setup: &mut Setup| setup.found.valve_switch = OnOff::Off;
    let left = |found: &dyn Fn(&mut Setup), cause, calls: bool, ending| {
        let mut sheet = rig(Fuel::Propane, found);
        if calls {
            sheet.did(Action::Call(Contact::SupplyOwner));
        }
        of(sheet.handed_over(ending), cause).left
    };
    let (tank, called) = (Cause::TankNearlyEmpty, Ending::SupplyOwnerCalled);
    assert_eq!(left(&empty, tank, true, called), Left::OwnerCalled);
    assert_eq!(left(&empty, tank, false, called), Left::InUse);
    assert_eq!(left(&empty, tank, true, Ending::InService), Left::InUse);
    assert_eq!(left(&off, Cause::ValveSwitchOff, true, called), Left::InUse);
}

/// What is still there is told before what was put right.
#[test]
fn what_is_still_there_is_told_first() {
    let mut sheet = rig(Fuel::Natural, |setup| {
        setup.found.valve_switch = OnOff::Off;
        setup.found.caps[Screw::Low] = Fitted::Off;
    });
    sheet.truth.valve_switch = OnOff::On;
    let told = causes(sheet.handed_over(Ending::InService));
    let order: Vec<_> = told.iter().map(|it| (it.cause, it.left)).collect();
    assert_eq!(order, [(Cause::CapMissing, Left::InUse), (Cause::ValveSwitchOff, Left::Right)]);
}
