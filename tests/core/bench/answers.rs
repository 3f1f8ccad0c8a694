//! How an alarm is answered, calls on an open port, and flames that went out.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, Contact, PlugStep, Topic};
use quarterturn::hands::event::EventKind;
use quarterturn::hands::refusal::Refusal;
use quarterturn::marking::{Brief, Observer};
use quarterturn::parts::{
    Door, Ending, Fitted, HandValve, OnOff, Opening, OtherAppliance, Place, Port, Tool, Window,
};
use quarterturn::senses::seen::Burning;

use super::rig;

/// A bench with someone at it, marked as it goes.
struct Job {
    bench: Bench,
    observer: Observer,
}

impl Job {
    fn new(fuel: Fuel) -> Self {
        let bench = Bench::new(rig::healthy(fuel));
        Self { observer: Observer::new(&bench), bench }
    }

    fn act(&mut self, action: Action) {
        self.bench.apply(&action).unwrap_or_else(|why| panic!("{action:?}: {why:?}"));
        self.tick();
    }

    fn tick(&mut self) {
        self.bench.step();
        let events = self.bench.take_events();
        self.observer.tick(&self.bench, events);
    }

    fn wait(&mut self, seconds: u32) {
        for _ in 0..seconds * 50 {
            self.tick();
        }
    }

    fn hit(&self, rule: &str) -> Option<(usize, bool)> {
        let book = quarterturn::rules::shared().unwrap();
        let brief = Brief { right_endings: vec![Ending::InService] };
        let marks = self.observer.marks(&book, &brief);
        marks.findings.iter().find(|finding| finding.rule == rule).map(|finding| {
            (finding.times, finding.severity == quarterturn::rules::Severity::Critical)
        })
    }

    fn happened(&self, what: impl Fn(&EventKind) -> bool) -> bool {
        self.observer.ledger.events.iter().any(|event| what(&event.what))
    }

    /// Takes the plug out of a port.
    fn open(&mut self, port: Port) {
        self.act(Action::Take(Tool::HexKey));
        self.act(Action::Plug { port, step: PlugStep::BreakLoose });
        self.act(Action::Plug { port, step: PlugStep::SpinOut });
        self.act(Action::PutDown);
    }
}

/// Kneels at the valve with the power off, lets gas out of the inlet port until the alarm.
fn to_the_alarm() -> Job {
    let mut job = Job::new(Fuel::Natural);
    job.act(Action::Go(Place::PlantRoom));
    job.act(Action::FurnaceSwitch(OnOff::Off));
    job.act(Action::Door { door: Door::Burner, to: Fitted::Off });
    job.act(Action::Go(Place::GasValve));
    job.open(Port::Inlet);
    for _ in 0..600 {
        job.wait(1);
        if job.happened(|what| matches!(what, EventKind::Alarm)) {
            return job;
        }
    }
    panic!("no alarm in ten minutes of escaping gas");
}

/// Stepping out and in again is no answer to an alarm; out, told, called is one.
#[test]
fn an_alarm_is_answered_from_outside_before_anybody_goes_back() {
    let mut job = to_the_alarm();
    job.act(Action::Go(Place::Yard));
    job.act(Action::Go(Place::Hall));
    assert!(job.hit("worked-on-after-alarm").is_some());

    // Straight back in, the gas is still there; once the room has aired it is not.
    for aired_s in [0, 1800] {
        let mut job = to_the_alarm();
        job.act(Action::Tell(Topic::GetOut));
        let window = Window::PlantRoom;
        job.act(Action::Window { window, to: Opening::Open });
        job.act(Action::Go(Place::Yard));
        job.act(Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 });
        job.act(Action::Call(Contact::Emergency));
        job.wait(aired_s);
        job.act(Action::Go(Place::PlantRoom));
        assert_eq!(job.hit("worked-on-after-alarm").is_none(), aired_s > 0, "{aired_s}");
    }
}

/// However heat is called with a port open, it counts; behind a shut valve it was caught in time.
#[test]
fn a_call_on_an_open_port_counts_however_it_is_made() {
    for shut in [false, true] {
        let mut job = Job::new(Fuel::Natural);
        job.act(Action::Go(Place::Hall));
        job.act(Action::Setpoint(100));
        job.wait(240);
        job.act(Action::Go(Place::PlantRoom));
        job.act(Action::Door { door: Door::Burner, to: Fitted::Off });
        if shut {
            job.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
        }
        job.act(Action::Go(Place::GasValve));
        job.open(Port::Manifold);
        job.act(Action::Go(Place::Hall));
        // Not the switch but the number calls.
        job.act(Action::Setpoint(160));
        job.wait(5);
        let called = |what: &EventKind| matches!(what, EventKind::CalledOnOpenPort { barred, .. } if *barred == shut);
        assert!(job.happened(called), "shut {shut}");
        let (times, critical) = job.hit("called-with-port-open").unwrap();
        assert_eq!((times, critical), (1, false), "no gas has come yet");
        job.wait(120);
        let gas = job.happened(|what| matches!(what, EventKind::GasFromPort { .. }));
        assert_eq!(gas, !shut, "gas comes to the open port when nothing bars it");
    }
}

/// Another appliance whose gas was cut does not light by itself when gas comes back.
#[test]
fn a_flame_that_went_out_stays_out_until_it_is_lit_again() {
    let mut job = Job::new(Fuel::Propane);
    let range = |job: &Job| job.bench.seen().hall.as_ref().unwrap().range.burning;
    job.act(Action::Go(Place::Hall));
    if range(&job) == Burning::Off {
        job.act(Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On });
    }
    job.wait(5);
    assert_eq!(range(&job), Burning::Burning);
    job.act(Action::Go(Place::Yard));
    job.act(Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 });
    job.wait(60);
    job.act(Action::HandValve { hand_valve: HandValve::Supply, degrees: 90 });
    job.wait(10);
    job.act(Action::Go(Place::Hall));
    assert_eq!(range(&job), Burning::NoGas);
    job.act(Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::Off });
    job.act(Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On });
    job.wait(5);
    assert_eq!(range(&job), Burning::Burning);
}

/// A thermostat takes 45 to 90 °F: what is off its dial is refused by name, and nothing changes.
#[test]
fn a_setpoint_off_the_dial_is_refused() {
    let mut bench = Bench::new(rig::healthy(Fuel::Natural));
    bench.apply(&Action::Go(Place::Hall)).unwrap();
    let found = bench.seen().hall.unwrap().setpoint_half_f;
    for half_f in [89, 181, i16::MIN, i16::MAX] {
        assert_eq!(bench.apply(&Action::Setpoint(half_f)), Err(Refusal::OffTheDial), "{half_f}");
        assert_eq!(bench.seen().hall.unwrap().setpoint_half_f, found);
    }
    for half_f in [90, 180] {
        bench.apply(&Action::Setpoint(half_f)).unwrap();
        assert_eq!(bench.seen().hall.unwrap().setpoint_half_f, half_f);
    }
}
