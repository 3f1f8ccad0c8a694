//! What the technician writes as wrong before it hands over: the cause behind each diagnosis, what
//! it saw as it was found, what was done about it, and what on its sheet speaks for it. It knows
//! nothing but what it has seen, read and done.

use super::diagnosis::{Diagnosis, Stands};
use super::judge::{CREEP_DROP, Narrow, SOUND_DROP, narrow};
use super::mind::Mind;
use super::step::{Step, act};
use crate::appliance::plate::Fuel;
use crate::catalogue::cause::set;
use crate::catalogue::fault::remedy::Remedy;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{
    Answer, Backing, Cause, Level, Phase, Port, Reading, Stage, Subject, SystemPart, WrittenFinding,
};
use crate::senses::seen::{HoseLook, Observation, Seen};
use crate::units::PA_PER_PSI;

/// Inlet at rest from which a line regulator stands wide open, in pascals (a pound, half of what
/// stands before it).
const WIDE_OPEN_PA: f64 = PA_PER_PSI;

/// Writes each finding; with none, that nothing was found. `called` says whether the owner of the
/// supply was.
pub(super) fn write(me: &Mind, seen: &Seen, called: bool) -> Vec<Step> {
    let mut causes = causes(me, seen);
    if causes.is_empty() {
        causes.push(Cause::NothingFound);
    }
    causes.truncate(WrittenFinding::MOST);
    causes.into_iter().map(|cause| act(finding(me, seen, cause, called))).collect()
}

fn finding(me: &Mind, seen: &Seen, cause: Cause, called: bool) -> Action {
    let answer = answer(me, seen, cause, called);
    Action::WriteFinding(WrittenFinding { cause, answer, evidence: evidence(me, seen, cause) })
}

/// Every cause once, in the order in which they were found: how things stood, then what was
/// diagnosed.
fn causes(me: &Mind, seen: &Seen) -> Vec<Cause> {
    let mut all = me.noticed.causes();
    all.extend(conversion(me, seen));
    let known = &me.know.diagnosis;
    for &diagnosis in known {
        all.extend(cause_of(me, seen, diagnosis));
    }
    // Read right in the end with its screw untouched, it was something else that drew it down.
    if !me.supply_is_bad() && !me.know.supply.turned {
        all.retain(|one| *one != Cause::SupplySetLow);
    }
    // What was found later explains what it was first taken for; what draws it down under load
    // does not explain a supply that is too low with nothing burning.
    let set_below = is_set_below_nameplate(me, seen);
    let at_load = |it| matches!(it, Cause::TrunkTooNarrow | Cause::RegulatorTooSmall);
    for (whole, parts) in EXPLAINS {
        if all.contains(whole) {
            let stays = |one: &Cause| *one == Cause::SupplySetLow && set_below && at_load(*whole);
            all.retain(|one| !parts.contains(one) || stays(one));
        }
    }
    // A furnace that lit late, with nothing wrong that explains it, had to burn its air first.
    let explained = |one: &Cause| one.part() != SystemPart::MeasuringGear;
    if me.noticed.lit_late && !all.iter().any(explained) {
        all.push(Cause::AirInLine);
    }
    // The place of a leak that was found is more than that there was one.
    let leaks = [Cause::RegulatorVents, Cause::ValveLetsBy, Cause::BossCracked];
    if all.iter().any(|one| leaks.contains(one)) {
        all.retain(|one| *one != Cause::GasInTheAir);
    }
    let mut once: Vec<Cause> = Vec::new();
    for cause in all {
        if !once.contains(&cause) {
            once.push(cause);
        }
    }
    once
}

/// Whether the supply was found, at rest, below what its regulator must deliver.
fn is_set_below_nameplate(me: &Mind, seen: &Seen) -> bool {
    let of_rest = |it: &&Reading| {
        it.port == Port::Inlet && it.stage == Stage::Rest && it.phase == Phase::Found
    };
    let found = seen.sheet.readings.iter().find(of_rest);
    let pa = found.map(Reading::pa);
    pa.zip(me.know.papers.delivery).is_some_and(|(pa, delivery)| pa < delivery.least_pa)
}

