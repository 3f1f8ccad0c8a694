//! One implicit step: residual and slopes, Newton, halving, splitting.
//!
//! **Equation.** Residual of node `i`: `rᵢ = Cᵢ·(Pᵢ − Pᵢ⁰)/dt + Σ Q(P)` with
//! `C = V·T_std/(T·p_std)` in standard m³/Pa; Newton `J·ΔP = −r` with analytic slopes. `J` has a
//! positive diagonal, no positive entry off it and column sums `C/dt > 0` (an M-matrix). A step
//! starts from the last pressures, moved on as they moved before where that was a good guess
//! (`guess`), and leaves at once when they balance. The last factors serve again as long as they
//! bring Σ|r| down to a hundredth at each use (chord steps); then come Newton's own.
//! **Assumptions.** Flow falls with the pressure ahead and rises with that behind, in every
//! element.
//! **Valid range.** Any finite step above zero; others change nothing.
//! **Regularisation.** Iterates are kept between the lowest and the highest pressure there is (gas
//! flows from high to low, so the answer lies there). A Newton step that does not lower Σ|r| is
//! halved, up to 14 times; if 40 iterations do not balance, the time step is split in two, and
//! again, up to 20 times or 4,096 parts. Balanced means Σ|r| within 1e-11 of the largest flow
//! (3e-10 where rounding allows no better), that flow taken as at least 1e-8 m³/s.
//! **Source.** Damped Newton on an M-matrix, as in any text on numerical analysis; two-sum after
//! Knuth (from memory).
//! **Left out.** Error of the time step: first order, 20 ms; fast events are smeared over a step.
//! **Checked.** `parts_of_a_step_add_up()` in `src/physics/network/solve.rs`;
//! `twenty_thousand_blows()` and `copies_go_the_same_way()` in
//! `tests/core/physics/network_storm.rs`; `any_shape_balances()` in
//! `tests/core/physics/network_shapes.rs`.

use super::super::orifice::FlowSlopes;
use super::super::pipe::drive_pa;
use super::super::regulator::Terminals;
use super::slots::{Head, Slots};
use super::{Ends, Network, StepReport, Work};

/// Wanted Σ|residual| over throughput.
const TOLERANCE: f64 = 1e-11;
/// Σ|residual| over throughput that disturbs no later guess.
const CLEAN: f64 = 1e-12;
/// Σ|residual| over throughput that may still be called balanced when rounding allows no better.
const ACCEPTABLE: f64 = 3e-10;
/// Σ|residual| over throughput from which one more Newton step is expected to balance.
const NEAR: f64 = 1e-5;
/// Least throughput the residual is measured against, in standard m³/s (0.01 cm³/s).
const FLOW_FLOOR_M3_S: f64 = 1e-8;
/// Steps with the last factors before fresh ones are made.
const CHORD_ITERATIONS: u32 = 3;
/// Uses of the same factors after which they are made anew when one step with them is not enough.
const CHORD_AGE: u32 = 20;
/// Share to which a step with the last factors must bring Σ|residual| down.
const CHORD_FITS: f64 = 1e-2;
/// Newton iterations before a step is split.
const MAX_ITERATIONS: u32 = 40;
/// Halvings of one Newton step.
const MAX_HALVINGS: u32 = 14;
/// Splittings of one time step, one within the other.
const MAX_DEPTH: u32 = 20;
/// Parts of one time step from which it is not split further.
const MAX_PARTS: u32 = 4_096;

/// How well the present pressures balance.
#[derive(Debug, Clone, Copy)]
struct Balance {
    /// Σ|residual|, in standard m³/s.
    gap: f64,
    /// Largest flow through any element, or the floor.
    throughput: f64,
}

impl Balance {
    fn within(&self, share: f64) -> bool {
        self.gap <= share * self.throughput
    }
}

impl Network {
    /// Advances by `dt_s` seconds. Cannot fail; the report says how it went.
    pub fn step(&mut self, dt_s: f64) -> StepReport {
        let mut report =
            StepReport { iterations: 0, parts: 0, shortened: 0, converged: true, imbalance: 0.0 };
        if !dt_s.is_finite() || dt_s <= 0.0 {
            return report;
        }
        if self.opened_or_shut {
            self.list_passing();
        }
        self.whole = true;
        self.advance(dt_s, dt_s, 0, &mut report);
        report
    }

    /// Lists the openings that are not shut, so that a step passes over the others, which are many.
    fn list_passing(&mut self) {
        self.passing.clear();
        for (k, link) in self.openings.iter_mut().enumerate() {
            if link.cd_area_m2 > 0.0 {
                self.passing.push(k);
            } else {
                link.flow = 0.0;
            }
        }
        self.opened_or_shut = false;
    }

