//! What was seen and done, as far as the next step needs it where one no longer stands.

use super::awaited::Awaited;
use super::heard::heard_here;
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, PlugStep, StartStop, Topic};
use crate::parts::{
    Fitted, Height, Joint, JointVerdict, Level, OnOff, Opening, Port, Push, Spot, Subject,
};
use crate::physics::valve::HandleAngle;
use crate::senses::seen::{Burning, Display, FurnaceSeen, HallSeen, Seen};
use crate::units::TICKS_PER_S;

/// How long a furnace may take to follow a call, in seconds: longer than the fan needs to prove its
/// draft on high (common practice).
const FOLLOWS_S: u64 = 120;
/// How long what was seen of the thermostat is taken to hold, in seconds.
const KNOWN_S: u64 = 300;

/// What is known of a call.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Called {
    /// Nothing, or something else was called for.
    NotKnown,
    /// The furnace may still be on its way.
    JustNow,
    /// It should have followed.
    LongSince,
}

/// Things as they were found, to be put back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Found {
    /// The setpoint, in half degrees Fahrenheit.
    pub setpoint_half_f: Option<i16>,
    /// The thermostat's heat switch.
    pub heat: Option<OnOff>,
    /// Whether the water heater was turned on.
    pub water_heater: Option<OnOff>,
    /// Whether the range was turned on.
    pub range: Option<OnOff>,
}

/// What stood at the furnace when it was seen last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct AtFurnace {
    pub jumper: Fitted,
    pub power: OnOff,
    pub manual_valve: HandleAngle,
    pub burner_door: Fitted,
    pub blower_door: Fitted,
    pub window: Opening,
    pub tag: Fitted,
    pub water_heater: Burning,
}

/// What stood in the hall when it was seen last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct InHall {
    pub heat: OnOff,
    pub setpoint_half_f: i16,
    pub room_half_f: i16,
    pub range: Burning,
}

/// Facts about one port.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct AtPort {
    /// When its plug was nipped up or broken loose by this person, in ticks.
    pub nipped: bool,
    /// Whether this person started its plug and has not snugged it yet.
    pub started: bool,
    pub loosened_tick: Option<u64>,
    /// Whether its joint was written tight since it was disturbed.
    pub proven: bool,
}

/// What is remembered. Empty after an attempt was resumed: the goals then lead one to look again.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Memory {
    /// Tick of the last look.
    pub(super) tick: u64,
    /// What the supply in the yard gives: a tank was seen there, or a meter.
    pub supply: Option<Fuel>,
    /// Things as they were found.
    pub found: Found,
    pub(super) furnace: Option<AtFurnace>,
    pub(super) hall: Option<InHall>,
    pub(super) valve_switch: Option<OnOff>,
    pub(super) supply_valve: Option<HandleAngle>,
    /// What the thermostat called for when it was seen last, since when, and when that was, in ticks.
    call: Option<(Option<Level>, u64, u64)>,
    pub(super) inlet: AtPort,
    pub(super) manifold: AtPort,
    /// Ticks at which a hand valve was moved last, the manometer switched on, its zero pressed
    /// and its hose moved.
    pub(super) valve_tick: u64,
    pub(super) meter_on_tick: Option<u64>,
    pub(super) zeroed_tick: Option<u64>,
    pub(super) hose_tick: u64,
    /// The port that the hose was on when it was seen last, and how far.
    hose: Option<(Port, Push)>,
    /// Actions that changed nothing when they were done last: they are not repeated.
    pub(super) left_out: Vec<Action>,
    /// What was waited for long enough, in vain.
    pub(super) waited_out: Vec<Awaited>,
    /// Whether the manometer has stood still for long enough since it was switched on.
    pub(super) meter_warm: bool,
    /// The number from which the manometer has not moved, in whole pascals, and since which tick.
    pub(super) meter_rest: Option<(i32, u64)>,
    /// The heights at which the air was smelt since the person came here.
    pub(super) smelt: Vec<Height>,
    /// What was looked at closely since the person came here.
    pub(super) looked: Vec<Subject>,
    /// What the householder was told.
    pub(super) told: Vec<Topic>,
    /// The joint that was brushed with leak fluid last, and when, in ticks.
    pub(super) brushed: Option<(Joint, u64)>,
    /// The level that burns, as heard last, and since when, in ticks.
    burns: Option<(Level, u64)>,
    /// What was written from instruments since the last repair, with the level that burned.
    written: Vec<(Spot, Option<Level>)>,
    /// The spot that an instrument is held to, and since when, in ticks.
    pub(super) held: Option<(Spot, u64)>,
    /// When the stopwatch was started, in ticks, and the dial's turns then.
    pub(super) timed_from: Option<(u64, f64)>,
    /// Turns of the meter's dial as seen now.
    dial_turns: Option<f64>,
    /// The joint whose check was written last, until it is disturbed or brushed again.
    pub(super) checked: Option<Joint>,
    /// The manometer's number as it was seen first since a hand valve or its hose was moved, in whole
    /// pascals.
    pub(super) number_since: Option<i32>,
    /// The same as it is seen now.
    pub(super) number_now: Option<i32>,
    /// Whether the leak check of the piping was written since the piping was opened last.
    pub(super) piping_checked: bool,
}

