//! The good run that is to be spoiled: what its plan came to, what the rules had occasion for, and what
//! makes one slip bring others with it.

use std::collections::BTreeSet;

use super::super::edit::{Deed, Edit, What};
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::remedy::Remedy;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, HandOver, PlugStep};
use crate::hands::event::EventKind;
use crate::marking::occasion::gives_occasion;
use crate::marking::{Brief, Ledger};
use crate::parts::{
    Ending, Fitted, Level, Phase, Port, Reading, Screw, Stage, WrittenFinding, is_staged,
};
use crate::rules::evidence::{Hazard, Setting, Unread};
use crate::rules::{Evidence, RuleBook};
use crate::units::PA_PER_INWC;

/// Repairs without which every pressure reads as it should.
const UNREAD: [Repair; 4] =
    [Repair::FitOrifices, Repair::FitAltitudeOrifices, Repair::CleanOrifices, Repair::CleanBurners];

/// What a good run did.
#[derive(Debug, Clone)]
pub(in crate::technician) struct Good {
    /// What its plan came to, each with its tick.
    deeds: Vec<(u64, Deed)>,
    /// Rules that the job gave occasion to trip, by id.
    given: BTreeSet<String>,
    /// The furnace's firing levels, the weakest first.
    levels: &'static [Level],
    /// Ending that the run handed over with.
    ending: Option<Ending>,
    /// Whether propane is in the pipes.
    pub propane: bool,
    /// Whether an alarm called.
    pub alarmed: bool,
    /// Whether a supply turned up four times as far again stands above its limits, and not so far
    /// that the gas valve sees more than it may.
    pub five_times_shows: bool,
    /// Whether the supply as found holds the full rate down.
    pub supply_starves: bool,
    /// Whether the supply was set or its regulator renewed.
    pub moves_supply: bool,
    /// Whether the screw of a level was turned.
    pub turns_a_level: bool,
    /// Whether springs, orifices or papers are not for the gas in the pipes.
    pub wrong_parts: bool,
    /// Repairs that answer the job's faults.
    answers: Vec<Repair>,
}

impl Good {
    /// Of a run that has ended, with what its plan came to.
    pub(in crate::technician) fn of(
        ledger: &Ledger,
        deeds: &[(u64, Deed)],
        book: &RuleBook,
        brief: &Brief,
    ) -> Self {
        let given = book.rules.iter().filter(|it| gives_occasion(it.evidence, ledger, brief));
        Self {
            deeds: deeds.to_vec(),
            given: given.map(|it| it.id.clone()).collect(),
            levels: ledger.levels(),
            ending: ledger.ending(),
            propane: ledger.setup.fuel == Fuel::Propane,
            alarmed: ledger.events.iter().any(|event| matches!(event.what, EventKind::Alarm)),
            five_times_shows: five_times_shows(ledger),
            supply_starves: supply_starves(ledger),
            moves_supply: gives_occasion(
                Evidence::Unread(Unread::SupplyNotRechecked),
                ledger,
                brief,
            ),
            turns_a_level: gives_occasion(
                Evidence::Setting(Setting::TurnedBeforeFound),
                ledger,
                brief,
            ),
            wrong_parts: gives_occasion(
                Evidence::Hazard(Hazard::WrongConversionFired),
                ledger,
                brief,
            ),
            answers: answers(ledger),
        }
    }

    /// Whether the job gave occasion to trip a rule.
    pub(super) fn gives(&self, rule: &str) -> bool {
        self.given.contains(rule)
    }

    /// The places among its deeds from which an edit makes a difference.
    pub(super) fn places(&self, edit: &Edit) -> Vec<usize> {
        let due = (0..self.deeds.len()).filter(|&place| self.is_due(edit.what(), place));
        if !edit.hurries() {
            return due.collect();
        }
        // The wait begins with what was done last.
        let last = |place: usize| (0..place).rev().find(|&it| self.deeds[it].1.action().is_some());
        due.filter_map(last).collect()
    }

    /// Whether a deed is such a one; a goal only where it is not met from the beginning.
    fn is_due(&self, what: &What, place: usize) -> bool {
        let (_, deed) = &self.deeds[place];
        let asks = match deed {
            Deed::Begins(goal) => {
                let next = self.deeds.get(place + 1);
                next.is_some_and(|(_, next)| matches!(next, Deed::Does(Some(of), _) if of == goal))
            }
            Deed::Does(..) => true,
        };
        asks && what.is(deed)
    }

