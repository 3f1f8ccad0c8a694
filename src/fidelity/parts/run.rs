//! A bench that is run through its stages without an instrument.

use crate::bench::Bench;
use crate::bench::run::{self, Nobody};
use crate::hands::action::Action;
use crate::hands::refusal::Refusal;
use crate::model::truth::Truth;
use crate::parts::{Door, Fitted, Level, OnOff, OtherAppliance, Place};
use crate::setup::Setup;
use crate::units::TICKS_PER_S;

/// A bench and whether everything asked of it was done.
pub(super) struct Run {
    bench: Bench,
    pub(super) refused: bool,
}

impl Run {
    /// The bench at rest, its heat off.
    pub(super) fn at_rest(mut setup: Setup) -> Self {
        setup.found.thermostat_mode = OnOff::Off;
        Self { bench: Bench::new(setup), refused: false }
    }

    fn act(&mut self, action: &Action) {
        match self.bench.apply(action) {
            Ok(()) | Err(Refusal::AlreadySo) => {}
            Err(_) => self.refused = true,
        }
    }

    /// Lets seconds pass; the truth at their end.
    pub(super) fn wait(&mut self, seconds: u32) -> Truth {
        run::wait(&mut self.bench, u64::from(seconds) * TICKS_PER_S, &mut Nobody);
        self.bench.truth()
    }

    /// Calls for heat a little, and waits until the low stage runs and has settled.
    pub(super) fn first(&mut self) -> Truth {
        self.act(&Action::Go(Place::Hall));
        self.act(&Action::Setpoint(135));
        self.act(&Action::ThermostatMode(OnOff::On));
        self.until(Some(Level::Low), 120);
        self.wait(12)
    }

    /// Wires the high stage on.
    pub(super) fn jump_to_full(&mut self) {
        self.act(&Action::Go(Place::Hall));
        self.act(&Action::Setpoint(160));
        self.act(&Action::ThermostatMode(OnOff::On));
        self.act(&Action::Go(Place::PlantRoom));
        self.act(&Action::Door { door: Door::Burner, to: Fitted::Off });
        self.act(&Action::StageJumper(Fitted::On));
    }

    /// Wires the high stage on and waits until it has settled.
    pub(super) fn full(&mut self) -> Truth {
        self.jump_to_full();
        self.until(Some(Level::High), 150);
        self.wait(12)
    }

    /// The other appliances too.
    pub(super) fn others(&mut self) -> Truth {
        self.act(&Action::Go(Place::PlantRoom));
        self.act(&Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to: OnOff::On });
        self.act(&Action::Go(Place::Hall));
        self.act(&Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On });
        self.wait(12)
    }

    /// Steps until it fires so, at most `seconds`.
    pub(super) fn until(&mut self, firing: Option<Level>, seconds: u32) {
        for _ in 0..seconds {
            if self.wait(1).firing == firing {
                return;
            }
        }
        self.refused = true;
    }

    /// Manifold pressure at every tick from when it fires so, in pascals.
    pub(super) fn manifold_from(&mut self, firing: Option<Level>, ticks: u32) -> Vec<f64> {
        for _ in 0..50 * 150 {
            run::pass(&mut self.bench, &mut Nobody);
            if self.bench.truth().firing == firing {
                break;
            }
        }
        (0..ticks)
            .map(|_| {
                run::pass(&mut self.bench, &mut Nobody);
                self.bench.truth().manifold_pa
            })
            .collect()
    }

    /// Seconds for one turn of the meter's test dial, counted over `seconds`.
    pub(super) fn dial_s(&mut self, seconds: u32) -> f64 {
        self.act(&Action::Go(Place::Yard));
        let turns = |bench: &Bench| bench.seen().yard.and_then(|yard| yard.dial_turns);
        let before = turns(&self.bench);
        self.wait(seconds);
        match (before, turns(&self.bench)) {
            (Some(before), Some(after)) => f64::from(seconds) / (after - before),
            (None, _) | (_, None) => f64::NAN,
        }
    }

    /// The largest imbalance of gas so far, relative to the throughput.
    pub(super) fn imbalance(&self) -> f64 {
        self.bench.worst_imbalance()
    }
}
