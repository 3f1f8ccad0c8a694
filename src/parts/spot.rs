//! Where an instrument is held, by name: each spot belongs to one instrument and one place.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

named! {
    /// Where an instrument is held, or between what its leads go.
    Spot {
        /// Thermometer in the return air, before the filter.
        ReturnAir = "return-air", t!("spot-return-air");
        /// Thermometer in the supply air, out of sight of the exchanger.
        SupplyAir = "supply-air", t!("spot-supply-air");
        /// Thermometer in the room with the thermostat.
        RoomAir = "room-air", t!("spot-room-air");
        /// Air outside, with the thermometer.
        OutsideAir = "outside-air", t!("spot-outside-air");
        /// Thermometer on the tank's skin, below the liquid's level (propane).
        TankSkin = "tank-skin", t!("spot-tank-skin");
        /// Flue analyser's probe in the flue.
        Flue = "flue", t!("spot-flue");
        /// Microammeter in series with the flame rod.
        FlameRod = "flame-rod", t!("spot-flame-rod");
        /// Volts between R and C on the furnace control.
        RToC = "r-c", t!("spot-r-c");
        /// Volts between W1 and C: the first stage's call.
        W1ToC = "w1-c", t!("spot-w1-c");
        /// Volts between W2 and C: the second stage's call.
        W2ToC = "w2-c", t!("spot-w2-c");
        /// Volts across the low pressure switch.
        #[serde(rename = "low-switch")]
        FirstSwitch = "low-switch", t!("spot-low-switch");
        /// Volts across the high pressure switch.
        #[serde(rename = "high-switch")]
        SecondSwitch = "high-switch", t!("spot-high-switch");
        /// Volts across the limit.
        LimitSwitch = "limit-switch", t!("spot-limit-switch");
        /// Volts across the roll-out switches.
        RolloutSwitch = "rollout-switch", t!("spot-rollout-switch");
        /// Volts across the low-gas switch of a propane kit.
        LowGasVolts = "low-gas-volts", t!("spot-low-gas-volts");
        /// Volts at the main coil.
        MainCoil = "main-coil", t!("spot-main-coil");
        /// Volts at the coil of the high stage.
        #[serde(rename = "high-coil")]
        SecondCoil = "high-coil", t!("spot-high-coil");
        /// Ohms of the igniter, cold.
        IgniterOhms = "igniter-ohms", t!("spot-igniter-ohms");
        /// Ohms of the high stage's coil.
        #[serde(rename = "high-coil-ohms")]
        SecondCoilOhms = "high-coil-ohms", t!("spot-high-coil-ohms");
        /// Ohms from the burners to the control's ground.
        BurnerGroundOhms = "burner-ground-ohms", t!("spot-burner-ground-ohms");
        /// Stopwatch at the test dial of the gas meter.
        MeterDial = "meter-dial", t!("spot-meter-dial");
    }
}

/// What an electrical meter is set to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
pub enum Range {
    /// Volts, alternating: the furnace has power.
    Volts,
    /// Ohms: the part must be dead.
    Ohms,
}
