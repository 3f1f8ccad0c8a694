//! The job sheet as it was written, each number beside the pressure that was really there.

use serde::{Deserialize, Serialize};

use super::super::deed::{ending_words, lower};
use super::super::ledger::{Did, Ledger};
use super::super::measuring::wrong_numbers;
use super::super::numbers::{Judged, Number, numbers};
use super::moment::seconds;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::model::truth::Truth;
use crate::parts::{
    Answer, Cause, Duty, Ending, Joint, JointVerdict, LowSide, Phase, Port, Spot, Stage,
    WrittenFinding,
};
use crate::units::{PressureUnit, Shown};

/// Gas out of a joint that leak fluid shows, in standard m³/s.
const LEAK_M3_S: f64 = 1e-7;
/// Numbers on one line from which it is told: more than a slip and its correction.
const MANY: usize = 4;

/// The sheet at the end of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Pressures, a line for each port and state, in the order of the sheet.
    pub lines: Vec<SheetLine>,
    /// Leak checks, the last verdict of each joint.
    pub joints: Vec<JointLine>,
    /// The last verdict on the whole piping; none where it was not checked.
    #[serde(default)]
    pub piping: Option<JointVerdict>,
    /// What was written from other instruments, in order.
    pub measured: Vec<MeasuredLine>,
    /// What was written as wrong.
    pub findings: Vec<FindingLine>,
    /// Work that was named as not done.
    pub not_done: Vec<String>,
    /// How the job was said to end, in words; none where it was not handed over.
    pub ending: Option<String>,
    /// What strikes whoever reads the sheet, a sentence each.
    pub remarks: Vec<String>,
}

/// A port in a state of the furnace, as found and as left.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SheetLine {
    /// Port that was read.
    pub port: Port,
    /// State of the furnace.
    pub stage: Stage,
    /// Number as found, the last that stands there.
    pub found: Option<SheetNumber>,
    /// Number as left, the last that stands there.
    pub left: Option<SheetNumber>,
}

/// A number on the sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SheetNumber {
    /// The number as it is written.
    pub value: f64,
    /// The unit that is written.
    pub unit: PressureUnit,
    /// True pressure at that port when it was read, in the same unit.
    pub truth: Option<f64>,
    /// When it was written, in seconds since the start.
    pub at_s: f64,
    /// What it is, held against what the meter showed.
    pub is: NumberIs,
    /// Numbers written on this line and for this column, in all.
    pub written: usize,
}

/// What a written number is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum NumberIs {
    /// What the meter showed there.
    Right,
    /// The same, written too coarsely.
    Coarse,
    /// Shown on its way to where it came to rest.
    Unsettled,
    /// One leg of the water column.
    OneLeg,
    /// Shown in another state.
    OtherState,
    /// Shown at the other port.
    OtherPort,
    /// Shown in another unit.
    OtherUnit,
    /// A number that the meter never showed.
    NeverShown,
}

/// A leak check on the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct JointLine {
    /// Joint that was checked.
    pub joint: Joint,
    /// Verdict that was written.
    pub verdict: JointVerdict,
    /// What the joint really did then; none for a joint whose leak has no number of its own.
    pub truth: Option<JointVerdict>,
}

/// A figure from another instrument on the sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct MeasuredLine {
    /// Where it was held.
    pub spot: Spot,
    /// Figures as the instrument showed them, with their units.
    pub figures: String,
    /// When it was written, in seconds since the start.
    pub at_s: f64,
}

/// A finding on the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct FindingLine {
    /// What was named as wrong.
    pub cause: Cause,
    /// What was said to have been done about it.
    pub answer: Answer,
}

impl SheetNumber {
    fn words(&self) -> String {
        t!("number-written", value = self.value.to_string(), unit = self.unit.label())
    }

    /// The true pressure in the unit that was written.
    fn true_words(&self) -> String {
        let shown = |value| Shown { value, unit: self.unit }.to_string();
        self.truth.map_or_else(String::new, shown)
    }
}

impl SheetNumber {
    /// The number with what was true then, and what it is where it is not right.
    #[must_use]
    pub fn told(&self) -> String {
        let (number, truth) = (self.words(), self.true_words());
        match self.is.label() {
            "" => t!("told-number", number = number, truth = truth),
            what => t!("told-number-slip", number = number, truth = truth, what = what),
        }
    }
}

impl SheetLine {
    /// Port and state, as a person reads them.
    #[must_use]
    pub fn name(&self) -> String {
        let (port, stage) = (self.port.label(), lower(self.stage.label()));
        t!("told-line-name", port = port, stage = stage)
    }
}

