//! From the state to what a person perceives, and to what is true.

mod signs;

pub(crate) use signs::FILM_SHOWS;

use super::seen::{
    BurnersSeen, Burning, Call, Cracked, Display, FluidSeen, FurnaceSeen, GaugeSeen, HallSeen,
    MeterSeen, PortSeen, Seen, SheetSeen, Smell, Sound, YardSeen,
};
use super::watch::Draw;
use crate::bench::Bench;
use crate::hands::tools::{joint_index, port_index};
use crate::instrument::manometer::MeterFace;
use crate::model::gas::ValveSeats;
use crate::model::truth::Truth;
use crate::parts::{
    Firing, Fitted, Gauge, Height, Joint, LowSide, Neighbor, OnOff, Opening, Place, Port, Screw,
};
use crate::units::{M_PER_FT, P_STD_PA, TICK_S, f_from_k};

/// Flow below which nothing flows for a reading at rest, in standard m³/s (0.1 ft³/h).
const NO_FLOW_M3_S: f64 = 8e-7;
/// Angle from which a hand valve joins both sides, in degrees.
const FED_DEG: i16 = 45;
/// Share of its rate at which a neighbour burns.
const BURNING_SHARE: f64 = 0.3;
/// Liquid chill at which frost covers the whole tank, in kelvins.
const FROST_K: f64 = 12.0;
/// Flow that is heard hissing, in standard m³/s (2 ft³/h).
const HISS_M3_S: f64 = 1.6e-5;

impl Bench {
    /// What a person perceives now.
    #[must_use]
    pub fn seen(&self) -> Seen {
        let at_furnace = matches!(self.person.place, Place::PlantRoom | Place::GasValve);
        Seen {
            tick: self.tick,
            place: self.person.place,
            hand: self.person.hand,
            outside_f: whole(f_from_k(self.setup.outside_k)),
            altitude_ft: altitude_ft(self.setup.ambient_abs_pa),
            meter: self.meter_seen(),
            gauge: self.gauge_seen(),
            measured: self.measured(),
            clipped: self.kit.clipped,
            sounds: self.sounds(),
            smell: self.smell_here(),
            sniffed: self.person.sniffed,
            detector: self.person.detector,
            yard: (self.person.place == Place::Yard).then(|| self.yard_seen()),
            furnace: at_furnace.then(|| self.furnace_seen()),
            hall: (self.person.place == Place::Hall).then(|| self.hall_seen()),
            sheet: SheetSeen {
                readings: self.sheet.readings.clone(),
                joints: self.sheet.joints.clone(),
                notes: self.sheet.notes.clone(),
                measured: self.sheet.measured.clone(),
                done: self.sheet.done.clone(),
            },
            over: self.over,
        }
    }

    pub(crate) fn meter_seen(&self) -> MeterSeen {
        let display = match self.meter.face() {
            MeterFace::Dark => Display::Dark,
            MeterFace::Number(shown) => Display::Number(shown),
            MeterFace::OverRange => Display::OverRange,
        };
        MeterSeen {
            display,
            unit: self.meter.unit(),
            hose: self.hose_port(),
            low_side: self.low_side,
            hose_look: self.hose_look(),
        }
    }

    pub(crate) fn gauge_seen(&self) -> GaugeSeen {
        match self.kit.gauge {
            Gauge::Digital => GaugeSeen::Digital,
            Gauge::WaterColumn => GaugeSeen::WaterColumn(self.kit.column.legs()),
            Gauge::SpringGauge => GaugeSeen::Spring(self.kit.spring.shown_tenths()),
        }
    }

    pub(crate) fn yard_seen(&self) -> YardSeen {
        let cap = self.things.caps[2];
        let tank = self.gas.tank();
        YardSeen {
            cock_deg: self.things.supply_cock_deg,
            cap,
            screw_eighths: self.uncovered(Screw::Supply),
            tank_percent: tank.map(|tank| (tank.level() * 20.0).round() * 5.0),
            dial_turns: self.gas.dial_turns(),
            frost: tank
                .map_or(0.0, |tank| (tank.chill_k(self.setup.outside_k) / FROST_K).clamp(0.0, 1.0)),
        }
    }

