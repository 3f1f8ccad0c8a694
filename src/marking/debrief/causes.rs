//! What was wrong, in the trainee's own numbers: each cause with what they wrote of it, how it could
//! be seen, what they named, and whether it was put right.

use serde::{Deserialize, Serialize};

use super::super::causes::{is_named, on_sheet};
use super::super::conversion::is_wrong;
use super::super::deed::{as_written, lower};
use super::super::faults_left::answered;
use super::super::ledger::Ledger;
use super::super::numbers::{Number, numbers};
use super::moment::{clock, seconds};
use super::own::{held_by, left_outside};
use super::sheet::{measured, true_pa};
use crate::appliance::plate::Band;
use crate::catalogue::cause::{BackingKind, Origin, TrueCause, set, set_level};
use crate::catalogue::fault::remedy::Remedy;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::model::SNUG_TURNS;
use crate::model::truth::Truth;
use crate::parts::{
    Cause, Ending, Fitted, Joint, Level, OnOff, Phase, Port, Reading, Screw, Stage, SystemPart,
};
use crate::units::{PA_PER_INWC, Shown, full_stop, inwc};

/// Most sentences on what was read of a cause.
const MOST_READ: usize = 2;
/// Less than a meter's last digit, in pascals: a number that far from the truth is true.
const DIGIT_PA: f64 = 0.05 * PA_PER_INWC;

/// Something that was wrong.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CauseTold {
    /// Its id, as findings name it.
    pub cause: Cause,
    /// Name of the cause, as the trade has it.
    pub name: String,
    /// Whether it was there on arrival, or came of the work.
    pub from: CameFrom,
    /// The trainee's own numbers and looks against what was so, a sentence each.
    pub read: Vec<String>,
    /// How it can be seen, in a sentence.
    pub seen: String,
    /// What the sheet names, in a sentence.
    pub named: String,
    /// Whether the sheet names it.
    pub is_named: bool,
    /// How it was left.
    pub left: Left,
}

impl CauseTold {
    /// Its name and how it was left.
    #[must_use]
    pub fn head(&self) -> String {
        let left = self.left.label();
        match self.from {
            CameFrom::Arrival => t!("told-cause", name = &self.name, left = left),
            CameFrom::Work => t!("told-cause-own", name = &self.name, left = left),
        }
    }

    /// What is told of it, in the order of telling: the trainee's own numbers first.
    #[must_use]
    pub fn lines(&self) -> Vec<String> {
        let seen = t!("told-seen", seen = &self.seen);
        let named = (self.from == CameFrom::Arrival).then(|| self.named.clone());
        self.read.iter().cloned().chain([seen]).chain(named).collect()
    }
}

/// Where something wrong came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CameFrom {
    /// It was so on arrival.
    Arrival,
    /// It came of the work.
    Work,
}

/// How something wrong was left.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Left {
    /// It was put right.
    Right,
    /// Still there, and whoever owns it has been called.
    OwnerCalled,
    /// Still there in a furnace that is shut off and tagged.
    ShutOff,
    /// Still there in a furnace that may run.
    InUse,
    /// The job was not handed over.
    NotHandedOver,
}

impl Left {
    /// It in words, for behind the name of a cause.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Right => t!("cause-left-right"),
            Self::OwnerCalled => t!("cause-left-owner-called"),
            Self::ShutOff => t!("cause-left-shut-off"),
            Self::InUse => t!("cause-left-in-use"),
            Self::NotHandedOver => t!("cause-left-open"),
        }
    }
}

/// Everything that was wrong: what came of the work first, then what was there on arrival, what is
/// still there before what was put right.
pub(super) fn causes(l: &Ledger) -> Vec<CauseTold> {
    let all = numbers(l);
    let mut told: Vec<CauseTold> =
        l.to_be_named().iter().map(|it| of_arrival(l, &all, it)).collect();
    told.sort_by_key(|it| it.left == Left::Right);
    let arrived: Vec<Cause> = told.iter().map(|it| it.cause).collect();
    let mut own: Vec<CauseTold> = own(l, &all);
    // A stage that was found so and is left so is one cause.
    own.retain(|it| !arrived.contains(&it.cause));
    own.extend(told);
    own
}

