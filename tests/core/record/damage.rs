//! Torn and damaged records.

use quarterturn::record::{Torn, read};

use super::small;

/// Cut at any byte: nothing before the last whole line is lost, and what is torn is told.
#[test]
fn cut_at_any_byte_loses_only_the_torn_line() {
    let text = small();
    let full = read(text.as_bytes()).unwrap();
    let header_end = text.find('\n').unwrap() + 1;
    for cut in 0..=text.len() {
        let bytes = &text.as_bytes()[..cut];
        let whole_lines = bytes.iter().filter(|&&byte| byte == b'\n').count();
        match read(bytes) {
            Err(fault) => {
                assert!(cut < header_end, "cut at {cut}: {fault}");
                assert_eq!(fault.line, 1);
            }
            Ok(record) => {
                assert!(cut >= header_end);
                assert_eq!(record.header, full.header);
                assert_eq!(record.lines, full.lines[..whole_lines - 1], "cut at {cut}");
                let rest = cut - record.whole_bytes;
                let torn = (rest > 0).then_some(Torn { line: whole_lines + 1, bytes: rest });
                assert_eq!(record.torn, torn);
            }
        }
    }
}

/// Zeros at the end, as a machine that lost its power may leave them, are a torn line too.
#[test]
fn zeros_at_the_end_are_torn_off() {
    let text = small();
    let cut = text.len() - 20;
    let mut bytes = text.as_bytes()[..cut].to_vec();
    bytes.extend([0; 4096]);
    let record = read(&bytes).unwrap();
    assert!(record.torn.is_some() && !record.is_finished());
}

/// Any flipped bit is found, in the line where it is (or at its end, when two lines ran together).
#[test]
fn any_flipped_bit_is_found() {
    let text = small();
    let mut line = 1;
    for at in 0..text.len() {
        for bit in 0..8 {
            let mut bytes = text.as_bytes().to_vec();
            bytes[at] ^= 1 << bit;
            match read(&bytes) {
                // The last line feed is gone.
                Ok(record) => assert!(record.torn.is_some() && at == text.len() - 1, "byte {at}"),
                Err(fault) => assert_eq!(fault.line, line, "byte {at}, bit {bit}: {fault}"),
            }
        }
        line += usize::from(text.as_bytes()[at] == b'\n');
    }
}

/// Lines taken away, doubled or swapped are found where the order breaks.
#[test]
fn lines_taken_away_doubled_or_swapped_are_found() {
    let text = small();
    let lines: Vec<&str> = text.split_inclusive('\n').collect();
    for i in 0..lines.len() - 1 {
        let mut less = lines.clone();
        less.remove(i);
        let mut twice = lines.clone();
        twice.insert(i, lines[i]);
        let mut swapped = lines.clone();
        swapped.swap(i, i + 1);
        for (what, changed, place) in
            [("less", less, i + 1), ("twice", twice, i + 2), ("swapped", swapped, i + 1)]
        {
            let fault = read(changed.concat().as_bytes()).unwrap_err();
            assert_eq!(fault.line, place, "{what} at {i}: {fault}");
        }
    }
}
