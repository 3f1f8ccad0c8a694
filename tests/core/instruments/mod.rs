//! Instruments on the healthy rigs and on faulty ones: what they show against what is true.

mod air;
mod dial;
mod electrical;
mod flue;
mod fluid;
mod gauges;
mod hand_over;
mod out_of_sight;
mod refusals;
mod single_stage;
mod taps;

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::hands::action::Action;
use quarterturn::hands::refusal::Refusal;
use quarterturn::instrument::figure::Quantity;
use quarterturn::model::truth::Truth;
use quarterturn::parts::{Door, Fitted, Level, OnOff, Place, Spot, Tool};
use quarterturn::setup::Setup;

use crate::bench::rig;

/// Somebody with a bag of instruments.
pub struct Hand {
    pub bench: Bench,
}

/// The healthy rig with a fault, as severe as given.
pub fn faulty(fuel: Fuel, fault: Fault, severity: f64) -> Setup {
    let mut setup = rig::healthy(fuel);
    assert_eq!(fault.misfit(&setup), None);
    fault.apply(&mut setup, severity);
    setup
}

impl Hand {
    /// A bench at rest, its heat off and its burner door off, the person in front of it.
    pub fn at(mut setup: Setup) -> Self {
        setup.found.thermostat_mode = OnOff::Off;
        let mut hand = Self { bench: Bench::new(setup) };
        hand.act(Action::Go(Place::PlantRoom));
        hand.act(Action::Door { door: Door::Burner, to: Fitted::Off });
        hand
    }

    pub fn natural() -> Self {
        Self::at(rig::healthy(Fuel::Natural))
    }

    pub fn act(&mut self, action: Action) {
        self.bench.apply(&action).unwrap_or_else(|why| panic!("{action:?}: {why:?}"));
    }

    pub fn refused(&mut self, action: Action) -> Refusal {
        self.bench.apply(&action).expect_err("it was done")
    }

    pub fn wait(&mut self, seconds: u32) -> Truth {
        for _ in 0..50 * seconds {
            self.bench.step();
        }
        self.bench.truth()
    }

    /// Goes somewhere, if not there.
    pub fn go(&mut self, place: Place) {
        if self.bench.seen().place != place {
            self.act(Action::Go(place));
        }
    }

    /// Calls for heat at the thermostat: first stage alone, or with the wire R–W2 both.
    pub fn call(&mut self, wire: Fitted) {
        self.go(Place::Hall);
        self.act(Action::Setpoint(135));
        self.act(Action::ThermostatMode(OnOff::On));
        self.go(Place::PlantRoom);
        if wire == Fitted::On {
            self.act(Action::StageJumper(Fitted::On));
        }
    }

    /// Fires on low and settles; or on high.
    pub fn fire(&mut self, wanted: Option<Level>) {
        self.call(if wanted == Some(Level::High) { Fitted::On } else { Fitted::Off });
        for _ in 0..200 {
            if self.wait(1).firing == wanted {
                break;
            }
        }
        assert_eq!(self.bench.truth().firing, wanted);
        self.wait(60);
    }

    /// Takes the spot's tool, holds it there and waits.
    pub fn hold(&mut self, spot: Spot, seconds: u32) {
        match self.bench.seen().hand {
            Some(tool) if tool == spot.tool() => {}
            Some(_) => {
                self.act(Action::PutDown);
                self.act(Action::Take(spot.tool()));
            }
            None => self.act(Action::Take(spot.tool())),
        }
        self.act(Action::Measure(spot));
        self.wait(seconds);
    }

    /// What the instrument in view shows of a quantity; none for dashes.
    pub fn shows(&self, quantity: Quantity) -> Option<f64> {
        let measured = self.bench.seen().measured.expect("an instrument is in view");
        let figure = measured.figures.iter().find(|figure| figure.quantity == quantity);
        figure.expect("it shows that").value()
    }

    /// Volts at a spot after a moment.
    pub fn volts(&mut self, spot: Spot) -> f64 {
        self.hold(spot, 5);
        self.shows(Quantity::Voltage).expect("volts")
    }

    /// Clips the microammeter in: power off, clip, power on.
    pub fn clip(&mut self) {
        self.act(Action::FurnaceSwitch(OnOff::Off));
        self.act(Action::Take(Tool::Microammeter));
        self.act(Action::Measure(Spot::FlameRod));
        self.act(Action::FurnaceSwitch(OnOff::On));
    }
}
