//! Every module of the model, in reading order.

/// What a module is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// It has a law of its own and the whole template.
    Law,
    /// It holds figures or a program: source and check suffice.
    Figures,
    /// It only names its parts.
    Folder,
}

/// A module.
pub struct Module {
    pub path: &'static str,
    pub title: &'static str,
    pub kind: Kind,
}

/// Modules that belong together.
pub struct Chapter {
    pub title: &'static str,
    pub modules: &'static [Module],
}

const fn law(path: &'static str, title: &'static str) -> Module {
    Module { path, title, kind: Kind::Law }
}

const fn figures(path: &'static str, title: &'static str) -> Module {
    Module { path, title, kind: Kind::Figures }
}

const fn folder(path: &'static str) -> Module {
    Module { path, title: "", kind: Kind::Folder }
}

/// A new module gets its line here, as a law unless it has none.
pub const CHAPTERS: &[Chapter] = &[
    Chapter {
        title: "Gas in pipes",
        modules: &[
            folder("src/physics/mod.rs"),
            law("src/physics/fluid.rs", "Gases"),
            law("src/physics/pipe.rs", "Pipe"),
            law("src/physics/pipe/curve.rs", "Flow curve"),
            figures("src/physics/pipe/sizes.rs", "Pipe sizes"),
            law("src/physics/pipe/tubing.rs", "Corrugated tubing"),
            law("src/physics/orifice.rs", "Openings"),
            figures("src/physics/orifice/drill.rs", "Drill sizes"),
            law("src/physics/valve.rs", "Hand valve"),
        ],
    },
    Chapter {
        title: "Regulator",
        modules: &[
            law("src/physics/regulator.rs", "Regulator"),
            law("src/physics/regulator/spring.rs", "Spring"),
            law("src/physics/regulator/seat.rs", "Seat"),
            law("src/physics/regulator/calibrate.rs", "From behaviour to parts"),
        ],
    },
    Chapter {
        title: "Network",
        modules: &[
            law("src/physics/network.rs", "Network"),
            law("src/physics/network/solve.rs", "One step"),
            figures("src/physics/network/build.rs", "Building"),
            figures("src/physics/network/elimination.rs", "Elimination"),
            figures("src/physics/network/guess.rs", "First guess"),
            folder("src/physics/network/slots.rs"),
            figures("src/physics/network/written.rs", "Written down"),
        ],
    },
    Chapter {
        title: "Fire, heat and air",
        modules: &[
            law("src/physics/combustion.rs", "Combustion"),
            law("src/physics/combustion/flame.rs", "Flame"),
            law("src/physics/heat.rs", "Heat exchanger"),
            law("src/physics/room.rs", "Room"),
            law("src/physics/room/odor.rs", "Nose"),
        ],
    },
    Chapter {
        title: "Furnace",
        modules: &[
            folder("src/appliance/mod.rs"),
            figures("src/appliance/plate.rs", "Rating plate"),
            figures("src/appliance/level.rs", "Firing levels"),
            figures("src/appliance/test_point.rs", "Test points"),
            law("src/appliance/draft.rs", "Draft"),
            law("src/appliance/burner.rs", "Burners"),
            law("src/appliance/airside.rs", "Air side"),
            law("src/appliance/safety.rs", "Safety devices"),
            law("src/appliance/ignition.rs", "Ignition control"),
            figures("src/appliance/ignition/sequence.rs", "Sequence"),
            figures("src/appliance/ignition/status.rs", "Status lamp"),
        ],
    },
    Chapter {
        title: "Site",
        modules: &[
            folder("src/site/mod.rs"),
            law("src/site/tank.rs", "Propane tank"),
            law("src/site/house.rs", "House and thermostat"),
        ],
    },
    Chapter {
        title: "Instruments",
        modules: &[
            folder("src/instrument/mod.rs"),
            law("src/instrument/manometer.rs", "Manometer"),
            law("src/instrument/water_column.rs", "Water column"),
            law("src/instrument/spring_gauge.rs", "Spring gauge"),
            law("src/instrument/thermometer.rs", "Thermometer"),
            law("src/instrument/flue_analyser.rs", "Flue analyser"),
            law("src/instrument/electrical.rs", "Microammeter and electrical meter"),
            law("src/instrument/stopwatch.rs", "Stopwatch"),
            figures("src/instrument/figure.rs", "Figures on a face"),
            law("src/instrument/leak_fluid.rs", "Leak fluid"),
        ],
    },
];
