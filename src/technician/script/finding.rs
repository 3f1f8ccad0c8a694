//! The line of a finding: the cause, what was done about it, and after `by` what speaks for it.
//!
//! ```text
//! finding connector-kinked mended by look connector reading inlet-port high found
//! ```

use super::tokens::{Slip, Tokens};
use super::words::Word;
use crate::parts::{Backing, WrittenFinding};

/// The kinds of what speaks for a finding, as a script writes them.
const KINDS: [&str; 5] = ["reading", "measured", "look", "joint", "sight"];

/// A finding from what follows its verb.
pub(super) fn read(tokens: &mut Tokens<'_>) -> Result<WrittenFinding, Slip> {
    let (cause, answer) = (tokens.word()?, tokens.word()?);
    let mut evidence = Vec::new();
    if tokens.peek().is_some() {
        tokens.exactly("by")?;
        evidence.push(backing(tokens)?);
        while tokens.peek().is_some() {
            evidence.push(backing(tokens)?);
        }
    }
    Ok(WrittenFinding { cause, answer, evidence })
}

fn backing(tokens: &mut Tokens<'_>) -> Result<Backing, Slip> {
    Ok(match tokens.one_of(id!("script-kind-backing"), &KINDS, |kind| kind)? {
        "reading" => {
            Backing::Reading { port: tokens.word()?, stage: tokens.word()?, phase: tokens.word()? }
        }
        "measured" => Backing::Measured(tokens.word()?),
        "look" => Backing::Look(tokens.word()?),
        "joint" => Backing::Joint(tokens.word()?),
        _ => Backing::Sight(tokens.word()?),
    })
}

/// The line of a finding; reading it gives the same finding again.
pub(super) fn line(finding: &WrittenFinding) -> String {
    let mut words = vec!["finding", finding.cause.word(), finding.answer.word()];
    if !finding.evidence.is_empty() {
        words.push("by");
    }
    for backing in &finding.evidence {
        match backing {
            Backing::Reading { port, stage, phase } => {
                words.extend(["reading", port.word(), stage.word(), phase.word()]);
            }
            Backing::Measured(spot) => words.extend(["measured", spot.word()]),
            Backing::Look(subject) => words.extend(["look", subject.word()]),
            Backing::Joint(joint) => words.extend(["joint", joint.word()]),
            Backing::Sight(sight) => words.extend(["sight", sight.word()]),
        }
    }
    words.join(" ")
}
