//! Two million random actions, sensible and absurd, on sound benches and on the shipped jobs with
//! their faults, both fuels: no panic, no number that is none, no step that does not converge, no
//! gas made or lost.
//!
//! Everything is drawn from the seeds 0, 1, 2 and so on, one for the life of each bench, so that a
//! run can be had again. `QUARTERTURN_STORM=10000000` changes the number of actions;
//! `QUARTERTURN_STORM_FROM=5000` begins with another seed; `QUARTERTURN_STORM_SEED=123` plays one
//! life again. A life that fails prints its command.

use std::collections::VecDeque;
use std::fmt::Write as _;

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::*;
use quarterturn::hands::event::EventKind;
use quarterturn::model::truth::Truth;
use quarterturn::parts::{Level, *};
use quarterturn::rng::{Stream, stream};
use quarterturn::scenario::{builtin, load};
use quarterturn::setup::Setup;

use super::random::{action, one_of};
use super::rig;

/// Actions in all, unless told otherwise.
const ACTIONS: u64 = 2_000_000;
/// Most actions in the life of one bench.
const LIFE: u64 = 4_000;
/// Two cores.
const THREADS: u64 = 2;

/// What came about, to see that the storm reaches the places that matter.
#[derive(Debug, Default, Clone, Copy)]
struct Tally {
    actions: u64,
    done: u64,
    ticks: u64,
    low: u64,
    high: u64,
    under_gas: u64,
    from_port: u64,
    ignitions: u64,
    hand_overs: u64,
    cracked: u64,
    bottomed: u64,
    written: u64,
    judged: u64,
    worst_imbalance: f64,
    /// Whose life it was.
    worst_seed: u64,
}

impl Tally {
    fn add(&mut self, other: &Self) {
        self.actions += other.actions;
        self.done += other.done;
        self.ticks += other.ticks;
        self.low += other.low;
        self.high += other.high;
        self.under_gas += other.under_gas;
        self.from_port += other.from_port;
        self.ignitions += other.ignitions;
        self.hand_overs += other.hand_overs;
        self.cracked += other.cracked;
        self.bottomed += other.bottomed;
        self.written += other.written;
        self.judged += other.judged;
        if other.worst_imbalance > self.worst_imbalance {
            self.worst_imbalance = other.worst_imbalance;
            self.worst_seed = other.worst_seed;
        }
    }

    fn note(&mut self, what: &EventKind) {
        match what {
            EventKind::Did { .. } => self.done += 1,
            EventKind::OpenedUnderGas { pa, .. } => {
                assert!(pa.is_finite());
                self.under_gas += 1;
            }
            EventKind::GasFromPort { .. } => self.from_port += 1,
            EventKind::Ignition { .. } => self.ignitions += 1,
            EventKind::Ended { hand_over: Some(_), left } => {
                check(left);
                self.hand_overs += 1;
            }
            EventKind::Cracked { .. } => self.cracked += 1,
            EventKind::Turned { bottomed, set_pa, inlet_pa, .. } => {
                assert!(set_pa.0.is_finite() && set_pa.1.is_finite() && inlet_pa.is_finite());
                self.bottomed += u64::from(*bottomed);
            }
            EventKind::Showed(spell) => {
                let spans = [Some(spell.shown), spell.stood];
                let numbers = spans.into_iter().flatten().flat_map(|it| [it.least_pa, it.most_pa]);
                assert!(numbers.chain([spell.error_pa]).all(f64::is_finite), "{spell:?}");
            }
            EventKind::Wrote(_) => self.written += 1,
            EventKind::FluidJudged { lowest_pa, dwell_s, .. } => {
                assert!(lowest_pa.is_finite() && dwell_s.is_finite());
                self.judged += 1;
            }
            EventKind::Fired { to: Some(Level::Low), .. } => self.low += 1,
            EventKind::Fired { to: Some(Level::High), .. } => self.high += 1,
            EventKind::NotConverged => panic!("a step did not converge"),
            _ => {}
        }
    }
}

/// Every number is one. A field more does not get past this unseen.
fn check(truth: &Truth) {
    let Truth {
        tick: _,
        supply_pa,
        tee_pa,
        inlet_pa,
        manifold_pa,
        box_pa,
        hose_pa,
        meter_error_pa,
        set_pa,
        supply_set_pa,
        screw_turns,
        bottomed: _,
        burner_flow_m3_s,
        input_w,
        others_flow_m3_s,
        leak_m3_s,
        firing: _,
        control: _,
        gas_fraction,
        co_air_free_ppm,
        flame_ua,
        excess_air,
        rise_k,
        draft_pa,
        vented_m3_s,
        manual_valve: _,
        valve_switch: _,
        furnace_switch: _,
        supply_valve: _,
        other_appliances: _,
        caps: _,
        ports,
        doors: _,
        setpoint_half_f: _,
        heating: _,
        stage_jumper: _,
        tag: _,
        windows: _,
        low_side: _,
        jumpers: _,
        connector_leak_m3_s,
    } = truth;
    let plain = [
        supply_pa,
        tee_pa,
        inlet_pa,
        manifold_pa,
        box_pa,
        hose_pa,
        meter_error_pa,
        supply_set_pa,
        burner_flow_m3_s,
        input_w,
        others_flow_m3_s,
        co_air_free_ppm,
        flame_ua,
        rise_k,
        draft_pa,
        vented_m3_s,
        connector_leak_m3_s,
    ];
    assert!(excess_air.is_none_or(f64::is_finite), "{truth:?}");
    let lists = [screw_turns, set_pa].map(|it| [*it.first(), *it.top()]).into_iter().flatten();
    let lists = lists.chain(leak_m3_s.iter()).chain(gas_fraction.iter());
    let of_ports = ports.values().flat_map(|port| [port.past_hand_turns, port.leak_area_m2]);
    let all = plain.into_iter().copied().chain(lists).chain(of_ports);
    assert!(all.into_iter().all(|number| number.is_finite()), "{truth:?}");
    assert!(gas_fraction.iter().all(|share| (0.0..=1.0).contains(&share)), "{truth:?}");
}