impl Memory {
    /// Takes in what is seen now.
    pub fn notice(&mut self, seen: &Seen) {
        self.tick = seen.tick;
        if let Some(hall) = &seen.hall {
            self.notice_hall(hall, seen.tick);
        }
        if let Some(furnace) = &seen.furnace {
            self.notice_furnace(furnace);
        }
        if let Some(yard) = &seen.yard {
            let tank = yard.tank_percent.map(|_| Fuel::Propane);
            self.supply = tank.or(yard.dial_turns.map(|_| Fuel::Natural)).or(self.supply);
            self.supply_valve = Some(yard.supply_valve);
        }
        self.dial_turns = seen.yard.as_ref().and_then(|yard| yard.dial_turns);
        if let Some(level) = heard_here(seen) {
            let before = self.burns.filter(|(one, _)| Some(*one) == level);
            self.burns = before.or(level.map(|level| (level, seen.tick)));
        }
        self.notice_meter(seen);
    }

    fn notice_hall(&mut self, hall: &HallSeen, tick: u64) {
        self.hall = Some(InHall {
            heat: hall.mode,
            setpoint_half_f: hall.setpoint_half_f,
            room_half_f: hall.room_half_f,
            range: hall.range.burning,
        });
        self.found.setpoint_half_f.get_or_insert(hall.setpoint_half_f);
        self.found.heat.get_or_insert(hall.mode);
        self.found.range.get_or_insert(turned(hall.range.burning));
        let since = match self.call {
            Some((call, since, _)) if call == hall.call => since,
            Some(_) | None => tick,
        };
        self.call = Some((hall.call, since, tick));
    }

    fn notice_furnace(&mut self, furnace: &FurnaceSeen) {
        self.furnace = Some(AtFurnace {
            jumper: furnace.stage_jumper,
            power: furnace.switch,
            manual_valve: furnace.manual_valve,
            burner_door: furnace.burner_door,
            blower_door: furnace.blower_door,
            window: furnace.window,
            tag: furnace.tag,
            water_heater: furnace.water_heater.burning,
        });
        self.found.water_heater.get_or_insert(turned(furnace.water_heater.burning));
        if let Some(burners) = &furnace.burners {
            self.valve_switch = Some(burners.valve_switch);
        }
    }

    /// Out of sight, nothing is known of it but what was known before.
    fn notice_meter(&mut self, seen: &Seen) {
        let Some(meter) = seen.meter() else {
            self.meter_rest = None;
            return;
        };
        let pa = match meter.display {
            Display::Dark => {
                (self.meter_on_tick, self.zeroed_tick) = (None, None);
                self.meter_warm = false;
                None
            }
            Display::OverRange => None,
            Display::Number(shown) => Some(whole(shown.pa())),
        };
        if meter.display != Display::Dark {
            self.meter_on_tick.get_or_insert(seen.tick);
        }
        self.meter_rest = match (pa, self.meter_rest) {
            (Some(pa), Some((at, since))) if (pa - at).abs() <= RESTS_PA => Some((at, since)),
            (Some(pa), _) => Some((pa, seen.tick)),
            (None, _) => None,
        };
        self.meter_warm |= self.meter_rests_s() >= WARM_S;
        (self.number_since, self.number_now) = (self.number_since.or(pa), pa);
        self.hose = meter.hose;
    }

