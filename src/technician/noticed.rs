//! How everything stood before the technician laid a hand on it, and what it noticed in passing.

use enum_map::EnumMap;

use crate::catalogue::cause::ORDINARY_ZERO_PA;
use crate::hands::action::Action;
use crate::parts::{Cause, Fitted, OnOff, Port, PortFill, Sight};
use crate::physics::valve::HandleAngle;
use crate::senses::seen::{
    BurnersSeen, Display, FurnaceSeen, HoseLook, MeterSeen, Seen, Smell, Sound,
};
use crate::units::{PA_PER_INWC, PressureUnit, TICKS_PER_S};

/// How far a number in open air wanders where the zero drifts, in pascals (0.1 in. w.c., a digit of
/// the trade's ordinary meters).
const TELLS_PA: f64 = 0.1 * PA_PER_INWC;
/// How long the inducer runs at most before burners are heard, where the first try lights, in ticks
/// (purge, glow and trial take less than a minute; common practice).
const FIRST_TRY: u64 = 75 * TICKS_PER_S;
/// How long a display takes to come to its first number, in ticks (from memory).
const WAKES: u64 = 10 * TICKS_PER_S;

/// How things stood, and what was noticed in passing.
#[derive(Debug, Clone, Default)]
pub(super) struct Noticed {
    manual_valve: Option<HandleAngle>,
    furnace_switch: Option<OnOff>,
    valve_switch: Option<OnOff>,
    /// Whether a cap was off.
    cap_off: Option<bool>,
    ports: EnumMap<Port, Option<PortFill>>,
    unit: Option<PressureUnit>,
    open_air: OpenAir,
    /// Tick from which the inducer has been heard without burners.
    inducer_since: Option<u64>,
    /// Whether the furnace lit after more than one try.
    pub lit_late: bool,
    /// Whether the manometer said that there is more than it can show.
    pub over_range: bool,
    /// The worst that the manometer's hose looked.
    pub hose: HoseLook,
    /// Everything that was noticed, once each.
    pub sights: Vec<Sight>,
}

/// The manometer's number in open air before its zero was pressed.
#[derive(Debug, Clone, Copy, Default)]
struct OpenAir {
    /// Tick of the first number.
    since: Option<u64>,
    /// The first number after it came to rest, and the last, in pascals.
    first_pa: Option<f64>,
    last_pa: f64,
    zeroed: bool,
}

impl Noticed {
    /// Notices what there is.
    pub(super) fn look(&mut self, seen: &Seen) {
        if let Some(furnace) = &seen.furnace {
            self.furnace(furnace);
        }
        if let Some(meter) = seen.meter() {
            if meter.hose_look != HoseLook::Clear {
                self.hose = meter.hose_look;
                self.see(&[Sight::Hose]);
            }
            self.meter(meter, seen.tick);
        }
        self.light_up(seen);
        let sniffed = seen.sniffed.is_some_and(|(_, smell)| smell != Smell::None);
        let probed = seen.detector.is_some_and(|it| it.percent_lel > 0.0);
        if seen.smell != Smell::None || sniffed || probed {
            self.see(&[Sight::Smell]);
        }
        let telling = [Sound::Hiss, Sound::Bang, Sound::Relief, Sound::Alarm];
        if seen.sounds.iter().any(|sound| telling.contains(sound)) {
            self.see(&[Sight::Sound]);
        }
    }

    /// Takes in what is being done.
    pub(super) fn did(&mut self, action: &Action) {
        self.open_air.zeroed |= *action == Action::MeterZero;
        if *action == Action::MeterPower(OnOff::On) {
            self.see(&[Sight::Manometer]);
        }
        if matches!(action, Action::HoseOn { .. }) {
            self.see(&[Sight::Hose]);
        }
    }

    /// How long the inducer runs before burners are heard.
    fn light_up(&mut self, seen: &Seen) {
        let inducer = [Sound::Inducer, Sound::InducerFast];
        let burns = seen.sounds.iter().any(|sound| matches!(sound, Sound::Burners(_)));
        if burns {
            let late = self.inducer_since.is_some_and(|since| seen.tick > since + FIRST_TRY);
            self.lit_late |= late;
        }
        if burns || !seen.sounds.iter().any(|sound| inducer.contains(sound)) {
            self.inducer_since = None;
        } else {
            self.inducer_since.get_or_insert(seen.tick);
        }
    }

