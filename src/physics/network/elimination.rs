//! Gauss elimination compiled to a flat program of indices.
//!
//! The network's shape never changes, so the order of elimination (fewest neighbours first, which
//! strips a tree from its leaves to its root and leaves a small block for loops) and every entry it
//! touches, fill included, are worked out once. No pivoting: the matrix is an M-matrix, see
//! `solve`. Factors are kept, so that one factorisation serves many right-hand sides.
//!
//! **Source.** No physical figures. Minimum-degree ordering: any text on sparse matrices.
//! **Checked.** `solves_random_m_matrices()` in `src/physics/network/elimination.rs`.

use super::slots::Slots;
use serde::Serialize;

/// The program, for `size` unknowns. Matrix entries `0..size` are the diagonal, the last entry takes
/// what concerns boundaries and is never read.
#[derive(Debug, Clone)]
pub(super) struct Elimination {
    size: usize,
    entries: usize,
    /// Pivots with one neighbour, stripped first, in order; most of any network.
    leaves: Vec<Row>,
    /// The pivots after them.
    pivots: Vec<Pivot>,
    rows: Vec<Row>,
    updates: Vec<Update>,
    /// Entry of (row, column), row-major; only used while building.
    table: Vec<Option<u16>>,
}

#[derive(Debug, Clone, Copy)]
struct Pivot {
    node: u16,
    rows_end: u16,
}

/// One pivot and one neighbour of it still in the system.
#[derive(Debug, Clone, Copy)]
struct Row {
    pivot: u16,
    node: u16,
    /// Index of matrix entry (neighbor, pivot).
    below: u16,
    /// Index of matrix entry (pivot, neighbor).
    right: u16,
    /// End of its updates.
    updates_end: u16,
}

/// A factored system, for many right-hand sides.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Factors {
    leaves: Vec<LeafFactor>,
    /// The whole matrix, eliminated; the part with loops is read from it.
    matrix: Vec<f64>,
}

impl Factors {
    /// Every number, in a fixed order.
    pub(super) fn numbers(&self) -> impl Iterator<Item = f64> + '_ {
        let leaves = self.leaves.iter().flat_map(|leaf| [leaf.inverse, leaf.below, leaf.right]);
        leaves.chain(self.matrix.iter().copied())
    }
}

/// Factors of a pivot that had one neighbor when it was stripped.
#[derive(Debug, Clone, Copy, Serialize)]
struct LeafFactor {
    pivot: u8,
    node: u8,
    /// One over the pivot.
    inverse: f64,
    below: f64,
    /// Entry (pivot, neighbour) over the pivot.
    right: f64,
}

/// `matrix[target] -= factor · matrix[source]`.
#[derive(Debug, Clone, Copy)]
struct Update {
    target: u16,
    source: u16,
}

impl Elimination {
    /// Compiles the program for unknowns joined by `links`.
    pub(super) fn compile(size: usize, links: &[(u16, u16)]) -> Self {
        let mut joined = vec![vec![false; size]; size];
        for &(a, b) in links {
            let (a, b) = (usize::from(a), usize::from(b));
            if a != b && a < size && b < size {
                joined[a][b] = true;
                joined[b][a] = true;
            }
        }
        let mut program = Self {
            size,
            entries: size,
            leaves: Vec::new(),
            pivots: Vec::new(),
            rows: Vec::new(),
            updates: Vec::new(),
            table: vec![None; size * size],
        };
        for k in 0..size {
            program.table[k * size + k] = Some(small(k));
        }
        let mut left: Vec<usize> = (0..size).collect();
        while !left.is_empty() {
            let degree = |k: usize| left.iter().filter(|&&j| joined[k][j]).count();
            let best = (0..left.len()).min_by_key(|&at| degree(left[at])).unwrap_or(0);
            let pivot = left.remove(best);
            let neighbours: Vec<usize> =
                left.iter().copied().filter(|&j| joined[pivot][j]).collect();
            program.eliminate(pivot, &neighbours);
            for &a in &neighbours {
                for &b in &neighbours {
                    joined[a][b] |= a != b;
                }
            }
        }
        program.entries += 1;
        program
    }

    /// Matrix entry for a row and a column; the trash entry for boundaries.
    pub(super) fn entry(&self, row: u16, column: u16) -> u16 {
        let (row, column) = (usize::from(row), usize::from(column));
        let known = if row < self.size && column < self.size {
            self.table[row * self.size + column]
        } else {
            None
        };
        known.unwrap_or(small(self.entries - 1))
    }

    /// Number of matrix entries, the trash entry included.
    pub(super) fn entries(&self) -> usize {
        self.entries
    }

    /// Room for the factors of one system.
    pub(super) fn factors(&self) -> Factors {
        let leaf = |row: &Row| LeafFactor {
            pivot: slot(row.pivot),
            node: slot(row.node),
            inverse: 0.0,
            below: 0.0,
            right: 0.0,
        };
        Factors { leaves: self.leaves.iter().map(leaf).collect(), matrix: vec![0.0; self.entries] }
    }

