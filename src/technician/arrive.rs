//! Arrival: what nose, detector, papers and eyes tell before anything is opened.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mend::mend_all;
use super::mind::Mind;
use super::step::{Step, act, go, isolate, pause, reach, take, think, with};
use super::{by_eye, judge};
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Topic};
use crate::parts::{Door, Fitted, Height, Opening, Place, Port, PortFill, Subject, Tool};
use crate::procedure::Goal;
use crate::senses::seen::{Holes, Note, Observation, Seen};

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
            reach(Goal::HeatOff),
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
    steps.extend(isolate());
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

fn look_at_supply(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let propane = seen.yard.as_ref().is_some_and(|yard| yard.tank_percent.is_some());
    me.know.papers.supply_is_propane = propane;
    let subject = if propane { Subject::TankGauge } else { Subject::MeterDial };
    vec![act(Action::Look(subject)), think(judge::yard)]
}

fn note_furnace(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    for note in &seen.sheet.notes {
        match &note.finding {
            Observation::Plate(plate) => {
                me.know.papers.plate_fuel = Some(plate.figures.fuel);
                me.know.papers.figures.get_or_insert_with(|| plate.figures.clone());
            }
            Observation::Label(figures) => me.know.papers.figures = Some(figures.clone()),
            Observation::Delivery(delivery) => me.know.papers.delivery = Some(*delivery),
            Observation::Absent
            | Observation::SpringsFor(_)
            | Observation::Orifices { .. }
            | Observation::Condition(_)
            | Observation::Connector(_)
            | Observation::DraftLine { .. }
            | Observation::Flames(_)
            | Observation::TankPercent(_)
            | Observation::Dial { .. }
            | Observation::Status(_) => {}
        }
    }
    find_by_eye(me, seen);
    // Propane pools: air the room before anything is lit.
    if me.know.papers.supply_is_propane {
        vec![reach(Goal::Aired(Opening::Open)), pause(20.0)]
    } else {
        Vec::new()
    }
}

/// What is plainly wrong goes on the list of repairs.
fn find_by_eye(me: &mut Mind, seen: &Seen) {
    const BY_EYE: [(Subject, Diagnosis, Repair); 6] = [
        (Subject::Registers, Diagnosis::RegistersClosed, Repair::OpenRegisters),
        (Subject::Vent, Diagnosis::FlueBlocked, Repair::ClearVent),
        (Subject::AirOpening, Diagnosis::AirOpeningCovered, Repair::ClearIntake),
        (Subject::Connector, Diagnosis::ConnectorKinked, Repair::ReplaceConnector),
        (Subject::DripLeg, Diagnosis::WaterInTheLine, Repair::EmptyDripLeg),
        (Subject::Filter, Diagnosis::FilterBlocked, Repair::ReplaceFilter),
    ];
    for (subject, words, repair) in BY_EYE {
        if seen.sheet.note(subject).is_some_and(Note::is_bad) && !me.know.has_mended(repair) {
            me.plan_repair(words, repair);
        }
    }
}

/// The filter behind the blower door; the power is off.
fn look_at_filter() -> Vec<Step> {
    vec![
        go(Place::PlantRoom),
        reach(Goal::Looked(Subject::Filter)),
        reach(Goal::Door(Door::Blower, Fitted::On)),
        think(|me, seen| {
            find_by_eye(me, seen);
            Vec::new()
        }),
        mend_all(),
    ]
}

/// Fuel, label, orifices, springs and, on propane, the low-gas switch must agree.
fn judge_conversion(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let fuel = if me.know.papers.supply_is_propane { Fuel::Propane } else { Fuel::Natural };
    let figures = me.know.papers.figures.clone();
    let orifices = seen.sheet.note(Subject::Orifices).map(|note| &note.finding);
    let stamp_right = matches!((orifices, &figures),
        (Some(Observation::Orifices { stamp, .. }), Some(figures)) if *stamp == figures.orifice_stamp);
    let springs_right = seen
        .sheet
        .note(Subject::SpringMark)
        .is_some_and(|note| note.finding == Observation::SpringsFor(fuel));
    let figures_right = figures.as_ref().is_some_and(|figures| figures.fuel == fuel);
    me.know.papers.conversion_wrong = !(stamp_right && springs_right && figures_right);
    if matches!(orifices, Some(Observation::Orifices { holes: Holes::OnePlugged, .. })) {
        me.plan_repair(Diagnosis::OrificePlugged, Repair::CleanOrifices);
    }
    if me.know.papers.conversion_wrong {
        me.know.leave_shut_off = true;
        return take(Course::LeaveShutOff);
    }
    vec![
        mend_all(),
        go(Place::GasValve),
        think(|_, seen| {
            // An adapter that somebody has left in the manifold port comes out.
            let ports = seen.furnace.as_ref().and_then(|it| Some(&it.burners.as_ref()?.ports));
            let left = ports.is_some_and(|it| it[Port::Manifold].fill == PortFill::BareAdapter);
            if left {
                vec![reach(Goal::Closed(Port::Manifold)), reach(Goal::HandEmpty)]
            } else {
                Vec::new()
            }
        }),
        Step::Take(Course::InletAsFound),
    ]
}