    fn see(&mut self, sights: &[Sight]) {
        for sight in sights {
            if !self.sights.contains(sight) {
                self.sights.push(*sight);
            }
        }
    }

    fn furnace(&mut self, furnace: &FurnaceSeen) {
        self.manual_valve.get_or_insert(furnace.manual_valve);
        self.furnace_switch.get_or_insert(furnace.switch);
        self.see(&[Sight::ManualValve, Sight::FurnaceSwitch, Sight::Control]);
        if let Some(burners) = &furnace.burners {
            self.burners(burners);
        }
    }

    fn burners(&mut self, burners: &BurnersSeen) {
        self.valve_switch.get_or_insert(burners.valve_switch);
        self.cap_off.get_or_insert(burners.caps.iter().any(|(_, cap)| *cap == Fitted::Off));
        for (port, seen) in &burners.ports {
            self.ports[port].get_or_insert(seen.fill);
        }
        self.see(&[
            Sight::ValveSwitch,
            Sight::Caps,
            Sight::InletPort,
            Sight::ManifoldPort,
            Sight::Wires,
            Sight::GroundWire,
        ]);
        if burners.glow > 0.0 {
            self.see(&[Sight::Igniter]);
        }
        if burners.flames.iter().any(|flame| flame.height > 0.0) {
            self.see(&[Sight::Flames]);
        }
    }

    fn meter(&mut self, meter: &MeterSeen, tick: u64) {
        let shown = match meter.display {
            Display::Dark => return,
            Display::OverRange => {
                self.over_range = true;
                return;
            }
            Display::Number(shown) => shown,
        };
        self.unit.get_or_insert(shown.unit);
        let air = &mut self.open_air;
        if air.zeroed || meter.hose.is_some() {
            return;
        }
        let since = *air.since.get_or_insert(tick);
        if tick >= since + WAKES {
            air.first_pa.get_or_insert(shown.pa());
        }
        air.last_pa = shown.pa();
    }

    /// Causes that show in how things stood.
    pub(super) fn causes(&self) -> Vec<Cause> {
        let mut all = Vec::new();
        match self.manual_valve {
            Some(angle) if angle.is_shut() => all.push(Cause::ManualValveShut),
            Some(angle) if !angle.is_open() => all.push(Cause::ManualValvePartOpen),
            Some(_) | None => {}
        }
        let stands = [
            (self.furnace_switch == Some(OnOff::Off), Cause::FurnaceSwitchOff),
            (self.valve_switch == Some(OnOff::Off), Cause::ValveSwitchOff),
            (self.cap_off == Some(true), Cause::CapMissing),
            (self.unit.is_some_and(|unit| unit != PressureUnit::InWc), Cause::MeterUnitWrong),
        ];
        all.extend(stands.into_iter().filter(|(is_so, _)| *is_so).map(|(_, cause)| cause));
        all.extend(self.ports.iter().filter_map(|(port, fill)| at_port(port, (*fill)?)));
        all.extend(self.open_air.cause());
        all
    }
}

impl OpenAir {
    fn cause(&self) -> Option<Cause> {
        let wandered = self.first_pa.is_some_and(|first| (self.last_pa - first).abs() > TELLS_PA);
        if wandered {
            Some(Cause::MeterZeroDrifts)
        } else {
            (self.last_pa.abs() > ORDINARY_ZERO_PA).then_some(Cause::MeterZeroOff)
        }
    }
}

/// What was wrong with what was found in a port.
fn at_port(port: Port, fill: PortFill) -> Option<Cause> {
    match fill {
        PortFill::HandTight | PortFill::Started | PortFill::TapLoose => Some(match port {
            Port::Inlet => Cause::InletPlugLoose,
            Port::Manifold => Cause::ManifoldPlugLoose,
        }),
        PortFill::Leaning => Some(Cause::PlugCrossThreaded),
        PortFill::BareAdapter => Some(Cause::AdapterLeftIn),
        PortFill::Snug
        | PortFill::Open
        | PortFill::Hose(_)
        | PortFill::TapSnug
        | PortFill::TapOpen
        | PortFill::HoseOnTap(_)
        | PortFill::HoseOnShutTap(_) => None,
    }
}
