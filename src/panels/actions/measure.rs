//! Instruments: held to their spots, written down, and the hose put to another gauge.

use super::list::List;
use crate::hands::action::{Action, StartStop};
use crate::instrument::water_column::Legs;
use crate::panels::instrument_display;
use crate::parts::{Fitted, Gauge, Place, Spot, Tool};
use crate::senses::seen::{GaugeSeen, Seen};

/// At a part: the spots that belong to it, and how their instrument comes into the hand.
pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    for spot in Spot::at(id) {
        if spot.places().contains(&seen.place) {
            if !(spot == Spot::FlameRod && seen.clipped == Fitted::On) {
                list.need(spot.tool(), seen);
            }
            at_spot(spot, seen, list);
        }
    }
    if matches!(id, "meter" | "hose" | "meter-plus") {
        gauges(seen, list);
    }
}

/// With an instrument in hand: every spot of it that this place has.
pub(super) fn held(tool: Tool, seen: &Seen, list: &mut List) {
    for &spot in Spot::ALL {
        if spot.tool() == tool && spot.places().contains(&seen.place) {
            at_spot(spot, seen, list);
        }
    }
}

/// What is shown now can be written; the microammeter can be taken out.
pub(super) fn shown(seen: &Seen, list: &mut List) {
    if let Some(measured) = &seen.measured {
        list.add(
            t!("measure-write", reading = instrument_display::line(measured)),
            Action::WriteMeasured(measured.spot),
        );
    }
    let at_furnace = matches!(seen.place, Place::PlantRoom | Place::GasValve);
    if seen.clipped == Fitted::On && at_furnace {
        list.add(t!("measure-unclip"), Action::Unclip);
    }
}

fn at_spot(spot: Spot, seen: &Seen, list: &mut List) {
    if spot == Spot::FlameRod && seen.clipped == Fitted::On {
        list.add(t!("measure-unclip"), Action::Unclip);
        return;
    }
    let there = seen.measured.as_ref().is_some_and(|measured| measured.spot == spot);
    if !there {
        list.add(hold_label(spot), Action::Measure(spot));
    }
    if spot == Spot::MeterDial {
        list.add(t!("measure-stopwatch-start"), Action::Stopwatch(StartStop::Start));
        list.add(t!("measure-stopwatch-stop"), Action::Stopwatch(StartStop::Stop));
    }
}

fn hold_label(spot: Spot) -> String {
    let name = spot.label();
    match spot.tool() {
        Tool::Thermometer => t!("measure-thermometer", spot = name.to_lowercase()),
        Tool::FlueAnalyser => t!("measure-flue").into(),
        Tool::Microammeter => t!("measure-clip").into(),
        Tool::Stopwatch => t!("measure-stopwatch").into(),
        Tool::ElectricalMeter
        | Tool::HexKey
        | Tool::SlottedDriver
        | Tool::Adapter
        | Tool::Hose
        | Tool::LeakFluid
        | Tool::GasDetector => t!("measure-leads", spot = name),
    }
}

/// The instruments that the hose can go to.
fn gauges(seen: &Seen, list: &mut List) {
    let Some(meter) = seen.meter() else { return };
    for gauge in Gauge::ALL {
        if gauge != meter.gauge.gauge() {
            list.add(t!("measure-gauge", gauge = gauge.label()), Action::Gauge(gauge));
        }
    }
    if meter.gauge == GaugeSeen::WaterColumn(Legs::Empty) {
        list.add(t!("measure-fill-column"), Action::FillColumn);
    }
}
