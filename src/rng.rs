//! The only source of chance, forked by name.
//!
//! Each use draws from its own stream, named after what it is for, so that adding a draw in one
//! place never shifts the numbers of another.

use rand::rngs::ChaCha8Rng;
use rand::{Rng, SeedableRng};

/// A stream of numbers that depends on the seed and on a name only.
pub struct Stream(ChaCha8Rng);

/// Opens the stream `name` of `seed`.
#[must_use]
pub fn stream(seed: u64, name: &str) -> Stream {
    let mut hasher = blake3::Hasher::new();
    hasher.update(&seed.to_le_bytes());
    hasher.update(name.as_bytes());
    Stream(ChaCha8Rng::from_seed(*hasher.finalize().as_bytes()))
}

impl Stream {
    /// A whole number below `bound` (which must be above zero).
    pub fn below(&mut self, bound: u32) -> u32 {
        // The bias is below 2⁻³² of `bound`, far under anything a scenario could show.
        let wide = u64::from(self.0.next_u32()) * u64::from(bound);
        u32::try_from(wide >> 32).unwrap_or(0)
    }

    /// A number in `[0, 1)` with 53 random bits.
    pub fn unit(&mut self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "53 bits fit a double exactly")]
        let bits = (self.0.next_u64() >> 11) as f64;
        bits / 9_007_199_254_740_992.0
    }

    /// A number between `lower` and `upper`.
    pub fn between(&mut self, lower: f64, upper: f64) -> f64 {
        lower + (upper - lower) * self.unit()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The streams are pinned: a change of generator would change every record.
    #[test]
    fn streams_are_pinned_and_independent() {
        let mut a = stream(7, "site");
        let mut b = stream(7, "meter");
        let first: Vec<u32> = (0..3).map(|_| a.below(1_000_000)).collect();
        assert_ne!(first[0], b.below(1_000_000));
        let mut again = stream(7, "site");
        assert_eq!(first, (0..3).map(|_| again.below(1_000_000)).collect::<Vec<_>>());
        let u = again.unit();
        assert!((0.0..1.0).contains(&u));
    }
}
