//! The ignition control by tables: what it refuses, what it remembers, and what it says.

use quarterturn::appliance::ignition::{ChartLine, ControlStatus, Timings};

use super::table::{check, check_with};

/// A pressure switch that is closed at rest starts nothing, and the status says so; once it opens,
/// the call is answered. Without a call nothing is said.
#[test]
fn a_switch_closed_at_rest_starts_nothing() {
    check(
        "0    | PlLRg  | Standby      | - | waiting, no call for heat
         6    | P1lLRg | Standby      | - | not starting, pressure switch closed at rest
         600  | P1lLRg | Standby      | - | not starting, pressure switch closed at rest
         601  | PlLRg  | Standby      | - | waiting, no call for heat
         602  | P1lLRg | Standby      | - | not starting, pressure switch closed at rest
         603  | P1LRg  | InducerStart | I | inducer starting",
    );
}

/// A flame that is felt without a call (a valve that lets by) locks out within seconds, and both
/// fans run as long as it is felt (EN 298: a false flame leads to lockout). The hour counts from
/// its end.
#[test]
fn a_flame_without_a_call_keeps_the_fans_on() {
    check(
        "0    | PLRgf  | Standby | -
         3.9  | PLRgf  | Standby | -
         4.1  | PLRgf  | Lockout | ib | locked out, flame felt with the gas shut
         900  | P1LRgf | Lockout | ib | locked out, flame felt with the gas shut
         901  | P1LRg  | Lockout | -  | locked out, flame felt with the gas shut
         4500 | P1LRg  | Lockout | -
         4502 | P1LRg  | InducerStart | I",
    );
}

/// A flame that goes on burning after the call has ended is such a flame too.
#[test]
fn an_after_flame_locks_out() {
    check(
        "0    | P1LRg   | InducerStart | I
         3    | P1lLRg  | PrePurge     | i
         36   | P1lLRgf | FlameProving | iwm
         70   | P1lLRgf | Burning(Low)     | imb
         80   | PlLRgf  | PostPurge    | ib
         83.9 | PlLRgf  | PostPurge    | ib
         84.1 | PlLRgf  | Lockout      | ib
         90   | PlLRg   | Lockout      | ib
         180  | PLRg    | Lockout      | -",
    );
}

/// A lockout outlasts a limit that opens and closes; so does its reason.
#[test]
fn a_lockout_outlasts_the_limit() {
    let timings = Timings { tries: 1, ..Timings::default() };
    check_with(
        timings,
        "0    | P1LRg  | InducerStart | I
         3    | P1lLRg | PrePurge     | i
         41   | P1lLRg | Lockout      | i  | locked out after its tries
         60   | P1LRg  | Lockout      | -
         70   | P1Rg   | LimitOpen    | iB
         80   | P1LRg  | Lockout      | ib | locked out after its tries
         200  | P1LRg  | Lockout      | -
         3639 | P1LRg  | Lockout      | -
         3642 | P1LRg  | InducerStart | I",
    );
}

/// After a lockout by time all tries are there again.
#[test]
fn after_the_hour_all_tries_are_back() {
    let timings = Timings { tries: 2, lockout_s: 100.0, ..Timings::default() };
    check_with(
        timings,
        "0    | P1LRg  | InducerStart | I
         3    | P1lLRg | PrePurge     | i
         41   | P1lLRg | Retry        | i | no flame, trying again soon
         110  | P1lLRg | Lockout      | i
         130  | P1LRg  | Lockout      | -
         208.5| P1LRg  | InducerStart | I
         211  | P1lLRg | PrePurge     | i
         249  | P1lLRg | Retry        | i",
    );
}

/// A proved flame that is lost again and again in one call locks out at the fifth loss, although
/// each light-up succeeds.
#[test]
fn five_lost_flames_lock_out() {
    let mut table = String::from("0 | P1LRg | InducerStart | I\n");
    let mut start = 3.0;
    for number in 1..=5 {
        table +=
            &format!("{start:.1} | P1lLRg | PrePurge | i{}\n", if number > 1 { "b" } else { "" });
        // Pre-purge 15 s, igniter 17 s; proved after 3 s; the blower 30 s after the gas.
        table += &format!(
            "{:.1} | P1lLRgf | FlameProving | iwm{}\n",
            start + 33.0,
            if number > 1 { "b" } else { "" }
        );
        table += &format!("{:.1} | P1lLRgf | Burning(Low) | imb\n", start + 70.0);
        let (state, said) = if number < 5 {
            ("Retry", "flame lost, trying again soon")
        } else {
            ("Lockout", "locked out, flame lost too often")
        };
        table += &format!("{:.1} | P1lLRg | Burning(Low) | imb\n", start + 71.0);
        table += &format!("{:.1} | P1lLRg | {state} | ib | {said}\n", start + 71.9);
        start += 102.0;
    }
    check(&table);
}

/// A pressure switch that does not close costs a try, with the inducer on; its reason is said.
#[test]
fn a_switch_that_stays_open_is_named() {
    let timings = Timings { tries: 2, ..Timings::default() };
    check_with(
        timings,
        "0    | P1LRg  | InducerStart          | I
         3    | P1LRg  | PressureSwitchProving | i | waiting for the pressure switch
         61   | P1LRg  | PressureSwitchProving | i
         63   | P1LRg  | Retry                 | i | pressure switch did not close, trying again soon
         93   | P1LRg  | PressureSwitchProving | i
         153  | P1LRg  | Lockout               | i | locked out, pressure switch did not close",
    );
}

