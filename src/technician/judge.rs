//! Judging the supply by the pattern of the inlet: at rest, on each firing level, under full load.

use super::burn::stays_on;
use super::course::Course;
use super::diagnosis::Diagnosis;
use super::know::{HEAD_PA, SinceCall};
use super::mend::mend_all;
use super::mind::Mind;
use super::screw::{MOST_TRIES, turn_back};
use super::step::{
    Step, act, give_gas, give_up, go, isolate, others, pause, reach, stop, take, think,
    until_at_rest,
};
use crate::appliance::plate::Band;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Level, OnOff, Place, Port, Screw, Stage, Subject, is_staged};
use crate::procedure::{Goal, number};
use crate::senses::seen::{Note, Observation, Seen, Smell, Sound};
use crate::setup::SupplyRight;
use crate::units::PA_PER_INWC;

/// Share of the pressure at rest by which a sound supply falls with everything on, and what the
/// pipes may take on top, in pascals (lock-up and droop of ordinary regulators, and the half inch
/// that pipes are sized for; common practice).
pub(super) const SOUND_DROP: (f64, f64) = (0.2, 0.5 * PA_PER_INWC);
/// Share of the pressure at rest by which it falls from rest to low when a seat creeps (a sound one
/// falls by a tenth on the calibrated benches).
pub(super) const CREEP_DROP: f64 = 0.25;
/// What the inlet may rise during the hold at rest before it creeps, in pascals (0.1 in. w.c., a
/// digit of the trade's ordinary meters; a sound seat shuts at once).
pub(super) const CREEPS_PA: f64 = 0.1 * PA_PER_INWC;
/// Margin that the supply is set inside its limits, in pascals (0.3 in. w.c.).
const MARGIN_PA: f64 = 0.3 * PA_PER_INWC;
/// Share of the falls between stages from which a regulator is too small, not a pipe too narrow
/// (furnace on 70 and 100 %, others of a little more than its rate; between what both give on the
/// calibrated benches, and so a rule for loads like theirs).
const PIPE_SHARE: f64 = 0.26;
/// The same below which even a pipe would give way sooner: the regulator gets too little.
const MAIN_SHARE: f64 = 0.12;
/// Fall from the first level to the full rate against the fall from rest to the first: a
/// regulator's is 3/7 at most on 70 and 100 % of the load, a pipe's, or a regulator's that stands
/// wide open, 51/49; the step at lock-up lowers both.
const SQUARE_SHARE: f64 = 0.5;
/// The same from which there is no step at lock-up: the regulator stands wide open, for want of
/// pressure before it.
const STEPLESS_SHARE: f64 = 0.75;
/// Tank gauge, in per cent, from which the supplier has to fill (common practice).
const TANK_LOW: f64 = 10.0;

/// What is wrong with the supply.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Supply {
    Sound,
    SetLow,
    SetHigh,
    Creeps,
    /// Right at rest, too low under load.
    Weak,
    /// The burners go out under load.
    Collapses,
}

impl Mind {
    /// Whether the supply is outside what the plate and the regulator's nameplate allow and was
    /// not put right.
    pub(super) fn supply_is_bad(&self) -> bool {
        self.supply() != Supply::Sound
    }

    /// Whether the supply may be worked on here.
    pub(super) fn may_set_supply(&self) -> bool {
        self.card.supply == SupplyRight::Trainee
    }

