//! The aftermath of a job: the model run on for a day with the job as it was left, nobody at it.
//!
//! **Equation.** The same as a step's, of the same parts. While nothing happens, what is slow (house,
//! fans and exchanger, tank, room) goes on in fifths of a second, as ever, and what is fast and has
//! come to rest (gas network, control, burners) in one implicit step as long as the stretch.
//! **Assumptions.** Nobody touches anything; other appliances stay as they were left.
//! **Valid range.** Any state of the bench. A day by such strides agrees with one by ticks: counts
//! exactly, times of the control within 1 s, gas and heat within 0.5 %.
//! **Regularisation.** A stretch that changes a contact, a flame, a call or the air's danger, or moves
//! a pressure by more than a pascal or the fire by more than a thousandth, is taken back and tried
//! shorter, down to single ticks.
//! **Source.** Backward Euler is stable at any length (any text on numerical analysis). The bounds of
//! a stretch are our own.
//! **Left out.** Night set-back, sun, people, draughts; what a fire would do after it began.
//! **Checked.** `tests/core/bench/aftermath.rs`: several states left behind, by strides and by ticks.

mod account;
mod report;
mod stride;

use super::state::Model;
use crate::units::TICK_S;
use account::Account;

pub use report::{
    Aftermath, FurnaceAftermath, GasAftermath, HouseAftermath, MOST_CHANGES, RoomAftermath, Span,
    TankAftermath,
};

/// How the time is gone through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stepping {
    /// In strides from event to event.
    Strides,
    /// Tick by tick: what the strides are measured against.
    Ticks,
}

impl Model {
    /// Runs a copy of the model on for `seconds` (rounded to ticks) and tells what came of it. The
    /// model itself stays where it is.
    pub(crate) fn aftermath(&self, seconds: f64, stepping: Stepping) -> Aftermath {
        let mut model = self.clone();
        let mut account = Account::new(&model);
        let end = model.tick + ticks(seconds);
        let mut reach = stride::Reach::default();
        while model.tick < end && !account.is_over() {
            let passed = match stepping {
                Stepping::Ticks => model.plain_tick(),
                Stepping::Strides => model.go_on(&mut reach, end),
            };
            #[expect(clippy::cast_precision_loss, reason = "ticks of one day")]
            let dt_s = passed as f64 * TICK_S;
            account.see(&model, dt_s);
        }
        account.close(&model)
    }

    /// One ordinary tick of which nobody is told.
    fn plain_tick(&mut self) -> u64 {
        self.step(&mut |_| {});
        self.tick += 1;
        1
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "kept within ten days of ticks"
)]
fn ticks(seconds: f64) -> u64 {
    (seconds.clamp(0.0, 864_000.0) / TICK_S).round() as u64
}
