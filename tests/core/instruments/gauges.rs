//! Water column and spring gauge on the hose.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::hands::event::EventKind;
use quarterturn::hands::refusal::Refusal;
use quarterturn::instrument::water_column::Legs;
use quarterturn::marking::{Brief, Observer};
use quarterturn::parts::{
    Door, Ending, Fitted, Gauge, HandValve, Level, OnOff, Phase, Place, Port, Push, Reading, Stage,
    Tool,
};
use quarterturn::senses::seen::GaugeSeen;
use quarterturn::setup::Setup;
use quarterturn::units::{M_PER_IN, PA_PER_INWC, PressureUnit};

use crate::bench::rig;

/// Somebody with the hose on a port, marked.
struct Job {
    bench: Bench,
    observer: Observer,
}

impl Job {
    /// The hose on a port, going to this instrument; power and gas on again.
    fn on(mut setup: Setup, port: Port, gauge: Gauge) -> Self {
        setup.found.thermostat_mode = OnOff::Off;
        let bench = Bench::new(setup);
        let mut job = Self { observer: Observer::new(&bench), bench };
        job.act(Action::Go(Place::PlantRoom));
        job.act(Action::FurnaceSwitch(OnOff::Off));
        job.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
        job.act(Action::Door { door: Door::Burner, to: Fitted::Off });
        job.act(Action::Go(Place::GasValve));
        job.act(Action::Take(Tool::HexKey));
        job.act(Action::Plug { port, step: PlugStep::BreakLoose });
        job.wait(20);
        job.act(Action::Plug { port, step: PlugStep::SpinOut });
        job.act(Action::PutDown);
        job.act(Action::Take(Tool::Adapter));
        job.act(Action::Adapter { port, to: Fitted::On });
        job.act(Action::Gauge(gauge));
        job.act(Action::Take(Tool::Hose));
        job.act(Action::HoseOn { port, push: Push::Fully });
        job.act(Action::FurnaceSwitch(OnOff::On));
        job.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
        job
    }

    fn act(&mut self, action: Action) {
        self.bench.apply(&action).unwrap_or_else(|why| panic!("{action:?}: {why:?}"));
    }

    fn wait(&mut self, seconds: u32) {
        for _ in 0..50 * seconds {
            self.bench.step();
            let events = self.bench.take_events();
            self.observer.tick(&self.bench, events);
        }
    }

    /// Fires on high and settles.
    fn high(&mut self) {
        self.act(Action::StageJumper(Fitted::On));
        self.act(Action::Go(Place::Hall));
        self.act(Action::ThermostatMode(OnOff::On));
        self.act(Action::Setpoint(150));
        self.act(Action::Go(Place::GasValve));
        self.wait(150);
        assert_eq!(self.bench.truth().firing, Some(Level::High));
    }

    fn legs(&self) -> (i32, i32) {
        match self.bench.seen().meter().expect("the gauge is in sight").gauge {
            GaugeSeen::WaterColumn(Legs::Water { lower_tenths, upper_tenths }) => {
                (lower_tenths, upper_tenths)
            }
            other => panic!("{other:?}"),
        }
    }

    fn write(&mut self, stage: Stage, tenths: i32) {
        self.act(Action::Write(Reading {
            port: Port::Manifold,
            stage,
            phase: Phase::Found,
            thousandths: 100 * tenths,
            unit: PressureUnit::InWc,
        }));
        self.wait(1);
    }

    fn found(&self, rule: &str) -> bool {
        let book = quarterturn::rules::shared().unwrap();
        let brief = Brief { right_endings: vec![Ending::InService] };
        let marks = self.observer.marks(&book, &brief);
        marks.findings.iter().any(|finding| finding.rule == rule)
    }

    fn happened(&self, wanted: &EventKind) -> bool {
        self.observer.ledger.events.iter().any(|event| event.what == *wanted)
    }
}

/// Both legs added are the pressure to a tenth of an inch, wherever the scale's zero stands; what was
/// written from them is right, like a number from the manometer.
#[test]
fn both_legs_are_the_truth() {
    for off_in in [0.0, 0.3] {
        let mut setup = rig::healthy(Fuel::Natural);
        setup.condition.meter.column_off_m = off_in * M_PER_IN;
        let mut job = Job::on(setup, Port::Manifold, Gauge::WaterColumn);
        job.high();
        let (low, high) = job.legs();
        let real = job.bench.truth().manifold_pa / PA_PER_INWC;
        approx::assert_abs_diff_eq!(f64::from(low + high) / 10.0, real, epsilon = 0.11);
        assert_eq!(low == high, off_in == 0.0, "{low} {high}");
        job.write(Stage::Firing(Level::High), low + high);
        for rule in ["one-leg-read", "invented", "wrong-unit", "read-unsettled", "meter-off"] {
            assert!(!job.found(rule), "{rule}");
        }
    }
}

