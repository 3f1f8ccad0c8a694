//! Holding instruments to things, and writing down what they show.

use super::action::StartStop;
use super::apply::{Done, plain};
use super::event::Happening;
use super::refusal::Refusal;
use crate::bench::Bench;
use crate::instrument::electrical::Needle;
use crate::instrument::figure::Quantity;
use crate::instrument::flue_analyser::FlueAnalyser;
use crate::instrument::stopwatch::Stopwatch;
use crate::instrument::thermometer::Thermometer;
use crate::parts::{Fitted, Gauge, Spot, Tool};
use crate::senses::seen::{Measured, WrittenMeasured};

/// Pressure in the hose from which gas or water comes out when it is pulled off, in pascals.
const FELT_PA: f64 = 25.0;

impl Bench {
    /// A fresh instrument comes into the hand at the temperature that is here.
    pub(crate) fn ready(&mut self, tool: Tool) {
        let here_k = self.air_here_k();
        match tool {
            Tool::Thermometer => self.kit.thermometer = Thermometer::new(here_k),
            Tool::FlueAnalyser => self.kit.analyser = FlueAnalyser::new(here_k),
            Tool::ElectricalMeter => self.kit.meter = Needle::default(),
            Tool::Stopwatch => self.kit.stopwatch = Stopwatch::Nought,
            Tool::HexKey
            | Tool::SlottedDriver
            | Tool::Adapter
            | Tool::Hose
            | Tool::LeakFluid
            | Tool::GasDetector
            | Tool::Microammeter => {}
        }
    }

    pub(crate) fn measure(&mut self, spot: Spot) -> Done {
        self.reaches_spot(spot)?;
        if spot == Spot::FlameRod {
            return self.clip();
        }
        self.need_tool(spot.tool())?;
        if self.kit.spot == Some(spot) {
            return Err(Refusal::AlreadySo);
        }
        self.kit.spot = Some(spot);
        self.kit.meter = Needle::default();
        plain()
    }

    /// The microammeter goes in series with the rod: the wire is opened, so the power is off.
    pub(crate) fn clip(&mut self) -> Done {
        if self.kit.clipped == Fitted::On {
            return Err(Refusal::AlreadySo);
        }
        self.need_tool(Tool::Microammeter)?;
        if self.powered() {
            return Err(Refusal::PowerOn);
        }
        self.kit.clipped = Fitted::On;
        self.kit.micro = Needle::default();
        self.person.hand = None;
        plain()
    }

    pub(crate) fn unclip(&mut self) -> Done {
        if self.kit.clipped == Fitted::Off {
            return Err(Refusal::NotClipped);
        }
        self.reaches_spot(Spot::FlameRod)?;
        if self.powered() {
            return Err(Refusal::PowerOn);
        }
        if self.person.hand.is_some() {
            return Err(Refusal::HandFull);
        }
        self.kit.clipped = Fitted::Off;
        self.person.hand = Some(Tool::Microammeter);
        plain()
    }

    pub(crate) fn press_stopwatch(&mut self, press: StartStop) -> Done {
        self.need_tool(Tool::Stopwatch)?;
        let dial = self.gas.dial_turns().filter(|_| self.kit.spot == Some(Spot::MeterDial));
        let turns = dial.ok_or(Refusal::WatchNotRunning)?;
        match press {
            StartStop::Start => self.kit.stopwatch.start(self.tick, turns),
            StartStop::Stop if self.kit.stopwatch.stop(self.tick, turns) => {}
            StartStop::Stop => return Err(Refusal::WatchNotRunning),
        }
        plain()
    }

    pub(crate) fn write_measured(&mut self, spot: Spot) -> Done {
        let shown = self.measured_at(spot).filter(can_be_written).ok_or(Refusal::NothingShown)?;
        let Measured { spot, figures } = shown;
        let written = WrittenMeasured { spot, tick: self.tick, figures };
        self.sheet.measured.push(written.clone());
        Ok(vec![Happening::WroteMeasured { written, firing: self.firing() }])
    }

    /// The hose goes to another instrument: its end stands open meanwhile.
    pub(crate) fn set_gauge(&mut self, gauge: Gauge) -> Done {
        if self.kit.gauge == gauge {
            return Err(Refusal::AlreadySo);
        }
        self.need_dead_hose()?;
        self.kit.gauge = gauge;
        self.kit.gauges_used = true;
        plain()
    }

    pub(crate) fn fill_column(&mut self) -> Done {
        if !self.kit.column.is_blown() {
            return Err(Refusal::AlreadySo);
        }
        if self.kit.gauge == Gauge::WaterColumn {
            self.need_dead_hose()?;
        }
        self.kit.column.fill();
        plain()
    }

    pub(crate) fn need_dead_hose(&self) -> Result<(), Refusal> {
        if self.hose_port().is_some() && self.gas.hose_pa().abs() > FELT_PA {
            return Err(Refusal::HoseUnderPressure);
        }
        Ok(())
    }
}

/// Whether a face shows something to write: dashes tell nothing, but an open line does, and a
/// stopwatch only once it has stopped on a turn.
fn can_be_written(shown: &Measured) -> bool {
    let timed = shown.spot != Spot::MeterDial
        || shown
            .figures
            .iter()
            .any(|figure| figure.quantity == Quantity::SecondsPerTurn && figure.steps.is_some());
    let fresh = shown.spot == Spot::Flue
        && shown
            .figures
            .iter()
            .any(|figure| figure.quantity == Quantity::CarbonDioxide && figure.steps.is_none());
    timed && !fresh
}
