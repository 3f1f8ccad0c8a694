//! What shows a competency: that there was occasion for it and the work was done. Each rule is asked by
//! itself, as the only one that speaks for a competency.

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::{Action, PlugStep, Topic};
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::marking::Shown::{self, NoOccasion, NotShown, Shown as Done};
use quarterturn::marking::occasion::gives_occasion;
use quarterturn::marking::{Brief, Ledger};
use quarterturn::parts::{
    Duty, Ending, Fitted, Height, Joint, Level, OnOff, Opening, Phase, Place, Port, Push, Reading,
    Screw, Spot, Stage, Subject, Window,
};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::evidence::{Closing, Leaving, Mending, Setting};
use quarterturn::rules::{Evidence, Severity, shared};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::setup::SupplyRight;
use quarterturn::units::{PA_PER_INWC, PressureUnit};

use super::sheet::{HIGH, LOW, REST, Sheet};
use crate::bench::rig;

pub const RIGHT: &[Ending] = &[Ending::InService];
pub const OFF: &[Ending] = &[Ending::ShutOff];

/// Whether a rule, asked by itself, shows its competency.
pub fn told(rule: &str, sheet: &Sheet, right: &[Ending]) -> Shown {
    told_as(rule, sheet, right, None)
}

/// The same where a slip of it is so serious, if that is said. What is minor speaks against nobody: the
/// work alone tells.
pub fn told_as(rule: &str, sheet: &Sheet, right: &[Ending], severity: Option<Severity>) -> Shown {
    let mut book = shared().unwrap();
    book.rules.retain(|it| it.id == rule);
    let only = book.rules.first_mut().expect("a rule");
    only.own_severity = severity;
    only.claims = vec!["C01".to_owned()];
    only.follows_from.clear();
    sheet.marks_by(&book, right).competencies["C01"]
}

/// A job on which something was read.
pub fn read_on(fuel: Fuel, change: impl FnOnce(&mut quarterturn::setup::Setup)) -> Sheet {
    let mut setup = rig::healthy(fuel);
    change(&mut setup);
    let mut sheet = Sheet::of(setup);
    let rest = if fuel == Fuel::Natural { 7.6 } else { 13.1 };
    sheet.read(Port::Inlet, REST, rest);
    sheet
}

pub fn read() -> Sheet {
    read_on(Fuel::Natural, |_| ())
}

pub fn with(actions: &[Action]) -> Sheet {
    done(read(), actions)
}

pub fn done(mut sheet: Sheet, actions: &[Action]) -> Sheet {
    for action in actions {
        sheet.did(action.clone()).later();
    }
    sheet
}

pub fn shut_off(mut sheet: Sheet) -> Sheet {
    sheet.truth.manual_valve = HandleAngle::SHUT;
    sheet.truth.tag = Fitted::On;
    sheet.handed_over(Ending::ShutOff);
    sheet
}

fn plug(port: Port, step: PlugStep) -> Action {
    Action::Plug { port, step }
}

pub fn mended(repair: Repair, outcome: Outcome) -> EventKind {
    EventKind::Mended { repair, outcome, plate: None }
}

pub const SWITCH: Action = Action::FurnaceSwitch(OnOff::Off);
pub const HALL: Action = Action::Go(Place::Hall);
pub const LIT: EventKind = EventKind::Fired { from: None, to: Some(Level::Low) };

/// The levels read at the manifold.
fn levels_read(sheet: &mut Sheet) -> &mut Sheet {
    sheet.read(Port::Manifold, LOW, 1.7).read(Port::Manifold, HIGH, 3.5)
}