impl Sheet {
    /// What stands on the sheet beside pressures, and what strikes its reader, a line each.
    #[must_use]
    pub fn notes(&self) -> Vec<String> {
        let joints = self.joints.iter().map(|it| {
            let (joint, written) = (it.joint.label(), verdict_id(it.verdict));
            let truth = it.truth.map_or("unknown", verdict_id);
            t!("told-joint", joint = joint, written = written, truth = truth)
        });
        let piping = self.piping.map(|it| t!("told-piping", written = verdict_id(it)));
        let measured = self
            .measured
            .iter()
            .map(|it| t!("told-measured", spot = it.spot.label(), figures = &it.figures));
        let findings = self
            .findings
            .iter()
            .map(|it| t!("told-finding", cause = it.cause.label(), answer = it.answer.label()));
        let not_done = (!self.not_done.is_empty())
            .then(|| t!("told-not-done", work = self.not_done.join(", ")));
        let ending = self.ending.as_ref().map(|ending| t!("told-ending", ending = ending));
        let told =
            joints.chain(piping).chain(measured).chain(findings).chain(not_done).chain(ending);
        told.chain(self.remarks.iter().cloned()).collect()
    }
}

fn verdict_id(verdict: JointVerdict) -> &'static str {
    match verdict {
        JointVerdict::Tight => "tight",
        JointVerdict::Leaking => "leaking",
    }
}

impl NumberIs {
    fn of(judged: &Judged) -> Self {
        match judged {
            Judged::Right(_) => Self::Right,
            Judged::Coarse(_) => Self::Coarse,
            Judged::Unsettled(_) => Self::Unsettled,
            Judged::OneLeg(_) => Self::OneLeg,
            Judged::OtherState(_) => Self::OtherState,
            Judged::OtherPort(_) => Self::OtherPort,
            Judged::OtherUnit(..) => Self::OtherUnit,
            Judged::Unfounded(_) => Self::NeverShown,
        }
    }

    /// It in words, for beside a number.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Right => t!("sheet-is-right"),
            Self::Coarse => t!("sheet-is-coarse"),
            Self::Unsettled => t!("sheet-is-unsettled"),
            Self::OneLeg => t!("sheet-is-one-leg"),
            Self::OtherState => t!("sheet-is-other-state"),
            Self::OtherPort => t!("sheet-is-other-port"),
            Self::OtherUnit => t!("sheet-is-other-unit"),
            Self::NeverShown => t!("sheet-is-never-shown"),
        }
    }
}

/// Pressure that a manometer without error would show at a port, in pascals.
fn felt_pa(truth: &Truth, port: Port) -> f64 {
    let there_pa = truth.pressure_pa(port);
    match truth.low_side {
        LowSide::Air => there_pa,
        LowSide::BurnerBox => there_pa - truth.box_pa,
    }
}

/// True pressure where a number was read, in pascals: before the hand that ended its stand on the
/// display, or the last one laid on anything meanwhile, or what the meter showed less its error. Of a
/// number that never stood anywhere: the pressure when it was written.
pub(super) fn true_pa(l: &Ledger, it: &Number) -> Option<f64> {
    let of = |did: Did<'_>| felt_pa(did.before, it.reading.port);
    let Some(spell) = it.spell() else {
        return l.did().find(|did| did.tick == it.tick).map(of);
    };
    let span = spell.stood.unwrap_or(spell.shown);
    let within = || l.did().filter(|did| did.tick > span.since && did.index <= it.index);
    let ends = within().find(|did| (span.until..=span.until + 1).contains(&did.tick));
    let last = || within().filter(|did| did.tick <= span.until).last();
    let shown_pa = (span.least_pa + span.most_pa) / 2.0 - spell.error_pa;
    Some(ends.or_else(last).map_or(shown_pa, of))
}

/// The sheet of a job as it stands.
pub(super) fn sheet(l: &Ledger) -> Sheet {
    let all = numbers(l);
    let mut lines = Vec::new();
    for &port in Port::ALL {
        for stage in Stage::of(l.levels()) {
            let of = |phase| number(l, &all, port, stage, phase);
            let (found, left) = (of(Phase::Found), of(Phase::Left));
            if found.is_some() || left.is_some() {
                lines.push(SheetLine { port, stage, found, left });
            }
        }
    }
    let mut sheet = Sheet {
        lines,
        joints: joints(l),
        piping: piping(l),
        measured: measured(l),
        findings: findings(l)
            .iter()
            .map(|it| FindingLine { cause: it.cause, answer: it.answer })
            .collect(),
        not_done: l.left().map_or_else(Vec::new, |(_, said, _)| not_done(&said.not_done)),
        ending: l.ending().map(|ending| ending_words(ending).to_owned()),
        remarks: Vec::new(),
    };
    sheet.remarks = remarks(l, &sheet, &all);
    sheet
}

fn number(
    l: &Ledger,
    all: &[Number],
    port: Port,
    stage: Stage,
    phase: Phase,
) -> Option<SheetNumber> {
    let there = |it: &&Number| it.is_for(port, &[stage]) && it.reading.phase == phase;
    let last = all.iter().rfind(there)?;
    let unit = last.reading.unit;
    Some(SheetNumber {
        value: last.reading.value(),
        unit,
        truth: true_pa(l, last).map(|pa| pa / unit.pa()),
        at_s: seconds(last.tick),
        is: NumberIs::of(&last.judged),
        written: all.iter().filter(there).count(),
    })
}

