//! Looking closely: what is noted.

use super::Bench;
use super::apply::{Done, plain};
use super::part::Subject;
use super::perceive::FILM_SHOWS;
use super::refusal::Refusal;
use super::seen::{
    Condition, ConnectorLook, Delivery, Finding, FlamesLook, Holes, Note, REGISTERS_SHOW,
    RatingPlate, Water,
};
use super::setup::{HoseState, SupplyKind};
use crate::units::M3_PER_FT3;

/// Yellow of a flame from which it strikes the eye, 0–1.
const YELLOW_SHOWS: f64 = 0.3;

impl Bench {
    /// Looks and notes. A second look at something replaces what was noted.
    pub(super) fn look(&mut self, subject: Subject) -> Done {
        self.need_subject(subject)?;
        let finding = self.sight(subject).ok_or(Refusal::NotOnThisJob)?;
        self.sheet.notes.retain(|note| note.subject != subject);
        self.sheet.notes.push(Note { subject, tick: self.tick, finding });
        plain()
    }

    fn sight(&self, subject: Subject) -> Option<Finding> {
        let furnace = &self.setup.furnace;
        let condition = &self.setup.condition;
        let bad_if =
            |bad: bool| Finding::Condition(if bad { Condition::Bad } else { Condition::Good });
        Some(match subject {
            Subject::Plate => self.plate(),
            Subject::ConversionLabel => {
                furnace.plate.converted_to.clone().map_or(Finding::Absent, Finding::Label)
            }
            Subject::Orifices => Finding::Orifices {
                stamp: furnace.orifice_stamp.clone(),
                holes: self.narrowest().map_or(Holes::Free, |_| Holes::OnePlugged),
            },
            Subject::SpringMark => Finding::SpringsFor(furnace.springs_for),
            Subject::LowGasSwitch if furnace.low_gas_switch => Finding::Condition(Condition::Good),
            Subject::LowGasSwitch => Finding::Absent,
            Subject::SupplyVent => bad_if(condition.supply.vent_blocked > 0.0),
            Subject::Vent => bad_if(condition.air.vent_blocked > 0.0),
            Subject::AirOpening => bad_if(condition.air.intake_blocked > 0.0),
            Subject::Connector => Finding::Connector(self.connector()),
            Subject::DripLeg => bad_if(condition.line.water_pa > 0.0),
            Subject::Filter => bad_if(condition.air.filter_blocked > 0.0),
            Subject::FlameRod => bad_if(condition.burners.rod_dirty > FILM_SHOWS),
            Subject::Registers => bad_if(condition.air.registers_closed > REGISTERS_SHOW),
            Subject::DraftHose => self.draft_line(),
            Subject::BoxHose => bad_if(condition.valve.box_hose == HoseState::Off),
            Subject::Flames => Finding::Flames(self.flames_found()),
            Subject::TankGauge => {
                let level = 100.0 * self.gas.tank()?.level();
                Finding::TankPercent((level / 5.0).round() * 5.0)
            }
            Subject::MeterDial => {
                let turns = self.gas.dial_turns()?;
                let SupplyKind::Meter { dial_m3 } = self.setup.supply.kind else { return None };
                Finding::Dial { turn_ft3: dial_m3 / M3_PER_FT3, turns }
            }
            Subject::CoAlarm => Finding::Condition(Condition::Good),
            Subject::StatusLamp => Finding::Status(self.control_status()),
            Subject::SupplyRegulator => {
                let supply = &self.setup.supply;
                let (low_pa, high_pa) = supply.delivery_limits_pa;
                Finding::Delivery(Delivery { low_pa, high_pa, rest_pa: supply.lockup_max_pa })
            }
        })
    }

    fn connector(&self) -> ConnectorLook {
        let line = &self.setup.condition.line;
        if line.connector_crack_m > 0.0 {
            ConnectorLook::Creased
        } else if line.connector_kinked > 0.0 {
            ConnectorLook::Kinked
        } else {
            ConnectorLook::Whole
        }
    }

    /// Hose and trap between the inducer and its switches: what is off, split, wet or dry. Close up,
    /// any drop shows.
    fn draft_line(&self) -> Finding {
        let condition = &self.setup.condition;
        let wet = condition.sensing.water_pa > 0.0;
        let dry_trap = condition.air.trap_leak > 0.0;
        Finding::DraftLine {
            hose: condition.sensing.hose,
            water: if wet { Water::Stands } else { Water::None },
            trap: if dry_trap { Condition::Bad } else { Condition::Good },
        }
    }

    fn plate(&self) -> Finding {
        let plate = &self.setup.furnace.plate;
        Finding::Plate(RatingPlate {
            model: plate.model.clone(),
            figures: plate.made_for.clone(),
            input_high_w: plate.input_high.si(),
            input_low_w: plate.input_low.si(),
            valve_max_pa: plate.valve_max.si(),
        })
    }

    fn flames_found(&self) -> FlamesLook {
        let (flames, of) = self.furnace.every_flame();
        let lit = flames.len();
        let yellow = flames.iter().fold(0.0, |most: f64, flame| most.max(flame.yellow));
        let color = if yellow < YELLOW_SHOWS { Condition::Good } else { Condition::Bad };
        match lit {
            0 => FlamesLook::Out,
            lit if lit < of => FlamesLook::SomeLit { lit, of },
            _ => FlamesLook::AllLit { of, color },
        }
    }
}
