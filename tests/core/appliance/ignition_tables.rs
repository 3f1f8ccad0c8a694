//! The ignition control by tables: what it feels, and what it then is and drives.
//!
//! Columns: time in seconds; inputs as letters (P power, 1 first stage, 2 second stage, l low
//! pressure switch, h high pressure switch, L limit, R roll-out, g low-gas switch, f flame); state;
//! outputs as letters (i inducer low, I inducer high, w igniter, m main valve, c high coil, b blower
//! low, B blower high). Inputs hold from one row to the next; the state is looked at right after the
//! row's time.

use quarterturn::appliance::ignition::{Control, Inputs, Outputs, Speed, Timings};

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
        flame_ua: if has('f') { 3.0 } else { 0.0 },
    }
}

fn outputs(out: &Outputs) -> String {
    let fan = |speed: Speed, low: &'static str, high: &'static str| match speed {
        Speed::Off => "",
        Speed::Low => low,
        Speed::High => high,
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

fn check(table: &str) {
    let mut control = Control::new(Timings::default());
    let mut ticks = 0_u64;
    let mut now = inputs("");
    for (number, line) in table.lines().enumerate() {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let [time, given, state, driven] = cells[..] else { continue };
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
    }
}

/// A call for heat lights on low, in published times: pre-purge 15 s, igniter 17 s, blower 30 s
/// after the gas; satisfied, it purges and lets the blower coast.
#[test]
fn lights_on_low_and_comes_to_rest() {
    check(
        "0    | PLRg    | Standby               | -
         1    | P1LRg   | InducerStart          | I
         3.1  | P1LRg   | PressureSwitchProving | i
         4    | P1lLRg  | PrePurge              | i
         18.9 | P1lLRg  | PrePurge              | i
         19.1 | P1lLRg  | IgniterWarmUp         | iw
         36.0 | P1lLRg  | IgniterWarmUp         | iw
         36.2 | P1lLRg  | TrialForIgnition      | iwm
         38   | P1lLRgf | FlameProving          | iwm
         40.5 | P1lLRgf | FlameProving          | im
         41.1 | P1lLRgf | BlowerOnDelay         | im
         66.0 | P1lLRgf | BlowerOnDelay         | im
         66.3 | P1lLRgf | LowStage              | imb
         200  | PlLRgf  | PostPurge             | ib
         201  | PlLRg   | PostPurge             | ib
         215.1| PLRg    | BlowerOffDelay        | b
         305.2| PLRg    | Standby               | -",
    );
}

/// High comes only when called, after its pressure switch has closed; without that switch low goes
/// on and high is tried again minutes later.
#[test]
fn high_needs_its_pressure_switch() {
    check(
        "0    | P1LRg     | InducerStart              | I
         3    | P1lLRg    | PrePurge                  | i
         36   | P1lLRgf   | FlameProving              | iwm
         70   | P1lLRgf   | LowStage                  | imb
         80   | P12lLRgf  | HighStageCall             | imb
         80.1 | P12lLRgf  | HighInducer               | Imb
         83.2 | P12lLRgf  | HighPressureSwitchProving | Imb
         84   | P12lhLRgf | HighStage                 | ImcB
         90   | P12lLRgf  | HighPressureSwitchProving | Imb
         150.1| P12lLRgf  | LowStage                  | imb
         300  | P12lLRgf  | LowStage                  | imb
         451  | P12lLRgf  | HighInducer               | Imb
         455  | P12lhLRgf | HighStage                 | ImcB
         470  | P1lhLRgf  | LowStage                  | imb",
    );
}

/// No flame within the trial: gas off, another purge, five tries, then an hour's lockout that only
/// the power cuts short.
#[test]
fn five_tries_then_lockout() {
    let mut table = String::from("0 | P1lLRg | Standby | -\n0.1 | P1LRg | InducerStart | I\n");
    let mut start = 3.0;
    let mut locked = 0.0;
    for number in 1..=5 {
        table += &format!("{start:.1} | P1lLRg | PrePurge | i\n");
        // Pre-purge 15 s, igniter 17 s, trial 5 s.
        table += &format!("{:.1} | P1lLRg | TrialForIgnition | iwm\n", start + 32.3);
        table += &format!("{:.1} | P1lLRg | TrialForIgnition | im\n", start + 36.7);
        let state = if number < 5 { "Retry | i" } else { "Lockout | -" };
        table += &format!("{:.1} | P1lLRg | {state}\n", start + 37.3);
        locked = start + 37.3;
        // 15 + 17 + 5 + 30 s, and a few ticks between the states.
        start += 67.1;
    }
    table += &format!("{:.1} | P1lLRg | Lockout | -\n", locked + 3590.0);
    table += &format!("{:.1} | 1LRg | Standby | -\n", locked + 3595.0);
    table += &format!("{:.1} | P1LRg | InducerStart | I\n", locked + 3596.0);
    check(&table);
}

/// A lost flame shuts the gas within a second (published: 0.8 to 1 s) and costs a try.
#[test]
fn a_lost_flame_shuts_the_gas_within_a_second() {
    check(
        "0    | P1LRg   | InducerStart | I
         3    | P1lLRg  | PrePurge     | i
         36   | P1lLRgf | FlameProving | iwm
         70   | P1lLRgf | LowStage     | imb
         80   | P1lLRg  | LowStage     | imb
         80.6 | P1lLRg  | LowStage     | imb
         80.9 | P1lLRg  | Retry        | ib",
    );
}

/// Limit, roll-out, low pressure switch and low-gas switch each shut the gas at once; roll-out
/// rules over the limit, and a pressure switch that is closed at rest starts nothing.
#[test]
fn safeties_shut_the_gas_at_once() {
    check(
        "0    | P1lLRg  | Standby      | -
         30   | P1lLRg  | Standby      | -
         31   | P1LRg   | InducerStart | I
         34   | P1lLRg  | PrePurge     | i
         67   | P1lLRgf | FlameProving | iwm
         100  | P1lLRgf | LowStage     | imb
         110  | P1lRgf  | LimitOpen    | iB
         140  | P1lLRg  | PostPurge    | ib
         155.2| P1lLRg  | PrePurge     | ib
         189  | P1lLRgf | FlameProving | iwmb
         200  | P1lLRgf | LowStage     | imb
         210  | P1lgf   | RolloutOpen  | iB
         240  | P1lLg   | RolloutOpen  | iB
         241  | P1lLRg  | PostPurge    | ib
         260  | P1lLRg  | PrePurge     | ib
         290  | P1lLRgf | FlameProving | iwmb
         300  | P1lLRgf | LowStage     | imb
         310  | P1LRgf  | PressureSwitchProving | ib
         320  | P1lLRg  | PrePurge     | ib
         353  | P1lLRgf | FlameProving | iwmb
         365  | P1lLRgf | LowStage     | imb
         370  | P1lLRf  | PressureSwitchProving | ib
         380  | lLRg    | Standby      | -",
    );
}
