//! What a spoiled run still says and writes as the good run did.

use super::super::edit::{Edit, What, instead, leave_out};
use super::super::step::{act, think};
use super::good::Good;
use crate::hands::action::{Action, Contact};
use crate::parts::{Backing, Phase, WrittenFinding};
use crate::senses::seen::SheetSeen;

/// Any finding that is written on the sheet.
pub(super) const FINDING: What = What::Such(|action| matches!(action, Action::WriteFinding(_)));

/// Called and said as in the good run, whatever was not seen or misread on the way.
pub(super) fn as_said(good: &Good) -> Edit {
    let said = good.actions().filter(|action| {
        matches!(action, Action::HandOver(_)) || **action == Action::Call(Contact::SupplyOwner)
    });
    let said = said.cloned().map(act).collect();
    instead(What::Such(|action| matches!(action, Action::HandOver(_))), said)
}

/// Written as in the good run, whatever was misread on the way, backed by what the run's own sheet
/// holds.
pub(super) fn as_written(good: &Good) -> Vec<Edit> {
    let findings: Vec<WrittenFinding> = good.findings().cloned().collect();
    let write = think(move |_, seen| {
        let written = &seen.sheet.findings;
        let missing = findings.iter().filter(|it| written.iter().all(|one| one.cause != it.cause));
        let backed = missing.cloned().map(|mut finding| {
            finding.evidence = on_own_sheet(&finding.evidence, &seen.sheet);
            act(Action::WriteFinding(finding))
        });
        backed.collect()
    });
    vec![instead(FINDING, vec![write]), leave_out(FINDING)]
}

/// What of a finding's evidence a sheet holds, each once; a reading as found that stands there only as
/// left counts as that.
fn on_own_sheet(evidence: &[Backing], sheet: &SheetSeen) -> Vec<Backing> {
    let mut held: Vec<Backing> = Vec::new();
    for &backing in evidence {
        let backing = match backing {
            Backing::Reading { port, stage, .. } if !sheet.holds(backing) => {
                Backing::Reading { port, stage, phase: Phase::Left }
            }
            Backing::Reading { .. }
            | Backing::Measured(_)
            | Backing::Look(_)
            | Backing::Joint(_)
            | Backing::Sight(_) => backing,
        };
        if sheet.holds(backing) && !held.contains(&backing) {
            held.push(backing);
        }
    }
    held
}
