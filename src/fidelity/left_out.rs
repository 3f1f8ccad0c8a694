//! What the model leaves out, as the heads of its modules say.

macro_rules! heads {
    ($($path:literal),+ $(,)?) => {
        /// Modules that say what they leave out, and their text.
        const HEADS: &[(&str, &str)] = &[$(($path, include_str!(concat!("../", $path)))),+];
    };
}

heads!(
    "physics/fluid.rs",
    "physics/pipe.rs",
    "physics/pipe/curve.rs",
    "physics/pipe/tubing.rs",
    "physics/orifice.rs",
    "physics/valve.rs",
    "physics/regulator.rs",
    "physics/regulator/calibrate.rs",
    "physics/regulator/seat.rs",
    "physics/regulator/spring.rs",
    "physics/network.rs",
    "physics/network/solve.rs",
    "physics/combustion.rs",
    "physics/combustion/flame.rs",
    "physics/heat.rs",
    "physics/room.rs",
    "physics/room/odor.rs",
    "appliance/ignition.rs",
    "appliance/safety.rs",
    "appliance/burner.rs",
    "appliance/draft.rs",
    "appliance/airside.rs",
    "site/tank.rs",
    "site/house.rs",
    "instrument/manometer.rs",
    "instrument/water_column.rs",
    "instrument/spring_gauge.rs",
    "instrument/thermometer.rs",
    "instrument/flue_analyser.rs",
    "instrument/electrical.rs",
    "instrument/stopwatch.rs",
    "instrument/leak_fluid.rs",
    "model/aftermath/mod.rs",
    "model/gas/wear.rs",
);

/// What a module is and leaves out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftOut {
    /// Its file under `src`.
    pub module: &'static str,
    /// First paragraph of the module's head: what it is.
    pub what: String,
    /// What it leaves out.
    pub text: String,
}

/// What every module leaves out, in the order of the layers.
#[must_use]
pub fn left_out() -> Vec<LeftOut> {
    HEADS
        .iter()
        .map(|(module, text)| LeftOut {
            module,
            what: paragraph(text, |line| Some(line)),
            text: paragraph(text, |line| line.strip_prefix("**Left out.** ")),
        })
        .collect()
}

/// The paragraph of a module's head whose first line `begins` finds, in one line.
fn paragraph(text: &str, begins: fn(&str) -> Option<&str>) -> String {
    let mut lines = text.lines().map_while(|line| line.strip_prefix("//!")).map(str::trim);
    let Some(first) = lines.find_map(begins) else {
        return String::new();
    };
    let rest = lines.take_while(|line| !line.is_empty() && !line.starts_with("**"));
    let mut whole = first.to_owned();
    for line in rest {
        whole.push(' ');
        whole.push_str(line);
    }
    whole
}