    pub(crate) fn furnace_seen(&self) -> FurnaceSeen {
        let things = &self.things;
        FurnaceSeen {
            burner_door: things.doors[0],
            blower_door: things.doors[1],
            switch: things.furnace_switch,
            cock_deg: things.furnace_cock_deg,
            water_heater: (things.neighbor_cock_deg[0], self.burning(Neighbor::WaterHeater)),
            window: things.windows[0],
            status: if self.powered() { self.furnace.status() } else { NO_POWER },
            stage_jumper: things.stage_jumper,
            tag: things.tag,
            conversion_label: fitted(self.setup.furnace.plate.converted_to.is_some()),
            inducer: self.furnace.inducer(),
            blower: self.furnace.blower(),
            burners: (things.doors[0] == Fitted::Off).then(|| self.burners_seen()),
        }
    }

    pub(crate) fn burners_seen(&self) -> BurnersSeen {
        let things = &self.things;
        BurnersSeen {
            glow: self.furnace.glow(),
            flames: self.furnace.flames(),
            valve_switch: things.valve_switch,
            wires: self.setup.condition.control.jumpers,
            low_gas_switch: fitted(self.setup.furnace.low_gas_switch),
            caps: [things.caps[0], things.caps[1]],
            screw_eighths: [self.uncovered(Screw::Low), self.uncovered(Screw::High)],
            ports: [Port::Inlet, Port::Manifold].map(|port| self.port_seen(port)),
            fluid: [Joint::InletPort, Joint::ManifoldPort, Joint::Union, Joint::Connector]
                .map(|joint| self.fluid_seen(joint)),
            signs: self.plain_signs(),
        }
    }

    /// A hairline crack is not seen by looking: only the bubbles that grow along it show it.
    pub(crate) fn port_seen(&self, port: Port) -> PortSeen {
        let seen = self.things.ports[port_index(port)].seen();
        match self.fluid_seen(port.joint()) {
            FluidSeen::Bubbles(_) => seen,
            FluidSeen::Quiet(_) | FluidSeen::Dry => PortSeen { cracked: Cracked::Sound, ..seen },
        }
    }

    pub(crate) fn fluid_seen(&self, joint: Joint) -> FluidSeen {
        match self.things.fluid[joint_index(joint)] {
            None => FluidSeen::Dry,
            Some(brushed) if brushed.fluid.shows() => FluidSeen::Bubbles(brushed.fluid.bubbles),
            Some(brushed) => FluidSeen::Quiet(brushed.fluid.wet_s),
        }
    }

    pub(crate) fn uncovered(&self, screw: Screw) -> Option<i32> {
        let i = match screw {
            Screw::Low => 0,
            Screw::High => 1,
            Screw::Supply => 2,
        };
        (self.things.caps[i] == Fitted::Off).then_some(self.things.turned_eighths[i])
    }

    pub(crate) fn hall_seen(&self) -> HallSeen {
        HallSeen {
            room_half_f: half_f(self.house.inside_k()),
            setpoint_half_f: self.things.setpoint_half_f,
            mode: self.things.heating,
            call: self.call_for_heat(),
            co_ppm: 0.0,
            window: self.things.windows[1],
            range: (self.things.neighbor_cock_deg[1], self.burning(Neighbor::Range)),
            registers_closed: self.setup.condition.air.registers_closed,
        }
    }

    /// What the thermostat's wires carry.
    pub(crate) fn call_for_heat(&self) -> Call {
        let (first, second) = self.thermostat_calls();
        match (first, second) {
            (false, _) => Call::None,
            (true, false) => Call::First,
            (true, true) => Call::Second,
        }
    }

    pub(crate) fn burning(&self, neighbor: Neighbor) -> Burning {
        let i = neighbor_index(neighbor);
        if self.things.neighbors[i] == OnOff::Off {
            Burning::Off
        } else if self.neighbor_burns(neighbor) {
            Burning::Burning
        } else {
            Burning::NoGas
        }
    }

    pub(crate) fn neighbor_burns(&self, neighbor: Neighbor) -> bool {
        let i = neighbor_index(neighbor);
        let rate = self.setup.neighbors[i].input_w / self.setup.gas.heating_value_j_m3;
        self.gas.neighbor_flow(neighbor) > BURNING_SHARE * rate
    }

    /// What the furnace and its neighbours draw.
    pub(crate) fn draw(&self) -> Draw {
        let burning =
            Neighbor::ALL.iter().filter(|&&neighbor| self.neighbor_burns(neighbor)).count();
        // What shut seats let by is at rest for everybody who looks.
        let burners = match self.furnace.seats() {
            ValveSeats::Closed => 0.0,
            ValveSeats::Low | ValveSeats::High => self.gas.burner_flow().abs(),
        };
        let flow =
            burners + Neighbor::ALL.iter().map(|&n| self.gas.neighbor_flow(n).abs()).sum::<f64>();
        Draw {
            firing: self.firing(),
            burning: u8::try_from(burning).unwrap_or(u8::MAX),
            any_flow: flow > NO_FLOW_M3_S,
            fed: self.things.furnace_cock_deg >= FED_DEG && self.things.supply_cock_deg >= FED_DEG,
        }
    }

