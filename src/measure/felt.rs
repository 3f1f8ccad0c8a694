//! Whether a fault can be felt at all: whether anything that is read, seen, heard or smelt differs
//! from a sound bench by as much as the instrument for it shows.
//!
//! **Method.** The bench with this one fault, and the same bench without any, are measured at every
//! test point ([`super::pattern`]), with the hose on each port in turn, and looked at from every
//! place. What differs by less than a resolution below is the same.
//! What stands inside known limits with the fault as without it is the same too: an inlet between
//! what plate and nameplate allow, a manifold in the plate's band, air that is right for the gas as
//! far as the card tells it ([`air`]), a temperature rise on the plate, a flame current and a carbon
//! monoxide that nobody would act on. Who finds such a number has nothing to mend.
//! Not compared: how fast a number comes, and what shows after hours only; the draft at the pressure
//! switches, for which there is no instrument on the job.

use core::cell::OnceCell;

use enum_map::EnumMap;

use super::air;
use super::driver::Driver;
use super::looks::{self, Around};
use super::pattern::{Pattern, Point, Start, measure};
use crate::appliance::plate::{Band, Fuel};
use crate::appliance::safety::Jumpers;
use crate::bench::Bench;
use crate::bench::run::Nobody;
use crate::catalogue::fault::Fault;
use crate::parts::{Place, Port, Stage, Subject};
use crate::procedure::Goal;
use crate::senses::seen::{Display, Observation, Signs};
use crate::setup::Setup;
use crate::units::PA_PER_INWC;

/// A pressure, in pascals (0.1 in. w.c., a digit of the trade's ordinary meters).
pub(crate) const PRESSURE_PA: f64 = 0.1 * PA_PER_INWC;
/// A rate where no flue gas tells more, as a share of what it should be (common practice: within 5 %
/// of the plate nothing is changed; a dial timed with a stopwatch tells 3 %).
const RATE: f64 = 0.05;
/// Air for the gas beyond what may be (the tenth of a per cent of oxygen that an analyser shows is
/// about a hundredth of it).
const AIR: f64 = 0.01;
/// A flame current, in microamperes, and the least that nobody would act on (from memory).
pub(crate) const FLAME_UA: f64 = 0.3;
const FLAME_LEAST_UA: f64 = 2.0;
/// A temperature rise, in kelvins (5 °F; common practice).
pub(crate) const RISE_K: f64 = 2.8;
/// Carbon monoxide, in parts per million air-free, and the most that may be (ANSI Z21.47's limit,
/// from memory).
pub(crate) const CO_PPM: f64 = 25.0;
const CO_MOST_PPM: f64 = 400.0;
/// Gas out of a joint, in standard m³/s: leak fluid shows very little.
const LEAK_M3_S: f64 = 1e-7;
/// Gas in the air, as a fraction: 1 % of the lower flammable limit, the first digit of an ordinary
/// detector (limits of 5 % natural gas and 2.1 % propane in air; NFPA 325).
const GAS: [f64; 2] = [5.0e-4, 2.1e-4];

/// Whether a fault of this severity, alone on a sound bench, can be felt there.
#[must_use]
pub fn is_felt(sound: &Setup, fault: Fault, severity: f64) -> bool {
    SoundBench::new(sound).shows(fault, severity)
}

/// A bench without faults, measured once for all that it is compared with.
pub struct SoundBench<'a> {
    setup: &'a Setup,
    looks: OnceCell<Looks>,
    patterns: EnumMap<Port, OnceCell<Pattern>>,
}

impl<'a> SoundBench<'a> {
    /// Of a setup without faults; nothing is measured yet.
    #[must_use]
    pub fn new(setup: &'a Setup) -> Self {
        Self { setup, looks: OnceCell::new(), patterns: EnumMap::default() }
    }

    /// Its setup with a fault of this severity.
    #[must_use]
    pub(super) fn with(&self, fault: Fault, severity: f64) -> Setup {
        let mut faulty = self.setup.clone();
        fault.apply(&mut faulty, severity);
        faulty
    }

    /// Whether a fault of this severity, alone on it, can be felt.
    #[must_use]
    pub fn shows(&self, fault: Fault, severity: f64) -> bool {
        let faulty = self.with(fault, severity);
        *self.looks.get_or_init(|| looks(self.setup)) != looks(&faulty)
            || Port::ALL.iter().any(|&port| {
                let of = |setup: &Setup| measure(setup.clone(), Start::Hooked(port));
                let sound = self.patterns[port].get_or_init(|| of(self.setup));
                Felt { sound: self.setup, port }.patterns(sound, &of(&faulty))
            })
    }
}

/// What eyes, ears and nose get everywhere.
#[derive(PartialEq)]
struct Looks {
    /// On arrival, from every place.
    as_found: Vec<Around>,
    /// What looking closely gave, the furnace off and its doors open.
    found: Vec<(Subject, Observation)>,
    /// Signs of wear in plain view there, and wires across safety devices.
    wear: Option<(Signs, Jumpers)>,
}

