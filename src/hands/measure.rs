//! Holding instruments to things, and writing down what they show.

use super::action::StartStop;
use super::done::{Done, plain};
use super::event::EventKind;
use super::job::Job;
use super::reach;
use super::refusal::Refusal;
use crate::instrument::electrical::Needle;
use crate::instrument::figure::Quantity;
use crate::instrument::stopwatch::Stopwatch;
use crate::model::Model;
use crate::parts::{Fitted, Gauge, Spot, Tool};
use crate::senses::measured::measured_at;
use crate::senses::seen::{Measured, WrittenMeasured};

/// Pressure in the hose from which gas or water comes out when it is pulled off, in pascals.
const FELT_PA: f64 = 25.0;

pub(super) fn measure(model: &mut Model, spot: Spot) -> Done {
    reach::spot(model, spot)?;
    if spot == Spot::FlameRod {
        return clip(model);
    }
    reach::tool(model, spot.tool())?;
    if model.kit.spot == Some(spot) {
        return Err(Refusal::AlreadySo);
    }
    model.kit.spot = Some(spot);
    model.kit.meter = Needle::default();
    plain()
}

/// The microammeter goes in series with the rod: the wire is opened, so the power is off.
fn clip(model: &mut Model) -> Done {
    if model.kit.clipped == Fitted::On {
        return Err(Refusal::AlreadySo);
    }
    reach::tool(model, Tool::Microammeter)?;
    if model.powered() {
        return Err(Refusal::PowerOn);
    }
    model.kit.clipped = Fitted::On;
    model.kit.micro = Needle::default();
    model.person.hand = None;
    plain()
}

pub(super) fn unclip(model: &mut Model) -> Done {
    if model.kit.clipped == Fitted::Off {
        return Err(Refusal::NotClipped);
    }
    reach::spot(model, Spot::FlameRod)?;
    if model.powered() {
        return Err(Refusal::PowerOn);
    }
    if model.person.hand.is_some() {
        return Err(Refusal::HandFull);
    }
    model.kit.clipped = Fitted::Off;
    model.person.hand = Some(Tool::Microammeter);
    plain()
}

pub(super) fn press_stopwatch(model: &mut Model, press: StartStop) -> Done {
    reach::tool(model, Tool::Stopwatch)?;
    let dial = model.gas.dial_turns().filter(|_| model.kit.spot == Some(Spot::MeterDial));
    let turns = dial.ok_or(Refusal::StopwatchNotRunning)?;
    match press {
        StartStop::Start => model.kit.stopwatch.start(model.tick, turns),
        StartStop::Stop if model.kit.stopwatch.stop(model.tick, turns) => {}
        StartStop::Stop => return Err(Refusal::StopwatchNotRunning),
    }
    plain()
}

pub(super) fn write_measured(model: &Model, job: &mut Job, spot: Spot) -> Done {
    let shown = measured_at(model, spot).filter(can_be_written).ok_or(Refusal::NothingShown)?;
    let Measured { spot, figures } = shown;
    let written = WrittenMeasured { spot, tick: model.tick, figures };
    job.sheet_mut().measured.push(written.clone());
    Ok(vec![EventKind::WroteMeasured { written, firing: model.firing() }])
}

/// The hose goes to another instrument: its end stands open meanwhile.
pub(super) fn set_gauge(model: &mut Model, gauge: Gauge) -> Done {
    reach::meter(model)?;
    if model.kit.gauge == gauge {
        return Err(Refusal::AlreadySo);
    }
    dead_hose(model)?;
    model.kit.gauge = gauge;
    model.kit.gauges_used = true;
    plain()
}

pub(super) fn fill_column(model: &mut Model) -> Done {
    reach::meter(model)?;
    if !model.kit.column.is_blown() {
        return Err(Refusal::AlreadySo);
    }
    if model.kit.gauge == Gauge::WaterColumn {
        dead_hose(model)?;
    }
    model.kit.column.fill();
    plain()
}

fn dead_hose(model: &Model) -> Result<(), Refusal> {
    if model.things.hose_port().is_some() && model.gas.hose_pa().abs() > FELT_PA {
        return Err(Refusal::HoseUnderPressure);
    }
    Ok(())
}

/// After an action: an instrument that can no longer be where it was held is not.
pub(super) fn let_go_of_spot(model: &mut Model) {
    let Some(spot) = model.kit.spot else { return };
    if model.person.hand != Some(spot.tool()) || reach::spot(model, spot).is_err() {
        model.kit.spot = None;
        model.kit.stopwatch = Stopwatch::Nought;
        model.kit.meter = Needle::default();
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
