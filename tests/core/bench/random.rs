//! Random actions of every kind, sensible and absurd.

use quarterturn::hands::action::*;
use quarterturn::parts::*;
use quarterturn::rng::Stream;
use quarterturn::technician::script::Word;
use quarterturn::units::PressureUnit;

/// One of a list.
pub fn one_of<T: Copy>(stream: &mut Stream, all: &[T]) -> T {
    let bound = u32::try_from(all.len()).unwrap();
    all[stream.below(bound) as usize]
}

fn word<W: Word>(stream: &mut Stream) -> W {
    one_of(stream, W::ALL)
}

/// A small number, or now and then one from the ends of the range.
fn number(stream: &mut Stream, low: i16, high: i16) -> i16 {
    match stream.below(20) {
        0 => i16::MIN,
        1 => i16::MAX,
        2 => 0,
        3 => -low,
        _ => {
            let span = u32::try_from(i32::from(high) - i32::from(low) + 1).unwrap();
            low + i16::try_from(stream.below(span)).unwrap()
        }
    }
}

fn reading(stream: &mut Stream) -> Reading {
    let thousandths = match stream.below(10) {
        0 => i32::MIN,
        1 => i32::MAX,
        _ => i32::try_from(stream.below(30_000)).unwrap() - 5_000,
    };
    Reading {
        port: word(stream),
        stage: word(stream),
        phase: word(stream),
        thousandths,
        unit: word::<PressureUnit>(stream),
    }
}

fn backing(stream: &mut Stream) -> Backing {
    match stream.below(5) {
        0 => Backing::Reading { port: word(stream), stage: word(stream), phase: word(stream) },
        1 => Backing::Measured(word(stream)),
        2 => Backing::Look(word(stream)),
        3 => Backing::Joint(word(stream)),
        _ => Backing::Sight(word(stream)),
    }
}

fn finding(stream: &mut Stream) -> WrittenFinding {
    let evidence = (0..stream.below(14)).map(|_| backing(stream)).collect();
    WrittenFinding { cause: word(stream), answer: word(stream), evidence }
}

fn plug_step(stream: &mut Stream) -> PlugStep {
    match stream.below(6) {
        0 => PlugStep::BreakLoose,
        1 => PlugStep::SpinOut,
        2 => PlugStep::StartByHand,
        3 => PlugStep::StartByKey,
        4 => PlugStep::SpinIn,
        _ => PlugStep::Tighten(number(stream, -9, 9)),
    }
}

/// Any action.
pub fn action(stream: &mut Stream) -> Action {
    let port = word::<Port>(stream);
    match stream.below(50) {
        0..3 => Action::Go(word(stream)),
        3 => Action::Look(word(stream)),
        4 => Action::Sniff(word(stream)),
        5 => Action::Probe(word(stream)),
        6 | 7 => Action::Take(word(stream)),
        8 => Action::PutDown,
        9 => Action::Window { window: word::<Window>(stream), to: word(stream) },
        10 => Action::Door { door: word(stream), to: word(stream) },
        11 => Action::FurnaceSwitch(word(stream)),
        12 => Action::ThermostatMode(word(stream)),
        13 => Action::Setpoint(number(stream, 80, 190)),
        14 => Action::StageJumper(word(stream)),
        15 => Action::ValveSwitch(word(stream)),
        16 => Action::HandValve { hand_valve: word(stream), degrees: number(stream, -10, 100) },
        17 => Action::HandValve { hand_valve: word(stream), degrees: 90 },
        18 => Action::OtherAppliance { appliance: word(stream), to: word(stream) },
        19 => Action::Cap { screw: word(stream), to: word(stream) },
        20 | 21 => Action::Turn { screw: word(stream), eighths: number(stream, -17, 17) },
        22 | 23 => Action::Plug { port, step: plug_step(stream) },
        24 => Action::Adapter { port, to: word(stream) },
        25 => Action::HoseOn { port, push: word(stream) },
        26 => Action::HoseOff,
        27 => Action::MeterPower(word(stream)),
        28 => Action::MeterZero,
        29 => Action::MeterUnit(word(stream)),
        30 => Action::MeterLowSide(word(stream)),
        31 => Action::LeakFluid(word(stream)),
        32 => Action::Wipe(word(stream)),
        33 => Action::ResetRollout,
        34 => Action::Write(reading(stream)),
        35 => Action::WriteJoint { joint: word(stream), verdict: word(stream) },
        36 => Action::Tag(word(stream)),
        37 => Action::Call(word(stream)),
        38 => Action::Tell(word(stream)),
        39 => Action::Mend(word(stream)),
        40 => Action::Measure(word(stream)),
        41 => Action::Unclip,
        42 => Action::Stopwatch(word(stream)),
        43 => Action::WriteMeasured(word(stream)),
        44 => Action::Gauge(word(stream)),
        45 => Action::FillColumn,
        46 => Action::WriteFinding(finding(stream)),
        47 => Action::StrikeFinding(word(stream)),
        48 => Action::WritePiping(word(stream)),
        _ => {
            let not_done = (0..stream.below(6)).map(|_| word(stream)).collect();
            Action::HandOver(HandOver { ending: word(stream), not_done })
        }
    }
}
