//! Leak fluid on a joint, with what was so while it was on.

use crate::instrument::leak_fluid::LeakFluid;
use crate::parts::Level;
use crate::physics::valve::HandleAngle;
use crate::units::TICK_S;
use serde::Serialize;

/// Seconds that fluid must be watched to judge a joint (common practice).
const JUDGED_S: f64 = 10.0;

/// Seconds in which pressure that has just come is taken to be coming up still (this and the shares
/// below: values of our own, so that the stretch begins once the gas is there).
const COMES_S: f64 = 3.0;
/// Share of the present pressure below which the lowest one tells of a time before it came.
const CAME_SHARE: f64 = 0.8;
/// The same while it is coming up.
const COMING_SHARE: f64 = 0.95;
/// Pressure that counts as gas on a joint, in pascals (0.1 in. w.c.).
const GAS_PA: f64 = 25.0;
/// Steps of pressure by which one stretch proves more than another, in pascals (0.5 in. w.c.).
const STEP_PA: f64 = 124.5;

/// Leak fluid on a joint.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct Brushed {
    pub(crate) fluid: LeakFluid,
    /// The stretch of time that goes on now.
    now: Stretch,
    /// The best one before it.
    before: Option<Stretch>,
    /// Seconds left in which the pressure may still be coming up.
    comes_s: f64,
}

/// A stretch of time in which burners and manual valve stayed as they were and no gas came to the
/// joint anew.
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
        Self { fluid: LeakFluid::default(), now, before: None, comes_s: COMES_S }
    }

    /// Goes on by a tick with a leak under it, in standard m³/s; `fresh` is a stretch that would
    /// begin now.
    pub(crate) fn step(&mut self, leak_m3_s: f64, fresh: Stretch) {
        self.fluid.step(TICK_S, leak_m3_s);
        self.comes_s = (self.comes_s - TICK_S).max(0.0);
        let same = self.now.firing == fresh.firing && self.now.manual_valve == fresh.manual_valve;
        let comes = fresh.lowest_pa > GAS_PA;
        let came = comes && self.now.lowest_pa < CAME_SHARE * fresh.lowest_pa;
        let coming =
            comes && self.comes_s > 0.0 && self.now.lowest_pa < COMING_SHARE * fresh.lowest_pa;
        if !same || came {
            self.comes_s = COMES_S;
        }
        if same && !came && !coming {
            self.now.lowest_pa = self.now.lowest_pa.min(fresh.lowest_pa);
            self.now.dwell_s += TICK_S;
            return;
        }
        if self.before.is_none_or(|best| self.now.beats(&best)) {
            self.before = Some(self.now);
        }
        self.now = fresh;
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
    /// manual valve open, then under more pressure, then longer.
    fn beats(&self, other: &Self) -> bool {
        #[expect(clippy::cast_possible_truncation, reason = "pressures of gas lines")]
        let pressure = |it: &Self| libm::floor(it.lowest_pa / STEP_PA) as i64;
        let rank = |it: &Self| (it.dwell_s >= JUDGED_S, it.firing, it.manual_valve, pressure(it));
        match rank(self).cmp(&rank(other)) {
            core::cmp::Ordering::Greater => true,
            core::cmp::Ordering::Equal => self.dwell_s > other.dwell_s,
            core::cmp::Ordering::Less => false,
        }
    }
}
