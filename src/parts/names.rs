//! Places, parts and tools by name.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

named! {
    /// Where a person stands.
    Place {
        /// Outside, at the tank or the meter and the supply regulator.
        Yard = "yard", "Yard";
        /// In front of the furnace.
        PlantRoom = "plant-room", "Plant room";
        /// Kneeling at the open burner compartment, the gas valve close up.
        GasValve = "gas-valve", "Gas valve";
        /// At the thermostat.
        Hall = "hall", "Hall";
        /// Off the premises, at a safe distance.
        Away = "away", "Away";
    }
}

named! {
    /// A pressure port on the gas valve.
    Port {
        /// Upstream of the shut-off seats.
        Inlet = "inlet-port", "Inlet port";
        /// Downstream of the regulator.
        Manifold = "manifold-port", "Manifold port";
    }
}

named! {
    /// A hand valve that turns a quarter.
    Cock {
        /// The furnace's own manual valve.
        Furnace = "manual-valve", "Manual valve";
        /// The water heater's.
        WaterHeater = "water-heater-cock", "Water heater valve";
        /// The kitchen range's.
        Range = "range-cock", "Range valve";
        /// The shut-off of the whole supply, in the yard.
        Supply = "supply-cock", "Supply shut-off";
    }
}

named! {
    /// Another gas appliance of the house.
    Neighbor {
        /// The storage water heater in the plant room.
        WaterHeater = "water-heater", "Water heater";
        /// The range in the kitchen.
        Range = "range", "Kitchen range";
    }
}

named! {
    /// A screw that loads a regulator spring.
    Screw {
        /// The low stage's.
        Low = "low-screw", "Low stage screw";
        /// The high stage's.
        High = "high-screw", "High stage screw";
        /// The supply regulator's, in the yard.
        Supply = "supply-screw", "Supply regulator screw";
    }
}

named! {
    /// A furnace door.
    Door {
        /// The upper one, in front of the burners.
        Burner = "burner-door", "Burner door";
        /// The lower one, with the safety switch.
        Blower = "blower-door", "Blower door";
    }
}

named! {
    /// A window that airs a room.
    Window {
        /// In the plant room.
        PlantRoom = "plant-window", "Plant room window";
        /// In the hall.
        Hall = "hall-window", "Hall window";
    }
}

named! {
    /// Something to hold.
    Tool {
        /// The L-shaped key for the port plugs.
        HexKey = "hex-key", "Hex key";
        /// For caps and stage screws.
        SlottedDriver = "slotted-driver", "Slotted driver";
        /// Barbed fitting that goes into a port.
        Adapter = "adapter", "Barbed adapter";
        /// The manometer's hose.
        Hose = "hose", "Manometer hose";
        /// Leak fluid with its dauber.
        LeakFluid = "leak-fluid", "Leak fluid";
        /// The combustible gas detector.
        GasDetector = "gas-detector", "Gas detector";
        /// Thermometer with a bead on a wire.
        Thermometer = "thermometer", "Thermometer";
        /// Flue gas analyser with its probe.
        FlueAnalyser = "flue-analyser", "Flue analyser";
        /// Meter for the flame current, with two clips.
        Microammeter = "microammeter", "Microammeter";
        /// Meter for volts and ohms, with two leads.
        ElectricalMeter = "electrical-meter", "Electrical meter";
        /// Stopwatch.
        Stopwatch = "stopwatch", "Stopwatch";
    }
}

named! {
    /// A joint that can be disturbed and checked for leaks.
    Joint {
        /// The inlet port: its plug, or the adapter in its place.
        InletPort = "inlet-port", "Inlet port";
        /// The manifold port: its plug, or the adapter in its place.
        ManifoldPort = "manifold-port", "Manifold port";
        /// The union below the manual valve.
        Union = "union", "Union";
        /// The connector to the furnace.
        Connector = "connector", "Connector";
    }
}

impl Neighbor {
    /// The hand valve before it.
    #[must_use]
    pub fn cock(self) -> Cock {
        match self {
            Self::WaterHeater => Cock::WaterHeater,
            Self::Range => Cock::Range,
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
        /// The rating plate.
        Plate = "plate", "Rating plate";
        /// The label a conversion leaves behind.
        ConversionLabel = "conversion-label", "Conversion label";
        /// The number stamped on an orifice.
        Orifices = "orifices", "Orifice stamp";
        /// The mark on the valve's springs.
        SpringMark = "spring-mark", "Spring mark";
        /// The low-gas switch of a propane kit.
        LowGasSwitch = "low-gas-switch", "Low gas switch";
        /// The vent of the supply regulator.
        SupplyVent = "supply-vent", "Regulator vent";
        /// The furnace's flue.
        Vent = "vent", "Flue";
        /// The opening that brings air for burning.
        AirOpening = "air-opening", "Air opening";
        /// The gas connector behind the furnace.
        Connector = "connector", "Connector";
        /// The drip leg.
        DripLeg = "drip-leg", "Drip leg";
        /// The flames.
        Flames = "burners", "Flames";
        /// The furnace filter.
        Filter = "filter", "Filter";
        /// The propane tank's level gauge.
        TankGauge = "tank-gauge", "Tank gauge";
        /// The test dial of the gas meter.
        MeterDial = "meter-dial", "Meter dial";
        /// The carbon monoxide alarm.
        CoAlarm = "co-alarm", "CO alarm";
        /// The control's status.
        StatusLamp = "status-lamp", "Status lamp";
        /// The supply regulator's nameplate.
        SupplyRegulator = "supply-regulator", "Supply regulator";
        /// The hose from the inducer to the pressure switches, and the condensate trap below.
        DraftHose = "inducer", "Draft hose and trap";
        /// The hose from the burner box to the gas valve's regulator.
        BoxHose = "box-hose", "Burner box hose";
        /// The flame rod.
        FlameRod = "flame-rod", "Flame rod";
        /// The registers of the house's warm air.
        Registers = "register", "Registers";
    }
}

impl Subject {
    /// Where it can be looked at.
    #[must_use]
    pub fn place(self) -> Place {
        match self {
            Self::Plate
            | Self::ConversionLabel
            | Self::Vent
            | Self::AirOpening
            | Self::Connector
            | Self::DripLeg
            | Self::Flames
            | Self::Filter
            | Self::StatusLamp
            | Self::DraftHose => Place::PlantRoom,
            Self::Orifices
            | Self::SpringMark
            | Self::LowGasSwitch
            | Self::BoxHose
            | Self::FlameRod => Place::GasValve,
            Self::SupplyVent | Self::TankGauge | Self::MeterDial | Self::SupplyRegulator => {
                Place::Yard
            }
            Self::CoAlarm | Self::Registers => Place::Hall,
        }
    }
}
