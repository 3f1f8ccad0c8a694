//! Dangers: gas that escapes, gas that takes fire, pressures beyond a limit, alarms.

use super::notice::Notice;
use super::person::Probe;
use super::state::Model;
use crate::parts::{Height, OtherAppliance, Port};
use crate::physics::room::{Strength, Zone};

/// Flow from an open port that counts as gas escaping, in standard m³/s (0.5 ft³/h).
const ESCAPE_M3_S: f64 = 4e-6;
/// Detector reading that counts as an alarm, in per cent of the lower limit.
const ALARM_PERCENT: f64 = 10.0;

impl Model {
    /// Tells what the last step brought about. An ignition is the last thing told.
    #[inline]
    pub(crate) fn dangers(&mut self, told: &mut impl FnMut(Notice)) {
        for &port in Port::ALL {
            let escapes = self.escapes(port);
            if escapes && self.is_fed(port) && !self.alerts.from_port[port] {
                told(Notice::GasFromPort { port });
            }
            self.alerts.from_port[port] = escapes;
            if escapes && self.furnace.ignites() {
                told(Notice::Ignition { port: Some(port) });
                return;
            }
        }
        if self.lights_gathered_gas() {
            told(Notice::Ignition { port: None });
            return;
        }
        self.notice_limits(told);
        self.notice_alarm(told);
    }

    /// Whether gas escapes from an open port.
    #[inline]
    fn escapes(&self, port: Port) -> bool {
        self.things.ports[port].is_wide_open() && self.gas.leaks().ports[port] > ESCAPE_M3_S
    }

    /// Whether gas that escapes or has gathered would take fire now.
    pub(super) fn would_ignite(&self) -> bool {
        let jet = self.furnace.ignites() && Port::ALL.iter().any(|&port| self.escapes(port));
        jet || self.lights_gathered_gas()
    }

    /// Whether gas that has gathered meets a flame or the hot igniter: in the vestibule the
    /// furnace's own, above the floor those of furnace and water heater.
    #[inline]
    fn lights_gathered_gas(&self) -> bool {
        let furnace = self.furnace.ignites();
        if furnace && self.room.vestibule_flammable() {
            return true;
        }
        let low_flame = furnace || self.appliance_burns(OtherAppliance::WaterHeater);
        low_flame && self.room.flammable(Zone::Floor)
    }

    /// Whether a port is joined to the supply, so that what escapes is more than a trapped puff.
    fn is_fed(&self, port: Port) -> bool {
        let joined = self.things.is_fed();
        match port {
            Port::Inlet => joined,
            Port::Manifold => joined && self.furnace.seats().is_some(),
        }
    }

    fn notice_limits(&mut self, told: &mut impl FnMut(Notice)) {
        let inlet_pa = self.gas.pressure_pa(Port::Inlet);
        let over = inlet_pa > self.setup.furnace.plate.valve_max.si();
        if over && !self.alerts.valve_over {
            told(Notice::ValveOverPressure { pa: inlet_pa });
        }
        self.alerts.valve_over |= over;
        let meter_over = self.meter.over_range();
        if meter_over && !self.alerts.meter_over {
            told(Notice::MeterOverRange);
        }
        self.alerts.meter_over = meter_over;
    }

    fn notice_alarm(&mut self, told: &mut impl FnMut(Notice)) {
        let detector = self.person.detector.is_some_and(|it| it.percent_lel >= ALARM_PERCENT);
        let strong = || self.smell_at(Height::Head) >= Strength::Strong;
        let alarm = self.person.is_inside() && (detector || strong());
        if alarm && !self.alerts.alarm {
            told(Notice::Alarm);
        }
        self.alerts.alarm = alarm;
        if let Some(Probe { height, .. }) = self.person.detector {
            let percent_lel = self.percent_lel_at(height);
            self.person.detector = Some(Probe { height, percent_lel });
        }
    }
}
