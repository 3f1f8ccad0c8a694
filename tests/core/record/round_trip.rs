//! What is written is read again, to the byte.

use quarterturn::hands::action::Action;
use quarterturn::record::{Ended, Full, Line, Note, What, Writer, is_mark_due, read, whole};
use quarterturn::rng::stream;
use quarterturn::scenario::builtin::HEALTHY;

use super::{header, small, whole_job};
use crate::bench::random::action;

/// Reading and writing again gives the same bytes.
#[test]
fn a_record_round_trips_to_the_byte() {
    for text in [small(), whole_job(5).0] {
        let record = read(text.as_bytes()).unwrap();
        assert_eq!(whole(&record.header, &record.lines).unwrap(), text);
        assert!(record.is_finished() && record.torn.is_none());
        assert_eq!(record.whole_bytes, text.len());
    }
}

/// The small record holds what was done, in its order, with its marks.
#[test]
fn lines_stand_in_the_order_of_the_play() {
    let record = read(small().as_bytes()).unwrap();
    let ticks: Vec<_> = record.lines.iter().map(|line| line.tick).collect();
    assert_eq!(ticks, [0, 0, 40, 40, 249, 250, 250, 300, 300, 500, 511, 600, 610, 610]);
    let marks: Vec<_> = record
        .lines
        .iter()
        .filter(|line| matches!(line.what, What::Mark(_)))
        .map(|line| line.tick)
        .collect();
    assert_eq!(marks, [0, 250, 500]);
    assert_eq!(record.lines[8].what, What::Note(Note::Hint));
    assert!(matches!(record.lines[13].what, What::End { how: Ended::HandedOver, .. }));
}

/// Every action there is, sensible or absurd, reads back as itself.
#[test]
fn every_action_round_trips() {
    let mut stream = stream(11, "record");
    let lines: Vec<Line> = (0..20_000)
        .map(|i| {
            let tick = i / 1000;
            let what = if i == 0 { What::Mark(7) } else { What::Do(action(&mut stream)) };
            Line { tick, what }
        })
        .collect();
    let text = whole(&header(&HEALTHY[0], u64::MAX), &lines).unwrap();
    let record = read(text.as_bytes()).unwrap();
    assert_eq!(record.lines, lines);
    assert_eq!(record.header.seed, u64::MAX);
}

/// What could not be read again is not written, and the record goes on unharmed.
#[test]
fn a_writer_refuses_what_a_reader_would_refuse() {
    let (mut writer, mut text) = Writer::begin(&header(&HEALTHY[0], 1)).unwrap();
    assert_eq!(writer.action(1, &Action::PutDown), Err(Full::Mark), "tick 0 has no mark yet");
    text += &writer.mark(0, 1).unwrap();
    assert_eq!(writer.mark(0, 1), Err(Full::Mark));
    text += &writer.action(9, &Action::PutDown).unwrap();
    assert_eq!(writer.action(8, &Action::PutDown), Err(Full::Backwards));
    assert_eq!(writer.mark(10, 1), Err(Full::Mark));
    assert_eq!(writer.action(251, &Action::PutDown), Err(Full::Mark));
    assert_eq!(writer.action(u64::MAX, &Action::PutDown), Err(Full::Ticks));
    text += &writer.mark(250, 2).unwrap();
    text += &writer.end(250, Ended::Stopped, 2).unwrap();
    assert_eq!(writer.note(250, Note::Hint), Err(Full::Ended));
    assert_eq!(read(text.as_bytes()).unwrap().lines.len(), 4);
    assert!(is_mark_due(0) && is_mark_due(250) && !is_mark_due(251));
}

/// A header that would not be read again is refused.
#[test]
fn a_header_with_a_wrong_hash_or_name_is_refused() {
    let good = header(&HEALTHY[0], 1);
    let mut other_text = good.clone();
    other_text.scenario.text.push(' ');
    let mut long = good.clone();
    long.learner = Some("x".repeat(121));
    let mut control = good.clone();
    control.scenario.id = "two\nlines".into();
    for header in [other_text, long, control] {
        assert_eq!(Writer::begin(&header), Err(Full::Header));
    }
    assert!(Writer::begin(&good).is_ok());
}
