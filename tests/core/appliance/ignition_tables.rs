//! The ignition control by tables: the whole sequence, high, tries, flame loss, safeties.

use super::table::check;

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
         66.3 | P1lLRgf | Burning(Low)              | imb
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
         70   | P1lLRgf   | Burning(Low)                  | imb
         80   | P12lLRgf  | NextLevelCall             | imb
         80.1 | P12lLRgf  | InducerUp               | Imb
         83.2 | P12lLRgf  | NextSwitchProving | Imb
         84   | P12lhLRgf | Burning(High)                 | ImcB
         90   | P12lLRgf  | NextSwitchProving | Imb
         150.1| P12lLRgf  | Burning(Low)                  | imb
         300  | P12lLRgf  | Burning(Low)                  | imb
         451  | P12lLRgf  | InducerUp               | Imb
         455  | P12lhLRgf | Burning(High)                 | ImcB
         470  | P1lhLRgf  | Burning(Low)                  | imb",
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
        let state = if number < 5 { "Retry | i" } else { "Lockout | i" };
        table += &format!("{:.1} | P1lLRg | {state}\n", start + 37.3);
        locked = start + 37.3;
        // 15 + 17 + 5 + 30 s, and a few ticks between the states.
        start += 67.1;
    }
    // The gas of the last try is purged.
    table += &format!("{:.1} | P1lLRg | Lockout | i\n", locked + 14.0);
    table += &format!("{:.1} | P1lLRg | Lockout | -\n", locked + 16.0);
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
         70   | P1lLRgf | Burning(Low)     | imb
         80   | P1lLRg  | Burning(Low)     | imb
         80.6 | P1lLRg  | Burning(Low)     | imb
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
         100  | P1lLRgf | Burning(Low)     | imb
         110  | P1lRgf  | LimitOpen    | iB
         140  | P1lLRg  | PostPurge    | ib
         155.2| P1lLRg  | PrePurge     | ib
         189  | P1lLRgf | FlameProving | iwmb
         200  | P1lLRgf | Burning(Low)     | imb
         210  | P1lgf   | RolloutOpen  | iB
         240  | P1lLg   | RolloutOpen  | iB
         241  | P1lLRg  | PostPurge    | ib
         260  | P1lLRg  | PrePurge     | ib
         290  | P1lLRgf | FlameProving | iwmb
         300  | P1lLRgf | Burning(Low)     | imb
         310  | P1LRgf  | PressureSwitchProving | ib
         310.5| P1LRg   | PressureSwitchProving | ib
         320  | P1lLRg  | PrePurge     | ib
         353  | P1lLRgf | FlameProving | iwmb
         365  | P1lLRgf | Burning(Low)     | imb
         370  | P1lLRf  | PressureSwitchProving | ib
         370.5| P1lLR   | PressureSwitchProving | ib | waiting for gas pressure, low-gas switch open
         380  | lLRg    | Standby      | -",
    );
}
