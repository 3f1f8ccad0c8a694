//! Furnaces with one firing level and with two: lists, states under test, and the control's
//! sequence.

use quarterturn::appliance::ignition::Timings;
use quarterturn::appliance::level::{Level, Levels};
use quarterturn::appliance::test_point::Stage;

use super::table::follow;

/// A single-stage furnace has one level, which is both where the burners light and the full rate; a
/// two-stage furnace lights on low (installation manuals, makers withheld).
#[test]
fn one_level_is_first_and_top() {
    let one = Levels::one(3.5);
    let two = Levels::two(1.7, 3.5);
    assert_eq!(one.list(), [Level::Only]);
    assert_eq!(two.list(), [Level::Low, Level::High]);
    assert_eq!((one.first_level(), one.top_level()), (Level::Only, Level::Only));
    assert_eq!((two.first_level(), two.top_level()), (Level::Low, Level::High));
    assert_eq!((*one.first(), *one.top()), (3.5, 3.5));
    assert_eq!((two[Level::Low], two[Level::High]), (1.7, 3.5));
    assert_eq!((one.get(Level::Low), two.get(Level::Only)), (None, None));
    for level in Level::ALL {
        assert_eq!(Level::from_id(level.id()), Some(level));
        assert!(level.of().contains(&level));
        assert_eq!(level.is_top(), level.next().is_none());
    }
    assert_eq!(two.map(|level, pa| (level, 2.0 * pa)).top(), &(Level::High, 7.0));
}

/// The states under test follow the levels: static, each firing level, full connected load
/// (start-up sheets of furnaces, makers withheld), and static once more, as a lock-up is tested. A record
/// writes each so that it is read back, and full connected load as the first records did.
#[test]
fn states_follow_the_levels() {
    let ids = |levels: &'static [Level]| Stage::of(levels).map(Stage::id).collect::<Vec<_>>();
    assert_eq!(ids(Levels::one(()).list()), ["rest", "firing", "full-load", "rest-again"]);
    assert_eq!(ids(Levels::two((), ()).list()), ["rest", "low", "high", "full-load", "rest-again"]);
    for &stage in Stage::ALL {
        assert_eq!(Stage::from_id(stage.id()), Some(stage));
        let written = serde_json::to_string(&stage).unwrap();
        assert_eq!(serde_json::from_str::<Stage>(&written).unwrap(), stage, "{written}");
    }
    let two = Levels::two((), ()).list();
    let fired: Vec<_> = Stage::of(two).map(|stage| stage.level(two)).collect();
    assert_eq!(fired, [None, Some(Level::Low), Some(Level::High), Some(Level::High), None]);
    let written = [Stage::Rest, Stage::FullLoad, Stage::RestAgain].map(|it| serde_json::json!(it));
    assert_eq!(written, ["rest", "high-with-others", "rest-again"]);
}

/// With one level the control lights at it and stays, whatever the second contact of a thermostat
/// does, with the fans at full speed; no second coil is ever driven.
#[test]
fn a_single_stage_control_lights_and_stays() {
    follow(
        Timings::default(),
        Levels::one(()).list(),
        "0    | P1LRg    | InducerStart   | I
         3    | P1lLRg   | PrePurge       | I
         19   | P1lLRg   | IgniterWarmUp  | Iw
         36   | P1lLRgf  | FlameProving   | Iwm
         70   | P1lLRgf  | Burning(Only)  | ImB | burning
         90   | P12lLRgf | Burning(Only)  | ImB
         900  | P12lLRgf | Burning(Only)  | ImB
         901  | PlLRg    | PostPurge      | IB
         920  | PLRg     | BlowerOffDelay | B
         1020 | PLRg     | Standby        | -",
    );
}

/// A single-stage furnace whose pressure switch opens while it burns shuts the gas at once.
#[test]
fn its_pressure_switch_shuts_the_gas() {
    follow(
        Timings::default(),
        Levels::one(()).list(),
        "0   | P1LRg   | InducerStart          | I
         3   | P1lLRg  | PrePurge              | I
         36  | P1lLRgf | FlameProving          | Iwm
         70  | P1lLRgf | Burning(Only)         | ImB
         71  | P1LRgf  | PressureSwitchProving | IB",
    );
}
