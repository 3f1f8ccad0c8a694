//! One tick: control, valve, gas, flames, house, instruments, and what came of it.

use super::furnace::FurnaceIn;
use crate::appliance::ignition::ControlState;
use crate::bench::Bench;
use crate::hands::event::Happening;
use crate::hands::tools::{joint_index, port_index};
use crate::instrument::water_column::TUBE_CD_M2;
use crate::parts::{Firing, Gauge, Height, Joint, LowSide, Neighbor, OnOff, Opening, Place, Port};
use crate::physics::room::Zone;
use crate::senses::perceive::neighbor_index;
use crate::senses::seen::{Over, Smell};
use crate::senses::watch::Sight;
use crate::setup::Wire;
use crate::units::TICK_S;

/// Ticks between two steps of what changes slowly (house, room, tank): 5 Hz.
pub(crate) const SLOW_TICKS: u64 = 10;
/// The same in seconds.
pub(crate) const SLOW_S: f64 = 10.0 * TICK_S;
/// Flow from an open port that counts as gas escaping, in standard m³/s (0.5 ft³/h).
const ESCAPE_M3_S: f64 = 4e-6;
/// Seconds after which a flame guard has cooled and shut (a thermocouple takes up to a minute;
/// common practice).
const GUARD_S: f64 = 30.0;
/// A valve opened less than this counts as shut, in degrees.
const SHUT_DEG: i16 = 6;
/// Detector reading that counts as an alarm, in per cent of the lower limit.
const ALARM_PERCENT: f64 = 10.0;

impl Bench {
    /// One tick of 20 ms. A job that is over goes on physically, but tells no more.
    pub fn step(&mut self) {
        self.drive_furnace(TICK_S);
        let report = self.gas.step(TICK_S);
        if !report.converged {
            self.tell(Happening::NotConverged);
        }
        if self.tick.is_multiple_of(SLOW_TICKS) {
            self.step_slow(SLOW_S);
        }
        self.step_meter();
        self.step_kit();
        self.step_fluid();
        self.notice();
        self.tick += 1;
    }

    pub(crate) fn drive_furnace(&mut self, dt_s: f64) {
        let input = self.furnace_in();
        let before = (self.furnace.control_state(), self.furnace.firing());
        self.furnace.step_fire(dt_s, &input, &self.setup);
        self.furnace.step_air(dt_s, input.return_air_k, &self.setup);
        self.command_gas(before);
    }

    /// What the furnace gets at a tick.
    pub(crate) fn furnace_in(&self) -> FurnaceIn {
        let (first, second) = self.thermostat_calls();
        let things = &self.things;
        let powered = self.powered();
        FurnaceIn {
            powered,
            first,
            second: second || (first && things.stage_jumper == crate::parts::Fitted::On),
            valve_switch: things.valve_switch == OnOff::On,
            burner_flow_m3_s: self.gas.burner_gas(),
            inlet_pa: self.gas.pressure_pa(Port::Inlet),
            return_air_k: self.house.inside_k(),
        }
    }

    /// Lets the furnace work the gas side, and tells what changed since control and burners stood
    /// as before.
    pub(crate) fn command_gas(&mut self, before: (ControlState, Firing)) {
        let (control_before, firing_before) = before;
        self.gas.drive_valve(self.furnace.seats());
        self.gas.set_box_suction(self.furnace.box_suction_pa());
        let control = self.furnace.control_state();
        if control != control_before {
            self.tell(Happening::Control { from: control_before, to: control });
            if control == ControlState::InducerStart {
                self.notice_call_on_open_port();
            }
            if self.cycle.control(control_before, control) {
                self.tell(Happening::Cycle);
            }
        }
        let firing = self.furnace.firing();
        if firing != firing_before {
            self.tell(Happening::Fired { from: firing_before, to: firing });
        }
    }

    /// Whether the furnace has power: its switch, and the blower door's.
    pub(crate) fn powered(&self) -> bool {
        let door = self.things.doors[1] == crate::parts::Fitted::On;
        self.things.furnace_switch == OnOff::On && door
    }

    pub(crate) fn notice_call_on_open_port(&mut self) {
        let things = &self.things;
        let shut = things.furnace_cock_deg < SHUT_DEG || things.supply_cock_deg < SHUT_DEG;
        let barred = shut || things.valve_switch == OnOff::Off;
        let open = Port::ALL.iter().find(|&&port| things.ports[port_index(port)].is_wide_open());
        if let Some(&port) = open {
            self.tell(Happening::CalledOnOpenPort { port, barred });
        }
    }

    /// What the thermostat calls for: first and second stage.
    pub(crate) fn thermostat_calls(&self) -> (bool, bool) {
        let wires = &self.setup.condition.control;
        let (first, second) = match (self.things.heating, wires.thermostat) {
            (OnOff::On, Wire::Whole) => self.thermostat.calls(),
            (OnOff::On, Wire::Open) | (OnOff::Off, _) => (false, false),
        };
        (first, second && wires.second_call == Wire::Whole)
    }