    /// The furnace's firing levels, as plate or label list them.
    pub(super) fn levels(&self) -> &'static [Level] {
        self.know.papers.figures.as_ref().map_or(&[], |figures| figures.manifold.list())
    }

    /// The inlet with the furnace alone at its first level, in pascals.
    pub(super) fn first_inlet_pa(&self) -> Option<f64> {
        self.levels().first().and_then(|&level| self.know.read.inlet[Stage::Firing(level)])
    }

    /// The inlet with the furnace alone at its full rate, in pascals.
    pub(super) fn full_inlet_pa(&self) -> Option<f64> {
        self.levels().last().and_then(|&level| self.know.read.inlet[Stage::Firing(level)])
    }

    /// Whether an excess-flow valve that may be renewed here shuts under load.
    fn excess_flow_shuts(&self) -> bool {
        let renewed = self.know.has_mended(Repair::ReplaceExcessFlowValve);
        self.may_set_supply() && self.know.since_call.is_dead() && !renewed
    }

    /// What plate and nameplate allow at the inlet.
    pub(super) fn inlet_allowed(&self, stage: Stage) -> Option<Band> {
        let lockup_most_pa = self.know.papers.delivery.map(|it| it.rest_pa);
        Some(self.know.papers.figures.as_ref()?.allows(Port::Inlet, stage, lockup_most_pa))
    }

    /// Highest pressure at rest that plate and nameplate allow, in pascals.
    fn most_at_rest_pa(&self) -> Option<f64> {
        Some(self.inlet_allowed(Stage::Rest)?.most_pa)
    }

    /// How far the smallest load stands over what the nameplate lets the regulator deliver, in pascals.
    fn over_delivery_pa(&self) -> Option<f64> {
        let most = self.know.papers.delivery?.most_pa;
        Some(self.first_inlet_pa()? - most)
    }

    /// Whether the inlet at rest lies inside what plate and nameplate allow.
    fn below_limits(&self) -> bool {
        let at_rest = self.inlet_allowed(Stage::Rest).zip(self.know.read.inlet[Stage::Rest]);
        at_rest.is_some_and(|(band, rest)| !band.is_above(rest))
    }

    fn supply(&self) -> Supply {
        let (Some(at_rest), Some(loaded)) =
            (self.inlet_allowed(Stage::Rest), self.inlet_allowed(Stage::FullLoad))
        else {
            return Supply::Sound;
        };
        let inlet = &self.know.read.inlet;
        let (rest, first) = (inlet[Stage::Rest], self.first_inlet_pa());
        let others = inlet[Stage::FullLoad];
        if let (Some(rest), Some(first)) = (rest, first)
            && at_rest.is_above(rest)
        {
            let creeps = rest - first > CREEP_DROP * rest;
            return if creeps { Supply::Creeps } else { Supply::SetHigh };
        }
        if self.know.read.rest_rise.is_some_and(|rise| rise > CREEPS_PA) || self.locks_up_late() {
            return Supply::Creeps;
        }
        if self.may_set_supply() && self.over_delivery_pa().is_some_and(|over_pa| over_pa > 0.0) {
            return Supply::SetHigh;
        }
        if self.know.read.collapsed {
            return Supply::Collapses;
        }
        let (Some(rest), Some(others)) = (rest, others) else { return Supply::Sound };
        if !loaded.is_below(others) {
            return Supply::Sound;
        }
        // What is too low with nothing burning is not too low for the load.
        if at_rest.is_below(rest) {
            return Supply::SetLow;
        }
        if rest - others > SOUND_DROP.0 * rest + SOUND_DROP.1 {
            Supply::Weak
        } else {
            Supply::SetLow
        }
    }
}