    /// Factors the matrix of this diagonal and these entries off it.
    pub(super) fn factor(&self, diagonal: &Slots<f64>, matrix: &[f64], factors: &mut Factors) {
        factors.matrix.copy_from_slice(matrix);
        let matrix = &mut factors.matrix;
        for (entry, diagonal) in matrix.iter_mut().zip(diagonal.iter().take(self.size)) {
            *entry = *diagonal;
        }
        for (leaf, row) in factors.leaves.iter_mut().zip(&self.leaves) {
            leaf.inverse = 1.0 / matrix[usize::from(row.pivot)];
            leaf.below = matrix[usize::from(row.below)];
            leaf.right = matrix[usize::from(row.right)] * leaf.inverse;
            matrix[usize::from(row.node)] -= leaf.below * leaf.right;
        }
        let (mut row_at, mut update_at) = (0, 0);
        for pivot in &self.pivots {
            let p = usize::from(pivot.node);
            let rows_end = usize::from(pivot.rows_end);
            let inverse = 1.0 / matrix[p];
            matrix[p] = inverse;
            for row in &self.rows[row_at..rows_end] {
                let factor = matrix[usize::from(row.below)] * inverse;
                let updates_end = usize::from(row.updates_end);
                for update in &self.updates[update_at..updates_end] {
                    let source = matrix[usize::from(update.source)];
                    matrix[usize::from(update.target)] -= factor * source;
                }
                update_at = updates_end;
            }
            row_at = rows_end;
        }
    }

    /// Solves: `x` goes from right-hand side to solution.
    #[inline]
    pub(super) fn solve(&self, factors: &Factors, x: &mut Slots<f64>) {
        for leaf in &factors.leaves {
            let scaled = x[usize::from(leaf.pivot)] * leaf.inverse;
            x[usize::from(leaf.pivot)] = scaled;
            x[usize::from(leaf.node)] -= leaf.below * scaled;
        }
        self.solve_core(&factors.matrix, x);
        for leaf in factors.leaves.iter().rev() {
            x[usize::from(leaf.pivot)] -= leaf.right * x[usize::from(leaf.node)];
        }
    }

    /// The part with loops.
    fn solve_core(&self, matrix: &[f64], x: &mut Slots<f64>) {
        let mut row_at = 0;
        for pivot in &self.pivots {
            let p = usize::from(pivot.node);
            let scaled = x[p] * matrix[p];
            x[p] = scaled;
            let rows_end = usize::from(pivot.rows_end);
            for row in &self.rows[row_at..rows_end] {
                x[usize::from(row.node)] -= matrix[usize::from(row.below)] * scaled;
            }
            row_at = rows_end;
        }
        for row in self.rows.iter().rev() {
            let p = usize::from(row.pivot);
            x[p] -= matrix[usize::from(row.right)] * matrix[p] * x[usize::from(row.node)];
        }
    }

    fn eliminate(&mut self, pivot: usize, neighbours: &[usize]) {
        if let ([node], true) = (neighbours, self.pivots.is_empty()) {
            let below = self.entry_or_new(*node, pivot);
            let right = self.entry_or_new(pivot, *node);
            let (pivot, node) = (small(pivot), small(*node));
            self.leaves.push(Row { pivot, node, below, right, updates_end: 0 });
            return;
        }
        for &row in neighbours {
            let below = self.entry_or_new(row, pivot);
            let right = self.entry_or_new(pivot, row);
            for &column in neighbours {
                let target = self.entry_or_new(row, column);
                let source = self.entry_or_new(pivot, column);
                self.updates.push(Update { target, source });
            }
            self.rows.push(Row {
                pivot: small(pivot),
                node: small(row),
                below,
                right,
                updates_end: small(self.updates.len()),
            });
        }
        self.pivots.push(Pivot { node: small(pivot), rows_end: small(self.rows.len()) });
    }

    fn entry_or_new(&mut self, row: usize, column: usize) -> u16 {
        let at = row * self.size + column;
        if let Some(entry) = self.table[at] {
            return entry;
        }
        let entry = small(self.entries);
        self.entries += 1;
        self.table[at] = Some(entry);
        entry
    }
}

/// Indices fit 16 bits: a network has at most [`super::build::MAX_NODES`] nodes.
fn small(k: usize) -> u16 {
    u16::try_from(k).unwrap_or(u16::MAX)
}

/// Node indices fit 8 bits for the same reason.
fn slot(k: u16) -> u8 {
    u8::try_from(k).unwrap_or(u8::MAX)
}

#[cfg(test)]
mod tests {
    use super::super::slots::SLOTS;
    use super::*;

    /// On random M-matrices with loops the program solves what a dense product poses.
    #[test]
    fn solves_random_m_matrices() {
        let mut seed = 7_u64;
        let mut random = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            (seed >> 11) as f64 / (1_u64 << 53) as f64
        };
        for size in [1_usize, 2, 3, 7, 12] {
            let mut links: Vec<(u16, u16)> =
                (1..size).map(|k| (small(k), small((random() * k as f64) as usize))).collect();
            if size > 3 {
                links.push((0, small(size - 1)));
                links.push((1, small(size - 1)));
            }
            let program = Elimination::compile(size, &links);
            let mut matrix = vec![0.0; program.entries()];
            matrix.iter_mut().take(size).for_each(|entry| *entry = 1e-3 * random());
            for &(a, b) in &links {
                for (from, to) in [(a, b), (b, a)] {
                    let g = random();
                    matrix[usize::from(from)] += g;
                    matrix[usize::from(program.entry(to, from))] -= g;
                }
            }
            let want: Vec<f64> = (0..size).map(|_| random() - 0.5).collect();
            let mut x = [0.0; SLOTS];
            for (sum, row) in x.iter_mut().zip(program.table.chunks(size)) {
                for (entry, want) in row.iter().zip(&want) {
                    *sum += entry.map_or(0.0, |e| matrix[usize::from(e)]) * want;
                }
            }
            let mut factors = program.factors();
            let mut diagonal = [0.0; SLOTS];
            diagonal[..size].copy_from_slice(&matrix[..size]);
            program.factor(&diagonal, &matrix, &mut factors);
            program.solve(&factors, &mut x);
            for (got, want) in x.iter().zip(&want) {
                approx::assert_relative_eq!(got, want, epsilon = 1e-9);
            }
        }
    }
}