fn of_arrival(l: &Ledger, all: &[Number], it: &TrueCause) -> CauseTold {
    let cause = it.cause;
    let named = is_named(l, it);
    CauseTold {
        cause,
        name: cause.label().to_owned(),
        from: CameFrom::Arrival,
        read: read(l, all, cause),
        seen: cause.how_seen().to_owned(),
        named: named_words(l, named),
        is_named: named,
        left: left(l, it),
    }
}

/// Stages that are left outside the plate by the work, each with the number that the trainee wrote
/// and what held it there.
fn own(l: &Ledger, all: &[Number]) -> Vec<CauseTold> {
    let told = left_outside(l).into_iter().map(|it| {
        let cause = set(it.level, it.is_high);
        let stage = it.level.id();
        let set_to = inwc(it.set_pa);
        let read = match it.read(all) {
            None => t!("own-unread", stage = stage, set = set_to),
            Some(number) => {
                let said = as_written(&number.reading);
                let why = own_why(l, number, it.set_pa);
                t!("own-read", number = said, stage = stage, set = set_to, why = why)
            }
        };
        CauseTold {
            cause,
            name: cause.label().to_owned(),
            from: CameFrom::Work,
            read: vec![full_stop(read)],
            seen: t!("own-seen", least = inwc(it.band.least_pa), most = inwc(it.band.most_pa)),
            named: named_words(l, false),
            is_named: false,
            left: if l.left_shut_off() { Left::ShutOff } else { Left::InUse },
        }
    });
    told.collect()
}

/// What kept the number that was read from being that of the spring, as a word for the text.
fn own_why(l: &Ledger, number: &Number, set_pa: f64) -> &'static str {
    let read_pa = number.reading.pa();
    let there_pa = true_pa(l, number).unwrap_or(read_pa);
    if !number.is_right() {
        "not-right"
    } else if held_by(l, number, set_pa) {
        "starved"
    } else if (there_pa - set_pa).abs() > DIGIT_PA {
        "earlier"
    } else if (read_pa - there_pa).abs() > DIGIT_PA {
        "meter"
    } else {
        "plain"
    }
}

fn named_words(l: &Ledger, named: bool) -> String {
    let names: Vec<String> = on_sheet(l).iter().map(|it| lower(it.cause.label())).collect();
    match (named, names.is_empty()) {
        (_, true) => t!("cause-sheet-empty").into(),
        (true, false) => t!("cause-named", causes = names.join("; ")),
        (false, false) => t!("cause-not-named", causes = names.join("; ")),
    }
}

/// The trainee's own numbers and looks that bear on a cause: numbers first; where there are none of
/// either, what was missed.
fn read(l: &Ledger, all: &[Number], cause: Cause) -> Vec<String> {
    let mut kinds = cause.shown_by().to_vec();
    kinds.sort_by_key(|kind| matches!(kind, BackingKind::Look(_) | BackingKind::Sight(_)));
    let (mut lines, mut missed) = (Vec::new(), Vec::new());
    for kind in kinds {
        match of_kind(l, all, cause, kind) {
            Evidence::Is(told) => lines.extend(told),
            Evidence::Missed(told) => missed.push(told),
            Evidence::Untold => {}
        }
    }
    if lines.is_empty() {
        missed.truncate(1);
        return missed;
    }
    lines.truncate(MOST_READ);
    lines
}

/// What the work has of one kind of what speaks for a cause.
enum Evidence {
    Is(Vec<String>),
    Missed(String),
    /// What is seen in passing leaves no trace.
    Untold,
}