/// A job on which nothing was read, or that was not handed over, shows nothing, whatever was done.
#[test]
fn work_counts_on_a_job_that_was_worked() {
    let rule = "work-not-announced";
    let acts = [Action::Tell(Topic::WorkStarts), HALL, SWITCH];
    assert_eq!(told(rule, &with(&acts), RIGHT), Done);
    assert_eq!(told(rule, &done(Sheet::new(), &acts), RIGHT), NotShown);
    let mut stopped = with(&acts);
    stopped.push(EventKind::Ended { hand_over: None, left: Box::new(stopped.truth.clone()) });
    assert_eq!(told(rule, &stopped, RIGHT), NotShown);
    let mut made_up = done(Sheet::new(), &acts);
    made_up.write(Port::Inlet, REST, 4.0);
    assert_eq!(told(rule, &made_up, RIGHT), NotShown);
    // Nothing read, and shut off for what was found: that is worked. For nothing it is not.
    let mut found = done(Sheet::new(), &acts);
    found.push(EventKind::Alarm);
    assert_eq!(told(rule, &shut_off(found), OFF), Done);
    assert_eq!(told(rule, &shut_off(done(Sheet::new(), &acts)), OFF), NotShown);
    assert_eq!(told(rule, &with(&[HALL]), RIGHT), NoOccasion);
}

/// Arrival: smelt before the first hand, at the floor on propane, aired before lighting; told before work
/// and of the drill.
#[test]
fn arrival_is_shown_where_there_was_occasion() {
    let sniff = |height| Action::Sniff(height);
    let sniffed = [HALL, sniff(Height::Floor), SWITCH];
    assert_eq!(told("no-sniff-on-arrival", &with(&sniffed), RIGHT), Done);
    assert_eq!(told("no-sniff-on-arrival", &with(&[HALL, SWITCH]), RIGHT), NotShown);
    assert_eq!(told("no-sniff-on-arrival", &with(&[HALL]), RIGHT), NoOccasion);
    let mut alarmed = read();
    alarmed.push(EventKind::Alarm).did(SWITCH);
    assert_eq!(told("no-sniff-on-arrival", &alarmed, RIGHT), NoOccasion);
    let propane = || read_on(Fuel::Propane, |_| ());
    assert_eq!(told("head-height-only", &done(propane(), &sniffed), RIGHT), Done);
    assert_eq!(told("head-height-only", &with(&sniffed), RIGHT), NoOccasion);
    let open = Action::Window { window: Window::PlantRoom, to: Opening::Open };
    let lit = |mut sheet: Sheet, lights: bool| {
        sheet.did(open.clone()).did(SWITCH).later();
        if lights {
            sheet.push(LIT);
        }
        told("not-aired", &sheet, RIGHT)
    };
    assert_eq!(lit(propane(), true), Done);
    assert_eq!(lit(propane(), false), NoOccasion);
    assert_eq!(lit(read(), true), NoOccasion);
    let drill = Action::Tell(Topic::GasSmellDrill);
    assert_eq!(told("drill-not-told", &with(&[drill]), RIGHT), Done);
    let mut gas = read();
    gas.push(EventKind::Alarm);
    assert_eq!(told("drill-not-told", &shut_off(gas), OFF), NoOccasion);
}

/// Gas in the air is answered by who tells everybody to get out; a trace, by who tells of the drill. A plug
/// that was out is an occasion by itself, and shows nothing.
#[test]
fn gas_in_the_air_is_answered() {
    let rule = "worked-on-after-alarm";
    let out = plug(Port::Inlet, PlugStep::SpinOut);
    assert_eq!(told(rule, &read(), RIGHT), NoOccasion);
    assert_eq!(told(rule, &with(std::slice::from_ref(&out)), RIGHT), NoOccasion);
    let alarm = |told_to: Option<Topic>| {
        let mut sheet = read();
        sheet.push(EventKind::Alarm);
        if let Some(topic) = told_to {
            sheet.did(Action::Tell(topic));
        }
        told(rule, &sheet, RIGHT)
    };
    assert_eq!(alarm(Some(Topic::GetOut)), Done);
    assert_eq!(alarm(None), NotShown);
    let trace = |opens: bool, tells: bool| {
        let mut sheet = read();
        sheet.did(HALL);
        sheet.truth.gas_fraction.floor = 1.0e-3;
        sheet.did(Action::Probe(Height::Floor));
        if opens {
            sheet.did(out.clone());
        }
        if tells {
            sheet.did(Action::Tell(Topic::GasSmellDrill));
        }
        told(rule, &sheet, RIGHT)
    };
    assert_eq!(trace(true, true), Done);
    assert_eq!(trace(true, false), NotShown);
    assert_eq!(trace(false, true), NoOccasion);
}

