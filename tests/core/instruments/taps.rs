//! Pressure taps with captive screws: what hands do there, what comes out, what the hose gets.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::hands::event::EventKind;
use quarterturn::hands::refusal::Refusal;
use quarterturn::marking::{Brief, Ledger, Marks, evaluate};
use quarterturn::parts::{
    Ending, Fitted, HandValve, Joint, Level, OnOff, Phase, Place, Port, PortFill, Push, Reading,
    Stage, Tool, ValveBody,
};
use quarterturn::rules::shared;
use quarterturn::setup::Setup;
use quarterturn::units::PressureUnit;

use super::Hand;
use crate::bench::rig;

const TIGHT: PlugStep = PlugStep::Tighten(6);

fn taps(fuel: Fuel) -> Setup {
    let mut setup = rig::healthy(fuel);
    setup.scene.valve = ValveBody::TapScrews;
    setup
}

/// Kneeling at taps, the burner door off, the manual valve open.
fn at_taps() -> Hand {
    let mut hand = Hand::at(taps(Fuel::Natural));
    hand.act(Action::MeterPower(OnOff::On));
    hand.go(Place::GasValve);
    hand
}

fn screw(hand: &mut Hand, port: Port, steps: &[PlugStep]) {
    hand.act(Action::Take(Tool::SlottedDriver));
    for &step in steps {
        hand.act(Action::Plug { port, step });
    }
    hand.act(Action::PutDown);
}

fn hose(hand: &mut Hand, port: Port) {
    hand.act(Action::Take(Tool::Hose));
    hand.act(Action::HoseOn { port, push: Push::Fully });
}

fn fill(hand: &Hand, port: Port) -> PortFill {
    hand.bench.seen().fill(port).unwrap()
}

fn inches(hand: &Hand) -> f64 {
    hand.bench.seen().pressure_shown().unwrap().value
}

const OPEN: &[PlugStep] = &[PlugStep::BreakLoose, PlugStep::SpinOut];
const CLOSE: &[PlugStep] = &[PlugStep::SpinIn, TIGHT];

/// Loosened, the hose straight over it, it reads what a plugged port of the same bench reads through its
/// adapter; closed again it is tight.
#[test]
fn a_loosened_tap_reads_what_a_port_reads() {
    for port in [Port::Inlet, Port::Manifold] {
        let mut hand = at_taps();
        assert_eq!(fill(&hand, port), PortFill::TapSnug);
        hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
        screw(&mut hand, port, OPEN);
        assert_eq!(fill(&hand, port), PortFill::TapOpen);
        hand.act(Action::MeterZero);
        hose(&mut hand, port);
        assert_eq!(fill(&hand, port), PortFill::HoseOnTap(Push::Fully));
        hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
        let truth = hand.wait(30);
        let real = match port {
            Port::Inlet => truth.inlet_pa,
            Port::Manifold => truth.manifold_pa,
        } / PressureUnit::InWc.pa();
        assert!((inches(&hand) - real).abs() < 0.06, "{port:?}: {} of {real}", inches(&hand));
        assert!(port == Port::Manifold || real > 6.0);
        hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
        hand.act(Action::HoseOff);
        hand.act(Action::PutDown);
        screw(&mut hand, port, CLOSE);
        assert_eq!(fill(&hand, port), PortFill::TapSnug);
        hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
        assert!(hand.wait(20).leak_m3_s.ports[port] < 1e-9);
    }
}

/// A hose over a tap whose screw is turned in shows nothing, and the number belongs to no state of the
/// job; its screw is out of reach under the hose.
#[test]
fn a_shut_tap_reads_nothing() {
    let mut hand = at_taps();
    hand.act(Action::MeterZero);
    hose(&mut hand, Port::Inlet);
    assert_eq!(fill(&hand, Port::Inlet), PortFill::HoseOnShutTap(Push::Fully));
    let truth = hand.wait(30);
    assert!(truth.inlet_pa > 1000.0 && inches(&hand).abs() < 0.06, "{}", inches(&hand));
    hand.bench.take_events();
    let (port, stage, phase) = (Port::Inlet, Stage::Rest, Phase::Found);
    let reading = Reading { port, stage, phase, thousandths: 0, unit: PressureUnit::InWc };
    hand.act(Action::Write(reading));
    let told = hand.bench.take_events();
    let spell = told.iter().find_map(|event| match event.what {
        EventKind::Showed(spell) => Some(spell),
        _ => None,
    });
    assert!(!spell.unwrap().is(port, stage));
    hand.act(Action::Take(Tool::SlottedDriver));
    let loosens = Action::Plug { port, step: PlugStep::BreakLoose };
    assert_eq!(hand.refused(loosens), Refusal::HoseInTheWay);
}

