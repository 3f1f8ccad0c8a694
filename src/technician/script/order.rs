//! What a script is made of: its lines, and what each orders.

use crate::hands::action::Action;
use crate::parts::{Phase, Port, Stage};
use crate::procedure::Until;

/// A script that has been read.
#[derive(Debug, Clone, PartialEq)]
pub struct Script {
    /// Its orders, in their order.
    pub steps: Vec<Step>,
}

/// One line of a script.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// Its line, from 1.
    pub line: usize,
    /// The line as written, without its remark.
    pub text: String,
    /// What becomes of the script when it cannot be done.
    pub otherwise: Otherwise,
    /// What is to be done, with when and how often.
    pub order: Order,
}

/// What becomes of the script when an order cannot be carried out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Otherwise {
    /// It stops at this line.
    Stop,
    /// It goes on with the next line.
    GoOn,
}

/// What a line of a script orders.
#[derive(Debug, Clone, PartialEq)]
pub enum Order {
    /// This action is done.
    Do(Action),
    /// Write on the job sheet what the manometer shows.
    WriteShown {
        /// Port that the manometer reads.
        port: Port,
        /// State under test of the reading.
        stage: Stage,
        /// Before or after work.
        phase: Phase,
    },
    /// Wait for something, at most so many seconds.
    Wait {
        /// What is waited for.
        until: Until,
        /// How long at most, in seconds.
        limit_s: f64,
    },
}
