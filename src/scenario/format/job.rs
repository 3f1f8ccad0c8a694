//! House, manometer, found state, job card and marking.

use crate::parts::{Ending, Fitted, OnOff};
use crate::rules::Severity;
use crate::scenario::pick::Pick;
use crate::scenario::shape::{choice, section};
use crate::scenario::value::{Count, Plain, Vary};
use crate::setup::SupplyRight;
use crate::units::{HeatRate, HeatingValue, Pressure, Temperature, TimeSpan, Volume};

choice! {
    Fitted {
        On = "in its place",
        Off = "taken off",
    }
    SupplyRight {
        Trainee = "the trainee may set it, inside its limits",
        OwnerOnly = "its owner only: call, do not touch",
    }
    Severity {
        Minor = "a matter of good practice",
        Major = "makes the result wrong or incomplete",
        Critical = "could hurt somebody or leave an unsafe appliance",
    }
    Ending {
        InService = "the furnace is back in service",
        SupplyOwnerCalled = "the furnace runs, and the owner of the supply was called to put the supply right",
        ShutOff = "shut off, tagged and explained",
    }
}

section! {
    /// The house around the furnace.
    House {
        /// Temperature inside at the start.
        inside: Vary<Temperature> = "66 degF", limits "32 degF" to "95 degF";
        /// Setpoint of the thermostat as found, to half a degree Fahrenheit.
        setpoint: Vary<Temperature> = "68 degF", limits "40 degF" to "90 degF";
        /// Heat that the house loses with 70 °F between inside and outside.
        heat_loss: Vary<HeatRate> = "40000 Btu/h", limits "2000 Btu/h" to "300000 Btu/h";
        /// Time in which an unheated house loses 63 % of its difference to outside.
        cooling_time: Vary<TimeSpan> = "8 h", limits "0.5 h" to "200 h";
        /// Volume of the plant room.
        plant_room: Vary<Volume> = "1000 ft3", limits "50 ft3" to "20000 ft3", usual "200 ft3" to "10000 ft3" ("common practice; below 50 ft3 for 1,000 Btu/h it needs openings for air, NFPA 54");
        /// Air changes of the plant room in an hour, window closed.
        air_changes: Vary<Plain> = "0.5", limits "0.05" to "20", usual "0.1" to "4" ("common practice; NFPA 54 reckons with 0.4 or more");
    }

    /// The manometer.
    Manometer {
        /// Largest pressure that it shows.
        range: Vary<Pressure> = "20 inH2O", limits "1 inH2O" to "100 inH2O", usual "15 inH2O" to "100 inH2O" ("makers' manuals ask for 0 to 15 in. w.c. or more");
        /// Its error before it is zeroed.
        zero_error: Vary<Pressure> = "0.1 inH2O", limits "-2 inH2O" to "2 inH2O";
        /// How far its zero still drifts as it warms up.
        drift: Vary<Pressure> = "0.03 inH2O", limits "-1 inH2O" to "1 inH2O";
        /// Time constant of that drift.
        drift_time: Vary<TimeSpan> = "5 min", limits "1 s" to "120 min";
        /// Time constant of the display.
        lag: Vary<TimeSpan> = "0.5 s", limits "0.02 s" to "20 s";
    }

    /// How things are found.
    Found {
        /// The furnace's manual valve, in degrees from shut: 90 is open.
        manual_valve: Vary<Count> = "90", limits "0" to "90";
        /// The switch on the gas valve.
        valve_switch: Pick<OnOff> = "On";
        /// The furnace's service switch.
        furnace_switch: Pick<OnOff> = "On";
        /// The thermostat's heat switch.
        thermostat: Pick<OnOff> = "On";
        /// The cap over the low screw.
        low_cap: Pick<Fitted> = "On";
        /// The cap over the high screw.
        high_cap: Pick<Fitted> = "On";
        /// How far the plug of the inlet port stands in, in turns past finger-tight: 0.5 to 1 is
        /// snug.
        inlet_plug: Vary<Plain> = "0.75", limits "0" to "1.25";
        /// The same for the plug of the manifold port.
        manifold_plug: Vary<Plain> = "0.75", limits "0" to "1.25";
    }

    /// The job card.
    Card {
        /// What is asked, in plain words.
        text: String = required;
        /// The heating value of the gas that the text states. The technician and the marks go by these
        /// figures, never by the text; `check` holds the text against them.
        heating_value: StatedHeat = "()";
        /// Who owns the supply regulator, in words.
        supply_owner: String = required, text 120;
        /// Who may set the supply regulator.
        supply: SupplyRight = required;
        /// How long a no-flow hold must last.
        hold: Vary<TimeSpan> = "3 min", limits "10 s" to "20 min", usual "1 min" to "5 min" ("NFPA 54 Annex C: 3 min, from memory");
        /// How long after a change a reading counts as settled.
        settle: Vary<TimeSpan> = "10 s", limits "1 s" to "5 min";
    }

    /// Heating values that the card's text states, per cubic foot of the gas itself. A job in which the
    /// trainee has to prove the fuel states both.
    StatedHeat {
        /// That of natural gas.
        natural: Option<Vary<HeatingValue>> =
            (derived "none: natural gas as it is sold, 950 to 1,100 Btu/ft3"),
            limits "500 Btu/ft3" to "4000 Btu/ft3", fixed "for every seat, as in the text";
        /// That of propane.
        propane: Option<Vary<HeatingValue>> = (derived "none: propane of 2,516 Btu/ft3"),
            limits "500 Btu/ft3" to "4000 Btu/ft3", fixed "for every seat, as in the text";
    }

    /// How the job is marked.
    Marking {
        /// Ways of ending the job that are right, the usual one first. Where that is `ShutOff`, what a
        /// furnace that was rightly shut off never came to is not missed.
        endings: Vec<Ending> = required;
        /// Rules that differ from the shared set in this job.
        rules: Vec<RuleChange> = "[]";
    }

    /// A rule of the shared set that differs in this job.
    RuleChange {
        /// The rule's id; `quarterturn explain rules` lists them.
        id: String = required;
        /// Whether it applies.
        applies: bool = "true";
        /// Its weight in points.
        weight: Option<Vary<Plain>> = (derived "that of the shared set"), limits "0" to "100",
            fixed "for every seat";
        /// How bad breaking it is.
        severity: Option<Severity> = (derived "that of the shared set");
    }
}
