//! Doing things: what can be done, what is refused, and what it changes at once.

use super::action::{Action, Ending, HandOver};
use super::event::Happening;
use super::refusal::Refusal;
use crate::bench::Bench;
use crate::parts::{Cock, Fitted, Joint, Neighbor, OnOff, Place, Screw, Subject, Tool};
use crate::senses::seen::Over;
use crate::senses::watch::Since;

/// What an action leads to beside being done.
pub(crate) type Done = Result<Vec<Happening>, Refusal>;

/// Done, with nothing more to tell.
pub(crate) fn plain() -> Done {
    Ok(Vec::new())
}

impl Bench {
    /// One action. Changes nothing when it refuses.
    pub(crate) fn act(&mut self, action: &Action) -> Done {
        match action {
            Action::Go(place) => self.go(*place),
            Action::Look(subject) => self.look(*subject),
            Action::Sniff(height) => self.sniff(*height),
            Action::Probe(height) => self.probe(*height),
            Action::Take(tool) => self.take(*tool),
            Action::PutDown => self.put_down(),
            Action::Window { window, to } => self.set_window(*window, *to),
            Action::Door { door, to } => self.set_door(*door, *to),
            Action::FurnaceSwitch(to) => self.set_furnace_switch(*to),
            Action::ThermostatMode(to) => self.set_thermostat_mode(*to),
            Action::Setpoint(half_f) => self.set_setpoint(*half_f),
            Action::StageJumper(to) => self.set_stage_jumper(*to),
            Action::ValveSwitch(to) => self.set_valve_switch(*to),
            Action::Cock { cock, degrees } => self.set_cock(*cock, *degrees),
            Action::Neighbor { neighbor, to } => self.set_neighbor(*neighbor, *to),
            Action::Cap { screw, to } => self.set_cap(*screw, *to),
            Action::Turn { screw, eighths } => self.turn(*screw, *eighths),
            Action::Plug { port, step } => self.plug(*port, *step),
            Action::Adapter { port, to } => self.set_adapter(*port, *to),
            Action::HoseOn { port, push } => self.hose_on(*port, *push),
            Action::HoseOff => self.hose_off(),
            Action::MeterPower(to) => self.meter_power(*to),
            Action::MeterZero => self.meter_zero(),
            Action::MeterUnit(unit) => self.meter_unit(*unit),
            Action::MeterLowSide(side) => self.meter_low_side(*side),
            Action::LeakFluid(joint) => self.brush(*joint),
            Action::Wipe(joint) => self.wipe(*joint),
            Action::ResetRollout => self.reset_rollout(),
            Action::Mend(repair) => self.mend(*repair),
            Action::Measure(spot) => self.measure(*spot),
            Action::Unclip => self.unclip(),
            Action::Stopwatch(press) => self.press_stopwatch(*press),
            Action::WriteMeasured(spot) => self.write_measured(*spot),
            Action::Gauge(gauge) => self.set_gauge(*gauge),
            Action::FillColumn => self.fill_column(),
            Action::Write(reading) => self.write(*reading),
            Action::WriteJoint { joint, verdict } => self.write_joint(*joint, *verdict),
            Action::Tag(to) => self.set_tag(*to),
            Action::Call(contact) => self.call(*contact),
            Action::Tell(topic) => self.tell_householder(*topic),
            Action::HandOver(hand_over) => self.hand_over(hand_over),
        }
    }

    /// What follows every action that was done.
    pub(crate) fn after_act(&mut self, action: &Action) {
        self.push_paths();
        match action {
            Action::Turn { .. } | Action::Mend(_) => self.watch.forget(Since::PressureMoved),
            Action::MeterZero | Action::MeterLowSide(_) | Action::Gauge(_) => {
                self.watch.forget(Since::MeterMoved)
            }
            Action::HoseOn { .. }
            | Action::HoseOff
            | Action::Plug { .. }
            | Action::Cap { .. }
            | Action::Cock { cock: Cock::Furnace | Cock::Supply, .. } => self.watch.unsettle(),
            _ => {}
        }
        self.let_go_of_spot();
        self.cycle.touched(action);
        if let Action::HandOver(said) = action {
            self.end(Over::HandedOver(said.ending), Some(said.clone()));
        }
    }

    /// Ends the job and tells the state it is left in.
    pub(crate) fn end(&mut self, over: Over, hand_over: Option<HandOver>) {
        self.judge_all_fluid();
        self.over = Some(over);
        let left = Box::new(self.truth());
        self.tell(Happening::Ended { hand_over, left });
    }

