//! Reads the ignition control's tables.
//!
//! Columns: time in seconds; inputs as letters (P power, 1 first stage, 2 second stage, l first
//! pressure switch, h second one, L limit, R roll-out, g low-gas switch, f flame, k weak
//! flame); state; outputs as letters (i inducer at reduced speed, I at full speed, w igniter, m main
//! valve, c second coil, b blower at reduced speed, B at full speed); and, where it matters, the status in words. Inputs hold from
//! one row to the next; the state is looked at right after the row's time.

use quarterturn::appliance::ignition::{Control, Inputs, Outputs, Timings};
use quarterturn::parts::{Level, Levels};

const DT_S: f64 = 0.02;

fn inputs(letters: &str, levels: &[Level]) -> Inputs {
    let has = |letter: char| letters.contains(letter);
    Inputs {
        powered: has('P'),
        call: match (has('1'), has('2'), levels) {
            (false, _, _) => None,
            (true, true, _) => levels.last().copied(),
            (true, false, _) => levels.first().copied(),
        },
        switches: match levels {
            [_] => Levels::one(has('l')),
            _ => Levels::two(has('l'), has('h')),
        },
        limit: has('L'),
        rollout: has('R'),
        low_gas: has('g'),
        flame_ua: if has('f') {
            3.0
        } else if has('k') {
            1.2
        } else {
            0.0
        },
    }
}

fn outputs(out: &Outputs) -> String {
    let fan = |speed: Option<Level>, reduced: &'static str, full: &'static str| match speed {
        None => "",
        Some(level) if level.is_top() => full,
        Some(_) => reduced,
    };
    let lit = |on: bool, letter: &'static str| if on { letter } else { "" };
    let all = [
        fan(out.inducer, "i", "I"),
        lit(out.igniter, "w"),
        lit(out.valve.is_some(), "m"),
        lit(out.valve.is_some_and(|level| !level.is_first()), "c"),
        fan(out.blower, "b", "B"),
    ]
    .concat();
    if all.is_empty() { "-".into() } else { all }
}

/// Follows a table with the default timings.
pub fn check(table: &str) {
    check_with(Timings::default(), table);
}

/// Follows a table of a furnace with two levels.
pub fn check_with(timings: Timings, table: &str) {
    follow(timings, Levels::two((), ()).list(), table);
}

/// Follows a table of a furnace with these levels.
pub fn follow(timings: Timings, levels: &'static [Level], table: &str) {
    let mut control = Control::new(timings, levels);
    let mut ticks = 0_u64;
    let mut now = inputs("", levels);
    for (number, line) in table.lines().enumerate() {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let [time, given, state, driven, ref said @ ..] = cells[..] else {
            assert!(line.trim().is_empty(), "line {number}: {line}");
            continue;
        };
        let time_s: f64 = time.parse().unwrap_or_else(|_| panic!("line {number}: `{time}`"));
        while (ticks as f64) * DT_S < time_s - 1e-9 {
            control.step(DT_S, &now);
            ticks += 1;
        }
        now = inputs(given, levels);
        let out = control.step(DT_S, &now);
        ticks += 1;
        assert_eq!(format!("{:?}", control.state()), state, "line {number}: {line}");
        assert_eq!(outputs(&out), driven, "line {number}: {line}");
        if let [words] = said {
            assert_eq!(control.status().words(), *words, "line {number}: {line}");
        }
    }
}
