//! The propane tank: pressure against temperature, and what it keeps up.

use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::site::tank::{Tank, vapour_abs_pa};
use crate::units::{M3_S_PER_CFH, P_STD_PA, PA_PER_PSI, k_from_f};
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    let mut checks = vec![commercial(), pure(), level()];
    checks.extend(withdrawal());
    checks
}

fn psig(deg_f: f64) -> f64 {
    vapour_abs_pa(k_from_f(deg_f)) / PA_PER_PSI - 14.696
}

fn commercial() -> Check {
    let rows = [(70.0, 127.0), (100.0, 196.0), (105.0, 210.0), (130.0, 287.0)]
        .into_iter()
        .map(|(deg_f, reference)| {
            Row::new(format!("{deg_f} °F"), reference, psig(deg_f)).on("", deg_f)
        })
        .collect();
    check("parts.tank.commercial", rows)
}

/// A chart of pure propane, to see the cold end.
fn pure() -> Check {
    let rows = [
        (-30.0, 6.8),
        (-20.0, 11.5),
        (-10.0, 17.5),
        (0.0, 24.5),
        (10.0, 34.0),
        (20.0, 42.0),
        (30.0, 53.0),
        (40.0, 65.0),
        (50.0, 78.0),
        (60.0, 93.0),
        (70.0, 110.0),
        (80.0, 128.0),
        (90.0, 150.0),
        (100.0, 177.0),
        (110.0, 204.0),
    ]
    .into_iter()
    .map(|(deg_f, chart): (f64, f64)| {
        Row::new(format!("{deg_f} °F"), chart + 14.696, psig(deg_f) + 14.696).on("", deg_f)
    })
    .collect();
    check("parts.tank.pure-propane", rows)
}

/// The gauge tells the temperature, not how much is left.
fn level() -> Check {
    let rows = [0.1, 0.3, 0.8]
        .into_iter()
        .map(|level| {
            let tank = Tank::new(1.9, level, k_from_f(40.0), P_STD_PA);
            Row::new(
                t!("row-tank-full", percent = decimal(100.0 * level, 0)),
                psig(40.0),
                tank.pressure_pa() / PA_PER_PSI,
            )
        })
        .collect();
    check("parts.tank.level", rows)
}

/// Gallons for a steady draw (ft³/h) by outside temperature (°F).
const DRAWS: [(f64, [f64; 7]); 3] = [
    (50.0, [115.0, 115.0, 115.0, 250.0, 250.0, 400.0, 600.0]),
    (100.0, [250.0, 250.0, 250.0, 400.0, 500.0, 1_000.0, 1_500.0]),
    (200.0, [400.0, 500.0, 750.0, 1_000.0, 1_200.0, 2_000.0, 2_500.0]),
];
const OUTSIDE_F: [f64; 7] = [32.0, 20.0, 10.0, 0.0, -10.0, -30.0, -40.0];

/// Tank pressure after eight hours of a steady draw from a half-full tank, in psi gauge.
fn after_eight_hours(gallons: f64, cfh: f64, outside_f: f64) -> f64 {
    let outside_k = k_from_f(outside_f);
    let mut tank = Tank::new(gallons * 3.785_411_784e-3, 0.5, outside_k, P_STD_PA);
    for _ in 0..480 {
        tank.step(60.0, cfh * M3_S_PER_CFH, outside_k);
    }
    tank.pressure_pa() / PA_PER_PSI
}

/// The smallest tank of a published table keeps up its draw; at −40 °F ours does not.
fn withdrawal() -> [Check; 2] {
    let rows = |cold: bool| -> Vec<Row> {
        let mut rows = Vec::new();
        for (cfh, sizes) in DRAWS {
            for (outside_f, gallons) in OUTSIDE_F.into_iter().zip(sizes) {
                if (outside_f < -35.0) == cold {
                    let label = t!(
                        "row-tank-draw",
                        gallons = gallons.to_string(),
                        cfh = cfh.to_string(),
                        outside_f = outside_f.to_string()
                    );
                    let found = after_eight_hours(gallons, cfh, outside_f);
                    rows.push(
                        Row::new(label, 1.0, found)
                            .on(t!("row-cfh", cfh = cfh.to_string()), outside_f),
                    );
                }
            }
        }
        rows
    };
    [
        check("parts.tank.withdrawal.to-minus-30", rows(false)),
        check("parts.tank.withdrawal", rows(true)),
    ]
}
