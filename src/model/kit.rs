//! Instruments other than the manometer: what they are held to, what is there, what they show.

use crate::appliance::plate::Fuel;
use crate::bench::Bench;
use crate::hands::refusal::Refusal;
use crate::instrument::electrical::{self, Load, Needle};
use crate::instrument::figure::{Figure, Quantity};
use crate::instrument::flue_analyser::{AIR_O2, FlueAnalyser, Sample};
use crate::instrument::spring_gauge::SpringGauge;
use crate::instrument::stopwatch::Stopwatch;
use crate::instrument::thermometer::{Around, Thermometer};
use crate::instrument::water_column::WaterColumn;
use crate::parts::{Fitted, Gauge, OnOff, Place, Range, Spot, Tool};
use crate::physics::combustion::flue_gas;
use crate::physics::fluid::Gas;
use crate::senses::seen::Measured;
use crate::setup::{Coil, Contact, SupplyKind};
use crate::units::{TICK_S, f_from_k};

/// Blower speed from which the air counts as moving.
const MOVING: f64 = 0.15;
/// Gas below which nothing burns for the flue, in standard m³/s.
const NO_GAS_M3_S: f64 = 1e-8;

/// The instruments in the bag.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Kit {
    /// What the tool in hand is held to.
    pub spot: Option<Spot>,
    /// Whether the microammeter is clipped in at the flame rod.
    pub clipped: Fitted,
    pub thermometer: Thermometer,
    pub analyser: FlueAnalyser,
    /// The electrical meter's face.
    pub meter: Needle,
    /// The microammeter's face.
    pub micro: Needle,
    pub stopwatch: Stopwatch,
    /// Which instrument the hose goes to.
    pub gauge: Gauge,
    pub column: WaterColumn,
    pub spring: SpringGauge,
    /// Whether one of the gauges was ever used: until then they need no steps.
    pub gauges_used: bool,
}

impl Kit {
    pub(crate) fn new(inside_k: f64, scale_off_m: f64) -> Self {
        Self {
            spot: None,
            clipped: Fitted::Off,
            thermometer: Thermometer::new(inside_k),
            analyser: FlueAnalyser::new(inside_k),
            meter: Needle::default(),
            micro: Needle::default(),
            stopwatch: Stopwatch::default(),
            gauge: Gauge::Digital,
            column: WaterColumn::new(scale_off_m),
            spring: SpringGauge::default(),
            gauges_used: false,
        }
    }

    /// What differs from a bag that nobody has opened; nothing for one that is shut.
    pub(crate) fn digest(&self, hand: Option<Tool>, sink: &mut impl FnMut(u64)) {
        if let Some(tool) = hand.filter(|tool| *tool >= Tool::Thermometer) {
            let spot = self.spot.map_or(0xff, |spot| spot as u64);
            sink((tool as u64) << 8 | spot);
            sink(self.thermometer.bead_k().to_bits());
            let Sample { o2, co_ppm, gas_k } = self.analyser.felt();
            for value in [o2, co_ppm, gas_k, self.meter.shown()] {
                sink(value.to_bits());
            }
        }
        if self.clipped == Fitted::On {
            sink(self.micro.shown().to_bits());
        }
        match self.stopwatch {
            Stopwatch::Nought => {}
            Stopwatch::Running { since, turns } => {
                sink(since);
                sink(turns.to_bits());
            }
            Stopwatch::Stopped { ticks, turns } => {
                sink(ticks << 1 | 1);
                sink(turns.to_bits());
            }
        }
        if self.gauges_used {
            sink(self.gauge as u64);
            self.column.digest(sink);
            self.spring.digest(sink);
        }
    }
}

