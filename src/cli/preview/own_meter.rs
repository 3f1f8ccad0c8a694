//! What the job's own manometer shows, with whatever is wrong with it, its hose or the ports.

use std::fmt::Write as _;

use serde::Serialize;

use crate::measure::pattern::{Point, Start, measure};
use crate::parts::Port;
use crate::senses::seen::Display;
use crate::setup::Setup;
use crate::units::PA_PER_INWC;

/// Half of a manometer's last digit, in pascals.
const DIGIT_PA: f64 = 0.05 * PA_PER_INWC;

/// What it shows in one state with its hose on either port.
#[derive(Debug, Serialize)]
pub(super) struct StateReadings {
    state: String,
    inlet: MeterReading,
    manifold: MeterReading,
}

/// What it shows, and whether that is what is there.
#[derive(Debug, Serialize)]
struct MeterReading {
    shows: String,
    true_to_a_digit: bool,
}

/// The manometer as it comes out of the bag, its zero not set, on a job as it is found.
pub(super) fn readings(setup: &Setup) -> Vec<StateReadings> {
    let [inlet, manifold] = [Port::Inlet, Port::Manifold]
        .map(|port| measure(setup.clone(), Start::Hooked(port)).points);
    inlet
        .iter()
        .zip(&manifold)
        .map(|(inlet, manifold)| StateReadings {
            state: inlet.state(),
            inlet: reading(inlet, inlet.truth.inlet_pa),
            manifold: reading(manifold, manifold.truth.manifold_pa),
        })
        .collect()
}

fn reading(point: &Point, truth_pa: f64) -> MeterReading {
    let (shows, true_to_a_digit) = match point.display {
        Display::Number(shown) => (shown.to_string(), (shown.pa() - truth_pa).abs() < DIGIT_PA),
        Display::Dark => (t!("own-meter-dark").to_owned(), false),
        Display::OverRange => (t!("own-meter-over").to_owned(), false),
    };
    MeterReading { shows, true_to_a_digit }
}

/// As lines below the table; nothing when it shows what is there.
pub(super) fn text(all: &[StateReadings]) -> String {
    if all.iter().all(|it| it.inlet.true_to_a_digit && it.manifold.true_to_a_digit) {
        return String::new();
    }
    let mut out = format!(
        "\n{}\n{:<20} {:>20} {:>20}\n",
        t!("own-meter-title"),
        t!("preview-state"),
        t!("own-meter-inlet"),
        t!("own-meter-manifold")
    );
    for it in all {
        let _ = writeln!(out, "{:<20} {:>20} {:>20}", it.state, it.inlet.shows, it.manifold.shows);
    }
    out
}