/// What one cause explains of what was first taken for another.
const EXPLAINS: &[(Cause, &[Cause])] = &[
    (Cause::TankNearlyEmpty, &[Cause::TooLittleBeforeRegulator, Cause::SupplySetLow]),
    (Cause::TooLittleBeforeRegulator, &[Cause::SupplySetLow]),
    (Cause::RegulatorTooSmall, &[Cause::SupplySetLow, Cause::SupplySetHigh]),
    (Cause::TrunkTooNarrow, &[Cause::SupplySetLow, Cause::RegulatorTooSmall]),
    (
        Cause::LineRegulatorFailed,
        &[Cause::SupplySetHigh, Cause::SupplyTooHigh, Cause::SupplyCreeps, Cause::MeterRangeSmall],
    ),
    (Cause::SupplyCreeps, &[Cause::SupplySetHigh, Cause::SupplyTooHigh, Cause::MeterRangeSmall]),
    // Burners do not light on far too much, whatever was purged and cleaned before it was read.
    (
        Cause::SupplyTooHigh,
        &[Cause::SupplySetHigh, Cause::AirInLine, Cause::BurnersDirty, Cause::MeterRangeSmall],
    ),
    // A regulator that cannot breathe tells nothing of pipes and loads.
    (
        Cause::RegulatorVentBlocked,
        &[
            Cause::SupplySetHigh,
            Cause::SupplySetLow,
            Cause::TrunkTooNarrow,
            Cause::RegulatorTooSmall,
            Cause::TooLittleBeforeRegulator,
        ],
    ),
    (Cause::ExchangerHoled, &[Cause::RolloutTripped]),
    (Cause::SupplySetHigh, &[Cause::BurnersDirty, Cause::MeterRangeSmall]),
    (Cause::InletTapBlocked, &[Cause::MeterHosePinched]),
    (Cause::ManifoldTapBlocked, &[Cause::MeterHosePinched]),
    (Cause::ValveRegulatorHunts, &[Cause::ManifoldTapBlocked, Cause::MeterHosePinched]),
    (Cause::MeterHoseWet, &[Cause::MeterHosePinched]),
    // A display that stands still for want of its battery is no zero that moves.
    (Cause::MeterBatteryLow, &[Cause::MeterZeroDrifts]),
    // With the screen clean, what draws inlet and manifold down is the flow.
    (Cause::OrificesTooLarge, &[Cause::InletScreenBlocked]),
];

/// Papers, springs and orifices against the gas in the pipes.
fn conversion(me: &Mind, seen: &Seen) -> Vec<Cause> {
    if !me.know.papers.conversion_wrong {
        return Vec::new();
    }
    let fuel = if me.know.papers.supply_is_propane { Fuel::Propane } else { Fuel::Natural };
    let Some(figures) = &me.know.papers.figures else { return Vec::new() };
    if figures.fuel != fuel {
        return vec![Cause::NotConverted];
    }
    let note = |subject| seen.sheet.note(subject).map(|note| &note.finding);
    let mut all = Vec::new();
    if note(Subject::SpringMark).is_some_and(|it| *it != Observation::SpringsFor(fuel)) {
        all.push(Cause::SpringsForOtherGas);
    }
    let other = |it: &Observation| matches!(it, Observation::Orifices { stamp, .. } if *stamp != figures.orifice_stamp);
    if note(Subject::Orifices).is_some_and(other) {
        all.push(Cause::OrificesForOtherGas);
    }
    all
}

/// The cause that a diagnosis stands for; none where it says only that no more could be done.
fn cause_of(me: &Mind, seen: &Seen, diagnosis: Diagnosis) -> Option<Cause> {
    match diagnosis.stands() {
        Stands::For(cause) => Some(cause),
        Stands::OutOfBand(level) => out_of_band(me, seen, level),
        Stands::Supply => Some(supply(me, seen, diagnosis)),
        Stands::Hose => Some(hose(me)),
        Stands::Tap => by_repair(me, TAPS),
        Stands::Burners => by_repair(me, BURNERS),
        Stands::Flame => by_repair(me, FLAME),
        Stands::Light => by_repair(me, LIGHT),
        Stands::Screw => by_repair(me, SCREW),
        Stands::Nothing => None,
    }
}

/// Repairs tried one after the other, each with what it was that it cured: the last one helped.
type Tried = &'static [(Repair, Cause)];

const BURNERS: Tried =
    &[(Repair::CleanOrifices, Cause::OrificePlugged), (Repair::CleanBurners, Cause::BurnersDirty)];
const FLAME: Tried = &[
    (Repair::CleanFlameRod, Cause::FlameRodFilmed),
    (Repair::MendBurnerGround, Cause::GroundPoor),
    (Repair::CleanBurners, Cause::BurnersDirty),
    (Repair::CleanInletScreen, Cause::InletScreenBlocked),
];
const LIGHT: Tried = &[
    (Repair::PurgeLine, Cause::AirInLine),
    (Repair::CleanBurners, Cause::BurnersDirty),
    (Repair::ReplaceIgniter, Cause::IgniterWeak),
    (Repair::CleanInletScreen, Cause::InletScreenBlocked),
];
const SCREW: Tried = &[
    (Repair::CleanInletScreen, Cause::InletScreenBlocked),
    (Repair::ReplaceGasValve, Cause::ValveRegulatorHunts),
];