    pub(crate) fn step_slow(&mut self, dt_s: f64) {
        let outside_k = self.setup.outside_k;
        self.gas.step_slow(dt_s, outside_k);
        self.house.step(dt_s, self.furnace.heat_to_air_w(), outside_k);
        let setpoint_k = crate::units::k_from_f(f64::from(self.things.setpoint_half_f) / 2.0);
        if self.things.heating == OnOff::On {
            self.thermostat.step(self.house.inside_k(), setpoint_k);
        } else {
            self.thermostat.reset();
        }
        self.step_guards(dt_s);
        let escaping = self.gas.escaping() + self.unburned_into_room();
        let open = self.things.windows[0] == Opening::Open;
        self.room.step(dt_s, escaping, open);
        self.breathe(dt_s);
    }

    /// Gas from burners that are not lit, while the inducer does not carry it off, in standard m³/s.
    pub(crate) fn unburned_into_room(&self) -> f64 {
        if self.furnace.input_w() > 0.0 {
            return 0.0;
        }
        self.gas.burner_gas().max(0.0) * self.furnace.spills()
    }

    /// A neighbour's flame guard shuts its gas when the flame has gone out; whoever wants it
    /// burning turns it off and lights it again.
    pub(crate) fn step_guards(&mut self, dt_s: f64) {
        for &neighbor in Neighbor::ALL {
            let i = neighbor_index(neighbor);
            let starved = self.things.neighbors[i] == OnOff::On && !self.neighbor_burns(neighbor);
            let before = self.guard_dropped(i);
            self.things.starved_s[i] =
                if before || starved { self.things.starved_s[i] + dt_s } else { 0.0 };
            if self.guard_dropped(i) != before {
                self.push_paths();
            }
        }
    }

    /// Whether a neighbour's flame guard has shut its gas.
    pub(crate) fn guard_dropped(&self, neighbor: usize) -> bool {
        self.things.starved_s[neighbor] >= GUARD_S
    }

    pub(crate) fn step_meter(&mut self) {
        let low_pa = match self.low_side {
            LowSide::Air => 0.0,
            LowSide::BurnerBox => self.gas.box_pa(),
        };
        let difference_pa = self.gas.hose_pa() - low_pa;
        let at_manometer_pa = match self.kit.gauge {
            Gauge::Digital => difference_pa,
            Gauge::WaterColumn | Gauge::SpringGauge => 0.0,
        };
        self.meter.step(self.tick, TICK_S, at_manometer_pa);
        if self.kit.gauges_used {
            self.step_gauges(difference_pa);
        }
        let (shown_pa, error_pa) = self.reads();
        let sight = Sight { shown_pa, true_pa: difference_pa, error_pa, tick: self.tick };
        let at = self.metered_port().map(|port| (port, self.draw()));
        if let Some(hold) = self.watch.step(at, sight) {
            self.tell(Happening::Held { seconds: hold.seconds, rise_pa: hold.rise_pa });
        }
    }

    /// Water column and spring gauge: the one that the hose goes to feels it, the other the air.
    pub(crate) fn step_gauges(&mut self, difference_pa: f64) {
        let gauge = self.kit.gauge;
        let felt_pa = |it: Gauge| if it == gauge { difference_pa } else { 0.0 };
        if self.kit.column.step(TICK_S, felt_pa(Gauge::WaterColumn)) {
            self.tell(Happening::ColumnBlownOut);
        }
        if self.kit.spring.step(TICK_S, felt_pa(Gauge::SpringGauge)) {
            self.tell(Happening::SpringGaugeStrained);
        }
        // A tube without its water is an open end.
        let open = gauge == Gauge::WaterColumn && self.kit.column.is_blown();
        if self.gas.set_hose_open_m2(if open { TUBE_CD_M2 } else { 0.0 }) {
            self.push_paths();
        }
    }

    /// What the instrument at the hose reads, and what it reads too high, in pascals.
    pub(crate) fn reads(&self) -> (f64, f64) {
        match self.kit.gauge {
            Gauge::Digital => (self.meter.shown_pa(), self.meter.error_pa()),
            Gauge::WaterColumn => (self.kit.column.shown_pa().unwrap_or(0.0), 0.0),
            Gauge::SpringGauge => {
                (self.kit.spring.shown_pa().unwrap_or(0.0), self.kit.spring.error_pa())
            }
        }
    }

