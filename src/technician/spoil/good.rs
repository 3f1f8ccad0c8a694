//! The good run that is to be spoiled: what it did, what the rules had occasion for, and what makes one
//! slip bring others with it.

use std::collections::BTreeSet;

use super::at::At;
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::remedy::Remedy;
use crate::catalogue::repair::{Moves, Repair};
use crate::hands::action::{Action, PlugStep};
use crate::hands::event::EventKind;
use crate::marking::ledger::Did;
use crate::marking::occasion::gives_occasion;
use crate::marking::{Brief, Ledger};
use crate::parts::{Ending, HandValve, Level, OnOff, OtherAppliance, Port, Screw, is_staged};
use crate::physics::valve::HandleAngle;
use crate::rules::RuleBook;
use crate::units::PA_PER_INWC;

/// Repairs without which every pressure reads as it should.
const UNREAD: [Repair; 4] =
    [Repair::FitOrifices, Repair::FitAltitudeOrifices, Repair::CleanOrifices, Repair::CleanBurners];

fn low_supply_starves(l: &Ledger) -> bool {
    let high = l.plate().figures().manifold.top().pa;
    let found = l.did().find(|did| {
        matches!(did.action, Action::Write(r) if r.port == Port::Inlet && At::Full.is(r.stage))
    });
    found.is_some_and(|did| did.before.inlet_pa - high < PA_PER_INWC)
}

