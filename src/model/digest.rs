//! A number that stands for a whole state.
//!
//! Everything that a state consists of says for itself how it is written down: by a derived
//! `Serialize`, which takes every field, or by one that takes the state apart field by field, so
//! that a new field does not compile until it is dealt with. What is written is the same on every
//! machine (integers of variable length, floating point by its bits, least byte first), and its
//! BLAKE3 hash begins with the digest.

use postcard::ser_flavors::Flavor;
use serde::Serialize;

/// Takes in what is written.
struct Sink {
    hasher: blake3::Hasher,
}

impl Flavor for Sink {
    type Output = u64;

    fn try_push(&mut self, byte: u8) -> postcard::Result<()> {
        self.hasher.update(&[byte]);
        Ok(())
    }

    fn try_extend(&mut self, bytes: &[u8]) -> postcard::Result<()> {
        self.hasher.update(bytes);
        Ok(())
    }

    fn finalize(self) -> postcard::Result<u64> {
        let hash = self.hasher.finalize();
        Ok(hash.as_bytes().iter().take(8).fold(0, |word, byte| word << 8 | u64::from(*byte)))
    }
}

/// The digest of a state: equal states give equal numbers.
pub(crate) fn digest(state: &impl Serialize) -> u64 {
    let digest = postcard::serialize_with_flavor(state, Sink { hasher: blake3::Hasher::new() });
    // Only a list without a length cannot be written, and no state has one.
    debug_assert!(digest.is_ok(), "{digest:?}");
    digest.unwrap_or_default()
}