    /// The tick of the deed at a place.
    pub(super) fn tick_of(&self, place: usize) -> u64 {
        self.deeds.get(place).map_or(0, |(tick, _)| *tick)
    }

    /// Whether anything is mended, or the supply set, after the deed at a place.
    pub(super) fn mends_after(&self, place: usize) -> bool {
        let mut after = self.deeds.iter().skip(place + 1).filter_map(|(_, deed)| deed.action());
        after.any(|action| {
            matches!(action, Action::Mend(_) | Action::Turn { screw: Screw::Supply, .. })
        })
    }

    /// What it did, in order.
    pub(super) fn actions(&self) -> impl Iterator<Item = &Action> {
        self.deeds.iter().filter_map(|(_, deed)| deed.action())
    }

    /// Whether it did such a thing.
    fn does(&self, when: impl Fn(&Action) -> bool) -> bool {
        self.actions().any(when)
    }

    /// How often it did this very thing.
    pub(super) fn times(&self, wanted: &Action) -> usize {
        self.actions().filter(|action| *action == wanted).count()
    }

    /// Its repairs, in order.
    pub(super) fn mends(&self) -> impl Iterator<Item = Repair> {
        self.actions().filter_map(|action| {
            let Action::Mend(repair) = action else { return None };
            Some(*repair)
        })
    }

    /// Whether it did such a repair.
    pub(super) fn mends_by(&self, wanted: Repair) -> bool {
        self.mends().any(|repair| repair == wanted)
    }

    /// The one repair that it did, if it is one that no pressure shows the want of.
    pub(super) fn leaves_no_reading_wrong(&self) -> Option<Repair> {
        let mut mends = self.mends();
        let unread = |repair: &Repair| UNREAD.contains(repair) && self.answers.contains(repair);
        let one = mends.next().filter(unread)?;
        mends.next().is_none().then_some(one)
    }

    /// Whether it mended anything after a screw was turned for the first time.
    pub(super) fn mends_after_turning(&self, wanted: Screw) -> bool {
        let turn = |a: &&Action| matches!(a, Action::Turn { screw, .. } if *screw == wanted);
        self.actions().skip_while(|a| !turn(a)).any(|a| matches!(a, Action::Mend(_)))
    }

    pub(super) fn turns(&self, wanted: Screw) -> bool {
        self.does(|a| matches!(a, Action::Turn { screw, .. } if *screw == wanted))
    }

    /// Whether it set the level of light-up.
    pub(super) fn turns_first(&self) -> bool {
        self.turns(self.first().screw())
    }

    /// Eighths of a turn that it left the supply's screw turned in.
    pub(super) fn supply_eighths(&self) -> i16 {
        let turns = self.actions().filter_map(supply_turn);
        turns.fold(0, i16::saturating_add)
    }

    pub(super) fn ends(&self, ending: Ending) -> bool {
        self.ending == Some(ending)
    }

    /// Whether the furnace was left to burn.
    pub(super) fn in_use(&self) -> bool {
        !self.ends(Ending::ShutOff)
    }

    /// What it wrote of pressures, in order.
    pub(super) fn readings(&self) -> impl Iterator<Item = Reading> {
        self.actions().filter_map(|action| {
            let Action::Write(reading) = action else { return None };
            Some(*reading)
        })
    }

    /// The last reading that it wrote of a port in a state, before or after work.
    pub(super) fn wrote(&self, port: Port, stage: Stage, phase: Phase) -> Option<Reading> {
        self.readings().filter(|it| (it.port, it.stage, it.phase) == (port, stage, phase)).last()
    }

    /// The number that it wrote last of a port in a state, before it wrote another reading for the last
    /// time.
    pub(super) fn wrote_before(&self, later: Reading, port: Port, stage: Stage) -> Option<i32> {
        let readings: Vec<Reading> = self.readings().collect();
        let mut before = readings.into_iter().rev().skip_while(|it| *it != later);
        before.find(|it| (it.port, it.stage) == (port, stage)).map(|it| it.thousandths)
    }

    /// What it wrote as wrong, in order.
    pub(super) fn findings(&self) -> impl Iterator<Item = &WrittenFinding> {
        self.actions().filter_map(|action| {
            let Action::WriteFinding(finding) = action else { return None };
            Some(finding)
        })
    }

