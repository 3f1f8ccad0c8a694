//! Tools, plugs, caps, screws, hose, meter, leak fluid.

use super::action::PlugStep;
use super::apply::{Done, plain};
use super::event::Happening;
use super::refusal::Refusal;
use crate::bench::{Bench, Brushed, Stretch};
use crate::instrument::leak_fluid::LeakFluid;
use crate::model::port::{PlugResult, plug_tool};
use crate::parts::{Firing, Fitted, Joint, LowSide, OnOff, Port, Push, Screw, Tool};
use crate::units::{PressureUnit, TICK_S};

/// Pressure from which an opened port is felt to be under gas, in pascals (0.1 in. w.c.).
const FELT_PA: f64 = 25.0;
/// Seconds that fluid must be watched to judge a joint (common practice).
const JUDGED_S: f64 = 10.0;
/// Most that one action turns a screw, in eighths.
const MOST_EIGHTHS: u16 = 16;

pub(crate) fn port_index(port: Port) -> usize {
    match port {
        Port::Inlet => 0,
        Port::Manifold => 1,
    }
}

pub(crate) fn joint_index(joint: Joint) -> usize {
    Joint::ALL.iter().position(|&one| one == joint).unwrap_or(0)
}

fn cap_index(screw: Screw) -> usize {
    match screw {
        Screw::Low => 0,
        Screw::High => 1,
        Screw::Supply => 2,
    }
}

impl Bench {
    /// The port that the hose is on.
    pub(crate) fn hose_port(&self) -> Option<(Port, Push)> {
        Port::ALL
            .iter()
            .find_map(|&port| self.things.ports[port_index(port)].hose().map(|push| (port, push)))
    }

    pub(crate) fn adapter_port(&self) -> Option<Port> {
        Port::ALL.iter().copied().find(|&port| self.things.ports[port_index(port)].has_adapter())
    }

    pub(crate) fn take(&mut self, tool: Tool) -> Done {
        if self.person.hand == Some(tool) {
            return Err(Refusal::AlreadySo);
        }
        if self.person.hand.is_some() {
            return Err(Refusal::HandFull);
        }
        match tool {
            Tool::Adapter if self.adapter_port().is_some() => Err(Refusal::AdapterElsewhere),
            Tool::Microammeter if self.kit.clipped == Fitted::On => Err(Refusal::ClippedIn),
            Tool::Hose if self.hose_port().is_some() => Err(Refusal::HoseInUse),
            Tool::HexKey
            | Tool::SlottedDriver
            | Tool::Adapter
            | Tool::Hose
            | Tool::LeakFluid
            | Tool::GasDetector
            | Tool::Thermometer
            | Tool::FlueAnalyser
            | Tool::Microammeter
            | Tool::ElectricalMeter
            | Tool::Stopwatch => {
                self.ready(tool);
                self.person.hand = Some(tool);
                plain()
            }
        }
    }

    pub(crate) fn put_down(&mut self) -> Done {
        if self.person.hand.take().is_none() {
            return Err(Refusal::AlreadySo);
        }
        self.person.detector = None;
        plain()
    }

    pub(crate) fn set_cap(&mut self, screw: Screw, to: Fitted) -> Done {
        self.need_screw(screw)?;
        self.need_tool(Tool::SlottedDriver)?;
        let cap = &mut self.things.caps[cap_index(screw)];
        if *cap == to {
            return Err(Refusal::AlreadySo);
        }
        *cap = to;
        plain()
    }

