//! Which faults of the catalogue show the same signs as a job's own: nobody could tell them apart by
//! what is read, seen and heard at any test point.

use serde::Serialize;

use crate::bench::Bench;
use crate::bench::action::Action;
use crate::bench::fault::Fault;
use crate::bench::fault::pattern::{Hands, Pattern, Point, measure};
use crate::bench::part::{Place, Port, Subject};
use crate::bench::seen::Display;
use crate::bench::setup::Setup;
use crate::scenario::Scenario;
use crate::units::PA_PER_INWC;

/// What a pressure must differ by to be told apart, in pascals (0.1 in. w.c., a digit of the
/// trade's ordinary meters).
const PRESSURE_PA: f64 = 0.1 * PA_PER_INWC;
/// What a rate must differ by, as a share of the plate's input (a dial timed with a stopwatch;
/// common practice).
const RATE: f64 = 0.03;
/// What a flame current must differ by, in microamperes.
const FLAME_UA: f64 = 0.3;
/// What a temperature rise must differ by, in kelvins (5 °F; common practice).
const RISE_K: f64 = 2.8;
/// What the carbon monoxide must differ by, in parts per million air-free.
const CO_PPM: f64 = 25.0;
/// What a draft must differ by, in pascals (0.05 in. w.c.).
const DRAFT_PA: f64 = 0.05 * PA_PER_INWC;

/// A fault that looks like the job's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Alike {
    /// Its name.
    pub fault: &'static str,
    /// How severe, as an author writes it; empty for one that is there or not.
    pub severity: String,
}

/// Faults of the catalogue, one at a time at their lowest, typical and highest severity, that show
/// what this job shows on this seed. The job's own fault is left out, and so are faults that change
/// nothing that shows on this site.
#[must_use]
pub fn alike(scenario: &Scenario, seed: u64) -> Vec<Alike> {
    let job = scenario.draw(seed);
    let sound = scenario.draw_sound(seed);
    let own = Signs::of(job.clone());
    if own.same(&Signs::of(sound.clone())) {
        return Vec::new();
    }
    let mut found = Vec::new();
    for &fault in Fault::ALL {
        if fault.misfit(&sound).is_some() || job.faults.iter().any(|(one, _)| *one == fault) {
            continue;
        }
        let severity = &fault.entry().severity;
        let (low, high) = severity.range();
        for value in [low, severity.typical(sound.fuel), high] {
            let mut setup = sound.clone();
            fault.apply(&mut setup, value);
            if own.same(&Signs::of(setup)) {
                found.push(Alike { fault: fault.name(), severity: severity.show(value) });
                break;
            }
        }
    }
    found
}

/// What a careful person can read and see of a bench.
struct Signs {
    numbers: Vec<(f64, f64)>,
    words: Vec<String>,
}

impl Signs {
    fn of(setup: Setup) -> Self {
        let mut signs = Self { numbers: Vec::new(), words: Vec::new() };
        signs.look(setup.clone());
        for port in Port::ALL {
            signs.take(&measure(setup.clone(), Hands::OpenUp, Some(*port)));
        }
        signs
    }

    /// Looks at everything, everywhere.
    fn look(&mut self, setup: Setup) {
        let mut bench = Bench::new(setup);
        for place in Place::ALL {
            // What cannot be done or looked at from here is refused.
            let _ = bench.apply(&Action::Go(*place));
            for subject in Subject::ALL {
                let _ = bench.apply(&Action::Look(*subject));
            }
            let seen = bench.seen();
            self.words.push(format!("{:?} {:?} {:?}", seen.smell, seen.sounds, seen.furnace));
        }
        // The figure on the dial is where it happens to stand.
        let notes = bench.seen().sheet.notes.into_iter();
        let notes = notes.filter(|note| note.subject != Subject::MeterDial);
        self.words.extend(notes.map(|note| note.text));
    }

    fn take(&mut self, pattern: &Pattern) {
        self.words.push(format!("{:?}", pattern.signs));
        for point in &pattern.points {
            self.take_point(point);
        }
    }

    fn take_point(&mut self, point: &Point) {
        let truth = &point.truth;
        self.words.push(format!("{:?} {:?}", point.missed, truth.firing));
        let mut add = |value: f64, resolution: f64| self.numbers.push((value, resolution));
        add(truth.supply_pa, PRESSURE_PA);
        for (low, high) in point.swing_pa {
            add(low, PRESSURE_PA);
            add(high, PRESSURE_PA);
        }
        add(truth.input_w / point.rated_w.max(1.0), RATE);
        add(truth.flame_ua, FLAME_UA);
        add(truth.rise_k, RISE_K);
        add(truth.co_air_free_ppm, CO_PPM);
        add(truth.draft_pa, DRAFT_PA);
        add(truth.vented_m3_s * 1e6, 1.0);
        for leak in truth.leak_m3_s {
            // Leak fluid shows very little.
            add(leak * 1e6, 0.1);
        }
        match point.display {
            Display::Number(shown) => add(shown.pa(), PRESSURE_PA),
            Display::Dark | Display::OverRange => {}
        }
        let word = match point.display {
            Display::Number(shown) => format!("{:?}", shown.unit),
            Display::Dark => "dark".to_owned(),
            Display::OverRange => "over range".to_owned(),
        };
        self.words.push(word);
    }

    fn same(&self, other: &Self) -> bool {
        let near = |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).abs() <= a.1;
        self.words == other.words
            && self.numbers.len() == other.numbers.len()
            && self.numbers.iter().zip(&other.numbers).all(near)
    }
}