/// The marks say why a number belongs to no state of the job: the screw was turned in under the hose; over
/// a loosened one it was the state that was another.
#[test]
fn the_marks_tell_of_a_shut_tap() {
    let told_of = |loosened: bool, stage: Stage| {
        let mut hand = at_taps();
        hand.act(Action::MeterZero);
        if loosened {
            hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
            screw(&mut hand, Port::Inlet, OPEN);
        }
        hose(&mut hand, Port::Inlet);
        if loosened {
            hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
        }
        hand.wait(60);
        let thousandths = (1000.0 * inches(&hand)).round() as i32;
        let (port, phase, unit) = (Port::Inlet, Phase::Found, PressureUnit::InWc);
        hand.act(Action::Write(Reading { port, stage, phase, thousandths, unit }));
        let marks = handed_over(hand.bench);
        let truths: Vec<&str> = marks.findings.iter().map(|it| it.truth.as_str()).collect();
        let told = |words: &str| truths.iter().any(|it| it.contains(words));
        [told("with the screw turned in"), told("it stood with the burners out")]
    };
    assert_eq!(told_of(false, Stage::Rest), [true, false]);
    assert_eq!(told_of(true, Stage::Firing(Level::Low)), [false, true]);
}

/// A screw that is only broken loose seeps, one that is loosened lets gas out, and the marks tell what
/// was left so.
#[test]
fn gas_comes_out_of_a_loosened_tap() {
    let mut hand = at_taps();
    hand.act(Action::Take(Tool::SlottedDriver));
    hand.act(Action::Plug { port: Port::Inlet, step: PlugStep::BreakLoose });
    let seeps = hand.wait(2).leak_m3_s.ports[Port::Inlet];
    assert_eq!(fill(&hand, Port::Inlet), PortFill::TapLoose);
    hand.bench.take_events();
    hand.act(Action::Plug { port: Port::Inlet, step: PlugStep::SpinOut });
    let told = hand.bench.take_events();
    let under_gas = |what: &EventKind| matches!(what, EventKind::OpenedUnderGas { .. });
    assert!(told.iter().any(|event| under_gas(&event.what)));
    let flows = hand.wait(2).leak_m3_s.ports[Port::Inlet];
    assert!(seeps > 1e-6 && flows > 10.0 * seeps, "{seeps} and {flows} m³/s");
    // The fluid needs something to be brushed on.
    hand.act(Action::PutDown);
    hand.act(Action::Take(Tool::LeakFluid));
    assert_eq!(hand.refused(Action::LeakFluid(Joint::InletPort)), Refusal::NothingToBrush);
}

/// The driver turns it, no key does; nothing is started, taken out or screwed in.
#[test]
fn a_captive_screw_stays_in_its_tap() {
    let mut hand = at_taps();
    let port = Port::Manifold;
    let plug = |step| Action::Plug { port, step };
    hand.act(Action::Take(Tool::HexKey));
    let driver = Refusal::NeedsTool(Tool::SlottedDriver);
    assert_eq!(hand.refused(plug(PlugStep::BreakLoose)), driver);
    hand.act(Action::PutDown);
    hand.act(Action::Take(Tool::SlottedDriver));
    assert_eq!(hand.refused(plug(PlugStep::SpinOut)), Refusal::ScrewTight);
    hand.act(plug(PlugStep::BreakLoose));
    hand.act(plug(PlugStep::SpinOut));
    assert_eq!(hand.refused(plug(PlugStep::SpinOut)), Refusal::AlreadySo);
    assert_eq!(hand.refused(plug(TIGHT)), Refusal::ScrewNotSeated);
    for step in [PlugStep::StartByHand, PlugStep::StartByKey] {
        assert_eq!(hand.refused(plug(step)), Refusal::CaptiveScrew);
    }
    hand.act(Action::PutDown);
    hand.act(Action::Take(Tool::Adapter));
    let adapter = Action::Adapter { port, to: Fitted::On };
    assert_eq!(hand.refused(adapter), Refusal::CaptiveScrew);
}

