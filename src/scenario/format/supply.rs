//! Site, gas, supply, pipe and the other appliances.

use crate::appliance::plate::Fuel;
use crate::parts::OnOff;
use crate::scenario::pick::Pick;
use crate::scenario::shape::{choice, section, variants};
use crate::scenario::value::{Count, Plain, Vary};
use crate::units::{Flow, HeatRate, HeatingValue, Length, Pressure, Temperature, Volume};

choice! {
    Fuel {
        Natural = id!("choice-fuel-natural"),
        Propane = id!("choice-fuel-propane"),
    }
    OnOff {
        On = id!("choice-on-off-on"),
        Off = id!("choice-on-off-off"),
    }
}

section! {
    Site(id!("format-site")) {
        altitude(id!("format-site-altitude")): Vary<Length> = "0 ft",
            limits "-1000 ft" to "12000 ft";
        outside(id!("format-site-outside")): Vary<Temperature> = "50 degF",
            limits "-50 degF" to "110 degF";
    }

    Gas(id!("format-gas")) {
        fuel(id!("format-gas-fuel")): Fuel = required;
        heating_value(id!("format-gas-heating-value")): Option<Vary<HeatingValue>> =
            (derived id!("default-of-the-fuel")), limits "500 Btu/ft3" to "4000 Btu/ft3";
        specific_gravity(id!("format-gas-specific-gravity")): Option<Vary<Plain>> =
            (derived id!("default-of-the-fuel")), limits "0.3" to "3";
    }

    Supply(id!("format-supply")) {
        source(id!("format-supply-source")): Source = required;
        upstream(id!("format-supply-upstream")): Option<Vary<Pressure>> =
            (derived id!("default-supply-upstream")), limits "0.3 psi" to "60 psi",
            usual "0.5 psi" to "20 psi" (id!("usual-common-practice"));
        set(id!("format-supply-set")): Vary<Pressure> = required, limits "2 inH2O" to "20 inH2O",
            usual "4 inH2O" to "14 inH2O" (id!("usual-common-practice"));
        lockup(id!("format-supply-lockup")): Vary<Pressure> = required,
            limits "2 inH2O" to "40 inH2O";
        found(id!("format-supply-found")): Option<Vary<Pressure>> =
            (derived id!("default-supply-found")), limits "1 inH2O" to "30 inH2O";
        droop(id!("format-supply-droop")): Vary<Pressure> = required,
            limits "0.02 inH2O" to "6 inH2O";
        droop_flow(id!("format-supply-droop-flow")): Vary<Flow> = required,
            limits "10 ft3/h" to "2000 ft3/h";
        capacity(id!("format-supply-capacity")): Option<Vary<Flow>> =
            (derived id!("default-supply-capacity")), limits "10 ft3/h" to "10000 ft3/h";
        per_turn(id!("format-supply-per-turn")): Vary<Pressure> = "1 inH2O",
            limits "0.1 inH2O" to "6 inH2O",
            usual "0.3 inH2O" to "3 inH2O" (id!("usual-common-practice"));
        delivery_min(id!("format-supply-delivery-min")): Option<Vary<Pressure>> =
            (derived id!("default-supply-delivery-min")), limits "1 inH2O" to "20 inH2O";
        delivery_max(id!("format-supply-delivery-max")): Option<Vary<Pressure>> =
            (derived id!("default-supply-delivery-max")), limits "2 inH2O" to "30 inH2O";
        lockup_max(id!("format-supply-lockup-max")): Option<Vary<Pressure>> =
            (derived id!("default-supply-lockup-max")), limits "2 inH2O" to "40 inH2O";
    }

    Tank(id!("format-tank")) {
        capacity(id!("format-tank-capacity")): Vary<Volume> = "250 gal",
            limits "5 gal" to "2000 gal",
            usual "100 gal" to "1000 gal" (id!("usual-common-practice"));
        level(id!("format-tank-level")): Vary<Plain> = "0.6", limits "0.02" to "0.85";
    }

    Meter(id!("format-meter")) {
        dial(id!("format-meter-dial")): Vary<Volume> = "0.5 ft3", limits "0.25 ft3" to "10 ft3";
    }

    Steel(id!("format-steel")) {
        size(id!("format-steel-size")): String = required;
        length(id!("format-steel-length")): Vary<Length> = required, limits "0.5 ft" to "500 ft",
            usual "1 ft" to "200 ft" (id!("usual-most-houses"));
        elbows(id!("format-steel-elbows")): Vary<Count> = "0", limits "0" to "40";
        tees(id!("format-steel-tees")): Vary<Count> = "0", limits "0" to "20";
    }

    Copper(id!("format-copper")) {
        size(id!("format-copper-size")): String = required;
        length(id!("format-copper-length")): Vary<Length> = required, limits "0.5 ft" to "500 ft",
            usual "1 ft" to "200 ft" (id!("usual-most-houses"));
        elbows(id!("format-copper-elbows")): Vary<Count> = "0", limits "0" to "40";
        tees(id!("format-copper-tees")): Vary<Count> = "0", limits "0" to "20";
    }

    Corrugated(id!("format-corrugated")) {
        ehd(id!("format-corrugated-ehd")): Vary<Count> = required, limits "13" to "62";
        length(id!("format-corrugated-length")): Vary<Length> = required,
            limits "0.5 ft" to "300 ft", usual "1 ft" to "200 ft" (id!("usual-most-houses"));
        extra_fittings(id!("format-corrugated-extra-fittings")): Vary<Count> = "0",
            limits "0" to "40";
    }

    Neighbors(id!("format-neighbors")) {
        water_heater(id!("format-neighbors-water-heater")): Neighbor = required;
        range(id!("format-neighbors-range")): Neighbor = required;
    }

    Neighbor(id!("format-neighbor")) {
        input(id!("format-neighbor-input")): Vary<HeatRate> = required,
            limits "1000 Btu/h" to "400000 Btu/h",
            usual "5000 Btu/h" to "200000 Btu/h" (id!("usual-common-practice"));
        manifold(id!("format-neighbor-manifold")): Option<Vary<Pressure>> =
            (derived id!("default-neighbor-manifold")), limits "1 inH2O" to "12 inH2O";
        line(id!("format-neighbor-line")): Vec<Pipe> = required;
        found(id!("format-neighbor-found")): Pick<OnOff> = "Off";
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
