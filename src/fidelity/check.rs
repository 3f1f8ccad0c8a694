//! One check of the guide: what is claimed, on whose word, under what condition, within what band.

use serde::{Deserialize, Serialize};

/// What a reference is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Deserialize, Serialize)]
#[serde(rename_all(serialize = "kebab-case"))]
pub enum Truth {
    /// A table or figure somebody published.
    Published,
    /// A law solved with pencil and paper.
    ClosedForm,
    /// Another program's answer to the same equations.
    Solver,
    /// What must hold whatever the numbers: conservation, order, symmetry.
    Invariant,
    /// Common practice of the trade, written down by nobody in particular.
    Practice,
    /// A value from memory: it guards against change, it proves little.
    Memory,
}

/// The band a result must lie in, seen from its reference. Bounds are inclusive.
#[derive(Clone, Copy, Debug, PartialEq, Deserialize, Serialize)]
#[serde(rename_all(serialize = "kebab-case"))]
pub enum Tolerance {
    /// `|result − reference| ≤ band`, in the check's unit.
    Absolute(f64),
    /// `below ≤ result/reference − 1 ≤ above`; a band of ±1 % is `Relative(-0.01, 0.01)`.
    Relative(f64, f64),
    /// Right if either holds: small figures are judged by the first, large ones by the second.
    Either {
        /// Largest difference, in the check's unit.
        absolute: f64,
        /// Largest difference as a fraction of the reference.
        relative: f64,
    },
    /// Right where `result ≤ reference`; there is no band.
    AtMost,
    /// Right where `result ≥ reference`; there is no band.
    AtLeast,
}

/// One figure beside its reference.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Row {
    /// Which row of the source this is: `1/2 in, 50 ft`.
    pub label: String,
    /// The source's figure, in the check's unit.
    pub reference: f64,
    /// The model's figure, in the check's unit.
    pub result: f64,
    /// How far the source's figure may be off by its own rounding (half a unit of its last printed
    /// digit); taken off the difference before it is judged. 0 where the figure is exact.
    #[serde(skip_serializing_if = "is_zero")]
    pub rounding: f64,
    /// Where the row stands on the horizontal axis of the check's plot, if it has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<f64>,
    /// Which line of the plot the row belongs to; empty if there is one line only.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub line: String,
}

/// How a check came out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Every row lies in the band.
    Pass,
    /// A row lies outside, and the check says why this is so and what was tried.
    KnownMiss,
    /// A row lies outside, or there is no row at all.
    Fail,
}

/// A claim with its rows.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Check {
    /// Short and stable: `pipe.steel.natural.half-inch-drop`.
    pub id: String,
    /// The row of `claims.ron` that it stands on, by its name; empty if it has none.
    #[serde(skip)]
    pub row: &'static str,
    /// The heading it stands under in the guide.
    pub chapter: &'static str,
    /// What the model is said to do, one sentence.
    pub claim: String,
    /// What kind of reference it is.
    pub truth: Truth,
    /// The published source, the law, or the library with its version.
    pub source: String,
    /// Gas, size, state in which it was compared.
    pub condition: String,
    /// The band about the reference that each row must lie in.
    pub tolerance: Tolerance,
    /// Why the band is as wide as it is.
    pub reason: String,
    /// Unit of references and results.
    pub unit: &'static str,
    /// References and results, in the order of the source.
    pub rows: Vec<Row>,
    /// Why a miss is known and left standing, and what was tried; `None` for a check that must pass.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub known_miss: Option<String>,
}

impl Tolerance {
    /// Whether `result` lies in the band about `reference`. A result that is no number never does.
    #[must_use]
    pub fn holds(self, reference: f64, result: f64) -> bool {
        let off = result - reference;
        match self {
            Tolerance::Absolute(band) => off.abs() <= band,
            Tolerance::Relative(below, above) => {
                let off = off / reference;
                below <= off && off <= above
            }
            Tolerance::Either { absolute, relative } => {
                off.abs() <= absolute || off.abs() <= relative * reference.abs()
            }
            Tolerance::AtMost => result <= reference,
            Tolerance::AtLeast => result >= reference,
        }
    }
}

fn is_zero(value: &f64) -> bool {
    *value == 0.0
}

impl Row {
    /// A row without a place on a plot.
    #[must_use]
    pub fn new(label: impl Into<String>, reference: f64, result: f64) -> Self {
        let label = label.into();
        Self { label, reference, result, rounding: 0.0, at: None, line: String::new() }
    }

    /// The same row with a reference that is rounded to twice `half_unit`.
    #[must_use]
    pub fn rounded(mut self, half_unit: f64) -> Self {
        self.rounding = half_unit;
        self
    }

    /// The result as it is judged: brought nearer to the reference by the reference's rounding.
    #[must_use]
    pub fn judged(&self) -> f64 {
        let off = self.result - self.reference;
        self.reference + off.signum() * (off.abs() - self.rounding).max(0.0)
    }

    /// The same row at `x` on the named line of the check's plot.
    #[must_use]
    pub fn on(mut self, line: impl Into<String>, x: f64) -> Self {
        self.line = line.into();
        self.at = Some(x);
        self
    }
}

impl Check {
    /// Whether one of its rows holds.
    #[must_use]
    pub fn holds(&self, row: &Row) -> bool {
        self.tolerance.holds(row.reference, row.judged())
    }

    /// How it came out.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        if !self.rows.is_empty() && self.rows.iter().all(|row| self.holds(row)) {
            Verdict::Pass
        } else if self.known_miss.is_some() && !self.rows.is_empty() {
            Verdict::KnownMiss
        } else {
            Verdict::Fail
        }
    }

    /// The row nearest to the edge of its band or farthest beyond it, rounding taken off.
    #[must_use]
    pub fn worst(&self) -> Option<&Row> {
        let far = |row: &Row| match self.tolerance {
            Tolerance::Relative(below, above) => {
                let off = row.judged() / row.reference - 1.0;
                // How far from the middle of the band.
                (off - 0.5 * (below + above)).abs()
            }
            Tolerance::Either { absolute, relative } => {
                let off = (row.judged() - row.reference).abs();
                (off / absolute).min(off / (relative * row.reference.abs()))
            }
            Tolerance::Absolute(_) => (row.judged() - row.reference).abs(),
            Tolerance::AtMost => row.judged() - row.reference,
            Tolerance::AtLeast => row.reference - row.judged(),
        };
        self.rows.iter().max_by(|a, b| {
            let (a, b) = (far(a), far(b));
            // A result that is no number is the worst there is.
            if a.is_nan() { core::cmp::Ordering::Greater } else { a.total_cmp(&b) }
        })
    }
}
