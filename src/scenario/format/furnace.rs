//! The furnace: plate, label, burners, valve and settings.

use crate::appliance::plate::Fuel;
use crate::parts::{Level, Levels};
use crate::scenario::shape::{choice, section};
use crate::scenario::value::{Count, Plain, Vary};
use crate::setup::Stacking;
use crate::units::{Flow, HeatRate, Length, Pressure, TemperatureStep, TimeSpan};

choice! {
    Stacking {
        Independent = id!("choice-stacking-independent"),
        NextOnFirst as "HighOnLow" = id!("choice-stacking-high-on-low"),
    }
}

section! {
    Furnace(id!("format-furnace")) {
        plate(id!("format-furnace-plate")): Plate = required;
        conversion(id!("format-furnace-conversion")): Option<Figures> =
            (derived id!("default-furnace-conversion"));
        burners(id!("format-furnace-burners")): Vary<Count> = "4", limits "1" to "8",
            usual "4" to "4" (id!("usual-furnace-burners"));
        orifice_fitted(id!("format-furnace-orifice-fitted")): Option<String> =
            (derived id!("default-furnace-orifice-fitted")), text 120;
        orifice_sizes(id!("format-furnace-orifice-sizes")): Option<Vec<Vary<Length>>> =
            (derived id!("default-as-stamped")), limits "0.05 mm" to "10 mm";
        orifice_coefficient(id!("format-furnace-orifice-coefficient")): Option<Vary<Plain>> =
            (derived id!("default-furnace-orifice-coefficient")), limits "0.4" to "1",
            usual "0.78" to "0.92" (id!("usual-furnace-orifice-coefficient"));
        springs_fitted(id!("format-furnace-springs-fitted")): Option<Fuel> =
            (derived id!("default-furnace-springs-fitted"));
        valve(id!("format-furnace-valve")): Valve = "()";
        settings(id!("format-furnace-settings")): Settings = "()";
        low_gas_switch(id!("format-furnace-low-gas-switch")): Option<bool> =
            (derived id!("default-furnace-low-gas-switch"));
        box_suction(id!("format-furnace-box-suction")): Vary<Pressure> = "0 Pa",
            limits "0 Pa" to "2 inH2O";
        igniter_warm_up(id!("format-furnace-igniter-warm-up")): Vary<TimeSpan> = "17 s",
            limits "2 s" to "90 s", usual "5 s" to "45 s" (id!("usual-common-practice"));
        auto_high(id!("format-furnace-auto-high")): Option<Vary<TimeSpan>> =
            (derived id!("default-furnace-auto-high")), limits "1 min" to "60 min",
            usual "7 min" to "16 min" (id!("usual-common-practice"));
    }

    Plate(id!("format-plate")) {
        model(id!("format-plate-model")): String = required, text 120;
        made_for(id!("format-plate-made-for")): Figures = required;
        input(id!("format-plate-input")): Option<Vary<HeatRate>> =
            (derived id!("default-two-levels")), limits "10000 Btu/h" to "400000 Btu/h",
            usual "30000 Btu/h" to "200000 Btu/h" (id!("usual-common-practice"));
        input_high(id!("format-plate-input-high")): Option<Vary<HeatRate>> =
            (derived id!("default-one-level")), limits "10000 Btu/h" to "400000 Btu/h",
            usual "30000 Btu/h" to "200000 Btu/h" (id!("usual-common-practice"));
        input_low(id!("format-plate-input-low")): Option<Vary<HeatRate>> =
            (derived id!("default-one-level")), limits "5000 Btu/h" to "400000 Btu/h";
        rise_min(id!("format-plate-rise-min")): Vary<TemperatureStep> = "35 degF",
            limits "5 degF" to "120 degF";
        rise_max(id!("format-plate-rise-max")): Vary<TemperatureStep> = "65 degF",
            limits "5 degF" to "150 degF";
        valve_max(id!("format-plate-valve-max")): Vary<Pressure> = "14 inH2O",
            limits "5 inH2O" to "30 inH2O",
            usual "10 inH2O" to "14 inH2O" (id!("usual-plate-valve-max"));
    }

    Figures(id!("format-figures")) {
        fuel(id!("format-figures-fuel")): Fuel = required;
        inlet_min(id!("format-figures-inlet-min")): Vary<Pressure> = required,
            limits "1 inH2O" to "20 inH2O";
        inlet_max(id!("format-figures-inlet-max")): Vary<Pressure> = required,
            limits "2 inH2O" to "30 inH2O";
        manifold(id!("format-figures-manifold")): Option<Vary<Pressure>> =
            (derived id!("default-two-levels")), limits "0.5 inH2O" to "14 inH2O",
            usual "3.2 inH2O" to "10.5 inH2O" (id!("usual-makers-manuals"));
        manifold_tolerance(id!("format-figures-manifold-tolerance")): Vary<Pressure> = "0.3 inH2O",
            limits "0.05 inH2O" to "2 inH2O";
        low(id!("format-figures-low")): Option<Vary<Pressure>> =
            (derived id!("default-one-level")), limits "0.3 inH2O" to "12 inH2O",
            usual "1.2 inH2O" to "6.3 inH2O" (id!("usual-makers-manuals"));
        low_tolerance(id!("format-figures-low-tolerance")): Vary<Pressure> = "0.3 inH2O",
            limits "0.05 inH2O" to "2 inH2O";
        high(id!("format-figures-high")): Option<Vary<Pressure>> =
            (derived id!("default-one-level")), limits "0.5 inH2O" to "14 inH2O",
            usual "3.2 inH2O" to "10.5 inH2O" (id!("usual-makers-manuals"));
        high_tolerance(id!("format-figures-high-tolerance")): Vary<Pressure> = "0.3 inH2O",
            limits "0.05 inH2O" to "2 inH2O";
        orifice(id!("format-figures-orifice")): String = required, text 120;
        orifice_size(id!("format-figures-orifice-size")): Option<Vary<Length>> =
            (derived id!("default-as-stamped")), limits "0.2 mm" to "10 mm";
        decimals(id!("format-figures-decimals")): Vary<Count> = "1", limits "0" to "2";
    }

    Valve(id!("format-valve")) {
        loss(id!("format-valve-loss")): Option<Vary<Pressure>> =
            (derived id!("default-valve-loss")), limits "0.05 inH2O" to "6 inH2O",
            usual "0.2 inH2O" to "2 inH2O" (id!("usual-common-practice"));
        loss_flow(id!("format-valve-loss-flow")): Option<Vary<Flow>> =
            (derived id!("default-valve-loss-flow")), limits "5 ft3/h" to "500 ft3/h";
        spring(id!("format-valve-spring")): Spring = "()";
        low(id!("format-valve-low")): Spring = "()";
        high(id!("format-valve-high")): Spring = "()";
        stacking(id!("format-valve-stacking")): Stacking = "Independent";
        settle(id!("format-valve-settle")): Vary<TimeSpan> = "4 s", limits "0.1 s" to "30 s",
            usual "1 s" to "10 s" (id!("usual-makers-manuals"));
    }

    Spring(id!("format-spring")) {
        per_turn(id!("format-spring-per-turn")): Option<Vary<Pressure>> =
            (derived id!("default-spring-per-turn")), limits "0.05 inH2O" to "10 inH2O";
        turns(id!("format-spring-turns")): Vary<Plain> = "9", limits "2" to "40";
    }

    Settings(id!("format-settings")) {
        manifold(id!("format-settings-manifold")): Option<Vary<Pressure>> =
            (derived id!("default-settings-manifold")), limits "0 Pa" to "40 inH2O";
        low(id!("format-settings-low")): Option<Vary<Pressure>> =
            (derived id!("default-settings-low")), limits "0 Pa" to "40 inH2O";
        high(id!("format-settings-high")): Option<Vary<Pressure>> =
            (derived id!("default-settings-high")), limits "0 Pa" to "40 inH2O";
    }
}