/// Burners on parts for another gas that were never lit: shut off, or converted.
#[test]
fn a_wrong_conversion_is_left_dark_or_mended() {
    let fault = Fault::NaturalSpringsOnPropane;
    let job = |wrong: bool| {
        let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
        if wrong {
            fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Propane));
        }
        let mut sheet = Sheet::of(setup);
        sheet.read(Port::Inlet, REST, 13.1);
        sheet
    };
    let rule = "wrong-conversion-fired";
    let wrong = || job(true);
    assert_eq!(told(rule, &job(false), RIGHT), NoOccasion);
    assert_eq!(told(rule, &wrong(), RIGHT), NotShown);
    assert_eq!(told(rule, &shut_off(wrong()), OFF), Done);
    for (outcome, shown) in [(Outcome::Changed, Done), (Outcome::Nothing, NotShown)] {
        let mut sheet = wrong();
        sheet.push(mended(Repair::ReplaceFilter, outcome));
        assert_eq!(told(rule, &sheet, RIGHT), shown);
    }
}

/// A port is isolated where its plug was spun out, and each port is its own; gas was trapped where half an
/// inch of water stood behind the inlet plug when it was broken loose first.
#[test]
fn isolation_is_shown_at_an_open_port() {
    use PlugStep::{BreakLoose, SpinOut};
    let (inlet, manifold) = ("opened-inlet-under-gas", "opened-manifold-firing");
    for (port, step, shown) in [
        (Port::Inlet, SpinOut, [Done, NoOccasion]),
        (Port::Manifold, SpinOut, [NoOccasion, Done]),
        (Port::Inlet, BreakLoose, [NoOccasion, NoOccasion]),
    ] {
        let sheet = with(&[plug(port, step)]);
        assert_eq!([inlet, manifold].map(|it| told(it, &sheet, RIGHT)), shown, "{port:?} {step:?}");
        let any = if step == SpinOut { Done } else { NoOccasion };
        assert_eq!(told("gas-from-open-port", &sheet, RIGHT), any);
    }
    let trapped = |inwc: f64, tap_m: Option<f64>, port: Port| {
        let mut sheet =
            read_on(Fuel::Natural, |setup| setup.condition.ports[Port::Inlet].tap_free_m = tap_m);
        sheet.truth.inlet_pa = inwc * PA_PER_INWC;
        sheet.did(plug(port, BreakLoose));
        told("opened-on-trapped-gas", &sheet, RIGHT)
    };
    assert_eq!(trapped(0.52, None, Port::Inlet), Done);
    assert_eq!(trapped(0.5, None, Port::Inlet), NoOccasion);
    assert_eq!(trapped(0.48, None, Port::Inlet), NoOccasion);
    assert_eq!(trapped(0.54, None, Port::Manifold), NoOccasion);
    assert_eq!(trapped(7.0, Some(1.0e-5), Port::Inlet), NoOccasion);
}

/// A joint that was disturbed and looked at with fluid; the manometer's joint where the hose was on and the
/// burners were lit.
#[test]
fn leak_checks_are_shown_with_fluid() {
    let fluid = EventKind::FluidJudged {
        joint: Joint::InletPort,
        lowest_pa: 7.0 * PA_PER_INWC,
        dwell_s: 15.0,
        firing: None,
        bubbles: false,
        manual_valve: HandleAngle::OPEN,
    };
    let checked = |works: bool, fluid_on: bool, rule: &str| {
        let mut sheet = read();
        if works {
            sheet.did(plug(Port::Inlet, PlugStep::Tighten(6))).later();
        }
        if fluid_on {
            sheet.push(fluid.clone());
        }
        told(rule, &sheet, RIGHT)
    };
    for rule in ["joint-unchecked", "joint-verdict"] {
        assert_eq!(checked(true, true, rule), Done);
        assert_eq!(checked(true, false, rule), NotShown);
        assert_eq!(checked(false, true, rule), NoOccasion);
    }
    let hose = Action::HoseOn { port: Port::Inlet, push: Push::Fully };
    let test_joint = |hooks: bool, lights: bool| {
        let mut sheet = done(read(), &[HALL, SWITCH]);
        if hooks {
            sheet.did(hose.clone()).push(fluid.clone()).later();
        }
        if lights {
            sheet.push(LIT);
        }
        told("test-joint-unchecked", &sheet, RIGHT)
    };
    assert_eq!(test_joint(true, true), Done);
    assert_eq!(test_joint(true, false), NoOccasion);
    assert_eq!(test_joint(false, true), NoOccasion);
}