const TAPS: Tried = &[
    (Repair::CleanInletTap, Cause::InletTapBlocked),
    (Repair::CleanManifoldTap, Cause::ManifoldTapBlocked),
];

fn by_repair(me: &Mind, tried: Tried) -> Option<Cause> {
    let of = |done: &Repair| tried.iter().find(|(repair, _)| repair == done);
    me.know.repairs.done.iter().rev().find_map(of).map(|(_, cause)| *cause)
}

/// What was wrong with the manometer's hose, by how it looked.
fn hose(me: &Mind) -> Cause {
    match me.noticed.hose {
        HoseLook::Wet => Cause::MeterHoseWet,
        HoseLook::Clear | HoseLook::Pinched => Cause::MeterHosePinched,
    }
}

/// The side on which a level was first read out of its band: what was written as found after a gas
/// valve was renewed is the new one's.
fn out_of_band(me: &Mind, seen: &Seen, level: Level) -> Option<Cause> {
    let target = me.know.papers.figures.as_ref()?.manifold[level];
    let band = target.band();
    let of_level = |it: &&Reading| it.port == Port::Manifold && it.stage == Stage::Firing(level);
    let read = seen.sheet.readings.iter().filter(of_level);
    let mut read_pa = read.map(Reading::pa);
    let out_pa = read_pa.find(|pa| !band.contains(*pa))?;
    Some(set(level, out_pa > target.pa))
}

/// What is wrong with the supply, by the pattern of the inlet.
fn supply(me: &Mind, seen: &Seen, diagnosis: Diagnosis) -> Cause {
    let by_diagnosis = [
        (Diagnosis::SupplyCreeps, too_high(me, seen, Cause::SupplyCreeps)),
        (Diagnosis::SupplySetHigh, too_high(me, seen, Cause::SupplySetHigh)),
        (Diagnosis::SupplyTooHigh, too_high(me, seen, Cause::SupplySetHigh)),
        (Diagnosis::SupplyAbovePlate, too_high(me, seen, Cause::SupplySetHigh)),
        (Diagnosis::TrunkTooNarrow, Cause::TrunkTooNarrow),
        (Diagnosis::RegulatorTooSmall, Cause::RegulatorTooSmall),
        (Diagnosis::SupplyRaisedInVain, Cause::RegulatorTooSmall),
        (Diagnosis::ExcessFlowShuts, Cause::ExcessFlowShuts),
    ];
    let listed = by_diagnosis.iter().find(|(one, _)| *one == diagnosis).map(|(_, cause)| *cause);
    let weak = || match narrow(me) {
        Narrow::Main => Cause::TooLittleBeforeRegulator,
        Narrow::Regulator => Cause::RegulatorTooSmall,
        Narrow::Trunk => Cause::TrunkTooNarrow,
    };
    if let Some(cause) = listed {
        cause
    } else if diagnosis == Diagnosis::SupplySetLow {
        if falls_too_far(me) { weak() } else { Cause::SupplySetLow }
    } else if diagnosis == Diagnosis::SupplyTooWeak {
        weak()
    } else {
        Cause::TooLittleBeforeRegulator
    }
}

/// Whether the supply is set inside its nameplate, by the smallest load, and falls by more than an
/// ordinary regulator does: not its setting is too low, the load is too much for it.
fn falls_too_far(me: &Mind) -> bool {
    let inlet = &me.know.read.inlet;
    let set_right = me
        .first_inlet_pa()
        .zip(me.know.papers.delivery)
        .is_some_and(|(first, delivery)| first >= delivery.least_pa);
    let fall = inlet[Stage::Rest].zip(inlet[Stage::FullLoad]);
    set_right
        && !me.know.supply.turned
        && fall.is_some_and(|(rest, loaded)| rest - loaded > SOUND_DROP.0 * rest)
}