    /// The port that the meter measures, while it is on, zeroed or not, and in range.
    pub(crate) fn metered_port(&self) -> Option<Port> {
        let in_range = match self.kit.gauge {
            Gauge::Digital => self.meter.is_on() && !self.meter.over_range(),
            Gauge::WaterColumn => self.kit.column.shown_pa().is_some(),
            Gauge::SpringGauge => self.kit.spring.shown_pa().is_some(),
        };
        self.hose_port().map(|(port, _)| port).filter(|_| in_range)
    }

    /// What the furnace does.
    pub(crate) fn firing(&self) -> Firing {
        self.furnace.firing()
    }

    pub(crate) fn sounds(&self) -> Vec<Sound> {
        let mut sounds = Vec::new();
        if self.alerts.alarm {
            sounds.push(Sound::Alarm);
        }
        if self.person.place == Place::Yard && self.gas.vented() > HISS_M3_S {
            sounds.push(Sound::Relief);
        }
        if matches!(self.person.place, Place::Away | Place::Yard) {
            return sounds;
        }
        sounds.extend(self.furnace.sounds());
        let near = matches!(self.person.place, Place::PlantRoom | Place::GasValve);
        let connector = self.gas.connector_leak();
        if near && self.gas.leaks().into_iter().chain(connector).any(|flow| flow > HISS_M3_S) {
            sounds.push(Sound::Hiss);
        }
        let neighbor = if near { Neighbor::WaterHeater } else { Neighbor::Range };
        if self.neighbor_burns(neighbor) {
            sounds.push(Sound::NeighborBurning);
        }
        sounds
    }

    /// Smell from breathing here.
    pub(crate) fn smell_here(&self) -> Smell {
        self.smell_at(Height::Head)
    }

    /// Pressure behind a joint, in pascals.
    pub(crate) fn joint_pa(&self, joint: Joint) -> f64 {
        match joint {
            Joint::InletPort | Joint::Connector | Joint::Union => self.gas.pressure_pa(Port::Inlet),
            Joint::ManifoldPort => self.gas.pressure_pa(Port::Manifold),
        }
    }

    /// Everything that is true now.
    #[must_use]
    pub fn truth(&self) -> Truth {
        let things = &self.things;
        let [low_set_pa, high_set_pa] = self.gas.springs().set_pa();
        Truth {
            tick: self.tick,
            supply_pa: self.gas.supply_pa(),
            tee_pa: self.gas.tee_pa(),
            inlet_pa: self.gas.pressure_pa(Port::Inlet),
            manifold_pa: self.gas.pressure_pa(Port::Manifold),
            box_pa: self.gas.box_pa(),
            hose_pa: self.gas.hose_pa(),
            meter_error_pa: self.meter.error_pa(),
            low_set_pa,
            high_set_pa,
            supply_set_pa: self.gas.supply_set_pa(),
            screw_turns: self.gas.springs().turns(),
            bottomed: self.gas.springs().bottomed(),
            burner_flow_m3_s: self.gas.burner_flow(),
            input_w: self.furnace.input_w(),
            neighbor_flow_m3_s: Neighbor::ALL.iter().map(|&n| self.gas.neighbor_flow(n)).sum(),
            leak_m3_s: self.gas.leaks(),
            firing: self.firing(),
            control: self.furnace.control_state(),
            gas_fraction: self.gas_fractions(),
            co_air_free_ppm: self.furnace.co_air_free_ppm(),
            flame_ua: self.furnace.flame_ua(),
            excess_air: self.furnace.excess_air(),
            rise_k: self.furnace.rise_k(),
            draft_pa: self.furnace.draft_pa(),
            vented_m3_s: self.gas.vented(),
            cock_deg: things.furnace_cock_deg,
            valve_switch: things.valve_switch,
            furnace_switch: things.furnace_switch,
            supply_cock_deg: things.supply_cock_deg,
            neighbors: [0, 1].map(|i| (things.neighbors[i], things.neighbor_cock_deg[i])),
            gone_out: [0, 1].map(|i| self.guard_dropped(i)),
            windows: things.windows,
            low_side: self.low_side,
            caps: things.caps,
            ports: [things.ports[0].truth(), things.ports[1].truth()],
            doors: things.doors,
            thermostat: (self.things.setpoint_half_f, self.things.heating),
            stage_jumper: things.stage_jumper,
            tag: things.tag,
            jumpers: self.setup.condition.control.jumpers,
            connector_leak_m3_s: self.gas.connector_leak().unwrap_or(0.0),
        }
    }

