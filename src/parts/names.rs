//! Places, parts and tools by name.

use crate::appliance::level::Level;
use crate::appliance::test_point::Port;
use enum_map::Enum;
use serde::{Deserialize, Serialize};

named! {
    /// Where a person stands.
    Place {
        /// Outside, at the tank or the meter and the supply regulator.
        Yard = "yard", t!("place-yard");
        /// In front of the furnace.
        PlantRoom = "plant-room", t!("place-plant-room");
        /// Kneeling at the open burner compartment, the gas valve close up.
        GasValve = "gas-valve", t!("place-gas-valve");
        /// At the thermostat in the hall.
        Hall = "hall", t!("place-hall");
        /// Off the premises, at a safe distance.
        Away = "away", t!("place-away");
    }
}

named! {
    /// A hand valve that turns a quarter.
    HandValve {
        /// The furnace's own manual valve.
        Furnace = "manual-valve", t!("part-manual-valve");
        /// Before the water heater.
        WaterHeater = "water-heater-cock", t!("part-water-heater-cock");
        /// Before the kitchen range.
        Range = "range-cock", t!("part-range-cock");
        /// The shut-off of the whole supply, in the yard.
        Supply = "supply-cock", t!("part-supply-cock");
    }
}

named! {
    /// Another gas appliance of the house.
    OtherAppliance {
        /// The storage water heater in the plant room.
        WaterHeater = "water-heater", t!("part-water-heater");
        /// The range in the kitchen.
        Range = "range", t!("part-range");
    }
}

named! {
    /// A screw that loads a regulator spring.
    Screw {
        /// The one of a furnace with one firing level.
        Only = "regulator-screw", t!("part-regulator-screw");
        /// The one that sets the low level.
        Low = "low-screw", t!("part-low-screw");
        /// The one that sets the high level.
        High = "high-screw", t!("part-high-screw");
        /// The supply regulator's, in the yard.
        Supply = "supply-screw", t!("part-supply-screw");
    }
}

impl Level {
    /// The id of the cap over its screw in the drawings.
    #[must_use]
    pub fn cap_id(self) -> &'static str {
        self.choose("regulator-cap", "low-cap", "high-cap")
    }

    /// The id of its pressure switch in the drawings.
    #[must_use]
    pub fn switch_id(self) -> &'static str {
        self.choose("pressure-switch", "pressure-switch-low", "pressure-switch-high")
    }

    /// The screw under its spring.
    #[must_use]
    pub fn screw(self) -> Screw {
        self.choose(Screw::Only, Screw::Low, Screw::High)
    }
}

impl Screw {
    /// The level whose spring it loads; none for the supply regulator's.
    #[must_use]
    pub fn level(self) -> Option<Level> {
        Level::ALL.into_iter().find(|level| level.screw() == self)
    }
}

named! {
    /// Door of the furnace that lifts off.
    Door {
        /// The upper one, in front of the burners.
        Burner = "burner-door", t!("part-burner-door");
        /// The lower one, with the safety switch.
        Blower = "blower-door", t!("part-blower-door");
    }
}

named! {
    /// A window that airs a room.
    Window {
        /// In the plant room.
        PlantRoom = "plant-window", t!("part-plant-window");
        /// Window in the hall of the house.
        Hall = "hall-window", t!("part-hall-window");
    }
}

named! {
    /// Tool or instrument that fills the hand.
    Tool {
        /// The L-shaped key for the port plugs.
        HexKey = "hex-key", t!("tool-hex-key");
        /// For caps and stage screws.
        SlottedDriver = "slotted-driver", t!("tool-slotted-driver");
        /// Barbed fitting that goes into a port.
        Adapter = "adapter", t!("tool-adapter");
        /// Hose from the manometer to the adapter.
        Hose = "hose", t!("tool-hose");
        /// Leak fluid with its dauber.
        LeakFluid = "leak-fluid", t!("tool-leak-fluid");
        /// The combustible gas detector.
        GasDetector = "gas-detector", t!("tool-gas-detector");
        /// Thermometer with a bead on a wire.
        Thermometer = "thermometer", t!("tool-thermometer");
        /// Flue gas analyser with its probe.
        FlueAnalyser = "flue-analyser", t!("tool-flue-analyser");
        /// Meter for the flame current, with two clips.
        Microammeter = "microammeter", t!("tool-microammeter");
        /// Meter for volts and ohms, with two leads.
        ElectricalMeter = "electrical-meter", t!("tool-electrical-meter");
        /// Stopwatch, for timing the meter's dial.
        Stopwatch = "stopwatch", t!("tool-stopwatch");
    }
}

