//! Arrival: what nose, detector, papers and eyes tell before anything is opened.

use super::know::turned_on;
use super::mend::mend_all;
use super::plan::{Step, Technician, act, go, inlet_as_found, leave_shut_off, think, with};
use super::task::pause;
use super::{by_eye, judge, open, run_furnace};
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Topic};
use crate::parts::{Door, Fitted, Height, Opening, Place, Subject, Tool, Window};
use crate::senses::seen::{Condition, Finding, Seen};

/// Arrival: nose, detector, papers, what stands how.
pub(super) fn arrival() -> Vec<Step> {
    let mut steps = vec![pause(2.0), act(Action::Sniff(Height::Head))];
    steps.extend(with(
        Tool::GasDetector,
        vec![
            act(Action::Probe(Height::Floor)),
            pause(3.0),
            act(Action::Look(Subject::SupplyRegulator)),
            act(Action::Look(Subject::SupplyVent)),
            think(look_at_supply),
            think(judge::smell_in_yard),
            go(Place::Hall),
            act(Action::Sniff(Height::Floor)),
            act(Action::Probe(Height::Head)),
            act(Action::Look(Subject::CoAlarm)),
            act(Action::Look(Subject::Registers)),
            act(Action::Tell(Topic::WorkStarts)),
            think(note_hall),
            go(Place::PlantRoom),
            act(Action::Sniff(Height::Floor)),
            act(Action::Sniff(Height::Head)),
            act(Action::Probe(Height::Floor)),
            pause(4.0),
            act(Action::Probe(Height::Head)),
            pause(4.0),
        ],
    ));
    for subject in [
        Subject::Plate,
        Subject::ConversionLabel,
        Subject::Vent,
        Subject::AirOpening,
        Subject::Connector,
        Subject::DripLeg,
    ] {
        steps.push(act(Action::Look(subject)));
    }
    steps.push(think(note_furnace));
    steps.extend(open::isolate());
    steps.extend(look_at_filter());
    steps.extend([
        go(Place::GasValve),
        act(Action::Look(Subject::Orifices)),
        act(Action::Look(Subject::SpringMark)),
        act(Action::Look(Subject::LowGasSwitch)),
    ]);
    steps.extend(by_eye::on_arrival());
    steps.push(think(judge_conversion));
    steps
}

fn look_at_supply(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let propane = seen.yard.as_ref().is_some_and(|yard| yard.tank_percent.is_some());
    me.know.supply_is_propane = propane;
    let subject = if propane { Subject::TankGauge } else { Subject::MeterDial };
    vec![act(Action::Look(subject)), think(judge::yard)]
}

fn note_hall(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    if let Some(hall) = &seen.hall {
        me.know.setpoint = Some(hall.setpoint_half_f);
        me.know.mode = Some(hall.mode);
        me.know.neighbors[1] = Some(turned_on(hall.range.burning));
    }
    run_furnace::call_off(seen)
}

fn note_furnace(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    if let Some(furnace) = &seen.furnace {
        me.know.neighbors[0] = Some(turned_on(furnace.water_heater.burning));
    }
    for note in &seen.sheet.notes {
        match (&note.finding, note.subject) {
            (Finding::Figures(figures), Subject::Plate) => {
                me.know.plate_fuel = Some(figures.fuel);
                me.know.figures.get_or_insert_with(|| figures.clone());
            }
            (Finding::Figures(figures), Subject::ConversionLabel) => {
                me.know.figures = Some(figures.clone());
            }
            (Finding::Delivery(limits), _) => {
                me.know.delivery = Some((limits.lowest_pa, limits.highest_pa, limits.rest_pa));
            }
            _ => {}
        }
    }
    find_by_eye(me, seen);
    // Propane pools: air the room before anything is lit.
    if me.know.supply_is_propane {
        vec![act(Action::Window { window: Window::PlantRoom, to: Opening::Open }), pause(20.0)]
    } else {
        Vec::new()
    }
}

/// What is plainly wrong goes on the list of repairs.
fn find_by_eye(me: &mut Technician, seen: &Seen) {
    const BY_EYE: [(Subject, &str, Repair); 6] = [
        (Subject::Registers, "registers closed", Repair::OpenRegisters),
        (Subject::Vent, "flue blocked", Repair::ClearVent),
        (Subject::AirOpening, "air opening covered", Repair::ClearIntake),
        (Subject::Connector, "connector kinked", Repair::ReplaceConnector),
        (Subject::DripLeg, "water in the line, no drip leg", Repair::EmptyDripLeg),
        (Subject::Filter, "filter blocked", Repair::ReplaceFilter),
    ];
    for (subject, words, repair) in BY_EYE {
        let bad = Finding::Condition(Condition::Bad);
        if seen.sheet.note(subject).is_some_and(|note| note.finding == bad)
            && !me.know.has_mended(repair)
        {
            me.plan_repair(words, repair);
        }
    }
}

/// The filter behind the blower door; the power is off.
fn look_at_filter() -> Vec<Step> {
    vec![
        go(Place::PlantRoom),
        act(Action::Door { door: Door::Blower, to: Fitted::Off }),
        act(Action::Look(Subject::Filter)),
        act(Action::Door { door: Door::Blower, to: Fitted::On }),
        think(|me, seen| {
            find_by_eye(me, seen);
            Vec::new()
        }),
        mend_all(),
    ]
}

/// Fuel, label, orifices, springs and, on propane, the low-gas switch must agree.
fn judge_conversion(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let fuel = if me.know.supply_is_propane { Fuel::Propane } else { Fuel::Natural };
    let figures = me.know.figures.clone();
    let stamp_right = seen.sheet.note(Subject::Orifices).is_some_and(|note| {
        matches!((&note.finding, &figures),
            (Finding::Stamp(stamp), Some(figures)) if *stamp == figures.orifice_stamp)
    });
    let springs_right = seen
        .sheet
        .note(Subject::SpringMark)
        .is_some_and(|note| note.finding == Finding::SpringsFor(fuel));
    let figures_right = figures.as_ref().is_some_and(|figures| figures.fuel == fuel);
    me.know.conversion_wrong = !(stamp_right && springs_right && figures_right);
    if seen.sheet.note(Subject::Orifices).is_some_and(|note| note.text.contains("sits in one")) {
        me.plan_repair("an orifice is plugged", Repair::CleanOrifices);
    }
    if me.know.conversion_wrong {
        me.know.leave_shut_off = true;
        return leave_shut_off();
    }
    vec![
        mend_all(),
        go(Place::GasValve),
        think(open::bare_adapter_out),
        think(|_, _| inlet_as_found()),
    ]
}
