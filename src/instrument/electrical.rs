//! Microammeter and electrical meter, and the control circuit's 24 volts that they meet.
//!
//! **Equation.** The faces follow first-order in 0.4 s. Volts of the control circuit
//! `27 V − 1.8 Ω·ΣI`; igniter `R = R₀/(1 − w)`, `w` the share of its heat that is lost (at line
//! voltage heat goes as 1/R); from burners to ground `R = 0.2 Ω + 20 MΩ·g/(1 − g)`, `g` the share of
//! the flame current that is lost there (the flame's own way is about 20 MΩ).
//! **Assumptions.** Parts are cold and cut off when ohms are read; a contact is open or closed.
//! **Valid range.** To 40 MΩ; above that the face shows an open line.
//! **Regularisation.** Ohms show after one second of contact.
//! **Source.** Igniter 37–68 Ω cold for one type: product manual (maker withheld); 50 Ω lies in it.
//! 24 V nominal, some 10 % more unloaded, coils of a quarter to half an ampere, coil 60 Ω: common
//! practice. The flame's way: from memory (order of a hundred volts over a few microamperes).
//! **Left out.** Warm parts, the leads' own resistance, stray volts on open wires.
//! **Checked.** `src/instrument/electrical.rs`: `parts_in_ohms()`;
//! `tests/core/instruments/electrical.rs`: `a_dirty_rod_is_below_one_microampere()`,
//! `a_weak_igniter_is_off_in_ohms()`, `a_dead_high_coil_has_volts_and_is_open()`.

use serde::Serialize;

/// Volts of the control circuit with nothing drawn.
const UNLOADED_V: f64 = 27.0;
/// What its transformer loses per ampere, in ohms.
const INNER_OHM: f64 = 1.8;
/// What control, main coil and coil of the high stage draw, in amperes.
const CONTROL_A: f64 = 0.15;
const MAIN_COIL_A: f64 = 0.4;
const SECOND_COIL_A: f64 = 0.25;
/// A sound igniter, cold, in ohms.
const IGNITER_OHM: f64 = 50.0;
/// A sound coil of the high stage, in ohms.
const SECOND_COIL_OHM: f64 = 60.0;
/// A sound way from the burners to ground, in ohms.
const GROUND_OHM: f64 = 0.2;
/// The flame's own way, in ohms.
const FLAME_OHM: f64 = 20e6;
/// Most that the face shows, in ohms.
const MOST_OHM: f64 = 40e6;
/// Time constant of the faces, in seconds.
const LAG_S: f64 = 0.4;
/// Contact before ohms are shown, in seconds.
const CONTACT_S: f64 = 1.0;

/// What hangs on the control circuit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Load {
    /// The control alone, both gas valve coils off.
    Idle,
    /// With the main coil.
    Main,
    /// With both coils, or with the main coil alone where the other is open.
    Both,
}

/// Volts between R and C.
#[must_use]
pub fn control_v(load: Load) -> f64 {
    let amperes = match load {
        Load::Idle => CONTROL_A,
        Load::Main => CONTROL_A + MAIN_COIL_A,
        Load::Both => CONTROL_A + MAIN_COIL_A + SECOND_COIL_A,
    };
    UNLOADED_V - INNER_OHM * amperes
}

/// Igniter, cold, in ohms, that has lost this share of its heat (1: cracked); infinite when open.
#[must_use]
pub fn igniter_ohm(weak: f64) -> f64 {
    IGNITER_OHM / (1.0 - weak.clamp(0.0, 1.0))
}

/// Coil of the high stage in ohms, sound.
#[must_use]
pub fn second_coil_ohm() -> f64 {
    SECOND_COIL_OHM
}

/// From burners to ground, in ohms, where this share of the flame current is lost.
#[must_use]
pub fn ground_ohm(poor: f64) -> f64 {
    let poor = poor.clamp(0.0, 1.0);
    GROUND_OHM + FLAME_OHM * poor / (1.0 - poor)
}

/// A face that follows what its leads touch.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct Needle {
    shown: f64,
    contact_s: f64,
}

impl Needle {
    /// Goes on by `dt_s` with this at its leads, in volts or microamperes.
    pub fn step(&mut self, dt_s: f64, value: f64) {
        self.contact_s += dt_s;
        self.shown += (value - self.shown) * dt_s / (LAG_S + dt_s);
    }

    /// What is shown, in volts or microamperes.
    #[must_use]
    pub fn shown(&self) -> f64 {
        self.shown
    }

    /// What a resistance of this many ohms shows: infinite for an open line.
    #[must_use]
    pub fn ohms(&self, ohm: f64) -> f64 {
        if self.contact_s < CONTACT_S || ohm > MOST_OHM { f64::INFINITY } else { ohm }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A sound igniter lies in the published range (37–68 Ω cold, product manual), one at half its
    /// heat above it, a cracked one is open; so is a ground that lets nothing through.
    #[test]
    fn parts_in_ohms() {
        assert!((37.0..=68.0).contains(&igniter_ohm(0.0)));
        assert!(igniter_ohm(0.5) > 68.0);
        let mut face = Needle::default();
        assert_eq!(face.ohms(second_coil_ohm()), f64::INFINITY, "leads in the air");
        face.step(1.5, 0.0);
        assert_eq!(face.ohms(igniter_ohm(1.0)), f64::INFINITY);
        assert_eq!(face.ohms(ground_ohm(1.0)), f64::INFINITY);
        assert!(face.ohms(ground_ohm(0.0)) < 1.0);
    }

    /// 24 V nominal, up to some 10 % more unloaded (common practice).
    #[test]
    fn the_circuit_sags_under_load() {
        assert!(control_v(Load::Idle) < 27.0 && control_v(Load::Both) > 24.0);
        assert!(control_v(Load::Idle) > control_v(Load::Main));
        assert!(control_v(Load::Main) > control_v(Load::Both));
    }
}
