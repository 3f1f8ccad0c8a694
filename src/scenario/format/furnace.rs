//! The furnace: plate, label, burners, valve and settings.

use crate::appliance::plate::Fuel;
use crate::scenario::shape::{choice, section};
use crate::scenario::value::{Count, Plain, Vary};
use crate::setup::Stacking;
use crate::units::{Flow, HeatRate, Length, Pressure, TemperatureStep, TimeSpan};

choice! {
    Stacking {
        Independent = "each stage has a spring of its own",
        HighOnLow = "the high spring adds to the low one",
    }
}

section! {
    /// The two-stage furnace.
    Furnace {
        /// Its rating plate.
        plate: Plate = required;
        /// The label that a fuel conversion left. Its figures replace the plate's.
        conversion: Option<Figures> = (derived "none: the furnace was never converted");
        /// Number of burners, each with one orifice. The drawing shows four.
        burners: Vary<Count> = "4", limits "1" to "8", usual "4" to "4" ("the drawing shows four");
        /// What is stamped on the orifices that are really fitted.
        orifice_fitted: Option<String> = (derived "what plate or label asks for"), text 120;
        /// Diameter of each orifice that is really fitted, where it is not as stamped: one for
        /// each burner. A tiny one stands for a plugged orifice.
        orifice_sizes: Option<Vec<Vary<Length>>> = (derived "as stamped"),
            limits "0.05 mm" to "10 mm";
        /// Discharge coefficient of the orifices.
        orifice_coefficient: Option<Vary<Plain>> =
            (derived "what gives the plate's input at the plate's high pressure"),
            limits "0.4" to "1", usual "0.78" to "0.92" ("NFPA 54 Annex E uses 0.80 to 0.90");
        /// Mark on the springs that are really fitted.
        springs_fitted: Option<Fuel> = (derived "the fuel of plate or label");
        /// The gas valve.
        valve: Valve = "()";
        /// What the two stages are found set to.
        settings: Settings = "()";
        /// Whether the low-gas switch of a propane kit is fitted.
        low_gas_switch: Option<bool> = (derived "`true` with a conversion label for propane");
        /// Suction in the burner box with the inducer on high.
        box_suction: Vary<Pressure> = "0 Pa", limits "0 Pa" to "2 inH2O";
        /// Warm-up of the igniter.
        igniter_warm_up: Vary<TimeSpan> = "17 s",
            limits "2 s" to "90 s", usual "5 s" to "45 s" ("common practice");
        /// Time on low after which the control goes to high by itself.
        auto_high: Option<Vary<TimeSpan>> = (derived "never"),
            limits "1 min" to "60 min", usual "7 min" to "16 min" ("common practice");
    }

    /// The rating plate.
    Plate {
        /// Model name, of a world of our own.
        model: String = required, text 120;
        /// Gas figures as the furnace was made.
        made_for: Figures = required;
        /// Input on high.
        input_high: Vary<HeatRate> = required,
            limits "10000 Btu/h" to "400000 Btu/h", usual "30000 Btu/h" to "200000 Btu/h" ("common practice");
        /// Input on low.
        input_low: Vary<HeatRate> = required, limits "5000 Btu/h" to "400000 Btu/h";
        /// Lowest temperature rise allowed.
        rise_min: Vary<TemperatureStep> = "35 degF", limits "5 degF" to "120 degF";
        /// Highest temperature rise allowed.
        rise_max: Vary<TemperatureStep> = "65 degF", limits "5 degF" to "150 degF";
        /// Highest pressure that the gas valve may see.
        valve_max: Vary<Pressure> = "14 inH2O",
            limits "5 inH2O" to "30 inH2O", usual "10 inH2O" to "14 inH2O" ("common practice: above 1/2 psi is hazardous");
    }

    /// The gas figures of a plate or of a conversion label.
    Figures {
        /// Fuel they are for.
        fuel: Fuel = required;
        /// Lowest inlet pressure while firing, with all other appliances on.
        inlet_min: Vary<Pressure> = required, limits "1 inH2O" to "20 inH2O";
        /// Highest inlet pressure.
        inlet_max: Vary<Pressure> = required, limits "2 inH2O" to "30 inH2O";
        /// Manifold pressure on low.
        low: Vary<Pressure> = required,
            limits "0.3 inH2O" to "12 inH2O", usual "1.2 inH2O" to "6.3 inH2O" ("makers' manuals");
        /// Allowed either way on low.
        low_tolerance: Vary<Pressure> = "0.3 inH2O", limits "0.05 inH2O" to "2 inH2O";
        /// Manifold pressure on high.
        high: Vary<Pressure> = required,
            limits "0.5 inH2O" to "14 inH2O", usual "3.2 inH2O" to "10.5 inH2O" ("makers' manuals");
        /// Allowed either way on high.
        high_tolerance: Vary<Pressure> = "0.3 inH2O", limits "0.05 inH2O" to "2 inH2O";
        /// Orifice as stamped: a number drill as "#44", or a diameter as "2.14 mm".
        orifice: String = required, text 120;
        /// Diameter of that orifice.
        orifice_size: Option<Vary<Length>> = (derived "as stamped"), limits "0.2 mm" to "10 mm";
        /// Decimals of inches of water that its pressures carry.
        decimals: Vary<Count> = "1", limits "0" to "2";
    }

    /// The two-stage gas valve.
    Valve {
        /// Pressure lost through the open valve at the flow `loss_flow`.
        loss: Option<Vary<Pressure>> =
            (derived "0.9 inH2O made for natural gas, 0.6 inH2O converted to propane"),
            limits "0.05 inH2O" to "6 inH2O", usual "0.2 inH2O" to "2 inH2O" ("common practice");
        /// The flow at which it loses that.
        loss_flow: Option<Vary<Flow>> = (derived "the flow at the plate's input on high"),
            limits "5 ft3/h" to "500 ft3/h";
        /// The low spring and its screw.
        low: Spring = "()";
        /// The high spring and its screw.
        high: Spring = "()";
        /// How the springs work together.
        stacking: Stacking = "Independent";
        /// Time to settle after a change of spring or screw.
        settle: Vary<TimeSpan> = "4 s", limits "0.1 s" to "30 s", usual "1 s" to "10 s" ("makers' manuals");
    }

    /// A stage spring under its screw.
    Spring {
        /// Pressure for one turn of the screw.
        per_turn: Option<Vary<Pressure>> =
            (derived "by the springs fitted: natural 0.4 inH2O low and 0.6 inH2O high, propane 1.2 and 1.6 inH2O"),
            limits "0.05 inH2O" to "10 inH2O";
        /// Turns from fully out to the bottom. The coils touch half a turn before.
        turns: Vary<Plain> = "9", limits "2" to "40";
    }

    /// What the stages are found set to, as pressures over the burner box with enough gas at the
    /// inlet.
    Settings {
        /// The low stage.
        low: Option<Vary<Pressure>> = (derived "the low pressure of plate or label"),
            limits "0 Pa" to "40 inH2O";
        /// The high stage.
        high: Option<Vary<Pressure>> = (derived "the high pressure of plate or label"),
            limits "0 Pa" to "40 inH2O";
    }
}
