//! Where an instrument is held, by name: each spot belongs to one instrument and one place.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

use super::names::{Place, Tool};

named! {
    /// Where an instrument is held, or between what its leads go.
    Spot {
        /// Thermometer in the return air, before the filter.
        ReturnAir = "return-air", "Return air";
        /// Thermometer in the supply air, out of sight of the exchanger.
        SupplyAir = "supply-air", "Supply air";
        /// Thermometer in the room with the thermostat.
        RoomAir = "room-air", "Room air";
        /// Thermometer outside.
        OutsideAir = "outside-air", "Outside air";
        /// Thermometer on the tank's skin, below the liquid's level (propane).
        TankSkin = "tank-skin", "Tank skin";
        /// Flue analyser's probe in the flue.
        Flue = "flue", "Flue";
        /// Microammeter in series with the flame rod.
        FlameRod = "flame-rod", "Flame rod";
        /// Volts between R and C on the furnace control.
        RToC = "r-c", "R to C";
        /// Volts between W1 and C: the first stage's call.
        W1ToC = "w1-c", "W1 to C";
        /// Volts between W2 and C: the second stage's call.
        W2ToC = "w2-c", "W2 to C";
        /// Volts across the low pressure switch.
        LowSwitch = "low-switch", "Across the low pressure switch";
        /// Volts across the high pressure switch.
        HighSwitch = "high-switch", "Across the high pressure switch";
        /// Volts across the limit.
        LimitSwitch = "limit-switch", "Across the limit";
        /// Volts across the roll-out switches.
        RolloutSwitch = "rollout-switch", "Across the roll-out switches";
        /// Volts across the low-gas switch of a propane kit.
        LowGasVolts = "low-gas-volts", "Across the low gas switch";
        /// Volts at the main coil.
        MainCoil = "main-coil", "Main coil";
        /// Volts at the coil of the high stage.
        HighCoil = "high-coil", "High stage coil";
        /// Ohms of the igniter, cold.
        IgniterOhms = "igniter-ohms", "Igniter, ohms";
        /// Ohms of the high stage's coil.
        HighCoilOhms = "high-coil-ohms", "High stage coil, ohms";
        /// Ohms from the burners to the control's ground.
        BurnerGroundOhms = "burner-ground-ohms", "Burners to ground, ohms";
        /// Stopwatch at the test dial of the gas meter.
        MeterDial = "meter-dial", "Meter dial";
    }
}

/// What an electrical meter is set to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Range {
    /// Volts, alternating: the furnace has power.
    Volts,
    /// Ohms: the part must be dead.
    Ohms,
}

impl Spot {
    /// The instrument that it belongs to.
    #[must_use]
    pub fn tool(self) -> Tool {
        match self {
            Self::ReturnAir
            | Self::SupplyAir
            | Self::RoomAir
            | Self::OutsideAir
            | Self::TankSkin => Tool::Thermometer,
            Self::Flue => Tool::FlueAnalyser,
            Self::FlameRod => Tool::Microammeter,
            Self::MeterDial => Tool::Stopwatch,
            Self::RToC
            | Self::W1ToC
            | Self::W2ToC
            | Self::LowSwitch
            | Self::HighSwitch
            | Self::LimitSwitch
            | Self::RolloutSwitch
            | Self::LowGasVolts
            | Self::MainCoil
            | Self::HighCoil
            | Self::IgniterOhms
            | Self::HighCoilOhms
            | Self::BurnerGroundOhms => Tool::ElectricalMeter,
        }
    }

    /// Where it can be reached from.
    #[must_use]
    pub fn places(self) -> &'static [Place] {
        match self {
            Self::ReturnAir | Self::SupplyAir | Self::Flue => &[Place::PlantRoom, Place::GasValve],
            Self::RoomAir => &[Place::Hall],
            Self::OutsideAir | Self::TankSkin | Self::MeterDial => &[Place::Yard],
            Self::FlameRod
            | Self::RToC
            | Self::W1ToC
            | Self::W2ToC
            | Self::LowSwitch
            | Self::HighSwitch
            | Self::LimitSwitch
            | Self::RolloutSwitch
            | Self::LowGasVolts
            | Self::MainCoil
            | Self::HighCoil
            | Self::IgniterOhms
            | Self::HighCoilOhms
            | Self::BurnerGroundOhms => &[Place::PlantRoom, Place::GasValve],
        }
    }

    /// Whether it lies behind the burner door.
    #[must_use]
    pub fn is_behind_door(self) -> bool {
        matches!(self.tool(), Tool::ElectricalMeter | Tool::Microammeter)
    }

    /// What the electrical meter is set to there; none for other instruments.
    #[must_use]
    pub fn range(self) -> Option<Range> {
        match self {
            Self::IgniterOhms | Self::HighCoilOhms | Self::BurnerGroundOhms => Some(Range::Ohms),
            _ => (self.tool() == Tool::ElectricalMeter).then_some(Range::Volts),
        }
    }
}
