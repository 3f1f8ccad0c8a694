//! Doing things: one action, what is refused, and what it changes at once.

use super::action::Action;
use super::done::{Done, plain};
use super::job::Job;
use super::refusal::Refusal;
use super::{
    finding, fluid, look, measure, mend, meter, ports, reporting, screws, switches, tools,
};
use crate::model::Model;
use crate::parts::{Place, Tool};
use crate::senses::meter_history::{MeterHistory, Spell};

/// What hands work on.
pub(crate) struct Hands<'a> {
    pub(crate) model: &'a mut Model,
    pub(crate) history: &'a mut MeterHistory,
    pub(crate) job: &'a mut Job,
}

impl Hands<'_> {
    /// One action, and what follows every one that was done. Changes nothing when it refuses.
    pub(crate) fn act(&mut self, action: &Action) -> Done {
        let Self { model, history, job } = self;
        match action {
            Action::Go(place) => go(model, *place),
            Action::Look(subject) => look::look(model, job, *subject),
            Action::Sniff(height) => reporting::sniff(model, *height),
            Action::Probe(height) => reporting::probe(model, *height),
            Action::Take(tool) => tools::take(model, *tool),
            Action::PutDown => tools::put_down(model),
            Action::Window { window, to } => switches::set_window(model, *window, *to),
            Action::Door { door, to } => switches::set_door(model, *door, *to),
            Action::FurnaceSwitch(to) => switches::set_furnace_switch(model, *to),
            Action::ThermostatMode(to) => switches::set_thermostat_mode(model, *to),
            Action::Setpoint(half_f) => switches::set_setpoint(model, *half_f),
            Action::StageJumper(to) => switches::set_stage_jumper(model, *to),
            Action::ValveSwitch(to) => switches::set_valve_switch(model, *to),
            Action::HandValve { hand_valve, degrees } => {
                switches::set_hand_valve(model, *hand_valve, *degrees)
            }
            Action::OtherAppliance { appliance, to } => {
                switches::set_appliance(model, *appliance, *to)
            }
            Action::Cap { screw, to } => screws::set_cap(model, *screw, *to),
            Action::Turn { screw, eighths } => screws::turn(model, *screw, *eighths),
            Action::Plug { port, step } => ports::plug(model, *port, *step),
            Action::Adapter { port, to } => ports::set_adapter(model, *port, *to),
            Action::HoseOn { port, push } => ports::hose_on(model, *port, *push),
            Action::HoseOff => ports::hose_off(model),
            Action::MeterPower(to) => meter::meter_power(model, *to),
            Action::MeterZero => meter::meter_zero(model),
            Action::MeterUnit(unit) => meter::meter_unit(model, *unit),
            Action::MeterLowSide(side) => meter::meter_low_side(model, *side),
            Action::LeakFluid(joint) => fluid::brush(model, *joint),
            Action::Wipe(joint) => fluid::wipe(model, *joint),
            Action::ResetRollout => switches::reset_rollout(model),
            Action::Mend(repair) => mend::mend(model, job, *repair),
            Action::Measure(spot) => measure::measure(model, *spot),
            Action::Unclip => measure::unclip(model),
            Action::Stopwatch(press) => measure::press_stopwatch(model, *press),
            Action::WriteMeasured(spot) => measure::write_measured(model, job, *spot),
            Action::Gauge(gauge) => measure::set_gauge(model, *gauge),
            Action::FillColumn => measure::fill_column(model),
            Action::Write(reading) => reporting::write(model, history, job, *reading),
            Action::WriteJoint { joint, verdict } => {
                reporting::write_joint(model, job, *joint, *verdict)
            }
            Action::WritePiping(verdict) => reporting::write_piping(history, job, *verdict),
            Action::WriteFinding(it) => finding::write(job, it),
            Action::StrikeFinding(cause) => finding::strike(job, *cause),
            Action::Tag(to) => switches::set_tag(model, *to),
            Action::Call(contact) => reporting::call(model, *contact),
            Action::Tell(topic) => reporting::tell_householder(model, *topic),
            Action::HandOver(hand_over) => reporting::hand_over(model, hand_over),
        }
    }

    /// What follows every action that was done. Returns the spell of reading that it ends.
    pub(crate) fn after(&mut self, action: &Action) -> Option<Spell> {
        self.model.push_paths();
        measure::let_go_of_spot(self.model);
        self.job.cycle.touched(action);
        action.ends_spell().then(|| self.history.begin_anew()).flatten()
    }
}

fn go(model: &mut Model, place: Place) -> Done {
    if model.person.place == place {
        return Err(Refusal::AlreadySo);
    }
    model.person.place = place;
    // Its end reaches no further than the manometer that hangs.
    if model.person.hand == Some(Tool::Hose) && !model.is_meter_in_sight() {
        model.person.hand = None;
    }
    plain()
}
