//! Scene, house, manometer, found state, job card and marking.

use crate::parts::{Duty, Ending, Fitted, Level, OnOff, Position, Room, ValveBody, YardLook};
use crate::rules::Severity;
use crate::scenario::pick::Pick;
use crate::scenario::shape::{choice, section};
use crate::scenario::value::{Count, Plain, Vary};
use crate::setup::SupplyRight;
use crate::units::{HeatRate, HeatingValue, Pressure, Temperature, TimeSpan, Volume};

choice! {
    ValveBody {
        Plugs = id!("choice-valve-body-plugs"),
        TapScrews = id!("choice-valve-body-tap-screws"),
        SideBySide = id!("choice-valve-body-side-by-side"),
    }
    Room {
        Basement = id!("choice-room-basement"),
        Closet = id!("choice-room-closet"),
        Garage = id!("choice-room-garage"),
        Attic = id!("choice-room-attic"),
    }
    Position {
        Upright = id!("choice-position-upright"),
        Horizontal = id!("choice-position-horizontal"),
    }
    YardLook {
        Siding = id!("choice-yard-look-siding"),
        Brick = id!("choice-yard-look-brick"),
    }
    Fitted {
        On = id!("choice-fitted-on"),
        Off = id!("choice-fitted-off"),
    }
    SupplyRight {
        Trainee = id!("choice-supply-right-trainee"),
        OwnerOnly = id!("choice-supply-right-owner-only"),
    }
    Severity {
        Minor = id!("choice-severity-minor"),
        Major = id!("choice-severity-major"),
        Critical = id!("choice-severity-critical"),
    }
    Duty {
        ArrivalLooks = id!("choice-duty-arrival-looks"),
        TemperatureRise = id!("choice-duty-temperature-rise"),
        Combustion = id!("choice-duty-combustion"),
        GasRate = id!("choice-duty-gas-rate"),
        PipingLeakCheck = id!("choice-duty-piping-leak-check"),
    }
    Ending {
        InService = id!("choice-ending-in-service"),
        SupplyOwnerCalled = id!("choice-ending-supply-owner-called"),
        ShutOff = id!("choice-ending-shut-off"),
    }
}

