//! What is seen of a fault by eye: a bench with it is really looked at, at rest and firing, and held
//! against the healthy one.

use crate::bench::Bench;
use crate::bench::run::{self, Nobody};
use crate::hands::action::Action;
use crate::parts::{Door, Fitted, HandValve, Height, Level, OnOff, Place, PortFill, Subject};
use crate::senses::seen::{Cracked, Display, Seen, Smell};
use crate::setup::Setup;
use crate::units::TICKS_PER_S;

/// Longest time from a call to a lit stage, in seconds.
const LIGHT_UP_S: u64 = 240;
/// Time from a lit stage to a look, in seconds.
const SETTLE_S: u64 = 60;
/// Above the room, in half degrees: a call for the first stage, and for both.
const CALLS_HALF_F: [i16; 2] = [3, 12];
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
    let mut eye = Eye { bench: Bench::new(setup), sights: Vec::new(), glow: 0.0 };
    eye.at_rest();
    for &level in eye.bench.setup().furnace.plate.input.list() {
        let (call, when) = if level.is_first() {
            (CALLS_HALF_F[0], When::FirstStage)
        } else {
            (CALLS_HALF_F[1], When::BothStages)
        };
        eye.fire(call, Some(level));
        eye.look(Subject::Flames, when);
        eye.look(Subject::StatusLamp, when);
    }
    let igniter = if eye.glow < DIM.1 {
        t!("sight-igniter-dark")
    } else if eye.glow < DIM.0 {
        t!("sight-igniter-dim")
    } else {
        t!("sight-igniter-bright")
    };
    eye.see(t!("sight-igniter"), igniter.to_owned());
    eye.sights
}

/// What is seen with the fault and not without it.
pub(super) fn differing(healthy: &[Sight], faulty: &[Sight]) -> Vec<Sight> {
    faulty.iter().filter(|sight| !healthy.contains(sight)).cloned().collect()
}

/// When something is looked at.
#[derive(Clone, Copy)]
enum When {
    AtRest,
    FirstStage,
    BothStages,
}

struct Eye {
    bench: Bench,
    sights: Vec<Sight>,
    glow: f64,
}

impl Eye {
    /// What cannot be done here is refused and is no trouble.
    fn act(&mut self, action: Action) {
        let _ = self.bench.apply(&action);
    }

    fn wait(&mut self, seconds: u64) {
        run::wait(&mut self.bench, seconds * TICKS_PER_S, &mut Nobody);
        if let Some(burners) = self.bench.seen().furnace.and_then(|it| it.burners) {
            self.glow = self.glow.max(burners.glow);
        }
    }

    fn see(&mut self, at: &str, words: String) {
        self.sights.push(Sight { at: at.to_owned(), words });
    }

    fn look(&mut self, subject: Subject, when: When) {
        if self.bench.apply(&Action::Look(subject)).is_err() {
            return;
        }
        // The figure on the dial is where it happens to stand.
        let seen = self.bench.seen();
        if let Some(note) = seen.sheet.note(subject).filter(|_| subject != Subject::MeterDial) {
            let at = match when {
                When::AtRest => subject.label().to_owned(),
                When::FirstStage => t!("sight-first-stage", subject = subject.label()),
                When::BothStages => t!("sight-both-stages", subject = subject.label()),
            };
            self.see(&at, note.words());
        }
    }

    fn at_rest(&mut self) {
        for place in [Place::Yard, Place::Hall, Place::PlantRoom, Place::GasValve] {
            self.act(Action::Go(place));
            if place == Place::Hall {
                self.act(Action::ThermostatMode(OnOff::Off));
            }
            if place == Place::PlantRoom {
                for door in [Door::Burner, Door::Blower] {
                    self.act(Action::Door { door, to: Fitted::Off });
                }
            }
            for subject in Subject::ALL.iter().filter(|it| it.place() == place) {
                if !matches!(subject, Subject::Flames | Subject::StatusLamp) {
                    self.look(*subject, When::AtRest);
                }
            }
            self.smell(place);
        }
        let seen = self.bench.seen();
        for (at, words) in plain(&seen) {
            self.see(at, words);
        }
    }

    fn smell(&mut self, place: Place) {
        for height in [Height::Head, Height::Floor] {
            self.act(Action::Sniff(height));
            if let Some((_, smell)) = self.bench.seen().sniffed.filter(|it| it.1 != Smell::None) {
                let at = t!("sight-nose", place = place.label().to_lowercase());
                self.see(&at, smell.label().into());
                return;
            }
        }
    }

    /// Calls, and waits at the gas valve until the stage burns, or for the longest time.
    fn fire(&mut self, above_half_f: i16, firing: Option<Level>) {
        self.act(Action::Go(Place::PlantRoom));
        self.act(Action::Door { door: Door::Blower, to: Fitted::On });
        self.act(Action::FurnaceSwitch(OnOff::On));
        self.act(Action::Go(Place::Hall));
        if let Some(hall) = self.bench.seen().hall {
            self.act(Action::Setpoint((hall.room_half_f + above_half_f).clamp(90, 180)));
        }
        self.act(Action::ThermostatMode(OnOff::On));
        self.act(Action::Go(Place::PlantRoom));
        self.act(Action::Go(Place::GasValve));
        for _ in 0..LIGHT_UP_S {
            if self.bench.truth().firing == firing {
                break;
            }
            self.wait(1);
        }
        self.wait(SETTLE_S);
    }
}

/// What lies open to the eye at the gas valve and on the manometer, without a closer look.
fn plain(seen: &Seen) -> Vec<(&'static str, String)> {
    let mut sights = Vec::new();
    let meter = t!("sight-manometer");
    sights.push((meter, t!("sight-meter-unit", unit = seen.meter.unit.label())));
    if seen.meter.display == Display::OverRange {
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
        PortFill::Hose(_) => t!("sight-hose"),
    }
}
