//! Writing, calling, telling, handing over; smelling and probing.

use super::action::{Contact, HandOver, Topic};
use super::apply::{Done, plain};
use super::event::{Happening, ReadingFact, ShownBefore};
use super::refusal::Refusal;
use crate::bench::Bench;
use crate::parts::{Gauge, Height, Joint, JointVerdict, Place, Reading, Tool};
use crate::senses::seen::{DetectorSeen, Smell};
use crate::senses::watch::Since;

/// Largest number that can be written, in thousandths.
const MOST_THOUSANDTHS: u32 = 9_999_999;

impl Bench {
    pub(crate) fn write(&mut self, reading: Reading) -> Done {
        if reading.thousandths.unsigned_abs() > MOST_THOUSANDTHS {
            return Err(Refusal::Absurd);
        }
        self.sheet.readings.push(reading);
        let draw = self.draw();
        let at = self.metered_port();
        let shown = self.watch.shown(reading.port, reading.stage);
        let actual = at.and_then(|port| {
            let stage =
                if draw.is(port, reading.stage) { Some(reading.stage) } else { draw.stage(port) };
            stage.map(|stage| (port, stage))
        });
        let mut follow = vec![Happening::Wrote(ReadingFact {
            reading,
            actual,
            shown_pa: shown.settled_pa,
            shown_unsettled_pa: shown.any_pa,
            true_pa: shown.true_pa,
            meter_error_pa: shown.error_pa.unwrap_or_else(|| self.reads().1),
            settled_tick: shown.tick,
            before: shown.before.map(|(shown_pa, meter_error_pa, since)| ShownBefore {
                shown_pa,
                meter_error_pa,
                turned: since == Since::PressureMoved,
            }),
            scale_off_pa: (self.kit.gauge == Gauge::WaterColumn)
                .then(|| self.kit.column.scale_off_pa()),
        })];
        if let Some(hold) = self.watch.holding() {
            follow.insert(0, Happening::Held { seconds: hold.seconds, rise_pa: hold.rise_pa });
        }
        Ok(follow)
    }

    pub(crate) fn write_joint(&mut self, joint: Joint, verdict: JointVerdict) -> Done {
        self.sheet.joints.push((joint, verdict));
        // Writing it down is the moment of judging, whether the joint is wiped afterwards or not.
        Ok(self.look_at_fluid(joint).into_iter().collect())
    }

    pub(crate) fn call(&mut self, contact: Contact) -> Done {
        let inside = matches!(self.person.place, Place::PlantRoom | Place::GasValve | Place::Hall);
        match contact {
            Contact::SupplyOwner if inside && self.smell_here() >= Smell::Clear => {
                Err(Refusal::CallFromOutside)
            }
            Contact::Emergency if inside => Err(Refusal::CallFromOutside),
            Contact::SupplyOwner | Contact::Emergency => plain(),
        }
    }

    pub(crate) fn tell_householder(&mut self, topic: Topic) -> Done {
        match topic {
            // A shout carries through the house.
            Topic::GetOut => plain(),
            Topic::WorkStarts | Topic::GasSmellDrill | Topic::Unsafe => {
                self.need_place(&[Place::Hall])?;
                plain()
            }
        }
    }

    pub(crate) fn hand_over(&mut self, said: &HandOver) -> Done {
        self.ending_place(said.ending)?;
        plain()
    }

    pub(crate) fn sniff(&mut self, height: Height) -> Done {
        let smell = self.smell_at(height);
        self.note_smell(height, smell);
        plain()
    }

    pub(crate) fn probe(&mut self, height: Height) -> Done {
        self.need_tool(Tool::GasDetector)?;
        self.person.detector =
            Some(DetectorSeen { height, percent_lel: self.percent_lel_at(height) });
        plain()
    }
}