    /// Tells the gas side how everything that hands can move stands now.
    pub(crate) fn push_paths(&mut self) {
        let things = &self.things;
        self.gas.set_furnace_cock(things.furnace_cock_deg);
        self.gas.set_supply_cock(things.supply_cock_deg);
        for (i, neighbor) in Neighbor::ALL.iter().enumerate() {
            let on = things.neighbors[i] == OnOff::On && !self.guard_dropped(i);
            self.gas.set_neighbor(*neighbor, things.neighbor_cock_deg[i], on);
        }
        self.gas.set_caps([things.caps[0], things.caps[1]]);
        self.gas.set_ports([things.ports[0].path(), things.ports[1].path()]);
    }

    pub(crate) fn go(&mut self, place: Place) -> Done {
        if self.person.place == place {
            return Err(Refusal::AlreadySo);
        }
        self.person.place = place;
        plain()
    }

    /// Refuses unless the person stands at one of `places`.
    pub(crate) fn need_place(&self, places: &[Place]) -> Result<(), Refusal> {
        if places.contains(&self.person.place) { Ok(()) } else { Err(Refusal::NotHere) }
    }

    /// Refuses unless the tool is in hand.
    pub(crate) fn need_tool(&self, tool: Tool) -> Result<(), Refusal> {
        if self.person.hand == Some(tool) { Ok(()) } else { Err(Refusal::NeedsTool(tool)) }
    }

    /// Refuses unless the person kneels at the gas valve with the burner door off.
    pub(crate) fn need_valve(&self) -> Result<(), Refusal> {
        self.need_place(&[Place::GasValve])?;
        self.need_burner_door_off()
    }

    pub(crate) fn need_burner_door_off(&self) -> Result<(), Refusal> {
        if self.things.doors[0] == Fitted::Off { Ok(()) } else { Err(Refusal::DoorInTheWay) }
    }

    /// Refuses unless a joint is within reach.
    pub(crate) fn need_joint(&self, joint: Joint) -> Result<(), Refusal> {
        match joint {
            Joint::InletPort | Joint::ManifoldPort => self.need_valve(),
            Joint::Union | Joint::Connector => {
                self.need_place(&[Place::PlantRoom, Place::GasValve])
            }
        }
    }

    /// Refuses unless a screw is within reach.
    pub(crate) fn need_screw(&self, screw: Screw) -> Result<(), Refusal> {
        match screw {
            Screw::Low | Screw::High => self.need_valve(),
            Screw::Supply => self.need_place(&[Place::Yard]),
        }
    }

    /// Refuses unless a subject can be looked at from here.
    pub(crate) fn need_subject(&self, subject: Subject) -> Result<(), Refusal> {
        let near = [subject.place()];
        let furnace = [Place::PlantRoom, Place::GasValve];
        let at_furnace = furnace.contains(&subject.place());
        self.need_place(if at_furnace { &furnace } else { &near })?;
        match subject {
            Subject::Orifices | Subject::SpringMark | Subject::LowGasSwitch => self.need_valve(),
            Subject::Flames
            | Subject::StatusLamp
            | Subject::DraftHose
            | Subject::BoxHose
            | Subject::FlameRod => self.need_burner_door_off(),
            Subject::Filter => match self.things.doors[1] {
                Fitted::Off => Ok(()),
                Fitted::On => Err(Refusal::DoorInTheWay),
            },
            Subject::Plate
            | Subject::ConversionLabel
            | Subject::SupplyVent
            | Subject::Vent
            | Subject::AirOpening
            | Subject::Connector
            | Subject::DripLeg
            | Subject::TankGauge
            | Subject::MeterDial
            | Subject::CoAlarm
            | Subject::SupplyRegulator
            | Subject::Registers => Ok(()),
        }
    }

    /// Whether gas is plainly smelt where the person stands, or the ending asked for is at odds
    /// with where the person stands.
    pub(crate) fn ending_place(&self, ending: Ending) -> Result<(), Refusal> {
        let here = match ending {
            Ending::InService | Ending::SupplyOwnerCalled => {
                self.need_place(&[Place::Hall, Place::PlantRoom])
            }
            Ending::ShutOff => {
                self.need_place(&[Place::Hall, Place::PlantRoom, Place::Yard, Place::Away])
            }
        };
        here.map_err(|_| Refusal::HandOverInside)
    }
}
