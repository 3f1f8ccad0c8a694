//! Things that follow with a first-order lag.

use crate::appliance::airside::AirSide;
use crate::appliance::burner::{BurnerIn, Burners};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::instrument::manometer::Manometer;
use crate::parts::Levels;
use crate::physics::fluid::Gas;
use crate::physics::network::NetworkBuilder;
use crate::physics::regulator::{Behaviour, RegulatorSpec};
use crate::site::tank::Tank;
use crate::units::{P_STD_PA, TICK_S, k_from_f};

pub(super) fn checks() -> Vec<Check> {
    vec![manometer(), preload(), igniter(), shape()]
}

/// The share of a step that is made after `t` time constants.
fn made(t: f64) -> f64 {
    1.0 - libm::exp(-t)
}

/// The manometer's lag behind a step of pressure, against the first-order law.
fn manometer() -> Check {
    let mut rows = Vec::new();
    for lag_s in [0.4, 1.0, 2.0] {
        let mut meter = Manometer::new(1e6, 0.0, 0.0, 600.0, lag_s);
        let mut tick = 0_u32;
        for constants in [0.5, 1.0, 2.0, 3.0] {
            while f64::from(tick) * TICK_S < constants * lag_s - 1e-9 {
                meter.step(u64::from(tick), TICK_S, 1_000.0);
                tick += 1;
            }
            let label = t!("row-lag", lag_s = lag_s.to_string(), constants = constants.to_string());
            let row = Row::new(label, 100.0 * made(constants), meter.felt_pa() / 10.0);
            rows.push(row.on(format!("{lag_s} s"), constants));
        }
    }
    check("closed.lag.manometer", rows)
}

/// The gas valve's preload after a change of stage.
fn preload() -> Check {
    let wanted =
        Behaviour { preload_lag_s: 1.0, ..Behaviour::new(871.8, 941.5, 8.7, 1_320.0, 6e-4) };
    let mut rows = Vec::new();
    if let Ok(spec) = RegulatorSpec::from_behaviour(&wanted, &Gas::natural(), P_STD_PA) {
        let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
        let (from, to) = (b.fixed(1_320.0), b.fixed(0.0));
        let element = b.regulator(from, to, spec);
        let mut network = b.build();
        let force = |network: &crate::physics::network::Network| {
            network.regulator(element).map_or(f64::NAN, |it| it.preload_n())
        };
        let before = force(&network);
        if let Some(regulator) = network.regulator_mut(element) {
            regulator.set_turns(0.5 * spec.turns);
        }
        let step = 0.5 * before;
        for seconds in 1..=5_u32 {
            for _ in 0..50 {
                network.step(TICK_S);
            }
            let t = f64::from(seconds);
            let share = 100.0 * (before - force(&network)) / step;
            rows.push(Row::new(format!("{t:.0} s"), 100.0 * made(t), share).on("", t));
        }
    }
    check("closed.lag.preload", rows)
}

/// The igniter's temperature, by its glow.
fn igniter() -> Check {
    let warm_up_s = 20.0;
    let mut burners = Burners::new(&[2e-3; 4], Levels::two(0.7 * 6e-4, 6e-4), warm_up_s);
    let input = BurnerIn { flow_m3_s: 0.0, igniter: true, inducer: 0.7 };
    let mut rows = Vec::new();
    for tick in 1..=1_000_u32 {
        burners.step(TICK_S, &Gas::natural(), &input);
        if tick.is_multiple_of(125) && tick > 125 {
            let t = f64::from(tick) * TICK_S;
            // From 300 K towards 1,600 K with a quarter of the warm-up as lag; it glows from 850 K.
            let hot_k = 300.0 + 1_300.0 * made(4.0 * t / warm_up_s);
            let glow = ((hot_k - 850.0) / 750.0).max(0.0);
            rows.push(
                Row::new(format!("{t:.1} s"), 100.0 * glow, 100.0 * burners.glow()).on("", t),
            );
        }
    }
    check("closed.lag.igniter", rows)
}

/// What is left of a first-order step after twice the time is the square of what is left after it.
fn shape() -> Check {
    let outside_k = k_from_f(40.0);
    let mut rows = Vec::new();
    let mut tank = Tank::new(1.9, 0.5, k_from_f(0.0), P_STD_PA);
    let start = tank.chill_k(outside_k);
    let left = [0, 1].map(|_| {
        for _ in 0..36_000 {
            tank.step(0.2, 0.0, outside_k);
        }
        tank.chill_k(outside_k) / start
    });
    rows.push(Row::new(t!("row-cold-tank-warming-2"), left[0] * left[0], left[1]));
    let levels = Levels::two((), ());
    let (first, full) = (Some(levels.first_level()), Some(levels.top_level()));
    for (name, speed) in [("blower", full), (t!("row-blower-low"), first)] {
        let mut air = AirSide::new(15_000.0, 28.0, 294.0);
        let mut run = |seconds: u32| {
            for _ in 0..seconds * 50 {
                air.step(TICK_S, None, speed, 0.0, 294.0);
            }
            air.blower()
        };
        let (once, twice) = (run(3), run(3));
        let full = run(120);
        let (a, b) = (1.0 - once / full, 1.0 - twice / full);
        rows.push(Row::new(t!("row-three-and-six-s", name = name), a * a, b));
    }
    let mut air = AirSide::new(15_000.0, 28.0, 294.0);
    let mut run = |seconds: u32, heat_w: f64| {
        for _ in 0..seconds * 50 {
            air.step(TICK_S, full, full, heat_w, 294.0);
        }
        air.rise_k()
    };
    let hot = run(600, 15_000.0);
    let (once, twice) = (run(20, 0.0), run(20, 0.0));
    rows.push(Row::new(t!("row-exchanger-cooling-20-s"), once * once / hot / hot, twice / hot));
    check("closed.lag.shape", rows)
}