/// After the inlet series: puts the supply right where that can be done here, else goes on or
/// leaves the furnace shut off.
pub(super) fn supply(me: &mut Mind, _: &Seen) -> Vec<Step> {
    me.know.screws.tries = 0;
    if me.careless {
        return go_on();
    }
    let mine = me.may_set_supply();
    let again = me.know.supply.turned || me.know.has_mended(Repair::ReplaceSupplyRegulator);
    match me.supply() {
        // At the right pressure no relief opens: what was heard comes through the diaphragm.
        Supply::Sound if me.know.supply.vent_heard && !again && mine => {
            me.plan_repair(Diagnosis::RegulatorVents, Repair::ReplaceSupplyRegulator);
            mend_and_read_left()
        }
        Supply::Sound if me.know.supply.vent_heard && !mine => {
            me.know.supply.vent_heard = false;
            me.know.note(Diagnosis::RegulatorVents);
            me.know.supply.owner_needed = true;
            stays_on(me).unwrap_or_else(go_on)
        }
        Supply::Sound => stays_on(me).unwrap_or_else(go_on),
        Supply::SetLow if mine && !again => {
            me.know.note(Diagnosis::SupplySetLow);
            turn(think(raise))
        }
        Supply::SetHigh if mine && me.know.supply.raised && !me.know.supply.lowered => {
            // Raised for the load it stands too high at rest: it is the load that is too much for it.
            me.know.note(Diagnosis::SupplyRaisedInVain);
            turn(think(lower))
        }
        Supply::SetHigh if mine && !again => {
            me.know.note(Diagnosis::SupplySetHigh);
            turn(think(lower))
        }
        Supply::Creeps if mine && !again => {
            me.plan_repair(Diagnosis::SupplyCreeps, Repair::ReplaceSupplyRegulator);
            mend_and_read_left()
        }
        Supply::SetLow => {
            me.know.note(Diagnosis::SupplySetLow);
            go_on()
        }
        Supply::Collapses => collapses(me),
        Supply::Weak => weak(me),
        Supply::Creeps if me.below_limits() => {
            // It creeps inside its limits: the furnace may run, its owner has to come.
            me.know.note(Diagnosis::SupplyCreeps);
            me.know.supply.owner_needed = true;
            go_on()
        }
        Supply::SetHigh | Supply::Creeps => {
            me.know.note(Diagnosis::SupplyTooHigh);
            // More than the plate allows: nothing burns on it.
            give_up_supply(me)
        }
    }
}

/// The burners go out under load.
fn collapses(me: &mut Mind) -> Vec<Step> {
    if me.excess_flow_shuts() {
        plan_excess_flow(me);
        return mend_and_read_left();
    }
    me.know.note(Diagnosis::SupplyFailsUnderLoad);
    me.know.supply.owner_needed = true;
    give_up_supply(me)
}

/// Right at rest, too low under load: what is too narrow is renewed where that may be done here.
fn weak(me: &mut Mind) -> Vec<Step> {
    let mine = me.may_set_supply();
    let (diagnosis, repair) = match narrow(me) {
        Narrow::Main => {
            me.know.note(Diagnosis::TooLittleBeforeRegulator);
            me.know.supply.owner_needed = true;
            return go_on();
        }
        Narrow::Trunk if !me.know.has_mended(Repair::ReplaceTrunk) => {
            (Diagnosis::TrunkTooNarrow, Repair::ReplaceTrunk)
        }
        Narrow::Trunk | Narrow::Regulator => {
            (Diagnosis::RegulatorTooSmall, Repair::ReplaceSupplyRegulator)
        }
    };
    if mine && !me.know.has_mended(repair) {
        me.plan_repair(diagnosis, repair);
        return mend_and_read_left();
    }
    me.know.note(Diagnosis::SupplyTooWeak);
    go_on()
}

/// Another excess-flow valve goes in, and what was read of the old one counts no more.
fn plan_excess_flow(me: &mut Mind) {
    me.know.read.collapsed = false;
    me.know.since_call = SinceCall::default();
    me.plan_repair(Diagnosis::ExcessFlowShuts, Repair::ReplaceExcessFlowValve);
}

/// The full rate burned and is out again: for want of gas, or for a reason that is looked for.
pub(super) fn lost_at_full(me: &mut Mind) -> Vec<Step> {
    let band = me.inlet_allowed(Stage::FullLoad);
    if me.know.since_call.stopped_at_pa.zip(band).is_some_and(|(pa, band)| band.is_below(pa)) {
        me.know.supply.owner_needed = true;
        return give_up(me, Diagnosis::SupplyFailsUnderLoad);
    }
    take(Course::LookForReason)
}

pub(super) fn give_up_supply(me: &mut Mind) -> Vec<Step> {
    me.know.leave_shut_off = true;
    let mut steps = stop();
    steps.extend(others(OnOff::Off));
    steps.extend(take(Course::CloseAndLeave));
    steps
}

fn go_on() -> Vec<Step> {
    let mut steps = stop();
    // The joint is proven at its own pressure, which the others would take away.
    steps.extend(others(OnOff::Off));
    // At the furnace it is seen whether the flames go out with the call.
    steps.push(think(|me, _| stays_on(me).unwrap_or_else(|| take(Course::InletAfterFlow))));
    steps
}

