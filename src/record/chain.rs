//! The chain of checksums.

use super::FORMAT;

/// What stands before the checksum on a line.
const BEFORE: &str = ",\"sum\":\"";
/// What stands after it.
const AFTER: &str = "\"}";
/// Characters of a checksum: 64 bits in hexadecimal.
const WIDTH: usize = 16;

/// Where the chain stands: the checksum of the last line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Chain(String);

/// Why a line does not end as it must.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unsealed {
    /// There is no checksum at its end.
    NoSum,
    /// The checksum is another one.
    Broken,
}

impl Chain {
    /// Before the first line.
    pub(super) fn start() -> Self {
        Self(FORMAT.to_owned())
    }

    /// Puts the checksum into a line's JSON object (`{…}`) and goes on. No line feed is added.
    pub(super) fn seal(&mut self, object: &str) -> String {
        let body = object.strip_suffix('}').unwrap_or(object);
        self.0 = self.next(body);
        format!("{body}{BEFORE}{}{AFTER}", self.0)
    }

    /// Takes a line apart: the JSON object without its checksum, and the checksum.
    ///
    /// # Errors
    /// When no checksum stands at its end.
    pub(super) fn split(line: &str) -> Result<(&str, &str), Unsealed> {
        let (body, sum) = line
            .strip_suffix(AFTER)
            .and_then(|rest| rest.rsplit_once(BEFORE))
            .ok_or(Unsealed::NoSum)?;
        let is_sum = sum.len() == WIDTH && sum.bytes().all(is_lower_hex);
        if is_sum { Ok((body, sum)) } else { Err(Unsealed::NoSum) }
    }

    /// Checks the next line's checksum and goes on.
    ///
    /// # Errors
    /// When it is not the one that follows.
    pub(super) fn check(&mut self, body: &str, sum: &str) -> Result<(), Unsealed> {
        let wanted = self.next(body);
        if wanted != sum {
            return Err(Unsealed::Broken);
        }
        self.0 = wanted;
        Ok(())
    }

    fn next(&self, body: &str) -> String {
        let mut hasher = blake3::Hasher::new();
        hasher.update(self.0.as_bytes());
        hasher.update(b"\n");
        hasher.update(body.as_bytes());
        let mut sum = hasher.finalize().to_hex().to_string();
        sum.truncate(WIDTH);
        sum
    }
}

/// Whether a byte is one of the digits that checksums and digests are written with.
pub(super) fn is_lower_hex(byte: u8) -> bool {
    byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte)
}
