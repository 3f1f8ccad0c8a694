//! What the technician has learned by looking, reading and listening.

use enum_map::EnumMap;
use std::collections::VecDeque;

use super::diagnosis::Diagnosis;
use crate::appliance::ignition::{ControlStatus, Failure};
use crate::appliance::plate::{Fuel, GasFigures};
use crate::catalogue::repair::Repair;
use crate::parts::{Joint, Level, Phase, Port, Stage};
use crate::procedure::number;
use crate::senses::seen::{Cracked, Delivery, Seen, Sound};
use crate::units::{PA_PER_INWC, TICKS_PER_S};

/// One inch of water, the head that a gas valve needs.
pub(super) const HEAD_PA: f64 = PA_PER_INWC;

/// What was learned on a job, by what it is about.
#[derive(Debug, Clone, Default)]
pub(super) struct Know {
    pub papers: Papers,
    pub read: Read,
    pub supply: SupplyWork,
    pub repairs: Repairs,
    pub screws: Screws,
    pub alarm: AlarmWork,
    /// What is wrong, in the order in which it was found.
    pub diagnosis: Vec<Diagnosis>,
    /// Whether the furnace is left shut off.
    pub leave_shut_off: bool,
    /// How often the readings were begun anew.
    pub rounds: u32,
    /// What was noticed since the last call for heat.
    pub since_call: SinceCall,
}

/// What plate, label and nameplate say.
#[derive(Debug, Clone, Default)]
pub(super) struct Papers {
    /// Figures that govern: the label's, else the plate's.
    pub figures: Option<GasFigures>,
    pub plate_fuel: Option<Fuel>,
    pub supply_is_propane: bool,
    /// What the supply regulator's nameplate allows.
    pub delivery: Option<Delivery>,
    pub conversion_wrong: bool,
}

/// What the manometer showed last, in pascals.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Read {
    /// Inlet in each state.
    pub inlet: EnumMap<Stage, Option<f64>>,
    /// Manifold at each level.
    pub manifold: EnumMap<Level, Option<f64>>,
    /// Whether the inlet is read as found or as left.
    pub phase: Option<Phase>,
    /// The inlet's number when the hold at rest began.
    pub rest_began: Option<f64>,
    /// How far it rose during the hold.
    pub rest_rise: Option<f64>,
    /// A number that was looked at, to be looked at again.
    pub looked_at: Option<f64>,
    /// Whether the inlet's number moves because the supply does, not for want of a free hose.
    pub supply_moves: bool,
    /// Whether the burners went out under load: the supply does not carry it.
    pub collapsed: bool,
    /// Whether the full rate was tried with the others on.
    pub loaded: bool,
}

/// What was done about the supply.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct SupplyWork {
    /// Whether its screw was turned, whether up, and whether down.
    pub turned: bool,
    pub raised: bool,
    pub lowered: bool,
    /// Whether its owner has to come, whatever the pressures say.
    pub owner_needed: bool,
    /// Whether gas was heard coming out of its regulator's vent.
    pub vent_heard: bool,
}

/// What is to be mended, and was.
#[derive(Debug, Clone, Default)]
pub(super) struct Repairs {
    /// To be done once the furnace is isolated.
    pub isolated: VecDeque<Repair>,
    /// To be done once the inlet port is open and the pressure gone.
    pub in_open_line: VecDeque<Repair>,
    /// The repairs that are done, in order.
    pub done: Vec<Repair>,
    /// Joints that a repair has opened, to be checked with gas on them.
    pub to_check: Vec<Joint>,
    /// Whether a repair has opened the piping, and nobody has checked it since.
    pub piping_opened: bool,
}

/// Work at a screw.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Screws {
    /// Tries at the present setting, or at lighting.
    pub tries: u32,
    /// The number before the first turn, and the eighths turned since.
    pub start: Option<(f64, i16)>,
    /// Whether the last screw was turned without effect.
    pub no_effect: bool,
    /// Whether the screw of a level has been turned.
    pub turned: bool,
}

/// Gas in the air.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct AlarmWork {
    /// How often it was.
    pub count: u32,
    /// Whether the technician is on the way out because of it.
    pub answered: bool,
    /// Whether the room was aired before a new gas valve was judged.
    pub aired: bool,
}

impl Know {
    /// Notes a finding once.
    pub(super) fn note(&mut self, diagnosis: Diagnosis) {
        if !self.diagnosis.contains(&diagnosis) {
            self.diagnosis.push(diagnosis);
        }
    }

    /// Whether a repair was done already.
    pub(super) fn has_mended(&self, repair: Repair) -> bool {
        self.repairs.done.contains(&repair)
    }

    /// The first of these repairs that was not done yet.
    pub(super) fn next_of(&self, repairs: &[Repair]) -> Option<Repair> {
        repairs.iter().copied().find(|&repair| !self.has_mended(repair))
    }
}

