//! Site, gas, supply, pipe and the other appliances.

use crate::appliance::plate::Fuel;
use crate::parts::OnOff;
use crate::scenario::pick::Pick;
use crate::scenario::shape::{choice, section, variants};
use crate::scenario::value::{Count, Plain, Vary};
use crate::units::{Flow, HeatRate, HeatingValue, Length, Pressure, Temperature, Volume};

choice! {
    Fuel {
        Natural = "piped natural gas",
        Propane = "propane vapour",
    }
    OnOff {
        On = "on",
        Off = "off",
    }
}

section! {
    /// Where the house stands.
    Site {
        /// Height above the sea.
        altitude: Vary<Length> = "0 ft", limits "-1000 ft" to "12000 ft";
        /// Temperature of the air outside.
        outside: Vary<Temperature> = "50 degF", limits "-50 degF" to "110 degF";
    }

    /// The gas in the pipes. Natural gas is 1,030 Btu/ft3 at a specific gravity of 0.60, propane
    /// 2,516 Btu/ft3 at 1.52, unless written otherwise.
    Gas {
        /// Which fuel it is.
        fuel: Fuel = required;
        /// Gross heating value.
        heating_value: Option<Vary<HeatingValue>> = (derived "that of the fuel"),
            limits "500 Btu/ft3" to "4000 Btu/ft3";
        /// Density against air.
        specific_gravity: Option<Vary<Plain>> = (derived "that of the fuel"),
            limits "0.3" to "3";
    }

    /// The supply regulator with what stands before it.
    Supply {
        /// Tank or meter.
        source: Source = required;
        /// Pressure before the supply regulator: the main, the 2-psi line, or the line from a
        /// first-stage regulator.
        upstream: Option<Vary<Pressure>> = (derived "10 psi behind a tank, 2 psi behind a meter"),
            limits "0.3 psi" to "60 psi", usual "0.5 psi" to "20 psi" ("common practice");
        /// Pressure it is meant to be set to.
        set: Vary<Pressure> = required,
            limits "2 inH2O" to "20 inH2O", usual "4 inH2O" to "14 inH2O" ("common practice");
        /// Its pressure at no flow when it is set so.
        lockup: Vary<Pressure> = required, limits "2 inH2O" to "40 inH2O";
        /// What it is found set to; its lock-up moves along.
        found: Option<Vary<Pressure>> = (derived "the pressure it is meant to be set to"),
            limits "1 inH2O" to "30 inH2O";
        /// How far it falls below its set pressure at the flow `droop_flow`.
        droop: Vary<Pressure> = required, limits "0.02 inH2O" to "6 inH2O";
        /// The flow at which it has fallen that far.
        droop_flow: Vary<Flow> = required, limits "10 ft3/h" to "2000 ft3/h";
        /// Flow with its seat wide open.
        capacity: Option<Vary<Flow>> = (derived "twice `droop_flow`"),
            limits "10 ft3/h" to "10000 ft3/h";
        /// Change of the set pressure for one turn of its screw. The screw goes in six turns beyond
        /// the greater of set pressure and `delivery_max`, where its coils touch.
        per_turn: Vary<Pressure> = "1 inH2O",
            limits "0.1 inH2O" to "6 inH2O", usual "0.3 inH2O" to "3 inH2O" ("common practice");
        /// Lowest delivery pressure that its owner allows. The trainee reads it on the regulator's
        /// nameplate. Where the trainee may set the supply, the marking holds against it what the
        /// regulator is left set to: the pressure behind it at next to no flow, not the one under
        /// load.
        delivery_min: Option<Vary<Pressure>> = (derived "a tenth below `set`"),
            limits "1 inH2O" to "20 inH2O";
        /// Highest delivery pressure that its owner allows, also on the nameplate. Where the trainee may
        /// set the supply, or has turned its screw, it must not be left set above this.
        delivery_max: Option<Vary<Pressure>> = (derived "a tenth above `set`"),
            limits "2 inH2O" to "30 inH2O";
        /// Highest pressure at no flow that is allowed, also on the nameplate. The trainee holds the
        /// inlet at rest against it; the marking does not, but it counts what stands at the gas
        /// valve above `furnace.plate.valve_max` once the screw has been turned.
        lockup_max: Option<Vary<Pressure>> = (derived "a fifth above `set`"),
            limits "2 inH2O" to "40 inH2O";
    }

    /// A propane tank with its first-stage regulator.
    Tank {
        /// Water capacity.
        capacity: Vary<Volume> = "250 gal",
            limits "5 gal" to "2000 gal", usual "100 gal" to "1000 gal" ("common practice");
        /// Liquid level, as a share of the tank.
        level: Vary<Plain> = "0.6", limits "0.02" to "0.85";
    }

    /// A natural-gas meter.
    Meter {
        /// Gas for one turn of the meter's test dial.
        dial: Vary<Volume> = "0.5 ft3", limits "0.25 ft3" to "10 ft3";
    }

    /// Schedule 40 steel pipe.
    Steel {
        /// Nominal size, as "1/2", "3/4", "1" or "1-1/4".
        size: String = required;
        /// Length along the pipe.
        length: Vary<Length> = required, limits "0.5 ft" to "500 ft", usual "1 ft" to "200 ft" ("common practice; most houses");
        /// Screwed 90° elbows.
        elbows: Vary<Count> = "0", limits "0" to "40";
        /// Tees that the gas passes through their branch.
        tees: Vary<Count> = "0", limits "0" to "20";
    }

    /// Semirigid copper tube, type K or L.
    Copper {
        /// Nominal size, as "1/2", "5/8" or "3/4".
        size: String = required;
        /// Length along the tube.
        length: Vary<Length> = required, limits "0.5 ft" to "500 ft", usual "1 ft" to "200 ft" ("common practice; most houses");
        /// 90° elbows.
        elbows: Vary<Count> = "0", limits "0" to "40";
        /// Tees that the gas passes through their branch.
        tees: Vary<Count> = "0", limits "0" to "20";
    }

    /// Corrugated stainless steel tubing. Four bends and two end fittings are in its table.
    Corrugated {
        /// Equivalent hydraulic diameter, a trade number: 13, 15, 18, 19, 23, 25, 30, 31, 37, 39,
        /// 46, 48, 60 or 62.
        ehd: Vary<Count> = required, limits "13" to "62";
        /// Length along the tubing.
        length: Vary<Length> = required, limits "0.5 ft" to "300 ft", usual "1 ft" to "200 ft" ("common practice; most houses");
        /// Bends and fittings beyond those in the table.
        extra_fittings: Vary<Count> = "0", limits "0" to "40";
    }

    /// The two other gas appliances of the house.
    Neighbors {
        /// The storage water heater in the plant room.
        water_heater: Neighbor = required;
        /// The range in the kitchen.
        range: Neighbor = required;
    }

    /// Another gas appliance.
    Neighbor {
        /// Input at full rate.
        input: Vary<HeatRate> = required,
            limits "1000 Btu/h" to "400000 Btu/h", usual "5000 Btu/h" to "200000 Btu/h" ("common practice");
        /// Pressure behind its own regulator.
        manifold: Option<Vary<Pressure>> = (derived "3.5 inH2O on natural gas, 10 inH2O on propane"),
            limits "1 inH2O" to "12 inH2O";
        /// Pipe from the tee in the plant room to it.
        line: Vec<Pipe> = required;
        /// Whether it is found turned on.
        found: Pick<OnOff> = "Off";
    }
}

variants! {
    /// Where the gas comes from.
    Source { Tank, Meter, }
}

variants! {
    /// A stretch of pipe or tubing.
    Pipe { Steel, Copper, Corrugated, }
}