/// What is too narrow for the load.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Narrow {
    /// What comes to the regulator: it holds up to a flow, and then no more.
    Main,
    Regulator,
    Trunk,
}

/// A regulator gives way in proportion to the flow, a pipe with its square: against the fall from
/// the full rate alone to full load, the fall from the first level to the full rate is large for
/// the one, small for the other.
pub(super) fn narrow(me: &Mind) -> Narrow {
    let inlet = &me.know.read.inlet;
    let (Some(rest), Some(first), Some(full), Some(others)) =
        (inlet[Stage::Rest], me.first_inlet_pa(), me.full_inlet_pa(), inlet[Stage::FullLoad])
    else {
        return Narrow::Regulator;
    };
    if !is_staged(me.levels()) {
        // One load says nothing of how the fall grows with it.
        return Narrow::Regulator;
    }
    let share = (first - full) / (full - others).max(1.0);
    if share > PIPE_SHARE {
        // With the others on there may be so little left that they draw less than their rate: what
        // the furnace alone does to the pressure is not touched by that.
        let square = (first - full) / (rest - first).max(1.0);
        if square > STEPLESS_SHARE {
            Narrow::Main
        } else if square > SQUARE_SHARE {
            Narrow::Trunk
        } else {
            Narrow::Regulator
        }
    } else if share > MAIN_SHARE {
        Narrow::Trunk
    } else {
        Narrow::Main
    }
}

pub(super) fn mend_and_read_left() -> Vec<Step> {
    let mut steps = stop();
    steps.extend(others(OnOff::Off));
    steps.push(until_at_rest());
    steps.extend(isolate());
    steps.push(mend_all());
    steps.extend(give_gas());
    steps.extend(take(Course::InletAsLeft));
    steps
}

/// Turns the supply's screw, with everything burning, and reads again.
fn turn(how: Step) -> Vec<Step> {
    let mut steps = vec![
        think(|me, _| {
            me.know.screws.tries = 0;
            me.know.screws.start = None;
            me.know.supply.turned = true;
            Vec::new()
        }),
        reach(Goal::MeterInSight),
        how,
        go(Place::Yard),
    ];
    steps.extend([reach(Goal::Capped(Screw::Supply)), reach(Goal::HandEmpty)]);
    steps.extend(stop());
    steps.extend(take(Course::InletAsLeft));
    steps
}

/// A small turn in until the plate's minimum is passed with everything on, and the smallest load will
/// stand inside the nameplate.
fn raise(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    me.know.supply.raised = true;
    let Some(loaded) = me.inlet_allowed(Stage::FullLoad) else { return Vec::new() };
    let mut wanted = loaded.least_pa + MARGIN_PA;
    let inlet = &me.know.read.inlet;
    if let (Some(delivery), Some(first), Some(others)) =
        (me.know.papers.delivery, me.first_inlet_pa(), inlet[Stage::FullLoad])
    {
        wanted = wanted.max(delivery.least_pa - (first - others));
    }
    me.know.screws.tries += 1;
    match number(seen) {
        Some(pa) if pa < wanted && me.turns_in_vain(pa) => screw_in_vain(me),
        Some(pa) if pa < wanted && me.know.screws.tries < MOST_TRIES => {
            me.count_turn(2);
            turn_supply(2, think(raise))
        }
        Some(_) | None => Vec::new(),
    }
}

/// A small turn out until the pressure at rest and the smallest load will be inside their limits:
/// what they were too high there is taken off here.
fn lower(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    me.know.supply.lowered = true;
    let (Some(most), Some(rest), Some(others)) = (
        me.most_at_rest_pa(),
        me.know.read.inlet[Stage::Rest],
        me.know.read.inlet[Stage::FullLoad],
    ) else {
        return Vec::new();
    };
    let over_pa = me.over_delivery_pa().map_or(rest - most, |over_pa| over_pa.max(rest - most));
    let wanted = others - over_pa - MARGIN_PA;
    me.know.screws.tries += 1;
    match number(seen) {
        Some(pa) if pa > wanted && me.turns_in_vain(pa) => screw_in_vain(me),
        Some(pa) if pa > wanted && me.know.screws.tries < MOST_TRIES => {
            me.count_turn(-2);
            turn_supply(-2, think(lower))
        }
        Some(_) | None => Vec::new(),
    }
}