impl Bench {
    /// Why an instrument cannot be held to a spot from here, whatever is in hand.
    pub(crate) fn reaches_spot(&self, spot: Spot) -> Result<(), Refusal> {
        self.need_place(spot.places())?;
        if spot.is_behind_door() {
            self.need_burner_door_off()?;
        }
        let tank = matches!(self.setup.supply.kind, SupplyKind::Tank { .. });
        match spot {
            Spot::TankSkin if !tank => return Err(Refusal::NotFitted),
            Spot::MeterDial if tank => return Err(Refusal::NotFitted),
            Spot::LowGasVolts if !self.setup.furnace.low_gas_switch => {
                return Err(Refusal::NotFitted);
            }
            _ => {}
        }
        if spot.range() == Some(Range::Ohms) && self.powered() {
            return Err(Refusal::PowerOn);
        }
        Ok(())
    }

    /// After an action: an instrument that can no longer be where it was held is not.
    pub(crate) fn let_go_of_spot(&mut self) {
        let Some(spot) = self.kit.spot else { return };
        if self.person.hand != Some(spot.tool()) || self.reaches_spot(spot).is_err() {
            self.kit.spot = None;
            self.kit.stopwatch = Stopwatch::Nought;
            self.kit.meter = Needle::default();
        }
    }

    /// The instruments in use go on by a tick.
    pub(crate) fn step_kit(&mut self) {
        match self.person.hand {
            Some(Tool::Thermometer) => {
                let (around_k, around) = self.around_bead();
                self.kit.thermometer.step(TICK_S, around_k, around);
            }
            Some(Tool::FlueAnalyser) => {
                let sample = self.at_probe();
                self.kit.analyser.step(TICK_S, sample);
            }
            Some(Tool::ElectricalMeter) => {
                let volts = self.kit.spot.map_or(0.0, |spot| self.volts(spot));
                self.kit.meter.step(TICK_S, volts);
            }
            Some(_) | None => {}
        }
        if self.kit.clipped == Fitted::On {
            self.kit.micro.step(TICK_S, self.furnace.flame_ua());
        }
    }

    /// Temperature of the air where the person stands, in kelvins.
    pub(crate) fn air_here_k(&self) -> f64 {
        match self.person.place {
            Place::Yard | Place::Away => self.setup.outside_k,
            Place::PlantRoom | Place::GasValve | Place::Hall => self.house.inside_k(),
        }
    }

    pub(crate) fn around_bead(&self) -> (f64, Around) {
        let duct =
            if self.furnace.blower() > MOVING { Around::MovingAir } else { Around::StillAir };
        match self.kit.spot {
            Some(Spot::ReturnAir) => (self.house.inside_k(), duct),
            Some(Spot::SupplyAir) => (self.furnace.supply_air_k(), duct),
            Some(Spot::TankSkin) => {
                let outside_k = self.setup.outside_k;
                let chill_k = self.gas.tank().map_or(0.0, |tank| tank.chill_k(outside_k));
                (outside_k - chill_k, Around::Skin)
            }
            Some(_) | None => (self.air_here_k(), Around::StillAir),
        }
    }

    /// What comes past the analyser's probe.
    pub(crate) fn at_probe(&self) -> Sample {
        let air = Sample { o2: AIR_O2, co_ppm: 0.0, gas_k: self.air_here_k() };
        if self.kit.spot != Some(Spot::Flue) {
            return air;
        }
        let gas_k = self.furnace.flue_k();
        let gas = &self.setup.gas;
        let flow = self.gas.burner_gas();
        let burned = self.furnace.input_w() / (flow * gas.heating_value_j_m3).max(NO_GAS_M3_S);
        let Some(excess) = self.furnace.excess_air().filter(|_| flow > NO_GAS_M3_S) else {
            return Sample { gas_k, ..air };
        };
        let condition = &self.setup.condition;
        let holed = condition.burners.exchanger_hole * self.furnace.blower();
        let kept = (1.0 - condition.air.trap_leak) * (1.0 - holed) * burned;
        let thinned = (1.0 + excess) / kept.clamp(0.05, 1.0) - 1.0;
        let o2 = flue_gas(gas, thinned).o2;
        let co_ppm = self.furnace.co_air_free_ppm() * (1.0 - o2 / AIR_O2).max(0.0);
        Sample { o2, co_ppm, gas_k }
    }

