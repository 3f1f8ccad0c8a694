//! A row of the tables: a fault, the pattern of its pressures in signs, and what else is noticed.
//!
//! The pattern has four signs for the inlet (at rest, low, high, high with the others), a space, and
//! three for the manifold (low, high, high with the others): `=` as on the healthy bench within
//! 0.06 in. w.c., `-` lower and `+` higher by at least 0.1, `0` nothing, `.` not asked.

use quarterturn::parts::Port;
use std::collections::BTreeMap;
use std::sync::{Mutex, OnceLock};

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::measure::pattern::{Pattern, Point, Start, measure};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::units::PA_PER_INWC;

pub use quarterturn::appliance::plate::Fuel::{Natural, Propane};

/// Something noticed beside the pressures, against the healthy bench, in some fired state.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// The control tries again.
    Retry,
    /// The control locks out.
    Lockout,
    /// It neither tries again nor locks out.
    Quiet,
    /// The limit opens.
    Limit,
    /// A roll-out switch opens.
    RollOut,
    /// The high pressure switch is awaited in vain.
    HighInVain,
    /// A hard, late light.
    Bang,
    /// Escaping gas takes fire.
    Fire,
    /// More pressure than the gas valve may see.
    OverPressure,
    /// Less flame current, by a tenth.
    WeakCurrent,
    /// Less excess air, by seven per cent.
    LessAir,
    /// More excess air, by seven per cent.
    MoreAir,
    /// More carbon monoxide: twice as much, and fifty parts per million.
    Co,
    /// Less draft at the switches, by a tenth.
    LessDraft,
    /// More temperature rise, by 10 °F.
    MoreRise,
    /// The meter turns slower, by 5 %; faster, by 5 %; as it should, within 3 %.
    MeterSlow,
    MeterFast,
    MeterRight,
    /// Less heat, by 5 %; more heat, by 5 %.
    LessHeat,
    MoreHeat,
    /// The inlet swings by 0.1 in. w.c.; the manifold does.
    InletSwings,
    ManifoldSwings,
    /// Gas leaks at a port, comes out of the supply regulator, or gathers around the burners.
    Leak,
    Vented,
    Gathers,
    /// After the call the inlet stands higher than before it.
    HigherAfterwards,
    /// The other appliances have gone out.
    OthersOut,
    /// It burned once, so that the exchanger is warm.
    WasWarm,
}

/// A row.
pub type Row = (Fault, Fuel, &'static str, &'static [Sign]);

fn inwc(pa: f64) -> f64 {
    pa / PA_PER_INWC
}

/// Inlet at rest, low, high, others; manifold low, high, others; in inches of water. Of a pressure
/// that swings under steady burners it is the middle of the swing, whichever moment of it the reading
/// happens to meet.
pub fn pressures(pattern: &Pattern) -> [f64; 7] {
    let middle = |i: usize, port: Port| {
        let point = &pattern.points[i];
        let (lower, upper) = point.swing_pa[port];
        let steady = point.missed.is_none();
        inwc(if steady { f64::midpoint(lower, upper) } else { point.truth.pressure_pa(port) })
    };
    let inlet = |i: usize| middle(i, Port::Inlet);
    let manifold = |i: usize| middle(i, Port::Manifold);
    [inlet(0), inlet(1), inlet(2), inlet(3), manifold(1), manifold(2), manifold(3)]
}

/// The pattern of the healthy bench that a fault is held against, measured once.
pub fn healthy(fault: Fault, fuel: Fuel) -> Pattern {
    static KNOWN: OnceLock<Mutex<BTreeMap<(bool, bool), Pattern>>> = OnceLock::new();
    let setup = healthy_for(fault, fuel).unwrap_or_else(|| panic!("{fault:?} on {fuel:?}"));
    let key = (fuel == Natural, setup.furnace.box_suction_pa > 0.0);
    let known = KNOWN.get_or_init(Mutex::default);
    if let Some(pattern) = known.lock().unwrap().get(&key) {
        return pattern.clone();
    }
    let pattern = measure(setup, Start::AsFound);
    known.lock().unwrap().insert(key, pattern.clone());
    pattern
}

/// The pattern with a fault at its typical severity.
pub fn faulty(fault: Fault, fuel: Fuel) -> Pattern {
    let mut setup = healthy_for(fault, fuel).unwrap();
    fault.apply(&mut setup, fault.entry().severity.typical(fuel));
    measure(setup, Start::AsFound)
}