/// What eyes and ears notice from one call for heat to the next.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct SinceCall {
    /// Brightest glow of the igniter.
    pub glow: f64,
    /// Most burners lit at once.
    pub lit: usize,
    /// Whether a hard light was heard.
    pub bang: bool,
    /// Whether the inducer was heard, and the blower at its usual speed.
    pub inducer_heard: bool,
    pub blower_heard: bool,
    /// Whether the limit has opened.
    pub limit: bool,
    /// Ticks for which the control waited for the next level's pressure switch.
    pub next_switch_ticks: u32,
    /// Whether the control said that it burns above the first level.
    pub says_above: bool,
    /// Whether the inlet lost its pressure once burners were lit.
    pub starved: bool,
    /// Ticks for which the inlet had next to nothing with the burners out already.
    pub dead_ticks: u32,
    /// Least at the inlet while the low-gas switch stopped what had burned, in pascals.
    pub stopped_at_pa: Option<f64>,
    /// Whether it waited for gas pressure.
    pub low_gas: bool,
    /// Whether the first level's pressure switch was waited for in vain.
    pub first_switch: bool,
    /// Whether it felt a flame with the gas shut.
    pub stray: bool,
    /// Ticks on end for which flames were seen standing after the control had shut the gas.
    pub burning_on_ticks: u32,
    /// Whether a roll-out switch was open.
    pub rolled_out: bool,
    /// Whether flames were seen to lean in the blower's wind.
    pub flames_leaned: bool,
    /// The port whose boss was seen to be cracked, by the bubbles along it.
    pub cracked: Option<Port>,
}

impl SinceCall {
    /// Notices what there is.
    pub(super) fn take_in(&mut self, seen: &Seen) {
        self.bang |= seen.sounds.contains(&Sound::Bang);
        let inducer = [Sound::Inducer, Sound::InducerFast];
        self.blower_heard |= seen.sounds.contains(&Sound::Blower);
        self.inducer_heard |= seen.sounds.iter().any(|sound| inducer.contains(sound));
        let Some(furnace) = &seen.furnace else { return };
        let status = furnace.status;
        self.look_at_inlet(seen, status);
        self.limit |= status == ControlStatus::LimitOpen;
        self.says_above |= status.burns_at().is_some_and(|level| !level.is_first());
        self.low_gas |= status == ControlStatus::AwaitsGasPressure
            || status.failure() == Some(Failure::GasPressure);
        self.first_switch |= status.failure() == Some(Failure::PressureSwitch);
        self.stray |= status == ControlStatus::StrayFlame;
        self.rolled_out |= status == ControlStatus::RolloutOpen;
        if status == ControlStatus::AwaitsNextSwitch {
            self.next_switch_ticks += 1;
        }
        let Some(burners) = &furnace.burners else { return };
        for (port, seen) in &burners.ports {
            if seen.cracked == Cracked::Cracked {
                self.cracked = Some(port);
            }
        }
        self.flames_leaned |= burners.signs.flames_lean();
        self.glow = self.glow.max(burners.glow);
        let lit = burners.flames.iter().filter(|flame| flame.height > 0.0).count();
        self.lit = self.lit.max(lit);
        if lit > 0 && has_shut_the_gas(status) {
            self.burning_on_ticks += 1;
        } else if !self.burns_on() {
            self.burning_on_ticks = 0;
        }
    }

    /// What the number at the inlet tells beside what the control says.
    fn look_at_inlet(&mut self, seen: &Seen, status: ControlStatus) {
        let at_inlet = seen.hose().is_some_and(|(port, _)| port == Port::Inlet);
        let Some(pa) = number(seen).filter(|_| at_inlet) else { return };
        let fed = seen.furnace.as_ref().is_some_and(|furnace| furnace.manual_valve.feeds());
        self.starved |= self.lit > 0 && fed && pa < HEAD_PA;
        if fed && between_tries(status) && pa < HEAD_PA {
            self.dead_ticks += 1;
        }
        if status == ControlStatus::AwaitsGasPressure && self.says_above {
            self.stopped_at_pa = Some(self.stopped_at_pa.map_or(pa, |least| least.min(pa)));
        }
    }

    /// Whether the inlet stayed without pressure for five seconds with nothing burning: pipe and
    /// regulator give it back at once, an excess-flow valve that has shut lets it seep back.
    pub(super) fn is_dead(&self) -> bool {
        u64::from(self.dead_ticks) > 5 * TICKS_PER_S
    }

    /// Whether a flame was seen or felt with the gas shut.
    pub(super) fn stays_on(&self) -> bool {
        self.stray || self.burns_on()
    }

    /// Whether flames stayed on after a call for more than a second and a half: a gas valve shuts
    /// within one (EN 161, from memory).
    fn burns_on(&self) -> bool {
        u64::from(self.burning_on_ticks) * 2 > 3 * TICKS_PER_S
    }
}

/// Whether the control waits or purges for another try, with the gas shut.
fn between_tries(status: ControlStatus) -> bool {
    matches!(
        status,
        ControlStatus::Retry(_) | ControlStatus::PrePurge | ControlStatus::IgniterWarming
    )
}

/// Whether the control says that it has shut the gas.
fn has_shut_the_gas(status: ControlStatus) -> bool {
    matches!(status, ControlStatus::PostPurge | ControlStatus::RolloutOpen)
}