    /// One part of a step, split again if it does not balance.
    fn advance(&mut self, dt_s: f64, whole_s: f64, depth: u32, report: &mut StepReport) {
        for link in &mut self.regulators {
            let (from, to) = (usize::from(link.ends.from), usize::from(link.ends.to));
            link.regulator.begin_step(dt_s, self.heads[from].pa, self.heads[to].pa);
        }
        self.keep_start();
        if self.whole {
            self.start_from_guess();
        }
        let balance = self.newton(1.0 / dt_s, report);
        let may_split = depth < MAX_DEPTH && report.parts < MAX_PARTS;
        if !balance.within(ACCEPTABLE) && may_split {
            self.heads[..self.free].copy_from_slice(&self.work.start[..self.free]);
            if self.whole {
                self.whole = false;
                self.clear_means();
                self.work.guess.forget();
            }
            self.advance(0.5 * dt_s, whole_s, depth + 1, report);
            self.advance(0.5 * dt_s, whole_s, depth + 1, report);
            return;
        }
        report.parts += 1;
        report.converged &= balance.within(ACCEPTABLE);
        report.imbalance = report.imbalance.max(balance.gap / balance.throughput);
        for link in &mut self.regulators {
            link.regulator.end_step();
        }
        if self.whole {
            let Work { guess, start, first_share, .. } = &mut self.work;
            guess.learn(&self.heads, start, self.free, *first_share > CLEAN);
        } else {
            self.add_means(dt_s / whole_s);
        }
    }

    /// From the present pressures to ones that balance.
    fn newton(&mut self, per_dt: f64, report: &mut StepReport) -> Balance {
        let balance = self.evaluate::<false>(per_dt);
        #[expect(clippy::float_cmp, reason = "the same step's factors or not")]
        let has_factors = self.work.factors_per_dt == per_dt;
        self.work.first_share = balance.gap / balance.throughput;
        if balance.within(TOLERANCE) {
            let polish = has_factors && !balance.within(CLEAN);
            return if polish { self.polish(per_dt, balance) } else { balance };
        }
        if has_factors && let Some(balance) = self.chord(per_dt, balance, report) {
            return balance;
        }
        self.fresh_newton(per_dt, report)
    }

    /// Makes pressures that balance still better without looking at the flows again: what a guess
    /// leaves over would spoil the next ones. Gives the balance of the new pressures with the old
    /// flows.
    fn polish(&mut self, per_dt: f64, balance: Balance) -> Balance {
        self.solve_for_change();
        self.move_to(1.0);
        for link in &mut self.regulators {
            let at = across(&self.heads, &link.ends, self.p_atm_abs_pa);
            if at.diff_pa >= 0.0 {
                link.regulator.follow(&at);
            }
        }
        let Work { residual, change, .. } = &self.work;
        let rows = residual.iter().zip(change.iter()).zip(&self.capacity);
        let gap = rows.map(|((r, change), capacity)| (r + capacity * per_dt * change).abs()).sum();
        Balance { gap, ..balance }
    }

    /// Goes on with the last factors; gives up, at the best pressures found, when these do not fit.
    fn chord(
        &mut self,
        per_dt: f64,
        mut balance: Balance,
        report: &mut StepReport,
    ) -> Option<Balance> {
        self.work.factors_age = self.work.factors_age.saturating_add(1);
        for iteration in 0..CHORD_ITERATIONS {
            report.iterations += 1;
            self.solve_for_change();
            self.move_to(1.0);
            let next = self.evaluate::<false>(per_dt);
            if next.within(TOLERANCE) {
                if iteration > 0 && self.work.factors_age > CHORD_AGE {
                    self.work.factors_per_dt = 0.0;
                }
                return Some(next);
            }
            let fits = next.gap <= CHORD_FITS * balance.gap;
            if !fits {
                if next.gap >= balance.gap || !next.gap.is_finite() {
                    self.move_to(0.0);
                }
                break;
            }
            balance = next;
        }
        self.work.factors_per_dt = 0.0;
        None
    }

    /// Newton with slopes of its own.
    fn fresh_newton(&mut self, per_dt: f64, report: &mut StepReport) -> Balance {
        let mut balance = self.evaluate::<true>(per_dt);
        for _ in 0..MAX_ITERATIONS {
            if balance.within(TOLERANCE) {
                break;
            }
            report.iterations += 1;
            let near = balance.within(NEAR);
            let Work { diagonal, matrix, factors, .. } = &mut self.work;
            self.program.factor(diagonal, matrix, factors);
            self.work.factors_per_dt = per_dt;
            self.work.factors_age = 0;
            self.solve_for_change();
            let next = self.descend(per_dt, balance, near, report);
            if balance.within(ACCEPTABLE) && next.gap >= balance.gap {
                // Rounding allows no better: keep the pressures that balance best.
                self.move_to(0.0);
                return self.evaluate::<false>(per_dt);
            }
            balance = next;
            if near && !balance.within(TOLERANCE) {
                balance = self.evaluate::<true>(per_dt);
            }
        }
        balance
    }

