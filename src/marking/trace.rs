//! Pressures over time, kept small enough to draw.

use crate::model::truth::Truth;
use crate::units::TICK_S;
use crate::words::Id;

/// Most buckets that are kept.
const MOST: usize = 2_000;
/// Ticks between two samples: 5 Hz.
const SAMPLE_TICKS: u64 = 10;

/// The names of the curves, in the order of a bucket's values.
pub const CURVES: [Id; 4] =
    [id!("curve-supply"), id!("curve-inlet"), id!("curve-manifold"), id!("curve-burner-box")];

/// Lowest and highest value of each curve over a stretch of time, in pascals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bucket {
    /// Start of the stretch, in seconds.
    pub start_s: f64,
    /// Lowest and highest of each curve.
    pub span_pa: [(f64, f64); 4],
}

/// Pressure traces of a job.
#[derive(Debug, Clone, PartialEq)]
pub struct Trace {
    buckets: Vec<Bucket>,
    samples_per_bucket: u32,
    in_last: u32,
}

impl Default for Trace {
    fn default() -> Self {
        Self { buckets: Vec::new(), samples_per_bucket: 1, in_last: 0 }
    }
}

impl Trace {
    /// Whether a sample is due at a tick.
    #[must_use]
    pub fn is_due(tick: u64) -> bool {
        tick.is_multiple_of(SAMPLE_TICKS)
    }

    /// Adds a sample of the bench as it stands now.
    pub fn add(&mut self, truth: &Truth) {
        let values = [truth.supply_pa, truth.inlet_pa, truth.manifold_pa, truth.box_pa];
        if self.in_last > 0
            && let Some(last) = self.buckets.last_mut()
        {
            for (span, value) in last.span_pa.iter_mut().zip(values) {
                *span = (span.0.min(value), span.1.max(value));
            }
        } else {
            #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
            let start_s = truth.tick as f64 * TICK_S;
            self.buckets.push(Bucket { start_s, span_pa: values.map(|value| (value, value)) });
        }
        self.in_last = (self.in_last + 1) % self.samples_per_bucket;
        if self.buckets.len() > MOST {
            self.halve();
        }
    }

    /// Joins every two buckets.
    fn halve(&mut self) {
        self.buckets = self
            .buckets
            .chunks(2)
            .filter_map(|pair| {
                let mut first = *pair.first()?;
                if let Some(second) = pair.get(1) {
                    for (a, b) in first.span_pa.iter_mut().zip(second.span_pa) {
                        *a = (a.0.min(b.0), a.1.max(b.1));
                    }
                }
                Some(first)
            })
            .collect();
        self.samples_per_bucket *= 2;
        self.in_last = 0;
    }

    /// The buckets, in order of time.
    #[must_use]
    pub fn buckets(&self) -> &[Bucket] {
        &self.buckets
    }
}