section! {
    Scene(id!("format-scene")) {
        valve(id!("format-scene-valve")): Pick<ValveBody> = "Plugs";
        position(id!("format-scene-position")): Option<Pick<Position>> =
            (derived id!("default-scene-position"));
        room(id!("format-scene-room")): Option<Pick<Room>> = (derived id!("default-scene-room"));
        yard(id!("format-scene-yard")): Option<Pick<YardLook>> =
            (derived id!("default-scene-seed"));
        hour(id!("format-scene-hour")): Option<Vary<Plain>> =
            (derived id!("default-scene-hour")), limits "0" to "24";
    }

    House(id!("format-house")) {
        inside(id!("format-house-inside")): Vary<Temperature> = "66 degF",
            limits "32 degF" to "95 degF";
        setpoint(id!("format-house-setpoint")): Vary<Temperature> = "68 degF",
            limits "45 degF" to "90 degF";
        heat_loss(id!("format-house-heat-loss")): Vary<HeatRate> = "40000 Btu/h",
            limits "2000 Btu/h" to "300000 Btu/h";
        cooling_time(id!("format-house-cooling-time")): Vary<TimeSpan> = "8 h",
            limits "0.5 h" to "200 h";
        plant_room(id!("format-house-plant-room")): Vary<Volume> = "1000 ft3",
            limits "50 ft3" to "20000 ft3",
            usual "200 ft3" to "10000 ft3" (id!("usual-house-plant-room"));
        air_changes(id!("format-house-air-changes")): Vary<Plain> = "0.5", limits "0.05" to "20",
            usual "0.1" to "4" (id!("usual-house-air-changes"));
    }

    Manometer(id!("format-manometer")) {
        range(id!("format-manometer-range")): Vary<Pressure> = "20 inH2O",
            limits "1 inH2O" to "100 inH2O",
            usual "15 inH2O" to "100 inH2O" (id!("usual-manometer-range"));
        zero_error(id!("format-manometer-zero-error")): Vary<Pressure> = "0.1 inH2O",
            limits "-2 inH2O" to "2 inH2O";
        drift(id!("format-manometer-drift")): Vary<Pressure> = "0.03 inH2O",
            limits "-1 inH2O" to "1 inH2O";
        drift_time(id!("format-manometer-drift-time")): Vary<TimeSpan> = "5 min",
            limits "1 s" to "120 min";
        lag(id!("format-manometer-lag")): Vary<TimeSpan> = "0.5 s", limits "0.02 s" to "20 s";
    }

    Found(id!("format-found")) {
        manual_valve(id!("format-found-manual-valve")): Vary<Count> = "90", limits "0" to "90";
        valve_switch(id!("format-found-valve-switch")): Pick<OnOff> = "On";
        furnace_switch(id!("format-found-furnace-switch")): Pick<OnOff> = "On";
        thermostat(id!("format-found-thermostat")): Pick<OnOff> = "On";
        regulator_cap(id!("format-found-regulator-cap")): Pick<Fitted> = "On";
        low_cap(id!("format-found-low-cap")): Pick<Fitted> = "On";
        high_cap(id!("format-found-high-cap")): Pick<Fitted> = "On";
        inlet_plug(id!("format-found-inlet-plug")): Vary<Plain> = "0.75", limits "0" to "1.25";
        manifold_plug(id!("format-found-manifold-plug")): Vary<Plain> = "0.75",
            limits "0" to "1.25";
    }

    Card(id!("format-card")) {
        text(id!("format-card-text")): String = required;
        heating_value(id!("format-card-heating-value")): StatedHeat = "()";
        supply_owner(id!("format-card-supply-owner")): String = required, text 120;
        supply(id!("format-card-supply")): SupplyRight = required;
        hold(id!("format-card-hold")): Vary<TimeSpan> = "3 min", limits "10 s" to "20 min",
            usual "1 min" to "5 min" (id!("usual-card-hold"));
        required(id!("format-card-required")): Option<Vec<Duty>> =
            (derived id!("default-card-required")), entries 5;
        settle(id!("format-card-settle")): Vary<TimeSpan> = "10 s", limits "1 s" to "5 min";
    }

    StatedHeat(id!("format-stated-heat")) {
        natural(id!("format-stated-heat-natural")): Option<Vary<HeatingValue>> =
            (derived id!("default-stated-heat-natural")), limits "500 Btu/ft3" to "4000 Btu/ft3",
            fixed id!("fixed-as-in-the-text");
        propane(id!("format-stated-heat-propane")): Option<Vary<HeatingValue>> =
            (derived id!("default-stated-heat-propane")), limits "500 Btu/ft3" to "4000 Btu/ft3",
            fixed id!("fixed-as-in-the-text");
    }

    Marking(id!("format-marking")) {
        endings(id!("format-marking-endings")): Vec<Ending> = required;
        rules(id!("format-marking-rules")): Vec<RuleChange> = "[]";
    }

    RuleChange(id!("format-rule-change")) {
        id(id!("format-rule-change-id")): String = required;
        applies(id!("format-rule-change-applies")): bool = "true";
        weight(id!("format-rule-change-weight")): Option<Vary<Plain>> =
            (derived id!("default-of-the-shared-set")), limits "0" to "100",
            fixed id!("fixed-every-seed");
        severity(id!("format-rule-change-severity")): Option<Severity> =
            (derived id!("default-of-the-shared-set"));
    }
}

impl Found {
    /// How the cap over a level's screw is found, with its path.
    #[must_use]
    pub fn cap(&self, level: Level) -> (&'static str, &Pick<Fitted>) {
        level.choose(
            ("found.regulator_cap", &self.regulator_cap),
            ("found.low_cap", &self.low_cap),
            ("found.high_cap", &self.high_cap),
        )
    }
}