    /// The change that the factors ask for, from the present pressures as the trial point.
    fn solve_for_change(&mut self) {
        let free = self.free;
        let Work { change, residual, factors, trial, .. } = &mut self.work;
        for (change, residual) in change[..free].iter_mut().zip(&residual[..free]) {
            *change = -residual;
        }
        self.program.solve(factors, change);
        trial[..free].copy_from_slice(&self.heads[..free]);
    }

    /// Goes along the change, halved until Σ|residual| falls; `near` the end slopes are not needed
    /// again.
    fn descend(
        &mut self,
        per_dt: f64,
        before: Balance,
        near: bool,
        report: &mut StepReport,
    ) -> Balance {
        let mut share = 1.0;
        for halvings in 0.. {
            self.move_to(share);
            let next =
                if near { self.evaluate::<false>(per_dt) } else { self.evaluate::<true>(per_dt) };
            let better = next.gap < (1.0 - 0.1 * share) * before.gap;
            let done = halvings == MAX_HALVINGS || before.within(ACCEPTABLE);
            if better || done || next.within(TOLERANCE) {
                return next;
            }
            report.shortened += 1;
            share *= 0.5;
        }
        before
    }

    /// Remembers the pressures that a part starts from. Gas only flows from high to low, so no
    /// pressure at its end can lie outside those at its start and at the boundaries.
    fn keep_start(&mut self) {
        let (mut lower, mut upper) = (f64::INFINITY, f64::NEG_INFINITY);
        for head in &self.heads[..self.nodes.len()] {
            lower = lesser(lower, head.pa);
            upper = greater(upper, head.pa);
        }
        (self.work.lower_pa, self.work.upper_pa) = (lower, upper);
        self.work.start[..self.free].copy_from_slice(&self.heads[..self.free]);
    }

    /// Moves the pressures on as they moved before, where that was a good guess.
    fn start_from_guess(&mut self) {
        let free = self.free;
        let Work { guess, change, trial, start, .. } = &mut self.work;
        if guess.moves(&mut change[..free]) {
            trial[..free].copy_from_slice(&start[..free]);
            self.move_to(1.0);
        }
    }

    /// Sets the pressures to the trial point plus a share of the change, kept within the bounds.
    fn move_to(&mut self, share: f64) {
        let (lower_pa, upper_pa) = (self.work.lower_pa, self.work.upper_pa);
        let free = self.free;
        let from = self.work.trial[..free].iter().zip(&self.work.change[..free]);
        let mut outside = false;
        for (head, (trial, change)) in self.heads[..free].iter_mut().zip(from) {
            // Two-sum: the sum and what it leaves out are exact together.
            let lower = trial.rest_pa + share * change;
            let sum = trial.pa + lower;
            let lower_part = sum - trial.pa;
            head.rest_pa = (trial.pa - (sum - lower_part)) + (lower - lower_part);
            head.pa = sum;
            outside |= (sum < lower_pa) | (sum > upper_pa);
        }
        if outside {
            self.keep_within(lower_pa, upper_pa);
        }
    }

    /// Brings pressures outside these bounds back to them.
    #[cold]
    fn keep_within(&mut self, lower_pa: f64, upper_pa: f64) {
        for head in &mut self.heads[..self.free] {
            if head.pa < lower_pa || head.pa > upper_pa {
                *head = Head { pa: head.pa.clamp(lower_pa, upper_pa), rest_pa: 0.0 };
            }
        }
    }

    /// Residuals and flows at the present pressures, and slopes where they are asked for.
    fn evaluate<const SLOPES: bool>(&mut self, per_dt: f64) -> Balance {
        let mut largest = FLOW_FLOOR_M3_S;
        let mut system = System {
            heads: &self.heads,
            ambient_pa: self.p_atm_abs_pa,
            residual: &mut self.work.residual,
            diagonal: &mut self.work.diagonal,
            matrix: &mut self.work.matrix,
        };
        system.store::<SLOPES>(&self.capacity, &self.work.start, per_dt);
        for link in &mut self.curves {
            let at = across(system.heads, &link.ends, system.ambient_pa);
            let (drive, by_from, by_to) = drive_pa(at.diff_pa, at.inlet_abs_pa, at.outlet_abs_pa);
            let (flow, slope) = link.curve.flow(drive);
            link.flow = flow;
            largest = greater(largest, flow.abs());
            system.add::<SLOPES>(
                &link.ends,
                FlowSlopes { flow, by_from: slope * by_from, by_to: slope * by_to },
            );
        }
        for &k in &self.passing {
            let Some(link) = self.openings.get_mut(k) else { continue };
            let at = across(system.heads, &link.ends, system.ambient_pa);
            let unit = link.law.flow(at.diff_pa, at.inlet_abs_pa, at.outlet_abs_pa);
            let flow = unit.times(link.cd_area_m2);
            link.flow = flow.flow;
            largest = greater(largest, flow.flow.abs());
            system.add::<SLOPES>(&link.ends, flow);
        }
        for link in &mut self.regulators {
            let at = across(system.heads, &link.ends, system.ambient_pa);
            let Some(flow) = link.regulator.flow(&link.law, &at) else {
                link.flow = 0.0;
                continue;
            };
            link.flow = flow.flow;
            largest = greater(largest, flow.flow.abs());
            system.add::<SLOPES>(&link.ends, flow);
        }
        let gap = self.work.residual[..self.free].iter().map(|r| r.abs()).sum();
        Balance { gap, throughput: largest }
    }