/// Low gas: the low-gas switch opens while burning, the gas shuts, and the status names it.
#[test]
fn low_gas_is_named() {
    check(
        "0    | P1LRg   | InducerStart          | I
         3    | P1lLR   | PressureSwitchProving | i | waiting for gas pressure, low-gas switch open
         10   | P1lLRg  | PrePurge              | i
         45   | P1lLRgf | FlameProving          | iwm
         80   | P1lLRgf | Burning(Low)              | imb
         90   | P1lLR   | PressureSwitchProving | ib | waiting for gas pressure, low-gas switch open
         151  | P1lLR   | Retry                 | ib | gas pressure too low, trying again soon",
    );
}

/// A weak flame burns on, and is said to be weak; published: 1.5 µA and more is normal.
#[test]
fn a_weak_flame_is_named() {
    check(
        "0    | P1LRg   | InducerStart | I
         3    | P1lLRg  | PrePurge     | i
         36   | P1lLRgk | FlameProving | iwm
         70   | P1lLRgk | Burning(Low)     | imb | burning on low, flame current weak
         80   | P1lLRgf | Burning(Low)     | imb | burning on low",
    );
}

/// With the control's own timer high comes by itself after its minutes on low, and stays.
#[test]
fn high_comes_by_itself_where_the_control_has_a_timer() {
    let timings = Timings { auto_next_min: Some(10.0), ..Timings::default() };
    check_with(
        timings,
        "0    | P1LRg     | InducerStart | I
         3    | P1lLRg    | PrePurge     | i
         36   | P1lLRgf   | FlameProving | iwm
         70   | P1lLRgf   | Burning(Low)     | imb
         660  | P1lLRgf   | Burning(Low)     | imb
         670  | P1lhLRgf  | Burning(High)    | ImcB
         2000 | P1lhLRgf  | Burning(High)    | ImcB",
    );
}

/// The second stage counts only with the first; a call that ends on high ends all of it.
#[test]
fn the_second_stage_alone_is_no_call() {
    check(
        "0    | P2LRg     | Standby      | -
         10   | P2LRg     | Standby      | -
         11   | P12LRg    | InducerStart | I
         14   | P12lLRg   | PrePurge     | i
         47   | P12lLRgf  | FlameProving | iwm
         95   | P12lhLRgf | Burning(High)    | ImcB
         100  | P2lhLRgf  | PostPurge    | ib
         101  | P2lLRg    | PostPurge    | ib
         116  | P2LRg     | BlowerOffDelay | b
         206  | P2LRg     | Standby      | -",
    );
}

/// A call that returns while the blower coasts is answered at once, and one that returns in the
/// post-purge after it; the blower runs on.
#[test]
fn a_call_may_return() {
    check(
        "0    | P1LRg   | InducerStart   | I
         3    | P1lLRg  | PrePurge       | i
         36   | P1lLRgf | FlameProving   | iwm
         70   | P1lLRgf | Burning(Low)       | imb
         80   | PlLRgf  | PostPurge      | ib
         81   | P1lLRg  | PostPurge      | ib
         96   | P1lLRg  | PrePurge       | ib
         97   | PlLRg   | PostPurge      | ib
         113  | PLRg    | BlowerOffDelay | b
         120  | P1lLRg  | BlowerOffDelay | b
         121  | P1LRg   | InducerStart   | Ib",
    );
}

/// A limit that opens before the blower ever ran leaves heat behind: the blower coasts afterwards.
#[test]
fn heat_is_cleared_after_an_early_limit() {
    check(
        "0    | P1LRg   | InducerStart   | I
         3    | P1lLRg  | PrePurge       | i
         36   | P1lLRgf | FlameProving   | iwm
         45   | P1lRgf  | LimitOpen      | iB
         45.5 | PLRg    | LimitOpen      | iB
         47   | PLRg    | PostPurge      | ib
         62   | PLRg    | BlowerOffDelay | b
         152  | PLRg    | Standby        | -",
    );
}

/// No two lines of the door's chart flash alike, in whole rounds too.
#[test]
fn every_sign_has_flashes_of_its_own() {
    for (i, one) in ChartLine::ALL.iter().enumerate() {
        assert!(!one.words().is_empty() && !one.flashes().is_empty());
        for other in &ChartLine::ALL[i + 1..] {
            assert_ne!(one.flashes(), other.flashes(), "{one:?} {other:?}");
            assert_ne!(one.words(), other.words());
        }
    }
}

/// Every status has words of its own, and all of them are on the list: scripts wait for a status by
/// its first words.
#[test]
fn every_status_has_words_of_its_own() {
    for (i, one) in ControlStatus::ALL.iter().enumerate() {
        assert!(!one.words().is_empty());
        for other in &ControlStatus::ALL[i + 1..] {
            assert_ne!(one.words(), other.words(), "{one:?} {other:?}");
        }
    }
    let first_words = ControlStatus::beginning_with("burning on");
    let all = |it: &ControlStatus| it.burns_at().is_some();
    assert!(first_words.len() == 4 && first_words.iter().all(all), "{first_words:?}");
    assert!(ControlStatus::beginning_with("burns").is_empty());
    // A row of the chart for each but the dark lamp, and no row without a status.
    let rows = |line| ControlStatus::ALL.iter().any(|it| it.chart_line() == Some(line));
    assert!(ChartLine::ALL.into_iter().all(rows));
    assert_eq!(ControlStatus::NoPower.chart_line(), None);
}