fn of_kind(l: &Ledger, all: &[Number], cause: Cause, kind: BackingKind) -> Evidence {
    let one = |told: String| Evidence::Is(vec![told]);
    match kind {
        BackingKind::Reading(port) => match at_port(l, all, cause, port) {
            none if none.is_empty() => {
                Evidence::Missed(t!("read-no-number", port = lower(port.label())))
            }
            found => Evidence::Is(found),
        },
        BackingKind::Look(subject) => {
            let name = lower(subject.label());
            match l.did().find(|did| *did.action == Action::Look(subject)) {
                Some(did) => one(t!("read-looked", subject = name, time = time(did.tick))),
                None => Evidence::Missed(t!("read-not-looked", subject = name)),
            }
        }
        BackingKind::Measured(spot) => {
            let name = lower(spot.label());
            match measured(l).into_iter().rfind(|it| it.spot == spot) {
                Some(it) => one(t!("read-measured", spot = name, figures = it.figures)),
                None => Evidence::Missed(t!("read-not-measured", spot = name)),
            }
        }
        BackingKind::Joint(joint) => {
            let name = lower(joint.label());
            match bubbles(l, joint) {
                Some(true) => one(t!("read-bubbles", joint = name)),
                Some(false) => one(t!("read-no-bubbles", joint = name)),
                None => Evidence::Missed(t!("read-no-fluid", joint = name)),
            }
        }
        BackingKind::Sight(_) => Evidence::Untold,
    }
}

/// Whether bubbles ever grew in leak fluid on a joint; none where there was no fluid on it.
fn bubbles(l: &Ledger, joint: Joint) -> Option<bool> {
    let judged = l.events.iter().filter_map(|event| {
        let EventKind::FluidJudged { joint: at, bubbles, .. } = event.what else { return None };
        (at == joint).then_some(bubbles)
    });
    judged.max()
}

fn time(tick: u64) -> String {
    clock(seconds(tick))
}

/// What the numbers of a port say of a cause: those farthest out of what the plate allows; where
/// none is out, those under the greatest load.
fn at_port(l: &Ledger, all: &[Number], cause: Cause, port: Port) -> Vec<String> {
    if let Some((level, _)) = set_level(cause) {
        return spring(l, all, level).into_iter().collect();
    }
    let gear = cause.part() == SystemPart::MeasuringGear;
    let mut lines: Vec<(f64, &Number)> = all
        .iter()
        .filter(|it| it.reading.port == port && it.spell().is_some())
        .map(|it| (weight_pa(l, it, gear), it))
        .collect();
    lines.sort_by(|a, b| {
        let load = |it: &Number| it.reading.stage;
        let phase = |it: &Number| it.reading.phase == Phase::Found;
        (b.0.total_cmp(&a.0)).then(phase(b.1).cmp(&phase(a.1))).then(load(b.1).cmp(&load(a.1)))
    });
    lines.dedup_by_key(|(_, it)| (it.reading.stage, it.reading.phase));
    lines.iter().map(|(_, it)| line(l, it, gear)).collect()
}

/// How much a number tells: how far it lies out of the plate's band, or, of measuring gear, from
/// what was true.
fn weight_pa(l: &Ledger, it: &Number, gear: bool) -> f64 {
    let read_pa = it.reading.pa();
    if gear && let Some(pa) = true_pa(l, it) {
        return (pa - read_pa).abs();
    }
    band(l, &it.reading).beyond_pa(read_pa).abs()
}

fn band(l: &Ledger, reading: &Reading) -> Band {
    let lockup_most_pa = Some(l.setup.supply.lockup_max_pa);
    l.plate().figures().allows(reading.port, reading.stage, lockup_most_pa)
}

/// A number against what the plate allows and what was true.
fn line(l: &Ledger, it: &Number, gear: bool) -> String {
    let reading = &it.reading;
    let unit = reading.unit;
    let show = |pa: f64| Shown { value: pa / unit.pa(), unit }.to_string();
    let (port, stage) = (lower(reading.port.label()), lower(reading.stage.label()));
    let number = as_written(reading);
    let read_pa = reading.pa();
    let there_pa = true_pa(l, it);
    let off = there_pa.filter(|pa| (pa - read_pa).abs() > DIGIT_PA);
    if let Some(pa) = off {
        return full_stop(t!(
            "read-off",
            number = number,
            port = port,
            stage = stage,
            truth = show(pa)
        ));
    }
    if gear {
        return t!("read-true", number = number, port = port, stage = stage);
    }
    let band = band(l, reading);
    let (side, limit) = match (band.is_below(read_pa), band.is_above(read_pa)) {
        (true, _) => ("below", show(band.least_pa)),
        (_, true) => ("above", show(band.most_pa)),
        (false, false) => ("inside", show(band.least_pa)),
    };
    t!("read-against", number = number, port = port, stage = stage, side = side, limit = limit)
}