    pub(crate) fn turn(&mut self, screw: Screw, eighths: i16) -> Done {
        self.need_screw(screw)?;
        self.need_tool(Tool::SlottedDriver)?;
        if eighths == 0 || eighths.unsigned_abs() > MOST_EIGHTHS {
            return Err(Refusal::Absurd);
        }
        let i = cap_index(screw);
        if self.things.caps[i] == Fitted::On {
            return Err(Refusal::CapOn);
        }
        let turns = f64::from(eighths) / 8.0;
        let before = self.screw_set_pa(screw);
        let turned_before = self.screw_turns(screw);
        let stopped = match screw {
            Screw::Low => self.gas.springs_mut().turn(false, turns),
            Screw::High => self.gas.springs_mut().turn(true, turns),
            Screw::Supply => self.gas.turn_supply(turns),
        };
        let moved = self.screw_turns(screw) - turned_before;
        if stopped && moved.abs() < 1e-9 {
            return Err(Refusal::AtStop);
        }
        #[expect(clippy::cast_possible_truncation, reason = "at most 16 eighths")]
        let moved_eighths = (moved * 8.0).round() as i32;
        self.things.turned_eighths[i] += moved_eighths;
        #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
        let since_turn_s =
            self.things.last_turn_tick.map(|then| (self.tick - then) as f64 * TICK_S);
        self.things.last_turn_tick = Some(self.tick);
        Ok(vec![Happening::Turned {
            screw,
            eighths,
            set_pa: (before, self.screw_set_pa(screw)),
            bottomed: stopped && eighths > 0,
            firing: self.firing(),
            inlet_pa: self.gas.pressure_pa(Port::Inlet),
            since_turn_s,
        }])
    }

    pub(crate) fn screw_set_pa(&self, screw: Screw) -> f64 {
        match screw {
            Screw::Low => self.gas.springs().set_pa()[0],
            Screw::High => self.gas.springs().set_pa()[1],
            Screw::Supply => self.gas.supply_set_pa(),
        }
    }

    pub(crate) fn screw_turns(&self, screw: Screw) -> f64 {
        match screw {
            Screw::Low => self.gas.springs().turns()[0],
            Screw::High => self.gas.springs().turns()[1],
            Screw::Supply => self.gas.supply_turned(),
        }
    }

    pub(crate) fn plug(&mut self, port: Port, step: PlugStep) -> Done {
        self.need_valve()?;
        plug_tool(step, self.person.hand)?;
        let gauge_pa = self.gas.pressure_pa(port);
        let result = self.things.ports[port_index(port)].plug(step)?;
        // What the fluid showed before the joint was moved says nothing about it afterwards.
        self.things.fluid[joint_index(port.joint())] = None;
        Ok(match result {
            PlugResult::Moved => Vec::new(),
            PlugResult::Opened => opened(port, gauge_pa),
            PlugResult::CrossThreaded => vec![Happening::CrossThreaded { port }],
            PlugResult::Cracked => vec![Happening::Cracked { port }],
        })
    }

    pub(crate) fn set_adapter(&mut self, port: Port, to: Fitted) -> Done {
        self.need_valve()?;
        let wet = joint_index(port.joint());
        match to {
            Fitted::On => {
                self.need_tool(Tool::Adapter)?;
                self.things.ports[port_index(port)].fit_adapter()?;
                self.things.fluid[wet] = None;
                self.person.hand = None;
                plain()
            }
            Fitted::Off => {
                if self.person.hand.is_some() {
                    return Err(Refusal::HandFull);
                }
                let gauge_pa = self.gas.pressure_pa(port);
                self.things.ports[port_index(port)].remove_adapter()?;
                self.things.fluid[wet] = None;
                self.person.hand = Some(Tool::Adapter);
                Ok(opened(port, gauge_pa))
            }
        }
    }

    pub(crate) fn hose_on(&mut self, port: Port, push: Push) -> Done {
        self.need_valve()?;
        match self.hose_port() {
            // A hose that is on can be pushed further.
            Some((on, how)) if on == port => {
                if how == push {
                    return Err(Refusal::AlreadySo);
                }
                self.things.ports[port_index(port)].set_hose(Some(push))?;
                plain()
            }
            Some(_) => Err(Refusal::HoseInUse),
            None => {
                self.need_tool(Tool::Hose)?;
                self.things.ports[port_index(port)].set_hose(Some(push))?;
                self.person.hand = None;
                plain()
            }
        }
    }

    pub(crate) fn hose_off(&mut self) -> Done {
        self.need_valve()?;
        let Some((port, _)) = self.hose_port() else { return Err(Refusal::HoseFree) };
        if self.person.hand.is_some() {
            return Err(Refusal::HandFull);
        }
        let gauge_pa = self.gas.pressure_pa(port);
        self.things.ports[port_index(port)].set_hose(None)?;
        self.person.hand = Some(Tool::Hose);
        Ok(opened(port, gauge_pa))
    }

    pub(crate) fn meter_power(&mut self, to: OnOff) -> Done {
        if self.meter.is_on() == (to == OnOff::On) {
            return Err(Refusal::AlreadySo);
        }
        self.meter.set_on(to == OnOff::On);
        plain()
    }

