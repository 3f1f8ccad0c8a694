//! Which instruments show a fault: by how far what they would read differs from the healthy bench.

use super::measured::Case;
use crate::appliance::plate::Fuel;
use crate::measure::pattern::Point;
use crate::parts::Port;
use crate::units::{M3_S_PER_CFH, PA_PER_INWC};

/// What a pressure must differ by to be told apart, in pascals: a digit of the trade's ordinary meters
/// (0.1 in. w.c.).
const PRESSURE_PA: f64 = 0.1 * PA_PER_INWC;
/// What an inlet or manifold must swing by to be noticed, in pascals (0.02 in. w.c.).
const SWING_PA: f64 = 0.02 * PA_PER_INWC;
/// Share of the lower flammable limit that a detector shows.
const DETECTED: f64 = 0.002;

/// The instruments that show what a case's fault does, with the states in which the manometer does.
pub(super) fn showing(case: &Case) -> Vec<String> {
    let mut all = Vec::new();
    let states = case.healthy.states();
    for &which in Port::ALL {
        let of = |it: &Point| it.truth.pressure_pa(which);
        let port = match which {
            Port::Inlet => "inlet",
            Port::Manifold => "manifold",
        };
        let shown: Vec<_> = pairs(case)
            .zip(&states)
            .filter(|((was, is), _)| {
                (of(is) - of(was)).abs() >= PRESSURE_PA
                    || swing(is, which) - swing(was, which) > SWING_PA
            })
            .map(|(_, state)| state.as_str())
            .collect();
        if shown.len() == states.len() {
            all.push(t!("shows-manometer-always", port = port));
        } else if !shown.is_empty() {
            all.push(t!("shows-manometer", port = port, states = shown.join(", ")));
        }
    }
    let firing = |of: fn(&Point) -> f64, by: f64| {
        let mut burning = pairs(case).filter(|(_, is)| is.truth.input_w > 0.0);
        burning.any(|(was, is)| (of(is) - of(was)).abs() > by)
    };
    let most = |of: fn(&Point) -> f64| case.faulty.points.iter().map(of).fold(0.0, f64::max);
    let air = firing(|it| 100.0 * it.truth.excess_air.unwrap_or(0.0), 7.0);
    let tools = [
        (firing(|it| it.truth.flame_ua, 0.3), t!("shows-microammeter")),
        (air || firing(|it| it.truth.co_air_free_ppm, 25.0), t!("shows-analyzer")),
        (firing(|it| 1.8 * it.truth.rise_k, 6.0), t!("shows-thermometers")),
        (
            case.fuel == Fuel::Natural
                && firing(|it| it.truth.burner_flow_m3_s / M3_S_PER_CFH, 4.0),
            t!("shows-stopwatch"),
        ),
        (
            most(|it| it.truth.leak_m3_s.iter().sum::<f64>()) > 0.01 * M3_S_PER_CFH,
            t!("shows-leak-fluid"),
        ),
        (
            most(|it| it.truth.gas_fraction.vestibule) > DETECTED * case.setup.gas.lower_limit,
            t!("shows-detector-burners"),
        ),
        (most(|it| it.truth.vented_m3_s) > 0.01 * M3_S_PER_CFH, t!("shows-detector-yard")),
    ];
    all.extend(tools.into_iter().filter(|(shows, _)| *shows).map(|(_, tool)| tool.to_owned()));
    if case.shown.is_some() {
        all.push(t!("shows-other-manometer").to_owned());
    }
    all
}

fn pairs(case: &Case) -> impl Iterator<Item = (&Point, &Point)> {
    case.healthy.points.iter().zip(&case.faulty.points)
}

fn swing(point: &Point, port: Port) -> f64 {
    let (lower, upper) = point.swing_pa[port];
    upper - lower
}