    pub(super) fn times_written(&self, port: Port, stage: Stage) -> usize {
        self.readings().filter(|it| (it.port, it.stage) == (port, stage)).count()
    }

    /// Whether the furnace has more than one firing level.
    pub(super) fn is_staged(&self) -> bool {
        is_staged(self.levels)
    }

    /// The level at which the burners light.
    pub(super) fn first(&self) -> Level {
        self.levels.first().copied().unwrap_or(Level::Only)
    }

    /// The level of the full rate.
    pub(super) fn full(&self) -> Level {
        self.levels.last().copied().unwrap_or(Level::Only)
    }

    /// The state in which it burns at the level of light-up.
    pub(super) fn at_first(&self) -> Stage {
        Stage::Firing(self.first())
    }

    /// The state in which it burns at its full rate, the furnace alone.
    pub(super) fn at_full(&self) -> Stage {
        Stage::Firing(self.full())
    }

    /// What it said at the hand-over.
    pub(super) fn said(&self) -> Option<HandOver> {
        self.actions().find_map(|action| {
            let Action::HandOver(said) = action else { return None };
            Some(said.clone())
        })
    }

    /// Whether the hose goes onto an adapter: over a tap it needs none.
    pub(super) fn fits_adapter(&self) -> bool {
        self.does(|action| matches!(action, Action::Adapter { .. }))
    }

    /// Whether it took the plug or the adapter out of a port.
    pub(super) fn opens(&self, port: Port) -> bool {
        self.does(|action| *action == Action::Plug { port, step: PlugStep::SpinOut })
    }

    /// A screw of a level whose cap was put on without having been taken off.
    pub(super) fn cap_found_off(&self) -> Option<Screw> {
        let cap = |screw, to| Action::Cap { screw, to };
        self.levels.iter().map(|level| level.screw()).find(|&screw| {
            self.times(&cap(screw, Fitted::On)) > 0
                && self.times(&cap(screw, Fitted::Off)) == 0
                && !self.turns(screw)
        })
    }

    /// The setpoint that the thermostat was put back to.
    pub(super) fn setpoint(&self) -> Option<i16> {
        self.setpoints().last()
    }

    fn setpoints(&self) -> impl Iterator<Item = i16> {
        self.actions().filter_map(|action| {
            let Action::Setpoint(half_f) = action else { return None };
            Some(*half_f)
        })
    }

    /// Turns of the firing levels' screws, in order: screw and eighths.
    pub(super) fn level_turns(&self) -> impl Iterator<Item = (Screw, i16)> {
        self.actions().filter_map(|action| {
            let Action::Turn { screw, eighths } = action else { return None };
            screw.level().map(|_| (*screw, *eighths))
        })
    }
}

/// Eighths of a turn of the supply's screw.
fn supply_turn(action: &Action) -> Option<i16> {
    let Action::Turn { screw: Screw::Supply, eighths } = action else { return None };
    Some(*eighths)
}

fn supply_starves(l: &Ledger) -> bool {
    let wanted_pa = l.plate().figures().manifold.top().pa;
    let found = l.did().find(|did| {
        matches!(did.action, Action::Write(Reading { port: Port::Inlet, stage: Stage::Firing(level), .. })
            if level.is_top())
    });
    found.is_some_and(|did| did.before.inlet_pa - wanted_pa < PA_PER_INWC)
}

fn five_times_shows(l: &Ledger) -> bool {
    let Some((_, _, left)) = l.left() else { return false };
    let turns = l.did().filter_map(|did| supply_turn(did.action));
    let more_pa = 4.0 * turns.map(f64::from).sum::<f64>() / 8.0 * l.setup.supply.pa_per_turn;
    let set_pa = left.supply_set_pa + more_pa;
    let most_pa = l.setup.supply.delivery_limits_pa.1;
    (most_pa + PA_PER_INWC..l.plate().valve_max.si()).contains(&set_pa)
}

fn answers(l: &Ledger) -> Vec<Repair> {
    let right = l.setup.faults.iter().flat_map(|(fault, _)| fault.entry().right);
    let mends = right.filter_map(|remedy| match remedy {
        Remedy::Mend(repair) => Some(*repair),
        Remedy::Turn(_) | Remedy::Operate(_) | Remedy::CallOwner | Remedy::ShutOffAndTag => None,
    });
    mends.collect()
}
