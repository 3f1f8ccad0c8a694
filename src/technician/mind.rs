//! What the technician decides with: the job card, what it knows, what it remembers.

use super::diagnosis::Diagnosis;
use super::know::Know;
use super::noticed::Noticed;
use super::sequence::Sequence;
use crate::catalogue::repair::{Need, Repair};
use crate::procedure::Memory;
use crate::setup::JobCard;

/// All that the technician decides with.
#[derive(Debug, Clone)]
pub(super) struct Mind {
    /// The job card in hand.
    pub card: JobCard,
    /// What was learned on this job.
    pub know: Know,
    /// How everything stood, and what was noticed in passing.
    pub noticed: Noticed,
    /// What the procedure's goals need of what was seen and done.
    pub memory: Memory,
    /// Whether what was waited for last did not come.
    pub too_long: bool,
    /// Whether it no longer heeds what is wrong.
    pub careless: bool,
    /// Sequences in which it works otherwise than usual.
    pub sequences: Vec<Sequence>,
}

impl Mind {
    /// At the beginning of a job.
    pub fn new(card: &JobCard) -> Self {
        Self {
            card: card.clone(),
            know: Know::default(),
            noticed: Noticed::default(),
            memory: Memory::default(),
            too_long: false,
            careless: false,
            sequences: Vec::new(),
        }
    }

    /// Whether it works in this sequence.
    pub fn works(&self, sequence: Sequence) -> bool {
        self.sequences.contains(&sequence)
    }

    /// Puts a repair on the list, with what it is for. One that needs the line without pressure
    /// waits for the open inlet port.
    pub fn plan_repair(&mut self, diagnosis: Diagnosis, repair: Repair) {
        self.know.note(diagnosis);
        let list = if repair.needs().contains(&Need::NoPressure) {
            &mut self.know.repairs.in_open_line
        } else {
            &mut self.know.repairs.isolated
        };
        if !list.contains(&repair) {
            list.push_back(repair);
        }
    }
}