/// On arrival, and then with the furnace off and its doors open.
fn looks(setup: &Setup) -> Looks {
    let mut by = Driver::new(Bench::new(setup.clone()));
    let as_found = looks::around(&mut by, &mut Nobody);
    looks::open(&mut by, &mut Nobody);
    let found = looks::closely(&mut by, &mut Nobody);
    by.reach(&[Goal::At(Place::GasValve)], &mut Nobody);
    let burners = by.bench().seen().furnace.and_then(|furnace| furnace.burners);
    Looks {
        as_found,
        found: found.into_iter().map(|note| (note.subject, note.finding)).collect(),
        wear: burners.map(|burners| (burners.signs, burners.wires)),
    }
}

/// How far a number lies beyond its limits; nothing inside them.
fn beyond(value: f64, (least, most): (f64, f64)) -> f64 {
    if value < least { value - least } else { (value - most).max(0.0) }
}

/// Compares two benches by what can be told apart with the hose on a port.
struct Felt<'a> {
    sound: &'a Setup,
    port: Port,
}

impl Felt<'_> {
    fn patterns(&self, one: &Pattern, other: &Pattern) -> bool {
        let mut points = one.points.iter().zip(&other.points);
        one.signs != other.signs || points.any(|(one, other)| self.points(one, other))
    }

    fn points(&self, one: &Point, other: &Point) -> bool {
        let states = one.missed != other.missed
            || one.truth.firing != other.truth.firing
            || one.flames_lean != other.flames_lean;
        let far = |(one, other, resolution): &(f64, f64, f64)| (one - other).abs() > *resolution;
        states || self.shown(one, other) || self.numbers(one, other).iter().any(far)
    }

    /// Whether the manometer shows something else.
    fn shown(&self, one: &Point, other: &Point) -> bool {
        let (Display::Number(a), Display::Number(b)) = (one.display, other.display) else {
            return one.display != other.display;
        };
        // A meter that shows other than what is there is felt wherever the pressure stands.
        let error = |pa: f64, point: &Point| match self.port {
            Port::Inlet => pa - point.truth.inlet_pa,
            Port::Manifold => pa - point.truth.manifold_pa,
        };
        let off_pa = error(a.pa(), one) - error(b.pa(), other);
        let band = self.allowed(self.port, one.stage);
        let moved_pa = band.beyond_pa(a.pa()) - band.beyond_pa(b.pa());
        a.unit != b.unit || off_pa.abs() > PRESSURE_PA || moved_pa.abs() > PRESSURE_PA
    }

    /// What plate and nameplate allow at a port.
    fn allowed(&self, port: Port, stage: Stage) -> Band {
        let lockup_most_pa = Some(self.sound.supply.lockup_max_pa);
        self.sound.furnace.plate.figures().allows(port, stage, lockup_most_pa)
    }

    /// What there is to compare at a test point: this, that, and by how much they must differ.
    fn numbers(&self, one: &Point, other: &Point) -> Vec<(f64, f64, f64)> {
        let (a, b) = (&one.truth, &other.truth);
        let plate = &self.sound.furnace.plate;
        let levels = plate.input.list();
        let burns = one.stage.level(levels).is_some();
        let flame = (if burns { FLAME_LEAST_UA } else { 0.0 }, f64::INFINITY);
        let rise = (if burns { plate.rise.0.0 } else { 0.0 }, plate.rise.1.0);
        let co = (0.0, CO_MOST_PPM);
        let rated_w = one.rated_w.max(1.0);
        // Of low, as large a share as of high.
        let share = (a.input_w / rated_w).clamp(0.1, 1.0);
        // Where both burn, the flue tells on high of too much gas and too little, and of its heat: the
        // dial tells of neither without knowing the gas.
        let rate = match (a.excess_air.zip(b.excess_air), one.stage) {
            (Some((a, b)), stage) if stage.is_at_full_rate() => {
                let limits = air::limits(&self.sound.card, self.sound.fuel);
                (beyond(1.0 + a, limits), beyond(1.0 + b, limits), AIR)
            }
            (Some(_), _) => (0.0, 0.0, AIR),
            (None, _) => (a.input_w / rated_w, b.input_w / rated_w, share * RATE),
        };
        let mut all = vec![
            rate,
            (beyond(a.flame_ua, flame), beyond(b.flame_ua, flame), FLAME_UA),
            (beyond(a.rise_k, rise), beyond(b.rise_k, rise), RISE_K),
            (beyond(a.co_air_free_ppm, co), beyond(b.co_air_free_ppm, co), CO_PPM),
            (a.connector_leak_m3_s, b.connector_leak_m3_s, LEAK_M3_S),
        ];
        for &port in Port::ALL {
            let band = self.allowed(port, one.stage);
            let (a, b) = (one.swing_pa[port], other.swing_pa[port]);
            for (a, b) in [(a.0, b.0), (a.1, b.1)] {
                all.push((band.beyond_pa(a), band.beyond_pa(b), PRESSURE_PA));
            }
        }
        let (manifold, manifold_b) = (one.swing_pa[Port::Manifold], other.swing_pa[Port::Manifold]);
        // It must stand still, too.
        all.push((manifold.1 - manifold.0, manifold_b.1 - manifold_b.0, PRESSURE_PA));
        let gas = GAS[usize::from(self.sound.fuel == Fuel::Propane)];
        all.extend(a.leak_m3_s.iter().zip(b.leak_m3_s.iter()).map(|(a, b)| (a, b, LEAK_M3_S)));
        all.extend(a.gas_fraction.iter().zip(b.gas_fraction.iter()).map(|(a, b)| (a, b, gas)));
        all
    }
}