    pub(crate) fn step_fluid(&mut self) {
        if self.things.fluid.iter().all(Option::is_none) {
            return;
        }
        let leaks = self.gas.leaks();
        for &joint in Joint::ALL {
            let leak = match joint {
                Joint::InletPort => leaks[0] + self.hose_leak(Port::Inlet, leaks[2]),
                Joint::ManifoldPort => leaks[1] + self.hose_leak(Port::Manifold, leaks[2]),
                Joint::Union => 0.0,
                Joint::Connector => self.gas.connector_leak().unwrap_or(0.0),
            };
            let fresh = self.stretch(joint);
            let Some(brushed) = &mut self.things.fluid[joint_index(joint)] else { continue };
            brushed.fluid.step(TICK_S, leak);
            let same = brushed.now.firing == fresh.firing && brushed.now.cock_deg == fresh.cock_deg;
            if same {
                brushed.now.lowest_pa = brushed.now.lowest_pa.min(fresh.lowest_pa);
                brushed.now.dwell_s += TICK_S;
            } else {
                if brushed.best.is_none_or(|best| brushed.now.beats(&best)) {
                    brushed.best = Some(brushed.now);
                }
                brushed.now = fresh;
            }
        }
    }

    /// What leaks at the hose's end on a port's barb.
    pub(crate) fn hose_leak(&self, port: Port, hose_end_m3_s: f64) -> f64 {
        if self.things.ports[port_index(port)].hose().is_some() { hose_end_m3_s } else { 0.0 }
    }

    /// What a step brought about that has to be told.
    pub(crate) fn notice(&mut self) {
        if self.over.is_some() {
            return;
        }
        for port in [Port::Inlet, Port::Manifold] {
            let i = port_index(port);
            let escapes = self.escapes(port);
            if escapes && self.is_fed(port) && !self.alerts.from_port[i] {
                self.tell(Happening::GasFromPort { port });
            }
            self.alerts.from_port[i] = escapes;
            if escapes && self.furnace.ignites() {
                self.tell(Happening::Ignition { port: Some(port) });
                self.end(Over::Ignition, None);
                return;
            }
        }
        if self.lights_gathered_gas() {
            self.tell(Happening::Ignition { port: None });
            self.end(Over::Ignition, None);
            return;
        }
        self.notice_limits();
        self.notice_alarm();
    }

    /// Whether gas escapes from an open port.
    pub(crate) fn escapes(&self, port: Port) -> bool {
        let i = port_index(port);
        self.things.ports[i].is_wide_open() && self.gas.leaks()[i] > ESCAPE_M3_S
    }

    /// Whether gas that escapes or has gathered would take fire now.
    pub(crate) fn would_ignite(&self) -> bool {
        let jet = self.furnace.ignites() && Port::ALL.iter().any(|&port| self.escapes(port));
        jet || self.lights_gathered_gas()
    }

    /// Whether gas that has gathered meets a flame or the hot igniter: in the vestibule the
    /// furnace's own, above the floor those of furnace and water heater.
    pub(crate) fn lights_gathered_gas(&self) -> bool {
        let furnace = self.furnace.ignites();
        if furnace && self.room.vestibule_flammable() {
            return true;
        }
        let low_flame = furnace || self.neighbor_burns(Neighbor::WaterHeater);
        low_flame && self.room.flammable(Zone::Floor)
    }

    /// Whether a port is joined to the supply, so that what escapes is more than a trapped puff.
    pub(crate) fn is_fed(&self, port: Port) -> bool {
        let joined =
            self.things.furnace_cock_deg >= SHUT_DEG && self.things.supply_cock_deg >= SHUT_DEG;
        match port {
            Port::Inlet => joined,
            Port::Manifold => joined && self.furnace.seats() != super::gas::ValveSeats::Closed,
        }
    }

    pub(crate) fn notice_limits(&mut self) {
        let inlet_pa = self.gas.pressure_pa(Port::Inlet);
        let over = inlet_pa > self.setup.furnace.plate.valve_max.si();
        if over && !self.alerts.valve_over {
            self.tell(Happening::ValveOverPressure { pa: inlet_pa });
        }
        self.alerts.valve_over |= over;
        let meter_over = self.meter.over_range();
        if meter_over && !self.alerts.meter_over {
            self.tell(Happening::MeterOverRange);
        }
        self.alerts.meter_over = meter_over;
    }

    pub(crate) fn notice_alarm(&mut self) {
        let detector = self.person.detector.is_some_and(|seen| seen.percent_lel >= ALARM_PERCENT);
        let inside = matches!(self.person.place, Place::PlantRoom | Place::GasValve | Place::Hall);
        let alarm = inside && (detector || self.smell_at(Height::Head) >= Smell::Strong);
        if alarm && !self.alerts.alarm {
            self.tell(Happening::Alarm);
        }
        self.alerts.alarm = alarm;
        if let Some(seen) = self.person.detector {
            let percent_lel = self.percent_lel_at(seen.height);
            self.person.detector = Some(crate::senses::seen::DetectorSeen { percent_lel, ..seen });
        }
    }
}