/// What makes a supply too high, by the inlet as it was read first, before anything was renewed: one
/// that falls far under the first load creeps, one that stays is set so. Where nothing burned on it,
/// the pressure at rest alone does not tell.
fn too_high(me: &Mind, seen: &Seen, otherwise: Cause) -> Cause {
    let found = |reading: &&Reading| reading.port == Port::Inlet && reading.phase == Phase::Found;
    let mut inlet = seen.sheet.readings.iter().filter(found);
    let rest = inlet.find(|reading| reading.stage == Stage::Rest).map(Reading::pa);
    let next = inlet.next().filter(|reading| reading.stage != Stage::Rest).map(Reading::pa);
    if let (Some(rest), Some(first)) = (rest, next) {
        // What delivers inside its nameplate is set right, and does not shut where it should.
        let delivers = me.know.papers.delivery.is_some_and(|it| first <= it.most_pa);
        let creeps = delivers || rest - first > CREEP_DROP * rest;
        return if creeps { Cause::SupplyCreeps } else { otherwise };
    }
    let natural = !me.know.papers.supply_is_propane;
    if natural && rest.is_some_and(|pa| pa > WIDE_OPEN_PA) {
        Cause::LineRegulatorFailed
    } else {
        Cause::SupplyTooHigh
    }
}

/// What was done about a cause.
fn answer(me: &Mind, seen: &Seen, cause: Cause, called: bool) -> Answer {
    let done = |repair: &Repair| seen.sheet.done.iter().any(|one| one.repair == *repair);
    let mends = cause
        .faults()
        .iter()
        .flat_map(|fault| fault.entry().right)
        .any(|remedy| matches!(remedy, Remedy::Mend(repair) if done(repair)));
    let valve = done(&Repair::ReplaceGasValve) && cause.part() == SystemPart::GasValve;
    if cause == Cause::NothingFound {
        Answer::LeftAsItIs
    } else if cause == Cause::RegistersClosed && done(&Repair::OpenRegisters) {
        Answer::Opened
    } else if mends || valve {
        Answer::Mended
    } else {
        by_hand(me, cause).unwrap_or(match (me.know.leave_shut_off, called) {
            (true, _) => Answer::ShutOff,
            (false, true) => Answer::OwnerCalled,
            (false, false) => Answer::LeftAsItIs,
        })
    }
}

/// What is put back as every job goes on.
const BACK: [Cause; 5] = [
    Cause::CapMissing,
    Cause::InletPlugLoose,
    Cause::ManifoldPlugLoose,
    Cause::PlugCrossThreaded,
    Cause::AdapterLeftIn,
];
/// What every job opens, switches on or resets.
const OPEN: [Cause; 5] = [
    Cause::ManualValvePartOpen,
    Cause::ManualValveShut,
    Cause::ValveSwitchOff,
    Cause::FurnaceSwitchOff,
    Cause::RolloutTripped,
];
/// What every reading sets right.
const METER: [Cause; 3] = [Cause::MeterZeroOff, Cause::MeterZeroDrifts, Cause::MeterUnitWrong];

/// Whether a cause is put right by whoever does the job in its order, with nothing thought. So is air in
/// the line where the burners light in the end: it has burned away by the first cycle.
pub(super) fn is_of_every_job(cause: Cause) -> bool {
    let burns_away = cause == Cause::AirInLine;
    burns_away || BACK.contains(&cause) || OPEN.contains(&cause) || METER.contains(&cause)
}

/// What every job has hands for.
fn by_hand(me: &Mind, cause: Cause) -> Option<Answer> {
    const SUPPLY: [Cause; 2] = [Cause::SupplySetLow, Cause::SupplySetHigh];
    let of_a_level = Level::ALL.iter().any(|&it| cause == set(it, false) || cause == set(it, true));
    if METER.contains(&cause) || (SUPPLY.contains(&cause) && me.know.supply.turned) {
        Some(Answer::Adjusted)
    } else if me.know.leave_shut_off {
        None
    } else if BACK.contains(&cause) {
        Some(Answer::Mended)
    } else if OPEN.contains(&cause) {
        Some(Answer::Opened)
    } else if of_a_level && me.know.screws.turned {
        Some(Answer::Adjusted)
    } else {
        None
    }
}

/// What on the sheet, and of what was noticed, speaks for a cause.
fn evidence(me: &Mind, seen: &Seen, cause: Cause) -> Vec<Backing> {
    let sheet = &seen.sheet;
    let mut all: Vec<Backing> =
        sheet.notes.iter().map(|note| Backing::Look(note.subject)).collect();
    all.extend(me.noticed.sights.iter().map(|sight| Backing::Sight(*sight)));
    all.extend(sheet.measured.iter().map(|one| Backing::Measured(one.spot)));
    all.extend(sheet.joints.iter().map(|(joint, _)| Backing::Joint(*joint)));
    all.extend(sheet.readings.iter().map(Backing::from));
    let mut once: Vec<Backing> = Vec::new();
    for backing in all {
        if cause.is_shown_by(backing) && !once.contains(&backing) {
            once.push(backing);
        }
    }
    once.truncate(WrittenFinding::MOST_EVIDENCE);
    once
}