    /// A goal is begun or reached: nothing is left out any more.
    pub(super) fn start_anew(&mut self) {
        self.left_out.clear();
        self.waited_out.clear();
    }

    /// Whether an action is taken as done though nothing came of it.
    pub(super) fn leaves_out(&self, action: &Action) -> bool {
        self.left_out.contains(action)
    }

    /// Whether such a call stood when the thermostat was seen last.
    pub(super) fn is_called(&self, such: impl Fn(Option<Level>) -> bool) -> bool {
        self.call.is_some_and(|(call, _, _)| such(call))
    }

    /// Takes in what is being done.
    pub fn did(&mut self, action: &Action) {
        match action {
            Action::Go(_) => {
                self.smelt.clear();
                self.looked.clear();
                (self.held, self.timed_from) = (None, None);
            }
            Action::Look(subject) => self.looked.push(*subject),
            Action::Sniff(height) => self.smelt.push(*height),
            Action::HandValve { .. } => {
                (self.valve_tick, self.number_since) = (self.tick, None);
            }
            Action::MeterZero => self.zeroed_tick = self.hose.is_none().then_some(self.tick),
            Action::HoseOn { .. } | Action::HoseOff => self.moved_hose(action),
            Action::Plug { port, step } => self.plug(*port, *step),
            Action::Adapter { port, .. } => {
                *self.port_mut(*port) = AtPort::default();
                self.disturb(port.joint());
            }
            Action::LeakFluid(joint) => {
                (self.checked, self.brushed) = (None, Some((*joint, self.tick)));
            }
            Action::Wipe(_) => self.brushed = None,
            Action::WriteJoint { joint, verdict } => {
                self.checked = Some(*joint);
                if let Some(port) = port_of(*joint) {
                    self.port_mut(port).proven = *verdict == JointVerdict::Tight;
                }
            }
            Action::Tell(topic) => self.told.push(*topic),
            Action::WritePiping(_) => self.piping_checked = true,
            Action::Mend(repair) => self.mended(*repair),
            Action::Take(_) | Action::PutDown => (self.held, self.timed_from) = (None, None),
            Action::Measure(spot) => {
                (self.held, self.timed_from) = (Some((*spot, self.tick)), None);
            }
            Action::Stopwatch(StartStop::Start) => {
                self.timed_from = self.dial_turns.map(|turns| (self.tick, turns));
            }
            Action::WriteMeasured(spot) => {
                self.written.push((*spot, self.burns.map(|(level, _)| level)));
            }
            Action::Probe(_)
            | Action::Window { .. }
            | Action::Door { .. }
            | Action::FurnaceSwitch(_)
            | Action::ThermostatMode(_)
            | Action::Setpoint(_)
            | Action::StageJumper(_)
            | Action::ValveSwitch(_)
            | Action::OtherAppliance { .. }
            | Action::Cap { .. }
            | Action::Turn { .. }
            | Action::MeterPower(_)
            | Action::MeterUnit(_)
            | Action::MeterLowSide(_)
            | Action::ResetRollout
            | Action::Unclip
            | Action::Stopwatch(StartStop::Stop)
            | Action::Gauge(_)
            | Action::FillColumn
            | Action::Write(_)
            | Action::WriteFinding(_)
            | Action::StrikeFinding(_)
            | Action::Tag(_)
            | Action::Call(_)
            | Action::HandOver(_) => {}
        }
    }

    fn moved_hose(&mut self, action: &Action) {
        (self.hose_tick, self.meter_rest, self.number_since) = (self.tick, None, None);
        self.zeroed_tick = self.zeroed_tick.filter(|_| *action != Action::HoseOff);
    }

    fn mended(&mut self, repair: Repair) {
        (self.checked, self.brushed, self.meter_rest) = (None, None, None);
        self.piping_checked &= !repair.is_on_piping();
        self.written.clear();
    }

    fn disturb(&mut self, joint: Joint) {
        self.checked = self.checked.filter(|&one| one != joint);
        self.brushed = self.brushed.filter(|&(one, _)| one != joint);
    }