named! {
    /// A joint that can be disturbed and checked for leaks.
    Joint {
        /// The inlet port: its plug, or the adapter in its place.
        InletPort = "inlet-port", t!("part-inlet-port");
        /// The manifold port: its plug, or the adapter in its place.
        ManifoldPort = "manifold-port", t!("part-manifold-port");
        /// The union below the manual valve.
        Union = "union", t!("part-union");
        /// The connector to the furnace.
        Connector = "connector", t!("part-connector");
        /// The joints of the supply regulator.
        SupplyRegulator = "supply-regulator", t!("subject-supply-regulator");
        /// The joints of the first-stage regulator.
        FirstRegulator = "first-regulator", t!("part-first-regulator");
        /// The joint at the tank's service valve.
        TankValve = "tank-valve", t!("part-tank-valve");
        /// The joints of the trunk, at the riser.
        Riser = "riser", t!("part-riser");
    }
}

impl Joint {
    /// Whether it lies outside, before the house.
    #[must_use]
    pub fn is_in_yard(self) -> bool {
        match self {
            Self::InletPort | Self::ManifoldPort | Self::Union | Self::Connector => false,
            Self::SupplyRegulator | Self::FirstRegulator | Self::TankValve | Self::Riser => true,
        }
    }
}

impl OtherAppliance {
    /// The hand valve before it.
    #[must_use]
    pub fn hand_valve(self) -> HandValve {
        match self {
            Self::WaterHeater => HandValve::WaterHeater,
            Self::Range => HandValve::Range,
        }
    }
}

impl Port {
    /// The joint that this port makes.
    #[must_use]
    pub fn joint(self) -> Joint {
        match self {
            Self::Inlet => Joint::InletPort,
            Self::Manifold => Joint::ManifoldPort,
        }
    }
}

named! {
    /// Something to look at closely.
    Subject {
        /// The furnace's rating plate.
        Plate = "plate", t!("subject-plate");
        /// The label a conversion leaves behind.
        ConversionLabel = "conversion-label", t!("subject-conversion-label");
        /// The number stamped on an orifice.
        Orifices = "orifices", t!("subject-orifices");
        /// The mark on the valve's springs.
        SpringMark = "spring-mark", t!("subject-spring-mark");
        /// The low-gas switch of a propane kit.
        LowGasSwitch = "low-gas-switch", t!("subject-low-gas-switch");
        /// The vent of the supply regulator.
        SupplyVent = "supply-vent", t!("subject-supply-vent");
        /// Flue pipe of the furnace.
        Vent = "vent", t!("subject-vent");
        /// The opening that brings air for burning.
        AirOpening = "air-opening", t!("subject-air-opening");
        /// The gas connector behind the furnace.
        Connector = "connector", t!("subject-connector");
        /// Drip leg before the furnace.
        DripLeg = "drip-leg", t!("subject-drip-leg");
        /// Flames of the burners, through the opened door.
        Flames = "burners", t!("subject-burners");
        /// Filter in the furnace's return air.
        Filter = "filter", t!("subject-filter");
        /// The propane tank's level gauge.
        TankGauge = "tank-gauge", t!("subject-tank-gauge");
        /// The test dial of the gas meter.
        MeterDial = "meter-dial", t!("subject-meter-dial");
        /// The carbon monoxide alarm.
        CoAlarm = "co-alarm", t!("subject-co-alarm");
        /// Status of the control, as its lamp blinks it.
        StatusLamp = "status-lamp", t!("subject-status-lamp");
        /// The supply regulator's nameplate.
        SupplyRegulator = "supply-regulator", t!("subject-supply-regulator");
        /// The hose from the inducer to the pressure switches, and the condensate trap below.
        DraftHose = "inducer", t!("subject-inducer");
        /// The hose from the burner box to the gas valve's regulator.
        BoxHose = "box-hose", t!("subject-box-hose");
        /// Flame rod at the burners.
        FlameRod = "flame-rod", t!("subject-flame-rod");
        /// The registers of the house's warm air.
        Registers = "register", t!("subject-register");
    }
}
