//! What is seen of a fault by eye: a bench with it is really looked at, at rest and firing, and held
//! against the healthy one.

use crate::bench::Bench;
use crate::bench::run::Witness;
use crate::hands::event::Event;
use crate::measure::driver::Driver;
use crate::measure::looks;
use crate::parts::{Door, Fitted, HandValve, Height, OnOff, Place, PortFill, Subject};
use crate::procedure::{Goal, Means};
use crate::senses::seen::{Cracked, Display, Seen, Smell};
use crate::setup::Setup;
use crate::units::TICKS_PER_S;

/// Time from a lit stage to a look, in seconds.
const SETTLE_S: u64 = 60;
/// Glow below which an igniter looks dim, and which it must reach to have been lit at all.
const DIM: (f64, f64) = (0.8, 0.05);

/// Something that is seen: where and when, and in which words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Sight {
    /// Where the eye goes, and when.
    pub at: String,
    /// What is seen there.
    pub words: String,
}

/// Everything that a person sees who looks at everything there is to look at.
pub(super) fn looked(setup: Setup) -> Vec<Sight> {
    let levels = setup.furnace.plate.input.list();
    let mut by = Driver::new(Bench::new(setup));
    let mut glow = Glow(0.0);
    let mut sights = at_rest(&mut by, &mut glow);
    by.reach(&[Goal::Door(Door::Blower, Fitted::On), Goal::Power(OnOff::On)], &mut glow);
    for &level in levels {
        let called = Goal::Called(Some(level), Means::LeastSetpoint);
        by.reach(&[called, Goal::At(Place::GasValve), Goal::Lit(Some(level))], &mut glow);
        by.wait(SETTLE_S, &mut glow);
        let lit_tick = by.bench().tick();
        by.reach(&FIRING.map(Goal::LookedHere), &mut glow);
        let seen = by.bench().seen();
        let notes = FIRING.iter().filter_map(|subject| seen.sheet.note(*subject));
        // A job that is over lets nobody look any more.
        sights.extend(notes.filter(|note| note.tick >= lit_tick).map(|note| {
            let subject = note.subject.label();
            let at = match level.is_first() {
                true => t!("sight-first-stage", subject = subject),
                false => t!("sight-both-stages", subject = subject),
            };
            Sight { at, words: note.words() }
        }));
    }
    let igniter = if glow.0 < DIM.1 {
        t!("sight-igniter-dark")
    } else if glow.0 < DIM.0 {
        t!("sight-igniter-dim")
    } else {
        t!("sight-igniter-bright")
    };
    sights.push(sight(t!("sight-igniter"), igniter));
    sights
}

/// What is looked at while the furnace fires.
const FIRING: [Subject; 2] = [Subject::Flames, Subject::StatusLamp];

fn sight(at: &str, words: impl Into<String>) -> Sight {
    Sight { at: at.to_owned(), words: words.into() }
}

/// What is seen with the fault and not without it.
pub(super) fn differing(healthy: &[Sight], faulty: &[Sight]) -> Vec<Sight> {
    faulty.iter().filter(|sight| !healthy.contains(sight)).cloned().collect()
}

/// The brightest that the igniter was seen.
struct Glow(f64);

impl Witness for Glow {
    fn ticked(&mut self, bench: &Bench, _: Vec<Event>) {
        if bench.tick().is_multiple_of(TICKS_PER_S)
            && let Some(burners) = bench.seen().furnace.and_then(|it| it.burners)
        {
            self.0 = self.0.max(burners.glow);
        }
    }
}

/// What is smelt on arrival, and seen of a furnace at rest.
fn at_rest(by: &mut Driver, glow: &mut Glow) -> Vec<Sight> {
    let mut sights = Vec::new();
    by.reach(&[Goal::HeatOff, Goal::Door(Door::Burner, Fitted::Off)], glow);
    for &place in Place::ALL {
        by.reach(&[Goal::At(place)], glow);
        for height in [Height::Head, Height::Floor] {
            by.reach(&[Goal::Smelt(height)], glow);
            if let Some((_, smell)) = by.bench().seen().sniffed.filter(|it| it.1 != Smell::None) {
                let at = t!("sight-nose", place = place.label().to_lowercase());
                sights.push(sight(&at, smell.label()));
                break;
            }
        }
    }
    let notes = looks::closely(by, glow).into_iter();
    let still = notes.filter(|note| !FIRING.contains(&note.subject));
    sights.extend(still.map(|note| sight(note.subject.label(), note.words())));
    by.reach(&[Goal::At(Place::GasValve)], glow);
    sights.extend(plain(&by.bench().seen()).into_iter().map(|(at, words)| sight(at, words)));
    sights
}

/// What lies open to the eye at the gas valve and on the manometer, without a closer look.
fn plain(seen: &Seen) -> Vec<(&'static str, String)> {
    let mut sights = Vec::new();
    let meter = t!("sight-manometer");
    if let Some(seen) = seen.meter() {
        sights.push((meter, t!("sight-meter-unit", unit = seen.unit.label())));
    }
    if seen.display() == Some(Display::OverRange) {
        sights.push((meter, t!("sight-meter-over").to_owned()));
    }
    let Some(furnace) = &seen.furnace else { return sights };
    let angle = furnace.manual_valve.to_string();
    sights.push((HandValve::Furnace.label(), t!("sight-handle", angle = angle)));
    let Some(burners) = &furnace.burners else { return sights };
    let switch = match burners.valve_switch {
        OnOff::On => "on",
        OnOff::Off => "off",
    };
    sights.push((t!("part-valve-switch"), t!("sight-switch", state = switch)));
    for (level, cap) in burners.caps.iter() {
        if *cap == Fitted::Off {
            sights.push((level.screw().label(), t!("sight-cap-missing").to_owned()));
        }
    }
    for (which, port) in &burners.ports {
        let at = which.label();
        sights.push((at, fill(port.fill).to_owned()));
        if port.cracked == Cracked::Cracked {
            sights.push((at, t!("sight-cracked").to_owned()));
        }
    }
    sights
}

fn fill(fill: PortFill) -> &'static str {
    match fill {
        PortFill::Snug => t!("sight-plug-seated"),
        PortFill::HandTight => t!("sight-plug-loose"),
        PortFill::Started => t!("sight-plug-started"),
        PortFill::Leaning => t!("sight-plug-leaning"),
        PortFill::Open => t!("sight-port-open"),
        PortFill::BareAdapter => t!("sight-adapter"),
        PortFill::Hose(_) | PortFill::HoseOnTap(_) | PortFill::HoseOnShutTap(_) => t!("sight-hose"),
        PortFill::TapSnug => t!("sight-screw-seated"),
        PortFill::TapLoose => t!("sight-screw-loose"),
        PortFill::TapOpen => t!("sight-tap-open"),
    }
}
