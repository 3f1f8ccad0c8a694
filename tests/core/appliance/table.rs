//! Reads the ignition control's tables.
//!
//! Columns: time in seconds; inputs as letters (P power, 1 first stage, 2 second stage, l low
//! pressure switch, h high pressure switch, L limit, R roll-out, g low-gas switch, f flame, k weak
//! flame); state; outputs as letters (i inducer low, I inducer high, w igniter, m main valve, c high
//! coil, b blower low, B blower high); and, where it matters, the status in words. Inputs hold from
//! one row to the next; the state is looked at right after the row's time.

use quarterturn::appliance::ignition::{Control, Inputs, Outputs, Timings};
use quarterturn::parts::Level;

const DT_S: f64 = 0.02;

fn inputs(letters: &str) -> Inputs {
    let has = |letter: char| letters.contains(letter);
    Inputs {
        powered: has('P'),
        first: has('1'),
        second: has('2'),
        low_switch: has('l'),
        high_switch: has('h'),
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
    let fan = |speed: Option<Level>, low: &'static str, high: &'static str| match speed {
        None => "",
        Some(Level::Low) => low,
        Some(Level::High) => high,
    };
    let lit = |on: bool, letter: &'static str| if on { letter } else { "" };
    let all = [
        fan(out.inducer, "i", "I"),
        lit(out.igniter, "w"),
        lit(out.main, "m"),
        lit(out.high, "c"),
        fan(out.blower, "b", "B"),
    ]
    .concat();
    if all.is_empty() { "-".into() } else { all }
}

/// Follows a table with the default timings.
pub fn check(table: &str) {
    check_with(Timings::default(), table);
}

/// Follows a table.
pub fn check_with(timings: Timings, table: &str) {
    let mut control = Control::new(timings);
    let mut ticks = 0_u64;
    let mut now = inputs("");
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
        now = inputs(given);
        let out = control.step(DT_S, &now);
        ticks += 1;
        assert_eq!(format!("{:?}", control.state()), state, "line {number}: {line}");
        assert_eq!(outputs(&out), driven, "line {number}: {line}");
        if let [words] = said {
            assert_eq!(control.status().words(), *words, "line {number}: {line}");
        }
    }
}
