//! Good work as a script, and edits of it line by line.

use quarterturn::hands::action::Action;
use quarterturn::technician::script::action_line;
use quarterturn::units::TICKS_PER_S;
use serde::Deserialize;

use crate::marking::At;

/// One change to the script of good work. A place is named by the words that its line begins with: the
/// first such line, the last with `last` before them, all with `each`, the second with `2` and so on.
#[derive(Debug, Deserialize)]
pub enum Edit {
    /// Lines are left out.
    LeaveOut(String),
    /// All from the first place up to the next line that begins with the second are left out, that
    /// line not.
    Cut(String, String),
    /// Lines are put in before a place.
    Before(String, Vec<String>),
    /// Lines are put in after a place.
    After(String, Vec<String>),
    /// Lines are put in the place of others.
    Instead(String, Vec<String>),
    /// Every number is written otherwise.
    Numbers(How),
    /// These lines are the whole script.
    Only(Vec<String>),
}

/// How numbers are written otherwise.
#[derive(Debug, Clone, Copy, Deserialize)]
pub enum How {
    /// Cut off at a tenth of an inch.
    CutOff,
    /// Rounded to a tenth of an inch.
    Rounded,
    /// Worked out by hand in kilopascals, with two decimals (an inch is 0.25 kPa).
    KPa,
    /// Worked out by hand in millibars, with one decimal (an inch is 2.5 mbar).
    Mbar,
    /// With so much added, in thousandths of an inch.
    Added(i32),
}

/// What was done, as a script. Numbers are written as the manometer shows them, unless they are to be
/// written otherwise.
pub fn script(done: &[At], edits: &[Edit]) -> Result<Vec<String>, String> {
    let otherwise = edits.iter().find_map(|edit| {
        let Edit::Numbers(how) = edit else { return None };
        Some(*how)
    });
    let mut lines = lines(done, otherwise);
    for edit in edits {
        lines = edited(lines, edit)?;
    }
    Ok(lines.iter().map(|line| backed(line, &lines)).collect())
}

/// A finding names only readings that are on the sheet and looks that were taken: others do not speak
/// for it.
fn backed(line: &str, lines: &[String]) -> String {
    let Some((finding, grounds)) = line.split_once(" by ") else { return line.to_owned() };
    let is_there = |verb: &str, ground: &str| {
        let begins =
            |line: &String| line.strip_prefix(verb).is_some_and(|it| it.starts_with(ground));
        lines.iter().any(begins)
    };
    let mut words = grounds.split(' ');
    let mut kept = Vec::new();
    while let Some(word) = words.next() {
        let more = if word == "reading" { 3 } else { 1 };
        let ground = words.by_ref().take(more).collect::<Vec<_>>().join(" ");
        let speaks = match word {
            "reading" => is_there("write ", &ground),
            "look" => is_there("look ", &ground),
            _ => true,
        };
        if speaks {
            kept.push(format!("{word} {ground}"));
        }
    }
    if kept.is_empty() { finding.to_owned() } else { format!("{finding} by {}", kept.join(" ")) }
}

fn lines(done: &[At], otherwise: Option<How>) -> Vec<String> {
    let mut lines = Vec::new();
    let mut now = 0;
    for (tick, action) in done {
        let ticks = tick - now;
        now = *tick;
        if ticks > 0 {
            let hundredths = ticks % TICKS_PER_S * (100 / TICKS_PER_S);
            lines.push(format!("wait {}.{hundredths:02} s", ticks / TICKS_PER_S));
        }
        lines.push(match (action, otherwise) {
            (Action::Write(_), None) => {
                let line = action_line(action);
                line.split(' ').take(4).collect::<Vec<_>>().join(" ")
            }
            (Action::Write(it), Some(how)) => {
                let head = action_line(action);
                let head: Vec<&str> = head.split(' ').take(4).collect();
                format!("{} {}", head.join(" "), number(it.thousandths, how))
            }
            (other, _) => action_line(other),
        });
    }
    lines
}

/// A number of thousandths of an inch of water, written otherwise.
fn number(thousandths: i32, how: How) -> String {
    let nearest = |exact: i32, step: i32| (exact + step / 2) / step * step;
    let (thousandths, unit) = match how {
        How::CutOff => (thousandths - thousandths % 100, "inH2O"),
        How::Rounded => (nearest(thousandths, 100), "inH2O"),
        How::KPa => (nearest(thousandths / 4, 10), "kPa"),
        How::Mbar => (nearest(thousandths * 5 / 2, 100), "mbar"),
        How::Added(more) => (thousandths + more, "inH2O"),
    };
    format!("{}.{:03} {unit}", thousandths / 1000, thousandths % 1000)
}

fn edited(lines: Vec<String>, edit: &Edit) -> Result<Vec<String>, String> {
    let (place, put): (&str, &[String]) = match edit {
        Edit::Numbers(_) => return Ok(lines),
        Edit::Only(put) => return Ok(put.clone()),
        Edit::Cut(from, to) => return cut(lines, from, to),
        Edit::LeaveOut(place) => (place, &[]),
        Edit::Before(place, put) | Edit::After(place, put) | Edit::Instead(place, put) => {
            (place, put)
        }
    };
    let places = places(&lines, place)?;
    let mut all = Vec::new();
    for (i, line) in lines.into_iter().enumerate() {
        let here = places.contains(&i);
        let goes = here && matches!(edit, Edit::LeaveOut(_) | Edit::Instead(..));
        let after = here && matches!(edit, Edit::After(..));
        if here && !after {
            all.extend_from_slice(put);
        }
        if !goes {
            all.push(line);
        }
        if after {
            all.extend_from_slice(put);
        }
    }
    Ok(all)
}

fn cut(mut lines: Vec<String>, from: &str, to: &str) -> Result<Vec<String>, String> {
    let first = places(&lines, from)?[0];
    let rest = places(&lines[first..], to)?[0];
    lines.drain(first..first + rest);
    Ok(lines)
}

fn places(lines: &[String], place: &str) -> Result<Vec<usize>, String> {
    let (which, words) = match place.split_once(' ') {
        Some((which, words)) if matches!(which, "each" | "last") || counts(which) => (which, words),
        Some(_) | None => ("1", place),
    };
    let begins = |(i, line): (usize, &String)| line.starts_with(words).then_some(i);
    let all: Vec<usize> = lines.iter().enumerate().filter_map(begins).collect();
    let chosen = match which {
        "each" => all.get(..),
        "last" => all.last().map(std::slice::from_ref),
        count => all.get(count.parse::<usize>().unwrap() - 1).map(std::slice::from_ref),
    };
    let chosen = chosen.filter(|it| !it.is_empty()).map(<[usize]>::to_vec);
    chosen.ok_or_else(|| format!("no line for “{place}”"))
}

/// Whether a word is a count from 1.
fn counts(word: &str) -> bool {
    word.parse::<usize>().is_ok_and(|it| it > 0)
}