    /// Volts at a spot, between two terminals or across a contact: what the electrical meter comes
    /// to when it is held there, whether or not anybody holds it.
    #[must_use]
    pub fn volts(&self, spot: Spot) -> f64 {
        if !self.powered() {
            return 0.0;
        }
        let [main, high] = self.furnace.coils();
        let coil = self.setup.condition.valve.high_coil;
        let load = match (main && self.things.valve_switch == OnOff::On, high, coil) {
            (false, _, _) => Load::Idle,
            (true, true, Coil::Works) => Load::Both,
            (true, false, _) | (true, true, Coil::Dead) => Load::Main,
        };
        let volts = electrical::control_v(load);
        let (first, second) = self.thermostat_calls();
        let forced = match self.setup.condition.control.second_contact {
            Contact::Works => false,
            Contact::Closed => first,
        };
        let [low_switch, high_switch, limit, rollout, low_gas] = self.furnace.contacts();
        let behind = limit && rollout;
        let live = match spot {
            Spot::RToC => true,
            Spot::W1ToC => first,
            Spot::W2ToC => second || forced || self.things.stage_jumper == Fitted::On,
            // Limit, roll-out switches and the others lie in a row: an open one takes the volts of
            // those behind it.
            Spot::LimitSwitch => !limit,
            Spot::RolloutSwitch => limit && !rollout,
            Spot::LowSwitch => behind && !low_switch,
            Spot::HighSwitch => behind && !high_switch,
            Spot::LowGasVolts => behind && !low_gas,
            Spot::MainCoil => main,
            Spot::HighCoil => high,
            _ => false,
        };
        if live { volts } else { 0.0 }
    }

    /// Ohms of a part with the furnace off: what the electrical meter comes to when it is held there.
    #[must_use]
    pub fn ohms(&self, spot: Spot) -> f64 {
        let condition = &self.setup.condition;
        match (spot, condition.valve.high_coil) {
            (Spot::IgniterOhms, _) => electrical::igniter_ohm(condition.burners.igniter_weak),
            (Spot::HighCoilOhms, Coil::Works) => electrical::high_coil_ohm(),
            (Spot::BurnerGroundOhms, _) => electrical::ground_ohm(condition.burners.ground_poor),
            _ => f64::INFINITY,
        }
    }

    /// What an instrument shows at a spot, if it is held there.
    pub(crate) fn measured_at(&self, spot: Spot) -> Option<Measured> {
        let clipped = spot == Spot::FlameRod && self.kit.clipped == Fitted::On;
        if clipped {
            self.reaches_spot(spot).ok()?;
        } else if self.kit.spot != Some(spot) || self.person.hand != Some(spot.tool()) {
            return None;
        }
        let one = |quantity, value| vec![Figure::new(quantity, value)];
        let figures = match spot.tool() {
            Tool::Thermometer => {
                one(Quantity::Temperature, f_from_k(self.kit.thermometer.bead_k()))
            }
            Tool::FlueAnalyser => {
                let fuel = match self.setup.fuel {
                    Fuel::Natural => Gas::natural(),
                    Fuel::Propane => Gas::propane(),
                };
                self.kit.analyser.face(&fuel)
            }
            Tool::Microammeter => one(Quantity::FlameCurrent, self.kit.micro.shown()),
            Tool::Stopwatch => self.kit.stopwatch.face(self.tick),
            Tool::ElectricalMeter if spot.range() == Some(Range::Ohms) => {
                one(Quantity::Resistance, self.kit.meter.ohms(self.ohms(spot)))
            }
            Tool::ElectricalMeter => one(Quantity::Voltage, self.kit.meter.shown()),
            Tool::HexKey
            | Tool::SlottedDriver
            | Tool::Adapter
            | Tool::Hose
            | Tool::LeakFluid
            | Tool::GasDetector => return None,
        };
        Some(Measured { spot, figures })
    }

    /// What an instrument shows now: the one in hand, or the microammeter while it is clipped in.
    pub(crate) fn measured(&self) -> Option<Measured> {
        let held = self.kit.spot.and_then(|spot| self.measured_at(spot));
        held.or_else(|| self.measured_at(Spot::FlameRod))
    }
}
