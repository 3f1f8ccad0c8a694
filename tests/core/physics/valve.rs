//! Hand valves.

use quarterturn::physics::orifice::cv_area_m2;
use quarterturn::physics::valve::{HandValve, HandValveKind};

/// Closed within a few degrees, monotone, fully open in line, half open about the middle.
#[test]
fn area_grows_with_the_angle() {
    for kind in [HandValveKind::Ball, HandValveKind::PlugCock] {
        let valve = HandValve::new(kind, 0.0127);
        assert_eq!(valve.cd_area_m2(0.0), 0.0);
        assert_eq!(valve.cd_area_m2(3.0), 0.0);
        assert_eq!(valve.cd_area_m2(-10.0), 0.0);
        assert_eq!(valve.cd_area_m2(f64::NAN), 0.0);
        assert_eq!(valve.cd_area_m2(90.0), valve.full_cd_area_m2);
        assert_eq!(valve.cd_area_m2(120.0), valve.full_cd_area_m2);
        let areas: Vec<f64> = (0..=90).map(|deg| valve.cd_area_m2(f64::from(deg))).collect();
        assert!(areas.windows(2).all(|w| w[1] >= w[0]));
        let half = valve.cd_area_m2(48.0) / valve.full_cd_area_m2;
        assert!((0.3..0.5).contains(&half), "{half}");
    }
}

/// A half-inch full-port ball valve has a Cv of 20–35, a plug cock of 8–14 (common practice), and Cv
/// itself is 1 US gal/min of water at 1 psi: 2.4e-5 m³/s·√(…) makes 17 mm² of free jet.
#[test]
fn flow_coefficients_are_of_the_usual_size() {
    let ball = HandValve::new(HandValveKind::Ball, 0.0127).full_cd_area_m2;
    let plug = HandValve::new(HandValveKind::PlugCock, 0.0127).full_cd_area_m2;
    assert!((20.0..35.0).contains(&(ball / cv_area_m2(1.0))));
    assert!((8.0..14.0).contains(&(plug / cv_area_m2(1.0))));
    approx::assert_relative_eq!(cv_area_m2(1.0), 1.698e-5, max_relative = 1e-3);
}
