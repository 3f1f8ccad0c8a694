//! Leak fluid on a joint, with what was so while it was on.

use crate::instrument::leak_fluid::LeakFluid;
use crate::parts::Level;
use crate::physics::valve::HandleAngle;
use crate::units::TICK_S;
use serde::Serialize;

/// Seconds that fluid must be watched to judge a joint (common practice).
const JUDGED_S: f64 = 10.0;

/// Leak fluid on a joint.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct Brushed {
    pub(crate) fluid: LeakFluid,
    /// The stretch of time that goes on now.
    now: Stretch,
    /// The best one before it.
    before: Option<Stretch>,
}

/// A stretch of time in which burners and manual valve stayed as they were.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct Stretch {
    pub(crate) firing: Option<Level>,
    pub(crate) manual_valve: HandleAngle,
    /// Lowest pressure behind the joint, in pascals.
    pub(crate) lowest_pa: f64,
    pub(crate) dwell_s: f64,
}

impl Brushed {
    /// Fluid brushed on just now.
    pub(crate) fn fresh(now: Stretch) -> Self {
        Self { fluid: LeakFluid::default(), now, before: None }
    }

    /// Goes on by a tick with a leak under it, in standard m³/s; `fresh` is a stretch that would
    /// begin now.
    pub(crate) fn step(&mut self, leak_m3_s: f64, fresh: Stretch) {
        self.fluid.step(TICK_S, leak_m3_s);
        if self.now.firing == fresh.firing && self.now.manual_valve == fresh.manual_valve {
            self.now.lowest_pa = self.now.lowest_pa.min(fresh.lowest_pa);
            self.now.dwell_s += TICK_S;
        } else {
            if self.before.is_none_or(|best| self.now.beats(&best)) {
                self.before = Some(self.now);
            }
            self.now = fresh;
        }
    }

    /// The stretch that proves most.
    pub(crate) fn best(&self) -> Stretch {
        match self.before {
            Some(best) if best.beats(&self.now) => best,
            Some(_) | None => self.now,
        }
    }
}

impl Stretch {
    /// Whether this stretch proves more: first long enough to judge, then burners on, then the
    /// manual valve open, then longer.
    fn beats(&self, other: &Self) -> bool {
        let rank = |it: &Self| (it.dwell_s >= JUDGED_S, it.firing, it.manual_valve);
        match rank(self).cmp(&rank(other)) {
            core::cmp::Ordering::Greater => true,
            core::cmp::Ordering::Equal => self.dwell_s > other.dwell_s,
            core::cmp::Ordering::Less => false,
        }
    }
}