/// A piece of work in its usual order, so that the storm gets deep into a job.
fn ploy(stream: &mut Stream) -> Vec<Action> {
    let port = one_of(stream, Port::ALL);
    let work = match stream.below(11) {
        0 | 1 => open_and_measure(port),
        2 => close(port),
        3 => call_for_high(),
        4 => adjust(one_of(stream, Screw::ALL)),
        5 => check_and_write(port, one_of(stream, Stage::ALL)),
        6 => vec![
            Action::Go(Place::Hall),
            Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On },
            Action::Go(Place::PlantRoom),
            Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to: OnOff::On },
        ],
        7 => vec![
            Action::Go(Place::Yard),
            Action::HandValve { hand_valve: HandValve::Supply, degrees: 90 },
            Action::Go(Place::GasValve),
            Action::ValveSwitch(OnOff::On),
        ],
        8 | 9 => mend(one_of(stream, Repair::ALL)),
        _ => vec![
            Action::PutDown,
            Action::Take(Tool::GasDetector),
            Action::Probe(Height::Floor),
            Action::Sniff(Height::Head),
        ],
    };
    work.into_iter().filter(|_| stream.below(20) > 0).collect()
}

/// Shut off, mended, and half put back.
fn mend(repair: Repair) -> Vec<Action> {
    vec![
        Action::Go(Place::Yard),
        Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 },
        Action::Go(Place::PlantRoom),
        Action::FurnaceSwitch(OnOff::Off),
        Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 },
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Go(repair.place()),
        Action::Mend(repair),
        Action::Go(Place::Yard),
        Action::HandValve { hand_valve: HandValve::Supply, degrees: 90 },
        Action::Go(Place::PlantRoom),
        Action::FurnaceSwitch(OnOff::On),
    ]
}

fn open_and_measure(port: Port) -> Vec<Action> {
    vec![
        Action::Go(Place::PlantRoom),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Go(Place::GasValve),
        Action::PutDown,
        Action::Take(Tool::HexKey),
        Action::Plug { port, step: PlugStep::BreakLoose },
        Action::Plug { port, step: PlugStep::SpinOut },
        Action::PutDown,
        Action::Take(Tool::Adapter),
        Action::Adapter { port, to: Fitted::On },
        Action::PutDown,
        Action::Take(Tool::Hose),
        Action::HoseOn { port, push: Push::Fully },
        Action::MeterPower(OnOff::On),
        Action::MeterZero,
    ]
}

fn close(port: Port) -> Vec<Action> {
    vec![
        Action::Go(Place::GasValve),
        Action::PutDown,
        Action::HoseOff,
        Action::PutDown,
        Action::Adapter { port, to: Fitted::Off },
        Action::PutDown,
        Action::Take(Tool::HexKey),
        Action::Plug { port, step: PlugStep::StartByHand },
        Action::Plug { port, step: PlugStep::SpinIn },
        Action::Plug { port, step: PlugStep::Tighten(4) },
        Action::Plug { port, step: PlugStep::Tighten(2) },
    ]
}

fn call_for_high() -> Vec<Action> {
    vec![
        Action::Go(Place::Hall),
        Action::ThermostatMode(OnOff::On),
        Action::Setpoint(160),
        Action::Go(Place::PlantRoom),
        Action::FurnaceSwitch(OnOff::On),
        Action::Door { door: Door::Blower, to: Fitted::On },
        Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 },
        Action::StageJumper(Fitted::On),
    ]
}

fn adjust(screw: Screw) -> Vec<Action> {
    vec![
        Action::Go(if screw == Screw::Supply { Place::Yard } else { Place::GasValve }),
        Action::PutDown,
        Action::Take(Tool::SlottedDriver),
        Action::Cap { screw, to: Fitted::Off },
        Action::Turn { screw, eighths: 16 },
        Action::Turn { screw, eighths: -3 },
        Action::Cap { screw, to: Fitted::On },
    ]
}

