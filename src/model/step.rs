//! One tick: control, valve, gas, flames, house, instruments.

use super::brushed::Stretch;
use super::furnace::FurnaceIn;
use super::notice::Notice;
use super::state::Model;
use crate::appliance::ignition::ControlState;
use crate::parts::{
    Fitted, HandValve, Joint, Level, OnOff, Opening, OtherAppliance, Port, Window, is_staged,
};
use crate::setup::Wire;
use crate::units::TICK_S;

/// Ticks between two steps of what changes slowly (house, room, tank): 5 Hz.
pub(super) const SLOW_TICKS: u64 = 10;
/// The same in seconds.
pub(super) const SLOW_S: f64 = 10.0 * TICK_S;
/// Seconds after which a flame guard has cooled and shut (a thermocouple takes up to a minute;
/// common practice).
const GUARD_S: f64 = 30.0;
/// Share of its rate at which another appliance burns.
const BURNING_SHARE: f64 = 0.3;

impl Model {
    /// One tick of 20 ms, but for what is told of dangers ([`Model::dangers`]) and the count of
    /// ticks. Returns what the instrument at the hose feels between its two sides, in pascals.
    #[inline]
    pub(crate) fn step(&mut self, told: &mut impl FnMut(Notice)) -> f64 {
        self.drive_furnace(TICK_S, told);
        let report = self.gas.step(TICK_S);
        if !report.converged {
            told(Notice::NotConverged);
        }
        if self.tick.is_multiple_of(SLOW_TICKS) {
            self.step_slow(SLOW_S);
        }
        let difference_pa = self.step_meter(told);
        self.step_kit();
        self.step_fluid();
        difference_pa
    }

    fn drive_furnace(&mut self, dt_s: f64, told: &mut impl FnMut(Notice)) {
        let input = self.furnace_in();
        let before = (self.furnace.control_state(), self.furnace.firing());
        self.furnace.step_fire(dt_s, &input, &self.setup);
        self.furnace.step_air(dt_s, input.return_air_k, &self.setup);
        self.command_gas(before, told);
    }

    /// What the furnace gets at a tick.
    pub(super) fn furnace_in(&self) -> FurnaceIn {
        let (w1, w2) = self.thermostat_calls();
        let things = &self.things;
        let jumped = things.stage_jumper == Fitted::On;
        FurnaceIn {
            powered: self.powered(),
            call: self.level_called((w1, w2 || jumped)),
            valve_switch: things.valve_switch == OnOff::On,
            burner_flow_m3_s: self.gas.burner_gas(),
            inlet_pa: self.gas.pressure_pa(Port::Inlet),
            return_air_k: self.house.inside_k(),
        }
    }

    /// Lets the furnace work the gas side, and tells what changed since control and burners stood
    /// as before.
    pub(super) fn command_gas(
        &mut self,
        before: (ControlState, Option<Level>),
        told: &mut impl FnMut(Notice),
    ) {
        let (control_before, firing_before) = before;
        self.gas.drive_valve(self.furnace.seats());
        self.gas.set_box_suction(self.furnace.box_suction_pa());
        let control = self.furnace.control_state();
        if control != control_before {
            told(Notice::Control { from: control_before, to: control });
            if control == ControlState::InducerStart {
                self.notice_call_on_open_port(told);
            }
        }
        let firing = self.furnace.firing();
        if firing != firing_before {
            told(Notice::Fired { from: firing_before, to: firing });
        }
    }

    fn notice_call_on_open_port(&self, told: &mut impl FnMut(Notice)) {
        let things = &self.things;
        let barred = things.is_shut_off() || things.valve_switch == OnOff::Off;
        if let Some((port, _)) = things.ports.iter().find(|(_, state)| state.is_wide_open()) {
            told(Notice::CalledOnOpenPort { port, barred });
        }
    }

    /// What the thermostat puts on W1 and W2.
    pub(crate) fn thermostat_calls(&self) -> (bool, bool) {
        let wires = &self.setup.condition.control;
        let (first, second) = match (self.things.heating, wires.thermostat) {
            (OnOff::On, Wire::Whole) => self.thermostat.calls(),
            (OnOff::On, Wire::Open) | (OnOff::Off, _) => (false, false),
        };
        let wired = is_staged(self.levels()) && wires.second_call == Wire::Whole;
        (first, second && wired)
    }

