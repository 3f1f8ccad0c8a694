//! Any bytes at all.

use proptest::prelude::*;
use quarterturn::record::{FaultCode, read, whole};
use quarterturn::rng::stream;

use super::small;

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Random bytes are refused, never a panic.
    #[test]
    fn random_bytes_are_refused(bytes in prop::collection::vec(any::<u8>(), 0..2000)) {
        prop_assert!(read(&bytes).is_err());
    }

    /// Random text that looks like lines is refused.
    #[test]
    fn random_lines_are_refused(text in "([{}\\[\\]\":,a-z0-9.-]{0,40}\n){0,20}") {
        prop_assert!(read(text.as_bytes()).is_err());
    }
}

/// Three thousand records with pieces cut out, doubled, moved or overwritten: read without a panic,
/// and what is accepted is a true beginning of the record.
#[test]
fn mangled_records_are_refused_or_a_true_beginning() {
    let text = small();
    let good = text.as_bytes();
    let mut stream = stream(3, "mangle");
    for round in 0..3_000 {
        let mut bytes = good.to_vec();
        for _ in 0..=stream.below(3) {
            let len = u32::try_from(bytes.len()).unwrap();
            if len < 2 {
                break;
            }
            let from = stream.below(len) as usize;
            let to = from + (stream.below(len) as usize).min(bytes.len() - from);
            match stream.below(4) {
                0 => drop(bytes.drain(from..to)),
                1 => {
                    let piece = bytes[from..to].to_vec();
                    bytes.splice(from..from, piece);
                }
                2 => bytes.truncate(to),
                _ => {
                    let small = to.min(from + 8);
                    for byte in &mut bytes[from..small] {
                        *byte = u8::try_from(stream.below(256)).unwrap();
                    }
                }
            }
        }
        match read(&bytes) {
            Ok(record) => {
                let again = whole(&record.header, &record.lines).unwrap();
                assert!(text.starts_with(&again), "round {round}");
            }
            Err(fault) => {
                assert!(fault.line >= 1 && fault.column >= 1);
                assert!(fault.code != FaultCode::TooLarge && fault.message.len() < 1000);
            }
        }
    }
}