/// The first number of a level's manifold against the spring as it was found.
fn spring(l: &Ledger, all: &[Number], level: Level) -> Option<String> {
    let stages = [Stage::Firing(level), Stage::FullLoad];
    let stages = if level.is_top() { &stages[..] } else { &stages[..1] };
    let it = all.iter().find(|it| it.is_for(Port::Manifold, stages))?;
    let set_pa = l.setup.furnace.valve.set_pa();
    let target = l.setup.furnace.plate.figures().manifold[level];
    Some(full_stop(t!(
        "read-spring",
        number = as_written(&it.reading),
        stage = level.id(),
        set = inwc(set_pa[level]),
        target = inwc(target.pa),
        tolerance = inwc(target.tolerance_pa)
    )))
}

/// How a cause that was there on arrival was left.
fn left(l: &Ledger, it: &TrueCause) -> Left {
    let Some((_, _, end)) = l.left() else { return Left::NotHandedOver };
    let remedies = match it.origin {
        Origin::Fault(fault, _) => fault.entry().right,
        Origin::Found if it.cause.part() == SystemPart::Supply => &[Remedy::CallOwner],
        Origin::Found => &[],
    };
    let calls = |remedy: &Remedy| matches!(remedy, Remedy::CallOwner | Remedy::ShutOffAndTag);
    let (others, hands): (Vec<Remedy>, Vec<Remedy>) = remedies.iter().partition(|it| calls(it));
    if stands(l, end, it.cause).unwrap_or_else(|| answered(l, &hands)) {
        Left::Right
    } else if l.left_shut_off() {
        Left::ShutOff
    } else if l.ending() == Some(Ending::SupplyOwnerCalled) && answered(l, &others) {
        Left::OwnerCalled
    } else {
        Left::InUse
    }
}

/// Whether what hands put right stands right at the end; none of a cause that hands do not put
/// right.
fn stands(l: &Ledger, end: &Truth, cause: Cause) -> Option<bool> {
    if let Some((level, _)) = set_level(cause) {
        let target = l.plate().figures().manifold[level];
        return Some(target.band().out_by_pa(end.set_pa[level]) <= DIGIT_PA);
    }
    let (least_pa, most_pa) = l.setup.supply.delivery_limits_pa;
    let plug = |port: Port| end.port(port).past_hand_turns >= SNUG_TURNS;
    if cause == Cause::SupplySetLow {
        Some(end.supply_set_pa >= least_pa - DIGIT_PA)
    } else if cause == Cause::SupplySetHigh {
        Some(end.supply_set_pa <= most_pa + DIGIT_PA)
    } else if [Cause::ManualValveShut, Cause::ManualValvePartOpen].contains(&cause) {
        Some(end.manual_valve.is_open())
    } else if cause == Cause::NotConverted {
        Some(!is_wrong(l, l.events.len()))
    } else if cause == Cause::ValveSwitchOff {
        Some(end.valve_switch == OnOff::On)
    } else if cause == Cause::FurnaceSwitchOff {
        Some(end.furnace_switch == OnOff::On)
    } else if cause == Cause::CapMissing {
        let screws = l.levels().iter().map(|level: &Level| -> Screw { level.screw() });
        Some(screws.into_iter().all(|screw| end.caps[screw] == Fitted::On))
    } else if cause == Cause::InletPlugLoose {
        Some(plug(Port::Inlet))
    } else if cause == Cause::ManifoldPlugLoose {
        Some(plug(Port::Manifold))
    } else {
        None
    }
}