fn check_and_write(port: Port, stage: Stage) -> Vec<Action> {
    let unit = quarterturn::units::PressureUnit::InWc;
    vec![
        Action::Go(Place::GasValve),
        Action::PutDown,
        Action::Take(Tool::LeakFluid),
        Action::LeakFluid(port.joint()),
        Action::Write(Reading { port, stage, phase: Phase::Found, thousandths: 3500, unit }),
        Action::Wipe(port.joint()),
    ]
}

/// Ticks to let pass after an action: mostly one, now and then long enough to light up.
fn ticks(stream: &mut Stream) -> u32 {
    match stream.below(1000) {
        0..900 => 1,
        900..980 => 2 + stream.below(19),
        980..998 => 50 + stream.below(200),
        _ => 1000 + stream.below(3000),
    }
}

/// A bench with one to three faults of any severity, in four of eight lives.
fn beset(seed: u64, mut setup: Setup) -> Setup {
    let mut stream = stream(seed, "storm faults");
    if seed % 8 < 4 {
        return setup;
    }
    for _ in 0..=stream.below(3) {
        let fault = one_of(&mut stream, Fault::ALL);
        let (low, high) = fault.entry().severity.range();
        fault.apply(&mut setup, stream.between(low, high));
    }
    setup
}

/// A bench of each kind in turn: sound ones, and the jobs with their faults drawn anew.
fn setup(seed: u64) -> Setup {
    let job = |at: usize| load(builtin::JOBS[at].text).expect("a sound job").draw(seed);
    match seed % 4 {
        0 => rig::healthy(Fuel::Natural),
        1 => rig::healthy(Fuel::Propane),
        2 => job(0),
        _ => job(1),
    }
}

/// The life of one bench, at most `most` actions long.
fn life(seed: u64, most: u64) -> Tally {
    let mut stream = stream(seed, "storm");
    let mut bench = Bench::new(beset(seed, setup(seed)));
    let mut work: VecDeque<Action> = VecDeque::new();
    let mut tally = Tally { worst_seed: seed, ..Tally::default() };
    while tally.actions < most && bench.over().is_none() {
        if work.is_empty() && stream.below(4) == 0 {
            work = ploy(&mut stream).into();
        }
        let sensible = if stream.below(10) < 7 { work.pop_front() } else { None };
        let action = sensible.unwrap_or_else(|| action(&mut stream));
        // A hand-over ends it all: rarely.
        if matches!(action, Action::HandOver(_)) && stream.below(20) > 0 {
            continue;
        }
        let _ = bench.apply(&action);
        tally.actions += 1;
        for _ in 0..ticks(&mut stream) {
            bench.step();
            tally.ticks += 1;
        }
        check(&bench.truth());
        for event in bench.take_events() {
            tally.note(&event.what);
        }
        if tally.actions.is_multiple_of(64) {
            let seen = bench.seen();
            assert!(seen.detector.is_none_or(|it| it.percent_lel.is_finite()), "{seen:?}");
            let _ = bench.digest();
        }
        let imbalance = bench.worst_imbalance();
        assert!(imbalance <= 1e-9, "imbalance {imbalance}");
        tally.worst_imbalance = tally.worst_imbalance.max(imbalance);
    }
    tally
}

/// Plays a life and tells, when it fails, how to play it again.
fn guarded(seed: u64, most: u64) -> Tally {
    match std::panic::catch_unwind(|| life(seed, most)) {
        Ok(tally) => tally,
        Err(panic) => {
            let mut again = String::new();
            let _ = write!(again, "QUARTERTURN_STORM_SEED={seed} cargo test ");
            let _ = write!(again, "--no-default-features --features cli storm -- --nocapture");
            eprintln!("This life fails again with:\n  {again}");
            std::panic::resume_unwind(panic)
        }
    }
}

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok().map(|text| text.parse().expect("a whole number"))
}

#[test]
fn slow_storm_of_random_actions() {
    if let Some(seed) = number("QUARTERTURN_STORM_SEED") {
        println!("{:?}", guarded(seed, LIFE));
        return;
    }
    let actions = number("QUARTERTURN_STORM").unwrap_or(ACTIONS);
    let from = number("QUARTERTURN_STORM_FROM").unwrap_or(0);
    let threads: Vec<_> = (0..THREADS)
        .map(|thread| {
            std::thread::spawn(move || {
                let share = actions.div_ceil(THREADS);
                let mut tally = Tally::default();
                let mut seed = from + thread;
                while tally.actions < share {
                    tally.add(&guarded(seed, LIFE.min(share - tally.actions)));
                    seed += THREADS;
                }
                tally
            })
        })
        .collect();
    let mut tally = Tally::default();
    for thread in threads {
        tally.add(&thread.join().expect("a thread"));
    }
    println!("{tally:?}");
    assert!(tally.actions >= actions);
    // It got to where it hurts.
    let reached = [
        tally.low,
        tally.high,
        tally.under_gas,
        tally.from_port,
        tally.ignitions,
        tally.hand_overs,
        tally.cracked,
        tally.bottomed,
        tally.written,
        tally.judged,
    ];
    assert!(reached.iter().all(|&count| count > 0), "{tally:?}");
}