    /// A number that stands for the whole state: equal states give equal numbers.
    #[must_use]
    pub fn digest(&self) -> u64 {
        // FNV-1a over 64-bit words.
        let mut hash = 0xcbf2_9ce4_8422_2325_u64;
        let mut sink = |word: u64| hash = (hash ^ word).wrapping_mul(0x0100_0000_01b3);
        sink(self.tick);
        self.gas.digest(&mut sink);
        self.furnace.digest(&mut sink);
        self.house.digest(&mut sink);
        self.thermostat.digest(&mut sink);
        self.room.digest(&mut sink);
        self.meter.digest(&mut sink);
        self.watch.digest(&mut sink);
        sink(self.cycle.digest());
        for port in &self.things.ports {
            port.digest(&mut sink);
        }
        for brushed in self.things.fluid.iter().flatten() {
            sink(brushed.fluid.bubbles.to_bits());
            sink(brushed.fluid.wet_s.to_bits());
        }
        for starved_s in self.things.starved_s {
            sink(starved_s.to_bits());
        }
        sink(self.things_word());
        sink(u64::from(self.things.setpoint_half_f.unsigned_abs()));
        for (i, brushed) in self.things.fluid.iter().enumerate() {
            sink((i as u64) << 1 | u64::from(brushed.is_some()));
        }
        for turned in self.things.turned_eighths {
            sink(u64::from(turned.unsigned_abs()) << 1 | u64::from(turned < 0));
        }
        self.sheet.digest(&mut sink);
        self.kit.digest(self.person.hand, &mut sink);
        for repair in &self.mended {
            sink(*repair as u64);
        }
        hash
    }

    /// Switches, doors and the like packed into one word.
    pub(crate) fn things_word(&self) -> u64 {
        let things = &self.things;
        let on = |fitted: Fitted| u64::from(fitted == Fitted::On);
        let mut word = self.person.place as u64;
        word = word << 3 | self.person.hand.map_or(7, |tool| (tool as u64).min(7));
        for cap in things.caps.iter().chain(&things.doors) {
            word = word << 1 | on(*cap);
        }
        word = word << 1 | on(things.stage_jumper);
        word = word << 1 | on(things.tag);
        for window in things.windows {
            word = word << 1 | u64::from(window == Opening::Open);
        }
        word = word << 1 | u64::from(self.low_side == LowSide::BurnerBox);
        word = word << 1 | u64::from(self.over.is_some());
        for switch in things.neighbors.iter().chain([
            &things.valve_switch,
            &things.furnace_switch,
            &things.heating,
        ]) {
            word = word << 1 | u64::from(*switch == OnOff::On);
        }
        for degrees in [things.furnace_cock_deg, things.supply_cock_deg]
            .iter()
            .chain(&things.neighbor_cock_deg)
        {
            word = word << 7 | u64::from(degrees.unsigned_abs());
        }
        word
    }
}

impl Bench {
    /// Simulated seconds since the job began.
    #[must_use]
    pub fn seconds(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
        let ticks = self.tick as f64;
        ticks * TICK_S
    }
}

/// Place of a neighbour in lists.
pub(crate) fn neighbor_index(neighbor: Neighbor) -> usize {
    match neighbor {
        Neighbor::WaterHeater => 0,
        Neighbor::Range => 1,
    }
}

/// What the status lamp says without power.
const NO_POWER: &str = "dark, no power";

fn fitted(there: bool) -> Fitted {
    if there { Fitted::On } else { Fitted::Off }
}

#[expect(clippy::cast_possible_truncation, reason = "weather and rooms")]
fn whole(value: f64) -> i32 {
    value.round() as i32
}

#[expect(clippy::cast_possible_truncation, reason = "weather and rooms")]
pub(crate) fn half_f(kelvin: f64) -> i16 {
    (2.0 * f_from_k(kelvin)).round() as i16
}

/// Height above the sea at which the air has this pressure (ICAO standard atmosphere, Doc 7488), in
/// feet, to the hundred.
fn altitude_ft(ambient_abs_pa: f64) -> i32 {
    let height_m = (1.0 - libm::pow(ambient_abs_pa / P_STD_PA, 1.0 / 5.255_88)) / 2.255_77e-5;
    100 * whole(height_m / M_PER_FT / 100.0)
}