    /// Takes the flows of a part that makes `weight` of the step into the means.
    fn add_means(&mut self, weight: f64) {
        self.curves.iter_mut().for_each(|link| link.mean += weight * link.flow);
        self.openings.iter_mut().for_each(|link| link.mean += weight * link.flow);
        self.regulators.iter_mut().for_each(|link| link.mean += weight * link.flow);
    }

    fn clear_means(&mut self) {
        self.curves.iter_mut().for_each(|link| link.mean = 0.0);
        self.openings.iter_mut().for_each(|link| link.mean = 0.0);
        self.regulators.iter_mut().for_each(|link| link.mean = 0.0);
    }
}

/// The equations being filled in.
struct System<'a> {
    heads: &'a Slots<Head>,
    ambient_pa: f64,
    residual: &'a mut Slots<f64>,
    diagonal: &'a mut Slots<f64>,
    matrix: &'a mut [f64],
}

impl System<'_> {
    /// Starts from the gas taken up by the nodes' volumes.
    fn store<const SLOPES: bool>(&mut self, capacity: &[f64], start: &Slots<Head>, per_dt: f64) {
        let heads = self.heads.iter().zip(start);
        for ((residual, capacity), (now, then)) in self.residual.iter_mut().zip(capacity).zip(heads)
        {
            *residual = capacity * per_dt * ((now.pa - then.pa) + (now.rest_pa - then.rest_pa));
        }
        if SLOPES {
            self.matrix.fill(0.0);
            for (diagonal, capacity) in self.diagonal.iter_mut().zip(capacity) {
                *diagonal = capacity * per_dt;
            }
        }
    }

    #[inline(always)]
    fn add<const SLOPES: bool>(&mut self, ends: &Ends, flow: FlowSlopes) {
        let (from, to) = (usize::from(ends.from), usize::from(ends.to));
        self.residual[from] += flow.flow;
        self.residual[to] -= flow.flow;
        if !SLOPES {
            return;
        }
        self.diagonal[from] += flow.by_from;
        self.diagonal[to] -= flow.by_to;
        self.matrix[usize::from(ends.from_to)] += flow.by_to;
        self.matrix[usize::from(ends.to_from)] -= flow.by_from;
    }
}

/// The greater of two numbers; one that is no number is passed over when it comes second.
#[inline(always)]
fn greater(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// The lesser of two numbers, likewise.
#[inline(always)]
fn lesser(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// The pressures at an element's two ends.
#[inline(always)]
fn across(heads: &Slots<Head>, ends: &Ends, ambient_pa: f64) -> Terminals {
    let (from, to) = (&heads[usize::from(ends.from)], &heads[usize::from(ends.to)]);
    Terminals {
        diff_pa: (from.pa - to.pa) + (from.rest_pa - to.rest_pa),
        inlet_abs_pa: from.pa + ambient_pa,
        outlet_abs_pa: to.pa + ambient_pa,
        outlet_pa: to.pa,
        rest_pa: to.rest_pa,
    }
}

#[cfg(test)]
mod tests {
    use super::super::NetworkBuilder;
    use crate::physics::fluid::Gas;
    use crate::units::{P_STD_PA, T_STD_K};

    /// A step taken in parts reports the mean of its flows: what the node holds more came in.
    #[test]
    fn parts_of_a_step_add_up() {
        let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
        let source = b.fixed(2_000.0);
        let node = b.node(1e-3, T_STD_K, 0.0);
        let hole = b.opening(source, node, 1e-5);
        let mut network = b.build();
        let mut report = network.step(1e-3);
        let before = network.stored_std_m3(node);
        network.clear_means();
        network.whole = false;
        for _ in 0..4 {
            network.advance(0.005, 0.02, 2, &mut report);
        }
        assert_eq!(report.parts, 5);
        let gained = network.stored_std_m3(node) - before;
        approx::assert_relative_eq!(
            gained,
            network.flow_std_m3_s(hole) * 0.02,
            max_relative = 1e-10
        );
    }
}