/// Turned in with too much force the boss cracks, as under a plug.
#[test]
fn too_much_force_cracks_the_boss() {
    let mut hand = at_taps();
    hand.act(Action::Take(Tool::SlottedDriver));
    hand.bench.take_events();
    hand.act(Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(8) });
    let told = hand.bench.take_events();
    assert!(told.iter().any(|event| event.what == EventKind::Cracked { port: Port::Inlet }));
}

/// What is left at a tap is charged as what is left at a port: open, with the hose on, short of snug,
/// not leak-checked.
#[test]
fn what_is_left_at_a_tap_is_charged() {
    let steps = |steps: &'static [PlugStep]| {
        move |hand: &mut Hand| {
            screw(hand, Port::Manifold, steps);
        }
    };
    let hose_left = |hand: &mut Hand| {
        screw(hand, Port::Manifold, OPEN);
        hose(hand, Port::Manifold);
    };
    let charged = |leaves: &dyn Fn(&mut Hand), rule: &str| {
        let mut hand = at_taps();
        hand.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
        leaves(&mut hand);
        handed_over(hand.bench).findings.iter().any(|it| it.rule == rule)
    };
    const SHORT: &[PlugStep] =
        &[PlugStep::BreakLoose, PlugStep::SpinOut, PlugStep::SpinIn, PlugStep::Tighten(2)];
    const SNUG: &[PlugStep] = &[PlugStep::BreakLoose, PlugStep::SpinOut, PlugStep::SpinIn, TIGHT];
    assert!(charged(&steps(OPEN), "port-left-open"));
    assert!(charged(&hose_left, "adapter-left"));
    assert!(charged(&steps(SHORT), "plug-loose"));
    assert!(!charged(&steps(SNUG), "plug-loose"));
    assert!(charged(&steps(SNUG), "joint-unchecked"));
    for rule in ["port-left-open", "adapter-left", "plug-loose", "joint-unchecked"] {
        assert!(!charged(&|_: &mut Hand| {}, rule), "{rule}");
    }
}

/// The marks of a job that is handed over as it stands.
fn handed_over(mut bench: Bench) -> Marks {
    let hand = |bench: &mut Bench, action: Action| bench.apply(&action).unwrap();
    hand(&mut bench, Action::Go(Place::Hall));
    let said =
        quarterturn::hands::action::HandOver { ending: Ending::InService, not_done: Vec::new() };
    hand(&mut bench, Action::HandOver(said));
    let mut ledger = Ledger::new(bench.setup().clone());
    ledger.take(bench.take_events());
    let brief = Brief { right_endings: vec![Ending::InService] };
    evaluate(&shared().unwrap(), &ledger, &brief)
}

/// A fault of plugs alone does not fit taps; a loose one does, and a new gas valve has taps again.
#[test]
fn faults_of_plugs_do_not_fit_taps() {
    let setup = taps(Fuel::Natural);
    assert!(Fault::CrossThreadedPlug.misfit(&setup).is_some());
    assert!(Fault::AdapterLeftIn.misfit(&setup).is_some());
    assert_eq!(Fault::CrossThreadedPlug.misfit(&rig::healthy(Fuel::Natural)), None);
    let mut loose = setup;
    assert_eq!(Fault::LooseInletPlug.misfit(&loose), None);
    Fault::LooseInletPlug.apply(&mut loose, 0.1);
    let hand = Hand::at(loose);
    assert_eq!(fill(&hand, Port::Inlet), PortFill::TapLoose);
}