    fn plug(&mut self, port: Port, step: PlugStep) {
        let tick = self.tick;
        self.disturb(port.joint());
        let at = self.port_mut(port);
        at.proven = false;
        match step {
            PlugStep::BreakLoose => at.loosened_tick = Some(tick),
            PlugStep::Tighten(eighths) => {
                at.nipped = eighths > 0;
                (at.started, at.loosened_tick) = (false, None);
            }
            PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn => {
                (at.nipped, at.started, at.loosened_tick) = (false, true, None);
            }
            PlugStep::SpinOut => *at = AtPort::default(),
        }
    }

    fn port_mut(&mut self, port: Port) -> &mut AtPort {
        match port {
            Port::Inlet => &mut self.inlet,
            Port::Manifold => &mut self.manifold,
        }
    }

    pub(super) fn port(&self, port: Port) -> &AtPort {
        match port {
            Port::Inlet => &self.inlet,
            Port::Manifold => &self.manifold,
        }
    }

    /// Whether a port's joint was written tight since it was last disturbed.
    #[must_use]
    pub fn is_proven(&self, port: Port) -> bool {
        self.port(port).proven
    }

    /// The port that the hose was on when it was seen last, and how far.
    #[must_use]
    pub fn hose(&self) -> Option<(Port, Push)> {
        self.hose
    }

    /// Whether leak fluid is on a joint.
    #[must_use]
    pub fn is_wet(&self, joint: Joint) -> bool {
        self.brushed.is_some_and(|(one, _)| one == joint)
    }

    /// Whether the leak check of the piping was written since a repair opened it last.
    #[must_use]
    pub fn has_checked_piping(&self) -> bool {
        self.piping_checked
    }

    /// Whether it was written from an instrument at a spot, since the last repair, that the furnace
    /// burned on a level.
    pub(super) fn has_written(&self, spot: Spot, level: Level) -> bool {
        self.written.contains(&(spot, Some(level)))
    }

    /// Whether it burned on a level when it was heard last.
    #[must_use]
    pub fn burns(&self, wanted: Level) -> bool {
        self.burns.is_some_and(|(level, _)| level == wanted)
    }

    /// Whether it burned on any level when it was heard last.
    pub(super) fn burns_at_all(&self) -> bool {
        self.burns.is_some()
    }

    /// For how long it has burned on a level, in seconds; none where it is not known to.
    pub(super) fn burned_s(&self, wanted: Level) -> Option<f64> {
        let (_, since) = self.burns.filter(|(level, _)| *level == wanted)?;
        Some(self.since_s(since))
    }

    /// Seconds since a tick.
    pub(super) fn since_s(&self, tick: u64) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
        let ticks = self.tick.saturating_sub(tick) as f64;
        ticks * crate::units::TICK_S
    }

    /// For how long the manometer has not moved, in seconds.
    pub(super) fn meter_rests_s(&self) -> f64 {
        self.meter_rest.map_or(0.0, |(_, since)| self.since_s(since))
    }

    /// Whether this was called for when the thermostat was seen last, and how long the furnace has
    /// had to follow.
    #[must_use]
    pub fn called(&self, wanted: Option<Level>) -> Called {
        let Some((_, since, seen)) = self.call.filter(|(call, _, _)| *call == wanted) else {
            return Called::NotKnown;
        };
        let seconds = |from: u64| self.tick.saturating_sub(from) / TICKS_PER_S;
        match (seconds(since), seconds(seen)) {
            (since_s, _) if since_s < FOLLOWS_S => Called::JustNow,
            (_, seen_s) if seen_s < KNOWN_S => Called::LongSince,
            _ => Called::NotKnown,
        }
    }
}

/// How long the zero must not have drifted, in seconds, before it is trusted (common practice).
const WARM_S: f64 = 300.0;
/// By how much a number may move and still stand, in whole pascals (a hundredth of an inch of water
/// is 2.5).
const RESTS_PA: i32 = 3;

fn port_of(joint: Joint) -> Option<Port> {
    Port::ALL.iter().copied().find(|port| port.joint() == joint)
}

/// Whether another appliance is turned on.
pub(super) fn turned(burning: Burning) -> OnOff {
    match burning {
        Burning::Burning | Burning::NoGas => OnOff::On,
        Burning::Off => OnOff::Off,
    }
}

fn whole(pa: f64) -> i32 {
    #[expect(clippy::cast_possible_truncation, reason = "clamped")]
    let whole = pa.clamp(-1.0e6, 1.0e6).round() as i32;
    whole
}
