//! What a careful person can read, see and hear of a bench, in stages: a look everywhere, what is
//! followed from a call on, and the pressures at either port. Each is gathered when it is asked for.

use core::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};

use crate::appliance::ignition::{ControlState, ControlStatus};
use crate::bench::Bench;
use crate::bench::run::{Nobody, Witness};
use crate::hands::event::Event;
use crate::measure::driver::Driver;
use crate::measure::felt::{CO_PPM, FLAME_UA, PRESSURE_PA, RISE_K};
use crate::measure::looks::{self, Around};
use crate::measure::pattern::{Point, Signs as PatternSigns, Start, measure};
use crate::parts::{Door, Fitted, Level, Place, Port, Range, Spot, Subject};
use crate::procedure::{Goal, Means};
use crate::senses::seen::{Display, Observation, Sound};
use crate::setup::Setup;
use crate::units::{PA_PER_INWC, PressureUnit, TICKS_PER_S};

/// What a rate must differ by, as a share of the plate's input (a dial timed with a stopwatch;
/// common practice).
const RATE: f64 = 0.03;
/// What a draft must differ by, in pascals (0.05 in. w.c.).
const DRAFT_PA: f64 = 0.05 * PA_PER_INWC;

/// Seconds from a call for both stages over which sounds, the control's words and the volts are
/// followed: two tries to light.
const FOLLOWED_S: u64 = 150;
/// Volts above which a terminal counts as live (half of 24).
const LIVE_V: f64 = 12.0;
/// What ohms must differ by, as a natural logarithm: 20 %.
const LN_OHM: f64 = 0.2;
/// Ohms of an open line, for comparing.
const OPEN_OHM: f64 = 1e9;
/// Brightness of the igniter that the eye tells apart.
const GLOW: f64 = 0.1;

/// The stages, the quick ones first.
const STAGES: [fn(&Setup) -> Signs; 4] = [
    Signs::by_looking,
    Signs::from_a_call,
    |setup| Signs::of_pressures(setup, Port::Inlet),
    |setup| Signs::of_pressures(setup, Port::Manifold),
];

/// A bench whose signs are gathered as far as they are asked for.
pub(super) struct Watched {
    setup: Setup,
    stages: [OnceCell<Signs>; STAGES.len()],
}

impl Watched {
    pub(super) fn new(setup: Setup) -> Self {
        Self { setup, stages: core::array::from_fn(|_| OnceCell::new()) }
    }

    /// Whether nobody could tell the two apart.
    pub(super) fn same(&self, other: &Self) -> bool {
        let stages = self.stages.iter().zip(&other.stages).zip(STAGES);
        stages.into_iter().all(|((one, another), gather)| {
            let one = one.get_or_init(|| gather(&self.setup));
            one.same(another.get_or_init(|| gather(&other.setup)))
        })
    }
}

/// Numbers with what they must differ by, and what is the same or not.
#[derive(Default)]
struct Signs {
    numbers: Vec<(f64, f64)>,
    plain: Vec<Plain>,
}

/// A sign without a resolution.
#[derive(PartialEq)]
enum Plain {
    /// What is smelt, heard and seen of the furnace at a place.
    Around(Around),
    /// What looking closely gave.
    Found(Subject, Observation),
    /// From a call on: everything that was heard, everything that the control said, and for each
    /// terminal when it was live and when not.
    FromCall { heard: BTreeSet<Sound>, said: BTreeSet<ControlStatus>, live: Live },
    /// What was noticed while pressures were read.
    Noticed(PatternSigns),
    /// A test point: the state that was not reached, and how the burners burn.
    State(Option<ControlState>, Option<Level>),
    /// The manometer's display, without its number.
    Face(Face),
}

/// What a display shows beside its number.
#[derive(PartialEq)]
enum Face {
    Number(PressureUnit),
    Dark,
    OverRange,
}

/// For each terminal, when it was live and when not.
type Live = BTreeMap<Spot, Vec<bool>>;

/// What is heard and seen from a call on, second by second.
#[derive(Default)]
struct Followed {
    heard: BTreeSet<Sound>,
    said: BTreeSet<ControlStatus>,
    live: Live,
    glow: f64,
}