/// What a file says of a firing level: the name of its field, and its value.
pub type Named<'a, T> = (&'static str, &'a T);

/// Manifold pressure of a level, and what is allowed either way of it.
#[derive(Debug, Clone, Copy)]
pub struct Manifold<'a> {
    /// Field that holds the pressure.
    pub field: &'static str,
    /// Target of the manifold pressure, in pascals.
    pub pressure: &'a Vary<Pressure>,
    /// Field that holds the tolerance.
    pub tolerance_field: &'static str,
    /// Tolerance to either side, in pascals.
    pub tolerance: &'a Vary<Pressure>,
}

/// What belongs to each level where either the one or both of two are written; none of a mixture.
fn levels<T>(only: Option<T>, low: Option<T>, high: Option<T>) -> Option<Levels<T>> {
    match (only, low, high) {
        (Some(only), None, None) => Some(Levels::one(only)),
        (None, Some(low), Some(high)) => Some(Levels::two(low, high)),
        (None | Some(_), _, _) => None,
    }
}

impl Plate {
    /// The inputs that are written; none where they are not those of one level or of two.
    #[must_use]
    pub fn inputs(&self) -> Option<Levels<Named<'_, Vary<HeatRate>>>> {
        levels(
            self.input.as_ref().map(|it| ("input", it)),
            self.input_low.as_ref().map(|it| ("input_low", it)),
            self.input_high.as_ref().map(|it| ("input_high", it)),
        )
    }
}

impl Figures {
    /// The manifold pressures that are written; none where they are not those of one level or of
    /// two.
    #[must_use]
    pub fn levels(&self) -> Option<Levels<Manifold<'_>>> {
        let only = self.manifold.as_ref().map(|pressure| Manifold {
            field: "manifold",
            pressure,
            tolerance_field: "manifold_tolerance",
            tolerance: &self.manifold_tolerance,
        });
        let low = self.low.as_ref().map(|pressure| Manifold {
            field: "low",
            pressure,
            tolerance_field: "low_tolerance",
            tolerance: &self.low_tolerance,
        });
        let high = self.high.as_ref().map(|pressure| Manifold {
            field: "high",
            pressure,
            tolerance_field: "high_tolerance",
            tolerance: &self.high_tolerance,
        });
        levels(only, low, high)
    }
}

impl Valve {
    /// The spring of a level.
    #[must_use]
    pub fn of(&self, level: Level) -> Named<'_, Spring> {
        match level {
            Level::Only => ("spring", &self.spring),
            Level::Low => ("low", &self.low),
            Level::High => ("high", &self.high),
        }
    }
}

impl Furnace {
    /// The time after which the control goes on to the next level by itself, if it does.
    #[must_use]
    pub fn auto_next(&self) -> Option<&Vary<TimeSpan>> {
        self.auto_high.as_ref()
    }
}

impl Settings {
    /// Every level found set as the plate says.
    pub fn clear(&mut self) {
        *self = Self { manifold: None, low: None, high: None };
    }

    /// What a level is found set to, if that is written.
    #[must_use]
    pub fn of(&self, level: Level) -> (&'static str, Option<&Vary<Pressure>>) {
        match level {
            Level::Only => ("manifold", self.manifold.as_ref()),
            Level::Low => ("low", self.low.as_ref()),
            Level::High => ("high", self.high.as_ref()),
        }
    }
}