/// One leg is half the truth (3.5 in. w.c. stands as 1.7 or 1.8): written for the pressure it is
/// found, by its own rule and by no other, with the zero level or not.
#[test]
fn one_leg_is_half_the_truth() {
    for (off_in, leg) in [(0.0, 0), (0.3, 0), (0.3, 1)] {
        let mut setup = rig::healthy(Fuel::Natural);
        setup.condition.meter.column_off_m = off_in * M_PER_IN;
        let mut job = Job::on(setup, Port::Manifold, Gauge::WaterColumn);
        job.high();
        let (low, high) = job.legs();
        job.write(Stage::Firing(Level::High), if leg == 0 { low } else { high });
        assert!(job.found("one-leg-read"));
        for rule in ["invented", "wrong-unit", "read-unsettled"] {
            assert!(!job.found(rule), "{rule}");
        }
    }
}

/// Half of what the manometer shows is no leg: without a water column the number is invented.
#[test]
fn half_a_manometers_number_is_invented() {
    let mut job = Job::on(rig::healthy(Fuel::Natural), Port::Manifold, Gauge::SpringGauge);
    job.high();
    job.write(Stage::Firing(Level::High), 18);
    assert!(job.found("invented") && !job.found("one-leg-read"));
}

/// The spring gauge reads to half an inch: near the truth, and a turn of a few tenths does not show.
#[test]
fn the_spring_gauge_is_coarse() {
    let mut job = Job::on(rig::healthy(Fuel::Natural), Port::Manifold, Gauge::SpringGauge);
    job.high();
    let seen = job.bench.seen();
    let GaugeSeen::Spring(Some(tenths)) = seen.meter().expect("in sight").gauge else {
        panic!("no needle")
    };
    assert_eq!(tenths % 5, 0);
    let real = job.bench.truth().manifold_pa / PA_PER_INWC;
    approx::assert_abs_diff_eq!(f64::from(tenths) / 10.0, real, epsilon = 0.02 * 35.0);
    job.write(Stage::Firing(Level::High), tenths);
    assert!(!job.found("invented"));
}

/// While gas stands in the hose it is not put to another instrument.
#[test]
fn the_hose_is_not_moved_under_pressure() {
    let mut job = Job::on(rig::healthy(Fuel::Natural), Port::Inlet, Gauge::WaterColumn);
    job.wait(5);
    let other = Action::Gauge(Gauge::Digital);
    assert_eq!(job.bench.apply(&other), Err(Refusal::HoseUnderPressure));
}

/// More than sixteen inches blow the water out: gas comes out of the open tube, and nothing is read
/// until the tube is filled again.
#[test]
fn too_much_blows_the_water_out() {
    let mut setup = rig::healthy(Fuel::Natural);
    setup.supply.set_pa = 20.0 * PA_PER_INWC;
    setup.supply.lockup_pa = 22.0 * PA_PER_INWC;
    let mut job = Job::on(setup, Port::Inlet, Gauge::WaterColumn);
    job.wait(10);
    assert!(job.happened(&EventKind::ColumnBlownOut));
    assert_eq!(
        job.bench.seen().meter().map(|meter| meter.gauge),
        Some(GaugeSeen::WaterColumn(Legs::Empty))
    );
    assert_eq!(job.bench.seen().pressure_shown(), None);
    assert!(job.bench.truth().leak_m3_s.hose > 1e-4, "{:?}", job.bench.truth().leak_m3_s);
    assert_eq!(job.bench.apply(&Action::FillColumn), Err(Refusal::HoseUnderPressure));
    job.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
    job.wait(30);
    job.act(Action::FillColumn);
    job.wait(5);
    assert!(job.bench.seen().pressure_shown().is_some());
}

/// The manometer that the hose does not go to feels the air, and its zero can be set meanwhile.
#[test]
fn the_manometer_rests_meanwhile() {
    let mut job = Job::on(rig::healthy(Fuel::Natural), Port::Inlet, Gauge::WaterColumn);
    job.act(Action::MeterPower(OnOff::On));
    job.act(Action::MeterZero);
    job.wait(5);
    assert!(!job.found("zeroed-under-pressure"));
}