impl Witness for Followed {
    fn ticked(&mut self, bench: &Bench, _: Vec<Event>) {
        if !bench.tick().is_multiple_of(TICKS_PER_S) {
            return;
        }
        let seen = bench.seen();
        self.heard.extend(seen.sounds);
        if let Some(furnace) = &seen.furnace {
            self.said.insert(furnace.status);
            self.glow = self.glow.max(furnace.burners.as_ref().map_or(0.0, |it| it.glow));
        }
        for spot in Spot::ALL.iter().filter(|spot| spot.range() == Some(Range::Volts)) {
            let so_far = self.live.entry(*spot).or_default();
            let now = bench.volts(*spot) > LIVE_V;
            if so_far.last() != Some(&now) {
                so_far.push(now);
            }
        }
    }
}

impl Signs {
    /// Looks at everything, everywhere: as found, and then with the furnace off and its doors open.
    fn by_looking(setup: &Setup) -> Self {
        let mut signs = Self::default();
        let mut by = Driver::new(Bench::new(setup.clone()));
        let found = looks::around(&mut by, &mut Nobody);
        looks::open(&mut by, &mut Nobody);
        let notes = looks::closely(&mut by, &mut Nobody);
        let opened = looks::around(&mut by, &mut Nobody);
        for spot in Spot::ALL.iter().filter(|spot| spot.range() == Some(Range::Ohms)) {
            signs.numbers.push((libm::log(by.bench().ohms(*spot).min(OPEN_OHM)), LN_OHM));
        }
        signs.plain.extend(found.into_iter().chain(opened).map(Plain::Around));
        signs.plain.extend(notes.into_iter().map(|note| Plain::Found(note.subject, note.finding)));
        signs
    }

    /// Calls for the full rate and follows what is heard, what the control says, and which terminals
    /// are live, from the call to the second try.
    fn from_a_call(setup: &Setup) -> Self {
        let mut by = Driver::new(Bench::new(setup.clone()));
        let full = setup.furnace.plate.input.top_level();
        let mut followed = Followed::default();
        by.reach(
            &[Goal::Door(Door::Burner, Fitted::Off), Goal::Called(Some(full), Means::Thermostat)],
            &mut followed,
        );
        by.reach(&[Goal::At(Place::PlantRoom)], &mut followed);
        by.wait(FOLLOWED_S, &mut followed);
        let Followed { heard, said, live, glow } = followed;
        Self { numbers: vec![(glow, GLOW)], plain: vec![Plain::FromCall { heard, said, live }] }
    }

    /// What the manometer shows at a port and what is seen meanwhile, through every state.
    fn of_pressures(setup: &Setup, port: Port) -> Self {
        let mut signs = Self::default();
        let pattern = measure(setup.clone(), Start::Hooked(port));
        signs.plain.push(Plain::Noticed(pattern.signs));
        for point in &pattern.points {
            signs.take_point(point);
        }
        signs
    }

    fn take_point(&mut self, point: &Point) {
        let truth = &point.truth;
        self.plain.push(Plain::State(point.missed, truth.firing));
        let mut add = |value: f64, resolution: f64| self.numbers.push((value, resolution));
        add(truth.supply_pa, PRESSURE_PA);
        for (lower, upper) in point.swing_pa.into_values() {
            add(lower, PRESSURE_PA);
            add(upper, PRESSURE_PA);
        }
        add(truth.input_w / point.rated_w.max(1.0), RATE);
        add(truth.flame_ua, FLAME_UA);
        add(truth.rise_k, RISE_K);
        add(truth.co_air_free_ppm, CO_PPM);
        add(truth.draft_pa, DRAFT_PA);
        add(truth.vented_m3_s * 1e6, 1.0);
        for leak in truth.leak_m3_s.iter() {
            // Leak fluid shows very little.
            add(leak * 1e6, 0.1);
        }
        let face = match point.display {
            Display::Number(shown) => {
                add(shown.pa(), PRESSURE_PA);
                Face::Number(shown.unit)
            }
            Display::Dark => Face::Dark,
            Display::OverRange => Face::OverRange,
        };
        self.plain.push(Plain::Face(face));
    }

    fn same(&self, other: &Self) -> bool {
        let near = |(a, b): (&(f64, f64), &(f64, f64))| (a.0 - b.0).abs() <= a.1;
        self.plain == other.plain
            && self.numbers.len() == other.numbers.len()
            && self.numbers.iter().zip(&other.numbers).all(near)
    }
}
