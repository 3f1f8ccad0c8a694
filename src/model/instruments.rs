//! Instruments in use: what they are held to, and how they go on by a tick.

use super::notice::Notice;
use super::state::Model;
use crate::instrument::flue_analyser::{AIR_O2, Sample};
use crate::instrument::thermometer::Around;
use crate::instrument::water_column::TUBE_CD_M2;
use crate::parts::{Fitted, Gauge, LowSide, Spot, Tool};
use crate::physics::combustion::flue_gas;
use crate::units::TICK_S;

/// Blower speed from which the air counts as moving.
const MOVING: f64 = 0.15;
/// Gas below which nothing burns for the flue, in standard m³/s.
const NO_GAS_M3_S: f64 = 1e-8;

impl Model {
    /// Whether the instrument for pressure hangs at the furnace: a hose end on a port or its low side
    /// on the burner box holds it there. Else it goes along with the person.
    fn meter_hangs(&self) -> bool {
        self.things.hose_port().is_some() || self.low_side == LowSide::BurnerBox
    }

    /// Whether the person has the instrument for pressure in sight and within reach.
    pub(crate) fn is_meter_in_sight(&self) -> bool {
        !self.meter_hangs() || self.person.is_at_furnace()
    }

    /// The instruments for pressure go on by a tick; returns what the one at the hose feels between
    /// its two sides, in pascals.
    pub(super) fn step_meter(&mut self, told: &mut impl FnMut(Notice)) -> f64 {
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
            self.step_gauges(difference_pa, told);
        }
        difference_pa
    }

    /// Water column and spring gauge: the one that the hose goes to feels it, the other the air.
    fn step_gauges(&mut self, difference_pa: f64, told: &mut impl FnMut(Notice)) {
        let gauge = self.kit.gauge;
        let felt_pa = |it: Gauge| if it == gauge { difference_pa } else { 0.0 };
        if self.kit.column.step(TICK_S, felt_pa(Gauge::WaterColumn)) {
            told(Notice::ColumnBlownOut);
        }
        if self.kit.spring.step(TICK_S, felt_pa(Gauge::SpringGauge)) {
            told(Notice::SpringGaugeStrained);
        }
        // A tube without its water is an open end.
        let open = gauge == Gauge::WaterColumn && self.kit.column.is_blown();
        if self.gas.set_hose_open_m2(if open { TUBE_CD_M2 } else { 0.0 }) {
            self.push_paths();
        }
    }

    /// The instruments in use go on by a tick.
    pub(super) fn step_kit(&mut self) {
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
            Some(
                Tool::HexKey
                | Tool::SlottedDriver
                | Tool::Adapter
                | Tool::Hose
                | Tool::LeakFluid
                | Tool::GasDetector
                | Tool::Microammeter
                | Tool::Stopwatch,
            )
            | None => {}
        }
        if self.kit.clipped == Fitted::On {
            self.kit.micro.step(TICK_S, self.furnace.flame_ua());
        }
    }

    fn around_bead(&self) -> (f64, Around) {
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
            Some(
                Spot::RoomAir
                | Spot::OutsideAir
                | Spot::Flue
                | Spot::FlameRod
                | Spot::RToC
                | Spot::W1ToC
                | Spot::W2ToC
                | Spot::FirstSwitch
                | Spot::SecondSwitch
                | Spot::LimitSwitch
                | Spot::RolloutSwitch
                | Spot::LowGasVolts
                | Spot::MainCoil
                | Spot::SecondCoil
                | Spot::IgniterOhms
                | Spot::SecondCoilOhms
                | Spot::BurnerGroundOhms
                | Spot::MeterDial,
            )
            | None => (self.air_here_k(), Around::StillAir),
        }
    }

    /// What comes past the analyser's probe.
    fn at_probe(&self) -> Sample {
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
}
