//! Writing, calling, telling, handing over; smelling and probing.

use super::action::{Contact, HandOver, Topic};
use super::done::{Done, plain};
use super::event::{EventKind, ReadingFact};
use super::fluid::look_at_fluid;
use super::job::Job;
use super::reach;
use super::refusal::Refusal;
use crate::model::{Model, Probe};
use crate::parts::{Gauge, Height, Joint, JointVerdict, Place, Reading, Tool};
use crate::physics::room::Strength;
use crate::senses::meter_history::MeterHistory;

/// Largest number that can be written, in thousandths.
const MOST_THOUSANDTHS: u32 = 9_999_999;

pub(super) fn write(
    model: &Model,
    history: &MeterHistory,
    job: &mut Job,
    reading: Reading,
) -> Done {
    if reading.thousandths.unsigned_abs() > MOST_THOUSANDTHS {
        return Err(Refusal::Absurd);
    }
    job.sheet_mut().readings.push(reading);
    let scale_off_pa =
        (model.kit.gauge == Gauge::WaterColumn).then(|| model.kit.column.scale_off_pa());
    let mut follow = vec![EventKind::Wrote(ReadingFact { reading, scale_off_pa })];
    if let Some(spell) = history.spell() {
        follow.insert(0, EventKind::Showed(spell));
    }
    if let Some(hold) = history.holding() {
        follow.insert(0, EventKind::Held { seconds: hold.seconds, rise_pa: hold.rise_pa });
    }
    Ok(follow)
}

pub(super) fn write_joint(
    model: &Model,
    job: &mut Job,
    joint: Joint,
    verdict: JointVerdict,
) -> Done {
    job.sheet_mut().joints.push((joint, verdict));
    // Writing it down is the moment of judging, whether the joint is wiped afterwards or not.
    Ok(look_at_fluid(model, joint).into_iter().collect())
}

/// What the manometer has shown since the last hand on the gas is told with it.
pub(super) fn write_piping(history: &MeterHistory, job: &mut Job, verdict: JointVerdict) -> Done {
    job.sheet_mut().piping = Some(verdict);
    Ok(history.spell().map(EventKind::Showed).into_iter().collect())
}

pub(super) fn call(model: &Model, contact: Contact) -> Done {
    let inside = model.person.is_inside();
    match contact {
        Contact::SupplyOwner if inside && model.smell_at(Height::Head) >= Strength::Clear => {
            Err(Refusal::CallFromOutside)
        }
        Contact::Emergency if inside => Err(Refusal::CallFromOutside),
        Contact::SupplyOwner | Contact::Emergency => plain(),
    }
}

pub(super) fn tell_householder(model: &Model, topic: Topic) -> Done {
    match topic {
        // A shout carries through the house.
        Topic::GetOut => plain(),
        Topic::WorkStarts | Topic::GasSmellDrill | Topic::Unsafe => {
            reach::place(model, &[Place::Hall])?;
            plain()
        }
    }
}

pub(super) fn hand_over(model: &Model, said: &HandOver) -> Done {
    reach::ending_place(model, said.ending)?;
    plain()
}

pub(super) fn sniff(model: &mut Model, height: Height) -> Done {
    model.person.sniffed = Some((height, model.smell_at(height)));
    plain()
}

pub(super) fn probe(model: &mut Model, height: Height) -> Done {
    reach::tool(model, Tool::GasDetector)?;
    model.person.detector = Some(Probe { height, percent_lel: model.percent_lel_at(height) });
    plain()
}
