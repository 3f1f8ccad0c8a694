//! Arrival: what nose, detector, papers and eyes tell before anything is opened.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mend::mend_all;
use super::mind::Mind;
use super::sequence::Sequence;
use super::step::{Step, act, go, isolate, pause, reach, take, think, with};
use super::{by_eye, judge};
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Topic};
use crate::parts::{Door, Fitted, Height, Opening, Place, Port, PortFill, Subject, Tool};
use crate::procedure::Goal;
use crate::senses::seen::{Holes, Note, Observation, Seen};

/// Arrival: nose, detector, papers, what stands how.
pub(super) fn arrival(me: &Mind) -> Vec<Step> {
    let mut steps = vec![pause(2.0), act(Action::Sniff(Height::Head))];
    let mut inward = vec![act(Action::Probe(Height::Floor)), pause(3.0)];
    if !me.works(Sequence::FurnaceFirst) {
        inward.extend(at_supply());
    }
    inward.push(think(judge::smell_in_yard));
    inward.extend(in_hall(me));
    inward.extend(at_furnace_door(me));
    steps.extend(with(Tool::GasDetector, inward));
    steps.extend(at_furnace(me));
    let filter_last = me.works(Sequence::FilterLast);
    if !filter_last {
        steps.extend(look_at_filter());
    }
    if me.works(Sequence::PapersLate) {
        steps.push(go(Place::PlantRoom));
        steps.extend(looks(me, PAPERS));
        steps.push(think(note_furnace));
    }
    steps.push(go(Place::GasValve));
    steps.extend(looks(me, [Subject::Orifices, Subject::SpringMark, Subject::LowGasSwitch]));
    steps.extend(by_eye::on_arrival());
    if filter_last {
        steps.extend(look_at_filter());
    }
    steps.push(think(judge_conversion));
    steps
}

/// What says what the furnace is.
const PAPERS: [Subject; 2] = [Subject::Plate, Subject::ConversionLabel];

/// Looks at these, one after the other.
fn looks<const N: usize>(me: &Mind, mut subjects: [Subject; N]) -> Vec<Step> {
    if me.works(Sequence::LooksBackwards) {
        subjects.reverse();
    }
    subjects.map(|subject| act(Action::Look(subject))).into()
}

/// Supply regulator, its vent, and what it is fed from.
fn at_supply() -> Vec<Step> {
    vec![
        act(Action::Look(Subject::SupplyRegulator)),
        act(Action::Look(Subject::SupplyVent)),
        think(look_at_supply),
    ]
}

/// Nose and detector, in the sequence of this technician.
fn smell(me: &Mind, nose: Vec<Step>, detector: Vec<Step>) -> Vec<Step> {
    if me.works(Sequence::DetectorFirst) {
        [detector, nose].concat()
    } else {
        [nose, detector].concat()
    }
}

fn in_hall(me: &Mind) -> Vec<Step> {
    let mut steps = vec![go(Place::Hall)];
    let nose = vec![act(Action::Sniff(Height::Floor))];
    steps.extend(smell(me, nose, vec![act(Action::Probe(Height::Head))]));
    steps.extend(looks(me, [Subject::CoAlarm, Subject::Registers]));
    steps.push(act(Action::Tell(Topic::WorkStarts)));
    if me.works(Sequence::DrillFirst) {
        steps.push(act(Action::Tell(Topic::GasSmellDrill)));
    }
    steps.push(reach(Goal::HeatOff));
    steps
}

fn at_furnace_door(me: &Mind) -> Vec<Step> {
    let mut steps = vec![go(Place::PlantRoom)];
    let nose = vec![act(Action::Sniff(Height::Floor)), act(Action::Sniff(Height::Head))];
    let probe = |height| vec![act(Action::Probe(height)), pause(4.0)];
    let detector = [probe(Height::Floor), probe(Height::Head)].concat();
    steps.extend(smell(me, nose, detector));
    steps
}

/// Papers, eyes, three barriers.
fn at_furnace(me: &Mind) -> Vec<Step> {
    let mut steps = Vec::new();
    if me.works(Sequence::MeterFirst) {
        steps.push(reach(Goal::MeterOn));
    }
    if me.works(Sequence::AirsFirst) {
        steps.push(think(|me, _| air(me)));
    }
    let isolates_first = me.works(Sequence::IsolatesFirst);
    if isolates_first {
        steps.extend(isolate());
    }
    if !me.works(Sequence::PapersLate) {
        steps.extend(looks(me, PAPERS));
    }
    steps.extend(looks(
        me,
        [Subject::Vent, Subject::AirOpening, Subject::Connector, Subject::DripLeg],
    ));
    if me.works(Sequence::FurnaceFirst) {
        steps.push(go(Place::Yard));
        steps.extend(at_supply());
        steps.push(go(Place::PlantRoom));
    }
    steps.push(think(note_furnace));
    if !isolates_first {
        steps.extend(isolate());
    }
    steps
}

/// Propane pools: the room is aired before anything is lit.
fn air(me: &Mind) -> Vec<Step> {
    if me.know.papers.supply_is_propane {
        vec![reach(Goal::Aired(Opening::Open)), pause(20.0)]
    } else {
        Vec::new()
    }
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
    air(me)
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