/// Numbers: the meter zeroed and a right one written; both ports for a zero at each; both levels for what
/// stands where; an instrument for its own.
#[test]
fn reading_is_shown_by_right_numbers() {
    let zeroed = |sheet: &mut Sheet| {
        sheet.push(EventKind::Zeroed { applied_pa: 0.0 });
    };
    let mut sheet = read();
    assert_eq!(told("meter-off", &sheet, RIGHT), NotShown);
    zeroed(&mut sheet);
    assert_eq!(told("meter-off", &sheet, RIGHT), Done);
    assert_eq!(told("not-zeroed-anew", &sheet, RIGHT), NoOccasion);
    assert_eq!(told("wrong-unit", &sheet, RIGHT), Done);
    assert_eq!(told("wrong-stage", &sheet, RIGHT), NoOccasion);
    assert_eq!(told("stage-never-read", &sheet, RIGHT), NotShown);
    sheet.read(Port::Manifold, LOW, 1.7);
    assert_eq!(told("not-zeroed-anew", &sheet, RIGHT), Done);
    assert_eq!(told("wrong-stage", &sheet, RIGHT), NoOccasion);
    sheet.read(Port::Manifold, HIGH, 3.5);
    for rule in ["wrong-stage", "stage-never-read", "left-outside-band", "nothing-as-found"] {
        assert_eq!(told(rule, &sheet, RIGHT), Done, "{rule}");
    }
    let manifold_alone = || {
        let mut sheet = Sheet::new();
        levels_read(&mut sheet).push(EventKind::Zeroed { applied_pa: 0.0 });
        sheet
    };
    assert_eq!(told("meter-off", &manifold_alone(), RIGHT), Done);
    assert_eq!(told("hold-too-short", &manifold_alone(), RIGHT), NotShown);
    let measured = |spots: &[Spot]| {
        with(&spots.iter().map(|spot| Action::WriteMeasured(*spot)).collect::<Vec<_>>())
    };
    use Spot::{Flue, MeterDial, ReturnAir, SupplyAir};
    for (spots, shown) in [
        (&[][..], [NoOccasion, NoOccasion, NoOccasion]),
        (&[MeterDial], [Done, NoOccasion, NoOccasion]),
        (&[SupplyAir], [NoOccasion, NotShown, NoOccasion]),
        (&[SupplyAir, ReturnAir], [NoOccasion, Done, NoOccasion]),
        (&[Flue], [NoOccasion, NoOccasion, Done]),
    ] {
        let sheet = measured(spots);
        let rules = ["rate-with-others", "rise-disturbed", "combustion-not-taken"];
        assert_eq!(rules.map(|it| told(it, &sheet, RIGHT)), shown, "{spots:?}");
    }
    assert_eq!(told("combustion-not-taken", &shut_off(measured(&[Flue])), OFF), NoOccasion);
}

/// What a card asks for besides is an occasion where it asks.
#[test]
fn what_the_card_asks_for_is_an_occasion() {
    for (asks, shown) in [(true, NotShown), (false, NoOccasion)] {
        let sheet = read_on(Fuel::Natural, |setup| {
            setup.card.required = if asks { vec![Duty::GasRate] } else { Vec::new() };
        });
        assert_eq!(told("rate-not-taken", &sheet, RIGHT), shown);
    }
}

