//! Findings on the job sheet: written once for a cause, backed by what the sheet holds, struck
//! again.

use super::done::{Done, plain};
use super::job::Job;
use super::refusal::Refusal;
use crate::parts::{Backing, Cause, WrittenFinding};
use crate::senses::seen::SheetSeen;

pub(super) fn write(job: &mut Job, finding: &WrittenFinding) -> Done {
    let sheet = &job.sheet;
    let written = &sheet.findings;
    if written.iter().any(|one| one.cause == finding.cause) {
        return Err(Refusal::FindingStands);
    }
    let nothing = |one: &WrittenFinding| one.cause == Cause::NothingFound;
    if written.iter().any(nothing) || (nothing(finding) && !written.is_empty()) {
        return Err(Refusal::NothingBesideSomething);
    }
    if nothing(finding) && finding.answer != crate::parts::Answer::LeftAsItIs {
        return Err(Refusal::NothingToAnswer);
    }
    if written.len() >= WrittenFinding::MOST {
        return Err(Refusal::TooManyFindings);
    }
    let evidence = &finding.evidence;
    let twice = |i: usize, one: &Backing| evidence.iter().skip(i + 1).any(|other| other == one);
    let any_twice = evidence.iter().enumerate().any(|(i, one)| twice(i, one));
    if evidence.len() > WrittenFinding::MOST_EVIDENCE || any_twice {
        return Err(Refusal::TooMuchEvidence);
    }
    if !evidence.iter().all(|one| sheet.holds(*one)) {
        return Err(Refusal::NotOnSheet);
    }
    job.sheet_mut().findings.push(finding.clone());
    plain()
}

pub(super) fn strike(job: &mut Job, cause: Cause) -> Done {
    let findings = &mut job.sheet_mut().findings;
    let Some(at) = findings.iter().position(|one| one.cause == cause) else {
        return Err(Refusal::NoSuchFinding);
    };
    findings.remove(at);
    plain()
}

impl SheetSeen {
    /// Whether a finding may rest on it: it stands on the sheet. What was noticed in passing stands
    /// on no paper, and whether there was an occasion to notice it the marks tell.
    #[must_use]
    pub fn holds(&self, backing: Backing) -> bool {
        match backing {
            Backing::Reading { port, stage, phase } => self.reading(port, stage, phase).is_some(),
            Backing::Measured(spot) => self.measured.iter().any(|one| one.spot == spot),
            Backing::Look(subject) => self.note(subject).is_some(),
            Backing::Joint(joint) => self.joints.iter().any(|(one, _)| *one == joint),
            Backing::Sight(_) => true,
        }
    }
}