    pub(crate) fn meter_zero(&mut self) -> Done {
        if !self.meter.is_on() {
            return Err(Refusal::MeterOff);
        }
        let applied_pa = self.meter.felt_pa();
        self.meter.zero();
        Ok(vec![Happening::Zeroed { applied_pa }])
    }

    pub(crate) fn meter_unit(&mut self, unit: PressureUnit) -> Done {
        if !self.meter.is_on() {
            return Err(Refusal::MeterOff);
        }
        if self.meter.unit() == unit {
            return Err(Refusal::AlreadySo);
        }
        self.meter.set_unit(unit);
        plain()
    }

    pub(crate) fn meter_low_side(&mut self, side: LowSide) -> Done {
        self.need_valve()?;
        if self.low_side == side {
            return Err(Refusal::AlreadySo);
        }
        self.low_side = side;
        plain()
    }

    pub(crate) fn brush(&mut self, joint: Joint) -> Done {
        self.need_joint(joint)?;
        self.need_tool(Tool::LeakFluid)?;
        let open = Port::ALL.iter().any(|port| {
            port.joint() == joint && self.things.ports[port_index(*port)].is_wide_open()
        });
        if open {
            return Err(Refusal::NothingToBrush);
        }
        let judged = self.judge_fluid(joint);
        let now = self.stretch(joint);
        self.things.fluid[joint_index(joint)] =
            Some(Brushed { fluid: LeakFluid::default(), now, best: None });
        Ok(judged.into_iter().collect())
    }

    pub(crate) fn wipe(&mut self, joint: Joint) -> Done {
        self.need_joint(joint)?;
        match self.judge_fluid(joint) {
            Some(judged) => Ok(vec![judged]),
            None => Err(Refusal::NotWet),
        }
    }

    /// A stretch of watching that begins now.
    pub(crate) fn stretch(&self, joint: Joint) -> Stretch {
        Stretch {
            firing: self.firing(),
            cock_deg: self.things.furnace_cock_deg,
            lowest_pa: self.joint_pa(joint),
            dwell_s: 0.0,
        }
    }

    /// Takes the fluid off a joint and says what it could show.
    pub(crate) fn judge_fluid(&mut self, joint: Joint) -> Option<Happening> {
        let judged = self.look_at_fluid(joint);
        self.things.fluid[joint_index(joint)] = None;
        judged
    }

    /// What the fluid on a joint could show so far, from the best stretch of watching.
    pub(crate) fn look_at_fluid(&self, joint: Joint) -> Option<Happening> {
        let brushed = self.things.fluid[joint_index(joint)]?;
        let it = match brushed.best {
            Some(best) if best.beats(&brushed.now) => best,
            Some(_) | None => brushed.now,
        };
        Some(Happening::FluidJudged {
            joint,
            lowest_pa: it.lowest_pa,
            dwell_s: it.dwell_s,
            firing: it.firing,
            bubbles: brushed.fluid.shows(),
            cock_deg: it.cock_deg,
        })
    }

    /// Judges what fluid is still on anywhere.
    pub(crate) fn judge_all_fluid(&mut self) {
        for &joint in Joint::ALL {
            if let Some(judged) = self.judge_fluid(joint) {
                self.tell(judged);
            }
        }
    }
}

impl Stretch {
    /// Whether this stretch proves more: first long enough to judge, then burners on, then the
    /// manual valve open, then longer.
    pub(crate) fn beats(&self, other: &Self) -> bool {
        let rank = |it: &Self| {
            let firing = match it.firing {
                Firing::Out => 0_u8,
                Firing::Low => 1,
                Firing::High => 2,
            };
            (it.dwell_s >= JUDGED_S, firing, it.cock_deg)
        };
        match rank(self).cmp(&rank(other)) {
            core::cmp::Ordering::Greater => true,
            core::cmp::Ordering::Equal => self.dwell_s > other.dwell_s,
            core::cmp::Ordering::Less => false,
        }
    }
}

fn opened(port: Port, gauge_pa: f64) -> Vec<Happening> {
    if gauge_pa > FELT_PA {
        vec![Happening::OpenedUnderGas { port, pa: gauge_pa }]
    } else {
        Vec::new()
    }
}