/// Screws: a level's turned after it was read; a supply of one's own that was found low and set; somebody
/// else's that was read and left alone.
#[test]
fn setting_is_shown_by_what_was_turned() {
    let turned = |screw: Screw, right: SupplyRight| {
        let mut sheet = read_on(Fuel::Natural, |setup| setup.card.supply = right);
        sheet.read(Port::Inlet, HIGH, 6.6);
        levels_read(&mut sheet);
        sheet.did(Action::Turn { screw, eighths: 1 });
        sheet.turn(screw, 1, screw.level(), Some(Port::Manifold), 3.1);
        sheet
    };
    use SupplyRight::{OwnerOnly, Trainee};
    let high = turned(Screw::High, OwnerOnly);
    for rule in ["turned-before-found", "turned-before-inlet", "not-read-with-cap", "cap-off"] {
        assert_eq!(told(rule, &high, RIGHT), Done, "{rule}");
        assert_eq!(told(rule, &read(), RIGHT), NoOccasion, "{rule}");
    }
    let supply = turned(Screw::Supply, Trainee);
    assert_eq!(told("turned-before-found", &supply, RIGHT), NoOccasion);
    assert_eq!(told("turned-before-inlet", &supply, RIGHT), NotShown);
    assert_eq!(told("turned-before-inlet", &turned(Screw::Supply, OwnerOnly), RIGHT), NoOccasion);
    let mut unread = read();
    unread.read(Port::Manifold, HIGH, 3.1).did(Action::Turn { screw: Screw::High, eighths: 1 });
    assert_eq!(told("not-read-with-cap", &unread, RIGHT), NotShown);

    assert_eq!(told("supply-not-yours", &read(), RIGHT), Done);
    let mine = read_on(Fuel::Natural, |setup| setup.card.supply = Trainee);
    assert_eq!(told("supply-not-yours", &mine, RIGHT), NoOccasion);
    assert_eq!(told("supply-over-maximum", &mine, RIGHT), NoOccasion);
    assert_eq!(told("supply-over-maximum", &supply, RIGHT), Done);
    let low = |set: f64, right: SupplyRight, turns: bool, ending: Ending| {
        let mut sheet = read_on(Fuel::Natural, |setup| {
            setup.card.supply = right;
            setup.supply.set_pa = set * PA_PER_INWC;
        });
        sheet.truth.supply_set_pa = 7.0 * PA_PER_INWC;
        if turns {
            sheet.did(Action::Turn { screw: Screw::Supply, eighths: 1 });
        }
        sheet.handed_over(ending);
        told("supply-left-low", &sheet, RIGHT)
    };
    assert_eq!(low(5.9, Trainee, true, Ending::InService), Done);
    assert_eq!(low(5.9, Trainee, false, Ending::InService), NoOccasion);
    assert_eq!(low(6.0, Trainee, true, Ending::InService), NoOccasion);
    assert_eq!(low(5.9, OwnerOnly, true, Ending::InService), NoOccasion);
    assert_eq!(low(5.9, Trainee, true, Ending::ShutOff), NoOccasion);
}

/// A spring can be cranked where the full rate was written last with less than an inch of water between
/// inlet and spring.
#[test]
fn a_starved_full_rate_tempts_to_crank() {
    let write = |stage: Stage, port: Port| {
        let (phase, unit) = (Phase::Found, PressureUnit::InWc);
        Action::Write(Reading { port, stage, phase, thousandths: 3500, unit })
    };
    let tempts = |heads: &[(Action, f64)]| {
        let mut sheet = read();
        for (action, head) in heads {
            let set = sheet.truth.set_pa[Level::High];
            sheet.truth.inlet_pa = set + head * PA_PER_INWC;
            sheet.did(action.clone());
        }
        let mut ledger = Ledger::new(sheet.setup.clone());
        ledger.take(sheet.events.iter().cloned());
        let brief = Brief { right_endings: RIGHT.to_vec() };
        gives_occasion(Evidence::Setting(Setting::Cranked), &ledger, &brief)
    };
    let full = || write(HIGH, Port::Manifold);
    assert!(tempts(&[(full(), 0.99)]));
    assert!(!tempts(&[(full(), 1.01)]));
    assert!(!tempts(&[(write(LOW, Port::Manifold), 0.5)]));
    assert!(!tempts(&[(write(HIGH, Port::Inlet), 0.5)]));
    assert!(tempts(&[(full(), 3.0), (full(), 0.5)]));
    assert!(!tempts(&[(full(), 0.5), (full(), 3.0)]));
    assert!(!tempts(&[]));
}