/// The supply's screw moves nothing: what comes to the regulator is the owner's to put right.
fn screw_in_vain(me: &mut Mind) -> Vec<Step> {
    me.know.note(Diagnosis::SupplyScrewInVain);
    me.know.supply.owner_needed = true;
    let mut steps = vec![reach(Goal::Uncapped(Screw::Supply))];
    steps.extend(turn_back(me, Screw::Supply));
    steps
}

/// A turn of the supply's screw in the yard, and back to the manometer to see what it did.
fn turn_supply(eighths: i16, look: Step) -> Vec<Step> {
    vec![
        reach(Goal::Uncapped(Screw::Supply)),
        act(Action::Turn { screw: Screw::Supply, eighths }),
        reach(Goal::MeterInSight),
        pause(12.0),
        look,
    ]
}

/// No flame: whether it is the gas that is missing, or too much of it.
pub(super) fn no_gas(me: &mut Mind, seen: &Seen) -> Option<Vec<Step>> {
    let at_rest = me.inlet_allowed(Stage::Rest)?;
    let pa = number(seen)?;
    if me.know.read.inlet[Stage::Rest].is_some_and(|rest| at_rest.is_above(rest)) {
        me.know.note(Diagnosis::SupplyTooHigh);
        me.know.supply.owner_needed = !me.may_set_supply();
        if me.may_set_supply() && !me.know.has_mended(Repair::ReplaceSupplyRegulator) {
            me.plan_repair(Diagnosis::SupplyCreeps, Repair::ReplaceSupplyRegulator);
            return Some(take(Course::MendAndReadAgain));
        }
        // With a new regulator, what comes to it is its owner's to put right.
        me.know.supply.owner_needed = true;
        return Some(give_up(me, Diagnosis::SupplyAbovePlate));
    }
    if me.excess_flow_shuts() {
        plan_excess_flow(me);
        return Some(take(Course::MendAndReadAgain));
    }
    if me.know.since_call.starved {
        me.know.supply.owner_needed = true;
        return Some(give_up(me, Diagnosis::SupplyFailsUnderLoad));
    }
    if pa < HEAD_PA {
        me.know.supply.owner_needed = true;
        return Some(give_up(me, Diagnosis::NoGas));
    }
    None
}

/// Whether the inlet at rest already stands below what the plate asks for.
pub(super) fn is_short_of_gas(me: &Mind, seen: &Seen) -> bool {
    let at_rest = me.inlet_allowed(Stage::Rest);
    number(seen).zip(at_rest).is_some_and(|(pa, band)| band.is_below(pa))
}

/// What the tank's gauge and the regulator's vent tell on arrival.
pub(super) fn yard(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let note = |subject| seen.sheet.note(subject).map(|note| note.finding.clone());
    if let Some(Observation::TankPercent(percent)) = note(Subject::TankGauge)
        && percent <= TANK_LOW
    {
        me.know.note(Diagnosis::TankNearlyEmpty);
        me.know.supply.owner_needed = true;
    }
    if seen.sheet.note(Subject::SupplyVent).is_some_and(Note::is_bad) {
        if me.may_set_supply() {
            me.plan_repair(Diagnosis::VentBlocked, Repair::ClearRegulatorVent);
        } else {
            me.know.note(Diagnosis::VentBlocked);
            me.know.supply.owner_needed = true;
        }
    }
    Vec::new()
}

/// Gas is smelt or heard at the supply regulator: it comes out of the vent.
pub(super) fn smell_in_yard(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    me.know.supply.vent_heard = seen.sounds.contains(&Sound::Relief);
    if seen.smell == Smell::None && seen.sniffed.is_none_or(|(_, smell)| smell == Smell::None) {
        return Vec::new();
    }
    if me.may_set_supply() {
        me.plan_repair(Diagnosis::RegulatorVents, Repair::ReplaceSupplyRegulator);
    } else {
        me.know.note(Diagnosis::RegulatorVents);
        me.know.supply.owner_needed = true;
    }
    Vec::new()
}