/// Checks rows and says everything that is wrong with them.
pub fn check(rows: &[Row]) {
    let mut wrong = Vec::new();
    for &(fault, fuel, wanted, signs) in rows {
        let (was, is) = (healthy(fault, fuel), faulty(fault, fuel));
        let found = pattern_signs(&pressures(&was), &pressures(&is), wanted);
        if found != wanted {
            let (was, is) = (pressures(&was), pressures(&is));
            wrong.push(format!(
                "{} on {fuel:?}: {found}, wanted {wanted}\n  {was:.2?}\n  {is:.2?}",
                fault.name()
            ));
        }
        for &sign in signs {
            if !noticed(sign, &was, &is) {
                wrong.push(format!("{} on {fuel:?}: no {sign:?} {:?}", fault.name(), is.signs));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The signs found, with `.` where none is asked for, and `?` between two signs.
fn pattern_signs(was: &[f64; 7], is: &[f64; 7], wanted: &str) -> String {
    let asked: Vec<char> = wanted.chars().filter(|c| *c != ' ').collect();
    assert_eq!(asked.len(), 7, "{wanted}");
    let mut found: String = was
        .iter()
        .zip(is)
        .zip(asked)
        .map(|((was, is), asked)| match (asked, is - was) {
            ('.', _) => '.',
            ('0', _) if is.abs() < 0.05 => '0',
            (_, by) if by.abs() <= 0.06 => '=',
            (_, by) if by >= 0.1 => '+',
            (_, by) if by <= -0.1 => '-',
            _ => '?',
        })
        .collect();
    found.insert(4, ' ');
    found
}

fn noticed(sign: Sign, was: &Pattern, is: &Pattern) -> bool {
    let signs = &is.signs;
    let fired = || {
        let pairs = was.points.iter().zip(&is.points).skip(1).take(3);
        pairs.filter(|(_, is)| is.truth.input_w > 0.0)
    };
    let any = |test: &dyn Fn(&Point, &Point) -> bool| fired().any(|(was, is)| test(was, is));
    let all = |test: &dyn Fn(&Point, &Point) -> bool| fired().all(|(was, is)| test(was, is));
    let air = |it: &Point| it.truth.excess_air.unwrap_or(0.0);
    let flow = |was: &Point, is: &Point| is.truth.burner_flow_m3_s / was.truth.burner_flow_m3_s;
    let heat = |was: &Point, is: &Point| is.truth.input_w / was.truth.input_w;
    let swing = |it: &Point, port: Port| inwc(it.swing_pa[port].1 - it.swing_pa[port].0);
    match sign {
        Sign::Retry => signs.retries > 0,
        Sign::Lockout => signs.lockouts > 0,
        Sign::Quiet => signs.retries == 0 && signs.lockouts == 0,
        Sign::Limit => signs.limits > 0,
        Sign::RollOut => signs.rollouts > 0,
        Sign::HighInVain => signs.next_given_up > 0,
        Sign::Bang => signs.banged,
        Sign::Fire => signs.ignited,
        Sign::OverPressure => signs.over_pressure,
        Sign::WeakCurrent => any(&|was, is| is.truth.flame_ua < 0.9 * was.truth.flame_ua),
        Sign::LessAir => any(&|was, is| air(is) < air(was) - 0.07),
        Sign::MoreAir => any(&|was, is| air(is) > air(was) + 0.07),
        Sign::Co => any(&|was, is| {
            let (was, is) = (was.truth.co_air_free_ppm, is.truth.co_air_free_ppm);
            is > 2.0 * was && is > 50.0
        }),
        Sign::LessDraft => any(&|was, is| is.truth.draft_pa < 0.9 * was.truth.draft_pa),
        Sign::MoreRise => any(&|was, is| is.truth.rise_k > was.truth.rise_k + 10.0 / 1.8),
        Sign::MeterSlow => any(&|was, is| flow(was, is) < 0.95),
        Sign::MeterFast => any(&|was, is| flow(was, is) > 1.05),
        Sign::MeterRight => all(&|was, is| (flow(was, is) - 1.0).abs() < 0.03),
        Sign::LessHeat => any(&|was, is| heat(was, is) < 0.95),
        Sign::MoreHeat => any(&|was, is| heat(was, is) > 1.05),
        Sign::InletSwings => any(&|_, is| swing(is, Port::Inlet) > 0.1),
        Sign::ManifoldSwings => any(&|_, is| swing(is, Port::Manifold) > 0.1),
        Sign::Leak => is.points.iter().any(|it| it.truth.leak_m3_s.iter().sum::<f64>() > 1e-6),
        Sign::Vented => is.points.iter().any(|it| it.truth.vented_m3_s > 1e-6),
        Sign::Gathers => is.points.iter().any(|it| it.truth.gas_fraction.vestibule > 1e-4),
        Sign::HigherAfterwards => {
            inwc(is.points[4].truth.inlet_pa) > inwc(was.points[4].truth.inlet_pa) + 0.1
        }
        Sign::OthersOut => {
            let others = |it: &Pattern| it.points[3].truth.others_flow_m3_s;
            others(is) < 0.1 * others(was)
        }
        Sign::WasWarm => is.points[1].truth.rise_k > 5.0,
    }
}