fn five_times_shows(l: &Ledger) -> bool {
    let Some((_, _, left)) = l.left() else { return false };
    let turns = l.did().map(|did| match did.action {
        Action::Turn { screw: Screw::Supply, eighths } => f64::from(*eighths) / 8.0,
        _ => 0.0,
    });
    let more_pa = 4.0 * turns.sum::<f64>() * l.setup.supply.pa_per_turn;
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

fn renews_leaking_valve(l: &Ledger) -> bool {
    let renews = |did: Did<'_>| *did.action == Action::Mend(Repair::ReplaceGasValve);
    l.setup.condition.valve.lets_by_m3_s > 0.0 && l.did().any(renews)
}

/// What a good run did.
#[derive(Debug, Clone)]
pub struct Good {
    /// Its actions, in order.
    pub actions: Vec<Action>,
    /// Rules that the job gave occasion to trip, by id.
    given: BTreeSet<String>,
    /// Whether propane is in the pipes.
    pub propane: bool,
    /// Ending that the run handed over with.
    pub ending: Option<Ending>,
    /// Whether an alarm called.
    pub alarmed: bool,
    /// Whether the supply as found held the high stage down.
    pub low_supply_starves: bool,
    /// Whether a supply turned up four times as far again stands above its limits, and not so far
    /// that the gas valve sees more than it may.
    pub five_times_shows: bool,
    /// Whether the manometer's hose leaked as it was found.
    pub hose_leaks: bool,
    /// The furnace's firing levels, the weakest first.
    levels: &'static [Level],
    /// Repairs that answer the job's faults.
    pub answers: Vec<Repair>,
    /// How the manual valve was found.
    pub valve_found: HandleAngle,
    /// Whether it renewed a gas valve that let gas by.
    pub renews_leaking_valve: bool,
}

impl Good {
    /// Of a run that has ended.
    #[must_use]
    pub fn of(ledger: &Ledger, book: &RuleBook, brief: &Brief) -> Self {
        let given = book.rules.iter().filter(|it| gives_occasion(it.evidence, ledger, brief));
        Self {
            given: given.map(|it| it.id.clone()).collect(),
            actions: ledger.did().map(|did| did.action.clone()).collect(),
            propane: ledger.setup.fuel == Fuel::Propane,
            ending: ledger.ending(),
            low_supply_starves: low_supply_starves(ledger),
            five_times_shows: five_times_shows(ledger),
            hose_leaks: ledger.setup.condition.meter.hose_hole_m > 0.0,
            alarmed: ledger.events.iter().any(|event| matches!(event.what, EventKind::Alarm)),
            levels: ledger.levels(),
            answers: answers(ledger),
            valve_found: ledger
                .did()
                .next()
                .map_or(HandleAngle::SHUT, |did| did.before.manual_valve),
            renews_leaking_valve: renews_leaking_valve(ledger),
        }
    }

    /// Whether the job gave occasion to trip a rule.
    pub(super) fn gives(&self, rule: &str) -> bool {
        self.given.contains(rule)
    }

    /// Whether it did such a thing.
    pub(super) fn does(&self, when: impl Fn(&Action) -> bool) -> bool {
        self.actions.iter().any(when)
    }

    /// How many repairs it did.
    pub(super) fn mends(&self) -> usize {
        self.actions.iter().filter(|a| matches!(a, Action::Mend(_))).count()
    }

    pub(super) fn mends_nothing(&self) -> bool {
        !self.does(|a| matches!(a, Action::Mend(_)))
    }

    /// The one repair that it did, if it is one that no pressure shows the want of.
    pub(super) fn leaves_no_reading_wrong(&self) -> Option<Repair> {
        let mut mends = self.actions.iter().filter_map(|a| match a {
            Action::Mend(repair) => Some(*repair),
            _ => None,
        });
        let unread = |repair: &Repair| UNREAD.contains(repair) && self.answers.contains(repair);
        let one = mends.next().filter(unread)?;
        mends.next().is_none().then_some(one)
    }

    /// Whether anything is still to be mended after so many actions.
    pub(super) fn mends_after(&self, done: usize) -> bool {
        self.actions.iter().skip(done).any(|a| matches!(a, Action::Mend(_)))
    }

    pub(super) fn times(&self, wanted: &Action) -> usize {
        self.actions.iter().filter(|a| *a == wanted).count()
    }

    pub(super) fn times_written(&self, port: Port, at: At) -> usize {
        let there = |a: &&Action| matches!(a, Action::Write(r) if r.port == port && at.is(r.stage));
        self.actions.iter().filter(there).count()
    }

    /// Whether the manual valve was found open and shut for the inlet port, with nothing mended
    /// before.
    pub(super) fn shuts_first(&self) -> bool {
        let first = self.actions.iter().find_map(|a| match a {
            Action::HandValve { hand_valve: HandValve::Furnace, degrees } => Some(*degrees),
            Action::Plug { .. } | Action::Mend(_) => Some(-1),
            _ => None,
        });
        let open = first == Some(0) && self.valve_found.is_open();
        open && self.is_quiet() && self.mends_nothing()
    }

    /// Whether it mended such a thing after a stage screw was turned for the first time.
    pub(super) fn mends_after_turning(&self, wanted: Screw, when: impl Fn(Repair) -> bool) -> bool {
        let turn = |a: &&Action| matches!(a, Action::Turn { screw, .. } if *screw == wanted);
        let after = self.actions.iter().skip_while(|a| !turn(a));
        after.into_iter().any(|a| matches!(a, Action::Mend(repair) if when(*repair)))
    }

    pub(super) fn turns(&self, wanted: Screw) -> bool {
        self.does(|a| matches!(a, Action::Turn { screw, .. } if *screw == wanted))
    }

    /// The screws of the firing levels, the weakest first.
    pub(super) fn screws(&self) -> impl Iterator<Item = Screw> {
        self.levels.iter().map(|level| level.screw())
    }

    pub(super) fn turns_no_stage(&self) -> bool {
        !self.screws().any(|screw| self.turns(screw))
    }

    /// Whether it set or renewed the supply's regulator.
    pub(super) fn moves_supply(&self) -> bool {
        let renews =
            |a: &Action| matches!(a, Action::Mend(repair) if repair.moves() == Moves::Supply);
        self.turns(Screw::Supply) || self.does(renews)
    }

    /// Whether it left the supply turned up.
    pub(super) fn raises_supply(&self) -> bool {
        self.supply_eighths() > 0
    }

    /// Eighths of a turn that it left the supply's screw turned in.
    pub(super) fn supply_eighths(&self) -> i16 {
        let turns = self.actions.iter().map(|a| match a {
            Action::Turn { screw: Screw::Supply, eighths } => *eighths,
            _ => 0,
        });
        turns.fold(0, i16::saturating_add)
    }

    pub(super) fn ends(&self, ending: Ending) -> bool {
        self.ending == Some(ending)
    }

    /// Whether the furnace was left to burn.
    pub(super) fn in_use(&self) -> bool {
        !self.ends(Ending::ShutOff)
    }

    pub(super) fn opens(&self, wanted: Port) -> bool {
        self.does(
            |a| matches!(a, Action::Plug { port, step: PlugStep::SpinOut } if *port == wanted),
        )
    }

    pub(super) fn refits(&self, wanted: Port) -> bool {
        self.does(
            |a| matches!(a, Action::Plug { port, step: PlugStep::Tighten(6) } if *port == wanted),
        )
    }

    pub(super) fn writes(&self, port: Port, at: At) -> bool {
        self.does(|a| matches!(a, Action::Write(r) if r.port == port && at.is(r.stage)))
    }

    /// Whether the furnace has more than one firing level.
    pub(super) fn is_staged(&self) -> bool {
        is_staged(self.levels)
    }

    /// The level at which the burners light.
    pub(super) fn first_level(&self) -> Option<Level> {
        self.levels.first().copied()
    }

    /// The screw of the level at which the burners light.
    pub(super) fn first_screw(&self) -> Screw {
        self.levels.first().map_or(Screw::Only, |level| level.screw())
    }

    /// The screw of the full rate.
    pub(super) fn full_screw(&self) -> Screw {
        self.levels.last().map_or(Screw::Only, |level| level.screw())
    }

    /// Whether neither nose nor detector found anything.
    pub(super) fn is_quiet(&self) -> bool {
        !self.alarmed
    }

    /// What another appliance was turned to last.
    pub(super) fn last_for(&self, wanted: OtherAppliance) -> Option<OnOff> {
        self.actions.iter().rev().find_map(|a| match a {
            Action::OtherAppliance { appliance, to } if *appliance == wanted => Some(*to),
            _ => None,
        })
    }

    /// The setpoint that the thermostat was put back to.
    pub(super) fn setpoint(&self) -> Option<i16> {
        self.actions.iter().rev().find_map(|a| match a {
            Action::Setpoint(half_f) => Some(*half_f),
            _ => None,
        })
    }
}
