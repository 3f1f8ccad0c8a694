//! Safety devices: set points, hysteresis, and what keeps a pressure switch from closing.

use approx::assert_relative_eq;
use enum_map::EnumMap;
use quarterturn::appliance::draft::Draft;
use quarterturn::appliance::safety::{
    Hose, LowGasSwitch, Points, Safety, Sensing, SetPoints, SwitchState,
};
use quarterturn::parts::{Level, Levels};
use quarterturn::units::{PA_PER_INWC, k_from_f};

const ROOM_K: f64 = 294.0;
const LOW: f64 = 0.7;
const LEVELS: &[Level] = Levels::two((), ()).list();

/// The pressure switch of one level in this state, the others sound.
fn stuck(level: Level, state: SwitchState) -> EnumMap<Level, SwitchState> {
    EnumMap::from_fn(|it| if it == level { state } else { SwitchState::Works })
}

fn contacts(safety: &mut Safety, inducer: f64) -> (bool, bool) {
    safety.feel(inducer, ROOM_K, 0.0);
    (*safety.switches().first(), *safety.switches().top())
}

/// The low-gas switch's published points: closes at 8.0 in. w.c. rising, opens at 6.0 falling, and
/// anywhere from 5.4 to 6.6 within its tolerance (a two-stage furnace service manual).
#[test]
fn the_low_gas_switch_has_its_published_hysteresis() {
    for opens in [5.4, 6.0, 6.6] {
        let points = Points { closes_pa: 8.0 * PA_PER_INWC, opens_pa: opens * PA_PER_INWC };
        let mut safety = Safety::with_points(SetPoints::of(LEVELS), LowGasSwitch::Fitted(points));
        let above = opens + 0.05;
        let below = opens - 0.05;
        let steps = [(7.9, false), (8.1, true), (above, true), (below, false), (7.0, false)];
        for (inwc, closed) in steps {
            safety.feel(0.0, ROOM_K, inwc * PA_PER_INWC);
            assert_eq!(safety.low_gas(), closed, "{inwc}, opens at {opens}");
        }
    }
    let mut nominal = Safety::new(LEVELS, LowGasSwitch::NOMINAL);
    for (inwc, closed) in [(8.1, true), (6.05, true), (5.95, false)] {
        nominal.feel(0.0, ROOM_K, inwc * PA_PER_INWC);
        assert_eq!(nominal.low_gas(), closed, "{inwc}");
    }
    assert!(Safety::new(LEVELS, LowGasSwitch::Absent).low_gas());
}

/// Healthy: both switches open at rest, the low one made on low, both made on high; draft goes with
/// the square of the speed (fan laws).
#[test]
fn switches_follow_the_inducer() {
    let mut safety = Safety::new(LEVELS, LowGasSwitch::Absent);
    assert_eq!(contacts(&mut safety, 0.0), (false, false));
    assert_eq!(contacts(&mut safety, LOW), (true, false));
    let low_pa = safety.felt_pa();
    assert_eq!(contacts(&mut safety, 1.0), (true, true));
    assert_relative_eq!(safety.felt_pa() * LOW * LOW, low_pa, max_relative = 1e-12);
    assert_eq!(contacts(&mut safety, 0.0), (false, false));
}

/// A vent that closes by and by first keeps the high switch open, then the low one; an intake the
/// same; air flow falls all the way.
#[test]
fn a_blocked_vent_opens_the_high_switch_first() {
    for intake in [false, true] {
        let mut order = Vec::new();
        let mut flow = f64::INFINITY;
        for percent in 0..=99 {
            let blocked = f64::from(percent) / 100.0;
            let draft = if intake {
                Draft { intake_blocked: blocked, ..Draft::default() }
            } else {
                Draft { vent_blocked: blocked, ..Draft::default() }
            };
            assert!(percent == 0 || draft.volume_share() < flow);
            flow = draft.volume_share();
            let mut safety = Safety::new(LEVELS, LowGasSwitch::Absent);
            safety.set_draft(draft);
            let (_, high) = contacts(&mut safety, 1.0);
            let mut safety = Safety::new(LEVELS, LowGasSwitch::Absent);
            safety.set_draft(draft);
            let (low, _) = contacts(&mut safety, LOW);
            if order.last() != Some(&(low, high)) {
                order.push((low, high));
            }
        }
        assert_eq!(order, [(true, true), (true, false), (false, false)], "intake {intake}");
    }
}

/// Hose off, hose split, water in the hose, a contact that sticks: what each does at rest, on low
/// and on high.
#[test]
fn what_spoils_a_pressure_switch() {
    let sound = Sensing::default();
    let table = [
        (sound, [(false, false), (true, false), (true, true)]),
        (Sensing { hose: Hose::Off, ..sound }, [(false, false); 3]),
        (Sensing { hose: Hose::Split, ..sound }, [(false, false), (false, false), (true, false)]),
        (
            Sensing { water_pa: 0.5 * PA_PER_INWC, ..sound },
            [(false, false), (false, false), (true, false)],
        ),
        (
            Sensing { switches: stuck(Level::Low, SwitchState::StuckClosed), ..sound },
            [(true, false), (true, false), (true, true)],
        ),
        (
            Sensing { switches: stuck(Level::High, SwitchState::StuckOpen), ..sound },
            [(false, false), (true, false), (true, false)],
        ),
    ];
    for (sensing, wanted) in table {
        let found = [0.0, LOW, 1.0].map(|inducer| {
            let mut safety = Safety::new(LEVELS, LowGasSwitch::Absent);
            safety.set_sensing(sensing);
            contacts(&mut safety, inducer)
        });
        assert_eq!(found, wanted, "{sensing:?}");
    }
}

/// Thin air makes less draft: 0.743 of standard pressure at 8,000 ft (ISA) leaves the high switch
/// of our appliance little to spare, and a partly blocked vent is enough there to keep it open.
#[test]
fn altitude_takes_draft_away() {
    let at = |vent_blocked: f64| {
        let mut safety = Safety::new(LEVELS, LowGasSwitch::Absent);
        safety.set_draft(Draft { vent_blocked, air_density: 0.743, ..Draft::default() });
        contacts(&mut safety, 1.0).1
    };
    assert!(at(0.0));
    assert!(!at(0.35));
    let mut low_land = Safety::new(LEVELS, LowGasSwitch::Absent);
    low_land.set_draft(Draft { vent_blocked: 0.35, ..Draft::default() });
    assert!(contacts(&mut low_land, 1.0).1);
}

/// The limit opens hot, resets by itself when cool enough; a roll-out waits for a hand.
#[test]
fn the_limit_resets_itself_and_the_rollout_does_not() {
    let mut safety = Safety::new(LEVELS, LowGasSwitch::Absent);
    for (deg_f, closed) in [(189.0, true), (191.0, false), (160.0, false), (149.0, true)] {
        safety.feel(0.0, k_from_f(deg_f), 0.0);
        assert_eq!(safety.limit(), closed, "{deg_f}");
    }
    assert!(safety.rollout() && !safety.reset_rollout());
    safety.roll_out();
    for _ in 0..100 {
        safety.feel(0.0, ROOM_K, 0.0);
    }
    assert!(!safety.rollout());
    assert!(safety.reset_rollout() && safety.rollout());
}