/// Rules that show nothing have their occasions too: a rise that was written, a meter fault that was answered,
/// a furnace in use.
#[test]
fn occasions_are_told_by_themselves() {
    let asked = |evidence: Evidence, sheet: &Sheet, right: &[Ending]| {
        let mut ledger = Ledger::new(sheet.setup.clone());
        ledger.take(sheet.events.iter().cloned());
        gives_occasion(evidence, &ledger, &Brief { right_endings: right.to_vec() })
    };
    let rise = Evidence::Setting(Setting::RiseByGas);
    let measured = |spots: &[Spot]| {
        with(&spots.iter().map(|spot| Action::WriteMeasured(*spot)).collect::<Vec<_>>())
    };
    assert!(asked(rise, &measured(&[Spot::SupplyAir, Spot::ReturnAir]), RIGHT));
    assert!(!asked(rise, &measured(&[Spot::SupplyAir]), RIGHT));
    assert!(!asked(rise, &measured(&[Spot::ReturnAir]), RIGHT));
    let ended = |mut sheet: Sheet, ending: Ending| {
        sheet.handed_over(ending);
        sheet
    };
    use Ending::{InService, ShutOff};
    let burns = Evidence::Mending(Mending::CarbonMonoxideLeft);
    assert!(asked(burns, &ended(read(), InService), RIGHT));
    assert!(!asked(burns, &ended(read(), ShutOff), RIGHT) && !asked(burns, &read(), RIGHT));
    let fault = |fault: Fault, repair: Repair, ending: Ending| {
        let mut sheet = read_on(Fuel::Natural, |setup| {
            fault.apply(setup, fault.entry().severity.typical(Fuel::Natural));
        });
        sheet.push(mended(repair, Outcome::Changed)).handed_over(ending);
        let of = |it| asked(Evidence::Mending(it), &sheet, RIGHT);
        [of(Mending::FaultLeft), of(Mending::MeterFaultLeft)]
    };
    let hose = Fault::HoledMeterHose;
    assert_eq!(fault(Fault::PluggedOrifice, Repair::CleanOrifices, InService), [true, false]);
    assert_eq!(fault(Fault::PluggedOrifice, Repair::ReplaceFilter, InService), [false, false]);
    assert_eq!(fault(Fault::PluggedOrifice, Repair::CleanOrifices, ShutOff), [false, false]);
    assert_eq!(fault(hose, Repair::SwapMeterHose, InService), [true, true]);
    assert_eq!(fault(hose, Repair::SwapMeterHose, ShutOff), [false, false]);
    let needless = Evidence::Closing(Closing::ShutOffWithoutNeed);
    assert!(asked(needless, &read(), RIGHT) && !asked(needless, &read(), OFF));
    let wrong = Evidence::Closing(Closing::WrongEnding);
    assert!(asked(wrong, &read(), RIGHT) && !asked(wrong, &read(), &[]));
    for leaving in [Leaving::JumperLeft, Leaving::OthersNotRestored, Leaving::OthersLeftOut] {
        let due = leaving != Leaving::OthersLeftOut;
        assert_eq!(asked(Evidence::Leaving(leaving), &ended(read(), InService), RIGHT), due);
        assert!(!asked(Evidence::Leaving(leaving), &read(), RIGHT));
    }
}

/// Conversion and supply: looked at, and read again after the supply was moved.
#[test]
fn conversion_and_supply_are_shown() {
    let looks = [Subject::Plate, Subject::ConversionLabel, Subject::SpringMark, Subject::Orifices];
    let looked = with(&looks.map(Action::Look));
    assert_eq!(told("conversion-not-proven", &looked, RIGHT), Done);
    let mut gas = with(&looks.map(Action::Look));
    gas.push(EventKind::Alarm);
    assert_eq!(told("conversion-not-proven", &shut_off(gas), OFF), NoOccasion);
    assert_eq!(told("supply-not-rechecked", &read(), RIGHT), NoOccasion);
    let mut moved = read_on(Fuel::Natural, |setup| setup.card.supply = SupplyRight::Trainee);
    moved.turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0);
    assert_eq!(told("supply-not-rechecked", &shut_off(moved), OFF), NotShown);
}