fn joints(l: &Ledger) -> Vec<JointLine> {
    let written = |joint: Joint| {
        let all = l.did().filter_map(|did| {
            let Action::WriteJoint { joint: at, verdict } = did.action else { return None };
            let truth = leaks(did.before, joint);
            (*at == joint).then_some(JointLine { joint, verdict: *verdict, truth })
        });
        all.last()
    };
    Joint::ALL.iter().filter_map(|&joint| written(joint)).collect()
}

fn piping(l: &Ledger) -> Option<JointVerdict> {
    let written = l.did().filter_map(|did| {
        let Action::WritePiping(verdict) = did.action else { return None };
        Some(*verdict)
    });
    written.last()
}

/// What a joint does at a moment, where the model has a number of its own for it.
fn leaks(truth: &Truth, joint: Joint) -> Option<JointVerdict> {
    let flow_m3_s = match joint {
        Joint::InletPort => truth.leak_m3_s.ports[Port::Inlet],
        Joint::ManifoldPort => truth.leak_m3_s.ports[Port::Manifold],
        Joint::Connector => truth.connector_leak_m3_s,
        Joint::Union
        | Joint::SupplyRegulator
        | Joint::FirstRegulator
        | Joint::TankValve
        | Joint::Riser => return None,
    };
    Some(if flow_m3_s > LEAK_M3_S { JointVerdict::Leaking } else { JointVerdict::Tight })
}

/// What was written from instruments other than the manometer, in order.
pub(super) fn measured(l: &Ledger) -> Vec<MeasuredLine> {
    let lines = l.events.iter().filter_map(|event| {
        let EventKind::WroteMeasured { written, .. } = &event.what else { return None };
        let figures: Vec<String> = written
            .figures
            .iter()
            .map(|it| t!("figure-said", figure = it.quantity.label(), value = it.to_string()))
            .collect();
        let at_s = seconds(event.tick);
        Some(MeasuredLine { spot: written.spot, figures: figures.join(", "), at_s })
    });
    lines.collect()
}

/// What stands on the sheet as wrong.
pub(super) fn findings(l: &Ledger) -> Vec<&WrittenFinding> {
    super::super::causes::on_sheet(l)
}

fn not_done(said: &[Duty]) -> Vec<String> {
    said.iter().map(|it| it.label().to_owned()).collect()
}

/// What strikes whoever reads it: nothing written, numbers that no meter showed, one line written
/// again and again, a finding that says another ending.
fn remarks(l: &Ledger, sheet: &Sheet, all: &[Number]) -> Vec<String> {
    let mut remarks = Vec::new();
    let checked = !sheet.joints.is_empty() || sheet.piping.is_some();
    let blank = !checked && sheet.measured.is_empty() && sheet.findings.is_empty();
    if all.is_empty() && blank {
        remarks.push(t!("sheet-empty").into());
    } else if all.is_empty() {
        remarks.push(t!("sheet-no-pressure").into());
    }
    // A slip of the pencil that was struck out is none of them.
    let wrong = wrong_numbers(l, all).into_iter().map(|(it, _)| it);
    let made_up: Vec<&Number> =
        wrong.filter(|it| matches!(it.judged, Judged::Unfounded(_))).collect();
    if let Some(first) = made_up.first() {
        let number = super::super::deed::as_written(&first.reading);
        remarks.push(t!("sheet-made-up", count = made_up.len(), number = number));
    }
    for line in &sheet.lines {
        let most = [&line.found, &line.left].into_iter().flatten().map(|it| it.written).max();
        if let Some(count) = most.filter(|count| *count >= MANY) {
            let (port, stage) = (lower(line.port.label()), lower(line.stage.label()));
            remarks.push(t!("sheet-again", count = count, port = port, stage = stage));
        }
    }
    remarks.extend(sheet.findings.iter().filter_map(|it| contradicts(l, it)));
    remarks
}

/// A finding that goes with another ending than the one that was handed over: answered by shutting
/// off or by a call, and left in service; or nothing found, and yet not left in service.
fn contradicts(l: &Ledger, it: &FindingLine) -> Option<String> {
    let ending = l.ending()?;
    let goes_with = match it.answer {
        Answer::ShutOff => ending == Ending::ShutOff,
        Answer::OwnerCalled => ending != Ending::InService,
        Answer::Mended | Answer::Adjusted | Answer::Opened | Answer::LeftAsItIs => {
            it.cause != Cause::NothingFound || ending == Ending::InService
        }
    };
    (!goes_with).then(|| {
        let (cause, answer) = (lower(it.cause.label()), lower(it.answer.label()));
        let ending = ending_words(ending);
        if it.cause == Cause::NothingFound {
            return t!("sheet-nothing-ended", ending = ending);
        }
        t!("sheet-contradicts", cause = cause, answer = answer, ending = ending)
    })
}