    /// The furnace's firing levels, the weakest first.
    pub(crate) fn levels(&self) -> &'static [Level] {
        self.setup.furnace.plate.input.list()
    }

    /// The level that contacts W1 and W2 call; W2 alone calls nothing.
    fn level_called(&self, (w1, w2): (bool, bool)) -> Option<Level> {
        let levels = self.levels();
        let called = if w2 { levels.last() } else { levels.first() };
        called.copied().filter(|_| w1)
    }

    /// The level that the thermostat's wires call for.
    pub(crate) fn thermostat_call(&self) -> Option<Level> {
        self.level_called(self.thermostat_calls())
    }

    pub(super) fn step_slow(&mut self, dt_s: f64) {
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
        let open = self.things.windows[Window::PlantRoom] == Opening::Open;
        self.room.step(dt_s, escaping, open);
        self.breathe(dt_s);
    }

    /// Gas from burners that are not lit, while the inducer does not carry it off, in standard m³/s.
    fn unburned_into_room(&self) -> f64 {
        if self.furnace.input_w() > 0.0 {
            return 0.0;
        }
        self.gas.burner_gas().max(0.0) * self.furnace.spills()
    }

    /// The flame guard of another appliance shuts its gas when the flame has gone out, until
    /// somebody turns the appliance off and lights it again.
    fn step_guards(&mut self, dt_s: f64) {
        for &appliance in OtherAppliance::ALL {
            let on = self.things.other_appliances[appliance] == OnOff::On;
            let starved = on && !self.appliance_burns(appliance);
            let before = self.guard_dropped(appliance);
            let starved_s = &mut self.things.starved_s[appliance];
            *starved_s = if before || starved { *starved_s + dt_s } else { 0.0 };
            if self.guard_dropped(appliance) != before {
                self.push_paths();
            }
        }
    }

    /// Whether the flame guard of another appliance has shut its gas.
    pub(crate) fn guard_dropped(&self, appliance: OtherAppliance) -> bool {
        self.things.starved_s[appliance] >= GUARD_S
    }

    /// Whether another appliance burns.
    #[inline]
    pub(crate) fn appliance_burns(&self, appliance: OtherAppliance) -> bool {
        let rate =
            self.setup.other_appliances[appliance].input_w / self.setup.gas.heating_value_j_m3;
        self.gas.appliance_flow(appliance) > BURNING_SHARE * rate
    }

    fn step_fluid(&mut self) {
        if self.things.fluid.values().all(Option::is_none) {
            return;
        }
        let leaks = self.gas.leaks();
        for &joint in Joint::ALL {
            let at_port = |port: Port| leaks.ports[port] + self.hose_leak(port, leaks.hose);
            let leak = match joint {
                Joint::InletPort => at_port(Port::Inlet),
                Joint::ManifoldPort => at_port(Port::Manifold),
                // Pipes and regulators are joined tight: what lets gas out there are holes with names of
                // their own.
                Joint::Union
                | Joint::SupplyRegulator
                | Joint::FirstRegulator
                | Joint::TankValve
                | Joint::Riser => 0.0,
                Joint::Connector => self.gas.connector_leak().unwrap_or(0.0),
            };
            let fresh = self.stretch(joint);
            if let Some(brushed) = &mut self.things.fluid[joint] {
                brushed.step(leak, fresh);
            }
        }
    }

    /// What leaks at the hose's end on a port's barb.
    fn hose_leak(&self, port: Port, hose_end_m3_s: f64) -> f64 {
        if self.things.ports[port].hose().is_some() { hose_end_m3_s } else { 0.0 }
    }

    /// A stretch of watching that begins now.
    pub(crate) fn stretch(&self, joint: Joint) -> Stretch {
        Stretch {
            firing: self.firing(),
            manual_valve: self.things.handles[HandValve::Furnace],
            lowest_pa: self.joint_pa(joint),
            dwell_s: 0.0,
        }
    }

    /// Pressure behind a joint, in pascals.
    fn joint_pa(&self, joint: Joint) -> f64 {
        match joint {
            Joint::InletPort | Joint::Connector | Joint::Union => self.gas.pressure_pa(Port::Inlet),
            Joint::ManifoldPort => self.gas.pressure_pa(Port::Manifold),
            Joint::SupplyRegulator => self.gas.supply_pa(),
            Joint::FirstRegulator | Joint::TankValve => self.gas.upstream_pa(),
            Joint::Riser => self.gas.tee_pa(),
        }
    }

    /// Tells the gas side how everything that hands can move stands now.
    pub(crate) fn push_paths(&mut self) {
        let things = &self.things;
        self.gas.set_furnace_hand_valve(things.handles[HandValve::Furnace]);
        self.gas.set_supply_hand_valve(things.handles[HandValve::Supply]);
        for &appliance in OtherAppliance::ALL {
            let on =
                things.other_appliances[appliance] == OnOff::On && !self.guard_dropped(appliance);
            self.gas.set_appliance(appliance, things.handles[appliance.hand_valve()], on);
        }
        self.gas.set_caps(things.caps);
        self.gas.set_ports(things.ports.map(|_, port| port.path()));
    }
}
